/* preroll_figures.c - cameras, light and sound before rolling: what is set, and what is wanted and expected
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Levels that are expected are predictions, right to half a stop at best.
 */

#include "config.h"

#include "preroll_parts.h"

#include "exposure.h"
#include "sound.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PEAKS_DBFS 12.0 /* below full scale: where a voice's peaks are set; common practice, no source */
#define TEST_S 10.0     /* of a test recording; common practice, no source */
#define WHOLE_DIM 0.995
#define HEARD_DB 0.5    /* less is not told */

/* --- Cameras -------------------------------------------------------------------------------------------------- */

/* "25", "23.976" */
static char *
rate_text (double fps)
{
  return lr_number_format (fps, fabs (fps - round (fps)) < 5e-4 ? 0 : 3);
}

static void
add_place (LrPreroll             *preroll,
           const LrCameraReading *camera)
{
  const LrItem *item = camera->item;
  g_autofree char *title = lr_preroll_title (item), *lens = lr_camera_lens_title (camera);
  g_autofree char *stop = lr_f_number_format (item->camera.f_number), *height = lr_length_format (item->camera.lens_height_m, preroll->units);
  g_autofree char *tilt = lr_tilt_format (camera->tilt_rad);

  /* Translators: a camera, a focal length, a stop, a height, a tilt */
  lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "place", item,
                  g_strdup_printf (_("%s: <b>%s</b> at <b>%s</b>, lens <b>%s</b> above the floor, tilt <b>%s</b>, bubble in the middle; front glass "
                                     "clean."),
                                   title, lens, stop, height, tilt));
}

static void
add_shutter (LrPreroll             *preroll,
             const LrCameraReading *camera)
{
  const LrItem *item = camera->item;
  LrMains mains = lr_study_mains (preroll->study);
  g_autofree char *title = lr_preroll_title (item), *rate = rate_text (item->camera.frame_rate_fps);
  g_autofree char *shutter = lr_shutter_format (item->camera.shutter_s), *angle = lr_angle_format (lr_camera_shutter_rad (&item->camera));
  g_autofree char *hz = lr_number_format (mains.hz, 0);

  lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "shutter", item,
                  g_strdup_printf (mains.from == LR_MAINS_TOLD
                                     ? _("%s: <b>%s</b> pictures a second, shutter <b>%s</b> (<b>%s</b>), mains <b>%s Hz</b>: no bands, no pulse.")
                                     : _("%s: <b>%s</b> pictures a second, shutter <b>%s</b> (<b>%s</b>), mains <b>%s Hz</b> by guess: no bands, no pulse."),
                                   title, rate, shutter, angle, hz));
}

/* "no filter", "ND 0.6 (2 stops)" */
static char *
filter_text (double stops)
{
  g_autofree char *density_text = NULL, *stops_text = NULL;
  double density = NAN;

  if (!(stops > 0.0) || !lr_nd_density (stops, &density))
    return g_strdup (_("no grey filter"));

  density_text = lr_number_format (density, 1);
  stops_text = lr_number_format (stops, fabs (stops - round (stops)) < 0.05 ? 0 : 1);
  if (fabs (stops - 1.0) < 0.05)
    /* Translators: density of a grey filter */
    return g_strdup_printf (_("grey filter %s (1 stop)"), density_text);
  /* Translators: density and stops of a grey filter */
  return g_strdup_printf (_("grey filter %s (%s stops)"), density_text, stops_text);
}

static void
add_exposure (LrPreroll             *preroll,
              const LrCameraReading *camera)
{
  const LrItem *item = camera->item;
  g_autofree char *title = lr_preroll_title (item), *filter = filter_text (item->camera.nd_stops);

  lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "exposure", item,
                  g_strdup_printf (_("%s: ISO <b>%.0f</b>, <b>%s</b>, white <b>%.0f K</b>, checked on a card held at the face."),
                                   title, item->camera.iso, filter, item->camera.white_balance_k));
}

