/* routing.c - the cheapest way over a floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shortest paths among convex outlines bend at their corners alone, so those, grown by what is to be kept clear, are the nodes of
 * a graph, with an edge where one sees another (de Berg et al., Computational Geometry, chapter "Visibility Graphs"); Dijkstra's
 * algorithm walks it. Where the open floor counts more than the floor along walls, the feet of the perpendiculars to the walls are
 * nodes as well: a lead leaves a wall at a right angle, which is the trade's way and a few per cent dearer than a slant. Corners of
 * zones are nodes too.
 *
 * A path is sought round those blocks alone that an earlier path ran into, until none is met: the cheapest way round some of the
 * blocks that meets no other is the cheapest round all. So furniture at the other end of a hall costs one test.
 */

#include "routing_private.h"

#include "domain.h"

#include <stdlib.h>

#define MAX_ACTIVE 32       /* blocks that one path goes round: time grows with their cube */
#define MAX_ACTIVE_ROUND 64 /* where taut strings alone are looked at */
#define BESIDE_ZONE_M 0.05
#define TAUT_M2 1e-9
#define FOOT_REACH_M 0.6 /* a block's corner so near to a wall has its foot there */

typedef struct
{
  LrVec2 at_m;
  double cost_m;   /* of the way to it so far */
  double ahead_m;  /* straight to the end: the rest costs no less */
  size_t before;
  bool   is_done;
  bool   is_corner; /* of a grown block, with the ways along its two sides from there */
  LrVec2 sides[2];
} Node;

typedef struct
{
  const LrRouteFloor *floor;
  LrVec2     from_m, to_m;
  LrRouteShape *grown;     /* of the blocks, where has_grown */
  bool      *is_active, *is_void;
  size_t    *active;       /* indices of blocks */
  size_t     n_active, most_active;
  Node      *nodes;
  size_t     n_nodes;
  size_t     n_fixed;      /* of them: whichever blocks are active */
  size_t     n_listed;     /* active blocks whose nodes are there */
  bool       is_even;      /* a metre counts a metre everywhere: the cheapest path is a taut string */
} Search;

static void
add_node (Search *search,
          LrVec2  at_m)
{
  Node *node;

  if (search->n_nodes > 1 && search->floor->n_room >= 3
      && !lr_polygon_contains (search->floor->room_m, search->floor->n_room, at_m))
    return;

  node = &search->nodes[search->n_nodes++];
  *node = (Node) { .at_m = at_m, .cost_m = HUGE_VAL, .ahead_m = lr_route_far_m (at_m, search->to_m) };
}

/* Wall @i: where a lead along it runs */
static bool
wall_line (const LrRouteFloor *floor,
           size_t              i,
           LrVec2             *from_m,
           LrVec2             *along,
           double             *length_m)
{
  LrVec2 p_m = floor->room_m[i], way = lr_vec2_sub (floor->room_m[i + 1 < floor->n_room ? i + 1 : 0], p_m);

  *length_m = sqrt (lr_vec2_dot (way, way));
  if (!(*length_m > 0.0))
    return false;

  *along = lr_vec2_scale (way, 1.0 / *length_m);
  *from_m = lr_vec2_along (p_m, lr_vec2_left (*along), floor->wall_m);
  return true;
}

static void
add_feet (Search *search,
          LrVec2  of_m,
          double  reach_m)
{
  for (size_t i = 0; i < search->floor->n_room; i++)
    {
      LrVec2 from_m, along, way;
      double length_m, along_m;

      if (!wall_line (search->floor, i, &from_m, &along, &length_m))
        continue;
      way = lr_vec2_sub (of_m, from_m);
      along_m = lr_vec2_dot (way, along);
      if (along_m >= 0.0 && along_m <= length_m && fabs (lr_vec2_cross (along, way)) <= reach_m)
        add_node (search, lr_vec2_along (from_m, along, along_m));
    }
}

/* A corner of the room, where leads along its two walls meet */
static void
add_corner (Search *search,
            size_t  i)
{
  const LrRouteFloor *floor = search->floor;
  LrVec2 a_m, a, b_m, b;
  double length_m, turn;

  if (!wall_line (floor, i > 0 ? i - 1 : floor->n_room - 1, &a_m, &a, &length_m) || !wall_line (floor, i, &b_m, &b, &length_m))
    return;
  turn = lr_vec2_cross (a, b);
  if (fabs (turn) > 0.05)
    add_node (search, lr_vec2_along (a_m, a, lr_vec2_cross (lr_vec2_sub (b_m, a_m), b) / turn));
  else
    add_node (search, b_m);
}

