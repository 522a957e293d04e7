/* survey_notes.c - a room's tape notes, as they were told
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "survey.h"

#include "polygon.h"

#define DRAWN_SQUARE_RAD (10.0 * LR_DEG) /* a corner drawn so near to square, of which nothing is noted, is square */

static double
drawn_turn_rad (const LrRoom *room,
                guint         corner)
{
  LrVec2 before, after;
  double turn_rad;
  int n = (int) room->n_corners;

  lr_room_wall (room, ((int) corner + n - 1) % n, NULL, &before, NULL);
  lr_room_wall (room, (int) corner, NULL, &after, NULL);
  turn_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (after) - lr_vec2_angle_rad (before));

  return fabs (fabs (turn_rad) - LR_PI / 2.0) < DRAWN_SQUARE_RAD ? copysign (LR_PI / 2.0, turn_rad) : turn_rad;
}

static GArray *
read_turns (const LrRoom *room)
{
  GArray *walls = g_array_new (FALSE, FALSE, sizeof (LrSurveyWall));

  for (guint i = 0; i < room->n_corners; i++)
    {
      guint end = (i + 1) % (guint) room->n_corners;
      LrSurveyWall wall = { NAN, drawn_turn_rad (room, end) };

      for (gsize k = 0; k < room->n_turns; k++)
        if (room->turns[k].corner == (int) end)
          wall.turn_rad = room->turns[k].turn_rad;
      g_array_append_val (walls, wall);
    }

  return walls;
}

/**
 * lr_survey_corner_of:
 * @room: a room
 * @corner: a corner as it was taped, from 0; others go round
 *
 * Returns: its index among the room's corners, which run anticlockwise
 */
guint
lr_survey_corner_of (const LrRoom *room,
                     guint         corner)
{
  guint n = (guint) room->n_corners;

  return room->counts_clockwise ? n - 1 - corner % n : corner % n;
}

/* Walls that run anticlockwise, as they were walked with the room on the right: each turn stands with the wall that ends there */
static void
walk_clockwise (GArray *walls,
                GArray *diagonals)
{
  guint n = walls->len;
  g_autofree LrSurveyWall *told = g_memdup2 (walls->data, n * sizeof *told);

  for (guint k = 0; k < n; k++)
    g_array_index (walls, LrSurveyWall, k) = (LrSurveyWall) { told[(2 * n - 2 - k) % n].length_m, -told[(2 * n - 3 - k) % n].turn_rad };
  for (guint i = 0; i < diagonals->len; i++)
    {
      LrSurveyDiagonal *diagonal = &g_array_index (diagonals, LrSurveyDiagonal, i);

      *diagonal = (LrSurveyDiagonal) { n - 1 - diagonal->from, n - 1 - diagonal->to, diagonal->length_m };
    }
}

/**
 * lr_survey_read_notes:
 * @room: a room
 * @walls: (out) (element-type LrSurveyWall): its walls as they were walked, with the lengths that were taped and the turns that were
 *   noted; else they turn as they are drawn
 * @diagonals: (out) (element-type LrSurveyDiagonal): what else was taped
 *
 * Notes of corners that the room has not are left out.
 *
 * Returns: %FALSE, with nothing written, unless a wall was taped
 */
gboolean
lr_survey_read_notes (const LrRoom *room,
                      GArray      **walls,
                      GArray      **diagonals)
{
  int n = (int) room->n_corners;
  g_autoptr (GArray) told = NULL, others = NULL;
  gboolean has_wall = FALSE;

  if (n < 3 || room->n_tape == 0)
    return FALSE;

  told = read_turns (room);
  others = g_array_new (FALSE, FALSE, sizeof (LrSurveyDiagonal));
  for (gsize i = 0; i < room->n_tape; i++)
    {
      int from = room->tape[i].from, to = room->tape[i].to;
      LrSurveyDiagonal diagonal = { (guint) from, (guint) to, room->tape[i].length_m };

      if (from >= n || to >= n || from == to)
        continue;
      if (to == (from + 1) % n || from == (to + 1) % n)
        {
          g_array_index (told, LrSurveyWall, to == (from + 1) % n ? from : to).length_m = room->tape[i].length_m;
          has_wall = TRUE;
        }
      else if (others->len < LR_SURVEY_MAX_DIAGONALS)
        g_array_append_val (others, diagonal);
    }
  if (!has_wall)
    return FALSE;

  if (room->counts_clockwise)
    walk_clockwise (told, others);
  *walls = g_steal_pointer (&told);
  *diagonals = g_steal_pointer (&others);

  return TRUE;
}

/**
 * lr_survey_find_start:
 * @room: a room with corners
 * @start_m: (out): the corner where the first of its walls begins, as they were taped [m]
 * @heading_rad: (out): where that wall goes [rad]
 */
