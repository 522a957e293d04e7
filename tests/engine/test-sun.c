/* test-sun.c - where the sun is, and how bright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Positions: Reda and Andreas, Solar position algorithm for solar radiation applications, NREL/TP-560-34302 (its worked example), and
 * values of an open implementation of it that an independent ephemeris library confirms to 0.001 degrees. True altitudes, sea level.
 */

#include "sun.h"

#include "check.h"

typedef struct
{
  const char *name;
  int         year, month, day;
  double      hours, latitude_deg, longitude_deg; /* universal time */
  double      altitude_deg, azimuth_deg;
} PlaceCase;

static const PlaceCase place_cases[] = {
  { "worked-example", 2003, 10, 17, 19.5 + 30.0 / 3600.0, 39.742476, -105.1786, 39.872046, 194.340241 },
  { "summer-noon", 2024, 6, 21, 12.0, 51.5074, -0.1278, 61.9244, 178.814 },
  { "winter-morning", 2024, 12, 21, 9.5, 51.5074, -0.1278, 8.2546, 145.919 },
  { "equinox-west", 2025, 3, 20, 14.0, 40.7128, -74.0060, 31.9355, 122.289 },
  { "south", 2025, 1, 15, 1.5, -33.8688, 151.2093, 75.1339, 33.041 },
  { "near-the-zenith", 2024, 9, 22, 5.0, 1.3521, 103.8198, 88.6057, 208.380 },
  { "high-north", 2024, 6, 21, 23.0, 64.1466, -21.9426, 2.3041, 326.059 },
  { "near-the-zenith-west", 2026, 3, 20, 17.25, -0.1807, -78.4678, 88.4234, 81.915 },
  { "autumn-east", 2026, 11, 5, 6.75, 35.6762, 139.6503, 9.9383, 242.355 },
};

/* The angle between the two directions, 0.02 degrees at the most: near the zenith azimuths mean little */
static void
test_place (gconstpointer data)
{
  const PlaceCase *c = data;
  LrSunPlace place = { 0 };
  double julian_day = NAN, off;
  LrVec3 is, should;

  g_assert_true (lr_julian_day (c->year, c->month, c->day, c->hours, &julian_day));
  g_assert_true (lr_sun_place (julian_day, c->latitude_deg * LR_DEG, c->longitude_deg * LR_DEG, &place));
  is = lr_sun_way (place.altitude_rad, place.azimuth_rad, 0.0);
  should = lr_sun_way (c->altitude_deg * LR_DEG, c->azimuth_deg * LR_DEG, 0.0);
  off = atan2 (lr_vec3_length (lr_vec3_cross (is, should)), lr_vec3_dot (is, should)) / LR_DEG;
  g_test_message ("%.4f, %.4f: %.4f off", place.altitude_rad / LR_DEG, place.azimuth_rad / LR_DEG, off);
  g_assert_cmpfloat (off, <, 0.02);
}

/* Meeus, examples 7.a and 12.a and table; the worked example above */
static void
test_julian_day (void)
{
  double day = NAN;

  g_assert_true (lr_julian_day (2000, 1, 1, 12.0, &day));
  assert_near (day, 2451545.0, 1e-9);
  g_assert_true (lr_julian_day (1987, 4, 10, 0.0, &day));
  assert_near (day, 2446895.5, 1e-9);
  g_assert_true (lr_julian_day (2003, 10, 17, 19.5 + 30.0 / 3600.0, &day));
  assert_near (day, 2452930.312847, 1e-6);
  g_assert_true (lr_julian_day (1992, 10, 13, 0.0, &day));
  assert_near (day, 2448908.5, 1e-9);
}

/* Meeus, example 25.a: 1992 October 13, 0h: declination -7 deg 47' 06". Equation of time of the worked example: 14.64 minutes */
static void
test_declination (void)
{
  LrSunPlace place;

  g_assert_true (lr_sun_place (2448908.5, 0.0, 0.0, &place));
  assert_near (place.declination_rad / LR_DEG, -(7.0 + 47.0 / 60.0 + 6.0 / 3600.0), 0.003);
  g_assert_true (lr_sun_place (2452930.312847, 0.0, 0.0, &place));
  assert_near (place.equation_min, 14.64, 0.02);
}

