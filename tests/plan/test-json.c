/* test-json.c - what is JSON and what is not, where values stand, and how they are printed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Good and bad texts follow the grammar of RFC 8259, whose section is named beside them.
 */

#include "json_parse.h"
#include "json_writer.h"
#include "plan_reader.h"

#include <math.h>
#include <string.h>

static const struct { const char *text, *section; } good[] = {
  { "{\n  \"Image\": {\n    \"Width\": 800,\n    \"Title\": \"View from 15th Floor\",\n    \"Animated\": false,\n"
    "    \"IDs\": [116, 943, 234, 38793]\n  }\n}", "13, first example" },
  { "[{\"precision\": \"zip\", \"Latitude\": 37.7668, \"Longitude\": -122.3959, \"Address\": \"\"}]", "13, second example" },
  { "\"Hello world!\"", "13" },
  { "42", "13" },
  { "true", "13" },
  { " \t\r\n null \t\r\n ", "2: insignificant white space" },
  { "{}", "4" },
  { "[]", "5" },
  { "[[],{},[{}]]", "4, 5" },
  { "[0, -0, 0.5, -0.5, 1e3, 1E+3, 1e-3, 10.25e2]", "6" },
  { "[9223372036854775807, -9223372036854775808, 1e308]", "6: within 64 bits and a double" },
  { "[\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\\uD83D\\uDE00\"]", "7" },
  { "[\"é € 😀 \x7f\"]", "7: unescaped" },
  { "{\"a\": {\"a\": {\"a\": 1}}, \"b\": {\"a\": 2}}", "4: the same name in different objects" },
};

static const struct { const char *text; int code; guint line; const char *section; } bad[] = {
  { "", LR_PLAN_ERROR_SYNTAX, 1, "2" },
  { " \n ", LR_PLAN_ERROR_SYNTAX, 2, "2" },
  { "{} {}", LR_PLAN_ERROR_SYNTAX, 1, "2: one value" },
  { "nul", LR_PLAN_ERROR_SYNTAX, 1, "3" },
  { "True", LR_PLAN_ERROR_SYNTAX, 1, "3" },
  { "{\n\"a\" 1}", LR_PLAN_ERROR_SYNTAX, 2, "4" },
  { "{\"a\": 1,}", LR_PLAN_ERROR_SYNTAX, 1, "4" },
  { "{a: 1}", LR_PLAN_ERROR_SYNTAX, 1, "4" },
  { "{'a': 1}", LR_PLAN_ERROR_SYNTAX, 1, "4" },
  { "{\"a\": 1", LR_PLAN_ERROR_SYNTAX, 1, "4" },
  { "{\"a\": 1 \"b\": 2}", LR_PLAN_ERROR_SYNTAX, 1, "4" },
  { "{\"a\": 1,\n\"b\": 2,\n\"a\": 3}", LR_PLAN_ERROR_SYNTAX, 3, "4: names should be unique" },
  { "[1, 2", LR_PLAN_ERROR_SYNTAX, 1, "5" },
  { "[1, 2,]", LR_PLAN_ERROR_SYNTAX, 1, "5" },
  { "[1 2]", LR_PLAN_ERROR_SYNTAX, 1, "5" },
  { "[1}", LR_PLAN_ERROR_SYNTAX, 1, "5" },
  { "[01]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[+1]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[.5]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[5.]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[1e]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[-]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[0x10]", LR_PLAN_ERROR_SYNTAX, 1, "6" },
  { "[NaN]", LR_PLAN_ERROR_SYNTAX, 1, "6: not permitted" },
  { "[Infinity]", LR_PLAN_ERROR_SYNTAX, 1, "6: not permitted" },
  { "[1e400]", LR_PLAN_ERROR_VALUE, 1, "6: beyond a double" },
  { "[9223372036854775808]", LR_PLAN_ERROR_VALUE, 1, "6: beyond 64 bits" },
  { "[18446744073709551616]", LR_PLAN_ERROR_VALUE, 1, "6: beyond 64 bits" },
  { "[\"a]", LR_PLAN_ERROR_SYNTAX, 1, "7" },
  { "[\"a\nb\"]", LR_PLAN_ERROR_SYNTAX, 1, "7: control characters must be escaped" },
  { "[\"\\x41\"]", LR_PLAN_ERROR_SYNTAX, 1, "7" },
  { "[\"\\u00g0\"]", LR_PLAN_ERROR_SYNTAX, 1, "7" },
  { "[\"\\uD83D\"]", LR_PLAN_ERROR_SYNTAX, 1, "8.2: half a surrogate pair" },
  { "[\"\\uD83D\\u0041\"]", LR_PLAN_ERROR_SYNTAX, 1, "8.2: half a surrogate pair" },
  { "[\"\\uDE00\"]", LR_PLAN_ERROR_SYNTAX, 1, "8.2: half a surrogate pair" },
  { "{\"a\": 1, \"\\u0061\": 2}", LR_PLAN_ERROR_SYNTAX, 1, "4: the same name, written otherwise" },
  { "[\"\\u0000\"]", LR_PLAN_ERROR_SYNTAX, 1, "9: a parser may limit the contents of strings" },
  { "/* a */ {}", LR_PLAN_ERROR_SYNTAX, 1, "2" },
};

static void
test_good (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = NULL, other = NULL;

      g_test_message ("RFC 8259 section %s: %s", good[i].section, good[i].text);
      node = lr_json_parse (good[i].text, LR_MAX_NESTING, &error);
      g_assert_no_error (error);

      /* An independent parser sees the same tree */
      other = json_from_string (good[i].text, &error);
      g_assert_no_error (error);
      g_assert_true (json_node_equal (node, other));
    }
}

