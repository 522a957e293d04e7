/* test-relight.c - how lamps are to be dimmed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light adds up, so dimmings can be worked out by hand where one lamp gives one level; else every dimming is tried, with what is wanted
 * written once more in another way.
 */

#include "config.h"

#include "contract.h"
#include "fixture.h"
#include "relight.h"

#include "light_alone.h"

#define N_STEPS 21
#define GREY 0.2
#define ROUNDS 10

/* One camera that makes the white of 1000 lx, on skin of 0.2; face wanted at a share of 0.1, walls at 0.05 */
static LrRelight
make_relight (guint n_lamps,
              guint n_views)
{
  LrRelight relight = {
    .n_lamps = n_lamps, .n_views = n_views, .face_share = 0.1, .face_off_stops = 0.8, .wall_share = 0.05, .wall_off_stops = 1.0,
    .wall_under_stops = 0.5, .ratio_min_stops = 0.5, .ratio_max_stops = 3.0, .match_stops = 0.5, .most_iso = LR_RELIGHT_QUIET_ISO,
  };

  for (guint i = 0; i < n_lamps; i++)
    relight.lamp[i].dim = 1.0;
  for (guint i = 0; i < n_views; i++)
    relight.view[i] = (LrRelightView) { .has_walls = TRUE, .has_ratio = i == 0, .share_per_lx = 0.001, .skin = GREY };
  return relight;
}

typedef struct
{
  const char  *name;
  double       key_lx[2], fill_lx[2], fixed_lx[2]; /* left, right; the key at full */
  double       wall_lx, key_wall_lx;               /* the third lamp's on the walls, given back; the key's there */
  double       dim[3];                             /* as they are */
  LrRelightAim aim;
  double       expected[3];                        /* NAN: nothing mends */
} HandCase;

/* A face at 500 lx comes out at .2 x 500 / 1000 = 0.1. Expected by hand, beside each */
static const HandCase hand_cases[] = {
  /* 2000 lx: two stops over, a quarter; the walls are lit by their own lamp, 50 lx */
  { "key", { 2000, 500 }, { 0, 0 }, { 0, 0 }, 50, 0, { 1, 0, 1 }, LR_RELIGHT_FACE, { 0.25, 0, 1 } },
  /* the same lamp at a half gives 1000 lx: a quarter too */
  { "key-at-half", { 2000, 500 }, { 0, 0 }, { 0, 0 }, 50, 0, { 0.5, 0, 1 }, LR_RELIGHT_FACE, { 0.25, 0, 1 } },
  /* out: it goes up to a quarter */
  { "key-out", { 2000, 500 }, { 0, 0 }, { 0, 0 }, 50, 0, { 0, 0, 1 }, LR_RELIGHT_FACE, { 0.25, 0, 1 } },
  /* 400 lx given back by the walls are 0.4, three stops over 0.05: an eighth, 12.5 %, of which 15 % is as far as 10 % in lx and nearer in stops */
  { "walls", { 500, 200 }, { 0, 0 }, { 0, 0 }, 400, 0, { 1, 0, 1 }, LR_RELIGHT_WALLS, { 1, 0, 0.15 } },
  /* 500 to 25 lx: 4.3 stops; fill of 200 lx at full on both must bring 500 + f over 25 + f under 3 stops less the margin, 2^2.95 = 7.73:
   * f > 45.6, so 25 % of it and more will do, and the least of these leaves the face nearest to where it is */
  { "fill", { 500, 25 }, { 200, 200 }, { 0, 0 }, 50, 0, { 1, 0, 1 }, LR_RELIGHT_RATIO, { 1, 0.25, 1 } },
  /* nothing can be dimmed that makes a window's 4000 lx less */
  { "window", { 0, 0 }, { 0, 0 }, { 4000, 1000 }, 50, 0, { 1, 0, 1 }, LR_RELIGHT_FACE, { NAN, NAN, NAN } },
  /* the key gives the walls 200 lx back, two stops over; dimmed for them it would leave the face in the dark: 125 lx */
  { "spill", { 500, 200 }, { 0, 0 }, { 0, 0 }, 0, 200, { 1, 0, 0 }, LR_RELIGHT_WALLS, { NAN, NAN, NAN } },
};

