/* paint_scene.c - the room, and its solids face by face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figure.h"
#include "paint.h"

#define N_POOL_RINGS 28
#define N_RING_CORNERS 36
#define N_SHADOW_CORNERS 20

static void
set_color (cairo_t *cr,
           LrColor  color)
{
  cairo_set_source_rgb (cr, color.r, color.g, color.b);
}

/* A level polygon of any shape, cut at the near plane */
static void
fill_level (const LrPainter *painter,
            const LrVec2    *corners_m,
            gsize            n,
            double           z_m,
            LrColor          color)
{
  gboolean is_first = TRUE;

  for (gsize i = 0; i < n; i++)
    {
      LrVec3 from_m = lr_vec2_raise (corners_m[i], z_m), to_m = lr_vec2_raise (corners_m[(i + 1) % n], z_m);
      double from = lr_painter_depth_m (painter, from_m) - LR_NEAR_M, to = lr_painter_depth_m (painter, to_m) - LR_NEAR_M;
      LrVec3 points_m[2];
      guint n_points = 0;

      if (from >= 0.0)
        points_m[n_points++] = from_m;
      if ((from >= 0.0) != (to >= 0.0))
        points_m[n_points++] = lr_vec3_along (from_m, lr_vec3_sub (to_m, from_m), from / (from - to));

      for (guint j = 0; j < n_points; j++)
        {
          LrVec2 at;

          if (!lr_painter_place (painter, points_m[j], &at))
            continue;
          if (is_first)
            cairo_move_to (painter->cr, at.x, at.y);
          else
            cairo_line_to (painter->cr, at.x, at.y);
          is_first = FALSE;
        }
    }

  set_color (painter->cr, color);
  cairo_fill (painter->cr);
}

/* No room drawn yet: a calm ground and a horizon */
static void
paint_nowhere (const LrPainter *painter)
{
  const LrProjection *p = painter->projection;
  LrVec2 ahead = lr_vec3_flat (p->forward);
  LrVec3 far_m = lr_vec3_along (p->eye_m, lr_vec3 (ahead.x, ahead.y, 0.0), 1e4);
  LrPatch ground = { .n = 4 };
  LrVec2 at;

  set_color (painter->cr, lr_tone (LR_HUE_WALL, 0.40));
  cairo_paint (painter->cr);
  if (!lr_painter_place (painter, far_m, &at))
    return;

  ground.at[0] = lr_vec2 (-painter->width, at.y);
  ground.at[1] = lr_vec2 (2.0 * painter->width, at.y);
  ground.at[2] = lr_vec2 (2.0 * painter->width, at.y + 9.0 * painter->height);
  ground.at[3] = lr_vec2 (-painter->width, at.y + 9.0 * painter->height);
  for (guint i = 0; i < 4; i++)
    ground.radius[i] = fmax (lr_painter_blur (painter, 1e4), 2.0 * painter->unit);
  lr_paint_patch (painter, &ground, lr_tone (LR_HUE_WALL, 0.26), 1.0);
}

/* A footprint grown by some metres, on the floor */
static guint
grown_footprint (const LrOutline *footprint,
                 double           by_m,
                 LrVec3          *out_m)
{
  guint n = footprint->n > 0 ? (guint) footprint->n : N_SHADOW_CORNERS;

  for (guint i = 0; i < n; i++)
    {
      LrVec2 way = footprint->n > 0 ? lr_vec2_sub (footprint->corner_m[i], footprint->centre_m)
                                    : lr_vec2_polar (2.0 * LR_PI * i / n, footprint->radius_m);
      double length_m = lr_vec2_length (way);

      out_m[i] = lr_vec2_raise (lr_vec2_along (footprint->centre_m, way, 1.0 + by_m / fmax (length_m, 0.05)), 0.0);
    }

  return n;
}

