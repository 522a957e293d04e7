/* json_value.h - taking values out of JSON, and saying where they were wrong
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

/* Where a value stands: a chain on the stack, made into a path only when something is wrong */
typedef struct LrJsonPlace LrJsonPlace;
struct LrJsonPlace
{
  const LrJsonPlace *up;
  const char        *name;  /* of the member; NULL: element @index of a list, or the root */
  guint              index;
  const char        *text;  /* root: the file, to find lines in */
};

/* Always FALSE, with the error "path message (line n)"; the message goes on from the path: "is 7, outside 1 to 5" */
gboolean lr_json_fail (const LrJsonPlace *place, int code, GError **error, const char *format, ...) G_GNUC_PRINTF (4, 5);

/* (transfer none) (nullable): with an error if the node is of another type */
JsonObject *lr_json_get_object (const LrJsonPlace *place, JsonNode *node, GError **error);
JsonArray  *lr_json_get_array  (const LrJsonPlace *place, JsonNode *node, GError **error);
const char *lr_json_get_text   (const LrJsonPlace *place, JsonNode *node, GError **error);
gboolean    lr_json_get_points (const LrJsonPlace *place, JsonNode *node, gsize max_points, LrVec2 **points_m,
                                gsize *n_points, GError **error);

/* Into the field of @owner that @prop describes */
gboolean    lr_json_get_prop   (const LrJsonPlace *place, JsonNode *node, const LrProp *prop, gpointer owner, GError **error);

/* Rows, and the struct that they describe */
typedef struct
{
  const LrPropTable *table;
  gpointer           owner;
} LrJsonRows;

/* Every member of @object that has a row; others but @known (NULL-terminated, nullable) go to @unknown */
gboolean    lr_json_get_rows   (const LrJsonPlace *place, JsonObject *object, const LrJsonRows *rows, gsize n_rows,
                                const char *const *known, JsonObject **unknown, GError **error);
