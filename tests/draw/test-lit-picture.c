/* test-lit-picture.c - a picture in the set's light: shadows on the wall, and everything in its own light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "picture.h"
#include "scene_light.h"

/* One channel, as linear light (IEC 61966-2-1) */
static double
linear (guint32 pixel)
{
  double v = (pixel >> 8 & 0xff) / 255.0;

  return v <= 0.04045 ? v / 12.92 : pow ((v + 0.055) / 1.055, 2.4);
}

static double
light_at (const Picture         *picture,
          const LrCameraReading *camera,
          LrVec3                 at_m)
{
  LrFramePoint place;

  g_assert_true (lr_projection_point (&camera->projection, at_m, &place));
  g_assert_true (place.across > 0.0 && place.across < 1.0 && place.down > 0.0 && place.down < 1.0);
  return linear (pixel (picture, place.across, place.down));
}

static LrPlan *
lit_interview (void)
{
  LrPlan *plan = fixture_interview ();

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 4.7, 3.7);
  fixture_text (&plan, "light-1", "aims-at", WENNA);
  fixture_set (&plan, "light-1", "lamp-height-mm", 1.5);
  fixture_set (&plan, "light-1", "output-lm", 1500.0);
  return plan;
}

/* The middle of the head's shadow is where similar triangles have it. What the picture shows there, over what it shows of the wall beside
 * it, is the light that is left over all of it: a linear picture of a matte wall (Lambert) */
static void
test_shadow (void)
{
  g_autoptr (LrPlan) plan = lit_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrPlaced *wenna = lr_study_find_placed (study, WENNA);
  const LrCameraReading *camera = fixture_camera (study, CAMERA_A);
  const LrWallLight *light = lr_light_levels_wall (levels, 3);
  LrVec3 head_m = lr_vec2_raise (wenna->at_m, wenna->body.crown_m - 0.5 * wenna->body.head_height_m), at_m, beside_m;
  Picture picture = picture_draw (plan, CAMERA_A, &(LrViewfinderStyle) { .width = WIDTH, .levels = levels });
  LrEmitter lamp;
  double k, ratio, shown;

  g_assert_true (lr_light_emitter (study, lr_study_find_placed (study, "light-1"), &lamp));
  k = lamp.at_m.x / (lamp.at_m.x - head_m.x);
  at_m = lr_vec3 (0.0, lamp.at_m.y + k * (head_m.y - lamp.at_m.y), lamp.at_m.z + k * (head_m.z - lamp.at_m.z));
  beside_m = lr_vec3 (0.0, at_m.y - 0.45, at_m.z + 0.3);
  ratio = lr_wall_light_lx (light, (6.0 - at_m.y) / 6.0, at_m.z / 2.7) / lr_wall_light_lx (light, (6.0 - beside_m.y) / 6.0, beside_m.z / 2.7);
  shown = light_at (&picture, camera, at_m) / light_at (&picture, camera, beside_m);
  g_test_message ("%.3f of the light beside it, shown %.3f", ratio, shown);
  g_assert_cmpfloat (ratio, <, 0.4);
  g_assert_cmpfloat_with_epsilon (shown, ratio, 0.03);
  cairo_surface_destroy (picture.surface);
}

/* Each person's gain is that of their own brighter cheek, as the camera takes it; furniture is brighter on the side that has more light,
 * by as much (the levels) */
static void
test_own_light (void)
{
  g_autoptr (LrPlan) plan = lit_interview ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  const LrFaceLight *wenna, *ines;
  const LrThingLight *thing;
  LrModelling a, b;
  LrScene *scene;
  LrVec3 ahead;

  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 1.5, 2.0);
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  scene = lr_scene_new (study, fixture_camera (study, CAMERA_A), levels);
  a = b = scene->modelling;
  wenna = lr_light_levels_face (levels, WENNA);
  ines = lr_light_levels_face (levels, INES);
  lr_scene_model_person (scene, lr_study_find_placed (study, WENNA), &a);
  lr_scene_model_person (scene, lr_study_find_placed (study, INES), &b);
  g_assert_cmpfloat_with_epsilon (a.gain, scene->modelling.gain, 1e-9); /* she is the subject */
  g_assert_cmpfloat (lr_lux_all (ines->at[ines->lit]), <, 0.8 * lr_lux_all (wenna->at[wenna->lit]));
  g_assert_cmpfloat (b.gain, <, 0.8 * a.gain);

  thing = lr_light_levels_thing (levels, "furniture-1");
  g_assert_nonnull (thing);
  ahead = lr_vec2_raise (lr_vec2_polar (thing->thing->facing_rad, 1.0), 0.0);
  lr_scene_enter (scene, lr_study_find_placed (study, "furniture-1"));
  g_assert_cmpfloat (thing->lx[LR_THING_AHEAD], >, 1.2 * thing->lx[LR_THING_BACK]); /* the lamp is that way */
  g_assert_cmpfloat_with_epsilon (lr_scene_light_here (scene, ahead) / lr_scene_light_here (scene, lr_vec3 (0.0, 0.0, 1.0)),
                                  thing->lx[LR_THING_AHEAD] / thing->lx[LR_THING_TOP], 1e-6);
  lr_scene_free (scene);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lit-picture/shadow", test_shadow);
  g_test_add_func ("/lit-picture/own-light", test_own_light);
  return g_test_run ();
}
