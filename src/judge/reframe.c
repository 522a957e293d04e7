/* reframe.c - a shot that is wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "reframe_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Who looks past the lens is given room on that side: an aim in this part of the frame's width is kept */
#define KEPT_ACROSS 0.25

#define LEVEL_M 0.05

/* The eyes where a well framed shot has them; FALSE: the person has no such shot. @cut_m (out): from them to the lower edge */
static gboolean
aim_shot (LrReframing *self,
          LrShot       shot,
          double      *cut_m)
{
  const LrCameraReading *camera = self->camera;
  double height_m, eyes_down, across = camera->eyes_across;

  if (!lr_shot_frame_height_m (shot, &camera->subject->body, &height_m, &eyes_down))
    return FALSE;

  if (g_str_equal (camera->item->camera.aims_at, camera->subject->item->id))
    across = camera->item->camera.across;
  else if (!(across > KEPT_ACROSS && across < 1.0 - KEPT_ACROSS))
    across = 0.5;
  lr_reframing_aim (self, across, eyes_down);
  lr_reframing_focus (self);
  *cut_m = (1.0 - eyes_down) * height_m;
  return TRUE;
}

/* Near a face, a lens that is higher or lower looks too steeply to frame as is usual */
static LrReframe *
no_shot (LrReframing *self,
         LrShot       shot)
{
  double above_m = self->camera->lens_above_m;
  g_autofree char *name = lr_reframing_say_name (self), *off = lr_reframing_say_length (self, fabs (above_m)), *sentence = NULL;
  LrReframe *none;

  if (fabs (above_m) > LEVEL_M)
    /* Translators: camera, length, shot size: "A is 0.35 m above the eyes: too high for close-up with this lens." */
    sentence = g_strdup_printf (above_m > 0.0 ? _("%s is %s above the eyes: too high for %s with this lens.")
                                              : _("%s is %s below the eyes: too low for %s with this lens."),
                                name, off, lr_shot_title (shot));
  else
    /* Translators: camera, shot size */
    sentence = g_strdup_printf (_("From there %s has no %s."), name, lr_shot_title (shot));

  none = lr_reframing_end (self, FALSE, g_steal_pointer (&sentence), NULL);
  none->distance_m = none->focal_m = (double) NAN; /* those of a try that led nowhere */
  return none;
}

/* Solved, with the size that was asked for */
static gboolean
place_shot (LrReframing *self,
            LrShot       shot)
{
  double cut_m;

  return aim_shot (self, shot, &cut_m) && lr_reframing_by_place (self, LR_SIZE_CUT, cut_m)
         && self->now->framing.shot == shot;
}

static LrReframe *
end_place (LrReframing *self,
           LrShot       shot)
{
  g_autofree char *name = lr_reframing_say_name (self), *distance = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *focal = lr_reframing_say_focal (self, self->now->item->camera.focal_m);

  /* Translators: "B stands at 2.14 m: medium with 85 mm." */
  return lr_reframing_end (self, TRUE,
                           g_strdup_printf (_("%s stands at %s: %s with %s."), name, distance, lr_shot_title (shot), focal), NULL);
}

/* The next size that fits, tighter if the camera is to be nearer than it was asked to go */
static LrReframe *
next_that_fits (const LrReframing *asked,
                LrShot             shot,
                int                by)
{
  for (int other = (int) shot + by; other >= 0 && other < LR_SHOT_LONG; other += by)
    {
      LrReframing self;
      g_autofree char *obstacle = NULL;
      double nearest_m;

      lr_reframing_start (&self, asked->study, asked->camera, asked->units);
      if (place_shot (&self, (LrShot) other))
        {
          obstacle = lr_reframing_obstacle (&self);
          if (obstacle == NULL && !lr_reframing_is_too_near (&self, &nearest_m))
            return end_place (&self, (LrShot) other);
        }
      lr_reframing_clear (&self);
    }
  return NULL;
}

