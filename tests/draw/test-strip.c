/* test-strip.c - two cameras side by side: where they stand, what is carried through both, what is said of the cut
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <cairo-pdf.h>
#include <math.h>
#include <string.h>

#include "fixture.h"
#include "strip.h"

#define WIDTH 600
#define UNIT 1.0
#define NBSP "\302\240"

/* Everything that a strip of a plan's cameras A and B needs */
typedef struct
{
  LrStudy   *study;
  LrRemarks *remarks;
  LrStrip    strip;
} Cut;

static Cut
make_cut (const LrPlan *plan)
{
  Cut cut = { .study = lr_study_new (plan) };

  cut.remarks = lr_remarks_new (cut.study, LR_UNITS_METRIC);
  g_assert_true (lr_strip_init (&cut.strip, cut.study, cut.remarks, CAMERA_A, CAMERA_B));
  return cut;
}

static void
clear_cut (Cut *cut)
{
  lr_remarks_free (cut->remarks);
  lr_study_free (cut->study);
}

static const LrStripStyle style = { .width = WIDTH, .unit = UNIT };

/* --- Place ---------------------------------------------------------------------------------------------------- */

typedef struct
{
  const char *name;
  LrAspect delivery_a, delivery_b;
  double aspect_a, aspect_b;
  double most_height;
} PlaceCase;

static const PlaceCase place_cases[] = {
  { "same", LR_ASPECT_16_9, LR_ASPECT_16_9, 16.0 / 9.0, 16.0 / 9.0, 0.0 },
  { "low", LR_ASPECT_16_9, LR_ASPECT_16_9, 16.0 / 9.0, 16.0 / 9.0, 100.0 },
  { "upright", LR_ASPECT_9_16, LR_ASPECT_9_16, 9.0 / 16.0, 9.0 / 16.0, 0.0 },
  { "square-beside-wide", LR_ASPECT_1_1, LR_ASPECT_16_9, 1.0, 16.0 / 9.0, 0.0 },
};

/* Closed form: one height, each as wide as its aspect makes it, and together as wide as the strip */
static void
test_place (gconstpointer data)
{
  const PlaceCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  LrStripStyle own = style;
  LrStripPlace place;
  Cut cut;

  fixture_set (&plan, CAMERA_A, "aspect", c->delivery_a);
  fixture_set (&plan, CAMERA_B, "aspect", c->delivery_b);
  cut = make_cut (plan);
  own.most_height = c->most_height;
  lr_strip_place (&cut.strip, &own, &place);
  g_assert_cmpfloat_with_epsilon (place.width[0], place.height * c->aspect_a, 0.01);
  g_assert_cmpfloat_with_epsilon (place.width[1], place.height * c->aspect_b, 0.01);
  g_assert_cmpfloat (place.x[0], >=, 0.0);
  g_assert_cmpfloat (place.x[0] + place.width[0], <, place.x[1]);
  g_assert_cmpfloat_with_epsilon (place.x[0], WIDTH - place.x[1] - place.width[1], 1e-9);
  if (c->most_height > 0.0)
    g_assert_cmpfloat (place.height, ==, c->most_height);
  else
    g_assert_cmpfloat_with_epsilon (place.x[0], 0.0, 1e-9);
  clear_cut (&cut);
}

/* --- The level of the eyes ------------------------------------------------------------------------------------ */

static cairo_surface_t *
draw_guides (const LrStrip      *strip,
             const LrStripPlace *place)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, (int) ceil (place->height));
  cairo_t *cr = cairo_create (surface);

  lr_strip_draw_guides (cr, lr_theme_get (LR_THEME_LIGHT), strip, &style);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* Middle of what is bright in a column, between the marks at the edges; NAN: nothing is */
static double
bright_row (cairo_surface_t *surface,
            double           x)
{
  int stride = cairo_image_surface_get_stride (surface), height = cairo_image_surface_get_height (surface);
  double sum = 0.0, weight = 0.0;

  for (int y = 10; y < height - 10; y++)
    {
      const guint8 *row = cairo_image_surface_get_data (surface) + y * stride;
      double green = row[4 * (int) x + 1];

      sum += green * (y + 0.5);
      weight += green;
    }
  return weight > 100.0 ? sum / weight : (double) NAN;
}

