/* test-viewfinders.c - the viewfinders in the window: which cameras, lines, the cut, drags
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "finder.h"
#include "finder_picture.h"
#include "grab.h"
#include "line.h"
#include "plan_edit.h"
#include "pointer.h"
#include "settings.h"
#include "viewfinder.h"

static gboolean
is_finder (GtkWidget     *widget,
           gconstpointer  camera)
{
  return LR_IS_FINDER (widget) && g_strcmp0 (lr_finder_get_camera (LR_FINDER (widget)), camera) == 0;
}

/* A camera that goes leaves its place to another; both can go */
static void
test_viewfinders (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *root = GTK_WIDGET (window->viewfinders);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (find (root, is_finder, "camera-a"));
  g_assert_nonnull (find (root, is_finder, "camera-b"));
  lr_document_commit (window->document, lr_plan_remove (lr_document_get_plan (window->document), "camera-a", &error), "remove");
  g_assert_null (find (root, is_finder, "camera-a"));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  lr_document_commit (window->document, lr_plan_remove (lr_document_get_plan (window->document), "camera-b", &error), "remove");
  g_assert_no_error (error);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  activate (window, "undo");
  activate (window, "undo");
  g_assert_nonnull (find (root, is_finder, "camera-a"));
  close_window (window);
}

static gboolean
is_picture_of (GtkWidget     *widget,
               gconstpointer  camera)
{
  return LR_IS_FINDER_PICTURE (widget) && gtk_widget_get_mapped (widget)
         && g_strcmp0 (lr_finder_picture_get_camera (LR_FINDER_PICTURE (widget)), camera) == 0;
}

static LrFinderPicture *
picture_of (LrMainWindow *window,
            const char   *camera)
{
  GtkWidget *picture = find (GTK_WIDGET (window->viewfinders), is_picture_of, camera);

  g_assert_nonnull (picture);
  return LR_FINDER_PICTURE (picture);
}

static void
set_number (LrMainWindow *window,
            const char   *id,
            const char   *key,
            double        value)
{
  const LrChange change = { id, key, value };
  GError *error = NULL;
  LrPlan *next = lr_plan_change (lr_document_get_plan (window->document), &change, 1, &error);

  g_assert_no_error (error);
  lr_document_commit (window->document, next, "change");
  settle ();
}

static double
delivered_share (LrFinderPicture *picture)
{
  graphene_rect_t area;

  g_assert_true (lr_finder_picture_get_area (picture, &area));
  return (double) (area.size.width / (float) gtk_widget_get_width (GTK_WIDGET (picture)));
}

static gboolean
too_late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Until the levels of light of the plan shown have come from their thread */
static void
wait_for_light (LrMainWindow *window)
{
  gboolean is_late = FALSE;
  guint source = g_timeout_add_seconds (20, too_late_cb, &is_late);

  while (!lr_document_has_current_levels (window->document) && !is_late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (is_late);
  g_source_remove (source);
}

/* The picture as it is painted now, in its light; pointers of the eyes and all */
static cairo_surface_t *
grab_picture (LrMainWindow *window,
              const char   *camera)
{
  wait_for_light (window);
  settle ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return grab (GTK_WIDGET (picture_of (window, camera)));
}

/* Whatever a camera sees is painted where it is: a clock, a socket, a lead that move */
static void
test_painted_anew (void)
{
  static const struct { const char *id, *key; double there, elsewhere; } moves[] = {
    { "wall-clock", "height-mm", 1.3, 1.4 },
    { "socket-3", "height-mm", 1.2, 1.3 },
    { "socket-3", "along-mm", 1.6, 1.3 },
  };
  LrMainWindow *window = open_example ();

  set_number (window, "socket-3", "along-mm", 1.6);
  set_number (window, "wall-clock", "length-mm", 0.3);
  set_number (window, "wall-clock", "width-mm", 0.3);
  set_number (window, "wall-clock", "y-mm", 4.2); /* beside the subject */
  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++)
    {
      cairo_surface_t *before, *after;

      set_number (window, moves[i].id, moves[i].key, moves[i].there);
      before = grab_picture (window, "camera-a");
      set_number (window, moves[i].id, moves[i].key, moves[i].elsewhere);
      after = grab_picture (window, "camera-a");
      g_test_message ("%s %s", moves[i].id, moves[i].key);
      g_assert_cmpuint (n_different (before, after), >, 20);
      cairo_surface_destroy (before);
      cairo_surface_destroy (after);
    }
  close_window (window);
}

