/* reframe_room.c - whether the camera can stand there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It cannot where it would be a Fix: outside the room, in a thing, in what a door needs, through the ceiling, in another camera's
 * picture.
 */

#include "config.h"

#include "reframe_private.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define STEP_M 0.01

static const LrClash *
find_clash (const LrReframing *self)
{
  double limit_m = self->study->plan->limits.value[LR_LIMIT_OVERLAP];

  for (guint i = 0; self->trial != NULL && i < self->trial->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (self->trial->clashes, LrClash, i);

      if ((clash->a == self->now->placed || clash->b == self->now->placed) && lr_clash_grade (clash, limit_m) == LR_GRADE_FIX)
        return clash;
    }
  return NULL;
}

/* Whether @study has it that the camera stands in that picture */
static gboolean
is_seen_by (const LrStudy *study,
            const LrItem  *camera,
            const char    *seer)
{
  for (guint i = 0; i < study->intrusions->len; i++)
    {
      const LrIntrusion *intrusion = lr_study_intrusion (study, i);

      if (intrusion->placed != NULL && g_str_equal (intrusion->placed->item->id, camera->id)
          && g_str_equal (intrusion->camera->item->id, seer) && lr_intrusion_grade (study, intrusion) == LR_GRADE_FIX)
        return TRUE;
    }
  return FALSE;
}

/* The camera in whose picture it would come to stand, and does not now; NULL: none */
static const LrCameraReading *
find_seer (const LrReframing *self)
{
  for (guint i = 0; i < self->trial->cameras->len; i++)
    {
      const LrCameraReading *other = &g_array_index (self->trial->cameras, LrCameraReading, i);

      if (other != self->now && is_seen_by (self->trial, self->now->item, other->item->id)
          && !is_seen_by (self->study, self->now->item, other->item->id))
        return other;
    }
  return NULL;
}

static gboolean
is_in_room (const LrReframing *self)
{
  const LrRoom *room = self->study->setup->room;

  return room->n_corners < 3 || lr_polygon_contains (room->corners_m, room->n_corners, self->now->placed->at_m);
}

/* The wall that the way from the subject to the camera meets first */
static const char *
wall_between (const LrReframing *self)
{
  const LrRoom *room = self->study->setup->room;
  LrVec2 eyes_m = lr_vec3_flat (self->now->subject->eyes_m);
  LrRayHit hit;

  if (lr_polygon_ray (room->corners_m, room->n_corners, eyes_m, lr_vec2_sub (self->now->placed->at_m, eyes_m), &hit))
    return lr_wall_title (room, (int) hit.edge);
  return _("wall");
}

/**
 * lr_reframing_obstacle:
 * @self: a wish under way
 *
 * Returns: (transfer full) (nullable): what keeps the camera from where the last try puts it, "the east wall", "the
 *   drafting table", "the way of a door", "the picture of Camera B"; %NULL: nothing
 */
char *
lr_reframing_obstacle (const LrReframing *self)
{
  const LrClash *clash;
  g_autofree char *title = NULL;

  if (self->trial == NULL)
    return NULL;
  clash = find_clash (self);
  if (!is_in_room (self) || (clash != NULL && clash->type == LR_CLASH_OUTSIDE))
    return g_strdup_printf (_("the %s"), wall_between (self));
  if (clash == NULL)
    {
      const LrCameraReading *seer = find_seer (self);

      if (seer == NULL)
        return NULL;
      title = lr_item_title (seer->item);
      return g_strdup_printf (_("the picture of %s"), title);
    }
  if (clash->type == LR_CLASH_CEILING)
    return g_strdup (_("the ceiling"));
  if (clash->type == LR_CLASH_DOOR)
    return g_strdup (_("a door’s swing"));

  title = lr_item_title ((clash->a == self->now->placed ? clash->b : clash->a)->item);
  return g_steal_pointer (&title);
}

static gboolean
is_free_at (LrReframing *self,
            double       distance_m)
{
  g_autofree char *obstacle = NULL;

  lr_reframing_place (self, distance_m);
  if (!lr_reframing_try (self))
    return FALSE;
  obstacle = lr_reframing_obstacle (self);
  return obstacle == NULL;
}

/**
 * lr_reframing_find_free:
 * @self: a wish under way
 * @ended_by: (out) (transfer full) (optional): what ends the way
 *
 * Looks for the distance nearest to that of the last try at which nothing is in the way, between there and where the camera stands
 * now, and tries it.
 *
 * Returns: %FALSE: there is none
 */
gboolean
lr_reframing_find_free (LrReframing  *self,
                        char        **ended_by)
{
  double from_m = self->now->distance_m, to_m = self->camera->distance_m;
  double way_m = fabs (to_m - from_m), sign = to_m < from_m ? -1.0 : 1.0;
  double first_m = STEP_M * (sign < 0.0 ? floor (from_m / STEP_M) : ceil (from_m / STEP_M));
  double coarse_m = fmax (STEP_M, 0.1 * ceil (way_m / 3.0)), free_m = NAN;

  for (double m = 0.0; m <= way_m && !(free_m > 0.0); m += coarse_m)
    if (is_free_at (self, first_m + sign * m))
      free_m = first_m + sign * m;
  if (!(free_m > 0.0))
    return FALSE;

  /* back towards the wish, as far as it goes */
  while (fabs (free_m - sign * STEP_M - first_m) < way_m && (free_m - first_m) * sign > 0.5 * STEP_M
         && is_free_at (self, free_m - sign * STEP_M))
    free_m -= sign * STEP_M;

  if (ended_by != NULL)
    *ended_by = !is_free_at (self, free_m - sign * STEP_M) ? lr_reframing_obstacle (self) : NULL;
  return is_free_at (self, free_m);
}
