/* page_private.h - how the parts of the one-page plan fit together
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All lengths on the sheet are points (1/72 in) from its upper left corner, y down.
 *
 *   page.c             where everything stands, and what is drawn in which order
 *   page_place.c       the largest standard scale that fits, and what it leaves to the others
 *   page_plan.c        the floor plan, its title and scale bar
 *   page_corners.c     the numbers of the corners
 *   page_chains.c      which dimensions a room is given
 *   page_dimensions.c  drawing them
 *   page_table.c       what stands in a table or a list
 *   page_tables.c      tables and lists: measuring, cutting, drawing
 *   page_columns.c     where the columns of a table stand
 *   page_cameras.c     what the table of cameras says
 *   page_rows.c        what the tables of lights and sound say
 *   page_tape.c        places by tape
 *   page_care.c        what can hurt someone
 *   page_found.c       what is otherwise than planned
 *   page_column.c      the right column: when, who, frames, tables, lists
 *   page_frames.c      the two pictures as they will be cut, and the figures of every cut
 *   page_block.c       the title block
 *   page_pdf.c         the surface, metadata, the file
 */

#pragma once

#include "page.h"
#include "tape_marks.h"
#include "text.h"
#include "view.h"

#define LR_MM_PT (72.0 / 25.4)
#define LR_IN_PT 72.0

#define LR_PAGE_MARGIN_PT    (10.0 * LR_MM_PT)
#define LR_PAGE_BLOCK_PT     (11.2 * LR_MM_PT) /* height of the title block */
#define LR_PAGE_FOOT_PT      7.0 /* over the title block */
#define LR_PAGE_COLUMN_PT    (94.0 * LR_MM_PT) /* width of the right column */
#define LR_PAGE_COLUMN_MIN_PT (78.0 * LR_MM_PT)
#define LR_PAGE_GUTTER_PT    (7.0 * LR_MM_PT)
#define LR_PAGE_GUTTER_MIN_PT (4.0 * LR_MM_PT)

#define LR_PAGE_TITLE_SIZE 16.5
#define LR_PAGE_DAY_SIZE   10.0
#define LR_PAGE_HEAD_SIZE  8.0  /* titles of tables and lists */
#define LR_PAGE_BODY_SIZE  7.0
#define LR_PAGE_NARROW_SIZE 6.6 /* of the body when the column is narrow */
#define LR_PAGE_NOTE_SIZE  6.8
#define LR_PAGE_LEAST_SIZE 6.5  /* heads of columns; nothing is smaller */

typedef struct
{
  double x, y, width, height;
} LrBox;

/* What every part of the page is given */
typedef struct
{
  cairo_t             *cr;
  const LrTheme       *theme;
  const LrStudy       *study;
  const LrRemarks     *remarks; /* may be NULL while only the scale is asked for */
  const LrPageOptions *options;
  double               body_size; /* of the type of tables and lists [pt] */
} LrSheet;

typedef enum { LR_EDGE_BOTTOM, LR_EDGE_RIGHT, LR_EDGE_TOP, LR_EDGE_LEFT, LR_N_EDGES } LrEdge;

/* --- page_chains.c, page_dimensions.c ------------------------------------------------------------------------------------------- */

typedef struct
{
  double at_m;    /* along the chain */
  double level_m; /* of the wall's inner face that the extension line comes from, along @out */
} LrChainPoint;

/* A row of dimensions that share one line */
typedef struct
{
  LrEdge   edge;
  gboolean is_aligned;   /* along its own slanting or hidden wall, not along the edge of the room's box */
  LrVec2   along, out;   /* unit, in the room */
  double   level_m;      /* of the inner face that it is set off from, along @out */
  double   offset_pt;    /* of its line from the outer face */
  double   stubs_pt;     /* where extension lines start at the earliest, from the outer face */
  GArray  *points;       /* LrChainPoint, in order of at_m */
} LrChain;

