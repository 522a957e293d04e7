/* plan_json.c - copying and comparing JSON objects
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan_json.h"

static JsonNode *
dup_node (JsonNode *node)
{
  JsonNode *copy;

  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      copy = json_node_new (JSON_NODE_OBJECT);
      json_node_take_object (copy, lr_json_dup_object (json_node_get_object (node)));
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *from = json_node_get_array (node);
      JsonArray *to = json_array_sized_new (json_array_get_length (from));

      for (guint i = 0; i < json_array_get_length (from); i++)
        json_array_add_element (to, dup_node (json_array_get_element (from, i)));
      copy = json_node_new (JSON_NODE_ARRAY);
      json_node_take_array (copy, to);
    }
  else
    copy = json_node_copy (node);

  return copy;
}

/**
 * lr_json_dup_object:
 * @object: (nullable): an object
 *
 * Returns: (transfer full) (nullable): a copy that shares nothing with @object
 */
JsonObject *
lr_json_dup_object (JsonObject *object)
{
  JsonObject *copy;
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  if (object == NULL)
    return NULL;

  copy = json_object_new ();
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    json_object_set_member (copy, name, dup_node (node));

  return copy;
}

/**
 * lr_json_objects_equal:
 * @a: (nullable): an object
 * @b: (nullable): another
 *
 * Returns: whether they have the same members; %NULL is as good as an empty object
 */
gboolean
lr_json_objects_equal (JsonObject *a,
                       JsonObject *b)
{
  guint n_a = a != NULL ? json_object_get_size (a) : 0;
  guint n_b = b != NULL ? json_object_get_size (b) : 0;

  if (a == b || (n_a == 0 && n_b == 0))
    return TRUE;

  return n_a == n_b && json_object_equal (a, b);
}
