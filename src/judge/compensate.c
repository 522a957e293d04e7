/* compensate.c - a camera set otherwise, so that its picture gets brighter or darker by so much
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is changed first (common practice, no source):
 *
 *   too bright   the ISO, while it is well over a native value (or high, where none is known), down to it; then a grey filter; then the ISO
 *                for what is left of a stop
 *   too dark     the grey filter off; the ISO, as far as it stays near a native value (or at all, where none is known); then the stop, within
 *                the range of the lens and as long as the depth of field stays comfortable, where the stop is free; then the ISO over that
 *
 * Less than half a stop goes by the ISO alone, as long as it stays near a native value. Grey filters are sold by the whole stop, a density
 * of 0.3; parts of a stop over the first take a variable one, and under one there is none. The ISO goes by thirds of a stop. Depth of field
 * and softness behind are what the stop is for, so it comes last.
 */

#include "config.h"

#include "judge_parts.h"

#include "exposure.h"

#include <glib/gi18n-lib.h>

#define MOST_ISO 12800.0
#define HIGH_ISO 1600.0 /* over it noise shows: lowered rather than filtered (common practice, no source) */
#define LOW_ISO 100.0
#define NEAR_STOPS 0.17 /* half of what the ISO goes by; light is not better known than to half a stop */
#define PART_STOPS 0.5 /* what the ISO makes up for alone */
#define LEFT_STOPS 0.25 /* what may be left */

typedef struct
{
  const LrCameraReading *reading;
  const LrCamera *camera;
  const LrLens   *lens;      /* (nullable): its stop may be opened */
  const double   *limits;
  double          native;    /* 0: not known */
  double          off_stops; /* that the ISO may be off it */
  double          f_number, iso, nd_stops;
  double          left_stops; /* still to be made up; > 0: too dark */
} Setting;

static Setting
setting_of (const LrJudge         *judge,
            const LrCameraReading *camera,
            double                 more_stops)
{
  const LrCamera *c = &camera->item->camera;

  return (Setting) {
    .reading = camera, .camera = c, .limits = judge->limits, .native = lr_camera_native_iso (c),
    .off_stops = judge->limits[LR_LIMIT_NATIVE_ISO], .f_number = c->f_number, .iso = c->iso, .nd_stops = c->nd_stops, .left_stops = more_stops,
  };
}

/* As cameras write them, in thirds of a stop: nominal speeds of ISO 12232, from memory */
static double
nominal_iso (double iso)
{
  static const double isos[] = {
    50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800,
  };
  double nearest = isos[0];

  for (guint i = 1; i < G_N_ELEMENTS (isos); i++)
    if (fabs (log2 (isos[i] / iso)) < fabs (log2 (nearest / iso)))
      nearest = isos[i];
  return nearest;
}

static void
set_iso (Setting *setting,
         double   iso)
{
  setting->left_stops -= log2 (iso / setting->iso);
  setting->iso = iso;
}

/* As far as it takes, between two values, neither of which it is moved to from beyond */
static void
change_iso (Setting *setting,
            double   least,
            double   most)
{
  double low = fmin (least, setting->iso), high = fmax (most, setting->iso);
  double iso = setting->iso * exp2 (setting->left_stops);

  if (fabs (setting->left_stops) <= NEAR_STOPS)
    return;

  set_iso (setting, iso <= low ? low : iso >= high ? high : fmin (fmax (nominal_iso (iso), low), high));
}

/* The filter that there is; under a stop none, if the ISO can be lowered instead, else one stop, for the ISO can be raised */
static double
real_filter (const Setting *setting,
             double         wanted_stops)
{
  double whole = round (wanted_stops);

  if (fabs (wanted_stops - whole) <= NEAR_STOPS)
    return whole;
  if (wanted_stops > 1.0)
    return 0.1 * round (10.0 * wanted_stops);
  return setting->iso * exp2 (-wanted_stops) >= LOW_ISO ? 0.0 : 1.0;
}

static void
change_filter (Setting *setting)
{
  double real = real_filter (setting, fmax (0.0, setting->nd_stops - setting->left_stops));

  if (fabs (setting->left_stops) <= NEAR_STOPS)
    return;

  setting->left_stops += real - setting->nd_stops;
  setting->nd_stops = real;
}

/* Whether the depth of field is comfortable with another stop */
static gboolean
is_deep (const Setting *setting,
         double         f_number)
{
  const LrCameraReading *camera = setting->reading;
  LrSharpRange range;

  if (!camera->has_subject || !isfinite (camera->sharp_near_m))
    return TRUE;

  return lr_sharp_range (camera->focal_m, f_number * camera->converter, camera->coc_m, &camera->focus, &range)
         && range.far_m - range.near_m >= setting->limits[LR_LIMIT_DEPTH_COMFORT]
         && camera->eyes_depth_m - range.near_m >= setting->limits[LR_LIMIT_DEPTH_FRONT];
}

/* The stop printed on lenses that is nearest */
static double
nearest_stop (double f_number)
{
  double wider = lr_nominal_stop (f_number, TRUE), narrower = lr_nominal_stop (f_number, FALSE);

  return f_number / wider < narrower / f_number ? wider : narrower;
}