static void
add_focus (LrPreroll             *preroll,
           const LrCameraReading *camera)
{
  const LrItem *item = camera->item;
  g_autofree char *title = lr_preroll_title (item), *focus = NULL, *near = NULL, *far = NULL, *whom = NULL;

  if (!camera->has_subject || !isfinite (camera->focus_m))
    return;

  focus = lr_length_format (camera->focus_m, preroll->units);
  near = lr_length_format (camera->sharp_near_m, preroll->units);
  whom = lr_preroll_title (camera->subject->item);
  if (isfinite (camera->sharp_far_m))
    {
      far = lr_length_format (camera->sharp_far_m, preroll->units);
      lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "focus", item,
                      g_strdup_printf (_("%s: focus at <b>%s</b>, magnified on the nearer eye of %s; sharp from <b>%s</b> to <b>%s</b>."),
                                       title, focus, whom, near, far));
    }
  else
    lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "focus", item,
                    g_strdup_printf (_("%s: focus at <b>%s</b>, magnified on the nearer eye of %s; sharp from <b>%s</b> on."), title, focus, whom,
                                     near));
}

/* "58 %" of full signal */
static char *
level_text (double share)
{
  return g_strdup_printf (_("%.0f %%"), 100.0 * lr_signal_of_share (share));
}

static void
add_levels (LrPreroll             *preroll,
            const LrCameraReading *camera)
{
  const LrItem *item = camera->item;
  g_autofree char *title = lr_preroll_title (item), *face = NULL, *walls = NULL;
  double wanted = lr_plan_face_level (preroll->study->plan), wall_wanted = lr_plan_wall_level (preroll->study->plan);
  LrShares shares;

  if (!camera->has_subject)
    return;
  if (preroll->levels == NULL || !lr_light_levels_shares (preroll->levels, item->id, &shares) || isnan (shares.face))
    {
      lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "level", item,
                      g_strdup_printf (_("%s: lit side of the face at <b>%.0f %%</b>, nothing of it over full."), title, 100.0 * wanted));
      return;
    }

  face = level_text (shares.face);
  lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "level", item,
                  g_strdup_printf (_("%s: lit side of the face at <b>%.0f %%</b> (<b>%s</b> expected), nothing of it over full."), title,
                                   100.0 * wanted, face));
  if (isnan (shares.background))
    return;
  walls = level_text (shares.background);
  lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "walls", item,
                  isnan (wall_wanted) ? g_strdup_printf (_("%s: walls behind as dark as they come (<b>%s</b> expected)."), title, walls)
                                      : g_strdup_printf (_("%s: walls behind at <b>%.0f %%</b> (<b>%s</b> expected)."), title, 100.0 * wall_wanted,
                                                         walls));
}

/**
 * lr_preroll_add_cameras:
 * @preroll: what is made
 *
 * Each camera with what is set on it, then what holds for all.
 */
void
lr_preroll_add_cameras (LrPreroll *preroll)
{
  const GArray *cameras = preroll->study->cameras;

  for (guint i = 0; i < cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (cameras, LrCameraReading, i);

      add_place (preroll, camera);
      add_shutter (preroll, camera);
      add_exposure (preroll, camera);
      add_focus (preroll, camera);
      add_levels (preroll, camera);
    }
  if (cameras->len > 1)
    lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "alike", NULL,
                    g_strdup (_("All cameras: same picture style, same time of day, same white on the card.")));
  if (cameras->len > 0)
    lr_preroll_add (preroll, LR_PREROLL_CAMERAS, "media", NULL,
                    g_strdup (_("Cards are empty and longer than the interview by half; batteries are full, the spare ones at hand.")));
}

/* --- Light ---------------------------------------------------------------------------------------------------- */

/**
 * lr_preroll_add_light:
 * @preroll: what is made
 *
 * Each lamp as it is set.
 */
