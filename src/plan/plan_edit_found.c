/* plan_edit_found.c - a room that is found otherwise: what goes along with its walls, and the set that moves as one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_diff_private.h"
#include "plan_edit_private.h"

#include <math.h>
#include <string.h>

#define STILL 1e-9
#define SAME_M 1e-6 /* moves of a wall's two ends; corners are kept to tenths of a millimetre */

/* A wall before and after, looked along from the end that things on it are measured from */
typedef struct
{
  LrVec2 before_m, after_m; /* that end */
  LrVec2 before_away, after_away;
  double before_length_m, after_length_m;
} WallMove;

static gboolean
wall_move (const LrSetup *setup,
           const LrSetup *before,
           int            wall,
           WallMove      *move)
{
  return lr_room_wall (before->room, wall, &move->before_m, &move->before_away, &move->before_length_m)
         && lr_room_wall (setup->room, wall, &move->after_m, &move->after_away, &move->after_length_m);
}

static void
look_from_second_end (WallMove *move)
{
  move->before_m = lr_vec2_along (move->before_m, move->before_away, move->before_length_m);
  move->after_m = lr_vec2_along (move->after_m, move->after_away, move->after_length_m);
  move->before_away = lr_vec2_scale (move->before_away, -1.0);
  move->after_away = lr_vec2_scale (move->after_away, -1.0);
}

/* Whether the wall's second end stayed more than its first: what is on the wall stays with that */
static gboolean
stays_by_second_end (const WallMove *move)
{
  LrVec2 before_m = lr_vec2_along (move->before_m, move->before_away, move->before_length_m);
  LrVec2 after_m = lr_vec2_along (move->after_m, move->after_away, move->after_length_m);

  return lr_vec2_distance (before_m, after_m) < lr_vec2_distance (move->before_m, move->after_m) - SAME_M;
}

static double
turn_of (const WallMove *move)
{
  return lr_angle_wrap_rad (lr_vec2_angle_rad (move->after_away) - lr_vec2_angle_rad (move->before_away));
}

/* A thing that stood before the wall stands before what is left of it */
static double
back_on_wall_m (const WallMove *move,
                const LrItem   *item)
{
  double low_m, high_m, over_m;

  lr_item_extent_m (item, move->before_m, move->before_away, &low_m, &high_m);
  over_m = high_m - move->after_length_m;
  if (high_m > move->before_length_m + 0.001 || over_m <= 0.0)
    return 0.0;

  return fmin (over_m, fmax (low_m, 0.0));
}

/**
 * lr_found_place:
 * @setup: a set-up with its walls where they are now
 * @before: the same with as many walls, where they were
 * @item: one of @before's, on the floor
 * @to_m: (out): where it stands if it went along with its wall [m]
 * @turn_rad: (out): by how much it turned with it [rad]
 *
 * It keeps its distance from the wall, and along it from the corner that it stands in; else from the one that stayed where it was, or
 * moved less, as far as there is still wall.
 *
 * Returns: %FALSE, with nothing written, if it stays with no wall
 */
gboolean
lr_found_place (const LrSetup *setup,
                const LrSetup *before,
                const LrItem  *item,
                LrVec2        *to_m,
                double        *turn_rad)
{
  WallMove move;
  LrVec2 off_m;
  int wall, corner;

  if (lr_item_kind_info (item->kind)->place != LR_PLACE_FLOOR || lr_setup_goes_with (before, item, &wall) != LR_GOES_WALL)
    return FALSE;
  if (!wall_move (setup, before, wall, &move))
    return FALSE;

  corner = lr_setup_wall_corner (before, item, wall);
  if (corner == 1 || (corner == 0 && stays_by_second_end (&move)))
    look_from_second_end (&move);
  off_m = lr_vec2_sub (item->at_m, move.before_m);
  off_m = lr_vec2_along (off_m, move.before_away, -back_on_wall_m (&move, item));
  *turn_rad = turn_of (&move);
  *to_m = lr_vec2_add (move.after_m, lr_vec2_rotate (off_m, *turn_rad));

  return TRUE;
}

