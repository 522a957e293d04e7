/* strip.c - two cameras side by side, as they will be cut against each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Both pictures are of one height, so that what jumps in the cut can be seen to jump: the level of the eyes runs through both as
 * one line, with a step at the splice where it changes.
 */

#include "config.h"

#include "strip.h"
#include "viewfinder.h"

#define GAP_PX        12.0 /* between the pictures */
#define MOST_APART_PX 36.0 /* what they may stand farther apart, so that the outer edges stay where they are */
#define SPLICE_PX      3.0 /* how far its line stands out over them, and half the width of its ends */
#define ARROW_PX      11.0 /* least length */
#define ARROW_M       0.30 /* of the look, seen from the side */
#define FACE_M        0.03 /* kept free of the line beside the head */
#define THIRD_PX       5.0 /* length of the marks at the thirds */
#define HAND_PX        2.0

/**
 * lr_strip_init:
 * @strip: (out): two cameras
 * @study: a study that outlives it
 * @remarks: (nullable): on it
 * @id_a: of the camera before the splice
 * @id_b: of the one after it
 *
 * Returns: %FALSE, with @strip untouched, if there are no such two
 */
gboolean
lr_strip_init (LrStrip         *strip,
               const LrStudy   *study,
               const LrRemarks *remarks,
               const char      *id_a,
               const char      *id_b)
{
  const LrCameraReading *a = lr_study_find_camera (study, id_a), *b = lr_study_find_camera (study, id_b);

  if (a == NULL || b == NULL || a == b)
    return FALSE;

  *strip = (LrStrip) { .study = study, .remarks = remarks, .camera = { a, b } };
  for (guint i = 0; i < study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, i);

      if ((pair->a == a && pair->b == b) || (pair->a == b && pair->b == a))
        strip->pair = pair;
    }
  for (guint i = 0; i < study->reverses->len; i++)
    {
      const LrReverseReading *reverse = &g_array_index (study->reverses, LrReverseReading, i);

      if ((reverse->a == a && reverse->b == b) || (reverse->a == b && reverse->b == a))
        strip->reverse = reverse;
    }
  return TRUE;
}

/**
 * lr_strip_is_compared:
 * @strip: two cameras
 *
 * Returns: whether they show one person, or two who look at each other
 */
gboolean
lr_strip_is_compared (const LrStrip *strip)
{
  return strip->pair != NULL || strip->reverse != NULL;
}

/**
 * lr_strip_init_main:
 * @strip: (out): two cameras
 * @study: a study that outlives it
 * @remarks: (nullable): on it
 *
 * Takes the first camera and the next one that frames the same person, else the next one on whom that person looks at;
 * else the first two.
 *
 * Returns: %FALSE, with @strip untouched, if there are no two cameras
 */
gboolean
lr_strip_init_main (LrStrip         *strip,
                    const LrStudy   *study,
                    const LrRemarks *remarks)
{
  const LrCameraReading *cameras = (const LrCameraReading *) (gpointer) study->cameras->data;

  if (study->cameras->len < LR_STRIP_SIDES)
    return FALSE;

  for (guint i = 0; i < study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, i);

      if (pair->a == &cameras[0] && isfinite (pair->size_ratio))
        return lr_strip_init (strip, study, remarks, pair->a->item->id, pair->b->item->id);
    }
  for (guint i = 0; i < study->reverses->len; i++)
    {
      const LrReverseReading *reverse = &g_array_index (study->reverses, LrReverseReading, i);

      if (reverse->a == &cameras[0] && isfinite (reverse->size_ratio))
        return lr_strip_init (strip, study, remarks, reverse->a->item->id, reverse->b->item->id);
    }
  return lr_strip_init (strip, study, remarks, cameras[0].item->id, cameras[1].item->id);
}

/**
 * lr_strip_place:
 * @strip: two cameras
 * @style: width and most height
 * @place: (out): of their pictures, at the same height and in the middle of the width
 *
 * Where the height limits them they first move apart a little, then both to the middle.
 */
void
lr_strip_place (const LrStrip      *strip,
                const LrStripStyle *style,
                LrStripPlace       *place)
{
  double gap = GAP_PX * style->unit, aspect[LR_STRIP_SIDES], height, slack, apart;

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    aspect[i] = 1.0 / lr_viewfinder_height (strip->camera[i], 1.0);

  height = (style->width - gap) / (aspect[0] + aspect[1]);
  if (style->most_height > 0.0)
    height = fmin (height, style->most_height);

  place->height = height;
  place->width[0] = height * aspect[0];
  place->width[1] = height * aspect[1];
  slack = fmax (0.0, style->width - gap - place->width[0] - place->width[1]);
  apart = fmin (slack, MOST_APART_PX * style->unit);
  place->x[0] = 0.5 * (slack - apart);
  place->x[1] = place->x[0] + place->width[0] + gap + apart;
}

