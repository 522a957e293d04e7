/* sentences.c - figures, names and whole sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures stand between <b> and </b>, with a no-break space before their unit and a true minus, so that a
 * sentence needs no further care to be shown as Pango markup. Names come from the user and are escaped.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define NO_BREAK_SPACE "\u00a0"

static const char *
keep (LrJudge *judge,
      char    *text)
{
  const char *kept = g_string_chunk_insert (judge->words, text);

  g_free (text);
  return kept;
}

/* Most names hold nothing that markup minds */
static const char *
escaped (LrJudge    *judge,
         const char *name)
{
  return strpbrk (name, "<>&'\"") == NULL ? name : keep (judge, g_markup_escape_text (name, -1));
}

/**
 * lr_say_title:
 * @judge: a judge
 * @placed: a thing
 *
 * Returns: (transfer none): its full name, escaped for markup: "Camera A", "L1 key"
 */
const char *
lr_say_title (LrJudge        *judge,
              const LrPlaced *placed)
{
  return escaped (judge, keep (judge, lr_item_title (placed->item)));
}

/**
 * lr_say_sun:
 * @judge: a judge
 * @window: where it comes in
 *
 * Returns: (transfer none): "the sun through window 2", escaped for markup
 */
const char *
lr_say_sun (LrJudge        *judge,
            const LrPlaced *window)
{
  /* Translators: a window; in the middle of a sentence */
  g_autofree char *text = g_strdup_printf (_("the sun through %s"), lr_say_title (judge, window));

  return g_string_chunk_insert (judge->words, text);
}

/**
 * lr_say_name:
 * @judge: a judge
 * @placed: a thing
 *
 * Returns: (transfer none): its short name, escaped for markup: "A", "L1", "Wenna"
 */
const char *
lr_say_name (LrJudge        *judge,
             const LrPlaced *placed)
{
  const LrItem *item = placed->item;
  gboolean is_tagged = item->kind == LR_ITEM_CAMERA || item->kind == LR_ITEM_LIGHT || item->kind == LR_ITEM_MICROPHONE
                       || item->kind == LR_ITEM_PANEL;

  if (is_tagged && item->tag[0] != '\0')
    return escaped (judge, item->tag);

  return lr_say_title (judge, placed);
}

/**
 * lr_say_number:
 * @judge: a judge
 * @number: a number
 * @decimals: how many
 *
 * Returns: (transfer none): the number with a true minus
 */
const char *
lr_say_number (LrJudge *judge,
               double   number,
               int      decimals)
{
  return keep (judge, lr_number_format (number, decimals));
}

/**
 * lr_say_length:
 * @judge: a judge
 * @length_m: a length [m]
 *
 * Returns: (transfer none): "0.46 m", or feet and inches
 */
const char *
lr_say_length (LrJudge *judge,
               double   length_m)
{
  return keep (judge, lr_length_format (length_m, judge->units));
}

/**
 * lr_say_plain:
 * @judge: a judge
 * @length_m: a length [m]
 *
 * Returns: (transfer none): "0.46", to stand before another length with its unit; or feet and inches
 */
const char *
lr_say_plain (LrJudge *judge,
              double   length_m)
{
  return keep (judge, lr_length_format_short (length_m, judge->units));
}

/**
 * lr_say_small:
 * @judge: a judge
 * @length_m: a length [m]
 *
 * Returns: (transfer none): "14 cm", from a metre on as lr_say_length(); or feet and inches
 */
const char *
lr_say_small (LrJudge *judge,
              double   length_m)
{
  if (judge->units != LR_UNITS_METRIC || fabs (length_m) >= 0.995)
    return lr_say_length (judge, length_m);

  return keep (judge, g_strconcat (lr_say_number (judge, 100.0 * length_m, 0), NO_BREAK_SPACE "cm", NULL));
}

/**
 * lr_say_angle:
 * @judge: a judge
 * @angle_rad: an angle [rad]
 *
 * Returns: (transfer none): whole degrees: "22°"
 */
const char *
lr_say_angle (LrJudge *judge,
              double   angle_rad)
{
  return keep (judge, lr_angle_format (angle_rad));
}

static const char *
say_with_unit (LrJudge    *judge,
               double      number,
               int         decimals,
               const char *unit)
{
  return keep (judge, g_strconcat (lr_say_number (judge, number, decimals), unit, NULL));
}

static int
share_decimals (double share)
{
  return fabs (share) < 0.0195 ? 1 : 0;
}