static bool
has_feet (const LrRouteFloor *floor)
{
  return floor->open_times > 1.0 && floor->n_room >= 3;
}

static void
add_shape (Search             *search,
           const LrRouteShape *shape,
           bool                with_feet)
{
  for (size_t i = 0; i < shape->n; i++)
    {
      size_t at = search->n_nodes;

      add_node (search, shape->corner_m[i]);
      if (search->n_nodes > at)
        {
          search->nodes[at].is_corner = true;
          search->nodes[at].sides[0] = lr_vec2_sub (shape->corner_m[i > 0 ? i - 1 : shape->n - 1], shape->corner_m[i]);
          search->nodes[at].sides[1] = lr_vec2_sub (shape->corner_m[i + 1 < shape->n ? i + 1 : 0], shape->corner_m[i]);
        }
      if (with_feet)
        add_feet (search, shape->corner_m[i], FOOT_REACH_M);
    }
}

/* Along a zone's edge that lies on a wall a metre would count as out of it: instead of a corner at a wall, places beside it on the line
 * where leads run */
static void
add_zone_corner (Search *search,
                 LrVec2  corner_m)
{
  const LrRouteFloor *floor = search->floor;
  LrVec2 from_m, along;
  double length_m, along_m;
  LrRayHit wall;

  if (floor->n_room < 3 || lr_polygon_distance_m (floor->room_m, floor->n_room, corner_m, &wall) > 0.5 * floor->wall_m)
    {
      add_node (search, corner_m);
      return;
    }
  if (!wall_line (floor, wall.edge, &from_m, &along, &length_m))
    return;
  along_m = lr_vec2_dot (lr_vec2_sub (corner_m, from_m), along);
  add_node (search, lr_vec2_along (from_m, along, along_m - BESIDE_ZONE_M));
  add_node (search, lr_vec2_along (from_m, along, along_m + BESIDE_ZONE_M));
}

/* What is there whichever blocks are active: both ends, the room's corners, zones, and feet */
static void
list_fixed_nodes (Search *search)
{
  const LrRouteFloor *floor = search->floor;

  add_node (search, search->from_m);
  add_node (search, search->to_m);
  for (size_t i = 0; i < floor->n_room; i++)
    add_corner (search, i);
  if (has_feet (floor))
    {
      add_feet (search, search->from_m, HUGE_VAL);
      add_feet (search, search->to_m, HUGE_VAL);
    }
  for (size_t i = 0; i < floor->n_zones; i++)
    for (size_t j = 0; j < floor->zones[i].n; j++)
      add_zone_corner (search, floor->zones[i].corner_m[j]);
  search->n_fixed = search->n_nodes;
}

/* No path bends within another block */
static bool
is_inside_shape (const Search *search,
                 LrVec2        at_m)
{
  for (size_t i = 0; i < search->n_active; i++)
    {
      const LrRouteShape *shape = &search->grown[search->active[i]];
      bool is_inside = lr_route_far_m (at_m, shape->centre_m) < shape->radius_m;

      for (size_t j = 0; j < shape->n && is_inside; j++)
        {
          LrVec2 side = lr_vec2_sub (shape->corner_m[j + 1 < shape->n ? j + 1 : 0], shape->corner_m[j]);

          is_inside = lr_vec2_cross (side, lr_vec2_sub (at_m, shape->corner_m[j])) > 2.0 * LR_ROUTE_TOUCH_M * (fabs (side.x) + fabs (side.y));
        }
      if (is_inside)
        return true;
    }

  return false;
}

/* Those of the active blocks that are new since, and all as if unvisited */
static void
list_nodes (Search *search)
{
  if (search->n_fixed == 0)
    list_fixed_nodes (search);
  for (; search->n_listed < search->n_active; search->n_listed++)
    add_shape (search, &search->grown[search->active[search->n_listed]], has_feet (search->floor));
  for (size_t i = 0; i < search->n_nodes; i++)
    {
      search->nodes[i].cost_m = HUGE_VAL;
      search->nodes[i].is_done = i > 1 && is_inside_shape (search, search->nodes[i].at_m);
    }
}

