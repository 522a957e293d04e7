/* page_chains.c - which dimensions a room is given
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Along each side of the room's box the openings and corners of the walls that face it; the whole length below and on
 * the left; slanting walls, and walls in a recess that no side sees, along themselves. What is given once is not given
 * again (ISO 129-1).
 */

#include "config.h"

#include "page_private.h"

#define SAME_M        0.005 /* ends nearer than this are one */
#define SLOPE         0.035 /* 2°: a wall within it runs along the side (its length then shows 0.06 % short) */
#define ROW_PT        11.0
#define ALIGNED_PT    11.0
#define CLEAR_PT      2.5
#define STUB_PT       8.9   /* of extension lines under and above the room, where the notes of windows stand */

static const double first_row_pt[LR_N_EDGES] = {
  [LR_EDGE_BOTTOM] = 21.0, [LR_EDGE_RIGHT] = 25.0, [LR_EDGE_TOP] = 21.0, [LR_EDGE_LEFT] = 20.0
};

static void
chain_free (gpointer data)
{
  LrChain *chain = data;

  g_array_unref (chain->points);
  g_free (chain);
}

static LrChain *
chain_new (LrEdge edge,
           LrVec2 along,
           LrVec2 out)
{
  LrChain *chain = g_new0 (LrChain, 1);

  chain->edge = edge;
  chain->along = along;
  chain->out = out;
  chain->points = g_array_new (FALSE, FALSE, sizeof (LrChainPoint));
  return chain;
}

static int
compare_points (gconstpointer a,
                gconstpointer b)
{
  const LrChainPoint *p = a, *q = b;

  return (p->at_m > q->at_m) - (p->at_m < q->at_m);
}

/* Of points that coincide the outermost face stays */
static void
chain_add (LrChain *chain,
           LrVec2   at_m)
{
  LrChainPoint point = { lr_vec2_dot (at_m, chain->along), lr_vec2_dot (at_m, chain->out) };

  for (guint i = 0; i < chain->points->len; i++)
    {
      LrChainPoint *other = &g_array_index (chain->points, LrChainPoint, i);

      if (fabs (other->at_m - point.at_m) < SAME_M)
        {
          other->level_m = MAX (other->level_m, point.level_m);
          return;
        }
    }

  g_array_append_val (chain->points, point);
  g_array_sort (chain->points, compare_points);
}

static gboolean
chain_has (const LrChain *chain,
           LrVec2         at_m)
{
  for (guint i = 0; i < chain->points->len; i++)
    if (fabs (g_array_index (chain->points, LrChainPoint, i).at_m - lr_vec2_dot (at_m, chain->along)) < SAME_M)
      return TRUE;

  return FALSE;
}

static LrVec2
edge_out (LrEdge edge)
{
  static const LrVec2 out[LR_N_EDGES] = {
    [LR_EDGE_BOTTOM] = { 0.0, -1.0 }, [LR_EDGE_RIGHT] = { 1.0, 0.0 },
    [LR_EDGE_TOP] = { 0.0, 1.0 }, [LR_EDGE_LEFT] = { -1.0, 0.0 }
  };

  return out[edge];
}

static LrVec2
edge_along (LrEdge edge)
{
  return edge == LR_EDGE_BOTTOM || edge == LR_EDGE_TOP ? lr_vec2 (1.0, 0.0) : lr_vec2 (0.0, 1.0);
}

/* Whether nothing of the room lies between the wall and the side of the sheet that it faces */
static gboolean
wall_is_seen (const LrRoom *room,
              LrVec2        from_m,
              LrVec2        along,
              double        length_m,
              LrVec2        out)
{
  static const double shares[] = { 0.1, 0.5, 0.9 };

  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      LrVec2 start = lr_vec2_along (lr_vec2_along (from_m, along, shares[i] * length_m), out, 1e-3);
      LrRayHit hit;

      if (lr_polygon_ray (room->corners_m, room->n_corners, start, out, &hit))
        return FALSE;
    }

  return TRUE;
}

