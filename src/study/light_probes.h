/* light_probes.h - the small faces on which levels of light are told
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_shade.h"

/* On a person: the cheeks are their own left and right */
typedef enum
{
  LR_FACE_LEFT,
  LR_FACE_RIGHT,
  LR_FACE_FOREHEAD,
  LR_FACE_TOP,
  LR_FACE_BACK,
  LR_FACE_CHEST,
  LR_N_FACE_POINTS,
} LrFacePoint;

/* Of a piece of furniture, in its own frame: its top, what looks ahead, back, to the left and to the right */
typedef enum
{
  LR_THING_TOP,
  LR_THING_AHEAD,
  LR_THING_BACK,
  LR_THING_LEFT,
  LR_THING_RIGHT,
  LR_N_THING_SIDES,
} LrThingSide;

typedef enum { LR_PROBE_FACE, LR_PROBE_BACKGROUND, LR_PROBE_THING } LrProbeType;

typedef struct
{
  LrProbeType type;
  const LrPlaced *placed;         /* the person, the camera that sees the place, or the furniture */
  LrFacePoint point;              /* of a person */
  LrThingSide side;               /* of furniture */
  LrVec3 at_m, normal;            /* normal of length 1 */
  const LrPlaced *of;             /* (nullable): does not stand in its own way */
  double reflectance;             /* of what is there */
} LrLightProbe;

/* Which way a point of the head faces; not of the chest */
LrVec3  lr_light_probe_normal (const LrPlaced *person, LrFacePoint point);
/* (transfer full) (element-type LrLightProbe): every person's points, then what each camera sees of walls behind its subject,
 * then the sides of furniture */
GArray *lr_light_probes (const LrStudy *study, const LrLightShade *shade);
void    lr_light_add_furniture (const LrStudy *study, GArray *probes);
