/* scene_kit.c - equipment: stands, cameras, lights, microphones, panels, leads, house lights, noisy things
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes that the plan does not hold are those of the symbols on the sheet; heights of parts are common practice,
 * no source.
 */

#include "scene.h"

#include "boom.h"
#include "scene_light.h"

#define FIRST_LEG_RAD (LR_PI / 3.0)

static LrColor
metal (double reflectance)
{
  return lr_tone (LR_HUE_METAL, 0.6 * reflectance);
}

/**
 * lr_scene_add_stand:
 * @scene: a scene
 * @placed: whose it is
 * @radius_m: of the spread of its legs [m]
 * @top_m: where its pole ends [m]
 * @first_leg_rad: direction of a leg, from the way the thing faces [rad]
 */
void
lr_scene_add_stand (LrScene        *scene,
                    const LrPlaced *placed,
                    double          radius_m,
                    double          top_m,
                    double          first_leg_rad)
{
  LrAxes axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad);
  double joint_m = fmin (1.1 * radius_m, 0.6 * top_m), foot_m = fmin (0.02, 0.1 * top_m);

  if (!(top_m > 0.05))
    return;

  if (radius_m > 0.05)
    {
      lr_scene_begin (scene, placed);
      for (int i = 0; i < 3; i++)
        {
          double a = first_leg_rad + i * 2.0 * LR_PI / 3.0;
          LrVec3 foot = lr_axes_point (&axes, radius_m * cos (a), radius_m * sin (a), foot_m);
          LrVec3 half = lr_axes_point (&axes, 0.5 * radius_m * cos (a), 0.5 * radius_m * sin (a), 0.5 * joint_m);

          lr_scene_bar (scene, lr_axes_point (&axes, 0.0, 0.0, joint_m), foot, 0.011, metal (0.07));
          lr_scene_bar (scene, half, lr_axes_point (&axes, 0.0, 0.0, 0.35 * joint_m), 0.006, metal (0.10));
        }
      lr_scene_end (scene, placed->facing_rad);
    }

  lr_scene_begin (scene, placed);
  lr_scene_bar (scene, lr_axes_point (&axes, 0.0, 0.0, 0.3 * joint_m), lr_axes_point (&axes, 0.0, 0.0, top_m), 0.015,
                metal (0.09));
  lr_scene_bar (scene, lr_axes_point (&axes, 0.0, 0.0, joint_m - 0.04),
                lr_axes_point (&axes, 0.0, 0.0, joint_m + 0.04), 0.024,
                metal (0.05));
  lr_scene_end (scene, placed->facing_rad);
}

static void
add_camera (LrScene        *scene,
            const LrPlaced *placed)
{
  const LrCamera *camera = &placed->item->camera;
  LrAxes axes = lr_axes_standing (placed->at_m, camera->lens_height_m, placed->facing_rad);
  double z = fmin (0.06, 0.5 * camera->lens_height_m);

  lr_scene_add_stand (scene, placed, camera->stand_radius_m, camera->lens_height_m - 0.14, 0.0);
  lr_scene_box (scene, placed, &axes, (LrBox) { -0.05, 0.05, -0.045, 0.045, -0.15, -z }, LR_EQUIPMENT);
  lr_scene_box (scene, placed, &axes, (LrBox) { -0.13, 0.06, -0.075, 0.075, -z, 0.06 }, LR_EQUIPMENT);
  lr_scene_box (scene, placed, &axes, (LrBox) { 0.06, 0.17, -0.045, 0.045, -0.045, 0.045 },
                (LrMaterial) { LR_HUE_METAL, 0.04 });
}

/* What emits: white, a little warmer for a warm lamp */
static LrColor
glow (const LrLight *light)
{
  double warm = CLAMP ((5600.0 - light->color_temperature_k) / 2800.0, 0.0, 1.0);
  double level = light->dim > 0.0 ? 0.80 + 0.17 * fmin (1.0, light->dim) : 0.42;

  return lr_tone_mix (lr_tone (LR_HUE_DAY, level), lr_tone (LR_HUE_LAMP, level), 0.35 + 0.65 * warm);
}

