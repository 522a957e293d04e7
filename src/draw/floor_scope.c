/* floor_scope.c - which items a drawing holds, and their outlines on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "floor_layers.h"

#include <string.h>

/* Id of the thing on whose place this one's drawing turns; "" for none */
static const char *
get_anchor (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      return item->person.looks_at;
    case LR_ITEM_CAMERA:
      return item->camera.aims_at;
    case LR_ITEM_LIGHT:
      return item->light.aims_at;
    case LR_ITEM_MICROPHONE:
      return *lr_item_carrier (item) != '\0' ? lr_item_carrier (item) : item->microphone.aims_at;
    case LR_ITEM_PANEL:
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
      return "";
    }
}

static guint
index_of (const LrStudy  *study,
          const LrPlaced *placed)
{
  return (guint) (placed - (const LrPlaced *) (gpointer) study->placed->data);
}

/**
 * lr_floor_moving:
 * @study: a study
 * @id: of the item that moves
 *
 * Returns: (transfer full): by index in the study's places, whether the item is the one that moves or turns with it: a camera
 *   that aims at it, a microphone that it wears, who looks at it, and what aims at those
 */
gboolean *
lr_floor_moving (const LrStudy *study,
                 const char    *id)
{
  gboolean *moves = g_new0 (gboolean, study->placed->len + 1);
  const LrPlaced *first = lr_study_find_placed (study, id);
  gboolean has_more = first != NULL;

  if (first != NULL)
    moves[index_of (study, first)] = TRUE;

  while (has_more)
    {
      has_more = FALSE;
      for (guint i = 0; i < study->placed->len; i++)
        {
          const LrPlaced *anchor;

          if (moves[i])
            continue;
          anchor = lr_study_find_placed (study, get_anchor (g_array_index (study->placed, LrPlaced, i).item));
          if (anchor == NULL || !moves[index_of (study, anchor)])
            continue;
          moves[i] = TRUE;
          has_more = TRUE;
        }
    }

  return moves;
}

/**
 * lr_floor_has:
 * @floor: a drawing
 * @placed: an item
 *
 * Returns: whether this drawing holds the item: all do, but for the two layers of a drag
 */
gboolean
lr_floor_has (const LrFloor  *floor,
              const LrPlaced *placed)
{
  return placed != NULL && floor->is_drawn[index_of (floor->study, placed)];
}

/**
 * lr_floor_has_id:
 * @floor: a drawing
 * @id: (nullable): an item's
 *
 * Returns: whether this drawing holds the item
 */
gboolean
lr_floor_has_id (const LrFloor *floor,
                 const char    *id)
{
  return lr_floor_has (floor, lr_study_find_placed (floor->study, id));
}

/**
 * lr_floor_has_between:
 * @floor: a drawing
 * @ids: (nullable): NULL-terminated
 *
 * Returns: whether this drawing holds what hangs on all of them: in a drag it is drawn with the moving half if one moves
 */
gboolean
lr_floor_has_between (const LrFloor     *floor,
                      const char *const *ids)
{
  gboolean has_any = FALSE, has_all = TRUE;

  for (gsize i = 0; ids != NULL && ids[i] != NULL; i++)
    {
      const LrPlaced *placed = lr_study_find_placed (floor->study, ids[i]);

      if (placed == NULL)
        continue;
      has_any = has_any || lr_floor_has (floor, placed);
      has_all = has_all && lr_floor_has (floor, placed);
    }

  return floor->has_base ? has_all : has_any;
}

/* A box given in the item's own frame */
static LrOutline
own_box (const LrPlaced *placed,
         double          x0_m,
         double          x1_m,
         double          half_y_m)
{
  LrVec2 facing = lr_vec2_polar (placed->facing_rad, 1.0);
  LrVec2 centre_m = lr_vec2_along (placed->at_m, facing, 0.5 * (x0_m + x1_m));

  return lr_outline_box (centre_m, x1_m - x0_m, 2.0 * half_y_m, placed->facing_rad);
}

static LrOutline
boom_outline (const LrPlaced *placed)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrVec2 arm = lr_vec2_sub (lr_vec2 (microphone->tip_x_m, microphone->tip_y_m), placed->at_m);
  LrVec2 along = lr_vec2_polar (lr_vec2_angle_rad (arm), 1.0);
  double from_m = -MAX (microphone->stand_radius_m, microphone->short_end_m);
  double to_m = MAX (microphone->stand_radius_m, lr_vec2_length (arm) + 0.11);
  LrVec2 centre_m = lr_vec2_along (placed->at_m, along, 0.5 * (from_m + to_m));

  return lr_outline_box (centre_m, to_m - from_m, 2.0 * microphone->stand_radius_m, lr_vec2_angle_rad (along));
}

static LrOutline
microphone_outline (const LrView   *view,
                    const LrPlaced *placed)
{
  LrVec2 on_chest = lr_vec2_rotate (lr_vec2 (LR_LAVALIER_AHEAD_M, LR_LAVALIER_LEFT_M), placed->facing_rad);

  switch ((LrMicForm) placed->item->microphone.form)
    {
    case LR_MIC_BOOM:
      return boom_outline (placed);
    case LR_MIC_LAVALIER:
      return lr_outline_disc (lr_vec2_add (placed->at_m, on_chest), MAX (0.026, 2.2 * view->theme->unit_px / view->scale));
    case LR_MIC_CAMERA:
      return lr_outline_box (lr_vec3_flat (placed->point_m), LR_CAMERA_MIC_M, 0.05, placed->facing_rad);
    case LR_MIC_STAND:
    default:
      return placed->footprint;
    }
}

