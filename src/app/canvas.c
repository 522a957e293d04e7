/* canvas.c - the sheet: the room to scale, under the hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a press to a pixel: a gesture forwards to lr_canvas_drag_begin(), _update() and _end() (canvas_drag.c); these make
 * the next plan (canvas_grips.c) and give it to the document as a preview; the document says "changed"; the snapshot
 * paints the cached layer and the one thing that moves (canvas_layers.c).
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#include "canvas_ways_in.h"

G_DEFINE_FINAL_TYPE (LrCanvas, lr_canvas, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_DOCUMENT,
  PROP_ZOOM_DENOMINATOR,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

/* Text that is lighter than this stands on a dark ground */
#define LIGHT_TEXT 0.5

/* Space between the hint and the edge of the sheet; a hint that fits its line stays below the dimension of a room that fits */
#define HINT_MARGIN_PX 6
#define WRAP_SPARE_PX 48 /* for words that do not fill their lines */

/* Whether nothing of the plan before is in the new one: another document or another room, not an edit */
static gboolean
is_other_plan (const LrPlan *before,
               const LrPlan *now)
{
  const LrSetup *old_setup, *new_setup;

  if (before == NULL)
    return TRUE;

  old_setup = lr_plan_get_setup (before);
  new_setup = lr_plan_get_setup (now);
  if (old_setup->room == new_setup->room)
    return FALSE;
  if (before->job == now->job && g_strcmp0 (old_setup->id, new_setup->id) == 0)
    return FALSE;

  for (guint i = 0; i < new_setup->items->len; i++)
    if (g_ptr_array_find (old_setup->items, g_ptr_array_index (new_setup->items, i), NULL))
      return FALSE;
  return TRUE;
}

/**
 * lr_canvas_update_ways_in:
 * @self: a canvas
 *
 * Shows the ways into an empty plan while there is no room, nor a picture of one.
 */
void
lr_canvas_update_ways_in (LrCanvas *self)
{
  const LrRoom *room = lr_canvas_get_room (self);

  gtk_widget_set_visible (self->ways_in,
                          room != NULL && room->n_corners == 0 && room->underlay == NULL && self->tool == NULL && lr_canvas_get_active (self) == NULL);
}

