/* main_window.c - one plan and everything that shows it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "main_window_private.h"

#include "app.h"
#include "badge.h"
#include "beside.h"
#include "file_actions.h"
#include "settings.h"

#include <glib/gi18n-lib.h>

#define RIGHT_WIDE_PX 470
#define RIGHT_NARROW_PX 380
#define CUT_WIDE_PX 640 /* where two pictures stand side by side */
#define CUT_NARROW_PX 440
#define RIGHT_NARROW_UNDER_PX 1360
#define TRAY_FOLDED_UNDER_PX 1120
#define TOGGLE_WORDS_FROM_PX 1190 /* five words and the zoom beside each other */
#define REMARKS_SHORT_UNDER_PX 860
#define REMARKS_SHORTEST_UNDER_PX 760
#define BESIDE_PICTURES_PX 464 /* of the height: header bar, titles, figures, and a handful of fields */
#define LEAST_PICTURE_PX 110
#define NOTICE_S 8

G_DEFINE_FINAL_TYPE (LrMainWindow, lr_main_window, GTK_TYPE_APPLICATION_WINDOW)

/* "2026-02-19" as people write it; what is no date stays as it is */
static char *
format_date (const char *iso)
{
  g_autofree char *with_time = g_strconcat (iso, "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (with_time, NULL);

  /* Translators: strftime's letters: day of the week, day, month, year */
  return date != NULL ? g_date_time_format (date, _("%a %-d %b %Y")) : g_strdup (iso);
}

static char *
format_subtitle (const LrJob *job)
{
  g_autofree char *date = format_date (job->date);

  if (job->date[0] != '\0' && job->time_roll[0] != '\0' && job->time_wrap[0] != '\0')
    /* Translators: date, start and end of the shoot */
    return g_strdup_printf (_("%s, rolling %s to %s"), date, job->time_roll, job->time_wrap);

  return g_steal_pointer (&date);
}

static char *
format_title (LrDocument *document)
{
  const LrJob *job = lr_document_get_plan (document)->job;
  const char *path = lr_document_get_path (document);

  if (job->title[0] != '\0')
    return g_strdup (job->title);
  if (path != NULL)
    return g_filename_display_basename (path);
  return g_strdup (_("New plan"));
}

static void
set_label (GtkWidget  *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (label), text);
}

static void
update_title (LrMainWindow *self)
{
  g_autofree char *title = format_title (self->document);
  g_autofree char *day = format_subtitle (lr_document_get_plan (self->document)->job);
  gboolean has_changes = lr_document_has_changes (self->document);
  /* Translators: after the date in the window's subtitle */
  const char *state = lr_document_get_plan (self->document)->is_read_only ? _("only to look at") : has_changes ? _("not saved") : "";
  g_autofree char *subtitle = g_strjoin (day[0] != '\0' && state[0] != '\0' ? " · " : "", day, state, NULL);
  g_autofree char *window_title = g_strdup_printf ("%s%s – Lookroom", has_changes ? "• " : "", title);

  set_label (self->title_label, title);
  set_label (self->subtitle_label, subtitle);
  gtk_widget_set_visible (self->subtitle_label, subtitle[0] != '\0');
  if (g_strcmp0 (gtk_window_get_title (GTK_WINDOW (self)), window_title) != 0)
    gtk_window_set_title (GTK_WINDOW (self), window_title);
}

static void
changed_cb (LrMainWindow *self)
{
  lr_main_window_update_setups (self);
  lr_main_window_update_found (self);
  if (!lr_document_has_preview (self->document))
    {
      update_title (self);
      lr_main_window_update_actions (self);
      lr_main_window_fit (self);
    }
}

static void
history_cb (LrMainWindow *self)
{
  update_title (self);
  lr_main_window_update_actions (self);
}

static void
hand_cb (LrMainWindow *self)
{
  lr_main_window_update_actions (self);
}

static gboolean
notice_timeout_cb (gpointer data)
{
  LrMainWindow *self = data;

  self->notice_source = 0;
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->notice), FALSE);
  return G_SOURCE_REMOVE;
}

