/* intruders.c - the shapes of things, as a lens sees them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The same sizes as in the viewfinder picture: what the plan does not hold is that of the symbols on the sheet; heights
 * of parts are common practice, no source. A person's breadth over the upper arms is .284 of stature (bideltoid breadth, mean of
 * women's 449.9 / 1628.5 mm and men's 510.4 / 1756.2 mm, ANSUR II, from memory), the trunk's depth as drawn.
 */

#include "intruders.h"

#include "boom.h"

#define LEG_RADIUS_M 0.011
#define POST_RADIUS_M 0.015
#define CAPSULE_RADIUS_M 0.020
#define OVER_ARMS 0.284
#define TRUNK_HALF_DEPTH 0.065 /* of stature */
#define UPPER_ARM_RADIUS 0.032
#define THIGH_RADIUS_M 0.075
#define SHIN_RADIUS_M 0.055

/* x ahead, y to the left, z up; level y */
typedef struct
{
  LrVec3 origin_m, x, y, z;
} Frame;

static Frame
frame_at (LrVec3 origin_m,
          double facing_rad,
          double tilt_rad)
{
  double cf = cos (facing_rad), sf = sin (facing_rad), ct = cos (tilt_rad), st = sin (tilt_rad);

  return (Frame) { origin_m, { ct * cf, ct * sf, st }, { -sf, cf, 0.0 }, { -st * cf, -st * sf, ct } };
}

static LrVec3
at (const Frame *frame,
    double       x,
    double       y,
    double       z)
{
  return lr_vec3_along (lr_vec3_along (lr_vec3_along (frame->origin_m, frame->x, x), frame->y, y), frame->z, z);
}

static LrVolume *
next (LrIntruder    *intruder,
      LrIntruderPart part)
{
  g_assert (intruder->n < LR_MAX_INTRUDER_SHAPES);

  intruder->part[intruder->n] = part;
  return &intruder->shape[intruder->n++];
}

static void
add_bar (LrIntruder    *intruder,
         LrIntruderPart part,
         LrVec3         from_m,
         LrVec3         to_m,
         double         radius_m)
{
  lr_volume_bar (next (intruder, part), from_m, to_m, radius_m);
}

/* Half sizes to the sides at either end of what may widen along x */
static void
add_block (LrIntruder    *intruder,
           LrIntruderPart part,
           const Frame   *frame,
           double         x0,
           double         x1,
           LrVec2         half0_m,
           LrVec2         half1_m)
{
  LrVec3 corner_m[8];

  for (int i = 0; i < 8; i++)
    {
      LrVec2 half_m = i & 4 ? half1_m : half0_m;

      corner_m[i] = at (frame, i & 4 ? x1 : x0, (i & 1 ? 1.0 : -1.0) * half_m.x, (i & 2 ? 1.0 : -1.0) * half_m.y);
    }
  lr_volume_hull (next (intruder, part), corner_m, 8);
}

/* Three legs and a post, as the picture draws them */
static void
add_stand (LrIntruder     *intruder,
           const LrPlaced *placed,
           double          radius_m,
           double          top_m,
           double          first_leg_rad)
{
  Frame frame = frame_at (lr_vec2_raise (placed->at_m, 0.0), placed->facing_rad, 0.0);
  double joint_m = fmin (1.1 * radius_m, 0.6 * top_m), foot_m = fmin (0.02, 0.1 * top_m);

  if (!(top_m > 0.05))
    return;

  for (int i = 0; i < 3 && radius_m > 0.05; i++)
    {
      double a = first_leg_rad + i * 2.0 * LR_PI / 3.0;

      add_bar (intruder, LR_INTRUDER_STAND, at (&frame, 0.0, 0.0, joint_m),
               at (&frame, radius_m * cos (a), radius_m * sin (a), foot_m), LEG_RADIUS_M);
    }
  add_bar (intruder, LR_INTRUDER_STAND, at (&frame, 0.0, 0.0, 0.3 * joint_m), at (&frame, 0.0, 0.0, top_m), POST_RADIUS_M);
}

