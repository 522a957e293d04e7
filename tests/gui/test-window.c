/* test-window.c - the whole window under the hand: Tray, Viewfinders, Details, Remarks, files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "app.h"
#include "badge.h"
#include "details_formats.h"
#include "field.h"
#include "file_actions.h"
#include "finder.h"
#include "finder_picture.h"
#include "formats.h"
#include "line.h"
#include "main_window.h"
#include "main_window_private.h"
#include "plan_edit.h"
#include "plan_reader.h"
#include "shortcuts.h"

#include <glib/gstdio.h>

#define LIMIT_MS 5000

static GtkApplication *app;

/* Helpers */

static gboolean
timeout_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Lets the main loop run for a while: two frames and what waits for idle time */
static void
settle (void)
{
  gboolean is_over = FALSE;

  g_timeout_add (60, timeout_cb, &is_over);
  while (!is_over)
    g_main_context_iteration (NULL, TRUE);
}

static LrMainWindow *
open_example (void)
{
  LrMainWindow *window = LR_MAIN_WINDOW (lr_main_window_new (app));

  g_assert_true (lr_main_window_open_example (window));
  gtk_window_set_default_size (GTK_WINDOW (window), 1600, 1000);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  settle ();
  return window;
}

/* Without a question, and nothing of it stays */
static void
close_window (LrMainWindow *window)
{
  gpointer watched = window;

  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  window->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_null (watched);
}

typedef gboolean (*Match) (GtkWidget *widget, gconstpointer data);

static GtkWidget *
find (GtkWidget     *root,
      Match          match,
      gconstpointer  data)
{
  if (match (root, data))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, match, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_field_of (GtkWidget     *widget,
             gconstpointer  key)
{
  return LR_IS_FIELD (widget) && gtk_widget_get_mapped (widget) && g_str_equal (lr_field_get_prop (LR_FIELD (widget))->key, key);
}

static gboolean
is_entry (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_ENTRY (widget);
}

static gboolean
is_drop_down (GtkWidget     *widget,
              gconstpointer  data)
{
  return GTK_IS_DROP_DOWN (widget);
}

/* The entry of the property @key in Details */
static GtkWidget *
entry_of (LrMainWindow *window,
          const char   *key)
{
  GtkWidget *field = find (GTK_WIDGET (window->details), is_field_of, key);

  g_assert_nonnull (field);
  return find (field, is_entry, NULL);
}

static void
type (GtkWidget  *entry,
      const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static const LrItem *
get_item (LrMainWindow *window,
          const char   *id)
{
  return lr_plan_find (lr_document_get_plan (window->document), id);
}

static void
activate (LrMainWindow *window,
          const char   *action)
{
  g_action_group_activate_action (G_ACTION_GROUP (window), action, NULL);
}

/* Details */

static void
test_details (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *entry;

  lr_document_select (window->document, "camera-b");
  settle ();
  entry = entry_of (window, "lens-height-mm");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "1.24\u00a0m");

  type (entry, "135 cm");
  g_assert_cmpfloat_with_epsilon (get_item (window, "camera-b")->camera.lens_height_m, 1.35, 1e-9);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "1.35\u00a0m");
  g_assert_true (entry == entry_of (window, "lens-height-mm"));

  activate (window, "undo");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "1.24\u00a0m");
  g_assert_false (lr_document_has_changes (window->document));
  close_window (window);
}

static gboolean
is_refusal (GtkWidget     *widget,
            gconstpointer  data)
{
  return gtk_widget_has_css_class (widget, "refused");
}

