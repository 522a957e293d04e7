/* text.c - the one place that makes text layouts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Metric hints and the rounding of glyphs to pixels are off, so that a word is as wide on the screen as in a picture or a PDF,
 * at every zoom; figures are tabular, so that a number that runs does not make its neighbours jump.
 */

#include "text.h"

static const cairo_user_data_key_t context_key;

/* One PangoContext lives as long as the cairo context it was made for. Turned text is laid out level and turned by cairo: its
 * measures are the same, as nothing is hinted or rounded, and Pango would look for its fonts again at every angle. */
static PangoContext *
get_context (cairo_t *cr)
{
  PangoContext *context = cairo_get_user_data (cr, &context_key);
  cairo_matrix_t matrix;

  if (context == NULL)
    {
      cairo_font_options_t *options = cairo_font_options_create ();

      cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
      cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
      cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);

      context = pango_cairo_create_context (cr);
      pango_cairo_context_set_font_options (context, options);
      pango_context_set_round_glyph_positions (context, FALSE);
      cairo_font_options_destroy (options);

      cairo_set_user_data (cr, &context_key, context, g_object_unref);
    }

  pango_cairo_update_context (cr, context);
  cairo_get_matrix (cr, &matrix);
  if (matrix.xy != 0.0 || matrix.yx != 0.0)
    pango_context_set_matrix (context, NULL);

  return context;
}

static void
add_tabular_figures (PangoLayout *layout)
{
  PangoAttrList *old = pango_layout_get_attributes (layout);
  PangoAttrList *list = old != NULL ? pango_attr_list_copy (old) : pango_attr_list_new ();

  pango_attr_list_insert_before (list, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, list);
  pango_attr_list_unref (list);
}

static PangoAlignment
to_pango_alignment (LrAlign align)
{
  static const PangoAlignment alignments[] = {
    [LR_ALIGN_LEFT] = PANGO_ALIGN_LEFT,
    [LR_ALIGN_CENTRE] = PANGO_ALIGN_CENTER,
    [LR_ALIGN_RIGHT] = PANGO_ALIGN_RIGHT,
  };

  return alignments[align];
}

/**
 * lr_text_layout:
 * @cr: the context that it will be drawn on
 * @theme: gives the font family
 * @style: size in device units, weight, wrapping
 * @text: plain text, or Pango markup if the style says so
 *
 * Returns: (transfer full): a layout; after a change of the transformation of @cr call pango_cairo_update_layout()
 */
PangoLayout *
lr_text_layout (cairo_t           *cr,
                const LrTheme     *theme,
                const LrTextStyle *style,
                const char        *text)
{
  PangoLayout *layout = pango_layout_new (get_context (cr));
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, theme->font_family);
  pango_font_description_set_absolute_size (font, style->size * PANGO_SCALE);
  pango_font_description_set_weight (font, style->weight > 0 ? (PangoWeight) style->weight : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);

  pango_layout_set_alignment (layout, to_pango_alignment (style->align));
  if (style->width > 0.0)
    {
      pango_layout_set_width (layout, (int) (style->width * PANGO_SCALE));
      if (style->wraps)
        pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
      else
        pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }

  if (style->has_markup)
    pango_layout_set_markup (layout, text, -1);
  else
    pango_layout_set_text (layout, text, -1);
  add_tabular_figures (layout);

  return layout;
}

/* Puts the current point where the layout's upper left corner goes; returns the width of the text */
static double
move_to_origin (cairo_t           *cr,
                PangoLayout       *layout,
                const LrTextStyle *style,
                double             x,
                double             y)
{
  static const double shares[] = { [LR_ALIGN_LEFT] = 0.0, [LR_ALIGN_CENTRE] = 0.5, [LR_ALIGN_RIGHT] = 1.0 };
  PangoRectangle logical;
  double width, box;

  pango_layout_get_extents (layout, NULL, &logical);
  width = (double) logical.width / PANGO_SCALE;
  box = style->width > 0.0 ? style->width : width;

  cairo_move_to (cr, x - shares[style->align] * box,
                 y - (double) pango_layout_get_baseline (layout) / PANGO_SCALE);

  return width;
}

/**
 * lr_text_draw:
 * @cr: a cairo context, its source set to the colour of the text
 * @theme: gives the font family
 * @style: how it looks; its align says which end of the baseline is given
 * @x: baseline left, centre or right
 * @y: baseline of the first line
 * @text: what to write
 *
 * Returns: the width of the text, device units
 */
double
lr_text_draw (cairo_t           *cr,
              const LrTheme     *theme,
              const LrTextStyle *style,
              double             x,
              double             y,
              const char        *text)
{
  g_autoptr (PangoLayout) layout = lr_text_layout (cr, theme, style, text);
  double width = move_to_origin (cr, layout, style, x, y);

  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);

  return width;
}

/**
 * lr_text_measure:
 * @cr: a cairo context
 * @theme: gives the font family
 * @style: how it looks
 * @text: what would be written
 * @width: (out) (optional): logical width, device units
 * @height: (out) (optional): logical height, device units
 */
void
lr_text_measure (cairo_t           *cr,
                 const LrTheme     *theme,
                 const LrTextStyle *style,
                 const char        *text,
                 double            *width,
                 double            *height)
{
  g_autoptr (PangoLayout) layout = lr_text_layout (cr, theme, style, text);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  if (width != NULL)
    *width = (double) logical.width / PANGO_SCALE;
  if (height != NULL)
    *height = (double) logical.height / PANGO_SCALE;
}

/**
 * lr_text_draw_on:
 * @cr: a cairo context, its source set to the colour of the text
 * @theme: gives the font family and the halo's width
 * @style: how it looks
 * @ground: colour of the band around the glyphs
 * @x: baseline left, centre or right
 * @y: baseline of the first line
 * @text: what to write
 *
 * As lr_text_draw(), with a band around the glyphs that breaks the lines that the text crosses.
 *
 * Returns: the width of the text, device units
 */
double
lr_text_draw_on (cairo_t           *cr,
                 const LrTheme     *theme,
                 const LrTextStyle *style,
                 LrColor            ground,
                 double             x,
                 double             y,
                 const char        *text)
{
  g_autoptr (PangoLayout) layout = lr_text_layout (cr, theme, style, text);
  double width;

  cairo_save (cr);
  move_to_origin (cr, layout, style, x, y);
  pango_cairo_layout_path (cr, layout);
  lr_theme_set_color (cr, ground, 1.0);
  cairo_set_line_width (cr, theme->halo_width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_stroke (cr);
  cairo_restore (cr);

  width = move_to_origin (cr, layout, style, x, y);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);

  return width;
}

/**
 * lr_text_draw_halo:
 * @cr: a cairo context, its source set to the colour of the text
 * @theme: gives the font family, the halo's colour and width
 * @style: how it looks
 * @x: baseline left, centre or right
 * @y: baseline of the first line
 * @text: what to write
 *
 * As lr_text_draw_on() on the floor of the room.
 *
 * Returns: the width of the text, device units
 */
double
lr_text_draw_halo (cairo_t           *cr,
                   const LrTheme     *theme,
                   const LrTextStyle *style,
                   double             x,
                   double             y,
                   const char        *text)
{
  return lr_text_draw_on (cr, theme, style, theme->room, x, y, text);
}
