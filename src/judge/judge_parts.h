/* judge_parts.h - what the families of checks share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A family looks at a reading, says its grade with lr_judge_add () and, unless this is a trial, gives the remark
 * its sentence, marks and remedies. A trial judges a plan that a remedy would make and keeps the grades alone, so that no
 * remedy is offered that breaks something else.
 */

#pragma once

#include "intrusions.h"
#include "remarks.h"

typedef struct
{
  LrCheck     check;
  LrGrade     grade;
  const char *id_a, *id_b; /* "" for none */
} LrVerdict;

typedef struct
{
  const LrStudy  *study;
  const LrLightLevels *levels; /* NULL: not known, or a trial */
  const double   *limits;    /* of the plan, by LrLimit */
  LrUnits         units;
  gboolean        is_trial;
  gboolean        is_moving; /* remedies are not asked for: the plan is in a hand */
  GArray         *verdicts;  /* LrVerdict */
  GPtrArray      *remarks;   /* LrRemark, owned until they are handed over; NULL in a trial */
  GArray         *offers;    /* LrOffer: remedies that are still to be tried */
  guint           n_searches; /* for places out of the pictures */
  GStringChunk   *words;     /* figures and names, until the sentences are written */
} LrJudge;

/* judge_*.c */
void lr_judge_missing    (LrJudge *judge);
void lr_judge_line       (LrJudge *judge);
void lr_judge_gaze       (LrJudge *judge);
void lr_judge_height     (LrJudge *judge);
void lr_judge_lens       (LrJudge *judge);
void lr_judge_background (LrJudge *judge);
void lr_judge_focus      (LrJudge *judge);
void lr_judge_framing    (LrJudge *judge);
void lr_judge_joints     (LrJudge *judge);
void lr_judge_cut        (LrJudge *judge);
void lr_judge_cut_eyes   (LrJudge *judge);
/* Whether every cut that passes now would pass with the camera at another place, as far from the subject */
gboolean lr_judge_keeps_cuts (const LrJudge *judge, const LrCameraReading *camera, LrVec2 to_m);
void lr_judge_intrusions (LrJudge *judge);
void lr_judge_exposure   (LrJudge *judge);
/* compensate.c: sets the camera otherwise, so that it makes more of the light: "ISO <b>1600</b>"; alone as a remedy, "Set B to ISO 1600." */
const char *lr_judge_compensate (LrJudge *judge, LrRemedy *remedy, const LrCameraReading *camera, double more_stops);
void lr_judge_keep_compensation (LrJudge *judge, LrRemark *remark, const LrCameraReading *camera, double more_stops);
/* Offers its native ISO with filter and stop for the light; the stops of light that are missing for it, else 0 */
double lr_judge_offer_native_iso (LrJudge *judge, LrRemark *remark, const LrCameraReading *camera);
void lr_judge_shutter    (LrJudge *judge);
void lr_judge_light      (LrJudge *judge);
void lr_judge_clothes    (LrJudge *judge);
void lr_judge_color      (LrJudge *judge);
void lr_judge_sun        (LrJudge *judge);
void lr_judge_glare      (LrJudge *judge);
void lr_judge_catch_light (LrJudge *judge);
void lr_judge_shadows    (LrJudge *judge);
void lr_judge_sound      (LrJudge *judge);
void lr_judge_microphones (LrJudge *judge); /* of lr_judge_sound () */
void lr_judge_room       (LrJudge *judge);
void lr_judge_tape       (LrJudge *judge);
LrGrade lr_clash_grade   (const LrClash *clash, double limit_m);
void lr_judge_circuits   (LrJudge *judge);
void lr_judge_leads      (LrJudge *judge);
void lr_judge_stands     (LrJudge *judge);
void lr_judge_clearances (LrJudge *judge);
void lr_judge_ways_out   (LrJudge *judge);

