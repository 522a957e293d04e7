/* plan_edit_private.h - what the edits share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An edit begins a copy of the plan, whose shown set-up is fresh and whose items are the old ones, takes a fresh copy of
 * each item that it writes, and gives the copy back when every check has passed.
 */

#pragma once

#include "plan_private.h"

#include "plan_edit.h"

/* (transfer full) (nullable): the next plan; @setup (out, optional): its shown set-up, which may be written */
LrPlan *lr_edit_begin  (const LrPlan *plan, LrSetup **setup, GError **error);
/* The same with a job of its own */
LrPlan *lr_edit_begin_job (const LrPlan *plan, GError **error);
/* The next plan, and the location of its shown set-up, which may be written */
LrPlan *lr_edit_begin_location (const LrPlan *plan, LrLocation **location, GError **error);
/* A fresh item that comes into the set-up gets an id, a tag and a name that are free */
void    lr_edit_name_item (const LrSetup *setup, LrItem *item);
/* (transfer none) (nullable): a fresh copy of the item, in its place in @setup */
LrItem *lr_edit_item   (LrSetup *setup, const char *id, GError **error);
LrItem *lr_edit_item_at (LrSetup *setup, guint index);
/* Puts an item on a wall back between the wall's corners; others are left alone */
void    lr_edit_clamp_to_wall (const LrSetup *setup, LrItem *item);
/* Hangs an item on the wall nearest to @middle_m; the room has walls */
void    lr_edit_hang   (const LrSetup *setup, LrItem *item, LrVec2 middle_m);
gboolean lr_edit_put_number (LrItem *item, const char *key, double value, GError **error);
gboolean lr_edit_check_number (const LrProp *prop, double value, GError **error);
gboolean lr_edit_check_text (const char *label_for_people, const char *text, GError **error);
/* @item (fresh) stops naming @target: what looked or aimed there keeps facing that way, what was worn stays there */
void    lr_edit_forget (const LrSetup *setup, LrItem *item, const LrProp *ref, const LrItem *target);
char   *lr_edit_dup_title (const LrItem *item); /* for people: "Camera A", "Wenna", "drafting table" */
LrVec2  lr_edit_quantise (LrVec2 at_m);
gboolean lr_edit_refuse (const LrItem *item, const char *why, GError **error);
gboolean lr_edit_check_point (LrVec2 at_m, GError **error);
gboolean lr_edit_face   (LrItem *item, double facing_rad, GError **error);
gboolean lr_edit_put_at (const LrSetup *setup, LrItem *item, LrVec2 to_m, GError **error);
/* @setup is fresh and has as many walls as @before: what stands at a wall of @before goes where the wall is now */
gboolean lr_edit_follow_walls (LrSetup *setup, const LrSetup *before, GError **error);
/* Of a room as found, whose corners were moved: what was taped of it and is so no more is forgotten; @wall, if >= 0, is taped */
void     lr_edit_retape (LrRoom *room, const LrRoom *before, int wall, double length_m);
/* Whether a wall of the shown set-up, which is as found, was taped there and not as planned */
gboolean lr_edit_is_taped_anew (const LrPlan *plan, int wall);
