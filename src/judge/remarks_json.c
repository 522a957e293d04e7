/* remarks_json.c - remarks for other programs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   format, version           "lookroom-remarks", 1
 *   counts { fix, mind, fine }
 *   remarks [ {               Fix first
 *     check, grade, key       words; the key is stable while the plan is edited
 *     text, markup            one line, in the language of the user
 *     source                  where the rule comes from
 *     limit-source            where the default of its limit comes from; left out when it has none
 *     items [ id ]            what it is about, the one that it marks first
 *     value-U, limit-U        the figure judged and its limit; U is deg, m, share or nothing for a bare number; left
 *                             out when there is none
 *     remedy                  null, or { text, changes [ { id, key, value } ], leads [ { id, socket, kit, path } ] } with values as in a
 *                             plan file; leads, socket and kit are left out when nothing of them changes
 *   } ]
 */

#include "config.h"

#include "remarks.h"

#include <glib/gi18n-lib.h>

static void
add_text (JsonBuilder *builder,
          const char  *key,
          const char  *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_number (JsonBuilder *builder,
            const char  *stem,
            LrPropType   type,
            double       value)
{
  gboolean is_angle = type == LR_PROP_ANGLE;
  const char *unit = is_angle ? "-deg" : type == LR_PROP_LENGTH ? "-m" : type == LR_PROP_SHARE ? "-share" : "";
  g_autofree char *key = g_strconcat (stem, unit, NULL);

  if (!isfinite (value))
    return;

  json_builder_set_member_name (builder, key);
  json_builder_add_double_value (builder, is_angle ? value / LR_DEG : value);
}

/* The row of a key, which is the same in every kind that has it */
static const LrProp *
find_prop (const char *key)
{
  const LrProp *prop = NULL;

  for (guint i = 0; prop == NULL && i < LR_N_ITEM_KINDS; i++)
    prop = lr_item_find_prop (lr_item_kind_in_order (i), key);

  return prop;
}

static void
add_change (JsonBuilder    *builder,
            const LrChange *change)
{
  const LrProp *prop = find_prop (change->key);

  json_builder_begin_object (builder);
  add_text (builder, "id", change->id);
  add_text (builder, "key", change->key);
  json_builder_set_member_name (builder, "value");
  if (prop != NULL && prop->type == LR_PROP_CHOICE)
    json_builder_add_string_value (builder, prop->choices[(int) change->value].word);
  else
    json_builder_add_double_value (builder, prop != NULL ? lr_prop_to_file (prop, lr_prop_quantise (prop, change->value))
                                                         : change->value);
  json_builder_end_object (builder);
}

/* As in the plan's file; what stays is left out */
static void
add_laying (JsonBuilder    *builder,
            const LrLaying *laying)
{
  json_builder_begin_object (builder);
  add_text (builder, "id", laying->id);
  if (laying->socket != NULL)
    add_text (builder, "socket", laying->socket);
  if (laying->kit != NULL)
    add_text (builder, "kit", laying->kit);
  json_builder_set_member_name (builder, "path");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < laying->n_path; i++)
    {
      json_builder_begin_array (builder);
      json_builder_add_int_value (builder, (gint64) rint (1000.0 * laying->path_m[i].x));
      json_builder_add_int_value (builder, (gint64) rint (1000.0 * laying->path_m[i].y));
      json_builder_end_array (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

static void
add_remedy (JsonBuilder    *builder,
            const LrRemedy *remedy)
{
  json_builder_set_member_name (builder, "remedy");
  if (remedy == NULL)
    {
      json_builder_add_null_value (builder);
      return;
    }

  json_builder_begin_object (builder);
  add_text (builder, "text", remedy->sentence);
  json_builder_set_member_name (builder, "changes");
  json_builder_begin_array (builder);
  for (guint i = 0; i < remedy->changes->len; i++)
    add_change (builder, &g_array_index (remedy->changes, LrChange, i));
  json_builder_end_array (builder);
  if (remedy->layings != NULL)
    {
      json_builder_set_member_name (builder, "leads");
      json_builder_begin_array (builder);
      for (guint i = 0; i < remedy->layings->len; i++)
        add_laying (builder, g_ptr_array_index (remedy->layings, i));
      json_builder_end_array (builder);
    }
  json_builder_end_object (builder);
}

static void
add_remark (JsonBuilder    *builder,
            const LrRemark *remark)
{
  const LrCheckInfo *info = lr_check_info (remark->check);

  json_builder_begin_object (builder);
  add_text (builder, "check", info->word);
  add_text (builder, "grade", lr_grade_word (remark->grade));
  add_text (builder, "key", remark->key);
  add_text (builder, "text", remark->text);
  add_text (builder, "markup", remark->markup);
  add_text (builder, "source", _(info->source));
  if (info->limit != LR_N_LIMITS)
    add_text (builder, "limit-source", _(lr_limit_info (info->limit)->source));
  json_builder_set_member_name (builder, "items");
  json_builder_begin_array (builder);
  for (guint i = 0; remark->ids[i] != NULL; i++)
    json_builder_add_string_value (builder, remark->ids[i]);
  json_builder_end_array (builder);
  add_number (builder, "value", info->type, remark->value);
  add_number (builder, "limit", info->type, remark->limit);
  add_remedy (builder, remark->remedy);
  json_builder_end_object (builder);
}

/**
 * lr_remarks_to_json:
 * @remarks: remarks
 *
 * See the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_remarks_to_json (const LrRemarks *remarks)
{
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();

  json_builder_begin_object (builder);
  add_text (builder, "format", "lookroom-remarks");
  json_builder_set_member_name (builder, "version");
  json_builder_add_int_value (builder, 1);
  json_builder_set_member_name (builder, "counts");
  json_builder_begin_object (builder);
  for (LrGrade grade = 0; grade < LR_N_GRADES; grade++)
    {
      json_builder_set_member_name (builder, lr_grade_word (grade));
      json_builder_add_int_value (builder, remarks->n[grade]);
    }
  json_builder_end_object (builder);
  json_builder_set_member_name (builder, "remarks");
  json_builder_begin_array (builder);
  for (guint i = 0; i < remarks->all->len; i++)
    add_remark (builder, remarks->all->pdata[i]);
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
