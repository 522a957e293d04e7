/* test-light-alone.c - what each source gives alone
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light adds up, and goes with its source (any book of photometry): what is held against each other here is worked out in two ways, all
 * sources at once and each alone.
 */

#include "fixture.h"

#include "source_rows.h"

#define SAME 1e-3

static double
sum_face_lx (const LrLightLevels *levels,
             const char          *person,
             LrFacePoint          point)
{
  double sum_lx = 0.0;

  for (guint i = 0; i < lr_light_alone_n (levels); i++)
    if (!lr_light_alone_get (levels, i).is_out)
      sum_lx += lr_light_alone_face_lx (levels, i, person, point);
  return sum_lx;
}

/* On every point of every person and behind every camera, windows and house lights too */
static void
test_sum (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrSetup *setup = lr_plan_get_setup (plan);
  guint n_points = 0, n_cameras = 0;

  g_assert_cmpuint (lr_light_alone_n (levels), >, 1);
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];
      const LrFaceLight *face = lr_light_levels_face (levels, item->id);
      const LrBackLight *back = lr_light_levels_background (levels, item->id);
      double sum_lx = 0.0, sum_given_lx = 0.0;

      for (LrFacePoint point = 0; face != NULL && point < LR_N_FACE_POINTS; point++, n_points++)
        assert_within (sum_face_lx (levels, item->id, point), lr_lux_all (face->at[point]), SAME);
      if (back == NULL || back->n == 0)
        continue;
      for (guint k = 0; k < lr_light_alone_n (levels); k++)
        {
          double lux, given_lx;

          g_assert_true (lr_light_alone_walls_lx (levels, k, item->id, &lux, &given_lx));
          sum_lx += lux;
          sum_given_lx += given_lx;
        }
      n_cameras++;
      assert_within (sum_lx, lr_lux_all (back->mean), SAME);
      assert_within (sum_given_lx, back->reflectance * lr_lux_all (back->mean), SAME);
    }
  g_assert_cmpuint (n_points, >=, 2 * LR_N_FACE_POINTS);
  g_assert_cmpuint (n_cameras, >=, 2);
}

/* Two lamps, one of them out, a window by day is none here: at other dimmings the levels are the sum of each alone as it is dimmed, the
 * one that was out by what it would give at full */
static void
test_dimmed (void)
{
  static const double dims[][2] = { { 0.5, 1.0 }, { 0.05, 0.3 }, { 1.0, 0.0 }, { 0.0, 0.65 } };
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *key = g_strdup (fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4));
  g_autofree char *wall = g_strdup (fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 1.6, 5.0));
  g_autoptr (LrLightLevels) levels = NULL;

  fixture_text (&plan, key, "aims-at", WENNA);
  fixture_set (&plan, key, "dim-pct", 0.8);
  fixture_set (&plan, wall, "facing-deg", LR_PI);
  fixture_set (&plan, wall, "dim-pct", 0.0);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  g_assert_cmpuint (lr_light_alone_n (levels), ==, 2);
  g_assert_cmpuint (lr_light_levels_n_sources (levels), ==, 1);
  g_assert_false (lr_light_alone_get (levels, 0).is_out);
  g_assert_true (lr_light_alone_get (levels, 1).is_out);
  g_assert_cmpstr (lr_light_alone_get (levels, 1).placed->item->id, ==, wall);

  for (gsize i = 0; i < G_N_ELEMENTS (dims); i++)
    {
      g_autoptr (LrPlan) next = lr_plan_ref (plan);
      g_autoptr (LrLightLevels) then = NULL;
      double lux[2], given_lx[2];

      fixture_set (&next, key, "dim-pct", dims[i][0]);
      fixture_set (&next, wall, "dim-pct", dims[i][1]);
      then = lr_light_levels_new (next, TRUE, NULL);
      for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
        assert_within (dims[i][0] / 0.8 * lr_light_alone_face_lx (levels, 0, WENNA, point)
                         + dims[i][1] * lr_light_alone_face_lx (levels, 1, WENNA, point),
                       lr_lux_all (lr_light_levels_face (then, WENNA)->at[point]), SAME);
      for (guint k = 0; k < 2; k++)
        g_assert_true (lr_light_alone_walls_lx (levels, k, CAMERA_A, &lux[k], &given_lx[k]));
      assert_within (dims[i][0] / 0.8 * lux[0] + dims[i][1] * lux[1], lr_lux_all (lr_light_levels_background (then, CAMERA_A)->mean), SAME);
      assert_within (dims[i][0] / 0.8 * given_lx[0] + dims[i][1] * given_lx[1],
                     lr_light_levels_background (then, CAMERA_A)->reflectance * lr_lux_all (lr_light_levels_background (then, CAMERA_A)->mean), SAME);
    }
}

