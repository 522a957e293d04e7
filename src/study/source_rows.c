/* source_rows.c - what each source alone gives a face and the walls behind it, to be listed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "source_rows.h"

#include "light_levels_private.h"
#include "sun_readings.h"
#include "units.h"

#include <glib/gi18n-lib.h>

#define NO_BREAK_SPACE "\u00a0"

static void
clear_row (gpointer row)
{
  g_free (((LrSourceRow *) row)->title);
}

/* Daylight is that of the middle of the shoot */
static char *
window_title (const LrStudy       *study,
              const LrAloneSource *source,
              const char          *title)
{
  int minute = lr_study_light_minute (study);

  if (source->emitter->shape == LR_EMITTER_BEAM)
    /* Translators: a window, hours and minutes: the sun through it then */
    return g_strdup_printf (_("%s, sun at %02d:%02d"), title, minute / 60 % 24, minute % 60);

  /* Translators: a window, hours and minutes: the sky through it then */
  return g_strdup_printf (_("%s, sky at %02d:%02d"), title, minute / 60 % 24, minute % 60);
}

static char *
make_title (const LrStudy       *study,
            const LrAloneSource *source)
{
  const LrItem *item = source->placed->item;
  g_autofree char *title = lr_item_title (item), *dim = NULL;

  if (item->kind == LR_ITEM_WINDOW)
    return window_title (study, source, title);
  if (item->kind != LR_ITEM_LIGHT || item->light.dim >= 1.0)
    return g_steal_pointer (&title);
  if (source->is_out)
    /* Translators: a lamp that is dimmed to nothing: what it would give if it were not */
    return g_strdup_printf (_("%s, out; at full"), title);

  dim = lr_number_format (100.0 * item->light.dim, 0);
  /* Translators: a lamp and how far it is dimmed */
  return g_strdup_printf (_("%s, at %s" NO_BREAK_SPACE "%%"), title, dim);
}

static double
stops_over (double lux,
            double of_lx)
{
  return lux > 0.0 && of_lx > 0.0 ? log2 (lux / of_lx) : (double) NAN;
}

static const LrPlaced *
find_camera (const LrLightLevels *levels,
             const LrPlaced      *person)
{
  for (guint i = 0; i < levels->study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (levels->study->cameras, LrCameraReading, i);

      if (camera->has_subject && camera->subject == person)
        return camera->placed;
    }
  return NULL;
}

static void
add_row (LrSourceRows        *self,
         const LrLightLevels *levels,
         const LrFaceLight   *face,
         guint                index,
         LrSourceRow         *sum)
{
  LrAloneSource source = lr_light_alone_get (levels, index);
  double all_lx = lr_lux_all (face->at[face->lit]), walls_lx = NAN, given_lx;
  LrSourceRow row = { .is_out = source.is_out };

  row.face_lx = lr_light_alone_face_lx (levels, index, face->person->item->id, face->lit);
  if (self->camera != NULL && lr_light_alone_walls_lx (levels, index, self->camera->item->id, &walls_lx, &given_lx))
    row.walls_lx = walls_lx;
  else
    row.walls_lx = NAN;
  row.title = make_title (levels->study, &source);
  row.face_stops = stops_over (row.face_lx, all_lx);
  row.walls_stops = stops_over (row.walls_lx, all_lx);
  if (!source.is_out)
    {
      sum->face_lx += row.face_lx;
      sum->walls_lx += row.walls_lx;
    }
  g_array_append_val (self->rows, row);
}

/**
 * lr_source_rows_new:
 * @levels: levels, which outlive the rows
 * @person: (nullable): id of a person; %NULL: whom the first camera frames
 *
 * Returns: (transfer full) (nullable): a row for each source, and one for all; %NULL if the levels are not whole or nobody is there
 */
LrSourceRows *
lr_source_rows_new (const LrLightLevels *levels,
                    const char          *person)
{
  const LrFaceLight *face = person != NULL ? lr_light_levels_face (levels, person) : lr_light_levels_main_face (levels);
  LrSourceRow sum = { .is_sum = TRUE };
  LrSourceRows *self;

  if (face == NULL || !lr_light_levels_is_whole (levels))
    return NULL;

  self = g_new0 (LrSourceRows, 1);
  self->person = face->person;
  self->camera = find_camera (levels, face->person);
  self->rows = g_array_new (FALSE, FALSE, sizeof (LrSourceRow));
  g_array_set_clear_func (self->rows, clear_row);
  for (guint i = 0; i < lr_light_alone_n (levels); i++)
    add_row (self, levels, face, i, &sum);
  if (self->rows->len == 0)
    return self;

  sum.title = g_strdup (_("all that shine"));
  sum.face_stops = stops_over (sum.face_lx, lr_lux_all (face->at[face->lit]));
  sum.walls_stops = stops_over (sum.walls_lx, lr_lux_all (face->at[face->lit]));
  g_array_append_val (self->rows, sum);
  return self;
}

/**
 * lr_source_rows_free:
 * @rows: (transfer full) (nullable): rows
 */
void
lr_source_rows_free (LrSourceRows *rows)
{
  if (rows == NULL)
    return;

  g_array_unref (rows->rows);
  g_free (rows);
}
