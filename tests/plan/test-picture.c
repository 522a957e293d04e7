/* test-picture.c - the picture of a floor plan under a room: laid there, kept, shared, saved, read and taken away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bytes are made for these tests; the model looks at the first of them alone.
 */

#include "plan-test.h"

#include <math.h>

#define PNG "\x89PNG\r\n\x1a\n not a whole one"
#define SVG "<?xml version=\"1.0\"?>\n<!-- a > room -->\n<svg xmlns=\"http://www.w3.org/2000/svg\"/>"

static LrPictureFile *
new_file (const char *data,
          gsize       length)
{
  g_autoptr (GError) error = NULL;
  LrPictureFile *file = lr_picture_file_new_from_data (data, length, &error);

  g_assert_no_error (error);
  return file;
}

static const LrRoom *
get_room (const LrPlan *plan)
{
  return lr_plan_get_setup (plan)->room;
}

static const LrSimilarity lies = { 0.0123456789, 2.0 * LR_DEG, { -1.25, 3.5 } };

/* Laid there it is shared by all that comes after, whatever else is edited; saved and read it is the same, to the byte */
static void
test_set (void)
{
  g_autoptr (LrPlan) plan = new_room (), bare = lr_plan_ref (plan);
  g_autoptr (LrPictureFile) file = new_file (PNG, sizeof PNG - 1);
  g_autoptr (GError) error = NULL;
  LrSimilarity found;

  g_assert_false (lr_room_underlay (get_room (plan), &found));
  take_next (&plan, lr_plan_set_underlay (plan, file, "Loft.png", &lies, &error), &error);
  g_assert_true (get_room (plan)->underlay == file);
  g_assert_cmpstr (get_room (plan)->underlay_file, ==, "Loft.png");
  g_assert_true (get_room (plan)->underlay_is_guessed);
  g_assert_true (lr_room_underlay (get_room (plan), &found));
  g_assert_cmpfloat_with_epsilon (found.scale, lies.scale, 1e-9);
  g_assert_cmpfloat_with_epsilon (found.turn_rad, lies.turn_rad, 1e-4 * LR_DEG);
  g_assert_cmpfloat_with_epsilon (found.origin_m.x, lies.origin_m.x, 1e-9);
  g_assert_null (get_room (bare)->underlay);
  g_assert_false (lr_plan_equal (plan, bare));
  assert_round_trip (plan);

  take_next (&plan, lr_plan_move (plan, "person-1", lr_vec2 (1.0, 1.0), &error), &error);
  take_next (&plan, lr_plan_set_room (plan, "height-mm", 2.7, &error), &error);
  take_next (&plan, lr_plan_set_room (plan, "underlay-dim-pct", 0.8, &error), &error);
  take_next (&plan, lr_plan_set_room (plan, "underlay-is-hidden", 1.0, &error), &error);
  g_assert_true (get_room (plan)->underlay == file);
  assert_round_trip (plan);

  take_next (&plan, lr_plan_place_underlay (plan, &(LrSimilarity) { 0.02, 0.0, { 0.0, 0.0 } }, TRUE, &error), &error);
  g_assert_false (get_room (plan)->underlay_is_guessed);
  g_assert_cmpfloat (get_room (plan)->underlay_scale, ==, 0.02);
  assert_round_trip (plan);

  take_next (&plan, lr_plan_set_underlay (plan, NULL, "", NULL, &error), &error);
  g_assert_null (get_room (plan)->underlay);
  g_assert_cmpstr (get_room (plan)->underlay_file, ==, "");
  g_assert_false (lr_room_underlay (get_room (plan), &found));
  assert_round_trip (plan);
}

/* (transfer full) */
static char *
save (const LrPlan *plan)
{
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);

  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static guint
count (const char *text,
       const char *part)
{
  guint n = 0;

  for (const char *p = strstr (text, part); p != NULL; p = strstr (p + 1, part))
    n++;
  return n;
}

