/* test-wall-shadows.c - shadows that people and equipment throw on the walls that cameras see
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places against similar triangles, depths against the sum of what two lamps and the room give.
 */

#include "config.h"

#include "fixture.h"
#include "light_levels.h"

#define WEST 3 /* the wall x = 0 of the interview's room, from (0, 6) to (0, 0) */
#define LENGTH_M 6.0
#define HEIGHT_M 2.7

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon (a, b, tolerance)

/* A hard lamp before Wenna, and another whose shadow of her falls on no wall that is seen */
static LrPlan *
lit_interview (double size_m,
               double output_lm)
{
  LrPlan *plan = fixture_interview ();

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 4.7, 3.7);
  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 1.2, 5.0);
  fixture_text (&plan, "light-1", "aims-at", WENNA);
  fixture_set (&plan, "light-1", "lamp-height-mm", 1.5);
  fixture_set (&plan, "light-1", "width-mm", size_m);
  fixture_set (&plan, "light-1", "output-lm", output_lm);
  fixture_set (&plan, "light-2", "facing-deg", -115.0 * LR_DEG);
  fixture_set (&plan, "light-2", "output-lm", 1000.0);
  return plan;
}

static LrEmitter
emitter_of (const LrStudy *study,
            const char    *id)
{
  LrEmitter emitter;

  g_assert_true (lr_light_emitter (study, lr_study_find_placed (study, id), &emitter));
  return emitter;
}

static LrVec3
head_of (const LrStudy *study)
{
  const LrPlaced *wenna = lr_study_find_placed (study, WENNA);

  return lr_vec2_raise (wenna->at_m, wenna->body.crown_m - 0.5 * wenna->body.head_height_m);
}

static const LrShadow *
find_shadow (const LrLightLevels *levels,
             const char          *source,
             const char          *thing,
             const char          *camera)
{
  const GArray *shadows = lr_light_levels_shadows (levels);

  for (guint i = 0; i < shadows->len; i++)
    {
      const LrShadow *shadow = &g_array_index (shadows, LrShadow, i);

      if (g_str_equal (shadow->source->item->id, source) && g_str_equal (shadow->thing->item->id, thing)
          && g_str_equal (shadow->camera->item->id, camera))
        return shadow;
    }
  return NULL;
}

/* The middle of the head's shadow: of the way from the lamp to the wall as much as is from the lamp to the head (similar triangles). There
 * light-1 is gone and the rest is left: E2 + room over E1 + E2 + room. Off the shadow all is left. */
