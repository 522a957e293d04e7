/* light_shade.c - what stands in the way of light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Furniture, panels, people and the heads of lamps are solids, with sharp shadows from each point of a source; stands, booms and cameras are
 * too thin or small to tell. A lamp does not stand in its own light. Walls count where a room has corners that point inwards: from a
 * convex room nothing is seen through a wall.
 */

#include "light_shade.h"

#include "intruders.h"

#define AT_END_M 0.002 /* what is so near to either end belongs to it */
#define OWN_LIGHT_M 0.06 /* a lamp's emitting face, before the ball that holds its head */

typedef struct
{
  LrVolume        shape;
  const LrPlaced *of;
  gboolean        is_lamp;
} Solid;

struct LrLightShade
{
  GArray       *solids; /* Solid */
  const LrRoom *room;
  gboolean      has_inner_corners;
};

static gboolean
has_inner_corners (const LrRoom *room)
{
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 before_m = room->corners_m[(i + room->n_corners - 1) % room->n_corners], at_m = room->corners_m[i];
      LrVec2 after_m = room->corners_m[(i + 1) % room->n_corners];

      if (lr_vec2_cross (lr_vec2_sub (at_m, before_m), lr_vec2_sub (after_m, at_m)) < 0.0)
        return TRUE;
    }
  return FALSE;
}

static guint
get_shapes (const LrPlaced *placed,
            LrVolume       *shapes)
{
  const LrItem *item = placed->item;

  if (item->kind == LR_ITEM_FURNITURE)
    return lr_furniture_slabs (placed, shapes);
  if (item->kind == LR_ITEM_PANEL)
    {
      lr_panel_sheet (placed, &shapes[0]);
      return 1;
    }
  if (item->kind != LR_ITEM_PERSON || !(placed->body.stature_m > 0.0))
    return 0;

  lr_person_head (placed, &shapes[0]);
  lr_person_trunk (placed, &shapes[1]);
  return 2;
}

static void
add_lamp (LrLightShade   *shade,
          const LrStudy  *study,
          const LrPlaced *light)
{
  LrIntruder intruder = { 0 };

  lr_intruder_shapes (study, light, &intruder);
  for (guint i = 0; i < intruder.n; i++)
    if (intruder.part[i] == LR_INTRUDER_HEAD)
      g_array_append_val (shade->solids, ((Solid) { intruder.shape[i], light, TRUE }));
}

static LrLightShade *
new_shade (const LrStudy *study,
           gboolean       has_movables)
{
  LrLightShade *shade = g_new0 (LrLightShade, 1);

  shade->solids = g_array_new (FALSE, FALSE, sizeof (Solid));
  shade->room = study->setup->room;
  shade->has_inner_corners = has_inner_corners (shade->room);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrVolume shapes[2];
      guint n = placed->item->kind == LR_ITEM_PERSON && !has_movables ? 0 : get_shapes (placed, shapes);

      for (guint j = 0; j < n; j++)
        g_array_append_val (shade->solids, ((Solid) { shapes[j], placed, FALSE }));
      if (placed->item->kind == LR_ITEM_LIGHT && has_movables)
        add_lamp (shade, study, placed);
    }
  return shade;
}

/**
 * lr_light_shade_new:
 * @study: a study
 *
 * Returns: (transfer full): what keeps light away in it
 */
LrLightShade *
lr_light_shade_new (const LrStudy *study)
{
  return new_shade (study, TRUE);
}

/**
 * lr_light_shade_new_fixed:
 * @study: a study
 *
 * Returns: (transfer full): what keeps light away in it, without people and equipment
 */
LrLightShade *
lr_light_shade_new_fixed (const LrStudy *study)
{
  return new_shade (study, FALSE);
}

/**
 * lr_light_shade_free:
 * @shade: (transfer full) (nullable): what keeps light away
 */
void
lr_light_shade_free (LrLightShade *shade)
{
  if (shade == NULL)
    return;

  g_array_unref (shade->solids);
  g_free (shade);
}

/* Quick: whether a ray of length 1 passes through the ball that holds it */
static gboolean
may_meet (const LrVolume *shape,
          LrVec3          from_m,
          LrVec3          way)
{
  LrVec3 to_m = lr_vec3_sub (shape->centre_m, from_m);
  double along_m = lr_vec3_dot (to_m, way);

  return lr_vec3_dot (to_m, to_m) - along_m * along_m < shape->reach_m * shape->reach_m;
}

/* Whether either end is at the lamp itself */
static gboolean
is_own (const Solid *solid,
        LrVec3       from_m,
        LrVec3       to_m)
{
  double near_m = solid->shape.reach_m + OWN_LIGHT_M;

  return solid->is_lamp
         && (lr_vec3_length (lr_vec3_sub (from_m, solid->shape.centre_m)) < near_m
             || lr_vec3_length (lr_vec3_sub (to_m, solid->shape.centre_m)) < near_m);
}

static gboolean
passes_wall (const LrRoom *room,
             LrVec2        from_m,
             LrVec2        to_m)
{
  LrVec2 way = lr_vec2_sub (to_m, from_m);
  double length_m = lr_vec2_length (way);
  LrRayHit hit;

  if (length_m < 2.0 * AT_END_M)
    return FALSE;

  from_m = lr_vec2_along (from_m, way, AT_END_M / length_m);
  return lr_polygon_ray (room->corners_m, room->n_corners, from_m, way, &hit) && hit.distance_m < length_m - 2.0 * AT_END_M;
}

/**
 * lr_light_shade_is_clear:
 * @shade: what keeps light away
 * @from_m: a place [m]
 * @to_m: another [m]
 * @of: (nullable): the thing that one of them belongs to
 *
 * Returns: whether nothing stands between
 */
gboolean
lr_light_shade_is_clear (const LrLightShade *shade,
                         LrVec3              from_m,
                         LrVec3              to_m,
                         const LrPlaced     *of)
{
  LrVec3 way = lr_vec3_sub (to_m, from_m);
  double distance_m = lr_vec3_length (way), enter_m;

  if (distance_m < AT_END_M)
    return TRUE;

  way = lr_vec3_scale (way, 1.0 / distance_m);
  for (guint i = 0; i < shade->solids->len; i++)
    {
      const Solid *solid = &g_array_index (shade->solids, Solid, i);

      if (solid->of != of && may_meet (&solid->shape, from_m, way) && lr_volume_is_met (&solid->shape, from_m, way, &enter_m)
          && enter_m < distance_m - AT_END_M && !is_own (solid, from_m, to_m))
        return FALSE;
    }
  return !shade->has_inner_corners || !passes_wall (shade->room, lr_vec3_flat (from_m), lr_vec3_flat (to_m));
}
