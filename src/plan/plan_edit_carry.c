/* plan_edit_carry.c - carrying things from one set-up into another
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is carried together keeps what it names of each other. Else it names its like in the other set-up: the same thing, a person of
 * that name, or who has that part; a socket and a circuit only in the same room, for in another one they are others. What has no like
 * is forgotten as if it had been taken away.
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_check.h"
#include "polygon.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define SAME_WAY_COS 0.99 /* walls that run so are the same wall of two rooms */

/* A name that can be given only when the thing it is of has its new id */
typedef struct
{
  LrItem       *item;
  const LrProp *prop;
  guint         target; /* of what is carried */
} Pending;

typedef struct
{
  const LrPlan  *plan;
  const LrSetup *from;
  LrSetup       *to;
  gboolean       is_same_room;
  LrVec2         by_m;
  GPtrArray     *sources, *copies; /* of LrItem */
  GArray        *pending;
} Carry;

static gboolean
find_sources (Carry             *carry,
              const char *const *ids,
              gsize              n,
              GError           **error)
{
  for (gsize i = 0; i < n; i++)
    {
      const LrItem *item = lr_setup_find (carry->from, ids[i]);

      if (item == NULL)
        {
          g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in this set-up."), ids[i]);
          return FALSE;
        }
      if (!g_ptr_array_find (carry->sources, item, NULL))
        g_ptr_array_add (carry->sources, (gpointer) item);
    }

  return TRUE;
}

static gboolean
rooms_are_alike (const LrRoom *a,
                 const LrRoom *b)
{
  if (a->n_corners != b->n_corners)
    return FALSE;
  for (gsize i = 0; i < a->n_corners; i++)
    if (lr_vec2_distance (a->corners_m[i], b->corners_m[i]) > 0.0005)
      return FALSE;

  return TRUE;
}

/* Where */

static double
fit_between (double low_m,
             double high_m,
             double from_m,
             double to_m)
{
  if (high_m - low_m > to_m - from_m)
    return 0.0;
  return low_m < from_m ? from_m - low_m : high_m > to_m ? to_m - high_m : 0.0;
}

/* What of it lies along an axis of the sheet, where it would be carried to */
static void
add_extent (const Carry  *carry,
            const LrItem *item,
            LrVec2        axis,
            double       *low_m,
            double       *high_m)
{
  double from_m, to_m, by_m = lr_vec2_dot (carry->by_m, axis);

  lr_item_extent_m (item, lr_vec2 (0.0, 0.0), axis, &from_m, &to_m);
  *low_m = fmin (*low_m, from_m + by_m);
  *high_m = fmax (*high_m, to_m + by_m);
}

/* All that stands on the floor goes together as little as brings it between the other room's outermost walls, if it fits there */
static void
fit_in (Carry  *carry,
        LrVec2  room_low_m,
        LrVec2  room_high_m)
{
  LrVec2 low_m = { HUGE_VAL, HUGE_VAL }, high_m = { -HUGE_VAL, -HUGE_VAL };

  for (guint i = 0; i < carry->sources->len; i++)
    {
      const LrItem *item = carry->sources->pdata[i];

      if (lr_item_kind_info (item->kind)->place != LR_PLACE_FLOOR || *lr_item_carrier (item) != '\0')
        continue;
      add_extent (carry, item, lr_vec2 (1.0, 0.0), &low_m.x, &high_m.x);
      add_extent (carry, item, lr_vec2 (0.0, 1.0), &low_m.y, &high_m.y);
    }
  if (!isfinite (low_m.x))
    return;

  carry->by_m = lr_vec2_add (carry->by_m, lr_vec2 (fit_between (low_m.x, high_m.x, room_low_m.x, room_high_m.x),
                                                   fit_between (low_m.y, high_m.y, room_low_m.y, room_high_m.y)));
}

/* As far from the leftmost and the lowest corner as it was */
static void
find_way (Carry *carry)
{
  const LrRoom *from = carry->from->room, *to = carry->to->room;
  LrVec2 from_low_m, to_low_m, high_m;

  if (carry->is_same_room || to->n_corners == 0)
    return;

  lr_polygon_bounds (to->corners_m, to->n_corners, &to_low_m, &high_m);
  if (from->n_corners > 0)
    {
      LrVec2 unused_m;

      lr_polygon_bounds (from->corners_m, from->n_corners, &from_low_m, &unused_m);
      carry->by_m = lr_vec2_add (carry->by_m, lr_vec2_sub (to_low_m, from_low_m));
    }
  fit_in (carry, to_low_m, high_m);
}

