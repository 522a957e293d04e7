/* details_formats.c - sensors, lenses, factors and modifiers by name, offered in the fields of a camera or a lamp; the fields of a lens
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A lens has no place on the sheet: what is on a camera is an entry of the kit, which its Details show and change with the
 * camera's own properties.
 */

#include "config.h"

#include "details_formats.h"

#include "modifiers.h"
#include "plan_edit.h"
#include "prop_text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SAME_FACTOR 1e-3

typedef enum { NAMES_NONE, NAMES_SENSORS, NAMES_LENSES, NAMES_FACTORS, NAMES_MODIFIERS } Names;

static Names
names_of (const LrProp *prop)
{
  gsize n;

  if (g_str_equal (prop->key, "sensor-width-mm") || g_str_equal (prop->key, "sensor-height-mm"))
    return NAMES_SENSORS;
  if (prop == lr_prop_table_find (lr_kit_entry_table (), "title"))
    return NAMES_LENSES;
  if (g_str_equal (prop->key, "modifier"))
    return NAMES_MODIFIERS;

  return lr_format_factors (prop->key, &n) != NULL ? NAMES_FACTORS : NAMES_NONE;
}

/**
 * lr_details_lens_keys:
 *
 * Returns: (transfer none): keys of what the Details of a camera show of its lens
 */
const char *const *
lr_details_lens_keys (void)
{
  static const char *const keys[] = {
    "=title", "converter", "nearest-focus-mm", "focal-min-mm", "focal-max-mm", "f-number-min", "f-number-max", NULL
  };

  return keys;
}

/**
 * lr_details_lens_prop:
 * @key: one of those keys, without "="
 *
 * Returns: (transfer none): its property
 */
const LrProp *
lr_details_lens_prop (const char *key)
{
  const LrProp *prop = lr_prop_table_find (&lr_item_kind_info (LR_ITEM_LENS)->table, key);

  return prop != NULL ? prop : lr_prop_table_find (lr_kit_entry_table (), key);
}

/**
 * lr_details_is_of_lens:
 * @prop: the property of a field
 *
 * Returns: whether it is of the lens on a camera, and not of what is in hand
 */
gboolean
lr_details_is_of_lens (const LrProp *prop)
{
  return prop == lr_details_lens_prop (prop->key);
}

/**
 * lr_details_lens_of:
 * @plan: a plan
 * @item: what is in hand
 * @prop: the property of a field
 *
 * Returns: (transfer none) (nullable): the lens that is on the camera in hand, if @prop is of a lens
 */
const LrKitEntry *
lr_details_lens_of (const LrPlan *plan,
                    const LrItem *item,
                    const LrProp *prop)
{
  const LrKitEntry *entry = item->kind == LR_ITEM_CAMERA ? lr_plan_find_kit (plan, item->camera.lens) : NULL;

  return entry != NULL && lr_details_is_of_lens (prop) ? entry : NULL;
}

/**
 * lr_details_lens_label:
 * @prop: a property of the lens on a camera
 *
 * Returns: (transfer none) (nullable): a translated label instead of the property's own
 */
const char *
lr_details_lens_label (const LrProp *prop)
{
  return g_str_equal (prop->key, "title") ? _("The lens is") : NULL;
}

static void
add_sensors (GPtrArray *titles)
{
  gsize n;
  const LrSensorFormat *formats = lr_sensor_formats (&n);

  for (gsize i = 0; i < n; i++)
    g_ptr_array_add (titles, g_strdup_printf ("%s, %.4g × %.4g mm", _(formats[i].title), 1e3 * formats[i].width_m,
                                              1e3 * formats[i].height_m));
}

static void
add_lenses (GPtrArray *titles)
{
  gsize n;
  const LrLensType *types = lr_lens_types (&n);

  for (gsize i = 0; i < n; i++)
    g_ptr_array_add (titles, g_strdup_printf ("%s, %s", _(types[i].title), _(types[i].note)));
}

static void
add_modifiers (GPtrArray *titles)
{
  gsize n;
  const LrModifier *modifiers = lr_modifiers (&n);

  for (gsize i = 0; i < n; i++)
    g_ptr_array_add (titles, g_strdup (_(modifiers[i].title)));
}

static void
add_factors (GPtrArray    *titles,
             const LrProp *prop)
{
  gsize n;
  const LrFactor *factors = lr_format_factors (prop->key, &n);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *value = lr_prop_text_format (prop, factors[i].value, LR_UNITS_METRIC);

      g_ptr_array_add (titles, g_strdup_printf ("%s, %s", value, _(factors[i].title)));
    }
}

