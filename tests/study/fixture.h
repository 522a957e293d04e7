/* fixture.h - plans for the tests of study and judge
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_edit.h"
#include "study.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon (a, b, tolerance)
/* Relative: |a - b| < share |b| */
#define assert_within(a, b, share) g_assert_cmpfloat_with_epsilon (a, b, (share) * fabs (b))

/* One test per row of a table whose rows begin with a name */
#define add_rows(path, rows, func)                                                        \
  G_STMT_START                                                                            \
    {                                                                                     \
      for (size_t add_row = 0; add_row < G_N_ELEMENTS (rows); add_row++)                  \
        {                                                                                 \
          g_autofree char *row_path = g_strdup_printf ("%s/%s", path, rows[add_row].name); \
                                                                                          \
          g_test_add_data_func (row_path, &rows[add_row], func);                          \
        }                                                                                 \
    }                                                                                     \
  G_STMT_END

/* All edits replace *plan; a refused one fails the test */
LrPlan     *fixture_empty (void);
LrPlan     *fixture_room  (double width_m, double depth_m, double height_m); /* corner at 0, 0 */
LrPlan     *fixture_example (const char *name);                             /* "loft": the file of the examples */
const char *fixture_add   (LrPlan **plan, LrItemKind kind, int form, double x_m, double y_m); /* its id */
void        fixture_set   (LrPlan **plan, const char *id, const char *key, double value);
void        fixture_text  (LrPlan **plan, const char *id, const char *key, const char *text);
/* A light's photometric file of LM-63: @candela cos^@lobe to its sides, the same all round with a lobe < 0; its size, 0: none */
void        fixture_lamp  (LrPlan **plan, const char *id, double candela, double lobe, double length_m, double width_m);
void        fixture_move  (LrPlan **plan, const char *id, double x_m, double y_m);

/* An 8 m by 6 m room, 2.7 m high, in which nothing is wrong: Wenna at (3, 3), seated, looks at Ines at (5.4, 2.4); camera A
 * at (5.6, 3.2), 50 mm, camera B at (5.05, 4.75), 85 mm, both aim at Wenna's eyes, which are level with Ines's and the lenses */
LrPlan     *fixture_interview (void);

/* One camera at (0, 0), 36 mm by 24 mm, that looks along +x at a standing person, eyes level with the lens and @distance_m from
 * the sensor plane, in the middle of the frame: the distance is along the axis */
LrPlan     *fixture_face_to_face (double distance_m);
/* The kit's 50 mm becomes a lens of this range, with a converter behind it, and is put on the camera */
void        fixture_lens (LrPlan **plan, const char *camera, double shortest_m, double longest_m, double converter);

#define WENNA "person-1"
#define INES "person-2"
#define CAMERA_A "camera-1"
#define CAMERA_B "camera-2"

const LrCameraReading *fixture_camera (const LrStudy *study, const char *id);
