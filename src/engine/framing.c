/* framing.c - how a frame cuts a person
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The names of shots are common practice, without a standard; the bottom edge decides. Books
 * (Mascelli, The Five C's of Cinematography; Thompson & Bowen, Grammar of the Shot; Millerson &
 * Owens, Television Production) agree on chest, waist, mid-thigh and knees and differ on the names,
 * so a user interface shows the cut beside the name.
 *
 * With b the height of the cut as a fraction of stature H, a frame F high has two wishes: a
 * headroom of a tenth, F1 = (1 - b) H / 0.9, and the eyes a third down, F2 = 1.5 (0.936 - b) H.
 * They agree around the medium close-up. Wider, the third leaves a fifth and more above the head;
 * tighter, the headroom pushes the eyes to the middle. So F = min (F1, F2).
 *
 * A frame does not end at a joint, or the limb seems to end there. The joints are neck, elbow and
 * knee: the medium shot ends at the waist by its name. The three-quarter shot, that of the knees,
 * is therefore cut a little under them, at 0.25 of stature, for the knee is at 0.285.
 */

#include "framing.h"

#include "domain.h"

#include <stdlib.h>

#define HEADROOM 0.10
#define FOOTROOM 0.05
#define EYES_DOWN (1.0 / 3.0)
#define UNDER_KNEES (0.25 / 0.285) /* of the knees' height */
#define THROAT_AHEAD_M (0.5 * LR_EYES_AHEAD_M) /* of the middle of the head; no source */
#define LONG_FIGURE (2.0 / 3.0) /* a long shot's figure fills this much of the frame, or less */

/* An extreme close-up is 0.05 H to 0.08 H high, brow to mouth; a big close-up is 0.1065 H */
#define EXTREME_HEIGHT 0.065
#define EXTREME_LIMIT (0.5 * (0.08 + 0.1065))

/* Where the bottom edge cuts above the hip, as a fraction of stature */
static const double cuts[LR_SHOT_MEDIUM + 1] = {
  [LR_SHOT_BIG_CLOSE_UP] = 0.865,    /* at the chin */
  [LR_SHOT_CLOSE_UP] = 0.80,         /* just under the shoulders */
  [LR_SHOT_MEDIUM_CLOSE_UP] = 0.72,  /* mid-chest */
  [LR_SHOT_MEDIUM] = 0.60,           /* waist */
};

/* Height above the floor at which the bottom edge of a well framed shot lies */
static double
cut_height_m (LrShot        shot,
              const LrBody *body)
{
  switch (shot)
    {
    case LR_SHOT_EXTREME_CLOSE_UP:
      return body->eyes_m - (1.0 - EYES_DOWN) * EXTREME_HEIGHT * body->stature_m;
    case LR_SHOT_BIG_CLOSE_UP:
    case LR_SHOT_CLOSE_UP:
    case LR_SHOT_MEDIUM_CLOSE_UP:
    case LR_SHOT_MEDIUM:
      return body->crown_m - (1.0 - cuts[shot]) * body->stature_m;
    case LR_SHOT_MEDIUM_LONG:
      return body->thigh_m;
    case LR_SHOT_THREE_QUARTER: /* seated, the thighs hide the knees' height: half-way down the shins */
      return body->is_seated ? 0.5 * (body->knee_m + body->floor_m) : UNDER_KNEES * body->knee_m;
    case LR_SHOT_FULL:
    case LR_SHOT_LONG:
    case LR_N_SHOTS:
    default:
      return body->floor_m;
    }
}

/* Under it the next wider name begins: half-way between two cuts. Seated, the lap is little lower than the waist, and a frame
 * that ends at the hip shows no thighs: there the medium shot goes half-way from hip to lap */
static double
name_limit_m (LrShot        shot,
              const LrBody *body)
{
  double over_m = cut_height_m (shot, body);

  if (shot == LR_SHOT_MEDIUM && body->is_seated && body->hip_m > body->thigh_m)
    over_m = body->hip_m;

  return 0.5 * (over_m + cut_height_m (shot + 1, body));
}

/* By where the bottom edge cuts */
static LrShot
shot_by_cut (const LrBody *body,
             double        top_m,
             double        bottom_m)
{
  double figure_m = body->crown_m - body->floor_m;
  LrShot shot = LR_SHOT_BIG_CLOSE_UP;

  while (shot < LR_SHOT_FULL && bottom_m < name_limit_m (shot, body))
    shot++;

  if (shot == LR_SHOT_BIG_CLOSE_UP && top_m - bottom_m < EXTREME_LIMIT * body->stature_m)
    return LR_SHOT_EXTREME_CLOSE_UP;
  if (shot == LR_SHOT_FULL && figure_m <= LONG_FIGURE * (top_m - bottom_m))
    return LR_SHOT_LONG;
  return shot;
}

