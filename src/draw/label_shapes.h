/* label_shapes.h - what a label may not cover
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

#include "polygon.h"

/* A disc (n = 0) or a convex polygon; two corners are a line. Device units */
typedef struct
{
  gsize  n;
  LrVec2 corner[LR_OUTLINE_MAX];
  LrVec2 centre;
  double radius;
  LrVec2 low, high; /* box around it */
  int    owner;     /* index of the label whose word this is, or one of these */
} LrShape;

#define LR_SHAPE_FIRM -1      /* never yields */
#define LR_SHAPE_FURNITURE -2 /* stops, dB and furniture names may stand on it */
#define LR_SHAPE_LINE -3      /* crossed only if nothing else is free */

LrShape  lr_shape_disc    (LrVec2 centre, double radius);
LrShape  lr_shape_polygon (const LrVec2 *corners, gsize n);
LrShape  lr_shape_box     (LrVec2 centre, double width, double height, double angle_rad);
/* @polygon: not a disc */
gboolean lr_shape_meets   (const LrShape *polygon, const LrShape *other);