/* "B needs 4.10 m for full; the east wall ends it at 3.20 m: medium long at most." */
static LrReframe *
end_blocked (LrReframing *self,
             LrShot       shot,
             const char  *obstacle)
{
  gboolean is_back = self->now->distance_m > self->camera->distance_m;
  g_autofree char *name = lr_reframing_say_name (self), *needed = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *end = NULL, *ended_by = NULL;
  LrReframe *instead = next_that_fits (self, shot, is_back ? -1 : 1);
  LrReframing edge;

  lr_reframing_copy (&edge, self);
  if (lr_reframing_try (&edge) && lr_reframing_find_free (&edge, &ended_by))
    end = lr_reframing_say_length (&edge, edge.now->distance_m);
  lr_reframing_clear (&edge);

  if (end == NULL || instead == NULL)
    return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s needs %s for %s, but %s is in the way."), name, needed,
                                                           lr_shot_title (shot), obstacle), instead);
  return lr_reframing_end (self, FALSE,
                           g_strdup_printf (is_back ? _("%s needs %s for %s; %s ends it at %s: %s at most.")
                                                    : _("%s needs %s for %s; %s ends it at %s: %s at the tightest."),
                                            name, needed, lr_shot_title (shot), ended_by != NULL ? ended_by : obstacle, end,
                                            lr_shot_title (instead->shot)), instead);
}

static LrReframe *
end_too_near (LrReframing *self,
              LrShot       shot,
              double       nearest_m)
{
  g_autofree char *name = lr_reframing_say_name (self), *needed = lr_reframing_say_length (self, self->now->distance_m);
  g_autofree char *nearest = lr_reframing_say_length (self, nearest_m);
  LrReframe *instead = next_that_fits (self, shot, 1);

  return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s needs %s for %s; its lens focuses no nearer than %s."), name, needed,
                                                         lr_shot_title (shot), nearest), instead);
}

static LrReframe *
shot_by_place (LrReframing *self,
               LrShot       shot)
{
  g_autofree char *obstacle = NULL;
  double nearest_m;

  if (!place_shot (self, shot))
    return no_shot (self, shot);
  if (lr_reframing_is_too_near (self, &nearest_m))
    return end_too_near (self, shot, nearest_m);
  obstacle = lr_reframing_obstacle (self);
  return obstacle != NULL ? end_blocked (self, shot, obstacle) : end_place (self, shot);
}

static LrReframe *
end_lens (LrReframing      *self,
          LrShot            shot,
          const LrKitEntry *entry)
{
  g_autofree char *name = lr_reframing_say_name (self), *focal = lr_reframing_say_focal (self, self->now->item->camera.focal_m);
  g_autofree char *distance = lr_reframing_say_length (self, self->now->distance_m);

  if (self->reframe->lens != NULL)
    {
      g_autofree char *lens = lr_reframing_say_lens (self, entry, self->now->item->camera.focal_m);

      /* Translators: "B takes the 85 mm lens: medium from 2.14 m." */
      return lr_reframing_end (self, TRUE, g_strdup_printf (_("%s takes the %s: %s from %s."), name, lens, lr_shot_title (shot),
                                                            distance), NULL);
    }
  /* Translators: "B is set to 73 mm: medium from 2.14 m." */
  return lr_reframing_end (self, TRUE, g_strdup_printf (_("%s is set to %s: %s from %s."), name, focal, lr_shot_title (shot), distance), NULL);
}

/* No lens at hand makes the shot: the one that comes nearest, which makes another or nobody's */
static LrReframe *
nearest_lens (const LrReframing *asked,
              const LrKitEntry  *entry,
              double             effective_m)
{
  LrReframing self;
  double nearest_m;
  LrShot shot;

  lr_reframing_copy (&self, asked);
  lr_reframing_mount (&self, entry, effective_m);
  if (!lr_reframing_try (&self) || self.now->framing.shot >= LR_N_SHOTS || lr_reframing_is_too_near (&self, &nearest_m))
    {
      lr_reframing_clear (&self);
      return NULL;
    }
  shot = self.now->framing.shot;
  return end_lens (&self, shot, entry);
}

