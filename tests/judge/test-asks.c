/* test-asks.c - what the place is asked to do, and what is told of sound
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"
#include "fixture.h"
#include "sound_switch.h"
#include "summary_sound.h"

#include <string.h>

static void
set_job (LrPlan    **plan,
         const char *key,
         const char *text)
{
  LrPlan *next = lr_plan_set_job (*plan, key, text, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
set_requests (LrPlan           **plan,
              const char *const *requests)
{
  LrPlan *next = lr_plan_set_requests (*plan, requests, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

/* Wenna with a lavalier, a fridge that hums and a clock that hardly counts, rolling from 10:00 to 11:30 */
static LrPlan *
noisy_plan (void)
{
  LrPlan *plan = fixture_interview ();
  const char *worn = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0);
  const char *fridge = fixture_add (&plan, LR_ITEM_NOISE, 0, 6.0, 5.5), *clock = fixture_add (&plan, LR_ITEM_NOISE, 0, 1.0, 5.5);

  fixture_text (&plan, worn, "worn-by", WENNA);
  fixture_text (&plan, fridge, "name", "fridge");
  fixture_set (&plan, fridge, "level-db", 44.0);
  fixture_set (&plan, fridge, "can-switch-off", 1.0);
  fixture_text (&plan, clock, "name", "clock");
  fixture_set (&plan, clock, "level-db", 28.0);
  fixture_set (&plan, clock, "can-switch-off", 1.0);
  set_job (&plan, "time-roll", "10:00");
  set_job (&plan, "time-wrap", "11:30");
  return plan;
}

/* One thing is asked for, the one that counts, ten minutes before the roll until the wrap, with what it wins */
static void
test_generated (void)
{
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GPtrArray) asks = lr_asks_new (study, LR_UNITS_METRIC);
  const LrMicrophoneSound *microphone = lr_sound_microphone (lr_study_sound (study), 0);
  g_autofree char *sentence = NULL, *figures = NULL;
  const LrAsk *ask;

  g_assert_cmpuint (asks->len, ==, 1);
  ask = g_ptr_array_index (asks, 0);
  g_assert_false (ask->is_own);
  g_assert_cmpstr (ask->id, ==, "noise-1");
  g_assert_cmpstr (ask->from, ==, "09:50");
  g_assert_cmpstr (ask->to, ==, "11:30");
  g_assert_true (g_str_has_prefix (ask->text, "Fridge off"));
  figures = g_strdup_printf ("≈\u00a0%.0f\u00a0dB over noise, not %.0f", microphone->over_db + lr_sound_noise (microphone, 0)->win_db,
                             microphone->over_db);
  g_assert_cmpstr (ask->reason, ==, figures);
  sentence = lr_ask_sentence (ask);
  g_assert_nonnull (strstr (sentence, "09:50 to 11:30"));
}

/* What the user asked for by the thing's name is not asked for again; it is given the reason, and stays as it was written */
static void
test_own (void)
{
  static const char *const requests[] = { "Keys at the desk.", "FRIDGE off from nine.", NULL };
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GPtrArray) asks = NULL;
  g_autofree char *first = NULL, *second = NULL;

  set_requests (&plan, requests);
  study = lr_study_new (plan);
  asks = lr_asks_new (study, LR_UNITS_METRIC);
  g_assert_cmpuint (asks->len, ==, 2);
  first = lr_ask_sentence (g_ptr_array_index (asks, 0));
  second = lr_ask_sentence (g_ptr_array_index (asks, 1));
  g_assert_cmpstr (first, ==, "Keys at the desk.");
  g_assert_true (g_str_has_prefix (second, "FRIDGE off from nine (≈"));
}

/* A name is found as a word: AC is not in "back"; a tag too */
static void
test_own_words (void)
{
  static const char *const requests[] = { "Leave the back door unlocked.", NULL };
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GPtrArray) asks = NULL;

  fixture_text (&plan, "noise-1", "name", "AC");
  set_requests (&plan, requests);
  study = lr_study_new (plan);
  asks = lr_asks_new (study, LR_UNITS_METRIC);
  g_assert_cmpuint (asks->len, ==, 2);
  g_assert_cmpstr (((LrAsk *) g_ptr_array_index (asks, 0))->reason, ==, "");
  g_assert_true (g_str_has_prefix (((LrAsk *) g_ptr_array_index (asks, 1))->text, "AC off"));
}

/* What the plan counts on being off is asked for, with what it would cost; a quiet room asks for nothing */
static void
test_planned_off (void)
{
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GPtrArray) asks = NULL;
  double with_db = NAN, without_db = NAN;

  fixture_set (&plan, "noise-1", "is-off", 1.0);
  study = lr_study_new (plan);
  asks = lr_asks_new (study, LR_UNITS_METRIC);
  g_assert_cmpuint (asks->len, ==, 1);
  g_assert_cmpstr (((LrAsk *) g_ptr_array_index (asks, 0))->id, ==, "noise-1");
  g_assert_true (lr_sound_over_with (study, lr_study_find_placed (study, "noise-1"), &with_db, &without_db));
  g_assert_cmpfloat (without_db - with_db, >, 5.0);
}

static void
test_nothing (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GPtrArray) asks = lr_asks_new (study, LR_UNITS_METRIC);

  g_assert_cmpuint (asks->len, ==, 0);
}

