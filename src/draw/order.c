/* order.c - which solid hides which
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two solids in upright prisms that do not touch are parted by a level plane, or by an upright one along a side of
 * one of them. The eye is on one side of it, and what is on the eye's side cannot be hidden by what is on the
 * other. So of every two whose outlines overlap in the picture it is known which may hide the other; all are
 * painted far to near, but what lies behind before what hides it. Three that hide each other in turn have no order
 * and go by their depth. Prisms that touch are parted where they overlap least.
 */

#include "paint.h"

#define TOUCH_M 1e-4 /* what overlaps by less is taken to stand side by side */

#define MOST_CORNERS (4 * LR_OUTLINE_MAX)

typedef struct
{
  guint          index;
  const LrSolid *solid;
  guint          n_corners;
  LrVec2         corner[MOST_CORNERS]; /* outline in the picture */
  double         blur;
  double         x0, x1, y0, y1;       /* with its blur */
  double         depth_m;
  guint          first_behind, n_behind;
  guint8         state;                /* 0 not reached, 1 under way, 2 painted */
} Seen;

typedef struct
{
  guint front, behind;
} Pair;

static void
add_corner (const LrPainter *painter,
            Seen            *seen,
            LrVec3           at_m)
{
  if (seen->n_corners < MOST_CORNERS && lr_painter_place (painter, at_m, &seen->corner[seen->n_corners]))
    seen->n_corners++;
}

/* An edge of the prism: its first end, and where it is cut by the near plane */
static void
add_edge (const LrPainter *painter,
          Seen            *seen,
          LrVec3           from_m,
          LrVec3           to_m,
          gboolean         has_end)
{
  double from = lr_painter_depth_m (painter, from_m) - LR_NEAR_M, to = lr_painter_depth_m (painter, to_m) - LR_NEAR_M;

  if (has_end && from >= 0.0)
    add_corner (painter, seen, from_m);
  if ((from >= 0.0) != (to >= 0.0))
    add_corner (painter, seen, lr_vec3_along (from_m, lr_vec3_sub (to_m, from_m), from / (from - to)));
}

/* Outline and bounds in the picture; FALSE: not in it */
static gboolean
bound (const LrPainter *painter,
       const LrSolid   *solid,
       Seen            *seen)
{
  double nearest = HUGE_VAL, farthest = -HUGE_VAL;

  for (guint i = 0; i < solid->base.n; i++)
    {
      LrVec2 here_m = solid->base.corner_m[i], next_m = solid->base.corner_m[(i + 1) % solid->base.n];
      LrVec3 low_m = lr_vec2_raise (here_m, solid->bottom_m), high_m = lr_vec2_raise (here_m, solid->top_m);
      double low = lr_painter_depth_m (painter, low_m), high = lr_painter_depth_m (painter, high_m);

      nearest = fmin (nearest, fmin (low, high));
      farthest = fmax (farthest, fmax (low, high));
      add_edge (painter, seen, low_m, lr_vec2_raise (next_m, solid->bottom_m), TRUE);
      add_edge (painter, seen, high_m, lr_vec2_raise (next_m, solid->top_m), TRUE);
      add_edge (painter, seen, low_m, high_m, FALSE);
    }

  if (farthest <= LR_NEAR_M || seen->n_corners == 0)
    return FALSE;

  seen->n_corners = lr_hull (seen->corner, seen->n_corners);
  seen->depth_m = 0.5 * (fmax (nearest, 0.0) + farthest);
  seen->blur = painter->unit + fmax (lr_painter_blur (painter, fmax (nearest, LR_NEAR_M)),
                                     lr_painter_blur (painter, farthest));
  seen->x0 = seen->y0 = HUGE_VAL;
  seen->x1 = seen->y1 = -HUGE_VAL;
  for (guint i = 0; i < seen->n_corners; i++)
    {
      seen->x0 = fmin (seen->x0, seen->corner[i].x - seen->blur);
      seen->x1 = fmax (seen->x1, seen->corner[i].x + seen->blur);
      seen->y0 = fmin (seen->y0, seen->corner[i].y - seen->blur);
      seen->y1 = fmax (seen->y1, seen->corner[i].y + seen->blur);
    }

  return seen->x1 > 0.0 && seen->y1 > 0.0 && seen->x0 < painter->width && seen->y0 < painter->height;
}

