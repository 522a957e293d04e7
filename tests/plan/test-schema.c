/* test-schema.c - the schema says of the file what the tables say, and the files are as it says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan-test.h"

#include "schema.h"

#include <math.h>

static JsonParser *parser;

static JsonObject *
root (void)
{
  return json_node_get_object (json_parser_get_root (parser));
}

static JsonObject *
properties_of (const char *definition)
{
  return json_object_get_object_member (schema_definition (root (), definition), "properties");
}

/* Rows against properties */

static void
check_text (const LrProp *prop,
            JsonObject   *property)
{
  g_assert_cmpstr (json_object_get_string_member (property, "type"), ==, "string");
  if (prop->type == LR_PROP_REF)
    g_assert_cmpstr (json_object_get_string_member (property, "x-names"), ==, prop->target);
  else
    g_assert_false (json_object_has_member (property, "x-names"));
  if (json_object_has_member (property, "default"))
    g_assert_cmpstr (json_object_get_string_member (property, "default"), ==, "");
}

static void
check_choice (const LrProp *prop,
              JsonObject   *property)
{
  JsonArray *words = json_object_get_array_member (property, "enum");
  guint n = 0;

  for (; prop->choices[n].word != NULL; n++)
    {
      g_assert_cmpuint (n, <, json_array_get_length (words));
      g_assert_cmpstr (json_array_get_string_element (words, n), ==, prop->choices[n].word);
    }
  g_assert_cmpuint (n, ==, json_array_get_length (words));
  g_assert_cmpstr (json_object_get_string_member (property, "default"), ==, prop->choices[(int) prop->fallback].word);
}

static const char *
unit_of (const LrProp *prop)
{
  static const char *const units[] = {
    [LR_PROP_LENGTH] = "mm", [LR_PROP_FINE_LENGTH] = "mm", [LR_PROP_ANGLE] = "°", [LR_PROP_SHARE] = "%",
  };

  return prop->type == LR_PROP_NUMBER ? prop->unit : prop->type < LR_PROP_NUMBER ? units[prop->type] : NULL;
}

static void
check_number (const LrProp *prop,
              JsonObject   *property)
{
  int decimals = lr_prop_decimals (prop);
  const char *unit = unit_of (prop);

  g_assert_cmpstr (json_object_get_string_member (property, "type"), ==, decimals == 0 ? "integer" : "number");
  g_assert_cmpfloat (json_object_get_double_member (property, "minimum"), ==, lr_prop_to_file (prop, prop->min));
  g_assert_cmpfloat (json_object_get_double_member (property, "maximum"), ==, lr_prop_to_file (prop, prop->max));
  g_assert_cmpint (json_object_get_int_member_with_default (property, "x-decimals", 0), ==, decimals);
  g_assert_cmpstr (json_object_get_string_member_with_default (property, "x-unit", NULL), ==, unit);
  if (prop->is_optional)
    g_assert_false (json_object_has_member (property, "default"));
  else
    g_assert_cmpfloat (json_object_get_double_member (property, "default"), ==, lr_prop_to_file (prop, prop->fallback));
}

static void
check_row (const LrProp *prop,
           JsonObject   *property)
{
  g_test_message ("%s", prop->key);
  g_assert_nonnull (property);
  g_assert_cmpuint (strlen (json_object_get_string_member (property, "description")), >, 0);

  if (lr_prop_is_text (prop))
    check_text (prop, property);
  else if (prop->type == LR_PROP_CHOICE)
    check_choice (prop, property);
  else if (prop->type == LR_PROP_FLAG)
    {
      g_assert_cmpstr (json_object_get_string_member (property, "type"), ==, "boolean");
      g_assert_true (json_object_get_boolean_member (property, "default") == (prop->fallback != 0.0));
    }
  else
    check_number (prop, property);
}

