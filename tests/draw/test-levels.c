/* test-levels.c - the strip of levels marks where face and walls are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"
#include "levels.h"

#define WIDTH 400
#define HEIGHT 60

static LrLevels
read_levels (const LrPlan        *plan,
             const LrLightLevels *light)
{
  LrLevels levels;

  g_assert_true (lr_levels_read (&levels, light, plan, CAMERA_A));
  return levels;
}

static void
take (LrPlan **plan,
      LrPlan  *next)
{
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

/* What the set-up wants goes before the limits; walls that are wanted dark have no level */
static void
test_wanted (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrLightLevels) light = NULL;

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4);
  light = lr_light_levels_new (plan, TRUE, NULL);
  assert_near (read_levels (plan, light).wanted, 0.6, 1e-9);
  assert_near (read_levels (plan, light).wanted_walls, 0.4, 1e-9);
  take (&plan, lr_plan_set_limit (plan, LR_LIMIT_FACE_LEVEL, 0.65, NULL));
  assert_near (read_levels (plan, light).wanted, 0.65, 1e-9);
  take (&plan, lr_plan_set_setup (plan, "face-level-pct", 0.5, NULL));
  take (&plan, lr_plan_set_setup (plan, "wall-level-pct", 0.2, NULL));
  assert_near (read_levels (plan, light).wanted, 0.5, 1e-9);
  assert_near (read_levels (plan, light).wanted_walls, 0.2, 1e-9);
  {
    const LrLevels levels = read_levels (plan, light);
    g_autofree char *words = lr_levels_words (&levels);

    g_assert_true (g_str_has_suffix (words, "; wanted: face 50\u00a0%, walls 20\u00a0%"));
  }
  take (&plan, lr_plan_set_setup (plan, "walls-wanted", LR_WALLS_DARK, NULL));
  g_assert_true (isnan (read_levels (plan, light).wanted_walls));
}

/* Where ink differs between two drawings: the first and the last column */
static void
find_difference (const LrLevels *a,
                 const LrLevels *b,
                 int            *first,
                 int            *last)
{
  const LrLevels *both[] = { a, b };
  cairo_surface_t *surface[2];

  for (int i = 0; i < 2; i++)
    {
      cairo_t *cr;

      surface[i] = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
      cr = cairo_create (surface[i]);
      cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
      cairo_paint (cr);
      lr_levels_draw (cr, lr_theme_get (LR_THEME_LIGHT), both[i], WIDTH);
      cairo_destroy (cr);
      cairo_surface_flush (surface[i]);
    }
  *first = WIDTH;
  *last = -1;
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      if (((const guint32 *) (gpointer) (cairo_image_surface_get_data (surface[0]) + y * cairo_image_surface_get_stride (surface[0])))[x]
          != ((const guint32 *) (gpointer) (cairo_image_surface_get_data (surface[1]) + y * cairo_image_surface_get_stride (surface[1])))[x])
        {
          *first = MIN (*first, x);
          *last = MAX (*last, x);
        }
  for (int i = 0; i < 2; i++)
    cairo_surface_destroy (surface[i]);
}

/* The wash of the walls' row runs from a stop under 40 % to a stop over it: by ITU-R BT.709, from memory, 40 % is a share of .173, half of
 * which is 1.099 x .0866^.45 - .099 = 26.6 % and twice 58.4 %; it is gone when they are wanted dark */
static void
test_wash (void)
{
  LrLevels level = { .shares = { 0.37, 0.1, 0.1, 0.17 }, .wanted = 0.6, .off_stops = 0.8, .wanted_walls = 0.4, .walls_off_stops = 1.0, .is_whole = TRUE, .is_settled = TRUE };
  LrLevels dark = level;
  int first, last;

  dark.wanted_walls = NAN;
  find_difference (&level, &dark, &first, &last);
  g_assert_cmpint (last, >, first);
  /* the scale's length by another wash, of the face's row: it ends at 1.099 x (.366 x 2^.8)^.45 - .099 = 79.7 % */
  {
    LrLevels narrow = level;
    int from, to;
    double per_share;

    narrow.off_stops = 0.0;
    find_difference (&level, &narrow, &from, &to);
    per_share = (to - from) / (0.797 - 0.446); /* 1.099 x (.366 / 2^.8)^.45 - .099 = 44.6 % */
    assert_near ((last - first) / per_share, 0.584 - 0.266, 0.012);
    assert_near ((first - from) / per_share, 0.266 - 0.446, 0.012);
  }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/levels/wanted", test_wanted);
  g_test_add_func ("/levels/wash", test_wash);
  return g_test_run ();
}
