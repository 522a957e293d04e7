/* supply.h - what goes along and is not placed: supports, bags, batteries, cards
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Known by its form, its size and how many there are. What a plan needs of a form is counted against it. Immutable once it is in a plan.
 */

#pragma once

#include <json-glib/json-glib.h>

#include "prop.h"

#define LR_MAX_SUPPLIES 500

typedef enum
{
  LR_SUPPLY_TRIPOD,
  LR_SUPPLY_STAND,
  LR_SUPPLY_BOOM_STAND,
  LR_SUPPLY_CLAMP,
  LR_SUPPLY_SANDBAG,    /* size in kilograms */
  LR_SUPPLY_BATTERY,    /* in watt-hours */
  LR_SUPPLY_CELLS,
  LR_SUPPLY_CARD,       /* in 10^9 bytes */
  LR_SUPPLY_SOUND_LEAD, /* in metres */
  LR_SUPPLY_MULTIWAY,
  LR_SUPPLY_FLOOR_TAPE, /* in metres: holds leads down */
  LR_SUPPLY_MARK_TAPE,  /* in metres: marks places */
  LR_SUPPLY_OTHER,
  LR_N_SUPPLY_FORMS
} LrSupplyForm;

typedef struct
{
  int    form;          /* LrSupplyForm */
  char  *title, *note;
  int    count;
  double size;          /* of one, in its form's unit; 0: not told */
  JsonObject *unknown;
} LrSupply;

const LrPropTable *lr_supply_table (void);
const char *lr_supply_form_title (LrSupplyForm form); /* translated: "Sandbag" */
const char *lr_supply_unit       (LrSupplyForm form); /* of its size: "kg"; (nullable): it has none */

/* A fresh one may be written until it is in a plan */
LrSupply  *lr_supply_new   (LrSupplyForm form); /* one, with its form's title */
LrSupply  *lr_supply_copy  (const LrSupply *supply);
void       lr_supply_unref (LrSupply *supply);
gboolean   lr_supply_equal (const LrSupply *a, const LrSupply *b);

GPtrArray *lr_supplies_new   (void);
GPtrArray *lr_supplies_copy  (GPtrArray *supplies); /* (transfer full): fresh copies */
gboolean   lr_supplies_equal (GPtrArray *a, GPtrArray *b);