/* Whether a line along an edge of a's outline parts it from b's, blur and all */
static gboolean
is_parted_by (const Seen *a,
              const Seen *b)
{
  for (guint i = 0; i < a->n_corners; i++)
    {
      LrVec2 from = a->corner[i], way = lr_vec2_sub (a->corner[(i + 1) % a->n_corners], from);
      double least = (a->blur + b->blur) * sqrt (lr_vec2_dot (way, way)), nearest = HUGE_VAL;

      for (guint j = 0; j < b->n_corners; j++)
        nearest = fmin (nearest, -lr_vec2_cross (way, lr_vec2_sub (b->corner[j], from)));
      if (nearest > least)
        return TRUE;
    }

  return FALSE;
}

static gboolean
overlap_in_picture (const Seen *a,
                    const Seen *b)
{
  return b->x0 < a->x1 && a->x0 < b->x1 && b->y0 < a->y1 && a->y0 < b->y1 && !is_parted_by (a, b) && !is_parted_by (b, a);
}

/* What the planes between a and b tell */
typedef struct
{
  gboolean a_hides, b_hides; /* may hide the other: no plane has shown that it cannot */
  double   gap_m;            /* widest, < 0 while they touch */
  double   side;             /* the eye at that gap: > 0 on b's side */
} Verdict;

/* A slab between a, at 0 and below, and b, at gap_m and above; the eye at eye_m. Any plane of the slab may be taken. */
static void
judge (Verdict *verdict,
       double   gap_m,
       double   eye_m)
{
  if (gap_m > verdict->gap_m)
    {
      verdict->gap_m = gap_m;
      verdict->side = eye_m - 0.5 * gap_m;
    }
  if (gap_m < -TOUCH_M)
    return;

  if (eye_m >= 0.0)
    verdict->a_hides = FALSE;
  if (eye_m <= gap_m)
    verdict->b_hides = FALSE;
}

/* Planes through the edges of a's base, or of b's */
static void
judge_edges (Verdict         *verdict,
             const LrOutline *a,
             const LrOutline *b,
             LrVec2           eye_m,
             gboolean         is_swapped)
{
  for (size_t i = 0; i < a->n && (verdict->a_hides || verdict->b_hides); i++)
    {
      LrVec2 from_m = a->corner_m[i], way = lr_vec2_sub (a->corner_m[(i + 1) % a->n], from_m);
      double length_m = sqrt (lr_vec2_dot (way, way)), gap_m = HUGE_VAL, eye;
      LrVec2 normal = { way.y / length_m, -way.x / length_m };

      if (!(length_m > 1e-9))
        continue;
      for (size_t j = 0; j < b->n; j++)
        gap_m = fmin (gap_m, lr_vec2_dot (normal, lr_vec2_sub (b->corner_m[j], from_m)));
      eye = lr_vec2_dot (normal, lr_vec2_sub (eye_m, from_m));
      judge (verdict, gap_m, is_swapped ? gap_m - eye : eye);
    }
}

/* < 0: a may hide b, > 0: b may hide a, 0: neither */
static int
in_front (const LrSolid *a,
          const LrSolid *b,
          LrVec3         eye_m)
{
  Verdict verdict = { TRUE, TRUE, -HUGE_VAL, 0.0 };
  double above_m = b->bottom_m - a->top_m, below_m = a->bottom_m - b->top_m;

  judge (&verdict, above_m, eye_m.z - a->top_m);
  judge (&verdict, below_m, a->bottom_m - eye_m.z);
  judge_edges (&verdict, &a->base, &b->base, lr_vec3_flat (eye_m), FALSE);
  judge_edges (&verdict, &b->base, &a->base, lr_vec3_flat (eye_m), TRUE);

  if (verdict.a_hides && verdict.b_hides) /* they touch */
    return verdict.side > 0.0 ? 1 : -1;

  return (int) verdict.b_hides - (int) verdict.a_hides;
}

static int
compare_far_first (gconstpointer a,
                   gconstpointer b)
{
  const Seen *p = a, *q = b;

  if (p->depth_m != q->depth_m)
    return p->depth_m > q->depth_m ? -1 : 1;

  return p->index < q->index ? -1 : p->index > q->index;
}