static void
test_by_hand (gconstpointer data)
{
  const HandCase *c = data;
  LrRelight relight = make_relight (3, 1);
  LrRelightView *view = &relight.view[0];
  LrRelightAnswer answer;

  view->left = (LrRelightLevel) { c->fixed_lx[0], { c->key_lx[0], c->fill_lx[0] } };
  view->right = (LrRelightLevel) { c->fixed_lx[1], { c->key_lx[1], c->fill_lx[1] } };
  view->walls = (LrRelightLevel) { 0.0, { c->key_wall_lx, 0.0, c->wall_lx } };
  for (guint i = 0; i < 3; i++)
    relight.lamp[i].dim = c->dim[i];
  g_assert_cmpint (lr_relight_solve (&relight, 0, c->aim, FALSE, &answer), ==, !isnan (c->expected[0]));
  for (guint i = 0; i < 3 && !isnan (c->expected[0]); i++)
    assert_near (answer.dims[i], c->expected[i], 1e-9);
}

/* What goes off before what is dimmed, and how far that is; a face of 500 lx is right. Expected by hand, beside each */
typedef struct
{
  const char  *name;
  double       left_lx[3], right_lx[3]; /* in: of key, second lamp, house light */
  LrRelightAim aim;
  gboolean     stays_on;                /* the second lamp */
  double       expected[3];             /* NAN: nothing mends */
} OffCase;

static const OffCase off_cases[] = {
  /* 2000 lx; without key there are 1500, still over by more than 0.8 stops */
  { "house-light", { 500, 0, 1500 }, { 100, 0, 1500 }, LR_RELIGHT_FACE, FALSE, { 1, 1, 0 } },
  /* 1000 lx: the key at 10 % makes 550 of them, nearer than the 600 without house light, but what is only to be switched comes first */
  { "house-light-first", { 500, 100, 400 }, { 100, 20, 80 }, LR_RELIGHT_FACE, FALSE, { 1, 1, 0 } },
  /* two sides in 900 : 660 at 10 % of the second lamp, 0.45 stops, too flat; without it 500 : 250 */
  { "goes-out", { 500, 4000, 0 }, { 250, 4100, 0 }, LR_RELIGHT_RATIO, FALSE, { 1, 0, 1 } },
  { "stays-on", { 500, 4000, 0 }, { 250, 4100, 0 }, LR_RELIGHT_RATIO, TRUE, { NAN, NAN, NAN } },
  /* 20000 lx would have to be dimmed to 4 % */
  { "least", { 0, 20000, 0 }, { 0, 5000, 0 }, LR_RELIGHT_FACE, TRUE, { NAN, NAN, NAN } },
};

static void
test_off (gconstpointer data)
{
  const OffCase *c = data;
  LrRelight relight = make_relight (3, 1);
  LrRelightView *view = &relight.view[0];
  LrRelightAnswer answer;

  relight.lamp[0].stays_on = TRUE;
  relight.lamp[1].stays_on = c->stays_on;
  relight.lamp[2].is_switch = TRUE;
  view->has_walls = FALSE;
  for (guint i = 0; i < 3; i++)
    {
      view->left.full_lx[i] = c->left_lx[i];
      view->right.full_lx[i] = c->right_lx[i];
    }
  g_assert_cmpint (lr_relight_solve (&relight, 0, c->aim, FALSE, &answer), ==, !isnan (c->expected[0]));
  for (guint i = 0; i < 3 && !isnan (c->expected[0]); i++)
    assert_near (answer.dims[i], c->expected[i], 1e-9);
}

/* What is wanted once more: stops that a view is off by, and how far it misses each of four bounds */
static void
look_at (const LrRelight *relight,
         const double    *dims,
         guint            view,
         double           miss[3],
         double          *off)
{
  const LrRelightView *v = &relight->view[view];
  double lux[3] = { v->left.fixed_lx, v->right.fixed_lx, v->walls.fixed_lx }, face, wall, ratio;

  for (guint i = 0; i < relight->n_lamps; i++)
    {
      lux[0] += dims[i] * v->left.full_lx[i];
      lux[1] += dims[i] * v->right.full_lx[i];
      lux[2] += dims[i] * v->walls.full_lx[i];
    }
  face = log2 (MAX (lux[0], lux[1]) * v->share_per_lx * v->skin) - log2 (relight->face_share);
  wall = log2 (lux[2] * v->share_per_lx) - log2 (relight->wall_share);
  ratio = fabs (log2 (lux[0]) - log2 (lux[1]));
  miss[0] = face + log2 (relight->face_share) >= 0.0 ? 100.0 + face : fabs (face) - relight->face_off_stops;
  miss[1] = MAX (fabs (wall) - relight->wall_off_stops,
                 relight->wall_under_stops - (face + log2 (relight->face_share) - wall - log2 (relight->wall_share)));
  miss[2] = v->has_ratio ? MAX (relight->ratio_min_stops - ratio, ratio - relight->ratio_max_stops) : -100.0;
  *off += face * face + wall * wall;
}

