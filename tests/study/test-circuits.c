/* test-circuits.c - circuits, leads, stands and ways out as read from a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "power_readings.h"

/* The loft: L1 of 200 W at 65 % and L3 of 80 W at 50 % on C1, L2 of 60 W at 30 % on C2; 230 V, 16 A; power factor .9. By hand:
 * 280 W, 280 / 207 = 1.353 A; as dimmed 130 + 40 W. Two sockets, two leads. */
static void
test_loft (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrCircuitReading one, two;

  g_assert_true (lr_study_circuit (study, lr_plan_find (plan, "circuit-1"), &one));
  g_assert_true (lr_study_circuit (study, lr_plan_find (plan, "circuit-2"), &two));
  assert_near (one.full_w, 280.0, 1e-9);
  assert_near (one.dimmed_w, 170.0, 1e-9);
  assert_near (one.full_a, 1.3527, 1e-4);
  assert_near (one.rated_w, 3680.0, 1e-9);
  assert_near (one.allowed_share, 0.8, 1e-9);
  g_assert_cmpuint (one.n_sockets, ==, 2);
  g_assert_cmpuint (one.n_leads, ==, 2);
  assert_near (two.full_w, 60.0, 1e-9);
  assert_near (two.dimmed_w, 18.0, 1e-9);
  g_assert_false (lr_study_circuit (study, lr_plan_find (plan, "light-1"), &one));
}

/* Full load counts under a local rule that is named, and what is told to hang there adds to it */
static void
test_rule (void)
{
  g_autoptr (LrPlan) loft = fixture_example ("loft"), plan = NULL;
  g_autoptr (LrStudy) study = NULL;
  LrCircuitReading reading;

  fixture_set (&loft, "circuit-1", "known-load-w", 460.0);
  fixture_set (&loft, "light-1", "power-factor", 0.5);
  plan = lr_plan_set_room_text (loft, "full-load-rule", "a local wiring rule", NULL);
  study = lr_study_new (plan);
  g_assert_true (lr_study_circuit (study, lr_plan_find (plan, "circuit-1"), &reading));
  g_assert_true (reading.is_full);
  assert_near (reading.allowed_share, 1.0, 1e-12);
  /* by hand: 460 / 230 + 200 / 115 + 80 / 207 A */
  assert_near (reading.full_a, 2.0 + 1.73913 + 0.38647, 1e-4);
  assert_near (reading.full_w, 740.0, 1e-9);
}

/* lead-1 of the loft: .180 + 2.310 + 1.207 m of path, .300 m down from the socket, a loop of .5 m. By hand */
static void
test_lead (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrLeadPower lead;

  g_assert_true (lr_study_lead (study, lr_plan_find (plan, "lead-1"), &lead));
  assert_near (lead.path_m, 0.18 + 2.31 + hypot (0.13, 1.2), 1e-9);
  assert_near (lead.needed_m, lead.path_m + 0.8, 1e-9);
  assert_near (lead.plug_off_m, hypot (0.04, 0.17), 1e-9);
  assert_near (lead.load_off_m, 0.0, 1e-12);
  /* 2 x 10 m x .96618 A x 13.3 ohm/km x 1.1965 at 70 °C */
  assert_near (lead.drop_v, 0.30751, 1e-4);
  assert_near (lead.drop_share, 0.30751 / 230.0, 1e-6);
  g_assert_cmpuint (lr_study_leads_in (study, "socket-2", NULL), ==, 2);
  g_assert_cmpstr (lr_study_lead_of (study, "light-2")->id, ==, "lead-2");
}

/* The loft's boom: 5 kg of stand on feet .5 m out, an arm of .8 kg from .55 m behind the post to 1.788 m ahead, .35 kg at its end: 1.50 by
 * hand; .8 x .619 + .35 x 1.788 over .55 m: 2.04 kg hold it level. A panel of 1.5 kg on 3 kg of stand, feet .42 m out, at 2.2 m:
 * 4.5 x .21 x 9.80665 / 2.2 = 4.21 N. */
static void
test_stand (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  LrStandReading stand;

  study = lr_study_new (plan);
  g_assert_true (lr_study_stand (study, lr_study_find_placed (study, "microphone-1"), &stand));
  assert_near (stand.gap.factor, 1.50, 0.005);
  assert_near (stand.balance_kg, 2.04, 0.005);
  g_assert_true (lr_study_stand (study, lr_study_find_placed (study, "light-2"), &stand));
  assert_near (stand.push_n, 4.2123, 1e-3);
  g_assert_false (lr_study_stand (study, lr_study_find_placed (study, "wenna"), &stand));
  g_assert_false (lr_study_stand (study, lr_study_find_placed (study, "microphone-2"), &stand));
}

