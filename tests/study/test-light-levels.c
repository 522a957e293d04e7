/* test-light-levels.c - what light reaches faces, clothes and walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "bounce.h"
#include "light_levels_private.h"
#include "wall_surface.h"

#define FLUX_LM 6000.0

static void
set_reflectance (LrPlan     **plan,
                 const char  *key,
                 double       reflectance)
{
  GError *error = NULL;
  LrPlan *next = lr_plan_set_room (*plan, key, reflectance, &error);

  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = next;
}

/* Somebody who sits in the middle of a room and looks along +x; nothing else is in it */
static LrPlan *
make_room (double walls,
           double ceiling,
           double floor)
{
  LrPlan *plan = fixture_room (6.0, 5.0, 2.7);
  const char *id = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0, 2.5);

  fixture_set (&plan, id, "facing-deg", 0.0);
  set_reflectance (&plan, "walls.reflectance-pct", walls);
  set_reflectance (&plan, "ceiling.reflectance-pct", ceiling);
  set_reflectance (&plan, "floor.reflectance-pct", floor);
  return plan;
}

/* A point all round its front, @distance_m from the middle of the head, @around_deg off the look, at its height */
static const char *
add_lamp (LrPlan **plan,
          double   distance_m,
          double   around_deg,
          double   lumen)
{
  g_autoptr (LrStudy) study = lr_study_new (*plan);
  const LrPlaced *person = study->subject;
  LrVec2 way = lr_vec2_polar (around_deg * LR_DEG, distance_m);
  const char *id = fixture_add (plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, person->at_m.x + way.x, person->at_m.y + way.y);

  fixture_text (plan, id, "aims-at", person->item->id);
  fixture_set (plan, id, "lamp-height-mm", person->body.crown_m - 0.5 * person->body.head_height_m);
  fixture_set (plan, id, "aim-height-mm", person->body.crown_m - 0.5 * person->body.head_height_m);
  fixture_set (plan, id, "beam-deg", 120.0 * LR_DEG);
  fixture_set (plan, id, "output-lm", lumen);
  fixture_set (plan, id, "dim-pct", 1.0);
  return id;
}

/* Two lamps 45 degrees off the look, the left one twice as strong. Far from a matte ball each cheek, 40 degrees round, would get
 * K cos 5 + F cos 85. From a cheek that is .085 m before the middle the lamps, 2.335 m from it, are 2.25 and 2.34 m away, the other
 * one 86.9 degrees off: by hand (2 x .996 / 2.25^2 + .054 / 2.34^2) / (.996 / 2.25^2 + 2 x .054 / 2.34^2) = 1.864, .898 stops */
static void
test_ratio (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
  g_autofree char *key = g_strdup (add_lamp (&plan, 2.4, 45.0, 2.0 * FLUX_LM));
  g_autofree char *fill = g_strdup (add_lamp (&plan, 2.4, -45.0, FLUX_LM));
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, FALSE, NULL);
  const LrFaceLight *face = lr_light_levels_face (levels, "person-1");
  double from_fill_lx = lr_light_levels_source_lx (levels, fill, "person-1", LR_FACE_RIGHT);

  g_assert_nonnull (face);
  g_assert_false (lr_light_levels_is_whole (levels));
  g_assert_cmpint (face->lit, ==, LR_FACE_LEFT);
  g_assert_cmpstr (face->key->item->id, ==, key);
  assert_near (face->ratio_stops, 0.898, 0.02);
  assert_near (face->key_side_rad / LR_DEG, 45.0, 2.0); /* from the eyes, .08 m ahead of the middle */
  g_assert_cmpfloat (face->key_side_rad, >, 0.0);
  assert_within (face->fill_lx, from_fill_lx, 1e-9);
  assert_within (face->key_lx / from_fill_lx, 2.0, 1e-6);
}

