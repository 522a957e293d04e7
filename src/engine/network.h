/* network.h - points in the plane from lengths and angles between them, by least squares
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stddef.h>
#include "vec.h"

typedef struct
{
  LrVec2 at_m;               /* known, or a first guess */
  bool   holds_x, holds_y;   /* is known */
} LrNetPoint;

typedef enum
{
  LR_NET_LENGTH, /* from one point to another [m] */
  LR_NET_ANGLE,  /* at a point, anticlockwise from one point to another [rad] */
} LrNetKind;

typedef struct
{
  LrNetKind kind;
  size_t    from, to, at;
  double    value, sd; /* as measured, and its standard deviation */
} LrNetMeasure;

/* What the others say of one measure */
typedef struct
{
  double residual;     /* adjusted less measured */
  double redundancy;   /* 0: nothing else checks it, to 1: everything does */
  double standardized; /* residual in its own standard deviations; 0 if nothing checks it */
  double error;        /* measured less what the others make of it; 0 if nothing checks it */
} LrNetCheck;

typedef struct
{
  size_t      n_points, n_measures;
  size_t      freedom;       /* measures more than are needed */
  double      misfit;        /* sum of (residual / sd) squared: freedom on average */
  double     *covariance_m2; /* 2 n_points squared: x0, y0, x1, ...; 0 where known */
  LrNetCheck *checks;        /* n_measures */
} LrNetSolution;

/* Moves the points to where the measures fit best. false, with both untouched, if that is no place or many */
bool   lr_net_adjust      (LrNetPoint *points, size_t n, const LrNetMeasure *measures, size_t n_measures, LrNetSolution *solution);
void   lr_net_clear       (LrNetSolution *solution);
/* Standard error of a point: the longer half axis of its standard ellipse */
double lr_net_point_sd_m  (const LrNetSolution *solution, size_t point);
/* Standard error of a length between two points, as it is known without measuring it */
double lr_net_length_sd_m (const LrNetSolution *solution, const LrNetPoint *points, size_t p, size_t q);
/* Those that may be the one in error, worst first; at most max. Returns how many, 0 if none stands out */
size_t lr_net_suspects    (const LrNetSolution *solution, double least, size_t *suspects, size_t max);
/* How well a length would tell apart which suspect is in error, or none: 0 to how many pairs there are */
double lr_net_settles     (const LrNetSolution *solution, const LrNetPoint *points, const LrNetMeasure *measures,
                           const size_t *suspects, size_t n_suspects, const LrNetMeasure *length);
