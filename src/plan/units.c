/* units.c - lengths, angles and numbers as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 1 inch is 25.4 mm and 1 foot 0.3048 m, exactly: the international yard and pound agreement of 1959. Text is the same in
 * every locale, with a decimal point; a decimal comma is understood.
 */

#include "units.h"

#include "vec.h"

#include <math.h>
#include <string.h>

#define INCH_M 0.0254
#define FOOT_M 0.3048
#define NO_BREAK_SPACE "\u00a0"
#define MINUS "\u2212"
#define MAX_M 1e6 /* nothing longer is meant */

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

/* Reading: each take_ function moves the text past what it took */

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

/* Writing */

/* Digits from the end, out of an integer: ten times as quick as printf of a double, and sheets of figures are written anew
 * with every step of a drag. Exact up to 2^53. */
static char *
write_digits (char   *end,
              guint64 digits,
              int     decimals)
{
  for (int i = 0; digits > 0 || i <= decimals; i++)
    {
      if (i == decimals && decimals > 0)
        *--end = '.';
      *--end = (char) ('0' + digits % 10);
      digits /= 10;
    }

  return end;
}

/**
 * lr_number_format:
 * @value: a number
 * @decimals: how many, 0 to 6
 *
 * Rounded half away from zero, with a decimal point and a true minus.
 *
 * Returns: (transfer full): the number as text
 */
char *
lr_number_format (double value,
                  int    decimals)
{
  static const double powers[] = { 1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6 };
  char buffer[32], *start = buffer + sizeof buffer - 1;
  double scaled;

  g_return_val_if_fail (decimals >= 0 && decimals < (int) G_N_ELEMENTS (powers), NULL);

  scaled = round (value * powers[decimals]);
  if (!(fabs (scaled) < 9e15))
    return g_strdup_printf ("%.0f", value);

  *start = '\0';
  start = write_digits (start, (guint64) fabs (scaled), decimals);

  return scaled < 0.0 ? g_strconcat (MINUS, start, NULL) : g_strdup (start);
}

static char *
dup_shortest (double value,
              int    decimals)
{
  char *text = lr_number_format (value, decimals);
  char *end = text + strlen (text);

  if (strchr (text, '.') != NULL)
    {
      while (end[-1] == '0')
        *--end = '\0';
      if (end[-1] == '.')
        end[-1] = '\0';
    }

  return text;
}

/* Feet, inches and eighths, rounded to @step eighths */
static char *
dup_feet (double length_m,
          int    step)
{
  static const char *const signs[] = { "", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞" };
  gint64 eighths = (gint64) llround (fabs (length_m) / INCH_M * 8.0 / step) * step;
  gint64 feet = eighths / 96, inches = eighths / 8 % 12, part = eighths % 8;
  const char *minus = length_m < 0.0 && eighths > 0 ? MINUS : "";
  g_autofree char *whole = inches > 0 || part == 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, inches) : g_strdup ("");

  if (feet == 0)
    return g_strdup_printf ("%s%s%s″", minus, whole, signs[part]);
  if (inches == 0 && part == 0)
    return g_strdup_printf ("%s%" G_GINT64_FORMAT "′", minus, feet);

  return g_strdup_printf ("%s%" G_GINT64_FORMAT "′" NO_BREAK_SPACE "%s%s″", minus, feet, whole, signs[part]);
}

/**
 * lr_length_format:
 * @length_m: a length [m]
 * @units: the user's
 *
 * Returns: (transfer full): "2.40 m", or "7′ 10½″" to half an inch, with no-break spaces and a true minus
 */
char *
lr_length_format (double  length_m,
                  LrUnits units)
{
  g_autofree char *number = lr_length_format_short (length_m, units);

  return units == LR_UNITS_METRIC ? g_strconcat (number, NO_BREAK_SPACE "m", NULL) : g_steal_pointer (&number);
}

/**
 * lr_length_format_short:
 * @length_m: a length [m]
 * @units: the user's
 *
 * Returns: (transfer full): the same without the unit where it is plain: "2.40"; feet and inches keep their marks
 */
char *
lr_length_format_short (double  length_m,
                        LrUnits units)
{
  if (!isfinite (length_m))
    return g_strdup ("∞");

  return units == LR_UNITS_METRIC ? lr_number_format (length_m, 2) : dup_feet (length_m, 4);
}

/**
 * lr_length_format_exact:
 * @length_m: a length [m]
 * @units: the user's
 *
 * For fields that are read back: two decimals, a third where the length has one, and eighths of an inch.
 *
 * Returns: (transfer full): "2.40 m", "2.405 m", "7′ 10⅜″"
 */
char *
lr_length_format_exact (double  length_m,
                        LrUnits units)
{
  gboolean is_fine = fabs (length_m * 100.0 - round (length_m * 100.0)) > 0.05;
  g_autofree char *number = NULL;

  if (units == LR_UNITS_IMPERIAL)
    return dup_feet (length_m, 1);
  number = lr_number_format (length_m, is_fine ? 3 : 2);

  return g_strconcat (number, NO_BREAK_SPACE "m", NULL);
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
 * lr_angle_format:
 * @angle_rad: an angle [rad]
 *
 * Returns: (transfer full): whole degrees, "22°", with a true minus
 */
char *
lr_angle_format (double angle_rad)
{
  g_autofree char *number = lr_number_format (angle_rad / LR_DEG, 0);

  return g_strconcat (number, "°", NULL);
}

/**
 * lr_f_number_format:
 * @f_number: a pure number
 *
 * Returns: (transfer full): "f/2.8", "f/11", "f/0.95"
 */
char *
lr_f_number_format (double f_number)
{
  g_autofree char *number = dup_shortest (f_number, 2);

  return g_strconcat ("f/", number, NULL);
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
 * lr_shutter_format:
 * @shutter_s: an exposure time [s], > 0
 *
 * Times under 0.3 s show as one over a number, whole where it is nearly so: what is kept of 1/48 s is 0.020833333 s.
 *
 * Returns: (transfer full): "1/50 s", "1/59.94 s", "0.5 s"
 */
char *
lr_shutter_format (double shutter_s)
{
  double per_s = 1.0 / shutter_s;
  g_autofree char *number = NULL;

  if (shutter_s >= 0.3)
    {
      number = dup_shortest (shutter_s, 3);
      return g_strconcat (number, NO_BREAK_SPACE "s", NULL);
    }
  number = dup_shortest (fabs (per_s - round (per_s)) < 0.02 ? round (per_s) : per_s, 2);

  return g_strconcat ("1/", number, NO_BREAK_SPACE "s", NULL);
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
