/* preroll.h - what is looked at before rolling, with the plan's own numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In the order in which it is done. What to look at is common practice, no source; the numbers are the plan's.
 */

#pragma once

#include "remarks.h"

typedef enum
{
  LR_PREROLL_OPEN,    /* what the remarks say will go wrong */
  LR_PREROLL_SAFETY,
  LR_PREROLL_OFF,     /* what is to be switched off */
  LR_PREROLL_SET,
  LR_PREROLL_CAMERAS,
  LR_PREROLL_LIGHT,
  LR_PREROLL_SOUND,
  LR_PREROLL_ROLL,
  LR_N_PREROLL_GROUPS
} LrPrerollGroup;

typedef struct
{
  LrPrerollGroup group;
  char *key;     /* steady while the plan is edited */
  char *tick;    /* by which it is ticked: the key, and the plan's figures in it */
  char *markup;  /* one line, figures in <b> */
  char *item;    /* id of the thing that it is about; "" */
} LrPrerollCheck;

/* (transfer full) (element-type LrPrerollCheck). @levels and @remarks (nullable): what follows from them is left out */
GPtrArray  *lr_preroll_new (const LrStudy *study, const LrLightLevels *levels, const LrRemarks *remarks, LrUnits units);
const char *lr_preroll_group_title (LrPrerollGroup group); /* translated */
