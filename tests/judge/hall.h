/* hall.h - a hall for the tests of reframing: one camera before one person
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "fixture.h"
#include "reframe.h"

/* Of a place, to whole millimetres, at the distances of these tests */
#define SHARE 0.002

/* A camera at (1, 4), @distance_m of its sensor plane from the eyes of a person who faces it in a hall; their eyes level */
static inline LrPlan *
make_hall (double      distance_m,
           LrPosture   posture,
           const char *lens,
           double      focal_m)
{
  LrPlan *plan = fixture_room (20.0, 8.0, 3.0);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.0 + distance_m + LR_EYES_AHEAD_M, 4.0);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 1.0, 4.0);
  double eyes_m;

  fixture_set (&plan, person, "posture", posture);
  fixture_set (&plan, person, "facing-deg", LR_PI);
  fixture_text (&plan, camera, "aims-at", person);
  fixture_text (&plan, camera, "lens", lens);
  fixture_set (&plan, camera, "focal-mm", focal_m);
  fixture_set (&plan, camera, "down-pct", 0.5);
  {
    g_autoptr (LrStudy) study = lr_study_new (plan);

    eyes_m = study->subject->eyes_m.z;
  }
  fixture_set (&plan, camera, "lens-height-mm", eyes_m);
  return plan;
}

/* A zoom takes the place of the 50 mm lens */
static inline void
make_zoom (LrPlan **plan,
           double   min_m,
           double   max_m)
{
  LrKitEntry *entry = (LrKitEntry *) lr_plan_find_kit (*plan, "lens-50"); /* nobody else holds the plan yet */
  LrItem *item = (LrItem *) entry->item;

  item->lens.focal_min_m = min_m;
  item->lens.focal_max_m = max_m;
}

static inline LrStudy *
study_of (const LrReframe *reframe,
          const LrPlan    *plan)
{
  GError *error = NULL;
  g_autoptr (LrPlan) next = lr_reframe_apply (reframe, plan, &error);

  g_assert_no_error (error);
  return lr_study_new (next);
}

static inline const LrCameraReading *
first_camera (const LrStudy *study)
{
  return &g_array_index (study->cameras, LrCameraReading, 0);
}
