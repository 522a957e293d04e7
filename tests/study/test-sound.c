/* test-sound.c - how the room answers, and what each microphone hears
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "materials.h"
#include "sound.h"

#include <string.h>

static void
set_surface (LrPlan    **plan,
             const char *surface,
             const char *material)
{
  static const char *const bands[LR_N_BANDS] = { "125", "250", "500", "1000", "2000", "4000" };

  for (guint band = 0; band < LR_N_BANDS; band++)
    {
      g_autofree char *key = g_strdup_printf ("%s.absorption-%s-hz", surface, bands[band]);
      LrPlan *next = lr_plan_set_room (*plan, key, lr_material_find (material)->absorption[band], NULL);

      g_assert_nonnull (next);
      lr_plan_unref (*plan);
      *plan = next;
    }
}

static void
set_room (LrPlan    **plan,
          const char *key,
          double      value)
{
  LrPlan *next = lr_plan_set_room (*plan, key, value, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
set_limit (LrPlan **plan,
           LrLimit  limit,
           double   value)
{
  LrPlan *next = lr_plan_set_limit (*plan, limit, value, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

/* 5.0 x 4.0 x 2.5 m: parquet 20 m², plaster on lath 20, gypsum board 45; at 500 Hz 4.85 m² and 0.13 of air: 0.161 V / A = 1.618 s, at
 * 1 kHz 3.80 + 0.21: 2.007 s; by hand, ISO 9613-1 for the air */
static void
test_bare_room (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const LrRoomSound *room;

  set_surface (&plan, "floor", "parquet");
  set_surface (&plan, "ceiling", "plaster-on-lath");
  set_surface (&plan, "walls", "gypsum-board");
  study = lr_study_new (plan);
  g_assert_true (lr_study_sound (study)->has_room);
  room = &lr_study_sound (study)->room;
  assert_near (room->volume_m3, 50.0, 1e-9);
  assert_near (room->surface_m2, 85.0, 1e-9);
  assert_within (room->sabine_s[2], 1.618, 0.003);
  assert_within (room->sabine_s[3], 2.007, 0.003);
  assert_within (room->mid_s, 0.5 * (1.618 + 2.007), 0.003);
  g_assert_false (room->is_eyring);
  g_assert_false (room->is_measured);
  assert_near (room->modes_hz[0], 34.32, 0.01); /* c / 2 L */
  g_assert_cmpint (room->flutter_wall, ==, 0);  /* south and north wall, 4 m apart */
}

/* 16 x 12 x 8 ft: 2,0,0 and 0,0,1 coincide at 70.6 Hz (Handbook for Sound Engineers, table 6-4), which is under a voice; the next that do are
 * 4,0,0, 0,3,0 and 0,0,2 at 141 Hz (multiples by hand) */
static void
test_crowded (void)
{
  g_autoptr (LrPlan) plan = fixture_room (16 * 0.3048, 12 * 0.3048, 8 * 0.3048);
  g_autoptr (LrStudy) study = NULL;

  set_room (&plan, "reverberation-s", 1.0);
  study = lr_study_new (plan);
  assert_near (lr_study_sound (study)->room.crowded_hz, 140.8, 1.0);
}

/* Windows and doors take wall away; people and soft things add to it, outside the logarithm */
static void
test_things (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const char *window, *sofa;
  const LrRoomSound *room;

  set_surface (&plan, "walls", "gypsum-board");
  window = fixture_add (&plan, LR_ITEM_WINDOW, 0, 1.0, 0.0);
  fixture_set (&plan, window, "width-mm", 2.0);
  fixture_set (&plan, window, "head-mm", 2.4);
  fixture_set (&plan, window, "sill-mm", 0.9);
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.0, 2.0);
  sofa = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, 3.0, 3.0);
  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 4.0, 1.0);
  study = lr_study_new (plan);
  room = &lr_study_sound (study)->room;
  assert_near (room->part_m2[LR_SOUND_OPENINGS], 3.0 * 0.5 * (0.18 + 0.12), 1e-9);
  assert_near (room->part_m2[LR_SOUND_WALLS], 42.0 * 0.5 * (0.05 + 0.04), 1e-9);
  assert_near (room->part_m2[LR_SOUND_PEOPLE], 0.5 * (0.45 + 0.60), 1e-9);
  assert_near (room->part_m2[LR_SOUND_FURNITURE], 0.9 * 1.8 * 0.5 * (0.80 + 0.88), 1e-9);

  fixture_set (&plan, sofa, "cover", LR_COVER_HARD);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  assert_near (lr_study_sound (study)->room.part_m2[LR_SOUND_FURNITURE], 0.0, 1e-9);
}

