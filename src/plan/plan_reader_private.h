/* plan_reader_private.h - what the files of the reader share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "json_value.h"
#include "plan_private.h"
#include "plan_reader.h"

gboolean lr_read_job   (const LrJsonPlace *root, JsonNode *node, LrJob *job, GError **error);
gboolean lr_read_list  (const LrJsonPlace *owner_place, JsonObject *owner_object, LrList list, gpointer owner, GError **error);
gboolean lr_read_location (const LrJsonPlace *setup_place, JsonNode *node, LrLocation *location, GError **error);
/* (transfer full) (nullable); @before: LrSetup, those before it; @kit_ids: LrItem of every kit entry by id */
LrSetup *lr_read_setup (const LrJsonPlace *place, JsonNode *node, GPtrArray *before, GHashTable *kit_ids, GError **error);
/* The id of a fresh item, not "" and not in @ids yet; @ids gets it */
gboolean lr_read_id    (const LrJsonPlace *place, LrItem *item, GHashTable *ids, GError **error);
/* LrKitEntry into @kit, their items by id into @kit_ids; LrSupply into @supplies */
gboolean lr_read_kit   (const LrJsonPlace *root, JsonNode *node, GPtrArray *kit, GHashTable *kit_ids, GError **error);
gboolean lr_read_supplies (const LrJsonPlace *root, JsonNode *node, GPtrArray *supplies, GError **error);
/* A text that may not be missing; (nullable) */
const char *lr_read_word (const LrJsonPlace *at, JsonObject *object, GError **error);
/* Of a light; the rest passes. Its members that no table has: lr_read_item_keys() */
gboolean lr_read_lamp_file (const LrJsonPlace *place, JsonObject *object, LrItem *item, GError **error);
const char *const *lr_read_item_keys (LrItemKind kind); /* (nullable), NULL-terminated */
/* The picture under a room, if there is one */
gboolean lr_read_picture (const LrJsonPlace *place, JsonObject *object, GPtrArray *before, LrRoom *room, GError **error);
/* What must hold between the members of an item */
gboolean lr_read_check_order (const LrJsonPlace *place, const LrItem *item, GError **error);
/* @ids: LrItem of the set-up by id; NULL for an item of the kit */
gboolean lr_read_check_refs (const LrJsonPlace *place, const LrItem *item, GHashTable *ids, GHashTable *kit_ids,
                             GError **error);
