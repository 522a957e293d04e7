/* test-canvas-tools.c - what the Tray brings, rooms drawn, things put on walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

/* The file holds whole millimetres */
#define NEAR_M 0.0006

#define assert_near_m(a, b) g_assert_cmpfloat_with_epsilon (a, b, NEAR_M)

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

  g_signal_connect (f->document, "message", G_CALLBACK (gui_keep_cb), &said);
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

#define ADD(path, setup, test) g_test_add ("/canvas-tools/" path, GuiFixture, NULL, setup, test, gui_teardown_cb)

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  ADD ("drop/room", gui_setup_loft_cb, test_drop);
  ADD ("drop/kit", gui_setup_loft_cb, test_drop_kit);
  ADD ("draw-room/click", gui_setup_empty_cb, test_draw_room_click);
  ADD ("draw-room/type", gui_setup_empty_cb, test_draw_room_type);
  ADD ("draw-room/refuses", gui_setup_empty_cb, test_draw_room_refuses);
  ADD ("wall-tool/pointer", gui_setup_loft_cb, test_wall_tool);
  ADD ("wall-tool/keys", gui_setup_loft_cb, test_wall_tool_keys);
  ADD ("ways-in", gui_setup_empty_cb, test_ways_in);

  return g_test_run ();
}
