/* test-window.c - the whole window under the hand: Tray, Remarks, set-ups, files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "badge.h"
#include "file_actions.h"
#include "grab.h"
#include "line.h"
#include "pointer.h"
#include "viewfinder.h"

#include <glib/gstdio.h>

static gboolean
is_list_view (GtkWidget     *widget,
              gconstpointer  data)
{
  return GTK_IS_LIST_VIEW (widget);
}

/* The remark in hand stays selected while everything runs, and Mend is one step */
static void
test_remarks (void)
{
  LrMainWindow *window = open_example ();
  GtkSelectionModel *model =
    gtk_list_view_get_model (GTK_LIST_VIEW (find (GTK_WIDGET (window->remarks), is_list_view, NULL)));
  gpointer row;
  g_autofree char *key = NULL;
  guint n_fix = lr_document_get_remarks (window->document)->n[LR_GRADE_FIX];
  g_autoptr (GError) error = NULL;

  gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (model), 0);
  g_assert_nonnull (lr_document_get_remark (window->document));
  key = g_strdup (lr_document_get_remark (window->document)->key);
  row = gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model));
  for (int i = 0; i < 20; i++)
    {
      lr_document_preview (window->document, lr_plan_move (lr_document_get_committed (window->document), "wenna",
                                                           lr_vec2 (2.6 - 0.002 * i, 2.95), &error));
      g_assert_no_error (error);
      g_assert_true (gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model)) == row);
    }
  lr_document_end_preview (window->document, FALSE, NULL);
  g_assert_cmpstr (lr_document_get_remark (window->document)->key, ==, key);

  activate (window, "mend");
  g_assert_cmpuint (lr_document_get_remarks (window->document)->n[LR_GRADE_FIX], <, n_fix);
  activate (window, "undo");
  g_assert_cmpuint (lr_document_get_remarks (window->document)->n[LR_GRADE_FIX], ==, n_fix);
  close_window (window);
}

/* What is pointed at goes with the pointer; what was taken stays */
static void
test_remark_pointed (void)
{
  LrMainWindow *window = open_example ();
  LrDocument *document = window->document;
  const LrRemarks *remarks = lr_document_get_remarks (document);
  const char *first = ((const LrRemark *) g_ptr_array_index (remarks->all, 0))->key;
  const char *second = ((const LrRemark *) g_ptr_array_index (remarks->all, 1))->key;

  lr_document_point_at_remark (document, first);
  lr_document_point_at_remark (document, second);
  g_assert_cmpstr (lr_document_get_remark (document)->key, ==, second);
  lr_document_point_at_remark (document, NULL);
  g_assert_null (lr_document_get_remark (document));

  lr_document_take_remark (document, first);
  lr_document_point_at_remark (document, second);
  lr_document_point_at_remark (document, NULL);
  g_assert_cmpstr (lr_document_get_remark (document)->key, ==, first);

  /* pointed at and clicked */
  lr_document_point_at_remark (document, second);
  lr_document_take_remark (document, second);
  lr_document_point_at_remark (document, NULL);
  g_assert_cmpstr (lr_document_get_remark (document)->key, ==, second);
  lr_document_take_remark (document, NULL);
  lr_document_point_at_remark (document, NULL);
  g_assert_null (lr_document_get_remark (document));
  close_window (window);
}

static gboolean
is_mend (GtkWidget     *widget,
         gconstpointer  data)
{
  return GTK_IS_BUTTON (widget) && gtk_widget_get_visible (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), "Mend") == 0;
}

/* A line's button stays where it is while something moves, and can be pressed when it rests */
static void
test_mend_waits (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *panel = GTK_WIDGET (window->remarks), *mend;
  g_autoptr (GError) error = NULL;
  int height_px;

  settle ();
  mend = find (panel, is_mend, NULL);
  g_assert_nonnull (mend);
  g_assert_true (gtk_widget_get_sensitive (mend));
  height_px = gtk_widget_get_height (gtk_widget_get_parent (mend));

  lr_document_preview (window->document, lr_plan_move (lr_document_get_committed (window->document), "wenna", lr_vec2 (2.598, 2.95), &error));
  g_assert_no_error (error);
  g_assert_true (find (panel, is_mend, NULL) == mend);
  g_assert_false (gtk_widget_get_sensitive (mend));

  while (lr_document_get_remarks (window->document)->is_moving)
    g_main_context_iteration (NULL, TRUE);
  g_assert_true (lr_document_has_preview (window->document));
  g_assert_true (find (panel, is_mend, NULL) == mend);
  g_assert_true (gtk_widget_get_sensitive (mend));
  settle ();
  g_assert_cmpint (gtk_widget_get_height (gtk_widget_get_parent (mend)), ==, height_px);
  lr_document_end_preview (window->document, FALSE, NULL);
  close_window (window);
}

