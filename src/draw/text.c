/* text.c - the one place that makes text layouts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Metric hints and the rounding of glyphs to pixels are off, so that a word is as wide on the screen as in a picture or a PDF,
 * at every zoom; figures are tabular, so that a number that runs does not make its neighbours jump.
 */

#include "text.h"

#include <string.h>

/* How many kinds of surface and scale, and how many texts of each, are kept: when there are more, all are forgotten */
#define MOST_MAKERS 8
#define MOST_TEXTS 512

typedef struct
{
  LrTextStyle style;
  char       *family, *text;
} Key;

/* Lays texts out for one kind of surface at one scale. Its context is never changed: a layout made of it stays as it is. */
typedef struct
{
  cairo_font_options_t *options;  /* of the surface */
  cairo_matrix_t        matrix;   /* without its translation */
  PangoContext         *context;
  GHashTable           *layouts;  /* of Key and PangoLayout */
} Maker;

static guint
key_hash (gconstpointer data)
{
  const Key *key = data;

  return g_str_hash (key->text) ^ g_double_hash (&key->style.size) ^ (guint) key->style.weight;
}

static gboolean
key_equal (gconstpointer data,
           gconstpointer other)
{
  const Key *a = data, *b = other;

  return a->style.size == b->style.size && a->style.weight == b->style.weight && a->style.align == b->style.align
         && a->style.width == b->style.width && !a->style.wraps == !b->style.wraps
         && !a->style.has_markup == !b->style.has_markup && strcmp (a->text, b->text) == 0 && strcmp (a->family, b->family) == 0;
}

static void
key_free (gpointer data)
{
  Key *key = data;

  g_free (key->family);
  g_free (key->text);
  g_free (key);
}

static void
maker_free (gpointer data)
{
  Maker *maker = data;

  g_hash_table_unref (maker->layouts);
  g_object_unref (maker->context);
  cairo_font_options_destroy (maker->options);
  g_free (maker);
}

static void
makers_free (gpointer data)
{
  g_ptr_array_unref (data);
}

/* Of each thread its own, as Pango's fonts are */
static GPrivate makers_of_thread = G_PRIVATE_INIT (makers_free);

static PangoContext *
new_context (cairo_t              *cr,
             const cairo_matrix_t *matrix)
{
  PangoContext *context;
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);

  context = pango_cairo_create_context (cr);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);

  pango_cairo_update_context (cr, context);
  if (matrix->xx == 1.0 && matrix->yy == 1.0)
    pango_context_set_matrix (context, NULL);

  return context;
}

/* Turned text is laid out level and turned by cairo: its measures are the same, as nothing is hinted or rounded, and Pango
 * would look for its fonts again at every angle. */
static cairo_matrix_t
get_scale (cairo_t *cr)
{
  cairo_matrix_t matrix;

  cairo_get_matrix (cr, &matrix);
  if (matrix.xy != 0.0 || matrix.yx != 0.0)
    cairo_matrix_init_identity (&matrix);
  matrix.x0 = matrix.y0 = 0.0;

  return matrix;
}

static Maker *
get_maker (cairo_t *cr)
{
  cairo_matrix_t matrix = get_scale (cr);
  cairo_font_options_t *options = cairo_font_options_create ();
  GPtrArray *makers = g_private_get (&makers_of_thread);
  Maker *maker;

  if (makers == NULL)
    {
      makers = g_ptr_array_new_with_free_func (maker_free);
      g_private_set (&makers_of_thread, makers);
    }
  cairo_surface_get_font_options (cairo_get_target (cr), options);

  for (guint i = 0; i < makers->len; i++)
    {
      maker = g_ptr_array_index (makers, i);
      if (maker->matrix.xx == matrix.xx && maker->matrix.yy == matrix.yy && cairo_font_options_equal (maker->options, options))
        {
          cairo_font_options_destroy (options);
          return maker;
        }
    }

  if (makers->len >= MOST_MAKERS)
    g_ptr_array_set_size (makers, 0);
  maker = g_new0 (Maker, 1);
  maker->options = options;
  maker->matrix = matrix;
  maker->context = new_context (cr, &matrix);
  maker->layouts = g_hash_table_new_full (key_hash, key_equal, key_free, g_object_unref);
  g_ptr_array_add (makers, maker);

  return maker;
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

static PangoLayout *
new_layout (PangoContext      *context,
            const LrTheme     *theme,
            const LrTextStyle *style,
            const char        *text)
{
  PangoLayout *layout = pango_layout_new (context);
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

/**
 * lr_text_layout:
 * @cr: the context that it will be drawn on
 * @theme: gives the font family
 * @style: size in device units, weight, wrapping
 * @text: plain text, or Pango markup if the style says so
 *
 * A text that was laid out before in the same style, for the same kind of surface at the same scale, is not laid out again:
 * a label is measured and then drawn, in each frame of a drag.
 *
 * Returns: (transfer full): a layout, which others have too and nobody changes
 */
PangoLayout *
lr_text_layout (cairo_t           *cr,
                const LrTheme     *theme,
                const LrTextStyle *style,
                const char        *text)
{
  Maker *maker = get_maker (cr);
  Key key = { .style = *style, .family = (char *) theme->font_family, .text = (char *) text };
  PangoLayout *layout = g_hash_table_lookup (maker->layouts, &key);

  if (layout != NULL)
    return g_object_ref (layout);

  if (g_hash_table_size (maker->layouts) >= MOST_TEXTS)
    g_hash_table_remove_all (maker->layouts);
  layout = new_layout (maker->context, theme, style, text);
  key.family = g_strdup (key.family);
  key.text = g_strdup (key.text);
  g_hash_table_insert (maker->layouts, g_memdup2 (&key, sizeof key), g_object_ref (layout));

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
