/* tape_marks.c - setting out: where each mark on the floor is, by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every wall and every corner that a tape reaches tells where the mark is along one direction, to so many millimetres. Of all
 * pairs that one is taken which leaves the shortest of the longer half axes of the error ellipse: for tapes as good as each
 * other, that which crosses nearest to a right angle.
 *
 * Of no use are: corners under furniture or hidden by a wall; walls whose foot lies in a doorway, under furniture or beyond
 * the wall's end, and what is farther away than the tape is long. What stands on the floor between is in the way as well; where
 * no fair pair is clear of it, the tape is held level over it.
 */

#include "tape_marks.h"

#include "intruders.h"
#include "tape_error.h"

#define TAPE_HIGH_M 0.05 /* a tape on the floor passes under what hangs higher */
#define SAME_M 1e-6
#define CORNER_CLEAR_M 0.30 /* to reach the corner and lead a tape out of it: common practice, no source */
#define FAIR_RAD (30.0 * LR_DEG) /* tapes that cross at less, or within it of straight, place a point badly: common practice, no source */
#define EVEN_M 1e-9         /* no better by less than this: so the choice does not hang on rounding */

/* A length that could be taped to the mark */
typedef struct
{
  gsize    from;
  LrVec2   from_m;
  LrVec2   along;     /* of length 1: from the corner, or off the wall */
  double   length_m, sd_m;
  gboolean is_clear;
} Candidate;

static const LrPlaced *
placed_at (const LrStudy *study,
           guint          index)
{
  return &g_array_index (study->placed, LrPlaced, index);
}

static gboolean
is_marked (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_PANEL:
      return TRUE;
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&item->microphone);
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
is_low_furniture (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_FURNITURE && placed->bottom_m < TAPE_HIGH_M;
}

/* Whether furniture keeps a hand from the place on the floor */
static gboolean
is_covered (const LrStudy *study,
            LrVec2         at_m,
            double         clear_m)
{
  LrOutline hand = lr_outline_disc (at_m, clear_m);

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = placed_at (study, i);

      if (is_low_furniture (placed) && lr_outline_overlap_m (&placed->footprint, &hand, NULL) > 0.0)
        return TRUE;
    }

  return FALSE;
}

/* Between the legs of tables and chairs a tape passes, and what stands on the mark itself comes after it */
static gboolean
is_way_clear (const LrStudy *study,
              LrVec2         mark_m,
              LrVec2         way,
              double         length_m)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = placed_at (study, i);
      double enter_m, leave_m;

      if (!is_low_furniture (placed) || placed->item->furniture.form == LR_FURNITURE_TABLE
          || placed->item->furniture.form == LR_FURNITURE_CHAIR || lr_outline_contains (&placed->footprint, mark_m))
        continue;
      if (lr_outline_ray (&placed->footprint, mark_m, way, &enter_m, &leave_m) && enter_m < length_m - SAME_M
          && leave_m > SAME_M)
        return FALSE;
    }

  return TRUE;
}

/* Whether a tape runs straight to a place on the room's walls: no wall before it */
static gboolean
is_in_sight (const LrRoom *room,
             LrVec2        mark_m,
             LrVec2        way,
             double        length_m)
{
  LrRayHit hit;

  return !lr_polygon_ray (room->corners_m, room->n_corners, mark_m, way, &hit) || hit.distance_m >= length_m - SAME_M;
}

/* FALSE: no tape runs from there to the mark */
static gboolean
measure (const LrStudy *study,
         LrVec2         mark_m,
         Candidate     *candidate)
{
  LrVec2 way = lr_vec2_sub (candidate->from_m, mark_m);

  candidate->length_m = lr_vec2_length (way);
  if (candidate->length_m < SAME_M || candidate->length_m > study->plan->limits.value[LR_LIMIT_TAPE_LENGTH])
    return FALSE;

  way = lr_vec2_scale (way, 1.0 / candidate->length_m);
  if (!is_in_sight (study->setup->room, mark_m, way, candidate->length_m))
    return FALSE;

  candidate->along = lr_vec2_scale (way, -1.0);
  candidate->sd_m = lr_tape_sd_m (candidate->length_m);
  candidate->is_clear = is_way_clear (study, mark_m, way, candidate->length_m);
  return TRUE;
}

