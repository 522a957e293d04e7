/* placing.c - a sensible place for a thing that comes into the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Angles are taken at the subject from the way to the interviewer, the look; > 0 on the camera's side of it. The figures are
 * common practice, no source: key on the far side of the interviewer from the camera, about 45 degrees off the look; fill
 * opposite; back light high and behind; interviewer close beside the main lens; second camera a good 30 degrees round.
 */

#include "config.h"

#include "placing_private.h"

#include "intrusions.h"

#include <glib/gi18n-lib.h>

#define MARK_M 0.45 /* apart, so that one is not taken for the other on the sheet */
#define SEEN_BOOM_M 2.3        /* of a boom's tip while a place for its stand is looked for; common practice, no source */
#define FAR_WALL_M 2.0         /* subject to the wall behind */
#define FAR_WALL_SHARE 0.35    /* of the room's depth, in a short room */
#define CAMERA_OFF_LOOK_RAD (18.0 * LR_DEG)
#define CUT_SPARE_RAD (2.0 * LR_DEG)
#define INTERVIEWER_M 1.75
#define BACKDROP_DEPTH_M 0.7   /* its feet */
#define RING_M 0.2             /* step of the search for a free place */
#define MAX_RINGS 25
#define OVERLAP_M 0.001        /* places are rounded to it */

/* Where a thing stands round the subject */
typedef struct
{
  double off_look_rad;
  double distance_m;
} Station;

/* The main camera close to the look, the second a cut away from it, others further back for a wide view */
static const Station camera_stations[] = {
  { CAMERA_OFF_LOOK_RAD, 2.20 },
  {       53.0 * LR_DEG, 2.40 },
  {       36.0 * LR_DEG, 3.40 },
};

static const Station light_stations[] = {
  [LR_JOB_KEY]   = {  -43.0 * LR_DEG, 1.55 },
  [LR_JOB_FILL]  = {   50.0 * LR_DEG, 1.90 },
  [LR_JOB_BACK]  = {  150.0 * LR_DEG, 2.00 },
  [LR_JOB_WALL]  = { -100.0 * LR_DEG, 2.40 },
  [LR_JOB_OTHER] = {   80.0 * LR_DEG, 2.20 },
};

static const Station panel_stations[] = {
  [LR_PANEL_REFLECTOR] = { 110.0 * LR_DEG, 1.15 },
  [LR_PANEL_FLAG]      = { -70.0 * LR_DEG, 1.60 },
  [LR_PANEL_BACKDROP]  = { 180.0 * LR_DEG, 1.80 },
};

static const Station boom_station = { 95.0 * LR_DEG, 1.70 };

static LrVec2
polygon_middle_m (const LrRoom *room)
{
  return lr_polygon_centroid_m (room->corners_m, room->n_corners);
}

/* Radius of the floor that a thing on a stand, or a person, takes at the most */
static double
item_radius_m (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      return 0.45;
    case LR_ITEM_CAMERA:
      return item->camera.stand_radius_m;
    case LR_ITEM_LIGHT:
      return fmax (item->light.stand_radius_m, 0.5 * item->light.width_m);
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&item->microphone) ? item->microphone.stand_radius_m : 0.0;
    case LR_ITEM_PANEL:
      return fmax (item->panel.stand_radius_m, 0.5 * item->panel.width_m);
    case LR_ITEM_FURNITURE:
    case LR_ITEM_LEAD:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return 0.0;
    }
}

/* What of the floor a thing keeps for itself: a door its swing or the way to it */
static gboolean
placed_outline (const LrStudy  *study,
                const LrPlaced *placed,
                LrOutline      *outline)
{
  if (placed->item->kind == LR_ITEM_DOOR)
    return lr_study_door_floor (study, placed, outline);

  *outline = placed->footprint;
  return placed->has_footprint;
}

/**
 * lr_placing_is_free:
 * @study: a study
 * @outline: on the floor
 *
 * Returns: whether nothing stands there, and it is inside the room
 */
