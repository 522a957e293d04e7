/* trace_scale.c - the tool that gives the picture of a floor plan its scale
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two points of the picture, and how far apart they are in the room: engine/similarity.c does the rest. A glass beside the pointer
 * shows the place four times as large. Without a pointer the arrow keys move a cross, and Enter sets it.
 */

#include "config.h"

#include "canvas_private.h"
#include "text.h"

#include <glib/gi18n-lib.h>

#define GLASS_PX 62.0     /* radius */
#define GLASS_OFF_PX 92.0 /* from the pointer */
#define GLASS_ZOOM 4.0
#define CROSS_PX 9.0
#define STEP_PX 10.0
#define FINE_STEP_PX 1.0

/* A line nearer to level or upright than this was meant to be it */
#define MEANT_RAD (4.0 * LR_DEG)
/* Nobody sees a turn by less */
#define SEEN_RAD (0.005 * LR_DEG)

typedef struct
{
  LrVec2   points[2]; /* of the picture, x right and y up from its lower left corner */
  int      n_points;
  LrVec2   cross;     /* device */
} Scale;

static const LrCanvasTool tool;

static Scale *
scale_of (LrCanvas *self)
{
  return self->tool_data;
}

static LrVec2
point_m (LrCanvas *self,
         int       index)
{
  LrSimilarity lies = { .scale = 1.0 };

  lr_canvas_trace_lies (self, &lies);
  return lr_similarity_apply (&lies, scale_of (self)->points[index]);
}

static void
update_hint (LrCanvas *self)
{
  if (scale_of (self)->n_points == 0)
    lr_canvas_set_hint (self, _("Click one end of a length that you know, a wall or a door; the wheel comes nearer. "
                                "Arrow keys move the cross, Enter sets it."));
  else if (scale_of (self)->n_points == 1)
    lr_canvas_set_hint (self, _("Click the other end. Backspace takes the first one back."));
  else
    lr_canvas_set_hint (self, _("Type how far apart they are in the room."));
}

static void
changed (LrCanvas *self)
{
  update_hint (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
leave (LrCanvas *self)
{
  g_free (self->tool_data);
  self->tool_data = NULL;
  /* a popover that is taken away while it is open keeps the pointer for ever */
  if (self->trace.popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (self->trace.popover));
}

static GtkWidget *
part (LrCanvas   *self,
      const char *name)
{
  return g_object_get_data (G_OBJECT (self->trace.popover), name);
}

/* A room that is not drawn yet is drawn next; else the whole of it is shown */
static void
go_on (LrCanvas *self)
{
  self->fits = FALSE;
  lr_canvas_trace_fit (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  g_object_notify (G_OBJECT (self), "zoom-denominator");
  if (lr_canvas_get_room (self)->n_corners == 0)
    lr_canvas_draw_room (self);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
apply_cb (LrCanvas *self)
{
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (part (self, "entry")));
  gboolean is_straightened = gtk_check_button_get_active (GTK_CHECK_BUTTON (part (self, "straighten")));
  Scale *scale = scale_of (self);
  LrSimilarity before, after;
  GError *error = NULL;
  double distance_m;
  LrPlan *next;

  if (!lr_length_parse (typed, lr_document_get_units (self->document), &distance_m) || !(distance_m > 0.0))
    {
      gtk_widget_add_css_class (part (self, "entry"), "error");
      lr_document_say (self->document, _("That is not a length. Write it as 3.6, 360 cm or 11' 10\"."));
      return;
    }
  if (!lr_canvas_trace_lies (self, &before)
      || !lr_similarity_scaled (&before, scale->points[0], scale->points[1], distance_m, is_straightened, &after))
    return;

  next = lr_plan_place_underlay (lr_document_get_committed (self->document), &after, TRUE, &error);
  if (next == NULL)
    {
      gtk_widget_add_css_class (part (self, "entry"), "error");
      lr_canvas_commit (self, NULL, error, NULL, NULL);
      return;
    }
  lr_canvas_leave_tool (self);
  lr_canvas_commit (self, next, NULL, _("Scale the picture"), NULL);
  go_on (self);
}

static void
typed_cb (GtkWidget *entry)
{
  gtk_widget_remove_css_class (entry, "error");
}

/* Closed by Escape or a click elsewhere: the second point is taken again */
static void
closed_cb (LrCanvas *self)
{
  if (self->tool != &tool)
    return;
  scale_of (self)->n_points = 1;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  changed (self);
}

static void
keep_part (GtkWidget  *popover,
           const char *name,
           GtkWidget  *widget)
{
  g_object_set_data (G_OBJECT (popover), name, widget);
}

static GtkWidget *
make_popover (LrCanvas *self)
{
  GtkWidget *popover = gtk_popover_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new_with_mnemonic (_("_Apart in the room")), *entry = gtk_entry_new ();
  GtkWidget *button = gtk_button_new_with_mnemonic (_("_Scale")), *straighten = gtk_check_button_new ();

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 9);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _("How far apart the two points are in the room"), -1);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (apply_cb), self);
  g_signal_connect (entry, "changed", G_CALLBACK (typed_cb), NULL);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (apply_cb), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), entry);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), straighten);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  keep_part (popover, "entry", entry);
  keep_part (popover, "straighten", straighten);
  g_signal_connect_object (popover, "closed", G_CALLBACK (closed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  return popover;
}

/* "Straighten: turns the picture by 0.8° to the right", if that is more than nothing */
static void
offer_straightening (LrCanvas *self,
                     LrVec2    way_m)
{
  double by_rad = lr_straighten_rad (way_m);
  g_autofree char *angle = g_strdup_printf ("%.1f°", fabs (by_rad) / LR_DEG);
  g_autofree char *text = NULL;
  GtkWidget *check = part (self, "straighten");
  gboolean is_level = fabs (way_m.x) > fabs (way_m.y);

  /* Translators: %s is an angle, 0.8° */
  text = g_strdup_printf (is_level ? _("They are _level: turn the picture by %s") : _("They are _upright: turn the picture by %s"), angle);
  gtk_check_button_set_use_underline (GTK_CHECK_BUTTON (check), TRUE);
  gtk_check_button_set_label (GTK_CHECK_BUTTON (check), text);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), fabs (by_rad) < MEANT_RAD);
  gtk_widget_set_visible (check, fabs (by_rad) > SEEN_RAD);
}

