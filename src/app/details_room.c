/* details_room.c - the room, when nothing is in hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grids of fields, each with its own edit behind it. Those that are folded away are neither made nor kept up.
 */

#include "config.h"

#include "details_room.h"

#include "app.h"
#include "details_job.h"
#include "details_materials.h"
#include "details_rows.h"
#include "field_grid.h"
#include "plan_edit.h"
#include "prop_text.h"
#include "source_table.h"
#include "summary_sound.h"
#include "trace_row.h"

#include <glib/gi18n-lib.h>

struct _LrDetailsRoom
{
  GtkWidget   parent_instance;

  LrDocument *document;
  LrUnits     units;          /* that the fields were made for */
  char       *wall_titles;    /* of the walls that there are fields for, one a line */

  GtkWidget  *box, *room_grid, *walls, *wall_grid, *surfaces, *surface_grid, *sound, *sound_text, *wanted, *wanted_grid, *sources;
  GtkWidget  *job, *limits, *limit_grid, *trace_row;
};

G_DEFINE_FINAL_TYPE (LrDetailsRoom, lr_details_room, GTK_TYPE_WIDGET)

static const char *const room_keys[] = {
  "height-mm", "north-deg", "background-db", "reverberation-s", "=floor-note", "=full-load-rule", NULL
};

/* The three surfaces and the properties of each that are offered */
static const char *const surface_names[] = { "walls", "floor", "ceiling" };
static const char *const surface_titles[] = { N_("Walls"), N_("Floor"), N_("Ceiling") };
static const char *const surface_keys[] = { "material", "reflectance-pct" };

static const LrProp wall_prop = {
  .key = "length-mm", .label = N_("Wall"), .type = LR_PROP_LENGTH, .min = 0.01, .max = 500.0,
};

static const LrPlan *
get_plan (LrDetailsRoom *self)
{
  return lr_document_get_plan (self->document);
}

static const LrRoom *
get_room (LrDetailsRoom *self)
{
  return lr_plan_get_setup (get_plan (self))->room;
}

/* (transfer full): the names of all walls, one a line */
static char *
join_wall_titles (const LrRoom *room)
{
  GString *titles = g_string_new (NULL);

  for (gsize i = 0; i < room->n_corners; i++)
    g_string_append_printf (titles, "%d %s\n", lr_room_wall_number (room, (int) i), lr_wall_title (room, (int) i));

  return g_string_free (titles, FALSE);
}

/* Walls are made anew when there are more or fewer, or when one turns to another side of the compass */
static void
update_walls (LrDetailsRoom *self)
{
  const LrRoom *room = get_room (self);
  LrFieldGrid *grid = LR_FIELD_GRID (self->wall_grid);
  g_autofree char *titles = join_wall_titles (room);
  gboolean is_current = lr_field_grid_get_n (grid) == room->n_corners && g_strcmp0 (self->wall_titles, titles) == 0;

  gtk_widget_set_visible (self->walls, room->n_corners > 0);
  if (!is_current)
    {
      g_free (self->wall_titles);
      self->wall_titles = g_strdup (titles);
    }
  if (!is_current)
    lr_field_grid_clear (grid);
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 from_m, along;
      double length_m = 0.0;

      if (!is_current)
        {
          /* Translators: a wall's number, and where it is: "2, east wall" */
          g_autofree char *label = g_strdup_printf (_("%d, %s"), lr_room_wall_number (room, (int) i), lr_wall_title (room, (int) i));

          lr_field_grid_add (grid, &wall_prop, label, self->units, FALSE);
        }
      lr_room_wall (room, (int) i, &from_m, &along, &length_m);
      lr_field_set_number (lr_field_grid_get (grid, (guint) i), length_m);
    }
}

static const LrSurface *
get_surface (const LrRoom *room,
             guint         index)
{
  return index == 0 ? &room->walls : index == 1 ? &room->floor : &room->ceiling;
}

static void surface_text_cb (LrDetailsRoom *self, LrField *field, const char *text);

/* What a surface is of, from the table: its name and all of its absorption */
static void
material_chosen_cb (guint       index G_GNUC_UNUSED,
                    const char *title,
                    gpointer    field)
{
  surface_text_cb (LR_DETAILS_ROOM (gtk_widget_get_ancestor (field, LR_TYPE_DETAILS_ROOM)), field, title);
}

static void
update_surfaces (LrDetailsRoom *self)
{
  LrFieldGrid *grid = LR_FIELD_GRID (self->surface_grid);
  const guint n = G_N_ELEMENTS (surface_keys);

  for (guint i = 0; i < G_N_ELEMENTS (surface_names) * n; i++)
    {
      const LrProp *prop = lr_prop_table_find (lr_surface_table (), surface_keys[i % n]);

      if (i >= lr_field_grid_get_n (grid))
        {
          LrField *field = lr_field_grid_add (grid, prop, i % n == 0 ? _(surface_titles[i / n]) : NULL, self->units, FALSE);

          lr_details_offer_usual (field);
          if (i % n == 0)
            lr_details_offer_materials (field, surface_names[i / n], material_chosen_cb);
        }
      lr_field_show (lr_field_grid_get (grid, i), get_surface (get_room (self), i / n));
    }
}