/* Nonsense stays in the field, marked, with the reason right under it, and the plan stays as it is */
static void
test_refused (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *entry, *reason;
  graphene_point_t under;

  lr_document_select (window->document, "camera-b");
  settle ();
  entry = entry_of (window, "lens-height-mm");
  type (entry, "99");
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "99");
  gtk_test_accessible_assert_state (entry, GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_false (lr_document_has_changes (window->document));
  settle ();
  reason = find (GTK_WIDGET (window->details), is_refusal, NULL);
  g_assert_nonnull (reason);
  g_assert_true (gtk_widget_compute_point (reason, entry, &GRAPHENE_POINT_INIT (0.0f, 0.0f), &under));
  g_assert_cmpfloat (fabs (under.y - (float) gtk_widget_get_height (entry)), <, 12.0);

  type (entry, "1.5");
  g_assert_false (gtk_widget_has_css_class (entry, "error"));
  g_assert_null (find (GTK_WIDGET (window->details), is_refusal, NULL));
  g_assert_cmpfloat_with_epsilon (get_item (window, "camera-b")->camera.lens_height_m, 1.5, 1e-9);
  close_window (window);
}

/* What is being typed survives a change from elsewhere; a field that nobody touches follows it */
static void
test_typing_survives (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *height, *x;
  g_autoptr (GError) error = NULL;

  lr_document_select (window->document, "camera-b");
  settle ();
  height = entry_of (window, "lens-height-mm");
  x = entry_of (window, "x-mm");
  gtk_editable_set_text (GTK_EDITABLE (height), "1.");
  lr_document_preview (window->document, lr_plan_move (lr_document_get_committed (window->document), "camera-b",
                                                       lr_vec2 (4.5, 3.7), &error));
  g_assert_no_error (error);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (height)), ==, "1.");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (x)), ==, "4.50\u00a0m");
  lr_document_end_preview (window->document, FALSE, NULL);
  close_window (window);
}

static gboolean
is_expander (GtkWidget     *widget,
             gconstpointer  data)
{
  return GTK_IS_EXPANDER (widget);
}

/* Every thing of the example can be taken in hand, with "More" open, in both units */
static void
test_every_item (void)
{
  LrMainWindow *window = open_example ();
  const LrSetup *setup = lr_plan_get_setup (lr_document_get_plan (window->document));
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < setup->items->len; i++)
    g_ptr_array_add (ids, g_strdup (((const LrItem *) g_ptr_array_index (setup->items, i))->id));
  lr_document_select (window->document, "camera-b");
  gtk_expander_set_expanded (GTK_EXPANDER (find (GTK_WIDGET (window->details), is_expander, NULL)), TRUE);
  for (int units = 0; units < 2; units++)
    {
      lr_document_set_units (window->document, (LrUnits) units);
      for (guint i = 0; i < ids->len; i++)
        {
          lr_document_select (window->document, g_ptr_array_index (ids, i));
          gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
        }
    }
  g_assert_false (lr_document_has_changes (window->document));
  close_window (window);
}

static gboolean
is_more (GtkWidget     *widget,
         gconstpointer  data)
{
  return GTK_IS_EXPANDER (widget) && gtk_widget_get_mapped (widget);
}

/* What choosing the name of that index in the field's list makes of the plan */
static LrPlan *
choose_name (LrMainWindow *window,
             const char   *key,
             guint         index)
{
  const LrProp *prop = lr_field_get_prop (LR_FIELD (find (GTK_WIDGET (window->details), is_field_of, key)));
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_details_take_name (lr_document_get_plan (window->document), get_item (window, "camera-a"), prop, index, &error);

  g_assert_no_error (error);
  return next;
}