/* A taut string touches a corner: both sides of it lie to one side of the string */
static bool
is_taut (const Node *node,
         LrVec2      way)
{
  double a = lr_vec2_cross (way, node->sides[0]), b = lr_vec2_cross (way, node->sides[1]);

  return !node->is_corner || !((a > TAUT_M2 && b < -TAUT_M2) || (a < -TAUT_M2 && b > TAUT_M2));
}

static bool
may_go (const Search *search,
        const Node   *from,
        const Node   *to)
{
  LrVec2 way = lr_vec2_sub (to->at_m, from->at_m);

  return !search->is_even || (is_taut (from, way) && is_taut (to, way));
}

static bool
is_seen (const Search *search,
         LrVec2        a_m,
         LrVec2        b_m)
{
  for (size_t i = 0; i < search->n_active; i++)
    if (lr_route_meets (&search->grown[search->active[i]], a_m, b_m))
      return false;
  if (search->floor->n_room < 3)
    return true;

  return !lr_route_leaves_room (search->floor, a_m, b_m)
         && lr_polygon_contains (search->floor->room_m, search->floor->n_room, lr_vec2_scale (lr_vec2_add (a_m, b_m), 0.5));
}

static Node *
cheapest (Search *search)
{
  Node *best = NULL;

  for (size_t i = 0; i < search->n_nodes; i++)
    {
      Node *node = &search->nodes[i];

      if (!node->is_done && isfinite (node->cost_m) && (best == NULL || node->cost_m + node->ahead_m < best->cost_m + best->ahead_m))
        best = node;
    }

  return best;
}

/* Dijkstra's algorithm, drawn towards the end by the straight way to it (Hart, Nilsson and Raphael 1968) */
static bool
walk (Search *search)
{
  Node *node;

  list_nodes (search);
  search->nodes[0].cost_m = 0.0;
  while ((node = cheapest (search)) != NULL)
    {
      size_t at = (size_t) (node - search->nodes);

      if (at == 1)
        return true;
      node->is_done = true;
      for (size_t i = 1; i < search->n_nodes; i++)
        {
          Node *next = &search->nodes[i];
          double cost_m, most_m;

          if (next->is_done || !may_go (search, node, next))
            continue;
          most_m = fmin (next->cost_m, search->nodes[1].cost_m + LR_ROUTE_TOUCH_M - next->ahead_m);
          if (node->cost_m + lr_route_far_m (node->at_m, next->at_m) >= most_m)
            continue;
          cost_m = node->cost_m + lr_route_step_cost_m (search->floor, node->at_m, next->at_m, most_m - node->cost_m);
          if (cost_m >= most_m || !is_seen (search, node->at_m, next->at_m))
            continue;
          next->cost_m = cost_m;
          next->before = at;
        }
    }

  return false;
}

static bool
has_grown (Search *search,
           size_t  block)
{
  if (!search->is_void[block] && search->grown[block].n == 0
      && !lr_route_grow (search->floor, &search->floor->blocks[block], search->from_m, search->to_m, &search->grown[block]))
    search->is_void[block] = true;

  return !search->is_void[block];
}

/* Blocks that the path found runs into become active */
static bool
add_met (Search *search,
         bool   *has_room)
{
  bool is_met = false;

  for (size_t i = 0; i < search->floor->n_blocks; i++)
    {
      if (search->is_active[i] || !has_grown (search, i))
        continue;
      for (size_t at = 1; at != 0; at = search->nodes[at].before)
        if (lr_route_meets (&search->grown[i], search->nodes[at].at_m, search->nodes[search->nodes[at].before].at_m))
          {
            *has_room = search->n_active < search->most_active;
            if (!*has_room)
              return true;
            search->is_active[i] = is_met = true;
            search->active[search->n_active++] = i;
            break;
          }
    }

  return is_met;
}

static bool
tell (const Search *search,
      LrVec2       *path_m,
      size_t        max,
      size_t       *n)
{
  size_t n_points = 1;

  for (size_t at = 1; at != 0; at = search->nodes[at].before)
    n_points++;
  if (n_points > max)
    return false;

  *n = n_points;
  for (size_t at = 1; n_points > 0; at = search->nodes[at].before)
    path_m[--n_points] = search->nodes[at].at_m;
  return true;
}

static LrRouteResult
seek (Search *search)
{
  bool has_room = true;

  do
    if (!walk (search))
      return LR_ROUTE_NONE;
  while (add_met (search, &has_room) && has_room);

  return has_room ? LR_ROUTE_FOUND : LR_ROUTE_GIVEN_UP;
}

