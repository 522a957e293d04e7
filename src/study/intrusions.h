/* intrusions.h - what stands in a camera's picture that should not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only what was not put there for the picture: equipment, the person who asks, what stands before the subject, bright
 * windows and lamps of the house, the ceiling and the floor. Furniture behind the subject, walls and a backdrop are the picture.
 *
 * A share is of the frame's width or height, whichever the edge asks for; places in the frame are 0..1 from the upper left.
 */

#pragma once

#include "silhouette.h"
#include "study.h"

typedef enum { LR_BORDER_LEFT, LR_BORDER_RIGHT, LR_BORDER_TOP, LR_BORDER_BOTTOM, LR_N_BORDERS } LrFrameBorder;

typedef enum
{
  LR_INTRUDER_STAND, LR_INTRUDER_HEAD, LR_INTRUDER_ARM, LR_INTRUDER_CAPSULE, LR_INTRUDER_SHEET, LR_INTRUDER_PERSON, LR_INTRUDER_FURNITURE, LR_INTRUDER_WINDOW,
  LR_INTRUDER_FIXTURE, LR_INTRUDER_CEILING, LR_INTRUDER_FLOOR, LR_N_INTRUDER_PARTS
} LrIntruderPart;

typedef struct
{
  const LrCameraReading *camera;
  const LrPlaced *placed;       /* NULL: ceiling and floor */
  LrIntruderPart      part;             /* what shows most of it */
  LrFrameBorder edge;             /* the nearest to get out by */
  gboolean    is_cut;           /* by that edge: it comes in from there; else it stands in the picture whole, or across it */
  double      reach[LR_N_BORDERS];/* how far in from each edge, share */
  double      move_m[LR_N_BORDERS]; /* to get out by it: sideways square to the axis, upright for top and bottom */
  double      share;            /* of the frame's area; NAN where parts cover each other */
  double      face_share, body_share; /* of what the frame shows of the subject's head and trunk, that it hides */
  gboolean    is_nearer;        /* than the subject */
  gboolean    is_partly_hidden; /* by what stands before it */
  double      clearance;        /* a boom that passes over the frame: how far above, share of the height; else NAN */
  guint       first_outline, n_outlines; /* of the study's outlines */
} LrIntrusion;

/* A convex polygon in the frame: n of the study's outline points */
typedef struct
{
  guint first, n;
} LrFrameOutline;

/* How far over the frame a boom is looked for, in shares of its height */
#define LR_INTRUSION_ABOVE 0.25

static inline const LrIntrusion *
lr_study_intrusion (const LrStudy *study,
                    guint          index)
{
  return &g_array_index (study->intrusions, LrIntrusion, index);
}

static inline const LrVec2 *
lr_study_outline (const LrStudy     *study,
                  const LrIntrusion *intrusion,
                  guint              index,
                  guint             *n)
{
  const LrFrameOutline *outline = &g_array_index (study->outlines, LrFrameOutline, intrusion->first_outline + index);

  *n = outline->n;
  return &g_array_index (study->outline_points, LrVec2, outline->first);
}

/* A trial study leaves them out until this is called */
void     lr_study_find_intrusions (LrStudy *study, const LrStudy *before);
/* Whether the item, changed from one of the study's, would be in the picture of any camera, or less than @above (a share of the
 * height) over it if it is a boom. What may hide it is not looked at. */
gboolean lr_study_would_intrude (const LrStudy *study, const LrItem *item, double above);
