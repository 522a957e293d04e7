/* survey.c - a room from what was taped in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walls in the order walked, their corners and the diagonals are measures of a network of corners, which is adjusted by
 * least squares. How good they are, one standard deviation each:
 *
 *   a length: 4 mm for the hand and the skirting at its two ends, and 0.2 mm per metre. The second is the most that a tape of
 *     class II may err by: Directive 2014/32/EU, annex X; from memory. The first is common practice, no source: together they
 *     are the centimetre, as two of them, that a wall of five metres is taped to.
 *   a square corner: each of its walls may lean out by 4 mm and 2 mm per metre of its length. New walls may by 6 mm on 1 m,
 *     8 on 3, 12 on 6 (DIN 18202, table 2; from memory); that these, the most there, are one standard deviation of
 *     walls that are not new is common practice, no source. It makes a quarter of a degree between walls of 4 and 5 m.
 *   any other angle: 1 degree, read off a folding rule. Common practice, no source.
 */

#include "config.h"

#include "survey_private.h"

#include "polygon.h"
#include "traverse.h"

#define LEAN_M 0.004
#define LEAN_PER_M 0.002
#define ANGLE_SD_RAD (1.0 * LR_DEG)
#define SQUARE_RAD (0.06 * LR_DEG) /* off 90 degrees by as little it was said to be square: notes are rounded to 0.1 */

#define HELD_SQUARE_RAD 1e-4   /* standard deviation of a corner that is held square: a tenth of a millimetre per metre */
#define ROUND_RAD (10.0 * LR_DEG) /* turns that miss a whole one by less go round */
#define ROUND_SHARE 0.15          /* a walk that goes round may miss its start by so much of its length: a misreading */
#define CLOSING_SHARE 0.05        /* and so much aside of a last wall that was not told: more, and others are to come */

static double
lean_rad (double length_m)
{
  return (LEAN_M + LEAN_PER_M * length_m) / length_m;
}

static gboolean
is_square (double turn_rad)
{
  return fabs (fabs (turn_rad) - LR_PI / 2.0) < SQUARE_RAD;
}

/* Of a turn between walls of two lengths */
static double
turn_sd_rad (double turn_rad,
             double before_m,
             double after_m)
{
  double lean = hypot (lean_rad (before_m), lean_rad (after_m));

  return is_square (turn_rad) ? lean : hypot (lean, ANGLE_SD_RAD);
}

/* What was told, before anything is solved */
static LrSurveyState
check_input (const LrSurveyWall     *walls,
             guint                   n_walls,
             const LrSurveyDiagonal *diagonals,
             guint                   n_diagonals,
             guint                  *fault)
{
  for (*fault = 0; *fault < n_walls; ++*fault)
    {
      const LrSurveyWall *wall = &walls[*fault];

      if ((!isnan (wall->length_m) && !(wall->length_m > 0.0 && isfinite (wall->length_m))) || !isfinite (wall->turn_rad))
        return LR_SURVEY_NO_LENGTH;
    }
  for (*fault = 0; *fault < n_diagonals; ++*fault)
    if (!(diagonals[*fault].length_m > 0.0) || !isfinite (diagonals[*fault].length_m) || diagonals[*fault].from == diagonals[*fault].to)
      return LR_SURVEY_NO_DIAGONAL;
  *fault = 0;

  return n_walls < 2 || n_walls >= LR_MAX_CORNERS ? LR_SURVEY_TOO_SHORT : LR_SURVEY_ROUND;
}

static void
clear_work (LrSurveyWork *work)
{
  g_free (work->walls);
  g_free (work->has_turn);
  g_free (work->heading_rad);
  g_free (work->points);
  g_clear_pointer (&work->measures, g_array_unref);
  g_clear_pointer (&work->origins, g_array_unref);
}

