/* comparison_sun.c - how long the sun comes into a room over the shoot, and how long it is on the subject
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It comes in while it stands before the outer side of a window, past what its blind leaves open as it is set. What stands outside is not
 * known.
 */

#include "comparison_parts.h"

#include "sun_touches.h"

static gboolean
has_windows (const LrStudy *study)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    if (((const LrItem *) study->setup->items->pdata[i])->kind == LR_ITEM_WINDOW)
      return TRUE;

  return FALSE;
}

static gboolean
comes_in (const LrStudy *study,
          LrVec3         way)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      LrSunOpening opening;

      if (lr_sun_opening (study, &g_array_index (study->placed, LrPlaced, i), &opening)
          && lr_vec2_dot (lr_vec3_flat (way), opening.inward) < 0.0)
        return TRUE;
    }

  return FALSE;
}

static guint
minutes_in (const LrStudy *study,
            int            roll,
            int            wrap)
{
  guint n = 0;
  LrVec3 way;

  for (int minute = roll; minute < wrap; minute++)
    n += lr_study_sun_way (study, minute, &way) && comes_in (study, way);

  return n;
}

/* Through whatever windows, each minute once */
static guint
minutes_on_face (const LrStudy *study,
                 int            roll,
                 int            wrap)
{
  g_autoptr (GArray) touches = lr_sun_touches (study, roll, wrap);
  g_autofree gboolean *is_on = g_new0 (gboolean, wrap - roll + 1);
  guint n = 0;

  for (guint i = 0; i < touches->len; i++)
    {
      const LrSunTouch *touch = &g_array_index (touches, LrSunTouch, i);

      for (guint k = 0; touch->thing == LR_SUN_HEAD && k < touch->n; k++)
        for (int minute = touch->span[k].first; minute <= touch->span[k].last; minute++)
          is_on[minute - roll] = TRUE;
    }
  for (int minute = roll; minute < wrap; minute++)
    n += is_on[minute - roll] ? 1 : 0;

  return n;
}

/**
 * lr_compare_sun:
 * @room: figures of a room that is drawn
 *
 * Fills those of the sun.
 */
void
lr_compare_sun (LrRoomFigures *room)
{
  const LrJob *job = room->study->plan->job;
  LrFigure *in = &room->figure[LR_COMPARE_SUN], *on_face = &room->figure[LR_COMPARE_SUN_ON_FACE];
  LrSunPlace sun;
  int roll, wrap;

  in->known = on_face->known = LR_NOT_DRAWN;
  if (!has_windows (room->study))
    return;

  in->known = on_face->known = LR_NO_DAY;
  if (!lr_job_shoot (job, &roll, &wrap) || !lr_study_sun_at (room->study, roll, &sun))
    return;

  *in = (LrFigure) { LR_KNOWN, minutes_in (room->study, roll, wrap) };
  on_face->known = LR_NOT_PLACED;
  if (room->study->subject != NULL)
    *on_face = (LrFigure) { LR_KNOWN, minutes_on_face (room->study, roll, wrap) };
}
