/* camera_readings.c - what each camera sees of its subject
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tripod's centre is under the middle of the sensor plane, for that is where the tape is held. The lens lies ahead of
 * it by the image distance v, along the axis, at the lens height. The distance of the subject is the straight line from
 * the sensor plane to the eyes. What is sharp is a plane square to the axis, so a lens left on "the eyes" is focused at
 * their depth along it: eyes seven degrees off the axis are 17 mm nearer in depth than by tape at 2.3 m.
 *
 * Angles in plan: the look and the line of action are measured at the subject's eyes; side and margin of the line to the
 * tripod's centre, the look to the lens.
 */

#include "study_parts.h"

#include "perspective.h"

#include <string.h>

/* The lens moves with the pan, the pan depends on the lens: each round leaves v / distance of the error, a
 * fortieth, so four leave microradians; the first only turns the camera to what it aims at */
#define AIM_ROUNDS 4

static double
width_extent_m (const LrCameraReading *reading)
{
  return reading->item->camera.squeeze * reading->area.width_m;
}

static LrVec3
axis (const LrCameraReading *reading)
{
  LrVec2 pan = lr_vec2_polar (reading->pan_rad, cos (reading->tilt_rad));

  return lr_vec2_raise (pan, sin (reading->tilt_rad));
}

/* From the sensor plane, square to it; what is not before the camera is as far as it is */
static double
depth_m (const LrCameraReading *reading,
         LrVec3                 point_m)
{
  LrVec3 way = lr_vec3_sub (point_m, reading->sensor_m);
  double along_m = lr_vec3_dot (way, axis (reading));

  return along_m > 0.0 ? along_m : lr_vec3_length (way);
}

/* Without anything to focus on the lens stands at infinity */
static void
focus_lens (LrCameraReading *reading,
            const LrPlaced  *target)
{
  const LrCamera *camera = &reading->item->camera;
  const LrPlaced *on = target != NULL ? target : reading->subject;

  reading->focus_m = camera->focus_m;
  if (!(camera->focus_m > 0.0) && on != NULL)
    reading->focus_m = depth_m (reading, on->point_m);

  reading->focus = (LrFocus) { HUGE_VAL, reading->focal_m, 0.0 };
  if (!lr_focus_at (reading->focal_m, reading->focus_m, &reading->focus))
    reading->focus_m = reading->focus_m > 0.0 ? reading->focus_m : HUGE_VAL;
  reading->magnification = reading->focus.magnification;
}

/* Where the camera looks, with the lens ahead of the tripod */
static void
point_camera (LrCameraReading *reading,
              const LrPlaced  *target)
{
  const LrCamera *camera = &reading->item->camera;
  LrVec3 under_m = lr_vec2_raise (reading->placed->at_m, camera->lens_height_m);
  LrVec3 lens_m = under_m;
  double half_width = 0.0, half_height = 0.0;

  reading->pan_rad = reading->placed->facing_rad;
  reading->tilt_rad = target != NULL ? 0.0 : camera->tilt_rad;

  for (int i = 0; i < AIM_ROUNDS; i++)
    {
      double v_m;

      reading->sensor_m = under_m;
      reading->sensor_m.z -= reading->focus.image_m * sin (reading->tilt_rad);
      focus_lens (reading, target);

      v_m = reading->focus.image_m;
      half_width = 0.5 * width_extent_m (reading) / v_m;
      half_height = 0.5 * reading->area.height_m / v_m;
      lens_m = lr_vec3_along (under_m, axis (reading), v_m);
      lens_m.z = camera->lens_height_m;
      if (target != NULL
          && !lr_projection_aim (lens_m, target->point_m, camera->across, camera->down, half_width, half_height,
                                 &reading->pan_rad, &reading->tilt_rad))
        break;
    }

  lr_projection_look (lens_m, reading->pan_rad, reading->tilt_rad, half_width, half_height, &reading->projection);
  reading->angle_h_rad = 2.0 * atan (half_width);
  reading->angle_v_rad = 2.0 * atan (half_height);
}

/* Height at which the ray up the frame by this tangent meets the upright plane at the distance */
static double
height_at_m (const LrCameraReading *reading,
             double                 tangent,
             double                 distance_m)
{
  double up_rad = reading->tilt_rad + atan (tangent);

  return fabs (up_rad) < 0.5 * LR_PI - 1e-6 ? reading->projection.eye_m.z + distance_m * tan (up_rad)
                                            : copysign (HUGE_VAL, up_rad);
}

