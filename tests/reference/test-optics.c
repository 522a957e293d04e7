/* test-optics.c - the lens against published tables
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * optics.tsv holds the tables: kind, inputs, expected value, tolerance, source; one test a line.
 */

#include "optics.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#define FOOT_M 0.3048
#define MM 1e-3

typedef struct
{
  char   *kind, *source;
  double  in[4];
  double  expected, tolerance;
} Row;

static double
angle_deg (const double *in)
{
  double angle_rad = NAN;

  g_assert_true (lr_field_angle_rad (in[0] * MM, in[1] * MM, 0.0, &angle_rad));
  return angle_rad * 180.0 / G_PI;
}

/* The subject's distance in tables is from the lens */
static LrSharpRange
range_of (const double *in,
          double        subject_m,
          LrFocus      *focus)
{
  double focal_m = in[0] * MM;
  LrSharpRange range;

  g_assert_true (lr_focus_at (focal_m, subject_m + focal_m * subject_m / (subject_m - focal_m), focus));
  g_assert_true (lr_sharp_range (focal_m, in[1], in[2] * MM, focus, &range));
  return range;
}

static double
hyperfocal_ft (const double *in)
{
  LrFocus focus;

  return (range_of (in, 3.0, &focus).hyperfocal_m - in[0] * MM) / FOOT_M;
}

static double
near_ft (const double *in)
{
  LrFocus focus;
  LrSharpRange range = range_of (in, in[3] * FOOT_M, &focus);

  return (range.near_m - focus.image_m) / FOOT_M;
}

static double
far_ft (const double *in)
{
  LrFocus focus;
  LrSharpRange range = range_of (in, in[3] * FOOT_M, &focus);

  return (range.far_m - focus.image_m) / FOOT_M;
}

static const struct
{
  const char *kind;
  int         n_in;
  double    (*value) (const double *in);
} kinds[] = {
  { "angle", 2, angle_deg },
  { "hyperfocal", 3, hyperfocal_ft },
  { "near", 4, near_ft },
  { "far", 4, far_ft },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;

  g_test_message ("%s", row->source);
  for (size_t i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (row->kind, kinds[i].kind) == 0)
      {
        g_assert_cmpfloat_with_epsilon (kinds[i].value (row->in), row->expected, row->tolerance);
        return;
      }

  g_error ("no kind “%s”", row->kind);
}

static Row *
row_new (const char *line)
{
  g_auto (GStrv) fields = g_strsplit (line, "\t", -1);
  g_auto (GStrv) inputs = NULL;
  Row *row = g_new0 (Row, 1);

  g_assert_cmpuint (g_strv_length (fields), ==, 5);
  inputs = g_strsplit (fields[1], " ", -1);
  g_assert_cmpuint (g_strv_length (inputs), <=, G_N_ELEMENTS (row->in));
  for (size_t i = 0; inputs[i] != NULL; i++)
    row->in[i] = g_ascii_strtod (inputs[i], NULL);

  row->kind = g_strdup (fields[0]);
  row->expected = g_ascii_strtod (fields[2], NULL);
  row->tolerance = g_ascii_strtod (fields[3], NULL);
  row->source = g_strdup (fields[4]);
  return row;
}

static void
row_free (gpointer data)
{
  Row *row = data;

  g_free (row->kind);
  g_free (row->source);
  g_free (row);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *text = NULL, *path = NULL;
  g_auto (GStrv) lines = NULL;

  g_test_init (&argc, &argv, NULL);

  path = g_test_build_filename (G_TEST_DIST, "reference", "optics.tsv", NULL);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (size_t i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *name = NULL;
      Row *row;

      if (lines[i][0] == '\0' || lines[i][0] == '#')
        continue;
      row = row_new (lines[i]);
      name = g_strdup_printf ("/reference/optics/%s/%zu", row->kind, i + 1);
      g_test_add_data_func_full (name, row, test_row, row_free);
    }

  return g_test_run ();
}
