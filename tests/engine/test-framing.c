/* test-framing.c - how a frame cuts a person
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shot sizes are common practice without a standard: the names of the cuts are those on which
 * Mascelli (The Five C's of Cinematography), Thompson & Bowen (Grammar of the Shot) and Millerson &
 * Owens (Television Production) agree, cited from memory; the frame heights follow by hand from a
 * headroom of a tenth and eyes a third down.
 */

#include "framing.h"

#include "check.h"
#include "optics.h"

static LrBody
body_of (double stature_m,
         bool   is_seated,
         double seat_height_m)
{
  LrBodyInput input = { stature_m, is_seated, seat_height_m, 0.0 };
  LrBody body;

  g_assert_true (lr_body (&input, &body));
  return body;
}

typedef struct
{
  const char *name;
  LrShot      shot;                                     /* in */
  double      height, height_m;                         /* expected: over stature, at 1.70 m */
  double      headroom, eyes_down;                      /* shares; NAN = not given */
} ShotCase;

static const ShotCase shot_cases[] = {
  { "extreme-close-up", LR_SHOT_EXTREME_CLOSE_UP, 0.065, 0.1105, NAN, 1.0 / 3.0 }, /* the middle of 0.05 to 0.08 */
  { "big-close-up", LR_SHOT_BIG_CLOSE_UP, 0.1065, 0.181, -0.27, 1.0 / 3.0 },
  { "close-up", LR_SHOT_CLOSE_UP, 0.204, 0.3468, 0.02, 1.0 / 3.0 },
  { "medium-close-up", LR_SHOT_MEDIUM_CLOSE_UP, 0.311, 0.5289, 0.10, 0.306 },
  { "medium", LR_SHOT_MEDIUM, 0.444, 0.756, 0.10, 0.244 },
  { "medium-long", LR_SHOT_MEDIUM_LONG, 0.656, 1.114, 0.10, 0.20 },
  { "three-quarter", LR_SHOT_THREE_QUARTER, 0.833, 1.417, 0.10, 0.177 }, /* 0.035 H under the joint at 0.285 */
  { "full", LR_SHOT_FULL, 1.176, 2.000, 0.10, NAN },
  { "long", LR_SHOT_LONG, 1.5, 2.55, NAN, NAN },
};

static void
test_shot (gconstpointer data)
{
  const ShotCase *c = data;
  LrBody body = body_of (1.70, false, 0.0);
  double height_m = NAN, eyes_down = NAN, top_m;
  LrFraming framing;

  g_test_message ("common practice; F = min ((1 - b) H / 0.9, 1.5 (0.936 - b) H) by hand");
  g_assert_true (lr_shot_frame_height_m (c->shot, &body, &height_m, &eyes_down));
  assert_within (height_m / 1.70, c->height, 5e-3);
  assert_within (height_m, c->height_m, 5e-3);

  top_m = body.eyes_m + eyes_down * height_m;
  g_assert_true (lr_framing (&body, top_m, top_m - height_m, &framing));
  g_assert_cmpint (framing.shot, ==, c->shot);
  if (!isnan (c->headroom))
    assert_near (framing.headroom, c->headroom, 5e-3);
  if (!isnan (c->eyes_down))
    assert_near (framing.eyes_down, c->eyes_down, 5e-3);
  assert_near (framing.eyes_down, eyes_down, 1e-12);
}

typedef struct
{
  const char *name;
  double      bottom; /* in: over stature, for a frame with a tenth of headroom */
  LrShot      shot;
  const char *cut;
} CutCase;

static const CutCase cut_cases[] = {
  { "chin", 0.865, LR_SHOT_BIG_CLOSE_UP, "chin" },
  { "neck", 0.834, LR_SHOT_BIG_CLOSE_UP, "half-way from chin to shoulders, above" },
  { "shoulder-line", 0.831, LR_SHOT_CLOSE_UP, "half-way from chin to shoulders, below" },
  { "shoulders", 0.80, LR_SHOT_CLOSE_UP, "under the shoulders" },
  { "armpits", 0.75, LR_SHOT_MEDIUM_CLOSE_UP, "armpits" },
  { "chest", 0.72, LR_SHOT_MEDIUM_CLOSE_UP, "chest" },
  { "waist", 0.60, LR_SHOT_MEDIUM, "waist" },
  { "hip", 0.53, LR_SHOT_MEDIUM, "hip: some texts end the medium shot here" },
  { "mid-thigh", 0.41, LR_SHOT_MEDIUM_LONG, "mid-thigh, the cowboy shot" },
  { "under-the-knees", 0.25, LR_SHOT_THREE_QUARTER, "just under the knees" },
  { "knees", 0.285, LR_SHOT_THREE_QUARTER, "knees" },
  { "shins", 0.10, LR_SHOT_FULL, "nearer to the floor than to the knees" },
  { "feet", -0.05, LR_SHOT_FULL, "under the feet" },
  { "room", -0.60, LR_SHOT_LONG, "a figure less than two thirds of the height" },
};