gboolean
lr_placing_is_free (const LrStudy *study,
                    LrOutline      outline)
{
  const LrRoom *room = study->setup->room;

  if (lr_outline_outside_m (&outline, room->corners_m, room->n_corners) > OVERLAP_M)
    return FALSE;

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrOutline other;

      if (placed_outline (study, &g_array_index (study->placed, LrPlaced, i), &other)
          && lr_outline_overlap_m (&outline, &other, NULL) > OVERLAP_M)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_mark (const LrItem *item)
{
  return item->kind == LR_ITEM_NOISE || item->kind == LR_ITEM_HOUSE_LIGHT;
}

/**
 * lr_placing_covers_mark:
 * @study: a study
 * @item: what is to be placed
 * @at_m: where [m]
 *
 * Returns: whether it is a noise or a house light, which take no floor, and would lie on another on the sheet
 */
gboolean
lr_placing_covers_mark (const LrStudy *study,
                        const LrItem  *item,
                        LrVec2         at_m)
{
  for (guint i = 0; is_mark (item) && i < study->placed->len; i++)
    {
      const LrItem *other = g_array_index (study->placed, LrPlaced, i).item;

      if (is_mark (other) && lr_vec2_distance (other->at_m, at_m) < MARK_M)
        return TRUE;
    }

  return FALSE;
}

static double
towards_rad (LrVec2 from_m,
             LrVec2 to_m)
{
  return lr_vec2_angle_rad (lr_vec2_sub (to_m, from_m));
}

/* Things on the floor face the subject; furniture, and everything while there is no subject, along x */
static double
usual_facing_rad (const LrStudy *study,
                  const LrItem  *item,
                  LrVec2         at_m)
{
  return study->subject != NULL && item->kind != LR_ITEM_FURNITURE ? towards_rad (at_m, study->subject->at_m) : 0.0;
}

/* The floor that the item would take there */
static LrOutline
item_outline (const LrStudy *study,
              const LrItem  *item,
              LrVec2         at_m)
{
  double facing_rad = usual_facing_rad (study, item, at_m);

  if (item->kind == LR_ITEM_FURNITURE)
    return lr_outline_box (at_m, item->furniture.length_m, item->furniture.width_m, facing_rad);
  if (item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_BACKDROP)
    return lr_outline_box (at_m, BACKDROP_DEPTH_M, item->panel.width_m, facing_rad);

  return lr_outline_disc (at_m, item_radius_m (item));
}

static const LrPlaced *
first_camera (const LrStudy *study)
{
  return study->cameras->len > 0 ? g_array_index (study->cameras, LrCameraReading, 0).placed : NULL;
}

/* Whether a second camera there would be a cut away from the first, and on its side of the line of action */
static gboolean
is_cut_apart (const LrStudy *study,
              LrVec2         at_m)
{
  LrVec2 subject_m = study->subject->at_m, first_m = first_camera (study)->at_m;
  double angle_rad;

  if (study->has_line && lr_line_side (study->line_from_m, study->line_to_m, at_m)
                           != lr_line_side (study->line_from_m, study->line_to_m, first_m))
    return FALSE;

  return lr_camera_angle_rad (subject_m, first_m, at_m, &angle_rad)
         && angle_rad >= study->plan->limits.value[LR_LIMIT_CUT_ANGLE] + CUT_SPARE_RAD;
}

/* Whether equipment would stand in a picture there; a boom reaches over the subject, and is raised later */
static gboolean
is_seen (const LrStudy *study,
         const LrItem  *item,
         LrVec2         at_m)
{
  LrItem *there = lr_item_copy (item);
  gboolean is_found;

  there->at_m = at_m;
  there->facing_rad = usual_facing_rad (study, item, at_m);
  if (item->kind == LR_ITEM_MICROPHONE && study->subject != NULL)
    {
      there->microphone.tip_x_m = study->subject->at_m.x;
      there->microphone.tip_y_m = study->subject->at_m.y;
      there->microphone.tip_height_m = SEEN_BOOM_M;
    }
  is_found = lr_study_would_intrude (study, there, 0.0);
  lr_item_unref (there);
  return is_found;
}

static gboolean
is_equipment (const LrItem *item)
{
  return item->kind == LR_ITEM_LIGHT || item->kind == LR_ITEM_CAMERA || item->kind == LR_ITEM_MICROPHONE
         || item->kind == LR_ITEM_PANEL;
}

/* The free place nearest to @wanted_m, searched in rings; equipment out of every picture */
static gboolean
find_near (const LrStudy *study,
           const LrItem  *item,
           LrVec2         wanted_m,
           gboolean       must_cut,
           gboolean       must_hide,
           LrVec2        *place_m)
{
  for (int ring = 0; ring <= MAX_RINGS; ring++)
    {
      int n = ring == 0 ? 1 : 6 * ring;

      for (int i = 0; i < n; i++)
        {
          LrVec2 at_m = lr_vec2_add (wanted_m, lr_vec2_polar (2.0 * LR_PI * i / n, ring * RING_M));

          if (!lr_placing_is_free (study, item_outline (study, item, at_m)) || lr_placing_covers_mark (study, item, at_m) || (must_cut && !is_cut_apart (study, at_m))
              || (must_hide && is_seen (study, item, at_m)))
            continue;

          *place_m = at_m;
          return TRUE;
        }
    }
  return FALSE;
}

/* The free place nearest to @wanted_m; @wanted_m itself when the room is full. A second camera would rather be farther off than
 * too near to the first. */
static LrVec2
nearest_free_m (const LrStudy *study,
                const LrItem  *item,
                LrVec2         wanted_m)
{
  gboolean may_cut = item->kind == LR_ITEM_CAMERA && study->subject != NULL && study->cameras->len > 0;
  LrVec2 place_m = wanted_m;

  for (int pass = 0; pass < 2; pass++)
    {
      gboolean must_hide = pass == 0 && is_equipment (item);

      if ((may_cut && find_near (study, item, wanted_m, TRUE, must_hide, &place_m))
          || find_near (study, item, wanted_m, FALSE, must_hide, &place_m))
        break;
    }

  return place_m;
}

/* Way in which the subject looks */
static double
look_rad (const LrStudy *study)
{
  if (study->interviewer != NULL)
    return towards_rad (study->subject->at_m, study->interviewer->at_m);

  return study->subject->facing_rad;
}

/* 1 when the main camera stands to the left of the look, -1 to the right; without a camera, towards the room's middle */
static double
camera_side (const LrStudy *study)
{
  const LrPlaced *camera = first_camera (study);
  LrVec2 at_m = camera != NULL ? camera->at_m : polygon_middle_m (study->setup->room);
  LrVec2 look = lr_vec2_polar (look_rad (study), 1.0);

  return lr_vec2_cross (look, lr_vec2_sub (at_m, study->subject->at_m)) >= 0.0 ? 1.0 : -1.0;
}

static LrVec2
station_m (const LrStudy *study,
           Station        station)
{
  double angle_rad = look_rad (study) + camera_side (study) * station.off_look_rad;

  return lr_vec2_add (study->subject->at_m, lr_vec2_polar (angle_rad, station.distance_m));
}

/* The subject sits before the wall with the deepest room in front of it, and faces into the room */
static void
place_subject (const LrStudy *study,
               LrVec2        *at_m,
               double        *facing_rad)
{
  const LrRoom *room = study->setup->room;
  double deepest_m = 0.0;

  *at_m = polygon_middle_m (room);
  *facing_rad = 0.0;
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 from_m, along, middle_m, inward;
      double length_m;
      LrRayHit hit;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m) || length_m < 1.5)
        continue;

      inward = lr_vec2_left (along);
      middle_m = lr_vec2_along (lr_vec2_along (from_m, along, 0.5 * length_m), inward, 0.01);
      if (!lr_polygon_ray (room->corners_m, room->n_corners, middle_m, inward, &hit) || hit.distance_m <= deepest_m + 0.01)
        continue;

      deepest_m = hit.distance_m;
      *at_m = lr_vec2_along (middle_m, inward, fmin (FAR_WALL_M, FAR_WALL_SHARE * deepest_m));
      *facing_rad = lr_vec2_angle_rad (inward);
    }
}

