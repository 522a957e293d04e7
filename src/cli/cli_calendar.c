/* cli_calendar.c - the call times as a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "calendar.h"
#include "cli_private.h"
#include "save.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/**
 * lr_cli_calendar:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Writes the call times of a plan.
 *
 * Returns: an exit code
 */
int
lr_cli_calendar (int    argc,
                 char **argv)
{
  g_autofree char *output = NULL, *text = NULL;
  const GOptionEntry own[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_("The calendar file to write"), N_("OUT") },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_good = lr_cli_parse (argc, argv, _("FILE"), _("Writes the call times as a calendar file (iCalendar)."), own, &options);

  if (is_good && output == NULL)
    {
      lr_cli_complain ("calendar", _("needs -o and the name of the file to write"));
      is_good = FALSE;
    }
  if (is_good)
    plan = lr_cli_plan_study (&options);
  lr_cli_options_clear (&options);
  if (plan == NULL)
    return LR_EXIT_FAILED;

  text = lr_calendar_text (plan->study, lr_cli_date_of (plan->path), &error);
  if (text == NULL)
    {
      lr_cli_complain (plan->path, "%s", error->message);
      return LR_EXIT_FAILED;
    }
  if (!lr_save_bytes (output, text, strlen (text), &error))
    {
      lr_cli_complain (output, "%s", error->message);
      return LR_EXIT_FAILED;
    }

  return LR_EXIT_OK;
}