/* Whether dims mend; @off: how far they leave everything off */
static gboolean
is_good (const LrRelight *relight,
         const double    *now,
         const double    *dims,
         LrRelightAim     aim,
         double          *off)
{
  double unused = 0.0;
  gboolean good = TRUE;

  *off = 0.0;
  for (guint view = 0; view < relight->n_views; view++)
    {
      double before[3], after[3];

      look_at (relight, now, view, before, &unused);
      look_at (relight, dims, view, after, off);
      if (view == 0 && after[aim] > -0.05)
        good = FALSE;
      for (int i = 0; i < 3; i++)
        if (after[i] > -0.025 && after[i] > before[i] + (before[i] > 0.0 ? 0.1 : 1e-6))
          good = FALSE;
    }
  return good;
}

static void
random_level (LrRelightLevel *level,
              guint           n_lamps,
              double          most_lx)
{
  level->fixed_lx = g_test_rand_double_range (0.5, 0.1 * most_lx);
  for (guint i = 0; i < n_lamps; i++)
    level->full_lx[i] = most_lx * pow (g_test_rand_double_range (0.05, 1.0), 2.0);
}

/* Every dimming of one lamp, then of two, of three lamps before two cameras, within the range of a dimmer and then with lamps that go out: as
 * good as the best of them, or none where there is none */
static void
test_brute_force (void)
{
  guint n_found = 0, n_two = 0, n_none = 0;

  for (int round = 0; round < 300; round++)
    {
      LrRelight relight = make_relight (3, 2);
      LrRelightAim aim = (LrRelightAim) (round % 3);
      LrRelightAnswer answer;
      double now[3], best[6] = { HUGE_VAL, HUGE_VAL, HUGE_VAL, HUGE_VAL, HUGE_VAL, HUGE_VAL }, off;
      gboolean has_answer;
      guint fewest = 2;

      for (guint i = 0; i < 3; i++)
        relight.lamp[i].dim = now[i] = 0.05 * g_test_rand_int_range (1, N_STEPS);
      for (guint i = 0; i < 2; i++)
        {
          random_level (&relight.view[i].left, 3, 3000.0);
          random_level (&relight.view[i].right, 3, 1000.0);
          random_level (&relight.view[i].walls, 3, 200.0);
        }
      if (is_good (&relight, now, now, aim, &off))
        continue; /* there is nothing to mend */

      for (int a = 0; a < N_STEPS; a++)
        for (int b = 0; b < N_STEPS; b++)
          for (int c = 0; c < N_STEPS; c++)
            {
              double dims[3] = { 0.05 * a, 0.05 * b, 0.05 * c };
              guint n = 0;
              gboolean goes_out = FALSE, is_under = FALSE;

              for (guint i = 0; i < 3; i++)
                if (fabs (dims[i] - now[i]) > 1e-6)
                  {
                    n++;
                    goes_out |= dims[i] < 1e-6;
                    is_under |= dims[i] > 1e-6 && dims[i] < 0.1 - 1e-6;
                  }
              if (n > 0 && n < 3 && !is_under && is_good (&relight, now, dims, aim, &off))
                best[2 * n + goes_out] = MIN (best[2 * n + goes_out], off);
            }
      while (fewest < 6 && best[fewest] == HUGE_VAL)
        fewest++;
      has_answer = lr_relight_solve (&relight, 0, aim, FALSE, &answer);
      if (fewest == 6)
        {
          n_none++; /* all alike may do */
          g_assert_true (!has_answer || is_good (&relight, now, answer.dims, aim, &off));
          continue;
        }
      g_assert_true (has_answer);
      g_assert_true (is_good (&relight, now, answer.dims, aim, &off));
      assert_within (off, best[fewest], 1e-6);
      n_found++;
      n_two += fewest >= 4;
    }
  g_test_message ("%u mended, %u of them by two lamps; %u not", n_found, n_two, n_none);
  g_assert_cmpuint (n_found, >, 60);
  g_assert_cmpuint (n_two, >, 10);
}

