/* judge_shadows.c - shadows of people and equipment on the walls of the pictures
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Found with the levels of light. One remark for a lamp and what throws the shadow, of the picture in which it is deepest; what mends it
 * takes it out of all.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define BESIDE_M 0.05 /* nearer than that it is behind the head */

static gboolean
is_same (const LrShadow *a,
         const LrShadow *b)
{
  return a->source == b->source && a->thing == b->thing;
}

/* FALSE: in another picture the same lamp's shadow of the same thing is deeper, or as deep and came first */
static gboolean
is_deepest (const GArray *shadows,
            guint         index,
            double        limit)
{
  const LrShadow *shadow = &g_array_index (shadows, LrShadow, index);

  for (guint i = 0; i < shadows->len; i++)
    {
      const LrShadow *other = &g_array_index (shadows, LrShadow, i);

      if (i != index && is_same (shadow, other) && lr_shadow_is_seen (other, limit)
          && (other->depth_stops > shadow->depth_stops || (other->depth_stops == shadow->depth_stops && i < index)))
        return FALSE;
    }
  return TRUE;
}

/* "0.30 m left of Wenna's head" */
static void
say_where (LrJudge               *judge,
           LrRemark              *remark,
           const LrShadow        *shadow,
           const LrPlaced        *source,
           const LrPlaced        *thing,
           const LrCameraReading *camera)
{
  const char *lamp = lr_say_name (judge, source), *what = lr_say_name (judge, thing), *name = lr_say_name (judge, camera->placed);
  const char *stops = lr_say_number (judge, shadow->depth_stops, 1), *edge = lr_say_length (judge, shadow->edge_m);
  const char *head = camera->has_subject ? lr_say_name (judge, camera->subject) : "";

  /* Translators: a lamp, what throws the shadow, a camera, a depth, a length, a distance, whose head */
  if (!isfinite (shadow->aside_m))
    lr_remark_say (remark,
                   _("%s throws the shadow of %s on the wall in %s’s picture, <b>%s</b> stops deep with an edge <b>%s</b> soft."),
                   lamp, what, name, stops, edge);
  else if (fabs (shadow->aside_m) < BESIDE_M)
    lr_remark_say (remark,
                   _("%s throws the shadow of %s on the wall in %s’s picture, <b>%s</b> stops deep with an edge <b>%s</b> soft, in line "
                     "with %s’s head."),
                   lamp, what, name, stops, edge, head);
  else
    lr_remark_say (remark,
                   shadow->aside_m < 0.0
                     ? _("%s throws the shadow of %s on the wall in %s’s picture, <b>%s</b> stops deep with an edge <b>%s</b> soft, "
                         "<b>%s</b> left of %s’s head.")
                     : _("%s throws the shadow of %s on the wall in %s’s picture, <b>%s</b> stops deep with an edge <b>%s</b> soft, "
                         "<b>%s</b> right of %s’s head."),
                   lamp, what, name, stops, edge, lr_say_length (judge, fabs (shadow->aside_m)), head);
}

static void
offer_escape (LrJudge        *judge,
              LrRemark       *remark,
              const LrEscape *escape)
{
  const LrPlaced *moved = lr_study_find_placed (judge->study, escape->moved->item->id);
  const char *height;
  LrRemedy *remedy;

  if (moved == NULL)
    return;
  if (escape->way != LR_ESCAPE_RAISE)
    {
      lr_judge_offer_move (judge, remark, moved, escape->to_m, NULL, NULL);
      return;
    }

  remedy = lr_remedy_new ();
  height = lr_say_length (judge, escape->height_m);
  lr_remedy_change (remedy, moved->item, "lamp-height-mm", escape->height_m);
  lr_remedy_say (remedy, height, _("Raise its lamp to <b>%s</b>."), height);
  lr_judge_offer (judge, remark, remedy);
}

