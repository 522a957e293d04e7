/* page_dialog.h - the plan on one page: look at it, save it as PDF, print it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "main_window.h"

void lr_main_window_add_page_actions (LrMainWindow *self);