/* By hand. A boom whose masses nobody told counts as usual: 5 kg, .8 kg of arm .6 m out, .35 kg 1.75 m out, its edge .25 m off: 1.25 over
 * .28 + .525. Its push over the gap, 1.64 m up: (1.25 - .805) x 9.80665 / 1.64 = 2.66 N; a bag at the post brings it to 10 N with
 * (10 x 1.64 / 9.80665 - .445) / .25 = 4.91 kg, which is more than the 1.44 kg for twice. A microphone on a straight stand, 2.5 + .35 kg, edge .15 m, 1.1 m up: 3.81 N */
static void
test_untold (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const char *boom = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 1.0, 1.0);
  const char *stand = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_STAND, 4.0, 3.0);
  LrStandReading reading;

  fixture_set (&plan, boom, "tip-x-mm", 2.75);
  fixture_set (&plan, boom, "tip-y-mm", 1.0);
  fixture_set (&plan, boom, "tip-height-mm", 1.5);
  fixture_set (&plan, boom, "arm-mass-kg", 0.0);
  fixture_set (&plan, boom, "capsule-mass-kg", 0.0);
  study = lr_study_new (plan);
  g_assert_true (lr_study_stand (study, lr_study_find_placed (study, boom), &reading));
  assert_near (reading.usual_kg, 5.0, 1e-12);
  assert_near (reading.usual_arm_kg, 0.8, 1e-12);
  assert_near (reading.usual_capsule_kg, 0.35, 1e-12);
  assert_near (reading.gap.factor, 1.25 / 0.805, 1e-3);
  assert_near (reading.push_n, 2.661, 5e-3);
  assert_near (reading.wanted_bag_kg, 4.91, 5e-3);

  g_assert_true (lr_study_stand (study, lr_study_find_placed (study, stand), &reading));
  g_assert_false (reading.is_boom);
  assert_near (reading.push_n, 2.85 * 0.15 * 9.80665 / 1.1, 1e-3);
}

/* A lead goes round a person and a chest, and before no way out; what is found is what the check has nothing to say about */
static void
test_way (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  static const char *const sockets[] = { "socket-1", "socket-2", "socket-3" };
  static const char *const loads[] = { "light-1", "light-2", "light-3", "camera-a", "camera-b" };

  for (gsize i = 0; i < G_N_ELEMENTS (sockets); i++)
    for (gsize j = 0; j < G_N_ELEMENTS (loads); j++)
      {
        g_autoptr (LrPlan) laid = NULL;
        g_autoptr (LrStudy) then = NULL;
        LrVec2 path_m[LR_LEAD_POINTS], at_m;
        const LrPlaced *across;
        gsize n = 0;
        LrLeadLaying laying = { sockets[i], loads[j], NULL, path_m, 0 };

        g_assert_true (lr_study_lead_way (study, lr_study_find_placed (study, sockets[i]), lr_study_find_placed (study, loads[j]), path_m, &n));
        laying.n_path = n;
        laid = lr_plan_lay_lead (plan, "lead-1", &laying, NULL);
        g_assert_nonnull (laid);
        then = lr_study_new (laid);
        across = lr_study_lead_across (then, lr_plan_find (laid, "lead-1"), &at_m);
        if (across != NULL)
          g_error ("from %s to %s across %s at %.2f, %.2f", sockets[i], loads[j], across->item->id, at_m.x, at_m.y);
      }
}

/* A room of 6 m by 4 m, a door of 2 m in the middle of the short wall, a box across the room that leaves a gap at one side: the gap is the
 * width. Source: subtraction */