static void
offer_escapes (LrJudge        *judge,
               LrRemark       *remark,
               const LrShadow *shadow)
{
  const LrShadowEscapes *escapes = lr_light_levels_escapes (judge->levels, shadow);

  /* Those of a plan before would be told of places that nobody stands at any more */
  if (escapes == NULL || lr_light_levels_get_plan (judge->levels) != judge->study->plan)
    return;
  for (guint i = 0; i < escapes->n; i++)
    offer_escape (judge, remark, &escapes->escape[i]);
}

static void
judge_shadow (LrJudge        *judge,
              const LrShadow *shadow)
{
  /* The levels are of a study of their own */
  const LrPlaced *source = lr_study_find_placed (judge->study, shadow->source->item->id);
  const LrPlaced *thing = lr_study_find_placed (judge->study, shadow->thing->item->id);
  const LrCameraReading *camera = lr_study_find_camera (judge->study, shadow->camera->item->id);
  LrRemark *remark;

  if (source == NULL || thing == NULL || camera == NULL)
    return;

  remark = lr_judge_add (judge, LR_CHECK_SHADOW, LR_GRADE_MIND, source, thing);
  if (remark == NULL)
    return;

  remark->value = shadow->depth_stops;
  remark->limit = judge->limits[LR_LIMIT_SHADOW_DEPTH];
  lr_remark_about (remark, camera->placed);
  lr_remark_mark_line (remark, source->at_m, lr_vec3_flat (shadow->at_m), lr_say_number (judge, shadow->depth_stops, 1));
  lr_remark_mark_point (remark, lr_vec3_flat (shadow->at_m), NULL);
  say_where (judge, remark, shadow, source, thing, camera);
  offer_escapes (judge, remark, shadow);
}

static gboolean
is_seen_by (const GArray          *shadows,
            const LrCameraReading *camera,
            double                 limit)
{
  for (guint i = 0; i < shadows->len; i++)
    {
      const LrShadow *shadow = &g_array_index (shadows, LrShadow, i);

      if (g_str_equal (shadow->camera->item->id, camera->item->id) && lr_shadow_is_seen (shadow, limit))
        return TRUE;
    }
  return FALSE;
}

/* A camera in whose picture no shadow is told says so, if it sees walls */
static void
judge_clean (LrJudge               *judge,
             const LrCameraReading *camera)
{
  const LrBackLight *back = lr_light_levels_background (judge->levels, camera->item->id);
  double limit = judge->limits[LR_LIMIT_SHADOW_DEPTH];
  LrRemark *remark;

  if (back == NULL || back->n == 0)
    return;

  remark = lr_judge_add (judge, LR_CHECK_SHADOW, LR_GRADE_FINE, camera->placed, NULL);
  if (remark == NULL)
    return;

  remark->value = 0.0;
  remark->limit = limit;
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  lr_remark_say (remark, _("No lamp throws a shadow deeper than <b>%s</b> stops on the walls in %s’s picture."), lr_say_number (judge, limit, 1),
                 lr_say_name (judge, camera->placed));
}

/**
 * lr_judge_shadows:
 * @judge: a judge
 *
 * Nothing where nothing gives light.
 */
void
lr_judge_shadows (LrJudge *judge)
{
  const GArray *shadows = judge->levels != NULL ? lr_light_levels_shadows (judge->levels) : NULL;
  double limit = judge->limits[LR_LIMIT_SHADOW_DEPTH];

  if (shadows == NULL || lr_light_levels_n_sources (judge->levels) == 0)
    return;

  for (guint i = 0; i < shadows->len; i++)
    if (lr_shadow_is_seen (&g_array_index (shadows, LrShadow, i), limit) && is_deepest (shadows, i, limit))
      judge_shadow (judge, &g_array_index (shadows, LrShadow, i));
  for (guint i = 0; i < judge->study->cameras->len; i++)
    if (!is_seen_by (shadows, lr_judge_camera (judge, i), limit))
      judge_clean (judge, lr_judge_camera (judge, i));
}
