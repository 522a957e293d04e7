/* formats.c - sensors, lenses and factors by name, from the tables in data
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * data/sensor-formats.json, data/lens-types.json and the factors of data/sound-materials.json are compiled in and read once, when one of them is first asked for; they
 * never change after that.
 */

#include "config.h"

#include "formats.h"

#include "data_table.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SAME_SIZE_M 5e-6

typedef struct
{
  GArray *sensors;                              /* LrSensorFormat */
  GArray *lenses;                               /* LrLensType */
  GArray *crops, *squeezes, *converters, *patterns, *tubes; /* LrFactor */
} Tables;

/* The titles in the tables, for translators alone; a test holds them together */
static const char *const titles[] G_GNUC_UNUSED = {
  N_("Full frame, 3:2"), N_("Full frame, 16:9 mode"), N_("Super 35, 4-perf gate"), N_("Super 35, 3-perf gate"),
  N_("Super 35, 16:9 sensor"), N_("Academy 35 mm gate"), N_("Anamorphic 35 mm gate"), N_("APS-C, 1.5"),
  N_("APS-C, 1.6"), N_("Four Thirds"), N_("Super 16"), N_("1-inch type"), N_("2/3-inch type, 16:9"),
  N_("2/3-inch type, 4:3"), N_("1/2-inch type, 16:9"), N_("1/2.3-inch type"), N_("1/3-inch type, 16:9"),
  N_("The whole sensor"), N_("Super 35 of a full frame sensor"), N_("Half of the sensor, pixel for pixel"),
  N_("24 mm lens"), N_("f/1.8 to f/16"), N_("35 mm lens"), N_("50 mm lens"), N_("85 mm lens"),
  N_("100 mm macro lens"), N_("f/2.8 to f/22"), N_("135 mm lens"), N_("f/2 to f/16"), N_("12–35 mm lens"),
  N_("16–35 mm lens"), N_("18–110 mm lens"), N_("f/4 to f/16"), N_("24–70 mm lens"), N_("24–105 mm lens"),
  N_("f/4 to f/22"), N_("70–200 mm lens"), N_("Spherical"), N_("Anamorphic, 1.33×"), N_("Anamorphic, 1.5×"),
  N_("Anamorphic, 1.8×"), N_("Anamorphic, 2×"), N_("Focal reducer, one stop"), N_("None"),
  N_("Teleconverter, one stop"), N_("Teleconverter, two stops"),
  N_("Omni"), N_("Subcardioid"), N_("Cardioid"), N_("Supercardioid"), N_("Hypercardioid"), N_("Figure-eight"),
  N_("Short tube"), N_("Tube"), N_("Long tube"),
};

static void
add_sensor (JsonArray *array G_GNUC_UNUSED,
            guint      index G_GNUC_UNUSED,
            JsonNode  *node,
            gpointer   sensors)
{
  JsonObject *row = json_node_get_object (node);
  LrSensorFormat format = {
    lr_data_table_text (row, "id"), lr_data_table_text (row, "title"), lr_data_table_text (row, "source"),
    0.001 * json_object_get_double_member (row, "width-mm"), 0.001 * json_object_get_double_member (row, "height-mm"),
  };

  g_array_append_val ((GArray *) sensors, format);
}

static void
add_lens (JsonArray *array G_GNUC_UNUSED,
          guint      index G_GNUC_UNUSED,
          JsonNode  *node,
          gpointer   lenses)
{
  JsonObject *row = json_node_get_object (node);
  const LrPropTable *table = &lr_item_kind_info (LR_ITEM_LENS)->table;
  LrItem *item = lr_item_new (LR_ITEM_LENS, json_object_get_string_member (row, "id"));
  LrLensType type = { lr_data_table_text (row, "id"), lr_data_table_text (row, "title"), lr_data_table_text (row, "note"), lr_data_table_text (row, "source"), item };

  for (gsize i = 0; i < table->n_props; i++)
    lr_prop_put_number (&table->props[i], item,
                        lr_prop_from_file (&table->props[i],
                                           json_object_get_double_member (row, table->props[i].key)));
  g_array_append_val ((GArray *) lenses, type);
}

