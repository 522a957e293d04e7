/* overlay_sight.c - what each camera sees on the floor, where it is sharp, and the line of action
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor_layers.h"
#include "washes.h"

#include <glib/gi18n-lib.h>

#define WASH_HALVES_AT_M 5.4 /* the wash is half as strong there as at the lens */
#define SHARP_WASH 1.6       /* of the usual wash */
#define LINE_BEHIND_SUBJECT_M 1.55
#define LINE_BEHIND_INTERVIEWER_M 1.0
#define LINE_CLEAR_M 0.15    /* it ends this far before a wall */
#define HEAVY_END_M 0.20
#define ARROW_PX 13.0
#define ARROWHEAD_PX 7.0

static const LrDash camera_dashes[] = { LR_DASH_SOLID, LR_DASH_B, LR_DASH_C, LR_DASH_D };

static void
fill_wedge (const LrFloor         *floor,
            const LrCameraReading *camera,
            double                 alpha)
{
  LrVec2 apex_m = camera->wedge_m[0];
  LrVec2 ahead_m = lr_vec2_along (apex_m, lr_vec2_polar (camera->pan_rad, 1.0), WASH_HALVES_AT_M);

  lr_wash_fill_within (floor, NULL, 0, camera->wedge_m, camera->n_wedge, apex_m, ahead_m,
                       floor->theme->family_fill[LR_FAMILY_SIGHT], alpha, 0.5 * alpha);
}

/* What is sharp lies between two planes square to the axis, as far apart at the frame's edge as in its middle; where they
 * cross the axis is told from the sensor plane. Cut by the wedge */
static void
fill_sharp_zone (const LrFloor         *floor,
                 const LrCameraReading *camera,
                 double                 alpha)
{
  LrVec2 forward = lr_vec2_polar (camera->pan_rad, cos (camera->tilt_rad)), left = lr_vec2_left (lr_vec2_polar (camera->pan_rad, 1.0));
  LrVec2 centre_m = lr_vec3_flat (camera->sensor_m), corners_m[4];
  double depth_m[2] = { camera->sharp_near_m, isfinite (camera->sharp_far_m) ? camera->sharp_far_m : 100.0 };

  if (!(camera->sharp_near_m > 0.0) || isnan (camera->sharp_far_m))
    return;

  for (int i = 0; i < 2; i++)
    {
      LrVec2 middle_m = lr_vec2_along (centre_m, forward, depth_m[i]);
      double half_m = (tan (0.5 * camera->angle_h_rad) + 0.1) * depth_m[i];

      corners_m[i == 0 ? 0 : 3] = lr_vec2_along (middle_m, left, half_m);
      corners_m[i == 0 ? 1 : 2] = lr_vec2_along (middle_m, left, -half_m);
    }
  lr_wash_fill_within (floor, camera->wedge_m, camera->n_wedge, corners_m, G_N_ELEMENTS (corners_m), centre_m, corners_m[0],
                       floor->theme->family_fill[LR_FAMILY_SIGHT], alpha, alpha);
}

static void
stroke_edges (const LrFloor         *floor,
              const LrCameraReading *camera,
              LrDash                 dash)
{
  gboolean is_in_hand = floor->in_hand != NULL && floor->in_hand == camera->placed;

  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SIGHT], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, is_in_hand ? LR_LINE_OUTLINE : LR_LINE_THIN, dash);
  lr_floor_move_to (floor, camera->wedge_m[0]);
  lr_floor_line_to (floor, camera->wedge_m[1]);
  lr_floor_move_to (floor, camera->wedge_m[0]);
  lr_floor_line_to (floor, camera->wedge_m[camera->n_wedge - 1]);
  cairo_stroke (floor->cr);
  lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, camera->wedge_m[0]),
                           lr_floor_device (floor, camera->wedge_m[1]));
  lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, camera->wedge_m[0]),
                           lr_floor_device (floor, camera->wedge_m[camera->n_wedge - 1]));
}

/**
 * lr_overlay_sight_washes:
 * @floor: a drawing
 *
 * Each camera's field on the floor, cut by the walls.
 */
void
lr_overlay_sight_washes (const LrFloor *floor)
{
  double alpha;

  if (!(floor->view->shown & LR_SHOW_SIGHT))
    return;

  alpha = lr_floor_wash (floor, LR_FAMILY_SIGHT);
  for (guint i = 0; i < floor->study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (floor->study->cameras, LrCameraReading, i);

      if (camera->n_wedge < 3 || !lr_floor_has (floor, camera->placed))
        continue;
      fill_wedge (floor, camera, alpha);
      fill_sharp_zone (floor, camera, SHARP_WASH * alpha);
      stroke_edges (floor, camera, camera_dashes[i % G_N_ELEMENTS (camera_dashes)]);
    }
}

