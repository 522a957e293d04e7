/* test-canvas.c - the sheet under the hand: taking, moving, turning, keys, zoom, what the Tray brings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#include "floor.h"

/* The file holds whole millimetres */
#define NEAR_M 0.0006

#define assert_near_m(a, b) g_assert_cmpfloat_with_epsilon (a, b, NEAR_M)

static void
setup_loft (GuiFixture    *f,
            gconstpointer  data)
{
  gui_setup (f, gui_make_loft ());
}

static void
setup_empty (GuiFixture    *f,
             gconstpointer  data)
{
  gui_setup (f, NULL);
}

static void
teardown (GuiFixture    *f,
          gconstpointer  data)
{
  gui_teardown (f);
}

/* The first place of a raster over the sheet where a press would meet this; fails if there is none */
static LrVec2
find_hit (GuiFixture *f,
          LrHitType   type,
          int         index)
{
  const LrView *view = lr_canvas_get_view (f->canvas);

  for (double y = 2.0; y < view->height; y += 3.0)
    for (double x = 2.0; x < view->width; x += 3.0)
      {
        LrHit hit = lr_floor_hit (lr_document_get_study (f->document), view, lr_vec2 (x, y));

        if (hit.type == type && (index < 0 || hit.index == index))
          return lr_vec2 (x, y);
      }
  g_test_fail_printf ("no place meets %d", (int) type);
  return lr_vec2 (0.0, 0.0);
}

/* Zoom */

static void
test_fit (GuiFixture    *f,
          gconstpointer  data)
{
  const LrView *view = lr_canvas_get_view (f->canvas);
  LrVec2 low = gui_at (f, 0.0, 0.0), high = gui_at (f, 7.2, 5.4);

  g_assert_cmpfloat (low.x, >, 20.0);
  g_assert_cmpfloat (low.y, <, view->height - 20.0);
  g_assert_cmpfloat (high.x, <, view->width - 20.0);
  g_assert_cmpfloat (high.y, >, 20.0);
  /* and no smaller than it needs to be */
  g_assert_cmpfloat (fmax ((high.x - low.x) / view->width, (low.y - high.y) / view->height), >, 0.65);
}

static void
test_zoom_keeps_point (GuiFixture    *f,
                       gconstpointer  data)
{
  LrVec2 at = lr_vec2 (300.0, 200.0);
  LrVec2 before_m = lr_view_to_room (lr_canvas_get_view (f->canvas), at), after_m;
  double scale = lr_canvas_get_view (f->canvas)->scale;

  lr_canvas_zoom_at (f->canvas, 1.7, at);
  after_m = lr_view_to_room (lr_canvas_get_view (f->canvas), at);
  g_assert_cmpfloat_with_epsilon (lr_canvas_get_view (f->canvas)->scale, 1.7 * scale, 1e-9);
  g_assert_cmpfloat_with_epsilon (after_m.x, before_m.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (after_m.y, before_m.y, 1e-9);
}

static void
count_cb (int *n)
{
  (*n)++;
}

/* At 96 px to the inch, 1:50 is 96 / 0.0254 / 50 = 75.59 px to the metre */
static void
test_zoom_denominator (GuiFixture    *f,
                       gconstpointer  data)
{
  double denominator;
  int n = 0;

  g_signal_connect_swapped (f->canvas, "notify::zoom-denominator", G_CALLBACK (count_cb), &n);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.zoom-to", "d", 50.0);
  g_assert_cmpfloat_with_epsilon (lr_canvas_get_view (f->canvas)->scale, 75.59, 0.005);
  g_object_get (f->canvas, "zoom-denominator", &denominator, NULL);
  g_assert_cmpfloat_with_epsilon (denominator, 50.0, 1e-9);
  g_assert_cmpint (n, ==, 1);

  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.zoom-in", NULL);
  g_assert_cmpfloat (lr_canvas_get_denominator (f->canvas), <, 50.0);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.zoom-out", NULL);
  g_assert_cmpfloat_with_epsilon (lr_canvas_get_denominator (f->canvas), 50.0, 1e-9);
}

static void
test_zoom_limits (GuiFixture    *f,
                  gconstpointer  data)
{
  for (int i = 0; i < 60; i++)
    lr_canvas_zoom_at (f->canvas, 2.0, lr_vec2 (300.0, 200.0));
  g_assert_cmpfloat (lr_canvas_get_view (f->canvas)->scale, <=, 1000.0);
  for (int i = 0; i < 60; i++)
    lr_canvas_zoom_at (f->canvas, 0.5, lr_vec2 (300.0, 200.0));
  g_assert_cmpfloat (lr_canvas_get_view (f->canvas)->scale, >=, 5.0);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.zoom-fit", NULL);
  test_fit (f, data);
}

/* Dragging */

static void
test_drag_camera (GuiFixture    *f,
                  gconstpointer  data)
{
  g_autoptr (LrPlan) before = lr_plan_ref (lr_document_get_plan (f->document));

  gui_drag (f, gui_at (f, 4.81, 2.80), gui_at (f, 5.50, 3.90), GDK_CONTROL_MASK);
  /* one pixel is about a centimetre */
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.x, 5.50, 0.012);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.y, 3.90, 0.012);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_CAMERA);
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Move Camera A");

  lr_document_undo (f->document);
  g_assert_true (lr_plan_equal (lr_document_get_plan (f->document), before));
  g_assert_null (lr_document_get_undo_title (f->document));
}

