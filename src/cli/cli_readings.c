/* cli_readings.c - every computed number as JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"
#include "cli_private.h"
#include "readings.h"

#include <glib/gi18n-lib.h>

static void
copy_member (JsonObject *object G_GNUC_UNUSED,
             const char *key,
             JsonNode   *value,
             gpointer    all)
{
  json_object_set_member (all, key, json_node_copy (value));
}

/* "asks" beside what the study reads: as "check --json" has them */
static JsonNode *
make_json (const LrCliPlan *plan)
{
  g_autoptr (JsonNode) readings = lr_readings_to_json (plan->study, plan->levels);
  g_autoptr (GPtrArray) asks = lr_asks_new (plan->study, plan->units);
  JsonObject *all = json_object_new ();
  JsonNode *root = json_node_new (JSON_NODE_OBJECT);

  json_object_foreach_member (json_node_get_object (readings), copy_member, all);
  json_object_set_member (all, "asks", lr_asks_to_json (asks));
  json_node_take_object (root, all);
  return root;
}

/**
 * lr_cli_readings:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints what is computed of a plan, by the ids of its items.
 *
 * Returns: an exit code
 */
int
lr_cli_readings (int    argc,
                 char **argv)
{
  gboolean is_json = TRUE;
  const GOptionEntry own[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON (the only form there is)"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Prints every computed number by the id of its item."), own, &options))
    plan = lr_cli_plan_open (&options);
  lr_cli_options_clear (&options);

  return plan != NULL ? (int) lr_cli_print_json (make_json (plan)) : (int) LR_EXIT_FAILED;
}
