/* plan_writer.c - from a plan to a file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Members stand in the order of the tables, then those that this version does not know, in the order in which they were
 * read. Optional ones that are not given are left out; all others are written, also where they equal their fallback.
 */

#include "config.h"

#include "plan_writer.h"

#include "plan_reader.h"

#include "json_writer.h"
#include "plan_private.h"
#include "save.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* Members */

static void
write_prop (LrJsonWriter  *writer,
            const LrProp  *prop,
            gconstpointer  owner)
{
  double value = lr_prop_is_text (prop) ? 0.0 : lr_prop_get_number (prop, owner);

  switch (prop->type)
    {
    case LR_PROP_TEXT:
    case LR_PROP_REF:
      if (!prop->is_optional || *lr_prop_get_text (prop, owner) != '\0')
        lr_json_write_text (writer, prop->key, lr_prop_get_text (prop, owner));
      break;
    case LR_PROP_CHOICE: /* an optional one is left out at its first word */
      if (lr_prop_is_given (prop, value))
        lr_json_write_text (writer, prop->key, lr_prop_get_text (prop, owner));
      break;
    case LR_PROP_FLAG:
      if (lr_prop_is_given (prop, value))
        lr_json_write_flag (writer, prop->key, value != 0.0);
      break;
    case LR_PROP_LENGTH:
    case LR_PROP_FINE_LENGTH:
    case LR_PROP_ANGLE:
    case LR_PROP_SHARE:
    case LR_PROP_NUMBER:
    case LR_PROP_COUNT:
    default:
      if (lr_prop_is_given (prop, value))
        lr_json_write_number (writer, prop->key, lr_prop_to_file (prop, value), lr_prop_decimals (prop));
    }
}

static void
write_table (LrJsonWriter      *writer,
             const LrPropTable *table,
             gconstpointer      owner)
{
  for (gsize i = 0; i < table->n_props; i++)
    write_prop (writer, &table->props[i], owner);
}

static void
write_object (LrJsonWriter      *writer,
              const char        *key,
              const LrPropTable *table,
              gconstpointer      owner,
              JsonObject        *unknown)
{
  lr_json_begin (writer, key, '{');
  write_table (writer, table, owner);
  lr_json_write_members (writer, unknown);
  lr_json_end (writer, '}');
}

static void
write_points (LrJsonWriter *writer,
              const char   *key,
              const LrVec2 *points_m,
              gsize         n)
{
  const LrPropTable *table = lr_item_common_table (LR_PLACE_FLOOR);
  const LrProp *prop = lr_prop_table_find (table, "x-mm");
  g_autofree double *pairs = g_new (double, 2 * n);

  for (gsize i = 0; i < n; i++)
    {
      pairs[2 * i] = lr_prop_to_file (prop, points_m[i].x);
      pairs[2 * i + 1] = lr_prop_to_file (prop, points_m[i].y);
    }
  lr_json_write_pairs (writer, key, pairs, n, 0);
}

static void
write_lamp_file (LrJsonWriter     *writer,
                 const LrLampFile *file)
{
  if (file == NULL)
    return;

  lr_json_begin (writer, LR_LAMP_FILE_KEY, '{');
  lr_json_write_text (writer, "format", lr_lamp_format_word (file->format));
  lr_json_begin (writer, "lines", '[');
  for (gsize i = 0; i < file->n_lines; i++)
    lr_json_write_text (writer, NULL, file->lines[i]);
  lr_json_end (writer, ']');
  lr_json_write_members (writer, file->unknown);
  lr_json_end (writer, '}');
}

/* Parts */

static void
write_list (LrJsonWriter  *writer,
            gconstpointer  owner,
            LrList         list)
{
  const LrListInfo *info = lr_list_info (list);
  gsize n;
  char *row = lr_list_get (owner, list, &n);

  if (n == 0 && info->is_optional)
    return;

  lr_json_begin (writer, info->key, '[');
  for (gsize i = 0; i < n; i++, row += info->size)
    write_object (writer, NULL, info->table (), row, *lr_list_unknown_of (list, row));
  lr_json_end (writer, ']');
}

static void
write_texts (LrJsonWriter      *writer,
             const char        *key,
             const char *const *texts)
{
  lr_json_begin (writer, key, '[');
  for (gsize i = 0; texts[i] != NULL; i++)
    lr_json_write_text (writer, NULL, texts[i]);
  lr_json_end (writer, ']');
}