static gboolean
show_zoom_cb (gpointer data)
{
  LrMainWindow *self = data;
  /* Translators: a drawing's scale, 1 : 50 */
  g_autofree char *text = g_strdup_printf (_("1 : %.0f"), lr_canvas_get_denominator (self->canvas));

  self->zoom_source = 0;
  set_label (self->zoom_label, text);
  return G_SOURCE_REMOVE;
}

/* The scale changes while sizes are handed out too, when no label may ask for another */
static void
zoom_changed_cb (LrMainWindow *self)
{
  if (self->zoom_source == 0)
    self->zoom_source = g_idle_add_full (G_PRIORITY_HIGH_IDLE, show_zoom_cb, self, NULL);
}

/* A menu is made when it is first opened: the first frame does not wait for its buttons */
static void
open_zoom_menu_cb (GtkMenuButton *button,
                   gpointer       data)
{
  LrMainWindow *self = data;

  if (gtk_menu_button_get_menu_model (button) == NULL)
    gtk_menu_button_set_menu_model (button, G_MENU_MODEL (self->zoom_menu));
}

static void
recovered_response_cb (LrMainWindow *self,
                       int       response)
{
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->recovered_bar), FALSE);
  if (response == 2)
    lr_main_window_revert (self);
}

/* Their words go where there is no room; what they are called stays for assistive technology, and their hints */
static void
show_toggle_words (LrMainWindow *self,
                   gboolean      are_shown)
{
  for (GtkWidget *toggle = gtk_widget_get_first_child (self->toggles); toggle != NULL; toggle = gtk_widget_get_next_sibling (toggle))
    gtk_widget_set_visible (gtk_widget_get_last_child (gtk_button_get_child (GTK_BUTTON (toggle))), are_shown);
}

/**
 * lr_main_window_fit:
 *
 * Columns by the width that the window has now, and by what stands in them.
 */
void
lr_main_window_fit (LrMainWindow *self)
{
  int width_px = self->seen_width_px, height_px = self->seen_height_px;
  gboolean is_narrow = width_px < RIGHT_NARROW_UNDER_PX;

  if (width_px == 0) /* not on a screen yet */
    return;
  if (lr_viewfinders_get_cut (self->viewfinders))
    gtk_widget_set_size_request (self->right, is_narrow ? CUT_NARROW_PX : CUT_WIDE_PX, -1);
  else
    gtk_widget_set_size_request (self->right, is_narrow ? RIGHT_NARROW_PX : RIGHT_WIDE_PX, -1);
  show_toggle_words (self, width_px >= TOGGLE_WORDS_FROM_PX);
  lr_tray_set_folded (self->tray, width_px < TRAY_FOLDED_UNDER_PX);
  lr_remarks_panel_set_rows (self->remarks, height_px < REMARKS_SHORTEST_UNDER_PX ? 3 : height_px < REMARKS_SHORT_UNDER_PX ? 4 : 5);
  lr_viewfinders_set_max_height (self->viewfinders, MAX (LEAST_PICTURE_PX, (height_px - BESIDE_PICTURES_PX) / 2));
}

static void
surface_layout_cb (LrMainWindow *self,
                   int           width_px,
                   int           height_px)
{
  if (width_px == self->seen_width_px && height_px == self->seen_height_px)
    return;

  self->seen_width_px = width_px;
  self->seen_height_px = height_px;
  lr_main_window_fit (self);
}

/* Whatever can wait begins when the window is there */
static void
painted_cb (LrMainWindow *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    lr_document_set_starting (self->document, FALSE);
}

static void
lr_main_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lr_main_window_parent_class)->realize (widget);
  g_signal_connect_object (gtk_widget_get_frame_clock (widget), "after-paint", G_CALLBACK (painted_cb), widget, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_native_get_surface (GTK_NATIVE (widget)), "layout", G_CALLBACK (surface_layout_cb), widget,
                           G_CONNECT_SWAPPED);
}

