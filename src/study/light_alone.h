/* light_alone.h - what each source gives alone, with what the room gives back of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All of them together are the levels: light adds up, and what a lamp gives goes with its dimming, bounces too.
 */

#pragma once

#include "light_levels.h"

typedef struct
{
  const LrPlaced *placed;
  const LrEmitter *emitter;
  gboolean is_out;          /* a lamp that is dimmed to nothing: what it would give at full, and no part of the levels */
} LrAloneSource;

/* 0: the levels are not whole */
guint         lr_light_alone_n        (const LrLightLevels *levels);
LrAloneSource lr_light_alone_get      (const LrLightLevels *levels, guint index);
/* On a point of a person [lx]; NAN: they are not there */
double        lr_light_alone_face_lx  (const LrLightLevels *levels, guint index, const char *person, LrFacePoint point);
/* Of the walls that a camera sees, in the mean: on them [lx], and what they give back of it, as the light on a white wall; FALSE: none is seen */
gboolean      lr_light_alone_walls_lx (const LrLightLevels *levels, guint index, const char *camera, double *lux, double *given_lx);
/* (nullable): where a point of a person is, which way it faces, of whom it is a part */
const LrLightProbe *lr_light_levels_probe (const LrLightLevels *levels, const char *person, LrFacePoint point);
