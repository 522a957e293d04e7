/* sightlines.c - the line of action, the look and the angle between cameras
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All in plan, at the subject. The line of action runs through the subject's eyes and the
 * interviewer's and does not end there. Two cameras of one scene stand on the same side of it, or
 * the subject seems to turn round at the cut (the 180 degree rule: common practice).
 */

#include "sightlines.h"

#include "domain.h"

/* Nearer to the line than this is on it; a tape reads to a million times more */
#define ON_LINE_M 1e-9

/* What a mended angle goes beyond its limit, so that the limit's own check passes it after rounding */
#define SLACK_RAD 1e-7

static bool
is_pair (LrVec2 from_m,
         LrVec2 to_m)
{
  return lr_is_positive (lr_vec2_distance (from_m, to_m));
}

/* From the direction of a to that of b, both seen from the subject, in (-pi, pi] */
static double
turn_rad (LrVec2 subject_m,
          LrVec2 a_m,
          LrVec2 b_m)
{
  LrVec2 a = lr_vec2_sub (a_m, subject_m);
  LrVec2 b = lr_vec2_sub (b_m, subject_m);

  return atan2 (lr_vec2_cross (a, b), lr_vec2_dot (a, b));
}

static LrVec2
turned_about (LrVec2 centre_m,
              LrVec2 point_m,
              double angle_rad)
{
  return lr_vec2_add (centre_m, lr_vec2_rotate (lr_vec2_sub (point_m, centre_m), angle_rad));
}

/**
 * lr_line_side:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m]
 * @camera_m: a camera [m]
 *
 * Sign of `(I - S) × (C - S)`, y up the sheet. On the left the subject looks screen left, on the
 * right screen right.
 *
 * Source: closed form.
 *
 * Returns: the side, %LR_SIDE_ON_LINE within a nanometre of the line or where there is no line
 */
LrSide
lr_line_side (LrVec2 subject_m,
              LrVec2 interviewer_m,
              LrVec2 camera_m)
{
  LrVec2 line = lr_vec2_sub (interviewer_m, subject_m);
  double left_m = lr_vec2_cross (line, lr_vec2_sub (camera_m, subject_m)) / lr_vec2_length (line);

  if (left_m > ON_LINE_M)
    return LR_SIDE_LEFT;
  if (left_m < -ON_LINE_M)
    return LR_SIDE_RIGHT;
  return LR_SIDE_ON_LINE;
}

/**
 * lr_line_margin_rad:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m], elsewhere
 * @camera_m: a camera [m], not at the subject
 * @margin_rad: (out): angle at the subject between the line and the camera [rad], in [0, pi/2]
 *
 * How far the camera is from crossing, whichever end of the line is nearer:
 * `atan2 (|g × v|, |g · v|)`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @margin_rad untouched, unless the three points are finite and apart
 */
bool
lr_line_margin_rad (LrVec2  subject_m,
                    LrVec2  interviewer_m,
                    LrVec2  camera_m,
                    double *margin_rad)
{
  LrVec2 g = lr_vec2_sub (interviewer_m, subject_m);
  LrVec2 v = lr_vec2_sub (camera_m, subject_m);

  if (!is_pair (subject_m, interviewer_m) || !is_pair (subject_m, camera_m))
    return false;

  *margin_rad = atan2 (fabs (lr_vec2_cross (g, v)), fabs (lr_vec2_dot (g, v)));
  return true;
}

/**
 * lr_line_distance_m:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m], elsewhere
 * @camera_m: a camera [m]
 * @distance_m: (out): of the camera from the line, which has no ends [m], >= 0
 *
 * `|(I - S) × (C - S)| / |I - S|`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @distance_m untouched, unless the points are finite and there is a line
 */
