/* reframe_hand.c - what a hand does to the lens: holds the framing while the camera is moved, turns the ring
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "reframe_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ZOOM_STEP 1.04 /* a notch of the wheel */
#define CLOSE 1.001    /* focal lengths of this ratio are the same */

/**
 * lr_reframe_held_m:
 * @camera: a camera whose framing is held from now on
 *
 * Returns: the width of its field at the subject's eyes [m]; NAN without eyes in the frame
 */
double
lr_reframe_held_m (const LrCameraReading *camera)
{
  return lr_judge_has_eyes (camera) ? camera->field_w_m : (double) NAN;
}

/* The plan does not take it */
static LrReframe *
end_refused (LrReframing *self)
{
  g_autofree char *name = lr_reframing_say_name (self);

  return lr_reframing_end (self, FALSE, g_strdup_printf (_("The lens of %s cannot be set so."), name), NULL);
}

/* No lens is so long or so short */
static LrReframe *
end_without_lens (LrReframing *self)
{
  g_autofree char *end = lr_reframing_say_focal (self, self->now->item->camera.focal_m);

  return lr_reframing_end (self, FALSE, g_strdup_printf (_("Holding the framing ends at %s: no lens goes further."), end), NULL);
}

/* "Holding the framing needs 92 mm; the 85 mm lens comes nearest: the subject is 8 % smaller." */
static LrReframe *
end_off (LrReframing *self,
         const char  *needed,
         const char  *title,
         double       field_w_m)
{
  double off = field_w_m / self->now->field_w_m - 1.0;

  return lr_reframing_end (self, FALSE,
                           g_strdup_printf (off > 0.0 ? _("Holding the framing needs %s; the %s comes nearest: the subject is %.0f %% larger.")
                                                      : _("Holding the framing needs %s; the %s comes nearest: the subject is %.0f %% smaller."),
                                            needed, title, 100.0 * fabs (off)), NULL);
}

/**
 * lr_reframe_hold:
 * @moved: study of a plan in which the camera stands elsewhere
 * @id: of the camera
 * @field_w_m: the width of the field at the eyes that is held [m]; NAN: none
 * @units: of the sentence
 *
 * Keeps the width of the field at the eyes, so the magnification. A zoom, or a camera whose lens is not named, is set to the
 * focal length; at the end of the lens it stays there, and the sentence says so. A prime cannot: as a shooter would, it is
 * changed for the lens at hand that comes nearest, and the sentence says by how much the subject's size is off.
 *
 * Source: thin lens, `f = m s / (1 + m)` at constant m.
 *
 * Returns: (transfer full) (nullable): the change, possible or as near as it goes; %NULL without a subject in the frame
 */
LrReframe *
lr_reframe_hold (const LrStudy *moved,
                 const char    *id,
                 double         field_w_m,
                 LrUnits        units)
{
  const LrCameraReading *camera = lr_study_find_camera (moved, id);
  LrReframing self;
  const LrKitEntry *entry;
  double wanted_m, effective_m;
  g_autofree char *needed = NULL, *set = NULL, *title = NULL;

  if (camera == NULL || !camera->has_subject || !(field_w_m > 0.0))
    return NULL;

  lr_reframing_start (&self, moved, camera, units);
  lr_reframing_focus (&self);
  if (!lr_reframing_by_lens (&self, LR_SIZE_FIELD, field_w_m))
    {
      if (lr_reframing_is_at_end (&self))
        return end_without_lens (&self);
      lr_reframing_clear (&self);
      return NULL;
    }

  wanted_m = self.now->item->camera.focal_m;
  effective_m = self.now->focal_m;
  entry = lr_reframing_mounted (&self);
  needed = lr_reframing_say_focal (&self, wanted_m);
  if (entry == NULL || lr_lens_has_focal (&entry->item->lens, wanted_m))
    return lr_reframing_end (&self, TRUE, g_strdup_printf (_("Held with %s."), needed), NULL);

  if (lr_lens_is_prime (&entry->item->lens))
    entry = lr_reframing_nearest_lens (&self, effective_m);
  lr_reframing_mount (&self, entry, effective_m);
  if (!lr_reframing_try (&self))
    {
      lr_reframing_clear (&self);
      return NULL;
    }
  set = lr_reframing_say_focal (&self, self.now->item->camera.focal_m);
  title = lr_reframing_say_lens (&self, entry, self.now->item->camera.focal_m);
  if (!lr_lens_is_prime (&entry->item->lens) && entry == lr_reframing_mounted (&self))
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("Holding the framing needs %s; the lens ends at %s."), needed, set), NULL);
  return end_off (&self, needed, title, field_w_m);
}

