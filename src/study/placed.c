/* placed.c - where things stand, where they look and the room that they take
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Footprints: a stand takes the disc of its spread legs. A seated person takes the box round the chair and the
 * outstretched legs, .29 m behind the middle of the head to .63 m ahead of it and .26 m to either side; a standing one a disc
 * of .25 m (our drawn symbols, on ANSUR II's bideltoid breadths of .45 to .51 m and chairs of .45 m). A backdrop stands
 * on feet .35 m to either side. What hangs on a person, in a wall or under the ceiling takes no floor.
 */

#include "study_parts.h"

#include "boom.h"

#include <string.h>

#define LEG_GAP_SHARE 0.5 /* cos 60 degrees: from the centre to the line between two feet */
#define SEAT_BACK_M 0.29
#define SEAT_FRONT_M 0.63
#define SEAT_HALF_WIDTH_M 0.26
#define STANDING_RADIUS_M 0.25
#define BACKDROP_FOOT_M 0.35
#define CAMERA_ABOVE_LENS_M 0.12 /* body and handle over the axis */

static void
add_item (LrStudy      *study,
          const LrItem *item)
{
  LrPlaced placed = { .item = item };

  if (!lr_setup_place (study->setup, item, &placed.at_m, &placed.facing_rad))
    placed.at_m = lr_vec2 (NAN, NAN);

  g_array_append_val (study->placed, placed);
  g_hash_table_insert (study->by_id, item->id, lr_study_placed_at (study, study->placed->len - 1));
}

static void
read_body (LrPlaced *placed)
{
  const LrPerson *person = &placed->item->person;
  LrBodyInput input = {
    .stature_m = person->stature_m,
    .is_seated = person->posture == LR_POSTURE_SEATED,
    .seat_height_m = person->seat_height_m,
    .eye_height_m = person->eye_height_m,
  };

  if (lr_body (&input, &placed->body))
    return;

  /* Measured eyes too low for the stature: the whole body shrinks to them */
  input.stature_m = fmin (input.stature_m, fmax (input.eye_height_m, 0.1));
  input.eye_height_m = 0.0;
  input.is_seated = FALSE;
  lr_body (&input, &placed->body);
}

static LrVec3
eyes_of (const LrPlaced *person)
{
  LrVec2 ahead = lr_vec2_polar (person->facing_rad, LR_EYES_AHEAD_M);

  return lr_vec2_raise (lr_vec2_add (person->at_m, ahead), person->body.eyes_m);
}

/* Towards a point, or as before when it is straight above */
static void
turn_towards (LrPlaced *placed,
              LrVec2    to_m)
{
  LrVec2 way = lr_vec2_sub (to_m, placed->at_m);

  if (lr_vec2_length (way) > 1e-6)
    placed->facing_rad = lr_vec2_angle_rad (way);
}

/* Id of what an item turns to; "" for none */
static const char *
target_id (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      return item->person.looks_at;
    case LR_ITEM_CAMERA:
      return item->camera.aims_at;
    case LR_ITEM_LIGHT:
      return item->light.aims_at;
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return "";
    }
}

/* People look from head to head; a camera or a light aims at the eyes, which are there by then */
static void
face (const LrStudy *study,
      LrPlaced      *placed)
{
  const LrItem *item = placed->item;
  const LrPlaced *target = lr_study_find_placed (study, target_id (item));

  if (target != NULL && target != placed)
    turn_towards (placed, item->kind == LR_ITEM_PERSON ? target->at_m : lr_vec3_flat (target->point_m));
  else if (item->kind == LR_ITEM_MICROPHONE && lr_microphone_stands (&item->microphone))
    turn_towards (placed, lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m));
}

static LrOutline
seated_footprint (const LrPlaced *placed)
{
  LrVec2 facing = lr_vec2_polar (placed->facing_rad, 1.0);
  LrVec2 middle_m = lr_vec2_along (placed->at_m, facing, 0.5 * (SEAT_FRONT_M - SEAT_BACK_M));

  return lr_outline_box (middle_m, SEAT_FRONT_M + SEAT_BACK_M, 2.0 * SEAT_HALF_WIDTH_M, placed->facing_rad);
}

static void
set_stand (LrPlaced *placed,
           double    radius_m)
{
  placed->footprint = lr_outline_disc (placed->at_m, radius_m);
  placed->leg_gap_m = LEG_GAP_SHARE * radius_m;
  placed->has_footprint = radius_m > 0.0;
}

