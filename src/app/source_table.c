/* source_table.c - what each source alone gives a face and the walls behind it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row for each source, and one for all. The cells are labels that stay while their number does, so that a drag moves nothing but figures.
 */

#include "config.h"

#include "source_table.h"

#include "source_rows.h"
#include "units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define N_COLUMNS 5
#define DIM 0.5

struct _LrSourceTable
{
  GtkWidget  parent_instance;

  GtkWidget *grid;
  GPtrArray *labels;   /* of the grid, row by row */
};

G_DEFINE_FINAL_TYPE (LrSourceTable, lr_source_table, GTK_TYPE_WIDGET)

static void
lr_source_table_dispose (GObject *object)
{
  LrSourceTable *self = LR_SOURCE_TABLE (object);

  g_clear_pointer (&self->grid, gtk_widget_unparent);
  g_clear_pointer (&self->labels, g_ptr_array_unref);
  G_OBJECT_CLASS (lr_source_table_parent_class)->dispose (object);
}

static void
lr_source_table_class_init (LrSourceTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_source_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sources");
}

static void
lr_source_table_init (LrSourceTable *self)
{
  self->grid = gtk_grid_new ();
  self->labels = g_ptr_array_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static GtkWidget *
make_label (guint column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0.0f : 1.0f);
  gtk_widget_set_hexpand (label, column == 0);
  gtk_widget_add_css_class (label, "note");
  gtk_widget_add_css_class (label, "numeric");
  if (column == 0)
    {
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_width_chars (GTK_LABEL (label), 12);
    }
  return label;
}

static void
set_rows (LrSourceTable *self,
          guint          n_rows)
{
  while (self->labels->len > n_rows * N_COLUMNS)
    gtk_grid_remove (GTK_GRID (self->grid), g_ptr_array_steal_index (self->labels, self->labels->len - 1));
  for (guint i = self->labels->len; i < n_rows * N_COLUMNS; i++)
    {
      GtkWidget *label = make_label (i % N_COLUMNS);

      gtk_grid_attach (GTK_GRID (self->grid), label, (int) (i % N_COLUMNS), (int) (i / N_COLUMNS), 1, 1);
      g_ptr_array_add (self->labels, label);
    }
}

static void
set_cell (LrSourceTable *self,
          guint          row,
          guint          column,
          const char    *text,
          double         opacity)
{
  GtkWidget *label = self->labels->pdata[row * N_COLUMNS + column];

  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (label), text);
  gtk_widget_set_opacity (label, opacity);
}

/* "360 lx", and "−0.3" stops against the face; (transfer full) */
static char *
lux_text (double lux)
{
  g_autofree char *number = lux >= 0.5 ? lr_number_format (lr_lux_round (lux), 0) : NULL;

  return number != NULL ? g_strconcat (number, "\u00a0lx", NULL) : g_strdup (isnan (lux) ? "" : "–");
}

static char *
stops_text (double lux,
            double stops)
{
  g_autofree char *number = lux >= 0.5 && isfinite (stops) ? lr_number_format (fabs (stops) < 0.05 ? 0.0 : stops, 1) : NULL;

  return number != NULL ? g_strconcat (stops > 0.05 ? "+" : "", number, NULL) : g_strdup ("");
}

static void
show_row (LrSourceTable     *self,
          guint              index,
          const LrSourceRow *row,
          double             opacity)
{
  g_autofree char *face = lux_text (row->face_lx), *face_stops = stops_text (row->face_lx, row->face_stops);
  g_autofree char *walls = lux_text (row->walls_lx), *walls_stops = stops_text (row->walls_lx, row->walls_stops);
  const char *const cells[N_COLUMNS] = { row->title, face, face_stops, walls, walls_stops };

  for (guint i = 0; i < N_COLUMNS; i++)
    set_cell (self, index, i, cells[i], row->is_out ? opacity * DIM : opacity);
}

static void
show_head (LrSourceTable      *self,
           const LrSourceRows *rows)
{
  g_autofree char *person = lr_item_title (rows->person->item);
  /* Translators: over lux and stops of each source; a person, a camera's tag */
  g_autofree char *face = g_strdup_printf (_("%s’s face"), person);
  g_autofree char *walls = rows->camera != NULL ? g_strdup_printf (_("walls in %s"), rows->camera->item->tag) : g_strdup ("");
  const char *const cells[N_COLUMNS] = { _("Each alone"), face, _("stops"), walls,
                                         rows->camera != NULL ? _("stops") : "" };

  for (guint i = 0; i < N_COLUMNS; i++)
    set_cell (self, 0, i, cells[i], 1.0);
}

/**
 * lr_source_table_words:
 *
 * Returns: (transfer full): the rows, one a line
 */
char *
lr_source_table_words (LrSourceTable *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->labels->len; i++)
    g_string_append_printf (text, "%s%s", i == 0 ? "" : i % N_COLUMNS == 0 ? "\n" : " ", gtk_label_get_label (self->labels->pdata[i]));
  return g_string_free (text, FALSE);
}

/**
 * lr_source_table_show:
 * @document: whose levels they are
 * @person: (nullable): id of a person; %NULL: whom the first camera frames
 */
void
lr_source_table_show (LrSourceTable *self,
                      LrDocument    *document,
                      const char    *person)
{
  LrLightLevels *levels = lr_light_levels_get_settled (lr_document_get_levels (document));
  g_autoptr (LrSourceRows) rows = levels != NULL ? lr_source_rows_new (levels, person) : NULL;
  double opacity = lr_document_has_current_levels (document) ? 1.0 : DIM;

  gtk_widget_set_visible (GTK_WIDGET (self), rows != NULL && rows->rows->len > 0);
  if (rows == NULL || rows->rows->len == 0)
    return;

  set_rows (self, rows->rows->len + 1);
  show_head (self, rows);
  for (guint i = 0; i < rows->rows->len; i++)
    show_row (self, i + 1, &g_array_index (rows->rows, LrSourceRow, i), opacity);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _("What each source alone gives the lit cheek and, in the mean, the walls behind, with what "
                                                    "the room gives back; stops against all that the face gets. Right to half a stop at best"));
}
