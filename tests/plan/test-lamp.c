/* test-lamp.c - a light's photometric file: set, kept, shared, saved, read and taken away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The files are written for these tests.
 */

#include "plan-test.h"

#include <math.h>

#define HEAD "IESNA:LM-63-2002\n[TEST] synthetic\nTILT=NONE\n"
#define LAMP HEAD "1 -1 1 3 1 1 2 0.3 0.3 0\n1 1 100\n0 45 90\n0\n1000 700 0\n"
#define OTHER HEAD "1 -1 1 3 1 1 2 0.3 0.3 0\n1 1 100\n0 45 90\n0\n1000 500 0\n"
#define LDT \
  "synthetic\n1\n1\n1\n0\n3\n45\nr\nd\n1\nd\n2026\n300\n300\n50\n300\n0\n0\n0\n0\n0\n100\n100\n1\n0\n1\n1\nLED\n1000\n5600\n95\n25\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n" \
  "0\n0\n45\n90\n1000\n700\n0\n"

static LrPlan *
new_lit (void)
{
  LrPlan *plan = new_room ();
  g_autoptr (LrItem) light = lr_item_new_usual (LR_ITEM_LIGHT, LR_LIGHT_PANEL, "");
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_add (plan, light, lr_vec2 (1.0, 1.0), 0.0, NULL, &error), &error);
  return plan;
}

static LrPlan *
set_lamp (const LrPlan *plan,
          const char   *text,
          GError      **error)
{
  return lr_plan_set_lamp_file (plan, "light-1", "lamp.ies", text, text != NULL ? strlen (text) : 0, error);
}

static const LrLampFile *
get_lamp (const LrPlan *plan,
          const char   *id)
{
  return lr_plan_find (plan, id)->lamp_file;
}

/* Set, it is the text and its flux; parsed once for all copies; edits of other things and copies of the light keep it */
static void
test_set (void)
{
  g_autoptr (LrPlan) plan = new_lit (), bare = lr_plan_ref (plan);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;
  const LrLampFile *file;

  take_next (&plan, set_lamp (plan, LAMP, &error), &error);
  file = get_lamp (plan, "light-1");
  g_assert_nonnull (file);
  g_assert_cmpint (file->format, ==, LR_LAMP_FILE_IES);
  g_assert_cmpuint (file->n_lines, ==, 8);
  g_assert_cmpstr (file->lines[7], ==, "1000 700 0");
  g_assert_cmpfloat (file->flux_lm, ==, lr_photometry_flux_lm (&file->photometry));
  g_assert_cmpstr (lr_plan_find (plan, "light-1")->light.photometric_file, ==, "lamp.ies");
  g_assert_null (get_lamp (bare, "light-1"));
  g_assert_false (lr_plan_equal (plan, bare));
  assert_round_trip (plan);

  take_next (&plan, lr_plan_change (plan, &(LrChange) { "light-1", "dim-pct", 0.5 }, 1, &error), &error);
  take_next (&plan, lr_plan_duplicate (plan, "light-1", lr_vec2 (0.5, 0.0), &id, &error), &error);
  take_next (&plan, lr_plan_copy_setup (plan, "Another", &error), &error);
  g_assert_true (get_lamp (plan, "light-1") == file);
  g_assert_true (get_lamp (plan, id) == file);
  assert_round_trip (plan);

  take_next (&plan, set_lamp (plan, OTHER, &error), &error);
  g_assert_false (lr_lamp_file_equal (get_lamp (plan, "light-1"), get_lamp (plan, id)));
  take_next (&plan, set_lamp (plan, NULL, &error), &error);
  g_assert_null (get_lamp (plan, "light-1"));
  g_assert_cmpstr (lr_plan_find (plan, "light-1")->light.photometric_file, ==, "");
  g_assert_true (get_lamp (plan, id) == file);
  assert_round_trip (plan);
}

typedef struct
{
  const char *name, *text;
  const char *sentence; /* expected */
} RefusedCase;

static const RefusedCase refused_cases[] = {
  { "angles", HEAD "1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 90 45\n0\n1 1 1\n", "line 6: the angles do not rise" },
  { "crlf", "IESNA:LM-63-2002\r\nTILT=NONE\r\n1 -1 1 3 1 1 2 0 0 0\r\n1 1 100\r\n0 90 45\r\n0\r\n1 1 1\r\n", "line 5: the angles do not rise" },
  { "cut-off", HEAD "1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 45 90\n0\n1 1", "line 8: the file ends before its last number" },
  { "type-b", HEAD "1 -1 1 3 1 2 2 0 0 0\n", "line 4: its angles are of type A or B; only type C can be used" },
  { "letter", "Dear all,\nthis is no lamp\n", "line 2: the file ends before its last number" },
  { "empty", "", "line 1: no line begins with TILT=, so it is no photometric file" },
};

/* The sentence names line and reason, and nothing has changed */
static void
test_refused (gconstpointer data)
{
  const RefusedCase *c = data;
  g_autoptr (LrPlan) plan = new_lit ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, set_lamp (plan, LAMP, &error), &error);
  g_assert_null (set_lamp (plan, c->text, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==, c->sentence);
  g_assert_nonnull (get_lamp (plan, "light-1"));
}

