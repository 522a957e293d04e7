/* test-sun-readings.c - when the sun reaches a place in the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "plan_edit.h"
#include "sun_readings.h"

static void
test_minute (void)
{
  int minute = -7;

  g_assert_true (lr_minute_parse ("09:30", &minute));
  g_assert_cmpint (minute, ==, 570);
  g_assert_true (lr_minute_parse ("24:00", &minute));
  g_assert_cmpint (minute, ==, 1440);
  g_assert_false (lr_minute_parse ("", &minute));
  g_assert_false (lr_minute_parse ("noon", &minute));
  g_assert_false (lr_minute_parse ("9:75", &minute));
  g_assert_false (lr_minute_parse ("09:30 sharp", &minute));
  g_assert_cmpint (minute, ==, 1440);
}

/* The loft on 19 February at 50.34 N 4.12 W. The sun's place has tests of its own; here the minutes are followed by the geometry worked
 * anew: the way from the eyes through the edges of window 2 */
static void
test_loft (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec3 eyes_m = study->subject->eyes_m;
  const LrPlaced *window = NULL;
  int first = -1, last = -1;

  g_assert_true (lr_study_sun_reach (study, eyes_m, 0.0, 0, LR_DAY_MIN - 1, &first, &last, &window));
  g_test_message ("%02d:%02d to %02d:%02d", first / 60, first % 60, last / 60, last % 60);
  g_assert_cmpstr (window->item->id, ==, "window-2");
  g_assert_cmpint (last, >, first);
  for (int minute = first - 2; minute <= last + 2; minute++)
    {
      LrSunPlace sun;
      double angle, k, x, z;
      gboolean is_in;

      g_assert_true (lr_study_sun_at (study, minute, &sun));
      /* south wall y = 0, x 3.05 to 4.25, z 0.80 to 2.35; north is 22 degrees clockwise of up */
      angle = 0.5 * LR_PI - sun.azimuth_rad - 22.0 * LR_DEG;
      k = eyes_m.y / -sin (angle);
      x = eyes_m.x + k * cos (angle);
      z = eyes_m.z + k * tan (sun.altitude_rad + lr_sun_refraction_rad (sun.altitude_rad));
      is_in = k > 0.0 && x >= 3.05 && x <= 4.25 && z >= 0.80 && z <= 2.35;
      g_assert_cmpint (is_in, ==, minute >= first && minute <= last);
    }
}

/* A ball is in the sun while any of its points is: against the points that lie farthest to the sides, up and down of the sun's way */
static void
test_ball (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec3 eyes_m = study->subject->eyes_m;
  const LrPlaced *window = NULL;
  int first = -1, last = -1, first_of_points = LR_DAY_MIN, last_of_points = -1;

  g_assert_true (lr_study_sun_reach (study, eyes_m, 0.10, 0, LR_DAY_MIN - 1, &first, &last, &window));
  for (int i = 0; i < 64; i++)
    for (int j = 0; j < 33; j++)
      {
        double turn = 2.0 * LR_PI * i / 64, lift = LR_PI * (j / 32.0 - 0.5);
        LrVec3 out = { 0.10 * cos (turn) * cos (lift), 0.10 * sin (turn) * cos (lift), 0.10 * sin (lift) };
        int a, b;

        if (j % 4 == 0 && lr_study_sun_reach (study, lr_vec3_add (eyes_m, out), 0.0, first - 5, last + 5, &a, &b, &window))
          {
            first_of_points = MIN (first_of_points, a);
            last_of_points = MAX (last_of_points, b);
          }
      }
  g_test_message ("%d to %d, by points %d to %d", first, last, first_of_points, last_of_points);
  g_assert_cmpint (ABS (first - first_of_points), <=, 1);
  g_assert_cmpint (ABS (last - last_of_points), <=, 1);
}

/* Blinds keep it out, and what is not given is not known */
static void
test_blind (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft"), lost = NULL;
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *window = NULL;
  LrSunPlace sun;
  int first = -1, last = -1;

  fixture_set (&plan, "window-2", "blind", LR_BLIND_DOWN);
  study = lr_study_new (plan);
  g_assert_false (lr_study_sun_reach (study, study->subject->eyes_m, 0.0, 0, LR_DAY_MIN - 1, &first, &last, &window));
  g_assert_cmpint (first, ==, -1);
  g_assert_true (lr_study_sun_at (study, 600, &sun));
  {
    g_autoptr (LrPlan) empty = fixture_interview ();
    g_autoptr (LrStudy) nowhere = lr_study_new (empty);

    g_assert_false (lr_study_sun_at (nowhere, 600, &sun));
    g_assert_false (lr_study_sun_at (study, -1, &sun));
  }
}