/* With cameras that may be set otherwise, each face comes out where it is wanted: 1000 lx instead of 500 are a stop less, 2 x 40 lx on the
 * walls a stop less than 80 would be, so that 0.2 x 1000 / 1000 / 2 = 0.1 and 0.08 / 2 = 0.04 */
static void
test_exposed (void)
{
  LrRelight relight = make_relight (2, 2);
  LrRelightAnswer answer;

  relight.lamp[1].dim = 1.0;
  for (guint i = 0; i < 2; i++)
    {
      relight.view[i].left = (LrRelightLevel) { 1000.0, { 0 } };
      relight.view[i].right = (LrRelightLevel) { 400.0, { 0 } };
      relight.view[i].walls = (LrRelightLevel) { 0.0, { 400.0, 0.0 } };
    }
  g_assert_false (lr_relight_solve (&relight, 0, LR_RELIGHT_FACE, FALSE, &answer));
  g_assert_true (lr_relight_solve (&relight, 0, LR_RELIGHT_FACE, TRUE, &answer));
  assert_near (answer.more_stops[0], -1.0, 1e-9);
  assert_near (answer.more_stops[1], -1.0, 1e-9);
  assert_near (answer.dims[0], 0.25, 1e-9); /* 100 lx, half of it for the camera: the 0.05 that are wanted */
  assert_near (answer.dims[1], 1.0, 1e-9);
}

/* Levels that are not those of the plan give no advice; those that are give what each lamp does at full */
static void
test_of_a_plan (void)
{
  g_autoptr (LrPlan) plan = fixture_interview (), moved = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrStudy) study = NULL, other = NULL;
  LrJudge judge = { 0 };
  LrRelight relight;
  double dims[LR_RELIGHT_LAMPS];

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4);
  fixture_text (&plan, "light-1", "aims-at", WENNA);
  fixture_set (&plan, "light-1", "dim-pct", 0.4);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  study = lr_study_new (plan);
  judge = (LrJudge) { .study = study, .levels = levels, .limits = plan->limits.value };
  g_assert_true (lr_relight_init (&relight, &judge));
  g_assert_cmpuint (relight.n_lamps, ==, 1);
  g_assert_cmpuint (relight.n_views, ==, 2);
  g_assert_true (relight.view[0].has_ratio);
  g_assert_false (relight.view[1].has_ratio);
  assert_within (0.4 * relight.view[0].left.full_lx[0], lr_lux_all (lr_light_levels_face (levels, WENNA)->at[LR_FACE_LEFT]), 1e-3);
  assert_within (relight.view[0].left.full_lx[0] * 0.4, lr_light_alone_face_lx (levels, 0, WENNA, LR_FACE_LEFT), 1e-9);
  lr_relight_get (&relight, dims);
  assert_near (dims[0], 0.4, 1e-9);

  moved = lr_plan_move (plan, INES, lr_vec2 (5.5, 2.4), NULL);
  other = lr_study_new (moved);
  judge.study = other;
  g_assert_false (lr_relight_init (&relight, &judge));
}

/* A lamp that goes nearer, or round the person: what is told beforehand of the two cheeks and of the walls, with bounces as they are, is what
 * all of it worked out anew gives, within a tenth of a stop */