/* Room for the walls and one that closes them */
static void
init_work (LrSurveyWork       *work,
           const LrSurveyWall *walls,
           guint               n_walls)
{
  work->n = n_walls;
  work->walls = g_new0 (LrSurveyWall, n_walls + 1);
  work->has_turn = g_new0 (gboolean, n_walls + 1);
  work->heading_rad = g_new0 (double, n_walls + 1);
  work->points = g_new0 (LrNetPoint, n_walls + 1);
  work->measures = g_array_new (FALSE, FALSE, sizeof (LrNetMeasure));
  work->origins = g_array_new (FALSE, FALSE, sizeof (LrSurveySuspect));
  for (guint i = 0; i < n_walls; i++)
    {
      work->walls[i] = walls[i];
      work->has_turn[i] = TRUE;
      work->heading_rad[i + 1] = work->heading_rad[i] + walls[i].turn_rad;
    }
}

/* The last wall that was not told: square, as far as the others leave it */
static void
add_closing_wall (LrSurveyWork *work)
{
  double turned_rad = work->heading_rad[work->n];
  double rest_rad = (turned_rad < 0.0 ? -2.0 : 2.0) * LR_PI - turned_rad;

  work->walls[work->n] = (LrSurveyWall) { NAN, rest_rad };
  work->has_turn[work->n] = is_square (rest_rad);
  work->n++;
}

/* A walk that ends beside its start is round, whatever was told of its last corner, whose turn the others leave: a wall as short
 * as what the tapes miss is none, unless it was told */
static gboolean
ends_at_start (LrSurveyWork *work)
{
  double turned_rad = work->heading_rad[work->n - 1];
  double rest_rad = (turned_rad < 0.0 ? -2.0 : 2.0) * LR_PI - turned_rad;
  LrVec2 end_m = lr_vec2 (0.0, 0.0);

  for (guint i = 0; i < work->n; i++)
    end_m = lr_vec2_add (end_m, lr_vec2_polar (work->heading_rad[i], work->walls[i].length_m));
  if (work->n < 3 || !(lr_vec2_length (end_m) < LR_SURVEY_SHORT_M) || fabs (rest_rad) > 0.99 * LR_PI)
    return FALSE;

  work->walls[work->n - 1].turn_rad = rest_rad;
  work->has_turn[work->n - 1] = is_square (rest_rad);
  work->heading_rad[work->n] = turned_rad + rest_rad;
  return TRUE;
}

/* Finds the lengths that were not taped from those that were, so that the walk closes: none, one, or two that are not parallel.
 * @missing: (array length=2): which. Returns: by how much it misses, NAN if there is no answer */
static double
fill_lengths (LrSurveyWork *work,
              guint         missing[2],
              guint        *n_missing)
{
  LrVec2 sum_m = lr_vec2 (0.0, 0.0), a, b;
  double cross;

  *n_missing = 0;
  for (guint i = 0; i < work->n; i++)
    if (!isnan (work->walls[i].length_m))
      sum_m = lr_vec2_add (sum_m, lr_vec2_polar (work->heading_rad[i], work->walls[i].length_m));
    else if (*n_missing < 2)
      missing[(*n_missing)++] = i;
    else
      return NAN;
  if (*n_missing == 0)
    return lr_vec2_length (sum_m);

  a = lr_vec2_polar (work->heading_rad[missing[0]], 1.0);
  if (*n_missing == 1)
    {
      work->walls[missing[0]].length_m = -lr_vec2_dot (sum_m, a);
      return fabs (lr_vec2_cross (sum_m, a));
    }

  b = lr_vec2_polar (work->heading_rad[missing[1]], 1.0);
  cross = lr_vec2_cross (a, b);
  if (fabs (cross) < 0.05)
    return NAN;
  work->walls[missing[0]].length_m = -lr_vec2_cross (sum_m, b) / cross;
  work->walls[missing[1]].length_m = -lr_vec2_cross (a, sum_m) / cross;
  return 0.0;
}

static double
walked_m (const LrSurveyWork *work)
{
  double sum_m = 0.0;

  for (guint i = 0; i < work->n; i++)
    sum_m += isnan (work->walls[i].length_m) ? 0.0 : work->walls[i].length_m;
  return sum_m;
}

