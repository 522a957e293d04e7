/* symbols_sound.c - microphones and noises from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pen.h"

#define DEFAULT_STAND_M 0.50
#define TRAY_ARM_M 1.10          /* an arm that has no place yet */
#define DEFAULT_SHORT_END_M 0.55
#define NOISE_ARC_RAD (43.0 * LR_DEG)

/* Where the capsule is in the item's own frame, and its axis on the floor; FALSE: it points straight down */
static gboolean
get_capsule (const LrPen *pen,
             LrVec2      *tip_m,
             double      *axis_rad)
{
  const LrMicrophone *microphone = &pen->item->microphone;

  *axis_rad = 0.0;
  if (pen->setup == NULL)
    {
      *tip_m = lr_vec2 (TRAY_ARM_M, 0.0);
      return TRUE;
    }

  *tip_m = lr_pen_to_item (pen, lr_vec2 (microphone->tip_x_m, microphone->tip_y_m));
  for (guint i = 0; i < pen->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (pen->setup->items, i);
      LrVec2 way;

      if (item->kind != LR_ITEM_PERSON || g_strcmp0 (item->id, microphone->aims_at) != 0)
        continue;

      way = lr_vec2_sub (lr_pen_to_item (pen, item->at_m), *tip_m);
      *axis_rad = lr_vec2_angle_rad (way);
      return lr_vec2_length (way) > 0.05;
    }

  return FALSE;
}

static void
draw_capsule (const LrPen *pen,
              LrVec2       tip_m,
              gboolean     is_level,
              double       axis_rad)
{
  LrVec2 half = lr_vec2_polar (axis_rad, is_level ? 0.11 - 0.032 : 0.0);

  lr_pen_capsule (pen, lr_vec2_sub (tip_m, half), lr_vec2_add (tip_m, half), is_level ? 0.032 : 0.045);
  lr_pen_paint (pen, pen->theme->family_fill[LR_FAMILY_SOUND], pen->theme->ink, LR_LINE_OUTLINE);
}

static void
draw_boom (const LrPen *pen)
{
  const LrMicrophone *microphone = &pen->item->microphone;
  const LrTheme *theme = pen->theme;
  double short_m = microphone->short_end_m > 0.0 ? microphone->short_end_m : DEFAULT_SHORT_END_M;
  double axis_rad, arm_rad;
  gboolean is_level;
  LrVec2 tip, back, along;

  is_level = get_capsule (pen, &tip, &axis_rad);
  arm_rad = lr_vec2_angle_rad (tip);
  along = lr_vec2_polar (arm_rad, 1.0);
  back = lr_vec2_scale (along, -short_m);

  lr_pen_stand (pen, microphone->stand_radius_m > 0.0 ? microphone->stand_radius_m : DEFAULT_STAND_M, arm_rad + LR_PI / 3.0);

  lr_pen_segment (pen, back.x, back.y, tip.x, tip.y);
  lr_theme_set_color (pen->cr, theme->room, 1.0);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (pen->cr, NULL, 0, 0.0);
  cairo_set_line_width (pen->cr, (theme->line_width[LR_LINE_OUTLINE] + theme->band_width) / pen->view->scale);
  cairo_stroke_preserve (pen->cr);
  lr_pen_stroke (pen, theme->ink, LR_LINE_OUTLINE, LR_DASH_SOLID);

  cairo_save (pen->cr);
  cairo_rotate (pen->cr, arm_rad);
  lr_pen_round_box (pen, -short_m, -0.055, 0.16 - short_m, 0.055, 0.02);
  lr_pen_fill (pen, theme->equipment);
  cairo_restore (pen->cr);

  lr_pen_disc (pen, 0.0, 0.0, 0.05);
  lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_OUTLINE);
  draw_capsule (pen, tip, is_level, axis_rad);
}