static void
write_job (LrJsonWriter *writer,
           const LrJob  *job)
{
  lr_json_begin (writer, "job", '{');
  write_table (writer, lr_job_table (), job);
  write_texts (writer, "requests", (const char *const *) job->requests);
  write_list (writer, job, LR_LIST_QUESTIONS);
  write_list (writer, job, LR_LIST_RUN);
  if (job->ticks[0] != NULL)
    write_texts (writer, "ticks", (const char *const *) job->ticks);
  lr_json_write_members (writer, job->unknown);
  lr_json_end (writer, '}');
}

static void
write_limits (LrJsonWriter *writer,
              const LrPlan *plan)
{
  lr_json_begin (writer, "limits", '{');
  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      const LrProp *prop = &lr_limit_info (i)->prop;

      if (plan->limits.is_set[i])
        lr_json_write_number (writer, prop->key, lr_prop_to_file (prop, plan->limits.value[i]), lr_prop_decimals (prop));
    }
  lr_json_write_members (writer, plan->unknown_limits);
  lr_json_end (writer, '}');
}

static void
write_kit (LrJsonWriter *writer,
           GPtrArray    *kit)
{
  lr_json_begin (writer, "kit", '[');
  for (guint i = 0; i < kit->len; i++)
    {
      const LrKitEntry *entry = kit->pdata[i];
      const LrItemKindInfo *info = lr_item_kind_info (entry->item->kind);

      lr_json_begin (writer, NULL, '{');
      lr_json_write_text (writer, "id", entry->item->id);
      write_table (writer, lr_kit_entry_table (), entry);
      lr_json_write_text (writer, "kind", info->word);
      write_table (writer, &info->table, entry->item);
      write_lamp_file (writer, entry->item->lamp_file);
      lr_json_write_members (writer, entry->item->unknown);
      lr_json_end (writer, '}');
    }
  lr_json_end (writer, ']');
}

/* Left out when there are none */
static void
write_supplies (LrJsonWriter *writer,
                GPtrArray    *supplies)
{
  if (supplies->len == 0)
    return;

  lr_json_begin (writer, "supplies", '[');
  for (guint i = 0; i < supplies->len; i++)
    {
      const LrSupply *supply = supplies->pdata[i];

      write_object (writer, NULL, lr_supply_table (), supply, supply->unknown);
    }
  lr_json_end (writer, ']');
}

static void
write_item (LrJsonWriter *writer,
            const LrItem *item)
{
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);

  lr_json_begin (writer, NULL, '{');
  write_table (writer, lr_item_common_table (info->place), item);
  if (info->place == LR_PLACE_PATH)
    write_points (writer, "path", item->path_m, item->n_path);
  write_table (writer, &info->table, item);
  write_lamp_file (writer, item->lamp_file);
  lr_json_write_members (writer, item->unknown);
  lr_json_end (writer, '}');
}

/* The lists of the room's kinds, or of the others. Items are kept in the order of their kinds: one walk does. */
static void
write_items (LrJsonWriter  *writer,
             const LrSetup *setup,
             gboolean       is_of_room)
{
  guint i = 0;

  for (guint k = 0; k < LR_N_ITEM_KINDS; k++)
    {
      LrItemKind kind = lr_item_kind_in_order (k);
      const LrItemKindInfo *info = lr_item_kind_info (kind);
      gboolean is_wanted = info->list_key != NULL && info->is_of_room == is_of_room;

      if (is_wanted)
        lr_json_begin (writer, info->list_key, '[');
      for (; i < setup->items->len && ((const LrItem *) setup->items->pdata[i])->kind == kind; i++)
        if (is_wanted)
          write_item (writer, setup->items->pdata[i]);
      if (is_wanted)
        lr_json_end (writer, ']');
    }
}

static void
write_turns (LrJsonWriter *writer,
             const LrRoom *room)
{
  lr_json_begin (writer, "turns", '[');
  for (gsize i = 0; i < room->n_turns; i++)
    write_object (writer, NULL, lr_turn_table (), &room->turns[i], room->turns[i].unknown);
  lr_json_end (writer, ']');
}

/* The first set-up that shows the same picture; (nullable): that is this one */
static const LrSetup *
find_shared (const LrPlan  *plan,
             const LrSetup *setup)
{
  for (guint i = 0; i < plan->setups->len && plan->setups->pdata[i] != setup; i++)
    {
      const LrSetup *before = plan->setups->pdata[i];

      if (before->room->underlay != NULL && lr_picture_file_equal (before->room->underlay, setup->room->underlay))
        return before;
    }

  return NULL;
}

