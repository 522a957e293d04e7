/* date_parse.c - days and times of the day as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A day is three parts in any order that can only mean one day: with its month in words, with the year first, or with dots, day first. What
 * may be either of two days is asked for again, and a weekday must be the right one. Months and weekdays are known in English and as the
 * user's locale has them.
 */

#include "config.h"

#include "date_parse.h"

#include "plan.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MOST_NUMBERS 3
#define CENTURY 2000 /* of years in two digits */
#define LEAST_NAME 3 /* letters of a month or a weekday */

static char *
fail (GError     **error,
      const char  *format,
      const char  *text)
{
  g_autofree char *sentence = g_strdup_printf (format, text);

  g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, sentence);
  return NULL;
}

/* From 1: which of @n names, English or @format of the locale, begins with @word; 0: none */
static int
find_name (const char        *word,
           const char *const *english,
           int                n,
           const char        *format)
{
  g_autofree char *wanted = g_utf8_casefold (word, -1);

  if (g_utf8_strlen (word, -1) < LEAST_NAME)
    return 0;

  for (int i = 0; i < n; i++)
    {
      /* 2024-01-01 was a Monday */
      g_autoptr (GDateTime) like = g_date_time_new_utc (2024, n == 12 ? i + 1 : 1, n == 12 ? 1 : i + 1, 0, 0, 0.0);
      g_autofree char *local = g_date_time_format (like, format), *folded = g_utf8_casefold (local != NULL ? local : "", -1);
      g_autofree char *usual = g_utf8_casefold (english[i], -1);

      if (g_str_has_prefix (folded, wanted) || g_str_has_prefix (usual, wanted))
        return i + 1;
    }

  return 0;
}

typedef struct
{
  int      number[MOST_NUMBERS], n_digits[MOST_NUMBERS], n;
  int      month, weekday;  /* in words; 0: not */
  int      month_at;        /* how many numbers stand before it */
  gboolean has_dots;
} DateParts;

static gboolean
take_number (DateParts   *parts,
             const char **at)
{
  int number = 0, n_digits = 0;

  for (; g_ascii_isdigit (**at) && n_digits < 5; (*at)++, n_digits++)
    number = 10 * number + g_ascii_digit_value (**at);
  if (parts->n == MOST_NUMBERS || n_digits > 4)
    return FALSE;

  parts->number[parts->n] = number;
  parts->n_digits[parts->n++] = n_digits;
  for (const char *const *end = (const char *const[]) { "st", "nd", "rd", "th", NULL }; *end != NULL; end++)
    if (g_ascii_strncasecmp (*at, *end, 2) == 0 && !g_ascii_isalpha ((*at)[2]))
      *at += 2;

  return TRUE;
}

static gboolean
take_word (DateParts   *parts,
           const char **at)
{
  static const char *const months[] = {
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"
  };
  static const char *const weekdays[] = { "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday" };
  const char *end = *at;
  g_autofree char *word = NULL;
  int month, weekday;

  while (g_unichar_isalpha (g_utf8_get_char (end)))
    end = g_utf8_next_char (end);
  word = g_strndup (*at, (gsize) (end - *at));
  *at = end;
  month = find_name (word, months, 12, "%B");
  weekday = find_name (word, weekdays, 7, "%A");
  if ((month == 0 && weekday == 0) || (month > 0 && parts->month > 0))
    return FALSE;

  if (month > 0)
    {
      parts->month = month;
      parts->month_at = parts->n;
    }
  else
    parts->weekday = weekday;

  return TRUE;
}

static gboolean
take_parts (const char *text,
            DateParts  *parts)
{
  for (const char *at = text; *at != '\0';)
    {
      gunichar c = g_utf8_get_char (at);

      parts->has_dots |= c == '.';
      if (g_ascii_isdigit (*at))
        {
          if (!take_number (parts, &at))
            return FALSE;
        }
      else if (g_unichar_isalpha (c))
        {
          if (!take_word (parts, &at))
            return FALSE;
        }
      else if (g_unichar_isspace (c) || c == '.' || c == ',' || c == '/' || c == '-')
        at = g_utf8_next_char (at);
      else
        return FALSE;
    }

  return parts->n == (parts->month > 0 ? 2 : 3);
}

/* FALSE: no day, or one of two */
static gboolean
order_parts (const DateParts *parts,
             int             *year,
             int             *month,
             int             *day,
             gboolean        *is_doubtful)
{
  const int *number = parts->number;
  gboolean is_year_first = parts->n_digits[0] == 4;

  *month = parts->month;
  *is_doubtful = FALSE;
  if (parts->month > 0)
    {
      *year = is_year_first ? number[0] : number[1];
      *day = is_year_first ? number[1] : number[0];
    }
  else if (is_year_first)
    {
      *year = number[0];
      *month = number[1];
      *day = number[2];
    }
  else
    {
      gboolean is_day_first = parts->has_dots || number[0] > 12;
      /* 26-12-04 is of 2004 to some and of 2026 to others */
      gboolean may_be_year = !parts->has_dots && parts->n_digits[0] == 2 && parts->n_digits[2] == 2 && number[0] > 12 && number[2] <= 31
                             && number[0] != number[2];

      *is_doubtful = may_be_year || (!is_day_first && number[1] <= 12 && number[0] != number[1]);
      *day = is_day_first ? number[0] : number[1];
      *month = is_day_first ? number[1] : number[0];
      *year = number[2];
    }
  if (*year < 100 && !is_year_first)
    *year += CENTURY;

  return !*is_doubtful;
}

