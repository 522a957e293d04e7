/* frame_popover.c - from the picture back: shot sizes, background, lenses and focus of one camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It asks for edits and shows what they say. Its figures are computed when it opens and after each change of the plan, never
 * while it is closed. What cannot be done is shown dim and says why when it is pressed, with what comes nearest.
 */

#include "config.h"

#include "frame_private.h"

#include "drop_down.h"
#include "field.h"

#include <glib/gi18n-lib.h>

#define MOST_HEIGHT_PX 680
#define ANSWER_LINES 3
#define ANSWER_LINE_PX 19

G_DEFINE_FINAL_TYPE (LrFramePopover, lr_frame_popover, GTK_TYPE_POPOVER)

/* As the trade says them, from the tightest to the widest; the underlined letters are one of each */
static const char *const size_titles[N_SIZES] = {
  N_("E_xtreme close-up"), N_("_Big close-up"), N_("_Close-up"), N_("Medium close-_up"),
  N_("_Medium"), N_("Medium lon_g"), N_("_Three-quarter"), N_("_Full"),
};

static const LrProp background_prop = {
  .key = "background-mm", .label = N_("Background"), .type = LR_PROP_LENGTH, .min = 0.05, .max = 100.0,
};

static void
show_heading (LrFramePopover        *self,
              const LrCameraReading *camera)
{
  g_autofree char *name = lr_item_title (camera->item);
  /* Translators: over a list of shot sizes: "Frame Camera B as" */
  g_autofree char *heading = g_strdup_printf (_("Frame %s as"), name);

  gtk_label_set_label (GTK_LABEL (self->heading), heading);
}

static void
update (LrFramePopover *self)
{
  const LrCameraReading *camera = lr_frame_get_camera (self);

  if (camera == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  show_heading (self, camera);
  lr_frame_show_figures (self, camera);
}

/**
 * lr_frame_ask_size:
 * @self: a popover
 * @size: row of the sizes
 * @by: by place or by lens
 *
 * Does what a row of sizes offers.
 */
LrReframe *
lr_frame_ask_size (LrFramePopover *self,
                   int             size,
                   LrReframeBy     by)
{
  return lr_reframe_shot (lr_document_get_study (self->document), lr_frame_get_camera (self), (LrShot) size, by,
                          lr_document_get_units (self->document));
}

static int
index_of (GtkWidget *widget)
{
  return GPOINTER_TO_INT (g_object_get_data (G_OBJECT (widget), "lr-index"));
}

static void
place_cb (LrFramePopover *self,
          GtkWidget      *button)
{
  if (lr_frame_get_camera (self) != NULL)
    lr_frame_do (self, lr_frame_ask_size (self, index_of (button), LR_REFRAME_BY_PLACE));
}

static void
lens_cb (LrFramePopover *self,
         GtkWidget      *button)
{
  if (lr_frame_get_camera (self) != NULL)
    lr_frame_do (self, lr_frame_ask_size (self, index_of (button), LR_REFRAME_BY_LENS));
}

/**
 * lr_frame_take_row:
 * @self: a popover
 * @button: the row's button
 *
 * Takes the lens of a row of the table.
 */
void
lr_frame_take_row (LrFramePopover *self,
                   GtkWidget      *button)
{
  const LrCameraReading *camera = lr_frame_get_camera (self);
  g_autoptr (GPtrArray) rows = NULL;
  guint index = (guint) index_of (button);

  if (camera == NULL)
    return;

  rows = lr_reframe_lenses (lr_document_get_study (self->document), camera, lr_document_get_units (self->document));
  if (index < rows->len)
    lr_frame_do (self, g_ptr_array_steal_index (rows, index));
}

static void
background_cb (LrFramePopover *self,
               double          width_m,
               gboolean        is_step)
{
  const LrCameraReading *camera = lr_frame_get_camera (self);

  if (camera != NULL && !self->is_setting)
    lr_frame_do (self, lr_reframe_background (lr_document_get_study (self->document), camera, width_m,
                                        lr_document_get_units (self->document)));
}

static void
refused_cb (LrFramePopover *self,
            const char     *sentence)
{
  if (sentence == NULL)
    return;

  lr_frame_offer (self, NULL);
  lr_frame_say (self, sentence);
}

static void
focus_cb (LrFramePopover *self)
{
  guint row = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->focus));
  const LrCameraReading *camera = lr_frame_get_camera (self);
  const char *id;

  if (self->is_setting || camera == NULL || row >= self->focus_ids->len)
    return;

  id = g_ptr_array_index (self->focus_ids, row);
  lr_frame_do (self, lr_reframe_focus (lr_document_get_study (self->document), camera, id[0] != '\0' ? id : NULL,
                                 lr_document_get_units (self->document)));
  update (self); /* what was refused is not shown as done */
}