static void
test_drag_previews (GuiFixture    *f,
                    gconstpointer  data)
{
  LrVec2 from = gui_at (f, 4.81, 2.80);

  lr_canvas_drag_begin (f->canvas, from, 0);
  lr_canvas_drag_update (f->canvas, lr_vec2_add (from, lr_vec2 (40.0, 0.0)), 0);
  g_assert_true (lr_document_has_preview (f->document));
  g_assert_true (lr_canvas_is_dragging (f->canvas));
  g_assert_true (lr_canvas_get_view (f->canvas)->is_dragging);
  gui_settle (f);

  g_assert_true (lr_canvas_key (f->canvas, GDK_KEY_Escape, 0));
  g_assert_false (lr_document_has_preview (f->document));
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.x, 4.81);
  lr_canvas_drag_update (f->canvas, lr_vec2_add (from, lr_vec2 (80.0, 0.0)), 0);
  lr_canvas_drag_end (f->canvas, from, 0);
  g_assert_null (lr_document_get_undo_title (f->document));
}

static void
test_click_selects_only (GuiFixture    *f,
                         gconstpointer  data)
{
  LrVec2 at = gui_at (f, 4.81, 2.80);

  gui_drag (f, at, lr_vec2_add (at, lr_vec2 (2.0, 2.0)), 0);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_CAMERA);
  g_assert_null (lr_document_get_undo_title (f->document));

  at = gui_at (f, 6.0, 1.5);
  gui_drag (f, at, at, 0);
  g_assert_null (lr_document_get_selected (f->document));
}

static void
test_drag_level_with_others (GuiFixture    *f,
                             gconstpointer  data)
{
  /* 3 px off Wenna's line along x */
  LrVec2 to = lr_vec2_add (gui_at (f, 5.60, 2.95), lr_vec2 (0.0, -3.0));

  gui_drag (f, gui_at (f, 4.81, 2.80), to, 0);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.y, 2.95);
}

static void
test_drag_furniture_to_wall (GuiFixture    *f,
                             gconstpointer  data)
{
  double half_m = gui_item (f, GUI_TABLE)->furniture.length_m / 2.0;

  gui_drag (f, gui_at (f, 0.60, 2.80), lr_vec2_add (gui_at (f, half_m, 2.80), lr_vec2 (5.0, 0.0)), 0);
  assert_near_m (gui_item (f, GUI_TABLE)->at_m.x, half_m);
}

