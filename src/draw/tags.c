/* tags.c - the tag of a family and the mark of a grade
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shape first: a camera's tag is a filled rectangle, a light's a stadium, a microphone's a shield with a round bottom; a fault
 * is a diamond, a caution a triangle, all well a ring. None of them needs its colour to be read.
 */

#include "symbols.h"
#include "text.h"

#define HEIGHT_PER_SIZE 1.42
#define LOW_HEIGHT_PER_SIZE 1.26 /* in the rows of a table */
#define CAMERA_WIDTH_PER_HEIGHT 1.45
#define CORNER_PER_SIZE 0.186
#define STADIUM_PAD_PER_SIZE 0.63
#define SHIELD_PAD_PER_SIZE 0.674

typedef enum { SHAPE_TEXT, SHAPE_RECTANGLE, SHAPE_STADIUM, SHAPE_SHIELD } TagShape;

static TagShape
get_shape (LrItemKind kind)
{
  switch (kind)
    {
    case LR_ITEM_CAMERA:
      return SHAPE_RECTANGLE;
    case LR_ITEM_LIGHT:
      return SHAPE_STADIUM;
    case LR_ITEM_MICROPHONE:
      return SHAPE_SHIELD;
    case LR_ITEM_PERSON:
    case LR_ITEM_PANEL:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return SHAPE_TEXT;
    }
}

static void
trace_round_box (cairo_t *cr,
                 double   x,
                 double   y,
                 double   width,
                 double   height,
                 double   radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + width - radius, y + radius, radius, -G_PI_2, 0.0);
  cairo_arc (cr, x + width - radius, y + height - radius, radius, 0.0, G_PI_2);
  cairo_arc (cr, x + radius, y + height - radius, radius, G_PI_2, G_PI);
  cairo_arc (cr, x + radius, y + radius, radius, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

static void
trace_shield (cairo_t *cr,
              double   x,
              double   y,
              double   width,
              double   height)
{
  double straight = y + 0.62 * height, control = y + 1.127 * height;

  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + width, y);
  cairo_line_to (cr, x + width, straight);
  cairo_curve_to (cr, x + width, control, x, control, x, straight);
  cairo_close_path (cr);
}

static LrTextStyle
tag_style (double size)
{
  return (LrTextStyle) { .size = size, .weight = PANGO_WEIGHT_BOLD, .align = LR_ALIGN_CENTRE };
}

static void
measure (cairo_t       *cr,
         const LrTheme *theme,
         LrItemKind     kind,
         const char    *tag,
         double         size,
         double         tag_height,
         double        *width)
{
  LrTextStyle style = tag_style (size);
  double text_width;

  lr_text_measure (cr, theme, &style, tag, &text_width, NULL);
  switch (get_shape (kind))
    {
    case SHAPE_RECTANGLE:
      text_width = MAX (CAMERA_WIDTH_PER_HEIGHT * tag_height, text_width + STADIUM_PAD_PER_SIZE * size);
      break;
    case SHAPE_STADIUM:
      text_width = MAX (text_width + STADIUM_PAD_PER_SIZE * size, tag_height);
      break;
    case SHAPE_SHIELD:
      text_width += SHIELD_PAD_PER_SIZE * size;
      break;
    case SHAPE_TEXT:
    default:
      break;
    }

  *width = text_width;
}

/**
 * lr_tag_measure:
 * @cr: a cairo context
 * @theme: a palette
 * @kind: whose tag
 * @tag: "A", "L1"
 * @size: of its text, device units
 * @width: (out) (optional): device units
 * @height: (out) (optional): device units
 */
void
lr_tag_measure (cairo_t       *cr,
                const LrTheme *theme,
                LrItemKind     kind,
                const char    *tag,
                double         size,
                double        *width,
                double        *height)
{
  double tag_width;

  measure (cr, theme, kind, tag, size, HEIGHT_PER_SIZE * size, &tag_width);
  if (width != NULL)
    *width = tag_width;
  if (height != NULL)
    *height = HEIGHT_PER_SIZE * size;
}

/* Body of the tag; sets the source for its text */
static void
draw_body (cairo_t       *cr,
           const LrTheme *theme,
           LrItemKind     kind,
           double         size,
           double         x,
           double         y,
           double         width,
           double         height)
{
  TagShape shape = get_shape (kind);

  switch (shape)
    {
    case SHAPE_RECTANGLE:
      trace_round_box (cr, x, y, width, height, CORNER_PER_SIZE * size);
      lr_theme_set_color (cr, theme->family_line[LR_FAMILY_SIGHT], 1.0);
      cairo_fill (cr);
      lr_theme_set_color (cr, theme->room, 1.0);
      return;

    case SHAPE_STADIUM:
    case SHAPE_SHIELD:
      if (shape == SHAPE_STADIUM)
        trace_round_box (cr, x, y, width, height, 0.5 * height);
      else
        trace_shield (cr, x, y, width, height);
      lr_theme_set_color (cr, theme->room, 1.0);
      cairo_fill_preserve (cr);
      lr_theme_set_color (cr, theme->family_line[shape == SHAPE_STADIUM ? LR_FAMILY_LIGHT : LR_FAMILY_SOUND], 1.0);
      lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
      cairo_stroke (cr);
      break;

    case SHAPE_TEXT:
    default:
      break;
    }

  lr_theme_set_color (cr, theme->ink, 1.0);
}