static void
set_heights (LrPlaced *placed,
             double    bottom_m,
             double    top_m)
{
  placed->bottom_m = bottom_m;
  placed->top_m = top_m;
  placed->point_m = lr_vec2_raise (placed->at_m, 0.5 * (bottom_m + top_m));
}

static void
measure_person (LrPlaced *placed)
{
  set_heights (placed, 0.0, placed->body.crown_m);
  placed->eyes_m = eyes_of (placed);
  placed->point_m = placed->eyes_m;
  placed->has_footprint = TRUE;
  placed->footprint = placed->item->person.posture == LR_POSTURE_SEATED
                          ? seated_footprint (placed)
                          : lr_outline_disc (placed->at_m, STANDING_RADIUS_M);
}

static void
measure_microphone (LrPlaced *placed)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrBoomHang hang;

  if (!lr_microphone_stands (microphone))
    {
      set_heights (placed, microphone->tip_height_m, microphone->tip_height_m);
      return;
    }

  lr_boom_hang (placed->at_m, microphone, &hang);
  set_stand (placed, microphone->stand_radius_m);
  set_heights (placed, 0.0, microphone->form == LR_MIC_BOOM ? hang.top_m : microphone->tip_height_m);
  placed->point_m = lr_vec3 (microphone->tip_x_m, microphone->tip_y_m, microphone->tip_height_m);
}

static void
measure_panel (LrPlaced *placed)
{
  const LrPanel *panel = &placed->item->panel;

  set_stand (placed, panel->stand_radius_m);
  if (panel->form == LR_PANEL_BACKDROP)
    {
      placed->footprint = lr_outline_box (placed->at_m, 2.0 * BACKDROP_FOOT_M, panel->width_m, placed->facing_rad);
      placed->leg_gap_m = 0.0;
      placed->has_footprint = TRUE;
    }
  set_heights (placed, 0.0, panel->bottom_m + panel->height_m);
  placed->point_m.z = panel->bottom_m + 0.5 * panel->height_m;
}

static void
measure_furniture (LrPlaced *placed)
{
  const LrFurniture *furniture = &placed->item->furniture;

  placed->footprint = furniture->form == LR_FURNITURE_CYLINDER
                          ? lr_outline_disc (placed->at_m, 0.5 * fmax (furniture->length_m, furniture->width_m))
                          : lr_outline_box (placed->at_m, furniture->length_m, furniture->width_m, placed->facing_rad);
  placed->has_footprint = TRUE;
  set_heights (placed, furniture->bottom_m, fmax (furniture->height_m, furniture->bottom_m));
}

/* A lavalier is worn on the chest, a fifth of a metre under the mouth (common practice, no source) */
static void
wear (const LrStudy *study,
      LrPlaced      *placed)
{
  const LrPlaced *wearer = lr_study_find_placed (study, lr_item_carrier (placed->item));

  if (wearer == NULL)
    return;

  placed->facing_rad = wearer->facing_rad;
  if (wearer->item->kind == LR_ITEM_CAMERA)
    {
      placed->point_m = lr_vec2_raise (lr_vec2_along (wearer->at_m, lr_vec2_polar (wearer->facing_rad, 1.0), LR_CAMERA_MIC_AHEAD_M),
                                       wearer->item->camera.lens_height_m + LR_CAMERA_MIC_ABOVE_M);
      placed->bottom_m = placed->top_m = placed->point_m.z;
      return;
    }

  placed->point_m = lr_vec2_raise (lr_vec2_along (wearer->at_m, lr_vec2_polar (wearer->facing_rad, 1.0), 0.115),
                                   wearer->body.mouth_m - 0.20);
  placed->bottom_m = placed->top_m = placed->point_m.z;
}

