/* schema.h - a validator of JSON Schema 2020-12, as far as the plan's schema goes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A keyword that it does not know ends the test: the schema may not use what nobody checks.
 */

#pragma once

#include <json-glib/json-glib.h>

/* The first thing that is wrong with @node, or NULL; $ref is looked up in @root */
char       *schema_find_fault (JsonObject *root, JsonObject *schema, JsonNode *node);
JsonObject *schema_definition (JsonObject *root, const char *name); /* (transfer none): of $defs */
