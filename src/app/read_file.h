/* read_file.h - a file that somebody chose, as bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

/* At most one byte more than @max_bytes, so that what is too long is seen to be; (transfer full) (nullable) */
GBytes *lr_read_file (GFile *file, gsize max_bytes, GError **error);