void
lr_preroll_add_light (LrPreroll *preroll)
{
  guint n = 0;

  for (guint i = 0; i < preroll->study->setup->items->len; i++)
    {
      const LrItem *item = lr_preroll_item (preroll, i);
      g_autofree char *title = NULL, *height = NULL;

      if (item->kind != LR_ITEM_LIGHT)
        continue;
      n++;
      title = lr_preroll_title (item);
      height = lr_length_format (item->light.lamp_height_m, preroll->units);
      if (!(item->light.dim > 0.0))
        lr_preroll_add (preroll, LR_PREROLL_LIGHT, "lamp", item, g_strdup_printf (_("%s is off, as planned."), title));
      else
        lr_preroll_add (preroll, LR_PREROLL_LIGHT, "lamp", item,
                        item->light.dim > WHOLE_DIM
                          ? g_strdup_printf (_("%s: at full, <b>%.0f K</b>, <b>%s</b> above the floor."), title, item->light.color_temperature_k,
                                             height)
                          : g_strdup_printf (_("%s: at <b>%.0f %%</b>, <b>%.0f K</b>, <b>%s</b> above the floor."), title, 100.0 * item->light.dim,
                                             item->light.color_temperature_k, height));
    }
  if (n > 0)
    lr_preroll_add (preroll, LR_PREROLL_LIGHT, "shadows", NULL,
                    g_strdup (_("No lamp, stand, boom or shadow of them in a frame or in a glass; each lamp looked at alone.")));
}

/* --- Sound ---------------------------------------------------------------------------------------------------- */

static void
add_microphone (LrPreroll    *preroll,
                const LrItem *item)
{
  g_autofree char *title = lr_preroll_title (item), *distance = NULL, *over = NULL;
  const LrMicrophoneSound *sound = lr_sound_find (lr_study_sound (preroll->study), item->id);

  if (item->microphone.form == LR_MIC_LAVALIER)
    lr_preroll_add (preroll, LR_PREROLL_SOUND, "microphone", item,
                    g_strdup_printf (_("%s: on the middle line of the chest, lead in a loop; arms moved, head turned, no rustle; no telephone in a pocket."), title));
  else if (sound != NULL)
    {
      distance = lr_length_format (sound->distance_m, preroll->units);
      /* rolling begins when what is listed under switches is off */
      over = lr_number_format (sound->quiet_over_db, 0);
      lr_preroll_add (preroll, LR_PREROLL_SOUND, "microphone", item,
                      g_strdup_printf (sound->quiet_over_db - sound->over_db < HEARD_DB
                                         ? _("%s: <b>%s</b> from the mouth, aimed at the chest, out of the frame; voice <b>%s dB</b> over the noise "
                                             "expected.")
                                         : _("%s: <b>%s</b> from the mouth, aimed at the chest, out of the frame; voice <b>%s dB</b> over the noise "
                                             "expected, once all is off that can be."),
                                       title, distance, over));
    }
  else
    lr_preroll_add (preroll, LR_PREROLL_SOUND, "microphone", item, g_strdup_printf (_("%s: in its place, heard on headphones."), title));
}

/**
 * lr_preroll_add_sound:
 * @preroll: what is made
 *
 * Each microphone, then the recording.
 */
void
lr_preroll_add_sound (LrPreroll *preroll)
{
  guint n = 0;

  for (guint i = 0; i < preroll->study->setup->items->len; i++)
    {
      const LrItem *item = lr_preroll_item (preroll, i);

      if (item->kind != LR_ITEM_MICROPHONE)
        continue;
      n++;
      add_microphone (preroll, item);
    }
  if (n == 0)
    return;

  lr_preroll_add (preroll, LR_PREROLL_SOUND, "peaks", NULL,
                  g_strdup_printf (_("A voice as loud as it will be peaks at about <b>−%.0f dBFS</b>, on every track."), PEAKS_DBFS));
  lr_preroll_add (preroll, LR_PREROLL_SOUND, "test", NULL,
                  g_strdup_printf (_("<b>%.0f s</b> recorded and played back on headphones, every track; limiter and low cut as wanted."), TEST_S));
}