/* Without bounces nothing is told; nobody has no light, and nothing is seen by what is no camera */
static void
test_unknown (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrLightLevels) straight = NULL, whole = NULL;
  double lux = -1.0, given_lx = -1.0;

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4);
  straight = lr_light_levels_new (plan, FALSE, NULL);
  whole = lr_light_levels_new (plan, TRUE, NULL);
  g_assert_cmpuint (lr_light_alone_n (straight), ==, 0);
  g_assert_cmpuint (lr_light_alone_n (whole), ==, 1);
  g_assert_true (isnan (lr_light_alone_face_lx (whole, 0, "nobody", LR_FACE_LEFT)));
  g_assert_false (lr_light_alone_walls_lx (whole, 0, WENNA, &lux, &given_lx));
  g_assert_cmpfloat (lux, ==, -1.0);
  g_assert_null (lr_light_levels_probe (whole, "nobody", LR_FACE_LEFT));
  g_assert_nonnull (lr_light_levels_probe (whole, WENNA, LR_FACE_CHEST));
}

/* In a list the sources that shine add up to the last row, which on the face is all that it gets: no stops off; stops go by the logarithm of
 * the lux; a lamp that is out is told at full, and is in no sum */
static void
test_rows (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrSourceRows) rows = NULL, none = NULL;
  const LrSourceRow *row;

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4);
  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.4, 4.4);
  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 1.2, 5.0);
  fixture_text (&plan, "light-1", "aims-at", WENNA);
  fixture_text (&plan, "light-2", "aims-at", WENNA);
  fixture_set (&plan, "light-2", "dim-pct", 0.25);
  fixture_set (&plan, "light-3", "dim-pct", 0.0);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  rows = lr_source_rows_new (levels, WENNA);
  g_assert_nonnull (rows);
  g_assert_cmpuint (rows->rows->len, ==, 4);
  g_assert_cmpstr (rows->camera->item->id, ==, CAMERA_A);
  row = (const LrSourceRow *) (gpointer) rows->rows->data;
  g_assert_nonnull (strstr (row[1].title, "at 25\u00a0%"));
  g_assert_true (row[2].is_out && !row[1].is_out && row[3].is_sum);
  assert_within (row[0].face_lx + row[1].face_lx, row[3].face_lx, 1e-9);
  assert_within (row[0].walls_lx + row[1].walls_lx, row[3].walls_lx, 1e-9);
  assert_near (row[3].face_stops, 0.0, 1e-3);
  assert_near (row[0].face_stops, log2 (row[0].face_lx / row[3].face_lx), 1e-3);
  assert_near (row[1].walls_stops - row[1].face_stops, log2 (row[1].walls_lx / row[1].face_lx), 1e-9);
  none = lr_source_rows_new (levels, "nobody");
  g_assert_null (none);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light-alone/sum", test_sum);
  g_test_add_func ("/light-alone/dimmed", test_dimmed);
  g_test_add_func ("/light-alone/rows", test_rows);
  g_test_add_func ("/light-alone/unknown", test_unknown);
  return g_test_run ();
}
