/* plan_migrate.c - from older formats of the file to this one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each step changes the tree of one version into that of the next, so that the reader knows only the newest. To change
 * the format: raise LR_PLAN_VERSION, add a step here and a file of the old version to the tests.
 */

#include "plan_migrate.h"

#include "plan.h"
#include "plan_json.h"

typedef gboolean (*MigrateFunc) (JsonObject *root, GError **error);

/* What version 1 noted once for the whole job, and what it is called at a location */
static const struct { const char *in_job, *in_location; } moved[] = {
  { "place", "name" }, { "address", "address" }, { "access", "access" }, { "permission", "permission" },
  { "latitude-deg", "latitude-deg" }, { "longitude-deg", "longitude-deg" }, { "mains-hz", "mains-hz" }, { "contacts", "contacts" },
};

static JsonObject *
object_in (JsonNode *node)
{
  return node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
}

static gboolean
is_zero (JsonObject *object,
         const char *key)
{
  JsonNode *node = json_object_get_member (object, key);
  GType type = node != NULL && JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  return node == NULL || ((type == G_TYPE_INT64 || type == G_TYPE_DOUBLE) && json_node_get_double (node) == 0.0);
}

/* Latitude and longitude 0 meant that nobody had noted them; one of them alone, that the other was 0 */
static void
drop_zero_position (JsonObject *job)
{
  static const char *const keys[] = { "latitude-deg", "longitude-deg" };
  gboolean is_noted = !is_zero (job, keys[0]) || !is_zero (job, keys[1]);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    if (!is_noted)
      json_object_remove_member (job, keys[i]);
    else if (!json_object_has_member (job, keys[i]))
      json_object_set_int_member (job, keys[i], 0);
}

static JsonObject *
dup_location (JsonObject *job)
{
  JsonObject *location = json_object_new ();
  g_autoptr (JsonObject) copy = lr_json_dup_object (job);

  for (guint i = 0; i < G_N_ELEMENTS (moved); i++)
    if (json_object_has_member (copy, moved[i].in_job))
      json_object_set_member (location, moved[i].in_location, json_object_dup_member (copy, moved[i].in_job));

  return location;
}

/* Version 2: every set-up has a location of its own, and gets what the job had. What is no job or no set-up is for the reader to find */
static gboolean
give_locations (JsonObject  *root,
                GError     **error G_GNUC_UNUSED)
{
  JsonObject *job = object_in (json_object_get_member (root, "job"));
  JsonNode *list = json_object_get_member (root, "setups");
  JsonArray *setups = list != NULL && JSON_NODE_HOLDS_ARRAY (list) ? json_node_get_array (list) : NULL;

  if (job == NULL || setups == NULL)
    return TRUE;

  drop_zero_position (job);
  for (guint i = 0; i < json_array_get_length (setups); i++)
    {
      JsonObject *setup = object_in (json_array_get_element (setups, i));

      if (setup != NULL)
        json_object_set_object_member (setup, "location", dup_location (job));
    }
  for (guint i = 0; i < G_N_ELEMENTS (moved); i++)
    json_object_remove_member (job, moved[i].in_job);

  return TRUE;
}

/* [n]: from version n to n + 1 */
static const MigrateFunc steps[LR_PLAN_VERSION] = {
  [1] = give_locations,
};

/**
 * lr_plan_migrate:
 * @root: the root object of a file, changed in place
 * @version: the file's version, 1 to %LR_PLAN_VERSION
 * @error: return location
 *
 * Returns: %FALSE if a step finds the tree unfit
 */
gboolean
lr_plan_migrate (JsonObject  *root,
                 int          version,
                 GError     **error)
{
  for (int v = version; v < LR_PLAN_VERSION; v++)
    if (!steps[v] (root, error))
      return FALSE;

  return TRUE;
}
