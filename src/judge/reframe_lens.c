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

#define ZOOM_STEP 1.04     /* a notch of the wheel */
#define CLOSE 1.001        /**
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
 * @nearest_m: (out): the nearest focus of the lens that it takes [m]
 *
 * A lens that is not in the kit focuses no nearer than four times its focal length, where the image is a third of life size.
 *
 * Returns: whether the focus is nearer
 */
gboolean
lr_reframing_is_too_near (const LrReframing *self,
                          double            *nearest_m)
{
  const LrKitEntry *entry = self->reframe->lens != NULL ? lr_plan_find_kit (self->study->plan, self->reframe->lens)
                                                        : lr_reframing_mounted (self);

  *nearest_m = fmax (entry != NULL ? entry->item->lens.nearest_focus_m : 0.0, 4.0 * self->now->focal_m);
  return self->now->focus_m < *nearest_m;
}

/* In the van, or on this camera */
static gboolean
is_at_hand (const LrReframing *self,
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

static const LrKitEntry *
find_lens (const LrReframing *self,
           double             effective_m,
           gboolean           may_be_shorter)
{
  const LrKitEntry *mounted = lr_reframing_mounted (self), *best = NULL;
  double best_miss = HUGE_VAL;

  for (guint i = 0; i < self->study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (self->study->plan->kit, i);
      double miss;

      if (!is_at_hand (self, entry))
        continue;
      miss = miss_of (&entry->item->lens, effective_m);
      if (!may_be_shorter && miss < -1e-3)
        continue;
      miss = fabs (miss);
      if (miss < best_miss - 1e-6 || (entry == mounted && miss < best_miss + 1e-6))
        {
          best = entry;
          best_miss = miss;
        }
    }
  return best;
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
  return find_lens (self, effective_m, TRUE);
}

/**
 * lr_reframing_longer_lens:
 * @self: a wish under way
 * @effective_m: effective focal length [m], > 0
 *
 * Returns: (transfer none) (nullable): the lens at hand that comes nearest to it and is not shorter
 */
const LrKitEntry *
lr_reframing_longer_lens (const LrReframing *self,
                          double             effective_m)
{
  return find_lens (self, effective_m, FALSE);
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

/* "85 mm lens", and of a zoom which end */
static char *
lens_title (const LrReframing *self,
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
  title = lens_title (&self, entry, focal_m);
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
  else if (!is_at_hand (&self, entry))
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
  title = lens_title (&self, entry, self.now->item->camera.focal_m);
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
      double focal_m = is_at_hand (self, entry) ? next_focal_m (&entry->item->lens, now_m, is_longer) : 0.0;
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
  lr_reframing_try (self);
  title = lens_title (self, entry, self->now->item->camera.focal_m);
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
  lr_reframing_try (&self);
  end = lr_reframing_say_focal (&self, wanted_m);
  if (fabs (wanted_m - focal_m) < 1e-7)
    return lr_reframing_end (&self, FALSE, g_strdup_printf (_("The lens ends at %s."), end), NULL);
  return lr_reframing_end (&self, TRUE, g_strdup_printf (_("Zoom to %s"), end), NULL);
}