/* remarks.c: NULL in a trial. @a is marked; the key names @a and @b (both may be NULL) in this order */
LrRemark *lr_judge_add (LrJudge *judge, LrCheck check, LrGrade grade, const LrPlaced *a, const LrPlaced *b);
void      lr_judge_all (LrJudge *judge);
void      lr_remark_free (LrRemark *remark);
/* @placed is marked instead of the first of the key */
void      lr_remark_mark_first (LrRemark *remark, const LrPlaced *placed);
/* @placed is named as well */
void      lr_remark_about (LrRemark *remark, const LrPlaced *placed);

static inline LrCameraReading *
lr_judge_camera (const LrJudge *judge,
                 guint          index)
{
  return &g_array_index (judge->study->cameras, LrCameraReading, index);
}

/* A camera on a thing, with the person out of its frame, is not judged as a shot of the person */
gboolean lr_judge_is_cutaway (const LrJudge *judge, const LrCameraReading *camera);

/* judge_framing.c: whether the person's eyes are in the frame */
gboolean lr_judge_has_eyes (const LrCameraReading *camera);
/* Offers to tilt the camera until the subject's eyes are so far down its frame */
void     lr_judge_offer_tilt (LrJudge *judge, LrRemark *remark, const LrCameraReading *camera, double eyes_down);
/* judge_joint.c: offers to tilt the camera and to move it, so that its frame is as many times as high, with the eyes where
 * the rule has them */
void     lr_judge_offer_refit (LrJudge *judge, LrRemark *remark, const LrCameraReading *camera, double scale);
/* judge_height.c: offers another lens height */
void     lr_judge_offer_lens_height (LrJudge *judge, LrRemark *remark, const LrCameraReading *camera, double height_m);

/* judge_lens.c: the lens in the kit; (nullable). The stop printed on lenses that is next to @f_number or equal */
gboolean      lr_lens_has_focal     (const LrLens *lens, double focal_m);
const LrLens *lr_judge_mounted_lens (const LrJudge *judge, const LrCameraReading *camera);
double        lr_nominal_stop       (double f_number, gboolean is_wider);

/* sentences.c: words live as long as the judge. Names are escaped for markup. */
const char *lr_say_name   (LrJudge *judge, const LrPlaced *placed); /* short: "A", "L1", "Wenna" */
const char *lr_say_title  (LrJudge *judge, const LrPlaced *placed); /* full: "Camera A", "L1 key" */
const char *lr_say_sun    (LrJudge *judge, const LrPlaced *window); /* "the sun through window 2" */
const char *lr_say_length (LrJudge *judge, double length_m);        /* "0.46 m" */
const char *lr_say_plain  (LrJudge *judge, double length_m);        /* "0.46", before another with its unit */
const char *lr_say_small  (LrJudge *judge, double length_m);        /* "14 cm" */
const char *lr_say_angle  (LrJudge *judge, double angle_rad);       /* "22°" */
const char *lr_say_limit  (LrJudge *judge, LrLimit limit);          /* of its type */
const char *lr_say_share  (LrJudge *judge, double share);           /* "19 %", "0.7 %" */
/* An angle, small length, length or share that misses its limit: with more decimals if it would read as the limit */
const char *lr_say_angle_off  (LrJudge *judge, double angle_rad, double limit_rad);
const char *lr_say_small_off  (LrJudge *judge, double length_m, double limit_m);
const char *lr_say_length_off (LrJudge *judge, double length_m, double limit_m);
const char *lr_say_share_off  (LrJudge *judge, double share, double limit);
const char *lr_say_number (LrJudge *judge, double number, int decimals);
const char *lr_say_db     (LrJudge *judge, double level_db);        /* "24 dB" */
const char *lr_say_db_off (LrJudge *judge, double level_db, double limit_db);
const char *lr_say_seconds (LrJudge *judge, double time_s);         /* "0.7 s" */
const char *lr_say_seconds_off (LrJudge *judge, double time_s, double limit_s);
const char *lr_say_area   (LrJudge *judge, double area_m2);         /* "14 m²" */
const char *lr_say_stop   (LrJudge *judge, double f_number);        /* "f/2.8" */
const char *lr_say_focal  (LrJudge *judge, double focal_m);         /* "50 mm" */
const char *lr_say_behind (LrJudge *judge, const LrCameraReading *camera); /* "west wall", "drafting table" */
const char *lr_say_towards (LrJudge *judge, LrVec2 way);            /* "towards the north wall" */