/* As few as will do: of 44, 28 and a room of 25 dB the fridge alone brings the voice over its limit */
static void
test_switch_off (void)
{
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrMicrophoneSound *microphone = lr_sound_microphone (lr_study_sound (study), 0);
  g_autofree gboolean *few = lr_sound_switch_off (microphone, 30.0), *all = lr_sound_switch_off (microphone, 80.0);
  g_autofree gboolean *none = lr_sound_switch_off (microphone, 10.0);

  g_assert_true (few[0] && !few[1] && !few[2]);
  g_assert_true (all[0] && all[1] && !all[2]);
  g_assert_false (none[0] || none[1] || none[2]);
}

/* Six alike, of which each by itself wins less than a decibel (10 lg (6/5) is 0.8): together they win 10 lg 6 and more, so they are switched off */
static void
test_switch_off_alike (void)
{
  g_autoptr (LrPlan) plan = noisy_plan ();
  g_autoptr (LrStudy) study = NULL;
  g_autofree gboolean *all = NULL;
  const LrMicrophoneSound *microphone;

  fixture_set (&plan, "noise-1", "level-db", 40.0);
  fixture_set (&plan, "noise-2", "is-off", 1.0);
  for (guint i = 0; i < 5; i++)
    {
      const char *id = fixture_add (&plan, LR_ITEM_NOISE, 0, 6.0, 5.5);

      fixture_set (&plan, id, "level-db", 40.0);
      fixture_set (&plan, id, "can-switch-off", 1.0);
    }
  study = lr_study_new (plan);
  microphone = lr_sound_microphone (lr_study_sound (study), 0);
  all = lr_sound_switch_off (microphone, microphone->over_db + 10.0 * log10 (6.0));
  for (guint i = 0; i < 6; i++)
    g_assert_true (all[i] || lr_sound_noise (microphone, i)->noise == NULL);
  g_assert_cmpfloat (lr_sound_over_without (microphone, all), >, microphone->over_db + 6.0);
}

/* 7.16 m² bring 50 m³ from 0.9 to 0.5 s (0.161 V (1 / T2 - 1 / T1), by hand); drapes of 0.635 over walls of 0.03 take 11.8 m² */
static void
test_blankets (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5), measured = lr_plan_set_room (plan, "reverberation-s", 0.9, NULL);
  g_autoptr (LrStudy) study = lr_study_new (measured);
  double area_m2 = NAN;

  g_assert_true (lr_sound_blankets_m2 (study, &lr_study_sound (study)->room, 0.5, &area_m2));
  assert_within (area_m2, 7.16 / (0.635 - 0.03), 0.005);
  g_assert_false (lr_sound_blankets_m2 (study, &lr_study_sound (study)->room, 1.0, &area_m2));
}

static void
check_text (const char *text,
            const char *part)
{
  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, part));
  g_assert_null (strstr (text, "nan"));
  g_assert_null (strstr (text, "inf"));
}

/* What limits the sound, and what each noise costs, stands in the Details; also with nothing but the room to hear, and by Eyring */
static void
test_summaries (void)
{
  g_autoptr (LrPlan) plan = noisy_plan (), soft = NULL;
  g_autoptr (LrStudy) study = lr_study_new (plan), alone = NULL;
  g_autofree char *microphone = lr_microphone_sound_summary (study, lr_study_find_placed (study, "microphone-1"), LR_UNITS_METRIC);
  g_autofree char *noise = lr_noise_sound_summary (study, lr_study_find_placed (study, "noise-1"));
  g_autofree char *room = lr_room_sound_summary (study, LR_UNITS_METRIC), *voice = lr_room_voice_summary (study), *quiet = NULL, *off = NULL;

  check_text (microphone, "Noise limits it, most of it from: fridge.");
  check_text (microphone, "With all off that can be");
  check_text (noise, "hears it at");
  check_text (room, "By Sabine");
  check_text (voice, "with what is asked for off");

  fixture_set (&plan, "noise-1", "is-off", 1.0);
  fixture_set (&plan, "noise-2", "is-off", 1.0);
  soft = lr_plan_set_room (plan, "walls.absorption-500-hz", 0.9, NULL);
  alone = lr_study_new (soft);
  quiet = lr_microphone_sound_summary (alone, lr_study_find_placed (alone, "microphone-1"), LR_UNITS_IMPERIAL);
  off = lr_noise_sound_summary (alone, lr_study_find_placed (alone, "noise-1"));
  check_text (quiet, "over noise");
  check_text (off, "as the plan counts on");
  g_free (room);
  room = lr_room_sound_summary (alone, LR_UNITS_IMPERIAL);
  check_text (room, "By Eyring");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/asks/generated", test_generated);
  g_test_add_func ("/asks/own", test_own);
  g_test_add_func ("/asks/planned-off", test_planned_off);
  g_test_add_func ("/asks/nothing", test_nothing);
  g_test_add_func ("/asks/switch-off", test_switch_off);
  g_test_add_func ("/asks/switch-off-alike", test_switch_off_alike);
  g_test_add_func ("/asks/own-words", test_own_words);
  g_test_add_func ("/asks/blankets", test_blankets);
  g_test_add_func ("/asks/summaries", test_summaries);
  return g_test_run ();
}
