/* frame_popover.c - from the picture back: shot sizes, background, lenses and focus of one camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It asks for edits and shows what they say. Its figures are computed when it opens and after each change of the plan, never
 * while it is closed. What cannot be done is shown dim and says why when it is pressed, with what comes nearest.
 */

#include "config.h"

#include "frame_popover.h"

#include "drop_down.h"
#include "field.h"
#include "reframe.h"

#include "prop_text.h"

#include <glib/gi18n-lib.h>

#define N_SIZES LR_SHOT_LONG /* extreme close-up to full */
#define N_LENS_FIGURES 3
#define MOST_HEIGHT_PX 640

typedef struct
{
  GtkWidget *button;    /* its label is the lens */
  GtkWidget *figures[N_LENS_FIGURES];
} LensRow;

struct _LrFramePopover
{
  GtkPopover  parent_instance;

  LrDocument *document;
  char       *camera;      /* id; NULL: none */
  gboolean    is_setting;  /* the plan, not the user, changes the widgets */

  GtkWidget  *names[N_SIZES], *places[N_SIZES], *lenses[N_SIZES];
  GtkWidget  *background, *background_label;
  GtkWidget  *lens_grid, *lens_heading;
  GArray     *lens_rows;   /* LensRow */
  GtkWidget  *focus;
  GPtrArray  *focus_ids;   /* of the drop-down's rows; "": what is behind */
  GtkWidget  *sentence, *instead;
  LrReframe  *offered;     /* what the button does; NULL: nothing */
};

G_DEFINE_FINAL_TYPE (LrFramePopover, lr_frame_popover, GTK_TYPE_POPOVER)

/* As the trade says them, from the tightest to the widest; the underlined letters are one of each */
static const char *const size_titles[N_SIZES] = {
  N_("E_xtreme close-up"), N_("_Big close-up"), N_("_Close-up"), N_("Medium close-_up"),
  N_("_Medium"), N_("Medium lon_g"), N_("_Three-quarter"), N_("_Full"),
};

static const LrProp background_prop = {
  .key = "background-mm", .label = N_("Background"), .type = LR_PROP_LENGTH, .min = 0.05, .max = 100.0,
};

static const LrCameraReading *
get_reading (LrFramePopover *self)
{
  return lr_study_find_camera (lr_document_get_study (self->document), self->camera);
}

static void
offer (LrFramePopover *self,
       LrReframe      *instead)
{
  g_clear_pointer (&self->offered, lr_reframe_free);
  self->offered = instead;
  gtk_widget_set_visible (self->instead, instead != NULL);
  if (instead != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->instead), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, instead->sentence, -1);
}

static void
say (LrFramePopover *self,
     const char     *sentence)
{
  gtk_label_set_label (GTK_LABEL (self->sentence), sentence != NULL ? sentence : "");
}

static char *
step_title (LrFramePopover *self)
{
  const LrCameraReading *camera = get_reading (self);
  g_autofree char *title = camera != NULL ? lr_item_title (camera->item) : g_strdup ("");

  /* Translators: a step of the history: "Frame Camera B" */
  return g_strdup_printf (_("Frame %s"), title);
}

/* Does it, or says why not; takes @reframe */
static void
do_it (LrFramePopover *self,
       LrReframe      *reframe)
{
  g_autofree char *sentence = g_strdup (reframe->sentence), *title = step_title (self);
  g_autoptr (LrReframe) owned = reframe;
  GError *error = NULL;
  LrPlan *next;

  if (lr_document_get_plan (self->document)->is_read_only)
    {
      say (self, _("This plan can only be looked at: it was made by a newer version of Lookroom."));
      return;
    }

  offer (self, reframe->is_possible ? NULL : g_steal_pointer (&reframe->instead));
  if (reframe->is_possible && !reframe->is_as_now)
    {
      next = lr_reframe_apply (reframe, lr_document_get_committed (self->document), &error);
      if (next != NULL)
        lr_document_commit (self->document, next, title);
      else
        {
          g_free (sentence);
          sentence = g_strdup (error->message);
          g_clear_error (&error);
        }
    }
  say (self, sentence);
}

