/* viewfinder.h - what a camera sees
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"
#include "remarks.h"
#include "theme.h"

/* What a user may show or hide in a picture */
typedef enum
{
  LR_FRAME_THIRDS     = 1 << 0,
  LR_FRAME_SAFE_AREAS = 1 << 1,
  LR_FRAME_RECORDED   = 1 << 2, /* what is recorded round the delivered frame */
  LR_FRAME_ALL_LINES  = 7,
} LrFrameLines;

typedef struct
{
  double   width;            /* device units; the height follows from the camera's aspect */
  gboolean has_thirds, has_safe_area, has_eye_pointers; /* of the delivered frame */
  gboolean shows_recorded;   /* the frame that is recorded, dimmed outside the delivered one */
  double   unit;             /* a pixel of the screen's figures, for what is drawn over the picture; 0: by the width */
  gboolean is_plain;         /* nothing is outlined */
  gboolean has_minds;        /* what may be meant to stand in the picture is outlined like what may not */
  const LrLightLevels *levels; /* (nullable): of light in the plan: it is as bright as the camera takes it */
  const LrRemark *remark;    /* pointed at: what it speaks of is outlined; (nullable) */
} LrViewfinderStyle;

typedef struct
{
  double x, y, width, height; /* device units */
} LrPictureBox;

/* Of a picture of the delivered frame */
double lr_viewfinder_height (const LrCameraReading *camera, double width);
void   lr_viewfinder_place  (const LrCameraReading *camera, const LrViewfinderStyle *style, LrPictureBox *picture,
                             LrPictureBox *delivered);
/* Draws the picture with its upper left corner at 0, 0 */
void   lr_viewfinder_draw   (cairo_t *cr, const LrStudy *study, const LrCameraReading *camera,
                             const LrViewfinderStyle *style);
/* The line of figures under it: "eyes 31 % down   headroom 19 %   gaze 18° off the lens   sharp 2.00 to 2.30 m"; (transfer full) */
char  *lr_viewfinder_figures (const LrCameraReading *camera, LrUnits units);
