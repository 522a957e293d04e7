/* lens_names.c - lenses offered by name while one is typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The database is looked for in the folder "lensfun" of the user's and the system's data directories, where packages put it, when
 * something is first typed; it is read once a run.
 */

#include "config.h"

#include "lens_names.h"

#define MOST 12
#define LEAST_TYPED 2

enum { COLUMN_NAME, COLUMN_LENS, N_COLUMNS };

static LrLensDatabase *
read_any (void)
{
  g_autofree char *own = g_build_filename (g_get_user_data_dir (), "lensfun", NULL);
  LrLensDatabase *database = lr_lens_database_read (own);

  for (const char *const *dir = g_get_system_data_dirs (); database == NULL && *dir != NULL; dir++)
    {
      g_autofree char *folder = g_build_filename (*dir, "lensfun", NULL);

      database = lr_lens_database_read (folder);
    }

  return database;
}

/* (transfer none) (nullable) */
static const LrLensDatabase *
get_database (void)
{
  static LrLensDatabase *database;
  static gboolean was_read;

  if (!was_read)
    database = read_any ();
  was_read = TRUE;

  return database;
}

static void
changed_cb (GtkEntry *entry)
{
  GtkEntryCompletion *completion = gtk_entry_get_completion (entry);
  GtkListStore *store = GTK_LIST_STORE (gtk_entry_completion_get_model (completion));
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (entry));
  gboolean is_typing = (gtk_widget_get_state_flags (GTK_WIDGET (entry)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
  g_autoptr (GPtrArray) found = NULL;

  gtk_list_store_clear (store);
  if (!is_typing || g_utf8_strlen (typed, -1) < LEAST_TYPED || get_database () == NULL)
    return;
  found = lr_lens_database_find (get_database (), typed, MOST);
  for (guint i = 0; i < found->len; i++)
    gtk_list_store_insert_with_values (store, NULL, -1, COLUMN_NAME, ((const LrFoundLens *) found->pdata[i])->name, COLUMN_LENS,
                                       found->pdata[i], -1);
}

/* What is in the list was found by words already */
static gboolean
match_cb (GtkEntryCompletion *completion,
          const char         *key,
          GtkTreeIter        *iter,
          gpointer            data)
{
  return TRUE;
}

typedef struct
{
  LrLensChosen call;
} Chosen;

static gboolean
selected_cb (GtkEntryCompletion *completion,
             GtkTreeModel       *model,
             GtkTreeIter        *iter,
             gpointer            data)
{
  const Chosen *chosen = data;
  LrFoundLens *lens;

  gtk_tree_model_get (model, iter, COLUMN_LENS, &lens, -1);
  chosen->call (gtk_entry_completion_get_entry (completion), lens);

  return TRUE;
}

static void
free_chosen (gpointer  data,
             GClosure *closure)
{
  g_free (data);
}

/**
 * lr_lens_names_attach:
 * @entry: a #GtkEntry in which a lens is named
 * @chosen: called with what is chosen
 */
void
lr_lens_names_attach (GtkWidget    *entry,
                      LrLensChosen  chosen)
{
  g_autoptr (GtkEntryCompletion) completion = gtk_entry_completion_new ();
  g_autoptr (GtkListStore) store = gtk_list_store_new (N_COLUMNS, G_TYPE_STRING, G_TYPE_POINTER);
  Chosen *data = g_new (Chosen, 1);

  data->call = chosen;
  gtk_entry_completion_set_model (completion, GTK_TREE_MODEL (store));
  gtk_entry_completion_set_text_column (completion, COLUMN_NAME);
  gtk_entry_completion_set_match_func (completion, match_cb, NULL, NULL);
  gtk_entry_completion_set_minimum_key_length (completion, LEAST_TYPED);
  g_signal_connect_data (completion, "match-selected", G_CALLBACK (selected_cb), data, free_chosen, 0);
  /* before the completion's own handler looks at the list */
  g_signal_connect (entry, "changed", G_CALLBACK (changed_cb), NULL);
  gtk_entry_set_completion (GTK_ENTRY (entry), completion);
}