/* The side that a wall is dimensioned on, or LR_N_EDGES: along itself */
static LrEdge
wall_edge (const LrRoom *room,
           int           wall)
{
  LrVec2 from, along, out;
  double length;

  if (!lr_room_wall (room, wall, &from, &along, &length))
    return LR_N_EDGES;

  out = lr_vec2_scale (lr_vec2_left (along), -1.0);
  for (LrEdge edge = 0; edge < LR_N_EDGES; edge++)
    if (lr_vec2_dot (out, edge_out (edge)) > cos (SLOPE))
      return wall_is_seen (room, from, along, length, edge_out (edge)) ? edge : LR_N_EDGES;

  return LR_N_EDGES;
}

/* Ends of the doors and windows in a wall; returns whether there are any */
static gboolean
add_openings (LrChain       *chain,
              const LrSetup *setup,
              int            wall)
{
  gboolean has_openings = FALSE;
  LrVec2 from, along;
  double length;

  if (!lr_room_wall (setup->room, wall, &from, &along, &length))
    return FALSE;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);
      double width_m;

      if ((item->kind != LR_ITEM_DOOR && item->kind != LR_ITEM_WINDOW) || item->wall != wall)
        continue;

      width_m = item->kind == LR_ITEM_DOOR ? item->door.width_m : item->window.width_m;
      chain_add (chain, lr_vec2_along (from, along, item->along_m));
      chain_add (chain, lr_vec2_along (from, along, item->along_m + width_m));
      has_openings = TRUE;
    }

  return has_openings;
}

/* Both ends of the room's box, from the corners that reach farthest */
static void
add_whole (LrChain      *chain,
           const LrRoom *room)
{
  LrVec2 least = room->corners_m[0], most = room->corners_m[0];

  for (gsize i = 1; i < room->n_corners; i++)
    {
      LrVec2 corner = room->corners_m[i];
      double at = lr_vec2_dot (corner, chain->along), level = lr_vec2_dot (corner, chain->out);
      double at_least = lr_vec2_dot (least, chain->along), at_most = lr_vec2_dot (most, chain->along);

      if (at < at_least - SAME_M || (at < at_least + SAME_M && level > lr_vec2_dot (least, chain->out)))
        least = corner;
      if (at > at_most + SAME_M || (at > at_most - SAME_M && level > lr_vec2_dot (most, chain->out)))
        most = corner;
    }

  chain_add (chain, least);
  chain_add (chain, most);
}

/* Openings and corners along one side */
static LrChain *
side_chain (const LrSetup *setup,
            const LrEdge  *edges,
            LrEdge         edge,
            gboolean      *has_openings)
{
  const LrRoom *room = setup->room;
  LrChain *chain = chain_new (edge, edge_along (edge), edge_out (edge));

  *has_openings = FALSE;
  for (gsize i = 0; i < room->n_corners; i++)
    if (edges[i] == edge)
      {
        *has_openings |= add_openings (chain, setup, (int) i);
        chain_add (chain, room->corners_m[i]);
        chain_add (chain, room->corners_m[(i + 1) % room->n_corners]);
      }

  add_whole (chain, room);
  return chain;
}

/* A corner of this side that the opposite side does not give and that ends no wall dimensioned along itself */
static gboolean
has_new_corner (const LrRoom  *room,
                const LrEdge  *edges,
                const LrChain *opposite,
                LrEdge         edge)
{
  for (gsize i = 0; i < room->n_corners; i++)
    {
      gsize before = (i + room->n_corners - 1) % room->n_corners;

      if ((edges[i] == edge || edges[before] == edge)
          && edges[i] != LR_N_EDGES && edges[before] != LR_N_EDGES
          && !chain_has (opposite, room->corners_m[i]))
        return TRUE;
    }

  return FALSE;
}

static double
outermost_m (const LrRoom *room,
             LrVec2        out)
{
  double level = -HUGE_VAL;

  for (gsize i = 0; i < room->n_corners; i++)
    level = MAX (level, lr_vec2_dot (room->corners_m[i], out));

  return level;
}

/* Puts the chain in the next free row of its side */
static void
take_chain (GPtrArray    *chains,
            LrChain      *chain,
            const LrRoom *room)
{
  guint row = 0;

  for (guint i = 0; i < chains->len; i++)
    {
      const LrChain *other = g_ptr_array_index (chains, i);

      row += !other->is_aligned && other->edge == chain->edge;
    }

  chain->offset_pt = first_row_pt[chain->edge] + ROW_PT * row;
  chain->stubs_pt = first_row_pt[chain->edge] - STUB_PT;
  chain->level_m = outermost_m (room, chain->out);
  g_ptr_array_add (chains, chain);
}

