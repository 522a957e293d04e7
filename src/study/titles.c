/* titles.c - what people call things
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "study.h"

#include <glib/gi18n-lib.h>

/* The names of shots are common practice; see framing.c for where each cuts */
static const char *const shots[LR_N_SHOTS] = {
  [LR_SHOT_EXTREME_CLOSE_UP] = N_("extreme close-up"),
  [LR_SHOT_BIG_CLOSE_UP] = N_("big close-up"),
  [LR_SHOT_CLOSE_UP] = N_("close-up"),
  [LR_SHOT_MEDIUM_CLOSE_UP] = N_("medium close-up"),
  [LR_SHOT_MEDIUM] = N_("medium"),
  [LR_SHOT_MEDIUM_LONG] = N_("medium long"),
  [LR_SHOT_THREE_QUARTER] = N_("three-quarter"),
  [LR_SHOT_FULL] = N_("full"),
  [LR_SHOT_LONG] = N_("long"),
};

/* TRANSLATORS: the trade's letters for shot sizes, from extreme close-up to long */
static const char *const shot_letters[LR_N_SHOTS] = {
  [LR_SHOT_EXTREME_CLOSE_UP] = N_("ECU"),
  [LR_SHOT_BIG_CLOSE_UP] = N_("BCU"),
  [LR_SHOT_CLOSE_UP] = N_("CU"),
  [LR_SHOT_MEDIUM_CLOSE_UP] = N_("MCU"),
  [LR_SHOT_MEDIUM] = N_("MS"),
  [LR_SHOT_MEDIUM_LONG] = N_("MLS"),
  [LR_SHOT_THREE_QUARTER] = N_("3/4"),
  [LR_SHOT_FULL] = N_("FS"),
  [LR_SHOT_LONG] = N_("LS"),
};

/* Clockwise from north, a wall's outer side faces there */
static const char *const walls[] = {
  N_("north wall"), N_("north-east wall"), N_("east wall"), N_("south-east wall"),
  N_("south wall"), N_("south-west wall"), N_("west wall"), N_("north-west wall"),
};

static const char *const towards_walls[] = {
  N_("towards the north wall"), N_("towards the north-east wall"), N_("towards the east wall"),
  N_("towards the south-east wall"), N_("towards the south wall"), N_("towards the south-west wall"),
  N_("towards the west wall"), N_("towards the north-west wall"),
};

static const char *const towards_winds[] = {
  N_("to the north"), N_("to the north-east"), N_("to the east"), N_("to the south-east"),
  N_("to the south"), N_("to the south-west"), N_("to the west"), N_("to the north-west"),
};

/**
 * lr_shot_title:
 * @shot: a shot, or %LR_N_SHOTS when nobody is in the frame
 *
 * Returns: (transfer none): its name, translated
 */
const char *
lr_shot_title (LrShot shot)
{
  return (int) shot >= 0 && shot < LR_N_SHOTS ? _(shots[shot]) : _("nobody in the frame");
}

/**
 * lr_shot_heading:
 * @shot: a shot, or %LR_N_SHOTS when nobody is in the frame
 *
 * Returns: (transfer full): its name with a capital, translated: "Medium close-up"
 */
char *
lr_shot_heading (LrShot shot)
{
  const char *title = lr_shot_title (shot), *rest = g_utf8_next_char (title);
  g_autofree char *first = g_utf8_strup (title, rest - title);

  return g_strconcat (first, rest, NULL);
}

/**
 * lr_shot_letters:
 * @shot: a shot, or %LR_N_SHOTS when nobody is in the frame
 *
 * Returns: (transfer none): the trade's letters for it, translated: "MCU"; "–" for nobody
 */
const char *
lr_shot_letters (LrShot shot)
{
  return (int) shot >= 0 && shot < LR_N_SHOTS ? _(shot_letters[shot]) : "–";
}

/* Which of the eight winds a direction on the sheet points to, 0 north, clockwise */
static int
wind_of (const LrRoom *room,
         LrVec2        direction)
{
  double bearing_rad = 0.5 * LR_PI - lr_vec2_angle_rad (direction) - room->north_rad;
  int wind = (int) lround (bearing_rad / (0.25 * LR_PI));

  return ((wind % 8) + 8) % 8;
}

