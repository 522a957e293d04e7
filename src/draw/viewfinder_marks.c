/* viewfinder_marks.c - what stands in a picture that should not, outlined in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A Fix has a line in its colour and the solid diamond, a Mind a line in ink on a light halo and the open triangle: the
 * shape tells them apart before the colour. Only the outer contour of a thing is drawn, so the outlines of its parts are clipped out of
 * each other's lines.
 */

#include "viewfinder_marks.h"

#include "intrusions.h"

#include <string.h>

#define LINE_PX 1.3
#define HALO_PX 2.3
#define MARK_PX 7.0
#define INSET_PX 11.0

static void
add_path (cairo_t      *cr,
          const LrVec2 *corner,
          guint         n,
          double        width,
          double        height)
{
  for (guint i = 0; i < n; i++)
    if (i == 0)
      cairo_move_to (cr, corner[i].x * width, corner[i].y * height);
    else
      cairo_line_to (cr, corner[i].x * width, corner[i].y * height);
  cairo_close_path (cr);
}

static void
add_paths (cairo_t           *cr,
           const LrStudy     *study,
           const LrIntrusion *intrusion,
           double             width,
           double             height)
{
  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      add_path (cr, corner, n, width, height);
    }
}

/* What may be painted on from here on lies outside all of a thing's parts */
static void
clip_parts_out (cairo_t           *cr,
                const LrStudy     *study,
                const LrIntrusion *intrusion,
                double             width,
                double             height)
{
  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      cairo_rectangle (cr, 0.0, 0.0, width, height);
      add_path (cr, corner, n, width, height);
      cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
      cairo_clip (cr);
    }
}

static LrVec2
normal_of (LrVec2 from,
           LrVec2 to)
{
  LrVec2 way = lr_vec2_sub (to, from);
  double length = lr_vec2_length (way);

  return length > 1e-9 ? lr_vec2 (way.y / length, -way.x / length) : lr_vec2 (0.0, 0.0);
}

/* A part, which is convex, grown all round with its corners cut */
static void
add_grown_path (cairo_t      *cr,
                const LrVec2 *corner,
                guint         n,
                double        width,
                double        height,
                double        by)
{
  LrVec2 scale = { width, height }, before, p;
  double area = 0.0;

  for (guint i = 0; i < n; i++)
    area += lr_vec2_cross (corner[i], corner[(i + 1) % n]);
  by = area < 0.0 ? -by : by;

  p = lr_vec2 (corner[n - 1].x * scale.x, corner[n - 1].y * scale.y);
  before = normal_of (p, lr_vec2 (corner[0].x * scale.x, corner[0].y * scale.y));
  cairo_new_sub_path (cr);
  for (guint i = 0; i < n; i++)
    {
      LrVec2 next = { corner[(i + 1) % n].x * scale.x, corner[(i + 1) % n].y * scale.y }, after, middle;
      double length;

      p = lr_vec2 (corner[i].x * scale.x, corner[i].y * scale.y);
      after = normal_of (p, next);
      middle = lr_vec2_add (before, after);
      length = fmax (lr_vec2_length (middle), 1e-6);
      if (length < 1.9)
        cairo_line_to (cr, p.x + before.x * by, p.y + before.y * by);
      cairo_line_to (cr, p.x + middle.x * by / length, p.y + middle.y * by / length);
      if (length < 1.9)
        cairo_line_to (cr, p.x + after.x * by, p.y + after.y * by);
      before = after;
    }
  cairo_close_path (cr);
}

/* A band of some width round all of its parts, in the source. On pixels: a stroke under a clip takes eight times as long */
static void
fill_band (cairo_t           *cr,
           const LrStudy     *study,
           const LrIntrusion *intrusion,
           double             band,
           double             width,
           double             height)
{
  cairo_pattern_t *source = cairo_pattern_reference (cairo_get_source (cr)), *mask;

  cairo_push_group_with_content (cr, CAIRO_CONTENT_ALPHA);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      add_grown_path (cr, corner, n, width, height, band);
    }
  cairo_fill (cr);
  add_paths (cr, study, intrusion, width, height);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_fill (cr);
  mask = cairo_pop_group (cr);

  cairo_set_source (cr, source);
  cairo_mask (cr, mask);
  cairo_pattern_destroy (mask);
  cairo_pattern_destroy (source);
}

static void
clip_to_surroundings (cairo_t           *cr,
                      const LrStudy     *study,
                      const LrIntrusion *intrusion,
                      double             margin,
                      double             width,
                      double             height)
{
  double x0, y0, x1, y1;

  add_paths (cr, study, intrusion, width, height);
  cairo_path_extents (cr, &x0, &y0, &x1, &y1);
  cairo_new_path (cr);
  cairo_rectangle (cr, floor (x0 - margin), floor (y0 - margin), ceil (x1 - x0 + 2.0 * margin) + 1.0,
                   ceil (y1 - y0 + 2.0 * margin) + 1.0);
  cairo_clip (cr);
}

