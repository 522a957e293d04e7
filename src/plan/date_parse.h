/* date_parse.h - days and times of the day as people write them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "prop.h"

/* (transfer full) (nullable): "2026-12-04" of "4 Dec 2026", "Fri 4.12.2026", "December 4th, 2026"; "" of "" */
char *lr_date_parse (const char *text, GError **error);
/* (transfer full) (nullable): "08:00" of "8", "8:00", "08.00", "0800", "8 am"; "" of "" */
char *lr_time_parse (const char *text, GError **error);
/* (transfer full) (nullable): what of @text is kept in @prop, by its form */
char *lr_prop_text_take (const LrProp *prop, const char *text, GError **error);