/* I = lumen 2 / (2 pi) on the axis of a lobe of 1; the forehead's face turns up 28 degrees; the distance is to the forehead. By hand */
static void
test_level (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
  g_autofree char *key = g_strdup (add_lamp (&plan, 2.5, 0.0, FLUX_LM));
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, FALSE, NULL);
  double candela = FLUX_LM / LR_PI, distance_m = 2.5 - 0.065 - 0.09; /* lamp before its stand, forehead before the head's middle */

  assert_within (lr_light_levels_source_lx (levels, key, "person-1", LR_FACE_FOREHEAD), candela * cos (28.0 * LR_DEG) / (distance_m * distance_m),
                 0.06);
  assert_near (lr_light_levels_source_lx (levels, key, "person-1", LR_FACE_BACK), 0.0, 1e-9);
}

/* White walls and ceiling give the shadow side light, black drapes give it next to none. The mean of what comes back is, by the sphere's
 * theory (Sumpner), flux rho1 / (A (1 - rho)), rho1 where the lamp shines, rho the mean; a point's value may be half as much again */
static void
test_white_and_black (void)
{
  double area_m2 = 2.0 * 6.0 * 5.0 + 2.7 * 22.0, mean = (30.0 * 0.2 + 30.0 * 0.8 + 59.4 * 0.8) / area_m2;
  double expected_lx = FLUX_LM * 0.8 / (area_m2 * (1.0 - mean)), fill_lx[2];

  for (int black = 0; black < 2; black++)
    {
      g_autoptr (LrPlan) plan = black ? make_room (0.03, 0.03, 0.03) : make_room (0.8, 0.8, 0.2);
      g_autofree char *key = g_strdup (add_lamp (&plan, 2.4, 45.0, FLUX_LM));
      g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
      const LrFaceLight *face = lr_light_levels_face (levels, "person-1");

      g_assert_true (lr_light_levels_is_whole (levels));
      fill_lx[black] = face->fill_lx;
      g_test_message ("%s: %.1f lx on the shadow side, %.2f stops", black ? "black" : "white", face->fill_lx, face->ratio_stops);
    }
  g_assert_cmpfloat (fill_lx[0], >, 0.5 * expected_lx);
  g_assert_cmpfloat (fill_lx[0], <, 1.7 * expected_lx);
  g_assert_cmpfloat (log2 (fill_lx[0] / fill_lx[1]), >, 4.0);
}

/* 18 % grey clothes in the light that the meter's constant asks for, 250 x 2.8^2 x 50 / 400 = 245 lx (ISO 2720), would come out at
 * 40.9 % (ITU-R BT.709-6: 1.099 x .18^.45 - .099). Focused at 1.9 m a lens of 50 mm stands m = .0275 further out and loses
 * 2 log2 (1 + m) = .078 stops: 39.7 %, and a stop more 57.9 %, by hand */
static void
test_signals (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 5.0, 2.4);
  LrShares shares;
  double lux, expected;

  fixture_text (&plan, camera, "aims-at", "person-1");
  fixture_set (&plan, camera, "f-number", 2.8);
  fixture_set (&plan, camera, "shutter-s", 0.02);
  fixture_set (&plan, camera, "iso", 400.0);
  fixture_set (&plan, "person-1", "clothing-reflectance-pct", 0.18);
  add_lamp (&plan, 2.0, 20.0, 1000.0);
  {
    g_autoptr (LrLightLevels) once = lr_light_levels_new (plan, FALSE, NULL);

    lux = lr_lux_all (lr_light_levels_face (once, "person-1")->at[LR_FACE_CHEST]);
    fixture_set (&plan, "light-1", "output-lm", round (1000.0 * 245.0 / lux));
  }
  for (int stops = 0; stops < 2; stops++)
    {
      g_autoptr (LrLightLevels) levels = NULL;

      fixture_set (&plan, camera, "iso", 400.0 * exp2 (stops));
      levels = lr_light_levels_new (plan, FALSE, NULL);
      g_assert_true (lr_light_levels_shares (levels, camera, &shares));
      expected = stops == 0 ? 0.397 : 0.579;
      assert_near (lr_signal_of_share (shares.clothes), expected, 0.003);
      g_assert_cmpfloat (shares.face, >, shares.shadow);
    }
  g_assert_false (isnan (shares.background));
}

