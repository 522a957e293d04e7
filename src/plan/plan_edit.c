/* plan_edit.c - changing properties, and what all edits share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_check.h"
#include "polygon.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/**
 * lr_edit_begin:
 * @plan: a plan
 * @setup: (out) (optional) (transfer none): the next plan's shown set-up, which may be written
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, %NULL if @plan may only be read
 */
LrPlan *
lr_edit_begin (const LrPlan  *plan,
               LrSetup      **setup,
               GError       **error)
{
  LrPlan *next;

  if (plan->is_read_only)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED,
                           _("This plan comes from a newer version of the program and can only be read."));
      return NULL;
    }

  next = lr_plan_copy (plan);
  if (setup != NULL)
    {
      *setup = lr_setup_copy (lr_plan_get_setup (plan));
      lr_setup_unref (next->setups->pdata[next->shown]);
      next->setups->pdata[next->shown] = *setup;
    }

  return next;
}

/**
 * lr_edit_item_at:
 * @setup: a fresh set-up
 * @index: of one of its items
 *
 * Returns: (transfer none): a fresh copy of the item, in its place in @setup
 */
LrItem *
lr_edit_item_at (LrSetup *setup,
                 guint    index)
{
  LrItem *old = setup->items->pdata[index];
  LrItem *item = lr_item_copy (old);

  setup->items->pdata[index] = item;
  lr_item_unref (old);

  return item;
}

/**
 * lr_edit_item:
 * @setup: a fresh set-up
 * @id: an id
 * @error: return location
 *
 * Returns: (transfer none) (nullable): a fresh copy of the item with that id, in its place in @setup
 */
LrItem *
lr_edit_item (LrSetup     *setup,
              const char  *id,
              GError     **error)
{
  for (guint i = 0; i < setup->items->len; i++)
    if (strcmp (((const LrItem *) setup->items->pdata[i])->id, id) == 0)
      return lr_edit_item_at (setup, i);

  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in this set-up."), id);

  return NULL;
}

/**
 * lr_edit_dup_title:
 * @item: an item
 *
 * Returns: (transfer full): what people call it: its name, or its kind and tag: "Camera A"
 */
char *
lr_edit_dup_title (const LrItem *item)
{
  if (*item->name != '\0')
    return g_strdup (item->name);
  if (*item->tag != '\0')
    return g_strdup_printf ("%s %s", _(lr_item_kind_info (item->kind)->title), item->tag);

  return g_strdup (lr_item_form_label (item));
}

/**
 * lr_edit_quantise:
 * @at_m: a point [m]
 *
 * Returns: the nearest point that the file can hold [m]
 */
LrVec2
lr_edit_quantise (LrVec2 at_m)
{
  const LrProp *x = lr_prop_table_find (lr_item_common_table (LR_PLACE_FLOOR), "x-mm");

  return lr_vec2 (lr_prop_quantise (x, at_m.x), lr_prop_quantise (x, at_m.y));
}

static const char *
label (const LrProp *prop)
{
  return prop->label != NULL ? _(prop->label) : prop->key;
}

/**
 * lr_edit_check_number:
 * @prop: a row that is no text
 * @value: in inside units
 * @error: return location
 *
 * Returns: whether @prop accepts @value; else the error names its range
 */
gboolean
lr_edit_check_number (const LrProp  *prop,
                      double         value,
                      GError       **error)
{
  g_autofree char *number = NULL, *range = NULL;

  if (lr_prop_accepts (prop, value))
    return TRUE;

  number = lr_prop_dup_value (prop, value);
  range = lr_prop_dup_range (prop);
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("“%s” cannot be %s: its range is %s."), label (prop), number,
               range);

  return FALSE;
}

/**
 * lr_edit_check_text:
 * @label_for_people: what the text is
 * @text: what someone typed
 * @error: return location
 *
 * Returns: whether @text can be kept in a file: valid UTF-8
 */
gboolean
lr_edit_check_text (const char  *label_for_people,
                    const char  *text,
                    GError     **error)
{
  if (g_utf8_validate (text, -1, NULL))
    return TRUE;

  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("“%s” holds bytes that are not text."), label_for_people);

  return FALSE;
}

/**
 * lr_edit_put_number:
 * @item: a fresh item
 * @key: one of its properties
 * @value: in inside units
 * @error: return location
 *
 * Returns: %FALSE, with nothing changed, if there is no such number or it does not take @value
 */
