/* page_plan.c - the floor plan on the sheet: at a standard scale, with its title, taped corners and scale bar
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scales: ISO 5455:1979 (1:20, 1:50, 1:100, ...); in inch units those of the architect's rule (1/2 in, 1/4 in, 1/8 in
 * to the foot and their halves). The largest at which the room and its dimensions fit is taken, and never reduced.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "floor.h"
#include "page_private.h"
#include "pen.h"

#define TITLE_Y_PT     13.7
#define SUBTITLE_Y_PT  27.4
#define TITLE_FOOT_PT  31.0
#define NORTH_PT       34.0 /* width kept free for the north sign at the right of the title */
#define NORTH_RADIUS_PT 11.0
#define NOTES_PT       13.0 /* outside a wall: names of windows and sockets */
#define BAR_PT         15.6 /* height of the scale bar's row */
#define BAR_GAP_PT      0.5
#define TAPE_GAP_PT     8.0
#define LETTER_PT      11.5 /* of a taped corner, from it */
#define OUTSIDE_M       1.5 /* things outside the walls are kept on the sheet when they are this near */
#define LEAST_TAPE_LINES 3

typedef struct
{
  int    scale;
  double step_m; /* of the scale bar */
  int    n_steps;
} LrStandardScale;

static const LrStandardScale metric_scales[] = {
  { 20, 0.5, 4 }, { 50, 1, 4 }, { 100, 2, 4 }, { 200, 5, 4 }, { 500, 10, 4 }, { 1000, 20, 4 }, { 2000, 50, 4 }, { 5000, 100, 4 }
};

/* n_steps of a foot or more come to 3 inches on paper */
static const LrStandardScale inch_scales[] = {
  { 24, 0.3048, 6 }, { 48, 0.6096, 6 }, { 96, 1.2192, 6 }, { 192, 2.4384, 6 }, { 384, 4.8768, 6 }, { 768, 9.7536, 6 },
  { 1536, 19.5072, 6 }, { 3072, 39.0144, 6 }, { 6144, 78.0288, 6 }
};

/* Room's box, and how far drawing reaches beyond it */
typedef struct
{
  LrVec2 low_m, high_m;
  LrVec2 outer_low_m, outer_high_m; /* with the things outside the walls */
} LrBounds;

static gboolean
is_imperial (const LrSheet *sheet)
{
  return sheet->options->units == LR_UNITS_IMPERIAL;
}

static const LrStandardScale *
scales (const LrSheet *sheet,
        gsize         *n)
{
  *n = is_imperial (sheet) ? G_N_ELEMENTS (inch_scales) : G_N_ELEMENTS (metric_scales);
  return is_imperial (sheet) ? inch_scales : metric_scales;
}

static double
pt_per_m (int scale)
{
  return 1000.0 * LR_MM_PT / scale;
}

/* --- Bounds --------------------------------------------------------------------------------------------------- */

static void
stretch (LrVec2 *low,
         LrVec2 *high,
         LrVec2  at_m,
         double  by_m)
{
  *low = lr_vec2 (MIN (low->x, at_m.x - by_m), MIN (low->y, at_m.y - by_m));
  *high = lr_vec2 (MAX (high->x, at_m.x + by_m), MAX (high->y, at_m.y + by_m));
}

/* What a thing takes on the sheet: a box about its footprint, about the outline of what makes a noise */
static void
thing_box (const LrPlaced *placed,
           LrVec2         *low,
           LrVec2         *high)
{
  const LrOutline *outline = &placed->footprint;

  *low = *high = placed->at_m;
  if (placed->item->kind == LR_ITEM_NOISE)
    stretch (low, high, placed->at_m, MAX (MAX (placed->item->noise.length_m, placed->item->noise.width_m) / 2.0, 0.2));
  else if (placed->has_footprint && outline->n == 0)
    stretch (low, high, outline->centre_m, outline->radius_m);
  else if (placed->has_footprint)
    for (gsize i = 0; i < outline->n; i++)
      stretch (low, high, outline->corner_m[i], 0.0);
}