static LrReframe *
ask_size (LrFramePopover *self,
          int             size,
          LrReframeBy     by)
{
  return lr_reframe_shot (lr_document_get_study (self->document), get_reading (self), (LrShot) size, by,
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
  if (get_reading (self) != NULL)
    do_it (self, ask_size (self, index_of (button), LR_REFRAME_BY_PLACE));
}

static void
lens_cb (LrFramePopover *self,
         GtkWidget      *button)
{
  if (get_reading (self) != NULL)
    do_it (self, ask_size (self, index_of (button), LR_REFRAME_BY_LENS));
}

static void
row_cb (LrFramePopover *self,
        GtkWidget      *button)
{
  const LrCameraReading *camera = get_reading (self);
  g_autoptr (GPtrArray) rows = NULL;
  guint index = (guint) index_of (button);

  if (camera == NULL)
    return;

  rows = lr_reframe_lenses (lr_document_get_study (self->document), camera, lr_document_get_units (self->document));
  if (index < rows->len)
    do_it (self, g_ptr_array_steal_index (rows, index));
}

static void
background_cb (LrFramePopover *self,
               double          width_m,
               gboolean        is_step)
{
  const LrCameraReading *camera = get_reading (self);

  if (camera != NULL && !self->is_setting)
    do_it (self, lr_reframe_background (lr_document_get_study (self->document), camera, width_m,
                                        lr_document_get_units (self->document)));
}

static void
refused_cb (LrFramePopover *self,
            const char     *sentence)
{
  if (sentence != NULL)
    say (self, sentence);
}

static void
focus_cb (LrFramePopover *self)
{
  guint row = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->focus));
  const LrCameraReading *camera = get_reading (self);
  const char *id;

  if (self->is_setting || camera == NULL || row >= self->focus_ids->len)
    return;

  id = g_ptr_array_index (self->focus_ids, row);
  do_it (self, lr_reframe_focus (lr_document_get_study (self->document), camera, id[0] != '\0' ? id : NULL,
                                 lr_document_get_units (self->document)));
}

static void
instead_cb (LrFramePopover *self)
{
  if (self->offered != NULL)
    do_it (self, g_steal_pointer (&self->offered));
}

/* Showing what the plan holds */

static void
show_button (GtkWidget  *button,
             const char *text,
             const char *name,
             const char *sentence,
             gboolean    is_possible)
{
  gtk_button_set_label (GTK_BUTTON (button), text);
  if (is_possible)
    gtk_widget_remove_css_class (button, "cannot");
  else
    gtk_widget_add_css_class (button, "cannot");
  gtk_widget_set_tooltip_text (button, sentence);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence, -1);
}

static char *
format_focal (LrFramePopover *self,
              double          focal_m)
{
  return lr_prop_text_format (lr_item_find_prop (LR_ITEM_CAMERA, "focal-mm"), focal_m, lr_document_get_units (self->document));
}

static void
show_size (LrFramePopover        *self,
           const LrCameraReading *camera,
           int                    size)
{
  LrUnits units = lr_document_get_units (self->document);
  g_autoptr (LrReframe) place = ask_size (self, size, LR_REFRAME_BY_PLACE), lens = ask_size (self, size, LR_REFRAME_BY_LENS);
  g_autofree char *distance = lr_length_format (place->distance_m, units), *focal = format_focal (self, lens->focal_m);
  /* Translators: a shot size, and the distance to which the camera is moved for it */
  g_autofree char *place_name = g_strdup_printf (_("%s, move to %s"), lr_shot_title ((LrShot) size), distance);
  /* Translators: a shot size, and the focal length that makes it */
  g_autofree char *lens_name = g_strdup_printf (_("%s, set to %s"), lr_shot_title ((LrShot) size), focal);

  show_button (self->places[size], distance, place_name, place->sentence, place->is_possible);
  show_button (self->lenses[size], focal, lens_name, lens->sentence, lens->is_possible);
  if (camera->framing.shot == (LrShot) size)
    gtk_widget_add_css_class (self->names[size], "panel-title");
  else
    gtk_widget_remove_css_class (self->names[size], "panel-title");
}

static char *
behind_title (LrFramePopover        *self,
              const LrCameraReading *camera)
{
  if (camera->behind == LR_BEHIND_WALL)
    return g_strdup (lr_wall_title (lr_plan_get_setup (lr_document_get_plan (self->document))->room, camera->behind_wall));
  if (camera->behind == LR_BEHIND_ITEM)
    return lr_item_title (camera->behind_item->item);
  return g_strdup (camera->behind == LR_BEHIND_FLOOR ? _("floor") : camera->behind == LR_BEHIND_CEILING ? _("ceiling") : _("background"));
}

