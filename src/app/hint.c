/* hint.c - tooltips that may change with every frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * gtk_widget_set_tooltip_text() asks the display each time where the pointer is. Here the text only waits to be asked for.
 */

#include "hint.h"

#define KEY "lr-hint"

static gboolean
query_cb (GtkWidget  *widget,
          int         x,
          int         y,
          gboolean    is_keyboard,
          GtkTooltip *tooltip)
{
  const char *text = g_object_get_data (G_OBJECT (widget), KEY);

  gtk_tooltip_set_text (tooltip, text);
  return text != NULL && text[0] != '\0';
}

/**
 * lr_hint_set:
 * @text: (nullable): what the tooltip says from now on
 */
void
lr_hint_set (GtkWidget  *widget,
             const char *text)
{
  if (!gtk_widget_get_has_tooltip (widget))
    {
      g_signal_connect (widget, "query-tooltip", G_CALLBACK (query_cb), NULL);
      gtk_widget_set_has_tooltip (widget, TRUE);
    }
  if (g_strcmp0 (g_object_get_data (G_OBJECT (widget), KEY), text) != 0)
    g_object_set_data_full (G_OBJECT (widget), KEY, g_strdup (text), g_free);
}
