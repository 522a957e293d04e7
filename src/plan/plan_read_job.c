/* plan_read_job.c - the job from its JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include "plan_check.h"

#include <glib/gi18n-lib.h>

static gboolean
read_contacts (const LrJsonPlace  *place,
               JsonNode           *node,
               LrJob              *job,
               GError            **error)
{
  JsonArray *array = lr_json_get_array (place, node, error);

  if (array == NULL)
    return FALSE;

  job->contacts = g_new0 (LrContact, json_array_get_length (array));
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = place, .index = i };
      JsonObject *object = lr_json_get_object (&at, json_array_get_element (array, i), error);
      LrContact *contact = &job->contacts[job->n_contacts];
      const LrJsonRows rows = { lr_contact_table (), contact };

      if (object == NULL)
        return FALSE;
      job->n_contacts++;
      lr_prop_table_init (lr_contact_table (), contact);
      if (!lr_json_get_rows (&at, object, &rows, 1, NULL, &contact->unknown, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
read_requests (const LrJsonPlace  *place,
               JsonNode           *node,
               LrJob              *job,
               GError            **error)
{
  JsonArray *array = lr_json_get_array (place, node, error);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  if (array == NULL)
    return FALSE;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = place, .index = i };
      const char *text = lr_json_get_text (&at, json_array_get_element (array, i), error);

      if (text == NULL)
        return FALSE;
      g_strv_builder_add (builder, text);
    }
  g_strfreev (job->requests);
  job->requests = g_strv_builder_end (builder);

  return TRUE;
}

static gboolean
check_dates (const LrJsonPlace  *place,
             const LrJob        *job,
             GError            **error)
{
  const LrPropTable *table = lr_job_table ();

  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];
      LrJsonPlace at = { .up = place, .name = prop->key };

      if (lr_prop_is_text (prop) && !lr_job_accepts_text (prop->key, lr_prop_get_text (prop, job)))
        return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is “%s”; dates are written 2026-02-19 and times 10:00"),
                             lr_prop_get_text (prop, job));
    }

  return TRUE;
}

/**
 * lr_read_job:
 * @root: the file
 * @node: a value
 * @job: a fresh job
 * @error: return location
 *
 * Returns: %FALSE if a member is not as it should be
 */
gboolean
lr_read_job (const LrJsonPlace  *root,
             JsonNode           *node,
             LrJob              *job,
             GError            **error)
{
  static const char *const known[] = { "contacts", "requests", NULL };
  LrJsonPlace place = { .up = root, .name = "job" };
  LrJsonPlace contacts = { .up = &place, .name = "contacts" }, requests = { .up = &place, .name = "requests" };
  const LrJsonRows rows = { lr_job_table (), job };
  JsonObject *object = lr_json_get_object (&place, node, error);

  return object != NULL && lr_json_get_rows (&place, object, &rows, 1, known, &job->unknown, error)
         && check_dates (&place, job, error)
         && (!json_object_has_member (object, "contacts")
             || read_contacts (&contacts, json_object_get_member (object, "contacts"), job, error))
         && (!json_object_has_member (object, "requests")
             || read_requests (&requests, json_object_get_member (object, "requests"), job, error));
}