/* Two set-ups of one room have one picture, in the file too; without the first set-up it is the second's */
static void
test_shared (void)
{
  g_autoptr (LrPlan) plan = new_room (), again = NULL;
  g_autoptr (LrPictureFile) file = new_file (SVG, sizeof SVG - 1);
  g_autoptr (GError) error = NULL;
  g_autofree char *first = NULL, *saved = NULL, *alone = NULL;

  take_next (&plan, lr_plan_set_underlay (plan, file, "a.svg", &lies, &error), &error);
  first = g_strdup (lr_plan_get_setup (plan)->id);
  take_next (&plan, lr_plan_copy_setup (plan, "As found", &error), &error);
  assert_round_trip (plan);
  saved = save (plan);
  g_assert_cmpuint (count (saved, "\"media-type\": \"image/svg+xml\""), ==, 1);
  g_assert_cmpuint (count (saved, "\"" LR_PICTURE_KEY "\""), ==, 2);
  again = read_back (plan);
  g_assert_true (((const LrSetup *) again->setups->pdata[0])->room->underlay == ((const LrSetup *) again->setups->pdata[1])->room->underlay);

  take_next (&plan, lr_plan_show_setup (plan, first, &error), &error);
  take_next (&plan, lr_plan_remove_setup (plan, &error), &error);
  alone = save (plan);
  g_assert_cmpuint (count (alone, "\"media-type\": \"image/svg+xml\""), ==, 1);
  assert_round_trip (plan);
}

/* Every length of file, so every padding and every cut into lines, comes back: RFC 4648, section 4; 57 bytes make a line of 76 */
static void
test_lengths (void)
{
  g_autoptr (GError) error = NULL;

  for (gsize length = 9; length < 9 + 3 * 57; length++)
    {
      g_autoptr (LrPlan) plan = new_room (), again = NULL;
      g_autoptr (GByteArray) bytes = g_byte_array_new ();
      g_autoptr (LrPictureFile) file = NULL;
      g_autofree char *saved = NULL;

      g_byte_array_append (bytes, (const guint8 *) PNG, 9);
      while (bytes->len < length)
        g_byte_array_append (bytes, &(guint8) { (guint8) g_test_rand_int () }, 1);
      file = new_file ((const char *) bytes->data, bytes->len);
      take_next (&plan, lr_plan_set_underlay (plan, file, "", &lies, &error), &error);
      saved = save (plan);
      again = read_back (plan);
      g_assert_true (lr_picture_file_equal (get_room (again)->underlay, file));
      assert_round_trip (plan);
    }
}

typedef struct
{
  const char   *name, *data;
  gsize         length;
  LrPictureType type; /* expected; LR_N_PICTURE_TYPES: none */
} SniffCase;

#define CASE(name_, data_, type_) { name_, data_, sizeof data_ - 1, type_ }

/* Sources of the first bytes: in picture_file.c */
static const SniffCase sniff_cases[] = {
  CASE ("png", PNG, LR_PICTURE_PNG),
  CASE ("png-alone", "\x89PNG\r\n\x1a\n", LR_N_PICTURE_TYPES),
  CASE ("png-by-ftp", "\x89PNG\n\x1a\n\n\n\n", LR_N_PICTURE_TYPES),
  CASE ("jpeg", "\xff\xd8\xff\xe0 JFIF", LR_PICTURE_JPEG),
  CASE ("jpeg-cut", "\xff\xd8\xff", LR_N_PICTURE_TYPES),
  CASE ("pdf", "%PDF-1.7\n", LR_PICTURE_PDF),
  CASE ("pdf-later", "\r\n\r\n%PDF-1.4\n", LR_PICTURE_PDF),
  CASE ("svg", SVG, LR_PICTURE_SVG),
  CASE ("svg-bare", "<svg>", LR_PICTURE_SVG),
  CASE ("svg-mark", "\xef\xbb\xbf  <!DOCTYPE svg>\n<svg width='4'/>", LR_PICTURE_SVG),
  CASE ("svg-prefix", "<s:svg xmlns:s='http://www.w3.org/2000/svg'/>", LR_PICTURE_SVG),
  CASE ("html", "<!DOCTYPE html><html><svg/></html>", LR_N_PICTURE_TYPES),
  CASE ("html-prefix", "<html x='a:svg'>", LR_N_PICTURE_TYPES),
  CASE ("comment-only", "<!-- <svg> ", LR_N_PICTURE_TYPES),
  CASE ("gif", "GIF89a", LR_N_PICTURE_TYPES),
  CASE ("text", "Dear all", LR_N_PICTURE_TYPES),
  CASE ("empty", "", LR_N_PICTURE_TYPES),
};

