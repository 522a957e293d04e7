/* test-packing-sheet.c - the packing list on paper, as a PDF reader finds it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "packing_words.h"
#include "page.h"
#include "pdf_probe.h"
#include "plan_edit.h"
#include "plan_reader.h"

#include <glib/gstdio.h>
#include <string.h>

#define LEAST_PT 6.5 /* no type is smaller: the design of the page */

static char *
write_pdf (const LrPlan *plan,
           guint         sheets)
{
  const LrPageOptions options = { .paper = LR_PAPER_A4, .units = LR_UNITS_METRIC, .created_unix_s = 1770000000, .sheets = sheets };
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  g_autoptr (GError) error = NULL;
  char *path;
  int fd = g_file_open_tmp ("lookroom-XXXXXX.pdf", &path, &error);

  g_assert_no_error (error);
  g_close (fd, NULL);
  lr_page_write_pdf (study, remarks, &options, path, &error);
  g_assert_no_error (error);
  return path;
}

static char *
text_of (const char *path,
         const char *first)
{
  const char *const args[] = { "pdftotext", "-f", first, "-layout", path, "-", NULL };

  return probe_run (args);
}

/* The first words of a title, which the column may break after */
static gboolean
holds_start (const char *text,
             const char *title)
{
  g_auto (GStrv) words = g_strsplit_set (title, " ,", -1);

  return strstr (text, words[0]) != NULL;
}

/* Every row is there with its number, what lacks before all others, type is not too small; unasked for there is one sheet */
static void
test_rows (void)
{
  g_autofree char *example = g_build_filename (LR_EXAMPLES_DIR, "loft.lookroom", NULL), *path = NULL, *alone = NULL;
  g_autofree char *text = NULL, *other = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (example, &error), fewer = NULL;
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  const char *lack, *group;

  if (!probe_has_tools ())
    {
      g_test_skip ("no poppler tools");
      return;
    }
  fewer = lr_plan_set_kit_count (plan, "camera-body", 1, &error);
  g_assert_no_error (error);
  study = lr_study_new (fewer);
  rows = lr_pack_rows_new (study, LR_UNITS_METRIC);

  path = write_pdf (fewer, LR_SHEET_PACKING);
  text = text_of (path, "2");
  g_assert_nonnull (strstr (text, "Packing list"));
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];

      g_test_message ("%s", row->title);
      g_assert_true (holds_start (text, row->title));
    }
  lack = strstr (text, lr_pack_lack_title ());
  group = strstr (text, lr_pack_group_title (LR_PACK_CAMERA));
  g_assert_nonnull (lack);
  g_assert_nonnull (group);
  g_assert_true (lack < group);
  g_assert_cmpfloat (probe_least_type_pt (path), >=, LEAST_PT - 1e-3);

  alone = write_pdf (fewer, 0);
  other = text_of (alone, "1");
  g_assert_null (strstr (other, "Packing list"));
  g_unlink (path);
  g_unlink (alone);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/packing-sheet/rows", test_rows);

  return g_test_run ();
}