/* Over a mean of 0.2 Eyring's time is used, by hand 0.161 V / (-S ln (1 - a)) */
static void
test_soft_room (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const LrRoomSound *room;
  double mean, by_hand_s;

  set_surface (&plan, "floor", "carpet-on-underlay");
  set_surface (&plan, "ceiling", "acoustic-tile");
  set_surface (&plan, "walls", "drape-medium-folds");
  study = lr_study_new (plan);
  room = &lr_study_sound (study)->room;
  g_assert_true (room->is_eyring);
  mean = (20.0 * 0.57 + 20.0 * 0.78 + 45.0 * 0.49) / 85.0;
  by_hand_s = 0.161 * 50.0 / (-85.0 * log (1.0 - mean) + 4.0 * 50.0 * 0.000628);
  assert_within (room->eyring_s[2], by_hand_s, 0.003);
  g_assert_cmpfloat (room->eyring_s[2], <, room->sabine_s[2]);
  assert_near (room->mid_s, 0.5 * (room->eyring_s[2] + room->eyring_s[3]), 1e-9);
  g_assert_cmpint (room->flutter_wall, ==, -1);
}

/* A talker in 50 m³ of 0.5 s, and a microphone on a stand so far straight ahead of the mouth */
static const char *
add_talker (LrPlan **plan,
            double   omni_share,
            double   away_m)
{
  const char *person = fixture_add (plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.0, 2.0), *id;
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *talker;

  fixture_set (plan, person, "facing-deg", 0.0);
  set_room (plan, "reverberation-s", 0.5);
  set_limit (plan, LR_LIMIT_VOICE, 60.0);
  id = fixture_add (plan, LR_ITEM_MICROPHONE, LR_MIC_STAND, 4.0, 3.0);
  study = lr_study_new (*plan);
  talker = lr_study_find_placed (study, person);
  fixture_text (plan, id, "aims-at", person);
  fixture_set (plan, id, "omni-share-pct", omni_share);
  fixture_set (plan, id, "tip-x-mm", talker->eyes_m.x + away_m);
  fixture_set (plan, id, "tip-y-mm", talker->eyes_m.y);
  fixture_set (plan, id, "tip-height-mm", talker->body.mouth_m);
  return id;
}

typedef struct
{
  const char *name;
  double      omni_share, away_m, over_room_db; /* expected */
} RatioCase;

/* 20 lg (0.570 sqrt 2 x distance factor / distance): the closed form with 0.057 sqrt (Q V / T) of Kuttruff, the talker's Q 2 */
static const RatioCase ratio_cases[] = {
  { "omni", 1.0, 0.5, 4.15 }, { "cardioid", 0.5, 0.5, 8.92 }, { "hypercardioid", 0.25, 0.5, 10.17 }, { "far-omni", 1.0, 2.0, -7.89 },
};

static void
test_ratio (gconstpointer data)
{
  const RatioCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *id = add_talker (&plan, c->omni_share, c->away_m);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrMicrophoneSound *microphone = lr_sound_find (lr_study_sound (study), id);

  g_assert_nonnull (microphone);
  g_assert_true (lr_study_sound (study)->room.is_measured);
  assert_near (microphone->distance_m, c->away_m, 0.002);
  assert_near (microphone->off_axis_rad, 0.0, 0.01);
  assert_near (microphone->direct_db, c->over_room_db, 0.12);
}

/* 60 dB(A) at 1 m, 66.02 at half of it, over a room of 38 through a hypercardioid: 34.04 dB (closed form) */
static void
test_over_noise (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *id = add_talker (&plan, 0.25, 0.5);
  g_autoptr (LrStudy) study = NULL;
  const LrMicrophoneSound *microphone;

  set_room (&plan, "background-db", 38.0);
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  assert_near (microphone->voice_db, 66.02, 0.05);
  assert_near (microphone->over_db, 34.04, 0.05);
  g_assert_cmpuint (microphone->noises->len, ==, 1);
  g_assert_true (isinf (lr_sound_noise (microphone, 0)->win_db));
}

/* A fridge that reads 40.0 at 1 m in this room has 38.95 at 3 m (Kuttruff's formula by hand). Of two alike each wins 3.01 dB; off, it is not
 * heard; what cannot be switched off stays */
static void
test_noises (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *id = add_talker (&plan, 1.0, 0.5), *one, *other;
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec3 capsule_m = lr_sound_find (lr_study_sound (study), id)->capsule_m;
  const LrMicrophoneSound *microphone;
  const LrItem *noise;
  double over_db;

  set_room (&plan, "background-db", 5.0);
  one = fixture_add (&plan, LR_ITEM_NOISE, 0, capsule_m.x + 3.0, capsule_m.y);
  fixture_set (&plan, one, "height-mm", capsule_m.z);
  fixture_set (&plan, one, "can-switch-off", 1.0);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  assert_near (lr_sound_noise (microphone, 0)->level_db, 38.95, 0.03);
  noise = lr_plan_find (plan, one);
  assert_near (noise->noise.level_db, 40.0, 1e-9);
  assert_near (lr_sound_level_at_db (lr_study_sound (study), &noise->noise, 1.0), 40.0, 1e-9);
  assert_near (lr_sound_level_at_db (lr_study_sound (study), &noise->noise, 2.0), 39.13, 0.03);
  over_db = microphone->over_db;
  assert_near (microphone->quiet_over_db, microphone->voice_db - 5.0, 0.01);

  other = fixture_add (&plan, LR_ITEM_NOISE, 0, capsule_m.x + 3.0, capsule_m.y);
  fixture_set (&plan, other, "height-mm", capsule_m.z);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  assert_near (microphone->over_db, over_db - 3.01, 0.02);
  assert_near (lr_sound_noise (microphone, 0)->win_db, 3.01, 0.02);
  assert_near (microphone->quiet_over_db, over_db, 0.02);

  fixture_set (&plan, one, "is-off", 1.0);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  assert_near (microphone->over_db, over_db, 0.02);
}