/* The shares of the frame are those of the picture: under a tilt the upright plane is not drawn to scale */
static void
read_shares (LrCameraReading *reading)
{
  LrVec3 crown_m = reading->subject->eyes_m;
  LrFramePoint crown;

  crown_m.z = reading->subject->body.crown_m;
  if (reading->framing.shot == LR_N_SHOTS || !lr_projection_point (&reading->projection, crown_m, &crown))
    return;

  reading->framing.headroom = crown.down;
  reading->framing.eyes_down = reading->eyes_down;
}

/* No upright plane bounds a frame whose edge looks past straight up or down: then the one square to the axis at the eyes
 * names the shot, as if it were seen level */
static void
name_steep_shot (LrCameraReading *reading)
{
  LrFraming framing;
  double top_m = reading->subject->eyes_m.z + reading->eyes_down * reading->field_h_m;

  if (lr_framing (&reading->subject->body, top_m, top_m - reading->field_h_m, &framing))
    reading->framing.shot = framing.shot;
}

/* The camera does not roll, so the frame's upper and lower edges meet that plane in level lines */
static void
read_framing (LrCameraReading *reading)
{
  LrVec2 pan = lr_vec2_polar (reading->pan_rad, 1.0);
  LrVec2 way = lr_vec2_sub (lr_vec3_flat (reading->subject->eyes_m), lr_vec3_flat (reading->projection.eye_m));
  double distance_m = lr_vec2_dot (way, pan);
  double top_m = height_at_m (reading, reading->projection.half_height, distance_m);
  double bottom_m = height_at_m (reading, -reading->projection.half_height, distance_m);

  reading->framing = (LrFraming) { top_m, bottom_m, NAN, NAN, LR_N_SHOTS };
  if (distance_m > 0.0 && isfinite (top_m - bottom_m))
    lr_framing (&reading->subject->body, top_m, bottom_m, &reading->framing);
  else if (distance_m > 0.0)
    name_steep_shot (reading);
  read_shares (reading);
}

static void
read_field (LrCameraReading *reading)
{
  LrFramePoint eyes;

  reading->field_w_m = reading->field_h_m = reading->eyes_across = reading->eyes_down = NAN;
  if (!lr_projection_point (&reading->projection, reading->subject->eyes_m, &eyes))
    return;

  reading->eyes_across = eyes.across;
  reading->eyes_down = eyes.down;
  reading->field_w_m = 2.0 * reading->projection.half_width * eyes.depth_m;
  reading->field_h_m = 2.0 * reading->projection.half_height * eyes.depth_m;
  reading->recorded_field_w_m = reading->field_w_m / reading->width_share;
  reading->recorded_field_h_m = reading->field_h_m * reading->recorded.height_m / reading->area.height_m;
}

static void
read_heights (LrCameraReading *reading)
{
  const LrPlaced *subject = reading->subject;
  LrVec3 middle_m = lr_vec2_raise (subject->at_m, subject->body.eyes_m);
  double to_head_m = lr_vec3_length (lr_vec3_sub (middle_m, reading->projection.eye_m));

  reading->lens_up_rad = lr_elevation_rad (subject->eyes_m, reading->projection.eye_m);
  reading->lens_above_m = reading->projection.eye_m.z - subject->eyes_m.z;
  reading->face_ratio = NAN;
  lr_face_depth_ratio (to_head_m, 0.5 * subject->body.head_depth_m, &reading->face_ratio);
}

/* The interviewer's own camera is judged against the same line, from the same end */
static void
read_look (const LrStudy   *study,
           LrCameraReading *reading)
{
  const LrPlaced *subject = reading->subject;
  const LrPlaced *partner = lr_study_find_partner (study, subject);
  LrVec2 eyes_m = lr_vec3_flat (subject->eyes_m);
  LrVec2 lens_m = lr_vec3_flat (reading->projection.eye_m);
  LrVec2 partner_m;

  if (partner == NULL)
    return;

  partner_m = lr_vec3_flat (partner->eyes_m);
  if (!lr_gaze_rad (eyes_m, partner_m, lens_m, &reading->gaze_rad))
    return;

  reading->is_looking = TRUE;
  reading->gaze_up_rad = lr_elevation_rad (subject->eyes_m, partner->eyes_m) - reading->lens_up_rad;
  lr_line_margin_rad (eyes_m, partner_m, reading->placed->at_m, &reading->line_margin_rad);
  lr_line_distance_m (eyes_m, partner_m, reading->placed->at_m, &reading->line_distance_m);

  reading->is_on_study_line = (subject == study->subject && partner == study->interviewer)
                              || (subject == study->interviewer && partner == study->subject);
  reading->side = reading->is_on_study_line
                      ? lr_line_side (study->line_from_m, study->line_to_m, reading->placed->at_m)
                      : lr_line_side (eyes_m, partner_m, reading->placed->at_m);
}