/* A straight wall from the end of the walk to its start, at whatever angle */
static gboolean
close_straight (LrSurveyWork *work,
                LrSurvey     *survey,
                guint         n_walls)
{
  LrVec2 end_m = lr_vec2 (0.0, 0.0);

  for (guint i = 0; i < n_walls; i++)
    {
      if (isnan (work->walls[i].length_m))
        return FALSE;
      end_m = lr_vec2_add (end_m, lr_vec2_polar (work->heading_rad[i], work->walls[i].length_m));
    }
  survey->closing_m = lr_vec2_length (end_m);
  survey->has_closing_wall = TRUE;
  work->n = n_walls + 1;
  work->walls[n_walls].length_m = survey->closing_m;
  work->heading_rad[n_walls] = lr_vec2_angle_rad (lr_vec2_scale (end_m, -1.0));
  work->has_turn[n_walls] = work->has_turn[n_walls - 1] = FALSE;
  return survey->closing_m > 0.0;
}

/* Which walls there are, with a first guess of every length. FALSE with a fault in @survey */
static gboolean
lay_out (LrSurveyWork *work,
         LrSurvey     *survey,
         guint         n_walls,
         gboolean     *is_taped)
{
  gboolean goes_round = fabs (fabs (work->heading_rad[n_walls]) - 2.0 * LR_PI) < ROUND_RAD || ends_at_start (work);
  guint missing[2], n_missing;
  double gap_m;

  if (!goes_round)
    add_closing_wall (work);
  gap_m = fill_lengths (work, missing, &n_missing);
  survey->gap_m = gap_m;
  survey->has_closing_wall = !goes_round;
  survey->state = LR_SURVEY_ROUND;
  for (guint i = 0; i < work->n; i++)
    is_taped[i] = TRUE;
  for (guint i = 0; i < n_missing; i++)
    {
      is_taped[missing[i]] = FALSE;
      if (!(work->walls[missing[i]].length_m > 0.0))
        {
          survey->fault = missing[i];
          gap_m = NAN;
        }
    }
  if (gap_m <= walked_m (work) * (goes_round ? ROUND_SHARE : CLOSING_SHARE))
    return TRUE;

  /* more walls are to come: those that were not taped cannot be told yet */
  for (guint i = 0; i < n_missing; i++)
    work->walls[missing[i]].length_m = NAN;
  survey->state = LR_SURVEY_OPEN;
  is_taped[n_walls] = FALSE;
  if (close_straight (work, survey, n_walls))
    return TRUE;
  survey->state = LR_SURVEY_NO_LENGTH;
  for (guint i = n_walls; i-- > 0 && n_missing > 0;)
    if (isnan (work->walls[i].length_m))
      survey->fault = i;
  return FALSE;
}

static void
guess_points (LrSurveyWork *work)
{
  g_autofree LrVec2 *points_m = g_new0 (LrVec2, work->n + 1);
  LrVec2 first;

  for (guint i = 0; i < work->n; i++)
    points_m[i + 1] = lr_vec2_add (points_m[i], lr_vec2_polar (work->heading_rad[i], work->walls[i].length_m));
  lr_traverse_close (points_m, work->n);
  /* the first wall runs along x: its end is held there */
  first = points_m[1];
  for (guint i = 0; i < work->n; i++)
    work->points[i] = (LrNetPoint) { lr_vec2_rotate (points_m[i], -lr_vec2_angle_rad (first)), i == 0, i <= 1 };
}

static void
add_measure (LrSurveyWork *work,
             LrNetMeasure  measure,
             LrDoubtKind   kind,
             guint         index)
{
  const LrSurveySuspect origin = { kind, index, (guint) (kind == LR_DOUBT_CORNER ? measure.at : measure.from), (guint) measure.to };

  g_array_append_val (work->measures, measure);
  g_array_append_val (work->origins, origin);
}

