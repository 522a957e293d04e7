/* provoke.h - for every check a plan that goes wrong in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each row changes the interview of fixture.h, in which nothing is wrong.
 */

#pragma once

#include "fixture.h"
#include "remarks.h"

typedef struct
{
  const char *id, *key;
  double      value;
  const char *text;    /* instead of the value */
} Edit;

typedef struct
{
  gboolean   is_there;
  LrItemKind kind;
  int        form;
  double     x_m, y_m;
} Extra;

typedef struct
{
  const char *name;
  LrCheck     check;
  LrGrade     grade;
  const char *remark;    /* its key */
  gboolean    is_mended; /* has a remedy */
  Extra       extra[5];  /* added first */
  Edit        edits[8];
} Provocation;

extern const Provocation provocations[];
extern const gsize n_provocations;

LrPlan *provoke (const Provocation *provocation);
/* (transfer full) (nullable): if the check judges by them */
LrLightLevels *provoked_levels (const Provocation *provocation, const LrStudy *study);
/* (transfer full): of a plan like that */
LrRemarks *provoked_remarks (const Provocation *provocation, const LrStudy *study, LrUnits units);
