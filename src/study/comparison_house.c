/* comparison_house.c - what a house gives: windows and blinds, walls, power, ways in and out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plan cannot say that a room has no window, door, socket or house light: where none is drawn, none was noted.
 */

#include "comparison_parts.h"

#include "power_readings.h"

static void
compare_windows (LrRoomFigures *room)
{
  const GPtrArray *items = room->setup->items;
  double bare_m2 = 0.0;
  guint n = 0;

  room->windows_m2 = 0.0;
  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      double area_m2;

      if (item->kind != LR_ITEM_WINDOW)
        continue;
      area_m2 = item->window.width_m * fmax (item->window.head_m - item->window.sill_m, 0.0);
      room->windows_m2 += area_m2;
      bare_m2 += item->window.blind == LR_BLIND_NONE ? area_m2 : 0.0;
      n++;
    }

  room->figure[LR_COMPARE_BARE_WINDOWS].known = LR_NOT_DRAWN;
  if (n == 0)
    return;
  lr_compare_set (room, LR_COMPARE_BARE_WINDOWS, bare_m2);
  if (room->windows_m2 > 0.0)
    room->dark_share = 1.0 - bare_m2 / room->windows_m2;
}

static void
compare_house_lights (LrRoomFigures *room)
{
  const GPtrArray *items = room->setup->items;
  double staying_lm = 0.0;
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind != LR_ITEM_HOUSE_LIGHT)
        continue;
      n++;
      staying_lm += item->house_light.is_on && !item->house_light.can_switch_off ? item->house_light.output_lm : 0.0;
    }

  room->figure[LR_COMPARE_HOUSE_LIGHTS].known = LR_NOT_DRAWN;
  if (n > 0)
    lr_compare_set (room, LR_COMPARE_HOUSE_LIGHTS, staying_lm);
}

static void
compare_power (LrRoomFigures *room)
{
  const GPtrArray *items = room->setup->items;
  guint n_circuits = 0, n_with_sockets = 0, n_outlets = 0;
  double power_w = 0.0;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      LrCircuitReading circuit;

      if (item->kind == LR_ITEM_SOCKET)
        {
          room->n_sockets++;
          n_outlets += (guint) item->socket.outlets;
        }
      if (!lr_study_circuit (room->study, item, &circuit))
        continue;
      n_circuits++;
      room->is_full_load = circuit.is_full;
      if (circuit.n_sockets == 0)
        continue;
      n_with_sockets++;
      power_w += fmax (circuit.allowed_share * circuit.rated_w - circuit.known_w, 0.0);
    }

  room->figure[LR_COMPARE_OUTLETS].known = LR_NOT_DRAWN;
  if (n_circuits > 0)
    lr_compare_set (room, LR_COMPARE_CIRCUITS, n_circuits);
  if (n_with_sockets > 0)
    lr_compare_set (room, LR_COMPARE_POWER, power_w);
  if (room->n_sockets > 0)
    lr_compare_set (room, LR_COMPARE_OUTLETS, n_outlets);
}

static void
compare_access (LrRoomFigures *room)
{
  const GPtrArray *items = room->setup->items;
  double widest_m = 0.0;
  guint n = 0, n_exits = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind != LR_ITEM_DOOR)
        continue;
      n++;
      n_exits += item->door.is_exit ? 1 : 0;
      widest_m = fmax (widest_m, item->door.width_m);
    }

  room->figure[LR_COMPARE_DOOR].known = room->figure[LR_COMPARE_EXITS].known = LR_NOT_DRAWN;
  if (n == 0)
    return;
  lr_compare_set (room, LR_COMPARE_DOOR, widest_m);
  lr_compare_set (room, LR_COMPARE_EXITS, n_exits);
}

/**
 * lr_compare_house:
 * @room: figures of a room that is drawn
 *
 * Fills those of windows, house lights, walls, power and access.
 */
void
lr_compare_house (LrRoomFigures *room)
{
  compare_windows (room);
  compare_house_lights (room);
  lr_compare_noted (room, LR_COMPARE_WALLS, room->setup->room->walls.reflectance, lr_prop_table_find (lr_surface_table (), "reflectance-pct"));
  compare_power (room);
  compare_access (room);
}
