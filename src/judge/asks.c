/* asks.c - what the place is asked to do, made from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
ask_free (gpointer data)
{
  LrAsk *ask = data;

  g_free (ask->id);
  g_free (ask->text);
  g_free (ask->reason);
  g_free (ask->from);
  g_free (ask->to);
  g_free (ask);
}

static LrAsk *
append (GPtrArray    *asks,
        const LrItem *item,
        const char   *text,
        const char   *reason,
        const char   *from,
        const char   *to)
{
  LrAsk *ask = g_new0 (LrAsk, 1);

  ask->id = g_strdup (item != NULL ? item->id : "");
  ask->text = g_strdup (text);
  ask->reason = g_strdup (reason);
  ask->from = g_strdup (from);
  ask->to = g_strdup (to);
  g_ptr_array_add (asks, ask);
  return ask;
}

/* A letter, a digit, or a part of a letter beyond ASCII */
static gboolean
is_of_word (char c)
{
  return g_ascii_isalnum (c) || (guchar) c >= 0x80;
}

/* "S2" in "Sockets S2 and S3 free", and not in "S21" */
static gboolean
has_word (const char *text,
          const char *word)
{
  gsize length = strlen (word);

  for (const char *at = strstr (text, word); length > 1 && at != NULL; at = strstr (at + 1, word))
    if ((at == text || !is_of_word (at[-1])) && !is_of_word (at[length]))
      return TRUE;
  return FALSE;
}

/* The user's request that has the thing's name or tag in it; (nullable) */
static LrAsk *
find_own (const GPtrArray *asks,
          const LrItem    *item)
{
  g_autofree char *name = item != NULL ? g_utf8_casefold (item->name, -1) : g_strdup ("");

  for (guint i = 0; item != NULL && i < asks->len; i++)
    {
      LrAsk *ask = g_ptr_array_index (asks, i);
      g_autofree char *text = ask->is_own ? g_utf8_casefold (ask->text, -1) : NULL;

      if (text != NULL && (has_word (text, name) || has_word (ask->text, item->tag)))
        return ask;
    }

  return NULL;
}

/**
 * lr_asks_has_own:
 * @asks: requests
 * @item: a thing
 *
 * Returns: whether the user asks for something about it
 */
gboolean
lr_asks_has_own (const GPtrArray *asks,
                 const LrItem    *item)
{
  return find_own (asks, item) != NULL;
}

/**
 * lr_asks_add:
 * @asks: requests, those of the user among them
 * @item: (nullable): what it is about; %NULL: the room
 * @text: what is asked: "Fridge off"
 * @reason: why, in a few words; "" for none
 * @from: since when: "09:50"; "" for all the time
 * @to: until when; ""
 *
 * Adds a request, or gives the reason to the one of the user's that has the thing's name or tag in it.
 */
void
lr_asks_add (GPtrArray    *asks,
             const LrItem *item,
             const char   *text,
             const char   *reason,
             const char   *from,
             const char   *to)
{
  LrAsk *own = find_own (asks, item);

  if (own == NULL)
    append (asks, item, text, reason, from, to);
  else if (*own->reason == '\0')
    {
      g_free (own->reason);
      g_free (own->id);
      own->reason = g_strdup (reason);
      own->id = g_strdup (item->id);
    }
}

/**
 * lr_asks_new:
 * @study: a study
 * @units: how lengths are written
 *
 * Returns: (transfer full) (element-type LrAsk): what the user asks for, then what follows from the plan
 */
GPtrArray *
lr_asks_new (const LrStudy *study,
             LrUnits        units)
{
  GPtrArray *asks = g_ptr_array_new_with_free_func (ask_free);

  for (char **request = study->plan->job->requests; request != NULL && *request != NULL; request++)
    append (asks, NULL, *request, "", "", "")->is_own = TRUE;
  lr_asks_add_sound (asks, study, units);
  lr_asks_add_power (asks, study, units);
  return asks;
}

/**
 * lr_ask_sentence:
 * @ask: a request
 *
 * Returns: (transfer full): all of it on one line
 */
char *
lr_ask_sentence (const LrAsk *ask)
{
  /* Translators: what is asked for, and between two times of day */
  g_autofree char *when = *ask->from != '\0' && *ask->to != '\0' ? g_strdup_printf (_("%s, %s to %s"), ask->text, ask->from, ask->to)
                                                                  : g_strdup (ask->text);

  if (*ask->reason == '\0')
    return ask->is_own ? g_strdup (ask->text) : g_strdup_printf (_("%s."), when);
  if (g_str_has_suffix (when, "."))
    when[strlen (when) - 1] = '\0';
  /* Translators: what is asked for and when, and why */
  return g_strdup_printf (_("%s (%s)."), when, ask->reason);
}

/**
 * lr_asks_made_text:
 * @asks: (element-type LrAsk): requests
 *
 * Returns: (transfer full): those that the plan made or gave a reason for, one a line; "" for none
 */
char *
lr_asks_made_text (const GPtrArray *asks)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < asks->len; i++)
    {
      const LrAsk *ask = g_ptr_array_index (asks, i);
      g_autofree char *sentence = lr_ask_sentence (ask);

      if (!ask->is_own || *ask->reason != '\0')
        g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", sentence);
    }
  return g_string_free (text, FALSE);
}

/**
 * lr_asks_to_json:
 * @asks: (element-type LrAsk): requests
 *
 * Returns: (transfer full): an array of { text, reason, from, to, item, is-own }
 */
JsonNode *
lr_asks_to_json (const GPtrArray *asks)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (guint i = 0; i < asks->len; i++)
    {
      const LrAsk *ask = g_ptr_array_index (asks, i);
      const struct { const char *key, *value; } texts[] = {
        { "text", ask->text }, { "reason", ask->reason }, { "from", ask->from }, { "to", ask->to }, { "item", ask->id },
      };

      json_builder_begin_object (builder);
      for (gsize k = 0; k < G_N_ELEMENTS (texts); k++)
        {
          json_builder_set_member_name (builder, texts[k].key);
          json_builder_add_string_value (builder, texts[k].value);
        }
      json_builder_set_member_name (builder, "is-own");
      json_builder_add_boolean_value (builder, ask->is_own);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  return json_builder_get_root (builder);
}
