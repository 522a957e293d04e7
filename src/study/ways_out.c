/* ways_out.c - how wide the way out is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A person who leaves needs a width all the way, at the height of the hips and shoulders: what hangs higher than two metres is not in the
 * way. From the seat the nearest thing may be passed sideways. A way out need not be wider than its door, which counts as well: of several
 * the one counts whose narrowest place, way or door, is widest. A wheelchair's door may be narrower than its way. What is not found out, for
 * too much stands there or too many people are, is told as not known.
 */

#include "ground.h"
#include "power_readings.h"

#define OVERHEAD_M 2.0
#define LEAST_WIDTH_M 0.25
#define NO_WIDTH_M 0.01 /* a limit that is none */
#define N_HALVINGS 6
#define WALL_HALF_M 0.001
#define MAX_TRIED 6   /* things that may be what makes it narrow */
#define MAX_PEOPLE 40 /* whose ways are looked at */
#define N_WAYS 8      /* in which the blocker is moved */
#define N_STEPS 6
#define STEP_M 0.15
#define SPARE_M 0.002

static void
add_walls (LrGround     *ground,
           const LrRoom *room)
{
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 from_m, along;
      double length_m;
      LrOutline wall;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m))
        continue;
      wall = lr_outline_box (lr_vec2_along (from_m, along, 0.5 * length_m), length_m, 2.0 * WALL_HALF_M, lr_vec2_angle_rad (along));
      lr_ground_add (ground, &wall, NULL);
    }
}

static void
stand_in_the_way (LrGround     *ground,
                  const LrStudy  *study,
                  const LrPlaced *person,
                  const LrPlaced *moved,
                  LrVec2          moved_to_m)
{
  lr_ground_begin (ground, study);
  add_walls (ground, study->setup->room);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrOutline outline = placed->footprint;
      LrVec2 by = { 0.0, 0.0 };

      if (placed == person || !placed->has_footprint || placed->bottom_m >= OVERHEAD_M)
        continue;
      if (placed == moved)
        {
          if (!lr_vec2_is_finite (moved_to_m))
            continue;
          by = lr_vec2_sub (moved_to_m, placed->at_m);
        }
      outline.centre_m = lr_vec2_add (outline.centre_m, by);
      for (gsize j = 0; j < outline.n; j++)
        outline.corner_m[j] = lr_vec2_add (outline.corner_m[j], by);
      lr_ground_add (ground, &outline, placed);
    }
  lr_ground_end (ground);
}

/* As wide as asked for, to the middle of the door and half the width before it */
static LrRouteResult
get_through (LrGround     *ground,
             const LrPlaced *person,
             const LrPlaced *door,
             double          width_m,
             LrVec2         *path_m,
             gsize          *n)
{
  LrVec2 inward = lr_vec2_polar (door->facing_rad, 1.0);

  ground->floor.clear_m = ground->floor.wall_m = 0.5 * width_m - WALL_HALF_M;
  ground->floor.is_end_strict = TRUE;
  ground->floor.is_round = TRUE;
  return lr_route_seek (&ground->floor, person->at_m, lr_vec2_along (door->at_m, inward, 0.5 * width_m + WALL_HALF_M),
                        path_m, LR_WAY_POINTS, n);
}

/**
 * lr_study_gets_out:
 * @study: a study
 * @person: who leaves
 * @door: by which door
 * @width_m: how wide a way is wanted [m]
 * @moved: (nullable): a thing that stands elsewhere
 * @at_m: where; not finite: nowhere [m]
 *
 * Returns: whether there is a way as wide as that, the door's own width left aside
 */
gboolean
lr_study_gets_out (const LrStudy  *study,
                   const LrPlaced *person,
                   const LrPlaced *door,
                   double          width_m,
                   const LrPlaced *moved,
                   LrVec2          at_m)
{
  g_auto (LrGround) ground;
  LrVec2 path_m[LR_WAY_POINTS];
  gsize n;

  stand_in_the_way (&ground, study, person, moved, at_m);
  return get_through (&ground, person, door, width_m, path_m, &n) == LR_ROUTE_FOUND;
}

