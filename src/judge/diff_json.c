/* diff_json.c - differences for other programs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   format, version           "lookroom-differences", 1
 *   planned, found            names of the two set-ups
 *   differences [ {           room, people, cameras, lights, sound, rest
 *     about, type             words
 *     text, markup            one line, in the language of the user
 *     item                    id as found, or as planned where it is gone; left out when it is of no item
 *     wall                    of a wall or a corner, counted from 0
 *     key                     of a property
 *     from, to                as in a plan file; of walls and leads in metres, of corners in degrees
 *     from-m, to-m            [ x, y ]: where it would be if it had gone along with the set, and where it is
 *     nearer-m                to the subject; left out when there is none
 *     turned-deg              anticlockwise
 *   } ]
 */

#include "config.h"

#include "diff_words.h"

#include <math.h>

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
            const char  *key,
            double       number)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (number))
    json_builder_add_double_value (builder, number);
  else
    json_builder_add_null_value (builder); /* not given */
}

static void
add_point (JsonBuilder *builder,
           const char  *key,
           LrVec2       at_m)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_array (builder);
  json_builder_add_double_value (builder, at_m.x);
  json_builder_add_double_value (builder, at_m.y);
  json_builder_end_array (builder);
}

static void
add_value (JsonBuilder  *builder,
           const char   *key,
           const LrProp *prop,
           double        number,
           gconstpointer owner)
{
  if (lr_prop_is_text (prop))
    add_text (builder, key, lr_prop_get_text (prop, owner));
  else if (prop->type == LR_PROP_CHOICE)
    add_text (builder, key, prop->choices[(int) number].word);
  else if (prop->type == LR_PROP_FLAG)
    {
      json_builder_set_member_name (builder, key);
      json_builder_add_boolean_value (builder, number != 0.0);
    }
  else
    add_number (builder, key, lr_prop_to_file (prop, number));
}

static void
add_figures (JsonBuilder  *builder,
             const LrDiff *found)
{
  double scale = found->type == LR_DIFF_CORNER ? 1.0 / LR_DEG : 1.0;

  switch (found->type)
    {
    case LR_DIFF_WALL:
    case LR_DIFF_CORNER:
      json_builder_set_member_name (builder, "wall");
      json_builder_add_int_value (builder, found->wall);
      G_GNUC_FALLTHROUGH;
    case LR_DIFF_WALLS:
    case LR_DIFF_WAY:
      add_number (builder, "from", scale * found->from);
      add_number (builder, "to", scale * found->to);
      break;
    case LR_DIFF_SET:
    case LR_DIFF_MOVED:
    case LR_DIFF_TIP:
      add_point (builder, "from-m", found->from_m);
      add_point (builder, "to-m", found->to_m);
      if (!isnan (found->nearer_m))
        add_number (builder, "nearer-m", found->nearer_m);
      break;
    case LR_DIFF_CHANGED:
      add_text (builder, "key", found->prop->key);
      add_value (builder, "from", found->prop, found->from, found->was_owner);
      add_value (builder, "to", found->prop, found->to, found->now_owner);
      break;
    case LR_DIFF_CONTACTS:
    case LR_DIFF_TURNED:
    case LR_DIFF_ADDED:
    case LR_DIFF_GONE:
    default:
      break;
    }
  if (found->type == LR_DIFF_SET || found->type == LR_DIFF_TURNED)
    add_number (builder, "turned-deg", found->turn_rad / LR_DEG);
}

static void
add_difference (JsonBuilder      *builder,
                const LrPlanDiff *diff,
                const LrDiff     *found,
                LrUnits           units)
{
  static const char *const about[] = { "room", "people", "cameras", "lights", "sound", "rest" };
  static const char *const types[] = {
    "walls", "wall", "corner", "set", "added", "gone", "moved", "turned", "capsule", "way", "people-to-call", "changed"
  };
  g_autofree char *markup = lr_diff_markup (diff, found, units), *text = lr_diff_text (diff, found, units);

  json_builder_begin_object (builder);
  add_text (builder, "about", about[found->group]);
  add_text (builder, "type", types[found->type]);
  add_text (builder, "text", text);
  add_text (builder, "markup", markup);
  if (found->now != NULL || found->was != NULL)
    add_text (builder, "item", found->now != NULL ? found->now->id : found->was->id);
  add_figures (builder, found);
  json_builder_end_object (builder);
}

/**
 * lr_plan_diff_to_json:
 * @diff: differences
 * @units: how lengths are written in the sentences
 *
 * See the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_plan_diff_to_json (const LrPlanDiff *diff,
                      LrUnits           units)
{
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();

  json_builder_begin_object (builder);
  add_text (builder, "format", "lookroom-differences");
  json_builder_set_member_name (builder, "version");
  json_builder_add_int_value (builder, 1);
  add_text (builder, "planned", diff->was->name);
  add_text (builder, "found", diff->now->name);
  json_builder_set_member_name (builder, "differences");
  json_builder_begin_array (builder);
  for (guint i = 0; i < diff->all->len; i++)
    add_difference (builder, diff, &g_array_index (diff->all, LrDiff, i), units);
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
