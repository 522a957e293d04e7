/* light_probes.c - the small faces on which levels of light are told
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A head is the ellipsoid of its height, breadth and length; cheeks are 40 degrees round from the nose and a little down, so that
 * a key at the usual 30 to 45 degrees shines straight on one of them (common practice, no source). Behind the subject, rays through
 * the frame are followed to the wall; those that meet a thing or a person on the way tell nothing of the wall.
 */

#include "light_probes.h"

#include "wall_surface.h"

#define ACROSS 7
#define DOWN 5
#define MOST_FURNITURE 24 /* further pieces take the light of the walls */
#define OFF_M 0.003 /* off the surface, so that it is not in its own way */

static const struct { double around_deg, up_deg; } head_points[] = {
  [LR_FACE_LEFT] = { 40.0, -8.0 }, [LR_FACE_RIGHT] = { -40.0, -8.0 }, [LR_FACE_FOREHEAD] = { 0.0, 28.0 },
  [LR_FACE_TOP] = { 0.0, 90.0 },   [LR_FACE_BACK] = { 180.0, 20.0 },
};

/**
 * lr_light_probe_normal:
 * @person: a placed person
 * @point: of the head
 *
 * Returns: which way it faces, of length 1
 */
LrVec3
lr_light_probe_normal (const LrPlaced *person,
                       LrFacePoint     point)
{
  double around = head_points[point].around_deg * LR_DEG, up = head_points[point].up_deg * LR_DEG;

  return lr_vec2_raise (lr_vec2_polar (person->facing_rad + around, cos (up)), sin (up));
}

static LrLightProbe
head_probe (const LrPlaced *person,
            LrFacePoint     point)
{
  const LrBody *body = &person->body;
  LrVec3 middle_m = lr_vec2_raise (person->at_m, body->crown_m - 0.5 * body->head_height_m);
  double a = 0.5 * body->head_depth_m, b = 0.5 * body->head_width_m, c = 0.5 * body->head_height_m;
  double around = head_points[point].around_deg * LR_DEG, up = head_points[point].up_deg * LR_DEG;
  double cf = cos (person->facing_rad), sf = sin (person->facing_rad);
  /* on an ellipsoid the place whose normal goes that way */
  LrVec3 n = { cos (up) * cos (around), cos (up) * sin (around), sin (up) };
  double scale = 1.0 / sqrt (a * a * n.x * n.x + b * b * n.y * n.y + c * c * n.z * n.z);
  LrVec3 p = { a * a * n.x * scale, b * b * n.y * scale, c * c * n.z * scale };

  return (LrLightProbe) {
    .type = LR_PROBE_FACE, .placed = person, .point = point, .of = person, .reflectance = person->item->person.skin_reflectance,
    .at_m = { middle_m.x + p.x * cf - p.y * sf, middle_m.y + p.x * sf + p.y * cf, middle_m.z + p.z },
    .normal = lr_light_probe_normal (person, point),
  };
}

static LrLightProbe
chest_probe (const LrPlaced *person)
{
  LrVec2 facing = lr_vec2_polar (person->facing_rad, 1.0);
  double ahead_m = 0.065 * person->body.stature_m; /* half the trunk's depth, as drawn */

  return (LrLightProbe) {
    .type = LR_PROBE_FACE, .placed = person, .point = LR_FACE_CHEST, .of = person,
    .reflectance = person->item->person.clothing_reflectance,
    .at_m = lr_vec2_raise (lr_vec2_along (person->at_m, facing, ahead_m), person->body.chest_m),
    .normal = lr_vec2_raise (facing, 0.0),
  };
}

