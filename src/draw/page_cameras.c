/* page_cameras.c - the table of cameras on the page, and how they are set
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures are taken from the plan and its study.
 */

#include "config.h"

#include "page_private.h"

#include "sun_readings.h"

#include <glib/gi18n-lib.h>

#define MOST_LEVELS 2u /* cameras whose levels stand beside the title */

static const LrColumn camera_columns[] = {
  { N_("lens"), LR_ALIGN_LEFT, FALSE },
  { N_("stop"), LR_ALIGN_LEFT, FALSE },
  { N_("lens height"), LR_ALIGN_RIGHT, FALSE },
  { N_("to the eyes"), LR_ALIGN_RIGHT, FALSE },
  { N_("sharp"), LR_ALIGN_RIGHT, FALSE },
  { N_("tilt"), LR_ALIGN_RIGHT, FALSE }
};

/* "2.00 – 2.30 m", or "from 2.00 m" where there is no far end */
static char *
sharp_text (const LrCameraReading *camera,
            LrUnits                units)
{
  g_autofree char *near = lr_length_format (camera->sharp_near_m, units);
  g_autofree char *near_short = lr_length_format_short (camera->sharp_near_m, units);
  g_autofree char *far = NULL;

  if (!isfinite (camera->sharp_far_m))
    return g_strdup_printf (_("from %s"), near);

  far = lr_length_format (camera->sharp_far_m, units);
  return g_strdup_printf ("%s – %s", near_short, far);
}

/* What is set on the body, the same for many cameras */
static char *
settings_text (const LrSheet  *sheet,
               const LrCamera *camera)
{
  const LrPlaced *aim = lr_study_find_placed (sheet->study, camera->aims_at);
  g_autofree char *shutter = lr_shutter_format (camera->shutter_s);
  double density = 0.0;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *name = NULL;

  g_string_append_printf (text, _("%.4g fps, %s, ISO %.0f, %.0f K"),
                          camera->frame_rate_fps, shutter, camera->iso, camera->white_balance_k);
  if (camera->nd_stops > 0.0 && lr_nd_density (camera->nd_stops, &density))
    /* Translators: the density, which is what is printed on a grey filter, and what it takes */
    g_string_append_printf (text,
                            g_dngettext (GETTEXT_PACKAGE, ", ND %.1f (%.3g stop)", ", ND %.1f (%.3g stops)", camera->nd_stops > 1.0 ? 2 : 1),
                            density, camera->nd_stops);
  g_string_append_c (text, '.');

  if (aim == NULL)
    return g_strdup (text->str);

  name = lr_page_item_name (aim->item);
  g_string_append_c (text, ' ');
  if (aim->item->kind == LR_ITEM_PERSON)
    g_string_append_printf (text, _("Aim at the eyes of %s."), name);
  else
    g_string_append_printf (text, _("Aim at %s."), name);

  return g_strdup (text->str);
}

/* One line for every set of cameras that are set alike */
static void
add_settings (const LrSheet *sheet,
              LrTable       *table)
{
  const GArray *cameras = sheet->study->cameras;
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < cameras->len; i++)
    g_ptr_array_add (texts, settings_text (sheet, &g_array_index (cameras, LrCameraReading, i).item->camera));

  for (guint i = 0; i < texts->len; i++)
    {
      const char *settings = g_ptr_array_index (texts, i);
      g_autoptr (GString) who = g_string_new (NULL);
      gboolean is_told = FALSE;
      guint n_alike = 0;

      for (guint j = 0; j < texts->len; j++)
        if (g_str_equal (settings, g_ptr_array_index (texts, j)))
          {
            is_told |= j < i;
            g_string_append_printf (who, "%s%s", n_alike > 0 ? ", " : "", g_array_index (cameras, LrCameraReading, j).item->tag);
            n_alike++;
          }

      if (is_told)
        continue;

      if (n_alike == texts->len && n_alike > 1)
        g_string_assign (who, n_alike == 2 ? _("Both") : _("All"));
      g_ptr_array_add (table->feet, g_strdup_printf ("%s: %s", who->str, settings));
    }
}

/* "; overcast, 10:45": the daylight that is in the levels, if any is; (transfer full) */
static char *
daylight_note (const LrSheet *sheet)
{
  const LrLightLevels *levels = sheet->options->levels;
  int minute = lr_study_light_minute (sheet->study);

  for (guint i = 0; i < lr_light_levels_n_sources (levels); i++)
    if (lr_light_levels_source (levels, i)->placed->item->kind == LR_ITEM_WINDOW)
      /* Translators: the sky and the time, hours and minutes, that levels of light are told for; behind them */
      return g_strdup_printf (sheet->study->plan->job->sky == LR_SKY_CLEAR ? _("; clear, %02d:%02d") : _("; overcast, %02d:%02d"), minute / 60 % 24,
                              minute % 60);
  return g_strdup ("");
}

/* "A: face 74 %, walls 58 %; B: 73 %, 55 %; overcast, 10:45" */
static char *
levels_note (const LrSheet *sheet)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; sheet->options->levels != NULL && i < MIN (sheet->study->cameras->len, MOST_LEVELS); i++)
    {
      const LrItem *camera = g_array_index (sheet->study->cameras, LrCameraReading, i).item;
      LrShares shares;

      if (!lr_light_levels_shares (sheet->options->levels, camera->id, &shares) || !(shares.face > 0.0) || !(shares.background > 0.0))
        continue;
      /* Translators: a camera, and how bright a face and the walls behind it come out, per cent; for a second camera, the same */
      g_string_append_printf (text, text->len == 0 ? _("%s: face %.0f %%, walls %.0f %%") : _("; %s: %.0f %%, %.0f %%"), camera->tag,
                              100.0 * lr_signal_of_share (shares.face), 100.0 * lr_signal_of_share (shares.background));
    }
  if (text->len > 0)
    {
      g_autofree char *daylight = daylight_note (sheet);

      g_string_append (text, daylight);
    }
  return g_string_free (text, text->len == 0);
}

/**
 * lr_page_cameras_new:
 * @sheet: the page
 *
 * Returns: (transfer full): a row for each camera, and how they are set
 */
LrTable *
lr_page_cameras_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("cameras", _("Cameras"));
  LrUnits units = sheet->options->units;

  table->note = levels_note (sheet);

  table->columns = camera_columns;
  table->n_columns = G_N_ELEMENTS (camera_columns);

  for (guint i = 0; i < sheet->study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (sheet->study->cameras, LrCameraReading, i);
      LrRow *row = lr_table_add (table, LR_ITEM_CAMERA, camera->item->tag);

      row->cell[0] = lr_camera_lens_title (camera);
      row->cell[1] = lr_f_number_format (camera->item->camera.f_number);
      row->cell[2] = lr_length_format (camera->item->camera.lens_height_m, units);
      if (camera->has_subject)
        {
          row->cell[3] = lr_length_format (camera->distance_m, units);
          row->cell[4] = sharp_text (camera, units);
        }
      row->cell[5] = lr_tilt_format (camera->tilt_rad);
    }

  add_settings (sheet, table);
  return table;
}
