/* test-comparison.c - the same figures of every set-up
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "comparison.h"
#include "materials.h"

static void
set_room (LrPlan    **plan,
          const char *key,
          double      value)
{
  LrPlan *next = lr_plan_set_room (*plan, key, value, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
take (LrPlan **plan,
      LrPlan  *next)
{
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
assert_figure (const LrComparison *comparison,
               guint               room,
               LrCompare           row,
               double              value,
               double              tolerance)
{
  const LrFigure *figure = &lr_comparison_room (comparison, room)->figure[row];

  g_test_message ("row %d: %g", row, figure->value);
  g_assert_cmpint (figure->known, ==, LR_KNOWN);
  assert_near (figure->value, value, tolerance);
}

static void
assert_unknown (const LrComparison *comparison,
                guint               room,
                LrCompare           row,
                LrKnown             known)
{
  const LrFigure *figure = &lr_comparison_room (comparison, room)->figure[row];

  g_assert_cmpint (figure->known, ==, known);
  g_assert_true (isnan (figure->value));
}

/* The loft: 7.20 by 5.40 m with .95 m cut off a corner, by shoelace 38.88 - .95² / 2 = 38.42875 m²; its longest line joins two corners,
 * 9.00 m (3 : 4 : 5). Of windows of 1.20 by 1.55 m there are two, both with blinds. Beside it a room that is not drawn: nothing is known */
static void
test_loft (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrComparison) comparison = NULL;
  const LrRoomFigures *loft;

  take (&plan, lr_plan_new_setup (plan, "Hall", NULL));
  comparison = lr_comparison_new (plan);
  g_assert_cmpuint (comparison->rooms->len, ==, 2);
  loft = lr_comparison_room (comparison, 0);
  assert_figure (comparison, 0, LR_COMPARE_AREA, 38.42875, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_LONGEST, 7.2, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_SHORTEST, 5.4, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_CEILING, 2.8, 1e-9);
  assert_near (loft->line_m, 9.0, 1e-9);
  g_assert_true (comparison->camera_setup == loft->setup);
  assert_figure (comparison, 0, LR_COMPARE_BACKGROUND, 9.0 - 0.5 - g_array_index (loft->study->cameras, LrCameraReading, 0).distance_m, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_BEHIND, g_array_index (loft->study->cameras, LrCameraReading, 0).separation_m, 1e-9);
  assert_near (loft->windows_m2, 2.0 * 1.2 * 1.55, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_BARE_WINDOWS, 0.0, 1e-9);
  assert_near (loft->dark_share, 1.0, 1e-9);
  for (int row = 0; row < LR_N_COMPARES; row++)
    assert_unknown (comparison, 1, row, LR_NO_ROOM);
}

/* An empty room of 4 by 3 m: its diagonal of 5 m, less half a metre behind the camera and the usual 2 m. Nothing else is noted */
static void
test_bare (void)
{
  g_autoptr (LrPlan) plan = fixture_room (4.0, 3.0, 2.5);
  g_autoptr (LrComparison) comparison = lr_comparison_new (plan);
  static const LrCompare not_noted[] = { LR_COMPARE_NOISE, LR_COMPARE_QUIET, LR_COMPARE_REVERBERATION, LR_COMPARE_CIRCUITS,
                                         LR_COMPARE_POWER };
  static const LrCompare not_drawn[] = { LR_COMPARE_BARE_WINDOWS, LR_COMPARE_SUN, LR_COMPARE_SUN_ON_FACE, LR_COMPARE_OUTLETS,
                                         LR_COMPARE_DOOR, LR_COMPARE_EXITS, LR_COMPARE_HOUSE_LIGHTS };
  static const LrCompare not_placed[] = { LR_COMPARE_WAY_OUT, LR_COMPARE_FIX, LR_COMPARE_MIND };

  g_assert_null (comparison->camera_setup);
  assert_figure (comparison, 0, LR_COMPARE_BACKGROUND, 2.5, 1e-9);
  assert_unknown (comparison, 0, LR_COMPARE_BEHIND, LR_NOT_PLACED);
  for (guint i = 0; i < G_N_ELEMENTS (not_noted); i++)
    assert_unknown (comparison, 0, not_noted[i], LR_NOT_NOTED);
  for (guint i = 0; i < G_N_ELEMENTS (not_drawn); i++)
    assert_unknown (comparison, 0, not_drawn[i], LR_NOT_DRAWN);
  for (guint i = 0; i < G_N_ELEMENTS (not_placed); i++)
    assert_unknown (comparison, 0, not_placed[i], LR_NOT_PLACED);
}

