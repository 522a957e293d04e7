/* modifiers.c - what is usually put in front of a lamp
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What they pass and how they spread it: common practice, no source. Sheets are known by the stops that they cost, and a makers' sheet
 * or a meter on the day tells better: half a stop passes 71 %, one 50 %, one and a half 35 %, two 25 %. What scatters well is Lambertian,
 * which is a beam of 120 degrees.
 */

#include "config.h"

#include "modifiers.h"

#include "plan_edit.h"

#include <glib/gi18n-lib.h>

static const LrModifier modifiers[] = {
  { .title = N_("none") },
  { .title = N_("diffusion, half a stop"), .pass = 0.71, .beam_rad = 90.0 * LR_DEG },
  { .title = N_("diffusion, one stop"), .pass = 0.5, .beam_rad = 120.0 * LR_DEG },
  { .title = N_("diffusion, two stops"), .pass = 0.25, .beam_rad = 120.0 * LR_DEG },
  { .title = N_("softbox, 60 × 60 cm"), .pass = 0.35, .beam_rad = 120.0 * LR_DEG, .width_m = 0.6, .height_m = 0.6 },
  { .title = N_("softbox, 90 × 90 cm"), .pass = 0.35, .beam_rad = 120.0 * LR_DEG, .width_m = 0.9, .height_m = 0.9 },
  { .title = N_("softbox, round, 90 cm"), .pass = 0.35, .beam_rad = 120.0 * LR_DEG, .shape = LR_SHAPE_ROUND, .width_m = 0.9, .height_m = 0.9 },
  { .title = N_("grid, 60°"), .pass = 0.7, .beam_rad = 60.0 * LR_DEG },
  { .title = N_("grid, 40°"), .pass = 0.6, .beam_rad = 40.0 * LR_DEG },
  { .title = N_("grid, 20°"), .pass = 0.5, .beam_rad = 20.0 * LR_DEG },
};

/**
 * lr_modifiers:
 * @n: (out): how many
 *
 * Returns: (transfer none): the usual ones
 */
const LrModifier *
lr_modifiers (gsize *n)
{
  *n = G_N_ELEMENTS (modifiers);
  return modifiers;
}

/* Form, shape, width and height of the face */
static void
get_face (const LrPlan     *plan,
          const LrItem     *light,
          const LrModifier *modifier,
          double            face[4])
{
  const LrKitEntry *entry = lr_plan_find_kit (plan, light->kit);
  const LrLight *own = entry != NULL && entry->item->kind == LR_ITEM_LIGHT && modifier == modifiers ? &entry->item->light : &light->light;

  face[0] = modifier->width_m > 0.0 ? LR_LIGHT_WIDE : own->form;
  face[1] = modifier->width_m > 0.0 ? modifier->shape : own->shape;
  face[2] = modifier->width_m > 0.0 ? modifier->width_m : own->width_m;
  face[3] = modifier->width_m > 0.0 ? modifier->height_m : own->height_m;
}

/**
 * lr_plan_set_modifier:
 * @plan: a plan
 * @light: id of a light in the set-up shown
 * @modifier: of the table
 * @error: return location
 *
 * One with a size makes the lamp a wide emitter of that size.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_modifier (const LrPlan      *plan,
                      const char        *light,
                      const LrModifier  *modifier,
                      GError           **error)
{
  const LrItem *item = lr_plan_find (plan, light);
  g_autoptr (LrPlan) changed = NULL;
  double face[4] = { 0.0, 0.0, 0.0, 0.0 };

  if (item != NULL && item->kind == LR_ITEM_LIGHT)
    get_face (plan, item, modifier, face);
  {
    const LrChange changes[] = {
      { light, "modifier-pass-pct", modifier->pass }, { light, "modifier-beam-deg", modifier->beam_rad },
      { light, "form", face[0] }, { light, "shape", face[1] }, { light, "width-mm", face[2] }, { light, "height-mm", face[3] },
    };

    changed = lr_plan_change (plan, changes, G_N_ELEMENTS (changes), error);
  }
  if (changed == NULL)
    return NULL;

  return lr_plan_change_text (changed, light, "modifier", modifier == modifiers ? "" : _(modifier->title), error);
}
