/* light_sources.h - everything that gives light in a study
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light.h"
#include "light_shade.h"

#define LR_OVERCAST_K 6500.0 /* white of a sky under a closed cover of cloud */
#define LR_CLEAR_SKY_K 10000.0 /* of a blue one, without the sun: 8000 to 20000 (common practice, no source) */
#define LR_GLASS_SHARE 0.8   /* through two clear panes; common practice, no source */

typedef struct
{
  const LrPlaced *placed;   /* a light, a house light that is on, a window by day */
  gboolean is_sun;          /* through that window */
  LrEmitter emitter;
  double kelvin;
} LrLightSource;

/* (transfer full) (element-type LrLightSource): in the set-up's order */
GArray  *lr_light_sources      (const LrStudy *study);
/* (transfer full) (element-type LrLightSource): lights of the kit that are dimmed to nothing, as they would shine at full */
GArray  *lr_light_spares       (const LrStudy *study);
/* What a light of the kit emits, as it is dimmed; FALSE: nothing, or it cannot be told */
gboolean lr_light_emitter      (const LrStudy *study, const LrPlaced *light, LrEmitter *emitter);
/* The same undimmed; without an intensity if it has no output */
LrEmitter lr_light_emitter_of  (const LrStudy *study, const LrPlaced *light);
/* Of its emitting face before the lamp's joint, as drawn */
double   lr_light_ahead_m      (const LrLight *light);
/* What it gives a small face, past what stands between. @seen_share (nullable) (out): of the light that would be there */
double   lr_light_source_lx    (const LrEmitter *emitter, const LrLightShade *shade, LrVec3 point_m, LrVec3 normal, const LrPlaced *of,
                                double *seen_share);
