/* judge_shutter.c - the shutter against the frame rate and against the mains
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include "exposure.h"

#include <glib/gi18n-lib.h>

#define WHOLE_TURN 1.001 /* times a picture: what rounding of either figure may add */
#define TELLS_STOPS 0.3 /* from which a change of the light is made up for */

static const char *
keep_word (LrJudge *judge,
           char    *text) /* (transfer full) */
{
  const char *kept = g_string_chunk_insert (judge->words, text);

  g_free (text);
  return kept;
}

static const char *
say_shutter (LrJudge *judge,
             double   shutter_s)
{
  return keep_word (judge, lr_shutter_format (shutter_s));
}

/* "25", "23.976" */
static const char *
say_rate (LrJudge *judge,
          double   fps)
{
  return lr_say_number (judge, fps, fabs (fps - round (fps)) < 5e-4 ? 0 : 3);
}

/* A guess is told as one */
static const char *
say_mains (LrJudge *judge,
           LrMains  mains)
{
  const char *hz = lr_say_number (judge, mains.hz, 0);

  switch (mains.from)
    {
    case LR_MAINS_BY_VOLTS:
      return keep_word (judge, g_strdup_printf (_("mains of <b>%s</b> Hz (guessed from <b>%s</b> V)"), hz, lr_say_number (judge, mains.volts_v, 0)));
    case LR_MAINS_UNKNOWN:
      return keep_word (judge, g_strdup_printf (_("mains of <b>%s</b> Hz (a guess: no circuit is told)"), hz));
    case LR_MAINS_TOLD:
    default:
      return keep_word (judge, g_strdup_printf (_("mains of <b>%s</b> Hz"), hz));
    }
}

/* Within the limits of the shutter and nearest to what is wanted; FALSE: the pictures are too short for whole pulses */
static gboolean
find_steady (const LrJudge         *judge,
             const LrCameraReading *camera,
             double                 hz,
             double                 wanted_s,
             double                *shutter_s)
{
  double fps = camera->item->camera.frame_rate_fps, turn_s = 1.0 / fps, least_s, most_s;

  least_s = judge->limits[LR_LIMIT_SHUTTER_MIN] / (2.0 * LR_PI) * turn_s;
  most_s = judge->limits[LR_LIMIT_SHUTTER_MAX] / (2.0 * LR_PI) * turn_s;
  return lr_steady_shutter_s (hz, fps, least_s, most_s, wanted_s, shutter_s);
}

/* "1/50 s (180°), which suits mains of 50 Hz" */
static const char *
say_new_shutter (LrJudge               *judge,
                 const LrCameraReading *camera,
                 double                 shutter_s,
                 const LrMains         *mains)
{
  const char *shutter = say_shutter (judge, shutter_s);
  const char *angle = lr_say_angle (judge, 2.0 * LR_PI * camera->item->camera.frame_rate_fps * shutter_s);

  if (mains == NULL)
    return keep_word (judge, g_strdup_printf ("<b>%s</b> (<b>%s</b>)", shutter, angle));

  /* Translators: a shutter, its angle, "mains of 50 Hz" */
  return keep_word (judge, g_strdup_printf (_("<b>%s</b> (<b>%s</b>), which suits %s"), shutter, angle, say_mains (judge, *mains)));
}

/* Filter and ISO make up for the light. @mains (nullable): what it suits, if that is not told already */
static void
keep_shutter (LrJudge               *judge,
              LrRemark              *remark,
              const LrCameraReading *camera,
              double                 shutter_s,
              const LrMains         *mains)
{
  const char *name = lr_say_name (judge, camera->placed), *shutter = say_shutter (judge, shutter_s);
  const char *setting = say_new_shutter (judge, camera, shutter_s, mains);
  double more_stops = log2 (camera->item->camera.shutter_s / shutter_s);
  LrRemedy *remedy = lr_remedy_new ();

  lr_remedy_change (remedy, camera->item, "shutter-s", shutter_s);
  if (fabs (more_stops) < TELLS_STOPS)
    lr_remedy_say (remedy, shutter, _("Set the shutter of %s to %s."), name, setting);
  else
    /* Translators: "Set the shutter of A to 1/50 s (180°), which suits mains of 50 Hz; for the light set A to ISO 400." */
    lr_remedy_say (remedy, shutter, _("Set the shutter of %s to %s; for the light set %s to %s."), name, setting, name,
                   lr_judge_compensate (judge, remedy, camera, more_stops));
  lr_judge_keep (judge, remark, remedy);
}

static void
say_angle (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera,
           double                 angle_rad)
{
  const LrCamera *c = &camera->item->camera;
  const char *name = lr_say_name (judge, camera->placed), *shutter = say_shutter (judge, c->shutter_s), *rate = say_rate (judge, c->frame_rate_fps);
  const char *angle = lr_say_angle (judge, angle_rad), *limit = lr_say_angle (judge, remark->limit);

  if (remark->grade == LR_GRADE_FIX)
    lr_remark_say (remark, _("The shutter of %s, <b>%s</b>, is longer than a picture lasts at <b>%s</b> fps, <b>%s</b>: it cannot be set."), name,
                   shutter, rate, say_shutter (judge, 1.0 / c->frame_rate_fps));
  else if (remark->grade == LR_GRADE_FINE)
    lr_remark_say (remark, _("The shutter of %s, <b>%s</b>, is open for <b>%s</b> at <b>%s</b> fps."), name, shutter, angle, rate);
  else if (angle_rad < remark->limit)
    lr_remark_say (remark, _("The shutter of %s, <b>%s</b>, is open for only <b>%s</b> at <b>%s</b> fps; under <b>%s</b> movement looks choppy."),
                   name, shutter, angle, rate, limit);
  else
    lr_remark_say (remark, _("The shutter of %s, <b>%s</b>, is open for <b>%s</b> at <b>%s</b> fps; over <b>%s</b> movement smears."), name,
                   shutter, angle, rate, limit);
}

