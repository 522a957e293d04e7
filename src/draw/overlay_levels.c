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

#define FINER 4              /* of the map's net, each way: lines are traced straight from cell to cell */
#define MOST_STOPS 2
#define LEAST_STOPS -4
#define LEAST_LX 1.0
#define N_PLACES 16          /* that a label may choose from */
#define OFF_WALL_M 0.60      /* of labels, where a line goes so far from walls, for leads and furniture stand along them */
#define LEAST_OFF_WALL_M 0.25
#define LEAST_SCALE_FOR_LABELS 60.0 /* px to the metre */
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

/* Catmull and Rom's cubic through b at 0 and c at 1; straight where a neighbor is not known */
static double
curve (double a,
       double b,
       double c,
       double d,
       double t)
{
  double before = isnan (a) ? c - b : 0.5 * (c - a), after = isnan (d) ? c - b : 0.5 * (d - b), turn = b - c;

  if (t <= 0.0 || t >= 1.0)
    return t <= 0.0 ? b : c;
  return b + t * (before + t * (-3.0 * turn - 2.0 * before - after + t * (2.0 * turn + before + after)));
}

/* One row of @n values, @step apart, drawn out to FINER as many, @finer_step apart */
static void
draw_out (const double *values,
          guint         n,
          guint         step,
          double       *finer,
          guint         finer_step)
{
  for (guint i = 0; i < (n - 1) * FINER + 1; i++)
    {
      guint at = MIN (i / FINER, n - 2);
      double before = at > 0 ? values[(at - 1) * step] : (double) NAN, after = at + 2 < n ? values[(at + 2) * step] : (double) NAN;

      finer[i * finer_step] = curve (before, values[at * step], values[(at + 1) * step], after, (double) i / FINER - at);
    }
}

static Net
make_net (const LrLevelMap *map,
          double            face_lx)
{
  Net net = { map, map->step_m / FINER, (map->n - 1) * FINER + 1, (map->m - 1) * FINER + 1, NULL };
  g_autofree double *stops = g_new (double, map->n * map->m), *rows = g_new (double, net.n * map->m);

  for (guint i = 0; i < map->n * map->m; i++)
    {
      double lux = level_near (map, i);

      stops[i] = isnan (lux) ? lux : log2 (fmax (lux, 1e-3) / face_lx);
    }
  for (guint j = 0; j < map->m; j++)
    draw_out (&stops[j * map->n], map->n, 1, &rows[j * net.n], 1);
  net.stops = g_new (double, net.n * net.m);
  for (guint i = 0; i < net.n; i++)
    draw_out (&rows[i], map->m, net.n, &net.stops[i], net.n);
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

/* Those that keep the distance from the walls; all if none does */
static void
keep_off_walls (const LrFloor *floor,
                GArray        *middles_m)
{
  guint n = 0;

  for (guint i = 0; i < middles_m->len; i++)
    {
      LrVec2 at_m = g_array_index (middles_m, LrVec2, i);

      if (lr_polygon_distance_m (floor->room->corners_m, floor->room->n_corners, at_m, NULL) > OFF_WALL_M)
        g_array_index (middles_m, LrVec2, n++) = at_m;
    }
  if (n > 0)
    g_array_set_size (middles_m, n);
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
          if (lr_polygon_distance_m (floor->room->corners_m, floor->room->n_corners, middle_m, NULL) > LEAST_OFF_WALL_M)
            g_array_append_val (middles_m, middle_m);
        }
    }
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_LIGHT], stops == 0 ? 0.9 : 0.5);
  lr_theme_set_line (floor->cr, floor->theme, stops == 0 ? LR_LINE_OUTLINE : LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
  keep_off_walls (floor, middles_m);
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
      || MIN (map->n, map->m) < 2 || floor->room->n_corners < 3)
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
