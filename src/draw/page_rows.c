/* page_rows.c - what the tables of the page say: cameras, lights, sound
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures are taken from the plan and its study; nothing is computed here but differences of heights.
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

static const LrColumn light_columns[] = {
  { N_("what"), LR_ALIGN_LEFT, TRUE },
  { N_("height"), LR_ALIGN_RIGHT, FALSE },
  { N_("aims at"), LR_ALIGN_LEFT, TRUE },
  { N_("level"), LR_ALIGN_RIGHT, FALSE },
  { N_("white"), LR_ALIGN_RIGHT, FALSE },
  { N_("plug, lead"), LR_ALIGN_RIGHT, FALSE }
};

static const LrColumn sound_columns[] = {
  { N_("what"), LR_ALIGN_LEFT, TRUE },
  { N_("height"), LR_ALIGN_RIGHT, FALSE },
  { N_("where"), LR_ALIGN_LEFT, TRUE }
};

static char *
item_name (const LrItem *item)
{
  return item->name[0] != '\0' ? g_strdup (item->name) : lr_item_title (item);
}

static const LrPlaced *
find_placed (const LrSheet *sheet,
             const char    *id)
{
  return id[0] != '\0' ? lr_study_find_placed (sheet->study, id) : NULL;
}

/* --- Cameras -------------------------------------------------------------------------------------------------- */

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
  const LrPlaced *aim = find_placed (sheet, camera->aims_at);
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

  name = item_name (aim->item);
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

/* "wanted face 60 %, walls 40 %"; (transfer full) */
static char *
wanted_note (const LrPlan *plan)
{
  double face = 100.0 * lr_plan_face_level (plan), walls = 100.0 * lr_plan_wall_level (plan);

  if (isnan (walls))
    /* Translators: where levels are wanted, per cent */
    return g_strdup_printf (_("wanted face %.0f %%, walls dark"), face);

  /* Translators: where levels are wanted, per cent */
  return g_strdup_printf (_("wanted face %.0f %%, walls %.0f %%"), face, walls);
}

