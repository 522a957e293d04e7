/* reframe_solve.c - place and focal length by trial: change, study, correct
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With the magnification m the distance of a subject from the lens is f (1 + m) / m, so what the frame holds there goes
 * nearly as the distance and nearly against the focal length. The thin lens, the tilt and the whole millimetres of the file
 * make the difference, and the study knows them all: each round corrects by the ratio of wanted to read, which leaves about
 * m of the error. What is promised has then been read from the plan that fulfils it.
 */

#include "config.h"

#include "reframe_private.h"

#include <math.h>
#include <string.h>

#define MAX_ROUNDS 24
#define PLACE_M 0.0006      /* places are whole millimetres */
#define FOCAL_STEP_M 1e-4   /* a ring is set to a tenth of a millimetre at best */
#define LEAST_FOCAL_M 0.001
#define MOST_FOCAL_M 2.0

static void
clear_change (gpointer change)
{
  g_free ((char *) ((LrChange *) change)->id);
}

/**
 * lr_reframing_start:
 * @self: a wish under way
 * @study: a study
 * @camera: one of its cameras
 * @units: of the sentences
 *
 * Begins with the camera as it is; lr_reframing_end() or lr_reframing_clear() ends it.
 */
void
lr_reframing_start (LrReframing           *self,
                    const LrStudy         *study,
                    const LrCameraReading *camera,
                    LrUnits                units)
{
  LrReframe *reframe = g_new0 (LrReframe, 1);

  reframe->id = g_strdup (camera->item->id);
  reframe->changes = g_array_new (FALSE, FALSE, sizeof (LrChange));
  g_array_set_clear_func (reframe->changes, clear_change);
  *self = (LrReframing) { study, camera, units, reframe, NULL, camera };
}

/**
 * lr_reframing_copy:
 * @self: a wish under way
 * @other: another, tried or not
 *
 * Begins with the changes of another, which goes on.
 */
void
lr_reframing_copy (LrReframing       *self,
                   const LrReframing *other)
{
  lr_reframing_start (self, other->study, other->camera, other->units);
  self->reframe->lens = g_strdup (other->reframe->lens);
  self->reframe->aims_at = g_strdup (other->reframe->aims_at);
  for (guint i = 0; i < other->reframe->changes->len; i++)
    {
      const LrChange *change = &g_array_index (other->reframe->changes, LrChange, i);

      lr_reframing_put (self, change->key, change->value);
    }
}

static void
forget_trial (LrReframing *self)
{
  self->now = self->camera;
  g_clear_pointer (&self->trial, lr_study_free);
}

/**
 * lr_reframing_clear:
 * @self: a wish under way
 *
 * Drops it.
 */
void
lr_reframing_clear (LrReframing *self)
{
  forget_trial (self);
  g_clear_pointer (&self->reframe, lr_reframe_free);
}

static gboolean
changes_nothing (const LrReframing *self)
{
  return self->trial != NULL && lr_plan_equal (self->trial->plan, self->study->plan);
}

/**
 * lr_reframing_end:
 * @self: a wish under way
 * @is_possible: whether it can be done
 * @sentence: (transfer full): what it does, or why it cannot be
 * @instead: (transfer full) (nullable): what comes nearest
 *
 * Ends it with the figures of the last try.
 *
 * Returns: (transfer full): what came of it
 */
LrReframe *
lr_reframing_end (LrReframing *self,
                  gboolean     is_possible,
                  char        *sentence,
                  LrReframe   *instead)
{
  LrReframe *reframe = g_steal_pointer (&self->reframe);
  const LrCameraReading *now = self->now;

  reframe->is_possible = is_possible;
  reframe->is_as_now = is_possible && changes_nothing (self);
  reframe->sentence = sentence;
  reframe->instead = instead;
  reframe->distance_m = now->distance_m;
  reframe->focal_m = now->item->camera.focal_m;
  reframe->field_w_m = now->field_w_m;
  reframe->behind_field_w_m = now->behind_field_w_m;
  reframe->sharp_near_m = now->sharp_near_m;
  reframe->sharp_far_m = now->sharp_far_m;
  reframe->shot = now->framing.shot;
  forget_trial (self);
  return reframe;
}

/**
 * lr_reframing_put:
 * @self: a wish under way
 * @key: a property of a camera, a literal
 * @value: in inside units
 *
 * Changes a property of the camera; a second change of the same takes the place of the first.
 */
void
lr_reframing_put (LrReframing *self,
                  const char  *key,
                  double       value)
{
  GArray *changes = self->reframe->changes;
  LrChange change = { NULL, key, value };

  for (guint i = 0; i < changes->len; i++)
    if (g_str_equal (g_array_index (changes, LrChange, i).key, key))
      {
        g_array_index (changes, LrChange, i).value = value;
        return;
      }

  change.id = g_strdup (self->reframe->id);
  g_array_append_val (changes, change);
}

/**
 * lr_reframing_get:
 * @self: a wish under way
 * @key: a property of a camera, a literal
 *
 * Returns: the property as it is with the changes so far, in inside units
 */
