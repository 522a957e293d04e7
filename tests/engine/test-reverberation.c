/* test-reverberation.c - how long a room rings, and how far a voice carries over it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "reverberation.h"

#include "check.h"

#define FOOT_M 0.3048
#define N_BANDS 6

/* Everest, Master Handbook of Acoustics, 4th ed., p. 163, reverberation example 2: a room of 23.3 x 16 x 10 ft with a concrete floor,
 * gypsum board and acoustical tile, in sabins of a square foot; T = 0.049 V / A there */
static const double everest_sabins[N_BANDS] = { 370.4, 214.8, 328.8, 339.5, 336.8, 329.4 };
static const double everest_s[N_BANDS] = { 0.49, 0.85, 0.56, 0.54, 0.54, 0.55 };
static const double everest_surfaces_ft2[] = { 373.0, 1159.0, 340.0 };
static const double everest_coefficients[][N_BANDS] = {
  { .01, .01, .015, .02, .02, .02 }, { .29, .10, .05, .04, .07, .09 }, { .09, .28, .78, .84, .73, .64 },
};

static void
test_everest (void)
{
  for (int band = 0; band < N_BANDS; band++)
    {
      double sabins = 0.0, time_s = NAN;

      for (gsize i = 0; i < G_N_ELEMENTS (everest_surfaces_ft2); i++)
        sabins += everest_surfaces_ft2[i] * everest_coefficients[i][band];
      assert_near (sabins, everest_sabins[band], 0.1);
      g_assert_true (lr_reverberation_sabine_s (23.3 * 16.0 * 10.0 * FOOT_M * FOOT_M * FOOT_M, sabins * FOOT_M * FOOT_M, 0.0, &time_s));
      assert_near (time_s, everest_s[band], 0.01);
    }
}

typedef struct
{
  const char *name;
  double      volume_m3, surface_m2, surfaces_m2, objects_m2, air_db_m; /* in */
  double      sabine_s, eyring_s;                                       /* expected */
  const char *source;
} TimeCase;

static const TimeCase time_cases[] = {
  { "everest-metric", 105.57, 142.33, 30.54, 0, 0, 0.556, 0.494, "the same example in metres; 0.161 V / A and Eyring by hand" },
  { "school", 480, 376, 25.76, 0, 0, 3.0, 2.896, "school question bank: 480 m3 and 3.0 s take 25.76 m2; Eyring by hand" },
  { "bare", 50, 85, 5.24, 0, 0, 1.536, 1.488, "0.161 V / A and Eyring by hand" },
  { "bare-with-air", 50, 85, 5.24, 0, 0.00273, 1.500, 1.455, "the same with 4 m V, m = 2.73 dB/km / 4.343" },
  { "bare-with-air-4k", 50, 85, 5.80, 0, 0.0297, 1.123, 1.096, "the same at 4 kHz, 29.7 dB/km; Eyring by hand" },
  { "furnished", 50, 85, 13.55, 0, 0, 0.594, 0.545, "0.161 V / A and Eyring by hand" },
  { "objects", 50, 85, 0, 8.05, 0, 1.0, 1.0, "0.161 V / A: objects stay outside the logarithm" },
};

static void
test_time (gconstpointer data)
{
  const TimeCase *c = data;
  double sabine_s = NAN, eyring_s = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_reverberation_sabine_s (c->volume_m3, c->surfaces_m2 + c->objects_m2, c->air_db_m, &sabine_s));
  g_assert_true (lr_reverberation_eyring_s (c->volume_m3, c->surface_m2, c->surfaces_m2, c->objects_m2, c->air_db_m, &eyring_s));
  assert_within (sabine_s, c->sabine_s, 0.005);
  assert_within (eyring_s, c->eyring_s, 0.005);
}