static void
add_camera (const LrPlaced *placed,
            LrIntruder     *intruder)
{
  const LrCamera *camera = &placed->item->camera;
  Frame frame = frame_at (lr_vec2_raise (placed->at_m, camera->lens_height_m), placed->facing_rad, 0.0);

  add_stand (intruder, placed, camera->stand_radius_m, camera->lens_height_m - 0.14, 0.0);
  add_block (intruder, LR_INTRUDER_HEAD, &frame, -0.13, 0.06, lr_vec2 (0.075, 0.06), lr_vec2 (0.075, 0.06));
  add_block (intruder, LR_INTRUDER_HEAD, &frame, 0.06, 0.17, lr_vec2 (0.045, 0.045), lr_vec2 (0.045, 0.045));
}

/**
 * lr_light_tilt_rad:
 * @study: a study whose items are placed
 * @placed: a light
 *
 * Returns: how far its axis is lifted above the horizontal [rad]: to its aim, if it has one
 */
double
lr_light_tilt_rad (const LrStudy  *study,
                   const LrPlaced *placed)
{
  const LrLight *light = &placed->item->light;
  const LrPlaced *target = lr_study_find_placed (study, light->aims_at);

  if (target == NULL || target->item == placed->item)
    return light->tilt_rad;

  return atan2 ((light->aim_height_m > 0.0 ? light->aim_height_m : target->point_m.z) - light->lamp_height_m,
                fmax (lr_vec2_distance (placed->at_m, lr_vec3_flat (target->point_m)), 1e-3));
}

static void
add_light (const LrStudy  *study,
           const LrPlaced *placed,
           LrIntruder     *intruder)
{
  const LrLight *light = &placed->item->light;
  LrVec2 half_m = { 0.5 * light->width_m, 0.5 * light->height_m };
  Frame frame = frame_at (lr_vec2_raise (placed->at_m, light->lamp_height_m), placed->facing_rad,
                          lr_light_tilt_rad (study, placed));

  add_stand (intruder, placed, light->stand_radius_m, light->lamp_height_m - 0.05, LR_PI / 3.0);
  if (light->form == LR_LIGHT_WIDE)
    {
      add_block (intruder, LR_INTRUDER_HEAD, &frame, -0.41, -0.26, lr_vec2 (0.075, 0.075), lr_vec2 (0.075, 0.075));
      add_block (intruder, LR_INTRUDER_HEAD, &frame, -0.26, 0.16, lr_vec2 (0.09, 0.09), half_m);
    }
  else if (light->form == LR_LIGHT_PANEL)
    add_block (intruder, LR_INTRUDER_HEAD, &frame, -0.03, 0.04, half_m, half_m);
  else
    {
      double opens_rad = CLAMP (0.5 * lr_item_beam_rad (placed->item) + 3.0 * LR_DEG, 0.0, 0.5 * LR_PI);
      double out_m = 0.085 + 0.17 * sin (opens_rad);

      add_block (intruder, LR_INTRUDER_HEAD, &frame, -0.15, 0.065, lr_vec2 (0.085, 0.085), lr_vec2 (0.085, 0.085));
      add_block (intruder, LR_INTRUDER_HEAD, &frame, 0.065, 0.065 + 0.17 * cos (opens_rad), lr_vec2 (0.085, 0.08),
                 lr_vec2 (out_m, 0.08));
      add_block (intruder, LR_INTRUDER_HEAD, &frame, 0.065, 0.065 + 0.17 * cos (opens_rad), lr_vec2 (0.08, 0.085),
                 lr_vec2 (0.08, out_m));
    }
}