/**
 * lr_date_parse:
 * @text: as typed
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the day as the plan has it; %NULL with a sentence that says what is not understood
 */
char *
lr_date_parse (const char  *text,
               GError     **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text)), *weekday = NULL;
  DateParts parts = { .n = 0 };
  int year, month, day;
  gboolean is_doubtful;
  g_autoptr (GDateTime) date = NULL;

  if (*stripped == '\0')
    return g_steal_pointer (&stripped);
  if (!take_parts (stripped, &parts))
    return fail (error, _("“%s” is not understood as a day: write 4 Dec 2026, 4.12.2026 or 2026-12-04."), stripped);
  if (!order_parts (&parts, &year, &month, &day, &is_doubtful))
    return fail (error, _("“%s” may be either of two days: write the month in words, 4 Dec 2026, or 2026-12-04."), stripped);

  date = year >= 1 && year <= 9999 && month >= 1 && month <= 12 && day >= 1 && day <= 31 ? g_date_time_new_utc (year, month, day, 0, 0, 0.0) : NULL;
  if (date == NULL)
    return fail (error, _("“%s” is not in the calendar: there is no such day."), stripped);
  if (parts.weekday > 0 && parts.weekday != g_date_time_get_day_of_week (date))
    {
      weekday = g_date_time_format (date, "%A");
      /* Translators: the weekday that a day is, where somebody typed another */
      return fail (error, _("That day is a %s: which of the two is meant?"), weekday);
    }

  return g_strdup_printf ("%04d-%02d-%02d", year, month, day);
}

/* "am", "p.m.": 0 or 12 hours are added; -1: neither; what is not understood stays in @at */
static int
take_half (const char **at)
{
  static const struct { const char *word; int hours; } halves[] = { { "a.m.", 0 }, { "p.m.", 12 }, { "am", 0 }, { "pm", 12 } };

  for (guint i = 0; i < G_N_ELEMENTS (halves); i++)
    if (g_ascii_strncasecmp (*at, halves[i].word, strlen (halves[i].word)) == 0)
      {
        *at += strlen (halves[i].word);
        return halves[i].hours;
      }
  if (g_ascii_strncasecmp (*at, "h", 1) == 0)
    (*at)++;

  return -1;
}

static gboolean
take_clock (const char *at,
            int        *hours,
            int        *minutes)
{
  int n_digits = 0, half;

  *hours = *minutes = 0;
  for (; g_ascii_isdigit (*at) && n_digits < 5; at++, n_digits++)
    *hours = 10 * *hours + g_ascii_digit_value (*at);
  if (n_digits == 3 || n_digits == 4)
    {
      *minutes = *hours % 100;
      *hours /= 100;
    }
  else if (n_digits < 1 || n_digits > 2)
    return FALSE;
  else if (*at != '\0' && strchr (":.h", *at) != NULL && g_ascii_isdigit (at[1]) && g_ascii_isdigit (at[2]))
    {
      *minutes = 10 * g_ascii_digit_value (at[1]) + g_ascii_digit_value (at[2]);
      at += 3;
    }
  while (g_ascii_isspace (*at))
    at++;
  half = take_half (&at);
  if (half >= 0 && (*hours < 1 || *hours > 12))
    return FALSE;
  if (half >= 0)
    *hours = *hours % 12 + half;

  return *at == '\0' && *hours <= 23 && *minutes <= 59;
}

/**
 * lr_time_parse:
 * @text: as typed
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the time as the plan has it; %NULL with a sentence that says what is not understood
 */
char *
lr_time_parse (const char  *text,
               GError     **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  int hours, minutes;

  if (*stripped == '\0')
    return g_steal_pointer (&stripped);
  if (!take_clock (stripped, &hours, &minutes))
    return fail (error, _("“%s” is not understood as a time of the day: write 8:00, 08.00, 8 am or 20:30."), stripped);

  return g_strdup_printf ("%02d:%02d", hours, minutes);
}

/**
 * lr_prop_text_take:
 * @prop: a row of a text
 * @text: as typed
 * @error: return location
 *
 * Returns: (transfer full) (nullable): what is kept of it; %NULL with a sentence
 */
char *
lr_prop_text_take (const LrProp  *prop,
                   const char    *text,
                   GError       **error)
{
  switch (prop->form)
    {
    case LR_TEXT_DATE:
      return lr_date_parse (text, error);
    case LR_TEXT_TIME:
      return lr_time_parse (text, error);
    case LR_TEXT_ANY:
    default:
      return g_strdup (text);
    }
}
