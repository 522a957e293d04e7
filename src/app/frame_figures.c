/* frame_figures.c - what the popover of framing shows: the plan's figures and those that each choice would make
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What cannot be done is shown dim; its sentence is read aloud and stands in the tooltip.
 */

#include "config.h"

#include "frame_private.h"

#include "drop_down.h"
#include "field.h"
#include "prop_text.h"

#include <glib/gi18n-lib.h>

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
  g_autoptr (LrReframe) place = lr_frame_ask_size (self, size, LR_REFRAME_BY_PLACE), lens = lr_frame_ask_size (self, size, LR_REFRAME_BY_LENS);
  g_autofree char *distance = isnan (place->distance_m) ? g_strdup ("–") : lr_length_format (place->distance_m, units);
  g_autofree char *focal = isnan (lens->focal_m) ? g_strdup ("–") : format_focal (self, lens->focal_m);
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
  text = g_strdup_printf (_("Width _seen at the %s"), behind);
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
  g_signal_connect_swapped (row.button, "clicked", G_CALLBACK (lr_frame_take_row), self);
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
  const LrStudy *study = lr_document_get_study (self->document);
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
        if (camera->item->camera.focus_m <= 0.0 ? g_str_equal (item->id, on)
            : row == GTK_INVALID_LIST_POSITION && lr_reframe_is_focused (study, camera, item->id))
          row = self->focus_ids->len;
        g_ptr_array_add (self->focus_ids, g_strdup (item->id));
        g_ptr_array_add (titles, people ? g_strdup_printf (_("%s’s eyes"), title) : g_steal_pointer (&title));
      }
  if (row == GTK_INVALID_LIST_POSITION && lr_reframe_is_focused (study, camera, NULL))
    row = self->focus_ids->len;
  g_ptr_array_add (self->focus_ids, g_strdup (""));
  g_ptr_array_add (titles, behind_title (self, camera));
  g_ptr_array_add (titles, NULL);
  lr_drop_down_set_titles (GTK_DROP_DOWN (self->focus), (const char *const *) titles->pdata);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->focus), row);
}

/**
 * lr_frame_show_figures:
 * @self: a popover
 * @camera: a reading of the camera
 *
 * Fills every figure of the popover.
 */
void
lr_frame_show_figures (LrFramePopover        *self,
                       const LrCameraReading *camera)
{
  self->is_setting = TRUE;
  for (int i = 0; i < (int) N_SIZES; i++)
    show_size (self, camera, i);
  show_background (self, camera);
  show_lenses (self, camera);
  show_focus (self, camera);
  self->is_setting = FALSE;
}
