/* plan_edit_underlay.c - the picture of a floor plan under a room: put there, moved, taken away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What else a room knows of its picture, page, dimming, hidden or not, are numbers of it: lr_plan_set_room().
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>

/* What a picture is dimmed by when it is new: the walls that are drawn over it must stand out */
#define USUAL_DIM 0.4

static LrRoom *
begin (const LrPlan  *plan,
       LrPlan       **next,
       GError       **error)
{
  LrSetup *setup;
  LrRoom *room;

  *next = lr_edit_begin (plan, &setup, error);
  if (*next == NULL)
    return NULL;

  room = lr_room_copy (setup->room);
  lr_room_unref (setup->room);
  setup->room = room;

  return room;
}

static gboolean
place (LrRoom              *room,
       const LrSimilarity  *lies,
       GError             **error)
{
  const struct { const char *key; double value; } numbers[] = {
    { "underlay-scale-m-per-px", lies->scale }, { "underlay-x-mm", lies->origin_m.x }, { "underlay-y-mm", lies->origin_m.y },
    { "underlay-turn-deg", lr_angle_wrap_rad (lies->turn_rad) / LR_DEG },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      const LrProp *prop = lr_prop_table_find (lr_room_table (), numbers[i].key);

      if (i == 0 && !(lies->scale >= prop->min && lies->scale <= prop->max))
        {
          g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("The picture would be too large or too small for that."));
          return FALSE;
        }
      if (!lr_edit_check_number (prop, numbers[i].value, error))
        return FALSE;
      lr_prop_put_number (prop, room, lr_prop_quantise (prop, numbers[i].value));
    }

  return TRUE;
}

/**
 * lr_plan_set_underlay:
 * @plan: a plan
 * @file: (nullable): a picture; %NULL takes the room's away, with all that is known of it
 * @name: what it is called; valid UTF-8
 * @lies: (nullable): how it lies on the floor; %NULL as the picture before, if there is one
 * @error: return location
 *
 * It is shown, dimmed, on its first page; its scale counts as a guess until it is placed by a length. Nothing of the room turns
 * on it.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_underlay (const LrPlan         *plan,
                      const LrPictureFile  *file,
                      const char           *name,
                      const LrSimilarity   *lies,
                      GError              **error)
{
  g_autoptr (LrPlan) next = NULL;
  LrRoom *room = begin (plan, &next, error);
  const LrPropTable *table = lr_room_table ();

  if (room == NULL || !lr_edit_check_text (_(lr_prop_table_find (table, "underlay-file")->label), name, error))
    return NULL;

  g_clear_pointer (&room->underlay, lr_picture_file_unref);
  room->underlay = file != NULL ? lr_picture_file_ref (file) : NULL;
  lr_prop_put_text (lr_prop_table_find (table, "underlay-file"), room, file != NULL ? name : "");
  room->underlay_page = 0;
  room->underlay_is_hidden = FALSE;
  room->underlay_dim = file != NULL ? USUAL_DIM : 0.0;
  room->underlay_is_guessed = file != NULL && (lies != NULL || room->underlay_is_guessed);
  if (file == NULL)
    room->underlay_scale = room->underlay_x_m = room->underlay_y_m = room->underlay_turn_deg = 0.0;
  if (lies != NULL && !place (room, lies, error))
    return NULL;

  return g_steal_pointer (&next);
}

/**
 * lr_plan_place_underlay:
 * @plan: a plan
 * @lies: how the picture under its room lies on the floor
 * @is_known: whether its scale is from a length that someone knows; else that is as it was
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_place_underlay (const LrPlan        *plan,
                        const LrSimilarity  *lies,
                        gboolean             is_known,
                        GError             **error)
{
  g_autoptr (LrPlan) next = NULL;
  LrRoom *room = begin (plan, &next, error);

  if (room == NULL)
    return NULL;
  if (room->underlay == NULL)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("There is no picture under this room."));
      return NULL;
    }

  if (is_known)
    room->underlay_is_guessed = FALSE;
  return place (room, lies, error) ? g_steal_pointer (&next) : NULL;
}
