/* test-edit.c - edits share what they do not change and keep the plan's invariants
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan-test.h"

#include "modifiers.h"
#include "run_edit.h"

#include <math.h>

/* How many items of @a and @b, of the same length, are not the very same */
static guint
n_fresh_items (const LrPlan *a,
               const LrPlan *b)
{
  GPtrArray *x = lr_plan_get_setup (a)->items, *y = lr_plan_get_setup (b)->items;
  guint n = 0;

  g_assert_cmpuint (x->len, ==, y->len);
  for (guint i = 0; i < x->len; i++)
    n += x->pdata[i] != y->pdata[i];

  return n;
}

static void
test_sharing (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) moved = lr_plan_move (plan, "camera-b", lr_vec2 (4.89, 4.18), &error);
  g_autoptr (LrPlan) titled = lr_plan_set_job (plan, "title", "Another", &error);
  g_autoptr (LrPlan) limited = lr_plan_set_limit (plan, LR_LIMIT_CUT_ANGLE, 0.35, &error);
  g_autoptr (LrPlan) raised = lr_plan_set_room (plan, "height-mm", 3.0, &error);
  g_autoptr (LrPlan) copied = lr_plan_copy_setup (plan, "As found", &error);
  g_autoptr (GBytes) bytes_after = lr_plan_to_bytes (plan);

  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (bytes, bytes_after)); /* nothing reached back */

  g_assert_cmpuint (n_fresh_items (plan, moved), ==, 1);
  g_assert_true (lr_plan_get_setup (plan)->room == lr_plan_get_setup (moved)->room);
  g_assert_true (plan->job == moved->job && plan->kit == moved->kit);
  g_assert_false (lr_plan_equal (plan, moved));

  g_assert_true (plan->setups->pdata[0] == titled->setups->pdata[0] && plan->kit == titled->kit);
  g_assert_true (plan->setups->pdata[0] == limited->setups->pdata[0] && plan->job == limited->job);
  g_assert_cmpuint (n_fresh_items (plan, raised), ==, 0);
  g_assert_true (plan->job == raised->job);

  g_assert_cmpuint (copied->setups->len, ==, 2);
  g_assert_true (plan->setups->pdata[0] == copied->setups->pdata[0]);
  g_assert_cmpuint (n_fresh_items (plan, copied), ==, 0);
  g_assert_true (lr_plan_get_setup (plan)->room == lr_plan_get_setup (copied)->room);
}

/* Equal plans need not be the same, and going there and back is equal */
static void
test_equal (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (LrPlan) again = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) there = lr_plan_turn (plan, "camera-b", 0.0, &error);
  g_autoptr (LrPlan) back = lr_plan_turn (there, "camera-b", lr_plan_find (plan, "camera-b")->facing_rad, &error);

  g_assert_no_error (error);
  g_assert_true (plan != again && lr_plan_equal (plan, again));
  g_assert_false (lr_plan_equal (plan, there));
  g_assert_true (lr_plan_equal (plan, back));
}

