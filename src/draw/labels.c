/* labels.c - text beside things, where there is room for it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A label tries the eight directions 8 px off its thing, then 20 px off, and takes the first place that covers no symbol and
 * no other label; crossing a thin line is allowed, its halo breaks the line. What finds no place is left out, in the order of
 * ranks; a tag gets a leader instead.
 */

#include "labels.h"

#include "label_shapes.h"
#include "symbols.h"

#include <string.h>

#define GAP_NEAR_PX 8.0
#define GAP_FAR_PX 20.0
#define LEADER_MOST_PX 60.0
#define WORD_GAP_PX 5.5
#define TAG_UNDER_GAP_PX 3.0
#define TAG_BASELINE 0.364 /* of its size below the middle */
#define LINE_HEIGHT 1.28   /* of the size */
#define ASCENT 0.76        /* of the size: from the baseline to the top of what is written */
#define DESCENT 0.21
#define MAX_PLACES 32

typedef struct
{
  LrLabel   label;
  char     *tag, *text;
  double    tag_width, tag_height, text_width, text_height;
  LrOutline outline;          /* to stand beside */
  LrVec2    places[MAX_PLACES];
  gsize     n_places;         /* fixed places; 0: beside the outline */
  gboolean  is_placed, has_text, has_leader;
  LrVec2    at;               /* middle of the whole */
  LrVec2    leader_from, leader_to;
} Entry;

struct _LrLabels
{
  cairo_t       *cr;
  const LrTheme *theme;
  GArray        *shapes;      /* LrShape */
  GPtrArray     *entries;     /* Entry */
};

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  g_free (entry->tag);
  g_free (entry->text);
  g_free (entry);
}

/**
 * lr_labels_new:
 * @cr: a cairo context whose unit is the device's
 * @view: palette
 *
 * Returns: (transfer full): an empty set of labels
 */
LrLabels *
lr_labels_new (cairo_t      *cr,
               const LrView *view)
{
  LrLabels *labels = g_new0 (LrLabels, 1);

  labels->cr = cr;
  labels->theme = view->theme;
  labels->shapes = g_array_new (FALSE, FALSE, sizeof (LrShape));
  labels->entries = g_ptr_array_new_with_free_func (entry_free);

  return labels;
}

/**
 * lr_labels_free:
 * @labels: (transfer full): labels
 */
void
lr_labels_free (LrLabels *labels)
{
  g_array_unref (labels->shapes);
  g_ptr_array_unref (labels->entries);
  g_free (labels);
}

/* What is kept clear */

static void
block (LrLabels *labels,
       LrShape   shape,
       int       owner)
{
  shape.owner = owner;
  g_array_append_val (labels->shapes, shape);
}

void
lr_labels_block_disc (LrLabels *labels,
                      LrVec2    centre,
                      double    radius)
{
  block (labels, lr_shape_disc (centre, radius), LR_SHAPE_FIRM);
}

void
lr_labels_block_polygon (LrLabels     *labels,
                         const LrVec2 *corners,
                         gsize         n)
{
  if (n >= 2)
    block (labels, lr_shape_polygon (corners, n), LR_SHAPE_FIRM);
}

void
lr_labels_block_furniture (LrLabels     *labels,
                           const LrVec2 *corners,
                           gsize         n)
{
  if (n >= 2)
    block (labels, lr_shape_polygon (corners, n), LR_SHAPE_FURNITURE);
}

void
lr_labels_block_segment (LrLabels *labels,
                         LrVec2    a,
                         LrVec2    b)
{
  LrVec2 ends[2] = { a, b };

  block (labels, lr_shape_polygon (ends, 2), LR_SHAPE_FIRM);
}

void
lr_labels_block_box (LrLabels *labels,
                     double    x,
                     double    y,
                     double    width,
                     double    height)
{
  block (labels, lr_shape_box (lr_vec2 (x + 0.5 * width, y + 0.5 * height), width, height, 0.0), LR_SHAPE_FIRM);
}

/* Sizes */