/**
 * lr_wall_title:
 * @room: a room
 * @wall: one of its walls
 *
 * Returns: (transfer none): "north wall", translated: by where its outer side faces; "" if there is no such wall
 */
const char *
lr_wall_title (const LrRoom *room,
               int           wall)
{
  LrVec2 from_m, along;
  double length_m;

  if (!lr_room_wall (room, wall, &from_m, &along, &length_m))
    return "";

  return _(walls[wind_of (room, lr_vec2_scale (lr_vec2_left (along), -1.0))]);
}

/**
 * lr_wall_towards:
 * @room: a room
 * @direction: of a move, on the sheet
 *
 * Names the wall that a move goes to most squarely; without a room, the wind.
 *
 * Returns: (transfer none): "towards the north wall", "to the north", translated
 */
const char *
lr_wall_towards (const LrRoom *room,
                 LrVec2        direction)
{
  double best = -HUGE_VAL;
  LrVec2 outward = direction;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 from_m, along, out;
      double length_m;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m))
        continue;

      out = lr_vec2_scale (lr_vec2_left (along), -1.0);
      if (lr_vec2_dot (out, direction) > best)
        {
          best = lr_vec2_dot (out, direction);
          outward = out;
        }
    }

  return room->n_corners >= 3 ? _(towards_walls[wind_of (room, outward)]) : _(towards_winds[wind_of (room, direction)]);
}

/* "L1 key": the tag, and what tells it from its neighbours */
static char *
tagged_title (const LrItem *item,
              const char   *what)
{
  if (item->tag[0] != '\0' && what[0] != '\0')
    return g_strdup_printf (C_("a thing's tag and what it is", "%s %s"), item->tag, what);

  return g_strdup (item->tag[0] != '\0' ? item->tag : what);
}

static const char *
job_title (const LrItem *light)
{
  static const char *const jobs[] = { N_("key"), N_("fill"), N_("back"), N_("wall"), N_("light") };

  return light->light.job >= 0 && light->light.job <= LR_JOB_OTHER ? _(jobs[light->light.job]) : "";
}

/**
 * lr_camera_lens_title:
 * @camera: a reading
 *
 * Returns: (transfer full): the focal length as marked, and the converter that goes behind the lens, if any: "50 mm × 1.4"
 */
char *
lr_camera_lens_title (const LrCameraReading *camera)
{
  double focal_mm = 1000.0 * camera->item->camera.focal_m;

  if (fabs (camera->converter - 1.0) < 1e-9)
    return g_strdup_printf (_("%.4g mm"), focal_mm);

  /* Translators: a lens's focal length and the factor of the converter behind it */
  return g_strdup_printf (_("%.4g mm × %.3g"), focal_mm, camera->converter);
}

/**
 * lr_item_title:
 * @item: an item
 *
 * Returns: (transfer full): what people call it: "Camera B", "Wenna", "L1 key", "drafting table"
 */
char *
lr_item_title (const LrItem *item)
{
  const char *form = lr_item_form_label (item);

  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
      return item->tag[0] != '\0' ? g_strdup_printf (_("Camera %s"), item->tag)
                                  : g_strdup (item->name[0] != '\0' ? item->name : form);
    case LR_ITEM_LIGHT:
      return tagged_title (item, item->name[0] != '\0' ? item->name : job_title (item));
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
      return tagged_title (item, item->name[0] != '\0' ? item->name : form);
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
      if (item->tag[0] != '\0')
        return item->name[0] != '\0' ? tagged_title (item, item->name)
                                     : g_strdup_printf (C_("kind and tag: Socket S1", "%s %s"), form, item->tag);
      break;
    case LR_ITEM_PERSON:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }

  return g_strdup (item->name[0] != '\0' ? item->name : form);
}

/**
 * lr_item_title_first:
 * @item: an item
 *
 * Returns: (transfer full): its title as a sentence begins: "Drafting table"
 */
char *
lr_item_title_first (const LrItem *item)
{
  g_autofree char *title = lr_item_title (item), *first = NULL, *upper = NULL;

  if (title[0] == '\0')
    return g_steal_pointer (&title);

  first = g_utf8_substring (title, 0, 1);
  upper = g_utf8_strup (first, -1);
  return g_strconcat (upper, g_utf8_next_char (title), NULL);
}
