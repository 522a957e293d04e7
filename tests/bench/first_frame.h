/* first_frame.h - telling when an application has shown its first frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Watches every application of this process. At the first frame of a window it prints the processor time spent so far and the
 * clock, "CPU_US CLOCK_US"; half a second later, when idle work is done, it ends the process, whose peak memory the parent
 * reads. Call it before the application runs. */
void lr_first_frame_watch (void);