/* A side and, where it is first in reading order, the whole length outside it */
static void
add_side (GPtrArray     *chains,
          const LrSetup *setup,
          const LrEdge  *edges,
          LrEdge         edge,
          const LrChain *opposite)
{
  gboolean has_openings, has_whole = edge == LR_EDGE_BOTTOM || edge == LR_EDGE_LEFT;
  LrChain *chain = side_chain (setup, edges, edge, &has_openings);
  gboolean is_wanted = chain->points->len > 2
                       && (opposite == NULL || has_openings || has_new_corner (setup->room, edges, opposite, edge));

  if (is_wanted)
    take_chain (chains, chain, setup->room);
  else
    chain_free (chain);

  if (has_whole)
    {
      LrChain *whole = chain_new (edge, edge_along (edge), edge_out (edge));

      add_whole (whole, setup->room);
      take_chain (chains, whole, setup->room);
    }
}

static void
add_aligned (GPtrArray     *chains,
             const LrSetup *setup,
             int            wall)
{
  LrVec2 from, along;
  double length;
  LrChain *chain;

  if (!lr_room_wall (setup->room, wall, &from, &along, &length))
    return;

  chain = chain_new (LR_N_EDGES, along, lr_vec2_scale (lr_vec2_left (along), -1.0));
  chain->is_aligned = TRUE;
  chain->level_m = lr_vec2_dot (from, chain->out);
  chain->offset_pt = ALIGNED_PT;
  chain_add (chain, from);
  add_openings (chain, setup, wall);
  chain_add (chain, lr_vec2_along (from, along, length));
  g_ptr_array_add (chains, chain);
}

/**
 * lr_page_chains_new:
 * @setup: a set-up
 *
 * The dimensions that describe its room, each given once.
 *
 * Returns: (transfer full): of #LrChain; empty while the room has no corners
 */
GPtrArray *
lr_page_chains_new (const LrSetup *setup)
{
  GPtrArray *chains = g_ptr_array_new_with_free_func (chain_free);
  const LrRoom *room = setup->room;
  LrEdge edges[LR_MAX_CORNERS];
  gboolean has_openings;
  LrChain *bottom, *right;

  if (room->n_corners < 3 || room->n_corners > LR_MAX_CORNERS)
    return chains;

  for (gsize i = 0; i < room->n_corners; i++)
    edges[i] = wall_edge (room, (int) i);

  bottom = side_chain (setup, edges, LR_EDGE_BOTTOM, &has_openings);
  right = side_chain (setup, edges, LR_EDGE_RIGHT, &has_openings);
  add_side (chains, setup, edges, LR_EDGE_BOTTOM, NULL);
  add_side (chains, setup, edges, LR_EDGE_RIGHT, NULL);
  add_side (chains, setup, edges, LR_EDGE_TOP, bottom);
  add_side (chains, setup, edges, LR_EDGE_LEFT, right);
  chain_free (bottom);
  chain_free (right);

  for (gsize i = 0; i < room->n_corners; i++)
    if (edges[i] == LR_N_EDGES)
      add_aligned (chains, setup, (int) i);

  return chains;
}

/**
 * lr_page_chains_reach_pt:
 * @chains: of #LrChain
 * @edge: a side of the sheet
 *
 * Returns: how far the dimensions reach beyond the outer face on that side [pt], 0 if there are none
 */
double
lr_page_chains_reach_pt (const GPtrArray *chains,
                         LrEdge           edge)
{
  gboolean has_text_outside = edge == LR_EDGE_LEFT || edge == LR_EDGE_TOP;
  double reach = 0.0;

  for (guint i = 0; i < chains->len; i++)
    {
      const LrChain *chain = g_ptr_array_index (chains, i);

      if (!chain->is_aligned && chain->edge == edge)
        reach = MAX (reach, chain->offset_pt + (has_text_outside ? LR_PAGE_NOTE_SIZE + 3.0 : CLEAR_PT));
    }

  return reach;
}