/* What stands on the floor keeps light from it: darker under it, and fading round it */
static void
paint_shadows (const LrPainter *painter,
               const LrScene   *scene)
{
  static const double growths_m[] = { 0.16, 0.07, -0.02 };

  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_NONE);
  cairo_set_source_rgba (painter->cr, 0.05, 0.04, 0.03, 0.07);
  for (guint i = 0; i < scene->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (scene->study->placed, LrPlaced, i);

      if (placed == scene->camera || !placed->has_footprint || placed->bottom_m > 0.3
          || (placed->item->kind != LR_ITEM_FURNITURE && placed->item->kind != LR_ITEM_PERSON))
        continue;

      for (guint j = 0; j < G_N_ELEMENTS (growths_m); j++)
        {
          LrVec3 corners_m[MAX (N_SHADOW_CORNERS, LR_OUTLINE_MAX)];
          LrPatch patch;

          guint n = grown_footprint (&placed->footprint, growths_m[j], corners_m);

          if (!lr_painter_project (painter, corners_m, n, &patch))
            continue;
          for (guint k = 0; k < patch.n; k++)
            cairo_line_to (painter->cr, patch.at[k].x, patch.at[k].y);
          cairo_close_path (painter->cr);
          cairo_fill (painter->cr);
        }
    }
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_DEFAULT);
}

/**
 * lr_paint_room:
 * @painter: a painter
 * @scene: what it paints
 *
 * What lies behind everything else: ground, floor and ceiling. The walls come later, among the solids.
 */
void
lr_paint_room (const LrPainter *painter,
               const LrScene   *scene)
{
  const LrRoom *room = scene->study->setup->room;
  gboolean is_inside;

  if (room->n_corners < 3)
    {
      paint_nowhere (painter);
      return;
    }

  is_inside = lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (scene->eye_m));
  set_color (painter->cr, lr_tone (LR_HUE_WALL, is_inside ? 0.5 * room->walls.reflectance : 0.10));
  cairo_paint (painter->cr);
  if (scene->eye_m.z > 0.0)
    {
      fill_level (painter, room->corners_m, room->n_corners, 0.0,
                  lr_tone (LR_HUE_WOOD, 0.52 * room->floor.reflectance));
      paint_shadows (painter, scene);
    }
  if (scene->eye_m.z < room->height_m)
    fill_level (painter, room->corners_m, room->n_corners, room->height_m,
                lr_tone (LR_HUE_WALL, 0.50 * room->ceiling.reflectance));
}

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

/**
 * lr_paint_pool:
 * @painter: a painter
 * @scene: what it paints
 * @face: the inner face of a wall, already painted
 *
 * The light that the set throws on the walls: a ball of light round the middle of the pool, where it cuts the
 * wall. Rings, each a little lighter than the one around it, because a gradient would cost a gradient's price on
 * every pixel. A ring has a hole where the one after the next begins: a pixel is painted twice, not once for each ring.
 */
void
lr_paint_pool (const LrPainter *painter,
               const LrScene   *scene,
               const LrFace    *face)
{
  LrPatch patches[3]; /* of this ring and the next two, by turns */
  gboolean is_there[3], is_cut[3];
  Pool pool;

  if (!find_pool (scene, face, &pool))
    return;

  cairo_set_fill_rule (painter->cr, CAIRO_FILL_RULE_EVEN_ODD);
  for (int i = -2; i < N_POOL_RINGS; i++)
    {
      int here = (i + 3) % 3, ahead = (i + 2) % 3;
      double level = (i + 0.5) / N_POOL_RINGS;

      is_there[ahead] = i + 2 < N_POOL_RINGS
                        && project_ring (painter, &pool, 1.0 - (i + 2.0) / N_POOL_RINGS, &patches[ahead], &is_cut[ahead]);
      if (i < 0 || !is_there[here])
        continue;

      /* The step from ring to ring is too small to be seen, but not that at the sharp end of a wall */
      cairo_set_antialias (painter->cr, is_cut[here] && patches[here].radius[0] < painter->unit ? CAIRO_ANTIALIAS_DEFAULT
                                                                                                 : CAIRO_ANTIALIAS_NONE);
      set_color (painter->cr, lr_tone_light (face->color, 1.0 + scene->pool.gain * level * level * (3.0 - 2.0 * level)));
      add_ring (painter, &patches[here]);
      if (is_there[ahead])
        add_ring (painter, &patches[ahead]);
      cairo_fill (painter->cr);
    }

  cairo_set_fill_rule (painter->cr, CAIRO_FILL_RULE_WINDING);
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_DEFAULT);
}

