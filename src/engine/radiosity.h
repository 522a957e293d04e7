/* radiosity.h - light that matte surfaces give back to each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Patches of even light and even reflectance. Illuminance in lux, areas in square metres.
 */

#pragma once

#include "vec.h"

#include <stddef.h>

#define LR_PATCH_CORNERS 8

typedef struct
{
  LrVec3 corner_m[LR_PATCH_CORNERS]; /* flat and convex, anticlockwise seen from its front */
  size_t n;                          /* of them, from 3 */
  LrVec3 middle_m;                   /* of its area */
  LrVec3 normal;                     /* of length 1, out of its front */
  double area_m2;
  double radius_m;                   /* from the middle to the farthest corner */
  double reflectance;                /* 0 to 1 */
} LrPatch;

/* Whether nothing stands between two places */
typedef bool (*LrClearFunc) (LrVec3 from_m, LrVec3 to_m, const void *data);

/* FALSE: the corners are no patch */
bool   lr_patch_init (LrPatch *patch, const LrVec3 *corner_m, size_t n, double reflectance);

/* exchange[i * n + j] = A_i F_ij = A_j F_ji; rows of @from, @from + @step, ... and all that is at or after their diagonals */
void   lr_exchange_rows   (const LrPatch *patch, size_t n, size_t from, size_t step, LrClearFunc is_clear, const void *data, float *exchange);
/* Makes every row of a closed room add up to its area, and copies the upper half to the lower */
void   lr_exchange_close  (const LrPatch *patch, size_t n, float *exchange, double *scale);

/* What is lit by @direct_lx and by each other. Returns the rounds; 0: not finite, or it does not settle */
size_t lr_radiosity_solve (const LrPatch *patch, size_t n, const float *exchange, const double *direct_lx, double *lux);

/* What the patches give a small face in @lux of their own light */
double lr_patches_lx      (const LrPatch *patch, size_t n, const double *lux, LrVec3 point_m, LrVec3 normal, LrClearFunc is_clear, const void *data);

/* radiosity_each.c: the same for several lamps, each alone; direct_lx[i * n_lamps + k]. @sum: of n_lamps, room to work in */
size_t lr_radiosity_solve_each (const LrPatch *patch, size_t n, const float *exchange, size_t n_lamps, const double *direct_lx, double *sum,
                                double *lux);
/* What a small face gets of each patch, as a share of the light that falls on the patch */
void   lr_patches_weigh   (const LrPatch *patch, size_t n, LrVec3 point_m, LrVec3 normal, LrClearFunc is_clear, const void *data, double *weight);