/* --- From corners --------------------------------------------------------------------------------------------- */

static gsize
find_corners (const LrStudy *study,
              LrVec2         mark_m,
              Candidate     *candidates)
{
  const LrRoom *room = study->setup->room;
  gsize n = 0;

  for (gsize i = 0; i < room->n_corners && i < LR_MAX_CORNERS; i++)
    {
      Candidate corner = { .from = i, .from_m = room->corners_m[i] };

      if (measure (study, mark_m, &corner) && !is_covered (study, corner.from_m, CORNER_CLEAR_M))
        candidates[n++] = corner;
    }

  return n;
}

/* --- From walls ----------------------------------------------------------------------------------------------- */

static gboolean
is_in_doorway (const LrStudy *study,
               gsize          wall,
               double         along_m)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *item = placed_at (study, i)->item;

      if (item->kind == LR_ITEM_DOOR && item->wall == (int) wall && along_m > item->along_m
          && along_m < item->along_m + item->door.width_m)
        return TRUE;
    }

  return FALSE;
}

static gsize
find_walls (const LrStudy *study,
            LrVec2         mark_m,
            Candidate     *candidates)
{
  const LrRoom *room = study->setup->room;
  gsize n = 0;

  for (gsize i = 0; i < room->n_corners && i < LR_MAX_CORNERS; i++)
    {
      Candidate wall = { .from = i };
      LrVec2 from_m, along;
      double length_m, along_m;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m))
        continue;

      along_m = lr_vec2_dot (lr_vec2_sub (mark_m, from_m), along);
      wall.from_m = lr_vec2_along (from_m, along, along_m);
      if (along_m >= 0.0 && along_m <= length_m && !is_in_doorway (study, i, along_m) && measure (study, mark_m, &wall))
        candidates[n++] = wall;
    }

  return n;
}

/* --- The best two --------------------------------------------------------------------------------------------- */

static gboolean
make_fix (const Candidate *a,
          const Candidate *b,
          LrTapeFix       *fix)
{
  *fix = (LrTapeFix) {
    .way = a->is_clear && b->is_clear ? LR_FIX_CLEAR : LR_FIX_OVER,
    .from = { a->from, b->from },
    .from_m = { a->from_m, b->from_m },
    .length_m = { a->length_m, b->length_m },
    .crossing_rad = fabs (atan2 (lr_vec2_cross (a->along, b->along), lr_vec2_dot (a->along, b->along))),
  };
  fix->is_poor = fix->crossing_rad < FAIR_RAD || fix->crossing_rad > LR_PI - FAIR_RAD;
  return lr_fix_error (a->along, a->sd_m, b->along, b->sd_m, &fix->error);
}

/* Fair ones come before poor ones, then clear ones before those over furniture; then the smaller error counts */
static gboolean
is_better (const LrTapeFix *fix,
           const LrTapeFix *best)
{
  if (best->way == LR_FIX_NONE)
    return TRUE;
  if (fix->is_poor != best->is_poor)
    return !fix->is_poor;
  if (fix->way != best->way)
    return fix->way == LR_FIX_CLEAR;

  return fix->error.major_m < best->error.major_m - EVEN_M;
}

static LrTapeFix
choose (const Candidate *candidates,
        gsize            n)
{
  LrTapeFix best = { .way = LR_FIX_NONE }, fix;

  for (gsize i = 0; i < n; i++)
    for (gsize j = i + 1; j < n; j++)
      if (make_fix (&candidates[i], &candidates[j], &fix) && is_better (&fix, &best))
        best = fix;

  return best;
}

