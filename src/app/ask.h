/* ask.h - questions and news that stand in a dialog of their own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

typedef void (*LrTextAnswer)   (const char *text, gpointer data);
typedef void (*LrChoiceAnswer) (int choice, gpointer data);

/* @answer is called only if a text was given. @parent outlives the dialog, and so must @data */
void lr_ask_text   (GtkWindow *parent, const char *title, const char *question, const char *verb, const char *text,
                    LrTextAnswer answer, gpointer data);
/* @verbs: labels, NULL-terminated, the harmless first; @answer gets the index, or -1 for none */
void lr_ask_choice (GtkWindow *parent, const char *title, const char *question, const char *detail, const char *const *verbs,
                    LrChoiceAnswer answer, gpointer data);
/* One sentence that must not be missed: what could not be done, and why */
void lr_tell       (GtkWindow *parent, const char *what, const char *why);
