/* packing_words.c - the packing list in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "packing_words.h"

#include "asks.h"
#include "packing_words_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const group_titles[LR_N_PACK_GROUPS] = {
  [LR_PACK_CAMERA] = N_("Cameras"), [LR_PACK_LENS] = N_("Lenses"), [LR_PACK_SUPPORT] = N_("Supports"), [LR_PACK_LIGHT] = N_("Lights"),
  [LR_PACK_SOUND] = N_("Sound"), [LR_PACK_POWER] = N_("Power"), [LR_PACK_GRIP] = N_("Grip"), [LR_PACK_SUNDRIES] = N_("Tape and sundries"),
};

/* In files; never translated */
static const char *const group_words[LR_N_PACK_GROUPS] = {
  [LR_PACK_CAMERA] = "camera", [LR_PACK_LENS] = "lens", [LR_PACK_SUPPORT] = "support", [LR_PACK_LIGHT] = "light",
  [LR_PACK_SOUND] = "sound", [LR_PACK_POWER] = "power", [LR_PACK_GRIP] = "grip", [LR_PACK_SUNDRIES] = "sundries",
};

/**
 * lr_pack_group_title:
 * @group: a group
 *
 * Returns: (transfer none): for people, translated
 */
const char *
lr_pack_group_title (LrPackGroup group)
{
  g_return_val_if_fail (group < LR_N_PACK_GROUPS, "");

  return _(group_titles[group]);
}

/**
 * lr_pack_lack_title:
 *
 * Returns: (transfer none): of what is planned and the kit does not have
 */
const char *
lr_pack_lack_title (void)
{
  return _("Planned, but not in the kit");
}

/**
 * lr_pack_empty_text:
 *
 * Returns: (transfer none): what is said of a list without rows
 */
const char *
lr_pack_empty_text (void)
{
  return _("Nothing stands in the room yet. What is placed is listed here, with what it needs.");
}

static void
row_free (gpointer data)
{
  LrPackRow *row = data;

  g_free (row->key);
  g_free (row->tick);
  g_free (row->title);
  g_free (row->why);
  g_free (row->lack);
  g_free (row);
}

static char *
dup_tick (const LrPackRow *row)
{
  g_autofree char *quantity = g_strdup_printf ("%d", row->quantity);

  return lr_tick_key (row->key, quantity);
}

static char *
dup_lack (const LrPackLine *line)
{
  if (line->missing == 0)
    return g_strdup ("");
  if (line->owned == 0)
    return g_strdup (_("none is in the kit"));
  /* Translators: how many the kit has, how many are needed */
  return g_strdup_printf (_("the kit has %d of %d"), line->owned, line->quantity - line->spare);
}

/* What is asked for may also be ours to bring: a line of the user's that says so */
static gboolean
says_bring (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  /* Translators: the word by which a request of the user's is known as something to bring along; lower case */
  g_autofree char *word = g_utf8_casefold (_("bring"), -1);
  const char *at = strstr (folded, word);

  while (at != NULL)
    {
      gunichar before = at > folded ? g_utf8_get_char (g_utf8_prev_char (at)) : ' ', after = g_utf8_get_char (at + strlen (word));

      if (!g_unichar_isalnum (before) && !g_unichar_isalnum (after))
        return TRUE;
      at = strstr (at + 1, word);
    }

  return FALSE;
}

static void
add_asks (GPtrArray     *rows,
          const LrStudy *study,
          LrUnits        units)
{
  g_autoptr (GPtrArray) asks = lr_asks_new (study, units);

  for (guint i = 0; i < asks->len; i++)
    {
      const LrAsk *ask = asks->pdata[i];
      g_autofree char *hash = NULL;
      LrPackRow *row;

      if (!says_bring (ask->text))
        continue;
      hash = g_compute_checksum_for_string (G_CHECKSUM_MD5, ask->text, -1);
      hash[8] = '\0';
      row = g_new0 (LrPackRow, 1);
      row->group = LR_PACK_SUNDRIES;
      row->key = g_strdup_printf ("sundries/ask-%s", hash);
      row->title = g_strdup (ask->text);
      row->quantity = 1;
      row->owned = -1;
      row->why = *ask->reason != '\0' ? g_strdup (ask->reason) : g_strdup (_("as the requests say"));
      row->lack = g_strdup ("");
      row->tick = dup_tick (row);
      g_ptr_array_add (rows, row);
    }
}

