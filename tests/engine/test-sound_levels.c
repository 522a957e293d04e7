/* test-sound_levels.c - levels of voices and noises in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sound_levels.h"

#include "check.h"
#include "pattern.h"
#include "reverberation.h"

typedef struct
{
  const char *name;
  double      levels_db[4];
  size_t      n;
  double      sum_db; /* expected */
  const char *source;
} SumCase;

static const SumCase sum_cases[] = {
  { "alike", { 90, 90 }, 2, 93.01, "Davis and Patronis, Sound System Engineering, 2.15" },
  { "six-apart", { 90, 96 }, 2, 96.97, "Davis and Patronis, Sound System Engineering, 2.15" },
  { "five-apart", { 80, 85 }, 2, 86.19, "lecture on acoustics, University of Parma" },
  { "four-alike", { 40, 40, 40, 40 }, 4, 46.02, "closed form: 10 lg 4" },
  { "with-silence", { 40, -HUGE_VAL }, 2, 40.0, "closed form" },
};

static void
test_sum (gconstpointer data)
{
  const SumCase *c = data;

  g_test_message ("%s", c->source);
  assert_near (lr_level_sum_db (c->levels_db, c->n), c->sum_db, 0.01);
}

/* ANSI S3.5-1997: spectrum levels of a normal voice in thirds of an octave, 160 Hz to 8 kHz, with the bandwidths 15.65, 16.65 ... dB,
 * sum to the standard's own 62.35 dB; with IEC 61672 A-weights (table 3) they make 59.2 dB(A) */
static const double ansi_normal_db[18] = { 32.41, 34.48, 34.75, 33.98, 34.59, 34.27, 32.06, 28.30, 25.01,
                                           23.00, 20.15, 17.32, 13.18, 11.55, 9.33,  5.31,  2.59,  1.13 };
static const double a_weights_db[18] = { -13.4, -10.9, -8.6, -6.6, -4.8, -3.2, -1.9, -0.8, 0.0, 0.6, 1.0, 1.2, 1.3, 1.2, 1.0, 0.5, -0.1, -1.1 };

static void
test_voice (void)
{
  double bands_db[18], weighted_db[18];

  for (int i = 0; i < 18; i++)
    {
      bands_db[i] = ansi_normal_db[i] + 15.65 + i;
      weighted_db[i] = bands_db[i] + a_weights_db[i];
    }
  assert_near (lr_level_sum_db (bands_db, 18), 62.35, 0.1);
  assert_near (lr_level_sum_db (weighted_db, 18), 59.2, 0.2);
}

/* A fridge that reads 40 dB at 1 m in a room of 50 m3 and 0.5 s gives off 44.84 dB; 39.13 at 2 m and 38.95 at 3 m, where the free field
 * would have 30.46 (Kuttruff's formula by hand, A = 16.1) */
static void
test_in_a_room (void)
{
  static const double cases[][2] = { { 1.0, 40.0 }, { 2.0, 39.13 }, { 3.0, 38.95 } };
  double power_db = NAN;

  g_assert_true (lr_level_power_db (40.0, 1.0, 1.0, 16.1, &power_db));
  assert_near (power_db, 44.84, 0.01);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double both_db[2];

      g_assert_true (lr_level_direct_db (power_db, cases[i][0], 1.0, &both_db[0]));
      g_assert_true (lr_level_diffuse_db (power_db, 16.1, &both_db[1]));
      assert_near (lr_level_sum_db (both_db, 2), cases[i][1], 0.01);
    }
}

/* 60 dB at 1 m are 66.02 at half of that; a hypercardioid takes 6.02 dB off a room of 38: 34.04 dB apart (closed form) */
static void
test_over_noise (void)
{
  LrPattern hyper = { LR_HYPERCARDIOID, 0.0 };
  double power_db = NAN, voice_db = NAN, index_db = NAN, factor = NAN;

  g_assert_true (lr_level_free_power_db (60.0, 1.0, LR_VOICE_DIRECTIVITY, &power_db));
  g_assert_true (lr_level_direct_db (power_db, 0.5, LR_VOICE_DIRECTIVITY, &voice_db));
  g_assert_true (lr_pattern_directivity (&hyper, 500.0, &index_db, &factor));
  assert_near (voice_db, 66.02, 0.01);
  assert_near (voice_db - (38.0 - index_db), 34.04, 0.01);
}

