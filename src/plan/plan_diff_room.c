/* plan_diff_room.c - what is different between two rooms
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_diff_private.h"

#include <math.h>

/* Between the two walls that meet where @wall starts, inside the room */
static gboolean
corner_rad (const LrRoom *room,
            int           wall,
            double       *inside_rad)
{
  int n = (int) room->n_corners;
  LrVec2 before, along;

  if (n < 3 || !lr_room_wall (room, (wall + n - 1) % n, NULL, &before, NULL) || !lr_room_wall (room, wall, NULL, &along, NULL))
    return FALSE;
  *inside_rad = LR_PI - lr_angle_wrap_rad (lr_vec2_angle_rad (along) - lr_vec2_angle_rad (before));

  return TRUE;
}

static void
add (LrPlanDiff *diff,
     LrDiffType  type,
     int         wall,
     double      from,
     double      to)
{
  LrDiff found = { .type = type, .group = LR_DIFF_OF_ROOM, .wall = wall, .from = from, .to = to, .nearer_m = NAN };

  g_array_append_val (diff->all, found);
}

static void
add_walls (LrPlanDiff *diff)
{
  const LrRoom *was = diff->was->room, *now = diff->now->room;
  double was_m, now_m, was_rad, now_rad;

  if (was->n_corners != now->n_corners)
    {
      add (diff, LR_DIFF_WALLS, -1, (double) was->n_corners, (double) now->n_corners);
      return;
    }
  for (int wall = 0; wall < (int) was->n_corners; wall++)
    if (lr_room_wall (was, wall, NULL, NULL, &was_m) && lr_room_wall (now, wall, NULL, NULL, &now_m)
        && fabs (now_m - was_m) >= LR_DIFF_LENGTH_M - 1e-9)
      add (diff, LR_DIFF_WALL, wall, was_m, now_m);
  for (int wall = 0; wall < (int) was->n_corners; wall++)
    if (corner_rad (was, wall, &was_rad) && corner_rad (now, wall, &now_rad) && fabs (now_rad - was_rad) >= LR_DIFF_ANGLE_RAD - 1e-9)
      add (diff, LR_DIFF_CORNER, wall, was_rad, now_rad);
}

/* Whether somebody else is to be called, or the same people by another number */
static gboolean
has_other_contacts (const LrLocation *was,
                    const LrLocation *now)
{
  if (was->n_contacts != now->n_contacts)
    return TRUE;
  for (gsize i = 0; i < was->n_contacts; i++)
    if (!lr_prop_table_equal (lr_contact_table (), &was->contacts[i], &now->contacts[i]))
      return TRUE;

  return FALSE;
}

/**
 * lr_diff_add_location:
 * @diff: a difference that is being made
 *
 * What was noted of the place.
 */
void
lr_diff_add_location (LrPlanDiff *diff)
{
  const LrLocation *was = diff->was->location, *now = diff->now->location;
  LrDiff like = { .type = LR_DIFF_CONTACTS, .group = LR_DIFF_OF_ROOM, .owner = LR_DIFF_OWNER_LOCATION, .wall = -1, .nearer_m = NAN };

  if (was == now)
    return;

  lr_diff_add_props (diff, lr_location_table (), &like, was, now);
  if (has_other_contacts (was, now))
    g_array_append_val (diff->all, like);
}

/**
 * lr_diff_add_room:
 * @diff: a difference that is being made
 *
 * Walls, corners, height and what else was noted of the room itself.
 */
void
lr_diff_add_room (LrPlanDiff *diff)
{
  const LrRoom *was = diff->was->room, *now = diff->now->room;
  const struct { LrDiffOwner owner; const LrSurface *was, *now; } surfaces[] = {
    { LR_DIFF_OWNER_WALLS, &was->walls, &now->walls }, { LR_DIFF_OWNER_FLOOR, &was->floor, &now->floor },
    { LR_DIFF_OWNER_CEILING, &was->ceiling, &now->ceiling },
  };
  LrDiff like = { .group = LR_DIFF_OF_ROOM, .owner = LR_DIFF_OWNER_ROOM };

  if (was == now)
    return;

  add_walls (diff);
  lr_diff_add_props (diff, lr_room_table (), &like, was, now);
  for (gsize i = 0; i < G_N_ELEMENTS (surfaces); i++)
    {
      like.owner = surfaces[i].owner;
      lr_diff_add_props (diff, lr_surface_table (), &like, surfaces[i].was, surfaces[i].now);
    }
}
