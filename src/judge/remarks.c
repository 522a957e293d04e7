/* remarks.c - judgements on a study
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The families judge in the order of LrCheck; then the remedies are tried, and the remarks sorted by
 * grade, steadily.
 */

#include "judge_parts.h"

#include <string.h>

static const char *
id_of (const LrPlaced *placed)
{
  return placed != NULL ? placed->item->id : "";
}

static char *
make_key (LrCheck         check,
          const LrPlaced *a,
          const LrPlaced *b)
{
  const char *word = lr_check_info (check)->word;

  if (a == NULL)
    return g_strdup (word);

  return b == NULL ? g_strconcat (word, ":", a->item->id, NULL)
                   : g_strconcat (word, ":", a->item->id, ":", b->item->id, NULL);
}

/* Room for three ids and the end */
#define MAX_IDS 3

/**
 * lr_judge_add:
 * @judge: a judge
 * @check: a check
 * @grade: what it found
 * @a: (nullable): what it is about; marked
 * @b: (nullable): what else it is about
 *
 * Notes the grade and, unless this is a trial, begins the remark. Its key names @a and @b in this order.
 *
 * Returns: (transfer none) (nullable): the remark, which still lacks its sentence; %NULL in a trial
 */
LrRemark *
lr_judge_add (LrJudge        *judge,
              LrCheck         check,
              LrGrade         grade,
              const LrPlaced *a,
              const LrPlaced *b)
{
  LrVerdict verdict = { check, grade, id_of (a), id_of (b) };
  LrRemark *remark;

  g_array_append_val (judge->verdicts, verdict);
  if (judge->is_trial)
    return NULL;

  remark = g_new0 (LrRemark, 1);
  remark->check = check;
  remark->grade = grade;
  remark->key = make_key (check, a, b);
  remark->ids = g_new0 (char *, MAX_IDS + 1);
  remark->marks = g_array_new (FALSE, FALSE, sizeof (LrMark));
  g_array_set_clear_func (remark->marks, lr_mark_clear);
  remark->value = remark->limit = NAN;
  lr_remark_about (remark, a);
  lr_remark_about (remark, b);
  g_ptr_array_add (judge->remarks, remark);

  return remark;
}

/**
 * lr_remark_about:
 * @remark: a remark
 * @placed: (nullable): a thing
 *
 * Names another thing that the remark is about, up to three.
 */
void
lr_remark_about (LrRemark       *remark,
                 const LrPlaced *placed)
{
  guint n = g_strv_length (remark->ids);

  if (placed != NULL && n < MAX_IDS && !g_strv_contains ((const char *const *) remark->ids, placed->item->id))
    remark->ids[n] = g_strdup (placed->item->id);
}

/**
 * lr_remark_mark_first:
 * @remark: a remark
 * @placed: one of the things that it is about
 *
 * Marks @placed instead of the first thing of the key.
 */
void
lr_remark_mark_first (LrRemark       *remark,
                      const LrPlaced *placed)
{
  for (guint i = 1; remark->ids[0] != NULL && remark->ids[i] != NULL; i++)
    if (strcmp (remark->ids[i], placed->item->id) == 0)
      {
        char *first = remark->ids[i];

        remark->ids[i] = remark->ids[0];
        remark->ids[0] = first;
      }
}

/**
 * lr_remark_free:
 * @remark: (transfer full): a remark
 */
void
lr_remark_free (LrRemark *remark)
{
  g_free (remark->key);
  g_free (remark->markup);
  g_free (remark->text);
  g_strfreev (remark->ids);
  g_array_unref (remark->marks);
  g_clear_pointer (&remark->remedy, lr_remedy_free);
  g_free (remark);
}

/**
 * lr_judge_is_cutaway:
 * @judge: a judge
 * @camera: a camera
 *
 * A camera on a thing, with the person out of its frame, is not judged as a shot of the person.
 *
 * Returns: whether it is such a camera
 */
gboolean
lr_judge_is_cutaway (const LrJudge         *judge,
                     const LrCameraReading *camera)
{
  const LrPlaced *target = lr_study_find_placed (judge->study, camera->item->camera.aims_at);
  gboolean has_eyes = camera->eyes_across >= 0.0 && camera->eyes_across <= 1.0
                      && camera->eyes_down >= 0.0 && camera->eyes_down <= 1.0;

  return target != NULL && target->item->kind != LR_ITEM_PERSON && !has_eyes;
}

/**
 * lr_judge_all:
 * @judge: a judge
 *
 * Asks every family, in the order of their checks.
 */
void
lr_judge_all (LrJudge *judge)
{
  lr_judge_line (judge);
  lr_judge_gaze (judge);
  lr_judge_height (judge);
  lr_judge_lens (judge);
  lr_judge_background (judge);
  lr_judge_focus (judge);
  lr_judge_framing (judge);
  lr_judge_joints (judge);
  lr_judge_cut (judge);
  lr_judge_cut_eyes (judge);
  lr_judge_intrusions (judge);
  lr_judge_light (judge);
  lr_judge_clothes (judge);
  lr_judge_exposure (judge);
  lr_judge_shutter (judge);
  lr_judge_color (judge);
  lr_judge_sun (judge);
  lr_judge_glare (judge);
  lr_judge_catch_light (judge);
  lr_judge_shadows (judge);
  lr_judge_sound (judge);
  lr_judge_room (judge);
  lr_judge_circuits (judge);
  lr_judge_leads (judge);
  lr_judge_stands (judge);
  lr_judge_clearances (judge);
  lr_judge_ways_out (judge);
  lr_judge_tape (judge);
  lr_judge_missing (judge);
}