static void
add_factor (JsonArray *array G_GNUC_UNUSED,
            guint      index G_GNUC_UNUSED,
            JsonNode  *node,
            gpointer   factors)
{
  JsonObject *row = json_node_get_object (node);
  LrFactor factor = { json_object_get_double_member (row, "value"), lr_data_table_text (row, "title"), lr_data_table_text (row, "source") };

  g_array_append_val ((GArray *) factors, factor);
}

static const Tables *
get_tables (void)
{
  static Tables tables;
  static gsize is_read;

  if (g_once_init_enter (&is_read))
    {
      g_autoptr (JsonObject) sensors = lr_data_table_read ("sensor-formats.json"), lenses = lr_data_table_read ("lens-types.json"),
                             sound = lr_data_table_read ("sound-materials.json");

      tables.sensors = lr_data_table_rows (sensors, "sensors", sizeof (LrSensorFormat), add_sensor);
      tables.crops = lr_data_table_rows (sensors, "sensor-crop", sizeof (LrFactor), add_factor);
      tables.lenses = lr_data_table_rows (lenses, "lenses", sizeof (LrLensType), add_lens);
      tables.squeezes = lr_data_table_rows (lenses, "squeeze", sizeof (LrFactor), add_factor);
      tables.converters = lr_data_table_rows (lenses, "converter", sizeof (LrFactor), add_factor);
      tables.patterns = lr_data_table_rows (sound, "omni-share-pct", sizeof (LrFactor), add_factor);
      tables.tubes = lr_data_table_rows (sound, "tube-mm", sizeof (LrFactor), add_factor);
      g_once_init_leave (&is_read, 1);
    }

  return &tables;
}

/**
 * lr_sensor_formats:
 * @n: (out): how many
 *
 * Returns: (transfer none) (array length=n): sensors and film gates, as in data/sensor-formats.json
 */
const LrSensorFormat *
lr_sensor_formats (gsize *n)
{
  const GArray *sensors = get_tables ()->sensors;

  *n = sensors->len;
  return (const LrSensorFormat *) (gpointer) sensors->data;
}

/**
 * lr_sensor_format_find:
 * @width_m: of a sensor [m]
 * @height_m: its height [m]
 *
 * Returns: (transfer none) (nullable): the format of that size, to 5 µm
 */
const LrSensorFormat *
lr_sensor_format_find (double width_m,
                       double height_m)
{
  gsize n;
  const LrSensorFormat *formats = lr_sensor_formats (&n);

  for (gsize i = 0; i < n; i++)
    if (fabs (formats[i].width_m - width_m) < SAME_SIZE_M && fabs (formats[i].height_m - height_m) < SAME_SIZE_M)
      return &formats[i];

  return NULL;
}

/**
 * lr_lens_types:
 * @n: (out): how many
 *
 * Returns: (transfer none) (array length=n): usual lenses, as in data/lens-types.json
 */
const LrLensType *
lr_lens_types (gsize *n)
{
  const GArray *lenses = get_tables ()->lenses;

  *n = lenses->len;
  return (const LrLensType *) (gpointer) lenses->data;
}

/**
 * lr_lens_type_find:
 * @id: of a row
 *
 * Returns: (transfer none) (nullable): that row
 */
const LrLensType *
lr_lens_type_find (const char *id)
{
  gsize n;
  const LrLensType *types = lr_lens_types (&n);

  for (gsize i = 0; i < n; i++)
    if (g_str_equal (types[i].id, id))
      return &types[i];

  return NULL;
}

/**
 * lr_format_factors:
 * @key: of a property
 * @n: (out): how many
 *
 * Returns: (transfer none) (nullable) (array length=n): usual factors of a sensor mode, an anamorphic lens or a converter, patterns and tubes
 */
const LrFactor *
lr_format_factors (const char *key,
                   gsize      *n)
{
  const Tables *tables = get_tables ();
  const GArray *factors = NULL;

  if (g_str_equal (key, "sensor-crop"))
    factors = tables->crops;
  else if (g_str_equal (key, "squeeze"))
    factors = tables->squeezes;
  else if (g_str_equal (key, "converter"))
    factors = tables->converters;
  else if (g_str_equal (key, "omni-share-pct"))
    factors = tables->patterns;
  else if (g_str_equal (key, "tube-mm"))
    factors = tables->tubes;

  *n = factors != NULL ? factors->len : 0;
  return factors != NULL ? (const LrFactor *) (gpointer) factors->data : NULL;
}
