/* labels.h - text beside things, where there is room for it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "text.h"
#include "view.h"

typedef struct _LrLabels LrLabels;

/* Later ones yield first. Job words stand beside a tag and yield after the dimensions */
typedef enum
{
  LR_LABEL_FIGURE,    /* of a remark, distances in hand: never yields */
  LR_LABEL_TAG,       /* never yields; gets a leader */
  LR_LABEL_NAME,      /* people */
  LR_LABEL_DIMENSION,
  LR_LABEL_NOTE,      /* walls, windows, sockets, noises */
  LR_LABEL_FURNITURE,
  LR_LABEL_SCALE,     /* stops, dB */
  LR_N_LABEL_RANKS
} LrLabelRank;

typedef struct
{
  LrLabelRank  rank;
  LrItemKind   tag_kind;   /* with tag */
  const char  *tag;        /* may be NULL */
  double       tag_size;
  const char  *text;       /* may be NULL; may hold line breaks; right of the tag, or over it */
  LrTextStyle  style;
  LrColor      color, halo;
  gboolean     is_tag_under;
  gboolean     has_halo;
  gboolean     stands_on_lines; /* a scale on the line that it measures */
  gboolean     parts_line; /* the dashed line that it stands on ends clear of it */
  gboolean     text_may_yield; /* the text goes before the tag: job words */
  int          first;      /* direction to try first, in eighths of a turn from E by SE */
  gboolean     has_first;  /* that direction, near or far but clear of lines, before all others */
  double       angle_rad;  /* of the text on the device, clockwise; only for fixed places */
} LrLabel;

LrLabels *lr_labels_new           (cairo_t *cr, const LrView *view);
void      lr_labels_free          (LrLabels *labels);

/* What labels keep clear of; device units */
void      lr_labels_block_disc    (LrLabels *labels, LrVec2 centre, double radius);
void      lr_labels_block_polygon (LrLabels *labels, const LrVec2 *corners, gsize n);
void      lr_labels_block_segment (LrLabels *labels, LrVec2 a, LrVec2 b);
void      lr_labels_block_furniture (LrLabels *labels, const LrVec2 *corners, gsize n); /* its own name and scales may stand on it */
void      lr_labels_avoid_segment (LrLabels *labels, LrVec2 a, LrVec2 b); /* a thin line: crossed only if nothing else is free */
void      lr_labels_block_box     (LrLabels *labels, double x, double y, double width, double height);

/* Tags, names and figures stay within this box; without it they may stand anywhere */
void      lr_labels_set_bounds    (LrLabels *labels, LrVec2 low, LrVec2 high);

/* Beside an outline (device units: a disc when n is 0): E, SE, S, ... 8 px off, then 20; texts are copied */
void      lr_labels_add_beside    (LrLabels *labels, const LrLabel *label, const LrOutline *outline);
/* Centred on the first free one of some places; FIGURE takes the first in any case */
void      lr_labels_add_at        (LrLabels *labels, const LrLabel *label, const LrVec2 *places, gsize n);

/* By rank: finds their places and draws them */
void      lr_labels_draw          (LrLabels *labels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLabels, lr_labels_free)
