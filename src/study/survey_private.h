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

/* survey_doubts.c: what is in doubt in the @solution, and in what is left without the worst */
void lr_survey_find_doubts (const LrSurveyWork *work, const LrNetSolution *solution, LrSurvey *survey);