static void
ask (LrCanvas *self)
{
  LrVec2 a_m = point_m (self, 0), b_m = point_m (self, 1), middle = lr_view_to_device (&self->view, lr_vec2_along (a_m, lr_vec2_sub (b_m, a_m), 0.5));

  if (self->trace.popover == NULL)
    self->trace.popover = make_popover (self);
  gtk_editable_set_text (GTK_EDITABLE (part (self, "entry")), "");
  offer_straightening (self, lr_vec2_sub (b_m, a_m));
  gtk_popover_set_pointing_to (GTK_POPOVER (self->trace.popover), &(GdkRectangle) { (int) CLAMP (middle.x, 0.0, self->view.width),
                                                                                    (int) CLAMP (middle.y, 0.0, self->view.height), 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->trace.popover));
  gtk_widget_grab_focus (part (self, "entry"));
}

static void
set_point (LrCanvas *self,
           LrVec2    at)
{
  Scale *scale = scale_of (self);
  LrSimilarity lies;
  LrVec2 point;

  if (!lr_canvas_trace_lies (self, &lies))
    return;
  if (scale->n_points == 2)
    scale->n_points = 1;

  point = lr_similarity_invert (&lies, lr_canvas_to_room (self, at));
  if (scale->n_points == 1 && lr_vec2_distance (lr_view_to_device (&self->view, point_m (self, 0)), at) < 2.0)
    return; /* a double click is one */
  scale->points[scale->n_points++] = point;
  changed (self);
  if (scale->n_points == 2)
    ask (self);
}