static void
draw_on_stand (const LrPen *pen)
{
  const LrMicrophone *microphone = &pen->item->microphone;
  double axis_rad;
  gboolean is_level;
  LrVec2 tip;

  is_level = get_capsule (pen, &tip, &axis_rad);
  if (pen->setup == NULL)
    tip = lr_vec2 (0.0, 0.0);

  lr_pen_stand (pen, microphone->stand_radius_m > 0.0 ? microphone->stand_radius_m : DEFAULT_STAND_M, LR_PI / 3.0);
  if (lr_vec2_length (tip) > 0.02)
    {
      lr_pen_segment (pen, 0.0, 0.0, tip.x, tip.y);
      lr_pen_stroke (pen, pen->theme->ink, LR_LINE_OUTLINE, LR_DASH_SOLID);
    }
  draw_capsule (pen, tip, is_level, axis_rad);
}

static void
draw_lavalier (const LrPen *pen)
{
  double radius_m = lr_pen_at_least (pen, 0.026, 2.2);

  lr_pen_disc (pen, LR_LAVALIER_AHEAD_M, LR_LAVALIER_LEFT_M, radius_m + 1.0 * pen->px_m);
  lr_pen_fill (pen, pen->theme->room);
  lr_pen_disc (pen, LR_LAVALIER_AHEAD_M, LR_LAVALIER_LEFT_M, radius_m);
  lr_pen_fill (pen, pen->theme->family_line[LR_FAMILY_SOUND]);
}

/* Over the lens, pointing with the camera */
static void
draw_on_camera (const LrPen *pen)
{
  draw_capsule (pen, lr_vec2 (LR_CAMERA_MIC_AHEAD_M, 0.0), TRUE, 0.0);
}

/**
 * lr_symbol_microphone:
 * @pen: a pen for a microphone; for one that is worn or on a camera the frame is its carrier's
 */
void
lr_symbol_microphone (const LrPen *pen)
{
  switch ((LrMicForm) pen->item->microphone.form)
    {
    case LR_MIC_BOOM:
      draw_boom (pen);
      break;
    case LR_MIC_LAVALIER:
      draw_lavalier (pen);
      break;
    case LR_MIC_CAMERA:
      draw_on_camera (pen);
      break;
    case LR_MIC_STAND:
    default:
      draw_on_stand (pen);
      break;
    }
}

/**
 * lr_symbol_noise:
 * @pen: a pen for a noise
 *
 * The thing's outline where one is given, a dot, and three arcs towards where it is heard. In the colour of Sound while
 * Sound is shown, else as a note.
 */
void
lr_symbol_noise (const LrPen *pen)
{
  static const double arcs[] = { 2.0, 3.1, 4.2 }; /* dot radii */
  const LrNoise *noise = &pen->item->noise;
  const LrTheme *theme = pen->theme;
  gboolean is_shown = (pen->view->shown & LR_SHOW_SOUND) != 0;
  LrColor color = is_shown ? theme->family_line[LR_FAMILY_SOUND] : theme->ink2;
  double dot_m = lr_pen_at_least (pen, 0.05, 2.6);

  if (noise->length_m > 0.0 && noise->width_m > 0.0)
    {
      lr_pen_box (pen, -0.5 * noise->length_m, -0.5 * noise->width_m, 0.5 * noise->length_m, 0.5 * noise->width_m);
      lr_pen_stroke (pen, theme->ink2, LR_LINE_THIN, LR_DASH_GHOST);
    }

  lr_pen_disc (pen, 0.0, 0.0, dot_m);
  if (noise->is_off)
    {
      lr_pen_stroke (pen, color, LR_LINE_THIN, LR_DASH_SOLID);
      return;
    }
  lr_pen_fill (pen, color);

  for (gsize i = 0; i < G_N_ELEMENTS (arcs); i++)
    {
      cairo_new_sub_path (pen->cr);
      cairo_arc (pen->cr, 0.0, 0.0, arcs[i] * dot_m, -NOISE_ARC_RAD, NOISE_ARC_RAD);
    }
  lr_pen_stroke (pen, color, LR_LINE_THIN, LR_DASH_SOLID);
}
