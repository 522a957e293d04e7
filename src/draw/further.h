/* further.h - sheets that follow the plan on request: lists that go along, on the paper of the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list says one after the other what stands in it; the flow breaks that into sheets. Each has the list's title, the
 * job, the day and "sheet 2 of 4"; a table that goes on has its heads and its group's title again.
 *
 *   further.c        which lists there are, sheets and their number
 *   further_flow.c   what stands in a list
 *   further_break.c  where it is broken into sheets
 *   further_draw.c   painting a sheet
 *   further_NAME.c   one list each
 */

#pragma once

#include "page_private.h"

#define LR_FLOW_MAX_CELLS 8

/* Texts of a flow are Pango markup: what people typed is escaped first */
typedef struct LrFlow LrFlow;

typedef struct
{
  const char *head;     /* to be translated; NULL: none */
  double      width_pt; /* 0: takes its share of what the others leave */
  double      share;    /* parts of it; 0 is 1 */
  LrAlign     align;    /* left or right */
} LrFlowColumn;

typedef enum { LR_FLOW_NO_BOX, LR_FLOW_BOX, LR_FLOW_BOX_TICKED } LrFlowBox;

/* Paints into @box, in points */
typedef void (*LrFlowDraw) (const LrSheet *sheet, const LrBox *box, gpointer data);

/* What the list is of; its cairo_t is for measuring while the list is made */
const LrSheet *lr_flow_sheet (const LrFlow *flow);
/* Width that text has on an upright sheet [pt] */
double lr_flow_width     (const LrFlow *flow);
/* A new list begins, on a sheet of its own. @note (nullable) stands at the right */
void   lr_flow_title     (LrFlow *flow, const char *title, const char *note);
/* A group in the list: is never the last on a sheet, and is said again when it goes on */
void   lr_flow_group     (LrFlow *flow, const char *title);
void   lr_flow_paragraph (LrFlow *flow, const char *markup);
/* Rows that follow have these columns; @columns (array length=n_columns) must live as long as the flow */
void   lr_flow_table     (LrFlow *flow, const LrFlowColumn *columns, gsize n_columns);
/* @cells: one for each column; may hold NULL; copied */
void   lr_flow_row       (LrFlow *flow, LrFlowBox box, const char *const *cells);
/* Ruled lines to write on, which stay together with what stands before them */
void   lr_flow_lines     (LrFlow *flow, guint n);
/* The same down to the sheet's foot */
void   lr_flow_lines_to_foot (LrFlow *flow);
/* A drawing as wide as the text. @data (transfer full), freed by @destroy */
void   lr_flow_figure    (LrFlow *flow, double height_pt, LrFlowDraw draw, gpointer data, GDestroyNotify destroy);
/* A drawing on a sheet of its own, upright or lying, under a title as of lr_flow_title() */
void   lr_flow_whole     (LrFlow *flow, const char *title, const char *note, gboolean is_lying, LrFlowDraw draw, gpointer data,
                          GDestroyNotify destroy);
/* The room that such a drawing has, from 0, 0 [pt] */
void   lr_flow_whole_box (const LrFlow *flow, gboolean is_lying, LrBox *box);

/* --- further_NAME.c: each adds its list to the flow -------------------------------------------------------------- */

void lr_further_run       (LrFlow *flow);
void lr_further_checks    (LrFlow *flow);
void lr_further_questions (LrFlow *flow);
void lr_further_tape      (LrFlow *flow);
void lr_further_grid      (LrFlow *flow);
void lr_further_packing   (LrFlow *flow);

/* --- further_flow.c, further_break.c, further_draw.c: for further.c --------------------------------------------------------------- */

typedef enum { LR_BLOCK_TITLE, LR_BLOCK_GROUP, LR_BLOCK_PARAGRAPH, LR_BLOCK_ROW, LR_BLOCK_LINES, LR_BLOCK_FIGURE, LR_BLOCK_WHOLE } LrBlockKind;

typedef struct
{
  LrBlockKind         kind;
  char               *text, *note;
  const LrFlowColumn *columns;
  gsize               n_columns;
  char               *cell[LR_FLOW_MAX_CELLS];
  LrFlowBox           box;
  guint               n_lines;
  gboolean            fills_sheet; /* lines: as many as there is room for */
  gboolean            is_lying;
  LrFlowDraw          draw;
  gpointer            data;
  GDestroyNotify      destroy;
  double              pad;    /* over and under the text of a row or paragraph [pt] */
  double              height; /* without heads [pt] */

  /* where it came to stand */
  guint               sheet;
  double              y;      /* of its upper edge in the sheet's box */
  gboolean            has_heads; /* of its table above it */
} LrBlock;

/* A sheet of a flow */
typedef struct
{
  const LrBlock *title;     /* LR_BLOCK_TITLE or LR_BLOCK_WHOLE */
  const LrBlock *group;     /* that goes on from the sheet before; may be NULL */
  gboolean       goes_on;   /* its list began on another sheet */
  gboolean       is_lying;
} LrFlowSheet;

struct LrFlow
{
  const LrSheet      *sheet;
  GPtrArray          *blocks;  /* LrBlock */
  GArray             *sheets;  /* LrFlowSheet, once it is broken */
  const LrFlowColumn *columns; /* of the rows to come */
  gsize               n_columns;
  double              ascent, line; /* of body type [pt] */
};

#define LR_FLOW_MARGIN_PT    (14.0 * LR_MM_PT)
#define LR_FLOW_HEAD_PT      46.0 /* height of what stands over the text */
#define LR_FLOW_FOOT_PT      14.0
#define LR_FLOW_BODY_SIZE    9.0
#define LR_FLOW_HEADS_SIZE   7.0
#define LR_FLOW_NOTE_SIZE    7.5
#define LR_FLOW_GROUP_SIZE   10.0
#define LR_FLOW_TITLE_SIZE   15.0
#define LR_FLOW_PAD_PT       3.2  /* over and under the text of a row */
#define LR_FLOW_TIGHT_PT     1.7  /* the same where a list would go on for a few rows */
#define LR_FLOW_GAP_PT       8.0  /* between columns */
#define LR_FLOW_BOX_PT       8.5  /* side of a box to tick */
#define LR_FLOW_BOXES_PT     15.0 /* width of the column of boxes */
#define LR_FLOW_HEADS_PT     13.0 /* height of a table's heads */
#define LR_FLOW_GROUP_PT     24.0
#define LR_FLOW_LEAST_LINES  3
#define LR_FLOW_RULED_PT     (8.0 * LR_MM_PT) /* between ruled lines: as handwriting needs, common practice, no source */

LrFlow *lr_flow_new    (const LrSheet *sheet);
void    lr_flow_free   (LrFlow *flow);
void    lr_flow_break  (LrFlow *flow);
void    lr_flow_draw   (const LrFlow *flow, guint index, guint n_sheets, guint n_before);
/* Left edge and width of a column of a row, from the text's left edge [pt] */
void    lr_flow_column (const LrFlow *flow, const LrBlock *block, gsize index, double *x, double *width);
LrTextStyle lr_flow_style (double width);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrFlow, lr_flow_free)