/* Footprint, heights and the point that others aim at. People's facing is known by now. */
static void
measure (LrPlaced *placed)
{
  const LrItem *item = placed->item;

  placed->footprint = lr_outline_disc (placed->at_m, 0.0);
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      measure_person (placed);
      break;
    case LR_ITEM_CAMERA:
      set_stand (placed, item->camera.stand_radius_m);
      set_heights (placed, 0.0, item->camera.lens_height_m + CAMERA_ABOVE_LENS_M);
      placed->point_m.z = item->camera.lens_height_m;
      break;
    case LR_ITEM_LIGHT:
      set_stand (placed, item->light.stand_radius_m);
      set_heights (placed, 0.0, item->light.lamp_height_m + 0.5 * item->light.height_m);
      placed->point_m.z = item->light.lamp_height_m;
      break;
    case LR_ITEM_MICROPHONE:
      measure_microphone (placed);
      break;
    case LR_ITEM_PANEL:
      measure_panel (placed);
      break;
    case LR_ITEM_FURNITURE:
      measure_furniture (placed);
      break;
    case LR_ITEM_DOOR:
      set_heights (placed, 0.0, item->door.height_m);
      break;
    case LR_ITEM_WINDOW:
      set_heights (placed, item->window.sill_m, item->window.head_m);
      break;
    case LR_ITEM_SOCKET:
      set_heights (placed, item->socket.height_m, item->socket.height_m);
      break;
    case LR_ITEM_NOISE:
      set_heights (placed, item->noise.height_m, item->noise.height_m);
      break;
    case LR_ITEM_HOUSE_LIGHT:
      set_heights (placed, item->house_light.height_m, item->house_light.height_m);
      break;
    case LR_ITEM_LEAD:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      set_heights (placed, 0.0, 0.0);
      break;
    }
}

/**
 * lr_study_place_item:
 * @study: a study whose items are placed
 * @item: one of its items, changed
 * @placed: (out): where it would stand, and the room that it would take
 *
 * What it looks or aims at is where it is in @study.
 */
void
lr_study_place_item (const LrStudy *study,
                     const LrItem  *item,
                     LrPlaced      *placed)
{
  *placed = (LrPlaced) { .item = item };
  if (!lr_setup_place (study->setup, item, &placed->at_m, &placed->facing_rad))
    placed->at_m = lr_vec2 (NAN, NAN);

  face (study, placed);
  if (item->kind == LR_ITEM_PERSON)
    read_body (placed);
  measure (placed);
}

static const LrPlaced *
find_role (const LrStudy *study,
           LrRole         role)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);

      if (placed->item->kind == LR_ITEM_PERSON && placed->item->person.role == (int) role)
        return placed;
    }

  return NULL;
}

/**
 * lr_study_find_partner:
 * @study: a study whose items are placed
 * @person: (nullable): a person
 *
 * Returns: (nullable): the person that @person looks at; the subject and the interviewer look at each other when nothing
 *   else is said
 */
const LrPlaced *
lr_study_find_partner (const LrStudy  *study,
                       const LrPlaced *person)
{
  const LrPlaced *other = person != NULL ? lr_study_find_placed (study, person->item->person.looks_at) : NULL;

  if (other != NULL && other != person && other->item->kind == LR_ITEM_PERSON)
    return other;
  if (person == NULL)
    return NULL;
  if (person == study->subject)
    return find_role (study, LR_ROLE_INTERVIEWER);
  if (person == study->interviewer)
    return study->subject;

  return NULL;
}

static void
find_line (LrStudy *study)
{
  study->subject = find_role (study, LR_ROLE_SUBJECT);
  study->interviewer = lr_study_find_partner (study, study->subject);
  if (study->interviewer == NULL)
    study->interviewer = find_role (study, LR_ROLE_INTERVIEWER);

  study->eyes_level_m = NAN;
  study->line_from_m = study->line_to_m = lr_vec2 (NAN, NAN);
  if (study->subject == NULL || study->interviewer == NULL)
    return;

  study->line_from_m = lr_vec3_flat (study->subject->eyes_m);
  study->line_to_m = lr_vec3_flat (study->interviewer->eyes_m);
  study->has_line = lr_vec2_distance (study->line_from_m, study->line_to_m) > 1e-6;
  study->eyes_level_m = study->interviewer->eyes_m.z - study->subject->eyes_m.z;
}

/**
 * lr_study_place_items:
 * @study: a study that has its plan
 *
 * Places come first, then people's facings, which depend on places alone, then eyes and sizes, then what
 * aims at them.
 */
void
lr_study_place_items (LrStudy *study)
{
  const GPtrArray *items = study->setup->items;

  /* Others point into the array: it must not move */
  study->placed = g_array_sized_new (FALSE, FALSE, sizeof (LrPlaced), items->len + 1);
  for (guint i = 0; i < items->len; i++)
    add_item (study, items->pdata[i]);

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrPlaced *placed = lr_study_placed_at (study, i);

      if (placed->item->kind == LR_ITEM_PERSON)
        {
          face (study, placed);
          read_body (placed);
        }
      measure (placed);
    }

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrPlaced *placed = lr_study_placed_at (study, i);

      if (placed->item->kind != LR_ITEM_PERSON)
        face (study, placed);
      if (*lr_item_carrier (placed->item) != '\0')
        wear (study, placed);
    }

  find_line (study);
}
