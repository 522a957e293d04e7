/* calendar.h - the call times of a job as a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"

/* (transfer full) (nullable): a file by RFC 5545. @stamp_unix_s: when what it says was last changed. The error: no day, no times, or
 * a time zone that is not known here */
char *lr_calendar_text (const LrStudy *study, gint64 stamp_unix_s, GError **error);
