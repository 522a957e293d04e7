/* labels.c - text beside things, where there is room for it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels are gathered first, with what they must keep clear of, then placed by rank (label_places.c) and drawn.
 */

#include "labels_private.h"

#include <string.h>

#define TAG_BASELINE 0.364 /* of its size below the middle */
#define LINE_HEIGHT 1.28   /* of the size */
#define ASCENT 0.76        /* of the size: from the baseline to the top of what is written */
#define DESCENT 0.21
#define PART_PX 6.0        /* from a figure to the line that it stands on */
#define PARTED_PX 4.0 /* as high as a line is thick, with its halo: more would hide what is beside the figure */

static void
entry_free (gpointer data)
{
  LrLabelEntry *entry = data;

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
  labels->low = lr_vec2 (-HUGE_VAL, -HUGE_VAL);
  labels->high = lr_vec2 (HUGE_VAL, HUGE_VAL);

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

/**
 * lr_labels_set_bounds:
 * @labels: labels
 * @low: device place, upper left
 * @high: device place, lower right
 *
 * Tags, names and figures stay within the box: what is outside it belongs to somebody else.
 */
void
lr_labels_set_bounds (LrLabels *labels,
                      LrVec2    low,
                      LrVec2    high)
{
  labels->low = low;
  labels->high = high;
}

/* What is kept clear */

/**
 * lr_labels_block_disc:
 * @labels: labels
 * @centre: device place
 * @radius: device units
 *
 * Keeps a disc clear of labels.
 */
void
lr_labels_block_disc (LrLabels *labels,
                      LrVec2    centre,
                      double    radius)
{
  lr_labels_block (labels, lr_shape_disc (centre, radius), LR_SHAPE_FIRM);
}

/**
 * lr_labels_block_polygon:
 * @labels: labels
 * @corners: of a convex polygon, device places
 * @n: how many, at most LR_OUTLINE_MAX
 *
 * Keeps it clear of labels.
 */
void
lr_labels_block_polygon (LrLabels     *labels,
                         const LrVec2 *corners,
                         gsize         n)
{
  if (n >= 2)
    lr_labels_block (labels, lr_shape_polygon (corners, n), LR_SHAPE_FIRM);
}

/**
 * lr_labels_block_furniture:
 * @labels: labels
 * @corners: of a convex polygon, device places
 * @n: how many, at most LR_OUTLINE_MAX
 *
 * Keeps it clear of labels but names of furniture and scales.
 */
void
lr_labels_block_furniture (LrLabels     *labels,
                           const LrVec2 *corners,
                           gsize         n)
{
  if (n >= 2)
    lr_labels_block (labels, lr_shape_polygon (corners, n), LR_SHAPE_FURNITURE);
}

/**
 * lr_labels_block_segment:
 * @labels: labels
 * @a: device place
 * @b: device place
 *
 * No label crosses the line between them.
 */
void
lr_labels_block_segment (LrLabels *labels,
                         LrVec2    a,
                         LrVec2    b)
{
  LrVec2 ends[2] = { a, b };

  lr_labels_block (labels, lr_shape_polygon (ends, 2), LR_SHAPE_FIRM);
}

/**
 * lr_labels_avoid_segment:
 * @labels: labels
 * @a: device place
 * @b: device place
 *
 * A label crosses this thin line only if no other place as near is free.
 */
void
lr_labels_avoid_segment (LrLabels *labels,
                         LrVec2    a,
                         LrVec2    b)
{
  LrVec2 ends[2] = { a, b };

  lr_labels_block (labels, lr_shape_polygon (ends, 2), LR_SHAPE_LINE);
}

/**
 * lr_labels_block_box:
 * @labels: labels
 * @x: device units, left
 * @y: device units, top
 * @width: device units
 * @height: device units
 *
 * Keeps a box clear of labels.
 */
void
lr_labels_block_box (LrLabels *labels,
                     double    x,
                     double    y,
                     double    width,
                     double    height)
{
  lr_labels_block (labels, lr_shape_box (lr_vec2 (x + 0.5 * width, y + 0.5 * height), width, height, 0.0), LR_SHAPE_FIRM);
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

static LrLabelEntry *
add_entry (LrLabels      *labels,
           const LrLabel *label)
{
  LrLabelEntry *entry = g_new0 (LrLabelEntry, 1);

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
  LrLabelEntry *entry = add_entry (labels, label);

  entry->n_places = MIN (n, LR_LABEL_MAX_PLACES);
  memcpy (entry->places, places, entry->n_places * sizeof *places);
}

/* Drawing */

static void
draw_text (const LrLabels *labels,
           const LrLabelEntry    *entry,
           double          x,
           double          baseline)
{
  static const double shares[] = { [LR_ALIGN_LEFT] = 0.0, [LR_ALIGN_CENTRE] = 0.5, [LR_ALIGN_RIGHT] = 1.0 };
  const LrLabel *label = &entry->label;

  x += shares[label->style.align] * entry->text_width;
  lr_theme_set_color (labels->cr, label->color, 1.0);
  if (label->has_halo)
    lr_text_draw_on (labels->cr, labels->theme, &label->style, label->halo, x, baseline, entry->text);
  else
    lr_text_draw (labels->cr, labels->theme, &label->style, x, baseline, entry->text);
}

/* The line that a figure stands on ends clear of it: a dash before "35 dB" would make it -35 */
static void
part_line (const LrLabels     *labels,
           const LrLabelEntry *entry)
{
  double half = 0.5 * entry->text_width + PART_PX * labels->theme->unit_px;

  cairo_move_to (labels->cr, -half, 0.0);
  cairo_line_to (labels->cr, half, 0.0);
  lr_theme_set_color (labels->cr, entry->label.halo, 1.0);
  cairo_set_dash (labels->cr, NULL, 0, 0.0);
  cairo_set_line_width (labels->cr, PARTED_PX * labels->theme->unit_px);
  cairo_stroke (labels->cr);
}

static void
draw_turned (const LrLabels *labels,
             const LrLabelEntry    *entry)
{
  cairo_t *cr = labels->cr;

  cairo_save (cr);
  cairo_translate (cr, entry->at.x, entry->at.y);
  cairo_rotate (cr, entry->label.angle_rad);
  if (entry->label.parts_line && entry->label.has_halo)
    part_line (labels, entry);
  draw_text (labels, entry, -0.5 * entry->text_width, -0.5 * entry->text_height + ASCENT * entry->label.style.size);
  cairo_restore (cr);
}

static void
draw_leader (const LrLabels *labels,
             const LrLabelEntry    *entry)
{
  cairo_move_to (labels->cr, entry->leader_from.x, entry->leader_from.y);
  cairo_line_to (labels->cr, entry->leader_to.x, entry->leader_to.y);
  lr_theme_set_color (labels->cr, labels->theme->ink2, 1.0);
  lr_theme_set_line (labels->cr, labels->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (labels->cr);
}

static void
draw_tag (const LrLabels *labels,
          const LrLabelEntry    *entry,
          double          x,
          double          y)
{
  lr_tag_draw (labels->cr, labels->theme, entry->label.tag_kind, entry->tag, entry->label.tag_size, x, y);
}

static void
draw_entry (const LrLabels *labels,
            const LrLabelEntry    *entry)
{
  double px = labels->theme->unit_px, size = entry->label.style.size, width, height;

  if (entry->has_leader)
    draw_leader (labels, entry);

  lr_labels_entry_size (labels, entry, &width, &height);
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
        draw_text (labels, entry, entry->at.x + 0.5 * entry->tag_width + LR_LABEL_WORD_GAP_PX * px,
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
  lr_labels_place (labels);

  for (int rank = LR_N_LABEL_RANKS; rank-- > 0;)
    for (guint i = 0; i < labels->entries->len; i++)
      {
        const LrLabelEntry *entry = g_ptr_array_index (labels->entries, i);

        if (entry->is_placed && entry->label.rank == (LrLabelRank) rank)
          draw_entry (labels, entry);
      }
}
