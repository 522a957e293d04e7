/* test-mirror.c - what a small mirror shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "mirror.h"

#include "check.h"

static LrVec3
way_of (double azimuth_deg,
        double elevation_deg)
{
  LrVec2 flat = lr_vec2_polar (azimuth_deg * LR_DEG, cos (elevation_deg * LR_DEG));

  return lr_vec2_raise (flat, sin (elevation_deg * LR_DEG));
}

static void
assert_way (LrVec3 way,
            double azimuth_deg,
            double elevation_deg,
            double tolerance_deg)
{
  assert_near (lr_vec3_length (way), 1.0, 1e-12);
  assert_near (atan2 (way.y, way.x) / LR_DEG, azimuth_deg, tolerance_deg);
  assert_near (asin (way.z) / LR_DEG, elevation_deg, tolerance_deg);
}

typedef struct
{
  const char *name;
  double      normal_az_deg, normal_el_deg;      /* in: the eye is straight ahead */
  double      az_deg, el_deg, tolerance_deg;     /* expected */
} WayCase;

/* Law of reflection, worked out with another program from r = 2 (n c) n - c */
static const WayCase way_cases[] = {
  { "tipped-down", 0.0, -10.0, 0.0, -20.0, 1e-9 },
  { "turned", 22.5, 0.0, 45.0, 0.0, 1e-9 },
  { "both", 22.5, -10.0, 46.288, -18.420, 1e-3 },
};

static void
test_way (gconstpointer data)
{
  const WayCase *c = data;

  assert_way (lr_mirror_way (way_of (0.0, 0.0), way_of (c->normal_az_deg, c->normal_el_deg)), c->az_deg, c->el_deg, c->tolerance_deg);
}

typedef struct
{
  const char *name;
  double      light_az_deg, light_el_deg;     /* in: the eye is straight ahead */
  double      az_deg, el_deg;                 /* expected */
} NormalCase;

static const NormalCase normal_cases[] = {
  { "usual-key", 45.0, 35.0, 20.142, 18.829 },
  { "low-key", 30.0, 20.0, 14.523, 10.345 },
};

static void
test_normal (gconstpointer data)
{
  const NormalCase *c = data;
  LrVec3 normal = { 0.0, 0.0, 0.0 };

  g_assert_true (lr_mirror_normal (way_of (0.0, 0.0), way_of (c->light_az_deg, c->light_el_deg), &normal));
  assert_way (normal, c->az_deg, c->el_deg, 1e-3);
}

static void
test_edges (void)
{
  LrVec3 normal = { UNTOUCHED, 0.0, 0.0 };

  g_assert_false (lr_mirror_normal (way_of (0.0, 0.0), way_of (180.0, 0.0), &normal));
  g_assert_cmpfloat (normal.x, ==, UNTOUCHED);
  /* base 6: the radius is 530 / 6 = 88.3 mm; 25 mm from the middle asin (25 / 88.3) = 16.4 degrees, by hand */
  assert_near (lr_spectacle_turn_rad (6.0, 0.025) / LR_DEG, 16.44, 0.01);
}

typedef struct
{
  const char *name;
  double      light_az_deg, light_el_deg;     /* in: the eye looks ahead, the lens is 18 degrees to its right */
  bool        shows;                          /* expected */
} EyeCase;

/* Worked out by hand from the half of the ways, on a ball of 7.8 mm: "usual-key" 0.92 mm to the left and 3.39 mm up; "high" 4.82 mm
 * up, over the lid's 4; "aside" 5.61 mm to the left, "too-far-aside" 6.06, past the iris's 5.85; the sizes are from memory */
static const EyeCase eye_cases[] = {
  { "usual-key", 45.0, 45.0, true },
  { "high", 45.0, 70.0, false },
  { "aside", 110.0, 0.0, true },
  { "too-far-aside", 120.0, 0.0, false },
  { "from-below", 0.0, -60.0, true },
  { "behind", 170.0, 10.0, false },
};

static void
test_eye (gconstpointer data)
{
  const EyeCase *c = data;

  g_assert_cmpint (lr_eye_mirrors (way_of (0.0, 0.0), way_of (-18.0, 0.0), way_of (c->light_az_deg, c->light_el_deg)), ==, c->shows);
  /* turned about the upright all is as before */
  g_assert_cmpint (lr_eye_mirrors (way_of (70.0, 0.0), way_of (52.0, 0.0), way_of (70.0 + c->light_az_deg, c->light_el_deg)), ==, c->shows);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/mirror/way", way_cases, test_way);
  add_rows ("/mirror/normal", normal_cases, test_normal);
  add_rows ("/mirror/eye", eye_cases, test_eye);
  g_test_add_func ("/mirror/edges", test_edges);
  return g_test_run ();
}