static gboolean
lr_main_window_close_request (GtkWindow *window)
{
  LrMainWindow *self = LR_MAIN_WINDOW (window);
  int width, height;

  lr_beside_take_typed (window);
  if (!self->may_close && lr_document_has_changes (self->document))
    {
      lr_main_window_ask_before_closing (self);
      return TRUE;
    }

  gtk_window_get_default_size (window, &width, &height);
  lr_settings_set_window (width, height, gtk_window_is_maximized (window));
  lr_journal_finish (self->journal);
  return GTK_WINDOW_CLASS (lr_main_window_parent_class)->close_request (window);
}

static void
lr_main_window_dispose (GObject *object)
{
  LrMainWindow *self = LR_MAIN_WINDOW (object);

  g_clear_handle_id (&self->notice_source, g_source_remove);
  g_clear_handle_id (&self->zoom_source, g_source_remove);
  g_clear_handle_id (&self->focus_source, g_source_remove);
  lr_main_window_clear_found (self);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_MAIN_WINDOW);
  g_clear_pointer (&self->journal, lr_journal_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_main_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, setup_button);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, setup_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, refit_bar);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, refit_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, refit_apply);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, recovered_bar);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, recovered_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, toggles);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, zoom_button);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, zoom_menu);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, zoom_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, notice_label);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, centre);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, right);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, main_menu);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, tray);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, found_pane);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, found_mark);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, canvas);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, sun_scale);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, remarks);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, viewfinders);
  gtk_widget_class_bind_template_child (widget_class, LrMainWindow, details);
}

static void
lr_main_window_class_init (LrMainWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_main_window_dispose;
  widget_class->realize = lr_main_window_realize;
  GTK_WINDOW_CLASS (klass)->close_request = lr_main_window_close_request;

  g_type_ensure (LR_TYPE_TRAY);
  g_type_ensure (LR_TYPE_FOUND_PANE);
  g_type_ensure (LR_TYPE_CANVAS);
  g_type_ensure (LR_TYPE_SUN_SCALE);
  g_type_ensure (LR_TYPE_REMARKS_PANEL);
  g_type_ensure (LR_TYPE_VIEWFINDERS);
  g_type_ensure (LR_TYPE_DETAILS);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/main-window.ui");
  bind_children (widget_class);
}

/* One toggle a family: its glyph, its name, the action that shows it on the sheet */
static void
add_toggle (LrMainWindow   *self,
            LrFamily    family,
            const char *title,
            const char *action,
            const char *hint)
{
  GtkWidget *button = gtk_toggle_button_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *badge = lr_badge_new ();

  lr_badge_show_family (LR_BADGE (badge), family);
  gtk_box_append (GTK_BOX (box), badge);
  gtk_box_append (GTK_BOX (box), gtk_label_new (title));
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, hint);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_box_append (GTK_BOX (self->toggles), button);
}

static void
add_toggles (LrMainWindow *self)
{
  add_toggle (self, LR_FAMILY_SIGHT, _("Sight"), "win.show-sight", _("Show what the cameras see, and the line of action"));
  add_toggle (self, LR_FAMILY_LIGHT, _("Light"), "win.show-light", _("Show where the lights point, how they fall off, and lines of equal light: the heavy one is as bright as the subject’s face"));
  add_toggle (self, LR_FAMILY_SOUND, _("Sound"), "win.show-sound", _("Show what the microphones hear, and noises"));
  add_toggle (self, LR_FAMILY_SUN, _("Sun"), "win.show-sun", _("Show where the sun comes in on the day"));
  add_toggle (self, LR_FAMILY_POWER, _("Power"), "win.show-power", _("Show leads, sockets and circuits"));
}

