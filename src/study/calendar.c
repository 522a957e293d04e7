/* calendar.c - the call times of a job as a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One event for each call time, up to the next; the last is a moment. Times are given in universal time, which every
 * calendar shows by its own clock, and needs no description of the zone; a job without a time zone has times that hold
 * by whatever clock they are read ("floating", RFC 5545, 3.3.5).
 *
 * An event that is imported again replaces the one before it if it has the same UID. It is made from what a job is called, not from
 * when it is, so that one that is put off moves.
 */

#include "config.h"

#include "calendar.h"

#include "ical.h"
#include "run_sheet.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

#define N_CALLS 4
#define UID_DIGITS 32

typedef struct
{
  const LrStudy *study;
  const LrJob   *job;
  const LrLocation *location;
  GTimeZone     *zone;      /* NULL: floating */
  int            year, month, day;
  int            minutes[N_CALLS]; /* -1: not told */
  LrRunSheet    *run;
  char          *stamp, *uid;
  GString       *file;
} Calendar;

static const char *const words[N_CALLS] = { "in", "roll", "wrap", "out" };

/* Translators: what a call time is for; the job's title */
static const char *const titles[N_CALLS] = { N_("Load-in: %s"), N_("Rolling: %s"), N_("Wrap: %s"), N_("Out: %s") };

static gboolean
refuse (GError     **error,
        const char  *sentence)
{
  g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, sentence);
  return FALSE;
}

static gboolean
read_day (Calendar  *calendar,
          GError   **error)
{
  const LrJob *job = calendar->job;
  gboolean has_any = FALSE;

  if (sscanf (job->date, "%4d-%2d-%2d", &calendar->year, &calendar->month, &calendar->day) != 3)
    return refuse (error, _("The job has no day yet. A calendar needs one: type it under Date in the job."));
  lr_job_minutes (job, &calendar->minutes[0], &calendar->minutes[1], &calendar->minutes[2], &calendar->minutes[3]);
  for (int i = 0; i < N_CALLS; i++)
    has_any |= calendar->minutes[i] >= 0;
  if (!has_any)
    return refuse (error, _("The job has no times yet. A calendar needs one of in, rolling, wrap and out: type it in the job."));

  if (job->time_zone[0] != '\0')
    calendar->zone = g_time_zone_new_identifier (job->time_zone);
  if (job->time_zone[0] != '\0' && calendar->zone == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("The time zone “%s” is not known here."), job->time_zone);
      return FALSE;
    }

  return TRUE;
}

/* By the clocks of the place, days counted on from the job's */
static char *
time_text (const Calendar *calendar,
           int             minute)
{
  g_autoptr (GDateTime) midnight = g_date_time_new_utc (calendar->year, calendar->month, calendar->day, 0, 0, 0.0);
  g_autoptr (GDateTime) clock = g_date_time_add_minutes (midnight, minute);
  g_autoptr (GDateTime) placed = NULL;

  if (calendar->zone == NULL)
    return g_date_time_format (clock, "%Y%m%dT%H%M%S");

  placed = g_date_time_new (calendar->zone, g_date_time_get_year (clock), g_date_time_get_month (clock), g_date_time_get_day_of_month (clock),
                            g_date_time_get_hour (clock), g_date_time_get_minute (clock), 0.0);
  return lr_ical_utc (g_date_time_to_unix (placed));
}

static char *
make_uid (const LrJob      *job,
          const LrLocation *location)
{
  g_autofree char *whole = g_strjoin ("\n", job->title, job->client, job->owner, job->identification, location->name, NULL);
  char *uid = g_compute_checksum_for_string (G_CHECKSUM_SHA256, whole, -1);

  uid[UID_DIGITS] = '\0';
  return uid;
}

/* The call after this one that has a time, or N_CALLS */
static int
next_call (const Calendar *calendar,
           int             call)
{
  int next = call + 1;

  while (next < N_CALLS && calendar->minutes[next] < 0)
    next++;
  return next;
}

/* Who to call, how to get in, and the steps from here that fit before the next call */
static char *
describe (const Calendar *calendar,
          int             call)
{
  const LrLocation *location = calendar->location;
  GString *text = g_string_new (NULL);
  int next = next_call (calendar, call), end = next < N_CALLS ? calendar->minutes[next] : INT_MAX, over = 0;

  if (location->access[0] != '\0')
    g_string_append_printf (text, _("Access: %s\n"), location->access);
  for (gsize i = 0; i < location->n_contacts; i++)
    {
      const LrContact *contact = &location->contacts[i];

      g_string_append_printf (text, "%s%s%s %s\n", contact->role, contact->role[0] != '\0' ? ": " : "", contact->name, contact->phone);
    }
  for (guint i = 0; i < calendar->run->steps->len; i++)
    {
      const LrRunStep *step = g_ptr_array_index (calendar->run->steps, i);
      g_autofree char *from = lr_minute_format (step->from);

      if ((int) step->part != call || step->from < 0)
        continue;
      over = MAX (over, end < INT_MAX ? step->to - end : 0);
      if (step->from < end)
        g_string_append_printf (text, "%s %s\n", from, step->title);
    }
  if (over > 0)
    g_string_append_printf (text, ngettext ("This takes %d minute longer than there is.\n", "This takes %d minutes longer than there are.\n",
                                            (gulong) over), over);
  if (text->len > 0)
    g_string_truncate (text, text->len - 1);
  return g_string_free (text, FALSE);
}