/* On a page: lines twice as wide, outside all of its parts */
static void
stroke_contour (cairo_t           *cr,
                const LrStudy     *study,
                const LrIntrusion *intrusion,
                double             band,
                double             width,
                double             height)
{
  cairo_save (cr);
  clip_parts_out (cr, study, intrusion, width, height);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  add_paths (cr, study, intrusion, width, height);
  cairo_set_line_width (cr, 2.0 * band);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_contour (cairo_t           *cr,
              const LrStudy     *study,
              const LrIntrusion *intrusion,
              gboolean           is_fix,
              double             width,
              double             height,
              double             unit)
{
  gboolean is_of_pixels = cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE;
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);

  cairo_save (cr);
  if (is_of_pixels)
    clip_to_surroundings (cr, study, intrusion, HALO_PX * unit, width, height);
  for (guint pass = 0; pass < 2; pass++)
    {
      if (pass == 0)
        cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.8);
      else
        lr_theme_set_color (cr, is_fix ? theme->fix_line : theme->ink, 1.0);
      (is_of_pixels ? fill_band : stroke_contour) (cr, study, intrusion, (pass == 0 ? HALO_PX : LINE_PX) * unit, width, height);
    }
  cairo_restore (cr);
}

static LrVec2
middle_of (const LrStudy     *study,
           const LrIntrusion *intrusion,
           double             width,
           double             height)
{
  double x0 = 1.0, x1 = 0.0, y0 = 1.0, y1 = 0.0;

  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      for (guint j = 0; j < n; j++)
        {
          x0 = MIN (x0, corner[j].x);
          x1 = MAX (x1, corner[j].x);
          y0 = MIN (y0, corner[j].y);
          y1 = MAX (y1, corner[j].y);
        }
    }

  return lr_vec2 (0.5 * (x0 + x1) * width, 0.5 * (y0 + y1) * height);
}

/* The diamond of a Fix and the triangle of a Mind, with their exclamation mark drawn, not written */
static void
draw_mark (cairo_t *cr,
           LrVec2   at,
           gboolean is_fix,
           double   unit)
{
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);
  double r = MARK_PX * unit, down = is_fix ? 0.0 : 0.2 * r;

  cairo_arc (cr, at.x, at.y, 9.5 * unit, 0.0, 2.0 * LR_PI);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.9);
  cairo_fill (cr);

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_move_to (cr, at.x, at.y - r);
  if (is_fix)
    {
      cairo_line_to (cr, at.x + r, at.y);
      cairo_line_to (cr, at.x, at.y + r);
      cairo_line_to (cr, at.x - r, at.y);
    }
  else
    {
      cairo_line_to (cr, at.x + 0.95 * r, at.y + 0.7 * r);
      cairo_line_to (cr, at.x - 0.95 * r, at.y + 0.7 * r);
    }
  cairo_close_path (cr);
  lr_theme_set_color (cr, is_fix ? theme->fix_fill : theme->ink, 1.0);
  cairo_set_line_width (cr, 1.7 * unit);
  if (is_fix)
    {
      cairo_fill (cr);
      cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
    }
  else
    cairo_stroke (cr);

  cairo_rectangle (cr, at.x - 0.8 * unit, at.y + down - 3.8 * unit, 1.6 * unit, 4.6 * unit);
  cairo_rectangle (cr, at.x - 0.8 * unit, at.y + down + 1.9 * unit, 1.6 * unit, 1.6 * unit);
  cairo_fill (cr);
}

static gboolean
speaks_of (const LrRemark    *remark,
           const LrIntrusion *intrusion)
{
  return remark != NULL && remark->check == lr_intrusion_check (intrusion)
         && g_strv_contains ((const char *const *) remark->ids, intrusion->camera->item->id)
         && (intrusion->placed == NULL || g_strv_contains ((const char *const *) remark->ids, intrusion->placed->item->id));
}

/**
 * lr_viewfinder_marks:
 * @cr: where the picture is, its upper left corner at 0, 0
 * @study: a study
 * @camera: one of its cameras
 * @style: how the picture is drawn
 * @delivered: the delivered frame in it
 *
 * Outlines what should not stand in the picture.
 */
void
lr_viewfinder_marks (cairo_t                 *cr,
                     const LrStudy           *study,
                     const LrCameraReading   *camera,
                     const LrViewfinderStyle *style,
                     const LrPictureBox      *delivered)
{
  double width = delivered->width, height = delivered->height;
  double unit = style->unit > 0.0 ? style->unit : fmax (1.0, style->width / 470.0), inset = INSET_PX * unit;

  if (style->is_plain)
    return;

  cairo_save (cr);
  cairo_translate (cr, delivered->x, delivered->y);
  for (guint i = 0; i < study->intrusions->len; i++)
    {
      const LrIntrusion *intrusion = lr_study_intrusion (study, i);
      LrGrade grade = lr_intrusion_grade (study, intrusion);
      LrVec2 at;

      if (intrusion->camera->item != camera->item || intrusion->n_outlines == 0 || grade == LR_GRADE_FINE
          || (grade == LR_GRADE_MIND && !style->has_minds && !speaks_of (style->remark, intrusion)))
        continue;

      draw_contour (cr, study, intrusion, grade == LR_GRADE_FIX, width, height, unit);
      at = middle_of (study, intrusion, width, height);
      at.x = CLAMP (at.x, inset, fmax (inset, width - inset));
      at.y = CLAMP (at.y, inset, fmax (inset, height - inset));
      draw_mark (cr, at, grade == LR_GRADE_FIX, unit);
    }
  cairo_restore (cr);
}
