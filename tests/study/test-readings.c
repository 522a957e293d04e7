/* test-readings.c - the drawing loft as an outsider reads it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The set-up is invented; what is expected is its geometry, worked apart from this program from the coordinates in the file:
 * Wenna's head (2.60, 2.95), eyes 1.18 m high; Ines (4.25, 2.30); A (4.81, 2.80), lens 1.20; B (5.07, 3.76), lens 1.24.
 */

#include "fixture.h"

#include "readings.h"

typedef struct
{
  const char *name, *item, *key; /* in */
  double      value, tolerance;  /* expected */
  const char *source;
} NumberCase;

static const NumberCase number_cases[] = {
  { "a-distance", "camera-a", "distance-m", 2.139, 0.002,
    "eyes 0.08 m ahead on the way to Ines: (2.674, 2.921); hypot (2.136, -0.121, 0.02)" },
  { "b-distance", "camera-b", "distance-m", 2.539, 0.002, "hypot (2.396, 0.839, 0.06)" },
  { "a-gaze", "camera-a", "gaze-deg", -18.3, 0.2, "atan2 (-0.65, 1.65) - atan2 (-0.121, 2.136)" },
  { "b-gaze", "camera-b", "gaze-deg", -40.8, 0.2, "atan2 (-0.65, 1.65) - atan2 (0.839, 2.396)" },
  { "a-margin", "camera-a", "line-margin-deg", 18.3, 0.1, "the same, to the tripod's centre" },
  { "a-depth", "camera-a", "eyes-depth-m", 2.1225, 0.0002,
    "sensor plane to the eyes along the axis, which has them 61 % across and 24 % down: aimed by another program by repeated turns" },
  { "a-near", "camera-a", "sharp-near-m", 1.9908, 0.0002, "50 mm, f/2.8, 0.030 mm, s 2.0712, v 0.0512: Greenleaf's formula" },
  { "a-far", "camera-a", "sharp-far-m", 2.2734, 0.0002, "the same" },
  { "b-depth", "camera-b", "eyes-depth-m", 2.5336, 0.0002, "62 % across and 29 % down, the same" },
  { "b-near", "camera-b", "sharp-near-m", 2.4683, 0.0002, "85 mm, f/2.8, 0.030 mm, s 2.4456, v 0.0881" },
  { "b-far", "camera-b", "sharp-far-m", 2.6026, 0.0002, "the same" },
  { "a-lens-above", "camera-a", "lens-above-m", 0.02, 0.0005, "1.20 - 1.18" },
  { "a-look-room", "camera-a", "look-room-share", 0.61, 1e-6, "aimed 61 % across, and Ines is to the left of the lens" },
  { "b-x", "camera-b", "x-m", 5.07, 1e-9, "the file" },
  { "lead-path", "lead-1", "path-m", 3.697, 0.0005, "0.18 + 2.31 + hypot (0.13, 1.20)" },
  { "lead-needed", "lead-1", "needed-m", 4.497, 0.0005, "0.30 m down from the socket and 0.50 m for the loop more" },
  { "lead-current", "lead-1", "current-a", 0.9662, 0.0001, "200 W / (230 V * 0.9)" },
  { "lead-bears", "lead-1", "bears-a", 16.0, 1e-9, "1.5 mm2: BS 7671:2018, table 4F3A, from memory" },
  { "lead-drop", "lead-1", "drop-v", 0.3075, 0.0002, "2 * 10 m * 0.9662 A * 13.3 ohm/km (IEC 60228) * 304.5 / 254.5" },
  { "circuit-full", "circuit-1", "full-w", 280.0, 1e-9, "L1 200 W, L3 80 W" },
  { "circuit-dimmed", "circuit-1", "dimmed-w", 170.0, 1e-9, "65 % of 200 W, 50 % of 80 W" },
  { "circuit-current", "circuit-1", "full-a", 1.3527, 0.0001, "280 W / (230 V * 0.9)" },
  { "circuit-share", "circuit-1", "load-share", 0.08454, 0.00001, "of 16 A" },
  { "circuit-allowed", "circuit-1", "allowed-share", 0.8, 1e-9, "NEC 210.19(A)(1): 1 / 1.25" },
};

static JsonObject *
read_loft (JsonNode **node)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);

  *node = lr_readings_to_json (study, NULL);
  return json_node_get_object (*node);
}