static int
compare_left_first (gconstpointer a,
                    gconstpointer b,
                    gpointer      seen)
{
  double p = g_array_index ((GArray *) seen, Seen, *(const guint *) a).x0;
  double q = g_array_index ((GArray *) seen, Seen, *(const guint *) b).x0;

  return p < q ? -1 : p > q;
}

static int
compare_pairs (gconstpointer a,
               gconstpointer b)
{
  const Pair *p = a, *q = b;

  if (p->front != q->front)
    return p->front < q->front ? -1 : 1;

  return p->behind < q->behind ? -1 : p->behind > q->behind;
}

/* Every two that overlap in the picture, by a sweep from left to right */
static GArray *
find_pairs (GArray *seen,
            LrVec3  eye_m)
{
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (Pair));
  guint *by_left = g_new (guint, seen->len);

  for (guint i = 0; i < seen->len; i++)
    by_left[i] = i;
  g_qsort_with_data (by_left, (int) seen->len, sizeof (guint), compare_left_first, seen);

  for (guint i = 0; i < seen->len; i++)
    {
      const Seen *a = &g_array_index (seen, Seen, by_left[i]);

      for (guint j = i + 1; j < seen->len; j++)
        {
          const Seen *b = &g_array_index (seen, Seen, by_left[j]);
          int order;

          if (b->x0 >= a->x1)
            break;
          if (!overlap_in_picture (a, b))
            continue;

          order = in_front (a->solid, b->solid, eye_m);
          if (order < 0)
            g_array_append_val (pairs, ((Pair) { by_left[i], by_left[j] }));
          else if (order > 0)
            g_array_append_val (pairs, ((Pair) { by_left[j], by_left[i] }));
        }
    }

  g_free (by_left);
  g_array_sort (pairs, compare_pairs);
  return pairs;
}

/* Everything behind it first, then itself. The stack is our own: a long row of things is no deep recursion. */
static void
emit (GArray       *seen,
      const GArray *pairs,
      guint         start,
      GArray       *stack,
      GArray       *order)
{
  g_array_append_val (stack, start);
  while (stack->len > 0)
    {
      guint top = g_array_index (stack, guint, stack->len - 1);
      Seen *item = &g_array_index (seen, Seen, top);
      gboolean is_waiting = FALSE;

      item->state = MAX (item->state, 1);
      while (item->n_behind > 0 && !is_waiting)
        {
          guint behind = g_array_index (pairs, Pair, item->first_behind).behind;

          item->first_behind++;
          item->n_behind--;
          if (g_array_index (seen, Seen, behind).state == 0)
            {
              g_array_append_val (stack, behind);
              is_waiting = TRUE;
            }
        }

      if (is_waiting)
        continue;
      g_array_set_size (stack, stack->len - 1);
      if (item->state == 1)
        {
          item->state = 2;
          g_array_append_val (order, item->index);
        }
    }
}

/**
 * lr_paint_order:
 * @painter: a painter
 * @scene: what it paints
 *
 * Source: list priority by separating planes (Schumacker 1969; Newell, Newell and Sancha 1972), from memory.
 *
 * Returns: (transfer full): guint indices of the solids in the picture, far to near
 */
GArray *
lr_paint_order (const LrPainter *painter,
                const LrScene   *scene)
{
  GArray *seen = g_array_sized_new (FALSE, FALSE, sizeof (Seen), scene->solids->len);
  GArray *order = g_array_sized_new (FALSE, FALSE, sizeof (guint), scene->solids->len);
  GArray *stack = g_array_new (FALSE, FALSE, sizeof (guint));
  GArray *pairs;

  for (guint i = 0; i < scene->solids->len; i++)
    {
      Seen item = { .index = i, .solid = &g_array_index (scene->solids, LrSolid, i) };

      if (bound (painter, item.solid, &item))
        g_array_append_val (seen, item);
    }

  g_array_sort (seen, compare_far_first);
  pairs = find_pairs (seen, scene->eye_m);
  for (guint i = 0; i < pairs->len; i++)
    {
      Seen *front = &g_array_index (seen, Seen, g_array_index (pairs, Pair, i).front);

      if (front->n_behind++ == 0)
        front->first_behind = i;
    }
  for (guint i = 0; i < seen->len; i++)
    if (g_array_index (seen, Seen, i).state == 0)
      emit (seen, pairs, i, stack, order);

  g_array_unref (pairs);
  g_array_unref (stack);
  g_array_unref (seen);
  return order;
}
