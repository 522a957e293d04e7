/* cli_diff.c - differences between a set-up as planned and as found
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "diff_words.h"
#include "plan_reader.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

/* The plan of a file, with that set-up shown; (transfer full) (nullable): after a complaint */
static LrPlan *
open_plan (const char *path,
           const char *setup)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);
  LrPlan *shown;

  if (plan == NULL)
    {
      lr_cli_complain (NULL, "%s", error->message);
      return NULL;
    }
  if (setup == NULL)
    return g_steal_pointer (&plan);

  shown = lr_plan_show_setup (plan, setup, &error);
  if (shown == NULL)
    lr_cli_complain (path, "%s", error->message);
  return shown;
}

/* What the set-up shown is as found of; (transfer full) (nullable): after a complaint */
static LrPlan *
show_planned (const LrPlan *found,
              const char   *path,
              const char   *against)
{
  const LrSetup *planned = lr_plan_planned (found);
  g_autoptr (GError) error = NULL;
  LrPlan *shown;

  if (against == NULL && planned == NULL)
    {
      lr_cli_complain (path, _("“%s” is as found of no other set-up; name one with --against"), lr_plan_get_setup (found)->name);
      return NULL;
    }

  shown = lr_plan_show_setup (found, against != NULL ? against : planned->id, &error);
  if (shown == NULL)
    lr_cli_complain (path, "%s", error->message);
  return shown;
}

static LrPlanDiff *
open_diff (const LrCliOptions *options,
           const char         *against)
{
  const char *first = options->files[0], *second = options->files[1];
  g_autoptr (LrPlan) found = NULL, planned = NULL;

  if (second == NULL)
    {
      found = open_plan (first, options->setup);
      planned = found != NULL ? show_planned (found, first, against) : NULL;
    }
  else
    {
      planned = open_plan (first, against);
      found = planned != NULL ? open_plan (second, options->setup) : NULL;
    }

  return planned != NULL && found != NULL ? lr_plan_diff_new (planned, found) : NULL;
}

static void
print_text (const LrPlanDiff *diff,
            LrUnits           units)
{
  int group = -1;

  for (guint i = 0; i < diff->all->len; i++)
    {
      const LrDiff *found = &g_array_index (diff->all, LrDiff, i);
      g_autofree char *text = lr_diff_text (diff, found, units);

      if ((int) found->group != group)
        g_print ("%s%s\n", group < 0 ? "" : "\n", lr_diff_group_title (found->group));
      group = (int) found->group;
      g_print ("  %s\n", text);
    }
  if (diff->all->len > 0)
    g_print ("\n");
  /* Translators: names of two set-ups, the one as found and the one as planned, and how many differences there are */
  g_print (ngettext ("%s against %s: %u difference\n", "%s against %s: %u differences\n", diff->all->len), diff->now->name,
           diff->was->name, diff->all->len);
}

/**
 * lr_cli_diff:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints the differences of two set-ups of one plan or of two.
 *
 * Returns: the exit code
 */
int
lr_cli_diff (int    argc,
             char **argv)
{
  gboolean is_json = FALSE;
  char *against = NULL;
  const GOptionEntry own[] = {
    { "against", 0, 0, G_OPTION_ARG_STRING, &against, N_("The set-up as planned, instead of the one that it was made of"), N_("NAME") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrPlanDiff) diff = NULL;
  LrUnits units = LR_UNITS_METRIC;
  gboolean is_parsed;

  is_parsed = lr_cli_parse_files (argc, argv, 2, _("FILE [OTHER]"),
                                  _("Prints what is different between a set-up as planned and as found, in one plan or in two."), own, &options)
              && lr_cli_parse_units (&options, &units);
  if (is_parsed)
    diff = open_diff (&options, against);
  lr_cli_options_clear (&options);
  g_free (against);
  if (diff == NULL)
    return LR_EXIT_FAILED;
  if (is_json)
    return lr_cli_print_json (lr_plan_diff_to_json (diff, units));

  print_text (diff, units);
  return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
}
