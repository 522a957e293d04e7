/* clashes.c - what stands in each other, in a wall, in a door's swing or through the ceiling
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two things clash where their footprints overlap and their heights do: a tripod fits under a shelf. Found by a sweep
 * along x over the boxes round the footprints, so that things that stand apart cost nothing.
 *
 * A person may sit on a chair or a sofa, and with the legs under a table.
 */

#include "study_parts.h"

#define ROUNDING_M 0.001 /* of a place to whole millimetres, with a margin */
#define SAME_M 1e-6
#define TRUNK_BACK_M 0.29  /* of a seated person: what does not go under a table */
#define TRUNK_FRONT_M 0.22
#define TRUNK_HALF_WIDTH_M 0.26
#define RING_M 0.10
#define N_RINGS 10
#define N_WAYS 16

/* Something on the floor: a thing, or the floor that a door needs */
typedef struct
{
  const LrPlaced *placed;
  const LrOutline *outline;
  double  min_x_m, max_x_m, min_y_m, max_y_m;
  gboolean is_door;
} Piece;

static void
bound (Piece *piece)
{
  const LrOutline *o = piece->outline;
  LrVec2 least_m = { o->centre_m.x - o->radius_m, o->centre_m.y - o->radius_m };
  LrVec2 most_m = { o->centre_m.x + o->radius_m, o->centre_m.y + o->radius_m };

  if (o->n > 0)
    least_m = most_m = o->corner_m[0];
  for (size_t i = 1; i < o->n; i++)
    {
      LrVec2 c = o->corner_m[i];

      least_m = lr_vec2 (c.x < least_m.x ? c.x : least_m.x, c.y < least_m.y ? c.y : least_m.y);
      most_m = lr_vec2 (c.x > most_m.x ? c.x : most_m.x, c.y > most_m.y ? c.y : most_m.y);
    }

  piece->min_x_m = least_m.x;
  piece->max_x_m = most_m.x;
  piece->min_y_m = least_m.y;
  piece->max_y_m = most_m.y;
}

static gboolean
is_seat (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_FURNITURE
         && (placed->item->furniture.form == LR_FURNITURE_CHAIR || placed->item->furniture.form == LR_FURNITURE_SOFA);
}

static gboolean
is_table (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_FURNITURE && placed->item->furniture.form == LR_FURNITURE_TABLE;
}

static gboolean
is_seated (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_PERSON && placed->item->person.posture == LR_POSTURE_SEATED;
}

static LrOutline
trunk (const LrPlaced *person)
{
  LrVec2 facing = lr_vec2_polar (person->facing_rad, 0.5 * (TRUNK_FRONT_M - TRUNK_BACK_M));

  return lr_outline_box (lr_vec2_add (person->at_m, facing), TRUNK_FRONT_M + TRUNK_BACK_M, 2.0 * TRUNK_HALF_WIDTH_M,
                         person->facing_rad);
}

/* Depth by which a stands in b, and a's way out */
static double
overlap_m (const Piece *a,
           const Piece *b,
           LrVec2      *push)
{
  LrOutline legless;
  const LrOutline *outline_a = a->outline, *outline_b = b->outline;

  if (a->placed->bottom_m >= b->placed->top_m - SAME_M || b->placed->bottom_m >= a->placed->top_m - SAME_M)
    return 0.0;
  if ((is_seated (a->placed) && is_seat (b->placed)) || (is_seated (b->placed) && is_seat (a->placed)))
    return 0.0;

  if (is_seated (a->placed) && is_table (b->placed))
    {
      legless = trunk (a->placed);
      outline_a = &legless;
    }
  else if (is_seated (b->placed) && is_table (a->placed))
    {
      legless = trunk (b->placed);
      outline_b = &legless;
    }
  return lr_outline_overlap_m (outline_a, outline_b, push);
}

static gboolean
are_apart (const Piece *a,
           const Piece *b)
{
  return a->max_x_m <= b->min_x_m || b->max_x_m <= a->min_x_m || a->max_y_m <= b->min_y_m || b->max_y_m <= a->min_y_m;
}

/* Two doors, or two fixed things that were measured so, are not ours to mend */
static gboolean
is_given (const Piece *piece)
{
  return piece->is_door || (piece->placed->item->kind == LR_ITEM_FURNITURE && piece->placed->item->furniture.is_fixed);
}

