/* plan_diff.c - what is different between a set-up as planned and as found
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Things of one kind are the same by id and tag, then, for plans that were made apart, by tag, by id, or by name.
 */

#include "config.h"

#include "plan_diff_private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define N_PASSES 4
#define WAY_M 0.1 /* a lead that lies so much longer or shorter lies another way */

static LrDiffGroup
group_of (const LrItem *item)
{
  static const LrDiffGroup groups[LR_N_ITEM_KINDS] = {
    [LR_ITEM_PERSON] = LR_DIFF_OF_PEOPLE, [LR_ITEM_CAMERA] = LR_DIFF_OF_CAMERAS, [LR_ITEM_LIGHT] = LR_DIFF_OF_LIGHTS,
    [LR_ITEM_HOUSE_LIGHT] = LR_DIFF_OF_LIGHTS, [LR_ITEM_MICROPHONE] = LR_DIFF_OF_SOUND, [LR_ITEM_NOISE] = LR_DIFF_OF_SOUND,
    [LR_ITEM_PANEL] = LR_DIFF_OF_REST, [LR_ITEM_LEAD] = LR_DIFF_OF_REST, [LR_ITEM_FURNITURE] = LR_DIFF_OF_REST,
    [LR_ITEM_LENS] = LR_DIFF_OF_REST, [LR_ITEM_DOOR] = LR_DIFF_OF_ROOM, [LR_ITEM_WINDOW] = LR_DIFF_OF_ROOM,
    [LR_ITEM_SOCKET] = LR_DIFF_OF_ROOM, [LR_ITEM_CIRCUIT] = LR_DIFF_OF_ROOM,
  };

  return groups[item->kind];
}

static LrDiff
new_diff (LrDiffType    type,
          const LrItem *was,
          const LrItem *now)
{
  return (LrDiff) { .type = type, .group = group_of (now != NULL ? now : was), .was = was, .now = now, .wall = -1, .nearer_m = NAN };
}

/* Properties */

/* Places are told as moves, ids and tags are names */
static gboolean
is_told_otherwise (const LrProp *prop)
{
  static const char *const keys[] = {
    "id", "tag", "kit", "x-mm", "y-mm", "facing-deg", "wall", "along-mm", "tip-x-mm", "tip-y-mm", "goes-with", NULL
  };

  return g_strv_contains (keys, prop->key) || g_str_has_prefix (prop->key, "underlay-") || g_str_has_prefix (prop->key, "absorption-");
}

static gboolean
is_other_number (const LrProp *prop,
                 double        was,
                 double        now)
{
  double least = prop->type == LR_PROP_LENGTH ? LR_DIFF_LENGTH_M : prop->type == LR_PROP_ANGLE ? LR_DIFF_ANGLE_RAD : 1e-7;

  if (lr_prop_is_given (prop, was) != lr_prop_is_given (prop, now))
    return TRUE;

  return fabs (now - was) >= least - 1e-9;
}

/* Another lens is told by its focal length, if that is another too */
static gboolean
is_told_by_focal (const LrProp *prop,
                  const LrDiff *like)
{
  return like->was != NULL && like->was->kind == LR_ITEM_CAMERA && strcmp (prop->key, "lens") == 0
         && like->was->camera.focal_m != like->now->camera.focal_m;
}

static gboolean
is_same_thing (const LrItem *a,
               const LrItem *b,
               int           pass)
{
  gboolean has_same_id = strcmp (a->id, b->id) == 0, has_same_tag = strcmp (a->tag, b->tag) == 0;

  if (a->kind != b->kind)
    return FALSE;
  if (pass == 0)
    return has_same_id && has_same_tag;
  if (pass == 1)
    return has_same_tag && *a->tag != '\0';
  if (pass == 2)
    return has_same_id;

  return *a->name != '\0' && strcmp (a->name, b->name) == 0;
}

/* Ids may be others where plans were made apart, or things carried: what they name counts */
static gboolean
is_same_text (const LrPlanDiff *diff,
              const LrProp     *prop,
              const char       *was,
              const char       *now)
{
  const LrItem *was_item, *now_item;
  const LrKitEntry *was_entry, *now_entry;

  if (strcmp (was, now) == 0)
    return TRUE;
  if (prop->type != LR_PROP_REF || *was == '\0' || *now == '\0')
    return FALSE;

  was_item = lr_setup_find (diff->was, was);
  now_item = lr_setup_find (diff->now, now);
  for (int pass = 0; was_item != NULL && now_item != NULL && pass < N_PASSES; pass++)
    if (is_same_thing (was_item, now_item, pass))
      return TRUE;

  was_entry = lr_plan_find_kit (diff->was_plan, was);
  now_entry = lr_plan_find_kit (diff->now_plan, now);
  return was_entry != NULL && now_entry != NULL && was_entry->item->kind == now_entry->item->kind
         && strcmp (was_entry->title, now_entry->title) == 0;
}

