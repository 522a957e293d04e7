/* test-photometry.c - photometric files: what they hold, and what is wrong with bad ones
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The files are written for these tests. Their flux is worked by hand: the intensities go evenly between the angles, so each step gives
 * I1 cos a - I2 cos b + (I2 - I1) / (b - a) (sin b - sin a).
 */

#include "photometry.h"

#include "check.h"

#include <locale.h>
#include <string.h>

#define HEAD "IESNA:LM-63-2002\n[TEST] synthetic\n[TESTLAB] none\n[ISSUEDATE] 2026-01-01\n[MANUFAC] synthetic\nTILT=NONE\n"
#define AXIAL "1 -1 1 7 1 1 2 0.3 0.3 0\n1 1 100\n0 15 30 45 60 75 90\n0\n1000 966 866 707 500 259 0\n"
#define QUADRANT \
  "1 -1 1 4 3 1 2 0.3 0.3 0\n1 1 100\n0 30 60 90\n0 45 90\n1200 1000 400 0\n1200 900 300 0\n1200 700 200 0\n"
#define LDT_HEAD(symmetry) \
  "synthetic\r\n3\r\n" symmetry "\r\n4\r\n90\r\n4\r\n30\r\nr1\r\ndemo\r\n1\r\ndemo\r\n2026-01-01\r\n300\r\n300\r\n50\r\n280\r\n280\r\n0\r\n0\r\n0\r\n0\r\n" \
  "100\r\n70.5\r\n1\r\n0\r\n1\r\n1\r\nLED\r\n2000\r\n5600\r\n95\r\n25\r\n.5\r\n.6\r\n.66\r\n.72\r\n.77\r\n.84\r\n.88\r\n.91\r\n.95\r\n.97\r\n" \
  "0\r\n90\r\n180\r\n270\r\n0\r\n30\r\n60\r\n90\r\n"

typedef bool (*Read) (const char *text, size_t length, LrPhotometry *photometry, LrPhotometryError *error);

typedef struct
{
  const char *name;
  Read        read;
  const char *text;
  double      flux_lm, v_deg, h_deg, candela; /* expected */
  unsigned    warnings;
} GoodCase;

