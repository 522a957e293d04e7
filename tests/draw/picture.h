/* picture.h - a viewfinder's picture, and what is where in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <math.h>

#include "fixture.h"
#include "viewfinder.h"

#define WIDTH 470

typedef struct
{
  cairo_surface_t *surface;
  int              width, height;
} Picture;

static inline Picture
picture_draw (const LrPlan            *plan,
              const char              *id,
              const LrViewfinderStyle *style)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrCameraReading *camera = fixture_camera (study, id);
  Picture picture = { .width = (int) style->width };
  LrViewfinderStyle plain = *style; /* what is seen, without what is said of it */
  LrPictureBox whole, delivered;
  cairo_t *cr;

  plain.is_plain = TRUE;
  lr_viewfinder_place (camera, style, &whole, &delivered);
  picture.height = (int) ceil (whole.height - 1e-6);
  picture.surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, picture.width, picture.height);
  cr = cairo_create (picture.surface);
  lr_viewfinder_draw (cr, study, camera, &plain);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (picture.surface);
  return picture;
}

/* Without anything over it */
static inline Picture
draw (const LrPlan *plan,
      const char   *id)
{
  return picture_draw (plan, id, &(LrViewfinderStyle) { .width = WIDTH });
}

static inline guint32
pixel (const Picture *picture,
       double         across,
       double         down)
{
  int x = CLAMP ((int) (across * picture->width), 0, picture->width - 1);
  int y = CLAMP ((int) (down * picture->height), 0, picture->height - 1);
  int stride = cairo_image_surface_get_stride (picture->surface);
  const guint8 *row = cairo_image_surface_get_data (picture->surface) + y * stride;

  return ((const guint32 *) (const void *) row)[x] & 0xffffff;
}

static inline void
free_picture (Picture *picture)
{
  cairo_surface_destroy (picture->surface);
}

static inline int
luma (guint32 color)
{
  return (int) (2 * (color >> 16 & 0xff) + 5 * (color >> 8 & 0xff) + (color & 0xff)) / 8;
}

/* Where a point of the room is in a camera's picture */
static inline LrFramePoint
place (const LrPlan *plan,
       const char   *id,
       LrVec3        at_m)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrFramePoint at;

  g_assert_true (lr_projection_point (&fixture_camera (study, id)->projection, at_m, &at));
  return at;
}

/* The subject of the interview alone before a bare wall, with one camera that is sharp to the wall */
static inline LrPlan *
new_portrait (void)
{
  LrPlan *plan = fixture_interview ();

  fixture_set (&plan, CAMERA_A, "f-number", 22.0);
  fixture_set (&plan, CAMERA_A, "down-pct", 0.40);
  fixture_move (&plan, INES, 7.5, 5.5);
  return plan;
}
