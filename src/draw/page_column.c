/* page_column.c - the right column: when, who, frames, tables, lists
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What does not fit is first set tighter, then cut from the end of its list with a count: what is only to be known
 * before what goes wrong, long tables before short ones.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"
#include "symbols.h"
#include "viewfinder.h"

#define DAY_Y_PT      7.6
#define DAY_GAP_PT   10.0
#define TIMES_Y_PT   22.5
#define WHO_Y_PT     34.3
#define WHO_LINE_PT   8.6
#define FRAME_LABEL_PT 11.7 /* height of the line over a frame */
#define FRAME_GAP_PT  (4.0 * LR_MM_PT)
#define FRAME_UNIT    0.42 /* of the guides, pt: thinner than the page's own lines */
#define N_FRAMES      2
#define NO_BREAK_SPACE "\u00a0"
#define EN_SPACE      "\u2002"

enum { CAMERAS, LIGHTS, SOUND, ARRANGE, OPEN, CARE, N_TABLES };

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
who_markup (const LrJob *job)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < job->n_contacts; i++)
    {
      const LrContact *contact = &job->contacts[i];
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

static char *
where_text (const LrJob *job)
{
  return g_strconcat (job->place, job->place[0] != '\0' && job->address[0] != '\0' ? ", " : "", job->address, NULL);
}

/* Returns the baseline after the last line */
static double
draw_lines (const LrSheet *sheet,
            LrColor        color,
            double         size,
            double         x,
            double         y,
            double         width,
            const char    *markup)
{
  const LrTextStyle style = { .size = size, .weight = PANGO_WEIGHT_NORMAL, .has_markup = TRUE };
  double full;

  if (markup[0] == '\0')
    return y;

  /* a little smaller rather than a word on a line of its own */
  lr_text_measure (sheet->cr, sheet->theme, &style, markup, &full, NULL);
  if (full > width && full * LR_PAGE_LEAST_SIZE / size <= width)
    size *= width / full;

  lr_page_tag_begin (sheet, "P");
  y += lr_page_put_markup (sheet, size, color, x, y, width, markup);
  lr_page_tag_end (sheet, "P");
  return y;
}

/* Returns the foot of what was drawn */
static double
draw_head (const LrSheet *sheet,
           const LrBox   *box)
{
  const LrJob *job = sheet->study->plan->job;
  g_autofree char *who = who_markup (job);
  g_autofree char *where = where_text (job);
  gboolean has_times = job->time_in[0] != '\0' || job->time_roll[0] != '\0' || job->time_wrap[0] != '\0' || job->time_out[0] != '\0';
  gboolean has_day = job->date[0] != '\0' || where[0] != '\0';
  gboolean has_where = draw_day (sheet, box, where);
  /* what is not known leaves no gap */
  double y = box->y + WHO_Y_PT - (has_times ? 0.0 : TIMES_Y_PT - DAY_Y_PT) - (has_day || has_times ? 0.0 : DAY_Y_PT);

  draw_times (sheet, box);
  y = draw_lines (sheet, sheet->theme->ink, sheet->body_size, box->x, y, box->width, who);
  if (!has_where)
    {
      g_autofree char *markup = g_markup_escape_text (where, -1);

      y = draw_lines (sheet, sheet->theme->ink2, LR_PAGE_NOTE_SIZE, box->x, y, box->width, markup);
    }
  return y - WHO_LINE_PT + 4.6;
}

/* --- Frames --------------------------------------------------------------------------------------------------- */

static void
draw_frame_label (const LrSheet         *sheet,
                  const LrCameraReading *camera,
                  double                 x,
                  double                 y,
                  double                 width)
{
  g_autofree char *lens = g_strdup_printf (_("%.4g mm"), camera->item->camera.focal_m * 1000.0);
  double tag_width, tag_height, shot = 0.0;

  lr_tag_measure (sheet->cr, sheet->theme, LR_ITEM_CAMERA, camera->item->tag, 7.4, &tag_width, &tag_height);
  lr_page_tag_begin (sheet, "Caption");
  lr_tag_draw (sheet->cr, sheet->theme, LR_ITEM_CAMERA, camera->item->tag, 7.4, x + tag_width / 2.0, y - 2.7);
  if (camera->has_subject)
    shot = lr_page_put (sheet, 7.6, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, sheet->theme->ink, x + tag_width + 4.0, y,
                        lr_shot_title (camera->framing.shot));
  /* the lens stands in the table, too: it goes where both have no room */
  if (shot + tag_width + 8.0 + lr_page_text_width (sheet, sheet->body_size, PANGO_WEIGHT_NORMAL, lens) < width)
    lr_page_put (sheet, sheet->body_size, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, sheet->theme->ink2, x + width, y, lens);
  lr_page_tag_end (sheet, "Caption");
}

/* A picture of at most the height that a 16:9 one has; narrower ones stand in the middle of their place */
static double
draw_frame (const LrSheet         *sheet,
            const LrCameraReading *camera,
            double                 x,
            double                 y,
            double                 width)
{
  LrViewfinderStyle style = { .width = width, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE,
                              .unit = FRAME_UNIT };
  double height = lr_viewfinder_height (camera, width), most = width * 9.0 / 16.0;

  if (height > most)
    {
      style.width = width * most / height;
      height = lr_viewfinder_height (camera, style.width);
    }

  lr_page_tag_begin (sheet, "Figure");
  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, x + (width - style.width) / 2.0, y);
  lr_viewfinder_draw (sheet->cr, sheet->study, camera, &style);
  cairo_restore (sheet->cr);

  cairo_save (sheet->cr);
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (sheet->cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_rectangle (sheet->cr, x + (width - style.width) / 2.0, y, style.width, height);
  cairo_stroke (sheet->cr);
  cairo_restore (sheet->cr);
  lr_page_tag_end (sheet, "Figure");
  return height;
}

/* The main camera's picture and the next one's, side by side, because they will be cut against each other */
static double
draw_frames (const LrSheet *sheet,
             const LrBox   *box,
             double         y)
{
  const GArray *cameras = sheet->study->cameras;
  double width = (box->width - FRAME_GAP_PT) / N_FRAMES, lowest = 0.0;

  if (cameras->len == 0)
    return y;

  y += FRAME_LABEL_PT;
  lr_page_anchor (sheet, "frames");
  for (guint i = 0; i < MIN (cameras->len, N_FRAMES); i++)
    {
      const LrCameraReading *camera = &g_array_index (cameras, LrCameraReading, i);
      double x = box->x + i * (width + FRAME_GAP_PT);

      draw_frame_label (sheet, camera, x, y - 4.7, width);
      lowest = MAX (lowest, draw_frame (sheet, camera, x, y, width));
    }

  return y + lowest;
}

/* --- Lists ---------------------------------------------------------------------------------------------------- */

/* A request with its clock times and the plan's own tags in bold: what the reader acts on */
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

      for (guint j = 0; !is_bold && word[0] != '\0' && j < sheet->study->setup->items->len; j++)
        is_bold = g_str_equal (((const LrItem *) g_ptr_array_index (sheet->study->setup->items, j))->tag, word);

      g_string_append_printf (text, is_bold ? "%s<b>%s</b>%s" : "%s%s%s", i > 0 ? " " : "", escaped, rest);
    }

  return g_strdup (text->str);
}