static void
document_changed_cb (LrCanvas *self)
{
  LrPlan *plan = lr_document_get_plan (self->document);
  gboolean is_other = is_other_plan (self->seen, plan);

  g_clear_pointer (&self->seen, lr_plan_unref);
  self->seen = lr_plan_ref (plan);
  if (is_other)
    {
      self->fits = TRUE;
      lr_canvas_leave_tool (self);
      lr_canvas_take_wall (self, -1);
    }
  lr_canvas_trace_sync (self);
  if (self->fits && !lr_document_has_preview (self->document))
    lr_canvas_place_room (self);

  lr_canvas_children_sync (self);
  lr_canvas_update_ways_in (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
document_hand_cb (LrCanvas *self)
{
  if (lr_document_get_selected (self->document) != NULL)
    lr_canvas_take_wall (self, -1);
  lr_canvas_children_select (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* What of the view is the document's to say */
static void
refresh_view (LrCanvas *self)
{
  LrView *view = &self->view;

  view->theme = lr_canvas_get_theme (self);
  view->units = lr_document_get_units (self->document);
  view->shown = lr_document_get_shown (self->document);
  view->sun_minute = lr_document_get_sun_minute (self->document);
  view->levels = (view->shown & LR_SHOW_LIGHT) != 0 ? lr_light_levels_get_settled (lr_document_get_levels (self->document)) : NULL;
  view->in_hand = self->dropping != NULL ? self->dropping : lr_document_get_selected (self->document);
  view->pointed = lr_document_get_pointed (self->document);
  view->remark = lr_document_get_remark (self->document);
  view->ghost = lr_document_get_ghost (self->document);
  /* two kinds of ghosts at once cannot be told apart */
  view->planned = lr_document_get_shows_planned (self->document) && view->ghost == NULL ? lr_document_get_planned (self->document) : NULL;
  view->only = NULL;
  view->skip = NULL;
  view->is_dragging = lr_canvas_get_active (self) != NULL || lr_canvas_is_dragging (self);
  view->is_read_only = lr_document_get_plan (self->document)->is_read_only;
  view->has_dimensions = TRUE;
}

static void
lr_canvas_snapshot (GtkWidget   *widget,
                    GtkSnapshot *snapshot)
{
  LrCanvas *self = LR_CANVAS (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                               (float) gtk_widget_get_height (widget));

  if (self->document == NULL || bounds.size.width < 1 || bounds.size.height < 1)
    return;

  refresh_view (self);
  gtk_snapshot_push_clip (snapshot, &bounds);
  lr_canvas_layers_snapshot (self, snapshot);
  gtk_widget_snapshot_child (widget, self->ways_in, snapshot);
  gtk_widget_snapshot_child (widget, self->hint, snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
allocate_child (GtkWidget *child,
                int        width,
                int        height,
                double     share_down,
                int        margin)
{
  int most = MAX (width - 2 * margin, 1), w, h;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &w, NULL, NULL);
  /* lines of about one length, not a word alone on the second */
  if (w > most)
    w = MIN (most, w / ((w + most - 1) / most) + WRAP_SPARE_PX);
  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, w, NULL, &h, NULL, NULL);
  h = MIN (h, height);
  gtk_widget_allocate (child, w, h, -1,
                       gsk_transform_translate (NULL, &GRAPHENE_POINT_INIT ((float) ((width - w) / 2),
                                                                            (float) ((height - h) * share_down - margin))));
}

static void
lr_canvas_size_allocate (GtkWidget *widget,
                         int        width,
                         int        height,
                         int        baseline)
{
  LrCanvas *self = LR_CANVAS (widget);

  if (width != (int) self->view.width || height != (int) self->view.height)
    {
      LrVec2 grown = lr_vec2 (width - self->view.width, height - self->view.height);

      self->view.width = width;
      self->view.height = height;
      if (self->fits)
        lr_canvas_place_room (self);
      else
        self->view.origin = lr_vec2_along (self->view.origin, grown, 0.5);
    }

  lr_canvas_children_allocate (self);
  if (gtk_widget_should_layout (self->ways_in))
    allocate_child (self->ways_in, width, height, 0.5, 0);
  if (gtk_widget_should_layout (self->hint))
    allocate_child (self->hint, width, height, 1.0, HINT_MARGIN_PX);
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
  if (self->length_popover != NULL)
    gtk_popover_present (GTK_POPOVER (self->length_popover));
  if (self->trace.popover != NULL)
    gtk_popover_present (GTK_POPOVER (self->trace.popover));
}

static void
lr_canvas_measure (GtkWidget      *widget,
                   GtkOrientation  orientation,
                   int             for_size,
                   int            *minimum,
                   int            *natural,
                   int            *minimum_baseline,
                   int            *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 240 : 180;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 700;
}

static gboolean
lr_canvas_focus (GtkWidget        *widget,
                 GtkDirectionType  direction)
{
  return lr_canvas_children_focus (LR_CANVAS (widget), direction);
}

static void
lr_canvas_css_changed (GtkWidget         *widget,
                       GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_canvas_parent_class)->css_changed (widget, change);
  lr_canvas_layers_invalidate (LR_CANVAS (widget));
}

static void
scale_factor_changed_cb (LrCanvas *self)
{
  lr_canvas_layers_invalidate (self);
}

static void
lr_canvas_get_property (GObject    *object,
                        guint       id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  LrCanvas *self = LR_CANVAS (object);

  switch (id)
    {
    case PROP_DOCUMENT:
      g_value_set_object (value, self->document);
      break;
    case PROP_ZOOM_DENOMINATOR:
      g_value_set_double (value, lr_canvas_get_denominator (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
lr_canvas_set_property (GObject      *object,
                        guint         id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  switch (id)
    {
    case PROP_DOCUMENT:
      lr_canvas_set_document (LR_CANVAS (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
lr_canvas_dispose (GObject *object)
{
  LrCanvas *self = LR_CANVAS (object);

  lr_canvas_set_tool (self, NULL, NULL);
  g_clear_object (&self->document_signals);
  lr_canvas_carry_clear (self);
  lr_canvas_children_clear (self);
  lr_canvas_drag_clear (self);
  lr_canvas_layers_clear (self);
  lr_canvas_trace_clear (self);
  g_clear_pointer (&self->hint, gtk_widget_unparent);
  g_clear_pointer (&self->ways_in, gtk_widget_unparent);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->length_popover, gtk_widget_unparent);
  g_clear_pointer (&self->seen, lr_plan_unref);
  g_clear_pointer (&self->dropping, g_free);
  g_clear_object (&self->document);

  lr_canvas_forget_held (self);
  G_OBJECT_CLASS (lr_canvas_parent_class)->dispose (object);
}

static void
lr_canvas_class_init (LrCanvasClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = lr_canvas_dispose;
  object_class->get_property = lr_canvas_get_property;
  object_class->set_property = lr_canvas_set_property;
  widget_class->snapshot = lr_canvas_snapshot;
  widget_class->size_allocate = lr_canvas_size_allocate;
  widget_class->measure = lr_canvas_measure;
  widget_class->focus = lr_canvas_focus;
  widget_class->css_changed = lr_canvas_css_changed;

  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, LR_TYPE_DOCUMENT,
                                              G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  props[PROP_ZOOM_DENOMINATOR] = g_param_spec_double ("zoom-denominator", NULL, NULL, 0.0, G_MAXDOUBLE, 50.0,
                                                      G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  lr_canvas_zoom_install (widget_class);
  lr_canvas_edits_install (widget_class);
  lr_canvas_carry_install (widget_class);
  lr_canvas_walls_install (widget_class);
  lr_canvas_trace_install (widget_class);
  gtk_widget_class_set_css_name (widget_class, "canvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lr_canvas_init (LrCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->view = (LrView) { .scale = 75.6, .has_dimensions = TRUE };
  self->fits = TRUE;
  self->wall_in_hand = -1;
  self->document_signals = g_signal_group_new (LR_TYPE_DOCUMENT);
  g_signal_group_connect_swapped (self->document_signals, "changed", G_CALLBACK (document_changed_cb), self);
  g_signal_group_connect_swapped (self->document_signals, "lit", G_CALLBACK (document_changed_cb), self);
  g_signal_group_connect_swapped (self->document_signals, "judged", G_CALLBACK (gtk_widget_queue_draw), self);
  g_signal_group_connect_swapped (self->document_signals, "hand", G_CALLBACK (document_hand_cb), self);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (scale_factor_changed_cb), NULL);

  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Sheet"), -1);

  lr_canvas_children_init (self);
  self->ways_in = lr_canvas_ways_in_new ();
  gtk_widget_set_parent (self->ways_in, widget);
  self->hint = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL);
  gtk_label_set_wrap (GTK_LABEL (self->hint), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (self->hint), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_justify (GTK_LABEL (self->hint), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (self->hint, "canvas-hint");
  gtk_widget_set_can_target (self->hint, FALSE);
  gtk_widget_set_visible (self->hint, FALSE);
  gtk_widget_set_parent (self->hint, widget);

  lr_canvas_zoom_init (self);
  lr_canvas_drag_init (self);
  lr_canvas_keys_init (self);
  lr_canvas_drop_init (self);
  lr_canvas_menu_init (self);
}

/**
 * lr_canvas_new:
 *
 * Returns: (transfer floating): an empty sheet that waits for a document
 */
GtkWidget *
lr_canvas_new (void)
{
  return g_object_new (LR_TYPE_CANVAS, NULL);
}

/**
 * lr_canvas_get_document:
 * @self: the sheet
 *
 * Returns: (transfer none) (nullable): what it shows
 */
LrDocument *
lr_canvas_get_document (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), NULL);

  return self->document;
}

/**
 * lr_canvas_set_document:
 * @self: the sheet
 * @document: (nullable): what it shows from now on
 */
void
lr_canvas_set_document (LrCanvas   *self,
                        LrDocument *document)
{
  g_return_if_fail (LR_IS_CANVAS (self));
  g_return_if_fail (document == NULL || LR_IS_DOCUMENT (document));

  if (self->document == document)
    return;

  lr_canvas_drag_cancel (self);
  lr_canvas_leave_tool (self);
  g_set_object (&self->document, document);
  g_signal_group_set_target (self->document_signals, document);
  g_clear_pointer (&self->seen, lr_plan_unref);
  lr_canvas_layers_invalidate (self);
  if (document != NULL)
    document_changed_cb (self);
  else
    lr_canvas_children_clear (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DOCUMENT]);
}

/**
 * lr_canvas_get_view:
 * @self: the sheet
 *
 * Returns: (transfer none): scale, origin and what is shown
 */
const LrView *
lr_canvas_get_view (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), NULL);

  if (self->document != NULL)
    refresh_view (self);
  return &self->view;
}

/**
 * lr_canvas_get_theme:
 * @self: a canvas
 *
 * Returns: (transfer none): the palette of the desktop now
 */
const LrTheme *
lr_canvas_get_theme (LrCanvas *self)
{
  GdkRGBA color;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &color);
  return lr_theme_get ((color.red + color.green + color.blue) / 3.0F > (float) LIGHT_TEXT ? LR_THEME_DARK : LR_THEME_LIGHT);
}

/**
 * lr_canvas_get_active:
 * @self: a canvas
 *
 * Returns: (transfer none) (nullable): id of the thing that moves
 */
const char *
lr_canvas_get_active (LrCanvas *self)
{
  if (self->dropping != NULL)
    return self->dropping;
  return self->drag.has_moved ? self->drag.id : NULL;
}

/**
 * lr_canvas_get_room:
 * @self: a canvas
 *
 * Returns: (transfer none) (nullable): the room of the plan shown; %NULL: none is drawn yet
 */
const LrRoom *
lr_canvas_get_room (LrCanvas *self)
{
  return self->document != NULL ? lr_plan_get_setup (lr_document_get_plan (self->document))->room : NULL;
}

/**
 * lr_canvas_to_room:
 * @self: a canvas
 * @at: a place on it [px]
 *
 * Returns: the place in the room there [m]
 */
LrVec2
lr_canvas_to_room (LrCanvas *self,
                   LrVec2    at)
{
  return lr_view_to_room (&self->view, at);
}
