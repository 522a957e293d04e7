/* test-details.c - Details under the hand: every kind of thing, its fields, and the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "beside.h"
#include "details_formats.h"
#include "finder_picture.h"
#include "lamp_row.h"
#include "source_table.h"

#include <glib/gstdio.h>

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

/* Saved, or asked whether to, while a field is being typed in: what stands there counts, and the cursor stays */
static void
test_typed_is_saved (void)
{
  LrMainWindow *window = open_example ();
  GtkWidget *height, *text;

  lr_document_select (window->document, "camera-b");
  settle ();
  height = entry_of (window, "lens-height-mm");
  gtk_widget_grab_focus (height);
  text = gtk_window_get_focus (GTK_WINDOW (window));
  g_assert_true (GTK_IS_TEXT (text));
  gtk_editable_set_text (GTK_EDITABLE (height), "1.41 m");
  gtk_editable_set_position (GTK_EDITABLE (height), 3);
  lr_beside_take_typed (GTK_WINDOW (window));
  g_assert_cmpfloat_with_epsilon (get_item (window, "camera-b")->camera.lens_height_m, 1.41, 1e-9);
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == text);
  g_assert_false (gtk_editable_get_selection_bounds (GTK_EDITABLE (height), NULL, NULL));
  g_assert_cmpint (gtk_editable_get_position (GTK_EDITABLE (height)), ==, 3);
  close_window (window);
}

static gboolean
is_expander (GtkWidget     *widget,
             gconstpointer  data)
{
  return GTK_IS_EXPANDER (widget);
}

/* Of the narrow column: what asks for more would push the sheet aside whenever it comes in hand */
#define COLUMN_PX 380

static int
least_width_px (GtkWidget *widget)
{
  int least_px;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least_px, NULL, NULL, NULL);
  return least_px;
}

/* Every thing of the example can be taken in hand, with "More" open, in both units, and has room in the column; so has the room */
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
          g_assert_cmpint (least_width_px (GTK_WIDGET (window->details)), <=, COLUMN_PX);
        }
      lr_document_select (window->document, NULL);
      g_assert_cmpint (least_width_px (GTK_WIDGET (window->details)), <=, COLUMN_PX);
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
is_lamp_row (GtkWidget     *widget,
             gconstpointer  data)
{
  return LR_IS_LAMP_ROW (widget);
}

static gboolean
has_text (GtkWidget     *widget,
          gconstpointer  text)
{
  return GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget) && strstr (gtk_label_get_label (GTK_LABEL (widget)), text) != NULL;
}

static gboolean
is_removal (GtkWidget     *widget,
            gconstpointer  data)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (widget)), "edit-clear-symbolic") == 0;
}

static void
give_lamp (LrMainWindow *window,
           const char   *path,
           const char   *text)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  lr_lamp_row_take_file (LR_LAMP_ROW (find (GTK_WIDGET (window->details), is_lamp_row, NULL)), file);
  settle ();
}

/* A light's photometric file: what it says stands in its row and takes the place of output and beam; a broken one is told and changes nothing;
 * taken away, all is as before */
static void
test_lamp_file (void)
{
  /* 1000 cd to 30 degrees and nothing past 60: half at 45, a tenth at 57 degrees. Flux by the closed form of the engine's test */
  static const char good[] = "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 3 1 1 2 0.2 0.3 0\n1 1 100\n0 30 60\n0\n1000 1000 0\n[END]\n";
  static const char broken[] = "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 60 30\n0\n1000 500 0\n";
  g_autofree char *folder = g_dir_make_tmp ("lookroom-test-XXXXXX", NULL), *path = g_build_filename (folder, "narrow.ies", NULL);
  LrMainWindow *window = open_example ();
  GtkWidget *row, *details = GTK_WIDGET (window->details);
  LrPlan *before = lr_document_get_plan (window->document);

  lr_document_select (window->document, "camera-a");
  settle ();
  row = find (details, is_lamp_row, NULL);
  g_assert_false (gtk_widget_get_visible (row));
  lr_document_select (window->document, "light-1");
  settle ();
  g_assert_true (gtk_widget_get_visible (row));
  g_assert_nonnull (find (row, has_text, "none"));
  g_assert_false (gtk_widget_get_visible (find (row, is_removal, NULL)));
  g_assert_true (gtk_widget_is_sensitive (entry_of (window, "beam-deg")));

  give_lamp (window, path, broken);
  g_assert_nonnull (find (row, has_text, "“narrow.ies” cannot be used: line 5: the angles do not rise."));
  g_assert_true (lr_document_get_plan (window->document) == before);

  give_lamp (window, path, good);
  g_assert_null (find (row, has_text, "cannot be used"));
  g_assert_nonnull (find (row, has_text, "narrow.ies"));
  g_assert_nonnull (find (row, has_text, "beam 90°, field 114°, from 0.30\u00a0m × 0.20\u00a0m."));
  g_assert_nonnull (find (row, has_text, "Text behind its numbers is left out."));
  g_assert_cmpstr (get_item (window, "light-1")->light.photometric_file, ==, "narrow.ies");
  g_assert_false (gtk_widget_is_sensitive (entry_of (window, "beam-deg")));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry_of (window, "beam-deg"))), ==, "");

  g_signal_emit_by_name (find (row, is_removal, NULL), "clicked");
  settle ();
  g_assert_null (get_item (window, "light-1")->lamp_file);
  g_assert_true (gtk_widget_is_sensitive (entry_of (window, "beam-deg")));
  activate (window, "undo");
  g_assert_nonnull (get_item (window, "light-1")->lamp_file);
  activate (window, "undo");
  g_assert_true (lr_document_get_plan (window->document) == before);
  g_assert_false (lr_document_has_changes (window->document));
  g_remove (path);
  g_rmdir (folder);
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

