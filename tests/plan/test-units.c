/* test-units.c - lengths, angles and numbers as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Imperial values: 1 yard = 0.9144 m exactly (international yard and pound agreement, 1959; NIST SP 811, appendix B.8),
 * hence 1 ft = 0.3048 m and 1 in = 25.4 mm. Everything else is arithmetic.
 */

#include "units.h"

#include "vec.h"

#include <math.h>

#define NBSP "\u00a0"

typedef struct
{
  const char *name, *text;
  LrUnits     units;
  double      length_m;
  double      tolerance_m;
} LengthCase;

static const LengthCase length_cases[] = {
  { "bare-metres", "2.4", LR_UNITS_METRIC, 2.4, 0.0 },
  { "bare-feet", "7", LR_UNITS_IMPERIAL, 2.1336, 1e-12 },
  { "metres", "2.4 m", LR_UNITS_IMPERIAL, 2.4, 0.0 },
  { "centimetres", "240cm", LR_UNITS_METRIC, 2.4, 1e-12 },
  { "millimetres", "2400 mm", LR_UNITS_METRIC, 2.4, 1e-12 },
  { "comma", "2,4", LR_UNITS_METRIC, 2.4, 0.0 },
  { "sum", "2 m 40 cm", LR_UNITS_METRIC, 2.4, 1e-12 },
  { "minus", "-0.5 m", LR_UNITS_METRIC, -0.5, 0.0 },
  { "true-minus", "\u22120.5", LR_UNITS_METRIC, -0.5, 0.0 },
  { "spaces", "  2.4" NBSP "m ", LR_UNITS_METRIC, 2.4, 0.0 },
  { "feet-inches", "7' 10\"", LR_UNITS_METRIC, 94 * 0.0254, 1e-12 },
  { "primes", "7′" NBSP "10″", LR_UNITS_METRIC, 94 * 0.0254, 1e-12 },
  { "two-apostrophes", "7' 10''", LR_UNITS_METRIC, 94 * 0.0254, 1e-12 },
  { "bare-inches", "7' 10", LR_UNITS_METRIC, 94 * 0.0254, 1e-12 },
  { "words", "7ft 10 1/2in", LR_UNITS_METRIC, 94.5 * 0.0254, 1e-12 },
  { "fraction-sign", "7′ 10½″", LR_UNITS_METRIC, 94.5 * 0.0254, 1e-12 },
  { "fraction-alone", "3/4 in", LR_UNITS_METRIC, 0.75 * 0.0254, 1e-12 },
  { "foot", "1 foot", LR_UNITS_METRIC, 0.3048, 0.0 },
  { "inch", "1 in", LR_UNITS_METRIC, 0.0254, 0.0 },
  { "yard-in-feet", "3 ft", LR_UNITS_METRIC, 0.9144, 1e-12 },
  { "minus-feet", "-7' 10\"", LR_UNITS_METRIC, -94 * 0.0254, 1e-12 },
  { "zero", "-0", LR_UNITS_METRIC, 0.0, 0.0 },
};

static void
test_length (gconstpointer data)
{
  const LengthCase *c = data;
  double length_m = NAN;

  g_assert_true (lr_length_parse (c->text, c->units, &length_m));
  g_assert_cmpfloat_with_epsilon (length_m, c->length_m, c->tolerance_m + 1e-300);
  g_assert_false (signbit (length_m) && length_m == 0.0);
}

static void
test_not_a_length (void)
{
  static const char *const texts[] = {
    "", " ", "m", "-", "2.4.1", "2.4 kg", "7' 10' ", "10\" 7'", "2 m 7 in", "2 m 40", "1e3", "0x10", "nan", "inf", "1/0", "2 4",
    "99999999999", "12345678901234567890123456789012345", "2.4 m x",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      double length_m = 42.0;

      g_test_message ("“%s”", texts[i]);
      g_assert_false (lr_length_parse (texts[i], LR_UNITS_METRIC, &length_m));
      g_assert_cmpfloat (length_m, ==, 42.0);
    }
}

typedef struct
{
  double      length_m;
  const char *metric, *imperial, *exact_metric, *exact_imperial;
} LengthText;

static const LengthText length_texts[] = {
  { 2.4, "2.40" NBSP "m", "7′" NBSP "10½″", "2.40" NBSP "m", "7′" NBSP "10½″" },
  { 94 * 0.0254, "2.39" NBSP "m", "7′" NBSP "10″", "2.388" NBSP "m", "7′" NBSP "10″" },
  { 2.406, "2.41" NBSP "m", "7′" NBSP "10½″", "2.406" NBSP "m", "7′" NBSP "10¾″" },
  { 0.3048, "0.30" NBSP "m", "1′", "0.305" NBSP "m", "1′" },
  { 0.1, "0.10" NBSP "m", "4″", "0.10" NBSP "m", "3⅞″" },
  { 0.0127, "0.01" NBSP "m", "½″", "0.013" NBSP "m", "½″" },
  { 0.0, "0.00" NBSP "m", "0″", "0.00" NBSP "m", "0″" },
  { -0.001, "0.00" NBSP "m", "0″", "\u22120.001" NBSP "m", "0″" },
  { -0.46, "\u22120.46" NBSP "m", "\u22121′" NBSP "6″", "\u22120.46" NBSP "m", "\u22121′" NBSP "6⅛″" },
  { 3.6575, "3.66" NBSP "m", "12′", "3.658" NBSP "m", "12′" }, /* 11 ft 11.996 in: carried, not "11′ 12″" */
};

