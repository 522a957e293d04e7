/* test-compare.c - choosing between rooms: side by side, in order, with things carried from one to another
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "compare_dialog.h"
#include "compare_row.h"
#include "plan_edit.h"

static LrPlan *
plan_of (LrMainWindow *window)
{
  return lr_document_get_committed (window->document);
}

static const LrSetup *
setup_of (LrMainWindow *window,
          guint         index)
{
  return plan_of (window)->setups->pdata[index];
}

static void
take (LrMainWindow *window,
      LrPlan       *next)
{
  g_assert_nonnull (next);
  lr_document_commit (window->document, next, "Test");
}

/* The example, a cellar of 4 by 3 m, and @n - 2 that are not drawn; the example is shown */
static LrMainWindow *
open_rooms (guint n)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  static const char *const names[] = { "Cellar", "Hall", "Studio", "Kitchen", "Shop" };
  LrMainWindow *window = open_example ();

  for (guint i = 1; i < n; i++)
    {
      take (window, lr_plan_new_setup (plan_of (window), names[i - 1], NULL));
      if (i == 1)
        take (window, lr_plan_set_corners (plan_of (window), corners_m, G_N_ELEMENTS (corners_m), NULL));
    }
  take (window, lr_plan_show_setup (plan_of (window), "setup-1", NULL));
  return window;
}

static GtkWidget *
find_dialog (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (LR_IS_COMPARE_DIALOG (toplevel))
        return toplevel;
    }
  return NULL;
}

static GtkWidget *
open_compare (LrMainWindow *window)
{
  GtkWidget *dialog;

  activate (window, "compare");
  dialog = find_dialog ();
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (dialog);
  return dialog;
}

static void
close_compare (GtkWidget *dialog)
{
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_null (find_dialog ());
}

static guint
count (GtkWidget     *root,
       Match          match,
       gconstpointer  data)
{
  guint n = match (root, data) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count (child, match, data);
  return n;
}

static gboolean
is_row (GtkWidget     *widget,
        gconstpointer  data)
{
  return GTK_IS_LIST_BOX_ROW (widget) && (data == NULL || lr_compare_row_get (widget) == (LrCompare) (GPOINTER_TO_INT (data) - 1));
}

static gboolean
is_star (GtkWidget     *widget,
         gconstpointer  data)
{
  return GTK_IS_IMAGE (widget) && gtk_widget_has_css_class (widget, "best-mark") && gtk_widget_get_opacity (widget) > 0.5;
}

static gboolean
is_bold (GtkWidget     *widget,
         gconstpointer  text)
{
  return GTK_IS_LABEL (widget) && gtk_widget_has_css_class (widget, "best") && g_strcmp0 (gtk_label_get_text (GTK_LABEL (widget)), text) == 0;
}

static gboolean
is_plan (GtkWidget     *widget,
         gconstpointer  data)
{
  return GTK_IS_DRAWING_AREA (widget);
}

static gboolean
is_text (GtkWidget     *widget,
         gconstpointer  text)
{
  return GTK_IS_LABEL (widget) && g_strcmp0 (gtk_label_get_text (GTK_LABEL (widget)), text) == 0;
}

static gboolean
is_button_for (GtkWidget     *widget,
               gconstpointer  setup)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (g_object_get_data (G_OBJECT (widget), "setup"), setup) == 0;
}

