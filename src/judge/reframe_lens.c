/* reframe_lens.c - the lenses of the kit, and which of them can do what is wished
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The optic between lens and body multiplies what is marked on the ring: what is wished is effective, what is set is marked.
 */

#include "config.h"

#include "reframe_private.h"

#include "prop_text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define UNKNOWN_NEAREST_F (16.0 / 3.0) /* in focal lengths, of a lens that is not in the kit: a third of life size */

/**
 * lr_lens_is_prime:
 * @lens: a lens
 *
 * Returns: whether it has one focal length
 */
gboolean
lr_lens_is_prime (const LrLens *lens)
{
  return lens->focal_max_m - lens->focal_min_m < 1e-6;
}

/**
 * lr_reframing_mounted:
 * @self: a wish under way
 *
 * Returns: (transfer none) (nullable): the lens of the kit that is on the camera as it is
 */
const LrKitEntry *
lr_reframing_mounted (const LrReframing *self)
{
  const LrKitEntry *entry = lr_plan_find_kit (self->study->plan, self->camera->item->camera.lens);

  return entry != NULL && entry->item->kind == LR_ITEM_LENS ? entry : NULL;
}

/**
 * lr_reframing_is_too_near:
 * @self: a wish that was tried
 * @nearest_m: (out): the nearest focus of the lens that it takes, from the sensor plane [m]
 *
 * A lens that is not in the kit is taken to focus as near as a third of life size, where the sensor plane is
 * `f (1 + m)^2 / m` from the subject, 16/3 f.
 *
 * Source: thin lens; the third is common practice, no source.
 *
 * Returns: whether the focus is nearer
 */
gboolean
lr_reframing_is_too_near (const LrReframing *self,
                          double            *nearest_m)
{
  const LrKitEntry *entry = self->reframe->lens != NULL ? lr_plan_find_kit (self->study->plan, self->reframe->lens)
                                                        : lr_reframing_mounted (self);

  *nearest_m = entry != NULL ? entry->item->lens.nearest_focus_m : UNKNOWN_NEAREST_F * self->now->focal_m;
  return self->now->focus_m < *nearest_m;
}

/**
 * lr_reframing_is_at_hand:
 * @self: a wish under way
 * @entry: of the kit
 *
 * Returns: whether it is a lens in the van, or the one on this camera
 */
gboolean
lr_reframing_is_at_hand (const LrReframing *self,
                         const LrKitEntry  *entry)
{
  return entry->item->kind == LR_ITEM_LENS
         && (entry == lr_reframing_mounted (self) || lr_plan_kit_left (self->study->plan, entry) > 0);
}

static double
nearest_focal_m (const LrLens *lens,
                 double        effective_m)
{
  return CLAMP (effective_m / lens->converter, lens->focal_min_m, lens->focal_max_m);
}

/* How far off the lens is at its nearest, as a ratio's logarithm */
static double
miss_of (const LrLens *lens,
         double        effective_m)
{
  return log (nearest_focal_m (lens, effective_m) * lens->converter / effective_m);
}

/**
 * lr_reframing_nearest_lens:
 * @self: a wish under way
 * @effective_m: effective focal length [m], > 0
 *
 * Returns: (transfer none) (nullable): the lens at hand that comes nearest to it, the mounted one first
 */
const LrKitEntry *
lr_reframing_nearest_lens (const LrReframing *self,
                           double             effective_m)
{
  const LrKitEntry *mounted = lr_reframing_mounted (self), *best = NULL;
  double best_miss = HUGE_VAL;

  for (guint i = 0; i < self->study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (self->study->plan->kit, i);
      double miss;

      if (!lr_reframing_is_at_hand (self, entry))
        continue;
      miss = fabs (miss_of (&entry->item->lens, effective_m));
      if (miss < best_miss - 1e-6 || (entry == mounted && miss < best_miss + 1e-6))
        {
          best = entry;
          best_miss = miss;
        }
    }
  return best;
}

/**
 * lr_reframing_mount:
 * @self: a wish under way
 * @entry: a lens of the kit
 * @effective_m: effective focal length [m], > 0
 *
 * Changes to that lens, set as near to the effective focal length as it goes.
 */
void
lr_reframing_mount (LrReframing      *self,
                    const LrKitEntry *entry,
                    double            effective_m)
{
  const LrLens *lens = &entry->item->lens;

  g_clear_pointer (&self->reframe->lens, g_free);
  if (entry != lr_reframing_mounted (self))
    self->reframe->lens = g_strdup (entry->item->id);
  lr_reframing_put (self, "focal-mm", nearest_focal_m (lens, effective_m));
  lr_reframing_put (self, "f-number", CLAMP (self->camera->item->camera.f_number, lens->f_number_min, lens->f_number_max));
}

/**
 * lr_reframing_say_focal:
 * @self: a wish under way
 * @focal_m: as marked on the ring [m]
 *
 * Returns: (transfer full): "85 mm"
 */
char *
lr_reframing_say_focal (const LrReframing *self,
                        double             focal_m)
{
  return lr_prop_text_format (lr_item_find_prop (LR_ITEM_CAMERA, "focal-mm"), focal_m, self->units);
}

/**
 * lr_reframing_say_length:
 * @self: a wish under way
 * @length_m: [m]
 *
 * Returns: (transfer full): "2.14 m"
 */
char *
lr_reframing_say_length (const LrReframing *self,
                         double             length_m)
{
  return lr_length_format (length_m, self->units);
}

/**
 * lr_reframing_say_name:
 * @self: a wish under way
 *
 * Returns: (transfer full): "A", or "Camera A" without a tag
 */
