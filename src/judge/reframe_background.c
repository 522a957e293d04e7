/* reframe_background.c - a width of what is behind the subject that is wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "reframe_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define AS_GOOD 0.006 /* of a width: what is asked for is read off a figure of three places */

/* "B stands at 2.60 m with 73 mm and sees 2.50 m of the west wall." */
static LrReframe *
end_background (LrReframing *self)
{
  g_autofree char *name = lr_reframing_say_name (self), *distance = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *focal = lr_reframing_say_focal (self, self->now->item->camera.focal_m);
  g_autofree char *width = lr_reframing_say_length (self, self->now->behind_field_w_m), *behind = lr_reframing_say_behind (self);

  return lr_reframing_end (self, TRUE, g_strdup_printf (_("%s stands at %s with %s and sees %s of the %s."), name, distance, focal,
                                                        width, behind), NULL);
}

/* The same framing through a lens that is at hand */
static LrReframe *
same_framing (const LrReframing *asked,
              const LrKitEntry  *entry,
              double             effective_m)
{
  LrReframing self;
  g_autofree char *obstacle = NULL;
  double nearest_m;

  lr_reframing_copy (&self, asked);
  lr_reframing_mount (&self, entry, effective_m);
  if (lr_reframing_by_place (&self, LR_SIZE_FIELD, asked->camera->field_w_m))
    {
      obstacle = lr_reframing_obstacle (&self);
      if (obstacle == NULL && !lr_reframing_is_too_near (&self, &nearest_m))
        return end_background (&self);
    }
  lr_reframing_clear (&self);
  return NULL;
}

/* "2.50 m of the west wall" */
static char *
say_wanted (const LrReframing *self,
            double             behind_field_w_m)
{
  g_autofree char *width = lr_reframing_say_length (self, behind_field_w_m), *behind = lr_reframing_say_behind (self);

  return g_strdup_printf (_("%s of the %s"), width, behind);
}

/* The same framing through that lens at hand that shows nearest to so much of what is behind, the mounted one first. A zoom
 * is set to @effective_m, or to its end next to it. (nullable) */
static LrReframe *
nearest_framing (const LrReframing *asked,
                 double             effective_m,
                 double             behind_field_w_m)
{
  const LrKitEntry *mounted = lr_reframing_mounted (asked);
  LrReframe *best = NULL;
  double best_miss = HUGE_VAL;

  for (guint i = 0; i < asked->study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (asked->study->plan->kit, i);
      LrReframe *other = lr_reframing_is_at_hand (asked, entry) ? same_framing (asked, entry, effective_m) : NULL;
      double miss = other != NULL ? fabs (log (other->behind_field_w_m / behind_field_w_m)) : HUGE_VAL;

      if (miss < best_miss - 1e-6 || (entry == mounted && miss < best_miss + 1e-6))
        {
          lr_reframe_free (best);
          best = g_steal_pointer (&other);
          best_miss = miss;
        }
      lr_reframe_free (other);
    }
  return best;
}

/* No lens at hand has the focal length, or it is in the way or too near with it */
static LrReframe *
end_other_lens (LrReframing *self,
                double       behind_field_w_m)
{
  g_autofree char *needed = lr_reframing_say_focal (self, self->now->item->camera.focal_m);
  g_autofree char *distance = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *width = say_wanted (self, behind_field_w_m), *its_distance = NULL, *its_width = NULL;
  g_autofree char *its_focal = NULL;
  LrReframe *instead = nearest_framing (self, self->now->focal_m, behind_field_w_m);

  if (instead == NULL)
    return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s takes %s from %s, and no lens at hand can do it here."), width,
                                                           needed, distance), NULL);

  if (fabs (log (instead->behind_field_w_m / behind_field_w_m)) < AS_GOOD)
    {
      lr_reframing_clear (self);
      return instead;
    }
  its_distance = lr_reframing_say_length (self, instead->distance_m);
  its_width = lr_reframing_say_length (self, instead->behind_field_w_m);
  its_focal = lr_reframing_say_focal (self, instead->focal_m);
  if (instead->is_as_now)
    {
      lr_reframe_free (instead);
      return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s takes %s from %s; no lens at hand comes nearer than this one: %s."),
                                                             width, needed, distance, its_width), NULL);
    }
  return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s takes %s from %s; %s from %s comes nearest: %s."), width, needed,
                                                         distance, its_focal, its_distance, its_width), instead);
}

/* What the camera at the end of its room shows with a lens of the kit, or with any if its lens is not of the kit; takes @edge */
static LrReframe *
end_at_edge (LrReframing *edge,
             double       behind_field_w_m)
{
  LrReframe *instead;
  double nearest_m;

  if (lr_reframing_mounted (edge) == NULL && !lr_reframing_is_too_near (edge, &nearest_m))
    return end_background (edge);

  instead = nearest_framing (edge, edge->now->focal_m, behind_field_w_m);
  lr_reframing_clear (edge);
  if (instead != NULL && instead->is_as_now)
    g_clear_pointer (&instead, lr_reframe_free);
  return instead;
}

