/* sightlines.h - the line of action, the look and the angle between cameras
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

typedef enum
{
  LR_SIDE_ON_LINE = 0,
  LR_SIDE_LEFT = 1,  /* left of the line as one looks from the subject to the interviewer */
  LR_SIDE_RIGHT = -1
} LrSide;

/* Side of the line from the subject's eyes through the interviewer's on which a camera stands */
LrSide lr_line_side (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 camera_m);
/* Angle at the subject between the line and the camera, 0 on the line, in [0, pi/2]: how far it is from crossing */
bool   lr_line_margin_rad (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 camera_m, double *margin_rad);
/* Distance of the camera from the (unbounded) line [m] */
bool   lr_line_distance_m (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 camera_m, double *distance_m);
/* Smallest move of the camera, on its circle round the subject, to the wanted side and at least margin_rad off the line */
bool   lr_line_mend (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 camera_m, LrSide side, double margin_rad, LrVec2 *moved_m);
/* Signed horizontal angle from the way to the lens to the way to the interviewer, at the subject: atan2 (v × g, v · g) */
bool   lr_gaze_rad (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 camera_m, double *gaze_rad);
/* Elevation of to, seen from from [rad] */
double lr_elevation_rad (LrVec3 from_m, LrVec3 to_m);
/* Angle at the subject between two cameras, in plan, in [0, pi] */
bool   lr_camera_angle_rad (LrVec2 subject_m, LrVec2 a_m, LrVec2 b_m, double *angle_rad);
/* Smallest move of b on its circle round the subject that makes the angle to a at least wanted_rad; keep_side: the side of the line to stay on */
bool   lr_camera_angle_mend (LrVec2 subject_m, LrVec2 interviewer_m, LrVec2 a_m, LrVec2 b_m, double wanted_rad, LrSide keep_side, LrVec2 *moved_m);