/* A ceiling of 2.50 m and walls of 50 % are what a room has that nobody looked at: whatever they are called, they are no figures */
static void
test_taken (void)
{
  g_autoptr (LrPlan) plan = fixture_room (4.0, 3.0, 2.5);
  g_autoptr (LrComparison) usual = NULL, noted = NULL;
  const LrFigure *ceiling, *walls;

  take (&plan, lr_plan_set_room_text (plan, "walls.material", "brick", NULL));
  usual = lr_comparison_new (plan);
  ceiling = &lr_comparison_room (usual, 0)->figure[LR_COMPARE_CEILING];
  walls = &lr_comparison_room (usual, 0)->figure[LR_COMPARE_WALLS];
  g_assert_cmpint (ceiling->known, ==, LR_TAKEN);
  assert_near (ceiling->value, 2.5, 1e-9);
  g_assert_cmpint (walls->known, ==, LR_TAKEN);
  assert_near (walls->value, 0.5, 1e-9);
  g_assert_false (lr_figure_is_told (ceiling));
  set_room (&plan, "height-mm", 2.6);
  set_room (&plan, "walls.reflectance-pct", 0.8);
  noted = lr_comparison_new (plan);
  assert_figure (noted, 0, LR_COMPARE_CEILING, 2.6, 1e-9);
  assert_figure (noted, 0, LR_COMPARE_WALLS, 0.8, 1e-9);
}

/* Only what is on and stays on counts: 800 lm of 800, 500 that can be off and 700 that are */
static void
test_house_lights (void)
{
  static const struct { double output_lm; gboolean is_on, can_switch_off; } lights[] = { { 800, TRUE, FALSE }, { 500, TRUE, TRUE }, { 700, FALSE, FALSE } };
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.6);
  g_autoptr (LrComparison) comparison = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (lights); i++)
    {
      const char *id = fixture_add (&plan, LR_ITEM_HOUSE_LIGHT, 0, 1.0 + i, 2.0);

      fixture_set (&plan, id, "output-lm", lights[i].output_lm);
      fixture_set (&plan, id, "is-on", lights[i].is_on);
      fixture_set (&plan, id, "can-switch-off", lights[i].can_switch_off);
    }
  comparison = lr_comparison_new (plan);
  assert_figure (comparison, 0, LR_COMPARE_HOUSE_LIGHTS, 800.0, 1e-9);
}

/* The room as found stands for what it was planned as; two that are found of each other both stay */
static void
test_found (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *planned = g_strdup (lr_plan_get_setup (plan)->id);
  g_autoptr (LrComparison) comparison = NULL;

  take (&plan, lr_plan_copy_found (plan, "As found", NULL));
  take (&plan, lr_plan_new_setup (plan, "Hall", NULL));
  comparison = lr_comparison_new (plan);
  g_assert_cmpuint (comparison->rooms->len, ==, 2);
  g_assert_cmpuint (comparison->n_left_out, ==, 1);
  g_assert_cmpstr (lr_comparison_room (comparison, 0)->setup->name, ==, "As found");
  g_assert_cmpstr (lr_comparison_room (comparison, 0)->planned->id, ==, planned);
  g_assert_cmpstr (lr_comparison_room (comparison, 1)->setup->name, ==, "Hall");
  g_assert_null (lr_comparison_room (comparison, 1)->planned);
}

