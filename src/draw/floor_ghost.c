/* floor_ghost.c - where the remedy would put things
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor_layers.h"

#include <glib/gi18n-lib.h>

#define EDGE_M 1.3 /* of the field of a camera that is not there yet */
#define ARROWHEAD_PX 8.0
#define LEAST_ARROW_PX 12.0

/* What a ghost shows: the thing stands or turns elsewhere */
static gboolean
differs (const LrPlaced *now,
         const LrPlaced *then)
{
  return lr_vec2_distance (now->at_m, then->at_m) > 5e-4
         || fabs (lr_angle_wrap_rad (now->facing_rad - then->facing_rad)) > 1e-3 || now->item != then->item;
}

static void
draw_symbol (const LrFloor  *floor,
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

static void
draw_edges (const LrFloor         *floor,
            const LrCameraReading *camera)
{
  static const double sides[] = { -0.5, 0.5 };

  for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      LrVec2 edge = lr_vec2_polar (camera->pan_rad + sides[i] * camera->angle_h_rad, 1.0);

      lr_floor_move_to (floor, lr_vec2_along (camera->wedge_m[0], edge, 0.2));
      lr_floor_line_to (floor, lr_vec2_along (camera->wedge_m[0], edge, EDGE_M));
      lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, camera->wedge_m[0]),
                               lr_floor_device (floor, lr_vec2_along (camera->wedge_m[0], edge, EDGE_M)));
    }
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_GHOST);
  cairo_stroke (floor->cr);
}

/**
 * lr_floor_draw_arrow:
 * @floor: a drawing, its color set
 * @from_m: where it begins [m]
 * @to_m: where its head is [m]
 * @weight: of its line
 *
 * An arrow too short to be seen is left out.
 */
void
lr_floor_draw_arrow (const LrFloor *floor,
                     LrVec2         from_m,
                     LrVec2         to_m,
                     LrLineWeight   weight)
{
  LrVec2 from = lr_floor_device (floor, from_m), to = lr_floor_device (floor, to_m);
  LrVec2 way = lr_vec2_sub (to, from);
  double length = lr_vec2_length (way);
  cairo_t *cr = floor->cr;

  if (length < LEAST_ARROW_PX * floor->px)
    return;

  way = lr_vec2_scale (way, 1.0 / length);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x - 4.0 * floor->px * way.x, to.y - 4.0 * floor->px * way.y);
  lr_theme_set_line (cr, floor->theme, weight, LR_DASH_SOLID);
  cairo_stroke (cr);
  lr_floor_arrowhead (cr, to, way, ARROWHEAD_PX * floor->px);
}

static void
label_ghost (const LrFloor  *floor,
             const LrPlaced *then)
{
  const LrRemark *remark = floor->view->remark;
  g_autofree char *text = NULL;
  LrOutline outline, device;
  LrLabel label = {
    .rank = LR_LABEL_FIGURE,
    .style = { .size = floor->theme->type_size[LR_TYPE_DISTANCE], .weight = PANGO_WEIGHT_SEMIBOLD },
    .color = floor->theme->ink,
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  if (remark == NULL || remark->remedy == NULL || remark->remedy->short_figure == NULL
      || !lr_floor_outline (floor->study, floor->view, then, &outline))
    return;

  text = g_strdup_printf (_("Mend: %s"), remark->remedy->short_figure);
  label.text = text;
  device = lr_floor_device_outline (floor->view, &outline);
  if (device.n == 0)
    lr_labels_block_disc (floor->labels, device.centre_m, device.radius_m);
  lr_labels_add_beside (floor->labels, &label, &device);
}

/**
 * lr_floor_draw_ghost:
 * @floor: a drawing
 *
 * The things that the remedy in hand, or what is offered without a remark, would move or change, with an arrow from now to then.
 */
void
lr_floor_draw_ghost (const LrFloor *floor)
{
  g_autoptr (LrStudy) study = NULL;
  gboolean is_labelled = FALSE;

  if (floor->view->ghost == NULL)
    return;
  if (floor->view->remark != NULL ? !lr_floor_has_between (floor, (const char *const *) floor->view->remark->ids) : !floor->has_base)
    return;

  study = lr_study_new (floor->view->ghost);
  cairo_save (floor->cr);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *then = &g_array_index (study->placed, LrPlaced, i);
      const LrPlaced *now = lr_study_find_placed (floor->study, then->item->id);
      const LrCameraReading *camera;

      if (now == NULL || !isfinite (then->at_m.x) || !differs (now, then) || now->item == then->item)
        continue;
      lr_theme_set_color (floor->cr, floor->theme->ink, 1.0);
      draw_symbol (floor, study, then);
      lr_theme_set_color (floor->cr, floor->theme->ink, 1.0);
      camera = lr_study_find_camera (study, then->item->id);
      if (camera != NULL && camera->n_wedge >= 3 && (floor->view->shown & LR_SHOW_SIGHT) != 0)
        draw_edges (floor, camera);
      lr_floor_draw_arrow (floor, now->at_m, then->at_m, LR_LINE_OUTLINE);
      if (!is_labelled)
        label_ghost (floor, then);
      is_labelled = TRUE;
    }
  cairo_restore (floor->cr);
}
