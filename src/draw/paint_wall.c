/* paint_wall.c - a wall, and the light that the set throws on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The light is a ball about the middle of its pool, where it cuts the wall. On pixels its level is computed from place to place; as a
 * drawing it is a stack of rings, because a gradient in perspective is none that cairo knows.
 */

#include "paint.h"

#define N_RINGS 28
#define N_RING_CORNERS 36

/* A circle on a wall, cut by the wall's edges: u along it, v up. FALSE: it is whole */
static gboolean
ring_on_wall (double  u,
              double  v,
              double  radius_m,
              double  length_m,
              double  height_m,
              LrVec2 *out)
{
  for (guint i = 0; i < N_RING_CORNERS; i++)
    {
      double a = 2.0 * LR_PI * i / N_RING_CORNERS;

      out[i] = lr_vec2 (CLAMP (u + radius_m * cos (a), 0.0, length_m), CLAMP (v + radius_m * sin (a), 0.0, height_m));
    }

  return u < radius_m || v < radius_m || u + radius_m > length_m || v + radius_m > height_m;
}

/* Where the pool is on a wall */
typedef struct
{
  LrVec3 corner_m, along;
  double length_m, height_m;
  double u, v;             /* its middle */
  double off_m, radius_m;  /* from the wall to the middle of the ball; of the ball */
} Pool;

/* The ring that is @share of the ball's radius; FALSE: it does not reach the wall, or is not in front of the lens */
static gboolean
project_ring (const LrPainter *painter,
              const Pool      *pool,
              double           share,
              LrPatch         *patch,
              gboolean        *is_cut)
{
  double from_middle_m = share * pool->radius_m;
  double ring_m = sqrt (fmax (0.0, from_middle_m * from_middle_m - pool->off_m * pool->off_m));
  LrVec2 ring[N_RING_CORNERS];
  LrVec3 ring_m3[N_RING_CORNERS];

  if (!(ring_m > 0.0))
    return FALSE;

  *is_cut = ring_on_wall (pool->u, pool->v, ring_m, pool->length_m, pool->height_m, ring);
  for (guint i = 0; i < N_RING_CORNERS; i++)
    ring_m3[i] = lr_vec3_add (lr_vec3_along (pool->corner_m, pool->along, ring[i].x), lr_vec3 (0.0, 0.0, ring[i].y));
  return lr_painter_project (painter, ring_m3, N_RING_CORNERS, patch);
}

static void
add_ring (const LrPainter *painter,
          const LrPatch   *patch)
{
  cairo_new_sub_path (painter->cr);
  for (guint i = 0; i < patch->n; i++)
    cairo_line_to (painter->cr, patch->at[i].x, patch->at[i].y);
  cairo_close_path (painter->cr);
}

static gboolean
find_pool (const LrScene *scene,
           const LrFace  *face,
           Pool          *pool)
{
  const LrVec3 *corner_m = &g_array_index (scene->points, LrVec3, face->first);
  LrVec3 along = lr_vec3_sub (corner_m[1], corner_m[0]), way = lr_vec3_sub (scene->pool.at_m, corner_m[0]);

  pool->corner_m = corner_m[0];
  pool->length_m = lr_vec3_length (along);
  pool->height_m = corner_m[2].z - corner_m[0].z;
  pool->along = lr_vec3_scale (along, 1.0 / pool->length_m);
  pool->u = lr_vec3_dot (way, pool->along);
  pool->v = way.z;
  pool->off_m = fabs (lr_vec3_dot (way, face->normal));
  pool->radius_m = scene->pool.radius_m;
  return scene->pool.has_pool && pool->off_m < pool->radius_m;
}

/* The light at @share of the way from the edge of the ball to its middle, 0 to 1 */
static double
pool_level (double share)
{
  return share * share * (3.0 - 2.0 * share);
}

/* As a drawing: rings, each a little lighter than the one around it. A ring has a hole where the one after the next begins: a
 * place is painted twice, not once for each ring. */
