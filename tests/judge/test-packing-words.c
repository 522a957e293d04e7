/* test-packing-words.c - the packing list in sentences, CSV and JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CSV is read back here by the grammar of RFC 4180, section 2.
 */

#include "fixture.h"

#include "packing_words.h"

#include <string.h>

static GPtrArray *
rows_of (const LrPlan *plan,
         LrUnits       units)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_pack_rows_new (study, units);
}

static const LrPackRow *
find (const GPtrArray *rows,
      const char      *key)
{
  for (guint i = 0; i < rows->len; i++)
    if (g_str_equal (((const LrPackRow *) rows->pdata[i])->key, key))
      return rows->pdata[i];

  return NULL;
}

static void
replace (LrPlan **plan,
         LrPlan  *next,
         GError  *error)
{
  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = next;
}

/* The records of a file: section 2 of RFC 4180, rules 1 to 7 */
static GPtrArray *
parse_csv (const char *csv)
{
  GPtrArray *records = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  GPtrArray *record = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) cell = g_string_new (NULL);
  gboolean is_quoted = FALSE;

  for (const char *p = csv; *p != '\0'; p++)
    {
      if (is_quoted && p[0] == '"' && p[1] == '"')
        g_string_append_c (cell, *++p == '"' ? '"' : ' ');
      else if (*p == '"')
        is_quoted = !is_quoted;
      else if (!is_quoted && (*p == ',' || (p[0] == '\r' && p[1] == '\n')))
        {
          g_ptr_array_add (record, g_strdup (cell->str));
          g_string_truncate (cell, 0);
          if (*p == ',')
            continue;
          g_ptr_array_add (records, record);
          record = g_ptr_array_new_with_free_func (g_free);
          p++;
        }
      else
        g_string_append_c (cell, *p);
    }
  g_assert_false (is_quoted);
  g_assert_cmpuint (record->len, ==, 0); /* the last line ends, too */
  g_ptr_array_unref (record);

  return records;
}

static void
test_csv (void)
{
  static const char *const names[] = { "Boom, \"long\"", "=1+1", "two\nlines", "plain" };
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  GError *error = NULL;

  for (guint n = 0; n < G_N_ELEMENTS (names); n++)
    {
      g_autoptr (GPtrArray) rows = NULL, records = NULL;
      g_autofree char *csv = NULL;

      replace (&plan, lr_plan_set_kit_text (plan, "boom", "title", names[n], &error), error);
      rows = rows_of (plan, LR_UNITS_METRIC);
      csv = lr_pack_rows_to_csv (rows);
      records = parse_csv (csv);
      g_assert_cmpuint (records->len, ==, rows->len + 1);
      for (guint i = 0; i < records->len; i++)
        g_assert_cmpuint (((GPtrArray *) records->pdata[i])->len, ==, 7);
      for (guint i = 0; i < rows->len; i++)
        {
          const LrPackRow *row = rows->pdata[i];
          const char *cell = ((GPtrArray *) records->pdata[i + 1])->pdata[1];

          g_assert_cmpstr (cell + (row->title[0] == '=' ? 1 : 0), ==, row->title); /* a formula is kept a text */
        }
    }
}

/* Every row has a title and says what for, without markup; none is said twice */
static void
test_words (void)
{
  static const char *const names[] = { "loft", "bare-office" };

  for (guint n = 0; n < G_N_ELEMENTS (names); n++)
    for (int units = LR_UNITS_METRIC; units <= LR_UNITS_IMPERIAL; units++)
      {
        g_autoptr (LrPlan) plan = fixture_example (names[n]);
        g_autoptr (GPtrArray) rows = rows_of (plan, units);

        for (guint i = 0; i < rows->len; i++)
          {
            const LrPackRow *row = rows->pdata[i];

            g_test_message ("%d %s: %s", row->quantity, row->title, row->why);
            g_assert_cmpstr (row->title, !=, "");
            g_assert_cmpstr (row->why, !=, "");
            g_assert_null (strchr (row->title, '<'));
            g_assert_null (strchr (row->why, '<'));
            g_assert_true (g_utf8_validate (row->why, -1, NULL));
            g_assert_cmpint (row->missing > 0, ==, row->lack[0] != '\0');
            g_assert_true (find (rows, row->key) == row);
          }
      }
}

/* A figure that the plan does not tell is said to be a usual one; one that it tells is not */
static void
test_usual (void)
{
  static const char *const keys[] = { "draw-w", "battery-wh", "data-rate-mbit-s", "card-gb" };
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (GPtrArray) before = rows_of (plan, LR_UNITS_METRIC), after = NULL;

  g_assert_nonnull (strstr (find (before, "power/camera-battery-160-usual")->why, "usual"));
  g_assert_nonnull (strstr (find (before, "camera/card-128-usual")->why, "usual"));
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      fixture_set (&plan, "camera-a", keys[i], 50.0);
      fixture_set (&plan, "camera-b", keys[i], 50.0);
    }
  after = rows_of (plan, LR_UNITS_METRIC);
  g_assert_null (strstr (find (after, "power/camera-battery-500")->why, "usual"));
  g_assert_null (strstr (find (after, "camera/card-50")->why, "usual"));
}

/* What the requests say to bring is on it, and nothing else of them */
static void
test_bring (void)
{
  static const char *const requests[] = { "Bring a plain cushion.", "Fridge off.", "The bringer of keys waits.", "We bring our own chair", NULL };
  g_autoptr (LrPlan) plan = fixture_example ("bare-office");
  g_autoptr (GPtrArray) before = rows_of (plan, LR_UNITS_METRIC), after = NULL;
  GError *error = NULL;

  replace (&plan, lr_plan_set_requests (plan, requests, &error), error);
  after = rows_of (plan, LR_UNITS_METRIC);
  g_assert_cmpuint (after->len, ==, before->len + 2);
  g_assert_cmpstr (((const LrPackRow *) after->pdata[after->len - 2])->title, ==, "Bring a plain cushion.");
  g_assert_cmpstr (((const LrPackRow *) after->pdata[after->len - 1])->title, ==, "We bring our own chair");
}

static void
test_json (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (GPtrArray) rows = rows_of (plan, LR_UNITS_METRIC);
  g_autoptr (JsonNode) node = lr_pack_rows_to_json (rows);
  JsonArray *array = json_object_get_array_member (json_node_get_object (node), "rows");

  g_assert_cmpuint (json_array_get_length (array), ==, rows->len);
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];
      JsonObject *object = json_array_get_object_element (array, i);

      g_assert_cmpstr (json_object_get_string_member (object, "key"), ==, row->key);
      g_assert_cmpint (json_object_get_int_member (object, "quantity"), ==, row->quantity);
      g_assert_cmpint (json_object_has_member (object, "in-kit"), ==, row->owned >= 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/packing-words/words", test_words);
  g_test_add_func ("/packing-words/csv", test_csv);
  g_test_add_func ("/packing-words/usual", test_usual);
  g_test_add_func ("/packing-words/bring", test_bring);
  g_test_add_func ("/packing-words/json", test_json);

  return g_test_run ();
}