/* Directions of the frame's left and right edges at the height of the axis, cut by the walls */
static void
read_wedge (const LrStudy   *study,
            LrCameraReading *reading)
{
  const LrRoom *room = study->setup->room;
  const LrProjection *p = &reading->projection;
  LrVec2 forward = lr_vec3_flat (p->forward);
  LrVec2 right = lr_vec3_flat (p->right);
  gsize max = 2 * room->n_corners + 4;

  if (room->n_corners < 3 || study->is_trial)
    return;

  reading->wedge_m = g_new (LrVec2, max);
  reading->n_wedge = lr_wedge_in_room (room->corners_m, room->n_corners, lr_vec3_flat (p->eye_m),
                                       lr_vec2_along (forward, right, p->half_width),
                                       lr_vec2_along (forward, right, -p->half_width),
                                       reading->wedge_m, max);
}

static const LrPlaced *
subject_of (const LrStudy  *study,
            const LrPlaced *target)
{
  return target != NULL && target->item->kind == LR_ITEM_PERSON ? target : study->subject;
}

static void
read_camera (LrStudy         *study,
             LrPlaced        *placed,
             LrCameraReading *reading)
{
  const LrCamera *camera = &placed->item->camera;
  const LrPlaced *target = lr_study_find_placed (study, camera->aims_at);

  *reading = (LrCameraReading) {
    .item = placed->item, .placed = placed, .subject = subject_of (study, target),
    .is_main = study->cameras->len == 0, .behind_wall = -1,
    .distance_m = NAN, .eyes_depth_m = NAN, .field_w_m = NAN, .field_h_m = NAN, .recorded_field_w_m = NAN, .recorded_field_h_m = NAN,
    .eyes_across = NAN, .eyes_down = NAN,
    .framing = { NAN, NAN, NAN, NAN, LR_N_SHOTS }, .gaze_rad = NAN, .gaze_up_rad = NAN, .lens_up_rad = NAN,
    .lens_above_m = NAN, .line_margin_rad = NAN, .line_distance_m = NAN, .face_ratio = NAN,
    .joint = { LR_N_JOINTS, NAN }, .eyes_rule = NAN, .look_across = NAN, .look_room = NAN,
    .behind_at_m = { NAN, NAN, NAN }, .behind_m = NAN, .separation_m = NAN, .behind_field_w_m = NAN,
    .behind_field_h_m = NAN, .size_ratio = NAN, .blur_m = NAN, .blur_share = NAN,
  };
  lr_study_read_glass (study, reading);
  point_camera (reading, target == placed ? NULL : target);
  placed->facing_rad = reading->pan_rad;
  placed->point_m = reading->projection.eye_m;
  read_wedge (study, reading);

  reading->has_subject = reading->subject != NULL;
  if (reading->has_subject)
    {
      reading->distance_m = lr_vec3_length (lr_vec3_sub (reading->subject->eyes_m, reading->sensor_m));
      reading->eyes_depth_m = depth_m (reading, reading->subject->eyes_m);
    }
  lr_study_read_sharpness (study, reading);
  if (!reading->has_subject)
    return;

  read_field (reading);
  read_framing (reading);
  read_heights (reading);
  read_look (study, reading);
  lr_study_read_framing (study, reading);
  lr_study_read_background (study, reading);
}

/**
 * lr_study_read_cameras:
 * @study: a study whose items are placed
 *
 * Fills one reading for each camera, the main one first: the first in the set-up.
 */
void
lr_study_read_cameras (LrStudy *study)
{
  guint n = 0;

  for (guint i = 0; i < study->placed->len; i++)
    n += lr_study_placed_at (study, i)->item->kind == LR_ITEM_CAMERA;

  /* Pairs point into the array: it must not move */
  study->cameras = g_array_sized_new (FALSE, FALSE, sizeof (LrCameraReading), n + 1);
  for (guint i = 0; i < study->placed->len; i++)
    {
      LrPlaced *placed = lr_study_placed_at (study, i);
      LrCameraReading reading;

      if (placed->item->kind != LR_ITEM_CAMERA)
        continue;

      read_camera (study, placed, &reading);
      g_array_append_val (study->cameras, reading);
    }
}
