/* placing_bring.c - bringing a thing into the room, and what it then looks and aims at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "placing.h"

#include "lead_laying.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

#define BOOM_AHEAD_M 0.35 /* of the capsule before the subject's head; common practice, no source */

static const LrRoomThing room_things[] = {
  { "person",      N_("Person"),      LR_ITEM_PERSON,      LR_ROLE_OTHER },
  { "chair",       N_("Chair"),       LR_ITEM_FURNITURE,   LR_FURNITURE_CHAIR },
  { "table",       N_("Table"),       LR_ITEM_FURNITURE,   LR_FURNITURE_TABLE },
  { "sofa",        N_("Sofa"),        LR_ITEM_FURNITURE,   LR_FURNITURE_SOFA },
  { "cabinet",     N_("Cabinet"),     LR_ITEM_FURNITURE,   LR_FURNITURE_CABINET },
  { "backdrop",    N_("Backdrop"),    LR_ITEM_PANEL,       LR_PANEL_BACKDROP },
  { "chest",       N_("Chest"),       LR_ITEM_FURNITURE,   LR_FURNITURE_CHEST },
  { "box",         N_("Box"),         LR_ITEM_FURNITURE,   LR_FURNITURE_BOX },
  { "cylinder",    N_("Cylinder"),    LR_ITEM_FURNITURE,   LR_FURNITURE_CYLINDER },
  { "door",        N_("Door"),        LR_ITEM_DOOR,        0 },
  { "window",      N_("Window"),      LR_ITEM_WINDOW,      0 },
  { "radiator",    N_("Radiator"),    LR_ITEM_FURNITURE,   LR_FURNITURE_RADIATOR },
  { "socket",      N_("Socket"),      LR_ITEM_SOCKET,      0 },
  { "house-light", N_("House light"), LR_ITEM_HOUSE_LIGHT, 0 },
  { "noise",       N_("Noise"),       LR_ITEM_NOISE,       0 },
};

/**
 * lr_room_things:
 * @n: (out): how many there are
 *
 * Returns: (transfer none): the things that any room may have
 */
const LrRoomThing *
lr_room_things (gsize *n)
{
  *n = G_N_ELEMENTS (room_things);
  return room_things;
}

/**
 * lr_room_thing_find:
 * @word: "chair"
 *
 * Returns: (transfer none) (nullable): the thing of that word
 */
const LrRoomThing *
lr_room_thing_find (const char *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (room_things); i++)
    if (g_str_equal (room_things[i].word, word))
      return &room_things[i];

  return NULL;
}

/* The first person is the subject, the second asks */
static int
missing_role (const LrSetup *setup)
{
  if (lr_setup_find_role (setup, LR_ROLE_SUBJECT) == NULL)
    return LR_ROLE_SUBJECT;
  if (lr_setup_find_role (setup, LR_ROLE_INTERVIEWER) == NULL)
    return LR_ROLE_INTERVIEWER;
  return LR_ROLE_OTHER;
}

/**
 * lr_room_thing_new:
 * @thing: a row of lr_room_things()
 * @setup: where it will stand: a person takes the role that is still missing there
 *
 * Returns: (transfer full): the item, in its usual size
 */
LrItem *
lr_room_thing_new (const LrRoomThing *thing,
                   const LrSetup     *setup)
{
  int form = thing->kind == LR_ITEM_PERSON ? missing_role (setup) : thing->form;

  return lr_item_new_usual (thing->kind, form, thing->word);
}

/* Takes @plan, gives the plan with the text changed; NULL stays NULL */
static LrPlan *
then_text (LrPlan      *plan,
           const char  *id,
           const char  *key,
           const char  *text,
           GError     **error)
{
  LrPlan *next = plan != NULL ? lr_plan_change_text (plan, id, key, text, error) : NULL;

  g_clear_pointer (&plan, lr_plan_unref);
  return next;
}

static LrPlan *
then_change (LrPlan         *plan,
             const LrChange *changes,
             gsize           n,
             GError        **error)
{
  LrPlan *next = plan != NULL ? lr_plan_change (plan, changes, n, error) : NULL;

  g_clear_pointer (&plan, lr_plan_unref);
  return next;
}

/* The eyes where they usually sit in the frame that the lens gives from there */
static LrPlan *
frame_camera (LrPlan      *plan,
              const char  *id,
              GError     **error)
{
  g_autoptr (LrStudy) study = plan != NULL ? lr_study_new_trial (plan) : NULL;
  const LrCameraReading *camera = study != NULL ? lr_study_find_camera (study, id) : NULL;
  LrChange change = { id, "down-pct", camera != NULL ? camera->eyes_rule : (double) NAN };

  return isfinite (change.value) ? then_change (plan, &change, 1, error) : plan;
}

