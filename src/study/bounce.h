/* bounce.h - light that the room gives back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Takes tenths of a second: for another thread, on a study of its own.
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
  float   *exchange;   /* between them, see radiosity.h */
  guint    n_sources;
  double  *source_lx;  /* on each patch, straight from each source, in the sources' order */
  guint    n_alone;    /* of lr_bounce_solve_alone() */
  double  *alone_lx;   /* on each, once all has bounced, of each source alone; NULL: not asked for */
  double   flux_lm;    /* that entered */
} LrBounce;

/* (transfer full) (nullable): NULL: cancelled, or there is no room */
LrBounce *lr_bounce_solve (const LrStudy *study, const LrLightShade *shade, const GArray *sources, GCancellable *cancellable);
/* What each source gives alone; behind them @spares (element-type LrLightSource), which do not shine. FALSE: cancelled */
gboolean  lr_bounce_solve_alone (LrBounce *bounce, const LrLightShade *shade, const GArray *spares, GCancellable *cancellable);
void      lr_bounce_free  (LrBounce *bounce);
/* What it gives a small face */
double    lr_bounce_lx    (const LrBounce *bounce, const LrLightShade *shade, LrVec3 point_m, LrVec3 normal, const LrPlaced *of);
/* The same of each source alone; returns it of all together */
double    lr_bounce_each_lx (const LrBounce *bounce, const LrLightShade *shade, LrVec3 point_m, LrVec3 normal, const LrPlaced *of, double *each_lx);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrBounce, lr_bounce_free)
