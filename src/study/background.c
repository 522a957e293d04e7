/* background.c - what stands behind the subject on the lens axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The axis is followed from behind the subject's head: the nearest of wall, floor, ceiling, furniture, panel or other
 * person counts. A thing is upright, with the outline that it has on the floor between its lowest part and its top. Stands
 * and lights are too thin to be a background. Where the axis goes out through a window it is the window that stands there.
 */

#include "study_parts.h"

#include "perspective.h"

#define PANEL_THICKNESS_M 0.04
#define TRUNK_RADIUS_M 0.25

typedef struct
{
  LrVec3 from_m, way; /* the lens, and the axis of length 1 */
  double start_m;     /* what is nearer than this is not behind the subject */
} Axis;

static gboolean
is_background (const LrPlaced *placed,
               const LrPlaced *subject,
               LrOutline      *outline,
               double         *bottom_m)
{
  const LrItem *item = placed->item;

  *outline = placed->footprint;
  *bottom_m = placed->bottom_m;
  if (item->kind == LR_ITEM_FURNITURE)
    return TRUE;
  if (item->kind == LR_ITEM_PERSON)
    {
      *outline = lr_outline_disc (placed->at_m, TRUNK_RADIUS_M);
      return placed != subject;
    }
  if (item->kind != LR_ITEM_PANEL)
    return FALSE;

  *outline = lr_outline_box (placed->at_m, PANEL_THICKNESS_M, item->panel.width_m, placed->facing_rad);
  *bottom_m = item->panel.bottom_m;
  return TRUE;
}

/* Distance along the axis at which it goes into the upright body; HUGE_VAL if it misses */
static double
enter_m (const Axis      *axis,
         const LrOutline *outline,
         double           bottom_m,
         double           top_m)
{
  LrVec2 flat = lr_vec3_flat (axis->way);
  double flat_length = lr_vec2_length (flat);
  double enter, leave;

  if (flat_length < 1e-6 || !lr_outline_ray (outline, lr_vec3_flat (axis->from_m), flat, &enter, &leave))
    return HUGE_VAL;

  enter /= flat_length;
  leave /= flat_length;
  if (fabs (axis->way.z) > 1e-12)
    {
      double at_bottom = (bottom_m - axis->from_m.z) / axis->way.z;
      double at_top = (top_m - axis->from_m.z) / axis->way.z;

      enter = fmax (enter, fmin (at_bottom, at_top));
      leave = fmin (leave, fmax (at_bottom, at_top));
    }
  else if (axis->from_m.z < bottom_m || axis->from_m.z > top_m)
    return HUGE_VAL;

  return enter <= leave && enter >= axis->start_m ? enter : HUGE_VAL;
}

/* The window that lies at this place of the wall, if any */
static const LrPlaced *
window_at (const LrStudy  *study,
           const LrRayHit *hit,
           double          height_m)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);
      const LrItem *item = placed->item;

      if (item->kind == LR_ITEM_WINDOW && item->wall == (int) hit->edge
          && hit->along_m >= item->along_m && hit->along_m <= item->along_m + item->window.width_m
          && height_m >= item->window.sill_m && height_m <= item->window.head_m)
        return placed;
    }

  return NULL;
}

static double
meet_things (const LrStudy   *study,
             const Axis      *axis,
             LrCameraReading *camera)
{
  double nearest_m = HUGE_VAL;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);
      LrOutline outline;
      double bottom_m, at_m;

      if (!is_background (placed, camera->subject, &outline, &bottom_m))
        continue;

      at_m = enter_m (axis, &outline, bottom_m, placed->top_m);
      if (at_m < nearest_m)
        {
          nearest_m = at_m;
          camera->behind = LR_BEHIND_ITEM;
          camera->behind_item = placed;
        }
    }

  return nearest_m;
}

/* Floor and ceiling, then the wall that the axis meets before them */
static double
meet_room (const LrStudy   *study,
           const Axis      *axis,
           LrCameraReading *camera)
{
  const LrRoom *room = study->setup->room;
  LrVec2 flat = lr_vec3_flat (axis->way);
  double flat_length = lr_vec2_length (flat);
  double level_m = axis->way.z < 0.0 ? 0.0 : room->height_m;
  double at_m = fabs (axis->way.z) > 1e-12 ? (level_m - axis->from_m.z) / axis->way.z : HUGE_VAL;
  LrBehind behind = axis->way.z < 0.0 ? LR_BEHIND_FLOOR : LR_BEHIND_CEILING;
  LrRayHit hit = { 0 };
  LrVec2 start_m;

  if (room->n_corners < 3)
    return HUGE_VAL;
  if (!(at_m > axis->start_m))
    at_m = HUGE_VAL;

  start_m = lr_vec2_along (lr_vec3_flat (axis->from_m), flat, axis->start_m);
  if (lr_polygon_ray (room->corners_m, room->n_corners, start_m, flat, &hit)
      && axis->start_m + hit.distance_m / flat_length < at_m)
    {
      at_m = axis->start_m + hit.distance_m / flat_length;
      behind = LR_BEHIND_WALL;
    }

  if (at_m < HUGE_VAL)
    {
      camera->behind = behind;
      camera->behind_wall = behind == LR_BEHIND_WALL ? (int) hit.edge : -1;
      camera->behind_item = behind == LR_BEHIND_WALL
                                ? window_at (study, &hit, axis->from_m.z + at_m * axis->way.z) : NULL;
      if (camera->behind_item != NULL)
        camera->behind = LR_BEHIND_ITEM;
    }
  return at_m;
}

/**
 * lr_study_read_background:
 * @study: a study whose items are placed
 * @camera: a reading with a subject, whose field and focus are known
 *
 * Fills what the axis meets behind the subject, how far behind, how much of it the frame sees and how soft it is.
 */
void
lr_study_read_background (const LrStudy   *study,
                          LrCameraReading *camera)
{
  const LrProjection *projection = &camera->projection;
  const LrPlaced *subject = camera->subject;
  double subject_m = lr_vec3_dot (lr_vec3_sub (subject->eyes_m, projection->eye_m), projection->forward);
  Axis axis = { projection->eye_m, projection->forward, subject_m + subject->body.head_depth_m };
  LrCameraReading room_hit = *camera;
  double room_m, at_m;

  if (!(subject_m > 0.0))
    return;

  at_m = meet_things (study, &axis, camera);
  room_m = meet_room (study, &axis, &room_hit);
  if (room_m < at_m)
    {
      at_m = room_m;
      camera->behind = room_hit.behind;
      camera->behind_item = room_hit.behind_item;
      camera->behind_wall = room_hit.behind_wall;
    }
  if (!(at_m < HUGE_VAL))
    return;

  camera->behind_at_m = lr_vec3_along (axis.from_m, axis.way, at_m);
  camera->behind_m = at_m + camera->focus.image_m;
  camera->separation_m = at_m - subject_m;
  lr_background_extent_m (camera->field_w_m, subject_m, camera->separation_m, &camera->behind_field_w_m);
  lr_background_extent_m (camera->field_h_m, subject_m, camera->separation_m, &camera->behind_field_h_m);
  lr_background_size_ratio (subject_m, camera->separation_m, &camera->size_ratio);
  lr_camera_blur_at_m (camera, camera->behind_m, &camera->blur_m, &camera->blur_share);
}
