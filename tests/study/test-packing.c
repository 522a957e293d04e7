/* test-packing.c - what has to come along
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bytes and watt-hours are worked by hand from their definitions (see tests/engine/test-endurance.c); shares in reserve and the numbers of
 * stands are common practice, no source, and are what packing.h and its files say. Lengths are held against the remark's own reading.
 */

#include "fixture.h"

#include "packing.h"
#include "plan_edit.h"
#include "power_readings.h"

#include <string.h>

static const LrPackLine *
find (const LrPacking *packing,
      const char      *key)
{
  for (guint i = 0; i < packing->lines->len; i++)
    if (g_str_equal (((const LrPackLine *) packing->lines->pdata[i])->key, key))
      return packing->lines->pdata[i];

  return NULL;
}

static LrPacking *
pack (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_packing_new (study); /* items are the plan's */
}

static void
replace (LrPlan **plan,
         LrPlan  *next,
         GError  *error)
{
  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
set_job (LrPlan    **plan,
         const char *key,
         const char *text)
{
  GError *error = NULL;

  replace (plan, lr_plan_set_job (*plan, key, text, &error), error);
}

static void
add_supply (LrPlan       **plan,
            LrSupplyForm   form,
            int            count,
            double         size)
{
  GError *error = NULL;
  guint index = (*plan)->supplies->len;

  replace (plan, lr_plan_add_supply (*plan, form, &error), error);
  replace (plan, lr_plan_set_supply_number (*plan, index, "count", count, &error), error);
  replace (plan, lr_plan_set_supply_number (*plan, index, "size", size, &error), error);
}

/* --- What holds for every plan */

static guint
n_uses (const LrPacking *packing,
        const LrItem    *item)
{
  guint n = 0;

  for (guint i = 0; i < packing->lines->len; i++)
    {
      const LrPackLine *line = packing->lines->pdata[i];

      if (line->what != LR_PACK_THING && line->what != LR_PACK_LEAD_TO_FIND)
        continue;
      if (line->group == LR_PACK_LENS || (line->group == LR_PACK_POWER) != (item->kind == LR_ITEM_LEAD))
        continue; /* of a lamp in a line of leads is the lead that it lacks */
      for (guint k = 0; k < line->uses->len; k++)
        n += g_array_index (line->uses, LrPackUse, k).item == item;
    }

  return n;
}

static gboolean
is_packed_kind (LrItemKind kind)
{
  return kind == LR_ITEM_CAMERA || kind == LR_ITEM_LIGHT || kind == LR_ITEM_MICROPHONE || kind == LR_ITEM_PANEL || kind == LR_ITEM_LEAD;
}

/* Everything placed stands there once; quantities are what they are made of; keys are single; the order is that of the groups */
static void
check (const LrPlan *plan)
{
  g_autoptr (LrPacking) packing = pack (plan);
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  const LrSetup *setup = lr_plan_get_setup (plan);
  int n_missing = 0;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];

      g_test_message ("%s", item->id);
      g_assert_cmpuint (n_uses (packing, item), ==, is_packed_kind (item->kind) ? 1 : 0);
    }
  for (guint i = 0; i < packing->lines->len; i++)
    {
      const LrPackLine *line = packing->lines->pdata[i], *before = i > 0 ? packing->lines->pdata[i - 1] : NULL;
      int sum = line->spare;

      g_test_message ("%s", line->key);
      for (guint k = 0; k < line->uses->len; k++)
        sum += g_array_index (line->uses, LrPackUse, k).count;
      g_assert_cmpint (line->quantity, ==, sum);
      g_assert_cmpint (line->quantity, >, 0);
      g_assert_cmpint (line->missing, >=, 0);
      g_assert_cmpint (line->missing, <=, line->quantity - line->spare);
      g_assert_true (g_hash_table_add (keys, line->key));
      g_assert_true (before == NULL || before->group <= line->group);
      /* what the Tray says is left, but for leads, which may be changed for longer ones */
      if (line->entry != NULL && line->group != LR_PACK_POWER)
        g_assert_cmpint (lr_plan_kit_left (plan, line->entry), ==, line->owned - (line->quantity - line->spare));
      n_missing += line->missing > 0;
    }
  g_assert_cmpint (packing->n_missing, ==, n_missing);
}

