/* schema.c - a validator of JSON Schema 2020-12, as far as the plan's schema goes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: JSON Schema: A Media Type for Describing JSON Documents, and its Validation vocabulary, draft 2020-12; from
 * memory. The schema and the examples were also checked once with an independent validator.
 */

#include "schema.h"

#include <math.h>
#include <string.h>

typedef struct
{
  JsonObject *root, *schema;
  JsonNode   *node;
} Check;

typedef char *(*CheckFunc) (const Check *check, JsonNode *keyword);

static gboolean
is_value (JsonNode *node,
          GType     type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
is_number (JsonNode *node)
{
  return is_value (node, G_TYPE_INT64) || is_value (node, G_TYPE_DOUBLE);
}

static char *
in_member (char       *fault,
           const char *name)
{
  char *longer = fault != NULL ? g_strdup_printf ("%s: %s", name, fault) : NULL;

  g_free (fault);

  return longer;
}

static char *
check_type (const Check *check,
            JsonNode    *keyword)
{
  const char *type = json_node_get_string (keyword);
  gboolean ok;

  if (strcmp (type, "object") == 0)
    ok = JSON_NODE_HOLDS_OBJECT (check->node);
  else if (strcmp (type, "array") == 0)
    ok = JSON_NODE_HOLDS_ARRAY (check->node);
  else if (strcmp (type, "string") == 0)
    ok = is_value (check->node, G_TYPE_STRING);
  else if (strcmp (type, "boolean") == 0)
    ok = is_value (check->node, G_TYPE_BOOLEAN);
  else if (strcmp (type, "number") == 0)
    ok = is_number (check->node);
  else if (strcmp (type, "integer") == 0)
    ok = is_number (check->node) && json_node_get_double (check->node) == round (json_node_get_double (check->node));
  else
    g_error ("unknown type %s", type);

  return ok ? NULL : g_strdup_printf ("is no %s", type);
}

static char *
check_properties (const Check *check,
                  JsonNode    *keyword)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;

  if (!JSON_NODE_HOLDS_OBJECT (check->node))
    return NULL;

  json_object_iter_init (&iter, json_node_get_object (check->node));
  while (json_object_iter_next (&iter, &name, &member))
    {
      JsonNode *schema = json_object_get_member (json_node_get_object (keyword), name);
      char *fault = schema != NULL ? schema_find_fault (check->root, json_node_get_object (schema), member) : NULL;

      if (fault != NULL)
        return in_member (fault, name);
    }

  return NULL;
}

static char *
check_required (const Check *check,
                JsonNode    *keyword)
{
  JsonArray *names = json_node_get_array (keyword);

  for (guint i = 0; JSON_NODE_HOLDS_OBJECT (check->node) && i < json_array_get_length (names); i++)
    if (!json_object_has_member (json_node_get_object (check->node), json_array_get_string_element (names, i)))
      return g_strdup_printf ("has no %s", json_array_get_string_element (names, i));

  return NULL;
}

static char *
check_const (const Check *check,
             JsonNode    *keyword)
{
  return json_node_equal (check->node, keyword) ? NULL : g_strdup ("is another value");
}

static char *
check_enum (const Check *check,
            JsonNode    *keyword)
{
  JsonArray *values = json_node_get_array (keyword);

  for (guint i = 0; i < json_array_get_length (values); i++)
    if (json_node_equal (check->node, json_array_get_element (values, i)))
      return NULL;

  return g_strdup ("is none of the words");
}

static char *
check_minimum (const Check *check,
               JsonNode    *keyword)
{
  if (!is_number (check->node) || json_node_get_double (check->node) >= json_node_get_double (keyword))
    return NULL;

  return g_strdup_printf ("is under %g", json_node_get_double (keyword));
}

static char *
check_maximum (const Check *check,
               JsonNode    *keyword)
{
  if (!is_number (check->node) || json_node_get_double (check->node) <= json_node_get_double (keyword))
    return NULL;

  return g_strdup_printf ("is over %g", json_node_get_double (keyword));
}

static char *
check_min_length (const Check *check,
                  JsonNode    *keyword)
{
  if (!is_value (check->node, G_TYPE_STRING)
      || g_utf8_strlen (json_node_get_string (check->node), -1) >= json_node_get_int (keyword))
    return NULL;

  return g_strdup ("is too short");
}

