/* frame_matrix.h - where a point is in a frame, by the homogeneous camera matrix, and what reaches into it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * P = K R [I | -C] (Hartley and Zisserman, Multiple View Geometry, 2nd ed., chapter 6).
 */

#pragma once

#include "fixture.h"

#include "intrusions.h"

/* Rows of P without K: right, down and ahead of the lens; then across and down in the frame */
static inline gboolean
see (const LrCameraReading *camera,
     LrVec3                 p,
     LrVec2                *at)
{
  const LrCamera *c = &camera->item->camera;
  LrVec3 eye = camera->projection.eye_m;
  double cp = cos (camera->pan_rad), sp = sin (camera->pan_rad), ct = cos (camera->tilt_rad), st = sin (camera->tilt_rad);
  const double r[3][4] = {
    { sp, -cp, 0.0, -(sp * eye.x - cp * eye.y) },
    { st * cp, st * sp, -ct, -(st * cp * eye.x + st * sp * eye.y - ct * eye.z) },
    { ct * cp, ct * sp, st, -(ct * cp * eye.x + ct * sp * eye.y + st * eye.z) },
  };
  const double x[4] = { p.x, p.y, p.z, 1.0 };
  double out[3] = { 0 }, image_m;

  /* the image lies f (1 + m) behind the lens; 16:9 on a sensor as wide */
  image_m = c->focal_m * (1.0 + camera->magnification);
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 4; j++)
      out[i] += r[i][j] * x[j];
  *at = lr_vec2 (0.5 + image_m / camera->area.width_m * out[0] / out[2],
                 0.5 + image_m / camera->area.height_m * out[1] / out[2]);
  return out[2] > 0.01;
}

static inline const LrIntrusion *
find (const LrStudy *study,
      const char    *camera,
      const char    *item)
{
  for (guint i = 0; i < study->intrusions->len; i++)
    {
      const LrIntrusion *intrusion = lr_study_intrusion (study, i);

      if (g_str_equal (intrusion->camera->item->id, camera) && intrusion->placed != NULL
          && g_str_equal (intrusion->placed->item->id, item))
        return intrusion;
    }

  return NULL;
}

typedef struct
{
  double left, right, top, bottom; /* how far in from each edge */
} Reach;

static inline void
note (Reach                 *reach,
      const LrCameraReading *camera,
      LrVec3                 point_m)
{
  LrVec2 at;

  if (!see (camera, point_m, &at) || at.x < 0.0 || at.x > 1.0 || at.y < 0.0 || at.y > 1.0)
    return;

  reach->left = fmax (reach->left, at.x);
  reach->right = fmax (reach->right, 1.0 - at.x);
  reach->top = fmax (reach->top, at.y);
  reach->bottom = fmax (reach->bottom, 1.0 - at.y);
}