/* The loft has 38.4 m², the cellar 12: a star and bold figures, and the reason; all in one sentence for who hears it */
static void
test_table (void)
{
  LrMainWindow *window = open_rooms (3);
  GtkWidget *dialog = open_compare (window), *area = find (dialog, is_row, GINT_TO_POINTER (LR_COMPARE_AREA + 1));

  g_assert_cmpuint (count (dialog, is_row, NULL), ==, LR_N_COMPARES);
  g_assert_cmpuint (count (dialog, is_plan, NULL), ==, 3);
  g_assert_cmpuint (count (area, is_star, NULL), ==, 1);
  g_assert_nonnull (find (area, is_bold, "38.4\u00a0m²"));
  g_assert_null (find (area, is_bold, "12.0\u00a0m²"));
  g_assert_nonnull (find (area, is_text, "26.4\u00a0m² more than Cellar"));
  g_assert_nonnull (find (dialog, is_text, "Room not drawn yet"));
  gtk_test_accessible_assert_property (area, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Floor area: Drawing loft, as planned 38.4\u00a0m², best; Cellar 12.0\u00a0m²; Hall room not drawn. "
                                       "26.4\u00a0m² more than Cellar.");
  gtk_test_accessible_assert_property (find (dialog, is_plan, NULL), GTK_ACCESSIBLE_PROPERTY_LABEL, "Plan of Drawing loft, as planned");
  gtk_test_accessible_assert_property (find (dialog, is_button_for, "setup-2"), GTK_ACCESSIBLE_PROPERTY_LABEL, "Show Cellar");
  close_compare (dialog);
  close_window (window);
}

static gboolean
is_way_on (GtkWidget     *widget,
           gconstpointer  data)
{
  return GTK_IS_BUTTON (widget) && g_object_get_data (G_OBJECT (widget), "action") != NULL;
}

/* A minute at most, for the thread that works on the light */
static gboolean
wait_for (GtkWidget     *dialog,
          Match          match,
          gconstpointer  data)
{
  for (int i = 0; i < 6000 && find (dialog, match, data) == NULL; i++)
    {
      while (g_main_context_iteration (NULL, FALSE))
        ;
      g_usleep (10000);
    }
  return find (dialog, match, data) != NULL;
}

static gboolean
is_figure (GtkWidget     *widget,
           gconstpointer  row)
{
  return is_row (widget, row) && find (widget, is_text, "working it out…") == NULL;
}

/* What there is to fix comes when the light is worked out; a room as found stands for its plan, and says so */
static void
test_awaited (void)
{
  LrMainWindow *window = open_rooms (2);
  GtkWidget *dialog;

  take (window, lr_plan_copy_found (plan_of (window), "Loft, as found", NULL));
  dialog = open_compare (window);
  g_assert_cmpuint (count (dialog, is_plan, NULL), ==, 2);
  g_assert_nonnull (find (dialog, is_text, "as found of Drawing loft, as planned"));
  g_assert_null (find (dialog, is_text, "Drawing loft, as planned"));
  g_assert_nonnull (find (find (dialog, is_row, GINT_TO_POINTER (LR_COMPARE_FIX + 1)), is_text, "working it out…"));
  g_assert_true (wait_for (dialog, is_figure, GINT_TO_POINTER (LR_COMPARE_FIX + 1)));
  close_compare (dialog);
  close_window (window);
}

/* Whatever their number, every plan and column is there, and none wider than a small screen */
static void
test_numbers (void)
{
  static const guint numbers[] = { 1, 2, 3, 6 };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      LrMainWindow *window = open_rooms (numbers[i]);
      GtkWidget *dialog = open_compare (window), *area = find (dialog, is_row, GINT_TO_POINTER (LR_COMPARE_AREA + 1));

      g_assert_cmpuint (count (dialog, is_plan, NULL), ==, numbers[i]);
      g_assert_cmpuint (count (area, is_star, NULL), ==, numbers[i] > 1 ? 1 : 0);
      g_assert_cmpint (gtk_widget_get_width (dialog), <=, 1280);
      g_assert_cmpint (gtk_widget_get_height (dialog), <=, MAX (720, gtk_widget_get_height (GTK_WIDGET (window))));
      g_assert_cmpuint (count (dialog, is_way_on, NULL), ==, numbers[i] > 1 ? 0 : 2);
      close_compare (dialog);
      close_window (window);
    }
}

static GtkWidget *
find_last (GtkWidget     *root,
           Match          match,
           gconstpointer  data)
{
  GtkWidget *last = match (root, data) ? root : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_last (child, match, data);

      last = found != NULL ? found : last;
    }
  return last;
}

static gboolean
is_mark (GtkWidget     *widget,
         gconstpointer  data)
{
  return GTK_IS_IMAGE (widget) && gtk_widget_has_css_class (widget, "best-mark");
}

