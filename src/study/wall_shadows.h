/* wall_shadows.h - shadows that people and equipment throw on the walls that cameras see
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_sources.h"
#include "wall_light.h"

/* Of one thing, by one lamp, in the picture of one camera */
typedef struct
{
  const LrPlaced *source, *thing, *camera;
  int     wall;
  LrVec3  at_m;         /* where it is so deep, of what the camera sees */
  double  depth_stops;  /* over the least share of the picture that counts: the light without this shadow over the light with it */
  double  edge_m;       /* how wide its half-shadow is there */
  double  aside_m;      /* on the wall, to the right of where the camera sees the middle of its subject's head; NAN: no subject */
  double  share;        /* of the picture, that is in it by more than the plan's limit */
} LrShadow;

/* What shadows are looked for by */
typedef struct
{
  const LrStudy      *study;
  const GArray       *sources;  /* LrLightSource */
  const LrLightShade *shade;    /* what is in the way of light, and of the lens */
  const LrLightShade *fixed;    /* the same without people and equipment */
  GArray             *walls;    /* LrWallLight, lit past what is fixed alone; their room's light counts */
  guint               most_points; /* on a wall */
  const char         *about;    /* (nullable): only shadows that this thing throws or that its light throws */
} LrShadowTask;

/* (transfer full) (element-type LrShadow) (nullable): NULL: cancelled. Without @about it puts the shadows into the walls' light, too */
GArray  *lr_wall_shadows        (const LrShadowTask *task, GCancellable *cancellable);
/* Whether it is deep enough to be told */
gboolean lr_shadow_is_seen      (const LrShadow *shadow, double limit_stops);
