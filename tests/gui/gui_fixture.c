/* gui_fixture.c - a sheet in a window, with a small loft on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "gui_fixture.h"

#define LIMIT_MS 5000

/* Takes @plan; the next edit's plan must not be NULL */
static LrPlan *
then (LrPlan *before,
      LrPlan *next,
      GError *error)
{
  g_assert_no_error (error);
  lr_plan_unref (before);
  return next;
}

static LrPlan *
add (LrPlan     *plan,
     LrItemKind  kind,
     int         form,
     const char *id,
     const char *name,
     LrVec2      at_m,
     double      facing_rad)
{
  g_autoptr (LrItem) item = lr_item_new_usual (kind, form, id);
  g_autofree char *new_id = NULL;
  GError *error = NULL;

  plan = then (plan, lr_plan_add (plan, item, at_m, facing_rad, &new_id, &error), error);
  g_assert_cmpstr (new_id, ==, id);
  return then (plan, lr_plan_change_text (plan, id, "name", name, &error), error);
}

static LrPlan *
link_to (LrPlan     *plan,
         const char *id,
         const char *key,
         const char *target)
{
  GError *error = NULL;

  return then (plan, lr_plan_change_text (plan, id, key, target, &error), error);
}

LrPlan *
gui_make_loft (void)
{
  const LrVec2 corners_m[] = { { 0, 0 }, { 7.2, 0 }, { 7.2, 4.45 }, { 6.25, 5.4 }, { 0, 5.4 } };
  LrPlan *plan = lr_plan_new_empty ();
  GError *error = NULL;

  plan = then (plan, lr_plan_set_corners (plan, corners_m, G_N_ELEMENTS (corners_m), &error), error);
  plan = add (plan, LR_ITEM_DOOR, 0, GUI_DOOR, "", lr_vec2 (7.2, 0.8), 0.0);
  plan = add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, GUI_TABLE, "drafting table", lr_vec2 (0.6, 2.8), 0.0);
  plan = add (plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, GUI_WENNA, "Wenna", lr_vec2 (2.6, 2.95), 0.0);
  plan = add (plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, GUI_INES, "Ines", lr_vec2 (4.25, 2.3), LR_PI);
  plan = add (plan, LR_ITEM_CAMERA, 0, GUI_CAMERA, "", lr_vec2 (4.81, 2.8), LR_PI);
  plan = link_to (plan, GUI_WENNA, "looks-at", GUI_INES);
  plan = link_to (plan, GUI_INES, "looks-at", GUI_WENNA);
  return link_to (plan, GUI_CAMERA, "aims-at", GUI_WENNA);
}

void
gui_setup (GuiFixture *f,
           LrPlan     *plan)
{
  f->document = lr_document_new ();
  if (plan != NULL)
    lr_document_reset (f->document, plan, NULL);
  f->window = gtk_window_new ();
  f->canvas = LR_CANVAS (lr_canvas_new ());
  lr_canvas_set_document (f->canvas, f->document);
  gtk_window_set_decorated (GTK_WINDOW (f->window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (f->window), 1100, 800);
  gtk_window_set_child (GTK_WINDOW (f->window), GTK_WIDGET (f->canvas));
  gtk_window_present (GTK_WINDOW (f->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->canvas));
  /* a window gives its first widget the focus, and the sheet takes its first thing in hand then */
  gtk_window_set_focus (GTK_WINDOW (f->window), NULL);
  lr_document_select (f->document, NULL);
}

void
gui_setup_loft_cb (GuiFixture    *f,
                   gconstpointer  data)
{
  gui_setup (f, gui_make_loft ());
}

void
gui_setup_empty_cb (GuiFixture    *f,
                    gconstpointer  data)
{
  gui_setup (f, NULL);
}

void
gui_teardown_cb (GuiFixture    *f,
                 gconstpointer  data)
{
  gui_teardown (f);
}

void
gui_keep_cb (LrDocument  *document,
             const char  *sentence,
             char       **kept)
{
  g_free (*kept);
  *kept = g_strdup (sentence);
}

static gboolean
timeout_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

void
gui_wait_for (gboolean (*is_done) (gpointer data),
              gpointer   data)
{
  gboolean is_late = FALSE;
  guint id = g_timeout_add (LIMIT_MS, timeout_cb, &is_late);

  while (!is_done (data) && !is_late)
    g_main_context_iteration (NULL, TRUE);
  g_assert_false (is_late);
  g_source_remove (id);
}

static gboolean
is_null (gpointer data)
{
  return *(gpointer *) data == NULL;
}

/* Whatever events are still on their way may hold the sheet for a moment, but no longer */
void
gui_teardown (GuiFixture *f)
{
  gpointer canvas = f->canvas;

  g_object_add_weak_pointer (G_OBJECT (canvas), &canvas);
  gtk_window_destroy (GTK_WINDOW (f->window));
  gui_wait_for (is_null, &canvas);
  g_assert_finalize_object (f->document);
}

static void
painted_cb (gboolean *is_painted)
{
  *is_painted = TRUE;
}

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

void
gui_settle (GuiFixture *f)
{
  gboolean is_painted = FALSE;
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (f->canvas));
  gulong id = g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (painted_cb), &is_painted);

  gtk_widget_queue_draw (GTK_WIDGET (f->canvas));
  gui_wait_for (is_true, &is_painted);
  g_signal_handler_disconnect (clock, id);
}

const LrItem *
gui_item (GuiFixture *f,
          const char *id)
{
  return lr_plan_find (lr_document_get_plan (f->document), id);
}

LrVec2
gui_at (GuiFixture *f,
        double      x_m,
        double      y_m)
{
  return lr_view_to_device (lr_canvas_get_view (f->canvas), lr_vec2 (x_m, y_m));
}

void
gui_drag (GuiFixture      *f,
          LrVec2           from,
          LrVec2           to,
          GdkModifierType  state)
{
  lr_canvas_drag_begin (f->canvas, from, state);
  for (int i = 1; i <= 5; i++)
    lr_canvas_drag_update (f->canvas, lr_vec2_along (from, lr_vec2_sub (to, from), i / 5.0), state);
  lr_canvas_drag_end (f->canvas, to, state);
}

void
gui_type (GuiFixture *f,
          const char *keys)
{
  for (const char *key = keys; *key != '\0'; key++)
    {
      guint keyval = *key == '\n' ? GDK_KEY_Return : *key == '\b' ? GDK_KEY_BackSpace
                                                                   : gdk_unicode_to_keyval ((guint32) *key);

      lr_canvas_key (f->canvas, keyval, 0);
    }
}
