/* badge.h - a small picture that speaks the sheet's language: a tag, a grade's mark, a family's glyph, a thing from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "remarks.h"
#include "theme.h"

#define LR_TYPE_BADGE (lr_badge_get_type ())
G_DECLARE_FINAL_TYPE (LrBadge, lr_badge, LR, BADGE, GtkWidget)

GtkWidget *lr_badge_new          (void);
void       lr_badge_show_nothing (LrBadge *self);
void       lr_badge_show_grade   (LrBadge *self, LrGrade grade);
void       lr_badge_show_tag     (LrBadge *self, LrItemKind kind, const char *tag);
void       lr_badge_show_family  (LrBadge *self, LrFamily family);
void       lr_badge_show_item    (LrBadge *self, const LrItem *item, double size_px);

/* Light or dark, by the color that the style gives a widget's text */
LrThemeId  lr_widget_get_theme_id (GtkWidget *widget);
