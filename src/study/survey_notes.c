/* survey_notes.c - a room's tape notes, as they were told
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "survey.h"

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
 * lr_survey_read_notes:
 * @room: a room
 * @walls: (out) (element-type LrSurveyWall): its walls, with the lengths that were taped and the turns that were noted; else
 *   they turn as they are drawn
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

  *walls = g_steal_pointer (&told);
  *diagonals = g_steal_pointer (&others);

  return TRUE;
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
  LrVec2 along;

  if (!lr_survey_read_notes (room, &walls, &diagonals))
    return NULL;

  lr_room_wall (room, 0, NULL, &along, NULL);

  return lr_survey_new (&g_array_index (walls, LrSurveyWall, 0), walls->len, &g_array_index (diagonals, LrSurveyDiagonal, 0),
                        diagonals->len, room->corners_m[0], lr_vec2_angle_rad (along));
}