/* What a camera sees of the wall: more where the wall light is */
static void
test_background (void)
{
  g_autoptr (LrPlan) plan = make_room (0.6, 0.7, 0.2);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 5.2, 2.5);
  double before_lx;

  fixture_text (&plan, camera, "aims-at", "person-1");
  add_lamp (&plan, 2.0, 40.0, 3000.0);
  {
    g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
    const LrBackLight *back = lr_light_levels_background (levels, camera);

    g_assert_cmpuint (back->n, >, 8);
    assert_near (back->reflectance, 0.6, 1e-9);
    before_lx = lr_lux_all (back->mean);
    g_assert_cmpfloat (back->least_lx, <=, before_lx);
    g_assert_cmpfloat (back->most_lx, >=, before_lx);
  }
  {
    const char *wall = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 1.5, 0.8);
    g_autoptr (LrLightLevels) levels = NULL;

    fixture_set (&plan, wall, "facing-deg", 120.0 * LR_DEG);
    fixture_set (&plan, wall, "output-lm", 3000.0);
    levels = lr_light_levels_new (plan, TRUE, NULL);
    g_assert_cmpfloat (lr_lux_all (lr_light_levels_background (levels, camera)->mean), >, 1.5 * before_lx);
  }
}

/* The patches take in all that a lamp sends out, within what their number allows, and absorb it all: sum of A (1 - rho) E. Furniture
 * takes its part. In a room round a corner nothing is lit straight, and something by the walls */
static void
test_room (void)
{
  static const LrVec2 l_shape_m[] = { { 0.0, 0.0 }, { 6.0, 0.0 }, { 6.0, 3.0 }, { 3.0, 3.0 }, { 3.0, 7.0 }, { 0.0, 7.0 } };

  for (int shape = 0; shape < 3; shape++)
    {
      g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.7);
      g_autoptr (LrStudy) study = NULL;
      g_autoptr (LrLightShade) shade = NULL;
      g_autoptr (LrBounce) bounce = NULL;
      g_autoptr (GArray) sources = NULL;
      double absorbed_lm = 0.0;

      fixture_add (&plan, LR_ITEM_HOUSE_LIGHT, 0, 4.9, 1.2);
      fixture_set (&plan, "house-light-1", "is-on", 1.0);
      fixture_set (&plan, "house-light-1", "height-mm", 2.3);
      fixture_set (&plan, "house-light-1", "output-lm", FLUX_LM);
      if (shape == 1)
        {
          fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 4.0, 2.0);
          fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 1.0, 4.6);
        }
      if (shape == 2)
        {
          LrPlan *next = lr_plan_set_corners (plan, l_shape_m, G_N_ELEMENTS (l_shape_m), NULL);

          lr_plan_unref (plan);
          plan = next;
        }
      study = lr_study_new (plan);
      shade = lr_light_shade_new (study);
      sources = lr_light_sources (study);
      bounce = lr_bounce_solve (study, shade, sources, NULL);
      for (guint i = 0; i < bounce->patches->len; i++)
        {
          const LrPatch *patch = &g_array_index (bounce->patches, LrPatch, i);

          absorbed_lm += patch->area_m2 * (1.0 - patch->reflectance) * bounce->lux[i];
        }
      g_test_message ("shape %d: %u patches, %.0f of %.0f lm, %.0f absorbed", shape, bounce->patches->len, bounce->flux_lm, FLUX_LM, absorbed_lm);
      assert_within (bounce->flux_lm, FLUX_LM, 0.03);
      assert_within (absorbed_lm, bounce->flux_lm, 1e-3);
      if (shape == 2)
        {
          LrVec3 at_m = { 1.0, 6.5, 1.2 }, up = { 0.0, 0.0, 1.0 };

          g_assert_cmpfloat (lr_light_source_lx (&g_array_index (sources, LrLightSource, 0).emitter, shade, at_m, up, NULL, NULL), ==, 0.0);
          g_assert_cmpfloat (lr_bounce_lx (bounce, shade, at_m, up, NULL), >, 1.0);
          g_assert_cmpfloat (lr_bounce_lx (bounce, shade, at_m, up, NULL), <, lr_bounce_lx (bounce, shade, lr_vec3 (4.9, 1.2, 1.2), up, NULL));
        }
    }
}

