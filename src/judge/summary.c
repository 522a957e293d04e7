/* summary.c - one thing in a sentence or two: the figures that follow from its settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "summary.h"

#include "light_readings.h"
#include "summary_power.h"
#include "summary_sound.h"
#include "sun_readings.h"

#include <glib/gi18n-lib.h>

#define FOOT_M 0.3048
#define STRAIGHT_DOWN_RAD (75.0 * LR_DEG)

/* "north wall", "drafting table"; (transfer full) */
static char *
background_title (const LrStudy         *study,
                  const LrCameraReading *camera)
{
  switch (camera->behind)
    {
    case LR_BEHIND_WALL:
      return g_strdup (lr_wall_title (study->setup->room, camera->behind_wall));
    case LR_BEHIND_ITEM:
      return lr_item_title (camera->behind_item->item);
    case LR_BEHIND_FLOOR:
      return g_strdup (_("floor"));
    case LR_BEHIND_CEILING:
      return g_strdup (_("ceiling"));
    case LR_BEHIND_NOTHING:
    default:
      return NULL;
    }
}

static char *
describe_background (const LrStudy         *study,
                     const LrCameraReading *camera,
                     LrUnits                units)
{
  g_autofree char *distance = lr_length_format (camera->behind_m, units);
  g_autofree char *thing = background_title (study, camera);

  if (thing == NULL)
    return g_strdup ("");

  /* Translators: what stands behind the subject, its distance from the camera, a per cent number */
  return g_strdup_printf (_("Behind is the %s, %s away; it blurs to %.1f %% of the width."), thing, distance,
                          100.0 * camera->blur_share);
}

static void
add_sentence (GString    *text,
              char        between,
              const char *sentence)
{
  if (sentence[0] != '\0')
    g_string_append_printf (text, "%c%s", between, sentence);
}

/* To a tenth, halves up: 20.25 is 20.3 wherever it is written */
static double
size_mm (double size_m)
{
  return 0.1 * round (1e4 * size_m + 1e-6);
}

/* "Records 36.0 × 24.0 mm, delivers 36.0 × 20.3."; "" when all of it is delivered */
static char *
describe_cut (const LrCameraReading *camera)
{
  const LrSensorArea *all = &camera->recorded, *cut = &camera->area;

  if (fabs (all->width_m - cut->width_m) < 5e-5 && fabs (all->height_m - cut->height_m) < 5e-5)
    return g_strdup ("");
  if (camera->width_share < 0.995)
    /* Translators: sizes on the sensor, and the part of its width that is delivered, a per cent number */
    return g_strdup_printf (_("Records %.1f × %.1f mm, delivers %.1f × %.1f, %.0f %% of the width."), size_mm (all->width_m),
                            size_mm (all->height_m), size_mm (cut->width_m), size_mm (cut->height_m), 100.0 * camera->width_share);

  return g_strdup_printf (_("Records %.1f × %.1f mm, delivers %.1f × %.1f."), size_mm (all->width_m), size_mm (all->height_m),
                          size_mm (cut->width_m), size_mm (cut->height_m));
}

/* "Its converter makes it 100 mm at f/5.6."; "" without one */
static char *
describe_converter (const LrCameraReading *camera)
{
  g_autofree char *stop = lr_f_number_format (0.1 * round (10.0 * camera->f_number));

  if (fabs (camera->converter - 1.0) < 1e-9)
    return g_strdup ("");

  /* Translators: the lens's focal length and f-number with the converter behind it */
  return g_strdup_printf (_("Its converter makes it %.4g mm at %s."), 1e3 * camera->focal_m, stop);
}

