/* survey_doubts.c - which of the measures of a room contradict the others, and what would settle it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A measure is in doubt from 2.5 of its standard deviations, which by chance one in eighty passes; one doubt is found at
 * a time, put aside, and the others adjusted anew (W. Baarda's data snooping, 1968; from memory).
 *
 * Corners that lean by as much as corners of old rooms do may hide an error of a tape of some centimetres. Where nothing is in
 * doubt the same is asked with square corners held square, when tapes alone may be off: a contradiction that is beyond them is
 * told as long as there is a diagonal that can tell whether it is a tape's or the corners'.
 */

#include "config.h"

#include "survey_private.h"

#include "polygon.h"

#define DOUBTED 2.5
#define NAMED 1.0                 /* and lengths from so many are named, if they differ by as much as this: */
#define NAMED_M 0.015
#define LOOSE_M 0.04              /* what corners may account for is told from here: less is not worth a walk. Common practice, no source */
#define MOST_DOUBTS 3
#define CLEAR_M 0.05              /* a diagonal that passes a corner nearer than this cannot be taped */
#define SETTLES 0.5               /* of a pair told apart: a diagonal that tells less is not worth a walk */
#define TIE 1.001                 /* of two diagonals as good the first one is named */

static gboolean
crosses (LrVec2 a_m,
         LrVec2 b_m,
         LrVec2 c_m,
         LrVec2 d_m)
{
  LrVec2 ab = lr_vec2_sub (b_m, a_m), cd = lr_vec2_sub (d_m, c_m);

  return (lr_vec2_cross (ab, lr_vec2_sub (c_m, a_m)) > 0.0) != (lr_vec2_cross (ab, lr_vec2_sub (d_m, a_m)) > 0.0)
         && (lr_vec2_cross (cd, lr_vec2_sub (a_m, c_m)) > 0.0) != (lr_vec2_cross (cd, lr_vec2_sub (b_m, c_m)) > 0.0);
}

/* Whether a tape can be laid straight from one corner to another */
static gboolean
can_be_taped (const LrVec2 *corners_m,
              guint         n,
              guint         from,
              guint         to)
{
  LrVec2 a_m = corners_m[from], b_m = corners_m[to];

  if (to == (from + 1) % n || from == (to + 1) % n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      guint next = (i + 1) % n;

      if (i == from || i == to)
        continue;
      if (lr_segment_distance_m (a_m, b_m, corners_m[i], NULL) < CLEAR_M)
        return FALSE;
      if (next != from && next != to && crosses (a_m, b_m, corners_m[i], corners_m[next]))
        return FALSE;
    }
  return lr_polygon_contains (corners_m, n, lr_vec2_scale (lr_vec2_add (a_m, b_m), 0.5));
}

static gboolean
is_taped_already (const LrSurveyWork *work,
                  guint               from,
                  guint               to)
{
  for (guint i = 0; i < work->measures->len; i++)
    {
      const LrNetMeasure *measure = &g_array_index (work->measures, LrNetMeasure, i);

      if (measure->kind == LR_NET_LENGTH
          && ((measure->from == from && measure->to == to) || (measure->from == to && measure->to == from)))
        return TRUE;
    }
  return FALSE;
}

/* The diagonal that tells the suspects apart best */
static void
find_settling (const LrSurveyWork  *work,
               const LrNetPoint    *points,
               const LrNetMeasure  *measures,
               const LrNetSolution *solution,
               const gsize         *suspects,
               LrSurveyDoubt       *doubt)
{
  g_autofree LrVec2 *corners_m = g_new (LrVec2, work->n);
  double best = SETTLES;

  for (guint i = 0; i < work->n; i++)
    corners_m[i] = points[i].at_m;
  for (guint from = 0; from < work->n; from++)
    for (guint to = from + 1; to < work->n; to++)
      {
        LrNetMeasure length = { .kind = LR_NET_LENGTH, .from = from, .to = to };
        double settles;

        if (!can_be_taped (corners_m, work->n, from, to) || is_taped_already (work, from, to))
          continue;
        length.sd = lr_tape_sd_m (lr_vec2_distance (corners_m[from], corners_m[to]));
        settles = lr_net_settles (solution, points, measures, suspects, doubt->n, &length);
        if (settles <= best * TIE)
          continue;
        best = settles;
        doubt->has_settling = TRUE;
        doubt->from = from;
        doubt->to = to;
      }
}

/* What is found after a doubt that is open rests on a guess */
static gboolean
all_left_out (const LrSurvey *survey)
{
  for (guint i = 0; i < survey->doubts->len; i++)
    if (!g_array_index (survey->doubts, LrSurveyDoubt, i).is_left_out)
      return FALSE;
  return TRUE;
}

