/* badge.c - a small picture that speaks the sheet's language: a tag, a grade's mark, a family's glyph, a thing from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "badge.h"

#include "glyphs.h"
#include "symbols.h"

#define GRADE_HALF_WIDTH_PX 7.0
#define TAG_SIZE_PX 12.0

typedef enum { SHOWS_NOTHING, SHOWS_GRADE, SHOWS_TAG, SHOWS_FAMILY, SHOWS_ITEM } Shows;

struct _LrBadge
{
  GtkWidget  parent_instance;

  Shows      shows;
  LrGrade    grade;
  LrItemKind kind;
  char      *tag;
  LrFamily   family;
  LrItem    *item;
  double     width_px, height_px;
};

G_DEFINE_FINAL_TYPE (LrBadge, lr_badge, GTK_TYPE_WIDGET)

/**
 * lr_widget_get_theme_id:
 * @widget: a widget on the screen
 *
 * Returns: the palette that goes with the style that it has now
 */
LrThemeId
lr_widget_get_theme_id (GtkWidget *widget)
{
  GdkRGBA color;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  return 0.299f * color.red + 0.587f * color.green + 0.114f * color.blue > 0.5f ? LR_THEME_DARK : LR_THEME_LIGHT;
}

static const LrTheme *
get_theme (LrBadge *self)
{
  return lr_theme_get (lr_widget_get_theme_id (GTK_WIDGET (self)));
}

static void
resize (LrBadge *self,
        double   width_px,
        double   height_px)
{
  if (width_px != self->width_px || height_px != self->height_px)
    {
      self->width_px = width_px;
      self->height_px = height_px;
      gtk_widget_queue_resize (GTK_WIDGET (self));
    }
  gtk_widget_set_visible (GTK_WIDGET (self), self->shows != SHOWS_NOTHING);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
draw (LrBadge *self,
      cairo_t *cr)
{
  const LrTheme *theme = get_theme (self);
  double x = 0.5 * gtk_widget_get_width (GTK_WIDGET (self)), y = 0.5 * gtk_widget_get_height (GTK_WIDGET (self));

  switch (self->shows)
    {
    case SHOWS_GRADE:
      lr_grade_mark_draw (cr, theme, self->grade, GRADE_HALF_WIDTH_PX, x, y);
      break;
    case SHOWS_TAG:
      lr_tag_draw (cr, theme, self->kind, self->tag, TAG_SIZE_PX, x, y);
      break;
    case SHOWS_FAMILY:
      lr_glyph_draw (cr, theme, self->family, x, y);
      break;
    case SHOWS_ITEM:
      cairo_translate (cr, x - 0.5 * self->width_px, y - 0.5 * self->height_px);
      lr_symbol_draw_icon (cr, theme, self->item, self->width_px);
      break;
    case SHOWS_NOTHING:
    default:
      break;
    }
}

static void
lr_badge_snapshot (GtkWidget   *widget,
                   GtkSnapshot *snapshot)
{
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                               (float) gtk_widget_get_height (widget));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);

  draw (LR_BADGE (widget), cr);
  cairo_destroy (cr);
}

static void
lr_badge_measure (GtkWidget      *widget,
                  GtkOrientation  orientation,
                  int             for_size,
                  int            *minimum,
                  int            *natural,
                  int            *minimum_baseline,
                  int            *natural_baseline)
{
  LrBadge *self = LR_BADGE (widget);

  *minimum = *natural = (int) ceil (orientation == GTK_ORIENTATION_HORIZONTAL ? self->width_px : self->height_px);
  *minimum_baseline = *natural_baseline = -1;
}

static void
lr_badge_css_changed (GtkWidget         *widget,
                      GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_badge_parent_class)->css_changed (widget, change);
  gtk_widget_queue_draw (widget);
}

static void
lr_badge_finalize (GObject *object)
{
  LrBadge *self = LR_BADGE (object);

  g_clear_pointer (&self->item, lr_item_unref);
  g_free (self->tag);
  G_OBJECT_CLASS (lr_badge_parent_class)->finalize (object);
}

static void
lr_badge_class_init (LrBadgeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lr_badge_finalize;
  widget_class->measure = lr_badge_measure;
  widget_class->snapshot = lr_badge_snapshot;
  widget_class->css_changed = lr_badge_css_changed;
  gtk_widget_class_set_css_name (widget_class, "badge");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lr_badge_init (LrBadge *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * lr_badge_new:
 *
 * Returns: (transfer full): a badge that shows nothing
 */
GtkWidget *
lr_badge_new (void)
{
  return g_object_new (LR_TYPE_BADGE, NULL);
}

/**
 * lr_badge_show_nothing:
 *
 * The badge takes no room.
 */
void
lr_badge_show_nothing (LrBadge *self)
{
  if (self->shows == SHOWS_NOTHING)
    return;

  self->shows = SHOWS_NOTHING;
  resize (self, 0.0, 0.0);
}

/**
 * lr_badge_show_grade:
 * @grade: whose mark it shows: diamond, triangle or ring
 */
void
lr_badge_show_grade (LrBadge *self,
                     LrGrade  grade)
{
  if (self->shows == SHOWS_GRADE && self->grade == grade)
    return;

  self->shows = SHOWS_GRADE;
  self->grade = grade;
  resize (self, 2.0 * GRADE_HALF_WIDTH_PX + 3.0, 2.0 * GRADE_HALF_WIDTH_PX + 3.0);
}

/**
 * lr_badge_show_tag:
 * @kind: the family that gives the tag its shape
 * @tag: "A", "L1"; "" shows nothing
 */
void
lr_badge_show_tag (LrBadge    *self,
                   LrItemKind  kind,
                   const char *tag)
{
  cairo_surface_t *surface;
  cairo_t *cr;
  double width_px, height_px;

  if (tag[0] == '\0')
    {
      lr_badge_show_nothing (self);
      return;
    }
  if (self->shows == SHOWS_TAG && self->kind == kind && g_strcmp0 (self->tag, tag) == 0)
    return;

  self->shows = SHOWS_TAG;
  self->kind = kind;
  g_free (self->tag);
  self->tag = g_strdup (tag);

  surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cr = cairo_create (surface);
  lr_tag_measure (cr, get_theme (self), kind, tag, TAG_SIZE_PX, &width_px, &height_px);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  resize (self, width_px + 2.0, height_px + 2.0);
}

/**
 * lr_badge_show_family:
 * @family: whose glyph it shows
 */
void
lr_badge_show_family (LrBadge  *self,
                      LrFamily  family)
{
  self->shows = SHOWS_FAMILY;
  self->family = family;
  resize (self, LR_GLYPH_SIZE_PX, LR_GLYPH_SIZE_PX);
}

/**
 * lr_badge_show_item:
 * @item: a thing of the kit or of any room
 * @size_px: side of the square that its picture fills
 */
void
lr_badge_show_item (LrBadge      *self,
                    const LrItem *item,
                    double        size_px)
{
  LrItem *held = lr_item_ref (item);

  self->shows = SHOWS_ITEM;
  g_clear_pointer (&self->item, lr_item_unref);
  self->item = held;
  resize (self, size_px, size_px);
}
