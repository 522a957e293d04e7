/* scene.c - what stands in a room, as solids that can be put in order and painted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "scene.h"

#include "figure.h"
#include "scene_light.h"

#define COVERED_M 0.02
#define MARGIN_M 0.3         /* what is drawn may reach over the footprint, and be soft */
#define USUAL_WIDTH_PX 470.0
#define LEAST_PX 1.5         /* smaller things are left out */

/**
 * lr_axes_standing:
 * @at_m: where it stands [m]
 * @z_m: height of the origin [m]
 * @facing_rad: direction of its x [rad]
 *
 * Returns: an upright frame
 */
LrAxes
lr_axes_standing (LrVec2 at_m,
                  double z_m,
                  double facing_rad)
{
  double c = cos (facing_rad), s = sin (facing_rad);

  return (LrAxes) { lr_vec2_raise (at_m, z_m), { c, s, 0.0 }, { -s, c, 0.0 }, { 0.0, 0.0, 1.0 } };
}

/**
 * lr_axes_tilted:
 * @at_m: the origin [m]
 * @facing_rad: direction of its x in plan [rad]
 * @tilt_rad: its x above the horizontal [rad]
 *
 * Returns: a frame whose y is level
 */
LrAxes
lr_axes_tilted (LrVec3 at_m,
                double facing_rad,
                double tilt_rad)
{
  double cf = cos (facing_rad), sf = sin (facing_rad);
  double ct = cos (tilt_rad), st = sin (tilt_rad);

  return (LrAxes) { at_m, { ct * cf, ct * sf, st }, { -sf, cf, 0.0 }, { -st * cf, -st * sf, ct } };
}

/**
 * lr_axes_direction:
 * @axes: a frame
 * @x: ahead
 * @y: to the left
 * @z: up
 *
 * Returns: the same vector in the room
 */
LrVec3
lr_axes_direction (const LrAxes *axes,
                   double        x,
                   double        y,
                   double        z)
{
  return lr_vec3 (axes->x.x * x + axes->y.x * y + axes->z.x * z,
                  axes->x.y * x + axes->y.y * y + axes->z.y * z,
                  axes->x.z * x + axes->y.z * y + axes->z.z * z);
}

/**
 * lr_axes_point:
 * @axes: a frame
 * @x: ahead of its origin [m]
 * @y: to the left of it [m]
 * @z: above it [m]
 *
 * Returns: the point in the room
 */
LrVec3
lr_axes_point (const LrAxes *axes,
               double        x,
               double        y,
               double        z)
{
  return lr_vec3_add (axes->origin_m, lr_axes_direction (axes, x, y, z));
}

/**
 * lr_scene_tone:
 * @scene: a scene
 * @material: what the surface is made of
 * @normal: outward, unit
 *
 * Equipment is lit from all round, a little more from above, and from the side of the key, as much as the walls are; furniture whose
 * levels are known by what falls on those of its sides that the surface looks to.
 *
 * Returns: the tone of the surface
 */
LrColor
lr_scene_tone (const LrScene *scene,
               LrMaterial     material,
               LrVec3         normal)
{
  double key = fmax (0.0, lr_vec3_dot (normal, scene->modelling.key));
  double light;

  if (scene->here != NULL)
    return lr_tone (material.hue, material.reflectance * lr_scene_light_here (scene, normal));

  light = 0.34 + 0.14 * fmax (0.0, normal.z) + 0.26 * key;

  return lr_tone (material.hue, material.reflectance * light * scene->light.gain);
}

/**
 * lr_scene_begin:
 * @scene: a scene
 * @placed: (nullable): whose solid it is
 *
 * What is added until lr_scene_end() is one solid.
 */
void
lr_scene_begin (LrScene        *scene,
                const LrPlaced *placed)
{
  LrSolid solid = { .type = LR_SOLID_FACES, .first_face = scene->faces->len, .placed = placed };

  g_array_append_val (scene->solids, solid);
}

/* Sides of a prism turned by an angle, that grows round points */
typedef struct
{
  LrVec2 along, across;
  double x0, x1, y0, y1, z0, z1;
} Bounds;