static void
add_contacts (const Calendar *calendar)
{
  for (gsize i = 0; i < calendar->location->n_contacts; i++)
    {
      const LrContact *contact = &calendar->location->contacts[i];
      const char *parts[] = { contact->name, contact->role, contact->phone };
      g_autoptr (GString) text = g_string_new (NULL);

      for (gsize k = 0; k < G_N_ELEMENTS (parts); k++)
        if (parts[k][0] != '\0')
          g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", parts[k]);
      lr_ical_add_text (calendar->file, "CONTACT", text->str);
    }
}

/* RFC 5545, 3.8.1.6: latitude; longitude, north and east positive */
static void
add_place (const Calendar *calendar)
{
  const LrLocation *location = calendar->location;
  g_autofree char *place = lr_location_dup_where (location);
  char latitude[G_ASCII_DTOSTR_BUF_SIZE], longitude[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *geo = NULL;

  lr_ical_add_text (calendar->file, "LOCATION", place);
  if (!lr_location_is_on_map (location))
    return;
  g_ascii_formatd (latitude, sizeof latitude, "%.6f", location->latitude_deg);
  g_ascii_formatd (longitude, sizeof longitude, "%.6f", location->longitude_deg);
  geo = g_strconcat (latitude, ";", longitude, NULL);
  lr_ical_add (calendar->file, "GEO", geo);
}

static void
add_event (const Calendar *calendar,
           int             call)
{
  const char *title = calendar->job->title[0] != '\0' ? calendar->job->title : calendar->study->setup->name;
  g_autofree char *from = time_text (calendar, calendar->minutes[call]), *uid = g_strdup_printf ("%s-%s", calendar->uid, words[call]);
  g_autofree char *description = describe (calendar, call);
  g_auto (GStrv) pieces = g_strsplit (_(titles[call]), "%s", 2);
  g_autofree char *summary = g_strconcat (pieces[0], title, pieces[1], NULL);
  int next = next_call (calendar, call);

  lr_ical_add (calendar->file, "BEGIN", "VEVENT");
  lr_ical_add (calendar->file, "UID", uid);
  lr_ical_add (calendar->file, "DTSTAMP", calendar->stamp);
  lr_ical_add (calendar->file, "DTSTART", from);
  /* 3.8.2.2: later than the start */
  if (next < N_CALLS && calendar->minutes[next] > calendar->minutes[call])
    {
      g_autofree char *to = time_text (calendar, calendar->minutes[next]);

      lr_ical_add (calendar->file, "DTEND", to);
    }
  lr_ical_add_text (calendar->file, "SUMMARY", summary);
  add_place (calendar);
  add_contacts (calendar);
  lr_ical_add_text (calendar->file, "DESCRIPTION", description);
  lr_ical_add (calendar->file, "END", "VEVENT");
}

static void
fill (Calendar *calendar)
{
  lr_ical_add (calendar->file, "BEGIN", "VCALENDAR");
  lr_ical_add (calendar->file, "VERSION", "2.0");
  lr_ical_add (calendar->file, "PRODID", "-//Lookroom//Lookroom " LR_VERSION "//EN");
  for (int i = 0; i < N_CALLS; i++)
    if (calendar->minutes[i] >= 0)
      add_event (calendar, i);
  lr_ical_add (calendar->file, "END", "VCALENDAR");
}

/**
 * lr_calendar_text:
 * @study: a study
 * @stamp_unix_s: when what it says was last changed [s since 1970]
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the file: in, rolling, wrap and out, as far as they are told
 */
char *
lr_calendar_text (const LrStudy  *study,
                  gint64          stamp_unix_s,
                  GError        **error)
{
  Calendar calendar = { .study = study, .job = study->plan->job, .location = study->setup->location };
  char *text = NULL;

  if (read_day (&calendar, error))
    {
      calendar.run = lr_run_sheet_new (study);
      calendar.stamp = lr_ical_utc (stamp_unix_s);
      calendar.uid = make_uid (calendar.job, calendar.location);
      calendar.file = g_string_new (NULL);
      fill (&calendar);
      text = g_string_free (calendar.file, FALSE);
      lr_run_sheet_free (calendar.run);
      g_free (calendar.stamp);
      g_free (calendar.uid);
    }
  g_clear_pointer (&calendar.zone, g_time_zone_unref);
  return text;
}
