/* symbols_room.c - what belongs to the room: doors, windows, sockets, boards, house lights, leads
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Things on a wall: origin on the inner face in the middle of the thing, +x into the room, so the wall runs along -y.
 */

#include "pen.h"

#define GLASS_OUTER 0.58  /* two lines of the glass, shares of the band from the inner face */
#define GLASS_INNER 0.42
#define BLIND_M 0.06
#define BLIND_INSIDE_M 0.055 /* middle of the blind from the inner face */

/* The inner face's line ends beside an opening, with a band of the room's colour */
static void
break_wall (const LrPen *pen,
            double       half_m)
{
  const LrTheme *theme = pen->theme;

  lr_pen_segment (pen, 0.0, -half_m, 0.0, half_m);
  lr_theme_set_color (pen->cr, theme->room, 1.0);
  cairo_set_dash (pen->cr, NULL, 0, 0.0);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (pen->cr, (theme->line_width[LR_LINE_WALL] + 1.9 * theme->unit_px) / pen->view->scale);
  cairo_stroke (pen->cr);
}

/**
 * lr_symbol_door:
 * @pen: a pen for a door
 *
 * Opening cleared, leaf at a right angle, the quarter circle that it sweeps.
 */
void
lr_symbol_door (const LrPen *pen)
{
  const LrDoor *door = &pen->item->door;
  const LrTheme *theme = pen->theme;
  double half_m = 0.5 * door->width_m;
  double hinge_y = door->hinge == LR_HINGE_START ? half_m : -half_m;
  double into = door->swing == LR_SWING_OUT ? -1.0 : 1.0;
  double face_x = door->swing == LR_SWING_OUT ? -LR_WALL_M : 0.0;
  double tip_x = face_x + into * door->width_m;

  break_wall (pen, half_m);
  lr_pen_box (pen, -LR_WALL_M, -half_m, 0.0, half_m);
  lr_pen_fill (pen, theme->room);
  for (int side = -1; side <= 1; side += 2)
    lr_pen_segment (pen, -LR_WALL_M, side * half_m, 0.0, side * half_m);
  lr_pen_stroke (pen, theme->ink, LR_LINE_THIN, LR_DASH_SOLID);

  if (door->swing == LR_SWING_NONE)
    return;

  cairo_new_sub_path (pen->cr);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, face_x, hinge_y);
  cairo_scale (pen->cr, into, hinge_y > 0.0 ? -1.0 : 1.0);
  cairo_arc (pen->cr, 0.0, 0.0, door->width_m, 0.0, 0.5 * LR_PI);
  cairo_restore (pen->cr);
  lr_pen_stroke (pen, theme->ink2, LR_LINE_HAIR, LR_DASH_SOLID);

  lr_pen_box (pen, face_x, hinge_y, tip_x, hinge_y - (hinge_y > 0.0 ? LR_DOOR_LEAF_M : -LR_DOOR_LEAF_M));
  lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_THIN);
}

static void
draw_blind (const LrPen *pen,
            double       half_m)
{
  const LrTheme *theme = pen->theme;
  double near = BLIND_INSIDE_M - 0.5 * BLIND_M, far = BLIND_INSIDE_M + 0.5 * BLIND_M;

  switch ((LrBlind) pen->item->window.blind)
    {
    case LR_BLIND_UP:
      lr_pen_box (pen, near, -half_m, far, -half_m + BLIND_M);
      lr_pen_box (pen, near, half_m - BLIND_M, far, half_m);
      lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_THIN);
      break;

    case LR_BLIND_HALF:
      lr_pen_box (pen, near, -half_m, far, half_m);
      lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_THIN);
      for (double y = -half_m; y < half_m - 0.5 * BLIND_M; y += BLIND_M)
        lr_pen_segment (pen, near, MIN (y + BLIND_M, half_m), far, y);
      lr_pen_stroke (pen, theme->ink, LR_LINE_HAIR, LR_DASH_SOLID);
      break;

    case LR_BLIND_DOWN:
      lr_pen_box (pen, near, -half_m, far, half_m);
      lr_pen_paint (pen, theme->blind, theme->ink, LR_LINE_THIN);
      break;

    case LR_BLIND_NONE:
    default:
      break;
    }
}

/**
 * lr_symbol_window:
 * @pen: a pen for a window
 */
