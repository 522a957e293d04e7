/* figure_body.c - trunk, neck, arms and legs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tables are for a stature of 1.70 m, scaled by the person's own; heights come from the body. Breadths and depths
 * after ANSUR II means (Gordon et al. 2014), with a jacket's ease; from memory.
 */

#include "figure_parts.h"

#define N_LIMB 4

/* A level slice of the trunk: over the shoulder's height, half breadth, half depth, middle ahead of the
 * head's, half height [m] */
typedef struct
{
  double up_m, half_y_m, half_x_m, ahead_m, half_z_m;
} Slice;

static const Slice trunk[] = {
  { 0.070, 0.065, 0.063, -0.030, 0.010 },
  { 0.052, 0.074, 0.066, -0.030, 0.010 },
  { 0.036, 0.098, 0.072, -0.030, 0.012 },
  { 0.014, 0.142, 0.086, -0.026, 0.018 },
  { -0.022, 0.176, 0.100, -0.018, 0.030 },
  { -0.090, 0.184, 0.118, -0.004, 0.040 },
  { -0.170, 0.174, 0.124, 0.004, 0.050 },
  { -0.270, 0.164, 0.120, 0.002, 0.050 },
  { -0.370, 0.160, 0.118, -0.002, 0.050 },
};

static LrVec3
body_point (const LrFigure *figure,
            double          x,
            double          y,
            double          z_m)
{
  return lr_axes_point (&figure->body, x * figure->k, y * figure->k, z_m);
}

static LrBead
slice_bead (const LrFigure *figure,
            const Slice    *slice)
{
  double k = figure->k;

  return lr_bead_in (&figure->body, slice->ahead_m * k, 0.0, figure->shoulder_m + slice->up_m * k, slice->half_x_m * k,
                     slice->half_y_m * k, slice->half_z_m * k);
}

static void
paint_trunk (const LrFigure *figure)
{
  LrBead beads[G_N_ELEMENTS (trunk) + 2];
  double hip_up_m = (figure->hip_m - figure->shoulder_m) / figure->k;
  Slice hip = { fmin (hip_up_m + 0.03, -0.40), 0.176, 0.124, -0.010, 0.05 };
  Slice hem = { hip.up_m - 0.07, 0.180, 0.126, -0.012, 0.04 };
  LrShading shading;
  guint n = 0;

  for (; n < G_N_ELEMENTS (trunk); n++)
    beads[n] = slice_bead (figure, &trunk[n]);
  beads[n++] = slice_bead (figure, &hip);
  beads[n++] = slice_bead (figure, &hem);

  /* Shaded from side to side, as a round column is */
  lr_figure_shading (figure, body_point (figure, 0.0, 0.0, figure->shoulder_m - 0.18 * figure->k), 0.20 * figure->k,
                     lr_vec2 (1.0, 0.12), &shading);
  lr_figure_chain (figure, beads, n, &shading, figure->jacket);
}

/**
 * lr_figure_paint_neck:
 * @figure: a person
 */
void
lr_figure_paint_neck (const LrFigure *figure)
{
  LrMaterial skin = { figure->skin.hue, 0.74 * figure->skin.reflectance }; /* in the shade of the chin */
  double k = figure->k, r = 0.052 * k, chin_m = figure->placed->body.chin_m;
  LrBead beads[3] = {
    lr_bead_in (&figure->body, -0.012 * k, 0.0, chin_m + 0.045 * k, r, r, r),
    lr_bead_in (&figure->body, -0.022 * k, 0.0, chin_m + 0.005 * k, r, r, 0.03 * k),
    lr_bead_in (&figure->body, -0.029 * k, 0.0, figure->shoulder_m + 0.070 * k, 1.04 * r, 1.04 * r, 0.006 * k),
  };
  LrShading shading;

  lr_figure_shading (figure, beads[1].at_m, r, lr_vec2 (1.0, 0.05), &shading);
  lr_figure_chain (figure, beads, G_N_ELEMENTS (beads), &shading, skin);
}

static void
paint_upper_arm (const LrFigure *figure,
                 int             side)
{
  double s = figure->shoulder_m, k = figure->k;
  double out = figure->is_seated ? 0.222 : 0.226, back = figure->is_seated ? -0.012 : -0.034;
  LrVec3 at_m[N_LIMB] = {
    body_point (figure, -0.014, side * 0.158, s - 0.064 * k),
    body_point (figure, -0.018, side * 0.184, s - 0.120 * k),
    body_point (figure, -0.022, side * 0.204, s - 0.200 * k),
    body_point (figure, back, side * out, s - 0.300 * k),
  };
  double radius_m[N_LIMB] = { 0.062 * k, 0.059 * k, 0.054 * k, 0.049 * k };

  lr_figure_limb (figure, at_m, radius_m, N_LIMB, figure->jacket);
}