static void
test_length_text (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (length_texts); i++)
    {
      const LengthText *t = &length_texts[i];
      g_autofree char *metric = lr_length_format (t->length_m, LR_UNITS_METRIC);
      g_autofree char *imperial = lr_length_format (t->length_m, LR_UNITS_IMPERIAL);
      g_autofree char *exact_metric = lr_length_format_exact (t->length_m, LR_UNITS_METRIC);
      g_autofree char *exact_imperial = lr_length_format_exact (t->length_m, LR_UNITS_IMPERIAL);

      g_assert_cmpstr (metric, ==, t->metric);
      g_assert_cmpstr (imperial, ==, t->imperial);
      g_assert_cmpstr (exact_metric, ==, t->exact_metric);
      g_assert_cmpstr (exact_imperial, ==, t->exact_imperial);
    }
}

/* To a quarter of an inch: 25.4 mm to the inch, worked by hand */
static void
test_tape_text (void)
{
  static const struct { double length_m; const char *imperial; } texts[] = {
    { 2.4, "7′" NBSP "10½″" },           /* 94.488 in */
    { 2.406, "7′" NBSP "10¾″" },         /* 94.724 in */
    { 2.395, "7′" NBSP "10¼″" },         /* 94.291 in */
    { 0.3048 - 0.003, "1′" },             /* 11.882 in: carried */
    { 0.3048 - 0.0035, "11¾″" },         /* 11.862 in */
    { 0.0, "0″" },
  };
  g_autofree char *metric = lr_length_format_tape (2.404, LR_UNITS_METRIC);
  g_autofree char *endless = lr_length_format_tape (HUGE_VAL, LR_UNITS_IMPERIAL);

  g_assert_cmpstr (metric, ==, "2.40");
  g_assert_cmpstr (endless, ==, "∞");
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *imperial = lr_length_format_tape (texts[i].length_m, LR_UNITS_IMPERIAL);

      g_assert_cmpstr (imperial, ==, texts[i].imperial);
    }
}

/* What a field shows is read back within what it shows: half a millimetre, or a sixteenth of an inch */
static void
test_length_round_trip (void)
{
  for (int mm = -2500; mm <= 250000; mm += 7)
    {
      double length_m = mm / 1000.0, back_m = NAN;
      g_autofree char *metric = lr_length_format_exact (length_m, LR_UNITS_METRIC);
      g_autofree char *imperial = lr_length_format_exact (length_m, LR_UNITS_IMPERIAL);

      g_assert_true (lr_length_parse (metric, LR_UNITS_METRIC, &back_m));
      g_assert_cmpfloat_with_epsilon (back_m, length_m, 1e-9);
      g_assert_true (lr_length_parse (imperial, LR_UNITS_IMPERIAL, &back_m));
      g_assert_cmpfloat_with_epsilon (back_m, length_m, 0.0254 / 16.0 + 1e-9);
    }
}

static void
test_angle (void)
{
  static const struct { const char *text; double angle_deg; } good[] = {
    { "22", 22.0 }, { "22°", 22.0 }, { "-3.5", -3.5 }, { "\u22123,5 °", -3.5 }, { "180 deg", 180.0 }, { " 1/2 ", 0.5 },
  };
  static const char *const bad[] = { "", "°", "22 m", "twenty", "22°°" };
  static const struct { double angle_deg; const char *text; } texts[] = {
    { 22.0, "22°" }, { 21.5, "22°" }, { -3.4, "\u22123°" }, { -0.4, "0°" }, { 360.0, "360°" },
  };
  double angle_rad = NAN;

  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_assert_true (lr_angle_parse (good[i].text, &angle_rad));
      g_assert_cmpfloat_with_epsilon (angle_rad / LR_DEG, good[i].angle_deg, 1e-12);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lr_angle_parse (bad[i], &angle_rad));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = lr_angle_format (texts[i].angle_deg * LR_DEG);

      g_assert_cmpstr (text, ==, texts[i].text);
    }
}

