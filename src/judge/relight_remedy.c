/* relight_remedy.c - what lamps and cameras are to be set to, as remedies
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "relight.h"

#include <glib/gi18n-lib.h>

#define HIGHEST_ISO 12800.0
#define ALIKE_STOPS 0.3    /* cameras that are off alike */

static gboolean
is_changed (const LrRelight *relight,
            const double    *dims,
            guint            lamp)
{
  return fabs (dims[lamp] - relight->lamp[lamp].dim) > 1e-9;
}

static void
change (LrRemedy            *remedy,
        const LrRelightLamp *lamp,
        double               dim)
{
  if (lamp->placed->item->kind == LR_ITEM_WINDOW)
    lr_remedy_change (remedy, lamp->placed->item, "blind", LR_BLIND_DOWN);
  else if (lamp->is_switch)
    lr_remedy_change (remedy, lamp->placed->item, "is-on", 0.0);
  else
    lr_remedy_change (remedy, lamp->placed->item, "dim-pct", dim);
}

/* One lamp: "Dim L3 to 35 %." */
static void
say_one (LrJudge             *judge,
         LrRemedy            *remedy,
         const LrRelightLamp *lamp,
         double               dim)
{
  const char *name = lr_say_name (judge, lamp->placed), *share = lr_say_share (judge, dim);

  if (lamp->placed->item->kind == LR_ITEM_WINDOW)
    /* Translators: a window */
    lr_remedy_say (remedy, _("blind down"), _("Pull the blind of %s <b>down</b>."), name);
  else if (lamp->is_switch || !(dim > 0.0))
    /* Translators: a house light or a lamp */
    lr_remedy_say (remedy, _("off"), _("Switch %s <b>off</b>."), lamp->is_switch ? lr_say_title (judge, lamp->placed) : name);
  else
    /* Translators: a lamp, and how far it is dimmed: "Dim L3 to 35 %.", "Turn L3 up to 60 %." */
    lr_remedy_say (remedy, share, dim < lamp->dim ? _("Dim %s to <b>%s</b>.") : _("Turn %s up to <b>%s</b>."), name, share);
}

/* "L1 to 60 %", "ceiling lamp off", "the blind of window 2 down"; (transfer full) */
static char *
say_part (LrJudge             *judge,
          const LrRelightLamp *lamp,
          double               dim)
{
  if (lamp->placed->item->kind == LR_ITEM_WINDOW)
    /* Translators: a window, in "Set L1 to 60 %, the blind of window 2 down." */
    return g_strdup_printf (_("the blind of %s <b>down</b>"), lr_say_name (judge, lamp->placed));
  if (lamp->is_switch)
    return g_strdup_printf (_("%s <b>off</b>"), lr_say_title (judge, lamp->placed));
  if (!(dim > 0.0))
    return g_strdup_printf (_("%s <b>off</b>"), lr_say_name (judge, lamp->placed));

  /* Translators: a lamp, and how far it is dimmed: "L1 to 60 %" */
  return g_strdup_printf (_("%s to <b>%s</b>"), lr_say_name (judge, lamp->placed), lr_say_share (judge, dim));
}

/* "L1 to 60 %, L3 to 35 %"; (transfer full) */
static GString *
set_lamps (LrJudge               *judge,
           LrRemedy              *remedy,
           const LrRelight       *relight,
           const LrRelightAnswer *answer,
           guint                 *n,
           guint                 *last)
{
  GString *text = g_string_new (NULL);

  *n = 0;
  for (guint i = 0; i < relight->n_lamps; i++)
    {
      const LrRelightLamp *lamp = &relight->lamp[i];
      g_autofree char *part = NULL;

      if (!is_changed (relight, answer->dims, i))
        continue;
      change (remedy, lamp, answer->dims[i]);
      part = say_part (judge, lamp, answer->dims[i]);
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", part);
      (*n)++;
      *last = i;
    }
  return text;
}

/* "A to ISO 800, B to ISO 3200"; (transfer full) */
static GString *
set_cameras (LrJudge               *judge,
             LrRemedy              *remedy,
             const LrRelight       *relight,
             const LrRelightAnswer *answer)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < relight->n_views; i++)
    {
      const LrCameraReading *camera = relight->view[i].camera;
      g_autofree char *part = NULL;

      if (!(fabs (answer->more_stops[i]) > 0.0))
        continue;
      /* Translators: a camera, and what it is set to: "A to ISO 800" */
      part = g_strdup_printf (_("%s to %s"), lr_say_name (judge, camera->placed), lr_judge_compensate (judge, remedy, camera, answer->more_stops[i]));
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", part);
    }
  return text;
}

