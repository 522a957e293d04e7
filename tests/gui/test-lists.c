/* test-lists.c - the lists beside the sheet: what is ticked and typed there is the plan's
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "list_page.h"
#include "lists_dialog.h"
#include "pointer.h"
#include "run_edit.h"

#include <glib/gstdio.h>

static GtkWidget *
open_list (LrMainWindow *window,
           const char   *name)
{
  GListModel *toplevels = gtk_window_get_toplevels ();
  GtkWidget *dialog = NULL;
  guint n = 0;

  g_action_group_activate_action (G_ACTION_GROUP (window), "lists", g_variant_new_string (name));
  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (LR_IS_LISTS_DIALOG (toplevel))
        {
          dialog = toplevel;
          n++;
        }
    }
  g_assert_nonnull (dialog);
  g_assert_cmpuint (n, ==, 1); /* the same one again */
  gtk_test_widget_wait_for_draw (dialog);
  settle ();
  return dialog;
}

static const LrPlan *
plan_of (LrMainWindow *window)
{
  return lr_document_get_plan (window->document);
}

static gboolean
is_line (GtkWidget     *widget,
         gconstpointer  key)
{
  return gtk_widget_has_css_class (widget, "list-line") && gtk_widget_get_mapped (widget)
         && (key == NULL || g_strcmp0 (lr_list_line_get_key (widget), key) == 0);
}

static gboolean
is_check (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_CHECK_BUTTON (widget);
}

static gboolean
is_label (GtkWidget     *widget,
          gconstpointer  text)
{
  return GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget) && g_strcmp0 (gtk_label_get_text (GTK_LABEL (widget)), text) == 0;
}

static gboolean
is_button (GtkWidget     *widget,
           gconstpointer  label)
{
  return GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static gboolean
is_drawing (GtkWidget     *widget,
            gconstpointer  data)
{
  return GTK_IS_DRAWING_AREA (widget);
}

static GtkWidget *
line_of (GtkWidget  *dialog,
         const char *key)
{
  GtkWidget *line = find (dialog, is_line, key);

  g_assert_nonnull (line);
  return line;
}

static void
close_all (LrMainWindow *window,
           GtkWidget    *dialog)
{
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  close_window (window);
}

/* A box is an edit that undo takes back; the line stays the widget that it is */
static void
test_ticks (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "run"), *line = line_of (dialog, "load-in"), *check = find (line, is_check, NULL);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  settle ();
  g_assert_true (lr_plan_is_ticked (plan_of (window), "run", "load-in"));
  g_assert_true (line_of (dialog, "load-in") == line);
  g_assert_nonnull (find (dialog, is_label, "1 of 20 ticked"));
  lr_document_undo (window->document);
  settle ();
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  g_assert_false (lr_document_has_changes (window->document));

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  settle ();
  g_signal_emit_by_name (find (dialog, is_button, "Untick all"), "clicked");
  settle ();
  g_assert_cmpuint (g_strv_length (plan_of (window)->job->ticks), ==, 0);
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  close_all (window, dialog);
}

/* Minutes and names that are typed are kept; as estimated again they are not */
static void
test_run (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "run"), *line = line_of (dialog, "sound");
  GtkWidget *minutes = lr_list_line_get (line, "minutes"), *title = lr_list_line_get (line, "title");
  double estimated = gtk_spin_button_get_value (GTK_SPIN_BUTTON (minutes));
  gsize n;

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (minutes), 40.0);
  settle ();
  g_assert_cmpint (lr_plan_find_run_step (plan_of (window), "sound")->minutes, ==, 40);
  type (title, "Sound and tea");
  settle ();
  g_assert_cmpstr (lr_plan_find_run_step (plan_of (window), "sound")->title, ==, "Sound and tea");
  type (title, "");
  settle ();
  g_assert_cmpstr (lr_plan_find_run_step (plan_of (window), "sound")->title, ==, "");
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (minutes), estimated);
  settle ();
  g_assert_null (lr_plan_find_run_step (plan_of (window), "sound"));

  n = plan_of (window)->job->n_run;
  g_signal_emit_by_name (lr_list_line_get (line, "add"), "clicked");
  settle ();
  g_assert_cmpuint (plan_of (window)->job->n_run, ==, n + 1);
  g_assert_cmpstr (plan_of (window)->job->run[n].after, ==, "sound");
  line = line_of (dialog, plan_of (window)->job->run[n].key);
  g_signal_emit_by_name (lr_list_line_get (line, "drop"), "clicked");
  settle ();
  g_assert_cmpuint (plan_of (window)->job->n_run, ==, n);

  g_signal_emit_by_name (lr_list_line_get (line_of (dialog, "try"), "drop"), "clicked");
  settle ();
  g_assert_true (lr_plan_find_run_step (plan_of (window), "try")->is_left_out);
  close_all (window, dialog);
}