static void
judge_angle (LrJudge               *judge,
             const LrCameraReading *camera,
             LrMains                mains)
{
  double angle_rad = lr_camera_shutter_rad (&camera->item->camera), least_rad = judge->limits[LR_LIMIT_SHUTTER_MIN];
  double most_rad = judge->limits[LR_LIMIT_SHUTTER_MAX], half_s = 0.5 / camera->item->camera.frame_rate_fps, steady_s;
  gboolean is_too_long = angle_rad > WHOLE_TURN * 2.0 * LR_PI, is_off = angle_rad < least_rad || angle_rad > most_rad;
  LrGrade grade = is_too_long ? LR_GRADE_FIX : is_off ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_SHUTTER, grade, camera->placed, NULL);

  if (remark == NULL)
    return;

  remark->value = angle_rad;
  remark->limit = is_too_long ? 2.0 * LR_PI : angle_rad < 0.5 * (least_rad + most_rad) ? least_rad : most_rad;
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  say_angle (judge, remark, camera, angle_rad);
  if (!is_too_long && !is_off)
    return;

  if (find_steady (judge, camera, mains.hz, half_s, &steady_s))
    keep_shutter (judge, remark, camera, steady_s, &mains);
  else if (least_rad <= LR_PI && most_rad >= LR_PI)
    keep_shutter (judge, remark, camera, half_s, NULL);
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

/* Where pictures follow each other faster than the lamp pulses, only the switch helps */
static void
offer_steady (LrJudge               *judge,
              LrRemark              *remark,
              const LrCameraReading *camera,
              const LrPlaced        *lamp,
              double                 hz,
              double                 nearest_s)
{
  const LrCamera *c = &camera->item->camera;
  const char *rate = say_rate (judge, c->frame_rate_fps);
  double steady_s;

  if (find_steady (judge, camera, hz, c->shutter_s, &steady_s))
    keep_shutter (judge, remark, camera, steady_s, NULL);
  else if (nearest_s * c->frame_rate_fps <= WHOLE_TURN)
    keep_shutter (judge, remark, camera, nearest_s, NULL);
  else if (lamp->item->house_light.can_switch_off)
    {
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_change (remedy, lamp->item, "is-on", 0.0);
      lr_remedy_say (remedy, _("off"), _("At <b>%s</b> fps no shutter helps: switch %s off."), rate, lr_say_title (judge, lamp));
      lr_judge_keep (judge, remark, remedy);
    }
  else
    lr_remark_say (remark, _("At <b>%s</b> fps no shutter helps: keep its light off what is filmed."), rate);
}

static void
judge_flicker (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrPlaced        *lamp,
               LrMains                mains)
{
  const LrCamera *c = &camera->item->camera;
  LrFlickerReading reading;
  LrRemark *remark;
  const char *name;

  if (!lr_flicker (mains.hz, c->frame_rate_fps, c->shutter_s, &reading))
    return;

  remark = lr_judge_add (judge, LR_CHECK_FLICKER,
                         reading.grade == LR_FLICKER_NONE ? LR_GRADE_FINE
                         : reading.grade == LR_FLICKER_BANDS ? LR_GRADE_MIND : LR_GRADE_FIX, camera->placed, lamp);
  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  remark->value = reading.pulses;
  remark->limit = round (reading.pulses);
  lr_remark_mark_point (remark, lamp->at_m, NULL);
  if (reading.grade == LR_FLICKER_NONE)
    {
      lr_remark_say (remark, _("Lamps on %s do not flicker in %s: each picture holds whole pulses."), say_mains (judge, mains), name);
      return;
    }

  lr_remark_say (remark, reading.grade == LR_FLICKER_BEATS ? _("%s may flicker in %s on %s: pictures differ by up to <b>%s</b>.")
                                                           : _("%s may draw bands in %s on %s, of up to <b>%s</b>."),
                 lr_say_title (judge, lamp), name, say_mains (judge, mains), lr_say_share (judge, reading.ripple));
  offer_steady (judge, remark, camera, lamp, mains.hz, reading.nearest_s);
}

/**
 * lr_judge_shutter:
 * @judge: a judge
 *
 * The opening of each camera's shutter, and lamps that pulse with the mains in it.
 */
void
lr_judge_shutter (LrJudge *judge)
{
  const LrPlaced *lamp = find_flickering (judge->study);
  LrMains mains = lr_study_mains (judge->study);

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      judge_angle (judge, lr_judge_camera (judge, i), mains);
      if (lamp != NULL)
        judge_flicker (judge, lr_judge_camera (judge, i), lamp, mains);
    }
}
