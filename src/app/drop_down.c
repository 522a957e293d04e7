/* drop_down.c - a drop-down that may be narrower than its longest title
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The button cuts a long title short; the list that it opens shows it whole.
 */

#include "drop_down.h"

/* Of the button: what it cut short */
static gboolean
query_tooltip_cb (GtkLabel   *label,
                  int         x,
                  int         y,
                  gboolean    is_keyboard,
                  GtkTooltip *tooltip)
{
  gtk_tooltip_set_text (tooltip, gtk_label_get_label (label));
  return pango_layout_is_ellipsized (gtk_label_get_layout (label));
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          gpointer                  is_button)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (GPOINTER_TO_INT (is_button))
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), 6);
      gtk_label_set_max_width_chars (GTK_LABEL (label), 10);
      gtk_widget_set_has_tooltip (label, TRUE);
      g_signal_connect (label, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
    }
  gtk_list_item_set_child (list_item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         gpointer                  is_button)
{
  GtkStringObject *title = gtk_list_item_get_item (list_item);

  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (list_item)), gtk_string_object_get_string (title));
}

static GtkListItemFactory *
make_factory (gboolean is_button)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER (is_button));
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GINT_TO_POINTER (is_button));
  return factory;
}

/**
 * lr_drop_down_new:
 *
 * Returns: (transfer full): a drop-down without titles
 */
GtkWidget *
lr_drop_down_new (void)
{
  g_autoptr (GtkListItemFactory) button = make_factory (TRUE), list = make_factory (FALSE);
  GtkWidget *self = gtk_drop_down_new (NULL, NULL);

  gtk_drop_down_set_factory (GTK_DROP_DOWN (self), button);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (self), list);
  return self;
}

static gboolean
has_titles (GtkDropDown       *self,
            const char *const *titles)
{
  GListModel *model = gtk_drop_down_get_model (self);
  guint n = model != NULL ? g_list_model_get_n_items (model) : 0;

  if (n != g_strv_length ((char **) titles))
    return FALSE;

  for (guint i = 0; i < n; i++)
    if (!g_str_equal (gtk_string_list_get_string (GTK_STRING_LIST (model), i), titles[i]))
      return FALSE;
  return TRUE;
}

/**
 * lr_drop_down_set_titles:
 * @titles: what to choose from
 *
 * Returns: whether it had other titles; the first is selected then
 */
gboolean
lr_drop_down_set_titles (GtkDropDown       *self,
                         const char *const *titles)
{
  GListModel *model = gtk_drop_down_get_model (self);

  if (has_titles (self, titles))
    return FALSE;

  if (model != NULL)
    {
      /* in place: a choice may be what brings other titles, and is still being told to everyone */
      gtk_string_list_splice (GTK_STRING_LIST (model), 0, g_list_model_get_n_items (model), titles);
      gtk_drop_down_set_selected (self, 0);
    }
  else
    {
      g_autoptr (GtkStringList) first = gtk_string_list_new (titles);

      gtk_drop_down_set_model (self, G_LIST_MODEL (first));
    }
  return TRUE;
}
