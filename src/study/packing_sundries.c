/* packing_sundries.c - what is recorded on, what sound takes, tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All quantities here are common practice, no source, but for the bytes, which are the rate times the time.
 */

#include "packing_parts.h"

#include "boom.h"
#include "endurance.h"
#include "power_readings.h"

#define CELLS_EACH 2          /* sets: in the transmitter and in the receiver */
#define SPARE_CELLS 1
#define SOUND_LEAD_MORE 1.3   /* of the straight way: it goes round things */
#define MARK_M 0.2            /* of tape in a mark: two strips across */
#define PERSON_MARKS 4        /* a chair's legs */
#define STAND_MARKS 3
#define MARK_ROLL_M 20.0
#define FLOOR_SHARE 0.5       /* of a lead's length that is taped down */
#define ACROSS_M 2.0          /* more for one that lies across a way */
#define FLOOR_ROLL_M 50.0

/* Media */

static void
pack_card (LrPacking     *packing,
           const LrStudy *study,
           const LrItem  *camera)
{
  double told_gb = lr_pack_told (study, camera, "card-gb"), told_rate = lr_pack_told (study, camera, "data-rate-mbit-s"), size_gb = NAN;
  double card_gb = told_gb > 0.0 ? told_gb : lr_pack_usual (camera->kind, "card-gb");
  double rate_mbit_s = told_rate > 0.0 ? told_rate : lr_pack_usual (camera->kind, "data-rate-mbit-s");
  g_autofree char *name = g_strdup_printf ("card-%d%s", (int) lround (card_gb), told_gb > 0.0 ? "" : "-usual");
  LrPackLine *line;
  int n;

  if (!lr_recorded_gb (rate_mbit_s, 3600.0 * packing->hours, &size_gb)
      || !lr_cards_needed (size_gb * (1.0 + LR_PACK_MORE_MEDIA), card_gb, LR_PACK_FILL, &n))
    return;

  line = lr_pack_line (packing, LR_PACK_CAMERA, LR_PACK_CARD, name);
  line->size = card_gb;
  line->is_usual_size = !(told_gb > 0.0);
  lr_pack_use (line, camera, n, size_gb);
  g_array_index (line->uses, LrPackUse, line->uses->len - 1).is_usual = !(told_rate > 0.0);
  line->total = (isnan (line->total) ? 0.0 : line->total) + size_gb;
}

/**
 * lr_pack_media:
 * @packing: a packing list
 * @study: a study
 *
 * Adds cards for all that is recorded from rolling to wrap, and one more of each kind.
 */
void
lr_pack_media (LrPacking     *packing,
               const LrStudy *study)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    if (((const LrItem *) study->setup->items->pdata[i])->kind == LR_ITEM_CAMERA)
      pack_card (packing, study, study->setup->items->pdata[i]);
  for (guint i = 0; i < packing->lines->len; i++)
    if (((LrPackLine *) packing->lines->pdata[i])->what == LR_PACK_CARD)
      lr_pack_spare (packing->lines->pdata[i], 1);
}

/* Sound */

static const LrPlaced *
main_camera (const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    if (g_array_index (study->placed, LrPlaced, i).item->kind == LR_ITEM_CAMERA)
      return &g_array_index (study->placed, LrPlaced, i);

  return NULL;
}

static double
sound_stock_m (double needed_m)
{
  static const double stock_m[] = { 1.0, 3.0, 5.0, 10.0, 15.0, 20.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (stock_m); i++)
    if (stock_m[i] >= needed_m)
      return stock_m[i];

  return 10.0 * ceil (needed_m / 10.0);
}