/* Once in a file: the rooms of further set-ups name the first that has it */
static void
write_picture (LrJsonWriter  *writer,
               const LrPlan  *plan,
               const LrSetup *setup)
{
  const LrPictureFile *file = setup->room->underlay;
  const LrSetup *shared = file != NULL ? find_shared (plan, setup) : NULL;
  g_autofree char *text = NULL;
  gsize length;
  const guchar *data;

  if (file == NULL)
    return;
  if (shared != NULL)
    {
      lr_json_write_text (writer, LR_PICTURE_KEY, shared->id);
      return;
    }

  data = g_bytes_get_data (file->bytes, &length);
  text = g_base64_encode (data, length);
  lr_json_begin (writer, LR_PICTURE_KEY, '{');
  lr_json_write_text (writer, "media-type", lr_picture_type_word (file->type));
  lr_json_begin (writer, "lines", '[');
  for (gsize at = 0, n_chars = strlen (text); at < n_chars; at += LR_PICTURE_LINE_CHARS)
    {
      char line[LR_PICTURE_LINE_CHARS + 1] = "";

      memcpy (line, text + at, MIN (n_chars - at, LR_PICTURE_LINE_CHARS));
      lr_json_write_text (writer, NULL, line);
    }
  lr_json_end (writer, ']');
  lr_json_write_members (writer, file->unknown);
  lr_json_end (writer, '}');
}

static void
write_room (LrJsonWriter  *writer,
            const LrPlan  *plan,
            const LrSetup *setup)
{
  const LrRoom *room = setup->room;

  lr_json_begin (writer, "room", '{');
  write_points (writer, "corners", room->corners_m, room->n_corners);
  write_table (writer, lr_room_table (), room);
  write_object (writer, "walls", lr_surface_table (), &room->walls, room->walls.unknown);
  write_object (writer, "floor", lr_surface_table (), &room->floor, room->floor.unknown);
  write_object (writer, "ceiling", lr_surface_table (), &room->ceiling, room->ceiling.unknown);
  lr_json_begin (writer, "tape", '[');
  for (gsize i = 0; i < room->n_tape; i++)
    write_object (writer, NULL, lr_tape_table (), &room->tape[i], room->tape[i].unknown);
  lr_json_end (writer, ']');
  if (room->n_turns > 0)
    write_turns (writer, room);
  write_items (writer, setup, TRUE);
  write_picture (writer, plan, setup);
  lr_json_write_members (writer, room->unknown);
  lr_json_end (writer, '}');
}

static void
write_location (LrJsonWriter     *writer,
                const LrLocation *location)
{
  lr_json_begin (writer, "location", '{');
  write_table (writer, lr_location_table (), location);
  write_list (writer, location, LR_LIST_CONTACTS);
  lr_json_write_members (writer, location->unknown);
  lr_json_end (writer, '}');
}

/* What was not asked for is left out */
static void
write_wanted (LrJsonWriter  *writer,
              const LrSetup *setup)
{
  const LrPropTable *table = lr_setup_table ();

  for (gsize i = 0; i < table->n_props; i++)
    if (lr_prop_get_number (&table->props[i], setup) != table->props[i].fallback)
      write_prop (writer, &table->props[i], setup);
}

static void
write_setup (LrJsonWriter  *writer,
             const LrPlan  *plan,
             const LrSetup *setup)
{
  lr_json_begin (writer, NULL, '{');
  lr_json_write_text (writer, "id", setup->id);
  lr_json_write_text (writer, "name", setup->name);
  if (*setup->found_of != '\0')
    lr_json_write_text (writer, "found-of", setup->found_of);
  write_wanted (writer, setup);
  write_location (writer, setup->location);
  write_room (writer, plan, setup);
  write_items (writer, setup, FALSE);
  lr_json_write_members (writer, setup->unknown);
  lr_json_end (writer, '}');
}

/**
 * lr_plan_to_bytes:
 * @plan: a plan
 *
 * Returns: (transfer full): the file: UTF-8 JSON that ends in a newline. Read and written again it is the same.
 */
