/* set_refit.h - the smallest move of the whole set that mends the most
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What goes with the set (lr_setup_goes_with()) is turned about its subject and moved, leads are laid anew. Looked for is the
 * move that leaves the fewest to fix, then makes the fewest new to mind, then is the smallest, by how far the farthest thing
 * of the set goes. Counted is what is judged without levels of light and ways out, which take too long for a search.
 */

#pragma once

#include "remarks.h"

#include <gio/gio.h>

typedef enum
{
  LR_SET_REFIT_FOUND,
  LR_SET_REFIT_FINE,    /* nothing is to fix */
  LR_SET_REFIT_NO_HELP, /* no move leaves less to fix */
  LR_SET_REFIT_NO_SET,  /* no room, or nothing that moves with the set */
} LrSetRefitState;

typedef struct
{
  LrVec2 by_m;
  double turn_rad;   /* about the subject, anticlockwise */
} LrSetMove;

/* What a plan comes to */
typedef struct
{
  guint n_fix, n_mind;
} LrSetScore;

typedef struct
{
  LrSetRefitState state;
  LrSetMove   move;
  double      farthest_m;   /* how far the farthest thing of the set goes */
  LrSetScore  before, after;
  LrPlan     *plan;         /* with the set moved; NULL: it stays */
  char       *offer;        /* markup: "Move the set 0.40 m towards the west wall: 3 to fix become 0." */
  char       *done;         /* markup: "Moved the set 0.40 m towards the west wall: 3 to fix became 0." or why it stays */
  guint       n_trials;     /* plans that were studied */
} LrSetRefit;

/* May be called from any thread; (nullable): it was cancelled */
LrSetRefit *lr_set_refit_new   (const LrPlan *plan, LrUnits units, GCancellable *cancellable);
void        lr_set_refit_free  (LrSetRefit *refit);
/* The set moved, and its leads laid anew; (transfer full) */
LrPlan     *lr_set_refit_apply (const LrPlan *plan, const LrSetMove *move, GError **error);
/* How far the farthest thing of the set goes [m] */
double      lr_set_move_farthest_m (const LrPlan *plan, const LrSetMove *move);
LrSetScore  lr_set_score       (const LrPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrSetRefit, lr_set_refit_free)
