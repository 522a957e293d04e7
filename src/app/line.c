/* line.c - text that changes with every frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A label asks for a new size whenever its text is another, and the window then measures everything that stands round it.
 * This one asks for a size that does not depend on its text, so that a figure that runs costs its own drawing and no more,
 * and nothing beside it moves. What does not fit ends in an ellipsis. One that is to be read whole ("fits") is as high as its text, and
 * asks for a new size only when that takes another number of lines.
 */

#include "line.h"

#include <string.h>

struct _LrLine
{
  GtkWidget    parent_instance;

  char        *text;      /* as given */
  char        *short_text;/* instead, where there is no room for it; may be NULL */
  gboolean     is_short;  /* what the layout holds */
  gboolean     is_markup;
  PangoLayout *layout;    /* made when first needed, and anew for another font */
  int          lines, full_chars, width_chars;
  gboolean     fits;      /* as many lines as its text takes, lines at most */
  int          fitted;    /* so many at the width that it was measured for last; 0: not yet */
  int          fitted_px; /* that width */
  float        xalign;
};

enum
{
  PROP_LINES = 1,
  PROP_FULL_CHARS,
  PROP_WIDTH_CHARS,
  PROP_FITS,
  PROP_XALIGN,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (LrLine, lr_line, GTK_TYPE_WIDGET)

/* Figures stand in <b>: "f/2.8" is not broken after its stroke */
static char *
keep_figures_whole (const char *markup)
{
  g_auto (GStrv) parts = g_strsplit (markup, "<b>", -1);
  g_autofree char *opened = g_strjoinv ("<span weight=\"bold\" allow_breaks=\"false\">", parts);
  g_auto (GStrv) ends = g_strsplit (opened, "</b>", -1);

  return g_strjoinv ("</span>", ends);
}

/* Figures of one width, whatever the markup says besides */
static void
fill_layout (LrLine *self)
{
  const char *text = self->is_short ? self->short_text : self->text;
  g_autoptr (PangoAttrList) all = pango_attr_list_new ();

  if (self->is_markup)
    {
      g_autoptr (PangoAttrList) attributes = NULL;
      g_autofree char *plain = NULL, *whole = keep_figures_whole (text);

      if (pango_parse_markup (whole, -1, 0, &attributes, &plain, NULL, NULL))
        {
          pango_layout_set_text (self->layout, plain, -1);
          pango_attr_list_splice (all, attributes, 0, (int) strlen (plain));
        }
      else
        pango_layout_set_text (self->layout, text, -1);
    }
  else
    pango_layout_set_text (self->layout, text, -1);
  pango_attr_list_insert (all, pango_attr_font_features_new ("tnum"));
  pango_layout_set_attributes (self->layout, all);
}

static PangoLayout *
get_layout (LrLine *self)
{
  if (self->layout == NULL)
    {
      self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
      pango_layout_set_ellipsize (self->layout, PANGO_ELLIPSIZE_END);
      pango_layout_set_wrap (self->layout, PANGO_WRAP_WORD_CHAR);
      fill_layout (self);
    }
  return self->layout;
}

static PangoFontMetrics *
get_metrics (LrLine *self)
{
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self));

  return pango_context_get_metrics (context, pango_context_get_font_description (context), pango_context_get_language (context));
}

static int
chars_px (PangoFontMetrics *metrics,
          int               chars)
{
  return PANGO_PIXELS_CEIL (pango_font_metrics_get_approximate_char_width (metrics) * chars);
}

static void
hold (LrLine   *self,
      gboolean  is_short)
{
  if (self->is_short == is_short)
    return;

  self->is_short = is_short;
  if (self->layout != NULL)
    fill_layout (self);
}

/* Of the whole text, which the layout then holds */
static int
text_width_px (LrLine *self)
{
  int width_px;

  hold (self, FALSE);
  pango_layout_set_width (get_layout (self), -1);
  pango_layout_get_pixel_size (self->layout, &width_px, NULL);
  return width_px;
}

static int
fit (LrLine *self,
     int     width_px)
{
  PangoLayout *layout = get_layout (self);

  pango_layout_set_width (layout, width_px * PANGO_SCALE);
  pango_layout_set_height (layout, -self->lines);
  return MAX (1, pango_layout_get_line_count (layout));
}

