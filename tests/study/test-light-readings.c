/* test-light-readings.c - what each light gives where it matters
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "bounce.h"
#include "light_readings.h"

/* A light at the height of Wenna's eyes, whose front is @distance_m from them, on the line that goes from them along +y. It is @ahead_m
 * in front of its stand. */
static LrPlan *
lit_plan (LrLightForm form,
          double      distance_m,
          double      ahead_m,
          const char **id)
{
  LrPlan *plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec3 eyes_m = lr_study_find_placed (study, WENNA)->eyes_m;

  *id = fixture_add (&plan, LR_ITEM_LIGHT, form, eyes_m.x, eyes_m.y + distance_m + ahead_m);
  fixture_text (&plan, *id, "aims-at", WENNA);
  fixture_set (&plan, *id, "lamp-height-mm", eyes_m.z);
  return plan;
}

static LrLightAt
at_aim (const LrPlan *plan,
        const char   *id)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrLightAt at = { 0 };

  g_assert_true (lr_light_at_aim (study, lr_study_find_placed (study, id), &at));
  return at;
}

/* 5000 cd/m2 of 0.9 m by 1.2 m at 1.5 m: 2060.26 lx (Siegel and Howell, configuration factor of a rectangle; by numerical integration
 * too). Lambertian, so the flux is pi L A; half of it dimmed */
static void
test_panel (void)
{
  const char *id;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_WIDE, 1.5, 0.16, &id);
  LrLightAt at;

  fixture_set (&plan, id, "width-mm", 0.9);
  fixture_set (&plan, id, "height-mm", 1.2);
  fixture_set (&plan, id, "beam-deg", 120.0 * LR_DEG);
  fixture_set (&plan, id, "output-lm", round (LR_PI * 5000.0 * 0.9 * 1.2));
  fixture_set (&plan, id, "dim-pct", 1.0);
  at = at_aim (plan, id);
  assert_within (at.lux, 2060.26, 2e-3); /* places are whole millimetres */
  assert_near (at.seen_share, 1.0, 1e-12);
  fixture_set (&plan, id, "dim-pct", 0.5);
  assert_within (at_aim (plan, id).lux, 0.5 * 2060.26, 2e-3);
}

/* 3000 lm in a beam of 60 degrees: 444.53 lx on the axis at 2.5 m (cosine-power lobe, closed form) */
static void
test_point (void)
{
  const char *id;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_POINT, 2.5, 0.065, &id);

  fixture_set (&plan, id, "beam-deg", 60.0 * LR_DEG);
  fixture_set (&plan, id, "output-lm", 3000.0);
  fixture_set (&plan, id, "dim-pct", 1.0);
  assert_within (at_aim (plan, id).lux, 444.53, 2e-3);
}

typedef struct
{
  const char *name;
  double      from_x_m, to_x_m; /* of a flag half-way, from the line between eyes and lamp */
  double      share;            /* of the light of a source .8 m wide that comes past it */
} FlagCase;

/* Similar triangles: half-way the source is half as wide, .4 m. Of the quarter at its side comes less than a quarter: the factor of a
 * rectangle in closed form (Tregenza and Sharples, 3.14), from .2 to .4 m aside at 1.6 m */
static const FlagCase flag_cases[] = {
  { "beside", 0.3, 1.3, 1.0 },
  { "half", 0.0, 1.0, 0.5 },
  { "three-quarters", -0.1, 0.9, 0.24255 },
  { "all", -0.5, 0.5, 0.0 },
};

static void
test_flag (gconstpointer data)
{
  const FlagCase *c = data;
  const char *id, *flag;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_WIDE, 1.6, 0.16, &id);
  g_autoptr (LrStudy) study = NULL;
  LrVec3 eyes_m;
  LrLightAt at;

  study = lr_study_new (plan);
  eyes_m = lr_study_find_placed (study, WENNA)->eyes_m;
  fixture_set (&plan, id, "width-mm", 0.8);
  fixture_set (&plan, id, "height-mm", 0.8);
  flag = fixture_add (&plan, LR_ITEM_PANEL, LR_PANEL_FLAG, eyes_m.x + 0.5 * (c->from_x_m + c->to_x_m), eyes_m.y + 0.8);
  fixture_set (&plan, flag, "facing-deg", 0.5 * LR_PI);
  fixture_set (&plan, flag, "width-mm", c->to_x_m - c->from_x_m);
  fixture_set (&plan, flag, "bottom-mm", 0.3);
  fixture_set (&plan, flag, "height-mm", 1.9);
  at = at_aim (plan, id);
  assert_near (at.seen_share, c->share, 1e-4);
}

