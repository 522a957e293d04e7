/* sound_bar.h - what a microphone hears of voice, room and noises
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_SOUND_BAR (lr_sound_bar_get_type ())
G_DECLARE_FINAL_TYPE (LrSoundBar, lr_sound_bar, LR, SOUND_BAR, GtkWidget)

/* Invisible where nothing is known; @microphone (nullable): id */
void lr_sound_bar_show (LrSoundBar *self, LrDocument *document, const char *microphone);
