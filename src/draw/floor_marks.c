/* floor_marks.c - what is wrong, on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A Fix marks the thing that it is about for as long as it stands; Mind and Fine show only when the thing is pointed at. The
 * remark in hand shows its geometry and its figure.
 */

#include "floor_layers.h"

#define OUTSIDE_PX 3.0
#define DIAMOND_PX 7.0
#define DISC_PX 9.5
#define LEAST_OFF_PX 13.0
#define ARROWHEAD_PX 8.0
#define OBLIQUE_PX 6.3
#define LEG_FROM_M 0.28 /* legs of an angle: clear of the head, a little past the arc */
#define LEG_PAST_M 0.13

/* Where the diamond sits: outside the upper right of the outline; on the band for what is in a wall */
static LrVec2
mark_place (const LrFloor   *floor,
            const LrPlaced  *placed,
            const LrOutline *outline)
{
  LrVec2 centre, away = lr_vec2 (M_SQRT1_2, -M_SQRT1_2), at;

  if (placed->item->kind == LR_ITEM_WINDOW)
    return lr_vec2_along (lr_floor_device (floor, placed->at_m),
                          lr_vec2 (-cos (placed->facing_rad), sin (placed->facing_rad)), 0.5 * LR_WALL_M * floor->view->scale);
  if (placed->item->kind == LR_ITEM_LEAD)
    return lr_floor_device (floor, placed->item->path_m[placed->item->n_path / 2]);

  /* of a boom, its stand */
  if (placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM)
    outline = &placed->footprint;
  centre = lr_floor_device (floor, outline->centre_m);
  at = lr_vec2_along (centre, away, outline->radius_m * floor->view->scale + OUTSIDE_PX * floor->px);
  if (outline->n > 0)
    {
      double most = -HUGE_VAL;

      for (gsize i = 0; i < outline->n; i++)
        {
          LrVec2 corner = lr_floor_device (floor, outline->corner_m[i]);

          if (lr_vec2_dot (corner, away) <= most)
            continue;
          most = lr_vec2_dot (corner, away);
          at = lr_vec2_along (corner, away, OUTSIDE_PX * floor->px);
        }
    }
  if (lr_vec2_distance (at, centre) < LEAST_OFF_PX * floor->px)
    at = lr_vec2_along (centre, away, LEAST_OFF_PX * floor->px);

  return at;
}

static void
draw_mark (const LrFloor *floor,
           LrGrade        grade,
           LrVec2         at)
{
  cairo_t *cr = floor->cr;

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, DISC_PX * floor->px, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (cr, floor->theme->room, 1.0);
  cairo_fill (cr);
  lr_grade_mark_draw (cr, floor->theme, grade, DIAMOND_PX * floor->px, at.x, at.y);
  lr_labels_block_disc (floor->labels, at, DISC_PX * floor->px);
}

/* A lead's outline runs along both its sides */
static void
stroke_along (const LrFloor  *floor,
              const LrPlaced *placed,
              LrColor         color)
{
  LrPen pen = lr_pen (floor->cr, floor->view, placed, floor->setup);
  double inside = 2.0 * OUTSIDE_PX * floor->px - floor->theme->line_width[LR_LINE_OUTLINE];

  cairo_save (floor->cr);
  lr_floor_to_item (floor->cr, floor->view, placed);
  lr_symbol_lead_band (&pen, color, 1.0, inside + 2.0 * floor->theme->line_width[LR_LINE_OUTLINE]);
  lr_symbol_lead_band (&pen, floor->theme->room, 1.0, inside);
  lr_symbol_lead_line (&pen);
  cairo_restore (floor->cr);
}