/* A skin that widens from a ring at the lamp to what emits */
static void
add_softbox (LrScene        *scene,
             const LrPlaced *placed,
             const LrAxes   *axes,
             double          half_y_m,
             double          half_z_m)
{
  static const double sides[4][2] = { { -1.0, -1.0 }, { 1.0, -1.0 }, { 1.0, 1.0 }, { -1.0, 1.0 } };
  LrVec3 wide_m[4], narrow_m[4];

  for (int i = 0; i < 4; i++)
    {
      wide_m[i] = lr_axes_point (axes, 0.16, sides[i][0] * half_y_m, sides[i][1] * half_z_m);
      narrow_m[i] = lr_axes_point (axes, -0.26, sides[i][0] * 0.09, sides[i][1] * 0.09);
    }

  lr_scene_box (scene, placed, axes, (LrBox) { -0.41, -0.26, -0.075, 0.075, -0.075, 0.075 }, LR_EQUIPMENT);
  lr_scene_begin (scene, placed);
  for (int i = 0; i < 4; i++)
    {
      int j = (i + 1) % 4;
      LrVec3 side_m[4] = { narrow_m[i], narrow_m[j], wide_m[j], wide_m[i] };
      LrVec3 normal = lr_axes_direction (axes, 0.0, 0.5 * (sides[i][0] + sides[j][0]),
                                         0.5 * (sides[i][1] + sides[j][1]));

      lr_scene_face (scene, side_m, 4, lr_scene_tone (scene, (LrMaterial) { LR_HUE_METAL, 0.05 }, normal), 1.0,
                     LR_FACE_PLAIN);
    }
  lr_scene_front (scene, axes, 0.16, (LrBox) { 0.0, 0.0, -half_y_m, half_y_m, -half_z_m, half_z_m },
                  glow (&placed->item->light),
                  LR_FACE_PLAIN);
  lr_scene_end (scene, placed->facing_rad);
}

static void
add_lamp_panel (LrScene        *scene,
                const LrPlaced *placed,
                const LrAxes   *axes,
                double          half_y_m,
                double          half_z_m)
{
  LrBox box = { -0.03, 0.04, -half_y_m, half_y_m, -half_z_m, half_z_m };
  double rim_m = fmin (0.012, 0.1 * fmin (half_y_m, half_z_m));

  lr_scene_begin (scene, placed);
  lr_scene_faces_of_box (scene, axes, box, TRUE, LR_EQUIPMENT);
  lr_scene_front (scene, axes, 0.04, (LrBox) { 0.0, 0.0, -half_y_m + rim_m, half_y_m - rim_m, -half_z_m + rim_m,
                                               half_z_m - rim_m },
                  glow (&placed->item->light), LR_FACE_DETAIL);
  lr_scene_end (scene, placed->facing_rad);
}

/* A barrel with a lens, and four doors at the edge of its beam */
static void
add_point_source (LrScene        *scene,
                  const LrPlaced *placed,
                  const LrAxes   *axes)
{
  double opens_rad = CLAMP (0.5 * lr_item_beam_rad (placed->item) + 3.0 * LR_DEG, 0.0, 0.5 * LR_PI);
  double reach_x = 0.065 + 0.17 * cos (opens_rad), reach_y = 0.085 + 0.17 * sin (opens_rad);

  lr_scene_begin (scene, placed);
  lr_scene_faces_of_box (scene, axes, (LrBox) { -0.15, 0.06, -0.085, 0.085, -0.085, 0.085 }, TRUE, LR_EQUIPMENT);
  lr_scene_front (scene, axes, 0.061, (LrBox) { 0.0, 0.0, -0.065, 0.065, -0.065, 0.065 }, glow (&placed->item->light),
                  LR_FACE_DETAIL);
  lr_scene_end (scene, placed->facing_rad);

  for (int i = 0; i < 4; i++)
    {
      double side = i & 1 ? 1.0 : -1.0;
      LrVec3 door_m[4];

      for (int j = 0; j < 4; j++)
        {
          double x = j < 2 ? 0.065 : reach_x, out = side * (j < 2 ? 0.085 : reach_y);
          double along = j == 0 || j == 3 ? -0.08 : 0.08;

          door_m[j] = i < 2 ? lr_axes_point (axes, x, out, along) : lr_axes_point (axes, x, along, out);
        }
      lr_scene_begin (scene, placed);
      lr_scene_face (scene, door_m, 4, metal (0.06), 1.0, LR_FACE_TWO_SIDED);
      lr_scene_end (scene, placed->facing_rad);
    }
}

