/* plan_diff_set.c - whether most of the set moved as one, and how
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every two things of the set propose a move: the first goes where it went, turned as the way to the second turned. The one
 * that most things agree with is fitted to those by least squares, in closed form: with places from their means, the turn is
 * atan2 of the sums of the cross and dot products.
 */

#include "config.h"

#include "plan_diff_private.h"

#include <math.h>

#define AGREES_M LR_DIFF_LENGTH_M
#define MOST 0.5           /* of the set, that must agree */
#define MAX_PROPOSERS 24   /* of the set; time grows with their square */
#define LEAST_WAY_M 0.2    /* between two things, to tell a turn by */

/**
 * lr_rigid_apply:
 * @rigid: a move
 * @at_m: a point [m]
 *
 * Returns: where it goes [m]
 */
LrVec2
lr_rigid_apply (const LrRigid *rigid,
                LrVec2         at_m)
{
  return lr_vec2_add (lr_vec2_add (rigid->about_m, lr_vec2_rotate (lr_vec2_sub (at_m, rigid->about_m), rigid->turn_rad)), rigid->by_m);
}

static gboolean
agrees (const LrRigid    *rigid,
        const LrDiffPair *pair)
{
  return pair->is_of_set && lr_vec2_distance (lr_rigid_apply (rigid, pair->was_m), pair->now_m) <= AGREES_M;
}

static gsize
count (const LrDiffPair *pairs,
       gsize             n,
       const LrRigid    *rigid)
{
  gsize n_agree = 0;

  for (gsize i = 0; i < n; i++)
    n_agree += agrees (rigid, &pairs[i]);

  return n_agree;
}

static LrRigid
propose (const LrDiffPair *a,
         const LrDiffPair *b)
{
  LrVec2 was = lr_vec2_sub (b->was_m, a->was_m), now = lr_vec2_sub (b->now_m, a->now_m);
  LrRigid rigid = { a->was_m, lr_vec2_sub (a->now_m, a->was_m), 0.0 };

  if (a != b && lr_vec2_length (was) > LEAST_WAY_M && lr_vec2_length (now) > LEAST_WAY_M)
    rigid.turn_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (now) - lr_vec2_angle_rad (was));

  return rigid;
}

/* Through the means of what agrees */
static LrRigid
fit (const LrDiffPair *pairs,
     gsize             n,
     const LrRigid    *near)
{
  LrVec2 was_m = { 0.0, 0.0 }, now_m = { 0.0, 0.0 };
  double cross = 0.0, dot = 0.0, n_agree = (double) count (pairs, n, near);

  for (gsize i = 0; i < n; i++)
    if (agrees (near, &pairs[i]))
      {
        was_m = lr_vec2_along (was_m, pairs[i].was_m, 1.0 / n_agree);
        now_m = lr_vec2_along (now_m, pairs[i].now_m, 1.0 / n_agree);
      }
  for (gsize i = 0; i < n; i++)
    if (agrees (near, &pairs[i]))
      {
        cross += lr_vec2_cross (lr_vec2_sub (pairs[i].was_m, was_m), lr_vec2_sub (pairs[i].now_m, now_m));
        dot += lr_vec2_dot (lr_vec2_sub (pairs[i].was_m, was_m), lr_vec2_sub (pairs[i].now_m, now_m));
      }

  return (LrRigid) { was_m, lr_vec2_sub (now_m, was_m), atan2 (cross, dot) };
}

static double
farthest_m (const LrDiffPair *pairs,
            gsize             n,
            const LrRigid    *rigid)
{
  double farthest = 0.0;

  for (gsize i = 0; i < n; i++)
    if (pairs[i].is_of_set)
      farthest = fmax (farthest, lr_vec2_distance (lr_rigid_apply (rigid, pairs[i].was_m), pairs[i].was_m));

  return farthest;
}

/**
 * lr_diff_find_rigid:
 * @pairs: (array length=n): things before and after
 * @n: how many
 * @rigid: (out): how most of the set moved; where it did not, a move that moves nothing
 *
 * Returns: whether at least two things of the set, and half of it, moved in one way
 */
gboolean
lr_diff_find_rigid (const LrDiffPair *pairs,
                    gsize             n,
                    LrRigid          *rigid)
{
  LrRigid best = { { 0.0, 0.0 }, { 0.0, 0.0 }, 0.0 };
  gsize n_best = count (pairs, n, &best), n_set = 0, n_first = 0;

  for (gsize i = 0; i < n; i++)
    {
      n_set += pairs[i].is_of_set;
      if (n_set <= MAX_PROPOSERS)
        n_first = i + 1;
    }
  *rigid = (LrRigid) { { 0.0, 0.0 }, { 0.0, 0.0 }, 0.0 };
  for (gsize i = 0; i < n_first; i++)
    for (gsize j = 0; j < n_first && pairs[i].is_of_set; j++)
      {
        LrRigid proposed = propose (&pairs[i], &pairs[j]);
        gsize n_agree = pairs[j].is_of_set ? count (pairs, n, &proposed) : 0;

        if (n_agree <= n_best)
          continue;
        n_best = n_agree;
        best = proposed;
      }
  if (n_best < 2 || (double) n_best < MOST * (double) n_set || farthest_m (pairs, n, &best) <= AGREES_M)
    return FALSE;

  *rigid = fit (pairs, n, &best);
  if (fabs (rigid->turn_rad) < LR_DIFF_ANGLE_RAD && count (pairs, n, &(LrRigid) { rigid->about_m, rigid->by_m, 0.0 }) >= n_best)
    rigid->turn_rad = 0.0;

  return TRUE;
}