/* A stop less is sqrt 2 as far from a point; from a panel it is farther, since near it the level falls slower. The place of a stop is
 * where the level is: by lr_emitter_axis_lx(), which has its own tests. */
static void
test_stops (void)
{
  const char *id, *panel;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_POINT, 2.5, 0.065, &id), wide = lit_plan (LR_LIGHT_WIDE, 1.0, 0.16, &panel);
  g_autoptr (LrStudy) study = lr_study_new (plan), wide_study = NULL;
  double along_m = NAN, lux = NAN, aim_lux = NAN;
  LrEmitter emitter;

  g_assert_true (lr_light_stop_m (study, lr_study_find_placed (study, id), 2.065, -1, &along_m));
  assert_near (along_m, 0.065 + 2.0 * sqrt (2.0), 1e-6);
  g_assert_true (lr_light_stop_m (study, lr_study_find_placed (study, id), 2.065, 2, &along_m));
  assert_near (along_m, 0.065 + 1.0, 1e-6);

  fixture_set (&wide, panel, "width-mm", 1.2);
  fixture_set (&wide, panel, "height-mm", 1.2);
  wide_study = lr_study_new (wide);
  g_assert_true (lr_light_stop_m (wide_study, lr_study_find_placed (wide_study, panel), 1.16, -1, &along_m));
  g_assert_cmpfloat (along_m, >, 0.16 + sqrt (2.0) + 0.02);
  g_assert_true (lr_light_emitter (wide_study, lr_study_find_placed (wide_study, panel), &emitter));
  g_assert_true (lr_emitter_axis_lx (&emitter, 1.0, &aim_lux));
  g_assert_true (lr_emitter_axis_lx (&emitter, along_m - 0.16, &lux));
  assert_within (lux, 0.5 * aim_lux, 1e-6);
  g_assert_false (lr_light_stop_m (wide_study, lr_study_find_placed (wide_study, panel), 1.16, 5, &along_m)); /* brighter than its face */
}

/* It aims at nobody, or gives nothing: it is not told */
static void
test_unknown (void)
{
  const char *id;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_WIDE, 1.5, 0.16, &id);
  g_autoptr (LrStudy) study = NULL, loose = NULL;
  LrLightAt at = { 123.0, 0.0 };

  fixture_set (&plan, id, "output-lm", 0.0);
  study = lr_study_new (plan);
  g_assert_false (lr_light_at_aim (study, lr_study_find_placed (study, id), &at));
  fixture_set (&plan, id, "output-lm", 1000.0);
  fixture_text (&plan, id, "aims-at", "");
  loose = lr_study_new (plan);
  g_assert_false (lr_light_at_aim (loose, lr_study_find_placed (loose, id), &at));
  g_assert_cmpfloat (at.lux, ==, 123.0);
}

/* With a file its intensities count and not the plan's output and beam: 1000 cd at 2.5 m give 160 lx (distance law), dimmed the same share of it.
 * Without it the plan's count again */
