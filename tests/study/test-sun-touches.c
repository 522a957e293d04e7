/* test-sun-touches.c - what the sun falls on at an instant, and what it touches over the shoot
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "sun_patches.h"
#include "sun_touches.h"

static const LrSunTouch *
find_touch (const GArray *touches,
            LrSunThing    thing,
            const char   *placed,
            const char   *window)
{
  for (guint i = 0; i < touches->len; i++)
    {
      const LrSunTouch *touch = &g_array_index (touches, LrSunTouch, i);

      if (touch->thing == thing && g_str_equal (touch->placed->item->id, placed) && g_str_equal (touch->window->item->id, window))
        return touch;
    }
  return NULL;
}

/* Every minute, by rays from many points of the head, with the sun's place looked up anew: through the rectangle of window 2 in the south
 * wall, y = 0, x 3.05 to 4.25, z .80 to 2.35; north is 22 degrees clockwise of up */
static void
test_head (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GArray) touches = lr_sun_touches (study, 0, LR_DAY_MIN - 1);
  const LrSunTouch *touch = find_touch (touches, LR_SUN_HEAD, "wenna", "window-2");
  LrVec3 eyes_m = study->subject->eyes_m;
  double radius_m = 0.5 * study->subject->body.head_width_m;
  int first = -1, last = -1;

  for (int minute = 0; minute < LR_DAY_MIN; minute++)
    {
      LrSunPlace sun;
      double altitude, angle;
      gboolean is_in = FALSE;

      g_assert_true (lr_study_sun_at (study, minute, &sun));
      altitude = sun.altitude_rad + lr_sun_refraction_rad (sun.altitude_rad);
      angle = 0.5 * LR_PI - sun.azimuth_rad - 22.0 * LR_DEG;
      for (int k = 0; altitude > 0.0 && k < 40 * 20; k++)
        {
          double turn = 2.0 * LR_PI * (k % 40) / 40, lift = LR_PI * ((k / 40 + 0.5) / 20 - 0.5);
          LrVec3 out = { cos (turn) * cos (lift), sin (turn) * cos (lift), sin (lift) }, at_m = lr_vec3_along (eyes_m, out, radius_m);
          double t = at_m.y / -sin (angle), x = at_m.x + t * cos (angle), z = at_m.z + t * tan (altitude);

          is_in = is_in || (t > 0.0 && x >= 3.05 && x <= 4.25 && z >= 0.80 && z <= 2.35);
        }
      if (is_in)
        {
          first = first < 0 ? minute : first;
          last = minute;
        }
    }
  g_assert_nonnull (touch);
  g_test_message ("%d to %d, by rays %d to %d", touch->span[0].first, touch->span[0].last, first, last);
  g_assert_cmpuint (touch->n, ==, 1);
  g_assert_cmpint (ABS (touch->span[0].first - first), <=, 1);
  g_assert_cmpint (ABS (touch->span[0].last - last), <=, 1);
  /* the blind of window 1 is down */
  g_assert_null (find_touch (touches, LR_SUN_HEAD, "wenna", "window-1"));
}

/* A board that covers the window keeps it away; nobody relies on a person's shadow */
static void
test_shade (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) touches = NULL;
  const char *board = fixture_add (&plan, LR_ITEM_PANEL, LR_PANEL_FLAG, 3.65, 0.3);

  fixture_set (&plan, board, "facing-deg", 90.0 * LR_DEG);
  fixture_set (&plan, board, "width-mm", 3.0);
  fixture_set (&plan, board, "height-mm", 2.4);
  fixture_set (&plan, board, "bottom-mm", 0.2);
  study = lr_study_new (plan);
  touches = lr_sun_touches (study, 0, LR_DAY_MIN - 1);
  g_assert_null (find_touch (touches, LR_SUN_HEAD, "wenna", "window-2"));
}

/* Whether any of a hundred points a side of a wall's place in the frame lies in the beam, by a ray from each: the closed form against which
 * the polygons are held. The minutes agree but for slivers at the frame's edge */
static gboolean
is_seen_in_sun (const LrStudy         *study,
                const LrCameraReading *camera,
                const LrSunOpening    *opening,
                LrVec3                 way)
{
  const LrRoom *room = study->setup->room;
  int n = 0;

  for (int k = 0; k < 100 * 100; k++)
    {
      LrVec3 ray = lr_projection_ray (&camera->projection, (k % 100 + 0.5) / 100, (k / 100 + 0.5) / 100), at_m;
      LrVec2 flat = lr_vec3_flat (ray), from_m, along;
      double length_m;
      LrRayHit hit;

      g_assert_true (lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (camera->projection.eye_m), flat, &hit));
      at_m = lr_vec3_along (camera->projection.eye_m, ray, hit.distance_m / lr_vec2_length (flat));
      g_assert_true (lr_room_wall (room, (int) hit.edge, &from_m, &along, &length_m));
      if (at_m.z > 0.0 && at_m.z < room->height_m && lr_vec2_dot (lr_vec3_flat (way), lr_vec2_left (along)) > 0.0
          && lr_sun_opening_holds (opening, at_m, 0.0, way))
        n++;
    }
  return n > 40; /* .4 % of the frame */
}

