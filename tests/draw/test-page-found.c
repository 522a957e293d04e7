/* test-page-found.c - the page of a set-up as found: what is otherwise than planned, in words and in broken lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor.h"
#include "page.h"
#include "pdf_probe.h"
#include "plan_edit.h"
#include "plan_reader.h"

#include <glib/gstdio.h>
#include <string.h>

static void
take (LrPlan **plan,
      LrPlan  *next)
{
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static LrPlan *
found_loft (void)
{
  g_autofree char *path = g_build_filename (LR_EXAMPLES_DIR, "loft.lookroom", NULL);
  LrPlan *plan = lr_plan_read (path, NULL);

  g_assert_nonnull (plan);
  take (&plan, lr_plan_copy_found (plan, "As found", NULL));
  return plan;
}

/* Text of the page of a plan; (transfer full) */
static char *
page_text (const LrPlan *plan)
{
  const LrPageOptions options = { .paper = LR_PAPER_A4, .units = LR_UNITS_METRIC, .created_unix_s = 1770000000 };
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  g_autofree char *path = NULL, *info = NULL;
  g_autoptr (GError) error = NULL;
  int fd = g_file_open_tmp ("lookroom-XXXXXX.pdf", &path, &error);
  char *text;

  g_assert_no_error (error);
  g_close (fd, NULL);
  lr_page_write_pdf (study, remarks, &options, path, &error);
  g_assert_no_error (error);
  {
    const char *const args[] = { "pdftotext", "-layout", path, "-", NULL }, *const about[] = { "pdfinfo", path, NULL };

    text = probe_run (args);
    info = probe_run (about);
  }
  g_assert_nonnull (strstr (info, "Pages:           1\n"));
  g_unlink (path);
  return text;
}

static void
test_block (void)
{
  g_autoptr (LrPlan) plan = found_loft ();
  g_autofree char *same = NULL, *other = NULL;

  if (!probe_has_tools ())
    return;
  same = page_text (plan);
  g_assert_null (strstr (same, "Otherwise than planned"));

  take (&plan, lr_plan_set_wall_length (plan, 0, 6.9, NULL));
  other = page_text (plan);
  g_assert_nonnull (strstr (other, "Otherwise than planned"));
  g_assert_nonnull (strstr (other, "Wall 1 (south wall) is 30"));
}

/* Far too many to be told: as many as have room, and how many are left out; what is to fix is told all the same */
static void
test_many (void)
{
  g_autoptr (LrPlan) plan = found_loft ();
  g_autofree char *text = NULL;
  const char *block, *more;

  if (!probe_has_tools ())
    return;
  take (&plan, lr_plan_set_wall_length (plan, 0, 6.9, NULL));
  for (int i = 0; i < 40; i++)
    {
      g_autoptr (LrItem) chair = lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "");

      take (&plan, lr_plan_add (plan, chair, lr_vec2 (6.0 + 0.01 * i, 3.0), 0.0, NULL, NULL));
    }
  text = page_text (plan);
  block = strstr (text, "Otherwise than planned");
  g_assert_nonnull (block);
  more = strstr (block, "more");
  g_assert_nonnull (more);
  g_assert_nonnull (strstr (text, "Still open"));
}

static double
brightness_of (const LrPlan *plan,
               const LrPlan *planned)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrView view = { .theme = lr_theme_get (LR_THEME_LIGHT), .width = 800, .height = 600, .is_read_only = TRUE, .planned = planned };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 800, 600);
  cairo_t *cr = cairo_create (surface);
  double sum = 0.0;

  lr_view_fit (&view, study, 40.0, 0.0);
  lr_floor_draw (cr, plan, study, NULL, &view);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 600; y++)
    for (int x = 0; x < 800; x++)
      sum += cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + 4 * x];
  cairo_surface_destroy (surface);
  return sum;
}

/* A lamp that is elsewhere has a ghost where it was planned; nothing is drawn while nothing is elsewhere */
static void
test_ghost (void)
{
  g_autoptr (LrPlan) plan = found_loft ();
  g_autoptr (LrPlan) planned = lr_plan_show_setup (plan, lr_plan_planned (plan)->id, NULL);
  double bare, same, bare_moved, moved;

  bare = brightness_of (plan, NULL);
  same = brightness_of (plan, planned);
  g_assert_cmpfloat (bare, ==, same);

  take (&plan, lr_plan_move (plan, "light-1", lr_vec2 (5.8, 1.6), NULL));
  bare_moved = brightness_of (plan, NULL);
  moved = brightness_of (plan, planned);
  g_assert_cmpfloat (moved, <, bare_moved - 1000.0); /* dark lines on a light ground */
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/page-found/block", test_block);
  g_test_add_func ("/page-found/many", test_many);
  g_test_add_func ("/page-found/ghost", test_ghost);

  return g_test_run ();
}
