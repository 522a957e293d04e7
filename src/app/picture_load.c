/* picture_load.c - what a picture that a plan keeps looks like, found out by a program of its own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pixels come through a pipe and become the surface as they are, without a copy.
 */

#include "config.h"

#include "picture_load.h"

#include "decode.h"
#include "plan.h"

#include <glib/gi18n-lib.h>

#define PROGRAM "lookroom-picture"
#define MAX_SECONDS 30

typedef struct
{
  GSubprocess *process;
  guint        timeout_id;
  gulong       cancelled_id;
} Load;

static void
free_load (gpointer data)
{
  Load *load = data;

  g_clear_handle_id (&load->timeout_id, g_source_remove);
  g_clear_object (&load->process);
  g_free (load);
}

/* What the environment names, as for tests; else from beside this program while it is not installed; else the installed one. No place that
 * was only known when it was built: anybody might have put something there since */
static char *
dup_program_path (void)
{
  const char *named = g_getenv ("LOOKROOM_PICTURE_PROGRAM");
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL), *folder = self != NULL ? g_path_get_dirname (self) : NULL;
  g_autofree char *beside = folder != NULL ? g_build_filename (folder, "src", "picture", PROGRAM, NULL) : NULL;

  if (named != NULL)
    return g_strdup (named);
  if (beside != NULL && g_file_test (beside, G_FILE_TEST_IS_EXECUTABLE))
    return g_steal_pointer (&beside);

  return g_build_filename (LR_LIBEXEC_DIR, PROGRAM, NULL);
}

static const char *
reason (int status)
{
  switch (status)
    {
    case LR_DECODE_PIXELS:
      return _("has more pixels than can be shown here");
    case LR_DECODE_CANNOT:
      return _("is of a kind that this Lookroom was built without: save it as PNG");
    case LR_DECODE_NO_PAGE:
      return _("has no such page");
    case LR_DECODE_BROKEN:
    default:
      return _("is damaged");
    }
}

static void
free_bytes (void *data)
{
  g_bytes_unref (data);
}

/* (transfer full) (nullable): of what the program wrote */
static LrUnderlay *
make_underlay (GBytes *bytes)
{
  static const cairo_user_data_key_t bytes_key;
  LrDecodedHead head = { 0 };
  gsize length;
  const guchar *data = g_bytes_get_data (bytes, &length);
  cairo_surface_t *surface;

  if (length < sizeof head)
    return NULL;
  memcpy (&head, data, sizeof head);
  if (head.magic != LR_DECODED_MAGIC || head.width < 1 || head.height < 1 || (double) head.width * head.height > LR_DECODED_MAX_PIXELS
      || length != sizeof head + 4 * (gsize) head.width * head.height || !(head.natural_width > 0.0) || !(head.natural_height > 0.0))
    return NULL;

  surface = cairo_image_surface_create_for_data ((guchar *) data + sizeof head, CAIRO_FORMAT_RGB24, (int) head.width, (int) head.height,
                                                 (int) head.width * 4);
  cairo_surface_set_user_data (surface, &bytes_key, g_bytes_ref (bytes), free_bytes);
  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    {
      cairo_surface_destroy (surface);
      return NULL;
    }
  return lr_underlay_new (surface, head.natural_width, head.natural_height, (int) head.n_pages);
}

static void
communicated_cb (GObject      *source,
                 GAsyncResult *result,
                 gpointer      data)
{
  g_autoptr (GTask) task = data;
  GSubprocess *process = G_SUBPROCESS (source);
  Load *load = g_task_get_task_data (task);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_read = g_subprocess_communicate_finish (process, result, &bytes, NULL, &error);
  LrUnderlay *underlay = NULL;

  g_clear_handle_id (&load->timeout_id, g_source_remove);
  if (g_task_return_error_if_cancelled (task))
    {
      g_subprocess_force_exit (process);
      return;
    }
  if (is_read && bytes != NULL)
    underlay = make_underlay (bytes);
  if (underlay != NULL)
    g_task_return_pointer (task, underlay, (GDestroyNotify) lr_underlay_unref);
  else
    g_task_return_new_error (task, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, "%s",
                             g_subprocess_get_if_exited (process) ? reason (g_subprocess_get_exit_status (process))
                                                                  : _("takes too long, or too much memory, to be shown"));
}

static gboolean
timeout_cb (gpointer data)
{
  Load *load = data;

  load->timeout_id = 0;
  g_subprocess_force_exit (load->process);
  return G_SOURCE_REMOVE;
}

/**
 * lr_picture_load:
 * @file: a picture
 * @page: of a PDF, from 1
 * @cancellable: (nullable): to give it up
 * @callback: when it is known
 * @data: for @callback
 *
 * Another program decodes it, so that nothing that is open here suffers from what it does.
 */
void
lr_picture_load (const LrPictureFile *file,
                 int                  page,
                 GCancellable        *cancellable,
                 GAsyncReadyCallback  callback,
                 gpointer             data)
{
  GTask *task = g_task_new (NULL, cancellable, callback, data);
  g_autofree char *path = dup_program_path (), *number = g_strdup_printf ("%d", page);
  Load *load = g_new0 (Load, 1);
  g_autoptr (GError) error = NULL;

  g_task_set_task_data (task, load, free_load);
  load->process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_SILENCE, &error, path,
                                    lr_picture_type_word (file->type), number, NULL);
  if (load->process == NULL)
    {
      g_task_return_new_error (task, LR_PLAN_ERROR, LR_PLAN_ERROR_IO, _("cannot be shown: “%s” is not installed"), PROGRAM);
      g_object_unref (task);
      return;
    }
  load->timeout_id = g_timeout_add_seconds (MAX_SECONDS, timeout_cb, load);
  g_subprocess_communicate_async (load->process, file->bytes, cancellable, communicated_cb, task);
}

/**
 * lr_picture_load_finish:
 * @result: as the callback was given it
 * @error: return location; its message goes on from a file's name
 *
 * Returns: (transfer full) (nullable): what it looks like
 */
LrUnderlay *
lr_picture_load_finish (GAsyncResult  *result,
                        GError       **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