static gboolean
is_line (GtkWidget     *widget,
         gconstpointer  data)
{
  return LR_IS_LINE (widget);
}

/* Where Mend was pressed another comes to lie: it cannot be pressed at once. And what Mend does is read whole */
static void
test_mend_twice (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *panel = GTK_WIDGET (window->remarks), *mend;
  LrDocument *document = window->document;
  guint n_fix = lr_document_get_remarks (document)->n[LR_GRADE_FIX];

  settle ();
  g_assert_false (lr_line_is_cut (LR_LINE (find (find (panel, is_list_view, NULL), is_line, NULL))));
  mend = find (panel, is_mend, NULL);
  pointer_move (mend, lr_vec2 (0.5 * gtk_widget_get_width (mend), 0.5 * gtk_widget_get_height (mend)));
  pointer_wait (100);
  pointer_button (mend, 1, TRUE);
  pointer_button (mend, 1, FALSE);
  pointer_wait (100);
  g_assert_cmpuint (lr_document_get_remarks (document)->n[LR_GRADE_FIX], <, n_fix);
  g_assert_false (gtk_widget_get_sensitive (find (panel, is_mend, NULL)));
  /* levels of light may move lines once more */
  for (int i = 0; i < 20 && !gtk_widget_get_sensitive (find (panel, is_mend, NULL)); i++)
    pointer_wait (500);
  g_assert_true (gtk_widget_get_sensitive (find (panel, is_mend, NULL)));
  close_window (window);
}

/* Tray */

static gboolean
is_named (GtkWidget     *widget,
          gconstpointer  name)
{
  return g_strcmp0 (g_object_get_data (G_OBJECT (widget), "lr-name"), name) == 0;
}

static void
test_tray (void)
{
  LrMainWindow *window = open_example ();
  guint n = lr_plan_get_setup (lr_document_get_plan (window->document))->items->len;
  GtkWidget *flag = find (GTK_WIDGET (window->tray), is_named, "kit:flag"), *chair = find (GTK_WIDGET (window->tray), is_named, "room:chair");

  g_assert_nonnull (flag);
  g_signal_emit_by_name (gtk_widget_get_parent (flag), "row-activated", flag);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (window->document))->items->len, ==, n + 1);
  g_assert_nonnull (lr_document_get_selected (window->document));
  g_signal_emit_by_name (chair, "clicked");
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (window->document))->items->len, ==, n + 2);
  close_window (window);
}

/* The window as a whole */

static void
test_setups (void)
{
  LrMainWindow *window = open_example ();
  const LrPlan *plan = lr_document_get_plan (window->document);
  g_autofree char *first = g_strdup (lr_plan_get_setup (plan)->name);
  g_autoptr (GError) error = NULL;

  lr_document_commit (window->document, lr_plan_copy_setup (plan, "as found", &error), "copy");
  g_assert_no_error (error);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, "as found");
  activate (window, "previous-setup");
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, first);
  activate (window, "next-setup");
  activate (window, "remove-setup");
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, first);
  close_window (window);
}

/* F6 goes through the panels and comes back */
static void
test_panels (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *panels[] = {
    GTK_WIDGET (window->tray), GTK_WIDGET (window->canvas), GTK_WIDGET (window->viewfinders), GTK_WIDGET (window->details),
    GTK_WIDGET (window->remarks),
  };

  gtk_window_set_focus (GTK_WINDOW (window), NULL);
  for (int i = 0; i < 2 * (int) G_N_ELEMENTS (panels); i++)
    {
      GtkWidget *focus;

      activate (window, "next-panel");
      focus = gtk_window_get_focus (GTK_WINDOW (window));
      g_assert_nonnull (focus);
      g_test_message ("%d %s", i, G_OBJECT_TYPE_NAME (focus));
      g_assert_true (focus == panels[i % 5] || gtk_widget_is_ancestor (focus, panels[i % 5]));
    }
  close_window (window);
}

