/* preroll_parts.h - what the groups of checks before rolling share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "preroll.h"

typedef struct
{
  const LrStudy       *study;
  const LrLightLevels *levels;  /* may be NULL */
  const LrRemarks     *remarks; /* may be NULL */
  LrUnits              units;
  GPtrArray           *checks;
} LrPreroll;

void          lr_preroll_add   (LrPreroll *preroll, LrPrerollGroup group, const char *word, const LrItem *item, char *markup);
char         *lr_preroll_title (const LrItem *item);
const LrItem *lr_preroll_item  (const LrPreroll *preroll, guint index);

/* preroll_figures.c */
void lr_preroll_add_cameras (LrPreroll *preroll);
void lr_preroll_add_light   (LrPreroll *preroll);
void lr_preroll_add_sound   (LrPreroll *preroll);
