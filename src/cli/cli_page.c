/* cli_page.c - the one-page plan as a PDF
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "page.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>

/* Letter where the locale uses it (LC_PAPER of glibc gives the width in mm) */
static LrPaper
paper_of_locale (void)
{
#ifdef __GLIBC__
  /* the number is returned in the place of a pointer */
  int width_mm = GPOINTER_TO_INT (nl_langinfo (_NL_PAPER_WIDTH));

  return width_mm == 216 ? LR_PAPER_LETTER : LR_PAPER_A4;
#else
  return LR_PAPER_A4;
#endif
}

static gboolean
parse_paper (const char *word,
             LrPaper    *paper)
{
  if (word == NULL)
    *paper = paper_of_locale ();
  else if (g_ascii_strcasecmp (word, "a4") == 0)
    *paper = LR_PAPER_A4;
  else if (g_ascii_strcasecmp (word, "letter") == 0)
    *paper = LR_PAPER_LETTER;
  else
    return FALSE;

  return TRUE;
}

/* "run,checks": which lists go along; FALSE after a complaint */
static gboolean
parse_lists (const char *words,
             guint      *sheets)
{
  g_auto (GStrv) parts = g_strsplit (words != NULL ? words : "", ",", -1);

  *sheets = 0;
  for (char **part = parts; *part != NULL; part++)
    {
      g_autoptr (GString) known = g_string_new (NULL);
      const char *word;
      guint flag;

      g_strstrip (*part);
      if (**part == '\0')
        continue;
      for (guint i = 0; (flag = lr_sheet_info (i, &word, NULL)) != 0 && !g_str_equal (word, *part); i++)
        g_string_append_printf (known, "%s%s", known->len > 0 ? ", " : "", word);
      if (flag == 0)
        {
          lr_cli_complain (NULL, _("--with takes %s, not “%s”"), known->str, *part);
          return FALSE;
        }
      *sheets |= flag;
    }

  return TRUE;
}

static LrExit
write_page (const LrCliPlan *plan,
            LrPaper          paper,
            guint            sheets,
            const char      *output)
{
  const LrPageOptions options = { .paper = paper, .units = plan->units, .created_unix_s = lr_cli_date_of (plan->path),
                                  .levels = plan->levels, .sheets = sheets };
  g_autoptr (GError) error = NULL;

  if (lr_page_write_pdf (plan->study, plan->remarks, &options, output, &error))
    return LR_EXIT_OK;

  lr_cli_complain (output, "%s", error->message);
  return LR_EXIT_FAILED;
}

/**
 * lr_cli_page:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Writes the page of a plan.
 *
 * Returns: an exit code
 */
int
lr_cli_page (int    argc,
             char **argv)
{
  g_autofree char *output = NULL;
  g_autofree char *paper_word = NULL, *with = NULL;
  const GOptionEntry own[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_("The PDF to write"), N_("OUT") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &paper_word, N_("a4 or letter; else what the locale uses"), N_("PAPER") },
    { "with", 0, 0, G_OPTION_ARG_STRING, &with, N_("Lists that follow on sheets of their own: run, checks, questions, packing, tape, grid"), N_("LISTS") },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;
  LrPaper paper = LR_PAPER_A4;
  guint sheets = 0;
  gboolean is_good = lr_cli_parse (argc, argv, _("FILE"), _("Writes the one-page plan as a PDF."), own, &options);

  if (is_good && output == NULL)
    {
      lr_cli_complain ("page", _("needs -o and the name of the PDF to write"));
      is_good = FALSE;
    }
  if (is_good && !parse_paper (paper_word, &paper))
    {
      lr_cli_complain (NULL, _("--paper is a4 or letter, not “%s”"), paper_word);
      is_good = FALSE;
    }

  if (is_good)
    is_good = parse_lists (with, &sheets);
  if (is_good)
    plan = lr_cli_plan_open (&options);
  lr_cli_options_clear (&options);

  return plan != NULL ? (int) write_page (plan, paper, sheets, output) : (int) LR_EXIT_FAILED;
}