static gboolean
get_bounds (const LrStudy *study,
            LrBounds      *bounds)
{
  const LrRoom *room = study->setup->room;

  if (room->n_corners < 3)
    return FALSE;

  bounds->low_m = bounds->high_m = room->corners_m[0];
  for (gsize i = 1; i < room->n_corners; i++)
    stretch (&bounds->low_m, &bounds->high_m, room->corners_m[i], 0.0);

  bounds->outer_low_m = bounds->low_m;
  bounds->outer_high_m = bounds->high_m;
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrVec2 at = placed->at_m, low, high;

      if (at.x < bounds->low_m.x - OUTSIDE_M || at.x > bounds->high_m.x + OUTSIDE_M
          || at.y < bounds->low_m.y - OUTSIDE_M || at.y > bounds->high_m.y + OUTSIDE_M || !isfinite (at.x))
        continue;

      thing_box (placed, &low, &high);
      stretch (&bounds->outer_low_m, &bounds->outer_high_m, low, 0.0);
      stretch (&bounds->outer_low_m, &bounds->outer_high_m, high, 0.0);
    }

  return TRUE;
}

/* --- Placing -------------------------------------------------------------------------------------------------- */

/* Space that each side of the room's box needs at a scale [pt] */
static void
measure_sides (const GPtrArray *chains,
               const LrBounds  *bounds,
               double           scale,
               double          *sides)
{
  const double outside_m[LR_N_EDGES] = {
    [LR_EDGE_BOTTOM] = bounds->low_m.y - bounds->outer_low_m.y, [LR_EDGE_RIGHT] = bounds->outer_high_m.x - bounds->high_m.x,
    [LR_EDGE_TOP] = bounds->outer_high_m.y - bounds->high_m.y, [LR_EDGE_LEFT] = bounds->low_m.x - bounds->outer_low_m.x
  };

  for (LrEdge edge = 0; edge < LR_N_EDGES; edge++)
    sides[edge] = MAX (LR_WALL_M * scale + MAX (lr_page_chains_reach_pt (chains, edge), NOTES_PT),
                       outside_m[edge] * scale + 2.0);
}

static const char *
title_text (const LrSheet *sheet)
{
  const char *title = sheet->study->plan->job->title;

  return title[0] != '\0' ? title : sheet->study->setup->name;
}

/* Whether something outside the upper wall would run into the title */
static gboolean
meets_title (const LrSheet     *sheet,
             const LrPlanPlace *place,
             const LrBounds    *bounds)
{
  const LrStudy *study = sheet->study;
  double title = MAX (lr_page_text_width (sheet, LR_PAGE_TITLE_SIZE, PANGO_WEIGHT_BOLD, title_text (sheet)),
                      lr_page_text_width (sheet, 8.4, PANGO_WEIGHT_NORMAL, study->plan->job->subtitle));

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrVec2 low, high;

      if (!(placed->at_m.y > bounds->high_m.y))
        continue;

      thing_box (placed, &low, &high);
      low = lr_view_to_device (&place->view, low);
      high = lr_view_to_device (&place->view, high);
      if (high.y < place->area.y + TITLE_FOOT_PT
          && (low.x < place->area.x + title + 6.0 || high.x > place->area.x + place->area.width - NORTH_PT))
        return TRUE;
    }

  return FALSE;
}

/* Tries a scale with so many tape rows; on success @place is complete */
static gboolean
try_scale (const LrSheet  *sheet,
           const LrBounds *bounds,
           double          width_pt,
           double          height_pt,
           guint           tape_lines,
           LrPlanPlace    *place)
{
  double scale = pt_per_m (place->scale), sides[LR_N_EDGES], inner_width, inner_height, need_width, need_height, room_width, top, slack;
  double tape = lr_page_tape_height (tape_lines);
  double usable = width_pt - 2.0 * LR_PAGE_MARGIN_PT;

  measure_sides (place->chains, bounds, scale, sides);
  inner_width = (bounds->high_m.x - bounds->low_m.x) * scale;
  inner_height = (bounds->high_m.y - bounds->low_m.y) * scale;
  need_width = sides[LR_EDGE_LEFT] + inner_width + sides[LR_EDGE_RIGHT];

  place->gutter = CLAMP (usable - LR_PAGE_COLUMN_PT - need_width, LR_PAGE_GUTTER_MIN_PT, LR_PAGE_GUTTER_PT);
  place->column_width = MIN (LR_PAGE_COLUMN_PT, usable - place->gutter - need_width);
  if (place->column_width < LR_PAGE_COLUMN_MIN_PT)
    return FALSE;

  room_width = usable - place->gutter - place->column_width;
  place->area = (LrBox) {
    LR_PAGE_MARGIN_PT, LR_PAGE_MARGIN_PT, room_width,
    height_pt - 2.0 * LR_PAGE_MARGIN_PT - LR_PAGE_BLOCK_PT - LR_PAGE_FOOT_PT - (tape > 0.0 ? tape + TAPE_GAP_PT : 0.0)
  };
  place->tape_lines = tape_lines;

  /* The title's band is open to what stands outside the upper wall, beside the title */
  top = MAX (TITLE_FOOT_PT + LR_WALL_M * scale + MAX (lr_page_chains_reach_pt (place->chains, LR_EDGE_TOP), NOTES_PT - 4.0),
             sides[LR_EDGE_TOP]);
  need_height = top + inner_height + sides[LR_EDGE_BOTTOM] + BAR_GAP_PT + BAR_PT;
  slack = place->area.height - need_height;
  if (slack < 0.0)
    return FALSE;

  place->view.scale = scale;
  place->view.origin.x = place->area.x + (room_width - need_width) / 2.0 + sides[LR_EDGE_LEFT] - bounds->low_m.x * scale;
  place->view.origin.y = place->area.y + top + MIN (slack / 2.0, 60.0) + bounds->high_m.y * scale;
  if (meets_title (sheet, place, bounds))
    {
      place->view.origin.y = place->area.y + top + slack + bounds->high_m.y * scale;
      if (meets_title (sheet, place, bounds))
        return FALSE;
    }

  place->bar_y = place->view.origin.y - bounds->low_m.y * scale + sides[LR_EDGE_BOTTOM] + BAR_GAP_PT;
  return TRUE;
}