/* "Key side 2.4 stops over shadow; wanted face 60 %, walls 40 %" */
static char *
ratio_note (const LrSheet *sheet)
{
  const LrPlaced *subject = sheet->study->subject;
  const LrFaceLight *face = sheet->options->levels != NULL && subject != NULL
                                ? lr_light_levels_face (sheet->options->levels, subject->item->id) : NULL;
  g_autofree char *wanted = wanted_note (sheet->study->plan);

  if (face == NULL || face->key == NULL || !isfinite (face->ratio_stops))
    return NULL;

  /* Translators: how many stops lie between the two sides of a face, and "wanted face 60 %, walls 40 %" */
  return g_strdup_printf (_("key side %.1f stops over shadow; %s"), face->ratio_stops, wanted);
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

/* --- Lights --------------------------------------------------------------------------------------------------- */

/* "90 cm", "1.2 m", "35″": the size of a thing that one buys */
static char *
size_text (double  size_m,
           LrUnits units)
{
  if (units == LR_UNITS_IMPERIAL)
    return g_strdup_printf (_("%.0f″"), size_m / 0.0254);

  return size_m < 0.995 ? g_strdup_printf (_("%.0f cm"), size_m * 100.0) : g_strdup_printf (_("%.3g m"), size_m);
}

static const char *
job_word (LrLightJob job)
{
  static const char *const words[] = {
    [LR_JOB_KEY] = N_("key"), [LR_JOB_FILL] = N_("fill"), [LR_JOB_BACK] = N_("back"),
    [LR_JOB_WALL] = N_("wall"), [LR_JOB_OTHER] = N_("light")
  };

  return _(words[job]);
}

/* "key, 90 cm emitter", "wall, point with doors" */
static char *
light_text (const LrLight *light,
            LrUnits        units)
{
  g_autofree char *size = size_text (MAX (light->width_m, light->height_m), units);
  g_autoptr (GString) text = g_string_new (job_word ((LrLightJob) light->job));

  g_string_append (text, ", ");
  switch ((LrLightForm) light->form)
    {
    case LR_LIGHT_WIDE:
      g_string_append_printf (text, _("%s emitter"), size);
      break;
    case LR_LIGHT_PANEL:
      g_string_append_printf (text, _("%s panel"), size);
      break;
    case LR_LIGHT_POINT:
      g_string_append (text, _("point"));
      break;
    default:
      g_assert_not_reached ();
    }

  if (light->modifier[0] != '\0')
    g_string_append_printf (text, _(" with %s"), light->modifier);

  return g_strdup (text->str);
}

/* Which part of a person a height means */
static const char *
body_word (const LrBody *body,
           double        height_m)
{
  if (height_m <= 0.0)
    return _("face");
  if (height_m > (body->eyes_m + body->crown_m) / 2.0)
    return _("crown");
  if (height_m > body->chin_m)
    return _("face");

  return height_m > body->waist_m ? _("chest") : _("lap");
}

/* "face" for the subject, "Ines, crown" for others, "1.35 m, plan chest" for things; else its note */
static char *
aim_text (const LrSheet *sheet,
          const LrItem  *item)
{
  const LrLight *light = &item->light;
  const LrPlaced *aim = find_placed (sheet, light->aims_at);
  g_autofree char *name = NULL;
  g_autofree char *height = NULL;

  if (aim == NULL)
    return item->note[0] != '\0' ? g_strdup (item->note) : lr_tilt_format (light->tilt_rad);

  name = item_name (aim->item);
  if (aim->item->kind == LR_ITEM_PERSON)
    {
      const char *part = body_word (&aim->body, light->aim_height_m);

      return aim == sheet->study->subject ? g_strdup (part) : g_strdup_printf (_("%s, %s"), name, part);
    }

  if (light->aim_height_m <= 0.0)
    return g_steal_pointer (&name);

  height = lr_length_format (light->aim_height_m, sheet->options->units);
  return g_strdup_printf (_("%s, %s"), height, name);
}

/* "S2, 10 m" */
static char *
lead_text (const LrSheet *sheet,
           const char    *id)
{
  const GPtrArray *items = sheet->study->setup->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      const LrPlaced *socket;
      g_autofree char *length = NULL;

      if (item->kind != LR_ITEM_LEAD || !g_str_equal (item->lead.feeds, id))
        continue;

      length = sheet->options->units == LR_UNITS_IMPERIAL ? g_strdup_printf (_("%.0f ft"), item->lead.length_m / 0.3048)
                                                          : g_strdup_printf (_("%.3g m"), item->lead.length_m);
      socket = find_placed (sheet, item->lead.socket);
      return socket != NULL ? g_strdup_printf (_("%s, %s"), socket->item->tag, length) : g_steal_pointer (&length);
    }

  return NULL;
}

static void
add_light (const LrSheet *sheet,
           LrTable       *table,
           const LrItem  *item)
{
  const LrLight *light = &item->light;
  LrRow *row = lr_table_add (table, LR_ITEM_LIGHT, item->tag);

  row->cell[0] = light_text (light, sheet->options->units);
  row->cell[1] = lr_length_format (light->lamp_height_m, sheet->options->units);
  row->cell[2] = aim_text (sheet, item);
  row->cell[3] = g_strdup_printf (_("%.0f %%"), light->dim * 100.0);
  row->cell[4] = g_strdup_printf (_("%.0f K"), light->color_temperature_k);
  row->cell[5] = lead_text (sheet, item->id);
}

static void
add_panel (const LrSheet *sheet,
           LrTable       *table,
           const LrItem  *item)
{
  const LrPanel *panel = &item->panel;
  LrUnits units = sheet->options->units;
  LrRow *row = lr_table_add (table, LR_ITEM_PANEL, item->tag);
  g_autofree char *size = size_text (MAX (panel->width_m, panel->height_m), units);

  switch ((LrPanelForm) panel->form)
    {
    case LR_PANEL_REFLECTOR:
      row->cell[0] = g_strdup_printf (_("fill, %s reflector"), size);
      break;
    case LR_PANEL_FLAG:
      row->cell[0] = g_strdup_printf (_("%s flag"), size);
      break;
    case LR_PANEL_BACKDROP:
      row->cell[0] = g_strdup_printf (_("%s backdrop"), size);
      break;
    default:
      g_assert_not_reached ();
    }

  row->cell[1] = lr_length_format (panel->bottom_m + panel->height_m / 2.0, units);
  row->cell[2] = g_strdup (item->note);
}