/* Where the plan says that the eyes shall fall, the line runs; and it leaves the face free */
static void
test_level (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  LrStripPlace place;
  cairo_surface_t *surface;
  Cut cut;

  fixture_set (&plan, CAMERA_A, "down-pct", 0.40);
  fixture_set (&plan, CAMERA_B, "down-pct", 0.30);
  cut = make_cut (plan);
  lr_strip_place (&cut.strip, &style, &place);
  surface = draw_guides (&cut.strip, &place);

  g_assert_cmpfloat_with_epsilon (bright_row (surface, place.x[0] + 20.0), 0.40 * place.height, 0.6);
  g_assert_cmpfloat_with_epsilon (bright_row (surface, place.x[0] + place.width[0] - 20.0), 0.40 * place.height, 0.6);
  g_assert_cmpfloat_with_epsilon (bright_row (surface, place.x[1] + 20.0), 0.30 * place.height, 0.6);
  g_assert_cmpfloat_with_epsilon (bright_row (surface, place.x[1] + place.width[1] - 20.0), 0.30 * place.height, 0.6);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    g_assert_true (isnan (bright_row (surface, place.x[side] + cut.strip.camera[side]->eyes_across * place.width[side])));

  cairo_surface_destroy (surface);
  clear_cut (&cut);
}

/* One camera on each of two people who look at each other: level and looks are carried through, the angle is not */
static void
test_reverse (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *figures = NULL;
  LrStripPlace place;
  cairo_surface_t *surface;
  Cut cut;

  fixture_text (&plan, CAMERA_B, "aims-at", INES);
  fixture_move (&plan, CAMERA_B, 3.0, 4.2);
  cut = make_cut (plan);
  g_assert_null (cut.strip.pair);
  g_assert_nonnull (cut.strip.reverse);
  lr_strip_place (&cut.strip, &style, &place);
  surface = draw_guides (&cut.strip, &place);
  g_assert_cmpfloat_with_epsilon (bright_row (surface, place.x[0] + 20.0), cut.strip.camera[0]->eyes_down * place.height, 0.6);
  figures = lr_strip_figures (&cut.strip);
  g_test_message ("%s", figures);
  g_assert_null (strstr (figures, "round"));
  g_assert_true (g_str_has_suffix (figures, "A looks left, B right"));
  cairo_surface_destroy (surface);
  clear_cut (&cut);
}

/* A third person, whom nobody looks at: nothing is carried from one picture into the other */
static void
test_nothing_to_match (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *figures = NULL;
  LrStripPlace place;
  cairo_surface_t *surface;
  Cut cut;

  fixture_text (&plan, CAMERA_B, "aims-at", INES);
  fixture_text (&plan, WENNA, "looks-at", "");
  fixture_text (&plan, INES, "looks-at", "");
  fixture_set (&plan, INES, "role", LR_ROLE_OTHER);
  cut = make_cut (plan);
  g_assert_false (lr_strip_is_compared (&cut.strip));
  lr_strip_place (&cut.strip, &style, &place);
  surface = draw_guides (&cut.strip, &place);
  g_assert_true (isnan (bright_row (surface, place.x[0] + 20.0)));
  figures = lr_strip_figures (&cut.strip);
  g_assert_cmpstr (figures, ==, "nothing in both to match");
  g_assert_null (lr_strip_remark (&cut.strip));
  cairo_surface_destroy (surface);
  clear_cut (&cut);
}

/* --- The look ------------------------------------------------------------------------------------------------- */

/* The side by plane geometry: what lies to the right of the way from the camera to the subject is right in the picture */
static LrLook
expected_look (const LrCameraReading *camera,
               LrVec2                 partner_m)
{
  double way_x = camera->subject->at_m.x - camera->placed->at_m.x, way_y = camera->subject->at_m.y - camera->placed->at_m.y;
  double look_x = partner_m.x - camera->subject->at_m.x, look_y = partner_m.y - camera->subject->at_m.y;

  return way_y * look_x - way_x * look_y > 0.0 ? LR_LOOK_RIGHT : LR_LOOK_LEFT;
}

typedef struct
{
  const char *name;
  double b_x_m, b_y_m;
  const char *figures; /* how the line of figures ends */
} LookCase;

static const LookCase look_cases[] = {
  { "one-side", 5.05, 4.75, "both look left" },
  { "over-the-line", 5.05, 1.30, "A looks left, B right" },
  { "into-the-lens", 6.20, 2.20, "a look into the lens in B alone" },
};

static void
test_look (gconstpointer data)
{
  const LookCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *figures = NULL;
  Cut cut;

  fixture_move (&plan, CAMERA_B, c->b_x_m, c->b_y_m);
  cut = make_cut (plan);
  figures = lr_strip_figures (&cut.strip);
  g_test_message ("%s", figures);
  g_assert_true (g_str_has_suffix (figures, c->figures));
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    {
      LrLook look = lr_camera_look (cut.strip.camera[side]);

      if (look != LR_LOOK_LENS)
        g_assert_cmpint (look, ==, expected_look (cut.strip.camera[side], cut.study->interviewer->at_m));
    }
  clear_cut (&cut);
}

