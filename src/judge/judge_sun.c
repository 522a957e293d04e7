/* judge_sun.c - what the sun touches while the camera rolls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What lies in the sun when the take begins is out of it a while later, or the other way round: each is told with its minutes.
 */

#include "config.h"

#include "judge_parts.h"

#include "sun_touches.h"

#include <glib/gi18n-lib.h>

#define BEHIND_RAD (110.0 * LR_DEG) /* off the look: from there on it is on the back of the head */

static const char *
say_minute (LrJudge *judge,
            int      minute)
{
  g_autofree char *text = g_strdup_printf ("%02d:%02d", minute / 60 % 24, minute % 60);

  return g_string_chunk_insert (judge->words, text);
}

/* "<b>09:09</b> to <b>10:11</b>, <b>10:40</b> to <b>11:02</b>" */
static const char *
say_spans (LrJudge          *judge,
           const LrSunTouch *touch)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < touch->n; i++)
    {
      g_string_append (text, i > 0 ? ", " : "");
      if (touch->span[i].first == touch->span[i].last)
        /* Translators: at a minute of the day */
        g_string_append_printf (text, _("at <b>%s</b>"), say_minute (judge, touch->span[i].first));
      else
        /* Translators: from one minute of the day to another */
        g_string_append_printf (text, _("<b>%s</b> to <b>%s</b>"), say_minute (judge, touch->span[i].first),
                                say_minute (judge, touch->span[i].last));
    }
  return g_string_chunk_insert (judge->words, text->str);
}

static const char *
say_window (LrJudge        *judge,
            const LrPlaced *window)
{
  /* Translators: a window; what the sun touches follows after a colon */
  g_autofree char *text = g_strdup_printf (judge->study->plan->job->sky == LR_SKY_CLEAR ? _("The sun comes through %s")
                                                                                         : _("If it shines, the sun comes through %s"),
                                           lr_say_title (judge, window));

  return g_string_chunk_insert (judge->words, text);
}

/* The smallest change that keeps it away */
static void
keep_blind (LrJudge          *judge,
            LrRemark         *remark,
            const LrPlaced   *window,
            int               first,
            gboolean          is_spared_by_half)
{
  const char *title = lr_say_title (judge, window), *by = say_minute (judge, first);
  LrRemedy *remedy = lr_remedy_new ();

  lr_remedy_change (remedy, window->item, "blind", is_spared_by_half ? LR_BLIND_HALF : LR_BLIND_DOWN);
  if (is_spared_by_half)
    lr_remedy_say (remedy, by, _("Let the blind of %s half down by <b>%s</b>."), title, by);
  else if (window->item->window.blind == LR_BLIND_NONE)
    lr_remedy_say (remedy, by, _("Cover %s by <b>%s</b>."), title, by);
  else
    lr_remedy_say (remedy, by, _("Let down the blind of %s by <b>%s</b>."), title, by);
  lr_judge_keep (judge, remark, remedy);
}

static LrRemark *
add (LrJudge          *judge,
     LrCheck           check,
     const LrSunTouch *touch)
{
  LrRemark *remark = lr_judge_add (judge, check, LR_GRADE_MIND, touch->placed, touch->window);

  remark->value = 0.0;
  for (guint i = 0; i < touch->n; i++)
    remark->value += touch->span[i].last - touch->span[i].first;
  lr_remark_mark_line (remark, touch->window->at_m, touch->at_m, NULL);
  lr_remark_mark_point (remark, touch->at_m, NULL);
  return remark;
}

/* Face and clothes through one window; either may be NULL, not both */
static void
say_person (LrJudge          *judge,
            const LrSunTouch *head,
            const LrSunTouch *trunk)
{
  const LrSunTouch *touch = head != NULL ? head : trunk;
  LrRemark *remark = add (judge, LR_CHECK_SUN, touch);
  const char *window = say_window (judge, touch->window), *name = lr_say_name (judge, touch->placed);
  int first = MIN (touch->span[0].first, trunk != NULL ? trunk->span[0].first : G_MAXINT);

  /* Translators: the sun through a window, whose, from when to when; the same of the clothes */
  if (head == NULL)
    lr_remark_say (remark, _("%s: on %s’s clothes %s."), window, name, say_spans (judge, trunk));
  else if (fabs (head->side_rad) > BEHIND_RAD && trunk != NULL)
    lr_remark_say (remark, _("%s: on the back of %s’s head %s, on the clothes %s."), window, name, say_spans (judge, head),
                   say_spans (judge, trunk));
  else if (fabs (head->side_rad) > BEHIND_RAD)
    lr_remark_say (remark, _("%s: on the back of %s’s head %s."), window, name, say_spans (judge, head));
  else if (trunk != NULL)
    lr_remark_say (remark, _("%s: on %s’s face %s, on the clothes %s."), window, name, say_spans (judge, head), say_spans (judge, trunk));
  else
    lr_remark_say (remark, _("%s: on %s’s face %s."), window, name, say_spans (judge, head));
  keep_blind (judge, remark, touch->window, first,
              (head == NULL || head->is_spared_by_half) && (trunk == NULL || trunk->is_spared_by_half));
}

