/* shadow_escape.c - the least change that takes a shadow out of the pictures
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lamp goes up or round what it aims at, or the person off the wall, in small steps, the smallest first. Each is tried: the shadow must
 * be gone from every picture, or fainter than the limit with some to spare, and nothing that the move touches may be seen that was
 * not. How high a lamp may shine down and how far one goes is common practice, no source. The room's own light is taken as it was.
 */

#include "shadow_escape.h"

#include "intrusions.h"

#define RAISE_STEP_M 0.1
#define N_RAISES 10
#define TURN_STEP_RAD (5.0 * LR_DEG)
#define N_TURNS 9            /* to either side */
#define OFF_STEP_M 0.2
#define N_OFFS 5
#define OFF_COST 2.0         /* a metre that a person moves is worth so many of a lamp */
#define STEEPEST_RAD (55.0 * LR_DEG)
#define UNDER_CEILING_M 0.10
#define SPARE_STOPS 0.05
#define TRIAL_POINTS 400
#define MOST_SHADOWS 3
#define MOST_CANDIDATES (N_RAISES + 2 * N_TURNS + N_OFFS)

static void
add_raises (const LrStudy  *study,
            const LrShadow *shadow,
            GArray         *candidates)
{
  const LrPlaced *lamp = shadow->source;
  const LrLight *light = &lamp->item->light;
  double away_m = lr_vec2_distance (lamp->at_m, shadow->thing->at_m), ceiling_m = study->setup->room->height_m;

  for (int i = 1; i <= N_RAISES; i++)
    {
      LrEscape escape = { LR_ESCAPE_RAISE, lamp, light->lamp_height_m + i * RAISE_STEP_M, lamp->at_m, i * RAISE_STEP_M };
      gboolean is_steep = shadow->thing->item->kind == LR_ITEM_PERSON
                          && atan2 (escape.height_m - shadow->thing->eyes_m.z, fmax (away_m, 1e-3)) > STEEPEST_RAD;

      if (!is_steep && escape.height_m + 0.5 * light->height_m < ceiling_m - UNDER_CEILING_M)
        g_array_append_val (candidates, escape);
    }
}

static void
add_turns (const LrStudy  *study,
           const LrShadow *shadow,
           GArray         *candidates)
{
  const LrPlaced *lamp = shadow->source, *aim = lr_study_find_placed (study, lamp->item->light.aims_at);
  LrVec2 about_m = aim != NULL ? lr_vec3_flat (aim->point_m) : shadow->thing->at_m, arm_m = lr_vec2_sub (lamp->at_m, about_m);

  for (int i = 0; i < 2 * N_TURNS; i++)
    {
      LrVec2 to_m = lr_vec2_add (about_m, lr_vec2_rotate (arm_m, (i % 2 ? -1.0 : 1.0) * (i / 2 + 1) * TURN_STEP_RAD));
      LrEscape escape = { LR_ESCAPE_ASIDE, lamp, lamp->item->light.lamp_height_m,
                          lr_vec2 (0.01 * round (100.0 * to_m.x), 0.01 * round (100.0 * to_m.y)), 0.0 };

      escape.cost_m = lr_vec2_distance (lamp->at_m, escape.to_m);
      g_array_append_val (candidates, escape);
    }
}

static void
add_offs (const LrStudy  *study,
          const LrShadow *shadow,
          GArray         *candidates)
{
  LrVec2 from_m, along;
  double length_m;

  if (!lr_room_wall (study->setup->room, shadow->wall, &from_m, &along, &length_m))
    return;

  for (int i = 1; i <= N_OFFS; i++)
    {
      LrVec2 to_m = lr_vec2_along (shadow->thing->at_m, lr_vec2_left (along), i * OFF_STEP_M);
      LrEscape escape = { LR_ESCAPE_OFF_WALL, shadow->thing, 0.0, to_m, OFF_COST * i * OFF_STEP_M };

      g_array_append_val (candidates, escape);
    }
}

static int
compare_cost (gconstpointer a,
              gconstpointer b)
{
  double x = ((const LrEscape *) a)->cost_m, y = ((const LrEscape *) b)->cost_m;

  return x < y ? -1 : x > y;
}

/**
 * lr_escape_changes:
 * @escape: what helps against a shadow
 * @changes: (out caller-allocates): room for two
 *
 * Returns: how many properties change
 */
guint
lr_escape_changes (const LrEscape *escape,
                   LrChange       *changes)
{
  const char *id = escape->moved->item->id;

  if (escape->way == LR_ESCAPE_RAISE)
    {
      changes[0] = (LrChange) { id, "lamp-height-mm", escape->height_m };
      return 1;
    }

  changes[0] = (LrChange) { id, "x-mm", escape->to_m.x };
  changes[1] = (LrChange) { id, "y-mm", escape->to_m.y };
  return 2;
}

static gboolean
is_of (const LrShadow *shadow,
       const LrPlaced *source,
       const LrPlaced *thing)
{
  return g_str_equal (shadow->source->item->id, source->item->id) && g_str_equal (shadow->thing->item->id, thing->item->id);
}

static gboolean
was_seen (const GArray   *shadows,
          const LrShadow *shadow,
          double          limit_stops)
{
  for (guint i = 0; i < shadows->len; i++)
    {
      const LrShadow *before = &g_array_index (shadows, LrShadow, i);

      if (is_of (before, shadow->source, shadow->thing) && lr_shadow_is_seen (before, limit_stops))
        return TRUE;
    }
  return FALSE;
}

