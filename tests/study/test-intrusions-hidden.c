/* test-intrusions-hidden.c - how far what is partly hidden reaches into a picture, and the ceiling
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Against rays through every place of a fine net over the frame.
 */

#include "frame_matrix.h"

typedef struct
{
  const char *name;
  double      focal_m, lens_height_m;
  LrVec3      low_m, high_m; /* of a box that hides some of the ceiling */
} CeilingCase;

static const CeilingCase ceiling_cases[] = {
  { "cupboards-along-the-far-wall", 0.014, 1.2, { 0.0, 0.05, 0.0 }, { 0.55, 5.95, 2.65 } },
  { "the-same-from-low-down", 0.014, 0.4, { 0.0, 0.05, 0.0 }, { 0.55, 5.95, 2.65 } },
  { "cupboards-along-half-of-it", 0.012, 0.4, { 0.0, 0.05, 0.0 }, { 0.55, 3.1, 2.66 } },
  { "a-tower-before-it", 0.012, 0.4, { 2.0, 3.6, 0.0 }, { 2.8, 4.4, 2.5 } },
  { "a-tower-at-the-edge", 0.014, 0.4, { 2.0, 4.6, 0.0 }, { 3.2, 5.9, 2.69 } },
};

/* Whether a ray from @from along @way meets the box before @to of its length. Source: slabs (Kay and Kajiya, SIGGRAPH 1986, from
 * memory) */
static gboolean
meets_box (LrVec3 low_m,
           LrVec3 high_m,
           LrVec3 from,
           LrVec3 way,
           double to)
{
  const double o[] = { from.x, from.y, from.z }, d[] = { way.x, way.y, way.z };
  const double low[] = { low_m.x, low_m.y, low_m.z }, high[] = { high_m.x, high_m.y, high_m.z };
  double enter = 0.0, leave = to;

  for (int i = 0; i < 3; i++)
    {
      double a = (low[i] - o[i]) / d[i], b = (high[i] - o[i]) / d[i];

      enter = fmax (enter, fmin (a, b));
      leave = fmin (leave, fmax (a, b));
    }

  return enter < leave;
}

/* The ray through a place in the frame, by the transposed rotation */
static LrVec3
ray_through (const LrCameraReading *camera,
             double                 across,
             double                 down)
{
  double image_m = camera->item->camera.focal_m * (1.0 + camera->magnification);
  double right = (across - 0.5) * camera->area.width_m / image_m, up = (0.5 - down) * camera->area.height_m / image_m;
  double cp = cos (camera->pan_rad), sp = sin (camera->pan_rad), ct = cos (camera->tilt_rad), st = sin (camera->tilt_rad);

  return lr_vec3 (ct * cp + right * sp - up * st * cp, ct * sp - right * cp - up * st * sp, st + up * ct);
}

/* Every place of a fine net over the frame, in the 8 m by 6 m room 2.7 m high */
static void
test_ceiling (gconstpointer data)
{
  enum { ACROSS = 800, DOWN = 450 };
  const CeilingCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 0.5 * (c->low_m.x + c->high_m.x), 0.5 * (c->low_m.y + c->high_m.y));
  g_autoptr (LrStudy) study = NULL;
  const LrIntrusion *ceiling = NULL;
  const LrCameraReading *camera;
  double reach = 0.0;
  int n = 0;

  fixture_set (&plan, id, "length-mm", c->high_m.x - c->low_m.x);
  fixture_set (&plan, id, "width-mm", c->high_m.y - c->low_m.y);
  fixture_set (&plan, id, "height-mm", c->high_m.z);
  fixture_set (&plan, CAMERA_A, "focal-mm", c->focal_m);
  fixture_set (&plan, CAMERA_A, "lens-height-mm", c->lens_height_m);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  for (guint i = 0; i < study->intrusions->len; i++)
    if (lr_study_intrusion (study, i)->camera == camera && lr_study_intrusion (study, i)->part == LR_INTRUDER_CEILING)
      ceiling = lr_study_intrusion (study, i);
  g_assert_nonnull (ceiling);

  for (int i = 0; i < ACROSS * DOWN; i++)
    {
      double down = (i / ACROSS + 0.5) / DOWN;
      LrVec3 way = ray_through (camera, (i % ACROSS + 0.5) / ACROSS, down);
      LrVec3 eye = camera->projection.eye_m;
      double t = (2.7 - eye.z) / way.z, x = eye.x + t * way.x, y = eye.y + t * way.y;

      if (!(t > 0.0) || x < 0.0 || x > 8.0 || y < 0.0 || y > 6.0 || meets_box (c->low_m, c->high_m, eye, way, t))
        continue;
      n++;
      reach = fmax (reach, down);
    }

  g_test_message ("reach %.4f, told %.4f; share %.4f, told %.4f", reach, ceiling->reach[LR_BORDER_TOP], (double) n / (ACROSS * DOWN), ceiling->share);
  assert_near (ceiling->reach[LR_BORDER_TOP], reach, 0.005);
  assert_near (ceiling->share, (double) n / (ACROSS * DOWN), 0.01);
  g_assert_true (ceiling->is_partly_hidden);
}