/* Both ways: every row is a property; every property is a row or in @others */
static void
check_table (const LrPropTable  *table,
             const char         *definition,
             const char *const  *others)
{
  JsonObject *properties = properties_of (definition);
  guint n_others = 0;

  g_test_message ("%s", definition);
  for (gsize i = 0; i < table->n_props; i++)
    {
      g_assert_true (json_object_has_member (properties, table->props[i].key));
      check_row (&table->props[i], json_object_get_object_member (properties, table->props[i].key));
    }
  for (; others[n_others] != NULL; n_others++)
    {
      g_test_message ("%s", others[n_others]);
      g_assert_true (json_object_has_member (properties, others[n_others]));
    }
  g_assert_cmpuint (json_object_get_size (properties), ==, table->n_props + n_others);
}

static void
test_parts (void)
{
  static const char *const none[] = { NULL };
  static const char *const job[] = { "requests", "questions", "run", "ticks", NULL };
  static const char *const location[] = { "contacts", NULL };
  static const char *const kit[] = { "id", "kind", NULL };
  static const char *const path[] = { "path", NULL };

  check_table (lr_job_table (), "job", job);
  check_table (lr_location_table (), "location", location);
  check_table (lr_contact_table (), "contact", none);
  check_table (lr_question_table (), "question", none);
  check_table (lr_run_table (), "run-entry", none);
  check_table (lr_surface_table (), "surface", none);
  check_table (lr_tape_table (), "tape-note", none);
  check_table (lr_turn_table (), "turn-note", none);
  check_table (lr_kit_entry_table (), "kit-entry", kit);
  check_table (lr_supply_table (), "supply", none);
  check_table (lr_item_common_table (LR_PLACE_FLOOR), "item-on-floor", none);
  check_table (lr_item_common_table (LR_PLACE_WALL), "item-on-wall", none);
  check_table (lr_item_common_table (LR_PLACE_PATH), "item-on-path", path);
  check_table (lr_item_common_table (LR_PLACE_NONE), "item-without-place", none);
}

static void
test_limits (void)
{
  JsonObject *properties = properties_of ("limits");

  g_assert_cmpuint (json_object_get_size (properties), ==, LR_N_LIMITS);
  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      const LrProp *prop = &lr_limit_info (i)->prop;

      g_assert_true (json_object_has_member (properties, prop->key));
      check_row (prop, json_object_get_object_member (properties, prop->key));
    }
}

/* "#/$defs/NAME" of a reference or of what a list holds */
static const char *
ref_in (JsonObject *property)
{
  if (json_object_has_member (property, "items"))
    property = json_object_get_object_member (property, "items");

  return json_object_get_string_member (property, "$ref") + strlen ("#/$defs/");
}

static void
test_kinds (void)
{
  static const char *const none[] = { NULL }, *const light[] = { LR_LAMP_FILE_KEY, NULL };
  static const char *const places[] = {
    [LR_PLACE_FLOOR] = "item-on-floor", [LR_PLACE_WALL] = "item-on-wall", [LR_PLACE_PATH] = "item-on-path",
    [LR_PLACE_NONE] = "item-without-place",
  };
  static const char *const room[] = { "corners", "walls", "floor", "ceiling", "tape", "turns", LR_PICTURE_KEY, NULL };
  static const char *const setup[] = { "id", "name", "found-of", "location", "room", NULL };
  g_autoptr (GPtrArray) of_room = g_ptr_array_new (), of_setup = g_ptr_array_new ();

  for (guint i = 0; room[i] != NULL; i++)
    g_ptr_array_add (of_room, (gpointer) room[i]);
  for (guint i = 0; setup[i] != NULL; i++)
    g_ptr_array_add (of_setup, (gpointer) setup[i]);
  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      const LrItemKindInfo *info = lr_item_kind_info (kind);
      g_autofree char *members = g_strconcat (info->word, "-members", NULL);
      JsonArray *all;
      JsonObject *list;

      check_table (&info->table, members, kind == LR_ITEM_LIGHT ? light : none);
      if (info->list_key == NULL)
        continue;
      all = json_object_get_array_member (schema_definition (root (), info->word), "allOf");
      g_assert_cmpstr (ref_in (json_array_get_object_element (all, 0)), ==, places[info->place]);
      g_assert_cmpstr (ref_in (json_array_get_object_element (all, 1)), ==, members);
      list = json_object_get_object_member (properties_of (info->is_of_room ? "room" : "setup"), info->list_key);
      g_assert_cmpstr (ref_in (list), ==, info->word);
      g_ptr_array_add (info->is_of_room ? of_room : of_setup, (gpointer) info->list_key);
    }
  g_ptr_array_add (of_room, NULL);
  g_ptr_array_add (of_setup, NULL);
  check_table (lr_room_table (), "room", (const char *const *) of_room->pdata);
  check_table (lr_setup_table (), "setup", (const char *const *) of_setup->pdata);
}

