/* modifiers.h - what is usually put in front of a lamp
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

typedef struct
{
  const char *title;     /* for people, not yet translated: give it to gettext */
  double      pass;      /* share of the light that it lets through; 0: all */
  double      beam_rad;  /* past it; 0: the lamp's own */
  int         shape;     /* LrLightShape of what emits then, if it has a size */
  double      width_m, height_m; /* 0: as before */
} LrModifier;

const LrModifier *lr_modifiers (gsize *n); /* the first is none */

/* Sets all that a modifier changes; none gives the lamp the face that it has in the kit */
LrPlan *lr_plan_set_modifier (const LrPlan *plan, const char *light, const LrModifier *modifier, GError **error);