static void
add_capsule (const LrStudy  *study,
             const LrPlaced *placed,
             LrVec3          tip_m,
             LrIntruder     *intruder)
{
  const LrPlaced *speaker = lr_study_find_placed (study, placed->item->microphone.aims_at);
  LrVec3 way = { 0.0, 0.0, -1.0 };

  if (speaker != NULL && speaker->item->kind == LR_ITEM_PERSON)
    {
      LrVec3 to_m = { speaker->eyes_m.x, speaker->eyes_m.y, speaker->body.mouth_m };
      double length_m = lr_vec3_length (lr_vec3_sub (to_m, tip_m));

      if (length_m > 1e-6)
        way = lr_vec3_scale (lr_vec3_sub (to_m, tip_m), 1.0 / length_m);
    }

  add_bar (intruder, LR_INTRUDER_CAPSULE, lr_vec3_along (tip_m, way, -0.10), lr_vec3_along (tip_m, way, 0.09), CAPSULE_RADIUS_M);
}

/* The capsule hangs under the end of the arm, which rests on the post and goes on behind it to its weight */
static void
add_microphone (const LrStudy  *study,
                const LrPlaced *placed,
                LrIntruder     *intruder)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrVec3 tip_m = { microphone->tip_x_m, microphone->tip_y_m, microphone->tip_height_m };
  LrBoomHang hang;
  Frame frame;

  if (microphone->form == LR_MIC_STAND)
    {
      add_stand (intruder, placed, microphone->stand_radius_m, fmax (0.3, tip_m.z - 0.08), LR_PI / 3.0);
      add_capsule (study, placed, tip_m, intruder);
      return;
    }

  lr_boom_hang (placed->at_m, microphone, &hang);
  frame = frame_at (lr_vec2_raise (placed->at_m, hang.post_m), hang.arm_rad, 0.0);

  add_stand (intruder, placed, microphone->stand_radius_m, hang.post_m, LR_PI / 3.0);
  add_bar (intruder, LR_INTRUDER_ARM, at (&frame, -hang.short_m, 0.0, -hang.slope * hang.short_m),
           at (&frame, hang.reach_m, 0.0, hang.slope * hang.reach_m), LR_BOOM_ARM_RADIUS_M);
  if (hang.short_m > 0.0)
    {
      frame.origin_m.z = hang.post_m - hang.slope * hang.short_m;
      add_block (intruder, LR_INTRUDER_ARM, &frame, -hang.short_m, -hang.short_m + LR_BOOM_WEIGHT_M,
                 lr_vec2 (LR_BOOM_WEIGHT_HALF_M, LR_BOOM_WEIGHT_HALF_M), lr_vec2 (LR_BOOM_WEIGHT_HALF_M, LR_BOOM_WEIGHT_HALF_M));
    }
  add_capsule (study, placed, tip_m, intruder);
}

/**
 * lr_panel_sheet:
 * @panel: a panel
 * @shape: (out caller-allocates): its cloth or board
 */
void
lr_panel_sheet (const LrPlaced *panel,
                LrVolume       *shape)
{
  const LrPanel *p = &panel->item->panel;
  LrOutline base = lr_outline_box (panel->at_m, LR_SHEET_M, p->width_m, panel->facing_rad);

  lr_volume_prism (shape, &base, p->bottom_m, p->bottom_m + p->height_m);
}

static void
add_panel (const LrPlaced *placed,
           LrIntruder     *intruder)
{
  const LrPanel *panel = &placed->item->panel;

  if (panel->form == LR_PANEL_BACKDROP)
    return;

  add_stand (intruder, placed, panel->stand_radius_m, panel->bottom_m + 0.9 * panel->height_m, LR_PI / 3.0);
  lr_panel_sheet (placed, next (intruder, LR_INTRUDER_SHEET));
}

/**
 * lr_person_head:
 * @person: a person
 * @shape: (out caller-allocates): the head, from chin to crown
 */
