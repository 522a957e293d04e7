/* shadow_escape.h - the least change that takes a shadow out of the pictures
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_edit.h"
#include "wall_shadows.h"

typedef enum { LR_ESCAPE_RAISE, LR_ESCAPE_ASIDE, LR_ESCAPE_OFF_WALL } LrEscapeWay;

typedef struct
{
  LrEscapeWay     way;
  const LrPlaced *moved;     /* the lamp, or who throws the shadow */
  double          height_m;  /* of the lamp, raised */
  LrVec2          to_m;      /* its place, or theirs */
  double          cost_m;    /* by how much it is to be moved; less is better */
} LrEscape;

#define LR_ESCAPES 2

/* For one shadow in all pictures: the least of each of two ways */
typedef struct
{
  const LrPlaced *source, *thing;
  guint    n;
  LrEscape escape[LR_ESCAPES];
} LrShadowEscapes;

/* (transfer full) (element-type LrShadowEscapes) (nullable): of the shadows that are to be told; NULL: cancelled */
GArray *lr_shadow_escapes (const LrShadowTask *task, const GArray *shadows, GCancellable *cancellable);
/* What changes in the plan; returns how many, up to 2 */
guint   lr_escape_changes (const LrEscape *escape, LrChange *changes);
