/* test-color.c - the color of white light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "color.h"

#include "check.h"

typedef struct
{
  const char *name;
  double      from_k, to_k;
  double      mired, tolerance; /* expected */
  const char *source;
} ShiftCase;

static const ShiftCase shift_cases[] = {
  { "3200-to-5700", 3200.0, 5700.0, -137.06, 0.01, "the usual -137 of a daylight filter, 10^6 / 5700 - 10^6 / 3200" },
  { "5600-to-3200", 5600.0, 3200.0, 133.929, 0.001, "by hand" },
  { "3200-to-5600", 3200.0, 5600.0, -133.929, 0.001, "by hand" },
  { "5600-by-159", 5600.0, 2962.3, 159.0, 0.01, "published: 159 takes 5600 K to about 2950 K" },
  { "7000-by-159", 7000.0, 3312.8, 159.0, 0.01, "published: 159 takes 7000 K to about 3300 K" },
};

static void
test_shift (gconstpointer data)
{
  const ShiftCase *c = data;
  double mired = NAN, kelvin = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_mired_shift (c->from_k, c->to_k, &mired));
  assert_near (mired, c->mired, c->tolerance);
  g_assert_true (lr_shifted_k (c->from_k, c->mired, &kelvin));
  assert_near (kelvin, c->to_k, 1.0);
}

typedef struct
{
  const char *name;
  bool      (*locus) (double, LrChromaticity *);
  double      kelvin;
  double      x, y, tolerance;
  const char *source;
} LocusCase;

static const LocusCase locus_cases[] = {
  { "planck-6504", lr_planck_locus, 6504.389, 0.313426, 0.323596, 1e-6, "an open color library's documentation of the same cubics" },
  { "planck-2000", lr_planck_locus, 2000.0, 0.52668, 0.41330, 6e-4, "Planck's law over the CIE 1931 observer, 1 nm" },
  { "planck-3200", lr_planck_locus, 3200.0, 0.42336, 0.39895, 6e-4, "Planck's law over the CIE 1931 observer, 1 nm" },
  { "planck-5600", lr_planck_locus, 5600.0, 0.33020, 0.33908, 6e-4, "Planck's law over the CIE 1931 observer, 1 nm" },
  { "a", lr_planck_locus, 2855.5, 0.44758, 0.40745, 6e-4, "CIE 15, illuminant A" },
  { "d50", lr_daylight_locus, 5002.8, 0.34567, 0.35850, 1.5e-4, "CIE 15, illuminant D50" },
  { "d55", lr_daylight_locus, 5503.1, 0.33243, 0.34754, 1.5e-4, "CIE 15, illuminant D55" },
  { "d65", lr_daylight_locus, 6503.6, 0.31272, 0.32903, 1.5e-4, "CIE 15, illuminant D65" },
  { "d75", lr_daylight_locus, 7504.2, 0.29904, 0.31497, 1.5e-4, "CIE 15, illuminant D75" },
  { "white-is-planck", lr_white, 3200.0, 0.42336, 0.39895, 6e-4, "Planck's law over the CIE 1931 observer, 1 nm" },
  { "white-is-daylight", lr_white, 6503.6, 0.31272, 0.32903, 1.5e-4, "CIE 15, illuminant D65" },
};

static void
test_locus (gconstpointer data)
{
  const LocusCase *c = data;
  LrChromaticity at = { NAN, NAN };

  g_test_message ("%s", c->source);
  g_assert_true (c->locus (c->kelvin, &at));
  assert_near (at.x, c->x, c->tolerance);
  assert_near (at.y, c->y, c->tolerance);
}

typedef struct
{
  const char *name;
  double      x, y;
  double      kelvin;
} InverseCase;

/* McCamy's polynomial at the CIE's tabled illuminants, and the value that is commonly printed for D65 */
static const InverseCase inverse_cases[] = {
  { "a", 0.44758, 0.40745, 2857.1 },
  { "d50", 0.34567, 0.35850, 5002.1 },
  { "d65", 0.31272, 0.32903, 6503.8 },
  { "d65-rounded", 0.3127, 0.3290, 6505.08 },
};