/* By the frame's height alone, for a frame that does not hold the eyes */
static LrShot
shot_by_height (const LrBody *body,
                double        height_m)
{
  double nominal_m[LR_N_SHOTS], eyes_down;
  LrShot shot;

  for (shot = 0; shot < LR_N_SHOTS; shot++)
    if (!lr_shot_frame_height_m (shot, body, &nominal_m[shot], &eyes_down))
      return LR_SHOT_LONG;

  for (shot = 0; shot < LR_SHOT_LONG; shot++)
    if (height_m < 0.5 * (nominal_m[shot] + nominal_m[shot + 1]))
      break;

  return shot;
}

/**
 * lr_framing:
 * @body: the person, from lr_body()
 * @top_m: height of the frame's upper edge in the plane of the eyes [m]
 * @bottom_m: height of its lower edge [m], < @top_m
 * @framing: (out): headroom, place of the eyes, and the shot
 *
 * Names the shot by where the lower edge cuts the person, half-way between two cuts of the table at
 * the head of this file; extreme and big close-ups differ by the height of the frame, full and long
 * shots by whether the figure fills more than two thirds of it. Seated, the cuts above the hip keep
 * their distance from the crown, a medium long shot cuts at the lap, a three-quarter shot at the
 * shins. Where the eyes are not in the frame the cut says nothing, and the height of the frame
 * alone decides.
 *
 * Source: common practice, see the head of this file; the figures are ours.
 *
 * Returns: %FALSE, with @framing untouched, unless both heights are finite, @top_m > @bottom_m and
 *   some of the person's height lies between them
 */
bool
lr_framing (const LrBody *body,
            double        top_m,
            double        bottom_m,
            LrFraming    *framing)
{
  double height_m = top_m - bottom_m;
  double eyes_down;

  if (!isfinite (top_m) || !isfinite (bottom_m) || !lr_is_positive (height_m)
      || bottom_m >= body->crown_m || top_m <= body->floor_m)
    return false;

  eyes_down = (top_m - body->eyes_m) / height_m;

  framing->top_m = top_m;
  framing->bottom_m = bottom_m;
  framing->headroom = (top_m - body->crown_m) / height_m;
  framing->eyes_down = eyes_down;
  framing->shot = eyes_down >= 0.0 && eyes_down <= 1.0 ? shot_by_cut (body, top_m, bottom_m)
                                                       : shot_by_height (body, height_m);
  return true;
}

/**
 * lr_shot_frame_height_m:
 * @shot: the shot that is wanted
 * @body: the person, from lr_body()
 * @height_m: (out): height of the frame in the plane of the eyes [m]
 * @eyes_down: (out): share of it that lies above the eyes
 *
 * `min (d / 0.9, 1.5 (d - e))`, d the cut's distance and e the eyes' distance below the crown: a
 * tenth of headroom, or the eyes a third down where that is tighter. A full shot has a tenth above
 * and a twentieth below the figure; a long shot is half as high again as the figure, as much above
 * as below.
 *
 * Source: common practice, see the head of this file; the figures are ours.
 *
 * Returns: %FALSE, with the outputs untouched, if @shot is none or the person is not higher than
 *   the cut
 */
bool
lr_shot_frame_height_m (LrShot        shot,
                        const LrBody *body,
                        double       *height_m,
                        double       *eyes_down)
{
  double cut_m = body->crown_m - cut_height_m (shot, body);
  double eyes_m = body->crown_m - body->eyes_m;

  if ((int) shot < 0 || shot >= LR_N_SHOTS || !lr_is_positive (eyes_m) || !(cut_m > eyes_m))
    return false;

  if (shot == LR_SHOT_LONG)
    {
      *height_m = cut_m / LONG_FIGURE;
      *eyes_down = 0.5 * (1.0 - LONG_FIGURE) + eyes_m / *height_m;
    }
  else if (shot == LR_SHOT_FULL)
    {
      *height_m = cut_m / (1.0 - HEADROOM - FOOTROOM);
      *eyes_down = HEADROOM + eyes_m / *height_m;
    }
  else
    {
      *height_m = fmin (cut_m / (1.0 - HEADROOM), (cut_m - eyes_m) / (1.0 - EYES_DOWN));
      *eyes_down = 1.0 - (cut_m - eyes_m) / *height_m;
    }
  return true;
}