static void
test_file (void)
{
  const char *id;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_POINT, 2.5, 0.065, &id);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  double along_m = NAN, by_plan_lx;
  LrPlan *next;

  fixture_set (&plan, id, "output-lm", 50000.0);
  fixture_set (&plan, id, "dim-pct", 1.0);
  by_plan_lx = at_aim (plan, id).lux;
  fixture_lamp (&plan, id, 1000.0, 1.0, 0.0, 0.0);
  assert_within (at_aim (plan, id).lux, 160.0, 2e-3);
  fixture_set (&plan, id, "dim-pct", 0.25);
  assert_within (at_aim (plan, id).lux, 40.0, 2e-3);
  fixture_set (&plan, id, "output-lm", 0.0);
  assert_within (at_aim (plan, id).lux, 40.0, 2e-3);
  study = lr_study_new (plan);
  g_assert_true (lr_light_stop_m (study, lr_study_find_placed (study, id), 2.065, -1, &along_m));
  assert_near (along_m, 0.065 + 2.0 * sqrt (2.0), 1e-6);

  next = lr_plan_set_lamp_file (plan, id, "", NULL, 0, &error);
  g_assert_no_error (error);
  lr_plan_unref (plan);
  plan = next;
  fixture_set (&plan, id, "output-lm", 50000.0);
  fixture_set (&plan, id, "dim-pct", 1.0);
  assert_within (at_aim (plan, id).lux, by_plan_lx, 1e-12);
}

/* A matte face of 0.9 m by 1.2 m with 5000 cd/m2 is the panel of test_panel(): 5400 cd, 2060.26 lx at 1.5 m; half hidden, as there */
static void
test_file_with_size (void)
{
  const char *id, *flag;
  g_autoptr (LrPlan) plan = lit_plan (LR_LIGHT_WIDE, 1.5, 0.16, &id), half = lit_plan (LR_LIGHT_WIDE, 1.6, 0.16, &flag);
  const char *lamp = flag;
  g_autoptr (LrStudy) study = lr_study_new (half);
  LrVec3 eyes_m = lr_study_find_placed (study, WENNA)->eyes_m;

  fixture_set (&plan, id, "width-mm", 0.9);
  fixture_set (&plan, id, "height-mm", 1.2);
  fixture_set (&plan, id, "dim-pct", 1.0);
  fixture_lamp (&plan, id, 5400.0, 1.0, 0.0, 0.0);
  assert_within (at_aim (plan, id).lux, 2060.26, 2e-3);
  fixture_set (&plan, id, "width-mm", 0.2); /* drawn smaller, still upright: the file's size counts */
  fixture_set (&plan, id, "height-mm", 0.3);
  fixture_lamp (&plan, id, 5400.0, 1.0, 1.2, 0.9);
  assert_within (at_aim (plan, id).lux, 2060.26, 2e-3);

  fixture_lamp (&half, lamp, 1000.0, 1.0, 0.8, 0.8);
  flag = fixture_add (&half, LR_ITEM_PANEL, LR_PANEL_FLAG, eyes_m.x + 0.5, eyes_m.y + 0.8);
  fixture_set (&half, flag, "facing-deg", 0.5 * LR_PI);
  fixture_set (&half, flag, "width-mm", 1.0);
  fixture_set (&half, flag, "bottom-mm", 0.3);
  fixture_set (&half, flag, "height-mm", 1.9);
  assert_near (at_aim (half, lamp).seen_share, 0.5, 1e-4);
}

/* All the light of a lamp that shines all round, 4 pi 100 cd, falls on what is in the room: behind the lamp as well */
static void
test_file_all_round (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.7);
  const char *id = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 3.2, 2.4);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightShade) shade = NULL;
  g_autoptr (GArray) sources = NULL;
  g_autoptr (LrBounce) bounce = NULL;

  fixture_set (&plan, id, "lamp-height-mm", 1.4);
  fixture_set (&plan, id, "dim-pct", 1.0);
  fixture_lamp (&plan, id, 100.0, -1.0, 0.0, 0.0);
  study = lr_study_new (plan);
  shade = lr_light_shade_new (study);
  sources = lr_light_sources (study);
  bounce = lr_bounce_solve (study, shade, sources, NULL);
  assert_within (bounce->flux_lm, 4.0 * LR_PI * 100.0, 0.03);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light-readings/panel", test_panel);
  g_test_add_func ("/light-readings/point", test_point);
  add_rows ("/light-readings/flag", flag_cases, test_flag);
  g_test_add_func ("/light-readings/stops", test_stops);
  g_test_add_func ("/light-readings/unknown", test_unknown);
  g_test_add_func ("/light-readings/file", test_file);
  g_test_add_func ("/light-readings/file-with-size", test_file_with_size);
  g_test_add_func ("/light-readings/file-all-round", test_file_all_round);
  return g_test_run ();
}
