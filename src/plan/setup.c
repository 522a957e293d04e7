/* setup.c - a set-up: a room and what stands in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Items are kept in the order of their kinds (lr_item_kind_in_order ()), within a kind in the order of making: the order
 * of the file's lists, so that a plan read back is equal to the one written.
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define ROW_OWNER LrSetup

static const LrChoice walls_choices[] = { { "level", N_("At a level") }, { "dark", N_("As dark as they come") }, { NULL, NULL } };

static const LrProp setup_rows[] = {
  ROW ("face-level-pct", N_("Lit side of a face"), LR_PROP_SHARE, face_level, .min = 0.05, .max = 0.95, .is_optional = TRUE),
  CHOICE ("walls-wanted", N_("Walls behind"), walls, walls_choices, LR_WALLS_AT_LEVEL),
  SHARE ("wall-level-pct", N_("Level of the walls"), wall_level, 0.02, 0.95, 0.4),
};

static const LrPropTable setup_table = TABLE (setup_rows);

/**
 * lr_setup_table:
 *
 * Returns: (transfer none): the numbers of a set-up: the levels wanted in it
 */
const LrPropTable *
lr_setup_table (void)
{
  return &setup_table;
}

static GPtrArray *
new_items (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) lr_item_unref);
}

static gpointer
ref_item (gconstpointer item,
          gpointer      data G_GNUC_UNUSED)
{
  return lr_item_ref (item);
}

/**
 * lr_setup_new:
 * @id: its id
 * @name: its name
 *
 * Returns: (transfer full): a set-up with a room that is not drawn yet and no items
 */
LrSetup *
lr_setup_new (const char *id,
              const char *name)
{
  LrSetup *setup = g_atomic_rc_box_new0 (LrSetup);

  setup->id = g_strdup (id);
  setup->name = g_strdup (name);
  setup->found_of = g_strdup ("");
  setup->location = lr_location_new ();
  setup->room = lr_room_new ();
  setup->items = new_items ();
  lr_prop_table_init (&setup_table, setup);

  return setup;
}

/**
 * lr_setup_copy:
 * @setup: a set-up
 *
 * Returns: (transfer full): a fresh one that may be written and shares location, room and items with @setup
 */
LrSetup *
lr_setup_copy (const LrSetup *setup)
{
  LrSetup *copy = g_atomic_rc_box_dup (sizeof *setup, (gpointer) setup);

  copy->id = g_strdup (setup->id);
  copy->name = g_strdup (setup->name);
  copy->found_of = g_strdup (setup->found_of);
  copy->location = lr_location_ref (setup->location);
  copy->room = lr_room_ref (setup->room);
  copy->items = g_ptr_array_copy (setup->items, (GCopyFunc) ref_item, NULL);
  copy->unknown = lr_json_dup_object (setup->unknown);

  return copy;
}

/**
 * lr_setup_ref:
 * @setup: a set-up
 *
 * Returns: (transfer full): @setup
 */
LrSetup *
lr_setup_ref (const LrSetup *setup)
{
  return g_atomic_rc_box_acquire ((gpointer) setup);
}

static void
clear (gpointer data)
{
  LrSetup *setup = data;

  g_free (setup->id);
  g_free (setup->name);
  g_free (setup->found_of);
  lr_location_unref (setup->location);
  lr_room_unref (setup->room);
  g_ptr_array_unref (setup->items);
  g_clear_pointer (&setup->unknown, json_object_unref);
}

/**
 * lr_setup_unref:
 * @setup: (transfer full): a set-up
 */
void
lr_setup_unref (LrSetup *setup)
{
  g_atomic_rc_box_release_full (setup, clear);
}

/**
 * lr_setup_equal:
 * @a: a set-up
 * @b: another
 *
 * Returns: whether they are the same in every member, items in the same order
 */
gboolean
lr_setup_equal (const LrSetup *a,
                const LrSetup *b)
{
  if (a == b)
    return TRUE;
  if (a->items->len != b->items->len || strcmp (a->id, b->id) != 0 || strcmp (a->name, b->name) != 0
      || strcmp (a->found_of, b->found_of) != 0)
    return FALSE;
  for (guint i = 0; i < a->items->len; i++)
    if (!lr_item_equal (a->items->pdata[i], b->items->pdata[i]))
      return FALSE;

  return lr_prop_table_equal (&setup_table, a, b) && lr_location_equal (a->location, b->location) && lr_room_equal (a->room, b->room)
         && lr_json_objects_equal (a->unknown, b->unknown);
}

/* Place of a kind in the order of kinds */
static guint
rank (LrItemKind kind)
{
  guint i = 0;

  while (lr_item_kind_in_order (i) != kind)
    i++;

  return i;
}