static LrVec2
interviewer_place_m (const LrStudy *study)
{
  const LrPlaced *camera = first_camera (study);
  double angle_rad = look_rad (study);

  if (camera != NULL)
    angle_rad = towards_rad (study->subject->at_m, camera->at_m) - CAMERA_OFF_LOOK_RAD;
  return lr_vec2_add (study->subject->at_m, lr_vec2_polar (angle_rad, INTERVIEWER_M));
}

static LrVec2
camera_place_m (const LrStudy *study)
{
  Station station = camera_stations[MIN (study->cameras->len, G_N_ELEMENTS (camera_stations) - 1)];

  if (study->interviewer == NULL && study->cameras->len == 0)
    station.off_look_rad = 0.0;
  return station_m (study, station);
}

static LrVec2
wanted_place_m (const LrStudy *study,
                const LrItem  *item)
{
  if (study->subject == NULL)
    return polygon_middle_m (study->setup->room);

  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      return interviewer_place_m (study);
    case LR_ITEM_CAMERA:
      return camera_place_m (study);
    case LR_ITEM_LIGHT:
      return station_m (study, light_stations[CLAMP (item->light.job, LR_JOB_KEY, LR_JOB_OTHER)]);
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&item->microphone) ? station_m (study, boom_station) : study->subject->at_m;
    case LR_ITEM_PANEL:
      return station_m (study, panel_stations[CLAMP (item->panel.form, LR_PANEL_REFLECTOR, LR_PANEL_BACKDROP)]);
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
      return polygon_middle_m (study->setup->room);
    }
}

/**
 * lr_placing_find:
 * @study: of the plan that the item comes into
 * @item: what is to be placed
 * @at_m: (out): where it stands [m]; on a wall for what is on walls
 * @facing_rad: (out): its facing [rad]
 *
 * Looks for a free place near where its like usually stands. In a room that is full the place may not be free.
 *
 * Returns: %FALSE, with nothing written, when no room is drawn yet
 */
gboolean
lr_placing_find (const LrStudy *study,
                 const LrItem  *item,
                 LrVec2        *at_m,
                 double        *facing_rad)
{
  gboolean is_on_wall = lr_item_kind_info (item->kind)->place == LR_PLACE_WALL || lr_placing_is_at_wall (item);

  if (study->setup->room->n_corners < 3)
    return FALSE;

  if (is_on_wall && lr_placing_on_wall (study, item, at_m, facing_rad))
    return TRUE;

  if (study->subject == NULL && item->kind == LR_ITEM_PERSON)
    {
      place_subject (study, at_m, facing_rad);
      *at_m = nearest_free_m (study, item, *at_m);
      return TRUE;
    }

  *at_m = nearest_free_m (study, item, wanted_place_m (study, item));
  *facing_rad = usual_facing_rad (study, item, *at_m);
  return TRUE;
}
