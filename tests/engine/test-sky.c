/* test-sky.c - how bright the sky is from place to place, and what color daylight has
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "sky.h"

/* The clear sky as CIE No. 22 (1973) wrote it before it became type 12, after Kittler; from memory */
static double
clear_of_1973 (double sun_rad,
               double altitude_rad,
               double off_rad)
{
  double zenith_rad = 0.5 * LR_PI - sun_rad;
  double from_sun = acos (sin (sun_rad) * sin (altitude_rad) + cos (sun_rad) * cos (altitude_rad) * cos (off_rad));

  return (0.91 + 10.0 * exp (-3.0 * from_sun) + 0.45 * cos (from_sun) * cos (from_sun)) * (1.0 - exp (-0.32 / sin (altitude_rad)))
         / ((0.91 + 10.0 * exp (-3.0 * zenith_rad) + 0.45 * cos (zenith_rad) * cos (zenith_rad)) * (1.0 - exp (-0.32)));
}

static void
test_luminance (void)
{
  for (int sun = 10; sun <= 70; sun += 20)
    for (int up = 5; up < 90; up += 17)
      for (int off = 0; off <= 180; off += 45)
        assert_within (lr_sky_luminance (LR_SKY_CLEAR, sun * LR_DEG, up * LR_DEG, off * LR_DEG),
                       clear_of_1973 (sun * LR_DEG, up * LR_DEG, off * LR_DEG), 0.002);

  /* three times as bright overhead as at the horizon, whatever the sun does: Moon and Spencer (1942) */
  assert_near (lr_sky_luminance (LR_SKY_OVERCAST, 0.5, 0.0, 1.0), 1.0 / 3.0, 1e-9);
  assert_near (lr_sky_luminance (LR_SKY_OVERCAST, 0.5, 30.0 * LR_DEG, 2.0), 2.0 / 3.0, 1e-9);
}

/* The overcast sky gives an upright face (pi / 6 + 4 / 9) / (7 pi / 9) = .396 of what level ground has, closed form. The
 * clear one is summed anew, a degree at a time */
static void
test_upright (void)
{
  for (int off = 0; off <= 180; off += 60)
    assert_within (lr_sky_upright_share (LR_SKY_OVERCAST, 0.5, off * LR_DEG), 0.396, 0.015);

  for (int sun = 10; sun <= 60; sun += 25)
    for (int off = 0; off <= 180; off += 45)
      {
        double level = 0.0, upright = 0.0;

        for (double up = 0.5; up < 90.0; up += 1.0)
          for (double round = 0.5; round < 360.0; round += 1.0)
            {
              double share = clear_of_1973 (sun * LR_DEG, up * LR_DEG, round * LR_DEG) * cos (up * LR_DEG);

              level += share * sin (up * LR_DEG);
              upright += share * cos (up * LR_DEG) * fmax (0.0, cos ((round - off) * LR_DEG));
            }
        assert_within (lr_sky_upright_share (LR_SKY_CLEAR, sun * LR_DEG, off * LR_DEG), upright / level, 0.02);
      }
}

/* Air mass: 1 overhead, 2 at 30 degrees (closed form for a flat earth), 38 at the horizon (Kasten and Young). Color: CIE's illuminant B,
 * direct sunlight at noon, is 4874 K (CIE 15), for the height that the sun has at noon half-way from equator to pole, some 45 degrees;
 * and the lower the sun, the warmer */
static void
test_sun (void)
{
  assert_within (lr_air_mass (90.0 * LR_DEG), 1.0, 0.001);
  assert_within (lr_air_mass (30.0 * LR_DEG), 2.0, 0.005);
  assert_within (lr_air_mass (0.0), 38.0, 0.01);
  assert_near (1e6 / lr_sun_kelvin (45.0 * LR_DEG), 1e6 / 4874.0, 10.0);
  for (int h = 0; h < 90; h += 5)
    g_assert_cmpfloat (lr_sun_kelvin (h * LR_DEG), <=, lr_sun_kelvin ((h + 5.0) * LR_DEG));
  g_assert_cmpfloat (lr_sun_kelvin (0.0), >=, 2000.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sky/luminance", test_luminance);
  g_test_add_func ("/sky/upright", test_upright);
  g_test_add_func ("/sky/sun", test_sun);
  return g_test_run ();
}
