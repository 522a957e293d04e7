/* photometry_scan.c - numbers and lines of a photometric file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers are read here and not by the C library, which reads them as the user's locale writes them.
 */

#include "photometry_private.h"

#include "domain.h"

#include <stdlib.h>

#define MOST_CANDELA 1e9
#define MOST_EXPONENT 300
#define SNAP_DEG 1e-6 /* a whole angle that was written with a rounding error */

/**
 * lr_scan_fail:
 * @scan: a file that is read
 * @reason: what is wrong with it at this line
 *
 * Returns: false
 */
bool
lr_scan_fail (LrPhotometryScan  *scan,
              LrPhotometryReason reason)
{
  *scan->error = (LrPhotometryError) { reason, scan->line };
  return false;
}

static bool
is_end_of_line (char c)
{
  return c == '\n' || c == '\r';
}

static bool
is_blank (char c)
{
  return c == ' ' || c == '\t' || c == '\f' || c == '\v' || c == '\0' || is_end_of_line (c);
}

static bool
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

/* Over the end of a line, of whichever kind */
static void
pass_end (LrPhotometryScan *scan)
{
  if (scan->at < scan->end && *scan->at == '\r')
    scan->at++;
  if (scan->at < scan->end && *scan->at == '\n')
    scan->at++;
  scan->line++;
}

/**
 * lr_scan_line:
 * @scan: a file that is read
 * @line: (out): where it begins
 * @length: (out): without its end
 *
 * Returns: %FALSE: there is none left
 */
bool
lr_scan_line (LrPhotometryScan *scan,
              const char      **line,
              size_t           *length)
{
  if (scan->at >= scan->end)
    return false;

  *line = scan->at;
  while (scan->at < scan->end && !is_end_of_line (*scan->at))
    scan->at++;
  *length = (size_t) (scan->at - *line);
  if (scan->at < scan->end)
    pass_end (scan);
  return true;
}

/* A decimal number; returns where it ends, or NULL if there is none */
static const char *
read_decimal (const char *at,
              const char *end,
              bool        has_comma,
              double     *value)
{
  double mantissa = 0.0, sign = 1.0;
  int exponent = 0, more = 0, more_sign = 1;
  bool has_digits = false;

  if (at < end && (*at == '-' || *at == '+'))
    sign = *at++ == '-' ? -1.0 : 1.0;
  for (; at < end && is_digit (*at); at++, has_digits = true)
    mantissa = 10.0 * mantissa + (*at - '0');
  if (at < end && (*at == '.' || (has_comma && *at == ',')))
    for (at++; at < end && is_digit (*at); at++, has_digits = true)
      {
        if (exponent < -MOST_EXPONENT)
          continue;
        mantissa = 10.0 * mantissa + (*at - '0');
        exponent--;
      }
  if (!has_digits || !isfinite (mantissa))
    return NULL;

  if (at + 1 < end && (*at == 'e' || *at == 'E'))
    {
      const char *mark = at++;

      if (*at == '-' || *at == '+')
        more_sign = *at++ == '-' ? -1 : 1;
      if (at >= end || !is_digit (*at))
        at = mark;
      for (; at < end && at > mark && is_digit (*at); at++)
        more = more < MOST_EXPONENT ? 10 * more + (*at - '0') : more;
    }

  /* powers of ten up to 22 are exact: 90.00000 is 90 */
  exponent += more_sign * more;
  *value = sign * (exponent < 0 ? mantissa / pow (10.0, -exponent) : mantissa * pow (10.0, exponent));
  return isfinite (*value) ? at : NULL;
}

/**
 * lr_scan_number:
 * @scan: a file that is read
 * @value: (out): the next of its numbers, parted by spaces, commas and ends of lines
 *
 * Returns: %FALSE, with the reason in the scan's error, if there is none
 */