/* Sabine is longer than Eyring by a factor of -ln (1 - a) / a: 5 % at a = 0.1, 12 % at 0.2 (closed form) */
static void
test_sabine_over_eyring (void)
{
  static const double cases[][2] = { { 0.1, 1.0536 }, { 0.2, 1.1157 }, { 0.5, 1.3863 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double sabine_s = NAN, eyring_s = NAN;

      g_assert_true (lr_reverberation_sabine_s (60.0, 100.0 * cases[i][0], 0.0, &sabine_s));
      g_assert_true (lr_reverberation_eyring_s (60.0, 100.0, 100.0 * cases[i][0], 0.0, 0.0, &eyring_s));
      assert_near (sabine_s / eyring_s, cases[i][1], 1e-4);
    }
}

typedef struct
{
  const char *name;
  double      frequency_hz, celsius, humidity_share, loss_db_km; /* expected */
  double      share;
  const char *source;
} AirCase;

static const AirCase air_cases[] = {
  { "4k-20-70", 3981.07, 20, 0.7, 22.9, 0.003, "ISO 9613-2:1996, table 2 (the figure from memory)" },
  { "4k-10-70", 3981.07, 10, 0.7, 32.8, 0.003, "ISO 9613-2:1996, table 2 (the figure from memory)" },
  { "500-20-50", 500, 20, 0.5, 2.73, 0.01, "ISO 9613-1:1993, its formula worked by hand" },
  { "1k-20-50", 1000, 20, 0.5, 4.66, 0.01, "ISO 9613-1:1993, its formula worked by hand" },
  { "8k-20-30", 8000, 20, 0.3, 168, 0.01, "ISO 9613-1:1993, its formula worked by hand" },
};

static void
test_air (gconstpointer data)
{
  const AirCase *c = data;
  double loss_db_m = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_air_loss_db_m (c->frequency_hz, c->celsius, c->humidity_share, &loss_db_m));
  assert_within (1000.0 * loss_db_m, c->loss_db_km, c->share);
}

typedef struct
{
  const char *name;
  double      directivity, volume_m3, time_s, distance_m; /* expected */
  const char *source;
} DistanceCase;

static const DistanceCase distance_cases[] = {
  { "talker-hall", 2, 500, 1.2, 1.65, "public calculator page: 0.057 sqrt (Q V / T)" },
  { "omni-hall", 1, 500, 1.2, 1.16, "public calculator page" },
  { "omni-room", 1, 50, 0.5, 0.570, "0.057 sqrt (V / T), Kuttruff; the constant is in print from 0.0564 to 0.057" },
};

static void
test_distance (gconstpointer data)
{
  const DistanceCase *c = data;
  double absorption_m2 = NAN, distance_m = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_reverberation_area_m2 (c->volume_m3, c->time_s, &absorption_m2));
  g_assert_true (lr_critical_distance_m (c->directivity, absorption_m2, &distance_m));
  assert_within (distance_m, c->distance_m, 0.01);
}

/* What takes a time gives it back */
static void
test_area (void)
{
  double absorption_m2 = NAN, time_s = NAN;

  g_assert_true (lr_reverberation_area_m2 (480.0, 3.0, &absorption_m2));
  assert_within (absorption_m2, 25.76, 0.005); /* school question bank */
  g_assert_true (lr_reverberation_sabine_s (480.0, absorption_m2, 0.0, &time_s));
  assert_near (time_s, 3.0, 1e-9);
}

static void
test_domain (void)
{
  double value = UNTOUCHED;

  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_reverberation_sabine_s (not_positive[i], 1.0, 0.0, &value));
      g_assert_false (lr_reverberation_eyring_s (50.0, not_positive[i], 0.0, 1.0, 0.0, &value));
      g_assert_false (lr_reverberation_area_m2 (50.0, not_positive[i], &value));
      g_assert_false (lr_critical_distance_m (1.0, not_positive[i], &value));
      g_assert_false (lr_air_loss_db_m (not_positive[i], 20.0, 0.5, &value));
    }
  g_assert_false (lr_reverberation_sabine_s (50.0, 0.0, 0.0, &value));
  g_assert_false (lr_reverberation_eyring_s (50.0, 85.0, 85.0, 0.0, 0.0, &value));
  g_assert_false (lr_reverberation_eyring_s (50.0, 85.0, NAN, 0.0, 0.0, &value));
  g_assert_false (lr_air_loss_db_m (1000.0, 20.0, 1.5, &value));
  assert_near (value, UNTOUCHED, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/reverberation/everest", test_everest);
  add_rows ("/reverberation/time", time_cases, test_time);
  g_test_add_func ("/reverberation/sabine-over-eyring", test_sabine_over_eyring);
  add_rows ("/reverberation/air", air_cases, test_air);
  add_rows ("/reverberation/distance", distance_cases, test_distance);
  g_test_add_func ("/reverberation/area", test_area);
  g_test_add_func ("/reverberation/domain", test_domain);

  return g_test_run ();
}
