/* test-formats.c - the tables of sensors and lenses against the sizes that standards and the trade give them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Diagonal, a 1500th of it, crop factors against 43.27 mm and 36 mm, and the 16:9 cut: Pythagoras and proportion worked by
 * hand, rounded as printed. What names a standard: sizes in inches as that gives them, and diagonals of inch types.
 */

#include "formats.h"
#include "optics.h"

#include <math.h>

#define MM 1e-3

typedef struct
{
  const char *id;
  double      diagonal_mm, coc_mm, diagonal_crop, width_crop, cut_width_mm, cut_height_mm;
} FormatCase;

/* Source: the sources of data/sensor-formats.json for width and height; the rest by hand */
static const FormatCase format_cases[] = {
  { "full-frame", 43.27, 0.0288, 1.00, 1.00, 36.0, 20.25 },
  { "super-35-4-perf", 31.11, 0.0207, 1.39, 1.45, 24.89, 14.00 },
  { "super-35-3-perf", 28.49, 0.0190, 1.52, 1.45, 24.66, 13.87 },
  { "super-35-digital", 28.21, 0.0188, 1.53, 1.46, 24.53, 13.8 },
  { "academy-35", 27.20, 0.0181, 1.59, 1.64, 22.0, 12.38 },
  { "anamorphic-35", 28.80, 0.0192, 1.50, 0.0, 0.0, 0.0 },
  { "aps-c-1.5", 28.29, 0.0189, 1.53, 1.53, 23.6, 13.28 },
  { "aps-c-1.6", 26.82, 0.0179, 1.61, 1.61, 22.3, 12.54 },
  { "four-thirds", 21.64, 0.0144, 2.00, 2.08, 17.3, 9.73 },
  { "super-16", 14.55, 0.0097, 2.97, 2.88, 12.52, 7.04 },
  { "1-inch", 15.86, 0.0106, 2.73, 2.73, 13.2, 7.43 },
  { "2-3-inch-16-9", 11.00, 0.0073, 3.93, 3.75, 9.59, 5.39 },
  { "2-3-inch-4-3", 11.00, 0.0073, 3.93, 4.09, 8.8, 4.95 },
  { "1-2-inch-16-9", 8.00, 0.0053, 5.41, 5.16, 6.97, 3.92 },
  { "1-2.3-inch", 7.67, 0.0051, 5.64, 5.83, 6.17, 3.47 },
  { "1-3-inch-16-9", 6.00, 0.0040, 7.21, 6.88, 5.23, 2.94 },
  { "full-frame-16-9", 41.30, 0.0275, 1.05, 1.00, 36.0, 20.25 },
};

static const LrSensorFormat *
find (const char *id)
{
  gsize n;
  const LrSensorFormat *formats = lr_sensor_formats (&n);

  for (gsize i = 0; i < n; i++)
    if (g_str_equal (formats[i].id, id))
      return &formats[i];

  g_error ("no format “%s”", id);
}

static void
test_format (gconstpointer data)
{
  const FormatCase *c = data;
  const LrSensorFormat *format = find (c->id);
  double diagonal_mm = hypot (format->width_m, format->height_m) / MM, coc_m = NAN;
  LrSensorArea area;

  g_test_message ("%s", format->source);
  g_assert_cmpfloat_with_epsilon (diagonal_mm, c->diagonal_mm, 0.0101);
  g_assert_true (lr_coc_default_m (format->width_m, format->height_m, &coc_m));
  g_assert_cmpfloat_with_epsilon (coc_m / MM, c->coc_mm, 5.1e-5);
  g_assert_cmpfloat_with_epsilon (hypot (36.0, 24.0) / diagonal_mm, c->diagonal_crop, 0.0051);
  if (c->width_crop > 0.0)
    g_assert_cmpfloat_with_epsilon (36.0 / (format->width_m / MM), c->width_crop, 0.0051);
  if (c->cut_width_mm <= 0.0)
    return;

  g_assert_true (lr_sensor_area (format->width_m, format->height_m, 1.0, 16.0 / 9.0, &area));
  g_assert_cmpfloat_with_epsilon (area.width_m / MM, c->cut_width_mm, 0.0101);
  g_assert_cmpfloat_with_epsilon (area.height_m / MM, c->cut_height_mm, 0.0101);
}

typedef struct
{
  const char *id;
  double      width_in, height_in;
  const char *source;
} GateCase;

static const GateCase gate_cases[] = {
  { "super-35-4-perf", 0.980, 0.735, "35 mm full aperture, SMPTE ST 59 (its number from memory), as quoted" },
  { "academy-35", 0.866, 0.630, "35 mm Academy camera aperture, the same" },
  { "anamorphic-35", 0.866, 0.732, "35 mm anamorphic camera aperture, the same" },
};

static void
test_gate (gconstpointer data)
{
  const GateCase *c = data;
  const LrSensorFormat *format = find (c->id);

  g_test_message ("%s", c->source);
  g_assert_cmpfloat_with_epsilon (format->width_m / MM, 25.4 * c->width_in, 0.0051);
  g_assert_cmpfloat_with_epsilon (format->height_m / MM, 25.4 * c->height_in, 0.0051);
}

typedef struct
{
  const char *id;
  double      diagonal_mm, aspect;
  const char *source;
} TubeCase;

