/* test-light.c - what light a source gives at a point
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: closed forms of textbooks (Siegel and Howell, Thermal Radiation Heat Transfer; Tregenza and Sharples, Daylighting
 * Algorithms, 3.14 and 3.15), each worked out beside the check or with another program, and checked by numerical integration there.
 */

#include "light.h"

#include "check.h"

/* 3000 lm in a beam of 60 degrees: 2778.29 cd, 444.53 lx at 2.5 m; 20 degrees off the axis .74101 of it */
static void
test_lumen (void)
{
  LrEmitter lamp = { .shape = LR_EMITTER_POINT, .axis = { 1.0, 0.0, 0.0 } };
  double lux = NAN, off = 20.0 * LR_DEG;

  g_assert_true (lr_lobe_init (&lamp.lobe, 60.0 * LR_DEG, 0.0));
  g_assert_true (lr_candela_of_lumen (3000.0, &lamp.lobe, &lamp.candela));
  assert_within (lamp.candela, 2778.29, 1e-5);
  g_assert_true (lr_emitter_axis_lx (&lamp, 2.5, &lux));
  assert_within (lux, 444.53, 1e-4);
  g_assert_true (lr_emitter_lx (&lamp, lr_vec3 (2.5 * cos (off), 2.5 * sin (off), 0.0), lr_vec3 (-cos (off), -sin (off), 0.0), &lux));
  assert_near (lux / 444.53, 0.74101, 1e-4);
}

typedef struct
{
  const char *name;
  double      candela, distance_m, off_deg; /* of the face */
  double      lux;
} PointCase;

/* E = I cos / d^2 */
static const PointCase point_cases[] = {
  { "straight", 5000.0, 2.0, 0.0, 1250.0 },
  { "30", 5000.0, 2.0, 30.0, 1082.53 },
  { "45", 1500.0, 1.5, 45.0, 471.405 },
  { "60", 20000.0, 4.0, 60.0, 625.0 },
  { "turned-away", 20000.0, 4.0, 120.0, 0.0 },
};

static void
test_point (gconstpointer data)
{
  const PointCase *c = data;
  LrEmitter lamp = { .shape = LR_EMITTER_POINT, .axis = { 1.0, 0.0, 0.0 }, .candela = c->candela };
  double lux = NAN, candela = NAN;

  g_assert_true (lr_emitter_lx (&lamp, lr_vec3 (c->distance_m, 0.0, 0.0), lr_vec3 (-cos (c->off_deg * LR_DEG), sin (c->off_deg * LR_DEG), 0.0), &lux));
  assert_near (lux, c->lux, 1e-3 * c->lux + 1e-12);
  g_assert_true (lr_candela_of_lux (c->candela / (c->distance_m * c->distance_m), c->distance_m, &candela));
  assert_within (candela, c->candela, 1e-12);
}

typedef struct
{
  const char *name;
  LrVec3      corner_m[4], normal; /* of the face at 0, 0, 0 */
  double      factor;
} FactorCase;

#define PARALLEL(x, y, z) { { 0, 0, z }, { x, 0, z }, { x, y, z }, { 0, y, z } }, { 0, 0, 1 }
/* stands on the plane of the face, from its foot point to one side */
#define UPRIGHT(a, b, c) { { 0, c, 0 }, { b, c, 0 }, { b, c, a }, { 0, c, a } }, { 0, 0, 1 }
#define TILTED(deg) { { -0.45, -0.6, 1.5 }, { 0.45, -0.6, 1.5 }, { 0.45, 0.6, 1.5 }, { -0.45, 0.6, 1.5 } }, \
  { (deg) == 30 ? 0.5 : (deg) == 45 ? 0.70710678118654752 : (deg) == 60 ? 0.86602540378443865 : 0.0, 0, \
    (deg) == 30 ? 0.86602540378443865 : (deg) == 45 ? 0.70710678118654752 : (deg) == 60 ? 0.5 : 1.0 }

