/* window_actions.c - what a window can do
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Menu, key and button name the same action; one function sets which of them can be done now.
 */

#include "config.h"

#include "main_window_private.h"

#include "app.h"
#include "calendar_action.h"
#include "field.h"
#include "file_actions.h"
#include "hint.h"
#include "lists_dialog.h"
#include "page_dialog.h"
#include "settings.h"
#include "shortcuts.h"
#include "visit_dialog.h"

#include <glib/gi18n-lib.h>

/* While a text is being typed, undo and redo are the text's */
static gboolean
activate_in_text (LrMainWindow   *self,
                  const char *action)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  GtkWidget *field = focus != NULL ? gtk_widget_get_ancestor (focus, LR_TYPE_FIELD) : NULL;

  return GTK_IS_TEXT (focus) && field != NULL && lr_field_has_typed_text (LR_FIELD (field))
         && gtk_widget_activate_action (focus, action, NULL);
}

/* What was said may have been about what is gone now */
static void
hide_notice (LrMainWindow *self)
{
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->notice), FALSE);
}

static void
undo_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  LrMainWindow *self = data;

  if (activate_in_text (self, "text.undo"))
    return;

  hide_notice (self);
  lr_document_undo (self->document);
}

static void
redo_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  LrMainWindow *self = data;

  if (activate_in_text (self, "text.redo"))
    return;

  hide_notice (self);
  lr_document_redo (self->document);
}

/* win.NAME does canvas.NAME */
static void
canvas_cb (GSimpleAction *action,
           GVariant      *parameter,
           gpointer       data)
{
  LrMainWindow *self = data;
  g_autofree char *name = g_strconcat ("canvas.", g_action_get_name (G_ACTION (action)), NULL);

  gtk_widget_activate_action_variant (GTK_WIDGET (self->canvas), name, parameter);
}

/* What is shown of a kind: a set of bits of the document that lasts */
typedef struct
{
  guint (*get)  (LrDocument *document);
  void  (*set)  (LrDocument *document, guint bits);
  void  (*save) (guint bits);
} Bits;

static const Bits shown = { lr_document_get_shown, lr_document_set_shown, lr_settings_set_shown };
static const Bits frame_lines = { lr_document_get_frame_lines, lr_document_set_frame_lines, lr_settings_set_frame_lines };

static const struct { const char *name; const Bits *bits; guint bit; } switches[] = {
  { "show-sight", &shown, LR_SHOW_SIGHT },
  { "show-light", &shown, LR_SHOW_LIGHT },
  { "show-sound", &shown, LR_SHOW_SOUND },
  { "show-sun", &shown, LR_SHOW_SUN },
  { "show-power", &shown, LR_SHOW_POWER },
  { "show-thirds", &frame_lines, LR_FRAME_THIRDS },
  { "show-safe-areas", &frame_lines, LR_FRAME_SAFE_AREAS },
  { "show-recorded", &frame_lines, LR_FRAME_RECORDED },
};

static void
switch_cb (GSimpleAction *action,
           GVariant      *state,
           gpointer       data)
{
  LrMainWindow *self = data;

  for (gsize i = 0; i < G_N_ELEMENTS (switches); i++)
    if (g_str_equal (switches[i].name, g_action_get_name (G_ACTION (action))))
      {
        const Bits *bits = switches[i].bits;
        guint others = bits->get (self->document) & ~switches[i].bit;

        bits->set (self->document, g_variant_get_boolean (state) ? others | switches[i].bit : others);
        bits->save (bits->get (self->document));
      }
  g_simple_action_set_state (action, state);
}

static void
set_switches (LrMainWindow *self)
{
  for (gsize i = 0; i < G_N_ELEMENTS (switches); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), switches[i].name);
      gboolean is_on = (switches[i].bits->get (self->document) & switches[i].bit) != 0;

      g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (is_on));
    }
}

static void
units_cb (GSimpleAction *action,
          GVariant      *state,
          gpointer       data)
{
  LrMainWindow *self = data;
  LrUnits units = g_str_equal (g_variant_get_string (state, NULL), "imperial") ? LR_UNITS_IMPERIAL : LR_UNITS_METRIC;

  g_simple_action_set_state (action, state);
  lr_settings_set_units (units);
  lr_document_set_units (self->document, units);
}

static const char *const ways[] = { "stacked", "cut" };

