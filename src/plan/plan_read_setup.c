/* plan_read_setup.c - a set-up from its JSON: the room and what stands in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include "plan_check.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The list keys of the room's kinds, or of the others, behind @first: NULL-terminated */
static const char **
dup_list_keys (gboolean            is_of_room,
               const char *const  *first)
{
  GPtrArray *keys = g_ptr_array_new ();

  for (; *first != NULL; first++)
    g_ptr_array_add (keys, (gpointer) *first);
  for (guint i = 0; i < LR_N_ITEM_KINDS; i++)
    {
      const LrItemKindInfo *info = lr_item_kind_info (lr_item_kind_in_order (i));

      if (info->list_key != NULL && info->is_of_room == is_of_room)
        g_ptr_array_add (keys, (gpointer) info->list_key);
    }
  g_ptr_array_add (keys, NULL);

  return (const char **) g_ptr_array_free (keys, FALSE);
}

/**
 * lr_read_id:
 * @place: where @item stands
 * @item: a fresh item that has been read
 * @ids: (element-type utf8 LrItem): the ids so far; gets this one
 * @error: return location
 *
 * Returns: %FALSE if the id is "" or taken
 */
gboolean
lr_read_id (const LrJsonPlace  *place,
            LrItem             *item,
            GHashTable         *ids,
            GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "id" };

  if (*item->id == '\0')
    return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is missing or empty"));
  if (g_hash_table_contains (ids, item->id))
    return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("is “%s”, which is taken already"), item->id);
  g_hash_table_insert (ids, item->id, item);

  return TRUE;
}

/**
 * lr_read_check_order:
 * @place: where @item stands
 * @item: an item that has been read
 * @error: return location
 *
 * Returns: %FALSE if two of its members contradict each other, as a sill above its head
 */
gboolean
lr_read_check_order (const LrJsonPlace  *place,
                     const LrItem       *item,
                     GError            **error)
{
  const LrOrderedPair *pair = lr_item_check_order (item);
  LrJsonPlace at = { .up = place, .name = pair != NULL ? pair->high : NULL };

  return pair == NULL || lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is not more than “%s”"), pair->low);
}

static gboolean
check_ref (const LrJsonPlace  *place,
           const LrProp       *prop,
           const LrItem       *item,
           GHashTable         *ids,
           GHashTable         *kit_ids,
           GError            **error)
{
  LrJsonPlace at = { .up = place, .name = prop->key };
  const char *id = lr_prop_get_text (prop, item);
  GHashTable *where = lr_ref_is_to_kit (prop) ? kit_ids : ids;
  const LrItem *target;

  if (*id == '\0')
    return TRUE;
  target = where != NULL ? g_hash_table_lookup (where, id) : NULL;
  if (target == NULL)
    return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which is not there"), id);
  if (!lr_ref_accepts (prop, item, target))
    return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which it cannot name"), id);

  return TRUE;
}

/**
 * lr_read_check_refs:
 * @place: where @item stands
 * @item: an item that has been read
 * @ids: (nullable) (element-type utf8 LrItem): the set-up's items; %NULL for an item of the kit
 * @kit_ids: (element-type utf8 LrItem): the kit's
 * @error: return location
 *
 * Returns: %FALSE if it names what is not there or of the wrong kind
 */
gboolean
lr_read_check_refs (const LrJsonPlace  *place,
                    const LrItem       *item,
                    GHashTable         *ids,
                    GHashTable         *kit_ids,
                    GError            **error)
{
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);
  const LrPropTable *tables[] = { lr_item_common_table (info->place), &info->table };

  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (gsize i = 0; i < tables[t]->n_props; i++)
      if (tables[t]->props[i].type == LR_PROP_REF
          && !check_ref (place, &tables[t]->props[i], item, ids, kit_ids, error))
        return FALSE;

  return TRUE;
}

/* A member of a path: none, or at least two points */
static gboolean
read_path (const LrJsonPlace  *place,
           JsonObject         *object,
           LrItem             *item,
           GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "path" };
  JsonNode *node = json_object_get_member (object, "path");

  if (node == NULL)
    return TRUE;
  if (!lr_json_get_points (&at, node, LR_MAX_PATH_POINTS, &item->path_m, &item->n_path, error))
    return FALSE;

  return item->n_path != 1 || lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("has one point; a path has none or two"));
}

static gboolean
check_wall (const LrJsonPlace  *place,
            const LrRoom       *room,
            const LrItem       *item,
            GError            **error)
{
  LrJsonPlace wall = { .up = place, .name = "wall" }, along = { .up = place, .name = "along-mm" };
  double length_m;

  if (!lr_room_wall (room, item->wall, NULL, NULL, &length_m))
    return lr_json_fail (&wall, LR_PLAN_ERROR_REFERENCE, error, _("is %d, but the room has %u walls, counted from 0"),
                         item->wall, (guint) room->n_corners);
  if (item->along_m > length_m)
    return lr_json_fail (&along, LR_PLAN_ERROR_VALUE, error, _("is %.0f, but the wall is %.0f long"),
                         item->along_m * 1000.0, length_m * 1000.0);

  return TRUE;
}