/**
 * lr_diff_add_props:
 * @diff: a difference that is being made
 * @table: the properties of both
 * @like: whose they are
 * @was: what has them in the set-up as planned
 * @now: what has them as found
 */
void
lr_diff_add_props (LrPlanDiff        *diff,
                   const LrPropTable *table,
                   const LrDiff      *like,
                   gconstpointer      was,
                   gconstpointer      now)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];
      LrDiff found = *like;

      if (prop->label == NULL || is_told_otherwise (prop) || is_told_by_focal (prop, like))
        continue;
      found.type = LR_DIFF_CHANGED;
      found.prop = prop;
      found.was_owner = was;
      found.now_owner = now;
      found.nearer_m = NAN;
      if (lr_prop_is_text (prop) ? is_same_text (diff, prop, lr_prop_get_text (prop, was), lr_prop_get_text (prop, now))
                                 : !is_other_number (prop, lr_prop_get_number (prop, was), lr_prop_get_number (prop, now)))
        continue;
      if (!lr_prop_is_text (prop))
        {
          found.from = lr_prop_get_number (prop, was);
          found.to = lr_prop_get_number (prop, now);
        }
      g_array_append_val (diff->all, found);
    }
}

/* Pairs */

/* Index in @now of each of @was, or -1 */
static int *
match (const LrSetup *was,
       const LrSetup *now)
{
  int *found = g_new (int, was->items->len + 1);
  g_autofree gboolean *is_taken = g_new0 (gboolean, now->items->len + 1);

  for (guint i = 0; i < was->items->len; i++)
    found[i] = -1;
  for (int pass = 0; pass < N_PASSES; pass++)
    for (guint i = 0; i < was->items->len; i++)
      for (guint j = 0; j < now->items->len && found[i] < 0; j++)
        if (!is_taken[j] && is_same_thing (was->items->pdata[i], now->items->pdata[j], pass))
          {
            found[i] = (int) j;
            is_taken[j] = TRUE;
          }

  return found;
}

static gboolean
stands_alone (const LrItem *item)
{
  return lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR && *lr_item_carrier (item) == '\0'
         && (item->kind != LR_ITEM_MICROPHONE || lr_microphone_stands (&item->microphone));
}

static GArray *
make_pairs (const LrPlanDiff *diff)
{
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (LrDiffPair));
  g_autofree int *found = match (diff->was, diff->now);

  for (guint i = 0; i < diff->was->items->len; i++)
    {
      LrDiffPair pair = { .was = diff->was->items->pdata[i] };
      double facing_rad;

      if (found[i] < 0)
        continue;
      pair.now = diff->now->items->pdata[found[i]];
      if (!lr_setup_place (diff->was, pair.was, &pair.was_m, &facing_rad) || !lr_setup_place (diff->now, pair.now, &pair.now_m, &facing_rad))
        pair.was_m = pair.now_m = lr_vec2 (NAN, NAN);
      pair.is_of_set = stands_alone (pair.was) && stands_alone (pair.now) && lr_setup_goes_with (diff->was, pair.was, NULL) == LR_GOES_SET
                       && lr_setup_goes_with (diff->now, pair.now, NULL) == LR_GOES_SET;
      g_array_append_val (pairs, pair);
    }

  return pairs;
}

/* Places */

/* The subject in both set-ups; FALSE: one has none */
static gboolean
subjects (const LrPlanDiff *diff,
          const LrItem    **was,
          const LrItem    **now)
{
  *was = lr_setup_find_role (diff->was, LR_ROLE_SUBJECT);
  *now = lr_setup_find_role (diff->now, LR_ROLE_SUBJECT);

  return *was != NULL && *now != NULL;
}

static double
nearer_m (const LrPlanDiff *diff,
          const LrItem     *item,
          LrVec2            was_m,
          LrVec2            now_m)
{
  const LrItem *was, *now;

  if (!subjects (diff, &was, &now) || item == now)
    return NAN;

  return lr_vec2_distance (was_m, was->at_m) - lr_vec2_distance (now_m, now->at_m);
}

/* Where it would be now if it had gone along with what it goes with, and how it would be turned */
static LrVec2
expected_m (const LrPlanDiff *diff,
            const LrDiffPair *pair,
            const LrRigid    *rigid,
            double           *turn_rad)
{
  gboolean has_same_walls = diff->was->room->n_corners == diff->now->room->n_corners;
  double facing_rad;
  LrVec2 to_m;

  *turn_rad = 0.0;
  if (pair->is_of_set)
    {
      *turn_rad = rigid->turn_rad;
      return lr_rigid_apply (rigid, pair->was_m);
    }
  if (has_same_walls && lr_item_kind_info (pair->was->kind)->place == LR_PLACE_WALL)
    {
      g_autoptr (LrItem) there = lr_item_copy (pair->was);

      there->along_m = lr_found_along_m (diff->now, diff->was, pair->was);
      if (lr_setup_place (diff->now, there, &to_m, &facing_rad))
        return to_m;
    }
  if (has_same_walls && lr_found_place (diff->now, diff->was, pair->was, &to_m, turn_rad))
    return to_m;

  return pair->was_m;
}

