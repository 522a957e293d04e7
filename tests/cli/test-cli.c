/* test-cli.c - the program from outside, without a display
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Spawns the built program, whose path is the first argument, as a shell would.
 */

#include "config.h"

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <stdarg.h>
#include <string.h>

static const char *program;
static char *folder;   /* for what the tests write */

typedef struct
{
  int   code;
  char *out, *err;
} Run;

static void
run_free (Run *run)
{
  g_free (run->out);
  g_free (run->err);
  g_free (run);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Run, run_free)

static Run *
run_in (char      **environment,
        const char *first,
        va_list     rest)
{
  g_autoptr (GPtrArray) args = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  Run *run = g_new0 (Run, 1);
  int status;

  g_ptr_array_add (args, (gpointer) program);
  for (const char *arg = first; arg != NULL; arg = va_arg (rest, const char *))
    g_ptr_array_add (args, (gpointer) arg);
  g_ptr_array_add (args, NULL);

  g_spawn_sync (NULL, (char **) args->pdata, environment, G_SPAWN_DEFAULT, NULL, NULL, &run->out, &run->err, &status, &error);
  g_assert_no_error (error);
  run->code = g_spawn_check_wait_status (status, &error) ? 0 : error->domain == G_SPAWN_EXIT_ERROR ? error->code : -1;
  if (run->code == -1)
    g_error ("%s died: %s%s", program, error->message, run->err);
  return run;
}

/* Without display, in the C locale, arguments up to NULL */
static Run *run_program (const char *first, ...) G_GNUC_NULL_TERMINATED;

static Run *
run_program (const char *first,
             ...)
{
  g_auto (GStrv) environment = g_get_environ ();
  va_list rest;
  Run *run;

  environment = g_environ_unsetenv (environment, "DISPLAY");
  environment = g_environ_unsetenv (environment, "WAYLAND_DISPLAY");
  environment = g_environ_setenv (environment, "LC_ALL", "C", TRUE);
  va_start (rest, first);
  run = run_in (environment, first, rest);
  va_end (rest);
  return run;
}

static char *
example (const char *name)
{
  return g_build_filename (LR_EXAMPLES_DIR, name, NULL);
}

static char *
in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

/* One sentence on stderr that begins with the program and the file; nothing on stdout */
static void
assert_complaint (const Run  *run,
                  const char *what,
                  const char *words)
{
  g_autofree char *start = what != NULL ? g_strdup_printf ("lookroom: %s: ", what) : g_strdup ("lookroom: ");

  g_assert_cmpint (run->code, ==, 2);
  g_assert_cmpstr (run->out, ==, "");
  g_test_message ("%s", run->err);
  g_assert_true (g_str_has_prefix (run->err, start));
  g_assert_true (strchr (run->err, '\n') == run->err + strlen (run->err) - 1);
  if (words != NULL)
    g_assert_nonnull (strstr (run->err, words));
}

static JsonObject *
parse (const char  *text,
       JsonParser **parser)
{
  g_autoptr (GError) error = NULL;

  *parser = json_parser_new_immutable ();
  json_parser_load_from_data (*parser, text, -1, &error);
  g_assert_no_error (error);
  g_assert_true (JSON_NODE_HOLDS_OBJECT (json_parser_get_root (*parser)));
  return json_node_get_object (json_parser_get_root (*parser));
}

/* --- Help ----------------------------------------------------------------------------------------------------- */

static void
test_help (void)
{
  static const char *const words[] = { "check", "compare", "diff", "page", "calendar", "pack", "tape", "readings", "frame" };
  g_autoptr (Run) help = run_program ("--help", NULL);
  g_autoptr (Run) version = run_program ("--version", NULL);

  g_assert_cmpint (help->code, ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autoptr (Run) own = run_program (words[i], "--help", NULL);

      g_assert_nonnull (strstr (help->out, words[i]));
      g_assert_cmpint (own->code, ==, 0);
      g_assert_nonnull (strstr (own->out, "--setup"));
    }
  g_assert_cmpint (version->code, ==, 0);
  g_assert_cmpstr (version->out, ==, "Lookroom " LR_VERSION "\n");
}

/* --- compare -------------------------------------------------------------------------------------------------- */

/* The place in characters at which @words begin in a line of @text */
static glong
column_of (const char *text,
           const char *words)
{
  const char *at = strstr (text, words), *start;

  g_assert_nonnull (at);
  for (start = at; start > text && start[-1] != '\n';)
    start--;
  return g_utf8_strlen (start, at - start);
}

