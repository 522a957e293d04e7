/* test-perspective.c - what distance does to sizes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: similar triangles, worked by hand.
 */

#include "perspective.h"

#include "check.h"
#include "optics.h"

typedef struct
{
  const char *name;
  double      field_m, subject_m, behind_m; /* in */
  double      extent_m, ratio;              /* expected */
} BackgroundCase;

static const BackgroundCase background_cases[] = {
  { "near", 1.0, 2.0, 3.0, 2.5, 0.400 },
  { "far", 1.0, 4.0, 3.0, 1.75, 0.571 },
  { "at-the-subject", 1.3, 2.0, 0.0, 1.3, 1.0 },
};

static void
test_background (gconstpointer data)
{
  const BackgroundCase *c = data;
  double extent_m = NAN, ratio = NAN;

  g_test_message ("similar triangles: W (D + B) / D and D / (D + B)");
  g_assert_true (lr_background_extent_m (c->field_m, c->subject_m, c->behind_m, &extent_m));
  g_assert_true (lr_background_size_ratio (c->subject_m, c->behind_m, &ratio));
  assert_within (extent_m, c->extent_m, 1e-3);
  assert_within (ratio, c->ratio, 1e-3);
}

typedef struct
{
  const char *name;
  double      field_m, background_m, behind_m; /* in */
  double      subject_m;                       /* expected */
} DistanceCase;

static const DistanceCase distance_cases[] = {
  { "2.5-m", 1.0, 2.5, 3.0, 2.000 },
  { "2.0-m", 0.94, 2.0, 2.0, 1.774 },
};

static void
test_distance (gconstpointer data)
{
  const DistanceCase *c = data;
  double subject_m = NAN;

  g_test_message ("similar triangles: B Ws / (Wb - Ws)");
  g_assert_true (lr_distance_for_background_m (c->field_m, c->background_m, c->behind_m, &subject_m));
  assert_within (subject_m, c->subject_m, 1e-3);
}

typedef struct
{
  const char *name;
  double      subject_m, ratio;
} FaceCase;

static const FaceCase face_cases[] = {
  { "0.6-m", 0.6, 1.400 }, { "1-m", 1.0, 1.222 }, { "1.5-m", 1.5, 1.143 },
  { "2-m", 2.0, 1.105 },   { "3-m", 3.0, 1.069 },
};

static void
test_face (gconstpointer data)
{
  const FaceCase *c = data;
  double ratio = NAN;

  g_test_message ("(D + 0.1) / (D - 0.1), Wikipedia, Dolly zoom");
  g_assert_true (lr_face_depth_ratio (c->subject_m, 0.1, &ratio));
  assert_within (ratio, c->ratio, 2e-3);
}

/* The background through a lens is what the triangles say, and the distance for it leads back */
static void
test_against_lens (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double focal_m = g_test_rand_double_range (0.01, 0.2), behind_m = g_test_rand_double_range (0.1, 10.0);
      double field_m, background_m, extent_m, subject_m;
      LrFocus focus;

      g_assert_true (lr_focus_at (focal_m, g_test_rand_double_range (1.0, 8.0), &focus));
      g_assert_true (lr_field_extent_m (0.036, &focus, focus.subject_m, &field_m));
      g_assert_true (lr_field_extent_m (0.036, &focus, focus.subject_m + behind_m, &background_m));
      g_assert_true (lr_background_extent_m (field_m, focus.subject_m, behind_m, &extent_m));
      assert_within (extent_m, background_m, 1e-12);
      g_assert_true (lr_distance_for_background_m (field_m, background_m, behind_m, &subject_m));
      assert_within (subject_m, focus.subject_m, 1e-11);
    }
}

/* At the same size in the frame the focal length goes as the distance, and the face's depth
 * ratio does not care */
static void
test_dolly (void)
{
  g_test_message ("thin lens, f = m s / (1 + m): 35 mm at 1.5 m is 70 mm at 3 m, 50 mm at 2 m is 30 mm at 1.2 m");

  for (int i = 0; i < 2; i++)
    {
      static const double focal_mm[2][2] = { { 35.0, 70.0 }, { 50.0, 30.0 } };
      static const double subject_m[2][2] = { { 1.5, 3.0 }, { 2.0, 1.2 } };
      double m = focal_mm[i][0] * 1e-3 / (subject_m[i][0] - focal_mm[i][0] * 1e-3), focal_m;

      g_assert_true (lr_focal_for_field_m (0.036, 0.036 / m, subject_m[i][1] * (1.0 + m), &focal_m));
      assert_within (focal_m * 1e3, focal_mm[i][1], 1e-12);
    }
}

static void
test_domain (void)
{
  double out = UNTOUCHED;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];

      g_assert_false (lr_background_extent_m (bad, 2.0, 3.0, &out));
      g_assert_false (lr_background_extent_m (1.0, bad, 3.0, &out));
      g_assert_false (lr_background_size_ratio (bad, 3.0, &out));
      if (bad != 0.0)
        {
          g_assert_false (lr_background_extent_m (1.0, 2.0, bad, &out));
          g_assert_false (lr_background_size_ratio (2.0, bad, &out));
        }
      g_assert_false (lr_distance_for_background_m (bad, 2.5, 3.0, &out));
      g_assert_false (lr_distance_for_background_m (1.0, bad, 3.0, &out));
      g_assert_false (lr_distance_for_background_m (1.0, 2.5, bad, &out));
      g_assert_false (lr_face_depth_ratio (bad, 0.1, &out));
      g_assert_false (lr_face_depth_ratio (2.0, bad, &out));
    }

  g_assert_false (lr_distance_for_background_m (1.0, 1.0, 3.0, &out)); /* only at infinity */
  g_assert_false (lr_face_depth_ratio (0.1, 0.1, &out));               /* a lens at the nose */
  g_assert_cmpfloat (out, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/perspective/background", background_cases, test_background);
  add_rows ("/perspective/distance", distance_cases, test_distance);
  add_rows ("/perspective/face", face_cases, test_face);
  g_test_add_func ("/perspective/against-lens", test_against_lens);
  g_test_add_func ("/perspective/dolly", test_dolly);
  g_test_add_func ("/perspective/domain", test_domain);

  return g_test_run ();
}