/* Along each wall of an empty room the light is that of the patches it was cut into, which is solved apart; the brightest place of the
 * wall that a bulb hangs near is opposite it (inverse squares and cosines: both fall off from the foot of the perpendicular) */
static void
test_walls (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightShade) shade = NULL;
  g_autoptr (LrBounce) bounce = NULL;
  g_autoptr (GArray) sources = NULL, walls = NULL;
  const LrRoom *room;
  guint n_near = 0, n_places = 0, n_off = 0;

  fixture_add (&plan, LR_ITEM_HOUSE_LIGHT, 0, 4.9, 1.2);
  fixture_set (&plan, "house-light-1", "is-on", 1.0);
  fixture_set (&plan, "house-light-1", "height-mm", 1.6);
  study = lr_study_new (plan);
  room = study->setup->room;
  shade = lr_light_shade_new (study);
  sources = lr_light_sources (study);
  bounce = lr_bounce_solve (study, shade, sources, NULL);
  walls = lr_wall_lights (bounce, study, shade, shade, sources, NULL);
  g_assert_cmpuint (walls->len, ==, room->n_corners);
  for (guint w = 0; w < walls->len; w++)
    {
      const LrWallLight *light = &g_array_index (walls, LrWallLight, w);
      const LrWallPatches *cut = &g_array_index (bounce->walls, LrWallPatches, w);
      LrVec2 from_m, along;
      double length_m, best_lx = 0.0, best_along = 0.0, foot, sum_lx = 0.0;

      lr_room_wall (room, (int) w, &from_m, &along, &length_m);
      foot = lr_vec2_dot (lr_vec2_sub (lr_vec2 (4.9, 1.2), from_m), along) / length_m;
      for (guint i = 0; i < cut->n * cut->m; i++)
        {
          double s = (i % cut->n + 0.5) / cut->n, t = (i / cut->n + 0.5) / cut->m, lx = lr_wall_light_lx (light, s, t);

          g_assert_cmpint (cut->patch[i], >=, 0);
          n_places++;
          n_off += fabs (lx / bounce->lux[cut->patch[i]] - 1.0) > 0.08; /* at the edges of shadows */
          sum_lx += bounce->lux[cut->patch[i]];
        }
      assert_within (light->mean_lx, sum_lx / (cut->n * cut->m), 0.02);
      for (guint i = 0; i < 200; i++)
        {
          double lx = lr_wall_light_lx (light, (i + 0.5) / 200.0, 0.55);

          if (lx > best_lx)
            {
              best_lx = lx;
              best_along = (i + 0.5) / 200.0;
            }
        }
      if (lr_vec2_dot (lr_vec2_sub (lr_vec2 (4.9, 1.2), from_m), lr_vec2_left (along)) < 1.5)
        {
          g_assert_cmpfloat (fabs (best_along - foot) * length_m, <, 0.25);
          n_near++;
        }
      g_assert_cmpfloat (light->least_lx, <=, light->mean_lx);
      g_assert_cmpfloat (light->mean_lx, <=, light->most_lx);
    }
  g_assert_cmpuint (n_near, >, 0);
  g_test_message ("%u of %u places off by more than 8 %%", n_off, n_places);
  g_assert_cmpuint (20 * n_off, <, n_places);
}

