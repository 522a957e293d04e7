/* test-canvas-input.c - the sheet under a real pointer and keyboard
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Few, because the rest is tested by the functions that the gestures forward to: these show that they do.
 */

#include "gui_fixture.h"
#include "pointer.h"

#define WHEEL_UP 4

static void
setup (GuiFixture    *f,
       gconstpointer  data)
{
  gui_setup (f, data != NULL ? NULL : gui_make_loft ());
}

static void
teardown (GuiFixture    *f,
          gconstpointer  data)
{
  gui_teardown (f);
}

typedef struct
{
  GuiFixture *f;
  const char *id;
} Wish;

static gboolean
is_selected (gpointer data)
{
  Wish *wish = data;

  return g_strcmp0 (lr_document_get_selected (wish->f->document), wish->id) == 0;
}

static void
wait_for_selected (GuiFixture *f,
                   const char *id)
{
  gui_wait_for (is_selected, &(Wish) { f, id });
}

static void
test_drag (GuiFixture    *f,
           gconstpointer  data)
{
  pointer_drag (GTK_WIDGET (f->canvas), GDK_BUTTON_PRIMARY, gui_at (f, 4.81, 2.80), gui_at (f, 5.60, 3.70));
  wait_for_selected (f, GUI_CAMERA);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.x, 5.60, 0.03);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.y, 3.70, 0.03);
  g_assert_cmpstr (lr_document_get_undo_title (f->document), ==, "Move Camera A");
  g_assert_false (lr_document_has_preview (f->document));
}

static gboolean
is_let_go (gpointer data)
{
  return !lr_canvas_is_dragging (((GuiFixture *) data)->canvas);
}

static void
test_escape (GuiFixture    *f,
             gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);

  pointer_move (canvas, gui_at (f, 4.81, 2.80));
  pointer_wait (30);
  pointer_button (canvas, GDK_BUTTON_PRIMARY, TRUE);
  pointer_wait (30);
  pointer_move (canvas, gui_at (f, 5.2, 3.0));
  pointer_wait (30);
  pointer_move (canvas, gui_at (f, 5.4, 3.1));
  pointer_wait (50);
  g_assert_true (lr_canvas_is_dragging (f->canvas));
  pointer_key (canvas, GDK_KEY_Escape);
  gui_wait_for (is_let_go, f);
  pointer_button (canvas, GDK_BUTTON_PRIMARY, FALSE);
  pointer_wait (30);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.x, 4.81, 1e-9);
  g_assert_null (lr_document_get_undo_title (f->document));
}

static void
test_wheel (GuiFixture    *f,
            gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);
  LrVec2 at = lr_vec2 (640.0, 300.0), before_m, after_m;
  double scale = lr_canvas_get_view (f->canvas)->scale;

  pointer_move (canvas, at);
  pointer_wait (40);
  before_m = lr_view_to_room (lr_canvas_get_view (f->canvas), at);
  for (int i = 0; i < 3; i++)
    {
      pointer_button (canvas, WHEEL_UP, TRUE);
      pointer_button (canvas, WHEEL_UP, FALSE);
      pointer_wait (40);
    }
  after_m = lr_view_to_room (lr_canvas_get_view (f->canvas), at);
  g_assert_cmpfloat (lr_canvas_get_view (f->canvas)->scale, >, 1.2 * scale);
  /* the pointer stands on a pixel: half of one */
  g_assert_cmpfloat_with_epsilon (after_m.x, before_m.x, 0.5 / scale);
  g_assert_cmpfloat_with_epsilon (after_m.y, before_m.y, 0.5 / scale);
}

static void
test_middle_pans (GuiFixture    *f,
                  gconstpointer  data)
{
  LrVec2 before = lr_canvas_get_view (f->canvas)->origin, from = gui_at (f, 4.81, 2.80);
  LrVec2 moved;

  pointer_drag (GTK_WIDGET (f->canvas), GDK_BUTTON_MIDDLE, from, lr_vec2_add (from, lr_vec2 (60.0, 30.0)));
  moved = lr_vec2_sub (lr_canvas_get_view (f->canvas)->origin, before);
  g_assert_cmpfloat_with_epsilon (moved.x, 60.0, 1.5);
  g_assert_cmpfloat_with_epsilon (moved.y, 30.0, 1.5);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_CAMERA)->at_m.x, 4.81, 1e-9);
}