static void
stroke_around (const LrFloor   *floor,
               const LrPlaced  *placed,
               const LrOutline *outline,
               LrColor          color)
{
  cairo_t *cr = floor->cr;

  if (placed->item->kind == LR_ITEM_LEAD)
    {
      stroke_along (floor, placed, color);
      return;
    }

  lr_floor_trace_around (cr, floor->view, placed, outline, OUTSIDE_PX * floor->px);
  lr_theme_set_color (cr, color, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
}

/* In the still half of a drag a mark only keeps its place: lr_floor_draw_still_fixes() draws it */
static void
mark_fix (const LrFloor  *floor,
          const LrPlaced *placed)
{
  LrOutline outline;

  if (!lr_floor_has (floor, placed) || !lr_floor_outline (floor->study, floor->view, placed, &outline))
    return;

  if (floor->view->skip != NULL)
    {
      lr_labels_block_disc (floor->labels, mark_place (floor, placed, &outline), DISC_PX * floor->px);
      return;
    }
  if (!floor->view->is_page && placed->item->kind != LR_ITEM_WINDOW)
    stroke_around (floor, placed, &outline, floor->theme->fix_line);
  draw_mark (floor, LR_GRADE_FIX, mark_place (floor, placed, &outline));
}

/* While Power is shown a circuit with a Fix marks the sockets that are on it, too */
static void
mark_sockets (const LrFloor *floor,
              const char    *circuit,
              GHashTable    *done)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  for (guint i = 0; i < floor->study->placed->len; i++)
    if (placed[i].item->kind == LR_ITEM_SOCKET && g_str_equal (placed[i].item->socket.circuit, circuit)
        && g_hash_table_add (done, placed[i].item->id))
      mark_fix (floor, &placed[i]);
}

static void
draw_fixes (const LrFloor *floor)
{
  g_autoptr (GHashTable) done = NULL;

  if (floor->remarks == NULL || floor->remarks->n[LR_GRADE_FIX] == 0)
    return;

  done = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < floor->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (floor->remarks->all, i);

      if (remark->grade != LR_GRADE_FIX)
        break;
      if (remark->ids != NULL && remark->ids[0] != NULL && g_hash_table_add (done, remark->ids[0]))
        mark_fix (floor, lr_study_find_placed (floor->study, remark->ids[0]));
      if (remark->check == LR_CHECK_CIRCUIT && (floor->view->shown & LR_SHOW_POWER) != 0)
        mark_sockets (floor, remark->ids[0], done);
    }
}

static void
draw_pointed (const LrFloor *floor)
{
  const LrPlaced *placed = floor->view->pointed != NULL ? lr_study_find_placed (floor->study, floor->view->pointed) : NULL;
  LrOutline outline;
  LrGrade worst;

  if (floor->view->is_page || !lr_floor_has (floor, placed) || placed == floor->in_hand
      || !lr_floor_outline (floor->study, floor->view, placed, &outline))
    return;

  worst = floor->remarks != NULL ? lr_remarks_worst_for (floor->remarks, placed->item->id) : LR_GRADE_FINE;
  if (worst != LR_GRADE_FIX)
    stroke_around (floor, placed, &outline, floor->theme->ink2);
  if (worst == LR_GRADE_MIND)
    draw_mark (floor, worst, mark_place (floor, placed, &outline));
}

/**
 * lr_floor_draw_marks:
 * @floor: a drawing
 */
void
lr_floor_draw_marks (const LrFloor *floor)
{
  cairo_save (floor->cr);
  draw_pointed (floor);
  draw_fixes (floor);
  cairo_restore (floor->cr);
}

/* A drawing that holds marks and nothing else */
static LrFloor
marks_alone (cairo_t         *cr,
             const LrStudy   *study,
             const LrRemarks *remarks,
             const LrView    *view,
             gboolean        *is_drawn,
             LrLabels        *labels)
{
  return (LrFloor) {
    .cr = cr, .plan = study->plan, .study = study, .setup = study->setup, .room = study->setup->room, .remarks = remarks,
    .view = view, .theme = view->theme, .px = view->theme->unit_px, .is_drawn = is_drawn, .labels = labels,
    .in_hand = view->in_hand != NULL ? lr_study_find_placed (study, view->in_hand) : NULL,
  };
}

/**
 * lr_floor_draw_pointed:
 * @cr: a cairo context whose unit is the device's
 * @study: of the plan shown
 * @remarks: (nullable): its remarks
 * @view: what is pointed at
 *
 * What lr_floor_draw() adds for the thing that is pointed at, so that a pointer that wanders over the sheet does not make it
 * draw everything.
 */
void
lr_floor_draw_pointed (cairo_t         *cr,
                       const LrStudy   *study,
                       const LrRemarks *remarks,
                       const LrView    *view)
{
  g_autofree gboolean *is_drawn = g_new0 (gboolean, study->placed->len + 1);
  g_autoptr (LrLabels) labels = lr_labels_new (cr, view);
  const LrPlaced *placed = view->pointed != NULL ? lr_study_find_placed (study, view->pointed) : NULL;
  LrFloor floor = marks_alone (cr, study, remarks, view, is_drawn, labels);

  if (placed == NULL)
    return;

  is_drawn[placed - (const LrPlaced *) (gpointer) study->placed->data] = TRUE;
  cairo_save (cr);
  draw_pointed (&floor);
  cairo_restore (cr);
}