static void
update_limits (LrDetailsRoom *self)
{
  LrFieldGrid *grid = LR_FIELD_GRID (self->limit_grid);

  for (guint i = 0; i < LR_N_LIMITS; i++)
    {
      const LrLimitInfo *info = lr_limit_info ((LrLimit) i);

      if (i >= lr_field_grid_get_n (grid))
        gtk_widget_set_tooltip_text (GTK_WIDGET (lr_field_grid_add (grid, &info->prop, NULL, self->units, TRUE)),
                                     _(info->source));
      lr_field_set_number (lr_field_grid_get (grid, i), get_plan (self)->limits.value[i]);
    }
}

/* What is wanted of the light in the set-up shown */
static void
update_wanted (LrDetailsRoom *self)
{
  const LrPropTable *table = lr_setup_table ();
  const LrSetup *setup = lr_plan_get_setup (get_plan (self));
  LrFieldGrid *grid = LR_FIELD_GRID (self->wanted_grid);

  for (guint i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];
      LrField *field = i < lr_field_grid_get_n (grid) ? lr_field_grid_get (grid, i) : lr_field_grid_add (grid, prop, NULL, self->units, FALSE);

      if (prop->is_optional)
        {
          g_autofree char *usual = lr_prop_text_format (prop, get_plan (self)->limits.value[LR_LIMIT_FACE_LEVEL], self->units);

          lr_field_set_placeholder (field, usual);
        }
      if (g_str_equal (prop->key, "wall-level-pct"))
        gtk_widget_set_sensitive (GTK_WIDGET (field), setup->walls == LR_WALLS_AT_LEVEL);
      lr_field_show (field, setup);
    }
  lr_source_table_show (LR_SOURCE_TABLE (self->sources), self->document, NULL);
}

static gboolean
is_open (GtkWidget *expander)
{
  return gtk_expander_get_expanded (GTK_EXPANDER (expander));
}

/* How the room answers: a text of several lines, so it is folded away at first */
static void
update_sound (LrDetailsRoom *self)
{
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->sound, get_room (self)->n_corners > 0);
  if (!is_open (self->sound))
    return;

  text = lr_room_sound_summary (lr_document_get_study (self->document), self->units);
  if (g_strcmp0 (text, gtk_label_get_text (GTK_LABEL (self->sound_text))) != 0)
    gtk_label_set_text (GTK_LABEL (self->sound_text), text);
}

static void
make_fields (LrDetailsRoom *self)
{
  LrUnits units = lr_document_get_units (self->document);
  gboolean is_made = lr_field_grid_get_n (LR_FIELD_GRID (self->room_grid)) > 0;

  if (is_made && units == self->units)
    return;

  self->units = units;
  lr_field_grid_clear (LR_FIELD_GRID (self->room_grid));
  lr_field_grid_clear (LR_FIELD_GRID (self->wall_grid));
  lr_field_grid_clear (LR_FIELD_GRID (self->surface_grid));
  lr_field_grid_clear (LR_FIELD_GRID (self->limit_grid));
  lr_field_grid_clear (LR_FIELD_GRID (self->wanted_grid));
  lr_details_add_fields (LR_FIELD_GRID (self->room_grid), lr_room_table (), room_keys, self->units);
}

/**
 * lr_details_room_update:
 *
 * Shows the plan that the document shows now.
 */
void
lr_details_room_update (LrDetailsRoom *self)
{
  make_fields (self);
  gtk_widget_set_sensitive (self->box, !get_plan (self)->is_read_only);
  lr_field_grid_show (LR_FIELD_GRID (self->room_grid), get_room (self));
  lr_details_job_update (LR_DETAILS_JOB (self->job));
  update_walls (self);
  lr_trace_row_show (LR_TRACE_ROW (self->trace_row), self->document);
  if (is_open (self->wanted))
    update_wanted (self);
  if (is_open (self->surfaces))
    update_surfaces (self);
  update_sound (self);
  if (is_open (self->limits))
    update_limits (self);
}

/* Edits. Each callback knows which grid it belongs to. */

static void
commit (LrDetailsRoom *self,
        LrPlan        *next,
        const char    *what,
        const char    *merge_key,
        GError       **error)
{
  if (!lr_document_try (self->document, next, what, merge_key, error))
    lr_details_room_update (self);
}

static const LrPlan *
get_base (LrDetailsRoom *self)
{
  return lr_document_get_committed (self->document);
}

static void
room_number_cb (LrDetailsRoom *self,
                LrField       *field,
                double         value,
                gboolean       is_step)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room (get_base (self), prop->key, value, &error), _(prop->label), is_step ? prop->key : NULL, &error);
}

static void
room_text_cb (LrDetailsRoom *self,
              LrField       *field,
              const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room_text (get_base (self), prop->key, text, &error), _(prop->label), NULL, &error);
}