static void
meet (LrStudy     *study,
      const Piece *a,
      const Piece *b)
{
  LrClash clash = { .push = { 1.0, 0.0 } };

  if (is_given (a) && is_given (b))
    return;
  if (a->is_door)
    {
      const Piece *thing = b;

      b = a;
      a = thing;
    }

  clash.depth_m = overlap_m (a, b, &clash.push);
  if (!(clash.depth_m > SAME_M))
    return;

  clash.type = b->is_door ? LR_CLASH_DOOR : LR_CLASH_OVERLAP;
  clash.a = a->placed;
  clash.b = b->placed;
  clash.at_m = lr_vec2_scale (lr_vec2_add (a->outline->centre_m, b->outline->centre_m), 0.5);
  g_array_append_val (study->clashes, clash);
}

/* The part of the outline that is farthest out, and the way back in from there */
static LrVec2
way_in (const LrRoom    *room,
        const LrOutline *outline,
        LrVec2          *at_m)
{
  LrRayHit wall = { 0 };
  LrVec2 worst_m = outline->centre_m;
  double worst_inside_m = HUGE_VAL, inside_m, length_m;
  LrVec2 way;

  for (size_t i = 0; i < outline->n; i++)
    {
      inside_m = lr_polygon_distance_m (room->corners_m, room->n_corners, outline->corner_m[i], NULL);
      if (inside_m < worst_inside_m)
        {
          worst_inside_m = inside_m;
          worst_m = outline->corner_m[i];
        }
    }

  inside_m = lr_polygon_distance_m (room->corners_m, room->n_corners, worst_m, &wall);
  *at_m = wall.at_m;
  way = inside_m < 0.0 ? lr_vec2_sub (wall.at_m, worst_m) : lr_vec2_sub (worst_m, wall.at_m);
  length_m = lr_vec2_length (way);
  if (length_m < SAME_M)
    {
      LrVec2 from_m, along;

      lr_room_wall (room, (int) wall.edge, &from_m, &along, &length_m);
      return lr_vec2_left (along);
    }
  return lr_vec2_scale (way, 1.0 / length_m);
}

static gboolean
is_left_of (const LrOutline *outline,
            LrVec2           from_m,
            LrVec2           way)
{
  for (size_t i = 0; i < outline->n; i++)
    if (lr_vec2_cross (way, lr_vec2_sub (outline->corner_m[i], from_m)) < 0.0)
      return FALSE;

  return outline->n > 0;
}

/* Quick, without a square root: the middle is inside, and each wall is farther off than the footprint reaches or has all of
 * its corners on the inner side */
static gboolean
is_well_inside (const LrRoom    *room,
                const LrOutline *outline)
{
  LrVec2 c = outline->centre_m;
  double r2_m2 = outline->radius_m * outline->radius_m;
  gboolean is_inside = FALSE;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 a = lr_vec2_sub (room->corners_m[i], c);
      LrVec2 b = lr_vec2_sub (room->corners_m[i + 1 < room->n_corners ? i + 1 : 0], c);
      LrVec2 way = lr_vec2_sub (b, a);
      double cross_m2 = lr_vec2_cross (a, b), way2_m2 = lr_vec2_dot (way, way), share = -lr_vec2_dot (a, way);

      gboolean is_near = share <= 0.0 ? lr_vec2_dot (a, a) < r2_m2
                         : share >= way2_m2 ? lr_vec2_dot (b, b) < r2_m2
                                            : cross_m2 * cross_m2 < r2_m2 * way2_m2;

      if (is_near && !is_left_of (outline, room->corners_m[i], way))
        return FALSE;
      if ((a.y > 0.0) != (b.y > 0.0) && (cross_m2 > 0.0) == (b.y > a.y))
        is_inside = !is_inside;
    }

  return is_inside;
}

static double
outside_m (const LrRoom    *room,
           const LrOutline *outline)
{
  if (room->n_corners < 3 || is_well_inside (room, outline))
    return 0.0;

  return lr_outline_outside_m (outline, room->corners_m, room->n_corners);
}

