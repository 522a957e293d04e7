/* floor_layers.h - what the layers of the floor plan share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "floor.h"
#include "labels.h"
#include "pen.h"
#include "sun_patches.h"
#include "symbols.h"
#include "view.h"

typedef struct
{
  cairo_t         *cr;
  const LrPlan    *plan;
  const LrStudy   *study;
  const LrSetup   *setup;
  const LrRoom    *room;
  const LrRemarks *remarks;  /* may be NULL */
  const LrView    *view;
  const LrTheme   *theme;
  double           px;       /* one pixel of the screen's figures, device units */
  gboolean         has_base; /* ground, room and walls: not in a drag's moving layer */
  gboolean        *is_drawn; /* by index in study->placed */
  const LrPlaced  *in_hand;  /* may be NULL; only if drawn here */
  LrLabels        *labels;
} LrFloor;

/* floor_scope.c: which items a drawing holds, and their outlines on the sheet */
/* By index in study->placed: the item and all whose drawing turns on where it stands; (transfer full) */
gboolean  *lr_floor_moving        (const LrStudy *study, const char *id);
gboolean   lr_floor_has           (const LrFloor *floor, const LrPlaced *placed);
gboolean   lr_floor_has_id        (const LrFloor *floor, const char *id);
/* What hangs on several things moves with any of them */
gboolean   lr_floor_has_between   (const LrFloor *floor, const char *const *ids);
/* Outline of the drawn symbol [m]: the footprint, or what stands for it; FALSE: it is nowhere */
gboolean   lr_floor_outline       (const LrStudy *study, const LrView *view, const LrPlaced *placed, LrOutline *outline);
/* Transformation to the item's own metres */
void       lr_floor_to_item       (cairo_t *cr, const LrView *view, const LrPlaced *placed);
void       lr_floor_trace_outline (cairo_t *cr, const LrView *view, const LrOutline *outline, double outside);
/* Around what is drawn of an item, whose outline may be a box around it */
void       lr_floor_trace_around  (cairo_t *cr, const LrView *view, const LrPlaced *placed, const LrOutline *outline, double outside);
/* Device place on the outline, so far outside it, in a device direction of length 1 from its centre */
LrVec2     lr_floor_beside        (const LrView *view, const LrOutline *outline, LrVec2 direction, double outside);
void       lr_floor_trace_room    (const LrFloor *floor);
LrVec2     lr_floor_device        (const LrFloor *floor, LrVec2 at_m);
void       lr_floor_move_to       (const LrFloor *floor, LrVec2 at_m);
void       lr_floor_line_to       (const LrFloor *floor, LrVec2 at_m);
/* Solid triangle, 30° wide, its tip at a device place */
void       lr_floor_arrowhead     (cairo_t *cr, LrVec2 tip, LrVec2 direction, double length);
double     lr_floor_reading_angle_rad (LrVec2 from, LrVec2 to);
/* Strokes of ISO 129 at the end of a line whose direction is given; the source and width are set */
void       lr_floor_oblique       (cairo_t *cr, LrVec2 at, LrVec2 direction, double length);
/* Share of their usual wash that a family has: less while a remark or an item of another is in hand */
double     lr_floor_wash          (const LrFloor *floor, LrFamily family);
/* The outline on the device, where labels want it */
LrOutline  lr_floor_device_outline (const LrView *view, const LrOutline *outline);

/* floor_underlay.c */
void       lr_floor_draw_underlay (const LrFloor *floor);

/* floor_walls.c */
void       lr_floor_draw_walls    (const LrFloor *floor);
/* Outer corners of the band; (transfer full) */
LrVec2    *lr_room_outer_corners  (const LrRoom *room, double outside_m);

/* overlay_*.c; washes lie under the furniture, axes over everything that stands */
void       lr_overlay_sight_washes (const LrFloor *floor);
void       lr_overlay_sight_line   (const LrFloor *floor);
void       lr_overlay_light_pools  (const LrFloor *floor);
void       lr_overlay_light_axes   (const LrFloor *floor);
void       lr_overlay_levels       (const LrFloor *floor);
void       lr_overlay_sun          (const LrFloor *floor);
void       lr_overlay_sun_notes    (const LrFloor *floor);
void       lr_overlay_sun_touched  (const LrFloor *floor, LrVec3 way);
void       lr_overlay_sun_trace    (const LrFloor *floor, const LrSunPatch *patch);
void       lr_overlay_sound        (const LrFloor *floor);
void       lr_overlay_power        (const LrFloor *floor);

/* floor_labels.c: what is written beside things */
void       lr_floor_block_symbols  (const LrFloor *floor);
void       lr_floor_label_items    (const LrFloor *floor);
LrLabel    lr_floor_new_label      (const LrFloor *floor, LrLabelRank rank, LrType type, const char *text);
void       lr_floor_add_beside     (const LrFloor *floor, const LrPlaced *placed, const LrLabel *label);

/* floor_notes.c: what is written about what is in and behind the walls */
void       lr_floor_note_window    (const LrFloor *floor, const LrPlaced *placed);
void       lr_floor_note_socket    (const LrFloor *floor, const LrPlaced *placed);
void       lr_floor_note_noise     (const LrFloor *floor, const LrPlaced *placed);
void       lr_floor_note_door      (const LrFloor *floor, const LrPlaced *placed);

/* floor_marks.c: grades and remarks */
void       lr_floor_draw_marks     (const LrFloor *floor);
void       lr_floor_draw_remark    (const LrFloor *floor);
void       lr_floor_draw_ghost     (const LrFloor *floor);
/* An arrow from one place to another; short ones are left out */
void       lr_floor_draw_arrow     (const LrFloor *floor, LrVec2 from_m, LrVec2 to_m, LrLineWeight weight);

/* floor_numbers.c: of walls and corners */
void       lr_floor_draw_numbers   (const LrFloor *floor);

/* floor_found.c: where things were planned to stand */
void       lr_floor_draw_planned   (const LrFloor *floor);

/* floor_hand.c: what is in hand */
void       lr_floor_draw_hand      (const LrFloor *floor);
void       lr_floor_draw_distances (const LrFloor *floor);

/* floor_knobs.c: where the knobs are, for drawing and for the pointer */
typedef struct
{
  LrHitType type;
  int       index;
  LrVec2    at; /* device */
} LrKnob;

#define LR_HALO_PX 7.0        /* from the footprint to the halo's middle */
#define LR_KNOB_REACH_PX 12.0 /* half of what the pointer needs */

GArray    *lr_floor_knobs          (const LrStudy *study, const LrView *view); /* (transfer full): LrKnob */

/* floor_dimensions.c, floor_furnishings.c */
void       lr_floor_draw_dimensions  (const LrFloor *floor);
void       lr_floor_draw_furnishings (const LrFloor *floor);
