/* body.c - where the parts of a person are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fractions of stature. Standing: Drillis & Contini 1966, in Winter, Biomechanics and Motor Control
 * of Human Movement, figure 4.1, for eye, chin, shoulder, hip and knee (chest: the same figure,
 * from memory). Waist: the navel of ANSUR II, 0.602 of women's and 0.601 of men's stature. Thigh:
 * between hip and knee. Elbow: the same figure, from memory. Neck: half-way from chin to shoulder. Mouth: 0.40 of the way from chin to the root of the nose (menton-sellion is
 * 0.0696 of stature in ANSUR II; the 0.40 is from memory of Farkas, Anthropometry of the Head and
 * Face, 1994).
 *
 * Seated: the eyes are 0.459 of stature above the seat, women 0.459 and men 0.458 in ANSUR II
 * (Gordon et al. 2014, NATICK/TR-15/007). Shoes do not count, for the seat carries the body. A
 * slump takes up to 40 mm (Pheasant, Bodyspace): only a measured eye height knows of it. The elbow
 * hangs an upper arm, 0.186, under the shoulder (Winter, the same figure).
 */

#include "body.h"

#include "domain.h"

#define EYES 0.936
#define MOUTH 0.898
#define CHIN 0.870
#define SHOULDER 0.818
#define CHEST 0.720
#define ELBOW 0.630
#define WAIST 0.600
#define HIP 0.530
#define THIGH 0.410
#define KNEE 0.285
#define SHOULDER_WIDTH 0.259
#define UPPER_ARM 0.186

#define EYES_ABOVE_SEAT 0.459

/* Means of the women's and men's ratios to mean stature, 1628.5 mm and 1756.2 mm, in ANSUR II */
#define HEAD_WIDTH (0.5 * (147.8 / 1628.5 + 154.3 / 1756.2))
#define HEAD_DEPTH (0.5 * (189.8 / 1628.5 + 199.5 / 1756.2))

static double
eye_height_m (const LrBodyInput *input)
{
  if (input->eye_height_m > 0.0)
    return input->eye_height_m;

  return input->is_seated ? input->seat_height_m + EYES_ABOVE_SEAT * input->stature_m
                          : EYES * input->stature_m;
}

/**
 * lr_body:
 * @input: stature [m], > 0; the height of the compressed seat [m], >= 0, looked at when seated; the
 *   eyes' height above the floor as measured [m], or 0
 * @body: (out): heights above the floor and sizes [m]
 *
 * From the hip up everything keeps its distance from the eyes, standing or seated, so a measured
 * eye height moves the whole upper body. Below the hip, a standing person's legs fill what is left
 * in their usual proportion; a seated person's thighs run level and ahead, so that no height below
 * the hip tells where a frame cuts them, and thigh and knee are given at the height of the seat. Bare feet: the 25 mm of shoes (ISO 3411) belong in a measured eye height.
 *
 * Source: see the head of this file.
 *
 * Returns: %FALSE, with @body untouched, unless every number is finite and in its domain and the
 *   hip comes to lie above the floor
 */
bool
lr_body (const LrBodyInput *input,
         LrBody            *body)
{
  double h = input->stature_m;
  double crown_m, hip_m;

  if (!lr_is_positive (h) || !lr_is_at_least_zero (input->eye_height_m)
      || (input->is_seated && !lr_is_at_least_zero (input->seat_height_m)))
    return false;

  crown_m = eye_height_m (input) + (1.0 - EYES) * h;
  hip_m = crown_m - (1.0 - HIP) * h;
  if (hip_m <= 0.0)
    return false;

  *body = (LrBody) {
    .crown_m = crown_m,
    .eyes_m = crown_m - (1.0 - EYES) * h,
    .mouth_m = crown_m - (1.0 - MOUTH) * h,
    .chin_m = crown_m - (1.0 - CHIN) * h,
    .neck_m = crown_m - (1.0 - 0.5 * (CHIN + SHOULDER)) * h,
    .shoulder_m = crown_m - (1.0 - SHOULDER) * h,
    .chest_m = crown_m - (1.0 - CHEST) * h,
    .elbow_m = crown_m - (1.0 - (input->is_seated ? SHOULDER - UPPER_ARM : ELBOW)) * h,
    .waist_m = crown_m - (1.0 - WAIST) * h,
    .hip_m = hip_m,
    .thigh_m = input->is_seated ? input->seat_height_m : THIGH / HIP * hip_m,
    .knee_m = input->is_seated ? input->seat_height_m : KNEE / HIP * hip_m,
    .floor_m = 0.0,
    .head_width_m = HEAD_WIDTH * h,
    .head_depth_m = HEAD_DEPTH * h,
    .head_height_m = (1.0 - CHIN) * h,
    .shoulder_width_m = SHOULDER_WIDTH * h,
    .stature_m = h,
    .is_seated = input->is_seated,
  };
  return true;
}
