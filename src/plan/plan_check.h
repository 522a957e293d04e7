/* plan_check.h - the invariants of a plan, as the reader and the edits ask for them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

/* Two members of a kind, the first of which must lie below the second */
typedef struct
{
  LrItemKind  kind;
  const char *low, *high;
  gboolean    may_be_equal;
} LrOrderedPair;

/* What is wrong with a room's corners */
typedef enum
{
  LR_CORNERS_FINE,
  LR_CORNERS_TOO_FEW,
  LR_CORNERS_TOO_MANY,
  LR_CORNERS_CROSS,
  LR_CORNERS_CLOCKWISE,
} LrCornersFault;

const LrOrderedPair *lr_item_check_order (const LrItem *item);                 /* (nullable): the pair out of order */
LrCornersFault       lr_corners_check    (const LrVec2 *corners_m, gsize n);
gboolean             lr_job_accepts_text (const char *key, const char *text);  /* dates and times have a form */
/* Whether @id may stand in the reference @prop of @item, an item of @setup */
gboolean             lr_ref_is_valid     (const LrPlan *plan, const LrSetup *setup, const LrItem *item, const LrProp *prop,
                                          const char *id);
gboolean             lr_ref_is_to_kit    (const LrProp *prop);
gboolean             lr_ref_accepts      (const LrProp *prop, const LrItem *item, const LrItem *target);
char                *lr_prop_dup_range   (const LrProp *prop);                 /* for people: "0.01 to 20 m" */
char                *lr_prop_dup_value   (const LrProp *prop, double value);   /* for people: "1.2 m" */