/**
 * lr_found_along_m:
 * @setup: a set-up with its walls where they are now
 * @before: the same with as many walls, where they were
 * @item: one of @before's, on a wall
 *
 * It keeps its distance from the corner of its wall that stayed where it was, or moved less; so it stays in its place in the room where
 * its wall was only cut short or drawn out.
 *
 * Returns: where it begins on the wall now, from the wall's first corner [m]; it may be off the wall's end
 */
double
lr_found_along_m (const LrSetup *setup,
                  const LrSetup *before,
                  const LrItem  *item)
{
  WallMove move;

  if (!wall_move (setup, before, item->wall, &move) || !stays_by_second_end (&move))
    return item->along_m;

  return item->along_m + move.after_length_m - move.before_length_m;
}

/* Moves and turns an item in the way of its kind */
static gboolean
put (LrSetup  *setup,
     guint     index,
     LrVec2    to_m,
     double    turn_rad,
     GError  **error)
{
  const LrItem *item = setup->items->pdata[index];
  LrItem *fresh;

  if (lr_vec2_distance (to_m, item->at_m) < STILL && fabs (turn_rad) < STILL)
    return TRUE;

  fresh = lr_edit_item_at (setup, index);

  return lr_edit_put_at (setup, fresh, to_m, error) && lr_edit_face (fresh, fresh->facing_rad + turn_rad, error);
}

/**
 * lr_edit_follow_walls:
 * @setup: a fresh set-up, with its walls where they are now
 * @before: the same with as many walls, where they were
 * @error: return location
 *
 * What stands on the floor and stays with a wall goes along, as lr_found_place() says.
 *
 * Returns: %FALSE if something cannot stand there
 */
gboolean
lr_edit_follow_walls (LrSetup        *setup,
                      const LrSetup  *before,
                      GError        **error)
{
  for (guint i = 0; i < before->items->len; i++)
    {
      double turn_rad;
      LrVec2 to_m;

      if (lr_found_place (setup, before, before->items->pdata[i], &to_m, &turn_rad) && !put (setup, i, to_m, turn_rad, error))
        return FALSE;
    }

  return TRUE;
}

/* A lead goes along but for its plug */
static gboolean
move_lead (LrItem         *lead,
           const LrRigid  *rigid,
           GError        **error)
{
  for (gsize i = *lead->lead.socket != '\0' ? 1 : 0; i < lead->n_path; i++)
    {
      LrVec2 to_m = lr_rigid_apply (rigid, lead->path_m[i]);

      if (!lr_edit_check_point (to_m, error))
        return FALSE;
      lead->path_m[i] = lr_edit_quantise (to_m);
    }

  return TRUE;
}

/**
 * lr_plan_move_set:
 * @plan: a plan
 * @about_m: what the set is turned about [m]: where the subject sits
 * @turn_rad: by how much [rad], anticlockwise
 * @by_m: then moved by [m]
 * @error: return location
 *
 * Everything that goes with the set (lr_setup_goes_with()) keeps its place in it. Of leads in a socket that end stays.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_move_set (const LrPlan  *plan,
                  LrVec2         about_m,
                  double         turn_rad,
                  LrVec2         by_m,
                  GError       **error)
{
  const LrSetup *before = lr_plan_get_setup (plan);
  const LrRigid rigid = { about_m, by_m, turn_rad };
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);

  if (next == NULL)
    return NULL;

  for (guint i = 0; i < before->items->len; i++)
    {
      const LrItem *item = before->items->pdata[i];

      if (lr_setup_goes_with (before, item, NULL) != LR_GOES_SET)
        continue;
      if (item->kind == LR_ITEM_LEAD)
        {
          if (!move_lead (lr_edit_item_at (setup, i), &rigid, error))
            return NULL;
        }
      else if (!put (setup, i, lr_rigid_apply (&rigid, item->at_m), turn_rad, error))
        return NULL;
    }

  return g_steal_pointer (&next);
}

/**
 * lr_plan_planned:
 * @plan: a plan
 *
 * Returns: (transfer none) (nullable): the set-up as planned, of which the shown one is as found
 */
const LrSetup *
lr_plan_planned (const LrPlan *plan)
{
  const char *id = lr_plan_get_setup (plan)->found_of;

  for (guint i = 0; *id != '\0' && i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->id, id) == 0)
      return plan->setups->pdata[i];

  return NULL;
}