/**
 * lr_pack_rows_new:
 * @study: a study
 * @units: how lengths are written
 *
 * Returns: (transfer full) (element-type LrPackRow): what has to come along and why
 */
GPtrArray *
lr_pack_rows_new (const LrStudy *study,
                  LrUnits        units)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (row_free);
  g_autoptr (LrPacking) packing = lr_packing_new (study);

  for (guint i = 0; i < packing->lines->len; i++)
    {
      const LrPackLine *line = packing->lines->pdata[i];
      LrPackRow *row = g_new0 (LrPackRow, 1);

      row->group = line->group;
      row->key = g_strdup (line->key);
      row->title = lr_pack_dup_title (line, units);
      row->quantity = line->quantity;
      row->spare = line->spare;
      row->owned = line->owned;
      row->missing = line->missing;
      row->why = lr_pack_dup_why (packing, line, study, units);
      row->lack = dup_lack (line);
      row->tick = dup_tick (row);
      g_ptr_array_add (rows, row);
    }
  add_asks (rows, study, units);

  return rows;
}

/**
 * lr_pack_rows_lacking:
 * @rows: (element-type LrPackRow): a packing list
 *
 * Returns: how many of them lack something
 */
guint
lr_pack_rows_lacking (const GPtrArray *rows)
{
  guint n = 0;

  for (guint i = 0; i < rows->len; i++)
    n += ((const LrPackRow *) rows->pdata[i])->missing > 0;

  return n;
}

static void
add_text (JsonBuilder *builder,
          const char  *name,
          const char  *text)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_string_value (builder, text);
}

static void
add_count (JsonBuilder *builder,
           const char  *name,
           int          count)
{
  json_builder_set_member_name (builder, name);
  json_builder_add_int_value (builder, count);
}

/**
 * lr_pack_rows_to_json:
 * @rows: (element-type LrPackRow): a packing list
 *
 * Returns: (transfer full): an object with "rows"; in-kit is left out where the kit does not count such things
 */
JsonNode *
lr_pack_rows_to_json (const GPtrArray *rows)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  add_text (builder, "format", "lookroom-packing");
  json_builder_set_member_name (builder, "rows");
  json_builder_begin_array (builder);
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];

      json_builder_begin_object (builder);
      add_text (builder, "key", row->key);
      add_text (builder, "group", group_words[row->group]);
      add_text (builder, "title", row->title);
      add_count (builder, "quantity", row->quantity);
      add_count (builder, "reserve", row->spare);
      if (row->owned >= 0)
        add_count (builder, "in-kit", row->owned);
      add_count (builder, "missing", row->missing);
      add_text (builder, "why", row->why);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}

/* RFC 4180, section 2: quotes round what holds a comma, a quote or a line's end; quotes are doubled. A cell that a spreadsheet would take
 * for a formula is kept a text by an apostrophe */
static void
append_cell (GString    *csv,
             const char *text)
{
  g_autofree char *plain = strchr ("=+-@\t", text[0]) != NULL && text[0] != '\0' ? g_strconcat ("'", text, NULL) : g_strdup (text);

  if (strpbrk (plain, ",\"\r\n") == NULL)
    {
      g_string_append (csv, plain);
      return;
    }
  g_string_append_c (csv, '"');
  for (const char *p = plain; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (csv, '"');
      g_string_append_c (csv, *p);
    }
  g_string_append_c (csv, '"');
}

/**
 * lr_pack_rows_to_csv:
 * @rows: (element-type LrPackRow): a packing list
 *
 * Returns: (transfer full): comma-separated values by RFC 4180, the first line with the names of the columns
 */
char *
lr_pack_rows_to_csv (const GPtrArray *rows)
{
  GString *csv = g_string_new ("group,title,quantity,reserve,in-kit,missing,why\r\n");

  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];

      append_cell (csv, group_words[row->group]);
      g_string_append_c (csv, ',');
      append_cell (csv, row->title);
      g_string_append_printf (csv, ",%d,%d,", row->quantity, row->spare);
      if (row->owned >= 0)
        g_string_append_printf (csv, "%d", row->owned);
      g_string_append_printf (csv, ",%d,", row->missing);
      append_cell (csv, row->why);
      g_string_append (csv, "\r\n");
    }

  return g_string_free (csv, FALSE);
}