static const FactorCase factor_cases[] = {
  { "parallel-1-1-1", PARALLEL (1, 1, 1), 0.138532 },
  { "parallel-2-1-1", PARALLEL (2, 1, 1), 0.167375 },
  { "centred", { { -0.5, -0.5, 1 }, { 0.5, -0.5, 1 }, { 0.5, 0.5, 1 }, { -0.5, 0.5, 1 } }, { 0, 0, 1 }, 0.239456 },
  { "upright-1-1-1", UPRIGHT (1, 1, 1), 0.055734 },
  { "upright-2-1-1", UPRIGHT (2, 1, 1), 0.095068 },
  { "upright-1-2-0.5", UPRIGHT (1, 2, 0.5), 0.135488 },
  { "very-large-upright", { { -1e7, 1, -1e7 }, { 1e7, 1, -1e7 }, { 1e7, 1, 1e7 }, { -1e7, 1, 1e7 } }, { 0, 0, 1 }, 0.5 },
  { "level", TILTED (0), 0.131160 },
  { "tilted-30", TILTED (30), 0.113588 },
  { "tilted-45", TILTED (45), 0.092744 },
  { "tilted-60", TILTED (60), 0.065580 },
  { "under-the-horizon", PARALLEL (1, 1, -1), 0.0 },
};

static void
test_factor (gconstpointer data)
{
  const FactorCase *c = data;
  LrVec3 back[4];
  double factor = NAN, reversed = NAN;

  for (int i = 0; i < 4; i++)
    back[i] = c->corner_m[3 - i];
  g_assert_true (lr_polygon_factor (c->corner_m, 4, lr_vec3 (0, 0, 0), c->normal, &factor));
  g_assert_true (lr_polygon_factor (back, 4, lr_vec3 (0, 0, 0), c->normal, &reversed));
  assert_near (factor, c->factor, 1e-5);
  assert_near (reversed, c->factor, 1e-5);
}

/* By a sum over a fine grid, of a rectangle that dips under the horizon of a tilted face */
static void
test_horizon (void)
{
  const LrVec3 corner_m[] = { { 0.5, -1.0, -0.8 }, { 0.5, 1.0, -0.8 }, { 0.5, 1.0, 1.2 }, { 0.5, -1.0, 1.2 } };
  LrVec3 normal = { 0.6, 0.0, 0.8 };
  double sum = 0.0, factor = NAN, step = 2.0 / 800.0;

  for (int i = 0; i < 800; i++)
    for (int j = 0; j < 800; j++)
      {
        LrVec3 way = { 0.5, -1.0 + (i + 0.5) * step, -0.8 + (j + 0.5) * step };
        double d2 = lr_vec3_dot (way, way);

        sum += fmax (0.0, lr_vec3_dot (way, normal)) * 0.5 / (LR_PI * d2 * d2) * step * step;
      }
  g_assert_true (lr_polygon_factor (corner_m, 4, lr_vec3 (0, 0, 0), normal, &factor));
  assert_near (factor, sum, 1e-5);
}

typedef struct
{
  const char *name;
  double      width_m, height_m, distance_m;
  double      lux, inverse_square; /* with 5000 cd/m2 */
} PanelCase;

static const PanelCase panel_cases[] = {
  { "0.6-at-0.6", 0.6, 0.6, 0.6, 3761.37, 5000.0 },
  { "0.6-at-1", 0.6, 0.6, 1.0, 1608.05, 1800.0 },
  { "0.6-at-3", 0.6, 0.6, 3.0, 197.370, 200.0 },
  { "0.9-by-1.2", 0.9, 1.2, 1.5, 2060.26, 2400.0 },
  { "1.2-by-1.8", 1.2, 1.8, 1.5, 3587.67, 4800.0 },
};

