/* strip_whole.c - the strip of a cut with its titles, its figures and the sentence that judges it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "strip.h"
#include "symbols.h"
#include "text.h"

#include <glib/gi18n-lib.h>

#define TYPE_PX       13.0
#define ROW_PX        26.0 /* of the titles */
#define UNDER_PX       8.0 /* from the pictures to the figures */

static double
put (cairo_t       *cr,
     const LrTheme *theme,
     double         size,
     int            weight,
     LrAlign        align,
     LrColor        color,
     double         x,
     double         y,
     const char    *text)
{
  const LrTextStyle style = { .size = size, .weight = weight, .align = align };

  lr_theme_set_color (cr, color, 1.0);
  return lr_text_draw (cr, theme, &style, x, y, text);
}

static void
draw_title (cairo_t               *cr,
            const LrTheme         *theme,
            const LrCameraReading *camera,
            double                 x,
            double                 width,
            double                 unit)
{
  g_autofree char *lens = lr_camera_lens_title (camera);
  double y = (ROW_PX - 9.0) * unit, tag_width, tag_height;

  lr_tag_measure (cr, theme, LR_ITEM_CAMERA, camera->item->tag, TYPE_PX * unit, &tag_width, &tag_height);
  lr_tag_draw (cr, theme, LR_ITEM_CAMERA, camera->item->tag, TYPE_PX * unit, x + 0.5 * tag_width, y - 4.7 * unit);
  if (camera->has_subject)
    put (cr, theme, TYPE_PX * unit, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, theme->ink, x + tag_width + 7.0 * unit, y,
         lr_shot_title (camera->framing.shot));
  put (cr, theme, TYPE_PX * unit, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, theme->ink2, x + width, y, lens);
}

static LrTextStyle
sentence_style (const LrStripStyle *style)
{
  return (LrTextStyle) { .size = TYPE_PX * style->unit, .width = style->width - 22.0 * style->unit, .wraps = TRUE, .has_markup = TRUE };
}

/* Height of what stands under the pictures */
static double
words_height (cairo_t            *cr,
              const LrTheme      *theme,
              const LrStrip      *strip,
              const LrStripStyle *style)
{
  const LrTextStyle text = sentence_style (style);
  g_autofree char *sentence = lr_strip_sentence (strip);
  double height = 0.0;

  if (sentence != NULL)
    lr_text_measure (cr, theme, &text, sentence, NULL, &height);
  return (UNDER_PX + 1.5 * TYPE_PX) * style->unit + height;
}

/**
 * lr_strip_height:
 * @cr: to measure text with
 * @theme: a palette
 * @strip: two cameras
 * @style: width and most height of the pictures
 *
 * Returns: the height of what lr_strip_draw() draws, device units
 */
double
lr_strip_height (cairo_t            *cr,
                 const LrTheme      *theme,
                 const LrStrip      *strip,
                 const LrStripStyle *style)
{
  LrStripPlace place;

  lr_strip_place (strip, style, &place);
  return ROW_PX * style->unit + place.height + words_height (cr, theme, strip, style);
}

/**
 * lr_strip_draw:
 * @cr: where to draw, with the strip's upper left corner at 0, 0
 * @theme: of the ground
 * @strip: two cameras
 * @style: width and most height of the pictures
 *
 * The strip with its titles, its figures and the sentence that judges the cut; the ground is the caller's.
 */
void
lr_strip_draw (cairo_t            *cr,
               const LrTheme      *theme,
               const LrStrip      *strip,
               const LrStripStyle *style)
{
  const LrTextStyle text = sentence_style (style);
  const LrRemark *remark = lr_strip_remark (strip);
  g_autofree char *figures = lr_strip_figures (strip), *sentence = lr_strip_sentence (strip);
  double unit = style->unit, x = remark != NULL ? 22.0 * unit : 0.0, y;
  LrStripPlace place;

  lr_strip_place (strip, style, &place);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    draw_title (cr, theme, strip->camera[side], place.x[side], place.width[side], unit);

  cairo_save (cr);
  cairo_translate (cr, 0.0, ROW_PX * unit);
  lr_strip_draw_pictures (cr, theme, strip, style);
  cairo_restore (cr);

  y = ROW_PX * unit + place.height + (UNDER_PX + TYPE_PX) * unit;
  put (cr, theme, TYPE_PX * unit, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, theme->ink2, x, y, figures);
  if (remark == NULL)
    return;

  lr_grade_mark_draw (cr, theme, remark->grade, 7.0 * unit, 8.0 * unit, y - 4.7 * unit);
  lr_theme_set_color (cr, theme->ink, 1.0);
  lr_text_draw (cr, theme, &text, x, y + 1.4 * TYPE_PX * unit, sentence);
}
