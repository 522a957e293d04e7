/* page_column.c - the right column: when, who, frames, tables, lists
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What does not fit is first set tighter, then cut from the end of its list with a count: what is only to be known
 * before what goes wrong, long tables before short ones.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "asks.h"
#include "page_private.h"

#define DAY_Y_PT      7.6
#define DAY_GAP_PT   10.0
#define TIMES_Y_PT   22.5
#define WHO_Y_PT     34.3
#define WHO_LINE_PT   8.6
#define FRAMES_FOOT_PT 4.2
#define FOOT_PT        3.0
#define LEAST_EASE    -0.375 /* of rows and gaps: 0 is tight, 1 airy; less only where a remark would be left out */
#define NO_BREAK_SPACE "\u00a0"
#define EN_SPACE      "\u2002"

enum { CAMERAS, LIGHTS, SOUND, FOUND, ARRANGE, OPEN, CARE, N_TABLES };

/* --- When and who --------------------------------------------------------------------------------------------- */

/* "Thursday 19 February 2026"; the text itself when it is no date */
static char *
day_text (const char *date)
{
  g_autofree char *iso = g_strdup_printf ("%sT00:00:00Z", date);
  g_autoptr (GDateTime) day = g_date_time_new_from_iso8601 (iso, NULL);

  if (day == NULL)
    return g_strdup (date);

  /* Translators: day of the week, day, month, year, as g_date_time_format() takes them */
  return g_date_time_format (day, _("%A %-d %B %Y"));
}

/* The day; returns whether the place found room beside it */
static gboolean
draw_day (const LrSheet *sheet,
          const LrBox   *box,
          const char    *where)
{
  g_autofree char *day = day_text (sheet->study->plan->job->date);
  double y = box->y + DAY_Y_PT, width;

  lr_page_tag_begin (sheet, "H2");
  width = lr_page_put (sheet, LR_PAGE_DAY_SIZE, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink, box->x, y, day);
  lr_page_tag_end (sheet, "H2");

  if (width + DAY_GAP_PT + lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, where) > box->width)
    return FALSE;

  lr_page_tag_begin (sheet, "P");
  lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, sheet->theme->ink2, box->x + box->width, y, where);
  lr_page_tag_end (sheet, "P");
  return TRUE;
}

/* "08:30 in   10:00 rolling   11:30 wrap   12:30 out", spread over the column */
static void
draw_times (const LrSheet *sheet,
            const LrBox   *box)
{
  const LrJob *job = sheet->study->plan->job;
  const struct { const char *time, *word; } times[] = {
    { job->time_in, _("in") }, { job->time_roll, _("rolling") }, { job->time_wrap, _("wrap") }, { job->time_out, _("out") }
  };
  double widths[G_N_ELEMENTS (times)], total = 0.0, x = box->x, gap;
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      widths[i] = lr_page_text_width (sheet, 8.0, PANGO_WEIGHT_BOLD, times[i].time) + 4.6
                  + lr_page_text_width (sheet, 8.0, PANGO_WEIGHT_NORMAL, times[i].word);
      if (times[i].time[0] != '\0')
        {
          total += widths[i];
          n++;
        }
    }

  gap = n > 1 ? MIN ((box->width - total) / (n - 1), 18.0) : 0.0;
  lr_page_tag_begin (sheet, "P");
  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    if (times[i].time[0] != '\0')
      {
        double bold = lr_page_put (sheet, 8.0, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink, x, box->y + TIMES_Y_PT, times[i].time);

        lr_page_put (sheet, 8.0, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink, x + bold + 4.6, box->y + TIMES_Y_PT, times[i].word);
        x += widths[i] + gap;
      }
  if (n > 0 && x + lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, job->time_zone) < box->x + box->width)
    lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, sheet->theme->ink2,
                 box->x + box->width, box->y + TIMES_Y_PT, job->time_zone);
  lr_page_tag_end (sheet, "P");
}

/* (transfer full): the same in one piece */
static char *
unbroken (const char *text)
{
  g_autoptr (GString) whole = g_string_new (text);

  g_string_replace (whole, " ", NO_BREAK_SPACE, 0);
  return g_strdup (whole->str);
}

/* "Films and asks: <b>Ines Aldous</b> 01632 960144. Keys: ...": a line is broken between people, not inside one */
static char *
who_markup (const LrLocation *location)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < location->n_contacts; i++)
    {
      const LrContact *contact = &location->contacts[i];
      const char *colon = contact->role[0] != '\0' ? ":" NO_BREAK_SPACE : "";
      const char *space = contact->phone[0] != '\0' ? NO_BREAK_SPACE : "";
      g_autofree char *role = unbroken (contact->role);
      g_autofree char *name = unbroken (contact->name);
      g_autofree char *phone = unbroken (contact->phone);
      g_autofree char *markup = g_markup_printf_escaped ("%s%s<b>%s</b>%s%s.", role, colon, name, space, phone);

      g_string_append_printf (text, "%s%s", i > 0 ? EN_SPACE : "", markup);
    }

  return g_strdup (text->str);
}