static LrEmitter
make_panel (double width_m,
            double height_m)
{
  return (LrEmitter) { .shape = LR_EMITTER_RECTANGLE, .axis = { 1, 0, 0 }, .right = { 0, -1, 0 }, .up = { 0, 0, 1 },
                       .width_m = width_m, .height_m = height_m, .candela = 5000.0 * width_m * height_m, .lobe = { .power = 1.0 } };
}

static void
test_panel (gconstpointer data)
{
  const PanelCase *c = data;
  LrEmitter panel = make_panel (c->width_m, c->height_m), point = panel;
  double lux = NAN;

  g_assert_true (lr_emitter_axis_lx (&panel, c->distance_m, &lux));
  assert_within (lux, c->lux, 1e-3);
  point.shape = LR_EMITTER_POINT;
  g_assert_true (lr_emitter_axis_lx (&point, c->distance_m, &lux));
  assert_within (lux, c->inverse_square, 1e-9);
}

/* On the axis of a disc E = pi L r^2 / (r^2 + d^2) (closed form). Behind it is no light */
static void
test_disc (void)
{
  LrEmitter disc = { .shape = LR_EMITTER_DISC, .axis = { 1, 0, 0 }, .right = { 0, -1, 0 }, .up = { 0, 0, 1 }, .width_m = 0.9, .lobe = { .power = 1.0 } };
  double lux = NAN;

  disc.candela = 3000.0 * 0.25 * LR_PI * 0.9 * 0.9;
  for (double d = 0.2; d < 6.0; d *= 1.5)
    {
      g_assert_true (lr_emitter_axis_lx (&disc, d, &lux));
      assert_within (lux, LR_PI * 3000.0 * 0.45 * 0.45 / (0.45 * 0.45 + d * d), 1e-3);
    }
  g_assert_true (lr_emitter_lx (&disc, lr_vec3 (-1.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &lux));
  assert_near (lux, 0.0, 1e-12);
}

/* Half the light: 1.414 times as far from a point; nearer than that from a panel, which falls slower when it is near */
static void
test_fall_off (void)
{
  LrEmitter panel = make_panel (1.2, 1.2), point = panel;
  double lux = NAN, far_m = NAN, check = NAN;

  point.shape = LR_EMITTER_POINT;
  g_assert_true (lr_emitter_axis_lx (&point, 1.5, &lux));
  g_assert_true (lr_emitter_distance_m (&point, 0.5 * lux, &far_m));
  assert_within (far_m, 1.5 * sqrt (2.0), 1e-9);

  g_assert_true (lr_emitter_axis_lx (&panel, 1.5, &lux));
  g_assert_true (lr_emitter_distance_m (&panel, 0.5 * lux, &far_m));
  g_assert_cmpfloat (far_m, >, 1.5 * sqrt (2.0));
  g_assert_true (lr_emitter_axis_lx (&panel, far_m, &check));
  assert_within (check, 0.5 * lux, 1e-9);
  g_assert_false (lr_emitter_distance_m (&panel, 5001.0 * LR_PI, &far_m)); /* brighter than its face */
}

/* Near a wide panel with a grid each part of it is seen at its own angle: the sum of 200 by 200 points, each by the photometric distance law.
 * From so far that it is a point it has its whole intensity */
static void
test_grid (void)
{
  static const struct { double beam_deg, distance_m; } cases[] = { { 60.0, 1.4 }, { 40.0, 1.4 }, { 20.0, 1.4 }, { 20.0, 0.7 }, { 110.0, 1.4 }, { 40.0, 60.0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LrEmitter panel = make_panel (0.9, 0.9);
      double lux = NAN, sum = 0.0, d = cases[i].distance_m;

      g_assert_true (lr_lobe_init (&panel.lobe, cases[i].beam_deg * LR_DEG, 0.0));
      for (int k = 0; k < 200 * 200; k++)
        {
          double x = 0.9 * ((k % 200 + 0.5) / 200.0 - 0.5), y = 0.9 * ((k / 200 + 0.5) / 200.0 - 0.5), r2 = x * x + y * y + d * d, cosine = d / sqrt (r2);

          sum += panel.candela / 40000.0 * pow (cosine, panel.lobe.power) * cosine / r2;
        }
      g_assert_true (lr_emitter_axis_lx (&panel, d, &lux));
      assert_within (lux, sum, 0.01);
    }
}

static void
test_domain (void)
{
  LrEmitter panel = make_panel (0.0, 1.0);
  double untouched = UNTOUCHED;

  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_candela_of_lux (1.0, not_positive[i], &untouched));
      g_assert_false (lr_emitter_axis_lx (&panel, not_positive[i], &untouched));
      g_assert_false (lr_emitter_distance_m (&panel, not_positive[i], &untouched));
    }
  g_assert_false (lr_candela_of_lumen (-1.0, &panel.lobe, &untouched));
  g_assert_false (lr_emitter_axis_lx (&panel, 1.0, &untouched)); /* no area */
  g_assert_false (lr_polygon_factor (NULL, 2, lr_vec3 (0, 0, 0), lr_vec3 (0, 0, 1), &untouched));
  g_assert_cmpfloat (untouched, ==, UNTOUCHED);
}

