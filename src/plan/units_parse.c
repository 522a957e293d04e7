/* units_parse.c - lengths, angles and numbers as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 1 inch is 25.4 mm and 1 foot 0.3048 m, exactly: the international yard and pound agreement of 1959. A decimal comma is
 * as good as a decimal point, in every locale.
 */

#include "units.h"

#include "vec.h"

#include <string.h>

#define INCH_M 0.0254
#define FOOT_M 0.3048
#define NO_BREAK_SPACE "\u00a0"
#define MINUS "\u2212"
#define MAX_M 1e6 /* nothing longer is meant */
#define ROOM_M 30.0 /* a bare number beyond it is hardly a length in a room where people are interviewed; common practice, no source */
#define SMALL_FROM 10.0 /* and from here on one may be in centimetres or inches */

typedef struct
{
  const char *word;
  double      length_m;
  LrUnits     system;
} Unit;

/* A word that begins with another stands before it */
static const Unit length_units[] = {
  { "mm", 0.001, LR_UNITS_METRIC },
  { "cm", 0.01, LR_UNITS_METRIC },
  { "m", 1.0, LR_UNITS_METRIC },
  { "feet", FOOT_M, LR_UNITS_IMPERIAL },
  { "foot", FOOT_M, LR_UNITS_IMPERIAL },
  { "ft", FOOT_M, LR_UNITS_IMPERIAL },
  { "inches", INCH_M, LR_UNITS_IMPERIAL },
  { "inch", INCH_M, LR_UNITS_IMPERIAL },
  { "in", INCH_M, LR_UNITS_IMPERIAL },
  { "''", INCH_M, LR_UNITS_IMPERIAL },
  { "’’", INCH_M, LR_UNITS_IMPERIAL },
  { "′′", INCH_M, LR_UNITS_IMPERIAL },
  { "\"", INCH_M, LR_UNITS_IMPERIAL },
  { "″", INCH_M, LR_UNITS_IMPERIAL },
  { "”", INCH_M, LR_UNITS_IMPERIAL },
  { "'", FOOT_M, LR_UNITS_IMPERIAL },
  { "′", FOOT_M, LR_UNITS_IMPERIAL },
  { "’", FOOT_M, LR_UNITS_IMPERIAL },
};

/* Each take_ function moves the text past what it took */

static gboolean
take_word (const char **text,
           const char  *word)
{
  gsize length = strlen (word);

  if (g_ascii_strncasecmp (*text, word, length) != 0)
    return FALSE;
  *text += length;

  return TRUE;
}

static void
skip_spaces (const char **text)
{
  while (take_word (text, " ") || take_word (text, "\t") || take_word (text, NO_BREAK_SPACE) || take_word (text, "\u202f"))
    ;
}

static double
take_sign (const char **text)
{
  skip_spaces (text);
  if (take_word (text, "-") || take_word (text, MINUS))
    {
      skip_spaces (text);
      return -1.0;
    }
  take_word (text, "+");
  skip_spaces (text);

  return 1.0;
}

/* Digits with at most one point or comma between or before them */
static gboolean
take_decimal (const char **text,
              double      *number)
{
  char buffer[32];
  gsize n = 0;
  gboolean has_digit = FALSE, has_point = FALSE;
  const char *p = *text;

  for (; g_ascii_isdigit (*p) || ((*p == '.' || *p == ',') && !has_point); p++)
    {
      if (n + 1 >= sizeof buffer)
        return FALSE;
      has_point = has_point || !g_ascii_isdigit (*p);
      has_digit = has_digit || g_ascii_isdigit (*p);
      buffer[n++] = *p == ',' ? '.' : *p;
    }
  if (!has_digit)
    return FALSE;

  buffer[n] = '\0';
  *number = g_ascii_strtod (buffer, NULL);
  *text = p;

  return TRUE;
}

