/* photometry_ies.c - ANSI/IES LM-63, of 1986 to 2019
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A label and keywords, which are passed over, up to the line TILT=; then one stream of numbers, whatever lines they stand on:
 * lamps, lumens of a lamp (-1: absolute), multiplier, numbers of vertical and horizontal angles, type of goniometer, units, width, length,
 * height; ballast factor, a third number, watts; the angles; the intensities, a horizontal angle after the other. The third number
 * is a factor in files of 1986 and 1991, 1 in those of 1995 and 2002, and a code that multiplies nothing in those of 2019.
 *
 * Source: ANSI/IESNA LM-63-1995 and LM-63-2002; ANSI/IES LM-63-19.
 */

#include "photometry_private.h"

#include "domain.h"

#include <string.h>

#define FOOT_M 0.3048
#define MOST_TILT_ANGLES 1000
#define N_TEN 10

typedef enum { TILT_NONE, TILT_INCLUDE, TILT_FILE } Tilt;

static bool
has (const char *line,
     size_t      length,
     const char *word)
{
  size_t n = strlen (word);

  for (size_t i = 0; i + n <= length; i++)
    if (memcmp (line + i, word, n) == 0)
      return true;

  return false;
}

/* After "TILT", spaces, "=", spaces; NULL: another line */
static const char *
after_tilt (const char *line,
            size_t      length)
{
  const char *at = line, *end = line + length;

  while (at < end && (*at == ' ' || *at == '\t'))
    at++;
  if (end - at < 5 || memcmp (at, "TILT", 4) != 0)
    return NULL;
  for (at += 4; at < end && (*at == ' ' || *at == '\t');)
    at++;
  if (at >= end || *at != '=')
    return NULL;
  for (at++; at < end && (*at == ' ' || *at == '\t');)
    at++;
  return at;
}

/* Up to and over the line TILT=; the label tells whether the third number is a factor */
static bool
read_head (LrPhotometryScan *scan,
           bool             *has_third_factor,
           Tilt             *tilt)
{
  const char *line, *word;
  size_t length;
  bool is_first = true;

  *has_third_factor = true;
  while (lr_scan_line (scan, &line, &length))
    {
      if (is_first && has (line, length, "LM-63-"))
        *has_third_factor = false;
      is_first = false;
      word = after_tilt (line, length);
      if (word == NULL)
        continue;

      length -= (size_t) (word - line);
      *tilt = length >= 4 && memcmp (word, "NONE", 4) == 0 ? TILT_NONE : length >= 7 && memcmp (word, "INCLUDE", 7) == 0 ? TILT_INCLUDE : TILT_FILE;
      return true;
    }

  return lr_scan_fail (scan, LR_PHOTOMETRY_NO_TILT);
}

/* How the output of a lamp changes when it is tilted: passed over */
static bool
pass_tilt (LrPhotometryScan *scan)
{
  double geometry, value;
  size_t n;

  if (!lr_scan_number (scan, &geometry) || !lr_scan_number (scan, &value) || !lr_scan_count (scan, value, 1, MOST_TILT_ANGLES, &n))
    return false;

  for (size_t i = 0; i < 2 * n; i++)
    if (!lr_scan_number (scan, &value))
      return false;

  return true;
}

/* Negative sizes mean round shapes */
static void
set_size (LrPhotometry *photometry,
          const double *ten)
{
  double unit_m = ten[6] == 1.0 ? FOOT_M : 1.0;

  photometry->width_m = unit_m * ten[7];
  photometry->length_m = unit_m * ten[8];
  photometry->height_m = unit_m * ten[9];
}

static bool
read_candela (LrPhotometryScan *scan,
              double            factor,
              LrPhotometry     *photometry)
{
  for (size_t i = 0; i < photometry->n_v * photometry->n_h; i++)
    {
      if (!lr_scan_number (scan, &photometry->candela[i]))
        return false;
      photometry->candela[i] *= factor;
      if (!lr_photometry_is_candela (photometry->candela[i]))
        return lr_scan_fail (scan, LR_PHOTOMETRY_VALUE);
    }

  return true;
}

