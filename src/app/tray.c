/* tray.c - what can be brought into the room: the kit, and the things that any room has
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each thing carries its name, "kit:ID" or "room:WORD". Dragged, the name is what the sheet is given; Enter or a
 * click hands it to the sheet to be placed where it makes sense.
 */

#include "config.h"

#include "tray.h"

#include "app.h"
#include "badge.h"
#include "hint.h"
#include "placing.h"

#include <glib/gi18n-lib.h>

#define KIT_ICON_PX 38.0
#define ROOM_ICON_PX 34.0
#define WIDTH_PX 208
#define FOLDED_PX 72
#define N_COLUMNS 3

struct _LrTray
{
  GtkWidget   parent_instance;

  LrDocument *document;
  LrCanvas   *canvas;        /* not held: both live in one window */
  GPtrArray  *kit;           /* the one that the rows show; held */
  gboolean    is_folded;
  gpointer    last_clicked;   /* not held: only compared */
  gint64      last_click_us;

  GtkWidget  *box, *kit_head, *kit_title, *kit_note, *kit_button, *kit_list, *room_title, *room_grid;
};

G_DEFINE_FINAL_TYPE (LrTray, lr_tray, GTK_TYPE_WIDGET)

/* What a row of the kit is made of */
typedef struct
{
  GtkWidget *texts, *count;
  int        left;
} KitRow;

static const char *
get_name (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), "lr-name");
}

static void
place (LrTray     *self,
       const char *name)
{
  if (self->canvas != NULL)
    lr_canvas_place (self->canvas, name);
}

static GdkContentProvider *
drag_prepare_cb (GtkDragSource *source,
                 double         x,
                 double         y,
                 gpointer       data)
{
  GtkWidget *widget = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source));

  return gdk_content_provider_new_typed (G_TYPE_STRING, get_name (widget));
}

/* The thing's picture rides along under the pointer */
static void
drag_begin_cb (GtkDragSource *source,
               GdkDrag       *drag,
               gpointer       data)
{
  GtkWidget *badge = data;
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (badge);

  gtk_drag_source_set_icon (source, picture, gtk_widget_get_width (badge) / 2, gtk_widget_get_height (badge) / 2);
}

static void
make_draggable (GtkWidget *widget,
                GtkWidget *badge,
                char      *name)
{
  GtkDragSource *source = gtk_drag_source_new ();

  g_object_set_data_full (G_OBJECT (widget), "lr-name", name, g_free);
  gtk_drag_source_set_actions (source, GDK_ACTION_COPY);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepare_cb), NULL);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begin_cb), badge);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (source));
}

static GtkWidget *
make_text (const char *text,
           const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static void
show_count (GtkWidget        *row,
            const LrKitEntry *entry,
            int               left)
{
  KitRow *state = g_object_get_data (G_OBJECT (row), "lr-row");
  g_autofree char *text = left < 0 ? g_strdup_printf ("−%d", -left) : g_strdup_printf ("%d", left);
  g_autofree char *spoken = g_strdup_printf (_("%s, %s, %s left in the van"), entry->title, entry->note, text);
  g_autofree char *missing =
    left < 0 ? g_strdup_printf (ngettext (" The room has %d more.", " The room has %d more.", (gulong) -left), -left) : g_strdup ("");
  /* Translators: a thing of the kit, its note, how many there are, and " The room has 1 more." or nothing */
  g_autofree char *hint = g_strdup_printf (_("%s, %s. The kit has %d.%s Drag it into the room, or click it or press Enter to place it."),
                                           entry->title, entry->note, entry->count, missing);

  state->left = left;
  gtk_label_set_label (GTK_LABEL (state->count), text);
  if (left == 0)
    gtk_widget_add_css_class (state->count, "none-left");
  else
    gtk_widget_remove_css_class (state->count, "none-left");
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  lr_hint_set (row, hint);
}

static GtkWidget *
make_kit_row (LrTray           *self,
              const LrKitEntry *entry)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *badge = lr_badge_new ();
  KitRow *state = g_new0 (KitRow, 1);

  state->texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_hexpand (state->texts, TRUE);
  gtk_widget_set_valign (state->texts, GTK_ALIGN_CENTER);
  gtk_widget_set_visible (state->texts, !self->is_folded);
  gtk_box_append (GTK_BOX (state->texts), make_text (entry->title, NULL));
  gtk_box_append (GTK_BOX (state->texts), make_text (entry->note, "note"));
  state->count = gtk_label_new (NULL);
  gtk_widget_add_css_class (state->count, "count");
  g_object_set_data_full (G_OBJECT (row), "lr-row", state, g_free);

  lr_badge_show_item (LR_BADGE (badge), entry->item, KIT_ICON_PX);
  gtk_box_append (GTK_BOX (box), badge);
  gtk_box_append (GTK_BOX (box), state->texts);
  gtk_box_append (GTK_BOX (box), state->count);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  make_draggable (row, badge, g_strconcat ("kit:", entry->item->id, NULL));
  return row;
}