double
lr_reframing_get (const LrReframing *self,
                  const char        *key)
{
  const GArray *changes = self->reframe->changes;

  for (guint i = 0; i < changes->len; i++)
    if (g_str_equal (g_array_index (changes, LrChange, i).key, key))
      return g_array_index (changes, LrChange, i).value;

  return lr_prop_get_number (lr_item_find_prop (LR_ITEM_CAMERA, key), self->camera->item);
}

/**
 * lr_reframing_aim:
 * @self: a wish under way
 * @across: share of the frame's width
 * @down: share of the frame's height
 *
 * Aims the camera at its subject, whose eyes come to that place of the frame.
 */
void
lr_reframing_aim (LrReframing *self,
                  double       across,
                  double       down)
{
  const LrItem *subject = self->camera->subject->item;

  if (!g_str_equal (self->camera->item->camera.aims_at, subject->id))
    {
      g_free (self->reframe->aims_at);
      self->reframe->aims_at = g_strdup (subject->id);
    }
  lr_reframing_put (self, "across-pct", CLAMP (across, 0.0, 1.0));
  lr_reframing_put (self, "down-pct", CLAMP (down, 0.0, 1.0));
}

/**
 * lr_reframing_focus:
 * @self: a wish under way
 *
 * Who moves a camera that was sharp on the eyes, focuses on them again; a focus that was elsewhere is meant to be there.
 */
void
lr_reframing_focus (LrReframing *self)
{
  const LrCameraReading *camera = self->camera;

  if (camera->item->camera.focus_m > 0.0
      && camera->eyes_depth_m > camera->sharp_near_m && camera->eyes_depth_m < camera->sharp_far_m)
    lr_reframing_put (self, "focus-mm", 0.0);
}

/**
 * lr_reframing_try:
 * @self: a wish under way
 *
 * Reads what the camera sees with the changes so far.
 *
 * Returns: %FALSE: the plan refuses them, or nobody is before the camera then
 */
gboolean
lr_reframing_try (LrReframing *self)
{
  g_autoptr (LrPlan) plan = lr_reframe_apply (self->reframe, self->study->plan, NULL);

  forget_trial (self);
  if (plan == NULL)
    return FALSE;

  self->trial = lr_study_new_trial (plan);
  self->now = lr_study_find_camera (self->trial, self->reframe->id);
  return self->now != NULL && self->now->has_subject;
}

/**
 * lr_reframing_place:
 * @self: a wish under way
 * @distance_m: from the sensor plane to the eyes [m]
 *
 * Along the line in plan from the eyes to where the tripod stands, at the height of the lens. Nearer than the lens is high over the
 * eyes there is no such place: then it is as near as can be.
 */
void
lr_reframing_place (LrReframing *self,
                    double       distance_m)
{
  LrVec2 eyes_m = lr_vec3_flat (self->now->subject->eyes_m);
  LrVec2 way = lr_vec2_sub (self->camera->placed->at_m, eyes_m);
  double up_m = self->now->sensor_m.z - self->now->subject->eyes_m.z;
  double level_m = sqrt (fmax (distance_m * distance_m - up_m * up_m, 1e-4));
  LrVec2 to_m = lr_vec2_along (eyes_m, way, level_m / fmax (lr_vec2_length (way), 1e-6));

  lr_reframing_put (self, "x-mm", 0.001 * round (1000.0 * to_m.x));
  lr_reframing_put (self, "y-mm", 0.001 * round (1000.0 * to_m.y));
}

static double
size_now_m (const LrReframing *self,
            LrSizeOf           size)
{
  const LrCameraReading *now = self->now;

  return size == LR_SIZE_FIELD ? now->field_w_m : now->subject->eyes_m.z - now->framing.bottom_m;
}

static gboolean
is_usable (double size_m)
{
  return isfinite (size_m) && size_m > 1e-3;
}

/**
 * lr_reframing_by_place:
 * @self: a wish under way
 * @size: which size is meant
 * @wanted_m: of it [m], > 0
 *
 * Finds the place at which the frame holds so much; the lens stays.
 *
 * Returns: %FALSE: there is none
 */
gboolean
lr_reframing_by_place (LrReframing *self,
                       LrSizeOf     size,
                       double       wanted_m)
{
  for (int i = 0; i < MAX_ROUNDS; i++)
    {
      LrVec2 at_m;
      double size_m;

      if (!lr_reframing_try (self))
        return FALSE;
      at_m = self->now->placed->at_m;
      size_m = size_now_m (self, size);
      if (!is_usable (size_m))
        return FALSE;

      lr_reframing_place (self, self->now->distance_m * (wanted_m / size_m));
      at_m = lr_vec2_sub (at_m, lr_vec2 (lr_reframing_get (self, "x-mm"), lr_reframing_get (self, "y-mm")));
      if (lr_vec2_length (at_m) < PLACE_M)
        return TRUE;
    }
  return lr_reframing_try (self) && fabs (size_now_m (self, size) / wanted_m - 1.0) < 0.01;
}

