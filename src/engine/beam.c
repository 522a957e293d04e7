/* beam.c - parallel light through an opening of a room's wall, and what it falls on
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "beam.h"

#include <string.h>

#define INSIDE_M 1e-4   /* a ray starts so far before the opening */
#define MOST_CORNERS 64 /* of a room, that cut a beam */
#define LEAST 1e-9

/* Keeps what lies at or under a line: x . normal <= most */
static size_t
cut (LrVec2 *corner,
     size_t  n,
     LrVec2  normal,
     double  most)
{
  LrVec2 kept[LR_BEAM_CORNERS];
  size_t m = 0;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 a = corner[i], b = corner[(i + 1) % n];
      double over_a = lr_vec2_dot (a, normal) - most, over_b = lr_vec2_dot (b, normal) - most;

      if (over_a <= 0.0 && m < LR_BEAM_CORNERS)
        kept[m++] = a;
      if ((over_a <= 0.0) != (over_b <= 0.0) && m < LR_BEAM_CORNERS)
        kept[m++] = lr_vec2_along (a, lr_vec2_sub (b, a), over_a / (over_a - over_b));
    }
  memcpy (corner, kept, m * sizeof *kept);
  return m;
}

/**
 * lr_convex_common:
 * @corner_m: (inout): corners of a convex polygon [m]
 * @n: their number
 * @by_m: corners of another, anticlockwise [m]
 * @n_by: their number
 *
 * Source: Sutherland and Hodgman, Communications of the ACM 17 (1974).
 *
 * Returns: how many corners that which they have in common has; 0: nothing
 */
size_t
lr_convex_common (LrVec2        corner_m[LR_BEAM_CORNERS],
                  size_t        n,
                  const LrVec2 *by_m,
                  size_t        n_by)
{
  for (size_t i = 0; i < n_by && n > 0; i++)
    {
      LrVec2 along = lr_vec2_sub (by_m[(i + 1) % n_by], by_m[i]), outward = lr_vec2_scale (lr_vec2_left (along), -1.0);

      n = cut (corner_m, n, outward, lr_vec2_dot (by_m[i], outward));
    }
  return n >= 3 ? n : 0;
}

/* Sorted shares of the opening at which a corner of the room starts or ends a strip; with 0 and 1 */
static size_t
find_cuts (const LrVec2 *room_m,
           size_t        n,
           LrVec2        a_m,
           LrVec2        b_m,
           LrVec2        direction,
           double       *share)
{
  double across = lr_vec2_cross (lr_vec2_sub (b_m, a_m), direction);
  size_t m = 0;

  share[m++] = 0.0;
  for (size_t i = 0; i < n && m <= MOST_CORNERS; i++)
    {
      double s = lr_vec2_cross (lr_vec2_sub (room_m[i], a_m), direction) / across;
      size_t k = m;

      if (!(s > LEAST) || !(s < 1.0 - LEAST))
        continue;
      for (; k > 1 && share[k - 1] > s; k--)
        share[k] = share[k - 1];
      share[k] = s;
      m++;
    }
  share[m++] = 1.0;
  return m;
}

/* Along a ray to the line through an edge */
static double
path_to (const LrVec2 *room_m,
         size_t        n,
         size_t        edge,
         LrVec2        from_m,
         LrVec2        direction)
{
  LrVec2 along = lr_vec2_sub (room_m[(edge + 1) % n], room_m[edge]);

  return lr_vec2_cross (lr_vec2_sub (room_m[edge], from_m), along) / lr_vec2_cross (direction, along);
}

/**
 * lr_beam_strips:
 * @room_m: corners of the room, anticlockwise [m]
 * @n: their number
 * @a_m: one end of the opening, on a wall [m]
 * @b_m: its other end [m], the room to the left of the way there
 * @direction: of the light from above, of length 1
 * @strips: (out): what it is cut into, across the opening
 *
 * Returns: the number of strips; 0: the light does not go into the room
 */