static void
rebuild_kit (LrTray       *self,
             const LrPlan *plan)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->kit_list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->kit_list), GTK_WIDGET (row));

  g_clear_pointer (&self->kit, g_ptr_array_unref);
  self->kit = g_ptr_array_ref (plan->kit);
  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (plan->kit, i);
      GtkWidget *kit_row = make_kit_row (self, entry);

      gtk_list_box_append (GTK_LIST_BOX (self->kit_list), kit_row);
      show_count (kit_row, entry, lr_plan_kit_left (plan, entry));
    }
}

static void
changed_cb (LrTray *self)
{
  const LrPlan *plan = lr_document_get_plan (self->document);

  if (plan->kit != self->kit)
    {
      rebuild_kit (self, plan);
      return;
    }

  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (plan->kit, i);
      GtkWidget *row = GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->kit_list), (int) i));
      int left = lr_plan_kit_left (plan, entry);

      if (((KitRow *) g_object_get_data (G_OBJECT (row), "lr-row"))->left != left)
        show_count (row, entry, left);
    }
}

/* People double-click what they want to have: that is one thing, not two */
static gboolean
is_second_click (LrTray    *self,
                 GtkWidget *widget)
{
  gint64 now_us = g_get_monotonic_time ();
  int double_click_ms;
  gboolean is_second;

  g_object_get (gtk_widget_get_settings (widget), "gtk-double-click-time", &double_click_ms, NULL);
  is_second = widget == self->last_clicked && now_us - self->last_click_us < double_click_ms * 1000;
  self->last_clicked = is_second ? NULL : widget;
  self->last_click_us = now_us;
  return is_second;
}

static void
row_activated_cb (LrTray        *self,
                  GtkListBoxRow *row)
{
  if (!is_second_click (self, GTK_WIDGET (row)))
    place (self, get_name (GTK_WIDGET (row)));
}

static void
button_clicked_cb (LrTray    *self,
                   GtkWidget *button)
{
  if (!is_second_click (self, button))
    place (self, get_name (button));
}

static GtkWidget *
make_room_button (LrTray            *self,
                  const LrRoomThing *thing,
                  const LrSetup     *setup)
{
  GtkWidget *button = gtk_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *badge = lr_badge_new (), *label = gtk_label_new (_(thing->title));
  g_autoptr (LrItem) item = lr_room_thing_new (thing, setup);

  lr_badge_show_item (LR_BADGE (badge), item, ROOM_ICON_PX);
  gtk_widget_set_halign (badge, GTK_ALIGN_CENTER);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "small");
  gtk_box_append (GTK_BOX (box), badge);
  gtk_box_append (GTK_BOX (box), label);
  gtk_button_set_child (GTK_BUTTON (button), box);
  lr_hint_set (button, _(thing->title));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _(thing->title), -1);
  g_object_set_data (G_OBJECT (button), "lr-text", label);
  make_draggable (button, badge, g_strconcat ("room:", thing->word, NULL));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (button_clicked_cb), self);
  return button;
}

static void
fill_room_grid (LrTray *self)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  gsize n;
  const LrRoomThing *things = lr_room_things (&n);

  for (gsize i = 0; i < n; i++)
    gtk_grid_attach (GTK_GRID (self->room_grid), make_room_button (self, &things[i], lr_plan_get_setup (plan)),
                     (int) (i % N_COLUMNS), (int) (i / N_COLUMNS), 1, 1);
}

static void
move_room_buttons (LrTray *self)
{
  g_autoptr (GPtrArray) buttons = g_ptr_array_new_with_free_func (g_object_unref);
  int n_columns = self->is_folded ? 1 : N_COLUMNS;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->room_grid)) != NULL)
    {
      g_ptr_array_add (buttons, g_object_ref (child));
      gtk_grid_remove (GTK_GRID (self->room_grid), child);
    }
  for (guint i = 0; i < buttons->len; i++)
    {
      GtkWidget *button = g_ptr_array_index (buttons, i);

      gtk_widget_set_visible (g_object_get_data (G_OBJECT (button), "lr-text"), !self->is_folded);
      gtk_grid_attach (GTK_GRID (self->room_grid), button, (int) i % n_columns, (int) i / n_columns, 1, 1);
    }
}