/**
 * lr_say_share:
 * @judge: a judge
 * @share: a share, 1 for the whole
 *
 * Returns: (transfer none): "19 %", under 2 % with a decimal
 */
const char *
lr_say_share (LrJudge *judge,
              double   share)
{
  return say_with_unit (judge, 100.0 * share, share_decimals (share), NO_BREAK_SPACE "%");
}

/* With as many decimals, up to three more, as tell the number from the limit */
static const char *
say_apart (LrJudge    *judge,
           double      number,
           double      limit,
           int         decimals,
           const char *unit)
{
  int most = decimals + 3;

  while (decimals < most
         && strcmp (lr_say_number (judge, number, decimals), lr_say_number (judge, limit, decimals)) == 0)
    decimals++;

  return say_with_unit (judge, number, decimals, unit);
}

/**
 * lr_say_angle_off:
 * @judge: a judge
 * @angle_rad: an angle that misses its limit [rad]
 * @limit_rad: the limit [rad]
 *
 * Returns: (transfer none): the angle, with as many decimals as tell it from the limit
 */
const char *
lr_say_angle_off (LrJudge *judge,
                  double   angle_rad,
                  double   limit_rad)
{
  return say_apart (judge, angle_rad / LR_DEG, limit_rad / LR_DEG, 0, "°");
}

/**
 * lr_say_length_off:
 * @judge: a judge
 * @length_m: a length that misses its limit [m]
 * @limit_m: the limit [m]
 *
 * Returns: (transfer none): the length, with as many decimals as tell it from the limit
 */
const char *
lr_say_length_off (LrJudge *judge,
                   double   length_m,
                   double   limit_m)
{
  if (judge->units != LR_UNITS_METRIC)
    return lr_say_length (judge, length_m);

  return say_apart (judge, length_m, limit_m, 2, NO_BREAK_SPACE "m");
}

/**
 * lr_say_small_off:
 * @judge: a judge
 * @length_m: a length that misses its limit [m]
 * @limit_m: the limit [m]
 *
 * Returns: (transfer none): as lr_say_length_off(), in centimetres
 */
const char *
lr_say_small_off (LrJudge *judge,
                  double   length_m,
                  double   limit_m)
{
  if (judge->units != LR_UNITS_METRIC || fabs (length_m) >= 0.995)
    return lr_say_length_off (judge, length_m, limit_m);

  return say_apart (judge, 100.0 * length_m, 100.0 * limit_m, 0, NO_BREAK_SPACE "cm");
}

/**
 * lr_say_share_off:
 * @judge: a judge
 * @share: a share that misses its limit
 * @limit: the limit
 *
 * Returns: (transfer none): the share, with as many decimals as tell it from the limit
 */
const char *
lr_say_share_off (LrJudge *judge,
                  double   share,
                  double   limit)
{
  return say_apart (judge, 100.0 * share, 100.0 * limit, share_decimals (share), NO_BREAK_SPACE "%");
}

/**
 * lr_say_limit:
 * @judge: a judge
 * @limit: a limit
 *
 * Returns: (transfer none): its value in the plan, as its type is written
 */
const char *
lr_say_limit (LrJudge *judge,
              LrLimit  limit)
{
  double value = judge->limits[limit];

  switch (lr_limit_info (limit)->prop.type)
    {
    case LR_PROP_LENGTH:
    case LR_PROP_FINE_LENGTH:
      return lr_say_small (judge, value);
    case LR_PROP_ANGLE:
      return lr_say_angle (judge, value);
    case LR_PROP_SHARE:
      return lr_say_share (judge, value);
    case LR_PROP_NUMBER:
    case LR_PROP_COUNT:
    case LR_PROP_FLAG:
    case LR_PROP_CHOICE:
    case LR_PROP_TEXT:
    case LR_PROP_REF:
    default:
      return lr_say_number (judge, value, 0);
    }
}

/**
 * lr_say_stop:
 * @judge: a judge
 * @f_number: an f-number
 *
 * Returns: (transfer none): "f/2.8"
 */
const char *
lr_say_stop (LrJudge *judge,
             double   f_number)
{
  return keep (judge, lr_f_number_format (f_number));
}

/**
 * lr_say_focal:
 * @judge: a judge
 * @focal_m: a focal length [m]
 *
 * Returns: (transfer none): "50 mm", whatever the user's units
 */