/* As far as it takes, as the lens goes, and as the depth of field stays comfortable */
static void
open_stop (Setting *setting)
{
  double f_number = setting->f_number * exp2 (-0.5 * setting->left_stops);

  if (setting->lens == NULL || setting->left_stops <= NEAR_STOPS)
    return;

  f_number = fmax (nearest_stop (f_number), setting->lens->f_number_min);
  while (f_number < setting->f_number && !is_deep (setting, f_number))
    f_number = lr_nominal_stop (f_number + 0.01, FALSE);
  f_number = fmin (f_number, setting->f_number);
  setting->left_stops += 2.0 * log2 (f_number / setting->f_number);
  setting->f_number = f_number;
}

static double
most_native (const Setting *setting)
{
  return setting->native > 0.0 ? setting->native * exp2 (setting->off_stops) : MOST_ISO;
}

static double
least_native (const Setting *setting)
{
  return fmax (LOW_ISO, setting->native > 0.0 ? setting->native * exp2 (-setting->off_stops) : 0.0);
}

/* A filter is not bought for less than half a stop */
static void
change_part (Setting *setting)
{
  if (fabs (setting->left_stops) < PART_STOPS)
    change_iso (setting, least_native (setting), most_native (setting));
}

static void
darken (Setting *setting)
{
  if (setting->native > 0.0 && setting->iso > most_native (setting) * (1.0 + 1e-9))
    change_iso (setting, setting->native, setting->iso);
  else if (!(setting->native > 0.0) && setting->iso > HIGH_ISO)
    change_iso (setting, LOW_ISO, setting->iso);
  change_part (setting);
  change_filter (setting);
  change_iso (setting, LOW_ISO, MOST_ISO);
}

static void
brighten (Setting *setting)
{
  change_part (setting);
  if (setting->nd_stops > 0.0)
    change_filter (setting);
  change_iso (setting, LOW_ISO, most_native (setting));
  open_stop (setting);
  change_iso (setting, LOW_ISO, MOST_ISO);
}

static Setting
find_setting (const LrJudge         *judge,
              const LrCameraReading *camera,
              double                 more_stops,
              gboolean               may_open)
{
  Setting setting = setting_of (judge, camera, more_stops);

  setting.lens = may_open ? lr_judge_mounted_lens (judge, camera) : NULL;
  if (more_stops < 0.0)
    darken (&setting);
  else
    brighten (&setting);
  return setting;
}

static char *
say_filter (LrJudge *judge,
            double   nd_stops)
{
  double density = 0.0;

  if (!(nd_stops > 0.0))
    return g_strdup (_("<b>no</b> grey filter"));

  lr_nd_density (nd_stops, &density);
  if (fabs (nd_stops - round (nd_stops)) > 1e-6)
    /* Translators: a filter that is turned to take from about one stop up */
    return g_strdup_printf (_("a variable grey filter at <b>%s</b> stops"), lr_say_number (judge, nd_stops, 1));

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "a grey filter of <b>%s</b> stop (density <b>%s</b>)",
                                       "a grey filter of <b>%s</b> stops (density <b>%s</b>)", (gulong) round (nd_stops)),
                          lr_say_number (judge, nd_stops, 0), lr_say_number (judge, density, 1));
}

static char *
say_iso_and_filter (LrJudge       *judge,
                    const Setting *setting)
{
  gboolean is_filter = setting->nd_stops != setting->camera->nd_stops, is_iso = setting->iso != setting->camera->iso;
  const char *iso = lr_say_number (judge, setting->iso, 0);
  g_autofree char *filter = is_filter ? say_filter (judge, setting->nd_stops) : NULL;

  if (!is_filter)
    return g_strdup_printf (_("ISO <b>%s</b>"), iso);
  if (!is_iso)
    return g_steal_pointer (&filter);
  if (setting->nd_stops == 0.0)
    return g_strdup_printf (_("ISO <b>%s</b> without its grey filter"), iso);

  /* Translators: "ISO 800 and a grey filter of 2 stops" */
  return g_strdup_printf (_("ISO <b>%s</b> and %s"), iso, filter);
}

/* "f/2, ISO 800 and a grey filter of 2 stops" */
static const char *
say_setting (LrJudge       *judge,
             const Setting *setting)
{
  gboolean is_more = setting->nd_stops != setting->camera->nd_stops || setting->iso != setting->camera->iso;
  gboolean is_stop = setting->f_number != setting->camera->f_number;
  g_autofree char *rest = is_more || !is_stop ? say_iso_and_filter (judge, setting) : NULL, *text = NULL;

  if (!is_stop)
    return g_string_chunk_insert (judge->words, rest);

  if (rest == NULL)
    text = g_strdup_printf ("<b>%s</b>", lr_say_stop (judge, setting->f_number));
  else if (setting->iso == setting->camera->iso && setting->nd_stops == 0.0)
    text = g_strdup_printf (_("<b>%s</b> without its grey filter"), lr_say_stop (judge, setting->f_number));
  else
    /* Translators: a stop, and what else is set: "f/2, ISO 800" */
    text = g_strdup_printf (_("<b>%s</b>, %s"), lr_say_stop (judge, setting->f_number), rest);
  return g_string_chunk_insert (judge->words, text);
}

