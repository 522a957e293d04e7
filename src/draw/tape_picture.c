/* tape_picture.c - marks on the floor and their tapes, as a picture of any size
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "tape_picture.h"

#include "tape_drawing.h"

#define ENLARGED 1.35 /* pixels to the point: type of the page, as large as that of the window */

static gboolean
has_mark (const GArray *marks,
          const char   *id)
{
  for (guint i = 0; id != NULL && i < marks->len; i++)
    if (g_str_equal (g_array_index (marks, LrTapeMark, i).placed->item->id, id))
      return TRUE;

  return FALSE;
}

/**
 * lr_tape_picture_draw:
 * @cr: a cairo context
 * @theme: a palette
 * @study: of the plan
 * @units: the user's
 * @pointed: (nullable): id of an item
 * @width: of the picture, device units
 * @height: of the picture, device units
 *
 * Draws all tapes from corners, or those of what is pointed at alone, from walls too.
 */
void
lr_tape_picture_draw (cairo_t       *cr,
                      const LrTheme *theme,
                      const LrStudy *study,
                      LrUnits        units,
                      const char    *pointed,
                      double         width,
                      double         height)
{
  const LrPageOptions options = { .units = units };
  const LrSheet sheet = { cr, theme, study, NULL, &options, LR_PAGE_BODY_SIZE };
  const LrBox box = { 0.0, 0.0, width / ENLARGED, height / ENLARGED };
  g_autoptr (GArray) marks = lr_tape_marks_new (study);
  const LrStandardScale *scale;
  LrView view;

  if (!lr_tape_drawing_place (&sheet, &box, TRUE, &view, &scale))
    return;

  cairo_save (cr);
  cairo_scale (cr, ENLARGED, ENLARGED);
  lr_tape_drawing_tapes (&sheet, &view, marks, has_mark (marks, pointed) ? pointed : NULL);
  cairo_restore (cr);
}