/**
 * lr_page_lights_new:
 * @sheet: the page
 *
 * Returns: (transfer full): a row for each light, then for each panel
 */
LrTable *
lr_page_lights_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("lights", _("Lights"));

  table->note = ratio_note (sheet);
  const GPtrArray *items = sheet->study->setup->items;

  table->columns = light_columns;
  table->n_columns = G_N_ELEMENTS (light_columns);

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_LIGHT)
        add_light (sheet, table, item);
    }
  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_PANEL)
        add_panel (sheet, table, item);
    }

  return table;
}

/* --- Sound ---------------------------------------------------------------------------------------------------- */

/* The pattern share + (1 - share) cos, in the trade's words for the ones that have any */
static const char *
pattern_word (double omni_share)
{
  if (omni_share >= 0.85)
    return _("all-round");
  if (omni_share >= 0.6)
    return _("wide");
  if (omni_share >= 0.42)
    return _("cardioid");

  return omni_share >= 0.15 ? _("narrow") : _("both ways");
}

static const char *
mic_word (LrMicForm form)
{
  static const char *const words[] = {
    [LR_MIC_BOOM] = N_("boom"), [LR_MIC_LAVALIER] = N_("lavalier"), [LR_MIC_STAND] = N_("on a stand"), [LR_MIC_CAMERA] = N_("on a camera")
  };

  return _(words[form]);
}

/* How far the capsule is from the mouth that it is aimed at */
static char *
where_text (const LrSheet *sheet,
            const LrItem  *item)
{
  const LrMicrophone *mic = &item->microphone;
  const LrPlaced *person = find_placed (sheet, mic->form == LR_MIC_LAVALIER ? mic->worn_by : mic->aims_at);
  g_autofree char *name = NULL;
  g_autofree char *distance = NULL;
  double distance_m = 0.0;

  if (mic->form == LR_MIC_CAMERA)
    {
      const LrPlaced *camera = find_placed (sheet, mic->mounted_on);

      /* Translators: a camera's tag */
      return camera != NULL ? g_strdup_printf (_("over the lens of %s"), camera->item->tag) : g_strdup ("");
    }
  if (person == NULL || person->item->kind != LR_ITEM_PERSON)
    return g_strdup (mic->form == LR_MIC_LAVALIER ? "" : _("straight down"));

  name = item_name (person->item);
  if (mic->form == LR_MIC_LAVALIER)
    return g_strdup_printf (_("on the breastbone of %s"), name);

  lr_study_mouth_distance_m (sheet->study, item, &distance_m);
  distance = lr_length_format (distance_m, sheet->options->units);
  return g_strdup_printf (_("%s from the mouth of %s"), distance, name);
}

/**
 * lr_page_sound_new:
 * @sheet: the page
 *
 * Returns: (transfer full): a row for each microphone
 */
LrTable *
lr_page_sound_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("sound", _("Sound"));
  const GPtrArray *items = sheet->study->setup->items;

  table->columns = sound_columns;
  table->n_columns = G_N_ELEMENTS (sound_columns);

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      LrRow *row;

      if (item->kind != LR_ITEM_MICROPHONE)
        continue;

      row = lr_table_add (table, LR_ITEM_MICROPHONE, item->tag);
      row->cell[0] = g_strdup_printf ("%s, %s", mic_word ((LrMicForm) item->microphone.form),
                                      pattern_word (item->microphone.omni_share));
      if (lr_microphone_stands (&item->microphone))
        row->cell[1] = lr_length_format (item->microphone.tip_height_m, sheet->options->units);
      row->cell[2] = where_text (sheet, item);
    }

  return table;
}
