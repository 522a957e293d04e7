/* test-daylight.c - light of the sky and of the sun through windows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shoot is from 11:30 to 12:30 at 50 degrees north, 0 east on 21 December: at 12:00 the sun is in the south within a degree,
 * 90 - 50 - 23.44 + .05 (the air) = 16.6 degrees high. North is up the sheet.
 */

#include "fixture.h"

#include "bounce.h"
#include "light_levels.h"
#include "sun_readings.h"

#define ALTITUDE_RAD (16.61 * LR_DEG)
#define GLASS 0.8 /* two clear panes; common practice, no source */

static void
advance (LrPlan **plan,
         LrPlan  *next)
{
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

/* Somebody who sits in a room of 6 m by 5 m and looks to the south, at a window 2 m wide from .4 m to 2.4 m high in the south wall (0), or
 * another one */
static LrPlan *
make_room (LrSky sky,
           int   wall)
{
  static const char *const texts[][2] = {
    { "date", "2026-12-21" }, { "time-roll", "11:30" }, { "time-wrap", "12:30" }, { "time-zone", "UTC" },
  };
  LrPlan *plan = fixture_room (6.0, 5.0, 2.7);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0, 2.5);
  const char *window;

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    advance (&plan, lr_plan_set_job (plan, texts[i][0], texts[i][1], NULL));
  advance (&plan, lr_plan_set_location (plan, "latitude-deg", 50.0, NULL));
  advance (&plan, lr_plan_set_location (plan, "longitude-deg", 0.0, NULL));
  advance (&plan, lr_plan_set_job_number (plan, "sky", sky, NULL));
  fixture_set (&plan, person, "facing-deg", -90.0 * LR_DEG);
  window = fixture_add (&plan, LR_ITEM_WINDOW, 0, wall == 0 || wall == 2 ? 3.0 : wall == 1 ? 6.0 : 0.0, wall == 0 ? 0.0 : wall == 2 ? 5.0 : 2.5);
  g_assert_cmpint (lr_plan_find (plan, window)->wall, ==, wall);
  fixture_set (&plan, window, "blind", LR_BLIND_UP);
  fixture_set (&plan, window, "width-mm", 2.0);
  fixture_set (&plan, window, "sill-mm", 0.4);
  fixture_set (&plan, window, "head-mm", 2.4);
  return plan;
}

static const LrLightSource *
find_source (const LrLightLevels *levels,
             gboolean             is_sun,
             guint               *index)
{
  for (guint i = 0; i < lr_light_levels_n_sources (levels); i++)
    if (lr_light_levels_source (levels, i)->is_sun == is_sun)
      {
        *index = i;
        return lr_light_levels_source (levels, i);
      }
  return NULL;
}

/* 127500 exp (-.21 / sin h), by the glass and by the cosine to each point's normal: cheeks 40 degrees round and 8 down, the crown level */
static void
test_face (void)
{
  g_autoptr (LrPlan) plan = make_room (LR_SKY_CLEAR, 0);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, FALSE, NULL);
  const double normal_lx = GLASS * 127500.0 * exp (-0.21 / sin (ALTITUDE_RAD)), down = 8.0 * LR_DEG;
  const double cheek = cos (ALTITUDE_RAD) * cos (down) * cos (40.0 * LR_DEG) - sin (ALTITUDE_RAD) * sin (down);
  const LrFaceLight *face = lr_light_levels_face (levels, "person-1");
  guint sun = 0;

  g_assert_nonnull (find_source (levels, TRUE, &sun));
  assert_within (lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_LEFT), normal_lx * cheek, 0.02);
  assert_within (lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_RIGHT), normal_lx * cheek, 0.02);
  assert_within (lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_TOP), normal_lx * sin (ALTITUDE_RAD), 0.02);
  assert_within (lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_CHEST), normal_lx * cos (ALTITUDE_RAD), 0.02);
  g_assert_cmpfloat (lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_BACK), ==, 0.0);
  g_assert_true (face->key_is_sun);
  assert_near (face->key_up_rad, ALTITUDE_RAD, 0.1 * LR_DEG);
  assert_near (face->key_side_rad, 0.0, 1.0 * LR_DEG);
  /* the window is told with both its lights */
  g_assert_cmpfloat (lr_light_levels_source_lx (levels, "window-1", "person-1", LR_FACE_LEFT), >,
                     lr_light_levels_lx_of (levels, sun, "person-1", LR_FACE_LEFT));
}

/* What keeps it away: clouds, a blind, a wall that looks elsewhere, a board before the window */
static void
test_no_sun (void)
{
  g_autoptr (LrPlan) cloudy = make_room (LR_SKY_OVERCAST, 0), north = make_room (LR_SKY_CLEAR, 2), plan = make_room (LR_SKY_CLEAR, 0);
  g_autoptr (LrLightLevels) of_cloudy = lr_light_levels_new (cloudy, FALSE, NULL), of_north = lr_light_levels_new (north, FALSE, NULL);
  g_autoptr (LrLightLevels) of_board = NULL, of_blind = NULL;
  const char *board;
  guint sun = 0;

  g_assert_null (find_source (of_cloudy, TRUE, &sun));
  g_assert_null (find_source (of_north, TRUE, &sun));

  board = fixture_add (&plan, LR_ITEM_PANEL, LR_PANEL_FLAG, 3.0, 1.0);
  fixture_set (&plan, board, "facing-deg", 90.0 * LR_DEG);
  fixture_set (&plan, board, "width-mm", 1.5);
  fixture_set (&plan, board, "height-mm", 1.5);
  fixture_set (&plan, board, "bottom-mm", 0.9);
  of_board = lr_light_levels_new (plan, FALSE, NULL);
  g_assert_nonnull (find_source (of_board, TRUE, &sun));
  g_assert_cmpfloat (lr_light_levels_lx_of (of_board, sun, "person-1", LR_FACE_LEFT), ==, 0.0);
  fixture_set (&plan, "window-1", "blind", LR_BLIND_DOWN);
  of_blind = lr_light_levels_new (plan, FALSE, NULL);
  g_assert_cmpuint (lr_light_levels_n_sources (of_blind), ==, 0);
}

