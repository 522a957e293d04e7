/* cli_check.c - remarks as text or JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"
#include "cautions.h"
#include "cli_private.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static void
print_group (const LrRemarks *remarks,
             LrGrade          grade)
{
  if (remarks->n[grade] == 0)
    return;

  g_print ("%s\n", lr_grade_title (grade));
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (remarks->all, i);

      if (remark->grade == grade)
        g_print ("  %s\n", remark->text);
    }
  g_print ("\n");
}

static void
print_cautions (const GPtrArray *cautions)
{
  if (cautions->len == 0)
    return;

  g_print ("%s\n", _("Take care"));
  for (guint i = 0; i < cautions->len; i++)
    {
      g_autofree char *text = lr_markup_to_text (g_ptr_array_index (cautions, i));

      g_print ("  %s\n", text);
    }
  g_print ("\n");
}

static void
print_asks (const GPtrArray *asks)
{
  if (asks->len == 0)
    return;

  g_print ("%s\n", _("Please arrange"));
  for (guint i = 0; i < asks->len; i++)
    {
      g_autofree char *sentence = lr_ask_sentence (g_ptr_array_index (asks, i));

      g_print ("  %s\n", sentence);
    }
  g_print ("\n");
}

static JsonNode *
make_json (const LrCliPlan *plan,
           const GPtrArray *cautions,
           const GPtrArray *asks)
{
  JsonNode *root = lr_remarks_to_json (plan->remarks);

  json_object_set_member (json_node_get_object (root), "cautions", lr_cautions_to_json (cautions));
  json_object_set_member (json_node_get_object (root), "asks", lr_asks_to_json (asks));
  return root;
}

static void
print_text (const LrCliPlan *plan,
            const GPtrArray *cautions,
            const GPtrArray *asks,
            gboolean         has_fine)
{
  const LrRemarks *remarks = plan->remarks;

  print_group (remarks, LR_GRADE_FIX);
  print_group (remarks, LR_GRADE_MIND);
  if (has_fine)
    print_group (remarks, LR_GRADE_FINE);
  print_cautions (cautions);
  print_asks (asks);

  g_print (_("%s: %u to fix, %u to mind, %u fine\n"), plan->study->setup->name,
           remarks->n[LR_GRADE_FIX], remarks->n[LR_GRADE_MIND], remarks->n[LR_GRADE_FINE]);
}

/**
 * lr_cli_check:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints the remarks on a plan.
 *
 * Returns: %LR_EXIT_FIX when one of them is a Fix
 */
int
lr_cli_check (int    argc,
              char **argv)
{
  gboolean is_json = FALSE, has_fine = FALSE;
  const GOptionEntry own[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON"), NULL },
    { "all", 0, 0, G_OPTION_ARG_NONE, &has_fine, N_("Print what is fine, too"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;
  g_autoptr (GPtrArray) cautions = NULL, asks = NULL;
  LrExit code;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Prints what is to fix and what to mind."), own, &options))
    plan = lr_cli_plan_open (&options);
  lr_cli_options_clear (&options);
  if (plan == NULL)
    return LR_EXIT_FAILED;

  cautions = lr_cautions_new (plan->study, plan->units);
  asks = lr_asks_new (plan->study, plan->units);
  if (is_json)
    code = lr_cli_print_json (make_json (plan, cautions, asks));
  else
    {
      print_text (plan, cautions, asks, has_fine);
      code = lr_cli_flush () ? LR_EXIT_OK : LR_EXIT_FAILED;
    }

  return code == LR_EXIT_OK && plan->remarks->n[LR_GRADE_FIX] > 0 ? LR_EXIT_FIX : code;
}