static int
box_width_px (LrTray *self)
{
  int minimum_px;

  gtk_widget_measure (self->box, GTK_ORIENTATION_HORIZONTAL, -1, &minimum_px, NULL, NULL, NULL);
  return minimum_px;
}

/* The window may always become as narrow as with the Tray folded: it is folded because of that width */
static void
lr_tray_measure (GtkWidget      *widget,
                 GtkOrientation  orientation,
                 int             for_size,
                 int            *minimum,
                 int            *natural,
                 int            *minimum_baseline,
                 int            *natural_baseline)
{
  LrTray *self = LR_TRAY (widget);

  if (orientation == GTK_ORIENTATION_VERTICAL && for_size >= 0)
    for_size = MAX (for_size, box_width_px (self));
  gtk_widget_measure (self->box, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL && !self->is_folded)
    {
      *natural = MAX (*natural, WIDTH_PX);
      *minimum = MIN (*minimum, FOLDED_PX);
    }
  *minimum_baseline = *natural_baseline = -1;
}

static void
lr_tray_size_allocate (GtkWidget *widget,
                       int        width_px,
                       int        height_px,
                       int        baseline)
{
  LrTray *self = LR_TRAY (widget);

  gtk_widget_allocate (self->box, MAX (width_px, box_width_px (self)), height_px, baseline, NULL);
}

/* Who comes by keyboard wants the things; the button over them is one step back */
static gboolean
lr_tray_focus (GtkWidget        *widget,
               GtkDirectionType  direction)
{
  gboolean is_inside = (gtk_widget_get_state_flags (widget) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;

  if (direction == GTK_DIR_TAB_FORWARD && !is_inside && gtk_widget_child_focus (LR_TRAY (widget)->kit_list, direction))
    return TRUE;

  return GTK_WIDGET_CLASS (lr_tray_parent_class)->focus (widget, direction);
}

static void
lr_tray_dispose (GObject *object)
{
  LrTray *self = LR_TRAY (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_TRAY);
  g_clear_pointer (&self->kit, g_ptr_array_unref);
  G_OBJECT_CLASS (lr_tray_parent_class)->dispose (object);
}

static void
lr_tray_class_init (LrTrayClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_tray_dispose;
  widget_class->measure = lr_tray_measure;
  widget_class->size_allocate = lr_tray_size_allocate;
  widget_class->focus = lr_tray_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/tray.ui");
  gtk_widget_class_bind_template_child (widget_class, LrTray, box);
  gtk_widget_class_bind_template_child (widget_class, LrTray, kit_head);
  gtk_widget_class_bind_template_child (widget_class, LrTray, kit_title);
  gtk_widget_class_bind_template_child (widget_class, LrTray, kit_note);
  gtk_widget_class_bind_template_child (widget_class, LrTray, kit_button);
  gtk_widget_class_bind_template_child (widget_class, LrTray, kit_list);
  gtk_widget_class_bind_template_child (widget_class, LrTray, room_title);
  gtk_widget_class_bind_template_child (widget_class, LrTray, room_grid);
}

static void
lr_tray_init (LrTray *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Tray"), -1);
  g_signal_connect_swapped (self->kit_list, "row-activated", G_CALLBACK (row_activated_cb), self);
  fill_room_grid (self);
}

/**
 * lr_tray_set_document:
 * @document: whose kit is shown; once
 */
void
lr_tray_set_document (LrTray     *self,
                      LrDocument *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}

/**
 * lr_tray_set_canvas:
 * @canvas: where Enter and a click place things; outlives the Tray
 */
void
lr_tray_set_canvas (LrTray   *self,
                    LrCanvas *canvas)
{
  self->canvas = canvas;
}

/**
 * lr_tray_set_folded:
 * @is_folded: whether it shows pictures and counts alone
 */
void
lr_tray_set_folded (LrTray   *self,
                    gboolean  is_folded)
{
  GtkListBoxRow *row;

  if (self->is_folded == is_folded)
    return;

  self->is_folded = is_folded;
  gtk_widget_set_visible (self->kit_note, !is_folded);
  gtk_widget_set_visible (self->kit_button, !is_folded);
  gtk_widget_set_visible (self->room_title, !is_folded);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->kit_list), i)) != NULL; i++)
    gtk_widget_set_visible (((KitRow *) g_object_get_data (G_OBJECT (row), "lr-row"))->texts, !is_folded);
  move_room_buttons (self);
}