/* Returns the foot of what was drawn */
static double
draw_head (const LrSheet *sheet,
           const LrBox   *box)
{
  const LrJob *job = sheet->study->plan->job;
  g_autofree char *who = who_markup (sheet->study->setup->location);
  g_autofree char *where = lr_location_dup_where (sheet->study->setup->location);
  gboolean has_times = job->time_in[0] != '\0' || job->time_roll[0] != '\0' || job->time_wrap[0] != '\0' || job->time_out[0] != '\0';
  gboolean has_day = job->date[0] != '\0' || where[0] != '\0';
  gboolean has_where = draw_day (sheet, box, where);
  /* what is not known leaves no gap */
  double y = box->y + WHO_Y_PT - (has_times ? 0.0 : TIMES_Y_PT - DAY_Y_PT) - (has_day || has_times ? 0.0 : DAY_Y_PT);

  draw_times (sheet, box);
  y = lr_page_put_paragraph (sheet, sheet->theme->ink, sheet->body_size, box->x, y, box->width, who);
  if (!has_where)
    {
      g_autofree char *markup = g_markup_escape_text (where, -1);

      y = lr_page_put_paragraph (sheet, sheet->theme->ink2, LR_PAGE_NOTE_SIZE, box->x, y, box->width, markup);
    }
  return y - WHO_LINE_PT + 4.6;
}

/* --- Lists ---------------------------------------------------------------------------------------------------- */

/* A request with its clock times and the plan's own tags in bold: what the reader acts on. "A" may be a word */
static char *
request_markup (const LrSheet *sheet,
                const char    *request)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_auto (GStrv) words = g_strsplit (request, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    {
      gsize length = strcspn (words[i], ",;.");
      g_autofree char *word = g_strndup (words[i], length);
      g_autofree char *escaped = g_markup_escape_text (word, -1);
      g_autofree char *rest = g_markup_escape_text (words[i] + length, -1);
      gboolean is_bold = g_regex_match_simple ("^[0-2]?[0-9][:.][0-5][0-9]$", word, 0, 0);

      for (guint j = 0; !is_bold && length > 1 && j < sheet->study->setup->items->len; j++)
        is_bold = g_str_equal (((const LrItem *) g_ptr_array_index (sheet->study->setup->items, j))->tag, word);

      g_string_append_printf (text, is_bold ? "%s<b>%s</b>%s" : "%s%s%s", i > 0 ? " " : "", escaped, rest);
    }

  return g_strdup (text->str);
}

/* @is_short: without the reasons, which make some rows longer by a line */
static LrTable *
arrange_new (const LrSheet *sheet,
             gboolean       is_short)
{
  const LrJob *job = sheet->study->plan->job;
  LrTable *table = lr_table_new ("arrange", _("Please arrange"));
  g_autoptr (GPtrArray) asks = lr_asks_new (sheet->study, sheet->options->units);

  table->bullet = LR_BULLET_BOX;
  table->is_boxed = TRUE;
  table->note = job->client[0] != '\0' ? g_strdup_printf (_("for %s"), job->client) : NULL;
  for (guint i = 0; i < asks->len; i++)
    {
      const LrAsk *ask = g_ptr_array_index (asks, i);
      const LrAsk bare = { .is_own = ask->is_own, .text = ask->text, .reason = (char *) "", .from = ask->from, .to = ask->to };
      g_autofree char *sentence = lr_ask_sentence (is_short ? &bare : ask);

      lr_table_add_sentence (table, LR_GRADE_FINE, request_markup (sheet, sentence));
    }

  return table;
}

static LrTable *
open_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("open", _("Still open"));

  table->bullet = LR_BULLET_GRADE;
  for (guint i = 0; i < sheet->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (sheet->remarks->all, i);

      if (remark->grade != LR_GRADE_FINE)
        lr_table_add_sentence (table, remark->grade, g_strdup (remark->markup));
    }

  return table;
}

/* --- Fitting -------------------------------------------------------------------------------------------------- */

static double
space_after (const LrTable *table,
             double         ease)
{
  return (table->is_boxed ? 4.3 : 4.0) + 3.6 * ease;
}

static double
total_height (LrTable *const *tables,
              double          ease)
{
  double height = 0.0;

  for (guint i = 0; i < N_TABLES; i++)
    if (tables[i]->rows->len > 0)
      height += lr_table_height (tables[i], ease) + space_after (tables[i], ease);

  return height;
}

static void
cut_to (LrTable *const *tables,
        guint           which,
        guint           least,
        double          room)
{
  while (tables[which]->n_shown > least && total_height (tables, LEAST_EASE) > room)
    tables[which]->n_shown--;
}