const char *lr_say_power  (LrJudge *judge, double power_w);         /* "280 W" */
const char *lr_say_current (LrJudge *judge, double current_a);      /* "1.4 A" */
const char *lr_say_mass   (LrJudge *judge, double mass_kg);         /* "2 kg" */
/* judge_stands.c: the sandbag that gives at least as much */
/* judge_leads.c: what a lead is called by: "L1" for what it feeds, or its own name */
const char *lr_say_lead   (LrJudge *judge, const LrItem *lead);
const char *lr_say_socket (LrJudge *judge, const LrPlaced *socket); /* "S3" */

/* Adds a sentence to the remark; @format has figures between <b> and </b> */
void lr_remark_say (LrRemark *remark, const char *format, ...) G_GNUC_PRINTF (2, 3);
void lr_remedy_say (LrRemedy *remedy, const char *short_figure, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* marks.c */
void lr_remark_mark_line     (LrRemark *remark, LrVec2 a_m, LrVec2 b_m, const char *figure);
void lr_remark_mark_distance (LrRemark *remark, LrVec2 a_m, LrVec2 b_m, const char *figure);
void lr_remark_mark_point    (LrRemark *remark, LrVec2 at_m, const char *figure);
void lr_remark_mark_outline  (LrRemark *remark, const LrOutline *outline, const char *figure);
/* Between the ways from @centre_m to two points, the shorter way round */
void lr_remark_mark_arc      (LrRemark *remark, LrVec2 centre_m, LrVec2 a_m, LrVec2 b_m, const char *figure);
void lr_mark_clear           (gpointer mark);

/* remedy.c */
LrRemedy *lr_remedy_new    (void);
void      lr_remedy_free   (LrRemedy *remedy);
void      lr_remedy_change (LrRemedy *remedy, const LrItem *item, const char *key, double value);
/* To another place, turned by as much as it swings round @about (nullable) if it aims at nothing */
void      lr_remedy_move   (LrRemedy *remedy, const LrPlaced *placed, LrVec2 to_m, const LrVec2 *about_m);
void      lr_remedy_lay    (LrRemedy *remedy, const LrItem *lead, const LrLeadLaying *laying);
/* Of several for one remark the first that passes its trial is taken; (transfer full) */
void      lr_judge_offer   (LrJudge *judge, LrRemark *remark, LrRemedy *remedy);
/* Whether a remedy for the remark may still be tried: none is worth a search otherwise */
gboolean  lr_judge_may_offer (const LrJudge *judge, const LrRemark *remark);
/* Offers a move with the sentence "Move B 0.46 m towards the north wall, to 32°."; @to (nullable): "32°" */
void      lr_judge_offer_move (LrJudge *judge, LrRemark *remark, const LrPlaced *placed, LrVec2 to_m,
                               const LrVec2 *about_m, const char *to);
/* Any remedy that is known to be right; (transfer full) */
void      lr_judge_keep       (LrJudge *judge, LrRemark *remark, LrRemedy *remedy);
void      lr_judge_try_offers (LrJudge *judge);
void      lr_judge_drop_offers (LrJudge *judge); /* untried */

/* trial.c: whether it mends and makes nothing worse */
gboolean  lr_judge_try     (const LrJudge *judge, const LrRemedy *remedy, const LrVerdict *asked);

/* clear_frame.c: the smallest change that takes equipment out of every picture */
#define LR_CLEAR_SPARE_M 0.02
#define LR_CLEAR_FARTHEST_M 1.5

void      lr_judge_clear_frame (LrJudge *judge, LrRemark *remark, const LrIntrusion *intrusion);
