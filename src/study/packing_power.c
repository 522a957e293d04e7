/* packing_power.c - leads and batteries
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A lead is brought as it is laid in the plan, if it reaches; else the shortest of the kit that does. What takes power and has neither a
 * lead nor a battery gets the shortest lead that reaches it from the nearest socket. One lead more comes along, of the longest: common
 * practice, no source.
 */

#include "packing_parts.h"

#include "endurance.h"
#include "power_readings.h"

#define NEAR_M 1e-6

/* Lengths in which leads are sold; common practice, no source */
static const double stock_m[] = { 2.0, 3.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0 };

static double
stock_for_m (double needed_m)
{
  for (gsize i = 0; i < G_N_ELEMENTS (stock_m); i++)
    if (stock_m[i] >= needed_m - NEAR_M)
      return stock_m[i];

  return 10.0 * ceil (needed_m / 10.0);
}

/* How many of the entry the lines so far take */
static int
taken_of (const LrPacking  *packing,
          const LrKitEntry *entry)
{
  for (guint i = 0; i < packing->lines->len; i++)
    if (((const LrPackLine *) packing->lines->pdata[i])->entry == entry)
      return ((const LrPackLine *) packing->lines->pdata[i])->quantity;

  return 0;
}

/* The shortest lead of the kit that reaches and is left; (nullable) */
static const LrKitEntry *
find_lead (const LrPacking *packing,
           const LrStudy   *study,
           double           needed_m)
{
  const LrKitEntry *best = NULL;

  for (guint i = 0; i < study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = study->plan->kit->pdata[i];

      if (entry->item->kind == LR_ITEM_LEAD && entry->item->lead.length_m >= needed_m - NEAR_M
          && taken_of (packing, entry) < entry->count
          && (best == NULL || entry->item->lead.length_m < best->item->lead.length_m))
        best = entry;
    }

  return best;
}

/* A lead for @item that reaches so far, out of the kit or to be found */
static void
pack_lead_of (LrPacking     *packing,
              const LrStudy *study,
              double         needed_m,
              const LrItem  *item)
{
  const LrKitEntry *entry = find_lead (packing, study, needed_m);
  g_autofree char *name = NULL;
  LrPackLine *line;

  if (entry != NULL)
    {
      line = lr_pack_thing (packing, study, LR_PACK_POWER, entry->item->id, item);
      g_array_index (line->uses, LrPackUse, line->uses->len - 1).figure = needed_m;
      return;
    }
  name = g_strdup_printf ("lead-%d", (int) lround (stock_for_m (needed_m)));
  line = lr_pack_line (packing, LR_PACK_POWER, LR_PACK_LEAD_TO_FIND, name);
  line->size = stock_for_m (needed_m);
  line->owned = 0;
  lr_pack_use (line, item, 1, needed_m);
}

/* Those that reach, or those that do not: the latter take what is left */
static void
pack_laid (LrPacking     *packing,
           const LrStudy *study,
           gboolean       reaches)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    {
      const LrItem *lead = study->setup->items->pdata[i];
      LrLeadPower reading;
      LrPackLine *line;

      if (!lr_study_lead (study, lead, &reading) || (reading.needed_m <= lead->lead.length_m + NEAR_M) != reaches)
        continue;
      if (!reaches)
        {
          pack_lead_of (packing, study, reading.needed_m, lead);
          continue;
        }
      line = lr_pack_thing (packing, study, LR_PACK_POWER, lead->kit, lead);
      g_array_index (line->uses, LrPackUse, line->uses->len - 1).figure = reading.needed_m;
    }
}

/* How long a lead from the nearest socket is; NAN: no way, or no socket */
static double
way_to_m (const LrStudy  *study,
          const LrPlaced *load)
{
  double least_m = NAN;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *socket = &g_array_index (study->placed, LrPlaced, i);
      LrVec2 path_m[LR_LEAD_POINTS];
      double needed_m;
      gsize n;

      if (socket->item->kind != LR_ITEM_SOCKET || !lr_study_lead_way (study, socket, load, path_m, &n))
        continue;
      needed_m = lr_study_needed_m (study, socket, path_m, n);
      if (!(least_m <= needed_m))
        least_m = needed_m;
    }

  return least_m;
}

static gboolean
runs_from_battery (const LrStudy *study,
                   const LrItem  *item)
{
  return item->kind == LR_ITEM_CAMERA || (item->kind == LR_ITEM_LIGHT && lr_pack_told (study, item, "battery-wh") > 0.0);
}

