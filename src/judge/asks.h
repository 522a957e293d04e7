/* asks.h - what the place is asked to do, made from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the user wrote comes first, as it is; then each family that wants something adds its rows. A request that the user already made,
 * with the thing's name in it, is not made again: it is given the reason.
 */

#pragma once

#include "study.h"
#include "units.h"

typedef struct
{
  gboolean is_own; /* the user wrote it */
  char *id;       /* of the thing that it is about; "" for the room, or not known */
  char *text;     /* "Fridge off" */
  char *reason;   /* "≈ 36 dB over noise, not 24" */
  char *from, *to; /* "09:50"; "" for all the time */
} LrAsk;

/* (transfer full) (element-type LrAsk): in the order of asking */
GPtrArray *lr_asks_new (const LrStudy *study, LrUnits units);
/* (transfer full): "Fridge off, 09:50 to 11:30 (≈ 36 dB over noise, not 24)." */
char      *lr_ask_sentence (const LrAsk *ask);
/* (transfer full): those that follow from the plan, and the user's own that it gives a reason for, one a line */
char      *lr_asks_made_text (const GPtrArray *asks);
/* For the families that ask. All texts are copied; "" for none. @item (nullable): what it is about */
gboolean   lr_asks_has_own (const GPtrArray *asks, const LrItem *item); /* the user asks for something about it */
void       lr_asks_add (GPtrArray *asks, const LrItem *item, const char *text, const char *reason, const char *from, const char *to);
/* "asks" of the remarks as JSON; (transfer full) */
JsonNode  *lr_asks_to_json (const GPtrArray *asks);

/* asks_sound.c */
void       lr_asks_add_sound (GPtrArray *asks, const LrStudy *study, LrUnits units);

/* asks_power.c */
void       lr_asks_add_power (GPtrArray *asks, const LrStudy *study, LrUnits units);
