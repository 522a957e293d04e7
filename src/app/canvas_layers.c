/* canvas_layers.c - the sheet in two layers: what stands still, and the one thing that moves
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stands still is painted into one image, wrapped in a cairo node that is kept as long as the image holds: the
 * renderer compares node trees by pointer, so an unchanged node costs nothing and only the moving thing's rectangle is
 * painted again. A texture in place of the cairo node would be copied in every frame.
 *
 * A pan or zoom moves or scales the old image if painting a new one would take longer than a frame may, and paints it
 * when the hand rests.
 */

#include "config.h"

#include "canvas_private.h"

/* A gesture paints every frame afresh as long as that takes no longer than this; else it moves the old image */
#define GESTURE_PAINT_MS 7.0

/* How long a gesture rests before the image is painted at the new scale */
#define SETTLE_MS 120

/* Room for antialiasing at the edge of the moving thing's rectangle */
#define EDGE_PX 2.0

/* Height of the bands in which the image is painted to the window */
#define BAND_PX 64

static void
clear_key (LrCanvasLayerKey *key)
{
  g_clear_pointer (&key->plan, lr_plan_unref);
  g_clear_pointer (&key->skip, g_free);
  g_clear_pointer (&key->in_hand, g_free);
  g_clear_pointer (&key->levels, lr_light_levels_unref);
}

/* A sum over the things with a Fix, the active one left out: its own is painted with it. The order does not matter. */
static guint
hash_fixes (const LrRemarks *remarks,
            const char      *skip)
{
  guint hash = 0;

  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (remarks->all, i);

      if (remark->grade != LR_GRADE_FIX)
        break;
      for (char **id = remark->ids; id != NULL && *id != NULL; id++)
        if (g_strcmp0 (*id, skip) != 0)
          hash += g_str_hash (*id);
    }
  return hash;
}

/* Whether two plans show the same on the sheet but for one item. Items and rooms are shared between plans that did not
 * change them, so pointers tell. */
static gboolean
is_same_but_for (const LrPlan *a,
                 const LrPlan *b,
                 const char   *skip)
{
  const LrSetup *old_setup = lr_plan_get_setup (a), *new_setup = lr_plan_get_setup (b);

  if (a == b)
    return TRUE;
  if (skip == NULL || old_setup->room != new_setup->room || old_setup->items->len != new_setup->items->len)
    return FALSE;

  for (guint i = 0; i < new_setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (new_setup->items, i);

      if (item != g_ptr_array_index (old_setup->items, i) && strcmp (item->id, skip) != 0)
        return FALSE;
    }
  return TRUE;
}

static gboolean
has_same_geometry (const LrView *a,
                   const LrView *b)
{
  return a->scale == b->scale && a->origin.x == b->origin.x && a->origin.y == b->origin.y
         && a->width == b->width && a->height == b->height;
}

static gboolean
key_holds (LrCanvas   *self,
           const char *skip)
{
  const LrCanvasLayerKey *key = &self->layers.key;
  const LrView *now = &self->view;
  LrPlan *plan = lr_document_get_plan (self->document);

  return key->plan != NULL
         && key->scale_factor == gtk_widget_get_scale_factor (GTK_WIDGET (self))
         && g_strcmp0 (key->skip, skip) == 0
         && is_same_but_for (key->plan, plan, skip)
         && key->view.theme == now->theme && key->view.units == now->units && key->view.shown == now->shown
         && key->view.sun_minute == now->sun_minute && key->levels == now->levels
         && key->view.is_read_only == now->is_read_only
         && key->view.remark == (skip == NULL ? now->remark : NULL)
         && key->view.ghost == (skip == NULL ? now->ghost : NULL) && key->view.planned == now->planned
         && key->view.is_dragging == now->is_dragging
         && g_strcmp0 (key->in_hand, now->in_hand) == 0
         && (skip != NULL || key->fixes == hash_fixes (lr_document_get_remarks (self->document), NULL));
}

/* Remembers what the image is painted from; returns the view to paint with, whose texts the key owns */
static LrView
take_key (LrCanvas   *self,
          const char *skip)
{
  LrCanvasLayerKey *key = &self->layers.key;

  clear_key (key);
  key->view = self->view;
  key->scale_factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  key->plan = lr_plan_ref (lr_document_get_plan (self->document));
  key->skip = g_strdup (skip);
  key->in_hand = g_strdup (self->view.in_hand);
  if (self->view.levels != NULL)
    key->levels = lr_light_levels_ref (lr_light_levels_get_settled (lr_document_get_levels (self->document)));
  key->fixes = hash_fixes (lr_document_get_remarks (self->document), skip);
  key->view.skip = key->skip;
  key->view.in_hand = key->in_hand;
  key->view.pointed = NULL;
  if (skip != NULL)
    {
      key->view.remark = NULL;
      key->view.ghost = NULL;
    }
  return key->view;
}