/* Cameras that stood there before the subject came, and aim at nothing */
static LrPlan *
aim_cameras (LrPlan     *plan,
             const char *subject_id,
             GError    **error)
{
  g_autoptr (GPtrArray) items = g_ptr_array_copy (lr_plan_get_setup (plan)->items, (GCopyFunc) (void (*) (void)) lr_item_ref, NULL);

  g_ptr_array_set_free_func (items, (GDestroyNotify) lr_item_unref);
  for (guint i = 0; i < items->len && plan != NULL; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_CAMERA && item->camera.aims_at[0] == '\0')
        plan = frame_camera (then_text (plan, item->id, "aims-at", subject_id, error), item->id, error);
    }
  return plan;
}

/* Whoever looks at nobody looks at the other; cameras get a subject to aim at */
static LrPlan *
link_person (LrPlan       *plan,
             const LrItem *person,
             GError      **error)
{
  const LrSetup *setup = lr_plan_get_setup (plan);
  const LrItem *subject = lr_setup_find_role (setup, LR_ROLE_SUBJECT);
  const LrItem *interviewer = lr_setup_find_role (setup, LR_ROLE_INTERVIEWER);
  g_autofree char *subject_id = NULL, *interviewer_id = NULL;
  gboolean subject_looks, interviewer_looks;

  if (subject == NULL || (person != subject && person != interviewer))
    return plan;

  subject_id = g_strdup (subject->id);
  if (person == subject)
    plan = aim_cameras (plan, subject_id, error);
  if (plan == NULL || interviewer == NULL)
    return plan;

  interviewer_id = g_strdup (interviewer->id);
  subject_looks = subject->person.looks_at[0] != '\0';
  interviewer_looks = interviewer->person.looks_at[0] != '\0';
  if (!subject_looks)
    plan = then_text (plan, subject_id, "looks-at", interviewer_id, error);
  if (!interviewer_looks)
    plan = then_text (plan, interviewer_id, "looks-at", subject_id, error);
  return plan;
}

/* A boom's capsule hangs before the subject's head */
static LrPlan *
link_boom (LrPlan         *plan,
           const LrItem   *item,
           const LrPlaced *subject,
           GError        **error)
{
  LrVec2 tip_m = lr_vec2_along (subject->at_m, lr_vec2_polar (subject->facing_rad, 1.0), BOOM_AHEAD_M);
  double tip_height_m = fmax (item->microphone.tip_height_m, subject->body.crown_m + 0.25);
  LrChange changes[] = {
    { item->id, "tip-x-mm", tip_m.x },
    { item->id, "tip-y-mm", tip_m.y },
    { item->id, "tip-height-mm", tip_height_m },
  };

  return then_change (plan, changes, G_N_ELEMENTS (changes), error);
}

/* On the first camera, if there is one */
static LrPlan *
mount (LrPlan      *plan,
       const char  *id,
       GError     **error)
{
  const GPtrArray *items = lr_plan_get_setup (plan)->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_CAMERA)
        return then_text (plan, id, "mounted-on", item->id, error);
    }

  return plan;
}

static LrPlan *
link_microphone (LrPlan         *plan,
                 const LrItem   *item,
                 const LrPlaced *subject,
                 GError        **error)
{
  g_autoptr (LrItem) held = lr_item_ref (item);

  if (item->microphone.form == LR_MIC_LAVALIER)
    return then_text (plan, held->id, "worn-by", subject->item->id, error);
  if (item->microphone.form == LR_MIC_CAMERA)
    return mount (plan, held->id, error);

  plan = then_text (plan, held->id, "aims-at", subject->item->id, error);
  return held->microphone.form == LR_MIC_BOOM ? link_boom (plan, held, subject, error) : plan;
}

/* Takes @plan with the new item @id in it; what it has no partner for stays as it is */
static LrPlan *
link_item (LrPlan         *plan,
           const char     *id,
           const LrPlaced *subject,
           GError        **error)
{
  const LrItem *item = lr_plan_find (plan, id);

  if (item->kind == LR_ITEM_PERSON)
    return link_person (plan, item, error);
  if (subject == NULL)
    return plan;
  if (item->kind == LR_ITEM_MICROPHONE)
    return link_microphone (plan, item, subject, error);
  if (item->kind == LR_ITEM_CAMERA)
    return frame_camera (then_text (plan, id, "aims-at", subject->item->id, error), id, error);
  if (item->kind == LR_ITEM_LIGHT && item->light.job != LR_JOB_WALL)
    return then_text (plan, id, "aims-at", subject->item->id, error);
  return plan;
}