/* Wrist of a forearm at rest: on the lap, or beside the thigh */
static LrVec3
wrist_m (const LrFigure *figure,
         int             side)
{
  if (figure->is_seated)
    return body_point (figure, 0.205, side * 0.088, figure->seat_m + (0.195 + (side > 0 ? 0.0 : 0.018)) * figure->k);

  return body_point (figure, 0.035, side * 0.238, figure->shoulder_m - 0.535 * figure->k);
}

static void
paint_forearm (const LrFigure *figure,
               int             side)
{
  double k = figure->k;
  LrVec3 elbow_m = body_point (figure, figure->is_seated ? -0.012 : -0.034, side * (figure->is_seated ? 0.222 : 0.226),
                               figure->shoulder_m - 0.300 * k);
  LrVec3 end_m = wrist_m (figure, side), way = lr_vec3_sub (end_m, elbow_m);
  LrVec3 at_m[3] = { elbow_m, lr_vec3_along (elbow_m, way, 0.35), lr_vec3_along (elbow_m, way, 0.93) };
  LrVec3 cuff_m[2] = { lr_vec3_along (elbow_m, way, 0.90), lr_vec3_along (elbow_m, way, 0.985) };
  double radius_m[3] = { 0.048 * k, 0.046 * k, 0.037 * k }, cuff_radius_m[2] = { 0.032 * k, 0.031 * k };
  LrVec3 inwards = lr_axes_direction (&figure->body, 0.62, -side * 0.74, -0.22);
  LrVec3 hand_way = figure->is_seated ? inwards : lr_axes_direction (&figure->body, 0.12, -side * 0.10, -1.0);
  LrAxes hand = { .origin_m = end_m };

  hand.x = lr_vec3_scale (hand_way, 1.0 / lr_vec3_length (hand_way));
  hand.z = figure->is_seated ? lr_vec3 (0.0, 0.0, 1.0) : lr_axes_direction (&figure->body, 0.25, side * 1.0, 0.0);
  hand.y = lr_vec3_cross (hand.z, hand.x);
  hand.y = lr_vec3_scale (hand.y, 1.0 / lr_vec3_length (hand.y));
  hand.z = lr_vec3_cross (hand.x, hand.y);

  lr_figure_paint_hand (figure, &hand, side);
  lr_figure_limb (figure, cuff_m, cuff_radius_m, 2, figure->shirt);
  lr_figure_limb (figure, at_m, radius_m, 3, figure->jacket);
}

/* Depth of a point of the body from the lens */
static double
depth_of (const LrFigure *figure,
          double          x,
          double          y,
          double          z_m)
{
  return lr_painter_depth_m (figure->painter, body_point (figure, x, y, z_m));
}

/**
 * lr_figure_paint_upper:
 * @figure: a person
 *
 * The far arm, the trunk with neck and collar, the near arm, the head. Seen from behind, the neck is under the
 * collar and the forearms of one who stands under the trunk.
 */
void
lr_figure_paint_upper (const LrFigure *figure)
{
  double s = figure->shoulder_m, elbow_m = s - 0.30 * figure->k;
  double trunk_depth = depth_of (figure, 0.0, 0.0, s - 0.15 * figure->k);
  gboolean is_from_behind = depth_of (figure, 0.3, 0.0, s) > depth_of (figure, -0.3, 0.0, s);
  gboolean is_near[2];

  for (int i = 0; i < 2; i++)
    {
      int side = i == 0 ? -1 : 1;

      is_near[i] = depth_of (figure, -0.02, side * 0.2, elbow_m) < trunk_depth + 0.07;
      if (!is_near[i] && !figure->is_seated && is_from_behind)
        paint_forearm (figure, side);
      if (!is_near[i])
        paint_upper_arm (figure, side);
      if (!is_near[i] && !figure->is_seated && !is_from_behind)
        paint_forearm (figure, side);
    }

  if (is_from_behind)
    lr_figure_paint_neck (figure);
  paint_trunk (figure);
  lr_figure_paint_jacket (figure);

  for (int i = 0; i < 2; i++)
    if (is_near[i])
      {
        int side = i == 0 ? -1 : 1;

        if (is_from_behind && !figure->is_seated)
          paint_forearm (figure, side);
        paint_upper_arm (figure, side);
        if (!is_from_behind && !figure->is_seated)
          paint_forearm (figure, side);
      }

  lr_figure_paint_head (figure);
}

static void
paint_thigh (const LrFigure *figure,
             int             side)
{
  double k = figure->k, seat = figure->seat_m;
  LrVec3 at_m[3] = {
    body_point (figure, 0.02, side * 0.096, seat + 0.085 * k),
    body_point (figure, 0.25, side * 0.106, seat + 0.078 * k),
    body_point (figure, 0.46, side * 0.114, seat + 0.064 * k),
  };
  double radius_m[3] = { 0.086 * k, 0.078 * k, 0.064 * k };

  lr_figure_limb (figure, at_m, radius_m, 3, figure->trousers);
}

