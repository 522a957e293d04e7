/* reframe.h - from the wanted picture back to the camera: a wish, the edit that fulfils it, and a sentence about it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: from a study and a wish to the changes of a plan. What is promised is read back from a study of the plan with the
 * changes in it, so it is what the window shows when they are applied. Distances are from the sensor plane to the
 * subject's eyes; focal lengths are those marked on the ring.
 */

#pragma once

#include "plan_edit.h"
#include "study.h"
#include "units.h"

typedef struct LrReframe LrReframe;

struct LrReframe
{
  gboolean   is_possible;    /* FALSE: the changes are what was looked at, but the room or the lens does not have it */
  gboolean   is_as_now;      /* nothing would change */
  char      *id;             /* the camera */
  GArray    *changes;        /* LrChange with owned ids; keys are static */
  char      *lens, *aims_at; /* ids; NULL: as it is */
  char      *sentence;       /* what it does, or why it cannot be, with the figures */
  char      *title;          /* rows of lr_reframe_lenses(): the lens */
  double     distance_m, focal_m; /* then; NAN: not known */
  double     field_w_m, behind_field_w_m;
  double     sharp_near_m, sharp_far_m; /* from the sensor plane */
  LrShot     shot;
  LrReframe *instead;        /* what comes nearest, if it is not possible; may be NULL */
};

typedef enum { LR_REFRAME_BY_PLACE, LR_REFRAME_BY_LENS } LrReframeBy;

/* The camera goes along its direction from the subject, or its lens is set, to the shot; eyes and headroom as usual for it */
LrReframe *lr_reframe_shot       (const LrStudy *study, const LrCameraReading *camera, LrShot shot, LrReframeBy by, LrUnits units);
/* The same framing of the subject with that much of what is behind: another place and another focal length */
LrReframe *lr_reframe_background (const LrStudy *study, const LrCameraReading *camera, double behind_field_w_m, LrUnits units);
/* The same framing through each lens of the kit, from the shortest: (transfer full) (element-type LrReframe) */
GPtrArray *lr_reframe_lenses     (const LrStudy *study, const LrCameraReading *camera, LrUnits units);
/* The field at the eyes that is held from now on [m]; NAN without a subject in the frame */
double     lr_reframe_held_m     (const LrCameraReading *camera);
/* In the study of a plan in which the camera stands elsewhere: the focal length that keeps a field at the eyes */
LrReframe *lr_reframe_hold       (const LrStudy *moved, const char *camera, double field_w_m, LrUnits units);
/* Sharp at the eyes of a person, the middle of a thing; NULL: on what is behind the subject */
LrReframe *lr_reframe_focus      (const LrStudy *study, const LrCameraReading *camera, const char *target, LrUnits units);
gboolean   lr_reframe_is_focused (const LrStudy *study, const LrCameraReading *camera, const char *target);
/* What lies at @from in the frame comes to @to: the camera pans and tilts */
LrReframe *lr_reframe_turn       (const LrStudy *study, const LrCameraReading *camera, LrVec2 from, LrVec2 to);
/* Steps of the wheel: > 0 to a longer focal length, or the next longer lens where the one that is on does not zoom */
LrReframe *lr_reframe_zoom       (const LrStudy *study, const LrCameraReading *camera, double steps, LrUnits units);

/* (transfer full): the plan with it done */
LrPlan    *lr_reframe_apply      (const LrReframe *reframe, const LrPlan *plan, GError **error);
void       lr_reframe_free       (LrReframe *reframe);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrReframe, lr_reframe_free)
