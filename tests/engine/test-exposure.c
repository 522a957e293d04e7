/* test-exposure.c - from light to signal, and shutters that suit the mains
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "exposure.h"

#include "check.h"

typedef struct
{
  const char *name;
  LrExposure  exposure;
  double      lux; /* expected */
  const char *source;
} IncidentCase;

static const IncidentCase incident_cases[] = {
  { "ev-0", { 1.0, 1.0, 100.0, 0.0 }, 2.5, "published table of exposure values: EV 0 at speed 100 is 2.5 lx" },
  { "ev-8", { 16.0, 1.0, 100.0, 0.0 }, 640.0, "published table of exposure values: EV 8 at speed 100 is 640 lx" },
  { "f8-1s", { 8.0, 1.0, 100.0, 0.0 }, 160.0, "documentation of an open color library" },
  { "f4", { 4.0, 0.02, 400.0, 0.0 }, 500.0, "N^2 C / (t S), by hand" },
  { "f2.8", { 2.8, 0.02, 800.0, 0.0 }, 122.5, "N^2 C / (t S), by hand" },
  { "f2.8-nd2", { 2.8, 0.02, 800.0, 2.0 }, 490.0, "two stops are four times the light" },
};

static void
test_incident (gconstpointer data)
{
  const IncidentCase *c = data;
  double lux = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_exposure_lx (&c->exposure, &lux));
  assert_within (lux, c->lux, 1e-9);
}

typedef struct
{
  const char *name;
  LrExposure  exposure;
  double      lux, reflectance;
  double      share, signal_pct; /* expected; share < 0: not told */
} LevelCase;

/* rho E t S / (C N^2), then ITU-R BT.709; by hand */
static const LevelCase level_cases[] = {
  { "grey", { 4.0, 0.02, 400.0, 0.0 }, 500.0, 0.18, 0.18, 40.9 },
  { "light-skin", { 4.0, 0.02, 400.0, 0.0 }, 500.0, 0.35, 0.35, 58.6 },
  { "white-card", { 4.0, 0.02, 400.0, 0.0 }, 500.0, 0.90, 0.90, 94.9 },
  { "bright", { 2.8, 0.02, 200.0, 0.0 }, 800.0, 0.35, 0.571, 75.5 },
  { "dark-skin-nd", { 2.8, 1.0 / 48.0, 800.0, 2.0 }, 1200.0, 0.10, 0.2551, 49.5 },
  { "clips", { 2.8, 0.02, 800.0, 0.0 }, 500.0, 0.90, -1.0, 100.0 },
};

static void
test_level (gconstpointer data)
{
  const LevelCase *c = data;
  double share = NAN, stops = NAN;

  g_assert_true (lr_exposure_share (&c->exposure, c->lux, c->reflectance, &share));
  if (c->share >= 0.0)
    assert_within (share, c->share, 1e-3);
  assert_near (100.0 * lr_signal_of_share (share), c->signal_pct, 0.1);
  g_assert_true (lr_exposure_stops_to (&c->exposure, c->lux, c->reflectance, 2.0 * share, &stops));
  assert_near (stops, 1.0, 1e-12);
}

/* ITU-R BT.709-6, item 1.2; 10 bit narrow range is 64 + 876 V */
static void
test_transfer (void)
{
  static const double share[] = { 0.01, 0.018, 0.10, 0.18, 0.35, 0.50, 0.90, 1.0 };
  static const double signal_pct[] = { 4.50, 8.1, 29.09, 40.90, 58.62, 70.55, 94.91, 100.0 };
  static const double back_pct[] = { 40.0, 60.0, 70.0 }, back[] = { 0.1730, 0.3658, 0.4924 };

  for (gsize i = 0; i < G_N_ELEMENTS (share); i++)
    assert_near (100.0 * lr_signal_of_share (share[i]), signal_pct[i], 0.05);
  for (gsize i = 0; i < G_N_ELEMENTS (back); i++)
    assert_within (lr_share_of_signal (0.01 * back_pct[i]), back[i], 5e-3);
  for (double v = 0.0; v <= 1.0; v += 0.01)
    assert_near (lr_signal_of_share (lr_share_of_signal (v)), v, 1e-3); /* the standard's two parts meet to that */
}

