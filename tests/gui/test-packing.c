/* test-packing.c - the kit typed and stepped, kept and taken; the packing list ticked
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "lists_dialog.h"
#include "list_page.h"
#include "my_kit.h"
#include "plan_edit.h"

#include <glib/gstdio.h>
#include <string.h>

/* Also what waits behind a busy machine: lists are filled again when there is time for it */
static void
settle_all (void)
{
  gint64 end_us = g_get_monotonic_time () + 2 * G_TIME_SPAN_SECOND;

  settle ();
  while (g_main_context_pending (NULL) && g_get_monotonic_time () < end_us)
    g_main_context_iteration (NULL, FALSE);
}

static GtkWidget *
open_list (LrMainWindow *window,
           const char   *page)
{
  GtkWidget *dialog = lr_lists_dialog_show (GTK_WINDOW (window), window->document, page);

  gtk_test_widget_wait_for_draw (dialog);
  settle_all ();
  return dialog;
}

static const LrPlan *
plan_of (LrMainWindow *window)
{
  return lr_document_get_plan (window->document);
}

static gboolean
is_line_of (GtkWidget     *widget,
            gconstpointer  key)
{
  return gtk_widget_has_css_class (widget, "list-line") && g_strcmp0 (lr_list_line_get_key (widget), key) == 0;
}

static GtkWidget *
line_of (GtkWidget  *dialog,
         const char *key)
{
  GtkWidget *line = find (dialog, is_line_of, key);

  g_test_message ("%s", key);
  g_assert_nonnull (line);
  return line;
}

static gboolean
is_check (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_CHECK_BUTTON (widget);
}

static gboolean
is_mnemonic_button (GtkWidget     *widget,
                    gconstpointer  label)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static void
press (GtkWidget  *dialog,
       const char *label)
{
  GtkWidget *button = find (dialog, is_mnemonic_button, label);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  settle_all ();
}

static gboolean
is_label_with (GtkWidget     *widget,
               gconstpointer  words)
{
  return GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), words) != NULL;
}

/* Numbers are typed or stepped, titles and notes typed; each is an edit that undo takes back, and what undo changes is shown */
static void
test_edit (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "kit"), *boom = line_of (dialog, "kit:boom");
  GtkWidget *spin = lr_list_line_get (boom, "count"), *title = lr_list_line_get (boom, "title");

  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)), ==, 1.0);
  gtk_spin_button_spin (GTK_SPIN_BUTTON (spin), GTK_SPIN_STEP_FORWARD, 1.0);
  g_assert_cmpint (lr_plan_find_kit (plan_of (window), "boom")->count, ==, 2);
  gtk_spin_button_spin (GTK_SPIN_BUTTON (spin), GTK_SPIN_STEP_FORWARD, 1.0);
  g_assert_cmpint (lr_plan_find_kit (plan_of (window), "boom")->count, ==, 3);
  type (title, "Long boom");
  type (lr_list_line_get (boom, "note"), "carbon");
  g_assert_cmpstr (lr_plan_find_kit (plan_of (window), "boom")->title, ==, "Long boom");
  g_assert_cmpstr (lr_plan_find_kit (plan_of (window), "boom")->note, ==, "carbon");

  for (int i = 0; i < 3; i++) /* two steps in a row are one */
    lr_document_undo (window->document);
  settle_all ();
  g_assert_false (lr_document_has_changes (window->document));
  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)), ==, 1.0);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (title)), ==, "Boom on a stand");
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* The figures of a camera in the kit are under its line */
static void
test_figures (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "kit"), *figures = lr_list_line_get (line_of (dialog, "kit:camera-body"), "figures"), *field;

  gtk_expander_set_expanded (GTK_EXPANDER (figures), TRUE);
  settle_all ();
  field = find (figures, is_field_of, "data-rate-mbit-s");
  g_assert_nonnull (field);
  type (find (field, is_entry, NULL), "150");
  g_assert_cmpfloat (lr_plan_find_kit (plan_of (window), "camera-body")->item->camera.data_rate_mbit_s, ==, 150.0);
  g_assert_null (lr_list_line_get (line_of (dialog, "kit:flag"), "figures"));
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* Typed by name out of the open lens database: the files here are invented */
static void
test_lens_by_name (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "kit"), *title = lr_list_line_get (line_of (dialog, "kit:lens-35"), "title");
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "lensfun", NULL), *path = g_build_filename (folder, "a.xml", NULL);
  GtkTreeModel *model;
  GtkTreeIter first;
  gboolean is_taken = FALSE;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "<lensdatabase><lens><maker>Merrow</maker><model>Merrow 24-70mm f/2.8</model></lens></lensdatabase>",
                                      -1, NULL));
  gtk_widget_grab_focus (title);
  gtk_editable_set_text (GTK_EDITABLE (title), "24 merrow");
  model = gtk_entry_completion_get_model (gtk_entry_get_completion (GTK_ENTRY (title)));
  g_assert_true (gtk_tree_model_get_iter_first (model, &first));
  g_signal_emit_by_name (gtk_entry_get_completion (GTK_ENTRY (title)), "match-selected", model, &first, &is_taken);
  g_assert_true (is_taken);
  g_assert_cmpstr (lr_plan_find_kit (plan_of (window), "lens-35")->title, ==, "Merrow 24-70mm f/2.8");
  g_assert_cmpfloat_with_epsilon (lr_plan_find_kit (plan_of (window), "lens-35")->item->lens.focal_min_m, 0.024, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find_kit (plan_of (window), "lens-35")->item->lens.focal_max_m, 0.070, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find_kit (plan_of (window), "lens-35")->item->lens.f_number_min, 2.8, 1e-9);
  lr_document_undo (window->document); /* one step */
  settle_all ();
  g_assert_false (lr_document_has_changes (window->document));
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* What goes along is added, sized, counted and taken out; a thing of the kit likewise */
static void
test_add_and_remove (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "kit"), *page = gtk_widget_get_ancestor (line_of (dialog, "kit:boom"), LR_TYPE_LIST_PAGE), *line;
  g_autofree char *bag = g_strdup_printf ("supply:%d", LR_SUPPLY_SANDBAG), *key = g_strdup_printf ("supply:0:%d", LR_SUPPLY_SANDBAG);
  guint n = plan_of (window)->kit->len;

  g_assert_true (gtk_widget_activate_action (page, "kit.add", "s", bag));
  settle_all ();
  line = line_of (dialog, key);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (lr_list_line_get (line, "count")), 4.0);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (lr_list_line_get (line, "size")), 6.0);
  g_assert_cmpint (((const LrSupply *) plan_of (window)->supplies->pdata[0])->count, ==, 4);
  g_assert_cmpfloat (((const LrSupply *) plan_of (window)->supplies->pdata[0])->size, ==, 6.0);
  g_signal_emit_by_name (lr_list_line_get (line, "remove"), "clicked");
  settle_all ();
  g_assert_cmpuint (plan_of (window)->supplies->len, ==, 0);
  g_assert_null (find (dialog, is_line_of, key));

  g_assert_true (gtk_widget_activate_action (page, "kit.add", "s", "kit:flag"));
  g_assert_true (gtk_widget_activate_action (page, "kit.add", "s", "lens:lens-35"));
  settle_all ();
  g_assert_cmpuint (plan_of (window)->kit->len, ==, n + 2);
  line = line_of (dialog, "kit:flag-2");
  g_signal_emit_by_name (lr_list_line_get (line, "remove"), "clicked");
  settle_all ();
  g_assert_cmpuint (plan_of (window)->kit->len, ==, n + 1);
  g_assert_null (find (dialog, is_line_of, "kit:flag-2"));
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