/* A name sets what it names: both sides of a sensor, the factor of the converter behind the lens that is in the kit */
static void
test_named_sizes (void)
{
  LrMainWindow *window = open_example ();
  gsize n, n_factors;
  const LrSensorFormat *formats = lr_sensor_formats (&n);
  const LrFactor *converters = lr_format_factors ("converter", &n_factors);
  const LrCameraReading *camera;
  g_autoptr (LrPlan) sized = NULL, converted = NULL;

  lr_document_select (window->document, "camera-a");
  settle ();
  gtk_expander_set_expanded (GTK_EXPANDER (find (GTK_WIDGET (window->details), is_more, NULL)), TRUE);
  settle ();
  sized = choose_name (window, "sensor-height-mm", (guint) n - 1);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (sized, "camera-a")->camera.sensor_width_m, formats[n - 1].width_m, 1e-7);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (sized, "camera-a")->camera.sensor_height_m, formats[n - 1].height_m, 1e-7);
  converted = choose_name (window, "converter", (guint) n_factors - 1);
  g_assert_cmpfloat (lr_plan_find_kit (converted, get_item (window, "camera-a")->camera.lens)->item->lens.converter, ==,
                     converters[n_factors - 1].value);

  type (entry_of (window, "converter"), "1.25");
  camera = lr_study_find_camera (lr_document_get_study (window->document), "camera-a");
  g_assert_cmpfloat (camera->converter, ==, 1.25);
  g_assert_cmpfloat (camera->focal_m, ==, 1.25 * get_item (window, "camera-a")->camera.focal_m);
  g_assert_true (gtk_widget_is_sensitive (entry_of (window, "converter")));

  gtk_drop_down_set_selected (GTK_DROP_DOWN (find (find (GTK_WIDGET (window->details), is_field_of, "lens"), is_drop_down, NULL)), 0);
  settle ();
  g_assert_false (gtk_widget_is_sensitive (entry_of (window, "converter")));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry_of (window, "converter"))), ==, "");
  close_window (window);
}

static gboolean
is_picture (GtkWidget  *widget,
            const void *data)
{
  return LR_IS_FINDER_PICTURE (widget);
}

/* Checksum of the pixels that a widget draws; (transfer full) */
static char *
picture_sum (GtkWidget *widget)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  cairo_t *cr = cairo_create (image);
  GskRenderNode *node;
  char *sum;

  GTK_WIDGET_GET_CLASS (widget)->snapshot (widget, snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);
  gsk_render_node_draw (node, cr);
  gsk_render_node_unref (node);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (image),
                                     (gsize) cairo_image_surface_get_stride (image)
                                       * (gsize) cairo_image_surface_get_height (image));
  cairo_surface_destroy (image);
  return sum;
}

/* A converter behind a lens of the kit changes what the camera sees, though nothing in the set-up is another */
static void
test_converter_seen (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *picture = find (GTK_WIDGET (window), is_picture, NULL);
  const char *lens = get_item (window, "camera-a")->camera.lens;
  g_autofree char *before = picture_sum (picture), *same = picture_sum (picture), *after = NULL;
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_set_kit_number (lr_document_get_plan (window->document), lens, "converter", 1.4, &error);

  g_assert_no_error (error);
  lr_document_commit (window->document, next, "converter");
  settle ();
  after = picture_sum (picture);
  g_assert_cmpstr (before, ==, same);
  g_assert_cmpstr (before, !=, after);
  close_window (window);
}

/* A vertical delivery is cut from the middle of what is recorded, which stays in sight: the pointer works in the cut */
static void
test_vertical (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *picture = find (GTK_WIDGET (window), is_picture, NULL);
  int height_px = gtk_widget_get_height (picture);
  LrChange change = { "camera-a", "aspect", LR_ASPECT_9_16 };
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_change (lr_document_get_plan (window->document), &change, 1, &error);
  graphene_rect_t area;

  g_assert_no_error (error);
  lr_document_commit (window->document, next, "9:16");
  settle ();
  g_assert_true (lr_finder_picture_get_area (LR_FINDER_PICTURE (picture), &area));
  g_assert_cmpfloat_with_epsilon (area.size.width / area.size.height, 9.0 / 16.0, 0.01);
  g_assert_cmpfloat_with_epsilon (area.origin.x + 0.5f * area.size.width, 0.5 * gtk_widget_get_width (picture), 1.0);
  g_assert_cmpint (ABS (gtk_widget_get_height (picture) - height_px), <=, 2);
  close_window (window);
}

