/* label_places.c - where labels go
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A label tries the eight directions 8 px off its thing, then 20 px off, and takes the first place that covers no symbol and
 * no other label; if none is free of thin lines, it may cross one, and its halo breaks the line. What finds no place is left
 * out, in the order of ranks; a tag gets a leader instead.
 */

#include "labels_private.h"

#define GAP_NEAR_PX 8.0
#define GAP_FAR_PX 20.0
#define LEADER_MOST_PX 60.0
#define NEARER_PX 2.0

/**
 * lr_labels_block:
 * @labels: labels
 * @shape: what to keep clear
 * @owner: the label whose word it is, or why it is kept clear
 */
void
lr_labels_block (LrLabels *labels,
                 LrShape   shape,
                 int       owner)
{
  shape.owner = owner;
  g_array_append_val (labels->shapes, shape);
}

/**
 * lr_labels_entry_size:
 * @labels: labels
 * @entry: one of them
 * @width: (out): of its tag and text together, device units
 * @height: (out): device units
 */
void
lr_labels_entry_size (const LrLabels     *labels,
                      const LrLabelEntry *entry,
                      double             *width,
                      double             *height)
{
  double px = labels->theme->unit_px;

  *width = entry->has_text ? entry->text_width : 0.0;
  *height = entry->has_text ? entry->text_height : 0.0;
  if (entry->tag == NULL)
    return;

  if (entry->label.is_tag_under)
    {
      *width = MAX (*width, entry->tag_width);
      *height += entry->tag_height + (entry->has_text ? LR_LABEL_UNDER_GAP_PX * px : 0.0);
    }
  else
    {
      *width += entry->tag_width + (entry->has_text ? LR_LABEL_WORD_GAP_PX * px : 0.0);
      *height = MAX (*height, entry->tag_height);
    }
}

/* What a label may stand on, more with each try */
typedef enum { OVER_NOTHING, OVER_LINES, OVER_WORDS } Over;

/* Whether the box is free for a label of a rank; words are those beside tags */
static gboolean
is_free (const LrLabels *labels,
         const LrShape  *box,
         LrLabelRank     rank,
         Over            over)
{
  const LrShape *shapes = (const LrShape *) (gpointer) labels->shapes->data;
  gboolean is_over_furniture = rank >= LR_LABEL_FURNITURE;

  if (rank <= LR_LABEL_NAME && (box->low.x < labels->low.x || box->low.y < labels->low.y || box->high.x > labels->high.x
                                || box->high.y > labels->high.y))
    return FALSE;

  for (guint i = 0; i < labels->shapes->len; i++)
    {
      if ((over >= OVER_WORDS && shapes[i].owner >= 0) || (over >= OVER_LINES && shapes[i].owner == LR_SHAPE_LINE)
          || (is_over_furniture && shapes[i].owner == LR_SHAPE_FURNITURE))
        continue;
      if (lr_shape_meets (box, &shapes[i]))
        return FALSE;
    }

  return TRUE;
}

/* -1, 0 or 1 */
static double
sign (double x)
{
  return fabs (x) < 1e-6 ? 0.0 : copysign (1.0, x);
}

/* How far an outline reaches from its centre */
static double
reach (const LrOutline *outline,
       LrVec2           direction)
{
  double most = 0.0;

  if (outline->n == 0)
    return outline->radius_m;
  for (gsize i = 0; i < outline->n; i++)
    most = MAX (most, lr_vec2_dot (lr_vec2_sub (outline->corner_m[i], outline->centre_m), direction));

  return most;
}

static gboolean
is_upright (const LrOutline *outline)
{
  LrVec2 edge = outline->n > 1 ? lr_vec2_sub (outline->corner_m[1], outline->corner_m[0]) : lr_vec2 (1.0, 1.0);

  return MIN (fabs (edge.x), fabs (edge.y)) < 0.1 * lr_vec2_length (edge);
}

/* The corner that lies farthest in a direction */
static LrVec2
farthest_corner (const LrOutline *outline,
                 LrVec2           direction)
{
  LrVec2 best = outline->corner_m[0];

  for (gsize i = 1; i < outline->n; i++)
    if (lr_vec2_dot (lr_vec2_sub (outline->corner_m[i], best), direction) > 0.0)
      best = outline->corner_m[i];

  return best;
}

/* The point that a label in a direction stands off from: of a disc, on its edge; of an upright box, the corner or the middle of the
 * side; of a turned one, the corner for a diagonal, or else the point of the side's tangent before the middle */
static LrVec2
rim (const LrOutline *outline,
     LrVec2           direction)
{
  if (outline->n > 0 && !is_upright (outline) && sign (direction.x) != 0.0 && sign (direction.y) != 0.0)
    return farthest_corner (outline, direction);
  if (!is_upright (outline))
    return lr_vec2_along (outline->centre_m, direction, reach (outline, direction));

  return lr_vec2 (outline->centre_m.x + sign (direction.x) * reach (outline, lr_vec2 (1.0, 0.0)),
                  outline->centre_m.y + sign (direction.y) * reach (outline, lr_vec2 (0.0, 1.0)));
}

