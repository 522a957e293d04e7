/* test-cautions.c - what is said where something can hurt someone
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The heights and distances from which on something is said are common practice, no source: each is met from both sides.
 */

#include "fixture.h"

#include "cautions.h"

typedef struct
{
  const char *name, *key, *part; /* a property of the light or the boom, and words of the sentence */
  LrItemKind  kind;
  int         form;
  double      without, with;     /* values on either side */
} EdgeCase;

/* Ceiling 2.50 m, Wenna's head at 3, 3 */
static const EdgeCase edge_cases[] = {
  { "tall-stand", "lamp-height-mm", "stands higher than", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.49, 1.51 },
  { "near-ceiling", "lamp-height-mm", "from detectors and sprinklers", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.49, 1.51 },
  { "boom-over-head", "tip-x-mm", "over Wenna", LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.61, 3.59 },
};

static gboolean
says (const LrPlan *plan,
      const char   *part)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GPtrArray) cautions = lr_cautions_new (study, LR_UNITS_METRIC);

  for (guint i = 0; i < cautions->len; i++)
    if (strstr (g_ptr_array_index (cautions, i), part) != NULL)
      return TRUE;

  return FALSE;
}

static void
test_edge (gconstpointer data)
{
  const EdgeCase *c = data;
  LrPlan *plan = fixture_room (6.0, 6.0, 2.5);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0, 3.0);
  const char *id = fixture_add (&plan, c->kind, c->form, 1.0, 3.0);

  fixture_text (&plan, person, "name", "Wenna");
  if (c->kind == LR_ITEM_MICROPHONE)
    fixture_set (&plan, id, "tip-y-mm", 3.0);
  fixture_set (&plan, id, c->key, c->without);
  g_assert_false (says (plan, c->part));
  fixture_set (&plan, id, c->key, c->with);
  g_assert_true (says (plan, c->part));
  lr_plan_unref (plan);
}

/* The loft's door is its only way out; a lead that is laid before it is named by what it feeds */
static void
test_way_out (void)
{
  static const LrVec2 across_m[] = { { 5.75, 0.12 }, { 6.9, 0.12 }, { 6.9, 2.0 }, { 3.27, 1.55 } };
  g_autoptr (LrPlan) plan = fixture_example ("loft"), laid = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (says (plan, "only way out"));
  g_assert_false (says (plan, "crosses a way out"));
  laid = lr_plan_set_path (plan, "lead-1", across_m, G_N_ELEMENTS (across_m), &error);
  g_assert_no_error (error);
  g_assert_true (says (laid, "The lead of <b>L1</b> crosses a way out"));
}

/* Nothing in the room, nothing to say; and never that something is safe */
static void
test_words (void)
{
  g_autoptr (LrPlan) room = fixture_room (6.0, 6.0, 2.5), loft = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (room);
  g_autoptr (GPtrArray) none = lr_cautions_new (study, LR_UNITS_METRIC);

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_true (says (loft, "local rules, licensed hands"));
  g_assert_false (says (loft, "safe"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (edge_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/cautions/", edge_cases[i].name, NULL);

      g_test_add_data_func (path, &edge_cases[i], test_edge);
    }
  g_test_add_func ("/cautions/way-out", test_way_out);
  g_test_add_func ("/cautions/words", test_words);
  return g_test_run ();
}
