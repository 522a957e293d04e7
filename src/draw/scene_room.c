/* scene_room.c - walls, with what is in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A wall is one face seen from the room, and strips round its openings seen from outside: a camera in the yard
 * looks in through a window, a camera in the passage through the door. What lies behind the face, like the pane of
 * a window, is brought forward to it along the lines of sight: a rectangle stays a rectangle, and can be cut by
 * its opening.
 */

#include "scene.h"

#include "scene_light.h"

#define THICKNESS_M 0.10
#define PANE_BEHIND_M 0.09
#define LEAF_BEHIND_M 0.035
#define SLAT_M 0.06
#define SKIRTING_M 0.09

/* A wall's frame: x into the room, y from its second corner to its first */
typedef struct
{
  LrScene *scene;
  LrAxes   axes;
  double   length_m, height_m;
  double   eye_x, eye_y, eye_z; /* in that frame */
  const LrWallLight *light;     /* (nullable) */
  double   luminance;           /* its mean */
} Wall;

static LrColor
wall_tone (const Wall *wall,
           double      share)
{
  return lr_tone (LR_HUE_WALL, wall->luminance * share);
}

/* What is on the wall but not of it */
static LrColor
tone_in_light (const Wall *wall,
               LrHue       hue,
               double      luminance)
{
  return lr_tone (hue, luminance * wall->scene->light.gain);
}

/* A rectangle by its distance from the wall's first corner */
static LrBox
wall_box (const Wall *wall,
          double      along_m,
          double      width_m,
          double      z0,
          double      z1)
{
  return (LrBox) { 0.0, 0.0, wall->length_m - along_m - width_m, wall->length_m - along_m, z0, z1 };
}

static LrBox
inset (LrBox  box,
       double by_m)
{
  return (LrBox) { 0.0, 0.0, box.y0 + by_m, box.y1 - by_m, box.z0 + by_m, box.z1 - by_m };
}

static gboolean
is_empty (LrBox box)
{
  return !(box.y1 > box.y0) || !(box.z1 > box.z0);
}

static void
add_detail (const Wall *wall,
            double      x,
            LrBox       box,
            LrColor     color)
{
  if (!is_empty (box))
    lr_scene_front (wall->scene, &wall->axes, x, box, color, LR_FACE_DETAIL);
}

/* Where a rectangle behind the wall's face is seen in it */
static LrBox
brought_forward (const Wall *wall,
                 LrBox       box,
                 double      behind_m)
{
  double k = wall->eye_x / (wall->eye_x + behind_m);

  return (LrBox) {
    0.0, 0.0,
    wall->eye_y + k * (box.y0 - wall->eye_y), wall->eye_y + k * (box.y1 - wall->eye_y),
    wall->eye_z + k * (box.z0 - wall->eye_z), wall->eye_z + k * (box.z1 - wall->eye_z),
  };
}

static void
add_behind (const Wall *wall,
            LrBox       opening,
            LrBox       box,
            double      behind_m,
            LrColor     color)
{
  LrBox seen = brought_forward (wall, box, behind_m);

  seen.y0 = fmax (seen.y0, opening.y0);
  seen.y1 = fmin (seen.y1, opening.y1);
  seen.z0 = fmax (seen.z0, opening.z0);
  seen.z1 = fmin (seen.z1, opening.z1);
  add_detail (wall, 0.0, seen, color);
}

/* Two by two panes in their bars, brighter towards the sky */
static void
add_panes (const Wall *wall,
           LrBox       opening)
{
  const double bar_m = 0.022, transom = 0.66;
  LrBox glass = inset (opening, 0.045);
  double y = 0.5 * (glass.y0 + glass.y1), z = glass.z0 + transom * (glass.z1 - glass.z0);

  add_behind (wall, opening, opening, PANE_BEHIND_M, tone_in_light (wall, LR_HUE_PLAIN, 0.40));
  for (guint i = 0; i < 4; i++)
    {
      LrBox pane = { 0.0, 0.0,
                     i & 1 ? y + bar_m : glass.y0, i & 1 ? glass.y1 : y - bar_m,
                     i & 2 ? z + bar_m : glass.z0, i & 2 ? glass.z1 : z - bar_m };
      LrBox low = pane;

      low.z1 = pane.z0 + 0.45 * (pane.z1 - pane.z0);
      add_behind (wall, opening, pane, PANE_BEHIND_M, lr_tone (LR_HUE_DAY, 0.90));
      if (!(i & 2))
        add_behind (wall, opening, low, PANE_BEHIND_M, lr_tone (LR_HUE_DAY, 0.70));
    }
}

