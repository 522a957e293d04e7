/* remarks.h - judgements on a study, in the user's words, with what would mend them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "intrusions.h"
#include "light_levels.h"
#include "study.h"
#include "plan_edit.h"
#include "units.h"

typedef enum
{
  LR_GRADE_FIX,  /* it will go wrong */
  LR_GRADE_MIND, /* know it */
  LR_GRADE_FINE,
  LR_N_GRADES
} LrGrade;

typedef enum
{
  LR_CHECK_LINE_SIDE, LR_CHECK_LINE_MARGIN,
  LR_CHECK_GAZE,
  LR_CHECK_LENS_HEIGHT, LR_CHECK_EYELINE, LR_CHECK_EYES_LEVEL,
  LR_CHECK_FACE_DISTANCE, LR_CHECK_BACKGROUND_SEEN,
  LR_CHECK_BACKGROUND_DISTANCE, LR_CHECK_BACKGROUND_BLUR,
  LR_CHECK_LENS_RANGE, LR_CHECK_LENS_COUNT, LR_CHECK_DEPTH_OF_FIELD,
  LR_CHECK_SHOT_SIZE, LR_CHECK_HEADROOM, LR_CHECK_EYES_PLACE, LR_CHECK_LOOK_ROOM, LR_CHECK_JOINT,
  LR_CHECK_CUT, LR_CHECK_CUT_EYELINE, LR_CHECK_REVERSE,
  LR_CHECK_IN_FRAME, LR_CHECK_IN_FRONT, LR_CHECK_BOOM_MARGIN, LR_CHECK_ROOM_SEEN,
  LR_CHECK_UNLIT, LR_CHECK_FACE_LEVEL, LR_CHECK_KEY_RATIO, LR_CHECK_WALL_LEVEL, LR_CHECK_CLOTHES,
  LR_CHECK_EXPOSURE_MATCH, LR_CHECK_WHITE_BALANCE, LR_CHECK_MIXED_WHITES,
  LR_CHECK_NATIVE_ISO, LR_CHECK_SHUTTER, LR_CHECK_FLICKER,
  LR_CHECK_SUN, LR_CHECK_SUN_BACKGROUND, LR_CHECK_SUN_LENS, LR_CHECK_SUN_TABLE, LR_CHECK_GLARE, LR_CHECK_FLARE, LR_CHECK_CATCH_LIGHT, LR_CHECK_SHADOW,
  LR_CHECK_NOISE, LR_CHECK_REVERBERATION, LR_CHECK_SECOND_MICROPHONE, LR_CHECK_OFF_AXIS, LR_CHECK_COMB, LR_CHECK_BOOM_PLACE,
  LR_CHECK_BOOM_SHADOW,
  LR_CHECK_OVERLAP, LR_CHECK_OUTSIDE, LR_CHECK_DOOR_SWING, LR_CHECK_CEILING,
  LR_CHECK_CIRCUIT, LR_CHECK_UNTOLD, LR_CHECK_UNFED, LR_CHECK_OUTLETS, LR_CHECK_LEAD_LENGTH, LR_CHECK_LEAD_ENDS, LR_CHECK_LEAD_WAY, LR_CHECK_VOLTAGE_DROP, LR_CHECK_LEAD_CURRENT, LR_CHECK_REEL,
  LR_CHECK_STAND, LR_CHECK_HEAD_CLEAR, LR_CHECK_LAMP_CLEAR, LR_CHECK_WAY_OUT, LR_CHECK_WHEELCHAIR,
  LR_CHECK_TAPE,
  LR_CHECK_MISSING, /* no room, no subject, no camera: what to do next */
  LR_N_CHECKS
} LrCheck;

/* One row of the table of checks */
typedef struct
{
  const char *word;     /* in --json: "line-side" */
  const char *title;    /* for people: "Line of action" */
  LrLimit     limit;    /* the limit it uses, or LR_N_LIMITS */
  LrPropType  type;     /* of the figure that it judges: LR_PROP_ANGLE, _LENGTH, _SHARE, _NUMBER */
  const char *source;   /* of the limit or of the rule, translated by its user */
} LrCheckInfo;

