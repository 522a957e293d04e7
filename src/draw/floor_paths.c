/* floor_paths.c - from the room to the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "floor_layers.h"

/* A boom's weight to both sides, and its capsule past the tip */
#define BOOM_HALF_M 0.055
#define CAPSULE_HALF_M 0.11

/**
 * lr_floor_to_item:
 * @cr: a cairo context whose unit is the device's
 * @view: how the drawing looks at the room
 * @placed: an item
 *
 * From here on the unit is a metre in the item's own frame, y up.
 */
void
lr_floor_to_item (cairo_t        *cr,
                  const LrView   *view,
                  const LrPlaced *placed)
{
  LrVec2 at = lr_view_to_device (view, placed->at_m);

  cairo_translate (cr, at.x, at.y);
  cairo_scale (cr, view->scale, -view->scale);
  cairo_rotate (cr, placed->facing_rad);
}

static double
device_angle_rad (LrVec2 from,
                  LrVec2 to)
{
  return atan2 (to.y - from.y, to.x - from.x);
}

/**
 * lr_floor_trace_outline:
 * @cr: a cairo context whose unit is the device's
 * @view: how the drawing looks at the room
 * @outline: an outline [m]
 * @outside: how far outside it the path runs, device units
 *
 * A closed path around the outline, its corners round.
 */
void
lr_floor_trace_outline (cairo_t         *cr,
                        const LrView    *view,
                        const LrOutline *outline,
                        double           outside)
{
  LrVec2 centre = lr_view_to_device (view, outline->centre_m);
  gsize n = outline->n;

  cairo_new_sub_path (cr);
  if (n == 0)
    cairo_arc (cr, centre.x, centre.y, outline->radius_m * view->scale + outside, 0.0, 2.0 * LR_PI);

  /* anticlockwise in the room is clockwise for cairo's angles: backwards it turns the way of cairo_arc () */
  for (gsize i = n; i-- > 0;)
    {
      LrVec2 at = lr_view_to_device (view, outline->corner_m[i]);
      LrVec2 before = lr_view_to_device (view, outline->corner_m[(i + 1) % n]);
      LrVec2 after = lr_view_to_device (view, outline->corner_m[(i + n - 1) % n]);

      cairo_arc (cr, at.x, at.y, outside, device_angle_rad (before, at) - 0.5 * LR_PI, device_angle_rad (at, after) - 0.5 * LR_PI);
    }
  cairo_close_path (cr);
}

/* The half of the circle around the base that lies along +x, with the arm that leaves it there, if it does */
static void
trace_half_boom (cairo_t *cr,
                 double   radius,
                 double   half,
                 double   end)
{
  double leave_rad = end > radius ? asin (half / radius) : 0.0;

  cairo_arc (cr, 0.0, 0.0, radius, -0.5 * LR_PI, -leave_rad);
  if (leave_rad > 0.0)
    cairo_arc (cr, end - half, 0.0, half, -0.5 * LR_PI, 0.5 * LR_PI);
  cairo_arc (cr, 0.0, 0.0, radius, leave_rad, 0.5 * LR_PI);
}

/* Around its stand, its arm and what hangs on both ends, not the empty floor between */
static void
trace_boom (cairo_t        *cr,
            const LrView   *view,
            const LrPlaced *placed,
            double          outside)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrVec2 base = lr_view_to_device (view, placed->at_m);
  LrVec2 way = lr_vec2_sub (lr_view_to_device (view, lr_vec2 (microphone->tip_x_m, microphone->tip_y_m)), base);
  double half = BOOM_HALF_M * view->scale + outside, radius = MAX (microphone->stand_radius_m * view->scale + outside, half);

  cairo_save (cr);
  cairo_translate (cr, base.x, base.y);
  cairo_rotate (cr, lr_vec2_angle_rad (way));
  cairo_new_sub_path (cr);
  trace_half_boom (cr, radius, half, lr_vec2_length (way) + CAPSULE_HALF_M * view->scale + outside);
  cairo_rotate (cr, LR_PI);
  trace_half_boom (cr, radius, half, microphone->short_end_m * view->scale + outside);
  cairo_close_path (cr);
  cairo_restore (cr);
}

/**
 * lr_floor_trace_around:
 * @cr: a cairo context whose unit is the device's
 * @view: how the drawing looks at the room
 * @placed: an item
 * @outline: its outline [m], as lr_floor_outline() has it
 * @outside: how far outside it the path runs, device units
 *
 * A closed path around what is drawn of it.
 */
void
lr_floor_trace_around (cairo_t         *cr,
                       const LrView    *view,
                       const LrPlaced  *placed,
                       const LrOutline *outline,
                       double           outside)
{
  if (placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM)
    trace_boom (cr, view, placed, outside);
  else
    lr_floor_trace_outline (cr, view, outline, outside);
}

/**
 * lr_floor_beside:
 * @view: how the drawing looks at the room
 * @outline: an outline [m]
 * @direction: of length 1, on the device (y down)
 * @outside: device units
 *
 * Returns: the place on the device in that direction from the outline's centre, so far outside it
 */
LrVec2
lr_floor_beside (const LrView    *view,
                 const LrOutline *outline,
                 LrVec2           direction,
                 double           outside)
{
  LrVec2 centre = lr_view_to_device (view, outline->centre_m);
  LrVec2 in_room = lr_vec2 (direction.x, -direction.y);
  double enter_m = 0.0, leave_m = outline->radius_m;

  if (!lr_outline_ray (outline, outline->centre_m, in_room, &enter_m, &leave_m))
    leave_m = outline->radius_m;

  return lr_vec2_along (centre, direction, leave_m * view->scale + outside);
}

