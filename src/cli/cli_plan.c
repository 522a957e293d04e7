/* cli_plan.c - options that all commands share, and the plan that they are about
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "plan_reader.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <langinfo.h>
#include <string.h>

/* Inches where the locale measures in them (LC_MEASUREMENT of glibc: 1 metric, 2 US) */
static LrUnits
units_of_locale (void)
{
#ifdef __GLIBC__
  return nl_langinfo (_NL_MEASUREMENT_MEASUREMENT)[0] == 2 ? LR_UNITS_IMPERIAL : LR_UNITS_METRIC;
#else
  return LR_UNITS_METRIC;
#endif
}

/**
 * lr_cli_parse_units:
 * @options: common options, parsed
 * @units: (out): how lengths are written
 *
 * Returns: %FALSE after a complaint
 */
gboolean
lr_cli_parse_units (const LrCliOptions *options,
                    LrUnits            *units)
{
  const char *word = options->units;

  if (word == NULL)
    *units = units_of_locale ();
  else if (g_str_equal (word, "metric"))
    *units = LR_UNITS_METRIC;
  else if (g_str_equal (word, "imperial"))
    *units = LR_UNITS_IMPERIAL;
  else
    {
      lr_cli_complain (NULL, _("--units is metric or imperial, not “%s”"), word);
      return FALSE;
    }

  return TRUE;
}

/**
 * lr_cli_parse_files:
 * @argc: from the command's word on
 * @argv: from the command's word on
 * @max_files: how many plan files it takes at most
 * @synopsis: what follows the word, translated
 * @summary: what it does, translated
 * @own: the command's own options
 * @options: (out): the common ones; cleared by lr_cli_options_clear() whatever is returned
 *
 * Returns: %FALSE after a complaint
 */
gboolean
lr_cli_parse_files (int                 argc,
                    char              **argv,
                    guint               max_files,
                    const char         *synopsis,
                    const char         *summary,
                    const GOptionEntry *own,
                    LrCliOptions       *options)
{
  const GOptionEntry common[] = {
    { "setup", 0, 0, G_OPTION_ARG_STRING, &options->setup, N_("The set-up to look at, instead of the one shown"), N_("NAME") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &options->units, N_("How lengths are written: metric or imperial"), N_("UNITS") },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->files, NULL, NULL },
    { NULL }
  };
  g_autofree char *program = g_strdup_printf ("lookroom %s", argv[0]);
  g_autoptr (GOptionContext) context = g_option_context_new (synopsis);
  g_autoptr (GError) error = NULL;
  /* the first of the arguments is the program's name to GOption */
  g_autofree char **words = g_memdup2 (argv, (gsize) (argc + 1) * sizeof *argv);
  char **parsed = words;

  *options = (LrCliOptions) { NULL };
  words[0] = program;
  g_option_context_set_summary (context, summary);
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, own, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, common, GETTEXT_PACKAGE);

  g_set_prgname (program);
  if (!g_option_context_parse (context, &argc, &parsed, &error))
    {
      lr_cli_complain (argv[0], "%s", error->message);
      return FALSE;
    }

  if (options->files == NULL || options->files[0] == NULL)
    {
      lr_cli_complain (argv[0], _("needs the name of a plan file"));
      return FALSE;
    }
  if (g_strv_length (options->files) > max_files)
    {
      lr_cli_complain (argv[0], max_files == 1 ? _("takes one plan file, not “%s” as well") : _("takes two plan files, not “%s” as well"),
                       options->files[max_files]);
      return FALSE;
    }

  return TRUE;
}

/**
 * lr_cli_parse:
 * @argc: from the command's word on
 * @argv: from the command's word on
 * @synopsis: what follows the word, translated
 * @summary: what it does, translated
 * @own: the command's own options
 * @options: (out): the common ones; cleared by lr_cli_options_clear() whatever is returned
 *
 * As lr_cli_parse_files() for one plan file.
 *
 * Returns: %FALSE after a complaint
 */
gboolean
lr_cli_parse (int                 argc,
              char              **argv,
              const char         *synopsis,
              const char         *summary,
              const GOptionEntry *own,
              LrCliOptions       *options)
{
  return lr_cli_parse_files (argc, argv, 1, synopsis, summary, own, options);
}

