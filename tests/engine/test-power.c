/* test-power.c - currents, resistances and losses of leads
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "power.h"

typedef struct
{
  const char *name;
  double      core_mm2, ohm_km, tolerance; /* tolerance: of the source's last digit */
  const char *source;
} CoreCase;

static const CoreCase core_cases[] = {
  { "0.75-mm2", 0.75, 26.0, 1e-9, "IEC 60228, class 5, plain copper, 20 °C" },
  { "1-mm2", 1.0, 19.5, 1e-9, "IEC 60228, class 5" },
  { "1.5-mm2", 1.5, 13.3, 1e-9, "IEC 60228, class 5" },
  { "2.5-mm2", 2.5, 7.98, 1e-9, "IEC 60228, class 5" },
  { "16-gauge", 1.31, 13.174, 1e-3, "ASTM B258 diameter, 17.241 ohm mm2/km" },
  { "14-gauge", 2.08, 8.285, 1e-3, "ASTM B258 diameter, 17.241 ohm mm2/km" },
  { "12-gauge", 3.31, 5.211, 1e-3, "ASTM B258 diameter, 17.241 ohm mm2/km" },
};

static void
test_core (gconstpointer data)
{
  const CoreCase *c = data;
  double ohm_km = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_power_resistance_ohm_km (c->core_mm2, &ohm_km));
  assert_near (ohm_km, c->ohm_km, c->tolerance);
}

/* A gauge's stranded copper at 75 °C: NEC chapter 9, table 8: 14 AWG 3.14, 12 AWG 1.98 ohm per 1,000 ft, from memory. Stranding
 * adds some 2 % to the solid wire that we count. */
static void
test_against_nec (void)
{
  double fourteen = NAN, twelve = NAN, warm = (234.5 + 75.0) / 254.5;

  g_assert_true (lr_power_resistance_ohm_km (2.08, &fourteen));
  g_assert_true (lr_power_resistance_ohm_km (3.31, &twelve));
  assert_within (fourteen * warm * 0.3048, 3.14, 0.025);
  assert_within (twelve * warm * 0.3048, 1.98, 0.025);
}

/* BS 7671:2018, table 4F3A, two-core flexible cords, from memory; NEC 400.5(A)(1) has 13 A for 16 AWG (1.31 mm²) and 18 A for 14 AWG (2.08 mm²),
 * three conductors 10 and 15 A, from memory: no more than that is allowed here */
static void
test_bears (void)
{
  static const struct { double core_mm2, current_a; } cords[] = {
    { 0.5, 3.0 }, { 0.75, 6.0 }, { 1.0, 10.0 }, { 1.25, 13.0 }, { 1.5, 16.0 }, { 2.5, 25.0 }, { 4.0, 32.0 }, { 1.31, 13.0 }, { 2.08, 16.0 },
  };
  double current_a = NAN;

  for (gsize i = 0; i < G_N_ELEMENTS (cords); i++)
    {
      g_assert_true (lr_power_bears_a (cords[i].core_mm2, &current_a));
      assert_near (current_a, cords[i].current_a, 1e-9);
    }
  g_assert_false (lr_power_bears_a (0.2, &current_a));
  g_assert_false (lr_power_bears_a (NAN, &current_a));
}

/* Thicker is never worse, and a size between two of the table has no less than copper of its area */
static void
test_between (void)
{
  double before = HUGE_VAL;

  for (double core_mm2 = 0.4; core_mm2 < 30.0; core_mm2 *= 1.37)
    {
      double ohm_km = NAN;

      g_assert_true (lr_power_resistance_ohm_km (core_mm2, &ohm_km));
      g_assert_cmpfloat (ohm_km, <, before);
      g_assert_cmpfloat (ohm_km * core_mm2, >=, 17.241 - 1e-6);
      g_assert_cmpfloat (ohm_km * core_mm2, <=, 19.95 + 1e-6);
      before = ohm_km;
    }
}

typedef struct
{
  const char *name;
  double      length_m, core_mm2, current_a, volts_v;
  double      drop_v, drop_pct; /* expected */
} DropCase;

