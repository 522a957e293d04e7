/* plan_private.h - making the parts of a plan: for the reader, the edits and the generic kit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every part is reference counted (atomically) and immutable once it is in a plan. new and copy give a fresh one that
 * may be written until then; a copy shares the parts below it.
 */

#pragma once

#include "plan.h"

LrJob      *lr_job_new         (void);
LrJob      *lr_job_copy        (const LrJob *job);
void        lr_job_unref       (LrJob *job);
gboolean    lr_job_equal       (const LrJob *a, const LrJob *b);

/* Lists of a location and of a job: their rows are described by a table */
typedef enum { LR_LIST_CONTACTS, LR_LIST_QUESTIONS, LR_LIST_RUN, LR_N_LISTS } LrList;
typedef enum { LR_LISTS_OF_LOCATION, LR_LISTS_OF_JOB } LrListsOf;

typedef struct
{
  LrListsOf           of;             /* what has it */
  const char         *key;            /* in the file */
  const LrPropTable *(*table) (void);
  gsize               size;           /* of a row */
  gsize               unknown_offset; /* of its JsonObject * */
  gsize               rows_offset, n_offset; /* in the owner */
  gboolean            is_optional;    /* left out of the file when it is empty */
} LrListInfo;

const LrListInfo *lr_list_info (LrList list);
/* @owner: the LrLocation or LrJob that has the list */
gpointer    lr_list_get        (gconstpointer owner, LrList list, gsize *n);
void        lr_list_set        (gpointer owner, LrList list, gconstpointer rows, gsize n); /* of a fresh owner: copies of them */
/* Makes room for @n fresh rows, which are empty; an owned list that may be written */
gpointer    lr_list_make       (gpointer owner, LrList list, gsize n);
JsonObject **lr_list_unknown_of (LrList list, gpointer row);
void        lr_lists_copy      (LrListsOf of, gpointer to, gconstpointer from); /* @to: byte by byte like @from */
void        lr_lists_clear     (LrListsOf of, gpointer owner);
gboolean    lr_lists_equal     (LrListsOf of, gconstpointer a, gconstpointer b);

LrLocation *lr_location_new    (void);
LrLocation *lr_location_copy   (const LrLocation *location);
LrLocation *lr_location_ref    (const LrLocation *location);
void        lr_location_unref  (LrLocation *location);
gboolean    lr_location_equal  (const LrLocation *a, const LrLocation *b);

LrRoom     *lr_room_new        (void);
LrRoom     *lr_room_copy       (const LrRoom *room);
LrRoom     *lr_room_ref        (const LrRoom *room);
void        lr_room_unref      (LrRoom *room);
void        lr_room_drop_notes (LrRoom *room); /* of a fresh room: what was taped */
gboolean    lr_room_equal      (const LrRoom *a, const LrRoom *b);

LrSetup    *lr_setup_new       (const char *id, const char *name); /* an empty room, no items */
LrSetup    *lr_setup_copy      (const LrSetup *setup);             /* a pointer array of its own over the same items */
LrSetup    *lr_setup_ref       (const LrSetup *setup);
void        lr_setup_unref     (LrSetup *setup);
gboolean    lr_setup_equal     (const LrSetup *a, const LrSetup *b);
/* goes_with.c */
int         lr_setup_wall_corner (const LrSetup *setup, const LrItem *item, int wall); /* it stands in: -1 first, 1 second, 0 none */
void        lr_item_extent_m   (const LrItem *item, LrVec2 from_m, LrVec2 along, double *low_m, double *high_m);
void        lr_setup_insert    (LrSetup *setup, LrItem *item); /* (transfer full) item: behind the last of its kind */

LrKitEntry *lr_kit_entry_new   (LrItem *item);                     /* (transfer full) item */
LrKitEntry *lr_kit_entry_copy  (const LrKitEntry *entry);
void        lr_kit_entry_unref (LrKitEntry *entry);
gboolean    lr_kit_entry_equal (const LrKitEntry *a, const LrKitEntry *b);
gboolean    lr_kit_holds_kind  (LrItemKind kind);
GPtrArray  *lr_kit_new_generic (void);

LrPlan     *lr_plan_alloc      (void);                             /* no set-ups, no kit, an empty job: not yet a plan */
LrPlan     *lr_plan_copy       (const LrPlan *plan);               /* shares everything; setups is an array of its own */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrJob, lr_job_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLocation, lr_location_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrRoom, lr_room_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrSetup, lr_setup_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrKitEntry, lr_kit_entry_unref)