static void
test_cut (gconstpointer data)
{
  const CutCase *c = data;
  LrBody body = body_of (1.70, false, 0.0);
  double height_m = (1.0 - c->bottom) * 1.70 / 0.9;
  LrFraming framing;

  g_test_message ("common practice: %s", c->cut);
  g_assert_true (lr_framing (&body, c->bottom * 1.70 + height_m, c->bottom * 1.70, &framing));
  g_assert_cmpint (framing.shot, ==, c->shot);
  assert_near (framing.headroom, 0.1, 1e-12);
}

/* Extreme close-up: 0.05 to 0.08 of stature high */
static void
test_extreme (void)
{
  LrBody body = body_of (1.70, false, 0.0);
  LrFraming framing;

  g_test_message ("common practice: brow to mouth, 0.09 m to 0.14 m high at 1.70 m");
  g_assert_true (lr_framing (&body, body.eyes_m + 0.04, body.mouth_m - 0.005, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_EXTREME_CLOSE_UP);
  g_assert_true (lr_framing (&body, body.eyes_m + 0.04, body.eyes_m - 0.10, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_EXTREME_CLOSE_UP);
  g_assert_true (lr_framing (&body, body.eyes_m + 0.06, body.eyes_m - 0.12, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_BIG_CLOSE_UP);
}

/* Hands in the lap, 0.2 m high: the edge cuts at the thighs, but that makes no cowboy shot */
static void
test_without_eyes (void)
{
  LrBody body = body_of (1.70, false, 0.0);
  LrFraming framing;

  g_test_message ("no source: where the eyes are not in the frame its height decides");
  g_assert_true (lr_framing (&body, 0.95, 0.60, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_CLOSE_UP);
  g_assert_cmpfloat (framing.eyes_down, <, 0.0);
  g_assert_cmpfloat (framing.headroom, <, 0.0);
  g_assert_true (lr_framing (&body, 5.0, 1.65, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_LONG);
  g_assert_cmpfloat (framing.eyes_down, >, 1.0);
}

typedef struct
{
  const char *name;
  double      image_height_mm, focal_mm; /* in */
  double      subject_m, rough_m;        /* expected: from the lens, and F f / h' */
} DistanceCase;

static const DistanceCase distance_cases[] = {
  { "full-frame-50", 20.25, 50.0, 1.356, 1.306 },
  { "full-frame-85", 20.25, 85.0, 2.305, 2.220 },
  { "four-thirds-25", 9.73, 25.0, 1.384, 1.359 },
};

/* Where the camera stands for a medium close-up of someone 1.70 m tall */
static void
test_distance (gconstpointer data)
{
  const DistanceCase *c = data;
  LrBody body = body_of (1.70, false, 0.0);
  double height_m, eyes_down, distance_m;
  LrFocus focus;

  g_test_message ("thin lens, s = f (1 + m) / m, by hand; the rough F f / h' is a focal length short");
  g_assert_true (lr_shot_frame_height_m (LR_SHOT_MEDIUM_CLOSE_UP, &body, &height_m, &eyes_down));
  assert_within (height_m * 16.0 / 9.0, 0.940, 5e-3);
  g_assert_true (lr_distance_for_field_m (c->image_height_mm * 1e-3, height_m, c->focal_mm * 1e-3, &distance_m));
  g_assert_true (lr_focus_at (c->focal_mm * 1e-3, distance_m, &focus));
  assert_within (focus.subject_m, c->subject_m, 2e-3);
  assert_within (focus.subject_m - c->focal_mm * 1e-3, c->rough_m, 2e-3);
}

/* Everything above the hip keeps its distance from the crown; the seated figure is seat and
 * sitting height tall */
static void
test_seated (void)
{
  LrBody standing = body_of (1.626, false, 0.0), seated = body_of (1.626, true, 0.45);
  double stand_m, sit_m, eyes_down;

  g_test_message ("ANSUR II: a woman's median sitting height 857 mm; on 450 mm the figure is 1.31 m tall");
  for (LrShot shot = LR_SHOT_EXTREME_CLOSE_UP; shot <= LR_SHOT_MEDIUM; shot++)
    {
      g_assert_true (lr_shot_frame_height_m (shot, &standing, &stand_m, &eyes_down));
      g_assert_true (lr_shot_frame_height_m (shot, &seated, &sit_m, &eyes_down));
      assert_within (sit_m, stand_m, 1e-12);
    }

  g_assert_true (lr_shot_frame_height_m (LR_SHOT_FULL, &seated, &sit_m, &eyes_down));
  assert_within (0.85 * sit_m, 1.31, 1e-2);
  g_assert_true (lr_shot_frame_height_m (LR_SHOT_LONG, &seated, &sit_m, &eyes_down));
  assert_within (sit_m * 2.0 / 3.0, 1.31, 1e-2);
}

/* The seated hip is 0.47 H under the crown, as a standing one, the seat 0.053 H under it: half-way is 0.4965 H */
static void
test_seated_hip (void)
{
  LrBody body = body_of (1.70, true, 0.45);
  LrFraming framing;

  g_test_message ("Drillis & Contini 1966 in Winter, figure 4.1: hip 0.530; some texts end the medium shot there");
  g_assert_true (lr_framing (&body, body.crown_m + 0.1, body.crown_m - 0.490 * 1.70, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_MEDIUM);
  g_assert_true (lr_framing (&body, body.crown_m + 0.1, body.crown_m - 0.503 * 1.70, &framing));
  g_assert_cmpint (framing.shot, ==, LR_SHOT_MEDIUM_LONG);
}

/* A long shot has as much above the figure as below, a seated three-quarter shot cuts half-way up the seat */
static void
test_wide (void)
{
  LrBody body = body_of (1.70, true, 0.48);
  double height_m, eyes_down, top_m;

  g_test_message ("no source: a rule of ours");
  g_assert_true (lr_shot_frame_height_m (LR_SHOT_LONG, &body, &height_m, &eyes_down));
  top_m = body.eyes_m + eyes_down * height_m;
  assert_near (top_m - body.crown_m, height_m - top_m, 1e-12);
  g_assert_true (lr_shot_frame_height_m (LR_SHOT_THREE_QUARTER, &body, &height_m, &eyes_down));
  top_m = body.eyes_m + eyes_down * height_m;
  assert_near (top_m - height_m, 0.24, 1e-12);
}

/* Whoever it is, the frame made for a shot is named so, and wider names have higher frames */
static void
test_round_trip (void)
{
  for (int i = 0; i < 500; i++)
    {
      LrBody body = body_of (g_test_rand_double_range (1.0, 2.2), i % 2 == 0, g_test_rand_double_range (0.3, 0.8));
      double before_m = 0.0;

      for (LrShot shot = 0; shot < LR_N_SHOTS; shot++)
        {
          double height_m, eyes_down, top_m;
          LrFraming framing;

          g_assert_true (lr_shot_frame_height_m (shot, &body, &height_m, &eyes_down));
          top_m = body.eyes_m + eyes_down * height_m;
          g_assert_true (lr_framing (&body, top_m, top_m - height_m * (1.0 + 1e-9), &framing));
          g_assert_cmpint (framing.shot, ==, shot);
          g_assert_cmpfloat (height_m, >, before_m);
          before_m = height_m;
        }
    }
}

/* As the lower edge sinks under a fixed upper one the shot only gets wider */
static void
test_monotone (void)
{
  for (int is_seated = 0; is_seated < 2; is_seated++)
    {
      LrBody body = body_of (1.75, is_seated, 0.45);
      LrShot before = LR_SHOT_EXTREME_CLOSE_UP;

      for (double bottom_m = body.mouth_m; bottom_m > -3.0; bottom_m -= 0.001)
        {
          LrFraming framing;

          g_assert_true (lr_framing (&body, body.crown_m, bottom_m, &framing));
          g_assert_cmpint (framing.shot, >=, before);
          before = framing.shot;
        }
      g_assert_cmpint (before, ==, LR_SHOT_LONG);
    }
}

typedef struct
{
  const char *name;
  bool        is_seated;               /* in: 1.70 m tall, on a seat of 0.45 m */
  double      aspect;
  double      bottom, height;          /* over stature, bottom counted from a standing floor below the crown */
  LrJoint     joint;                   /* expected; LR_N_JOINTS: none nearer than a head */
  double      above;                   /* over stature */
  const char *source;
} JointCase;

#define WINTER "Drillis & Contini 1966 in Winter, figure 4.1: "

/* Seen level from so far that the camera is a ruler */
static const JointCase joint_cases[] = {
  { "at-the-elbow", false, 16.0 / 9.0, 0.630, 0.41, LR_JOINT_ELBOW, 0.0, WINTER "elbow 0.630 (from memory)" },
  { "waist", false, 16.0 / 9.0, 0.60, 0.444, LR_JOINT_ELBOW, 0.03, WINTER "elbow 0.630, and the waist's 0.60" },
  { "seated-waist", true, 16.0 / 9.0, 0.60, 0.444, LR_JOINT_ELBOW, 0.032, WINTER "shoulder 0.818, upper arm 0.186" },
  { "arms-beside-the-frame", false, 9.0 / 16.0, 0.630, 0.41, LR_JOINT_NECK, 0.214,
    WINTER "half a shoulder width, 0.1295, is more than half of 0.41 × 9 / 16" },
  { "neck", false, 16.0 / 9.0, 0.854, 0.2, LR_JOINT_NECK, -0.010, WINTER "chin 0.870, shoulder 0.818, half-way" },
  { "knee", false, 16.0 / 9.0, 0.280, 0.8, LR_JOINT_KNEE, 0.005, WINTER "knee 0.285" },
  { "seated-knee", true, 16.0 / 9.0, 0.285, 0.8, LR_JOINT_ELBOW, 0.347, "no knee seated: thighs run towards the lens" },
};

static void
test_joint (gconstpointer data)
{
  const JointCase *c = data;
  LrBody body = body_of (1.70, c->is_seated, 0.45);
  double bottom_m = body.crown_m - (1.0 - c->bottom) * 1.70, half_m = 0.5 * c->height * 1.70, far_m = 1e4;
  LrProjection projection;
  LrJointCut cut;

  g_test_message ("%s", c->source);
  lr_projection_look (lr_vec3 (0.0, -far_m, bottom_m + half_m), 0.5 * LR_PI, 0.0, c->aspect * half_m / far_m,
                      half_m / far_m, &projection);
  g_assert_true (lr_joint_cut (&body, lr_vec2 (0.0, 0.0), -0.5 * LR_PI, &projection, &cut));
  g_assert_cmpint (cut.joint, ==, c->joint);
  assert_near (cut.above_m / 1.70, c->above, 1e-4);
}

/* A medium shot from 2 m, tilted, with the person turned aside: where the edge's ray passes an elbow, by similar triangles */
static void
test_joint_near (void)
{
  LrBody body = body_of (1.70, false, 0.0);
  double tilt_rad = -3.0 * LR_DEG, half = 0.1, half_width_m = 0.5 * 0.259 * 1.70;
  double z_m = 0.630 * 1.70 - 1.20, y_m = 2.0 - half_width_m; /* the near elbow, from the lens */
  double depth_m = y_m * cos (tilt_rad) + z_m * sin (tilt_rad);
  double up_m = z_m * cos (tilt_rad) - y_m * sin (tilt_rad);
  LrProjection projection;
  LrJointCut cut;

  g_test_message ("rotation of the plane by hand: depth and height of the elbow in the tilted camera");
  lr_projection_look (lr_vec3 (0.0, -2.0, 1.20), 0.5 * LR_PI, tilt_rad, 0.35, half, &projection);
  g_assert_true (lr_joint_cut (&body, lr_vec2 (0.0, 0.0), 0.0, &projection, &cut));
  g_assert_cmpint (cut.joint, ==, LR_JOINT_ELBOW);
  assert_near (cut.above_m, up_m + half * depth_m, 1e-9);
}

typedef struct
{
  const char *name;
  double      across, look_across, room;
} LookCase;

static const LookCase look_cases[] = {
  { "third-to-the-right", 1.0 / 3.0, 0.3, 2.0 / 3.0 },
  { "third-to-the-left", 2.0 / 3.0, -2.0, 2.0 / 3.0 },
  { "middle", 0.5, 1.0, 0.5 },
  { "short-sided", 0.3, -1.0, 0.3 },
};

static void
test_look_room (gconstpointer data)
{
  const LookCase *c = data;
  double room;

  g_test_message ("common practice: twice as much ahead of the face as behind; the shares by hand");
  g_assert_true (lr_look_room (c->across, c->look_across, &room));
  assert_near (room, c->room, 1e-12);
}

/* The rule for a height is the rule for a shot, up to the three-quarter shot */
static void
test_eyes_rule (void)
{
  for (int is_seated = 0; is_seated < 2; is_seated++)
    for (LrShot shot = 0; shot <= LR_SHOT_THREE_QUARTER; shot++)
      {
        LrBody body = body_of (1.70, is_seated, 0.45);
        double height_m, wanted, eyes_down;

        g_assert_true (lr_shot_frame_height_m (shot, &body, &height_m, &wanted));
        g_assert_true (lr_eyes_down_for_height (&body, height_m, &eyes_down));
        assert_near (eyes_down, wanted, 1e-12);
      }
}

static void
test_steps (void)
{
  g_assert_cmpint (lr_shot_steps (LR_SHOT_MEDIUM, LR_SHOT_MEDIUM), ==, 0);
  g_assert_cmpint (lr_shot_steps (LR_SHOT_MEDIUM, LR_SHOT_MEDIUM_CLOSE_UP), ==, 1);
  g_assert_cmpint (lr_shot_steps (LR_SHOT_CLOSE_UP, LR_SHOT_MEDIUM), ==, 2);
  g_assert_cmpint (lr_shot_steps (LR_SHOT_MEDIUM, LR_SHOT_CLOSE_UP), ==, 2);
}

static void
test_domain (void)
{
  LrBody body = body_of (1.70, false, 0.0);
  LrFraming framing = { .headroom = UNTOUCHED };
  double height_m = UNTOUCHED, eyes_down = UNTOUCHED;

  g_assert_false (lr_framing (&body, 1.0, 1.0, &framing));
  g_assert_false (lr_framing (&body, 1.0, 1.1, &framing));
  g_assert_false (lr_framing (&body, NAN, 1.0, &framing));
  g_assert_false (lr_framing (&body, 1.0, NAN, &framing));
  g_assert_false (lr_framing (&body, HUGE_VAL, 1.0, &framing));
  g_assert_false (lr_framing (&body, 1.0, -HUGE_VAL, &framing));
  g_assert_false (lr_framing (&body, 2.5, 1.71, &framing));  /* over the head */
  g_assert_false (lr_framing (&body, -0.1, -0.5, &framing)); /* under the floor */
  g_assert_false (lr_shot_frame_height_m (LR_N_SHOTS, &body, &height_m, &eyes_down));
  g_assert_false (lr_eyes_down_for_height (&body, 0.0, &eyes_down));
  g_assert_false (lr_eyes_down_for_height (&body, NAN, &eyes_down));
  g_assert_false (lr_look_room (1.1, 1.0, &eyes_down));
  g_assert_false (lr_look_room (NAN, 1.0, &eyes_down));
  g_assert_false (lr_look_room (0.5, 0.0, &eyes_down));
  g_assert_false (lr_look_room (0.5, NAN, &eyes_down));
  g_assert_cmpfloat (framing.headroom, ==, UNTOUCHED);
  g_assert_cmpfloat (height_m, ==, UNTOUCHED);
  g_assert_cmpfloat (eyes_down, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/framing/shot", shot_cases, test_shot);
  add_rows ("/framing/cut", cut_cases, test_cut);
  add_rows ("/framing/joint", joint_cases, test_joint);
  add_rows ("/framing/look-room", look_cases, test_look_room);
  g_test_add_func ("/framing/seated-hip", test_seated_hip);
  g_test_add_func ("/framing/joint-near", test_joint_near);
  g_test_add_func ("/framing/eyes-rule", test_eyes_rule);
  add_rows ("/framing/distance", distance_cases, test_distance);
  g_test_add_func ("/framing/extreme", test_extreme);
  g_test_add_func ("/framing/without-eyes", test_without_eyes);
  g_test_add_func ("/framing/seated", test_seated);
  g_test_add_func ("/framing/wide", test_wide);
  g_test_add_func ("/framing/round-trip", test_round_trip);
  g_test_add_func ("/framing/monotone", test_monotone);
  g_test_add_func ("/framing/steps", test_steps);
  g_test_add_func ("/framing/domain", test_domain);

  return g_test_run ();
}