void
lr_survey_find_start (const LrRoom *room,
                      LrVec2       *start_m,
                      double       *heading_rad)
{
  *start_m = room->corners_m[lr_survey_corner_of (room, 0)];
  *heading_rad = lr_vec2_angle_rad (lr_vec2_sub (room->corners_m[lr_survey_corner_of (room, 1)], *start_m));
}

/**
 * lr_survey_of_room:
 * @room: a room
 *
 * Returns: (transfer full) (nullable): the room anew from its tape notes, its first corner and wall where they are drawn;
 *   %NULL if no wall was taped
 */
LrSurvey *
lr_survey_of_room (const LrRoom *room)
{
  g_autoptr (GArray) walls = NULL, diagonals = NULL;
  LrVec2 start_m;
  double heading_rad;

  if (!lr_survey_read_notes (room, &walls, &diagonals))
    return NULL;

  lr_survey_find_start (room, &start_m, &heading_rad);

  return lr_survey_new (&g_array_index (walls, LrSurveyWall, 0), walls->len, &g_array_index (diagonals, LrSurveyDiagonal, 0),
                        diagonals->len, start_m, heading_rad);
}

/**
 * lr_survey_make_room:
 * @survey: a survey that came to a room
 * @walls: (array): what it was made from, as many as it had
 * @diagonals: (array length=n_diagonals): likewise
 * @n_diagonals: how many
 * @plan: a plan
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with that room, and with all that was told as its notes
 */
LrPlan *
lr_survey_make_room (const LrSurvey         *survey,
                     const LrSurveyWall     *walls,
                     const LrSurveyDiagonal *diagonals,
                     guint                   n_diagonals,
                     const LrPlan           *plan,
                     GError                **error)
{
  guint n = survey->corners_m->len;
  g_autofree LrTapeNote *tape = g_new0 (LrTapeNote, survey->n_walls + n_diagonals);
  g_autofree LrTurnNote *turns = g_new0 (LrTurnNote, survey->n_walls);
  LrTaped taped = { &g_array_index (survey->corners_m, LrVec2, 0), n, tape, 0, turns, 0 };

  for (guint i = 0; i < survey->n_walls; i++)
    {
      int end = (int) ((i + 1) % n);

      if (!isnan (walls[i].length_m))
        tape[taped.n_tape++] = (LrTapeNote) { (int) i, end, walls[i].length_m, NULL };
      /* where the way back to the start is straight, the corner before it is nobody's */
      if (survey->state == LR_SURVEY_ROUND || i + 1 < survey->n_walls)
        turns[taped.n_turns++] = (LrTurnNote) { end, i + 1 < survey->n_walls ? walls[i].turn_rad : survey->last_turn_rad, NULL };
    }
  for (guint i = 0; i < n_diagonals; i++)
    tape[taped.n_tape++] = (LrTapeNote) { (int) diagonals[i].from, (int) diagonals[i].to, diagonals[i].length_m, NULL };

  return lr_plan_set_taped (plan, &taped, error);
}

/* Out of the room, square to the wall, clockwise from up the sheet */
static double
outward_rad (const LrVec2 *corners_m,
             gsize         n,
             guint         wall)
{
  LrVec2 left = lr_vec2_left (lr_vec2_sub (corners_m[(wall + 1) % n], corners_m[wall % n]));
  LrVec2 out = lr_vec2_scale (left, lr_polygon_area_m2 (corners_m, n) < 0.0 ? 1.0 : -1.0);

  return LR_PI / 2.0 - lr_vec2_angle_rad (out);
}

/**
 * lr_north_by_wall:
 * @corners_m: (array length=n): a room [m], in either direction
 * @n: how many, >= 3
 * @wall: one of its walls
 * @bearing_rad: what a compass reads that looks squarely at the wall from inside [rad], clockwise from north
 *
 * Source: closed form. A compass shows magnetic north.
 *
 * Returns: the direction of north, clockwise from up the sheet [rad], in (-pi, pi]
 */
double
lr_north_by_wall (const LrVec2 *corners_m,
                  gsize         n,
                  guint         wall,
                  double        bearing_rad)
{
  return lr_angle_wrap_rad (outward_rad (corners_m, n, wall) - bearing_rad);
}

/**
 * lr_bearing_of_wall:
 * @corners_m: (array length=n): a room [m], in either direction
 * @n: how many, >= 3
 * @wall: one of its walls
 * @north_rad: the direction of north, clockwise from up the sheet [rad]
 *
 * Source: closed form.
 *
 * Returns: where the wall looks from inside, clockwise from north [rad], in [0, 2 pi)
 */
double
lr_bearing_of_wall (const LrVec2 *corners_m,
                    gsize         n,
                    guint         wall,
                    double        north_rad)
{
  double bearing_rad = lr_angle_wrap_rad (outward_rad (corners_m, n, wall) - north_rad);

  return bearing_rad < 0.0 ? bearing_rad + 2.0 * LR_PI : bearing_rad;
}
