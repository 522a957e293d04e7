/* judge_intrusions.c - what stands in a picture that should not, and in the way of the lens
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Equipment in the frame is a Fix. A shoulder in it, a piece of furniture before the subject, a bright window or lamp
 * and the ceiling of a shot that is tighter than full may be meant: each is a Mind, but what covers the face is a Fix.
 * How far a thing reaches in, and how far it must move, is similar triangles; the rest is common practice.
 */

#include "config.h"

#include "judge_parts.h"

#include "intrusions.h"

#include <glib/gi18n-lib.h>

#define LEAST_FACE 0.01
#define LEAST_WINDOW 0.005

static LrGrade
grade_room_part (const LrIntrusion *intrusion)
{
  if (intrusion->part == LR_INTRUDER_WINDOW)
    return intrusion->share >= LEAST_WINDOW ? LR_GRADE_MIND : LR_GRADE_FINE;
  if (intrusion->part == LR_INTRUDER_CEILING)
    return intrusion->camera->framing.shot < LR_SHOT_FULL ? LR_GRADE_MIND : LR_GRADE_FINE;

  return intrusion->part == LR_INTRUDER_FIXTURE ? LR_GRADE_MIND : LR_GRADE_FINE;
}

/**
 * lr_intrusion_grade:
 * @study: a study
 * @intrusion: one of its intrusions
 *
 * Returns: how it is judged
 */
LrGrade
lr_intrusion_grade (const LrStudy     *study,
                    const LrIntrusion *intrusion)
{
  if (isfinite (intrusion->clearance))
    return intrusion->clearance < study->plan->limits.value[LR_LIMIT_BOOM_MARGIN] ? LR_GRADE_MIND : LR_GRADE_FINE;

  switch (intrusion->part)
    {
    case LR_INTRUDER_STAND:
    case LR_INTRUDER_HEAD:
    case LR_INTRUDER_ARM:
    case LR_INTRUDER_CAPSULE:
    case LR_INTRUDER_SHEET:
      return LR_GRADE_FIX;
    case LR_INTRUDER_PERSON:
    case LR_INTRUDER_FURNITURE:
      return intrusion->face_share >= LEAST_FACE ? LR_GRADE_FIX : LR_GRADE_MIND;
    case LR_INTRUDER_WINDOW:
    case LR_INTRUDER_FIXTURE:
    case LR_INTRUDER_CEILING:
    case LR_INTRUDER_FLOOR:
    case LR_N_INTRUDER_PARTS:
    default:
      return grade_room_part (intrusion);
    }
}

/**
 * lr_intrusion_check:
 * @intrusion: an intrusion
 *
 * Returns: the check that speaks of it
 */
LrCheck
lr_intrusion_check (const LrIntrusion *intrusion)
{
  if (isfinite (intrusion->clearance))
    return LR_CHECK_BOOM_MARGIN;
  if (intrusion->part < LR_INTRUDER_PERSON)
    return LR_CHECK_IN_FRAME;

  return intrusion->part <= LR_INTRUDER_FURNITURE ? LR_CHECK_IN_FRONT : LR_CHECK_ROOM_SEEN;
}

/* Begins a sentence */
static const char *
say_part (LrJudge           *judge,
          const LrIntrusion *intrusion)
{
  const char *name = lr_say_name (judge, intrusion->placed);
  g_autofree char *phrase = NULL;

  switch (intrusion->part)
    {
    case LR_INTRUDER_STAND:
      phrase = g_strdup_printf (_("The stand of %s"), name);
      break;
    case LR_INTRUDER_ARM:
      phrase = g_strdup_printf (_("The arm of boom %s"), name);
      break;
    case LR_INTRUDER_CAPSULE:
      phrase = g_strdup_printf (_("Microphone %s"), name);
      break;
    case LR_INTRUDER_HEAD:
    case LR_INTRUDER_SHEET:
    case LR_INTRUDER_PERSON:
    case LR_INTRUDER_FURNITURE:
    case LR_INTRUDER_WINDOW:
    case LR_INTRUDER_FIXTURE:
    case LR_INTRUDER_CEILING:
    case LR_INTRUDER_FLOOR:
    case LR_N_INTRUDER_PARTS:
    default:
      phrase = g_strdup (lr_say_title (judge, intrusion->placed));
      break;
    }

  return g_string_chunk_insert (judge->words, phrase);
}

