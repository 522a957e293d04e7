/* placing_wall.c - a free stretch of wall for what hangs on walls or stands with its back to them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "placing_private.h"

#define GAP_M 0.02  /* between a wall and what stands at it */
#define RING_M 0.2  /* step of the search for a free place */

/**
 * lr_placing_is_at_wall:
 * @item: a thing
 *
 * Returns: whether its like stands with its back to a wall
 */
gboolean
lr_placing_is_at_wall (const LrItem *item)
{
  if (item->kind != LR_ITEM_FURNITURE)
    return item->kind == LR_ITEM_NOISE;

  return item->furniture.form == LR_FURNITURE_SOFA || item->furniture.form == LR_FURNITURE_CABINET
         || item->furniture.form == LR_FURNITURE_CHEST || item->furniture.form == LR_FURNITURE_RADIATOR;
}

static double
item_depth_m (const LrItem *item)
{
  return item->kind == LR_ITEM_FURNITURE ? item->furniture.length_m : 0.1;
}

static double
item_width_m (const LrItem *item)
{
  switch ((int) item->kind)
    {
    case LR_ITEM_FURNITURE:
      return item->furniture.width_m;
    case LR_ITEM_DOOR:
      return item->door.width_m;
    case LR_ITEM_WINDOW:
      return item->window.width_m;
    default:
      return 0.15;
    }
}

/* Whether a stretch of @wall about @middle_m along it is clear of doors, windows and sockets there */
static gboolean
is_wall_free (const LrSetup *setup,
              int            wall,
              double         middle_m,
              double         width_m)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *other = g_ptr_array_index (setup->items, i);
      gboolean is_opening = other->kind == LR_ITEM_DOOR || other->kind == LR_ITEM_WINDOW;
      double other_middle_m = other->along_m + (is_opening ? 0.5 * item_width_m (other) : 0.0);

      if (lr_item_kind_info (other->kind)->place == LR_PLACE_WALL && other->wall == wall
          && fabs (other_middle_m - middle_m) < 0.5 * (width_m + item_width_m (other)))
        return FALSE;
    }
  return TRUE;
}

/* Whether the item may stand, or hang, at @point_m of the wall, @middle_m along it; a door needs the floor before it as well */
static gboolean
fits_wall (const LrStudy *study,
           const LrItem  *item,
           int            wall,
           double         middle_m,
           LrVec2         point_m,
           LrVec2         inward)
{
  double depth_m = item_depth_m (item), width_m = item_width_m (item), inward_rad = lr_vec2_angle_rad (inward);
  gboolean is_on_floor = lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR;

  if (is_on_floor)
    return !lr_placing_covers_mark (study, item, point_m)
           && lr_placing_is_free (study, lr_outline_box (lr_vec2_along (point_m, inward, 0.5 * depth_m + GAP_M), depth_m, width_m, inward_rad));
  if (!is_wall_free (study->setup, wall, middle_m, width_m))
    return FALSE;
  return item->kind != LR_ITEM_DOOR
         || lr_placing_is_free (study, lr_outline_box (lr_vec2_along (point_m, inward, 0.5 * width_m + GAP_M), width_m, width_m, inward_rad));
}

/* First free stretch from the middle of a wall outwards; a thing on the floor stands with its back to it */
static gboolean
place_on_wall (const LrStudy *study,
               const LrItem  *item,
               int            wall,
               LrVec2        *at_m,
               double        *facing_rad)
{
  gboolean is_on_floor = lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR;
  double width_m = item_width_m (item), length_m;
  LrVec2 from_m, along;

  if (!lr_room_wall (study->setup->room, wall, &from_m, &along, &length_m))
    return FALSE;

  for (double off_m = 0.0; off_m <= 0.5 * (length_m - width_m); off_m += RING_M)
    for (int side = 1; side >= -1; side -= 2)
      {
        double middle_m = 0.5 * length_m + side * off_m;
        LrVec2 point_m = lr_vec2_along (from_m, along, middle_m);
        LrVec2 inward = lr_vec2_left (along);

        if (!fits_wall (study, item, wall, middle_m, point_m, inward))
          continue;

        *at_m = is_on_floor ? lr_vec2_along (point_m, inward, 0.5 * item_depth_m (item) + GAP_M) : point_m;
        *facing_rad = lr_vec2_angle_rad (inward);
        return TRUE;
      }
  return FALSE;
}

/**
 * lr_placing_on_wall:
 * @study: of the plan that the item comes into
 * @item: what is to be placed
 * @at_m: (out): where it stands at a wall, or hangs on it [m]
 * @facing_rad: (out): its facing [rad]
 *
 * Returns: %FALSE, with nothing written, if no wall has a free stretch of its width
 */
gboolean
lr_placing_on_wall (const LrStudy *study,
                    const LrItem  *item,
                    LrVec2        *at_m,
                    double        *facing_rad)
{
  for (int wall = 0; wall < (int) study->setup->room->n_corners; wall++)
    if (place_on_wall (study, item, wall, at_m, facing_rad))
      return TRUE;

  return FALSE;
}
