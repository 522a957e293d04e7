/* fixture.c - plans for the tests of study and judge
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "plan_reader.h"

static void
replace (LrPlan **plan,
         LrPlan  *next,
         GError  *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

LrPlan *
fixture_empty (void)
{
  return lr_plan_new_empty ();
}

LrPlan *
fixture_room (double width_m,
              double depth_m,
              double height_m)
{
  LrVec2 corners_m[] = { { 0.0, 0.0 }, { width_m, 0.0 }, { width_m, depth_m }, { 0.0, depth_m } };
  LrPlan *plan = lr_plan_new_empty ();
  GError *error = NULL;

  replace (&plan, lr_plan_set_corners (plan, corners_m, G_N_ELEMENTS (corners_m), &error), error);
  replace (&plan, lr_plan_set_room (plan, "height-mm", height_m, &error), error);
  return plan;
}

LrPlan *
fixture_example (const char *name)
{
  g_autofree char *file = g_strconcat (name, ".lookroom", NULL);
  g_autofree char *path = g_build_filename (LR_EXAMPLES_DIR, file, NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return plan;
}

const char *
fixture_add (LrPlan     **plan,
             LrItemKind   kind,
             int          form,
             double       x_m,
             double       y_m)
{
  g_autoptr (LrItem) item = lr_item_new_usual (kind, form, "new");
  g_autofree char *id = NULL;
  GError *error = NULL;

  replace (plan, lr_plan_add (*plan, item, lr_vec2 (x_m, y_m), 0.0, &id, &error), error);
  return g_intern_string (id);
}

void
fixture_set (LrPlan    **plan,
             const char *id,
             const char *key,
             double      value)
{
  LrChange change = { id, key, value };
  GError *error = NULL;

  replace (plan, lr_plan_change (*plan, &change, 1, &error), error);
}

void
fixture_text (LrPlan    **plan,
              const char *id,
              const char *key,
              const char *text)
{
  GError *error = NULL;

  replace (plan, lr_plan_change_text (*plan, id, key, text, &error), error);
}

void
fixture_lamp (LrPlan     **plan,
              const char  *id,
              double       candela,
              double       lobe,
              double       length_m,
              double       width_m)
{
  g_autoptr (GString) text = g_string_new ("IESNA:LM-63-2002\nTILT=NONE\n");
  GError *error = NULL;
  int last_deg = lobe < 0.0 ? 180 : 90;

  g_string_append_printf (text, "1 -1 1 %d 1 1 2 %.3f %.3f 0\n1 1 100\n", last_deg + 1, width_m, length_m);
  for (int v = 0; v <= last_deg; v++)
    g_string_append_printf (text, "%d ", v);
  g_string_append (text, "\n0\n");
  for (int v = 0; v <= last_deg; v++)
    g_string_append_printf (text, "%.4f\n", lobe < 0.0 ? candela : v == 90 ? 0.0 : candela * pow (cos (v * LR_DEG), lobe));
  replace (plan, lr_plan_set_lamp_file (*plan, id, "lamp.ies", text->str, text->len, &error), error);
}

void
fixture_move (LrPlan    **plan,
              const char *id,
              double      x_m,
              double      y_m)
{
  fixture_set (plan, id, "x-mm", x_m);
  fixture_set (plan, id, "y-mm", y_m);
}

static void
add_camera (LrPlan **plan,
            double   x_m,
            double   y_m,
            double   focal_m,
            double   f_number)
{
  const char *id = fixture_add (plan, LR_ITEM_CAMERA, 0, x_m, y_m);

  fixture_text (plan, id, "aims-at", WENNA);
  fixture_set (plan, id, "focal-mm", focal_m);
  fixture_set (plan, id, "f-number", f_number);
  fixture_set (plan, id, "iso", 400.0 * f_number * f_number / (2.8 * 2.8)); /* exposed alike */
  fixture_set (plan, id, "lens-height-mm", 1.2);
}

LrPlan *
fixture_interview (void)
{
  LrPlan *plan = fixture_room (8.0, 6.0, 2.7);

  g_assert_cmpstr (fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0, 3.0), ==, WENNA);
  g_assert_cmpstr (fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 5.4, 2.4), ==, INES);
  fixture_text (&plan, WENNA, "name", "Wenna");
  fixture_text (&plan, INES, "name", "Ines");
  fixture_text (&plan, WENNA, "looks-at", INES);
  fixture_text (&plan, INES, "looks-at", WENNA);
  fixture_set (&plan, WENNA, "eye-height-mm", 1.2);
  fixture_set (&plan, INES, "eye-height-mm", 1.2);
  add_camera (&plan, 5.6, 3.2, 0.05, 2.8);
  add_camera (&plan, 5.05, 4.75, 0.085, 5.6);
  fixture_set (&plan, CAMERA_A, "down-pct", 0.28);
  fixture_set (&plan, CAMERA_B, "down-pct", 0.285);
  return plan;
}

LrPlan *
fixture_face_to_face (double distance_m)
{
  LrPlan *plan = fixture_empty ();
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, distance_m + LR_EYES_AHEAD_M, 0.0);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 0.0);

  g_assert_cmpstr (camera, ==, CAMERA_A);
  fixture_set (&plan, person, "posture", LR_POSTURE_STANDING);
  fixture_set (&plan, person, "facing-deg", LR_PI);
  fixture_set (&plan, person, "eye-height-mm", 1.6);
  fixture_set (&plan, camera, "lens-height-mm", 1.6);
  fixture_set (&plan, camera, "sensor-height-mm", 0.024);
  fixture_set (&plan, camera, "down-pct", 0.5);
  fixture_text (&plan, camera, "aims-at", person);
  return plan;
}

void
fixture_lens (LrPlan    **plan,
              const char *camera,
              double      shortest_m,
              double      longest_m,
              double      converter)
{
  const struct { const char *key; double value; } rows[] = {
    { "focal-max-mm", 2.0 }, { "focal-min-mm", shortest_m }, { "focal-max-mm", longest_m }, { "f-number-min", 0.7 },
    { "converter", converter },
  };
  GError *error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    replace (plan, lr_plan_set_kit_number (*plan, "lens-50", rows[i].key, rows[i].value, &error), error);
  fixture_text (plan, camera, "lens", "lens-50");
}

const LrCameraReading *
fixture_camera (const LrStudy *study,
                const char    *id)
{
  const LrCameraReading *camera = lr_study_find_camera (study, id);

  g_assert_nonnull (camera);
  return camera;
}