/* Middle of a box that stands so far off the outline in a direction */
static LrVec2
beside (const LrOutline *outline,
        LrVec2           direction,
        double           gap,
        double           width,
        double           height)
{
  LrVec2 nearest = lr_vec2_along (rim (outline, direction), direction, gap);

  return lr_vec2_add (nearest, lr_vec2 (0.5 * width * sign (direction.x), 0.5 * height * sign (direction.y)));
}

/* Nearest distance from the corners of one convex shape to the edges of another */
static double
corners_to_edges (const LrVec2 *corners,
                  gsize         n_corners,
                  const LrVec2 *edges,
                  gsize         n_edges)
{
  double least = HUGE_VAL;

  for (gsize i = 0; i < n_corners; i++)
    for (gsize j = 0; j < n_edges; j++)
      least = MIN (least, lr_segment_distance_m (edges[j], edges[(j + 1) % n_edges], corners[i], NULL));

  return least;
}

/* Gap between a box and an outline that do not meet */
static double
gap_to (const LrShape   *box,
        const LrOutline *outline)
{
  LrVec2 corners[4] = { box->low, { box->high.x, box->low.y }, box->high, { box->low.x, box->high.y } };
  LrVec2 nearest = lr_vec2 (CLAMP (outline->centre_m.x, box->low.x, box->high.x),
                            CLAMP (outline->centre_m.y, box->low.y, box->high.y));

  if (outline->n == 0)
    return lr_vec2_distance (nearest, outline->centre_m) - outline->radius_m;

  return MIN (corners_to_edges (corners, 4, outline->corner_m, outline->n),
              corners_to_edges (outline->corner_m, outline->n, corners, 4));
}

/* A name that stands nearer to somebody else would be read as theirs, unless a leader says whose it is */
static gboolean
is_nearest_to_own (const LrLabels     *labels,
                   const LrLabelEntry *entry,
                   const LrShape      *box)
{
  double own = gap_to (box, &entry->outline);

  for (guint i = 0; i < labels->entries->len; i++)
    {
      const LrLabelEntry *other = g_ptr_array_index (labels->entries, i);

      if (other->n_places > 0 || other->label.rank > LR_LABEL_NAME || other->label.rank == LR_LABEL_FIGURE
          || lr_vec2_distance (other->outline.centre_m, entry->outline.centre_m) < 1.0)
        continue;
      if (gap_to (box, &other->outline) + NEARER_PX < own)
        return FALSE;
    }

  return TRUE;
}

static gboolean
try_beside (LrLabels     *labels,
            LrLabelEntry *entry,
            double        gap,
            int           n_directions,
            Over          over)
{
  double width, height;

  lr_labels_entry_size (labels, entry, &width, &height);
  for (int i = 0; i < n_directions; i++) /* E, SE, S, SW, W, NW, N, NE: y runs down */
    {
      LrVec2 direction = lr_vec2_polar ((entry->label.first + i) * LR_PI / 4.0, 1.0);
      LrVec2 at = beside (&entry->outline, direction, gap * labels->theme->unit_px, width, height);
      LrShape box = lr_shape_box (at, width, height, 0.0);

      if (!is_free (labels, &box, entry->label.rank, over)
          || (gap <= GAP_FAR_PX && entry->label.rank <= LR_LABEL_NAME && !is_nearest_to_own (labels, entry, &box)))
        continue;
      entry->at = at;
      entry->leader_from = rim (&entry->outline, direction);
      entry->leader_to = lr_vec2 (CLAMP (entry->leader_from.x, box.low.x, box.high.x),
                                  CLAMP (entry->leader_from.y, box.low.y, box.high.y));
      return TRUE;
    }

  return FALSE;
}

/* Near rather than far, clear of lines rather than over them */
static gboolean
try_near (LrLabels     *labels,
          LrLabelEntry *entry,
          Over          most)
{
  static const double gaps[] = { GAP_NEAR_PX, GAP_FAR_PX };
  Over least = entry->label.stands_on_lines ? MIN (OVER_LINES, most) : OVER_NOTHING;

  for (gsize i = 0; entry->label.has_first && i < G_N_ELEMENTS (gaps); i++)
    if (try_beside (labels, entry, gaps[i], 1, OVER_NOTHING))
      return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (gaps); i++)
    for (Over over = least; over <= most; over++)
      if (try_beside (labels, entry, gaps[i], 8, over))
        {
          entry->has_leader = gaps[i] > GAP_NEAR_PX && entry->tag != NULL;
          return TRUE;
        }

  return FALSE;
}

