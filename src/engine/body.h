/* body.h - where the parts of a person are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Segment heights as fractions of stature (Drillis & Contini 1966, in Winter, Biomechanics and
 * Motor Control of Human Movement, figure 4.1); sitting proportions and heads from ANSUR II (Gordon
 * et al. 2014, NATICK/TR-15/007).
 */

#pragma once

#include <stdbool.h>

typedef struct
{
  double stature_m;
  bool   is_seated;
  double seat_height_m; /* of the compressed seat, used when seated */
  double eye_height_m;  /* as measured; 0 = from the stature */
} LrBodyInput;

typedef struct
{
  /* heights above the floor */
  double crown_m, eyes_m, mouth_m, chin_m, neck_m, shoulder_m, chest_m, elbow_m, waist_m, hip_m;
  double thigh_m, knee_m, floor_m; /* seated, thigh and knee are at the seat, and ahead of the eyes */
  double head_width_m, head_depth_m, head_height_m, shoulder_width_m;
  double stature_m;
  bool   is_seated;
} LrBody;

/* The eyes and the mouth lie this far [m] ahead of the middle of the head, in plan: nearly half
 * its depth. */
#define LR_EYES_AHEAD_M 0.08

bool lr_body (const LrBodyInput *input, LrBody *body);