static gboolean
read_item (const LrJsonPlace  *place,
           JsonNode           *node,
           LrItemKind          kind,
           LrSetup            *setup,
           GHashTable         *ids,
           GError            **error)
{
  const LrItemKindInfo *info = lr_item_kind_info (kind);
  JsonObject *object = lr_json_get_object (place, node, error);
  g_autoptr (LrItem) item = lr_item_new (kind, "");
  const LrJsonRows rows[] = { { &info->table, item }, { lr_item_common_table (info->place), item } };

  if (object == NULL)
    return FALSE;
  if (!lr_json_get_rows (place, object, rows, G_N_ELEMENTS (rows), lr_read_item_keys (kind), &item->unknown, error)
      || !lr_read_lamp_file (place, object, item, error))
    return FALSE;
  if (info->place == LR_PLACE_PATH && !read_path (place, object, item, error))
    return FALSE;
  if (!lr_read_check_order (place, item, error)
      || (info->place == LR_PLACE_WALL && !check_wall (place, setup->room, item, error))
      || !lr_read_id (place, item, ids, error))
    return FALSE;
  g_ptr_array_add (setup->items, g_steal_pointer (&item));

  return TRUE;
}

/* Reading kind by kind in their order keeps the items in it */
static gboolean
read_items (const LrJsonPlace  *setup_place,
            const LrJsonPlace  *room_place,
            JsonObject         *setup_object,
            JsonObject         *room_object,
            LrSetup            *setup,
            GHashTable         *ids,
            GError            **error)
{
  for (guint i = 0; i < LR_N_ITEM_KINDS; i++)
    {
      LrItemKind kind = lr_item_kind_in_order (i);
      const LrItemKindInfo *info = lr_item_kind_info (kind);
      JsonObject *holder = info->is_of_room ? room_object : setup_object;
      LrJsonPlace list = { .up = info->is_of_room ? room_place : setup_place, .name = info->list_key };
      JsonNode *node = holder != NULL && info->list_key != NULL ? json_object_get_member (holder, info->list_key) : NULL;
      JsonArray *array;

      if (node == NULL)
        continue;
      array = lr_json_get_array (&list, node, error);
      if (array == NULL)
        return FALSE;
      for (guint k = 0; k < json_array_get_length (array); k++)
        {
          LrJsonPlace at = { .up = &list, .index = k };

          if (!read_item (&at, json_array_get_element (array, k), kind, setup, ids, error))
            return FALSE;
        }
    }

  return TRUE;
}

/* Once every id is known */
static gboolean
check_all_refs (const LrJsonPlace  *setup_place,
                const LrJsonPlace  *room_place,
                const LrSetup      *setup,
                GHashTable         *ids,
                GHashTable         *kit_ids,
                GError            **error)
{
  guint index = 0;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];
      const LrItemKindInfo *info = lr_item_kind_info (item->kind);
      LrJsonPlace list = { .up = info->is_of_room ? room_place : setup_place, .name = info->list_key };
      LrJsonPlace at = { .up = &list };

      index = i > 0 && ((const LrItem *) setup->items->pdata[i - 1])->kind == item->kind ? index + 1 : 0;
      at.index = index;
      if (!lr_read_check_refs (&at, item, ids, kit_ids, error))
        return FALSE;
    }

  return TRUE;
}

/* The room */

static gboolean
read_corners (const LrJsonPlace  *place,
              JsonObject         *object,
              LrRoom             *room,
              GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "corners" };
  JsonNode *node = json_object_get_member (object, "corners");

  if (node == NULL)
    return TRUE;
  if (!lr_json_get_points (&at, node, LR_MAX_CORNERS, &room->corners_m, &room->n_corners, error))
    return FALSE;

  switch (lr_corners_check (room->corners_m, room->n_corners))
    {
    case LR_CORNERS_TOO_FEW:
      return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error,
                           _("has fewer than three points; a room has none or at least three"));
    case LR_CORNERS_CROSS:
      return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("makes walls that cross or touch each other"));
    case LR_CORNERS_CLOCKWISE:
      return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("runs clockwise; corners run anticlockwise"));
    case LR_CORNERS_TOO_MANY: /* refused above */
    case LR_CORNERS_FINE:
    default:
      return TRUE;
    }
}

static gboolean
read_surface (const LrJsonPlace  *place,
              JsonObject         *room_object,
              const char         *name,
              LrSurface          *surface,
              GError            **error)
{
  LrJsonPlace at = { .up = place, .name = name };
  JsonNode *node = json_object_get_member (room_object, name);
  const LrJsonRows rows = { lr_surface_table (), surface };
  JsonObject *object;

  if (node == NULL)
    return TRUE;
  object = lr_json_get_object (&at, node, error);

  return object != NULL && lr_json_get_rows (&at, object, &rows, 1, NULL, &surface->unknown, error);
}