void
lr_person_head (const LrPlaced *person,
                LrVolume       *shape)
{
  const LrBody *body = &person->body;
  Frame frame = frame_at (lr_vec2_raise (person->at_m, body->crown_m - 0.5 * body->head_height_m), person->facing_rad, 0.0);

  lr_volume_ellipsoid (shape, frame.origin_m, lr_vec3_scale (frame.x, 0.5 * body->head_depth_m),
                      lr_vec3_scale (frame.y, 0.5 * body->head_width_m),
                      lr_vec3_scale (frame.z, 0.5 * body->head_height_m));
}

/**
 * lr_person_trunk:
 * @person: a person
 * @shape: (out caller-allocates): the trunk, from the hip to the shoulders
 */
void
lr_person_trunk (const LrPlaced *person,
                 LrVolume       *shape)
{
  const LrBody *body = &person->body;
  double h = body->stature_m, half_z_m = 0.5 * (body->shoulder_m - body->hip_m);
  Frame frame = frame_at (lr_vec2_raise (person->at_m, body->hip_m + half_z_m), person->facing_rad, 0.0);

  lr_volume_ellipsoid (shape, frame.origin_m, lr_vec3_scale (frame.x, TRUNK_HALF_DEPTH * h),
                      lr_vec3_scale (frame.y, 0.5 * body->shoulder_width_m), lr_vec3_scale (frame.z, half_z_m));
}

static void
add_person (const LrPlaced *placed,
            LrIntruder     *intruder)
{
  const LrBody *body = &placed->body;
  Frame frame = frame_at (lr_vec2_raise (placed->at_m, 0.0), placed->facing_rad, 0.0);
  double h = body->stature_m, r = UPPER_ARM_RADIUS * h, arm_y = 0.5 * OVER_ARMS * h - r;
  double k = h / 1.70;

  lr_person_head (placed, next (intruder, LR_INTRUDER_PERSON));
  lr_person_trunk (placed, next (intruder, LR_INTRUDER_PERSON));
  add_bar (intruder, LR_INTRUDER_PERSON, at (&frame, 0.0, -arm_y, body->shoulder_m - r), at (&frame, 0.0, arm_y, body->shoulder_m - r),
           r);
  for (int side = -1; side <= 1; side += 2)
    {
      LrVec3 hip_m = at (&frame, 0.03, side * 0.10 * k, body->hip_m), knee_m, foot_m;

      if (body->is_seated)
        {
          hip_m.z = body->thigh_m + THIGH_RADIUS_M;
          knee_m = at (&frame, 0.47 * k, side * 0.115 * k, body->knee_m + THIGH_RADIUS_M);
          foot_m = at (&frame, 0.50 * k, side * 0.115 * k, SHIN_RADIUS_M);
          add_bar (intruder, LR_INTRUDER_PERSON, hip_m, knee_m, THIGH_RADIUS_M);
          add_bar (intruder, LR_INTRUDER_PERSON, knee_m, foot_m, SHIN_RADIUS_M);
        }
      else
        {
          foot_m = at (&frame, 0.0, side * 0.085 * k, SHIN_RADIUS_M);
          add_bar (intruder, LR_INTRUDER_PERSON, hip_m, foot_m, THIGH_RADIUS_M);
        }
    }
}

/**
 * lr_furniture_slabs:
 * @furniture: a piece of furniture
 * @shapes: (out caller-allocates): room for two
 *
 * Under a table and under the seat of a chair one sees through.
 *
 * Returns: how many slabs hide what is behind them
 */
