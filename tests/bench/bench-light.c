/* bench-light.c - light from the sources and from the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bench.h"

#include "light_levels.h"
#include "radiosity.h"
#include "typical.h"

#define N_PATCHES 3000
#define ROOM_M ((LrVec3) { 7.2, 5.4, 2.8 })

static void
levels (gpointer plan)
{
  lr_light_levels_unref (lr_light_levels_new (plan, TRUE, NULL));
}

static void
direct (gpointer plan)
{
  lr_light_levels_unref (lr_light_levels_new (plan, FALSE, NULL));
}

static void
bench_typical (void)
{
  g_autoptr (LrPlan) plan = lr_typical_plan_new ();
  LrBenchSide sides[] = { { .run = levels, .data = plan }, { .run = direct, .data = plan } };

  lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_note ("levels of light, typical plan, one core", "%.1f ms", sides[0].time_s * 1e3);
  lr_bench_note ("  of which straight from the sources", "%.2f ms", sides[1].time_s * 1e3);
}

static LrVec3
turn (LrVec3 v,
      int    axis)
{
  return axis == 0 ? lr_vec3 (v.z, v.x, v.y) : axis == 1 ? lr_vec3 (v.y, v.z, v.x) : v;
}

/* An empty room, cut into about N_PATCHES: each side is the square of two of its edges, looked at along the third */
static GArray *
make_room (void)
{
  GArray *patches = g_array_new (FALSE, FALSE, sizeof (LrPatch));
  double edge_m[3] = { ROOM_M.x, ROOM_M.y, ROOM_M.z };
  double side_m = sqrt (2.0 * (edge_m[0] * edge_m[1] + edge_m[1] * edge_m[2] + edge_m[2] * edge_m[0]) / N_PATCHES);

  for (int axis = 0; axis < 3; axis++)
    {
      double a_m = edge_m[(axis + 1) % 3], b_m = edge_m[(axis + 2) % 3];
      guint n = (guint) (a_m / side_m + 0.5), m = (guint) (b_m / side_m + 0.5);

      for (guint i = 0; i < 2 * n * m; i++)
        {
          double far_m = i % 2 == 0 ? 0.0 : edge_m[axis];
          double x0 = a_m * (i / 2 % n) / n, x1 = x0 + a_m / n, y0 = b_m * (i / 2 / n) / m, y1 = y0 + b_m / m;
          LrVec3 corner_m[4] = { turn (lr_vec3 (x0, y0, far_m), axis), turn (lr_vec3 (x1, y0, far_m), axis),
                                 turn (lr_vec3 (x1, y1, far_m), axis), turn (lr_vec3 (x0, y1, far_m), axis) };
          LrVec3 other_m[4] = { corner_m[3], corner_m[2], corner_m[1], corner_m[0] };
          LrPatch patch;

          if (lr_patch_init (&patch, i % 2 == 0 ? corner_m : other_m, 4, 0.6))
            g_array_append_val (patches, patch);
        }
    }
  return patches;
}

static void
solve (gpointer data)
{
  const GArray *patches = data;
  const LrPatch *patch = (const LrPatch *) (gpointer) patches->data;
  gsize n = patches->len;
  g_autofree float *exchange = g_new0 (float, n * n);
  g_autofree double *scale = g_new (double, n), *direct_lx = g_new0 (double, n), *lux = g_new0 (double, n);

  direct_lx[0] = 1000.0;
  for (gsize i = 0; i < n; i++)
    lr_exchange_rows (patch, n, i, n, NULL, NULL, exchange);
  lr_exchange_close (patch, n, exchange, scale);
  if (lr_radiosity_solve (patch, n, exchange, direct_lx, lux) == 0)
    g_error ("the room does not settle");
}

static void
bench_room (void)
{
  g_autoptr (GArray) patches = make_room ();
  g_autofree char *what = g_strdup_printf ("inter-reflection, %u patches, one core", patches->len);
  LrBenchSide side = { .run = solve, .data = patches };

  lr_bench_measure (&side, 1);
  lr_bench_row_ms (what, side.time_s, 1.0);
}

int
main (void)
{
  bench_typical ();
  bench_room ();
  return 0;
}
