/* survey_private.h - what the files of survey.h share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "survey.h"
#include "tape_error.h"

typedef struct
{
  guint         n;          /* corners, and walls with the closing one */
  LrSurveyWall *walls;
  gboolean     *has_turn;
  double       *heading_rad;
  GArray       *measures;   /* LrNetMeasure */
  GArray       *origins;    /* LrSurveySuspect of each */
  LrNetPoint   *points;
} LrSurveyWork;

/* (element-type LrNetMeasure): the same measures, with corners that were said to be square held square: what contradicts then is
 * the tapes' alone; (transfer full) */
GArray *lr_survey_hold_square (const LrSurveyWork *work);
/* survey_doubts.c: what is in doubt in the @solution, and in what is left without the worst */
void lr_survey_find_doubts (const LrSurveyWork *work, const LrNetSolution *solution, LrSurvey *survey);