/* Pictures one above the other, or side by side as a cut */
static void
pictures_cb (GSimpleAction *action,
             GVariant      *state,
             gpointer       data)
{
  LrMainWindow *self = data;
  gboolean has_cut = g_str_equal (g_variant_get_string (state, NULL), ways[TRUE]);

  g_simple_action_set_state (action, g_variant_new_string (ways[has_cut]));
  lr_settings_set_cut (has_cut);
  lr_viewfinders_set_cut (self->viewfinders, has_cut);
  lr_main_window_fit (self);
}

static void
other_pictures_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       data)
{
  GActionGroup *group = G_ACTION_GROUP (data);
  g_autoptr (GVariant) state = g_action_group_get_action_state (group, "pictures");
  gboolean has_cut = g_str_equal (g_variant_get_string (state, NULL), ways[TRUE]);

  g_action_group_change_action_state (group, "pictures", g_variant_new_string (ways[!has_cut]));
}

static void
hold_cb (GSimpleAction *action,
         GVariant      *state,
         gpointer       data)
{
  LrMainWindow *self = data;

  g_simple_action_set_state (action, state);
  lr_document_set_holds_framing (self->document, g_variant_get_boolean (state));
}

static void
frame_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  LrMainWindow *self = data;

  lr_viewfinders_open_frame (self->viewfinders);
}

static void
close_notice_cb (GSimpleAction *action,
                 GVariant      *parameter,
                 gpointer       data)
{
  hide_notice (data);
}

static void
mend_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  LrMainWindow *self = data;
  const LrRemark *remark = lr_document_get_remark (self->document);
  g_autofree char *key = remark != NULL ? g_strdup (remark->key) : NULL;

  if (key != NULL)
    lr_document_mend (self->document, key);
}

static void
shortcuts_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       data)
{
  GtkWidget *window = lr_shortcuts_window_new ();

  gtk_window_set_transient_for (GTK_WINDOW (window), GTK_WINDOW (data));
  gtk_window_present (GTK_WINDOW (window));
  g_object_unref (window);
}

/* The panel that has the focus, or -1 */
static int
focused_panel (LrMainWindow          *self,
               GtkWidget *const  *panels,
               int                n)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  for (int i = 0; i < n && focus != NULL; i++)
    if (focus == panels[i] || gtk_widget_is_ancestor (focus, panels[i]))
      return i;
  return -1;
}

static void
panel_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  LrMainWindow *self = data;
  GtkWidget *panels[] = {
    GTK_WIDGET (self->tray), GTK_WIDGET (self->found_pane), GTK_WIDGET (self->canvas), GTK_WIDGET (self->viewfinders),
    GTK_WIDGET (self->details), GTK_WIDGET (self->remarks),
  };
  int n = G_N_ELEMENTS (panels), by = g_str_equal (g_action_get_name (G_ACTION (action)), "next-panel") ? 1 : -1;
  int at = focused_panel (self, panels, n);

  if (at < 0 && by < 0)
    at = 0;
  for (int i = 0; i < n; i++)
    {
      at = (at + by + n) % n;
      if (gtk_widget_child_focus (panels[at], GTK_DIR_TAB_FORWARD))
        return;
    }
}

static void
visit_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  LrMainWindow *self = data;

  gtk_window_present (GTK_WINDOW (lr_visit_dialog_new (GTK_WINDOW (self), self->document)));
}

static void
lists_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  LrMainWindow *self = data;

  lr_lists_dialog_show (GTK_WINDOW (self), self->document, g_variant_get_string (parameter, NULL));
}

static void
calendar_cb (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       data)
{
  LrMainWindow *self = data;

  lr_calendar_save (GTK_WINDOW (self), self->document);
}