static void
bound (Bounds *bounds,
       LrVec3  point_m,
       double  radius_m)
{
  double x = lr_vec2_dot (lr_vec3_flat (point_m), bounds->along);
  double y = lr_vec2_dot (lr_vec3_flat (point_m), bounds->across);

  bounds->x0 = fmin (bounds->x0, x - radius_m);
  bounds->x1 = fmax (bounds->x1, x + radius_m);
  bounds->y0 = fmin (bounds->y0, y - radius_m);
  bounds->y1 = fmax (bounds->y1, y + radius_m);
  bounds->z0 = fmin (bounds->z0, point_m.z - radius_m);
  bounds->z1 = fmax (bounds->z1, point_m.z + radius_m);
}

/**
 * lr_scene_end:
 * @scene: a scene
 * @facing_rad: direction of the prism that bounds the solid [rad]
 */
void
lr_scene_end (LrScene *scene,
              double   facing_rad)
{
  LrSolid *solid = &g_array_index (scene->solids, LrSolid, scene->solids->len - 1);
  LrVec2 along = lr_vec2_polar (facing_rad, 1.0);
  Bounds b = { along, lr_vec2_left (along), HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL };
  LrVec2 centre_m;

  solid->n_faces = scene->faces->len - solid->first_face;
  if (solid->n_faces == 0)
    {
      g_array_set_size (scene->solids, scene->solids->len - 1);
      return;
    }

  for (guint i = solid->first_face; i < scene->faces->len; i++)
    {
      const LrFace *face = &g_array_index (scene->faces, LrFace, i);

      for (guint j = 0; j < face->n; j++)
        bound (&b, g_array_index (scene->points, LrVec3, face->first + j), face->radius_m);
    }

  centre_m = lr_vec2_along (lr_vec2_scale (b.along, 0.5 * (b.x0 + b.x1)), b.across, 0.5 * (b.y0 + b.y1));
  solid->base = lr_outline_box (centre_m, b.x1 - b.x0, b.y1 - b.y0, facing_rad);
  solid->bottom_m = b.z0;
  solid->top_m = b.z1;
}

/* Newell's normal, which does not mind corners that fall together */
static LrVec3
normal_of (const LrVec3 *points_m,
           guint         n)
{
  LrVec3 sum = { 0.0, 0.0, 0.0 };
  double length;

  for (guint i = 0; i < n; i++)
    {
      LrVec3 a = lr_vec3_sub (points_m[i], points_m[0]), b = lr_vec3_sub (points_m[(i + 1) % n], points_m[0]);

      sum = lr_vec3_add (sum, lr_vec3_cross (a, b));
    }

  length = lr_vec3_length (sum);
  return length > 0.0 ? lr_vec3_scale (sum, 1.0 / length) : sum;
}

/**
 * lr_scene_face:
 * @scene: a scene, between lr_scene_begin() and lr_scene_end()
 * @points_m: corners of a convex polygon, anticlockwise as seen from outside [m]
 * @n: their number
 * @color: its tone
 * @alpha: how much of what is behind it hides, 0 to 1
 * @flags: of #LrFaceFlags
 */
void
lr_scene_face (LrScene      *scene,
               const LrVec3 *points_m,
               guint         n,
               LrColor       color,
               double        alpha,
               guint         flags)
{
  LrFace face = {
    .first = scene->points->len,
    .n = n,
    .flags = flags,
    .normal = normal_of (points_m, n),
    .color = color,
    .alpha = alpha,
  };

  g_array_append_vals (scene->points, points_m, n);
  g_array_append_val (scene->faces, face);
}

/**
 * lr_scene_bar:
 * @scene: a scene, between lr_scene_begin() and lr_scene_end()
 * @from_m: one end of the axis [m]
 * @to_m: the other [m]
 * @radius_m: [m]
 * @color: its tone
 */