static void
meet_room (LrStudy        *study,
           const LrPlaced *placed)
{
  const LrRoom *room = study->setup->room;
  LrClash clash = { .a = placed };

  if (room->n_corners >= 3 && placed->has_footprint)
    {
      clash.type = LR_CLASH_OUTSIDE;
      clash.depth_m = outside_m (room, &placed->footprint);
      if (clash.depth_m > SAME_M)
        {
          clash.push = way_in (room, &placed->footprint, &clash.at_m);
          g_array_append_val (study->clashes, clash);
        }
    }

  if (room->n_corners >= 3 && !lr_item_kind_info (placed->item->kind)->is_of_room
      && placed->top_m > room->height_m + SAME_M)
    {
      clash = (LrClash) { .type = LR_CLASH_CEILING, .a = placed, .depth_m = placed->top_m - room->height_m,
                          .at_m = placed->at_m };
      g_array_append_val (study->clashes, clash);
    }
}

static int
compare_pieces (gconstpointer a,
                gconstpointer b)
{
  double x_a_m = ((const Piece *) a)->min_x_m, x_b_m = ((const Piece *) b)->min_x_m;

  return (x_a_m > x_b_m) - (x_a_m < x_b_m);
}

/* Everything on the floor; @floors holds the doors' */
static GArray *
collect_pieces (const LrStudy *study,
                GArray        *floors)
{
  GArray *pieces = g_array_sized_new (FALSE, FALSE, sizeof (Piece), study->placed->len + 1);

  g_array_set_size (floors, 0);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (study, i);
      Piece piece = { .placed = placed, .outline = &placed->footprint };
      LrOutline floor;

      if (placed->item->kind == LR_ITEM_DOOR && lr_study_door_floor (study, placed, &floor))
        {
          g_array_append_val (floors, floor);
          piece.outline = &g_array_index (floors, LrOutline, floors->len - 1);
          piece.is_door = TRUE;
        }
      else if (!placed->has_footprint || !isfinite (placed->at_m.x))
        continue;

      bound (&piece);
      g_array_append_val (pieces, piece);
    }
  return pieces;
}

static int
compare_clashes (gconstpointer a,
                 gconstpointer b)
{
  const LrClash *clash_a = a, *clash_b = b;

  if (clash_a->type != clash_b->type)
    return clash_a->type < clash_b->type ? -1 : 1;
  if (clash_a->a != clash_b->a)
    return clash_a->a < clash_b->a ? -1 : 1;
  return (clash_a->b > clash_b->b) - (clash_a->b < clash_b->b);
}

/**
 * lr_study_find_clashes:
 * @study: a study whose items are placed
 *
 * Fills every clash of more than a micrometre, in the order of their types and of the set-up's items. Of two
 * things, a is the one that comes first in the set-up; of a thing and a door, the thing.
 */
void
lr_study_find_clashes (LrStudy *study)
{
  g_autoptr (GArray) floors = g_array_sized_new (FALSE, FALSE, sizeof (LrOutline), study->placed->len + 1);
  g_autoptr (GArray) pieces = collect_pieces (study, floors);

  study->clashes = g_array_new (FALSE, FALSE, sizeof (LrClash));
  g_array_sort (pieces, compare_pieces);
  for (guint i = 0; i < pieces->len; i++)
    {
      const Piece *a = &g_array_index (pieces, Piece, i);

      for (guint j = i + 1; j < pieces->len; j++)
        {
          const Piece *b = &g_array_index (pieces, Piece, j);

          if (b->min_x_m >= a->max_x_m)
            break;
          if (!are_apart (a, b))
            meet (study, a->placed < b->placed ? a : b, a->placed < b->placed ? b : a);
        }
    }

  for (guint i = 0; i < study->placed->len; i++)
    meet_room (study, lr_study_placed_at (study, i));
  g_array_sort (study->clashes, compare_clashes);
}

/* The thing with its footprint as it would stand at another place, facing as it does */
static LrPlaced
moved_to (const LrPlaced *placed,
          LrVec2          at_m)
{
  LrVec2 by = lr_vec2_sub (at_m, placed->at_m);
  LrPlaced moved = *placed;

  moved.at_m = at_m;
  moved.footprint.centre_m = lr_vec2_add (moved.footprint.centre_m, by);
  for (size_t i = 0; i < moved.footprint.n; i++)
    moved.footprint.corner_m[i] = lr_vec2_add (moved.footprint.corner_m[i], by);
  return moved;
}