/* "The arm of boom M1 dips 6 cm into the top of B, 9 % of its height." */
static void
say_reach (LrJudge           *judge,
           LrRemark          *remark,
           const LrIntrusion *intrusion)
{
  const char *part = say_part (judge, intrusion), *name = lr_say_name (judge, intrusion->camera->placed);
  const char *length = lr_say_small (judge, intrusion->move_m[intrusion->edge]);
  const char *share = lr_say_share (judge, intrusion->reach[intrusion->edge]);

  if (!intrusion->is_cut)
    lr_remark_say (remark,
                   intrusion->edge < LR_BORDER_TOP
                     ? _("%s stands in the picture of %s: <b>%s</b> from its edge, <b>%s</b> of the width.")
                     : _("%s stands in the picture of %s: <b>%s</b> from its edge, <b>%s</b> of the height."),
                   part, name, length, share);
  else if (intrusion->edge == LR_BORDER_LEFT)
    lr_remark_say (remark, _("%s reaches <b>%s</b> into the left edge of %s, <b>%s</b> of its width."), part, length, name,
                   share);
  else if (intrusion->edge == LR_BORDER_RIGHT)
    lr_remark_say (remark, _("%s reaches <b>%s</b> into the right edge of %s, <b>%s</b> of its width."), part, length, name,
                   share);
  else if (intrusion->edge == LR_BORDER_TOP)
    lr_remark_say (remark, _("%s dips <b>%s</b> into the top of %s, <b>%s</b> of its height."), part, length, name, share);
  else
    lr_remark_say (remark, _("%s rises <b>%s</b> into the bottom of %s, <b>%s</b> of its height."), part, length, name, share);
}

static void
say_cover (LrJudge           *judge,
           LrRemark          *remark,
           const LrIntrusion *intrusion)
{
  const char *subject = intrusion->face_share > 0.0 || intrusion->body_share > 0.0
                          ? lr_say_name (judge, intrusion->camera->subject) : "";

  if (intrusion->face_share >= LEAST_FACE)
    lr_remark_say (remark, _("It covers <b>%s</b> of %s’s face."), lr_say_share (judge, intrusion->face_share), subject);
  else if (intrusion->body_share >= LEAST_FACE)
    lr_remark_say (remark, _("It covers <b>%s</b> of %s’s body."), lr_say_share (judge, intrusion->body_share), subject);
}

static void
mark_thing (LrRemark          *remark,
            const LrIntrusion *intrusion,
            const char        *figure)
{
  const LrItem *item = intrusion->placed->item;
  LrVec2 at_m = intrusion->placed->at_m;

  if (intrusion->part == LR_INTRUDER_ARM || intrusion->part == LR_INTRUDER_CAPSULE)
    lr_remark_mark_line (remark, at_m, lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m), figure);
  else if (intrusion->placed->has_footprint)
    lr_remark_mark_outline (remark, &intrusion->placed->footprint, figure);
  else
    lr_remark_mark_point (remark, at_m, figure);
}

static void
judge_kit (LrJudge           *judge,
           const LrIntrusion *intrusion)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_IN_FRAME, LR_GRADE_FIX, intrusion->placed, intrusion->camera->placed);

  if (remark == NULL)
    return;

  remark->value = intrusion->reach[intrusion->edge];
  mark_thing (remark, intrusion, lr_say_share (judge, remark->value));
  say_reach (judge, remark, intrusion);
  say_cover (judge, remark, intrusion);
  lr_judge_clear_frame (judge, remark, intrusion);
}