/* All or nothing, and what holds between properties is asked at the end */
static void
test_change_several (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  const LrChange both[] = { { "window-1", "sill-mm", 2.4 }, { "window-1", "head-mm", 2.7 } };
  const LrChange bad[] = { { "window-1", "sill-mm", 1.0 }, { "nobody", "head-mm", 2.7 } };
  g_autoptr (LrPlan) raised = lr_plan_change (plan, both, 2, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (lr_plan_find (raised, "window-1")->window.sill_m, ==, 2.4);
  g_assert_null (lr_plan_change (plan, both, 1, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_change (plan, bad, 2, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

/* Whole millimetres, tenths of a degree */
static void
test_rounding (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) moved = lr_plan_move (plan, "person-1", lr_vec2 (1.23456, -0.0002), &error);
  g_autoptr (LrPlan) turned = lr_plan_turn (moved, "person-1", 10.04 * LR_DEG, &error);
  const LrItem *person = lr_plan_find (turned, "person-1");

  g_assert_cmpfloat (person->at_m.x, ==, 1.235);
  g_assert_cmpfloat (person->at_m.y, ==, 0.0);
  g_assert_false (signbit (person->at_m.y));
  g_assert_cmpfloat_with_epsilon (person->facing_rad, 10.0 * LR_DEG, 1e-15);
}

/* What is worn, aimed and plugged */

static void
test_boom (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  const LrItem *boom;

  /* Base 3.10, 4.60 with the capsule at 2.93, 2.82: it moves along and swings round */
  take_next (&plan, lr_plan_move (plan, "microphone-1", lr_vec2 (3.2, 4.5), &error), &error);
  boom = lr_plan_find (plan, "microphone-1");
  g_assert_cmpfloat_with_epsilon (boom->microphone.tip_x_m, 3.03, 1e-9);
  g_assert_cmpfloat_with_epsilon (boom->microphone.tip_y_m, 2.72, 1e-9);
  take_next (&plan, lr_plan_turn (plan, "microphone-1", boom->facing_rad + 90.0 * LR_DEG, &error), &error);
  boom = lr_plan_find (plan, "microphone-1");
  g_assert_cmpfloat_with_epsilon (boom->microphone.tip_x_m, 3.2 + 1.78, 1e-9);
  g_assert_cmpfloat_with_epsilon (boom->microphone.tip_y_m, 4.5 - 0.17, 1e-9);
}

static void
test_worn (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  LrVec2 at_m;
  double facing_rad;

  g_assert_null (lr_plan_move (plan, "microphone-2", lr_vec2 (1.0, 1.0), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_move (plan, "wenna", lr_vec2 (2.0, 2.0), &error), &error);
  g_assert_true (lr_setup_place (lr_plan_get_setup (plan), lr_plan_find (plan, "microphone-2"), &at_m, &facing_rad));
  g_assert_cmpfloat (at_m.x, ==, 2.0);

  /* Whoever wore it is gone: it stays where it was */
  take_next (&plan, lr_plan_remove (plan, "wenna", &error), &error);
  g_assert_cmpstr (lr_plan_find (plan, "microphone-2")->microphone.worn_by, ==, "");
  g_assert_cmpfloat (lr_plan_find (plan, "microphone-2")->at_m.x, ==, 2.0);
}

/* References to what is removed are cleared and the camera goes on looking that way */
static void
test_remove (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  guint n_before = lr_plan_get_setup (plan)->items->len;
  double towards_rad = atan2 (2.95 - 2.8, 2.6 - 4.81); /* from camera A to Wenna */

  take_next (&plan, lr_plan_remove (plan, "wenna", &error), &error);
  g_assert_cmpuint (lr_plan_get_setup (plan)->items->len, ==, n_before - 1);
  g_assert_cmpstr (lr_plan_find (plan, "ines")->person.looks_at, ==, "");
  g_assert_cmpstr (lr_plan_find (plan, "camera-a")->camera.aims_at, ==, "");
  g_assert_cmpstr (lr_plan_find (plan, "light-1")->light.aims_at, ==, "");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "camera-a")->facing_rad, towards_rad, 0.05 * LR_DEG);
  take_next (&plan, lr_plan_remove (plan, "socket-2", &error), &error);
  take_next (&plan, lr_plan_remove (plan, "light-1", &error), &error);
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.socket, ==, "");
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.feeds, ==, "");
  g_assert_cmpuint (lr_plan_find (plan, "lead-1")->n_path, ==, 4);
  assert_round_trip (plan);
}

static void
test_path (void)
{
  static const LrVec2 path[] = { { 0.0, 0.0 }, { 1.0, 0.0 }, { 1.0, 1.00049 } };
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_path (plan, "lead-2", path, 3, &error), &error);
  g_assert_cmpfloat (lr_plan_find (plan, "lead-2")->path_m[2].y, ==, 1.0);
  take_next (&plan, lr_plan_move_path_point (plan, "lead-2", 1, lr_vec2 (2.0, 0.0), &error), &error);
  take_next (&plan, lr_plan_move (plan, "lead-2", lr_vec2 (0.5, 0.5), &error), &error);
  g_assert_cmpfloat (lr_plan_find (plan, "lead-2")->path_m[1].x, ==, 2.5);
  assert_round_trip (plan);
  g_assert_null (lr_plan_move_path_point (plan, "lead-2", 3, lr_vec2 (2.0, 0.0), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_path (plan, "lead-2", path, 1, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_path (plan, "camera-a", path, 2, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_set_path (plan, "lead-2", NULL, 0, &error), &error);
  assert_round_trip (plan);
}

/* Names, tags and the kit */

static void
test_names (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (LrItem) chair = lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "");
  g_autoptr (GError) error = NULL;
  char *id = NULL;

  for (guint i = 0; i < 2; i++)
    {
      g_clear_pointer (&id, g_free);
      take_next (&plan, lr_plan_add (plan, chair, lr_vec2 (5.0, 1.0 + i), 0.0, &id, &error), &error);
    }
  g_assert_cmpstr (lr_plan_find (plan, id)->name, ==, "Chair 2");
  g_clear_pointer (&id, g_free);

  take_next (&plan, lr_plan_duplicate (plan, "camera-b", lr_vec2 (0.5, 0.0), &id, &error), &error);
  g_assert_cmpstr (lr_plan_find (plan, id)->tag, ==, "C");
  g_assert_cmpstr (lr_plan_find (plan, id)->camera.aims_at, ==, "wenna");
  g_clear_pointer (&id, g_free);
  take_next (&plan, lr_plan_duplicate (plan, "wenna", lr_vec2 (0.5, 0.0), &id, &error), &error);
  g_assert_cmpstr (lr_plan_find (plan, id)->name, ==, "Wenna 2");
  g_assert_cmpstr (lr_plan_find (plan, id)->person.looks_at, ==, "ines");
  g_clear_pointer (&id, g_free);
  take_next (&plan, lr_plan_duplicate (plan, "window-1", lr_vec2 (4.5, 0.0), &id, &error), &error);
  g_assert_cmpstr (lr_plan_find (plan, id)->name, ==, "window 3");
  g_assert_cmpfloat (lr_plan_find (plan, id)->along_m, ==, 5.3);
  g_clear_pointer (&id, g_free);

  /* A gap is filled, and after Z comes AA */
  take_next (&plan, lr_plan_remove (plan, "camera-a", &error), &error);
  for (guint i = 0; i < 25; i++)
    {
      g_clear_pointer (&id, g_free);
      take_next (&plan, lr_plan_duplicate (plan, "camera-b", lr_vec2 (0.5, 0.0), &id, &error), &error);
      if (i == 0)
        g_assert_cmpstr (lr_plan_find (plan, id)->tag, ==, "A");
    }
  g_assert_cmpstr (lr_plan_find (plan, id)->tag, ==, "AA");
  g_clear_pointer (&id, g_free);
}

static int
left (const LrPlan *plan,
      const char   *id)
{
  return lr_plan_kit_left (plan, lr_plan_find_kit (plan, id));
}

/* A lens of the kit is changed in place; its ends keep their order */
static void
test_kit_lens (LrPlan **plan)
{
  const LrLens *lens;
  g_autoptr (GError) error = NULL;

  take_next (plan, lr_plan_set_kit_number (*plan, "lens-85", "converter", 1.4, &error), &error);
  take_next (plan, lr_plan_set_kit_number (*plan, "lens-85", "focal-min-mm", 0.135, &error), &error);
  take_next (plan, lr_plan_set_kit_text (*plan, "lens-85", "title", "135 mm lens", &error), &error);
  lens = &lr_plan_find_kit (*plan, "lens-85")->item->lens;
  g_assert_cmpfloat (lens->converter, ==, 1.4);
  g_assert_cmpfloat (lens->focal_max_m, ==, 0.135);
  g_assert_cmpstr (lr_plan_find_kit (*plan, "lens-85")->title, ==, "135 mm lens");
  assert_round_trip (*plan);

  take_next (plan, lr_plan_set_kit_lens (*plan, "lens-85", lr_lens_type_find ("lens-24-70"), &error), &error);
  lens = &lr_plan_find_kit (*plan, "lens-85")->item->lens;
  g_assert_cmpfloat (lens->focal_min_m, ==, 0.024);
  g_assert_cmpfloat (lens->converter, ==, 1.4);
  g_assert_cmpint (lr_plan_find_kit (*plan, "lens-85")->count, ==, 2);
  assert_round_trip (*plan);
  g_assert_null (lr_plan_set_kit_lens (*plan, "camera-body", lr_lens_type_find ("lens-24-70"), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);

  g_assert_null (lr_plan_set_kit_number (*plan, "lens-85", "converter", 4.5, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_kit_number (*plan, "lens-85", "beam-deg", 1.0, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_kit_text (*plan, "lens-85", "count", "2", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

static void
test_kit (void)
{
  static const struct { const char *id; int left; } loft[] = {
    { "camera-body", 0 }, { "lens-35", 1 }, { "lens-50", 0 }, { "lens-85", 0 }, { "wide-emitter", 0 },
    { "small-panel", 1 }, { "point-source", 0 }, { "reflector", 0 }, { "flag", 2 }, { "boom", 0 }, { "lavalier", 1 },
    { "lead-10", 1 },
  };
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (loft); i++)
    {
      g_test_message ("%s", loft[i].id);
      g_assert_cmpint (left (plan, loft[i].id), ==, loft[i].left);
    }

  take_next (&plan, lr_plan_add_from_kit (plan, "camera-body", lr_vec2 (6.0, 2.0), 0.0, &id, &error), &error);
  g_assert_cmpint (left (plan, "camera-body"), ==, -1);
  g_assert_cmpstr (lr_plan_find (plan, id)->camera.lens, ==, "lens-35"); /* the only one left */
  g_assert_cmpfloat (lr_plan_find (plan, id)->camera.focal_m, ==, 0.035);
  g_assert_cmpstr (lr_plan_find (plan, id)->tag, ==, "C");
  take_next (&plan, lr_plan_change_text (plan, id, "lens", "lens-85", &error), &error);
  g_assert_cmpfloat (lr_plan_find (plan, id)->camera.focal_m, ==, 0.085);
  g_assert_cmpint (left (plan, "lens-85"), ==, -1);
  take_next (&plan, lr_plan_set_kit_count (plan, "lens-85", 2, &error), &error);
  g_assert_cmpint (left (plan, "lens-85"), ==, 0);
  assert_round_trip (plan);
  test_kit_lens (&plan);

  g_assert_null (lr_plan_add_from_kit (plan, "lens-35", lr_vec2 (1.0, 1.0), 0.0, NULL, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_add_from_kit (plan, "nothing", lr_vec2 (1.0, 1.0), 0.0, NULL, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_kit_count (plan, "lens-85", -1, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

/* Job, limits, set-ups */

/* What is noted of a place stays with the set-ups that are there: a copy has it, and changes its own; a new set-up is elsewhere */
static void
test_location (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  const LrContact contact = { .role = (char *) "Keys", .name = (char *) "Tamsin Roe", .phone = (char *) "" };
  const LrLocation *first, *other;

  g_assert_false (lr_location_is_on_map (lr_plan_get_setup (plan)->location));
  take_next (&plan, lr_plan_set_location_text (plan, "address", "3 Weir Lane", &error), &error);
  take_next (&plan, lr_plan_set_location (plan, "latitude-deg", 0.0, &error), &error);
  g_assert_false (lr_location_is_on_map (lr_plan_get_setup (plan)->location));
  take_next (&plan, lr_plan_set_location (plan, "longitude-deg", 0.0, &error), &error);
  take_next (&plan, lr_plan_set_contacts (plan, &contact, 1, &error), &error);
  g_assert_true (lr_location_is_on_map (lr_plan_get_setup (plan)->location));

  take_next (&plan, lr_plan_copy_setup (plan, "Other wall", &error), &error);
  first = ((const LrSetup *) plan->setups->pdata[0])->location;
  g_assert_true (lr_plan_get_setup (plan)->location == first);
  take_next (&plan, lr_plan_set_location_text (plan, "address", "5 Weir Lane", &error), &error);
  take_next (&plan, lr_plan_set_contacts (plan, NULL, 0, &error), &error);
  first = ((const LrSetup *) plan->setups->pdata[0])->location;
  other = lr_plan_get_setup (plan)->location;
  g_assert_cmpstr (first->address, ==, "3 Weir Lane");
  g_assert_cmpuint (first->n_contacts, ==, 1);
  g_assert_cmpstr (other->address, ==, "5 Weir Lane");
  g_assert_cmpuint (other->n_contacts, ==, 0);
  assert_round_trip (plan);

  take_next (&plan, lr_plan_set_location (plan, "longitude-deg", (double) NAN, &error), &error);
  g_assert_false (lr_location_is_on_map (lr_plan_get_setup (plan)->location));
  take_next (&plan, lr_plan_new_setup (plan, "Second house", &error), &error);
  other = lr_plan_get_setup (plan)->location;
  g_assert_cmpstr (other->address, ==, "");
  g_assert_cmpuint (other->n_contacts, ==, 0);
  assert_round_trip (plan);
}

static void
test_job (void)
{
  static const char *const requests[] = { "Keys at the gate", NULL };
  static const struct { const char *key, *text; gboolean is_good; } rows[] = {
    { "title", "A title", TRUE },     { "date", "2028-02-29", TRUE },  { "date", "", TRUE },
    { "date", "2026-02-29", FALSE },  { "date", "3/2/2026", FALSE },  { "time-in", "00:00", TRUE },
    { "time-in", "24:00", FALSE },    { "time-out", "soon", FALSE },   { "issued", "0000-01-01", FALSE },
  };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  const LrContact contact = { .role = (char *) "Keys", .name = (char *) "Tamsin Roe", .phone = (char *) "" };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      LrPlan *next = lr_plan_set_job (plan, rows[i].key, rows[i].text, &error);

      g_test_message ("%s “%s”", rows[i].key, rows[i].text);
      if (rows[i].is_good)
        take_next (&plan, next, &error);
      else
        {
          g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
          g_clear_error (&error);
        }
    }
  take_next (&plan, lr_plan_set_location (plan, "latitude-deg", 50.34, &error), &error);
  take_next (&plan, lr_plan_set_location_text (plan, "access", "side door", &error), &error);
  take_next (&plan, lr_plan_set_job_number (plan, "sky", LR_SKY_CLEAR, &error), &error);
  take_next (&plan, lr_plan_set_requests (plan, requests, &error), &error);
  take_next (&plan, lr_plan_set_contacts (plan, &contact, 1, &error), &error);
  g_assert_cmpstr (lr_plan_get_setup (plan)->location->contacts[0].name, ==, "Tamsin Roe");
  assert_round_trip (plan);
  g_assert_cmpint (plan->job->sky, ==, LR_SKY_CLEAR);
  g_assert_null (lr_plan_set_location (plan, "latitude-deg", 91.0, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_job (plan, "colour", "red", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

/* Lists of the job */

static void
test_ticks (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_ticked (plan, "packing", "stand-1", TRUE, &error), &error);
  take_next (&plan, lr_plan_set_ticked (plan, "checks", "focus/a", TRUE, &error), &error);
  take_next (&plan, lr_plan_set_ticked (plan, "packing", "stand-1", TRUE, &error), &error);
  g_assert_true (lr_plan_is_ticked (plan, "packing", "stand-1") && lr_plan_is_ticked (plan, "checks", "focus/a"));
  g_assert_false (lr_plan_is_ticked (plan, "packing", "stand-2"));
  g_assert_cmpuint (g_strv_length (plan->job->ticks), ==, 2);
  g_assert_cmpstr (plan->job->ticks[0], ==, "checks/focus/a"); /* in order, each once: two who tick make one file */
  assert_round_trip (plan);

  take_next (&plan, lr_plan_set_ticked (plan, "packing", "stand-1", FALSE, &error), &error);
  g_assert_false (lr_plan_is_ticked (plan, "packing", "stand-1"));
  take_next (&plan, lr_plan_clear_ticks (plan, "pack", &error), &error);
  g_assert_true (lr_plan_is_ticked (plan, "checks", "focus/a"));
  take_next (&plan, lr_plan_clear_ticks (plan, "checks", &error), &error);
  g_assert_cmpuint (g_strv_length (plan->job->ticks), ==, 0);
  assert_round_trip (plan);

  /* a tick is for what the line said; a new one takes the place of the old */
  {
    g_autofree char *two = lr_tick_key ("stand-1", "2"), *three = lr_tick_key ("stand-1", "3"), *other = lr_tick_key ("stand-10", "2");

    take_next (&plan, lr_plan_set_ticked (plan, "packing", two, TRUE, &error), &error);
    take_next (&plan, lr_plan_set_ticked (plan, "packing", other, TRUE, &error), &error);
    g_assert_true (lr_plan_is_ticked (plan, "packing", two));
    g_assert_false (lr_plan_is_ticked (plan, "packing", three));
    take_next (&plan, lr_plan_set_ticked (plan, "packing", three, TRUE, &error), &error);
    g_assert_false (lr_plan_is_ticked (plan, "packing", two));
    g_assert_true (lr_plan_is_ticked (plan, "packing", other));
    g_assert_cmpuint (g_strv_length (plan->job->ticks), ==, 2);
    assert_round_trip (plan);
  }
  g_assert_null (lr_plan_set_ticked (plan, "packing", "\xff", TRUE, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

#define TEXT(text_) ((char *) text_)

static void
test_questions (void)
{
  const LrQuestion questions[] = {
    { .id = TEXT (""), .text = TEXT ("How did it begin?"), .note = TEXT ("the loft, 1998") },
    { .id = TEXT ("q1"), .text = TEXT ("And then?"), .note = TEXT ("") },
    { .id = TEXT (""), .text = TEXT (""), .note = TEXT ("") },
  };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  LrQuestion turned[2];

  take_next (&plan, lr_plan_set_questions (plan, questions, 3, &error), &error);
  g_assert_cmpuint (plan->job->n_questions, ==, 3);
  g_assert_cmpstr (plan->job->questions[0].id, ==, "q2"); /* q1 is taken */
  g_assert_cmpstr (plan->job->questions[1].id, ==, "q1");
  g_assert_cmpstr (plan->job->questions[2].id, ==, "q3");
  assert_round_trip (plan);

  turned[0] = plan->job->questions[1];
  turned[1] = plan->job->questions[0];
  take_next (&plan, lr_plan_set_questions (plan, turned, 2, &error), &error);
  g_assert_cmpstr (plan->job->questions[1].note, ==, "the loft, 1998");
  assert_round_trip (plan);
  turned[0] = turned[1] = plan->job->questions[0];
  g_assert_null (lr_plan_set_questions (plan, turned, 2, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_set_questions (plan, NULL, 0, &error), &error);
  assert_round_trip (plan);
}

static void
test_run (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autofree char *first = NULL, *second = NULL;

  take_next (&plan, lr_plan_time_run_step (plan, "lights", 25, &error), &error);
  take_next (&plan, lr_plan_name_run_step (plan, "lights", "Lamps and flags", &error), &error);
  take_next (&plan, lr_plan_add_run_step (plan, "lights", "Tea", 10, &first, &error), &error);
  take_next (&plan, lr_plan_add_run_step (plan, first, "Second tea", 5, &second, &error), &error);
  take_next (&plan, lr_plan_leave_out_run_step (plan, "sound", TRUE, &error), &error);
  g_assert_cmpuint (plan->job->n_run, ==, 4);
  g_assert_cmpint (lr_plan_find_run_step (plan, "lights")->minutes, ==, 25);
  g_assert_cmpstr (lr_plan_find_run_step (plan, second)->after, ==, first);
  assert_round_trip (plan);

  /* what followed the one that goes follows what it followed */
  take_next (&plan, lr_plan_remove_run_step (plan, first, &error), &error);
  g_assert_cmpstr (lr_plan_find_run_step (plan, second)->after, ==, "lights");
  /* an entry that says nothing is not kept */
  take_next (&plan, lr_plan_leave_out_run_step (plan, "sound", FALSE, &error), &error);
  take_next (&plan, lr_plan_time_run_step (plan, "lights", 0, &error), &error);
  g_assert_cmpuint (plan->job->n_run, ==, 2);
  take_next (&plan, lr_plan_name_run_step (plan, "lights", "", &error), &error);
  g_assert_cmpuint (plan->job->n_run, ==, 1);
  assert_round_trip (plan);

  g_assert_null (lr_plan_remove_run_step (plan, "lights", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_time_run_step (plan, "lights", 1441, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

static void
test_limits (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      const LrProp *prop = &lr_limit_info (i)->prop;
      double value = lr_prop_quantise (prop, (prop->min + prop->max) / 2.0);

      g_assert_cmpfloat (plan->limits.value[i], ==, prop->fallback);
      take_next (&plan, lr_plan_set_limit (plan, i, value, &error), &error);
      g_assert_cmpfloat (plan->limits.value[i], ==, value);
      assert_round_trip (plan);
      g_assert_null (lr_plan_set_limit (plan, i, prop->max + 10.0, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
      g_clear_error (&error);
    }
  take_next (&plan, lr_plan_set_limit (plan, LR_LIMIT_WAY_OUT, NAN, &error), &error);
  g_assert_false (plan->limits.is_set[LR_LIMIT_WAY_OUT]);
  g_assert_cmpfloat (plan->limits.value[LR_LIMIT_WAY_OUT], ==, lr_limit_info (LR_LIMIT_WAY_OUT)->prop.fallback);
}

static void
test_setups (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GError) error = NULL;

  g_assert_null (lr_plan_remove_setup (plan, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_copy_setup (plan, "As found", &error), &error);
  g_assert_cmpuint (plan->shown, ==, 1);
  g_assert_null (lr_plan_copy_setup (plan, "As found", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_remove (plan, "person-1", &error), &error);
  take_next (&plan, lr_plan_rename_setup (plan, "Other room", &error), &error);
  assert_round_trip (plan);
  g_assert_null (lr_plan_show_setup (plan, "As found", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  take_next (&plan, lr_plan_show_setup (plan, "setup-1", &error), &error);
  g_assert_nonnull (lr_plan_find (plan, "person-1")); /* the copy was edited, not this one */
  take_next (&plan, lr_plan_show_setup (plan, "Other room", &error), &error);
  take_next (&plan, lr_plan_remove_setup (plan, &error), &error);
  g_assert_cmpuint (plan->setups->len, ==, 1);
  g_assert_cmpstr (lr_plan_get_setup (plan)->id, ==, "setup-1");
}

/* Levels wanted belong to a set-up; one that is not asked for is where the limits have it, and stands in no file */
static void
test_wanted (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GBytes) before = lr_plan_to_bytes (plan), after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat_with_epsilon (lr_plan_face_level (plan), plan->limits.value[LR_LIMIT_FACE_LEVEL], 1e-12);
  g_assert_cmpfloat_with_epsilon (lr_plan_wall_level (plan), 0.4, 1e-12);
  take_next (&plan, lr_plan_copy_setup (plan, "Night", &error), &error);
  take_next (&plan, lr_plan_set_setup (plan, "face-level-pct", 0.45, &error), &error);
  take_next (&plan, lr_plan_set_setup (plan, "wall-level-pct", 0.15, &error), &error);
  assert_round_trip (plan);
  g_assert_cmpfloat_with_epsilon (lr_plan_face_level (plan), 0.45, 1e-12);
  g_assert_cmpfloat_with_epsilon (lr_plan_wall_level (plan), 0.15, 1e-12);
  take_next (&plan, lr_plan_set_setup (plan, "walls-wanted", LR_WALLS_DARK, &error), &error);
  assert_round_trip (plan);
  g_assert_true (isnan (lr_plan_wall_level (plan)));

  take_next (&plan, lr_plan_show_setup (plan, "setup-1", &error), &error);
  g_assert_cmpfloat_with_epsilon (lr_plan_wall_level (plan), 0.4, 1e-12);
  take_next (&plan, lr_plan_show_setup (plan, "Night", &error), &error);
  g_assert_null (lr_plan_set_setup (plan, "wall-level-pct", 1.5, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_setup (plan, "height-mm", 1.5, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  take_next (&plan, lr_plan_remove_setup (plan, &error), &error);
  after = lr_plan_to_bytes (plan);
  g_assert_true (g_bytes_equal (before, after));
}

/* Each sets all that it changes; none gives the lamp the face of the kit again */
static void
test_modifiers (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  const LrItem *light = lr_plan_find (plan, "light-3"), *found = light;
  gsize n;
  const LrModifier *modifiers = lr_modifiers (&n);

  g_assert_nonnull (light);
  for (gsize i = 1; i <= n; i++)
    {
      const LrModifier *modifier = &modifiers[i % n];
      g_autoptr (GError) error = NULL;
      LrPlan *next = lr_plan_set_modifier (plan, "light-3", modifier, &error);

      g_assert_no_error (error);
      lr_plan_unref (plan);
      plan = next;
      found = lr_plan_find (plan, "light-3");
      g_assert_cmpstr (found->light.modifier, ==, i < n ? modifier->title : "");
      g_assert_cmpfloat_with_epsilon (found->light.modifier_pass, modifier->pass, 1e-9);
      g_assert_cmpfloat_with_epsilon (found->light.modifier_beam_rad, modifier->beam_rad, 1e-9);
      if (modifier->width_m > 0.0)
        {
          g_assert_cmpint (found->light.form, ==, LR_LIGHT_WIDE);
          g_assert_cmpint (found->light.shape, ==, modifier->shape);
          g_assert_cmpfloat_with_epsilon (found->light.width_m, modifier->width_m, 1e-9);
        }
    }
  g_assert_cmpint (found->light.form, ==, LR_LIGHT_POINT);
  g_assert_cmpint (found->light.shape, ==, LR_SHAPE_RECTANGLE);

  {
    g_autoptr (GError) error = NULL;

    g_assert_null (lr_plan_set_modifier (plan, "camera-a", &modifiers[1], &error));
    g_assert_nonnull (error);
  }
}

/* An edit of a plan of 1,000 items copies one item and the list of pointers: it must not take a thousand copies' time */
static void
test_thousand_items (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (LrItem) box = lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_BOX, "");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) history = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_plan_unref);
  gint64 start_us, copies_us, edits_us;

  for (guint i = 0; i < 1000; i++)
    take_next (&plan, lr_plan_add (plan, box, lr_vec2 (0.01 * i, 1.0), 0.0, NULL, &error), &error);

  start_us = g_get_monotonic_time ();
  for (guint i = 0; i < 1000; i++)
    lr_item_unref (lr_item_copy (lr_plan_get_setup (plan)->items->pdata[i]));
  copies_us = g_get_monotonic_time () - start_us;

  start_us = g_get_monotonic_time ();
  for (guint i = 0; i < 100; i++)
    {
      take_next (&plan, lr_plan_move (plan, "person-1", lr_vec2 (0.01 * i, 1.0), &error), &error);
      g_ptr_array_add (history, lr_plan_ref (plan));
    }
  edits_us = (g_get_monotonic_time () - start_us) / 100;

  g_test_message ("1,000 copies of items %" G_GINT64_FORMAT " us, one edit %" G_GINT64_FORMAT " us", copies_us, edits_us);
  g_assert_cmpint (edits_us, <, copies_us);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/edit/sharing", test_sharing);
  g_test_add_func ("/edit/equal", test_equal);
  g_test_add_func ("/edit/change-several", test_change_several);
  g_test_add_func ("/edit/rounding", test_rounding);
  g_test_add_func ("/edit/boom", test_boom);
  g_test_add_func ("/edit/worn", test_worn);
  g_test_add_func ("/edit/remove", test_remove);
  g_test_add_func ("/edit/path", test_path);
  g_test_add_func ("/edit/names", test_names);
  g_test_add_func ("/edit/kit", test_kit);
  g_test_add_func ("/edit/location", test_location);
  g_test_add_func ("/edit/job", test_job);
  g_test_add_func ("/edit/ticks", test_ticks);
  g_test_add_func ("/edit/questions", test_questions);
  g_test_add_func ("/edit/run", test_run);
  g_test_add_func ("/edit/limits", test_limits);
  g_test_add_func ("/edit/setups", test_setups);
  g_test_add_func ("/edit/modifiers", test_modifiers);
  g_test_add_func ("/edit/wanted", test_wanted);
  g_test_add_func ("/edit/thousand-items", test_thousand_items);

  return g_test_run ();
}
