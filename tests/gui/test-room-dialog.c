/* test-room-dialog.c - the room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#include "room_dialog.h"
#include "room_walls.h"

#define LEFT (90.0 * LR_DEG)
#define RIGHT (-90.0 * LR_DEG)
#define NEAR_M 0.0006

/* What comes of the lengths, without the window */

static void
assert_corner (const LrRoomWalls *walls,
               guint              i,
               double             x_m,
               double             y_m)
{
  g_assert_cmpuint (i, <, walls->corners_m->len);
  g_assert_cmpfloat_with_epsilon (g_array_index (walls->corners_m, LrVec2, i).x, x_m, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (walls->corners_m, LrVec2, i).y, y_m, 1e-9);
}

/* An L of 5 x 4 without 2 x 1: 18 m2. The last wall, 4 m, comes out by itself. */
static void
test_walls_last_comes_out (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 3.0, LEFT }, { 2.0, RIGHT }, { 1.0, LEFT }, { 3.0, LEFT } };
  LrRoomWalls walls = { 0 };

  lr_room_walls_walk (&walls, legs, G_N_ELEMENTS (legs), lr_vec2 (0.0, 0.0), 0.0, LR_UNITS_METRIC);
  g_assert_true (walls.is_room);
  g_assert_true (walls.has_closing_wall);
  g_assert_cmpuint (walls.corners_m->len, ==, 6);
  assert_corner (&walls, 5, 0.0, 4.0);
  g_assert_cmpstr (walls.status, ==, "The last wall comes out at 4.00\302\240m. 18.0\302\240m².");
  lr_room_walls_clear (&walls);
}

static void
test_walls_gap_is_shared (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 4.96, LEFT }, { 4.0, LEFT } };
  LrRoomWalls walls = { 0 };

  lr_room_walls_walk (&walls, legs, G_N_ELEMENTS (legs), lr_vec2 (0.0, 0.0), 0.0, LR_UNITS_METRIC);
  g_assert_true (walls.is_room);
  g_assert_false (walls.has_closing_wall);
  g_assert_cmpuint (walls.corners_m->len, ==, 4);
  g_assert_nonnull (strstr (walls.status, "0.04\302\240m"));
  lr_room_walls_clear (&walls);
}

/* Where the walk starts and where it goes are kept: a room is corrected in its place. (3, 4) / 5 along the first wall. */
static void
test_walls_in_place (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 2.0, LEFT }, { 5.0, LEFT }, { 2.0, LEFT } };
  LrRoomWalls walls = { 0 };

  lr_room_walls_walk (&walls, legs, G_N_ELEMENTS (legs), lr_vec2 (1.0, 1.0), atan2 (4.0, 3.0), LR_UNITS_METRIC);
  assert_corner (&walls, 0, 1.0, 1.0);
  assert_corner (&walls, 1, 4.0, 5.0);
  assert_corner (&walls, 2, 4.0 - 1.6, 5.0 + 1.2);
  lr_room_walls_clear (&walls);
}

static void
test_walls_refuse (void)
{
  const LrTraverseLeg crossing[] = { { 4.0, LEFT }, { 2.0, LEFT }, { 2.0, LEFT }, { 4.0, LEFT } };
  LrRoomWalls walls = { 0 };

  lr_room_walls_walk (&walls, crossing, G_N_ELEMENTS (crossing), lr_vec2 (0.0, 0.0), 0.0, LR_UNITS_METRIC);
  g_assert_false (walls.is_room);
  lr_room_walls_walk (&walls, crossing, 1, lr_vec2 (0.0, 0.0), 0.0, LR_UNITS_METRIC);
  g_assert_false (walls.is_room);
  lr_room_walls_rectangle (&walls, 3.0, 0.0, LR_UNITS_METRIC);
  g_assert_false (walls.is_room);
  lr_room_walls_clear (&walls);
}

/* The window */

static void
setup (GuiFixture    *f,
       gconstpointer  data)
{
  gui_setup (f, data != NULL ? gui_make_loft () : NULL);
}

static void
teardown (GuiFixture    *f,
          gconstpointer  data)
{
  gui_teardown (f);
}

static GtkWidget *
open_dialog (GuiFixture *f)
{
  GListModel *toplevels = gtk_window_get_toplevels ();
  GtkWidget *dialog = NULL;

  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.type-room", NULL);
  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (toplevels, i);

      if (LR_IS_ROOM_DIALOG (window))
        dialog = window;
    }
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (dialog);
  return dialog;
}

/* The nth entry that can be seen, in reading order */
static GtkWidget *
find_entry (GtkWidget *widget,
            int       *nth)
{
  if (!gtk_widget_get_child_visible (widget) || !gtk_widget_get_mapped (widget))
    return NULL;
  if (GTK_IS_ENTRY (widget))
    return (*nth)-- == 0 ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *entry = find_entry (child, nth);

      if (entry != NULL)
        return entry;
    }
  return NULL;
}

static void
type_into (GtkWidget  *dialog,
           int         nth,
           const char *text)
{
  GtkWidget *entry = find_entry (dialog, &nth);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
test_rectangle (GuiFixture    *f,
                gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  type_into (dialog, 0, "3.6");
  type_into (dialog, 1, "three");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 0);

  type_into (dialog, 1, "310 cm");
  type_into (dialog, 2, "2.45");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].x, 3.6, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].y, 3.1, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->height_m, 2.45, NEAR_M);
  lr_document_undo (f->document);
  g_assert_null (lr_document_get_undo_title (f->document));
  gui_settle (f);
}

/* A room that is there is opened wall by wall, and a wall corrected: what stands in it keeps its place */
static void
test_correct_a_wall (GuiFixture    *f,
                     gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  /* each wall has a length and an angle: the first is entry 0, the last two close by themselves */
  type_into (dialog, 0, "7.50");
  type_into (dialog, 6, "");
  type_into (dialog, 8, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[1].x, 7.5, NEAR_M);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_WENNA)->at_m.x, 2.6, 1e-9);
}

/* A row left empty between two walls is a wall forgotten: the two walls above it do not become a triangle */
static void
test_forgotten_wall (GuiFixture    *f,
                     gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);

  type_into (dialog, 4, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 5);

  type_into (dialog, 6, "");
  type_into (dialog, 8, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 3);
}

/* What is typed without a click goes into the first length */
static void
test_first_length (GuiFixture    *f,
                   gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  int first = 0;

  g_assert_true (gtk_widget_get_parent (gtk_window_get_focus (GTK_WINDOW (dialog))) == find_entry (dialog, &first));
  gtk_window_close (GTK_WINDOW (dialog));
  gui_settle (f);
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/room-walls/last-comes-out", test_walls_last_comes_out);
  g_test_add_func ("/room-walls/gap-is-shared", test_walls_gap_is_shared);
  g_test_add_func ("/room-walls/in-place", test_walls_in_place);
  g_test_add_func ("/room-walls/refuse", test_walls_refuse);
  g_test_add ("/room-dialog/rectangle", GuiFixture, NULL, setup, test_rectangle, teardown);
  g_test_add ("/room-dialog/correct-a-wall", GuiFixture, "loft", setup, test_correct_a_wall, teardown);
  g_test_add ("/room-dialog/forgotten-wall", GuiFixture, "loft", setup, test_forgotten_wall, teardown);
  g_test_add ("/room-dialog/first-length", GuiFixture, NULL, setup, test_first_length, teardown);
  g_test_add ("/room-dialog/first-length-of-the-walls", GuiFixture, "loft", setup, test_first_length, teardown);

  return g_test_run ();
}