static void
test_gap (void)
{
  static const double gaps_m[] = { 0.5, 0.7, 0.8, 0.9 };

  for (gsize i = 0; i < G_N_ELEMENTS (gaps_m); i++)
    {
      LrPlan *plan = fixture_room (6.0, 4.0, 2.5);
      const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.5, 2.0);
      const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 3.5, 0.5 * (4.0 - gaps_m[i]));
      const char *door = fixture_add (&plan, LR_ITEM_DOOR, 0, 6.0, 2.0);
      LrStudy *study;
      LrWayOut way;

      fixture_set (&plan, box, "facing-deg", 0.0);
      fixture_set (&plan, box, "length-mm", 0.4);
      fixture_set (&plan, box, "width-mm", 4.0 - gaps_m[i]);
      fixture_set (&plan, door, "width-mm", 2.0);
      study = lr_study_new (plan);
      g_assert_true (lr_study_way_out (study, lr_study_find_placed (study, person), lr_study_find_placed (study, door), 0.92, &way));
      assert_near (way.width_m, gaps_m[i], 0.92 / 64.0);
      g_assert_cmpfloat (way.width_m, <=, gaps_m[i] + 0.003);
      g_assert_nonnull (way.blocker);
      g_assert_cmpstr (way.blocker->item->id, ==, box);
      /* and wide enough for less */
      g_assert_true (lr_study_way_out (study, lr_study_find_placed (study, person), lr_study_find_placed (study, door), gaps_m[i] - 0.01, &way));
      assert_near (way.width_m, gaps_m[i] - 0.01, 1e-9);
      lr_study_free (study);
      lr_plan_unref (plan);
    }
}

/* A person in a room of 6 m by 4 m with doors in its walls 0 and 1; what is told of the way out, or of a wheelchair's way to the place */
typedef struct
{
  const char *name;
  double      one_m, two_m;   /* in: how wide the doors are; 0: not there */
  gboolean    is_wheelchair;
  double      gap_m;          /* beside a box across the room, before door two; 0: no box */
  const char *door;           /* expected */
  double      clear_m;
  double      tolerance_m;
} DoorCase;

/* Source: the least of a door's width and its gap; the larger of two such; 0.92 m is wanted to get out, 0.90 m for a wheelchair, 0.815 m of
 * a door */
static const DoorCase door_cases[] = {
  { "hatch-before-a-door", 0.40, 1.00, FALSE, 0.0, "door-2", 0.92, 1e-9 },
  { "narrow-door", 0.40, 0.0, FALSE, 0.0, "door-1", 0.40, 1e-9 },
  { "door-just-too-narrow", 0.80, 0.60, FALSE, 0.0, "door-1", 0.80, 1e-9 },
  { "narrow-way-to-a-wide-door", 0.70, 1.00, FALSE, 0.5, "door-1", 0.70, 1e-9 },
  { "narrow-door-and-wider-way", 0.40, 1.00, FALSE, 0.6, "door-2", 0.60, 0.92 / 64.0 },
  { "cupboard-before-a-door", 0.50, 0.95, TRUE, 0.0, "door-2", 0.90, 1e-9 },
  { "wheelchair-door", 0.85, 0.0, TRUE, 0.0, "door-1", 0.85, 1e-9 },
  { "wheelchair-door-rather-than-narrow-way", 0.85, 0.95, TRUE, 0.87, "door-1", 0.85, 1e-9 },
  { "wheelchair-way-not-as-narrow-as-a-door", 0.0, 0.85, TRUE, 0.86, "door-1", 0.85, 0.9 / 64.0 },
};

static void
test_doors (gconstpointer data)
{
  const DoorCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (6.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) ways = g_array_new (FALSE, FALSE, sizeof (LrWayOut));
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.5, 2.0);
  const double doors_m[] = { c->one_m, c->two_m };
  const LrWayOut *way;

  for (int i = 0; i < 2; i++)
    if (doors_m[i] > 0.0)
      fixture_set (&plan, fixture_add (&plan, LR_ITEM_DOOR, 0, i == 0 ? 1.5 : 6.0, i == 0 ? 0.0 : 2.0), "width-mm", doors_m[i]);
  if (c->gap_m > 0.0)
    {
      const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 3.5, 0.5 * (4.0 - c->gap_m));

      fixture_set (&plan, box, "facing-deg", 0.0);
      fixture_set (&plan, box, "length-mm", 0.4);
      fixture_set (&plan, box, "width-mm", 4.0 - c->gap_m);
    }
  fixture_set (&plan, person, "uses-wheelchair", c->is_wheelchair);
  study = lr_study_new (plan);
  lr_study_ways_out (study, ways);
  g_assert_cmpuint (ways->len, ==, c->is_wheelchair ? 2 : 1);
  way = &g_array_index (ways, LrWayOut, ways->len - 1);
  g_assert_cmpint (way->is_wheelchair, ==, c->is_wheelchair);
  g_assert_false (way->is_unknown);
  g_assert_cmpstr (way->door->item->id, ==, c->door);
  assert_near (lr_way_out_clear_m (way), c->clear_m, c->tolerance_m);
}

