/* run_sheet.h - what is done on the day, how long it takes and when
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan gives the steps and an estimate of each for one person; the user may change any of it. Every minute is common
 * practice, no source: one who knows their own times types them.
 */

#pragma once

#include "job_hours.h"
#include "study.h"

typedef enum
{
  LR_RUN_RIG,    /* from coming in to rolling */
  LR_RUN_ROLL,   /* from rolling to wrap */
  LR_RUN_STRIKE, /* from wrap to going out */
  LR_N_RUN_PARTS
} LrRunPart;

typedef struct
{
  char     *key;
  char     *title;        /* as the user or the plan calls it, translated */
  char     *usual_title;  /* as the plan calls it; "" for the user's own */
  char     *reason;       /* what the estimate counts: "2 × camera"; "" */
  LrRunPart part;
  int       estimated_min; /* 0 for the user's own */
  int       minutes;      /* that are counted */
  gboolean  is_own, is_left_out;
  gboolean  has_own_minutes;  /* the user's, not the estimate */
  int       from, to;     /* minutes since midnight of the day, may pass 24 h; -1: not known */
} LrRunStep;

/* What a part of the day takes and has */
typedef struct
{
  int needed_min;
  int planned_min;        /* between the job's times; -1: not known */
  int from, to;           /* of the job's times; -1 */
} LrRunSpan;

typedef struct
{
  GPtrArray *steps;       /* LrRunStep */
  LrRunSpan  span[LR_N_RUN_PARTS];
} LrRunSheet;

LrRunSheet *lr_run_sheet_new  (const LrStudy *study);
void        lr_run_sheet_free (LrRunSheet *sheet);
const char *lr_run_part_title (LrRunPart part); /* translated */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrRunSheet, lr_run_sheet_free)
