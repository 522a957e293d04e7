/* prop_text.c - the value of a property as people write it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "prop_text.h"

#include "plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_BREAK_SPACE "\302\240"
#define INCH_M 0.0254

static gboolean
is_f_number (const LrProp *prop)
{
  return g_str_has_prefix (prop->key, "f-number");
}

static gboolean
is_shutter (const LrProp *prop)
{
  return g_str_equal (prop->key, "shutter-s");
}

/* Up to @decimals decimals, no zeros at the end, a true minus */
static char *
format_number (double      value,
               int         decimals,
               const char *unit)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE], format[16];
  char *end;
  gboolean has_sign;

  g_snprintf (format, sizeof format, "%%.%df", CLAMP (decimals, 0, 9));
  g_ascii_formatd (digits, sizeof digits, format, value);
  if (strchr (digits, '.') != NULL)
    {
      end = digits + strlen (digits);
      while (end[-1] == '0')
        *--end = '\0';
      if (end[-1] == '.')
        *--end = '\0';
    }

  has_sign = digits[0] == '-' && !g_str_equal (digits, "-0");
  return g_strconcat (has_sign ? "−" : "", digits + (digits[0] == '-' ? 1 : 0), unit != NULL ? unit : "", NULL);
}

/**
 * lr_prop_text_format:
 * @prop: a property that holds a number
 * @value: in inside units
 * @units: how lengths are written
 *
 * Lengths of lenses and sensors are in millimetres whatever the units.
 *
 * Returns: (transfer full): the value with its unit
 */
char *
lr_prop_text_format (const LrProp *prop,
                     double        value,
                     LrUnits       units)
{
  g_autofree char *unit = NULL;

  if (!lr_prop_is_given (prop, value) && prop->type != LR_PROP_CHOICE)
    return g_strdup ("");

  switch (prop->type)
    {
    case LR_PROP_LENGTH:
      return lr_length_format (value, units);
    case LR_PROP_FINE_LENGTH:
      return format_number (value * 1000.0, 4, NO_BREAK_SPACE "mm");
    case LR_PROP_ANGLE:
      return format_number (value / LR_DEG, 1, "°");
    case LR_PROP_SHARE:
      return format_number (value * 100.0, 1, NO_BREAK_SPACE "%");
    case LR_PROP_NUMBER:
      if (is_f_number (prop))
        return lr_f_number_format (value);
      if (is_shutter (prop))
        return lr_shutter_format (value);
      if (prop->unit != NULL)
        unit = g_strconcat (g_str_equal (prop->unit, "°") ? "" : NO_BREAK_SPACE, _(prop->unit), NULL);
      return format_number (value, prop->decimals, unit);
    case LR_PROP_COUNT:
    case LR_PROP_FLAG:
    case LR_PROP_CHOICE:
    case LR_PROP_TEXT:
    case LR_PROP_REF:
    default:
      return format_number (value, 0, NULL);
    }
}

/* "2.5", "2,5", "−3", followed by @unit (nullable), in any mixture of spaces, or by nothing */
static gboolean
parse_number (const char *text,
              const char *unit,
              double     *value)
{
  g_autoptr (GString) plain = g_string_new (text);
  char *rest;
  double number;

  g_string_replace (plain, "−", "-", 0);
  g_string_replace (plain, ",", ".", 0);
  g_string_replace (plain, NO_BREAK_SPACE, " ", 0);
  g_strstrip (plain->str);
  if (plain->str[0] == '\0' || g_ascii_isalpha (plain->str[0]))
    return FALSE;

  number = g_ascii_strtod (plain->str, &rest);
  if (rest == plain->str || !isfinite (number) || memchr (plain->str, 'x', (gsize) (rest - plain->str)) != NULL)
    return FALSE;

  g_strchug (rest);
  if (rest[0] != '\0' && (unit == NULL || g_ascii_strcasecmp (rest, unit) != 0))
    return FALSE;

  *value = number;
  return TRUE;
}

static gboolean
parse_scaled (const char *text,
              const char *unit,
              double      scale,
              double     *value)
{
  double number;

  if (!parse_number (text, unit, &number))
    return FALSE;

  *value = number * scale;
  return TRUE;
}

/* "85", "85 mm", and for those who write it out "0.085 m" */
static gboolean
parse_fine_length (const char *text,
                   double     *value)
{
  return parse_scaled (text, "mm", 0.001, value) || parse_scaled (text, "m", 1.0, value)
         || parse_scaled (text, "cm", 0.01, value) || parse_scaled (text, "in", INCH_M, value);
}

static gboolean
parse_any (const LrProp *prop,
           const char   *text,
           LrUnits       units,
           double       *value)
{
  switch (prop->type)
    {
    case LR_PROP_LENGTH:
      return lr_length_parse (text, units, value);
    case LR_PROP_FINE_LENGTH:
      return parse_fine_length (text, value);
    case LR_PROP_ANGLE:
      return lr_angle_parse (text, value);
    case LR_PROP_SHARE:
      return parse_scaled (text, "%", 0.01, value);
    case LR_PROP_NUMBER:
      if (is_f_number (prop))
        return lr_f_number_parse (text, value);
      if (is_shutter (prop))
        return lr_shutter_parse (text, value);
      return parse_number (text, prop->unit != NULL ? _(prop->unit) : NULL, value);
    case LR_PROP_COUNT:
    case LR_PROP_FLAG:
    case LR_PROP_CHOICE:
    case LR_PROP_TEXT:
    case LR_PROP_REF:
    default:
      return parse_number (text, NULL, value);
    }
}

/**
 * lr_prop_text_parse:
 * @prop: a property that holds a number
 * @text: as typed
 * @units: what a bare length is in
 * @value: (out): in inside units, rounded to what the file can hold
 *
 * Returns: %FALSE, with @value untouched and a sentence that names the range, if the text is not a value of @prop
 */
gboolean
lr_prop_text_parse (const LrProp  *prop,
                    const char    *text,
                    LrUnits        units,
                    double        *value,
                    GError       **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autofree char *least = NULL, *most = NULL;
  double number = lr_prop_none (prop);

  if ((stripped[0] == '\0' && prop->is_optional)
      || (parse_any (prop, stripped, units, &number)
          && lr_prop_accepts (prop, lr_prop_quantise (prop, number))))
    {
      *value = lr_prop_quantise (prop, number);
      return TRUE;
    }

  least = lr_prop_text_format (prop, prop->min, units);
  most = lr_prop_text_format (prop, prop->max, units);
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("%s: “%s” does not fit; it goes from %s to %s."),
               _(prop->label), stripped, least[0] != '\0' ? least : "0", most);
  return FALSE;
}

/**
 * lr_prop_text_step:
 * @prop: a property that holds a number
 * @units: of lengths
 *
 * Returns: a small change of it, in inside units
 */
double
lr_prop_text_step (const LrProp *prop,
                   LrUnits       units)
{
  switch (prop->type)
    {
    case LR_PROP_LENGTH:
      return units == LR_UNITS_IMPERIAL ? INCH_M : 0.01;
    case LR_PROP_FINE_LENGTH:
      return 0.001;
    case LR_PROP_ANGLE:
      return LR_DEG;
    case LR_PROP_SHARE:
      return 0.01;
    case LR_PROP_NUMBER:
      if (g_strcmp0 (prop->unit, "K") == 0)
        return 100.0;
      return prop->max > 5000.0 ? 10.0 : 1.0;
    case LR_PROP_COUNT:
    case LR_PROP_FLAG:
    case LR_PROP_CHOICE:
    case LR_PROP_TEXT:
    case LR_PROP_REF:
    default:
      return 1.0;
    }
}