static void
add_light (LrScene        *scene,
           const LrPlaced *placed)
{
  const LrLight *light = &placed->item->light;
  double half_y_m = 0.5 * light->width_m, half_z_m = 0.5 * light->height_m;
  double facing_rad, tilt_rad;
  LrAxes axes;

  lr_light_aim (scene->study, placed, &facing_rad, &tilt_rad);
  axes = lr_axes_tilted (lr_light_lamp (placed), facing_rad, tilt_rad);
  lr_scene_add_stand (scene, placed, light->stand_radius_m, light->lamp_height_m - 0.05, FIRST_LEG_RAD);

  switch ((LrLightForm) light->form)
    {
    case LR_LIGHT_WIDE:
      add_softbox (scene, placed, &axes, half_y_m, half_z_m);
      break;
    case LR_LIGHT_PANEL:
      add_lamp_panel (scene, placed, &axes, half_y_m, half_z_m);
      break;
    case LR_LIGHT_POINT:
    default:
      add_point_source (scene, placed, &axes);
      break;
    }
}

/* The axis of a capsule: at the mouth of whom it hears, else straight down */
static LrVec3
hears_from (const LrScene  *scene,
            const LrPlaced *placed,
            LrVec3          tip_m)
{
  const LrPlaced *speaker = lr_study_find_placed (scene->study, placed->item->microphone.aims_at);
  LrVec3 way = { 0.0, 0.0, -1.0 };
  double length_m;

  if (speaker != NULL && speaker->item->kind == LR_ITEM_PERSON)
    {
      LrVec2 ahead_m = lr_vec2_along (speaker->at_m, lr_vec2_polar (speaker->facing_rad, 1.0), LR_EYES_AHEAD_M);

      way = lr_vec3_sub (lr_vec2_raise (ahead_m, speaker->body.mouth_m), tip_m);
    }

  length_m = lr_vec3_length (way);
  return length_m > 1e-6 ? lr_vec3_scale (way, 1.0 / length_m) : lr_vec3 (0.0, 0.0, -1.0);
}

static void
add_capsule (LrScene        *scene,
             const LrPlaced *placed,
             LrVec3          tip_m)
{
  LrVec3 axis = hears_from (scene, placed, tip_m);

  lr_scene_begin (scene, placed);
  lr_scene_bar (scene, lr_vec3_along (tip_m, axis, -0.11), lr_vec3_along (tip_m, axis, 0.02), 0.011, metal (0.08));
  lr_scene_bar (scene, lr_vec3_along (tip_m, axis, -0.04), lr_vec3_along (tip_m, axis, 0.11), 0.020, metal (0.04));
  lr_scene_end (scene, atan2 (axis.y, axis.x));
}

/* Post, arm in pieces so that each can be put in order, weight, capsule under the end of the arm */
static void
add_boom (LrScene        *scene,
          const LrPlaced *placed)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrVec3 tip_m = { microphone->tip_x_m, microphone->tip_y_m, microphone->tip_height_m };
  enum { N_PIECES = 3 };
  double short_m = microphone->short_end_m;
  LrAxes axes, weight;
  LrBoomHang hang;

  lr_boom_hang (placed->at_m, microphone, &hang);
  axes = lr_axes_standing (placed->at_m, hang.post_m, hang.arm_rad);
  weight = lr_axes_standing (placed->at_m, hang.post_m - hang.slope * short_m, hang.arm_rad);
  lr_scene_add_stand (scene, placed, microphone->stand_radius_m, hang.post_m, FIRST_LEG_RAD);
  for (int i = 0; i < N_PIECES; i++)
    {
      double a = -short_m + (hang.reach_m + short_m) * i / N_PIECES;
      double b = -short_m + (hang.reach_m + short_m) * (i + 1) / N_PIECES;

      lr_scene_begin (scene, placed);
      lr_scene_bar (scene, lr_axes_point (&axes, a, 0.0, hang.slope * a), lr_axes_point (&axes, b, 0.0, hang.slope * b), LR_BOOM_ARM_RADIUS_M,
                    metal (0.10));
      lr_scene_end (scene, hang.arm_rad);
    }
  if (short_m > 0.0)
    lr_scene_box (scene, placed, &weight, (LrBox) { -short_m, -short_m + LR_BOOM_WEIGHT_M, -LR_BOOM_WEIGHT_HALF_M, LR_BOOM_WEIGHT_HALF_M,
                                          -LR_BOOM_WEIGHT_HALF_M, LR_BOOM_WEIGHT_HALF_M },
                  LR_EQUIPMENT);

  add_capsule (scene, placed, tip_m);
}

