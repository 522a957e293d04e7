/* overlay_light.c - where each light goes, and how much is left of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strokes stand where the level on the axis is whole stops from that at the aim: by the distance law from a point, by its true size
 * from a wide source. Each stroke halves the light.
 * The pool is a sign of where the light goes, not a measure: a soft emitter's beam would cover the sheet.
 */

#include "floor_layers.h"
#include "light_readings.h"
#include "washes.h"

#define AXIS_FROM_M 0.22
#define STOPS_PAST_AIM 2
#define TICK_PX 9.0
#define ZERO_TICK_PX 14.0
#define HEAD_CLEAR_M 0.18
#define LABEL_OFF_PX 11.0
#define LEAST_SCALE_FOR_STOPS 60.0 /* px to the metre */
#define SOFT_POOL_RAD (15.0 * LR_DEG)
#define HARD_POOL_MOST_RAD (40.0 * LR_DEG)
#define NO_AIM_REACH_M 3.0
#define ARROW_TO_M 0.85
#define MANY_AXES 64 /* with more there is no free side to look for */

typedef struct
{
  LrVec2   from_m, direction; /* on the floor */
  double   aim_m;             /* to the aim, on the floor; NAN if there is none */
  double   end_m;             /* where the axis meets a wall or the floor, or fades out */
  double   level;             /* share of a way along the axis that it is long on the floor */
  const LrPlaced *placed;
  gboolean is_drawn;          /* by this half of a drag */
} Axis;

/* To the nearest wall, or the floor */
static double
surface_m (const LrFloor *floor,
           LrVec2         from_m,
           LrVec2         direction,
           double         height_m,
           double         fall)
{
  double distance_m = HUGE_VAL;
  LrRayHit hit;

  if (floor->room->n_corners >= 3
      && lr_polygon_ray (floor->room->corners_m, floor->room->n_corners, from_m, direction, &hit))
    distance_m = hit.distance_m;
  if (fall > 0.0)
    distance_m = MIN (distance_m, height_m / fall);

  return distance_m;
}

static gboolean
get_axis (const LrFloor  *floor,
          const LrPlaced *placed,
          Axis           *axis)
{
  const LrLight *light = &placed->item->light;
  const LrPlaced *target = lr_study_find_placed (floor->study, light->aims_at);
  double fall = -tan (light->tilt_rad), surface;

  axis->from_m = placed->at_m;
  axis->direction = lr_vec2_polar (placed->facing_rad, 1.0);
  axis->aim_m = NAN;

  if (target != NULL)
    {
      double aim_height_m = light->aim_height_m > 0.0 ? light->aim_height_m : target->point_m.z;

      axis->aim_m = lr_vec2_distance (placed->at_m, lr_vec3_flat (target->point_m));
      if (axis->aim_m < AXIS_FROM_M)
        return FALSE; /* it hangs over its aim */
      fall = (light->lamp_height_m - aim_height_m) / axis->aim_m;
    }

  axis->placed = placed;
  axis->level = 1.0 / sqrt (1.0 + fall * fall);
  surface = surface_m (floor, axis->from_m, axis->direction, light->lamp_height_m, fall);
  if (target == NULL && isfinite (surface))
    axis->aim_m = surface;
  axis->end_m = NO_AIM_REACH_M;
  if (!isnan (axis->aim_m) && lr_light_stop_m (floor->study, placed, axis->aim_m / axis->level, -STOPS_PAST_AIM, &axis->end_m))
    axis->end_m *= axis->level;
  axis->end_m = MIN (surface, axis->end_m);

  return axis->end_m > AXIS_FROM_M;
}

/* Pools */

typedef struct
{
  double front_m, half_m, spread_rad;
} Emitter;

static Emitter
get_emitter (const LrItem *item)
{
  const LrLight *light = &item->light;
  double half_rad = 0.5 * lr_item_beam_rad (item);

  switch ((LrLightForm) light->form)
    {
    case LR_LIGHT_WIDE:
      return (Emitter) { 0.205, 0.5 * light->width_m, MIN (half_rad, SOFT_POOL_RAD) };
    case LR_LIGHT_PANEL:
      return (Emitter) { 0.07, 0.5 * light->width_m, MIN (half_rad, SOFT_POOL_RAD) };
    case LR_LIGHT_POINT:
    default:
      return (Emitter) { 0.105, 0.07, MIN (half_rad, HARD_POOL_MOST_RAD) };
    }
}

