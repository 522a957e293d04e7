/* packing.c - what has to come along, reckoned from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything placed stands in one line, once. What the kit has is counted for things by their kit entry, for the rest by the forms of
 * its supplies, if it lists that form at all: a kit without a row for sandbags is not taken to have none.
 */

#include "config.h"

#include "packing_parts.h"

#include "sun_readings.h"

#include <glib/gi18n-lib.h>

#define USUAL_HOURS 2.0 /* from rolling to wrap of a seated interview; common practice, no source */

static void
line_free (gpointer data)
{
  LrPackLine *line = data;

  g_free (line->key);
  g_free (line->title);
  g_array_unref (line->uses);
  g_free (line);
}

/**
 * lr_packing_free:
 * @packing: (transfer full): a packing list
 */
void
lr_packing_free (LrPacking *packing)
{
  g_ptr_array_unref (packing->lines);
  g_free (packing);
}

/* In keys: never translated, for ticks are kept by them */
static const char *const group_words[LR_N_PACK_GROUPS] = {
  [LR_PACK_CAMERA] = "camera", [LR_PACK_LENS] = "lens", [LR_PACK_SUPPORT] = "support", [LR_PACK_LIGHT] = "light",
  [LR_PACK_SOUND] = "sound", [LR_PACK_POWER] = "power", [LR_PACK_GRIP] = "grip", [LR_PACK_SUNDRIES] = "sundries",
};

/**
 * lr_pack_line:
 * @packing: a packing list
 * @group: under which it stands
 * @what: what it is
 * @name: what tells it from others of its group, never translated: "sandbag-5"
 *
 * Returns: (transfer none): the line of that name
 */
LrPackLine *
lr_pack_line (LrPacking   *packing,
              LrPackGroup  group,
              LrPackWhat   what,
              const char  *name)
{
  g_autofree char *key = g_strconcat (group_words[group], "/", name, NULL);
  LrPackLine *line;

  for (guint i = 0; i < packing->lines->len; i++)
    if (g_str_equal (((LrPackLine *) packing->lines->pdata[i])->key, key))
      return packing->lines->pdata[i];

  line = g_new0 (LrPackLine, 1);
  line->group = group;
  line->what = what;
  line->key = g_steal_pointer (&key);
  line->title = g_strdup ("");
  line->uses = g_array_new (FALSE, FALSE, sizeof (LrPackUse));
  line->owned = -1;
  line->total = NAN;
  g_ptr_array_add (packing->lines, line);

  return line;
}

/**
 * lr_pack_use:
 * @line: a line
 * @item: (nullable): what it is for
 * @count: how many
 * @figure: see #LrPackUse
 */
void
lr_pack_use (LrPackLine   *line,
             const LrItem *item,
             int           count,
             double        figure)
{
  LrPackUse use = { item, count, figure, FALSE, FALSE };

  g_array_append_val (line->uses, use);
  line->quantity += count;
}

/**
 * lr_pack_spare:
 * @line: a line
 * @count: how many come along in reserve
 */
void
lr_pack_spare (LrPackLine *line,
               int         count)
{
  line->spare += count;
  line->quantity += count;
}

/**
 * lr_pack_usual:
 * @kind: of a thing
 * @key: one of its numbers
 *
 * Those of a small camera: common practice, no source. A light without a battery runs from the mains.
 *
 * Returns: what is reckoned with where the number is not told, in inside units; 0: nothing
 */
double
lr_pack_usual (LrItemKind  kind,
               const char *key)
{
  static const struct { const char *key; double value; } usual[] = {
    { "draw-w", 8.0 }, { "battery-wh", 16.0 }, { "data-rate-mbit-s", 100.0 }, { "card-gb", 128.0 },
  };

  for (gsize i = 0; kind == LR_ITEM_CAMERA && i < G_N_ELEMENTS (usual); i++)
    if (g_str_equal (usual[i].key, key))
      return usual[i].value;

  return 0.0;
}

/**
 * lr_pack_told:
 * @study: a study
 * @item: what is placed
 * @key: a number of its kind, 0 where it is not told
 *
 * Returns: what it tells, else what the kit entry tells that it was taken from; 0: neither does
 */
double
lr_pack_told (const LrStudy *study,
              const LrItem  *item,
              const char    *key)
{
  const LrProp *prop = lr_item_find_prop (item->kind, key);
  const LrKitEntry *entry = lr_plan_find_kit (study->plan, item->kit);
  double told = lr_prop_get_number (prop, item);

  return told > 0.0 || entry == NULL || entry->item->kind != item->kind ? told : lr_prop_get_number (prop, entry->item);
}

/**
 * lr_pack_thing:
 * @packing: a packing list
 * @study: a study
 * @group: under which it stands
 * @kit_id: of the kit entry; ""
 * @item: what is placed, or the camera that the lens is on
 *
 * Returns: (transfer none): the line that it was added to
 */