/* Across an empty room the door is the narrowest: 0.7 m of the 0.8 or more that are asked for */
static void
test_way_out (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.6);
  const char *door = fixture_add (&plan, LR_ITEM_DOOR, 0, 2.5, 0.0);
  g_autoptr (LrComparison) comparison = NULL, wide = NULL;
  g_autoptr (LrLightLevels) levels = NULL, wide_levels = NULL;

  fixture_set (&plan, door, "is-exit", TRUE);
  fixture_set (&plan, door, "width-mm", 0.7);
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.5, 3.0);
  comparison = lr_comparison_new (plan);
  g_assert_true (lr_comparison_is_awaited (comparison, 0));
  assert_unknown (comparison, 0, LR_COMPARE_WAY_OUT, LR_AWAITED);
  levels = lr_light_levels_new (lr_comparison_room (comparison, 0)->study->plan, TRUE, NULL);
  lr_comparison_take_levels (comparison, 0, levels);
  assert_figure (comparison, 0, LR_COMPARE_WAY_OUT, 0.7, 1e-3);
  g_assert_false (lr_comparison_room (comparison, 0)->is_way_full);
  g_assert_cmpstr (lr_comparison_room (comparison, 0)->narrow_item->id, ==, door);

  fixture_set (&plan, door, "width-mm", 2.0);
  wide = lr_comparison_new (plan);
  wide_levels = lr_light_levels_new (lr_comparison_room (wide, 0)->study->plan, TRUE, NULL);
  lr_comparison_take_levels (wide, 0, wide_levels);
  assert_figure (wide, 0, LR_COMPARE_WAY_OUT, plan->limits.value[LR_LIMIT_EXIT_WIDTH], 1e-6);
  g_assert_true (lr_comparison_room (wide, 0)->is_way_full);
}

/* A cabinet of 1 by 1 m in the middle of 4 by 3 m leaves sqrt (16 + 2.56) m (see test-free_line.c), if it must stay and hides the eyes */
static void
test_blocked (void)
{
  static const struct { gboolean is_fixed; double height_m, line_m; } cases[] = {
    { TRUE, 2.0, 4.308131846 }, { FALSE, 2.0, 5.0 }, { TRUE, 0.9, 5.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LrPlan) plan = fixture_room (4.0, 3.0, 2.5);
      const char *cabinet = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 2.0, 1.5);
      g_autoptr (LrComparison) comparison = NULL;

      fixture_set (&plan, cabinet, "length-mm", 1.0);
      fixture_set (&plan, cabinet, "width-mm", 1.0);
      fixture_set (&plan, cabinet, "height-mm", cases[i].height_m);
      fixture_set (&plan, cabinet, "is-fixed", cases[i].is_fixed);
      comparison = lr_comparison_new (plan);
      assert_near (lr_comparison_room (comparison, 0)->line_m, cases[i].line_m, 1e-8);
    }
}

/* A row of 30 cabinets of 0.10 m from wall to wall in the middle of 12 by 3 m leaves two halves of 5.95 by 3 m, whose diagonal is the longest
 * line (closed form): every one of them counts */
static void
test_many_blocks (void)
{
  g_autoptr (LrPlan) plan = fixture_room (12.0, 3.0, 2.5);
  g_autoptr (LrComparison) comparison = NULL;

  for (int i = 0; i < 30; i++)
    {
      const char *cabinet = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 6.0, 0.05 + 0.1 * i);

      fixture_set (&plan, cabinet, "length-mm", 0.1);
      fixture_set (&plan, cabinet, "width-mm", 0.1);
      fixture_set (&plan, cabinet, "height-mm", 2.0);
      fixture_set (&plan, cabinet, "is-fixed", TRUE);
    }
  comparison = lr_comparison_new (plan);
  assert_near (lr_comparison_room (comparison, 0)->line_m, hypot (5.95, 3.0), 1e-8);
}

/* Both rooms are reckoned with the camera of the one that has one, 2 m from the eyes: what a tape reads, sensor plane to eyes */
static void
test_one_camera (void)
{
  g_autoptr (LrPlan) plan = fixture_room (4.0, 3.0, 2.5);
  g_autoptr (LrPlan) interview = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (interview);
  double camera_m = g_array_index (study->cameras, LrCameraReading, 0).distance_m;
  static const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  g_autoptr (LrComparison) comparison = NULL;

  take (&interview, lr_plan_new_setup (interview, "Cellar", NULL));
  take (&interview, lr_plan_set_corners (interview, corners_m, 4, NULL));
  take (&interview, lr_plan_move_setup (interview, -1, NULL));
  comparison = lr_comparison_new (interview);
  assert_near (comparison->camera_m, camera_m, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_BACKGROUND, 5.0 - 0.5 - camera_m, 1e-9);
  assert_figure (comparison, 1, LR_COMPARE_BACKGROUND, 10.0 - 0.5 - camera_m, 1e-9); /* 8 by 6 m */
}

/* 30 dB(A) measured, and 40 dB at 1 m heard from 1 m away, as it was read: 10 lg (10³ + 10⁴) = 40.41 (Davis and Patronis 2.15). Without
 * it, 30. One that is off counts for nothing */
