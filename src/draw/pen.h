/* pen.h - what all symbols are drawn with: shapes in metres, edges in device units
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "view.h"

typedef struct
{
  cairo_t        *cr;     /* its unit is a metre, y up */
  const LrView   *view;
  const LrTheme  *theme;
  double          px_m;   /* one pixel of the screen's figures [m] */
  const LrPlaced *placed;
  const LrItem   *item;
  const LrSetup  *setup;  /* may be NULL: the Tray */
} LrPen;

LrPen  lr_pen            (cairo_t *cr, const LrView *view, const LrPlaced *placed, const LrSetup *setup);
/* The larger of a true size and a least size on the device */
double lr_pen_at_least   (const LrPen *pen, double size_m, double least_px);
/* From the room into the item's own frame */
LrVec2 lr_pen_to_item    (const LrPen *pen, LrVec2 at_m);

/* Paths */
void   lr_pen_box        (const LrPen *pen, double x0_m, double y0_m, double x1_m, double y1_m);
void   lr_pen_round_box  (const LrPen *pen, double x0_m, double y0_m, double x1_m, double y1_m, double radius_m);
void   lr_pen_capsule    (const LrPen *pen, LrVec2 a_m, LrVec2 b_m, double radius_m);
void   lr_pen_disc       (const LrPen *pen, double x_m, double y_m, double radius_m);
void   lr_pen_ellipse    (const LrPen *pen, double x_m, double y_m, double half_x_m, double half_y_m);
void   lr_pen_segment    (const LrPen *pen, double x0_m, double y0_m, double x1_m, double y1_m);
/* 45° strokes [m] from every step along a line of the item's y axis, left and down from it */
void   lr_pen_hatch_edge (const LrPen *pen, double x_m, double from_y_m, double to_y_m, double step_m, double length_m);

/* Ends of paths */
void   lr_pen_fill       (const LrPen *pen, LrColor color);
void   lr_pen_stroke     (const LrPen *pen, LrColor color, LrLineWeight weight, LrDash dash);
void   lr_pen_paint      (const LrPen *pen, LrColor fill, LrColor edge, LrLineWeight weight);
/* A stroke with square cut ends */
void   lr_pen_bar        (const LrPen *pen, LrColor color, LrLineWeight weight);

/* Three legs on their footprint ring, the first at @first_rad */
void   lr_pen_stand      (const LrPen *pen, double radius_m, double first_rad);

/* One drawing function per kind of item */
typedef void (*LrSymbolFunc) (const LrPen *pen);

void lr_symbol_person      (const LrPen *pen);
void lr_symbol_camera      (const LrPen *pen);
void lr_symbol_light       (const LrPen *pen);
void lr_symbol_microphone  (const LrPen *pen);
void lr_symbol_noise       (const LrPen *pen);
void lr_symbol_panel       (const LrPen *pen);
void lr_symbol_lead        (const LrPen *pen);
void lr_symbol_furniture   (const LrPen *pen);
void lr_symbol_door        (const LrPen *pen);
void lr_symbol_window      (const LrPen *pen);
void lr_symbol_socket      (const LrPen *pen);
void lr_symbol_circuit     (const LrPen *pen);
void lr_symbol_house_light (const LrPen *pen);
void lr_symbol_lens        (const LrPen *pen);

/* Parts of a lead, whose marks follow its path */
void lr_symbol_lead_band   (const LrPen *pen, LrColor color, double alpha, double extra);
void lr_symbol_lead_line   (const LrPen *pen);
LrDash lr_symbol_lead_dash (const LrSetup *setup, const char *circuit);

/* Sizes that more than one file needs [m] */
#define LR_WALL_M 0.14            /* band outside the corners; a convention: the inner face is the truth */
#define LR_DOOR_LEAF_M 0.04
#define LR_LAVALIER_AHEAD_M 0.115 /* on the wearer's breastbone */
#define LR_LAVALIER_LEFT_M 0.045
