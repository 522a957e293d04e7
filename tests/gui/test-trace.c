/* test-trace.c - a room traced over a picture of its floor plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is drawn here: an invented room whose inner corners lie on known pixels of 800 by 600, 600 px apart across and 400 up.
 */

#include "gui_fixture.h"
#include "pointer.h"
#include "trace_row.h"
#include "window_fixture.h"

#include <glib/gstdio.h>

#define WIDTH 800.0
#define HEIGHT 600.0

/* From the lower left corner of the picture, up; the room inside its walls */
static const LrVec2 corners_px[] = { { 100, 100 }, { 700, 100 }, { 700, 500 }, { 100, 500 } };

/* What a hand that clicks on whole pixels of the screen is off by, with two clicks of a wall */
#define NEAR_M 0.03

/* (transfer full): the path of a picture, turned clockwise by so much about its middle */
static char *
make_picture (const char *name,
              double      turn_deg)
{
  g_autofree char *folder = g_dir_make_tmp ("trace-XXXXXX", NULL);
  char *path = g_build_filename (folder, name, NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) WIDTH, (int) HEIGHT);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_translate (cr, WIDTH / 2.0, HEIGHT / 2.0);
  cairo_rotate (cr, turn_deg * LR_DEG);
  cairo_translate (cr, -WIDTH / 2.0, -HEIGHT / 2.0);
  cairo_rectangle (cr, 95.0, 95.0, 610.0, 410.0);
  cairo_set_line_width (cr, 10.0);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_stroke (cr);
  cairo_destroy (cr);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  return path;
}

/* Takes @path; nothing of it stays */
static void
remove_picture (char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  g_unlink (path);
  g_rmdir (folder);
  g_free (path);
}

static const LrRoom *
get_room (GuiFixture *f)
{
  return lr_plan_get_setup (lr_document_get_plan (f->document))->room;
}

/* Where a point of the picture is on the sheet */
static LrVec2
at_px (GuiFixture *f,
       LrVec2      point)
{
  LrSimilarity lies;

  g_assert_true (lr_room_underlay (get_room (f), &lies));
  return lr_view_to_device (lr_canvas_get_view (f->canvas), lr_similarity_apply (&lies, point));
}

static LrVec2
turned (LrVec2 point,
        double turn_deg)
{
  LrVec2 middle = lr_vec2 (WIDTH / 2.0, HEIGHT / 2.0);

  return lr_vec2_add (middle, lr_vec2_rotate (lr_vec2_sub (point, middle), -turn_deg * LR_DEG));
}

static gboolean
is_traced (gpointer data)
{
  GuiFixture *f = data;

  return get_room (f)->underlay != NULL && lr_canvas_get_underlay (f->canvas) != NULL;
}

static gboolean
is_scaled (gpointer data)
{
  return !get_room (data)->underlay_is_guessed;
}

static GtkWidget *
find_popover (GuiFixture *f)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (f->canvas)); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER (child) && gtk_widget_get_mapped (child))
      return child;
  return NULL;
}

static gboolean
has_popover (gpointer data)
{
  return find_popover (data) != NULL;
}

static gboolean
has_no_popover (gpointer data)
{
  return find_popover (data) == NULL;
}

static void
trace (GuiFixture *f,
       const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  lr_canvas_trace_file (f->canvas, file);
  gui_wait_for (is_traced, f);
  gui_settle (f);
}

static void
click (GuiFixture *f,
       LrVec2      at)
{
  pointer_move (GTK_WIDGET (f->canvas), at);
  pointer_wait (40);
  pointer_button (GTK_WIDGET (f->canvas), GDK_BUTTON_PRIMARY, TRUE);
  pointer_wait (20);
  pointer_button (GTK_WIDGET (f->canvas), GDK_BUTTON_PRIMARY, FALSE);
  pointer_wait (60);
}

static gboolean
is_check (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_CHECK_BUTTON (widget);
}

