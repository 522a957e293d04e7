/* test-visit.c - what is noted on a visit, on one screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "pointer.h"
#include "visit_dialog.h"

#include <glib/gstdio.h>

static GtkWidget *
open_visit (LrMainWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();
  GtkWidget *dialog = NULL;

  g_action_group_activate_action (G_ACTION_GROUP (window), "visit", NULL);
  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (LR_IS_VISIT_DIALOG (toplevel))
        dialog = toplevel;
    }
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (dialog);
  return dialog;
}

static GtkWidget *
entry_in (GtkWidget  *dialog,
          const char *key)
{
  GtkWidget *field = find (dialog, is_field_of, key);

  g_assert_nonnull (field);
  return find (field, is_entry, NULL);
}

static gboolean
is_button_of (GtkWidget     *widget,
              gconstpointer  label)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static const LrPlan *
plan_of (LrMainWindow *window)
{
  return lr_document_get_plan (window->document);
}

static guint
count (LrMainWindow *window,
       LrItemKind    kind)
{
  const LrSetup *setup = lr_plan_get_setup (plan_of (window));
  guint n = 0;

  for (guint i = 0; i < setup->items->len; i++)
    n += ((const LrItem *) setup->items->pdata[i])->kind == kind;
  return n;
}

/* Every field is an edit of the plan, which undo takes back; what undo changes is shown */
static void
test_fields (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_visit (window), *access = entry_in (dialog, "access");

  type (access, "side door, 12 steps");
  type (entry_in (dialog, "permission"), "in writing");
  type (entry_in (dialog, "known-load-w"), "300");
  type (entry_in (dialog, "level-db"), "39");
  type (entry_in (dialog, "reflectance-pct"), "55");
  type (entry_in (dialog, "background-db"), "31");
  type (entry_in (dialog, "height-mm"), "2.61");
  g_assert_cmpstr (lr_plan_get_setup (plan_of (window))->location->access, ==, "side door, 12 steps");
  g_assert_cmpstr (lr_plan_get_setup (plan_of (window))->location->permission, ==, "in writing");
  g_assert_cmpfloat (get_item (window, "circuit-1")->circuit.known_load_w, ==, 300.0);
  g_assert_cmpfloat (get_item (window, "fridge")->noise.level_db, ==, 39.0);
  g_assert_cmpfloat_with_epsilon (lr_plan_get_setup (plan_of (window))->room->walls.reflectance, 0.55, 1e-9);

  g_assert_cmpfloat (lr_plan_get_setup (plan_of (window))->room->background_db, ==, 31.0);
  g_assert_cmpfloat (lr_plan_get_setup (plan_of (window))->room->height_m, ==, 2.61);

  for (int i = 0; i < 7; i++)
    lr_document_undo (window->document);
  g_assert_false (lr_document_has_changes (window->document));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (access)), ==, "");
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* What is still being typed when the window is closed is not lost */
static void
test_close_while_typing (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_visit (window), *access = entry_in (dialog, "access");

  gtk_widget_grab_focus (access);
  gtk_editable_set_text (GTK_EDITABLE (access), "lift at the back");
  g_assert_cmpstr (lr_plan_get_setup (plan_of (window))->location->access, ==, "");
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_cmpstr (lr_plan_get_setup (plan_of (window))->location->access, ==, "lift at the back");
  close_window (window);
}

