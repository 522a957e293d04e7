/* line.h - text that changes with every frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#define LR_TYPE_LINE (lr_line_get_type ())
G_DECLARE_FINAL_TYPE (LrLine, lr_line, LR, LINE, GtkWidget)

/* Properties:
 *   "lines"        int: lines that it has room for
 *   "full-chars"   int: in less width than so many characters it has room for one line more; 0: never
 *   "width-chars"  int: the width that it asks for; 0: that of its text, asked for anew when the text is another
 *   "fits"         boolean: as many lines as its text takes, "lines" at most
 *   "xalign"       float */

GtkWidget  *lr_line_new          (void);
void        lr_line_set_text     (LrLine *self, const char *text);
void        lr_line_set_short_text (LrLine *self, const char *short_text);
void        lr_line_set_markup   (LrLine *self, const char *markup);
const char *lr_line_get_text     (LrLine *self);
gboolean    lr_line_is_cut       (LrLine *self); /* it had no room for the end of its text */