static void
test_drag_paper_pans (GuiFixture    *f,
                      gconstpointer  data)
{
  LrVec2 before = lr_canvas_get_view (f->canvas)->origin, from = gui_at (f, 6.0, 1.5);
  LrVec2 after;

  gui_drag (f, from, lr_vec2_add (from, lr_vec2 (33.0, -21.0)), 0);
  after = lr_canvas_get_view (f->canvas)->origin;
  g_assert_cmpfloat_with_epsilon (after.x - before.x, 33.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (after.y - before.y, -21.0, 1e-9);
  g_assert_null (lr_document_get_undo_title (f->document));
}

static void
test_turn_knob (GuiFixture    *f,
                gconstpointer  data)
{
  LrVec2 knob;

  lr_document_select (f->document, GUI_CAMERA);
  gui_settle (f);
  knob = find_hit (f, LR_HIT_TURN_KNOB, -1);
  /* straight up the sheet, a little off: pulled to 90 degrees */
  gui_drag (f, knob, gui_at (f, 4.82, 4.30), 0);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->facing_rad, LR_PI / 2.0, 1e-3);
  g_assert_cmpstr (gui_item (f, GUI_CAMERA)->camera.aims_at, ==, "");
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Turn Camera A");
}

static void
test_size_knob (GuiFixture    *f,
                gconstpointer  data)
{
  double length_m, width_m, left_m;
  LrVec2 knob;

  lr_document_select (f->document, GUI_TABLE);
  gui_settle (f);
  length_m = gui_item (f, GUI_TABLE)->furniture.length_m;
  width_m = gui_item (f, GUI_TABLE)->furniture.width_m;
  left_m = gui_item (f, GUI_TABLE)->at_m.x - length_m / 2.0;

  /* the corner at its +x +y, drawn out by 30 and 20 cm: the far edges stay */
  knob = gui_at (f, 0.60 + length_m / 2.0, 2.80 + width_m / 2.0);
  g_assert_cmpint (lr_floor_hit (lr_document_get_study (f->document), lr_canvas_get_view (f->canvas), knob).type, ==,
                   LR_HIT_SIZE_KNOB);
  gui_drag (f, knob, gui_at (f, 0.90 + length_m / 2.0, 3.00 + width_m / 2.0), GDK_CONTROL_MASK);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_TABLE)->furniture.length_m, length_m + 0.30, 0.012);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_TABLE)->furniture.width_m, width_m + 0.20, 0.012);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_TABLE)->at_m.x - gui_item (f, GUI_TABLE)->furniture.length_m / 2.0, left_m,
                                  0.0011);
}

static void
test_door_slides (GuiFixture    *f,
                  gconstpointer  data)
{
  LrVec2 at_m;
  double facing_rad;

  g_assert_true (lr_setup_place (lr_plan_get_setup (lr_document_get_plan (f->document)), gui_item (f, GUI_DOOR), &at_m,
                                 &facing_rad));
  gui_drag (f, gui_at (f, at_m.x + 0.05, at_m.y), gui_at (f, 7.0, 2.5), 0);
  g_assert_cmpint (gui_item (f, GUI_DOOR)->wall, ==, 1);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_DOOR)->along_m + gui_item (f, GUI_DOOR)->door.width_m / 2.0, 2.5, 0.03);
}

static void
test_corner (GuiFixture    *f,
             gconstpointer  data)
{
  const LrRoom *room;
  LrVec2 wall = find_hit (f, LR_HIT_WALL, 4);

  /* not before the room is in hand */
  gui_drag (f, gui_at (f, 0.0, 5.4), gui_at (f, 0.5, 5.4), 0);
  g_assert_null (lr_document_get_undo_title (f->document));
  lr_canvas_fit (f->canvas);

  wall = find_hit (f, LR_HIT_WALL, 4);
  gui_drag (f, wall, wall, 0);
  gui_drag (f, gui_at (f, 0.0, 5.4), gui_at (f, 0.52, 5.4), 0);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpfloat_with_epsilon (room->corners_m[4].x, 0.52, 0.012);
  assert_near_m (room->corners_m[4].y, 5.4);
  gui_settle (f);
}