/* "/2" behind a number that was taken already */
static gboolean
take_divisor (const char **text,
              double      *divisor)
{
  const char *p = *text;

  if (!take_word (&p, "/") && !take_word (&p, "⁄"))
    return FALSE;
  if (!take_decimal (&p, divisor) || *divisor <= 0.0)
    return FALSE;
  *text = p;

  return TRUE;
}

static gboolean
take_fraction_sign (const char **text,
                    double      *number)
{
  static const struct { const char *sign; double value; } signs[] = {
    { "½", 0.5 }, { "¼", 0.25 }, { "¾", 0.75 }, { "⅛", 0.125 }, { "⅜", 0.375 }, { "⅝", 0.625 }, { "⅞", 0.875 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    if (take_word (text, signs[i].sign))
      {
        *number = signs[i].value;
        return TRUE;
      }

  return FALSE;
}

/* "10", "10.5", "1/2", "10 1/2", "10½" */
static gboolean
take_number (const char **text,
             double      *number)
{
  double fraction, divisor;
  const char *p;

  if (take_fraction_sign (text, number))
    return TRUE;
  if (!take_decimal (text, number))
    return FALSE;
  if (take_divisor (text, &divisor))
    {
      *number /= divisor;
      return TRUE;
    }

  p = *text;
  skip_spaces (&p);
  if (take_fraction_sign (&p, &fraction))
    *number += fraction;
  else if (take_decimal (&p, &fraction) && take_divisor (&p, &divisor))
    *number += fraction / divisor;
  else
    return TRUE;
  *text = p;

  return TRUE;
}

static const Unit *
take_length_unit (const char **text)
{
  skip_spaces (text);
  for (guint i = 0; i < G_N_ELEMENTS (length_units); i++)
    if (take_word (text, length_units[i].word))
      return &length_units[i];

  return NULL;
}

/* One number with its unit. Behind feet a bare number is inches; alone it is in @units. */
static gboolean
take_length (const char **text,
             const Unit  *before,
             LrUnits      units,
             const Unit **unit,
             double      *length_m)
{
  static const Unit metres = { "m", 1.0, LR_UNITS_METRIC };
  static const Unit feet = { "ft", FOOT_M, LR_UNITS_IMPERIAL };
  static const Unit inches = { "in", INCH_M, LR_UNITS_IMPERIAL };
  double number;

  if (!take_number (text, &number))
    return FALSE;

  *unit = take_length_unit (text);
  if (*unit == NULL && before == NULL)
    *unit = units == LR_UNITS_METRIC ? &metres : &feet;
  else if (*unit == NULL && before->length_m == FOOT_M)
    *unit = &inches;
  if (*unit == NULL)
    return FALSE;

  *length_m = number * (*unit)->length_m;

  return before == NULL || (before->system == (*unit)->system && before->length_m > (*unit)->length_m);
}

/**
 * lr_length_parse:
 * @text: "2.4", "2.4 m", "2,4", "240cm", "2 m 40 cm", "7' 10\"", "7ft 10 1/2in"
 * @units: what a bare number is in: metres, or feet
 * @length_m: (out): the length [m]
 *
 * Returns: %FALSE, with @length_m untouched, if @text is not a length
 */
gboolean
lr_length_parse (const char *text,
                 LrUnits     units,
                 double     *length_m)
{
  const Unit *unit = NULL;
  double sum_m = 0.0;
  double sign = take_sign (&text);

  do
    {
      double term_m;

      if (!take_length (&text, unit, units, &unit, &term_m))
        return FALSE;
      sum_m += term_m;
      skip_spaces (&text);
    }
  while (*text != '\0');

  if (sum_m > MAX_M)
    return FALSE;
  *length_m = sign * sum_m + 0.0;

  return TRUE;
}

static gboolean
take_bare (const char *text,
           double     *number)
{
  skip_spaces (&text);
  if (!take_number (&text, number))
    return FALSE;
  skip_spaces (&text);

  return *text == '\0';
}

/**
 * lr_length_is_bare:
 * @text: what is typed
 *
 * Returns: whether it is a number without a unit
 */
gboolean
lr_length_is_bare (const char *text)
{
  double number;

  return take_bare (text, &number);
}

/**
 * lr_length_is_questionable:
 * @text: what is typed
 * @units: what a bare number is in
 *
 * The one rule for bare numbers: they are metres, or feet, and are never taken for anything else; one that is too much for a room is
 * asked about.
 *
 * Returns: whether it is bare and longer than a room
 */
gboolean
lr_length_is_questionable (const char *text,
                           LrUnits     units)
{
  double number;

  return take_bare (text, &number) && number == floor (number) && number * (units == LR_UNITS_IMPERIAL ? FOOT_M : 1.0) > ROOM_M;
}

/**
 * lr_length_in_small_unit:
 * @text: what is typed
 * @units: the user's
 *
 * Returns: (transfer full) (nullable): "240 cm" of "240", or "94 in"; %NULL unless it is a bare whole number from ten on
 */
char *
lr_length_in_small_unit (const char *text,
                         LrUnits     units)
{
  double number;

  if (!take_bare (text, &number) || number != floor (number) || number < SMALL_FROM || number > MAX_M)
    return NULL;

  return g_strdup_printf (units == LR_UNITS_IMPERIAL ? "%.0f" NO_BREAK_SPACE "in" : "%.0f" NO_BREAK_SPACE "cm", number);
}

/**
 * lr_angle_parse:
 * @text: "22", "22°", "-3.5", "22 deg"
 * @angle_rad: (out): the angle [rad]
 *
 * Returns: %FALSE, with @angle_rad untouched, if @text is not an angle in degrees
 */
gboolean
lr_angle_parse (const char *text,
                double     *angle_rad)
{
  double sign = take_sign (&text);
  double number;

  if (!take_number (&text, &number))
    return FALSE;
  skip_spaces (&text);
  if (!take_word (&text, "°") && !take_word (&text, "degrees"))
    take_word (&text, "deg");
  skip_spaces (&text);
  if (*text != '\0' || number > MAX_M)
    return FALSE;

  *angle_rad = sign * number * LR_DEG + 0.0;

  return TRUE;
}

/**
 * lr_f_number_parse:
 * @text: "f/2.8", "f2.8", "2.8", "2,8"
 * @f_number: (out): a pure number, > 0
 *
 * Returns: %FALSE, with @f_number untouched, if @text is not a stop
 */
gboolean
lr_f_number_parse (const char *text,
                   double     *f_number)
{
  double number;

  skip_spaces (&text);
  if (take_word (&text, "f"))
    take_word (&text, "/");
  skip_spaces (&text);
  if (!take_decimal (&text, &number))
    return FALSE;
  skip_spaces (&text);
  if (*text != '\0' || number <= 0.0)
    return FALSE;

  *f_number = number;

  return TRUE;
}

/**
 * lr_shutter_parse:
 * @text: "1/50", "1/50 s", "0.02", "0.02 s"; "50" is 1/50, as on a camera's dial: a bare number of 2 and more
 * @shutter_s: (out): the exposure time [s], > 0
 *
 * Returns: %FALSE, with @shutter_s untouched, if @text is not an exposure time
 */
gboolean
lr_shutter_parse (const char *text,
                  double     *shutter_s)
{
  double number;
  gboolean has_unit;

  skip_spaces (&text);
  if (!take_number (&text, &number))
    return FALSE;
  skip_spaces (&text);
  has_unit = take_word (&text, "seconds") || take_word (&text, "sec") || take_word (&text, "s");
  skip_spaces (&text);
  if (*text != '\0' || number <= 0.0)
    return FALSE;

  *shutter_s = !has_unit && number >= 2.0 ? 1.0 / number : number;

  return TRUE;
}