/**
 * lr_cli_options_clear:
 * @options: common options
 *
 * Frees what they hold.
 */
void
lr_cli_options_clear (LrCliOptions *options)
{
  g_clear_pointer (&options->setup, g_free);
  g_clear_pointer (&options->units, g_free);
  g_clear_pointer (&options->files, g_strfreev);
}

/**
 * lr_cli_plan_read:
 * @options: common options, parsed
 * @units: (out): how lengths are written
 *
 * Reads the plan and computes nothing of it.
 *
 * Returns: (transfer full) (nullable): the plan with the set-up asked for shown, or %NULL after a complaint
 */
LrPlan *
lr_cli_plan_read (const LrCliOptions *options,
                  LrUnits            *units)
{
  const char *path = options->files[0];
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (GError) error = NULL;

  if (!lr_cli_parse_units (options, units))
    return NULL;

  plan = lr_plan_read (path, &error);
  if (plan == NULL)
    {
      /* the reader's sentence begins with the file's name */
      lr_cli_complain (NULL, "%s", error->message);
      return NULL;
    }

  if (options->setup != NULL)
    {
      LrPlan *shown = lr_plan_show_setup (plan, options->setup, &error);

      if (shown == NULL)
        {
          lr_cli_complain (path, "%s", error->message);
          return NULL;
        }
      lr_plan_unref (plan);
      plan = shown;
    }

  return g_steal_pointer (&plan);
}

/**
 * lr_cli_plan_open:
 * @options: common options, parsed
 *
 * Reads the plan and computes what there is to know of it.
 *
 * Returns: (transfer full) (nullable): the plan, or %NULL after a complaint
 */
LrCliPlan *
lr_cli_plan_open (const LrCliOptions *options)
{
  LrCliPlan *opened = lr_cli_plan_study (options);

  if (opened == NULL)
    return NULL;

  opened->levels = lr_light_levels_new (opened->plan, TRUE, NULL);
  opened->remarks = lr_remarks_new_lit (opened->study, opened->levels, opened->units);
  return opened;
}

/**
 * lr_cli_plan_study:
 * @options: common options, parsed
 *
 * As lr_cli_plan_open(), without levels of light and remarks, which take long: both are %NULL.
 *
 * Returns: (transfer full) (nullable): the plan, or %NULL after a complaint
 */
LrCliPlan *
lr_cli_plan_study (const LrCliOptions *options)
{
  LrUnits units;
  LrPlan *plan = lr_cli_plan_read (options, &units);
  LrCliPlan *opened;

  if (plan == NULL)
    return NULL;

  opened = g_new0 (LrCliPlan, 1);
  opened->path = g_strdup (options->files[0]);
  opened->units = units;
  opened->plan = plan;
  opened->study = lr_study_new (plan);
  return opened;
}

/**
 * lr_cli_date_of:
 * @path: of a plan file
 *
 * SOURCE_DATE_EPOCH, else when the plan was last written: the same plan gives the same bytes.
 *
 * Returns: [s since 1970]
 */
gint64
lr_cli_date_of (const char *path)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  gint64 date;
  GStatBuf status;

  if (epoch != NULL && g_ascii_string_to_signed (epoch, 10, 0, G_MAXINT32, &date, NULL))
    return date;

  return g_stat (path, &status) == 0 ? (gint64) status.st_mtime : 0;
}

/**
 * lr_cli_plan_free:
 * @plan: (transfer full): a plan that a command looked at
 */
void
lr_cli_plan_free (LrCliPlan *plan)
{
  g_clear_pointer (&plan->remarks, lr_remarks_free);
  g_clear_pointer (&plan->levels, lr_light_levels_unref);
  lr_study_free (plan->study);
  lr_plan_unref (plan->plan);
  g_free (plan->path);
  g_free (plan);
}

/**
 * lr_cli_print_setup:
 * @study: of the plan
 *
 * Prints the set-up's name and, where there are others, how many.
 */
void
lr_cli_print_setup (const LrStudy *study)
{
  guint n = study->plan->setups->len;

  if (n > 1)
    /* Translators: name of a set-up, and how many there are */
    g_print (_("%s (one of %u set-ups)\n\n"), study->setup->name, n);
  else if (study->setup->name[0] != '\0')
    g_print ("%s\n\n", study->setup->name);
}
