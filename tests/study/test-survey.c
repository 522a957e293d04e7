/* test-survey.c - a room from what was taped in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"
#include "survey.h"

#include "polygon.h"

#include <math.h>

#define LEFT (90.0 * LR_DEG)
#define RIGHT (-90.0 * LR_DEG)
#define N_ROOMS 300

/* An L of 5 x 4 without 2 x 1 */
static const LrSurveyWall ell[] = { { 5.0, LEFT }, { 3.0, LEFT }, { 2.0, RIGHT }, { 1.0, LEFT }, { 3.0, LEFT }, { 4.0, LEFT } };

static LrSurvey *
survey_of (const LrSurveyWall *walls,
           guint               n)
{
  return lr_survey_new (walls, n, NULL, 0, lr_vec2 (0.0, 0.0), 0.0);
}

static LrVec2
corner_of (const LrSurvey *survey,
           guint           i)
{
  g_assert_cmpuint (i, <, survey->corners_m->len);
  return g_array_index (survey->corners_m, LrVec2, i);
}

static void
assert_corner (const LrSurvey *survey,
               guint           i,
               double          x_m,
               double          y_m)
{
  assert_near (corner_of (survey, i).x, x_m, 1e-6);
  assert_near (corner_of (survey, i).y, y_m, 1e-6);
}

/* Lengths that fit: closed form, wherever the first wall starts and goes; (3, 4) / 5 is its direction */
static void
test_fits (void)
{
  g_autoptr (LrSurvey) survey = survey_of (ell, 6);
  g_autoptr (LrSurvey) turned = lr_survey_new (ell, 6, NULL, 0, lr_vec2 (1.0, 1.0), atan2 (4.0, 3.0));

  g_assert_cmpint (survey->state, ==, LR_SURVEY_ROUND);
  g_assert_false (survey->has_closing_wall);
  assert_near (survey->gap_m, 0.0, 1e-9);
  g_assert_cmpuint (survey->n_checks, ==, 3); /* 6 lengths and 6 turns for 9 coordinates */
  g_assert_cmpuint (survey->doubts->len, ==, 0);
  assert_corner (survey, 3, 3.0, 3.0);
  assert_corner (survey, 5, 0.0, 4.0);
  assert_corner (turned, 0, 1.0, 1.0);
  assert_corner (turned, 1, 4.0, 5.0);
  assert_corner (turned, 2, 4.0 - 2.4, 5.0 + 1.8);
}

/* A wall that was not told, at the end or amid, comes out by itself: closed form */
static void
test_untold_walls (void)
{
  LrSurveyWall walls[6];
  g_autoptr (LrSurvey) last = survey_of (ell, 5), amid = NULL, two = NULL, parallel = NULL;

  g_assert_cmpint (last->state, ==, LR_SURVEY_ROUND);
  g_assert_true (last->has_closing_wall);
  assert_near (last->closing_m, 4.0, 1e-6);
  assert_corner (last, 5, 0.0, 4.0);

  memcpy (walls, ell, sizeof walls);
  walls[2].length_m = NAN;
  amid = survey_of (walls, 6);
  g_assert_cmpint (amid->state, ==, LR_SURVEY_ROUND);
  g_assert_false (amid->has_closing_wall);
  assert_corner (amid, 3, 3.0, 3.0);

  walls[3].length_m = NAN;
  two = survey_of (walls, 6);
  g_assert_cmpint (two->state, ==, LR_SURVEY_ROUND);
  assert_corner (two, 4, 3.0, 4.0);

  walls[3].length_m = 1.0;
  walls[4].length_m = NAN; /* parallel to the other: nobody can say how long either is */
  parallel = survey_of (walls, 6);
  g_assert_cmpint (parallel->state, ==, LR_SURVEY_NO_LENGTH);
}

/* A walk that is not round yet: the straight way back, by hand */
static void
test_open (void)
{
  const LrSurveyWall few[] = { { 5.0, LEFT }, { 4.0, LEFT } };
  const LrSurveyWall odd[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 2.0, LEFT } };
  g_autoptr (LrSurvey) two = survey_of (few, 2), three = survey_of (odd, 3), one = survey_of (few, 1);

  g_assert_cmpint (two->state, ==, LR_SURVEY_OPEN);
  assert_near (two->closing_m, sqrt (41.0), 1e-9);
  g_assert_cmpuint (two->corners_m->len, ==, 3);
  g_assert_cmpint (three->state, ==, LR_SURVEY_OPEN);
  assert_near (three->closing_m, 5.0, 1e-9); /* 3 across, 4 back */
  assert_corner (three, 3, 3.0, 4.0);
  g_assert_cmpint (one->state, ==, LR_SURVEY_TOO_SHORT);
}