void
lr_scene_bar (LrScene *scene,
              LrVec3   from_m,
              LrVec3   to_m,
              double   radius_m,
              LrColor  color)
{
  LrVec3 ends_m[2] = { from_m, to_m };
  LrFace face = {
    .first = scene->points->len,
    .n = 2,
    .flags = LR_FACE_TWO_SIDED,
    .color = color,
    .alpha = 1.0,
    .radius_m = radius_m,
  };

  g_array_append_vals (scene->points, ends_m, 2);
  g_array_append_val (scene->faces, face);
}

/**
 * lr_scene_front:
 * @scene: a scene, between lr_scene_begin() and lr_scene_end()
 * @axes: a frame
 * @x: the plane of the rectangle, which is seen from ahead [m]
 * @box: its y and z [m]
 * @color: its tone
 * @flags: of #LrFaceFlags
 */
void
lr_scene_front (LrScene      *scene,
                const LrAxes *axes,
                double        x,
                LrBox         box,
                LrColor       color,
                guint         flags)
{
  LrVec3 points_m[4] = {
    lr_axes_point (axes, x, box.y0, box.z0),
    lr_axes_point (axes, x, box.y1, box.z0),
    lr_axes_point (axes, x, box.y1, box.z1),
    lr_axes_point (axes, x, box.y0, box.z1),
  };

  lr_scene_face (scene, points_m, 4, color, 1.0, flags);
}

/**
 * lr_scene_faces_of_box:
 * @scene: a scene, between lr_scene_begin() and lr_scene_end()
 * @axes: a frame
 * @box: in it [m]
 * @has_ends: whether its top and bottom can be seen
 * @material: what it is made of
 */
void
lr_scene_faces_of_box (LrScene      *scene,
                       const LrAxes *axes,
                       LrBox         box,
                       gboolean      has_ends,
                       LrMaterial    material)
{
  /* Corners by bits: 1 x, 2 y, 4 z; each side anticlockwise from outside */
  static const guint8 sides[6][4] = {
    { 1, 3, 7, 5 }, { 0, 4, 6, 2 }, { 2, 6, 7, 3 }, { 0, 1, 5, 4 }, { 4, 5, 7, 6 }, { 0, 2, 3, 1 },
  };
  LrVec3 corners_m[8];

  for (guint i = 0; i < 8; i++)
    corners_m[i] = lr_axes_point (axes, i & 1 ? box.x1 : box.x0, i & 2 ? box.y1 : box.y0, i & 4 ? box.z1 : box.z0);

  for (guint i = 0; i < (has_ends ? 6 : 4); i++)
    {
      LrVec3 points_m[4];

      for (guint j = 0; j < 4; j++)
        points_m[j] = corners_m[sides[i][j]];
      lr_scene_face (scene, points_m, 4, lr_scene_tone (scene, material, normal_of (points_m, 4)), 1.0, LR_FACE_PLAIN);
    }
}

static void
add_solid_box (LrScene        *scene,
               const LrPlaced *placed,
               const LrAxes   *axes,
               LrBox           box,
               gboolean        has_ends,
               LrMaterial      material)
{
  if (!(box.x1 > box.x0) || !(box.y1 > box.y0) || !(box.z1 > box.z0))
    return;

  lr_scene_begin (scene, placed);
  lr_scene_faces_of_box (scene, axes, box, has_ends, material);
  lr_scene_end (scene, atan2 (axes->x.y, axes->x.x));
}

/**
 * lr_scene_box:
 * @scene: a scene
 * @placed: (nullable): whose it is
 * @axes: a frame
 * @box: in it [m]
 * @material: what it is made of
 */
void
lr_scene_box (LrScene        *scene,
              const LrPlaced *placed,
              const LrAxes   *axes,
              LrBox           box,
              LrMaterial      material)
{
  add_solid_box (scene, placed, axes, box, TRUE, material);
}

/**
 * lr_scene_column:
 * @scene: a scene
 * @placed: (nullable): whose it is
 * @axes: a frame
 * @box: in it [m]
 * @material: what it is made of
 *
 * A box without top and bottom, for legs and the like. It is drawn a little way into what covers it, or light
 * would shine through where two soft edges meet.
 */