void
lr_symbol_window (const LrPen *pen)
{
  const LrTheme *theme = pen->theme;
  double half_m = 0.5 * pen->item->window.width_m;

  break_wall (pen, half_m);
  lr_pen_box (pen, -LR_WALL_M, -half_m, 0.0, half_m);
  lr_pen_paint (pen, theme->glass, theme->ink, LR_LINE_THIN);
  lr_pen_segment (pen, -GLASS_INNER * LR_WALL_M, -half_m, -GLASS_INNER * LR_WALL_M, half_m);
  lr_pen_segment (pen, -GLASS_OUTER * LR_WALL_M, -half_m, -GLASS_OUTER * LR_WALL_M, half_m);
  lr_pen_stroke (pen, theme->ink, LR_LINE_HAIR, LR_DASH_SOLID);
  draw_blind (pen, half_m);
}

/**
 * lr_symbol_socket:
 * @pen: a pen for a socket
 *
 * Stem, half circle open to the room, earth bar.
 */
void
lr_symbol_socket (const LrPen *pen)
{
  double r = MAX (0.075, 5.2 / pen->view->scale);
  double back = 0.85 * r;

  lr_pen_segment (pen, 0.0, 0.0, back, 0.0);
  lr_pen_segment (pen, back, -0.9 * r, back, 0.9 * r);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, back + r, 0.0, r, 0.5 * LR_PI, 1.5 * LR_PI);
  lr_pen_stroke (pen, pen->theme->ink, LR_LINE_OUTLINE, LR_DASH_SOLID);
}

/**
 * lr_symbol_circuit:
 * @pen: a pen for a circuit's board
 */
void
lr_symbol_circuit (const LrPen *pen)
{
  const LrTheme *theme = pen->theme;

  lr_pen_box (pen, 0.0, -0.17, 0.10, 0.17);
  lr_pen_fill (pen, theme->room);
  lr_pen_box (pen, 0.0, -0.17, 0.10, 0.0);
  lr_pen_fill (pen, theme->equipment);
  lr_pen_box (pen, 0.0, -0.17, 0.10, 0.17);
  lr_pen_stroke (pen, theme->ink, LR_LINE_OUTLINE, LR_DASH_SOLID);
}

/**
 * lr_symbol_house_light:
 * @pen: a pen for a house light
 */
void
lr_symbol_house_light (const LrPen *pen)
{
  const LrTheme *theme = pen->theme;
  gboolean is_on = pen->item->house_light.is_on;
  double r = lr_pen_at_least (pen, 0.16, 6.0);
  double k = r * G_SQRT2 / 2.0;

  lr_pen_disc (pen, 0.0, 0.0, r);
  if (is_on)
    {
      lr_theme_set_color (pen->cr, theme->family_fill[LR_FAMILY_LIGHT], 0.55);
      cairo_fill_preserve (pen->cr);
    }
  lr_pen_stroke (pen, theme->ink2, LR_LINE_THIN, is_on ? LR_DASH_SOLID : LR_DASH_SHORT);
  lr_pen_segment (pen, -k, -k, k, k);
  lr_pen_segment (pen, -k, k, k, -k);
  lr_pen_stroke (pen, theme->ink2, LR_LINE_THIN, LR_DASH_SOLID);
}

/* Where the plug is: at the mouth of its socket if the path starts there */
static LrVec2
plug_place (const LrPen *pen,
            LrVec2      *across)
{
  const LrItem *item = pen->item;
  LrVec2 start_m = item->path_m[0], way = lr_vec2_sub (item->path_m[1], start_m);
  double socket_m = MAX (0.075, 5.2 / pen->view->scale);

  *across = lr_vec2_left (lr_vec2_scale (way, 1.0 / MAX (lr_vec2_length (way), 1e-6)));
  for (guint i = 0; pen->setup != NULL && *item->lead.socket != '\0' && i < pen->setup->items->len; i++)
    {
      const LrItem *socket = g_ptr_array_index (pen->setup->items, i);
      LrVec2 at_m, in;
      double facing_rad;

      if (socket->kind != LR_ITEM_SOCKET || g_strcmp0 (socket->id, item->lead.socket) != 0
          || !lr_setup_place (pen->setup, socket, &at_m, &facing_rad) || lr_vec2_distance (at_m, start_m) > 0.12)
        continue;
      in = lr_vec2_polar (facing_rad, 1.0);
      *across = lr_vec2_left (in);
      start_m = lr_vec2_along (at_m, in, 1.85 * socket_m + 2.0 * pen->px_m);
      break;
    }
  *across = lr_vec2_rotate (*across, -pen->placed->facing_rad);

  return lr_pen_to_item (pen, start_m);
}

