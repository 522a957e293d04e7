/* save.h - bytes to a file, all or nothing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

gboolean lr_save_bytes (const char *path, const char *data, gsize length, GError **error);
