/* picture_load.h - what a picture that a plan keeps looks like, found out by a program of its own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

#include "picture_file.h"
#include "underlay.h"

/* @page: from 1. It is given up after half a minute, or when @cancellable is cancelled */
void        lr_picture_load        (const LrPictureFile *file, int page, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
/* (transfer full) (nullable). The error's message goes on from the file's name: "is damaged" */
LrUnderlay *lr_picture_load_finish (GAsyncResult *result, GError **error);