LrPackLine *
lr_pack_thing (LrPacking     *packing,
               const LrStudy *study,
               LrPackGroup    group,
               const char    *kit_id,
               const LrItem  *item)
{
  const LrKitEntry *entry = lr_plan_find_kit (study->plan, kit_id);
  g_autofree char *name = g_strdup_printf ("%s:%s", entry != NULL ? "kit" : "item", entry != NULL ? kit_id : item->id);
  LrPackLine *line = lr_pack_line (packing, group, LR_PACK_THING, name);

  if (line->uses->len == 0)
    {
      g_free (line->title);
      line->title = entry != NULL ? g_strdup (entry->title) : lr_item_title (item);
      line->entry = entry;
      line->owned = entry != NULL ? entry->count : 0;
    }
  lr_pack_use (line, item, 1, NAN);

  return line;
}

static LrPackGroup
group_of (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
      return LR_PACK_CAMERA;
    case LR_ITEM_LIGHT:
      return LR_PACK_LIGHT;
    case LR_ITEM_MICROPHONE:
      return LR_PACK_SOUND;
    case LR_ITEM_PANEL:
      return LR_PACK_GRIP;
    case LR_ITEM_PERSON:
    case LR_ITEM_LEAD: /* by how far it must reach: packing_power.c */
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return LR_N_PACK_GROUPS;
    }
}

static void
pack_lens (LrPacking     *packing,
           const LrStudy *study,
           const LrItem  *camera)
{
  LrPackLine *line = lr_pack_thing (packing, study, LR_PACK_LENS, camera->camera.lens, camera);

  if (line->entry == NULL)
    {
      g_free (line->title);
      line->title = g_strdup_printf (_("Lens, %.4g mm"), 1000.0 * camera->camera.focal_m);
    }
}

static void
pack_filter (LrPacking    *packing,
             const LrItem *camera)
{
  g_autofree char *filter = NULL;
  LrPackLine *line;

  if (!(camera->camera.nd_stops > 0.0))
    return;
  filter = g_strdup_printf ("filter-%d", (int) lround (100.0 * camera->camera.nd_stops));
  line = lr_pack_line (packing, LR_PACK_LENS, LR_PACK_FILTER, filter);
  line->size = camera->camera.nd_stops;
  lr_pack_use (line, camera, 1, NAN);
}

static void
pack_modifier (LrPacking    *packing,
               const LrItem *light)
{
  g_autofree char *name = g_strconcat ("modifier:", light->light.modifier, NULL);
  LrPackLine *line;

  if (light->light.modifier[0] == '\0')
    return;
  line = lr_pack_line (packing, LR_PACK_LIGHT, LR_PACK_MODIFIER, name);
  g_free (line->title);
  line->title = g_strdup (light->light.modifier);
  lr_pack_use (line, light, 1, NAN);
}

static void
pack_things (LrPacking     *packing,
             const LrStudy *study)
{
  const GPtrArray *items = study->setup->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = items->pdata[i];
      LrPackGroup group = group_of (item);

      if (group == LR_N_PACK_GROUPS)
        continue;
      lr_pack_thing (packing, study, group, item->kit, item);
      if (item->kind == LR_ITEM_CAMERA)
        pack_lens (packing, study, item);
      if (item->kind == LR_ITEM_LIGHT)
        pack_modifier (packing, item);
    }
  for (guint i = 0; i < items->len; i++)
    if (((const LrItem *) items->pdata[i])->kind == LR_ITEM_CAMERA)
      pack_filter (packing, items->pdata[i]);
}

/* One that fails ends the interview. What of the lights stays in the van will do */
static void
pack_spare_lamp (LrPacking     *packing,
                 const LrStudy *study)
{
  LrPackLine *line = NULL;
  int left = 0;

  for (guint i = 0; i < study->setup->items->len && line == NULL; i++)
    if (((const LrItem *) study->setup->items->pdata[i])->kind == LR_ITEM_LIGHT)
      line = lr_pack_line (packing, LR_PACK_LIGHT, LR_PACK_SPARE_LAMP, "spare");
  if (line == NULL)
    return;

  for (guint i = 0; i < study->plan->kit->len; i++)
    {
      const LrKitEntry *entry = study->plan->kit->pdata[i];

      if (entry->item->kind == LR_ITEM_LIGHT)
        left += MAX (0, lr_plan_kit_left (study->plan, entry));
    }
  lr_pack_spare (line, 1);
  line->owned = left;
}

static void
read_hours (LrPacking     *packing,
            const LrStudy *study)
{
  int roll, wrap;

  packing->is_usual_hours = !lr_job_shoot (study->plan->job, &roll, &wrap);
  packing->hours = packing->is_usual_hours ? USUAL_HOURS : (wrap - roll) / 60.0;
}

