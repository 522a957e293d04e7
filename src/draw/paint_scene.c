/* paint_scene.c - the room, and its solids face by face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figure.h"
#include "paint.h"

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
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_FAST);
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
  set_color (painter->cr, lr_tone (LR_HUE_WALL, is_inside ? 0.5 * room->walls.reflectance * scene->light.gain : 0.10));
  cairo_paint (painter->cr);
  if (scene->eye_m.z > 0.0)
    {
      fill_level (painter, room->corners_m, room->n_corners, 0.0,
                  lr_tone (LR_HUE_WOOD, 0.52 * room->floor.reflectance * scene->light.gain));
      paint_shadows (painter, scene);
    }
  if (scene->eye_m.z < room->height_m)
    fill_level (painter, room->corners_m, room->n_corners, room->height_m,
                lr_tone (LR_HUE_WALL, 0.50 * room->ceiling.reflectance * scene->light.gain));
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
      if (face->flags & LR_FACE_WALL)
        lr_paint_wall (painter, scene, face, &patch);
      else
        lr_paint_patch (painter, &patch, face->color, face->alpha);
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

  if (n_faces <= 1)
    return;

  /* The sides cover its edge */
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_NONE);
  lr_paint_hull (painter, points, n, radius + 0.6 * painter->unit,
                 (LrColor) { sum.r / n_faces, sum.g / n_faces, sum.b / n_faces });
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_FAST);
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
