/* further.c - which lists may follow the plan, sheets and their number
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LrSheets    flag;
  const char *word;             /* on the command line */
  const char *title;            /* to be translated */
  void      (*add) (LrFlow *flow);
} Further;

/* In the order in which they follow the plan */
static const Further lists[] = {
  { LR_SHEET_RUN, "run", N_("Run sheet"), lr_further_run },
  { LR_SHEET_CHECKS, "checks", N_("Pre-roll checks"), lr_further_checks },
  { LR_SHEET_QUESTIONS, "questions", N_("Questions"), lr_further_questions },
  { LR_SHEET_TAPE, "tape", N_("Tape positions"), lr_further_tape },
  { LR_SHEET_GRID, "grid", N_("Floor grid"), lr_further_grid },
  { LR_SHEET_PACKING, "packing", N_("Packing list"), lr_further_packing },
};

/**
 * lr_sheet_info:
 * @index: from 0
 * @word: (out) (optional): how it is called on the command line
 * @title: (out) (optional): translated
 *
 * Returns: the flag of a list that may follow the plan; 0: there are no more
 */
guint
lr_sheet_info (guint        index,
               const char **word,
               const char **title)
{
  if (index >= G_N_ELEMENTS (lists))
    return 0;

  if (word != NULL)
    *word = lists[index].word;
  if (title != NULL)
    *title = _(lists[index].title);
  return lists[index].flag;
}

static LrFlow *
make_flow (const LrSheet *sheet)
{
  LrFlow *flow = lr_flow_new (sheet);

  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    if ((sheet->options->sheets & lists[i].flag) != 0)
      lists[i].add (flow);
  lr_flow_break (flow);
  return flow;
}

/* A flow on nothing: to be counted and measured */
typedef struct
{
  cairo_surface_t *surface;
  LrSheet          sheet;
  LrFlow          *flow;
} Trial;

static void
trial_init (Trial               *trial,
            const LrStudy       *study,
            const LrRemarks     *remarks,
            const LrPageOptions *options)
{
  trial->surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  trial->sheet = (LrSheet) { cairo_create (trial->surface), lr_theme_get (LR_THEME_PAGE), study, remarks, options, LR_PAGE_BODY_SIZE };
  trial->flow = make_flow (&trial->sheet);
}

static void
trial_clear (Trial *trial)
{
  lr_flow_free (trial->flow);
  cairo_destroy (trial->sheet.cr);
  cairo_surface_destroy (trial->surface);
}

/**
 * lr_page_sheets_new:
 * @study: of the plan
 * @remarks: on it
 * @options: paper, units, which lists go along
 *
 * Returns: (transfer full) (element-type LrPageSheet): the sheets, the plan's first
 */
GArray *
lr_page_sheets_new (const LrStudy       *study,
                    const LrRemarks     *remarks,
                    const LrPageOptions *options)
{
  GArray *sheets = g_array_new (FALSE, TRUE, sizeof (LrPageSheet));
  LrPageSheet first = { .title = g_strdup (_("Set plan")), .begins = TRUE };
  double longer, shorter;
  Trial trial;

  lr_paper_size_pt (options->paper, &longer, &shorter);
  g_array_set_clear_func (sheets, (GDestroyNotify) lr_page_sheet_clear);
  first.width_pt = longer;
  first.height_pt = shorter;
  g_array_append_val (sheets, first);
  if (options->sheets == 0)
    return sheets;

  trial_init (&trial, study, remarks, options);
  for (guint i = 0; i < trial.flow->sheets->len; i++)
    {
      const LrFlowSheet *sheet = &g_array_index (trial.flow->sheets, LrFlowSheet, i);
      LrPageSheet next = {
        .title = g_strdup (sheet->title->text),
        .begins = !sheet->goes_on,
        .width_pt = sheet->is_lying ? longer : shorter,
        .height_pt = sheet->is_lying ? shorter : longer,
      };

      g_array_append_val (sheets, next);
    }
  trial_clear (&trial);
  return sheets;
}

/**
 * lr_page_sheet_clear:
 * @sheet: what is known of a sheet
 *
 * Frees what it holds.
 */
void
lr_page_sheet_clear (LrPageSheet *sheet)
{
  g_clear_pointer (&sheet->title, g_free);
}

/**
 * lr_page_count:
 * @study: of the plan
 * @remarks: on it
 * @options: paper, units, which lists go along
 *
 * Returns: how many sheets there are
 */
guint
lr_page_count (const LrStudy       *study,
               const LrRemarks     *remarks,
               const LrPageOptions *options)
{
  g_autoptr (GArray) sheets = lr_page_sheets_new (study, remarks, options);

  return sheets->len;
}

/**
 * lr_page_draw_sheet:
 * @cr: a cairo context whose unit is a point
 * @study: of the plan
 * @remarks: on it
 * @options: paper, units, which lists go along
 * @index: of a sheet, from 0, which is the plan's
 *
 * Paints the sheet with its upper left corner at 0, 0.
 */
void
lr_page_draw_sheet (cairo_t             *cr,
                    const LrStudy       *study,
                    const LrRemarks     *remarks,
                    const LrPageOptions *options,
                    guint                index)
{
  const LrSheet sheet = { cr, lr_theme_get (LR_THEME_PAGE), study, remarks, options, LR_PAGE_BODY_SIZE };
  g_autoptr (LrFlow) flow = NULL;

  if (index == 0)
    {
      lr_page_draw (cr, study, remarks, options);
      return;
    }
  flow = make_flow (&sheet);
  if (index <= flow->sheets->len)
    lr_flow_draw (flow, index - 1, flow->sheets->len + 1, 1);
}
