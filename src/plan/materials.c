/* materials.c - what surfaces and things take up of sound, from the table in data
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * data/sound-materials.json is compiled in and read once.
 */

#include "config.h"

#include "materials.h"

#include "data_table.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SAME 0.0051 /* a plan holds two decimals */

typedef struct
{
  GArray *surfaces, *things; /* LrMaterial */
} Tables;

/* The titles in the table, for translators alone; a test holds them together */
static const char *const titles[] G_GNUC_UNUSED = {
  N_("Plaster on brick, painted"), N_("Plaster on lath"), N_("Gypsum board on studs"), N_("Brick, bare"),
  N_("Brick, painted"), N_("Concrete block, bare"), N_("Concrete block, painted"), N_("Concrete, bare"),
  N_("Marble or glazed tiles"), N_("Vinyl or linoleum on concrete"), N_("Boards on joists"),
  N_("Parquet on concrete"), N_("Carpet, thin"), N_("Carpet, heavy, on concrete"),
  N_("Carpet, heavy, on underlay"), N_("Window glass"), N_("Plate glass, large panes"), N_("Wooden door"),
  N_("Drape, light, straight"), N_("Drape, medium, straight"), N_("Drape, medium, to half its width"),
  N_("Drape, heavy, to half its width"), N_("Curtain in folds"), N_("Acoustic tile, 19 mm"),
  N_("Wood-fiber ceiling tile"), N_("Glass-fiber slab, 50 mm"), N_("Wooden chair"), N_("Upholstered chair"),
  N_("Person on a chair"), N_("Upholstered seats, a square meter of floor"),
};

static void
add_material (JsonArray *array G_GNUC_UNUSED,
              guint      index G_GNUC_UNUSED,
              JsonNode  *node,
              gpointer   materials)
{
  JsonObject *row = json_node_get_object (node);
  JsonArray *of = json_object_has_member (row, "of") ? json_object_get_array_member (row, "of") : NULL;
  JsonArray *bands = json_object_get_array_member (row, "absorption");
  LrMaterial material = { .id = lr_data_table_text (row, "id"), .title = lr_data_table_text (row, "title"),
                          .source = lr_data_table_text (row, "source") };

  for (guint i = 0; of != NULL && i < json_array_get_length (of); i++)
    {
      material.is_of_walls |= g_str_equal (json_array_get_string_element (of, i), "walls");
      material.is_of_floors |= g_str_equal (json_array_get_string_element (of, i), "floor");
      material.is_of_ceilings |= g_str_equal (json_array_get_string_element (of, i), "ceiling");
    }
  for (guint i = 0; i < LR_N_BANDS; i++)
    material.absorption[i] = json_array_get_double_element (bands, i);
  g_array_append_val ((GArray *) materials, material);
}

static const Tables *
get_tables (void)
{
  static Tables tables;
  static gsize is_read;

  if (g_once_init_enter (&is_read))
    {
      g_autoptr (JsonObject) table = lr_data_table_read ("sound-materials.json");

      tables.surfaces = lr_data_table_rows (table, "surfaces", sizeof (LrMaterial), add_material);
      tables.things = lr_data_table_rows (table, "things", sizeof (LrMaterial), add_material);
      g_once_init_leave (&is_read, 1);
    }

  return &tables;
}

static const LrMaterial *
find_in (const GArray *rows,
         const char   *id)
{
  for (guint i = 0; i < rows->len; i++)
    if (g_str_equal (g_array_index (rows, LrMaterial, i).id, id))
      return &g_array_index (rows, LrMaterial, i);

  return NULL;
}

/**
 * lr_materials:
 * @n: (out): how many
 *
 * Returns: (transfer none) (array length=n): what walls, floors and ceilings are of, as in data/sound-materials.json
 */
const LrMaterial *
lr_materials (gsize *n)
{
  const GArray *surfaces = get_tables ()->surfaces;

  *n = surfaces->len;
  return (const LrMaterial *) (gpointer) surfaces->data;
}

/**
 * lr_material_find:
 * @id: of a row
 *
 * Returns: (transfer none) (nullable): that row, of surfaces or of things
 */
const LrMaterial *
lr_material_find (const char *id)
{
  const LrMaterial *surface = find_in (get_tables ()->surfaces, id);

  return surface != NULL ? surface : find_in (get_tables ()->things, id);
}