static void
test_keys (GuiFixture    *f,
           gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);

  gtk_widget_grab_focus (canvas);
  pointer_wait (50);
  pointer_key (canvas, GDK_KEY_Tab);
  wait_for_selected (f, GUI_WENNA);
  pointer_key (canvas, GDK_KEY_Tab);
  wait_for_selected (f, GUI_INES);
  pointer_key (canvas, GDK_KEY_Right);
  pointer_wait (60);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_INES)->at_m.x, 4.35, 1e-6);
  g_assert_cmpstr (lr_document_get_selected (f->document), ==, GUI_INES);
  pointer_key (canvas, GDK_KEY_Delete);
  wait_for_selected (f, NULL);
  g_assert_null (gui_item (f, GUI_INES));
}

static void
test_draw_room (GuiFixture    *f,
                gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);
  const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 }, { 0, 0 } };
  const LrRoom *room;

  lr_canvas_draw_room (f->canvas);
  for (gsize i = 0; i < G_N_ELEMENTS (corners_m); i++)
    {
      pointer_move (canvas, gui_at (f, corners_m[i].x, corners_m[i].y));
      pointer_wait (30);
      pointer_button (canvas, GDK_BUTTON_PRIMARY, TRUE);
      pointer_button (canvas, GDK_BUTTON_PRIMARY, FALSE);
      pointer_wait (500); /* a second click in the same place would be a double click */
    }
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].x, 4.0, 0.0006);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].y, 3.0, 0.0006);
}

static void
click_twice (GtkWidget *widget,
             LrVec2     at)
{
  pointer_move (widget, at);
  pointer_wait (30);
  for (int i = 0; i < 2; i++)
    {
      pointer_button (widget, GDK_BUTTON_PRIMARY, TRUE);
      pointer_button (widget, GDK_BUTTON_PRIMARY, FALSE);
      pointer_wait (60);
    }
  pointer_wait (100);
}

/* On the dimension, 40 px below the south wall; the field has the focus and its text is selected */
static void
test_wall_length (GuiFixture    *f,
                  gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);

  click_twice (canvas, lr_vec2_add (gui_at (f, 3.0, 0.0), lr_vec2 (0.0, 40.0)));
  g_assert_true (GTK_IS_TEXT (gtk_window_get_focus (GTK_WINDOW (f->window))));
  pointer_key (canvas, GDK_KEY_8);
  pointer_wait (60);
  pointer_key (canvas, GDK_KEY_Return);
  pointer_wait (100);
  g_assert_cmpfloat_with_epsilon (lr_plan_get_setup (lr_document_get_plan (f->document))->room->corners_m[1].x, 8.0, 1e-6);
}

static GtkWidget *
find_popover (GuiFixture *f)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (f->canvas)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER_MENU (child) && gtk_widget_get_mapped (child))
      return child;
  return NULL;
}

static gboolean
has_menu (gpointer data)
{
  return find_popover (data) != NULL;
}

static void
test_menu (GuiFixture    *f,
           gconstpointer  data)
{
  GtkWidget *canvas = GTK_WIDGET (f->canvas);
  int natural;

  pointer_move (canvas, gui_at (f, 4.81, 2.80));
  pointer_wait (30);
  pointer_button (canvas, GDK_BUTTON_SECONDARY, TRUE);
  pointer_button (canvas, GDK_BUTTON_SECONDARY, FALSE);
  gui_wait_for (has_menu, f);
  wait_for_selected (f, GUI_CAMERA);
  pointer_wait (100);
  /* nothing of it is cut off */
  gtk_widget_measure (find_popover (f), GTK_ORIENTATION_VERTICAL, -1, NULL, &natural, NULL, NULL);
  g_assert_cmpint (gtk_widget_get_height (find_popover (f)), >=, natural);
  pointer_key (canvas, GDK_KEY_Escape);
  pointer_wait (100);
  g_assert_null (find_popover (f));
}

#define ADD(path, data, test) g_test_add ("/canvas-input/" path, GuiFixture, data, setup, test, teardown)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("drag", NULL, test_drag);
  ADD ("escape", NULL, test_escape);
  ADD ("wheel", NULL, test_wheel);
  ADD ("middle-pans", NULL, test_middle_pans);
  ADD ("keys", NULL, test_keys);
  ADD ("menu", NULL, test_menu);
  ADD ("wall-length", NULL, test_wall_length);
  ADD ("draw-room", "empty", test_draw_room);

  return g_test_run ();
}