/* By the pointer and the keyboard: two points, their distance, then the walls over it; each step can be undone */
static void
test_pointer (GuiFixture    *f,
              gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);
  const LrRoom *room;

  trace (f, path);
  g_assert_true (get_room (f)->underlay_is_guessed);
  g_assert_cmpstr (get_room (f)->underlay_file, ==, "room.png");
  g_assert_true (lr_canvas_has_tool (f->canvas));
  click (f, at_px (f, corners_px[0]));
  click (f, at_px (f, corners_px[1]));
  gui_wait_for (has_popover, f);
  pointer_wait (150);
  pointer_key (GTK_WIDGET (f->canvas), GDK_KEY_6);
  pointer_key (GTK_WIDGET (f->canvas), GDK_KEY_Return);
  gui_wait_for (is_scaled, f);
  gui_wait_for (has_no_popover, f);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_scale, 6.0 / 600.0, 6.0 / 600.0 * 0.005);
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Scale the picture");

  /* the room is drawn next */
  g_assert_true (lr_canvas_has_tool (f->canvas));
  gui_settle (f);
  for (int i = 0; i <= 4; i++)
    click (f, at_px (f, corners_px[i % 4]));
  g_assert_false (lr_canvas_has_tool (f->canvas));
  room = get_room (f);
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].x - room->corners_m[0].x, 6.0, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].y - room->corners_m[0].y, 4.0, NEAR_M);
  /* it begins at 0, 0, and the picture has come with it */
  g_assert_cmpfloat (room->corners_m[0].x, ==, 0.0);
  g_assert_cmpfloat_with_epsilon (room->underlay_x_m, -1.0, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->underlay_y_m, -1.0, NEAR_M);

  lr_document_undo (f->document);
  lr_document_undo (f->document);
  g_assert_true (get_room (f)->underlay_is_guessed);
  lr_document_undo (f->document);
  g_assert_null (get_room (f)->underlay);
  g_assert_null (lr_canvas_get_underlay (f->canvas));
  lr_document_redo (f->document);
  gui_wait_for (is_traced, f);
  remove_picture (path);
}

static double
drawn_m (GuiFixture      *f,
         double           length_m,
         GdkModifierType  state)
{
  LrVec2 places[] = { gui_at (f, 0.0, 0.0), gui_at (f, length_m, 0.03), gui_at (f, length_m - 0.02, 3.0), gui_at (f, 0.02, 3.02) };

  lr_canvas_draw_room (f->canvas);
  for (int i = 0; i <= 4; i++)
    {
      lr_canvas_hover (f->canvas, places[i % 4], state);
      gui_drag (f, places[i % 4], places[i % 4], state);
      gui_settle (f);
    }
  g_assert_false (lr_canvas_has_tool (f->canvas));
  return get_room (f)->corners_m[1].x - get_room (f)->corners_m[0].x;
}

/* At 1:70 a pixel is 1.85 cm, and the grid of the sheet is 5 cm: 4.33 m is 4.35 m there, but square corners stay square */
static void
test_fine (GuiFixture    *f,
           gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);

  lr_canvas_zoom_to (f->canvas, 70.0);
  g_assert_cmpfloat_with_epsilon (drawn_m (f, 4.33, 0), 4.35, 1e-6);
  g_assert_cmpfloat_with_epsilon (drawn_m (f, 4.33, GDK_SHIFT_MASK), 4.33, 1e-6);
  trace (f, path);
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  lr_canvas_zoom_to (f->canvas, 70.0);
  g_assert_cmpfloat_with_epsilon (drawn_m (f, 4.33, 0), 4.33, 1e-6);
  g_assert_cmpfloat (get_room (f)->corners_m[1].y, ==, get_room (f)->corners_m[0].y);
  g_assert_cmpfloat (get_room (f)->corners_m[2].x, ==, get_room (f)->corners_m[1].x);
  remove_picture (path);
}

static void
move_cross_to (GuiFixture *f,
               LrVec2     *cross,
               LrVec2      to)
{
  while (fabs (to.x - cross->x) >= 0.75 || fabs (to.y - cross->y) >= 0.75)
    {
      gboolean is_across = fabs (to.x - cross->x) >= 0.75;
      double way = is_across ? to.x - cross->x : to.y - cross->y, step = fabs (way) >= 10.0 ? 10.0 : 1.0;
      guint keyval = is_across ? (way > 0.0 ? GDK_KEY_Right : GDK_KEY_Left) : (way > 0.0 ? GDK_KEY_Down : GDK_KEY_Up);

      lr_canvas_key (f->canvas, keyval, step < 10.0 ? GDK_SHIFT_MASK : 0);
      *(is_across ? &cross->x : &cross->y) += way > 0.0 ? step : -step;
    }
}

