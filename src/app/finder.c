/* finder.c - one viewfinder: a camera's picture, its title above, its figures below
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "finder.h"

#include "app.h"
#include "badge.h"
#include "finder_hand.h"
#include "finder_picture.h"
#include "frame_popover.h"
#include "line.h"
#include "viewfinder.h"

#include <glib/gi18n-lib.h>

struct _LrFinder
{
  GtkWidget   parent_instance;

  LrDocument *document;
  char       *camera;  /* id; NULL: none */
  char       *choices; /* ids and names of the cameras that may be shown here; NULL: not looked at yet */

  GtkWidget  *box, *head, *choice, *tag, *title, *grade, *lens, *frame, *picture, *figures, *nothing;
};

G_DEFINE_FINAL_TYPE (LrFinder, lr_finder, GTK_TYPE_WIDGET)

static void
set_label (GtkWidget  *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (label), text);
}

/* "Camera A, medium" */
static char *
make_title (const LrCameraReading *camera)
{
  g_autofree char *name = lr_item_title (camera->item);

  if (!camera->has_subject)
    return g_steal_pointer (&name);

  /* Translators: a camera and the size of its shot */
  return g_strdup_printf (_("%s, %s"), name, lr_shot_title (camera->framing.shot));
}

/* "Medium close-up": the tag before it tells the camera */
static char *
make_short_title (const LrCameraReading *camera)
{
  return camera->has_subject ? lr_shot_heading (camera->framing.shot) : lr_item_title (camera->item);
}

/* "50 mm   f/2.8   2.14 m", or closer together */
static char *
make_lens_line (const LrCameraReading *camera,
                LrUnits                units,
                gboolean               is_close)
{
  g_autofree char *lens = lr_camera_lens_title (camera);
  g_autofree char *stop = lr_f_number_format (camera->item->camera.f_number);
  g_autofree char *distance = camera->has_subject ? lr_length_format (camera->distance_m, units) : g_strdup ("");

  return g_strdup_printf (is_close ? "%s %s %s" : "%s   %s   %s", lens, stop, distance);
}

static void
show_grade (LrFinder *self)
{
  LrGrade grade = lr_remarks_worst_for (lr_document_get_remarks (self->document), self->camera);

  if (grade == LR_GRADE_FIX)
    lr_badge_show_grade (LR_BADGE (self->grade), grade);
  else
    lr_badge_show_nothing (LR_BADGE (self->grade));
}

static void
show_camera (LrFinder              *self,
             const LrCameraReading *camera)
{
  LrUnits units = lr_document_get_units (self->document);
  g_autofree char *title = make_title (camera), *short_title = make_short_title (camera), *figures = lr_viewfinder_figures (camera, units);
  g_autofree char *lens = make_lens_line (camera, units, FALSE), *short_lens = make_lens_line (camera, units, TRUE);

  lr_badge_show_tag (LR_BADGE (self->tag), LR_ITEM_CAMERA, camera->item->tag);
  lr_line_set_text (LR_LINE (self->title), short_title);
  lr_line_set_short_text (LR_LINE (self->title), camera->has_subject ? lr_shot_letters (camera->framing.shot) : NULL);
  lr_line_set_text (LR_LINE (self->lens), lens);
  lr_line_set_short_text (LR_LINE (self->lens), short_lens);
  lr_line_set_text (LR_LINE (self->figures), figures);
  show_grade (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, figures, -1);
}

static char *
list_choices (const GArray *cameras)
{
  GString *choices = g_string_new (NULL);

  for (guint i = 0; i < cameras->len; i++)
    {
      const LrItem *item = g_array_index (cameras, LrCameraReading, i).item;
      g_autofree char *name = lr_item_title (item);

      g_string_append_printf (choices, "%s\t%s\n", item->id, name);
    }
  return g_string_free (choices, FALSE);
}

static GMenu *
make_choice_menu (const GArray *cameras)
{
  GMenu *menu = g_menu_new ();

  for (guint i = 0; i < cameras->len; i++)
    {
      const LrItem *item = g_array_index (cameras, LrCameraReading, i).item;
      g_autofree char *name = lr_item_title (item);
      g_autoptr (GMenuItem) entry = g_menu_item_new (name, NULL);

      g_menu_item_set_action_and_target (entry, "finder.camera", "s", item->id);
      g_menu_append_item (menu, entry);
    }
  return menu;
}

/* The cameras that may be shown here instead, if there are more than places */
static void
update_choice (LrFinder *self)
{
  const GArray *cameras = lr_document_get_study (self->document)->cameras;
  g_autofree char *choices = list_choices (cameras);
  gboolean has_choice = cameras->len > 2;
  g_autoptr (GMenu) menu = NULL;

  if (g_strcmp0 (choices, self->choices) == 0)
    return;

  g_free (self->choices);
  self->choices = g_steal_pointer (&choices);
  gtk_widget_set_sensitive (self->choice, has_choice);
  gtk_widget_set_tooltip_text (self->choice, has_choice ? _("Show another camera here") : NULL);
  menu = has_choice ? make_choice_menu (cameras) : NULL;
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->choice), G_MENU_MODEL (menu));
}

