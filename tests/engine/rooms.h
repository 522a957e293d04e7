/* rooms.h - rooms to test with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "check.h"

#define ROOM_MAX 64

typedef struct
{
  size_t n;
  LrVec2 corners_m[ROOM_MAX];
} Room;

/* An L: 4 m by 4 m without its upper right quarter */
static const LrVec2 l_room_m[] = { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2, 2 }, { 2, 4 }, { 0, 4 } };

/* A hall of 8 m by 5 m with a thin wall, 0.1 m thick, that reaches 3 m into it from
 * the right */
static const LrVec2 fin_room_m[] = {
  { 0, 0 }, { 8, 0 }, { 8, 2.4 }, { 5, 2.4 }, { 5, 2.5 }, { 8, 2.5 }, { 8, 5 }, { 0, 5 },
};

/* Corners anticlockwise round the origin at random distances: concave, often sharply, but simple */
static inline Room
random_star (size_t n)
{
  Room room = { .n = n };

  for (size_t i = 0; i < n; i++)
    {
      double angle_rad = 2.0 * LR_PI * ((double) i + g_test_rand_double_range (0.0, 0.8)) / (double) n;

      room.corners_m[i] = lr_vec2_polar (angle_rad, g_test_rand_double_range (1.0, 6.0));
    }

  return room;
}

/* A comb: bays of random depth above a passage, anticlockwise, walls square to each other */
static inline Room
random_comb (size_t n_bays)
{
  Room room = { .n = 2 + 4 * n_bays };
  double pitch_m = 8.0 / (double) n_bays;
  size_t k = 0;

  room.corners_m[k++] = lr_vec2 (-4.0, -3.0);
  room.corners_m[k++] = lr_vec2 (4.0, -3.0);
  for (size_t i = 0; i < n_bays; i++)
    {
      double right_m = 4.0 - pitch_m * (double) i, deep_m = g_test_rand_double_range (1.0, 4.0);
      double low_m = g_test_rand_double_range (-1.5, 0.9);
      double bay_m = pitch_m * g_test_rand_double_range (0.3, 0.9);

      room.corners_m[k++] = lr_vec2 (right_m, deep_m);
      room.corners_m[k++] = lr_vec2 (right_m - bay_m, deep_m);
      room.corners_m[k++] = lr_vec2 (right_m - bay_m, low_m);
      room.corners_m[k++] = lr_vec2 (right_m - pitch_m, low_m);
    }

  return room;
}

static inline Room
random_room (int i)
{
  return i % 2 == 0 ? random_star ((size_t) g_test_rand_int_range (5, ROOM_MAX + 1))
                    : random_comb ((size_t) g_test_rand_int_range (1, 15));
}

/* Another way to tell inside from outside: the angle through which the corners turn, seen from
 * the point */
static inline bool
winds_round (const Room *room,
             LrVec2      point_m)
{
  double turn_rad = 0.0;

  for (size_t i = 0; i < room->n; i++)
    {
      LrVec2 a = lr_vec2_sub (room->corners_m[i], point_m);
      LrVec2 b = lr_vec2_sub (room->corners_m[(i + 1) % room->n], point_m);

      turn_rad += atan2 (lr_vec2_cross (a, b), lr_vec2_dot (a, b));
    }

  return turn_rad > LR_PI;
}
