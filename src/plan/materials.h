/* materials.h - what surfaces and things take up of sound, from the table in data
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Titles are for people, not yet translated: give them to gettext. Sources say where a row comes from.
 */

#pragma once

#include "plan.h"

typedef struct
{
  const char *id, *title, *source;
  gboolean    is_of_walls, is_of_floors, is_of_ceilings; /* what such a surface may usually be */
  double      absorption[LR_N_BANDS]; /* of a surface a share, of a thing square metres; octaves 125 Hz to 4 kHz */
} LrMaterial;

const LrMaterial *lr_materials         (gsize *n);       /* of surfaces */
const LrMaterial *lr_material_find     (const char *id); /* of surfaces and things; (nullable) */
/* @surface: "walls", "floor" or "ceiling": whether it is usual there */
gboolean          lr_material_suits    (const LrMaterial *material, const char *surface);
/* By its title as it is shown, in any case, or by how the title of just one begins; (nullable) */
const LrMaterial *lr_material_named    (const char *text);
/* Whose figures a surface has; (nullable): its own */
const LrMaterial *lr_material_of       (const LrSurface *surface);

/* @surface: "walls", "floor" or "ceiling": takes its name and all of its absorption from the material; (transfer full) (nullable) */
LrPlan           *lr_plan_set_material (const LrPlan *plan, const char *surface, const LrMaterial *material, GError **error);

/* What takes up sound without being a surface of the room */
typedef enum { LR_THING_WINDOW, LR_THING_DOOR, LR_THING_WOODEN_CHAIR, LR_THING_SOFT_CHAIR, LR_THING_SOFT_SEATS, LR_THING_PERSON,
               LR_THING_CLOTH, LR_N_THINGS } LrSoundThing;

const LrMaterial *lr_material_of_thing (LrSoundThing thing);
