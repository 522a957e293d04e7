/* cli.h - the commands that need no display
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

/* The exit code: 0 nothing to fix, 1 something to fix, 2 could not run; -1 when the arguments ask for the window */
int lr_cli_run (int argc, char **argv);
