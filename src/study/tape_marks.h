/* tape_marks.h - setting out: where each mark on the floor is, by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mark is found in two ways: square to two walls, and with two tapes from two corners. Corners count from 0 here; wall i goes from
 * corner i to the next. People read their numbers, as they were taped.
 */

#pragma once

#include "setting_out.h"
#include "study.h"
#include "units.h"

typedef enum
{
  LR_FIX_NONE,  /* no two walls or corners are of use */
  LR_FIX_CLEAR, /* both tapes lie on the floor */
  LR_FIX_OVER,  /* something stands in the way of one: it is to be held level over it */
} LrFixWay;

/* A point by two lengths */
typedef struct
{
  LrFixWay   way;
  gsize      from[2];     /* corners, or walls; the first has the lower number */
  int        number[2];   /* theirs for people */
  LrVec2     from_m[2];   /* the corners, or the feet on the walls */
  double     length_m[2];
  double     crossing_rad;/* between the two tapes, in [0, pi] */
  gboolean   is_poor;     /* under 30 degrees, or over 150 */
  LrFixError error;       /* one standard deviation, by tape_error.h */
} LrTapeFix;

/* What is set to a height there */
typedef enum { LR_HEIGHT_NONE, LR_HEIGHT_LENS, LR_HEIGHT_LAMP, LR_HEIGHT_CAPSULE, LR_HEIGHT_SEAT, LR_HEIGHT_EDGE } LrHeightOf;

typedef struct
{
  const LrPlaced *placed;
  LrVec2     mark_m;
  gboolean   is_inside;   /* the room; else there is neither fix nor aim */
  LrTapeFix  walls, corners;
  LrVec2     grid_m;      /* along the longest wall from its first corner, and square to it: as on the grid of lr_tape_grid () */
  LrHeightOf height_of;
  double     height_m;    /* NAN for none */
  double     facing_rad;  /* where it looks, aims or reaches, in plan */
  double     bearing_rad; /* the same, clockwise from north, in [0, 2 pi) */
  double     tilt_rad;    /* cameras and lights: > 0 up; else NAN */
  double     reach_m;     /* booms: from the stand to over the capsule; else NAN */
  const LrPlaced *aims_at;/* (nullable) */
  int        aim_wall;    /* that it faces; -1: none */
  int        aim_number, aim_corner_number; /* for people: of that wall, and of its first corner */
  double     aim_along_m; /* where, from that wall's first corner */
  LrVec2     aim_at_m;
} LrTapeMark;

/* A grid on the floor: from a corner along a wall */
typedef struct
{
  gsize  wall;            /* the longest; the grid's origin is its first corner */
  int    wall_number, corner_number; /* for people */
  LrVec2 origin_m, along, across; /* across: into the room */
} LrTapeGrid;

/* (transfer full) (element-type LrTapeMark): what has a mark, in the order of setting out; empty without a room */
GArray  *lr_tape_marks_new (const LrStudy *study);
/* FALSE: there is no room */
gboolean lr_tape_grid      (const LrRoom *room, LrTapeGrid *grid);

/* readings_tape.c; (transfer full): the same for programs; its head tells the members */
JsonNode *lr_tape_to_json   (const LrStudy *study);

/* (transfer full): by which it is ticked: that it is marked there, and set so high */
char    *lr_tape_mark_tick (const LrTapeMark *mark);

/* tape_words.c: what people read. All (transfer full) but the two heads */
char       *lr_tape_mark_spot   (const LrTapeMark *mark); /* "camera, tripod": what of it stands over the mark */
const char *lr_tape_height_word (LrHeightOf of);          /* "lens"; "" for none */
char       *lr_tape_mark_aim    (const LrTapeMark *mark, LrUnits units); /* "at Wenna, 214°, on wall 3 1.20 m from corner 3" */
const char *lr_fix_way_word     (LrFixWay way);           /* "clear", "over", "none": for programs, not translated */
