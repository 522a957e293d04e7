/* cli_pack.c - the packing list as text, CSV or JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "packing_words.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static void
print_lacking (const GPtrArray *rows)
{
  if (lr_pack_rows_lacking (rows) == 0)
    return;

  g_print ("%s\n", lr_pack_lack_title ());
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];

      if (row->missing > 0)
        g_print ("%4d  %s: %s (%s)\n", row->missing, row->title, row->lack, row->why);
    }
  g_print ("\n");
}

static void
print_text (const LrStudy   *study,
            const GPtrArray *rows)
{
  lr_cli_print_setup (study);
  if (rows->len == 0)
    g_print ("%s\n", lr_pack_empty_text ());
  print_lacking (rows);
  for (int group = 0; group < LR_N_PACK_GROUPS; group++)
    {
      gboolean has_title = FALSE;

      for (guint i = 0; i < rows->len; i++)
        {
          const LrPackRow *row = rows->pdata[i];

          if ((int) row->group != group)
            continue;
          if (!has_title)
            g_print ("%s\n", lr_pack_group_title (group));
          has_title = TRUE;
          g_print (*row->why != '\0' ? "%4d  %s: %s\n" : "%4d  %s\n", row->quantity, row->title, row->why);
        }
      if (has_title)
        g_print ("\n");
    }
}

/**
 * lr_cli_pack:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints what has to come along.
 *
 * Returns: an exit code
 */
int
lr_cli_pack (int    argc,
             char **argv)
{
  gboolean is_json = FALSE, is_csv = FALSE;
  const GOptionEntry own[] = {
    { "csv", 0, 0, G_OPTION_ARG_NONE, &is_csv, N_("Print comma-separated values"), NULL },
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;
  g_autoptr (GPtrArray) rows = NULL;
  LrExit code = LR_EXIT_OK;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Lists what to bring, with quantities and reasons; what the kit lacks first."), own, &options))
    {
      if (is_csv && is_json)
        lr_cli_complain (NULL, _("--csv and --json do not go together"));
      else
        plan = lr_cli_plan_study (&options);
    }
  lr_cli_options_clear (&options);
  if (plan == NULL)
    return LR_EXIT_FAILED;

  rows = lr_pack_rows_new (plan->study, plan->units);
  if (is_json)
    code = lr_cli_print_json (lr_pack_rows_to_json (rows));
  else if (is_csv)
    {
      g_autofree char *csv = lr_pack_rows_to_csv (rows);

      g_print ("%s", csv);
    }
  else
    print_text (plan->study, rows);
  if (!is_json)
    code = lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;

  return code;
}