static void
test_refused_otherwise (void)
{
  g_autoptr (LrPlan) plan = new_lit ();
  g_autofree char *large = g_strnfill (LR_LAMP_FILE_MAX_BYTES + 1, ' ');
  g_autoptr (GError) error = NULL;

  g_assert_null (set_lamp (plan, large, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_lamp_file (plan, "person-1", "lamp.ies", LAMP, strlen (LAMP), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_lamp_file (plan, "light-9", "lamp.ies", LAMP, strlen (LAMP), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_lamp_file (plan, "light-1", "lamp\xff.ies", LAMP, strlen (LAMP), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

/* Whatever bytes makers write: ends of lines, a byte order mark, Latin-1, the character 0 */
static void
test_bytes (void)
{
  static const char latin[] = "\xef\xbb\xbfIESNA:LM-63-2002\r\n[TEST] caf\xe9\rTILT=NONE\n1 -1 1 2 1 1 2 0 0 0 1 1 1 0 90 0 10 10\0\n\n";
  g_autoptr (LrPlan) plan = new_lit ();
  g_autoptr (GError) error = NULL;
  const LrLampFile *file;

  take_next (&plan, lr_plan_set_lamp_file (plan, "light-1", "é.ies", latin, sizeof latin - 1, &error), &error);
  file = get_lamp (plan, "light-1");
  g_assert_cmpuint (file->n_lines, ==, 5);
  g_assert_true (g_str_has_suffix (file->lines[1], "café"));
  g_assert_cmpstr (file->lines[3], ==, "1 -1 1 2 1 1 2 0 0 0 1 1 1 0 90 0 10 10 ");
  g_assert_cmpstr (file->lines[4], ==, "");
  assert_round_trip (plan);
}

/* What a format is, its text tells */
static void
test_formats (void)
{
  g_autoptr (LrPlan) plan = new_lit ();
  g_autoptr (GError) error = NULL;
  double ies_lm;

  take_next (&plan, set_lamp (plan, LAMP, &error), &error);
  ies_lm = get_lamp (plan, "light-1")->flux_lm;
  take_next (&plan, set_lamp (plan, LDT, &error), &error);
  g_assert_cmpint (get_lamp (plan, "light-1")->format, ==, LR_LAMP_FILE_LDT);
  /* the same intensities, for 1000 lm */
  g_assert_cmpfloat_with_epsilon (get_lamp (plan, "light-1")->flux_lm, ies_lm, 1e-9);
  assert_round_trip (plan);
}

/* Half of 1000 cd lies at 45 + 45 (700 - 500) / 700 degrees */
static void
test_beam (void)
{
  g_autoptr (LrPlan) plan = new_lit ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat (lr_item_beam_rad (lr_plan_find (plan, "light-1")), ==, lr_plan_find (plan, "light-1")->light.beam_rad);
  take_next (&plan, set_lamp (plan, LAMP, &error), &error);
  g_assert_cmpfloat_with_epsilon (lr_item_beam_rad (lr_plan_find (plan, "light-1")) / LR_DEG, 2.0 * (45.0 + 45.0 * 200.0 / 700.0), 1e-9);
}

static void
test_doubts (void)
{
  g_autoptr (LrPlan) plan = new_lit ();
  g_autoptr (GError) error = NULL;
  g_autofree char *none = NULL, *two = NULL;

  take_next (&plan, set_lamp (plan, LAMP, &error), &error);
  none = lr_lamp_file_dup_doubts (get_lamp (plan, "light-1"));
  g_assert_cmpstr (none, ==, "");
  take_next (&plan, set_lamp (plan, HEAD "1 -1 0 2 1 1 2 0 0 0 1 1 1 0 90 0 10 10\n[END]\n", &error), &error);
  two = lr_lamp_file_dup_doubts (get_lamp (plan, "light-1"));
  g_assert_cmpstr (two, ==, "Text behind its numbers is left out. It gives no light at all.");
}

/* A light of the kit brings its file; unknown members beside the lines stay */
static void
test_kit (void)
{
  static const char text[] =
    "{ \"format\": \"lookroom-plan\", \"version\": 1, \"kit\": [ { \"id\": \"k\", \"kind\": \"light\", \"photometric-file\": \"lamp.ies\","
    "  \"photometry\": { \"format\": \"ies\", \"x-new\": [1, 2], \"lines\": [ \"TILT=NONE\", \"1 -1 1 2 1 1 2 0 0 0 1 1 1 0 90 0 10 10\" ] } } ],"
    "  \"setups\": [ { \"id\": \"s\", \"room\": { \"corners\": [[0, 0], [4000, 0], [4000, 3000], [0, 3000]] } } ] }";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data (text, sizeof text - 1, &error);
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *id = NULL, *saved = NULL;

  g_assert_no_error (error);
  take_next (&plan, lr_plan_add_from_kit (plan, "k", lr_vec2 (1.0, 1.0), 0.0, &id, &error), &error);
  g_assert_true (get_lamp (plan, id) == lr_plan_find_kit (plan, "k")->item->lamp_file);
  g_assert_cmpfloat_with_epsilon (get_lamp (plan, id)->flux_lm, 2.0 * LR_PI * 10.0, 1e-9);
  assert_round_trip (plan);

  bytes = lr_plan_to_bytes (plan);
  saved = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  g_assert_nonnull (strstr (saved, "      \"photometry\": {\n        \"format\": \"ies\",\n        \"lines\": [\n          \"TILT=NONE\",\n"));
  g_assert_nonnull (strstr (strstr (saved, "\"x-new\": [1, 2]") + 1, "\"x-new\": [1, 2]"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/lamp/set", test_set);
  for (gsize i = 0; i < G_N_ELEMENTS (refused_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/lamp/refused/", refused_cases[i].name, NULL);

      g_test_add_data_func (path, &refused_cases[i], test_refused);
    }
  g_test_add_func ("/lamp/refused-otherwise", test_refused_otherwise);
  g_test_add_func ("/lamp/bytes", test_bytes);
  g_test_add_func ("/lamp/formats", test_formats);
  g_test_add_func ("/lamp/beam", test_beam);
  g_test_add_func ("/lamp/doubts", test_doubts);
  g_test_add_func ("/lamp/kit", test_kit);

  return g_test_run ();
}