/* No line is wider than a hundred characters */
static void
assert_narrow (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (char **line = lines; *line != NULL; line++)
    g_assert_cmpint (g_utf8_strlen (*line, -1), <=, 100);
}

/* Too many rooms for columns: each row lists them */
static void
test_compare_many (void)
{
  g_autofree char *path = in_folder ("many.lookroom");
  g_autoptr (GString) json = g_string_new ("{\"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [");
  g_autoptr (Run) table = NULL;

  for (int i = 1; i <= 7; i++)
    g_string_append_printf (json, "%s{\"id\": \"s%d\", \"name\": \"A room with a name that is long, number %d\", \"room\": "
                            "{\"corners\": [[0, 0], [%d000, 0], [%d000, 5000], [0, 5000]]}}", i > 1 ? "," : "", i, i, i + 2, i + 2);
  g_string_append (json, "]}");
  g_assert_true (g_file_set_contents (path, json->str, -1, NULL));
  table = run_program ("compare", path, NULL);
  g_assert_cmpint (table->code, ==, 0);
  assert_narrow (table->out);
  g_assert_nonnull (strstr (table->out, "    * A room with a name that is long, number 7: 45.0\u00a0m²\n"));
}

static void
test_compare (void)
{
  g_autofree char *path = in_folder ("two.lookroom");
  g_autoptr (Run) table = NULL, json = NULL, feet = NULL, missing = run_program ("compare", "no-such.lookroom", NULL);
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *object, *area, *figure;

  g_assert_true (g_file_set_contents (path, "{\"format\": \"lookroom-plan\", \"version\": 1, \"setups\": ["
                                      "{\"id\": \"a\", \"name\": \"Café room\", \"room\": "
                                      "{\"corners\": [[0, 0], [6000, 0], [6000, 5000], [0, 5000]]}},"
                                      "{\"id\": \"b\", \"name\": \"Cellar\", \"room\": {\"corners\": [[0, 0], [4000, 0], [4000, 3000], [0, 3000]]}},"
                                      "{\"id\": \"c\", \"name\": \"Hall\"}]}", -1, NULL));
  table = run_program ("compare", path, NULL);
  g_assert_cmpint (table->code, ==, 0);
  g_assert_cmpstr (table->err, ==, "");
  g_assert_nonnull (strstr (table->out, "* 30.0\u00a0m²"));
  g_assert_nonnull (strstr (table->out, "18.0\u00a0m² more than Cellar"));
  g_assert_nonnull (strstr (table->out, "Hall is not drawn yet."));
  /* columns are aligned by characters, not bytes */
  g_assert_cmpint (column_of (table->out, "Cellar"), ==, column_of (table->out, "12.0\u00a0m²"));
  g_assert_cmpint (column_of (table->out, "Café room"), ==, column_of (table->out, "18.0\u00a0m² more"));
  assert_narrow (table->out);

  feet = run_program ("compare", path, "--units", "imperial", NULL);
  g_assert_nonnull (strstr (feet->out, "323\u00a0sq ft")); /* 30 / 0.3048² */
  json = run_program ("compare", path, "--json", NULL);
  object = parse (json->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (object, "format"), ==, "lookroom-comparison");
  area = json_array_get_object_element (json_object_get_array_member (object, "rows"), 0);
  g_assert_cmpstr (json_object_get_string_member (area, "key"), ==, "area-m2");
  g_assert_cmpstr (json_object_get_string_member (area, "verdict"), ==, "best");
  figure = json_array_get_object_element (json_object_get_array_member (area, "figures"), 0);
  g_assert_true (json_object_get_boolean_member (figure, "is-best"));
  g_assert_cmpfloat (json_object_get_double_member (figure, "value"), ==, 30.0);
  figure = json_array_get_object_element (json_object_get_array_member (area, "figures"), 2);
  g_assert_true (json_object_get_null_member (figure, "value"));
  g_assert_cmpstr (json_object_get_string_member (figure, "known"), ==, "no-room");
  assert_complaint (missing, "no-such.lookroom", NULL);
}

/* --- check ---------------------------------------------------------------------------------------------------- */