static void
test_contract (void)
{
  static const char *const names[] = { "loft", "bare-office" };
  g_autoptr (LrPlan) interview = fixture_interview (), empty = fixture_empty (), all = fixture_room (8.0, 6.0, 2.7);
  static const struct { LrItemKind kind; int form; } things[] = {
    { LR_ITEM_CAMERA, 0 }, { LR_ITEM_LIGHT, LR_LIGHT_WIDE }, { LR_ITEM_LIGHT, LR_LIGHT_PANEL }, { LR_ITEM_LIGHT, LR_LIGHT_POINT },
    { LR_ITEM_MICROPHONE, LR_MIC_BOOM }, { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER }, { LR_ITEM_MICROPHONE, LR_MIC_STAND },
    { LR_ITEM_MICROPHONE, LR_MIC_CAMERA }, { LR_ITEM_PANEL, LR_PANEL_REFLECTOR }, { LR_ITEM_PANEL, LR_PANEL_FLAG },
    { LR_ITEM_PANEL, LR_PANEL_BACKDROP }, { LR_ITEM_LEAD, 0 }, { LR_ITEM_SOCKET, 0 }, { LR_ITEM_DOOR, 0 }, { LR_ITEM_FURNITURE, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (LrPlan) plan = fixture_example (names[i]);

      check (plan);
    }
  check (interview);
  check (empty);
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    {
      fixture_add (&all, things[i].kind, things[i].form, 1.0 + 0.4 * i, 2.0);
      check (all);
    }
}

/* The loft by hand: its lists in the file, counted */
static void
test_loft (void)
{
  static const struct { const char *key; int quantity, spare, owned; } rows[] = {
    { "camera/kit:camera-body", 2, 0, 2 }, { "lens/kit:lens-50", 1, 0, 1 }, { "lens/kit:lens-85", 1, 0, 1 }, { "lens/filter-100", 2, 0, -1 },
    { "light/kit:wide-emitter", 1, 0, 1 }, { "light/kit:small-panel", 1, 0, 2 }, { "light/kit:point-source", 1, 0, 1 },
    { "light/modifier:doors", 1, 0, -1 }, { "sound/kit:boom", 1, 0, 1 }, { "sound/kit:lavalier", 1, 0, 2 },
    { "grip/kit:reflector", 1, 0, 1 }, { "support/tripod", 2, 0, -1 }, { "support/boom-stand", 1, 0, -1 },
    { "support/stand", 5, 1, -1 }, /* three lights, a reflector, and one */
    { "sound/cells", 3, 1, -1 }, { "light/spare", 1, 1, 1 },
  };
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = pack (plan);

  g_assert_false (packing->is_usual_hours);
  assert_near (packing->hours, 1.5, 1e-9); /* 10:00 to 11:30 */
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const LrPackLine *line = find (packing, rows[i].key);

      g_test_message ("%s", rows[i].key);
      g_assert_nonnull (line);
      g_assert_cmpint (line->quantity, ==, rows[i].quantity);
      g_assert_cmpint (line->spare, ==, rows[i].spare);
      g_assert_cmpint (line->owned, ==, rows[i].owned);
    }
}

/* --- Batteries and cards */

typedef struct
{
  const char *name;
  const char *roll, *wrap;
  double      draw_w, battery_wh, rate_mbit_s, card_gb; /* in */
  int         batteries, cards; /* expected: what is needed, one more comes along */
  double      gb;
  const char *source;
} RunCase;

static const RunCase run_cases[] = {
  { "hour", "10:00", "11:00", 28.0, 98.0, 100.0, 128.0, 1, 1, 45.0, "28 Wh × 1.25 = 35 < 78.4; 45 GB × 1.5 = 67.5 < 115.2" },
  { "three-hours", "10:00", "13:00", 40.0, 98.0, 100.0, 128.0, 2, 2, 135.0,
    "120 Wh × 1.25 = 150, 78.4 < 150 < 156.8; 135 GB × 1.5 = 202.5, 115.2 < 202.5 < 230.4" },
  { "over-midnight", "23:00", "01:30", 40.0, 150.0, 150.0, 256.0, 2, 2, 168.75,
    "2.5 h: 100 Wh × 1.25 = 125, 120 < 125; 150e6 × 9000 / 8 = 168.75e9, × 1.5 = 253.1 > 230.4" },
};