static LrReframe *
end_no_lens (LrReframing      *self,
             LrShot            shot,
             const LrKitEntry *entry,
             double            effective_m)
{
  const LrKitEntry *mounted = lr_reframing_mounted (self);
  g_autofree char *needed = lr_reframing_say_focal (self, self->now->item->camera.focal_m), *nearest = NULL;
  g_autofree char *name = lr_reframing_say_name (self), *end = NULL;
  LrReframe *instead = nearest_lens (self, entry, effective_m);
  gboolean is_zoom_end = entry == mounted && !lr_lens_is_prime (&entry->item->lens);

  if (instead == NULL)
    return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s needs %s for %s, and no lens comes near."), name, needed,
                                                           lr_shot_title (shot)), NULL);
  if (instead->lens == NULL && fabs (instead->focal_m - self->camera->item->camera.focal_m) < 1e-6)
    {
      char *sentence = g_strdup_printf (_("%s needs %s for %s; no lens at hand comes nearer than this one: %s."), name, needed,
                                        lr_shot_title (shot), lr_shot_title (instead->shot));

      lr_reframe_free (instead);
      return lr_reframing_end (self, FALSE, sentence, NULL);
    }
  end = lr_reframing_say_focal (self, instead->focal_m);
  return lr_reframing_end (self, FALSE,
                           g_strdup_printf (is_zoom_end ? _("%s needs %s for %s; the lens ends at %s: %s.")
                                                        : _("%s needs %s for %s; %s comes nearest in the kit: %s."),
                                            name, needed, lr_shot_title (shot), end, lr_shot_title (instead->shot)), instead);
}

static LrReframe *
shot_by_lens (LrReframing *self,
              LrShot       shot)
{
  const LrKitEntry *entry = lr_reframing_mounted (self);
  double cut_m, effective_m, nearest_m;
  LrReframing mounted;

  if (!aim_shot (self, shot, &cut_m) || !lr_reframing_by_lens (self, LR_SIZE_CUT, cut_m) || self->now->framing.shot != shot)
    return no_shot (self, shot);
  if (entry == NULL || lr_lens_has_focal (&entry->item->lens, self->now->item->camera.focal_m))
    return lr_reframing_is_too_near (self, &nearest_m) ? end_too_near (self, shot, nearest_m) : end_lens (self, shot, entry);

  effective_m = self->now->focal_m;
  entry = lr_reframing_nearest_lens (self, effective_m);
  if (entry == NULL)
    return no_shot (self, shot);
  lr_reframing_copy (&mounted, self);
  lr_reframing_mount (&mounted, entry, effective_m);
  if (lr_reframing_try (&mounted) && mounted.now->framing.shot == shot && !lr_reframing_is_too_near (&mounted, &nearest_m))
    {
      lr_reframing_clear (self);
      return end_lens (&mounted, shot, entry);
    }
  lr_reframing_clear (&mounted);
  return end_no_lens (self, shot, entry, effective_m);
}

/**
 * lr_reframe_shot:
 * @study: a study
 * @camera: one of its cameras
 * @shot: the size that is wanted
 * @by: what may change: the place, along the direction in which it stands from the subject, or the lens
 * @units: of the sentence
 *
 * The camera aims at its subject, the eyes as far down the frame as lr_shot_frame_height_m() has them for this size, across
 * where they were. By the lens a prime is changed for the one at hand that comes nearest; if that does not make the size,
 * it is what is offered instead.
 *
 * Returns: (transfer full): what does it, or why it cannot be and what comes nearest
 */
LrReframe *
lr_reframe_shot (const LrStudy         *study,
                 const LrCameraReading *camera,
                 LrShot                 shot,
                 LrReframeBy            by,
                 LrUnits                units)
{
  LrReframing self;

  lr_reframing_start (&self, study, camera, units);
  if (!camera->has_subject)
    return lr_reframing_end_no_subject (&self);
  return by == LR_REFRAME_BY_PLACE ? shot_by_place (&self, shot) : shot_by_lens (&self, shot);
}