/* Stops are the nominal numbers engraved on lenses */
static void
test_f_number (void)
{
  static const double nominal[] = { 0.95, 1.0, 1.4, 1.8, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0 };
  static const struct { const char *text; double f_number; } good[] = {
    { "f/2.8", 2.8 }, { "f2.8", 2.8 }, { "2.8", 2.8 }, { "F/2,8", 2.8 }, { " f/ 11 ", 11.0 },
  };
  static const char *const bad[] = { "", "f/", "f/0", "-2.8", "f/2.8/4", "open" };
  double f_number = NAN;

  for (guint i = 0; i < G_N_ELEMENTS (nominal); i++)
    {
      g_autofree char *text = lr_f_number_format (nominal[i]);

      g_assert_true (lr_f_number_parse (text, &f_number));
      g_assert_cmpfloat (f_number, ==, nominal[i]);
    }
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_assert_true (lr_f_number_parse (good[i].text, &f_number));
      g_assert_cmpfloat (f_number, ==, good[i].f_number);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lr_f_number_parse (bad[i], &f_number));
}

/* Times as the file holds them, with nine decimals, show as what was meant: 180 degrees at the usual frame rates */
static void
test_shutter (void)
{
  static const struct { double shutter_s; const char *text; } texts[] = {
    { 0.02, "1/50" NBSP "s" },        { 0.020833333, "1/48" NBSP "s" },  { 0.016683350, "1/59.94" NBSP "s" },
    { 0.016666667, "1/60" NBSP "s" }, { 0.00015625, "1/6400" NBSP "s" }, { 0.000166667, "1/6000" NBSP "s" },
    { 0.5, "0.5" NBSP "s" },          { 2.0, "2" NBSP "s" },
  };
  static const struct { const char *text; double shutter_s; } good[] = {
    { "1/50", 0.02 }, { "1/50 s", 0.02 }, { "50", 0.02 }, { "0.02", 0.02 }, { "0,5 s", 0.5 }, { "2 s", 2.0 }, { "1", 1.0 },
  };
  static const char *const bad[] = { "", "1/0", "0", "fast", "1/50 m" };
  double shutter_s = NAN;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = lr_shutter_format (texts[i].shutter_s);

      g_assert_cmpstr (text, ==, texts[i].text);
      g_assert_true (lr_shutter_parse (text, &shutter_s));
      g_assert_cmpfloat_with_epsilon (shutter_s, texts[i].shutter_s, 1e-5 * texts[i].shutter_s);
    }
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_assert_true (lr_shutter_parse (good[i].text, &shutter_s));
      g_assert_cmpfloat_with_epsilon (shutter_s, good[i].shutter_s, 1e-15);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lr_shutter_parse (bad[i], &shutter_s));
}

/* Bare numbers are what the user's units say; those that are too much for a room are asked about, and what is small enough for one in
 * centimetres or inches is offered so. 30 m: common practice, no source */
static void
test_bare (void)
{
  static const struct
  {
    const char *text;
    LrUnits     units;
    gboolean    is_bare, is_questionable;
    const char *small;
  } cases[] = {
    { "240", LR_UNITS_METRIC, TRUE, TRUE, "240\u00a0cm" }, { "2.40", LR_UNITS_METRIC, TRUE, FALSE, NULL },
    { "240 cm", LR_UNITS_METRIC, FALSE, FALSE, NULL },      { "30", LR_UNITS_METRIC, TRUE, FALSE, "30\u00a0cm" },
    { "31", LR_UNITS_METRIC, TRUE, TRUE, "31\u00a0cm" },    { "9", LR_UNITS_METRIC, TRUE, FALSE, NULL },
    { "240 m", LR_UNITS_METRIC, FALSE, FALSE, NULL },       { "?", LR_UNITS_METRIC, FALSE, FALSE, NULL },
    { "", LR_UNITS_METRIC, FALSE, FALSE, NULL },            { "94", LR_UNITS_IMPERIAL, TRUE, FALSE, "94\u00a0in" },
    { "142", LR_UNITS_IMPERIAL, TRUE, TRUE, "142\u00a0in" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *small = lr_length_in_small_unit (cases[i].text, cases[i].units);

      g_test_message ("%s", cases[i].text);
      g_assert_cmpint (lr_length_is_bare (cases[i].text), ==, cases[i].is_bare);
      g_assert_cmpint (lr_length_is_questionable (cases[i].text, cases[i].units), ==, cases[i].is_questionable);
      g_assert_cmpstr (small, ==, cases[i].small);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (length_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/units/length/", length_cases[i].name, NULL);

      g_test_add_data_func (path, &length_cases[i], test_length);
    }
  g_test_add_func ("/units/length/not-one", test_not_a_length);
  g_test_add_func ("/units/length/text", test_length_text);
  g_test_add_func ("/units/tape-text", test_tape_text);
  g_test_add_func ("/units/length/round-trip", test_length_round_trip);
  g_test_add_func ("/units/angle", test_angle);
  g_test_add_func ("/units/f-number", test_f_number);
  g_test_add_func ("/units/shutter", test_shutter);
  g_test_add_func ("/units/bare", test_bare);

  return g_test_run ();
}