/* Two walls of a square room disagree: 6 cm between them, told with a diagonal that is not there yet */
static void
test_disagree (void)
{
  const LrSurveyWall walls[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 4.94, LEFT }, { 4.0, LEFT } };
  const LrSurveyDiagonal diagonal = { 0, 2, 6.40 }; /* sqrt (5^2 + 4^2) = 6.403 */
  const LrSurveyDiagonal other = { 0, 2, 6.355 };   /* sqrt (4.94^2 + 4^2) = 6.356 */
  g_autoptr (LrSurvey) survey = survey_of (walls, 4);
  g_autoptr (LrSurvey) settled = lr_survey_new (walls, 4, &diagonal, 1, lr_vec2 (0.0, 0.0), 0.0);
  g_autoptr (LrSurvey) otherwise = lr_survey_new (walls, 4, &other, 1, lr_vec2 (0.0, 0.0), 0.0);
  const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, 0);

  g_assert_cmpuint (survey->doubts->len, ==, 1);
  g_assert_false (doubt->is_within);
  g_assert_cmpuint (doubt->n, ==, 2);
  g_assert_cmpuint (doubt->of[0].index + doubt->of[1].index, ==, 2);
  assert_near (fabs (doubt->error), 0.06, 0.001);
  g_assert_true (doubt->has_settling);
  g_assert_cmpuint (doubt->from, ==, 0);
  g_assert_cmpuint (doubt->to, ==, 2);

  doubt = &g_array_index (settled->doubts, LrSurveyDoubt, 0);
  g_assert_cmpuint (doubt->n, ==, 1);
  g_assert_cmpuint (doubt->of[0].index, ==, 2);
  assert_near (doubt->taken - doubt->error, 5.0, 0.01);
  g_assert_true (doubt->is_left_out); /* and then nothing pulls the corners: closed form */
  assert_near (corner_of (settled, 1).x, 5.0, 0.003);
  assert_near (corner_of (settled, 3).x, 0.0, 0.005);
  doubt = &g_array_index (otherwise->doubts, LrSurveyDoubt, 0);
  g_assert_cmpuint (doubt->n, ==, 1);
  g_assert_cmpuint (doubt->of[0].index, ==, 0);
  assert_near (doubt->taken - doubt->error, 4.94, 0.01);
}

/* A corner of 45 degrees that is said to be of 53, in a room with one corner cut off: 4 - 2 = 2 on both sides */
static void
test_wrong_corner (void)
{
  const LrSurveyWall walls[] = { { 4.0, LEFT }, { 2.0, 45.0 * LR_DEG }, { 2.0 * M_SQRT2, 45.0 * LR_DEG }, { 2.0, LEFT },
                                 { 4.0, LEFT } };
  LrSurveyWall wrong[5];
  g_autoptr (LrSurvey) fine = survey_of (walls, 5), off = NULL;

  g_assert_cmpint (fine->state, ==, LR_SURVEY_ROUND);
  g_assert_cmpuint (fine->doubts->len, ==, 0);
  assert_corner (fine, 3, 2.0, 4.0);

  memcpy (wrong, walls, sizeof wrong);
  wrong[1].turn_rad = 53.0 * LR_DEG;
  off = survey_of (wrong, 5);
  g_assert_cmpuint (off->doubts->len, >=, 1);
  g_assert_cmpint (g_array_index (off->doubts, LrSurveyDoubt, 0).of[0].kind, ==, LR_DOUBT_CORNER);
}

/* What is no walk */
static void
test_refused (void)
{
  static const double bad[] = { 0.0, -1.0, HUGE_VAL };
  const LrSurveyDiagonal no_corner = { 0, 6, 4.0 }, one_corner = { 2, 2, 4.0 };
  LrSurveyWall walls[6];

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (LrSurvey) survey = NULL;

      memcpy (walls, ell, sizeof walls);
      walls[4].length_m = bad[i];
      survey = survey_of (walls, 6);
      g_assert_cmpint (survey->state, ==, LR_SURVEY_NO_LENGTH);
      g_assert_cmpuint (survey->fault, ==, 4);
    }
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (LrSurvey) survey = lr_survey_new (ell, 6, i == 0 ? &no_corner : &one_corner, 1, lr_vec2 (0.0, 0.0), 0.0);

      g_assert_cmpint (survey->state, ==, LR_SURVEY_NO_DIAGONAL);
    }
}

