/* judge_color.c - the whites of the sources, and the cameras' white balance
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In reciprocal megakelvin, in which steps that look alike are alike.
 */

#include "config.h"

#include "judge_parts.h"

#include "color.h"

#include <glib/gi18n-lib.h>

#define COUNTS 0.2     /* of the light on a cheek, from which a source's white is seen there */
#define STEP_K 50.0
#define CLOSE 10.0     /* MK^-1: common practice, no source */
/* Shifts of filters that are sold as full ones, as published; the shares of them are not, and neither is the light that they take */
#define FULL_ORANGE 159.0
#define FULL_BLUE -137.0

static double
mired (double kelvin)
{
  return 1e6 / kelvin;
}

static void
judge_balance (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrFaceLight     *face)
{
  double set_k = camera->item->camera.white_balance_k, off = mired (face->mixed_k) - mired (set_k), limit = judge->limits[LR_LIMIT_WHITE_OFF];
  gboolean is_off = fabs (off) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WHITE_BALANCE, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  const char *name, *subject, *mixed, *set;
  LrRemedy *remedy;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  mixed = lr_say_number (judge, STEP_K * round (face->mixed_k / STEP_K), 0);
  set = lr_say_number (judge, set_k, 0);
  remark->value = fabs (off);
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  if (!is_off)
    {
      lr_remark_say (remark, _("%s is balanced for <b>%s</b> K; the light on %s’s face is <b>%s</b> K."), name, set, subject, mixed);
      return;
    }

  lr_remark_say (remark, off > 0.0 ? _("%s is balanced for <b>%s</b> K, but the light on %s’s face is <b>%s</b> K: the face comes out warm.")
                                   : _("%s is balanced for <b>%s</b> K, but the light on %s’s face is <b>%s</b> K: the face comes out cold."),
                 name, set, subject, mixed);
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "white-balance-k", STEP_K * round (face->mixed_k / STEP_K));
  lr_remedy_say (remedy, mixed, _("Set %s to <b>%s</b> K."), name, mixed);
  lr_judge_keep (judge, remark, remedy);
}

static gboolean
counts (const LrJudge     *judge,
        const LrFaceLight *face,
        guint              source)
{
  const LrFacePoint cheeks[] = { face->lit, face->shadow };

  for (gsize i = 0; i < G_N_ELEMENTS (cheeks); i++)
    if (lr_light_levels_lx_of (judge->levels, source, face->person->item->id, cheeks[i]) > COUNTS * lr_lux_all (face->at[cheeks[i]]))
      return TRUE;
  return FALSE;
}

static const char *
say_source (LrJudge             *judge,
            const LrLightSource *source)
{
  return source->is_sun ? lr_say_sun (judge, source->placed) : lr_say_name (judge, source->placed);
}

/* What the sun has is known to no more */
static const char *
say_kelvin (LrJudge             *judge,
            const LrLightSource *source)
{
  return lr_say_number (judge, source->is_sun ? STEP_K * round (source->kelvin / STEP_K) : source->kelvin, 0);
}

/* The levels are of a study of their own */
static void
mark_source (LrJudge             *judge,
             LrRemark            *remark,
             const LrPlaced      *person,
             const LrLightSource *source)
{
  const LrPlaced *placed = lr_study_find_placed (judge->study, source->placed->item->id);

  lr_remark_about (remark, placed);
  if (placed != NULL)
    lr_remark_mark_line (remark, person->at_m, placed->at_m, NULL);
}

/* The warmest and the coldest that count on the face, one of them (nullable) thought otherwise; both NULL: none counts */
typedef struct
{
  const LrLightSource *warm, *cold;
  double               warm_k, cold_k;
} Whites;

static Whites
read_whites (const LrJudge       *judge,
             const LrFaceLight   *face,
             const LrLightSource *other,
             double               other_k)
{
  Whites whites = { NULL, NULL, HUGE_VAL, 0.0 };

  for (guint i = 0; i < lr_light_levels_n_sources (judge->levels); i++)
    {
      const LrLightSource *source = lr_light_levels_source (judge->levels, i);
      double kelvin = source == other ? other_k : source->kelvin;

      if (!(kelvin > 0.0) || !counts (judge, face, i))
        continue;
      if (kelvin < whites.warm_k)
        {
          whites.warm = source;
          whites.warm_k = kelvin;
        }
      if (kelvin > whites.cold_k)
        {
          whites.cold = source;
          whites.cold_k = kelvin;
        }
    }
  return whites;
}

static double
apart_of (const Whites *whites)
{
  return mired (whites->warm_k) - mired (whites->cold_k);
}

