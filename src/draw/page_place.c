/* page_place.c - where the floor plan stands: the largest standard scale that fits
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scales: ISO 5455:1979 (1:20, 1:50, 1:100, ...); in inch units those of the architect's rule (1/2 in, 1/4 in, 1/8 in
 * to the foot and their halves). The largest at which the room and its dimensions fit is taken, and never reduced.
 */

#include "config.h"

#include "page_private.h"
#include "pen.h"

#define TITLE_FOOT_PT  31.0
#define NOTES_PT       13.0 /* outside a wall: names of windows and sockets */
#define BAR_GAP_PT      0.5
#define TAPE_GAP_PT     8.0
#define OUTSIDE_M       1.5 /* things outside the walls are kept on the sheet when they are this near */
#define LEAST_TAPE_LINES 3

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

static const LrStandardScale *
scales (const LrSheet *sheet,
        gsize         *n)
{
  *n = lr_page_is_imperial (sheet) ? G_N_ELEMENTS (inch_scales) : G_N_ELEMENTS (metric_scales);
  return lr_page_is_imperial (sheet) ? inch_scales : metric_scales;
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

/* Whether something outside the upper wall would run into the title */
static gboolean
meets_title (const LrSheet     *sheet,
             const LrPlanPlace *place,
             const LrBounds    *bounds)
{
  const LrStudy *study = sheet->study;
  double title = MAX (lr_page_text_width (sheet, LR_PAGE_TITLE_SIZE, PANGO_WEIGHT_BOLD, lr_page_title_text (sheet)),
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
          && (low.x < place->area.x + title + 6.0 || high.x > place->area.x + place->area.width - LR_PAGE_NORTH_PT))
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
  need_height = top + inner_height + sides[LR_EDGE_BOTTOM] + BAR_GAP_PT + LR_PAGE_BAR_PT;
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

  place->low_m = bounds->low_m;
  place->high_m = bounds->high_m;
  place->bar_y = place->view.origin.y - bounds->low_m.y * scale + sides[LR_EDGE_BOTTOM] + BAR_GAP_PT;
  return TRUE;
}

static void
place_empty (const LrSheet *sheet,
             double         width_pt,
             double         height_pt,
             LrPlanPlace   *place)
{
  place->scale = lr_page_is_imperial (sheet) ? 48 : 50;
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

  place->has_plan = get_bounds (sheet->study, &bounds);
  if (!place->has_plan)
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
  place->has_plan = FALSE;
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

/**
 * lr_page_standard_scale:
 * @sheet: the page
 * @denominator: 50 for 1:50
 *
 * Returns: (transfer none): that scale of the sheet's units, or the first one
 */
const LrStandardScale *
lr_page_standard_scale (const LrSheet *sheet,
                        int            denominator)
{
  gsize n;
  const LrStandardScale *list = scales (sheet, &n);

  for (gsize i = 0; i < n; i++)
    if (list[i].scale == denominator)
      return &list[i];

  return &list[0];
}

/**
 * lr_page_scale_for:
 * @sheet: the page
 * @width_m: of what is drawn [m]
 * @height_m: of what is drawn [m]
 * @width_pt: that it has [pt]
 * @height_pt: that it has [pt]
 *
 * Returns: (transfer none) (nullable): the largest standard scale at which it fits
 */
const LrStandardScale *
lr_page_scale_for (const LrSheet *sheet,
                   double         width_m,
                   double         height_m,
                   double         width_pt,
                   double         height_pt)
{
  gsize n;
  const LrStandardScale *list = scales (sheet, &n);

  for (gsize i = 0; i < n; i++)
    if (width_m * pt_per_m (list[i].scale) <= width_pt && height_m * pt_per_m (list[i].scale) <= height_pt)
      return &list[i];

  return NULL;
}
