/* test-page.c - the page, as a PDF reader and a ruler find it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measured in the file by poppler: page size, fonts, images, text and its boxes, pixels at 600 dpi. The size of type is
 * read from the content streams.
 */

#include "config.h"

#include "page.h"
#include "pdf_probe.h"
#include "plan_edit.h"
#include "plan_reader.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define MM_PT (72.0 / 25.4)
#define DPI 600.0

typedef struct
{
  LrPlan    *plan;
  LrStudy   *study;
  LrRemarks *remarks;
  char      *path;    /* of the PDF */
} Page;

static LrPlan *
read_example (const char *name)
{
  g_autofree char *path = g_build_filename (LR_EXAMPLES_DIR, name, NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return plan;
}

/* (transfer full) plan */
static Page *
page_new (LrPlan  *plan,
          LrPaper  paper,
          LrUnits  units)
{
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrPageOptions options = { .paper = paper, .units = units, .created_unix_s = 1770000000, .levels = levels };
  g_autoptr (GError) error = NULL;
  Page *page = g_new0 (Page, 1);
  int fd = g_file_open_tmp ("lookroom-XXXXXX.pdf", &page->path, &error);

  g_assert_no_error (error);
  g_close (fd, NULL);
  page->plan = plan;
  page->study = lr_study_new (plan);
  page->remarks = lr_remarks_new (page->study, units);
  lr_page_write_pdf (page->study, page->remarks, &options, page->path, &error);
  g_assert_no_error (error);
  return page;
}

static void
page_free (Page *page)
{
  g_unlink (page->path);
  g_free (page->path);
  lr_remarks_free (page->remarks);
  lr_study_free (page->study);
  lr_plan_unref (page->plan);
  g_free (page);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Page, page_free)

/* --- Paper ---------------------------------------------------------------------------------------------------- */

typedef struct
{
  const char *name;
  LrPaper     paper;
  double      width_mm, height_mm;
  const char *source;
} PaperCase;

static const PaperCase paper_cases[] = {
  { "a4", LR_PAPER_A4, 297.0, 210.0, "ISO 216: A4 is 210 by 297 mm" },
  { "letter", LR_PAPER_LETTER, 279.4, 215.9, "ANSI/ASME Y14.1: size A is 8.5 by 11 in" },
};

static void
test_paper (gconstpointer data)
{
  const PaperCase *c = data;
  double width = 0.0, height = 0.0, found_width = 0.0, found_height = 0.0;
  g_autoptr (Page) page = page_new (read_example ("loft.lookroom"), c->paper, LR_UNITS_METRIC);
  const char *const args[] = { "pdfinfo", page->path, NULL };
  g_autofree char *info = NULL;
  const char *line;

  g_test_message ("%s", c->source);
  lr_paper_size_pt (c->paper, &width, &height);
  g_assert_cmpfloat_with_epsilon (width / MM_PT, c->width_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (height / MM_PT, c->height_mm, 1e-9);

  if (!probe_has_tools ())
    return;
  info = probe_run (args);
  line = strstr (info, "Page size:");
  g_assert_nonnull (line);
  g_assert_cmpint (sscanf (line, "Page size: %lf x %lf", &found_width, &found_height), ==, 2);
  g_assert_cmpfloat_with_epsilon (found_width / MM_PT, c->width_mm, 0.01);
  g_assert_cmpfloat_with_epsilon (found_height / MM_PT, c->height_mm, 0.01);
  g_assert_true (g_regex_match_simple ("Pages: +1\n", info, 0, 0));
  g_assert_true (g_regex_match_simple ("Tagged: +yes", info, 0, 0));
  g_assert_true (g_regex_match_simple ("Title: +Wenna Carrow, sailmaker", info, 0, 0));
  g_assert_true (g_regex_match_simple ("Author: +I. Aldous", info, 0, 0));
  g_assert_true (g_regex_match_simple ("Creator: +Lookroom", info, 0, 0));
}

/* --- Scale ---------------------------------------------------------------------------------------------------- */

/* The whole length 7.20 m of the room under the plan: between its extension lines, over its dimension line, as a ruler
 * laid on the print would take it */
static void
check_room_width (const Page *page,
                  GArray     *words,
                  const char *figure,
                  double      expected_mm)
{
  const ProbeWord *word = probe_find_word (words, figure);
  g_autoptr (ProbeRaster) strip = NULL;
  double first, last;

  g_assert_nonnull (word);
  /* as wide as the room and a little more: what stands beside the plan is not meant */
  strip = probe_raster (page->path, DPI, (word->x0 + word->x1 - expected_mm * MM_PT) / 2.0 - 5.0, word->y0 - 2.0,
                        expected_mm * MM_PT + 10.0, word->y1 - word->y0 + 4.0);
  g_assert_true (probe_dark_middles (strip, word->y0 + 2.0, &first, &last));
  g_test_message ("room: %.3f mm on paper", (last - first) / MM_PT);
  g_assert_cmpfloat_with_epsilon ((last - first) / MM_PT, expected_mm, 0.002 * expected_mm);
}

/* The bar from end to end, along its outline, which is 0.45 pt wide and centred on the ends */
static void
check_bar (const Page *page,
           GArray     *words,
           double      expected_mm)
{
  const ProbeWord *before = probe_find_word (words, "paper");
  g_autoptr (ProbeRaster) strip = NULL;
  double length_mm;

  g_assert_nonnull (before);
  strip = probe_raster (page->path, DPI, before->x1 + 2.0, before->y0, 540.0 - before->x1, before->y1 - before->y0);
  length_mm = (probe_longest_run (strip) - 0.45) / MM_PT;
  g_test_message ("scale bar: %.3f mm on paper", length_mm);
  g_assert_cmpfloat_with_epsilon (length_mm, expected_mm, 0.002 * expected_mm);
}

typedef struct
{
  const char *name;
  LrPaper     paper;
  LrUnits     units;
  const char *title, *figure;
  double      room_mm, bar_mm; /* 7.20 m, and the bar's length, over the scale */
} ScaleCase;

/* Scales: ISO 5455:1979; in inch units 1/4 in to the foot */
static const ScaleCase scale_cases[] = {
  { "a4-metric", LR_PAPER_A4, LR_UNITS_METRIC, "1:50", "7.20", 7200.0 / 50.0, 4000.0 / 50.0 },
  { "letter-metric", LR_PAPER_LETTER, LR_UNITS_METRIC, "1:50", "7.20", 7200.0 / 50.0, 4000.0 / 50.0 },
  { "a4-inches", LR_PAPER_A4, LR_UNITS_IMPERIAL, "1:48", NULL, 0.0, 12.0 * 304.8 / 48.0 },
  { "letter-inches", LR_PAPER_LETTER, LR_UNITS_IMPERIAL, "1:48", NULL, 0.0, 12.0 * 304.8 / 48.0 },
};

static void
test_scale (gconstpointer data)
{
  const ScaleCase *c = data;
  g_autoptr (Page) page = page_new (read_example ("loft.lookroom"), c->paper, c->units);
  g_autoptr (GArray) words = NULL;

  if (!probe_has_tools ())
    return;
  words = probe_words (page->path);
  g_assert_nonnull (probe_find_word (words, c->title));
  check_bar (page, words, c->bar_mm);
  if (c->figure != NULL)
    check_room_width (page, words, c->figure, c->room_mm);
}

typedef struct
{
  const char *name;
  double      width_m, depth_m;
  LrUnits     units;
  int         scale;
} RoomCase;

/* Rooms of which the scale can be seen at once: a sheet of A4 has about 150 by 100 mm for the room itself */
static const RoomCase room_cases[] = {
  { "booth", 2.0, 1.8, LR_UNITS_METRIC, 20 },
  { "office", 3.6, 3.1, LR_UNITS_METRIC, 50 },
  { "hall", 14.0, 9.0, LR_UNITS_METRIC, 100 },
  { "barn", 28.0, 18.0, LR_UNITS_METRIC, 200 },
  { "hangar", 60.0, 40.0, LR_UNITS_METRIC, 500 },
  { "booth-inches", 2.0, 1.8, LR_UNITS_IMPERIAL, 24 },
  { "hall-inches", 13.0, 9.0, LR_UNITS_IMPERIAL, 96 },
};

static void
test_room (gconstpointer data)
{
  const RoomCase *c = data;
  const LrVec2 corners[] = { { 0.0, 0.0 }, { c->width_m, 0.0 }, { c->width_m, c->depth_m }, { 0.0, c->depth_m } };
  const LrPageOptions options = { .paper = LR_PAPER_A4, .units = c->units };
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_set_corners (empty, corners, G_N_ELEMENTS (corners), &error);
  g_autoptr (LrStudy) study = NULL;

  g_assert_no_error (error);
  study = lr_study_new (plan);
  g_assert_cmpint (lr_page_scale (study, &options), ==, c->scale);
}

/* --- What a reader gets --------------------------------------------------------------------------------------- */

static void
test_vector (void)
{
  g_autoptr (Page) page = page_new (read_example ("loft.lookroom"), LR_PAPER_A4, LR_UNITS_METRIC);
  const char *const images_args[] = { "pdfimages", "-list", page->path, NULL };
  const char *const fonts_args[] = { "pdffonts", page->path, NULL };
  g_autofree char *images = NULL;
  g_autofree char *fonts = NULL;
  g_auto (GStrv) image_lines = NULL;
  g_auto (GStrv) font_lines = NULL;
  guint n_fonts = 0;

  if (!probe_has_tools ())
    return;

  /* two lines of heads, and no picture under them */
  images = probe_run (images_args);
  image_lines = g_strsplit (g_strchomp (images), "\n", -1);
  g_assert_cmpuint (g_strv_length (image_lines), ==, 2);

  fonts = probe_run (fonts_args);
  font_lines = g_strsplit (g_strchomp (fonts), "\n", -1);
  for (guint i = 2; font_lines[i] != NULL; i++, n_fonts++)
    g_assert_true (g_regex_match_simple (" yes +yes +yes +[0-9]+ +[0-9]+$", font_lines[i], 0, 0)); /* emb sub uni */
  g_assert_cmpuint (n_fonts, >=, 2);
}

/* Of the same set in white walls and in black drapes the page tells another shadow side, by more than a stop */
static void
test_drapes (void)
{
  double stops[2];

  if (!probe_has_tools ())
    return;

  for (int black = 0; black < 2; black++)
    {
      LrPlan *plan = read_example ("loft.lookroom");
      g_autoptr (Page) page = NULL;
      const char *args[] = { "pdftotext", "-raw", NULL, "-", NULL };
      g_autofree char *text = NULL, *figure = NULL;
      g_autoptr (GMatchInfo) match = NULL;
      g_autoptr (GRegex) regex = g_regex_new ("key side ([0-9.]+) stops over shadow", 0, 0, NULL);

      for (gsize i = 0; i < 3; i++)
        {
          static const char *const keys[] = { "walls.reflectance-pct", "ceiling.reflectance-pct", "floor.reflectance-pct" };
          LrPlan *next = lr_plan_set_room (plan, keys[i], black ? 0.03 : 0.8, NULL);

          lr_plan_unref (plan);
          plan = next;
        }
      page = page_new (plan, LR_PAPER_A4, LR_UNITS_METRIC);
      args[2] = page->path;
      text = probe_run (args);
      g_assert_true (g_regex_match (regex, text, 0, &match));
      figure = g_match_info_fetch (match, 1);
      stops[black] = g_ascii_strtod (figure, NULL);
      g_test_message ("%s: %.1f stops", black ? "black" : "white", stops[black]);
    }
  g_assert_cmpfloat (stops[1], >, stops[0] + 1.0);
}

static void
test_text (void)
{
  static const char *const in_order[] = {
    "Wenna Carrow, sailmaker", "Oral-history interview", "Thursday 19 February 2026", "08:30 in", "Ines Aldous", "medium close-up",
    "Cut A–B 1 size apart, 22° round, eyes 24", "both look left", "Cameras", "A: face", "50 mm f/2.8 1.20 m", "Lights", "key side", "key, 90 cm emitter", "Sound", "boom", "Please arrange", "Still open", "22°",
    "Take care", "7.20", "Scale 1:50", "Tape positions", "Supplementary title", "MQ-03", "1/1"
  };
  g_autoptr (Page) page = page_new (read_example ("loft.lookroom"), LR_PAPER_A4, LR_UNITS_METRIC);
  const char *const args[] = { "pdftotext", "-raw", page->path, "-", NULL };
  g_autofree char *text = NULL;
  const char *at;

  if (!probe_has_tools ())
    return;

  text = probe_run (args);
  at = text;
  for (gsize i = 0; i < G_N_ELEMENTS (in_order); i++)
    {
      const char *found = strstr (at, in_order[i]);

      if (found == NULL)
        g_error ("“%s” is not in its place in:\n%s", in_order[i], text);
      at = found;
    }
  g_assert_null (strstr (text, "safe"));
}

/* (transfer full): the example with so many cameras, the others beside the first */
static LrPlan *
read_with_cameras (guint n)
{
  LrPlan *plan = read_example ("loft.lookroom");

  for (guint i = 2; i < n; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *id = NULL;
      LrPlan *more = lr_plan_duplicate (plan, "camera-a", lr_vec2 (0.1 * i, -0.3 * i), &id, &error);

      g_assert_no_error (error);
      lr_plan_unref (plan);
      plan = more;
    }
  if (n < 2)
    {
      g_autoptr (GError) error = NULL;
      LrPlan *fewer = lr_plan_remove (plan, "camera-b", &error);

      g_assert_no_error (error);
      lr_plan_unref (plan);
      plan = fewer;
    }
  return plan;
}

/* Lines of figures: none for one camera, one for two, without names; then each names its cameras, and the rest is counted */
static void
test_cuts (void)
{
  static const struct { guint n_cameras; const char *has, *has_not; } cases[] = {
    { 1, "medium", "° round" }, { 2, "Cut A–B", "more cut" }, { 3, "and 2 more cuts", "B–C" }, { 5, "and 9 more cuts", "D–E" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Page) page = page_new (read_with_cameras (cases[i].n_cameras), LR_PAPER_A4, LR_UNITS_METRIC);
      const char *const args[] = { "pdftotext", "-raw", page->path, "-", NULL };
      g_autofree char *text = NULL;

      g_assert_cmpuint (page->study->pairs->len, ==, cases[i].n_cameras * (cases[i].n_cameras - 1) / 2);
      if (!probe_has_tools ())
        return;

      text = probe_run (args);
      g_assert_nonnull (strstr (text, cases[i].has));
      if (strstr (text, "Still open") != NULL)
        *strstr (text, "Still open") = '\0';
      g_assert_null (strstr (text, cases[i].has_not));
      g_assert_cmpfloat (probe_least_type_pt (page->path), >=, 6.5 - 1e-6);
    }
}

/* No word stands on another: not a note on a dimension, not a cell on its neighbour */
typedef struct
{
  const char *name;
  const char *file;
  LrPaper     paper;
  LrUnits     units;
} ApartCase;

static const ApartCase apart_cases[] = {
  { "loft", "loft.lookroom", LR_PAPER_A4, LR_UNITS_METRIC },
  { "loft-letter-inches", "loft.lookroom", LR_PAPER_LETTER, LR_UNITS_IMPERIAL },
  { "office", "bare-office.lookroom", LR_PAPER_A4, LR_UNITS_METRIC },
};

static void
test_apart (gconstpointer data)
{
  const ApartCase *c = data;
  g_autoptr (Page) page = page_new (read_example (c->file), c->paper, c->units);
  g_autoptr (GArray) words = NULL;

  if (!probe_has_tools ())
    return;

  words = probe_words (page->path);
  for (guint i = 0; i < words->len; i++)
    for (guint j = i + 1; j < words->len; j++)
      {
        const ProbeWord *a = &g_array_index (words, ProbeWord, i), *b = &g_array_index (words, ProbeWord, j);

        /* the boxes hold the line's leading, too: 2 pt of it may be shared */
        if (MIN (a->x1, b->x1) - MAX (a->x0, b->x0) > 1.0 && MIN (a->y1, b->y1) - MAX (a->y0, b->y0) > 2.0)
          g_error ("“%s” and “%s” stand on each other at %.0f %.0f", a->text, b->text, a->x0, a->y0);
      }
}

static void
test_least_type (void)
{
  for (LrPaper paper = LR_PAPER_A4; paper <= LR_PAPER_LETTER; paper++)
    {
      g_autoptr (Page) page = page_new (read_example ("loft.lookroom"), paper, LR_UNITS_IMPERIAL);
      double least = probe_least_type_pt (page->path);

      g_test_message ("smallest type: %.3f pt", least);
      g_assert_cmpfloat (least, <, 20.0);
      g_assert_cmpfloat (least, >=, 6.499);
    }
}

/* Words keep the margins of 10 mm, and those over the title block stay over it */
static void
check_margins (const Page *page,
               double      width,
               double      height)
{
  g_autoptr (GArray) words = probe_words (page->path);
  double block = height - 10.0 * MM_PT - 11.2 * MM_PT;

  g_assert_cmpuint (words->len, >, 50);
  for (guint i = 0; i < words->len; i++)
    {
      const ProbeWord *word = &g_array_index (words, ProbeWord, i);

      if (word->x0 < 10.0 * MM_PT - 1.0 || word->x1 > width - 10.0 * MM_PT + 1.0 || word->y0 < 10.0 * MM_PT - 4.0
          || word->y1 > height - 10.0 * MM_PT || (word->y0 < block - 1.0 && word->y1 > block + 1.0))
        g_error ("“%s” stands at %.1f %.1f to %.1f %.1f", word->text, word->x0, word->y0, word->x1, word->y1);
    }
}

/* 30 more lights: the lists are cut and say so, the plan keeps its scale, nothing runs over */
static void
test_cut (gconstpointer data)
{
  LrUnits units = GPOINTER_TO_INT (data);
  LrPlan *plan = read_example ("loft.lookroom");
  const LrItem *light = lr_plan_find (plan, "light-1");
  const LrPageOptions options = { .paper = LR_PAPER_A4, .units = units };
  const char *args[] = { "pdftotext", "-raw", NULL, "-", NULL };
  g_autofree char *text = NULL;
  g_autoptr (Page) page = NULL;
  double width, height;
  int scale;

  for (guint i = 0; light == NULL && i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (plan->kit, i);

      light = entry->item->kind == LR_ITEM_LIGHT ? entry->item : NULL;
    }
  g_assert_nonnull (light);

  {
    g_autoptr (LrStudy) study = lr_study_new (plan);

    scale = lr_page_scale (study, &options);
  }
  for (int i = 0; i < 30; i++)
    {
      g_autoptr (GError) error = NULL;
      LrPlan *next = lr_plan_add (plan, light, lr_vec2 (0.5 + 0.2 * i, 3.0), 0.0, NULL, &error);

      g_assert_no_error (error);
      lr_plan_unref (plan);
      plan = next;
    }

  page = page_new (plan, LR_PAPER_A4, units);
  g_assert_cmpint (lr_page_scale (page->study, &options), ==, scale);
  if (!probe_has_tools ())
    return;

  args[2] = page->path;
  text = probe_run (args);
  g_assert_true (g_regex_match_simple ("and [0-9]+ more", text, 0, 0));
  lr_paper_size_pt (LR_PAPER_A4, &width, &height);
  check_margins (page, width, height);
}

/* --- The file ------------------------------------------------------------------------------------------------- */

static void
test_same_bytes (void)
{
  g_autoptr (Page) first = page_new (read_example ("loft.lookroom"), LR_PAPER_A4, LR_UNITS_METRIC);
  g_autoptr (Page) second = NULL;
  g_autofree char *a = NULL, *b = NULL;
  gsize a_length, b_length;

  g_setenv ("TZ", "Pacific/Auckland", TRUE);
  second = page_new (read_example ("loft.lookroom"), LR_PAPER_A4, LR_UNITS_METRIC);
  g_assert_true (g_file_get_contents (first->path, &a, &a_length, NULL));
  g_assert_true (g_file_get_contents (second->path, &b, &b_length, NULL));
  g_assert_cmpmem (a, (int) a_length, b, (int) b_length);
}

/* A plan without anything still gives a page */
static void
test_empty (void)
{
  g_autoptr (Page) page = page_new (lr_plan_new_empty (), LR_PAPER_A4, LR_UNITS_METRIC);
  const char *const args[] = { "pdftotext", page->path, "-", NULL };
  g_autofree char *text = NULL;

  if (!probe_has_tools ())
    return;
  text = probe_run (args);
  g_assert_nonnull (strstr (text, "no walls yet"));
}

static void
test_unwritable (gconstpointer path)
{
  const LrPageOptions options = { .paper = LR_PAPER_A4 };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  g_autoptr (GError) error = NULL;

  g_assert_false (lr_page_write_pdf (study, remarks, &options, path, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD_CASES(cases, folder, function) \
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++) \
    { \
      g_autofree char *path = g_strdup_printf ("/page/" folder "/%s", cases[i].name); \
\
      g_test_add_data_func (path, &cases[i], function); \
    }

  ADD_CASES (paper_cases, "paper", test_paper)
  ADD_CASES (scale_cases, "scale", test_scale)
  ADD_CASES (room_cases, "room", test_room)
  ADD_CASES (apart_cases, "apart", test_apart)
  g_test_add_func ("/page/vector", test_vector);
  g_test_add_func ("/page/text", test_text);
  g_test_add_func ("/page/drapes", test_drapes);
  g_test_add_func ("/page/cuts", test_cuts);
  g_test_add_func ("/page/least-type", test_least_type);
  g_test_add_data_func ("/page/cut/metric", GINT_TO_POINTER (LR_UNITS_METRIC), test_cut);
  g_test_add_data_func ("/page/cut/imperial", GINT_TO_POINTER (LR_UNITS_IMPERIAL), test_cut);
  g_test_add_func ("/page/same-bytes", test_same_bytes);
  g_test_add_func ("/page/empty", test_empty);
  g_test_add_data_func ("/page/unwritable/full-disk", "/dev/full", test_unwritable);
  g_test_add_data_func ("/page/unwritable/folder", "/tmp", test_unwritable);
  g_test_add_data_func ("/page/unwritable/no-folder", "/nonexistent/folder/page.pdf", test_unwritable);

  return g_test_run ();
}
