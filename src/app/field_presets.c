/* field_presets.c - standard values offered in an entry that takes any
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "field_presets.h"

#include <glib/gi18n-lib.h>

#define LIST_HEIGHT_PX 260

typedef struct
{
  char         **texts;
  LrPresetChosen chosen;
  gpointer       data;
  int            current; /* index of what the entry has; -1: its text tells */
  GtkWidget     *popover, *list; /* made when first opened */
} Presets;

static Presets *
get_presets (GtkEntry *entry)
{
  return g_object_get_data (G_OBJECT (entry), "lr-presets");
}

static void
presets_free (gpointer data)
{
  Presets *presets = data;

  g_strfreev (presets->texts);
  g_free (presets);
}

static void
row_activated_cb (GtkEntry      *entry,
                  GtkListBoxRow *row)
{
  Presets *presets = get_presets (entry);
  int index = gtk_list_box_row_get_index (row);

  gtk_popover_popdown (GTK_POPOVER (presets->popover));
  presets->chosen ((guint) index, presets->texts[index], presets->data);
}

/* The value that the entry has, if it is a standard one, is where the arrow keys start */
static void
select_current (GtkEntry *entry,
                Presets  *presets)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));

  for (int i = 0; presets->texts[i] != NULL; i++)
    if (i == presets->current || (presets->current < 0 && g_str_equal (presets->texts[i], text)))
      {
        GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (presets->list), i);

        gtk_list_box_select_row (GTK_LIST_BOX (presets->list), row);
        gtk_widget_grab_focus (GTK_WIDGET (row));
      }
}

static GtkWidget *
make_popover (GtkEntry *entry,
              Presets  *presets)
{
  GtkWidget *popover = gtk_popover_new (), *list = gtk_list_box_new (), *scroller = gtk_scrolled_window_new ();

  presets->list = list;
  for (guint i = 0; presets->texts[i] != NULL; i++)
    {
      GtkWidget *label = gtk_label_new (presets->texts[i]);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_widget_add_css_class (label, "numeric");
      gtk_list_box_append (GTK_LIST_BOX (list), label);
    }
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_BROWSE);
  g_signal_connect_swapped (list, "row-activated", G_CALLBACK (row_activated_cb), entry);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), LIST_HEIGHT_PX);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  gtk_popover_set_child (GTK_POPOVER (popover), scroller);
  gtk_popover_set_has_arrow (GTK_POPOVER (popover), FALSE);
  gtk_widget_add_css_class (popover, "menu");
  gtk_widget_set_parent (popover, gtk_widget_get_parent (GTK_WIDGET (entry)));
  return popover;
}

/* The popover hangs on the entry's parent, whose layout manager keeps it in place; it goes with the entry */
static void
entry_destroy_cb (GtkEntry *entry)
{
  g_clear_pointer (&get_presets (entry)->popover, gtk_widget_unparent);
}

/**
 * lr_field_presets_open:
 * @entry: an entry with or without presets
 *
 * Opens the list of its standard values.
 */
void
lr_field_presets_open (GtkEntry *entry)
{
  Presets *presets = get_presets (entry);

  if (presets == NULL || presets->texts[0] == NULL)
    return;

  if (presets->popover == NULL)
    presets->popover = make_popover (entry, presets);
  gtk_widget_set_size_request (presets->popover, gtk_widget_get_width (GTK_WIDGET (entry)), -1);
  gtk_popover_popup (GTK_POPOVER (presets->popover));
  select_current (entry, presets);
}

static void
icon_press_cb (GtkEntry *entry)
{
  lr_field_presets_open (entry);
}

/**
 * lr_field_presets_set_current:
 * @entry: an entry with or without presets
 * @index: which of them its value is, where its text does not tell; -1: none
 */
void
lr_field_presets_set_current (GtkEntry *entry,
                              int       index)
{
  Presets *presets = get_presets (entry);

  if (presets != NULL)
    presets->current = index;
}

/**
 * lr_field_presets_attach:
 * @texts: the standard values as text; others than the last ones replace them
 * @chosen: called with the one that was chosen
 */
void
lr_field_presets_attach (GtkEntry          *entry,
                         const char *const *texts,
                         LrPresetChosen     chosen,
                         gpointer           data)
{
  Presets *presets = get_presets (entry);

  if (presets == NULL)
    {
      presets = g_new0 (Presets, 1);
      presets->current = -1;
      g_object_set_data_full (G_OBJECT (entry), "lr-presets", presets, presets_free);
      gtk_entry_set_icon_from_icon_name (entry, GTK_ENTRY_ICON_SECONDARY, "pan-down-symbolic");
      gtk_entry_set_icon_tooltip_text (entry, GTK_ENTRY_ICON_SECONDARY, _("Standard values"));
      g_signal_connect (entry, "icon-press", G_CALLBACK (icon_press_cb), NULL);
      g_signal_connect (entry, "destroy", G_CALLBACK (entry_destroy_cb), NULL);
    }
  else if (g_strv_equal ((const char *const *) presets->texts, texts))
    return;

  g_clear_pointer (&presets->popover, gtk_widget_unparent);
  g_strfreev (presets->texts);
  presets->texts = g_strdupv ((char **) texts);
  presets->chosen = chosen;
  presets->data = data;
}