bool
lr_line_distance_m (LrVec2  subject_m,
                    LrVec2  interviewer_m,
                    LrVec2  camera_m,
                    double *distance_m)
{
  LrVec2 line = lr_vec2_sub (interviewer_m, subject_m);
  double cross_m2 = lr_vec2_cross (line, lr_vec2_sub (camera_m, subject_m));

  if (!is_pair (subject_m, interviewer_m) || !isfinite (cross_m2))
    return false;

  *distance_m = fabs (cross_m2) / lr_vec2_length (line);
  return true;
}

/**
 * lr_line_mend:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m], elsewhere
 * @camera_m: a camera [m], not at the subject
 * @side: where the camera shall stand, left or right
 * @margin_rad: how far off the line at least [rad], in (0, pi/2]
 * @moved_m: (out): where it stands then [m]; @camera_m itself if nothing is wrong
 *
 * The smallest turn about the subject, so that the framing keeps. The angle from the line to the
 * camera must lie between margin and pi - margin on the wanted side; the nearer end is taken. The
 * result keeps 1e-7 rad more than asked, so that it passes lr_line_margin_rad() with the same
 * limit.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @moved_m untouched, unless every number is in its domain
 */
bool
lr_line_mend (LrVec2  subject_m,
              LrVec2  interviewer_m,
              LrVec2  camera_m,
              LrSide  side,
              double  margin_rad,
              LrVec2 *moved_m)
{
  double at_rad, front_rad, back_rad;

  if (!is_pair (subject_m, interviewer_m) || !is_pair (subject_m, camera_m)
      || side == LR_SIDE_ON_LINE || !lr_is_positive (margin_rad) || margin_rad > 0.5 * LR_PI)
    return false;

  /* Measured towards the wanted side, [margin, pi - margin] is where the camera may be */
  at_rad = (double) side * turn_rad (subject_m, interviewer_m, camera_m);
  if (at_rad >= margin_rad && at_rad <= LR_PI - margin_rad)
    {
      *moved_m = camera_m;
      return true;
    }

  margin_rad = fmin (margin_rad + SLACK_RAD, 0.5 * LR_PI);
  front_rad = lr_angle_wrap_rad (margin_rad - at_rad);
  back_rad = lr_angle_wrap_rad (LR_PI - margin_rad - at_rad);
  *moved_m = turned_about (subject_m, camera_m,
                           (double) side * (fabs (front_rad) <= fabs (back_rad) ? front_rad : back_rad));
  return true;
}

/**
 * lr_gaze_rad:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m], elsewhere
 * @camera_m: the lens [m], not at the subject
 * @gaze_rad: (out): from the way to the lens to the way to the interviewer [rad], in (-pi, pi]
 *
 * `atan2 (v × g, v · g)`, anticlockwise positive, v to the lens and g to the interviewer. Its size
 * says how far beside the lens the subject looks; its sign is opposite to the side of the line.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @gaze_rad untouched, unless the points are finite and apart
 */
bool
lr_gaze_rad (LrVec2  subject_m,
             LrVec2  interviewer_m,
             LrVec2  camera_m,
             double *gaze_rad)
{
  if (!is_pair (subject_m, interviewer_m) || !is_pair (subject_m, camera_m))
    return false;

  *gaze_rad = turn_rad (subject_m, camera_m, interviewer_m);
  return true;
}

/**
 * lr_elevation_rad:
 * @from_m: where one looks from [m]
 * @to_m: where one looks [m]
 *
 * `atan2 (dz, hypot (dx, dy))`.
 *
 * Source: closed form.
 *
 * Returns: the angle above the horizontal [rad], in [-pi/2, pi/2]; 0 from a point to itself
 */
double
lr_elevation_rad (LrVec3 from_m,
                  LrVec3 to_m)
{
  LrVec3 way = lr_vec3_sub (to_m, from_m);

  return atan2 (way.z, hypot (way.x, way.y));
}

/**
 * lr_camera_angle_rad:
 * @subject_m: the point of the subject that it is measured at, in plan [m]
 * @a_m: a camera [m], not at the subject
 * @b_m: another [m], not at the subject
 * @angle_rad: (out): between them, at the subject [rad], in [0, pi]
 *
 * `|atan2 (a × b, a · b)|`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @angle_rad untouched, unless the points are finite and the cameras
 *   elsewhere
 */
