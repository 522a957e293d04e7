/* cli_private.h - what the commands share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "remarks.h"

#include <gio/gio.h>

typedef enum { LR_EXIT_OK = 0, LR_EXIT_FIX = 1, LR_EXIT_FAILED = 2 } LrExit;

/* A plan as a command sees it */
typedef struct
{
  char      *path;
  LrPlan    *plan;    /* with the set-up asked for shown */
  LrStudy   *study;
  LrLightLevels *levels; /* whole */
  LrRemarks *remarks;
  LrUnits    units;
} LrCliPlan;

/* What every command takes: options are cleared by the caller */
typedef struct
{
  char  *setup;
  char  *units;
  char **files;
} LrCliOptions;

/* Parses @argc, @argv by @own and the common options; FALSE after saying why on stderr */
gboolean lr_cli_parse      (int argc, char **argv, const char *synopsis, const char *summary, const GOptionEntry *own, LrCliOptions *options);
/* The same with up to so many files */
gboolean lr_cli_parse_files (int argc, char **argv, guint max_files, const char *synopsis, const char *summary, const GOptionEntry *own,
                             LrCliOptions *options);
gboolean lr_cli_parse_units (const LrCliOptions *options, LrUnits *units); /* FALSE after a complaint */
void     lr_cli_options_clear (LrCliOptions *options);

/* (transfer full) (nullable): the plan alone, without any study */
LrPlan    *lr_cli_plan_read (const LrCliOptions *options, LrUnits *units);
LrCliPlan *lr_cli_plan_open (const LrCliOptions *options);
LrCliPlan *lr_cli_plan_study (const LrCliOptions *options); /* without levels and remarks */
void       lr_cli_plan_free (LrCliPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrCliPlan, lr_cli_plan_free)

/* What a file that is made from a plan is dated */
gint64     lr_cli_date_of (const char *path);

/* One sentence on stderr, after the program's name and @what (a file, a command); @what may be NULL */
void     lr_cli_complain   (const char *what, const char *format, ...) G_GNUC_PRINTF (2, 3);
/* The name of the set-up that a text is about, as its head */
void     lr_cli_print_setup (const LrStudy *study);
LrExit   lr_cli_print_json (JsonNode *node);
/* Whether all that was printed has arrived; says so if not */
gboolean lr_cli_flush      (void);

int lr_cli_check    (int argc, char **argv);
int lr_cli_compare  (int argc, char **argv);
int lr_cli_diff     (int argc, char **argv);
int lr_cli_pack     (int argc, char **argv);
int lr_cli_page     (int argc, char **argv);
int lr_cli_calendar (int argc, char **argv);
int lr_cli_readings (int argc, char **argv);
int lr_cli_frame    (int argc, char **argv);
int lr_cli_tape     (int argc, char **argv);
