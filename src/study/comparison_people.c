/* comparison_people.c - what hangs on who is in a room: ways out, and whether there is a set to be judged
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A room in which nobody sits has nothing to fix, which is no merit.
 */

#include "comparison_parts.h"

#include "power_readings.h"

static guint
count_kind (const LrRoomFigures *room,
            LrItemKind           kind)
{
  guint n = 0;

  for (guint i = 0; i < room->setup->items->len; i++)
    n += ((const LrItem *) room->setup->items->pdata[i])->kind == kind;

  return n;
}

/**
 * lr_compare_people:
 * @room: figures of a room that is drawn, with its doors
 *
 * Says which of the figures that take long are awaited.
 */
void
lr_compare_people (LrRoomFigures *room)
{
  const LrFigure *exits = &room->figure[LR_COMPARE_EXITS];
  gboolean has_people = count_kind (room, LR_ITEM_PERSON) > 0, has_exit = exits->known == LR_KNOWN && exits->value > 0.0;
  gboolean has_set = has_people && room->study->cameras->len > 0;

  room->figure[LR_COMPARE_WAY_OUT].known = !has_people ? LR_NOT_PLACED : has_exit ? LR_AWAITED : LR_NOT_DRAWN;
  room->figure[LR_COMPARE_FIX].known = room->figure[LR_COMPARE_MIND].known = has_set ? LR_AWAITED : LR_NOT_PLACED;
}

/**
 * lr_compare_ways_out:
 * @room: figures of a room
 * @ways: (nullable) (element-type LrWayOut): its ways out, as of lr_study_ways_out(); %NULL: they could not be had
 *
 * Fills that of the narrowest, which is known if everybody's is. No more than the limit asks for was looked for.
 */
void
lr_compare_ways_out (LrRoomFigures *room,
                     const GArray  *ways)
{
  LrFigure *figure = &room->figure[LR_COMPARE_WAY_OUT];
  const LrWayOut *narrowest = NULL;
  gboolean is_known = TRUE;

  if (figure->known != LR_AWAITED)
    return;

  for (guint i = 0; ways != NULL && i < ways->len; i++)
    {
      const LrWayOut *way = &g_array_index (ways, LrWayOut, i);

      if (way->is_wheelchair)
        continue;
      is_known &= !way->is_unknown;
      narrowest = way->is_unknown ? narrowest : way;
    }
  *figure = (LrFigure) { LR_NOT_NOTED, NAN };
  if (!is_known || narrowest == NULL)
    return;

  lr_compare_set (room, LR_COMPARE_WAY_OUT, narrowest->n_path > 0 ? lr_way_out_clear_m (narrowest) : 0.0);
  room->is_way_full = figure->value >= narrowest->limit_m - 1e-6;
  if (narrowest->blocker != NULL)
    room->narrow_item = narrowest->blocker->item;
  else if (narrowest->n_path > 0 && narrowest->door->item->door.width_m <= figure->value + 1e-6)
    room->narrow_item = narrowest->door->item;
}