bool
lr_scan_number (LrPhotometryScan *scan,
                double           *value)
{
  const char *after;

  while (scan->at < scan->end && (is_blank (*scan->at) || *scan->at == ','))
    if (is_end_of_line (*scan->at))
      pass_end (scan);
    else
      scan->at++;
  if (scan->at >= scan->end)
    return lr_scan_fail (scan, LR_PHOTOMETRY_ENDS);

  after = read_decimal (scan->at, scan->end, false, value);
  if (after == NULL || (after < scan->end && !is_blank (*after) && *after != ','))
    return lr_scan_fail (scan, LR_PHOTOMETRY_NOT_A_NUMBER);

  scan->at = after;
  return true;
}

/**
 * lr_scan_numbers:
 * @scan: a file that is read
 * @values: (out): the next @n of its numbers
 * @n: how many
 *
 * Returns: %FALSE, with the reason in the scan's error, if there are fewer
 */
bool
lr_scan_numbers (LrPhotometryScan *scan,
                 double           *values,
                 size_t            n)
{
  for (size_t i = 0; i < n; i++)
    if (!lr_scan_number (scan, &values[i]))
      return false;

  return true;
}

/**
 * lr_scan_angles:
 * @scan: a file that is read
 * @angle_deg: (out): the next @n of its numbers [degrees]
 * @n: how many
 * @most_deg: the last that an angle may be [degrees]
 *
 * Returns: %FALSE, with the reason in the scan's error, if there are fewer, or they do not rise from 0 to @most_deg
 */
bool
lr_scan_angles (LrPhotometryScan *scan,
                double           *angle_deg,
                size_t            n,
                double            most_deg)
{
  for (size_t i = 0; i < n; i++)
    {
      if (!lr_scan_number (scan, &angle_deg[i]))
        return false;
      if (!lr_photometry_is_angle (angle_deg, i, most_deg))
        return lr_scan_fail (scan, LR_PHOTOMETRY_ANGLES);
    }

  return true;
}

/**
 * lr_scan_number_line:
 * @scan: a file that is read
 * @value: (out): the number that the next line begins with; its decimal sign may be a comma
 *
 * Returns: %FALSE, with the reason in the scan's error, if it does not
 */
bool
lr_scan_number_line (LrPhotometryScan *scan,
                     double           *value)
{
  size_t line = scan->line, length;
  const char *at, *after;

  if (!lr_scan_line (scan, &at, &length))
    return lr_scan_fail (scan, LR_PHOTOMETRY_ENDS);

  while (length > 0 && is_blank (*at))
    at++, length--;
  after = read_decimal (at, at + length, true, value);
  if (after == NULL || (after < at + length && !is_blank (*after)))
    {
      *scan->error = (LrPhotometryError) { LR_PHOTOMETRY_NOT_A_NUMBER, line };
      return false;
    }

  return true;
}

/**
 * lr_scan_skip_lines:
 * @scan: a file that is read
 * @n: how many lines are of no use
 *
 * Returns: %FALSE, with the reason in the scan's error, if there are fewer
 */
bool
lr_scan_skip_lines (LrPhotometryScan *scan,
                    size_t            n)
{
  const char *line;
  size_t length;

  for (size_t i = 0; i < n; i++)
    if (!lr_scan_line (scan, &line, &length))
      return lr_scan_fail (scan, LR_PHOTOMETRY_ENDS);

  return true;
}

/**
 * lr_scan_count:
 * @scan: a file that is read
 * @value: a number of it
 * @least: least that it may be
 * @most: most
 * @count: (out): the number
 *
 * Returns: %FALSE, with the reason in the scan's error, if it is not whole or not between them
 */
bool
lr_scan_count (LrPhotometryScan *scan,
               double            value,
               size_t            least,
               size_t            most,
               size_t           *count)
{
  if (!(value >= (double) least && value <= (double) most) || value != floor (value))
    return lr_scan_fail (scan, LR_PHOTOMETRY_COUNT);

  *count = (size_t) value;
  return true;
}

/**
 * lr_scan_is_done:
 * @scan: a file that is read
 *
 * Returns: whether nothing but spaces is left
 */
bool
lr_scan_is_done (const LrPhotometryScan *scan)
{
  for (const char *at = scan->at; at < scan->end; at++)
    if (!is_blank (*at))
      return false;

  return true;
}

/**
 * lr_photometry_alloc:
 * @scan: a file that is read
 * @n_v: vertical angles, > 0
 * @n_h: horizontal angles, > 0
 * @photometry: (out): holds room for them
 *
 * Returns: %FALSE, with the reason in the scan's error, if they are too many
 */