/**
 * lr_material_suits:
 * @material: of a surface
 * @surface: "walls", "floor" or "ceiling"
 *
 * Returns: whether it is one of those that are usual there. Another may be named all the same
 */
gboolean
lr_material_suits (const LrMaterial *material,
                   const char       *surface)
{
  if (g_str_equal (surface, "walls"))
    return material->is_of_walls;

  return g_str_equal (surface, "floor") ? material->is_of_floors : material->is_of_ceilings;
}

/**
 * lr_material_named:
 * @text: what somebody calls it
 *
 * Returns: (transfer none) (nullable): the surface with that title in any case, else the only one whose title begins so
 */
const LrMaterial *
lr_material_named (const char *text)
{
  g_autofree char *wanted = g_utf8_casefold (text, -1);
  const LrMaterial *begins = NULL;
  guint n_begin = 0;
  gsize n;
  const LrMaterial *materials = lr_materials (&n);

  g_strstrip (wanted);
  for (gsize i = 0; i < n && *wanted != '\0'; i++)
    {
      g_autofree char *title = g_utf8_casefold (_(materials[i].title), -1);

      if (g_str_equal (title, wanted))
        return &materials[i];
      if (!g_str_has_prefix (title, wanted))
        continue;
      begins = &materials[i];
      n_begin++;
    }

  return n_begin == 1 ? begins : NULL;
}

/**
 * lr_material_of:
 * @surface: of a room
 *
 * Of several rows with the same figures that of the surface's name is taken, else the first.
 *
 * Returns: (transfer none) (nullable): the row whose absorption it has in every band, to what a plan can hold
 */
const LrMaterial *
lr_material_of (const LrSurface *surface)
{
  gsize n;
  const LrMaterial *materials = lr_materials (&n), *first = NULL;

  for (gsize i = 0; i < n; i++)
    {
      guint band = 0;

      while (band < LR_N_BANDS && fabs (materials[i].absorption[band] - surface->absorption[band]) < SAME)
        band++;
      if (band == LR_N_BANDS && g_strcmp0 (surface->material, _(materials[i].title)) == 0)
        return &materials[i];
      if (band == LR_N_BANDS && first == NULL)
        first = &materials[i];
    }

  return first;
}

/**
 * lr_material_of_thing:
 * @thing: a kind of thing
 *
 * Found once, for it is asked for at every study.
 *
 * Returns: (transfer none): its row
 */
const LrMaterial *
lr_material_of_thing (LrSoundThing thing)
{
  static const char *const ids[LR_N_THINGS] = {
    [LR_THING_WINDOW] = "window-glass", [LR_THING_DOOR] = "door-wood", [LR_THING_WOODEN_CHAIR] = "chair-wood",
    [LR_THING_SOFT_CHAIR] = "chair-upholstered", [LR_THING_SOFT_SEATS] = "seats-empty", [LR_THING_PERSON] = "person-seated",
    [LR_THING_CLOTH] = "drape-medium",
  };
  static const LrMaterial *found[LR_N_THINGS];
  static gsize is_found;

  g_return_val_if_fail (thing < LR_N_THINGS, NULL);

  if (g_once_init_enter (&is_found))
    {
      for (int i = 0; i < LR_N_THINGS; i++)
        found[i] = lr_material_find (ids[i]);
      g_once_init_leave (&is_found, 1);
    }

  return found[thing];
}

/**
 * lr_plan_set_material:
 * @plan: a plan
 * @surface: "walls", "floor" or "ceiling"
 * @material: what it is of
 * @error: return location
 *
 * Names the surface after the material and gives it all of its absorption; how it throws light back stays.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_material (const LrPlan      *plan,
                      const char        *surface,
                      const LrMaterial  *material,
                      GError           **error)
{
  static const char *const bands[LR_N_BANDS] = { "125", "250", "500", "1000", "2000", "4000" };
  g_autofree char *name_key = g_strconcat (surface, ".material", NULL);
  g_autoptr (LrPlan) next = lr_plan_set_room_text (plan, name_key, _(material->title), error);

  for (guint band = 0; next != NULL && band < LR_N_BANDS; band++)
    {
      g_autofree char *key = g_strdup_printf ("%s.absorption-%s-hz", surface, bands[band]);
      LrPlan *changed = lr_plan_set_room (next, key, material->absorption[band], error);

      lr_plan_unref (next);
      next = changed;
    }

  return g_steal_pointer (&next);
}