static int
lines_in (LrLine           *self,
          PangoFontMetrics *metrics,
          int               width_px)
{
  if (self->fits)
    return width_px < 0 ? 1 : fit (self, width_px);
  return self->full_chars > 0 && width_px >= 0 && width_px < chars_px (metrics, self->full_chars) ? self->lines + 1 : self->lines;
}

static void
lr_line_measure (GtkWidget      *widget,
                 GtkOrientation  orientation,
                 int             for_size,
                 int            *minimum,
                 int            *natural,
                 int            *minimum_baseline,
                 int            *natural_baseline)
{
  LrLine *self = LR_LINE (widget);
  PangoFontMetrics *metrics = get_metrics (self);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *natural = self->width_chars > 0 ? chars_px (metrics, self->width_chars) : text_width_px (self);
      *minimum = self->width_chars > 0 ? *natural : MIN (*natural, chars_px (metrics, 4));
    }
  else
    {
      int n_lines = lines_in (self, metrics, for_size);

      *minimum = *natural = PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics)) * n_lines;
    }
  pango_font_metrics_unref (metrics);
}

static GtkSizeRequestMode
lr_line_get_request_mode (GtkWidget *widget)
{
  return LR_LINE (widget)->full_chars > 0 || LR_LINE (widget)->fits ? GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH : GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

static void
lr_line_snapshot (GtkWidget   *widget,
                  GtkSnapshot *snapshot)
{
  LrLine *self = LR_LINE (widget);
  PangoLayout *layout = get_layout (self);
  PangoFontMetrics *metrics = get_metrics (self);
  int width_px = gtk_widget_get_width (widget), height_px = gtk_widget_get_height (widget), text_px, text_height_px;
  int n_lines = lines_in (self, metrics, width_px);
  /* a short text stands at the top of the room that is kept for a long one, unless it is to stand in the middle */
  gboolean is_at_top = n_lines > 1 && self->full_chars > 0 && gtk_widget_get_valign (widget) != GTK_ALIGN_CENTER;
  GdkRGBA color;

  if (self->short_text != NULL)
    hold (self, text_width_px (self) > width_px);
  self->fitted = n_lines;
  self->fitted_px = width_px;
  pango_layout_set_width (layout, width_px * PANGO_SCALE);
  pango_layout_set_height (layout, -n_lines);
  pango_layout_get_pixel_size (layout, &text_px, &text_height_px);
  pango_font_metrics_unref (metrics);

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (int) (self->xalign * (float) (width_px - text_px)),
                                                          (float) (is_at_top ? 0 : (height_px - text_height_px) / 2)));
  gtk_snapshot_append_layout (snapshot, layout, &color);
  gtk_snapshot_restore (snapshot);
}

static void
forget_layout (LrLine *self)
{
  g_clear_object (&self->layout);
}

static void
lr_line_css_changed (GtkWidget         *widget,
                     GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_line_parent_class)->css_changed (widget, change);
  forget_layout (LR_LINE (widget));
  gtk_widget_queue_resize (widget);
}

static void
lr_line_system_setting_changed (GtkWidget        *widget,
                                GtkSystemSetting  setting)
{
  GTK_WIDGET_CLASS (lr_line_parent_class)->system_setting_changed (widget, setting);
  forget_layout (LR_LINE (widget));
  gtk_widget_queue_resize (widget);
}

static void
lr_line_get_property (GObject    *object,
                      guint       prop_id,
                      GValue     *value,
                      GParamSpec *spec)
{
  LrLine *self = LR_LINE (object);

  if (prop_id == PROP_LINES)
    g_value_set_int (value, self->lines);
  else if (prop_id == PROP_FULL_CHARS)
    g_value_set_int (value, self->full_chars);
  else if (prop_id == PROP_WIDTH_CHARS)
    g_value_set_int (value, self->width_chars);
  else if (prop_id == PROP_FITS)
    g_value_set_boolean (value, self->fits);
  else
    g_value_set_float (value, self->xalign);
}