static void
say_background (LrJudge          *judge,
                const LrSunTouch *touch)
{
  const LrCameraReading *camera = lr_study_find_camera (judge->study, touch->placed->item->id);
  LrRemark *remark = add (judge, LR_CHECK_SUN_BACKGROUND, touch);
  const char *window = say_window (judge, touch->window), *name = lr_say_name (judge, touch->placed);

  /* Translators: the sun through a window, a person, a camera, from when to when */
  if (camera->has_subject && !lr_judge_is_cutaway (judge, camera))
    lr_remark_say (remark, _("%s: on the wall behind %s in %s %s."), window, lr_say_name (judge, camera->subject), name,
                   say_spans (judge, touch));
  else
    lr_remark_say (remark, _("%s: on the wall that %s sees %s."), window, name, say_spans (judge, touch));
  keep_blind (judge, remark, touch->window, touch->span[0].first, touch->is_spared_by_half);
}

static void
say_lens (LrJudge          *judge,
          const LrSunTouch *touch)
{
  LrRemark *remark = add (judge, LR_CHECK_SUN_LENS, touch);

  /* Translators: the sun through a window, a camera, from when to when, an angle */
  lr_remark_say (remark, _("%s: into the lens of %s %s, <b>%s</b> off its axis; it may veil the picture."), say_window (judge, touch->window),
                 lr_say_name (judge, touch->placed), say_spans (judge, touch), lr_say_angle (judge, touch->side_rad));
  keep_blind (judge, remark, touch->window, touch->span[0].first, touch->is_spared_by_half);
}

static void
say_table (LrJudge          *judge,
           const LrSunTouch *touch)
{
  LrRemark *remark = add (judge, LR_CHECK_SUN_TABLE, touch);

  /* Translators: the sun through a window, a table, from when to when */
  lr_remark_say (remark, _("%s: on the %s, in the picture, %s."), say_window (judge, touch->window), lr_say_name (judge, touch->placed),
                 say_spans (judge, touch));
  keep_blind (judge, remark, touch->window, touch->span[0].first, touch->is_spared_by_half);
}

static void
say_none (LrJudge        *judge,
          const LrPlaced *person,
          int             roll,
          int             wrap)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_SUN, LR_GRADE_FINE, person, NULL);

  remark->value = 0;
  lr_remark_mark_point (remark, person->at_m, NULL);
  lr_remark_say (remark, _("From <b>%s</b> to <b>%s</b> no sun reaches %s’s face."), say_minute (judge, roll), say_minute (judge, wrap),
                 lr_say_name (judge, person));
}

/* The trunk's touch through a window comes right after the head's */
static void
judge_touches (LrJudge      *judge,
               const GArray *touches,
               gboolean     *is_person_touched)
{
  for (guint i = 0; i < touches->len; i++)
    {
      const LrSunTouch *touch = &g_array_index (touches, LrSunTouch, i), *next = i + 1 < touches->len ? touch + 1 : NULL;

      switch (touch->thing)
        {
        case LR_SUN_HEAD:
          if (next != NULL && next->thing == LR_SUN_TRUNK && next->window == touch->window)
            i++;
          else
            next = NULL;
          say_person (judge, touch, next);
          *is_person_touched = TRUE;
          break;
        case LR_SUN_TRUNK:
          say_person (judge, NULL, touch);
          *is_person_touched = TRUE;
          break;
        case LR_SUN_BACKGROUND:
          say_background (judge, touch);
          break;
        case LR_SUN_LENS:
          say_lens (judge, touch);
          break;
        case LR_SUN_TABLE:
          say_table (judge, touch);
          break;
        case LR_N_SUN_THINGS:
        default:
          break;
        }
    }
}

/**
 * lr_judge_sun:
 * @judge: a judge
 *
 * The subject, what cameras see and their lenses, from the first to the last minute of the shoot. Nothing without date, hours and the
 * place on the earth.
 */
void
lr_judge_sun (LrJudge *judge)
{
  const LrJob *job = judge->study->plan->job;
  g_autoptr (GArray) touches = NULL;
  gboolean is_person_touched = FALSE;
  LrSunPlace sun;
  int roll, wrap;

  if (judge->is_trial || judge->study->setup->room->n_corners < 3 || !lr_job_shoot (job, &roll, &wrap)
      || !lr_study_sun_at (judge->study, roll, &sun))
    return;

  touches = lr_sun_touches (judge->study, roll, wrap);
  judge_touches (judge, touches, &is_person_touched);
  if (!is_person_touched && judge->study->subject != NULL)
    say_none (judge, judge->study->subject, roll, wrap);
}
