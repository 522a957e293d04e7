/* figure_parts.h - what the parts of a figure share: its frames, its light, round shapes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figure.h"

/* An ellipsoid: its middle and half axes in the room, at right angles to each other [m] */
typedef struct
{
  LrVec3 at_m, x, y, z;
} LrBead;

/* Light across a round shape: from its lit to its dark side in the picture */
typedef struct
{
  LrVec2 middle, along; /* along: unit */
  double reach;         /* half extent, device units */
  LrVec3 side, towards; /* the same direction in the room, and the way to the lens */
} LrShading;

typedef struct
{
  const LrPainter *painter;
  const LrScene   *scene;
  const LrPlaced  *placed;
  const LrPerson  *person;
  LrModelling      modelling; /* the light on this one */
  LrAxes           body;      /* on the floor under the head, facing as the body does */
  LrAxes           head;      /* between the eyes, facing as they look */
  double           k;         /* stature over that of the tables, 1.70 m */
  double           head_m;    /* height of the head */
  double           shoulder_m, seat_m, hip_m;
  gboolean         is_seated;
  double           head_px;   /* height of the head in the picture: what detail it can hold */
  double           soft;      /* radius of the blur disc at the head, device units */
  double           head_seen_rad, trunk_seen_rad; /* how far round from what faces the lens a drawing on the surface reaches */
  LrMaterial       skin, hair, jacket, trousers, shirt, shoes;
} LrFigure;

LrBead lr_bead_round   (LrVec3 at_m, double radius_m);
LrBead lr_bead_in      (const LrAxes *axes, double x, double y, double z, double rx, double ry, double rz);

/* @direction: of the shading in the picture; the key's when it is 0, 0 */
void   lr_figure_shading (const LrFigure *figure, LrVec3 at_m, double radius_m, LrVec2 direction, LrShading *shading);
/* Sets the source of the painter to the material in that light */
void   lr_figure_set_source (const LrFigure *figure, const LrShading *shading, LrMaterial material, double alpha);
double  lr_figure_light (const LrFigure *figure, LrVec3 normal);
LrColor lr_figure_tone   (const LrFigure *figure, LrMaterial material, double light);
/* Beads joined one to the next */
void   lr_figure_chain   (const LrFigure *figure, const LrBead *beads, guint n, const LrShading *shading,
                          LrMaterial material);
/* Several chains of @n beads each, as one shape */
void   lr_figure_chains  (const LrFigure *figure, const LrBead *beads, guint n_chains, guint n,
                          const LrShading *shading,
                          LrMaterial material);
/* A limb of round beads, lit across its length */
void   lr_figure_limb    (const LrFigure *figure, const LrVec3 *at_m, const double *radius_m, guint n,
                          LrMaterial material);

/* Shapes drawn on the surface */
typedef struct
{
  double around_deg, up_m, lift_m;
} LrSpot;

/* Add to the path: a chain of beads grown by some metres; a smooth curve through points */
void   lr_figure_outline (const LrPainter *painter, const LrBead *beads, guint n, double grow_m);
void   lr_figure_path (const LrPainter *painter, const LrVec2 *points, guint n, gboolean is_closed);
void   lr_figure_fill (const LrFigure *figure, const LrVec2 *points, guint n, LrColor color, double alpha);
/* Strokes the path, which is taken, in the tone that fills it: a softer edge where the head is out of focus */
void   lr_figure_soften (const LrFigure *figure, LrColor color, double alpha);
void   lr_figure_line (const LrFigure *figure, const LrVec2 *points, guint n, double width_m, LrColor color,
                       double alpha);

void   lr_figure_paint_head  (const LrFigure *figure);                 /* figure_head.c */
void   lr_figure_paint_face  (const LrFigure *figure);                 /* figure_face.c */
void   lr_figure_paint_neck  (const LrFigure *figure);                 /* figure_body.c */
void   lr_figure_paint_upper (const LrFigure *figure);
void   lr_figure_paint_lap   (const LrFigure *figure);
void   lr_figure_paint_legs  (const LrFigure *figure);
void   lr_figure_paint_jacket (const LrFigure *figure);                /* figure_clothes.c */
void   lr_figure_paint_hand  (const LrFigure *figure, const LrAxes *wrist, int side); /* figure_hand.c */