static void
test_check (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *office = example ("bare-office.lookroom");
  g_autoptr (Run) a = run_program ("check", loft, NULL);
  g_autoptr (Run) b = run_program ("check", office, "--all", NULL);

  g_assert_cmpint (a->code, ==, 1);
  g_assert_cmpstr (a->err, ==, "");
  g_assert_nonnull (strstr (a->out, "Fix\n  "));
  g_assert_nonnull (strstr (a->out, "22°")); /* UTF-8 in the C locale, too */
  g_assert_null (strstr (a->out, "<b>"));
  g_assert_null (strstr (a->out, "Fine\n"));
  g_assert_true (g_regex_match_simple ("as planned: [1-9][0-9]* to fix, [0-9]+ to mind, [0-9]+ fine\n$", a->out, 0, 0));
  g_assert_cmpint (b->code, ==, 1);
  g_assert_nonnull (strstr (b->out, "Fine\n  "));
}

static void
test_check_json (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autoptr (Run) run = run_program ("check", loft, "--json", NULL);
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *root;

  g_assert_cmpint (run->code, ==, 1);
  root = parse (run->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-remarks");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "remarks")), >, 3);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "cautions")), >, 3);
}

/* A room with one thing that is no trouble: nothing to fix */
static void
test_check_clean (void)
{
  g_autofree char *path = in_folder ("clean.lookroom");
  g_autoptr (Run) run = NULL;

  g_assert_true (g_file_set_contents (path,
    "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [ { \"id\": \"s\", \"name\": \"Empty\", \"room\": {"
    " \"corners\": [[0, 0], [4000, 0], [4000, 3000], [0, 3000]] } } ] }\n", -1, NULL));
  run = run_program ("check", path, NULL);
  g_test_message ("%s%s", run->out, run->err);
  g_assert_cmpint (run->code, ==, 0);
}

/* --- Lists and calendar --------------------------------------------------------------------------------------- */

static gsize
size_of (const char *path)
{
  g_autofree char *data = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &data, &length, NULL));
  g_assert_true (g_str_has_prefix (data, "%PDF-1.5"));
  return length;
}

static void
test_lists (void)
{
  g_autofree char *loft = example ("loft.lookroom"), *alone = in_folder ("alone.pdf"), *along = in_folder ("along.pdf");
  g_autoptr (Run) plan = run_program ("page", loft, "-o", alone, NULL);
  g_autoptr (Run) lists = run_program ("page", loft, "-o", along, "--with", "run, checks,questions", NULL);

  g_assert_cmpint (plan->code, ==, 0);
  g_assert_cmpint (lists->code, ==, 0);
  g_assert_cmpstr (lists->err, ==, "");
  g_assert_cmpuint (size_of (along), >, size_of (alone) + 4096);
}

static void
test_calendar (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *a = in_folder ("a.ics"), *b = in_folder ("b.ics"), *text = NULL, *again = NULL;
  g_autoptr (Run) first = run_program ("calendar", loft, "-o", a, NULL), second = run_program ("calendar", loft, "-o", b, NULL);
  g_autoptr (Run) undated = NULL, full = run_program ("calendar", loft, "-o", "/dev/full", NULL);
  g_autofree char *bare = in_folder ("bare.lookroom");

  g_assert_cmpint (first->code, ==, 0);
  g_assert_cmpint (second->code, ==, 0);
  g_assert_cmpstr (first->out, ==, "");
  g_assert_true (g_file_get_contents (a, &text, NULL, NULL));
  g_assert_true (g_file_get_contents (b, &again, NULL, NULL));
  g_assert_cmpstr (text, ==, again);
  g_assert_true (g_str_has_prefix (text, "BEGIN:VCALENDAR\r\n"));
  g_assert_nonnull (strstr (text, "DTSTART:20260219T083000Z\r\n"));

  g_assert_true (g_file_set_contents (bare, "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [ { \"id\": \"s\" } ] }\n", -1, NULL));
  undated = run_program ("calendar", bare, "-o", a, NULL);
  assert_complaint (undated, bare, "no day");
  assert_complaint (full, "/dev/full", NULL);
}

/* --- pack ----------------------------------------------------------------------------------------------------- */

static void
test_pack (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autoptr (Run) text = run_program ("pack", loft, NULL);
  g_autoptr (Run) csv = run_program ("pack", loft, "--csv", NULL);
  g_autoptr (Run) json = run_program ("pack", loft, "--json", NULL);
  g_autoptr (Run) both = run_program ("pack", loft, "--json", "--csv", NULL);
  g_autoptr (JsonParser) parser = NULL;
  g_auto (GStrv) lines = g_strsplit (csv->out, "\r\n", -1);
  JsonObject *root;

  g_assert_cmpint (text->code, ==, 0);
  g_assert_cmpstr (text->err, ==, "");
  g_assert_true (g_str_has_prefix (text->out, "Drawing loft, as planned\n\n"));
  g_assert_nonnull (strstr (text->out, "Cameras\n   2  Camera body: Camera A, Camera B\n"));
  g_assert_cmpint (csv->code, ==, 0);
  g_assert_cmpstr (lines[0], ==, "group,title,quantity,reserve,in-kit,missing,why");
  g_assert_cmpint (json->code, ==, 0);
  root = parse (json->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-packing");
  /* a line for the titles, one after the last line's end */
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "rows")) + 2, ==, g_strv_length (lines));
  assert_complaint (both, NULL, "--csv");
}

