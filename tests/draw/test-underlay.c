/* test-underlay.c - the picture of a floor plan under the sheet: where its pixels land, and in what light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected places: closed form, in the doc comment of LrSimilarity. The picture is white, with one black square.
 */

#include "floor.h"
#include "plan_edit.h"
#include "underlay.h"

#include <string.h>

#define SIZE 400
#define WIDTH_PX 200.0 /* of the picture, whose pixels come twice as fine */
#define HEIGHT_PX 100.0

/* The square, from the lower left corner of the picture */
#define LEFT_PX 120.0
#define LOW_PX 20.0
#define SIDE_PX 20.0

static LrUnderlay *
make_picture (double fineness)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (WIDTH_PX * fineness), (int) (HEIGHT_PX * fineness));
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, fineness, fineness);
  cairo_rectangle (cr, LEFT_PX, HEIGHT_PX - LOW_PX - SIDE_PX, SIDE_PX, SIDE_PX);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_fill (cr);
  cairo_destroy (cr);
  return lr_underlay_new (surface, WIDTH_PX, HEIGHT_PX, 1);
}

static double
level_at (cairo_surface_t *surface,
          LrVec2           at)
{
  const guchar *row = cairo_image_surface_get_data (surface) + (int) at.y * cairo_image_surface_get_stride (surface);

  return row[4 * (int) at.x + 1] / 255.0;
}

typedef struct
{
  const char *name;
  LrSimilarity lies;
  double      fineness; /* of its pixels */
  double      paper;    /* under it */
  gboolean    is_dark;
  double      dim;
  double      ink, white; /* expected, of the square and of the rest */
} PaintCase;

static const PaintCase paint_cases[] = {
  { "light", { 0.02, 0.0, { 0.5, 0.5 } }, 1.0, 0.9, FALSE, 0.0, 0.0, 0.9 },
  { "dimmed", { 0.02, 0.0, { 0.5, 0.5 } }, 1.0, 0.9, FALSE, 0.6, 0.54, 0.9 },
  { "not-seen", { 0.02, 0.0, { 0.5, 0.5 } }, 1.0, 0.9, FALSE, 1.0, 0.9, 0.9 },
  { "dark", { 0.02, 0.0, { 0.5, 0.5 } }, 1.0, 0.1, TRUE, 0.0, 1.0, 0.1 },
  { "dark-dimmed", { 0.02, 0.0, { 0.5, 0.5 } }, 1.0, 0.1, TRUE, 0.4, 0.64, 0.1 },
  { "turned", { 0.02, 30.0 * LR_DEG, { 1.0, 0.2 } }, 1.0, 0.9, FALSE, 0.0, 0.0, 0.9 },
  { "upside-down", { 0.02, LR_PI, { 4.6, 2.8 } }, 1.0, 0.9, FALSE, 0.0, 0.0, 0.9 },
  { "fine", { 0.02, 30.0 * LR_DEG, { 1.0, 0.2 } }, 12.3, 0.9, FALSE, 0.0, 0.0, 0.9 },
  { "fine-dark", { 0.02, -20.0 * LR_DEG, { 0.4, 2.0 } }, 12.3, 0.1, TRUE, 0.0, 1.0, 0.1 },
};

/* A pixel inside each edge of the square is ink, one outside of it is paper */
static void
test_paint (gconstpointer data)
{
  const PaintCase *c = data;
  const double scale = 80.0;
  LrVec2 origin = lr_vec2 (0.0, 300.0);
  g_autoptr (LrUnderlay) picture = make_picture (c->fineness);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, c->paper, c->paper, c->paper);
  cairo_paint (cr);
  lr_underlay_paint (picture, cr, &c->lies, scale, origin, c->dim, c->is_dark);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int side = 0; side < 4; side++)
    for (int is_out = 0; is_out < 2; is_out++)
      {
        LrVec2 way = lr_vec2_rotate (lr_vec2 (SIDE_PX / 2.0 + (is_out ? 1.6 : -1.6), 0.0), side * LR_PI / 2.0);
        LrVec2 point = lr_vec2_add (lr_vec2 (LEFT_PX + SIDE_PX / 2.0, LOW_PX + SIDE_PX / 2.0), way);
        LrVec2 on_floor = lr_vec2_rotate (lr_vec2_scale (point, c->lies.scale), c->lies.turn_rad);
        LrVec2 at = lr_vec2 (origin.x + (c->lies.origin_m.x + on_floor.x) * scale, origin.y - (c->lies.origin_m.y + on_floor.y) * scale);

        g_assert_cmpfloat_with_epsilon (level_at (surface, at), is_out ? c->white : c->ink, 0.012);
      }
  cairo_surface_destroy (surface);
}