static void
lr_line_set_property (GObject      *object,
                      guint         prop_id,
                      const GValue *value,
                      GParamSpec   *spec)
{
  LrLine *self = LR_LINE (object);

  if (prop_id == PROP_LINES)
    self->lines = g_value_get_int (value);
  else if (prop_id == PROP_FULL_CHARS)
    self->full_chars = g_value_get_int (value);
  else if (prop_id == PROP_WIDTH_CHARS)
    self->width_chars = g_value_get_int (value);
  else if (prop_id == PROP_FITS)
    self->fits = g_value_get_boolean (value);
  else
    self->xalign = g_value_get_float (value);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
lr_line_finalize (GObject *object)
{
  LrLine *self = LR_LINE (object);

  forget_layout (self);
  g_free (self->text);
  g_free (self->short_text);
  G_OBJECT_CLASS (lr_line_parent_class)->finalize (object);
}

static void
lr_line_class_init (LrLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->finalize = lr_line_finalize;
  object_class->get_property = lr_line_get_property;
  object_class->set_property = lr_line_set_property;
  widget_class->measure = lr_line_measure;
  widget_class->get_request_mode = lr_line_get_request_mode;
  widget_class->snapshot = lr_line_snapshot;
  widget_class->css_changed = lr_line_css_changed;
  widget_class->system_setting_changed = lr_line_system_setting_changed;
  props[PROP_LINES] = g_param_spec_int ("lines", NULL, NULL, 1, 30, 1, flags);
  props[PROP_FULL_CHARS] = g_param_spec_int ("full-chars", NULL, NULL, 0, 999, 0, flags);
  props[PROP_WIDTH_CHARS] = g_param_spec_int ("width-chars", NULL, NULL, 0, 999, 0, flags);
  props[PROP_FITS] = g_param_spec_boolean ("fits", NULL, NULL, FALSE, flags);
  props[PROP_XALIGN] = g_param_spec_float ("xalign", NULL, NULL, 0.0f, 1.0f, 0.0f, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_css_name (widget_class, "line");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void
lr_line_init (LrLine *self)
{
  self->text = g_strdup ("");
  self->lines = 1;
}

/**
 * lr_line_new:
 *
 * Returns: (transfer full): a line without text
 */
GtkWidget *
lr_line_new (void)
{
  return g_object_new (LR_TYPE_LINE, NULL);
}

/* Whether its new text asks for another size */
static gboolean
changes_size (LrLine *self)
{
  return self->width_chars == 0 || (self->fits && (self->fitted == 0 || fit (self, self->fitted_px) != self->fitted));
}

static void
set (LrLine     *self,
     const char *text,
     gboolean    is_markup)
{
  if (self->is_markup == is_markup && g_str_equal (self->text, text))
    return;

  g_free (self->text);
  self->text = g_strdup (text);
  self->is_markup = is_markup;
  self->is_short = FALSE;
  if (self->layout != NULL)
    fill_layout (self);
  if (!is_markup)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  if (changes_size (self))
    gtk_widget_queue_resize (GTK_WIDGET (self));
  else
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_line_set_text:
 * @text: what it says, to assistive technology too
 */
void
lr_line_set_text (LrLine     *self,
                  const char *text)
{
  set (self, text, FALSE);
}

/**
 * lr_line_set_short_text:
 * @short_text: (nullable): what it shows where the whole text has no room; assistive technology still says the whole
 */
void
lr_line_set_short_text (LrLine     *self,
                        const char *short_text)
{
  if (g_strcmp0 (self->short_text, short_text) == 0)
    return;

  hold (self, FALSE);
  g_free (self->short_text);
  self->short_text = g_strdup (short_text);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_line_set_markup:
 * @markup: Pango markup; what assistive technology says is up to the caller
 */
void
lr_line_set_markup (LrLine     *self,
                    const char *markup)
{
  set (self, markup, TRUE);
}

/**
 * lr_line_get_text:
 *
 * Returns: (transfer none): what it was given, markup or not
 */
const char *
lr_line_get_text (LrLine *self)
{
  return self->text;
}

/**
 * lr_line_is_cut:
 *
 * Returns: whether the end of its text had no room when it was drawn last
 */
gboolean
lr_line_is_cut (LrLine *self)
{
  return self->layout != NULL && pango_layout_is_ellipsized (self->layout);
}