static bool
read_numbers (LrPhotometryScan *scan,
              bool              has_third_factor,
              LrPhotometry     *photometry)
{
  double ten[N_TEN], three[3];
  size_t n_v, n_h;

  if (!lr_scan_numbers (scan, ten, N_TEN) || !lr_scan_count (scan, ten[3], 1, LR_PHOTOMETRY_MOST_ANGLES, &n_v)
      || !lr_scan_count (scan, ten[4], 1, LR_PHOTOMETRY_MOST_ANGLES, &n_h))
    return false;
  if (ten[5] != 1.0)
    return lr_scan_fail (scan, LR_PHOTOMETRY_TYPE);
  if (ten[6] != 1.0 && ten[6] != 2.0)
    return lr_scan_fail (scan, LR_PHOTOMETRY_UNITS);
  if (!(ten[2] >= 0.0))
    return lr_scan_fail (scan, LR_PHOTOMETRY_VALUE);
  if (!lr_scan_numbers (scan, three, 3))
    return false;
  if (!(three[0] > 0.0) || (has_third_factor && !(three[1] > 0.0)) || !(three[2] >= 0.0))
    return lr_scan_fail (scan, LR_PHOTOMETRY_VALUE);

  if (!lr_photometry_alloc (scan, n_v, n_h, photometry) || !lr_scan_angles (scan, photometry->v_deg, n_v, 180.0)
      || !lr_scan_angles (scan, photometry->h_deg, n_h, 360.0) || !lr_photometry_check_planes (scan, photometry)
      || !read_candela (scan, ten[2] * three[0] * (has_third_factor ? three[1] : 1.0), photometry))
    return false;

  photometry->lamp_lm = ten[1] < 0.0 ? -1.0 : ten[0] * ten[1];
  photometry->watts = three[2];
  set_size (photometry, ten);
  return true;
}

/* A number after the last one means that the numbers before were not what they seemed */
static bool
ends_well (LrPhotometryScan *scan,
           LrPhotometry     *photometry)
{
  LrPhotometryError ignored;
  LrPhotometryScan ahead = *scan;
  double value;

  if (lr_scan_is_done (scan))
    return true;

  ahead.error = &ignored;
  if (lr_scan_number (&ahead, &value))
    return lr_scan_fail (scan, LR_PHOTOMETRY_LEFT_OVER);

  photometry->warnings |= LR_PHOTOMETRY_TEXT_AFTER;
  return true;
}

/**
 * lr_photometry_read_ies:
 * @text: a file of ANSI/IES LM-63, of 1986 to 2019
 * @length: its bytes
 * @photometry: (out): what it holds; lr_photometry_clear() frees it
 * @error: (out): why it cannot be read, and where
 *
 * The lumens of a lamp never scale the intensities. Goniometers of type A and B (car lamps, floodlights) are refused.
 *
 * Returns: %FALSE, with @photometry untouched, if it cannot be read
 */
bool
lr_photometry_read_ies (const char        *text,
                        size_t             length,
                        LrPhotometry      *photometry,
                        LrPhotometryError *error)
{
  LrPhotometryScan scan = { text, text + length, 1, error };
  LrPhotometry read = { 0 };
  bool has_third_factor;
  Tilt tilt;

  if (!read_head (&scan, &has_third_factor, &tilt) || (tilt == TILT_INCLUDE && !pass_tilt (&scan))
      || !read_numbers (&scan, has_third_factor, &read) || !lr_photometry_check (&scan, &read) || !ends_well (&scan, &read))
    {
      lr_photometry_clear (&read);
      return false;
    }

  read.warnings |= tilt != TILT_NONE ? LR_PHOTOMETRY_TILT_IGNORED : 0;
  *photometry = read;
  return true;
}