/* No pointer at all, of a scan that lies 2° off: two points of its lower wall, in feet, level */
static void
test_keys (GuiFixture    *f,
           gconstpointer  data)
{
  char *path = make_picture ("scan.png", 2.0);
  LrVec2 p = turned (corners_px[0], 2.0), q = turned (corners_px[1], 2.0), cross;
  LrSimilarity lies;
  GtkWidget *entry, *check;

  trace (f, path);
  /* where the cross begins: at the pointer, wherever that is, or in the middle; Escape and a new start after a hover settle it */
  lr_canvas_hover (f->canvas, cross = lr_vec2 (400.0, 300.0), 0);
  move_cross_to (f, &cross, at_px (f, p));
  lr_canvas_key (f->canvas, GDK_KEY_Return, 0);
  move_cross_to (f, &cross, at_px (f, q));
  lr_canvas_key (f->canvas, GDK_KEY_Return, 0);
  gui_wait_for (has_popover, f);
  entry = find (find_popover (f), is_entry, NULL);
  check = find (find_popover (f), is_check, NULL);
  g_assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  type (entry, "about six");
  g_assert_true (get_room (f)->underlay_is_guessed);
  type (entry, "19' 8\"");
  g_assert_false (get_room (f)->underlay_is_guessed);

  /* 19 feet and 8 inches are 5.9944 m; the turn that the picture had is taken back */
  g_assert_true (lr_room_underlay (get_room (f), &lies));
  g_assert_cmpfloat_with_epsilon (lies.scale, 5.9944 / 600.0, 5.9944 / 600.0 * 0.005);
  g_assert_cmpfloat_with_epsilon (lies.turn_rad / LR_DEG, 2.0, 0.25);
  g_assert_cmpfloat_with_epsilon (lr_similarity_apply (&lies, p).y, lr_similarity_apply (&lies, q).y, NEAR_M);
  remove_picture (path);
}

/* Under walls that are there already: dragged, nudged, turned; one step each */
static void
test_move (GuiFixture    *f,
           gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);
  double x_m, y_m;
  LrVec2 origin;

  trace (f, path);
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.move-picture", NULL);
  x_m = get_room (f)->underlay_x_m;
  y_m = get_room (f)->underlay_y_m;
  origin = lr_canvas_get_view (f->canvas)->origin;
  pointer_drag (GTK_WIDGET (f->canvas), GDK_BUTTON_PRIMARY, gui_at (f, 1.0, 1.0), gui_at (f, 2.0, 1.5));
  pointer_wait (60);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_x_m, x_m + 1.0, NEAR_M);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_y_m, y_m + 0.5, NEAR_M);
  g_assert_cmpfloat (lr_canvas_get_view (f->canvas)->origin.x, ==, origin.x);
  g_assert_false (lr_document_has_preview (f->document));
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Move the picture");
  lr_document_undo (f->document);
  g_assert_cmpfloat (get_room (f)->underlay_x_m, ==, x_m);

  lr_canvas_key (f->canvas, GDK_KEY_Right, 0);
  lr_canvas_key (f->canvas, GDK_KEY_Down, GDK_SHIFT_MASK);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_x_m, x_m + 0.10, 0.0006);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_y_m, y_m - 0.01, 0.0006);
  lr_canvas_key (f->canvas, GDK_KEY_bracketleft, 0);
  lr_canvas_key (f->canvas, GDK_KEY_braceright, GDK_SHIFT_MASK);
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_turn_deg, 0.9, 1e-3);
  lr_canvas_key (f->canvas, GDK_KEY_Return, 0);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  g_assert_cmpuint (get_room (f)->n_corners, ==, 5);
  remove_picture (path);
}

