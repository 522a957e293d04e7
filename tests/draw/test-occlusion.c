/* test-occlusion.c - what hides what in a viewfinder's picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two pictures by the same camera, without a thing and with it: where the thing is behind someone, not a pixel of the person
 * changes; where it is in front, it does.
 */

#include "config.h"

#include "picture.h"

/* A box put at a place: what is drawn at the subject's chest and beside it tells what hides what */
typedef struct
{
  const char *name;
  double      x_m, y_m;
  gboolean    hides_chest; /* seen from camera A */
} Occluder;

static const Occluder occluders[] = {
  { "before", 4.3, 3.10, TRUE },
  { "behind", 1.2, 2.86, FALSE },
  { "just-before", 3.95, 3.07, TRUE },
  { "just-behind", 2.45, 2.96, FALSE },
};

static void
test_occlusion (gconstpointer data)
{
  const Occluder *c = data;
  g_autoptr (LrPlan) bare = new_portrait ();
  g_autoptr (LrPlan) with = lr_plan_ref (bare);
  const char *box = fixture_add (&with, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, c->x_m, c->y_m);
  g_autoptr (LrStudy) study = NULL;
  LrFramePoint chest, beside;
  Picture a, b;

  fixture_set (&with, box, "length-mm", 0.2);
  fixture_set (&with, box, "width-mm", 1.2);
  fixture_set (&with, box, "height-mm", 2.0);
  fixture_set (&with, box, "reflectance-pct", 0.9);
  study = lr_study_new (bare);
  chest = place (bare, CAMERA_A, lr_vec3 (3.10, 2.98, study->subject->body.chest_m));
  beside = place (bare, CAMERA_A, lr_vec3 (3.0, 3.33, study->subject->body.chest_m));

  a = draw (bare, CAMERA_A);
  b = draw (with, CAMERA_A);
  if (c->hides_chest)
    g_assert_cmphex (pixel (&a, chest.across, chest.down), !=, pixel (&b, chest.across, chest.down));
  else
    g_assert_cmphex (pixel (&a, chest.across, chest.down), ==, pixel (&b, chest.across, chest.down));
  /* Beside her the box is seen either way */
  g_assert_cmphex (pixel (&a, beside.across, beside.down), !=, pixel (&b, beside.across, beside.down));

  free_picture (&a);
  free_picture (&b);
}

/* A light on its stand before the wall: behind her, or between her and the lens */
typedef struct
{
  const char *name;
  LrPosture   posture;
  int         form;
  double      x_m, y_m, lamp_m;
  gboolean    is_before;
  double      seen_m[3]; /* a place on the light or the stand that shows beside or over her */
} StandCase;

static const StandCase stands[] = {
  { "pole-behind-chest", LR_POSTURE_SEATED, LR_LIGHT_PANEL, 1.5, 2.88, 2.4, FALSE, { 1.5, 2.88, 1.62 } },
  { "wide-behind-head", LR_POSTURE_SEATED, LR_LIGHT_WIDE, 1.2, 2.86, 1.35, FALSE, { 1.2, 2.86, 1.72 } },
  { "close-behind", LR_POSTURE_SEATED, LR_LIGHT_PANEL, 2.3, 2.96, 1.60, FALSE, { 2.3, 2.96, 1.60 } },
  { "at-the-wall", LR_POSTURE_SEATED, LR_LIGHT_WIDE, 0.6, 2.81, 1.30, FALSE, { 0.6, 2.81, 1.72 } },
  { "behind-standing", LR_POSTURE_STANDING, LR_LIGHT_WIDE, 1.2, 2.86, 1.75, FALSE, { 1.2, 2.86, 2.14 } },
  { "before", LR_POSTURE_SEATED, LR_LIGHT_WIDE, 4.2, 3.09, 1.20, TRUE, { 4.2, 3.09, 1.30 } },
};

/* Forehead, cheek, mouth, breast and both shoulders: a hand's breadth and more inside her outline */
static guint
places_on_her (const LrStudy *study,
               LrVec3        *at_m)
{
  const LrPlaced *her = study->subject;
  const double up_m[] = { 0.05, -0.04, -0.09 };
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (up_m); i++)
    at_m[n++] = lr_vec3_add (her->eyes_m, lr_vec3 (-0.03, 0.0, up_m[i]));
  for (int i = -1; i <= 1; i++)
    at_m[n++] = lr_vec3 (her->at_m.x, her->at_m.y + 0.11 * i, her->body.chest_m);

  return n;
}

static void
test_stand (gconstpointer data)
{
  const StandCase *c = data;
  g_autoptr (LrPlan) bare = new_portrait ();
  g_autoptr (LrPlan) with = NULL;
  g_autoptr (LrStudy) study = NULL;
  const char *light;
  LrVec3 at_m[6];
  LrFramePoint seen;
  guint n, n_changed = 0;
  Picture a, b;

  fixture_set (&bare, WENNA, "posture", c->posture);
  if (c->posture == LR_POSTURE_STANDING)
    {
      fixture_set (&bare, WENNA, "eye-height-mm", 1.6);
      fixture_set (&bare, CAMERA_A, "lens-height-mm", 1.6);
    }
  with = lr_plan_ref (bare);
  light = fixture_add (&with, LR_ITEM_LIGHT, c->form, c->x_m, c->y_m);
  fixture_set (&with, light, "lamp-height-mm", c->lamp_m);
  fixture_set (&with, light, "dim-pct", 0.0); /* it must not change the light in the picture */

  study = lr_study_new (bare);
  n = places_on_her (study, at_m);
  a = draw (bare, CAMERA_A);
  b = draw (with, CAMERA_A);
  for (guint i = 0; i < n; i++)
    {
      LrFramePoint at = place (bare, CAMERA_A, at_m[i]);

      n_changed += pixel (&a, at.across, at.down) != pixel (&b, at.across, at.down);
    }
  if (c->is_before)
    g_assert_cmpuint (n_changed, >=, 3);
  else
    g_assert_cmpuint (n_changed, ==, 0);

  seen = place (bare, CAMERA_A, lr_vec3 (c->seen_m[0], c->seen_m[1], c->seen_m[2]));
  g_assert_cmpint (abs (luma (pixel (&b, seen.across, seen.down)) - luma (pixel (&a, seen.across, seen.down))), >, 12);
  free_picture (&a);
  free_picture (&b);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/occlusion/box", occluders, test_occlusion);
  add_rows ("/occlusion/stand", stands, test_stand);

  return g_test_run ();
}
