/* intruder_balls.c - balls round things, by which most of them are quickly left out of a picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intruders.h"

/* How far it reaches to the sides of its middle, in plan, and over its top */
static double
breadth_m (const LrPlaced *placed)
{
  const LrItem *item = placed->item;

  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      return 0.75;
    case LR_ITEM_CAMERA:
      return fmax (item->camera.stand_radius_m, 0.25);
    case LR_ITEM_LIGHT:
      return fmax (item->light.stand_radius_m, 0.45 + 0.5 * hypot (item->light.width_m, item->light.height_m));
    case LR_ITEM_MICROPHONE:
      return fmax (item->microphone.stand_radius_m,
                   0.2 + fmax (item->microphone.short_end_m,
                               lr_vec2_distance (placed->at_m, lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m))));
    case LR_ITEM_PANEL:
      return fmax (item->panel.stand_radius_m, 0.5 * item->panel.width_m + LR_SHEET_M);
    case LR_ITEM_FURNITURE:
      return placed->footprint.radius_m;
    case LR_ITEM_WINDOW:
      return 0.5 * item->window.width_m;
    case LR_ITEM_HOUSE_LIGHT:
      return LR_FIXTURE_RADIUS_M;
    case LR_ITEM_LEAD:
    case LR_ITEM_DOOR:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return -1.0;
    }
}

static gboolean
is_intruder (const LrItem *item)
{
  return !(item->kind == LR_ITEM_MICROPHONE && !lr_microphone_stands (&item->microphone))
         && !(item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_BACKDROP)
         && !(item->kind == LR_ITEM_WINDOW && item->window.blind == LR_BLIND_DOWN);
}

/**
 * lr_intruder_ball:
 * @study: a study whose items are placed
 * @placed: one of its things
 * @centre_m: (out): middle of a ball that holds it [m]
 * @reach_m: (out): its radius [m]
 *
 * Returns: %FALSE if the thing is never an intrusion
 */
gboolean
lr_intruder_ball (const LrStudy  *study G_GNUC_UNUSED,
                  const LrPlaced *placed,
                  LrVec3         *centre_m,
                  double         *reach_m)
{
  double half_m = breadth_m (placed), top_m = placed->top_m + 0.25;

  if (half_m < 0.0 || !is_intruder (placed->item))
    return FALSE;

  if (placed->item->kind == LR_ITEM_LIGHT)
    top_m += 0.5 * placed->item->light.width_m;
  *centre_m = lr_vec2_raise (placed->at_m, 0.5 * (placed->bottom_m + top_m));
  *reach_m = hypot (half_m, 0.5 * (top_m - placed->bottom_m));
  return TRUE;
}