/* A minute past the day's last is of the next day: the sun of the 20th at 10:00 stands where the 19th's 34:00 has it */
static void
test_next_day (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft"), next = lr_plan_set_job (plan, "date", "2026-02-20", NULL);
  g_autoptr (LrStudy) study = lr_study_new (plan), after = lr_study_new (next);
  LrSunPlace late, early;

  g_assert_cmpstr (plan->job->date, ==, "2026-02-19");
  g_assert_true (lr_study_sun_at (study, LR_DAY_MIN + 600, &late));
  g_assert_true (lr_study_sun_at (after, 600, &early));
  assert_near (late.altitude_rad, early.altitude_rad, 1e-12);
  assert_near (late.azimuth_rad, early.azimuth_rad, 1e-12);
}

/* One rule: what is earlier than the time before it is of the next day; equal times, or one alone, tell no hours */
static void
test_hours (void)
{
  static const struct { const char *in, *roll, *wrap; int from, to; } cases[] = {
    { "", "10:00", "12:30", 600, 750 },        { "", "22:00", "04:00", 1320, 1680 },  { "22:00", "00:30", "04:00", 1470, 1680 },
    { "", "00:00", "24:00", 0, 1440 },         { "", "10:00", "10:00", -1, -1 },      { "", "", "10:00", -1, -1 },
    { "", "10:00", "late", -1, -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LrJob job = { .time_in = (char *) cases[i].in, .time_roll = (char *) cases[i].roll, .time_wrap = (char *) cases[i].wrap, .time_out = (char *) "" };
      int from = -1, to = -1;

      g_assert_cmpint (lr_job_shoot (&job, &from, &to), ==, cases[i].from >= 0);
      g_assert_cmpint (from, ==, cases[i].from);
      g_assert_cmpint (to, ==, cases[i].to);
      g_assert_cmpint (lr_job_middle (&job), ==, cases[i].from < 0 ? -1 : (from + to) / 2);
    }
}

/* At midday in the middle of December at 50 N, 0 E, the sun stands 90 - 50 - 23.44 + .05 (the air) = 16.6 degrees high, south within a
 * degree. Through a window in the south wall of a room with north up, light that passes .9 m and 2.1 m high reaches the floor
 * .9 / tan 16.6 = 3.02 m and 7.04 m inside, by hand */
static void
test_patch (void)
{
  static const char *const texts[][2] = { { "date", "2026-12-21" }, { "time-zone", "UTC" } };
  g_autoptr (LrPlan) plan = fixture_room (8.0, 9.0, 2.7);
  g_autoptr (LrStudy) study = NULL;
  const char *window = fixture_add (&plan, LR_ITEM_WINDOW, 0, 4.0, 0.0);
  LrVec2 patch_m[4];
  int first = 0, last = 0;
  double along_m;

  for (gsize i = 0; i < G_N_ELEMENTS (texts) + 2; i++)
    {
      LrPlan *next = i < G_N_ELEMENTS (texts)    ? lr_plan_set_job (plan, texts[i][0], texts[i][1], NULL)
                     : i == G_N_ELEMENTS (texts) ? lr_plan_set_location (plan, "latitude-deg", 50.0, NULL)
                                                 : lr_plan_set_location (plan, "longitude-deg", 0.0, NULL);

      lr_plan_unref (plan);
      plan = next;
    }
  fixture_set (&plan, window, "blind", LR_BLIND_UP);
  fixture_set (&plan, window, "sill-mm", 0.9);
  fixture_set (&plan, window, "head-mm", 2.1);
  study = lr_study_new (plan);
  along_m = lr_plan_find (plan, window)->along_m;
  g_assert_true (lr_study_sun_patch (study, lr_study_find_placed (study, window), 12 * 60, patch_m));
  assert_within (patch_m[0].y, 3.02, 0.01);
  assert_within (patch_m[3].y, 7.04, 0.01);
  assert_near (patch_m[0].x, along_m, 0.05);
  assert_near (patch_m[1].x - patch_m[0].x, lr_plan_find (plan, window)->window.width_m, 1e-9);

  fixture_set (&plan, window, "blind", LR_BLIND_HALF); /* the lower half stays open, to 1.5 m: 5.03 m inside */
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  g_assert_true (lr_study_sun_patch (study, lr_study_find_placed (study, window), 12 * 60, patch_m));
  assert_within (patch_m[3].y, 5.03, 0.01);
  g_assert_false (lr_study_sun_patch (study, lr_study_find_placed (study, window), 60, patch_m));

  /* the shortest day at 50 N has 8 h 4 min, from upper edge to upper edge (from memory): the middle of the disc has some minutes less */
  g_assert_true (lr_study_sun_up (study, &first, &last));
  g_assert_cmpint (ABS (last - first - 484), <=, 12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun-readings/next-day", test_next_day);
  g_test_add_func ("/sun-readings/hours", test_hours);
  g_test_add_func ("/sun-readings/minute", test_minute);
  g_test_add_func ("/sun-readings/loft", test_loft);
  g_test_add_func ("/sun-readings/ball", test_ball);
  g_test_add_func ("/sun-readings/blind", test_blind);
  g_test_add_func ("/sun-readings/patch", test_patch);
  return g_test_run ();
}
