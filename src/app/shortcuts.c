/* shortcuts.c - every key that means something, in one table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "shortcuts.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const char *action;    /* detailed name; NULL: a key that a panel reads itself, listed here for people */
  const char *keys;      /* separated by spaces */
  const char *title;     /* to be translated; NULL: not listed */
} Shortcut;

typedef struct
{
  const char     *title; /* to be translated */
  const Shortcut *shortcuts;
  gsize           n;
} Group;

static const Shortcut plan_shortcuts[] = {
  { "win.new",        "<Control>n",               N_("New plan") },
  { "win.open",       "<Control>o",               N_("Open a plan") },
  { "win.save",       "<Control>s",               N_("Save") },
  { "win.save-as",    "<Control><Shift>s",        N_("Save as") },
  { "win.page",       "<Control>e",               N_("The page: look, save as PDF, print") },
  { "win.print",      "<Control>p",               N_("Print") },
  { "win.undo",       "<Control>z",               N_("Undo") },
  { "win.redo",       "<Control><Shift>z <Control>y", N_("Redo") },
  { "win.next-setup", "<Control>Page_Down",       N_("Next set-up") },
  { "win.previous-setup", "<Control>Page_Up",     N_("Set-up before") },
  { "window.close",   "<Control>w",               N_("Close the window") },
  { "app.quit",       "<Control>q",               N_("Quit") },
};

static const Shortcut panel_shortcuts[] = {
  { "win.next-panel",     "F6",                   N_("Next panel: Tray, Sheet, Viewfinders, Details, Remarks") },
  { "win.previous-panel", "<Shift>F6",            N_("Panel before") },
  { "win.show-sight",     "<Alt>1",               N_("Show or hide Sight") },
  { "win.show-light",     "<Alt>2",               N_("Show or hide Light") },
  { "win.show-sound",     "<Alt>3",               N_("Show or hide Sound") },
  { "win.show-power",     "<Alt>4",               N_("Show or hide Power") },
  { "win.show-shortcuts", "<Control>question F1", N_("Keyboard shortcuts") },
  { "win.mend",           "<Control>m",           N_("Mend the remark in hand") },
};

static const Shortcut sheet_shortcuts[] = {
  { "win.zoom-in",   "<Control>plus <Control>equal <Control>KP_Add", N_("Come nearer") },
  { "win.zoom-out",  "<Control>minus <Control>KP_Subtract", N_("Show more of the room") },
  { "win.zoom-fit",  "<Control>0 <Control>KP_0",  N_("Whole room") },
  { "win.duplicate", "<Control>d",                N_("Duplicate the thing in hand") },
  { NULL, "Delete",                               N_("Remove the thing in hand") },
  { NULL, "Tab",                                  N_("Next thing") },
  { NULL, "<Shift>Tab",                           N_("Thing before") },
  { NULL, "Left Right Up Down",                   N_("Move the thing in hand by 10 cm") },
  { NULL, "<Shift>Left",                          N_("Move it by 1 cm") },
  { NULL, "Escape",                               N_("Let go") },
};

#define GROUP(title_, rows_) { title_, rows_, G_N_ELEMENTS (rows_) }

static const Group groups[] = {
  GROUP (N_("Plan"), plan_shortcuts),
  GROUP (N_("Panels"), panel_shortcuts),
  GROUP (N_("Sheet"), sheet_shortcuts),
};

/**
 * lr_shortcuts_bind:
 * @application: gets the accelerators of its actions
 */
void
lr_shortcuts_bind (GtkApplication *application)
{
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    for (gsize j = 0; j < groups[i].n; j++)
      {
        const Shortcut *shortcut = &groups[i].shortcuts[j];
        g_auto (GStrv) keys = g_strsplit (shortcut->keys, " ", -1);

        if (shortcut->action != NULL)
          gtk_application_set_accels_for_action (application, shortcut->action, (const char *const *) keys);
      }
}

static void
append_group (GString     *ui,
              const Group *group)
{
  g_autofree char *title = g_markup_escape_text (_(group->title), -1);

  g_string_append_printf (ui, "<child><object class='GtkShortcutsGroup'><property name='title'>%s</property>", title);
  for (gsize i = 0; i < group->n; i++)
    {
      const Shortcut *shortcut = &group->shortcuts[i];
      g_autofree char *text = g_markup_escape_text (_(shortcut->title), -1);
      g_autofree char *keys = g_markup_escape_text (shortcut->keys, -1);

      g_string_append_printf (ui, "<child><object class='GtkShortcutsShortcut'><property name='title'>%s</property>"
                              "<property name='accelerator'>%s</property></object></child>", text, keys);
    }
  g_string_append (ui, "</object></child>");
}

/**
 * lr_shortcuts_window_new:
 *
 * Returns: (transfer full): a window that lists every key
 */
GtkWidget *
lr_shortcuts_window_new (void)
{
  g_autoptr (GString) ui = g_string_new ("<interface><object class='GtkShortcutsWindow' id='window'><child>"
                                         "<object class='GtkShortcutsSection'><property name='section-name'>all</property>"
                                         "<property name='max-height'>12</property>");
  g_autoptr (GtkBuilder) builder = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    append_group (ui, &groups[i]);
  g_string_append (ui, "</object></child></object></interface>");

  builder = gtk_builder_new_from_string (ui->str, (gssize) ui->len);
  return g_object_ref (GTK_WIDGET (gtk_builder_get_object (builder, "window")));
}
