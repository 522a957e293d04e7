/* page_block.c - the title block
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields of ISO 7200:2004: legal owner, identification number, date of issue, sheet number, title, approval, creator
 * and document type are mandatory there and stay on the sheet when they are empty; supplementary title and revision
 * are optional.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"

#define PAD_PT        4.5
#define LABEL_Y_PT   10.4
#define VALUE_Y_PT   24.0

typedef struct
{
  const char *label;
  const char *value;
  double      width; /* parts of the block's width */
  gboolean    is_title;
} LrField;

static void
draw_field (const LrSheet *sheet,
            const LrField *field,
            double         x,
            double         y,
            double         width)
{
  const LrTextStyle style = {
    .size = field->is_title ? 9.0 : 8.0,
    .weight = field->is_title ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL,
    .width = width - 2.0 * PAD_PT + 1.0
  };

  lr_page_tag_begin (sheet, "P");
  lr_page_put (sheet, LR_PAGE_LEAST_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink2,
               x + PAD_PT, y + LABEL_Y_PT, field->label);
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, x + PAD_PT, y + VALUE_Y_PT, field->value);
  lr_page_tag_end (sheet, "P");
}

/**
 * lr_page_block_draw:
 * @sheet: the page
 * @box: where it stands
 */
void
lr_page_block_draw (const LrSheet *sheet,
                    const LrBox   *box)
{
  const LrJob *job = sheet->study->plan->job;
  g_autofree char *number = g_strdup_printf ("1/%u", lr_page_count (sheet->study, sheet->remarks, sheet->options));
  const LrField fields[] = {
    { _("Title"), job->title, 54, TRUE },
    { _("Supplementary title"), sheet->study->setup->name, 45, FALSE },
    { _("Legal owner"), job->owner, 36, FALSE },
    { _("Document type"), _("Set plan"), 24, FALSE },
    { _("Created by"), job->created_by, 24, FALSE },
    { _("Approved by"), job->approved_by, 24, FALSE },
    { _("Identification"), job->identification, 22, FALSE },
    { _("Rev."), job->revision, 12, FALSE },
    { _("Date of issue"), job->issued, 22, FALSE },
    { _("Sheet"), number, 14, FALSE }
  };
  cairo_t *cr = sheet->cr;
  double total = 0.0, x = box->x;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    total += fields[i].width;

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      double width = fields[i].width / total * box->width;

      draw_field (sheet, &fields[i], x, box->y, width);
      x += width;
      if (i + 1 < G_N_ELEMENTS (fields))
        {
          lr_theme_set_color (cr, sheet->theme->ink, 1.0);
          lr_theme_set_line (cr, sheet->theme, LR_LINE_HAIR, LR_DASH_SOLID);
          cairo_move_to (cr, x, box->y);
          cairo_line_to (cr, x, box->y + box->height);
          cairo_stroke (cr);
        }
    }

  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (cr, sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_stroke (cr);
}