static bool
is_floor (const LrRouteFloor *floor)
{
  return lr_is_at_least_zero (floor->clear_m) && lr_is_at_least_zero (floor->wall_m) && lr_is_at_least_zero (floor->band_m)
         && isfinite (floor->open_times) && floor->open_times >= 1.0 && isfinite (floor->zone_times) && floor->zone_times >= 1.0;
}

/**
 * lr_route_seek:
 * @floor: a floor
 * @from_m: where the path begins, in the room or on its wall [m]
 * @to_m: where it ends [m]
 * @path_m: (out) (array length=max): its points [m]
 * @max: how many points @path_m takes
 * @n: (out): how many there are, both ends among them
 *
 * The cheapest of the paths that bend at corners and at feet of perpendiculars. With open_times 1 and no zones it is the shortest.
 *
 * Returns: what came of it; the outputs are untouched unless a way was found
 */
LrRouteResult
lr_route_seek (const LrRouteFloor *floor,
               LrVec2              from_m,
               LrVec2              to_m,
               LrVec2             *path_m,
               size_t              max,
               size_t             *n)
{
  bool is_even = !(floor->open_times > 1.0) && (floor->n_zones == 0 || !(floor->zone_times > 1.0));
  size_t most_active = is_even && floor->is_round ? MAX_ACTIVE_ROUND : MAX_ACTIVE;
  Search search = { .floor = floor, .from_m = from_m, .to_m = to_m, .most_active = most_active, .is_even = is_even };
  size_t n_points = 2 + most_active * (floor->is_round ? LR_ROUTE_CORNERS : LR_OUTLINE_MAX) + 2 * floor->n_zones * LR_OUTLINE_MAX + floor->n_room;
  LrRouteResult result = LR_ROUTE_GIVEN_UP;

  if (!is_floor (floor) || !lr_vec2_is_finite (from_m) || !lr_vec2_is_finite (to_m))
    return LR_ROUTE_GIVEN_UP;

  search.nodes = malloc (n_points * (1 + (floor->open_times > 1.0 ? floor->n_room : 0)) * sizeof *search.nodes);
  search.grown = calloc (floor->n_blocks + 1, sizeof *search.grown);
  search.is_active = calloc (2 * (floor->n_blocks + 1), sizeof *search.is_active);
  search.active = malloc (most_active * sizeof *search.active);
  if (search.nodes != NULL && search.grown != NULL && search.is_active != NULL && search.active != NULL)
    {
      search.is_void = search.is_active + floor->n_blocks + 1;
      result = seek (&search);
      if (result == LR_ROUTE_FOUND && !tell (&search, path_m, max, n))
        result = LR_ROUTE_GIVEN_UP;
    }

  free (search.active);
  free (search.is_active);
  free (search.grown);
  free (search.nodes);
  return result;
}

/**
 * lr_route_find:
 * @floor: a floor
 * @from_m: where the path begins [m]
 * @to_m: where it ends [m]
 * @path_m: (out) (array length=max): its points [m]
 * @max: how many points @path_m takes
 * @n: (out): how many there are
 *
 * Returns: whether lr_route_seek() found one; else the outputs are untouched
 */
bool
lr_route_find (const LrRouteFloor *floor,
               LrVec2              from_m,
               LrVec2              to_m,
               LrVec2             *path_m,
               size_t              max,
               size_t             *n)
{
  return lr_route_seek (floor, from_m, to_m, path_m, max, n) == LR_ROUTE_FOUND;
}

/**
 * lr_route_is_free:
 * @floor: a floor
 * @path_m: (array length=n): a path [m]
 * @n: how many points
 *
 * Returns: whether it leaves the room nowhere and goes through no block
 */
bool
lr_route_is_free (const LrRouteFloor *floor,
                  const LrVec2       *path_m,
                  size_t              n)
{
  LrRouteShape grown;

  for (size_t i = 1; i < n; i++)
    if (floor->n_room >= 3 && lr_route_leaves_room (floor, path_m[i - 1], path_m[i]))
      return false;
  for (size_t b = 0; n > 0 && b < floor->n_blocks; b++)
    {
      if (!lr_route_grow (floor, &floor->blocks[b], path_m[0], path_m[n - 1], &grown))
        continue;
      for (size_t i = 1; i < n; i++)
        if (lr_route_meets (&grown, path_m[i - 1], path_m[i]))
          return false;
    }

  return true;
}