GBytes *
lr_plan_to_bytes (const LrPlan *plan)
{
  LrJsonWriter writer = { .text = g_string_sized_new (32 * 1024) };

  lr_json_begin (&writer, NULL, '{');
  lr_json_write_text (&writer, "format", LR_PLAN_FORMAT);
  lr_json_write_number (&writer, "version", plan->version, 0);
  write_job (&writer, plan->job);
  write_limits (&writer, plan);
  write_kit (&writer, plan->kit);
  write_supplies (&writer, plan->supplies);
  lr_json_write_text (&writer, "shown", lr_plan_get_setup (plan)->id);
  lr_json_begin (&writer, "setups", '[');
  for (guint i = 0; i < plan->setups->len; i++)
    write_setup (&writer, plan, plan->setups->pdata[i]);
  lr_json_end (&writer, ']');
  lr_json_write_members (&writer, plan->unknown);
  lr_json_end (&writer, '}');

  return g_string_free_to_bytes (writer.text);
}

/**
 * lr_kit_to_bytes:
 * @kit: (element-type LrKitEntry): what is in the van
 * @supplies: (element-type LrSupply): what goes along
 *
 * Returns: (transfer full): a file of them alone: UTF-8 JSON that ends in a newline, with the lists of a plan
 */
GBytes *
lr_kit_to_bytes (GPtrArray *kit,
                 GPtrArray *supplies)
{
  LrJsonWriter writer = { .text = g_string_sized_new (8 * 1024) };

  lr_json_begin (&writer, NULL, '{');
  lr_json_write_text (&writer, "format", LR_KIT_FORMAT);
  lr_json_write_number (&writer, "version", LR_KIT_VERSION, 0);
  write_kit (&writer, kit);
  write_supplies (&writer, supplies);
  lr_json_end (&writer, '}');

  return g_string_free_to_bytes (writer.text);
}

/* Files */

/* Where a link leads to; a path that is not there yet is itself */
static char *
dup_real_path (const char *path)
{
  char *real_path = realpath (path, NULL);
  char *copy = g_strdup (real_path != NULL ? real_path : path);

  free (real_path);

  return copy;
}

/* A second name for what is at @path: it takes no space, so that a full disk is no hindrance. Where the file system has no
 * such thing, a copy. Without a backup a save is still better than none. */
static gboolean
make_backup (const char *path,
             const char *backup)
{
  g_autoptr (GFile) from = g_file_new_for_path (path), to = g_file_new_for_path (backup);

  g_unlink (backup);

  return link (path, backup) == 0 || g_file_copy (from, to, G_FILE_COPY_OVERWRITE, NULL, NULL, NULL, NULL);
}

/**
 * lr_plan_write:
 * @plan: a plan
 * @path: of a file, which need not be there yet; a link leads to the file behind it
 * @error: return location
 *
 * Either the whole plan is at @path afterwards, and what was there at @path with a "~" behind it, or nothing has changed.
 * The plan is on the disk when this returns. A plan of a newer version is not saved.
 *
 * Returns: %FALSE if it could not be saved
 */
gboolean
lr_plan_write (const LrPlan  *plan,
               const char    *path,
               GError       **error)
{
  g_autofree char *shown_path = g_filename_display_name (path);
  g_autofree char *target = dup_real_path (path);
  g_autofree char *backup = g_strconcat (target, "~", NULL), *fresh_backup = g_strconcat (target, ".new~", NULL);
  g_autoptr (GBytes) bytes = NULL;
  gboolean has_backup, is_saved;
  gconstpointer data;
  gsize length;

  if (plan->is_read_only)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VERSION,
                   _("This plan has version %d of the format; this program can save version %d only."), plan->version,
                   LR_PLAN_VERSION);
      return FALSE;
    }

  bytes = lr_plan_to_bytes (plan);
  data = g_bytes_get_data (bytes, &length);
  if (length > LR_MAX_FILE_BYTES)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE,
                   _("%s: the plan takes %.0f MB, and no more than %d MB can be read again: take out a picture of a floor plan."), shown_path,
                   (double) length / (1024.0 * 1024.0), LR_MAX_FILE_BYTES / (1024 * 1024));
      return FALSE;
    }
  has_backup = g_file_test (target, G_FILE_TEST_IS_REGULAR) && make_backup (target, fresh_backup);
  is_saved = lr_save_bytes (target, data, length, error);
  if (!is_saved)
    g_prefix_error (error, "%s: ", shown_path);
  if (has_backup && is_saved)
    g_rename (fresh_backup, backup);
  else if (has_backup)
    g_unlink (fresh_backup);

  return is_saved;
}