/* A lamp's head stands in the way of another's light, and in no way of its own: light goes straight (any book of optics). With the head of
 * a wide lamp on the line nothing of the other comes through; aside, all of it; and the near lamp shines as if it were alone */
static void
test_lamp_in_the_way (void)
{
  double far_lx[3], near_lx[2];

  for (int where = 0; where < 3; where++)
    {
      g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
      g_autofree char *far = g_strdup (add_lamp (&plan, 2.4, 0.0, FLUX_LM)), *near = NULL;
      g_autoptr (LrLightLevels) levels = NULL;

      if (where > 0)
        near = g_strdup (add_lamp (&plan, 1.2, where == 1 ? 0.0 : 60.0, FLUX_LM));
      if (near != NULL)
        fixture_set (&plan, near, "form", LR_LIGHT_WIDE);
      levels = lr_light_levels_new (plan, FALSE, NULL);
      far_lx[where] = lr_light_levels_source_lx (levels, far, "person-1", LR_FACE_FOREHEAD);
      if (where == 1)
        {
          near_lx[0] = lr_light_levels_source_lx (levels, near, "person-1", LR_FACE_FOREHEAD);
          fixture_set (&plan, far, "dim-pct", 0.0);
          lr_light_levels_unref (levels);
          levels = lr_light_levels_new (plan, FALSE, NULL);
          near_lx[1] = lr_light_levels_source_lx (levels, near, "person-1", LR_FACE_FOREHEAD);
        }
    }
  g_assert_cmpfloat (far_lx[0], >, 100.0);
  assert_near (far_lx[1], 0.0, 1e-9);
  assert_within (far_lx[2], far_lx[0], 1e-9);
  g_assert_cmpfloat (near_lx[0], >, 100.0);
  assert_within (near_lx[0], near_lx[1], 1e-9);
}

/* What is seen in a window is glass but where a blind hangs, half a blind over the upper half; the wall is wall around it */
static void
test_wall_surface (void)
{
  static const struct { LrBlind blind; double z_m; gboolean is_glass; } places[] = {
    { LR_BLIND_NONE, 1.2, TRUE }, { LR_BLIND_UP, 1.2, TRUE }, { LR_BLIND_HALF, 1.2, TRUE }, { LR_BLIND_HALF, 1.9, FALSE }, { LR_BLIND_DOWN, 1.2, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr (LrPlan) plan = make_room (0.7, 0.7, 0.2);
      g_autoptr (LrStudy) study = NULL;
      double at_window, beside;

      fixture_add (&plan, LR_ITEM_WINDOW, places[i].blind, 3.0, 0.0);
      fixture_set (&plan, "window-1", "blind", places[i].blind);
      fixture_set (&plan, "window-1", "sill-mm", 0.8);
      fixture_set (&plan, "window-1", "head-mm", 2.2);
      study = lr_study_new (plan);
      at_window = lr_wall_reflectance (study, 0, 3.0, places[i].z_m);
      beside = lr_wall_reflectance (study, 0, 0.3, places[i].z_m);
      assert_near (beside, 0.7, 1e-9);
      g_assert_cmpfloat (at_window, <, beside);
      g_assert_cmpint (at_window < 0.2, ==, places[i].is_glass);
    }
}

/* Over the floor of a black room, on the axis of a lobe of 1: I = lumen 2 / (2 pi), and the light goes by inverse squares; by hand.
 * Between the points of the net it is a little more. Off the net and in what is higher than eyes nothing is known. */
static void
test_map (void)
{
  LrPlan *plan = fixture_room (6.0, 5.0, 2.7);
  g_autoptr (LrLightLevels) levels = NULL;
  const LrLevelMap *map;

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_POINT, 0.6, 2.5);
  fixture_set (&plan, "light-1", "facing-deg", 0.0);
  fixture_set (&plan, "light-1", "tilt-deg", 0.0);
  fixture_set (&plan, "light-1", "lamp-height-mm", 1.2);
  fixture_set (&plan, "light-1", "beam-deg", 120.0 * LR_DEG);
  fixture_set (&plan, "light-1", "output-lm", FLUX_LM);
  fixture_set (&plan, "light-1", "dim-pct", 1.0);
  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 5.0, 0.8);
  fixture_set (&plan, "furniture-1", "height-mm", 1.9);
  set_reflectance (&plan, "walls.reflectance-pct", 0.0);
  set_reflectance (&plan, "ceiling.reflectance-pct", 0.0);
  set_reflectance (&plan, "floor.reflectance-pct", 0.0);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  map = lr_light_levels_map (levels);
  g_assert_nonnull (map);
  assert_near (map->height_m, 1.2, 1e-9);
  for (double distance_m = 1.5; distance_m < 5.0; distance_m += 0.25)
    assert_within (lr_level_map_lx (map, lr_vec2 (0.6 + 0.065 + distance_m, 2.5)), FLUX_LM / LR_PI / (distance_m * distance_m),
                   distance_m < 2.0 ? 0.05 : 0.03);
  g_assert_true (isnan (lr_level_map_lx (map, lr_vec2 (5.0, 0.8))));
  g_assert_true (isnan (lr_level_map_lx (map, lr_vec2 (-1.0, 2.5))));
  g_assert_true (isnan (lr_level_map_lx (map, lr_vec2 (3.0, 5.6))));
  lr_plan_unref (plan);
}

