/* power_words.c - powers, currents and masses in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "judge_parts.h"

/* A number and its unit hold together */
static const char *
with_unit (LrJudge    *judge,
           double      number,
           int         decimals,
           const char *unit)
{
  g_autofree char *text = g_strdup_printf ("%s\u00a0%s", lr_say_number (judge, number, decimals), unit);

  return g_string_chunk_insert (judge->words, text);
}

/**
 * lr_say_power:
 * @judge: a judge
 * @power_w: a power [W]
 *
 * Returns: (transfer none): "280 W"
 */
const char *
lr_say_power (LrJudge *judge,
              double   power_w)
{
  return with_unit (judge, power_w, 0, "W");
}

/**
 * lr_say_current:
 * @judge: a judge
 * @current_a: a current [A]
 *
 * Returns: (transfer none): "1.4 A"
 */
const char *
lr_say_current (LrJudge *judge,
                double   current_a)
{
  return with_unit (judge, current_a, fabs (current_a - rint (current_a)) < 0.05 ? 0 : 1, "A");
}

/**
 * lr_say_mass:
 * @judge: a judge
 * @mass_kg: a mass [kg]
 *
 * Returns: (transfer none): "2 kg"
 */
const char *
lr_say_mass (LrJudge *judge,
             double   mass_kg)
{
  return with_unit (judge, mass_kg, fabs (mass_kg - rint (mass_kg)) < 0.05 ? 0 : 1, "kg");
}