/**
 * lr_floor_draw_still_fixes:
 * @cr: a cairo context whose unit is the device's
 * @study: of the plan shown
 * @remarks: its remarks
 * @view: its skip is the item that is dragged
 *
 * The Fix marks of what stands still while something is dragged. They come and go with the place of the thing that moves, which
 * must not make the sheet draw the whole still half again.
 */
void
lr_floor_draw_still_fixes (cairo_t         *cr,
                           const LrStudy   *study,
                           const LrRemarks *remarks,
                           const LrView    *view)
{
  g_autofree gboolean *is_drawn = lr_floor_moving (study, view->skip);
  g_autoptr (LrLabels) labels = lr_labels_new (cr, view);
  LrView marks_view = *view;
  LrFloor floor = marks_alone (cr, study, remarks, &marks_view, is_drawn, labels);

  marks_view.skip = NULL;
  for (guint i = 0; i < study->placed->len; i++)
    is_drawn[i] = !is_drawn[i];
  cairo_save (cr);
  draw_fixes (&floor);
  cairo_restore (cr);
}

/* The remark in hand */

static LrColor
remark_color (const LrFloor *floor)
{
  return floor->view->remark->grade == LR_GRADE_FIX ? floor->theme->fix_line : floor->theme->ink;
}

static void
add_figure (const LrFloor *floor,
            const LrMark  *mark,
            LrVec2         at)
{
  LrOutline spot = { .centre_m = at, .radius_m = 1.0 };
  LrLabel label = {
    .rank = LR_LABEL_FIGURE,
    .stands_on_lines = TRUE,
    .text = mark->figure,
    .style = { .size = floor->theme->type_size[LR_TYPE_FIGURE], .weight = PANGO_WEIGHT_BOLD },
    .color = remark_color (floor),
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  if (mark->figure != NULL)
    lr_labels_add_beside (floor->labels, &label, &spot);
}

static void
draw_line_mark (const LrFloor *floor,
                const LrMark  *mark,
                LrLineWeight   weight,
                gboolean       has_ends)
{
  LrVec2 a = lr_floor_device (floor, mark->a_m), b = lr_floor_device (floor, mark->b_m);
  LrVec2 way = lr_vec2_sub (b, a);
  cairo_t *cr = floor->cr;

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  lr_theme_set_line (cr, floor->theme, weight, LR_DASH_SOLID);
  cairo_stroke (cr);
  lr_labels_block_segment (floor->labels, a, b);
  if (has_ends && lr_vec2_length (way) > 1.0)
    {
      way = lr_vec2_scale (way, 1.0 / lr_vec2_length (way));
      lr_floor_oblique (cr, a, way, OBLIQUE_PX);
      lr_floor_oblique (cr, b, way, OBLIQUE_PX);
    }
  add_figure (floor, mark, lr_vec2_scale (lr_vec2_add (a, b), 0.5));
}

static void
draw_arc_mark (const LrFloor *floor,
               const LrMark  *mark)
{
  LrVec2 centre = lr_floor_device (floor, mark->a_m);
  double radius = mark->radius_m * floor->view->scale;
  double middle_rad = 0.5 * (mark->from_rad + mark->to_rad), last_rad = 0.0;
  double head_rad = MIN (ARROWHEAD_PX * floor->px / MAX (radius, 1.0), 0.45 * (mark->to_rad - mark->from_rad));
  cairo_t *cr = floor->cr;
  LrVec2 from = lr_vec2 (centre.x + radius * cos (mark->from_rad), centre.y - radius * sin (mark->from_rad));
  LrVec2 to = lr_vec2 (centre.x + radius * cos (mark->to_rad), centre.y - radius * sin (mark->to_rad));

  lr_theme_set_line (cr, floor->theme, LR_LINE_THICK, LR_DASH_SOLID);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_new_sub_path (cr);
  cairo_arc (cr, centre.x, centre.y, radius, -mark->to_rad + 0.7 * head_rad, -mark->from_rad - 0.7 * head_rad);
  cairo_stroke (cr);
  /* heads lie along the chord that they span */
  lr_floor_arrowhead (cr, from, lr_vec2 (sin (mark->from_rad + 0.5 * head_rad), cos (mark->from_rad + 0.5 * head_rad)),
                      ARROWHEAD_PX * floor->px);
  lr_floor_arrowhead (cr, to, lr_vec2 (-sin (mark->to_rad - 0.5 * head_rad), -cos (mark->to_rad - 0.5 * head_rad)),
                      ARROWHEAD_PX * floor->px);

  last_rad = mark->from_rad;
  for (int i = 1; i <= 8; i++)
    {
      double at_rad = mark->from_rad + i * (mark->to_rad - mark->from_rad) / 8.0;

      lr_labels_block_segment (floor->labels,
                               lr_vec2 (centre.x + radius * cos (last_rad), centre.y - radius * sin (last_rad)),
                               lr_vec2 (centre.x + radius * cos (at_rad), centre.y - radius * sin (at_rad)));
      last_rad = at_rad;
    }
  add_figure (floor, mark, lr_vec2 (centre.x + radius * cos (middle_rad), centre.y - radius * sin (middle_rad)));
}

static void
draw_point_mark (const LrFloor *floor,
                 const LrMark  *mark)
{
  LrVec2 at = lr_floor_device (floor, mark->a_m);
  cairo_t *cr = floor->cr;

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, 5.0 * floor->px, 0.0, 2.0 * LR_PI);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THICK, LR_DASH_SOLID);
  cairo_stroke (cr);
  lr_labels_block_disc (floor->labels, at, 6.0 * floor->px);
  add_figure (floor, mark, at);
}

