/* test-boom_geometry.c - where a boom may hang, and what balances it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "boom_geometry.h"

#include "check.h"

typedef struct
{
  const char *name;
  double      lens_m, half_image_m, focal_m, tilt_deg, mouth_m, away_m, up_deg;
  double      distance_m; /* expected */
} HangCase;

/* Similar triangles by hand: an image 13.365 mm high, 5 cm over the frame's edge */
static const HangCase hang_cases[] = {
  { "level-30", 1.20, 0.0066825, 0.050, 0, 1.15, 2.50, 30, 0.705 },
  { "level-45", 1.20, 0.0066825, 0.050, 0, 1.15, 2.50, 45, 0.542 },
  { "level-60", 1.20, 0.0066825, 0.050, 0, 1.15, 2.50, 60, 0.465 },
  { "level-90", 1.20, 0.0066825, 0.050, 0, 1.15, 2.50, 90, 0.434 },
  { "wide-tilted", 1.20, 0.0066825, 0.035, -2, 1.15, 2.50, 45, 0.597 },
  { "high-lens", 1.45, 0.0066825, 0.035, -5, 1.15, 2.00, 45, 0.710 },
};

static void
test_hang (gconstpointer data)
{
  const HangCase *c = data;
  LrBoomFrame frame = { c->lens_m, tan (c->tilt_deg * LR_DEG + atan (c->half_image_m / c->focal_m)), c->mouth_m, c->away_m, 0.05 };
  double distance_m = NAN;

  g_assert_true (lr_boom_least_m (&frame, c->up_deg * LR_DEG, &distance_m));
  assert_near (distance_m, c->distance_m, 0.002);
}

/* 0.35 kg 1.6 m out and a pole of 0.8 kg whose middle is 0.7 m out take 2.80 kg 0.4 m behind: moments by hand. With the weight there they
 * are nothing */
static void
test_counterweight (void)
{
  double weight_kg = NAN;

  g_assert_true (lr_boom_counterweight_kg (0.8, 0.7, 0.35, 1.6, 0.4, &weight_kg));
  assert_near (weight_kg, 2.80, 1e-9);
  g_assert_true (lr_boom_counterweight_kg (0.8, -0.7, 0.1, 0.5, 0.4, &weight_kg));
  assert_near (weight_kg, 0.0, 1e-12);
}

static void
test_domain (void)
{
  LrBoomFrame over = { 1.0, 0.1, 1.6, 2.0, 0.05 }, down = { 1.6, -0.5, 1.0, 0.5, 0.05 };
  double value = UNTOUCHED;

  g_assert_false (lr_boom_least_m (&over, 0.8, &value));
  g_assert_false (lr_boom_least_m (&down, 0.3, &value));
  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_boom_counterweight_kg (0.8, 0.7, 0.35, not_positive[i], 0.4, &value));
      g_assert_false (lr_boom_counterweight_kg (0.8, 0.7, 0.35, 1.6, not_positive[i], &value));
    }
  g_assert_false (lr_boom_counterweight_kg (NAN, 0.7, 0.35, 1.6, 0.4, &value));
  assert_near (value, UNTOUCHED, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/boom-geometry/hang", hang_cases, test_hang);
  g_test_add_func ("/boom-geometry/counterweight", test_counterweight);
  g_test_add_func ("/boom-geometry/domain", test_domain);

  return g_test_run ();
}