static void
test_number (gconstpointer data)
{
  const NumberCase *c = data;
  g_autoptr (JsonNode) node = NULL;
  JsonObject *items = json_object_get_object_member (read_loft (&node), "items");

  g_test_message ("%s", c->source);
  assert_near (json_object_get_double_member (json_object_get_object_member (items, c->item), c->key), c->value,
               c->tolerance);
}

/* 22.04 degrees at the middle of the head: atan2 (0.81, 2.47) - atan2 (-0.15, 2.21) */
static void
test_pair (void)
{
  g_autoptr (JsonNode) node = NULL;
  JsonObject *root = read_loft (&node);
  JsonArray *pairs = json_object_get_array_member (root, "pairs");
  JsonObject *pair = json_array_get_object_element (pairs, 0);

  g_assert_cmpuint (json_array_get_length (pairs), ==, 1);
  g_assert_cmpstr (json_object_get_string_member (pair, "a"), ==, "camera-a");
  g_assert_cmpstr (json_object_get_string_member (pair, "b"), ==, "camera-b");
  assert_near (json_object_get_double_member (pair, "angle-deg"), 22.04, 0.01);
  g_assert_cmpint (json_object_get_int_member (pair, "shot-steps"), ==, 1);
  g_assert_true (json_object_get_boolean_member (pair, "is-same-side"));
  g_assert_true (json_object_get_boolean_member (pair, "is-same-look"));
  assert_near (json_object_get_double_member (pair, "gaze-step-deg"), 22.5, 0.4); /* 40.8 - 18.3 */
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "reverses")), ==, 0);
}

/* B stands 5.40 - 3.76 = 1.64 m from the north wall and (11.65 - 5.07 - 3.76) / sqrt 2 = 1.99 m from the slanting one */
static void
test_walls (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  const LrRoom *room = lr_plan_get_setup (plan)->room;
  LrVec2 b_m = { 5.07, 3.76 };

  assert_near (lr_segment_distance_m (room->corners_m[3], room->corners_m[4], b_m, NULL), 1.64, 0.001);
  assert_near (lr_segment_distance_m (room->corners_m[2], room->corners_m[3], b_m, NULL), 1.994, 0.001);
  g_assert_cmpstr (lr_wall_title (room, 3), ==, "north wall");
  g_assert_cmpstr (lr_wall_title (room, 2), ==, "north-east wall");
}

/* Every key but these names what it is without a unit */
static gboolean
has_unit (const char *key)
{
  static const char *const bare[] = {
    "kind", "has-footprint", "tape", "subject", "is-main", "magnification", "sharp-to-infinity", "shot", "side", "face-ratio",
    "joint", "looks-to", "behind", "behind-item", "behind-wall", "size-ratio", "converter", "f-number",
    "f-number-for-depth", "aspect", "circuit", "stand",
  };
  static const char *const units[] = { "-m", "-mm", "-deg", "-share", "-m2", "-w", "-stops", "-lx", "-lm", "-cd", "-a", "-v", "-n" };

  for (guint i = 0; i < G_N_ELEMENTS (bare); i++)
    if (g_str_equal (key, bare[i]))
      return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (key, units[i]))
      return TRUE;

  return FALSE;
}

static void
test_keys (void)
{
  g_autoptr (JsonNode) node = NULL;
  JsonObject *root = read_loft (&node);
  JsonObject *items = json_object_get_object_member (root, "items");
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (GList) ids = json_object_get_members (items);

  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-readings");
  g_assert_cmpint (json_object_get_int_member (root, "version"), ==, 1);
  g_assert_cmpuint (g_list_length (ids), ==, lr_plan_get_setup (plan)->items->len);
  for (GList *id = ids; id != NULL; id = id->next)
    {
      g_autoptr (GList) keys = json_object_get_members (json_object_get_object_member (items, id->data));

      for (GList *key = keys; key != NULL; key = key->next)
        if (!has_unit (key->data))
          g_error ("“%s” of %s tells no unit", (char *) key->data, (char *) id->data);
    }
}