static void
test_lens (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *drop_down;

  lr_document_select (window->document, "camera-b");
  settle ();
  drop_down = find (find (GTK_WIDGET (window->details), is_field_of, "lens"), is_drop_down, NULL);
  for (guint i = 1; i < g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down))); i++)
    {
      const LrItem *item;
      const LrKitEntry *lens;

      gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), i);
      item = get_item (window, "camera-b");
      lens = lr_plan_find_kit (lr_document_get_plan (window->document), item->camera.lens);
      g_assert_nonnull (lens);
      g_assert_cmpfloat (item->camera.focal_m, >=, lens->item->lens.focal_min_m);
      g_assert_cmpfloat (item->camera.focal_m, <=, lens->item->lens.focal_max_m);
    }
  close_window (window);
}

/* The last in the list puts the socket on a circuit that was not in the plan, in one step */
static void
test_new_circuit (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *drop_down;
  guint n_options, n_items = lr_plan_get_setup (lr_document_get_plan (window->document))->items->len;
  g_autofree char *before = NULL;
  const LrItem *circuit;

  lr_document_select (window->document, "socket-1");
  settle ();
  before = g_strdup (get_item (window, "socket-1")->socket.circuit);
  drop_down = find (find (GTK_WIDGET (window->details), is_field_of, "circuit"), is_drop_down, NULL);
  n_options = g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down)));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), n_options - 1);

  circuit = get_item (window, get_item (window, "socket-1")->socket.circuit);
  g_assert_cmpint (circuit->kind, ==, LR_ITEM_CIRCUIT);
  g_assert_cmpstr (circuit->id, !=, before);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (window->document))->items->len, ==, n_items + 1);
  settle ();
  drop_down = find (find (GTK_WIDGET (window->details), is_field_of, "circuit"), is_drop_down, NULL);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down))), ==, n_options + 1);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down)), ==, n_options - 1);

  activate (window, "undo");
  g_assert_cmpstr (get_item (window, "socket-1")->socket.circuit, ==, before);
  g_assert_false (lr_document_has_changes (window->document));
  close_window (window);
}

/* Room and job, when nothing is in hand */
static void
test_room (void)
{
  LrMainWindow *window = open_example ();

  lr_document_select (window->document, NULL);
  settle ();
  type (entry_of (window, "height-mm"), "3.1");
  g_assert_cmpfloat_with_epsilon (lr_plan_get_setup (lr_document_get_plan (window->document))->room->height_m, 3.1, 1e-9);
  type (entry_of (window, "title"), "Another title");
  g_assert_cmpstr (lr_document_get_plan (window->document)->job->title, ==, "Another title");
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->title_label)), ==, "Another title");
  type (entry_of (window, "length-mm"), "7.5");
  g_assert_cmpfloat_with_epsilon (lr_plan_get_setup (lr_document_get_plan (window->document))->room->corners_m[1].x, 7.5, 1e-9);
  close_window (window);
}

static gboolean
is_label_of (GtkWidget     *widget,
             gconstpointer  text)
{
  return GTK_IS_LABEL (widget) && g_str_equal (gtk_label_get_text (GTK_LABEL (widget)), text);
}

/* Another room with as many walls: their names are others */
static void
test_wall_names (void)
{
  static const LrVec2 mirrored_m[] = { { 0.0, 0.0 }, { 7.2, 0.0 }, { 7.2, 5.4 }, { 0.95, 5.4 }, { 0.0, 4.45 } };
  LrMainWindow *window = open_example ();
  GtkWidget *root = GTK_WIDGET (window);
  g_autoptr (GError) error = NULL;

  lr_document_select (window->document, NULL);
  settle ();
  g_assert_nonnull (find (root, is_label_of, "north-east wall"));
  g_assert_null (find (root, is_label_of, "north-west wall"));
  lr_document_commit (window->document,
                      lr_plan_set_corners (lr_document_get_plan (window->document), mirrored_m, G_N_ELEMENTS (mirrored_m), &error),
                      "Room");
  g_assert_no_error (error);
  settle ();
  g_assert_null (find (root, is_label_of, "north-east wall"));
  g_assert_nonnull (find (root, is_label_of, "north-west wall"));
  close_window (window);
}

