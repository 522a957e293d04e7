/* test-calendar.c - the call times as a calendar file, read as RFC 5545 says
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "calendar.h"
#include "ical.h"

#include <string.h>

#define STAMP_S 885193200 /* 1998-01-19 07:00 UTC: RFC 5545, 3.3.5 has it as an example */

static void
set_job (LrPlan     **plan,
         const char  *key,
         const char  *text)
{
  LrPlan *next = lr_plan_set_job (*plan, key, text, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static char *
text_of (const LrPlan  *plan,
         GError       **error)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_calendar_text (study, STAMP_S, error);
}

/* Content lines as a reader has them: RFC 5545, 3.1: at most 75 octets before the break, which is CR LF; a break and a space are nothing.
 * Each octet line is whole UTF-8: "simple implementations" may cut characters, this one does not */
static char **
unfold (const char *file)
{
  g_auto (GStrv) lines = g_strsplit (file, "\r\n", -1);
  g_autoptr (GPtrArray) whole = g_ptr_array_new ();
  guint n = g_strv_length (lines);

  g_assert_true (g_str_has_suffix (file, "\r\n"));
  for (guint i = 0; i + 1 < n; i++)
    {
      g_assert_cmpuint (strlen (lines[i]), <=, 75);
      g_assert_null (strpbrk (lines[i], "\r\n"));
      g_assert_true (g_utf8_validate (lines[i], -1, NULL));
      if (lines[i][0] == ' ')
        {
          char *before = g_ptr_array_steal_index (whole, whole->len - 1);

          g_ptr_array_add (whole, g_strconcat (before, lines[i] + 1, NULL));
          g_free (before);
        }
      else
        g_ptr_array_add (whole, g_strdup (lines[i]));
    }
  g_ptr_array_add (whole, NULL);
  return (char **) g_ptr_array_steal (whole, NULL);
}

/* (nullable): the value of the property in the event whose summary begins so */
static char *
find (char       **lines,
      const char  *event,
      const char  *property)
{
  g_autofree char *summary = g_strconcat ("SUMMARY:", event, NULL), *prefix = g_strconcat (property, ":", NULL);

  for (guint begin = 0, i = 0; lines[i] != NULL; i++)
    {
      if (strcmp (lines[i], "BEGIN:VEVENT") == 0)
        begin = i;
      if (!g_str_has_prefix (lines[i], summary))
        continue;
      for (guint k = begin; strcmp (lines[k], "END:VEVENT") != 0; k++)
        if (g_str_has_prefix (lines[k], prefix))
          return g_strdup (lines[k] + strlen (prefix));
    }
  return NULL;
}

static LrPlan *
new_york (void)
{
  LrPlan *plan = fixture_interview ();

  set_job (&plan, "title", "Sails, ropes; and a \\ in the name");
  set_job (&plan, "date", "1997-07-14");
  set_job (&plan, "time-roll", "13:30");
  set_job (&plan, "time-zone", "America/New_York");
  return plan;
}

/* RFC 5545, 3.3.5: July 14, 1997, 1:30 PM in New York City, in its three forms */
static void
test_forms (void)
{
  g_autoptr (LrPlan) plan = new_york ();
  g_autofree char *utc = text_of (plan, NULL), *floating = NULL, *start = NULL, *local = NULL, *stamp = NULL, *end = NULL;
  g_auto (GStrv) lines = unfold (utc), floating_lines = NULL;

  start = find (lines, "Rolling", "DTSTART");
  stamp = find (lines, "Rolling", "DTSTAMP");
  end = find (lines, "Rolling", "DTEND");
  g_assert_cmpstr (start, ==, "19970714T173000Z");
  g_assert_cmpstr (stamp, ==, "19980119T070000Z");
  g_assert_null (end); /* 3.6.1: it ends when it begins */

  set_job (&plan, "time-zone", "");
  floating = text_of (plan, NULL);
  floating_lines = unfold (floating);
  local = find (floating_lines, "Rolling", "DTSTART");
  g_assert_cmpstr (local, ==, "19970714T133000");
}

/* By the zone's own clock in summer and winter; IANA: Central European Summer Time is two hours ahead, from the last Sunday of March to
 * that of October (Directive 2000/84/EC) */
static void
test_summer (void)
{
  static const struct { const char *day, *start; } rows[] = {
    { "2026-07-01", "20260701T080000Z" }, { "2026-12-01", "20261201T090000Z" }, { "2026-03-29", "20260329T080000Z" },
    { "2026-10-25", "20261025T090000Z" },
  };
  g_autoptr (LrPlan) plan = new_york ();

  set_job (&plan, "time-zone", "Europe/Berlin");
  set_job (&plan, "time-roll", "10:00");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = NULL, *start = NULL;
      g_auto (GStrv) lines = NULL;

      set_job (&plan, "date", rows[i].day);
      text = text_of (plan, NULL);
      lines = unfold (text);
      start = find (lines, "Rolling", "DTSTART");
      g_assert_cmpstr (start, ==, rows[i].start);
    }
}

