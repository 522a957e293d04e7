/* test-room_modes.c - what a room's and a table's hard faces do to a voice
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "room_modes.h"

#include "check.h"
#include "reverberation.h"

typedef struct
{
  const char *name;
  double      sides_m[3];
  int         half_waves[3];
  double      frequency_hz; /* expected */
  double      share;
  const char *source;
} ModeCase;

#define FOOT_M 0.3048

static const ModeCase mode_cases[] = {
  { "studio-length", { 16 * FOOT_M, 12 * FOOT_M, 8 * FOOT_M }, { 1, 0, 0 }, 35.31, 0.005, "Handbook for Sound Engineers, table 6-4, c 1130 ft/s" },
  { "studio-width", { 16 * FOOT_M, 12 * FOOT_M, 8 * FOOT_M }, { 0, 1, 0 }, 47.08, 0.005, "Handbook for Sound Engineers, table 6-4" },
  { "studio-height", { 16 * FOOT_M, 12 * FOOT_M, 8 * FOOT_M }, { 0, 0, 1 }, 70.63, 0.005, "Handbook for Sound Engineers, table 6-4" },
  { "studio-twice", { 16 * FOOT_M, 12 * FOOT_M, 8 * FOOT_M }, { 2, 0, 0 }, 70.63, 0.005, "Handbook for Sound Engineers, table 6-4: with 0,0,1" },
  { "room", { 5.0, 4.0, 2.6 }, { 0, 0, 1 }, 66.0, 0.001, "Rayleigh's formula by hand" },
  { "tangential", { 5.2, 4.0, 2.8 }, { 1, 1, 0 }, 54.2, 0.005, "public calculator page" },
};

static void
test_mode (gconstpointer data)
{
  const ModeCase *c = data;
  double frequency_hz = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_room_mode_hz (c->sides_m, c->half_waves, &frequency_hz));
  assert_within (frequency_hz, c->frequency_hz, c->share);
}

/* 2000 sqrt (T / V): 196.1 Hz in 52 m3 and 0.5 s; 143.5 Hz in 58.24 m3 and 0.3 s (public calculator page). There the critical distance
 * times it is 114 m/s in every room (closed form, with 0.057) */
static void
test_schroeder (void)
{
  double frequency_hz = NAN, absorption_m2 = NAN, critical_m = NAN;

  g_assert_true (lr_schroeder_hz (0.5, 52.0, &frequency_hz));
  assert_near (frequency_hz, 196.1, 0.1);
  g_assert_true (lr_schroeder_hz (0.3, 58.24, &frequency_hz));
  assert_near (frequency_hz, 143.5, 0.1);
  g_assert_true (lr_reverberation_area_m2 (58.24, 0.3, &absorption_m2));
  g_assert_true (lr_critical_distance_m (1.0, absorption_m2, &critical_m));
  assert_within (critical_m * frequency_hz, 114.0, 0.01);
}

/* 4 m between faces of 0.03: every 23.3 ms, for 5.29 s; one of them 0.40: 0.595 s (closed form) */
static void
test_flutter (void)
{
  LrFlutter flutter = { NAN, NAN };

  g_assert_true (lr_flutter (4.0, 0.03, 0.03, &flutter));
  assert_near (flutter.period_s, 0.0233, 5e-5);
  assert_near (flutter.ring_s, 5.29, 0.01);
  g_assert_true (lr_flutter (4.0, 0.03, 0.40, &flutter));
  assert_near (flutter.ring_s, 0.595, 0.002);
}

typedef struct
{
  const char *name;
  double      direct_m, reflected_m, absorption;
  double      notch_hz, share, peak_db, notch_db; /* expected */
  const char *source;
} CombCase;

static const CombCase comb_cases[] = {
  { "one-millisecond", 1e6, 1e6 + 0.3432, 0.0, 500, 1.0, 6.02, -HUGE_VAL, "Everest, Master Handbook of Acoustics: 500 Hz after 1 ms; alike +6 dB" },
  { "over-a-table", 0.5, 0.9434, 0.0, 387, 0.530, 3.7, -6.6, "mouth and capsule 0.40 m over it, 0.50 m apart: image source by hand" },
  { "boom-over-a-floor", 0.5415, 2.7096, 0.0, 79, 0.200, 1.6, -1.9, "heights 1.15 and 1.53, 0.383 along the floor: image source by hand" },
  { "boom-over-carpet", 0.5415, 2.7096, 0.37, 79, 0.159, 1.3, -1.5, "the same over a coefficient of 0.37" },
  { "wall-behind", 1.0, 1.6, 0.0, 286, 0.625, 4.2, -8.5, "capsule 0.30 m before a wall: c / 4 b" },
};

static void
test_comb (gconstpointer data)
{
  const CombCase *c = data;
  LrComb comb = { 0 };

  g_test_message ("%s", c->source);
  g_assert_true (lr_comb (c->direct_m, c->reflected_m, c->absorption, &comb));
  assert_within (comb.notch_hz, c->notch_hz, 0.005);
  assert_near (comb.share, c->share, 0.001);
  assert_near (comb.peak_db, c->peak_db, 0.05);
  if (isinf (c->notch_db))
    g_assert_cmpfloat (comb.notch_db, <, -100.0);
  else
    assert_near (comb.notch_db, c->notch_db, 0.06);
}

static void
test_domain (void)
{
  double value = UNTOUCHED;
  double sides_m[3] = { 5.0, NAN, 2.6 }, good_m[3] = { 5.0, 4.0, 2.6 };
  int one[3] = { 1, 0, 0 }, none[3] = { 0, 0, 0 };
  LrFlutter flutter = { UNTOUCHED, UNTOUCHED };
  LrComb comb = { .notch_hz = UNTOUCHED };

  g_assert_false (lr_room_mode_hz (sides_m, one, &value));
  g_assert_false (lr_room_mode_hz (good_m, none, &value));
  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_schroeder_hz (not_positive[i], 50.0, &value));
      g_assert_false (lr_flutter (not_positive[i], 0.1, 0.1, &flutter));
      g_assert_false (lr_comb (not_positive[i], 2.0, 0.1, &comb));
    }
  g_assert_false (lr_flutter (4.0, 0.0, 0.0, &flutter));
  g_assert_false (lr_flutter (4.0, 1.0, 0.5, &flutter));
  g_assert_false (lr_comb (1.0, 1.0, 0.1, &comb));
  assert_near (value, UNTOUCHED, 1e-12);
  assert_near (flutter.ring_s, UNTOUCHED, 1e-12);
  assert_near (comb.notch_hz, UNTOUCHED, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/room-modes/mode", mode_cases, test_mode);
  g_test_add_func ("/room-modes/schroeder", test_schroeder);
  g_test_add_func ("/room-modes/flutter", test_flutter);
  add_rows ("/room-modes/comb", comb_cases, test_comb);
  g_test_add_func ("/room-modes/domain", test_domain);

  return g_test_run ();
}