/* Remarks */

static gboolean
is_list_view (GtkWidget     *widget,
              gconstpointer  data)
{
  return GTK_IS_LIST_VIEW (widget);
}

/* The remark in hand stays selected while everything runs, and Mend is one step */
static void
test_remarks (void)
{
  LrMainWindow *window = open_example ();
  GtkSelectionModel *model =
    gtk_list_view_get_model (GTK_LIST_VIEW (find (GTK_WIDGET (window->remarks), is_list_view, NULL)));
  gpointer row;
  g_autofree char *key = NULL;
  guint n_fix = lr_document_get_remarks (window->document)->n[LR_GRADE_FIX];
  g_autoptr (GError) error = NULL;

  gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (model), 0);
  g_assert_nonnull (lr_document_get_remark (window->document));
  key = g_strdup (lr_document_get_remark (window->document)->key);
  row = gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model));
  for (int i = 0; i < 20; i++)
    {
      lr_document_preview (window->document, lr_plan_move (lr_document_get_committed (window->document), "wenna",
                                                           lr_vec2 (2.6 - 0.002 * i, 2.95), &error));
      g_assert_no_error (error);
      g_assert_true (gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model)) == row);
    }
  lr_document_end_preview (window->document, FALSE, NULL);
  g_assert_cmpstr (lr_document_get_remark (window->document)->key, ==, key);

  activate (window, "mend");
  g_assert_cmpuint (lr_document_get_remarks (window->document)->n[LR_GRADE_FIX], <, n_fix);
  activate (window, "undo");
  g_assert_cmpuint (lr_document_get_remarks (window->document)->n[LR_GRADE_FIX], ==, n_fix);
  close_window (window);
}

/* Tray */

static gboolean
is_named (GtkWidget     *widget,
          gconstpointer  name)
{
  return g_strcmp0 (g_object_get_data (G_OBJECT (widget), "lr-name"), name) == 0;
}

static void
test_tray (void)
{
  LrMainWindow *window = open_example ();
  guint n = lr_plan_get_setup (lr_document_get_plan (window->document))->items->len;
  GtkWidget *flag = find (GTK_WIDGET (window->tray), is_named, "kit:flag"), *chair = find (GTK_WIDGET (window->tray), is_named, "room:chair");

  g_assert_nonnull (flag);
  g_signal_emit_by_name (gtk_widget_get_parent (flag), "row-activated", flag);
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (window->document))->items->len, ==, n + 1);
  g_assert_nonnull (lr_document_get_selected (window->document));
  g_signal_emit_by_name (chair, "clicked");
  g_assert_cmpuint (lr_plan_get_setup (lr_document_get_plan (window->document))->items->len, ==, n + 2);
  close_window (window);
}

/* Viewfinders */

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

/* The window as a whole */

static void
test_setups (void)
{
  LrMainWindow *window = open_example ();
  const LrPlan *plan = lr_document_get_plan (window->document);
  g_autofree char *first = g_strdup (lr_plan_get_setup (plan)->name);
  g_autoptr (GError) error = NULL;

  lr_document_commit (window->document, lr_plan_copy_setup (plan, "as found", &error), "copy");
  g_assert_no_error (error);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, "as found");
  activate (window, "previous-setup");
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, first);
  activate (window, "next-setup");
  activate (window, "remove-setup");
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (window->setup_label)), ==, first);
  close_window (window);
}