static void
test_questions (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "questions"), *first;

  g_signal_emit_by_name (find (dialog, is_button, "Add a question"), "clicked");
  settle ();
  g_assert_cmpuint (plan_of (window)->job->n_questions, ==, 1);
  first = line_of (dialog, plan_of (window)->job->questions[0].id);
  type (lr_list_line_get (first, "text"), "How did it begin?"); /* Enter goes on to the next */
  settle ();
  g_assert_cmpuint (plan_of (window)->job->n_questions, ==, 2);
  g_assert_cmpstr (plan_of (window)->job->questions[0].text, ==, "How did it begin?");
  type (lr_list_line_get (line_of (dialog, plan_of (window)->job->questions[1].id), "note"), "last");
  settle ();
  g_assert_cmpstr (plan_of (window)->job->questions[1].note, ==, "last");

  g_signal_emit_by_name (lr_list_line_get (first, "down"), "clicked");
  settle ();
  g_assert_cmpstr (plan_of (window)->job->questions[1].text, ==, "How did it begin?");
  g_assert_true (gtk_widget_get_prev_sibling (first) == line_of (dialog, plan_of (window)->job->questions[0].id));
  g_signal_emit_by_name (lr_list_line_get (first, "remove"), "clicked");
  settle ();
  g_assert_cmpuint (plan_of (window)->job->n_questions, ==, 1);
  close_all (window, dialog);
}

/* The checks have the plan's numbers, and follow it */
static void
test_checks (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "checks");
  const LrChange iso = { "camera-a", "iso", 3200.0 };
  g_autoptr (GError) error = NULL;
  const char *label;

  lr_document_commit (window->document, lr_plan_change (plan_of (window), &iso, 1, &error), "ISO");
  g_assert_no_error (error);
  settle ();
  label = gtk_label_get_text (g_object_get_data (G_OBJECT (line_of (dialog, "exposure:camera-a")), "lr-text"));
  g_assert_nonnull (strstr (label, "3200"));
  close_all (window, dialog);
}

/* Where camera A is by tape is seen at once when it is elsewhere; its tick was for where it was */
static void
test_tape (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_list (window, "tape"), *line = line_of (dialog, "camera-a"), *check = find (line, is_check, NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *next;

  g_assert_nonnull (find (line, is_label, "2: 3.68  3: 2.90")); /* from (4.81, 2.80) to (7.20, 0) and (7.20, 4.45) */
  g_assert_nonnull (find (line, is_label, "2: 2.39  4: 2.60"));
  g_assert_nonnull (find (line, is_label, "lens 1.20"));
  lr_document_point_at (window->document, "camera-a");
  settle ();

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  settle ();
  g_assert_nonnull (find (dialog, is_label, "1 of 9 ticked"));
  next = lr_plan_move (plan_of (window), "camera-a", lr_vec2 (4.60, 3.00), &error);
  g_assert_no_error (error);
  lr_document_commit (window->document, next, "Move");
  settle ();
  g_assert_true (line_of (dialog, "camera-a") == line);
  g_assert_nonnull (find (line, is_label, "2: 2.60  4: 2.40")); /* 7.20 - 4.60 and 5.40 - 3.00 */
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  lr_document_point_at (window->document, NULL);

  lr_document_undo (window->document);
  settle ();
  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  lr_document_undo (window->document);
  settle ();
  close_all (window, dialog);
}

/* Save, undo and close by their keys; what is being typed is saved too */
static void
test_keys (void)
{
  LrMainWindow *window = open_example ();
  g_autofree char *folder = g_dir_make_tmp ("lookroom-lists-XXXXXX", NULL), *path = g_build_filename (folder, "job.lookroom", NULL), *text = NULL;
  g_autofree char *backup = g_strconcat (path, "~", NULL);
  GtkWidget *dialog, *title;
  gpointer watched;
  g_autoptr (GError) error = NULL;

  g_assert_true (lr_document_save (window->document, path, &error));
  dialog = open_list (window, "run");
  watched = dialog;
  g_object_add_weak_pointer (G_OBJECT (dialog), &watched);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find (line_of (dialog, "load-in"), is_check, NULL)), TRUE);
  settle ();
  g_assert_nonnull (strstr (gtk_window_get_title (GTK_WINDOW (dialog)), "not saved"));
  pointer_chord (dialog, GDK_KEY_Control_L, GDK_KEY_z);
  settle ();
  g_assert_false (lr_plan_is_ticked (plan_of (window), "run", "load-in"));

  title = lr_list_line_get (line_of (dialog, "load-in"), "title");
  gtk_widget_grab_focus (title);
  gtk_editable_set_text (GTK_EDITABLE (title), "Carry up the stairs");
  pointer_chord (dialog, GDK_KEY_Control_L, GDK_KEY_s);
  settle ();
  g_assert_false (lr_document_has_changes (window->document));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (dialog)), ==, "Lists");
  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  g_assert_nonnull (strstr (text, "Carry up the stairs"));
  pointer_key (dialog, GDK_KEY_Escape);
  settle ();
  g_assert_null (watched);
  window->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (window)); /* not close_window(): what handled a real key outlives it for a while, in GTK 4.8 */
  settle ();
  g_unlink (path);
  g_unlink (backup);
  g_rmdir (folder);
}

