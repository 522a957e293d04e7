/* figure.c - a person in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Built of ellipsoids at the heights of the body that the study knows (figure_outline.c), shaded by figure_shade.c.
 */

#include "figure_parts.h"
#include "scene_light.h"

#define TABLE_STATURE_M 1.70

static void
add_part (LrScene        *scene,
          const LrPlaced *placed,
          LrFigurePart    part,
          LrBox           box)
{
  LrAxes axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad);
  LrVec3 middle_m = lr_axes_point (&axes, 0.5 * (box.x0 + box.x1), 0.5 * (box.y0 + box.y1), 0.0);
  LrSolid solid = {
    .type = LR_SOLID_FIGURE,
    .base = lr_outline_box (lr_vec3_flat (middle_m), box.x1 - box.x0, box.y1 - box.y0, placed->facing_rad),
    .bottom_m = box.z0,
    .top_m = box.z1,
    .first_face = scene->faces->len,
    .part = part,
    .placed = placed,
  };

  g_array_append_val (scene->solids, solid);
}

/**
 * lr_scene_add_person:
 * @scene: a scene
 * @placed: a person
 *
 * The parts' prisms leave each other and the chair alone, so that each finds its place in the order; what is drawn
 * may reach a little beyond them.
 */
void
lr_scene_add_person (LrScene        *scene,
                     const LrPlaced *placed)
{
  const LrPerson *person = &placed->item->person;
  LrAxes axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad);
  double seat_m = person->seat_height_m, hip_m = placed->body.hip_m, crown_m = placed->body.crown_m + 0.02;

  if (!(placed->body.stature_m > 0.0))
    return;

  if (person->posture != LR_POSTURE_SEATED)
    {
      add_part (scene, placed, LR_FIGURE_UPPER, (LrBox) { -0.16, 0.16, -0.29, 0.29, hip_m - 0.06, crown_m });
      add_part (scene, placed, LR_FIGURE_LEGS, (LrBox) { -0.16, 0.20, -0.20, 0.20, 0.0, hip_m - 0.06 });
      return;
    }

  lr_scene_add_chair (scene, placed, &axes, (LrBox) { -0.285, 0.22, -0.215, 0.215, 0.0, seat_m + 0.43 }, seat_m,
                      (LrMaterial) { LR_HUE_WOOD, 0.11 });
  add_part (scene, placed, LR_FIGURE_UPPER, (LrBox) { -0.23, 0.13, -0.27, 0.27, seat_m, fmax (crown_m, seat_m + 0.1) });
  add_part (scene, placed, LR_FIGURE_LAP, (LrBox) { 0.13, 0.55, -0.26, 0.26, seat_m, seat_m + 0.30 });
  if (seat_m > 0.1)
    add_part (scene, placed, LR_FIGURE_LEGS, (LrBox) { 0.36, 0.70, -0.20, 0.20, 0.0, seat_m });
}

static double
looks_up_rad (const LrScene  *scene,
              const LrPlaced *placed)
{
  const LrPlaced *other = lr_study_find_placed (scene->study, placed->item->person.looks_at);

  if (other == NULL || other == placed)
    return 0.0;

  /* The eyes turn for the rest */
  return CLAMP (0.7 * lr_elevation_rad (placed->eyes_m, other->point_m), -0.35, 0.35);
}

/* Hair has no place in a plan: silver, dark and brown tell the three roles apart */
static double
hair_reflectance (LrRole role)
{
  return role == LR_ROLE_SUBJECT ? 0.52 : role == LR_ROLE_INTERVIEWER ? 0.05 : 0.13;
}

/* What is drawn on the surface ends at the edge, or where the edge begins to be soft */
static double
seen_rad (const LrFigure *figure,
          double          radius_m)
{
  double share = figure->soft / fmax (radius_m * figure->head_px * figure->painter->unit / figure->head_m, 1e-6);

  return fmin (87.0 * LR_DEG, asin (CLAMP (1.0 - share, 0.2, 1.0)));
}

static void
init_figure (LrFigure        *figure,
             const LrPainter *painter,
             const LrScene   *scene,
             const LrPlaced  *placed)
{
  const LrPerson *person = &placed->item->person;
  double depth_m = fmax (lr_painter_depth_m (painter, placed->eyes_m), LR_NEAR_M);
  LrModelling modelling = scene->modelling;
  double cloth = CLAMP (person->clothing_reflectance, 0.02, 0.85);

  lr_scene_model_person (scene, placed, &modelling);
  *figure = (LrFigure) {
    .painter = painter,
    .scene = scene,
    .placed = placed,
    .person = person,
    .modelling = modelling,
    .body = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad),
    .head = lr_axes_tilted (placed->eyes_m, placed->facing_rad, looks_up_rad (scene, placed)),
    .k = placed->body.stature_m / TABLE_STATURE_M,
    .head_m = placed->body.head_height_m,
    .shoulder_m = placed->body.shoulder_m,
    .seat_m = person->seat_height_m,
    .hip_m = placed->body.hip_m,
    .is_seated = person->posture == LR_POSTURE_SEATED,
    .skin = { LR_HUE_SKIN, 0.44 * pow (CLAMP (person->skin_reflectance, 0.03, 0.8) / 0.36, 0.8) },
    .hair = { LR_HUE_PLAIN, hair_reflectance ((LrRole) person->role) },
    .jacket = { LR_HUE_CLOTH, 0.85 * cloth },
    .trousers = { LR_HUE_METAL, 0.05 + 0.1 * cloth },
    .shirt = { LR_HUE_PLAIN, 0.56 },
    .shoes = { LR_HUE_WOOD, 0.05 },
  };
  figure->head_px = figure->head_m * lr_painter_scale (painter, depth_m) / painter->unit;
  figure->soft = lr_painter_blur (painter, depth_m);
  figure->head_seen_rad = seen_rad (figure, 0.33 * figure->head_m);
  figure->trunk_seen_rad = seen_rad (figure, 0.17 * figure->k);
}

/**
 * lr_paint_person:
 * @painter: a painter
 * @scene: what it paints
 * @solid: one of a person's parts
 */
void
lr_paint_person (const LrPainter *painter,
                 const LrScene   *scene,
                 const LrSolid   *solid)
{
  LrFigure figure;

  init_figure (&figure, painter, scene, solid->placed);
  switch ((LrFigurePart) solid->part)
    {
    case LR_FIGURE_UPPER:
      lr_figure_paint_upper (&figure);
      break;
    case LR_FIGURE_LAP:
      lr_figure_paint_lap (&figure);
      break;
    case LR_FIGURE_LEGS:
    default:
      lr_figure_paint_legs (&figure);
      break;
    }
}