/* F6 goes through the panels and comes back */
static void
test_panels (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *panels[] = {
    GTK_WIDGET (window->tray), GTK_WIDGET (window->canvas), GTK_WIDGET (window->viewfinders), GTK_WIDGET (window->details),
    GTK_WIDGET (window->remarks),
  };

  gtk_window_set_focus (GTK_WINDOW (window), NULL);
  for (int i = 0; i < 2 * (int) G_N_ELEMENTS (panels); i++)
    {
      GtkWidget *focus;

      activate (window, "next-panel");
      focus = gtk_window_get_focus (GTK_WINDOW (window));
      g_assert_nonnull (focus);
      g_test_message ("%d %s", i, G_OBJECT_TYPE_NAME (focus));
      g_assert_true (focus == panels[i % 5] || gtk_widget_is_ancestor (focus, panels[i % 5]));
    }
  close_window (window);
}

static gboolean
has_unnamed_control (GtkWidget     *widget,
                     gconstpointer  data)
{
  gboolean is_control = GTK_IS_BUTTON (widget) || GTK_IS_ENTRY (widget) || GTK_IS_DROP_DOWN (widget) || GTK_IS_CHECK_BUTTON (widget);
  gboolean is_inner = gtk_widget_get_ancestor (widget, GTK_TYPE_MENU_BUTTON) != NULL
                      || gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) != NULL
                      || (GTK_IS_BUTTON (widget) && gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) != NULL);

  if (!is_control || is_inner || !gtk_widget_get_visible (widget))
    return FALSE;
  if (GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL)
    return FALSE;
  if (GTK_IS_CHECK_BUTTON (widget) && gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)) != NULL)
    return FALSE;

  return !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL);
}

/* Whatever can be pressed, typed in or chosen from has a name */
static void
test_names (void)
{
  LrMainWindow *window = open_example ();
  static const char *const hands[] = { NULL, "camera-b", "wenna", "light-1" };

  for (gsize i = 0; i < G_N_ELEMENTS (hands); i++)
    {
      GtkWidget *unnamed;

      lr_document_select (window->document, hands[i]);
      settle ();
      unnamed = find (GTK_WIDGET (window), has_unnamed_control, NULL);
      if (unnamed != NULL)
        g_test_message ("%s, %s, in %s in %s", G_OBJECT_TYPE_NAME (unnamed), gtk_widget_get_tooltip_text (unnamed),
                        G_OBJECT_TYPE_NAME (gtk_widget_get_parent (unnamed)),
                        G_OBJECT_TYPE_NAME (gtk_widget_get_parent (gtk_widget_get_parent (unnamed))));
      g_assert_null (unnamed);
    }
  close_window (window);
}

/* Icons that are asked for by name are there */
static void
test_icons (void)
{
  static const char *const names[] = {
    "edit-undo-symbolic", "edit-redo-symbolic", "open-menu-symbolic", "list-add-symbolic", "list-remove-symbolic",
    "edit-copy-symbolic", "user-trash-symbolic", "window-close-symbolic", "pan-down-symbolic",
  };
  GtkIconTheme *theme = gtk_icon_theme_get_for_display (gdk_display_get_default ());

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    g_assert_true (gtk_icon_theme_has_icon (theme, names[i]));
}

/* Narrow and wide, light and dark */
static void
test_looks (void)
{
  static const int sizes[][2] = { { 1280, 720 }, { 1000, 640 }, { 1900, 1100 } };
  LrMainWindow *window = open_example ();

  lr_document_set_shown (window->document, LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_POWER);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      gtk_window_set_default_size (GTK_WINDOW (window), sizes[i][0], sizes[i][1]);
      settle ();
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, sizes[i][0]);
      g_assert_cmpint (gtk_widget_get_height (GTK_WIDGET (window)), <=, sizes[i][1]);
    }
  g_action_group_change_action_state (G_ACTION_GROUP (app), "dark", g_variant_new_boolean (TRUE));
  settle ();
  g_assert_cmpint (lr_widget_get_theme_id (GTK_WIDGET (window->canvas)), ==, LR_THEME_DARK);
  g_action_group_change_action_state (G_ACTION_GROUP (app), "dark", g_variant_new_boolean (FALSE));
  settle ();
  g_assert_cmpint (lr_widget_get_theme_id (GTK_WIDGET (window->canvas)), ==, LR_THEME_LIGHT);
  close_window (window);
}

