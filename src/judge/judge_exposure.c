/* judge_exposure.c - whether cameras are exposed alike, and whether lamps flicker in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define HALF_HZ_VOLTS 160.0 /* of a circuit: under it the mains are taken to have 60 Hz, else 50; common practice, no source */
#define MOST_ISO 12800.0
#define HIGH_ISO 1600.0 /* over it noise shows: lowered rather than filtered (common practice, no source) */
#define LOW_ISO 100.0

/* How much light it takes to come out alike, in stops */
static double
needed_stops (const LrCameraReading *camera)
{
  const LrCamera *c = &camera->item->camera;

  return 2.0 * log2 (camera->f_number) + c->nd_stops - log2 (c->shutter_s * c->iso);
}

/* 125 and 160 are the thirds over 100; larger ones are their multiples by 2, rounded as cameras write them */
static double
nominal_iso (double iso)
{
  double thirds = round (3.0 * log2 (iso / 100.0)), exact = 100.0 * exp2 (thirds / 3.0), step = exact < 1000.0 ? 10.0 : 100.0;

  return fabs (thirds - 3.0 * round (thirds / 3.0)) < 1e-9 ? exact : fabs (exact - 126.0) < 1.0 ? 125.0 : step * round (exact / step);
}

/**
 * lr_judge_compensate:
 * @judge: a judge
 * @remedy: a remedy under way
 * @camera: the camera that it changes
 * @more_stops: how much more the sensor is to make of the light; < 0: less
 *
 * Changes the grey filter, as far as there is one to take off, else the sensitivity; a high sensitivity is lowered before a filter is put on.
 *
 * Returns: (transfer none): markup of the setting, "ISO <b>1600</b>", "a grey filter of <b>1.7</b> stops"
 */
const char *
lr_judge_compensate (LrJudge               *judge,
                     LrRemedy              *remedy,
                     const LrCameraReading *camera,
                     double                 more_stops)
{
  const LrCamera *c = &camera->item->camera;
  double nd_stops = 0.1 * round (10.0 * (c->nd_stops - more_stops)), off_stops = more_stops > 0.0 ? c->nd_stops : 0.0;
  double iso = fmin (nominal_iso (c->iso * exp2 (more_stops - off_stops)), MOST_ISO);
  g_autofree char *text = NULL;

  if (nd_stops >= 0.0 && !(c->iso > HIGH_ISO && more_stops < 0.0 && iso >= LOW_ISO))
    {
      lr_remedy_change (remedy, camera->item, "nd-stops", nd_stops);
      if (nd_stops > 0.0)
        text = g_strdup_printf (nd_stops < c->nd_stops ? _("a thinner grey filter, of <b>%s</b> stops") : _("a grey filter of <b>%s</b> stops"),
                                lr_say_number (judge, nd_stops, 1));
      else
        text = g_strdup (_("<b>no</b> grey filter"));
    }
  else
    {
      lr_remedy_change (remedy, camera->item, "iso", iso);
      if (off_stops > 0.0)
        lr_remedy_change (remedy, camera->item, "nd-stops", 0.0);
      text = g_strdup_printf (off_stops > 0.0 ? _("ISO <b>%s</b> without its grey filter") : _("ISO <b>%s</b>"), lr_say_number (judge, iso, 0));
    }
  return g_string_chunk_insert (judge->words, text);
}

/**
 * lr_judge_keep_compensation:
 * @judge: a judge
 * @remark: a remark
 * @camera: the camera that is set otherwise
 * @more_stops: as of lr_judge_compensate()
 *
 * Gives the remark "Set B to ISO 1600."
 */
void
lr_judge_keep_compensation (LrJudge               *judge,
                            LrRemark              *remark,
                            const LrCameraReading *camera,
                            double                 more_stops)
{
  LrRemedy *remedy;
  const char *setting;
  g_autofree char *figure = NULL;

  if (more_stops > 0.0 && camera->item->camera.nd_stops < more_stops && camera->item->camera.iso >= MOST_ISO)
    return; /* nothing is left to set */

  remedy = lr_remedy_new ();
  setting = lr_judge_compensate (judge, remedy, camera, more_stops);
  figure = lr_markup_to_text (setting);

  /* Translators: "Set B to ISO 1600.", "Set B to a grey filter of 1.7 stops." */
  lr_remedy_say (remedy, figure, _("Set %s to %s."), lr_say_name (judge, camera->placed), setting);
  lr_judge_keep (judge, remark, remedy);
}

