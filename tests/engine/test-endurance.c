/* test-endurance.c - bytes, cards and batteries
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values are worked by hand from the definitions: 1 byte = 8 bits, 1 GB = 10^9 bytes and 1 GiB = 2^30 bytes
 * (IEC 80000-13, from memory), 1 Wh = 3,600 J, 1 Ah × 1 V = 1 Wh.
 */

#include "check.h"
#include "endurance.h"

#define GIB_PER_GB (1e9 / 1073741824.0)

typedef struct
{
  const char *name;
  double      rate_mbit_s, time_s; /* in */
  double      gb, gib;             /* expected */
  double      tolerance;
  const char *source;
} MediaCase;

static const MediaCase media_cases[] = {
  { "hour-at-100", 100.0, 3600.0, 45.0, 41.91, 0.005, "100e6 × 3600 / 8 = 45e9 bytes; / 2^30 = 41.91" },
  { "90-min-at-150", 150.0, 5400.0, 101.25, 94.30, 0.005, "150e6 × 5400 / 8 = 101.25e9 bytes" },
  { "second-of-8", 8.0, 1.0, 0.001, 0.000931, 1e-6, "8e6 bits are 1e6 bytes" },
  { "nothing", 100.0, 0.0, 0.0, 0.0, 1e-15, "no time, no bytes" },
};

static void
test_media (gconstpointer data)
{
  const MediaCase *c = data;
  double gb = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_recorded_gb (c->rate_mbit_s, c->time_s, &gb));
  assert_near (gb, c->gb, 1e-9);
  assert_near (gb * GIB_PER_GB, c->gib, c->tolerance);
}

typedef struct
{
  const char *name;
  double      size_gb, card_gb, fill_share;
  int         n;
  const char *source;
} CardCase;

static const CardCase card_cases[] = {
  { "fits", 45.0, 64.0, 0.9, 1, "64 × 0.9 = 57.6 > 45" },
  { "just-not", 57.7, 64.0, 0.9, 2, "57.6 < 57.7" },
  { "exactly", 128.0, 64.0, 1.0, 2, "2 × 64" },
  { "three", 150.0, 64.0, 0.9, 3, "2 × 57.6 = 115.2 < 150 < 172.8" },
  { "none", 0.0, 64.0, 0.9, 0, "nothing is recorded" },
};

static void
test_cards (gconstpointer data)
{
  const CardCase *c = data;
  int n = -1;

  g_test_message ("%s", c->source);
  g_assert_true (lr_cards_needed (c->size_gb, c->card_gb, c->fill_share, &n));
  g_assert_cmpint (n, ==, c->n);
}

typedef struct
{
  const char *name;
  double      wh, share, w, hours, tolerance;
  const char *source;
} BatteryCase;

static const BatteryCase battery_cases[] = {
  { "98-at-28", 98.0, 0.8, 28.0, 2.80, 1e-9, "0.8 × 98 / 28" },
  { "150-at-40", 150.0, 0.8, 40.0, 3.00, 1e-9, "0.8 × 150 / 40" },
  { "98-at-40", 98.0, 0.8, 40.0, 1.96, 1e-9, "0.8 × 98 / 40" },
  { "14.4-v-6.8-ah", 14.4 * 6.8, 1.0, 97.92, 1.0, 1e-9, "14.4 V × 6.8 Ah = 97.92 Wh, an hour at 97.92 W" },
};

static void
test_battery (gconstpointer data)
{
  const BatteryCase *c = data;
  double time_s = NAN;
  int n = -1;

  g_test_message ("%s", c->source);
  g_assert_true (lr_battery_s (c->wh, c->share, c->w, &time_s));
  assert_near (time_s / 3600.0, c->hours, c->tolerance);

  /* just as long takes one, a minute more takes two, a quarter in reserve too */
  g_assert_true (lr_batteries_needed (c->w, time_s, 0.0, c->wh, c->share, &n));
  g_assert_cmpint (n, ==, 1);
  g_assert_true (lr_batteries_needed (c->w, time_s + 60.0, 0.0, c->wh, c->share, &n));
  g_assert_cmpint (n, ==, 2);
  g_assert_true (lr_batteries_needed (c->w, time_s, 0.25, c->wh, c->share, &n));
  g_assert_cmpint (n, ==, 2);
}

/* Worked by hand: a camera of 8 W for 1.5 h and a quarter more takes 15 Wh; of 16 Wh 12.8 can be had: two */
static void
test_small_camera (void)
{
  int n = -1;

  g_assert_true (lr_batteries_needed (8.0, 5400.0, 0.25, 16.0, 0.8, &n));
  g_assert_cmpint (n, ==, 2);
  g_assert_true (lr_batteries_needed (8.0, 3600.0, 0.25, 16.0, 0.8, &n)); /* 10 Wh */
  g_assert_cmpint (n, ==, 1);
}

static void
test_domain (void)
{
  static const double bad[] = { 0.0, -1.0, NAN, HUGE_VAL };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      double value = -7.0;
      int n = -7;

      g_assert_false (lr_recorded_gb (bad[i], 1.0, &value));
      g_assert_false (lr_cards_needed (1.0, bad[i], 0.9, &n));
      g_assert_false (lr_cards_needed (1.0, 1.0, bad[i], &n));
      g_assert_false (lr_battery_s (bad[i], 0.8, 1.0, &value));
      g_assert_false (lr_battery_s (1.0, 0.8, bad[i], &value));
      g_assert_false (lr_batteries_needed (1.0, 1.0, 0.0, 1.0, bad[i], &n));
      if (bad[i] != 0.0)
        {
          g_assert_false (lr_recorded_gb (1.0, bad[i], &value));
          g_assert_false (lr_cards_needed (bad[i], 1.0, 0.9, &n));
          g_assert_false (lr_batteries_needed (1.0, bad[i], 0.0, 1.0, 0.8, &n));
        }
      g_assert_cmpfloat (value, ==, -7.0);
      g_assert_cmpint (n, ==, -7);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/endurance/media", media_cases, test_media);
  add_rows ("/endurance/cards", card_cases, test_cards);
  add_rows ("/endurance/battery", battery_cases, test_battery);
  g_test_add_func ("/endurance/small-camera", test_small_camera);
  g_test_add_func ("/endurance/domain", test_domain);

  return g_test_run ();
}