char *
lr_reframing_say_name (const LrReframing *self)
{
  const LrItem *item = self->camera->item;

  return item->tag[0] != '\0' ? g_strdup (item->tag) : lr_item_title (item);
}

/**
 * lr_reframing_end_no_subject:
 * @self: a wish under way
 *
 * Returns: (transfer full): that there is nobody to frame
 */
LrReframe *
lr_reframing_end_no_subject (LrReframing *self)
{
  g_autofree char *name = lr_reframing_say_name (self);

  return lr_reframing_end (self, FALSE, g_strdup_printf (_("%s has nobody to frame: place a person first."), name), NULL);
}

/**
 * lr_reframing_say_behind:
 * @self: a wish under way
 *
 * Returns: (transfer full): what is behind the subject in the last try, "west wall"
 */
char *
lr_reframing_say_behind (const LrReframing *self)
{
  const LrCameraReading *now = self->now;

  switch (now->behind)
    {
    case LR_BEHIND_WALL:
      return g_strdup (lr_wall_title (self->study->setup->room, now->behind_wall));
    case LR_BEHIND_ITEM:
      return lr_item_title (now->behind_item->item);
    case LR_BEHIND_FLOOR:
      return g_strdup (_("floor"));
    case LR_BEHIND_CEILING:
      return g_strdup (_("ceiling"));
    case LR_BEHIND_NOTHING:
    default:
      return g_strdup (_("background"));
    }
}

/**
 * lr_reframing_say_lens:
 * @self: a wish under way
 * @entry: a lens of the kit
 * @focal_m: as marked on the ring [m]
 *
 * Returns: (transfer full): "85 mm lens", and of a zoom what it is set to
 */
char *
lr_reframing_say_lens (const LrReframing *self,
                       const LrKitEntry  *entry,
                       double             focal_m)
{
  g_autofree char *focal = lr_reframing_say_focal (self, focal_m);

  if (lr_lens_is_prime (&entry->item->lens))
    return g_strdup (entry->title[0] != '\0' ? entry->title : focal);
  /* Translators: a zoom lens and the focal length that it is set to */
  return g_strdup_printf (_("%s at %s"), entry->title, focal);
}

static LrReframe *
lens_row (const LrStudy         *study,
          const LrCameraReading *camera,
          const LrKitEntry      *entry,
          double                 focal_m,
          LrUnits                units)
{
  LrReframing self;
  g_autofree char *obstacle = NULL, *distance = NULL, *name = NULL, *title = NULL, *nearest = NULL;
  gboolean is_solved, is_near;
  double nearest_m = 0.0;
  LrReframe *row;

  lr_reframing_start (&self, study, camera, units);
  title = lr_reframing_say_lens (&self, entry, focal_m);
  name = lr_reframing_say_name (&self);
  lr_reframing_mount (&self, entry, focal_m * entry->item->lens.converter);
  lr_reframing_aim (&self, camera->eyes_across, camera->eyes_down);
  lr_reframing_focus (&self);
  is_solved = lr_reframing_by_place (&self, LR_SIZE_FIELD, camera->field_w_m);
  obstacle = is_solved ? lr_reframing_obstacle (&self) : NULL;
  is_near = is_solved && lr_reframing_is_too_near (&self, &nearest_m);
  distance = lr_reframing_say_length (&self, self.now->distance_m);
  nearest = lr_reframing_say_length (&self, nearest_m);

  if (!is_solved)
    row = lr_reframing_end (&self, FALSE, g_strdup_printf (_("The %s has no place for this framing."), title), NULL);
  else if (!lr_reframing_is_at_hand (&self, entry))
    row = lr_reframing_end (&self, FALSE, g_strdup_printf (_("The %s is on another camera."), title), NULL);
  else if (obstacle != NULL)
    row = lr_reframing_end (&self, FALSE, g_strdup_printf (_("The %s needs %s: %s is in the way."), title, distance, obstacle), NULL);
  else if (is_near)
    row = lr_reframing_end (&self, FALSE, g_strdup_printf (_("The %s needs %s, but focuses no nearer than %s."), title, distance, nearest), NULL);
  else
    row = lr_reframing_end (&self, TRUE, g_strdup_printf (_("%s takes the %s and stands at %s."), name, title, distance), NULL);
  row->title = g_steal_pointer (&title);
  return row;
}

static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const LrReframe *row_a = *(LrReframe *const *) a, *row_b = *(LrReframe *const *) b;

  return (row_a->focal_m > row_b->focal_m) - (row_a->focal_m < row_b->focal_m);
}

/**
 * lr_reframe_lenses:
 * @study: a study
 * @camera: one of its cameras
 * @units: of the sentences
 *
 * The field at the eyes and their place in the frame stay; each lens asks for its own distance. A zoom has a row for each
 * end. Empty if the eyes are not in the frame.
 *
 * Returns: (transfer full) (element-type LrReframe): a row for each lens of the kit, by focal length
 */
GPtrArray *
lr_reframe_lenses (const LrStudy         *study,
                   const LrCameraReading *camera,
                   LrUnits                units)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_reframe_free);

  if (!lr_judge_has_eyes (camera))
    return rows;

  for (guint i = 0; i < study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (study->plan->kit, i);

      if (entry->item->kind != LR_ITEM_LENS)
        continue;
      g_ptr_array_add (rows, lens_row (study, camera, entry, entry->item->lens.focal_min_m, units));
      if (!lr_lens_is_prime (&entry->item->lens))
        g_ptr_array_add (rows, lens_row (study, camera, entry, entry->item->lens.focal_max_m, units));
    }
  g_ptr_array_sort (rows, compare_rows);
  return rows;
}