/* The point so far along, or before the wall that is in the way */
static LrVec2
before_wall (const LrFloor *floor,
             LrVec2         from_m,
             LrVec2         direction,
             double         length_m)
{
  LrRayHit hit;

  if (floor->room->n_corners >= 3
      && lr_polygon_ray (floor->room->corners_m, floor->room->n_corners, from_m, direction, &hit))
    length_m = MIN (length_m, MAX (hit.distance_m - LINE_CLEAR_M, 0.0));

  return lr_vec2_along (from_m, direction, length_m);
}

/* +1: most cameras stand left of the line from the subject to the interviewer */
static double
camera_side (const LrFloor *floor)
{
  int left = 0;

  for (guint i = 0; i < floor->study->cameras->len; i++)
    left += (int) g_array_index (floor->study->cameras, LrCameraReading, i).side;

  return left < 0 ? -1.0 : 1.0;
}

static void
draw_end (const LrFloor *floor,
          LrVec2         end_m,
          LrVec2         inward,
          LrVec2         to_cameras)
{
  LrVec2 end = lr_floor_device (floor, end_m);
  LrVec2 up = lr_vec2 (to_cameras.x, -to_cameras.y);
  LrVec2 tip = lr_vec2_along (end, up, ARROW_PX);
  cairo_t *cr = floor->cr;

  lr_floor_move_to (floor, lr_vec2_along (end_m, inward, HEAVY_END_M));
  cairo_line_to (cr, end.x, end.y);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THICK, LR_DASH_SOLID);
  cairo_stroke (cr);

  cairo_move_to (cr, end.x, end.y);
  cairo_line_to (cr, tip.x - 3.0 * up.x, tip.y - 3.0 * up.y);
  lr_theme_set_line (cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
  lr_floor_arrowhead (cr, tip, up, ARROWHEAD_PX);
}

static void
label_line (const LrFloor *floor,
            LrVec2         end_m)
{
  LrVec2 end = lr_floor_device (floor, end_m);
  LrOutline spot = { .centre_m = end, .radius_m = 2.0 * floor->px };
  LrLabel label = {
    .rank = LR_LABEL_NOTE,
    .text = _("line of action"),
    .style = { .size = floor->theme->type_size[LR_TYPE_NOTE] },
    .color = floor->theme->ink,
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  lr_labels_add_beside (floor->labels, &label, &spot);
}

/**
 * lr_overlay_sight_line:
 * @floor: a drawing
 *
 * The line of action, drawn as drawings show a cutting plane (ISO 128-3): long dash and dot, heavy ends, arrows the way one
 * looks.
 */
void
lr_overlay_sight_line (const LrFloor *floor)
{
  const LrStudy *study = floor->study;
  const char *ids[3] = { NULL, NULL, NULL };
  LrVec2 along, across, from_m, to_m;
  cairo_t *cr = floor->cr;

  if (!(floor->view->shown & LR_SHOW_SIGHT) || !study->has_line || study->cameras->len == 0)
    return;
  ids[0] = study->subject->item->id;
  ids[1] = study->interviewer->item->id;
  if (!lr_floor_has_between (floor, ids))
    return;

  along = lr_vec2_sub (study->line_to_m, study->line_from_m);
  along = lr_vec2_scale (along, 1.0 / lr_vec2_length (along));
  across = lr_vec2_scale (lr_vec2_left (along), camera_side (floor));
  from_m = before_wall (floor, study->subject->at_m, lr_vec2_scale (along, -1.0), LINE_BEHIND_SUBJECT_M);
  to_m = before_wall (floor, study->interviewer->at_m, along, LINE_BEHIND_INTERVIEWER_M);

  cairo_save (cr);
  lr_theme_set_color (cr, floor->theme->ink, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_LINE_OF_ACTION);
  lr_floor_move_to (floor, from_m);
  lr_floor_line_to (floor, to_m);
  cairo_stroke (cr);
  draw_end (floor, from_m, along, across);
  draw_end (floor, to_m, lr_vec2_scale (along, -1.0), across);
  cairo_restore (cr);

  lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, from_m), lr_floor_device (floor, to_m));
  label_line (floor, to_m);
}