gboolean
lr_edit_put_number (LrItem      *item,
                    const char  *key,
                    double       value,
                    GError     **error)
{
  const LrProp *prop = lr_item_find_prop (item->kind, key);

  if (prop == NULL || lr_prop_is_text (prop))
    {
      g_autofree char *title = lr_edit_dup_title (item);

      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("%s has no number “%s”."), title, key);
      return FALSE;
    }

  if (strcmp (key, "facing-deg") == 0 && isfinite (value))
    value = lr_angle_wrap_rad (value);
  if (!lr_edit_check_number (prop, value, error))
    return FALSE;
  lr_prop_put_number (prop, item, value);

  return TRUE;
}

/* How much of its wall an item takes, and where that begins, counted from along_m */
static double
width_on_wall_m (const LrItem *item)
{
  if (item->kind == LR_ITEM_DOOR)
    return item->door.width_m;
  if (item->kind == LR_ITEM_WINDOW)
    return item->window.width_m;

  return 0.0;
}

/* The last whole millimetre on the wall that leaves room for the item */
static double
last_along_m (double        length_m,
              const LrItem *item)
{
  return fmax (floor ((length_m - width_on_wall_m (item)) * 1000.0 + 1e-6) / 1000.0, 0.0);
}

/**
 * lr_edit_clamp_to_wall:
 * @setup: a set-up
 * @item: a fresh item
 *
 * Puts an item on a wall back between the wall's corners; one that is wider than its wall begins at the first corner.
 * Items that are not on a wall of the room are left alone.
 */
void
lr_edit_clamp_to_wall (const LrSetup *setup,
                       LrItem        *item)
{
  double length_m;

  if (lr_item_kind_info (item->kind)->place != LR_PLACE_WALL
      || !lr_room_wall (setup->room, item->wall, NULL, NULL, &length_m))
    return;

  item->along_m = CLAMP (item->along_m, 0.0, last_along_m (length_m, item));
}

/**
 * lr_edit_hang:
 * @setup: a set-up whose room has walls
 * @item: a fresh item that hangs on a wall
 * @middle_m: where its middle should be [m]
 *
 * Hangs the item on the wall nearest to the point; of walls equally near, its own. Walls that it does not fit count only
 * when there is no other.
 */
void
lr_edit_hang (const LrSetup *setup,
              LrItem        *item,
              LrVec2         middle_m)
{
  const LrProp *along_prop = lr_item_find_prop (item->kind, "along-mm");
  double width_m = width_on_wall_m (item);
  double best = HUGE_VAL;
  LrVec2 from_m, along;
  double length_m;
  int own_wall = item->wall;

  for (int wall = 0; lr_room_wall (setup->room, wall, &from_m, &along, &length_m); wall++)
    {
      double distance_m = lr_segment_distance_m (from_m, lr_vec2_along (from_m, along, length_m), middle_m, NULL);
      double rank = distance_m + (length_m < width_m ? 1e6 : 0.0) - (wall == own_wall ? 1e-6 : 0.0);
      double wanted_m = lr_vec2_dot (lr_vec2_sub (middle_m, from_m), along) - width_m / 2.0;

      if (rank >= best)
        continue;
      best = rank;
      item->wall = wall;
      item->along_m = CLAMP (lr_prop_quantise (along_prop, wanted_m), 0.0, last_along_m (length_m, item));
    }
}

/**
 * lr_edit_forget:
 * @setup: a set-up with both items
 * @item: a fresh item
 * @ref: its reference that names @target
 * @target: what it names
 *
 * Makes the reference "". What looked or aimed at @target keeps facing that way; what @target wore stays where it is.
 */
void
lr_edit_forget (const LrSetup *setup,
                LrItem        *item,
                const LrProp  *ref,
                const LrItem  *target)
{
  gboolean is_worn = strcmp (ref->key, "worn-by") == 0 || strcmp (ref->key, "mounted-on") == 0;
  gboolean is_aim = strcmp (ref->key, "aims-at") == 0 || strcmp (ref->key, "looks-at") == 0;
  LrVec2 from_m, to_m;
  double facing_rad;

  if ((is_worn || is_aim) && lr_setup_place (setup, target, &to_m, &facing_rad)
      && lr_setup_place (setup, item, &from_m, &facing_rad))
    {
      if (is_worn)
        item->at_m = to_m;
      else if (lr_vec2_distance (from_m, to_m) > 0.001)
        lr_prop_put_number (lr_item_find_prop (item->kind, "facing-deg"), item,
                            lr_vec2_angle_rad (lr_vec2_sub (to_m, from_m)));
    }

  lr_prop_put_text (ref, item, "");
}

