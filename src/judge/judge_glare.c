/* judge_glare.c - lamps in glasses, and lamps that shine into a lens
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A lens of glasses is part of a ball that looks where its wearer does, tipped down: each place of it mirrors another way, so a lamp
 * shows as soon as the normal that would mirror it is one of the lens's, or within half the lamp's own size of one. Frames differ, and
 * heads move: what is told not to show may show.
 */

#include "config.h"

#include "judge_parts.h"

#include "light_sources.h"
#include "mirror.h"

#include <glib/gi18n-lib.h>

#define BASE_DIOPTRES 6.0
#define LENS_RADIUS_M 0.022
#define TIPPED_RAD (10.0 * LR_DEG)  /* common practice, no source: frames are tipped by 8 to 12 degrees */
#define RAISE_STEP_M 0.05
#define MOST_RAISE_M 1.5
#define ASIDE_STEP_RAD (2.0 * LR_DEG)
#define MOST_ASIDE_RAD (60.0 * LR_DEG)
#define FLARE_RAD (15.0 * LR_DEG)   /* past the frame's corner; common practice, no source */
#define TURNED_TO 0.5               /* cosine between a lamp's axis and the way to the lens, from which it shines into it */

/* By how much the lamp stays out of the glasses [rad]; < 0: it shows in them */
static double
clearance_rad (const LrPlaced  *person,
               LrVec3           lens_m,
               const LrEmitter *lamp)
{
  LrVec2 facing = lr_vec2_polar (person->facing_rad, cos (TIPPED_RAD));
  LrVec3 middle = lr_vec2_raise (facing, -sin (TIPPED_RAD)), normal;
  double away_m = lr_vec3_length (lr_vec3_sub (lamp->at_m, person->eyes_m));
  double size_m = lamp->shape == LR_EMITTER_POINT ? 0.0 : fmax (lamp->width_m, lamp->height_m);

  if (!lr_mirror_normal (lr_vec3_way (person->eyes_m, lens_m), lr_vec3_way (person->eyes_m, lamp->at_m), &normal))
    return LR_PI;

  /* half of the lamp's half width: the normal turns by half of what the mirrored way does */
  return acos (CLAMP (lr_vec3_dot (normal, middle), -1.0, 1.0)) - lr_spectacle_turn_rad (BASE_DIOPTRES, LENS_RADIUS_M)
         - 0.5 * atan (0.5 * size_m / fmax (away_m, 1e-3));
}

/* Whether it shows to no camera on the person */
static gboolean
is_out_of_glasses (const LrJudge   *judge,
                   const LrPlaced  *person,
                   const LrEmitter *lamp)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    if (lr_judge_camera (judge, i)->subject == person && clearance_rad (person, lr_judge_camera (judge, i)->projection.eye_m, lamp) <= 0.0)
      return FALSE;
  return TRUE;
}

/* By how much it has to be raised at least [m]; NAN: so high it does not go */
static double
find_raise_m (const LrJudge  *judge,
              const LrPlaced *person,
              const LrPlaced *light)
{
  LrEmitter lamp;

  for (double by_m = RAISE_STEP_M; by_m < MOST_RAISE_M && lr_light_emitter (judge->study, light, &lamp); by_m += RAISE_STEP_M)
    {
      lamp.at_m.z += by_m;
      if (is_out_of_glasses (judge, person, &lamp))
        return by_m;
    }
  return NAN;
}

static LrVec2
turn_about (LrVec2 point_m,
            LrVec2 about_m,
            double turn_rad)
{
  LrVec2 way = lr_vec2_sub (point_m, about_m);

  return lr_vec2_add (about_m, lr_vec2_polar (lr_vec2_angle_rad (way) + turn_rad, lr_vec2_length (way)));
}

/* The nearest place round the person, as far from them, where its stand has room. FALSE: none */
static gboolean
find_aside (const LrJudge  *judge,
            const LrPlaced *person,
            const LrPlaced *light,
            LrVec2         *to_m)
{
  for (double by_rad = ASIDE_STEP_RAD; by_rad < MOST_ASIDE_RAD; by_rad += ASIDE_STEP_RAD)
    for (int side = -1; side <= 1; side += 2)
      {
        LrVec2 there_m = turn_about (light->at_m, person->at_m, side * by_rad);
        LrEmitter lamp;

        if (!lr_light_emitter (judge->study, light, &lamp))
          return FALSE;
        lamp.at_m = lr_vec2_raise (turn_about (lr_vec3_flat (lamp.at_m), person->at_m, side * by_rad), lamp.at_m.z);
        if (is_out_of_glasses (judge, person, &lamp)
            && lr_study_is_clear (judge->study, light, there_m, judge->limits[LR_LIMIT_OVERLAP]))
          {
            *to_m = there_m;
            return TRUE;
          }
      }
  return FALSE;
}

