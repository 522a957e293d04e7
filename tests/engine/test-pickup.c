/* test-pickup.c - how a microphone's pattern and place favour one source over another
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pickup.h"

#include "check.h"

static const LrPickup down = { { 0.0, 0.0, 2.0 }, { 0.0, 0.0, -1.0 }, 1.0 };

typedef struct
{
  const char *name;
  double      omni_share;
  LrVec3      axis, from_m, reference_m; /* the capsule is at 0, 0, 2 */
  double      level_db, tolerance_db;    /* expected */
  const char *source;
} LevelCase;

static const LevelCase level_cases[] = {
  { "double-distance", 1.0, { 0, 0, -1 }, { 0, 0, 0 }, { 0, 0, 1 }, -6.0206, 1e-4, "inverse square law: 20 log10 2" },
  { "cardioid-side", 0.5, { 1, 0, 0 }, { 0, 1, 2 }, { 1, 0, 2 }, -6.0, 0.1,
    "6 dB down at 90 degrees: table of patterns in HyperPhysics (Georgia State University)" },
  { "supercardioid-side", 0.37, { 1, 0, 0 }, { 0, 1, 2 }, { 1, 0, 2 }, -8.5, 0.15,
    "8.5 dB down at 90 degrees: table of patterns in HyperPhysics" },
  { "hypercardioid-side", 0.25, { 1, 0, 0 }, { 0, 1, 2 }, { 1, 0, 2 }, -12.0, 0.1,
    "12 dB down at 90 degrees: table of patterns in HyperPhysics" },
  { "hypercardioid-back", 0.25, { 1, 0, 0 }, { -1, 0, 2 }, { 1, 0, 2 }, -6.0, 0.1,
    "6 dB down at 180 degrees: table of patterns in HyperPhysics" },
};

static void
test_level (gconstpointer data)
{
  const LevelCase *c = data;
  LrPickup pickup = { { 0.0, 0.0, 2.0 }, c->axis, c->omni_share };
  double level_db = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_pickup_level_db (&pickup, c->from_m, c->reference_m, &level_db));
  assert_near (level_db, c->level_db, c->tolerance_db);
}

/* Straight over the mouth by h an omni capsule hears it 6 dB less where the distance is 10^(6/20) h: a circle of radius
 * h sqrt (10^(12/20) - 1) around it (closed form) */
static void
test_circle (void)
{
  double expected_m = 0.7 * sqrt (pow (10.0, 0.6) - 1.0), distance_m = NAN;

  for (int i = 0; i < 12; i++)
    {
      g_assert_true (lr_pickup_contour_m (&down, lr_vec3 (0.0, 0.0, 1.3), lr_vec2_polar (i * LR_PI / 6.0, 1.0), -6.0, 6.0,
                                          &distance_m));
      assert_near (distance_m, expected_m, 2e-4);
    }
}

/* A narrower pattern has a smaller contour; a deeper level a larger one */
static void
test_order (void)
{
  LrVec3 mouth_m = { 0.0, 0.0, 1.3 };
  LrVec2 along = { 1.0, 0.0 };
  double last_m = HUGE_VAL, six_m = NAN, twelve_m = NAN;

  for (double share = 1.0; share >= 0.25; share -= 0.25)
    {
      LrPickup pickup = down;
      double distance_m = NAN;

      pickup.omni_share = share;
      g_assert_true (lr_pickup_contour_m (&pickup, mouth_m, along, -6.0, 6.0, &distance_m));
      g_assert_cmpfloat (distance_m, <, last_m);
      last_m = distance_m;
    }

  g_assert_true (lr_pickup_contour_m (&down, mouth_m, along, -6.0, 6.0, &six_m));
  g_assert_true (lr_pickup_contour_m (&down, mouth_m, along, -12.0, 6.0, &twelve_m));
  g_assert_cmpfloat (six_m, <, twelve_m);
}

static void
test_domain (void)
{
  LrPickup deaf = { { 0.0, 0.0, 2.0 }, { 1.0, 0.0, 0.0 }, 0.0 }; /* a figure of eight hears nothing from its side */
  double value = 7.0;

  g_assert_false (lr_pickup_level_db (&deaf, lr_vec3 (1.0, 0.0, 2.0), lr_vec3 (0.0, 0.0, 1.0), &value));
  g_assert_false (lr_pickup_level_db (&down, lr_vec3 (NAN, 0.0, 2.0), lr_vec3 (0.0, 0.0, 1.0), &value));
  g_assert_false (lr_pickup_contour_m (&deaf, lr_vec3 (0.0, 0.0, 1.0), lr_vec2 (1.0, 0.0), -6.0, 6.0, &value));
  g_assert_false (lr_pickup_contour_m (&down, lr_vec3 (0.0, 0.0, 1.0), lr_vec2 (1.0, 0.0), 0.0, 6.0, &value));
  g_assert_false (lr_pickup_contour_m (&down, lr_vec3 (0.0, 0.0, 1.0), lr_vec2 (0.0, 0.0), -6.0, 6.0, &value));
  g_assert_false (lr_pickup_contour_m (&down, lr_vec3 (0.0, 0.0, 1.0), lr_vec2 (1.0, 0.0), -6.0, NAN, &value));
  assert_near (value, 7.0, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (level_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/pickup/level/", level_cases[i].name, NULL);

      g_test_add_data_func (path, &level_cases[i], test_level);
    }
  g_test_add_func ("/pickup/circle", test_circle);
  g_test_add_func ("/pickup/order", test_order);
  g_test_add_func ("/pickup/domain", test_domain);

  return g_test_run ();
}
