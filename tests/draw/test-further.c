/* test-further.c - sheets behind the plan: nothing is lost, cut or left alone
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"
#include "further.h"
#include "pdf_probe.h"

#include <glib/gstdio.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define ALL (LR_SHEET_RUN | LR_SHEET_CHECKS | LR_SHEET_QUESTIONS | LR_SHEET_PACKING | LR_SHEET_TAPE | LR_SHEET_GRID)
#define N_QUESTIONS 60

typedef struct
{
  LrPlan        *plan;
  LrStudy       *study;
  LrRemarks     *remarks;
  LrPageOptions  options;
  cairo_surface_t *surface;
  LrSheet        sheet;
} Further;

static void
further_init (Further *f,
              LrPlan  *plan,
              LrPaper  paper)
{
  f->plan = plan;
  f->study = lr_study_new (plan);
  f->remarks = lr_remarks_new (f->study, LR_UNITS_METRIC);
  f->options = (LrPageOptions) { .paper = paper, .created_unix_s = 1770000000, .sheets = ALL };
  f->surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  f->sheet = (LrSheet) { cairo_create (f->surface), lr_theme_get (LR_THEME_PAGE), f->study, f->remarks, &f->options, LR_PAGE_BODY_SIZE };
}

static void
further_clear (Further *f)
{
  cairo_destroy (f->sheet.cr);
  cairo_surface_destroy (f->surface);
  lr_remarks_free (f->remarks);
  lr_study_free (f->study);
  lr_plan_unref (f->plan);
}

/* Words that stand nowhere else: "asked007". Some are long, with a note */
static LrPlan *
with_questions (guint n)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autofree LrQuestion *questions = g_new0 (LrQuestion, n);
  LrPlan *next;

  for (guint i = 0; i < n; i++)
    {
      questions[i].id = (char *) "";
      questions[i].text = i % 7 == 3 ? g_strdup_printf ("asked%03u %0300d & <then> how was it when it began, and what came of it after all?", i, 7)
                                     : g_strdup_printf ("asked%03u?", i);
      questions[i].note = i % 5 == 0 ? g_strdup ("let it stand") : g_strdup ("");
    }
  next = lr_plan_set_questions (plan, questions, n, NULL);
  for (guint i = 0; i < n; i++)
    {
      g_free (questions[i].text);
      g_free (questions[i].note);
    }
  g_assert_nonnull (next);
  return next;
}

static char *
write_pdf (Further *f)
{
  g_autoptr (GError) error = NULL;
  char *path = NULL;
  int fd = g_file_open_tmp ("lookroom-XXXXXX.pdf", &path, &error);

  g_assert_no_error (error);
  g_close (fd, NULL);
  lr_page_write_pdf (f->study, f->remarks, &f->options, path, &error);
  g_assert_no_error (error);
  return path;
}

/* --- As a reader of PDF finds them ---------------------------------------------------------------------------- */