static void
judge_match (LrJudge               *judge,
             const LrCameraReading *a,
             const LrCameraReading *b)
{
  double darker = needed_stops (b) - needed_stops (a), limit = judge->limits[LR_LIMIT_EXPOSURE_MATCH];
  gboolean is_off = fabs (darker) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_EXPOSURE_MATCH, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, b->placed, a->placed);
  const char *name_a, *name_b, *stops;

  if (remark == NULL)
    return;

  name_a = lr_say_name (judge, a->placed);
  name_b = lr_say_name (judge, b->placed);
  stops = lr_say_number (judge, fabs (darker), 1);
  remark->value = fabs (darker);
  remark->limit = limit;
  lr_remark_mark_outline (remark, &b->placed->footprint, NULL);
  if (!is_off)
    {
      lr_remark_say (remark, _("%s and %s are exposed alike, within <b>%s</b> stops."), name_a, name_b, stops);
      return;
    }

  lr_remark_say (remark, darker > 0.0 ? _("%s is set <b>%s</b> stops darker than %s, which shows in a cut.")
                                      : _("%s is set <b>%s</b> stops brighter than %s, which shows in a cut."),
                 name_b, stops, name_a);
  lr_judge_keep_compensation (judge, remark, b, darker);
}

static double
mains_hz (const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *item = g_array_index (study->placed, LrPlaced, i).item;

      if (item->kind == LR_ITEM_CIRCUIT && item->circuit.volts_v > 0.0)
        return item->circuit.volts_v < HALF_HZ_VOLTS ? 60.0 : 50.0;
    }
  return 50.0;
}

static const LrPlaced *
find_flickering (const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_HOUSE_LIGHT && placed->item->house_light.is_on && placed->item->house_light.may_flicker)
        return placed;
    }
  return NULL;
}

static void
judge_flicker (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrPlaced        *lamp,
               double                 hz)
{
  const LrCamera *c = &camera->item->camera;
  LrFlickerReading reading;
  LrRemark *remark;
  const char *name, *mains;

  if (!lr_flicker (hz, c->frame_rate_fps, c->shutter_s, &reading))
    return;

  remark = lr_judge_add (judge, LR_CHECK_FLICKER,
                         reading.grade == LR_FLICKER_NONE ? LR_GRADE_FINE
                         : reading.grade == LR_FLICKER_BANDS ? LR_GRADE_MIND : LR_GRADE_FIX, camera->placed, lamp);
  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  mains = lr_say_number (judge, hz, 0);
  remark->value = reading.pulses;
  remark->limit = round (reading.pulses);
  lr_remark_mark_point (remark, lamp->at_m, NULL);
  if (reading.grade == LR_FLICKER_NONE)
    {
      lr_remark_say (remark, _("Lamps on <b>%s</b> Hz do not flicker in %s: each picture holds whole pulses."), mains, name);
      return;
    }

  lr_remark_say (remark, reading.grade == LR_FLICKER_BEATS ? _("%s may flicker in %s on mains of <b>%s</b> Hz: pictures differ by up to <b>%s</b>.")
                                                           : _("%s may draw bands in %s on mains of <b>%s</b> Hz, of up to <b>%s</b>."),
                 lr_say_title (judge, lamp), name, mains, lr_say_share (judge, reading.ripple));
  {
    g_autofree char *shutter = lr_shutter_format (reading.nearest_s);
    LrRemedy *remedy = lr_remedy_new ();

    lr_remedy_change (remedy, camera->item, "shutter-s", reading.nearest_s);
    lr_remedy_say (remedy, shutter, _("Set the shutter of %s to <b>%s</b>."), name, shutter);
    lr_judge_keep (judge, remark, remedy);
  }
}

/**
 * lr_judge_exposure:
 * @judge: a judge
 *
 * Settings of the cameras against each other and against the mains.
 */
void
lr_judge_exposure (LrJudge *judge)
{
  const LrPlaced *lamp = find_flickering (judge->study);

  for (guint i = 1; i < judge->study->cameras->len; i++)
    judge_match (judge, lr_judge_camera (judge, 0), lr_judge_camera (judge, i));
  for (guint i = 0; lamp != NULL && i < judge->study->cameras->len; i++)
    judge_flicker (judge, lr_judge_camera (judge, i), lamp, mains_hz (judge->study));
}
