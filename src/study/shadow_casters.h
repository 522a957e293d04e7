/* shadow_casters.h - what of a lamp people and equipment cover, seen from a place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_sources.h"

/* What one thing keeps away of one lamp's light */
typedef struct
{
  guint  source, thing;      /* by their numbers */
  double lx;                 /* that is missing */
  LrVec3 past_m;             /* middle of the solid that covers most */
} LrShadowLoss;

#define LR_MOST_LOSSES 24

typedef struct
{
  GArray *solids, *things;   /* LrVolume; private */
} LrShadowCasters;

/* People, lamps, microphones and cameras of a study, which outlives it */
LrShadowCasters *lr_shadow_casters_new  (const LrStudy *study);
void             lr_shadow_casters_free (LrShadowCasters *casters);
guint            lr_shadow_casters_n    (const LrShadowCasters *casters);
const LrPlaced  *lr_shadow_caster       (const LrShadowCasters *casters, guint index);
/* Of what has no size in the plan, the side of what shines */
double           lr_light_source_size_m (const LrLightSource *source);
/* The share of a lamp that they cover together; each one's share stands in its loss's lx. @about (nullable): only pairs with that thing */
double           lr_shadow_covered      (const LrShadowCasters *casters, const LrLightSource *source, guint index, const char *about,
                                         LrVec3 at_m, LrVec3 normal, LrShadowLoss *losses, guint *n_losses);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrShadowCasters, lr_shadow_casters_free)