/* What would take it out of the glasses: higher, or aside */
static void
say_shows (LrJudge        *judge,
           LrRemark       *remark,
           const LrPlaced *light,
           const LrPlaced *person,
           const LrPlaced *camera)
{
  const char *name = lr_say_name (judge, light), *subject = lr_say_name (judge, person), *seen_from = lr_say_name (judge, camera);
  double raise_m = find_raise_m (judge, person, light);
  LrVec2 to_m = light->at_m;
  gboolean has_aside = find_aside (judge, person, light, &to_m);
  const char *raise = isfinite (raise_m) ? lr_say_length (judge, raise_m) : NULL;
  const char *aside = lr_say_length (judge, lr_vec2_distance (light->at_m, to_m));

  if (raise != NULL && has_aside)
    /* Translators: a lamp, whose glasses, a camera, two lengths */
    lr_remark_say (remark,
                   _("%s is likely to show in %s’s glasses, seen from %s, unless it hangs <b>%s</b> higher or stands <b>%s</b> aside."),
                   name, subject, seen_from, raise, aside);
  else if (raise != NULL)
    lr_remark_say (remark, _("%s is likely to show in %s’s glasses, seen from %s, unless it hangs <b>%s</b> higher."), name, subject,
                   seen_from, raise);
  else if (has_aside)
    lr_remark_say (remark, _("%s is likely to show in %s’s glasses, seen from %s, unless it stands <b>%s</b> aside."), name, subject,
                   seen_from, aside);
  else
    /* Translators: a lamp, whose glasses, a camera, a length, degrees round the person */
    lr_remark_say (remark, _("%s is likely to show in %s’s glasses, seen from %s, and up to <b>%s</b> higher or <b>%s</b> aside as well: "
                             "tip the frame down."),
                   name, subject, seen_from, lr_say_length (judge, MOST_RAISE_M), lr_say_angle (judge, MOST_ASIDE_RAD));

  if (raise != NULL)
    {
      double height_m = 0.01 * round (100.0 * (light->item->light.lamp_height_m + raise_m));
      const char *height = lr_say_length (judge, height_m);
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_change (remedy, light->item, "lamp-height-mm", height_m);
      lr_remedy_say (remedy, height, _("Raise %s to <b>%s</b>, or tip the frame down."), name, height);
      lr_judge_offer (judge, remark, remedy);
    }
  if (has_aside)
    lr_judge_offer_move (judge, remark, light, to_m, &person->at_m, NULL);
}

static void
judge_glasses (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrPlaced        *light,
               const LrEmitter       *lamp)
{
  double clear_rad = clearance_rad (camera->subject, camera->projection.eye_m, lamp);
  LrGrade grade = clear_rad <= 0.0 ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_GLARE, grade, light, camera->placed);
  const char *name, *subject;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, light);
  subject = lr_say_name (judge, camera->subject);
  remark->value = clear_rad;
  remark->limit = 0.0;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_line (remark, light->at_m, camera->subject->at_m, NULL);
  lr_remark_mark_line (remark, camera->subject->at_m, camera->placed->at_m, NULL);
  if (grade == LR_GRADE_FINE)
    {
      lr_remark_say (remark, _("%s stays <b>%s</b> clear of %s’s glasses, seen from %s."), name, lr_say_angle (judge, clear_rad), subject,
                     lr_say_name (judge, camera->placed));
      return;
    }

  say_shows (judge, remark, light, camera->subject, camera->placed);
}

/* From the axis to the frame's corner */
static double
corner_rad (const LrCameraReading *camera)
{
  return atan (hypot (camera->projection.half_width, camera->projection.half_height));
}

static void
judge_flare (LrJudge               *judge,
             const LrCameraReading *camera,
             const LrPlaced        *light,
             const LrEmitter       *lamp,
             const LrLightShade    *shade)
{
  LrVec3 to_lamp = lr_vec3_way (camera->projection.eye_m, lamp->at_m);
  double off_rad = acos (CLAMP (lr_vec3_dot (to_lamp, camera->projection.forward), -1.0, 1.0)), past_rad = off_rad - corner_rad (camera);
  LrRemark *remark;

  /* what is in the frame is told by others, and a lamp that looks away or is far aside does not flare */
  if (past_rad <= 0.0 || past_rad > FLARE_RAD || lr_vec3_dot (lamp->axis, to_lamp) > -TURNED_TO
      || !lr_light_shade_is_clear (shade, camera->projection.eye_m, lamp->at_m, NULL))
    return;

  remark = lr_judge_add (judge, LR_CHECK_FLARE, LR_GRADE_MIND, light, camera->placed);
  if (remark == NULL)
    return;

  remark->value = past_rad;
  remark->limit = FLARE_RAD;
  lr_remark_mark_line (remark, light->at_m, camera->placed->at_m, NULL);
  lr_remark_say (remark, _("%s shines into the lens of %s from <b>%s</b> outside its picture and may veil it: shade the lens with a flag."),
                 lr_say_name (judge, light), lr_say_name (judge, camera->placed), lr_say_angle (judge, past_rad));
}

/**
 * lr_judge_glare:
 * @judge: a judge
 *
 * Lamps in the glasses of who is filmed, and lamps that shine into a lens from beside its picture.
 */
void
lr_judge_glare (LrJudge *judge)
{
  g_autoptr (LrLightShade) shade = lr_light_shade_new (judge->study);

  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *light = &g_array_index (judge->study->placed, LrPlaced, i);
      LrEmitter lamp;

      if (light->item->kind != LR_ITEM_LIGHT || !lr_light_emitter (judge->study, light, &lamp))
        continue;
      for (guint j = 0; j < judge->study->cameras->len; j++)
        {
          const LrCameraReading *camera = lr_judge_camera (judge, j);

          if (camera->has_subject && camera->subject->item->person.has_glasses && !lr_judge_is_cutaway (judge, camera)
              && lr_vec3_dot (lamp.axis, lr_vec3_sub (camera->subject->eyes_m, lamp.at_m)) > 0.0)
            judge_glasses (judge, camera, light, &lamp);
          judge_flare (judge, camera, light, &lamp, shade);
        }
    }
}