/* Gives back rows where a longer one that was cut left room for them */
static void
refill (LrTable *const *tables,
        guint           which,
        double          room)
{
  LrTable *table = tables[which];
  guint shown = table->n_shown;

  for (guint n = shown + 1; n <= table->rows->len; n++)
    {
      table->n_shown = n;
      if (total_height (tables, LEAST_EASE) <= room)
        shown = n;
    }
  table->n_shown = shown;
}

static double
largest_ease (LrTable *const *tables,
              double          room)
{
  double ease = 1.0;

  while (ease > LEAST_EASE && total_height (tables, ease) > room)
    ease -= 0.125;
  return ease;
}

/* Requests lose the reasons that cost a line of their own */
static void
shorten_requests (const LrSheet *sheet,
                  LrTable       *table,
                  double         width)
{
  LrTable *bare = arrange_new (sheet, TRUE);

  lr_table_wrap (sheet, bare, width);
  for (guint i = 0; i < table->rows->len; i++)
    {
      LrRow *row = g_ptr_array_index (table->rows, i), *other = g_ptr_array_index (bare->rows, i);

      if (other->height < row->height)
        {
          table->rows->pdata[i] = other;
          bare->rows->pdata[i] = row;
        }
    }
  lr_table_free (bare);
}

/* Ease at which all fits after as little cutting as need be */
static double
fit_tables (const LrSheet  *sheet,
            LrTable *const *tables,
            double          width,
            double          room)
{
  static const struct { guint which, least; } steps[] = {
    { OPEN, 4 }, { LIGHTS, 6 }, { SOUND, 3 }, { CAMERAS, 3 }, { OPEN, 2 }, { FOUND, 6 }, { ARRANGE, 6 }, { CARE, 6 },
    { LIGHTS, 3 }, { SOUND, 2 }, { CAMERAS, 2 }, { ARRANGE, 3 }, { FOUND, 4 }, { CARE, 2 }, { OPEN, 2 },
    { LIGHTS, 1 }, { SOUND, 1 }, { CAMERAS, 1 }, { ARRANGE, 1 }, { FOUND, 2 }, { CARE, 1 }, { OPEN, 1 },
    { LIGHTS, 0 }, { SOUND, 0 }, { CAMERAS, 0 }, { ARRANGE, 0 }, { FOUND, 0 }, { CARE, 0 }, { OPEN, 0 }
  };

  /* a row takes no more than the line that counts it */
  static const guint kept[] = { CARE, ARRANGE, CAMERAS, SOUND, LIGHTS, FOUND, OPEN };

  if (total_height (tables, LEAST_EASE) > room)
    shorten_requests (sheet, tables[ARRANGE], width);
  if (total_height (tables, LEAST_EASE) <= room)
    return largest_ease (tables, room);

  cut_to (tables, OPEN, MIN (sheet->remarks->n[LR_GRADE_FIX], tables[OPEN]->rows->len), room);
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    cut_to (tables, steps[i].which, steps[i].least, room);
  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    refill (tables, kept[i], room);

  return largest_ease (tables, room);
}

/**
 * lr_page_column_draw:
 * @sheet: the page
 * @box: where the column stands
 *
 * Draws the column from the day to the cautions, in reading order.
 */
void
lr_page_column_draw (const LrSheet *sheet,
                     const LrBox   *box)
{
  LrTable *tables[N_TABLES] = {
    [CAMERAS] = lr_page_cameras_new (sheet), [LIGHTS] = lr_page_lights_new (sheet), [SOUND] = lr_page_sound_new (sheet),
    [FOUND] = lr_page_found_new (sheet), [ARRANGE] = arrange_new (sheet, FALSE), [OPEN] = open_new (sheet), [CARE] = lr_page_care_new (sheet)
  };
  double least = FRAMES_FOOT_PT + FOOT_PT - space_after (tables[CARE], LEAST_EASE), y = draw_head (sheet, box), room, ease;

  for (guint i = 0; i < N_TABLES; i++)
    lr_table_wrap (sheet, tables[i], box->width);

  room = box->y + box->height - lr_page_frames_foot (sheet, box, y) - least;
  y = lr_page_frames_draw (sheet, box, y, total_height (tables, LEAST_EASE) - room);
  ease = fit_tables (sheet, tables, box->width, box->y + box->height - y - least);
  y += FRAMES_FOOT_PT;
  y += 3.0 * MAX (ease, 0.0);
  for (guint i = 0; i < N_TABLES; i++)
    if (tables[i]->rows->len > 0)
      {
        lr_table_draw (sheet, tables[i], box->x, y, box->width, ease);
        y += lr_table_height (tables[i], ease) + space_after (tables[i], ease);
      }

  for (guint i = 0; i < N_TABLES; i++)
    lr_table_free (tables[i]);
}
