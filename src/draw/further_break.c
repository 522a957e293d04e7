/* further_break.c - where lists are broken into sheets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list that would go on over the sheet for a few rows alone is set tighter; where that is not enough, the sheet before gives it
 * rows, so that none stands there by itself.
 */

#include "config.h"

#include "further.h"

#include <math.h>

#define FEW_SHARE   0.2  /* of a sheet's room: less than that is looked at */
#define LEAST_ROWS  3    /* on a sheet on which a list goes on */
#define NOWHERE     G_MAXUINT

typedef struct
{
  LrFlow        *flow;
  const LrBlock *title, *group;
  const LrBlock *before;  /* on this sheet; NULL: nothing yet */
  double         y, room; /* on this sheet */
} Break;

static void
begin_sheet (Break         *at,
             const LrBlock *title,
             gboolean       goes_on)
{
  LrFlowSheet sheet = { title, goes_on ? at->group : NULL, goes_on, title->is_lying };
  LrBox box;

  g_array_append_val (at->flow->sheets, sheet);
  lr_flow_whole_box (at->flow, title->is_lying, &box);
  at->title = title;
  at->before = NULL;
  at->y = sheet.group != NULL ? LR_FLOW_GROUP_PT : 0.0;
  at->room = box.height;
}

static gboolean
needs_heads (const LrBlock *block,
             const LrBlock *before)
{
  gboolean has_any = FALSE;

  if (block->kind != LR_BLOCK_ROW || (before != NULL && before->kind == LR_BLOCK_ROW && before->columns == block->columns))
    return FALSE;
  for (gsize i = 0; i < block->n_columns; i++)
    has_any |= block->columns[i].head != NULL;
  return has_any;
}

/* What must stand on one sheet from @index on: a title with what follows it, a row with the lines to write on under it */
static double
height_together (const LrFlow  *flow,
                 guint          index,
                 const LrBlock *before)
{
  double height = 0.0;

  for (guint i = index; i < flow->blocks->len; i++)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i);
      const LrBlock *next = i + 1 < flow->blocks->len ? g_ptr_array_index (flow->blocks, i + 1) : NULL;

      height += (block->fills_sheet ? LR_FLOW_LEAST_LINES * LR_FLOW_RULED_PT : block->height) + (needs_heads (block, before) ? LR_FLOW_HEADS_PT : 0.0);
      before = block;
      if (next == NULL || (block->kind != LR_BLOCK_GROUP && next->kind != LR_BLOCK_LINES))
        break;
    }
  return height;
}

static void
place (Break   *at,
       LrBlock *block)
{
  block->has_heads = needs_heads (block, at->before);
  block->sheet = at->flow->sheets->len - 1;
  block->y = at->y + (block->has_heads ? LR_FLOW_HEADS_PT : 0.0);
  if (block->fills_sheet)
    {
      block->n_lines = (guint) floor ((at->room - block->y) / LR_FLOW_RULED_PT);
      block->height = block->n_lines * LR_FLOW_RULED_PT;
    }
  block->height = MIN (block->height, at->room - block->y);
  at->y = block->y + block->height;
  at->before = block;
  if (block->kind == LR_BLOCK_GROUP)
    at->group = block;
}

/* The blocks of a list: from its title to before the next */
typedef struct
{
  guint first, end;
} List;

static List
list_from (const LrFlow *flow,
           guint         first)
{
  List list = { first, first + 1 };

  while (list.end < flow->blocks->len)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, list.end);

      if (block->kind == LR_BLOCK_TITLE || block->kind == LR_BLOCK_WHOLE)
        break;
      list.end++;
    }
  return list;
}

static void
set_pad (const LrFlow *flow,
         const List   *list,
         double        pad)
{
  for (guint i = list->first; i < list->end; i++)
    {
      LrBlock *block = g_ptr_array_index (flow->blocks, i);

      if (block->kind != LR_BLOCK_ROW && block->kind != LR_BLOCK_PARAGRAPH)
        continue;
      block->height += 2.0 * (pad - block->pad);
      block->pad = pad;
    }
}

/* Onto new sheets, another one before the block @forced; returns how many sheets it has */
static guint
break_list (LrFlow     *flow,
            const List *list,
            guint       n_before,
            guint       forced,
            double     *foot)
{
  Break at = { .flow = flow };
  LrBlock *title = g_ptr_array_index (flow->blocks, list->first);

  g_array_set_size (flow->sheets, n_before);
  begin_sheet (&at, title, FALSE);
  title->sheet = flow->sheets->len - 1;
  for (guint i = list->first + 1; i < list->end; i++)
    {
      LrBlock *block = g_ptr_array_index (flow->blocks, i);

      if (block->kind == LR_BLOCK_GROUP)
        at.group = NULL;
      if (at.before != NULL && (i == forced || at.y + height_together (flow, i, at.before) > at.room))
        begin_sheet (&at, at.title, TRUE);
      place (&at, block);
    }
  *foot = at.y / at.room;
  return flow->sheets->len - n_before;
}

/* The block that begins the last sheet's rows, if it is to have LEAST_ROWS of them; NOWHERE: it has, or cannot have */
static guint
earlier_break (const LrFlow *flow,
               const List   *list)
{
  guint sheet = flow->sheets->len - 1, n_rows = 0;

  for (guint i = list->end; i-- > list->first + 1;)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i), *before = g_ptr_array_index (flow->blocks, i - 1);

      n_rows += block->kind == LR_BLOCK_ROW;
      if (n_rows < LEAST_ROWS || block->kind != LR_BLOCK_ROW)
        continue;
      if (block->sheet == sheet || before->kind == LR_BLOCK_TITLE)
        return NOWHERE;
      return before->kind == LR_BLOCK_GROUP ? i - 1 : i; /* which goes along */
    }
  return NOWHERE;
}

/**
 * lr_flow_break:
 * @flow: a flow, filled, that begins with a title
 *
 * Finds the sheet of each thing and its place there. What is higher than a sheet is cut at its foot.
 */
void
lr_flow_break (LrFlow *flow)
{
  g_array_set_size (flow->sheets, 0);
  for (List list = { 0, 0 }; list.end < flow->blocks->len;)
    {
      guint n_before = flow->sheets->len, n_sheets, forced;
      double foot;

      list = list_from (flow, list.end);
      n_sheets = break_list (flow, &list, n_before, NOWHERE, &foot);
      if (n_sheets < 2 || foot > FEW_SHARE)
        continue;

      set_pad (flow, &list, LR_FLOW_TIGHT_PT);
      if (break_list (flow, &list, n_before, NOWHERE, &foot) < n_sheets)
        continue;
      set_pad (flow, &list, LR_FLOW_PAD_PT);
      break_list (flow, &list, n_before, NOWHERE, &foot);
      forced = earlier_break (flow, &list);
      if (forced != NOWHERE)
        break_list (flow, &list, n_before, forced, &foot);
    }
}