static gboolean
read_tape (const LrJsonPlace  *place,
           JsonObject         *room_object,
           LrRoom             *room,
           GError            **error)
{
  LrJsonPlace list = { .up = place, .name = "tape" };
  JsonNode *node = json_object_get_member (room_object, "tape");
  JsonArray *array;

  if (node == NULL)
    return TRUE;
  array = lr_json_get_array (&list, node, error);
  if (array == NULL)
    return FALSE;

  room->tape = g_new0 (LrTapeNote, json_array_get_length (array));
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &list, .index = i };
      JsonObject *object = lr_json_get_object (&at, json_array_get_element (array, i), error);
      LrTapeNote *note = &room->tape[room->n_tape];
      const LrJsonRows rows = { lr_tape_table (), note };

      if (object == NULL)
        return FALSE;
      room->n_tape++;
      lr_prop_table_init (lr_tape_table (), note);
      if (!lr_json_get_rows (&at, object, &rows, 1, NULL, &note->unknown, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
read_turns (const LrJsonPlace  *place,
            JsonObject         *room_object,
            LrRoom             *room,
            GError            **error)
{
  LrJsonPlace list = { .up = place, .name = "turns" };
  JsonNode *node = json_object_get_member (room_object, "turns");
  JsonArray *array;

  if (node == NULL)
    return TRUE;
  array = lr_json_get_array (&list, node, error);
  if (array == NULL)
    return FALSE;

  room->turns = g_new0 (LrTurnNote, json_array_get_length (array));
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &list, .index = i };
      JsonObject *object = lr_json_get_object (&at, json_array_get_element (array, i), error);
      LrTurnNote *note = &room->turns[room->n_turns];
      const LrJsonRows rows = { lr_turn_table (), note };

      if (object == NULL)
        return FALSE;
      room->n_turns++;
      lr_prop_table_init (lr_turn_table (), note);
      if (!lr_json_get_rows (&at, object, &rows, 1, NULL, &note->unknown, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
read_room (const LrJsonPlace  *place,
           JsonObject         *object,
           GPtrArray          *before,
           LrRoom             *room,
           GError            **error)
{
  static const char *const own_keys[] = { "corners", "walls", "floor", "ceiling", "tape", "turns", LR_PICTURE_KEY, NULL };
  g_autofree const char **known = dup_list_keys (TRUE, own_keys);
  const LrJsonRows rows = { lr_room_table (), room };

  return lr_json_get_rows (place, object, &rows, 1, known, &room->unknown, error)
         && read_corners (place, object, room, error)
         && read_surface (place, object, "walls", &room->walls, error)
         && read_surface (place, object, "floor", &room->floor, error)
         && read_surface (place, object, "ceiling", &room->ceiling, error) && read_tape (place, object, room, error)
         && read_turns (place, object, room, error) && lr_read_picture (place, object, before, room, error);
}

/* The set-up */

static gboolean
read_own (const LrJsonPlace  *place,
          JsonObject         *object,
          LrSetup            *setup,
          GError            **error)
{
  static const char *const own_keys[] = { "id", "name", "found-of", "location", "room", NULL };
  g_autofree const char **known = dup_list_keys (FALSE, own_keys);
  char **texts[] = { &setup->id, &setup->name, &setup->found_of };
  const LrJsonRows rows = { lr_setup_table (), setup };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      LrJsonPlace at = { .up = place, .name = own_keys[i] };
      JsonNode *node = json_object_get_member (object, own_keys[i]);
      const char *text;

      if (node == NULL)
        continue;
      text = lr_json_get_text (&at, node, error);
      if (text == NULL)
        return FALSE;
      g_free (*texts[i]);
      *texts[i] = g_strdup (text);
    }

  return lr_json_get_rows (place, object, &rows, 1, known, &setup->unknown, error);
}

/**
 * lr_read_setup:
 * @place: where
 * @node: a value
 * @before: (element-type LrSetup): the set-ups before it in the file
 * @kit_ids: (element-type utf8 LrItem): the kit's entries
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the set-up
 */
LrSetup *
lr_read_setup (const LrJsonPlace  *place,
               JsonNode           *node,
               GPtrArray          *before,
               GHashTable         *kit_ids,
               GError            **error)
{
  LrJsonPlace room_place = { .up = place, .name = "room" };
  JsonObject *object = lr_json_get_object (place, node, error);
  JsonNode *location_node = object != NULL ? json_object_get_member (object, "location") : NULL;
  JsonNode *room_node = object != NULL ? json_object_get_member (object, "room") : NULL;
  JsonObject *room_object = NULL;
  g_autoptr (LrSetup) setup = lr_setup_new ("", "");
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  if (object == NULL || !read_own (place, object, setup, error)
      || (location_node != NULL && !lr_read_location (place, location_node, setup->location, error)))
    return NULL;
  if (room_node != NULL)
    {
      room_object = lr_json_get_object (&room_place, room_node, error);
      if (room_object == NULL || !read_room (&room_place, room_object, before, setup->room, error))
        return NULL;
    }
  if (!read_items (place, &room_place, object, room_object, setup, ids, error)
      || !check_all_refs (place, &room_place, setup, ids, kit_ids, error))
    return NULL;

  return g_steal_pointer (&setup);
}
