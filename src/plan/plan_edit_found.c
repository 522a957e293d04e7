/* plan_edit_found.c - a room that is found otherwise: what goes along with its walls, and the set that moves as one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <math.h>
#include <string.h>

#define STILL 1e-9

/* A wall's end that things are measured from, before and after */
typedef struct
{
  LrVec2 before_m, after_m;       /* the end */
  LrVec2 before_along, after_along;
  double before_length_m, after_length_m;
} WallMove;

static gboolean
wall_move (const LrSetup *setup,
           const LrSetup *before,
           int            wall,
           gboolean       is_second_end,
           WallMove      *move)
{
  if (!lr_room_wall (before->room, wall, &move->before_m, &move->before_along, &move->before_length_m)
      || !lr_room_wall (setup->room, wall, &move->after_m, &move->after_along, &move->after_length_m))
    return FALSE;
  if (is_second_end)
    {
      move->before_m = lr_vec2_along (move->before_m, move->before_along, move->before_length_m);
      move->after_m = lr_vec2_along (move->after_m, move->after_along, move->after_length_m);
    }

  return TRUE;
}

static double
turn_of (const WallMove *move)
{
  return lr_angle_wrap_rad (lr_vec2_angle_rad (move->after_along) - lr_vec2_angle_rad (move->before_along));
}

/* A thing that stood before the wall stands before what is left of it */
static double
back_on_wall_m (const WallMove *move,
                const LrItem   *item)
{
  double low_m, high_m, over_m;

  lr_item_extent_m (item, move->before_m, move->before_along, &low_m, &high_m);
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
 * It keeps its distance from the wall and from the wall's first corner, as far as there is still wall; in the corner at the
 * wall's second end, from that.
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
  gboolean is_second_end;
  WallMove move;
  LrVec2 off_m;
  int wall;

  if (lr_item_kind_info (item->kind)->place != LR_PLACE_FLOOR || lr_setup_goes_with (before, item, &wall) != LR_GOES_WALL)
    return FALSE;
  is_second_end = lr_setup_wall_end (before, item, wall);
  if (!wall_move (setup, before, wall, is_second_end, &move))
    return FALSE;

  off_m = lr_vec2_sub (item->at_m, move.before_m);
  if (!is_second_end)
    off_m = lr_vec2_along (off_m, move.before_along, -back_on_wall_m (&move, item));
  *turn_rad = turn_of (&move);
  *to_m = lr_vec2_add (move.after_m, lr_vec2_rotate (off_m, *turn_rad));

  return TRUE;
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

static LrVec2
moved (LrVec2 at_m,
       LrVec2 about_m,
       double turn_rad,
       LrVec2 by_m)
{
  return lr_vec2_add (lr_vec2_add (about_m, lr_vec2_rotate (lr_vec2_sub (at_m, about_m), turn_rad)), by_m);
}

/* A lead goes along but for its plug */
static gboolean
move_lead (LrItem   *lead,
           LrVec2    about_m,
           double    turn_rad,
           LrVec2    by_m,
           GError  **error)
{
  for (gsize i = *lead->lead.socket != '\0' ? 1 : 0; i < lead->n_path; i++)
    {
      LrVec2 to_m = moved (lead->path_m[i], about_m, turn_rad, by_m);

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
          if (!move_lead (lr_edit_item_at (setup, i), about_m, turn_rad, by_m, error))
            return NULL;
        }
      else if (!put (setup, i, moved (item->at_m, about_m, turn_rad, by_m), turn_rad, error))
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