/* Source: 2 L I r / 1000 by hand with the resistances above, to the last digit printed */
static const DropCase drop_cases[] = {
  { "25-m-1.5", 25.0, 1.5, 10.0, 230.0, 6.650, 2.891 },
  { "50-m-2.5", 50.0, 2.5, 13.0, 230.0, 10.374, 4.510 },
  { "30-m-1", 30.0, 1.0, 10.0, 230.0, 11.700, 5.087 },
  { "100-ft-14", 30.48, 2.08, 12.0, 120.0, 6.061, 5.051 },
  { "100-ft-12", 30.48, 3.31, 16.0, 120.0, 5.082, 4.235 },
};

static void
test_drop (gconstpointer data)
{
  const DropCase *c = data;
  double ohm_km = NAN, drop_v = NAN, warm_v = NAN;

  g_assert_true (lr_power_resistance_ohm_km (c->core_mm2, &ohm_km));
  g_assert_true (lr_power_drop_v (c->length_m, c->current_a, ohm_km, 20.0, &drop_v));
  assert_near (drop_v, c->drop_v, 0.001);
  assert_near (100.0 * drop_v / c->volts_v, c->drop_pct, 0.001);
  /* IEC 60228: at 70 °C 1.1965 times as much */
  g_assert_true (lr_power_drop_v (c->length_m, c->current_a, ohm_km, LR_POWER_WARM_C, &warm_v));
  assert_near (warm_v / drop_v, 1.1965, 5e-5);
}

/* Three panels of 300 W at a power factor of .95 and a lamp of 650 W: by hand, 13.311 A at 120 V and 6.945 A at 230 V. 80 % of a
 * breaker of 15 A are 12 A, 1440 W; of 20 A 16 A, 1920 W (NEC 210.20(A)). */
static void
test_current (void)
{
  static const double volts[] = { 120.0, 230.0 }, sums[] = { 13.311, 6.945 };

  for (int i = 0; i < 2; i++)
    {
      double panel_a = NAN, lamp_a = NAN;

      g_assert_true (lr_power_current_a (300.0, volts[i], 0.95, &panel_a));
      g_assert_true (lr_power_current_a (650.0, volts[i], 1.0, &lamp_a));
      assert_near (3.0 * panel_a + lamp_a, sums[i], 0.001);
    }
  assert_near (15.0 * LR_POWER_CONTINUOUS_SHARE, 12.0, 1e-12);
  assert_near (15.0 * LR_POWER_CONTINUOUS_SHARE * 120.0, 1440.0, 1e-9);
  assert_near (20.0 * LR_POWER_CONTINUOUS_SHARE * 120.0, 1920.0, 1e-9);
}

static void
test_domain (void)
{
  double out = UNTOUCHED;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];

      g_assert_false (lr_power_current_a (100.0, bad, 1.0, &out));
      g_assert_false (lr_power_current_a (100.0, 230.0, bad, &out));
      g_assert_false (lr_power_resistance_ohm_km (bad, &out));
      g_assert_false (lr_power_drop_v (10.0, 1.0, bad, 20.0, &out));
    }
  g_assert_false (lr_power_current_a (-1.0, 230.0, 1.0, &out));
  g_assert_false (lr_power_current_a (100.0, 230.0, 1.01, &out));
  g_assert_false (lr_power_drop_v (-1.0, 1.0, 13.3, 20.0, &out));
  g_assert_false (lr_power_drop_v (10.0, -1.0, 13.3, 20.0, &out));
  g_assert_false (lr_power_drop_v (10.0, 1.0, 13.3, -234.5, &out));
  g_assert_false (lr_power_drop_v (10.0, 1.0, 13.3, NAN, &out));
  g_assert_cmpfloat (out, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/power/core", core_cases, test_core);
  g_test_add_func ("/power/against-nec", test_against_nec);
  g_test_add_func ("/power/bears", test_bears);
  g_test_add_func ("/power/between", test_between);
  add_rows ("/power/drop", drop_cases, test_drop);
  g_test_add_func ("/power/current", test_current);
  g_test_add_func ("/power/domain", test_domain);

  return g_test_run ();
}
