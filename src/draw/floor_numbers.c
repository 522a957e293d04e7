/* floor_numbers.c - the numbers of walls and corners, while a remark names them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor.h"
#include "floor_layers.h"
#include "text.h"

#include <glib/gi18n-lib.h>

#define IN_PX 15.0   /* of a wall's number from its wall, and of a corner's from its corner */
#define RING_PX 9.5
#define MIDDLE 0.36  /* of a figure's size, from its middle to its baseline */

static LrVec2
unit (LrVec2 way)
{
  return lr_vec2_scale (way, 1.0 / MAX (lr_vec2_length (way), 1e-9));
}

/**
 * lr_room_inward:
 * @room: a room
 * @corner: index of a corner
 *
 * Returns: halfway between the corner's two walls, into the room; a unit vector
 */
LrVec2
lr_room_inward (const LrRoom *room,
                gsize         corner)
{
  LrVec2 at_m = room->corners_m[corner];
  LrVec2 before = unit (lr_vec2_sub (room->corners_m[(corner + room->n_corners - 1) % room->n_corners], at_m));
  LrVec2 after = unit (lr_vec2_sub (room->corners_m[(corner + 1) % room->n_corners], at_m));

  return unit (lr_vec2_add (lr_vec2_left (after), lr_vec2_scale (lr_vec2_left (before), -1.0)));
}

static void
draw_wall (const LrFloor *floor,
           int            wall)
{
  LrTextStyle style = { .size = floor->theme->type_size[LR_TYPE_FIGURE], .weight = PANGO_WEIGHT_BOLD, .align = LR_ALIGN_CENTRE };
  /* Translators: a wall by its number */
  g_autofree char *name = g_strdup_printf (_("wall %d"), lr_room_wall_number (floor->room, wall));
  LrVec2 from_m, along, at, in;
  double length_m, half, width, height;

  if (!lr_room_wall (floor->room, wall, &from_m, &along, &length_m))
    return;

  /* beside a wall that stands upright the name needs room for its width */
  lr_text_measure (floor->cr, floor->theme, &style, name, &width, &height);
  half = 0.5 * width;
  in = lr_vec2 (-along.y, -along.x);
  at = lr_vec2_along (lr_floor_device (floor, lr_vec2_along (from_m, along, 0.5 * length_m)), in,
                      IN_PX * floor->px + fabs (in.x) * fmax (half - 0.5 * style.size, 0.0));
  lr_text_draw_halo (floor->cr, floor->theme, &style, at.x, at.y + MIDDLE * style.size, name);
  lr_labels_block_disc (floor->labels, at, half);
}

static void
draw_corner (const LrFloor *floor,
             int            corner)
{
  LrTextStyle style = { .size = floor->theme->type_size[LR_TYPE_FIGURE], .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  g_autofree char *number = g_strdup_printf ("%d", lr_room_corner_number (floor->room, corner));
  LrVec2 in = lr_room_inward (floor->room, (gsize) corner);
  LrVec2 at = lr_vec2_along (lr_floor_device (floor, floor->room->corners_m[corner]), lr_vec2 (in.x, -in.y), IN_PX * floor->px);

  cairo_new_sub_path (floor->cr);
  cairo_arc (floor->cr, at.x, at.y, RING_PX * floor->px, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (floor->cr, floor->theme->room, 1.0);
  cairo_fill_preserve (floor->cr);
  lr_theme_set_color (floor->cr, floor->theme->ink, 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
  lr_text_draw (floor->cr, floor->theme, &style, at.x, at.y + MIDDLE * style.size, number);
  lr_labels_block_disc (floor->labels, at, RING_PX * floor->px);
}

/* A wall that is named stands out from the others, which are drawn in ink as well */
static void
draw_named_walls (const LrFloor  *floor,
                  const LrRemark *remark)
{
  lr_theme_set_color (floor->cr, floor->theme->fix_line, 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_WALL, LR_DASH_SOLID);
  for (guint i = 0; remark->marks != NULL && i < remark->marks->len; i++)
    {
      const LrMark *mark = &g_array_index (remark->marks, LrMark, i);
      LrVec2 a = lr_floor_device (floor, mark->a_m), b = lr_floor_device (floor, mark->b_m);

      if (mark->type != LR_MARK_LINE)
        continue;
      cairo_move_to (floor->cr, a.x, a.y);
      cairo_line_to (floor->cr, b.x, b.y);
      cairo_stroke (floor->cr);
    }
}

/**
 * lr_floor_draw_numbers:
 * @floor: a drawing
 *
 * Inside the room, the numbers of walls and corners (those in a ring), as long as the remark in hand names some.
 */
void
lr_floor_draw_numbers (const LrFloor *floor)
{
  const LrRemark *remark = floor->view->remark;

  if (remark == NULL || remark->check != LR_CHECK_TAPE)
    return;

  cairo_save (floor->cr);
  draw_named_walls (floor, remark);
  for (int i = 0; i < (int) floor->room->n_corners; i++)
    {
      lr_theme_set_color (floor->cr, floor->theme->ink, 1.0);
      draw_wall (floor, i);
      draw_corner (floor, i);
    }
  cairo_restore (floor->cr);
}