/**
 * lr_judge_keep_dims:
 * @judge: a judge
 * @remark: a remark
 * @relight: what may be dimmed
 * @view: number of the view that it is about
 * @aim: what that misses
 * @most_iso: to which each camera may be set after its face; 0: cameras stay as they are
 *
 * Gives the remark the dimming of lamps that mends it.
 *
 * Returns: %FALSE if there is none
 */
gboolean
lr_judge_keep_dims (LrJudge         *judge,
                    LrRemark        *remark,
                    const LrRelight *relight,
                    guint            view,
                    LrRelightAim     aim,
                    double           most_iso)
{
  LrRelight set = *relight;
  LrRelightAnswer answer;
  LrRemedy *remedy;
  g_autoptr (GString) lamps = NULL, cameras = NULL;
  guint n, last = 0;

  set.most_iso = most_iso;
  if (view >= relight->n_views || judge->study->plan->is_read_only || !lr_relight_solve (&set, view, aim, most_iso > 0.0, &answer))
    return FALSE;

  remedy = lr_remedy_new ();
  lamps = set_lamps (judge, remedy, relight, &answer, &n, &last);
  cameras = set_cameras (judge, remedy, relight, &answer);
  if (n == 1 && cameras->len == 0)
    say_one (judge, remedy, &relight->lamp[last], answer.dims[last]);
  else
    {
      g_autofree char *figure = lr_markup_to_text (lamps->str);

      if (cameras->len > 0)
        g_string_append_printf (lamps, ", %s", cameras->str);
      /* Translators: "Set L1 to 60 %, L3 to 35 %, A to ISO 800." */
      lr_remedy_say (remedy, figure, _("Set %s."), lamps->str);
    }
  lr_judge_keep (judge, remark, remedy);
  return TRUE;
}

/* "Move L1 0.40 m back, to 2.10 m.", "Turn L1 25° round Wenna, to the left, 1.10 m towards the north wall, and dim it to 80 %." */
static void
say_move (LrJudge             *judge,
          LrRemedy            *remedy,
          const LrRelightMove *move,
          const LrRelightLamp *lamp,
          const LrPlaced      *person)
{
  const char *name = lr_say_name (judge, lamp->placed), *share = lr_say_share (judge, move->dim);
  LrVec2 way = lr_vec2_sub (move->to_m, lamp->placed->at_m);
  const char *length = lr_say_length (judge, lr_vec2_length (way)), *away = lr_say_length (judge, move->away_m);
  gboolean is_dimmed = fabs (move->dim - lamp->dim) > 1e-9, is_back = move->away_m > lr_vec2_distance (lamp->placed->at_m, person->at_m);

  if (move->turned_rad != 0.0)
    {
      const char *angle = lr_say_angle (judge, fabs (move->turned_rad));

      if (is_dimmed)
        /* Translators: a lamp, degrees, whom it lights, a length, "towards the north wall", per cent */
        lr_remedy_say (remedy, length, _("Take %s <b>%s</b> round %s, <b>%s</b> %s, and set it to <b>%s</b>."), name, angle,
                       lr_say_name (judge, person), length, lr_say_towards (judge, way), share);
      else
        /* Translators: a lamp, degrees, whom it lights, a length, "towards the north wall" */
        lr_remedy_say (remedy, length, _("Take %s <b>%s</b> round %s, <b>%s</b> %s."), name, angle, lr_say_name (judge, person), length,
                       lr_say_towards (judge, way));
    }
  else if (is_dimmed)
    /* Translators: a lamp, two lengths, per cent: "Move L1 0.40 m back, to 2.10 m, and set it to 60 %." */
    lr_remedy_say (remedy, length, is_back ? _("Move %s <b>%s</b> back, to <b>%s</b>, and set it to <b>%s</b>.")
                                           : _("Move %s <b>%s</b> nearer, to <b>%s</b>, and set it to <b>%s</b>."),
                   name, length, away, share);
  else
    /* Translators: a lamp, two lengths: "Move L1 0.40 m back, to 2.10 m." */
    lr_remedy_say (remedy, length, is_back ? _("Move %s <b>%s</b> back, to <b>%s</b>.") : _("Move %s <b>%s</b> nearer, to <b>%s</b>."), name, length,
                   away);
}

/**
 * lr_judge_offer_light_move:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @relight: what may be dimmed
 * @view: number of the view that it is about
 * @aim: what that misses
 *
 * Offers other places for the key, to be tried for what else they do: it may stand in a picture there.
 *
 * Returns: %FALSE if there is none
 */