static LrMainWindow *
other_window (LrMainWindow *window)
{
  for (GList *l = gtk_application_get_windows (app); l != NULL; l = l->next)
    if (LR_IS_MAIN_WINDOW (l->data) && l->data != window)
      return l->data;

  g_assert_not_reached ();
}

/* A kit is kept, new plans begin with it, and another plan takes from it. A file that is broken is told and stays */
static void
test_keep (void)
{
  LrMainWindow *window = open_example (), *fresh;
  GtkWidget *dialog = open_list (window, "kit");
  g_autofree char *path = lr_my_kit_dup_path (), *after = NULL;

  press (dialog, "_Take from my kit");
  g_assert_nonnull (find (dialog, is_label_with, "No kit of yours is kept yet"));
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (lr_list_line_get (line_of (dialog, "kit:boom"), "count")), 7.0);
  press (dialog, "_Keep this kit for the next jobs");
  g_assert_nonnull (find (dialog, is_label_with, "Kept."));
  g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
  lr_document_undo (window->document);
  settle_all ();
  press (dialog, "_Take from my kit");
  g_assert_cmpint (lr_plan_find_kit (plan_of (window), "boom")->count, ==, 7);

  g_action_group_activate_action (G_ACTION_GROUP (window), "new", NULL); /* there are changes: in a window of its own */
  settle_all ();
  fresh = other_window (window);
  g_assert_cmpint (lr_plan_find_kit (plan_of (fresh), "boom")->count, ==, 7);
  close_window (fresh);

  g_assert_true (g_file_set_contents (path, "{ \"format\": ", -1, NULL));
  press (dialog, "_Keep this kit for the next jobs");
  g_assert_nonnull (find (dialog, is_label_with, "Not kept."));
  press (dialog, "_Take from my kit");
  g_assert_nonnull (find (dialog, is_label_with, "could not be read"));
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, "{ \"format\": ");
  g_unlink (path);
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* What is packed is ticked, and the tick is in the plan; what is placed more often than there is, is told first */
static void
test_tick (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "packing"), *check = find (line_of (dialog, "camera/kit:camera-body"), is_check, NULL);
  g_autoptr (GError) error = NULL;

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  g_assert_true (lr_plan_is_ticked (plan_of (window), "packing", "camera/kit:camera-body=2"));
  lr_document_undo (window->document);
  settle_all ();
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  g_assert_null (find (dialog, is_line_of, "lack:camera/kit:camera-body"));

  lr_document_commit (window->document, lr_plan_set_kit_count (plan_of (window), "camera-body", 1, &error), "fewer");
  settle_all ();
  g_assert_nonnull (find (dialog, is_line_of, "lack:camera/kit:camera-body"));
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("lookroom-data-XXXXXX", NULL);

  g_setenv ("XDG_DATA_HOME", folder, TRUE); /* not the kit of who runs the tests */
  window_tests_init (&argc, &argv);

  g_test_add_func ("/packing/edit", test_edit);
  g_test_add_func ("/packing/figures", test_figures);
  g_test_add_func ("/packing/lens-by-name", test_lens_by_name);
  g_test_add_func ("/packing/add-and-remove", test_add_and_remove);
  g_test_add_func ("/packing/keep", test_keep);
  g_test_add_func ("/packing/tick", test_tick);

  return g_test_run ();
}