/* ISO 5-2: 0.3 is a stop, nearly; 3.0 passes a thousandth */
static void
test_filters (void)
{
  double value = NAN;

  g_assert_true (lr_nd_stops (0.3, &value));
  assert_near (value, 1.0, 0.005);
  g_assert_true (lr_nd_stops (3.0, &value));
  assert_near (value, 9.97, 0.01);
  g_assert_true (lr_nd_density (2.0, &value));
  assert_near (value, 0.6, 0.005);
  g_assert_true (lr_nd_density (6.0, &value));
  assert_near (value, 1.8, 0.01);
  g_assert_true (lr_t_stop (2.8, 0.85, &value));
  assert_within (value, 3.04, 2e-3);
  g_assert_true (lr_t_stop (4.0, 0.80, &value));
  assert_within (value, 4.47, 2e-3);
  g_assert_true (lr_shutter_s (LR_PI, 24.0, &value));
  assert_within (value, 1.0 / 48.0, 1e-9);
  g_assert_true (lr_shutter_s (LR_PI, 30000.0 / 1001.0, &value));
  assert_within (value, 1.0 / 59.94, 1e-4);
  g_assert_true (lr_shutter_rad (1.0 / 48.0, 24.0, &value));
  assert_near (value / LR_DEG, 180.0, 1e-9);
  g_assert_true (lr_shutter_rad (0.01, 24.0, &value));
  assert_near (value / LR_DEG, 86.4, 1e-9);
}

typedef struct
{
  const char *name;
  double      mains_hz, fps, angle_deg;
  LrFlicker   grade;
  double      pulses, beat_hz, ripple_pct; /* expected; < 0: not told */
  double      nearest_deg;
} FlickerCase;

/* n = 2 f t pulses, k = 2 f / fps from picture to picture, by hand; film practice: 25 pictures a second at 60 Hz suit 75, 150, 225 and 300
 * degrees and no others */
static const FlickerCase flicker_cases[] = {
  { "25-50", 50.0, 25.0, 180.0, LR_FLICKER_NONE, 2.0, 0.0, 0.0, 180.0 },
  { "30-60", 60.0, 30.0, 180.0, LR_FLICKER_NONE, 2.0, 0.0, 0.0, 180.0 },
  { "29.97-60", 60.0, 30000.0 / 1001.0, 180.0, LR_FLICKER_NONE, 2.002, 0.0, -1.0, 179.82 },
  { "24-60", 60.0, 24.0, 180.0, LR_FLICKER_BANDS, 2.5, 0.0, 12.7, 216.0 },
  { "24-50", 50.0, 24.0, 180.0, LR_FLICKER_BEATS, 2.083, 4.0, 3.95, 172.8 },
  { "25-60", 60.0, 25.0, 180.0, LR_FLICKER_BEATS, 2.4, 5.0, 12.6, 150.0 },
  { "25-60-225", 60.0, 25.0, 225.0, LR_FLICKER_NONE, 3.0, 0.0, 0.0, 225.0 },
  { "30-50", 50.0, 30.0, 180.0, LR_FLICKER_BEATS, 1.667, 10.0, 16.5, 216.0 },
  { "23.976-60", 60.0, 24000.0 / 1001.0, 180.0, LR_FLICKER_BEATS, 2.5025, 0.12, -1.0, 215.78 },
  { "short", 50.0, 50.0, 20.0, LR_FLICKER_BANDS, 0.111, 0.0, -1.0, 180.0 },
};

static void
test_flicker (gconstpointer data)
{
  const FlickerCase *c = data;
  double shutter_s = NAN;
  LrFlickerReading reading;

  g_assert_true (lr_shutter_s (c->angle_deg * LR_DEG, c->fps, &shutter_s));
  g_assert_true (lr_flicker (c->mains_hz, c->fps, shutter_s, &reading));
  g_assert_cmpint (reading.grade, ==, c->grade);
  assert_near (reading.pulses, c->pulses, 1e-3);
  assert_near (reading.beat_hz, c->beat_hz, 0.005);
  if (c->ripple_pct >= 0.0)
    assert_near (100.0 * reading.ripple, c->ripple_pct, 0.1);
  assert_near (360.0 * c->fps * reading.nearest_s, c->nearest_deg, 0.01);
}

typedef struct
{
  const char *name;
  double      mains_hz, fps, least_deg, most_deg, wanted_deg;
  double      steady_deg; /* expected; < 0: there is none */
} SteadyCase;

/* Published practice for cameras with a turning shutter: 24 pictures a second on 50 Hz suit 86.4, 172.8, 259.2 and 345.6 degrees, 30 on
 * 50 Hz 108, 216 and 324, 25 on 60 Hz 75, 150, 225 and 300, 24 on 60 Hz multiples of 72, 50 on 50 Hz 180 and 360 */