/* --- Heights and directions ----------------------------------------------------------------------------------- */

static void
read_height (LrTapeMark *mark)
{
  const LrItem *item = mark->placed->item;

  mark->height_of = LR_HEIGHT_NONE;
  mark->height_m = NAN;
  switch ((int) item->kind)
    {
    case LR_ITEM_PERSON:
      if (item->person.posture != LR_POSTURE_SEATED)
        break;
      mark->height_of = LR_HEIGHT_SEAT;
      mark->height_m = item->person.seat_height_m;
      break;
    case LR_ITEM_CAMERA:
      mark->height_of = LR_HEIGHT_LENS;
      mark->height_m = item->camera.lens_height_m;
      break;
    case LR_ITEM_LIGHT:
      mark->height_of = LR_HEIGHT_LAMP;
      mark->height_m = item->light.lamp_height_m;
      break;
    case LR_ITEM_MICROPHONE:
      mark->height_of = LR_HEIGHT_CAPSULE;
      mark->height_m = item->microphone.tip_height_m;
      break;
    case LR_ITEM_PANEL:
      mark->height_of = LR_HEIGHT_EDGE;
      mark->height_m = item->panel.bottom_m;
      break;
    default:
      break;
    }
}

static const LrPlaced *
find_target (const LrStudy  *study,
             const LrPlaced *placed)
{
  switch ((int) placed->item->kind)
    {
    case LR_ITEM_PERSON:
      return lr_study_find_placed (study, placed->item->person.looks_at);
    case LR_ITEM_CAMERA:
      return lr_study_find_placed (study, placed->item->camera.aims_at);
    case LR_ITEM_LIGHT:
      return lr_study_find_placed (study, placed->item->light.aims_at);
    case LR_ITEM_MICROPHONE:
      return lr_study_find_placed (study, placed->item->microphone.aims_at);
    default:
      return NULL;
    }
}

static void
read_aim (const LrStudy *study,
          LrTapeMark    *mark)
{
  const LrItem *item = mark->placed->item;
  const LrCameraReading *camera = lr_study_find_camera (study, item->id);
  double turn_rad;

  mark->aims_at = find_target (study, mark->placed);
  mark->facing_rad = camera != NULL ? camera->pan_rad : mark->placed->facing_rad;
  turn_rad = 0.5 * LR_PI - mark->facing_rad - study->setup->room->north_rad;
  mark->bearing_rad = turn_rad - 2.0 * LR_PI * floor (turn_rad / (2.0 * LR_PI));

  mark->tilt_rad = camera != NULL ? camera->tilt_rad : item->kind == LR_ITEM_LIGHT ? lr_light_tilt_rad (study, mark->placed) : (double) NAN;
  mark->reach_m = item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_BOOM
                  ? lr_vec2_distance (mark->mark_m, lr_vec2 (item->microphone.tip_x_m, item->microphone.tip_y_m)) : (double) NAN;
}

static void
read_aim_wall (const LrRoom *room,
               LrTapeMark   *mark)
{
  LrRayHit hit;

  mark->aim_wall = -1;
  mark->aim_along_m = NAN;
  if (!mark->is_inside || !lr_polygon_ray (room->corners_m, room->n_corners, mark->mark_m, lr_vec2_polar (mark->facing_rad, 1.0), &hit))
    return;

  mark->aim_wall = (int) hit.edge;
  mark->aim_number = lr_room_wall_number (room, mark->aim_wall);
  mark->aim_corner_number = lr_room_corner_number (room, mark->aim_wall);
  mark->aim_along_m = hit.along_m;
  mark->aim_at_m = hit.at_m;
}

/* --- The marks ------------------------------------------------------------------------------------------------ */

/* To the millimetre, as files have it */
static void
add_figures (GString         *figures,
             const LrTapeFix *fix)
{
  for (gsize k = 0; k < 2 && fix->way != LR_FIX_NONE; k++)
    g_string_append_printf (figures, "%" G_GSIZE_FORMAT ":%.0f,", fix->from[k] + 1, 1000.0 * fix->length_m[k]);
}