static const GoodCase good_cases[] = {
  { "axial", lr_photometry_read_ies, HEAD AXIAL, 3123.70, 37.5, 123.0, 786.5, 0 },
  { "quadrant", lr_photometry_read_ies, HEAD QUADRANT, 2581.94, 45.0, 22.5, 650.0, 0 },
  { "quadrant-157.5", lr_photometry_read_ies, HEAD QUADRANT, 2581.94, 45.0, 157.5, 650.0, 0 },
  { "quadrant-202.5", lr_photometry_read_ies, HEAD QUADRANT, 2581.94, 45.0, 202.5, 650.0, 0 },
  { "quadrant-337.5", lr_photometry_read_ies, HEAD QUADRANT, 2581.94, 45.0, 337.5, 650.0, 0 },
  { "isotropic", lr_photometry_read_ies, HEAD "1 -1 1 7 1 1 2 0 0 0 1 1 1 0 30 60 90 120 150 180 0 100 100 100 100 100 100 100", 1256.637, 180.0, 0.0, 100.0, 0 },
  { "no-label", lr_photometry_read_ies, "my lamp\nTILT=NONE\n" AXIAL, 3123.70, 0.0, 0.0, 1000.0, 0 },
  { "space-in-tilt", lr_photometry_read_ies, "IESNA91\n TILT = NONE\n" AXIAL, 3123.70, 0.0, 0.0, 1000.0, 0 },
  { "commas-and-wraps", lr_photometry_read_ies, HEAD "1,-1,1,7,1,1,2\n0.3 0.3\t0\n1 1 100 0 15 30\r\n45 60 75 90 0\r1000,966 866 707\n500 259 0\n", 3123.70, 90.0, 0.0, 0.0, 0 },
  { "ballast", lr_photometry_read_ies, HEAD "1 900 2 2 1 1 2 0 0 0 0.5 1 9 0 90 0 100 100", 628.3185, 45.0, 0.0, 100.0, 0 },
  /* a factor in 1991, a code in 2019 */
  { "third-1991", lr_photometry_read_ies, "IESNA91\nTILT=NONE\n1 900 1 2 1 1 2 0 0 0 1 1.1 9 0 90 0 100 100", 691.1504, 45.0, 0.0, 110.0, 0 },
  { "third-2019", lr_photometry_read_ies, "IES:LM-63-2019\nTILT=NONE\n1 900 1 2 1 1 2 0 0 0 1 1.1 9 0 90 0 100 100", 628.3185, 45.0, 0.0, 100.0, 0 },
  { "tilt-included", lr_photometry_read_ies, "IESNA91\nTILT=INCLUDE\n1\n3\n0 45 90\n1 .9 .8\n" AXIAL, 3123.70, 0.0, 0.0, 1000.0, LR_PHOTOMETRY_TILT_IGNORED },
  { "text-after", lr_photometry_read_ies, HEAD AXIAL "[END]", 3123.70, 0.0, 0.0, 1000.0, LR_PHOTOMETRY_TEXT_AFTER },
  { "written-out", lr_photometry_read_ies,
    HEAD "1 -1 1 4 3 1 2 .3 .3 0 1 1 100 0.00000 30.00000 60.00000 90.00000 0.00000 45.00000 90.00000 1200.00000 1000 400 0 1200 900 300 0 1200 700 200 0",
    2581.94, 45.0, 157.5, 650.0, 0 },
  { "all-round-written-out", lr_photometry_read_ies, HEAD "1 -1 1 2 3 1 2 0 0 0 1 1 1 0 90 0 180.00000 360.00000 100 100 200 200 100 100", 942.4778, 10.0, 270.0, 150.0, 0 },
  { "dark", lr_photometry_read_ies, HEAD "1 -1 0 2 1 1 2 0 0 0 1 1 1 0 90 0 100 100", 0.0, 45.0, 0.0, 0.0, LR_PHOTOMETRY_IS_DARK },
  /* all round without the plane at 360: the last step is closed */
  { "open-round", lr_photometry_read_ies, HEAD "1 -1 1 2 4 1 2 0 0 0 1 1 1 0 90 0 90 180 270 100 100 200 200 100 100 200 200", 942.4778, 10.0, 315.0, 150.0, 0 },
  { "closed-round", lr_photometry_read_ies, HEAD "1 -1 1 2 5 1 2 0 0 0 1 1 1 0 90 0 90 180 270 360 100 100 200 200 100 100 200 200 100 100", 942.4778, 10.0, 315.0, 150.0, 0 },
  { "about-90-270", lr_photometry_read_ies, HEAD "1 -1 1 2 3 1 2 0 0 0 1 1 1 0 90 90 180 270 100 100 200 200 300 300", 1256.637, 10.0, 45.0, 150.0, 0 },
  { "ldt-quadrant", lr_photometry_read_ldt, LDT_HEAD ("4") "300\r\n260\r\n120\r\n0\r\n300\r\n200\r\n60\r\n0\r\n", 1410.68, 30.0, 0.0, 520.0, 0 },
  { "ldt-other-side", lr_photometry_read_ldt, LDT_HEAD ("4") "300\r\n260\r\n120\r\n0\r\n300\r\n200\r\n60\r\n0\r\n", 1410.68, 30.0, 270.0, 400.0, 0 },
  { "ldt-decimal-comma", lr_photometry_read_ldt, LDT_HEAD ("1") "300,0\r\n260,0\r\n120,5\r\n0\r\n", -1.0, 60.0, 77.0, 241.0, 0 },
  /* C270, C0, C90: at C0 the middle plane, mirrored about the plane from 90 to 270 */
  { "ldt-about-90-270", lr_photometry_read_ldt, LDT_HEAD ("3") "100\n100\n100\n100\n200\n200\n200\n200\n400\n400\n400\n400\n", -1.0, 10.0, 180.0, 400.0, 0 },
  { "ldt-about-90-270-at-90", lr_photometry_read_ldt, LDT_HEAD ("3") "100\n100\n100\n100\n200\n200\n200\n200\n400\n400\n400\n400\n", -1.0, 10.0, 90.0, 800.0, 0 },
  { "ldt-about-90-270-at-270", lr_photometry_read_ldt, LDT_HEAD ("3") "100\n100\n100\n100\n200\n200\n200\n200\n400\n400\n400\n400\n", -1.0, 10.0, 270.0, 200.0, 0 },
};