/* Random rooms, taped as well as survey.c says that people tape */

static double
random_normal (void)
{
  double r = sqrt (-2.0 * log (g_test_rand_double_range (1e-12, 1.0)));

  return r * cos (2.0 * G_PI * g_test_rand_double ()); /* Box and Muller */
}

/* A room with a notch in one corner, whose corners are each 5 mm off in x and y: on a wall of 1 m that is 0.4 degrees. Its true corners, from 0, 0 along +x */
static void
random_room (LrVec2 *corners_m)
{
  double a = g_test_rand_double_range (4.0, 7.0), b = g_test_rand_double_range (3.0, 6.0);
  double c = g_test_rand_double_range (0.8, a - 1.5), d = g_test_rand_double_range (0.8, b - 1.5);
  const double x_m[] = { 0.0, a, a, a - c, a - c, 0.0 }, y_m[] = { 0.0, 0.0, b - d, b - d, b, b };

  for (guint i = 0; i < 6; i++)
    corners_m[i] = lr_vec2 (x_m[i], y_m[i]);
  for (guint i = 1; i < 6; i++)
    corners_m[i] = lr_vec2_add (corners_m[i], lr_vec2 (0.005 * random_normal (), i == 1 ? 0.0 : 0.005 * random_normal ()));
}

static double
taped_m (const LrVec2 *corners_m,
         guint         from,
         guint         to)
{
  double length_m = lr_vec2_distance (corners_m[from], corners_m[to]);

  return length_m + (0.004 + 0.0002 * length_m) * random_normal ();
}

static void
tape_room (const LrVec2 *corners_m,
           LrSurveyWall *walls)
{
  for (guint i = 0; i < 6; i++)
    walls[i] = (LrSurveyWall) { taped_m (corners_m, i, (i + 1) % 6), ell[i].turn_rad };
}

/* The corners lie within three of the standard errors that are told in 19 rooms of 20, and seldom is a wall named that is right */
static void
test_random_rooms (void)
{
  guint n_within = 0, n_doubted = 0;

  for (guint room = 0; room < N_ROOMS; room++)
    {
      LrVec2 corners_m[6];
      LrSurveyWall walls[6];
      LrSurveyDiagonal diagonals[2];
      g_autoptr (LrSurvey) survey = NULL;
      double worst_m = 0.0;

      random_room (corners_m);
      tape_room (corners_m, walls);
      diagonals[0] = (LrSurveyDiagonal) { 0, 2, taped_m (corners_m, 0, 2) };
      diagonals[1] = (LrSurveyDiagonal) { 1, 5, taped_m (corners_m, 1, 5) };
      survey = lr_survey_new (walls, 6, diagonals, 2, lr_vec2 (0.0, 0.0), 0.0);
      g_assert_cmpint (survey->state, ==, LR_SURVEY_ROUND);
      for (guint i = 0; i < 6; i++)
        worst_m = fmax (worst_m, lr_vec2_distance (corners_m[i], corner_of (survey, i)));
      n_within += worst_m < 3.0 * survey->corner_sd_m;
      n_doubted += survey->doubts->len > 0 && !g_array_index (survey->doubts, LrSurveyDoubt, 0).is_within;
    }
  g_test_message ("%u of %d within, %u doubted", n_within, N_ROOMS, n_doubted);
  g_assert_cmpuint (n_within, >=, N_ROOMS * 19 / 20);
  g_assert_cmpuint (n_doubted, <=, N_ROOMS / 10);
}

/* One wall is misread by 20 cm. It is among those that are named, and when the diagonals that are asked for are taped, one after
 * the other, it is left alone in nearly every room. */
