/* canvas_menu.c - the menu at the pointer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

/* Takes @label and the action's target */
static void
append (GMenu      *menu,
        const char *label,
        const char *action,
        GVariant   *target)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target_value (item, action, target);
  g_menu_append_item (menu, item);
}

static void
append_key (GMenu      *menu,
            const char *label,
            const char *action,
            const char *accel)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, action);

  g_menu_item_set_attribute (item, "accel", "s", accel);
  g_menu_append_item (menu, item);
}

static gboolean
may_aim_at (const LrItem *item,
            const LrItem *target,
            const LrProp *prop)
{
  if (target == item || lr_item_kind_info (target->kind)->place != LR_PLACE_FLOOR)
    return FALSE;
  return g_strcmp0 (prop->target, LR_TARGET_ITEM) == 0
         || g_strcmp0 (prop->target, lr_item_kind_info (target->kind)->word) == 0;
}

/* People first: nearly everything aims at one of them */
static void
append_aims (GMenu        *menu,
             LrCanvas     *self,
             const LrItem *item)
{
  const LrSetup *setup = lr_plan_get_setup (lr_document_get_plan (self->document));
  const LrProp *aims = lr_item_find_prop (item->kind, "aims-at"), *looks = lr_item_find_prop (item->kind, "looks-at");
  const LrProp *prop = aims != NULL ? aims : looks;
  g_autoptr (GMenu) aim_menu = g_menu_new ();

  if (prop == NULL)
    return;

  for (int people = 1; people >= 0; people--)
    for (guint i = 0; i < setup->items->len; i++)
      {
        const LrItem *target = g_ptr_array_index (setup->items, i);
        g_autofree char *title = NULL;

        if ((target->kind == LR_ITEM_PERSON) != (gboolean) people || !may_aim_at (item, target, prop))
          continue;
        title = lr_item_title (target);
        append (aim_menu, title, "canvas.aim-at", g_variant_new_string (target->id));
      }
  append (aim_menu, _("Nothing"), "canvas.aim-at", g_variant_new_string (""));
  g_menu_append_submenu (menu, aims != NULL ? _("Aim at") : _("Look at"), G_MENU_MODEL (aim_menu));
}

static void
append_setups (GMenu    *menu,
               LrCanvas *self)
{
  const LrPlan *plan = lr_document_get_plan (self->document);
  g_autoptr (GMenu) setups = g_menu_new ();

  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *setup = g_ptr_array_index (plan->setups, i);

      if (i != plan->shown)
        append (setups, setup->name, "canvas.copy-item-to", g_variant_new_string (setup->id));
    }
  if (plan->setups->len > 1)
    g_menu_append_submenu (menu, _("Copy to set-up"), G_MENU_MODEL (setups));
}

static GMenu *
item_menu (LrCanvas     *self,
           const LrItem *item)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) place = g_menu_new (), copies = g_menu_new ();

  if (lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR)
    {
      append_aims (place, self, item);
      if (item->kind == LR_ITEM_CAMERA)
        {
          append_key (place, _("Frame…"), "win.frame", "<Control>f");
          append_key (place, _("Hold framing"), "win.hold-framing", "<Control>h");
        }
      append (place, _("Turn left by 90°"), "canvas.turn", g_variant_new_double (90.0));
      append (place, _("Turn right by 90°"), "canvas.turn", g_variant_new_double (-90.0));
      append (place, _("Turn round"), "canvas.turn", g_variant_new_double (180.0));
      append (place, _("Bring to the wall"), "canvas.bring-to-wall", NULL);
    }
  if (item->kind == LR_ITEM_LEAD)
    append (place, _("Lay it along the walls"), "canvas.route", NULL);
  append_key (copies, _("Duplicate"), "canvas.duplicate", "<Control>d");
  append_key (copies, _("Copy"), "canvas.copy", "<Control>c");
  append_setups (copies, self);
  append_key (copies, _("Remove"), "canvas.delete", "Delete");

  g_menu_append_section (menu, NULL, G_MENU_MODEL (place));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (copies));
  return menu;
}