static int
count_lines (const char *text)
{
  int n = 1;

  for (const char *c = strchr (text, '\n'); c != NULL; c = strchr (c + 1, '\n'))
    n++;

  return n;
}

static Entry *
add_entry (LrLabels      *labels,
           const LrLabel *label)
{
  Entry *entry = g_new0 (Entry, 1);

  entry->label = *label;
  entry->tag = g_strdup (label->tag != NULL && *label->tag != '\0' ? label->tag : NULL);
  entry->text = g_strdup (label->text != NULL && *label->text != '\0' ? label->text : NULL);
  entry->has_text = entry->text != NULL;

  if (entry->tag != NULL)
    lr_tag_measure (labels->cr, labels->theme, label->tag_kind, entry->tag, label->tag_size, &entry->tag_width,
                    &entry->tag_height);
  if (entry->text != NULL)
    {
      lr_text_measure (labels->cr, labels->theme, &label->style, entry->text, &entry->text_width, NULL);
      entry->text_height = (ASCENT + DESCENT + LINE_HEIGHT * (count_lines (entry->text) - 1)) * label->style.size;
    }
  g_ptr_array_add (labels->entries, entry);

  return entry;
}

static void
whole_size (const LrLabels *labels,
            const Entry    *entry,
            double         *width,
            double         *height)
{
  double px = labels->theme->unit_px;

  *width = entry->has_text ? entry->text_width : 0.0;
  *height = entry->has_text ? entry->text_height : 0.0;
  if (entry->tag == NULL)
    return;

  if (entry->label.is_tag_under)
    {
      *width = MAX (*width, entry->tag_width);
      *height += entry->tag_height + (entry->has_text ? TAG_UNDER_GAP_PX * px : 0.0);
    }
  else
    {
      *width += entry->tag_width + (entry->has_text ? WORD_GAP_PX * px : 0.0);
      *height = MAX (*height, entry->tag_height);
    }
}

/**
 * lr_labels_add_beside:
 * @labels: labels
 * @label: what to write; its texts are copied
 * @outline: what to stand beside, device units
 */
void
lr_labels_add_beside (LrLabels        *labels,
                      const LrLabel   *label,
                      const LrOutline *outline)
{
  add_entry (labels, label)->outline = *outline;
}

/**
 * lr_labels_add_at:
 * @labels: labels
 * @label: what to write; its texts are copied
 * @places: where its middle may be, the best first
 * @n: how many, > 0
 */
void
lr_labels_add_at (LrLabels      *labels,
                  const LrLabel *label,
                  const LrVec2  *places,
                  gsize          n)
{
  Entry *entry = add_entry (labels, label);

  entry->n_places = MIN (n, MAX_PLACES);
  memcpy (entry->places, places, entry->n_places * sizeof *places);
}

/* Places */