static void
add_microphone (LrScene        *scene,
                const LrPlaced *placed)
{
  const LrMicrophone *microphone = &placed->item->microphone;

  switch ((LrMicForm) microphone->form)
    {
    case LR_MIC_BOOM:
      add_boom (scene, placed);
      break;
    case LR_MIC_STAND:
      lr_scene_add_stand (scene, placed, microphone->stand_radius_m, fmax (0.3, microphone->tip_height_m - 0.08),
                          FIRST_LEG_RAD);
      add_capsule (scene, placed, lr_vec3 (microphone->tip_x_m, microphone->tip_y_m, microphone->tip_height_m));
      break;
    case LR_MIC_CAMERA:   /* a camera seldom sees another so sharp */
    case LR_MIC_LAVALIER: /* drawn on its wearer */
    default:
      break;
    }
}

/* Cloth between two stands: folds by turns in two tones */
static void
add_backdrop (LrScene        *scene,
              const LrPlaced *placed,
              const LrAxes   *axes,
              LrMaterial      material)
{
  const LrPanel *panel = &placed->item->panel;
  double half_m = 0.5 * panel->width_m, top_m = panel->bottom_m + panel->height_m;
  int n_folds = CLAMP ((int) lround (panel->width_m / 0.16), 2, 60);
  double step_m = panel->width_m / n_folds;

  for (int side = -1; side <= 1; side += 2)
    lr_scene_box (scene, placed, axes, (LrBox) { -0.10, -0.06, side * half_m - 0.02, side * half_m + 0.02, 0.0,
                                                 top_m + 0.05 }, LR_EQUIPMENT);

  lr_scene_begin (scene, placed);
  lr_scene_faces_of_box (scene, axes, (LrBox) { -0.03, 0.03, -half_m, half_m, panel->bottom_m, top_m }, TRUE, material);
  for (int i = 0; i < n_folds; i += 2)
    {
      LrMaterial fold = { material.hue, material.reflectance * 0.86 };
      double y = -half_m + i * step_m;

      lr_scene_front (scene, axes, 0.031, (LrBox) { 0.0, 0.0, y + 0.25 * step_m, y + step_m, panel->bottom_m, top_m },
                      lr_scene_tone (scene, fold, axes->x), LR_FACE_DETAIL);
    }
  lr_scene_end (scene, placed->facing_rad);
}

static void
add_panel (LrScene        *scene,
           const LrPlaced *placed)
{
  const LrPanel *panel = &placed->item->panel;
  LrAxes axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad);
  double top_m = panel->bottom_m + panel->height_m;
  LrMaterial material = { panel->reflectance > 0.3 ? LR_HUE_PLAIN : LR_HUE_METAL, fmax (0.02, panel->reflectance) };
  LrBox sheet = { 0.0, 0.03, -0.5 * panel->width_m, 0.5 * panel->width_m, panel->bottom_m, top_m };

  if (panel->form == LR_PANEL_BACKDROP)
    {
      add_backdrop (scene, placed, &axes, material);
      return;
    }

  if (panel->form == LR_PANEL_FLAG)
    material = (LrMaterial) { LR_HUE_METAL, 0.025 };
  lr_scene_add_stand (scene, placed, panel->stand_radius_m, panel->bottom_m + 0.9 * panel->height_m, FIRST_LEG_RAD);
  lr_scene_box (scene, placed, &axes, sheet, material);
}