static void
paint_ground (cairo_t       *cr,
              const LrTheme *theme)
{
  lr_theme_set_color (cr, theme->ground, 1.0);
  cairo_paint (cr);
}

static GskRenderNode *
image_node (cairo_surface_t       *image,
            const graphene_rect_t *part)
{
  GskRenderNode *node = gsk_cairo_node_new (part);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);

  cairo_set_source_surface (cr, image, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
  return node;
}

/* Cairo paints a node by way of a second image as large as the part of the node that it paints. In bands that image stays
 * small enough for the processor's cache. */
static GskRenderNode *
banded_image_node (cairo_surface_t *image,
                   int              width,
                   int              height)
{
  g_autoptr (GPtrArray) bands = g_ptr_array_new_with_free_func ((GDestroyNotify) gsk_render_node_unref);

  for (int y = 0; y < height; y += BAND_PX)
    g_ptr_array_add (bands, image_node (image, &GRAPHENE_RECT_INIT (0, (float) y, (float) width, (float) MIN (BAND_PX, height - y))));
  return gsk_container_node_new ((GskRenderNode **) bands->pdata, bands->len);
}

static void
clear_node (LrCanvasLayers *layers)
{
  g_clear_pointer (&layers->node, gsk_render_node_unref);
  g_clear_pointer (&layers->image, cairo_surface_destroy);
  g_clear_pointer (&layers->fixes_node, gsk_render_node_unref);
  layers->fixes = 0;
}

static void
paint_layer (LrCanvas   *self,
             const char *skip)
{
  LrCanvasLayers *layers = &self->layers;
  LrView view = take_key (self, skip);
  int scale = layers->key.scale_factor;
  gint64 start_us = g_get_monotonic_time ();
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (view.width * scale),
                                                       (int) (view.height * scale));
  cairo_t *cr;

  cairo_surface_set_device_scale (image, scale, scale);
  cr = cairo_create (image);
  paint_ground (cr, view.theme);
  lr_floor_draw (cr, lr_document_get_plan (self->document), lr_document_get_study (self->document),
                 lr_document_get_remarks (self->document), &view);
  cairo_destroy (cr);

  clear_node (layers);
  layers->node = banded_image_node (image, (int) view.width, (int) view.height);
  layers->image = image;
  layers->paint_ms = (double) (g_get_monotonic_time () - start_us) / 1000.0;
}

typedef void (*Draw) (LrCanvas *self, cairo_t *cr);

/* What moves is drawn with 16 steps from ground to ink in place of 255, which nobody sees in motion; when it rests it is in the
 * layer again, with all of them */
static void
draw_active (LrCanvas *self,
             cairo_t  *cr)
{
  LrView view = self->view;

  view.only = lr_canvas_get_active (self);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  lr_floor_draw (cr, lr_document_get_plan (self->document), lr_document_get_study (self->document),
                 lr_document_get_remarks (self->document), &view);
}

static void
draw_pointed (LrCanvas *self,
              cairo_t  *cr)
{
  lr_floor_draw_pointed (cr, lr_document_get_study (self->document), lr_document_get_remarks (self->document), &self->view);
}

static void
draw_still_fixes (LrCanvas *self,
                  cairo_t  *cr)
{
  LrView view = self->view;

  view.skip = lr_canvas_get_active (self);
  lr_floor_draw_still_fixes (cr, lr_document_get_study (self->document), lr_document_get_remarks (self->document), &view);
}

/* A drawing over the layer. What the renderer paints again is the node's rectangle, so it is cut to what is really inked.
 * Returns: (transfer full) (nullable) */
static GskRenderNode *
inked_node (LrCanvas *self,
            Draw      draw)
{
  graphene_rect_t sheet = GRAPHENE_RECT_INIT (0, 0, (float) self->view.width, (float) self->view.height), ink;
  GskRenderNode *drawing = gsk_cairo_node_new (&sheet), *cut = NULL;
  cairo_t *cr = gsk_cairo_node_get_draw_context (drawing);
  double x, y, width, height;

  draw (self, cr);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (gsk_cairo_node_get_surface (drawing), &x, &y, &width, &height);
  ink = GRAPHENE_RECT_INIT ((float) floor (x - EDGE_PX), (float) floor (y - EDGE_PX),
                            (float) ceil (width + 2.0 * EDGE_PX + 1.0), (float) ceil (height + 2.0 * EDGE_PX + 1.0));
  if (width > 0.0 && height > 0.0 && graphene_rect_intersection (&ink, &sheet, &ink))
    cut = gsk_clip_node_new (drawing, &ink);
  gsk_render_node_unref (drawing);
  return cut;
}