/**
 * lr_eyes_down_for_height:
 * @body: the person, from lr_body()
 * @height_m: height of a frame in the plane of the eyes [m], > 0
 * @eyes_down: (out): share of it above the eyes, in (0, 1/3]
 *
 * The rule of lr_shot_frame_height_m() for any frame, tighter than a full shot: `min (1/3, 1/10 +
 * e / F)`, e the eyes' distance below the crown.
 *
 * Source: common practice, see the head of this file; the figures are ours.
 *
 * Returns: %FALSE, with @eyes_down untouched, unless @height_m is finite and > 0
 */
bool
lr_eyes_down_for_height (const LrBody *body,
                         double        height_m,
                         double       *eyes_down)
{
  if (!lr_is_positive (height_m))
    return false;

  *eyes_down = fmin (EYES_DOWN, HEADROOM + (body->crown_m - body->eyes_m) / height_m);
  return true;
}

/* Nearest to the frame's lower edge so far; a joint beside the frame is not cut */
static void
try_joint (const LrProjection *projection,
           LrJoint             joint,
           LrVec3              at_m,
           LrJointCut         *cut)
{
  LrFramePoint place;
  double above_m;

  if (!lr_projection_point (projection, at_m, &place) || place.across < 0.0 || place.across > 1.0)
    return;

  above_m = (1.0 - place.down) * 2.0 * projection->half_height * place.depth_m;
  if (cut->joint == LR_N_JOINTS || fabs (above_m) < fabs (cut->above_m))
    *cut = (LrJointCut) { joint, above_m };
}

/**
 * lr_joint_cut:
 * @body: the person, from lr_body()
 * @at_m: the middle of their head, on the floor [m]
 * @facing_rad: where their shoulders face [rad]
 * @projection: the camera
 * @cut: (out): the joint and how far it is above the lower edge [m], measured square to the axis at
 *   the joint's own depth
 *
 * Of the neck, both elbows and, of a person who stands, the knees, the one nearest to the lower
 * edge, among those that lie within the frame's width. The upper edge cuts no joint of a person
 * whose eyes are in the frame, and along the sides arms run with the edge. Seated, thighs run ahead
 * and shins and feet go where they like: no knee is given. Elbows hang at half the width of the
 * shoulders; whether the trunk hides one is not asked.
 *
 * Source: central projection; which joints count is common practice, see the head of this file.
 *
 * Returns: %FALSE, with @cut untouched, if no joint is before the camera and within the width
 */
bool
lr_joint_cut (const LrBody       *body,
              LrVec2              at_m,
              double              facing_rad,
              const LrProjection *projection,
              LrJointCut         *cut)
{
  LrVec2 left = lr_vec2_polar (facing_rad + 0.5 * LR_PI, 0.5 * body->shoulder_width_m);
  LrVec2 ahead = lr_vec2_polar (facing_rad, 1.0);
  LrJointCut nearest = { LR_N_JOINTS, HUGE_VAL };

  try_joint (projection, LR_JOINT_NECK, lr_vec2_raise (lr_vec2_along (at_m, ahead, THROAT_AHEAD_M), body->neck_m), &nearest);
  try_joint (projection, LR_JOINT_ELBOW, lr_vec2_raise (lr_vec2_add (at_m, left), body->elbow_m), &nearest);
  try_joint (projection, LR_JOINT_ELBOW, lr_vec2_raise (lr_vec2_sub (at_m, left), body->elbow_m), &nearest);
  if (!body->is_seated)
    try_joint (projection, LR_JOINT_KNEE, lr_vec2_raise (at_m, body->knee_m), &nearest);
  if (nearest.joint == LR_N_JOINTS)
    return false;

  *cut = nearest;
  return true;
}

/**
 * lr_look_room:
 * @across: where the face is in the frame: 0 its left edge, 1 its right one
 * @look_across: the look's part to the right of the frame, of any length; < 0 to the left
 * @room: (out): share of the frame's width ahead of the face
 *
 * With the face at a third of the width and looking into the other two thirds it is 2/3; under a
 * half the frame is short-sided.
 *
 * Source: common practice.
 *
 * Returns: %FALSE, with @room untouched, unless the face is in the frame and looks to a side
 */
bool
lr_look_room (double  across,
              double  look_across,
              double *room)
{
  if (!(across >= 0.0 && across <= 1.0) || !isfinite (look_across) || look_across == 0.0)
    return false;

  *room = look_across > 0.0 ? 1.0 - across : across;
  return true;
}

/**
 * lr_shot_steps:
 * @a: a shot
 * @b: another
 *
 * How far two sizes lie apart in the order of #LrShot. Two cameras that are cut against each other
 * should differ by two steps or stand 30 degrees apart (common practice, no source).
 *
 * Returns: 0 for the same size, 1 for neighbours, and so on
 */
int
lr_shot_steps (LrShot a,
               LrShot b)
{
  return abs ((int) a - (int) b);
}