/* Where a ray through the frame meets a wall, if nothing is before it */
static gboolean
wall_probe (const LrStudy         *study,
            const LrLightShade    *shade,
            const LrCameraReading *camera,
            double                 across,
            double                 down,
            LrLightProbe          *probe)
{
  const LrRoom *room = study->setup->room;
  LrVec3 ray = lr_projection_ray (&camera->projection, across, down), eye_m = camera->projection.eye_m, at_m;
  LrVec2 flat = lr_vec3_flat (ray), from_m, along, inward;
  double length_m;
  LrRayHit hit;

  if (lr_vec2_length (flat) < 1e-6 || !lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (eye_m))
      || !lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (eye_m), flat, &hit)
      || !lr_room_wall (room, (int) hit.edge, &from_m, &along, &length_m))
    return FALSE;

  at_m = lr_vec3_along (eye_m, ray, hit.distance_m / lr_vec2_length (flat));
  inward = lr_vec2_left (along);
  if (at_m.z < OFF_M || at_m.z > room->height_m - OFF_M)
    return FALSE;

  at_m = lr_vec3_along (at_m, lr_vec2_raise (inward, 0.0), OFF_M);
  if (!lr_light_shade_is_clear (shade, eye_m, at_m, NULL))
    return FALSE;

  *probe = (LrLightProbe) {
    .type = LR_PROBE_BACKGROUND, .placed = camera->placed, .at_m = at_m, .normal = lr_vec2_raise (inward, 0.0),
    .reflectance = lr_wall_reflectance (study, (int) hit.edge, hit.along_m, at_m.z),
  };
  return TRUE;
}

/* The middle of a side */
static LrLightProbe
side_probe (const LrPlaced *furniture,
            LrThingSide     side)
{
  static const double around_deg[] = { [LR_THING_AHEAD] = 0.0, [LR_THING_BACK] = 180.0, [LR_THING_LEFT] = 90.0, [LR_THING_RIGHT] = -90.0 };
  const LrFurniture *f = &furniture->item->furniture;
  LrLightProbe probe = { .type = LR_PROBE_THING, .placed = furniture, .side = side, .of = furniture };
  LrVec2 way;

  if (side == LR_THING_TOP)
    {
      probe.at_m = lr_vec2_raise (furniture->at_m, furniture->top_m + OFF_M);
      probe.normal = lr_vec3 (0.0, 0.0, 1.0);
      return probe;
    }

  way = lr_vec2_polar (furniture->facing_rad + around_deg[side] * LR_DEG, 1.0);
  probe.at_m = lr_vec2_raise (lr_vec2_along (furniture->at_m, way, 0.5 * (side <= LR_THING_BACK ? f->length_m : f->width_m) + OFF_M),
                              0.5 * (furniture->bottom_m + furniture->top_m));
  probe.normal = lr_vec2_raise (way, 0.0);
  return probe;
}

/**
 * lr_light_add_furniture:
 * @study: a study
 * @probes: (element-type LrLightProbe): get the sides of its furniture, for pictures
 */
void
lr_light_add_furniture (const LrStudy *study,
                        GArray        *probes)
{
  guint n = 0;

  if (study->setup->room->n_corners < 3)
    return;

  for (guint i = 0; i < study->placed->len && n < MOST_FURNITURE; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind != LR_ITEM_FURNITURE)
        continue;
      n++;
      for (LrThingSide side = 0; side < LR_N_THING_SIDES; side++)
        {
          LrLightProbe probe = side_probe (placed, side);

          g_array_append_val (probes, probe);
        }
    }
}

/**
 * lr_light_probes:
 * @study: a study
 * @shade: what stands in the way in it
 *
 * Returns: (transfer full) (element-type LrLightProbe): where levels are told, but for furniture
 */
GArray *
lr_light_probes (const LrStudy      *study,
                 const LrLightShade *shade)
{
  GArray *probes = g_array_new (FALSE, FALSE, sizeof (LrLightProbe));
  LrLightProbe probe;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind != LR_ITEM_PERSON || !(placed->body.stature_m > 0.0))
        continue;
      for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
        {
          probe = point == LR_FACE_CHEST ? chest_probe (placed) : head_probe (placed, point);
          g_array_append_val (probes, probe);
        }
    }

  for (guint i = 0; study->setup->room->n_corners >= 3 && i < study->cameras->len; i++)
    for (int k = 0; k < ACROSS * DOWN; k++)
      if (wall_probe (study, shade, &g_array_index (study->cameras, LrCameraReading, i), (k % ACROSS + 0.5) / ACROSS, (k / ACROSS + 0.5) / DOWN,
                      &probe))
        g_array_append_val (probes, probe);
  return probes;
}
