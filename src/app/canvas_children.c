/* canvas_children.c - a focusable child for every thing on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only widgets can be accessible objects in GTK 4.8, so every thing has one: mostly invisible, with its name, where it
 * stands and whether it is in hand. The focus and what is in hand follow each other. Tab walks the things in the order in
 * which one sets up: people, cameras, lights, microphones, then what the room has; after the last it leaves the sheet.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#include "canvas_item.h"

/* Half of the rectangle of a thing that takes no room on the floor */
#define POINT_PX 10.0

static LrCanvasItem *
child_at (LrCanvas *self,
          guint     i)
{
  return g_ptr_array_index (self->children, i);
}

/* Index of the child that stands for @id, or -1 */
static int
find_child (LrCanvas   *self,
            const char *id)
{
  for (guint i = 0; id != NULL && i < self->children->len; i++)
    if (strcmp (lr_canvas_item_get_id (child_at (self, i)), id) == 0)
      return (int) i;
  return -1;
}

static void
taken_cb (LrCanvas     *self,
          LrCanvasItem *child)
{
  if (self->document != NULL && self->drag.grip == LR_GRIP_NONE)
    lr_document_select (self->document, lr_canvas_item_get_id (child));
}

static void
unparent_child (gpointer child)
{
  gtk_widget_unparent (child);
}

/**
 * lr_canvas_children_init:
 * @self: a canvas
 *
 * Makes the sheet hold an item for each thing, for keyboard and assistive technology.
 */
void
lr_canvas_children_init (LrCanvas *self)
{
  self->children = g_ptr_array_new_with_free_func (unparent_child);
}

/**
 * lr_canvas_children_clear:
 * @self: a canvas
 *
 * Removes them.
 */
void
lr_canvas_children_clear (LrCanvas *self)
{
  if (self->children != NULL)
    g_ptr_array_set_size (self->children, 0);
}

/* People and gear before what belongs to the room; things that stand nowhere have no child */
static GPtrArray *
list_items (LrCanvas *self)
{
  const LrSetup *setup = lr_plan_get_setup (lr_document_get_plan (self->document));
  GPtrArray *items = g_ptr_array_new ();

  for (int of_room = 0; of_room <= 1; of_room++)
    for (guint i = 0; i < setup->items->len; i++)
      {
        LrItem *item = g_ptr_array_index (setup->items, i);
        const LrItemKindInfo *info = lr_item_kind_info (item->kind);

        if (info->is_of_room == (gboolean) of_room && info->place != LR_PLACE_NONE)
          g_ptr_array_add (items, item);
      }
  return items;
}

static gboolean
children_match (LrCanvas  *self,
                GPtrArray *items)
{
  if (items->len != self->children->len)
    return FALSE;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (strcmp (item->id, lr_canvas_item_get_id (child_at (self, i))) != 0)
        return FALSE;
    }
  return TRUE;
}

/* Whether the focus is on the sheet or on a thing of it, not in a popover over it */
static gboolean
has_own_focus (LrCanvas *self)
{
  GtkWidget *child = gtk_widget_get_focus_child (GTK_WIDGET (self));

  return child != NULL ? LR_IS_CANVAS_ITEM (child) : gtk_widget_has_focus (GTK_WIDGET (self));
}

/* Keeps the widgets of things that stay, so that their focus does */
static void
rebuild_children (LrCanvas  *self,
                  GPtrArray *items)
{
  g_autoptr (GPtrArray) old = self->children;
  gboolean had_focus = has_own_focus (self);

  lr_canvas_children_init (self);
  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      GtkWidget *child = NULL;

      for (guint j = 0; j < old->len && child == NULL; j++)
        if (strcmp (item->id, lr_canvas_item_get_id (g_ptr_array_index (old, j))) == 0)
          child = g_ptr_array_steal_index (old, j);
      if (child == NULL)
        {
          child = lr_canvas_item_new (item->id);
          g_signal_connect_object (child, "taken", G_CALLBACK (taken_cb), self, G_CONNECT_SWAPPED);
          gtk_widget_set_parent (child, GTK_WIDGET (self));
        }
      g_ptr_array_add (self->children, child);
    }

  g_ptr_array_set_size (old, 0);
  if (had_focus && gtk_widget_get_focus_child (GTK_WIDGET (self)) == NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* (transfer full): "2.60 m from the left wall and 2.95 m from the lower wall, facing 338°. 22° is ..." */
static char *
describe (LrCanvas       *self,
          const LrPlaced *placed)
{
  const LrRoom *room = lr_canvas_get_room (self);
  const LrRemarks *remarks = lr_document_get_remarks (self->document);
  LrUnits units = lr_document_get_units (self->document);
  GString *text = g_string_new (NULL);
  double left_m = HUGE_VAL, low_m = HUGE_VAL;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      left_m = fmin (left_m, room->corners_m[i].x);
      low_m = fmin (low_m, room->corners_m[i].y);
    }
  if (room->n_corners > 0)
    {
      g_autofree char *x = lr_length_format (placed->at_m.x - left_m, units);
      g_autofree char *y = lr_length_format (placed->at_m.y - low_m, units);

      /* Translators: where a thing stands, for people who do not see the sheet */
      g_string_append_printf (text, _("%s from the left wall, %s from the lower wall."), x, y);
    }

  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (remarks->all, i);

      if (remark->grade != LR_GRADE_FIX)
        break;
      if (remark->ids != NULL && remark->ids[0] != NULL && strcmp (remark->ids[0], placed->item->id) == 0)
        g_string_append_printf (text, " %s: %s", lr_grade_title (remark->grade), remark->text);
    }
  return g_string_free (text, FALSE);
}