static void
test_place_and_depth (void)
{
  g_autoptr (LrPlan) plan = lit_interview (0.02, 1500.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrWallLight *light = lr_light_levels_wall (levels, WEST);
  LrEmitter first = emitter_of (study, "light-1"), second = emitter_of (study, "light-2");
  LrVec3 head_m = head_of (study), normal = { 1.0, 0.0, 0.0 }, at_m;
  double k = first.at_m.x / (first.at_m.x - head_m.x), along, up, e1, e2 = 0.0, rest;
  const LrShadow *shadow;

  at_m = lr_vec3 (0.0, first.at_m.y + k * (head_m.y - first.at_m.y), first.at_m.z + k * (head_m.z - first.at_m.z));
  along = (LENGTH_M - at_m.y) / LENGTH_M;
  up = at_m.z / HEIGHT_M;
  g_assert_true (lr_emitter_lx (&first, at_m, normal, &e1));
  lr_emitter_lx (&second, at_m, normal, &e2);
  rest = e2 + lr_wall_light_back_lx (light, along, up);
  g_test_message ("at %.2f %.2f m: %.0f lx of the lamp, %.0f lx besides", at_m.y, at_m.z, e1, rest);
  g_assert_cmpfloat (e2, >, 1.0);
  assert_near (lr_wall_shade_left (&light->shade, along, up), rest / (e1 + rest), 0.01);
  assert_near (lr_wall_shade_left (&light->shade, along + 0.4 / LENGTH_M, up), 1.0, 1e-3);
  assert_near (lr_wall_shade_left (&light->shade, along - 0.4 / LENGTH_M, up), 1.0, 1e-3);
  assert_near (lr_wall_shade_left (&light->shade, along, up + 0.5 / HEIGHT_M), 1.0, 1e-3);

  shadow = find_shadow (levels, "light-1", WENNA, CAMERA_A);
  g_assert_nonnull (shadow);
  g_assert_cmpint (shadow->wall, ==, WEST);
  /* it is told where it is deepest, on her trunk; there the same sums hold */
  e2 = 0.0;
  g_assert_true (lr_emitter_lx (&first, shadow->at_m, normal, &e1));
  lr_emitter_lx (&second, shadow->at_m, normal, &e2);
  rest = e2 + lr_wall_light_back_lx (light, (LENGTH_M - shadow->at_m.y) / LENGTH_M, shadow->at_m.z / HEIGHT_M);
  assert_near (shadow->depth_stops, log2 ((e1 + rest) / rest), 0.05);
  g_assert_cmpfloat (fabs (shadow->at_m.y - at_m.y), <, 0.7);
  g_assert_cmpfloat (shadow->aside_m, <, 0.0); /* seen from A the lamp is to the right of her */
}

/* The head's edge is soft over the lamp's size times the way behind over that before (similar triangles), about as seen across the wall:
 * between nine tenths and one tenth of an even ramp are four fifths of it */
static void
test_softness (void)
{
  const double size_m = 0.3;
  g_autoptr (LrPlan) plan = lit_interview (size_m, 1500.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrWallLight *light = lr_light_levels_wall (levels, WEST);
  LrVec3 lamp_m = emitter_of (study, "light-1").at_m, head_m = head_of (study);
  double k = lamp_m.x / (lamp_m.x - head_m.x), along = (LENGTH_M - lamp_m.y - k * (head_m.y - lamp_m.y)) / LENGTH_M;
  double up = (lamp_m.z + k * (head_m.z - lamp_m.z)) / HEIGHT_M, least = lr_wall_shade_left (&light->shade, along, up);
  double from_m = NAN, to_m = NAN, ramp_m;

  for (double off_m = 0.0; off_m < 0.8; off_m += 0.002)
    {
      double out = (lr_wall_shade_left (&light->shade, along + off_m / LENGTH_M, up) - least) / (1.0 - least);

      if (isnan (from_m) && out > 0.1)
        from_m = off_m;
      if (isnan (to_m) && out > 0.9)
        to_m = off_m;
    }
  ramp_m = size_m * (k - 1.0); /* behind over before is k - 1 */
  g_test_message ("%.3f m from a tenth to nine tenths of a half-shadow of %.3f m", to_m - from_m, ramp_m);
  g_assert_cmpfloat (to_m - from_m, >, 0.5 * ramp_m);
  g_assert_cmpfloat (to_m - from_m, <, 1.1 * ramp_m);
}

/* A large lamp makes the same shadow fainter, and one that is out none */
static void
test_large_and_out (void)
{
  g_autoptr (LrPlan) hard = lit_interview (0.02, 1500.0), soft = lit_interview (1.5, 1500.0), out = lit_interview (0.02, 0.0);
  g_autoptr (LrLightLevels) hard_levels = lr_light_levels_new (hard, TRUE, NULL), soft_levels = lr_light_levels_new (soft, TRUE, NULL);
  g_autoptr (LrLightLevels) out_levels = lr_light_levels_new (out, TRUE, NULL);
  const LrShadow *a = find_shadow (hard_levels, "light-1", WENNA, CAMERA_A), *b = find_shadow (soft_levels, "light-1", WENNA, CAMERA_A);

  g_assert_nonnull (a);
  g_assert_true (b == NULL || b->depth_stops < a->depth_stops - 0.3);
  g_assert_null (find_shadow (out_levels, "light-1", WENNA, CAMERA_A));
  g_assert_null (find_shadow (hard_levels, "light-1", "light-1", CAMERA_A));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wall-shadows/place-and-depth", test_place_and_depth);
  g_test_add_func ("/wall-shadows/softness", test_softness);
  g_test_add_func ("/wall-shadows/large-and-out", test_large_and_out);
  return g_test_run ();
}