typedef struct
{
  const char *name;
  int         year, month, day;
  double      latitude_deg, longitude_deg, zone_h;
  double      rise_h, set_h; /* local, to the minute; NAN: not told */
} RiseCase;

/* United States Naval Observatory, tables of sunrise and sunset. The worked example above gives 6:12:43 and 17:20:19; it counts
 * days of universal time, in which the sunset at 0:20 is that of the local evening before */
static const RiseCase rise_cases[] = {
  { "worked-example", 2003, 10, 17, 39.742476, -105.1786, -7.0, 6.0 + 12.72 / 60.0, NAN },
  { "evening-before", 2003, 10, 16, 39.742476, -105.1786, -7.0, NAN, 17.0 + 20.32 / 60.0 },
  /* cases of the report's own, as carried in an open library's tests, universal time */
  { "report-35-north", 1994, 1, 2, 35.0, 0.0, 0.0, 7.0 + 8.2 / 60.0, 16.0 + 59.9167 / 60.0 },
  { "report-35-south", 1996, 7, 5, -35.0, 0.0, 0.0, 7.0 + 8.25 / 60.0, 17.0 + 1.0667 / 60.0 },
  { "report-35-south-summer", 2004, 12, 4, -35.0, 0.0, 0.0, 4.0 + 38.95 / 60.0, 19.0 + 2.0333 / 60.0 },
  { "january", 2015, 1, 2, 39.0, -105.0, -7.0, 7.0 + 19.0 / 60.0, 16.0 + 49.0 / 60.0 },
  { "april", 2015, 4, 2, 39.0, -105.0, -7.0, 5.0 + 43.0 / 60.0, 18.0 + 24.0 / 60.0 },
  { "august", 2015, 8, 2, 39.0, -105.0, -7.0, 5.0 + 1.0 / 60.0, 19.0 + 10.0 / 60.0 },
  { "december", 2015, 12, 2, 39.0, -105.0, -7.0, 7.0 + 1.0 / 60.0, 16.0 + 38.0 / 60.0 },
  { "april-east", 2015, 4, 2, 39.917, 116.383, 8.0, 5.0 + 58.0 / 60.0, 18.0 + 39.0 / 60.0 },
  { "december-east", 2015, 12, 2, 39.917, 116.383, 8.0, 7.0 + 17.0 / 60.0, 16.0 + 50.0 / 60.0 },
};

static void
test_rise (gconstpointer data)
{
  const RiseCase *c = data;
  double midnight = NAN, rise = NAN, set = NAN;

  g_assert_true (lr_julian_day (c->year, c->month, c->day, -c->zone_h, &midnight));
  g_assert_true (lr_sun_rise_set (midnight, c->latitude_deg * LR_DEG, c->longitude_deg * LR_DEG, &rise, &set));
  if (isfinite (c->rise_h))
    assert_near (24.0 * (rise - midnight), c->rise_h, 1.0 / 60.0);
  if (isfinite (c->set_h))
    assert_near (24.0 * (set - midnight), c->set_h, 1.0 / 60.0);
}

/* In a northern winter it does not rise, in summer it does not set */
static void
test_no_rise (void)
{
  double midnight = NAN, untouched = UNTOUCHED;

  g_assert_true (lr_julian_day (2024, 12, 21, 0.0, &midnight));
  g_assert_false (lr_sun_rise_set (midnight, 70.0 * LR_DEG, 0.0, &untouched, &untouched));
  g_assert_true (lr_julian_day (2024, 6, 21, 0.0, &midnight));
  g_assert_false (lr_sun_rise_set (midnight, 70.0 * LR_DEG, 0.0, &untouched, &untouched));
  g_assert_cmpfloat (untouched, ==, UNTOUCHED);
}

/* 1.02 / tan (h + 10.3 / (h + 5.11)) minutes of arc, by hand */
static void
test_refraction (void)
{
  assert_near (lr_sun_refraction_rad (10.0 * LR_DEG) / LR_DEG, 0.0901, 2e-4);
  assert_near (lr_sun_refraction_rad (5.0 * LR_DEG) / LR_DEG, 0.1612, 2e-4);
  assert_near (lr_sun_refraction_rad (0.0) / LR_DEG, 0.4830, 2e-4);
}