static void
test_settled_by_diagonals (void)
{
  guint n_named = 0, n_found = 0;

  for (guint room = 0; room < N_ROOMS; room++)
    {
      guint wrong = room % 6, n_diagonals = 0;
      LrVec2 corners_m[6];
      LrSurveyWall walls[6];
      LrSurveyDiagonal diagonals[3];

      random_room (corners_m);
      tape_room (corners_m, walls);
      walls[wrong].length_m += 0.2;
      for (guint round = 0; round < 4; round++)
        {
          g_autoptr (LrSurvey) survey = lr_survey_new (walls, 6, diagonals, n_diagonals, lr_vec2 (0.0, 0.0), 0.0);
          const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, 0);

          if (survey->doubts->len == 0)
            break;
          for (guint i = 0; i < doubt->n && round == 0; i++)
            n_named += doubt->of[i].kind == LR_DOUBT_WALL && doubt->of[i].index == wrong;
          if (doubt->n == 1)
            n_found += doubt->of[0].kind == LR_DOUBT_WALL && doubt->of[0].index == wrong;
          if (doubt->n == 1 || !doubt->has_settling || round == 3)
            break;
          diagonals[n_diagonals++] = (LrSurveyDiagonal) { doubt->from, doubt->to, taped_m (corners_m, doubt->from, doubt->to) };
        }
    }
  g_test_message ("of %d rooms named in %u, found in %u", N_ROOMS, n_named, n_found);
  g_assert_cmpuint (n_named, >=, N_ROOMS * 9 / 10);
  g_assert_cmpuint (n_found, >=, N_ROOMS * 9 / 10);
}

/* The notes of a room are what was told, and make it anew where it is drawn */
static void
test_notes (void)
{
  static const LrVec2 corners_m[] = { { 1.0, 1.0 }, { 6.0, 1.0 }, { 6.0, 4.0 }, { 4.0, 4.0 }, { 4.0, 5.0 }, { 1.0, 5.0 } };
  const LrTapeNote tape[] = { { 0, 1, 5.0, NULL }, { 2, 1, 3.0, NULL }, { 2, 3, 2.0, NULL }, { 3, 4, 1.0, NULL }, { 4, 5, 3.0, NULL },
                              { 1, 5, 6.40, NULL }, { 9, 2, 1.0, NULL } };
  const LrTurnNote turns[] = { { 1, 91.0 * LR_DEG, NULL } };
  const LrTaped taped = { corners_m, 6, tape, 7, turns, 1 };
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_set_taped (empty, &taped, &error);
  g_autoptr (GArray) walls = NULL, diagonals = NULL;
  g_autoptr (LrSurvey) survey = NULL;

  g_assert_no_error (error);
  g_assert_null (lr_survey_of_room (lr_plan_get_setup (empty)->room));
  g_assert_true (lr_survey_read_notes (lr_plan_get_setup (plan)->room, &walls, &diagonals));
  g_assert_cmpuint (walls->len, ==, 6);
  assert_near (g_array_index (walls, LrSurveyWall, 1).length_m, 3.0, 1e-9);
  g_assert_true (isnan (g_array_index (walls, LrSurveyWall, 5).length_m));
  assert_near (g_array_index (walls, LrSurveyWall, 0).turn_rad, 91.0 * LR_DEG, 1e-9);
  assert_near (g_array_index (walls, LrSurveyWall, 2).turn_rad, RIGHT, 1e-9);
  g_assert_cmpuint (diagonals->len, ==, 1); /* the room has no corner 9 */
  survey = lr_survey_of_room (lr_plan_get_setup (plan)->room);
  g_assert_cmpint (survey->state, ==, LR_SURVEY_ROUND);
  assert_near (corner_of (survey, 0).x, 1.0, 1e-9);
  assert_near (corner_of (survey, 5).y, 5.0, 0.05);
}

