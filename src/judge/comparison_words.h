/* comparison_words.h - candidate rooms side by side, in words: what is best in each row, and why
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What differs by no more than can be told is alike, and what is not noted, taken as usual or known only in part is never best. Which room is best in all is
 * the user's to choose: no sum is made of the rows.
 */

#pragma once

#include <json-glib/json-glib.h>

#include "comparison.h"
#include "units.h"

typedef enum
{
  LR_VERDICT_BEST,   /* some are better than others */
  LR_VERDICT_ALIKE,  /* all that are known */
  LR_VERDICT_NO_STEP, /* the best and the worst differ, but from one to the next nothing can be told */
  LR_VERDICT_FEW,    /* fewer than two are known */
} LrVerdictType;

/* A row of the table */
typedef struct
{
  LrCompare     row;
  const char   *title;   /* translated: "Floor area" */
  const char   *meaning; /* translated: what is measured, and how */
  LrVerdictType verdict;
  gboolean     *is_best; /* of each room */
  char        **texts;   /* of each room: "39.2 m²", "not noted" */
  char        **details; /* of each room: what stands beside it, or "" */
  char         *why;     /* "12 m² more than Office"; "" with one room */
  double        times;   /* the best against the worst that is known, as a factor >= 1; NAN: fewer than two are known */
} LrComparedRow;

typedef struct
{
  const LrComparison *comparison; /* held by the caller */
  GPtrArray *rows;       /* LrComparedRow, in the order of telling */
  char      *summary;    /* "They differ most in reverberation (0.50 s to 1.20 s) and floor area (20 m² to 40 m²)." */
  char      *undrawn;    /* "Hall is not drawn yet."; "" when all are */
  char      *left_out;   /* "Loft, as planned is told as it was found."; "" for none */
  char      *places;     /* what is noted of the places: access, permission; a line each, or one if all are the same; "" for nothing */
} LrCompared;

/* Fills what is awaited in a room's figures; @levels (nullable): of its plan, whole */
void        lr_comparison_judge (LrComparison *comparison, guint index, const LrLightLevels *levels, LrUnits units);
LrCompared *lr_compared_new  (const LrComparison *comparison, LrUnits units);
void        lr_compared_free (LrCompared *compared);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrCompared, lr_compared_free)

/* First row of a family of rows: its title, translated, "Sound"; else NULL */
const char *lr_compare_group (LrCompare row);
/* (transfer full): the whole row in one sentence, for who hears it: "Floor area: Loft 39.2 m², best; Office 20 m². ..." */
char       *lr_compared_sentence (const LrCompared *compared, const LrComparedRow *row);
/* (transfer full): under its name: "as found of Loft, as planned"; "" */
char       *lr_compare_subtitle (const LrRoomFigures *room);
/* (transfer full) */
JsonNode   *lr_compared_to_json (const LrCompared *compared);

/* comparison_rows.c: how a row is compared and told */
typedef struct
{
  const char *key;          /* in JSON: "area-m2" */
  const char *group;        /* to be translated; NULL: as the row before */
  const char *title;        /* to be translated */
  const char *meaning;      /* to be translated */
  const char *brief;        /* to be translated, in the midst of a sentence: "floor area" */
  const char *better;       /* to be translated: of a difference and a name: "%s more than %s" */
  gboolean    is_less_better;
  double      tie;          /* differences up to this are none, in the row's unit */
  double      tie_share;    /* or up to this share of the greater */
  const char *within;       /* to be translated: that in words, or of its figure: "%s, as rooms can be taped" */
  double      base;         /* added to both before they are set against each other: figures that may be 0 */
  double      db_twice;     /* levels: so many dB count as twice; 0: no level */
  char     *(*format) (double value, LrUnits units);
  char     *(*format_difference) (double value, LrUnits units); /* NULL: the same */
} LrCompareInfo;

const LrCompareInfo *lr_compare_info (LrCompare row);
/* (transfer full): figure, and what stands beside it, in words; "" for nothing */
char *lr_compare_text   (const LrRoomFigures *room, LrCompare row, LrUnits units);
char *lr_compare_detail (const LrComparison *comparison, const LrRoomFigures *room, LrCompare row, LrUnits units);
