/* overlay_levels.c - lines of equal light over the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line for each stop from the light on the bright side of the subject's face, which has the heavier line: what a face that is moved
 * there, and turned to where most light comes from, would get.
 */

#include "config.h"

#include "floor_layers.h"

#include <glib/gi18n-lib.h>

#define FINER 3              /* of the map's net, each way: lines are traced straight from cell to cell */
#define MOST_STOPS 2
#define LEAST_STOPS -4
#define LEAST_LX 1.0
#define N_PLACES 10          /* that a label may choose from */
#define OFF_WALL_M 0.25
#define LEAST_SCALE_FOR_LABELS 45.0 /* px to the metre */
#define NBSP "\302\240"

/* The net, finer, in stops from the face's level */
typedef struct
{
  const LrLevelMap *map;
  double  step_m;
  guint   n, m;
  double *stops;
} Net;

/* A point of the map, or beside one: so that the lines reach walls and furniture, which stand between the points */
static double
level_near (const LrLevelMap *map,
            guint             i)
{
  double sum_lx = 0.0;
  guint n = 0;

  if (!isnan (map->lx[i]))
    return map->lx[i];

  for (int dy = -1; dy <= 1; dy++)
    for (int dx = -1; dx <= 1; dx++)
      {
        int x = (int) (i % map->n) + dx, y = (int) (i / map->n) + dy;

        if (x < 0 || y < 0 || x >= (int) map->n || y >= (int) map->m || isnan (map->lx[y * (int) map->n + x]))
          continue;
        sum_lx += map->lx[y * (int) map->n + x];
        n++;
      }
  return n > 0 ? sum_lx / n : (double) NAN;
}

static Net
make_net (const LrLevelMap *map,
          double            face_lx)
{
  Net net = { map, map->step_m / FINER, (map->n - 1) * FINER + 1, (map->m - 1) * FINER + 1, NULL };
  g_autofree double *lx = g_new (double, map->n * map->m);
  LrLevelMap whole = *map;

  for (guint i = 0; i < map->n * map->m; i++)
    lx[i] = level_near (map, i);
  whole.lx = lx;
  net.stops = g_new (double, net.n * net.m);
  for (guint i = 0; i < net.n * net.m; i++)
    {
      LrVec2 at_m = lr_vec2 (map->from_m.x + net.step_m * (i % net.n), map->from_m.y + net.step_m * (i / net.n));
      double here_lx = lr_level_map_lx (&whole, at_m);

      net.stops[i] = isnan (here_lx) ? here_lx : log2 (fmax (here_lx, 1e-3) / face_lx);
    }
  return net;
}

/* Where the level is met between two corners of a cell; FALSE: nowhere */
static gboolean
cross (LrVec2  a_m,
       LrVec2  b_m,
       double  a,
       double  b,
       LrVec2 *at_m)
{
  if ((a > 0.0) == (b > 0.0))
    return FALSE;

  *at_m = lr_vec2_along (a_m, lr_vec2_sub (b_m, a_m), a / (a - b));
  return TRUE;
}

/* Marching squares: the ends of the lines through a cell, in pairs; 0, 2 or 4 */
static guint
cross_cell (const Net *net,
            guint      cell,
            double     stops,
            LrVec2     ends_m[4])
{
  guint i = cell % (net->n - 1), j = cell / (net->n - 1), n = 0;
  const guint corners[4] = { j * net->n + i, j * net->n + i + 1, (j + 1) * net->n + i + 1, (j + 1) * net->n + i };
  LrVec2 low = lr_vec2 (net->map->from_m.x + net->step_m * i, net->map->from_m.y + net->step_m * j);
  const LrVec2 at_m[4] = { low, lr_vec2 (low.x + net->step_m, low.y), lr_vec2 (low.x + net->step_m, low.y + net->step_m),
                           lr_vec2 (low.x, low.y + net->step_m) };
  double value[4], mean = 0.0;

  for (int k = 0; k < 4; k++)
    {
      value[k] = net->stops[corners[k]] - stops;
      mean += 0.25 * value[k];
    }
  if (isnan (mean))
    return 0;

  for (int k = 0; k < 4; k++)
    n += cross (at_m[k], at_m[(k + 1) % 4], value[k], value[(k + 1) % 4], &ends_m[n]);
  if (n == 4 && (mean > 0.0) == (value[0] > 0.0)) /* a saddle: the first corner is joined to the one across */
    return 4;
  if (n == 4)
    {
      LrVec2 last_m = ends_m[3];

      ends_m[3] = ends_m[2];
      ends_m[2] = ends_m[1];
      ends_m[1] = last_m;
    }
  return n;
}

