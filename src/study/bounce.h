/* bounce.h - light that the room gives back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Takes tens of milliseconds: for another thread, on a study of its own.
 */

#pragma once

#include "light_probes.h"
#include "light_sources.h"
#include "radiosity.h"
#include "wall_light.h"

#include <gio/gio.h>

/* Which patches a wall was cut into: n along it from its first corner, m up; -1: furniture covers it. n 0: it has no length */
typedef struct
{
  guint n, m;
  int  *patch;
} LrWallPatches;

typedef struct LrBounce
{
  GArray  *patches;    /* LrPatch */
  GArray  *walls;      /* LrWallPatches, for each of the room */
  double  *direct_lx;  /* on each patch, straight */
  double  *lux;        /* on each, once all has bounced */
  double   flux_lm;    /* that entered */
} LrBounce;

/* (transfer full) (nullable): NULL: cancelled, or there is no room */
LrBounce *lr_bounce_solve (const LrStudy *study, const LrLightShade *shade, const GArray *sources, GCancellable *cancellable);
void      lr_bounce_free  (LrBounce *bounce);
/* What it gives a small face */
double    lr_bounce_lx    (const LrBounce *bounce, const LrLightShade *shade, LrVec3 point_m, LrVec3 normal, const LrPlaced *of);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrBounce, lr_bounce_free)
