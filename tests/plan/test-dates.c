/* test-dates.c - days and times of the day as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Weekdays: 2026-12-04 is a Friday and 2024-02-29 a Thursday, as `date -d` has them.
 */

#include "plan-test.h"

#include "date_parse.h"

#include <locale.h>

typedef struct { const char *text, *kept; } Case; /* NULL: refused */

static const Case days[] = {
  { "", "" }, { "2026-12-04", "2026-12-04" }, { "4 Dec 2026", "2026-12-04" }, { " 4. December 2026 ", "2026-12-04" }, { "4.12.2026", "2026-12-04" },
  { "04.12.26", "2026-12-04" }, { "4. 12. 2026", "2026-12-04" }, { "Dec 4, 2026", "2026-12-04" }, { "December 4th, 2026", "2026-12-04" },
  { "Fri 4 dec 2026", "2026-12-04" }, { "Friday, 4 Dec 2026", "2026-12-04" }, { "2026 Dec 4", "2026-12-04" }, { "2026/12/4", "2026-12-04" },
  { "13/12/2026", "2026-12-13" }, { "12/13/2026", "2026-12-13" }, { "5/5/2026", "2026-05-05" }, { "29 Feb 2024", "2024-02-29" },
  { "4/12/2026", NULL }, { "26-12-04", NULL }, { "26.12.04", "2004-12-26" }, { "26/12/99", "2099-12-26" },
  { "Mon 4 Dec 2026", NULL }, { "29 Feb 2026", NULL }, { "31.4.2026", NULL }, { "4 Dec", NULL }, { "tomorrow", NULL },
  { "4 Dec 2026 at 8", NULL }, { "20261204", NULL }, { "4:12:2026", NULL }, { "0.12.2026", NULL }, { "4.13.2026", NULL },
};

static const Case times[] = {
  { "", "" }, { "08:00", "08:00" }, { "8:00", "08:00" }, { "8", "08:00" }, { "08.00", "08:00" }, { "8 am", "08:00" }, { "8am", "08:00" },
  { "8:30 p.m.", "20:30" }, { "12 am", "00:00" }, { "12 pm", "12:00" }, { "0800", "08:00" }, { "830", "08:30" }, { "20h15", "20:15" }, { "8 h", "08:00" },
  { "23:59", "23:59" }, { "24:00", NULL }, { "13 pm", NULL }, { "0 am", NULL }, { "8:60", NULL }, { "8:5", NULL }, { "soon", NULL }, { "8:00x", NULL },
  { "12345", NULL },
};

static void
check (const Case *cases,
       gsize       n,
       char     *(*parse) (const char *, GError **))
{
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *kept = parse (cases[i].text, &error);

      g_test_message ("“%s”", cases[i].text);
      g_assert_cmpstr (kept, ==, cases[i].kept);
      if (kept == NULL)
        g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
      else
        g_assert_no_error (error);
    }
}

static void
test_days (void)
{
  check (days, G_N_ELEMENTS (days), lr_date_parse);
}

static void
test_times (void)
{
  check (times, G_N_ELEMENTS (times), lr_time_parse);
}

/* What is written in the plan's own form comes back as it is */
static void
test_round_trip (void)
{
  for (int i = 0; i < 366; i++)
    {
      g_autoptr (GDateTime) first = g_date_time_new_utc (2024, 1, 1, 0, 0, 0.0), day = g_date_time_add_days (first, i);
      g_autofree char *text = g_date_time_format (day, "%Y-%m-%d"), *words = g_date_time_format (day, "%a %-d %b %Y");
      g_autofree char *kept = lr_date_parse (text, NULL), *of_words = lr_date_parse (words, NULL);

      g_assert_cmpstr (kept, ==, text);
      g_assert_cmpstr (of_words, ==, text);
    }
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/dates/days", test_days);
  g_test_add_func ("/dates/times", test_times);
  g_test_add_func ("/dates/round-trip", test_round_trip);

  return g_test_run ();
}
