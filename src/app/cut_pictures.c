/* cut_pictures.c - the pictures of two cameras side by side, and what the cut does between them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each picture is one of the viewfinders' kind, that paints itself when what it shows is another; the lines over both are a few
 * strokes and drawn anew each time.
 */

#include "config.h"

#include "cut_pictures.h"

#include "badge.h"
#include "finder_hand.h"
#include "finder_picture.h"

#include <glib/gi18n-lib.h>

#define ABOVE_PX 4 /* kept for the ends of the splice, and below */
#define LEAST_WIDTH_PX 240

struct _LrCutPictures
{
  GtkWidget   parent_instance;

  LrDocument *document;
  GtkWidget  *pictures[LR_STRIP_SIDES];
  char       *cameras[LR_STRIP_SIDES]; /* ids; NULL: nothing is shown */
  double      aspects[LR_STRIP_SIDES]; /* that it was measured with */
  int         max_height_px;
};

G_DEFINE_FINAL_TYPE (LrCutPictures, lr_cut_pictures, GTK_TYPE_WIDGET)

/* The strip of the study that the document has now */
static gboolean
get_strip (LrCutPictures *self,
           LrStrip       *strip)
{
  return self->cameras[0] != NULL
         && lr_strip_init (strip, lr_document_get_study (self->document), lr_document_get_remarks (self->document),
                           self->cameras[0], self->cameras[1]);
}

static LrStripStyle
make_style (LrCutPictures *self,
            const LrStrip *strip,
            int            width_px)
{
  const LrRemark *remark = lr_document_get_remark (self->document);
  LrStripStyle style = { .width = width_px, .most_height = self->max_height_px, .unit = 1.0 };

  if (remark != NULL && lr_strip_is_about (strip, remark))
    {
      style.is_in_hand = TRUE;
      style.grade = remark->grade;
    }
  return style;
}

static LrStripPlace
get_place (LrCutPictures *self,
           const LrStrip *strip,
           int            width_px)
{
  const LrStripStyle style = make_style (self, strip, width_px);
  LrStripPlace place;

  lr_strip_place (strip, &style, &place);
  return place;
}

static void
lr_cut_pictures_measure (GtkWidget      *widget,
                         GtkOrientation  orientation,
                         int             for_size,
                         int            *minimum,
                         int            *natural,
                         int            *minimum_baseline,
                         int            *natural_baseline)
{
  LrCutPictures *self = LR_CUT_PICTURES (widget);
  LrStrip strip;
  int least;

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    gtk_widget_measure (self->pictures[i], orientation, -1, &least, NULL, NULL, NULL);

  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = LEAST_WIDTH_PX;
  else if (get_strip (self, &strip))
    *minimum = *natural = (int) ceil (get_place (self, &strip, for_size < 0 ? LEAST_WIDTH_PX : for_size).height) + 2 * ABOVE_PX;
  else
    *minimum = *natural = 0;
}

static GtkSizeRequestMode
lr_cut_pictures_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
lr_cut_pictures_size_allocate (GtkWidget *widget,
                               int        width_px,
                               int        height_px,
                               int        baseline)
{
  LrCutPictures *self = LR_CUT_PICTURES (widget);
  LrStripPlace place;
  LrStrip strip;

  if (!get_strip (self, &strip))
    return;

  place = get_place (self, &strip, width_px);
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      GtkAllocation box = { (int) (place.x[i] + 0.5), ABOVE_PX, (int) (place.width[i] + 0.5), (int) (place.height + 0.5) };

      gtk_widget_size_allocate (self->pictures[i], &box, -1);
    }
}

static void
lr_cut_pictures_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  LrCutPictures *self = LR_CUT_PICTURES (widget);
  int width_px = gtk_widget_get_width (widget), height_px = gtk_widget_get_height (widget);
  LrStripStyle style;
  LrStrip strip;
  cairo_t *cr;

  if (!get_strip (self, &strip) || width_px < 1 || height_px < 1)
    return;

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    gtk_widget_snapshot_child (widget, self->pictures[i], snapshot);

  style = make_style (self, &strip, width_px);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width_px, (float) height_px));
  cairo_translate (cr, 0.0, ABOVE_PX);
  lr_strip_draw_guides (cr, lr_theme_get (lr_widget_get_theme_id (widget)), &strip, &style);
  cairo_destroy (cr);
}

static void
lr_cut_pictures_css_changed (GtkWidget         *widget,
                             GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_cut_pictures_parent_class)->css_changed (widget, change);
  gtk_widget_queue_draw (widget);
}

static void
select_side (LrCutPictures *self,
             int            side)
{
  if (self->cameras[side] != NULL)
    lr_document_select (self->document, self->cameras[side]);
}