/* What an item must fulfil once all its changes are made */
static gboolean
settle (const LrSetup  *setup,
        LrItem         *item,
        GError        **error)
{
  const LrOrderedPair *pair = lr_item_check_order (item);

  if (pair != NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("“%s” must be more than “%s”."),
                   label (lr_item_find_prop (item->kind, pair->high)), label (lr_item_find_prop (item->kind, pair->low)));
      return FALSE;
    }
  if (lr_item_kind_info (item->kind)->place == LR_PLACE_WALL && (gsize) item->wall >= setup->room->n_corners)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("The room has no wall %d."), item->wall);
      return FALSE;
    }
  lr_edit_clamp_to_wall (setup, item);

  return TRUE;
}

/**
 * lr_plan_change:
 * @plan: a plan
 * @changes: (array length=n): which property of which item becomes what
 * @n: how many
 * @error: return location
 *
 * Makes all changes, or none. What must hold between properties, as a sill below its head, is asked after the last.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_change (const LrPlan    *plan,
                const LrChange  *changes,
                gsize            n,
                GError         **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);

  if (next == NULL)
    return NULL;

  for (gsize i = 0; i < n; i++)
    {
      LrItem *item = lr_edit_item (setup, changes[i].id, error);

      if (item == NULL || !lr_edit_put_number (item, changes[i].key, changes[i].value, error))
        return NULL;
    }
  for (gsize i = 0; i < n; i++)
    {
      /* Fresh since the loop above: it may be written */
      LrItem *item = (LrItem *) lr_setup_find (setup, changes[i].id);

      if (!settle (setup, item, error))
        return NULL;
    }

  return g_steal_pointer (&next);
}

/* A lens that is put on a camera sets what it cannot do */
static void
fit_lens (const LrPlan *plan,
          LrItem       *item)
{
  const LrKitEntry *entry = lr_plan_find_kit (plan, item->camera.lens);
  const LrLens *lens;

  if (entry == NULL)
    return;
  lens = &entry->item->lens;
  item->camera.focal_m = CLAMP (item->camera.focal_m, lens->focal_min_m, lens->focal_max_m);
  item->camera.f_number = CLAMP (item->camera.f_number, lens->f_number_min, lens->f_number_max);
}

static gboolean
put_ref (const LrPlan   *plan,
         const LrSetup  *setup,
         LrItem         *item,
         const LrProp   *prop,
         const char     *id,
         GError        **error)
{
  const LrItem *before = lr_setup_find (setup, lr_prop_get_text (prop, item));

  if (!lr_ref_is_valid (plan, setup, item, prop, id))
    {
      g_autofree char *title = lr_edit_dup_title (item);

      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFERENCE, _("“%s” of %s cannot be “%s”."), label (prop), title, id);
      return FALSE;
    }
  if (*id == '\0' && before != NULL)
    lr_edit_forget (setup, item, prop, before);
  lr_prop_put_text (prop, item, id);
  if (item->kind == LR_ITEM_CAMERA && strcmp (prop->key, "lens") == 0)
    fit_lens (plan, item);

  return TRUE;
}

/**
 * lr_plan_change_text:
 * @plan: a plan
 * @id: of an item
 * @key: of one of its texts or references; "id" is not among them, ids stay
 * @text: what it becomes
 * @error: return location
 *
 * Another lens on a camera brings focal length and stop into its range. What no longer aims at anything keeps its
 * direction.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_change_text (const LrPlan  *plan,
                     const char    *id,
                     const char    *key,
                     const char    *text,
                     GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;
  const LrProp *prop;

  if (item == NULL)
    return NULL;

  prop = lr_item_find_prop (item->kind, key);
  if (prop == NULL || !lr_prop_is_text (prop) || strcmp (key, "id") == 0)
    {
      g_autofree char *title = lr_edit_dup_title (item);

      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("%s has no text “%s”."), title, key);
      return NULL;
    }
  if (!lr_edit_check_text (label (prop), text, error))
    return NULL;

  if (prop->type == LR_PROP_TEXT)
    lr_prop_put_text (prop, item, text);
  else if (!put_ref (plan, setup, item, prop, text, error))
    return NULL;

  return g_steal_pointer (&next);
}
