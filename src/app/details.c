/* details.c - the thing in hand, or the room and the job when there is none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fields are made from the kind's table of properties when another thing comes in hand; from then on they only follow
 * the plan.
 */

#include "config.h"

#include "details.h"

#include "app.h"
#include "badge.h"
#include "details_formats.h"
#include "details_room.h"
#include "details_rows.h"
#include "lamp_row.h"
#include "lead_laying.h"
#include "levels_bar.h"
#include "line.h"
#include "placing.h"
#include "plan_edit.h"
#include "sound_bar.h"
#include "source_table.h"
#include "summary.h"

#include <glib/gi18n-lib.h>

struct _LrDetails
{
  GtkWidget   parent_instance;

  LrDocument *document;
  char       *shown;    /* what the fields were made for: id, kind, form and units; NULL: no thing */

  GtkWidget  *box, *tag, *title, *grade, *buttons, *grid, *lamp, *summary, *levels, *sources, *sound, *more, *more_grid, *room;
};

G_DEFINE_FINAL_TYPE (LrDetails, lr_details, GTK_TYPE_WIDGET)

static const LrItem *
get_item (LrDetails *self)
{
  const char *id = lr_document_get_selected (self->document);

  return id != NULL ? lr_plan_find (lr_document_get_plan (self->document), id) : NULL;
}

static void
set_label (GtkWidget  *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), text) != 0)
    gtk_label_set_label (GTK_LABEL (label), text);
}

/* Fields */

static void name_cb (guint index, const char *text, gpointer field);

static void
add_field (LrDetails    *self,
           LrFieldGrid  *grid,
           const LrProp *prop,
           const char   *label,
           gboolean      is_wide)
{
  LrField *field = lr_field_grid_add (grid, prop, label, lr_document_get_units (self->document), is_wide);
  const double *values;
  gsize n = lr_details_presets (prop->key, &values);

  if (n > 0)
    lr_field_set_presets (field, values, n);
  lr_details_offer_names (field, name_cb);
}

/* What is on a camera has no place on the sheet: its fields stand behind the camera's own. They are there without one as
 * well, for a field cannot go while it is being used. */
static void
make_lens_fields (LrDetails *self)
{
  for (const char *const *key = lr_details_lens_keys (); *key != NULL; key++)
    {
      gboolean is_wide = (*key)[0] == '=';
      const LrProp *prop = lr_details_lens_prop (*key + (is_wide ? 1 : 0));

      add_field (self, LR_FIELD_GRID (self->more_grid), prop, lr_details_lens_label (prop), is_wide);
    }
}

static void
make_fields (LrDetails    *self,
             const LrItem *item)
{
  g_autoptr (GPtrArray) others = lr_details_other_props (item);

  lr_field_grid_clear (LR_FIELD_GRID (self->grid));
  lr_field_grid_clear (LR_FIELD_GRID (self->more_grid));
  for (const char *const *key = lr_details_keys (item); *key != NULL; key++)
    {
      gboolean is_wide = (*key)[0] == '=';
      const LrProp *prop = lr_item_find_prop (item->kind, *key + (is_wide ? 1 : 0));

      if (prop != NULL)
        add_field (self, LR_FIELD_GRID (self->grid), prop, lr_details_label (item, prop->key), is_wide);
    }
  for (guint i = 0; i < others->len; i++)
    {
      const LrProp *prop = g_ptr_array_index (others, i);
      gboolean is_wide = prop->type == LR_PROP_REF || g_str_equal (prop->key, "note");

      add_field (self, LR_FIELD_GRID (self->more_grid), prop, lr_details_label (item, prop->key), is_wide);
    }
  if (item->kind == LR_ITEM_CAMERA)
    make_lens_fields (self);
}

/* Stops that the lens has, beside the standard ones */
static void
offer_stops (LrField      *field,
             const LrPlan *plan,
             const LrItem *item)
{
  const LrKitEntry *lens = lr_plan_find_kit (plan, item->camera.lens);
  const double *stops;
  gsize n = lr_details_presets ("f-number", &stops);
  g_autoptr (GArray) offered = g_array_new (FALSE, FALSE, sizeof (double));

  for (gsize i = 0; i < n; i++)
    if (lens == NULL || (stops[i] >= lens->item->lens.f_number_min && stops[i] <= lens->item->lens.f_number_max))
      g_array_append_val (offered, stops[i]);
  lr_field_set_presets (field, (const double *) (gpointer) offered->data, offered->len);
}