/**
 * lr_details_offer_names:
 * @field: of any property
 * @chosen: called with the field for what is chosen
 *
 * Offers the names of the table in the field of a sensor's size, of a lens, of a factor or of a modifier.
 */
void
lr_details_offer_names (LrField        *field,
                        LrPresetChosen  chosen)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);
  Names names = names_of (prop);

  if (names == NAMES_NONE)
    return;
  if (names == NAMES_SENSORS)
    add_sensors (titles);
  else if (names == NAMES_LENSES)
    add_lenses (titles);
  else if (names == NAMES_MODIFIERS)
    add_modifiers (titles);
  else
    add_factors (titles, prop);
  g_ptr_array_add (titles, NULL);
  lr_field_presets_attach (GTK_ENTRY (gtk_widget_get_first_child (GTK_WIDGET (field))),
                           (const char *const *) titles->pdata, chosen, field);
}

static int
find_sensor (const LrCamera *camera)
{
  gsize n;
  const LrSensorFormat *formats = lr_sensor_formats (&n);
  const LrSensorFormat *format = lr_sensor_format_find (camera->sensor_width_m, camera->sensor_height_m);

  return format != NULL ? (int) (format - formats) : -1;
}

static int
find_lens (const LrKitEntry *entry)
{
  gsize n;
  const LrLensType *types = lr_lens_types (&n);

  for (gsize i = 0; i < n; i++)
    if (g_str_equal (_(types[i].title), entry->title))
      return (int) i;
  return -1;
}

static int
find_modifier (const LrLight *light)
{
  gsize n;
  const LrModifier *modifiers = lr_modifiers (&n);

  for (gsize i = 1; i < n; i++)
    if (g_str_equal (_(modifiers[i].title), light->modifier))
      return (int) i;
  return light->modifier[0] == '\0' ? 0 : -1;
}

static int
find_factor (const LrProp *prop,
             double        value)
{
  gsize n;
  const LrFactor *factors = lr_format_factors (prop->key, &n);

  for (gsize i = 0; i < n; i++)
    if (fabs (factors[i].value - value) < SAME_FACTOR)
      return (int) i;
  return -1;
}

/**
 * lr_details_show_name:
 * @field: of any property
 * @owner: what the property is of
 *
 * Lets the list of names begin at the one that @owner has.
 */
void
lr_details_show_name (LrField       *field,
                      gconstpointer  owner)
{
  const LrProp *prop = lr_field_get_prop (field);
  Names names = names_of (prop);
  int index;

  if (names == NAMES_NONE)
    return;
  if (names == NAMES_SENSORS)
    index = find_sensor (&((const LrItem *) owner)->camera);
  else if (names == NAMES_LENSES)
    index = find_lens (owner);
  else if (names == NAMES_MODIFIERS)
    index = find_modifier (&((const LrItem *) owner)->light);
  else
    index = find_factor (prop, lr_prop_get_number (prop, owner));
  lr_field_presets_set_current (GTK_ENTRY (gtk_widget_get_first_child (GTK_WIDGET (field))), index);
}

/**
 * lr_details_take_name:
 * @plan: a plan
 * @item: the camera or the lamp in hand
 * @prop: of the field
 * @index: of what was chosen in its list
 * @error: return location
 *
 * A sensor's name sets both of its sides, a lens's name all of the lens, a modifier's name all that it changes.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_details_take_name (const LrPlan  *plan,
                      const LrItem  *item,
                      const LrProp  *prop,
                      guint          index,
                      GError       **error)
{
  const LrKitEntry *entry = lr_details_lens_of (plan, item, prop);
  Names names = names_of (prop);
  gsize n;

  if (names == NAMES_SENSORS)
    {
      const LrSensorFormat *format = &lr_sensor_formats (&n)[index];
      LrChange sides[] = {
        { item->id, "sensor-width-mm", format->width_m }, { item->id, "sensor-height-mm", format->height_m },
      };

      return lr_plan_change (plan, sides, G_N_ELEMENTS (sides), error);
    }
  if (names == NAMES_LENSES)
    return lr_plan_set_kit_lens (plan, entry->item->id, &lr_lens_types (&n)[index], error);
  if (names == NAMES_MODIFIERS)
    return lr_plan_set_modifier (plan, item->id, &lr_modifiers (&n)[index], error);
  if (entry != NULL)
    return lr_plan_set_kit_number (plan, entry->item->id, prop->key, lr_format_factors (prop->key, &n)[index].value, error);

  return lr_plan_change (plan, &(LrChange) { item->id, prop->key, lr_format_factors (prop->key, &n)[index].value }, 1, error);
}
