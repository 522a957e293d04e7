/* cli.c - the commands that need no display
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli.h"
#include "cli_private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

typedef struct
{
  const char *word;
  const char *synopsis;
  const char *summary;
  int       (*run) (int argc, char **argv);
} Command;

static const Command commands[] = {
  { "check", N_("FILE [--json] [--all]"), N_("print what is to fix and what to mind"), lr_cli_check },
  { "compare", N_("FILE [--json]"), N_("print the rooms of all set-ups side by side"), lr_cli_compare },
  { "diff", N_("FILE [OTHER] [--setup A --against B] [--json]"), N_("print what is found otherwise than planned"), lr_cli_diff },
  { "page", N_("FILE -o OUT [--paper a4|letter] [--with LISTS]"), N_("write the one-page plan as a PDF, with lists behind it"), lr_cli_page },
  { "calendar", N_("FILE -o OUT.ics"), N_("write the call times as a calendar file"), lr_cli_calendar },
  { "pack", N_("FILE [--csv|--json]"), N_("list what to bring, with what the kit lacks first"), lr_cli_pack },
  { "readings", N_("FILE --json"), N_("print every computed number by item"), lr_cli_readings },
  { "tape", N_("FILE [--csv|--json]"), N_("print where everything on the floor is by tape"), lr_cli_tape },
  { "frame", N_("FILE --camera A|--cut A,B -o OUT.png|OUT.svg"), N_("draw what one camera sees, or a cut"), lr_cli_frame }
};

/* --- Shared by the commands ----------------------------------------------------------------------------------- */

/**
 * lr_cli_complain:
 * @what: (nullable): the file or command that it is about
 * @format: of the sentence
 *
 * Says one sentence on stderr.
 */
void
lr_cli_complain (const char *what,
                 const char *format,
                 ...)
{
  g_autofree char *sentence = NULL;
  va_list args;

  va_start (args, format);
  sentence = g_strdup_vprintf (format, args);
  va_end (args);
  g_strdelimit (sentence, "\n", ' ');

  if (what != NULL)
    g_printerr ("lookroom: %s: %s\n", what, sentence);
  else
    g_printerr ("lookroom: %s\n", sentence);
}

/**
 * lr_cli_flush:
 *
 * Returns: %FALSE after a complaint when what was printed has not arrived
 */
gboolean
lr_cli_flush (void)
{
  errno = 0;
  if (fflush (stdout) == 0 && !ferror (stdout))
    return TRUE;

  lr_cli_complain (_("standard output"), _("cannot be written: %s"), g_strerror (errno != 0 ? errno : EIO));
  return FALSE;
}

/**
 * lr_cli_print_json:
 * @node: (transfer full): what to print
 *
 * Returns: %LR_EXIT_OK, or %LR_EXIT_FAILED after a complaint
 */
LrExit
lr_cli_print_json (JsonNode *node)
{
  g_autoptr (JsonGenerator) generator = json_generator_new ();
  g_autofree char *text = NULL;

  json_generator_set_root (generator, node);
  json_generator_set_pretty (generator, TRUE);
  text = json_generator_to_data (generator, NULL);
  json_node_unref (node);
  fprintf (stdout, "%s\n", text);
  return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
}

/* Text goes out as UTF-8 whatever the locale says: "22°" is no use as "22?", and files and pipes keep their bytes */
static void
print_cb (const char *text)
{
  fputs (text, stdout);
}

static void
print_error_cb (const char *text)
{
  fputs (text, stderr);
}

/* --- Help ----------------------------------------------------------------------------------------------------- */

static void
print_help (void)
{
  g_print ("%s\n\n", _("Lookroom plans sit-down interviews: the room, the set, and what would go wrong."));
  g_print ("%s\n", _("Usage:"));
  g_print ("  lookroom [%s]\n      %s\n", _("FILE…"), _("open the window"));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    g_print ("  lookroom %s %s\n      %s\n", commands[i].word, _(commands[i].synopsis), _(commands[i].summary));
  g_print ("  lookroom --help | --version\n\n");
  g_print ("%s\n", _("Every command takes --setup NAME, --units metric|imperial and --help. It needs no display."));
  g_print ("%s\n", _("Exit codes: 0 nothing to fix, 1 something to fix, 2 could not run."));
}

static const Command *
find_command (const char *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (word, commands[i].word))
      return &commands[i];

  return NULL;
}

/**
 * lr_cli_run:
 * @argc: as main() has it
 * @argv: as main() has it
 *
 * Runs the command that the first argument names.
 *
 * Returns: its exit code, or -1 when the arguments ask for the window
 */
int
lr_cli_run (int    argc,
            char **argv)
{
  const char *first = argc > 1 ? argv[1] : NULL;
  const Command *command;

  if (first == NULL || g_str_equal (first, "--"))
    return -1;

  g_set_print_handler (print_cb);
  g_set_printerr_handler (print_error_cb);

  command = find_command (first);
  if (command != NULL)
    return command->run (argc - 1, argv + 1);

  if (g_str_equal (first, "--help") || g_str_equal (first, "-h"))
    {
      print_help ();
      return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
    }
  if (g_str_equal (first, "--version"))
    {
      g_print ("Lookroom %s\n", LR_VERSION);
      return lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
    }
  if (first[0] == '-')
    {
      lr_cli_complain (NULL, _("there is no option %s; lookroom --help lists what there is"), first);
      return LR_EXIT_FAILED;
    }

  return -1;
}