static void
choose_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  lr_finder_set_camera (LR_FINDER (widget), g_variant_get_string (parameter, NULL));
}

static void
select_camera (LrFinder *self)
{
  if (self->camera != NULL)
    lr_document_select (self->document, self->camera);
}

static void
select_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  select_camera (LR_FINDER (widget));
}

static void
pressed_cb (LrFinder *self)
{
  gtk_widget_grab_focus (self->picture);
  select_camera (self);
}

static void
lr_finder_dispose (GObject *object)
{
  LrFinder *self = LR_FINDER (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_FINDER);
  g_clear_object (&self->document);
  g_clear_pointer (&self->camera, g_free);
  g_clear_pointer (&self->choices, g_free);
  G_OBJECT_CLASS (lr_finder_parent_class)->dispose (object);
}

static void
lr_finder_class_init (LrFinderClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_finder_dispose;
  g_type_ensure (LR_TYPE_BADGE);
  g_type_ensure (LR_TYPE_LINE);
  g_type_ensure (LR_TYPE_FINDER_PICTURE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "finder.camera", "s", choose_cb);
  gtk_widget_class_install_action (widget_class, "finder.select", NULL, select_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, 0, "finder.select", NULL);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/finder.ui");
  gtk_widget_class_bind_template_child (widget_class, LrFinder, box);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, head);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, choice);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, tag);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, title);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, grade);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, lens);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, frame);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, picture);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, figures);
  gtk_widget_class_bind_template_child (widget_class, LrFinder, nothing);
}

static void
lr_finder_init (LrFinder *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (self->picture, GTK_EVENT_CONTROLLER (click));
}

/**
 * lr_finder_new:
 * @document: whose cameras it shows; lr_finder_update() tells of its changes
 */
GtkWidget *
lr_finder_new (LrDocument *document)
{
  LrFinder *self = g_object_new (LR_TYPE_FINDER, NULL);

  self->document = g_object_ref (document);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->frame), lr_frame_popover_new (document));
  lr_finder_hand_add (LR_FINDER_PICTURE (self->picture), document);
  return GTK_WIDGET (self);
}

/**
 * lr_finder_set_camera:
 * @id: (nullable): of a camera of the plan shown
 */
void
lr_finder_set_camera (LrFinder   *self,
                      const char *id)
{
  char *copy = g_strdup (id);

  g_free (self->camera);
  self->camera = copy;
  lr_frame_popover_set_camera (LR_FRAME_POPOVER (gtk_menu_button_get_popover (GTK_MENU_BUTTON (self->frame))), copy);
  lr_finder_update (self);
  lr_finder_update_picture (self);
}

/**
 * lr_finder_get_camera:
 *
 * Returns: (transfer none) (nullable): id of the camera that it shows
 */
const char *
lr_finder_get_camera (LrFinder *self)
{
  return self->camera;
}

/**
 * lr_finder_open_frame:
 *
 * Opens what works from the picture back to its camera.
 */
void
lr_finder_open_frame (LrFinder *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->frame));
}

/**
 * lr_finder_set_max_height:
 * @max_height_px: its picture is not higher than that [px]
 */
void
lr_finder_set_max_height (LrFinder *self,
                          int       max_height_px)
{
  lr_finder_picture_set_max_height (LR_FINDER_PICTURE (self->picture), max_height_px);
}

static const LrCameraReading *
get_reading (LrFinder *self)
{
  return self->camera != NULL ? lr_study_find_camera (lr_document_get_study (self->document), self->camera) : NULL;
}

/**
 * lr_finder_update_picture:
 *
 * Paints the picture at the next frame if what the camera sees is another.
 */
void
lr_finder_update_picture (LrFinder *self)
{
  lr_finder_picture_show (LR_FINDER_PICTURE (self->picture), self->document, get_reading (self));
}

/**
 * lr_finder_update:
 *
 * Title and figures tell of the plan that the document shows now.
 */
void
lr_finder_update (LrFinder *self)
{
  const LrCameraReading *camera = get_reading (self);
  gboolean has_camera = camera != NULL;

  gtk_widget_set_visible (self->head, has_camera);
  gtk_widget_set_visible (self->picture, has_camera);
  gtk_widget_set_visible (self->figures, has_camera);
  gtk_widget_set_visible (self->nothing, !has_camera);
  if (has_camera)
    {
      update_choice (self);
      show_camera (self, camera);
    }
  else
    set_label (self->nothing, lr_document_get_study (self->document)->cameras->len == 0
                                ? _("Place a camera to see what it sees.")
                                : _("Place a second camera to see what it would be cut against."));
}
