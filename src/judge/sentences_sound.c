/* sentences_sound.c - figures of sound in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "judge_parts.h"

#define NO_BREAK_SPACE "\u00a0"

/* With a true minus and a no-break space */
static const char *
say_off (LrJudge    *judge,
         double      number,
         double      limit,
         int         decimals,
         const char *unit)
{
  double unit_step = pow (10.0, -decimals);
  g_autofree char *text = NULL;

  /* a figure that misses its limit does not read as the limit */
  if (round (number / unit_step) == round (limit / unit_step))
    decimals++;
  text = g_strconcat (lr_say_number (judge, number, decimals), NO_BREAK_SPACE, unit, NULL);
  return g_string_chunk_insert (judge->words, text);
}

/**
 * lr_say_db:
 * @judge: a judge
 * @level_db: a level, or between two [dB]
 *
 * Returns: (transfer none): whole decibels: "24 dB"
 */
const char *
lr_say_db (LrJudge *judge,
           double   level_db)
{
  return say_off (judge, level_db, HUGE_VAL, 0, "dB");
}

/**
 * lr_say_db_off:
 * @judge: a judge
 * @level_db: a level [dB]
 * @limit_db: the limit that it misses [dB]
 *
 * Returns: (transfer none): "24 dB", or "29.7 dB" where that would read as the limit
 */
const char *
lr_say_db_off (LrJudge *judge,
               double   level_db,
               double   limit_db)
{
  return say_off (judge, level_db, limit_db, 0, "dB");
}

/**
 * lr_say_seconds:
 * @judge: a judge
 * @time_s: a reverberation time [s]
 *
 * Returns: (transfer none): "0.7 s"
 */
const char *
lr_say_seconds (LrJudge *judge,
                double   time_s)
{
  return say_off (judge, time_s, HUGE_VAL, 1, "s");
}

/**
 * lr_say_seconds_off:
 * @judge: a judge
 * @time_s: a reverberation time [s]
 * @limit_s: the limit that it misses [s]
 *
 * Returns: (transfer none): "0.7 s", or "0.73 s" where that would read as the limit
 */
const char *
lr_say_seconds_off (LrJudge *judge,
                    double   time_s,
                    double   limit_s)
{
  return say_off (judge, time_s, limit_s, 1, "s");
}

/**
 * lr_say_area:
 * @judge: a judge
 * @area_m2: an area [m²]
 *
 * Returns: (transfer none): "14 m²" or "150 ft²"
 */
const char *
lr_say_area (LrJudge *judge,
             double   area_m2)
{
  const double foot_m = 0.3048;

  return judge->units == LR_UNITS_IMPERIAL ? say_off (judge, area_m2 / (foot_m * foot_m), HUGE_VAL, 0, "ft²")
                                           : say_off (judge, area_m2, HUGE_VAL, 0, "m²");
}