static void
draw_tag (cairo_t       *cr,
          const LrTheme *theme,
          LrItemKind     kind,
          const char    *tag,
          double         size,
          double         height,
          double         x,
          double         y)
{
  LrTextStyle style = tag_style (size);
  double width, baseline;

  measure (cr, theme, kind, tag, size, height, &width);

  cairo_save (cr);
  cairo_new_path (cr);
  draw_body (cr, theme, kind, size, x - 0.5 * width, y - 0.5 * height, width, height);

  /* capitals and figures are .73 of the size high; a shield's round bottom lets its letters stand a little higher */
  baseline = y + 0.364 * size - (get_shape (kind) == SHAPE_SHIELD ? 0.03 * size : 0.0);
  if (get_shape (kind) == SHAPE_TEXT)
    lr_text_draw_halo (cr, theme, &style, x, baseline, tag);
  else
    lr_text_draw (cr, theme, &style, x, baseline, tag);
  cairo_restore (cr);
}

/**
 * lr_tag_draw:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @kind: whose tag
 * @tag: "A", "L1"
 * @size: of its text, device units
 * @x: middle
 * @y: middle
 */
void
lr_tag_draw (cairo_t       *cr,
             const LrTheme *theme,
             LrItemKind     kind,
             const char    *tag,
             double         size,
             double         x,
             double         y)
{
  draw_tag (cr, theme, kind, tag, size, HEIGHT_PER_SIZE * size, x, y);
}

/**
 * lr_tag_draw_low:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @kind: whose tag
 * @tag: "A", "L1"
 * @size: of its text, device units
 * @x: middle
 * @y: middle
 *
 * As lr_tag_draw(), lower: for the rows of a table.
 */
void
lr_tag_draw_low (cairo_t       *cr,
                 const LrTheme *theme,
                 LrItemKind     kind,
                 const char    *tag,
                 double         size,
                 double         x,
                 double         y)
{
  draw_tag (cr, theme, kind, tag, size, LOW_HEIGHT_PER_SIZE * size, x, y);
}

/* Drawn, not set in type: the same at every size and in every font */
static void
draw_exclamation (cairo_t *cr,
                  double   h,
                  double   x,
                  double   y)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_set_line_width (cr, 0.232 * h);
  cairo_move_to (cr, x, y - 0.466 * h);
  cairo_line_to (cr, x, y + 0.087 * h);
  cairo_stroke (cr);
  cairo_arc (cr, x, y + 0.444 * h, 0.134 * h, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
}

static void
draw_fix (cairo_t       *cr,
          const LrTheme *theme,
          double         h,
          double         x,
          double         y)
{
  /* Where the fill is as dark as the line, an edge in ink outweighs it in a grey print */
  gboolean has_ink_edge = theme->fix_fill.r == theme->fix_line.r && theme->unit_px < 1.0;

  cairo_move_to (cr, x, y - h);
  cairo_line_to (cr, x + h, y);
  cairo_line_to (cr, x, y + h);
  cairo_line_to (cr, x - h, y);
  cairo_close_path (cr);
  lr_theme_set_color (cr, theme->fix_fill, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, has_ink_edge ? theme->ink : theme->fix_line, 1.0);
  cairo_set_line_width (cr, 0.14 * h);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_stroke (cr);

  lr_theme_set_color (cr, theme->room, 1.0);
  draw_exclamation (cr, h, x, y);
}

static void
draw_mind (cairo_t       *cr,
           const LrTheme *theme,
           double         h,
           double         x,
           double         y)
{
  cairo_move_to (cr, x, y - 0.86 * h);
  cairo_line_to (cr, x + h, y + 0.80 * h);
  cairo_line_to (cr, x - h, y + 0.80 * h);
  cairo_close_path (cr);
  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, theme->ink, 1.0);
  cairo_set_line_width (cr, 1.7 * h / 7.0);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_stroke (cr);
  draw_exclamation (cr, 0.85 * h, x, y + 0.16 * h);
}

static void
draw_fine (cairo_t       *cr,
           const LrTheme *theme,
           double         h,
           double         x,
           double         y)
{
  lr_theme_set_color (cr, theme->ink2, 1.0);
  lr_theme_set_line (cr, theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, 0.93 * h, 0.0, 2.0 * G_PI);
  cairo_stroke (cr);
  cairo_move_to (cr, x - 0.42 * h, y + 0.02 * h);
  cairo_line_to (cr, x - 0.10 * h, y + 0.34 * h);
  cairo_line_to (cr, x + 0.44 * h, y - 0.32 * h);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
}

/**
 * lr_grade_mark_draw:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @grade: Fix: solid diamond; Mind: open triangle; Fine: thin ring and tick
 * @half_width: device units
 * @x: middle
 * @y: middle
 */
void
lr_grade_mark_draw (cairo_t       *cr,
                    const LrTheme *theme,
                    LrGrade        grade,
                    double         half_width,
                    double         x,
                    double         y)
{
  static void (*const draw[LR_N_GRADES]) (cairo_t *, const LrTheme *, double, double, double) = {
    [LR_GRADE_FIX] = draw_fix,
    [LR_GRADE_MIND] = draw_mind,
    [LR_GRADE_FINE] = draw_fine,
  };

  g_return_if_fail (grade >= 0 && grade < LR_N_GRADES);

  cairo_save (cr);
  cairo_new_path (cr);
  draw[grade] (cr, theme, half_width, x, y);
  cairo_restore (cr);
}
