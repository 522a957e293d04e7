/* readings_add.c - members of a JSON object, one at a time
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "readings_private.h"

/**
 * lr_readings_add_number:
 * @builder: a builder with an object open
 * @key: its next member
 * @value: NAN and infinities become null
 */
void
lr_readings_add_number (JsonBuilder *builder,
                        const char  *key,
                        double       value)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (value))
    json_builder_add_double_value (builder, value);
  else
    json_builder_add_null_value (builder);
}

/**
 * lr_readings_add_degrees:
 * @builder: a builder with an object open
 * @key: its next member
 * @value_rad: written in degrees [rad]
 */
void
lr_readings_add_degrees (JsonBuilder *builder,
                         const char  *key,
                         double       value_rad)
{
  lr_readings_add_number (builder, key, value_rad / LR_DEG);
}

/**
 * lr_readings_add_text:
 * @builder: a builder with an object open
 * @key: its next member
 * @text: (nullable): %NULL becomes null
 */
void
lr_readings_add_text (JsonBuilder *builder,
                      const char  *key,
                      const char  *text)
{
  json_builder_set_member_name (builder, key);
  if (text != NULL)
    json_builder_add_string_value (builder, text);
  else
    json_builder_add_null_value (builder);
}

/**
 * lr_readings_add_flag:
 * @builder: a builder with an object open
 * @key: its next member
 * @value: true or false
 */
void
lr_readings_add_flag (JsonBuilder *builder,
                      const char  *key,
                      gboolean     value)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_boolean_value (builder, value);
}

/**
 * lr_readings_add_count:
 * @builder: a builder with an object open
 * @key: its next member
 * @value: a whole number
 */
void
lr_readings_add_count (JsonBuilder *builder,
                       const char  *key,
                       gint64       value)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_int_value (builder, value);
}

/**
 * lr_readings_id_of:
 * @placed: (nullable): a thing
 *
 * Returns: (transfer none) (nullable): its id
 */
const char *
lr_readings_id_of (const LrPlaced *placed)
{
  return placed != NULL ? placed->item->id : NULL;
}
