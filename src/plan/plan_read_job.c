/* plan_read_job.c - the job from its JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include "plan_check.h"

#include <glib/gi18n-lib.h>

/**
 * lr_read_list:
 * @owner_place: where @owner stands
 * @owner_object: its object
 * @list: which of its lists
 * @owner: a fresh job or location
 * @error: return location
 *
 * Returns: %FALSE if a member is not as it should be
 */
gboolean
lr_read_list (const LrJsonPlace  *owner_place,
              JsonObject         *owner_object,
              LrList              list,
              gpointer            owner,
              GError            **error)
{
  const LrListInfo *info = lr_list_info (list);
  LrJsonPlace place = { .up = owner_place, .name = info->key };
  JsonNode *node = json_object_get_member (owner_object, info->key);
  JsonArray *array = node != NULL ? lr_json_get_array (&place, node, error) : NULL;
  char *row;

  if (array == NULL)
    return node == NULL;

  row = lr_list_make (owner, list, json_array_get_length (array));
  for (guint i = 0; i < json_array_get_length (array); i++, row += info->size)
    {
      LrJsonPlace at = { .up = &place, .index = i };
      JsonObject *object = lr_json_get_object (&at, json_array_get_element (array, i), error);
      const LrJsonRows rows = { info->table (), row };

      if (object == NULL || !lr_json_get_rows (&at, object, &rows, 1, NULL, lr_list_unknown_of (list, row), error))
        return FALSE;
    }

  return TRUE;
}

/* What lines are known by: the first row of the list's table. */
static gboolean
check_keys (const LrJsonPlace  *job_place,
            LrList              list,
            const LrJob        *job,
            GError            **error)
{
  const LrListInfo *info = lr_list_info (list);
  const LrProp *prop = &info->table ()->props[0];
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  LrJsonPlace place = { .up = job_place, .name = info->key };
  gsize n;
  const char *row = lr_list_get (job, list, &n);

  for (gsize i = 0; i < n; i++, row += info->size)
    {
      LrJsonPlace element = { .up = &place, .index = (guint) i }, at = { .up = &element, .name = prop->key };
      const char *key = lr_prop_get_text (prop, row);

      if (*key == '\0')
        return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is missing"));
      if (!g_hash_table_add (keys, (gpointer) key))
        return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("is “%s”, which is taken already"), key);
    }

  return TRUE;
}

static gboolean
read_texts (const LrJsonPlace   *job_place,
            JsonObject          *job_object,
            const char          *key,
            char              ***texts,
            GError             **error)
{
  LrJsonPlace place = { .up = job_place, .name = key };
  JsonNode *node = json_object_get_member (job_object, key);
  JsonArray *array = node != NULL ? lr_json_get_array (&place, node, error) : NULL;
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  if (array == NULL)
    return node == NULL;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &place, .index = i };
      const char *text = lr_json_get_text (&at, json_array_get_element (array, i), error);

      if (text == NULL)
        return FALSE;
      g_strv_builder_add (builder, text);
    }
  g_strfreev (*texts);
  *texts = g_strv_builder_end (builder);

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
  static const char *const known[] = { "requests", "questions", "run", "ticks", NULL };
  LrJsonPlace place = { .up = root, .name = "job" };
  const LrJsonRows rows = { lr_job_table (), job };
  JsonObject *object = lr_json_get_object (&place, node, error);

  return object != NULL && lr_json_get_rows (&place, object, &rows, 1, known, &job->unknown, error)
         && check_dates (&place, job, error)
         && read_texts (&place, object, "requests", &job->requests, error)
         && lr_read_list (&place, object, LR_LIST_QUESTIONS, job, error)
         && check_keys (&place, LR_LIST_QUESTIONS, job, error)
         && lr_read_list (&place, object, LR_LIST_RUN, job, error)
         && check_keys (&place, LR_LIST_RUN, job, error)
         && read_texts (&place, object, "ticks", &job->ticks, error);
}