/* Every box of a word inside the margins of its sheet; returns the words */
static GHashTable *
read_words (const char *path,
            guint      *n_sheets)
{
  const char *const args[] = { "pdftotext", "-bbox", path, "-", NULL };
  g_autofree char *text = probe_run (args);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  GHashTable *counts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  double width = 0.0, height = 0.0;

  *n_sheets = 0;
  for (char **line = lines; *line != NULL; line++)
    {
      double x0, y0, x1, y1;
      char *word;

      g_strstrip (*line);
      if (sscanf (*line, "<page width=\"%lf\" height=\"%lf\">", &width, &height) == 2)
        (*n_sheets)++;
      if (*n_sheets < 2 || sscanf (*line, "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">", &x0, &y0, &x1, &y1) != 4)
        continue;
      word = strchr (*line, '>') + 1;
      *strstr (word, "</word>") = '\0';
      g_test_message ("%s", word);
      g_assert_cmpfloat (x0, >=, LR_FLOW_MARGIN_PT - 1.0);
      g_assert_cmpfloat (x1, <=, width - LR_FLOW_MARGIN_PT + 1.0);
      g_assert_cmpfloat (y0, >=, LR_FLOW_MARGIN_PT - 4.0);
      g_assert_cmpfloat (y1, <=, height - LR_FLOW_MARGIN_PT + 1.0);
      g_hash_table_replace (counts, g_strdup (word), GINT_TO_POINTER (GPOINTER_TO_INT (g_hash_table_lookup (counts, word)) + 1));
    }
  return counts;
}

static void
test_pdf (gconstpointer data)
{
  LrPaper paper = GPOINTER_TO_INT (data);
  Further f;
  g_autofree char *path = NULL;
  g_autoptr (GHashTable) words = NULL;
  guint n_sheets;

  if (!probe_has_tools ())
    return;
  further_init (&f, with_questions (N_QUESTIONS), paper);
  path = write_pdf (&f);
  words = read_words (path, &n_sheets);
  g_assert_cmpuint (n_sheets, ==, lr_page_count (f.study, f.remarks, &f.options));
  g_assert_cmpuint (n_sheets, >, 6);
  for (guint i = 0; i < N_QUESTIONS; i++)
    {
      g_autofree char *word = g_strdup_printf (i % 7 == 3 ? "asked%03u" : "asked%03u?", i);

      g_assert_cmpint (GPOINTER_TO_INT (g_hash_table_lookup (words, word)), ==, 1);
    }
  /* the title of the list on each of its sheets */
  g_assert_cmpint (GPOINTER_TO_INT (g_hash_table_lookup (words, "continued")), >, 4);
  g_assert_cmpfloat (probe_least_type_pt (path), >=, 6.5);
  g_unlink (path);
  further_clear (&f);
}

/* Nobody asked: one sheet. The plan's own sheet says how many there are */
static void
test_default (void)
{
  Further f;
  g_autofree char *path = NULL;
  g_autoptr (GArray) words = NULL;

  further_init (&f, fixture_example ("loft"), LR_PAPER_A4);
  g_assert_cmpuint (lr_page_count (f.study, f.remarks, &f.options), >, 2);
  f.options.sheets = 0;
  g_assert_cmpuint (lr_page_count (f.study, f.remarks, &f.options), ==, 1);
  if (probe_has_tools ())
    {
      path = write_pdf (&f);
      words = probe_words (path);
      g_assert_nonnull (probe_find_word (words, "1/1"));
      g_unlink (path);
    }
  further_clear (&f);
}

/* --- By the flow itself --------------------------------------------------------------------------------------- */

static const LrFlowColumn columns[] = {
  { "Number", 40.0, 0.0, LR_ALIGN_RIGHT }, { "What", 0.0, 2.0, LR_ALIGN_LEFT }, { "Why", 0.0, 1.0, LR_ALIGN_LEFT },
};

static void
draw_nothing (const LrSheet *sheet G_GNUC_UNUSED,
              const LrBox   *box G_GNUC_UNUSED,
              gpointer       data G_GNUC_UNUSED)
{
}

/* Groups of every length up to 40 rows, so that every sort of break comes */
static LrFlow *
make_flow (Further *f)
{
  LrFlow *flow = lr_flow_new (&f->sheet);

  lr_flow_title (flow, "First", "a note");
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (guint group = 1; group <= 40; group++)
    {
      lr_flow_group (flow, "Group");
      for (guint i = 0; i < group; i++)
        {
          g_autofree char *number = g_strdup_printf ("%u", i);
          const char *cells[] = { number, i % 3 == 0 ? "much to be said about it, so much that it takes more than one line of its column" : "little",
                                  NULL };

          lr_flow_row (flow, LR_FLOW_BOX, cells);
          if (i % 4 == 0)
            lr_flow_lines (flow, 2);
        }
      lr_flow_paragraph (flow, "and that is all of it");
    }
  lr_flow_whole (flow, "Drawing", NULL, TRUE, draw_nothing, NULL, NULL);
  lr_flow_title (flow, "Last", NULL);
  lr_flow_figure (flow, 200.0, draw_nothing, NULL, NULL);
  lr_flow_break (flow);
  return flow;
}

static void
test_breaks (void)
{
  Further f;
  g_autoptr (LrFlow) flow = NULL;
  const LrBlock *before = NULL;
  LrBox upright, lying;

  further_init (&f, fixture_example ("loft"), LR_PAPER_A4);
  flow = make_flow (&f);
  lr_flow_whole_box (flow, FALSE, &upright);
  lr_flow_whole_box (flow, TRUE, &lying);
  g_assert_cmpfloat (lying.width, >, upright.width);
  g_assert_cmpuint (flow->sheets->len, >, 10);
  for (guint i = 0; i < flow->blocks->len; i++)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i);
      const LrBlock *next = i + 1 < flow->blocks->len ? g_ptr_array_index (flow->blocks, i + 1) : NULL;

      if (block->kind == LR_BLOCK_TITLE || block->kind == LR_BLOCK_WHOLE)
        {
          before = NULL;
          continue;
        }
      /* inside the sheet, under what came before with its heads, in order */
      g_assert_cmpfloat (block->y, >=, 0.0);
      g_assert_cmpfloat (block->y + block->height, <=, upright.height + 1e-9);
      if (before != NULL && before->sheet == block->sheet)
        g_assert_cmpfloat_with_epsilon (before->y + before->height + (block->has_heads ? LR_FLOW_HEADS_PT : 0.0), block->y, 1e-9);
      else if (before != NULL)
        g_assert_cmpuint (block->sheet, ==, before->sheet + 1);
      /* a title with its first row, lines with their question */
      if (block->kind == LR_BLOCK_GROUP)
        g_assert_cmpuint (next->sheet, ==, block->sheet);
      if (block->kind == LR_BLOCK_LINES)
        g_assert_cmpuint (before->sheet, ==, block->sheet);
      /* the first row of a sheet has heads */
      if (block->kind == LR_BLOCK_ROW && (before == NULL || before->sheet != block->sheet))
        g_assert_true (block->has_heads);
      before = block;
    }
  for (guint i = 1; i < flow->sheets->len; i++)
    {
      const LrFlowSheet *sheet = &g_array_index (flow->sheets, LrFlowSheet, i);

      g_assert_true (sheet->group == NULL || sheet->goes_on);
      g_assert_true (sheet->is_lying == (sheet->title->kind == LR_BLOCK_WHOLE));
    }
  g_clear_pointer (&flow, lr_flow_free);
  further_clear (&f);
}