static const GActionEntry entries[] = {
  { "undo", undo_cb, NULL, NULL, NULL, { 0 } },
  { "redo", redo_cb, NULL, NULL, NULL, { 0 } },
  { "zoom-in", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "zoom-out", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "zoom-fit", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "zoom-to", canvas_cb, "d", NULL, NULL, { 0 } },
  { "draw-room", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "visit", visit_cb, NULL, NULL, NULL, { 0 } },
  { "lists", lists_cb, "s", NULL, NULL, { 0 } },
  { "calendar", calendar_cb, NULL, NULL, NULL, { 0 } },
  { "type-room", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "trace-picture", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "scale-picture", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "move-picture", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "remove-picture", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "put-on-wall", canvas_cb, "s", NULL, NULL, { 0 } },
  { "duplicate", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "delete", canvas_cb, NULL, NULL, NULL, { 0 } },
  { "copy-item-to", canvas_cb, "s", NULL, NULL, { 0 } },
  { "copy-set-to", canvas_cb, "s", NULL, NULL, { 0 } },
  { "show-sight", NULL, NULL, "true", switch_cb, { 0 } },
  { "show-light", NULL, NULL, "false", switch_cb, { 0 } },
  { "show-sound", NULL, NULL, "false", switch_cb, { 0 } },
  { "show-sun", NULL, NULL, "false", switch_cb, { 0 } },
  { "show-power", NULL, NULL, "false", switch_cb, { 0 } },
  { "show-thirds", NULL, NULL, "true", switch_cb, { 0 } },
  { "show-safe-areas", NULL, NULL, "true", switch_cb, { 0 } },
  { "show-recorded", NULL, NULL, "true", switch_cb, { 0 } },
  { "units", NULL, "s", "'metric'", units_cb, { 0 } },
  { "pictures", NULL, "s", "'stacked'", pictures_cb, { 0 } },
  { "other-pictures", other_pictures_cb, NULL, NULL, NULL, { 0 } },
  { "hold-framing", NULL, NULL, "false", hold_cb, { 0 } },
  { "frame", frame_cb, NULL, NULL, NULL, { 0 } },
  { "close-notice", close_notice_cb, NULL, NULL, NULL, { 0 } },
  { "mend", mend_cb, NULL, NULL, NULL, { 0 } },
  { "show-shortcuts", shortcuts_cb, NULL, NULL, NULL, { 0 } },
  { "next-panel", panel_cb, NULL, NULL, NULL, { 0 } },
  { "previous-panel", panel_cb, NULL, NULL, NULL, { 0 } },
};

/**
 * lr_main_window_add_actions:
 * @self: a window whose document exists
 *
 * Adds the actions of the window, those of files among them.
 */
void
lr_main_window_add_actions (LrMainWindow *self)
{
  gboolean is_imperial = lr_document_get_units (self->document) == LR_UNITS_IMPERIAL;

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  lr_main_window_add_file_actions (self);
  lr_main_window_add_page_actions (self);
  set_switches (self);
  g_simple_action_set_state (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "units")),
                             g_variant_new_string (is_imperial ? "imperial" : "metric"));
  g_simple_action_set_state (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "pictures")),
                             g_variant_new_string (ways[lr_settings_get_cut ()]));
}

static void
set_enabled (LrMainWindow   *self,
             const char *name,
             gboolean    is_enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), is_enabled);
}

static void
set_hint (GtkWidget  *button,
          const char *verb,
          const char *what)
{
  /* Translators: "Undo: Move camera B" */
  g_autofree char *hint = what != NULL ? g_strdup_printf (_("%s: %s"), verb, what) : g_strdup (verb);

  lr_hint_set (button, hint);
}

/**
 * lr_main_window_update_actions:
 *
 * Sets from the document which actions can be done now.
 */
void
lr_main_window_update_actions (LrMainWindow *self)
{
  const char *undo = lr_document_get_undo_title (self->document), *redo = lr_document_get_redo_title (self->document);
  const LrRemark *remark = lr_document_get_remark (self->document);
  gboolean is_read_only = lr_document_get_plan (self->document)->is_read_only;
  gboolean has_item = lr_document_get_selected (self->document) != NULL;

  set_enabled (self, "undo", undo != NULL);
  set_enabled (self, "redo", redo != NULL);
  set_enabled (self, "duplicate", has_item && !is_read_only);
  set_enabled (self, "delete", has_item && !is_read_only);
  set_enabled (self, "copy-item-to", has_item && !is_read_only);
  set_enabled (self, "copy-set-to", !is_read_only);
  set_enabled (self, "mend", remark != NULL && remark->remedy != NULL && !is_read_only);
  set_enabled (self, "save", !is_read_only);
  set_enabled (self, "frame", lr_document_get_study (self->document)->cameras->len > 0);
  set_hint (self->undo_button, _("Undo"), undo);
  set_hint (self->redo_button, _("Redo"), redo);
}