static void
test_sniff (gconstpointer data)
{
  const SniffCase *c = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPictureFile) file = lr_picture_file_new_from_data (c->data, c->length, &error);

  g_assert_true ((file != NULL) == (c->type != LR_N_PICTURE_TYPES));
  if (file != NULL)
    g_assert_cmpint (file->type, ==, c->type);
  else
    g_assert_cmpstr (error->message, ==, "it is no PNG, JPEG, SVG or PDF");
}

static void
test_refused (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (LrPictureFile) file = new_file (PNG, sizeof PNG - 1), none = NULL;
  g_autofree char *large = g_strnfill (LR_PICTURE_MAX_BYTES + 1, ' ');
  g_autoptr (GError) error = NULL;

  none = lr_picture_file_new_from_data (large, LR_PICTURE_MAX_BYTES + 1, &error);
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE);
  g_assert_cmpstr (error->message, ==, "the picture is larger than 6 MB; save it smaller, or as JPEG");
  g_clear_error (&error);
  g_assert_null (lr_plan_place_underlay (plan, &lies, TRUE, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_underlay (plan, file, "\xff.png", &lies, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  for (int i = 0; i < 3; i++)
    {
      const double scales[] = { 0.0, 1e-6, NAN };

      g_assert_null (lr_plan_set_underlay (plan, file, "", &(LrSimilarity) { scales[i], 0.0, { 0.0, 0.0 } }, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
      g_clear_error (&error);
    }
  g_assert_null (lr_plan_set_underlay (plan, file, "", &(LrSimilarity) { 0.01, 0.0, { 501.0, 0.0 } }, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

/* Members that a newer version writes beside the bytes stay; lines of any length are read */
static void
test_unknown (void)
{
  static const char text[] =
    "{ \"format\": \"lookroom-plan\", \"version\": 1, \"setups\": [ { \"id\": \"s\", \"room\": { \"underlay-picture\": {"
    " \"media-type\": \"application/pdf\", \"x-new\": [1, 2], \"lines\": [ \"JVBE\", \"Ri0xLjc=\" ] } } } ] }";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data (text, sizeof text - 1, &error);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *saved = NULL;

  g_assert_no_error (error);
  pdf = g_bytes_new_static ("%PDF-1.7", 8);
  g_assert_true (g_bytes_equal (get_room (plan)->underlay->bytes, pdf));
  saved = save (plan);
  g_assert_nonnull (strstr (saved, "\"JVBERi0xLjc=\""));
  g_assert_nonnull (strstr (saved, "\"x-new\": [1, 2]"));
  assert_round_trip (plan);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/picture/set", test_set);
  g_test_add_func ("/picture/shared", test_shared);
  g_test_add_func ("/picture/lengths", test_lengths);
  for (gsize i = 0; i < G_N_ELEMENTS (sniff_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/picture/sniff/", sniff_cases[i].name, NULL);

      g_test_add_data_func (path, &sniff_cases[i], test_sniff);
    }
  g_test_add_func ("/picture/refused", test_refused);
  g_test_add_func ("/picture/unknown", test_unknown);

  return g_test_run ();
}
