/* cli_compare.c - candidate rooms side by side, as a table or JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "comparison_words.h"

#include <glib/gi18n-lib.h>

#define WIDE 100       /* places on a line, at most */
#define LEAST_CELL 15  /* a column is not narrower: with more rooms each row is a list of them */
#define GAP "  "
#define BEST "* "
#define NOT_BEST "  "
#define MARK_WIDTH 2   /* of the two, and of the gap */

/* How many places a text takes on a terminal */
static int
width_of (const char *text)
{
  int width = 0;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (!g_unichar_iszerowidth (c))
        width += g_unichar_iswide (c) ? 2 : 1;
    }

  return width;
}

static void
pad (GString    *line,
     const char *text,
     int         width)
{
  g_string_append (line, text);
  for (int i = width_of (text); i < width; i++)
    g_string_append_c (line, ' ');
}

static void
print_line (GString *line)
{
  while (line->len > 0 && line->str[line->len - 1] == ' ')
    g_string_truncate (line, line->len - 1);
  g_print ("%s\n", line->str);
  g_string_truncate (line, 0);
}

/* Whatever stands in the fields, one line is one line */
static char *
in_one_line (const char *text)
{
  return g_strdelimit (g_strdup (text), "\n\r\t", ' ');
}

/* Into lines of so many places, at blanks where there are any; (transfer full) (element-type utf8) */
static GPtrArray *
fold (const char *text,
      int         width)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *flat = in_one_line (text);
  const char *from = flat;

  while (width_of (from) > width)
    {
      const char *at = from, *blank = NULL;

      for (int used = 0; used < width; at = g_utf8_next_char (at))
        {
          used += g_unichar_iszerowidth (g_utf8_get_char (at)) ? 0 : g_unichar_iswide (g_utf8_get_char (at)) ? 2 : 1;
          blank = *at == ' ' && used > 1 ? at : blank;
        }
      blank = *at == ' ' ? at : blank;
      g_ptr_array_add (lines, g_strndup (from, (gsize) ((blank != NULL ? blank : at) - from)));
      from = blank != NULL ? blank + 1 : at;
    }
  g_ptr_array_add (lines, g_strdup (from));

  return lines;
}

/* The first line of @text behind @head, the others under it */
static void
print_folded (const char *head,
              const char *text)
{
  int indent = width_of (head);
  g_autoptr (GPtrArray) lines = fold (text, WIDE - indent);
  g_autoptr (GString) line = g_string_new (head);

  for (guint i = 0; i < lines->len; i++)
    {
      pad (line, "", i == 0 ? 0 : indent);
      g_string_append (line, lines->pdata[i]);
      print_line (line);
    }
}

static int
title_width (const LrCompared *compared)
{
  int width = 0;

  for (guint i = 0; i < compared->rows->len; i++)
    width = MAX (width, width_of (((const LrComparedRow *) compared->rows->pdata[i])->title) + 2 * MARK_WIDTH);

  return width;
}

/* As wide as what stands in it, if that fits; 0: too many rooms for columns */
static int
cell_width (const LrCompared *compared)
{
  guint n = compared->comparison->rooms->len;
  int most = (WIDE - title_width (compared)) / (int) MAX (n, 1) - 2 * MARK_WIDTH, width = 0;

  for (guint k = 0; k < n; k++)
    {
      width = MAX (width, width_of (lr_comparison_room (compared->comparison, k)->setup->name));
      for (guint i = 0; i < compared->rows->len; i++)
        {
          const LrComparedRow *row = compared->rows->pdata[i];

          width = MAX (width, MAX (width_of (row->texts[k]), width_of (row->details[k])));
        }
    }
  width = MIN (width, most);

  return width >= LEAST_CELL || n < 2 ? width : 0;
}

/* @cells: of each room, folded side by side */
static void
print_cells (const LrCompared *compared,
             const char       *title,
             char *const      *cells,
             const gboolean   *is_best,
             int               width)
{
  guint n = compared->comparison->rooms->len, n_lines = 1;
  int title_places = title_width (compared);
  g_autoptr (GPtrArray) folded = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint k = 0; k < n; k++)
    {
      g_ptr_array_add (folded, fold (cells[k], width));
      n_lines = MAX (n_lines, ((const GPtrArray *) folded->pdata[k])->len);
    }
  for (guint at = 0; at < n_lines; at++)
    {
      pad (line, at == 0 ? title : "", title_places);
      for (guint k = 0; k < n; k++)
        {
          const GPtrArray *lines = folded->pdata[k];

          g_string_append (line, k > 0 ? GAP : "");
          g_string_append (line, at == 0 && is_best != NULL && is_best[k] ? BEST : NOT_BEST);
          pad (line, at < lines->len ? lines->pdata[at] : "", width);
        }
      print_line (line);
    }
}