bool
lr_photometry_alloc (LrPhotometryScan *scan,
                     size_t            n_v,
                     size_t            n_h,
                     LrPhotometry     *photometry)
{
  if (n_v * n_h > LR_PHOTOMETRY_MOST_VALUES)
    return lr_scan_fail (scan, LR_PHOTOMETRY_COUNT);

  photometry->n_v = n_v;
  photometry->n_h = n_h;
  photometry->v_deg = calloc (n_v, sizeof (double));
  photometry->h_deg = calloc (n_h, sizeof (double));
  photometry->candela = calloc (n_v * n_h, sizeof (double));
  return photometry->v_deg != NULL && photometry->h_deg != NULL && photometry->candela != NULL ? true
                                                                                               : lr_scan_fail (scan, LR_PHOTOMETRY_MEMORY);
}

/**
 * lr_photometry_is_angle:
 * @angle_deg: angles, of which those up to @i were read [degrees]
 * @i: the last that was read; what is next to a whole degree becomes it
 * @most_deg: the last that an angle may be [degrees]
 *
 * Returns: whether it is from 0 to @most_deg, and more than the one before
 */
bool
lr_photometry_is_angle (double *angle_deg,
                        size_t  i,
                        double  most_deg)
{
  if (fabs (angle_deg[i] - round (angle_deg[i])) < SNAP_DEG)
    angle_deg[i] = round (angle_deg[i]) + 0.0;

  return angle_deg[i] >= 0.0 && angle_deg[i] <= most_deg && (i == 0 || angle_deg[i] > angle_deg[i - 1]);
}

/**
 * lr_photometry_is_candela:
 * @candela: a value
 *
 * Returns: whether it is an intensity [cd]
 */
bool
lr_photometry_is_candela (double candela)
{
  return candela >= 0.0 && candela <= MOST_CANDELA;
}

/**
 * lr_photometry_check_planes:
 * @scan: a file that is read
 * @photometry: its horizontal angles rise
 *
 * Returns: %FALSE, with the reason in the scan's error, unless they go all round from 0, or are mirrored: to 90, to 180, from 90 to 270
 */
bool
lr_photometry_check_planes (LrPhotometryScan   *scan,
                            const LrPhotometry *photometry)
{
  double first = photometry->h_deg[0], last = photometry->h_deg[photometry->n_h - 1];

  if (photometry->n_h == 1 || (first == 0.0 && (last == 90.0 || last >= 180.0)) || (first == 90.0 && last == 270.0))
    return true;

  return lr_scan_fail (scan, LR_PHOTOMETRY_PLANES);
}

/**
 * lr_photometry_check:
 * @scan: a file that was read
 * @photometry: what it held
 *
 * Returns: %FALSE, with the reason in the scan's error, if its angles or intensities are none
 */
bool
lr_photometry_check (LrPhotometryScan *scan,
                     LrPhotometry     *photometry)
{
  double most = 0.0;

  for (size_t i = 0; i < photometry->n_v; i++)
    if (!lr_photometry_is_angle (photometry->v_deg, i, 180.0))
      return lr_scan_fail (scan, LR_PHOTOMETRY_ANGLES);
  for (size_t i = 0; i < photometry->n_h; i++)
    if (!lr_photometry_is_angle (photometry->h_deg, i, 360.0))
      return lr_scan_fail (scan, LR_PHOTOMETRY_ANGLES);
  if (!lr_photometry_check_planes (scan, photometry))
    return false;
  if (!(photometry->watts >= 0.0))
    return lr_scan_fail (scan, LR_PHOTOMETRY_VALUE);

  for (size_t i = 0; i < photometry->n_v * photometry->n_h; i++)
    {
      if (!lr_photometry_is_candela (photometry->candela[i]))
        return lr_scan_fail (scan, LR_PHOTOMETRY_VALUE);
      most = fmax (most, photometry->candela[i]);
    }

  if (!(most > 0.0))
    photometry->warnings |= LR_PHOTOMETRY_IS_DARK;
  return true;
}