static double
mean_green (cairo_surface_t *picture)
{
  const guint32 *pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (picture);
  gsize n = (gsize) cairo_image_surface_get_stride (picture) / 4 * (gsize) cairo_image_surface_get_height (picture);
  double sum = 0.0;

  for (gsize i = 0; i < n; i++)
    sum += pixels[i] >> 8 & 0xff;
  return sum / (double) n;
}

/* Less light, a smaller stop, a denser filter make it darker, a higher ISO brighter; undone, it is as it was */
static void
test_lit (void)
{
  static const struct { const char *id, *key; double value; int sign; } changes[] = {
    { "light-1", "dim-pct", 0.05, -1 },
    { "camera-a", "f-number", 5.6, -1 },
    { "camera-a", "nd-stops", 2.0, -1 },
    { "camera-a", "iso", 800.0, 1 },
    { "window-2", "blind", LR_BLIND_DOWN, -1 },
  };
  LrMainWindow *window = open_example ();
  cairo_surface_t *first = grab_picture (window, "camera-a");
  double before = mean_green (first);

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      cairo_surface_t *after, *again;

      set_number (window, changes[i].id, changes[i].key, changes[i].value);
      after = grab_picture (window, "camera-a");
      g_test_message ("%s %s: %.1f, was %.1f", changes[i].id, changes[i].key, mean_green (after), before);
      g_assert_cmpfloat (changes[i].sign * (mean_green (after) - before), >, 2.0);
      activate (window, "undo");
      again = grab_picture (window, "camera-a");
      g_assert_cmpuint (n_different (first, again), ==, 0);
      cairo_surface_destroy (after);
      cairo_surface_destroy (again);
    }
  cairo_surface_destroy (first);
  close_window (window);
}

/* Each is an action with a state, lasts, and shows at once: an upright frame is wider with what is recorded round it */
static void
test_lines (void)
{
  static const struct { const char *action; guint bit; } switches[] = {
    { "show-thirds", LR_FRAME_THIRDS }, { "show-safe-areas", LR_FRAME_SAFE_AREAS }, { "show-recorded", LR_FRAME_RECORDED },
  };
  LrMainWindow *window = open_example ();
  double with_recorded;

  set_number (window, "camera-a", "aspect", LR_ASPECT_9_16);
  with_recorded = delivered_share (picture_of (window, "camera-a"));
  for (gsize i = 0; i < G_N_ELEMENTS (switches); i++)
    {
      cairo_surface_t *before = grab_picture (window, "camera-a"), *after;

      g_assert_true (lr_document_get_frame_lines (window->document) & switches[i].bit);
      g_action_group_change_action_state (G_ACTION_GROUP (window), switches[i].action, g_variant_new_boolean (FALSE));
      after = grab_picture (window, "camera-a");
      g_assert_cmpuint (n_different (before, after), >, 100);
      cairo_surface_destroy (before);
      cairo_surface_destroy (after);
      g_assert_false (lr_document_get_frame_lines (window->document) & switches[i].bit);
      g_assert_false (lr_settings_get_frame_lines () & switches[i].bit);
    }
  settle ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpfloat_with_epsilon (delivered_share (picture_of (window, "camera-a")), with_recorded, 0.02);

  for (gsize i = 0; i < G_N_ELEMENTS (switches); i++)
    g_action_group_change_action_state (G_ACTION_GROUP (window), switches[i].action, g_variant_new_boolean (TRUE));
  g_assert_cmpuint (lr_settings_get_frame_lines (), ==, LR_FRAME_ALL_LINES);
  close_window (window);
}

/* What was under the pointer at the press is under it at the release, also where only a part of what is recorded is delivered */
static void
test_drag_upright (void)
{
  LrMainWindow *window = open_example ();
  LrFinderPicture *picture;
  graphene_rect_t area;
  LrVec2 before, after, from, by = { 24.0, -15.0 };
  const LrCameraReading *camera;

  set_number (window, "camera-a", "aspect", LR_ASPECT_9_16);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  picture = picture_of (window, "camera-a");
  g_assert_true (lr_finder_picture_get_area (picture, &area));
  camera = lr_study_find_camera (lr_document_get_study (window->document), "camera-a");
  before = lr_vec2 (camera->eyes_across, camera->eyes_down);

  from = lr_vec2 ((double) (area.origin.x + 0.5f * area.size.width), (double) (area.origin.y + 0.5f * area.size.height));
  pointer_drag (GTK_WIDGET (picture), GDK_BUTTON_PRIMARY, from, lr_vec2_add (from, by));
  settle ();
  camera = lr_study_find_camera (lr_document_get_study (window->document), "camera-a");
  after = lr_vec2 (camera->eyes_across, camera->eyes_down);
  g_assert_cmpfloat_with_epsilon (after.x - before.x, by.x / (double) area.size.width, 0.02);
  g_assert_cmpfloat_with_epsilon (after.y - before.y, by.y / (double) area.size.height, 0.01);
  activate (window, "undo");
  camera = lr_study_find_camera (lr_document_get_study (window->document), "camera-a");
  g_assert_cmpfloat_with_epsilon (camera->eyes_across, before.x, 1e-6);
  g_assert_cmpfloat_with_epsilon (camera->eyes_down, before.y, 1e-6);
  close_window (window);
}

