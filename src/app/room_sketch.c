/* room_sketch.c - the room as it is typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_sketch.h"

#include "polygon.h"
#include "text.h"
#include "view.h"

#define MARGIN_PX 30.0
#define WALL_PX 11.0
#define CORNER_PX 11.0
#define RING_PX 8.5
#define OUT_PX 13.0 /* of a wall's number from its wall */
#define IN_PX 17.0  /* of a corner's number from its corner */

typedef struct
{
  cairo_t        *cr;
  const LrSurvey *survey;
  LrView          view;
  double          side; /* device: outward is on this side of the walk */
} Sketch;

static LrVec2
corner_px (const Sketch *sketch,
           guint         i)
{
  return lr_view_to_device (&sketch->view, g_array_index (sketch->survey->corners_m, LrVec2, i % sketch->survey->corners_m->len));
}

/* Scale and origin that show all corners */
static void
fit (Sketch *sketch,
     double  width,
     double  height)
{
  const GArray *corners_m = sketch->survey->corners_m;
  LrView *view = &sketch->view;
  LrVec2 low_m, high_m;

  lr_polygon_bounds (&g_array_index (corners_m, LrVec2, 0), corners_m->len, &low_m, &high_m);
  view->scale = fmin ((width - 2.0 * MARGIN_PX) / fmax (high_m.x - low_m.x, 0.1),
                      (height - 2.0 * MARGIN_PX) / fmax (high_m.y - low_m.y, 0.1));
  view->origin = lr_vec2 (width / 2.0 - view->scale * (low_m.x + high_m.x) / 2.0,
                          height / 2.0 + view->scale * (low_m.y + high_m.y) / 2.0);
}

/* Whether one of the doubts that count names it */
static gboolean
is_doubted (const LrSurvey *survey,
            LrDoubtKind     kind,
            guint           index)
{
  for (guint i = 0; i < survey->doubts->len; i++)
    {
      const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, i);

      for (guint k = 0; k < doubt->n && !doubt->is_within; k++)
        if (doubt->of[k].kind == kind && doubt->of[k].index == index)
          return TRUE;
    }
  return FALSE;
}

static void
line (const Sketch *sketch,
      guint         from,
      guint         to)
{
  LrVec2 a = corner_px (sketch, from), b = corner_px (sketch, to);

  cairo_move_to (sketch->cr, a.x, a.y);
  cairo_line_to (sketch->cr, b.x, b.y);
  cairo_stroke (sketch->cr);
}

static void
number_at (const Sketch  *sketch,
           LrVec2         at,
           double         size,
           int            weight,
           guint          number)
{
  LrTextStyle style = { .size = size, .weight = weight, .align = LR_ALIGN_CENTRE };
  g_autofree char *text = g_strdup_printf ("%u", number);

  lr_text_draw_halo (sketch->cr, sketch->view.theme, &style, at.x, at.y + size / 3.0, text);
}

static void
draw_wall (const Sketch *sketch,
           guint         i)
{
  const LrTheme *theme = sketch->view.theme;
  LrVec2 a = corner_px (sketch, i), b = corner_px (sketch, i + 1);
  LrVec2 out = lr_vec2_left (lr_vec2_sub (b, a));
  double length = lr_vec2_length (out);
  gboolean is_closing = sketch->survey->has_closing_wall && i + 1 == sketch->survey->corners_m->len;
  gboolean is_in_doubt = is_doubted (sketch->survey, LR_DOUBT_WALL, i);

  lr_theme_set_line (sketch->cr, theme, LR_LINE_WALL, is_closing ? LR_DASH_SHORT : LR_DASH_SOLID);
  lr_theme_set_color (sketch->cr, is_closing ? theme->in_hand : is_in_doubt ? theme->fix_line : theme->ink, 1.0);
  line (sketch, i, i + 1);
  if (length < 1.0)
    return;
  lr_theme_set_color (sketch->cr, is_in_doubt ? theme->fix_line : theme->ink, 1.0);
  number_at (sketch, lr_vec2_along (lr_vec2_scale (lr_vec2_add (a, b), 0.5), lr_vec2_scale (out, 1.0 / length), sketch->side * OUT_PX),
             WALL_PX, PANGO_WEIGHT_BOLD, i + 1);
}

