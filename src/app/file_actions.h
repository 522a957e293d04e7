/* file_actions.h - new, open, save, and the questions that go with them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "main_window.h"

void lr_main_window_add_file_actions   (LrMainWindow *self);
/* Opens @path in this window if nobody has worked in it, else in another; a failure is told in a dialog */
void lr_main_window_open_path          (LrMainWindow *self, const char *path);
/* The finished example as an untitled copy; FALSE: it is not installed */
gboolean lr_main_window_open_example   (LrMainWindow *self);
/* There are changes: save, drop them or stay; closes the window unless the user stays */
void lr_main_window_ask_before_closing (LrMainWindow *self);
/* Back to what the file holds, or to an empty plan */
void lr_main_window_revert             (LrMainWindow *self);