static LrOutline
panel_outline (const LrPlaced *placed)
{
  const LrPanel *panel = &placed->item->panel;
  double half_x_m = panel->form == LR_PANEL_BACKDROP ? 0.35 : MAX (panel->stand_radius_m, 0.08);
  double half_y_m = MAX (0.5 * panel->width_m, panel->stand_radius_m);

  return own_box (placed, -half_x_m, half_x_m, half_y_m);
}

static LrOutline
light_outline (const LrPlaced *placed)
{
  const LrLight *light = &placed->item->light;
  double r = light->stand_radius_m;

  /* an emitter that sticks out over its stand */
  if (light->form == LR_LIGHT_WIDE && hypot (0.205, 0.5 * light->width_m) > r)
    return own_box (placed, -MAX (r, 0.41), MAX (r, 0.205), MAX (r, 0.5 * light->width_m));

  return placed->footprint;
}

static LrOutline
door_outline (const LrPlaced *placed)
{
  const LrDoor *door = &placed->item->door;
  double inside_m = door->swing == LR_SWING_IN ? door->width_m : 0.0;
  double outside_m = door->swing == LR_SWING_OUT ? door->width_m : 0.0;

  return own_box (placed, -LR_WALL_M - outside_m, inside_m, 0.5 * door->width_m);
}

static LrOutline
noise_outline (const LrView   *view,
               const LrPlaced *placed)
{
  const LrNoise *noise = &placed->item->noise;
  double dot_m = MAX (0.05, 2.6 * view->theme->unit_px / view->scale);

  if (noise->length_m > 0.0 && noise->width_m > 0.0)
    return own_box (placed, -0.5 * noise->length_m, 0.5 * noise->length_m, 0.5 * noise->width_m);

  return lr_outline_disc (lr_vec2_along (placed->at_m, lr_vec2_polar (placed->facing_rad, 1.0), 1.6 * dot_m), 2.8 * dot_m);
}

static LrOutline
lead_outline (const LrItem *item)
{
  LrVec2 low = item->path_m[0], high = item->path_m[0];

  for (gsize i = 1; i < item->n_path; i++)
    {
      low = lr_vec2 (MIN (low.x, item->path_m[i].x), MIN (low.y, item->path_m[i].y));
      high = lr_vec2 (MAX (high.x, item->path_m[i].x), MAX (high.y, item->path_m[i].y));
    }

  return lr_outline_box (lr_vec2_scale (lr_vec2_add (low, high), 0.5), high.x - low.x, high.y - low.y, 0.0);
}

/**
 * lr_floor_outline:
 * @study: a study
 * @view: scale and palette: least sizes on the device
 * @placed: an item
 * @outline: (out): around the drawn symbol [m]
 *
 * The footprint where the symbol keeps within it, else a box around the symbol.
 *
 * Returns: %FALSE, with nothing written, if the item is nowhere on the sheet
 */
gboolean
lr_floor_outline (const LrStudy  *study G_GNUC_UNUSED,
                  const LrView   *view,
                  const LrPlaced *placed,
                  LrOutline      *outline)
{
  double socket_m = MAX (0.075, 5.2 / view->scale);

  if (!isfinite (placed->at_m.x) || !isfinite (placed->at_m.y))
    return FALSE;

  switch (placed->item->kind)
    {
    case LR_ITEM_LIGHT:
      *outline = light_outline (placed);
      return TRUE;
    case LR_ITEM_MICROPHONE:
      *outline = microphone_outline (view, placed);
      return TRUE;
    case LR_ITEM_PANEL:
      *outline = panel_outline (placed);
      return TRUE;
    case LR_ITEM_DOOR:
      *outline = door_outline (placed);
      return TRUE;
    case LR_ITEM_WINDOW:
      *outline = own_box (placed, -LR_WALL_M, placed->item->window.blind == LR_BLIND_NONE ? 0.0 : 0.085,
                          0.5 * placed->item->window.width_m);
      return TRUE;
    case LR_ITEM_SOCKET:
      *outline = own_box (placed, 0.0, 1.85 * socket_m, socket_m);
      return TRUE;
    case LR_ITEM_CIRCUIT:
      *outline = own_box (placed, 0.0, 0.10, 0.17);
      return TRUE;
    case LR_ITEM_NOISE:
      *outline = noise_outline (view, placed);
      return TRUE;
    case LR_ITEM_HOUSE_LIGHT:
      *outline = lr_outline_disc (placed->at_m, MAX (0.16, 6.0 * view->theme->unit_px / view->scale));
      return TRUE;
    case LR_ITEM_LEAD:
      if (placed->item->n_path < 2)
        return FALSE;
      *outline = lead_outline (placed->item);
      return TRUE;
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_FURNITURE:
      *outline = placed->footprint;
      return TRUE;
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return FALSE;
    }
}
