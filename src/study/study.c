/* study.c - every number that is computed from a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intrusions.h"
#include "sound_parts.h"
#include "study_parts.h"

static double
room_area_m2 (const LrRoom *room)
{
  return room->n_corners >= 3 ? fabs (lr_polygon_area_m2 (room->corners_m, room->n_corners)) : (double) NAN;
}

static void
clear_camera (gpointer data)
{
  g_free (((LrCameraReading *) data)->wedge_m);
}

static LrStudy *
study_plan (const LrPlan *plan,
            gboolean      is_trial)
{
  LrStudy *study = g_new0 (LrStudy, 1);

  study->plan = lr_plan_ref (plan);
  study->setup = lr_plan_get_setup (plan);
  study->by_id = g_hash_table_new (g_str_hash, g_str_equal);
  study->room_area_m2 = room_area_m2 (study->setup->room);
  study->is_trial = is_trial;
  study->sound = g_new0 (LrSound *, 1);

  lr_study_place_items (study);
  lr_study_read_cameras (study);
  g_array_set_clear_func (study->cameras, clear_camera);
  lr_study_read_pairs (study);
  lr_study_find_clashes (study);
  study->intrusions = g_array_new (FALSE, FALSE, sizeof (LrIntrusion));
  study->outlines = g_array_new (FALSE, FALSE, sizeof (LrFrameOutline));
  study->outline_points = g_array_new (FALSE, FALSE, sizeof (LrVec2));
  if (!is_trial)
    lr_study_find_intrusions (study, NULL);
  lr_study_read_leads (study);

  return study;
}

/**
 * lr_study_new:
 * @plan: a plan
 *
 * Computes everything of the set-up that is shown. Time grows as n log n with the items, and with the square of
 * the cameras.
 *
 * Returns: (transfer full): its study, which holds the plan
 */
LrStudy *
lr_study_new (const LrPlan *plan)
{
  return study_plan (plan, FALSE);
}

/**
 * lr_study_new_trial:
 * @plan: a plan that may come to nothing
 *
 * As lr_study_new(), without what is only drawn or printed: fields on the floor and leads.
 *
 * Returns: (transfer full): its study, which holds the plan
 */
LrStudy *
lr_study_new_trial (const LrPlan *plan)
{
  return study_plan (plan, TRUE);
}

/**
 * lr_study_free:
 * @study: (transfer full) (nullable): a study
 */
void
lr_study_free (LrStudy *study)
{
  if (study == NULL)
    return;

  lr_sound_free (*study->sound);
  g_free (study->sound);
  g_array_unref (study->leads);
  g_array_unref (study->outline_points);
  g_array_unref (study->outlines);
  g_array_unref (study->intrusions);
  g_array_unref (study->clashes);
  g_array_unref (study->pairs);
  g_array_unref (study->reverses);
  g_array_unref (study->cameras);
  g_array_unref (study->placed);
  g_hash_table_unref (study->by_id);
  lr_plan_unref ((LrPlan *) study->plan);
  g_free (study);
}

/**
 * lr_study_find_placed:
 * @study: a study
 * @id: (nullable): id of an item
 *
 * Returns: (transfer none) (nullable): where it stands
 */
const LrPlaced *
lr_study_find_placed (const LrStudy *study,
                      const char    *id)
{
  return id != NULL && *id != '\0' ? g_hash_table_lookup (study->by_id, id) : NULL;
}

/**
 * lr_study_find_camera:
 * @study: a study
 * @id: (nullable): id of a camera
 *
 * Returns: (transfer none) (nullable): what it sees
 */
const LrCameraReading *
lr_study_find_camera (const LrStudy *study,
                      const char    *id)
{
  for (guint i = 0; id != NULL && i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (g_str_equal (camera->item->id, id))
        return camera;
    }

  return NULL;
}
