/* labels_private.h - what placing and drawing labels share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "label_shapes.h"
#include "labels.h"
#include "symbols.h"

#define LR_LABEL_WORD_GAP_PX 5.5
#define LR_LABEL_UNDER_GAP_PX 3.0
#define LR_LABEL_MAX_PLACES 36

typedef struct
{
  LrLabel   label;
  char     *tag, *text;
  double    tag_width, tag_height, text_width, text_height;
  LrOutline outline;          /* to stand beside */
  LrVec2    places[LR_LABEL_MAX_PLACES];
  gsize     n_places;         /* fixed places; 0: beside the outline */
  gboolean  is_placed, has_text, has_leader;
  LrVec2    at;               /* middle of the whole */
  LrVec2    leader_from, leader_to;
} LrLabelEntry;

struct _LrLabels
{
  cairo_t       *cr;
  const LrTheme *theme;
  GArray        *shapes;      /* LrShape */
  GPtrArray     *entries;     /* LrLabelEntry */
  LrVec2         low, high;   /* bounds of tags, names and figures */
};

void lr_labels_block      (LrLabels *labels, LrShape shape, int owner);
/* Tag and text together */
void lr_labels_entry_size (const LrLabels *labels, const LrLabelEntry *entry, double *width, double *height);
/* Finds a place for each label, the first rank first */
void lr_labels_place      (LrLabels *labels);
