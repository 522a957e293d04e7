/* scene_furniture.c - furniture, as boxes with what makes one recognise it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Origin in the middle, depth along x, width along y. What has a front, as a chair, a sofa or a chest, has it
 * towards +x. Sizes of parts are common practice, no source; a part shrinks with a piece that is too small for it.
 */

#include "scene.h"

#define PLAIN_PX 24.0 /* smaller pieces are boxes */
#define DOOR_M 0.45
#define DRAWER_M 0.145
#define FIN_M 0.11
#define SEAT_M 0.45

typedef struct
{
  LrScene        *scene;
  const LrPlaced *placed;
  LrAxes          axes;
  double          x, y;    /* half length, half width */
  double          z0, z1;
  LrMaterial      material;
} Piece;

static void
add_box (const Piece *piece,
         double       x0,
         double       x1,
         double       y0,
         double       y1,
         double       z0,
         double       z1)
{
  lr_scene_box (piece->scene, piece->placed, &piece->axes, (LrBox) { x0, x1, y0, y1, z0, z1 }, piece->material);
}

/* What has something on top of it */
static void
add_column (const Piece *piece,
            double       x0,
            double       x1,
            double       y0,
            double       y1,
            double       z0,
            double       z1)
{
  lr_scene_column (piece->scene, piece->placed, &piece->axes, (LrBox) { x0, x1, y0, y1, z0, z1 }, piece->material);
}

static LrColor
front_tone (const Piece *piece,
            double       share)
{
  LrMaterial material = { piece->material.hue, piece->material.reflectance * share };

  return lr_scene_tone (piece->scene, material, piece->axes.x);
}

static void
add_front (const Piece *piece,
           double       y0,
           double       y1,
           double       z0,
           double       z1,
           LrColor      color)
{
  if (y1 > y0 && z1 > z0)
    lr_scene_front (piece->scene, &piece->axes, piece->x, (LrBox) { 0.0, 0.0, y0, y1, z0, z1 }, color, LR_FACE_DETAIL);
}

/* The whole piece as one box, of the solid under way */
static void
add_faces (const Piece *piece)
{
  LrBox box = { -piece->x, piece->x, -piece->y, piece->y, piece->z0, piece->z1 };

  lr_scene_faces_of_box (piece->scene, &piece->axes, box, TRUE, piece->material);
}

static void
add_legs (const Piece *piece,
          double       inset_m,
          double       width_m,
          double       z1)
{
  for (int i = 0; i < 4; i++)
    {
      double x = (i & 1 ? 1.0 : -1.0) * (piece->x - inset_m - 0.5 * width_m);
      double y = (i & 2 ? 1.0 : -1.0) * (piece->y - inset_m - 0.5 * width_m);

      add_column (piece, x - 0.5 * width_m, x + 0.5 * width_m, y - 0.5 * width_m, y + 0.5 * width_m, 0.0, z1);
    }
}

static void
add_table (const Piece *piece)
{
  double half_m = fmin (piece->x, piece->y);
  double top_m = fmin (0.04, 0.2 * piece->z1), apron_m = fmin (0.09, 0.2 * piece->z1);
  double leg_m = fmin (0.07, 0.4 * half_m), inset_m = fmin (0.04, 0.2 * half_m);
  double x = piece->x - inset_m - leg_m, y = piece->y - inset_m - leg_m, z1 = piece->z1 - top_m;
  Piece apron = *piece;

  add_legs (piece, inset_m, leg_m, z1);
  apron.material.reflectance *= 0.86; /* in the shade of the top */
  for (int side = -1; side <= 1; side += 2)
    {
      double outer_x = side * (piece->x - inset_m), inner_x = outer_x - side * 0.5 * leg_m;
      double outer_y = side * (piece->y - inset_m), inner_y = outer_y - side * 0.5 * leg_m;

      add_column (&apron, -x, x, fmin (inner_y, outer_y), fmax (inner_y, outer_y), z1 - apron_m, z1);
      add_column (&apron, fmin (inner_x, outer_x), fmax (inner_x, outer_x), -y, y, z1 - apron_m, z1);
    }
  add_box (piece, -piece->x, piece->x, -piece->y, piece->y, z1, piece->z1);
}

