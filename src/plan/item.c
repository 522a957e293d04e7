/* item.c - making, copying and comparing items
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "item.h"
#include "plan_json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The usual sizes of what a set-up is made of, beside the fallbacks of its kind: common practice, no source */
typedef struct
{
  LrItemKind  kind;
  int         form;
  const char *key;
  double      value;
} UsualSize;

static const UsualSize usual_sizes[] = {
  { LR_ITEM_PERSON, LR_ROLE_OTHER, "posture", LR_POSTURE_STANDING },

  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "job", LR_JOB_BACK },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "width-mm", 0.3 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "height-mm", 0.3 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "power-w", 60.0 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "output-lm", 5000.0 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "lamp-height-mm", 2.2 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "stand-radius-mm", 0.42 },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, "mass-kg", 1.5 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "job", LR_JOB_WALL },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "width-mm", 0.1 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "height-mm", 0.1 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "power-w", 80.0 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "output-lm", 6000.0 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "beam-deg", 44.0 * LR_DEG },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "stand-radius-mm", 0.42 },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, "mass-kg", 2.0 },

  { LR_ITEM_MICROPHONE, LR_MIC_BOOM, "tip-x-mm", 1.2 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "omni-share-pct", 1.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "stand-radius-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "arm-mass-kg", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "capsule-mass-kg", 0.01 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "short-end-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, "tip-height-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, "omni-share-pct", 0.5 },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, "tip-height-mm", 1.1 },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, "stand-radius-mm", 0.3 },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, "short-end-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "omni-share-pct", 0.366 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "tube-mm", 0.15 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "stand-radius-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "arm-mass-kg", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "capsule-mass-kg", 0.15 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "short-end-mm", 0.0 },
  { LR_ITEM_MICROPHONE, LR_MIC_CAMERA, "tip-height-mm", 0.0 },

  { LR_ITEM_PANEL, LR_PANEL_FLAG, "width-mm", 0.6 },
  { LR_ITEM_PANEL, LR_PANEL_FLAG, "height-mm", 0.9 },
  { LR_ITEM_PANEL, LR_PANEL_FLAG, "bottom-mm", 1.0 },
  { LR_ITEM_PANEL, LR_PANEL_FLAG, "reflectance-pct", 0.03 },
  { LR_ITEM_PANEL, LR_PANEL_BACKDROP, "width-mm", 2.7 },
  { LR_ITEM_PANEL, LR_PANEL_BACKDROP, "height-mm", 2.2 },
  { LR_ITEM_PANEL, LR_PANEL_BACKDROP, "bottom-mm", 0.0 },
  { LR_ITEM_PANEL, LR_PANEL_BACKDROP, "reflectance-pct", 0.2 },
  { LR_ITEM_PANEL, LR_PANEL_BACKDROP, "stand-radius-mm", 0.35 },

  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "length-mm", 0.5 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "width-mm", 0.46 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "height-mm", 0.85 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, "length-mm", 0.9 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, "width-mm", 1.8 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, "height-mm", 0.8 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, "length-mm", 0.4 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, "width-mm", 0.8 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, "height-mm", 1.8 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, "length-mm", 0.85 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, "width-mm", 1.2 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, "height-mm", 0.9 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, "length-mm", 0.1 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, "width-mm", 1.2 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, "height-mm", 0.6 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, "is-fixed", 1.0 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, "length-mm", 0.4 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, "width-mm", 0.4 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, "height-mm", 0.4 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, "length-mm", 0.4 },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, "width-mm", 0.4 },
};

static const LrPropTable *
own_table (const LrItem *item)
{
  return &lr_item_kind_info (item->kind)->table;
}

static const LrPropTable *
common_table (const LrItem *item)
{
  return lr_item_common_table (lr_item_kind_info (item->kind)->place);
}

/* The row that tells a kind's forms apart: "form", a person's "role", or NULL */
static const LrProp *
form_prop (LrItemKind kind)
{
  const LrPropTable *table = &lr_item_kind_info (kind)->table;
  const LrProp *form = lr_prop_table_find (table, "form");

  return form != NULL ? form : lr_prop_table_find (table, "role");
}

/**
 * lr_item_new:
 * @kind: a kind
 * @id: its id
 *
 * Returns: (transfer full): an item with every fallback, which may be written until it is in a plan
 */
LrItem *
lr_item_new (LrItemKind  kind,
             const char *id)
{
  LrItem *item = g_atomic_rc_box_new0 (LrItem);

  item->kind = kind;
  lr_prop_table_init (common_table (item), item);
  lr_prop_table_init (own_table (item), item);
  lr_prop_put_text (lr_item_find_prop (kind, "id"), item, id);

  return item;
}

/**
 * lr_item_new_usual:
 * @kind: a kind
 * @form: a value of the kind's form (an #LrFurnitureForm, #LrLightForm, ...; a person's #LrRole); 0 for other kinds
 * @id: its id
 *
 * Returns: (transfer full): an item of that form in its usual size, which may be written until it is in a plan
 */