/* What is not understood is told, stays in its field to be mended, and the plan stays too; what is understood is kept in the plan's form */
static void
test_room_refused (void)
{
  static const struct { const char *key, *text; } cases[] = {
    { "date", "3/2/2026" }, { "time-in", "soon" },
  };
  LrMainWindow *window = open_example ();

  lr_document_select (window->document, NULL);
  settle ();
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkWidget *entry = entry_of (window, cases[i].key);

      type (entry, cases[i].text);
      settle ();
      g_assert_false (lr_document_has_changes (window->document));
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, cases[i].text);
    }
  type (entry_of (window, "date"), "19 June 2026");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry_of (window, "date"))), ==, "2026-06-19");
  g_assert_cmpstr (lr_document_get_plan (window->document)->job->date, ==, "2026-06-19");
  close_window (window);
}

/* The levels wanted in the set-up shown: an empty field says what counts without it */
static void
test_wanted (void)
{
  LrMainWindow *window = open_example ();

  lr_document_select (window->document, NULL);
  settle ();
  g_assert_cmpstr (gtk_entry_get_placeholder_text (GTK_ENTRY (entry_of (window, "face-level-pct"))), ==, "60\u00a0%");
  type (entry_of (window, "wall-level-pct"), "15 %");
  g_assert_cmpfloat_with_epsilon (lr_plan_wall_level (lr_document_get_plan (window->document)), 0.15, 1e-9);
  type (entry_of (window, "face-level-pct"), "55");
  g_assert_cmpfloat_with_epsilon (lr_plan_face_level (lr_document_get_plan (window->document)), 0.55, 1e-9);
  activate (window, "undo");
  activate (window, "undo");
  g_assert_cmpfloat_with_epsilon (lr_plan_wall_level (lr_document_get_plan (window->document)), 0.4, 1e-9);
  close_window (window);
}

static gboolean
is_source_table (GtkWidget     *widget,
                 gconstpointer  data)
{
  return LR_IS_SOURCE_TABLE (widget) && gtk_widget_get_mapped (widget);
}

static gboolean
too_late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Once the levels of light have come, a person's details list what each lamp gives alone; a camera's do not */
static void
test_sources (void)
{
  LrMainWindow *window = open_example ();
  gboolean is_late = FALSE;
  guint source = g_timeout_add_seconds (20, too_late_cb, &is_late);
  GtkWidget *table;
  g_autofree char *words = NULL;

  while (!lr_document_has_current_levels (window->document) && !is_late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (is_late);
  g_source_remove (source);
  lr_document_select (window->document, "wenna");
  settle ();
  table = find (GTK_WIDGET (window->details), is_source_table, NULL);
  g_assert_nonnull (table);
  words = lr_source_table_words (LR_SOURCE_TABLE (table));
  g_test_message ("%s", words);
  g_assert_nonnull (strstr (words, "Wenna’s face"));
  g_assert_nonnull (strstr (words, "L1 key, at 65\u00a0%"));
  g_assert_nonnull (strstr (words, "all that shine"));
  lr_document_select (window->document, "camera-b");
  settle ();
  g_assert_null (find (GTK_WIDGET (window->details), is_source_table, NULL));
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
  g_assert_nonnull (find (root, is_label_of, "3, north-east wall"));
  g_assert_null (find (root, is_label_of, "4, north-west wall"));
  lr_document_commit (window->document,
                      lr_plan_set_corners (lr_document_get_plan (window->document), mirrored_m, G_N_ELEMENTS (mirrored_m), &error),
                      "Room");
  g_assert_no_error (error);
  settle ();
  g_assert_null (find (root, is_label_of, "3, north-east wall"));
  g_assert_nonnull (find (root, is_label_of, "4, north-west wall"));
  close_window (window);
}

/* Remarks */

int
main (int    argc,
      char **argv)
{
  window_tests_init (&argc, &argv);

  g_test_add_func ("/window/details", test_details);
  g_test_add_func ("/window/refused", test_refused);
  g_test_add_func ("/window/typing-survives", test_typing_survives);
  g_test_add_func ("/details/typed-is-saved", test_typed_is_saved);
  g_test_add_func ("/window/every-item", test_every_item);
  g_test_add_func ("/window/new-circuit", test_new_circuit);
  g_test_add_func ("/window/lens", test_lens);
  g_test_add_func ("/window/converter-seen", test_converter_seen);
  g_test_add_func ("/window/vertical", test_vertical);
  g_test_add_func ("/window/named-sizes", test_named_sizes);
  g_test_add_func ("/window/lamp-file", test_lamp_file);
  g_test_add_func ("/window/room", test_room);
  g_test_add_func ("/window/room-refused", test_room_refused);
  g_test_add_func ("/window/wanted", test_wanted);
  g_test_add_func ("/window/sources", test_sources);
  g_test_add_func ("/window/wall-names", test_wall_names);
  return g_test_run ();
}