static void
test_good (gconstpointer data)
{
  const GoodCase *c = data;
  LrPhotometry photometry = { 0 };
  LrPhotometryError error = { 0 };

  if (!c->read (c->text, strlen (c->text), &photometry, &error))
    g_error ("reason %d in line %zu", error.reason, error.line);
  if (c->flux_lm >= 0.0)
    assert_near (lr_photometry_flux_lm (&photometry), c->flux_lm, 0.01);
  assert_near (lr_photometry_candela (&photometry, c->v_deg, c->h_deg), c->candela, 0.01);
  g_assert_cmpuint (photometry.warnings, ==, c->warnings);
  lr_photometry_clear (&photometry);
  g_assert_null (photometry.candela);
}

typedef struct
{
  const char        *name;
  Read               read;
  const char        *text;
  LrPhotometryReason reason;
  size_t             line;
} BadCase;

static const BadCase bad_cases[] = {
  { "empty", lr_photometry_read_ies, "", LR_PHOTOMETRY_NO_TILT, 1 },
  { "other-text", lr_photometry_read_ies, "Dear all\nthis is no lamp\n", LR_PHOTOMETRY_NO_TILT, 3 },
  { "cut-off", lr_photometry_read_ies, HEAD "1 -1 1 7 1 1 2 0.3 0.3 0\n1 1 100\n0 15 30 45 60 75 90\n0\n1000 966\n", LR_PHOTOMETRY_ENDS, 12 },
  { "word", lr_photometry_read_ies, HEAD "1 -1 1 7 1 1 2 0.3 0.3 0\n1 one 100\n", LR_PHOTOMETRY_NOT_A_NUMBER, 8 },
  { "no-angles", lr_photometry_read_ies, HEAD "1 -1 1 0 1 1 2 0.3 0.3 0\n", LR_PHOTOMETRY_COUNT, 7 },
  { "many-angles", lr_photometry_read_ies, HEAD "1 -1 1 10001 1 1 2 0.3 0.3 0\n", LR_PHOTOMETRY_COUNT, 7 },
  { "many-values", lr_photometry_read_ies, HEAD "1 -1 1 9999 9999 1 2 0.3 0.3 0\n1 1 1\n", LR_PHOTOMETRY_COUNT, 8 },
  { "half-an-angle", lr_photometry_read_ies, HEAD "1 -1 1 2.5 1 1 2 0.3 0.3 0\n", LR_PHOTOMETRY_COUNT, 7 },
  { "type-b", lr_photometry_read_ies, HEAD "1 -1 1 7 1 2 2 0.3 0.3 0\n", LR_PHOTOMETRY_TYPE, 7 },
  { "units", lr_photometry_read_ies, HEAD "1 -1 1 7 1 1 3 0.3 0.3 0\n", LR_PHOTOMETRY_UNITS, 7 },
  { "falling-angles", lr_photometry_read_ies, HEAD "1 -1 1 3 1 1 2 0 0 0 1 1 1\n0 60 30\n0\n1 1 1", LR_PHOTOMETRY_ANGLES, 8 },
  { "twice-an-angle", lr_photometry_read_ies, HEAD "1 -1 1 3 1 1 2 0 0 0 1 1 1\n0 30 30\n0\n1 1 1", LR_PHOTOMETRY_ANGLES, 8 },
  { "off-the-sphere", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0 1 1 1\n0 181\n0\n1 1", LR_PHOTOMETRY_ANGLES, 8 },
  { "planes", lr_photometry_read_ies, HEAD "1 -1 1 2 2 1 2 0 0 0 1 1 1\n0 90\n0 80\n1 1 1 1", LR_PHOTOMETRY_PLANES, 9 },
  { "decimal-commas", lr_photometry_read_ies, HEAD "1 -1 1 3 1 1 2 0 0 0 1 1 1\n0 45 90\n0\n1000,5 700,5 0,0", LR_PHOTOMETRY_LEFT_OVER, 10 },
  { "rows-too-many", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0 1 1 1\n0 90\n0\n1 1\n1 1", LR_PHOTOMETRY_LEFT_OVER, 10 },
  { "negative-multiplier", lr_photometry_read_ies, HEAD "1 -1 -1 2 1 1 2 0 0 0 1 1 1\n0 90\n0\n-1 -1", LR_PHOTOMETRY_VALUE, 7 },
  { "negative", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0 1 1 1\n0 90\n0\n1 -1", LR_PHOTOMETRY_VALUE, 10 },
  { "huge", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0 1 1 1\n0 90\n0\n1 1e99", LR_PHOTOMETRY_VALUE, 10 },
  { "infinite", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0 1 1 1\n0 90\n0\n1 1e999999", LR_PHOTOMETRY_NOT_A_NUMBER, 10 },
  { "ldt-planes", lr_photometry_read_ldt,
    "s\n3\n4\n4\n0\n2\n0\nr\nd\n1\nd\n2026\n300\n300\n50\n280\n280\n0\n0\n0\n0\n100\n70\n1\n0\n1\n1\nLED\n2000\n5600\n95\n25\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n"
    "0\n80\n180\n270\n0\n90\n300\n0\n300\n0\n", LR_PHOTOMETRY_PLANES, 43 },
  { "ldt-empty", lr_photometry_read_ldt, "", LR_PHOTOMETRY_ENDS, 1 },
  { "ldt-symmetry", lr_photometry_read_ldt, LDT_HEAD ("5"), LR_PHOTOMETRY_COUNT, 3 },
  { "ldt-word", lr_photometry_read_ldt, LDT_HEAD ("none"), LR_PHOTOMETRY_NOT_A_NUMBER, 3 },
  { "no-ballast", lr_photometry_read_ies, HEAD "1 -1 1 2 1 1 2 0 0 0\n0 1 1\n0 90\n0\n1 1", LR_PHOTOMETRY_VALUE, 8 },
  { "row-of-negatives", lr_photometry_read_ies, HEAD "1 -1 1 2 2 1 2 0 0 0 1 1 1\n0 90\n0 180\n1 1\n1 -1\n", LR_PHOTOMETRY_VALUE, 11 },
  { "ldt-no-lumens", lr_photometry_read_ldt,
    "s\n3\n1\n1\n0\n2\n0\nr\nd\n1\nd\n2026\n300\n300\n50\n280\n280\n0\n0\n0\n0\n100\n70\n1\n0\n1\n1\nLED\n0\n5600\n95\n25\n1\n", LR_PHOTOMETRY_VALUE, 29 },
  { "ldt-falling-angles", lr_photometry_read_ldt,
    "s\n3\n1\n1\n0\n3\n0\nr\nd\n1\nd\n2026\n300\n300\n50\n280\n280\n0\n0\n0\n0\n100\n70\n1\n0\n1\n1\nLED\n2000\n5600\n95\n25\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n"
    "0\n0\n60\n30\n300\n200\n0\n", LR_PHOTOMETRY_ANGLES, 46 },
  { "ldt-negative", lr_photometry_read_ldt,
    "s\n3\n1\n1\n0\n3\n0\nr\nd\n1\nd\n2026\n300\n300\n50\n280\n280\n0\n0\n0\n0\n100\n70\n1\n0\n1\n1\nLED\n2000\n5600\n95\n25\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n"
    "0\n0\n30\n60\n300\n-1\n0\n", LR_PHOTOMETRY_VALUE, 48 },
  { "ldt-cut-off", lr_photometry_read_ldt, LDT_HEAD ("4") "300\r\n260\r\n", LR_PHOTOMETRY_ENDS, 53 },
};

static void
test_bad (gconstpointer data)
{
  const BadCase *c = data;
  LrPhotometry photometry = { .watts = UNTOUCHED };
  LrPhotometryError error = { 0 };

  g_assert_false (c->read (c->text, strlen (c->text), &photometry, &error));
  g_assert_cmpint (error.reason, ==, c->reason);
  g_assert_cmpuint (error.line, ==, c->line);
  g_assert_cmpfloat (photometry.watts, ==, UNTOUCHED);
}

/* In a locale with decimal commas points are points */
static void
test_locale (void)
{
  const char *text = HEAD "1 -1 1.5 2 1 1 2 0 0 0 1 1 1 0 90 0 100.5 100.5";
  LrPhotometry photometry = { 0 };
  LrPhotometryError error;

  setlocale (LC_ALL, "de_DE.UTF-8"); /* where it is installed */
  g_assert_true (lr_photometry_read_ies (text, strlen (text), &photometry, &error));
  assert_near (lr_photometry_candela (&photometry, 10.0, 0.0), 150.75, 1e-9);
  lr_photometry_clear (&photometry);
  setlocale (LC_ALL, "C");
}

/* Feet become metres, sizes below 0 stay so */
static void
test_sizes (void)
{
  const char *text = HEAD "2 700 1 2 1 1 1 -2 4 0 1 1 55 0 90 0 100 100";
  LrPhotometry photometry = { 0 };
  LrPhotometryError error;

  g_assert_true (lr_photometry_read_ies (text, strlen (text), &photometry, &error));
  assert_near (photometry.width_m, -0.6096, 1e-12);
  assert_near (photometry.length_m, 1.2192, 1e-12);
  assert_near (photometry.lamp_lm, 1400.0, 1e-12);
  assert_near (photometry.watts, 55.0, 1e-12);
  lr_photometry_clear (&photometry);
}

/* A table of I0 cos^n, written as either format, one vertical angle a degree; @last_deg 180 with @lobe 0: the same all round */
static char *
write_lobe (double lobe,
            int    last_deg,
            bool   is_ldt)
{
  GString *text = g_string_new (NULL);

  if (is_ldt)
    g_string_append_printf (text, "s\n1\n1\n1\n0\n%d\n1\nr\nd\n1\nd\n2026\n300\n300\n50\n300\n0\n0\n0\n0\n0\n100\n100\n1\n0\n1\n1\nLED\n1000\n"
                            "5600\n95\n25\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n0\n", last_deg + 1);
  else
    g_string_append_printf (text, "%s1 -1 1 %d 1 1 2 0 0 0\n1 1 100\n", HEAD, last_deg + 1);
  for (int v = 0; v <= last_deg; v++)
    g_string_append_printf (text, "%d\n", v);
  if (!is_ldt)
    g_string_append (text, "0\n");
  for (int v = 0; v <= last_deg; v++)
    {
      double candela = v == 90 && lobe > 0.0 ? 0.0 : 1000.0 * pow (cos (v * LR_DEG), lobe);
      char buffer[G_ASCII_DTOSTR_BUF_SIZE];

      g_string_append_printf (text, "%s\n", g_ascii_formatd (buffer, sizeof buffer, "%.6f", candela));
    }
  return g_string_free (text, FALSE);
}

static const struct { double lobe; int last_deg; double beam_deg; } lobes[] = {
  { 0.0, 180, 360.0 }, { 0.0, 90, 180.0 }, { 1.0, 90, 120.0 }, { 2.0, 90, 90.0 }, { 10.0, 90, 42.19 }, { 60.0, 90, 17.41 },
};

/* Flux in closed form: 2 pi I0 / (n + 1), all round 4 pi I0; the beam 2 acos (0.5^(1/n)), the field 2 acos (0.1^(1/n)) */
static void
test_lobes (void)
{
  for (gsize i = 0; i < 2 * G_N_ELEMENTS (lobes); i++)
    {
      double lobe = lobes[i / 2].lobe, flux_lm = lobes[i / 2].last_deg == 180 ? 4.0 * LR_PI * 1000.0 : 2.0 * LR_PI * 1000.0 / (lobe + 1.0);
      g_autofree char *text = write_lobe (lobe, lobes[i / 2].last_deg, i % 2 == 1);
      LrPhotometry photometry = { 0 };
      LrPhotometryError error;
      double spread_rad = NAN;

      g_assert_true ((i % 2 == 1 ? lr_photometry_read_ldt : lr_photometry_read_ies) (text, strlen (text), &photometry, &error));
      assert_near (lr_photometry_flux_lm (&photometry), flux_lm, 0.005 * flux_lm);
      g_assert_true (lr_photometry_spread_rad (&photometry, 0.5, 33.0, &spread_rad));
      assert_near (spread_rad / LR_DEG, lobes[i / 2].beam_deg, 0.02);
      if (lobe > 0.0)
        {
          g_assert_true (lr_photometry_spread_rad (&photometry, 0.1, 0.0, &spread_rad));
          assert_near (spread_rad / LR_DEG, 2.0 * acos (pow (0.1, 1.0 / lobe)) / LR_DEG, 0.06);
        }
      lr_photometry_clear (&photometry);
    }
}

typedef struct
{
  const char *name;
  double      length_m, width_m;   /* as the reader leaves them */
  bool        is_across, is_upright;
  bool        has_size;            /* expected */
  double      along_m, across_m, turn_deg;
} SizeCase;

/* Round ones by area: a circle of 1 m across is as large as a square of 0.886227 m */
static const SizeCase size_cases[] = {
  { "oblong", 1.2, 0.3, false, false, true, 1.2, 0.3, 0.0 },
  { "oblong-upright", 1.2, 0.3, false, true, true, 1.2, 0.3, -90.0 },
  { "wide", 0.3, 1.2, false, false, true, 0.3, 1.2, -90.0 },
  { "wide-upright", 0.3, 1.2, false, true, true, 0.3, 1.2, 0.0 },
  { "ldt", 1.2, 0.3, true, false, true, 1.2, 0.3, -90.0 },
  { "ldt-upright", 1.2, 0.3, true, true, true, 1.2, 0.3, -180.0 },
  { "round-1995", 0.0, -1.0, false, false, true, 0.886227, 0.886227, 0.0 },
  { "round-2002", -1.0, -1.0, false, false, true, 0.886227, 0.886227, 0.0 },
  { "round-ldt", 1.0, -1.0, true, false, true, 0.886227, 0.886227, -90.0 },
  { "ellipse", -1.0, -0.5, false, false, true, 0.886227, 0.443113, 0.0 },
  { "line", 1.2, 0.0, false, false, true, 1.2, 0.0, 0.0 },
  { "point", 0.0, 0.0, false, false, false, 0.0, 0.0, 0.0 },
  { "millimetres-as-metres", 1200.0, 300.0, false, true, false, 0.0, 0.0, -90.0 },
};

static void
test_size (gconstpointer data)
{
  const SizeCase *c = data;
  LrPhotometry photometry = { .length_m = c->length_m, .width_m = c->width_m, .is_across = c->is_across };
  double along_m = 0.0, across_m = 0.0;

  g_assert_cmpint (lr_photometry_size_m (&photometry, &along_m, &across_m), ==, c->has_size);
  assert_near (along_m, c->along_m, 1e-6);
  assert_near (across_m, c->across_m, 1e-6);
  assert_near (lr_photometry_turn_deg (&photometry, c->is_upright), c->turn_deg, 1e-9);
}

/* No light straight down: no beam to tell */
static void
test_no_spread (void)
{
  const char *text = HEAD "1 -1 1 3 1 1 2 0 0 0 1 1 1 90 120 180 0 0 100 100";
  LrPhotometry photometry = { 0 };
  LrPhotometryError error;
  double spread_rad = UNTOUCHED;

  g_assert_true (lr_photometry_read_ies (text, strlen (text), &photometry, &error));
  g_assert_false (lr_photometry_spread_rad (&photometry, 0.5, 0.0, &spread_rad));
  g_assert_cmpfloat (spread_rad, ==, UNTOUCHED);
  lr_photometry_clear (&photometry);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/photometry/good", good_cases, test_good);
  add_rows ("/photometry/bad", bad_cases, test_bad);
  g_test_add_func ("/photometry/locale", test_locale);
  g_test_add_func ("/photometry/sizes", test_sizes);
  add_rows ("/photometry/size", size_cases, test_size);
  g_test_add_func ("/photometry/lobes", test_lobes);
  g_test_add_func ("/photometry/no-spread", test_no_spread);
  return g_test_run ();
}