typedef enum { LR_MARK_LINE, LR_MARK_ARC, LR_MARK_POINT, LR_MARK_OUTLINE, LR_MARK_DISTANCE } LrMarkType;

/* Geometry to highlight on the sheet */
typedef struct
{
  LrMarkType type;
  LrVec2     a_m, b_m;        /* line, distance: its ends; arc: a is the centre; point: a */
  double     from_rad, to_rad, radius_m; /* arc, anticlockwise */
  LrOutline  outline;
  char      *figure;          /* "22°", at the mark; may be NULL */
} LrMark;

/* A lead that a remedy lays: an LrLeadLaying that owns what it names */
typedef struct
{
  char   *id;                 /* NULL: a new one, of the kit's entry */
  char   *socket, *feeds, *kit; /* NULL: as before */
  LrVec2 *path_m;
  gsize   n_path;
} LrLaying;

typedef struct
{
  char   *sentence;           /* "Move B 0.46 m towards the north wall, to 32°." */
  char   *markup;             /* the same with its figures in <b> */
  char   *short_figure;       /* "0.46 m" for the ghost */
  GArray *changes;            /* LrChange with owned ids; keys are static */
  GPtrArray *layings;         /* of LrLaying: leads that are laid another way; NULL: none */
} LrRemedy;

typedef struct
{
  LrCheck   check;
  LrGrade   grade;
  char     *key;              /* stable while the plan is edited: "cut:camera-a:camera-b"; selects the same remark again */
  char     *markup;           /* one line: what, by how much, the limit, the change; figures in <b>, Pango markup */
  char     *text;             /* the same without markup */
  char    **ids;              /* items that it is about, the one that it marks first; NULL-terminated */
  GArray   *marks;            /* LrMark */
  LrRemedy *remedy;           /* may be NULL */
  double    value, limit;     /* the figure judged and its limit, inside units; NAN if none */
} LrRemark;

typedef struct
{
  GPtrArray *all;             /* of LrRemark: Fix first, then Mind, then Fine; steady order within */
  guint      n[LR_N_GRADES];
  gboolean   is_moving;       /* without remedies: they come when the plan rests */
  GHashTable *worst;          /* private: id -> LrGrade */
} LrRemarks;

/* @units: how lengths are written in the sentences */
LrRemarks *lr_remarks_new  (const LrStudy *study, LrUnits units);
/* @levels (nullable): of light, of this plan or of one just before it; without them less is said of light */
LrRemarks *lr_remarks_new_lit (const LrStudy *study, const LrLightLevels *levels, LrUnits units);
/* The same of a plan that a hand moves: what is remarked, without what would mend it */
LrRemarks *lr_remarks_new_moving (const LrStudy *study, const LrLightLevels *levels, LrUnits units);
void       lr_remarks_free (LrRemarks *remarks);
const LrRemark *lr_remarks_find (const LrRemarks *remarks, const char *key);     /* (nullable) */
/* Worst of the remarks that mark the item; FINE if there is none */
LrGrade    lr_remarks_worst_for (const LrRemarks *remarks, const char *item_id);

const LrCheckInfo *lr_check_info (LrCheck check);
const char        *lr_grade_title (LrGrade grade); /* "Fix", translated */
const char        *lr_grade_word  (LrGrade grade); /* "fix" */
/* (transfer full): a sentence without tags and entities */
char              *lr_markup_to_text (const char *markup);

/* How a thing in a picture is judged, and the check that speaks of it */
LrGrade            lr_intrusion_grade (const LrStudy *study, const LrIntrusion *intrusion);
LrCheck            lr_intrusion_check (const LrIntrusion *intrusion);

/* (transfer full): the plan with the remedy applied */
LrPlan *lr_remedy_apply (const LrRemedy *remedy, const LrPlan *plan, GError **error);
/* (transfer full): { "format": "lookroom-remarks", "version": 1, "remarks": [...] } */
JsonNode *lr_remarks_to_json (const LrRemarks *remarks);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrRemarks, lr_remarks_free)