static void
place_empty (const LrSheet *sheet,
             double         width_pt,
             double         height_pt,
             LrPlanPlace   *place)
{
  place->scale = is_imperial (sheet) ? 48 : 50;
  place->gutter = LR_PAGE_GUTTER_PT;
  place->column_width = LR_PAGE_COLUMN_PT;
  place->area = (LrBox) {
    LR_PAGE_MARGIN_PT, LR_PAGE_MARGIN_PT, width_pt - 2.0 * LR_PAGE_MARGIN_PT - place->gutter - place->column_width,
    height_pt - 2.0 * LR_PAGE_MARGIN_PT - LR_PAGE_BLOCK_PT - LR_PAGE_FOOT_PT
  };
}

/**
 * lr_page_plan_place:
 * @sheet: the page; its context is used to measure text only
 * @width_pt: of the sheet
 * @height_pt: of the sheet
 * @place: (out): where all stands; lr_page_plan_clear() frees what it holds
 *
 * Takes the largest standard scale at which the plan fits, with all tape positions if that can be, else with fewer.
 */
void
lr_page_plan_place (const LrSheet *sheet,
                    double         width_pt,
                    double         height_pt,
                    LrPlanPlace   *place)
{
  gsize n_scales;
  const LrStandardScale *list = scales (sheet, &n_scales);
  guint all_lines = lr_page_tape_lines (sheet);
  LrBounds bounds;

  *place = (LrPlanPlace) { .chains = lr_page_chains_new (sheet->study->setup) };
  place->view = (LrView) {
    .width = width_pt, .height = height_pt, .theme = sheet->theme, .units = sheet->options->units,
    .shown = LR_SHOW_SIGHT, .is_page = TRUE, .is_read_only = TRUE
  };

  if (!get_bounds (sheet->study, &bounds))
    {
      place_empty (sheet, width_pt, height_pt, place);
      return;
    }

  for (gsize i = 0; i < n_scales; i++)
    {
      place->scale = list[i].scale;
      for (guint lines = all_lines + 1; lines-- > MIN (all_lines, LEAST_TAPE_LINES); )
        if (try_scale (sheet, &bounds, width_pt, height_pt, lines, place))
          return;
    }

  g_ptr_array_set_size (place->chains, 0);
  place_empty (sheet, width_pt, height_pt, place); /* larger than any scale holds: no plan */
}

/**
 * lr_page_plan_clear:
 * @place: a place
 *
 * Frees what it holds.
 */
void
lr_page_plan_clear (LrPlanPlace *place)
{
  g_clear_pointer (&place->chains, g_ptr_array_unref);
}

/* --- Title ---------------------------------------------------------------------------------------------------- */

/**
 * lr_page_title_draw:
 * @sheet: the page
 * @place: where the plan stands
 *
 * Draws title and subtitle of the job over the plan.
 */
