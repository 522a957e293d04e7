/* read_file.c - a file that somebody chose, as bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "read_file.h"

/**
 * lr_read_file:
 * @file: a file
 * @max_bytes: how long it may be
 * @error: return location
 *
 * Reads no more than one byte beyond @max_bytes, so that what is too long is seen to be without being held.
 *
 * Returns: (transfer full) (nullable): what is in it
 */
GBytes *
lr_read_file (GFile   *file,
              gsize    max_bytes,
              GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *data = NULL;
  gsize length;

  if (stream == NULL)
    return NULL;

  data = g_malloc (max_bytes + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), data, max_bytes + 1, &length, NULL, error))
    return NULL;

  return g_bytes_new_take (g_steal_pointer (&data), length);
}
