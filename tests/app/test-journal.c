/* test-journal.c - what a killed program leaves behind
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cache is a folder of the test's own.
 */

#include "app-test.h"

#include "journal.h"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

static void
edit (LrDocument *document)
{
  lr_document_commit (document, moved (document, first_of (document, LR_ITEM_CAMERA)->id, 0.25), "move");
}

static guint
count_leftovers (void)
{
  g_autoptr (GPtrArray) leftovers = lr_journal_find_leftovers ();

  return leftovers->len;
}

/* A program that is killed after two edits; its last plan is in @path */
static void
run_and_kill (const char *path)
{
  pid_t child = fork ();

  if (child == 0)
    {
      LrDocument *document = new_example ();
      LrJournal *journal = lr_journal_new (document);

      edit (document);
      edit (document);
      lr_journal_flush (journal);
      lr_plan_write (lr_document_get_plan (document), path, NULL);
      raise (SIGKILL);
    }
  g_assert_cmpint (child, >, 0);
  g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
}

static void
test_killed (void)
{
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "plan.lookroom", NULL);
  g_autoptr (GPtrArray) leftovers = NULL;
  g_autoptr (LrPlan) expected = NULL;
  const LrLeftover *leftover;

  run_and_kill (path);
  expected = lr_plan_read (path, NULL);
  leftovers = lr_journal_find_leftovers ();
  g_assert_cmpuint (leftovers->len, ==, 1);
  leftover = g_ptr_array_index (leftovers, 0);
  g_assert_true (lr_plan_equal (leftover->plan, expected));
  g_assert_cmpstr (leftover->path, ==, "");
  g_assert_cmpint (ABS (leftover->when_unix_s - g_get_real_time () / G_USEC_PER_SEC), <=, 2);

  lr_leftover_discard (leftover);
  g_assert_cmpuint (count_leftovers (), ==, 0);
}

/* A journal in use is nobody's leftover; saving and closing take it away */
static void
test_in_use (void)
{
  g_autoptr (LrDocument) document = new_example ();
  LrJournal *journal = lr_journal_new (document);
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "plan.lookroom", NULL);

  edit (document);
  lr_journal_flush (journal);
  g_assert_cmpuint (count_leftovers (), ==, 0);

  g_assert_true (lr_document_save (document, path, NULL));
  lr_journal_settle (journal);
  lr_journal_free (journal);
  g_assert_cmpuint (count_leftovers (), ==, 0);
}

/* It names the file that the plan came from */
static void
test_path (void)
{
  g_autoptr (LrDocument) document = new_example ();
  LrJournal *journal = lr_journal_new (document);
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "pläne 1%.lookroom", NULL);
  g_autoptr (GPtrArray) leftovers = NULL;

  g_assert_true (lr_document_save (document, path, NULL));
  edit (document);
  lr_journal_flush (journal);
  lr_journal_free (journal);

  leftovers = lr_journal_find_leftovers ();
  g_assert_cmpuint (leftovers->len, ==, 1);
  g_assert_cmpstr (((const LrLeftover *) g_ptr_array_index (leftovers, 0))->path, ==, path);
  lr_leftover_discard (g_ptr_array_index (leftovers, 0));
}

/* Undone back to what was saved there is nothing to recover */
static void
test_undone (void)
{
  g_autoptr (LrDocument) document = new_example ();
  LrJournal *journal = lr_journal_new (document);

  edit (document);
  lr_journal_flush (journal);
  lr_document_undo (document);
  lr_journal_flush (journal);
  lr_journal_free (journal);
  g_assert_cmpuint (count_leftovers (), ==, 0);
}

/* Rubbish in the cache is cleared away and stops nobody */
static void
test_rubbish (void)
{
  static const char *const contents[] = { "", "\n", "-\n", "-\n{ \"format\": 1 }", "no line", "file:///x\n[1, 2" };
  g_autofree char *folder = g_build_filename (g_get_user_cache_dir (), "lookroom", "journal", NULL);

  g_mkdir_with_parents (folder, 0700);
  for (gsize i = 0; i < G_N_ELEMENTS (contents); i++)
    {
      g_autofree char *name = g_strdup_printf ("%" G_GSIZE_FORMAT ".journal", i);
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_assert_true (g_file_set_contents (path, contents[i], -1, NULL));
    }
  g_assert_cmpuint (count_leftovers (), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *cache = new_folder ();

  g_setenv ("XDG_CACHE_HOME", cache, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/journal/killed", test_killed);
  g_test_add_func ("/journal/in-use", test_in_use);
  g_test_add_func ("/journal/path", test_path);
  g_test_add_func ("/journal/undone", test_undone);
  g_test_add_func ("/journal/rubbish", test_rubbish);
  return g_test_run ();
}