/* What can be done is what one begins with */
static gboolean
find_focus_cb (gpointer data)
{
  LrFramePopover *self = data;

  self->focus_source = 0;
  for (gsize i = 0; i < N_SIZES; i++)
    if (!gtk_widget_has_css_class (self->places[i], "cannot"))
      {
        gtk_widget_grab_focus (self->places[i]);
        break;
      }
  return G_SOURCE_REMOVE;
}

/* An answer is about the plan that was asked; what is done for it is told after this */
static void
changed_cb (LrFramePopover *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  lr_frame_offer (self, NULL);
  lr_frame_say (self, NULL);
  update (self);
}

/* Building */

static GtkWidget *
make_heading (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "note");
  return label;
}

/* Over figures, which end at one line */
static GtkWidget *
make_end_heading (const char *text)
{
  GtkWidget *label = make_heading (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1.0f);
  gtk_widget_add_css_class (label, "over-figures");
  return label;
}

static GtkWidget *
make_figure_button (LrFramePopover *self,
                    int             index,
                    GCallback       callback)
{
  GtkWidget *button = gtk_button_new_with_label ("");

  gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 1.0f);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "numeric");
  g_object_set_data (G_OBJECT (button), "lr-index", GINT_TO_POINTER (index));
  g_signal_connect_swapped (button, "clicked", callback, self);
  return button;
}

static GtkWidget *
make_sizes (LrFramePopover *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  self->heading = make_heading (NULL);
  gtk_grid_attach (GTK_GRID (grid), self->heading, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), make_end_heading (_("Move to")), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), make_end_heading (_("or set to")), 2, 0, 1, 1);
  for (int i = 0; i < (int) N_SIZES; i++)
    {
      self->names[i] = gtk_label_new_with_mnemonic (_(size_titles[i]));
      self->places[i] = make_figure_button (self, i, G_CALLBACK (place_cb));
      self->lenses[i] = make_figure_button (self, i, G_CALLBACK (lens_cb));
      gtk_label_set_xalign (GTK_LABEL (self->names[i]), 0.0f);
      gtk_label_set_mnemonic_widget (GTK_LABEL (self->names[i]), self->places[i]);
      gtk_widget_set_hexpand (self->names[i], TRUE);
      gtk_grid_attach (GTK_GRID (grid), self->names[i], 0, i + 1, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), self->places[i], 1, i + 1, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), self->lenses[i], 2, i + 1, 1, 1);
    }
  return grid;
}

static GtkWidget *
make_background (LrFramePopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->background_label = gtk_label_new (NULL);
  self->background = lr_field_new (&background_prop, lr_document_get_units (self->document));
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->background_label), self->background);
  gtk_label_set_xalign (GTK_LABEL (self->background_label), 0.0f);
  gtk_widget_set_hexpand (self->background_label, TRUE);
  g_signal_connect_swapped (self->background, "number", G_CALLBACK (background_cb), self);
  g_signal_connect_swapped (self->background, "refused", G_CALLBACK (refused_cb), self);
  gtk_box_append (GTK_BOX (box), self->background_label);
  gtk_box_append (GTK_BOX (box), self->background);
  return box;
}

static GtkWidget *
make_lenses (LrFramePopover *self)
{
  static const char *const headings[N_LENS_FIGURES] = { N_("from"), N_("behind"), N_("sharp") };

  self->lens_grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->lens_grid), 10);
  self->lens_heading = make_heading (NULL);
  gtk_widget_set_hexpand (self->lens_heading, TRUE);
  gtk_grid_attach (GTK_GRID (self->lens_grid), self->lens_heading, 0, 0, 1, 1);
  for (int i = 0; i < N_LENS_FIGURES; i++)
    {
      GtkWidget *heading = make_heading (_(headings[i]));

      gtk_label_set_xalign (GTK_LABEL (heading), 1.0f);
      gtk_grid_attach (GTK_GRID (self->lens_grid), heading, i + 1, 0, 1, 1);
    }
  return self->lens_grid;
}

static GtkWidget *
make_focus (LrFramePopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new_with_mnemonic (_("F_ocus on"));

  self->focus = lr_drop_down_new ();
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), self->focus);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_size_request (self->focus, 180, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->focus), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Focus on"), -1);
  g_signal_connect_swapped (self->focus, "notify::selected", G_CALLBACK (focus_cb), self);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), self->focus);
  return box;
}