void
lr_page_title_draw (const LrSheet     *sheet,
                    const LrPlanPlace *place)
{
  const LrJob *job = sheet->study->plan->job;
  const double width = place->area.width - NORTH_PT;
  const LrTextStyle title = { .size = LR_PAGE_TITLE_SIZE, .weight = PANGO_WEIGHT_BOLD, .width = width };
  const LrTextStyle subtitle = { .size = 8.4, .weight = PANGO_WEIGHT_NORMAL, .width = width };

  lr_page_tag_begin (sheet, "H1");
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &title, place->area.x, place->area.y + TITLE_Y_PT, title_text (sheet));
  lr_page_tag_end (sheet, "H1");

  lr_page_tag_begin (sheet, "P");
  lr_theme_set_color (sheet->cr, sheet->theme->ink2, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &subtitle, place->area.x, place->area.y + SUBTITLE_Y_PT, job->subtitle);
  lr_page_tag_end (sheet, "P");
}

/* --- Corners -------------------------------------------------------------------------------------------------- */

/* Whether a label there would cover a thing on the floor */
static gboolean
is_on_something (const LrStudy *study,
                 LrVec2         at_m,
                 double         reach)
{
  LrOutline label = lr_outline_disc (at_m, reach);

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->has_footprint && lr_outline_overlap_m (&placed->footprint, &label, NULL) > 0.0)
        return TRUE;
    }

  return FALSE;
}

/* Ring and dot on a corner that tapes start from; its letter in the room, or in the wall where the floor is taken */
static void
draw_corner (const LrSheet     *sheet,
             const LrPlanPlace *place,
             gsize              corner,
             const char        *letter)
{
  const LrRoom *room = sheet->study->setup->room;
  const LrTextStyle style = { .size = 8.6, .weight = PANGO_WEIGHT_BOLD, .align = LR_ALIGN_CENTRE };
  LrVec2 at_m = room->corners_m[corner];
  LrVec2 before = lr_vec2_sub (room->corners_m[(corner + room->n_corners - 1) % room->n_corners], at_m);
  LrVec2 after = lr_vec2_sub (room->corners_m[(corner + 1) % room->n_corners], at_m);
  LrVec2 at = lr_view_to_device (&place->view, at_m), inward;
  cairo_t *cr = sheet->cr;
  double away;

  before = lr_vec2_scale (before, 1.0 / MAX (lr_vec2_length (before), 1e-9));
  after = lr_vec2_scale (after, 1.0 / MAX (lr_vec2_length (after), 1e-9));
  inward = lr_vec2_add (lr_vec2_left (after), lr_vec2_scale (lr_vec2_left (before), -1.0));
  inward = lr_vec2_scale (inward, 1.0 / MAX (lr_vec2_length (inward), 1e-9));

  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, 3.6, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (cr, sheet->theme->room, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (cr, sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_stroke (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, 1.2, 0.0, 2.0 * LR_PI);
  cairo_fill (cr);

  away = is_on_something (sheet->study, lr_vec2_along (at_m, inward, LETTER_PT / place->view.scale), 4.0 / place->view.scale)
         ? -LETTER_PT : LETTER_PT;
  lr_text_draw_halo (cr, sheet->theme, &style, at.x + inward.x * away, at.y - inward.y * away + 3.1, letter);
}

/* --- Scale bar ------------------------------------------------------------------------------------------------ */

static char *
bar_label (const LrSheet         *sheet,
           const LrStandardScale *scale,
           int                    i)
{
  double unit_m = is_imperial (sheet) ? 0.3048 : 1.0;
  g_autofree char *number = g_strdup_printf ("%.4g", i * scale->step_m / unit_m);

  if (i < scale->n_steps)
    return g_steal_pointer (&number);

  return g_strdup_printf (is_imperial (sheet) ? _("%s ft") : _("%s m"), number);
}

/* "4 m on this bar are 80 mm on paper" */
static char *
bar_note (const LrSheet         *sheet,
          const LrStandardScale *scale)
{
  g_autofree char *length = bar_label (sheet, scale, scale->n_steps);
  double paper_mm = scale->step_m * scale->n_steps * 1000.0 / scale->scale;

  return is_imperial (sheet) ? g_strdup_printf (_("%s on this bar are %.4g in on paper"), length, paper_mm / 25.4)
                             : g_strdup_printf (_("%s on this bar are %.4g mm on paper"), length, paper_mm);
}

static void
draw_bar (const LrSheet         *sheet,
          const LrStandardScale *scale,
          double                 x,
          double                 y)
{
  double step = scale->step_m * pt_per_m (scale->scale);
  cairo_t *cr = sheet->cr;

  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  for (int i = 0; i < scale->n_steps; i += 2)
    cairo_rectangle (cr, x + i * step, y, step, 3.2);
  cairo_fill (cr);

  lr_theme_set_line (cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_rectangle (cr, x, y, step * scale->n_steps, 3.2);
  cairo_stroke (cr);

  for (int i = 0; i <= scale->n_steps; i++)
    {
      g_autofree char *label = bar_label (sheet, scale, i);
      g_autofree char *number = g_strdup (label);
      double width;

      /* the figure stands on its stroke, the unit beside it */
      number[strcspn (number, " ")] = '\0';
      width = lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, number);
      lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink,
                   x + i * step - width / 2.0, y - 3.8, label);
    }
}

static const LrStandardScale *
find_scale (const LrSheet *sheet,
            int            denominator)
{
  gsize n;
  const LrStandardScale *list = scales (sheet, &n);

  for (gsize i = 0; i < n; i++)
    if (list[i].scale == denominator)
      return &list[i];

  return &list[0];
}

/* Scale and bar under the room, from its left to its right face where they fit, else in the middle of the area */
static void
draw_scale (const LrSheet     *sheet,
            const LrPlanPlace *place,
            const LrBounds    *bounds)
{
  const LrStandardScale *scale = find_scale (sheet, place->scale);
  g_autofree char *title = g_strdup_printf (_("Scale 1:%d"), place->scale);
  g_autofree char *note = bar_note (sheet, scale);
  double bar = scale->step_m * scale->n_steps * place->view.scale;
  double words = lr_page_text_width (sheet, 8.6, PANGO_WEIGHT_BOLD, title) + 4.2
                 + lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, note);
  double left = place->view.origin.x + bounds->low_m.x * place->view.scale;
  double right = place->view.origin.x + bounds->high_m.x * place->view.scale;
  double need = words + 16.0 + bar, base = place->bar_y + BAR_PT, x;

  if (right - left < need)
    {
      left = CLAMP ((left + right - need) / 2.0, place->area.x, MAX (place->area.x + place->area.width - need, place->area.x));
      right = left + need;
    }

  lr_page_tag_begin (sheet, "P");
  x = left + lr_page_put (sheet, 8.6, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink, left, base, title) + 4.2;
  lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink2, x, base, note);
  draw_bar (sheet, scale, right - bar, base - 4.6);
  lr_page_tag_end (sheet, "P");
}

