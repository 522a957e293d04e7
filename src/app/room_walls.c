/* room_walls.c - wall lengths as they are typed, and the room that they make
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_walls.h"

#include "polygon.h"

#include <glib/gi18n-lib.h>

/* A walk that misses its start by less than the first closes; by less than the second, its gap is shared out; by more, a
 * wall is missing. Taping a room of usual size with care is good to a few centimetres: common practice, no source. */
#define CLOSES_M 0.005
#define SHARED_M 0.10

#define SQ_FT_PER_M2 (1.0 / (0.3048 * 0.3048))

/**
 * lr_room_walls_clear:
 * @walls: walls as typed
 *
 * Frees what is in them.
 */
void
lr_room_walls_clear (LrRoomWalls *walls)
{
  g_clear_pointer (&walls->corners_m, g_array_unref);
  g_clear_pointer (&walls->status, g_free);
  walls->is_room = walls->has_closing_wall = FALSE;
}

static void
start (LrRoomWalls *walls)
{
  lr_room_walls_clear (walls);
  walls->corners_m = g_array_new (FALSE, FALSE, sizeof (LrVec2));
}

static char *
format_area (double  area_m2,
             LrUnits units)
{
  return units == LR_UNITS_IMPERIAL ? g_strdup_printf (_("%.0f\u00a0sq\u00a0ft"), area_m2 * SQ_FT_PER_M2)
                                    : g_strdup_printf (_("%.1f\u00a0m²"), area_m2);
}

/* The last word on what came out: a room or not, and of what size. Takes @remark, a sentence of its own or NULL */
static void
conclude (LrRoomWalls *walls,
          LrUnits      units,
          char        *remark)
{
  g_autofree char *note = remark;
  const LrVec2 *corners_m = &g_array_index (walls->corners_m, LrVec2, 0);
  double area_m2 = lr_polygon_area_m2 (corners_m, walls->corners_m->len);
  g_autofree char *area = format_area (fabs (area_m2), units);

  walls->is_room = lr_polygon_is_simple (corners_m, walls->corners_m->len) && fabs (area_m2) > 0.01;
  if (!walls->is_room)
    walls->status = g_strdup (_("These walls cross each other."));
  else if (note != NULL)
    walls->status = g_strdup_printf ("%s %s.", note, area);
  else
    walls->status = g_strdup_printf (_("It closes. %s."), area);
}

/**
 * lr_room_walls_rectangle:
 * @walls: (inout): initialised with zeros
 * @length_m: along x [m]
 * @width_m: along y [m]
 * @units: for the status
 */
void
lr_room_walls_rectangle (LrRoomWalls *walls,
                         double       length_m,
                         double       width_m,
                         LrUnits      units)
{
  const LrVec2 corners_m[] = { { 0.0, 0.0 }, { length_m, 0.0 }, { length_m, width_m }, { 0.0, width_m } };
  g_autofree char *area = NULL;

  start (walls);
  if (!(length_m > 0.0) || !(width_m > 0.0))
    {
      walls->status = g_strdup (_("A wall must be longer than nothing."));
      return;
    }

  g_array_append_vals (walls->corners_m, corners_m, G_N_ELEMENTS (corners_m));
  walls->is_room = TRUE;
  area = format_area (length_m * width_m, units);
  walls->status = g_strconcat (area, ".", NULL);
}

/**
 * lr_room_walls_walk:
 * @walls: (inout): initialised with zeros
 * @legs: (array length=n): walls in the order of walking, the room on the left
 * @n: how many
 * @start_m: the first corner [m]
 * @heading_rad: the direction of the first wall [rad]
 * @units: for the status
 *
 * A walk that comes back to its start is closed, a small gap shared out among the walls; a large one is the last wall.
 */
void
lr_room_walls_walk (LrRoomWalls         *walls,
                    const LrTraverseLeg *legs,
                    gsize                n,
                    LrVec2               start_m,
                    double               heading_rad,
                    LrUnits              units)
{
  g_autofree LrVec2 *points_m = g_new (LrVec2, n + 1);
  g_autofree char *gap = NULL;
  char *remark = NULL;
  double gap_m;

  start (walls);
  if (n < 2)
    {
      walls->status = g_strdup (_("Type the first two walls."));
      return;
    }
  if (!lr_traverse_walk (legs, n, points_m))
    {
      walls->status = g_strdup (_("A wall must be longer than nothing."));
      return;
    }

  gap_m = lr_traverse_gap_m (points_m, n);
  gap = lr_length_format (gap_m, units);
  walls->has_closing_wall = n < 3 || gap_m > SHARED_M;
  if (walls->has_closing_wall)
    remark = g_strdup_printf (_("The last wall comes out at %s."), gap);
  else if (gap_m > CLOSES_M)
    remark = g_strdup_printf (_("At the end the walls miss each other by %s; that is shared out among them."), gap);
  if (!walls->has_closing_wall)
    lr_traverse_close (points_m, n);

  for (gsize i = 0; i < n + (walls->has_closing_wall ? 1 : 0); i++)
    {
      LrVec2 corner_m = lr_vec2_add (start_m, lr_vec2_rotate (points_m[i], heading_rad));

      g_array_append_val (walls->corners_m, corner_m);
    }
  conclude (walls, units, remark);
}
