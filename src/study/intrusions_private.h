/* intrusions_private.h - how the files that look for intrusions share what they see
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "intruders.h"
#include "study_parts.h"

#define LR_MAX_NEAR 48 /* in a fuller frame the others hide nothing */
#define LR_WHOLE_FRAME ((LrFrameBox) { 0.0, 1.0, 0.0, 1.0 })

typedef struct
{
  const LrPlaced *placed;
  LrVolume         shape;
  LrFrameBox      bounds;
  LrVec3          way_m;    /* from the lens to its middle */
  double          from_m;   /* nothing of it is nearer to the lens */
} LrScreen;

typedef struct
{
  LrStudy               *study;
  const LrCameraReading *camera;
  const LrProjection    *projection;
  gboolean               is_room_simple; /* convex, or unknown from where the lens is: no wall of it hides anything in it */
  gboolean               is_in_room;
  double                 subject_m;      /* depth of the eyes; HUGE_VAL without a subject */
  LrVolume                head, trunk;
  LrSilhouette           head_seen, trunk_seen; /* what the frame shows; n is 0 for nothing */
  GArray                *screens;        /* of LrScreen; filled when first asked for */
  gboolean               has_screens;
  guint                  n_near;         /* screens that cover some of what is looked at: see lr_view_may_hide() */
  guint                  near[LR_MAX_NEAR];
} LrLensView;

/* What is known of a thing while its parts are looked at */
typedef struct
{
  LrIntrusion  intrusion;
  LrFrameBox   bounds;
  double       nearest_m;
  double       area, largest;
  guint        n_seen;
  gboolean     has_walls;    /* a wall may stand between */
  gboolean     is_any_enough; /* a trial only asks whether any of it is seen */
  LrIntruder   intruder;
  LrSilhouette seen[LR_MAX_INTRUDER_SHAPES]; /* n is 0: not in the frame */
} LrLook;

/* intrusion_screens.c: what may hide things */
void     lr_view_fill_screens      (LrLensView *view);
/* Whether anything but the thing's own parts lies in front of that part of the frame, or behind it: that is near then */
gboolean lr_view_may_hide          (LrLensView *view, const LrPlaced *placed, const LrFrameBox *bounds,
                                    double to_m);
/* Whether a wall may stand between: windows lie in theirs */
gboolean lr_view_has_walls_between (const LrLensView *view, const LrPlaced *placed, double reach_m);
/* Whether what is near is nearer than @to_m on the way through a place in the frame */
gboolean lr_view_is_hidden         (const LrLensView *view, gboolean has_walls, LrVec2 at, LrVec3 way, double to_m);

/* intrusion_net.c */
void     lr_view_look_at_part  (LrLensView *view, LrLook *look, guint index);
double   lr_view_covered_share (const LrLensView *view, const LrLook *look, const LrVolume *target,
                                const LrSilhouette *target_seen);

/* intrusions.c */
void     lr_look_begin        (const LrLensView *view, const LrPlaced *placed, LrLook *look);
/* A place of the thing that is seen; depth along the axis */
void     lr_look_note_place   (LrLook *look, const LrProjection *projection, LrVec2 at, double depth_m);
void     lr_look_choose_edge  (LrLook *look, const LrProjection *projection);
void     lr_look_keep_outline (LrLook *look, LrStudy *study, const LrSilhouette *seen);

/* intrusion_levels.c: ceiling and floor */
void     lr_view_look_at_level (LrLensView *view, LrLook *look, LrIntruderPart part, double level_m);

static inline gboolean
lr_intruder_is_boom (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM;
}

static inline gboolean
lr_projection_is_known (const LrProjection *p)
{
  return p->half_width > 0.0 && p->half_height > 0.0 && isfinite (p->eye_m.x + p->eye_m.y + p->eye_m.z);
}