GPtrArray *lr_page_chains_new  (const LrSetup *setup);
double     lr_page_chains_reach_pt (const GPtrArray *chains, LrEdge edge);
void       lr_page_chains_draw (const LrSheet *sheet, const LrView *view, const GPtrArray *chains);

/* --- page_table.c, page_tables.c --------------------------------------------------------------------------------- */

#define LR_MAX_CELLS 6
#define LR_PAGE_CELLS_X_PT 19.8 /* right of the tags */

typedef struct
{
  const char *head;         /* to be translated; NULL: none */
  LrAlign     align;        /* left or right */
  gboolean    is_flexible;  /* gives way when the table is too wide: what is longer ends in an ellipsis */
} LrColumn;

typedef enum { LR_BULLET_NONE, LR_BULLET_DOT, LR_BULLET_BOX, LR_BULLET_GRADE } LrBullet;

typedef struct
{
  LrItemKind kind;
  char      *tag;
  char      *cell[LR_MAX_CELLS];
  LrGrade    grade;
  char      *markup;  /* a list's sentence */
  double     height;  /* of the wrapped sentence's lines after the first */
} LrRow;

/* A table when it has columns, else a list */
typedef struct
{
  const char     *anchor;    /* name of its place in the outline */
  char           *title;
  char           *note;      /* at the right of the title; may be NULL */
  const LrColumn *columns;
  gsize           n_columns;
  double          x[LR_MAX_CELLS];     /* of each column's left edge, from the table's */
  double          width[LR_MAX_CELLS]; /* of each column */
  GPtrArray      *rows;      /* LrRow */
  GPtrArray      *feet;      /* sentences under a table */
  guint           n_foot_lines; /* of them, wrapped */
  LrBullet        bullet;
  gboolean        is_boxed;
  guint           n_shown;   /* rows; when it is less than all, a line "and 3 more" follows */
} LrTable;

LrTable *lr_table_new     (const char *anchor, const char *title);
void     lr_table_free    (LrTable *table);
LrRow   *lr_table_add     (LrTable *table, LrItemKind kind, const char *tag);
void     lr_table_add_sentence (LrTable *table, LrGrade grade, char *markup);
/* Finds the places of the columns and breaks the sentences */
void     lr_table_wrap    (const LrSheet *sheet, LrTable *table, double width);
void     lr_table_place_columns (const LrSheet *sheet, LrTable *table, double width);
/* From the upper edge of its title to the foot of its last line; @ease 0..1 from tight to airy */
double   lr_table_height  (const LrTable *table, double ease);
void     lr_table_draw    (const LrSheet *sheet, const LrTable *table, double x, double y, double width, double ease);
void     lr_table_draw_heads (const LrSheet *sheet, const LrTable *table, double x, double y);
void     lr_table_draw_row   (const LrSheet *sheet, const LrTable *table, const LrRow *row, double x, double y);
char    *lr_page_more_text   (guint n);

/* --- page_cameras.c ---------------------------------------------------------------------------------------------- */

LrTable *lr_page_cameras_new (const LrSheet *sheet);

/* --- page_rows.c ------------------------------------------------------------------------------------------------- */

/* (transfer full): what a thing is called on the page */
char    *lr_page_item_name   (const LrItem *item);
LrTable *lr_page_lights_new  (const LrSheet *sheet);
LrTable *lr_page_sound_new   (const LrSheet *sheet);

/* --- page_tape.c ------------------------------------------------------------------------------------------------- */

/* Height of the tape table with so many rows in each half, its title included */
double   lr_page_tape_height  (guint n_lines);
guint    lr_page_tape_lines   (const LrSheet *sheet);
void     lr_page_tape_draw    (const LrSheet *sheet, const LrBox *box, guint n_lines);

/* --- page_corners.c ---------------------------------------------------------------------------------------------- */

void     lr_page_corners_draw (const LrSheet *sheet, const LrView *view, const GArray *marks);

/* --- page_care.c ------------------------------------------------------------------------------------------------- */