static gboolean
is_elsewhere (LrVec2 a_m,
              LrVec2 b_m)
{
  return lr_vec2_distance (a_m, b_m) >= LR_DIFF_LENGTH_M - 1e-9;
}

/* Whether its own direction counts, and not what it looks or aims at, or where its boom points */
static gboolean
has_own_facing (const LrItem *item)
{
  return !(item->kind == LR_ITEM_CAMERA && *item->camera.aims_at != '\0') && !(item->kind == LR_ITEM_LIGHT && *item->light.aims_at != '\0')
         && !(item->kind == LR_ITEM_PERSON && *item->person.looks_at != '\0') && item->kind != LR_ITEM_MICROPHONE
         && item->kind != LR_ITEM_HOUSE_LIGHT && !(item->kind == LR_ITEM_FURNITURE && item->furniture.form == LR_FURNITURE_CYLINDER);
}

static LrVec2
tip_of (const LrItem *microphone)
{
  return lr_vec2 (microphone->microphone.tip_x_m, microphone->microphone.tip_y_m);
}

static void
add_move (LrPlanDiff       *diff,
          const LrDiffPair *pair,
          const LrRigid    *rigid)
{
  LrDiff found = new_diff (LR_DIFF_MOVED, pair->was, pair->now);
  double turn_rad;

  /* what is worn or carried moves with that */
  if (lr_item_kind_info (pair->now->kind)->place == LR_PLACE_FLOOR && !stands_alone (pair->now))
    return;

  found.from_m = expected_m (diff, pair, rigid, &turn_rad);
  found.to_m = pair->now_m;
  found.nearer_m = pair->is_of_set ? nearer_m (diff, pair->now, pair->was_m, pair->now_m) : (double) NAN;
  if (isfinite (found.from_m.x) && isfinite (found.to_m.x) && is_elsewhere (found.from_m, found.to_m))
    g_array_append_val (diff->all, found);
  if (!stands_alone (pair->now))
    return;

  found.turn_rad = lr_angle_wrap_rad (pair->now->facing_rad - pair->was->facing_rad - turn_rad);
  if (has_own_facing (pair->now) && has_own_facing (pair->was) && fabs (found.turn_rad) >= LR_DIFF_ANGLE_RAD - 1e-9)
    {
      found.type = LR_DIFF_TURNED;
      g_array_append_val (diff->all, found);
    }
  if (pair->now->kind != LR_ITEM_MICROPHONE)
    return;

  /* a capsule that went along with its stand is told with that */
  found.type = LR_DIFF_TIP;
  found.from_m = lr_vec2_add (pair->now_m, lr_vec2_rotate (lr_vec2_sub (tip_of (pair->was), pair->was_m), turn_rad));
  found.to_m = tip_of (pair->now);
  found.nearer_m = nearer_m (diff, pair->now, tip_of (pair->was), found.to_m);
  if (is_elsewhere (found.from_m, found.to_m))
    g_array_append_val (diff->all, found);
}

static double
way_m (const LrItem *lead)
{
  double length_m = 0.0;

  for (gsize i = 1; i < lead->n_path; i++)
    length_m += lr_vec2_distance (lead->path_m[i - 1], lead->path_m[i]);

  return length_m;
}

static void
add_pair (LrPlanDiff       *diff,
          const LrDiffPair *pair,
          const LrRigid    *rigid)
{
  const LrItemKindInfo *info = lr_item_kind_info (pair->now->kind);
  LrDiff found = new_diff (LR_DIFF_WAY, pair->was, pair->now);

  if (info->place == LR_PLACE_FLOOR || info->place == LR_PLACE_WALL)
    add_move (diff, pair, rigid);
  if (info->place == LR_PLACE_PATH)
    {
      found.from = way_m (pair->was);
      found.to = way_m (pair->now);
      if (fabs (found.to - found.from) >= WAY_M)
        g_array_append_val (diff->all, found);
    }
  if (pair->was == pair->now)
    return;
  lr_diff_add_props (diff, &info->table, &found, pair->was, pair->now);
  lr_diff_add_props (diff, lr_item_common_table (info->place), &found, pair->was, pair->now);
}

/* All */