static gboolean
has_unnamed_control (GtkWidget     *widget,
                     gconstpointer  data)
{
  gboolean is_control = GTK_IS_BUTTON (widget) || GTK_IS_ENTRY (widget) || GTK_IS_DROP_DOWN (widget) || GTK_IS_CHECK_BUTTON (widget);
  gboolean is_inner = gtk_widget_get_ancestor (widget, GTK_TYPE_MENU_BUTTON) != NULL
                      || gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL
                      || (GTK_IS_BUTTON (widget) && gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) != NULL);

  if (!is_control || is_inner || !gtk_widget_get_visible (widget))
    return FALSE;
  if (GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL)
    return FALSE;
  if (GTK_IS_CHECK_BUTTON (widget) && gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)) != NULL)
    return FALSE;

  return !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL);
}

/* Whatever can be pressed, typed in or chosen from has a name */
static void
test_names (void)
{
  LrMainWindow *window = open_example ();
  static const char *const hands[] = { NULL, "camera-b", "wenna", "light-1" };

  for (gsize i = 0; i < G_N_ELEMENTS (hands); i++)
    {
      GtkWidget *unnamed;

      lr_document_select (window->document, hands[i]);
      settle ();
      unnamed = find (GTK_WIDGET (window), has_unnamed_control, NULL);
      if (unnamed != NULL)
        g_test_message ("%s, %s, in %s in %s", G_OBJECT_TYPE_NAME (unnamed), gtk_widget_get_tooltip_text (unnamed),
                        G_OBJECT_TYPE_NAME (gtk_widget_get_parent (unnamed)),
                        G_OBJECT_TYPE_NAME (gtk_widget_get_parent (gtk_widget_get_parent (unnamed))));
      g_assert_null (unnamed);
    }
  close_window (window);
}

/* Icons that are asked for by name are there */
static void
test_icons (void)
{
  static const char *const names[] = {
    "edit-undo-symbolic", "edit-redo-symbolic", "open-menu-symbolic", "list-add-symbolic", "list-remove-symbolic",
    "edit-copy-symbolic", "user-trash-symbolic", "window-close-symbolic", "pan-down-symbolic",
  };
  GtkIconTheme *theme = gtk_icon_theme_get_for_display (gdk_display_get_default ());

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    g_assert_true (gtk_icon_theme_has_icon (theme, names[i]));
}

/* Narrow and wide, light and dark */
static void
test_looks (void)
{
  static const int sizes[][2] = { { 1280, 720 }, { 1000, 640 }, { 1900, 1100 } };
  LrMainWindow *window = open_example ();

  lr_document_set_shown (window->document, LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_POWER);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      gtk_window_set_default_size (GTK_WINDOW (window), sizes[i][0], sizes[i][1]);
      settle ();
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, sizes[i][0]);
      g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (window)), <=, sizes[i][1]);
    }
  g_action_group_change_action_state (G_ACTION_GROUP (app), "dark", g_variant_new_boolean (TRUE));
  settle ();
  g_assert_cmpint (lr_widget_get_theme_id (GTK_WIDGET (window->canvas)), ==, LR_THEME_DARK);
  g_action_group_change_action_state (G_ACTION_GROUP (app), "dark", g_variant_new_boolean (FALSE));
  settle ();
  g_assert_cmpint (lr_widget_get_theme_id (GTK_WIDGET (window->canvas)), ==, LR_THEME_LIGHT);
  close_window (window);
}

/* A window with changes asks before it goes; staying keeps it */
static void
test_question (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;
  g_autoptr (GError) error = NULL;

  lr_document_commit (window->document, lr_plan_remove (lr_document_get_plan (window->document), "camera-a", &error), "remove");
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  dialog = window_beside ();
  g_assert_true (GTK_IS_DIALOG (dialog));
  gtk_dialog_response (GTK_DIALOG (dialog), 0);
  settle ();
  g_assert_null (window_beside ());
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window)));
  close_window (window);
}

/* A file that is no plan: said in a dialog, and what was open is not touched */
static void
test_bad_file (void)
{
  LrMainWindow *window = open_example ();
  LrPlan *plan = lr_document_get_plan (window->document);
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "lookroom-bad.lookroom", NULL);
  GtkWindow *dialog;

  g_assert_true (g_file_set_contents (path, "{ }", -1, NULL));
  lr_main_window_open_path (window, path);
  settle ();
  dialog = window_beside ();
  g_assert_true (GTK_IS_DIALOG (dialog));
  gtk_window_destroy (dialog);
  g_assert_true (lr_document_get_plan (window->document) == plan);
  g_unlink (path);
  close_window (window);
}

static void
test_page (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;

  activate (window, "page");
  settle ();
  dialog = window_beside ();
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (dialog));
  gtk_window_close (dialog);
  settle ();
  close_window (window);
}