static void
add_drawers (const Piece *piece,
             double       z0,
             double       z1)
{
  int n = CLAMP ((int) lround ((z1 - z0) / DRAWER_M), 1, 12);
  double step_m = (z1 - z0) / n;
  double edge_m = fmin (0.025, 0.1 * piece->y), gap_m = fmin (0.012, 0.1 * step_m);
  double pull_m = fmin (0.055, 0.25 * piece->y);

  for (int i = 0; i < n; i++)
    {
      double low = z0 + i * step_m + gap_m, high = z0 + (i + 1) * step_m - gap_m;

      add_front (piece, -piece->y + edge_m, piece->y - edge_m, low, high, front_tone (piece, 1.12));
      add_front (piece, -piece->y + edge_m, piece->y - edge_m, high, high + 2.0 * gap_m, front_tone (piece, 0.34));
      for (int side = -1; side <= 1; side += 2)
        {
          double y = side * 0.5 * piece->y, z = 0.5 * (low + high);

          add_front (piece, y - pull_m, y + pull_m, z - 0.012, z + 0.006, front_tone (piece, 0.36));
        }
    }
}

/* Body on a plinth, drawers or doors in front, a top that stands over a little */
static void
add_chest (const Piece *piece)
{
  double plinth_m = piece->z0 > 0.0 ? 0.0 : fmin (0.06, 0.1 * piece->z1);
  double top_m = fmin (0.03, 0.1 * (piece->z1 - piece->z0));
  LrBox body = { -piece->x, piece->x, -piece->y, piece->y, piece->z0 + plinth_m, piece->z1 - top_m };
  Piece plinth = *piece;

  plinth.material.reflectance *= 0.5;
  add_column (&plinth, -piece->x + 0.01, piece->x - fmin (0.04, 0.2 * piece->x), -piece->y + 0.01, piece->y - 0.01,
              piece->z0,
           piece->z0 + plinth_m);

  lr_scene_begin (piece->scene, piece->placed);
  lr_scene_faces_of_box (piece->scene, &piece->axes, body, piece->z0 > 0.0, piece->material);
  add_drawers (piece, piece->z0 + plinth_m + 0.02, piece->z1 - top_m - 0.015);
  lr_scene_end (piece->scene, piece->placed->facing_rad);

  add_box (piece, -piece->x, piece->x + 0.012, -piece->y - 0.008, piece->y + 0.008, piece->z1 - top_m, piece->z1);
}

static void
add_cabinet (const Piece *piece)
{
  double plinth_m = piece->z0 > 0.0 ? 0.0 : fmin (0.07, 0.1 * piece->z1);
  int n = CLAMP ((int) lround (2.0 * piece->y / DOOR_M), 1, 24);
  double step_m = 2.0 * piece->y / n, gap_m = fmin (0.006, 0.05 * step_m);
  double knob_z = piece->z0 > 0.9 ? piece->z0 + 0.10 : fmin (1.05, 0.75 * piece->z1);

  lr_scene_begin (piece->scene, piece->placed);
  add_faces (piece);
  add_front (piece, -piece->y, piece->y, piece->z0, piece->z0 + plinth_m, front_tone (piece, 0.42));
  for (int i = 0; i < n; i++)
    {
      double low = -piece->y + i * step_m + gap_m, high = low + step_m - 2.0 * gap_m;
      double knob_y = i % 2 == 0 && i + 1 < n ? high - 0.035 : low + 0.035;

      add_front (piece, low - 2.0 * gap_m, high + 2.0 * gap_m, piece->z0 + plinth_m, piece->z1 - 0.02,
                 front_tone (piece, 0.50));
      add_front (piece, low, high, piece->z0 + plinth_m, piece->z1 - 0.025, front_tone (piece, 1.08));
      add_front (piece, knob_y - 0.012, knob_y + 0.012, knob_z - 0.05, knob_z + 0.05, front_tone (piece, 0.35));
    }
  lr_scene_end (piece->scene, piece->placed->facing_rad);
}

static void
add_sofa (const Piece *piece)
{
  double seat_m = fmin (0.43, 0.55 * piece->z1), low_m = seat_m - 0.13;
  double back_m = fmin (0.16, 0.5 * piece->x), arm_m = fmin (0.14, 0.3 * piece->y), inner_m = piece->y - arm_m;
  int n = CLAMP ((int) lround (2.0 * inner_m / SEAT_M), 1, 12);
  double step_m = 2.0 * inner_m / n;
  Piece cushion = *piece;

  add_column (piece, -piece->x + 0.02, piece->x - 0.03, -piece->y + 0.02, piece->y - 0.02, fmin (0.08, 0.5 * low_m),
              low_m);
  add_box (piece, -piece->x, -piece->x + back_m, -inner_m, inner_m, low_m, piece->z1);
  for (int side = -1; side <= 1; side += 2)
    add_box (piece, -piece->x, piece->x, fmin (side * inner_m, side * piece->y),
             fmax (side * inner_m, side * piece->y), low_m,
             fmin (0.60, 0.75 * piece->z1));

  cushion.material.reflectance *= 1.12;
  for (int i = 0; i < n; i++)
    add_box (&cushion, -piece->x + back_m, piece->x - 0.01, -inner_m + i * step_m + 0.006,
             -inner_m + (i + 1) * step_m - 0.006, low_m,
             seat_m);
}

