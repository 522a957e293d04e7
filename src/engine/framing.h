/* framing.h - how a frame cuts a person
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "body.h"
#include "projection.h"

/* From the tightest to the widest */
typedef enum
{
  LR_SHOT_EXTREME_CLOSE_UP,
  LR_SHOT_BIG_CLOSE_UP,
  LR_SHOT_CLOSE_UP,
  LR_SHOT_MEDIUM_CLOSE_UP,
  LR_SHOT_MEDIUM,
  LR_SHOT_MEDIUM_LONG,
  LR_SHOT_THREE_QUARTER,
  LR_SHOT_FULL,
  LR_SHOT_LONG,
  LR_N_SHOTS
} LrShot;

/* What a frame holds of a person, in the upright plane of their eyes */
typedef struct
{
  double top_m, bottom_m; /* heights at which the frame's edges meet that plane */
  double headroom;        /* share of the frame's height above the crown; < 0 when it is cropped */
  double eyes_down;       /* share of the frame's height above the eyes; outside 0..1 when they are not in it */
  LrShot shot;
} LrFraming;

/* Where a frame's edge must not cut */
typedef enum { LR_JOINT_NECK, LR_JOINT_ELBOW, LR_JOINT_KNEE, LR_N_JOINTS } LrJoint;

typedef struct
{
  LrJoint joint;
  double  above_m; /* above the frame's lower edge, where the joint is; < 0 under it */
} LrJointCut;

bool lr_framing (const LrBody *body, double top_m, double bottom_m, LrFraming *framing);
/* Frame height [m] that makes the shot, and the eyes' place in it */
bool lr_shot_frame_height_m (LrShot shot, const LrBody *body, double *height_m, double *eyes_down);
/* Share of a frame of this height that the same rule leaves above the eyes */
bool lr_eyes_down_for_height (const LrBody *body, double height_m, double *eyes_down);
/* The joint that is nearest to the frame's lower edge, of a person who stands or sits there */
bool lr_joint_cut (const LrBody *body, LrVec2 at_m, double facing_rad, const LrProjection *projection, LrJointCut *cut);
/* Share of the frame's width that lies ahead of the face */
bool lr_look_room (double across, double look_across, double *room);
/* Steps from one size to the other: 0 the same, 1 neighbours */
int  lr_shot_steps (LrShot a, LrShot b);
