/* units.c - lengths, angles and numbers as people read them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 1 inch is 25.4 mm and 1 foot 0.3048 m, exactly: the international yard and pound agreement of 1959. Text is the same in
 * every locale, with a decimal point.
 */

#include "config.h"

#include "units.h"

#include "vec.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define INCH_M 0.0254
#define NO_BREAK_SPACE "\u00a0"
#define MINUS "\u2212"

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
 * lr_length_format_tape:
 * @length_m: a length [m]
 * @units: the user's
 *
 * As it is read off a tape: to a centimetre, or a quarter of an inch.
 *
 * Returns: (transfer full): "2.40", or "7′ 10¼″"
 */
char *
lr_length_format_tape (double  length_m,
                       LrUnits units)
{
  return isfinite (length_m) && units == LR_UNITS_IMPERIAL ? dup_feet (length_m, 2) : lr_length_format_short (length_m, units);
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
 * lr_tilt_format:
 * @tilt_rad: above level [rad]
 *
 * Returns: (transfer full): "6° down", "level"
 */
char *
lr_tilt_format (double tilt_rad)
{
  int degrees = (int) lround (tilt_rad / LR_DEG);

  if (degrees == 0)
    return g_strdup (_("level"));
  return g_strdup_printf (degrees > 0 ? _("%d° up") : _("%d° down"), ABS (degrees));
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