/* Whether the shadow is gone from @after, and nothing has come */
static gboolean
is_gone (const GArray   *before,
         const GArray   *after,
         const LrShadow *shadow,
         double          limit_stops)
{
  for (guint i = 0; i < after->len; i++)
    {
      const LrShadow *now = &g_array_index (after, LrShadow, i);

      if (lr_shadow_is_seen (now, limit_stops - SPARE_STOPS)
          && (is_of (now, shadow->source, shadow->thing) || !was_seen (before, now, limit_stops)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_place_free (const LrStudy  *study,
               const LrEscape *escape)
{
  return escape->way == LR_ESCAPE_RAISE
         || lr_study_is_clear (study, escape->moved, escape->to_m, study->plan->limits.value[LR_LIMIT_OVERLAP]);
}

/* Quick on a coarse net, which thin shadows slip through; what passes is looked at again as finely as the plan was */
static gboolean
helps (const LrShadowTask *task,
       const GArray       *shadows,
       const LrShadow     *shadow,
       const LrEscape     *escape)
{
  LrChange changes[2];
  guint n = lr_escape_changes (escape, changes);
  g_autoptr (LrPlan) plan = lr_plan_change (task->study->plan, changes, n, NULL);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightShade) shade = NULL, fixed = NULL;
  g_autoptr (GArray) sources = NULL, coarse = NULL, fine = NULL;
  LrShadowTask trial;

  if (plan == NULL)
    return FALSE;

  study = lr_study_new_trial (plan);
  shade = lr_light_shade_new (study);
  fixed = lr_light_shade_new_fixed (study);
  sources = lr_light_sources (study);
  trial = (LrShadowTask) { .study = study, .sources = sources, .shade = shade, .fixed = fixed, .walls = task->walls,
                           .most_points = TRIAL_POINTS, .about = escape->moved->item->id };
  coarse = lr_wall_shadows (&trial, NULL);
  if (!is_gone (shadows, coarse, shadow, study->plan->limits.value[LR_LIMIT_SHADOW_DEPTH]))
    return FALSE;

  trial.most_points = task->most_points;
  fine = lr_wall_shadows (&trial, NULL);
  return is_gone (shadows, fine, shadow, study->plan->limits.value[LR_LIMIT_SHADOW_DEPTH]);
}

static gboolean
has_way (const LrShadowEscapes *escapes,
         LrEscapeWay            way)
{
  for (guint i = 0; i < escapes->n; i++)
    if (escapes->escape[i].way == way)
      return TRUE;
  return FALSE;
}

/* FALSE: cancelled */
static gboolean
find_escapes (const LrShadowTask *task,
              const GArray       *shadows,
              const LrShadow     *shadow,
              LrShadowEscapes    *escapes,
              GCancellable       *cancellable)
{
  g_autoptr (GArray) candidates = g_array_sized_new (FALSE, FALSE, sizeof (LrEscape), MOST_CANDIDATES);

  *escapes = (LrShadowEscapes) { .source = shadow->source, .thing = shadow->thing };
  if (shadow->source->item->kind == LR_ITEM_LIGHT)
    {
      add_raises (task->study, shadow, candidates);
      add_turns (task->study, shadow, candidates);
    }
  if (shadow->thing->item->kind == LR_ITEM_PERSON)
    add_offs (task->study, shadow, candidates);
  g_array_sort (candidates, compare_cost);

  for (guint i = 0; i < candidates->len && escapes->n < LR_ESCAPES; i++)
    {
      const LrEscape *escape = &g_array_index (candidates, LrEscape, i);

      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;
      if (!has_way (escapes, escape->way) && is_place_free (task->study, escape) && helps (task, shadows, shadow, escape))
        escapes->escape[escapes->n++] = *escape;
    }
  return TRUE;
}

static gboolean
is_known (const GArray   *found,
          const LrShadow *shadow)
{
  for (guint i = 0; i < found->len; i++)
    if (is_of (shadow, g_array_index (found, LrShadowEscapes, i).source, g_array_index (found, LrShadowEscapes, i).thing))
      return TRUE;
  return FALSE;
}

/**
 * lr_shadow_escapes:
 * @task: what @shadows were found by
 * @shadows: (element-type LrShadow): what cameras see
 * @cancellable: (nullable): ends it early
 *
 * Returns: (transfer full) (element-type LrShadowEscapes) (nullable): what helps against the first few that are to be told; %NULL when
 *   cancelled
 */
GArray *
lr_shadow_escapes (const LrShadowTask *task,
                   const GArray       *shadows,
                   GCancellable       *cancellable)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (LrShadowEscapes));
  double limit_stops = task->study->plan->limits.value[LR_LIMIT_SHADOW_DEPTH];

  for (guint i = 0; i < shadows->len && found->len < MOST_SHADOWS; i++)
    {
      const LrShadow *shadow = &g_array_index (shadows, LrShadow, i);
      LrShadowEscapes escapes;

      if (!lr_shadow_is_seen (shadow, limit_stops) || is_known (found, shadow))
        continue;
      if (!find_escapes (task, shadows, shadow, &escapes, cancellable))
        {
          g_array_unref (found);
          return NULL;
        }
      g_array_append_val (found, escapes);
    }
  return found;
}