static void
test_moved (void)
{
  for (LrRelightAim aim = LR_RELIGHT_FACE; aim <= LR_RELIGHT_RATIO; aim += LR_RELIGHT_RATIO - LR_RELIGHT_FACE)
    {
      g_autoptr (LrPlan) plan = fixture_interview (), mended = NULL;
      g_autoptr (LrLightLevels) levels = NULL, after = NULL;
      g_autoptr (LrStudy) study = NULL;
      LrJudge judge = { 0 };
      LrRelight relight;
      LrRelightMove moves[LR_RELIGHT_MOVES], move;
      const LrFaceLight *face;

      fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, aim == LR_RELIGHT_FACE ? 4.2 : 6.2, aim == LR_RELIGHT_FACE ? 1.4 : 2.2);
      fixture_text (&plan, "light-1", "aims-at", WENNA);
      fixture_set (&plan, "light-1", "output-lm", aim == LR_RELIGHT_FACE ? 2200.0 : 10000.0);
      fixture_set (&plan, "light-1", "lamp-height-mm", aim == LR_RELIGHT_FACE ? 1.8 : 2.3);
      levels = lr_light_levels_new (plan, TRUE, NULL);
      study = lr_study_new (plan);
      judge = (LrJudge) { .study = study, .levels = levels, .limits = plan->limits.value };
      g_assert_true (lr_relight_init (&relight, &judge));
      g_assert_cmpfloat (lr_relight_miss (&relight, &relight.lamp[0].dim, 0, aim), >, 0.0);
      g_assert_cmpuint (lr_relight_find_moves (&relight, &judge, 0, aim, moves), >, 0);
      move = moves[0];
      g_assert_cmpint (move.turned_rad != 0.0, ==, aim == LR_RELIGHT_RATIO);
      mended = lr_plan_ref (plan);
      fixture_move (&mended, "light-1", move.to_m.x, move.to_m.y);
      fixture_set (&mended, "light-1", "dim-pct", move.dim);
      after = lr_light_levels_new (mended, TRUE, NULL);
      face = lr_light_levels_face (after, WENNA);
      for (LrFacePoint point = LR_FACE_LEFT; point <= LR_FACE_RIGHT; point++)
        {
          double told_lx = move.dim * (point == LR_FACE_LEFT ? move.left_lx : move.right_lx);

          g_test_message ("%.1f lx told, %.1f lx then", told_lx, lr_lux_all (face->at[point]));
          g_assert_cmpfloat (fabs (log2 (told_lx / lr_lux_all (face->at[point]))), <, 0.1);
        }
    }
}

static double
pick (double low,
      double high)
{
  return g_test_rand_double_range (low, high);
}

/* An interview with lamps that somebody has put about and dimmed */
static LrPlan *
random_plan (void)
{
  static const LrVec2 usual_m[] = { { 4.2, 1.4 }, { 4.4, 4.6 }, { 1.2, 5.0 } };
  LrPlan *plan = fixture_interview ();

  for (int i = 0; i < g_test_rand_int_range (1, 4); i++)
    {
      const char *id = fixture_add (&plan, LR_ITEM_LIGHT, g_test_rand_int_range (0, 2) == 0 ? LR_LIGHT_WIDE : LR_LIGHT_PANEL,
                                    usual_m[i].x + pick (-0.8, 0.8), usual_m[i].y + pick (-0.5, 0.3));

      if (i < 2)
        fixture_text (&plan, id, "aims-at", WENNA);
      else
        fixture_set (&plan, id, "facing-deg", LR_PI);
      fixture_set (&plan, id, "job", i == 0 ? LR_JOB_KEY : i == 1 ? LR_JOB_FILL : LR_JOB_WALL);
      fixture_set (&plan, id, "lamp-height-mm", pick (1.4, 2.2));
      fixture_set (&plan, id, "output-lm", 1000.0 * pow (20.0, pick (0.0, 1.0)));
      fixture_set (&plan, id, "dim-pct", 0.05 * g_test_rand_int_range (0, N_STEPS));
    }
  if (g_test_rand_bit ())
    fixture_set (&plan, CAMERA_B, "iso", 400.0);
  return plan;
}

static LrRemarks *
judge_lit (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (plan, TRUE, NULL);

  return lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
}

static guint
count_light (const LrRemarks *remarks)
{
  guint n = 0;

  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      n += remark->grade != LR_GRADE_FINE && remark->check >= LR_CHECK_UNLIT && remark->check <= LR_CHECK_EXPOSURE_MATCH;
    }
  return n;
}