/* What a supply is counted for; LR_SUPPLY_OTHER: for nothing */
static const LrSupplyForm forms[LR_N_PACK_WHATS] = {
  [LR_PACK_THING] = LR_SUPPLY_OTHER, [LR_PACK_FILTER] = LR_SUPPLY_OTHER, [LR_PACK_MODIFIER] = LR_SUPPLY_OTHER,
  [LR_PACK_TRIPOD] = LR_SUPPLY_TRIPOD, [LR_PACK_STAND] = LR_SUPPLY_STAND, [LR_PACK_BOOM_STAND] = LR_SUPPLY_BOOM_STAND,
  [LR_PACK_CLAMP] = LR_SUPPLY_CLAMP, [LR_PACK_SANDBAG] = LR_SUPPLY_SANDBAG, [LR_PACK_COUNTERWEIGHT] = LR_SUPPLY_OTHER,
  [LR_PACK_LEAD_TO_FIND] = LR_SUPPLY_OTHER, [LR_PACK_MULTIWAY] = LR_SUPPLY_MULTIWAY, [LR_PACK_CAMERA_BATTERY] = LR_SUPPLY_BATTERY,
  [LR_PACK_LIGHT_BATTERY] = LR_SUPPLY_BATTERY, [LR_PACK_CARD] = LR_SUPPLY_CARD, [LR_PACK_CELLS] = LR_SUPPLY_CELLS,
  [LR_PACK_SOUND_LEAD] = LR_SUPPLY_SOUND_LEAD, [LR_PACK_HEADPHONES] = LR_SUPPLY_OTHER, [LR_PACK_FLOOR_TAPE] = LR_SUPPLY_FLOOR_TAPE,
  [LR_PACK_MARK_TAPE] = LR_SUPPLY_MARK_TAPE, [LR_PACK_SPARE_LAMP] = LR_SUPPLY_OTHER,
};

/* What is left of each supply when the lines before have taken theirs; most demanding lines must come first. @has_spare: what is wanted in
 * reserve as well, of what nobody needs */
static void
take_from_supplies (LrPackLine    *line,
                    const LrStudy *study,
                    gboolean       has_spare,
                    int           *left)
{
  int wanted = line->quantity - (has_spare ? MAX (line->owned, 0) : line->spare);
  gboolean is_counted = has_spare;

  if (forms[line->what] == LR_SUPPLY_OTHER)
    return;
  for (guint i = 0; i < study->plan->supplies->len; i++)
    {
      const LrSupply *supply = study->plan->supplies->pdata[i];
      int taken;

      if ((LrSupplyForm) supply->form != forms[line->what])
        continue;
      if (!is_counted)
        line->owned = 0;
      is_counted = TRUE;
      if (supply->size > 0.0 && line->size > 0.0 && !line->is_usual_size && supply->size < line->size - 0.05)
        continue;
      taken = MIN (left[i], wanted);
      wanted -= taken;
      left[i] -= taken;
      line->owned += taken;
    }
}

static gint
compare_sizes (gconstpointer a,
               gconstpointer b)
{
  const LrPackLine *const *first = a, *const *second = b;

  return ((*second)->size > (*first)->size) - ((*second)->size < (*first)->size);
}

static void
count_owned (LrPacking     *packing,
             const LrStudy *study)
{
  g_autofree int *left = g_new (int, study->plan->supplies->len + 1);
  g_autoptr (GPtrArray) by_size = g_ptr_array_copy (packing->lines, NULL, NULL);

  g_ptr_array_set_free_func (by_size, NULL);
  g_ptr_array_sort (by_size, compare_sizes);
  for (guint i = 0; i < study->plan->supplies->len; i++)
    left[i] = ((const LrSupply *) study->plan->supplies->pdata[i])->count;
  for (guint i = 0; i < by_size->len; i++)
    take_from_supplies (by_size->pdata[i], study, FALSE, left);
  for (guint i = 0; i < by_size->len; i++)
    take_from_supplies (by_size->pdata[i], study, TRUE, left);
  for (guint i = 0; i < packing->lines->len; i++)
    {
      LrPackLine *line = packing->lines->pdata[i];

      line->missing = line->owned < 0 ? 0 : MAX (0, line->quantity - line->spare - line->owned);
      packing->n_missing += line->missing > 0;
    }
}

/* By group; within one as they came */
static void
sort_by_group (GPtrArray *lines)
{
  g_autoptr (GPtrArray) unsorted = g_ptr_array_copy (lines, NULL, NULL);
  guint n = 0;

  g_ptr_array_set_free_func (unsorted, NULL);
  for (int group = 0; group < LR_N_PACK_GROUPS; group++)
    for (guint i = 0; i < unsorted->len; i++)
      if ((int) ((const LrPackLine *) unsorted->pdata[i])->group == group)
        lines->pdata[n++] = unsorted->pdata[i];
}

/**
 * lr_packing_new:
 * @study: a study
 *
 * Returns: (transfer full): what its set-up needs, of which items and kit entries are the study's plan's
 */
LrPacking *
lr_packing_new (const LrStudy *study)
{
  LrPacking *packing = g_new0 (LrPacking, 1);

  packing->lines = g_ptr_array_new_with_free_func (line_free);
  read_hours (packing, study);
  pack_things (packing, study);
  pack_spare_lamp (packing, study);
  lr_pack_supports (packing, study);
  lr_pack_leads (packing, study);
  lr_pack_batteries (packing, study);
  lr_pack_media (packing, study);
  lr_pack_sound (packing, study);
  lr_pack_tape (packing, study);
  sort_by_group (packing->lines);
  count_owned (packing, study);

  return packing;
}