/* What a path of the wanted width runs into: the path that there is, else the straight way to the door. What may be moved comes first */
static const LrPlaced *
find_blocker (const LrStudy  *study,
              const LrGround *ground,
              const LrWayOut *way)
{
  LrVec2 straight_m[2] = { way->person->at_m, way->door->at_m };
  const LrVec2 *path_m = way->n_path > 0 ? way->path_m : straight_m;
  gsize n = way->n_path > 0 ? way->n_path : 2;
  const LrPlaced *fixed = NULL;
  guint n_tried = 0;

  for (guint i = 0; i < ground->blocks->len && n_tried < MAX_TRIED; i++)
    {
      const LrPlaced *placed = g_ptr_array_index (ground->of, i);
      LrRouteFloor alone = ground->floor;
      gboolean stays;

      alone.blocks = &g_array_index (ground->blocks, LrOutline, i);
      alone.n_blocks = 1;
      alone.clear_m = 0.5 * way->wanted_m;
      if (placed == NULL || lr_route_is_free (&alone, path_m, n))
        continue;
      stays = placed->item->kind == LR_ITEM_PERSON || (placed->item->kind == LR_ITEM_FURNITURE && placed->item->furniture.is_fixed);
      if (stays && fixed != NULL)
        continue;
      n_tried++;
      if (!lr_study_gets_out (study, way->person, way->door, way->wanted_m, placed, lr_vec2 (NAN, NAN)))
        continue;
      if (!stays)
        return placed;
      fixed = placed;
    }

  return fixed;
}

/* FALSE: not known */
static gboolean
narrow_down (LrGround *ground,
             LrWayOut *way)
{
  double low_m = fmin (LEAST_WIDTH_M, 0.5 * way->wanted_m), high_m = way->wanted_m;
  LrRouteResult result = get_through (ground, way->person, way->door, low_m, way->path_m, &way->n_path);

  if (result != LR_ROUTE_FOUND)
    return result == LR_ROUTE_NONE;

  for (int i = 0; i < N_HALVINGS; i++)
    {
      double middle_m = 0.5 * (low_m + high_m);

      result = get_through (ground, way->person, way->door, middle_m, way->path_m, &way->n_path);
      if (result == LR_ROUTE_GIVEN_UP)
        return FALSE;
      if (result == LR_ROUTE_FOUND)
        low_m = middle_m;
      else
        high_m = middle_m;
    }
  way->width_m = low_m;
  return TRUE;
}

/**
 * lr_study_way_out:
 * @study: a study
 * @person: who leaves
 * @door: by which door
 * @wanted_m: how wide a way is wanted [m]
 * @way: (out): what there is
 *
 * Returns: %FALSE, with @way untouched, without a room, or if it is not known: too much stands in the way
 */
gboolean
lr_study_way_out (const LrStudy  *study,
                  const LrPlaced *person,
                  const LrPlaced *door,
                  double          wanted_m,
                  LrWayOut       *way)
{
  LrWayOut found = { .person = person, .door = door, .limit_m = wanted_m, .wanted_m = wanted_m };
  g_auto (LrGround) ground;
  LrRouteResult result;

  stand_in_the_way (&ground, study, person, NULL, lr_vec2 (NAN, NAN));
  if (study->setup->room->n_corners < 3 || !(wanted_m > NO_WIDTH_M) || !lr_vec2_is_finite (door->at_m))
    return FALSE;

  result = get_through (&ground, person, door, wanted_m, found.path_m, &found.n_path);
  if (result == LR_ROUTE_GIVEN_UP)
    return FALSE;
  if (result == LR_ROUTE_FOUND)
    found.width_m = wanted_m;
  else
    {
      if (!narrow_down (&ground, &found))
        return FALSE;
      found.blocker = find_blocker (study, &ground, &found);
    }

  *way = found;
  return TRUE;
}

/* The smallest move of the blocker that opens the way */
static void
find_clearing (const LrStudy *study,
               LrWayOut      *way)
{
  const LrPlaced *blocker = way->blocker;

  if (blocker == NULL || blocker->item->kind == LR_ITEM_PERSON
      || (blocker->item->kind == LR_ITEM_FURNITURE && blocker->item->furniture.is_fixed))
    return;

  for (int step = 1; step <= N_STEPS; step++)
    for (int i = 0; i < N_WAYS; i++)
      {
        LrVec2 to_m = lr_vec2_add (blocker->at_m, lr_vec2_polar (2.0 * LR_PI * i / N_WAYS, step * STEP_M));

        if (!lr_study_is_clear_by_legs (study, blocker, to_m, study->plan->limits.value[LR_LIMIT_OVERLAP])
            || !lr_study_gets_out (study, way->person, way->door, way->wanted_m + SPARE_M, blocker, to_m))
          continue;
        way->has_clearing = TRUE;
        way->clearing_m = to_m;
        return;
      }
}

typedef enum
{
  BEST_NONE,    /* no door counts */
  BEST_UNKNOWN, /* some may, but it is not known */
  BEST_FOUND,
} Best;