static void
put_focal (LrReframing *self,
           double       focal_m)
{
  lr_reframing_put (self, "focal-mm", CLAMP (FOCAL_STEP_M * round (focal_m / FOCAL_STEP_M), LEAST_FOCAL_M, MOST_FOCAL_M));
}

/**
 * lr_reframing_is_at_end:
 * @self: a wish that was tried
 *
 * Returns: whether its focal length is the longest or the shortest that there is
 */
gboolean
lr_reframing_is_at_end (const LrReframing *self)
{
  double focal_m = lr_reframing_get (self, "focal-mm");

  return focal_m <= LEAST_FOCAL_M || focal_m >= MOST_FOCAL_M;
}

/**
 * lr_reframing_by_lens:
 * @self: a wish under way
 * @size: which size is meant
 * @wanted_m: of it [m], > 0
 *
 * Finds the focal length with which the frame holds so much, whatever the lens; the place stays.
 *
 * Returns: %FALSE: no lens has it
 */
gboolean
lr_reframing_by_lens (LrReframing *self,
                      LrSizeOf     size,
                      double       wanted_m)
{
  for (int i = 0; i < MAX_ROUNDS; i++)
    {
      double focal_m, size_m;

      if (!lr_reframing_try (self))
        return FALSE;
      size_m = size_now_m (self, size);
      if (!is_usable (size_m))
        return FALSE;

      focal_m = self->now->item->camera.focal_m;
      put_focal (self, focal_m * (size_m / wanted_m));
      if (fabs (lr_reframing_get (self, "focal-mm") - focal_m) < 0.5 * FOCAL_STEP_M)
        return !lr_reframing_is_at_end (self) || fabs (size_m / wanted_m - 1.0) < 0.01;
    }
  return lr_reframing_try (self) && fabs (size_now_m (self, size) / wanted_m - 1.0) < 0.01;
}

/**
 * lr_reframing_by_both:
 * @self: a wish under way
 * @field_w_m: width of the field at the eyes [m], > 0
 * @behind_field_w_m: width of the field at what is behind [m], > 0
 *
 * Finds place and focal length for a field at the eyes and a field behind; similar triangles give the distance of the lens,
 * lr_distance_for_background_m() by way of lr_camera_refit().
 *
 * Returns: %FALSE: there are none
 */
gboolean
lr_reframing_by_both (LrReframing *self,
                      double       field_w_m,
                      double       behind_field_w_m)
{
  for (int i = 0; i < MAX_ROUNDS; i++)
    {
      LrCameraReading wanted;
      LrVec2 off_m;
      LrRefit refit;
      double focal_m;

      if (!lr_reframing_try (self))
        return FALSE;
      wanted = *self->now;
      wanted.field_w_m = field_w_m;
      if (!lr_camera_refit (&wanted, behind_field_w_m, &refit))
        return FALSE;

      off_m = self->now->placed->at_m;
      focal_m = self->now->item->camera.focal_m;
      put_focal (self, focal_m * (self->now->field_w_m / field_w_m) * (refit.distance_m / self->now->distance_m));
      lr_reframing_place (self, refit.distance_m);
      off_m = lr_vec2_sub (off_m, lr_vec2 (lr_reframing_get (self, "x-mm"), lr_reframing_get (self, "y-mm")));
      if (lr_vec2_length (off_m) < PLACE_M && fabs (lr_reframing_get (self, "focal-mm") - focal_m) < 0.5 * FOCAL_STEP_M)
        return TRUE;
    }
  return lr_reframing_try (self) && fabs (self->now->behind_field_w_m / behind_field_w_m - 1.0) < 0.01;
}

/**
 * lr_reframe_apply:
 * @reframe: what is to be done
 * @plan: the plan that it was made for, or one since
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with it done
 */
LrPlan *
lr_reframe_apply (const LrReframe  *reframe,
                  const LrPlan     *plan,
                  GError          **error)
{
  g_autoptr (LrPlan) next = lr_plan_ref (plan);
  const struct { const char *key, *value; } texts[] = { { "lens", reframe->lens }, { "aims-at", reframe->aims_at } };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      LrPlan *changed;

      if (texts[i].value == NULL)
        continue;
      changed = lr_plan_change_text (next, reframe->id, texts[i].key, texts[i].value, error);
      if (changed == NULL)
        return NULL;
      lr_plan_unref (next);
      next = changed;
    }

  return lr_plan_change (next, (const LrChange *) (gpointer) reframe->changes->data, reframe->changes->len, error);
}

/**
 * lr_reframe_free:
 * @reframe: (transfer full) (nullable): what was to be done
 */
void
lr_reframe_free (LrReframe *reframe)
{
  if (reframe == NULL)
    return;

  g_free (reframe->id);
  g_free (reframe->lens);
  g_free (reframe->aims_at);
  g_free (reframe->sentence);
  g_free (reframe->title);
  g_array_unref (reframe->changes);
  lr_reframe_free (reframe->instead);
  g_free (reframe);
}
