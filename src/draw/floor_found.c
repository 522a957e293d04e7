/* floor_found.c - where things were planned to stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In a set-up as found: what stands elsewhere now, and what is gone, in broken outlines where it was planned, with a thin
 * arrow to where it is; the walls, too, where they are others.
 */

#include "config.h"

#include "floor_layers.h"
#include "plan_diff.h"

#include <glib/gi18n-lib.h>

#define APART_M 0.25 /* nearer, a thing's own tag is beside both places */

static gboolean
is_shown (const LrPlaced *then)
{
  switch (then->item->kind)
    {
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&then->item->microphone);
    case LR_ITEM_LEAD:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
      return FALSE;
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_PANEL:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_N_ITEM_KINDS:
    default:
      return isfinite (then->at_m.x);
    }
}

static gboolean
is_elsewhere (const LrFloor  *floor,
              const LrStudy  *study,
              const LrPlaced *then,
              const LrPlaced *now)
{
  /* what went along with its wall is where the wall is */
  if (lr_item_kind_info (then->item->kind)->place == LR_PLACE_WALL && then->item->wall == now->item->wall)
    return fabs (lr_found_along_m (floor->study->setup, study->setup, then->item) - now->item->along_m) >= LR_DIFF_LENGTH_M - 1e-9;

  return lr_vec2_distance (then->at_m, now->at_m) >= LR_DIFF_LENGTH_M - 1e-9
         || fabs (lr_angle_wrap_rad (then->item->facing_rad - now->item->facing_rad)) >= LR_DIFF_ANGLE_RAD - 1e-9;
}

static void
draw_then (const LrFloor  *floor,
           const LrStudy  *study,
           const LrPlaced *then)
{
  LrView view = *floor->view;

  view.is_ghost = TRUE;
  cairo_save (floor->cr);
  lr_floor_to_item (floor->cr, &view, then);
  lr_symbol_draw (floor->cr, &view, then, study->setup);
  cairo_restore (floor->cr);
}

/* By its tag alone: what it is stands beside it where it is now. It yields to what is there */
static void
label_then (const LrFloor  *floor,
            const LrStudy  *study,
            const LrPlaced *then)
{
  g_autofree char *text = NULL;
  LrOutline outline, device;
  LrLabel label = {
    .rank = LR_LABEL_NOTE,
    .style = { .size = floor->theme->type_size[LR_TYPE_NOTE] },
    .color = floor->theme->ink2,
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  if (then->item->tag[0] == '\0' || !lr_floor_outline (study, floor->view, then, &outline))
    return;

  /* Translators: at the place on the sheet where a thing was to stand: its tag */
  text = g_strdup_printf (_("%s planned"), then->item->tag);
  label.text = text;
  device = lr_floor_device_outline (floor->view, &outline);
  lr_labels_add_beside (floor->labels, &label, &device);
}

static gboolean
has_same_corners (const LrRoom *a,
                  const LrRoom *b)
{
  if (a->n_corners != b->n_corners)
    return FALSE;
  for (gsize i = 0; i < a->n_corners; i++)
    if (lr_vec2_distance (a->corners_m[i], b->corners_m[i]) >= LR_DIFF_LENGTH_M)
      return FALSE;

  return TRUE;
}

static void
draw_walls (const LrFloor *floor,
            const LrRoom  *then)
{
  /* on paper dimensions stand around the room */
  if (!floor->has_base || floor->view->is_page || then->n_corners < 3 || has_same_corners (then, floor->room))
    return;

  lr_floor_move_to (floor, then->corners_m[0]);
  for (gsize i = 1; i < then->n_corners; i++)
    lr_floor_line_to (floor, then->corners_m[i]);
  cairo_close_path (floor->cr);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_GHOST);
  cairo_stroke (floor->cr);
}

/**
 * lr_floor_draw_planned:
 * @floor: a drawing
 *
 * In a drag the ghost of what moves is drawn with it.
 */
void
lr_floor_draw_planned (const LrFloor *floor)
{
  g_autoptr (LrStudy) study = floor->view->planned != NULL ? lr_study_new_trial (floor->view->planned) : NULL;

  if (study == NULL)
    return;

  cairo_save (floor->cr);
  lr_theme_set_color (floor->cr, floor->theme->ink2, 1.0);
  draw_walls (floor, study->setup->room);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *then = &g_array_index (study->placed, LrPlaced, i);
      const LrPlaced *now = lr_study_find_placed (floor->study, then->item->id);

      if (!is_shown (then) || (now != NULL ? !lr_floor_has (floor, now) || !is_elsewhere (floor, study, then, now) : !floor->has_base))
        continue;
      lr_theme_set_color (floor->cr, floor->theme->ink2, 1.0);
      draw_then (floor, study, then);
      lr_theme_set_color (floor->cr, floor->theme->ink2, 1.0);
      if (now != NULL)
        lr_floor_draw_arrow (floor, then->at_m, now->at_m, LR_LINE_THIN);
      if (now == NULL || lr_vec2_distance (then->at_m, now->at_m) >= APART_M)
        label_then (floor, study, then);
    }
  cairo_restore (floor->cr);
}
