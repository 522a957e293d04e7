/* page_corners.c - the numbers of the room's corners, as places by tape name them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor.h"
#include "page_private.h"
#include "pen.h"

#define RING_PT    3.6
#define DOT_PT     1.2
#define NUMBER_PT 11.5 /* from the corner */
#define NUMBER_SIZE_PT 8.6
#define BEYOND_PT  5.0 /* from the outer corner of the wall, where it stands outside */
#define BASE_PT    3.1 /* middle of a figure over its baseline */

/* Whether a label there would cover a thing on the floor */
static gboolean
is_on_something (const LrStudy *study,
                 LrVec2         at_m,
                 double         reach)
{
  LrOutline label = lr_outline_disc (at_m, reach);

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->has_footprint && lr_outline_overlap_m (&placed->footprint, &label, NULL) > 0.0)
        return TRUE;
    }

  return FALSE;
}

/* Ring and dot, on a corner that tapes start from */
static void
draw_ring (const LrSheet *sheet,
           LrVec2         at)
{
  cairo_t *cr = sheet->cr;

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, RING_PT, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (cr, sheet->theme->room, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (cr, sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, DOT_PT, 0.0, 2.0 * LR_PI);
  cairo_fill (cr);
}

/* Its number in the room, or beyond the wall where the floor is taken */
static void
draw_corner (const LrSheet *sheet,
             const LrView  *view,
             gsize          corner,
             gboolean       is_taped)
{
  const LrRoom *room = sheet->study->setup->room;
  const LrTextStyle style = {
    .size = NUMBER_SIZE_PT, .weight = is_taped ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE
  };
  g_autofree char *number = g_strdup_printf ("%d", lr_room_corner_number (room, (int) corner));
  LrVec2 at_m = room->corners_m[corner], at = lr_view_to_device (view, at_m), inward = lr_room_inward (room, corner);
  double wall_pt = LR_WALL_M * view->scale;
  double away = NUMBER_PT;

  if (is_on_something (sheet->study, lr_vec2_along (at_m, inward, NUMBER_PT / view->scale), 4.0 / view->scale))
    away = -(G_SQRT2 * wall_pt + BEYOND_PT);

  if (is_taped)
    draw_ring (sheet, at);
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw_halo (sheet->cr, sheet->theme, &style, at.x + inward.x * away, at.y - inward.y * away + BASE_PT, number);
}

/**
 * lr_page_corners_draw:
 * @sheet: the page
 * @view: where the room is on it
 * @marks: (element-type LrTapeMark): what is found by tape
 *
 * Numbers the corners that tapes start from, with a ring, and the ends of the walls that distances are from.
 */
void
lr_page_corners_draw (const LrSheet *sheet,
                      const LrView  *view,
                      const GArray  *marks)
{
  const gsize n = sheet->study->setup->room->n_corners;
  gboolean is_taped[LR_MAX_CORNERS] = { FALSE }, is_named[LR_MAX_CORNERS] = { FALSE };

  for (guint i = 0; i < marks->len; i++)
    {
      const LrTapeMark *mark = &g_array_index (marks, LrTapeMark, i);

      for (gsize k = 0; k < 2 && mark->corners.way != LR_FIX_NONE; k++)
        is_taped[mark->corners.from[k]] = TRUE;
      for (gsize k = 0; k < 2 && mark->walls.way != LR_FIX_NONE; k++)
        is_named[mark->walls.from[k]] = is_named[(mark->walls.from[k] + 1) % n] = TRUE;
    }

  for (gsize i = 0; i < n && i < LR_MAX_CORNERS; i++)
    if (is_taped[i] || is_named[i])
      draw_corner (sheet, view, i, is_taped[i]);
}
