/* label_shapes.c - what a label may not cover
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two convex shapes are apart if they are apart along a normal of an edge of one of them (separating axes, closed form).
 */

#include "label_shapes.h"

/**
 * lr_shape_disc:
 * @centre: device place
 * @radius: device units
 *
 * Returns: a disc
 */
LrShape
lr_shape_disc (LrVec2 centre,
               double radius)
{
  return (LrShape) {
    .centre = centre,
    .radius = radius,
    .low = lr_vec2 (centre.x - radius, centre.y - radius),
    .high = lr_vec2 (centre.x + radius, centre.y + radius),
    .owner = LR_SHAPE_FIRM,
  };
}

/**
 * lr_shape_polygon:
 * @corners: device places
 * @n: how many, 2 to LR_OUTLINE_MAX
 *
 * Returns: a convex polygon, or a line
 */
LrShape
lr_shape_polygon (const LrVec2 *corners,
                  gsize         n)
{
  LrShape shape = { .n = MIN (n, LR_OUTLINE_MAX), .low = corners[0], .high = corners[0], .owner = LR_SHAPE_FIRM };

  for (gsize i = 0; i < shape.n; i++)
    {
      shape.corner[i] = corners[i];
      shape.low.x = MIN (shape.low.x, corners[i].x);
      shape.low.y = MIN (shape.low.y, corners[i].y);
      shape.high.x = MAX (shape.high.x, corners[i].x);
      shape.high.y = MAX (shape.high.y, corners[i].y);
    }

  return shape;
}

/**
 * lr_shape_box:
 * @centre: device place
 * @width: device units
 * @height: device units
 * @angle_rad: turned by [rad]
 *
 * Returns: a rectangle
 */
LrShape
lr_shape_box (LrVec2 centre,
              double width,
              double height,
              double angle_rad)
{
  LrVec2 across = lr_vec2_polar (angle_rad, 0.5 * width);
  LrVec2 down = lr_vec2_polar (angle_rad + 0.5 * LR_PI, 0.5 * height);
  LrVec2 corners[4] = {
    lr_vec2_sub (lr_vec2_sub (centre, across), down),
    lr_vec2_sub (lr_vec2_add (centre, across), down),
    lr_vec2_add (lr_vec2_add (centre, across), down),
    lr_vec2_add (lr_vec2_sub (centre, across), down),
  };

  return lr_shape_polygon (corners, G_N_ELEMENTS (corners));
}

static void
project (const LrShape *shape,
         LrVec2         axis,
         double        *low,
         double        *high)
{
  *low = *high = lr_vec2_dot (shape->corner[0], axis);
  for (gsize i = 1; i < shape->n; i++)
    {
      double at = lr_vec2_dot (shape->corner[i], axis);

      *low = MIN (*low, at);
      *high = MAX (*high, at);
    }
}

/* Whether a normal of an edge of @a parts the two */
static gboolean
is_parted (const LrShape *a,
           const LrShape *b)
{
  gsize n_edges = a->n == 2 ? 1 : a->n;

  for (gsize i = 0; i < n_edges; i++)
    {
      LrVec2 axis = lr_vec2_left (lr_vec2_sub (a->corner[(i + 1) % a->n], a->corner[i]));
      double a_low, a_high, b_low, b_high;

      project (a, axis, &a_low, &a_high);
      project (b, axis, &b_low, &b_high);
      if (a_high <= b_low || b_high <= a_low)
        return TRUE;
    }

  return FALSE;
}

static gboolean
holds (const LrShape *polygon,
       LrVec2         point)
{
  int left = 0, right = 0;

  for (gsize i = 0; i < polygon->n; i++)
    {
      LrVec2 edge = lr_vec2_sub (polygon->corner[(i + 1) % polygon->n], polygon->corner[i]);
      double side = lr_vec2_cross (edge, lr_vec2_sub (point, polygon->corner[i]));

      left += side > 0.0;
      right += side < 0.0;
    }

  return left == 0 || right == 0;
}

static gboolean
meets_disc (const LrShape *polygon,
            const LrShape *disc)
{
  if (holds (polygon, disc->centre))
    return TRUE;

  for (gsize i = 0; i < polygon->n; i++)
    {
      LrVec2 nearest;

      if (lr_segment_distance_m (polygon->corner[i], polygon->corner[(i + 1) % polygon->n], disc->centre, &nearest)
          < disc->radius)
        return TRUE;
    }

  return FALSE;
}

/**
 * lr_shape_meets:
 * @polygon: a polygon
 * @other: any shape
 *
 * Returns: whether they share more than an edge
 */
gboolean
lr_shape_meets (const LrShape *polygon,
                const LrShape *other)
{
  if (polygon->high.x <= other->low.x || other->high.x <= polygon->low.x || polygon->high.y <= other->low.y
      || other->high.y <= polygon->low.y)
    return FALSE;

  if (other->n == 0)
    return meets_disc (polygon, other);

  return !is_parted (polygon, other) && !is_parted (other, polygon);
}