static void
label_level (const LrFloor *floor,
             double         lux,
             const GArray  *middles_m)
{
  LrVec2 places[N_PLACES];
  g_autofree char *text = g_strdup_printf (_("%.0f" NBSP "lx"), lr_lux_round (lux));
  LrLabel label = {
    .rank = LR_LABEL_SCALE, .stands_on_lines = TRUE, .text = text, .style = { .size = floor->theme->type_size[LR_TYPE_STOP] },
    .color = floor->theme->family_line[LR_FAMILY_LIGHT], .halo = floor->theme->room, .has_halo = TRUE,
  };
  guint n = MIN (middles_m->len, N_PLACES);

  for (guint i = 0; i < n; i++)
    places[i] = lr_floor_device (floor, g_array_index (middles_m, LrVec2, (2 * i + 1) * middles_m->len / (2 * n)));
  if (n > 0 && floor->view->scale >= LEAST_SCALE_FOR_LABELS)
    lr_labels_add_at (floor->labels, &label, places, n);
}

static void
draw_level (const LrFloor *floor,
            const Net     *net,
            int            stops,
            double         face_lx)
{
  g_autoptr (GArray) middles_m = g_array_new (FALSE, FALSE, sizeof (LrVec2));

  for (guint cell = 0; cell < (net->n - 1) * (net->m - 1); cell++)
    {
      LrVec2 ends_m[4];
      guint n = cross_cell (net, cell, stops, ends_m);

      for (guint k = 0; k + 1 < n; k += 2)
        {
          LrVec2 middle_m = lr_vec2_along (ends_m[k], lr_vec2_sub (ends_m[k + 1], ends_m[k]), 0.5);

          lr_floor_move_to (floor, ends_m[k]);
          lr_floor_line_to (floor, ends_m[k + 1]);
          if (lr_polygon_distance_m (floor->room->corners_m, floor->room->n_corners, middle_m, NULL) > OFF_WALL_M)
            g_array_append_val (middles_m, middle_m);
        }
    }
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_LIGHT], stops == 0 ? 1.0 : 0.75);
  lr_theme_set_line (floor->cr, floor->theme, stops == 0 ? LR_LINE_OUTLINE : LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
  label_level (floor, face_lx * exp2 (stops), middles_m);
}

/**
 * lr_overlay_levels:
 * @floor: a drawing
 *
 * Drawn with what stands still: the light of a thing that moves is known when it rests.
 */
void
lr_overlay_levels (const LrFloor *floor)
{
  const LrLightLevels *levels = floor->view->levels;
  const LrLevelMap *map = levels != NULL ? lr_light_levels_map (levels) : NULL;
  const LrFaceLight *face = levels != NULL ? lr_light_levels_main_face (levels) : NULL;
  double face_lx;
  Net net;

  if (!(floor->view->shown & LR_SHOW_LIGHT) || floor->view->is_page || !floor->has_base || map == NULL || face == NULL
      || floor->room->n_corners < 3)
    return;

  face_lx = lr_lux_all (face->at[face->lit]);
  if (!(face_lx >= LEAST_LX))
    return;

  net = make_net (map, face_lx);
  cairo_save (floor->cr);
  lr_floor_trace_room (floor);
  cairo_clip (floor->cr);
  for (int stops = LEAST_STOPS; stops <= MOST_STOPS; stops++)
    if (face_lx * exp2 (stops) >= LEAST_LX)
      draw_level (floor, &net, stops, face_lx);
  cairo_restore (floor->cr);
  g_free (net.stops);
}
