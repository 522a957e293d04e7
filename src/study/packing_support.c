/* packing_support.c - what holds things up, and down
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tripod for each camera, a stand for each light, panel and microphone that stands, two for a backdrop, and one stand more: common
 * practice, no source. Sandbags are those that hang in the plan, or that its limits ask for, whichever is heavier.
 */

#include "packing_parts.h"

#include "power_readings.h"

#define SPARE_STANDS 1
#define SPARE_CLAMPS 2
#define BACKDROP_STANDS 2
#define BACKDROP_CLAMPS 4 /* two to each end: common practice, no source */

static void
use (LrPacking    *packing,
     LrPackGroup   group,
     LrPackWhat    what,
     const char   *name,
     const LrItem *item,
     int           count)
{
  lr_pack_use (lr_pack_line (packing, group, what, name), item, count, NAN);
}

static void
pack_panel (LrPacking    *packing,
            const LrItem *panel)
{
  gboolean is_backdrop = panel->panel.form == LR_PANEL_BACKDROP;

  use (packing, LR_PACK_SUPPORT, LR_PACK_STAND, "stand", panel, is_backdrop ? BACKDROP_STANDS : 1);
  use (packing, LR_PACK_GRIP, LR_PACK_CLAMP, "clamp", panel, is_backdrop ? BACKDROP_CLAMPS : 1);
}

static void
pack_microphone (LrPacking    *packing,
                 const LrItem *microphone)
{
  if (microphone->microphone.form == LR_MIC_BOOM)
    use (packing, LR_PACK_SUPPORT, LR_PACK_BOOM_STAND, "boom-stand", microphone, 1);
  else if (microphone->microphone.form == LR_MIC_STAND)
    use (packing, LR_PACK_SUPPORT, LR_PACK_STAND, "stand", microphone, 1);
  if (microphone->microphone.form == LR_MIC_BOOM && microphone->microphone.counterweight_kg > 0.0)
    {
      g_autofree char *name = g_strdup_printf ("counterweight-%d", (int) lround (100.0 * microphone->microphone.counterweight_kg));
      LrPackLine *line = lr_pack_line (packing, LR_PACK_GRIP, LR_PACK_COUNTERWEIGHT, name);

      line->size = microphone->microphone.counterweight_kg;
      lr_pack_use (line, microphone, 1, NAN);
    }
}

static void
pack_support (LrPacking    *packing,
              const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
      use (packing, LR_PACK_SUPPORT, LR_PACK_TRIPOD, "tripod", item, 1);
      break;
    case LR_ITEM_LIGHT: /* one without legs is clamped to something */
      if (item->light.stand_radius_m > 0.0)
        use (packing, LR_PACK_SUPPORT, LR_PACK_STAND, "stand", item, 1);
      else
        use (packing, LR_PACK_GRIP, LR_PACK_CLAMP, "clamp", item, 1);
      break;
    case LR_ITEM_PANEL:
      pack_panel (packing, item);
      break;
    case LR_ITEM_MICROPHONE:
      pack_microphone (packing, item);
      break;
    case LR_ITEM_PERSON:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}

static void
pack_bag (LrPacking      *packing,
          const LrStudy  *study,
          const LrPlaced *placed)
{
  LrStandReading stand;
  g_autofree char *name = NULL;
  LrPackLine *line;
  double bag_kg;

  if (!lr_study_stand (study, placed, &stand))
    return;
  bag_kg = fmax (stand.bag_kg, stand.wanted_bag_kg > 0.0 ? lr_stand_whole_bag_kg (stand.wanted_bag_kg) : 0.0);
  if (!(bag_kg > 0.0))
    return;

  name = g_strdup_printf ("sandbag-%d", (int) lround (100.0 * bag_kg));
  line = lr_pack_line (packing, LR_PACK_GRIP, LR_PACK_SANDBAG, name);
  line->size = bag_kg;
  lr_pack_use (line, placed->item, 1, stand.wanted_bag_kg);
}

/* Those in reserve for a line that is there */
static void
spare (LrPacking  *packing,
       LrPackWhat  what,
       int         count)
{
  for (guint i = 0; i < packing->lines->len; i++)
    if (((LrPackLine *) packing->lines->pdata[i])->what == what)
      lr_pack_spare (packing->lines->pdata[i], count);
}

/**
 * lr_pack_supports:
 * @packing: a packing list
 * @study: a study
 *
 * Adds what things stand and hang on, and what keeps stands upright.
 */
void
lr_pack_supports (LrPacking     *packing,
                  const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    pack_support (packing, g_array_index (study->placed, LrPlaced, i).item);
  for (guint i = 0; i < study->placed->len; i++)
    pack_bag (packing, study, &g_array_index (study->placed, LrPlaced, i));
  spare (packing, LR_PACK_STAND, SPARE_STANDS);
  spare (packing, LR_PACK_CLAMP, SPARE_CLAMPS);
}