static void
append_inked (LrCanvas    *self,
              GtkSnapshot *snapshot,
              Draw         draw)
{
  GskRenderNode *node = inked_node (self, draw);

  if (node == NULL)
    return;

  gtk_snapshot_append_node (snapshot, node);
  gsk_render_node_unref (node);
}

/* They are kept as long as they are the same */
static void
append_still_fixes (LrCanvas    *self,
                    GtkSnapshot *snapshot)
{
  LrCanvasLayers *layers = &self->layers;
  guint fixes = hash_fixes (lr_document_get_remarks (self->document), lr_canvas_get_active (self));

  if (layers->fixes != fixes)
    {
      g_clear_pointer (&layers->fixes_node, gsk_render_node_unref);
      layers->fixes_node = inked_node (self, draw_still_fixes);
      layers->fixes = fixes;
    }
  if (layers->fixes_node != NULL)
    gtk_snapshot_append_node (snapshot, layers->fixes_node);
}

/* The old image, moved and scaled to where it belongs now: whole, as bands would show seams between pixels */
static void
append_moved (LrCanvas    *self,
              GtkSnapshot *snapshot)
{
  const LrView *then = &self->layers.key.view, *now = &self->view;
  double zoom = now->scale / then->scale;
  LrColor ground = now->theme->ground;
  GdkRGBA color = { (float) ground.r, (float) ground.g, (float) ground.b, 1.0F };
  GskRenderNode *whole = image_node (self->layers.image, &GRAPHENE_RECT_INIT (0, 0, (float) then->width, (float) then->height));

  gtk_snapshot_append_color (snapshot, &color, &GRAPHENE_RECT_INIT (0, 0, (float) now->width, (float) now->height));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (now->origin.x - then->origin.x * zoom),
                                                          (float) (now->origin.y - then->origin.y * zoom)));
  gtk_snapshot_scale (snapshot, (float) zoom, (float) zoom);
  gtk_snapshot_append_node (snapshot, whole);
  gtk_snapshot_restore (snapshot);
  gsk_render_node_unref (whole);
}

/**
 * lr_canvas_layers_snapshot:
 * @self: a canvas
 * @snapshot: a snapshot
 *
 * Appends what stands still from an image that is kept, and what moves.
 */
void
lr_canvas_layers_snapshot (LrCanvas    *self,
                           GtkSnapshot *snapshot)
{
  LrCanvasLayers *layers = &self->layers;
  const char *active = lr_canvas_get_active (self);
  gboolean holds = layers->node != NULL && key_holds (self, active);

  if (holds && !has_same_geometry (&layers->key.view, &self->view)
      && layers->is_moving && layers->paint_ms > GESTURE_PAINT_MS)
    {
      append_moved (self, snapshot);
      if (lr_canvas_has_marks (self))
        append_inked (self, snapshot, lr_canvas_draw_marks);
      return;
    }

  if (!holds || !has_same_geometry (&layers->key.view, &self->view))
    paint_layer (self, active);
  gtk_snapshot_append_node (snapshot, layers->node);
  if (active != NULL)
    {
      append_still_fixes (self, snapshot);
      append_inked (self, snapshot, draw_active);
    }
  if (self->view.pointed != NULL)
    append_inked (self, snapshot, draw_pointed);
  if (lr_canvas_has_marks (self))
    append_inked (self, snapshot, lr_canvas_draw_marks);
}

/**
 * lr_canvas_layers_invalidate:
 * @self: a canvas
 *
 * What stands still is painted anew at the next frame.
 */
void
lr_canvas_layers_invalidate (LrCanvas *self)
{
  clear_node (&self->layers);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
settle_cb (gpointer data)
{
  LrCanvas *self = data;

  self->layers.settle_id = 0;
  self->layers.is_moving = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

/**
 * lr_canvas_layers_moving:
 * @self: a canvas
 *
 * A step of a pan or zoom was made: until it rests the kept image is moved and scaled.
 */
void
lr_canvas_layers_moving (LrCanvas *self)
{
  g_clear_handle_id (&self->layers.settle_id, g_source_remove);
  self->layers.is_moving = TRUE;
  self->layers.settle_id = g_timeout_add (SETTLE_MS, settle_cb, self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_canvas_layers_clear:
 * @self: a canvas
 *
 * Frees the kept image.
 */
void
lr_canvas_layers_clear (LrCanvas *self)
{
  g_clear_handle_id (&self->layers.settle_id, g_source_remove);
  clear_node (&self->layers);
  clear_key (&self->layers.key);
}
