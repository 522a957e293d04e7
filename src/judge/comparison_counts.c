/* comparison_counts.c - candidate rooms side by side: what there is to fix and to mind in each
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "comparison_words.h"

#include "remarks.h"

static void
count (LrRoomFigures       *room,
       const LrLightLevels *levels,
       LrUnits              units)
{
  /* grades are the same without the remedies, which take most of the time */
  g_autoptr (LrRemarks) remarks = lr_remarks_new_moving (room->study, levels, units);

  room->figure[LR_COMPARE_FIX] = (LrFigure) { LR_KNOWN, remarks->n[LR_GRADE_FIX] };
  room->figure[LR_COMPARE_MIND] = (LrFigure) { LR_KNOWN, remarks->n[LR_GRADE_MIND] };
}

/**
 * lr_comparison_judge:
 * @comparison: a comparison
 * @index: of one of its rooms
 * @levels: (nullable): of the room's plan, whole; %NULL: they could not be had
 * @units: how lengths are written
 *
 * Fills what is awaited: the way out, and what there is to fix and to mind. Without levels that is not known: counts would leave out light.
 */
void
lr_comparison_judge (LrComparison        *comparison,
                     guint                index,
                     const LrLightLevels *levels,
                     LrUnits              units)
{
  LrRoomFigures *room = &g_array_index (comparison->rooms, LrRoomFigures, index);

  lr_comparison_take_levels (comparison, index, levels);
  if (room->figure[LR_COMPARE_FIX].known != LR_AWAITED)
    return;

  if (levels != NULL)
    count (room, levels, units);
  else
    room->figure[LR_COMPARE_FIX] = room->figure[LR_COMPARE_MIND] = (LrFigure) { LR_NOT_NOTED, NAN };
}