/* What was told comes back as it was told, but for the closing wall, of which nothing was */
static void
test_make_room (void)
{
  const LrSurveyDiagonal diagonal = { 1, 5, 6.40 };
  g_autoptr (LrSurvey) survey = lr_survey_new (ell, 5, &diagonal, 1, lr_vec2 (0.0, 0.0), 0.0), again = NULL;
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_survey_make_room (survey, ell, &diagonal, 1, empty, &error);
  const LrRoom *room;

  g_assert_no_error (error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_cmpuint (room->n_corners, ==, 6);
  g_assert_cmpuint (room->n_tape, ==, 6);
  g_assert_cmpuint (room->n_turns, ==, 5);
  again = lr_survey_of_room (room);
  for (guint i = 0; i < 6; i++)
    g_assert_cmpfloat (lr_vec2_distance (corner_of (again, i), room->corners_m[i]), <, 0.001);
}

/* A list that was walked clockwise keeps its numbers in the room, which runs anticlockwise: closed form.
 * Wall 1 goes from corner 1 to corner 2 */
static void
test_clockwise_numbers (void)
{
  const LrSurveyWall walls[] = { { 5.0, RIGHT }, { 3.0, RIGHT }, { 2.0, LEFT }, { 1.0, RIGHT }, { 3.0, RIGHT }, { 4.0, RIGHT } };
  const LrSurveyDiagonal diagonal = { 1, 5, 6.40 };
  g_autoptr (LrSurvey) survey = lr_survey_new (walls, 6, &diagonal, 1, lr_vec2 (0.0, 0.0), 0.0), again = NULL;
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (LrPlan) plan = lr_survey_make_room (survey, walls, &diagonal, 1, empty, NULL);
  const LrRoom *room = lr_plan_get_setup (plan)->room;
  g_autoptr (GArray) told = NULL, diagonals = NULL;

  g_assert_true (room->counts_clockwise);
  g_assert_true (lr_survey_read_notes (room, &told, &diagonals));
  again = lr_survey_of_room (room);
  for (guint i = 0; i < 6; i++)
    {
      int wall = (int) lr_survey_corner_of (room, i + 1); /* it begins where the walked one ends */
      double length_m;

      assert_near (g_array_index (told, LrSurveyWall, i).length_m, walls[i].length_m, 1e-9);
      assert_near (g_array_index (told, LrSurveyWall, i).turn_rad, walls[i].turn_rad, 1e-9);
      g_assert_cmpfloat (lr_vec2_distance (corner_of (again, i), corner_of (survey, i)), <, 0.001);
      g_assert_true (lr_room_wall (room, wall, NULL, NULL, &length_m));
      assert_near (length_m, walls[i].length_m, 0.002);
      g_assert_cmpint (lr_room_wall_number (room, wall), ==, (int) i + 1);
      g_assert_cmpint (lr_room_corner_number (room, (int) lr_survey_corner_of (room, i)), ==, (int) i + 1);
    }
  g_assert_cmpuint (diagonals->len, ==, 1);
  g_assert_cmpuint (g_array_index (diagonals, LrSurveyDiagonal, 0).from + g_array_index (diagonals, LrSurveyDiagonal, 0).to, ==, 6);
  g_assert_cmpuint (again->doubts->len, ==, 0);
}

/* The lower wall of an upright room looks down the sheet: with north up it faces south, 180 degrees; if a compass reads 90 there,
 * east is down the sheet and north is to the right, 90 degrees clockwise from up */
static void
test_north (void)
{
  const LrVec2 corners_m[] = { { 0.0, 0.0 }, { 5.0, 0.0 }, { 5.0, 4.0 }, { 0.0, 4.0 } };
  const LrVec2 clockwise_m[] = { { 0.0, 4.0 }, { 5.0, 4.0 }, { 5.0, 0.0 }, { 0.0, 0.0 } };

  assert_near (lr_bearing_of_wall (corners_m, 4, 0, 0.0), G_PI, 1e-9);
  assert_near (lr_bearing_of_wall (corners_m, 4, 1, 0.0), 0.5 * G_PI, 1e-9);
  assert_near (lr_bearing_of_wall (clockwise_m, 4, 2, 0.0), G_PI, 1e-9);
  assert_near (lr_north_by_wall (corners_m, 4, 0, 0.5 * G_PI), 0.5 * G_PI, 1e-9);
  for (guint wall = 0; wall < 4; wall++)
    assert_near (lr_north_by_wall (corners_m, 4, wall, lr_bearing_of_wall (corners_m, 4, wall, 0.3)), 0.3, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/survey/fits", test_fits);
  g_test_add_func ("/survey/untold-walls", test_untold_walls);
  g_test_add_func ("/survey/open", test_open);
  g_test_add_func ("/survey/disagree", test_disagree);
  g_test_add_func ("/survey/wrong-corner", test_wrong_corner);
  g_test_add_func ("/survey/refused", test_refused);
  g_test_add_func ("/survey/random-rooms", test_random_rooms);
  g_test_add_func ("/survey/settled-by-diagonals", test_settled_by_diagonals);
  g_test_add_func ("/survey/notes", test_notes);

  g_test_add_func ("/survey/make-room", test_make_room);
  g_test_add_func ("/survey/clockwise-numbers", test_clockwise_numbers);
  g_test_add_func ("/survey/north", test_north);

  return g_test_run ();
}
