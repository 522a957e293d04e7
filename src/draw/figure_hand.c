/* figure_hand.c - a hand at rest
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes for a stature of 1.70 m, from memory of ANSUR II: hand 185 mm long, 82 mm wide.
 */

#include "figure_parts.h"

#define DETAIL_PX 34.0 /* height of the head from which on fingers are drawn one by one */

/* Across the hand, from the little finger: where a finger starts, how long it is, how thick [m] */
static const double fingers[4][4] = {
  { -0.031, 0.052, 0.0078, 0.076 },
  { -0.0105, 0.064, 0.0086, 0.086 },
  { 0.0105, 0.069, 0.0090, 0.089 },
  { 0.031, 0.062, 0.0088, 0.086 },
};

static LrVec3
hand_point (const LrFigure *figure,
            const LrAxes   *hand,
            double          x,
            double          y,
            double          z)
{
  return lr_axes_point (hand, x * figure->k, y * figure->k, z * figure->k);
}

static void
paint_palm (const LrFigure *figure,
            const LrAxes   *hand)
{
  double k = figure->k;
  LrBead beads[3] = {
    lr_bead_in (hand, 0.005 * k, 0.0, 0.0, 0.024 * k, 0.027 * k, 0.020 * k),
    lr_bead_in (hand, 0.045 * k, 0.0, 0.004 * k, 0.030 * k, 0.038 * k, 0.018 * k),
    lr_bead_in (hand, 0.078 * k, 0.0, 0.002 * k, 0.022 * k, 0.040 * k, 0.014 * k),
  };
  LrShading shading;

  lr_figure_shading (figure, beads[1].at_m, 0.060 * k, lr_vec2 (0.0, 0.0), &shading);
  lr_figure_chain (figure, beads, G_N_ELEMENTS (beads), &shading, figure->skin);
}

/* Four fingers in one shape, then the lines between them */
static void
paint_fingers (const LrFigure *figure,
               const LrAxes   *hand,
               int             side)
{
  const LrPainter *painter = figure->painter;
  LrBead beads[4][3];
  LrShading shading;
  double k = figure->k;

  for (int i = 0; i < 4; i++)
    {
      const double *finger = fingers[i];
      double y = side * finger[0], x = finger[3], length = finger[1];

      beads[i][0] = lr_bead_round (hand_point (figure, hand, x, y, 0.001), finger[2] * k);
      beads[i][1] = lr_bead_round (hand_point (figure, hand, x + 0.48 * length, y * 0.96, -0.004),
                                   0.94 * finger[2] * k);
      beads[i][2] = lr_bead_round (hand_point (figure, hand, x + 0.88 * length, y * 0.90, -0.020),
                                   0.80 * finger[2] * k);
    }

  lr_figure_shading (figure, hand_point (figure, hand, 0.12, 0.0, 0.0), 0.055 * k, lr_vec2 (0.0, 0.0), &shading);
  lr_figure_chains (figure, beads[0], 4, 3, &shading, figure->skin);

  for (int i = 0; i < 3; i++)
    {
      LrVec2 points[3];
      gboolean is_placed = TRUE;

      for (int j = 0; j < 3; j++)
        {
          LrVec3 between_m = lr_vec3_scale (lr_vec3_add (beads[i][j].at_m, beads[i + 1][j].at_m), 0.5);

          is_placed = is_placed && lr_painter_place (painter, between_m, &points[j]);
        }
      if (is_placed)
        lr_figure_line (figure, points, 3, 0.0022, lr_figure_tone (figure, figure->skin, 0.30), 0.55);
    }
}

static void
paint_mitten (const LrFigure *figure,
              const LrAxes   *hand)
{
  double k = figure->k;
  LrBead beads[2] = {
    lr_bead_in (hand, 0.080 * k, 0.0, 0.0, 0.02 * k, 0.037 * k, 0.013 * k),
    lr_bead_in (hand, 0.132 * k, 0.0, -0.012 * k, 0.018 * k, 0.031 * k, 0.011 * k),
  };
  LrShading shading;

  lr_figure_shading (figure, beads[0].at_m, 0.060 * k, lr_vec2 (0.0, 0.0), &shading);
  lr_figure_chain (figure, beads, G_N_ELEMENTS (beads), &shading, figure->skin);
}

/**
 * lr_figure_paint_hand:
 * @figure: a person
 * @wrist: at the wrist, x along the hand, z out of its back
 * @side: 1: left, -1: right
 *
 * A few lines of fingers lie close together, slightly bent; the thumb rests along them.
 */
void
lr_figure_paint_hand (const LrFigure *figure,
                      const LrAxes   *wrist,
                      int             side)
{
  double k = figure->k;
  /* The thumb is on the inner side: to the right of a left hand's fingers seen on its back */
  LrVec3 thumb_m[3] = {
    hand_point (figure, wrist, 0.022, side * -0.026, -0.002),
    hand_point (figure, wrist, 0.056, side * -0.043, -0.004),
    hand_point (figure, wrist, 0.088, side * -0.041, -0.010),
  };
  double thumb_radius_m[3] = { 0.0150 * k, 0.0115 * k, 0.0088 * k };

  if (figure->head_px < DETAIL_PX)
    {
      paint_mitten (figure, wrist);
      paint_palm (figure, wrist);
      return;
    }

  paint_fingers (figure, wrist, -side);
  paint_palm (figure, wrist);
  lr_figure_limb (figure, thumb_m, thumb_radius_m, 3, figure->skin);
}
