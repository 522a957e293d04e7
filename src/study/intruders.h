/* intruders.h - the shapes of things, as a lens sees them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "intrusions.h"

#define LR_MAX_INTRUDER_SHAPES 12
#define LR_SHEET_M 0.03         /* thickness of a panel */
#define LR_FIXTURE_RADIUS_M 0.16

typedef struct
{
  guint   n;
  LrVolume shape[LR_MAX_INTRUDER_SHAPES];
  LrIntruderPart  part[LR_MAX_INTRUDER_SHAPES];
} LrIntruder;

/* Quick: a ball that holds the thing; FALSE: nothing of it is ever an intrusion */
gboolean lr_intruder_ball   (const LrStudy *study, const LrPlaced *placed, LrVec3 *centre_m, double *reach_m);
void     lr_intruder_shapes (const LrStudy *study, const LrPlaced *placed, LrIntruder *intruder);
/* How far a light's axis is lifted */
double   lr_light_tilt_rad  (const LrStudy *study, const LrPlaced *light);
/* Head and trunk of a person */
void     lr_person_head  (const LrPlaced *person, LrVolume *shape);
void     lr_person_trunk (const LrPlaced *person, LrVolume *shape);
/* Slabs that a piece of furniture hides things behind; returns how many, up to 2 */
guint    lr_furniture_slabs (const LrPlaced *furniture, LrVolume *shapes);
/* The cloth or board of a panel */
void     lr_panel_sheet (const LrPlaced *panel, LrVolume *shape);
