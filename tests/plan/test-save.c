/* test-save.c - bytes reach a file whole, or leave it alone
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checked against what POSIX says of files, links and devices.
 */

#include "config.h"

#include "plan.h"
#include "save.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

static char *folder;

static char *
in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
assert_holds (const char *path,
              const char *expected)
{
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, expected);
}

static void
save (const char *path,
      const char *text)
{
  g_autoptr (GError) error = NULL;

  lr_save_bytes (path, text, strlen (text), &error);
  g_assert_no_error (error);
}

static void
test_new_and_again (void)
{
  g_autofree char *path = in_folder ("a");

  save (path, "one");
  assert_holds (path, "one");
  save (path, "two, longer");
  assert_holds (path, "two, longer");
  save (path, "");
  assert_holds (path, "");
  g_unlink (path);
}

static void
test_mode (void)
{
  g_autofree char *path = in_folder ("b");
  GStatBuf status;

  save (path, "one");
  g_assert_cmpint (g_chmod (path, 0640), ==, 0);
  save (path, "two");
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 07777, ==, 0640);
  g_unlink (path);
}

static void
test_link (void)
{
  g_autofree char *path = in_folder ("c");
  g_autofree char *link = in_folder ("link");

  save (path, "one");
  g_assert_cmpint (symlink (path, link), ==, 0);
  save (link, "two");
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (path, "two");
  g_unlink (link);
  g_unlink (path);
}

static void
test_full_device (void)
{
  g_autoptr (GError) error = NULL;
  GStatBuf status;

  g_assert_false (lr_save_bytes ("/dev/full", "one", 3, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO);
  g_assert_cmpint (g_stat ("/dev/full", &status), ==, 0);
  g_assert_true (S_ISCHR (status.st_mode));
}

static void
test_failures (void)
{
  g_autofree char *nowhere = in_folder ("no/such/folder");
  const char *const paths[] = { folder, nowhere, "/dev/null/a" };

  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (lr_save_bytes (paths[i], "one", 3, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO);
      /* the sentence is about the file, not about a temporary one */
      g_assert_null (strstr (error->message, folder));
    }
}

int
main (int    argc,
      char **argv)
{
  int failures;

  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("lookroom-save-XXXXXX", NULL);
  g_test_add_func ("/save/new-and-again", test_new_and_again);
  g_test_add_func ("/save/mode", test_mode);
  g_test_add_func ("/save/link", test_link);
  g_test_add_func ("/save/full-device", test_full_device);
  g_test_add_func ("/save/failures", test_failures);

  failures = g_test_run ();
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_free (folder);
  return failures;
}