/* Never without a place: with a leader if need be, at the worst over something */
static gboolean
force_beside (LrLabels     *labels,
              LrLabelEntry *entry)
{
  double width, height;

  for (double gap = GAP_FAR_PX + 10.0; gap <= LEADER_MOST_PX; gap += 10.0)
    if (try_beside (labels, entry, gap, 8, OVER_WORDS))
      {
        entry->has_leader = TRUE;
        return TRUE;
      }

  lr_labels_entry_size (labels, entry, &width, &height);
  entry->at = beside (&entry->outline, lr_vec2_polar (LR_PI / 4.0, 1.0), GAP_NEAR_PX * labels->theme->unit_px, width, height);
  entry->at.x = MAX (MIN (entry->at.x, labels->high.x - 0.5 * width), labels->low.x + 0.5 * width);
  entry->at.y = MAX (MIN (entry->at.y, labels->high.y - 0.5 * height), labels->low.y + 0.5 * height);

  return TRUE;
}

static gboolean
find_beside (LrLabels     *labels,
             LrLabelEntry *entry)
{
  if (try_near (labels, entry, OVER_LINES))
    return TRUE;

  if (entry->label.text_may_yield && entry->tag != NULL)
    {
      entry->has_text = FALSE;
      if (try_near (labels, entry, OVER_LINES))
        return TRUE;
    }
  if (entry->label.rank <= LR_LABEL_DIMENSION && try_near (labels, entry, OVER_WORDS))
    return TRUE;

  return (entry->tag != NULL || entry->label.rank == LR_LABEL_FIGURE) && force_beside (labels, entry);
}

static gboolean
try_fixed (LrLabels     *labels,
           LrLabelEntry *entry,
           Over          over)
{
  double width, height;

  lr_labels_entry_size (labels, entry, &width, &height);
  for (gsize i = 0; i < entry->n_places; i++)
    {
      LrShape box = lr_shape_box (entry->places[i], width, height, entry->label.angle_rad);

      entry->at = entry->places[i];
      if (is_free (labels, &box, entry->label.rank, over))
        return TRUE;
    }

  return FALSE;
}

static gboolean
find_fixed (LrLabels     *labels,
            LrLabelEntry *entry)
{
  if ((!entry->label.stands_on_lines && try_fixed (labels, entry, OVER_NOTHING)) || try_fixed (labels, entry, OVER_LINES))
    return TRUE;

  entry->at = entry->places[0];

  return entry->label.rank == LR_LABEL_FIGURE;
}

/* Words beside tags that the box covers go */
static void
drop_words (LrLabels      *labels,
            const LrShape *box)
{
  for (guint i = labels->shapes->len; i-- > 0;)
    {
      const LrShape *shape = &g_array_index (labels->shapes, LrShape, i);

      if (shape->owner < 0 || !lr_shape_meets (box, shape))
        continue;
      ((LrLabelEntry *) g_ptr_array_index (labels->entries, shape->owner))->has_text = FALSE;
      g_array_remove_index_fast (labels->shapes, i);
    }
}

/* Keeps the place clear; from here on the place of a label with a tag on its left is the middle of the tag */
static void
claim (LrLabels *labels,
       guint     index)
{
  LrLabelEntry *entry = g_ptr_array_index (labels->entries, index);
  gboolean has_tag_left = entry->tag != NULL && !entry->label.is_tag_under;
  double width, height;
  LrShape box;

  lr_labels_entry_size (labels, entry, &width, &height);
  box = lr_shape_box (entry->at, width, height, entry->label.angle_rad);
  drop_words (labels, &box);

  if (!has_tag_left)
    {
      lr_labels_block (labels, box, LR_SHAPE_FIRM);
      return;
    }

  entry->at.x -= 0.5 * (width - entry->tag_width);
  lr_labels_block (labels, lr_shape_box (entry->at, entry->tag_width, height, 0.0), LR_SHAPE_FIRM);
  if (entry->has_text)
    lr_labels_block (labels, lr_shape_box (lr_vec2 (box.high.x - 0.5 * entry->text_width, entry->at.y), entry->text_width, height, 0.0),
           entry->label.text_may_yield ? (int) index : LR_SHAPE_FIRM);
}

/**
 * lr_labels_place:
 * @labels: labels; everything to keep clear of has been blocked
 *
 * Finds a place for each label, the first rank first, and keeps it clear for those that follow.
 */
void
lr_labels_place (LrLabels *labels)
{
  for (int rank = 0; rank < LR_N_LABEL_RANKS; rank++)
    for (guint i = 0; i < labels->entries->len; i++)
      {
        LrLabelEntry *entry = g_ptr_array_index (labels->entries, i);

        if (entry->label.rank != (LrLabelRank) rank || (entry->text == NULL && entry->tag == NULL))
          continue;
        entry->is_placed = entry->n_places > 0 ? find_fixed (labels, entry) : find_beside (labels, entry);
        if (entry->is_placed)
          claim (labels, i);
      }
}
