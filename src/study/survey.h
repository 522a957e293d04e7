/* survey.h - a room from what was taped in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "network.h"
#include "plan_edit.h"

#define LR_SURVEY_MAX_DIAGONALS 32
#define LR_SURVEY_SHORT_M 0.20 /* shorter, it may be what the tapes miss, and no wall: common practice, no source */

/* One wall in the order walked */
typedef struct
{
  double length_m;  /* NAN: could not be taped */
  double turn_rad;  /* at its end, > 0 to the left */
} LrSurveyWall;

typedef struct
{
  guint  from, to;  /* corners, from 0; corner 0 is where the first wall starts */
  double length_m;
} LrSurveyDiagonal;

typedef enum
{
  LR_SURVEY_TOO_SHORT,   /* fewer than two walls */
  LR_SURVEY_NO_LENGTH,   /* a length is not > 0, or too many are not known */
  LR_SURVEY_NO_DIAGONAL, /* a diagonal names no two corners of the walk */
  LR_SURVEY_OPEN,        /* the walk is not round: a straight wall back to its start is shown */
  LR_SURVEY_UNSOLVED,    /* the measures contradict each other so much that no room comes of them */
  LR_SURVEY_ROUND,       /* solved */
} LrSurveyState;

typedef enum { LR_DOUBT_WALL, LR_DOUBT_DIAGONAL, LR_DOUBT_CORNER } LrDoubtKind;

/* A measure, and the corners that it is of: of a corner one alone */
typedef struct
{
  LrDoubtKind kind;
  guint       index;    /* of the wall, diagonal or corner, from 0 */
  guint       from, to;
} LrSurveySuspect;

/* Measures that contradict the others: one of them, as nobody can say which. Beside lengths square corners are not named: they
 * are taken as square */
typedef struct
{
  guint       n;
  LrSurveySuspect of[6];     /* worst first */
  gboolean    is_left_out;   /* alone, and so surely in error that the room is solved without it */
  gboolean    is_within;     /* no more than tapes and corners are off: it is shared out */
  gboolean    may_be_corners; /* more than tapes are off, no more than corners that are not quite square */
  double      error;         /* of the first: measured less what the others make of it [m or rad] */
  double      taken;         /* as it was measured */
  double      standardized;  /* how many of its standard deviations the first misses by */
  gboolean    has_settling;  /* a diagonal would tell */
  guint       from, to;
} LrSurveyDoubt;

typedef struct
{
  LrSurveyState state;
  guint    fault;            /* the wall or diagonal that is wrong, from 0 */
  GArray  *corners_m;        /* LrVec2: of the room, or of what there is of it */
  guint    n_walls;          /* taped or not, without the closing one */
  gboolean has_closing_wall; /* the last wall was not told: it comes out */
  double   gap_m;            /* by which the walk misses its start */
  double   closing_m;        /* length of the closing wall, or of the straight way back */
  double   last_turn_rad;    /* at the end of the last wall: as told, or as the others leave it where the walk ends at its start */
  gboolean has_other_turn;   /* which was told otherwise */
  int      short_wall;       /* the first wall that was told and is shorter than LR_SURVEY_SHORT_M; -1 for none */
  guint    n_checks;         /* measures more than are needed */
  double   corner_sd_m;      /* standard error of the worst corner */
  GArray  *doubts;           /* LrSurveyDoubt, worst first */
} LrSurvey;

/* @start_m, @heading_rad: where the first wall starts and where it goes */
LrSurvey *lr_survey_new  (const LrSurveyWall *walls, guint n_walls, const LrSurveyDiagonal *diagonals, guint n_diagonals,
                          LrVec2 start_m, double heading_rad);
void      lr_survey_free (LrSurvey *survey);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrSurvey, lr_survey_free)

/* What was taped in a room, as it was told; %FALSE if no wall was. Both arrays are the caller's to free */
gboolean  lr_survey_read_notes (const LrRoom *room, GArray **walls, GArray **diagonals);
/* Where the first corner of its walls as they were taped is drawn, and where the first wall goes */
void      lr_survey_find_start (const LrRoom *room, LrVec2 *start_m, double *heading_rad);
/* The index in the room of the corner that is counted so in its survey */
guint     lr_survey_corner_of  (const LrRoom *room, guint corner);
/* (transfer full) (nullable): the room anew from its notes, first corner and wall where they are */
LrSurvey *lr_survey_of_room    (const LrRoom *room);
/* (transfer full) (nullable): the plan with that room, at @corners_m, and the notes that it was made from */
LrPlan   *lr_survey_make_room  (const LrSurvey *survey, const LrSurveyWall *walls, const LrSurveyDiagonal *diagonals, guint n_diagonals,
                                const LrPlan *plan, GError **error);
/* The direction of north, clockwise from up the sheet, if a compass held square to a wall from inside reads @bearing_rad */
double    lr_north_by_wall     (const LrVec2 *corners_m, gsize n, guint wall, double bearing_rad);
/* What the compass reads there */
double    lr_bearing_of_wall   (const LrVec2 *corners_m, gsize n, guint wall, double north_rad);