/* A thin dark line on the floor, a piece at a time */
static void
add_lead (LrScene        *scene,
          const LrPlaced *placed)
{
  const LrItem *item = placed->item;

  for (gsize i = 0; i + 1 < item->n_path; i++)
    {
      LrVec2 way = lr_vec2_sub (item->path_m[i + 1], item->path_m[i]);

      lr_scene_begin (scene, placed);
      lr_scene_bar (scene, lr_vec2_raise (item->path_m[i], 0.006), lr_vec2_raise (item->path_m[i + 1], 0.006), 0.006,
                    metal (0.07));
      lr_scene_end (scene, lr_vec2_angle_rad (way));
    }
}

static void
add_noise (LrScene        *scene,
           const LrPlaced *placed)
{
  const LrNoise *noise = &placed->item->noise;
  LrAxes axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad);
  LrBox box = { -0.5 * noise->length_m, 0.5 * noise->length_m, -0.5 * noise->width_m, 0.5 * noise->width_m, 0.0, 0.0 };

  /* Something that hums stands on the floor with its source in the middle; smaller ones hang where they are */
  box.z1 = noise->height_m + fmin (noise->height_m, 0.5 * fmax (noise->length_m, noise->width_m));
  if (fmax (noise->length_m, noise->width_m) < 0.4)
    {
      box.z0 = fmax (0.0, noise->height_m - 0.5 * fmax (noise->length_m, noise->width_m));
      box.z1 = box.z0 + fmax (noise->length_m, noise->width_m);
    }
  lr_scene_box (scene, placed, &axes, box, (LrMaterial) { LR_HUE_PLAIN, 0.45 });
}

static void
add_house_light (LrScene        *scene,
                 const LrPlaced *placed)
{
  enum { N_SIDES = 12 };
  const LrHouseLight *light = &placed->item->house_light;
  const LrRoom *room = scene->study->setup->room;
  LrColor color = light->is_on ? lr_tone (LR_HUE_LAMP, 0.95) : lr_tone (LR_HUE_PLAIN, 0.34);
  LrVec3 shade_m[N_SIDES];
  double cord_m = room->height_m - light->height_m;

  if (cord_m > 0.15)
    {
      lr_scene_begin (scene, placed);
      lr_scene_bar (scene, lr_vec2_raise (placed->at_m, light->height_m + 0.05),
                    lr_vec2_raise (placed->at_m, room->height_m), 0.004,
                    metal (0.10));
      lr_scene_end (scene, 0.0);
    }

  lr_scene_begin (scene, placed);
  for (int i = 0; i < N_SIDES; i++)
    {
      double a = 2.0 * LR_PI * i / N_SIDES, b = 2.0 * LR_PI * (i + 1) / N_SIDES;
      LrVec2 from_m = lr_vec2_add (placed->at_m, lr_vec2_polar (a, 0.16));
      LrVec2 to_m = lr_vec2_add (placed->at_m, lr_vec2_polar (b, 0.16));
      LrVec3 side_m[4] = { lr_vec2_raise (from_m, light->height_m), lr_vec2_raise (to_m, light->height_m),
                           lr_vec2_raise (to_m, light->height_m + 0.05), lr_vec2_raise (from_m,
                                                                                        light->height_m + 0.05) };

      lr_scene_face (scene, side_m, 4, lr_tone (LR_HUE_PLAIN, 0.40), 1.0, LR_FACE_PLAIN);
      shade_m[N_SIDES - 1 - i] = lr_vec2_raise (from_m, light->height_m);
    }
  lr_scene_face (scene, shade_m, N_SIDES, color, 1.0, LR_FACE_PLAIN);
  lr_scene_end (scene, 0.0);
}

/**
 * lr_scene_add_kit:
 * @scene: a scene
 * @placed: a camera, light, microphone, panel, lead, house light or noisy thing
 */
void
lr_scene_add_kit (LrScene        *scene,
                  const LrPlaced *placed)
{
  static void (*const add[LR_N_ITEM_KINDS]) (LrScene *, const LrPlaced *) = {
    [LR_ITEM_CAMERA] = add_camera,
    [LR_ITEM_LIGHT] = add_light,
    [LR_ITEM_MICROPHONE] = add_microphone,
    [LR_ITEM_PANEL] = add_panel,
    [LR_ITEM_LEAD] = add_lead,
    [LR_ITEM_NOISE] = add_noise,
    [LR_ITEM_HOUSE_LIGHT] = add_house_light,
  };

  if (add[placed->item->kind] != NULL)
    add[placed->item->kind] (scene, placed);
}