static char *
describe_camera (const LrStudy         *study,
                 const LrCameraReading *camera,
                 LrUnits                units)
{
  g_autofree char *width = lr_length_format_short (camera->field_w_m, units);
  g_autofree char *height = lr_length_format (camera->field_h_m, units);
  g_autofree char *cut = describe_cut (camera), *converter = describe_converter (camera);
  g_autoptr (GString) text = g_string_new (NULL);

  if (camera->has_subject)
    {
      g_autofree char *who = lr_item_title (camera->subject->item), *behind = describe_background (study, camera, units);

      g_string_printf (text, _("Sees %s × %s at %s."), width, height, who);
      add_sentence (text, ' ', behind);
      if (fabs (camera->eyes_depth_m / camera->distance_m - 1.0) > 0.015)
        {
          g_autofree char *tape = lr_length_format (camera->distance_m, units), *depth = lr_length_format (camera->eyes_depth_m, units);
          /* Translators: two distances */
          g_autofree char *focus = g_strdup_printf (_("The eyes are %s away by tape, %s along the axis: the lens is focused by that."),
                                                    tape, depth);

          add_sentence (text, ' ', focus);
        }
    }
  else
    g_string_printf (text, _("Sees %.0f° across and %.0f° up and down."), camera->angle_h_rad / LR_DEG,
                     camera->angle_v_rad / LR_DEG);
  add_sentence (text, '\n', cut);
  add_sentence (text, '\n', converter);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* "L1, 45° to their right and 21° up, gives the key side 450 lx; the room adds 60. The shadow side has 95 lx, 2.4 stops less." */
static char *
describe_face (const LrFaceLight *face)
{
  double lit_lx = lr_lux_all (face->at[face->lit]), shadow_lx = lr_lux_all (face->at[face->shadow]);
  g_autofree char *key = NULL;

  if (!(lit_lx >= 1.0))
    return g_strdup (_("Nothing lights the face."));
  if (face->key == NULL)
    return g_strdup_printf (_("No light shines straight on the face; what the room gives back makes %.0f lx on one side, %.0f on the other."),
                            lr_lux_round (lit_lx), lr_lux_round (fmax (shadow_lx, 1.0)));

  key = lr_item_title (face->key->item);
  if (face->key_is_sun)
    {
      char *window = key;

      /* Translators: a window; at the beginning of a sentence */
      key = g_strdup_printf (_("The sun through %s"), window);
      g_free (window);
    }
  if (!(shadow_lx >= 1.0))
    return g_strdup_printf (_("%s lights one side of the face with %.0f lx; the other is dark."), key, lr_lux_round (lit_lx));
  /* Translators: a lamp, two angles, three illuminances and stops */
  return g_strdup_printf (face->key_side_rad < 0.0
                              ? _("%s, %.0f° to the right of the look and %.0f° up, lights that side of the face most: it has %.0f lx, "
                                  "the other %.0f, %.1f stops less.")
                              : _("%s, %.0f° to the left of the look and %.0f° up, lights that side of the face most: it has %.0f lx, "
                                  "the other %.0f, %.1f stops less."),
                          key, fabs (face->key_side_rad) / LR_DEG, face->key_up_rad / LR_DEG, lr_lux_round (lit_lx), lr_lux_round (shadow_lx),
                          face->ratio_stops);
}

/* "The shadow of the nose falls to their left, 28° below level."; "" when both sides are lit alike */
static char *
describe_nose_shadow (const LrFaceLight *face)
{
  gboolean is_to_left = face->key_side_rad < 0.0;

  if (isnan (face->nose_under_rad) || !(face->ratio_stops > 0.5))
    return g_strdup ("");
  if (face->nose_under_rad > STRAIGHT_DOWN_RAD)
    return g_strdup (_("The shadow of the nose falls straight down."));
  if (face->nose_under_rad < 0.0)
    return g_strdup (is_to_left ? _("The shadow of the nose falls up to their left.") : _("The shadow of the nose falls up to their right."));
  return g_strdup_printf (is_to_left ? _("The shadow of the nose falls to their left, %.0f° below level.")
                                     : _("The shadow of the nose falls to their right, %.0f° below level."),
                          face->nose_under_rad / LR_DEG);
}

static char *
describe_person (const LrStudy       *study,
                 const LrLightLevels *levels,
                 const LrPlaced      *person,
                 LrUnits              units)
{
  const LrFaceLight *face = levels != NULL && lr_light_levels_n_sources (levels) > 0 ? lr_light_levels_face (levels, person->item->id) : NULL;
  g_autofree char *light = face != NULL ? describe_face (face) : g_strdup ("");
  g_autofree char *nose = face != NULL ? describe_nose_shadow (face) : g_strdup ("");
  const LrPlaced *other = lr_study_find_placed (study, person->item->person.looks_at);
  g_autofree char *eyes = lr_length_format (person->eyes_m.z, units);
  g_autofree char *name = NULL, *distance = NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (other == NULL)
    g_string_printf (text, _("Eyes %s above the floor."), eyes);
  else
    {
      name = lr_item_title (other->item);
      distance = lr_length_format (lr_vec2_distance (person->at_m, other->at_m), units);
      g_string_printf (text, _("Eyes %s above the floor. %s sits or stands %s away."), eyes, name, distance);
    }
  add_sentence (text, '\n', light);
  if (face != NULL && !lr_light_levels_is_whole (levels))
    add_sentence (text, ' ', _("Direct light only: what the room gives back follows."));
  add_sentence (text, ' ', nose);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* From the stand to whom or what it points at */
static char *
describe_distance (const LrStudy  *study,
                   const LrPlaced *placed,
                   const char     *target,
                   LrUnits         units)
{
  const LrPlaced *other = lr_study_find_placed (study, target);
  g_autofree char *name = NULL, *distance = NULL;

  if (other == NULL)
    return g_strdup ("");

  name = lr_item_title (other->item);
  distance = lr_length_format (lr_vec2_distance (placed->at_m, other->at_m), units);
  return g_strdup_printf (_("Stands %s from %s, measured on the floor."), distance, name);
}

/* "Of it alone the bright side of Wenna's face has 360 lx, and the walls that A sees 95 lx, 1.9 stops less."; "" when that is not known */
static char *
describe_spill (const LrStudy       *study,
                const LrLightLevels *levels,
                const LrItem        *light)
{
  const LrFaceLight *face = levels != NULL ? lr_light_levels_main_face (levels) : NULL;
  const LrCameraReading *camera = study->cameras->len > 0 ? &g_array_index (study->cameras, LrCameraReading, 0) : NULL;
  double wall_lx = camera != NULL && levels != NULL ? lr_light_levels_spill_lx (levels, light->id, camera->item->id) : (double) NAN, face_lx;
  g_autofree char *name = NULL;

  if (face == NULL || isnan (wall_lx))
    return g_strdup ("");

  name = lr_item_title (face->person->item);
  face_lx = lr_light_levels_source_lx (levels, light->id, face->person->item->id, face->lit);
  if (!(face_lx >= 1.0) && !(wall_lx >= 1.0))
    return g_strdup ("");
  if (!(face_lx >= 1.0))
    /* Translators: a camera's tag, an illuminance, a person */
    return g_strdup_printf (_("Straight from it the walls that %s sees have %.0f lx, the bright side of %s’s face nothing."), camera->item->tag,
                            lr_lux_round (wall_lx), name);
  if (!(wall_lx >= 1.0))
    /* Translators: a person, an illuminance, a camera's tag */
    return g_strdup_printf (_("Straight from it the bright side of %s’s face has %.0f lx, the walls that %s sees nothing."), name,
                            lr_lux_round (face_lx), camera->item->tag);
  /* Translators: a person, an illuminance, a camera's tag, an illuminance, stops */
  return g_strdup_printf (wall_lx < face_lx ? _("Straight from it the bright side of %s’s face has %.0f lx, the walls that %s sees %.0f, %.1f stops less.")
                                            : _("Straight from it the bright side of %s’s face has %.0f lx, the walls that %s sees %.0f, %.1f stops more."),
                          name, lr_lux_round (face_lx), camera->item->tag, lr_lux_round (wall_lx), fabs (log2 (face_lx / wall_lx)));
}

/* "east wall"; where several are called so, with its number: "south wall (wall 3)"; (transfer full) */
static char *
name_wall (const LrRoom *room,
           int           wall)
{
  const char *title = lr_wall_title (room, wall);
  guint n_alike = 0;

  for (int i = 0; i < (int) room->n_corners; i++)
    n_alike += g_str_equal (lr_wall_title (room, i), title);
  /* Translators: where a wall is, and its number */
  return n_alike > 1 ? g_strdup_printf (_("%s (wall %d)"), title, lr_room_wall_number (room, wall)) : g_strdup (title);
}

/* "On the east wall, 0.35 m from the south wall and 3.25 m from the north-east wall.": as it was taped from either corner; "" for what
 * hangs on no wall */
static char *
describe_on_wall (const LrStudy *study,
                  const LrItem  *item,
                  LrUnits        units)
{
  const LrRoom *room = study->setup->room;
  int n = (int) room->n_corners;
  double length_m, width_m = item->kind == LR_ITEM_DOOR ? item->door.width_m : item->kind == LR_ITEM_WINDOW ? item->window.width_m : 0.0;
  g_autofree char *before = NULL, *after = NULL, *here = NULL, *from = NULL, *to = NULL;

  if (lr_item_kind_info (item->kind)->place != LR_PLACE_WALL || !lr_room_wall (room, item->wall, NULL, NULL, &length_m))
    return g_strdup ("");

  before = lr_length_format (item->along_m, units);
  after = lr_length_format (fmax (length_m - item->along_m - width_m, 0.0), units);
  here = name_wall (room, item->wall);
  from = name_wall (room, (item->wall + n - 1) % n);
  to = name_wall (room, (item->wall + 1) % n);
  /* Translators: the wall that it is on, then from the wall that it begins at, then to the wall that it ends at */
  return g_strdup_printf (_("On the %s, %s from the %s and %s from the %s."), here, before, from, after, to);
}

/* A window shines by the height of the sun */
static char *
describe_daylight (const LrStudy       *study,
                   const LrLightLevels *levels,
                   const LrItem        *window)
{
  LrSunPlace sun;

  if (window->window.blind != LR_BLIND_DOWN && !lr_study_sun_at (study, lr_study_light_minute (study), &sun))
    return g_strdup (_("It counts as dark until the place’s latitude and longitude, the date, rolling and wrap are filled in."));

  return describe_spill (study, levels, window);
}

static char *
describe_window (const LrStudy       *study,
                 const LrLightLevels *levels,
                 const LrItem        *window,
                 LrUnits              units)
{
  g_autofree char *place = describe_on_wall (study, window, units);
  g_autofree char *light = describe_daylight (study, levels, window);

  return *light == '\0' ? g_steal_pointer (&place) : g_strdup_printf ("%s %s", place, light);
}

/* "Stands 1.55 m from Wenna, measured on the floor." and, until the levels are known, "By its output it gives 690 lx there …" */
static char *
describe_light (const LrStudy       *study,
                const LrLightLevels *levels,
                const LrPlaced      *light,
                LrUnits              units)
{
  g_autofree char *distance = describe_distance (study, light, light->item->light.aims_at, units);
  g_autoptr (GString) text = g_string_new (distance);
  g_autofree char *level = NULL, *spill = describe_spill (study, levels, light->item);
  LrLightAt at;

  if (!lr_light_at_aim (study, light, &at))
    {
      if (text->len == 0)
        return g_steal_pointer (&spill);
      add_sentence (text, '\n', spill);
      return g_string_free (g_steal_pointer (&text), FALSE);
    }

  if (spill[0] != '\0' && at.lux >= 1.0 && at.seen_share >= 1.0)
    level = g_strdup ("");
  else if (!(at.lux >= 1.0))
    level = g_strdup (_("Nothing of it comes straight there."));
  else if (at.seen_share < 1.0)
    /* Translators: lux, and the part of the lamp that is hidden, a per cent number */
    level = g_strdup_printf (_("By its output it gives %.0f lx there, %.0f %% of it hidden on the way; what the room throws back comes on top."),
                             lr_lux_round (at.lux), 100.0 * (1.0 - at.seen_share));
  else
    level = g_strdup_printf (_("By its output it gives %.0f lx there; what the room throws back comes on top."), lr_lux_round (at.lux));
  add_sentence (text, ' ', level);
  add_sentence (text, '\n', spill);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The thing's own sentences, and those of its stand on the next line */
static char *
with_stand (const LrStudy  *study,
            const LrPlaced *placed,
            char           *own)
{
  g_autofree char *stand = lr_summary_stand (study, placed), *feed = lr_summary_feed (study, placed->item);
  GString *text = g_string_new (own);

  g_free (own);
  add_sentence (text, '\n', feed);
  add_sentence (text, '\n', stand);
  return g_string_free (text, FALSE);
}

/**
 * lr_item_summary:
 * @study: a study
 * @levels: (nullable): of light
 * @id: of an item of the set-up
 * @units: how lengths are written
 *
 * Returns: (transfer full): what follows from the thing's settings, in whole sentences, on a line or more; "" for nothing
 */
char *
lr_item_summary (const LrStudy       *study,
                 const LrLightLevels *levels,
                 const char          *id,
                 LrUnits              units)
{
  const LrPlaced *placed = lr_study_find_placed (study, id);
  const LrCameraReading *camera = lr_study_find_camera (study, id);

  if (placed == NULL)
    return g_strdup ("");
  if (camera != NULL)
    return describe_camera (study, camera, units);

  switch ((int) placed->item->kind)
    {
    case LR_ITEM_PERSON:
      return describe_person (study, levels, placed, units);
    case LR_ITEM_LIGHT:
      return with_stand (study, placed, describe_light (study, levels, placed, units));
    case LR_ITEM_WINDOW:
      return describe_window (study, levels, placed->item, units);
    case LR_ITEM_HOUSE_LIGHT:
      return describe_spill (study, levels, placed->item);
    case LR_ITEM_MICROPHONE:
      return with_stand (study, placed, lr_microphone_sound_summary (study, placed, units));
    case LR_ITEM_NOISE:
      return lr_noise_sound_summary (study, placed);
    case LR_ITEM_LEAD:
      return lr_summary_lead (study, placed->item, units);
    case LR_ITEM_SOCKET:
      return lr_summary_socket (study, placed->item);
    case LR_ITEM_PANEL:
      return lr_summary_stand (study, placed);
    default:
      return describe_on_wall (study, placed->item, units);
    }
}

/**
 * lr_room_summary:
 * @units: how lengths are written
 *
 * Returns: (transfer full): size and area of the room, and how well the subject is heard in it; "" while it has no corners
 */
char *
lr_room_summary (const LrStudy *study,
                 LrUnits        units)
{
  const LrRoom *room = study->setup->room;
  LrVec2 low, high;
  g_autofree char *across = NULL, *up = NULL, *size = NULL, *voice = NULL;
  double area = study->room_area_m2;

  if (room->n_corners < 3)
    return g_strdup ("");

  lr_polygon_bounds (room->corners_m, room->n_corners, &low, &high);
  across = lr_length_format_short (high.x - low.x, units);
  up = lr_length_format (high.y - low.y, units);
  size = units == LR_UNITS_IMPERIAL ? g_strdup_printf (_("%s × %s, %.0f ft² of floor."), across, up, area / (FOOT_M * FOOT_M))
                                    : g_strdup_printf (_("%s × %s, %.1f m² of floor."), across, up, area);
  voice = lr_room_voice_summary (study);
  return *voice != '\0' ? g_strconcat (size, "\n", voice, NULL) : g_steal_pointer (&size);
}
