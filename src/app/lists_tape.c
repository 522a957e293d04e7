/* lists_tape.c - tape positions: a drawing, and a line for each mark, ticked when it is on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lists_dialog.h"

#include "badge.h"
#include "list_page.h"
#include "tape_marks.h"
#include "tape_picture.h"

#include <glib/gi18n-lib.h>

#define LIST "tape"
#define PICTURE_PX 400 /* figures beside the tapes of a dozen marks need room */

/* --- The drawing ---------------------------------------------------------------------------------------------- */

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  LrDocument *document = LR_DOCUMENT (data);

  lr_tape_picture_draw (cr, lr_theme_get (lr_widget_get_theme_id (GTK_WIDGET (area))), lr_document_get_study (document),
                        lr_document_get_units (document), lr_document_get_pointed (document), width, height);
}

static GtkWidget *
make_picture (LrDocument *document)
{
  GtkWidget *area = gtk_drawing_area_new ();

  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), PICTURE_PX);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_cb, g_object_ref (document), g_object_unref);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Marks on the floor and their tapes"), -1);
  g_signal_connect_object (document, "changed", G_CALLBACK (gtk_widget_queue_draw), area, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "hand", G_CALLBACK (gtk_widget_queue_draw), area, G_CONNECT_SWAPPED);
  return area;
}

/* --- The lines ------------------------------------------------------------------------------------------------ */

/* "4: 2.45  5: 2.60" */
static char *
say_fix (const LrTapeFix *fix,
         LrUnits          units)
{
  g_autofree char *a = NULL, *b = NULL;

  if (fix->way == LR_FIX_NONE)
    return g_strdup ("–");

  a = lr_length_format_tape (fix->length_m[0], units);
  b = lr_length_format_tape (fix->length_m[1], units);
  return g_strdup_printf (fix->is_poor ? "(%u: %s  %u: %s)" : fix->way == LR_FIX_OVER ? "%u: %s  %u: %s*" : "%u: %s  %u: %s",
                          (guint) fix->number[0], a, (guint) fix->number[1], b);
}

static char *
say_height (const LrTapeMark *mark,
            LrUnits           units)
{
  g_autofree char *height = NULL;

  if (mark->height_of == LR_HEIGHT_NONE)
    return g_strdup ("");

  height = lr_length_format_tape (mark->height_m, units);
  return g_strdup_printf ("%s %s", lr_tape_height_word (mark->height_of), height);
}

static void
set_cell (GtkWidget  *line,
          const char *name,
          const char *text)
{
  gtk_label_set_label (GTK_LABEL (lr_list_line_get (line, name)), text);
}

/* Three columns at its end, as wide as those of the other lines */
static void
add_cells (GtkWidget  *line,
           LrListPage *page)
{
  static const char *const names[] = { "walls", "corners", "height" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      GtkWidget *cell = gtk_label_new (NULL);

      gtk_widget_add_css_class (cell, "numeric");
      gtk_label_set_xalign (GTK_LABEL (cell), 0.0F);
      gtk_widget_set_valign (cell, GTK_ALIGN_CENTER);
      gtk_size_group_add_widget (g_object_get_data (G_OBJECT (page), names[i]), cell);
      lr_list_line_add (line, names[i], cell, FALSE);
    }
}

static void
add_line (LrListPage       *page,
          const LrTapeMark *mark,
          LrUnits           units)
{
  const LrItem *item = mark->placed->item;
  g_autofree char *spot = lr_tape_mark_spot (mark), *aim = lr_tape_mark_aim (mark, units), *height = say_height (mark, units);
  g_autofree char *markup = g_markup_escape_text (spot, -1), *lead = g_markup_escape_text (item->tag, -1);
  /* Translators: where a thing is turned, "turned at Wenna; wall 3, 1.20 m from corner 3" */
  g_autofree char *note = aim[0] != '\0' ? g_markup_printf_escaped (_("turned %s"), aim) : g_strdup ("");
  g_autofree char *walls = say_fix (&mark->walls, units), *corners = say_fix (&mark->corners, units);
  g_autofree char *tick = lr_tape_mark_tick (mark);
  const LrListLine text = { .key = item->id, .tick = tick, .has_box = TRUE, .lead = lead, .markup = markup, .note = note, .item = item->id };
  gboolean is_new;
  GtkWidget *line = lr_list_page_line (page, &text, &is_new);

  if (is_new)
    add_cells (line, page);
  set_cell (line, "walls", walls);
  set_cell (line, "corners", corners);
  set_cell (line, "height", height);
}

/* The columns' heads: a line without box */
static void
add_heads (LrListPage *page)
{
  const LrListLine heads = { .key = "heads", .markup = _("centre of") };
  gboolean is_new;
  GtkWidget *line = lr_list_page_line (page, &heads, &is_new);

  if (!is_new)
    return;
  add_cells (line, page);
  gtk_widget_add_css_class (line, "note");
  set_cell (line, "walls", _("from walls"));
  set_cell (line, "corners", _("by tapes from corners"));
  set_cell (line, "height", _("height"));
}

static void
fill (LrListPage *page,
      LrDocument *document)
{
  g_autoptr (GArray) marks = lr_tape_marks_new (lr_document_get_study (document));

  if (marks->len == 0)
    {
      lr_list_page_say (page, "none", _("Nothing is marked on the floor: there is no room, or nothing stands in it."));
      return;
    }

  add_heads (page);
  for (guint i = 0; i < marks->len; i++)
    add_line (page, &g_array_index (marks, LrTapeMark, i), lr_document_get_units (document));
  lr_list_page_say (page, "how", _("Wall 1 goes from corner 1 to corner 2. (In brackets): the tapes cross too flat. *: held level over furniture."));
}

/**
 * lr_lists_tape_new:
 * @document: whose marks
 *
 * Returns: (transfer floating): the page; pointing at a line shows its tapes alone
 */
GtkWidget *
lr_lists_tape_new (LrDocument *document)
{
  static const char *const columns[] = { "walls", "corners", "height" };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *page = lr_list_page_new (document, LIST, fill);

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    g_object_set_data_full (G_OBJECT (page), columns[i], gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL), g_object_unref);
  gtk_widget_set_vexpand (page, TRUE);
  gtk_box_append (GTK_BOX (box), make_picture (document));
  gtk_box_append (GTK_BOX (box), page);
  return box;
}
