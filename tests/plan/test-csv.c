/* test-csv.c - tables for spreadsheets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "csv.h"

#include <math.h>

/* RFC 4180, section 2: its rows of rules 1, 4, 6 and 7, of which the last two need quotes */
static void
test_rfc (void)
{
  static const char *const rows[][3] = { { "aaa", "bbb", "ccc" }, { "aaa", "b\r\nbb", "ccc" }, { "aaa", "b\"bb", "ccc" } };
  g_autoptr (GString) csv = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      for (gsize j = 0; j < 3; j++)
        lr_csv_add (csv, rows[i][j]);
      lr_csv_end_row (csv);
    }
  g_assert_cmpstr (csv->str, ==, "aaa,bbb,ccc\r\naaa,\"b\r\nbb\",ccc\r\naaa,\"b\"\"bb\",ccc\r\n");
}

static void
test_fields (void)
{
  g_autoptr (GString) csv = g_string_new (NULL);

  lr_csv_add (csv, "a");
  lr_csv_add (csv, NULL);
  lr_csv_add (csv, "");
  lr_csv_add (csv, "Carrow, Wenna");
  lr_csv_add (csv, "line\n");
  lr_csv_add_number (csv, -1.5, 2);
  lr_csv_add_number (csv, NAN, 2);
  lr_csv_add_number (csv, HUGE_VAL, 2);
  lr_csv_add_number (csv, 2.0, 0);
  lr_csv_end_row (csv);
  lr_csv_add (csv, "next");
  g_assert_cmpstr (csv->str, ==, "a,,,\"Carrow, Wenna\",\"line\n\",-1.50,,,2\r\nnext");
}

/* What a spreadsheet would take for a formula stays a text: OWASP, CSV Injection, from memory. A number keeps its minus */
static void
test_formulas (void)
{
  g_autoptr (GString) csv = g_string_new (NULL);

  lr_csv_add (csv, "=1+1");
  lr_csv_add (csv, "@sum, more");
  lr_csv_add (csv, "a-b");
  lr_csv_add_number (csv, -1.0, 0);
  g_assert_cmpstr (csv->str, ==, "'=1+1,\"'@sum, more\",a-b,-1");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/csv/rfc-4180", test_rfc);
  g_test_add_func ("/csv/fields", test_fields);
  g_test_add_func ("/csv/formulas", test_formulas);

  return g_test_run ();
}