/* By how much it does not fit, and what the furthest place shows */
static LrReframe *
end_no_room (LrReframing *self,
             double       behind_field_w_m,
             const char  *obstacle)
{
  double needed_m = self->now->distance_m;
  g_autofree char *needed = lr_reframing_say_length (self, needed_m), *missing = NULL, *end = NULL, *its_width = NULL;
  g_autofree char *width = say_wanted (self, behind_field_w_m);
  LrReframing edge;

  lr_reframing_copy (&edge, self);
  if (!lr_reframing_try (&edge) || !lr_reframing_find_free (&edge, NULL)
      || !lr_reframing_by_lens (&edge, LR_SIZE_FIELD, self->camera->field_w_m))
    {
      lr_reframing_clear (&edge);
      return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s takes %s, but %s is in the way."), width, needed, obstacle), NULL);
    }

  missing = lr_reframing_say_length (self, fabs (needed_m - edge.now->distance_m));
  end = lr_reframing_say_length (self, edge.now->distance_m);
  its_width = lr_reframing_say_length (self, edge.now->behind_field_w_m);
  return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s takes %s, and %s is in the way by %s: at %s it is %s."), width,
                                                         needed, obstacle, missing, end, its_width),
                           end_at_edge (&edge, behind_field_w_m));
}

static LrReframe *
end_unfocused (LrReframing *self,
               double       nearest_m)
{
  g_autofree char *needed = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *nearest = lr_reframing_say_length (self, nearest_m);

  return lr_reframing_end (self, FALSE, g_strdup_printf (_("It takes %s; the lens focuses no nearer than %s."), needed, nearest), NULL);
}

/* The mounted lens has not the focal length: another at hand that has it, or what comes nearest */
static LrReframe *
through_other_lens (LrReframing *self,
                    double       behind_field_w_m)
{
  double effective_m = self->now->focal_m;
  const LrKitEntry *entry = lr_reframing_nearest_lens (self, effective_m);
  LrReframe *same = NULL;

  if (entry != NULL && lr_lens_has_focal (&entry->item->lens, effective_m / entry->item->lens.converter))
    same = same_framing (self, entry, effective_m);
  if (same == NULL)
    return end_other_lens (self, behind_field_w_m);
  lr_reframing_clear (self);
  return same;
}

static LrReframe *
end_not_seen (LrReframing *self,
              double       behind_field_w_m)
{
  g_autofree char *width = say_wanted (self, behind_field_w_m);
  g_autofree char *least = lr_reframing_say_length (self, self->camera->field_w_m);

  if (self->camera->behind == LR_BEHIND_NOTHING)
    return lr_reframing_end (self, FALSE, g_strdup (_("There is nothing behind the subject.")), NULL);
  if (behind_field_w_m <= self->camera->field_w_m)
    return lr_reframing_end (self, FALSE,
                             g_strdup_printf (_("The frame is %s wide at the subject already: of what is behind it shows more."), least), NULL);
  return lr_reframing_end (self, FALSE, g_strdup_printf (_("No place along this direction shows %s."), width), NULL);
}

/**
 * lr_reframe_background:
 * @study: a study
 * @camera: one of its cameras, with the eyes of its subject in the frame
 * @behind_field_w_m: width that is wanted of what is behind [m], in the plane square to the axis
 * @units: of the sentence
 *
 * The field at the eyes and their place in the frame stay. The focal length must be one of the mounted lens, or of another
 * lens at hand; a camera whose lens is not named takes any.
 *
 * Source: similar triangles, lr_distance_for_background_m(); the thin lens.
 *
 * Returns: (transfer full): what does it, or why it cannot be and what comes nearest
 */
LrReframe *
lr_reframe_background (const LrStudy         *study,
                       const LrCameraReading *camera,
                       double                 behind_field_w_m,
                       LrUnits                units)
{
  LrReframing self;
  g_autofree char *obstacle = NULL;
  const LrKitEntry *mounted;
  double nearest_m;

  lr_reframing_start (&self, study, camera, units);
  if (!lr_judge_has_eyes (camera))
    return lr_reframing_end_no_subject (&self);

  lr_reframing_aim (&self, camera->eyes_across, camera->eyes_down);
  lr_reframing_focus (&self);
  if (camera->behind == LR_BEHIND_NOTHING || behind_field_w_m <= camera->field_w_m
      || !lr_reframing_by_both (&self, camera->field_w_m, behind_field_w_m))
    return end_not_seen (&self, behind_field_w_m);

  obstacle = lr_reframing_obstacle (&self);
  if (obstacle != NULL)
    return end_no_room (&self, behind_field_w_m, obstacle);

  mounted = lr_reframing_mounted (&self);
  if (mounted != NULL && !lr_lens_has_focal (&mounted->item->lens, self.now->item->camera.focal_m))
    return through_other_lens (&self, behind_field_w_m);
  if (lr_reframing_is_too_near (&self, &nearest_m))
    return mounted != NULL ? end_other_lens (&self, behind_field_w_m) : end_unfocused (&self, nearest_m);
  return end_background (&self);
}