/**
 * lr_tape_mark_tick:
 * @mark: a mark
 *
 * Returns: (transfer full): by what it is ticked
 */
char *
lr_tape_mark_tick (const LrTapeMark *mark)
{
  g_autoptr (GString) figures = g_string_new (NULL);

  add_figures (figures, &mark->walls);
  add_figures (figures, &mark->corners);
  if (mark->height_of != LR_HEIGHT_NONE)
    g_string_append_printf (figures, "%.0f", 1000.0 * mark->height_m);

  return lr_tick_key (mark->placed->item->id, figures->str);
}

/**
 * lr_tape_grid:
 * @room: a room
 * @grid: (out): a grid on its floor
 *
 * Along the longest wall from its first corner; of walls as long as each other the first counts.
 *
 * Returns: %FALSE, with @grid untouched, without a room
 */
gboolean
lr_tape_grid (const LrRoom *room,
              LrTapeGrid   *grid)
{
  double longest_m = 0.0;

  for (gsize i = 0; room->n_corners >= 3 && i < room->n_corners; i++)
    {
      LrVec2 from_m, along;
      double length_m;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m) || length_m <= longest_m + SAME_M)
        continue;
      longest_m = length_m;
      *grid = (LrTapeGrid) {
        i, lr_room_wall_number (room, (int) i), lr_room_corner_number (room, (int) i), from_m, along, lr_vec2_left (along)
      };
    }

  return longest_m > 0.0;
}

static void
add_mark (GArray           *marks,
          const LrStudy    *study,
          const LrPlaced   *placed,
          const LrTapeGrid *grid)
{
  const LrRoom *room = study->setup->room;
  LrVec2 off_m = lr_vec2_sub (placed->at_m, grid->origin_m);
  LrTapeMark mark = {
    .placed = placed, .mark_m = placed->at_m,
    .grid_m = { lr_vec2_dot (off_m, grid->along), lr_vec2_dot (off_m, grid->across) },
    .is_inside = lr_polygon_contains (room->corners_m, room->n_corners, placed->at_m),
  };
  Candidate candidates[LR_MAX_CORNERS];

  if (mark.is_inside)
    {
      mark.walls = choose (candidates, find_walls (study, mark.mark_m, candidates));
      mark.corners = choose (candidates, find_corners (study, mark.mark_m, candidates));
      for (gsize i = 0; i < 2; i++)
        {
          mark.walls.number[i] = lr_room_wall_number (room, (int) mark.walls.from[i]);
          mark.corners.number[i] = lr_room_corner_number (room, (int) mark.corners.from[i]);
        }
    }
  read_height (&mark);
  read_aim (study, &mark);
  read_aim_wall (room, &mark);
  g_array_append_val (marks, mark);
}

/**
 * lr_tape_marks_new:
 * @study: a study
 *
 * Everything whose place is marked on the floor: people, cameras, lights, microphones on stands and panels, in that order, for
 * what the rest is measured against comes first.
 *
 * Returns: (transfer full) (element-type LrTapeMark): the marks, which point into @study; empty without a room
 */
GArray *
lr_tape_marks_new (const LrStudy *study)
{
  static const LrItemKind order[] = { LR_ITEM_PERSON, LR_ITEM_CAMERA, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_PANEL };
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (LrTapeMark));
  LrTapeGrid grid;

  if (!lr_tape_grid (study->setup->room, &grid))
    return marks;

  for (gsize kind = 0; kind < G_N_ELEMENTS (order); kind++)
    for (guint i = 0; i < study->placed->len; i++)
      {
        const LrPlaced *placed = placed_at (study, i);

        if (placed->item->kind == order[kind] && is_marked (placed->item))
          add_mark (marks, study, placed, &grid);
      }

  return marks;
}
