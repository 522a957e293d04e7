/* finder_picture.c - a camera's picture, painted once for each thing that it shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is painted into an image of the screen's resolution, which a render node shows until the picture is another.
 * Plans share what they have in common, so a look at the pointers tells whether anything changed that a camera can see.
 */

#include "finder_picture.h"

#include "viewfinder.h"

#include <string.h>

#define CORNER_PX 4.0
#define LEAST_WIDTH_PX 160
#define USUAL_ASPECT (16.0 / 9.0)

struct _LrFinderPicture
{
  GtkWidget      parent_instance;

  LrDocument    *document;
  char          *camera;    /* id; NULL: nothing to show */
  LrPlan        *painted;   /* the plan that the image shows; NULL: none */
  LrLightLevels *levels;    /* by which the image is lit; NULL: by none */
  char          *spoken;    /* key of the remark in hand, if something in the picture is outlined for it */
  double         aspect;    /* width : height */
  guint          lines;     /* LrFrameLines of the image */
  LrPictureBox   delivered; /* the delivered frame, of a picture that is 1 wide */
  gboolean       is_plain;  /* without lines, as small as it must be */
  int            max_height_px;
  GskRenderNode *node;
  cairo_surface_t *image;   /* what the node paints; goes after it, or cairo copies it for the node */
  int            node_width_px, node_scale;
};

G_DEFINE_FINAL_TYPE (LrFinderPicture, lr_finder_picture, GTK_TYPE_WIDGET)

static gboolean
has_same_items (const LrSetup *a,
                const LrSetup *b)
{
  return a->items->len == b->items->len && memcmp (a->items->pdata, b->items->pdata, a->items->len * sizeof (gpointer)) == 0;
}

static gboolean
looks_the_same (const LrPlan *a,
                const LrPlan *b)
{
  const LrSetup *setup_a = lr_plan_get_setup (a), *setup_b = lr_plan_get_setup (b);

  if (a->kit != b->kit) /* the lens that is on may have become another */
    return FALSE;
  return setup_a == setup_b || (setup_a->room == setup_b->room && has_same_items (setup_a, setup_b));
}

static void
forget_node (LrFinderPicture *self)
{
  g_clear_pointer (&self->node, gsk_render_node_unref);
  g_clear_pointer (&self->image, cairo_surface_destroy);
}

/* None where others draw over the picture */
static guint
wanted_lines (LrFinderPicture *self)
{
  return self->is_plain || self->document == NULL ? 0 : lr_document_get_frame_lines (self->document);
}

static void
take_levels (LrFinderPicture *self)
{
  LrLightLevels *levels = lr_light_levels_ref (lr_document_get_levels (self->document));

  g_clear_pointer (&self->levels, lr_light_levels_unref);
  self->levels = levels;
}

static LrViewfinderStyle
make_style (LrFinderPicture *self,
            double           width_px)
{
  return (LrViewfinderStyle) {
    .width = width_px, .has_thirds = (self->lines & LR_FRAME_THIRDS) != 0,
    .has_safe_area = (self->lines & LR_FRAME_SAFE_AREAS) != 0, .shows_recorded = (self->lines & LR_FRAME_RECORDED) != 0,
    .has_eye_pointers = TRUE, .remark = lr_document_get_remark (self->document),
    .levels = self->levels,
  };
}

static cairo_surface_t *
paint_image (LrFinderPicture       *self,
             const LrCameraReading *camera,
             int                    width_px,
             int                    height_px,
             int                    scale)
{
  LrViewfinderStyle style = make_style (self, width_px);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width_px * scale, height_px * scale);
  cairo_t *cr;

  cairo_surface_set_device_scale (image, scale, scale);
  cr = cairo_create (image);
  lr_viewfinder_draw (cr, lr_document_get_study (self->document), camera, &style);
  cairo_destroy (cr);
  return image;
}

static void
make_node (LrFinderPicture *self,
           int              width_px,
           int              height_px,
           int              scale)
{
  const LrCameraReading *camera = lr_study_find_camera (lr_document_get_study (self->document), self->camera);
  cairo_t *cr;

  if (camera == NULL)
    return;

  self->image = paint_image (self, camera, width_px, height_px, scale);
  self->node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float) width_px, (float) height_px));
  cr = gsk_cairo_node_get_draw_context (self->node);
  cairo_set_source_surface (cr, self->image, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
  self->node_width_px = width_px;
  self->node_scale = scale;
}

