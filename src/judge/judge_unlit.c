/* judge_unlit.c - whether anything lights the face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "relight.h"

#include "lamp_output.h"
#include "light_alone.h"

#include <glib/gi18n-lib.h>

/* The lamps that are dimmed to nothing: the key first, else the first; (nullable). @n (out): how many there are */
static const LrPlaced *
find_out (const LrJudge *judge,
          guint         *n)
{
  const LrPlaced *found = NULL;

  *n = 0;
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);
      const LrItem *item = placed->item;

      if (item->kind != LR_ITEM_LIGHT || item->light.dim > 0.0 || !lr_lamp_shines (item))
        continue;
      if (found == NULL || (item->light.job == LR_JOB_KEY && found->item->light.job != LR_JOB_KEY))
        found = placed;
      (*n)++;
    }
  return found;
}

/* That one lamp if it does, with cameras set after it if need be; else any */
static void
mend (LrJudge         *judge,
      LrRemark        *remark,
      const LrRelight *relight,
      guint            view,
      const LrPlaced  *out)
{
  static const double most_iso[] = { 0.0, LR_RELIGHT_QUIET_ISO, LR_RELIGHT_MOST_ISO };
  LrRelight alone = *relight;

  for (guint i = 0; i < alone.n_lamps; i++)
    if (alone.lamp[i].placed != out)
      alone.lamp[i].is_held = TRUE;
  for (gsize i = 0; i < 2 * G_N_ELEMENTS (most_iso); i++)
    if (lr_judge_keep_dims (judge, remark, i < G_N_ELEMENTS (most_iso) ? &alone : relight, view, LR_RELIGHT_FACE,
                            most_iso[i % G_N_ELEMENTS (most_iso)]))
      return;
}

/**
 * lr_judge_unlit:
 * @judge: a judge
 * @camera: one that frames a person
 * @relight: (nullable): what may be dimmed
 * @is_first: whether it is the first camera on that person: said once
 *
 * Nothing is said of a plan without lights.
 *
 * Returns: whether next to nothing lights that person's face, so that its level is nothing to judge
 */
gboolean
lr_judge_unlit (LrJudge               *judge,
                const LrCameraReading *camera,
                const LrRelight       *relight,
                gboolean               is_first)
{
  const LrFaceLight *face = lr_light_levels_face (judge->levels, camera->subject->item->id);
  guint n_out, n_sources = lr_light_levels_n_sources (judge->levels);
  const LrPlaced *out = find_out (judge, &n_out);
  LrRemark *remark;
  const char *subject;

  if (face == NULL || lr_lux_all (face->at[face->lit]) >= LR_UNLIT_LX)
    return FALSE;
  if (n_sources + n_out == 0 || !is_first)
    return TRUE;

  remark = lr_judge_add (judge, LR_CHECK_UNLIT, LR_GRADE_MIND, camera->subject, NULL);
  subject = lr_say_name (judge, camera->subject);
  remark->value = lr_lux_all (face->at[face->lit]);
  remark->limit = LR_UNLIT_LX;
  lr_remark_about (remark, out);
  if (out != NULL)
    lr_remark_mark_first (remark, out);
  lr_remark_mark_point (remark, camera->subject->at_m, NULL);
  if (out == NULL)
    /* Translators: whose face, how many lamps and windows */
    lr_remark_say (remark, ngettext ("Nothing lights %s’s face: the <b>%u</b> source in the room does not shine on it.",
                                     "Nothing lights %s’s face: none of the <b>%u</b> sources in the room shines on it.", n_sources),
                   subject, n_sources);
  else if (n_out == 1)
    /* Translators: whose face, a lamp */
    lr_remark_say (remark, _("Nothing lights %s’s face: %s is at <b>0\u00a0%%</b>."), subject, lr_say_name (judge, out));
  else
    /* Translators: whose face, how many lamps, one of them */
    lr_remark_say (remark, ngettext ("Nothing lights %s’s face: <b>%u</b> lamp is out, %s.",
                                     "Nothing lights %s’s face: <b>%u</b> lamps are out, %s among them.", n_out),
                   subject, n_out, lr_say_name (judge, out));
  if (relight != NULL)
    mend (judge, remark, relight, lr_relight_find (relight, camera), out);
  return TRUE;
}