size_t
lr_beam_strips (const LrVec2 *room_m,
                size_t        n,
                LrVec2        a_m,
                LrVec2        b_m,
                LrVec2        direction,
                LrBeamStrip   strips[LR_BEAM_STRIPS])
{
  LrVec2 wide_m = lr_vec2_sub (b_m, a_m);
  double share[MOST_CORNERS + 3];
  size_t n_cuts, m = 0;

  if (!(lr_vec2_cross (wide_m, direction) > LEAST))
    return 0;

  n_cuts = find_cuts (room_m, n, a_m, b_m, direction, share);
  for (size_t i = 0; i + 1 < n_cuts && m < LR_BEAM_STRIPS; i++)
    {
      LrVec2 middle_m = lr_vec2_along (lr_vec2_along (a_m, wide_m, 0.5 * (share[i] + share[i + 1])), direction, INSIDE_M);
      LrBeamStrip *strip = &strips[m];
      LrRayHit hit;

      if (share[i + 1] - share[i] < 1e-6 || !lr_polygon_ray (room_m, n, middle_m, direction, &hit))
        continue;
      /* past a corner that it does not meet it goes on to the same wall */
      if (m > 0 && strips[m - 1].edge == hit.edge)
        strip = &strips[m - 1];
      else
        {
          m++;
          strip->from_m[0] = lr_vec2_along (a_m, wide_m, share[i]);
        }
      strip->from_m[1] = lr_vec2_along (a_m, wide_m, share[i + 1]);
      strip->direction = direction;
      strip->edge = hit.edge;
      for (int k = 0; k < 2; k++)
        strip->path_m[k] = fmax (0.0, path_to (room_m, n, hit.edge, strip->from_m[k], direction));
    }
  return m;
}

static LrVec2
start_of (const LrBeamStrip *strip,
          double             s)
{
  return lr_vec2_along (strip->from_m[0], lr_vec2_sub (strip->from_m[1], strip->from_m[0]), s);
}

/**
 * lr_beam_on_level:
 * @strip: of a beam
 * @heights: between which it comes through
 * @level_m: height of the level [m]
 * @corner_m: (out): corners of the patch, from the sill's [m]
 *
 * Source: closed form: light that comes through at z is at the level after `(z - level) / fall`.
 *
 * Returns: their number; 0: it meets the wall before, or comes through lower
 */
size_t
lr_beam_on_level (const LrBeamStrip   *strip,
                  const LrBeamHeights *heights,
                  double               level_m,
                  LrVec2               corner_m[LR_BEAM_CORNERS])
{
  double near_m = fmax (0.0, heights->sill_m - level_m) / heights->fall, far_m = (heights->head_m - level_m) / heights->fall;
  LrVec2 at[LR_BEAM_CORNERS] = { { 0.0, near_m }, { 1.0, near_m }, { 1.0, far_m }, { 0.0, far_m } };
  size_t n;

  if (!(heights->fall > LEAST) || !(far_m > near_m))
    return 0;

  n = cut (at, 4, lr_vec2 (strip->path_m[0] - strip->path_m[1], 1.0), strip->path_m[0]);
  for (size_t i = 0; i < n; i++)
    corner_m[i] = lr_vec2_along (start_of (strip, at[i].x), strip->direction, at[i].y);
  return n >= 3 ? n : 0;
}

/**
 * lr_beam_on_wall:
 * @strip: of a beam
 * @heights: between which it comes through
 * @corner_m: (out): corners of the patch, from the lower ones [m]
 *
 * Returns: their number; 0: all of it meets the floor before
 */
size_t
lr_beam_on_wall (const LrBeamStrip   *strip,
                 const LrBeamHeights *heights,
                 LrVec3               corner_m[LR_BEAM_CORNERS])
{
  double fall_m[2] = { heights->fall * strip->path_m[0], heights->fall * strip->path_m[1] };
  LrVec2 at[LR_BEAM_CORNERS] = { { 0.0, heights->sill_m - fall_m[0] }, { 1.0, heights->sill_m - fall_m[1] },
                                 { 1.0, heights->head_m - fall_m[1] }, { 0.0, heights->head_m - fall_m[0] } };
  size_t n = cut (at, 4, lr_vec2 (0.0, -1.0), 0.0);

  for (size_t i = 0; i < n; i++)
    {
      double path_m = strip->path_m[0] + at[i].x * (strip->path_m[1] - strip->path_m[0]);

      corner_m[i] = lr_vec2_raise (lr_vec2_along (start_of (strip, at[i].x), strip->direction, path_m), at[i].y);
    }
  return n >= 3 ? n : 0;
}
