/* placing.h - bringing a thing into the room: a sensible place for it, and what it then looks and aims at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Things are named as in a drag: "kit:ID" is an entry of the kit, "room:WORD" one of the things that any room may have.
 */

#pragma once

#include "study.h"

typedef struct
{
  const char *word;   /* "chair" */
  const char *title;  /* for people, to be translated: "Chair" */
  LrItemKind  kind;
  int         form;   /* of its kind; a person's role is the one that is still missing */
} LrRoomThing;

/* People and furniture first, then what is built in */
const LrRoomThing *lr_room_things      (gsize *n);
const LrRoomThing *lr_room_thing_find  (const char *word);       /* (nullable) */
/* (transfer full): the item that bringing it into @setup makes */
LrItem            *lr_room_thing_new   (const LrRoomThing *thing, const LrSetup *setup);

/* A free place that makes sense for @item beside what is there already, and its facing; FALSE: there is no room drawn yet */
gboolean lr_placing_find (const LrStudy *study, const LrItem *item, LrVec2 *at_m, double *facing_rad);

/* (transfer full): the next plan with the thing @name in it, aimed and looking where its like usually does. @at_m: where it
 * was dropped, NULL: a sensible place. @chosen (nullable): the item in hand; a lens goes on it if it is a camera. @id (out,
 * optional, transfer full): what to take in hand. NULL with an error if it cannot be done. */
LrPlan  *lr_placing_bring (const LrStudy *study, const char *name, const LrVec2 *at_m, const char *chosen, char **id, GError **error);
