/* test-file.c - reading and saving: what comes back, what is refused and in which words, and what a fault leaves behind
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan-test.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <sys/resource.h>
#include <unistd.h>

/* A folder of its own for every test */
typedef struct
{
  char *folder, *path, *backup;
} Place;

static void
set_up (Place        *place,
        gconstpointer data G_GNUC_UNUSED)
{
  place->folder = g_dir_make_tmp ("lookroom-test-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "a plan.lookroom", NULL);
  place->backup = g_strconcat (place->path, "~", NULL);
  g_chmod (place->folder, 0755);
}

static guint
n_files (const Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;

  return n;
}

static void
tear_down (Place        *place,
           gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->path);
  g_free (place->backup);
}

static void
assert_contents (const char *path,
                 GBytes     *expected)
{
  g_autofree char *data = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  g_file_get_contents (path, &data, &length, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (length, ==, g_bytes_get_size (expected));
  g_assert_cmpint (memcmp (data, g_bytes_get_data (expected, NULL), length), ==, 0);
}

/* Round trips */

static const char *const saved_files[] = {
  "../examples/loft.lookroom", "../examples/bare-office.lookroom", "data/unknown-members.lookroom",
};

static void
test_same_bytes (gconstpointer data)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, data, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);
  g_autoptr (GBytes) bytes = NULL;

  g_assert_no_error (error);
  bytes = lr_plan_to_bytes (plan);
  assert_contents (path, bytes);
  assert_round_trip (plan);
}

/* Unknown members live through edits of what they stand in */
static void
test_unknown_members (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "unknown-members.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);
  g_autoptr (GBytes) before = NULL, after = NULL;
  g_auto (GStrv) parts_before = NULL, parts_after = NULL;

  g_assert_no_error (error);
  before = lr_plan_to_bytes (plan);
  take_next (&plan, lr_plan_move (plan, "wenna", lr_vec2 (1.0, 1.0), &error), &error);
  take_next (&plan, lr_plan_set_room (plan, "height-mm", 2.9, &error), &error);
  take_next (&plan, lr_plan_set_location_text (plan, "address", "Other", &error), &error);
  take_next (&plan, lr_plan_set_job (plan, "title", "Other", &error), &error);
  take_next (&plan, lr_plan_set_limit (plan, LR_LIMIT_OVERLAP, 0.02, &error), &error);
  take_next (&plan, lr_plan_set_kit_count (plan, "lens-50", 3, &error), &error);
  take_next (&plan, lr_plan_move_corner (plan, 0, lr_vec2 (0.1, 0.1), &error), &error);
  after = lr_plan_to_bytes (plan);
  parts_before = g_strsplit (g_bytes_get_data (before, NULL), "\"x-new", -1);
  parts_after = g_strsplit (g_bytes_get_data (after, NULL), "\"x-new", -1);
  g_assert_cmpuint (g_strv_length (parts_before), ==, 14); /* thirteen of them, one at every level */
  g_assert_cmpuint (g_strv_length (parts_after), ==, 14);
  assert_round_trip (plan);
}

/* In the lists of a job too, which are left out while they are empty */
static void
test_unknown_in_lists (void)
{
  static const char text[] = "{\"format\": \"lookroom-plan\", \"version\": 1, \"job\": {\"questions\": [{\"id\": \"q1\", \"text\": \"a\", \"x-new\": 1},"
                             "{\"id\": \"q2\", \"text\": \"b\"}], \"run\": [{\"key\": \"sound\", \"x-new\": 2}], \"ticks\": [\"run/sound\"]},"
                             " \"setups\": [{\"id\": \"a\"}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data (text, strlen (text), &error), empty = lr_plan_new_empty ();
  g_autoptr (GBytes) bytes = NULL, bare = lr_plan_to_bytes (empty);
  g_auto (GStrv) parts = NULL;

  g_assert_no_error (error);
  take_next (&plan, lr_plan_set_job (plan, "title", "Other", &error), &error);
  assert_round_trip (plan);
  bytes = lr_plan_to_bytes (plan);
  parts = g_strsplit (g_bytes_get_data (bytes, NULL), "\"x-new\"", -1);
  g_assert_cmpuint (g_strv_length (parts), ==, 3);
  g_assert_null (g_strstr_len (g_bytes_get_data (bare, NULL), (gssize) g_bytes_get_size (bare), "\"ticks\""));
}

