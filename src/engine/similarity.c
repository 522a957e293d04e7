/* similarity.c - from a picture to the floor: turned, sized, moved, and nothing else
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A similarity of the plane that keeps its hand is multiplication by a complex number and an addition, so two pairs of points
 * settle it: scale and turn are the quotient of the two differences. Closed form.
 */

#include "similarity.h"

/* Points of a picture nearer than this are one [of its units] */
#define LEAST_APART 1e-6

/**
 * lr_similarity_apply:
 * @similarity: a similarity
 * @point: a point of the picture
 *
 * Returns: where it lies [m]
 */
LrVec2
lr_similarity_apply (const LrSimilarity *similarity,
                     LrVec2              point)
{
  return lr_vec2_add (similarity->origin_m, lr_vec2_scale (lr_vec2_rotate (point, similarity->turn_rad), similarity->scale));
}

/**
 * lr_similarity_invert:
 * @similarity: a similarity
 * @at_m: a place on the floor [m]
 *
 * Returns: the point of the picture that lies there
 */
LrVec2
lr_similarity_invert (const LrSimilarity *similarity,
                      LrVec2              at_m)
{
  LrVec2 way_m = lr_vec2_sub (at_m, similarity->origin_m);

  return lr_vec2_rotate (lr_vec2_scale (way_m, 1.0 / similarity->scale), -similarity->turn_rad);
}

/**
 * lr_similarity_from_pairs:
 * @p: a point of the picture
 * @q: another
 * @p_m: where @p is to lie [m]
 * @q_m: where @q is to lie [m]
 * @similarity: (out): what takes them there
 *
 * Closed form: the quotient of the differences as complex numbers.
 *
 * Returns: %FALSE, with @similarity untouched, unless all is finite and both pairs lie apart
 */
bool
lr_similarity_from_pairs (LrVec2        p,
                          LrVec2        q,
                          LrVec2        p_m,
                          LrVec2        q_m,
                          LrSimilarity *similarity)
{
  LrVec2 span = lr_vec2_sub (q, p), span_m = lr_vec2_sub (q_m, p_m);
  double apart = lr_vec2_length (span), apart_m = lr_vec2_length (span_m);
  LrSimilarity found;

  if (!isfinite (apart) || !isfinite (apart_m) || !(apart > LEAST_APART) || !(apart_m > 0.0))
    return false;

  found.scale = apart_m / apart;
  found.turn_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (span_m) - lr_vec2_angle_rad (span));
  found.origin_m = lr_vec2_sub (p_m, lr_vec2_scale (lr_vec2_rotate (p, found.turn_rad), found.scale));
  *similarity = found;
  return true;
}

/**
 * lr_straighten_rad:
 * @direction: of a line on the floor
 *
 * Returns: the least turn that makes it level or upright [rad], in [-pi/4, pi/4]
 */
double
lr_straighten_rad (LrVec2 direction)
{
  double angle_rad = lr_vec2_angle_rad (direction);

  return 0.5 * LR_PI * round (angle_rad / (0.5 * LR_PI)) - angle_rad;
}

/**
 * lr_similarity_scaled:
 * @before: how the picture lies now
 * @p: a point of the picture, which stays where it is
 * @q: another
 * @distance_m: how far apart they are in the room [m], > 0
 * @is_straightened: whether the line between them is level or upright, whichever is nearer
 * @similarity: (out): how the picture lies then
 *
 * Returns: %FALSE, with @similarity untouched, unless the points lie apart and the distance is finite and > 0
 */
bool
lr_similarity_scaled (const LrSimilarity *before,
                      LrVec2              p,
                      LrVec2              q,
                      double              distance_m,
                      bool                is_straightened,
                      LrSimilarity       *similarity)
{
  LrVec2 p_m = lr_similarity_apply (before, p), way_m = lr_vec2_sub (lr_similarity_apply (before, q), p_m);
  double angle_rad = lr_vec2_angle_rad (way_m) + (is_straightened ? lr_straighten_rad (way_m) : 0.0);

  if (!isfinite (distance_m) || !(distance_m > 0.0))
    return false;

  return lr_similarity_from_pairs (p, q, p_m, lr_vec2_add (p_m, lr_vec2_polar (angle_rad, distance_m)), similarity);
}

/**
 * lr_similarity_turned:
 * @before: how the picture lies now
 * @about_m: the place on the floor that stays where it is [m]
 * @by_rad: anticlockwise [rad]
 *
 * Returns: how the picture lies then
 */
LrSimilarity
lr_similarity_turned (const LrSimilarity *before,
                      LrVec2              about_m,
                      double              by_rad)
{
  LrSimilarity turned = *before;

  turned.turn_rad = lr_angle_wrap_rad (before->turn_rad + by_rad);
  turned.origin_m = lr_vec2_add (about_m, lr_vec2_rotate (lr_vec2_sub (before->origin_m, about_m), by_rad));
  return turned;
}
