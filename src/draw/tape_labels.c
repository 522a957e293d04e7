/* tape_labels.c - tags and names beside marks on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "symbols.h"
#include "tape_drawing_private.h"

#define BESIDE_PT   7.0  /* from a mark to its label */
#define LAST_TRY   40    /* eight ways, in rings */

/* What stands beside a mark: its tag or name, over a second line if there is one */
typedef struct
{
  const LrItem *item;
  const char   *note;
  double        width, height;
} Label;

static char *
name_of (const LrItem *item)
{
  return item->name[0] != '\0' ? g_strdup (item->name) : lr_item_title (item);
}

static Label
measure_label (const LrTapeDrawing *self,
               const LrTapeMark    *mark,
               const char          *note)
{
  Label label = { mark->placed->item, note, 0.0, 0.0 };
  double note_width = note != NULL ? lr_page_text_width (self->sheet, LR_TAPE_FIGURE_PT, PANGO_WEIGHT_NORMAL, note) : 0.0;

  if (label.item->tag[0] != '\0')
    lr_tag_measure (self->cr, self->sheet->theme, label.item->kind, label.item->tag, LR_TAPE_TAG_PT, &label.width, &label.height);
  else
    {
      g_autofree char *name = name_of (label.item);

      label.width = lr_page_text_width (self->sheet, LR_TAPE_TAG_PT, PANGO_WEIGHT_SEMIBOLD, name);
      label.height = 1.3 * LR_TAPE_TAG_PT;
    }
  label.width = MAX (label.width, note_width) + 2.0;
  label.height += (note != NULL ? 1.25 * LR_TAPE_FIGURE_PT : 0.0) + 1.0;
  return label;
}

static void
draw_label_at (const LrTapeDrawing *self,
               const Label         *label,
               LrVec2               at)
{
  const LrTheme *theme = self->sheet->theme;
  const LrTextStyle style = { .size = LR_TAPE_TAG_PT, .weight = PANGO_WEIGHT_SEMIBOLD, .align = LR_ALIGN_CENTRE };
  const LrTextStyle note_style = { .size = LR_TAPE_FIGURE_PT, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  double middle = at.y - (label->note != NULL ? 0.625 * LR_TAPE_FIGURE_PT : 0.0);

  if (label->item->tag[0] != '\0')
    lr_tag_draw (self->cr, theme, label->item->kind, label->item->tag, LR_TAPE_TAG_PT, at.x, middle);
  else
    {
      g_autofree char *name = name_of (label->item);

      lr_theme_set_color (self->cr, theme->ink, 1.0);
      lr_text_draw_halo (self->cr, theme, &style, at.x, middle + 0.36 * LR_TAPE_TAG_PT, name);
    }
  if (label->note == NULL)
    return;

  lr_theme_set_color (self->cr, theme->ink, 1.0);
  lr_text_draw_halo (self->cr, theme, &note_style, at.x, at.y + 0.5 * label->height - 0.2 * LR_TAPE_FIGURE_PT, label->note);
}

static gboolean
is_in_room (const LrTapeDrawing *self,
            const LrOutline     *outline)
{
  const LrRoom *room = self->sheet->study->setup->room;

  for (gsize i = 0; i < outline->n; i++)
    if (!lr_polygon_contains (room->corners_m, room->n_corners, lr_view_to_room (self->view, outline->corner_m[i])))
      return FALSE;

  return TRUE;
}

/**
 * lr_tape_draw_label:
 * @self: a drawing whose marks are drawn
 * @mark: a mark
 * @note: (nullable): a second line
 *
 * Puts it opposite to where the tapes come from, or as near to that as there is room; over a wall only if it must be.
 */
void
lr_tape_draw_label (LrTapeDrawing    *self,
                    const LrTapeMark *mark,
                    const char       *note)
{
  Label label = measure_label (self, mark, note);
  LrVec2 at = lr_tape_device (self, mark->mark_m), away = lr_vec2_scale (lr_tape_facing (mark), -1.0);
  LrOutline outline = { 0 };
  gboolean is_placed = FALSE, is_free, has_place = FALSE;

  for (gsize k = 0; k < 2 && mark->corners.way != LR_FIX_NONE; k++)
    {
      LrVec2 from = lr_vec2_sub (at, lr_tape_device (self, mark->corners.from_m[k]));

      away = lr_vec2_along (away, from, 1.5 / MAX (lr_vec2_length (from), 1.0));
    }

  for (int i = 0; i < LAST_TRY && !is_placed; i++)
    {
      double turn_rad = 45.0 * LR_DEG * ((i % 8 + 1) / 2) * (i % 2 == 0 ? 1.0 : -1.0);
      LrVec2 way = lr_vec2_polar (lr_vec2_angle_rad (away) + turn_rad, 1.0);
      double reach = BESIDE_PT * (1.0 + i / 8) + fabs (way.x) * 0.5 * label.width + fabs (way.y) * 0.5 * label.height;
      LrOutline place = lr_outline_box (lr_vec2_along (at, way, reach), label.width, label.height, 0.0);

      is_free = lr_tape_is_free (self, &place);
      is_placed = is_free && is_in_room (self, &place);
      if (is_placed || i == 0 || (is_free && !has_place))
        outline = place;
      has_place |= is_free;
    }
  lr_tape_take (self, outline);
  draw_label_at (self, &label, outline.centre_m);
}