/* A page per row of the table, which the window may close on */
static void
test_pages (void)
{
  static const char *const names[] = { "run", "checks", "questions", "tape", "", "nothing" };
  LrMainWindow *window = open_example ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    open_list (window, names[i]);
  close_window (window); /* takes the lists along */
}

static GtkWidget *
find_page (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (g_str_equal (G_OBJECT_TYPE_NAME (toplevel), "LrPageDialog"))
        return toplevel;
    }
  return NULL;
}

static gboolean
is_check_of (GtkWidget     *widget,
             gconstpointer  label)
{
  return GTK_IS_CHECK_BUTTON (widget) && g_strcmp0 (gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)), label) == 0;
}

/* A list goes along when it is ticked under the page, and is looked at then; the sheets are turned; without it the plan is alone again */
static void
test_along (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *page, *check;

  activate (window, "page");
  settle ();
  page = find_page ();
  g_assert_nonnull (page);
  gtk_test_widget_wait_for_draw (page);
  g_assert_nonnull (find (page, is_label, "Sheet 1 of 1: Set plan"));
  check = find (page, is_check_of, "Run sheet");
  g_assert_nonnull (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  settle ();
  g_assert_nonnull (find (page, is_label, "Sheet 2 of 2: Run sheet"));
  gtk_widget_activate_action (page, "page.previous", NULL);
  settle ();
  g_assert_nonnull (find (page, is_label, "Sheet 1 of 2: Set plan"));
  gtk_widget_activate_action (page, "page.next", NULL);
  gtk_widget_activate_action (page, "page.next", NULL); /* there is no third */
  settle ();
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  settle ();
  g_assert_nonnull (find (page, is_label, "Sheet 1 of 1: Set plan"));
  gtk_window_close (GTK_WINDOW (page));
  settle ();
  close_window (window);
}

/* As large as on paper: 297 mm at 96 pixels to the inch are 1122.5 pixels, twice that 2245, and the margins; all of it asks for nothing */
static void
test_zoom (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *page, *area;

  activate (window, "page");
  settle ();
  page = find_page ();
  gtk_test_widget_wait_for_draw (page);
  area = find (page, is_drawing, NULL);
  g_assert_cmpint (gtk_drawing_area_get_content_width (GTK_DRAWING_AREA (area)), ==, 0);
  gtk_widget_activate_action (page, "page.zoom-to", "d", 1.0);
  settle ();
  g_assert_cmpint (gtk_drawing_area_get_content_width (GTK_DRAWING_AREA (area)), ==, (int) (297.0 / 25.4 * 96.0 + 32.0));
  g_assert_nonnull (find (page, is_button, "100 %"));
  gtk_widget_activate_action (page, "page.zoom-to", "d", 2.0);
  settle ();
  g_assert_cmpint (gtk_drawing_area_get_content_width (GTK_DRAWING_AREA (area)), ==, (int) (2.0 * 297.0 / 25.4 * 96.0 + 32.0));
  gtk_widget_activate_action (page, "page.zoom-out", NULL);
  settle ();
  g_assert_nonnull (find (page, is_button, "150 %"));
  gtk_widget_activate_action (page, "page.zoom-toggle", NULL);
  settle ();
  g_assert_cmpint (gtk_drawing_area_get_content_width (GTK_DRAWING_AREA (area)), ==, 0);
  gtk_window_close (GTK_WINDOW (page));
  settle ();
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/lists/ticks", test_ticks);
  g_test_add_func ("/lists/run", test_run);
  g_test_add_func ("/lists/questions", test_questions);
  g_test_add_func ("/lists/checks", test_checks);
  g_test_add_func ("/lists/tape", test_tape);
  g_test_add_func ("/lists/keys", test_keys);
  g_test_add_func ("/lists/pages", test_pages);
  g_test_add_func ("/lists/zoom", test_zoom);
  g_test_add_func ("/lists/along", test_along);

  return g_test_run ();
}
