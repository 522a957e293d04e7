/* test-as-found.c - the room is not as planned: a set-up as found, and its differences beside the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "plan_edit.h"

#include <string.h>

/* A set-up as found is offered a name like the planned one's, wherever that says so */
static void
test_names (void)
{
  static const struct { const char *planned, *found; } names[] = {
    { "Loft, as planned", "Loft, as found" },
    { "As planned (loft)", "As found (loft)" },
    { "Loft as Planned, 2nd day", "Loft as found, 2nd day" },
    { "Loft", "Loft, as found" },
  };
  LrMainWindow *window = open_example ();

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GError) error = NULL;
      GtkWindow *dialog;

      lr_document_commit (window->document, lr_plan_rename_setup (lr_document_get_plan (window->document), names[i].planned, &error), "rename");
      g_assert_no_error (error);
      activate (window, "as-found");
      settle ();
      dialog = window_beside ();
      g_assert_cmpstr (gtk_window_get_title (dialog), ==, "As found");
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (find (GTK_WIDGET (dialog), is_entry, NULL))), ==, names[i].found);
      gtk_dialog_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
      settle ();
    }
  close_window (window);
}

/* As found: the sheet is marked, the differences stand in the Tray's place beside it, and are there again when one comes back to it */
static void
test_found (void)
{
  LrMainWindow *window = open_example ();
  g_autofree char *words = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (gtk_widget_get_visible (window->found_mark));
  activate (window, "as-found");
  settle ();
  gtk_dialog_response (GTK_DIALOG (window_beside ()), GTK_RESPONSE_ACCEPT);
  settle ();
  g_assert_true (gtk_widget_get_visible (window->found_mark));
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (window->found_mark)), ==, "Drawing loft, as found");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window->found_pane)));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (window->tray)));

  lr_document_commit (window->document, lr_plan_remove (lr_document_get_plan (window->document), "camera-b", &error), "remove");
  g_assert_no_error (error);
  words = lr_found_pane_words (window->found_pane);
  g_assert_nonnull (strstr (words, "\nCamera B is gone."));

  activate (window, "previous-setup");
  g_assert_false (gtk_widget_get_visible (window->found_mark));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window->tray)));
  activate (window, "next-setup");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window->found_pane)));
  activate (window, "differences");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window->tray)));

  activate (window, "remove-setup");
  g_assert_true (gtk_revealer_get_reveal_child (GTK_REVEALER (window->notice)));
  g_assert_nonnull (strstr (gtk_label_get_label (GTK_LABEL (window->notice_label)), "“Drawing loft, as found” is removed"));
  activate (window, "undo");
  g_assert_true (gtk_widget_get_visible (window->found_mark));
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/found/names", test_names);
  g_test_add_func ("/found/differences", test_found);

  return g_test_run ();
}
