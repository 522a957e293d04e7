/* test-canvas.c - the sheet under the hand: taking, moving, turning, zoom, and that what is seen is true
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#include "floor.h"

/* The file holds whole millimetres */
#define NEAR_M 0.0006

#define assert_near_m(a, b) g_assert_cmpfloat_with_epsilon (a, b, NEAR_M)

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
test_read_only (GuiFixture    *f,
                gconstpointer  data)
{
  g_autofree char *said = NULL;
  LrPlan *plan = gui_make_loft ();

  plan->is_read_only = TRUE; /* as the reader makes it of a newer version's file */
  lr_document_reset (f->document, plan, NULL);
  g_signal_connect (f->document, "message", G_CALLBACK (gui_keep_cb), &said);
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

/* The sheet as it is on the screen, without its children; (transfer full): RGB24 */
static cairo_surface_t *
grab_sheet (GuiFixture *f)
{
  const LrView *view = lr_canvas_get_view (f->canvas);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) view->width, (int) view->height);
  g_autoptr (GdkTexture) texture = NULL;
  GskRenderNode *node;

  gui_settle (f);
  GTK_WIDGET_GET_CLASS (f->canvas)->snapshot (GTK_WIDGET (f->canvas), snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (GTK_WIDGET (f->canvas))), node,
                                         &GRAPHENE_RECT_INIT (0, 0, (float) view->width, (float) view->height));
  gsk_render_node_unref (node);
  gdk_texture_download (texture, cairo_image_surface_get_data (image), (gsize) cairo_image_surface_get_stride (image));
  cairo_surface_mark_dirty (image);
  return image;
}

/* The same, drawn anew from the plan */
static cairo_surface_t *
draw_sheet (GuiFixture *f)
{
  const LrView *view = lr_canvas_get_view (f->canvas);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) view->width, (int) view->height);
  cairo_t *cr = cairo_create (image);

  lr_floor_draw (cr, lr_document_get_plan (f->document), lr_document_get_study (f->document),
                 lr_document_get_remarks (f->document), view);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

/* Counts pixels of which a channel is off by more than antialiasing in two steps can be */
static int
count_unlike (cairo_surface_t *a,
              cairo_surface_t *b)
{
  const guchar *p = cairo_image_surface_get_data (a), *q = cairo_image_surface_get_data (b);
  gsize n = (gsize) cairo_image_surface_get_stride (a) * (gsize) cairo_image_surface_get_height (a);
  int n_unlike = 0;

  g_assert_cmpint (cairo_image_surface_get_stride (a), ==, cairo_image_surface_get_stride (b));
  for (gsize i = 0; i < n; i++)
    if (ABS (p[i] - q[i]) > 8)
      n_unlike++;
  return n_unlike;
}

static void
assert_sheet_is_true (GuiFixture *f)
{
  cairo_surface_t *seen = grab_sheet (f), *wanted = draw_sheet (f);

  g_assert_cmpint (count_unlike (seen, wanted), ==, 0);
  cairo_surface_destroy (seen);
  cairo_surface_destroy (wanted);
}

/* Whatever has been kept, moved or painted over, a sheet at rest shows what the plan is */
static void
test_layers (GuiFixture    *f,
             gconstpointer  data)
{
  assert_sheet_is_true (f);
  gui_drag (f, gui_at (f, 4.81, 2.80), gui_at (f, 5.50, 3.90), 0);
  assert_sheet_is_true (f);
  lr_document_undo (f->document);
  assert_sheet_is_true (f);
  lr_document_set_shown (f->document, LR_SHOW_SIGHT | LR_SHOW_LIGHT);
  lr_document_select (f->document, NULL);
  assert_sheet_is_true (f);
  lr_document_set_units (f->document, LR_UNITS_IMPERIAL);
  assert_sheet_is_true (f);
}

static gboolean
stop_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

static void
test_layers_settle (GuiFixture    *f,
                    gconstpointer  data)
{
  gboolean has_rested = FALSE;

  lr_canvas_zoom_at (f->canvas, 1.3, lr_vec2 (400.0, 300.0));
  lr_canvas_pan (f->canvas, lr_vec2 (37.0, -12.0));
  gui_settle (f);
  g_timeout_add (300, stop_cb, &has_rested);
  gui_wait_for (is_true, &has_rested);
  assert_sheet_is_true (f);
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

#define ADD(path, setup, test) g_test_add ("/canvas/" path, GuiFixture, NULL, setup, test, gui_teardown_cb)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("zoom/fit", gui_setup_loft_cb, test_fit);
  ADD ("zoom/keeps-point", gui_setup_loft_cb, test_zoom_keeps_point);
  ADD ("zoom/denominator", gui_setup_loft_cb, test_zoom_denominator);
  ADD ("zoom/limits", gui_setup_loft_cb, test_zoom_limits);
  ADD ("drag/camera", gui_setup_loft_cb, test_drag_camera);
  ADD ("drag/previews", gui_setup_loft_cb, test_drag_previews);
  ADD ("drag/click", gui_setup_loft_cb, test_click_selects_only);
  ADD ("drag/level", gui_setup_loft_cb, test_drag_level_with_others);
  ADD ("drag/to-wall", gui_setup_loft_cb, test_drag_furniture_to_wall);
  ADD ("drag/paper", gui_setup_loft_cb, test_drag_paper_pans);
  ADD ("drag/turn", gui_setup_loft_cb, test_turn_knob);
  ADD ("drag/size", gui_setup_loft_cb, test_size_knob);
  ADD ("drag/door", gui_setup_loft_cb, test_door_slides);
  ADD ("drag/corner", gui_setup_loft_cb, test_corner);
  ADD ("drag/wall", gui_setup_loft_cb, test_wall);
  ADD ("drag/read-only", gui_setup_loft_cb, test_read_only);
  ADD ("layers/true", gui_setup_loft_cb, test_layers);
  ADD ("layers/settle", gui_setup_loft_cb, test_layers_settle);
  ADD ("hover", gui_setup_loft_cb, test_hover);
  ADD ("dark", gui_setup_loft_cb, test_dark);

  return g_test_run ();
}
