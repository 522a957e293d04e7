/* canvas_keys.c - the sheet without a pointer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tab and Shift+Tab are not here: they walk the items by the focus of their children (canvas_children.c).
 */

#include "config.h"

#include "canvas_private.h"

#define NUDGE_M 0.10
#define FINE_NUDGE_M 0.01
#define TURN_RAD (5.0 * LR_DEG)
#define FINE_TURN_RAD (1.0 * LR_DEG)
#define ZOOM_STEP 1.25
#define STANDARD_DENOMINATOR 50.0

typedef struct
{
  guint  keyval;
  void (*press) (LrCanvas *self, gboolean is_fine, double way_x, double way_y);
  double way_x, way_y;
} Key;

static void
nudge (LrCanvas *self,
       gboolean  is_fine,
       double    way_x,
       double    way_y)
{
  lr_canvas_nudge (self, lr_vec2_scale (lr_vec2 (way_x, way_y), is_fine ? FINE_NUDGE_M : NUDGE_M));
}

static void
turn (LrCanvas *self,
      gboolean  is_fine,
      double    way,
      double    unused)
{
  lr_canvas_turn_by (self, way * (is_fine ? FINE_TURN_RAD : TURN_RAD));
}

static void
zoom (LrCanvas *self,
      gboolean  is_fine,
      double    way,
      double    unused)
{
  lr_canvas_zoom_at (self, way > 0.0 ? ZOOM_STEP : 1.0 / ZOOM_STEP,
                     lr_vec2 (self->view.width / 2.0, self->view.height / 2.0));
}

static void
fit (LrCanvas *self,
     gboolean  is_fine,
     double    unused,
     double    also_unused)
{
  lr_canvas_fit (self);
}

static void
standard_scale (LrCanvas *self,
                gboolean  is_fine,
                double    unused,
                double    also_unused)
{
  lr_canvas_zoom_to (self, STANDARD_DENOMINATOR);
}

static void
step (LrCanvas *self,
      gboolean  is_fine,
      double    way,
      double    unused)
{
  lr_canvas_step (self, (int) way);
}

static void
remove_item (LrCanvas *self,
             gboolean  is_fine,
             double    unused,
             double    also_unused)
{
  lr_canvas_delete (self);
}

static void
menu (LrCanvas *self,
      gboolean  is_fine,
      double    unused,
      double    also_unused)
{
  const char *id = lr_document_get_selected (self->document);
  const LrPlaced *placed = id != NULL ? lr_study_find_placed (lr_document_get_study (self->document), id) : NULL;

  lr_canvas_popup_menu (self, placed != NULL ? lr_view_to_device (&self->view, placed->at_m)
                                             : lr_vec2 (self->view.width / 2.0, self->view.height / 2.0),
                        placed != NULL ? id : NULL);
}

/* A key that Shift makes another stands here twice; Shift itself means fine */
static const Key keys[] = {
  { GDK_KEY_Left, nudge, -1, 0 },        { GDK_KEY_KP_Left, nudge, -1, 0 },
  { GDK_KEY_Right, nudge, 1, 0 },        { GDK_KEY_KP_Right, nudge, 1, 0 },
  { GDK_KEY_Up, nudge, 0, 1 },           { GDK_KEY_KP_Up, nudge, 0, 1 },
  { GDK_KEY_Down, nudge, 0, -1 },        { GDK_KEY_KP_Down, nudge, 0, -1 },
  { GDK_KEY_bracketleft, turn, 1, 0 },   { GDK_KEY_braceleft, turn, 1, 0 },
  { GDK_KEY_bracketright, turn, -1, 0 }, { GDK_KEY_braceright, turn, -1, 0 },
  { GDK_KEY_comma, turn, 1, 0 },         { GDK_KEY_less, turn, 1, 0 },      { GDK_KEY_semicolon, turn, 1, 0 },
  { GDK_KEY_period, turn, -1, 0 },       { GDK_KEY_greater, turn, -1, 0 },  { GDK_KEY_colon, turn, -1, 0 },
  { GDK_KEY_plus, zoom, 1, 0 },          { GDK_KEY_equal, zoom, 1, 0 },     { GDK_KEY_KP_Add, zoom, 1, 0 },
  { GDK_KEY_minus, zoom, -1, 0 },        { GDK_KEY_KP_Subtract, zoom, -1, 0 },
  { GDK_KEY_0, fit, 0, 0 },              { GDK_KEY_KP_0, fit, 0, 0 },
  { GDK_KEY_5, standard_scale, 0, 0 },   { GDK_KEY_KP_5, standard_scale, 0, 0 },
  { GDK_KEY_Page_Down, step, 1, 0 },     { GDK_KEY_KP_Page_Down, step, 1, 0 },
  { GDK_KEY_Page_Up, step, -1, 0 },      { GDK_KEY_KP_Page_Up, step, -1, 0 },
  { GDK_KEY_Delete, remove_item, 0, 0 }, { GDK_KEY_KP_Delete, remove_item, 0, 0 },
  { GDK_KEY_BackSpace, remove_item, 0, 0 },
  { GDK_KEY_Menu, menu, 0, 0 },
};

