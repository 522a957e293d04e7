/* test-prop-text.c - values of properties as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Units as in test-units.c; everything else is arithmetic, and the marking of lenses ("f/2.8") and shutters ("1/50 s").
 */

#include "prop_text.h"

#include "item.h"
#include "plan.h"

#include <math.h>

#define NBSP "\u00a0"

typedef struct
{
  const char *name;
  LrItemKind  kind;
  const char *key;
  LrUnits     units;
  double      value;
  const char *text;   /* as it is shown */
} Row;

static const Row rows[] = {
  { "length", LR_ITEM_CAMERA, "lens-height-mm", LR_UNITS_METRIC, 1.24, "1.24" NBSP "m" },
  { "length-in-feet", LR_ITEM_PERSON, "stature-mm", LR_UNITS_IMPERIAL, 73 * 0.0254, "6′" NBSP "1″" },
  { "focal-length", LR_ITEM_CAMERA, "focal-mm", LR_UNITS_METRIC, 0.085, "85" NBSP "mm" },
  { "focal-length-in-feet", LR_ITEM_CAMERA, "focal-mm", LR_UNITS_IMPERIAL, 0.085, "85" NBSP "mm" },
  { "sensor", LR_ITEM_CAMERA, "sensor-height-mm", LR_UNITS_METRIC, 0.02025, "20.25" NBSP "mm" },
  { "angle", LR_ITEM_LIGHT, "beam-deg", LR_UNITS_METRIC, G_PI / 8.0, "22.5°" },
  { "minus", LR_ITEM_CAMERA, "tilt-deg", LR_UNITS_METRIC, -G_PI / 36.0, "−5°" },
  { "share", LR_ITEM_LIGHT, "dim-pct", LR_UNITS_METRIC, 0.45, "45" NBSP "%" },
  { "stop", LR_ITEM_CAMERA, "f-number", LR_UNITS_METRIC, 2.8, "f/2.8" },
  { "shutter", LR_ITEM_CAMERA, "shutter-s", LR_UNITS_METRIC, 0.02, "1/50" NBSP "s" },
  { "kelvin", LR_ITEM_CAMERA, "white-balance-k", LR_UNITS_METRIC, 5600.0, "5600" NBSP "K" },
  { "frame-rate", LR_ITEM_CAMERA, "frame-rate-fps", LR_UNITS_METRIC, 23.976, "23.976" NBSP "fps" },
  { "count", LR_ITEM_SOCKET, "outlets", LR_UNITS_METRIC, 2.0, "2" },
  { "not-given", LR_ITEM_CAMERA, "focus-mm", LR_UNITS_METRIC, 0.0, "" },
};

/* What is shown can be typed, and means the same */
static void
test_round_trip (gconstpointer data)
{
  const Row *row = data;
  const LrProp *prop = lr_item_find_prop (row->kind, row->key);
  g_autofree char *text = lr_prop_text_format (prop, row->value, row->units);
  g_autoptr (GError) error = NULL;
  double value = NAN;

  g_assert_cmpstr (text, ==, row->text);
  g_assert_true (lr_prop_text_parse (prop, text, row->units, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value, lr_prop_quantise (prop, row->value), 1e-12);
}

typedef struct
{
  const char *name;
  LrItemKind  kind;
  const char *key;
  const char *text;
  double      value;
} Typed;

static const Typed typed[] = {
  { "bare-metres", LR_ITEM_CAMERA, "lens-height-mm", "1.24", 1.24 },
  { "centimetres", LR_ITEM_CAMERA, "lens-height-mm", " 124 cm ", 1.24 },
  { "comma", LR_ITEM_CAMERA, "focal-mm", "24,5", 0.0245 },
  { "millimetres", LR_ITEM_CAMERA, "focal-mm", "85mm", 0.085 },
  { "metres-for-a-lens", LR_ITEM_CAMERA, "focal-mm", "0.085 m", 0.085 },
  { "per-cent", LR_ITEM_LIGHT, "dim-pct", "30", 0.3 },
  { "bare-stop", LR_ITEM_CAMERA, "f-number", "4", 4.0 },
  { "kelvin", LR_ITEM_CAMERA, "white-balance-k", "3200k", 3200.0 },
  { "emptied", LR_ITEM_CAMERA, "focus-mm", "", 0.0 },
};

static void
test_typed (gconstpointer data)
{
  const Typed *row = data;
  g_autoptr (GError) error = NULL;
  double value = NAN;

  g_assert_true (lr_prop_text_parse (lr_item_find_prop (row->kind, row->key), row->text, LR_UNITS_METRIC, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value, row->value, 1e-12);
}

/* Refused with the range in words, and nothing written */
static void
test_refused (void)
{
  static const struct { LrItemKind kind; const char *key, *text, *range; } refused[] = {
    { LR_ITEM_CAMERA, "lens-height-mm", "99", "from 0.01" NBSP "m to 20.00" NBSP "m" },
    { LR_ITEM_CAMERA, "lens-height-mm", "", "from" },
    { LR_ITEM_CAMERA, "lens-height-mm", "high", "“high”" },
    { LR_ITEM_CAMERA, "f-number", "-2", "f/0.7" },
    { LR_ITEM_CAMERA, "f-number", "0x2", "f/0.7" },
    { LR_ITEM_CAMERA, "white-balance-k", "3200 lx", "1500" },
    { LR_ITEM_CAMERA, "white-balance-k", "nan", "1500" },
    { LR_ITEM_CAMERA, "white-balance-k", "1e9", "1500" },
    { LR_ITEM_LIGHT, "dim-pct", "101 %", "100" NBSP "%" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 42.0;

      g_test_message ("%s “%s”", refused[i].key, refused[i].text);
      g_assert_false (lr_prop_text_parse (lr_item_find_prop (refused[i].kind, refused[i].key), refused[i].text, LR_UNITS_METRIC,
                                          &value, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
      g_assert_nonnull (strstr (error->message, refused[i].range));
      g_assert_cmpfloat (value, ==, 42.0);
    }
}

/* Every number of every kind can be shown and typed back at both ends of its range */
static void
test_all_props (void)
{
  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      const LrPropTable *table = &lr_item_kind_info ((LrItemKind) kind)->table;

      for (gsize i = 0; i < table->n_props; i++)
        for (int end = 0; end < 2; end++)
          {
            const LrProp *prop = &table->props[i];
            double given = end == 0 ? prop->min : prop->max, value = NAN;
            g_autofree char *text = lr_prop_is_text (prop) ? NULL : lr_prop_text_format (prop, given, LR_UNITS_METRIC);
            g_autoptr (GError) error = NULL;

            if (text == NULL)
              continue;

            g_test_message ("%s “%s”", prop->key, text);
            lr_prop_text_parse (prop, text, LR_UNITS_METRIC, &value, &error);
            if (prop->type != LR_PROP_LENGTH || given >= 0.005)
              g_assert_no_error (error);
          }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/prop-text/round-trip/", rows[i].name, NULL);

      g_test_add_data_func (path, &rows[i], test_round_trip);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *path = g_strconcat ("/prop-text/typed/", typed[i].name, NULL);

      g_test_add_data_func (path, &typed[i], test_typed);
    }
  g_test_add_func ("/prop-text/refused", test_refused);
  g_test_add_func ("/prop-text/all-props", test_all_props);
  return g_test_run ();
}