/* How the set moved is told at its subject, or in its middle */
static void
add_set (LrPlanDiff       *diff,
         const LrDiffPair *pairs,
         gsize             n,
         const LrRigid    *rigid)
{
  LrDiff found = { .type = LR_DIFF_SET, .group = LR_DIFF_OF_PEOPLE, .wall = -1, .nearer_m = NAN, .turn_rad = rigid->turn_rad };

  found.from_m = rigid->about_m;
  for (gsize i = 0; i < n; i++)
    if (pairs[i].is_of_set && pairs[i].was == lr_setup_find_role (diff->was, LR_ROLE_SUBJECT))
      found.from_m = pairs[i].was_m;
  found.to_m = lr_rigid_apply (rigid, found.from_m);
  g_array_append_val (diff->all, found);
}

static gboolean
has_pair (const GArray *pairs,
          const LrItem *item)
{
  for (guint i = 0; i < pairs->len; i++)
    if (g_array_index (pairs, LrDiffPair, i).was == item || g_array_index (pairs, LrDiffPair, i).now == item)
      return TRUE;

  return FALSE;
}

static void
add_unpaired (LrPlanDiff      *diff,
              const GArray    *pairs,
              const GPtrArray *items,
              gboolean         is_now)
{
  for (guint i = 0; i < items->len; i++)
    if (!has_pair (pairs, items->pdata[i]))
      {
        LrDiff found = new_diff (is_now ? LR_DIFF_ADDED : LR_DIFF_GONE, is_now ? NULL : items->pdata[i], is_now ? items->pdata[i] : NULL);

        g_array_append_val (diff->all, found);
      }
}

static void
sort_by_group (LrPlanDiff *diff)
{
  GArray *sorted = g_array_sized_new (FALSE, FALSE, sizeof (LrDiff), diff->all->len);

  for (LrDiffGroup group = LR_DIFF_OF_ROOM; group <= LR_DIFF_OF_REST; group++)
    for (guint i = 0; i < diff->all->len; i++)
      if (g_array_index (diff->all, LrDiff, i).group == group)
        g_array_append_val (sorted, g_array_index (diff->all, LrDiff, i));
  g_array_unref (diff->all);
  diff->all = sorted;
}

/**
 * lr_plan_diff_new:
 * @planned: a plan that shows the set-up as planned
 * @found: the same plan, or another, that shows it as found
 *
 * Returns: (transfer full): how the two are different
 */
LrPlanDiff *
lr_plan_diff_new (const LrPlan *planned,
                  const LrPlan *found)
{
  LrPlanDiff *diff = g_new0 (LrPlanDiff, 1);
  const LrDiff of_setup = { .group = LR_DIFF_OF_LIGHTS, .owner = LR_DIFF_OWNER_SETUP };
  g_autoptr (GArray) pairs = NULL;
  LrDiffPair *all;
  LrRigid rigid;

  diff->was_plan = lr_plan_ref (planned);
  diff->now_plan = lr_plan_ref (found);
  diff->was = lr_plan_get_setup (planned);
  diff->now = lr_plan_get_setup (found);
  diff->all = g_array_new (FALSE, FALSE, sizeof (LrDiff));

  pairs = make_pairs (diff);
  all = (LrDiffPair *) (gpointer) pairs->data;
  lr_diff_add_location (diff);
  lr_diff_add_room (diff);
  if (lr_diff_find_rigid (all, pairs->len, &rigid))
    add_set (diff, all, pairs->len, &rigid);
  for (guint i = 0; i < pairs->len; i++)
    add_pair (diff, &all[i], &rigid);
  add_unpaired (diff, pairs, diff->was->items, FALSE);
  add_unpaired (diff, pairs, diff->now->items, TRUE);
  lr_diff_add_props (diff, lr_setup_table (), &of_setup, diff->was, diff->now);
  sort_by_group (diff);

  return diff;
}

/**
 * lr_plan_diff_free:
 * @diff: (transfer full) (nullable): a difference
 */
void
lr_plan_diff_free (LrPlanDiff *diff)
{
  if (diff == NULL)
    return;

  g_array_unref (diff->all);
  lr_plan_unref (diff->was_plan);
  lr_plan_unref (diff->now_plan);
  g_free (diff);
}

/**
 * lr_plan_diff_find:
 * @diff: a difference
 * @type: of what
 * @id: of an item as found
 *
 * Returns: (transfer none) (nullable): the first of that type that is about the item
 */
const LrDiff *
lr_plan_diff_find (const LrPlanDiff *diff,
                   LrDiffType        type,
                   const char       *id)
{
  for (guint i = 0; i < diff->all->len; i++)
    {
      const LrDiff *found = &g_array_index (diff->all, LrDiff, i);

      if (found->type == type && found->now != NULL && strcmp (found->now->id, id) == 0)
        return found;
    }

  return NULL;
}
