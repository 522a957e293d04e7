/* test-clashes.c - things in each other's place, in walls, doors and ceilings: depths by hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  LrItemKind  kind;
  int         form;
  LrVec2      at_m;
  const char *key;     /* one property, or NULL */
  double      value;
} Thing;

typedef struct
{
  const char *name;
  Thing       a, b;    /* in, in a room of 6 m by 5 m, 2.5 m high; b.kind LR_ITEM_LENS: alone */
  gboolean    is_clash;
  LrClashType type;    /* expected */
  double      depth_m, tolerance_m;
} ClashCase;

#define ALONE { LR_ITEM_LENS, 0, { 0, 0 }, NULL, 0 }
#define TRIPOD(x, y) { LR_ITEM_CAMERA, 0, { x, y }, NULL, 0 }          /* a disc of 0.48 m */
#define PANEL_LIGHT(x, y) { LR_ITEM_LIGHT, LR_LIGHT_PANEL, { x, y }, "stand-radius-mm", 0.42 }
#define BOX(x, y, key, value) { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, { x, y }, key, value }
#define SEATED(x, y) { LR_ITEM_PERSON, LR_ROLE_OTHER, { x, y }, "posture", LR_POSTURE_SEATED } /* faces +x: .29 m behind, .63 m ahead */

static const ClashCase clash_cases[] = {
  { "discs", TRIPOD (3.0, 2.0), PANEL_LIGHT (3.8, 2.0), TRUE, LR_CLASH_OVERLAP, 0.48 + 0.42 - 0.8, 1e-9 },
  { "discs-apart", TRIPOD (3.0, 2.0), PANEL_LIGHT (3.91, 2.0), FALSE, 0, 0, 0 },
  { "disc-in-box", TRIPOD (3.0, 2.0), BOX (4.0, 2.0, "length-mm", 1.2), TRUE, LR_CLASH_OVERLAP, 0.48 + 0.6 - 1.0, 1e-9 },
  { "legs-in-disc", SEATED (2.0, 2.0), TRIPOD (3.0, 2.0), TRUE, LR_CLASH_OVERLAP, 0.63 + 0.48 - 1.0, 1e-9 },
  { "under-a-shelf", TRIPOD (3.0, 2.0), BOX (3.0, 2.0, "bottom-mm", 1.5), FALSE, 0, 0, 0 },
  { "on-a-chair", SEATED (2.0, 2.0), { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, { 2.0, 2.0 }, NULL, 0 }, FALSE, 0, 0, 0 },
  { "legs-under-a-table", SEATED (2.0, 2.0), { LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, { 2.60, 2.0 }, "length-mm", 0.7 },
    FALSE, 0, 0, 0 },
  { "chest-in-a-table", SEATED (2.0, 2.0), { LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, { 2.40, 2.0 }, "length-mm", 0.7 },
    TRUE, LR_CLASH_OVERLAP, 2.22 - 2.05, 1e-9 },
  { "in-the-wall", TRIPOD (0.4, 2.0), ALONE, TRUE, LR_CLASH_OUTSIDE, 0.08, 1e-9 },
  { "at-the-wall", TRIPOD (0.48, 2.0), ALONE, FALSE, 0, 0, 0 },
  { "box-at-the-wall", BOX (0.3, 2.0, "length-mm", 0.6), ALONE, FALSE, 0, 0, 0 },
  { "box-in-the-wall", BOX (0.3, 2.0, "length-mm", 0.7), ALONE, TRUE, LR_CLASH_OUTSIDE, 0.05, 1e-9 },
  { "outside", PANEL_LIGHT (-2.0, 2.0), ALONE, TRUE, LR_CLASH_OUTSIDE, 2.42, 1e-9 },
  { "over-the-ceiling", { LR_ITEM_LIGHT, LR_LIGHT_WIDE, { 3.0, 2.0 }, "lamp-height-mm", 2.2 }, ALONE, TRUE,
    LR_CLASH_CEILING, 2.2 + 0.45 - 2.5, 1e-9 },
};

static const char *
add (LrPlan     **plan,
     const Thing *thing)
{
  const char *id = fixture_add (plan, thing->kind, thing->form, thing->at_m.x, thing->at_m.y);

  if (thing->kind == LR_ITEM_FURNITURE && thing->form == LR_FURNITURE_BOX)
    {
      fixture_set (plan, id, "height-mm", 2.0);
      fixture_set (plan, id, "width-mm", 0.6);
      fixture_set (plan, id, "length-mm", 0.6);
    }
  if (thing->key != NULL)
    fixture_set (plan, id, thing->key, thing->value);
  return id;
}

static void
test_clash (gconstpointer data)
{
  const ClashCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const LrClash *clash;

  add (&plan, &c->a);
  if (c->b.kind != LR_ITEM_LENS)
    add (&plan, &c->b);
  study = lr_study_new (plan);
  g_assert_cmpuint (study->clashes->len, ==, c->is_clash ? 1 : 0);
  if (!c->is_clash)
    return;

  clash = &g_array_index (study->clashes, LrClash, 0);
  g_assert_cmpint (clash->type, ==, c->type);
  assert_near (clash->depth_m, c->depth_m, c->tolerance_m);
  if (c->type != LR_CLASH_CEILING)
    assert_near (lr_vec2_length (clash->push), 1.0, 1e-9);
}