static void
judge_margin (LrJudge           *judge,
              const LrIntrusion *intrusion)
{
  double limit = judge->limits[LR_LIMIT_BOOM_MARGIN];
  LrGrade grade = lr_intrusion_grade (judge->study, intrusion);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_BOOM_MARGIN, grade, intrusion->placed, intrusion->camera->placed);
  const char *part, *name;

  if (remark == NULL)
    return;

  part = say_part (judge, intrusion);
  name = lr_say_name (judge, intrusion->camera->placed);
  remark->value = intrusion->clearance;
  remark->limit = limit;
  mark_thing (remark, intrusion, lr_say_share (judge, intrusion->clearance));
  if (grade == LR_GRADE_FINE)
    {
      lr_remark_say (remark, _("%s passes <b>%s</b> of the height over the frame of %s."), part,
                     lr_say_share (judge, intrusion->clearance), name);
      return;
    }

  lr_remark_say (remark,
                 _("%s passes only <b>%s</b> of the height over the frame of %s; under <b>%s</b> it dips in when anything moves."),
                 part, lr_say_share_off (judge, intrusion->clearance, limit), name, lr_say_share (judge, limit));
  lr_judge_clear_frame (judge, remark, intrusion);
}

/* To either side, the shorter way first; what is seen from there is judged anew */
static void
offer_sideways (LrJudge           *judge,
                LrRemark          *remark,
                const LrIntrusion *intrusion)
{
  LrVec2 right = lr_vec3_flat (intrusion->camera->projection.right);
  gboolean is_left_first = intrusion->move_m[LR_BORDER_LEFT] <= intrusion->move_m[LR_BORDER_RIGHT];
  const LrItem *item = intrusion->placed->item;

  if (item->kind == LR_ITEM_FURNITURE && item->furniture.is_fixed)
    return;

  for (int i = 0; i < 2; i++)
    {
      gboolean is_left = (i == 0) == is_left_first;
      double by_m = intrusion->move_m[is_left ? LR_BORDER_LEFT : LR_BORDER_RIGHT] + LR_CLEAR_SPARE_M;

      if (by_m <= LR_CLEAR_FARTHEST_M)
        lr_judge_offer_move (judge, remark, intrusion->placed,
                             lr_vec2_along (intrusion->placed->at_m, right, is_left ? -by_m : by_m), NULL, NULL);
    }
}

static void
judge_front (LrJudge           *judge,
             const LrIntrusion *intrusion)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_IN_FRONT, lr_intrusion_grade (judge->study, intrusion), intrusion->placed,
                                   intrusion->camera->placed);

  if (remark == NULL)
    return;

  remark->value = intrusion->reach[intrusion->edge];
  mark_thing (remark, intrusion, lr_say_share (judge, remark->value));
  say_reach (judge, remark, intrusion);
  say_cover (judge, remark, intrusion);
  if (intrusion->face_share < LEAST_FACE && intrusion->part == LR_INTRUDER_PERSON && intrusion->is_nearer)
    lr_remark_say (remark, _("As an over-the-shoulder shot it may stay."));
  offer_sideways (judge, remark, intrusion);
}

static void
offer_blind (LrJudge           *judge,
             LrRemark          *remark,
             const LrIntrusion *intrusion,
             const char        *share)
{
  const LrItem *item = intrusion->placed->item;
  LrRemedy *remedy;

  if (item->window.blind == LR_BLIND_NONE)
    return;

  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, item, "blind", LR_BLIND_DOWN);
  lr_remedy_say (remedy, share, _("Pull the blind of %s down, <b>%s</b> of the picture."),
                 lr_say_name (judge, intrusion->placed), share);
  lr_judge_keep (judge, remark, remedy);
}