static gboolean
has_any (char *const *texts)
{
  for (; *texts != NULL; texts++)
    if (**texts != '\0')
      return TRUE;

  return FALSE;
}

static void
print_names (const LrCompared *compared,
             int               width)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new (), subtitles = g_ptr_array_new_with_free_func (g_free);

  for (guint k = 0; k < compared->comparison->rooms->len; k++)
    {
      g_ptr_array_add (names, lr_comparison_room (compared->comparison, k)->setup->name);
      g_ptr_array_add (subtitles, lr_compare_subtitle (lr_comparison_room (compared->comparison, k)));
    }
  g_ptr_array_add (subtitles, NULL);
  print_cells (compared, "", (char *const *) names->pdata, NULL, width);
  if (has_any ((char *const *) subtitles->pdata))
    print_cells (compared, "", (char *const *) subtitles->pdata, NULL, width);
}

static void
print_in_columns (const LrCompared    *compared,
                  const LrComparedRow *row,
                  int                  width)
{
  g_autofree char *title = g_strconcat (GAP, row->title, NULL), *indent = g_strnfill ((gsize) title_width (compared) + MARK_WIDTH, ' ');

  print_cells (compared, title, row->texts, row->is_best, width);
  if (has_any (row->details))
    print_cells (compared, "", row->details, NULL, width);
  if (row->why[0] != '\0')
    print_folded (indent, row->why);
}

static void
print_in_list (const LrCompared    *compared,
               const LrComparedRow *row)
{
  g_autofree char *title = row->why[0] != '\0' ? g_strdup_printf ("%s: %s", row->title, row->why) : g_strdup (row->title);

  print_folded (GAP, title);
  for (guint k = 0; k < compared->comparison->rooms->len; k++)
    {
      const char *name = lr_comparison_room (compared->comparison, k)->setup->name;
      g_autofree char *text = row->details[k][0] != '\0' ? g_strdup_printf ("%s: %s (%s)", name, row->texts[k], row->details[k])
                                                         : g_strdup_printf ("%s: %s", name, row->texts[k]);

      print_folded (row->is_best[k] ? GAP GAP BEST : GAP GAP NOT_BEST, text);
    }
}

static void
print_feet (const LrCompared *compared)
{
  const char *const feet[] = { compared->undrawn, compared->left_out };
  g_auto (GStrv) places = g_strsplit (compared->places, "\n", -1);

  g_print ("\n");
  print_folded ("", compared->summary);
  for (guint i = 0; i < G_N_ELEMENTS (feet); i++)
    if (feet[i][0] != '\0')
      print_folded ("", feet[i]);
  if (compared->comparison->rooms->len > 1)
    print_folded ("", _("* best in its row, of what is known. Which room is best in all is yours to choose."));
  for (guint i = 0; places[i] != NULL; i++)
    print_folded ("", places[i]);
}

static void
print_table (const LrCompared *compared)
{
  int width = cell_width (compared);

  if (width > 0)
    print_names (compared, width);
  for (guint i = 0; i < compared->rows->len; i++)
    {
      const LrComparedRow *row = compared->rows->pdata[i];

      if (lr_compare_group (row->row) != NULL)
        g_print ("%s\n", lr_compare_group (row->row));
      if (width > 0)
        print_in_columns (compared, row, width);
      else
        print_in_list (compared, row);
    }
  print_feet (compared);
}

/* What the window works out while the table is shown already */
static void
work_out (LrComparison *comparison,
          LrUnits       units)
{
  for (guint i = 0; i < comparison->rooms->len; i++)
    {
      g_autoptr (LrLightLevels) levels = NULL;

      if (!lr_comparison_is_awaited (comparison, i))
        continue;
      levels = lr_light_levels_new (lr_comparison_room (comparison, i)->study->plan, TRUE, NULL);
      lr_comparison_judge (comparison, i, levels, units);
    }
}

/**
 * lr_cli_compare:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints the figures of every set-up side by side.
 *
 * Returns: an exit code
 */
int
lr_cli_compare (int    argc,
                char **argv)
{
  gboolean is_json = FALSE;
  const GOptionEntry own[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrComparison) comparison = NULL;
  g_autoptr (LrCompared) compared = NULL;
  LrUnits units;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Prints the figures of every set-up’s room side by side, and what is best in each row."), own,
                    &options))
    plan = lr_cli_plan_read (&options, &units);
  lr_cli_options_clear (&options);
  if (plan == NULL)
    return LR_EXIT_FAILED;

  comparison = lr_comparison_new (plan);
  work_out (comparison, units);
  compared = lr_compared_new (comparison, units);
  if (is_json)
    return lr_cli_print_json (lr_compared_to_json (compared));

  print_table (compared);
  return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
}