/* The push is the way out: a thing that follows it by the depth is clear */
static void
test_push (gconstpointer data)
{
  const ClashCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.5);
  g_autoptr (LrStudy) study = NULL, after = NULL;
  const LrClash *clash;

  add (&plan, &c->a);
  if (c->b.kind != LR_ITEM_LENS)
    add (&plan, &c->b);
  study = lr_study_new (plan);
  if (!c->is_clash || c->type == LR_CLASH_CEILING)
    return;

  clash = &g_array_index (study->clashes, LrClash, 0);
  fixture_move (&plan, clash->a->item->id, clash->a->at_m.x + (clash->depth_m + 0.002) * clash->push.x,
                clash->a->at_m.y + (clash->depth_m + 0.002) * clash->push.y);
  after = lr_study_new (plan);
  g_assert_cmpuint (after->clashes->len, ==, 0);
}

typedef struct
{
  const char *name;
  LrHinge     hinge;
  LrSwing     swing;
  LrVec2      at_m;       /* of a box of 0.2 m; the door is 0.8 m wide in the lowest wall, from x 2.0 to 2.8 */
  gboolean    is_blocked; /* expected: by hand, quarter disc of 0.8 m round the hinge, or a strip of 0.8 m */
} DoorCase;

static const DoorCase door_cases[] = {
  { "in-the-swing", LR_HINGE_START, LR_SWING_IN, { 2.6, 0.3 }, TRUE },
  { "beyond-the-arc", LR_HINGE_START, LR_SWING_IN, { 2.8, 0.8 }, FALSE },
  { "other-hinge", LR_HINGE_END, LR_SWING_IN, { 2.2, 0.3 }, TRUE },
  { "other-hinge-beyond", LR_HINGE_END, LR_SWING_IN, { 2.0, 0.8 }, FALSE },
  { "swings-out", LR_HINGE_START, LR_SWING_OUT, { 2.7, 0.6 }, TRUE },
  { "swings-out-far", LR_HINGE_START, LR_SWING_OUT, { 2.4, 0.95 }, FALSE },
  { "no-leaf-beside", LR_HINGE_START, LR_SWING_NONE, { 3.0, 0.3 }, FALSE },
};

static void
test_door (gconstpointer data)
{
  const DoorCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const char *door = fixture_add (&plan, LR_ITEM_DOOR, 0, 2.4, 0.0);
  const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, c->at_m.x, c->at_m.y);

  fixture_set (&plan, door, "along-mm", 2.0);
  fixture_set (&plan, door, "width-mm", 0.8);
  fixture_set (&plan, door, "hinge", c->hinge);
  fixture_set (&plan, door, "swing", c->swing);
  fixture_set (&plan, box, "length-mm", 0.2);
  fixture_set (&plan, box, "width-mm", 0.2);
  study = lr_study_new (plan);
  g_assert_cmpuint (study->clashes->len, ==, c->is_blocked ? 1 : 0);
  if (c->is_blocked)
    {
      g_assert_cmpint (g_array_index (study->clashes, LrClash, 0).type, ==, LR_CLASH_DOOR);
      g_assert_cmpstr (g_array_index (study->clashes, LrClash, 0).a->item->id, ==, box);
      g_assert_cmpstr (g_array_index (study->clashes, LrClash, 0).b->item->id, ==, door);
    }
}

/* Property: the sweep finds what comparing all with all finds */
static void
test_sweep (void)
{
  g_autoptr (LrPlan) plan = fixture_room (12.0, 12.0, 3.0);
  g_autoptr (LrStudy) study = NULL;
  guint n_expected = 0, n_found = 0;

  for (int i = 0; i < 60; i++)
    fixture_add (&plan, i % 2 ? LR_ITEM_LIGHT : LR_ITEM_CAMERA, 0, g_test_rand_double_range (1.0, 11.0),
                 g_test_rand_double_range (1.0, 11.0));
  study = lr_study_new (plan);
  for (guint i = 0; i < study->placed->len; i++)
    for (guint j = i + 1; j < study->placed->len; j++)
      n_expected += lr_outline_overlap_m (&g_array_index (study->placed, LrPlaced, i).footprint,
                                          &g_array_index (study->placed, LrPlaced, j).footprint, NULL) > 1e-6;
  for (guint i = 0; i < study->clashes->len; i++)
    n_found += g_array_index (study->clashes, LrClash, i).type == LR_CLASH_OVERLAP;
  g_assert_cmpuint (n_expected, >, 0);
  g_assert_cmpuint (n_found, ==, n_expected);
}

/* Property: a clear place that is found has no clash */
static void
test_find_clear (void)
{
  for (int round = 0; round < 50; round++)
    {
      g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
      g_autoptr (LrStudy) study = NULL, after = NULL;
      LrVec2 to_m;

      for (int i = 0; i < 6; i++)
        fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, g_test_rand_double_range (0.0, 5.0),
                     g_test_rand_double_range (0.0, 4.0));
      study = lr_study_new (plan);
      if (!lr_study_find_clear (study, lr_study_find_placed (study, "light-1"), lr_vec2 (2.0, 2.0), 0.001, &to_m))
        continue;

      g_assert_true (lr_study_is_clear (study, lr_study_find_placed (study, "light-1"), to_m, 0.001));
      fixture_move (&plan, "light-1", to_m.x, to_m.y);
      after = lr_study_new (plan);
      for (guint i = 0; i < after->clashes->len; i++)
        {
          const LrClash *clash = &g_array_index (after->clashes, LrClash, i);

          if (g_str_equal (clash->a->item->id, "light-1")
              || (clash->b != NULL && g_str_equal (clash->b->item->id, "light-1")))
            g_assert_cmpfloat (clash->depth_m, <=, 0.003);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/clashes/depth", clash_cases, test_clash);
  add_rows ("/clashes/push", clash_cases, test_push);
  add_rows ("/clashes/door", door_cases, test_door);
  g_test_add_func ("/clashes/sweep", test_sweep);
  g_test_add_func ("/clashes/find-clear", test_find_clear);

  return g_test_run ();
}