static void
show_background (LrFramePopover        *self,
                 const LrCameraReading *camera)
{
  g_autofree char *behind = behind_title (self, camera), *text = NULL;

  /* Translators: what stands behind the subject, then a field with a width of it */
  text = g_strdup_printf (_("_Show of the %s"), behind);
  gtk_label_set_text_with_mnemonic (GTK_LABEL (self->background_label), text);
  gtk_widget_set_sensitive (self->background, camera->behind != LR_BEHIND_NOTHING && camera->has_subject);
  if (!lr_field_has_typed_text (LR_FIELD (self->background)) && camera->behind_field_w_m > 0.0)
    lr_field_set_number (LR_FIELD (self->background), camera->behind_field_w_m);
}

static void
add_lens_row (LrFramePopover *self)
{
  int index = (int) self->lens_rows->len;
  LensRow row = { .button = gtk_button_new_with_label ("") };

  gtk_widget_add_css_class (row.button, "flat");
  gtk_widget_set_halign (gtk_button_get_child (GTK_BUTTON (row.button)), GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (row.button), "lr-index", GINT_TO_POINTER (index));
  g_signal_connect_swapped (row.button, "clicked", G_CALLBACK (row_cb), self);
  gtk_grid_attach (GTK_GRID (self->lens_grid), row.button, 0, index + 1, 1, 1);
  for (int i = 0; i < N_LENS_FIGURES; i++)
    {
      row.figures[i] = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (row.figures[i]), 1.0f);
      gtk_widget_add_css_class (row.figures[i], "numeric");
      gtk_grid_attach (GTK_GRID (self->lens_grid), row.figures[i], i + 1, index + 1, 1, 1);
    }
  g_array_append_val (self->lens_rows, row);
}

static void
remove_lens_rows (LrFramePopover *self,
                  guint           n)
{
  while (self->lens_rows->len > n)
    {
      gtk_grid_remove_row (GTK_GRID (self->lens_grid), (int) self->lens_rows->len);
      g_array_set_size (self->lens_rows, self->lens_rows->len - 1);
    }
}

static char *
format_depth (LrFramePopover  *self,
              const LrReframe *row)
{
  return isfinite (row->sharp_far_m) ? lr_length_format (row->sharp_far_m - row->sharp_near_m, lr_document_get_units (self->document))
                                     : g_strdup (C_("depth that has no end", "no end"));
}

static void
show_lens_row (LrFramePopover  *self,
               const LensRow   *widgets,
               const LrReframe *row)
{
  LrUnits units = lr_document_get_units (self->document);
  const double lengths_m[] = { row->distance_m, row->behind_field_w_m };
  g_autofree char *depth = format_depth (self, row);

  show_button (widgets->button, row->title, row->title, row->sentence, row->is_possible);
  gtk_widget_set_halign (gtk_button_get_child (GTK_BUTTON (widgets->button)), GTK_ALIGN_START);
  for (int i = 0; i < N_LENS_FIGURES; i++)
    {
      g_autofree char *text = i == N_LENS_FIGURES - 1 ? g_steal_pointer (&depth) : lr_length_format (lengths_m[i], units);

      gtk_label_set_label (GTK_LABEL (widgets->figures[i]), text);
      if (row->is_possible)
        gtk_widget_remove_css_class (widgets->figures[i], "cannot");
      else
        gtk_widget_add_css_class (widgets->figures[i], "cannot");
    }
  if (row->is_as_now)
    gtk_widget_add_css_class (widgets->button, "panel-title");
  else
    gtk_widget_remove_css_class (widgets->button, "panel-title");
}

