/* journal.c - every edit is kept beside the plan's file, for the day when the program is killed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A document with unsaved changes has a file in the user's cache: a line with the path of the plan's own file (as a URI, or
 * "-"), then the plan as it would be saved. It is written after each step of the history, from the main loop's idle time, and
 * atomically: a kill leaves the one before or the one after. The file is locked while its program lives, so that another
 * one can tell what is left over from what is in use; the kernel lets go of the lock when the program ends, however it ends.
 */

#include "config.h"

#include "journal.h"

#include "plan_reader.h"
#include "plan_writer.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <gio/gio.h>
#include <sys/file.h>
#include <unistd.h>

#define SUFFIX ".journal"
#define NO_FILE "-"

struct _LrJournal
{
  LrDocument *document;  /* not held: the owner ends both */
  char       *path;
  int         lock_fd;   /* -1: nothing is in the cache */
  guint       idle_source;
  gulong      history_handler;
};

static char *
get_folder (void)
{
  return g_build_filename (g_get_user_cache_dir (), "lookroom", "journal", NULL);
}

static char *
lock_path (const char *journal_path)
{
  return g_strconcat (journal_path, ".lock", NULL);
}

/* Returns a descriptor that holds the lock, or -1 if another program has it */
static int
take_lock (const char *journal_path)
{
  g_autofree char *path = lock_path (journal_path);
  int fd = g_open (path, O_CREAT | O_RDWR | O_CLOEXEC, 0600);

  if (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) != 0)
    {
      close (fd);
      fd = -1;
    }
  return fd;
}

static void
remove_files (const char *journal_path)
{
  g_autofree char *lock = lock_path (journal_path);

  g_unlink (journal_path);
  g_unlink (lock);
}

static GBytes *
journal_bytes (LrDocument *document)
{
  g_autoptr (GBytes) plan = lr_plan_to_bytes (lr_document_get_committed (document));
  const char *path = lr_document_get_path (document);
  g_autofree char *uri = path != NULL ? g_filename_to_uri (path, NULL, NULL) : NULL;
  GByteArray *bytes = g_byte_array_new ();
  const char *head = uri != NULL ? uri : NO_FILE;
  gsize length;
  const guint8 *data = g_bytes_get_data (plan, &length);

  g_byte_array_append (bytes, (const guint8 *) head, (guint) strlen (head));
  g_byte_array_append (bytes, (const guint8 *) "\n", 1);
  g_byte_array_append (bytes, data, (guint) length);
  return g_byte_array_free_to_bytes (bytes);
}

/* A cache that cannot be written must not stop anyone from working: it is said once on standard error */
static void
write_journal (LrJournal *self)
{
  g_autofree char *folder = g_path_get_dirname (self->path);
  g_autoptr (GBytes) bytes = journal_bytes (self->document);
  g_autoptr (GError) error = NULL;
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  if (self->lock_fd < 0 && g_mkdir_with_parents (folder, 0700) == 0)
    self->lock_fd = take_lock (self->path);

  if (!g_file_set_contents_full (self->path, data, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT, 0600, &error))
    g_printerr ("lookroom: %s\n", error->message);
}

static gboolean
idle_cb (gpointer data)
{
  LrJournal *self = data;

  self->idle_source = 0;
  if (lr_document_has_changes (self->document))
    write_journal (self);
  else
    lr_journal_settle (self);
  return G_SOURCE_REMOVE;
}

static void
history_cb (LrJournal *self)
{
  if (self->idle_source == 0)
    self->idle_source = g_idle_add (idle_cb, self);
}

/**
 * lr_journal_new:
 * @document: outlives the journal; its steps are kept from now on
 *
 * Returns: (transfer full): its journal
 */
LrJournal *
lr_journal_new (LrDocument *document)
{
  LrJournal *self = g_new0 (LrJournal, 1);
  g_autofree char *folder = get_folder (), *uuid = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (uuid, SUFFIX, NULL);

  self->document = document;
  self->path = g_build_filename (folder, name, NULL);
  self->lock_fd = -1;
  self->history_handler = g_signal_connect_swapped (document, "history", G_CALLBACK (history_cb), self);
  return self;
}