/* Opening in a south wall (y = 0), x 1.0 to 2.2, z 0.9 to 2.1, the room to the north of it; by hand */
static void
test_patch (void)
{
  static const struct { double altitude_deg, azimuth_deg; LrVec2 at_m[4]; } cases[] = {
    { 40.0, 200.0, { { 1.367, 1.008 }, { 2.567, 1.008 }, { 3.056, 2.352 }, { 1.856, 2.352 } } },
    { 15.0, 150.0, { { -0.679, 2.909 }, { 0.521, 2.909 }, { -1.719, 6.787 }, { -2.919, 6.787 } } },
  };
  const LrVec3 opening_m[] = { { 1.0, 0.0, 0.9 }, { 2.2, 0.0, 0.9 }, { 2.2, 0.0, 2.1 }, { 1.0, 0.0, 2.1 } };
  LrVec2 patch_m[4];

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_true (lr_sun_patch (opening_m, 4, lr_vec3 (0.0, -1.0, 0.0),
                                   lr_sun_way (cases[i].altitude_deg * LR_DEG, cases[i].azimuth_deg * LR_DEG, 0.0), 0.0, patch_m));
      for (int j = 0; j < 4; j++)
        assert_near_2 (patch_m[j], cases[i].at_m[j], 1e-3);
    }
  g_assert_false (lr_sun_patch (opening_m, 4, lr_vec3 (0.0, -1.0, 0.0), lr_sun_way (0.5, 0.0, 0.0), 0.0, patch_m)); /* from the north */
  g_assert_false (lr_sun_patch (opening_m, 4, lr_vec3 (0.0, -1.0, 0.0), lr_sun_way (-0.1, LR_PI, 0.0), 0.0, patch_m));

  /* north 90 degrees clockwise of up lies to the right: a sun in the south stands to the left */
  g_assert_cmpfloat (lr_sun_way (0.0, LR_PI, 0.5 * LR_PI).x, <, -0.999);
}

/* The formulas of the source worked by hand at 30 and 60 degrees */
static void
test_brightness (void)
{
  assert_near (lr_sun_direct_normal_lx (30.0 * LR_DEG), 83773.0, 1.0);
  assert_near (lr_sun_direct_normal_lx (60.0 * LR_DEG), 100046.0, 1.0);
  assert_near (lr_sky_clear_lx (30.0 * LR_DEG), 11760.0, 1.0);
  assert_near (lr_sky_clear_lx (60.0 * LR_DEG), 15224.0, 1.0);
  assert_near (lr_sky_overcast_lx (30.0 * LR_DEG), 10800.0, 1.0);
  assert_near (lr_sky_overcast_lx (60.0 * LR_DEG), 18487.0, 1.0);
  assert_near (lr_sun_direct_normal_lx (-0.1) + lr_sky_clear_lx (0.0) + lr_sky_overcast_lx (-1.0), 0.0, 1e-12);
}

static void
test_domain (void)
{
  LrSunPlace place = { .equation_min = UNTOUCHED };
  double untouched = UNTOUCHED;

  g_assert_false (lr_julian_day (1900, 1, 1, 0.0, &untouched));
  g_assert_false (lr_julian_day (2024, 13, 1, 0.0, &untouched));
  g_assert_false (lr_julian_day (2024, 1, 0, 0.0, &untouched));
  g_assert_false (lr_julian_day (2024, 2, 30, 0.0, &untouched));
  g_assert_false (lr_julian_day (2024, 1, 1, NAN, &untouched));
  g_assert_cmpfloat (untouched, ==, UNTOUCHED);
  g_assert_false (lr_sun_place (NAN, 0.0, 0.0, &place));
  g_assert_false (lr_sun_place (2451545.0, 2.0, 0.0, &place));
  g_assert_false (lr_sun_place (2451545.0, 0.0, HUGE_VAL, &place));
  g_assert_cmpfloat (place.equation_min, ==, UNTOUCHED);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sun/place", place_cases, test_place);
  g_test_add_func ("/sun/julian-day", test_julian_day);
  g_test_add_func ("/sun/declination", test_declination);
  add_rows ("/sun/rise", rise_cases, test_rise);
  g_test_add_func ("/sun/no-rise", test_no_rise);
  g_test_add_func ("/sun/refraction", test_refraction);
  g_test_add_func ("/sun/patch", test_patch);
  g_test_add_func ("/sun/brightness", test_brightness);
  g_test_add_func ("/sun/domain", test_domain);
  return g_test_run ();
}
