/* light.h - what light a source gives at a point
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Illuminance in lux, intensity in candela, flux in lumen, luminance in candela per square metre.
 */

#pragma once

#include "lobe.h"
#include "photometry.h"

typedef enum { LR_EMITTER_POINT, LR_EMITTER_RECTANGLE, LR_EMITTER_DISC, LR_EMITTER_BEAM } LrEmitterShape;

/* A source of even luminance, or a point: its light falls off from its axis by its lobe. Or parallel light through a rectangle, which
 * it fills */
typedef struct
{
  LrEmitterShape shape;
  LrVec3 at_m;               /* the middle of what emits, or of what a beam comes through */
  LrVec3 axis, right, up;    /* of length 1, at right angles; a beam's axis goes with its light, at any angle to the others */
  double width_m, height_m;  /* a rectangle's, a beam's; a disc is width_m across */
  double candela;            /* on the axis, from afar */
  LrLobe lobe;               /* a power of 1 is a Lambertian panel, of 0 a point that is the same all round its front */
  const LrPhotometry *table; /* (nullable) (unowned): measured intensities, which count in place of the lobe; a rectangle or a point */
  double share;              /* of them: 1 undimmed */
  double turn_deg;           /* their horizontal angle towards @right; it goes on towards @up */
  double parallel_lx;        /* of a beam: on a face turned to it */
} LrEmitter;

/* From what a data sheet says to the intensity on the axis */
bool   lr_candela_of_lumen (double lumen, const LrLobe *lobe, double *candela);
bool   lr_candela_of_lux   (double lux, double distance_m, double *candela);

/* Share of the light of an even ground that a polygon of it gives to a point: E = pi L F */
bool   lr_polygon_factor  (const LrVec3 *corner_m, size_t n, LrVec3 point_m, LrVec3 normal, double *factor);

/* The intensities of a file, straight down being the axis, from a face of the file's size or, where it tells none, of the emitter's */
void   lr_emitter_take_table (LrEmitter *emitter, const LrPhotometry *table, double share);
/* By a small part of it there, by itself: only its ratio to that of other parts means something */
double lr_emitter_part_lx (const LrEmitter *emitter, LrVec3 part_m, LrVec3 point_m, LrVec3 normal);
bool   lr_emitter_lx      (const LrEmitter *emitter, LrVec3 point_m, LrVec3 normal, double *lux);
/* On its axis, on a face turned to it */
bool   lr_emitter_axis_lx (const LrEmitter *emitter, double distance_m, double *lux);
/* How far out on the axis that level is; FALSE: nowhere */
bool   lr_emitter_distance_m (const LrEmitter *emitter, double lux, double *distance_m);
/* Where light of it comes from, of length 1: from its middle; of a beam, against its axis */
LrVec3 lr_emitter_way     (const LrEmitter *emitter, LrVec3 point_m);
/* Where a beam that reaches the point comes through; FALSE: it does not reach it */
bool   lr_beam_entry      (const LrEmitter *beam, LrVec3 point_m, LrVec3 *entry_m);