/* Corners eased over .12 m */
static void
trace_lead (const LrPen *pen,
            LrVec2       plug)
{
  const double ease_m = 0.12;
  const LrItem *item = pen->item;
  LrVec2 at = plug;

  cairo_move_to (pen->cr, at.x, at.y);
  for (gsize i = 1; i + 1 < item->n_path; i++)
    {
      LrVec2 corner = lr_pen_to_item (pen, item->path_m[i]);
      LrVec2 next = lr_pen_to_item (pen, item->path_m[i + 1]);
      double before_m = MAX (lr_vec2_distance (at, corner), 1e-6), after_m = MAX (lr_vec2_distance (corner, next), 1e-6);
      double cut_in = MIN (ease_m, 0.5 * before_m) / before_m, cut_out = MIN (ease_m, 0.5 * after_m) / after_m;
      LrVec2 in = lr_vec2_along (corner, lr_vec2_sub (at, corner), cut_in);
      LrVec2 out = lr_vec2_along (corner, lr_vec2_sub (next, corner), cut_out);

      cairo_line_to (pen->cr, in.x, in.y);
      cairo_curve_to (pen->cr, corner.x, corner.y, corner.x, corner.y, out.x, out.y);
      at = corner;
    }
  at = lr_pen_to_item (pen, item->path_m[item->n_path - 1]);
  cairo_line_to (pen->cr, at.x, at.y);
}

static LrLineWeight
lead_weight (const LrPen *pen)
{
  return (pen->view->shown & LR_SHOW_POWER) != 0 ? LR_LINE_THICK : LR_LINE_THIN;
}

/**
 * lr_symbol_lead_dash:
 * @setup: a set-up
 * @circuit: id of a circuit, or ""
 *
 * Returns: the dash of leads that hang on it: as many dots as its place among the circuits, the fourth as the first
 */
LrDash
lr_symbol_lead_dash (const LrSetup *setup,
                     const char    *circuit)
{
  int n_before = 0;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);

      if (item->kind != LR_ITEM_CIRCUIT)
        continue;
      if (g_str_equal (item->id, circuit))
        return (LrDash) (LR_DASH_LEAD + n_before % 3);
      n_before++;
    }

  return LR_DASH_LEAD;
}

static LrDash
lead_dash (const LrPen *pen)
{
  const LrItem *socket = pen->setup != NULL ? lr_setup_find (pen->setup, pen->item->lead.socket) : NULL;

  return socket != NULL ? lr_symbol_lead_dash (pen->setup, socket->socket.circuit) : LR_DASH_LEAD;
}

/**
 * lr_symbol_lead_line:
 * @pen: a pen for a lead
 *
 * The lead without the band that parts it from what it passes over.
 */
void
lr_symbol_lead_line (const LrPen *pen)
{
  LrColor color = pen->theme->family_line[LR_FAMILY_POWER];
  const LrItem *item = pen->item;
  LrVec2 plug, load, across;

  if (item->n_path < 2)
    return;

  plug = plug_place (pen, &across);
  trace_lead (pen, plug);
  lr_pen_stroke (pen, color, lead_weight (pen), lead_dash (pen));

  load = lr_pen_to_item (pen, item->path_m[item->n_path - 1]);
  lr_pen_disc (pen, load.x, load.y, 2.4 / pen->view->scale);
  lr_pen_fill (pen, color);

  across = lr_vec2_scale (across, 3.6 / pen->view->scale);
  lr_pen_segment (pen, plug.x - across.x, plug.y - across.y, plug.x + across.x, plug.y + across.y);
  lr_pen_bar (pen, color, LR_LINE_THICK);
}

/**
 * lr_symbol_lead_band:
 * @pen: a pen for a lead
 * @color: of the band
 * @alpha: of the band
 * @extra: how much wider than the lead, device units
 *
 * A band along the lead: the floor's colour under it, a halo, an outline.
 */
void
lr_symbol_lead_band (const LrPen *pen,
                     LrColor      color,
                     double       alpha,
                     double       extra)
{
  LrVec2 across;

  if (pen->item->n_path < 2)
    return;

  trace_lead (pen, plug_place (pen, &across));
  lr_theme_set_color (pen->cr, color, alpha);
  lr_theme_set_line_at (pen->cr, pen->theme, lead_weight (pen), LR_DASH_SOLID, pen->view->scale);
  cairo_set_line_width (pen->cr, (pen->theme->line_width[lead_weight (pen)] + extra) / pen->view->scale);
  cairo_stroke (pen->cr);
}

/**
 * lr_symbol_lead:
 * @pen: a pen for a lead
 *
 * Along its path on the floor: a bar at the plug, a dot at the load. Thick while Power is shown.
 */
void
lr_symbol_lead (const LrPen *pen)
{
  lr_symbol_lead_band (pen, pen->theme->room, 1.0, pen->theme->band_width);
  lr_symbol_lead_line (pen);
}