/* Whether the box is free for a label of a rank; @is_over_words: words beside tags do not count */
static gboolean
is_free (const LrLabels *labels,
         const LrShape  *box,
         LrLabelRank     rank,
         gboolean        is_over_words)
{
  const LrShape *shapes = (const LrShape *) (gpointer) labels->shapes->data;
  gboolean is_over_furniture = rank >= LR_LABEL_FURNITURE;

  for (guint i = 0; i < labels->shapes->len; i++)
    {
      if ((is_over_words && shapes[i].owner >= 0) || (is_over_furniture && shapes[i].owner == LR_SHAPE_FURNITURE))
        continue;
      if (lr_shape_meets (box, &shapes[i]))
        return FALSE;
    }

  return TRUE;
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

/* Middle of a box that stands so far off the outline in a direction */
static LrVec2
beside (const LrOutline *outline,
        LrVec2           direction,
        double           gap,
        double           width,
        double           height)
{
  LrVec2 nearest = lr_vec2_along (outline->centre_m, direction, reach (outline, direction) + gap);
  double across = fabs (direction.x) < 1e-6 ? 0.0 : copysign (0.5 * width, direction.x);
  double down = fabs (direction.y) < 1e-6 ? 0.0 : copysign (0.5 * height, direction.y);

  return lr_vec2_add (nearest, lr_vec2 (across, down));
}

static gboolean
try_beside (LrLabels *labels,
            Entry    *entry,
            double    gap,
            gboolean  is_over_words)
{
  double width, height;

  whole_size (labels, entry, &width, &height);
  for (int i = 0; i < 8; i++) /* E, SE, S, SW, W, NW, N, NE: y runs down */
    {
      LrVec2 direction = lr_vec2_polar (i * LR_PI / 4.0, 1.0);
      LrVec2 at = beside (&entry->outline, direction, gap * labels->theme->unit_px, width, height);
      LrShape box = lr_shape_box (at, width, height, 0.0);

      if (!is_free (labels, &box, entry->label.rank, is_over_words))
        continue;
      entry->at = at;
      entry->leader_from = lr_vec2_along (entry->outline.centre_m, direction, reach (&entry->outline, direction));
      entry->leader_to = lr_vec2 (CLAMP (entry->leader_from.x, box.low.x, box.high.x),
                                  CLAMP (entry->leader_from.y, box.low.y, box.high.y));
      return TRUE;
    }

  return FALSE;
}

static gboolean
try_near (LrLabels *labels,
          Entry    *entry,
          gboolean  is_over_words)
{
  return try_beside (labels, entry, GAP_NEAR_PX, is_over_words) || try_beside (labels, entry, GAP_FAR_PX, is_over_words);
}

/* Never without a place: with a leader if need be, at the worst over something */
static gboolean
force_beside (LrLabels *labels,
              Entry    *entry)
{
  double width, height;

  for (double gap = GAP_FAR_PX + 10.0; gap <= LEADER_MOST_PX; gap += 10.0)
    if (try_beside (labels, entry, gap, TRUE))
      {
        entry->has_leader = TRUE;
        return TRUE;
      }

  whole_size (labels, entry, &width, &height);
  entry->at = beside (&entry->outline, lr_vec2_polar (LR_PI / 4.0, 1.0), GAP_NEAR_PX * labels->theme->unit_px, width, height);

  return TRUE;
}

static gboolean
find_beside (LrLabels *labels,
             Entry    *entry)
{
  if (try_near (labels, entry, FALSE))
    return TRUE;

  if (entry->label.text_may_yield && entry->tag != NULL)
    {
      entry->has_text = FALSE;
      if (try_near (labels, entry, FALSE))
        return TRUE;
    }
  if (entry->label.rank <= LR_LABEL_DIMENSION && try_near (labels, entry, TRUE))
    return TRUE;

  return (entry->tag != NULL || entry->label.rank == LR_LABEL_FIGURE) && force_beside (labels, entry);
}

static gboolean
find_fixed (LrLabels *labels,
            Entry    *entry)
{
  double width, height;

  whole_size (labels, entry, &width, &height);
  for (gsize i = 0; i < entry->n_places; i++)
    {
      LrShape box = lr_shape_box (entry->places[i], width, height, entry->label.angle_rad);

      entry->at = entry->places[i];
      if (is_free (labels, &box, entry->label.rank, FALSE))
        return TRUE;
    }

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
      ((Entry *) g_ptr_array_index (labels->entries, shape->owner))->has_text = FALSE;
      g_array_remove_index_fast (labels->shapes, i);
    }
}

/* Keeps the place clear; from here on the place of a label with a tag on its left is the middle of the tag */
static void
claim (LrLabels *labels,
       guint     index)
{
  Entry *entry = g_ptr_array_index (labels->entries, index);
  gboolean has_tag_left = entry->tag != NULL && !entry->label.is_tag_under;
  double width, height;
  LrShape box;

  whole_size (labels, entry, &width, &height);
  box = lr_shape_box (entry->at, width, height, entry->label.angle_rad);
  drop_words (labels, &box);

  if (!has_tag_left)
    {
      block (labels, box, LR_SHAPE_FIRM);
      return;
    }

  entry->at.x -= 0.5 * (width - entry->tag_width);
  block (labels, lr_shape_box (entry->at, entry->tag_width, height, 0.0), LR_SHAPE_FIRM);
  if (entry->has_text)
    block (labels, lr_shape_box (lr_vec2 (box.high.x - 0.5 * entry->text_width, entry->at.y), entry->text_width, height, 0.0),
           entry->label.text_may_yield ? (int) index : LR_SHAPE_FIRM);
}

