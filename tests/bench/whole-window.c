/* whole-window.c - the program itself, which tells when it has shown its first frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Does what main() of the program does.
 */

#include "config.h"

#include "app.h"
#include "cli.h"
#include "first_frame.h"

#include <libintl.h>
#include <locale.h>

int
main (int    argc,
      char **argv)
{
  int code;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, LR_BUILD_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  lr_first_frame_watch ();

  code = lr_cli_run (argc, argv);

  return code >= 0 ? code : lr_app_run (argc, argv);
}
