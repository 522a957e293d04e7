/* plan_edit_retape.c - what is still taped of a room that is found otherwise
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A room as found begins with the notes of the planned one. A note says what a tape said: where the room is drawn otherwise since, it is
 * of the room that was planned and goes.
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_diff.h"

#include <math.h>

static gboolean
is_of_wall (const LrTapeNote *note,
            int               wall,
            gsize             n)
{
  int next = (wall + 1) % (int) n;

  return (note->from == wall && note->to == next) || (note->from == next && note->to == wall);
}

/* Corners as they are counted, also of notes that name more than there are */
static double
between_m (const LrRoom     *room,
           const LrTapeNote *note)
{
  gsize n = room->n_corners;

  return n == 0 ? 0.0 : lr_vec2_distance (room->corners_m[(gsize) note->from % n], room->corners_m[(gsize) note->to % n]);
}

/* Off by a centimetre, and more than before: what does not fit by the adjustment stays noted */
static gboolean
has_moved_off (const LrTapeNote *note,
               const LrRoom     *room,
               const LrRoom     *before)
{
  double off_m = fabs (between_m (room, note) - note->length_m), before_off_m = fabs (between_m (before, note) - note->length_m);

  return off_m >= LR_DIFF_LENGTH_M - 1e-9 && off_m > before_off_m + 1e-6;
}

static double
turn_rad (const LrRoom *room,
          int           corner)
{
  int n = (int) room->n_corners;
  LrVec2 before, after;

  if (n < 3 || !lr_room_wall (room, (corner + n - 1) % n, NULL, &before, NULL) || !lr_room_wall (room, corner % n, NULL, &after, NULL))
    return 0.0;

  return lr_angle_wrap_rad (lr_vec2_angle_rad (after) - lr_vec2_angle_rad (before));
}

static void
drop_tapes (LrRoom       *room,
            const LrRoom *before,
            int           wall)
{
  gsize n_left = 0;

  for (gsize i = 0; i < room->n_tape; i++)
    {
      LrTapeNote *note = &room->tape[i];

      if (is_of_wall (note, wall, room->n_corners) || has_moved_off (note, room, before))
        g_clear_pointer (&note->unknown, json_object_unref);
      else
        room->tape[n_left++] = *note;
    }
  room->n_tape = n_left;
}

static void
drop_turns (LrRoom       *room,
            const LrRoom *before)
{
  gsize n_left = 0;

  for (gsize i = 0; i < room->n_turns; i++)
    {
      LrTurnNote *note = &room->turns[i];

      if (fabs (lr_angle_wrap_rad (turn_rad (room, note->corner) - turn_rad (before, note->corner))) >= LR_DIFF_ANGLE_RAD - 1e-9)
        g_clear_pointer (&note->unknown, json_object_unref);
      else
        room->turns[n_left++] = *note;
    }
  room->n_turns = n_left;
}

/**
 * lr_edit_retape:
 * @room: a fresh room as found, its corners where they are now
 * @before: the same, where they were
 * @wall: a wall that was taped; -1 if none was
 * @length_m: how long it is by tape [m]
 *
 * Drops the notes of lengths and turns that the room has no more, and notes the wall that was taped.
 */
void
lr_edit_retape (LrRoom       *room,
                const LrRoom *before,
                int           wall,
                double        length_m)
{
  LrTapeNote *note;

  drop_tapes (room, before, wall);
  drop_turns (room, before);
  if (wall < 0)
    return;

  room->tape = g_renew (LrTapeNote, room->tape, room->n_tape + 1);
  note = &room->tape[room->n_tape++];
  *note = (LrTapeNote) { .unknown = NULL };
  lr_prop_table_init (lr_tape_table (), note);
  note->from = wall;
  note->to = (wall + 1) % (int) room->n_corners;
  lr_prop_put_number (lr_prop_table_find (lr_tape_table (), "length-mm"), note, length_m);
}

static const LrTapeNote *
find_note (const LrRoom *room,
           int           wall)
{
  for (gsize i = 0; i < room->n_tape; i++)
    if (is_of_wall (&room->tape[i], wall, room->n_corners))
      return &room->tape[i];

  return NULL;
}

/**
 * lr_room_is_taped:
 * @room: a room
 * @wall: one of its walls
 *
 * Returns: whether the wall's length was taped
 */
gboolean
lr_room_is_taped (const LrRoom *room,
                  int           wall)
{
  return find_note (room, wall) != NULL;
}

/**
 * lr_edit_is_taped_anew:
 * @plan: a plan
 * @wall: of the shown set-up's room
 *
 * Returns: whether that set-up is as found and the wall was taped there: its note is none of the planned room's
 */
gboolean
lr_edit_is_taped_anew (const LrPlan *plan,
                       int           wall)
{
  const LrSetup *planned = lr_plan_planned (plan);
  const LrTapeNote *note = find_note (lr_plan_get_setup (plan)->room, wall), *was;

  if (planned == NULL || note == NULL)
    return FALSE;
  was = find_note (planned->room, wall);

  return was == NULL || was->length_m != note->length_m;
}