static void
test_noise (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.5);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0, 2.0);
  const char *fan = fixture_add (&plan, LR_ITEM_NOISE, 0, 3.0, 3.0), *pump = fixture_add (&plan, LR_ITEM_NOISE, 0, 1.0, 1.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrComparison) before = NULL, after = NULL;
  LrVec3 eyes_m = lr_study_find_placed (study, person)->eyes_m;

  fixture_move (&plan, fan, eyes_m.x, eyes_m.y + 1.0);
  fixture_set (&plan, fan, "height-mm", eyes_m.z);
  fixture_set (&plan, fan, "level-db", 40.0);
  fixture_set (&plan, fan, "can-switch-off", TRUE);
  fixture_set (&plan, pump, "level-db", 70.0);
  fixture_set (&plan, pump, "is-off", TRUE);
  before = lr_comparison_new (plan);
  g_assert_cmpint (lr_comparison_room (before, 0)->figure[LR_COMPARE_NOISE].known, ==, LR_KNOWN_PARTLY);
  /* the room itself is as usual, but that the fan can be off is known: less than with it */
  g_assert_cmpint (lr_comparison_room (before, 0)->figure[LR_COMPARE_QUIET].known, ==, LR_KNOWN_PARTLY);
  g_assert_cmpfloat (lr_comparison_room (before, 0)->figure[LR_COMPARE_QUIET].value, <,
                     lr_comparison_room (before, 0)->figure[LR_COMPARE_NOISE].value - 3.0);

  set_room (&plan, "background-db", 30.0);
  after = lr_comparison_new (plan);
  assert_figure (after, 0, LR_COMPARE_NOISE, 40.414, 0.01);
  assert_figure (after, 0, LR_COMPARE_QUIET, 30.0, 1e-9);
  g_assert_cmpstr (lr_comparison_room (after, 0)->loudest->id, ==, fan);
}

static void
set_surface (LrPlan    **plan,
             const char *surface,
             const char *material)
{
  static const char *const bands[LR_N_BANDS] = { "125", "250", "500", "1000", "2000", "4000" };

  for (guint band = 0; band < LR_N_BANDS; band++)
    {
      g_autofree char *key = g_strdup_printf ("%s.absorption-%s-hz", surface, bands[band]);

      set_room (plan, key, lr_material_find (material)->absorption[band]);
    }
}

/* 5.0 x 4.0 x 2.5 m of parquet, plaster on lath and gypsum board: the mean of 1.618 and 2.007 s, by hand in test-sound.c. The walls give back
 * most: 45 m² less 4.5 % */
static void
test_reverberation (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrComparison) partly = NULL, all = NULL, measured = NULL;

  set_surface (&plan, "floor", "parquet");
  partly = lr_comparison_new (plan);
  g_assert_cmpint (lr_comparison_room (partly, 0)->figure[LR_COMPARE_REVERBERATION].known, ==, LR_KNOWN_PARTLY);
  set_surface (&plan, "ceiling", "plaster-on-lath");
  set_surface (&plan, "walls", "gypsum-board");
  all = lr_comparison_new (plan);
  assert_figure (all, 0, LR_COMPARE_REVERBERATION, 0.5 * (1.618 + 2.007), 0.006);
  g_assert_cmpint (lr_comparison_room (all, 0)->hard_part, ==, LR_SOUND_WALLS);
  assert_near (lr_comparison_room (all, 0)->hard_m2, 45.0 * 0.955, 1e-9);
  set_room (&plan, "reverberation-s", 0.8);
  measured = lr_comparison_new (plan);
  assert_figure (measured, 0, LR_COMPARE_REVERBERATION, 0.8, 1e-9);
}

/* 230 V, 16 A at 80 % (NEC 210.20(A)) less 500 W of what hangs there: 2444 W; a circuit without a socket in the room is counted, but no
 * help. Under a local rule the whole 3680 W less 500 */
