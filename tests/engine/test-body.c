/* test-body.c - where the parts of a person are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "body.h"

#include "check.h"

#define WINTER "Drillis & Contini 1966, in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1"
#define ANSUR "ANSUR II, Gordon et al. 2014, NATICK/TR-15/007, from the raw rows"

static LrBody
body_of (double stature_m,
         bool   is_seated,
         double seat_height_m,
         double eye_height_m)
{
  LrBodyInput input = { stature_m, is_seated, seat_height_m, eye_height_m };
  LrBody body;

  g_assert_true (lr_body (&input, &body));
  return body;
}

typedef struct
{
  const char *name;
  double      stature_mm;
  double      eyes_mm, chin_mm, shoulder_mm, hip_mm, knee_mm, head_mm, width_mm; /* expected; 0 = not given */
} StandingCase;

static const StandingCase standing_cases[] = {
  { "1700", 1700.0, 1591.2, 1479.0, 1390.6, 901.0, 484.5, 221.0, 440.3 },
  { "1755", 1755.0, 1642.7, 0.0, 1435.6, 0.0, 0.0, 0.0, 454.5 },
};

static void
assert_mm (double height_m,
           double expected_mm)
{
  if (expected_mm > 0.0)
    assert_near (height_m * 1e3, expected_mm, 0.1);
}

static void
test_standing (gconstpointer data)
{
  const StandingCase *c = data;
  LrBody body = body_of (c->stature_mm * 1e-3, false, 0.0, 0.0);

  g_test_message (WINTER);
  assert_mm (body.crown_m, c->stature_mm);
  assert_mm (body.eyes_m, c->eyes_mm);
  assert_mm (body.chin_m, c->chin_mm);
  assert_mm (body.shoulder_m, c->shoulder_mm);
  assert_mm (body.hip_m, c->hip_mm);
  assert_mm (body.knee_m, c->knee_mm);
  assert_mm (body.head_height_m, c->head_mm);
  assert_mm (body.shoulder_width_m, c->width_mm);
  g_assert_cmpfloat (body.floor_m, ==, 0.0);
}

typedef struct
{
  const char *name;
  double      stature_mm, seat_mm; /* in */
  double      eyes_mm;             /* expected */
  double      tolerance_mm;
  const char *source;
} SeatedCase;

/* One ratio for everyone: 2 mm off the medians of both sexes, 3 mm at the ends */
static const SeatedCase seated_cases[] = {
  { "by-ratio", 1626.0, 450.0, 1196.0, 0.5, "450 mm + 0.459 × 1626 mm, by hand" },
  { "woman-p50", 1626.0, 450.0, 1198.0, 2.0, ANSUR },
  { "man-p50", 1755.0, 450.0, 1254.0, 2.0, ANSUR },
  { "woman-p5", 1525.0, 450.0, 1148.0, 3.0, ANSUR },
  { "man-p95", 1870.0, 450.0, 1310.0, 3.0, ANSUR },
  { "german-woman-p50", 1625.0, 450.0, 1205.0, 12.0, "DIN 33402-2:2005, another population: 755 mm above the seat" },
  { "german-man-p50", 1750.0, 450.0, 1245.0, 12.0, "DIN 33402-2:2005, another population: 795 mm above the seat" },
};

static void
test_seated (gconstpointer data)
{
  const SeatedCase *c = data;
  LrBody body = body_of (c->stature_mm * 1e-3, true, c->seat_mm * 1e-3, 0.0);

  g_test_message ("%s", c->source);
  assert_near (body.eyes_m * 1e3, c->eyes_mm, c->tolerance_mm);
  g_assert_cmpfloat (body.thigh_m, ==, c->seat_mm * 1e-3);
  g_assert_cmpfloat (body.knee_m, ==, c->seat_mm * 1e-3);
}

/* An upper arm under the shoulder, wherever that is; the height of a seated elbow in ANSUR II (elbow rest, women 233 mm, men 247 mm
 * above the seat) is from memory, and with the arm bent to a table it is a little lower */
static void
test_seated_elbow (void)
{
  LrBody woman = body_of (1.6285, true, 0.45, 0.0), man = body_of (1.7562, true, 0.45, 0.0);

  g_test_message (WINTER ": upper arm 0.186 of stature; " ANSUR ", from memory");
  assert_near (woman.shoulder_m - woman.elbow_m, 0.186 * 1.6285, 1e-9);
  assert_near (woman.elbow_m - 0.45, 0.233, 0.025);
  assert_near (man.elbow_m - 0.45, 0.247, 0.030);
}

typedef struct
{
  const char *name;
  double      stature_mm, sitting_mm, head_width_mm, head_depth_mm;
} MeanCase;

/* Means of the two sexes; the fractions stand between them */
static const MeanCase mean_cases[] = {
  { "women", 1628.5, 856.6, 147.8, 189.8 },
  { "men", 1756.2, 918.3, 154.3, 199.5 },
};

static void
test_means (gconstpointer data)
{
  const MeanCase *c = data;
  LrBody body = body_of (c->stature_mm * 1e-3, true, 0.45, 0.0);

  g_test_message (ANSUR);
  assert_near ((body.crown_m - 0.45) * 1e3, c->sitting_mm, 6.0);
  assert_within (body.head_width_m * 1e3, c->head_width_mm, 0.02);
  assert_within (body.head_depth_m * 1e3, c->head_depth_mm, 0.02);
}