LrTable *lr_page_care_new (const LrSheet *sheet);

/* --- page_found.c ------------------------------------------------------------------------------------------------ */

/* The plan with the set-up as planned shown, of which the sheet's is as found; (transfer full) (nullable) */
LrPlan  *lr_page_planned   (const LrSheet *sheet);
LrTable *lr_page_found_new (const LrSheet *sheet);

/* --- page_column.c ----------------------------------------------------------------------------------------------- */

void lr_page_column_draw (const LrSheet *sheet, const LrBox *box);

/* --- page_frames.c ----------------------------------------------------------------------------------------------- */

double lr_page_frames_draw (const LrSheet *sheet, const LrBox *box, double y, double missing_pt);
double lr_page_frames_foot (const LrSheet *sheet, const LrBox *box, double y);

/* --- page_block.c ------------------------------------------------------------------------------------------------ */

void lr_page_block_draw (const LrSheet *sheet, const LrBox *box);

/* --- page_place.c, page_plan.c ------------------------------------------------------------------------------------------------- */

#define LR_PAGE_NORTH_PT 34.0 /* width kept free for the north sign at the right of the title */
#define LR_PAGE_BAR_PT   15.6 /* height of the scale bar's row */

typedef struct
{
  int    scale;
  double step_m;  /* of the scale bar */
  int    n_steps;
} LrStandardScale;

/* Where the plan stands and what that leaves to the others */
typedef struct
{
  int        scale;       /* 50 for 1:50 */
  gboolean   has_plan;    /* the room has walls, and a sheet can hold it */
  LrView     view;
  LrVec2     low_m, high_m; /* the room's box */
  GPtrArray *chains;
  double     column_width;
  double     gutter;
  LrBox      area;        /* of title, plan and scale bar */
  double     bar_y;       /* top of the scale bar's row */
  guint      tape_lines;
} LrPlanPlace;

void lr_page_plan_place (const LrSheet *sheet, double width_pt, double height_pt, LrPlanPlace *place);
const LrStandardScale *lr_page_standard_scale (const LrSheet *sheet, int denominator);
/* The largest at which so much fits; (nullable) */
const LrStandardScale *lr_page_scale_for (const LrSheet *sheet, double width_m, double height_m, double width_pt, double height_pt);
void lr_page_plan_clear (LrPlanPlace *place);
/* Scale, and a bar that proves it, from @left to @right ; both must fit between */
void lr_page_scale_draw (const LrSheet *sheet, const LrStandardScale *scale, double scale_pt, double left, double right, double base);
void lr_page_title_draw (const LrSheet *sheet, const LrPlanPlace *place);
void lr_page_plan_draw  (const LrSheet *sheet, const LrPlanPlace *place);

/* --- page.c: small helpers of all parts -------------------------------------------------------------------------- */

double lr_page_put        (const LrSheet *sheet, double size, int weight, LrAlign align, LrColor color, double x, double y, const char *text);
double lr_page_put_markup (const LrSheet *sheet, double size, LrColor color, double x, double y, double width, const char *markup);
double lr_page_put_paragraph (const LrSheet *sheet, LrColor color, double size, double x, double y, double width, const char *markup);
void   lr_page_put_line   (const LrSheet *sheet, LrColor color, double size, double x, double y, double width, const char *markup);
double lr_page_text_width (const LrSheet *sheet, double size, int weight, const char *text);
gboolean    lr_page_is_imperial (const LrSheet *sheet);
const char *lr_page_title_text  (const LrSheet *sheet); /* of the job, else of the set-up */
void   lr_page_rule       (const LrSheet *sheet, LrLineWeight weight, double x, double y, double width);
/* Structure of the document for readers that do not look at it; nothing on other surfaces than PDF */
void   lr_page_tag_begin  (const LrSheet *sheet, const char *tag);
void   lr_page_tag_end    (const LrSheet *sheet, const char *tag);
void   lr_page_anchor     (const LrSheet *sheet, const char *name);
