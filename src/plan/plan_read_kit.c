/* plan_read_kit.c - what is in the van, from its JSON: of a plan, and of the user's own kit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gboolean
read_kind (const LrJsonPlace  *place,
           JsonObject         *object,
           LrItemKind         *kind,
           GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "kind" };
  const char *word = lr_read_word (&at, object, error);

  if (word == NULL)
    return FALSE;
  for (guint i = 0; i < LR_N_ITEM_KINDS; i++)
    if (lr_kit_holds_kind (i) && strcmp (lr_item_kind_info (i)->word, word) == 0)
      {
        *kind = i;
        return TRUE;
      }

  return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is “%s”, which is nothing that a kit holds"), word);
}

/* An entry and its item stand in one object; of the item's common members only its id */
static LrKitEntry *
read_entry (const LrJsonPlace  *place,
            JsonNode           *node,
            GHashTable         *kit_ids,
            GError            **error)
{
  static const char *const known[] = { "kind", NULL }, *const known_of_light[] = { "kind", LR_LAMP_FILE_KEY, NULL };
  JsonObject *object = lr_json_get_object (place, node, error);
  g_autoptr (LrKitEntry) entry = NULL;
  LrItemKind kind = LR_ITEM_LENS;
  LrItem *item;

  if (object == NULL || !read_kind (place, object, &kind, error))
    return NULL;

  item = lr_item_new (kind, "");
  entry = lr_kit_entry_new (item);
  {
    const LrPropTable id_table = { lr_item_find_prop (kind, "id"), 1 };
    const LrJsonRows rows[] = {
      { lr_kit_entry_table (), entry }, { &lr_item_kind_info (kind)->table, item }, { &id_table, item },
    };

    if (!lr_json_get_rows (place, object, rows, G_N_ELEMENTS (rows), kind == LR_ITEM_LIGHT ? known_of_light : known, &item->unknown, error)
        || !lr_read_lamp_file (place, object, item, error)
        || !lr_read_check_order (place, item, error) || !lr_read_id (place, item, kit_ids, error))
      return NULL;
  }

  return g_steal_pointer (&entry);
}

/**
 * lr_read_kit:
 * @root: the file
 * @node: its list
 * @kit: (element-type LrKitEntry): a fresh list that gets them
 * @kit_ids: (element-type utf8 LrItem): gets the item of every entry
 * @error: return location
 *
 * Returns: %FALSE if an entry is not as it should be
 */
gboolean
lr_read_kit (const LrJsonPlace  *root,
             JsonNode           *node,
             GPtrArray          *kit,
             GHashTable         *kit_ids,
             GError            **error)
{
  LrJsonPlace place = { .up = root, .name = "kit" };
  JsonArray *array = lr_json_get_array (&place, node, error);

  if (array == NULL)
    return FALSE;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &place, .index = i };
      LrKitEntry *entry = read_entry (&at, json_array_get_element (array, i), kit_ids, error);

      if (entry == NULL)
        return FALSE;
      g_ptr_array_add (kit, entry);
    }
  for (guint i = 0; i < kit->len; i++)
    {
      LrJsonPlace at = { .up = &place, .index = i };

      if (!lr_read_check_refs (&at, ((const LrKitEntry *) kit->pdata[i])->item, NULL, kit_ids, error))
        return FALSE;
    }

  return TRUE;
}

/**
 * lr_read_supplies:
 * @root: the file
 * @node: its list
 * @supplies: (element-type LrSupply): a fresh list that gets them
 * @error: return location
 *
 * Returns: %FALSE if one is not as it should be, or there are too many
 */
gboolean
lr_read_supplies (const LrJsonPlace  *root,
                  JsonNode           *node,
                  GPtrArray          *supplies,
                  GError            **error)
{
  LrJsonPlace place = { .up = root, .name = "supplies" };
  JsonArray *array = lr_json_get_array (&place, node, error);

  if (array == NULL)
    return FALSE;
  if (json_array_get_length (array) > LR_MAX_SUPPLIES)
    return lr_json_fail (&place, LR_PLAN_ERROR_VALUE, error, _("has %u rows; %d are the most"), json_array_get_length (array),
                         LR_MAX_SUPPLIES);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &place, .index = i };
      JsonObject *object = lr_json_get_object (&at, json_array_get_element (array, i), error);
      LrSupply *supply;
      LrJsonRows rows = { lr_supply_table (), NULL };

      if (object == NULL)
        return FALSE;
      supply = lr_supply_new (LR_SUPPLY_OTHER);
      g_ptr_array_add (supplies, supply);
      rows.owner = supply;
      if (!lr_json_get_rows (&at, object, &rows, 1, NULL, &supply->unknown, error))
        return FALSE;
    }

  return TRUE;
}