static void
add_measures (LrSurveyWork           *work,
              const gboolean         *is_taped,
              const LrSurveyDiagonal *diagonals,
              guint                   n_diagonals)
{
  for (guint i = 0; i < work->n; i++)
    {
      guint end = (i + 1) % work->n;
      double length_m = work->walls[i].length_m, turn_rad = work->walls[i].turn_rad;

      if (is_taped[i])
        add_measure (work, (LrNetMeasure) { LR_NET_LENGTH, i, end, 0, length_m, lr_tape_sd_m (length_m) }, LR_DOUBT_WALL, i);
      if (work->has_turn[i])
        add_measure (work, (LrNetMeasure) { LR_NET_ANGLE, (end + 1) % work->n, i, end, LR_PI - turn_rad,
                                            turn_sd_rad (turn_rad, length_m, work->walls[end].length_m) }, LR_DOUBT_CORNER, end);
    }
  for (guint i = 0; i < n_diagonals; i++)
    add_measure (work, (LrNetMeasure) { LR_NET_LENGTH, diagonals[i].from, diagonals[i].to, 0, diagonals[i].length_m,
                                        lr_tape_sd_m (diagonals[i].length_m) }, LR_DOUBT_DIAGONAL, i);
}

static void
put_corners (LrSurvey           *survey,
             const LrSurveyWork *work,
             LrVec2              start_m,
             double              heading_rad)
{
  for (guint i = 0; i < work->n; i++)
    {
      LrVec2 corner_m = lr_vec2_add (start_m, lr_vec2_rotate (work->points[i].at_m, heading_rad));

      g_array_append_val (survey->corners_m, corner_m);
    }
  if (survey->has_closing_wall)
    survey->closing_m = lr_vec2_distance (work->points[work->n - 1].at_m, work->points[0].at_m);
}

static double
worst_corner_sd_m (const LrNetSolution *solution)
{
  double worst_m = 0.0;

  for (gsize i = 0; i < solution->n_points; i++)
    worst_m = fmax (worst_m, lr_net_point_sd_m (solution, i));
  return worst_m;
}

static gboolean
is_left_out (const LrSurvey        *survey,
             const LrSurveySuspect *suspect)
{
  for (guint i = 0; i < survey->doubts->len; i++)
    {
      const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, i);

      if (doubt->is_left_out && doubt->of[0].kind == suspect->kind && doubt->of[0].index == suspect->index)
        return TRUE;
    }
  return FALSE;
}

GArray *
lr_survey_hold_square (const LrSurveyWork *work)
{
  GArray *measures = g_array_copy (work->measures);

  for (guint i = 0; i < measures->len; i++)
    {
      LrNetMeasure *measure = &g_array_index (measures, LrNetMeasure, i);

      if (measure->kind == LR_NET_ANGLE && is_square (LR_PI - measure->value))
        measure->sd = HELD_SQUARE_RAD;
    }
  return measures;
}

/* As long as walls contradict each other and no diagonal tells which, the corners stay as square as they were said to be: a wall
 * that was misread would lean all others */
static void
keep_square (const LrSurvey *survey,
             LrSurveyWork   *work,
             guint           n_diagonals)
{
  const LrSurveyDoubt *doubt = survey->doubts->len > 0 ? &g_array_index (survey->doubts, LrSurveyDoubt, 0) : NULL;
  g_autoptr (GArray) measures = NULL;
  LrNetSolution solution;

  if (n_diagonals > 0 || doubt == NULL || doubt->is_within || doubt->n < 2 || doubt->of[0].kind != LR_DOUBT_WALL)
    return;

  measures = lr_survey_hold_square (work);
  if (lr_net_adjust (work->points, work->n, &g_array_index (measures, LrNetMeasure, 0), measures->len, &solution))
    lr_net_clear (&solution);
}

/* Solves the room anew without what is known to be in error: it would pull all corners */
static void
leave_out (LrSurvey     *survey,
           LrSurveyWork *work)
{
  g_autoptr (GArray) measures = g_array_new (FALSE, FALSE, sizeof (LrNetMeasure));
  LrNetSolution solution;

  for (guint i = 0; i < work->measures->len; i++)
    if (!is_left_out (survey, &g_array_index (work->origins, LrSurveySuspect, i)))
      g_array_append_val (measures, g_array_index (work->measures, LrNetMeasure, i));
  if (measures->len == work->measures->len
      || !lr_net_adjust (work->points, work->n, &g_array_index (measures, LrNetMeasure, 0), measures->len, &solution))
    return;

  survey->n_checks = (guint) solution.freedom;
  survey->corner_sd_m = worst_corner_sd_m (&solution);
  lr_net_clear (&solution);
}

