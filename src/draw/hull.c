/* hull.c - the convex hull of points in a picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "paint.h"

#include <stdlib.h>
#include <string.h>

static int
compare_points (const void *a,
                const void *b)
{
  const LrVec2 *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;

  return p->y < q->y ? -1 : p->y > q->y;
}

/**
 * lr_hull:
 * @points: points of the plane, sorted and overwritten by the corners of their convex hull
 * @n: their number, <= 2 * LR_PAINT_CORNERS
 *
 * Source: monotone chain (Andrew 1979), from memory.
 *
 * Returns: the number of corners
 */
guint
lr_hull (LrVec2 *points,
         guint   n)
{
  LrVec2 hull[4 * LR_PAINT_CORNERS + 2];
  guint k = 0;

  if (n < 3)
    return n;

  qsort (points, n, sizeof (LrVec2), compare_points);
  for (guint i = 0; i < n; i++)
    {
      while (k >= 2 && lr_vec2_cross (lr_vec2_sub (hull[k - 1], hull[k - 2]),
                                      lr_vec2_sub (points[i], hull[k - 2])) <= 0.0)
        k--;
      hull[k++] = points[i];
    }
  for (guint i = n - 1, least = k + 1; i-- > 0;)
    {
      while (k >= least && lr_vec2_cross (lr_vec2_sub (hull[k - 1], hull[k - 2]),
                                          lr_vec2_sub (points[i], hull[k - 2])) <= 0.0)
        k--;
      hull[k++] = points[i];
    }

  memcpy (points, hull, (k - 1) * sizeof (LrVec2));
  return k - 1;
}
