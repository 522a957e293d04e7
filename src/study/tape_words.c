/* tape_words.c - what is read of a mark on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walls and corners have the numbers of the sketch of a room by tape: wall 1 goes from corner 1 to corner 2.
 */

#include "config.h"

#include "tape_marks.h"

#include <glib/gi18n-lib.h>

static const char *
light_spot (const LrItem *item)
{
  switch ((LrLightJob) item->light.job)
    {
    case LR_JOB_KEY:
      return _("key, stand");
    case LR_JOB_FILL:
      return _("fill, stand");
    case LR_JOB_BACK:
      return _("back, stand");
    case LR_JOB_WALL:
      return _("wall light, stand");
    case LR_JOB_OTHER:
    default:
      return _("light, stand");
    }
}

static const char *
panel_spot (const LrItem *item)
{
  return item->panel.form == LR_PANEL_REFLECTOR ? _("reflector, stand")
         : item->panel.form == LR_PANEL_FLAG ? _("flag, stand") : _("backdrop, middle");
}

/**
 * lr_tape_mark_spot:
 * @mark: a mark
 *
 * Returns: (transfer full): the thing, and what of it stands over the mark, translated: "camera, tripod", "Wenna, mid-seat"
 */
char *
lr_tape_mark_spot (const LrTapeMark *mark)
{
  const LrItem *item = mark->placed->item;
  g_autofree char *name = NULL;

  switch ((int) item->kind)
    {
    case LR_ITEM_CAMERA:
      return g_strdup (_("camera, tripod"));
    case LR_ITEM_MICROPHONE:
      return g_strdup (item->microphone.form == LR_MIC_BOOM ? _("boom, stand") : _("microphone, stand"));
    case LR_ITEM_PANEL:
      return g_strdup (panel_spot (item));
    case LR_ITEM_LIGHT:
      return g_strdup (light_spot (item));
    default:
      break;
    }

  name = item->name[0] != '\0' ? g_strdup (item->name) : lr_item_title (item);
  return g_strdup_printf (item->person.posture == LR_POSTURE_SEATED ? _("%s, mid-seat") : _("%s, feet"), name);
}

/**
 * lr_tape_height_word:
 * @of: what is set to a height
 *
 * Returns: (transfer none): it, translated; "" for none
 */
const char *
lr_tape_height_word (LrHeightOf of)
{
  switch (of)
    {
    case LR_HEIGHT_LENS:
      return _("lens");
    case LR_HEIGHT_LAMP:
      return _("lamp");
    case LR_HEIGHT_CAPSULE:
      return _("capsule");
    case LR_HEIGHT_SEAT:
      return _("seat");
    case LR_HEIGHT_EDGE:
      return _("lower edge");
    case LR_HEIGHT_NONE:
    default:
      return "";
    }
}

/* A length with its unit, as it is read off a tape */
static char *
say_length (double  length_m,
            LrUnits units)
{
  g_autofree char *number = lr_length_format_tape (length_m, units);

  return units == LR_UNITS_METRIC ? g_strconcat (number, "\u00a0m", NULL) : g_steal_pointer (&number);
}

/**
 * lr_tape_mark_aim:
 * @mark: a mark
 * @units: the user's
 *
 * Returns: (transfer full): where the thing on it is to be turned, translated: at whom, and the spot on the wall that it then
 *   faces, which can be marked without a compass; of a boom how far out its capsule hangs
 */
char *
lr_tape_mark_aim (const LrTapeMark *mark,
                  LrUnits           units)
{
  g_autofree char *target = mark->aims_at != NULL ? lr_item_title (mark->aims_at->item) : NULL;
  g_autofree char *along = NULL, *reach = NULL;

  if (mark->aim_wall < 0)
    return target != NULL ? g_strdup_printf (_("at %s"), target) : g_strdup ("");

  along = say_length (mark->aim_along_m, units);
  if (isfinite (mark->reach_m))
    {
      reach = say_length (mark->reach_m, units);
      /* Translators: where a boom is turned: "to wall 3, 1.20 m from corner 3; capsule 1.79 m out" */
      return g_strdup_printf (_("to wall %d, %s from corner %d; capsule %s out"), mark->aim_number, along, mark->aim_corner_number, reach);
    }
  if (target != NULL)
    /* Translators: where a thing is turned: "at Wenna; wall 3, 1.20 m from corner 3" */
    return g_strdup_printf (_("at %s; wall %d, %s from corner %d"), target, mark->aim_number, along, mark->aim_corner_number);

  /* Translators: where a thing is turned: "to wall 3, 1.20 m from corner 3" */
  return g_strdup_printf (_("to wall %d, %s from corner %d"), mark->aim_number, along, mark->aim_corner_number);
}

/**
 * lr_fix_way_word:
 * @way: how the tapes run
 *
 * Returns: (transfer none): a word for programs
 */
const char *
lr_fix_way_word (LrFixWay way)
{
  return way == LR_FIX_CLEAR ? "clear" : way == LR_FIX_OVER ? "over-furniture" : "none";
}