/* RFC 5545, 3.3.11: its example; 3.1: unfolded it is what it was */
static void
test_text (void)
{
  g_autofree char *example = lr_ical_escape ("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.");
  g_autofree char *marks = lr_ical_escape ("a\\b;c,d:e\"f\r\ng\x01h");
  g_autoptr (GString) file = g_string_new (NULL), expected = g_string_new ("X:");
  g_auto (GStrv) lines = NULL;

  g_assert_cmpstr (example, ==, "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
  g_assert_cmpstr (marks, ==, "a\\\\b\\;c\\,d:e\"f\\ngh");

  for (int i = 0; i < 200; i++)
    g_string_append (expected, i % 3 == 0 ? "€" : i % 3 == 1 ? "é" : "𝄞");
  lr_ical_add (file, "X", expected->str + 2);
  lines = unfold (file->str);
  g_assert_cmpuint (g_strv_length (lines), ==, 1);
  g_assert_cmpstr (lines[0], ==, expected->str);
  for (gsize length = 60; length < 240; length++)
    {
      g_autofree char *value = g_strnfill (length, 'x'), *line = g_strconcat ("X:", value, NULL);
      g_autoptr (GString) folded = g_string_new (NULL);
      g_auto (GStrv) whole = NULL;

      lr_ical_add (folded, "X", value);
      whole = unfold (folded->str);
      g_assert_cmpuint (g_strv_length (whole), ==, 1);
      g_assert_cmpstr (whole[0], ==, line);
    }
}

/* RFC 5545, 3.6 and 3.6.1: what a calendar and an event must have, once; the last call ends nothing, others end at the next */
static void
test_file (void)
{
  g_autoptr (LrPlan) plan = new_york ();
  g_autoptr (GHashTable) uids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *text = NULL, *start = NULL, *end = NULL, *summary = NULL, *out_end = NULL;
  g_auto (GStrv) lines = NULL;
  guint n_events = 0;

  set_job (&plan, "time-in", "22:00");
  set_job (&plan, "time-roll", "23:30");
  set_job (&plan, "time-wrap", "00:30");
  set_job (&plan, "time-out", "01:30");
  {
    LrPlan *next = lr_plan_set_location_text (plan, "access", "lift at the back\nring twice", NULL);

    g_assert_nonnull (next);
    lr_plan_unref (plan);
    plan = next;
  }
  text = text_of (plan, NULL);
  lines = unfold (text);
  g_assert_cmpstr (lines[0], ==, "BEGIN:VCALENDAR");
  g_assert_cmpstr (lines[1], ==, "VERSION:2.0");
  g_assert_true (g_str_has_prefix (lines[2], "PRODID:"));
  g_assert_cmpstr (lines[g_strv_length (lines) - 1], ==, "END:VCALENDAR");
  for (guint i = 0; lines[i] != NULL; i++)
    {
      n_events += strcmp (lines[i], "BEGIN:VEVENT") == 0;
      if (g_str_has_prefix (lines[i], "UID:"))
        g_assert_true (g_hash_table_add (uids, g_strdup (lines[i])));
    }
  g_assert_cmpuint (n_events, ==, 4);
  g_assert_cmpuint (g_hash_table_size (uids), ==, 4);

  /* past midnight is the next day: by New York's summer clock four hours behind */
  start = find (lines, "Wrap", "DTSTART");
  end = find (lines, "Wrap", "DTEND");
  out_end = find (lines, "Out", "DTEND");
  summary = find (lines, "Wrap", "SUMMARY");
  g_assert_cmpstr (start, ==, "19970715T043000Z");
  g_assert_cmpstr (end, ==, "19970715T053000Z");
  g_assert_null (out_end);
  g_assert_cmpstr (summary, ==, "Wrap: Sails\\, ropes\\; and a \\\\ in the name");
}

/* 3.8.4.7: the same event again has the same UID, also when it was put off */
static void
test_uid (void)
{
  g_autoptr (LrPlan) plan = new_york ();
  g_autofree char *before = text_of (plan, NULL), *after = NULL, *other = NULL, *uid = NULL, *later = NULL, *other_uid = NULL;
  g_auto (GStrv) lines = unfold (before), after_lines = NULL, other_lines = NULL;

  set_job (&plan, "date", "1997-07-21");
  set_job (&plan, "time-roll", "15:00");
  after = text_of (plan, NULL);
  after_lines = unfold (after);
  set_job (&plan, "title", "Another job");
  other = text_of (plan, NULL);
  other_lines = unfold (other);
  uid = find (lines, "Rolling", "UID");
  later = find (after_lines, "Rolling", "UID");
  other_uid = find (other_lines, "Rolling", "UID");
  g_assert_cmpstr (uid, ==, later);
  g_assert_cmpstr (uid, !=, other_uid);
}

static void
test_refused (void)
{
  static const struct { const char *key, *text; } rows[] = { { "date", "" }, { "time-roll", "" }, { "time-zone", "Nowhere/At_All" } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (LrPlan) plan = new_york ();
      g_autoptr (GError) error = NULL;

      set_job (&plan, rows[i].key, rows[i].text);
      g_assert_null (text_of (plan, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/calendar/forms", test_forms);
  g_test_add_func ("/calendar/summer", test_summer);
  g_test_add_func ("/calendar/text", test_text);
  g_test_add_func ("/calendar/file", test_file);
  g_test_add_func ("/calendar/uid", test_uid);
  g_test_add_func ("/calendar/refused", test_refused);

  return g_test_run ();
}