static void
connect_document (LrMainWindow *self)
{
  g_signal_connect_object (self->document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "lit", G_CALLBACK (lr_main_window_update_actions), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "judged", G_CALLBACK (lr_main_window_update_actions), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "history", G_CALLBACK (history_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "hand", G_CALLBACK (hand_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "message", G_CALLBACK (lr_main_window_say), self, G_CONNECT_SWAPPED);

  lr_tray_set_document (self->tray, self->document);
  lr_found_pane_set_document (self->found_pane, self->document);
  lr_canvas_set_document (self->canvas, self->document);
  lr_sun_scale_set_document (self->sun_scale, self->document);
  lr_remarks_panel_set_document (self->remarks, self->document);
  lr_viewfinders_set_document (self->viewfinders, self->document);
  lr_viewfinders_set_cut (self->viewfinders, lr_settings_get_cut ());
  lr_details_set_document (self->details, self->document);
}

/* A menu within a menu leaves the focus where nothing is seen, and keys would go nowhere */
static gboolean
find_focus_cb (gpointer data)
{
  LrMainWindow *self = data;
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  self->focus_source = 0;
  if (focus == NULL || !gtk_widget_get_mapped (focus))
    gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  return G_SOURCE_REMOVE;
}

static void
focus_cb (LrMainWindow *self)
{
  if (self->focus_source == 0)
    self->focus_source = g_idle_add (find_focus_cb, self);
}

static void
lr_main_window_init (LrMainWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));

  self->document = lr_document_new ();
  lr_document_set_starting (self->document, TRUE);
  lr_document_set_units (self->document, lr_settings_get_units ());
  lr_document_set_shown (self->document, lr_settings_get_shown ());
  lr_document_set_frame_lines (self->document, lr_settings_get_frame_lines ());
  self->journal = lr_journal_new (self->document);

  add_toggles (self);
  lr_main_window_add_actions (self);
  lr_main_window_add_setup_actions (self);
  lr_main_window_add_found_actions (self);
  lr_tray_set_canvas (self->tray, self->canvas);
  connect_document (self);

  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->zoom_button), open_zoom_menu_cb, self, NULL);
  g_signal_connect (self, "notify::focus-widget", G_CALLBACK (focus_cb), NULL);
  g_signal_connect_swapped (self->canvas, "notify::zoom-denominator", G_CALLBACK (zoom_changed_cb), self);
  g_signal_connect_swapped (self->recovered_bar, "response", G_CALLBACK (recovered_response_cb), self);
  zoom_changed_cb (self);
  changed_cb (self);
  gtk_window_set_focus (GTK_WINDOW (self), GTK_WIDGET (self->canvas));
}

/**
 * lr_main_window_new:
 * @application: to which it belongs
 *
 * Returns: (transfer full): a window with an empty plan, as wide and high as the last one was
 */
GtkWidget *
lr_main_window_new (GtkApplication *application)
{
  GtkWidget *window = g_object_new (LR_TYPE_MAIN_WINDOW, "application", application, NULL);
  int width, height;
  gboolean is_maximized;

  lr_settings_get_window (&width, &height, &is_maximized);
  gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  if (is_maximized)
    gtk_window_maximize (GTK_WINDOW (window));
  return window;
}

/**
 * lr_main_window_get_document:
 *
 * Returns: (transfer none): what it shows
 */
LrDocument *
lr_main_window_get_document (LrMainWindow *self)
{
  return self->document;
}

/**
 * lr_main_window_get_canvas:
 *
 * Returns: (transfer none): its sheet
 */
LrCanvas *
lr_main_window_get_canvas (LrMainWindow *self)
{
  return self->canvas;
}

/**
 * lr_main_window_is_pristine:
 *
 * Returns: whether nobody has worked in it: no file, no changes
 */
gboolean
lr_main_window_is_pristine (LrMainWindow *self)
{
  return lr_document_get_path (self->document) == NULL && !lr_document_has_changes (self->document);
}

/**
 * lr_main_window_say:
 * @sentence: one sentence for the user
 *
 * Shows it at the foot of the sheet for some seconds; longer ones stay longer.
 */
void
lr_main_window_say (LrMainWindow *self,
               const char   *sentence)
{
  guint seconds = (guint) (NOTICE_S + g_utf8_strlen (sentence, -1) / 20);

  g_clear_handle_id (&self->notice_source, g_source_remove);
  gtk_label_set_label (GTK_LABEL (self->notice_label), sentence);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->notice), TRUE);
  self->notice_source = g_timeout_add_seconds (seconds, notice_timeout_cb, self);
}

/**
 * lr_main_window_show_recovered:
 * @sentence: what was recovered, and from when
 */
void
lr_main_window_show_recovered (LrMainWindow *self,
                          const char   *sentence)
{
  gtk_label_set_label (GTK_LABEL (self->recovered_label), sentence);
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->recovered_bar), TRUE);
}