static double
left_of (GtkWidget *widget,
         GtkWidget *dialog)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (widget, dialog, &bounds));
  return bounds.origin.x;
}

/* A plan stands over its figures, however wide the window is */
static void
test_columns (void)
{
  static const int widths[] = { 900, 1250, 1800 };
  LrMainWindow *window = open_rooms (3);

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      GtkWidget *dialog;

      activate (window, "compare");
      dialog = find_dialog ();
      gtk_window_set_default_size (GTK_WINDOW (dialog), widths[i], 680);
      gtk_test_widget_wait_for_draw (dialog);
      settle ();
      /* what another thread finds makes rows anew, which have no place yet */
      for (int tries = 0; tries < 500 && left_of (find_last (dialog, is_mark, NULL), dialog) == 0.0; tries++)
        {
          g_usleep (10 * 1000);
          settle ();
        }
      g_assert_cmpfloat_with_epsilon (left_of (find_last (dialog, is_plan, NULL), dialog), left_of (find_last (dialog, is_mark, NULL), dialog), 1.5);
      close_compare (dialog);
    }
  close_window (window);
}

static void
test_show (void)
{
  LrMainWindow *window = open_rooms (3);
  GtkWidget *dialog = open_compare (window);

  g_signal_emit_by_name (find (dialog, is_button_for, "setup-2"), "clicked");
  settle ();
  g_assert_null (find_dialog ());
  g_assert_cmpuint (plan_of (window)->shown, ==, 1);
  lr_document_undo (window->document);
  g_assert_cmpuint (plan_of (window)->shown, ==, 0);
  close_window (window);
}

/* The table is of the plan as it is, when something else changes it */
static void
test_follows (void)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } };
  LrMainWindow *window = open_rooms (2);
  GtkWidget *dialog = open_compare (window);
  g_autoptr (LrPlan) cellar = lr_plan_show_setup (plan_of (window), "setup-2", NULL);

  take (window, lr_plan_set_corners (cellar, corners_m, G_N_ELEMENTS (corners_m), NULL));
  gtk_test_widget_wait_for_draw (dialog);
  g_assert_nonnull (find (dialog, is_bold, "100.0\u00a0m²"));
  close_compare (dialog);
  close_window (window);
}

/* Tab goes over the buttons into the table, where arrows walk the rows */
static void
test_keyboard (void)
{
  LrMainWindow *window = open_rooms (2);
  GtkWidget *dialog = open_compare (window), *focus = NULL;
  gboolean reached = FALSE;

  for (int i = 0; i < 8 && !reached; i++)
    {
      gtk_widget_child_focus (dialog, GTK_DIR_TAB_FORWARD);
      focus = gtk_window_get_focus (GTK_WINDOW (dialog));
      reached = GTK_IS_LIST_BOX_ROW (focus);
    }
  g_assert_true (reached);
  g_assert_cmpint (lr_compare_row_get (focus), ==, LR_COMPARE_AREA);
  g_signal_emit_by_name (gtk_widget_get_parent (focus), "move-cursor", GTK_MOVEMENT_DISPLAY_LINES, 1, FALSE, FALSE);
  focus = gtk_window_get_focus (GTK_WINDOW (dialog));
  g_assert_true (GTK_IS_LIST_BOX_ROW (focus));
  g_assert_cmpint (lr_compare_row_get (focus), ==, LR_COMPARE_LONGEST);
  close_compare (dialog);
  close_window (window);
}

static gboolean
is_enabled (LrMainWindow *window,
            const char   *action)
{
  return g_action_group_get_action_enabled (G_ACTION_GROUP (window), action);
}

static void
test_order (void)
{
  LrMainWindow *window = open_rooms (3);

  g_assert_false (is_enabled (window, "setup-earlier"));
  activate (window, "setup-later");
  activate (window, "setup-later");
  g_assert_cmpstr (setup_of (window, 2)->id, ==, "setup-1");
  g_assert_cmpuint (plan_of (window)->shown, ==, 2);
  g_assert_false (is_enabled (window, "setup-later"));
  activate (window, "setup-earlier");
  g_assert_cmpstr (setup_of (window, 1)->id, ==, "setup-1");
  /* moves one after the other are one step back */
  lr_document_undo (window->document);
  g_assert_cmpstr (setup_of (window, 0)->id, ==, "setup-1");
  close_window (window);
}

