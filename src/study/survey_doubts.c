/* survey_doubts.c - which of the measures of a room contradict the others, and what would settle it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A measure is in doubt from 2.5 of its standard deviations, which by chance one in eighty passes; one doubt is found at
 * a time, put aside, and the others adjusted anew (W. Baarda's data snooping, 1968; from memory).
 */

#include "config.h"

#include "survey_private.h"

#include "polygon.h"

#define DOUBTED 2.5
#define NAMED 1.0                 /* and lengths from so many are named, if they differ by as much as this: */
#define NAMED_M 0.015
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

  if (aside < 0)
    find_doubt (work, points, measures, origins, solution, NAMED, survey);

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
