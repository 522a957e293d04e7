/* test-small-plan.c - rooms side by side, to one scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "small_plan.h"

#include "plan_edit.h"

/* Rooms of 8 by 4 m and 4 by 4 m, and one that is not drawn */
static LrComparison *
new_comparison (void)
{
  static const LrVec2 wide_m[] = { { 1, 1 }, { 9, 1 }, { 9, 5 }, { 1, 5 } }, square_m[] = { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 0, 4 } };
  g_autoptr (LrPlan) empty = lr_plan_new_empty (), first = lr_plan_set_corners (empty, wide_m, 4, NULL);
  g_autoptr (LrPlan) second = lr_plan_new_setup (first, "B", NULL), drawn = lr_plan_set_corners (second, square_m, 4, NULL);
  g_autoptr (LrPlan) third = lr_plan_new_setup (drawn, "C", NULL);

  return lr_comparison_new (third);
}

/* 8 units are left free on every side: of 216 by 136, 200 for 8 m and 120 for 4 m, 25 to the metre (closed form) */
static void
test_scale (void)
{
  g_autoptr (LrComparison) comparison = new_comparison (), nothing = NULL;
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();

  g_assert_cmpfloat_with_epsilon (lr_small_plan_scale (comparison, 216.0, 136.0), 25.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_small_plan_scale (comparison, 216.0, 66.0), 12.5, 1e-9);
  nothing = lr_comparison_new (empty);
  g_assert_cmpfloat (lr_small_plan_scale (nothing, 216.0, 136.0), ==, 0.0);
}

/* A sofa that stands out over the wall is not cut: 2 m of it beyond the wide room make 10 m of 8, 20 units to the metre instead of 25 */
static void
test_things_fit (void)
{
  g_autoptr (LrComparison) comparison = new_comparison ();
  g_autoptr (LrPlan) shown = lr_plan_show_setup (comparison->plan, "setup-1", NULL), wide = NULL;
  g_autoptr (LrComparison) fuller = NULL;
  g_autoptr (LrItem) sofa = lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, "sofa");
  g_autofree char *id = NULL;

  sofa->furniture.length_m = 2.0;
  sofa->furniture.width_m = 1.0;
  wide = lr_plan_add (shown, sofa, lr_vec2 (10.0, 3.0), 0.0, &id, NULL);
  g_assert_nonnull (wide);
  fuller = lr_comparison_new (wide);
  g_assert_cmpfloat_with_epsilon (lr_small_plan_scale (fuller, 216.0, 136.0), 20.0, 1e-9);
}

static guint32
pixel_at (cairo_surface_t *image,
          int              x,
          int              y)
{
  cairo_surface_flush (image);
  return ((guint32 *) (gpointer) (cairo_image_surface_get_data (image) + y * cairo_image_surface_get_stride (image)))[x] & 0xffffff;
}

static guint32
pixel_of (LrColor color)
{
  return (guint32) (255.0 * color.r + 0.5) << 16 | (guint32) (255.0 * color.g + 0.5) << 8 | (guint32) (255.0 * color.b + 0.5);
}

/* The wide room reaches from 8 to 208, the square one from 58 to 158, the third one nowhere; places off grid and line */
static void
test_places (void)
{
  static const struct { guint room; int x, y; gboolean is_room; } cases[] = {
    { 0, 20, 80, TRUE }, { 0, 196, 55, TRUE }, { 0, 3, 68, FALSE }, { 0, 100, 10, FALSE },
    { 1, 65, 80, TRUE }, { 1, 40, 94, FALSE }, { 1, 180, 94, FALSE }, { 2, 100, 70, FALSE },
  };
  g_autoptr (LrComparison) comparison = new_comparison ();
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 216, 136);
      cairo_t *cr = cairo_create (image);

      lr_small_plan_draw (cr, lr_comparison_room (comparison, cases[i].room), theme, 25.0, 216.0, 136.0);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      g_assert_cmphex (pixel_at (image, cases[i].x, cases[i].y), ==, pixel_of (cases[i].is_room ? theme->room : theme->ground));
      cairo_destroy (cr);
      cairo_surface_destroy (image);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/small-plan/scale", test_scale);
  g_test_add_func ("/small-plan/things-fit", test_things_fit);
  g_test_add_func ("/small-plan/places", test_places);

  return g_test_run ();
}