static void
hover (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  scale_of (self)->cross = at;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
click (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  scale_of (self)->cross = at;
  set_point (self, at);
}

static void
move_cross (LrCanvas        *self,
            double           x,
            double           y,
            GdkModifierType  state)
{
  Scale *scale = scale_of (self);
  double step = state & GDK_SHIFT_MASK ? FINE_STEP_PX : STEP_PX;

  scale->cross = lr_vec2 (CLAMP (scale->cross.x + x * step, 0.0, self->view.width), CLAMP (scale->cross.y + y * step, 0.0, self->view.height));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
key (LrCanvas        *self,
     guint            keyval,
     GdkModifierType  state)
{
  Scale *scale = scale_of (self);

  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;

  switch (keyval)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      set_point (self, scale->cross);
      return TRUE;
    case GDK_KEY_BackSpace:
      scale->n_points = MAX (scale->n_points - 1, 0);
      changed (self);
      return TRUE;
    case GDK_KEY_Left:
      move_cross (self, -1.0, 0.0, state);
      return TRUE;
    case GDK_KEY_Right:
      move_cross (self, 1.0, 0.0, state);
      return TRUE;
    case GDK_KEY_Up:
      move_cross (self, 0.0, -1.0, state);
      return TRUE;
    case GDK_KEY_Down:
      move_cross (self, 0.0, 1.0, state);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
draw_cross (LrCanvas *self,
            cairo_t  *cr,
            LrVec2    at,
            LrColor   color)
{
  const LrTheme *theme = self->view.theme;

  for (int pass = 0; pass < 2; pass++)
    {
      cairo_move_to (cr, at.x - CROSS_PX, at.y);
      cairo_line_to (cr, at.x + CROSS_PX, at.y);
      cairo_move_to (cr, at.x, at.y - CROSS_PX);
      cairo_line_to (cr, at.x, at.y + CROSS_PX);
      lr_theme_set_line (cr, theme, pass == 0 ? LR_LINE_WALL : LR_LINE_OUTLINE, LR_DASH_SOLID);
      lr_theme_set_color (cr, pass == 0 ? theme->room : color, 1.0);
      cairo_stroke (cr);
    }
}

/* The place under the cross, larger, to the right above it or where there is room */
static void
draw_glass (LrCanvas *self,
            cairo_t  *cr)
{
  const LrTheme *theme = self->view.theme;
  LrVec2 cross = scale_of (self)->cross, at, origin;
  LrSimilarity lies;

  if (!lr_canvas_trace_lies (self, &lies))
    return;

  at.x = cross.x + (cross.x + GLASS_OFF_PX + GLASS_PX < self->view.width ? GLASS_OFF_PX : -GLASS_OFF_PX);
  at.y = cross.y + (cross.y - GLASS_OFF_PX - GLASS_PX > 0.0 ? -GLASS_OFF_PX : GLASS_OFF_PX);
  origin = lr_vec2_along (at, lr_vec2_sub (self->view.origin, cross), GLASS_ZOOM);
  cairo_save (cr);
  cairo_arc (cr, at.x, at.y, GLASS_PX, 0.0, 2.0 * LR_PI);
  cairo_clip (cr);
  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_paint (cr);
  cairo_push_group (cr);
  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_paint (cr);
  lr_underlay_paint (self->trace.picture, cr, &lies, self->view.scale * GLASS_ZOOM, origin, 0.0, theme == lr_theme_get (LR_THEME_DARK));
  cairo_pop_group_to_source (cr);
  cairo_paint (cr);
  draw_cross (self, cr, at, theme->in_hand);
  cairo_restore (cr);
  cairo_arc (cr, at.x, at.y, GLASS_PX, 0.0, 2.0 * LR_PI);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  lr_theme_set_color (cr, theme->ink2, 1.0);
  cairo_stroke (cr);
}

static void
draw (LrCanvas *self,
      cairo_t  *cr)
{
  Scale *scale = scale_of (self);
  const LrTheme *theme = self->view.theme;
  LrVec2 a, b;

  if (scale->n_points > 0)
    {
      a = lr_view_to_device (&self->view, point_m (self, 0));
      b = scale->n_points == 2 ? lr_view_to_device (&self->view, point_m (self, 1)) : scale->cross;
      cairo_move_to (cr, a.x, a.y);
      cairo_line_to (cr, b.x, b.y);
      lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
      lr_theme_set_color (cr, theme->in_hand, 1.0);
      cairo_stroke (cr);
      draw_cross (self, cr, a, theme->in_hand);
      if (scale->n_points == 2)
        draw_cross (self, cr, b, theme->in_hand);
    }
  if (scale->n_points < 2)
    {
      draw_cross (self, cr, scale->cross, theme->ink);
      draw_glass (self, cr);
    }
}

static const LrCanvasTool tool = { .leave = leave, .hover = hover, .click = click, .key = key, .draw = draw, .needs_picture = TRUE };

/**
 * lr_canvas_trace_scale:
 * @self: the sheet
 *
 * Starts giving the picture under the room its scale by two of its points.
 */
void
lr_canvas_trace_scale (LrCanvas *self)
{
  LrSimilarity lies;
  Scale *scale;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (!lr_canvas_may_edit (self))
    return;
  if (!lr_canvas_trace_lies (self, &lies))
    {
      lr_document_say (self->document, _("There is no picture to be seen under this room."));
      return;
    }

  lr_canvas_drag_cancel (self);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, -1);
  scale = g_new0 (Scale, 1);
  scale->cross = self->has_pointer ? self->pointer : lr_vec2 (self->view.width / 2.0, self->view.height / 2.0);
  lr_canvas_set_tool (self, &tool, scale);
  self->fits = FALSE;
  update_hint (self);
  gtk_widget_grab_focus (GTK_WIDGET (self));
}
