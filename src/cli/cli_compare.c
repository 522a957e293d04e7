/* cli_compare.c - candidate rooms side by side, as a table or JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "comparison_words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define GAP "  "
#define BEST "* "
#define NOT_BEST "  "

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

/* Of the titles, and of each room's cells with their mark */
static int *
find_widths (const LrCompared *compared)
{
  guint n = compared->comparison->rooms->len;
  int *widths = g_new0 (int, n + 1);

  for (guint i = 0; i < compared->rows->len; i++)
    {
      const LrComparedRow *row = compared->rows->pdata[i];

      widths[0] = MAX (widths[0], width_of (row->title) + (int) strlen (GAP));
      for (guint k = 0; k < n; k++)
        widths[k + 1] = MAX (widths[k + 1], (int) strlen (BEST) + MAX (width_of (row->texts[k]), width_of (row->details[k])));
    }
  for (guint k = 0; k < n; k++)
    widths[k + 1] = MAX (widths[k + 1], (int) strlen (BEST) + width_of (lr_comparison_room (compared->comparison, k)->setup->name));

  return widths;
}

/* Whatever stands in the fields, one line is one line */
static char *
in_one_line (const char *text)
{
  return g_strdelimit (g_strdup (text), "\n\r\t", ' ');
}

static void
print_cells (GString           *line,
             const char        *title,
             char *const       *cells,
             const gboolean    *is_best,
             const LrCompared  *compared,
             const int         *widths,
             const char        *why)
{
  pad (line, title, widths[0]);
  for (guint k = 0; k < compared->comparison->rooms->len; k++)
    {
      g_autofree char *text = in_one_line (cells[k]), *cell = g_strconcat (is_best != NULL && is_best[k] ? BEST : NOT_BEST, text, NULL);

      g_string_append (line, GAP);
      pad (line, cell, widths[k + 1]);
    }
  g_string_append_printf (line, GAP "%s", why);
  print_line (line);
}

static gboolean
has_details (const LrComparedRow *row)
{
  for (char **detail = row->details; *detail != NULL; detail++)
    if (**detail != '\0')
      return TRUE;

  return FALSE;
}

static void
print_table (const LrCompared *compared)
{
  g_autofree int *widths = find_widths (compared);
  g_autoptr (GString) line = g_string_new (NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint k = 0; k < compared->comparison->rooms->len; k++)
    g_ptr_array_add (names, lr_comparison_room (compared->comparison, k)->setup->name);
  print_cells (line, "", (char *const *) names->pdata, NULL, compared, widths, compared->comparison->rooms->len > 1 ? _("Why") : "");
  for (guint i = 0; i < compared->rows->len; i++)
    {
      const LrComparedRow *row = compared->rows->pdata[i];
      g_autofree char *title = g_strconcat (GAP, row->title, NULL);

      if (lr_compare_group (row->row) != NULL)
        g_print ("%s\n", lr_compare_group (row->row));
      print_cells (line, title, row->texts, row->is_best, compared, widths, row->why);
      if (has_details (row))
        print_cells (line, "", row->details, NULL, compared, widths, "");
    }

  g_print ("\n%s\n", compared->summary);
  if (compared->undrawn[0] != '\0')
    {
      g_autofree char *undrawn = in_one_line (compared->undrawn);

      g_print ("%s\n", undrawn);
    }
  if (compared->comparison->rooms->len > 1)
    g_print ("%s\n", _("* best in its row, of what is known. Which room is best in all is yours to choose."));
  if (compared->places[0] != '\0')
    g_print ("%s\n", compared->places);
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
  compared = lr_compared_new (comparison, units);
  if (is_json)
    return lr_cli_print_json (lr_compared_to_json (compared));

  print_table (compared);
  return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
}
