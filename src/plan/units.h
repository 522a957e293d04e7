/* units.h - lengths, angles and numbers as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

typedef enum { LR_UNITS_METRIC, LR_UNITS_IMPERIAL } LrUnits;

/* "2.4", "2.4 m", "240cm", "2400 mm", "7' 10\"", "7ft 10 1/2in", "2,4"; a bare number is metres or, in imperial units, feet */
gboolean lr_length_parse  (const char *text, LrUnits units, double *length_m);
/* A number without a unit is in metres, or in feet; one that is too much for a room is to be asked about */
gboolean lr_length_is_bare         (const char *text);
gboolean lr_length_is_questionable (const char *text, LrUnits units);
/* (transfer full) (nullable): the same number in centimetres or inches, "240 cm"; NULL unless it is bare, whole and from ten on */
char    *lr_length_in_small_unit   (const char *text, LrUnits units);
char    *lr_length_format (double length_m, LrUnits units);           /* "2.40 m", "7′ 10½″" with no-break spaces */
char    *lr_length_format_short (double length_m, LrUnits units);     /* without the unit where it is plain: "2.40" */
char    *lr_length_format_tape (double length_m, LrUnits units);      /* as on a tape: "2.40", "7′ 10¼″" */
char    *lr_length_format_exact (double length_m, LrUnits units);     /* for fields that are read back: "2.405 m", "7′ 10⅜″" */
gboolean lr_angle_parse   (const char *text, double *angle_rad);      /* "22", "22°", "-3.5" */
char    *lr_tilt_format   (double tilt_rad);                          /* "6° down", "level" */
char    *lr_angle_format  (double angle_rad);                         /* "22°", with a true minus */
char    *lr_f_number_format (double f_number);                        /* "f/2.8" */
gboolean lr_f_number_parse (const char *text, double *f_number);
char    *lr_shutter_format (double shutter_s);                        /* "1/50 s" */
gboolean lr_shutter_parse (const char *text, double *shutter_s);
char    *lr_number_format (double value, int decimals);                /* "-1.5" with a true minus, rounded half away from zero */