static gboolean
is_seen (const LrScene *scene,
         const LrFace  *face)
{
  LrVec3 at_m = g_array_index (scene->points, LrVec3, face->first);

  return (face->flags & LR_FACE_TWO_SIDED) || lr_vec3_dot (face->normal, lr_vec3_sub (scene->eye_m, at_m)) > 0.0;
}

static void
paint_face (const LrPainter *painter,
            const LrScene   *scene,
            const LrFace    *face)
{
  const LrVec3 *points_m = &g_array_index (scene->points, LrVec3, face->first);
  LrPatch patch;

  if (face->n == 2)
    lr_paint_bar (painter, points_m[0], points_m[1], face->radius_m, face->color, face->alpha);
  else if (lr_painter_project (painter, points_m, face->n, &patch))
    {
      lr_paint_patch (painter, &patch, face->color, face->alpha);
      if (face->flags & LR_FACE_WALL)
        lr_paint_pool (painter, scene, face);
    }
}

/* A ground in the mean tone under the sides that are seen, so that no light shines through their common edges */
static void
paint_ground (const LrPainter *painter,
              const LrScene   *scene,
              const LrSolid   *solid)
{
  LrVec2 points[LR_PAINT_CORNERS];
  LrColor sum = { 0.0, 0.0, 0.0 };
  double radius = 0.0;
  guint n = 0, n_faces = 0;

  for (guint i = 0; i < solid->n_faces; i++)
    {
      const LrFace *face = &g_array_index (scene->faces, LrFace, solid->first_face + i);
      LrPatch patch;

      if (face->n < 3 || (face->flags & LR_FACE_DETAIL) || !is_seen (scene, face)
          || !lr_painter_project (painter, &g_array_index (scene->points, LrVec3, face->first), face->n, &patch))
        continue;

      sum = (LrColor) { sum.r + face->color.r, sum.g + face->color.g, sum.b + face->color.b };
      n_faces++;
      for (guint j = 0; j < patch.n && n < LR_PAINT_CORNERS; j++)
        {
          radius = fmax (radius, patch.radius[j]);
          points[n++] = patch.at[j];
        }
    }

  if (n_faces > 1)
    lr_paint_hull (painter, points, n, radius + 0.6 * painter->unit,
                   (LrColor) { sum.r / n_faces, sum.g / n_faces, sum.b / n_faces });
}

/**
 * lr_paint_solid:
 * @painter: a painter
 * @scene: what it paints
 * @solid: one of its solids that has faces
 *
 * Its faces that are seen, then what lies on them.
 */
void
lr_paint_solid (const LrPainter *painter,
                const LrScene   *scene,
                const LrSolid   *solid)
{
  if (solid->type == LR_SOLID_FACES)
    paint_ground (painter, scene, solid);

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < solid->n_faces; i++)
      {
        const LrFace *face = &g_array_index (scene->faces, LrFace, solid->first_face + i);

        if (((face->flags & LR_FACE_DETAIL) != 0) == (pass == 1) && is_seen (scene, face))
          paint_face (painter, scene, face);
      }
}

/**
 * lr_paint_scene:
 * @painter: a painter
 * @scene: what it paints
 */
void
lr_paint_scene (const LrPainter *painter,
                const LrScene   *scene)
{
  g_autoptr (GArray) order = lr_paint_order (painter, scene);

  lr_paint_room (painter, scene);
  for (guint i = 0; i < order->len; i++)
    {
      const LrSolid *solid = &g_array_index (scene->solids, LrSolid, g_array_index (order, guint, i));

      if (solid->type == LR_SOLID_FIGURE)
        lr_paint_person (painter, scene, solid);
      else
        lr_paint_solid (painter, scene, solid);
    }
}