static gboolean
is_line_with (GtkWidget     *widget,
              gconstpointer  text)
{
  return LR_IS_LINE (widget) && gtk_widget_get_mapped (widget) && strstr (lr_line_get_text (LR_LINE (widget)), text) != NULL;
}

/* Side by side: two pictures, and the sentence of the cut; back again one above the other */
static void
test_cut (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *root = GTK_WIDGET (window->viewfinders);
  LrFinderPicture *picture;
  graphene_rect_t area;
  double across;

  g_assert_null (find (root, is_line_with, "the cut jumps"));
  activate (window, "other-pictures");
  settle ();
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_nonnull (find (root, is_line_with, "the cut jumps"));
  g_assert_nonnull (find (root, is_picture_of, "camera-a"));
  g_assert_nonnull (find (root, is_picture_of, "camera-b"));
  g_assert_true (lr_settings_get_cut ());

  /* the hand pans as in a viewfinder */
  picture = picture_of (window, "camera-b");
  across = lr_study_find_camera (lr_document_get_study (window->document), "camera-b")->eyes_across;
  pointer_drag (GTK_WIDGET (picture), GDK_BUTTON_PRIMARY, lr_vec2 (60.0, 40.0), lr_vec2 (80.0, 40.0));
  settle ();
  g_assert_true (lr_finder_picture_get_area (picture, &area));
  g_assert_cmpfloat_with_epsilon (lr_study_find_camera (lr_document_get_study (window->document), "camera-b")->eyes_across - across,
                                  20.0 / (double) area.size.width, 0.01);
  activate (window, "other-pictures");
  g_assert_false (lr_settings_get_cut ());
  close_window (window);
}

/* From the picture back by Frame…: a width of background, then a focus, each one step of the history */
static void
test_frame_fields (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *finder = find (GTK_WIDGET (window->viewfinders), is_finder, "camera-a"), *field, *focus;
  double now_m = lr_study_find_camera (lr_document_get_study (window->document), "camera-a")->behind_field_w_m, wanted_m;
  double focus_m = lr_study_find_camera (lr_document_get_study (window->document), "camera-a")->focus_m;
  g_autofree char *text = NULL;
  GError *error = NULL;

  /* with a lens that is not named any focal length will do */
  lr_document_commit (window->document, lr_plan_change_text (lr_document_get_plan (window->document), "camera-a", "lens", "", &error), "lens");
  g_assert_no_error (error);
  activate (window, "frame");
  settle ();
  field = find (finder, is_field_of, "background-mm");
  g_assert_nonnull (field);
  wanted_m = 0.01 * floor (92.0 * now_m);
  text = g_strdup_printf ("%.2f", wanted_m);
  type (find (field, is_entry, NULL), text);
  settle ();
  g_assert_cmpfloat_with_epsilon (lr_study_find_camera (lr_document_get_study (window->document), "camera-a")->behind_field_w_m,
                                  wanted_m, 0.01 * wanted_m);
  activate (window, "undo");

  focus = find (finder, is_drop_down, NULL);
  g_assert_nonnull (focus);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (focus), g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (focus))) - 1);
  settle ();
  g_assert_cmpfloat (lr_study_find_camera (lr_document_get_study (window->document), "camera-a")->focus_m, >, focus_m + 0.5);
  activate (window, "undo");
  g_assert_cmpfloat_with_epsilon (lr_study_find_camera (lr_document_get_study (window->document), "camera-a")->focus_m, focus_m, 1e-6);
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/window/viewfinders", test_viewfinders);
  g_test_add_func ("/window/painted-anew", test_painted_anew);
  g_test_add_func ("/window/lit", test_lit);
  g_test_add_func ("/window/lines", test_lines);
  g_test_add_func ("/window/drag-upright", test_drag_upright);
  g_test_add_func ("/window/cut", test_cut);
  g_test_add_func ("/window/frame-fields", test_frame_fields);
  return g_test_run ();
}
