/* summary_lamp.c - what a light's photometric file says, in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "summary.h"

#include "prop_text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BEAM 0.5
#define FIELD 0.1
#define SAME_DEG 1.0
#define SAME_POWER 0.1 /* of it */

/* "62°", or "62° × 40°": level and upright */
static char *
dup_spread (const LrItem *light,
            double        share)
{
  const LrPhotometry *photometry = &light->lamp_file->photometry;
  double turn_deg = lr_photometry_turn_deg (photometry, light->light.height_m > light->light.width_m), level_rad, upright_rad;

  if (!lr_photometry_spread_rad (photometry, share, turn_deg, &level_rad)
      || !lr_photometry_spread_rad (photometry, share, turn_deg + 90.0, &upright_rad))
    return NULL;
  if (fabs (level_rad - upright_rad) < SAME_DEG * LR_DEG)
    return g_strdup_printf ("%.0f°", level_rad / LR_DEG);

  return g_strdup_printf ("%.0f° × %.0f°", level_rad / LR_DEG, upright_rad / LR_DEG);
}

/* "0.30 m × 0.60 m" as it hangs, or %NULL */
static char *
dup_size (const LrItem *light,
          LrUnits       units)
{
  LrEmitter emitter = {
    .shape = light->light.form == LR_LIGHT_POINT ? LR_EMITTER_POINT : LR_EMITTER_RECTANGLE,
    .width_m = light->light.width_m, .height_m = light->light.height_m,
  };
  g_autofree char *width = NULL, *height = NULL;

  lr_emitter_take_table (&emitter, &light->lamp_file->photometry, 1.0);
  if (emitter.shape != LR_EMITTER_RECTANGLE)
    return NULL;

  width = lr_length_format (emitter.width_m, units);
  height = lr_length_format (emitter.height_m, units);
  return g_strdup_printf ("%s × %s", width, height);
}

/* What loads a circuit is the plan's */
static void
append_power (GString      *text,
              const LrItem *light,
              LrUnits       units)
{
  const LrProp *prop = lr_item_find_prop (LR_ITEM_LIGHT, "power-w");
  double watts = light->lamp_file->photometry.watts;
  g_autofree char *measured = lr_prop_text_format (prop, watts, units), *given = lr_prop_text_format (prop, light->light.power_w, units);

  if (watts > 0.0 && fabs (watts - light->light.power_w) > SAME_POWER * watts)
    /* Translators: two powers: "It was measured at 100 W; here it takes 200 W." */
    g_string_append_printf (text, _(" It was measured at %s; here it takes %s."), measured, given);
}

/**
 * lr_lamp_file_words:
 * @light: a light
 * @units: how to write lengths
 *
 * Returns: (transfer full) (nullable): flux, beam, field and size by its photometric file, and its power where the plan has another;
 *   %NULL if it has none
 */
char *
lr_lamp_file_words (const LrItem *light,
                    LrUnits       units)
{
  g_autofree char *flux = NULL, *beam = NULL, *field = NULL, *size = NULL;
  GString *text;

  if (light->lamp_file == NULL)
    return NULL;

  flux = lr_prop_text_format (lr_item_find_prop (LR_ITEM_LIGHT, "output-lm"), light->lamp_file->flux_lm, units);
  beam = dup_spread (light, BEAM);
  field = dup_spread (light, FIELD);
  size = dup_size (light, units);
  text = g_string_new (NULL);
  /* Translators: the whole of a lamp's light: "1240 lm by its file" */
  g_string_append_printf (text, _("%s by its file"), flux);
  if (beam != NULL && field != NULL)
    /* Translators: goes on from the light of a lamp: angles to half and to a tenth of the intensity on its axis */
    g_string_append_printf (text, _(", beam %s, field %s"), beam, field);
  else
    g_string_append (text, _(", none of it straight ahead"));
  if (size != NULL)
    /* Translators: goes on: width and height of what shines */
    g_string_append_printf (text, _(", from %s"), size);
  g_string_append_c (text, '.');
  append_power (text, light, units);

  return g_string_free (text, FALSE);
}