static gboolean
is_clear (const LrStudy  *study,
          const GArray   *pieces,
          const LrPlaced *placed,
          LrVec2          at_m,
          double          allowed_m,
          gboolean        is_by_legs)
{
  const LrRoom *room = study->setup->room;
  double own_m = is_by_legs ? placed->leg_gap_m : 0.0;
  double door_m = fmax (study->plan->limits.value[LR_LIMIT_OVERLAP] - ROUNDING_M, 0.0);
  LrPlaced moved = moved_to (placed, at_m);
  Piece piece = { .placed = &moved, .outline = &moved.footprint };

  bound (&piece);
  for (guint i = 0; i < pieces->len; i++)
    {
      const Piece *other = &g_array_index (pieces, Piece, i);
      double gaps_m = is_by_legs ? own_m + other->placed->leg_gap_m : 0.0;

      if (other->placed != placed && !are_apart (&piece, other)
          && overlap_m (&piece, other, NULL) > (other->is_door ? door_m : fmax (allowed_m, gaps_m)))
        return FALSE;
    }

  return room->n_corners < 3
         || (lr_polygon_contains (room->corners_m, room->n_corners, moved.footprint.centre_m)
             && outside_m (room, &moved.footprint) <= fmax (allowed_m, own_m));
}

/**
 * lr_study_is_clear:
 * @study: a study
 * @placed: one of its things, with a footprint
 * @at_m: where it might stand [m], facing as it does now
 * @allowed_m: how deep it may stand in others and in walls [m]; in what a door needs the plan's limit holds
 *
 * Returns: whether it would stand clear of others, walls and doors
 */
gboolean
lr_study_is_clear (const LrStudy  *study,
                   const LrPlaced *placed,
                   LrVec2          at_m,
                   double          allowed_m)
{
  g_autoptr (GArray) floors = g_array_sized_new (FALSE, FALSE, sizeof (LrOutline), study->placed->len + 1);
  g_autoptr (GArray) pieces = collect_pieces (study, floors);

  return is_clear (study, pieces, placed, at_m, allowed_m, FALSE);
}

/**
 * lr_study_is_clear_by_legs:
 * @study: a study
 * @placed: one of its things, with a footprint
 * @at_m: where it might stand [m], facing as it does now
 * @allowed_m: how deep it may stand in others and in walls [m]; in what a door needs the plan's limit holds
 *
 * As lr_study_is_clear(), where things may also stand in the gaps between the legs of stands.
 *
 * Returns: whether it would stand clear of others, walls and doors
 */
gboolean
lr_study_is_clear_by_legs (const LrStudy  *study,
                           const LrPlaced *placed,
                           LrVec2          at_m,
                           double          allowed_m)
{
  g_autoptr (GArray) floors = g_array_sized_new (FALSE, FALSE, sizeof (LrOutline), study->placed->len + 1);
  g_autoptr (GArray) pieces = collect_pieces (study, floors);

  return is_clear (study, pieces, placed, at_m, allowed_m, TRUE);
}

/**
 * lr_study_find_clear:
 * @study: a study
 * @placed: one of its things, with a footprint
 * @first_m: where it might stand [m]: looked at first
 * @allowed_m: how deep it may stand in others and in walls [m]; in what a door needs the plan's limit holds
 * @to_m: (out): a place where it is clear, as it faces now [m]
 *
 * After @first_m looks at rings of 10 cm round where the thing stands now, up to a metre, and takes the nearest
 * clear place.
 *
 * Returns: %FALSE, with @to_m untouched, if there is none
 */
gboolean
lr_study_find_clear (const LrStudy  *study,
                     const LrPlaced *placed,
                     LrVec2          first_m,
                     double          allowed_m,
                     LrVec2         *to_m)
{
  g_autoptr (GArray) floors = g_array_sized_new (FALSE, FALSE, sizeof (LrOutline), study->placed->len + 1);
  g_autoptr (GArray) pieces = collect_pieces (study, floors);
  double first_rad = lr_vec2_angle_rad (lr_vec2_sub (first_m, placed->at_m));

  if (is_clear (study, pieces, placed, first_m, allowed_m, FALSE))
    {
      *to_m = first_m;
      return TRUE;
    }

  for (int ring = 1; ring <= N_RINGS; ring++)
    for (int i = 0; i < N_WAYS; i++)
      {
        double turn_rad = 2.0 * LR_PI / N_WAYS * ((i + 1) / 2) * (i % 2 ? 1.0 : -1.0);
        LrVec2 at_m = lr_vec2_add (placed->at_m, lr_vec2_polar (first_rad + turn_rad, ring * RING_M));

        if (is_clear (study, pieces, placed, at_m, allowed_m, FALSE))
          {
            *to_m = at_m;
            return TRUE;
          }
      }

  return FALSE;
}
