/* comparison_json.c - candidate rooms side by side, for other programs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   format, version            "lookroom-comparison", 1
 *   camera-m                   from camera to subject, with which the farthest backgrounds are reckoned
 *   setups [ { id, name, has-room, found-of } ]  of those that were found otherwise the found ones alone; found-of an id or ""
 *   rows [ {                   in the order of the table
 *     key, title, meaning      the key ends in its unit
 *     better                   "more" or "less"
 *     verdict                  "best", "alike", "no-step" (best and worst differ, one and the next do not), "too-few-known"
 *     why                      one line, in the language of the user
 *     figures [ {              of each set-up
 *       setup                  its id
 *       known                  "yes", "in-part", "taken" as usual for it is not noted, or why not: "not-noted", "not-drawn", "not-placed", "no-day", "no-room"
 *       value, text, detail    value is null unless it is known, in part, or taken
 *       is-best
 *     } ]
 *   } ]
 *   summary, undrawn, left-out, places   as under the table
 */

#include "config.h"

#include "comparison_words.h"

#include <glib/gi18n-lib.h>

static const char *const known_words[] = {
  [LR_KNOWN] = "yes", [LR_KNOWN_PARTLY] = "in-part", [LR_NOT_NOTED] = "not-noted", [LR_NOT_DRAWN] = "not-drawn",
  [LR_NOT_PLACED] = "not-placed", [LR_NO_DAY] = "no-day", [LR_NO_ROOM] = "no-room", [LR_TAKEN] = "taken",
  [LR_AWAITED] = "awaited",
};

static const char *const verdict_words[] = {
  [LR_VERDICT_BEST] = "best", [LR_VERDICT_ALIKE] = "alike", [LR_VERDICT_FEW] = "too-few-known",
  [LR_VERDICT_NO_STEP] = "no-step",
};

static void
add_text (JsonBuilder *builder,
          const char  *key,
          const char  *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_flag (JsonBuilder *builder,
          const char  *key,
          gboolean     flag)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_boolean_value (builder, flag);
}

static void
add_number (JsonBuilder *builder,
            const char  *key,
            double       number)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (number))
    json_builder_add_double_value (builder, number);
  else
    json_builder_add_null_value (builder);
}

static void
add_setups (JsonBuilder      *builder,
            const LrCompared *compared)
{
  json_builder_set_member_name (builder, "setups");
  json_builder_begin_array (builder);
  for (guint i = 0; i < compared->comparison->rooms->len; i++)
    {
      const LrSetup *setup = lr_comparison_room (compared->comparison, i)->setup;

      json_builder_begin_object (builder);
      add_text (builder, "id", setup->id);
      add_text (builder, "name", setup->name);
      add_flag (builder, "has-room", setup->room->n_corners >= 3);
      add_text (builder, "found-of", setup->found_of);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_row (JsonBuilder         *builder,
         const LrCompared    *compared,
         const LrComparedRow *row)
{
  const LrCompareInfo *info = lr_compare_info (row->row);

  json_builder_begin_object (builder);
  add_text (builder, "key", info->key);
  add_text (builder, "title", row->title);
  add_text (builder, "meaning", row->meaning);
  add_text (builder, "better", info->is_less_better ? "less" : "more");
  add_text (builder, "verdict", verdict_words[row->verdict]);
  add_text (builder, "why", row->why);
  json_builder_set_member_name (builder, "figures");
  json_builder_begin_array (builder);
  for (guint i = 0; i < compared->comparison->rooms->len; i++)
    {
      const LrRoomFigures *room = lr_comparison_room (compared->comparison, i);

      json_builder_begin_object (builder);
      add_text (builder, "setup", room->setup->id);
      add_text (builder, "known", known_words[room->figure[row->row].known]);
      add_number (builder, "value", room->figure[row->row].value);
      add_text (builder, "text", row->texts[i]);
      add_text (builder, "detail", row->details[i]);
      add_flag (builder, "is-best", row->is_best[i]);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

/**
 * lr_compared_to_json:
 * @compared: a table
 *
 * See the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_compared_to_json (const LrCompared *compared)
{
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();

  json_builder_begin_object (builder);
  add_text (builder, "format", "lookroom-comparison");
  json_builder_set_member_name (builder, "version");
  json_builder_add_int_value (builder, 1);
  add_number (builder, "camera-m", compared->comparison->camera_m);
  add_setups (builder, compared);
  json_builder_set_member_name (builder, "rows");
  json_builder_begin_array (builder);
  for (guint i = 0; i < compared->rows->len; i++)
    add_row (builder, compared, compared->rows->pdata[i]);
  json_builder_end_array (builder);
  add_text (builder, "summary", compared->summary);
  add_text (builder, "undrawn", compared->undrawn);
  add_text (builder, "left-out", compared->left_out);
  add_text (builder, "places", compared->places);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
