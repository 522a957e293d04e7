/* intrusion_net.c - what is seen of a part of a thing, and what it hides
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where something may stand before it, rays through a net of places tell; else the corners of its silhouette are enough.
 */

#include "intrusions_private.h"

#define NET_LINES 4     /* over the longer side of a part's bounds */
#define NET_PLACES 3    /* along each */
#define FINE_NET 3      /* as many times as fine where a share of the area is asked for */
#define NEAR_ENOUGH 0.01 /* of the frame, from what is seen of it to what is not */
#define COVER_LINES 16  /* over the face */
#define INWARD 0.02     /* a corner is looked at that much towards the middle: its own ray may just miss */
#define FEW_CORNERS 10

/* How far away the part is at a place in its silhouette */
static double
distance_at (const LrProjection *projection,
             const LrVolume     *shape,
             LrVec3              way)
{
  double enter_m;

  return lr_volume_ray (shape, projection->eye_m, way, &enter_m)
             ? enter_m : fmax (0.0, lr_vec3_dot (lr_vec3_sub (shape->centre_m, projection->eye_m), way));
}

static LrVec2
middle_of (const LrSilhouette *seen)
{
  LrVec2 sum = { 0.0, 0.0 };

  for (size_t i = 0; i < seen->n; i++)
    sum = lr_vec2_add (sum, seen->corner[i]);

  return lr_vec2_scale (sum, 1.0 / (double) seen->n);
}

/* Where a line at a place of one coordinate goes in and comes out of the silhouette */
static gboolean
chord (const LrSilhouette *seen,
       gboolean            is_upright,
       double              at,
       double             *from,
       double             *to)
{
  *from = HUGE_VAL;
  *to = -HUGE_VAL;
  for (size_t i = 0; i < seen->n; i++)
    {
      LrVec2 a = seen->corner[i], b = seen->corner[i + 1 < seen->n ? i + 1 : 0];
      double pa = is_upright ? a.x : a.y, pb = is_upright ? b.x : b.y;

      if ((pa <= at) != (pb <= at))
        {
          double t = (at - pa) / (pb - pa);
          double cross = is_upright ? a.y + t * (b.y - a.y) : a.x + t * (b.x - a.x);

          *from = fmin (*from, cross);
          *to = fmax (*to, cross);
        }
    }

  return *from <= *to;
}

/* Lines across the longer side of what is seen of a part's silhouette, and places along each */
typedef struct
{
  const LrLensView   *view;
  LrLook             *look;
  const LrVolume     *shape;
  const LrSilhouette *seen;
  gboolean            is_upright;   /* the lines are */
  double              start, length; /* along the longer side */
  int                 n_lines, n_places;
} Net;

static gboolean
is_seen_at (const Net *net,
            double     line,
            double     along)
{
  const LrLensView *view = net->view;
  LrVec2 at = net->is_upright ? lr_vec2 (line, along) : lr_vec2 (along, line);
  LrVec3 way = lr_projection_ray (view->projection, at.x, at.y);
  double to_m = distance_at (view->projection, net->shape, way);

  if (lr_view_is_hidden (view, net->look->has_walls, at, way, to_m))
    return FALSE;

  lr_look_note_place (net->look, view->projection, at, to_m * lr_vec3_dot (way, view->projection->forward));
  return TRUE;
}

/* Halves the way along a line from a place that is seen to one that is not */
static void
narrow_place (const Net *net,
              double     line,
              double     seen,
              double     hidden)
{
  while (fabs (seen - hidden) > NEAR_ENOUGH)
    {
      double middle = 0.5 * (seen + hidden);

      if (is_seen_at (net, line, middle))
        seen = middle;
      else
        hidden = middle;
    }
}

/* Returns how many places of a line are seen; @n counts those that are looked at */
static guint
look_along (const Net *net,
            double     line,
            guint     *n)
{
  double from, to, first = NAN, last = NAN, step;
  guint n_seen = 0;

  if (!chord (net->seen, net->is_upright, line, &from, &to))
    return 0;

  step = (to - from) / net->n_places;
  for (int j = 0; j < net->n_places; j++)
    {
      double along = from + (j + 0.5) * step;

      if (!is_seen_at (net, line, along))
        continue;
      if (n_seen++ == 0)
        first = along;
      last = along;
      if (net->look->is_any_enough)
        break;
    }

  *n += net->n_places;
  if (n_seen > 0 && n_seen < (guint) net->n_places && !net->look->is_any_enough)
    {
      narrow_place (net, line, first, fmax (first - step, from));
      narrow_place (net, line, last, fmin (last + step, to));
    }

  return n_seen;
}

/* Halves the way from a line of which something is seen to one of which nothing is */
static void
narrow_line (const Net *net,
             double     seen,
             double     hidden)
{
  guint n;

  while (fabs (seen - hidden) > NEAR_ENOUGH)
    {
      double middle = 0.5 * (seen + hidden);

      if (look_along (net, middle, &n) > 0)
        seen = middle;
      else
        hidden = middle;
    }
}

static double
line_at (const Net *net,
         int        i)
{
  return net->start + CLAMP ((i + 0.5) / net->n_lines, 0.0, 1.0) * net->length;
}

/* Rays through the net; where something hides some of it, the ends of what is seen are found between its lines and places.
 * Returns the share of the rays that are seen. */