/* Shown, hidden, gone; hidden it cannot be scaled */
static void
test_actions (GuiFixture    *f,
              gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);
  g_autofree char *said = NULL;

  trace (f, path);
  g_signal_connect (f->document, "message", G_CALLBACK (gui_keep_cb), &said);
  lr_canvas_key (f->canvas, GDK_KEY_Escape, 0);
  /* over a picture whose scale is a guess the room comes out wrong */
  lr_canvas_draw_room (f->canvas);
  g_assert_true (g_str_has_prefix (said, "The picture is not to scale yet"));
  lr_canvas_leave_tool (f->canvas);
  /* no tool is left without its picture */
  lr_canvas_trace_scale (f->canvas);
  g_assert_true (lr_canvas_has_tool (f->canvas));
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.show-picture", NULL);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  g_assert_true (get_room (f)->underlay_is_hidden);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.scale-picture", NULL);
  g_assert_false (lr_canvas_has_tool (f->canvas));
  g_assert_cmpstr (said, ==, "There is no picture to be seen under this room.");
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.show-picture", NULL);
  g_assert_false (get_room (f)->underlay_is_hidden);
  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.remove-picture", NULL);
  g_assert_null (get_room (f)->underlay);
  g_assert_null (lr_canvas_get_underlay (f->canvas));
  remove_picture (path);
}

/* What is no picture, or a broken one, is said, and nothing has changed */
static void
test_refused (GuiFixture    *f,
              gconstpointer  data)
{
  static const struct { const char *text, *sentence; } cases[] = {
    { "Dear all", "“a.png” cannot be used: it is no PNG, JPEG, SVG or PDF." },
    { "\x89PNG\r\n\x1a\n and no more", "“a.png” is damaged." },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      char *path = make_picture ("a.png", 0.0);
      g_autoptr (GFile) file = g_file_new_for_path (path);
      g_autofree char *said = NULL;
      LrPlan *before = lr_document_get_plan (f->document);
      gulong id = g_signal_connect (f->document, "message", G_CALLBACK (gui_keep_cb), &said);

      g_assert_true (g_file_set_contents (path, cases[i].text, -1, NULL));
      lr_canvas_trace_file (f->canvas, file);
      for (int k = 0; k < 100 && said == NULL; k++)
        pointer_wait (30);
      g_assert_cmpstr (said, ==, cases[i].sentence);
      g_assert_true (lr_document_get_plan (f->document) == before);
      g_signal_handler_disconnect (f->document, id);
      remove_picture (path);
    }
}

/* A file that is dropped onto the sheet */
static void
test_drop (GuiFixture    *f,
           gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (f->canvas));
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean is_taken = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, gdk_file_list_new_from_array (&file, 1));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        g_signal_emit_by_name (controller, "drop", &value, 200.0, 200.0, &is_taken);
    }
  g_assert_true (is_taken);
  gui_wait_for (is_traced, f);
  remove_picture (path);
}

/* Details: the fields follow the plan and change it */
static void
test_row (GuiFixture    *f,
          gconstpointer  data)
{
  char *path = make_picture ("room.png", 0.0);
  GtkWidget *window = gtk_window_new (), *row = g_object_new (LR_TYPE_TRACE_ROW, NULL), *field;

  gtk_window_set_child (GTK_WINDOW (window), row);
  gtk_window_present (GTK_WINDOW (window));
  lr_trace_row_show (LR_TRACE_ROW (row), f->document);
  g_assert_null (find (row, is_field_of, "underlay-dim-pct"));
  trace (f, path);
  lr_trace_row_show (LR_TRACE_ROW (row), f->document);
  settle ();
  field = find (row, is_field_of, "underlay-dim-pct");
  g_assert_nonnull (field);
  type (find (field, is_entry, NULL), "75");
  g_assert_cmpfloat_with_epsilon (get_room (f)->underlay_dim, 0.75, 1e-9);
  g_assert_null (find (row, is_field_of, "underlay-page")); /* a PDF's alone */
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find (row, is_check, NULL)), FALSE);
  g_assert_true (get_room (f)->underlay_is_hidden);
  gtk_window_destroy (GTK_WINDOW (window));
  remove_picture (path);
}

#define ADD(path, setup, test) g_test_add ("/trace/" path, GuiFixture, NULL, setup, test, gui_teardown_cb)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("pointer", gui_setup_empty_cb, test_pointer);
  ADD ("fine", gui_setup_empty_cb, test_fine);
  ADD ("keys", gui_setup_empty_cb, test_keys);
  ADD ("move", gui_setup_loft_cb, test_move);
  ADD ("actions", gui_setup_empty_cb, test_actions);
  ADD ("refused", gui_setup_empty_cb, test_refused);
  ADD ("drop", gui_setup_empty_cb, test_drop);
  ADD ("row", gui_setup_empty_cb, test_row);

  return g_test_run ();
}