static gboolean
has_level (const LrStrip *strip,
           int            side)
{
  const LrCameraReading *camera = strip->camera[side];

  return lr_strip_is_compared (strip) && camera->has_subject && camera->eyes_down >= 0.0 && camera->eyes_down <= 1.0
         && camera->eyes_across >= 0.0 && camera->eyes_across <= 1.0;
}

/* From where to where the head is, as shares of the picture's width; the eyes look out at its front */
static void
head_span (const LrCameraReading *camera,
           double                *from,
           double                *to)
{
  const LrPlaced *subject = camera->subject;
  double half = (0.5 * subject->body.head_depth_m + FACE_M) / camera->field_w_m, middle = camera->eyes_across;
  LrFramePoint head;

  if (lr_projection_point (&camera->projection, lr_vec3 (subject->at_m.x, subject->at_m.y, subject->eyes_m.z), &head))
    middle = head.across;

  *from = fmin (middle, camera->eyes_across) - half;
  *to = fmax (middle, camera->eyes_across) + half;
  if (fabs (middle - camera->eyes_across) < half)
    {
      *from = middle - half;
      *to = middle + half;
    }
}

/* White on dark, as all that lies over a picture; broken at the face */
static void
draw_level (cairo_t            *cr,
            const LrStrip      *strip,
            int                 side,
            const LrStripPlace *place,
            double              unit)
{
  const LrCameraReading *camera = strip->camera[side];
  double y = camera->eyes_down * place->height, width = place->width[side];
  const struct { double line, shade; } strokes[] = { { 2.6, 0.0 }, { 1.2, 1.0 } };
  double from, to;

  head_span (camera, &from, &to);
  from = CLAMP (from, 0.0, 1.0) * width;
  to = CLAMP (to, 0.0, 1.0) * width;
  for (gsize i = 0; i < G_N_ELEMENTS (strokes); i++)
    {
      double thick = strokes[i].line * unit;

      cairo_set_source_rgba (cr, strokes[i].shade, strokes[i].shade, strokes[i].shade, i == 0 ? 0.30 : 0.92);
      cairo_rectangle (cr, place->x[side], y - 0.5 * thick, from, thick);
      cairo_rectangle (cr, place->x[side] + to, y - 0.5 * thick, width - to, thick);
      cairo_fill (cr);
    }
}

static void
trace_arrow (cairo_t *cr,
             double   x,
             double   y,
             double   length, /* < 0: to the left */
             double   unit)
{
  double way = length < 0.0 ? -1.0 : 1.0, head = 7.0 * unit, half = 4.2 * unit, shaft = 1.3 * unit;
  double tip = x + length, neck = tip - way * head;

  cairo_move_to (cr, x, y - shaft);
  cairo_line_to (cr, neck, y - shaft);
  cairo_line_to (cr, neck, y - half);
  cairo_line_to (cr, tip, y);
  cairo_line_to (cr, neck, y + half);
  cairo_line_to (cr, neck, y + shaft);
  cairo_line_to (cr, x, y + shaft);
  cairo_close_path (cr);
}

/* As long as a look of that angle is in the picture: one that passes close by the lens is short */
static void
draw_look (cairo_t            *cr,
           const LrStrip      *strip,
           int                 side,
           const LrStripPlace *place,
           double              unit)
{
  const LrCameraReading *camera = strip->camera[side];
  LrLook look = lr_camera_look (camera);
  double width = place->width[side], way = look == LR_LOOK_LEFT ? -1.0 : 1.0;
  double left, right, from, room, length;

  head_span (camera, &left, &right);
  from = (way < 0.0 ? left : right) * width;
  room = way < 0.0 ? from : width - from;
  length = fmax (ARROW_PX * unit, ARROW_M * fabs (camera->look_across) / camera->field_w_m * width);

  if ((look != LR_LOOK_LEFT && look != LR_LOOK_RIGHT) || room < ARROW_PX * unit)
    return;

  trace_arrow (cr, place->x[side] + from, camera->eyes_down * place->height, way * fmin (length, room), unit);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.55);
  cairo_set_line_width (cr, 1.6 * unit);
  cairo_stroke_preserve (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_fill (cr);
}

