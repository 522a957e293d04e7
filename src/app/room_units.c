/* room_units.c - lengths of a room as they are typed, and the units that they are in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_rows.h"

#include <glib/gi18n-lib.h>

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/**
 * lr_room_mark:
 * @entry: an entry
 * @is_fine: whether what it holds can be taken
 */
void
lr_room_mark (GtkWidget *entry,
              gboolean   is_fine)
{
  if (is_fine)
    gtk_widget_remove_css_class (entry, "error");
  else
    gtk_widget_add_css_class (entry, "error");
}

/**
 * lr_room_read_length:
 * @entry: an entry
 * @units: of a bare number
 * @length_m: (out): what it holds [m], > 0
 *
 * Returns: %FALSE, with the entry marked, if it holds no length
 */
gboolean
lr_room_read_length (GtkWidget *entry,
                     LrUnits    units,
                     double    *length_m)
{
  gboolean is_length = lr_length_parse (text_of (entry), units, length_m) && *length_m > 0.0;

  lr_room_mark (entry, is_length);
  return is_length;
}

/* What has a unit of its own needs none beside it; the label keeps its place */
static void
show_unit (GtkWidget *entry,
           GtkWidget *label)
{
  const char *text = text_of (entry);

  gtk_widget_set_opacity (label, *text == '\0' || lr_length_is_bare (text) ? 1.0 : 0.0);
}

/**
 * lr_room_unit_new:
 * @entry: an entry for a length
 * @units: of a bare number
 *
 * Returns: (transfer floating): what stands beside the entry: the unit of a bare number, as long as no other is typed
 */
GtkWidget *
lr_room_unit_new (GtkWidget *entry,
                  LrUnits    units)
{
  GtkWidget *label = gtk_label_new (units == LR_UNITS_IMPERIAL ? _("ft") : _("m"));

  gtk_widget_add_css_class (label, "dim-label");
  g_signal_connect_object (entry, "changed", G_CALLBACK (show_unit), label, 0);
  show_unit (entry, label);
  return label;
}

/**
 * lr_room_question_lengths:
 * @entries: (element-type GtkWidget): of lengths
 * @units: of a bare number
 *
 * Returns: (transfer full) (nullable): a question about the first bare number that is too much for a room; %NULL if none is
 */
char *
lr_room_question_lengths (const GPtrArray *entries,
                          LrUnits          units)
{
  for (guint i = 0; i < entries->len; i++)
    {
      const char *text = text_of (entries->pdata[i]);
      g_autofree char *meant = lr_length_in_small_unit (text, units), *taken = NULL, *instead = NULL;
      double length_m = 0.0, meant_m = 0.0;

      if (!lr_length_is_questionable (text, units) || !lr_length_parse (text, units, &length_m) || !lr_length_parse (meant, units, &meant_m))
        continue;
      taken = lr_length_format (length_m, units);
      instead = lr_length_format (meant_m, units);
      /* Translators: a length in metres or feet, what was meant, and how that is written: "240 m? 2.40 m is written 240 cm." */
      return g_strdup_printf (_("<b>%s</b>? If <b>%s</b> is meant, write <b>%s</b>."), taken, instead, meant);
    }
  return NULL;
}

/**
 * lr_room_take_small_units:
 * @entries: (element-type GtkWidget): of lengths
 * @units: of a bare number
 *
 * Writes centimetres, or inches, behind all bare whole numbers from ten on.
 */
void
lr_room_take_small_units (const GPtrArray *entries,
                          LrUnits          units)
{
  for (guint i = 0; i < entries->len; i++)
    {
      g_autofree char *small = lr_length_in_small_unit (text_of (entries->pdata[i]), units);

      if (small != NULL)
        gtk_editable_set_text (GTK_EDITABLE (entries->pdata[i]), small);
    }
}