static void
lr_finder_picture_snapshot (GtkWidget   *widget,
                            GtkSnapshot *snapshot)
{
  LrFinderPicture *self = LR_FINDER_PICTURE (widget);
  int width_px = gtk_widget_get_width (widget), height_px = gtk_widget_get_height (widget);
  int scale = gtk_widget_get_scale_factor (widget);
  int picture_width_px = MIN (width_px, (int) (height_px * self->aspect + 0.5));
  graphene_rect_t bounds = GRAPHENE_RECT_INIT ((float) ((width_px - picture_width_px) / 2), 0, (float) picture_width_px, (float) height_px);
  GskRoundedRect outline;

  if (self->camera == NULL || picture_width_px < 1 || height_px < 1)
    return;

  if (self->node == NULL || self->node_width_px != picture_width_px || self->node_scale != scale)
    {
      forget_node (self);
      make_node (self, picture_width_px, height_px, scale);
    }
  if (self->node == NULL)
    return;

  gsk_rounded_rect_init_from_rect (&outline, &bounds, CORNER_PX);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &bounds.origin);
  gtk_snapshot_append_node (snapshot, self->node);
  gtk_snapshot_restore (snapshot);
  gtk_snapshot_pop (snapshot);
}

/* A picture that is higher than it is wide takes no more height than a wide one */
static void
lr_finder_picture_measure (GtkWidget      *widget,
                           GtkOrientation  orientation,
                           int             for_size,
                           int            *minimum,
                           int            *natural,
                           int            *minimum_baseline,
                           int            *natural_baseline)
{
  LrFinderPicture *self = LR_FINDER_PICTURE (widget);
  int least_px = self->is_plain ? 1 : LEAST_WIDTH_PX, width_px = for_size < 0 ? least_px : for_size;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = least_px;
  else if (self->is_plain)
    *minimum = *natural = 1;
  else
    *minimum = *natural = MIN (self->max_height_px, (int) (width_px / MAX (self->aspect, USUAL_ASPECT) + 0.5));
  *minimum_baseline = *natural_baseline = -1;
}

static GtkSizeRequestMode
lr_finder_picture_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
lr_finder_picture_dispose (GObject *object)
{
  LrFinderPicture *self = LR_FINDER_PICTURE (object);

  forget_node (self);
  g_clear_pointer (&self->painted, lr_plan_unref);
  g_clear_pointer (&self->levels, lr_light_levels_unref);
  g_clear_pointer (&self->camera, g_free);
  g_clear_pointer (&self->spoken, g_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_finder_picture_parent_class)->dispose (object);
}

