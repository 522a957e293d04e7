/* plan_edit_add.c - putting things into the room and taking them out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_check.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Fresh ids, tags and names: each is a stem with the lowest number that no item has */

typedef guint (*NumberFunc) (const char *text, const char *stem);

/* 12 for "12", 0 for anything else */
static guint
plain_number (const char *digits)
{
  gsize length = strlen (digits);

  if (length == 0 || length > 6 || *digits == '0' || strspn (digits, "0123456789") != length)
    return 0;

  return (guint) g_ascii_strtoull (digits, NULL, 10);
}

/* "light-12" */
static guint
id_number (const char *id,
           const char *stem)
{
  gsize length = strlen (stem);

  return strncmp (id, stem, length) == 0 && id[length] == '-' ? plain_number (id + length + 1) : 0;
}

/* "L12" */
static guint
tag_number (const char *tag,
            const char *stem)
{
  gsize length = strlen (stem);

  return strncmp (tag, stem, length) == 0 ? plain_number (tag + length) : 0;
}

/* "A" is 1, "Z" 26, "AA" 27 */
static guint
letter_number (const char *tag,
               const char *stem G_GNUC_UNUSED)
{
  guint number = 0;

  if (strlen (tag) > 4)
    return 0;
  for (; *tag != '\0'; tag++)
    {
      if (!g_ascii_isupper (*tag))
        return 0;
      number = number * 26 + (guint) (*tag - 'A') + 1;
    }

  return number;
}

/* "Chair" and "Chair 1" are 1, "Chair 12" is 12 */
static guint
name_number (const char *name,
             const char *stem)
{
  gsize length = strlen (stem);

  if (strncmp (name, stem, length) != 0)
    return 0;
  if (name[length] == '\0')
    return 1;

  return name[length] == ' ' ? plain_number (name + length + 1) : 0;
}

/* The lowest number, from 1, that no item's text at @offset has */
static guint
lowest_free (const LrSetup *setup,
             gsize          offset,
             NumberFunc     number_of,
             const char    *stem)
{
  guint n = setup->items->len;
  g_autofree gboolean *is_taken = g_new0 (gboolean, n + 2);
  guint number = 1;

  for (guint i = 0; i < n; i++)
    {
      guint taken = number_of (G_STRUCT_MEMBER (char *, setup->items->pdata[i], offset), stem);

      if (taken <= n)
        is_taken[taken] = TRUE;
    }
  while (is_taken[number])
    number++;

  return number;
}

static char *
dup_free_id (const LrSetup *setup,
             const char    *stem)
{
  return g_strdup_printf ("%s-%u", stem, lowest_free (setup, G_STRUCT_OFFSET (LrItem, id), id_number, stem));
}

static char *
dup_letters (guint number)
{
  char buffer[8];
  gsize at = sizeof buffer - 1;

  buffer[at] = '\0';
  for (; number > 0; number = (number - 1) / 26)
    buffer[--at] = (char) ('A' + (number - 1) % 26);

  return g_strdup (buffer + at);
}

static char *
dup_free_tag (const LrSetup *setup,
              const LrItem  *item)
{
  const char *stem = lr_item_tag_stem (item);
  gsize offset = G_STRUCT_OFFSET (LrItem, tag);

  if (stem == NULL)
    return g_strdup ("");
  if (strcmp (stem, "A") == 0)
    return dup_letters (lowest_free (setup, offset, letter_number, stem));

  return g_strdup_printf ("%s%u", stem, lowest_free (setup, offset, tag_number, stem));
}

static gboolean
has_name (const LrSetup *setup,
          const char    *name)
{
  for (guint i = 0; i < setup->items->len; i++)
    if (strcmp (((const LrItem *) setup->items->pdata[i])->name, name) == 0)
      return TRUE;

  return FALSE;
}

/* @name itself if it is free; else the stem of "window 2" is "window" */
static char *
dup_free_name (const LrSetup *setup,
               const char    *name)
{
  const char *space = strrchr (name, ' ');
  g_autofree char *stem = space != NULL && space > name && plain_number (space + 1) > 0
                            ? g_strndup (name, (gsize) (space - name)) : g_strdup (name);

  if (!has_name (setup, name))
    return g_strdup (name);

  return g_strdup_printf ("%s %u", stem, lowest_free (setup, G_STRUCT_OFFSET (LrItem, name), name_number, stem));
}

/**
 * lr_edit_name_item:
 * @setup: the set-up that it comes into
 * @item: a fresh item, not in it yet
 *
 * Gives it an id, a tag and a name that are free. Things with a tag go by it; others need a name.
 */