guint
lr_furniture_slabs (const LrPlaced *furniture,
                    LrVolume       *shapes)
{
  const LrFurniture *f = &furniture->item->furniture;
  double top_m = furniture->top_m, bottom_m = furniture->bottom_m;

  if (f->form == LR_FURNITURE_TABLE)
    {
      lr_volume_prism (&shapes[0], &furniture->footprint, fmax (bottom_m, top_m - 0.04), top_m);
      return 1;
    }
  if (f->form == LR_FURNITURE_CHAIR)
    {
      double seat_m = fmin (0.46, 0.55 * top_m), back_m = fmin (0.05, 0.25 * f->length_m);
      LrVec2 facing = lr_vec2_polar (furniture->facing_rad, 1.0);
      LrOutline back = lr_outline_box (lr_vec2_along (furniture->at_m, facing, 0.5 * (back_m - f->length_m)), back_m,
                                       f->width_m, furniture->facing_rad);

      lr_volume_prism (&shapes[0], &furniture->footprint, seat_m - 0.045, seat_m);
      lr_volume_prism (&shapes[1], &back, top_m - fmin (0.5 * (top_m - seat_m), 0.26), top_m);
      return 2;
    }

  lr_volume_prism (&shapes[0], &furniture->footprint, bottom_m, top_m);
  return 1;
}

static void
add_furniture (const LrPlaced *placed,
               LrIntruder     *intruder)
{
  LrVolume shapes[2];
  guint n = lr_furniture_slabs (placed, shapes);

  for (guint i = 0; i < n; i++)
    *next (intruder, LR_INTRUDER_FURNITURE) = shapes[i];
}

/* What the blind leaves open; half down it covers the upper half */
static void
add_window (const LrStudy  *study,
            const LrPlaced *placed,
            LrIntruder     *intruder)
{
  const LrRoom *room = study->setup->room;
  const LrItem *item = placed->item;
  double top_m = item->window.blind == LR_BLIND_HALF ? 0.5 * (item->window.sill_m + item->window.head_m) : item->window.head_m;
  LrVec2 from_m, way;
  LrVec3 corner_m[4];

  if (item->wall < 0 || (gsize) item->wall >= room->n_corners)
    return;

  from_m = room->corners_m[item->wall];
  way = lr_vec2_sub (room->corners_m[((gsize) item->wall + 1) % room->n_corners], from_m);
  way = lr_vec2_scale (way, 1.0 / fmax (lr_vec2_length (way), 1e-9));
  for (int i = 0; i < 4; i++)
    {
      double along_m = item->along_m + (i & 1 ? item->window.width_m : 0.0);

      corner_m[i] = lr_vec2_raise (lr_vec2_along (from_m, way, along_m), i & 2 ? top_m : item->window.sill_m);
    }
  lr_volume_hull (next (intruder, LR_INTRUDER_WINDOW), corner_m, 4);
}

static void
add_house_light (const LrPlaced *placed,
                 LrIntruder     *intruder)
{
  LrOutline base = lr_outline_disc (placed->at_m, LR_FIXTURE_RADIUS_M);
  double bottom_m = placed->item->house_light.height_m;

  lr_volume_prism (next (intruder, LR_INTRUDER_FIXTURE), &base, bottom_m, bottom_m + 0.05);
}

/**
 * lr_intruder_shapes:
 * @study: a study whose items are placed
 * @placed: one of its things
 * @intruder: (out caller-allocates): its shapes
 */
void
lr_intruder_shapes (const LrStudy  *study,
                    const LrPlaced *placed,
                    LrIntruder     *intruder)
{
  intruder->n = 0;
  switch (placed->item->kind)
    {
    case LR_ITEM_PERSON:
      add_person (placed, intruder);
      break;
    case LR_ITEM_CAMERA:
      add_camera (placed, intruder);
      break;
    case LR_ITEM_LIGHT:
      add_light (study, placed, intruder);
      break;
    case LR_ITEM_MICROPHONE:
      add_microphone (study, placed, intruder);
      break;
    case LR_ITEM_PANEL:
      add_panel (placed, intruder);
      break;
    case LR_ITEM_FURNITURE:
      add_furniture (placed, intruder);
      break;
    case LR_ITEM_WINDOW:
      add_window (study, placed, intruder);
      break;
    case LR_ITEM_HOUSE_LIGHT:
      add_house_light (placed, intruder);
      break;
    case LR_ITEM_LEAD:
    case LR_ITEM_DOOR:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}