static void
paint_rings (const LrPainter *painter,
             const LrScene   *scene,
             const LrFace    *face,
             const Pool      *pool)
{
  LrPatch patches[3]; /* of this ring and the next two, by turns */
  gboolean is_there[3], is_cut[3];

  cairo_set_fill_rule (painter->cr, CAIRO_FILL_RULE_EVEN_ODD);
  for (int i = -2; i < N_RINGS; i++)
    {
      int here = (i + 3) % 3, ahead = (i + 2) % 3;
      LrColor tone;

      is_there[ahead] = i + 2 < N_RINGS
                        && project_ring (painter, pool, 1.0 - (i + 2.0) / N_RINGS, &patches[ahead], &is_cut[ahead]);
      if (i < 0 || !is_there[here])
        continue;

      /* The step from ring to ring is too small to be seen, but not that at the sharp end of a wall */
      cairo_set_antialias (painter->cr, is_cut[here] && patches[here].radius[0] < painter->unit ? CAIRO_ANTIALIAS_FAST
                                                                                                 : CAIRO_ANTIALIAS_NONE);
      tone = lr_tone_light (face->color, 1.0 + scene->pool.gain * pool_level ((i + 0.5) / N_RINGS));
      cairo_set_source_rgb (painter->cr, tone.r, tone.g, tone.b);
      add_ring (painter, &patches[here]);
      if (is_there[ahead])
        add_ring (painter, &patches[ahead]);
      cairo_fill (painter->cr);
    }

  cairo_set_fill_rule (painter->cr, CAIRO_FILL_RULE_WINDING);
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_FAST);
}

/* A number that goes evenly over the picture: x * at.x + y * at.y + c */
typedef struct
{
  double x, y, c;
} Plane;

/* From the picture to the wall: along and up it from the middle of the pool, u / w and v / w [m] */
typedef struct
{
  Plane  u, v, w;
  double off2, per_radius;
} Glow;

static Plane
plane_dot (const LrPainter *painter,
           LrVec3           axis)
{
  const LrProjection *p = painter->projection;
  double right = p->half_width * lr_vec3_dot (axis, p->right), up = p->half_height * lr_vec3_dot (axis, p->up);

  return (Plane) { 2.0 * right / painter->width, -2.0 * up / painter->height, lr_vec3_dot (axis, p->forward) - right + up };
}

static Plane
plane_sum (Plane  a,
           double ka,
           Plane  b,
           double kb)
{
  return (Plane) { ka * a.x + kb * b.x, ka * a.y + kb * b.y, ka * a.c + kb * b.c };
}

static double
plane_at (Plane  plane,
          LrVec2 at)
{
  return plane.x * at.x + plane.y * at.y + plane.c;
}

/* The ray d through a place meets the wall, whose point is c and normal n, at e + d (n · (c - e)) / (n · d) */
static Glow
find_glow (const LrPainter *painter,
           const LrFace    *face,
           const Pool      *pool)
{
  LrVec3 from_corner = lr_vec3_sub (painter->projection->eye_m, pool->corner_m);
  double off_m = -lr_vec3_dot (face->normal, from_corner);
  Plane w = plane_dot (painter, face->normal);

  return (Glow) {
    .u = plane_sum (w, lr_vec3_dot (pool->along, from_corner) - pool->u, plane_dot (painter, pool->along), off_m),
    .v = plane_sum (w, from_corner.z - pool->v, plane_dot (painter, lr_vec3 (0.0, 0.0, 1.0)), off_m),
    .w = w,
    .off2 = pool->off_m * pool->off_m,
    .per_radius = 1.0 / pool->radius_m,
  };
}

static double
glow_level (gconstpointer data,
            LrVec2        at)
{
  const Glow *glow = data;
  double per_w = 1.0 / plane_at (glow->w, at), u = plane_at (glow->u, at) * per_w, v = plane_at (glow->v, at) * per_w;
  double share = 1.0 - sqrt (u * u + v * v + glow->off2) * glow->per_radius;

  return share > 0.0 ? pool_level (share) : 0.0; /* also where the ray runs along the wall */
}

static void
paint_glow (const LrPainter *painter,
            const LrScene   *scene,
            const LrFace    *face,
            const LrPatch   *patch,
            const Pool      *pool)
{
  Glow glow = find_glow (painter, face, pool);
  LrPixelTones tones = { .level = glow_level, .data = &glow };

  for (guint i = 0; i < LR_N_TONES; i++)
    tones.tone[i] = lr_pixel_of (lr_tone_light (face->color, 1.0 + scene->pool.gain * i / (LR_N_TONES - 1.0)));
  lr_paint_patch_in_tones (painter, patch, &tones);
}

/**
 * lr_paint_wall:
 * @painter: a painter
 * @scene: what it paints
 * @face: the inner face of a wall
 * @patch: what is seen of it
 */
void
lr_paint_wall (const LrPainter *painter,
               const LrScene   *scene,
               const LrFace    *face,
               const LrPatch   *patch)
{
  gboolean has_pool;
  Pool pool;

  has_pool = find_pool (scene, face, &pool);
  if (has_pool && painter->pixels.surface != NULL)
    {
      paint_glow (painter, scene, face, patch, &pool);
      return;
    }

  lr_paint_patch (painter, patch, face->color, face->alpha);
  if (has_pool)
    paint_rings (painter, scene, face, &pool);
}