static void
draw_outline_mark (const LrFloor *floor,
                   const LrMark  *mark)
{
  lr_floor_trace_outline (floor->cr, floor->view, &mark->outline, 0.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THICK, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
  add_figure (floor, mark, lr_floor_device (floor, mark->outline.centre_m));
}

/* The legs of an angle say which way, not how far: they run a little past the arc */
static LrMark
as_leg (const LrMark *line,
        const LrMark *arc)
{
  LrMark leg = *line;
  double length_m = lr_vec2_distance (line->a_m, line->b_m);
  LrVec2 way;

  if (lr_vec2_distance (line->a_m, arc->a_m) > 0.05 || length_m < arc->radius_m)
    return leg;

  way = lr_vec2_scale (lr_vec2_sub (line->b_m, line->a_m), 1.0 / length_m);
  leg.a_m = lr_vec2_along (line->a_m, way, MIN (LEG_FROM_M, 0.5 * arc->radius_m));
  leg.b_m = lr_vec2_along (line->a_m, way, MIN (arc->radius_m + LEG_PAST_M, length_m));

  return leg;
}

/**
 * lr_floor_draw_remark:
 * @floor: a drawing
 *
 * Geometry and figure of the remark in hand: Fix lines, or ink for a Mind.
 */
void
lr_floor_draw_remark (const LrFloor *floor)
{
  const LrRemark *remark = floor->view->remark;
  const LrMark *arc = NULL;

  if (remark == NULL || remark->marks == NULL || !lr_floor_has_between (floor, (const char *const *) remark->ids))
    return;
  for (guint i = 0; i < remark->marks->len; i++)
    if (g_array_index (remark->marks, LrMark, i).type == LR_MARK_ARC)
      arc = &g_array_index (remark->marks, LrMark, i);

  cairo_save (floor->cr);
  lr_theme_set_color (floor->cr, remark_color (floor), 1.0);
  for (guint i = 0; i < remark->marks->len; i++)
    {
      const LrMark *mark = &g_array_index (remark->marks, LrMark, i);
      LrMark leg;

      switch (mark->type)
        {
        case LR_MARK_LINE: /* the legs of an angle are thinner than the angle */
          leg = arc != NULL ? as_leg (mark, arc) : *mark;
          draw_line_mark (floor, &leg, arc != NULL ? LR_LINE_OUTLINE : LR_LINE_THICK, FALSE);
          break;
        case LR_MARK_DISTANCE:
          draw_line_mark (floor, mark, LR_LINE_THICK, TRUE);
          break;
        case LR_MARK_ARC:
          draw_arc_mark (floor, mark);
          break;
        case LR_MARK_POINT:
          draw_point_mark (floor, mark);
          break;
        case LR_MARK_OUTLINE:
        default:
          draw_outline_mark (floor, mark);
          break;
        }
    }
  cairo_restore (floor->cr);
}
