/* light_levels.h - what light reaches faces, clothes and the wall behind them, and how it comes out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Computed apart from the study: from a study of its own, in another thread if need be. Predictions of light are right to half a stop at
 * best: the lumens of lamps, the sheen of walls and the sky are not better known.
 */

#pragma once

#include "exposure.h"
#include "level_map.h"
#include "light_probes.h"
#include "light_sources.h"
#include "shadow_escape.h"
#include "wall_light.h"

#include <gio/gio.h>

/* On one small face */
typedef struct
{
  double direct_lx;
  double bounced_lx;    /* what the room gives back; NAN: not known yet */
} LrLux;

/* On a person */
typedef struct
{
  const LrPlaced *person;
  LrLux    at[LR_N_FACE_POINTS];
  LrFacePoint lit, shadow;       /* the cheeks: the brighter one, and the other */
  const LrPlaced *key;           /* (nullable): what gives the lit cheek most; (nullable) when nothing does */
  gboolean key_is_sun;           /* through that window */
  double   key_lx;               /* of it there, straight */
  double   fill_lx;              /* on the shadow cheek, all but the key's straight light */
  double   ratio_stops;          /* lit cheek to shadow cheek, everything counted */
  double   key_side_rad;         /* of the key off the look, in plan; > 0 to the person's left */
  double   key_up_rad;           /* over the level of the eyes */
  double   nose_under_rad;       /* the way that the nose's shadow falls, below level; to the side away from the key. NAN: no key, or it is behind */
  double   back_lx;              /* straight, on the back of the head */
  const LrPlaced *back;          /* (nullable): what gives most of it */
  gboolean back_is_sun;
  double   back_side_rad, back_up_rad; /* like those of the key */
  double   mixed_k;              /* correlated color temperature of what comes straight to the lit cheek; NAN: nothing does */
} LrFaceLight;

/* On the walls that a camera sees */
typedef struct
{
  const LrPlaced *camera;
  guint    n;                    /* places looked at; 0: no wall is seen */
  LrLux    mean;
  double   least_lx, most_lx;    /* in all */
  double   reflectance;          /* mean, weighted by the light */
} LrBackLight;

/* On a piece of furniture */
typedef struct
{
  const LrPlaced *thing;
  double lx[LR_N_THING_SIDES];         /* in all */
} LrThingLight;

/* What a camera makes of a level: share of the white that it takes, over 1 it clips; lr_signal_of_share() has the signal */
typedef struct
{
  double face, shadow, clothes, background; /* NAN: not seen or not known */
} LrShares;

typedef struct LrLightLevels LrLightLevels;

/* (transfer full) (nullable): NULL: cancelled. Straight light alone, or whole */
LrLightLevels *lr_light_levels_new   (const LrPlan *plan, gboolean has_bounces, GCancellable *cancellable);
/* (transfer full): straight light of the plan; what the room gave back in a plan before it, if that is known */
LrLightLevels *lr_light_levels_new_straight (const LrPlan *plan, LrLightLevels *before);
LrLightLevels *lr_light_levels_ref   (LrLightLevels *levels);
void           lr_light_levels_unref (LrLightLevels *levels);

const LrPlan      *lr_light_levels_get_plan   (const LrLightLevels *levels);
gboolean           lr_light_levels_is_whole   (const LrLightLevels *levels); /* what the room gives back is in it */
gboolean           lr_light_levels_is_settled (const LrLightLevels *levels); /* and all of it is of this plan */
/* (nullable): the settled ones that the room's share is from; they may be themselves */
LrLightLevels     *lr_light_levels_get_settled (LrLightLevels *levels);
/* Whether a picture lit by the one is as one lit by the other, but for what the camera is set to */
gboolean           lr_light_levels_shine_alike (LrLightLevels *levels, LrLightLevels *other);
guint              lr_light_levels_n_sources  (const LrLightLevels *levels);
const LrLightSource *lr_light_levels_source   (const LrLightLevels *levels, guint index);
/* What that one gives straight to a point of a person; 0: nothing, or they are not there */
double             lr_light_levels_lx_of      (const LrLightLevels *levels, guint index, const char *person, LrFacePoint point);
const LrFaceLight *lr_light_levels_face       (const LrLightLevels *levels, const char *person); /* (nullable) */
const LrBackLight *lr_light_levels_background (const LrLightLevels *levels, const char *camera); /* (nullable) */
/* To two figures, for predictions of light are right to half a stop at best */
double             lr_lux_round              (double lux);
double             lr_lux_all                 (LrLux lux); /* without bounces while they are not known */
/* What the source gives straight to a point of a person; 0: nothing, or it is no source */
double             lr_light_levels_source_lx  (const LrLightLevels *levels, const char *source, const char *person, LrFacePoint point);
/* What the source gives straight to the walls that a camera sees, in the mean; NAN: no wall is seen, or one of them is not there */
double             lr_light_levels_spill_lx  (const LrLightLevels *levels, const char *source, const char *camera);
/* FALSE: the camera is not there or has no exposure */
gboolean           lr_light_levels_shares    (const LrLightLevels *levels, const char *camera, LrShares *shares);
/* What a camera makes of a white, matte surface at 1 lx, as a share like those; NAN: it is not there */
double             lr_light_levels_share_per_lx (const LrLightLevels *levels, const char *camera);
/* (nullable): not whole, or no such wall */
const LrWallLight *lr_light_levels_wall      (const LrLightLevels *levels, int wall);
const LrThingLight *lr_light_levels_thing    (const LrLightLevels *levels, const char *furniture); /* (nullable) */
/* (nullable) (element-type LrShadow): what cameras see of shadows on walls, the faint ones too; NULL: not whole */
const GArray      *lr_light_levels_shadows   (const LrLightLevels *levels);
/* (nullable): of its lamp and thing; NULL: it is not to be told */
const LrShadowEscapes *lr_light_levels_escapes (const LrLightLevels *levels, const LrShadow *shadow);
/* (nullable): not whole */
const LrLevelMap  *lr_light_levels_map       (const LrLightLevels *levels);
/* (element-type LrWayOut): ways out of the room, of the levels' own study: they take as long as a moment's rest; empty while not whole */
const GArray      *lr_light_levels_ways      (const LrLightLevels *levels);
/* (nullable): of whom the first camera frames, else of the first person: what other levels are compared with */
const LrFaceLight *lr_light_levels_main_face (const LrLightLevels *levels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLightLevels, lr_light_levels_unref)