typedef struct
{
  const char *name;
  size_t      offset;
  double      share, tolerance; /* of stature */
  const char *source;
} ShareCase;

static const ShareCase share_cases[] = {
  { "mouth", G_STRUCT_OFFSET (LrBody, mouth_m), 0.898, 0.004,
    "chin 0.870 and 0.40 of menton-sellion, 113.1 / 1628.5 and 122.6 / 1756.2 in ANSUR II; 0.40 from memory of Farkas" },
  { "neck", G_STRUCT_OFFSET (LrBody, neck_m), 0.844, 1e-9, "half-way from chin to shoulder, " WINTER },
  { "elbow", G_STRUCT_OFFSET (LrBody, elbow_m), 0.630, 1e-9, WINTER " (from memory)" },
  { "elbow-by-the-arm", G_STRUCT_OFFSET (LrBody, elbow_m), 0.818 - 0.186, 0.003, "shoulder less upper arm, " WINTER },
  { "chest", G_STRUCT_OFFSET (LrBody, chest_m), 0.720, 1e-9, WINTER " (from memory)" },
  { "chest-of-women", G_STRUCT_OFFSET (LrBody, chest_m), 0.719, 0.002, ANSUR },
  { "chest-of-men", G_STRUCT_OFFSET (LrBody, chest_m), 0.735, 0.016, ANSUR },
  { "waist", G_STRUCT_OFFSET (LrBody, waist_m), 0.6015, 0.002, ANSUR ", the navel" },
  { "thigh", G_STRUCT_OFFSET (LrBody, thigh_m), 0.5 * (0.530 + 0.285), 0.003, "half-way from hip to knee, " WINTER },
  { "knee", G_STRUCT_OFFSET (LrBody, knee_m), 0.277, 0.009, ANSUR ", the middle of the kneecap" },
  { "shoulder", G_STRUCT_OFFSET (LrBody, shoulder_m), 0.820, 0.003, ANSUR ", acromion" },
  { "eyes", G_STRUCT_OFFSET (LrBody, eyes_m), 0.934, 0.003, ANSUR },
};

static void
test_share (gconstpointer data)
{
  const ShareCase *c = data;
  LrBody body = body_of (1.75, false, 0.0, 0.0);

  g_test_message ("%s", c->source);
  assert_near (G_STRUCT_MEMBER (double, &body, c->offset) / 1.75, c->share, c->tolerance);
}

static void
assert_in_order (const LrBody *body)
{
  const double heights_m[] = {
    body->crown_m, body->eyes_m, body->mouth_m, body->chin_m, body->neck_m, body->shoulder_m,
    body->chest_m, body->elbow_m, body->waist_m, body->hip_m, body->thigh_m, body->knee_m, body->floor_m,
  };

  for (size_t i = 1; i < G_N_ELEMENTS (heights_m); i++)
    g_assert_cmpfloat (heights_m[i - 1], >=, heights_m[i]);
}

/* Heights in order; seated or measured, what is above the hip keeps its distance from the eyes */
static void
test_upper_body (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double h = g_test_rand_double_range (1.0, 2.2), seat_m = g_test_rand_double_range (0.0, 0.8);
      LrBody standing = body_of (h, false, NAN, 0.0);
      LrBody seated = body_of (h, true, seat_m, 0.0);
      LrBody slumped = body_of (h, true, seat_m, seated.eyes_m - 0.04);
      LrBody shod = body_of (h, false, 0.0, standing.eyes_m + 0.025);

      assert_in_order (&standing);
      assert_in_order (&seated);
      assert_in_order (&slumped);
      assert_in_order (&shod);
      assert_near (shod.crown_m, standing.crown_m + 0.025, 1e-12);
      assert_near (slumped.chin_m, seated.chin_m - 0.04, 1e-12);
      assert_near (seated.crown_m - seated.hip_m, standing.crown_m - standing.hip_m, 1e-12);
      assert_near (seated.eyes_m - seated.shoulder_m, standing.eyes_m - standing.shoulder_m, 1e-12);
      g_assert_cmpfloat (seated.head_width_m, ==, standing.head_width_m);
      g_assert_true (seated.is_seated && !standing.is_seated);
    }
}

static void
test_domain (void)
{
  LrBody body = { .crown_m = UNTOUCHED };

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];
      LrBodyInput stature = { .stature_m = bad };
      LrBodyInput seat = { .stature_m = 1.7, .is_seated = true, .seat_height_m = bad };
      LrBodyInput eyes = { .stature_m = 1.7, .eye_height_m = bad };

      g_assert_false (lr_body (&stature, &body));
      if (bad != 0.0)
        {
          g_assert_false (lr_body (&seat, &body));
          g_assert_false (lr_body (&eyes, &body));
        }
    }

  g_assert_false (lr_body (&(LrBodyInput) { .stature_m = 1.7, .eye_height_m = 0.6 }, &body)); /* hip in the floor */
  g_assert_cmpfloat (body.crown_m, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/body/standing", standing_cases, test_standing);
  add_rows ("/body/seated", seated_cases, test_seated);
  add_rows ("/body/means", mean_cases, test_means);
  add_rows ("/body/share", share_cases, test_share);
  g_test_add_func ("/body/seated-elbow", test_seated_elbow);
  g_test_add_func ("/body/upper-body", test_upper_body);
  g_test_add_func ("/body/domain", test_domain);

  return g_test_run ();
}