static void
lr_finder_picture_class_init (LrFinderPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_finder_picture_dispose;
  widget_class->snapshot = lr_finder_picture_snapshot;
  widget_class->measure = lr_finder_picture_measure;
  widget_class->get_request_mode = lr_finder_picture_get_request_mode;
  gtk_widget_class_set_css_name (widget_class, "finder");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lr_finder_picture_init (LrFinderPicture *self)
{
  self->aspect = USUAL_ASPECT;
  self->max_height_px = G_MAXINT;
}

/**
 * lr_finder_picture_new:
 *
 * Returns: (transfer full): a picture of nothing
 */
GtkWidget *
lr_finder_picture_new (void)
{
  return g_object_new (LR_TYPE_FINDER_PICTURE, NULL);
}

/**
 * lr_finder_picture_set_max_height:
 * @max_height_px: it is not higher than that [px]
 */
void
lr_finder_picture_set_max_height (LrFinderPicture *self,
                                  int              max_height_px)
{
  if (self->max_height_px == max_height_px)
    return;

  self->max_height_px = max_height_px;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/**
 * lr_finder_picture_set_plain:
 * @is_plain: it has no lines of thirds and no safe area, and fills what room it is given
 *
 * For pictures that others draw over.
 */
void
lr_finder_picture_set_plain (LrFinderPicture *self,
                             gboolean         is_plain)
{
  self->is_plain = is_plain;
  if (self->camera != NULL && self->document != NULL)
    lr_finder_picture_show (self, self->document, lr_study_find_camera (lr_document_get_study (self->document), self->camera));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* Key of the remark in hand if it is about something in the camera's picture; (nullable) */
static const char *
spoken_key (LrDocument            *document,
            const LrCameraReading *camera)
{
  const LrRemark *remark = lr_document_get_remark (document);
  gboolean is_of_picture = remark != NULL
                           && (remark->check == LR_CHECK_IN_FRAME || remark->check == LR_CHECK_IN_FRONT
                               || remark->check == LR_CHECK_BOOM_MARGIN || remark->check == LR_CHECK_ROOM_SEEN);

  return is_of_picture && g_strv_contains ((const char *const *) remark->ids, camera->item->id) ? remark->key : NULL;
}

static gboolean
is_up_to_date (LrFinderPicture       *self,
               LrPlan                *plan,
               const LrCameraReading *camera)
{
  return self->painted != NULL && self->levels != NULL && lr_light_levels_shine_alike (self->levels, lr_document_get_levels (self->document))
         && self->lines == wanted_lines (self) && g_strcmp0 (self->camera, camera->item->id) == 0
         && g_strcmp0 (self->spoken, spoken_key (self->document, camera)) == 0 && looks_the_same (self->painted, plan);
}

/**
 * lr_finder_picture_show:
 * @document: whose plan is shown
 * @camera: (nullable): a reading of its study
 *
 * Paints anew at the next frame if what the camera sees may be another.
 */
void
lr_finder_picture_show (LrFinderPicture       *self,
                        LrDocument            *document,
                        const LrCameraReading *camera)
{
  LrPlan *plan = lr_document_get_plan (document);
  LrPictureBox picture;
  LrViewfinderStyle style;
  double aspect;

  g_set_object (&self->document, document);
  if (camera == NULL)
    {
      g_clear_pointer (&self->camera, g_free);
      g_clear_pointer (&self->painted, lr_plan_unref);
      forget_node (self);
      gtk_widget_queue_draw (GTK_WIDGET (self));
      return;
    }
  if (is_up_to_date (self, plan, camera))
    return;

  plan = lr_plan_ref (plan);
  g_clear_pointer (&self->painted, lr_plan_unref);
  self->painted = plan;
  take_levels (self);
  g_free (self->camera);
  self->camera = g_strdup (camera->item->id);
  g_free (self->spoken);
  self->spoken = g_strdup (spoken_key (document, camera));
  self->lines = wanted_lines (self);
  style = make_style (self, 1.0);
  lr_viewfinder_place (camera, &style, &picture, &self->delivered);
  aspect = picture.height > 0.0 ? picture.width / picture.height : USUAL_ASPECT;
  if (aspect != self->aspect)
    {
      self->aspect = aspect;
      gtk_widget_queue_resize (GTK_WIDGET (self));
    }
  forget_node (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_finder_picture_get_camera:
 *
 * Returns: (transfer none) (nullable): id of the camera whose picture it shows
 */
const char *
lr_finder_picture_get_camera (LrFinderPicture *self)
{
  return self->camera;
}

/**
 * lr_finder_picture_get_area:
 * @area: (out): where in the widget the delivered frame is [px]
 *
 * Returns: %FALSE, with @area untouched, if there is none
 */
gboolean
lr_finder_picture_get_area (LrFinderPicture *self,
                            graphene_rect_t *area)
{
  int width_px = gtk_widget_get_width (GTK_WIDGET (self)), height_px = gtk_widget_get_height (GTK_WIDGET (self));
  int picture_width_px = MIN (width_px, (int) (height_px * self->aspect + 0.5));

  if (self->camera == NULL || picture_width_px < 1)
    return FALSE;

  *area = GRAPHENE_RECT_INIT ((float) ((width_px - picture_width_px) / 2 + picture_width_px * self->delivered.x),
                              (float) (picture_width_px * self->delivered.y),
                              (float) (picture_width_px * self->delivered.width),
                              (float) (picture_width_px * self->delivered.height));
  return TRUE;
}