/* The effective focal length next to @now_m to which the lens can be set: of a zoom that holds it, a notch further; 0: none */
static double
next_focal_m (const LrLens *lens,
              double        now_m,
              gboolean      is_longer)
{
  double least_m = lens->focal_min_m * lens->converter, most_m = lens->focal_max_m * lens->converter;

  if (is_longer)
    return most_m > now_m * CLOSE ? CLAMP (now_m * ZOOM_STEP, least_m, most_m) : 0.0;

  return least_m < now_m / CLOSE ? CLAMP (now_m / ZOOM_STEP, least_m, most_m) : 0.0;
}

/* The lens at hand that goes on from the one that is on with the smallest step; @effective_m (out): what it is set to */
static const LrKitEntry *
next_lens (const LrReframing *self,
           gboolean           is_longer,
           double            *effective_m)
{
  double now_m = self->camera->focal_m, best = HUGE_VAL;
  const LrKitEntry *next = NULL;

  for (guint i = 0; i < self->study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (self->study->plan->kit, i);
      double focal_m = lr_reframing_is_at_hand (self, entry) ? next_focal_m (&entry->item->lens, now_m, is_longer) : 0.0;
      double step = focal_m > 0.0 ? fabs (log (focal_m / now_m)) : HUGE_VAL;

      if (step < best)
        {
          next = entry;
          best = step;
          *effective_m = focal_m;
        }
    }
  return next;
}

static LrReframe *
change_lens (LrReframing *self,
             gboolean     is_longer)
{
  double effective_m = 0.0;
  const LrKitEntry *entry = next_lens (self, is_longer, &effective_m);
  g_autofree char *name = lr_reframing_say_name (self), *title = NULL;

  if (entry == NULL)
    return lr_reframing_end (self, FALSE,
                             g_strdup_printf (is_longer ? _("%s has the longest lens that is left in the kit, and it does not zoom.")
                                                        : _("%s has the shortest lens that is left in the kit, and it does not zoom."), name),
                             NULL);

  lr_reframing_mount (self, entry, effective_m);
  if (!lr_reframing_try (self) && self->trial == NULL)
    return end_refused (self);
  title = lr_reframing_say_lens (self, entry, self->now->item->camera.focal_m);
  return lr_reframing_end (self, TRUE, g_strdup_printf (_("%s takes the %s."), name, title), NULL);
}

/**
 * lr_reframe_zoom:
 * @study: a study
 * @camera: one of its cameras
 * @steps: notches of the wheel; > 0 to a longer focal length
 * @units: of the sentence
 *
 * Returns: (transfer full): the change; not possible at the end of the lens or of the kit
 */
LrReframe *
lr_reframe_zoom (const LrStudy         *study,
                 const LrCameraReading *camera,
                 double                 steps,
                 LrUnits                units)
{
  double focal_m = camera->item->camera.focal_m, wanted_m = focal_m * pow (ZOOM_STEP, steps);
  const LrKitEntry *mounted;
  g_autofree char *end = NULL;
  LrReframing self;
  LrLens any = { .focal_min_m = 0.001, .focal_max_m = 2.0 };
  const LrLens *lens;

  lr_reframing_start (&self, study, camera, units);
  mounted = lr_reframing_mounted (&self);
  lens = mounted != NULL ? &mounted->item->lens : &any;
  if (lr_lens_is_prime (lens))
    return change_lens (&self, steps > 0.0);

  wanted_m = CLAMP (1e-4 * round (1e4 * wanted_m), lens->focal_min_m, lens->focal_max_m);
  lr_reframing_put (&self, "focal-mm", wanted_m);
  if (!lr_reframing_try (&self) && self.trial == NULL)
    return end_refused (&self);
  end = lr_reframing_say_focal (&self, wanted_m);
  if (fabs (wanted_m - focal_m) < 1e-7)
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("The lens ends at %s."), end), NULL);
  return lr_reframing_end (&self, TRUE, g_strdup_printf (_("Zoom to %s"), end), NULL);
}
