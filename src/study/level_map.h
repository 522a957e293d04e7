/* level_map.h - how much light there is from place to place over the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_shade.h"

#include <gio/gio.h>

typedef struct LrBounce LrBounce; /* bounce.h */

/* At the height of the subject's eyes, on a net of points: what falls on an upright face turned to where most comes from */
typedef struct
{
  LrVec2  from_m;    /* the first point */
  double  step_m;
  guint   n, m;      /* points to the east, then to the north */
  double  height_m;
  double *lx;        /* n * m; NAN outside the room and where furniture stands */
} LrLevelMap;

/* (transfer full) (nullable): NULL: cancelled */
LrLevelMap *lr_level_map_new  (const LrStudy *study, const LrLightShade *shade, const GArray *sources, const LrBounce *bounce,
                               GCancellable *cancellable);
void        lr_level_map_free (LrLevelMap *map);
/* Between the points; NAN where one of those around is */
double      lr_level_map_lx   (const LrLevelMap *map, LrVec2 at_m);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLevelMap, lr_level_map_free)