static void
show_lenses (LrFramePopover        *self,
             const LrCameraReading *camera)
{
  g_autoptr (GPtrArray) rows =
    lr_reframe_lenses (lr_document_get_study (self->document), camera, lr_document_get_units (self->document));
  g_autofree char *width = lr_length_format (camera->field_w_m, lr_document_get_units (self->document)), *heading = NULL;

  /* Translators: over a list of lenses: the width of the frame at the subject, which each of them keeps */
  heading = g_strdup_printf (_("This frame, %s wide, with"), width);
  gtk_label_set_label (GTK_LABEL (self->lens_heading), heading);
  remove_lens_rows (self, rows->len);
  while (self->lens_rows->len < rows->len)
    add_lens_row (self);
  for (guint i = 0; i < rows->len; i++)
    show_lens_row (self, &g_array_index (self->lens_rows, LensRow, i), g_ptr_array_index (rows, i));
  gtk_widget_set_visible (self->lens_grid, rows->len > 0);
}

/* People, then what stands on the floor, then what is behind */
static void
show_focus (LrFramePopover        *self,
            const LrCameraReading *camera)
{
  const LrSetup *setup = lr_plan_get_setup (lr_document_get_plan (self->document));
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);
  const char *on = camera->item->camera.aims_at[0] != '\0' ? camera->item->camera.aims_at
                   : camera->has_subject ? camera->subject->item->id : "";
  guint row = GTK_INVALID_LIST_POSITION;

  g_ptr_array_set_size (self->focus_ids, 0);
  for (int people = 1; people >= 0; people--)
    for (guint i = 0; i < setup->items->len; i++)
      {
        const LrItem *item = g_ptr_array_index (setup->items, i);
        g_autofree char *title = lr_item_title (item);

        if ((item->kind == LR_ITEM_PERSON) != (gboolean) people
            || (!people && item->kind != LR_ITEM_FURNITURE && item->kind != LR_ITEM_PANEL))
          continue;
        if (camera->item->camera.focus_m <= 0.0 && g_str_equal (item->id, on))
          row = self->focus_ids->len;
        g_ptr_array_add (self->focus_ids, g_strdup (item->id));
        g_ptr_array_add (titles, people ? g_strdup_printf (_("%s’s eyes"), title) : g_steal_pointer (&title));
      }
  g_ptr_array_add (self->focus_ids, g_strdup (""));
  g_ptr_array_add (titles, behind_title (self, camera));
  g_ptr_array_add (titles, NULL);
  lr_drop_down_set_titles (GTK_DROP_DOWN (self->focus), (const char *const *) titles->pdata);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->focus), row);
}

static void
update (LrFramePopover *self)
{
  const LrCameraReading *camera = get_reading (self);

  if (camera == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  self->is_setting = TRUE;
  for (int i = 0; i < (int) N_SIZES; i++)
    show_size (self, camera, i);
  show_background (self, camera);
  show_lenses (self, camera);
  show_focus (self, camera);
  self->is_setting = FALSE;
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

static GtkWidget *
make_figure_button (LrFramePopover *self,
                    int             index,
                    GCallback       callback)
{
  GtkWidget *button = gtk_button_new_with_label ("");

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
  gtk_grid_attach (GTK_GRID (grid), make_heading (_("Frame as")), 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), make_heading (_("Move to")), 1, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), make_heading (_("or set to")), 2, 0, 1, 1);
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
  GtkWidget *hold = gtk_check_button_new_with_mnemonic (_("_Hold framing while the camera is dragged"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (hold), "win.hold-framing");
  return hold;
}

static GtkWidget *
make_answer (LrFramePopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);

  self->sentence = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->sentence), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->sentence), 0.0f);
  gtk_label_set_yalign (GTK_LABEL (self->sentence), 0.0f);
  gtk_label_set_max_width_chars (GTK_LABEL (self->sentence), 46);
  gtk_label_set_lines (GTK_LABEL (self->sentence), 3);
  gtk_widget_set_size_request (self->sentence, -1, 40);
  self->instead = gtk_button_new_with_mnemonic (_("Take the _nearest"));
  gtk_widget_set_halign (self->instead, GTK_ALIGN_END);
  gtk_widget_set_visible (self->instead, FALSE);
  g_signal_connect_swapped (self->instead, "clicked", G_CALLBACK (instead_cb), self);
  gtk_box_append (GTK_BOX (box), self->sentence);
  gtk_box_append (GTK_BOX (box), self->instead);
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
  say (self, NULL);
  offer (self, NULL);
  update (self);
}

static void
lr_frame_popover_dispose (GObject *object)
{
  LrFramePopover *self = LR_FRAME_POPOVER (object);

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

static void
lr_frame_popover_init (LrFramePopover *self)
{
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
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
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
