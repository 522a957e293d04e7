/* relight_read.c - which lamps may be dimmed, and what each gives faces and walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "relight.h"

#include "light_alone.h"

#include <string.h>

/* Number of the lamp that a source is; n_lamps: it cannot be dimmed */
static guint
find_lamp (const LrRelight     *self,
           const LrAloneSource *source)
{
  guint i = 0;

  while (i < self->n_lamps && strcmp (self->lamp[i].placed->item->id, source->placed->item->id) != 0)
    i++;
  return i;
}

static void
add_lamp (LrRelight           *self,
          const LrJudge       *judge,
          const LrAloneSource *source)
{
  const LrPlaced *placed = lr_study_find_placed (judge->study, source->placed->item->id);
  const LrItem *item = placed != NULL ? placed->item : NULL;

  if (item == NULL || self->n_lamps == LR_RELIGHT_LAMPS || find_lamp (self, source) < self->n_lamps)
    return;
  if (item->kind == LR_ITEM_LIGHT)
    self->lamp[self->n_lamps++] = (LrRelightLamp) { .placed = placed, .dim = item->light.dim, .stays_on = item->light.job == LR_JOB_KEY };
  else if ((item->kind == LR_ITEM_HOUSE_LIGHT && item->house_light.can_switch_off)
           || (item->kind == LR_ITEM_WINDOW && item->window.blind != LR_BLIND_NONE))
    self->lamp[self->n_lamps++] = (LrRelightLamp) { .placed = placed, .dim = 1.0, .is_switch = TRUE };
}

static void
add_to_level (const LrRelight     *self,
              LrRelightLevel      *level,
              const LrAloneSource *source,
              double               lux)
{
  guint lamp = find_lamp (self, source);

  if (lamp < self->n_lamps)
    level->full_lx[lamp] += source->is_out ? lux : lux / self->lamp[lamp].dim; /* a window is two: the sky and the sun */
  else if (!source->is_out)
    level->fixed_lx += lux;
}

static void
add_view (LrRelight             *self,
          const LrJudge         *judge,
          const LrCameraReading *camera)
{
  LrRelightView *view = &self->view[self->n_views];
  const char *person = camera->subject->item->id;

  *view = (LrRelightView) { .camera = camera, .has_walls = TRUE, .has_ratio = TRUE, .skin = camera->subject->item->person.skin_reflectance };
  view->share_per_lx = lr_light_levels_share_per_lx (judge->levels, camera->item->id);
  for (guint i = 0; i < self->n_views; i++)
    if (self->view[i].camera->subject == camera->subject)
      view->has_ratio = FALSE;
  for (guint i = 0; i < lr_light_alone_n (judge->levels); i++)
    {
      LrAloneSource source = lr_light_alone_get (judge->levels, i);
      double lux, given_lx;

      add_to_level (self, &view->left, &source, lr_light_alone_face_lx (judge->levels, i, person, LR_FACE_LEFT));
      add_to_level (self, &view->right, &source, lr_light_alone_face_lx (judge->levels, i, person, LR_FACE_RIGHT));
      if (lr_light_alone_walls_lx (judge->levels, i, camera->item->id, &lux, &given_lx))
        add_to_level (self, &view->walls, &source, given_lx);
      else
        view->has_walls = FALSE;
    }
  if (isfinite (view->share_per_lx) && view->share_per_lx > 0.0)
    self->n_views++;
}

/**
 * lr_relight_init:
 * @self: (out caller-allocates): what may be dimmed
 * @judge: a judge
 *
 * Returns: %FALSE unless the levels are whole and of the very plan that is judged: advice on light is for a plan that rests
 */
gboolean
lr_relight_init (LrRelight     *self,
                 const LrJudge *judge)
{
  const LrPlan *plan = judge->study->plan;
  double wall = lr_plan_wall_level (plan);

  if (judge->is_moving || judge->levels == NULL || lr_light_levels_get_plan (judge->levels) != plan || !lr_light_levels_is_settled (judge->levels))
    return FALSE;

  *self = (LrRelight) {
    .face_share = lr_share_of_signal (lr_plan_face_level (plan)), .face_off_stops = judge->limits[LR_LIMIT_FACE_LEVEL_OFF],
    .wall_share = isnan (wall) ? (double) NAN : lr_share_of_signal (wall), .wall_off_stops = judge->limits[LR_LIMIT_WALL_LEVEL_OFF],
    .wall_under_stops = judge->limits[LR_LIMIT_WALL_UNDER_FACE],
    .most_iso = LR_RELIGHT_QUIET_ISO, .match_stops = judge->limits[LR_LIMIT_EXPOSURE_MATCH],
    .ratio_min_stops = judge->limits[LR_LIMIT_RATIO_MIN], .ratio_max_stops = judge->limits[LR_LIMIT_RATIO_MAX],
  };
  for (guint i = 0; i < lr_light_alone_n (judge->levels); i++)
    {
      LrAloneSource source = lr_light_alone_get (judge->levels, i);

      add_lamp (self, judge, &source);
    }
  for (guint i = 0; i < judge->study->cameras->len && self->n_views < LR_RELIGHT_VIEWS; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->has_subject && !lr_judge_is_cutaway (judge, camera) && lr_light_levels_face (judge->levels, camera->subject->item->id) != NULL)
        add_view (self, judge, camera);
    }
  return self->n_views > 0;
}

/**
 * lr_relight_find:
 * @self: what may be dimmed
 * @camera: a camera
 *
 * Returns: number of its view; n_views if there is none
 */
guint
lr_relight_find (const LrRelight       *self,
                 const LrCameraReading *camera)
{
  guint i = 0;

  while (i < self->n_views && self->view[i].camera != camera)
    i++;
  return i;
}