static void
activate_to (LrMainWindow *window,
             const char   *action,
             const char   *setup)
{
  g_action_group_activate_action (G_ACTION_GROUP (window), action, g_variant_new_string (setup));
}

/* Into the cellar: what is in hand with what it wears, then the whole set; the loft keeps its own */
static void
test_copy_to (void)
{
  LrMainWindow *window = open_rooms (2);
  guint n = setup_of (window, 0)->items->len, n_gear = 0;

  for (guint i = 0; i < n; i++)
    n_gear += lr_item_kind_info (((const LrItem *) setup_of (window, 0)->items->pdata[i])->kind)->is_of_room ? 0 : 1;
  lr_document_select (window->document, "wenna");
  activate_to (window, "copy-item-to", "setup-2");
  g_assert_cmpuint (plan_of (window)->shown, ==, 0);
  g_assert_cmpuint (setup_of (window, 0)->items->len, ==, n);
  g_assert_nonnull (lr_setup_find_role (setup_of (window, 1), LR_ROLE_SUBJECT));
  lr_document_undo (window->document);
  g_assert_cmpuint (setup_of (window, 1)->items->len, ==, 0);
  activate_to (window, "copy-set-to", "setup-2");
  g_assert_cmpuint (setup_of (window, 1)->items->len, ==, n_gear);
  lr_document_select (window->document, NULL);
  g_assert_false (is_enabled (window, "copy-item-to"));
  close_window (window);
}

/* Copied in the loft, pasted in the cellar as far from the lowest corner, which is at 0, 0 in both; and once more at home, beside it */
static void
test_paste (void)
{
  LrMainWindow *window = open_rooms (2);
  LrCanvas *canvas = LR_CANVAS (window->canvas);
  const LrItem *home, *there;
  guint n;

  lr_document_select (window->document, "light-3");
  home = get_item (window, "light-3");
  g_assert_nonnull (home);
  g_assert_true (lr_canvas_key (canvas, GDK_KEY_c, GDK_CONTROL_MASK));
  take (window, lr_plan_show_setup (plan_of (window), "setup-2", NULL));
  g_assert_true (lr_canvas_key (canvas, GDK_KEY_v, GDK_CONTROL_MASK));
  g_assert_cmpuint (setup_of (window, 1)->items->len, ==, 1);
  there = get_item (window, lr_document_get_selected (window->document));
  g_assert_cmpint (there->kind, ==, LR_ITEM_LIGHT);
  g_assert_cmpfloat_with_epsilon (there->at_m.x, home->at_m.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (there->at_m.y, home->at_m.y, 1e-9);

  take (window, lr_plan_show_setup (plan_of (window), "setup-1", NULL));
  n = setup_of (window, 0)->items->len;
  lr_canvas_key (canvas, GDK_KEY_v, GDK_CONTROL_MASK);
  g_assert_cmpuint (setup_of (window, 0)->items->len, ==, n + 1);
  there = get_item (window, lr_document_get_selected (window->document));
  g_assert_cmpfloat_with_epsilon (there->at_m.x - home->at_m.x, 0.3, 1e-9);
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/compare/table", test_table);
  g_test_add_func ("/compare/awaited", test_awaited);
  g_test_add_func ("/compare/numbers", test_numbers);
  g_test_add_func ("/compare/columns", test_columns);
  g_test_add_func ("/compare/show", test_show);
  g_test_add_func ("/compare/follows", test_follows);
  g_test_add_func ("/compare/keyboard", test_keyboard);
  g_test_add_func ("/setups/order", test_order);
  g_test_add_func ("/setups/copy-to", test_copy_to);
  g_test_add_func ("/setups/paste", test_paste);

  return g_test_run ();
}