/* Straight light is that of the plan; the room's is as it was before, until somebody has come of whom it is not known */
static void
test_straight (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.7, 0.3);
  const char *lamp = add_lamp (&plan, 2.0, 40.0, FLUX_LM);
  g_autoptr (LrLightLevels) whole = lr_light_levels_new (plan, TRUE, NULL), moved = NULL, later = NULL, joined = NULL, alone = NULL, other = NULL;
  const LrFaceLight *face = &g_array_index (whole->faces, LrFaceLight, 0), *now;

  g_assert_true (lr_light_levels_is_settled (whole) && lr_light_levels_get_settled (whole) == whole);
  fixture_set (&plan, lamp, "dim-pct", 0.5);
  moved = lr_light_levels_new_straight (plan, whole);
  later = lr_light_levels_new_straight (plan, moved);
  now = &g_array_index (moved->faces, LrFaceLight, 0);
  g_assert_true (lr_light_levels_is_whole (moved) && !lr_light_levels_is_settled (moved));
  g_assert_true (lr_light_levels_get_settled (moved) == whole && lr_light_levels_get_settled (later) == whole);
  for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
    {
      g_assert_cmpfloat_with_epsilon (now->at[point].direct_lx, 0.5 * face->at[point].direct_lx, 1e-9);
      g_assert_cmpfloat (now->at[point].bounced_lx, ==, face->at[point].bounced_lx);
    }
  g_assert_true (lr_light_levels_wall (moved, 1) == lr_light_levels_wall (whole, 1) && lr_light_levels_map (later) == lr_light_levels_map (whole));
  g_assert_true (lr_light_levels_shine_alike (moved, later) && !lr_light_levels_shine_alike (moved, whole));

  other = lr_light_levels_new (plan, TRUE, NULL);
  g_assert_false (lr_light_levels_shine_alike (moved, other)); /* the room's light is another */

  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_OTHER, 1.0, 1.0);
  joined = lr_light_levels_new_straight (plan, whole);
  alone = lr_light_levels_new_straight (plan, NULL);
  g_assert_true (!lr_light_levels_is_whole (joined) && lr_light_levels_get_settled (joined) == NULL && lr_light_levels_map (joined) == NULL);
  g_assert_true (!lr_light_levels_is_whole (alone) && lr_light_levels_shine_alike (joined, alone));
}