static void
update_field (LrDetails    *self,
              LrField      *field,
              const LrItem *item)
{
  const LrProp *prop = lr_field_get_prop (field);
  const LrPlan *plan = lr_document_get_plan (self->document);
  const LrKitEntry *lens = lr_details_lens_of (plan, item, prop);
  gconstpointer owner = lens == NULL ? (gconstpointer) item : lr_prop_is_text (prop) ? (gconstpointer) lens : lens->item;

  if (lens == NULL && lr_details_is_of_lens (prop))
    {
      gtk_widget_set_sensitive (GTK_WIDGET (field), FALSE);
      lr_field_set_text (field, "");
      return;
    }

  if (lr_details_is_by_file (prop, item))
    {
      gtk_widget_set_sensitive (GTK_WIDGET (field), FALSE);
      lr_field_set_text (field, "");
      lr_field_set_placeholder (field, _("by its file"));
      return;
    }

  lr_details_show_name (field, owner);
  gtk_widget_set_sensitive (GTK_WIDGET (field), !plan->is_read_only && lr_details_is_live (prop, item));
  if (prop->type == LR_PROP_REF)
    lr_details_set_options (field, plan, item);
  else if (item->kind == LR_ITEM_CAMERA && g_str_equal (prop->key, "f-number"))
    offer_stops (field, plan, item);

  if (lr_prop_is_text (prop))
    {
      lr_field_set_text (field, lr_prop_get_text (prop, owner));
      return;
    }

  if (prop->is_optional)
    lr_details_set_placeholder (field, lr_document_get_study (self->document), item, lr_document_get_units (self->document));
  lr_field_set_offset (field, lr_details_offset (prop, lr_plan_get_setup (plan)->room));
  lr_field_set_number (field, lr_prop_get_number (prop, owner));
}

static void
update_fields (LrDetails    *self,
               GtkWidget    *grid,
               const LrItem *item)
{
  for (guint i = 0; i < lr_field_grid_get_n (LR_FIELD_GRID (grid)); i++)
    update_field (self, lr_field_grid_get (LR_FIELD_GRID (grid), i), item);
}

/* Head and foot */

static char *
capitalize (const char *text)
{
  char first[7] = "";

  first[g_unichar_to_utf8 (g_unichar_toupper (g_utf8_get_char (text)), first)] = '\0';
  return *text != '\0' ? g_strconcat (first, g_utf8_next_char (text), NULL) : g_strdup ("");
}

/* Of a line of its own; the tag stands in front of it: "L1 key" is "Key" behind it */
static char *
title_behind_tag (const LrItem *item)
{
  g_autofree char *title = lr_item_title (item);
  gsize n_tag = strlen (item->tag);
  gboolean has_tag = n_tag > 0 && g_str_has_prefix (title, item->tag) && title[n_tag] == ' ';

  return capitalize (has_tag ? title + n_tag + 1 : title);
}

static void
update_head (LrDetails    *self,
             const LrItem *item)
{
  g_autofree char *title = item != NULL ? title_behind_tag (item) : g_strdup (_("Room and job"));
  gboolean has_fix = item != NULL && lr_remarks_worst_for (lr_document_get_remarks (self->document), item->id) == LR_GRADE_FIX;

  set_label (self->title, title);
  if (item != NULL)
    lr_badge_show_tag (LR_BADGE (self->tag), item->kind, item->tag);
  else
    lr_badge_show_nothing (LR_BADGE (self->tag));
  if (has_fix)
    lr_badge_show_grade (LR_BADGE (self->grade), LR_GRADE_FIX);
  else
    lr_badge_show_nothing (LR_BADGE (self->grade));
}