/* Files */

static JsonParser *
parse_file (const char *path)
{
  JsonParser *file = json_parser_new ();
  g_autoptr (GError) error = NULL;

  json_parser_load_from_file (file, path, &error);
  if (error != NULL)
    g_clear_object (&file);

  return file;
}

static void
test_file (gconstpointer data)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, data, NULL);
  g_autoptr (JsonParser) file = parse_file (path);
  g_autofree char *fault = schema_find_fault (root (), root (), json_parser_get_root (file));

  g_assert_cmpstr (fault, ==, NULL);
}

/* A new plan with one of everything, as it is written */
static void
test_written (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (JsonParser) file = json_parser_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *fault = NULL;

  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      g_autoptr (LrItem) item = lr_item_new (kind, "");

      if (kind != LR_ITEM_LENS)
        take_next (&plan, lr_plan_add (plan, item, lr_vec2 (1.0, 1.0), 0.0, NULL, &error), &error);
    }
  bytes = lr_plan_to_bytes (plan);
  json_parser_load_from_data (file, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);
  fault = schema_find_fault (root (), root (), json_parser_get_root (file));
  g_assert_cmpstr (fault, ==, NULL);
}

/* Bad documents in which one value alone is wrong: the schema sees it as the reader does */
static void
test_bad_file (gconstpointer data)
{
  g_autofree char *name = g_strconcat (data, ".lookroom", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "bad", name, NULL);
  g_autoptr (JsonParser) file = parse_file (path);
  g_autofree char *fault = schema_find_fault (root (), root (), json_parser_get_root (file));

  g_assert_nonnull (fault);
  g_test_message ("%s", fault);
}

static const char *const good_files[] = {
  "../examples/loft.lookroom", "../examples/bare-office.lookroom", "data/unknown-members.lookroom",
};

static const char *const bad_files[] = {
  "corner-of-three", "corner-text",  "empty-setups", "far-away",       "flag-number",      "job-list",        "kit-kind",
  "kit-no-kind",     "no-format",    "no-id",        "no-object",      "no-setups",        "no-version",      "number-null",
  "lamp-format",     "lamp-line-end", "lamp-line-number", "lamp-no-lines", "lamp-text",
  "picture-empty", "picture-letters", "picture-line-number", "picture-no-lines", "picture-no-type", "picture-type",
  "number-text",     "other-format", "out-of-range", "part-of-a-count", "people-object",   "person-text",     "request-number",
  "title-number",    "too-many-corners", "unknown-choice", "version-text", "version-zero",  "wrong-limit",     "wrong-time",
};

int
main (int    argc,
      char **argv)
{
  g_autofree char *path = NULL;
  int failures;

  g_test_init (&argc, &argv, NULL);
  path = g_test_build_filename (G_TEST_DIST, "..", "data", "lookroom-plan.schema.json", NULL);
  parser = parse_file (path);
  g_assert_nonnull (parser);

  g_test_add_func ("/schema/parts", test_parts);
  g_test_add_func ("/schema/limits", test_limits);
  g_test_add_func ("/schema/kinds", test_kinds);
  g_test_add_func ("/schema/written", test_written);
  for (guint i = 0; i < G_N_ELEMENTS (good_files); i++)
    {
      g_autofree char *base = g_path_get_basename (good_files[i]);
      g_autofree char *test_path = g_strconcat ("/schema/good/", base, NULL);

      g_test_add_data_func (test_path, good_files[i], test_file);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad_files); i++)
    {
      g_autofree char *test_path = g_strconcat ("/schema/bad/", bad_files[i], NULL);

      g_test_add_data_func (test_path, bad_files[i], test_bad_file);
    }

  failures = g_test_run ();
  g_object_unref (parser);

  return failures;
}
