/* bench-plan.c - an edit of a plan of 1,000 items, and its file against a bare JSON parser and printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bench.h"

#include "plan_edit.h"
#include "plan_reader.h"
#include "plan_writer.h"
#include "typical.h"

#include <malloc.h>

#define N_ITEMS 1000
#define N_KEPT 500

static void
move_one (gpointer data)
{
  static guint step;
  LrPlan *next = lr_plan_move (data, "furniture-9", lr_vec2 (0.001 * (step++ % 1000), 1.0), NULL);

  lr_plan_unref (next);
}

static void
add_one (gpointer data)
{
  g_autoptr (LrItem) chair = lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "chair");
  LrPlan *next = lr_plan_add (data, chair, lr_vec2 (1.0, 1.0), 0.0, NULL, NULL);

  lr_plan_unref (next);
}

/* An edit is made with every frame of a drag: it may take a hundredth of the frame's 8 ms. Putting a thing into the room
 * happens once a drag. */
static void
bench_edits (LrPlan *plan)
{
  LrBenchSide sides[] = { { .run = move_one, .data = plan }, { .run = add_one, .data = plan } };

  lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_row_ms ("move one of 1,000 items: the next plan", sides[0].time_s, 0.08e-3);
  lr_bench_row_ms ("add one to 1,000 items: the next plan", sides[1].time_s, 1e-3);
}

/* What an undo step keeps: two pointers an item at most, never a copy of the items */
static void
bench_kept (LrPlan *plan)
{
  LrPlan *kept[N_KEPT];
  gsize before, after;

  before = mallinfo2 ().uordblks;
  for (guint i = 0; i < N_KEPT; i++)
    kept[i] = lr_plan_move (i == 0 ? plan : kept[i - 1], "furniture-9", lr_vec2 (0.001 * i, 1.0), NULL);
  after = mallinfo2 ().uordblks;
  for (guint i = 0; i < N_KEPT; i++)
    lr_plan_unref (kept[i]);

  lr_bench_row_bytes ("a kept plan of 1,000 items, one moved", (double) (after - before) / N_KEPT,
                      2.0 * sizeof (gpointer) * N_ITEMS);
}

typedef struct
{
  LrPlan   *plan;
  GBytes   *bytes;
  JsonNode *root;
} File;

static void
load (gpointer data)
{
  File *file = data;
  gsize length;
  const char *text = g_bytes_get_data (file->bytes, &length);

  lr_plan_unref (lr_plan_read_data (text, length, NULL));
}

static void
parse (gpointer data)
{
  File *file = data;
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  gsize length;
  const char *text = g_bytes_get_data (file->bytes, &length);

  json_parser_load_from_data (parser, text, (gssize) length, NULL);
}

static void
save (gpointer data)
{
  File *file = data;

  g_bytes_unref (lr_plan_to_bytes (file->plan));
}

static void
print (gpointer data)
{
  File *file = data;

  g_free (json_to_string (file->root, TRUE));
}

static void
bench_file (LrPlan *plan)
{
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  File file = { plan, bytes, json_from_string (text, NULL) };
  LrBenchSide reads[] = { { .run = load, .data = &file }, { .run = parse, .data = &file } };
  LrBenchSide writes[] = { { .run = save, .data = &file }, { .run = print, .data = &file } };
  double ratio;

  ratio = lr_bench_measure (reads, G_N_ELEMENTS (reads));
  lr_bench_row_ratio ("load 1,000 items : bare parse", ratio, 1.5, "%.1f : %.1f ms, %.0f kB", reads[0].time_s * 1e3,
                      reads[1].time_s * 1e3, (double) length / 1e3);
  ratio = lr_bench_measure (writes, G_N_ELEMENTS (writes));
  lr_bench_row_ratio ("save 1,000 items : bare print", ratio, 1.5, "%.1f : %.1f ms", writes[0].time_s * 1e3,
                      writes[1].time_s * 1e3);
  json_node_unref (file.root);
}

int
main (void)
{
  g_autoptr (LrPlan) plan = lr_large_plan_new (N_ITEMS);

  bench_edits (plan);
  bench_kept (plan);
  bench_file (plan);

  return 0;
}