/* Direct over reverberant is 20 lg (critical distance times the pattern's factor / distance), whichever way it is reckoned: in 50 m3 and
 * 0.5 s, directivity 1, at 0.5 m an omni has +1.14, a cardioid +5.91 and a hypercardioid +7.16 dB; at 2 m -10.90 and -4.88 (closed form,
 * r_c = 0.057 sqrt (V / T), the constant within 0.1 dB) */
static void
test_over_reverberation (void)
{
  static const struct { double share, distance_m, ratio_db; } cases[] = {
    { LR_OMNI, 0.5, 1.14 }, { LR_CARDIOID, 0.5, 5.91 }, { LR_HYPERCARDIOID, 0.5, 7.16 }, { LR_OMNI, 2.0, -10.90 },
    { LR_HYPERCARDIOID, 2.0, -4.88 }, { LR_OMNI, 0.2, 9.10 },
  };
  double absorption_m2 = NAN, power_db = NAN, critical_m = NAN;

  g_assert_true (lr_reverberation_area_m2 (50.0, 0.5, &absorption_m2));
  g_assert_true (lr_critical_distance_m (1.0, absorption_m2, &critical_m));
  g_assert_true (lr_level_free_power_db (57.0, 1.0, 1.0, &power_db));
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LrPattern pattern = { cases[i].share, 0.0 };
      double direct_db = NAN, diffuse_db = NAN, index_db = NAN, factor = NAN;

      g_assert_true (lr_pattern_directivity (&pattern, 500.0, &index_db, &factor));
      g_assert_true (lr_level_direct_db (power_db, cases[i].distance_m, 1.0, &direct_db));
      g_assert_true (lr_level_diffuse_db (power_db, absorption_m2, &diffuse_db));
      assert_near (direct_db - (diffuse_db - index_db), cases[i].ratio_db, 0.1);
      assert_near (direct_db - (diffuse_db - index_db), 20.0 * log10 (critical_m * factor / cases[i].distance_m), 1e-9);
    }
}

/* 1.5 dB for 30 degrees, about 10 dB from front to back: a primer's rule */
static void
test_turned (void)
{
  assert_near (lr_voice_turned_db (0.0), 0.0, 1e-12);
  assert_near (lr_voice_turned_db (30.0 * LR_DEG), -1.5, 1e-9);
  assert_near (lr_voice_turned_db (-LR_PI), -9.0, 1.1);
}

static void
test_domain (void)
{
  double value = UNTOUCHED;

  g_assert_true (isinf (lr_level_sum_db (NULL, 0)));
  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_level_power_db (40.0, not_positive[i], 1.0, 16.0, &value));
      g_assert_false (lr_level_power_db (40.0, 1.0, 1.0, not_positive[i], &value));
      g_assert_false (lr_level_free_power_db (40.0, 1.0, not_positive[i], &value));
      g_assert_false (lr_level_direct_db (40.0, not_positive[i], 1.0, &value));
      g_assert_false (lr_level_diffuse_db (40.0, not_positive[i], &value));
    }
  g_assert_false (lr_level_diffuse_db (NAN, 16.0, &value));
  assert_near (value, UNTOUCHED, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/sound-levels/sum", sum_cases, test_sum);
  g_test_add_func ("/sound-levels/voice", test_voice);
  g_test_add_func ("/sound-levels/in-a-room", test_in_a_room);
  g_test_add_func ("/sound-levels/over-noise", test_over_noise);
  g_test_add_func ("/sound-levels/over-reverberation", test_over_reverberation);
  g_test_add_func ("/sound-levels/turned", test_turned);
  g_test_add_func ("/sound-levels/domain", test_domain);

  return g_test_run ();
}
