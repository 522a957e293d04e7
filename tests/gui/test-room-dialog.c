/* test-room-dialog.c - the room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#include "room_dialog.h"
#define NEAR_M 0.0006

static void
setup (GuiFixture    *f,
       gconstpointer  data)
{
  gui_setup (f, data != NULL ? gui_make_loft () : NULL);
}

static void
teardown (GuiFixture    *f,
          gconstpointer  data)
{
  gui_teardown (f);
}

static GtkWidget *
open_dialog (GuiFixture *f)
{
  GListModel *toplevels = gtk_window_get_toplevels ();
  GtkWidget *dialog = NULL;

  gtk_widget_activate_action (GTK_WIDGET (f->canvas), "canvas.type-room", NULL);
  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (toplevels, i);

      if (LR_IS_ROOM_DIALOG (window))
        dialog = window;
    }
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (dialog);
  return dialog;
}

/* The nth entry that can be seen, in reading order */
static GtkWidget *
find_entry (GtkWidget *widget,
            int       *nth)
{
  if (!gtk_widget_get_child_visible (widget) || !gtk_widget_get_mapped (widget))
    return NULL;
  if (GTK_IS_ENTRY (widget))
    return (*nth)-- == 0 ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *entry = find_entry (child, nth);

      if (entry != NULL)
        return entry;
    }
  return NULL;
}

static void
type_into (GtkWidget  *dialog,
           int         nth,
           const char *text)
{
  GtkWidget *entry = find_entry (dialog, &nth);

  g_assert_nonnull (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
test_rectangle (GuiFixture    *f,
                gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  type_into (dialog, 0, "3.6");
  type_into (dialog, 1, "three");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 0);

  type_into (dialog, 1, "310 cm");
  type_into (dialog, 2, "2.45");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].x, 3.6, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].y, 3.1, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->height_m, 2.45, NEAR_M);
  lr_document_undo (f->document);
  g_assert_null (lr_document_get_undo_title (f->document));
  gui_settle (f);
}

/* A room that is there is opened wall by wall, and a wall corrected: what stands in it keeps its place */
static void
test_correct_a_wall (GuiFixture    *f,
                     gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  /* each wall has a length and an angle: the first is entry 0. Three walls that do not go round are closed straight. */
  type_into (dialog, 0, "7.50");
  type_into (dialog, 6, "");
  type_into (dialog, 8, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpfloat_with_epsilon (room->corners_m[1].x, 7.5, NEAR_M);
  g_assert_cmpfloat_with_epsilon (gui_item (f, GUI_WENNA)->at_m.x, 2.6, 1e-9);
}

/* A row left empty between two walls is a wall forgotten: the two walls above it do not become a triangle */
static void
test_forgotten_wall (GuiFixture    *f,
                     gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);

  type_into (dialog, 4, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 5);

  type_into (dialog, 6, "");
  type_into (dialog, 8, "");
  gtk_widget_activate_action (dialog, "room.make", NULL);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (f->document))->room->n_corners, ==, 3);
}

/* What is typed without a click goes into the first length */
static void
test_first_length (GuiFixture    *f,
                   gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  int first = 0;

  g_assert_true (gtk_widget_get_parent (gtk_window_get_focus (GTK_WINDOW (dialog))) == find_entry (dialog, &first));
  gtk_window_close (GTK_WINDOW (dialog));
  gui_settle (f);
}

/* The entry that is typed in */
static GtkWidget *
focused (GtkWidget *dialog)
{
  return gtk_widget_get_parent (gtk_window_get_focus (GTK_WINDOW (dialog)));
}

static void
type_and_enter (GtkWidget  *dialog,
                const char *text)
{
  GtkWidget *entry = focused (dialog);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (gtk_window_get_focus (GTK_WINDOW (dialog)), "activate");
}

static const char *
status_of (GtkWidget *widget)
{
  const char *status = NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && status == NULL; child = gtk_widget_get_next_sibling (child))
    status = GTK_IS_LABEL (child) && strstr (gtk_label_get_text (GTK_LABEL (child)), "m²") != NULL
               ? gtk_label_get_text (GTK_LABEL (child)) : status_of (child);
  return status;
}

/* By Enter alone through all of it: the fourth wall goes round, the diagonal that is asked for settles which wall is misread, and
 * what was told is kept. Wall 1, which looks down the sheet, faces
 * 160 degrees: north is 180 - 160 clockwise from up. */
