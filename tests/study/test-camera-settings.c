/* test-camera-settings.c - what is set on the cameras, and the mains that it must suit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  const char *name;
  double      volts_v, told_hz; /* in; 0: no circuit, not told */
  double      hz;               /* expected */
  LrMainsFrom from;
  const char *source;
} MainsCase;

static const MainsCase mains_cases[] = {
  { "230-v", 230.0, 0.0, 50.0, LR_MAINS_BY_VOLTS, "IEC 60038: 230 V at 50 Hz" },
  { "120-v", 120.0, 0.0, 60.0, LR_MAINS_BY_VOLTS, "IEC 60038: 120/240 V at 60 Hz" },
  { "100-v-50", 100.0, 50.0, 50.0, LR_MAINS_TOLD, "from memory: half of a country on 100 V has 50 Hz" },
  { "220-v-60", 220.0, 60.0, 60.0, LR_MAINS_TOLD, "from memory: 220 V at 60 Hz is the rule in some countries" },
  { "told-alone", 0.0, 60.0, 60.0, LR_MAINS_TOLD, "what is told counts" },
  { "unknown", 0.0, 0.0, 50.0, LR_MAINS_UNKNOWN, "common practice, no source: most of the world has 50 Hz" },
};

static void
test_mains (gconstpointer data)
{
  const MainsCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  LrMains mains;

  g_test_message ("%s", c->source);
  if (c->volts_v > 0.0)
    fixture_set (&plan, fixture_add (&plan, LR_ITEM_CIRCUIT, 0, 0.0, 0.0), "volts-v", c->volts_v);
  if (c->told_hz > 0.0)
    {
      g_autoptr (LrPlan) before = g_steal_pointer (&plan);

      plan = lr_plan_set_location (before, "mains-hz", c->told_hz, NULL);
    }
  study = lr_study_new (plan);
  mains = lr_study_mains (study);
  g_assert_cmpfloat (mains.hz, ==, c->hz);
  g_assert_cmpint (mains.from, ==, c->from);
  g_assert_cmpfloat (mains.volts_v, ==, mains.from == LR_MAINS_BY_VOLTS ? c->volts_v : 0.0);
}

typedef struct
{
  const char *name;
  double      iso, first, second; /* in */
  double      native, over_stops; /* expected; native 0: none is known */
} NativeCase;

/* Stops are powers of two: by hand. 640 and 4000 are 2.64 stops apart, half way is 1600 */
static const NativeCase native_cases[] = {
  { "not-known", 400.0, 0.0, 0.0, 0.0, 0.0 },
  { "one", 3200.0, 800.0, 0.0, 800.0, 2.0 },
  { "under", 100.0, 800.0, 0.0, 800.0, -3.0 },
  { "at-it", 800.0, 800.0, 0.0, 800.0, 0.0 },
  { "two-low", 1250.0, 640.0, 4000.0, 640.0, 0.966 },
  { "two-high", 2000.0, 640.0, 4000.0, 4000.0, -1.0 },
  { "the-second-alone", 4000.0, 0.0, 2000.0, 2000.0, 1.0 },
};

static void
test_native (gconstpointer data)
{
  const NativeCase *c = data;
  LrCamera camera = { .iso = c->iso, .native_iso = c->first, .second_native_iso = c->second };

  g_assert_cmpfloat (lr_camera_native_iso (&camera), ==, c->native);
  if (c->native > 0.0)
    assert_near (lr_camera_over_native_stops (&camera), c->over_stops, 1e-3);
  else
    g_assert_true (isnan (lr_camera_over_native_stops (&camera)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/camera-settings/mains", mains_cases, test_mains);
  add_rows ("/camera-settings/native", native_cases, test_native);
  return g_test_run ();
}
