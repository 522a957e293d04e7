/* symbols_icon.c - the Tray's pictures of things
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One scale for all that fit, so that a picture also says how much floor a thing takes.
 */

#include "symbols.h"

#include "pen.h"

#define SHOWN_M 1.20 /* metres across a picture of something small */

/* A capsule with its cable: on the wearer it would be a dot */
static void
draw_lavalier (cairo_t       *cr,
               const LrTheme *theme,
               double         size)
{
  double u = size / 34.0;

  cairo_move_to (cr, -12.0 * u, 11.0 * u);
  cairo_curve_to (cr, -8.0 * u, 2.0 * u, 4.0 * u, 11.0 * u, 4.0 * u, -4.0 * u);
  lr_theme_set_color (cr, theme->ink, 1.0);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
  cairo_arc (cr, 4.0 * u, -7.0 * u, 4.2 * u, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (cr, theme->family_line[LR_FAMILY_SOUND], 1.0);
  cairo_fill (cr);
}

/* A coil */
static void
draw_lead (cairo_t       *cr,
           const LrTheme *theme,
           double         size)
{
  double u = size / 34.0;

  for (int i = 0; i < 3; i++)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, -1.0 * u, -1.0 * u, (4.6 + 3.0 * i) * u, 0.0, 2.0 * LR_PI);
    }
  cairo_move_to (cr, 9.6 * u, 0.0);
  cairo_line_to (cr, 16.0 * u, 8.0 * u);
  lr_theme_set_color (cr, theme->family_line[LR_FAMILY_POWER], 1.0);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
}

/* The box, in the item's own frame, that its picture should show */
static void
get_box_m (const LrItem *item,
           double       *x0_m,
           double       *x1_m,
           double       *half_y_m)
{
  *x0_m = -0.5;
  *x1_m = 0.5;
  *half_y_m = 0.5;

  switch (item->kind)
    {
    case LR_ITEM_PERSON:
      *x0_m = -0.30;
      *x1_m = 0.68;
      break;
    case LR_ITEM_MICROPHONE:
      *x0_m = -0.56;
      *x1_m = 1.22;
      break;
    case LR_ITEM_LIGHT:
      *half_y_m = MAX (0.5, 0.5 * item->light.width_m);
      break;
    case LR_ITEM_PANEL:
      *half_y_m = MAX (0.5, 0.5 * item->panel.width_m + 0.06);
      break;
    case LR_ITEM_FURNITURE:
      *x1_m = 0.5 * item->furniture.length_m;
      *x0_m = -*x1_m;
      *half_y_m = 0.5 * item->furniture.width_m;
      break;
    case LR_ITEM_DOOR:
      *x0_m = -LR_WALL_M;
      *x1_m = item->door.width_m;
      *half_y_m = 0.5 * item->door.width_m + 0.08;
      break;
    case LR_ITEM_WINDOW:
      *x0_m = -LR_WALL_M;
      *x1_m = 0.1;
      *half_y_m = 0.5 * item->window.width_m + 0.08;
      break;
    case LR_ITEM_CAMERA:
    case LR_ITEM_LEAD:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}

/* Things on a wall are shown as on the wall below; a backdrop and wide furniture lie along the sheet */
static double
icon_facing_rad (const LrItem *item)
{
  if (item->kind == LR_ITEM_FURNITURE && item->furniture.width_m > item->furniture.length_m)
    return -0.5 * LR_PI;

  if (item->kind == LR_ITEM_DOOR || item->kind == LR_ITEM_WINDOW || item->kind == LR_ITEM_SOCKET
      || item->kind == LR_ITEM_CIRCUIT || (item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_BACKDROP))
    return 0.5 * LR_PI;

  return 0.0;
}

/**
 * lr_symbol_draw_icon:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @item: a kit entry's item
 * @size: side of the picture, device units
 *
 * Draws the item's picture into the square from 0, 0 to @size, @size.
 */
void
lr_symbol_draw_icon (cairo_t       *cr,
                     const LrTheme *theme,
                     const LrItem  *item,
                     double         size)
{
  LrView view = { .theme = theme, .width = size, .height = size, .shown = LR_SHOW_SOUND };
  LrPlaced placed = { .item = item };
  double x0_m, x1_m, half_y_m;

  cairo_save (cr);
  cairo_translate (cr, 0.5 * size, 0.5 * size);

  if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_LAVALIER)
    draw_lavalier (cr, theme, size);
  else if (item->kind == LR_ITEM_LEAD)
    draw_lead (cr, theme, size);
  else
    {
      get_box_m (item, &x0_m, &x1_m, &half_y_m);
      view.scale = (size - 2.0) / MAX (MAX (x1_m - x0_m, 2.0 * half_y_m), SHOWN_M);
      cairo_scale (cr, view.scale, -view.scale);
      cairo_rotate (cr, icon_facing_rad (item));
      cairo_translate (cr, -0.5 * (x0_m + x1_m), 0.0);
      lr_symbol_draw (cr, &view, &placed, NULL);
    }

  cairo_restore (cr);
}
