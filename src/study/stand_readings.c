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
#define USUAL_MIC_STAND_KG 2.5
#define USUAL_ARM_KG 0.8
#define USUAL_CAPSULE_KG 0.35
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
told_or (double  told_kg,
         double  usual_kg,
         double *taken_kg)
{
  if (told_kg > 0.0)
    return told_kg;

  if (taken_kg != NULL)
    *taken_kg = usual_kg;
  return usual_kg;
}

static void
weigh_boom (LrStandReading *reading)
{
  const LrMicrophone *mic = &reading->placed->item->microphone;
  double arm_kg = told_or (mic->arm_mass_kg, USUAL_ARM_KG, &reading->usual_arm_kg);
  double capsule_kg = told_or (mic->capsule_mass_kg, USUAL_CAPSULE_KG, &reading->usual_capsule_kg);
  LrBoomHang hang;

  lr_boom_hang (reading->placed->at_m, mic, &hang);
  reading->is_boom = TRUE;
  reading->radius_m = mic->stand_radius_m;
  reading->reach_m = hang.reach_m;
  reading->head_m = hang.post_m;
  reading->bag_kg = mic->bag_kg;
  weigh (reading, told_or (mic->stand_mass_kg, USUAL_BOOM_STAND_KG, &reading->usual_kg), 0.0);
  weigh (reading, arm_kg, 0.5 * (hang.reach_m - mic->short_end_m));
  weigh (reading, capsule_kg, hang.reach_m);
  weigh (reading, mic->counterweight_kg, -mic->short_end_m);
  if (mic->short_end_m > 0.0)
    reading->balance_kg = fmax (0.0, (0.5 * arm_kg * (hang.reach_m - mic->short_end_m) + capsule_kg * hang.reach_m) / mic->short_end_m);
}

/* A straight stand, from which a capsule may stick out */
static void
weigh_mic_stand (LrStandReading *reading)
{
  const LrMicrophone *mic = &reading->placed->item->microphone;
  double reach_m = lr_vec2_distance (reading->placed->at_m, lr_vec2 (mic->tip_x_m, mic->tip_y_m));

  reading->radius_m = mic->stand_radius_m;
  reading->head_m = mic->tip_height_m;
  reading->bag_kg = mic->bag_kg;
  weigh (reading, told_or (mic->stand_mass_kg, USUAL_MIC_STAND_KG, &reading->usual_kg), 0.0);
  weigh (reading, told_or (mic->capsule_mass_kg, USUAL_CAPSULE_KG, &reading->usual_capsule_kg), reach_m);
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
      weigh (reading, told_or (item->light.stand_mass_kg, USUAL_STAND_KG, &reading->usual_kg), 0.0);
      weigh (reading, item->light.mass_kg, 0.0);
    }
  else if (item->kind == LR_ITEM_PANEL && item->panel.form != LR_PANEL_BACKDROP)
    {
      reading->radius_m = item->panel.stand_radius_m;
      reading->head_m = item->panel.bottom_m + 0.5 * item->panel.height_m;
      reading->bag_kg = item->panel.bag_kg;
      weigh (reading, told_or (item->panel.stand_mass_kg, USUAL_STAND_KG, &reading->usual_kg), 0.0);
      weigh (reading, told_or (item->panel.mass_kg, USUAL_PANEL_KG, NULL), 0.0);
    }
  else if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_BOOM)
    weigh_boom (reading);
  else if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_STAND)
    weigh_mic_stand (reading);

  return reading->radius_m > 0.0 && reading->head_m > 0.0;
}

/**
 * lr_study_stand:
 * @study: a study
 * @placed: a thing of its set-up
 * @reading: (out): what keeps its stand upright
 *
 * All are asked for the push at the head, a boom for what holds over what tips as well.
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
                        limits[LR_LIMIT_STAND_PUSH], stand.head_m, &bag_kg))
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
