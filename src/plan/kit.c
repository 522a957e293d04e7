/* kit.c - what is in the van
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The generic kit of a new plan is what one person with one car brings to two cameras and a seated speaker: common
 * practice, no source. Its entries are their kinds' usual sizes; lenses are those of the table in data.
 */

#include "config.h"

#include "plan_private.h"

#include "formats.h"
#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>

#define ROW_OWNER LrKitEntry

static const LrProp entry_rows[] = {
  TEXT ("title", N_("Title"), title),
  TEXT ("note", N_("Note"), note),
  COUNT ("count", N_("In the kit"), count, 0, 1000, 1),
};

static const LrPropTable entry_table = TABLE (entry_rows);

typedef struct
{
  const char *id, *title, *note; /* without a title: of the table of lenses */
  int         count;
  LrItemKind  kind;
  int         form;
} KitRow;

static const KitRow generic_kit[] = {
  { "camera-body", N_("Camera body"), N_("36.0 × 20.3 mm sensor"), 2, LR_ITEM_CAMERA, 0 },
  { "lens-35", NULL, NULL, 1, LR_ITEM_LENS, 0 },
  { "lens-50", NULL, NULL, 1, LR_ITEM_LENS, 0 },
  { "lens-85", NULL, NULL, 1, LR_ITEM_LENS, 0 },
  { "wide-emitter", N_("Wide emitter"), N_("90 × 90 cm, 200 W"), 2, LR_ITEM_LIGHT, LR_LIGHT_WIDE },
  { "small-panel", N_("Small panel"), N_("30 × 30 cm, 60 W"), 2, LR_ITEM_LIGHT, LR_LIGHT_PANEL },
  { "point-source", N_("Point source"), N_("with doors, 80 W"), 1, LR_ITEM_LIGHT, LR_LIGHT_POINT },
  { "reflector", N_("Reflector"), N_("100 cm, on a stand"), 1, LR_ITEM_PANEL, LR_PANEL_REFLECTOR },
  { "flag", N_("Flag"), N_("60 × 90 cm"), 2, LR_ITEM_PANEL, LR_PANEL_FLAG },
  { "backdrop", N_("Backdrop"), N_("2.7 m wide, on two stands"), 1, LR_ITEM_PANEL, LR_PANEL_BACKDROP },
  { "boom", N_("Boom on a stand"), N_("short tube, narrow"), 1, LR_ITEM_MICROPHONE, LR_MIC_BOOM },
  { "lavalier", N_("Lavalier"), N_("all-round"), 2, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER },
  { "lead-10", N_("Lead, 10 m"), N_("three-pin"), 4, LR_ITEM_LEAD, 0 },
};

/**
 * lr_kit_entry_table:
 *
 * Returns: (transfer none): an entry's own members; those of its item's kind stand beside them
 */
const LrPropTable *
lr_kit_entry_table (void)
{
  return &entry_table;
}

/**
 * lr_kit_holds_kind:
 * @kind: a kind
 *
 * Returns: whether a van can hold such things: not people, and not what belongs to the room
 */
gboolean
lr_kit_holds_kind (LrItemKind kind)
{
  return kind != LR_ITEM_PERSON && !lr_item_kind_info (kind)->is_of_room;
}

/**
 * lr_kit_entry_new:
 * @item: (transfer full): what placing one makes; its id is the entry's
 *
 * Returns: (transfer full): an entry of one, which may be written until it is in a plan
 */
LrKitEntry *
lr_kit_entry_new (LrItem *item)
{
  LrKitEntry *entry = g_atomic_rc_box_new0 (LrKitEntry);

  lr_prop_table_init (&entry_table, entry);
  entry->item = item;

  return entry;
}

/**
 * lr_kit_entry_copy:
 * @entry: an entry
 *
 * Returns: (transfer full): a fresh one that may be written and shares its item
 */
LrKitEntry *
lr_kit_entry_copy (const LrKitEntry *entry)
{
  LrKitEntry *copy = g_atomic_rc_box_dup (sizeof *entry, (gpointer) entry);

  lr_prop_table_copy (&entry_table, copy, entry);
  copy->item = lr_item_ref (entry->item);

  return copy;
}

static void
clear (gpointer data)
{
  LrKitEntry *entry = data;

  lr_prop_table_clear (&entry_table, entry);
  lr_item_unref (entry->item);
}

/**
 * lr_kit_entry_unref:
 * @entry: (transfer full): an entry
 */
void
lr_kit_entry_unref (LrKitEntry *entry)
{
  g_atomic_rc_box_release_full (entry, clear);
}

/**
 * lr_kit_entry_equal:
 * @a: an entry
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_kit_entry_equal (const LrKitEntry *a,
                    const LrKitEntry *b)
{
  return a == b || (lr_prop_table_equal (&entry_table, a, b) && lr_item_equal (a->item, b->item));
}

static LrKitEntry *
new_entry (const KitRow *row)
{
  const LrLensType *type = row->title == NULL ? lr_lens_type_find (row->id) : NULL;
  LrItem *item = type != NULL ? lr_item_copy (type->item) : lr_item_new_usual (row->kind, row->form, row->id);
  LrKitEntry *entry = lr_kit_entry_new (item);

  lr_prop_put_text (lr_prop_table_find (&entry_table, "title"), entry, _(type != NULL ? type->title : row->title));
  lr_prop_put_text (lr_prop_table_find (&entry_table, "note"), entry, _(type != NULL ? type->note : row->note));
  entry->count = row->count;

  return entry;
}

/**
 * lr_kit_new_generic:
 *
 * Returns: (transfer full) (element-type LrKitEntry): the kit of a new plan
 */
GPtrArray *
lr_kit_new_generic (void)
{
  GPtrArray *kit = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_kit_entry_unref);

  for (guint i = 0; i < G_N_ELEMENTS (generic_kit); i++)
    g_ptr_array_add (kit, new_entry (&generic_kit[i]));

  return kit;
}