/* What is asked of a way and of its door */
typedef struct
{
  double   way_m, door_m;
  gboolean is_exit; /* only doors that are a way out, and a way need not be wider than its door */
} Asked;

static gboolean
counts (const LrPlaced *placed,
        const Asked    *asked)
{
  return placed->item->kind == LR_ITEM_DOOR && lr_vec2_is_finite (placed->at_m) && (!asked->is_exit || placed->item->door.is_exit);
}

static gboolean
fits (const LrWayOut *way,
      const Asked    *asked)
{
  return way->width_m >= asked->way_m && way->door->item->door.width_m >= asked->door_m;
}

/* The first way that is wide enough, else that whose narrowest place is widest */
static Best
find_best_way (const LrStudy  *study,
               const LrPlaced *person,
               const Asked    *asked,
               LrWayOut       *best)
{
  Best result = BEST_NONE;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *door = &g_array_index (study->placed, LrPlaced, i);
      LrWayOut way;
      double way_m;

      if (!counts (door, asked))
        continue;
      way_m = asked->is_exit ? fmin (asked->way_m, door->item->door.width_m) : asked->way_m;
      if (result == BEST_FOUND && door->item->door.width_m < fmin (asked->door_m, lr_way_out_clear_m (best)))
        continue;
      if (!lr_study_way_out (study, person, door, way_m, &way))
        {
          result = MAX (result, BEST_UNKNOWN);
          continue;
        }
      way.limit_m = asked->way_m;
      if (result != BEST_FOUND || fits (&way, asked) || lr_way_out_clear_m (&way) > lr_way_out_clear_m (best))
        *best = way;
      result = BEST_FOUND;
      if (fits (&way, asked))
        break;
    }

  return result;
}

static void
add_unknown (GArray         *ways,
             const LrPlaced *person,
             double          limit_m,
             gboolean        is_wheelchair)
{
  LrWayOut way = { .person = person, .limit_m = limit_m, .is_wheelchair = is_wheelchair, .is_unknown = TRUE };

  g_array_append_val (ways, way);
}

/* From all seats to a way out */
static void
add_exits (const LrStudy *study,
           GArray        *ways)
{
  double width_m = study->plan->limits.value[LR_LIMIT_EXIT_WIDTH];
  Asked asked = { width_m, width_m, TRUE };
  LrWayOut way, worst = { .person = NULL };
  guint n_people = 0;

  if (study->setup->room->n_corners < 3 || !(width_m > NO_WIDTH_M))
    return;
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *person = &g_array_index (study->placed, LrPlaced, i);
      Best best;

      if (person->item->kind != LR_ITEM_PERSON)
        continue;
      best = n_people++ < MAX_PEOPLE ? find_best_way (study, person, &asked, &way) : BEST_UNKNOWN;
      if (best == BEST_NONE)
        return;
      if (best == BEST_UNKNOWN)
        add_unknown (ways, person, asked.way_m, FALSE);
      else if (worst.person == NULL || lr_way_out_clear_m (&way) < lr_way_out_clear_m (&worst))
        worst = way;
    }
  if (worst.person == NULL)
    return;
  find_clearing (study, &worst);
  g_array_append_val (ways, worst);
}

/* From any door to the place */
static void
add_wheelchair (const LrStudy  *study,
                const LrPlaced *person,
                GArray         *ways)
{
  Asked asked = { study->plan->limits.value[LR_LIMIT_WHEELCHAIR], LR_WHEELCHAIR_DOOR_M, FALSE };
  LrWayOut way;
  Best best = asked.way_m > NO_WIDTH_M && study->setup->room->n_corners >= 3 ? find_best_way (study, person, &asked, &way) : BEST_NONE;

  if (best == BEST_UNKNOWN)
    add_unknown (ways, person, asked.way_m, TRUE);
  if (best != BEST_FOUND)
    return;
  way.is_wheelchair = TRUE;
  find_clearing (study, &way);
  g_array_append_val (ways, way);
}

/**
 * lr_study_ways_out:
 * @study: a study
 * @ways: (element-type LrWayOut): where to add them
 *
 * Adds the ways to a way out that are not known, the narrowest of those that are, and the ways of wheelchairs to their places.
 */
void
lr_study_ways_out (const LrStudy *study,
                   GArray        *ways)
{
  add_exits (study, ways);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *person = &g_array_index (study->placed, LrPlaced, i);

      if (person->item->kind == LR_ITEM_PERSON && person->item->person.uses_wheelchair)
        add_wheelchair (study, person, ways);
    }
}
