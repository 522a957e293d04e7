/* prop_text.h - the value of a property as people write it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "prop.h"
#include "units.h"

/* (transfer full): "1.24 m", "85 mm", "22.5°", "20 %", "f/2.8", "1/50 s", "5600 K"; "" for an optional number that is not given */
char    *lr_prop_text_format (const LrProp *prop, double value, LrUnits units);
/* Text as typed, with or without its unit; FALSE with a sentence that names the range: the value is not one of @prop */
gboolean lr_prop_text_parse  (const LrProp *prop, const char *text, LrUnits units, double *value, GError **error);
/* What one press of an arrow key adds: a centimetre or an inch, a degree, a per cent, ... */
double   lr_prop_text_step   (const LrProp *prop, LrUnits units);