/* Statics by hand: L1 of 3 kg on a stand taken as 3 kg, feet on a circle of .50 m: 6 kg * .25 m, pushed at 1.75 m */
static void
test_stand (void)
{
  g_autoptr (JsonNode) node = NULL;
  JsonObject *items = json_object_get_object_member (read_loft (&node), "items");
  JsonObject *lamp = json_object_get_object_member (json_object_get_object_member (items, "light-1"), "stand");
  JsonObject *boom = json_object_get_object_member (json_object_get_object_member (items, "microphone-1"), "stand");

  assert_near (json_object_get_double_member (lamp, "push-n"), 6.0 * 0.25 * 9.80665 / 1.75, 1e-6);
  assert_near (json_object_get_double_member (lamp, "taken-as-kg"), 3.0, 1e-9);
  g_assert_true (json_object_get_null_member (lamp, "gap-ratio"));
  g_assert_true (json_object_get_null_member (lamp, "balance-kg"));
  /* arm of .8 kg, half of (1.788 - .55) m out, capsule of .35 kg at 1.788 m, held at .55 m */
  assert_near (json_object_get_double_member (boom, "balance-kg"), (0.8 * 0.5 * (1.7881 - 0.55) + 0.35 * 1.7881) / 0.55, 0.001);
  g_assert_false (json_object_has_member (json_object_get_object_member (items, "camera-a"), "stand"));
}

/* The box that holds the loft, 7.20 by 5.40 by 2.80 m: c / 2L (Rayleigh), c 343.2 m/s at 20 °C (ISO 9613-1) */
static void
test_room_modes (void)
{
  static const double sides_m[] = { 7.20, 5.40, 2.80 };
  g_autoptr (JsonNode) node = NULL;
  JsonObject *sound = json_object_get_object_member (read_loft (&node), "sound");
  JsonArray *modes = json_object_get_array_member (sound, "modes-hz");

  for (guint i = 0; i < G_N_ELEMENTS (sides_m); i++)
    assert_near (json_array_get_double_element (modes, i), 343.2 / (2.0 * sides_m[i]), 0.05);
  g_assert_true (json_object_has_member (sound, "crowded-hz"));
  g_assert_true (json_object_has_member (sound, "flutter-wall"));
}

/* 1000 cd and cos v to its sides: pi 1000 lm, half of it at 60 degrees (closed forms) */
static void
test_lamp_file (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (JsonNode) node = NULL;
  JsonObject *light;

  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.0, 1.0);
  fixture_lamp (&plan, "light-1", 1000.0, 1.0, 0.0, 0.0);
  study = lr_study_new (plan);
  node = lr_readings_to_json (study, NULL);
  light = json_object_get_object_member (json_object_get_object_member (json_node_get_object (node), "items"), "light-1");
  assert_near (json_object_get_double_member (light, "file-lm"), 1000.0 * LR_PI, 1.0);
  assert_near (json_object_get_double_member (light, "file-axis-cd"), 1000.0, 1e-9);
  assert_near (json_object_get_double_member (light, "file-beam-deg"), 120.0, 0.02);
}

/* What cannot be computed is null: text stays JSON */
static void
test_null (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (JsonNode) node = NULL, back = NULL;
  g_autofree char *text = NULL;
  JsonObject *camera;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 1.0, 1.0);
  study = lr_study_new (plan);
  node = lr_readings_to_json (study, NULL);
  text = json_to_string (node, TRUE);
  back = json_from_string (text, NULL);
  g_assert_nonnull (back);
  camera = json_object_get_object_member (json_object_get_object_member (json_node_get_object (back), "items"), "camera-1");
  g_assert_true (json_object_get_null_member (camera, "distance-m"));
  g_assert_true (json_object_get_null_member (camera, "subject"));
  g_assert_true (json_object_get_null_member (json_node_get_object (back), "line"));
  g_assert_null (strstr (text, "nan"));
  g_assert_null (strstr (text, "inf\""));
}

/* Pure: the same plan gives the same text */
static void
test_same (void)
{
  g_autoptr (JsonNode) a = NULL, b = NULL;
  g_autofree char *text_a = NULL, *text_b = NULL;

  read_loft (&a);
  read_loft (&b);
  text_a = json_to_string (a, TRUE);
  text_b = json_to_string (b, TRUE);
  g_assert_cmpstr (text_a, ==, text_b);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/readings/loft", number_cases, test_number);
  g_test_add_func ("/readings/pair", test_pair);
  g_test_add_func ("/readings/walls", test_walls);
  g_test_add_func ("/readings/keys", test_keys);
  g_test_add_func ("/readings/stand", test_stand);
  g_test_add_func ("/readings/room-modes", test_room_modes);
  g_test_add_func ("/readings/null", test_null);
  g_test_add_func ("/readings/lamp-file", test_lamp_file);
  g_test_add_func ("/readings/same", test_same);

  return g_test_run ();
}