typedef struct
{
  const char *name;
  LrVec3      low_m, high_m; /* of a box that hides some of the cloth */
} HiddenCase;

static const HiddenCase hidden_cases[] = {
  { "its-foot", { 3.0, 3.3, 0.0 }, { 3.4, 4.6, 1.0 } },
  { "its-head", { 3.0, 3.3, 1.3 }, { 3.4, 4.6, 2.2 } },
  { "one-side", { 3.0, 3.3, 0.0 }, { 3.4, 3.62, 2.2 } },
  { "the-other-side-and-more", { 3.0, 3.62, 0.0 }, { 3.4, 4.6, 2.2 } },
  { "a-lower-corner", { 2.2, 3.5, 0.0 }, { 2.4, 4.2, 1.45 } },
};

/* A reflector's cloth .8 m wide and 1.8 m high, square to x, beside Wenna; a place of the frame shows it where its ray meets the
 * cloth and not the box before */
static void
test_hidden (gconstpointer data)
{
  enum { ACROSS = 800, DOWN = 450 };
  const HiddenCase *c = data;
  const LrVec3 low_m = { 1.49, 3.5, 0.0 }, high_m = { 1.51, 4.3, 1.8 };
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *cloth = fixture_add (&plan, LR_ITEM_PANEL, LR_PANEL_REFLECTOR, 1.5, 3.9);
  const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 0.5 * (c->low_m.x + c->high_m.x), 0.5 * (c->low_m.y + c->high_m.y));
  g_autoptr (LrStudy) study = NULL;
  const LrIntrusion *intrusion;
  const LrCameraReading *camera;
  Reach reach = { 0 };

  fixture_set (&plan, cloth, "width-mm", 0.8);
  fixture_set (&plan, cloth, "bottom-mm", 0.0);
  fixture_set (&plan, cloth, "height-mm", 1.8);
  fixture_set (&plan, cloth, "stand-radius-mm", 0.0);
  fixture_set (&plan, box, "length-mm", c->high_m.x - c->low_m.x);
  fixture_set (&plan, box, "width-mm", c->high_m.y - c->low_m.y);
  fixture_set (&plan, box, "height-mm", c->high_m.z);
  fixture_set (&plan, box, "bottom-mm", c->low_m.z);
  fixture_set (&plan, CAMERA_A, "focal-mm", 0.035);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  for (int i = 0; i < ACROSS * DOWN; i++)
    {
      LrVec2 at = { (i % ACROSS + 0.5) / ACROSS, (i / ACROSS + 0.5) / DOWN };
      LrVec3 eye = camera->projection.eye_m, way = ray_through (camera, at.x, at.y);

      if (meets_box (low_m, high_m, eye, way, 10.0) && !meets_box (c->low_m, c->high_m, eye, way, 10.0))
        {
          reach.left = fmax (reach.left, at.x);
          reach.right = fmax (reach.right, 1.0 - at.x);
          reach.top = fmax (reach.top, at.y);
          reach.bottom = fmax (reach.bottom, 1.0 - at.y);
        }
    }

  intrusion = find (study, CAMERA_A, cloth);
  g_assert_nonnull (intrusion);
  g_test_message ("seen %.3f %.3f %.3f %.3f, told %.3f %.3f %.3f %.3f", reach.left, reach.right, reach.top, reach.bottom,
                  intrusion->reach[LR_BORDER_LEFT], intrusion->reach[LR_BORDER_RIGHT], intrusion->reach[LR_BORDER_TOP],
                  intrusion->reach[LR_BORDER_BOTTOM]);
  g_assert_true (intrusion->is_partly_hidden);
  assert_near (intrusion->reach[LR_BORDER_LEFT], reach.left, 0.02);
  assert_near (intrusion->reach[LR_BORDER_RIGHT], reach.right, 0.02);
  assert_near (intrusion->reach[LR_BORDER_TOP], reach.top, 0.02);
  assert_near (intrusion->reach[LR_BORDER_BOTTOM], reach.bottom, 0.02);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/intrusions/ceiling", ceiling_cases, test_ceiling);
  add_rows ("/intrusions/hidden", hidden_cases, test_hidden);
  return g_test_run ();
}
