/* document.h - what a window shows: a plan, what is computed from it, and what is in hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one way of data in the window: a panel or the canvas asks for an edit (commit, preview), the document makes the next
 * plan current, studies and judges it and tells everyone ("changed"). Nobody else holds state of the plan. Undo is the
 * list of plans.
 */

#pragma once

#include <glib-object.h>

#include "remarks.h"
#include "view.h"

#define LR_TYPE_DOCUMENT (lr_document_get_type ())
G_DECLARE_FINAL_TYPE (LrDocument, lr_document, LR, DOCUMENT, GObject)

/* Signals:
 *   "changed"     the plan shown, with its study and remarks, is another (commit, preview, undo, open, units)
 *   "hand"        what is selected, pointed at, or the remark in hand is another; the plan is the same
 *   "lit"         levels of light have come for the plan shown, and its remarks tell of them
 *   "judged"      a preview rests, and its remarks tell what would mend them; all else is the same
 *   "history"     can-undo, can-redo, has-changes, file or title may be others
 * Properties (read with getters): see below. */

LrDocument      *lr_document_new          (void); /* an empty plan */

LrPlan          *lr_document_get_plan     (LrDocument *self); /* (transfer none): the one shown: a preview while there is one */
LrStudy         *lr_document_get_study    (LrDocument *self); /* (transfer none) */
LrRemarks       *lr_document_get_remarks  (LrDocument *self); /* (transfer none) */
LrLightLevels   *lr_document_get_levels (LrDocument *self); /* (transfer none): of the plan shown */
gboolean         lr_document_has_current_levels (LrDocument *self); /* they are of the plan shown */
void             lr_document_set_starting (LrDocument *self, gboolean is_starting); /* what the room gives back waits for the first frame */

/* Edits: take the plan that an edit returned (transfer full). NULL with @error: says the sentence by "message", changes nothing */
void             lr_document_commit       (LrDocument *self, LrPlan *next, const char *what); /* one undo step, "Move camera B" */
void             lr_document_preview      (LrDocument *self, LrPlan *next); /* shown, not in the history; from the committed plan */
void             lr_document_end_preview  (LrDocument *self, gboolean keep, const char *what); /* keep: one undo step */
gboolean         lr_document_has_preview  (LrDocument *self);
LrPlan          *lr_document_get_committed(LrDocument *self); /* (transfer none): what a drag starts from */
/* Several nudges of one thing in a row are one step when @merge_key is the same as the last commit's and it was under a second ago */
void             lr_document_commit_merge (LrDocument *self, LrPlan *next, const char *what, const char *merge_key);
/* Commits @next as the one above; NULL: says why, of @error, which is looked at only here, for arguments are evaluated in any order */
gboolean         lr_document_try          (LrDocument *self, LrPlan *next, const char *what, const char *merge_key, GError **error);
/* A sentence for the window's notice: an edit that was refused and the like. Emits "message" (char *) */
void             lr_document_say          (LrDocument *self, const char *sentence);

void             lr_document_undo         (LrDocument *self);
void             lr_document_redo         (LrDocument *self);
const char      *lr_document_get_undo_title (LrDocument *self); /* (nullable) */
const char      *lr_document_get_redo_title (LrDocument *self); /* (nullable) */

/* Files */
gboolean         lr_document_open         (LrDocument *self, const char *path, GError **error); /* untouched on error */
gboolean         lr_document_save         (LrDocument *self, const char *path, GError **error); /* NULL: its own path */
void             lr_document_reset        (LrDocument *self, LrPlan *plan, const char *path);    /* new, example (path NULL) */
const char      *lr_document_get_path     (LrDocument *self); /* (nullable) */
gboolean         lr_document_has_changes  (LrDocument *self);
gboolean         lr_document_changed_on_disk (LrDocument *self);

/* In hand */
const char      *lr_document_get_selected (LrDocument *self); /* id, (nullable) */
void             lr_document_select       (LrDocument *self, const char *id);
const char      *lr_document_get_pointed  (LrDocument *self); /* (nullable) */
void             lr_document_point_at     (LrDocument *self, const char *id);
const LrRemark  *lr_document_get_remark   (LrDocument *self); /* (nullable): in hand */
void             lr_document_take_remark  (LrDocument *self, const char *key); /* NULL: none */
void             lr_document_point_at_remark (LrDocument *self, const char *key); /* in hand until NULL */
LrPlan          *lr_document_get_ghost    (LrDocument *self); /* (transfer none) (nullable): plan with the remedy of the remark in hand */
void             lr_document_mend         (LrDocument *self, const char *key); /* applies its remedy as one undo step */

/* As found (document_found.c) */
LrPlan          *lr_document_get_planned  (LrDocument *self); /* (transfer none) (nullable): shows the set-up as planned of the one shown */
gboolean         lr_document_get_shows_planned (LrDocument *self); /* on the sheet; TRUE to begin with */
void             lr_document_set_shows_planned (LrDocument *self, gboolean shows_planned); /* emits "hand" */
/* A plan that is a ghost on the sheet while no remark is in hand, until the plan shown is another (transfer full) (nullable); emits "hand" */
void             lr_document_offer        (LrDocument *self, LrPlan *offer);

LrUnits          lr_document_get_units    (LrDocument *self);
void             lr_document_set_units    (LrDocument *self, LrUnits units);
/* While it is on, a camera that is moved on the sheet keeps the size of its subject by its lens */
gboolean         lr_document_get_holds_framing (LrDocument *self);
void             lr_document_set_holds_framing (LrDocument *self, gboolean holds_framing);
guint            lr_document_get_frame_lines (LrDocument *self); /* LrFrameLines: in the viewfinders */
void             lr_document_set_frame_lines (LrDocument *self, guint lines); /* emits "hand" */
guint            lr_document_get_shown    (LrDocument *self); /* LrShow: overlays on the sheet */
void             lr_document_set_shown    (LrDocument *self, guint shown); /* emits "hand" */
int              lr_document_get_sun_minute (LrDocument *self); /* whose sun the sheet shows; 0: the middle of the shoot */
void             lr_document_set_sun_minute (LrDocument *self, int minute);