static LrTable *
arrange_new (const LrSheet *sheet)
{
  const LrJob *job = sheet->study->plan->job;
  LrTable *table = lr_table_new ("arrange", _("Please arrange"));

  table->bullet = LR_BULLET_BOX;
  table->is_boxed = TRUE;
  table->note = job->client[0] != '\0' ? g_strdup_printf (_("for %s"), job->client) : NULL;
  for (char **request = job->requests; request != NULL && *request != NULL; request++)
    lr_table_add_sentence (table, LR_GRADE_FINE, request_markup (sheet, *request));

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
  while (tables[which]->n_shown > least && total_height (tables, 0.0) > room)
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
      if (total_height (tables, 0.0) <= room)
        shown = n;
    }
  table->n_shown = shown;
}

/* Ease at which all fits after as little cutting as need be */
static double
fit_tables (const LrSheet  *sheet,
            LrTable *const *tables,
            double          room)
{
  static const struct { guint which, least; } steps[] = {
    { LIGHTS, 6 }, { SOUND, 3 }, { CAMERAS, 3 }, { ARRANGE, 6 }, { CARE, 3 }, { OPEN, 4 },
    { LIGHTS, 3 }, { SOUND, 2 }, { CAMERAS, 2 }, { ARRANGE, 3 }, { CARE, 2 }, { OPEN, 2 },
    { LIGHTS, 1 }, { SOUND, 1 }, { CAMERAS, 1 }, { ARRANGE, 1 }, { CARE, 1 }, { OPEN, 1 },
    { LIGHTS, 0 }, { SOUND, 0 }, { CAMERAS, 0 }, { ARRANGE, 0 }, { CARE, 0 }, { OPEN, 0 }
  };

  for (double ease = 1.0; ease >= 0.0; ease -= 0.125)
    if (total_height (tables, ease) <= room)
      return ease;

  cut_to (tables, OPEN, MIN (sheet->remarks->n[LR_GRADE_FIX], tables[OPEN]->rows->len), room);
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    cut_to (tables, steps[i].which, steps[i].least, room);
  refill (tables, OPEN, room);
  refill (tables, CARE, room);

  return 0.0;
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
    [ARRANGE] = arrange_new (sheet), [OPEN] = open_new (sheet), [CARE] = lr_page_care_new (sheet)
  };
  double y = draw_frames (sheet, box, draw_head (sheet, box)), ease;

  for (guint i = 0; i < N_TABLES; i++)
    lr_table_wrap (sheet, tables[i], box->width);

  y += 5.0;
  ease = fit_tables (sheet, tables, box->y + box->height - y - 3.0 + space_after (tables[CARE], 0.0));
  y += 3.0 * ease;
  for (guint i = 0; i < N_TABLES; i++)
    if (tables[i]->rows->len > 0)
      {
        lr_table_draw (sheet, tables[i], box->x, y, box->width, ease);
        y += lr_table_height (tables[i], ease) + space_after (tables[i], ease);
      }

  for (guint i = 0; i < N_TABLES; i++)
    lr_table_free (tables[i]);
}