static double
cast_net (const LrLensView   *view,
          LrLook             *look,
          const LrVolume     *shape,
          const LrSilhouette *seen)
{
  LrFrameBox bounds = lr_silhouette_bounds (seen);
  gboolean is_upright = bounds.x1 - bounds.x0 > bounds.y1 - bounds.y0;
  int fine = look->intruder.n == 1 ? FINE_NET : 1, first = -1, last = -1;
  Net net = { view, look, shape, seen, is_upright, is_upright ? bounds.x0 : bounds.y0,
              is_upright ? bounds.x1 - bounds.x0 : bounds.y1 - bounds.y0, fine * NET_LINES, fine * NET_PLACES };
  guint n = 0, n_seen = 0;

  for (int i = 0; i < net.n_lines; i++)
    {
      guint n_here = look_along (&net, line_at (&net, i), &n);

      if (n_here == 0)
        continue;
      if (look->is_any_enough)
        return 1.0;
      n_seen += n_here;
      first = first < 0 ? i : first;
      last = i;
    }

  if (n_seen > 0 && n_seen < n)
    {
      narrow_line (&net, line_at (&net, first), line_at (&net, first - 1));
      narrow_line (&net, line_at (&net, last), line_at (&net, last + 1));
    }

  return n > 0 ? (double) n_seen / n : 0.0;
}

static void
note_corners (const LrLensView   *view,
              LrLook             *look,
              const LrVolume     *shape,
              const LrSilhouette *seen,
              gboolean            may_be_hidden)
{
  LrVec2 middle = middle_of (seen);
  LrFrameBox bounds = lr_silhouette_bounds (seen);

  for (size_t i = 0; i < seen->n; i++)
    {
      LrVec2 corner = seen->corner[i];

      /* of a round edge every third is enough, with those that reach furthest */
      if (seen->n > FEW_CORNERS && i % 3 > 0 && corner.x > bounds.x0 && corner.x < bounds.x1 && corner.y > bounds.y0
          && corner.y < bounds.y1)
        continue;

      LrVec2 inner = lr_vec2_along (seen->corner[i], lr_vec2_sub (middle, seen->corner[i]), INWARD);
      LrVec3 way = lr_projection_ray (view->projection, inner.x, inner.y);
      double to_m = distance_at (view->projection, shape, way);

      if (!may_be_hidden || !lr_view_is_hidden (view, look->has_walls, inner, way, to_m))
        lr_look_note_place (look, view->projection, seen->corner[i], to_m * lr_vec3_dot (way, view->projection->forward));
    }
}

/**
 * lr_view_look_at_part:
 * @view: a view
 * @look: a thing that is looked at
 * @index: of one of its parts, which is in the frame
 *
 * Notes what is seen of it, and how far it reaches in.
 */
void
lr_view_look_at_part (LrLensView *view,
                      LrLook     *look,
                      guint       index)
{
  LrSilhouette *seen = &look->seen[index];
  const LrVolume *shape = &look->intruder.shape[index];
  LrFrameBox bounds = lr_silhouette_bounds (seen);
  double to_m = lr_vec3_length (lr_vec3_sub (shape->centre_m, view->projection->eye_m)) + shape->reach_m;
  gboolean may_be_hidden = lr_view_may_hide (view, look->intrusion.placed, &bounds, to_m) || look->has_walls;
  double share = 1.0, area;

  if (may_be_hidden)
    {
      share = cast_net (view, look, shape, seen);
      look->intrusion.is_partly_hidden |= share < 1.0;
    }
  if (!(share > 0.0))
    {
      seen->n = 0;
      return;
    }

  if (!look->is_any_enough)
    note_corners (view, look, shape, seen, share < 1.0);
  area = share * lr_silhouette_area (seen);
  look->area += area;
  look->n_seen++;
  if (area > look->largest)
    {
      look->largest = area;
      look->intrusion.part = look->intruder.part[index];
    }
}

/**
 * lr_view_covered_share:
 * @view: a view
 * @look: a thing of which something is seen
 * @target: a part of the subject
 * @target_seen: what the frame shows of it; nothing if n is 0
 *
 * Returns: the share of @target_seen that the thing hides
 */
double
lr_view_covered_share (const LrLensView   *view,
                       const LrLook       *look,
                       const LrVolume     *target,
                       const LrSilhouette *target_seen)
{
  LrFrameBox bounds = lr_silhouette_bounds (target_seen);
  guint n = 0, n_covered = 0;
  gboolean is_met = FALSE;

  for (guint i = 0; i < look->intruder.n && target_seen->n > 0; i++)
    if (look->seen[i].n > 0)
      {
        LrFrameBox part = lr_silhouette_bounds (&look->seen[i]);

        is_met |= part.x0 < bounds.x1 && part.x1 > bounds.x0 && part.y0 < bounds.y1 && part.y1 > bounds.y0;
      }
  if (!is_met)
    return 0.0;

  for (int i = 0; i < COVER_LINES * COVER_LINES; i++)
    {
      LrVec2 at = { bounds.x0 + (i % COVER_LINES + 0.5) / COVER_LINES * (bounds.x1 - bounds.x0),
                    bounds.y0 + (i / COVER_LINES + 0.5) / COVER_LINES * (bounds.y1 - bounds.y0) };
      LrVec3 way;
      double target_m;
      gboolean is_covered = FALSE;

      if (!lr_silhouette_contains (target_seen, at))
        continue;

      n++;
      way = lr_projection_ray (view->projection, at.x, at.y);
      target_m = distance_at (view->projection, target, way);
      for (guint j = 0; j < look->intruder.n && !is_covered; j++)
        is_covered = look->seen[j].n > 0 && lr_silhouette_contains (&look->seen[j], at)
                     && distance_at (view->projection, &look->intruder.shape[j], way) < target_m;
      n_covered += is_covered;
    }

  return n > 0 ? (double) n_covered / n : 0.0;
}
