/* plan_json.h - the little that the model itself needs of JSON: members it does not know
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

/* A copy that shares nothing: json-glib counts references without atomics, and plans cross threads */
JsonObject *lr_json_dup_object    (JsonObject *object);                /* (transfer full) (nullable) */
gboolean    lr_json_objects_equal (JsonObject *a, JsonObject *b);      /* NULL is as good as empty */