/* --- The plan ------------------------------------------------------------------------------------------------- */

static void
draw_no_plan (const LrSheet     *sheet,
              const LrPlanPlace *place)
{
  gboolean is_empty = sheet->study->setup->room->n_corners < 3;

  lr_page_tag_begin (sheet, "P");
  lr_page_put (sheet, 10.0, PANGO_WEIGHT_NORMAL, LR_ALIGN_CENTRE, sheet->theme->ink2,
               place->area.x + place->area.width / 2.0, place->area.y + place->area.height / 2.0,
               is_empty ? _("The room has no walls yet.") : _("The room is too large for a sheet of this size."));
  lr_page_tag_end (sheet, "P");
}

/**
 * lr_page_plan_draw:
 * @sheet: the page
 * @place: where the plan stands
 *
 * Draws the plan, its dimensions, taped corners and scale bar.
 */
void
lr_page_plan_draw (const LrSheet     *sheet,
                   const LrPlanPlace *place)
{
  const LrStudy *study = sheet->study;
  cairo_t *cr = sheet->cr;
  LrBounds bounds;

  if (place->view.scale <= 0.0 || !get_bounds (study, &bounds))
    {
      draw_no_plan (sheet, place);
      return;
    }

  lr_page_anchor (sheet, "plan");
  lr_page_tag_begin (sheet, "Figure");
  cairo_save (cr);
  cairo_rectangle (cr, place->area.x, place->area.y, place->area.width + place->gutter / 2.0, place->area.height);
  cairo_clip (cr);
  lr_floor_draw (cr, study->plan, study, sheet->remarks, &place->view);
  cairo_restore (cr);
  lr_north_draw (cr, sheet->theme, study->setup->room->north_rad, NORTH_RADIUS_PT,
                 place->area.x + place->area.width - 15.7, place->area.y + 21.2);

  lr_page_chains_draw (sheet, &place->view, place->chains);
  if (study->has_tapes)
    {
      draw_corner (sheet, place, study->tape_p, "P");
      draw_corner (sheet, place, study->tape_q, "Q");
    }
  lr_page_tag_end (sheet, "Figure");

  draw_scale (sheet, place, &bounds);
}