/* A remark marks the first thing that it is about */
static void
note_worst (LrRemarks      *remarks,
            const LrRemark *remark)
{
  gpointer before;

  if (remark->grade == LR_GRADE_FINE || remark->ids[0] == NULL)
    return;
  if (!g_hash_table_lookup_extended (remarks->worst, remark->ids[0], NULL, &before)
      || GPOINTER_TO_UINT (before) > (guint) remark->grade)
    g_hash_table_insert (remarks->worst, remark->ids[0], GUINT_TO_POINTER (remark->grade));
}

/* Nobody gets out, or the set does not stand in this room: what else is to fix comes after */
static gboolean
is_first (const LrRemark *remark)
{
  return remark->grade == LR_GRADE_FIX && (remark->check == LR_CHECK_WAY_OUT || remark->check == LR_CHECK_OUTSIDE);
}

static void
add_graded (LrRemarks *remarks,
            GPtrArray *found,
            LrGrade    grade,
            gboolean   takes_first)
{
  for (guint i = 0; i < found->len; i++)
    {
      LrRemark *remark = found->pdata[i];

      if (remark->grade != grade || is_first (remark) != takes_first)
        continue;

      g_ptr_array_add (remarks->all, remark);
      remarks->n[grade]++;
      note_worst (remarks, remark);
    }
}

static void
sort_by_grade (LrRemarks *remarks,
               GPtrArray *found)
{
  for (LrGrade grade = 0; grade < LR_N_GRADES; grade++)
    {
      add_graded (remarks, found, grade, TRUE);
      add_graded (remarks, found, grade, FALSE);
    }
}

static LrRemarks *
judge_study (const LrStudy       *study,
             const LrLightLevels *levels,
             LrUnits              units,
             gboolean             is_moving)
{
  LrRemarks *remarks = g_new0 (LrRemarks, 1);
  LrJudge judge = {
    .study = study,
    .levels = levels,
    .limits = study->plan->limits.value,
    .units = units,
    .is_moving = is_moving,
    .verdicts = g_array_new (FALSE, FALSE, sizeof (LrVerdict)),
    .remarks = g_ptr_array_new (),
    .words = g_string_chunk_new (4096),
  };

  remarks->all = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_remark_free);
  remarks->worst = g_hash_table_new (g_str_hash, g_str_equal);
  remarks->is_moving = is_moving;

  lr_judge_all (&judge);
  lr_judge_try_offers (&judge);
  sort_by_grade (remarks, judge.remarks);

  g_array_unref (judge.verdicts);
  g_ptr_array_unref (judge.remarks);
  g_string_chunk_free (judge.words);

  return remarks;
}

/**
 * lr_remarks_new:
 * @study: a study
 * @units: how lengths are written in the sentences
 *
 * As lr_remarks_new_lit() without levels of light.
 *
 * Returns: (transfer full): the remarks, Fix first
 */
LrRemarks *
lr_remarks_new (const LrStudy *study,
                LrUnits        units)
{
  return lr_remarks_new_lit (study, NULL, units);
}

/**
 * lr_remarks_new_lit:
 * @study: a study
 * @levels: (nullable): of light, whole; of this plan, or of one just before it
 * @units: how lengths are written in the sentences
 *
 * Judges everything that was read. Nothing in the remarks points into @study or @levels.
 *
 * Returns: (transfer full): the remarks, Fix first
 */
LrRemarks *
lr_remarks_new_lit (const LrStudy       *study,
                    const LrLightLevels *levels,
                    LrUnits              units)
{
  return judge_study (study, levels, units, FALSE);
}

/**
 * lr_remarks_new_moving:
 * @study: a study of a plan that a hand moves
 * @levels: (nullable): of light, as of lr_remarks_new_lit()
 * @units: how lengths are written in the sentences
 *
 * As lr_remarks_new_lit(), with the same sentences, marks and grades, but without remedies: nobody takes one in the midst of a drag,
 * and looking for them takes several times as long as all the rest.
 *
 * Returns: (transfer full): the remarks, Fix first
 */
LrRemarks *
lr_remarks_new_moving (const LrStudy       *study,
                       const LrLightLevels *levels,
                       LrUnits              units)
{
  return judge_study (study, levels, units, TRUE);
}

/**
 * lr_remarks_free:
 * @remarks: (transfer full) (nullable): remarks
 */
void
lr_remarks_free (LrRemarks *remarks)
{
  if (remarks == NULL)
    return;

  g_hash_table_unref (remarks->worst);
  g_ptr_array_unref (remarks->all);
  g_free (remarks);
}

/**
 * lr_remarks_find:
 * @remarks: remarks
 * @key: (nullable): key of one
 *
 * Returns: (transfer none) (nullable): the remark with that key
 */
const LrRemark *
lr_remarks_find (const LrRemarks *remarks,
                 const char      *key)
{
  for (guint i = 0; key != NULL && i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      if (strcmp (remark->key, key) == 0)
        return remark;
    }

  return NULL;
}

/**
 * lr_remarks_worst_for:
 * @remarks: remarks
 * @item_id: id of an item
 *
 * A remark about several things marks the first of its ids: the one that would be moved.
 *
 * Returns: the worst grade that marks the item, %LR_GRADE_FINE if there is none
 */
LrGrade
lr_remarks_worst_for (const LrRemarks *remarks,
                      const char      *item_id)
{
  gpointer worst;

  return g_hash_table_lookup_extended (remarks->worst, item_id, NULL, &worst) ? GPOINTER_TO_UINT (worst) : LR_GRADE_FINE;
}