static void
update_summary (LrDetails    *self,
                const LrItem *item)
{
  const LrStudy *study = lr_document_get_study (self->document);
  LrUnits units = lr_document_get_units (self->document);
  g_autofree char *text = item != NULL ? lr_item_summary (study, lr_document_get_levels (self->document), item->id, units)
                                       : lr_room_summary (study, units);

  lr_line_set_text (LR_LINE (self->summary), text);
  gtk_widget_set_visible (self->summary, text[0] != '\0');
}

static void
update_sources (LrDetails    *self,
                const LrItem *item)
{
  if (item != NULL && item->kind == LR_ITEM_PERSON)
    lr_source_table_show (LR_SOURCE_TABLE (self->sources), self->document, item->id);
  else
    gtk_widget_set_visible (self->sources, FALSE);
}

static char *
what_is_shown (LrDetails    *self,
               const LrItem *item)
{
  if (item == NULL)
    return NULL;

  return g_strdup_printf ("%s %d %s %d", item->id, (int) item->kind, lr_item_form_label (item),
                          (int) lr_document_get_units (self->document));
}

static void
update (LrDetails *self)
{
  const LrItem *item = get_item (self);
  g_autofree char *shown = what_is_shown (self, item);

  if (item != NULL && g_strcmp0 (shown, self->shown) != 0)
    make_fields (self, item);
  g_free (self->shown);
  self->shown = g_steal_pointer (&shown);

  gtk_widget_set_visible (self->grid, item != NULL);
  gtk_widget_set_visible (self->more, item != NULL);
  gtk_widget_set_visible (self->buttons, item != NULL);
  gtk_widget_set_visible (self->room, item == NULL);
  lr_lamp_row_show (LR_LAMP_ROW (self->lamp), self->document, item);
  update_head (self, item);
  update_summary (self, item);
  lr_levels_bar_show (LR_LEVELS_BAR (self->levels), self->document, item != NULL && item->kind == LR_ITEM_CAMERA ? item->id : NULL);
  update_sources (self, item);
  lr_sound_bar_show (LR_SOUND_BAR (self->sound), self->document, item != NULL && item->kind == LR_ITEM_MICROPHONE ? item->id : NULL);
  if (item != NULL)
    {
      update_fields (self, self->grid, item);
      if (gtk_expander_get_expanded (GTK_EXPANDER (self->more)))
        update_fields (self, self->more_grid, item);
    }
  else
    lr_details_room_update (LR_DETAILS_ROOM (self->room));
}

/* Edits */

static void
commit (LrDetails    *self,
        LrPlan       *next,
        const LrProp *prop,
        const LrItem *item,
        gboolean      is_step,
        GError      **error)
{
  g_autofree char *title = lr_item_title (item);
  /* Translators: a step of the history: "Camera B: Lens height" */
  g_autofree char *what = g_strdup_printf (_("%s: %s"), title, _(prop->label));
  g_autofree char *merge_key = is_step ? g_strdup_printf ("field %s %s", item->id, prop->key) : NULL;

  if (!lr_document_try (self->document, next, what, merge_key, error))
    update (self);
}

static void
number_cb (LrDetails *self,
           LrField   *field,
           double     value,
           gboolean   is_step)
{
  const LrItem *item = get_item (self);
  const LrProp *prop = lr_field_get_prop (field);
  const LrPlan *plan = lr_document_get_committed (self->document);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrItem) held = NULL;
  const LrKitEntry *lens;
  LrPlan *next;

  if (item == NULL)
    return;

  held = lr_item_ref (item);
  lens = lr_details_lens_of (plan, held, prop);
  if (lens != NULL)
    next = lr_plan_set_kit_number (plan, lens->item->id, prop->key, value, &error);
  else
    next = lr_plan_change (plan, &(LrChange) { held->id, prop->key, value }, 1, &error);
  commit (self, next, prop, held, is_step, &error);
}

static void
name_cb (guint       index,
         const char *text,
         gpointer    field)
{
  LrDetails *self = LR_DETAILS (gtk_widget_get_ancestor (field, LR_TYPE_DETAILS));
  const LrItem *item = get_item (self);
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrItem) held = NULL;

  if (item == NULL)
    return;

  held = lr_item_ref (item);
  commit (self, lr_details_take_name (lr_document_get_committed (self->document), held, prop, index, &error), prop, held, FALSE,
          &error);
  gtk_widget_grab_focus (field);
}

