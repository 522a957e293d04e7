/* list_line.h - lines and labels of a page, for list_page.c
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "list_page.h"

#define LR_LIST_TICK "lr-tick" /* of a box: by what its line is ticked */

/* Broken where it must */
GtkWidget *lr_list_label_new (const char *css_class);
/* @markup (nullable): then it is out of sight */
void       lr_list_label_set (GtkWidget *label, const char *markup);
/* Its parts are found by lr_list_line_get(): "lr-check", "lr-lead", "lr-text", "lr-note" */
GtkWidget *lr_list_line_new  (const char *key);
void       lr_list_line_set  (GtkWidget *widget, const LrListLine *line, gboolean is_ticked, gboolean is_read_only);