static void
add_radiator (const Piece *piece)
{
  gboolean is_wide = piece->y >= piece->x; /* its fins stand along its longer side */
  LrAxes axes = is_wide ? piece->axes : lr_axes_standing (piece->placed->at_m, 0.0,
                                                          piece->placed->facing_rad + 0.5 * LR_PI);
  double half_m = is_wide ? piece->y : piece->x, depth_m = is_wide ? piece->x : piece->y;
  double z0 = fmax (piece->z0, fmin (0.10, 0.3 * piece->z1));
  LrMaterial material = { LR_HUE_PLAIN, fmax (0.6, piece->material.reflectance) };

  lr_scene_begin (piece->scene, piece->placed);
  lr_scene_faces_of_box (piece->scene, &axes, (LrBox) { -depth_m, depth_m, -half_m, half_m, z0, piece->z1 }, TRUE,
                         material);
  for (int side = 0; side < 2; side++)
    {
      LrAxes face = side == 0 ? axes : lr_axes_standing (piece->placed->at_m, 0.0, atan2 (-axes.x.y, -axes.x.x));
      LrColor shade = lr_scene_tone (piece->scene, (LrMaterial) { LR_HUE_PLAIN, 0.62 * material.reflectance }, face.x);

      for (double y = -half_m + 0.5 * FIN_M; y < half_m - 0.02; y += FIN_M)
        {
          LrBox gap = { 0.0, 0.0, y, y + 0.028, z0 + 0.05, piece->z1 - 0.05 };

          lr_scene_front (piece->scene, &face, depth_m, gap, shade, LR_FACE_DETAIL);
        }
    }
  lr_scene_end (piece->scene, atan2 (axes.x.y, axes.x.x));
}

static void
add_plain (const Piece *piece)
{
  gboolean is_picture = piece->x < 0.04 && piece->z0 > 0.4;
  double edge_m = fmin (0.03, 0.15 * fmin (piece->y, 0.5 * (piece->z1 - piece->z0)));

  lr_scene_begin (piece->scene, piece->placed);
  add_faces (piece);
  if (is_picture) /* a thin thing on the wall: its frame and its mount */
    {
      add_front (piece, -piece->y + edge_m, piece->y - edge_m, piece->z0 + edge_m, piece->z1 - edge_m,
                 lr_tone (LR_HUE_PLAIN, 0.52 * piece->scene->light.gain));
      add_front (piece, -piece->y + 3 * edge_m, piece->y - 3 * edge_m, piece->z0 + 3 * edge_m, piece->z1 - 3 * edge_m,
                 lr_tone (LR_HUE_CLOTH, 0.24 * piece->scene->light.gain));
    }
  lr_scene_end (piece->scene, piece->placed->facing_rad);
}

static void
add_cylinder (const Piece *piece)
{
  enum { N_SIDES = 20 };
  LrVec3 low_m[N_SIDES], high_m[N_SIDES], under_m[N_SIDES];

  for (int i = 0; i < N_SIDES; i++)
    {
      double a = 2.0 * LR_PI * i / N_SIDES;

      low_m[i] = lr_axes_point (&piece->axes, piece->x * cos (a), piece->y * sin (a), piece->z0);
      high_m[i] = lr_axes_point (&piece->axes, piece->x * cos (a), piece->y * sin (a), piece->z1);
      under_m[N_SIDES - 1 - i] = low_m[i];
    }

  lr_scene_begin (piece->scene, piece->placed);
  for (int i = 0; i < N_SIDES; i++)
    {
      LrVec3 side_m[4] = { low_m[i], low_m[(i + 1) % N_SIDES], high_m[(i + 1) % N_SIDES], high_m[i] };
      double a = 2.0 * LR_PI * (i + 0.5) / N_SIDES;

      lr_scene_face (piece->scene, side_m, 4,
                     lr_scene_tone (piece->scene, piece->material, lr_axes_direction (&piece->axes, cos (a), sin (a),
                                                                                      0.0)), 1.0,
                     LR_FACE_PLAIN);
    }
  lr_scene_face (piece->scene, high_m, N_SIDES, lr_scene_tone (piece->scene, piece->material, piece->axes.z), 1.0,
                 LR_FACE_PLAIN);
  lr_scene_face (piece->scene, under_m, N_SIDES, lr_scene_tone (piece->scene, piece->material,
                                                                lr_vec3 (0.0, 0.0, -1.0)), 1.0,
                 LR_FACE_PLAIN);
  lr_scene_end (piece->scene, piece->placed->facing_rad);
}

