/* bench-study.c - studying and judging a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bench.h"

#include "plan_edit.h"
#include "power_readings.h"
#include "remarks.h"
#include "typical.h"

#include <math.h>

static void
study (gpointer plan)
{
  lr_study_free (lr_study_new (plan));
}

static void
study_and_judge (gpointer plan)
{
  g_autoptr (LrStudy) made = lr_study_new (plan);

  lr_remarks_free (lr_remarks_new (made, LR_UNITS_METRIC));
}

/* As in each frame of a drag */
static void
study_and_judge_moving (gpointer plan)
{
  g_autoptr (LrStudy) made = lr_study_new (plan);

  lr_remarks_free (lr_remarks_new_moving (made, NULL, LR_UNITS_METRIC));
}

static void
bench_typical (void)
{
  g_autoptr (LrPlan) plan = lr_typical_plan_new ();
  LrBenchSide sides[] = {
    { .run = study_and_judge, .data = plan }, { .run = study, .data = plan }, { .run = study_and_judge_moving, .data = plan },
  };

  lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_row_ms ("study and judge, typical plan, while it moves", sides[2].time_s, 0.2e-3);
  lr_bench_row_ms ("study and judge, typical plan, with remedies", sides[0].time_s, 0.2e-3);
  lr_bench_note ("  of which study", "%.3f ms", sides[1].time_s * 1e3);
}

static void
bench_large (void)
{
  static const guint sizes[] = { 1000, 500, 250 };
  g_autoptr (LrPlan) large = lr_large_plan_new (sizes[0]);
  g_autoptr (LrPlan) middle = lr_large_plan_new (sizes[1]);
  g_autoptr (LrPlan) small = lr_large_plan_new (sizes[2]);
  LrBenchSide sides[] = {
    { .run = study, .data = large }, { .run = study_and_judge, .data = large }, { .run = study_and_judge, .data = middle },
    { .run = study_and_judge, .data = small }, { .run = study_and_judge_moving, .data = large },
  };

  lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_row_ms ("study and judge, 1,000 items, while one moves", sides[4].time_s, 10e-3);
  lr_bench_row_ms ("study and judge, 1,000 items, with remedies", sides[1].time_s, 10e-3);
  lr_bench_note ("  of which study", "%.3f ms", sides[0].time_s * 1e3);
  for (guint i = 1; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autofree char *what = g_strdup_printf ("  growth from %u to %u items", sizes[i], sizes[i - 1]);

      lr_bench_row_ratio (what, sides[i].time_s / sides[i + 1].time_s, 2.0 * log (sizes[i - 1]) / log (sizes[i]),
                          "%.2f : %.2f ms; n log n", sides[i].time_s * 1e3, sides[i + 1].time_s * 1e3);
    }
}

static void
route_leads (gpointer data)
{
  const LrStudy *made = data;
  const LrPlaced *socket = NULL;
  LrVec2 path_m[LR_LEAD_POINTS];
  gsize n;

  for (guint i = 0; i < made->placed->len; i++)
    if (g_array_index (made->placed, LrPlaced, i).item->kind == LR_ITEM_SOCKET)
      socket = &g_array_index (made->placed, LrPlaced, i);
  for (guint routed = 0, i = 0; routed < 30; i = (i + 1) % made->placed->len)
    {
      const LrPlaced *load = &g_array_index (made->placed, LrPlaced, i);

      if (load->item->kind != LR_ITEM_LIGHT && load->item->kind != LR_ITEM_CAMERA)
        continue;
      lr_study_lead_way (made, socket, load, path_m, &n);
      routed++;
    }
}

static void
bench_leads (void)
{
  g_autoptr (LrPlan) plan = lr_typical_plan_new (), with_socket = NULL;
  g_autoptr (LrItem) socket = lr_item_new_usual (LR_ITEM_SOCKET, 0, "socket");
  g_autoptr (LrStudy) made = NULL;
  GError *error = NULL;
  LrBenchSide side = { .run = route_leads };

  with_socket = lr_plan_add (plan, socket, lr_vec2 (0.0, 2.5), 0.0, NULL, &error);
  g_assert_no_error (error);
  made = lr_study_new (with_socket);
  side.data = made;
  lr_bench_measure (&side, 1);
  lr_bench_row_ms ("30 leads laid along the walls", side.time_s, 8e-3);
}

int
main (void)
{
  bench_typical ();
  bench_large ();
  bench_leads ();

  return 0;
}