/* Parallel light of 80000 lx from 30 degrees up the y axis through a window of 1 m by 1 m at y = 0: on a face turned to it all of it, by the
 * cosine elsewhere, within the slanted prism and not beside it; closed form */
static void
test_parallel (void)
{
  const double c = cos (30.0 * LR_DEG), s = 0.5;
  const LrEmitter beam = {
    .shape = LR_EMITTER_BEAM, .at_m = { 0.0, 0.0, 1.5 }, .axis = { 0.0, c, -s }, .right = { -1.0, 0.0, 0.0 }, .up = { 0.0, 0.0, 1.0 },
    .width_m = 1.0, .height_m = 1.0, .parallel_lx = 80000.0,
  };
  static const struct { double x, y, over; bool is_in; } points[] = { /* over the beam's middle line */
    { 0.0, 0.5, 0.0, true }, { 0.49, 2.0, 0.49, true }, { 0.51, 2.0, 0.0, false }, { 0.0, 2.0, 0.51, false }, { 0.0, 2.0, -0.51, false },
    { 0.0, -0.5, 0.0, false },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (points); i++)
    {
      LrVec3 at_m = { points[i].x, points[i].y, 1.5 + points[i].over - points[i].y * s / c }, entry_m;
      double lux = NAN;

      g_assert_true (lr_emitter_lx (&beam, at_m, lr_vec3 (0.0, -c, s), &lux));
      assert_near (lux, points[i].is_in ? 80000.0 : 0.0, 1e-6);
      g_assert_true (lr_emitter_lx (&beam, at_m, lr_vec3 (0.0, 0.0, 1.0), &lux)); /* a floor: sin 30 degrees */
      assert_near (lux, points[i].is_in ? 40000.0 : 0.0, 1e-6);
      g_assert_true (lr_emitter_lx (&beam, at_m, lr_vec3 (0.0, 1.0, 0.0), &lux)); /* turned away */
      assert_near (lux, 0.0, 1e-12);
      g_assert_cmpint (lr_beam_entry (&beam, at_m, &entry_m), ==, points[i].is_in);
    }
  assert_near (lr_vec3_dot (lr_emitter_way (&beam, lr_vec3 (3.0, 2.0, 0.0)), lr_vec3 (0.0, -c, s)), 1.0, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light/lumen", test_lumen);
  add_rows ("/light/point", point_cases, test_point);
  add_rows ("/light/factor", factor_cases, test_factor);
  g_test_add_func ("/light/horizon", test_horizon);
  add_rows ("/light/panel", panel_cases, test_panel);
  g_test_add_func ("/light/disc", test_disc);
  g_test_add_func ("/light/fall-off", test_fall_off);
  g_test_add_func ("/light/grid", test_grid);
  g_test_add_func ("/light/domain", test_domain);
  g_test_add_func ("/light/parallel", test_parallel);
  return g_test_run ();
}