static void
test_wall (GuiFixture    *f,
           gconstpointer  data)
{
  const LrRoom *room;
  LrVec2 wall = find_hit (f, LR_HIT_WALL, 3);

  gui_drag (f, wall, wall, 0);
  gui_drag (f, wall, lr_vec2_add (wall, lr_vec2 (0.0, 0.40 * lr_canvas_get_view (f->canvas)->scale)), 0);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  /* 40 cm down; the corner on the slanting wall slides along it, which is at 45 degrees */
  g_assert_cmpfloat_with_epsilon (room->corners_m[4].y, 5.0, 0.012);
  g_assert_cmpfloat_with_epsilon (room->corners_m[3].x, 6.65, 0.012);
  assert_near_m (room->corners_m[2].y, 4.45);
}

static void
keep_cb (LrDocument  *document,
         const char  *sentence,
         char       **kept)
{
  g_free (*kept);
  *kept = g_strdup (sentence);
}

static void
test_read_only (GuiFixture    *f,
                gconstpointer  data)
{
  g_autofree char *said = NULL;
  LrPlan *plan = gui_make_loft ();

  plan->is_read_only = TRUE; /* as the reader makes it of a newer version's file */
  lr_document_reset (f->document, plan, NULL);
  g_signal_connect (f->document, "message", G_CALLBACK (keep_cb), &said);
  gui_drag (f, gui_at (f, 4.81, 2.80), gui_at (f, 5.5, 3.9), 0);
  assert_near_m (gui_item (f, GUI_CAMERA)->at_m.x, 4.81);
  g_assert_nonnull (said);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_CAMERA);

  lr_canvas_key (f->canvas, GDK_KEY_Delete, 0);
  g_assert_nonnull (gui_item (f, GUI_CAMERA));
  g_assert_false (lr_canvas_drop_motion (f->canvas, "room:chair", lr_vec2 (300.0, 300.0)));
  lr_canvas_draw_room (f->canvas);
  g_assert_false (lr_canvas_has_tool (f->canvas));
}

static void
test_hover (GuiFixture    *f,
            gconstpointer  data)
{
  lr_canvas_hover (f->canvas, gui_at (f, 4.81, 2.80), 0);
  g_assert_cmpstr (lr_document_get_pointed (f->document), ==, GUI_CAMERA);
  lr_canvas_hover (f->canvas, gui_at (f, 6.0, 1.5), 0);
  g_assert_null (lr_document_get_pointed (f->document));
}

/* Keys */

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

/* The Tray */

static void
test_drop (GuiFixture    *f,
           gconstpointer  data)
{
  guint n = lr_plan_get_setup (lr_document_get_plan (f->document))->items->len;

  g_assert_true (lr_canvas_drop_motion (f->canvas, "room:chair", gui_at (f, 6.0, 1.5)));
  g_assert_true (lr_document_has_preview (f->document));
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n + 1);
  gui_settle (f);
  lr_canvas_drop_leave (f->canvas);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n);

  g_assert_true (lr_canvas_drop_motion (f->canvas, "room:chair", gui_at (f, 6.0, 1.4)));
  g_assert_true (lr_canvas_drop (f->canvas, "room:chair", gui_at (f, 6.0, 1.5)));
  g_assert_false (lr_document_has_preview (f->document));
  g_assert_nonnull (lr_document_get_selected (f->document));
  g_assert_cmpfloat_with_epsilon (gui_item (f, lr_document_get_selected (f->document))->at_m.x, 6.0, 0.03);
  g_assert_cmpfloat_with_epsilon (gui_item (f, lr_document_get_selected (f->document))->at_m.y, 1.5, 0.03);
  lr_document_undo (f->document);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->items->len, ==, n);
}