/* --- Words ---------------------------------------------------------------------------------------------------- */

/* The angle from the places that the file of the example gives; the shares of the frame from its readings */
static void
test_figures (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  double angle_deg = (atan2 (3.76 - 2.95, 5.07 - 2.60) - atan2 (2.80 - 2.95, 4.81 - 2.60)) * 180.0 / G_PI;
  g_autofree char *angle = g_strdup_printf ("   %.0f° round   ", angle_deg);
  g_autofree char *figures = NULL, *short_figures = NULL;
  LrStrip strip;

  g_assert_true (lr_strip_init_main (&strip, study, NULL));
  figures = lr_strip_figures (&strip);
  short_figures = lr_strip_short_figures (&strip);
  g_assert_true (g_str_has_prefix (figures, "medium → medium close-up, 1 size apart   "));
  g_assert_true (g_str_has_prefix (short_figures, "1 size apart   "));
  g_assert_nonnull (strstr (figures, angle));
  g_assert_nonnull (strstr (figures, "eyes 24" NBSP "% and 29" NBSP "% down"));
  g_assert_null (lr_strip_remark (&strip));
}

/* Of several remarks on one cut the worst is told, and remarks on other things are not */
static void
test_remark (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  Cut cut = make_cut (plan);

  g_assert_cmpint (lr_strip_remark (&cut.strip)->check, ==, LR_CHECK_CUT);
  g_assert_cmpint (lr_strip_remark (&cut.strip)->grade, ==, LR_GRADE_FINE);
  clear_cut (&cut);

  fixture_move (&plan, CAMERA_B, 5.05, 1.30);
  cut = make_cut (plan);
  g_assert_cmpint (lr_strip_remark (&cut.strip)->check, ==, LR_CHECK_LINE_SIDE);
  g_assert_cmpint (lr_strip_remark (&cut.strip)->grade, ==, LR_GRADE_FIX);
  for (guint i = 0; i < cut.remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (cut.remarks->all, i);

      if (remark->check == LR_CHECK_HEADROOM || remark->check == LR_CHECK_DEPTH_OF_FIELD)
        g_assert_false (lr_strip_is_about (&cut.strip, remark));
    }
  clear_cut (&cut);
}

static void
test_no_strip (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrStrip strip = { NULL };

  g_assert_false (lr_strip_init (&strip, study, NULL, CAMERA_A, CAMERA_A));
  g_assert_false (lr_strip_init (&strip, study, NULL, CAMERA_A, WENNA));
  g_assert_false (lr_strip_init (&strip, study, NULL, "nobody", CAMERA_B));
  g_assert_null (strip.study);
}

/* --- The whole ------------------------------------------------------------------------------------------------ */

/* All that is drawn stands in the width and the height that it asks for */
static void
test_extents (gconstpointer data)
{
  const double width = *(const double *) data;
  const LrStripStyle own = { .width = width, .unit = width / 900.0 };
  const LrTheme *theme = lr_theme_get (LR_THEME_DARK);
  g_autoptr (LrPlan) plan = fixture_interview ();
  Cut cut = make_cut (plan);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, ink_width, ink_height, height = lr_strip_height (cr, theme, &cut.strip, &own);

  lr_strip_draw (cr, theme, &cut.strip, &own);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &ink_width, &ink_height);
  g_assert_cmpfloat (x, >=, -2.0);
  g_assert_cmpfloat (y, >=, -2.0);
  g_assert_cmpfloat (x + ink_width, <=, width + 2.0);
  g_assert_cmpfloat (y + ink_height, <=, height + 2.0);
  cairo_surface_destroy (surface);
  clear_cut (&cut);
}

int
main (int    argc,
      char **argv)
{
  static const double widths[] = { 200.0, 446.0, 1280.0 };

  g_test_init (&argc, &argv, NULL);
  add_rows ("/strip/place", place_cases, test_place);
  g_test_add_func ("/strip/level", test_level);
  g_test_add_func ("/strip/reverse", test_reverse);
  g_test_add_func ("/strip/nothing-to-match", test_nothing_to_match);
  add_rows ("/strip/look", look_cases, test_look);
  g_test_add_func ("/strip/figures", test_figures);
  g_test_add_func ("/strip/remark", test_remark);
  g_test_add_func ("/strip/no-strip", test_no_strip);
  for (gsize i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      g_autofree char *path = g_strdup_printf ("/strip/extents/%.0f", widths[i]);

      g_test_add_data_func (path, &widths[i], test_extents);
    }
  return g_test_run ();
}