/* The camera that a lens goes on: the one in hand, or the nearest to @at_m, or the first without a lens, or the first */
static const LrItem *
camera_for_lens (const LrStudy *study,
                 const LrVec2  *at_m,
                 const char    *chosen)
{
  const LrItem *best = NULL;
  double best_score = HUGE_VAL;

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);
      double score = camera->item->camera.lens[0] == '\0' ? 0.0 : 1.0;

      if (at_m != NULL)
        score = lr_vec2_distance (camera->placed->at_m, *at_m);
      else if (g_strcmp0 (camera->item->id, chosen) == 0)
        score = -1.0;
      if (score < best_score)
        {
          best = camera->item;
          best_score = score;
        }
    }
  return best;
}

static LrPlan *
mount_lens (const LrStudy    *study,
            const LrKitEntry *entry,
            const LrVec2     *at_m,
            const char       *chosen,
            char            **id,
            GError          **error)
{
  const LrItem *camera = camera_for_lens (study, at_m, chosen);
  const LrLens *lens = &entry->item->lens;
  LrPlan *plan;

  if (camera == NULL)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED,
                           _("There is no camera to put the lens on. Place a camera first."));
      return NULL;
    }

  plan = then_text (lr_plan_ref (study->plan), camera->id, "lens", entry->item->id, error);
  if (plan != NULL)
    {
      LrChange changes[] = {
        { camera->id, "focal-mm", CLAMP (camera->camera.focal_m, lens->focal_min_m, lens->focal_max_m) },
        { camera->id, "f-number", CLAMP (camera->camera.f_number, lens->f_number_min, lens->f_number_max) },
      };

      plan = then_change (plan, changes, G_N_ELEMENTS (changes), error);
    }
  if (plan != NULL && id != NULL)
    *id = g_strdup (camera->id);
  return plan;
}

/* Prototype of the thing called @name; @entry is set for one of the kit */
static LrItem *
find_prototype (const LrPlan      *plan,
                const char        *name,
                const LrKitEntry **entry,
                GError           **error)
{
  const LrRoomThing *thing;

  *entry = NULL;
  if (g_str_has_prefix (name, "kit:"))
    {
      *entry = lr_plan_find_kit (plan, name + strlen ("kit:"));
      if (*entry != NULL)
        return lr_item_ref ((*entry)->item);
    }
  else if (g_str_has_prefix (name, "room:"))
    {
      thing = lr_room_thing_find (name + strlen ("room:"));
      if (thing != NULL)
        return lr_room_thing_new (thing, lr_plan_get_setup (plan));
    }

  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("“%s” is not a thing that can be placed."), name);
  return NULL;
}

/**
 * lr_placing_bring:
 * @study: of the plan that it comes into
 * @name: "kit:ID" or "room:WORD"
 * @at_m: (nullable): where it was dropped; %NULL: a sensible place
 * @chosen: (nullable): id of the item in hand
 * @id: (out) (optional) (transfer full): what to take in hand: the new item, or the camera that got a lens
 *
 * The thing aims at the subject and people look at each other, as far as there is whom to look at.
 *
 * Returns: (transfer full): the next plan, or %NULL with @error set
 */
LrPlan *
lr_placing_bring (const LrStudy  *study,
                  const char     *name,
                  const LrVec2   *at_m,
                  const char     *chosen,
                  char          **id,
                  GError        **error)
{
  const LrKitEntry *entry;
  g_autoptr (LrItem) prototype = find_prototype (study->plan, name, &entry, error);
  g_autofree char *new_id = NULL;
  LrVec2 place_m = lr_vec2 (0.0, 0.0);
  double facing_rad = 0.0;
  LrPlan *plan;

  if (prototype == NULL)
    return NULL;
  if (prototype->kind == LR_ITEM_LENS)
    return mount_lens (study, entry, at_m, chosen, id, error);

  lr_placing_find (study, prototype, &place_m, &facing_rad);
  if (at_m != NULL)
    {
      place_m = *at_m;
      if (study->subject != NULL && prototype->kind != LR_ITEM_FURNITURE)
        facing_rad = lr_vec2_angle_rad (lr_vec2_sub (study->subject->at_m, place_m));
    }

  plan = entry != NULL ? lr_plan_add_from_kit (study->plan, entry->item->id, place_m, facing_rad, &new_id, error)
                       : lr_plan_add (study->plan, prototype, place_m, facing_rad, &new_id, error);
  if (plan != NULL)
    plan = link_item (plan, new_id, study->subject, error);
  if (plan != NULL && prototype->kind == LR_ITEM_LEAD)
    plan = lr_lead_lay_new (study, plan, new_id, at_m, error);
  if (plan != NULL && id != NULL)
    *id = g_steal_pointer (&new_id);
  return plan;
}