LrItem *
lr_item_new_usual (LrItemKind  kind,
                   int         form,
                   const char *id)
{
  LrItem *item = lr_item_new (kind, id);
  const LrProp *prop = form_prop (kind);

  if (prop == NULL)
    return item;

  lr_prop_put_number (prop, item, form);
  for (guint i = 0; i < G_N_ELEMENTS (usual_sizes); i++)
    if (usual_sizes[i].kind == kind && usual_sizes[i].form == form)
      lr_prop_put_number (lr_item_find_prop (kind, usual_sizes[i].key), item, usual_sizes[i].value);

  return item;
}

/**
 * lr_item_copy:
 * @item: an item
 *
 * Returns: (transfer full): a fresh one that may be written
 */
LrItem *
lr_item_copy (const LrItem *item)
{
  LrItem *copy = g_atomic_rc_box_dup (sizeof *item, (gpointer) item);

  lr_prop_table_copy (common_table (item), copy, item);
  lr_prop_table_copy (own_table (item), copy, item);
  copy->path_m = g_memdup2 (item->path_m, item->n_path * sizeof *item->path_m);
  copy->lamp_file = item->lamp_file != NULL ? lr_lamp_file_ref (item->lamp_file) : NULL;
  copy->unknown = lr_json_dup_object (item->unknown);

  return copy;
}

/**
 * lr_item_ref:
 * @item: an item
 *
 * Returns: (transfer full): @item
 */
LrItem *
lr_item_ref (const LrItem *item)
{
  return g_atomic_rc_box_acquire ((gpointer) item);
}

static void
clear (gpointer data)
{
  LrItem *item = data;

  lr_prop_table_clear (own_table (item), item);
  lr_prop_table_clear (common_table (item), item);
  g_free (item->path_m);
  g_clear_pointer (&item->lamp_file, lr_lamp_file_unref);
  g_clear_pointer (&item->unknown, json_object_unref);
}

/**
 * lr_item_unref:
 * @item: (transfer full): an item
 */
void
lr_item_unref (LrItem *item)
{
  g_atomic_rc_box_release_full (item, clear);
}

/**
 * lr_item_equal:
 * @a: an item
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_item_equal (const LrItem *a,
               const LrItem *b)
{
  if (a == b)
    return TRUE;
  if (a->kind != b->kind || a->n_path != b->n_path)
    return FALSE;
  for (gsize i = 0; i < a->n_path; i++)
    if (a->path_m[i].x != b->path_m[i].x || a->path_m[i].y != b->path_m[i].y)
      return FALSE;

  return lr_prop_table_equal (common_table (a), a, b) && lr_prop_table_equal (own_table (a), a, b)
         && lr_lamp_file_equal (a->lamp_file, b->lamp_file) && lr_json_objects_equal (a->unknown, b->unknown);
}

/**
 * lr_item_beam_rad:
 * @light: a light
 *
 * Returns: the full angle between the directions of half its intensity, in the level plane through its axis [rad], past its modifier
 */
double
lr_item_beam_rad (const LrItem *light)
{
  return light->light.modifier_beam_rad > 0.0 ? light->light.modifier_beam_rad : lr_item_bare_beam_rad (light);
}

/**
 * lr_item_bare_beam_rad:
 * @light: a light
 *
 * Returns: the full angle between the directions of half its intensity without a modifier [rad]: what its photometric file says, else
 * what the plan does
 */
double
lr_item_bare_beam_rad (const LrItem *light)
{
  const LrLampFile *file = light->lamp_file;
  double beam_rad = light->light.beam_rad;

  if (file != NULL)
    lr_photometry_spread_rad (&file->photometry, 0.5, lr_photometry_turn_deg (&file->photometry, light->light.height_m > light->light.width_m),
                              &beam_rad);
  return beam_rad;
}

/**
 * lr_item_tag_stem:
 * @item: an item
 *
 * Returns: (transfer none) (nullable): "A" for cameras (A, B, C), else a letter that a number follows; %NULL: no tags
 */
const char *
lr_item_tag_stem (const LrItem *item)
{
  static const char *const panel_stems[] = {
    [LR_PANEL_REFLECTOR] = "R", [LR_PANEL_FLAG] = "F", [LR_PANEL_BACKDROP] = "D",
  };

  if (item->kind == LR_ITEM_PANEL)
    return panel_stems[item->panel.form];

  return lr_item_kind_info (item->kind)->tag_stem;
}

/**
 * lr_item_form_label:
 * @item: an item
 *
 * Returns: (transfer none): what it is, for people, translated: "Chair", "Interviewer", or its kind's title
 */
const char *
lr_item_form_label (const LrItem *item)
{
  const LrProp *prop = form_prop (item->kind);

  if (prop == NULL)
    return _(lr_item_kind_info (item->kind)->title);

  return _(prop->choices[(int) lr_prop_get_number (prop, item)].label);
}
