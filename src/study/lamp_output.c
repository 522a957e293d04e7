/* lamp_output.c - what leaves a lamp, from whichever figure of its output is given, through what sits in front of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A photometric file counts before a measured level, that before an intensity, and that before a flux: what was measured is surer than
 * what a sheet says. All are of the lamp by itself. A modifier lets a share through. If the beam past it is wider than the lamp's, it
 * spreads the flux that passes; if it is narrower, it cuts the beam, and the axis keeps its share: a grid adds no light. Its own size is
 * that of the face that emits.
 */

#include "lamp_output.h"

#define MOST_BEAM_RAD (178.0 * LR_DEG)

/* One angle makes a power of the cosine; none, or one that takes in everything, a Lambertian face */
static LrLobe
lobe_of (double beam_rad,
         double field_rad)
{
  LrLobe lobe = { .power = 1.0 };

  if (beam_rad > 0.0 && !lr_lobe_init (&lobe, MIN (beam_rad, MOST_BEAM_RAD), MIN (field_rad, LR_PI)))
    lr_lobe_init (&lobe, MIN (beam_rad, MOST_BEAM_RAD), 0.0);
  return lobe;
}

static LrLobe
bare_lobe (const LrLight *light)
{
  return lobe_of (light->beam_rad, light->field_rad);
}

static void
take_size (const LrLight *light,
           LrEmitter     *emitter)
{
  gboolean is_point = light->form == LR_LIGHT_POINT || !(light->width_m > 0.0 && light->height_m > 0.0);

  emitter->shape = is_point ? LR_EMITTER_POINT : light->shape == LR_SHAPE_ROUND ? LR_EMITTER_DISC : LR_EMITTER_RECTANGLE;
  emitter->width_m = light->width_m;
  emitter->height_m = light->shape == LR_SHAPE_ROUND ? light->width_m : light->height_m;
}

/* By the true size of the face: near a wide one the distance law would make too little of a level */
static double
candela_of_level (const LrLight *light)
{
  LrEmitter one = { .axis = { 1.0, 0.0, 0.0 }, .right = { 0.0, -1.0, 0.0 }, .up = { 0.0, 0.0, 1.0 }, .candela = 1.0, .lobe = bare_lobe (light) };
  double lux;

  take_size (light, &one);
  return lr_emitter_axis_lx (&one, light->output_at_m, &lux) && lux > 0.0 ? light->output_lx / lux : 0.0;
}

static double
bare_candela (const LrLight *light,
              const LrLobe  *lobe)
{
  double candela = 0.0;

  if (light->output_lx > 0.0 && light->output_at_m > 0.0)
    return candela_of_level (light);
  if (light->output_cd > 0.0)
    return light->output_cd;

  lr_candela_of_lumen (light->output_lm, lobe, &candela);
  return candela;
}

/* A file spreads its own way, and round faces have none in it: a square of equal area stands for one */
static void
take_file (const LrItem *light,
           double        pass,
           LrEmitter    *emitter)
{
  if (emitter->shape == LR_EMITTER_DISC)
    {
      emitter->shape = LR_EMITTER_RECTANGLE;
      emitter->width_m = emitter->height_m = emitter->width_m * sqrt (0.25 * LR_PI);
    }
  lr_emitter_take_table (emitter, &light->lamp_file->photometry, pass);
}

/* Intensity on the axis and flux of the lamp by itself */
static double
bare_output (const LrItem *light,
             double       *flux_lm)
{
  LrLobe lobe = bare_lobe (&light->light);
  double candela;

  if (light->lamp_file != NULL)
    {
      *flux_lm = light->lamp_file->flux_lm;
      return lr_photometry_candela (&light->lamp_file->photometry, 0.0, 0.0);
    }

  candela = bare_candela (&light->light, &lobe);
  *flux_lm = candela * lr_lobe_sr (&lobe);
  return candela;
}

/**
 * lr_lamp_emit:
 * @light: a light of the plan
 * @emitter: (inout): gets shape, size, beam and intensity
 *
 * Source: photometric distance law and flux of a beam, see light.h; the rest as told at the head of this file.
 */
void
lr_lamp_emit (const LrItem *light,
              LrEmitter    *emitter)
{
  const LrLight *l = &light->light;
  double pass = l->modifier_pass > 0.0 ? l->modifier_pass : 1.0, flux_lm, candela = bare_output (light, &flux_lm);

  take_size (l, emitter);
  if (l->modifier_beam_rad > 0.0)
    {
      emitter->lobe = lobe_of (l->modifier_beam_rad, 0.0);
      /* a narrower beam cuts, a wider one spreads */
      emitter->candela = pass * (lr_item_bare_beam_rad (light) > l->modifier_beam_rad ? candela : flux_lm / lr_lobe_sr (&emitter->lobe));
      return;
    }

  emitter->lobe = bare_lobe (l);
  emitter->candela = pass * candela;
  if (light->lamp_file != NULL)
    take_file (light, pass, emitter);
}

/**
 * lr_lamp_shines:
 * @light: a light of the plan
 *
 * By a file something may shine aside and nothing ahead.
 *
 * Returns: whether it has an output
 */
gboolean
lr_lamp_shines (const LrItem *light)
{
  double flux_lm;

  return bare_output (light, &flux_lm) > 0.0 || flux_lm > 0.0;
}