/* On the wall of the same number, if it runs the same way; else on the nearest */
static gboolean
put_on_wall (const Carry   *carry,
             const LrItem  *source,
             LrItem        *copy,
             GError       **error)
{
  LrVec2 here, there, at_m;
  double facing_rad;

  if (carry->to->room->n_corners == 0)
    return lr_edit_refuse (copy, _("needs a wall: draw the room first."), error);
  if (lr_room_wall (carry->from->room, source->wall, NULL, &here, NULL) && lr_room_wall (carry->to->room, source->wall, NULL, &there, NULL)
      && lr_vec2_dot (here, there) > SAME_WAY_COS)
    {
      double along_m = lr_vec2_dot (carry->by_m, there);

      /* in the same room a copy stands beside the thing */
      copy->along_m = fmax (source->along_m + (carry->is_same_room ? along_m : 0.0), 0.0);
      lr_edit_clamp_to_wall (carry->to, copy);
      return TRUE;
    }
  if (lr_setup_place (carry->from, source, &at_m, &facing_rad))
    lr_edit_hang (carry->to, copy, lr_vec2_add (at_m, carry->by_m));
  return TRUE;
}

static gboolean
put (const Carry   *carry,
     const LrItem  *source,
     LrItem        *copy,
     GError       **error)
{
  switch (lr_item_kind_info (source->kind)->place)
    {
    case LR_PLACE_WALL:
      return put_on_wall (carry, source, copy, error);
    case LR_PLACE_FLOOR:
      return lr_edit_put_at (carry->to, copy, lr_vec2_add (source->at_m, carry->by_m), error);
    case LR_PLACE_PATH:
      return source->n_path == 0 || lr_edit_put_at (carry->to, copy, lr_vec2_add (source->path_m[0], carry->by_m), error);
    case LR_PLACE_NONE:
    default:
      return TRUE;
    }
}

/* What it names */

static gboolean
is_same_thing (const LrItem *a,
               const LrItem *b)
{
  return a->kind == b->kind && strcmp (a->id, b->id) == 0 && strcmp (a->name, b->name) == 0 && strcmp (a->tag, b->tag) == 0;
}

/* Its like in the other set-up; (nullable) */
static const LrItem *
find_like (const Carry  *carry,
           const LrItem *item)
{
  const LrItem *same_name = NULL;

  if (lr_item_kind_info (item->kind)->is_of_room && !carry->is_same_room)
    return NULL;
  for (guint i = 0; i < carry->to->items->len; i++)
    {
      const LrItem *other = carry->to->items->pdata[i];

      if (g_ptr_array_find (carry->copies, other, NULL))
        continue;
      if (is_same_thing (item, other))
        return other;
      if (same_name == NULL && item->kind == other->kind && *item->name != '\0' && strcmp (item->name, other->name) == 0)
        same_name = other;
    }
  if (same_name != NULL)
    return same_name;

  return item->kind == LR_ITEM_PERSON && item->person.role != LR_ROLE_OTHER ? lr_setup_find_role (carry->to, (LrRole) item->person.role)
                                                                            : NULL;
}

static void
settle_ref (Carry        *carry,
            const LrItem *source,
            LrItem       *copy,
            const LrProp *prop)
{
  const LrItem *target = lr_setup_find (carry->from, lr_prop_get_text (prop, source));
  const LrItem *like;
  guint index;

  if (lr_ref_is_to_kit (prop))
    {
      if (!lr_ref_is_valid (carry->plan, carry->to, copy, prop, lr_prop_get_text (prop, copy)))
        lr_prop_put_text (prop, copy, "");
      return;
    }
  if (target == NULL)
    {
      lr_prop_put_text (prop, copy, "");
      return;
    }
  if (g_ptr_array_find (carry->sources, target, &index))
    {
      g_array_append_val (carry->pending, ((Pending) { copy, prop, index }));
      return;
    }
  like = find_like (carry, target);
  if (like != NULL && lr_ref_accepts (prop, copy, like))
    lr_prop_put_text (prop, copy, like->id);
  else
    lr_edit_forget (carry->from, copy, prop, target);
}