/* A missing member has its fallback; the least plan is a set-up with an id */
static void
test_least (void)
{
  static const char text[] = "{\"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [{\"id\": \"a\", "
                             "\"cameras\": [{\"id\": \"c\"}]}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data (text, strlen (text), &error);
  g_autoptr (LrItem) camera = lr_item_new (LR_ITEM_CAMERA, "c");
  g_autofree char *marked = g_strconcat ("\xef\xbb\xbf", text, NULL);
  g_autoptr (LrPlan) after_mark = lr_plan_read_data (marked, strlen (marked), &error);

  g_assert_no_error (error);
  g_assert_true (lr_item_equal (lr_plan_find (plan, "c"), camera));
  g_assert_true (lr_plan_equal (plan, after_mark));
  assert_round_trip (plan);
}

static void
test_new_plan (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();

  g_assert_cmpuint (plan->setups->len, ==, 1);
  g_assert_cmpuint (plan->kit->len, ==, 13);
  assert_round_trip (plan);
}

/* Version 1 noted the place once, for the whole job: every set-up gets it, as a value of its own */
static void
test_version_1 (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "version-1.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);
  g_autoptr (GBytes) bytes = NULL;

  g_assert_no_error (error);
  g_assert_cmpint (plan->version, ==, LR_PLAN_VERSION);
  g_assert_cmpuint (plan->setups->len, ==, 2);
  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrLocation *location = ((const LrSetup *) plan->setups->pdata[i])->location;
      g_autofree char *where = lr_location_dup_where (location);

      g_assert_cmpstr (where, ==, "The mill, 3 Weir Lane");
      g_assert_cmpstr (location->access, ==, "side door");
      g_assert_cmpstr (location->permission, ==, "by word");
      g_assert_cmpfloat (location->latitude_deg, ==, 51.5);
      g_assert_cmpfloat (location->longitude_deg, ==, 0.0);
      g_assert_cmpfloat (location->mains_hz, ==, 50.0);
      g_assert_cmpuint (location->n_contacts, ==, 1);
      g_assert_cmpstr (location->contacts[0].phone, ==, "01632 960172");
      g_assert_nonnull (location->contacts[0].unknown);
    }
  bytes = lr_plan_to_bytes (plan);
  g_assert_null (strstr (g_bytes_get_data (bytes, NULL), "\"place\""));
  assert_round_trip (plan);
}