void
lr_scene_column (LrScene        *scene,
                 const LrPlaced *placed,
                 const LrAxes   *axes,
                 LrBox           box,
                 LrMaterial      material)
{
  guint n = scene->solids->len;

  box.z1 += COVERED_M;
  add_solid_box (scene, placed, axes, box, FALSE, material);
  if (scene->solids->len > n)
    g_array_index (scene->solids, LrSolid, n).top_m -= COVERED_M;
}

/**
 * lr_scene_size_px:
 * @scene: a scene
 * @placed: furniture or a person
 *
 * By a ball round the thing: it may be in the picture when the ball reaches over the planes of the frame's sides.
 *
 * Returns: about how large it is in a picture of the usual width [px], 0 when it is not in it
 */
double
lr_scene_size_px (const LrScene  *scene,
                  const LrPlaced *placed)
{
  const LrProjection *p = &scene->projection;
  LrVec3 middle_m = lr_vec2_raise (placed->footprint.centre_m, 0.5 * placed->top_m);
  double radius_m = MARGIN_M + hypot (placed->footprint.radius_m, 0.5 * placed->top_m);
  LrVec3 way = lr_vec3_sub (middle_m, scene->eye_m);
  double depth_m = lr_vec3_dot (way, p->forward);
  double across_m = fabs (lr_vec3_dot (way, p->right)) - depth_m * p->half_width;
  double up_m = fabs (lr_vec3_dot (way, p->up)) - depth_m * p->half_height;

  if (depth_m < -radius_m || across_m > radius_m * hypot (1.0, p->half_width) || up_m > radius_m * hypot (1.0, p->half_height))
    return 0.0;

  return USUAL_WIDTH_PX * radius_m / (p->half_width * fmax (depth_m, 0.1));
}

static void
add_item (LrScene        *scene,
          const LrPlaced *placed)
{
  if (placed == scene->camera || !isfinite (placed->at_m.x) || !isfinite (placed->at_m.y))
    return;
  if ((placed->item->kind == LR_ITEM_PERSON || placed->item->kind == LR_ITEM_FURNITURE)
      && lr_scene_size_px (scene, placed) < LEAST_PX)
    return;

  switch (placed->item->kind)
    {
    case LR_ITEM_PERSON:
      lr_scene_add_person (scene, placed);
      break;
    case LR_ITEM_FURNITURE:
      {
        double gain = scene->light.gain;

        lr_scene_enter (scene, placed);
        lr_scene_add_furniture (scene, placed);
        scene->here = NULL;
        scene->light.gain = gain;
      }
      break;
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
    case LR_ITEM_LEAD:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
      lr_scene_add_kit (scene, placed);
      break;
    case LR_ITEM_DOOR: /* parts of their walls */
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}

/**
 * lr_scene_new:
 * @study: a study
 * @camera: one of its cameras
 * @levels: (nullable): of light in the plan, or in one much like it; held while the scene is
 *
 * Returns: (transfer full): everything that @camera could see, wherever it looks
 */
LrScene *
lr_scene_new (const LrStudy         *study,
              const LrCameraReading *camera,
              const LrLightLevels   *levels)
{
  LrScene *scene = g_new0 (LrScene, 1);

  scene->study = study;
  scene->camera = camera->placed;
  scene->eye_m = camera->projection.eye_m;
  scene->projection = camera->projection;
  scene->points = g_array_sized_new (FALSE, FALSE, sizeof (LrVec3), 2048);
  scene->faces = g_array_sized_new (FALSE, FALSE, sizeof (LrFace), 512);
  scene->solids = g_array_sized_new (FALSE, FALSE, sizeof (LrSolid), 128);

  lr_scene_light (scene, camera, levels);
  lr_scene_add_walls (scene);
  for (guint i = 0; i < study->placed->len; i++)
    add_item (scene, &g_array_index (study->placed, LrPlaced, i));

  return scene;
}

/**
 * lr_scene_free:
 * @scene: (transfer full): a scene
 */
void
lr_scene_free (LrScene *scene)
{
  g_array_unref (scene->points);
  g_array_unref (scene->faces);
  g_array_unref (scene->solids);
  g_free (scene);
}
