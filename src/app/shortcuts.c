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
  const char *title;     /* to be translated; NULL: not listed, another row lists it */
} Shortcut;

typedef struct
{
  const char     *title; /* to be translated */
  const Shortcut *shortcuts;
  gsize           n;
} Group;

static const Shortcut plan_shortcuts[] = {
  { "win.new",            "<Control>n",                     N_("New plan") },
  { "win.open",           "<Control>o",                     N_("Open a plan") },
  { "win.save",           "<Control>s",                     N_("Save") },
  { "win.save-as",        "<Control><Shift>s",              N_("Save as") },
  { "win.page",           "<Control>e",                     N_("The page: look, save as PDF, print") },
  { "win.print",          "<Control>p",                     N_("Print") },
  { "win.lists::",        "<Control>l",                     N_("Lists of the job") },
  { "win.undo",           "<Control>z",                     N_("Undo") },
  { "win.redo",           "<Control><Shift>z <Control>y",   N_("Redo") },
  { "win.next-setup",     "<Control>Page_Down",             NULL },
  { "win.previous-setup", "<Control>Page_Up",               NULL },
  { NULL,                 "<Control>Page_Up <Control>Page_Down", N_("Set-up before, next; with Shift it is moved") },
  { "win.setup-earlier",  "<Control><Shift>Page_Up",        NULL },
  { "win.setup-later",    "<Control><Shift>Page_Down",      NULL },
  { "win.compare",        "<Control>k",                     N_("Compare the rooms of all set-ups") },
  { "win.differences",    "<Control><Shift>d",              N_("Differences to the plan") },
  { "win.refit-set",      "<Control><Shift>r",              N_("Refit the set to the room") },
  { "window.close",       "<Control>w",                     NULL },
  { "app.quit",           "<Control>q",                     NULL },
  { NULL,                 "<Control>w <Control>q",          N_("Close the window, quit") },
};

static const Shortcut panel_shortcuts[] = {
  { "win.next-panel",     "F6",                             NULL },
  { "win.previous-panel", "<Shift>F6",                      NULL },
  { NULL,                 "F6 <Shift>F6",                   N_("Next panel, panel before") },
  { "win.show-sight",     "<Alt>1",                         NULL },
  { "win.show-light",     "<Alt>2",                         NULL },
  { "win.show-sound",     "<Alt>3",                         NULL },
  { "win.show-sun",       "<Alt>4",                         NULL },
  { "win.show-power",     "<Alt>5",                         NULL },
  { NULL,                 "<Alt>1...5",                     N_("Show or hide Sight, Light, Sound, Sun, Power") },
  { "win.other-pictures", "<Alt>6",                         N_("Pictures one above the other, or the cut side by side") },
  { "win.show-planned",   "<Alt>7",                         N_("Show planned places") },
  { "win.mend",           "<Control>m",                     N_("Mend the remark in hand") },
  { "win.show-shortcuts", "<Control>question F1",           N_("Keyboard shortcuts") },
};

static const Shortcut finder_shortcuts[] = {
  { "win.frame",          "<Control>f",                     N_("Frame: shot size, background, lens, focus") },
  { "win.hold-framing",   "<Control>h",                     N_("Hold framing while a camera moves") },
  { NULL,                 "Left Up plus minus",             N_("Pan, tilt, longer, shorter lens") },
};

static const Shortcut sheet_shortcuts[] = {
  { "win.zoom-in",        "<Control>plus <Control>equal <Control>KP_Add", NULL },
  { "win.zoom-out",       "<Control>minus <Control>KP_Subtract", NULL },
  { NULL,                 "<Control>plus <Control>minus",   N_("Come nearer, show more") },
  { "win.zoom-fit",       "<Control>0 <Control>KP_0",       NULL },
  { NULL,                 "<Control>0",                     N_("Whole room") },
  { NULL,                 "Tab <Shift>Tab",                 N_("Next thing, thing before") },
  { NULL,                 "Left Right Up Down",             N_("Move the thing in hand") },
  { NULL,                 "<Shift>Left",                    N_("The same by 1 cm") },
  { NULL,                 "bracketleft bracketright",       N_("Turn the thing in hand") },
  { "win.duplicate",      "<Control>d",                     NULL },
  { NULL,                 "<Control>c <Control>v",          N_("Copy, paste in any set-up; Ctrl+D does both") },
  { NULL,                 "Delete",                         N_("Remove the thing in hand") },
  { NULL,                 "Escape",                         N_("Let go") },
};

#define GROUP(title_, rows_) { title_, rows_, G_N_ELEMENTS (rows_) }

static const Group groups[] = {
  GROUP (N_("Plan"), plan_shortcuts),
  GROUP (N_("Viewfinders"), finder_shortcuts),
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

/**
 * lr_shortcuts_keys:
 * @action: detailed name of an action
 *
 * Returns: (transfer full): its keys, as accelerators; none if the table has none
 */
GStrv
lr_shortcuts_keys (const char *action)
{
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    for (gsize j = 0; j < groups[i].n; j++)
      if (g_strcmp0 (groups[i].shortcuts[j].action, action) == 0)
        return g_strsplit (groups[i].shortcuts[j].keys, " ", -1);

  return g_new0 (char *, 1);
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
      g_autofree char *text = NULL, *keys = NULL;

      if (shortcut->title == NULL)
        continue;

      text = g_markup_escape_text (_(shortcut->title), -1);
      keys = g_markup_escape_text (shortcut->keys, -1);
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
                                         "<property name='max-height'>19</property>");
  g_autoptr (GtkBuilder) builder = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    append_group (ui, &groups[i]);
  g_string_append (ui, "</object></child></object></interface>");

  builder = gtk_builder_new_from_string (ui->str, (gssize) ui->len);
  return g_object_ref (GTK_WIDGET (gtk_builder_get_object (builder, "window")));
}