static void
test_drop_kit (GuiFixture    *f,
               gconstpointer  data)
{
  LrPlan *plan = lr_document_get_plan (f->document);
  const LrKitEntry *entry = NULL;
  g_autofree char *what = NULL;
  int left;

  for (guint i = 0; i < plan->kit->len && entry == NULL; i++)
    if (((LrKitEntry *) g_ptr_array_index (plan->kit, i))->item->kind == LR_ITEM_LIGHT)
      entry = g_ptr_array_index (plan->kit, i);
  g_assert_nonnull (entry);
  left = lr_plan_kit_left (plan, entry);
  what = g_strconcat ("kit:", entry->item->id, NULL);

  g_assert_true (lr_canvas_place (f->canvas, what));
  plan = lr_document_get_plan (f->document);
  g_assert_cmpint (gui_item (f, lr_document_get_selected (f->document))->kind, ==, LR_ITEM_LIGHT);
  g_assert_cmpint (lr_plan_kit_left (plan, lr_plan_find_kit (plan, what + 4)), ==, left - 1);
  g_assert_false (lr_canvas_drop (f->canvas, "kit:no-such-thing", lr_vec2 (100.0, 100.0)));
}

/* Tools */

static void
test_draw_room_click (GuiFixture    *f,
                      gconstpointer  data)
{
  const LrRoom *room;
  LrVec2 places[4] = { gui_at (f, 0.02, 0.01), gui_at (f, 5.02, 0.04), gui_at (f, 4.98, 4.01), gui_at (f, 0.03, 4.02) };

  lr_canvas_draw_room (f->canvas);
  for (int i = 0; i < 4; i++)
    {
      lr_canvas_hover (f->canvas, places[i], 0);
      gui_drag (f, places[i], places[i], 0);
    }
  gui_settle (f);
  gui_drag (f, places[0], places[0], 0);

  g_assert_false (lr_canvas_has_tool (f->canvas));
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  assert_near_m (room->corners_m[2].x, 5.0);
  assert_near_m (room->corners_m[2].y, 4.0);
  assert_near_m (room->corners_m[3].x, 0.0);
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Draw the room");
}

/* No pointer at all: 3.6 x 3.1 m */
static void
test_draw_room_type (GuiFixture    *f,
                     gconstpointer  data)
{
  const LrRoom *room;

  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.draw-room", NULL);
  gui_type (f, "\n3.6\n");
  gui_type (f, "3.7\b1\n");
  lr_canvas_key (f->canvas, GDK_KEY_Left, 0);
  gui_type (f, "360 cm\n\n");

  g_assert_false (lr_canvas_has_tool (f->canvas));
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  assert_near_m (room->corners_m[1].x, 3.6);
  assert_near_m (room->corners_m[2].y, 3.1);
  assert_near_m (room->corners_m[3].x, 0.0);
}

static void
test_draw_room_refuses (GuiFixture    *f,
                        gconstpointer  data)
{
  g_autofree char *said = NULL;

  g_signal_connect (f->document, "message", G_CALLBACK (keep_cb), &said);
  lr_canvas_draw_room (f->canvas);
  gui_type (f, "\n4\n4\n4\n");
  /* the fifth wall would go through the first */
  lr_canvas_key (f->canvas, GDK_KEY_Down, 0);
  gui_type (f, "6\n");
  g_assert_nonnull (said);
  gui_type (f, "\b\b\b"); /* takes back the length, then two corners */
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 0);
}

static void
test_wall_tool (GuiFixture    *f,
                gconstpointer  data)
{
  const LrItem *window;

  lr_canvas_put_on_wall (f->canvas, LR_ITEM_WINDOW);
  lr_canvas_hover (f->canvas, gui_at (f, 3.0, 0.2), 0);
  lr_canvas_hover (f->canvas, gui_at (f, 4.0, 0.2), 0);
  g_assert_true (lr_document_has_preview (f->document));
  window = gui_item (f, lr_canvas_get_view (f->canvas)->in_hand);
  g_assert_cmpint (window->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (window->along_m + window->window.width_m / 2.0, 4.0, 0.03);
  gui_settle (f);
  gui_drag (f, gui_at (f, 3.5, 0.1), gui_at (f, 3.5, 0.1), 0);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  window = gui_item (f, lr_document_get_selected (f->document));
  g_assert_cmpint (window->kind, ==, LR_ITEM_WINDOW);
  g_assert_cmpint (window->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (window->along_m + window->window.width_m / 2.0, 3.5, 0.03);

  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.put-on-wall", "s", "socket");
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  g_assert_false (lr_document_has_preview (f->document));
}

static void
test_wall_tool_keys (GuiFixture    *f,
                     gconstpointer  data)
{
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.put-on-wall", "s", "socket");
  lr_canvas_key (f->canvas, GDK_KEY_Tab, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Right, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Left, GDK_SHIFT_MASK);
  lr_canvas_key (f->canvas, GDK_KEY_Return, 0);
  g_assert_cmpint (gui_item (f, lr_document_get_selected (f->document))->wall, ==, 1);
  /* the middle of 4.45 m to the centimetre, 10 up, 1 back */
  assert_near_m (gui_item (f, lr_document_get_selected (f->document))->along_m, 2.23 + 0.10 - 0.01);
}

static void
test_ways_in (GuiFixture    *f,
              gconstpointer  data)
{
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (f->canvas), GTK_DIR_TAB_FORWARD));
  g_assert_true (GTK_IS_BUTTON (gtk_window_get_focus (GTK_WINDOW (f->window))));
  lr_document_commit (f->document, gui_make_loft (), "Loft");
  gui_settle (f);
  g_assert_false (GTK_IS_BUTTON (gtk_window_get_focus (GTK_WINDOW (f->window))));
}