static void
wall_number_cb (LrDetailsRoom *self,
                LrField       *field,
                double         value,
                gboolean       is_step)
{
  g_autoptr (GError) error = NULL;
  guint wall = 0;

  while (wall < lr_field_grid_get_n (LR_FIELD_GRID (self->wall_grid))
         && lr_field_grid_get (LR_FIELD_GRID (self->wall_grid), wall) != field)
    wall++;
  commit (self, lr_plan_set_wall_length (get_base (self), (int) wall, value, &error), _("Length of a wall"),
          is_step ? "wall" : NULL, &error);
}

static void
wanted_number_cb (LrDetailsRoom *self,
                  LrField       *field,
                  double         value,
                  gboolean       is_step)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_setup (get_base (self), prop->key, value, &error), _(prop->label), is_step ? prop->key : NULL, &error);
}

/* "walls.reflectance-pct"; (transfer full) */
static char *
surface_key (LrDetailsRoom *self,
             LrField       *field)
{
  LrFieldGrid *grid = LR_FIELD_GRID (self->surface_grid);
  guint index = 0;

  while (index + 1 < lr_field_grid_get_n (grid) && lr_field_grid_get (grid, index) != field)
    index++;
  return g_strdup_printf ("%s.%s", surface_names[index / G_N_ELEMENTS (surface_keys)], lr_field_get_prop (field)->key);
}

static void
surface_number_cb (LrDetailsRoom *self,
                   LrField       *field,
                   double         value,
                   gboolean       is_step)
{
  g_autofree char *key = surface_key (self, field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room (get_base (self), key, value, &error), _("Surfaces"), is_step ? key : NULL, &error);
}

static void
surface_text_cb (LrDetailsRoom *self,
                 LrField       *field,
                 const char    *text)
{
  g_autofree char *key = surface_key (self, field);
  g_auto (GStrv) parts = g_strsplit (key, ".", 2);

  if (!lr_details_name_surface (self->document, parts[0], text))
    lr_details_room_update (self);
}

static void
limit_number_cb (LrDetailsRoom *self,
                 LrField       *field,
                 double         value,
                 gboolean       is_step)
{
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < LR_N_LIMITS; i++)
    if (&lr_limit_info ((LrLimit) i)->prop == lr_field_get_prop (field))
      {
        commit (self, lr_plan_set_limit (get_base (self), (LrLimit) i, value, &error), _(lr_field_get_prop (field)->label),
                is_step ? "limit" : NULL, &error);
        return;
      }
}

static void
lr_details_room_dispose (GObject *object)
{
  LrDetailsRoom *self = LR_DETAILS_ROOM (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_DETAILS_ROOM);
  g_clear_pointer (&self->wall_titles, g_free);
  G_OBJECT_CLASS (lr_details_room_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, box);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, room_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, walls);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, wall_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, job);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, sound);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, sound_text);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, surfaces);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, surface_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, limits);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, limit_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, wanted);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, wanted_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, sources);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsRoom, trace_row);
}

static void
lr_details_room_class_init (LrDetailsRoomClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_details_room_dispose;
  g_type_ensure (LR_TYPE_FIELD_GRID);
  g_type_ensure (LR_TYPE_DETAILS_JOB);
  g_type_ensure (LR_TYPE_SOURCE_TABLE);
  g_type_ensure (LR_TYPE_TRACE_ROW);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/details-room.ui");
  bind_children (widget_class);
}

static void
connect_grid (LrDetailsRoom *self,
              GtkWidget     *grid,
              GCallback      number,
              GCallback      text)
{
  g_signal_connect_object (grid, "number", number, self, G_CONNECT_SWAPPED);
  if (text != NULL)
    g_signal_connect_object (grid, "text", text, self, G_CONNECT_SWAPPED);
}

static void
lr_details_room_init (LrDetailsRoom *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  connect_grid (self, self->room_grid, G_CALLBACK (room_number_cb), G_CALLBACK (room_text_cb));
  connect_grid (self, self->wall_grid, G_CALLBACK (wall_number_cb), NULL);
  connect_grid (self, self->surface_grid, G_CALLBACK (surface_number_cb), G_CALLBACK (surface_text_cb));
  connect_grid (self, self->wanted_grid, G_CALLBACK (wanted_number_cb), NULL);
  connect_grid (self, self->limit_grid, G_CALLBACK (limit_number_cb), NULL);
}

/**
 * lr_details_room_set_document:
 * @document: whose room and job are shown; once. lr_details_room_update() tells of its changes
 */
void
lr_details_room_set_document (LrDetailsRoom *self,
                              LrDocument    *document)
{
  GtkWidget *expanders[] = { self->surfaces, self->sound, self->limits, self->wanted };

  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  lr_details_job_set_document (LR_DETAILS_JOB (self->job), document);
  for (gsize i = 0; i < G_N_ELEMENTS (expanders); i++)
    g_signal_connect_object (expanders[i], "notify::expanded", G_CALLBACK (lr_details_room_update), self, G_CONNECT_SWAPPED);
}