static void
test_bad (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *line = g_strdup_printf ("line %u", bad[i].line);

      g_test_message ("RFC 8259 section %s: %s", bad[i].section, bad[i].text);
      g_assert_null (lr_json_parse (bad[i].text, LR_MAX_NESTING, &error));
      g_assert_error (error, LR_PLAN_ERROR, bad[i].code);
      g_assert_true (g_str_has_prefix (error->message, line));
    }
}

static void
test_depth (void)
{
  for (guint depth = LR_MAX_NESTING; depth <= LR_MAX_NESTING + 1; depth++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = NULL;

      for (guint i = 0; i < depth; i++)
        g_string_append_c (text, '[');
      for (guint i = 0; i < depth; i++)
        g_string_append_c (text, ']');
      node = lr_json_parse (text->str, LR_MAX_NESTING, &error);
      g_assert_true ((node != NULL) == (depth == LR_MAX_NESTING));
      if (depth > LR_MAX_NESTING)
        g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE);
    }
}

static void
test_find_line (void)
{
  const char *text = "{\n\"a\": [\n1,\n{\"b\": 2,\n\"c\": [3]}],\n\"d\": 4}";
  static const struct { const char *path; guint line; } rows[] = {
    { "", 1 }, { "a", 2 }, { "a[0]", 3 }, { "a[1]", 4 }, { "a[1].b", 4 }, { "a[1].c", 5 }, { "a[1].c[0]", 5 }, { "d", 6 },
    { "a[2]", 0 }, { "e", 0 }, { "a.b", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_test_message ("%s", rows[i].path);
      g_assert_cmpuint (lr_json_find_line (text, rows[i].path), ==, rows[i].line);
    }
}

/* Decimal notation has one shortest form */
static void
test_numbers (void)
{
  static const struct { double value; int decimals; const char *text; } rows[] = {
    { 0.0, 0, "0" },         { -0.0, 0, "0" },       { -0.0, 4, "0" },          { 1200.0, 0, "1200" },
    { 100.0, 1, "100" },     { 33.3, 1, "33.3" },    { 0.1, 4, "0.1" },         { 20.25, 4, "20.25" },
    { -21.5, 1, "-21.5" },   { 0.03, 4, "0.03" },    { 0.020833333, 9, "0.020833333" }, { 23.976, 3, "23.976" },
    { 500000.0, 0, "500000" }, { 1e7, 0, "10000000" }, { 0.00049, 3, "0" },     { -0.0004, 3, "0" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      LrJsonWriter writer = { .text = g_string_new (NULL) };

      lr_json_write_number (&writer, NULL, rows[i].value, rows[i].decimals);
      g_assert_cmpstr (writer.text->str, ==, rows[i].text);
      g_string_free (writer.text, TRUE);
    }
}

/* Whatever stands in a file of a newer version is printed in a form that reads back as the same, and the same again */
static void
test_members (void)
{
  const char *text = "{\n"
                     "  \"whole\": 12,\n"
                     "  \"large\": 9223372036854775807,\n"
                     "  \"tenth\": 0.1,\n"
                     "  \"double\": 2.0,\n"
                     "  \"third\": 0.3333333333333333,\n"
                     "  \"huge\": 1e+22,\n"
                     "  \"tiny\": 5e-324,\n"
                     "  \"text\": \"a \\\"b\\\" \\\\ \\n\\t\\u0001 é\",\n"
                     "  \"yes\": true,\n"
                     "  \"none\": null,\n"
                     "  \"empty\": {},\n"
                     "  \"empty-list\": [],\n"
                     "  \"points\": [[0, 0], [1.5, -2]],\n"
                     "  \"words\": [\n"
                     "    \"a\",\n"
                     "    \"b\"\n"
                     "  ],\n"
                     "  \"nested\": {\n"
                     "    \"list\": [\n"
                     "      {\n"
                     "        \"a\": 1\n"
                     "      },\n"
                     "      [1, 2]\n"
                     "    ]\n"
                     "  }\n"
                     "}\n";
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = NULL;
  LrJsonWriter writer = { .text = out };

  node = lr_json_parse (text, LR_MAX_NESTING, &error);
  g_assert_no_error (error);
  lr_json_begin (&writer, NULL, '{');
  lr_json_write_members (&writer, json_node_get_object (node));
  lr_json_end (&writer, '}');
  g_assert_cmpstr (out->str, ==, text);
}

/* A list that is too long for a line has a point a line */
static void
test_long_list (void)
{
  double pairs[40];
  LrJsonWriter writer = { .text = g_string_new (NULL) };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    pairs[i] = 1000.0 + i;
  lr_json_write_pairs (&writer, NULL, pairs, 4, 0);
  g_assert_cmpstr (writer.text->str, ==, "[[1000, 1001], [1002, 1003], [1004, 1005], [1006, 1007]]");
  g_string_truncate (writer.text, 0);
  writer.needs_comma = FALSE;
  lr_json_write_pairs (&writer, NULL, pairs, 20, 0);
  g_assert_true (g_str_has_prefix (writer.text->str, "[\n  [1000, 1001],\n  [1002, 1003],\n"));
  g_string_free (writer.text, TRUE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/json/good", test_good);
  g_test_add_func ("/json/bad", test_bad);
  g_test_add_func ("/json/depth", test_depth);
  g_test_add_func ("/json/find-line", test_find_line);
  g_test_add_func ("/json/numbers", test_numbers);
  g_test_add_func ("/json/members", test_members);
  g_test_add_func ("/json/long-list", test_long_list);

  return g_test_run ();
}