static GtkWindow *
find_dialog (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (toplevels, i);

      if (!LR_IS_MAIN_WINDOW (window) && gtk_window_get_transient_for (window) != NULL)
        return window;
    }
  return NULL;
}

/* A window with changes asks before it goes; staying keeps it */
static void
test_question (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;
  g_autoptr (GError) error = NULL;

  lr_document_commit (window->document, lr_plan_remove (lr_document_get_plan (window->document), "camera-a", &error), "remove");
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  dialog = find_dialog ();
  g_assert_true (GTK_IS_MESSAGE_DIALOG (dialog));
  gtk_dialog_response (GTK_DIALOG (dialog), 0);
  settle ();
  g_assert_null (find_dialog ());
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (window)));
  close_window (window);
}

/* A file that is no plan: said in a dialog, and what was open is not touched */
static void
test_bad_file (void)
{
  LrMainWindow *window = open_example ();
  LrPlan *plan = lr_document_get_plan (window->document);
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "lookroom-bad.lookroom", NULL);
  GtkWindow *dialog;

  g_assert_true (g_file_set_contents (path, "{ }", -1, NULL));
  lr_main_window_open_path (window, path);
  settle ();
  dialog = find_dialog ();
  g_assert_true (GTK_IS_MESSAGE_DIALOG (dialog));
  gtk_window_destroy (dialog);
  g_assert_true (lr_document_get_plan (window->document) == plan);
  g_unlink (path);
  close_window (window);
}

static void
test_page (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;

  activate (window, "page");
  settle ();
  dialog = find_dialog ();
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (dialog));
  gtk_window_close (dialog);
  settle ();
  close_window (window);
}

static void
test_shortcuts (void)
{
  LrMainWindow *window = open_example ();
  GtkWindow *dialog;

  activate (window, "show-shortcuts");
  settle ();
  dialog = find_dialog ();
  g_assert_nonnull (dialog);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (dialog));
  gtk_window_close (dialog);
  settle ();
  close_window (window);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;

  g_setenv ("XDG_CACHE_HOME", g_get_tmp_dir (), TRUE);
  gtk_test_init (&argc, &argv, NULL);
  app = lr_app_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (app), NULL, &error);
  g_assert_no_error (error);
  g_application_hold (G_APPLICATION (app));

  g_test_add_func ("/window/details", test_details);
  g_test_add_func ("/window/refused", test_refused);
  g_test_add_func ("/window/typing-survives", test_typing_survives);
  g_test_add_func ("/window/every-item", test_every_item);
  g_test_add_func ("/window/new-circuit", test_new_circuit);
  g_test_add_func ("/window/lens", test_lens);
  g_test_add_func ("/window/converter-seen", test_converter_seen);
  g_test_add_func ("/window/vertical", test_vertical);
  g_test_add_func ("/window/named-sizes", test_named_sizes);
  g_test_add_func ("/window/room", test_room);
  g_test_add_func ("/window/wall-names", test_wall_names);
  g_test_add_func ("/window/remarks", test_remarks);
  g_test_add_func ("/window/tray", test_tray);
  g_test_add_func ("/window/viewfinders", test_viewfinders);
  g_test_add_func ("/window/setups", test_setups);
  g_test_add_func ("/window/panels", test_panels);
  g_test_add_func ("/window/names", test_names);
  g_test_add_func ("/window/icons", test_icons);
  g_test_add_func ("/window/looks", test_looks);
  g_test_add_func ("/window/question", test_question);
  g_test_add_func ("/window/bad-file", test_bad_file);
  g_test_add_func ("/window/page", test_page);
  g_test_add_func ("/window/shortcuts", test_shortcuts);
  return g_test_run ();
}
