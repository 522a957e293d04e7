/* test-placing.c - things come to a sensible place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things usually stand is common practice, no source; what is checked is that they stand free and inside, aim at the
 * subject, keep to their side of the line of action, and are far enough round for a cut (the 30-degree rule).
 */

#include "placing.h"

#include "plan_edit.h"
#include "plan_reader.h"
#include "remarks.h"

static LrPlan *
empty_room (double width_m,
            double depth_m)
{
  LrVec2 corners_m[] = { { 0.0, 0.0 }, { width_m, 0.0 }, { width_m, depth_m }, { 0.0, depth_m } };
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_set_corners (empty, corners_m, G_N_ELEMENTS (corners_m), &error);

  g_assert_no_error (error);
  return plan;
}

static LrPlan *
read_example (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "examples", "loft.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return plan;
}

/* Brings @name into *plan, which becomes the next one; (transfer full): its id */
static char *
bring (LrPlan     **plan,
       const char  *name)
{
  g_autoptr (LrStudy) study = lr_study_new (*plan);
  g_autoptr (GError) error = NULL;
  char *id = NULL;
  LrPlan *next = lr_placing_bring (study, name, NULL, NULL, &id, &error);

  g_test_message ("%s", name);
  g_assert_no_error (error);
  g_assert_nonnull (id);
  lr_plan_unref (*plan);
  *plan = next;
  return id;
}

/* First entry of the kit of that kind and, for lights, that job; (transfer full): its name */
static char *
kit_name (const LrPlan *plan,
          LrItemKind    kind,
          int           form)
{
  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (plan->kit, i);

      if (entry->item->kind == kind && (kind != LR_ITEM_MICROPHONE || entry->item->microphone.form == form)
          && (kind != LR_ITEM_LIGHT || entry->item->light.form == form))
        return g_strconcat ("kit:", entry->item->id, NULL);
    }
  g_assert_not_reached ();
}

static void
assert_no_clashes (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  g_assert_cmpuint (study->clashes->len, ==, 0);
}

/* A third of the frame above the eyes, or a tenth above the crown if that is less: common practice, no source. Who turns to
 * the interviewer afterwards moves the eyes a little. */
static void
assert_usual_framing (const LrStudy *study)
{
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);
      const LrBody *body = &camera->subject->body;
      double third = 1.0 / 3.0, tenth = 0.1 + (body->crown_m - body->eyes_m) / camera->field_h_m;

      g_assert_cmpfloat_with_epsilon (camera->eyes_down, fmin (third, tenth), 0.02);
    }
}

/* Subject 2 m from the short wall of a deep room, or a third of a shallow room's depth, facing into it */
static void
test_subject (void)
{
  static const struct { double width_m, depth_m, from_wall_m; } rooms[] = { { 8.0, 5.0, 2.0 }, { 4.0, 3.0, 1.4 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rooms); i++)
    {
      g_autoptr (LrPlan) plan = empty_room (rooms[i].width_m, rooms[i].depth_m);
      g_autofree char *id = bring (&plan, "room:person");
      const LrItem *subject = lr_plan_find (plan, id);
      double from_west_m = subject->at_m.x, from_east_m = rooms[i].width_m - subject->at_m.x;

      g_assert_cmpint (subject->person.role, ==, LR_ROLE_SUBJECT);
      g_assert_cmpfloat_with_epsilon (fmin (from_west_m, from_east_m), rooms[i].from_wall_m, 0.02);
      g_assert_cmpfloat (cos (subject->facing_rad) * (from_east_m - from_west_m), >, 0.0);
      assert_no_clashes (plan);
    }
}

/* In a small room, too, the second camera is a cut away from the first: the 30-degree rule */
static void
test_small_rooms (void)
{
  static const struct { double width_m, depth_m; } rooms[] = { { 6.0, 4.5 }, { 5.0, 4.0 }, { 4.5, 3.6 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rooms); i++)
    {
      g_autoptr (LrPlan) plan = empty_room (rooms[i].width_m, rooms[i].depth_m);
      g_autofree char *subject = bring (&plan, "room:person"), *interviewer = bring (&plan, "room:person");
      g_autofree char *camera = kit_name (plan, LR_ITEM_CAMERA, 0);
      g_autofree char *a = bring (&plan, camera), *b = bring (&plan, camera);
      g_autoptr (LrStudy) study = lr_study_new (plan);

      g_assert_cmpfloat (g_array_index (study->pairs, LrPairReading, 0).angle_rad, >=, 30.0 * LR_DEG);
      assert_usual_framing (study);
      assert_no_clashes (plan);
    }
}

/* Cameras come first: they aim at the subject as soon as there is one */
static void
test_cameras_first (void)
{
  g_autoptr (LrPlan) plan = empty_room (6.0, 4.5);
  g_autofree char *camera = kit_name (plan, LR_ITEM_CAMERA, 0);
  g_autofree char *a = bring (&plan, camera), *b = bring (&plan, camera);
  g_autofree char *subject = bring (&plan, "room:person"), *interviewer = bring (&plan, "room:person");
  g_autoptr (LrStudy) study = lr_study_new (plan);

  assert_usual_framing (study);
  g_assert_cmpstr (lr_plan_find (plan, a)->camera.aims_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, b)->camera.aims_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, interviewer)->person.looks_at, ==, subject);
}