void
lr_edit_name_item (const LrSetup *setup,
                   LrItem        *item)
{
  g_autofree char *id = dup_free_id (setup, lr_item_kind_info (item->kind)->word);
  g_autofree char *tag = dup_free_tag (setup, item);
  const char *wanted = *item->name == '\0' && *tag == '\0' ? lr_item_form_label (item) : item->name;
  g_autofree char *name = *wanted == '\0' ? g_strdup ("") : dup_free_name (setup, wanted);

  lr_prop_put_text (lr_item_find_prop (item->kind, "id"), item, id);
  lr_prop_put_text (lr_item_find_prop (item->kind, "tag"), item, tag);
  lr_prop_put_text (lr_item_find_prop (item->kind, "name"), item, name);
}

/* Adding */

/* A prototype may come from anywhere: its numbers must be in range, its references are dropped where they name nothing */
static gboolean
adopt (const LrPlan       *plan,
       const LrSetup      *setup,
       const LrPropTable  *table,
       LrItem             *item,
       GError            **error)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];

      if (prop->type == LR_PROP_REF)
        {
          if (!lr_ref_is_valid (plan, setup, item, prop, lr_prop_get_text (prop, item)))
            lr_prop_put_text (prop, item, "");
        }
      else if (prop->type == LR_PROP_TEXT)
        {
          if (!lr_edit_check_text (prop->key, lr_prop_get_text (prop, item), error))
            return FALSE;
        }
      else
        {
          if (!lr_edit_check_number (prop, lr_prop_get_number (prop, item), error))
            return FALSE;
          lr_prop_put_number (prop, item, lr_prop_get_number (prop, item));
        }
    }

  return TRUE;
}

/* A lead without a path lies straight ahead, a metre or its length */
static void
lay_straight (LrItem *item,
              LrVec2  at_m,
              double  facing_rad)
{
  item->path_m = g_new (LrVec2, 2);
  item->n_path = 2;
  item->path_m[0] = lr_edit_quantise (at_m);
  item->path_m[1] = lr_edit_quantise (lr_vec2_add (at_m, lr_vec2_polar (facing_rad, fmin (1.0, item->lead.length_m))));
}

static gboolean
put_new (const LrSetup  *setup,
         LrItem         *item,
         LrVec2          at_m,
         double          facing_rad,
         GError        **error)
{
  LrPlaceType place = lr_item_kind_info (item->kind)->place;

  if (place == LR_PLACE_NONE)
    return TRUE;
  if (place == LR_PLACE_PATH && item->n_path == 0 && lr_edit_check_point (at_m, NULL))
    lay_straight (item, at_m, facing_rad);

  return lr_edit_put_at (setup, item, at_m, error) && (place != LR_PLACE_FLOOR || lr_edit_face (item, facing_rad, error));
}

static gboolean
insert (const LrPlan   *plan,
        LrSetup        *setup,
        LrItem         *item,
        LrVec2          at_m,
        double          facing_rad,
        GError        **error)
{
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);

  lr_edit_name_item (setup, item);
  if (!adopt (plan, setup, lr_item_common_table (info->place), item, error)
      || !adopt (plan, setup, &info->table, item, error) || !put_new (setup, item, at_m, facing_rad, error))
    return FALSE;
  lr_setup_insert (setup, lr_item_ref (item));

  return TRUE;
}

/**
 * lr_plan_add:
 * @plan: a plan
 * @prototype: what to make a copy of
 * @at_m: where it stands [m]; ignored by circuits
 * @facing_rad: where it faces [rad]; ignored by what hangs on a wall
 * @id: (out) (optional) (transfer full): the new item's id
 * @error: return location
 *
 * The copy gets a fresh id, tag and name. References of @prototype that name nothing in the set-up become "".
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_add (const LrPlan  *plan,
             const LrItem  *prototype,
             LrVec2         at_m,
             double         facing_rad,
             char         **id,
             GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  g_autoptr (LrItem) item = lr_item_copy (prototype);

  if (next == NULL)
    return NULL;
  if (item->kind == LR_ITEM_LENS)
    {
      lr_edit_refuse (item, _("goes on a camera, not into the room."), error);
      return NULL;
    }
  if (!insert (plan, setup, item, at_m, facing_rad, error))
    return NULL;

  if (id != NULL)
    *id = g_strdup (item->id);

  return g_steal_pointer (&next);
}

/* A body from the van gets a lens that is still there: one of its focal length before the first */
static void
mount_lens (const LrPlan *plan,
            LrItem       *item)
{
  const LrKitEntry *chosen = NULL;

  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = plan->kit->pdata[i];
      const LrLens *lens = &entry->item->lens;

      if (entry->item->kind != LR_ITEM_LENS || lr_plan_kit_left (plan, entry) < 1)
        continue;
      if (chosen == NULL)
        chosen = entry;
      if (item->camera.focal_m >= lens->focal_min_m && item->camera.focal_m <= lens->focal_max_m)
        {
          chosen = entry;
          break;
        }
    }

  if (chosen == NULL)
    return;
  lr_prop_put_text (lr_item_find_prop (LR_ITEM_CAMERA, "lens"), item, chosen->item->id);
  item->camera.focal_m = CLAMP (item->camera.focal_m, chosen->item->lens.focal_min_m, chosen->item->lens.focal_max_m);
  item->camera.f_number = CLAMP (item->camera.f_number, chosen->item->lens.f_number_min,
                                 chosen->item->lens.f_number_max);
}

