/* tape_readings.c - where each mark on the floor is, by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two ways: square to the leftmost and the lowest wall, and with two tapes from the two corners from which the
 * worst placed mark is taped best. Corners under furniture that must stay are no use for a tape, nor are those that a
 * wall hides from a mark, as in a room with a notch: a length through a wall is not given.
 */

#include "study_parts.h"

#define TAPE_HIGH_M 0.05 /* a tape on the floor passes under what hangs higher */
#define SAME_M 1e-6
#define CORNER_CLEAR_M 0.30 /* to reach the corner and lead a tape out of it: common practice, no source */

static gboolean
is_taped (const LrPlaced *placed)
{
  switch (placed->item->kind)
    {
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_PANEL:
      return TRUE;
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&placed->item->microphone);
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return FALSE;
    }
}

static gboolean
is_covered (const LrStudy *study,
            LrVec2         corner_m)
{
  LrOutline hand = lr_outline_disc (corner_m, CORNER_CLEAR_M);

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);

      if (placed->item->kind == LR_ITEM_FURNITURE && placed->bottom_m < TAPE_HIGH_M
          && lr_outline_overlap_m (&placed->footprint, &hand, NULL) > 0.0)
        return TRUE;
    }

  return FALSE;
}

/* Whether a tape runs straight from the corner to the mark: no wall before the corner. Marks outside the room are not asked. */
static gboolean
is_in_sight (const LrRoom *room,
             LrVec2        corner_m,
             LrVec2        mark_m)
{
  LrRayHit hit;

  return !lr_polygon_contains (room->corners_m, room->n_corners, mark_m)
         || !lr_polygon_ray (room->corners_m, room->n_corners, mark_m, lr_vec2_sub (corner_m, mark_m), &hit)
         || hit.distance_m >= lr_vec2_distance (mark_m, corner_m) - SAME_M;
}

static gboolean
sees_all (const LrRoom *room,
          LrVec2        corner_m,
          const LrVec2 *marks_m,
          gsize         n_marks)
{
  for (gsize i = 0; i < n_marks; i++)
    if (!is_in_sight (room, corner_m, marks_m[i]))
      return FALSE;

  return TRUE;
}

/* The best two of the corners that are wanted */
static gboolean
choose_among (LrStudy        *study,
              const gboolean *is_wanted,
              const LrVec2   *marks_m,
              gsize           n_marks)
{
  const LrRoom *room = study->setup->room;
  LrVec2 corners_m[LR_MAX_CORNERS];
  gsize index[LR_MAX_CORNERS];
  gsize n = 0;
  gsize p, q;

  for (gsize i = 0; i < room->n_corners && n < LR_MAX_CORNERS; i++)
    if (is_wanted[i])
      {
        corners_m[n] = room->corners_m[i];
        index[n++] = i;
      }

  if (n < 2 || !lr_tape_corners (corners_m, n, marks_m, n_marks, &p, &q))
    return FALSE;

  study->tape_p = index[p];
  study->tape_q = index[q];
  study->has_tapes = TRUE;
  return TRUE;
}

/* Corners that are in reach and see every mark; else that see every mark; else that are in reach; else any */
static void
choose_corners (LrStudy      *study,
                const LrVec2 *marks_m,
                gsize         n_marks)
{
  const LrRoom *room = study->setup->room;
  gboolean sees[LR_MAX_CORNERS], in_reach[LR_MAX_CORNERS], both[LR_MAX_CORNERS], any[LR_MAX_CORNERS];

  for (gsize i = 0; i < room->n_corners && i < LR_MAX_CORNERS; i++)
    {
      any[i] = TRUE;
      sees[i] = sees_all (room, room->corners_m[i], marks_m, n_marks);
      in_reach[i] = !is_covered (study, room->corners_m[i]);
      both[i] = sees[i] && in_reach[i];
    }

  if (!choose_among (study, both, marks_m, n_marks) && !choose_among (study, sees, marks_m, n_marks)
      && !choose_among (study, in_reach, marks_m, n_marks))
    choose_among (study, any, marks_m, n_marks);
}

/* Lengths of the two tapes; NAN for one that would run through a wall */
static void
read_tapes (const LrStudy *study,
            LrVec2         mark_m,
            LrTapePair    *tapes)
{
  const LrRoom *room = study->setup->room;
  LrVec2 p_m = room->corners_m[study->tape_p], q_m = room->corners_m[study->tape_q];

  if (!lr_tape_pair (p_m, q_m, mark_m, tapes))
    return;
  if (!is_in_sight (room, p_m, mark_m))
    tapes->from_p_m = NAN;
  if (!is_in_sight (room, q_m, mark_m))
    tapes->from_q_m = NAN;
}

static LrVec2
lower_left_m (const LrRoom *room)
{
  LrVec2 least_m = room->corners_m[0];

  for (gsize i = 1; i < room->n_corners; i++)
    {
      least_m.x = fmin (least_m.x, room->corners_m[i].x);
      least_m.y = fmin (least_m.y, room->corners_m[i].y);
    }
  return least_m;
}

/**
 * lr_study_read_tapes:
 * @study: a study whose items are placed
 *
 * Fills one reading for everything whose place is marked on the floor, in the set-up's order; none without a room.
 */
void
lr_study_read_tapes (LrStudy *study)
{
  const LrRoom *room = study->setup->room;
  g_autofree LrVec2 *marks_m = g_new (LrVec2, study->placed->len + 1);
  LrVec2 origin_m;

  study->tapes = g_array_sized_new (FALSE, FALSE, sizeof (LrTapeReading), study->placed->len + 1);
  if (room->n_corners < 3 || study->is_trial)
    return;

  origin_m = lower_left_m (room);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);
      LrTapeReading tape = { placed, placed->at_m.x - origin_m.x, placed->at_m.y - origin_m.y, { NAN, NAN, NAN } };

      if (!is_taped (placed))
        continue;

      marks_m[study->tapes->len] = placed->at_m;
      g_array_append_val (study->tapes, tape);
    }

  choose_corners (study, marks_m, study->tapes->len);
  for (guint i = 0; study->has_tapes && i < study->tapes->len; i++)
    read_tapes (study, marks_m[i], &g_array_index (study->tapes, LrTapeReading, i).tapes);
}