static GtkWidget *
make_hold (void)
{
  GtkWidget *hold = gtk_check_button_new_with_mnemonic (_("_Hold framing while a camera is dragged"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (hold), "win.hold-framing");
  return hold;
}

/* Has room for the longest answer and its button, so that nothing moves when there is one */
static GtkWidget *
make_answer (LrFramePopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);

  self->sentence = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->sentence), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->sentence), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (self->sentence), 0.0f);
  gtk_label_set_max_width_chars (GTK_LABEL (self->sentence), 46);
  gtk_label_set_lines (GTK_LABEL (self->sentence), ANSWER_LINES);
  gtk_label_set_ellipsize (GTK_LABEL (self->sentence), PANGO_ELLIPSIZE_END);
  gtk_widget_set_size_request (self->sentence, -1, ANSWER_LINES * ANSWER_LINE_PX);
  self->instead = gtk_button_new_with_mnemonic (_("Take the _nearest"));
  g_signal_connect_swapped (self->instead, "clicked", G_CALLBACK (lr_frame_do_instead), self);
  self->no_offer = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  self->offer = gtk_stack_new ();
  gtk_stack_add_child (GTK_STACK (self->offer), self->no_offer);
  gtk_stack_add_child (GTK_STACK (self->offer), self->instead);
  gtk_widget_set_halign (self->offer, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), self->sentence);
  gtk_box_append (GTK_BOX (box), self->offer);
  return box;
}

static void
build (LrFramePopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8), *scroller = gtk_scrolled_window_new ();

  gtk_box_append (GTK_BOX (box), make_sizes (self));
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (box), make_background (self));
  gtk_box_append (GTK_BOX (box), make_lenses (self));
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (box), make_focus (self));
  gtk_box_append (GTK_BOX (box), make_hold ());
  gtk_box_append (GTK_BOX (box), make_answer (self));

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), MOST_HEIGHT_PX);
  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scroller), FALSE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_popover_set_child (GTK_POPOVER (self), scroller);
}

/* Beside the column of the pictures, which are what one looks at meanwhile */
static void
lr_frame_popover_show (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget), *column = gtk_widget_get_ancestor (parent, GTK_TYPE_SCROLLED_WINDOW);
  double x = 0.0, y = 0.0;

  if (column != NULL)
    gtk_widget_translate_coordinates (parent, column, 0.0, 0.0, &x, &y);
  gtk_popover_set_offset (GTK_POPOVER (widget), -(int) x, 0);
  GTK_WIDGET_CLASS (lr_frame_popover_parent_class)->show (widget);
}

static void
lr_frame_popover_map (GtkWidget *widget)
{
  LrFramePopover *self = LR_FRAME_POPOVER (widget);

  GTK_WIDGET_CLASS (lr_frame_popover_parent_class)->map (widget);
  if (gtk_popover_get_child (GTK_POPOVER (self)) == NULL)
    build (self);
  lr_frame_say (self, NULL);
  lr_frame_offer (self, NULL);
  update (self);
  if (self->focus_source == 0)
    self->focus_source = g_idle_add (find_focus_cb, self);
}

static void
lr_frame_popover_dispose (GObject *object)
{
  LrFramePopover *self = LR_FRAME_POPOVER (object);

  g_clear_handle_id (&self->focus_source, g_source_remove);
  g_clear_pointer (&self->offered, lr_reframe_free);
  g_clear_pointer (&self->lens_rows, g_array_unref);
  g_clear_pointer (&self->focus_ids, g_ptr_array_unref);
  g_clear_pointer (&self->camera, g_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_frame_popover_parent_class)->dispose (object);
}

static void
lr_frame_popover_class_init (LrFramePopoverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_frame_popover_dispose;
  widget_class->show = lr_frame_popover_show;
  widget_class->map = lr_frame_popover_map;
}

/* A popover keeps the window's keys from the window */
static void
add_undo_keys (LrFramePopover *self)
{
  static const struct { const char *keys, *action; } undo_keys[] = {
    { "<Control>z", "win.undo" }, { "<Control><Shift>z|<Control>y", "win.redo" },
  };
  GtkEventController *shortcuts = gtk_shortcut_controller_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (undo_keys); i++)
    gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (shortcuts),
                                          gtk_shortcut_new (gtk_shortcut_trigger_parse_string (undo_keys[i].keys),
                                                            gtk_named_action_new (undo_keys[i].action)));
  gtk_widget_add_controller (GTK_WIDGET (self), shortcuts);
}

static void
lr_frame_popover_init (LrFramePopover *self)
{
  add_undo_keys (self);
  self->lens_rows = g_array_new (FALSE, FALSE, sizeof (LensRow));
  self->focus_ids = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_add_css_class (GTK_WIDGET (self), "frame");
  gtk_popover_set_has_arrow (GTK_POPOVER (self), FALSE);
}

/**
 * lr_frame_popover_new:
 * @document: whose camera it is about
 *
 * Returns: (transfer full): a popover, empty until it opens
 */
GtkWidget *
lr_frame_popover_new (LrDocument *document)
{
  LrFramePopover *self = g_object_new (LR_TYPE_FRAME_POPOVER, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

/**
 * lr_frame_popover_set_camera:
 * @id: (nullable): of a camera of the plan shown
 */
void
lr_frame_popover_set_camera (LrFramePopover *self,
                             const char     *id)
{
  char *copy = g_strdup (id);

  g_free (self->camera);
  self->camera = copy;
  update (self);
}