static void
test_background (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) touches = NULL;
  const LrSunTouch *touch;
  LrSunOpening opening;
  int first = -1, last = -1;

  fixture_set (&plan, "window-1", "blind", LR_BLIND_UP);
  study = lr_study_new (plan);
  g_assert_true (lr_sun_opening (study, lr_study_find_placed (study, "window-1"), &opening));
  touches = lr_sun_touches (study, 9 * 60, 11 * 60);
  touch = find_touch (touches, LR_SUN_BACKGROUND, "camera-a", "window-1");
  g_assert_nonnull (touch);
  for (int minute = 9 * 60; minute <= 11 * 60; minute++)
    {
      LrVec3 way;

      if (lr_study_sun_way (study, minute, &way) && is_seen_in_sun (study, fixture_camera (study, "camera-a"), &opening, way))
        {
          first = first < 0 ? minute : first;
          last = minute;
        }
    }
  g_test_message ("%d to %d, by rays %d to %d", touch->span[0].first, touch->span[touch->n - 1].last, first, last);
  g_assert_cmpint (ABS (touch->span[0].first - first), <=, 1);
  g_assert_cmpint (ABS (touch->span[touch->n - 1].last - last), <=, 2);
}

/* The sun 45 degrees high, straight before the window in the south wall of a room 1.5 m deep: the wall opposite has it from the floor to
 * 2.1 - 1.5 m, a table .75 m high from 0.15 m on, to its edge; by hand */
static void
test_patches (void)
{
  g_autoptr (LrPlan) plan = fixture_room (8.0, 1.5, 2.7);
  const char *window = fixture_add (&plan, LR_ITEM_WINDOW, 0, 4.0, 0.0);
  const char *table = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 4.0, 0.75);
  const LrVec3 way = { 0.0, -M_SQRT1_2, M_SQRT1_2 };
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) patches = NULL;
  const LrPlaced *top;
  guint n_found[3] = { 0, 0, 0 };

  fixture_set (&plan, window, "blind", LR_BLIND_UP);
  fixture_set (&plan, window, "sill-mm", 0.9);
  fixture_set (&plan, window, "head-mm", 2.1);
  fixture_set (&plan, table, "height-mm", 0.75);
  study = lr_study_new (plan);
  top = lr_study_find_placed (study, table);
  patches = lr_sun_patches (study, way);
  for (guint i = 0; i < patches->len; i++)
    {
      const LrSunPatch *patch = &g_array_index (patches, LrSunPatch, i);
      LrVec2 flat_m[LR_BEAM_CORNERS], low, high;

      n_found[patch->ground]++;
      for (gsize k = 0; k < patch->n; k++)
        flat_m[k] = lr_vec3_flat (patch->corner_m[k]);
      lr_polygon_bounds (flat_m, patch->n, &low, &high);
      if (patch->ground == LR_SUN_ON_WALL)
        {
          LrSunStretch stretch = lr_sun_stretch (study, patch);

          g_assert_cmpint (patch->wall, ==, 2);
          assert_near (stretch.low_m, 0.0, 1e-9);
          assert_near (stretch.high_m, 0.6, 1e-9);
          assert_near (stretch.to_m - stretch.from_m, lr_plan_find (plan, window)->window.width_m, 1e-9);
        }
      else if (patch->ground == LR_SUN_ON_TOP)
        {
          LrVec2 table_low, table_high;

          lr_polygon_bounds (top->footprint.corner_m, top->footprint.n, &table_low, &table_high);
          assert_near (patch->corner_m[0].z, 0.75, 1e-9);
          assert_near (low.y, fmax (0.15, table_low.y), 1e-9);
          assert_near (high.y, fmin (1.35, table_high.y), 1e-9);
        }
      else
        {
          assert_near (low.y, 0.9, 1e-9);
          assert_near (high.y, 1.5, 1e-9);
        }
    }
  for (guint k = 0; k < 3; k++)
    g_assert_cmpuint (n_found[k], ==, 1);
}

/* A box of 1 m by 1 m, 1 m high, under a sun 45 degrees high in the south shades its own floor and 1 m to the north of it */
static void
test_shadow (void)
{
  const LrVec3 way = { 0.0, -M_SQRT1_2, M_SQRT1_2 };
  LrOutline base = lr_outline_box (lr_vec2 (2.0, 2.0), 1.0, 1.0, 0.0);
  LrVec2 corner_m[2 * LR_OUTLINE_MAX], low, high;
  LrVolume box;
  gsize n;

  lr_volume_prism (&box, &base, 0.0, 1.0);
  n = lr_sun_shadow (&box, way, corner_m);
  lr_polygon_bounds (corner_m, n, &low, &high);
  assert_near (lr_polygon_area_m2 (corner_m, n), 2.0, 1e-9);
  assert_near (low.y, 1.5, 1e-9);
  assert_near (high.y, 3.5, 1e-9);
  assert_near (high.x - low.x, 1.0, 1e-9);
  lr_volume_prism (&box, &base, 0.5, 1.0); /* off the floor its own shadow begins half a metre on */
  n = lr_sun_shadow (&box, way, corner_m);
  lr_polygon_bounds (corner_m, n, &low, &high);
  assert_near (low.y, 2.0, 1e-9);
  g_assert_cmpuint (lr_sun_shadow (&box, lr_vec3 (0.0, -1.0, 0.0), corner_m), ==, 0);
}

/* Nothing is known without a place on the earth */
static void
test_unknown (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) touches = NULL;

  fixture_add (&plan, LR_ITEM_WINDOW, 0, 3.0, 0.0);
  study = lr_study_new (plan);
  touches = lr_sun_touches (study, 0, LR_DAY_MIN - 1);
  g_assert_cmpuint (touches->len, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun-touches/head", test_head);
  g_test_add_func ("/sun-touches/shade", test_shade);
  g_test_add_func ("/sun-touches/background", test_background);
  g_test_add_func ("/sun-touches/patches", test_patches);
  g_test_add_func ("/sun-touches/shadow", test_shadow);
  g_test_add_func ("/sun-touches/unknown", test_unknown);
  return g_test_run ();
}