gboolean
lr_judge_offer_light_move (LrJudge         *judge,
                           LrRemark        *remark,
                           const LrRelight *relight,
                           guint            view,
                           LrRelightAim     aim)
{
  LrRelightMove moves[LR_RELIGHT_MOVES];
  const LrPlaced *person;
  guint n;

  if (view >= relight->n_views || judge->study->plan->is_read_only)
    return FALSE;

  person = relight->view[view].camera->subject;
  n = lr_relight_find_moves (relight, judge, view, aim, moves);
  for (guint i = 0; i < n; i++)
    {
      const LrRelightLamp *lamp = &relight->lamp[moves[i].lamp];
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_move (remedy, lamp->placed, moves[i].to_m, &person->at_m);
      if (fabs (moves[i].dim - lamp->dim) > 1e-9)
        change (remedy, lamp, moves[i].dim);
      say_move (judge, remedy, &moves[i], lamp, person);
      lr_judge_offer (judge, remark, remedy);
    }
  return n > 0;
}

/**
 * lr_judge_keep_exposure:
 * @judge: a judge
 * @remark: a remark about a face
 * @relight: what may be dimmed
 * @view: number of its view
 * @more_stops: how much more its sensor is to make of the light; < 0: less
 *
 * Gives the remark another setting of the camera, if that pushes neither walls nor other cameras off, nor takes a noisy ISO.
 *
 * Returns: %FALSE if it does
 */
gboolean
lr_judge_keep_exposure (LrJudge         *judge,
                        LrRemark        *remark,
                        const LrRelight *relight,
                        guint            view,
                        double           more_stops)
{
  LrRelightAnswer answer = { 0 };

  lr_relight_get (relight, answer.dims);
  answer.more_stops[view] = more_stops;
  if (lr_relight_harms (relight, &answer))
    return FALSE;

  lr_judge_keep_compensation (judge, remark, relight->view[view].camera, more_stops);
  return remark->remedy != NULL;
}

/* What each camera lacks; FALSE: they are not all off alike */
static gboolean
find_exposures (const LrJudge   *judge,
                const LrRelight *relight,
                guint            view,
                LrRelightAnswer *answer)
{
  lr_relight_get (relight, answer->dims);
  for (guint i = 0; i < relight->n_views; i++)
    {
      LrShares shares;

      if (!lr_light_levels_shares (judge->levels, relight->view[i].camera->item->id, &shares) || !(shares.face > 0.0))
        return FALSE;
      answer->more_stops[i] = log2 (relight->face_share / shares.face);
    }
  for (guint i = 0; i < relight->n_views; i++)
    if (fabs (answer->more_stops[i] - answer->more_stops[view]) > ALIKE_STOPS)
      return FALSE;
  return TRUE;
}

static LrRemedy *
make_exposures (LrJudge               *judge,
                const LrRelight       *relight,
                const LrRelightAnswer *answer)
{
  LrRemedy *remedy = lr_remedy_new ();
  g_autoptr (GString) text = set_cameras (judge, remedy, relight, answer);
  g_autofree char *figure = lr_markup_to_text (text->str);

  /* Translators: "Set A to ISO 800, B to ISO 3200." */
  lr_remedy_say (remedy, figure, _("Set %s."), text->str);
  return remedy;
}

/**
 * lr_judge_keep_all_exposures:
 * @judge: a judge
 * @remark: a remark about a face
 * @relight: what may be dimmed
 * @view: number of its view
 *
 * Gives the remark other settings of all cameras, if their faces are all off alike: "Set A to ISO 800, B to ISO 3200."
 *
 * Returns: %FALSE if they are not, or if that harms anything else
 */
gboolean
lr_judge_keep_all_exposures (LrJudge         *judge,
                             LrRemark        *remark,
                             const LrRelight *relight,
                             guint            view)
{
  LrRelightAnswer answer = { 0 };

  if (judge->study->plan->is_read_only || !find_exposures (judge, relight, view, &answer) || lr_relight_harms (relight, &answer))
    return FALSE;

  lr_judge_keep (judge, remark, make_exposures (judge, relight, &answer));
  return TRUE;
}

/**
 * lr_judge_offer_exposure:
 * @judge: a judge
 * @remark: a remark about a face, the one added last
 * @relight: what may be dimmed
 * @view: number of its view
 * @more_stops: how much more its sensor is to make of the light; < 0: less
 *
 * Offers another setting of the camera, or of all if they are off alike, behind what was offered before and whatever it harms; nothing where
 * no ISO does it.
 */
void
lr_judge_offer_exposure (LrJudge         *judge,
                         LrRemark        *remark,
                         const LrRelight *relight,
                         guint            view,
                         double           more_stops)
{
  LrRelightAnswer answer = { 0 };

  if (!find_exposures (judge, relight, view, &answer))
    {
      answer = (LrRelightAnswer) { 0 };
      answer.more_stops[view] = more_stops;
    }
  for (guint i = 0; i < relight->n_views; i++)
    {
      const LrCamera *camera = &relight->view[i].camera->item->camera;

      if (answer.more_stops[i] > 0.0 && camera->iso * exp2 (answer.more_stops[i] - camera->nd_stops) > HIGHEST_ISO)
        return;
    }
  lr_judge_offer (judge, remark, make_exposures (judge, relight, &answer));
}