/* A set-up in which nothing is placed says so, under its name and how many there are */
static void
test_pack_empty (void)
{
  g_autofree char *path = in_folder ("bare-pack.lookroom");
  g_autoptr (Run) run = NULL;

  g_assert_true (g_file_set_contents (path, "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [ { \"id\": \"s\", \"name\": \"Hall\" },"
                                            " { \"id\": \"t\", \"name\": \"Shed\" } ] }\n", -1, NULL));
  run = run_program ("pack", path, "--setup", "Shed", NULL);
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (g_str_has_prefix (run->out, "Shed (one of 2 set-ups)\n\nNothing stands in the room yet."));
}

/* --- diff ----------------------------------------------------------------------------------------------------- */

/* A room of 4 by 3 m as planned, and as found: the lower wall 30 cm shorter, the key 40 cm nearer, 35 mm in place of 50 */
#define PEOPLE "\"people\": [ { \"id\": \"p\", \"role\": \"subject\", \"x-mm\": 1000, \"y-mm\": 1500 } ]"

static char *
write_found (const char *name,
             const char *found_of)
{
  char *path = in_folder (name);
  g_autofree char *text = g_strdup_printf (
    "{ \"format\": \"lookroom-plan\", \"version\": 1, \"shown\": \"b\", \"setups\": [ { \"id\": \"a\", \"name\": \"Planned\","
    " \"room\": { \"corners\": [[0, 0], [4000, 0], [4000, 3000], [0, 3000]] }, " PEOPLE ","
    " \"cameras\": [ { \"id\": \"c\", \"tag\": \"B\", \"focal-mm\": 50, \"x-mm\": 3000, \"y-mm\": 2500 } ],"
    " \"lights\": [ { \"id\": \"l\", \"tag\": \"L1\", \"x-mm\": 2400, \"y-mm\": 1500 } ] },"
    " { \"id\": \"b\", \"name\": \"Found\", %s"
    " \"room\": { \"corners\": [[0, 0], [3700, 0], [3700, 3000], [0, 3000]] }, " PEOPLE ","
    " \"cameras\": [ { \"id\": \"c\", \"tag\": \"B\", \"focal-mm\": 35, \"x-mm\": 3000, \"y-mm\": 2500 } ],"
    " \"lights\": [ { \"id\": \"l\", \"tag\": \"L1\", \"x-mm\": 2000, \"y-mm\": 1500 } ] } ] }\n", found_of);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

static void
test_diff (void)
{
  g_autofree char *path = write_found ("found.lookroom", "\"found-of\": \"a\",");
  g_autoptr (Run) run = run_program ("diff", path, NULL);
  g_autoptr (Run) other_way = run_program ("diff", path, "--setup", "Planned", "--against", "Found", "--units", "imperial", NULL);
  g_autoptr (Run) json = run_program ("diff", path, "--json", NULL);
  g_autoptr (JsonParser) parser = NULL;
  JsonArray *differences;
  JsonObject *root, *wall;

  g_test_message ("%s%s", run->out, run->err);
  g_assert_cmpint (run->code, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_nonnull (strstr (run->out, "Wall 1 (south wall) is 30\u00a0cm shorter: 3.70\u00a0m instead of 4.00\u00a0m. It is not taped: tape it.\n"));
  g_assert_nonnull (strstr (run->out, "Camera B has 35\u00a0mm instead of 50\u00a0mm.\n"));
  g_assert_nonnull (strstr (run->out, "L1 key moved 0.40\u00a0m nearer the subject.\n"));
  g_assert_true (g_str_has_suffix (run->out, "Found against Planned: 4 differences\n"));
  g_assert_cmpint (other_way->code, ==, 0);
  g_assert_nonnull (strstr (other_way->out, "farther from the subject"));
  g_assert_null (strstr (other_way->out, "0.40"));

  g_assert_cmpint (json->code, ==, 0);
  root = parse (json->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-differences");
  g_assert_cmpstr (json_object_get_string_member (root, "planned"), ==, "Planned");
  differences = json_object_get_array_member (root, "differences");
  g_assert_cmpuint (json_array_get_length (differences), ==, 4);
  wall = json_array_get_object_element (differences, 0);
  g_assert_cmpstr (json_object_get_string_member (wall, "type"), ==, "wall");
  g_assert_cmpfloat (json_object_get_double_member (wall, "to"), ==, 3.7);
}

/* Of two files, and what cannot be compared */
static void
test_diff_files (void)
{
  g_autofree char *path = write_found ("found.lookroom", "\"found-of\": \"a\",");
  g_autofree char *alone = write_found ("alone.lookroom", "");
  g_autoptr (Run) two = run_program ("diff", path, alone, "--against", "Planned", NULL);
  g_autoptr (Run) same = run_program ("diff", path, alone, NULL);
  g_autoptr (Run) none = run_program ("diff", alone, NULL);
  g_autoptr (Run) three = run_program ("diff", alone, alone, alone, NULL);
  g_autoptr (Run) unknown = run_program ("diff", path, "--against", "Nowhere", NULL);

  g_assert_cmpint (two->code, ==, 0);
  g_assert_true (g_str_has_suffix (two->out, "Found against Planned: 4 differences\n"));
  g_assert_cmpint (same->code, ==, 0);
  g_assert_cmpstr (same->out, ==, "Found against Found: 0 differences\n");
  assert_complaint (none, alone, "--against");
  assert_complaint (three, "diff", "two plan files");
  assert_complaint (unknown, path, "Nowhere");
}

/* --- readings ------------------------------------------------------------------------------------------------- */

static void
test_readings (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autoptr (Run) run = run_program ("readings", loft, "--json", NULL);
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *root;

  g_assert_cmpint (run->code, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  root = parse (run->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-readings");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "asks")), >, 0);
  g_assert_cmpuint (json_object_get_size (json_object_get_object_member (root, "items")), >, 10);
}

/* --- page, frame ---------------------------------------------------------------------------------------------- */

static void
assert_starts_with (const char *path,
                    const char *magic)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_true (memcmp (bytes, magic, strlen (magic)) == 0);
}

static void
test_page (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *a = in_folder ("a.pdf"), *b = in_folder ("b.pdf"), *letter = in_folder ("letter.pdf");
  g_autofree char *a_bytes = NULL, *b_bytes = NULL;
  gsize a_length, b_length;
  g_autoptr (Run) first = run_program ("page", loft, "-o", a, NULL);
  g_autoptr (Run) second = run_program ("page", "--paper=a4", "-o", b, loft, NULL);
  g_autoptr (Run) third = run_program ("page", loft, "-o", letter, "--paper", "letter", "--units", "imperial", NULL);

  g_assert_cmpint (first->code, ==, 0);
  g_assert_cmpstr (first->err, ==, "");
  g_assert_cmpint (second->code, ==, 0);
  g_assert_cmpint (third->code, ==, 0);
  assert_starts_with (a, "%PDF-1.");
  assert_starts_with (letter, "%PDF-1.");

  g_assert_true (g_file_get_contents (a, &a_bytes, &a_length, NULL));
  g_assert_true (g_file_get_contents (b, &b_bytes, &b_length, NULL));
  g_assert_cmpmem (a_bytes, (int) a_length, b_bytes, (int) b_length);
}

static void
test_setup (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *out = in_folder ("s.pdf");
  g_autoptr (Run) unknown = run_program ("page", loft, "-o", out, "--setup", "no such set-up", NULL);
  g_autoptr (Run) known = run_program ("check", loft, "--setup", "Drawing loft, as planned", NULL);

  assert_complaint (unknown, loft, "no such set-up");
  g_assert_false (g_file_test (out, G_FILE_TEST_EXISTS));
  g_assert_cmpint (known->code, ==, 1);
}

static void
test_frame (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *png = in_folder ("a.png"), *svg = in_folder ("b.svg"), *gif = in_folder ("c.gif");
  g_autoptr (Run) a = run_program ("frame", loft, "--camera", "A", "-o", png, "--width", "640", NULL);
  g_autoptr (Run) b = run_program ("frame", loft, "--camera", "B", "-o", svg, NULL);
  g_autoptr (Run) c = run_program ("frame", loft, "-o", gif, NULL);
  g_autoptr (Run) d = run_program ("frame", loft, "--camera", "Z", "-o", png, NULL);

  g_assert_cmpint (a->code, ==, 0);
  g_assert_cmpint (b->code, ==, 0);
  assert_starts_with (png, "\x89PNG\r\n");
  assert_starts_with (svg, "<?xml");
  assert_complaint (c, gif, ".svg");
  assert_complaint (d, loft, "Z");
}

static void
test_cut (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *png = in_folder ("cut.png"), *svg = in_folder ("cut.svg"), *none = in_folder ("none.png");
  g_autoptr (Run) a = run_program ("frame", loft, "--cut", "A,B", "-o", png, "--width", "640", NULL);
  g_autoptr (Run) b = run_program ("frame", loft, "--cut=camera-b, camera-a", "-o", svg, NULL);
  g_autoptr (Run) one = run_program ("frame", loft, "--cut", "A", "-o", none, NULL);
  g_autoptr (Run) same = run_program ("frame", loft, "--cut", "A,A", "-o", none, NULL);
  g_autoptr (Run) unknown = run_program ("frame", loft, "--cut", "A,Z", "-o", none, NULL);
  g_autoptr (Run) both = run_program ("frame", loft, "--cut", "A,B", "--camera", "A", "-o", none, NULL);

  g_assert_cmpint (a->code, ==, 0);
  g_assert_cmpstr (a->err, ==, "");
  g_assert_cmpint (b->code, ==, 0);
  assert_starts_with (png, "\x89PNG\r\n");
  assert_starts_with (svg, "<?xml");
  assert_complaint (one, "frame", "A,B");
  assert_complaint (same, "frame", "itself");
  assert_complaint (unknown, loft, "Z");
  assert_complaint (both, "frame", "--cut");
  g_assert_false (g_file_test (none, G_FILE_TEST_EXISTS));
}

/* Rows and fields as RFC 4180 has them, by a reader of its own; CR LF ends every row, and nothing else stands alone */
static GPtrArray *
read_csv (const char *text)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);

  while (*text != '\0')
    {
      GPtrArray *row = g_ptr_array_new_with_free_func (g_free);

      for (gboolean is_last = FALSE; !is_last; )
        {
          g_autoptr (GString) field = g_string_new (NULL);

          if (*text == '"')
            {
              for (text++; *text != '"' || text[1] == '"'; text += *text == '"' ? 2 : 1)
                {
                  g_assert_cmpint (*text, !=, '\0');
                  g_string_append_c (field, *text);
                }
              text++;
            }
          else
            for (; strchr (",\"\r\n", *text) == NULL; text++)
              g_string_append_c (field, *text);

          is_last = *text != ',';
          g_ptr_array_add (row, g_strdup (field->str));
          if (!is_last)
            text++;
        }
      g_assert_true (g_str_has_prefix (text, "\r\n"));
      text += 2;
      g_ptr_array_add (rows, row);
    }

  return rows;
}

static const char *
csv_cell (const GPtrArray *rows,
          const char      *item,
          const char      *head)
{
  const GPtrArray *heads = g_ptr_array_index (rows, 0);

  for (guint j = 0; j < heads->len; j++)
    for (guint i = 1; g_str_equal (g_ptr_array_index (heads, j), head) && i < rows->len; i++)
      {
        const GPtrArray *row = g_ptr_array_index (rows, i);

        if (g_str_equal (g_ptr_array_index (row, 0), item))
          return g_ptr_array_index (row, j);
      }

  g_error ("no %s of %s", head, item);
}

static double
csv_number (const GPtrArray *rows,
            const char      *item,
            const char      *head)
{
  return g_ascii_strtod (csv_cell (rows, item, head), NULL);
}

/* A plan whose subject has a name that a table must quote */
static char *
awkward_plan (void)
{
  g_autofree char *loft = example ("loft.lookroom"), *text = NULL;
  g_auto (GStrv) parts = NULL;
  g_autofree char *joined = NULL;
  char *path = in_folder ("awkward.lookroom");

  g_assert_true (g_file_get_contents (loft, &text, NULL, NULL));
  parts = g_strsplit (text, "\"name\": \"Wenna\"", -1);
  g_assert_cmpuint (g_strv_length (parts), >, 1);
  joined = g_strjoinv ("\"name\": \"Carrow, \\\"Wenna\\\"\"", parts);
  g_assert_true (g_file_set_contents (path, joined, -1, NULL));
  return path;
}

/* Camera A stands at (4.81, 2.80) in a room whose corner 1 is (0, 0), 2 (7.20, 0), 3 (7.20, 4.45): Pythagoras by hand */
static void
test_tape (void)
{
  g_autofree char *plan = awkward_plan ();
  g_autoptr (Run) text = run_program ("tape", plan, NULL), feet = run_program ("tape", plan, "--units", "imperial", NULL);
  g_autoptr (Run) csv = run_program ("tape", plan, "--csv", NULL), csv_feet = run_program ("tape", plan, "--csv", "--units=imperial", NULL);
  g_autoptr (Run) json = run_program ("tape", plan, "--json", NULL), both = run_program ("tape", plan, "--json", "--csv", NULL);
  g_autoptr (GPtrArray) rows = NULL, rows_feet = NULL;
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *root;

  g_assert_cmpint (text->code, ==, 0);
  g_assert_cmpstr (text->err, ==, "");
  g_assert_nonnull (strstr (text->out, "A camera, tripod"));
  g_assert_nonnull (strstr (text->out, "2: 3.68  3: 2.90"));
  g_assert_nonnull (strstr (text->out, "lens 1.20"));
  g_assert_nonnull (strstr (feet->out, "2: 12′\u00a01″")); /* 3.6835 m are 145.02 in */

  g_assert_cmpint (csv->code, ==, 0);
  rows = read_csv (csv->out);
  for (guint i = 0; i < rows->len; i++)
    g_assert_cmpuint (((GPtrArray *) g_ptr_array_index (rows, i))->len, ==, ((GPtrArray *) g_ptr_array_index (rows, 0))->len);
  g_assert_cmpstr (csv_cell (rows, "camera-a", "corner-a"), ==, "2");
  g_assert_cmpfloat_with_epsilon (csv_number (rows, "camera-a", "from-corner-a-m"), hypot (7.20 - 4.81, 2.80), 5.1e-4);
  g_assert_cmpstr (csv_cell (rows, "camera-a", "corner-b"), ==, "3");
  g_assert_cmpfloat_with_epsilon (csv_number (rows, "camera-a", "from-corner-b-m"), hypot (7.20 - 4.81, 4.45 - 2.80), 5.1e-4);
  g_assert_cmpstr (csv_cell (rows, "camera-a", "grid-x-m"), ==, "4.810");
  g_assert_cmpstr (csv_cell (rows, "wenna", "mark"), ==, "Carrow, \"Wenna\", mid-seat");
  rows_feet = read_csv (csv_feet->out);
  g_assert_cmpstr (csv_cell (rows_feet, "camera-a", "from-corner-a-ft-in"), ==, "12′\u00a01″");

  root = parse (json->out, &parser);
  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-tape");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "marks")), ==, rows->len - 1);
  assert_complaint (both, "tape", "--csv");
}

static void
test_unwritable (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *nowhere = in_folder ("no/such/folder/a.pdf");
  g_autoptr (Run) full = run_program ("page", loft, "-o", "/dev/full", NULL);
  g_autoptr (Run) missing = run_program ("page", loft, "-o", nowhere, NULL);
  g_autoptr (Run) on_folder = run_program ("page", loft, "-o", folder, NULL);
  GStatBuf status;

  assert_complaint (full, "/dev/full", "space");
  assert_complaint (missing, nowhere, NULL);
  assert_complaint (on_folder, folder, NULL);
  /* the device is still one */
  g_assert_cmpint (g_stat ("/dev/full", &status), ==, 0);
  g_assert_true (S_ISCHR (status.st_mode));
}

/* --- Bad input ------------------------------------------------------------------------------------------------ */

typedef struct
{
  const char *name;
  const char *text;     /* of the file; NULL: there is none */
} BadCase;

static const BadCase bad_cases[] = {
  { "missing", NULL },
  { "empty", "" },
  { "truncated", "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [ {" },
  { "not-json", "Wenna Carrow, sailmaker\n" },
  { "not-a-plan", "{ \"format\": \"something-else\" }" },
  { "nan", "{ \"format\": \"lookroom-plan\", \"version\": NaN }" },
  { "huge-number", "{ \"format\": \"lookroom-plan\", \"version\": 1e999 }" },
  { "wrong-type", "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": 7 }" },
  { "list", "[]" },
};

static void
test_bad_file (gconstpointer data)
{
  static const char *const commands[] = { "check", "readings" };
  const BadCase *c = data;
  g_autofree char *name = g_strdup_printf ("%s.lookroom", c->name);
  g_autofree char *path = in_folder (name);

  if (c->text != NULL)
    g_assert_true (g_file_set_contents (path, c->text, -1, NULL));

  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autoptr (Run) run = run_program (commands[i], path, NULL);

      assert_complaint (run, path, NULL);
      /* the file is named once */
      g_assert_null (strstr (run->err + strlen ("lookroom: ") + strlen (path), path));
    }
}

static void
test_folder (void)
{
  g_autoptr (Run) run = run_program ("check", folder, NULL);

  assert_complaint (run, folder, NULL);
}

static void
test_nesting (void)
{
  g_autofree char *path = in_folder ("deep.lookroom");
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (Run) run = NULL;

  for (int i = 0; i < 10000; i++)
    g_string_append_c (text, '[');
  g_assert_true (g_file_set_contents (path, text->str, -1, NULL));
  run = run_program ("check", path, NULL);
  assert_complaint (run, path, NULL);
}

static void
test_usage (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autoptr (Run) no_file = run_program ("check", NULL);
  g_autoptr (Run) two_files = run_program ("check", loft, loft, NULL);
  g_autoptr (Run) unknown = run_program ("check", loft, "--frobnicate", NULL);
  g_autoptr (Run) no_command = run_program ("--frobnicate", NULL);
  g_autoptr (Run) no_out = run_program ("page", loft, NULL);
  g_autoptr (Run) paper = run_program ("page", loft, "-o", "x.pdf", "--paper", "a3", NULL);
  g_autoptr (Run) lists = run_program ("page", loft, "-o", "x.pdf", "--with", "run,shopping", NULL);
  g_autoptr (Run) no_calendar = run_program ("calendar", loft, NULL);
  g_autoptr (Run) units = run_program ("check", loft, "--units", "cubits", NULL);

  assert_complaint (no_file, "check", NULL);
  assert_complaint (two_files, "check", NULL);
  assert_complaint (unknown, "check", "--frobnicate");
  assert_complaint (no_command, NULL, "--frobnicate");
  assert_complaint (no_out, "page", "-o");
  assert_complaint (lists, NULL, "“shopping”");
  assert_complaint (no_calendar, "calendar", "-o");
  assert_complaint (paper, NULL, "a3");
  assert_complaint (units, NULL, "cubits");
}

/* A reader of the pipe that is gone, and a full disk behind stdout, are failures, not silence */
static void
test_stdout (void)
{
  g_autofree char *loft = example ("loft.lookroom");
  g_autofree char *command = g_strdup_printf ("'%s' readings '%s' --json > /dev/full", program, loft);
  const char *args[] = { "/bin/sh", "-c", command, NULL };
  g_autofree char *err = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  g_spawn_sync (NULL, (char **) args, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, &err, &status, &error);
  g_assert_no_error (error);
  g_assert_false (g_spawn_check_wait_status (status, &error));
  g_assert_cmpint (error->code, ==, 2);
  g_assert_true (g_str_has_prefix (err, "lookroom: "));
}

static void
remove_folder (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *path = in_folder (name);

      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
}

int
main (int    argc,
      char **argv)
{
  int failures;

  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, >=, 2);
  program = argv[1];
  folder = g_dir_make_tmp ("lookroom-cli-XXXXXX", NULL);

  g_test_add_func ("/cli/help", test_help);
  g_test_add_func ("/cli/compare", test_compare);
  g_test_add_func ("/cli/compare-many", test_compare_many);
  g_test_add_func ("/cli/check/text", test_check);
  g_test_add_func ("/cli/check/json", test_check_json);
  g_test_add_func ("/cli/check/clean", test_check_clean);
  g_test_add_func ("/cli/lists", test_lists);
  g_test_add_func ("/cli/calendar", test_calendar);
  g_test_add_func ("/cli/pack", test_pack);
  g_test_add_func ("/cli/pack-empty", test_pack_empty);
  g_test_add_func ("/cli/diff", test_diff);
  g_test_add_func ("/cli/diff/files", test_diff_files);
  g_test_add_func ("/cli/readings", test_readings);
  g_test_add_func ("/cli/page", test_page);
  g_test_add_func ("/cli/setup", test_setup);
  g_test_add_func ("/cli/frame", test_frame);
  g_test_add_func ("/cli/cut", test_cut);
  g_test_add_func ("/cli/tape", test_tape);
  g_test_add_func ("/cli/unwritable", test_unwritable);
  for (gsize i = 0; i < G_N_ELEMENTS (bad_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/cli/bad/%s", bad_cases[i].name);

      g_test_add_data_func (path, &bad_cases[i], test_bad_file);
    }
  g_test_add_func ("/cli/bad/folder", test_folder);
  g_test_add_func ("/cli/bad/nesting", test_nesting);
  g_test_add_func ("/cli/usage", test_usage);
  g_test_add_func ("/cli/stdout", test_stdout);

  failures = g_test_run ();
  remove_folder ();
  return failures;
}
