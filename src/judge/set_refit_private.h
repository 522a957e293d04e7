/* set_refit_private.h - trying moves of the set, for set_refit.c
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "judge_parts.h"
#include "set_refit.h"

/* A move and what it comes to; the farther down, the less it counts */
typedef struct
{
  LrSetMove move;
  guint     n_fix;
  guint     n_new_mind;
  double    farthest_m;
} LrSetTrial;

typedef struct
{
  const LrPlan  *plan;
  LrVec2         about_m;     /* the subject, or the middle of the set */
  LrStudy       *study;       /* of the plan; NULL where nothing is tried */
  GArray        *places;      /* LrVec2: of all that stands on the floor and goes with the set */
  LrSetScore     before;
  guint          n_within;    /* of what is to fix: between things of the set alone, which no move of it changes */
  LrSetTrial     best;
  guint          n_trials;
  GCancellable  *cancellable;
} LrSetSearch;

/* set_refit_try.c */
void     lr_set_search_init  (LrSetSearch *search, const LrPlan *plan, GCancellable *cancellable);
void     lr_set_search_clear (LrSetSearch *search);
double   lr_set_search_farthest_m (const LrSetSearch *search, const LrSetMove *move);
/* Takes the move as the best if it is better than that; whether it did */
gboolean lr_set_search_try   (LrSetSearch *search, const LrSetMove *move);