/**
 * lr_journal_free:
 *
 * Ends the journal. Its file stays in the cache, where the next start finds it.
 */
void
lr_journal_free (LrJournal *self)
{
  g_clear_handle_id (&self->idle_source, g_source_remove);
  g_clear_signal_handler (&self->history_handler, self->document);
  if (self->lock_fd >= 0)
    close (self->lock_fd);
  g_free (self->path);
  g_free (self);
}

/**
 * lr_journal_settle:
 *
 * Takes the journal out of the cache until the next change.
 */
void
lr_journal_settle (LrJournal *self)
{
  g_clear_handle_id (&self->idle_source, g_source_remove);
  if (self->lock_fd < 0)
    return;

  remove_files (self->path);
  close (self->lock_fd);
  self->lock_fd = -1;
}

/**
 * lr_journal_finish:
 *
 * Takes the journal out of the cache for good.
 */
void
lr_journal_finish (LrJournal *self)
{
  g_clear_signal_handler (&self->history_handler, self->document);
  lr_journal_settle (self);
}

/**
 * lr_journal_flush:
 *
 * Writes at once what waits for idle time.
 */
void
lr_journal_flush (LrJournal *self)
{
  if (self->idle_source == 0)
    return;

  g_clear_handle_id (&self->idle_source, g_source_remove);
  idle_cb (self);
}

static void
leftover_free (gpointer data)
{
  LrLeftover *leftover = data;

  g_clear_pointer (&leftover->plan, lr_plan_unref);
  g_free (leftover->path);
  g_free (leftover->journal_path);
  g_free (leftover);
}

/* NULL when the journal cannot be read: there is nothing in it for anyone */
static LrLeftover *
read_leftover (const char *journal_path)
{
  g_autofree char *data = NULL;
  char *plan_data;
  gsize length;
  GStatBuf info;
  LrPlan *plan;
  LrLeftover *leftover;

  if (!g_file_get_contents (journal_path, &data, &length, NULL) || (plan_data = memchr (data, '\n', length)) == NULL)
    return NULL;

  *plan_data++ = '\0';
  plan = lr_plan_read_data (plan_data, length - (gsize) (plan_data - data), NULL);
  if (plan == NULL)
    return NULL;

  leftover = g_new0 (LrLeftover, 1);
  leftover->plan = plan;
  leftover->path = g_str_equal (data, NO_FILE) ? g_strdup ("") : g_filename_from_uri (data, NULL, NULL);
  if (leftover->path == NULL)
    leftover->path = g_strdup ("");
  leftover->journal_path = g_strdup (journal_path);
  leftover->when_unix_s = g_stat (journal_path, &info) == 0 ? (gint64) info.st_mtime : 0;
  return leftover;
}

static void
add_leftover (GPtrArray  *leftovers,
              const char *journal_path)
{
  int lock_fd = take_lock (journal_path);
  LrLeftover *leftover;

  if (lock_fd < 0)
    return;

  leftover = read_leftover (journal_path);
  if (leftover != NULL)
    g_ptr_array_add (leftovers, leftover);
  else
    remove_files (journal_path);
  close (lock_fd);
}

/**
 * lr_journal_find_leftovers:
 *
 * Returns: (transfer full) (element-type LrLeftover): what killed programs left behind
 */
GPtrArray *
lr_journal_find_leftovers (void)
{
  GPtrArray *leftovers = g_ptr_array_new_with_free_func (leftover_free);
  g_autofree char *folder = get_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, SUFFIX))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        add_leftover (leftovers, path);
      }
  return leftovers;
}

/**
 * lr_leftover_discard:
 *
 * Its plan is in another journal or nobody wants it: takes its file out of the cache.
 */
void
lr_leftover_discard (const LrLeftover *leftover)
{
  remove_files (leftover->journal_path);
}