static const SteadyCase steady_cases[] = {
  { "24-50", 50.0, 24.0, 90.0, 270.0, 180.0, 172.8 },
  { "24-50-short", 50.0, 24.0, 80.0, 270.0, 45.0, 86.4 },
  { "24-50-short-out", 50.0, 24.0, 90.0, 270.0, 45.0, 172.8 },
  { "24-50-long", 50.0, 24.0, 90.0, 270.0, 360.0, 259.2 },
  { "25-60", 60.0, 25.0, 90.0, 270.0, 180.0, 150.0 },
  { "25-60-long", 60.0, 25.0, 90.0, 270.0, 260.0, 225.0 },
  { "30-50", 50.0, 30.0, 90.0, 270.0, 180.0, 216.0 },
  { "24-60", 60.0, 24.0, 90.0, 270.0, 180.0, 144.0 }, /* 216 is as near */
  { "23.976-60", 60.0, 24000.0 / 1001.0, 90.0, 270.0, 180.0, 143.86 },
  { "whole-picture", 50.0, 50.0, 90.0, 400.0, 400.0, 360.0 },
  { "between-two", 50.0, 50.0, 190.0, 350.0, 270.0, -1.0 },
  { "too-fast", 50.0, 120.0, 90.0, 400.0, 180.0, -1.0 },
};

static void
test_steady (gconstpointer data)
{
  const SteadyCase *c = data;
  double per_deg = 1.0 / (360.0 * c->fps), shutter_s = UNTOUCHED;
  gboolean is_there = lr_steady_shutter_s (c->mains_hz, c->fps, c->least_deg * per_deg, c->most_deg * per_deg, c->wanted_deg * per_deg, &shutter_s);
  LrFlickerReading reading;

  g_assert_cmpint (is_there, ==, c->steady_deg > 0.0);
  if (!is_there)
    {
      g_assert_cmpfloat (shutter_s, ==, UNTOUCHED);
      return;
    }
  assert_near (shutter_s / per_deg, c->steady_deg, 0.01);
  g_assert_true (lr_flicker (c->mains_hz, c->fps, shutter_s, &reading));
  g_assert_cmpint (reading.grade, ==, LR_FLICKER_NONE);
}

static void
test_domain (void)
{
  LrFlickerReading reading = { .beat_hz = UNTOUCHED };
  double untouched = UNTOUCHED;

  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      LrExposure exposure = { not_positive[i], 0.02, 400.0, 0.0 };

      g_assert_false (lr_exposure_lx (&exposure, &untouched));
      g_assert_false (lr_shutter_s (not_positive[i], 25.0, &untouched));
      g_assert_false (lr_t_stop (2.8, not_positive[i], &untouched));
      g_assert_false (lr_flicker (not_positive[i], 25.0, 0.02, &reading));
      g_assert_false (lr_flicker (50.0, not_positive[i], 0.02, &reading));
      g_assert_false (lr_flicker (50.0, 25.0, not_positive[i], &reading));
      g_assert_false (lr_shutter_rad (not_positive[i], 25.0, &untouched));
      g_assert_false (lr_shutter_rad (0.02, not_positive[i], &untouched));
      g_assert_false (lr_steady_shutter_s (not_positive[i], 25.0, 0.01, 0.03, 0.02, &untouched));
      g_assert_false (lr_steady_shutter_s (50.0, not_positive[i], 0.01, 0.03, 0.02, &untouched));
      g_assert_false (lr_steady_shutter_s (50.0, 25.0, not_positive[i], 0.03, 0.02, &untouched));
    }
  g_assert_false (lr_exposure_share (&level_cases[0].exposure, 500.0, 1.01, &untouched));
  g_assert_false (lr_exposure_stops_to (&level_cases[0].exposure, 0.0, 0.5, 0.4, &untouched));
  g_assert_false (lr_nd_stops (-0.1, &untouched));
  g_assert_false (lr_nd_density (-0.1, &untouched));
  g_assert_cmpfloat (untouched, ==, UNTOUCHED);
  g_assert_cmpfloat (reading.beat_hz, ==, UNTOUCHED);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/exposure/incident", incident_cases, test_incident);
  add_rows ("/exposure/level", level_cases, test_level);
  g_test_add_func ("/exposure/transfer", test_transfer);
  g_test_add_func ("/exposure/filters", test_filters);
  add_rows ("/exposure/flicker", flicker_cases, test_flicker);
  add_rows ("/exposure/steady", steady_cases, test_steady);
  g_test_add_func ("/exposure/domain", test_domain);
  return g_test_run ();
}
