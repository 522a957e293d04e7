/* plan_edit.h - every edit: from one plan to the next
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each returns (transfer full) the next plan, or NULL with an error and nothing changed. Values are rounded to what the
 * file can hold. All work on the shown set-up.
 */

#pragma once

#include "formats.h"
#include "plan.h"

/* One change of one property of one item: the smallest edit, and what remedies are made of */
typedef struct
{
  const char *id;    /* of the item */
  const char *key;   /* "x-mm", "lens-height-mm": of its kind's table */
  double      value; /* inside units; choices: the enum's value; flags 0 or 1 */
} LrChange;

/* A room by tape */
typedef struct
{
  const LrVec2     *corners_m;
  gsize             n_corners;
  const LrTapeNote *tape;      /* unknown members are not taken */
  gsize             n_tape;
  const LrTurnNote *turns;
  gsize             n_turns;
} LrTaped;

LrPlan *lr_plan_change      (const LrPlan *plan, const LrChange *changes, gsize n, GError **error);
LrPlan *lr_plan_change_text (const LrPlan *plan, const char *id, const char *key, const char *text, GError **error);
/* The bytes of a photometric file become the light's, under that name; @data NULL: none. The error: "line 14: the angles do not rise" */
LrPlan *lr_plan_set_lamp_file (const LrPlan *plan, const char *id, const char *name, const char *data, gsize length, GError **error);
/* Floor things to the point; wall things to the nearest place on a wall; a lead's whole path; worn things: refused */
LrPlan *lr_plan_move        (const LrPlan *plan, const char *id, LrVec2 to_m, GError **error);
LrPlan *lr_plan_turn        (const LrPlan *plan, const char *id, double facing_rad, GError **error);
LrPlan *lr_plan_set_path    (const LrPlan *plan, const char *id, const LrVec2 *path_m, gsize n, GError **error);
/* How a lead is laid: ids and path, where NULL and 0 leave what is there */
typedef struct
{
  const char   *socket, *feeds, *kit;
  const LrVec2 *path_m;
  gsize         n_path;
} LrLeadLaying;

LrPlan *lr_plan_lay_lead    (const LrPlan *plan, const char *id, const LrLeadLaying *laying, GError **error);
LrPlan *lr_plan_move_path_point (const LrPlan *plan, const char *id, gsize index, LrVec2 to_m, GError **error);
/* A copy of @prototype with a fresh id, name and tag stands at @at_m; @id (out, optional, transfer full) */
LrPlan *lr_plan_add         (const LrPlan *plan, const LrItem *prototype, LrVec2 at_m, double facing_rad, char **id, GError **error);
LrPlan *lr_plan_add_from_kit (const LrPlan *plan, const char *kit_id, LrVec2 at_m, double facing_rad, char **id, GError **error);
LrPlan *lr_plan_remove      (const LrPlan *plan, const char *id, GError **error); /* references to it become "" */
LrPlan *lr_plan_duplicate   (const LrPlan *plan, const char *id, LrVec2 by_m, char **new_id, GError **error);

