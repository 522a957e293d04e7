/* reframe_aim.c - where the camera looks and where it is sharp
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "reframe_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SAME_PLANE_M 0.0015
#define NOTHING_THERE_M 3.0 /* a point this far off is held when there is nothing behind the subject */

/* From the sensor plane, square to it: that is the plane that is sharp */
static double
depth_m (const LrCameraReading *camera,
         LrVec3                 point_m)
{
  return lr_vec3_dot (lr_vec3_sub (point_m, camera->sensor_m), camera->projection.forward);
}

/* 0 is on what the camera aims at, or on the subject when it aims at nothing */
static double
focus_on_m (const LrStudy         *study,
            const LrCameraReading *camera,
            const LrPlaced        *target)
{
  const LrPlaced *aim = lr_study_find_placed (study, camera->item->camera.aims_at);

  if (target == NULL)
    return camera->behind_m;
  return target == (aim != NULL ? aim : camera->subject) ? 0.0 : depth_m (camera, target->point_m);
}

/* What is seen to be sharp */
static gboolean
is_in_picture (const LrCameraReading *camera,
               LrVec3                 point_m)
{
  LrFramePoint at;

  return lr_projection_point (&camera->projection, point_m, &at) && at.across >= 0.0 && at.across <= 1.0 && at.down >= 0.0
         && at.down <= 1.0;
}

/**
 * lr_reframe_is_focused:
 * @study: a study
 * @camera: one of its cameras
 * @target: (nullable): as of lr_reframe_focus()
 *
 * Returns: whether the plane that is sharp goes through it, to a millimetre
 */
gboolean
lr_reframe_is_focused (const LrStudy         *study,
                       const LrCameraReading *camera,
                       const char            *target)
{
  const LrPlaced *placed = lr_study_find_placed (study, target);
  double wanted_m;

  if (target != NULL && placed == NULL)
    return FALSE;

  wanted_m = target == NULL ? camera->behind_m : depth_m (camera, placed->point_m);
  return fabs (camera->focus_m - wanted_m) < SAME_PLANE_M && (placed == NULL || is_in_picture (camera, placed->point_m));
}

static char *
say_sharp (const LrReframing *self,
           const char        *title)
{
  const LrCameraReading *now = self->now;
  g_autofree char *name = lr_reframing_say_name (self), *at = lr_reframing_say_length (self, now->focus_m);
  g_autofree char *near = lr_reframing_say_length (self, now->sharp_near_m);
  g_autofree char *far = isfinite (now->sharp_far_m) ? lr_reframing_say_length (self, now->sharp_far_m) : NULL;

  if (far == NULL)
    /* Translators: "A is focused on Ines at 3.20 m: sharp from 2.90 m on." */
    return g_strdup_printf (_("%s is focused on %s at %s: sharp from %s on."), name, title, at, near);
  return g_strdup_printf (_("%s is focused on %s at %s: sharp from %s to %s."), name, title, at, near, far);
}

/**
 * lr_reframe_focus:
 * @study: a study
 * @camera: one of its cameras
 * @target: (nullable): id of a person, whose eyes it is, or of a thing, whose middle it is; %NULL: what is behind the subject
 * @units: of the sentence
 *
 * The plane through the target, square to the axis. What the camera aims at is focused on by the setting that follows it.
 *
 * Returns: (transfer full): the change, whose sentence tells what is sharp then
 */
LrReframe *
lr_reframe_focus (const LrStudy         *study,
                  const LrCameraReading *camera,
                  const char            *target,
                  LrUnits                units)
{
  const LrPlaced *placed = lr_study_find_placed (study, target);
  g_autofree char *behind = NULL, *title = NULL, *nearest = NULL;
  double focus_m, nearest_m;
  LrReframing self;

  lr_reframing_start (&self, study, camera, units);
  behind = lr_reframing_say_behind (&self);
  title = placed != NULL ? lr_item_title (placed->item) : g_strdup_printf (_("the %s"), behind);
  focus_m = focus_on_m (study, camera, placed);
  if (!isfinite (focus_m) || focus_m < 0.0 || (target != NULL && placed == NULL))
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("%s is not in front of the camera."), title), NULL);
  if (placed != NULL && !is_in_picture (camera, placed->point_m))
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("%s is not in the picture."), title), NULL);

  lr_reframing_put (&self, "focus-mm", focus_m);
  if (!lr_reframing_try (&self) && self.trial == NULL)
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("%s is too far off to be focused on."), title), NULL);
  if (lr_reframing_is_too_near (&self, &nearest_m))
    {
      nearest = lr_reframing_say_length (&self, nearest_m);
      return lr_reframing_end (&self, FALSE, g_strdup_printf (_("%s is nearer than the lens can be focused, %s."), title, nearest), NULL);
    }
  return lr_reframing_end (&self, TRUE, say_sharp (&self, title), NULL);
}

/* What it aims at moves in the frame with the pointer */
static void
move_aim (LrReframing *self,
          LrVec2       by)
{
  const LrCamera *camera = &self->camera->item->camera;

  lr_reframing_put (self, "across-pct", CLAMP (camera->across + by.x, 0.0, 1.0));
  lr_reframing_put (self, "down-pct", CLAMP (camera->down + by.y, 0.0, 1.0));
}

/* The place in the room under the pointer stays under it */
static void
turn_axis (LrReframing *self,
           LrVec2       from,
           LrVec2       to)
{
  const LrProjection *p = &self->camera->projection;
  double away_m = self->camera->has_subject && self->camera->distance_m > 0.0 ? self->camera->distance_m : NOTHING_THERE_M;
  LrVec3 ray = lr_projection_ray (p, from.x, from.y);
  double pan_rad, tilt_rad;

  if (!lr_projection_aim (p->eye_m, lr_vec3_along (p->eye_m, ray, away_m), to.x, to.y, p->half_width, p->half_height, &pan_rad, &tilt_rad))
    return;
  lr_reframing_put (self, "facing-deg", pan_rad);
  lr_reframing_put (self, "tilt-deg", tilt_rad);
}

/**
 * lr_reframe_turn:
 * @study: a study
 * @camera: one of its cameras
 * @from: a place in the frame, 0..1 across and down
 * @to: where what is seen there shall be
 *
 * A camera that aims at something keeps aiming at it, elsewhere in the frame, as far as its edge; one that aims at nothing
 * turns and tilts.
 *
 * Returns: (transfer full): the change, without a sentence
 */
LrReframe *
lr_reframe_turn (const LrStudy         *study,
                 const LrCameraReading *camera,
                 LrVec2                 from,
                 LrVec2                 to)
{
  const LrPlaced *aim = lr_study_find_placed (study, camera->item->camera.aims_at);
  LrReframing self;

  lr_reframing_start (&self, study, camera, LR_UNITS_METRIC);
  if (aim != NULL && aim != camera->placed)
    move_aim (&self, lr_vec2_sub (to, from));
  else
    turn_axis (&self, from, to);
  return lr_reframing_end (&self, TRUE, NULL, NULL);
}