/* The picture that has the focus */
static void
select_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  LrCutPictures *self = LR_CUT_PICTURES (widget);

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    if (gtk_widget_has_focus (self->pictures[i]))
      select_side (self, i);
}

static void
pressed_cb (GtkGesture    *gesture,
            int            n_press,
            double         x,
            double         y,
            LrCutPictures *self)
{
  GtkWidget *picture = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));

  gtk_widget_grab_focus (picture);
  select_side (self, picture == self->pictures[0] ? 0 : 1);
}

static void
lr_cut_pictures_dispose (GObject *object)
{
  LrCutPictures *self = LR_CUT_PICTURES (object);

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      g_clear_pointer (&self->pictures[i], gtk_widget_unparent);
      g_clear_pointer (&self->cameras[i], g_free);
    }
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_cut_pictures_parent_class)->dispose (object);
}

static void
lr_cut_pictures_class_init (LrCutPicturesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_cut_pictures_dispose;
  widget_class->measure = lr_cut_pictures_measure;
  widget_class->get_request_mode = lr_cut_pictures_get_request_mode;
  widget_class->size_allocate = lr_cut_pictures_size_allocate;
  widget_class->snapshot = lr_cut_pictures_snapshot;
  widget_class->css_changed = lr_cut_pictures_css_changed;
  gtk_widget_class_install_action (widget_class, "cut.select", NULL, select_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, 0, "cut.select", NULL);
  gtk_widget_class_set_css_name (widget_class, "cut");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lr_cut_pictures_init (LrCutPictures *self)
{
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      GtkGesture *click = gtk_gesture_click_new ();

      self->pictures[i] = lr_finder_picture_new ();
      lr_finder_picture_set_plain (LR_FINDER_PICTURE (self->pictures[i]), TRUE);
      gtk_widget_set_focusable (self->pictures[i], TRUE);
      gtk_widget_set_parent (self->pictures[i], GTK_WIDGET (self));
      g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
      gtk_widget_add_controller (self->pictures[i], GTK_EVENT_CONTROLLER (click));
    }
}

/**
 * lr_cut_pictures_new:
 * @document: whose cameras are shown
 *
 * Returns: (transfer full): pictures of nothing yet
 */
GtkWidget *
lr_cut_pictures_new (LrDocument *document)
{
  LrCutPictures *self = g_object_new (LR_TYPE_CUT_PICTURES, NULL);

  self->document = g_object_ref (document);
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    lr_finder_hand_add (LR_FINDER_PICTURE (self->pictures[i]), document);
  return GTK_WIDGET (self);
}

/**
 * lr_cut_pictures_set_max_height:
 * @max_height_px: the pictures are not higher than that [px]
 */
void
lr_cut_pictures_set_max_height (LrCutPictures *self,
                                int            max_height_px)
{
  if (self->max_height_px == max_height_px)
    return;

  self->max_height_px = max_height_px;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
name_picture (GtkWidget             *picture,
              const LrCameraReading *camera)
{
  g_autofree char *name = lr_item_title (camera->item);
  /* Translators: a camera and the size of its shot */
  g_autofree char *title = camera->has_subject ? g_strdup_printf (_("%s, %s"), name, lr_shot_title (camera->framing.shot))
                                               : g_strdup (name);

  gtk_accessible_update_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
}

/**
 * lr_cut_pictures_show:
 * @strip: (nullable): of the document's study
 *
 * Draws the lines of the strip at the next frame.
 */
void
lr_cut_pictures_show (LrCutPictures *self,
                      const LrStrip *strip)
{
  gboolean is_other_size = FALSE;

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      const char *id = strip != NULL ? strip->camera[i]->item->id : NULL;
      double aspect = strip != NULL ? strip->camera[i]->image_aspect : 0.0;

      if (g_strcmp0 (id, self->cameras[i]) != 0)
        {
          g_free (self->cameras[i]);
          self->cameras[i] = g_strdup (id);
        }
      is_other_size |= aspect != self->aspects[i];
      self->aspects[i] = aspect;
      if (strip != NULL)
        name_picture (self->pictures[i], strip->camera[i]);
    }

  if (is_other_size)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_cut_pictures_update_picture:
 * @side: which of the two
 *
 * Paints the picture at the next frame if what the camera sees is another.
 */
void
lr_cut_pictures_update_picture (LrCutPictures *self,
                                int            side)
{
  LrStrip strip;

  lr_finder_picture_show (LR_FINDER_PICTURE (self->pictures[side]), self->document,
                          get_strip (self, &strip) ? strip.camera[side] : NULL);
}
