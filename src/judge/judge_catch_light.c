/* judge_catch_light.c - whether a light shows in the eyes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An eye is a small round mirror between lids. A lamp counts by its middle; what shows by less than its middle may show as well.
 */

#include "config.h"

#include "judge_parts.h"

#include "light_sources.h"
#include "mirror.h"

#include <glib/gi18n-lib.h>

#define LOWER_STEP_M 0.05
#define LEAST_LX 1.0 /* on the eye: what gives less is not seen in it */

/* How the subject's eye is looked at, and where it looks */
typedef struct
{
  const LrPlaced *person;
  LrVec3 gaze, to_lens;
  const LrLightShade *shade;
} Eye;

static Eye
get_eye (const LrJudge         *judge,
         const LrCameraReading *camera,
         const LrLightShade    *shade)
{
  const LrPlaced *person = camera->subject, *other = lr_study_find_placed (judge->study, person->item->person.looks_at);
  LrVec3 ahead = lr_vec2_raise (lr_vec2_polar (person->facing_rad, 1.0), 0.0);

  return (Eye) { person, other != NULL && other->item->kind == LR_ITEM_PERSON ? lr_vec3_way (person->eyes_m, other->eyes_m) : ahead,
                 lr_vec3_way (person->eyes_m, camera->projection.eye_m), shade };
}

static gboolean
shows (const Eye       *eye,
       const LrEmitter *lamp)
{
  LrVec3 eyes_m = eye->person->eyes_m, way = lr_emitter_way (lamp, eyes_m);

  return lr_eye_mirrors (eye->gaze, eye->to_lens, way) && lr_light_source_lx (lamp, eye->shade, eyes_m, way, eye->person, NULL) >= LEAST_LX;
}

/* The key, a step under the greatest height at which it shows, for its head comes forward as it tips less; NAN: none */
static double
find_height_m (const LrJudge  *judge,
               const Eye      *eye,
               const LrPlaced *key)
{
  LrEmitter lamp;

  if (!lr_light_emitter (judge->study, key, &lamp))
    return NAN;

  for (double by_m = LOWER_STEP_M; lamp.at_m.z - LOWER_STEP_M > eye->person->eyes_m.z; by_m += LOWER_STEP_M)
    {
      lamp.at_m.z -= LOWER_STEP_M;
      if (shows (eye, &lamp))
        return 0.01 * round (100.0 * (key->item->light.lamp_height_m - by_m - LOWER_STEP_M));
    }
  return NAN;
}

static void
say_dull (LrJudge               *judge,
          LrRemark              *remark,
          const LrCameraReading *camera,
          const Eye             *eye,
          guint                  n_lights)
{
  const LrFaceLight *face = lr_light_levels_face (judge->levels, eye->person->item->id);
  /* the levels are of a study of their own */
  const LrPlaced *key = face != NULL && face->key != NULL ? lr_study_find_placed (judge->study, face->key->item->id) : NULL;
  double height_m = key != NULL && key->item->kind == LR_ITEM_LIGHT ? find_height_m (judge, eye, key) : (double) NAN;

  /* Translators: how many lights, whose eyes, a camera */
  lr_remark_say (remark, ngettext ("The <b>%u</b> light does not show in %s’s eyes, seen from %s: they may look dull.",
                                   "None of the <b>%u</b> lights shows in %s’s eyes, seen from %s: they may look dull.", n_lights),
                 n_lights, lr_say_name (judge, eye->person), lr_say_name (judge, camera->placed));
  if (isfinite (height_m))
    {
      const char *name = lr_say_name (judge, key), *height = lr_say_length (judge, height_m);
      LrRemedy *remedy = lr_remedy_new ();

      lr_remark_mark_line (remark, key->at_m, eye->person->at_m, NULL);
      lr_remedy_change (remedy, key->item, "lamp-height-mm", height_m);
      lr_remedy_say (remedy, height, _("Lower %s to <b>%s</b>."), name, height);
      lr_judge_offer (judge, remark, remedy);
    }
}

/* "L1, window 2": what shows, each marked; (transfer full) */
static char *
name_all (LrJudge         *judge,
          LrRemark        *remark,
          const Eye       *eye,
          const GPtrArray *caught)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < caught->len; i++)
    {
      const LrPlaced *light = g_ptr_array_index (caught, i);

      g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", lr_say_name (judge, light));
      lr_remark_mark_line (remark, light->at_m, eye->person->at_m, NULL);
    }
  return g_string_free (names, FALSE);
}

static void
judge_eye (LrJudge               *judge,
           const LrCameraReading *camera,
           const GArray          *sources,
           const LrLightShade    *shade)
{
  const Eye eye = get_eye (judge, camera, shade);
  g_autoptr (GPtrArray) caught = g_ptr_array_new ();
  g_autofree char *names = NULL;
  LrRemark *remark;

  for (guint i = 0; i < sources->len; i++)
    {
      const LrLightSource *source = &g_array_index (sources, LrLightSource, i);

      if (shows (&eye, &source->emitter))
        g_ptr_array_add (caught, (gpointer) source->placed);
    }

  remark = lr_judge_add (judge, LR_CHECK_CATCH_LIGHT, caught->len > 0 ? LR_GRADE_FINE : LR_GRADE_MIND, eye.person, camera->placed);
  if (remark == NULL)
    return;

  remark->value = caught->len;
  lr_remark_mark_line (remark, eye.person->at_m, camera->placed->at_m, NULL);
  if (caught->len == 0)
    {
      say_dull (judge, remark, camera, &eye, sources->len);
      return;
    }
  names = name_all (judge, remark, &eye, caught);
  /* Translators: a count of lights out of another, whose eyes, a camera, names of the lights */
  lr_remark_say (remark, ngettext ("<b>%u</b> of <b>%u</b> lights shows in %s’s eyes, seen from %s: %s.",
                                   "<b>%u</b> of <b>%u</b> lights show in %s’s eyes, seen from %s: %s.", caught->len),
                 caught->len, sources->len, lr_say_name (judge, eye.person), lr_say_name (judge, camera->placed), names);
}

/**
 * lr_judge_catch_light:
 * @judge: a judge
 *
 * Nothing is said of a plan without lights.
 */
void
lr_judge_catch_light (LrJudge *judge)
{
  g_autoptr (LrLightShade) shade = NULL;
  g_autoptr (GArray) sources = NULL;

  if (judge->levels == NULL || lr_light_levels_n_sources (judge->levels) == 0)
    return;

  shade = lr_light_shade_new (judge->study);
  sources = lr_light_sources (judge->study);
  for (guint i = sources->len; i-- > 0;) /* its window counts, once */
    if (g_array_index (sources, LrLightSource, i).is_sun)
      g_array_remove_index (sources, i);
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->has_subject && !lr_judge_is_cutaway (judge, camera))
        judge_eye (judge, camera, sources, shade);
    }
}