/**
 * lr_floor_trace_room:
 * @floor: a drawing
 *
 * A closed path along the inner faces of the walls.
 */
void
lr_floor_trace_room (const LrFloor *floor)
{
  const LrRoom *room = floor->room;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 at = lr_floor_device (floor, room->corners_m[i]);

      if (i == 0)
        cairo_move_to (floor->cr, at.x, at.y);
      else
        cairo_line_to (floor->cr, at.x, at.y);
    }
  cairo_close_path (floor->cr);
}

/**
 * lr_floor_device:
 * @floor: a drawing
 * @at_m: a place in the room [m]
 *
 * Returns: the same on the device
 */
LrVec2
lr_floor_device (const LrFloor *floor,
                 LrVec2         at_m)
{
  return lr_view_to_device (floor->view, at_m);
}

/**
 * lr_floor_move_to:
 * @floor: a drawing
 * @at_m: a place in the room [m]
 *
 * As cairo_move_to().
 */
void
lr_floor_move_to (const LrFloor *floor,
                  LrVec2         at_m)
{
  LrVec2 at = lr_floor_device (floor, at_m);

  cairo_move_to (floor->cr, at.x, at.y);
}

/**
 * lr_floor_line_to:
 * @floor: a drawing
 * @at_m: a place in the room [m]
 *
 * As cairo_line_to().
 */
void
lr_floor_line_to (const LrFloor *floor,
                  LrVec2         at_m)
{
  LrVec2 at = lr_floor_device (floor, at_m);

  cairo_line_to (floor->cr, at.x, at.y);
}

/**
 * lr_floor_arrowhead:
 * @cr: a cairo context whose unit is the device's, its source set
 * @tip: device place
 * @direction: the way it points, of length 1
 * @length: device units
 *
 * Filled arrowhead, 30° wide (ISO 129-1).
 */
void
lr_floor_arrowhead (cairo_t *cr,
                    LrVec2   tip,
                    LrVec2   direction,
                    double   length)
{
  LrVec2 back = lr_vec2_along (tip, direction, -length);
  LrVec2 across = lr_vec2_scale (lr_vec2_left (direction), length * tan (15.0 * LR_DEG));

  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, back.x + across.x, back.y + across.y);
  cairo_line_to (cr, back.x - across.x, back.y - across.y);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/**
 * lr_floor_reading_angle_rad:
 * @from: device place
 * @to: device place
 *
 * Returns: the angle, clockwise on the device, of text along a line: it reads from below or from the right (ISO 129-1)
 */
double
lr_floor_reading_angle_rad (LrVec2 from,
                            LrVec2 to)
{
  double angle = atan2 (to.y - from.y, to.x - from.x);

  if (angle > 0.5 * LR_PI - 1e-6)
    angle -= LR_PI;
  else if (angle < -0.5 * LR_PI - 1e-6)
    angle += LR_PI;

  return angle;
}

/**
 * lr_floor_oblique:
 * @cr: a cairo context whose unit is the device's, its source and line width set
 * @at: device place, the end of a dimension line
 * @direction: of the line, of length 1, on the device
 * @length: of the stroke, device units
 *
 * Oblique stroke at 45° (ISO 129-1).
 */
void
lr_floor_oblique (cairo_t *cr,
                  LrVec2   at,
                  LrVec2   direction,
                  double   length)
{
  LrVec2 half = lr_vec2_scale (lr_vec2_rotate (direction, -0.25 * LR_PI), 0.5 * length);

  cairo_move_to (cr, at.x - half.x, at.y - half.y);
  cairo_line_to (cr, at.x + half.x, at.y + half.y);
  cairo_stroke (cr);
}

/**
 * lr_floor_device_outline:
 * @view: how the drawing looks at the room
 * @outline: an outline [m]
 *
 * Returns: the same in device units
 */
LrOutline
lr_floor_device_outline (const LrView    *view,
                         const LrOutline *outline)
{
  LrOutline device = {
    .n = outline->n,
    .centre_m = lr_view_to_device (view, outline->centre_m),
    .radius_m = outline->radius_m * view->scale,
  };

  for (gsize i = 0; i < outline->n; i++)
    device.corner_m[i] = lr_view_to_device (view, outline->corner_m[i]);

  return device;
}

/* The family that an item's overlay belongs to; LR_N_FAMILIES for none */
static LrFamily
family_of (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
    case LR_ITEM_PERSON:
      return LR_FAMILY_SIGHT;
    case LR_ITEM_LIGHT:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_PANEL:
      return LR_FAMILY_LIGHT;
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_NOISE:
      return LR_FAMILY_SOUND;
    case LR_ITEM_LEAD:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
      return LR_FAMILY_POWER;
    case LR_ITEM_WINDOW:
      return LR_FAMILY_SUN;
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return LR_N_FAMILIES;
    }
}

/**
 * lr_floor_wash:
 * @floor: a drawing
 * @family: whose wash
 *
 * Returns: its alpha: .55 of the usual while an item or a remark of another family is in hand
 */
double
lr_floor_wash (const LrFloor *floor,
               LrFamily       family)
{
  const LrView *view = floor->view;
  const char *id = view->in_hand;
  const LrPlaced *placed;

  if (view->remark != NULL && view->remark->ids != NULL && view->remark->ids[0] != NULL)
    id = view->remark->ids[0];

  placed = id != NULL && !view->is_page ? lr_study_find_placed (floor->study, id) : NULL;
  if (placed == NULL || family_of (placed->item) == family)
    return floor->theme->family_wash[family];

  return 0.55 * floor->theme->family_wash[family];
}