static void
solve (LrSurvey     *survey,
       LrSurveyWork *work,
       guint         n_diagonals)
{
  LrNetSolution solution;

  if (!lr_net_adjust (work->points, work->n, &g_array_index (work->measures, LrNetMeasure, 0), work->measures->len, &solution))
    {
      survey->state = LR_SURVEY_UNSOLVED;
      return;
    }
  survey->n_checks = (guint) solution.freedom;
  survey->corner_sd_m = worst_corner_sd_m (&solution);
  lr_survey_find_doubts (work, &solution, survey);
  lr_net_clear (&solution);
  leave_out (survey, work);
  keep_square (survey, work, n_diagonals);
}

/* A wall that was told, taped or not, and is hardly one; of what comes out only once it has */
static int
find_short_wall (const LrSurvey     *survey,
                 const LrSurveyWall *walls,
                 guint               n_walls)
{
  for (guint i = 0; i < n_walls; i++)
    {
      double length_m = walls[i].length_m;

      if (isnan (length_m) && i + 1 < survey->corners_m->len + (survey->state == LR_SURVEY_ROUND ? 1 : 0))
        length_m = lr_vec2_distance (g_array_index (survey->corners_m, LrVec2, i),
                                     g_array_index (survey->corners_m, LrVec2, (i + 1) % survey->corners_m->len));
      if (length_m < LR_SURVEY_SHORT_M)
        return (int) i;
    }
  return -1;
}

static gboolean
diagonals_fit (LrSurvey               *survey,
               const LrSurveyDiagonal *diagonals,
               guint                   n_diagonals,
               guint                   n)
{
  for (guint i = 0; i < n_diagonals; i++)
    if (diagonals[i].from >= n || diagonals[i].to >= n)
      {
        survey->state = LR_SURVEY_NO_DIAGONAL;
        survey->fault = i;
        return FALSE;
      }
  return TRUE;
}

/**
 * lr_survey_new:
 * @walls: (array length=n_walls): in the order walked; a closed room, or one whose last wall is not told
 * @n_walls: how many
 * @diagonals: (array length=n_diagonals): lengths between corners
 * @n_diagonals: how many
 * @start_m: the first corner [m]
 * @heading_rad: the direction of the first wall [rad]
 *
 * Source: at the head of this file and of engine/network.c.
 *
 * Returns: (transfer full): what comes of it
 */
LrSurvey *
lr_survey_new (const LrSurveyWall     *walls,
               guint                   n_walls,
               const LrSurveyDiagonal *diagonals,
               guint                   n_diagonals,
               LrVec2                  start_m,
               double                  heading_rad)
{
  LrSurvey *survey = g_new0 (LrSurvey, 1);
  g_autofree gboolean *is_taped = g_new0 (gboolean, n_walls + 1);
  LrSurveyWork work = { 0 };

  survey->corners_m = g_array_new (FALSE, FALSE, sizeof (LrVec2));
  survey->doubts = g_array_new (FALSE, FALSE, sizeof (LrSurveyDoubt));
  survey->n_walls = n_walls;
  survey->short_wall = -1;
  survey->state = check_input (walls, n_walls, diagonals, n_diagonals, &survey->fault);
  if (survey->state != LR_SURVEY_ROUND)
    return survey;

  init_work (&work, walls, n_walls);
  if (lay_out (&work, survey, n_walls, is_taped) && diagonals_fit (survey, diagonals, n_diagonals, work.n))
    {
      guess_points (&work);
      add_measures (&work, is_taped, diagonals, n_diagonals);
      solve (survey, &work, n_diagonals);
      put_corners (survey, &work, start_m, heading_rad);
      survey->last_turn_rad = work.walls[n_walls - 1].turn_rad;
      survey->has_other_turn = survey->state == LR_SURVEY_ROUND && survey->last_turn_rad != walls[n_walls - 1].turn_rad;
      survey->short_wall = find_short_wall (survey, walls, n_walls);
    }
  clear_work (&work);
  return survey;
}

/**
 * lr_survey_free:
 * @survey: (transfer full): a survey
 */
void
lr_survey_free (LrSurvey *survey)
{
  g_array_unref (survey->corners_m);
  g_array_unref (survey->doubts);
  g_free (survey);
}