static void
word_children (LrCanvas *self)
{
  const LrStudy *study = lr_document_get_study (self->document);

  for (guint i = 0; i < self->children->len; i++)
    {
      LrCanvasItem *child = child_at (self, i);
      const LrPlaced *placed = lr_study_find_placed (study, lr_canvas_item_get_id (child));
      g_autofree char *name = placed != NULL ? lr_item_title (placed->item) : NULL;
      g_autofree char *description = placed != NULL ? describe (self, placed) : NULL;

      if (placed != NULL)
        lr_canvas_item_set_words (child, name, description);
    }
}

/**
 * lr_canvas_children_select:
 * @self: a canvas
 *
 * What is in hand is another.
 */
void
lr_canvas_children_select (LrCanvas *self)
{
  const char *selected = lr_document_get_selected (self->document);

  for (guint i = 0; i < self->children->len; i++)
    lr_canvas_item_set_selected (child_at (self, i), g_strcmp0 (lr_canvas_item_get_id (child_at (self, i)), selected) == 0);
  if (has_own_focus (self))
    lr_canvas_children_grab (self);
}

/**
 * lr_canvas_children_sync:
 * @self: a canvas
 *
 * The plan is another.
 */
void
lr_canvas_children_sync (LrCanvas *self)
{
  g_autoptr (GPtrArray) items = list_items (self);

  if (!children_match (self, items))
    rebuild_children (self, items);
  if (!lr_document_has_preview (self->document))
    word_children (self);
  lr_canvas_children_select (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/**
 * lr_canvas_children_grab:
 * @self: a canvas
 *
 * Gives the keyboard focus to what is in hand.
 */
void
lr_canvas_children_grab (LrCanvas *self)
{
  int i = self->document != NULL ? find_child (self, lr_document_get_selected (self->document)) : -1;
  GtkWidget *widget = i >= 0 ? GTK_WIDGET (child_at (self, (guint) i)) : GTK_WIDGET (self);

  if (!gtk_widget_has_focus (widget))
    gtk_widget_grab_focus (widget);
}

static GdkRectangle
box_of (LrCanvas       *self,
        const LrPlaced *placed)
{
  const LrOutline *outline = &placed->footprint;
  LrVec2 at = lr_view_to_device (&self->view, placed->at_m);
  double left = at.x - POINT_PX, right = at.x + POINT_PX, top = at.y - POINT_PX, bottom = at.y + POINT_PX;

  if (placed->has_footprint)
    {
      LrVec2 centre = lr_view_to_device (&self->view, outline->centre_m);
      double radius = outline->radius_m * self->view.scale;

      left = fmin (left, centre.x - radius);
      right = fmax (right, centre.x + radius);
      top = fmin (top, centre.y - radius);
      bottom = fmax (bottom, centre.y + radius);
    }
  return (GdkRectangle) { (int) left, (int) top, (int) ceil (right - left), (int) ceil (bottom - top) };
}

/**
 * lr_canvas_children_allocate:
 * @self: a canvas
 *
 * Puts each item where its thing is on the sheet.
 */
void
lr_canvas_children_allocate (LrCanvas *self)
{
  const LrStudy *study = self->document != NULL ? lr_document_get_study (self->document) : NULL;

  for (guint i = 0; study != NULL && i < self->children->len; i++)
    {
      LrCanvasItem *child = child_at (self, i);
      const LrPlaced *placed = lr_study_find_placed (study, lr_canvas_item_get_id (child));
      GdkRectangle box = placed != NULL ? box_of (self, placed) : (GdkRectangle) { 0, 0, 1, 1 };

      gtk_widget_measure (GTK_WIDGET (child), GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
      gtk_widget_size_allocate (GTK_WIDGET (child), &box, -1);
    }
}

/**
 * lr_canvas_step:
 * @self: a canvas
 * @by: how many things, < 0 back
 *
 * Takes the next thing in hand.
 */
void
lr_canvas_step (LrCanvas *self,
                int       by)
{
  int n = (int) self->children->len, i;
  const LrPlaced *placed;
  const char *id;

  if (self->document == NULL || n == 0 || by == 0)
    return;

  i = find_child (self, lr_document_get_selected (self->document));
  if (i < 0)
    i = by > 0 ? -1 : n;
  i = ((i + by) % n + n) % n;
  id = lr_canvas_item_get_id (child_at (self, (guint) i));
  lr_document_select (self->document, id);
  lr_canvas_children_grab (self);

  placed = lr_study_find_placed (lr_document_get_study (self->document), id);
  if (placed != NULL)
    lr_canvas_show_place (self, placed->at_m);
}

static gboolean
focus_ways_in (LrCanvas         *self,
               GtkDirectionType  direction)
{
  return gtk_widget_get_visible (self->ways_in) && gtk_widget_child_focus (self->ways_in, direction);
}

/**
 * lr_canvas_children_focus:
 * @self: a canvas
 * @direction: where the focus goes
 *
 * Moves the keyboard focus among the things.
 *
 * Returns: %FALSE: it leaves the sheet
 */
gboolean
lr_canvas_children_focus (LrCanvas         *self,
                          GtkDirectionType  direction)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean is_inside = gtk_widget_get_focus_child (widget) != NULL || gtk_widget_has_focus (widget);
  int by = direction == GTK_DIR_TAB_FORWARD ? 1 : -1, n = (int) self->children->len, i;

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return FALSE;
  if (focus_ways_in (self, direction))
    return TRUE;

  i = self->document != NULL ? find_child (self, lr_document_get_selected (self->document)) : -1;
  if (!is_inside)
    {
      if (i >= 0 || n == 0)
        lr_canvas_children_grab (self);
      else
        lr_canvas_step (self, by);
      return TRUE;
    }

  if (self->tool != NULL || i + by < 0 || i + by >= n)
    return FALSE;
  lr_canvas_step (self, by);
  return TRUE;
}