static void
put_setting (LrRemedy              *remedy,
             const LrCameraReading *camera,
             const Setting         *setting)
{
  if (setting->f_number != setting->camera->f_number)
    lr_remedy_change (remedy, camera->item, "f-number", setting->f_number);
  if (setting->iso != setting->camera->iso)
    lr_remedy_change (remedy, camera->item, "iso", setting->iso);
  if (setting->nd_stops != setting->camera->nd_stops)
    lr_remedy_change (remedy, camera->item, "nd-stops", setting->nd_stops);
}

/**
 * lr_judge_compensate:
 * @judge: a judge
 * @remedy: a remedy under way
 * @camera: the camera that it changes
 * @more_stops: how much more the sensor is to make of the light; < 0: less
 *
 * Changes grey filter and ISO, as the head of this file tells; the stop is left to @remedy. If that falls short it says so.
 *
 * Returns: (transfer none): markup of the setting, "ISO <b>1600</b>", "a grey filter of <b>2</b> stops (density <b>0.6</b>)"
 */
const char *
lr_judge_compensate (LrJudge               *judge,
                     LrRemedy              *remedy,
                     const LrCameraReading *camera,
                     double                 more_stops)
{
  Setting setting = find_setting (judge, camera, more_stops, FALSE);
  g_autofree char *text = NULL;

  put_setting (remedy, camera, &setting);
  if (setting.left_stops <= LEFT_STOPS)
    return say_setting (judge, &setting);

  /* Translators: a setting, "ISO 12800", and how much it falls short */
  text = g_strdup_printf (_("%s (<b>%s</b> stops of light are missing)"), say_setting (judge, &setting),
                          lr_say_number (judge, setting.left_stops, 1));
  return g_string_chunk_insert (judge->words, text);
}

/**
 * lr_judge_keep_compensation:
 * @judge: a judge
 * @remark: a remark
 * @camera: the camera that is set otherwise
 * @more_stops: as of lr_judge_compensate()
 *
 * Gives the remark "Set B to ISO 1600.", unless what can be set falls short. The stop is opened if nothing else is near enough.
 */
void
lr_judge_keep_compensation (LrJudge               *judge,
                            LrRemark              *remark,
                            const LrCameraReading *camera,
                            double                 more_stops)
{
  Setting setting = find_setting (judge, camera, more_stops, TRUE);
  LrRemedy *remedy;
  const char *text;
  g_autofree char *figure = NULL;

  if (fabs (setting.left_stops) > LEFT_STOPS)
    return;

  remedy = lr_remedy_new ();
  put_setting (remedy, camera, &setting);
  text = say_setting (judge, &setting);
  figure = lr_markup_to_text (text);

  /* Translators: "Set B to ISO 1600.", "Set B to a grey filter of 2 stops (density 0.6)." */
  lr_remedy_say (remedy, figure, _("Set %s to %s."), lr_say_name (judge, camera->placed), text);
  lr_judge_keep (judge, remark, remedy);
}

/**
 * lr_judge_offer_native_iso:
 * @judge: a judge
 * @remark: a remark
 * @camera: a camera with a native ISO
 *
 * Gives the remark "Set A to its native ISO 800, and to a grey filter of 2 stops for the light.", with filter and stop alone, so that the level
 * stays. From a high ISO it takes a filter that can come off, or a lens that opens wide enough.
 *
 * Returns: how much light is missing then, in stops; 0: the remedy was given
 */
double
lr_judge_offer_native_iso (LrJudge               *judge,
                          LrRemark              *remark,
                          const LrCameraReading *camera)
{
  Setting setting = setting_of (judge, camera, 0.0);
  g_autofree char *figure = NULL;
  const char *native = lr_say_number (judge, setting.native, 0);
  LrRemedy *remedy;

  set_iso (&setting, setting.native);
  setting.lens = lr_judge_mounted_lens (judge, camera);
  if (setting.left_stops < 0.0 || setting.nd_stops > 0.0)
    change_filter (&setting);
  open_stop (&setting);
  if (fabs (setting.left_stops) > LEFT_STOPS)
    return setting.left_stops;

  remedy = lr_remedy_new ();
  put_setting (remedy, camera, &setting);
  figure = g_strdup_printf (_("ISO %s"), native);
  setting.iso = setting.camera->iso; /* it is told apart */
  if (setting.nd_stops == setting.camera->nd_stops && setting.f_number == setting.camera->f_number)
    lr_remedy_say (remedy, figure, _("Set %s to its native ISO <b>%s</b>."), lr_say_name (judge, camera->placed), native);
  else
    /* Translators: the camera, a number, "a grey filter of 2 stops (density 0.6)" */
    lr_remedy_say (remedy, figure, _("Set %s to its native ISO <b>%s</b>, and to %s for the light."), lr_say_name (judge, camera->placed), native,
                   say_setting (judge, &setting));
  lr_judge_offer (judge, remark, remedy);
  return 0.0;
}