/* Where thirds meet the edges: what the level of the eyes is held against, without lines through it */
static void
draw_thirds (cairo_t            *cr,
             const LrStripPlace *place,
             int                 side,
             double              unit)
{
  double x = place->x[side], width = place->width[side], height = place->height, reach = THIRD_PX * unit;
  const struct { double line, shade; } strokes[] = { { 2.2, 0.0 }, { 1.0, 1.0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (strokes); i++)
    {
      double thick = strokes[i].line * unit, half = 0.5 * thick;

      cairo_set_source_rgba (cr, strokes[i].shade, strokes[i].shade, strokes[i].shade, i == 0 ? 0.30 : 0.85);
      for (int k = 1; k < 3; k++)
        {
          cairo_rectangle (cr, x, k * height / 3.0 - half, reach, thick);
          cairo_rectangle (cr, x + width - reach, k * height / 3.0 - half, reach, thick);
          cairo_rectangle (cr, x + k * width / 3.0 - half, 0.0, thick, reach);
          cairo_rectangle (cr, x + k * width / 3.0 - half, height - reach, thick, reach);
        }
      cairo_fill (cr);
    }
}

/* What is in hand on the sheet is told of here too: in the colour that its geometry has there */
static LrColor
hand_color (const LrTheme      *theme,
            const LrStripStyle *style)
{
  return style->grade == LR_GRADE_FIX ? theme->fix_line : theme->ink;
}

static void
draw_hand (cairo_t            *cr,
           const LrTheme      *theme,
           const LrStripPlace *place,
           const LrStripStyle *style)
{
  double line = HAND_PX * style->unit;

  lr_theme_set_color (cr, hand_color (theme, style), 1.0);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width (cr, line);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    cairo_rectangle (cr, place->x[side] + 0.5 * line, 0.5 * line, place->width[side] - line, place->height - line);
  cairo_stroke (cr);
}

/* The line between the pictures, and the eyes' way over it */
static void
draw_splice (cairo_t            *cr,
             const LrTheme      *theme,
             const LrStrip      *strip,
             const LrStripPlace *place,
             const LrStripStyle *style)
{
  double unit = style->unit, out = SPLICE_PX * unit;
  double left = place->x[0] + place->width[0], right = place->x[1], x = 0.5 * (left + right);

  lr_theme_set_color (cr, style->is_in_hand ? hand_color (theme, style) : theme->ink2, 1.0);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width (cr, 1.0 * unit);
  cairo_move_to (cr, x, 0.0);
  cairo_line_to (cr, x, place->height);
  cairo_stroke (cr);
  for (int end = 0; end < 2; end++)
    {
      double y = end * place->height, way = end == 0 ? 1.0 : -1.0;

      cairo_move_to (cr, x - out, y - way * out);
      cairo_line_to (cr, x + out, y - way * out);
      cairo_line_to (cr, x, y + way * out);
      cairo_close_path (cr);
      cairo_fill (cr);
    }

  if (!has_level (strip, 0) || !has_level (strip, 1))
    return;

  lr_theme_set_color (cr, theme->ink, 1.0);
  cairo_set_line_width (cr, 1.8 * unit);
  cairo_move_to (cr, left, strip->camera[0]->eyes_down * place->height);
  cairo_line_to (cr, x, strip->camera[0]->eyes_down * place->height);
  cairo_line_to (cr, x, strip->camera[1]->eyes_down * place->height);
  cairo_line_to (cr, right, strip->camera[1]->eyes_down * place->height);
  cairo_stroke (cr);
}

/**
 * lr_strip_draw_guides:
 * @cr: where to draw, with the strip's upper left corner at 0, 0
 * @theme: of the ground between the pictures
 * @strip: two cameras
 * @style: as the pictures were placed by
 *
 * Splice, level of the eyes and direction of the look, over pictures that are drawn already.
 */
void
lr_strip_draw_guides (cairo_t            *cr,
                      const LrTheme      *theme,
                      const LrStrip      *strip,
                      const LrStripStyle *style)
{
  LrStripPlace place;

  lr_strip_place (strip, style, &place);
  cairo_save (cr);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    {
      draw_thirds (cr, &place, side, style->unit);
      if (has_level (strip, side))
        {
          draw_level (cr, strip, side, &place, style->unit);
          draw_look (cr, strip, side, &place, style->unit);
        }
    }
  if (style->is_in_hand)
    draw_hand (cr, theme, &place, style);
  draw_splice (cr, theme, strip, &place, style);
  cairo_restore (cr);
}

/**
 * lr_strip_draw_pictures:
 * @cr: where to draw, with the strip's upper left corner at 0, 0
 * @theme: of the ground between the pictures
 * @strip: two cameras
 * @style: width and most height
 *
 * Draws what both cameras see and what the cut does between them.
 */
void
lr_strip_draw_pictures (cairo_t            *cr,
                        const LrTheme      *theme,
                        const LrStrip      *strip,
                        const LrStripStyle *style)
{
  LrStripPlace place;

  lr_strip_place (strip, style, &place);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    {
      const LrViewfinderStyle own = { .width = place.width[side], .has_eye_pointers = TRUE, .unit = style->unit, .levels = strip->levels };

      cairo_save (cr);
      cairo_translate (cr, place.x[side], 0.0);
      lr_viewfinder_draw (cr, strip->study, strip->camera[side], &own);
      cairo_restore (cr);
    }
  lr_strip_draw_guides (cr, theme, strip, style);
}