static char *
check_pattern (const Check *check,
               JsonNode    *keyword)
{
  if (!is_value (check->node, G_TYPE_STRING)
      || g_regex_match_simple (json_node_get_string (keyword), json_node_get_string (check->node), G_REGEX_DEFAULT,
                               G_REGEX_MATCH_DEFAULT))
    return NULL;

  return g_strdup ("does not match");
}

static char *
check_items (const Check *check,
             JsonNode    *keyword)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (check->node) ? json_node_get_array (check->node) : NULL;

  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      g_autofree char *name = g_strdup_printf ("[%u]", i);
      char *fault = schema_find_fault (check->root, json_node_get_object (keyword), json_array_get_element (array, i));

      if (fault != NULL)
        return in_member (fault, name);
    }

  return NULL;
}

static char *
check_min_items (const Check *check,
                 JsonNode    *keyword)
{
  if (!JSON_NODE_HOLDS_ARRAY (check->node)
      || json_array_get_length (json_node_get_array (check->node)) >= json_node_get_int (keyword))
    return NULL;

  return g_strdup ("has too few elements");
}

static char *
check_max_items (const Check *check,
                 JsonNode    *keyword)
{
  if (!JSON_NODE_HOLDS_ARRAY (check->node)
      || json_array_get_length (json_node_get_array (check->node)) <= json_node_get_int (keyword))
    return NULL;

  return g_strdup ("has too many elements");
}

static char *
check_ref (const Check *check,
           JsonNode    *keyword)
{
  const char *prefix = "#/$defs/", *ref = json_node_get_string (keyword);

  g_assert_true (g_str_has_prefix (ref, prefix));

  return schema_find_fault (check->root, schema_definition (check->root, ref + strlen (prefix)), check->node);
}

static char *
check_all_of (const Check *check,
              JsonNode    *keyword)
{
  JsonArray *schemas = json_node_get_array (keyword);
  char *fault = NULL;

  for (guint i = 0; fault == NULL && i < json_array_get_length (schemas); i++)
    fault = schema_find_fault (check->root, json_array_get_object_element (schemas, i), check->node);

  return fault;
}

static char *
check_if (const Check *check,
          JsonNode    *keyword)
{
  g_autofree char *fault = schema_find_fault (check->root, json_node_get_object (keyword), check->node);

  if (fault != NULL)
    return NULL;

  return schema_find_fault (check->root, json_object_get_object_member (check->schema, "then"), check->node);
}

static const struct { const char *keyword; CheckFunc func; } keywords[] = {
  { "type", check_type },           { "properties", check_properties }, { "required", check_required },
  { "const", check_const },         { "enum", check_enum },             { "minimum", check_minimum },
  { "maximum", check_maximum },     { "minLength", check_min_length },  { "pattern", check_pattern },
  { "items", check_items },         { "minItems", check_min_items },    { "maxItems", check_max_items },
  { "$ref", check_ref },            { "allOf", check_all_of },          { "if", check_if },
  { "then", NULL },                 { "description", NULL },            { "title", NULL },
  { "default", NULL },              { "$schema", NULL },                { "$id", NULL },
  { "$defs", NULL },                { "x-unit", NULL },                 { "x-decimals", NULL },
  { "x-names", NULL },
};

static CheckFunc
find_keyword (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (keywords); i++)
    if (strcmp (keywords[i].keyword, name) == 0)
      return keywords[i].func;

  g_error ("unknown keyword %s", name);
}

char *
schema_find_fault (JsonObject *root,
                   JsonObject *schema,
                   JsonNode   *node)
{
  const Check check = { root, schema, node };
  JsonObjectIter iter;
  const char *name;
  JsonNode *keyword;
  char *fault = NULL;

  json_object_iter_init (&iter, schema);
  while (fault == NULL && json_object_iter_next (&iter, &name, &keyword))
    {
      CheckFunc func = find_keyword (name);

      if (func != NULL)
        fault = func (&check, keyword);
    }

  return fault;
}

JsonObject *
schema_definition (JsonObject *root,
                   const char *name)
{
  JsonObject *definitions = json_object_get_object_member (root, "$defs");

  g_assert_true (json_object_has_member (definitions, name));

  return json_object_get_object_member (definitions, name);
}