/* Whatever scale and place a file has, it comes to an end without a picture of terabytes */
static void
test_extremes (void)
{
  const double scales[] = { 1e-5, 1e-3, 10.0 }, places_m[] = { 0.0, 500.0, -500.0 };
  g_autoptr (LrUnderlay) picture = make_picture (3.0);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);

  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (places_m); k++)
      for (double scale = 15.0; scale <= 2400.0; scale *= 12.6)
        lr_underlay_paint (picture, cr, &(LrSimilarity) { scales[i], 0.7, { places_m[k], places_m[k] } }, scale, lr_vec2 (200.0, 200.0), 0.2,
                           k % 2 == 1);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* (transfer full): what the drawing of a plan with that picture is */
static cairo_surface_t *
draw (const LrPlan *plan,
      LrUnderlay   *picture,
      LrThemeId     theme,
      gboolean      is_page)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);
  LrStudy *study = lr_study_new (plan);
  LrView view = {
    .scale = 80.0, .origin = { 0.0, SIZE }, .width = SIZE, .height = SIZE, .theme = lr_theme_get (theme), .underlay = picture, .is_page = is_page,
  };

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  lr_floor_draw (cr, plan, study, NULL, &view);
  lr_study_free (study);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static gboolean
is_same (cairo_surface_t *a,
         cairo_surface_t *b)
{
  gsize n_bytes = (gsize) SIZE * (gsize) cairo_image_surface_get_stride (a);
  gboolean same = memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), n_bytes) == 0;

  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
  return same;
}

/* On the sheet while it is shown, in either light; never on the page */
static void
test_floor (void)
{
  static const char png[] = "\x89PNG\r\n\x1a\n...";
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) bare = lr_plan_new_empty (), plan = NULL, hidden = NULL;
  g_autoptr (LrPictureFile) file = lr_picture_file_new_from_data (png, sizeof png - 1, &error);
  g_autoptr (LrUnderlay) picture = make_picture (2.0);

  plan = lr_plan_set_underlay (bare, file, "", &(LrSimilarity) { 0.02, 0.0, { 0.5, 0.5 } }, &error);
  g_assert_no_error (error);
  hidden = lr_plan_set_room (plan, "underlay-is-hidden", 1.0, &error);
  g_assert_no_error (error);
  for (int theme = LR_THEME_LIGHT; theme <= LR_THEME_DARK; theme++)
    {
      g_assert_false (is_same (draw (plan, picture, theme, FALSE), draw (bare, picture, theme, FALSE)));
      g_assert_true (is_same (draw (hidden, picture, theme, FALSE), draw (bare, picture, theme, FALSE)));
      g_assert_true (is_same (draw (plan, NULL, theme, FALSE), draw (bare, NULL, theme, FALSE)));
    }
  g_assert_true (is_same (draw (plan, picture, LR_THEME_PAGE, TRUE), draw (bare, picture, LR_THEME_PAGE, TRUE)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (paint_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/underlay/paint/", paint_cases[i].name, NULL);

      g_test_add_data_func (path, &paint_cases[i], test_paint);
    }
  g_test_add_func ("/underlay/extremes", test_extremes);
  g_test_add_func ("/underlay/floor", test_floor);

  return g_test_run ();
}
