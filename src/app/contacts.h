/* contacts.h - people to call: role, name, number
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "changed": another list was typed.
 */

#pragma once

#include <gtk/gtk.h>

#include "plan.h"

#define LR_TYPE_CONTACTS (lr_contacts_get_type ())
G_DECLARE_FINAL_TYPE (LrContacts, lr_contacts, LR, CONTACTS, GtkWidget)

void             lr_contacts_set (LrContacts *self, const LrContact *contacts, gsize n);
/* (transfer none): as typed, without empty rows; until the next call */
const LrContact *lr_contacts_get (LrContacts *self, gsize *n);