static void
test_power (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *first = fixture_add (&plan, LR_ITEM_CIRCUIT, 0, 0.0, 0.0), *second = fixture_add (&plan, LR_ITEM_CIRCUIT, 0, 0.0, 0.0);
  const char *socket = fixture_add (&plan, LR_ITEM_SOCKET, 0, 1.0, 0.0), *double_socket = fixture_add (&plan, LR_ITEM_SOCKET, 0, 3.0, 0.0);
  const char *const circuits[] = { first, second };
  g_autoptr (LrComparison) usual = NULL, full = NULL;

  for (guint i = 0; i < 2; i++)
    {
      fixture_set (&plan, circuits[i], "volts-v", 230.0);
      fixture_set (&plan, circuits[i], "amps-a", 16.0);
    }
  fixture_set (&plan, first, "known-load-w", 500.0);
  fixture_text (&plan, socket, "circuit", first);
  fixture_set (&plan, socket, "outlets", 1);
  fixture_set (&plan, double_socket, "outlets", 2);
  usual = lr_comparison_new (plan);
  assert_figure (usual, 0, LR_COMPARE_CIRCUITS, 2.0, 0.0001);
  assert_figure (usual, 0, LR_COMPARE_POWER, 2444.0, 1e-6);
  assert_figure (usual, 0, LR_COMPARE_OUTLETS, 3.0, 0.0001);
  take (&plan, lr_plan_set_room_text (plan, "full-load-rule", "the house electrician, in writing", NULL));
  full = lr_comparison_new (plan);
  assert_figure (full, 0, LR_COMPARE_POWER, 3180.0, 1e-6);
}

static void
test_access (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *narrow = fixture_add (&plan, LR_ITEM_DOOR, 0, 1.0, 0.0), *wide = fixture_add (&plan, LR_ITEM_DOOR, 0, 3.0, 0.0);
  g_autoptr (LrComparison) comparison = NULL;

  fixture_set (&plan, narrow, "width-mm", 0.8);
  fixture_set (&plan, wide, "width-mm", 1.25);
  fixture_set (&plan, narrow, "is-exit", TRUE);
  fixture_set (&plan, wide, "is-exit", FALSE);
  comparison = lr_comparison_new (plan);
  assert_figure (comparison, 0, LR_COMPARE_DOOR, 1.25, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_EXITS, 1.0, 0.0001);
}

typedef struct
{
  const char *name;
  double      x_m, y_m;    /* of the window: on which wall */
  int         blind;
  double      minutes;     /* expected */
} SunCase;

/* 21 December at 50 N, 0 E, with north up: the middle of the sun is up, lifted by 34', for an hour angle of
 * acos ((sin -.567 - sin 50 sin -23.44) / (cos 50 cos 23.44)) = 60.0 degrees each way, 480 min in all, always south of east and west;
 * an east window has half of it, a north window none (closed form) */
static const SunCase sun_cases[] = {
  { "south", 2.5, 0.0, LR_BLIND_NONE, 480.0 },
  { "south-blind-down", 2.5, 0.0, LR_BLIND_DOWN, 0.0 },
  { "east", 5.0, 2.0, LR_BLIND_NONE, 240.0 },
  { "north", 2.5, 4.0, LR_BLIND_NONE, 0.0 },
};

static LrPlan *
sun_plan (const SunCase *c)
{
  static const char *const texts[][2] = { { "date", "2026-12-21" }, { "time-zone", "UTC" }, { "time-roll", "06:00" }, { "time-wrap", "20:00" } };
  LrPlan *plan = fixture_room (5.0, 4.0, 2.5);

  fixture_set (&plan, fixture_add (&plan, LR_ITEM_WINDOW, 0, c->x_m, c->y_m), "blind", c->blind);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    take (&plan, lr_plan_set_job (plan, texts[i][0], texts[i][1], NULL));
  take (&plan, lr_plan_set_location (plan, "latitude-deg", 50.0, NULL));
  take (&plan, lr_plan_set_location (plan, "longitude-deg", 0.0, NULL));

  return plan;
}

static void
test_sun (gconstpointer data)
{
  const SunCase *c = data;
  g_autoptr (LrPlan) plan = sun_plan (c);
  g_autoptr (LrComparison) comparison = lr_comparison_new (plan);

  assert_figure (comparison, 0, LR_COMPARE_SUN, c->minutes, 3.0);
  assert_unknown (comparison, 0, LR_COMPARE_SUN_ON_FACE, LR_NOT_PLACED);
}