/* So much stands between the one and the door that no way is looked for among it: it is told as not known, and the other's way as it is */
static void
test_unknown (void)
{
  g_autoptr (LrPlan) plan = fixture_room (48.0, 8.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) ways = g_array_new (FALSE, FALSE, sizeof (LrWayOut));
  const char *far = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.0, 4.0);
  gint64 begin_us;
  const char *near = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_OTHER, 46.5, 4.0);

  fixture_set (&plan, fixture_add (&plan, LR_ITEM_DOOR, 0, 48.0, 4.0), "width-mm", 1.2);
  for (int i = 0; i < 34; i++)
    for (int j = 0; j < 7; j++)
      {
        const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, 3.0 + 1.2 * i, 0.7 + 1.1 * j + 0.3 * (i % 2));

        fixture_set (&plan, box, "length-mm", 0.5);
        fixture_set (&plan, box, "width-mm", 0.5);
      }
  study = lr_study_new (plan);
  begin_us = g_get_monotonic_time ();
  lr_study_ways_out (study, ways);
  g_test_message ("%.1f ms", 1e-3 * (double) (g_get_monotonic_time () - begin_us));
  g_assert_cmpuint (ways->len, ==, 2);
  g_assert_true (g_array_index (ways, LrWayOut, 0).is_unknown);
  g_assert_cmpstr (g_array_index (ways, LrWayOut, 0).person->item->id, ==, far);
  g_assert_false (g_array_index (ways, LrWayOut, 1).is_unknown);
  g_assert_cmpstr (g_array_index (ways, LrWayOut, 1).person->item->id, ==, near);
  assert_near (g_array_index (ways, LrWayOut, 1).width_m, 0.92, 1e-9);
}

/* Everybody counts: the thirteenth behind a narrow gap is found, and of very many people those who are left out are told as not known */
static void
test_crowd (void)
{
  static const guint crowds[] = { 14, 60 };

  for (gsize i = 0; i < G_N_ELEMENTS (crowds); i++)
    {
      g_autoptr (LrPlan) plan = fixture_room (40.0, 30.0, 2.5);
      g_autoptr (LrStudy) study = NULL;
      g_autoptr (GArray) ways = g_array_new (FALSE, FALSE, sizeof (LrWayOut));
      guint n_unknown = 0;
      gint64 begin_us;

      fixture_set (&plan, fixture_add (&plan, LR_ITEM_DOOR, 0, 0.0, 15.0), "width-mm", 1.2);
      for (guint j = 0; j + 1 < crowds[i]; j++)
        fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_OTHER, 2.0 + 2.0 * (j / 10), 3.0 + 2.4 * (j % 10));
      fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_OTHER, 38.0, 15.0);
      for (int j = 0; j < 2; j++)
        {
          const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 36.0, j == 0 ? 7.2 : 22.8);

          fixture_set (&plan, box, "facing-deg", 0.0);
          fixture_set (&plan, box, "length-mm", 0.4);
          fixture_set (&plan, box, "width-mm", 15.0);
        }
      study = lr_study_new (plan);
      begin_us = g_get_monotonic_time ();
      lr_study_ways_out (study, ways);
      g_test_message ("%u people: %.1f ms", crowds[i], 1e-3 * (double) (g_get_monotonic_time () - begin_us));
      for (guint j = 0; j < ways->len; j++)
        n_unknown += g_array_index (ways, LrWayOut, j).is_unknown;
      g_assert_cmpuint (n_unknown, ==, crowds[i] > 40 ? crowds[i] - 40 : 0);
      if (n_unknown == 0)
        assert_near (g_array_index (ways, LrWayOut, 0).width_m, 0.6, 0.92 / 64.0); /* 30 - 2 x 14.7 m */
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/circuits/loft", test_loft);
  g_test_add_func ("/circuits/rule", test_rule);
  g_test_add_func ("/circuits/lead", test_lead);
  g_test_add_func ("/circuits/stand", test_stand);
  g_test_add_func ("/circuits/untold", test_untold);
  g_test_add_func ("/circuits/way", test_way);
  g_test_add_func ("/circuits/gap", test_gap);
  add_rows ("/circuits/doors", door_cases, test_doors);
  g_test_add_func ("/circuits/unknown", test_unknown);
  g_test_add_func ("/circuits/crowd", test_crowd);

  return g_test_run ();
}