/* Its number stands inside, where the two walls' directions part */
static void
draw_corner (const Sketch *sketch,
             guint         i)
{
  guint n = sketch->survey->corners_m->len;
  const LrTheme *theme = sketch->view.theme;
  LrVec2 at = corner_px (sketch, i), before = lr_vec2_sub (corner_px (sketch, i + n - 1), at), after = lr_vec2_sub (corner_px (sketch, i + 1), at);
  gboolean is_in_doubt = is_doubted (sketch->survey, LR_DOUBT_CORNER, i);
  LrVec2 half;
  double length;

  if (lr_vec2_length (before) < 1.0 || lr_vec2_length (after) < 1.0)
    return;
  half = lr_vec2_add (lr_vec2_scale (before, 1.0 / lr_vec2_length (before)), lr_vec2_scale (after, 1.0 / lr_vec2_length (after)));
  length = lr_vec2_length (half);
  if (length < 0.05)
    half = lr_vec2_scale (lr_vec2_left (after), -sketch->side / lr_vec2_length (after));
  else
    half = lr_vec2_scale (half, (lr_vec2_cross (before, after) * sketch->side > 0.0 ? 1.0 : -1.0) / length);

  lr_theme_set_color (sketch->cr, is_in_doubt ? theme->fix_line : theme->ink2, 1.0);
  cairo_arc (sketch->cr, at.x, at.y, 3.0, 0.0, 2.0 * G_PI);
  cairo_fill (sketch->cr);
  /* in a ring, as corners are on the sheet: walls have plain numbers */
  at = lr_vec2_along (at, half, IN_PX);
  cairo_new_sub_path (sketch->cr);
  cairo_arc (sketch->cr, at.x, at.y, RING_PX, 0.0, 2.0 * G_PI);
  lr_theme_set_line (sketch->cr, theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (sketch->cr);
  lr_theme_set_color (sketch->cr, is_in_doubt ? theme->fix_line : theme->ink, 1.0);
  number_at (sketch, at, CORNER_PX, PANGO_WEIGHT_NORMAL, i + 1);
}

static void
draw_diagonals (const Sketch *sketch,
                const GArray *diagonals)
{
  const LrTheme *theme = sketch->view.theme;
  const LrSurvey *survey = sketch->survey;

  for (guint i = 0; i < diagonals->len; i++)
    {
      const LrSurveyDiagonal *diagonal = &g_array_index (diagonals, LrSurveyDiagonal, i);

      if (diagonal->from >= survey->corners_m->len || diagonal->to >= survey->corners_m->len)
        continue;
      lr_theme_set_line (sketch->cr, theme, LR_LINE_THIN, LR_DASH_SOLID);
      lr_theme_set_color (sketch->cr, is_doubted (survey, LR_DOUBT_DIAGONAL, i) ? theme->fix_line : theme->ink2, 1.0);
      line (sketch, diagonal->from, diagonal->to);
    }
  for (guint i = 0; i < survey->doubts->len; i++)
    {
      const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, i);

      if (doubt->is_within || doubt->n < 2 || !doubt->has_settling)
        continue;
      lr_theme_set_line (sketch->cr, theme, LR_LINE_THIN, LR_DASH_SHORT);
      lr_theme_set_color (sketch->cr, theme->in_hand, 1.0);
      line (sketch, doubt->from, doubt->to);
    }
}

/**
 * lr_room_sketch_draw:
 * @area: where it is drawn: its text color tells the theme
 * @cr: a context
 * @width: of the area [px]
 * @height: of the area [px]
 * @survey: (nullable): what is typed
 * @diagonals: (element-type LrSurveyDiagonal): likewise
 */
void
lr_room_sketch_draw (GtkWidget      *area,
                     cairo_t        *cr,
                     int             width,
                     int             height,
                     const LrSurvey *survey,
                     const GArray   *diagonals)
{
  Sketch sketch = { .cr = cr, .survey = survey };
  GdkRGBA color;

  if (survey == NULL || survey->corners_m->len < 2)
    return;

  gtk_style_context_get_color (gtk_widget_get_style_context (area), &color);
  sketch.view.theme = lr_theme_get (color.red + color.green + color.blue > 1.5F ? LR_THEME_DARK : LR_THEME_LIGHT);
  /* device y runs down: the left of a wall on the screen is the walker's right, where a room that was walked on the left ends */
  sketch.side = lr_polygon_area_m2 (&g_array_index (survey->corners_m, LrVec2, 0), survey->corners_m->len) < 0.0 ? -1.0 : 1.0;
  fit (&sketch, width, height);
  draw_diagonals (&sketch, diagonals);
  for (guint i = 0; i < survey->corners_m->len; i++)
    draw_wall (&sketch, i);
  for (guint i = 0; i < survey->corners_m->len; i++)
    draw_corner (&sketch, i);
}