static void
judge_room_seen (LrJudge           *judge,
                 const LrIntrusion *intrusion)
{
  const LrPlaced *camera = intrusion->camera->placed;
  LrGrade grade = lr_intrusion_grade (judge->study, intrusion);
  LrRemark *remark;
  const char *name, *share;

  if (intrusion->part == LR_INTRUDER_FLOOR || (intrusion->placed == NULL && grade == LR_GRADE_FINE))
    return;

  remark = intrusion->placed != NULL ? lr_judge_add (judge, LR_CHECK_ROOM_SEEN, grade, intrusion->placed, camera)
                                     : lr_judge_add (judge, LR_CHECK_ROOM_SEEN, grade, camera, NULL);
  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera);
  share = lr_say_share (judge, intrusion->share);
  remark->value = intrusion->share;
  if (intrusion->part == LR_INTRUDER_CEILING)
    {
      lr_remark_mark_outline (remark, &camera->footprint, NULL);
      lr_remark_say (remark, _("%s sees the ceiling over <b>%s</b> of its picture, <b>%s</b> of the height."), name, share,
                     lr_say_share (judge, intrusion->reach[LR_BORDER_TOP]));
      return;
    }

  mark_thing (remark, intrusion, share);
  if (intrusion->part == LR_INTRUDER_FIXTURE)
    lr_remark_say (remark, _("%s hangs in the picture of %s, <b>%s</b> of the height from its upper edge."),
                   lr_say_title (judge, intrusion->placed), name, lr_say_share (judge, intrusion->reach[LR_BORDER_TOP]));
  else
    {
      lr_remark_say (remark, _("%s is bright in the picture of %s, over <b>%s</b> of it."),
                     lr_say_title (judge, intrusion->placed), name, share);
      if (grade != LR_GRADE_FINE)
        offer_blind (judge, remark, intrusion, share);
    }
}

static gboolean
is_equipment (const LrItem *item)
{
  return item->kind == LR_ITEM_CAMERA || item->kind == LR_ITEM_LIGHT
         || (item->kind == LR_ITEM_MICROPHONE && lr_microphone_stands (&item->microphone))
         || (item->kind == LR_ITEM_PANEL && item->panel.form != LR_PANEL_BACKDROP);
}

/* A camera that sees no equipment says so, if there is any but itself */
static void
judge_clean (LrJudge               *judge,
             const LrCameraReading *camera)
{
  const GPtrArray *items = judge->study->setup->items;
  LrRemark *remark;
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    n += items->pdata[i] != camera->item && is_equipment (items->pdata[i]);
  if (n == 0)
    return;

  remark = lr_judge_add (judge, LR_CHECK_IN_FRAME, LR_GRADE_FINE, camera->placed, NULL);
  if (remark == NULL)
    return;

  remark->value = 0.0;
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  lr_remark_say (remark,
                 ngettext ("<b>%u</b> other piece of equipment stands clear of the picture of %s.",
                           "<b>%u</b> other pieces of equipment stand clear of the picture of %s.", n),
                 n, lr_say_name (judge, camera->placed));
}

/**
 * lr_judge_intrusions:
 * @judge: a judge
 *
 * What stands in each picture, and in front of the subject.
 */
void
lr_judge_intrusions (LrJudge *judge)
{
  const LrStudy *study = judge->study;
  guint next = 0;

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      gboolean is_clean = TRUE;

      for (; next < study->intrusions->len && lr_study_intrusion (study, next)->camera == camera; next++)
        {
          const LrIntrusion *intrusion = lr_study_intrusion (study, next);

          if (isfinite (intrusion->clearance))
            judge_margin (judge, intrusion);
          else if (intrusion->part < LR_INTRUDER_PERSON)
            {
              judge_kit (judge, intrusion);
              is_clean = FALSE;
            }
          else if (intrusion->part <= LR_INTRUDER_FURNITURE)
            judge_front (judge, intrusion);
          else
            judge_room_seen (judge, intrusion);
        }

      if (is_clean)
        judge_clean (judge, camera);
    }
}