static const TubeCase tube_cases[] = {
  { "2-3-inch-16-9", 11.0, 16.0 / 9.0, "BTA S-1005 (ARIB), as quoted: 11 mm" },
  { "1-2-inch-16-9", 8.0, 16.0 / 9.0, "common practice, no source: half an inch is 8 mm" },
  { "1-3-inch-16-9", 6.0, 16.0 / 9.0, "common practice, no source: a third is 6 mm" },
};

static void
test_tube (gconstpointer data)
{
  const TubeCase *c = data;
  const LrSensorFormat *format = find (c->id);

  g_test_message ("%s", c->source);
  g_assert_cmpfloat_with_epsilon (hypot (format->width_m, format->height_m) / MM, c->diagonal_mm, 0.005);
  g_assert_cmpfloat_with_epsilon (format->width_m / format->height_m, c->aspect, 0.003);
}

/* A row that is not checked above, or tells no source, fails */
static void
test_whole (void)
{
  gsize n, n_lenses;
  const LrSensorFormat *formats = lr_sensor_formats (&n);
  const LrLensType *lenses = lr_lens_types (&n_lenses);

  g_assert_cmpuint (n, ==, G_N_ELEMENTS (format_cases));
  for (gsize i = 0; i < n; i++)
    {
      g_assert_cmpstr (formats[i].source, !=, "");
      g_assert_true (lr_sensor_format_find (formats[i].width_m, formats[i].height_m) == &formats[i]);
      g_assert_true (find (formats[i].id) == &formats[i]);
    }
  g_assert_null (lr_sensor_format_find (0.030, 0.020));

  for (gsize i = 0; i < n_lenses; i++)
    {
      const LrLens *lens = &lenses[i].item->lens;

      g_assert_cmpstr (lenses[i].source, !=, "");
      g_assert_true (lr_lens_type_find (lenses[i].id) == &lenses[i]);
      g_assert_cmpfloat (lens->focal_min_m, <=, lens->focal_max_m);
      g_assert_cmpfloat (lens->f_number_min, <, lens->f_number_max);
      /* closed form: a thin lens comes no nearer than four times its focal length; a long one focuses inside, and shortens */
      g_assert_cmpfloat (lens->nearest_focus_m, >=, fmin (4.0 * lens->focal_max_m, 0.25));
      g_assert_cmpfloat (lens->converter, ==, 1.0);
    }
  g_assert_null (lr_lens_type_find ("nothing"));
}

/* The factors are such as the properties take, and one of each leaves things as they are */
static void
test_factors (void)
{
  static const struct { LrItemKind kind; const char *key; } rows[] = {
    { LR_ITEM_CAMERA, "sensor-crop" }, { LR_ITEM_CAMERA, "squeeze" }, { LR_ITEM_LENS, "converter" },
  };
  gsize n;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const LrFactor *factors = lr_format_factors (rows[i].key, &n);
      gboolean has_one = FALSE;

      for (gsize k = 0; k < n; k++)
        {
          g_assert_true (lr_prop_accepts (lr_item_find_prop (rows[i].kind, rows[i].key), factors[k].value));
          g_assert_cmpstr (factors[k].source, !=, "");
          has_one |= factors[k].value == 1.0;
        }
      g_assert_true (has_one);
    }
  g_assert_null (lr_format_factors ("iso", &n));
  g_assert_cmpuint (n, ==, 0);
}

/* Translators are shown every title: formats.c lists them */
static void
check_listed (const char *source,
              const char *title)
{
  g_autofree char *mark = g_strdup_printf ("N_(\"%s\")", title);

  if (strstr (source, mark) == NULL)
    g_error ("src/plan/formats.c does not list %s", mark);
}

static void
test_titles (void)
{
  static const char *const keys[] = { "sensor-crop", "squeeze", "converter", "omni-share-pct", "tube-mm" };
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "src", "plan", "formats.c", NULL);
  g_autofree char *source = NULL;
  gsize n;
  const LrSensorFormat *formats = lr_sensor_formats (&n);
  const LrLensType *lenses;

  g_assert_true (g_file_get_contents (path, &source, NULL, NULL));
  for (gsize i = 0; i < n; i++)
    check_listed (source, formats[i].title);
  lenses = lr_lens_types (&n);
  for (gsize i = 0; i < n; i++)
    {
      check_listed (source, lenses[i].title);
      check_listed (source, lenses[i].note);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const LrFactor *factors = lr_format_factors (keys[i], &n);

      for (gsize k = 0; k < n; k++)
        check_listed (source, factors[k].title);
    }
}

#define add_rows(path, rows, func)                                                  \
  for (size_t add_row = 0; add_row < G_N_ELEMENTS (rows); add_row++)                \
    {                                                                               \
      g_autofree char *row_path = g_strdup_printf ("%s/%s", path, rows[add_row].id); \
                                                                                    \
      g_test_add_data_func (row_path, &rows[add_row], func);                        \
    }

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/reference/formats/size", format_cases, test_format);
  add_rows ("/reference/formats/gate", gate_cases, test_gate);
  add_rows ("/reference/formats/tube", tube_cases, test_tube);
  g_test_add_func ("/reference/formats/whole", test_whole);
  g_test_add_func ("/reference/formats/factors", test_factors);
  g_test_add_func ("/reference/formats/titles", test_titles);

  return g_test_run ();
}