/* Drawing */

static void
draw_text (const LrLabels *labels,
           const Entry    *entry,
           double          x,
           double          baseline)
{
  const LrLabel *label = &entry->label;

  lr_theme_set_color (labels->cr, label->color, 1.0);
  if (label->has_halo)
    lr_text_draw_on (labels->cr, labels->theme, &label->style, label->halo, x, baseline, entry->text);
  else
    lr_text_draw (labels->cr, labels->theme, &label->style, x, baseline, entry->text);
}

static void
draw_turned (const LrLabels *labels,
             const Entry    *entry)
{
  cairo_t *cr = labels->cr;

  cairo_save (cr);
  cairo_translate (cr, entry->at.x, entry->at.y);
  cairo_rotate (cr, entry->label.angle_rad);
  draw_text (labels, entry, -0.5 * entry->text_width, -0.5 * entry->text_height + ASCENT * entry->label.style.size);
  cairo_restore (cr);
}

static void
draw_leader (const LrLabels *labels,
             const Entry    *entry)
{
  cairo_move_to (labels->cr, entry->leader_from.x, entry->leader_from.y);
  cairo_line_to (labels->cr, entry->leader_to.x, entry->leader_to.y);
  lr_theme_set_color (labels->cr, labels->theme->ink2, 1.0);
  lr_theme_set_line (labels->cr, labels->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (labels->cr);
}

static void
draw_tag (const LrLabels *labels,
          const Entry    *entry,
          double          x,
          double          y)
{
  lr_tag_draw (labels->cr, labels->theme, entry->label.tag_kind, entry->tag, entry->label.tag_size, x, y);
}

static void
draw_entry (const LrLabels *labels,
            const Entry    *entry)
{
  double px = labels->theme->unit_px, size = entry->label.style.size, width, height;

  if (entry->has_leader)
    draw_leader (labels, entry);

  whole_size (labels, entry, &width, &height);
  if (entry->tag == NULL)
    {
      draw_turned (labels, entry);
    }
  else if (entry->label.is_tag_under)
    {
      double top = entry->at.y - 0.5 * height;

      if (entry->has_text)
        draw_text (labels, entry, entry->at.x - 0.5 * entry->text_width, top + ASCENT * size);
      draw_tag (labels, entry, entry->at.x, top + height - 0.5 * entry->tag_height);
    }
  else
    {
      if (entry->has_text)
        draw_text (labels, entry, entry->at.x + 0.5 * entry->tag_width + WORD_GAP_PX * px,
                   entry->at.y + TAG_BASELINE * entry->label.tag_size);
      draw_tag (labels, entry, entry->at.x, entry->at.y);
    }
}

/**
 * lr_labels_draw:
 * @labels: labels; everything to keep clear of has been blocked
 *
 * Finds a place for each label, the first rank first, and draws those that have one.
 */
void
lr_labels_draw (LrLabels *labels)
{
  for (int rank = 0; rank < LR_N_LABEL_RANKS; rank++)
    for (guint i = 0; i < labels->entries->len; i++)
      {
        Entry *entry = g_ptr_array_index (labels->entries, i);

        if (entry->label.rank != (LrLabelRank) rank || (entry->text == NULL && entry->tag == NULL))
          continue;
        entry->is_placed = entry->n_places > 0 ? find_fixed (labels, entry) : find_beside (labels, entry);
        if (entry->is_placed)
          claim (labels, i);
      }

  for (int rank = LR_N_LABEL_RANKS; rank-- > 0;)
    for (guint i = 0; i < labels->entries->len; i++)
      {
        const Entry *entry = g_ptr_array_index (labels->entries, i);

        if (entry->is_placed && entry->label.rank == (LrLabelRank) rank)
          draw_entry (labels, entry);
      }
}
