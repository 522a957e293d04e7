/* reframe_private.h - what the files of reframing share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "judge_parts.h"
#include "reframe.h"

/* What is kept or reached while place or lens change */
typedef enum
{
  LR_SIZE_FIELD, /* width of the field at the eyes */
  LR_SIZE_CUT,   /* from the eyes down to the frame's lower edge, in the upright plane of the eyes */
} LrSizeOf;

/* A wish under way: the changes so far, and what the camera sees with them in the plan */
typedef struct
{
  const LrStudy         *study;
  const LrCameraReading *camera; /* as it is */
  LrUnits                units;
  LrReframe             *reframe;
  LrStudy               *trial;  /* NULL before the first try */
  const LrCameraReading *now;    /* in the trial */
} LrReframing;

/* reframe_solve.c */
void     lr_reframing_start  (LrReframing *self, const LrStudy *study, const LrCameraReading *camera, LrUnits units);
void     lr_reframing_copy   (LrReframing *self, const LrReframing *other); /* starts from its changes */
void     lr_reframing_clear  (LrReframing *self);
/* Ends it: its figures are those of the last try. (transfer full); takes the sentence */
LrReframe *lr_reframing_end  (LrReframing *self, gboolean is_possible, char *sentence, LrReframe *instead);
void     lr_reframing_put    (LrReframing *self, const char *key, double value);
double   lr_reframing_get    (const LrReframing *self, const char *key); /* as it is with the changes so far */
void     lr_reframing_aim    (LrReframing *self, double across, double down); /* at the subject */
void     lr_reframing_focus  (LrReframing *self); /* on the eyes, if they are sharp now */
gboolean lr_reframing_try    (LrReframing *self);
void     lr_reframing_place  (LrReframing *self, double distance_m);
gboolean lr_reframing_by_place (LrReframing *self, LrSizeOf size, double wanted_m);
gboolean lr_reframing_by_lens  (LrReframing *self, LrSizeOf size, double wanted_m);
gboolean lr_reframing_is_at_end (const LrReframing *self); /* no lens is longer or shorter than the last try's */
gboolean lr_reframing_by_both  (LrReframing *self, double field_w_m, double behind_field_w_m);

/* reframe_room.c: what keeps the camera from where the last try puts it; (transfer full) (nullable) */
char    *lr_reframing_obstacle (const LrReframing *self);
/* The distance nearest to that of the last try at which nothing does, between there and where it stands now; tried */
gboolean lr_reframing_find_free (LrReframing *self, char **ended_by);

/* reframe_lens.c */
const LrKitEntry *lr_reframing_mounted (const LrReframing *self); /* as it is; (nullable) */
gboolean lr_lens_is_prime     (const LrLens *lens);
gboolean lr_reframing_is_at_hand  (const LrReframing *self, const LrKitEntry *entry);
/* Whether the last try focuses nearer than its lens can */
gboolean lr_reframing_is_too_near (const LrReframing *self, double *nearest_m);
/* The lens of the kit that is free and comes nearest to an effective focal length, the mounted one first; (nullable) */
const LrKitEntry *lr_reframing_nearest_lens (const LrReframing *self, double effective_m);
/* Changes to that lens, set as near to the effective focal length as it goes */
void     lr_reframing_mount   (LrReframing *self, const LrKitEntry *entry, double effective_m);
char    *lr_reframing_say_focal  (const LrReframing *self, double focal_m);
char    *lr_reframing_say_lens   (const LrReframing *self, const LrKitEntry *entry, double focal_m); /* "85 mm lens" */
char    *lr_reframing_say_length (const LrReframing *self, double length_m);
char    *lr_reframing_say_name   (const LrReframing *self); /* "Camera A" */
LrReframe *lr_reframing_end_no_subject (LrReframing *self);
char    *lr_reframing_say_behind (const LrReframing *self); /* "west wall", of the last try */