static void
test_inverse (gconstpointer data)
{
  const InverseCase *c = data;
  double kelvin = NAN;

  g_assert_true (lr_correlated_k ((LrChromaticity) { c->x, c->y }, &kelvin));
  assert_near (kelvin, c->kelvin, 0.1);
}

/* Along the loci the way there and back: within 1 % where McCamy's polynomial is said to be good */
static void
test_round_trip (void)
{
  for (double kelvin = 2700.0; kelvin <= 6500.0; kelvin += 100.0)
    {
      LrChromaticity at;
      double back = NAN;

      g_assert_true (lr_white (kelvin, &at));
      g_assert_true (lr_correlated_k (at, &back));
      assert_within (back, kelvin, 0.01);
    }
}

/* By tristimulus values: equal light of two whites lies between them, nearer to the one with the smaller y; alone it is itself */
static void
test_mix (void)
{
  static const double kelvin[] = { 3200.0, 5600.0 }, even[] = { 500.0, 500.0 }, one[] = { 0.0, 700.0 };
  LrChromaticity warm, cool, mix = { NAN, NAN };
  double x, y;

  lr_white (3200.0, &warm);
  lr_white (5600.0, &cool);
  g_assert_true (lr_mix_white (kelvin, even, 2, &mix));
  /* X = x / y, Z = (1 - x - y) / y for Y = 1 each */
  x = (warm.x / warm.y + cool.x / cool.y) / (1.0 / warm.y + 1.0 / cool.y);
  y = 2.0 / (1.0 / warm.y + 1.0 / cool.y);
  assert_near (mix.x, x, 1e-12);
  assert_near (mix.y, y, 1e-12);
  g_assert_cmpfloat (mix.x, <, warm.x);
  g_assert_cmpfloat (mix.x, >, cool.x);
  g_assert_true (lr_mix_white (kelvin, one, 2, &mix));
  assert_near (mix.x, cool.x, 1e-12);
  assert_near (mix.y, cool.y, 1e-12);
}

/* D65 is the white of sRGB (IEC 61966-2-1); warm light has no more green than red, and less blue */
static void
test_tint (void)
{
  double r = NAN, g = NAN, b = NAN;
  LrChromaticity warm;

  g_assert_true (lr_tint ((LrChromaticity) { 0.3127, 0.3290 }, &r, &g, &b));
  assert_near (r, 1.0, 2e-3);
  assert_near (g, 1.0, 2e-3);
  assert_near (b, 1.0, 2e-3);
  lr_white (3200.0, &warm);
  g_assert_true (lr_tint (warm, &r, &g, &b));
  assert_near (r, 1.0, 1e-12);
  g_assert_cmpfloat (g, <, r);
  g_assert_cmpfloat (b, <, g);
}

static void
test_domain (void)
{
  LrChromaticity at = { UNTOUCHED, UNTOUCHED };
  double untouched = UNTOUCHED, minus = -1.0, three = 3200.0;

  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_mired (not_positive[i], &untouched));
      g_assert_false (lr_mired_shift (3200.0, not_positive[i], &untouched));
      g_assert_false (lr_shifted_k (not_positive[i], 100.0, &untouched));
      g_assert_false (lr_white (not_positive[i], &at));
    }
  g_assert_false (lr_shifted_k (5600.0, -180.0, &untouched));
  g_assert_false (lr_correlated_k ((LrChromaticity) { 0.25, 0.25 }, &untouched)); /* bluer than 10000 K */
  g_assert_false (lr_daylight_locus (3999.0, &at));
  g_assert_false (lr_planck_locus (25001.0, &at));
  g_assert_false (lr_mix_white (&three, &minus, 1, &at));
  g_assert_false (lr_mix_white (&three, &minus, 0, &at));
  g_assert_cmpfloat (untouched, ==, UNTOUCHED);
  g_assert_cmpfloat (at.x, ==, UNTOUCHED);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/color/shift", shift_cases, test_shift);
  add_rows ("/color/locus", locus_cases, test_locus);
  add_rows ("/color/inverse", inverse_cases, test_inverse);
  g_test_add_func ("/color/round-trip", test_round_trip);
  g_test_add_func ("/color/mix", test_mix);
  g_test_add_func ("/color/tint", test_tint);
  g_test_add_func ("/color/domain", test_domain);
  return g_test_run ();
}