/**
 * lr_plan_add_from_kit:
 * @plan: a plan
 * @kit_id: of a kit entry
 * @at_m: where it stands [m]
 * @facing_rad: where it faces [rad]
 * @id: (out) (optional) (transfer full): the new item's id
 * @error: return location
 *
 * Takes one from the van, even if none is left: lr_plan_kit_left() then tells how many to get. A camera without a lens
 * gets one that is left.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_add_from_kit (const LrPlan  *plan,
                      const char    *kit_id,
                      LrVec2         at_m,
                      double         facing_rad,
                      char         **id,
                      GError       **error)
{
  const LrKitEntry *entry = lr_plan_find_kit (plan, kit_id);
  g_autoptr (LrItem) item = NULL;

  if (entry == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in the kit."), kit_id);
      return NULL;
    }

  item = lr_item_copy (entry->item);
  g_clear_pointer (&item->unknown, json_object_unref); /* the entry's, not the item's */
  if (item->kind == LR_ITEM_LENS)
    {
      lr_prop_put_text (lr_item_find_prop (item->kind, "name"), item, entry->title);
      return lr_plan_add (plan, item, at_m, facing_rad, id, error);
    }
  lr_prop_put_text (lr_item_find_prop (item->kind, "kit"), item, kit_id);
  if (item->kind == LR_ITEM_CAMERA && *item->camera.lens == '\0')
    mount_lens (plan, item);

  return lr_plan_add (plan, item, at_m, facing_rad, id, error);
}

/**
 * lr_plan_duplicate:
 * @plan: a plan
 * @id: of an item
 * @by_m: how far from it the copy stands [m]
 * @new_id: (out) (optional) (transfer full): the copy's id
 * @error: return location
 *
 * The copy has the next free tag, a name of its own, and looks, aims and plugs where the first does.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_duplicate (const LrPlan  *plan,
                   const char    *id,
                   LrVec2         by_m,
                   char         **new_id,
                   GError       **error)
{
  const LrSetup *setup = lr_plan_get_setup (plan);
  const LrItem *item = lr_setup_find (setup, id);
  LrVec2 at_m = { 0.0, 0.0 };
  double facing_rad = 0.0;

  if (item == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in this set-up."), id);
      return NULL;
    }
  if (lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR)
    {
      at_m = item->at_m;
      facing_rad = item->facing_rad;
    }
  else
    lr_setup_place (setup, item, &at_m, &facing_rad);

  return lr_plan_add (plan, item, lr_vec2_add (at_m, by_m), facing_rad, new_id, error);
}

/* Taking away */

static const LrProp *
find_ref_to (const LrItem *item,
             const LrItem *target)
{
  const LrPropTable *table = &lr_item_kind_info (item->kind)->table;

  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];

      if (prop->type == LR_PROP_REF && strcmp (prop->target, lr_item_kind_info (LR_ITEM_LENS)->word) != 0
          && strcmp (lr_prop_get_text (prop, item), target->id) == 0)
        return prop;
    }

  return NULL;
}

/**
 * lr_plan_remove:
 * @plan: a plan
 * @id: of an item
 * @error: return location
 *
 * References to the item become "": what aimed at it keeps its direction, leads that fed it stay where they lie.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_remove (const LrPlan  *plan,
                const char    *id,
                GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  const LrItem *target = next != NULL ? lr_setup_find (setup, id) : NULL;

  if (next == NULL)
    return NULL;
  if (target == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in this set-up."), id);
      return NULL;
    }

  for (guint i = 0; i < setup->items->len; i++)
    for (const LrProp *prop; (prop = find_ref_to (setup->items->pdata[i], target)) != NULL;)
      lr_edit_forget (setup, lr_edit_item_at (setup, i), prop, target);
  g_ptr_array_remove (setup->items, (gpointer) target);

  return g_steal_pointer (&next);
}