/**
 * lr_scene_add_chair:
 * @scene: a scene
 * @placed: whose it is: the chair, or who sits on it
 * @axes: its frame, looking the way one sits
 * @box: its outline, and how high its back reaches, in that frame [m]
 * @seat_m: height of the seat [m]
 * @material: what it is made of
 */
void
lr_scene_add_chair (LrScene        *scene,
                    const LrPlaced *placed,
                    const LrAxes   *axes,
                    LrBox           box,
                    double          seat_m,
                    LrMaterial      material)
{
  double leg_m = fmin (0.035, 0.15 * (box.y1 - box.y0));
  double back_x = box.x0 + fmin (0.05, 0.25 * (box.x1 - box.x0));
  double rail_m = fmin (0.5 * (box.z1 - seat_m), 0.26);
  LrBox seat = { back_x, box.x1, box.y0, box.y1, seat_m - 0.045, seat_m };
  LrBox rail = { box.x0, back_x - 0.005, box.y0, box.y1, box.z1 - rail_m, box.z1 };

  for (int side = 0; side < 2; side++)
    {
      double y0 = side == 0 ? box.y0 + 0.01 : box.y1 - 0.01 - leg_m;

      LrBox leg = { box.x1 - leg_m - 0.02, box.x1 - 0.02, y0, y0 + leg_m, 0.0, seat_m - 0.045 };
      LrBox post = { box.x0, back_x - 0.01, y0, y0 + leg_m, 0.0, box.z1 - 0.03 };

      lr_scene_column (scene, placed, axes, leg, material);
      lr_scene_column (scene, placed, axes, post, material);
    }
  lr_scene_box (scene, placed, axes, seat, material);
  lr_scene_box (scene, placed, axes, rail, material);
}

static void
add_chair (const Piece *piece)
{
  LrBox box = { -piece->x, piece->x, -piece->y, piece->y, 0.0, piece->z1 };

  lr_scene_add_chair (piece->scene, piece->placed, &piece->axes, box, fmin (0.46, 0.55 * piece->z1), piece->material);
}

/**
 * lr_scene_add_furniture:
 * @scene: a scene
 * @placed: a piece of furniture
 */
void
lr_scene_add_furniture (LrScene        *scene,
                        const LrPlaced *placed)
{
  static void (*const add[]) (const Piece *) = {
    [LR_FURNITURE_TABLE] = add_table,
    [LR_FURNITURE_CHAIR] = add_chair,
    [LR_FURNITURE_SOFA] = add_sofa,
    [LR_FURNITURE_CABINET] = add_cabinet,
    [LR_FURNITURE_CHEST] = add_chest,
    [LR_FURNITURE_RADIATOR] = add_radiator,
    [LR_FURNITURE_BOX] = add_plain,
    [LR_FURNITURE_CYLINDER] = add_cylinder,
  };
  const LrFurniture *furniture = &placed->item->furniture;
  Piece piece = {
    .scene = scene,
    .placed = placed,
    .axes = lr_axes_standing (placed->at_m, 0.0, placed->facing_rad),
    .x = 0.5 * furniture->length_m,
    .y = 0.5 * furniture->width_m,
    .z0 = furniture->bottom_m,
    .z1 = furniture->height_m,
    .material = { LR_HUE_WOOD, fmax (0.02, furniture->reflectance) },
  };

  g_return_if_fail (furniture->form >= 0 && furniture->form < (int) G_N_ELEMENTS (add));

  if (!(piece.x > 0.0) || !(piece.y > 0.0) || !(piece.z1 > piece.z0))
    return;

  if (lr_scene_size_px (scene, placed) < PLAIN_PX)
    add_plain (&piece);
  else
    add[furniture->form] (&piece);
}
