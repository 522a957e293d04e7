/* save.c - bytes to a file, all or nothing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A regular file is replaced by a finished temporary beside it, so that a full disk or a killed program leaves the old
 * one; a link stays a link and the mode stays as it was. Devices and pipes are written to, never replaced.
 */

#include "config.h"

#include "plan.h"
#include "save.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <unistd.h>

/* The system's words for a failure name the temporary file; these are about the user's */
static void
set_error (GError **error,
           int      code)
{
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO, _("cannot be written: %s"), g_strerror (code));
}

static int
errno_of (const GError *error)
{
  static const struct { int code, number; } table[] = {
    { G_FILE_ERROR_EXIST, EEXIST }, { G_FILE_ERROR_ISDIR, EISDIR }, { G_FILE_ERROR_ACCES, EACCES },
    { G_FILE_ERROR_NAMETOOLONG, ENAMETOOLONG }, { G_FILE_ERROR_NOENT, ENOENT }, { G_FILE_ERROR_NOTDIR, ENOTDIR },
    { G_FILE_ERROR_NXIO, ENXIO }, { G_FILE_ERROR_NODEV, ENODEV }, { G_FILE_ERROR_ROFS, EROFS }, { G_FILE_ERROR_FAULT, EFAULT },
    { G_FILE_ERROR_LOOP, ELOOP }, { G_FILE_ERROR_NOSPC, ENOSPC }, { G_FILE_ERROR_NOMEM, ENOMEM }, { G_FILE_ERROR_MFILE, EMFILE },
    { G_FILE_ERROR_NFILE, ENFILE }, { G_FILE_ERROR_INVAL, EINVAL }, { G_FILE_ERROR_PIPE, EPIPE }, { G_FILE_ERROR_PERM, EPERM },
    { G_FILE_ERROR_IO, EIO }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    if (g_error_matches (error, G_FILE_ERROR, table[i].code))
      return table[i].number;

  return EIO;
}

static gboolean
replace_file (const char *path,
              const char *data,
              gsize       length,
              int         mode,
              gboolean    keeps_mode,
              GError    **error)
{
  g_autoptr (GError) failure = NULL;

  if (!g_file_set_contents_full (path, data, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                 mode, &failure))
    {
      set_error (error, errno_of (failure));
      return FALSE;
    }

  /* the temporary was made under the umask */
  if (keeps_mode)
    g_chmod (path, mode);
  return TRUE;
}

static gboolean
write_through (const char *path,
               const char *data,
               gsize       length,
               GError    **error)
{
  int fd = g_open (path, O_WRONLY | O_CLOEXEC, 0);

  if (fd < 0)
    {
      set_error (error, errno);
      return FALSE;
    }

  while (length > 0)
    {
      gssize written = write (fd, data, length);

      if (written < 0 && errno == EINTR)
        continue;
      if (written < 0)
        {
          set_error (error, errno);
          close (fd);
          return FALSE;
        }
      data += written;
      length -= (gsize) written;
    }

  if (close (fd) < 0 && errno != EINTR)
    {
      set_error (error, errno);
      return FALSE;
    }

  return TRUE;
}

/**
 * lr_save_bytes:
 * @path: where to
 * @data: what to write
 * @length: of it [bytes]
 * @error: return location for an error: #LR_PLAN_ERROR_IO with a reason that follows the file's name
 *
 * Returns: %FALSE, with a regular file as it was before, unless all of it is written
 */
gboolean
lr_save_bytes (const char *path,
               const char *data,
               gsize       length,
               GError    **error)
{
  char *real = realpath (path, NULL);
  const char *target = real != NULL ? real : path;
  gboolean is_there, is_written;
  GStatBuf status;

  is_there = g_stat (target, &status) == 0;
  if (is_there && S_ISDIR (status.st_mode))
    {
      set_error (error, EISDIR);
      is_written = FALSE;
    }
  else if (is_there && !S_ISREG (status.st_mode))
    is_written = write_through (target, data, length, error);
  else
    is_written = replace_file (target, data, length, is_there ? status.st_mode & 07777 : 0666, is_there, error);

  free (real);
  return is_written;
}