static void
test_shortcuts (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;

  activate (window, "show-shortcuts");
  settle ();
  dialog = window_beside ();
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (dialog));
  gtk_window_close (dialog);
  settle ();
  close_window (window);
}

static gboolean
is_scale (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_SCALE (widget) && gtk_widget_get_mapped (widget);
}

/* The sun's time scale is there while the sun is shown, and what it is set to is what the sheet paints */
static void
test_sun (void)
{
  LrMainWindow *window = open_example ();
  cairo_surface_t *before, *after;
  GtkWidget *scale;

  g_assert_null (find (GTK_WIDGET (window), is_scale, NULL));
  g_action_group_change_action_state (G_ACTION_GROUP (window), "show-sun", g_variant_new_boolean (TRUE));
  settle ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  scale = find (GTK_WIDGET (window), is_scale, NULL);
  g_assert_nonnull (scale);
  /* the remarks on light that come then may make their list higher */
  for (gint64 until_us = g_get_monotonic_time () + 20 * G_USEC_PER_SEC;
       !lr_document_has_current_levels (window->document) && g_get_monotonic_time () < until_us;)
    g_main_context_iteration (NULL, FALSE);
  settle ();
  before = grab (GTK_WIDGET (window->canvas));
  gtk_range_set_value (GTK_RANGE (scale), 13 * 60);
  settle ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  after = grab (GTK_WIDGET (window->canvas));
  g_assert_cmpint (lr_document_get_sun_minute (window->document), ==, 13 * 60);
  g_assert_cmpuint (n_different (before, after), >, 1000);
  cairo_surface_destroy (before);
  cairo_surface_destroy (after);
  g_action_group_change_action_state (G_ACTION_GROUP (window), "show-sun", g_variant_new_boolean (FALSE));
  settle ();
  g_assert_null (find (GTK_WIDGET (window), is_scale, NULL));
  close_window (window);
}

static gboolean
is_menu_row (GtkWidget     *widget,
             gconstpointer  wanted)
{
  g_autofree char *text = NULL;

  if (!g_str_equal (G_OBJECT_TYPE_NAME (widget), "GtkModelButton") || !gtk_widget_get_mapped (widget))
    return FALSE;

  g_object_get (widget, "text", &text, NULL);
  return g_strcmp0 (text, wanted) == 0;
}

/* After a choice in a menu that opens from a menu the keys go to the sheet, not to what has gone */
static void
test_menu_in_menu (void)
{
  LrMainWindow *window = open_example ();
  GtkMenuButton *button = GTK_MENU_BUTTON (window->menu_button);
  GtkWidget *focus;

  gtk_menu_button_popup (button);
  settle ();
  g_signal_emit_by_name (find (GTK_WIDGET (gtk_menu_button_get_popover (button)), is_menu_row, "In the pictures"), "clicked");
  for (int i = 0; i < 8; i++) /* the menu slides */
    settle ();
  g_signal_emit_by_name (find (GTK_WIDGET (gtk_menu_button_get_popover (button)), is_menu_row, "Thirds"), "clicked");
  settle ();
  g_assert_false (lr_document_get_frame_lines (window->document) & LR_FRAME_THIRDS);
  gtk_menu_button_popdown (button);
  settle ();

  focus = gtk_window_get_focus (GTK_WINDOW (window));
  g_assert_nonnull (focus);
  g_assert_true (gtk_widget_get_mapped (focus));
  g_action_group_change_action_state (G_ACTION_GROUP (window), "show-thirds", g_variant_new_boolean (TRUE));
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/window/remarks", test_remarks);
  g_test_add_func ("/window/remark-pointed", test_remark_pointed);
  g_test_add_func ("/window/mend-twice", test_mend_twice);
  g_test_add_func ("/window/mend-waits", test_mend_waits);
  g_test_add_func ("/window/tray", test_tray);
  g_test_add_func ("/window/setups", test_setups);
  g_test_add_func ("/window/panels", test_panels);
  g_test_add_func ("/window/names", test_names);
  g_test_add_func ("/window/icons", test_icons);
  g_test_add_func ("/window/looks", test_looks);
  g_test_add_func ("/window/question", test_question);
  g_test_add_func ("/window/bad-file", test_bad_file);
  g_test_add_func ("/window/page", test_page);
  g_test_add_func ("/window/shortcuts", test_shortcuts);
  g_test_add_func ("/window/sun", test_sun);
  g_test_add_func ("/window/menu-in-menu", test_menu_in_menu);
  return g_test_run ();
}