/* With all worked out anew: advice on light mends its own remark, makes no Fix, and leaves no more to mind of light than there was */
static void
test_advice (void)
{
  guint n_advised = 0, n_more = 0;

  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (LrPlan) plan = random_plan ();
      g_autoptr (LrRemarks) remarks = judge_lit (plan);

      for (guint i = 0; i < remarks->all->len; i++)
        {
          const LrRemark *remark = remarks->all->pdata[i];
          g_autoptr (LrPlan) mended = NULL;
          g_autoptr (LrRemarks) after = NULL;

          if (remark->remedy == NULL || remark->check < LR_CHECK_UNLIT || remark->check > LR_CHECK_WALL_LEVEL)
            continue;

          n_advised++;
          g_test_message ("%s", remark->text);
          mended = lr_remedy_apply (remark->remedy, plan, NULL);
          g_assert_nonnull (mended);
          after = judge_lit (mended);
          contract_check (remark, remarks, after);
          if (remark->check != LR_CHECK_UNLIT && count_light (after) > count_light (remarks))
            n_more++;
        }
    }
  g_test_message ("%u remedies, %u of them leave more to mind", n_advised, n_more);
  g_assert_cmpuint (n_advised, >, ROUNDS / 2);
  g_assert_cmpuint (10 * n_more, <=, n_advised);
}

typedef struct
{
  const char *name;
  struct { const char *id, *key; double value; } edits[6];
  LrWalls walls;
} SetCase;

/* The example with lamps and cameras as they might be left by somebody else */
static const SetCase set_cases[] = {
  { "lamps-out", { { "light-1", "dim-pct", 0.0 }, { "light-3", "dim-pct", 0.0 }, { "light-2", "dim-pct", 0.0 } }, LR_WALLS_AT_LEVEL },
  { "all-at-full", { { "light-1", "dim-pct", 1.0 }, { "light-2", "dim-pct", 1.0 }, { "light-3", "dim-pct", 1.0 }, { "camera-a", "iso", 1600.0 } },
    LR_WALLS_AT_LEVEL },
  { "walls-blown", { { "light-1", "dim-pct", 0.25 }, { "light-3", "output-lm", 4500.0 }, { "light-3", "dim-pct", 1.0 } }, LR_WALLS_AT_LEVEL },
  { "walls-wanted-dark", { { "light-1", "dim-pct", 0.2 }, { "light-3", "dim-pct", 1.0 } }, LR_WALLS_DARK },
};

/* (nullable): the first remark on light that says what to do */
static const LrRemark *
find_advice (const LrRemarks *remarks)
{
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      if (remark->grade != LR_GRADE_FINE && remark->remedy != NULL && remark->check >= LR_CHECK_UNLIT && remark->check <= LR_CHECK_EXPOSURE_MATCH)
        return remark;
    }
  return NULL;
}

/* Whoever does what is said, remark by remark, has a set in a few steps in which nothing is left to mind of light */
static void
test_set (gconstpointer data)
{
  const SetCase *c = data;
  LrPlan *plan = fixture_example ("loft");
  guint n_steps = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (c->edits) && c->edits[i].id != NULL; i++)
    fixture_set (&plan, c->edits[i].id, c->edits[i].key, c->edits[i].value);
  if (c->walls == LR_WALLS_DARK)
    {
      LrPlan *next = lr_plan_set_setup (plan, "walls-wanted", LR_WALLS_DARK, NULL);

      lr_plan_unref (plan);
      plan = next;
    }
  for (;;)
    {
      g_autoptr (LrRemarks) remarks = judge_lit (plan);
      const LrRemark *advice = find_advice (remarks);
      LrPlan *next;

      if (advice == NULL)
        {
          g_assert_cmpuint (count_light (remarks), ==, 0);
          break;
        }
      g_test_message ("%s", advice->text);
      g_assert_cmpuint (++n_steps, <, 8);
      next = lr_remedy_apply (advice->remedy, plan, NULL);
      g_assert_nonnull (next);
      lr_plan_unref (plan);
      plan = next;
    }
  g_assert_cmpuint (n_steps, >, 0);
  lr_plan_unref (plan);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/relight/by-hand", hand_cases, test_by_hand);
  add_rows ("/relight/off", off_cases, test_off);
  add_rows ("/relight/set", set_cases, test_set);
  g_test_add_func ("/relight/brute-force", test_brute_force);
  g_test_add_func ("/relight/exposed", test_exposed);
  g_test_add_func ("/relight/of-a-plan", test_of_a_plan);
  g_test_add_func ("/relight/moved", test_moved);
  g_test_add_func ("/relight/advice", test_advice);
  return g_test_run ();
}
