/* test-canvas-keys.c - the sheet without a pointer: keys, focus, names for assistive technology, the menu's actions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#include "placing.h"
#include "reframe.h"

/* The file holds whole millimetres */
#define NEAR_M 0.0006

#define assert_near_m(a, b) g_assert_cmpfloat_with_epsilon (a, b, NEAR_M)

static void
test_nudge (GuiFixture    *f,
            gconstpointer  data)
{
  lr_document_select (f->document, GUI_CAMERA);
  lr_canvas_key (f->canvas, GDK_KEY_Right, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Up, GDK_SHIFT_MASK);
  lr_canvas_key (f->canvas, GDK_KEY_Up, GDK_SHIFT_MASK);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.x, 4.91);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.y, 2.82);

  lr_document_undo (f->document);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.x, 4.81);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.y, 2.80);
}

/* Many small moves hold what one large move holds: with primes the size must not drift from step to step. */
static void
test_nudge_with_held_framing (GuiFixture    *f,
                              gconstpointer  data)
{
  g_autoptr (LrPlan) start = lr_plan_change_text (lr_document_get_committed (f->document), GUI_CAMERA, "lens", "lens-50", NULL), moved = NULL;
  g_autoptr (LrStudy) before = lr_study_new (start), after = NULL;
  double held_m = lr_reframe_held_m (lr_study_find_camera (before, GUI_CAMERA));
  g_autoptr (LrReframe) at_once = NULL;

  moved = lr_plan_move (start, GUI_CAMERA, lr_vec2_add (gui_item (f, GUI_CAMERA)->at_m, lr_vec2 (1.2, 0.0)), NULL);
  after = lr_study_new (moved);
  at_once = lr_reframe_hold (after, GUI_CAMERA, held_m, LR_UNITS_METRIC);
  g_assert_nonnull (at_once->lens);

  lr_document_commit (f->document, lr_plan_ref (start), "Mount");
  lr_document_set_holds_framing (f->document, TRUE);
  lr_document_select (f->document, GUI_CAMERA);
  for (int i = 0; i < 12; i++)
    lr_canvas_key (f->canvas, GDK_KEY_Right, 0);
  g_assert_cmpstr (gui_item (f, GUI_CAMERA)->camera.lens, ==, at_once->lens);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->camera.focal_m, at_once->focal_m, 1e-9);
}

static void
test_turn_keys (GuiFixture    *f,
                gconstpointer  data)
{
  lr_document_select (f->document, GUI_TABLE);
  lr_canvas_key (f->canvas, GDK_KEY_bracketleft, 0);
  lr_canvas_key (f->canvas, GDK_KEY_greater, GDK_SHIFT_MASK);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_TABLE)->facing_rad, 4.0 * LR_DEG, 1e-6);
}

static void
test_delete_duplicate (GuiFixture    *f,
                       gconstpointer  data)
{
  guint n = lr_plan_get_setup (lr_document_get_plan (f->document))->items->len;

  lr_document_select (f->document, GUI_TABLE);
  g_assert_true (lr_canvas_key (f->canvas, GDK_KEY_d, GDK_CONTROL_MASK));
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n + 1);
  g_assert_cmpstr (lr_document_get_selected (f->document), !=, GUI_TABLE);
  g_assert_nonnull (lr_document_get_selected (f->document));

  lr_canvas_key (f->canvas, GDK_KEY_Delete, 0);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n);
  g_assert_null (lr_document_get_selected (f->document));
  lr_document_undo (f->document);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n + 1);
}

static void
test_bring_to_wall (GuiFixture    *f,
                    gconstpointer  data)
{
  const LrItem *table;

  lr_document_select (f->document, GUI_TABLE);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.bring-to-wall", NULL);
  table = gui_item (f, GUI_TABLE);
  assert_near_m (table->at_m.x, table->furniture.length_m / 2.0);
  g_assert_cmpfloat_with_epsilon (table->facing_rad, 0.0, 1e-6);
}

static void
bring (GuiFixture *f,
       const char *name,
       LrVec2      at_m)
{
  GError *error = NULL;
  LrPlan *next = lr_placing_bring (lr_document_get_study (f->document), name, &at_m, NULL, NULL, &error);

  g_assert_no_error (error);
  lr_document_commit (f->document, next, "Bring");
}

/* A lead from the van goes from the socket to the light; when the light has moved it ends beside it until it is laid anew, which is one
 * step of undo */
