/* test-hit.c - what a pointer meets on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected places follow from the plan's metres at 100 px to the metre: x = 100 + 100 X, y = 500 - 100 Y.
 */

#include "small_room.h"

typedef struct
{
  const char *name;
  gsize       in_hand; /* offset of an id in SmallRoom; 0: nothing */
  double      x_m, y_m; /* where the pointer is */
  double      dx, dy;  /* off that, px */
  LrHitType   type;
  gsize       id;      /* offset; 0: none */
  int         index;
} HitCase;

#define ID(member) G_STRUCT_OFFSET (SmallRoom, member)

static const HitCase cases[] = {
  { "floor", 0, 5.6, 3.7, 0, 0, LR_HIT_NOTHING, 0, 0 },
  { "outside", 0, -0.8, 2.0, 0, 0, LR_HIT_NOTHING, 0, 0 },
  { "head", 0, 2.0, 2.0, 0, 0, LR_HIT_ITEM, ID (subject), 0 },
  { "camera-body", 0, 4.8, 2.6, 0, 0, LR_HIT_ITEM, ID (camera), 0 },
  { "camera-foot", 0, 4.8, 2.6, 0, 46, LR_HIT_ITEM, ID (camera), 0 },
  { "camera-outside", 0, 4.8, 2.6, 0, -52, LR_HIT_NOTHING, 0, 0 },
  { "light", 0, 3.4, 0.8, 0, 0, LR_HIT_ITEM, ID (light), 0 },
  { "table", 0, 0.6, 1.5, 0, 0, LR_HIT_ITEM, ID (table), 0 },
  { "table-corner", 0, 0.26, 2.69, 0, 0, LR_HIT_ITEM, ID (table), 0 },
  { "house-light", 0, 4.4, 3.6, 0, 0, LR_HIT_ITEM, ID (house_light), 0 },
  { "socket", 0, 2.5, 0.0, 4, -4, LR_HIT_ITEM, ID (socket), 0 },
  /* 9 px from its middle, and 4 px from the end of the lead */
  { "socket-beside-lead", 0, 2.5, 0.0, 0, -16, LR_HIT_ITEM, ID (socket), 0 },
  { "window", 0, 1.2, -0.05, 0, 0, LR_HIT_ITEM, ID (window), 0 },
  { "lead", 0, 2.5, 0.5, 3, 0, LR_HIT_ITEM, ID (lead), 0 },
  { "corner", 0, 6.0, 4.0, -6, 6, LR_HIT_CORNER, 0, 2 },
  { "wall-north", 0, 5.0, 4.05, 0, 0, LR_HIT_WALL, 0, 2 },
  { "wall-west", 0, 0.0, 0.6, -7, 0, LR_HIT_WALL, 0, 3 },
  /* table .7 deep, 1.4 wide: the halo's corner is 7 px outside it */
  { "size-corner-0", ID (table), 0.95, 2.7, 7, -7, LR_HIT_SIZE_KNOB, ID (table), 0 },
  { "size-corner-2", ID (table), 0.25, 2.7, -7, -7, LR_HIT_SIZE_KNOB, ID (table), 2 },
  { "size-corner-4", ID (table), 0.25, 1.3, -7, 7, LR_HIT_SIZE_KNOB, ID (table), 4 },
  { "size-edge-1", ID (table), 0.6, 2.7, 0, -7, LR_HIT_SIZE_KNOB, ID (table), 1 },
  { "size-edge-7", ID (table), 0.95, 2.0, 7, 0, LR_HIT_SIZE_KNOB, ID (table), 7 },
  { "size-reach", ID (table), 0.95, 2.7, 7, -18, LR_HIT_SIZE_KNOB, ID (table), 0 },
  /* it faces up the sheet from a stand of .3 m: 30 + 7 + 16.5 px */
  { "turn-flag", ID (flag), 5.2, 0.7, 0, -53.5, LR_HIT_TURN_KNOB, ID (flag), 0 },
  { "path-1", ID (lead), 2.5, 0.6, 2, 2, LR_HIT_PATH_KNOB, ID (lead), 1 },
  /* wall 0 runs along +x: the window's start is its left end, 7 px outside the glass */
  { "window-start", ID (window), 0.6, -0.07, -7, 0, LR_HIT_SIZE_KNOB, ID (window), 0 },
  { "window-end", ID (window), 1.8, -0.07, 7, 0, LR_HIT_SIZE_KNOB, ID (window), 1 },
};

static const char *
id_at (const SmallRoom *room,
       gsize            offset)
{
  return offset > 0 ? G_STRUCT_MEMBER (const char *, room, offset) : NULL;
}

static void
test_hit (gconstpointer data)
{
  const HitCase *c = data;
  SmallRoom room = small_room_new ();
  g_autoptr (LrStudy) study = lr_study_new (room.plan);
  LrView view = small_room_view (LR_THEME_LIGHT);
  LrVec2 at = lr_view_to_device (&view, lr_vec2 (c->x_m, c->y_m));
  LrHit hit;

  view.in_hand = id_at (&room, c->in_hand);
  hit = lr_floor_hit (study, &view, lr_vec2 (at.x + c->dx, at.y + c->dy));
  g_assert_cmpint (hit.type, ==, c->type);
  g_assert_cmpstr (hit.id, ==, id_at (&room, c->id));
  if (c->type != LR_HIT_ITEM && c->type != LR_HIT_NOTHING)
    g_assert_cmpint (hit.index, ==, c->index);

  small_room_clear (&room);
}

/* The turn knob stands on the facing side, past the halo */
static void
test_turn_knob (void)
{
  SmallRoom room = small_room_new ();
  g_autoptr (LrStudy) study = lr_study_new (room.plan);
  LrView view = small_room_view (LR_THEME_LIGHT);
  LrVec2 at = lr_view_to_device (&view, lr_vec2 (4.8, 2.6));
  const LrPlaced *camera = lr_study_find_placed (study, room.camera);
  LrVec2 facing = lr_vec2 (cos (camera->facing_rad), -sin (camera->facing_rad));
  LrHit hit;

  view.in_hand = room.camera;
  hit = lr_floor_hit (study, &view, lr_vec2_along (at, facing, 100.0 * camera->item->camera.stand_radius_m + 7.0 + 16.5));
  g_assert_cmpint (hit.type, ==, LR_HIT_TURN_KNOB);
  g_assert_cmpstr (hit.id, ==, room.camera);

  /* nobody may turn things in a plan that cannot be changed, nor on paper */
  view.is_read_only = TRUE;
  hit = lr_floor_hit (study, &view, lr_vec2_along (at, facing, 100.0 * camera->item->camera.stand_radius_m + 7.0 + 16.5));
  g_assert_cmpint (hit.type, !=, LR_HIT_TURN_KNOB);

  small_room_clear (&room);
}

static void
test_empty (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrView view = small_room_view (LR_THEME_LIGHT);
  cairo_rectangle_t extents;

  g_assert_cmpint (lr_floor_hit (study, &view, lr_vec2 (300.0, 300.0)).type, ==, LR_HIT_NOTHING);
  lr_floor_item_extents (study, &view, "nobody", &extents);
  g_assert_cmpfloat (extents.width, ==, 0.0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/hit/", cases[i].name, NULL);

      g_test_add_data_func (path, &cases[i], test_hit);
    }
  g_test_add_func ("/hit/turn-knob", test_turn_knob);
  g_test_add_func ("/hit/empty", test_empty);

  return g_test_run ();
}