LrPlan *lr_plan_set_corners (const LrPlan *plan, const LrVec2 *corners_m, gsize n, GError **error); /* turned anticlockwise if need be */
/* The same walls elsewhere, as many of them: what was taped stays noted */
LrPlan *lr_plan_shift_corners (const LrPlan *plan, const LrVec2 *corners_m, gsize n, GError **error);
/* A room as it was taped, and the notes that it was made from. Corners in notes count as in @corners_m */
LrPlan *lr_plan_set_taped   (const LrPlan *plan, const LrTaped *taped, GError **error);
LrPlan *lr_plan_move_corner (const LrPlan *plan, gsize corner, LrVec2 to_m, GError **error);
/* The wall keeps its direction and first corner; the corners after it move along by the difference, up to the wall parallel to it */
LrPlan *lr_plan_set_wall_length (const LrPlan *plan, int wall, double length_m, GError **error);
/* Room keys: of its table, or of a surface's behind its name: "walls.reflectance-pct" */
LrPlan *lr_plan_set_room    (const LrPlan *plan, const char *key, double value, GError **error);
LrPlan *lr_plan_set_room_text (const LrPlan *plan, const char *key, const char *text, GError **error);
/* A picture of a floor plan under the room; @file NULL: none. @lies NULL: as the one before */
LrPlan *lr_plan_set_underlay (const LrPlan *plan, const LrPictureFile *file, const char *name, const LrSimilarity *lies, GError **error);
LrPlan *lr_plan_place_underlay (const LrPlan *plan, const LrSimilarity *lies, gboolean is_known, GError **error);
LrPlan *lr_plan_set_job     (const LrPlan *plan, const char *key, const char *text, GError **error);
LrPlan *lr_plan_set_job_number (const LrPlan *plan, const char *key, double value, GError **error);
/* Of the place where the shown set-up is: those that share it keep what they have */
LrPlan *lr_plan_set_location_text (const LrPlan *plan, const char *key, const char *text, GError **error);
LrPlan *lr_plan_set_location (const LrPlan *plan, const char *key, double value, GError **error);
LrPlan *lr_plan_set_contacts (const LrPlan *plan, const LrContact *contacts, gsize n, GError **error);
/* "count", or a number of what the entry is: "converter"; "title", "note" */
LrPlan *lr_plan_set_kit_number (const LrPlan *plan, const char *kit_id, const char *key, double value, GError **error);
LrPlan *lr_plan_set_kit_text (const LrPlan *plan, const char *kit_id, const char *key, const char *text, GError **error);
/* The entry, which is a lens, becomes one of that type; its id and count stay */
LrPlan *lr_plan_set_kit_lens (const LrPlan *plan, const char *kit_id, const LrLensType *type, GError **error);
LrPlan *lr_plan_set_kit_count (const LrPlan *plan, const char *kit_id, int count, GError **error);
LrPlan *lr_plan_set_questions (const LrPlan *plan, const LrQuestion *questions, gsize n, GError **error);
LrPlan *lr_plan_set_run     (const LrPlan *plan, const LrRunEntry *entries, gsize n, GError **error);
/* The box of a line of a list, by its key. A line that is gone keeps its tick: what comes back was done already */
LrPlan *lr_plan_set_ticked  (const LrPlan *plan, const char *list, const char *line, gboolean is_ticked, GError **error);
LrPlan *lr_plan_clear_ticks (const LrPlan *plan, const char *list, GError **error);
/* plan_edit_kit.c: entries come (a copy with an id of its own) and go; what was taken from one stays in the room */
LrPlan *lr_plan_add_kit_entry (const LrPlan *plan, const LrKitEntry *entry, char **id, GError **error);
LrPlan *lr_plan_remove_kit_entry (const LrPlan *plan, const char *kit_id, GError **error);
LrPlan *lr_plan_take_kit    (const LrPlan *plan, GPtrArray *kit, GPtrArray *supplies, GError **error);
LrPlan *lr_plan_begin_with_kit (const LrPlan *plan, GPtrArray *kit, GPtrArray *supplies);
/* What goes along, by its place in the list */
LrPlan *lr_plan_add_supply  (const LrPlan *plan, LrSupplyForm form, GError **error);
LrPlan *lr_plan_remove_supply (const LrPlan *plan, guint index, GError **error);
LrPlan *lr_plan_set_supply_number (const LrPlan *plan, guint index, const char *key, double value, GError **error);
LrPlan *lr_plan_set_supply_text (const LrPlan *plan, guint index, const char *key, const char *text, GError **error);
LrPlan *lr_plan_set_requests (const LrPlan *plan, const char *const *requests, GError **error);
LrPlan *lr_plan_set_limit   (const LrPlan *plan, LrLimit limit, double value, GError **error); /* NAN: back to the default */

LrPlan *lr_plan_show_setup  (const LrPlan *plan, const char *id_or_name, GError **error);
LrPlan *lr_plan_copy_setup  (const LrPlan *plan, const char *name, GError **error); /* the shown one; the copy is shown */
/* A copy as lr_plan_copy_setup() makes it, as found: when its walls move, what stands at them goes along */
LrPlan *lr_plan_copy_found  (const LrPlan *plan, const char *name, GError **error);
/* Turned about a point, then moved: everything that goes with the set. Of leads in a socket that end stays */
LrPlan *lr_plan_move_set    (const LrPlan *plan, LrVec2 about_m, double turn_rad, LrVec2 by_m, GError **error);
LrPlan *lr_plan_new_setup   (const LrPlan *plan, const char *name, GError **error); /* an empty one, which is shown */
/* A level that is wanted in the shown one, by its key */
LrPlan *lr_plan_set_setup   (const LrPlan *plan, const char *key, double value, GError **error);
LrPlan *lr_plan_rename_setup (const LrPlan *plan, const char *name, GError **error);
LrPlan *lr_plan_remove_setup (const LrPlan *plan, GError **error);
/* The shown one so many places later in the list; < 0: earlier. It stops at the ends */
LrPlan *lr_plan_move_setup  (const LrPlan *plan, int by, GError **error);
/* Copies of things of @from, which may be of a plan that was, come into the shown one, as they stand in its room, and @by_m from there.
 * @new_ids (optional) (element-type char*) gets their ids, in the order of @ids */
LrPlan *lr_plan_paste       (const LrPlan *plan, const LrSetup *from, const char *const *ids, gsize n, LrVec2 by_m,
                             GPtrArray *new_ids, GError **error);
/* The same from the shown one into another, which is not shown then */
LrPlan *lr_plan_copy_items  (const LrPlan *plan, const char *const *ids, gsize n, const char *to_id_or_name, GError **error);