static void
add_blind (const Wall     *wall,
           LrBox           opening,
           const LrWindow *window)
{
  LrBox blind = opening;

  if (window->blind == LR_BLIND_NONE)
    return;

  blind.y0 -= 0.03;
  blind.y1 += 0.03;
  blind.z1 += 0.05;
  if (window->blind == LR_BLIND_UP)
    blind.z0 = blind.z1 - 0.14;
  else if (window->blind == LR_BLIND_HALF)
    blind.z0 = 0.5 * (opening.z0 + opening.z1);
  else
    blind.z0 -= 0.03;

  add_detail (wall, 0.05, blind, tone_in_light (wall, LR_HUE_WALL, 0.50));
  for (double z = blind.z1 - SLAT_M; z > blind.z0 + 0.5 * SLAT_M; z -= SLAT_M)
    add_detail (wall, 0.05, (LrBox) { 0.0, 0.0, blind.y0, blind.y1, z - 0.012, z }, tone_in_light (wall, LR_HUE_WALL, 0.40));
  blind.z1 = blind.z0 + 0.03;
  add_detail (wall, 0.05, blind, tone_in_light (wall, LR_HUE_WALL, 0.34));
}

static void
add_window (const Wall     *wall,
            const LrItem   *item,
            LrBox           opening)
{
  LrBox sill = { 0.0, 0.0, opening.y0 - 0.04, opening.y1 + 0.04, opening.z0 - 0.035, opening.z0 };

  add_detail (wall, 0.0, opening, wall_tone (wall, 1.18)); /* the reveal, in raking light */
  add_panes (wall, opening);
  if (opening.z0 > 0.1)
    add_detail (wall, 0.03, sill, wall_tone (wall, 1.35));
  add_blind (wall, opening, &item->window);
}

static void
add_door (const Wall   *wall,
          const LrItem *item,
          LrBox         opening)
{
  const LrDoor *door = &item->door;
  LrBox frame = { 0.0, 0.0, opening.y0 - 0.07, opening.y1 + 0.07, 0.0, opening.z1 + 0.07 };
  double width_m = opening.y1 - opening.y0;
  double rail_m = fmin (0.11, 0.2 * width_m);
  double middle = 0.46 * opening.z1;
  double leaf = 0.42;
  double handle_y = door->hinge == LR_HINGE_START ? opening.y0 + 0.06 : opening.y1 - 0.16;

  add_detail (wall, 0.015, frame, tone_in_light (wall, LR_HUE_PLAIN, 0.46));
  add_detail (wall, 0.0, opening, tone_in_light (wall, LR_HUE_WALL, 0.10));
  if (door->swing == LR_SWING_NONE)
    return;

  add_behind (wall, opening, opening, LEAF_BEHIND_M, tone_in_light (wall, LR_HUE_PLAIN, leaf));
  for (int i = 0; i < 2; i++)
    {
      LrBox panel = { 0.0, 0.0, opening.y0 + rail_m, opening.y1 - rail_m,
                      i == 0 ? opening.z0 + 0.20 : middle + rail_m,
                      i == 0 ? middle : opening.z1 - rail_m };

      add_behind (wall, opening, panel, LEAF_BEHIND_M, tone_in_light (wall, LR_HUE_PLAIN, 0.78 * leaf));
      add_behind (wall, opening, inset (panel, 0.018), LEAF_BEHIND_M, tone_in_light (wall, LR_HUE_PLAIN, 1.04 * leaf));
    }
  add_detail (wall, 0.0, (LrBox) { 0.0, 0.0, handle_y, handle_y + 0.10, 1.01, 1.03 }, tone_in_light (wall, LR_HUE_METAL, 0.07));
}

static void
add_plate (const Wall *wall,
           double      along_m,
           double      width_m,
           double      z_m,
           double      height_m)
{
  LrBox plate = wall_box (wall, along_m - 0.5 * width_m, width_m, z_m - 0.5 * height_m, z_m + 0.5 * height_m);

  add_detail (wall, 0.004, inset (plate, -0.006), wall_tone (wall, 0.72));
  add_detail (wall, 0.008, plate, tone_in_light (wall, LR_HUE_PLAIN, 0.62));
}

/* FALSE: not an opening that this wall has room for */
static gboolean
get_opening (const Wall   *wall,
             const LrItem *item,
             LrBox        *opening)
{
  if (item->kind == LR_ITEM_DOOR)
    *opening = wall_box (wall, item->along_m, item->door.width_m, 0.0, item->door.height_m);
  else if (item->kind == LR_ITEM_WINDOW)
    *opening = wall_box (wall, item->along_m, item->window.width_m, item->window.sill_m, item->window.head_m);
  else
    return FALSE;

  opening->y0 = fmax (opening->y0, 0.0);
  opening->y1 = fmin (opening->y1, wall->length_m);
  opening->z1 = fmin (opening->z1, wall->height_m);
  return !is_empty (*opening);
}

static void
add_on_wall (const Wall   *wall,
             const LrItem *item)
{
  LrBox opening;

  if (item->kind == LR_ITEM_SOCKET)
    add_plate (wall, item->along_m, 0.146, item->socket.height_m, 0.086);
  else if (get_opening (wall, item, &opening) && item->kind == LR_ITEM_WINDOW)
    add_window (wall, item, opening);
  else if (item->kind == LR_ITEM_DOOR)
    add_door (wall, item, opening);
}