static void
test_run (gconstpointer data)
{
  const RunCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrPacking) packing = NULL;
  const LrPackLine *batteries, *cards;
  g_autofree char *battery_key = g_strdup_printf ("power/camera-battery-%.0f", 10.0 * c->battery_wh);
  g_autofree char *card_key = g_strdup_printf ("camera/card-%.0f", c->card_gb);

  set_job (&plan, "time-roll", c->roll);
  set_job (&plan, "time-wrap", c->wrap);
  fixture_set (&plan, CAMERA_A, "draw-w", c->draw_w);
  fixture_set (&plan, CAMERA_A, "battery-wh", c->battery_wh);
  fixture_set (&plan, CAMERA_A, "data-rate-mbit-s", c->rate_mbit_s);
  fixture_set (&plan, CAMERA_A, "card-gb", c->card_gb);
  packing = pack (plan);
  g_test_message ("%s", c->source);

  batteries = find (packing, battery_key);
  g_assert_nonnull (batteries);
  g_assert_cmpint (batteries->quantity - batteries->spare, ==, c->batteries);
  g_assert_cmpint (batteries->spare, ==, 1);
  g_assert_false (batteries->is_usual_size);
  cards = find (packing, card_key);
  g_assert_nonnull (cards);
  g_assert_cmpint (cards->quantity - cards->spare, ==, c->cards);
  g_assert_cmpint (cards->spare, ==, 1);
  assert_near (cards->total, c->gb, 1e-9);
  assert_near (g_array_index (cards->uses, LrPackUse, 0).figure, c->gb, 1e-9);

  /* the other camera tells nothing: its figures are said to be usual ones, and are not mixed with these */
  g_assert_nonnull (find (packing, "power/camera-battery-160-usual"));
  g_assert_true (find (packing, "power/camera-battery-160-usual")->is_usual_size);
  g_assert_true (find (packing, "camera/card-128-usual")->is_usual_size);
}

/* On a lead it needs none, but one in case the mains fail; a light with a battery needs no lead */
static void
test_mains (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrPacking) before = pack (plan), after = NULL, lit = NULL;
  const char *lead, *light;
  int needed = find (before, "power/camera-battery-160-usual")->quantity;

  lead = fixture_add (&plan, LR_ITEM_LEAD, 0, 1.0, 1.0);
  fixture_text (&plan, lead, "feeds", CAMERA_A);
  after = pack (plan);
  g_assert_cmpint (find (after, "power/camera-battery-160-usual")->quantity, <, needed);
  g_assert_true (g_array_index (find (after, "power/camera-battery-160-usual")->uses, LrPackUse, 0).is_mains);

  light = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 2.0, 4.0);
  fixture_set (&plan, light, "battery-wh", 98.0);
  lit = pack (plan);
  g_assert_null (find (lit, "power/lead"));
  g_assert_nonnull (find (lit, "power/light-battery-980"));
}

/* What a placed camera does not tell is as its kit entry tells */
static void
test_told_by_the_kit (void)
{
  static const struct { const char *key; double value; } numbers[] = {
    { "draw-w", 40.0 }, { "battery-wh", 98.0 }, { "data-rate-mbit-s", 150.0 }, { "card-gb", 256.0 },
  };
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = NULL;
  const LrPackLine *batteries, *cards;
  GError *error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    replace (&plan, lr_plan_set_kit_number (plan, "camera-body", numbers[i].key, numbers[i].value, &error), error);
  fixture_set (&plan, "camera-b", "battery-wh", 150.0);
  packing = pack (plan);
  batteries = find (packing, "power/camera-battery-980");
  cards = find (packing, "camera/card-256");
  g_assert_nonnull (batteries);
  g_assert_nonnull (find (packing, "power/camera-battery-1500")); /* B tells its own */
  g_assert_cmpfloat (g_array_index (batteries->uses, LrPackUse, 0).figure, ==, 40.0);
  g_assert_cmpuint (cards->uses->len, ==, 2);
  assert_near (cards->total, 2.0 * 101.25, 1e-9); /* 150e6 × 5400 / 8 each */
}