/* A whole interview from nothing, one thing after another */
static void
test_interview (void)
{
  g_autoptr (LrPlan) plan = empty_room (7.2, 5.4);
  g_autofree char *subject = bring (&plan, "room:person"), *interviewer = bring (&plan, "room:person");
  g_autofree char *other = bring (&plan, "room:person");
  g_autofree char *camera = kit_name (plan, LR_ITEM_CAMERA, 0), *wide = kit_name (plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE);
  g_autofree char *boom = kit_name (plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM);
  g_autofree char *lavalier = kit_name (plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER);
  g_autofree char *a = bring (&plan, camera), *b = bring (&plan, camera), *key = bring (&plan, wide);
  g_autofree char *m1 = bring (&plan, boom), *m2 = bring (&plan, lavalier);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrCameraReading *reading_a = lr_study_find_camera (study, a), *reading_b = lr_study_find_camera (study, b);
  const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, 0);

  g_assert_cmpint (lr_plan_find (plan, interviewer)->person.role, ==, LR_ROLE_INTERVIEWER);
  g_assert_cmpint (lr_plan_find (plan, other)->person.role, ==, LR_ROLE_OTHER);
  g_assert_cmpstr (lr_plan_find (plan, subject)->person.looks_at, ==, interviewer);
  g_assert_cmpstr (lr_plan_find (plan, interviewer)->person.looks_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, a)->camera.aims_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, key)->light.aims_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, m1)->microphone.aims_at, ==, subject);
  g_assert_cmpstr (lr_plan_find (plan, m2)->microphone.worn_by, ==, subject);

  g_assert_cmpint (reading_a->side, ==, reading_b->side);
  g_assert_cmpfloat (pair->angle_rad, >=, 30.0 * LR_DEG);
  g_assert_cmpfloat (lr_plan_find (plan, m1)->microphone.tip_height_m, >, study->subject->body.crown_m);
  assert_no_clashes (plan);
}

/* In a furnished room everything of the kit and of any room finds a free place */
static void
test_furnished (void)
{
  g_autoptr (LrPlan) plan = read_example ();
  g_autoptr (LrPlan) start = lr_plan_ref (plan);
  gsize n;
  const LrRoomThing *things = lr_room_things (&n);
  g_autoptr (LrStudy) before = lr_study_new (plan);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *name = g_strconcat ("room:", things[i].word, NULL), *id = NULL;
      g_autoptr (LrPlan) next = lr_plan_ref (start);
      g_autoptr (LrStudy) study = NULL;

      id = bring (&next, name);
      study = lr_study_new (next);
      g_assert_cmpint (lr_plan_find (next, id)->kind, ==, things[i].kind);
      for (guint j = 0; j < study->clashes->len; j++)
        {
          const LrClash *clash = &g_array_index (study->clashes, LrClash, j);

          g_test_message ("%s and %s by %.3f m", clash->a->item->id, clash->b != NULL ? clash->b->item->id : "nothing", clash->depth_m);
        }
      g_assert_cmpuint (study->clashes->len, ==, before->clashes->len);
    }
}

static void
test_lens (void)
{
  g_autoptr (LrPlan) plan = read_example ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrItem *second = g_array_index (study->cameras, LrCameraReading, 1).item;
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;
  const LrKitEntry *lens = NULL;
  g_autofree char *name = NULL;
  g_autoptr (LrPlan) next = NULL;

  for (guint i = 0; i < plan->kit->len && lens == NULL; i++)
    if (((const LrKitEntry *) g_ptr_array_index (plan->kit, i))->item->kind == LR_ITEM_LENS)
      lens = g_ptr_array_index (plan->kit, i);
  name = g_strconcat ("kit:", lens->item->id, NULL);
  next = lr_placing_bring (study, name, NULL, second->id, &id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (id, ==, second->id);
  g_assert_cmpstr (lr_plan_find (next, id)->camera.lens, ==, lens->item->id);
  g_assert_cmpfloat (lr_plan_find (next, id)->camera.focal_m, ==, lens->item->lens.focal_min_m);
}

static void
test_refused (void)
{
  static const char *const names[] = { "kit:nothing", "room:nothing", "nothing", "" };
  g_autoptr (LrPlan) plan = empty_room (4.0, 3.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autofree char *lens = kit_name (plan, LR_ITEM_LENS, 0);
  g_autoptr (GError) error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_assert_null (lr_placing_bring (study, names[i], NULL, NULL, NULL, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
      g_clear_error (&error);
    }
  g_assert_null (lr_placing_bring (study, lens, NULL, NULL, NULL, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/placing/subject", test_subject);
  g_test_add_func ("/placing/interview", test_interview);
  g_test_add_func ("/placing/small-rooms", test_small_rooms);
  g_test_add_func ("/placing/cameras-first", test_cameras_first);
  g_test_add_func ("/placing/furnished", test_furnished);
  g_test_add_func ("/placing/lens", test_lens);
  g_test_add_func ("/placing/refused", test_refused);
  return g_test_run ();
}
