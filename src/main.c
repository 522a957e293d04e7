/* main.c - the program: a command, or the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli.h"
#ifdef LR_HAS_APP
#include "app.h"
#endif

#include <glib.h>
#include <libintl.h>
#include <locale.h>

/* Where translations are: the environment's word, else beside the program that was not installed, else where it was */
static const char *
locale_dir (void)
{
  const char *dir = g_getenv ("LOOKROOM_LOCALE_DIR");

  if (dir != NULL)
    return dir;

  return g_file_test (LR_BUILD_LOCALE_DIR, G_FILE_TEST_IS_DIR) ? LR_BUILD_LOCALE_DIR : LR_LOCALE_DIR;
}

int
main (int    argc,
      char **argv)
{
  int code;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, locale_dir ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  code = lr_cli_run (argc, argv);
  if (code >= 0)
    return code;

#ifdef LR_HAS_APP
  return lr_app_run (argc, argv);
#else
  g_printerr ("lookroom: this build has no window\n");
  return 2;
#endif
}