static void
test_through_all (GuiFixture    *f,
                  gconstpointer  data)
{
  static const char *const walls[] = { "5", "400 cm", "4.94", "4" };
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  gtk_stack_set_visible_child_name (GTK_STACK (gtk_widget_get_ancestor (focused (dialog), GTK_TYPE_STACK)), "walls");
  gtk_test_widget_wait_for_draw (dialog);
  for (int i = 0; i < 4; i++)
    {
      int nth = 2 * i;

      g_assert_true (focused (dialog) == find_entry (dialog, &nth));
      type_and_enter (dialog, walls[i]);
    }
  g_assert_nonnull (strstr (status_of (dialog), "Walls 1 and 3 disagree by 6"));
  type_and_enter (dialog, "1");
  type_and_enter (dialog, "3");
  type_and_enter (dialog, "6.40");
  g_assert_nonnull (strstr (status_of (dialog), "Wall 3 was taped at 4.94"));
  type_and_enter (dialog, "");
  type_and_enter (dialog, "2.62");
  type_and_enter (dialog, "160");
  for (gint64 end_us = g_get_monotonic_time () + 5 * G_USEC_PER_SEC;
       lr_document_get_undo_title (f->document) == NULL && g_get_monotonic_time () < end_us;)
    g_main_context_iteration (NULL, FALSE); /* a button that is activated stays down for a moment */
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpuint (room->n_corners, ==, 4);
  g_assert_cmpuint (room->n_tape, ==, 5);
  g_assert_cmpuint (room->n_turns, ==, 4);
  g_assert_cmpfloat_with_epsilon (lr_vec2_distance (room->corners_m[2], room->corners_m[3]), 5.0, 0.005);
  g_assert_cmpfloat_with_epsilon (room->height_m, 2.62, 1e-9);
  g_assert_cmpfloat_with_epsilon (room->north_rad, 20.0 * LR_DEG, 1e-6);
  gui_settle (f);
}

/* Opened again, what was told stands there as it was told, not as it came out */
static void
test_notes_again (GuiFixture    *f,
                  gconstpointer  data)
{
  static const double lengths_m[] = { 5.0, 4.0, 4.94, 4.0 };
  GtkWidget *dialog;

  test_through_all (f, data);
  dialog = open_dialog (f);
  for (int i = 0; i < 4; i++)
    {
      int nth = 2 * i;
      double length_m = 0.0;

      g_assert_true (lr_length_parse (gtk_editable_get_text (GTK_EDITABLE (find_entry (dialog, &nth))), LR_UNITS_METRIC, &length_m));
      g_assert_cmpfloat_with_epsilon (length_m, lengths_m[i], 1e-9);
    }
  g_assert_nonnull (strstr (status_of (dialog), "Wall 3 was taped at 4.94"));
  gtk_window_close (GTK_WINDOW (dialog));
  gui_settle (f);
}

static GtkWidget *
find_button (GtkWidget  *widget,
             const char *icon)
{
  GtkWidget *button = GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (widget)), icon) == 0 ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && button == NULL; child = gtk_widget_get_next_sibling (child))
    button = find_button (child, icon);
  return button;
}

/* A row that was one too many goes, and the others are still read in their order: wall 2 of the example becomes wall 1 */
static void
test_remove_wall (GuiFixture    *f,
                  gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  int third = 2, first = 0;
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (find_entry (dialog, &third))));

  g_signal_emit_by_name (find_button (dialog, "list-remove-symbolic"), "clicked");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (find_entry (dialog, &first))), ==, text);
  first = 0;
  g_assert_true (focused (dialog) == find_entry (dialog, &first));
  gtk_window_close (GTK_WINDOW (dialog));
  gui_settle (f);
}

/* A list in centimetres is asked about, and taken as such at one press */
static void
test_small_units (GuiFixture    *f,
                  gconstpointer  data)
{
  GtkWidget *dialog = open_dialog (f);
  const LrRoom *room;

  type_into (dialog, 0, "420");
  type_into (dialog, 1, "360");
  g_assert_nonnull (strstr (status_of (dialog), "write 420"));
  gtk_widget_activate_action (dialog, "room.small-units", NULL);
  g_assert_null (strstr (status_of (dialog), "write"));
  gtk_widget_activate_action (dialog, "room.make", NULL);
  room = lr_plan_get_setup (lr_document_get_plan (f->document))->room;
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].x, 4.2, NEAR_M);
  g_assert_cmpfloat_with_epsilon (room->corners_m[2].y, 3.6, NEAR_M);
  gui_settle (f);
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add ("/room-dialog/rectangle", GuiFixture, NULL, setup, test_rectangle, teardown);
  g_test_add ("/room-dialog/correct-a-wall", GuiFixture, "loft", setup, test_correct_a_wall, teardown);
  g_test_add ("/room-dialog/forgotten-wall", GuiFixture, "loft", setup, test_forgotten_wall, teardown);
  g_test_add ("/room-dialog/remove-wall", GuiFixture, "loft", setup, test_remove_wall, teardown);
  g_test_add ("/room-dialog/small-units", GuiFixture, NULL, setup, test_small_units, teardown);
  g_test_add ("/room-dialog/through-all", GuiFixture, NULL, setup, test_through_all, teardown);
  g_test_add ("/room-dialog/notes-again", GuiFixture, NULL, setup, test_notes_again, teardown);
  g_test_add ("/room-dialog/first-length", GuiFixture, NULL, setup, test_first_length, teardown);
  g_test_add ("/room-dialog/first-length-of-the-walls", GuiFixture, "loft", setup, test_first_length, teardown);

  return g_test_run ();
}