const char *
lr_say_focal (LrJudge *judge,
              double   focal_m)
{
  double focal_mm = 1000.0 * focal_m;
  int decimals = fabs (focal_mm - round (focal_mm)) < 0.05 ? 0 : 1;

  return keep (judge, g_strconcat (lr_say_number (judge, focal_mm, decimals), NO_BREAK_SPACE "mm", NULL));
}

/**
 * lr_say_behind:
 * @judge: a judge
 * @camera: a camera with something behind its subject
 *
 * Returns: (transfer none): what it is: "west wall", "drafting table"
 */
const char *
lr_say_behind (LrJudge               *judge,
               const LrCameraReading *camera)
{
  switch (camera->behind)
    {
    case LR_BEHIND_WALL:
      return lr_wall_title (judge->study->setup->room, camera->behind_wall);
    case LR_BEHIND_ITEM:
      return lr_say_title (judge, camera->behind_item);
    case LR_BEHIND_FLOOR:
      return _("floor");
    case LR_BEHIND_CEILING:
      return _("ceiling");
    case LR_BEHIND_NOTHING:
    default:
      return "";
    }
}

/**
 * lr_say_towards:
 * @judge: a judge
 * @way: of a move, on the sheet
 *
 * Returns: (transfer none): where it goes: "towards the north wall"
 */
const char *
lr_say_towards (LrJudge *judge,
                LrVec2   way)
{
  return lr_wall_towards (judge->study->setup->room, way);
}

/* Appends what the entity stands for; returns the length of the entity */
static gsize
append_entity (GString    *text,
               const char *entity)
{
  static const struct { const char *entity; char sign; } entities[] = {
    { "&lt;", '<' }, { "&gt;", '>' }, { "&amp;", '&' }, { "&apos;", '\'' }, { "&#39;", '\'' }, { "&quot;", '"' },
  };

  for (guint i = 0; i < G_N_ELEMENTS (entities); i++)
    if (g_str_has_prefix (entity, entities[i].entity))
      {
        g_string_append_c (text, entities[i].sign);
        return strlen (entities[i].entity);
      }

  g_string_append_c (text, '&');
  return 1;
}

/**
 * lr_markup_to_text:
 * @markup: Pango markup
 *
 * Returns: (transfer full): the same without tags, its entities resolved
 */
char *
lr_markup_to_text (const char *markup)
{
  GString *text = g_string_sized_new (strlen (markup) + 1);
  const char *p = markup;

  while (*p != '\0')
    {
      gsize plain = strcspn (p, "<&");

      g_string_append_len (text, p, (gssize) plain);
      p += plain;
      if (*p == '<')
        p = strchr (p, '>') != NULL ? strchr (p, '>') + 1 : p + strlen (p);
      else if (*p == '&')
        p += append_entity (text, p);
    }

  return g_string_free (text, FALSE);
}

/* Joins a sentence to those before it and keeps the text beside it */
static void
append_sentence (char       **markup,
                 char       **text,
                 const char  *sentence)
{
  char *joined = *markup != NULL ? g_strconcat (*markup, " ", sentence, NULL) : g_strdup (sentence);

  g_free (*markup);
  g_free (*text);
  *markup = joined;
  *text = lr_markup_to_text (joined);
}

/**
 * lr_remark_say:
 * @remark: a remark
 * @format: a whole sentence, as for printf, with figures between <b> and </b>
 * @...: escaped names and figures
 *
 * Adds a sentence to the remark, as markup and as text.
 */
void
lr_remark_say (LrRemark   *remark,
               const char *format,
               ...)
{
  g_autofree char *sentence = NULL;
  va_list args;

  va_start (args, format);
  sentence = g_strdup_vprintf (format, args);
  va_end (args);
  append_sentence (&remark->markup, &remark->text, sentence);
}

/**
 * lr_remedy_say:
 * @remedy: a remedy
 * @short_figure: its figure for the sheet
 * @format: a whole sentence, as for printf, with figures between <b> and </b>
 * @...: escaped names and figures
 *
 * Gives the remedy its sentence.
 */
void
lr_remedy_say (LrRemedy   *remedy,
               const char *short_figure,
               const char *format,
               ...)
{
  g_autofree char *sentence = NULL;
  va_list args;

  va_start (args, format);
  sentence = g_strdup_vprintf (format, args);
  va_end (args);
  append_sentence (&remedy->markup, &remedy->sentence, sentence);
  g_free (remedy->short_figure);
  remedy->short_figure = g_strdup (short_figure);
}