static void
test_dark (GuiFixture    *f,
           gconstpointer  data)
{
  g_assert_true (lr_canvas_get_view (f->canvas)->theme == lr_theme_get (LR_THEME_LIGHT));
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", TRUE, NULL);
  gui_settle (f);
  g_assert_true (lr_canvas_get_view (f->canvas)->theme == lr_theme_get (LR_THEME_DARK));
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", FALSE, NULL);
}

#define ADD(path, setup, test) g_test_add ("/canvas/" path, GuiFixture, NULL, setup, test, teardown)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("zoom/fit", setup_loft, test_fit);
  ADD ("zoom/keeps-point", setup_loft, test_zoom_keeps_point);
  ADD ("zoom/denominator", setup_loft, test_zoom_denominator);
  ADD ("zoom/limits", setup_loft, test_zoom_limits);
  ADD ("drag/camera", setup_loft, test_drag_camera);
  ADD ("drag/previews", setup_loft, test_drag_previews);
  ADD ("drag/click", setup_loft, test_click_selects_only);
  ADD ("drag/level", setup_loft, test_drag_level_with_others);
  ADD ("drag/to-wall", setup_loft, test_drag_furniture_to_wall);
  ADD ("drag/paper", setup_loft, test_drag_paper_pans);
  ADD ("drag/turn", setup_loft, test_turn_knob);
  ADD ("drag/size", setup_loft, test_size_knob);
  ADD ("drag/door", setup_loft, test_door_slides);
  ADD ("drag/corner", setup_loft, test_corner);
  ADD ("drag/wall", setup_loft, test_wall);
  ADD ("drag/read-only", setup_loft, test_read_only);
  ADD ("hover", setup_loft, test_hover);
  ADD ("keys/nudge", setup_loft, test_nudge);
  ADD ("keys/turn", setup_loft, test_turn_keys);
  ADD ("keys/delete-duplicate", setup_loft, test_delete_duplicate);
  ADD ("keys/tab", setup_loft, test_tab);
  ADD ("keys/tab-shows", setup_loft, test_tab_shows);
  ADD ("menu/bring-to-wall", setup_loft, test_bring_to_wall);
  ADD ("menu/aim-at", setup_loft, test_aim_at);
  ADD ("accessible", setup_loft, test_accessible);
  ADD ("drop/room", setup_loft, test_drop);
  ADD ("drop/kit", setup_loft, test_drop_kit);
  ADD ("draw-room/click", setup_empty, test_draw_room_click);
  ADD ("draw-room/type", setup_empty, test_draw_room_type);
  ADD ("draw-room/refuses", setup_empty, test_draw_room_refuses);
  ADD ("wall-tool/pointer", setup_loft, test_wall_tool);
  ADD ("wall-tool/keys", setup_loft, test_wall_tool_keys);
  ADD ("ways-in", setup_empty, test_ways_in);
  ADD ("dark", setup_loft, test_dark);

  return g_test_run ();
}
