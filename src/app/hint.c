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

#define ENTRY_EDGES_PX 14 /* padding and border of an entry's two sides */

static gboolean
query_cut_cb (GtkWidget   *widget,
              int          x,
              int          y,
              gboolean     is_keyboard,
              GtkTooltip  *tooltip,
              GtkEditable *editable)
{
  const char *text = gtk_editable_get_text (editable);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (editable), text);
  int width_px;

  pango_layout_get_pixel_size (layout, &width_px, NULL);
  gtk_tooltip_set_text (tooltip, text);
  return width_px > gtk_widget_get_width (GTK_WIDGET (editable)) - ENTRY_EDGES_PX;
}

/**
 * lr_hint_when_cut:
 * @widget: what the tooltip belongs to: @editable or what holds it
 * @editable: an entry
 *
 * Tells the whole of a text that has no room in the entry.
 */
void
lr_hint_when_cut (GtkWidget   *widget,
                  GtkEditable *editable)
{
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect_object (widget, "query-tooltip", G_CALLBACK (query_cut_cb), editable, 0);
}