/**
 * lr_setup_insert:
 * @setup: a fresh set-up
 * @item: (transfer full): an item whose id is not in it yet
 *
 * Puts @item behind the last of its kind.
 */
void
lr_setup_insert (LrSetup *setup,
                 LrItem  *item)
{
  guint wanted = rank (item->kind);
  guint i = setup->items->len;

  while (i > 0 && rank (((const LrItem *) setup->items->pdata[i - 1])->kind) > wanted)
    i--;

  g_ptr_array_insert (setup->items, (int) i, item);
}

/**
 * lr_setup_find:
 * @setup: a set-up
 * @id: (nullable): an id
 *
 * Returns: (transfer none) (nullable): the item with that id
 */
const LrItem *
lr_setup_find (const LrSetup *setup,
               const char    *id)
{
  if (id == NULL || *id == '\0')
    return NULL;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];

      if (strcmp (item->id, id) == 0)
        return item;
    }

  return NULL;
}

/**
 * lr_setup_find_role:
 * @setup: a set-up
 * @role: a role
 *
 * Returns: (transfer none) (nullable): the first person of that role
 */
const LrItem *
lr_setup_find_role (const LrSetup *setup,
                    LrRole         role)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];

      if (item->kind == LR_ITEM_PERSON && item->person.role == (int) role)
        return item;
    }

  return NULL;
}

/* Doors and windows start at along_m; other things on walls have their middle there */
static double
half_opening_m (const LrItem *item)
{
  if (item->kind == LR_ITEM_DOOR)
    return item->door.width_m / 2.0;
  if (item->kind == LR_ITEM_WINDOW)
    return item->window.width_m / 2.0;

  return 0.0;
}

static gboolean
place_on_wall (const LrRoom *room,
               const LrItem *item,
               LrVec2       *at_m,
               double       *facing_rad)
{
  LrVec2 from_m, along;

  if (!lr_room_wall (room, item->wall, &from_m, &along, NULL))
    return FALSE;

  *at_m = lr_vec2_along (from_m, along, item->along_m + half_opening_m (item));
  *facing_rad = lr_vec2_angle_rad (lr_vec2_left (along));

  return TRUE;
}

static gboolean
place_at_path_start (const LrItem *item,
                     LrVec2       *at_m,
                     double       *facing_rad)
{
  if (item->n_path == 0)
    return FALSE;

  *at_m = item->path_m[0];
  *facing_rad = item->n_path > 1 ? lr_vec2_angle_rad (lr_vec2_sub (item->path_m[1], item->path_m[0])) : 0.0;

  return TRUE;
}

/**
 * lr_setup_place:
 * @setup: a set-up
 * @item: one of its items
 * @at_m: (out): where it stands [m]: on the floor; the middle of a door or window; at what carries it; at its first path point
 * @facing_rad: (out): where it faces [rad]; from a wall into the room
 *
 * Returns: %FALSE, with nothing written, if the item has no place, as a circuit or a lead without a path
 */
gboolean
lr_setup_place (const LrSetup *setup,
                const LrItem  *item,
                LrVec2        *at_m,
                double        *facing_rad)
{
  const LrItem *carrier = lr_setup_find (setup, lr_item_carrier (item));
  const LrItem *stands = carrier != NULL ? carrier : item;

  switch (lr_item_kind_info (stands->kind)->place)
    {
    case LR_PLACE_FLOOR:
      *at_m = stands->at_m;
      *facing_rad = stands->facing_rad;
      return TRUE;
    case LR_PLACE_WALL:
      return place_on_wall (setup->room, stands, at_m, facing_rad);
    case LR_PLACE_PATH:
      return place_at_path_start (stands, at_m, facing_rad);
    case LR_PLACE_NONE:
    default:
      return FALSE;
    }
}

/**
 * lr_plan_face_level:
 * @plan: a plan
 *
 * Returns: where the lit side of a face is wanted in the shown set-up, share of full signal
 */
double
lr_plan_face_level (const LrPlan *plan)
{
  const LrSetup *setup = lr_plan_get_setup (plan);

  return setup->face_level > 0.0 ? setup->face_level : plan->limits.value[LR_LIMIT_FACE_LEVEL];
}

/**
 * lr_plan_wall_level:
 * @plan: a plan
 *
 * Returns: where the walls behind are wanted in the shown set-up, share of full signal; NAN: as dark as they come
 */
double
lr_plan_wall_level (const LrPlan *plan)
{
  const LrSetup *setup = lr_plan_get_setup (plan);

  return setup->walls == LR_WALLS_DARK ? (double) NAN : setup->wall_level;
}