/* Whether the lamp can be set so near to a white that all agree; then that is the remedy */
static gboolean
set_lamp (LrJudge             *judge,
          LrRemark            *remark,
          const LrFaceLight   *face,
          const LrLightSource *source,
          double               wanted_k)
{
  const LrPlaced *lamp = lr_study_find_placed (judge->study, source->placed->item->id);
  const LrLight *light = &source->placed->item->light;
  double kelvin = round (fmin (fmax (wanted_k, light->color_temperature_min_k), light->color_temperature_max_k));
  const char *figure = lr_say_number (judge, kelvin, 0);
  g_autofree char *short_figure = g_strconcat (figure, " K", NULL);
  Whites then;
  LrRemedy *remedy;

  if (lamp == NULL || lamp->item->kind != LR_ITEM_LIGHT || !(light->color_temperature_min_k > 0.0)
      || !(light->color_temperature_max_k > light->color_temperature_min_k))
    return FALSE;

  then = read_whites (judge, face, source, kelvin);
  if (apart_of (&then) > judge->limits[LR_LIMIT_MIXED_WHITES])
    return FALSE;

  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, lamp->item, "color-temperature-k", kelvin);
  lr_remedy_say (remedy, short_figure, _("Set %s to <b>%s</b> K."), lr_say_name (judge, lamp), figure);
  lr_judge_keep (judge, remark, remedy);
  return TRUE;
}

/* "−134", and of a filter that is sold so: "−134 (a full blue has −137)" */
static const char *
say_shift (LrJudge    *judge,
           double      shift,
           double      full,
           const char *format)
{
  g_autofree char *sign = g_strconcat (shift > 0.0 ? "+" : "", lr_say_number (judge, shift, 0), NULL), *text = NULL;

  if (fabs (shift - full) > CLOSE)
    text = g_strdup_printf ("<b>%s</b> MK⁻¹", sign);
  else
    {
      g_autofree char *sold = g_strconcat (full > 0.0 ? "+" : "", lr_say_number (judge, full, 0), NULL), *is_full = NULL;

      is_full = g_strdup_printf (g_dgettext (GETTEXT_PACKAGE, format), sold);
      text = g_strdup_printf ("<b>%s</b> MK⁻¹ (%s)", sign, is_full);
    }
  return g_string_chunk_insert (judge->words, text);
}

/* A filter that warms has a shift over 0: orange; blue ones are under it */
static void
say_filters (LrJudge      *judge,
             LrRemark     *remark,
             const Whites *whites)
{
  double blue = 0.0, orange = 0.0;

  lr_mired_shift (whites->warm_k, whites->cold_k, &blue);
  lr_mired_shift (whites->cold_k, whites->warm_k, &orange);
  /* Translators: "A blue filter of −134 MK⁻¹ on L1 would match them, or an orange one of +134 MK⁻¹ on L2." */
  lr_remark_say (remark, _("A blue filter of %s on %s would match them, or an orange one of %s on %s."),
                 say_shift (judge, blue, FULL_BLUE, N_("a full blue has <b>%s</b>")), say_source (judge, whites->warm),
                 say_shift (judge, orange, FULL_ORANGE, N_("a full orange has <b>%s</b>")), say_source (judge, whites->cold));
}

/* The key is left as it is, if the other can be set */
static void
offer_match (LrJudge           *judge,
             LrRemark          *remark,
             const LrFaceLight *face,
             const Whites      *whites)
{
  gboolean is_cold_first = whites->warm->placed == face->key && !whites->warm->is_sun;

  if (is_cold_first && set_lamp (judge, remark, face, whites->cold, whites->warm_k))
    return;
  if (set_lamp (judge, remark, face, whites->warm, whites->cold_k))
    return;
  if (!is_cold_first && set_lamp (judge, remark, face, whites->cold, whites->warm_k))
    return;

  say_filters (judge, remark, whites);
}

static void
judge_mixed (LrJudge           *judge,
             const LrPlaced    *person,
             const LrFaceLight *face)
{
  Whites whites = read_whites (judge, face, NULL, 0.0);
  double apart, limit = judge->limits[LR_LIMIT_MIXED_WHITES];
  LrRemark *remark;

  if (whites.warm == NULL || whites.warm == whites.cold)
    return;

  apart = apart_of (&whites);
  remark = lr_judge_add (judge, LR_CHECK_MIXED_WHITES, apart > limit ? LR_GRADE_MIND : LR_GRADE_FINE, person, NULL);
  if (remark == NULL)
    return;

  remark->value = apart;
  remark->limit = limit;
  mark_source (judge, remark, person, whites.warm);
  mark_source (judge, remark, person, whites.cold);
  lr_remark_say (remark, _("On %s’s face %s (<b>%s</b> K) meets %s (<b>%s</b> K), <b>%s</b> MK⁻¹ apart."), lr_say_name (judge, person),
                 say_source (judge, whites.warm), say_kelvin (judge, whites.warm), say_source (judge, whites.cold), say_kelvin (judge, whites.cold),
                 lr_say_number (judge, apart, 0));
  if (apart > limit)
    offer_match (judge, remark, face, &whites);
}

/**
 * lr_judge_color:
 * @judge: a judge
 *
 * White balance, and whites that meet on one face.
 */
void
lr_judge_color (LrJudge *judge)
{
  const LrPlaced *last = NULL;

  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels))
    return;

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      const LrFaceLight *face = camera->has_subject ? lr_light_levels_face (judge->levels, camera->subject->item->id) : NULL;

      if (face == NULL || !isfinite (face->mixed_k) || lr_judge_is_cutaway (judge, camera))
        continue;
      judge_balance (judge, camera, face);
      if (camera->subject != last)
        judge_mixed (judge, camera->subject, face);
      last = camera->subject;
    }
}