/* Two cards of the larger size do for two cameras of which one is content with less: a reserve takes nothing that is needed */
static void
test_reserve_last (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = NULL;

  fixture_set (&plan, "camera-a", "data-rate-mbit-s", 100.0);
  fixture_set (&plan, "camera-b", "data-rate-mbit-s", 100.0);
  fixture_set (&plan, "camera-a", "card-gb", 256.0);
  fixture_set (&plan, "camera-b", "card-gb", 128.0);
  add_supply (&plan, LR_SUPPLY_CARD, 2, 256.0);
  packing = pack (plan);
  g_assert_cmpint (find (packing, "camera/card-256")->missing, ==, 0);
  g_assert_cmpint (find (packing, "camera/card-128")->missing, ==, 0);
}

static void
test_no_times (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrPacking) packing = NULL;

  set_job (&plan, "time-roll", "");
  packing = pack (plan);
  g_assert_true (packing->is_usual_hours);
  g_assert_cmpfloat (packing->hours, >, 0.0);
}

/* --- Leads */

/* A lead is brought as laid if it reaches; else the next in the kit that does; else one that is to be found */
static void
test_leads (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrPacking) before = pack (plan), short_lead = NULL, shorter = NULL;
  LrLeadPower reading;
  GError *error = NULL;

  g_assert_cmpint (find (before, "power/kit:lead-10")->quantity, ==, 3); /* two, and one in reserve */
  g_assert_cmpint (find (before, "power/kit:lead-5")->quantity, ==, 1);
  g_assert_true (lr_study_lead (study, lr_study_find_placed (study, "lead-1")->item, &reading));
  g_assert_cmpfloat (g_array_index (find (before, "power/kit:lead-10")->uses, LrPackUse, 0).figure, ==, reading.needed_m);

  fixture_set (&plan, "lead-2", "length-mm", 1.0);
  short_lead = pack (plan);
  g_assert_null (find (short_lead, "power/item:lead-2"));
  g_assert_cmpint (find (short_lead, "power/kit:lead-5")->uses->len, ==, 1); /* the kit's 5 m reach */
  check (plan);

  replace (&plan, lr_plan_set_kit_number (plan, "lead-5", "length-mm", 1.0, &error), error);
  replace (&plan, lr_plan_set_kit_number (plan, "lead-10", "count", 2, &error), error);
  shorter = pack (plan);
  g_assert_nonnull (find (shorter, "power/lead-2")); /* it must reach 1.98 m, and such are sold with 2 m */
  g_assert_cmpint (find (shorter, "power/lead-2")->missing, ==, 1);
  check (plan);
}

/* A light that no lead feeds gets one from the nearest socket, not farther than from any other */
static void
test_light_without_lead (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = NULL;
  const LrPackLine *line;
  GError *error = NULL;
  gboolean is_there = FALSE;

  replace (&plan, lr_plan_remove (plan, "lead-1", &error), error);
  packing = pack (plan);
  for (guint i = 0; i < packing->lines->len; i++)
    {
      line = packing->lines->pdata[i];
      for (guint k = 0; line->group == LR_PACK_POWER && k < line->uses->len; k++)
        {
          const LrPackUse *use = &g_array_index (line->uses, LrPackUse, k);
          const double length_m = line->entry != NULL ? line->entry->item->lead.length_m : line->size;

          if (use->item == NULL || strcmp (use->item->id, "light-1") != 0)
            continue;
          is_there = TRUE;
          g_assert_cmpfloat (use->figure, <=, length_m + 1e-6);
          g_assert_cmpfloat (use->figure, >, 0.3);
        }
    }
  g_assert_true (is_there);
}

/* --- What keeps stands upright, and what the kit counts */

