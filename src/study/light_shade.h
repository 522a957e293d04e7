/* light_shade.h - what stands in the way of light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"

typedef struct LrLightShade LrLightShade;

/* Solids and walls of a study, which outlives it */
LrLightShade *lr_light_shade_new  (const LrStudy *study);
/* Without people and equipment, who may move: furniture and panels; (transfer full) */
LrLightShade *lr_light_shade_new_fixed (const LrStudy *study);
void          lr_light_shade_free (LrLightShade *shade);
/* Whether light goes from one place to the other. @of (nullable): a thing that does not stand in its own way */
gboolean      lr_light_shade_is_clear (const LrLightShade *shade, LrVec3 from_m, LrVec3 to_m, const LrPlaced *of);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLightShade, lr_light_shade_free)