/**
 * lr_canvas_let_go:
 * @self: a canvas
 *
 * Lets go of tool, drag, wall, remark or thing, whichever is nearest at hand.
 */
void
lr_canvas_let_go (LrCanvas *self)
{
  if (self->document == NULL)
    return;

  if (self->drag.grip != LR_GRIP_NONE)
    lr_canvas_drag_cancel (self);
  else if (self->dropping != NULL)
    lr_canvas_drop_leave (self);
  else if (self->tool != NULL)
    lr_canvas_leave_tool (self);
  else if (lr_document_get_remark (self->document) != NULL)
    lr_document_take_remark (self->document, NULL);
  else if (self->has_room_in_hand)
    lr_canvas_take_wall (self, -1);
  else
    lr_document_select (self->document, NULL);
}

/**
 * lr_canvas_key:
 * @self: the sheet
 * @keyval: of GDK
 * @state: modifiers held
 *
 * Arrow keys nudge by 10 cm, with Shift by 1 cm; [ ] and , . turn by 5 degrees, with Shift by 1; + - 0 zoom, 5 goes to
 * 1:50; Page Up and Down walk the items; Delete removes; Ctrl+D duplicates, Ctrl+C and Ctrl+V copy and paste;
 * Escape lets go.
 *
 * Returns: whether the key meant something
 */
gboolean
lr_canvas_key (LrCanvas        *self,
               guint            keyval,
               GdkModifierType  state)
{
  GdkModifierType held = state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK);
  gboolean is_fine = (state & GDK_SHIFT_MASK) != 0;

  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  if (self->document == NULL)
    return FALSE;
  if (keyval == GDK_KEY_Escape)
    {
      lr_canvas_let_go (self);
      return TRUE;
    }
  if (self->tool != NULL && self->tool->key (self, keyval, state))
    return TRUE;
  if (held == GDK_CONTROL_MASK && (keyval == GDK_KEY_d || keyval == GDK_KEY_D))
    {
      lr_canvas_duplicate (self);
      return TRUE;
    }
  if (held == GDK_CONTROL_MASK && (keyval == GDK_KEY_c || keyval == GDK_KEY_C))
    {
      lr_canvas_copy (self);
      return TRUE;
    }
  if (held == GDK_CONTROL_MASK && (keyval == GDK_KEY_v || keyval == GDK_KEY_V))
    {
      lr_canvas_paste (self);
      return TRUE;
    }
  if (is_fine && keyval == GDK_KEY_F10)
    {
      menu (self, FALSE, 0, 0);
      return TRUE;
    }
  if (held != 0)
    return FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keys[i].keyval == keyval)
      {
        keys[i].press (self, is_fine, keys[i].way_x, keys[i].way_y);
        return TRUE;
      }
  return FALSE;
}

static gboolean
key_cb (LrCanvas              *self,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  return lr_canvas_key (self, keyval, state);
}

/**
 * lr_canvas_keys_init:
 * @self: a canvas
 *
 * Adds the keys of the sheet.
 */
void
lr_canvas_keys_init (LrCanvas *self)
{
  GtkEventController *controller = gtk_event_controller_key_new ();

  g_signal_connect_swapped (controller, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}
