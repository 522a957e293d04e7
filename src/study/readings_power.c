/* readings_power.c - leads, circuits and stands, in the readings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "readings_private.h"

#include "power.h"
#include "power_readings.h"

static void
add_lead (JsonBuilder   *builder,
          const LrStudy *study,
          const LrItem  *item)
{
  LrLeadPower lead;
  double bears_a = NAN;

  if (!lr_study_lead (study, item, &lead))
    return;

  lr_power_bears_a (item->lead.core_mm2, &bears_a);
  lr_readings_add_number (builder, "path-m", lead.path_m);
  lr_readings_add_number (builder, "needed-m", lead.needed_m);
  lr_readings_add_number (builder, "plug-off-m", lead.plug_off_m);
  lr_readings_add_number (builder, "load-off-m", lead.load_off_m);
  lr_readings_add_text (builder, "circuit", lead.circuit != NULL ? lead.circuit->id : NULL);
  lr_readings_add_number (builder, "load-w", lead.power_w);
  lr_readings_add_number (builder, "current-a", lead.current_a);
  lr_readings_add_number (builder, "bears-a", bears_a);
  lr_readings_add_number (builder, "drop-v", lead.drop_v);
  lr_readings_add_number (builder, "drop-share", lead.drop_share);
}

static void
add_circuit (JsonBuilder   *builder,
             const LrStudy *study,
             const LrItem  *item)
{
  LrCircuitReading circuit;

  if (!lr_study_circuit (study, item, &circuit))
    return;

  lr_readings_add_number (builder, "rated-w", circuit.rated_w);
  lr_readings_add_number (builder, "rated-a", circuit.rated_a);
  lr_readings_add_number (builder, "known-load-w", circuit.known_w > 0.0 ? circuit.known_w : (double) NAN);
  lr_readings_add_number (builder, "full-w", circuit.full_w);
  lr_readings_add_number (builder, "dimmed-w", circuit.dimmed_w);
  lr_readings_add_number (builder, "full-a", circuit.full_a);
  lr_readings_add_number (builder, "dimmed-a", circuit.dimmed_a);
  lr_readings_add_number (builder, "load-share", circuit.load_share);
  lr_readings_add_number (builder, "allowed-share", circuit.allowed_share);
  lr_readings_add_count (builder, "sockets-n", circuit.n_sockets);
  lr_readings_add_count (builder, "leads-n", circuit.n_leads);
}

static void
add_stand (JsonBuilder    *builder,
           const LrStudy  *study,
           const LrPlaced *placed)
{
  LrStandReading stand;

  if (!lr_study_stand (study, placed, &stand))
    return;

  json_builder_set_member_name (builder, "stand");
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "gap-ratio", stand.gap.factor);
  lr_readings_add_number (builder, "leg-ratio", stand.leg.factor);
  lr_readings_add_number (builder, "push-n", stand.push_n);
  lr_readings_add_number (builder, "bag-kg", stand.bag_kg);
  lr_readings_add_number (builder, "wanted-bag-kg", stand.wanted_bag_kg);
  lr_readings_add_number (builder, "taken-as-kg", stand.usual_kg > 0.0 ? stand.usual_kg : (double) NAN);
  lr_readings_add_number (builder, "balance-kg", stand.balance_kg);
  json_builder_end_object (builder);
}

/**
 * lr_readings_add_power:
 * @builder: within the object of an item
 * @study: a study
 * @placed: the item
 *
 * Adds what is read of a lead or a circuit, and "stand" of what stands on three legs.
 */
void
lr_readings_add_power (JsonBuilder    *builder,
                       const LrStudy  *study,
                       const LrPlaced *placed)
{
  add_lead (builder, study, placed->item);
  add_circuit (builder, study, placed->item);
  add_stand (builder, study, placed);
}