/* Mouth and capsule 0.40 m over a table and 0.50 m apart: 387 Hz, by the image source by hand; what comes back is less than the 0.530 of a
 * bare mirror, for the table is of wood and nobody speaks into it */
static void
test_comb (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *id = add_talker (&plan, 1.0, 0.5), *table = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 1.6, 2.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrMicrophoneSound *microphone = lr_sound_find (lr_study_sound (study), id);

  fixture_set (&plan, table, "height-mm", microphone->mouth_m.z - 0.40);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  g_assert_true (microphone->has_comb);
  g_assert_true (microphone->comb.item != NULL && g_str_equal (microphone->comb.item->item->id, table));
  assert_within (microphone->comb.comb.notch_hz, 387.0, 0.01);
  g_assert_cmpfloat (microphone->comb.comb.share, <, 0.530);
  g_assert_cmpfloat (microphone->comb.comb.share, >, 0.3);

  fixture_set (&plan, table, "cover", LR_COVER_SOFT);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  microphone = lr_sound_find (lr_study_sound (study), id);
  g_assert_true (!microphone->has_comb || microphone->comb.item == NULL);
}

/* A boom points at the chest, 0.25 m under the mouth: 0.383 m before it and 0.383 over it that is 13.8 degrees off the mouth (by hand).
 * Leaning brings it farther off. A lavalier hears from 0.2 m, under the chin */
static void
test_booms (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *stand = add_talker (&plan, 1.0, 0.5), *boom = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.0, 3.5);
  const char *worn = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 0.0, 0.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec3 mouth_m = lr_sound_find (lr_study_sound (study), stand)->mouth_m;
  const LrMicrophoneSound *hung, *lavalier;

  fixture_text (&plan, boom, "aims-at", "person-1");
  fixture_text (&plan, worn, "worn-by", "person-1");
  fixture_set (&plan, boom, "tip-x-mm", mouth_m.x + 0.383);
  fixture_set (&plan, boom, "tip-y-mm", mouth_m.y);
  fixture_set (&plan, boom, "tip-height-mm", mouth_m.z + 0.383);
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  hung = lr_sound_find (lr_study_sound (study), boom);
  lavalier = lr_sound_find (lr_study_sound (study), worn);
  assert_near (hung->off_axis_rad / LR_DEG, 13.8, 0.3);
  assert_near (hung->off_mouth_rad / LR_DEG, 45.0, 0.3);
  g_assert_cmpfloat (hung->lean_off_axis_rad, >, hung->off_axis_rad);
  g_assert_cmpfloat (lavalier->distance_m, >, 0.19);
  g_assert_cmpfloat (lavalier->distance_m, <, 0.25);
  g_assert_true (lr_sound_best (lr_study_sound (study), lavalier->talker, FALSE) != NULL);
  g_assert_null (lr_sound_find (lr_study_sound (study), "nothing"));
}

/* Without a room nothing is known, and a level falls as in the open: 30.46 dB at 3 m of 40 dB at 1 m (inverse square law) */
static void
test_no_room (void)
{
  static const LrNoise noise = { .level_db = 40.0 };
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = lr_study_new (plan);

  assert_near (lr_sound_level_at_db (lr_study_sound (study), &noise, 3.0), 30.458, 0.001);

  g_assert_false (lr_study_sound (study)->has_room);
  g_assert_cmpuint (lr_study_sound (study)->microphones->len, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sound/bare-room", test_bare_room);
  g_test_add_func ("/sound/crowded", test_crowded);
  g_test_add_func ("/sound/things", test_things);
  g_test_add_func ("/sound/soft-room", test_soft_room);
  add_rows ("/sound/ratio", ratio_cases, test_ratio);
  g_test_add_func ("/sound/over-noise", test_over_noise);
  g_test_add_func ("/sound/noises", test_noises);
  g_test_add_func ("/sound/comb", test_comb);
  g_test_add_func ("/sound/booms", test_booms);
  g_test_add_func ("/sound/no-room", test_no_room);
  return g_test_run ();
}
