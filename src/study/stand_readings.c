/* stand_readings.c - what keeps each stand upright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the legs are turned is not in a plan, so the arm is taken to hang over a gap between two. Masses that were not told are those of
 * usual gear: common practice, no source; weigh your own.
 */

#include "power_readings.h"

#include "boom.h"

#define USUAL_STAND_KG 3.0
#define USUAL_BOOM_STAND_KG 5.0
#define USUAL_PANEL_KG 1.5
#define LEAST_BAG_KG 2.0 /* no smaller one is sold: common practice, no source */
#define ROUNDING 1e-6

static void
weigh (LrStandReading *reading,
       double          mass_kg,
       double          offset_m)
{
  if (mass_kg > 0.0)
    reading->masses[reading->n_masses++] = (LrStandMass) { mass_kg, offset_m };
}

static double
told_or (double told_kg,
         double usual_kg)
{
  return told_kg > 0.0 ? told_kg : usual_kg;
}

/* The stand itself, of the mass told or of usual gear */
static void
weigh_stand (LrStandReading *reading,
             double          told_kg,
             double          usual_kg)
{
  reading->usual_kg = told_kg > 0.0 ? 0.0 : usual_kg;
  weigh (reading, told_or (told_kg, usual_kg), 0.0);
}

static void
weigh_boom (LrStandReading *reading)
{
  const LrMicrophone *mic = &reading->placed->item->microphone;
  LrBoomHang hang;

  lr_boom_hang (reading->placed->at_m, mic, &hang);
  reading->is_boom = TRUE;
  reading->radius_m = mic->stand_radius_m;
  reading->reach_m = hang.reach_m;
  reading->head_m = hang.post_m;
  reading->bag_kg = mic->bag_kg;
  weigh_stand (reading, mic->stand_mass_kg, USUAL_BOOM_STAND_KG);
  weigh (reading, mic->arm_mass_kg, 0.5 * (hang.reach_m - mic->short_end_m));
  weigh (reading, mic->capsule_mass_kg, hang.reach_m);
  weigh (reading, mic->counterweight_kg, -mic->short_end_m);
  if (mic->short_end_m > 0.0)
    reading->balance_kg = fmax (0.0, (0.5 * mic->arm_mass_kg * (hang.reach_m - mic->short_end_m) + mic->capsule_mass_kg * hang.reach_m)
                                     / mic->short_end_m);
}

/* FALSE: it stands on none that may tip */
static gboolean
weigh_all (LrStandReading *reading)
{
  const LrItem *item = reading->placed->item;

  if (item->kind == LR_ITEM_LIGHT)
    {
      reading->radius_m = item->light.stand_radius_m;
      reading->head_m = item->light.lamp_height_m;
      reading->bag_kg = item->light.bag_kg;
      weigh_stand (reading, item->light.stand_mass_kg, USUAL_STAND_KG);
      weigh (reading, item->light.mass_kg, 0.0);
    }
  else if (item->kind == LR_ITEM_PANEL && item->panel.form != LR_PANEL_BACKDROP)
    {
      reading->radius_m = item->panel.stand_radius_m;
      reading->head_m = item->panel.bottom_m + 0.5 * item->panel.height_m;
      reading->bag_kg = item->panel.bag_kg;
      weigh_stand (reading, item->panel.stand_mass_kg, USUAL_STAND_KG);
      weigh (reading, told_or (item->panel.mass_kg, USUAL_PANEL_KG), 0.0);
    }
  else if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_BOOM)
    weigh_boom (reading);

  return reading->radius_m > 0.0 && reading->head_m > 0.0;
}

/**
 * lr_study_stand:
 * @study: a study
 * @placed: a thing of its set-up
 * @reading: (out): what keeps its stand upright
 *
 * A straight stand is asked for the push at its head, a boom for what holds over what tips.
 *
 * Returns: %FALSE, with @reading untouched, if it has no stand of three legs
 */
gboolean
lr_study_stand (const LrStudy  *study,
                const LrPlaced *placed,
                LrStandReading *reading)
{
  const double *limits = study->plan->limits.value;
  LrStandReading stand = { .placed = placed, .balance_kg = NAN };
  double bag_kg = 0.0;

  if (!weigh_all (&stand))
    return FALSE;

  stand.edge_m = LR_STAND_GAP_SHARE * stand.radius_m;
  if (!lr_stand_bag_kg (stand.masses, stand.n_masses, stand.edge_m, stand.edge_m, stand.is_boom ? limits[LR_LIMIT_STAND_FACTOR] : 0.0,
                        stand.is_boom ? 0.0 : limits[LR_LIMIT_STAND_PUSH], stand.head_m, &bag_kg))
    return FALSE;
  stand.wanted_bag_kg = bag_kg;
  weigh (&stand, stand.bag_kg, 0.0);
  if (!lr_stand_stability (stand.masses, stand.n_masses, stand.edge_m, stand.edge_m, &stand.gap)
      || !lr_stand_stability (stand.masses, stand.n_masses, stand.radius_m, stand.edge_m, &stand.leg)
      || !lr_stand_push_n (stand.gap.moment_kg_m, stand.head_m, &stand.push_n))
    return FALSE;

  *reading = stand;
  return TRUE;
}

/**
 * lr_stand_whole_bag_kg:
 * @wanted_kg: what has to hang there [kg], > 0
 *
 * Returns: the sandbag that is brought for it, in whole kilograms
 */
double
lr_stand_whole_bag_kg (double wanted_kg)
{
  return fmax (LEAST_BAG_KG, ceil (wanted_kg - ROUNDING));
}