static void
pack_missing_lead (LrPacking      *packing,
                   const LrStudy  *study,
                   const LrPlaced *placed)
{
  double needed_m;

  if (runs_from_battery (study, placed->item) || !(lr_study_power_w (placed->item, FALSE) > 0.0)
      || lr_study_lead_of (study, placed->item->id) != NULL)
    return;
  needed_m = way_to_m (study, placed);
  if (isfinite (needed_m))
    pack_lead_of (packing, study, needed_m, placed->item);
  else
    {
      LrPackLine *line = lr_pack_line (packing, LR_PACK_POWER, LR_PACK_LEAD_TO_FIND, "lead");

      line->owned = 0;
      lr_pack_use (line, placed->item, 1, NAN);
    }
}

/* One more of the longest that is brought from the kit */
static void
pack_spare_lead (LrPacking *packing)
{
  LrPackLine *longest = NULL;

  for (guint i = 0; i < packing->lines->len; i++)
    {
      LrPackLine *line = packing->lines->pdata[i];

      if (line->entry != NULL && line->entry->item->kind == LR_ITEM_LEAD
          && (longest == NULL || line->entry->item->lead.length_m > longest->entry->item->lead.length_m))
        longest = line;
    }
  if (longest != NULL)
    lr_pack_spare (longest, 1);
}

/* A socket with more leads than outlets */
static void
pack_multiway (LrPacking     *packing,
               const LrStudy *study,
               const LrItem  *socket)
{
  if ((int) lr_study_leads_in (study, socket->id, NULL) > socket->socket.outlets)
    lr_pack_use (lr_pack_line (packing, LR_PACK_POWER, LR_PACK_MULTIWAY, "multiway"), socket, 1, NAN);
}

/**
 * lr_pack_leads:
 * @packing: a packing list
 * @study: a study
 *
 * Adds leads, laid ones first, and what goes on the sockets.
 */
void
lr_pack_leads (LrPacking     *packing,
               const LrStudy *study)
{
  const GPtrArray *items = study->setup->items;

  pack_laid (packing, study, TRUE);
  pack_laid (packing, study, FALSE);
  for (guint i = 0; i < study->placed->len; i++)
    pack_missing_lead (packing, study, &g_array_index (study->placed, LrPlaced, i));
  pack_spare_lead (packing);
  for (guint i = 0; i < items->len; i++)
    if (((const LrItem *) items->pdata[i])->kind == LR_ITEM_SOCKET)
      pack_multiway (packing, study, items->pdata[i]);
}

/* Batteries */

static void
pack_battery (LrPacking     *packing,
              const LrStudy *study,
              const LrItem  *item)
{
  gboolean is_camera = item->kind == LR_ITEM_CAMERA, is_mains = lr_study_lead_of (study, item->id) != NULL;
  double told_wh = lr_pack_told (study, item, "battery-wh");
  double told_w = is_camera ? lr_pack_told (study, item, "draw-w") : lr_study_power_w (item, TRUE);
  double wh = told_wh > 0.0 ? told_wh : lr_pack_usual (item->kind, "battery-wh");
  double draw_w = told_w > 0.0 ? told_w : lr_pack_usual (item->kind, "draw-w");
  g_autofree char *name = g_strdup_printf ("%s-battery-%d%s", is_camera ? "camera" : "light", (int) lround (10.0 * wh),
                                           told_wh > 0.0 ? "" : "-usual");
  LrPackLine *line;
  LrPackUse *use;
  int n = 0;

  if (!is_camera && !(told_w > 0.0)) /* off */
    return;
  if (!is_mains && !lr_batteries_needed (draw_w, 3600.0 * packing->hours, LR_PACK_MORE_TIME, wh, LR_PACK_USABLE, &n))
    return;

  line = lr_pack_line (packing, LR_PACK_POWER, is_camera ? LR_PACK_CAMERA_BATTERY : LR_PACK_LIGHT_BATTERY, name);
  line->size = wh;
  line->is_usual_size = !(told_wh > 0.0);
  lr_pack_use (line, item, n, draw_w);
  use = &g_array_index (line->uses, LrPackUse, line->uses->len - 1);
  use->is_mains = is_mains;
  use->is_usual = !(told_w > 0.0);
}

/**
 * lr_pack_batteries:
 * @packing: a packing list
 * @study: a study
 *
 * Adds batteries for what runs from them from rolling to wrap, one more of each kind; and one for what runs from the mains, in case that
 * fails.
 */
void
lr_pack_batteries (LrPacking     *packing,
                   const LrStudy *study)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    if (runs_from_battery (study, study->setup->items->pdata[i]))
      pack_battery (packing, study, study->setup->items->pdata[i]);
  for (guint i = 0; i < packing->lines->len; i++)
    {
      LrPackLine *line = packing->lines->pdata[i];

      if (line->what == LR_PACK_CAMERA_BATTERY || line->what == LR_PACK_LIGHT_BATTERY)
        lr_pack_spare (line, 1);
    }
}