/* A lamp whose file says what the plan said of it, a matte face with its output, gives the same everywhere: faces, the walls behind, straight and
 * thrown back, and the net over the floor. A flux of pi 1000 lm over a beam of 120 degrees is 1000 cd cos v (closed form) */
static void
test_lamp_file (void)
{
  g_autoptr (LrPlan) given = fixture_interview (), filed = NULL;
  g_autofree char *id = g_strdup (fixture_add (&given, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 4.4));
  g_autoptr (LrLightLevels) by_plan = NULL, by_file = NULL;
  const LrFaceLight *a, *b;
  LrVec2 at_m;

  fixture_text (&given, id, "aims-at", WENNA);
  fixture_set (&given, id, "beam-deg", 120.0 * LR_DEG);
  fixture_set (&given, id, "output-lm", round (1000.0 * LR_PI));
  fixture_set (&given, id, "dim-pct", 0.8);
  filed = lr_plan_ref (given);
  fixture_lamp (&filed, id, 1000.0, 1.0, 0.0, 0.0);
  fixture_set (&filed, id, "output-lm", 1.0);
  by_plan = lr_light_levels_new (given, TRUE, NULL);
  by_file = lr_light_levels_new (filed, TRUE, NULL);
  a = lr_light_levels_face (by_plan, WENNA);
  b = lr_light_levels_face (by_file, WENNA);
  for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
    {
      assert_near (b->at[point].direct_lx, a->at[point].direct_lx, 0.1 + 0.005 * a->at[point].direct_lx);
      assert_within (b->at[point].bounced_lx, a->at[point].bounced_lx, 0.005);
    }
  g_assert_cmpfloat (a->key_lx, >, 50.0);
  g_assert_cmpfloat (lr_light_levels_spill_lx (by_plan, id, CAMERA_B), >, 1.0);
  assert_within (lr_light_levels_spill_lx (by_file, id, CAMERA_B), lr_light_levels_spill_lx (by_plan, id, CAMERA_B), 0.005);
  assert_within (lr_lux_all (lr_light_levels_background (by_file, CAMERA_A)->mean), lr_lux_all (lr_light_levels_background (by_plan, CAMERA_A)->mean), 0.005);
  for (at_m = lr_vec2 (3.5, 3.6); at_m.x < 7.0; at_m.x += 0.5)
    if (!isnan (lr_level_map_lx (lr_light_levels_map (by_plan), at_m)))
      assert_within (lr_level_map_lx (lr_light_levels_map (by_file), at_m), lr_level_map_lx (lr_light_levels_map (by_plan), at_m), 0.01);
}

static void
test_cancelled (void)
{
  g_autoptr (LrPlan) plan = make_room (0.5, 0.5, 0.2);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (LrLightLevels) dark = lr_light_levels_new (plan, TRUE, NULL);

  g_cancellable_cancel (cancellable);
  g_assert_null (lr_light_levels_new (plan, TRUE, cancellable));
  g_assert_cmpuint (lr_light_levels_n_sources (dark), ==, 0);
  g_assert_null (lr_light_levels_face (dark, "person-1")->key);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light-levels/ratio", test_ratio);
  g_test_add_func ("/light-levels/level", test_level);
  g_test_add_func ("/light-levels/white-and-black", test_white_and_black);
  g_test_add_func ("/light-levels/signals", test_signals);
  g_test_add_func ("/light-levels/background", test_background);
  g_test_add_func ("/light-levels/room", test_room);
  g_test_add_func ("/light-levels/walls", test_walls);
  g_test_add_func ("/light-levels/lamp-in-the-way", test_lamp_in_the_way);
  g_test_add_func ("/light-levels/wall-surface", test_wall_surface);
  g_test_add_func ("/light-levels/map", test_map);
  g_test_add_func ("/light-levels/straight", test_straight);
  g_test_add_func ("/light-levels/lamp-file", test_lamp_file);
  g_test_add_func ("/light-levels/cancelled", test_cancelled);
  return g_test_run ();
}