static void
paint_notes (const LrFigure *figure)
{
  static const double corners[4][2] = { { 0.21, -0.11 }, { 0.44, -0.11 }, { 0.44, 0.11 }, { 0.21, 0.11 } };
  LrVec3 corners_m[4];
  LrPatch patch;

  for (int i = 0; i < 4; i++)
    corners_m[i] = body_point (figure, corners[i][0], corners[i][1],
                               figure->seat_m + (0.175 - 0.10 * (corners[i][0] - 0.21)) * figure->k);
  if (lr_painter_project (figure->painter, corners_m, 4, &patch))
    lr_paint_patch (figure->painter, &patch, lr_figure_tone (figure, figure->shirt, 0.95), 1.0);
}

/**
 * lr_figure_paint_lap:
 * @figure: a seated person
 *
 * Thighs, an interviewer's notes, forearms and hands: the farther side first.
 */
void
lr_figure_paint_lap (const LrFigure *figure)
{
  double left = depth_of (figure, 0.25, 0.1, figure->seat_m), right = depth_of (figure, 0.25, -0.1, figure->seat_m);
  int far_side = left > right ? 1 : -1;

  paint_thigh (figure, far_side);
  paint_thigh (figure, -far_side);
  if (figure->person->role == LR_ROLE_INTERVIEWER)
    paint_notes (figure);
  paint_forearm (figure, 1); /* the right hand lies on the left */
  paint_forearm (figure, -1);
}

static void
paint_shoe (const LrFigure *figure,
            double          x,
            double          y,
            double          turn,
            double          floor_m)
{
  double k = figure->k;
  LrBead beads[3] = {
    lr_bead_in (&figure->body, (x - 0.02) * k, y * k, floor_m + 0.045, 0.045 * k, 0.038 * k, 0.045),
    lr_bead_in (&figure->body, (x + 0.08) * k, (y + 0.4 * turn) * k, floor_m + 0.036, 0.050 * k, 0.044 * k, 0.036),
    lr_bead_in (&figure->body, (x + 0.16) * k, (y + turn) * k, floor_m + 0.026, 0.040 * k, 0.040 * k, 0.026),
  };
  LrShading shading;

  lr_figure_shading (figure, beads[1].at_m, 0.09 * k, lr_vec2 (0.0, 0.0), &shading);
  lr_figure_chain (figure, beads, G_N_ELEMENTS (beads), &shading, figure->shoes);
}

static void
paint_seated_leg (const LrFigure *figure,
                  int             side)
{
  double k = figure->k, seat = figure->seat_m, floor_m = fmax (0.0, seat - 0.50 * k);
  LrVec3 at_m[3] = {
    body_point (figure, 0.46, side * 0.114, seat + 0.060 * k),
    body_point (figure, 0.475, side * 0.116, floor_m + 0.60 * (seat - floor_m)),
    body_point (figure, 0.49, side * 0.118, floor_m + 0.085),
  };
  double radius_m[3] = { 0.062 * k, 0.058 * k, 0.046 * k };

  paint_shoe (figure, 0.50, side * 0.118, side * 0.02, floor_m);
  lr_figure_limb (figure, at_m, radius_m, 3, figure->trousers);
}

static void
paint_standing_leg (const LrFigure *figure,
                    int             side)
{
  double k = figure->k, knee_m = figure->placed->body.knee_m;
  LrVec3 at_m[N_LIMB] = {
    body_point (figure, -0.005, side * 0.088, figure->hip_m),
    body_point (figure, 0.006, side * 0.090, 0.45 * figure->hip_m + 0.55 * knee_m),
    body_point (figure, 0.010, side * 0.092, knee_m),
    body_point (figure, -0.018, side * 0.094, fmin (0.085, 0.5 * knee_m)),
  };
  double radius_m[N_LIMB] = { 0.090 * k, 0.074 * k, 0.060 * k, 0.049 * k };

  paint_shoe (figure, -0.01, side * 0.094, side * 0.025, 0.0);
  lr_figure_limb (figure, at_m, radius_m, N_LIMB, figure->trousers);
}

/**
 * lr_figure_paint_legs:
 * @figure: a person
 */
void
lr_figure_paint_legs (const LrFigure *figure)
{
  double left = depth_of (figure, 0.4, 0.1, 0.2), right = depth_of (figure, 0.4, -0.1, 0.2);
  int far_side = left > right ? 1 : -1;

  for (int i = 0; i < 2; i++)
    {
      int side = i == 0 ? far_side : -far_side;

      if (figure->is_seated)
        paint_seated_leg (figure, side);
      else
        paint_standing_leg (figure, side);
    }
}