static void
append_wall (GMenu *menu,
             int    wall)
{
  append (menu, _("Length of this wall…"), "canvas.wall-length", g_variant_new_int32 (wall));
  append (menu, _("Add a corner to this wall"), "canvas.add-corner", g_variant_new_int32 (wall));
}

static void
append_picture (GMenu        *menu,
                const LrRoom *room)
{
  append (menu, room->underlay != NULL ? _("Trace another picture…") : _("Trace a picture of a floor plan…"), "canvas.trace-picture", NULL);
  if (room->underlay == NULL)
    return;

  append (menu, room->underlay_is_hidden ? _("Show the picture") : _("Hide the picture"), "canvas.show-picture", NULL);
  if (room->underlay_is_hidden)
    return;
  append (menu, _("Scale the picture by two points"), "canvas.scale-picture", NULL);
  append (menu, _("Move or turn the picture"), "canvas.move-picture", NULL);
}

static GMenu *
paper_menu (LrCanvas *self,
            LrHit     hit,
            LrVec2    at)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) wall_menu = g_menu_new (), room_menu = g_menu_new (), picture = g_menu_new (), sight = g_menu_new ();
  int wall = hit.type == LR_HIT_WALL ? hit.index : lr_canvas_wall_at (self, at);

  if (hit.type == LR_HIT_CORNER)
    append (wall_menu, _("Remove this corner"), "canvas.remove-corner", g_variant_new_int32 (hit.index));
  else if (wall >= 0)
    append_wall (wall_menu, wall);
  append (room_menu, _("Put a door on a wall"), "canvas.put-on-wall", g_variant_new_string ("door"));
  append (room_menu, _("Put a window on a wall"), "canvas.put-on-wall", g_variant_new_string ("window"));
  append (room_menu, _("Put a socket on a wall"), "canvas.put-on-wall", g_variant_new_string ("socket"));
  append (room_menu, _("Type the wall lengths…"), "canvas.type-room", NULL);
  append (room_menu, _("Draw the room anew"), "canvas.draw-room", NULL);
  if (lr_canvas_can_paste (self))
    append_key (room_menu, _("Paste"), "canvas.paste", "<Control>v");
  append_picture (picture, lr_canvas_get_room (self));
  append_key (sight, _("Show the whole room"), "canvas.zoom-fit", "0");
  append (sight, _("Show at 1:50"), "canvas.zoom-to", g_variant_new_double (50.0));

  g_menu_append_section (menu, NULL, G_MENU_MODEL (wall_menu));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (room_menu));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (picture));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (sight));
  return menu;
}

/**
 * lr_canvas_popup_menu:
 * @self: a canvas
 * @at: a place on it [px]
 * @id: (nullable): of the thing there; %NULL for the paper
 *
 * Opens the menu of a thing, or of the paper.
 */
void
lr_canvas_popup_menu (LrCanvas   *self,
                      LrVec2      at,
                      const char *id)
{
  LrHit hit = lr_floor_hit (lr_document_get_study (self->document), lr_canvas_get_view (self), at);
  const LrItem *item = id != NULL ? lr_plan_find (lr_document_get_plan (self->document), id) : NULL;
  g_autoptr (GMenu) menu = item != NULL ? item_menu (self, item) : paper_menu (self, hit, at);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  self->menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle) { (int) at.x, (int) at.y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

/* At the release: a popover that opens under a button that is held takes the release from the sheet, and GTK 4.8 then keeps
 * the sheet as the widget that holds the pointer */
static void
released_cb (LrCanvas   *self,
             int         n_press,
             double      x,
             double      y,
             GtkGesture *gesture)
{
  LrHit hit;

  if (self->document == NULL || self->tool != NULL)
    return;

  lr_canvas_drag_cancel (self);
  hit = lr_floor_hit (lr_document_get_study (self->document), lr_canvas_get_view (self), lr_vec2 (x, y));
  if (hit.id != NULL)
    lr_document_select (self->document, hit.id);
  lr_canvas_children_grab (self);
  lr_canvas_popup_menu (self, lr_vec2 (x, y), hit.id);
}

/**
 * lr_canvas_menu_init:
 * @self: a canvas
 *
 * Adds the menus of the sheet.
 */
void
lr_canvas_menu_init (LrCanvas *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}