static void
settle_refs (Carry             *carry,
             const LrItem      *source,
             LrItem            *copy,
             const LrPropTable *table)
{
  for (gsize i = 0; i < table->n_props; i++)
    if (table->props[i].type == LR_PROP_REF)
      settle_ref (carry, source, copy, &table->props[i]);
}

/* Names before places: what is forgotten is seen where it was */
static gboolean
carry_one (Carry         *carry,
           const LrItem  *source,
           GError       **error)
{
  const LrItemKindInfo *info = lr_item_kind_info (source->kind);
  LrItem *copy = lr_item_copy (source);
  LrItem still = *source;

  g_ptr_array_add (carry->copies, copy);
  settle_refs (carry, source, copy, lr_item_common_table (info->place));
  settle_refs (carry, source, copy, &info->table);
  /* what was worn and is now worn by nobody stands where it was */
  still.at_m = copy->at_m;
  if (!put (carry, &still, copy, error))
    return FALSE;
  lr_edit_name_item (carry->to, copy);
  lr_setup_insert (carry->to, lr_item_ref (copy));

  return TRUE;
}

static void
name_each_other (const Carry *carry)
{
  for (guint i = 0; i < carry->pending->len; i++)
    {
      const Pending *pending = &g_array_index (carry->pending, Pending, i);

      lr_prop_put_text (pending->prop, pending->item, ((const LrItem *) carry->copies->pdata[pending->target])->id);
    }
}

/**
 * lr_plan_paste:
 * @plan: a plan
 * @from: a set-up of it, or of a plan that was
 * @ids: (array length=n): of things in @from
 * @n: how many
 * @by_m: how far from there the copies stand [m]
 * @new_ids: (optional) (element-type char*): gets the ids of the copies, to be freed
 * @error: return location
 *
 * The copies stand as far from the leftmost and the lowest corner of the room as the things do in theirs, and together as little elsewhere
 * as brings them into a smaller room; on walls on the same one. Each has a free id, tag and name. In another set-up they name their
 * like there of what is not carried with them.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_paste (const LrPlan       *plan,
               const LrSetup      *from,
               const char *const  *ids,
               gsize               n,
               LrVec2              by_m,
               GPtrArray          *new_ids,
               GError            **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  g_autoptr (GPtrArray) sources = g_ptr_array_new (), copies = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_item_unref);
  g_autoptr (GArray) pending = g_array_new (FALSE, FALSE, sizeof (Pending));
  Carry carry = { .plan = plan, .from = from, .by_m = by_m, .sources = sources, .copies = copies, .pending = pending };

  if (next == NULL)
    return NULL;
  carry.to = setup;
  carry.is_same_room = rooms_are_alike (from->room, setup->room);
  if (!find_sources (&carry, ids, n, error))
    return NULL;

  find_way (&carry);
  for (guint i = 0; i < sources->len; i++)
    if (!carry_one (&carry, sources->pdata[i], error))
      return NULL;
  name_each_other (&carry);
  for (guint i = 0; new_ids != NULL && i < copies->len; i++)
    g_ptr_array_add (new_ids, g_strdup (((const LrItem *) copies->pdata[i])->id));

  return g_steal_pointer (&next);
}

/**
 * lr_plan_copy_items:
 * @plan: a plan
 * @ids: (array length=n): of things in the shown set-up
 * @n: how many
 * @to_id_or_name: of another set-up
 * @error: return location
 *
 * As lr_plan_paste() into the other set-up; the shown one stays shown.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_copy_items (const LrPlan       *plan,
                    const char *const  *ids,
                    gsize               n,
                    const char         *to_id_or_name,
                    GError            **error)
{
  g_autoptr (LrPlan) there = lr_plan_show_setup (plan, to_id_or_name, error);
  LrPlan *next;

  if (there == NULL)
    return NULL;
  if (there->shown == plan->shown)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("It is in that set-up already."));
      return NULL;
    }

  next = lr_plan_paste (there, lr_plan_get_setup (plan), ids, n, lr_vec2 (0.0, 0.0), NULL, error);
  if (next != NULL)
    next->shown = plan->shown;

  return next;
}