/* Luminance of what is seen through the window, by the light that it gives on the pane:
 * overcast (300 + 21000 sin h) (.396 + .1); clear, in the north: the sky's share of CIE's clear sky, summed apart by a degree, and a ground
 * in shadow */
static void
test_sky (void)
{
  g_autoptr (LrPlan) cloudy = make_room (LR_SKY_OVERCAST, 0), north = make_room (LR_SKY_CLEAR, 2), south = make_room (LR_SKY_CLEAR, 0);
  g_autoptr (LrLightLevels) of_cloudy = lr_light_levels_new (cloudy, FALSE, NULL), of_north = lr_light_levels_new (north, FALSE, NULL);
  g_autoptr (LrLightLevels) of_south = lr_light_levels_new (south, FALSE, NULL);
  const LrLightSource *source;
  double clear_lx = 800.0 + 15500.0 * sqrt (sin (ALTITUDE_RAD)), level = 0.0, upright = 0.0, north_luminance;
  guint index = 0;

  source = find_source (of_cloudy, FALSE, &index);
  assert_within (source->emitter.candela / 4.0, GLASS * 0.496 * (300.0 + 21000.0 * sin (ALTITUDE_RAD)) / LR_PI, 0.01);
  g_assert_cmpfloat (source->kelvin, ==, LR_OVERCAST_K);

  for (double up = 0.5; up < 90.0; up += 1.0)
    for (double round = 0.5; round < 360.0; round += 1.0)
      {
        double share = lr_sky_luminance (LR_SKY_CLEAR, ALTITUDE_RAD, up * LR_DEG, round * LR_DEG) * cos (up * LR_DEG);

        level += share * sin (up * LR_DEG);
        upright += share * cos (up * LR_DEG) * fmax (0.0, cos ((round - 180.0) * LR_DEG));
      }
  source = find_source (of_north, FALSE, &index);
  north_luminance = source->emitter.candela / 4.0;
  assert_within (north_luminance, GLASS * (upright / level + 0.1) * clear_lx / LR_PI, 0.03);
  g_assert_cmpfloat (source->kelvin, >, LR_OVERCAST_K);

  /* towards the sun the sky is brighter, and so is the ground */
  source = find_source (of_south, FALSE, &index);
  g_assert_cmpfloat (source->emitter.candela / 4.0, >, 1.5 * north_luminance);
}

/* The flux that comes in falls somewhere: 4 m2 of window, turned from the sun by its height alone. Nobody sits in the room, so all of it
 * lands on patches */
static void
test_flux (void)
{
  g_autoptr (LrPlan) whole = make_room (LR_SKY_CLEAR, 0), plan = lr_plan_remove (whole, "person-1", NULL);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightShade) shade = lr_light_shade_new (study);
  g_autoptr (GArray) sources = lr_light_sources (study);
  g_autoptr (LrBounce) bounce = NULL;

  for (guint i = sources->len; i-- > 0;)
    if (!g_array_index (sources, LrLightSource, i).is_sun)
      g_array_remove_index (sources, i);
  g_assert_cmpuint (sources->len, ==, 1);
  bounce = lr_bounce_solve (study, shade, sources, NULL);
  assert_within (bounce->flux_lm, GLASS * 127500.0 * exp (-0.21 / sin (ALTITUDE_RAD)) * 4.0 * cos (ALTITUDE_RAD), 0.02);
}

/* On the north wall, 5 m in, light that came through at z is 5 tan h lower: the window's .4 m to 2.4 m come down to the floor and to
 * 2.4 - 1.49 = .91 m */
static void
test_wall (void)
{
  g_autoptr (LrPlan) whole = make_room (LR_SKY_CLEAR, 0), plan = lr_plan_remove (whole, "person-1", NULL);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);
  const LrWallLight *wall = lr_light_levels_wall (levels, 2);
  const double sun_lx = GLASS * 127500.0 * exp (-0.21 / sin (ALTITUDE_RAD)) * cos (ALTITUDE_RAD), top_m = 2.4 - 5.0 * tan (ALTITUDE_RAD);

  g_assert_cmpfloat (lr_wall_light_lx (wall, 0.5, (top_m - 0.1) / 2.7), >, sun_lx);
  g_assert_cmpfloat (lr_wall_light_lx (wall, 0.5, (top_m - 0.1) / 2.7), <, 1.2 * sun_lx);
  g_assert_cmpfloat (lr_wall_light_lx (wall, 0.5, (top_m + 0.1) / 2.7), <, 0.2 * sun_lx);
  g_assert_cmpfloat (lr_wall_light_lx (wall, 0.1, (top_m - 0.1) / 2.7), <, 0.2 * sun_lx); /* beside it */
  g_assert_cmpfloat (wall->mean_lx, <, 0.2 * sun_lx);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/daylight/face", test_face);
  g_test_add_func ("/daylight/no-sun", test_no_sun);
  g_test_add_func ("/daylight/sky", test_sky);
  g_test_add_func ("/daylight/flux", test_flux);
  g_test_add_func ("/daylight/wall", test_wall);
  return g_test_run ();
}