/* On the face as long as it is worked out minute by minute through the one window; on the day before no hours were given */
static void
test_sun_on_face (void)
{
  g_autoptr (LrPlan) plan = sun_plan (&sun_cases[0]), timeless = NULL;
  g_autoptr (LrComparison) comparison = NULL, unknown = NULL;
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *window;
  int first, last;

  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.5, 1.5);
  study = lr_study_new (plan);
  g_assert_true (lr_study_sun_reach (study, study->subject->eyes_m, 0.5 * study->subject->body.head_width_m, 360, 1199, &first, &last, &window));
  comparison = lr_comparison_new (plan);
  assert_figure (comparison, 0, LR_COMPARE_SUN_ON_FACE, last - first + 1, 2.0);
  timeless = lr_plan_set_job (plan, "time-roll", "", NULL);
  g_assert_nonnull (timeless);
  unknown = lr_comparison_new (timeless);
  assert_unknown (unknown, 0, LR_COMPARE_SUN, LR_NO_DAY);
  assert_unknown (unknown, 0, LR_COMPARE_SUN_ON_FACE, LR_NO_DAY);
}

/* From 20:00 to 12:00 of the next day: the sun of that morning comes in, half of the 480 min; it does on no other reading of the hours */
static void
test_past_midnight (void)
{
  g_autoptr (LrPlan) plan = sun_plan (&sun_cases[0]);
  g_autoptr (LrComparison) comparison = NULL;
  const LrFigure *on_face;

  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.5, 1.5);
  take (&plan, lr_plan_set_job (plan, "time-roll", "20:00", NULL));
  take (&plan, lr_plan_set_job (plan, "time-wrap", "12:00", NULL));
  comparison = lr_comparison_new (plan);
  assert_figure (comparison, 0, LR_COMPARE_SUN, 240.0, 3.0);
  on_face = &lr_comparison_room (comparison, 0)->figure[LR_COMPARE_SUN_ON_FACE];
  g_assert_cmpint (on_face->known, ==, LR_KNOWN);
  g_assert_cmpfloat (on_face->value, >, 0.0);
  g_assert_cmpfloat (on_face->value, <=, 240.0);
}

/* Glass of 1.5 m² without and 1 m² with a blind: 40 % can be covered */
static void
test_windows (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *bare = fixture_add (&plan, LR_ITEM_WINDOW, 0, 2.5, 0.0), *covered = fixture_add (&plan, LR_ITEM_WINDOW, 0, 2.5, 4.0);
  g_autoptr (LrComparison) comparison = NULL;

  fixture_set (&plan, bare, "width-mm", 1.5);
  fixture_set (&plan, covered, "width-mm", 1.0);
  fixture_set (&plan, bare, "head-mm", 2.0);
  fixture_set (&plan, covered, "head-mm", 2.0);
  fixture_set (&plan, bare, "sill-mm", 1.0);
  fixture_set (&plan, covered, "sill-mm", 1.0);
  fixture_set (&plan, bare, "blind", LR_BLIND_NONE);
  fixture_set (&plan, covered, "blind", LR_BLIND_UP);
  set_room (&plan, "walls.reflectance-pct", 0.3);
  comparison = lr_comparison_new (plan);
  assert_figure (comparison, 0, LR_COMPARE_BARE_WINDOWS, 1.5, 1e-9);
  assert_near (lr_comparison_room (comparison, 0)->dark_share, 0.4, 1e-9);
  assert_figure (comparison, 0, LR_COMPARE_WALLS, 0.3, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/comparison/loft", test_loft);
  g_test_add_func ("/comparison/bare", test_bare);
  g_test_add_func ("/comparison/blocked", test_blocked);
  g_test_add_func ("/comparison/many-blocks", test_many_blocks);
  g_test_add_func ("/comparison/taken", test_taken);
  g_test_add_func ("/comparison/house-lights", test_house_lights);
  g_test_add_func ("/comparison/found", test_found);
  g_test_add_func ("/comparison/way-out", test_way_out);
  g_test_add_func ("/comparison/one-camera", test_one_camera);
  g_test_add_func ("/comparison/noise", test_noise);
  g_test_add_func ("/comparison/reverberation", test_reverberation);
  g_test_add_func ("/comparison/power", test_power);
  g_test_add_func ("/comparison/access", test_access);
  g_test_add_func ("/comparison/windows", test_windows);
  add_rows ("/comparison/sun", sun_cases, test_sun);
  g_test_add_func ("/comparison/sun-on-face", test_sun_on_face);
  g_test_add_func ("/comparison/past-midnight", test_past_midnight);

  return g_test_run ();
}
