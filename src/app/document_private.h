/* document_private.h - shared by the files that make up the document
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include "history.h"

typedef enum
{
  LR_DOCUMENT_CHANGED,
  LR_DOCUMENT_HAND,
  LR_DOCUMENT_HISTORY,
  LR_DOCUMENT_LIT,
  LR_DOCUMENT_JUDGED,
  LR_DOCUMENT_MESSAGE,
  LR_N_DOCUMENT_SIGNALS
} LrDocumentSignal;

struct _LrDocument
{
  GObject    parent_instance;

  LrHistory  history;
  LrPlan    *preview;  /* may be NULL */
  LrStudy   *study;
  LrRemarks *remarks;
  LrLightLevels *levels;   /* of the plan shown; NULL: none yet */
  guint      rest_source;  /* 0: the plan shown has rested for a moment */
  gboolean   is_starting;  /* a window is still to be painted */
  GCancellable *solving;   /* NULL: nothing is computed */

  char      *path;     /* may be NULL */
  char      *etag;     /* of the file as read or written by us; may be NULL */
  LrPlan    *saved;    /* what the file holds; NULL: nothing saved */

  char      *selected, *pointed, *remark_key;
  char      *kept_remark; /* key of the one that was in hand before another is pointed at */
  gboolean   is_remark_pointed;
  gboolean   is_remark_fine; /* when it was taken */
  LrPlan    *ghost;    /* made when asked for */
  LrPlan    *offer;    /* a ghost without a remark; may be NULL */
  LrPlan    *planned;  /* made when asked for */
  gboolean   hides_planned;
  LrUnits    units;
  guint      shown;
  int        sun_minute; /* of the day; 0: the middle of the shoot */
  guint      frame_lines;
  gboolean   holds_framing;
};

/* document.c */
void lr_document_emit      (LrDocument *self, LrDocumentSignal signal); /* not MESSAGE: it has an argument */
void lr_document_show_plan (LrDocument *self); /* the plan shown is another: compute, let go of what is gone, tell */
void lr_document_take_levels (LrDocument *self, LrLightLevels *levels); /* (transfer full): of the plan shown; judges anew, tells */
void lr_document_rest      (LrDocument *self); /* the plan shown rests: remedies, if they were left out */

/* document_light.c */
void lr_document_light_again (LrDocument *self); /* straight light for the plan shown now, the room's soon */
void lr_document_light_clear (LrDocument *self);