static void
fill_pool (const LrFloor *floor,
           const Axis    *axis)
{
  Emitter emitter = get_emitter (axis->placed->item);
  LrVec2 left = lr_vec2_left (axis->direction);
  LrVec2 near_m = lr_vec2_along (axis->from_m, axis->direction, emitter.front_m);
  LrVec2 far_m = lr_vec2_along (axis->from_m, axis->direction, axis->end_m);
  double wide_m = emitter.half_m + (axis->end_m - emitter.front_m) * tan (emitter.spread_rad);
  LrVec2 corners_m[4] = {
    lr_vec2_along (near_m, left, emitter.half_m), lr_vec2_along (far_m, left, wide_m), lr_vec2_along (far_m, left, -wide_m),
    lr_vec2_along (near_m, left, -emitter.half_m),
  };

  if (axis->end_m > emitter.front_m)
    lr_wash_fill_within (floor, floor->room->corners_m, floor->room->n_corners, corners_m, G_N_ELEMENTS (corners_m), near_m, far_m,
                         floor->theme->family_fill[LR_FAMILY_LIGHT], lr_floor_wash (floor, LR_FAMILY_LIGHT), 0.0);
}

/**
 * lr_overlay_light_pools:
 * @floor: a drawing
 */
void
lr_overlay_light_pools (const LrFloor *floor)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  if (!(floor->view->shown & LR_SHOW_LIGHT) || floor->view->is_page)
    return;

  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      Axis axis = { 0 };

      if (placed[i].item->kind == LR_ITEM_LIGHT && placed[i].item->light.dim > 0.0 && floor->is_drawn[i] && get_axis (floor, &placed[i], &axis))
        fill_pool (floor, &axis);
    }
}

/* Axes and stops */

static gboolean
is_at_head (const LrFloor *floor,
            LrVec2         at_m)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  for (guint i = 0; i < floor->study->placed->len; i++)
    if (placed[i].item->kind == LR_ITEM_PERSON && lr_vec2_distance (placed[i].at_m, at_m) < HEAD_CLEAR_M)
      return TRUE;

  return FALSE;
}

/* The side of the axis, +1 its left, on which the nearest other axis does not run */
static double
free_side (const GArray *axes,
           const Axis   *axis,
           LrVec2        at_m)
{
  double nearest_m = HUGE_VAL, side = 1.0;

  if (axes->len > MANY_AXES)
    return side;

  for (guint i = 0; i < axes->len; i++)
    {
      const Axis *other = &g_array_index (axes, Axis, i);
      LrVec2 on_m;
      double distance_m;

      if (lr_vec2_distance (other->from_m, axis->from_m) < 1e-6)
        continue;
      distance_m = lr_segment_distance_m (other->from_m, lr_vec2_along (other->from_m, other->direction, other->end_m), at_m,
                                          &on_m);
      if (distance_m >= nearest_m)
        continue;
      nearest_m = distance_m;
      side = lr_vec2_cross (axis->direction, lr_vec2_sub (on_m, at_m)) > 0.0 ? -1.0 : 1.0;
    }

  return side;
}