static void
test_bags (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrPacking) packing = pack (plan);
  int wanted = 0, packed = 0;

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrStandReading stand;

      if (lr_study_stand (study, &g_array_index (study->placed, LrPlaced, i), &stand))
        wanted += stand.wanted_bag_kg > 0.0 || stand.bag_kg > 0.0;
    }
  for (guint i = 0; i < packing->lines->len; i++)
    {
      const LrPackLine *line = packing->lines->pdata[i];

      if (line->what != LR_PACK_SANDBAG)
        continue;
      packed += line->quantity;
      for (guint k = 0; k < line->uses->len; k++)
        g_assert_cmpfloat (g_array_index (line->uses, LrPackUse, k).figure, <=, line->size + 1e-9);
    }
  g_assert_cmpint (wanted, >, 0);
  g_assert_cmpint (packed, ==, wanted);

  /* one that hangs there and is heavier than need be goes along as it is */
  fixture_set (&plan, "microphone-1", "bag-kg", 12.5);
  lr_packing_free (g_steal_pointer (&packing));
  packing = pack (plan);
  g_assert_nonnull (find (packing, "grip/sandbag-1250"));
}

/* The kit counts what it lists; what is too small does not do; the heaviest is served first */
static void
test_supplies (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = NULL;

  fixture_set (&plan, "microphone-1", "bag-kg", 10.0);
  fixture_set (&plan, "light-1", "bag-kg", 6.0);
  add_supply (&plan, LR_SUPPLY_TRIPOD, 1, 0.0);
  add_supply (&plan, LR_SUPPLY_SANDBAG, 1, 12.0);
  packing = pack (plan);
  g_assert_cmpint (find (packing, "support/tripod")->owned, ==, 1);
  g_assert_cmpint (find (packing, "support/tripod")->missing, ==, 1);
  g_assert_cmpint (find (packing, "support/stand")->owned, ==, -1);
  g_assert_cmpint (find (packing, "support/stand")->missing, ==, 0);
  g_assert_cmpint (find (packing, "grip/sandbag-1000")->owned, ==, 1);
  g_assert_cmpint (find (packing, "grip/sandbag-600")->owned, ==, 0);
  g_assert_cmpint (find (packing, "grip/sandbag-600")->missing, ==, 1);
  check (plan);

  /* too small for either */
  lr_packing_free (g_steal_pointer (&packing));
  {
    GError *error = NULL;

    replace (&plan, lr_plan_set_supply_number (plan, 1, "size", 5.0, &error), error);
  }
  packing = pack (plan);
  g_assert_cmpint (find (packing, "grip/sandbag-1000")->missing, ==, 1);
  g_assert_cmpint (find (packing, "grip/sandbag-600")->missing, ==, 1);
}

/* More placed than the kit has, or of no kit at all, is missing */
static void
test_not_owned (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPacking) packing = NULL;
  g_autofree char *key = NULL;
  const char *alien;
  GError *error = NULL;

  replace (&plan, lr_plan_set_kit_count (plan, "camera-body", 1, &error), error);
  alien = fixture_add (&plan, LR_ITEM_PANEL, LR_PANEL_FLAG, 1.0, 3.0);
  packing = pack (plan);
  g_assert_cmpint (find (packing, "camera/kit:camera-body")->missing, ==, 1);
  key = g_strconcat ("grip/item:", alien, NULL);
  g_assert_cmpint (find (packing, key)->missing, ==, 1);
  check (plan);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/packing/contract", test_contract);
  g_test_add_func ("/packing/loft", test_loft);
  add_rows ("/packing/run", run_cases, test_run);
  g_test_add_func ("/packing/mains", test_mains);
  g_test_add_func ("/packing/told-by-the-kit", test_told_by_the_kit);
  g_test_add_func ("/packing/reserve-last", test_reserve_last);
  g_test_add_func ("/packing/no-times", test_no_times);
  g_test_add_func ("/packing/leads", test_leads);
  g_test_add_func ("/packing/light-without-lead", test_light_without_lead);
  g_test_add_func ("/packing/bags", test_bags);
  g_test_add_func ("/packing/supplies", test_supplies);
  g_test_add_func ("/packing/not-owned", test_not_owned);

  return g_test_run ();
}