/* Rows on the last sheet of a list of @n rows; @n_sheets (out): that it has */
static guint
rows_on_last (Further *f,
              guint    n,
              guint   *n_sheets)
{
  g_autoptr (LrFlow) flow = lr_flow_new (&f->sheet);
  const char *cells[] = { "1", "a row", "of one line" };
  guint n_last = 0;

  lr_flow_title (flow, "Rows", NULL);
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < n; i++)
    lr_flow_row (flow, LR_FLOW_BOX, cells);
  lr_flow_break (flow);
  *n_sheets = flow->sheets->len;
  for (guint i = 0; i < flow->blocks->len; i++)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i);

      n_last += block->kind == LR_BLOCK_ROW && block->sheet == flow->sheets->len - 1;
    }
  return n_last;
}

/* A list never goes on for a row or two: it is set tighter, or its last sheet has three at least */
static void
test_few_rows (void)
{
  Further f;
  guint least = G_MAXUINT, n_tight = 0, before = 1;

  further_init (&f, fixture_example ("loft"), LR_PAPER_A4);
  for (guint n = 1; n <= 160; n++)
    {
      guint n_sheets, n_last = rows_on_last (&f, n, &n_sheets);

      g_assert_cmpuint (n_sheets, >=, before);
      before = n_sheets;
      if (n_sheets > 1)
        least = MIN (least, n_last);
      n_tight += n_sheets == 1;
    }
  g_test_message ("%u rows on a sheet, %u on the last at least", n_tight, least);
  g_assert_cmpuint (least, >=, 3);
  further_clear (&f);
}

/* A question that has no words is not printed and not counted; notes fill what its sheet has left */
static void
test_empty_question (void)
{
  LrQuestion questions[] = { { .id = (char *) "", .text = (char *) "How was it?", .note = (char *) "" },
                             { .id = (char *) "", .text = (char *) " ", .note = (char *) "" },
                             { .id = (char *) "", .text = (char *) "And then?", .note = (char *) "" } };
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrFlow) flow = NULL;
  const LrBlock *last;
  guint n_rows = 0;
  LrBox box;
  Further f;

  further_init (&f, lr_plan_set_questions (plan, questions, G_N_ELEMENTS (questions), NULL), LR_PAPER_A4);
  flow = lr_flow_new (&f.sheet);
  lr_further_questions (flow);
  lr_flow_break (flow);
  for (guint i = 0; i < flow->blocks->len; i++)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i);

      if (block->kind == LR_BLOCK_ROW)
        g_assert_cmpint (atoi (block->cell[0]), ==, (int) ++n_rows);
    }
  g_assert_cmpuint (n_rows, ==, 2);
  g_assert_cmpuint (flow->sheets->len, ==, 1);
  last = g_ptr_array_index (flow->blocks, flow->blocks->len - 1);
  lr_flow_whole_box (flow, FALSE, &box);
  g_assert_cmpfloat (last->y + last->height, >, box.height - LR_FLOW_RULED_PT);
  g_assert_cmpfloat (last->y + last->height, <=, box.height);
  g_clear_pointer (&flow, lr_flow_free);
  further_clear (&f);
}

/* What is higher than a sheet has one of its own and ends at its foot */
static void
test_too_high (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (LrFlow) flow = NULL;
  const LrBlock *block;
  LrBox box;
  Further f;

  further_init (&f, fixture_example ("loft"), LR_PAPER_LETTER);
  flow = lr_flow_new (&f.sheet);
  for (int i = 0; i < 4000; i++)
    g_string_append (text, "word ");
  lr_flow_title (flow, "Long", NULL);
  lr_flow_paragraph (flow, "before");
  lr_flow_paragraph (flow, text->str);
  lr_flow_paragraph (flow, "after");
  lr_flow_break (flow);
  lr_flow_whole_box (flow, FALSE, &box);
  g_assert_cmpuint (flow->sheets->len, ==, 3);
  block = g_ptr_array_index (flow->blocks, 2);
  g_assert_cmpfloat (block->y + block->height, <=, box.height + 1e-9);
  block = g_ptr_array_index (flow->blocks, 3);
  g_assert_cmpuint (block->sheet, ==, 2);
  g_clear_pointer (&flow, lr_flow_free);
  further_clear (&f);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/further/pdf/a4", GINT_TO_POINTER (LR_PAPER_A4), test_pdf);
  g_test_add_data_func ("/further/pdf/letter", GINT_TO_POINTER (LR_PAPER_LETTER), test_pdf);
  g_test_add_func ("/further/default", test_default);
  g_test_add_func ("/further/breaks", test_breaks);
  g_test_add_func ("/further/few-rows", test_few_rows);
  g_test_add_func ("/further/empty-question", test_empty_question);
  g_test_add_func ("/further/too-high", test_too_high);

  return g_test_run ();
}
