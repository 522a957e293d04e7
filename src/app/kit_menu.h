/* kit_menu.h - the button that adds to a kit out of the generic list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "list_page.h"

/* (transfer floating): a menu button; what is chosen in it comes into the kit of the page's document. Puts its action "kit.add" on the page */
GtkWidget *lr_kit_menu_new (LrListPage *page);
