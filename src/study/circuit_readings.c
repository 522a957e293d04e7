/* circuit_readings.c - what hangs on each circuit and runs through each lead
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A lamp as dimmed takes its dimmer's share of its power: so do lamps of light-emitting diodes, nearly. What a camera takes is
 * not dimmed. Currents are added as if in phase.
 */

#include "power_readings.h"

#include "power.h"

/* Least power factors of lamps up to so many watts: Regulation (EU) 2019/2020, annex II, from memory. What is marked on one goes before it */
static const struct { double up_to_w, factor; } usual_factors[] = { { 10.0, 0.4 }, { 25.0, 0.5 }, { HUGE_VAL, 0.9 } };

/**
 * lr_study_power_w:
 * @item: an item
 * @is_dimmed: as dimmed in the plan, not at full
 *
 * Returns: what it takes from the mains [W]
 */
double
lr_study_power_w (const LrItem *item,
                  gboolean      is_dimmed)
{
  if (item->kind == LR_ITEM_LIGHT)
    return item->light.power_w * (is_dimmed ? item->light.dim : 1.0);

  return item->kind == LR_ITEM_CAMERA ? item->camera.draw_w : 0.0;
}

/**
 * lr_study_power_factor:
 * @item: an item
 *
 * Returns: its power factor, as told or the usual one
 */
double
lr_study_power_factor (const LrItem *item)
{
  double power_w = lr_study_power_w (item, FALSE);
  guint i = 0;

  if (item->kind == LR_ITEM_LIGHT && item->light.power_factor > 0.0)
    return item->light.power_factor;
  while (power_w > usual_factors[i].up_to_w)
    i++;
  return usual_factors[i].factor;
}

static const LrItem *
circuit_of (const LrStudy  *study,
            const LrPlaced *socket)
{
  const LrPlaced *circuit = socket != NULL ? lr_study_find_placed (study, socket->item->socket.circuit) : NULL;

  return circuit != NULL ? circuit->item : NULL;
}

static const LrPlaced *
socket_of (const LrStudy *study,
           const LrItem  *lead)
{
  return lr_study_find_placed (study, lead->lead.socket);
}

static void
add_lead (const LrStudy    *study,
          const LrItem     *lead,
          LrCircuitReading *reading)
{
  const LrPlaced *load = lr_study_find_placed (study, lead->lead.feeds);
  double full_a = 0.0, dimmed_a = 0.0;

  reading->n_leads++;
  if (load == NULL)
    return;

  reading->full_w += lr_study_power_w (load->item, FALSE);
  reading->dimmed_w += lr_study_power_w (load->item, TRUE);
  lr_power_current_a (lr_study_power_w (load->item, FALSE), reading->circuit->circuit.volts_v, lr_study_power_factor (load->item), &full_a);
  lr_power_current_a (lr_study_power_w (load->item, TRUE), reading->circuit->circuit.volts_v, lr_study_power_factor (load->item),
                      &dimmed_a);
  reading->full_a += full_a;
  reading->dimmed_a += dimmed_a;
}

/**
 * lr_study_circuit:
 * @study: a study
 * @circuit: a circuit of its set-up
 * @reading: (out): what hangs on it
 *
 * Returns: %FALSE, with @reading untouched, if @circuit is none
 */
gboolean
lr_study_circuit (const LrStudy    *study,
                  const LrItem     *circuit,
                  LrCircuitReading *reading)
{
  LrCircuitReading sum = { .circuit = circuit };
  const GPtrArray *items = study->setup->items;

  if (circuit == NULL || circuit->kind != LR_ITEM_CIRCUIT)
    return FALSE;

  sum.rated_a = circuit->circuit.amps_a;
  sum.rated_w = circuit->circuit.amps_a * circuit->circuit.volts_v;
  sum.is_full = study->setup->room->full_load_rule[0] != '\0';
  sum.allowed_share = sum.is_full ? 1.0 : study->plan->limits.value[LR_LIMIT_CIRCUIT_SHARE];
  sum.known_w = sum.full_w = sum.dimmed_w = circuit->circuit.known_load_w;
  lr_power_current_a (sum.known_w, circuit->circuit.volts_v, 1.0, &sum.full_a);
  sum.dimmed_a = sum.full_a;
  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_SOCKET)
        sum.n_sockets += g_strcmp0 (item->socket.circuit, circuit->id) == 0;
      else if (item->kind == LR_ITEM_LEAD && circuit_of (study, socket_of (study, item)) == circuit)
        add_lead (study, item, &sum);
    }

  sum.load_share = sum.full_a / sum.rated_a;
  *reading = sum;
  return TRUE;
}

/**
 * lr_study_untold_w:
 * @study: a study
 * @sockets: (nullable) (element-type LrPlaced): where the sockets are added
 * @full_w: (out): what is plugged into sockets whose circuit nobody has told, at full [W]
 *
 * Returns: %FALSE, with @full_w untouched, if nothing is
 */