/* A circuit has no place on the sheet: it comes with the first socket that is on it */
static LrPlan *
put_on_new_circuit (const LrPlan *plan,
                    const LrItem *socket,
                    const char   *key,
                    GError      **error)
{
  g_autoptr (LrItem) circuit = lr_item_new_usual (LR_ITEM_CIRCUIT, 0, "");
  g_autofree char *id = NULL;
  g_autoptr (LrPlan) with_circuit = lr_plan_add (plan, circuit, lr_vec2 (0.0, 0.0), 0.0, &id, error);

  return with_circuit != NULL ? lr_plan_change_text (with_circuit, socket->id, key, id, error) : NULL;
}

static void
text_cb (LrDetails  *self,
         LrField    *field,
         const char *text)
{
  const LrItem *item = get_item (self);
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrItem) held = NULL;
  const LrKitEntry *lens;
  LrPlan *next;

  if (item == NULL)
    return;

  held = lr_item_ref (item);
  lens = lr_details_lens_of (lr_document_get_committed (self->document), held, prop);
  if (lens != NULL)
    next = lr_plan_set_kit_text (lr_document_get_committed (self->document), lens->item->id, prop->key, text, &error);
  else if (prop->type == LR_PROP_REF && g_str_equal (prop->target, "lens") && text[0] != '\0')
    {
      g_autofree char *name = g_strconcat ("kit:", text, NULL);

      next = lr_placing_bring (lr_document_get_study (self->document), name, NULL, held->id, NULL, &error);
    }
  else if (prop->type == LR_PROP_REF && g_str_equal (text, LR_DETAILS_NEW_CIRCUIT))
    next = put_on_new_circuit (lr_document_get_committed (self->document), held, prop->key, &error);
  else if (held->kind == LR_ITEM_LEAD && prop->type == LR_PROP_REF && !g_str_equal (prop->key, "kit"))
    next = lr_lead_join (lr_document_get_committed (self->document), held->id, prop->key, text, &error);
  else
    next = lr_plan_change_text (lr_document_get_committed (self->document), held->id, prop->key, text, &error);
  commit (self, next, prop, held, FALSE, &error);
}

static void
lr_details_dispose (GObject *object)
{
  LrDetails *self = LR_DETAILS (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_DETAILS);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (lr_details_parent_class)->dispose (object);
}

static void
lr_details_class_init (LrDetailsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_details_dispose;
  g_type_ensure (LR_TYPE_BADGE);
  g_type_ensure (LR_TYPE_LINE);
  g_type_ensure (LR_TYPE_FIELD_GRID);
  g_type_ensure (LR_TYPE_DETAILS_ROOM);
  g_type_ensure (LR_TYPE_LEVELS_BAR);
  g_type_ensure (LR_TYPE_LAMP_ROW);
  g_type_ensure (LR_TYPE_SOURCE_TABLE);
  g_type_ensure (LR_TYPE_SOUND_BAR);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "details");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/details.ui");
  gtk_widget_class_bind_template_child (widget_class, LrDetails, box);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, tag);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, title);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, grade);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, buttons);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, lamp);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, summary);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, levels);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, sources);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, sound);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, more);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, more_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetails, room);
}

static void
connect_grid (LrDetails *self,
              GtkWidget *grid)
{
  g_signal_connect_object (grid, "number", G_CALLBACK (number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (grid, "text", G_CALLBACK (text_cb), self, G_CONNECT_SWAPPED);
}

static void
lr_details_init (LrDetails *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Details"), -1);
  connect_grid (self, self->grid);
  connect_grid (self, self->more_grid);
}

/**
 * lr_details_set_document:
 * @document: whose thing in hand is shown; once
 */
void
lr_details_set_document (LrDetails  *self,
                         LrDocument *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  lr_details_room_set_document (LR_DETAILS_ROOM (self->room), document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "lit", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "hand", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->more, "notify::expanded", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}