bool
lr_camera_angle_rad (LrVec2  subject_m,
                     LrVec2  a_m,
                     LrVec2  b_m,
                     double *angle_rad)
{
  if (!is_pair (subject_m, a_m) || !is_pair (subject_m, b_m))
    return false;

  *angle_rad = fabs (turn_rad (subject_m, a_m, b_m));
  return true;
}

/* A camera's place as the turn from the line, measured towards the side to keep (LR_SIDE_LEFT if
 * there is none) */
typedef struct
{
  LrSide keep_side;
  double a_rad;
  double wanted_rad;
} AngleRule;

static bool
rule_allows (const AngleRule *rule,
             double           b_rad)
{
  if (fabs (lr_angle_wrap_rad (b_rad - rule->a_rad)) < rule->wanted_rad)
    return false;

  return rule->keep_side == LR_SIDE_ON_LINE || (b_rad > 0.0 && b_rad < LR_PI);
}

/* The allowed arcs end at a's two limits and, if b is on the wrong side, at the line */
static bool
nearest_allowed (const AngleRule *rule,
                 double           b_rad,
                 double          *turn)
{
  double off_rad = fmin (rule->wanted_rad + SLACK_RAD, LR_PI);
  double ends_rad[] = { rule->a_rad + off_rad, rule->a_rad - off_rad, SLACK_RAD, LR_PI - SLACK_RAD };
  bool has_turn = false;

  for (int i = 0; i < 4; i++)
    {
      double end_rad = lr_angle_wrap_rad (ends_rad[i]);
      double way_rad = lr_angle_wrap_rad (end_rad - b_rad);

      if (rule_allows (rule, end_rad) && (!has_turn || fabs (way_rad) < fabs (*turn)))
        {
          *turn = way_rad;
          has_turn = true;
        }
    }

  return has_turn;
}

/**
 * lr_camera_angle_mend:
 * @subject_m: the subject's eyes in plan [m]
 * @interviewer_m: the interviewer's eyes [m], elsewhere
 * @a_m: the camera that stays [m], not at the subject
 * @b_m: the camera that moves [m], not at the subject
 * @wanted_rad: angle between the two at least [rad], in (0, pi]
 * @keep_side: the side of the line on which b stands afterwards; %LR_SIDE_ON_LINE if that is all
 *   one
 * @moved_m: (out): where b stands then [m]; @b_m itself if nothing is wrong
 *
 * The smallest turn of b about the subject. As in lr_line_mend() the result keeps 1e-7 rad more
 * than asked.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @moved_m untouched, unless every number is in its domain and there is such
 *   a place
 */
bool
lr_camera_angle_mend (LrVec2  subject_m,
                      LrVec2  interviewer_m,
                      LrVec2  a_m,
                      LrVec2  b_m,
                      double  wanted_rad,
                      LrSide  keep_side,
                      LrVec2 *moved_m)
{
  double sign = keep_side == LR_SIDE_RIGHT ? -1.0 : 1.0;
  AngleRule rule = { .keep_side = keep_side, .wanted_rad = wanted_rad };
  double b_rad, turn = 0.0;

  if (!is_pair (subject_m, interviewer_m) || !is_pair (subject_m, a_m) || !is_pair (subject_m, b_m)
      || !lr_is_positive (wanted_rad) || wanted_rad > LR_PI)
    return false;

  rule.a_rad = sign * turn_rad (subject_m, interviewer_m, a_m);
  b_rad = sign * turn_rad (subject_m, interviewer_m, b_m);
  if (rule_allows (&rule, b_rad))
    {
      *moved_m = b_m;
      return true;
    }

  if (!nearest_allowed (&rule, b_rad, &turn))
    return false;

  *moved_m = turned_about (subject_m, b_m, sign * turn);
  return true;
}
