/* plan_edit_move.c - moving and turning what stands in the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/**
 * lr_edit_refuse:
 * @item: an item
 * @why: what it cannot do, translated: "has no place in the room."
 * @error: return location
 *
 * Returns: %FALSE, with an error that names the item
 */
gboolean
lr_edit_refuse (const LrItem  *item,
                const char    *why,
                GError       **error)
{
  g_autofree char *title = lr_edit_dup_title (item);

  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, "%s %s", title, why);

  return FALSE;
}

static gboolean
is_on_boom (const LrItem *item)
{
  return item->kind == LR_ITEM_MICROPHONE && lr_microphone_stands (&item->microphone);
}

static gboolean
put_point (LrItem      *item,
           const char  *x_key,
           const char  *y_key,
           LrVec2       at_m,
           GError     **error)
{
  return lr_edit_put_number (item, x_key, at_m.x, error) && lr_edit_put_number (item, y_key, at_m.y, error);
}

/* A stand takes what it carries along */
static gboolean
stand_at (LrItem  *item,
          LrVec2   to_m,
          GError **error)
{
  LrVec2 from_m = item->at_m;
  LrVec2 tip_m = lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m);

  if (!put_point (item, "x-mm", "y-mm", to_m, error))
    return FALSE;

  return !is_on_boom (item)
         || put_point (item, "tip-x-mm", "tip-y-mm", lr_vec2_add (tip_m, lr_vec2_sub (item->at_m, from_m)), error);
}

/**
 * lr_edit_face:
 * @item: a fresh item that stands on the floor
 * @facing_rad: where it should face [rad]
 * @error: return location
 *
 * Turns an item; a boom swings its capsule round the post.
 *
 * Returns: %FALSE if it cannot be turned so
 */
gboolean
lr_edit_face (LrItem  *item,
              double   facing_rad,
              GError **error)
{
  double before_rad = item->facing_rad;
  LrVec2 arm_m;

  if (!lr_edit_put_number (item, "facing-deg", facing_rad, error))
    return FALSE;
  if (!is_on_boom (item))
    return TRUE;

  arm_m = lr_vec2_sub (lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m), item->at_m);

  return put_point (item, "tip-x-mm", "tip-y-mm",
                    lr_vec2_add (item->at_m, lr_vec2_rotate (arm_m, item->facing_rad - before_rad)), error);
}

/**
 * lr_edit_check_point:
 * @at_m: a point [m]
 * @error: return location
 *
 * Returns: whether both coordinates lie in their range
 */
gboolean
lr_edit_check_point (LrVec2   at_m,
                     GError **error)
{
  const LrPropTable *table = lr_item_common_table (LR_PLACE_FLOOR);

  return lr_edit_check_number (lr_prop_table_find (table, "x-mm"), at_m.x, error)
         && lr_edit_check_number (lr_prop_table_find (table, "y-mm"), at_m.y, error);
}

static gboolean
lay_at (LrItem  *item,
        LrVec2   to_m,
        GError **error)
{
  LrVec2 by_m;

  if (item->n_path == 0)
    return lr_edit_refuse (item, _("has no path yet."), error);

  by_m = lr_vec2_sub (to_m, item->path_m[0]);
  for (gsize i = 0; i < item->n_path; i++)
    {
      LrVec2 at_m = lr_vec2_add (item->path_m[i], by_m);

      if (!lr_edit_check_point (at_m, error))
        return FALSE;
      item->path_m[i] = lr_edit_quantise (at_m);
    }

  return TRUE;
}

/**
 * lr_edit_put_at:
 * @setup: the fresh set-up of @item
 * @item: a fresh item
 * @to_m: a point [m]
 * @error: return location
 *
 * Puts an item to a point, in the way of its kind: see lr_plan_move().
 *
 * Returns: %FALSE if it cannot stand there
 */
gboolean
lr_edit_put_at (const LrSetup  *setup,
                LrItem         *item,
                LrVec2          to_m,
                GError        **error)
{
  switch (lr_item_kind_info (item->kind)->place)
    {
    case LR_PLACE_FLOOR:
      return stand_at (item, to_m, error);
    case LR_PLACE_PATH:
      return lay_at (item, to_m, error);
    case LR_PLACE_WALL:
      if (setup->room->n_corners == 0)
        return lr_edit_refuse (item, _("needs a wall: draw the room first."), error);
      if (!lr_edit_check_point (to_m, error))
        return FALSE;
      lr_edit_hang (setup, item, to_m);
      return TRUE;
    case LR_PLACE_NONE:
    default:
      return lr_edit_refuse (item, _("has no place in the room."), error);
    }
}

/**
 * lr_plan_move:
 * @plan: a plan
 * @id: of an item
 * @to_m: where it should be [m]
 * @error: return location
 *
 * Things on the floor stand at the point, and a boom takes its capsule along. The middle of things on walls goes to the
 * nearest place on a wall. A lead moves as a whole, its first point to @to_m. What is worn cannot be moved.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_move (const LrPlan  *plan,
              const char    *id,
              LrVec2         to_m,
              GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;

  if (item == NULL)
    return NULL;
  if (*lr_item_carrier (item) != '\0')
    {
      lr_edit_refuse (item, *item->microphone.worn_by != '\0' ? _("moves with whoever wears it.") : _("moves with its camera."), error);
      return NULL;
    }
  if (!lr_edit_put_at (setup, item, to_m, error))
    return NULL;

  return g_steal_pointer (&next);
}

/**
 * lr_plan_turn:
 * @plan: a plan
 * @id: of an item that stands on the floor
 * @facing_rad: where it should face [rad], any finite angle
 * @error: return location
 *
 * A boom swings its capsule round the post by the same angle.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_turn (const LrPlan  *plan,
              const char    *id,
              double         facing_rad,
              GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;

  if (item == NULL)
    return NULL;
  if (lr_item_kind_info (item->kind)->place != LR_PLACE_FLOOR)
    {
      lr_edit_refuse (item, _("cannot be turned."), error);
      return NULL;
    }
  if (!lr_edit_face (item, facing_rad, error))
    return NULL;

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_path:
 * @plan: a plan
 * @id: of a lead
 * @path_m: (array length=n): its points from the plug to the load [m]
 * @n: how many: none, or 2 to %LR_MAX_PATH_POINTS
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_path (const LrPlan  *plan,
                  const char    *id,
                  const LrVec2  *path_m,
                  gsize          n,
                  GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;

  if (item == NULL)
    return NULL;
  if (lr_item_kind_info (item->kind)->place != LR_PLACE_PATH || n == 1 || n > LR_MAX_PATH_POINTS)
    {
      lr_edit_refuse (item, _("cannot take such a path."), error);
      return NULL;
    }

  g_free (item->path_m);
  item->path_m = g_new (LrVec2, n);
  item->n_path = n;
  for (gsize i = 0; i < n; i++)
    {
      if (!lr_edit_check_point (path_m[i], error))
        return NULL;
      item->path_m[i] = lr_edit_quantise (path_m[i]);
    }

  return g_steal_pointer (&next);
}

/**
 * lr_plan_move_path_point:
 * @plan: a plan
 * @id: of a lead
 * @index: of one of its points
 * @to_m: where the point should be [m]
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_move_path_point (const LrPlan  *plan,
                         const char    *id,
                         gsize          index,
                         LrVec2         to_m,
                         GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;

  if (item == NULL)
    return NULL;
  if (index >= item->n_path)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("The path has no such point."));
      return NULL;
    }
  if (!lr_edit_check_point (to_m, error))
    return NULL;
  item->path_m[index] = lr_edit_quantise (to_m);

  return g_steal_pointer (&next);
}
