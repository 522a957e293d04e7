/* light_levels_private.h - what levels of light are kept as
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"

struct LrLightLevels
{
  gatomicrefcount ref_count;
  LrStudy  *study;
  LrLightLevels *before; /* settled: bounced_lx is from there, walls and map are there; NULL: they are own or not known */
  GArray   *sources;    /* LrLightSource */
  GArray   *probes;     /* LrLightProbe */
  double   *direct_lx;  /* of each source on each probe, in the probes' order */
  double   *bounced_lx; /* on each probe; NULL: not known */
  GArray   *spares;     /* LrLightSource: lamps that are dimmed to nothing, at full */
  double   *alone_lx;   /* of each source and then of each spare on each probe, bounces too, in the probes' order; NULL: not known */
  GArray   *walls;      /* LrWallLight; NULL: not known */
  LrLevelMap *map;      /* NULL: not known */
  GArray   *faces;      /* LrFaceLight */
  GArray   *backs;      /* LrBackLight */
  GArray   *things;     /* LrThingLight */
  GArray   *shadows;    /* LrShadow; NULL: not known */
  GArray   *escapes;    /* LrShadowEscapes; NULL: not known */
  GArray   *ways;       /* LrWayOut; empty: not known, or no door */
};

static inline double
lr_levels_direct_lx (const LrLightLevels *self,
                     guint                probe,
                     guint                source)
{
  return self->direct_lx[probe * self->sources->len + source];
}