gboolean
lr_study_untold_w (const LrStudy *study,
                   GPtrArray     *sockets,
                   double        *full_w)
{
  double sum_w = 0.0;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *socket = &g_array_index (study->placed, LrPlaced, i);
      double load_w = 0.0;

      if (socket->item->kind != LR_ITEM_SOCKET || circuit_of (study, socket) != NULL || !lr_study_socket_load_w (study, socket->item, &load_w)
          || !(load_w > 0.0))
        continue;
      sum_w += load_w;
      if (sockets != NULL)
        g_ptr_array_add (sockets, (gpointer) socket);
    }

  if (!(sum_w > 0.0))
    return FALSE;
  *full_w = sum_w;
  return TRUE;
}

/**
 * lr_study_leads_in:
 * @study: a study
 * @socket: id of a socket
 * @but: (nullable): a lead that is not counted
 *
 * Returns: how many leads are plugged into it
 */
guint
lr_study_leads_in (const LrStudy *study,
                   const char    *socket,
                   const LrItem  *but)
{
  const GPtrArray *items = study->setup->items;
  guint n = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      n += item->kind == LR_ITEM_LEAD && item != but && g_strcmp0 (item->lead.socket, socket) == 0;
    }

  return n;
}

/**
 * lr_study_lead_of:
 * @study: a study
 * @id: of an item
 *
 * Returns: (transfer none) (nullable): the first lead that feeds it
 */
const LrItem *
lr_study_lead_of (const LrStudy *study,
                  const char    *id)
{
  const GPtrArray *items = study->setup->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_LEAD && g_strcmp0 (item->lead.feeds, id) == 0)
        return item;
    }

  return NULL;
}

/**
 * lr_study_needed_m:
 * @study: a study
 * @socket: (nullable): what it is plugged into
 * @path_m: (array length=n): along the floor [m]
 * @n: how many points
 *
 * Returns: how long a lead must be: its path, the way down from the socket, and the plan's loop at the stand [m]
 */
double
lr_study_needed_m (const LrStudy  *study,
                   const LrPlaced *socket,
                   const LrVec2   *path_m,
                   gsize           n)
{
  double drop_m = socket != NULL ? socket->item->socket.height_m : 0.0;

  return lr_route_length_m (path_m, n) + drop_m + study->plan->limits.value[LR_LIMIT_LEAD_SLACK];
}

/* From a point to a thing's footprint, or to the thing */
static double
off_m (const LrPlaced *placed,
       LrVec2          at_m)
{
  double nearest_m = lr_vec2_distance (placed->at_m, at_m);

  if (!placed->has_footprint)
    return nearest_m;
  if (lr_outline_contains (&placed->footprint, at_m))
    return 0.0;
  if (placed->footprint.n == 0)
    return fmax (0.0, nearest_m - placed->footprint.radius_m);
  for (gsize i = 0; i < placed->footprint.n; i++)
    nearest_m = fmin (nearest_m, lr_segment_distance_m (placed->footprint.corner_m[i],
                                                        placed->footprint.corner_m[(i + 1) % placed->footprint.n], at_m, NULL));

  return nearest_m;
}

static void
read_drop (LrLeadPower *reading)
{
  double ohm_km = NAN;

  if (lr_power_current_a (reading->power_w, reading->circuit->circuit.volts_v, lr_study_power_factor (reading->load->item), &reading->current_a)
      && lr_power_resistance_ohm_km (reading->item->lead.core_mm2, &ohm_km)
      && lr_power_drop_v (reading->item->lead.length_m, reading->current_a, ohm_km, LR_POWER_WARM_C, &reading->drop_v))
    reading->drop_share = reading->drop_v / reading->circuit->circuit.volts_v;
}

/**
 * lr_study_lead:
 * @study: a study
 * @lead: a lead of its set-up
 * @reading: (out): its lengths and losses
 *
 * Returns: %FALSE, with @reading untouched, if @lead is none
 */
gboolean
lr_study_lead (const LrStudy *study,
               const LrItem  *lead,
               LrLeadPower   *reading)
{
  if (lead == NULL || lead->kind != LR_ITEM_LEAD)
    return FALSE;

  *reading = (LrLeadPower) {
    .item = lead, .load = lr_study_find_placed (study, lead->lead.feeds), .socket = socket_of (study, lead),
    .plug_off_m = NAN, .load_off_m = NAN, .power_w = NAN, .current_a = NAN, .drop_v = NAN, .drop_share = NAN,
  };
  reading->circuit = circuit_of (study, reading->socket);
  reading->path_m = lr_route_length_m (lead->path_m, lead->n_path);
  reading->needed_m = lr_study_needed_m (study, reading->socket, lead->path_m, lead->n_path);
  if (lead->n_path > 1 && reading->socket != NULL)
    reading->plug_off_m = lr_vec2_distance (lead->path_m[0], reading->socket->at_m);
  if (lead->n_path > 1 && reading->load != NULL)
    reading->load_off_m = off_m (reading->load, lead->path_m[lead->n_path - 1]);
  if (reading->load != NULL)
    reading->power_w = lr_study_power_w (reading->load->item, FALSE);
  if (reading->circuit != NULL && reading->load != NULL)
    read_drop (reading);
  return TRUE;
}