/* One round of snooping among the measures that are left. Returns which one is put aside, or -1 */
static int
find_doubt (const LrSurveyWork  *work,
            const LrNetPoint    *points,
            const GArray        *measures,
            const GArray        *origins,
            const LrNetSolution *solution,
            double               least,
            LrSurvey            *survey)
{
  LrSurveyDoubt doubt = { 0 };
  gsize suspects[G_N_ELEMENTS (doubt.of)];
  guint n = (guint) lr_net_suspects (solution, least, suspects, G_N_ELEMENTS (suspects));
  const LrNetMeasure *worst;

  for (guint i = 0; i < n; i++)
    {
      const LrSurveySuspect *suspect = &g_array_index (origins, LrSurveySuspect, suspects[i]);

      if (doubt.n > 0 && suspect->kind == LR_DOUBT_CORNER && doubt.of[0].kind != LR_DOUBT_CORNER)
        continue;
      suspects[doubt.n] = suspects[i];
      doubt.of[doubt.n++] = *suspect;
    }
  if (doubt.n == 0)
    return -1;

  worst = &g_array_index (measures, LrNetMeasure, suspects[0]);
  doubt.error = solution->checks[suspects[0]].error;
  doubt.taken = worst->value;
  doubt.standardized = fabs (solution->checks[suspects[0]].standardized);
  if (worst->kind == LR_NET_ANGLE)
    {
      doubt.error = -doubt.error; /* the turn is the rest of the angle inside */
      doubt.taken = LR_PI - worst->value;
    }
  doubt.is_within = doubt.standardized < DOUBTED;
  if (doubt.is_within && (worst->kind != LR_NET_LENGTH || fabs (doubt.error) < NAMED_M))
    return -1;
  doubt.is_left_out = doubt.n == 1 && !doubt.is_within && all_left_out (survey);
  if (doubt.n > 1)
    find_settling (work, points, &g_array_index (measures, LrNetMeasure, 0), solution, suspects, &doubt);
  g_array_append_val (survey->doubts, doubt);
  return (int) suspects[0];
}

/* Which lengths contradict each other by more than tapes are off, worst first, with the corners held square; returns how many */
static guint
find_beyond_tapes (const LrSurveyWork *work,
                   gsize              *suspects,
                   guint               max,
                   double             *error_m)
{
  g_autofree LrNetPoint *points = g_memdup2 (work->points, work->n * sizeof *work->points);
  g_autoptr (GArray) measures = lr_survey_hold_square (work);
  LrNetSolution square = { 0 };
  guint n = 0, n_found;

  if (!lr_net_adjust (points, work->n, &g_array_index (measures, LrNetMeasure, 0), measures->len, &square))
    return 0;

  n_found = (guint) lr_net_suspects (&square, DOUBTED, suspects, max);
  for (guint i = 0; i < n_found; i++)
    if (g_array_index (measures, LrNetMeasure, suspects[i]).kind == LR_NET_LENGTH)
      suspects[n++] = suspects[i];
  if (n > 0)
    *error_m = square.checks[suspects[0]].error;
  lr_net_clear (&square);
  return n;
}

/* What corners may account for, but tapes may not; FALSE if there is none, or no diagonal that would tell */
static gboolean
find_loose (const LrSurveyWork  *work,
            const LrNetSolution *solution,
            LrSurvey            *survey)
{
  LrSurveyDoubt doubt = { .may_be_corners = TRUE };
  gsize suspects[G_N_ELEMENTS (doubt.of)];

  doubt.n = find_beyond_tapes (work, suspects, G_N_ELEMENTS (suspects), &doubt.error);
  if (doubt.n < 2 || fabs (doubt.error) < LOOSE_M)
    return FALSE;

  for (guint i = 0; i < doubt.n; i++)
    doubt.of[i] = g_array_index (work->origins, LrSurveySuspect, suspects[i]);
  doubt.taken = g_array_index (work->measures, LrNetMeasure, suspects[0]).value;
  doubt.standardized = fabs (solution->checks[suspects[0]].standardized);
  find_settling (work, work->points, &g_array_index (work->measures, LrNetMeasure, 0), solution, suspects, &doubt);
  if (doubt.has_settling)
    g_array_append_val (survey->doubts, doubt);
  return doubt.has_settling;
}

/* A length that is named alone, and that tapes alone would not miss by as much, is in error: what is said to be near enough is not */
static void
confirm_alone (const LrSurveyWork *work,
               LrSurvey           *survey)
{
  LrSurveyDoubt *doubt = survey->doubts->len > 0 ? &g_array_index (survey->doubts, LrSurveyDoubt, 0) : NULL;
  gsize suspects[1];
  double error_m;

  if (doubt == NULL || doubt->n != 1 || find_beyond_tapes (work, suspects, 1, &error_m) == 0 || fabs (error_m) < LOOSE_M)
    return;

  if (g_array_index (work->origins, LrSurveySuspect, suspects[0]).kind == doubt->of[0].kind
      && g_array_index (work->origins, LrSurveySuspect, suspects[0]).index == doubt->of[0].index)
    {
      doubt->is_within = FALSE;
      doubt->is_left_out = TRUE;
    }
}

/**
 * lr_survey_find_doubts:
 * @work: the measures, and the corners as they are solved
 * @solution: of them
 * @survey: gets the doubts
 *
 * What is in doubt, and what is in doubt of what is left without the worst.
 */
void
lr_survey_find_doubts (const LrSurveyWork  *work,
                       const LrNetSolution *solution,
                       LrSurvey            *survey)
{
  g_autofree LrNetPoint *points = g_memdup2 (work->points, work->n * sizeof *work->points);
  g_autoptr (GArray) measures = g_array_copy (work->measures);
  g_autoptr (GArray) origins = g_array_copy (work->origins);
  LrNetSolution rest = { 0 };
  int aside = find_doubt (work, points, measures, origins, solution, DOUBTED, survey);

  if (aside < 0 && !find_loose (work, solution, survey))
    {
      find_doubt (work, points, measures, origins, solution, NAMED, survey);
      confirm_alone (work, survey);
    }

  while (aside >= 0 && survey->doubts->len < MOST_DOUBTS)
    {
      g_array_remove_index (measures, (guint) aside);
      g_array_remove_index (origins, (guint) aside);
      lr_net_clear (&rest);
      if (!lr_net_adjust (points, work->n, &g_array_index (measures, LrNetMeasure, 0), measures->len, &rest))
        break;
      aside = find_doubt (work, points, measures, origins, &rest, DOUBTED, survey);
    }
  lr_net_clear (&rest);
}