/* A rectangle of the wall's outer side */
static void
add_outside (const Wall *wall,
             double      y0,
             double      y1,
             double      z0,
             double      z1)
{
  LrVec3 points_m[4] = {
    lr_axes_point (&wall->axes, -0.001, y0, z0),
    lr_axes_point (&wall->axes, -0.001, y0, z1),
    lr_axes_point (&wall->axes, -0.001, y1, z1),
    lr_axes_point (&wall->axes, -0.001, y1, z0),
  };

  if (y1 > y0 && z1 > z0)
    lr_scene_face (wall->scene, points_m, 4, lr_tone (LR_HUE_WALL, 0.21), 1.0, LR_FACE_PLAIN);
}

static void
add_outer_strips (const Wall      *wall,
                  const GPtrArray *items,
                  int              index)
{
  double from = 0.0;

  for (;;)
    {
      LrBox next = { .y0 = HUGE_VAL }, opening;

      for (guint i = 0; i < items->len; i++)
        {
          const LrItem *item = items->pdata[i];

          if (item->wall == index && get_opening (wall, item, &opening) && opening.y0 >= from && opening.y0 < next.y0)
            next = opening;
        }

      add_outside (wall, from, fmin (next.y0, wall->length_m), 0.0, wall->height_m);
      if (!isfinite (next.y0))
        return;
      add_outside (wall, next.y0, next.y1, 0.0, next.z0);
      add_outside (wall, next.y0, next.y1, next.z1, wall->height_m);
      from = next.y1;
    }
}

static gboolean
read_wall (LrScene *scene,
           int      index,
           Wall    *wall)
{
  const LrRoom *room = scene->study->setup->room;
  LrVec2 from_m, along, inward;
  LrVec3 way;

  if (!lr_room_wall (room, index, &from_m, &along, &wall->length_m) || !(wall->length_m > 1e-6))
    return FALSE;

  inward = lr_vec2_left (along);
  wall->scene = scene;
  wall->height_m = room->height_m;
  wall->axes = lr_axes_standing (lr_vec2_along (from_m, along, wall->length_m), 0.0, lr_vec2_angle_rad (inward));
  way = lr_vec3_sub (scene->eye_m, wall->axes.origin_m);
  wall->eye_x = lr_vec3_dot (way, wall->axes.x);
  wall->eye_y = lr_vec3_dot (way, wall->axes.y);
  wall->eye_z = way.z;
  wall->light = scene->light.levels != NULL ? lr_light_levels_wall (scene->light.levels, index) : NULL;
  wall->luminance = room->walls.reflectance;
  if (wall->light != NULL)
    wall->luminance *= scene->light.per_lx * wall->light->mean_lx;
  else
    wall->luminance *= scene->light.gain * LR_WALLS_SHARE * (0.92 + 0.14 * fmax (0.0, lr_vec3_dot (wall->axes.x, scene->modelling.key)));
  return TRUE;
}

static void
add_wall (LrScene *scene,
          int      index)
{
  const GPtrArray *items = scene->study->setup->items;
  LrSolid *solid;
  LrVec3 middle_m;
  double facing_rad;
  Wall wall;

  if (!read_wall (scene, index, &wall))
    return;

  facing_rad = atan2 (wall.axes.x.y, wall.axes.x.x);
  lr_scene_begin (scene, NULL);
  if (wall.eye_x > 0.0)
    {
      LrBox face = { 0.0, 0.0, 0.0, wall.length_m, 0.0, wall.height_m };
      LrBox skirting = { 0.0, 0.0, 0.0, wall.length_m, 0.0, fmin (SKIRTING_M, wall.height_m) };

      lr_scene_front (scene, &wall.axes, 0.0, face, wall_tone (&wall, 1.0), LR_FACE_WALL);
      g_array_index (scene->faces, LrFace, scene->faces->len - 1).light = wall.light;
      add_detail (&wall, 0.012, skirting, wall_tone (&wall, 0.80));
      for (guint i = 0; i < items->len; i++)
        if (((const LrItem *) items->pdata[i])->wall == index)
          add_on_wall (&wall, items->pdata[i]);
    }
  else
    add_outer_strips (&wall, items, index);
  lr_scene_end (scene, facing_rad);

  /* Its prism: what hangs on the wall may be in it, the wall itself lies behind its face */
  solid = &g_array_index (scene->solids, LrSolid, scene->solids->len - 1);
  middle_m = lr_axes_point (&wall.axes, -0.5 * THICKNESS_M, 0.5 * wall.length_m, 0.0);
  solid->type = LR_SOLID_WALL;
  solid->base = lr_outline_box (lr_vec3_flat (middle_m), THICKNESS_M, wall.length_m, facing_rad);
  solid->bottom_m = 0.0;
  solid->top_m = wall.height_m;
}

/**
 * lr_scene_add_walls:
 * @scene: a scene
 *
 * Each wall is a solid of its own, for a room may have corners that point inwards.
 */
void
lr_scene_add_walls (LrScene *scene)
{
  const LrRoom *room = scene->study->setup->room;

  for (gsize i = 0; i < room->n_corners; i++)
    add_wall (scene, (int) i);
}