/* The form is modal: what is typed is saved by the key, and no window opens that nobody could use */
static void
test_keys (void)
{
  LrMainWindow *window = open_example ();
  g_autofree char *folder = g_dir_make_tmp ("lookroom-visit-XXXXXX", NULL), *path = g_build_filename (folder, "job.lookroom", NULL), *text = NULL;
  g_autofree char *backup = g_strconcat (path, "~", NULL);
  GtkWidget *dialog, *access;
  guint n_windows;
  g_autoptr (GError) error = NULL;

  g_assert_true (lr_document_save (window->document, path, &error));
  dialog = open_visit (window);
  access = entry_in (dialog, "access");
  gtk_widget_grab_focus (access);
  gtk_editable_set_text (GTK_EDITABLE (access), "lift at the back");
  pointer_chord (dialog, GDK_KEY_Control_L, GDK_KEY_s);
  settle ();
  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  g_assert_nonnull (strstr (text, "lift at the back"));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (dialog)), ==, "The visit");

  n_windows = g_list_model_get_n_items (gtk_window_get_toplevels ());
  pointer_chord (dialog, GDK_KEY_Control_L, GDK_KEY_l);
  settle ();
  g_assert_cmpuint (g_list_model_get_n_items (gtk_window_get_toplevels ()), ==, n_windows);

  gtk_window_close (GTK_WINDOW (dialog));
  window->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (window)); /* not close_window(): what handled a real key outlives it for a while, in GTK 4.8 */
  settle ();
  g_unlink (path);
  g_unlink (backup);
  g_rmdir (folder);
}

static gboolean
is_tip (GtkWidget     *widget,
        gconstpointer  tip)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_widget_get_tooltip_text (widget), tip) == 0;
}

/* A thing that is there by mistake goes, and undo brings it back */
static void
test_remove (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_visit (window);
  g_autofree char *title = lr_item_title (get_item (window, "fridge")), *tip = g_strdup_printf ("Remove %s", title);
  GtkWidget *button = find (dialog, is_tip, tip);
  guint before = count (window, LR_ITEM_NOISE);

  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpuint (count (window, LR_ITEM_NOISE), ==, before - 1);
  g_assert_null (find (dialog, is_tip, tip));
  lr_document_undo (window->document);
  g_assert_nonnull (find (dialog, is_tip, tip));
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* Two noises that are added stand apart from each other and from the house light */
static void
test_apart (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_visit (window);
  const LrSetup *setup;

  g_signal_emit_by_name (find (dialog, is_button_of, "Add a house light"), "clicked");
  g_signal_emit_by_name (find (dialog, is_button_of, "Add a noise"), "clicked");
  g_signal_emit_by_name (find (dialog, is_button_of, "Add a noise"), "clicked");
  setup = lr_plan_get_setup (plan_of (window));
  for (guint i = 0; i < setup->items->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const LrItem *a = setup->items->pdata[i], *b = setup->items->pdata[k];

        if (a->kind == LR_ITEM_NOISE && (b->kind == LR_ITEM_NOISE || b->kind == LR_ITEM_HOUSE_LIGHT))
          g_assert_cmpfloat (lr_vec2_distance (a->at_m, b->at_m), >, 0.2);
      }
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

/* A new thing has its fields at once, and stands in the room */
static void
test_add (void)
{
  static const struct { LrItemKind kind; const char *button; } cases[] = {
    { LR_ITEM_CIRCUIT, "Add a circuit" }, { LR_ITEM_HOUSE_LIGHT, "Add a house light" }, { LR_ITEM_NOISE, "Add a noise" },
  };
  LrMainWindow *window = open_example ();
  GtkWidget *dialog = open_visit (window);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint before = count (window, cases[i].kind);
      GtkWidget *button = find (dialog, is_button_of, cases[i].button);

      g_assert_nonnull (button);
      g_signal_emit_by_name (button, "clicked");
      g_assert_cmpuint (count (window, cases[i].kind), ==, before + 1);
      gtk_test_widget_wait_for_draw (dialog);
    }
  gtk_window_close (GTK_WINDOW (dialog));
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/visit/fields", test_fields);
  g_test_add_func ("/visit/add", test_add);
  g_test_add_func ("/visit/remove", test_remove);
  g_test_add_func ("/visit/apart", test_apart);
  g_test_add_func ("/visit/close-while-typing", test_close_while_typing);
  g_test_add_func ("/visit/keys", test_keys);

  return g_test_run ();
}