/* There 0 and 0 meant that nobody had noted a position; one of them alone, that the other is 0 */
static void
test_version_1_position (void)
{
  static const struct { const char *members; gboolean is_noted; } rows[] = {
    { "", FALSE }, { "\"latitude-deg\": 0, \"longitude-deg\": 0.0", FALSE }, { "\"latitude-deg\": 0", FALSE },
    { "\"latitude-deg\": 12.5", TRUE }, { "\"latitude-deg\": 0, \"longitude-deg\": -78.5", TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = g_strdup_printf ("{\"format\": \"lookroom-plan\", \"version\": 1, \"job\": {%s}, \"setups\": [{\"id\": \"a\"}]}",
                                               rows[i].members);
      g_autoptr (GError) error = NULL;
      g_autoptr (LrPlan) plan = lr_plan_read_data (text, strlen (text), &error);

      g_test_message ("%s", rows[i].members);
      g_assert_no_error (error);
      g_assert_true (lr_location_is_on_map (lr_plan_get_setup (plan)->location) == rows[i].is_noted);
    }
}

/* A newer version can be looked at, and neither changed nor saved */
static void
test_newer_version (Place        *place,
                    gconstpointer data G_GNUC_UNUSED)
{
  static const char text[] = "{\"format\": \"lookroom-plan\", \"version\": 3, \"planets\": [1, 2],"
                             "\"setups\": [{\"id\": \"a\"}, {\"id\": \"b\"}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data (text, strlen (text), &error);
  g_autoptr (LrPlan) other = NULL;
  g_autoptr (GBytes) bytes = NULL;

  g_assert_no_error (error);
  g_assert_true (plan->is_read_only);
  g_assert_null (lr_plan_set_job (plan, "title", "a", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_false (lr_plan_write (plan, place->path, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VERSION);
  g_clear_error (&error);
  g_assert_cmpuint (n_files (place), ==, 0);

  other = lr_plan_show_setup (plan, "b", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (other->shown, ==, 1);
  assert_round_trip (other);
  bytes = lr_plan_to_bytes (plan);
  g_assert_nonnull (strstr (g_bytes_get_data (bytes, NULL), "\"version\": 3"));
  g_assert_nonnull (strstr (g_bytes_get_data (bytes, NULL), "\"planets\": [1, 2]"));
}

/* Bad documents */

typedef struct
{
  const char *name;
  int         code;
  const char *fragment; /* of the sentence */
} BadCase;

static const BadCase bad_cases[] = {
  { "a-picture", LR_PLAN_ERROR_SYNTAX, "line 1: this is not UTF-8 text" },
  { "beyond-the-wall", LR_PLAN_ERROR_VALUE, "setups[0].room.doors[0].along-mm is 3500, but the wall is 3000 long (line 32)" },
  { "character-zero", LR_PLAN_ERROR_SYNTAX, "the character 0" },
  { "clockwise", LR_PLAN_ERROR_VALUE, "setups[0].room.corners runs clockwise" },
  { "comment", LR_PLAN_ERROR_SYNTAX, "line 1: a value is expected" },
  { "control-character", LR_PLAN_ERROR_SYNTAX, "line 1, at format: a text holds a control character" },
  { "corner-of-three", LR_PLAN_ERROR_VALUE, "setups[0].room.corners[2] is not a pair" },
  { "corner-text", LR_PLAN_ERROR_VALUE, "setups[0].room.corners[1][1] is a text, not a number" },
  { "crossing-walls", LR_PLAN_ERROR_VALUE, "setups[0].room.corners makes walls that cross" },
  { "empty", LR_PLAN_ERROR_SYNTAX, "the file is empty" },
  { "empty-setups", LR_PLAN_ERROR_FORMAT, "setups is missing or empty" },
  { "far-away", LR_PLAN_ERROR_VALUE, "setups[0].people[0].x-mm is 1000000000, outside -500000 to 500000" },
  { "flag-number", LR_PLAN_ERROR_VALUE, "has-glasses is a number, not true or false" },
  { "found-missing", LR_PLAN_ERROR_REFERENCE, "setups[1].found-of names “setup-3”, which is not there" },
  { "found-in-a-ring", LR_PLAN_ERROR_REFERENCE, "setups[0].found-of names “setup-2”, which it cannot name" },
  { "found-of-itself", LR_PLAN_ERROR_REFERENCE, "setups[1].found-of names “setup-2”, which it cannot name" },
  { "hexadecimal", LR_PLAN_ERROR_SYNTAX, "line 1, at version: “,” or “}” is expected" },
  { "huge-integer", LR_PLAN_ERROR_VALUE, "line 2, at setups[0].cameras[0].iso: this number is too large" },
  { "huge-number", LR_PLAN_ERROR_VALUE, "line 2, at setups[0].cameras[0].iso: this number is too large" },
  { "id-twice", LR_PLAN_ERROR_REFERENCE, "setups[0].cameras[0].id is “a”, which is taken already" },
  { "job-list", LR_PLAN_ERROR_VALUE, "job is a list, not an object" },
  { "kit-aims", LR_PLAN_ERROR_REFERENCE, "kit[0].aims-at names “a”, which is not there" },
  { "kit-id-twice", LR_PLAN_ERROR_REFERENCE, "kit[1].id is “a”, which is taken already" },
  { "kit-kind", LR_PLAN_ERROR_VALUE, "kit[0].kind is “door”" },
  { "kit-no-kind", LR_PLAN_ERROR_VALUE, "kit[0].kind is missing" },
  { "lamp-angles", LR_PLAN_ERROR_VALUE,
    "setups[0].lights[0].photometry.lines[5] cannot be read as a photometric file: line 6: the angles do not rise (line 21)" },
  { "lamp-cut-off", LR_PLAN_ERROR_VALUE, "lights[0].photometry.lines[6] cannot be read as a photometric file: line 7: the file ends before" },
  { "lamp-format", LR_PLAN_ERROR_VALUE, "setups[0].lights[0].photometry.format is “xml”, not one of ies, ldt" },
  { "lamp-in-the-kit", LR_PLAN_ERROR_VALUE, "kit[0].photometry.lines[2] cannot be read as a photometric file: line 3: there is no number" },
  { "lamp-line-end", LR_PLAN_ERROR_VALUE, "photometry.lines[5] cannot be read as a photometric file: line 6: it holds the end of a line" },
  { "lamp-line-number", LR_PLAN_ERROR_VALUE, "photometry.lines[6] is a number, not a text" },
  { "lamp-no-lines", LR_PLAN_ERROR_VALUE, "setups[0].lights[0].photometry.lines is missing" },
  { "lamp-text", LR_PLAN_ERROR_VALUE, "setups[0].lights[0].photometry is a text, not an object" },
  { "lens-backwards", LR_PLAN_ERROR_VALUE, "kit[0].focal-max-mm is not more than “focal-min-mm”" },
  { "lens-is-a-camera", LR_PLAN_ERROR_REFERENCE, "setups[0].cameras[0].lens names “body”, which it cannot name" },
  { "missing-circuit", LR_PLAN_ERROR_REFERENCE, "setups[0].room.sockets[0].circuit names “c”, which is not there" },
  { "missing-reference", LR_PLAN_ERROR_REFERENCE, "setups[0].cameras[1].aims-at names “wenna”, which is not there (line 15)" },
  { "name-twice", LR_PLAN_ERROR_SYNTAX, "line 4, at setups[0].id: this name stands twice" },
  { "nan", LR_PLAN_ERROR_SYNTAX, "line 1, at setups[0].cameras[0].f-number: a value is expected" },
  { "newer-version-broken", LR_PLAN_ERROR_VALUE, "setups[0].cameras[0].f-number is a text, not a number" },
  { "no-format", LR_PLAN_ERROR_FORMAT, "the file is not a plan: it has no “format”" },
  { "no-id", LR_PLAN_ERROR_VALUE, "setups[0].people[0].id is missing" },
  { "no-object", LR_PLAN_ERROR_FORMAT, "the file is not a plan" },
  { "no-setups", LR_PLAN_ERROR_FORMAT, "setups is missing or empty" },
  { "no-such-wall", LR_PLAN_ERROR_REFERENCE, "setups[0].room.doors[0].wall is 4, but the room has 4 walls" },
  { "no-version", LR_PLAN_ERROR_FORMAT, "the file has no “version”" },
  { "not-utf8", LR_PLAN_ERROR_SYNTAX, "line 2: this is not UTF-8 text" },
  { "number-null", LR_PLAN_ERROR_VALUE, "focal-mm is null, not a number" },
  { "number-text", LR_PLAN_ERROR_VALUE, "focal-mm is a text, not a number" },
  { "other-format", LR_PLAN_ERROR_FORMAT, "format is not “lookroom-plan”: this is not a plan" },
  { "out-of-range", LR_PLAN_ERROR_VALUE, "setups[0].cameras[1].f-number is 0.2, outside 0.7 to 64 (line 15)" },
  { "part-of-a-count", LR_PLAN_ERROR_VALUE, "outlets is 1.5, not a whole number from 1 to 24" },
  { "path-of-one", LR_PLAN_ERROR_VALUE, "setups[0].leads[0].path has one point" },
  { "people-object", LR_PLAN_ERROR_VALUE, "setups[0].people is an object, not a list" },
  { "person-text", LR_PLAN_ERROR_VALUE, "setups[0].people[0] is a text, not an object" },
  { "question-id-twice", LR_PLAN_ERROR_REFERENCE, "job.questions[1].id is “q1”, which is taken already" },
  { "question-without-id", LR_PLAN_ERROR_VALUE, "job.questions[1].id is missing" },
  { "reference-of-a-kind", LR_PLAN_ERROR_REFERENCE, "setups[0].people[0].looks-at names “camera-1”, which it cannot name" },
  { "reference-to-itself", LR_PLAN_ERROR_REFERENCE, "setups[0].people[0].looks-at names “a”, which it cannot name" },
  { "picture-cut", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines[1] is no base64" },
  { "picture-empty", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines cannot be read as a picture: this is no PNG" },
  { "picture-letters", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines[1] is no base64" },
  { "picture-line-number", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines[1] is a number, not a text" },
  { "picture-no-lines", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines is missing" },
  { "picture-no-type", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.media-type is missing" },
  { "picture-number", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture is a number, not an object" },
  { "picture-of-bare", LR_PLAN_ERROR_REFERENCE, "setups[1].room.underlay-picture names “first”, which has no picture" },
  { "picture-of-itself", LR_PLAN_ERROR_REFERENCE, "setups[0].room.underlay-picture names “setup-1”, which is no set-up before this one" },
  { "picture-of-nobody", LR_PLAN_ERROR_REFERENCE, "setups[0].room.underlay-picture names “setup-9”, which is no set-up before this one" },
  { "picture-other", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines cannot be read as a picture: this is no JPEG" },
  { "picture-padding", LR_PLAN_ERROR_VALUE, "setups[0].room.underlay-picture.lines[0] is no base64" },
  { "picture-type", LR_PLAN_ERROR_VALUE, "underlay-picture.media-type is “image/gif”, not one of image/png, image/jpeg, image/svg+xml, application/pdf" },
  { "request-number", LR_PLAN_ERROR_VALUE, "job.requests[1] is a number, not a text" },
  { "run-minutes", LR_PLAN_ERROR_VALUE, "job.run[0].minutes is -5, not a whole number from 0 to 1440" },
  { "setup-id-twice", LR_PLAN_ERROR_REFERENCE, "setups[1].id is “a”, which is taken already" },
  { "shown-missing", LR_PLAN_ERROR_REFERENCE, "shown names “setup-2”, which is not there" },
  { "sill-above-head", LR_PLAN_ERROR_VALUE, "setups[0].room.windows[0].head-mm is not more than “sill-mm”" },
  { "single-quotes", LR_PLAN_ERROR_SYNTAX, "line 1: a name in double quotes is expected" },
  { "tick-number", LR_PLAN_ERROR_VALUE, "job.ticks[1] is a number, not a text" },
  { "title-number", LR_PLAN_ERROR_VALUE, "job.title is a number, not a text" },
  { "too-many-corners", LR_PLAN_ERROR_TOO_LARGE, "setups[0].room.corners has 65 points" },
  { "trailing-comma", LR_PLAN_ERROR_SYNTAX, "line 1: a name in double quotes is expected" },
  { "truncated", LR_PLAN_ERROR_SYNTAX, "line 7, at setups[0]: the file ends too early" },
  { "two-corners", LR_PLAN_ERROR_VALUE, "setups[0].room.corners has fewer than three points" },
  { "two-roots", LR_PLAN_ERROR_SYNTAX, "line 2: something follows the end" },
  { "unclosed-text", LR_PLAN_ERROR_SYNTAX, "line 1, at format: a text holds a control character or is not closed" },
  { "unknown-choice", LR_PLAN_ERROR_VALUE, "setups[0].lights[0].form is “candle”, not one of wide, panel, point" },
  { "version-text", LR_PLAN_ERROR_VALUE, "version is a text, not a number" },
  { "version-zero", LR_PLAN_ERROR_VALUE, "version is 0" },
  { "wall-without-room", LR_PLAN_ERROR_REFERENCE, "setups[0].room.doors[0].wall is 0, but the room has 0 walls" },
  { "wrong-date", LR_PLAN_ERROR_VALUE, "job.date is “2026-02-30”" },
  { "wrong-limit", LR_PLAN_ERROR_VALUE, "limits.cut-angle-deg is 400, outside 0 to 180" },
  { "wrong-time", LR_PLAN_ERROR_VALUE, "job.time-roll is “25:00”" },
};

static void
test_bad (gconstpointer data)
{
  const BadCase *c = data;
  g_autofree char *name = g_strconcat (c->name, ".lookroom", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "bad", name, NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_null (plan);
  g_test_message ("%s", error->message);
  g_assert_error (error, LR_PLAN_ERROR, c->code);
  g_assert_nonnull (strstr (error->message, c->fragment));
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_null (strchr (error->message, '\n'));
}

/* Every document of the folder is in the table */
static void
test_bad_folder (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "bad", NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  guint n = 0;

  g_assert_nonnull (dir);
  while (g_dir_read_name (dir) != NULL)
    n++;
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (bad_cases));
}

static void
test_deep_nesting (void)
{
  for (gsize depth = 10000; depth <= 1000000; depth *= 100)
    {
      g_autoptr (GString) text = g_string_new ("{\"format\": \"lookroom-plan\", \"version\": 1, \"new\": ");
      g_autoptr (GError) error = NULL;

      for (gsize i = 0; i < depth; i++)
        g_string_append_c (text, '[');
      g_assert_null (lr_plan_read_data (text->str, text->len, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE);
      g_assert_nonnull (strstr (error->message, "nested too deeply"));
      g_assert_nonnull (strstr (error->message, "at new[0][0]"));
      g_assert_cmpint (g_utf8_strlen (error->message, -1), <, 100);
    }
}

static void
test_large_file (Place        *place,
                 gconstpointer data G_GNUC_UNUSED)
{
  int fd = g_open (place->path, O_CREAT | O_WRONLY, 0644);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (ftruncate (fd, 100 * 1000 * 1000), ==, 0);
  close (fd);
  g_assert_null (lr_plan_read (place->path, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, "larger than 64 MB"));
}

/* Whatever becomes of a file, there is a plan or a sentence */
static void
test_damage (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  gsize length;
  const char *good = g_bytes_get_data (bytes, &length);

  for (gsize cut = 0; cut < length - 1; cut += 41)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (lr_plan_read_data (good, cut, &error));
      g_assert_true (error->domain == LR_PLAN_ERROR);
    }
  for (guint i = 0; i < 2000; i++)
    {
      g_autofree char *data = g_memdup2 (good, length);
      g_autoptr (GError) error = NULL;
      g_autoptr (LrPlan) damaged = NULL;

      for (int n = g_test_rand_int_range (1, 4); n > 0; n--)
        data[g_test_rand_int_range (0, (int) length)] = (char) g_test_rand_int_range (0, 256);
      damaged = lr_plan_read_data (data, length, &error);
      g_assert_true ((damaged == NULL) == (error != NULL));
      g_assert_true (error == NULL || error->domain == LR_PLAN_ERROR);
      if (damaged != NULL)
        assert_round_trip (damaged);
    }
}

/* Faults while reading. Root may do anything, so for these it becomes nobody for a while. */

static void
drop_rights (void)
{
  if (getuid () == 0)
    g_assert_cmpint (seteuid (65534), ==, 0);
}

static void
regain_rights (void)
{
  if (getuid () == 0)
    g_assert_cmpint (seteuid (0), ==, 0);
}

static void
assert_io_error (GError    **error,
                 const char *fragment)
{
  g_assert_error (*error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO);
  g_test_message ("%s", (*error)->message);
  g_assert_nonnull (strstr ((*error)->message, fragment));
  g_clear_error (error);
}

static void
test_cannot_read (Place        *place,
                  gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (lr_plan_read (place->path, &error));
  assert_io_error (&error, "No such file");
  g_assert_null (lr_plan_read (place->folder, &error));
  assert_io_error (&error, "directory");
  g_file_set_contents (place->path, "{}", -1, NULL);
  g_chmod (place->path, 0);
  drop_rights ();
  g_assert_null (lr_plan_read (place->path, &error));
  regain_rights ();
  assert_io_error (&error, "Permission denied");
}

/* Saving */

static void
test_save (Place        *place,
           gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GBytes) first = lr_plan_to_bytes (plan), second = NULL, third = NULL;
  g_autofree char *link_path = g_build_filename (place->folder, "link.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  GStatBuf stat_buf;

  lr_plan_write (plan, place->path, &error);
  g_assert_no_error (error);
  assert_contents (place->path, first);
  g_assert_cmpuint (n_files (place), ==, 1);

  /* Over it: the mode stays, what was there is the backup */
  g_chmod (place->path, 0640);
  take_next (&plan, lr_plan_set_job (plan, "title", "Second", &error), &error);
  second = lr_plan_to_bytes (plan);
  lr_plan_write (plan, place->path, &error);
  g_assert_no_error (error);
  assert_contents (place->path, second);
  assert_contents (place->backup, first);
  g_assert_cmpuint (n_files (place), ==, 2);
  g_stat (place->path, &stat_buf);
  g_assert_cmpint (stat_buf.st_mode & 07777, ==, 0640);

  /* Through a link: it stays one, and the file behind it is saved */
  g_assert_cmpint (symlink (place->path, link_path), ==, 0);
  take_next (&plan, lr_plan_set_job (plan, "title", "Third", &error), &error);
  third = lr_plan_to_bytes (plan);
  lr_plan_write (plan, link_path, &error);
  g_assert_no_error (error);
  assert_contents (place->path, third);
  assert_contents (place->backup, second);
  g_assert_true (g_file_test (link_path, G_FILE_TEST_IS_SYMLINK));
  g_assert_cmpuint (n_files (place), ==, 3);
}

/* A disk that takes no more: what was there is as it was, and nothing is left over. The limit on the size of a file
 * stands in for the disk, whose end a test cannot bring about. */
static void
test_disk_full (Place        *place,
                gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GBytes) first = lr_plan_to_bytes (plan), second = NULL;
  g_autoptr (GError) error = NULL;
  struct rlimit before, limit;
  gboolean ok;

  lr_plan_write (plan, place->path, &error);
  take_next (&plan, lr_plan_set_job (plan, "title", "Second", &error), &error);
  second = lr_plan_to_bytes (plan);
  lr_plan_write (plan, place->path, &error);
  g_assert_no_error (error);

  take_next (&plan, lr_plan_set_job (plan, "title", "Third", &error), &error);
  signal (SIGXFSZ, SIG_IGN);
  getrlimit (RLIMIT_FSIZE, &before);
  limit = (struct rlimit) { .rlim_cur = 4096, .rlim_max = before.rlim_max };
  setrlimit (RLIMIT_FSIZE, &limit);
  ok = lr_plan_write (plan, place->path, &error);
  setrlimit (RLIMIT_FSIZE, &before);
  g_assert_false (ok);
  assert_io_error (&error, "cannot be written");
  assert_contents (place->path, second);
  assert_contents (place->backup, first);
  g_assert_cmpuint (n_files (place), ==, 2);

  if (g_file_test ("/dev/full", G_FILE_TEST_EXISTS))
    {
      g_assert_false (lr_plan_write (plan, "/dev/full", &error));
      assert_io_error (&error, "/dev/full: cannot be written: No space left on device");
      g_assert_true (g_file_test ("/dev/full", G_FILE_TEST_EXISTS) && !g_file_test ("/dev/full", G_FILE_TEST_IS_REGULAR));
    }
}

static void
test_cannot_save (Place        *place,
                  gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autofree char *nowhere = g_build_filename (place->folder, "nowhere", "a.lookroom", NULL);

  g_assert_false (lr_plan_write (plan, place->folder, &error));
  assert_io_error (&error, "cannot be written: Is a directory");
  g_assert_false (lr_plan_write (plan, nowhere, &error));
  assert_io_error (&error, "cannot be written: No such file or directory");
  g_chmod (place->folder, 0555);
  drop_rights ();
  g_assert_false (lr_plan_write (plan, place->path, &error));
  regain_rights ();
  g_chmod (place->folder, 0755);
  assert_io_error (&error, "cannot be written: Permission denied");
  g_assert_cmpuint (n_files (place), ==, 0);
}

#define ADD(path_, func_) g_test_add (path_, Place, NULL, set_up, func_, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (saved_files); i++)
    {
      g_autofree char *base = g_path_get_basename (saved_files[i]);
      g_autofree char *path = g_strconcat ("/file/same-bytes/", base, NULL);

      g_test_add_data_func (path, saved_files[i], test_same_bytes);
    }
  g_test_add_func ("/file/unknown-members", test_unknown_members);
  g_test_add_func ("/file/unknown-in-lists", test_unknown_in_lists);
  g_test_add_func ("/file/least", test_least);
  g_test_add_func ("/file/new-plan", test_new_plan);
  g_test_add_func ("/file/version-1", test_version_1);
  g_test_add_func ("/file/version-1-position", test_version_1_position);
  ADD ("/file/newer-version", test_newer_version);
  for (guint i = 0; i < G_N_ELEMENTS (bad_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/file/bad/", bad_cases[i].name, NULL);

      g_test_add_data_func (path, &bad_cases[i], test_bad);
    }
  g_test_add_func ("/file/bad-folder", test_bad_folder);
  g_test_add_func ("/file/deep-nesting", test_deep_nesting);
  ADD ("/file/large-file", test_large_file);
  g_test_add_func ("/file/damage", test_damage);
  ADD ("/file/cannot-read", test_cannot_read);
  ADD ("/file/save", test_save);
  ADD ("/file/disk-full", test_disk_full);
  ADD ("/file/cannot-save", test_cannot_save);

  return g_test_run ();
}