/* Along the arm, down the stand, over the floor and up to the main camera: where sound is recorded a plan does not say */
static void
pack_sound_lead (LrPacking      *packing,
                 const LrStudy  *study,
                 const LrPlaced *microphone)
{
  const LrPlaced *camera = main_camera (study);
  double needed_m = microphone->item->microphone.tip_height_m;
  g_autofree char *name = NULL;
  LrPackLine *line;

  if (microphone->item->microphone.form == LR_MIC_BOOM)
    {
      LrBoomHang hang;

      lr_boom_hang (microphone->at_m, &microphone->item->microphone, &hang);
      needed_m = hang.reach_m + hang.post_m;
    }
  if (camera != NULL)
    needed_m += lr_vec2_distance (camera->at_m, microphone->at_m) + camera->item->camera.lens_height_m;
  needed_m *= SOUND_LEAD_MORE;

  name = g_strdup_printf ("sound-lead-%d", (int) lround (sound_stock_m (needed_m)));
  line = lr_pack_line (packing, LR_PACK_SOUND, LR_PACK_SOUND_LEAD, name);
  line->size = sound_stock_m (needed_m);
  lr_pack_use (line, microphone->item, 1, needed_m);
}

/**
 * lr_pack_sound:
 * @packing: a packing list
 * @study: a study
 *
 * Adds leads and cells of microphones, and headphones.
 */
void
lr_pack_sound (LrPacking     *packing,
               const LrStudy *study)
{
  LrPackLine *cells = NULL, *headphones = NULL, *leads = NULL;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind != LR_ITEM_MICROPHONE)
        continue;
      headphones = lr_pack_line (packing, LR_PACK_SOUND, LR_PACK_HEADPHONES, "headphones");
      if (lr_microphone_stands (&placed->item->microphone))
        pack_sound_lead (packing, study, placed);
      else if (placed->item->microphone.form == LR_MIC_LAVALIER)
        {
          cells = lr_pack_line (packing, LR_PACK_SOUND, LR_PACK_CELLS, "cells");
          lr_pack_use (cells, placed->item, CELLS_EACH, NAN);
        }
    }
  if (headphones != NULL)
    lr_pack_use (headphones, NULL, 1, NAN);
  if (cells != NULL)
    lr_pack_spare (cells, SPARE_CELLS);
  for (guint i = 0; i < packing->lines->len; i++)
    {
      LrPackLine *line = packing->lines->pdata[i];

      if (line->what == LR_PACK_SOUND_LEAD && (leads == NULL || line->size > leads->size))
        leads = line;
    }
  if (leads != NULL)
    lr_pack_spare (leads, 1);
}

/* Tape */

static double
marks_m (const LrPlaced *placed)
{
  const LrItem *item = placed->item;

  if (item->kind == LR_ITEM_PERSON)
    return MARK_M * PERSON_MARKS;
  if (item->kind == LR_ITEM_CAMERA || (item->kind == LR_ITEM_LIGHT && item->light.stand_radius_m > 0.0) || item->kind == LR_ITEM_PANEL
      || (item->kind == LR_ITEM_MICROPHONE && lr_microphone_stands (&item->microphone)))
    return MARK_M * STAND_MARKS;

  return 0.0;
}

static double
floor_m (const LrStudy *study,
         const LrItem  *item)
{
  LrLeadPower lead;
  LrVec2 at_m;

  if (!lr_study_lead (study, item, &lead))
    return 0.0;

  return FLOOR_SHARE * lead.path_m + (lr_study_lead_across (study, item, &at_m) != NULL ? ACROSS_M : 0.0);
}

static void
pack_rolls (LrPacking  *packing,
            LrPackWhat  what,
            const char *name,
            double      total_m,
            double      roll_m)
{
  LrPackLine *line;

  if (!(total_m > 0.0))
    return;
  line = lr_pack_line (packing, LR_PACK_SUNDRIES, what, name);
  line->size = roll_m;
  line->total = total_m;
  lr_pack_use (line, NULL, (int) ceil (total_m / roll_m), NAN);
}

/**
 * lr_pack_tape:
 * @packing: a packing list
 * @study: a study
 *
 * Adds tape that marks places, and tape that holds leads down.
 */
void
lr_pack_tape (LrPacking     *packing,
              const LrStudy *study)
{
  double mark_m = 0.0, lead_m = 0.0;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      mark_m += marks_m (placed);
      lead_m += floor_m (study, placed->item);
    }
  pack_rolls (packing, LR_PACK_FLOOR_TAPE, "floor-tape", lead_m, FLOOR_ROLL_M);
  pack_rolls (packing, LR_PACK_MARK_TAPE, "mark-tape", mark_m, MARK_ROLL_M);
}