static void
label_stop (const LrFloor *floor,
            const GArray  *axes,
            const Axis    *axis,
            LrVec2         at_m,
            int            stops)
{
  g_autofree char *text = g_strdup_printf ("%s%d", stops > 0 ? "+" : "\u2212", ABS (stops));
  LrVec2 left = lr_vec2_left (axis->direction);
  LrVec2 at = lr_floor_device (floor, at_m), off = lr_vec2 (left.x, -left.y);
  double reach = LABEL_OFF_PX + 0.5 * TICK_PX * fabs (off.y), side = free_side (axes, axis, at_m);
  LrVec2 places[2] = { lr_vec2_along (at, off, side * reach), lr_vec2_along (at, off, -side * reach) };
  LrLabel label = {
    .rank = LR_LABEL_SCALE,
    .stands_on_lines = TRUE,
    .text = text,
    .style = { .size = floor->theme->type_size[LR_TYPE_STOP], .weight = PANGO_WEIGHT_SEMIBOLD },
    .color = floor->theme->family_line[LR_FAMILY_LIGHT],
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  lr_labels_add_at (floor->labels, &label, places, 2);
}

static void
draw_stops (const LrFloor *floor,
            const GArray  *axes,
            const Axis    *axis)
{
  LrVec2 left = lr_vec2_left (axis->direction);
  LrVec2 off = lr_vec2 (left.x, -left.y);

  if (isnan (axis->aim_m) || floor->view->scale < LEAST_SCALE_FOR_STOPS)
    return;

  for (int stops = STOPS_PAST_AIM; stops >= -STOPS_PAST_AIM; stops--)
    {
      double half = 0.5 * (stops == 0 ? ZERO_TICK_PX : TICK_PX) * floor->px, along_m;
      LrVec2 at_m, at;

      if (!lr_light_stop_m (floor->study, axis->placed, axis->aim_m / axis->level, stops, &along_m))
        continue;
      along_m *= axis->level;
      at_m = lr_vec2_along (axis->from_m, axis->direction, along_m);
      at = lr_floor_device (floor, at_m);
      if (along_m < AXIS_FROM_M || along_m > axis->end_m + 1e-6 || is_at_head (floor, at_m))
        continue;
      cairo_move_to (floor->cr, at.x - half * off.x, at.y - half * off.y);
      cairo_line_to (floor->cr, at.x + half * off.x, at.y + half * off.y);
      if (stops != 0)
        label_stop (floor, axes, axis, at_m, stops);
    }
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
}

static void
draw_axis (const LrFloor *floor,
           const GArray  *axes,
           const Axis    *axis)
{
  lr_floor_move_to (floor, lr_vec2_along (axis->from_m, axis->direction, AXIS_FROM_M));
  lr_floor_line_to (floor, lr_vec2_along (axis->from_m, axis->direction, axis->end_m));
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_LIGHT], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_AXIS);
  cairo_stroke (floor->cr);
  lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, axis->from_m),
                           lr_floor_device (floor, lr_vec2_along (axis->from_m, axis->direction, axis->end_m)));
  draw_stops (floor, axes, axis);
}

/* On paper: the way it points, and no more */
static void
draw_aim_arrow (const LrFloor *floor,
                const Axis    *axis)
{
  double from_m = MAX (get_emitter (axis->placed->item).front_m + 0.10, AXIS_FROM_M);
  double to_m = MIN (MAX (ARROW_TO_M, from_m + 0.3), axis->end_m);
  LrVec2 way = lr_vec2 (axis->direction.x, -axis->direction.y);
  LrVec2 from = lr_floor_device (floor, lr_vec2_along (axis->from_m, axis->direction, from_m));
  LrVec2 tip = lr_floor_device (floor, lr_vec2_along (axis->from_m, axis->direction, to_m));

  if (to_m - from_m < 0.1)
    return;

  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_LIGHT], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_move_to (floor->cr, from.x, from.y);
  cairo_line_to (floor->cr, tip.x - 3.0 * way.x, tip.y - 3.0 * way.y);
  cairo_stroke (floor->cr);
  lr_floor_arrowhead (floor->cr, tip, way, 5.0);
  lr_labels_avoid_segment (floor->labels, from, tip);
}

static GArray *
find_axes (const LrFloor *floor)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;
  GArray *axes = g_array_new (FALSE, FALSE, sizeof (Axis));

  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      Axis axis = { .is_drawn = floor->is_drawn[i] };

      /* a lamp that is out points somewhere on paper, and gives nothing on the sheet */
      if (placed[i].item->kind == LR_ITEM_LIGHT && (placed[i].item->light.dim > 0.0 || floor->view->is_page) && get_axis (floor, &placed[i], &axis))
        g_array_append_val (axes, axis);
    }

  return axes;
}

/**
 * lr_overlay_light_axes:
 * @floor: a drawing
 *
 * Axis of each light with strokes at whole stops from the level at its aim; on paper a short arrow.
 */
void
lr_overlay_light_axes (const LrFloor *floor)
{
  g_autoptr (GArray) axes = NULL;

  if (!(floor->view->shown & LR_SHOW_LIGHT) && !floor->view->is_page)
    return;

  axes = find_axes (floor);
  cairo_save (floor->cr);
  for (guint i = 0; i < axes->len; i++)
    {
      const Axis *axis = &g_array_index (axes, Axis, i);

      if (!axis->is_drawn)
        continue;
      if (floor->view->is_page)
        draw_aim_arrow (floor, axis);
      else
        draw_axis (floor, axes, axis);
    }
  cairo_restore (floor->cr);
}