static void
test_route (GuiFixture    *f,
            gconstpointer  data)
{
  const LrItem *light, *lead;
  GError *error = NULL;
  LrPlan *next;

  bring (f, "room:socket", lr_vec2 (2.0, 0.0));
  bring (f, "kit:small-panel", lr_vec2 (3.0, 0.8));
  bring (f, "kit:lead-10", lr_vec2 (3.0, 0.8));
  lead = gui_item (f, "lead-1");
  g_assert_cmpstr (lead->lead.feeds, ==, "light-1");
  assert_near_m (lead->path_m[lead->n_path - 1].x, gui_item (f, "light-1")->at_m.x);

  next = lr_plan_move (lr_document_get_committed (f->document), "light-1", lr_vec2 (4.5, 0.8), &error);
  g_assert_no_error (error);
  lr_document_commit (f->document, next, "Move");
  lead = gui_item (f, "lead-1");
  g_assert_cmpfloat (lead->path_m[lead->n_path - 1].x, <, 3.5);

  lr_document_select (f->document, "lead-1");
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.route", NULL);
  light = gui_item (f, "light-1");
  lead = gui_item (f, "lead-1");
  assert_near_m (lead->path_m[lead->n_path - 1].x, light->at_m.x);
  assert_near_m (lead->path_m[lead->n_path - 1].y, light->at_m.y);
  lr_document_undo (f->document);
  lead = gui_item (f, "lead-1");
  g_assert_cmpfloat (lead->path_m[lead->n_path - 1].x, <, 3.5);
}

static void
test_aim_at (GuiFixture    *f,
             gconstpointer  data)
{
  lr_document_select (f->document, GUI_CAMERA);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.aim-at", "s", GUI_INES);
  g_assert_cmpstr (gui_item (f, GUI_CAMERA)->camera.aims_at, ==, GUI_INES);
}

static void
test_tab (GuiFixture    *f,
          gconstpointer  data)
{
  static const char *order[] = { GUI_WENNA, GUI_INES, GUI_CAMERA, GUI_DOOR, GUI_TABLE };

  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    {
      g_assert_true (gtk_widget_child_focus (GTK_WIDGET (f->canvas), GTK_DIR_TAB_FORWARD));
      g_assert_cmpstr (lr_document_get_selected (f->document), ==, order[i]);
      g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (f->window)), GTK_WIDGET (f->canvas)));
    }
  /* after the last it leaves */
  g_assert_false (gtk_widget_child_focus (GTK_WIDGET (f->canvas), GTK_DIR_TAB_FORWARD));
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (f->canvas), GTK_DIR_TAB_BACKWARD));
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_DOOR);

  lr_canvas_key (f->canvas, GDK_KEY_Page_Down, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Page_Down, 0);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_WENNA);
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  g_assert_null (lr_document_get_selected (f->document));
}

/* What Tab takes in hand can be seen */
static void
test_tab_shows (GuiFixture    *f,
                gconstpointer  data)
{
  const LrView *view;
  LrVec2 at;

  lr_document_select (f->document, GUI_CAMERA);
  lr_canvas_zoom_at (f->canvas, 4.0, gui_at (f, 4.81, 2.80));
  gtk_widget_grab_focus (GTK_WIDGET (f->canvas));
  lr_canvas_key (f->canvas, GDK_KEY_Page_Down, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Page_Down, 0);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_TABLE);
  view = lr_canvas_get_view (f->canvas);
  at = gui_at (f, 0.60, 2.80);
  g_assert_cmpfloat (at.x, >, 0.0);
  g_assert_cmpfloat (at.x, <, view->width);
  g_assert_cmpfloat (at.y, >, 0.0);
  g_assert_cmpfloat (at.y, <, view->height);
}

static GtkWidget *
find_child (GuiFixture *f,
            guint       nth)
{
  guint n = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (f->canvas)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (child)) == GTK_ACCESSIBLE_ROLE_IMG && n++ == nth)
      return child;
  return NULL;
}

static void
test_accessible (GuiFixture    *f,
                 gconstpointer  data)
{
  gboolean has_wenna = FALSE;
  guint n = 0;

  lr_document_select (f->document, GUI_WENNA);
  for (GtkWidget *child; (child = find_child (f, n)) != NULL; n++)
    {
      g_autofree char *wrong = gtk_test_accessible_check_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                                   "Wenna");
      if (wrong != NULL)
        continue;
      has_wenna = TRUE;
      gtk_test_accessible_assert_property (child, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                           "2.60\302\240m from the left wall, 2.95\302\240m from the lower wall.");
      gtk_test_accessible_assert_state (child, GTK_ACCESSIBLE_STATE_SELECTED, TRUE);
    }
  g_assert_true (has_wenna);
  g_assert_cmpuint (n, ==, 5);
}

#define ADD(path, setup, test) g_test_add ("/canvas-keys/" path, GuiFixture, NULL, setup, test, gui_teardown_cb)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("keys/nudge", gui_setup_loft_cb, test_nudge);
  ADD ("keys/nudge-with-held-framing", gui_setup_loft_cb, test_nudge_with_held_framing);
  ADD ("keys/turn", gui_setup_loft_cb, test_turn_keys);
  ADD ("keys/delete-duplicate", gui_setup_loft_cb, test_delete_duplicate);
  ADD ("keys/tab", gui_setup_loft_cb, test_tab);
  ADD ("keys/tab-shows", gui_setup_loft_cb, test_tab_shows);
  ADD ("menu/bring-to-wall", gui_setup_loft_cb, test_bring_to_wall);
  ADD ("menu/route", gui_setup_loft_cb, test_route);
  ADD ("menu/aim-at", gui_setup_loft_cb, test_aim_at);
  ADD ("accessible", gui_setup_loft_cb, test_accessible);

  return g_test_run ();
}
