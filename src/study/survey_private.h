/* survey_private.h - what the files of survey.h share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "survey.h"

/* One standard deviation of a taped length: survey.c tells the sources */
#define LR_TAPE_SD_M 0.004
#define LR_TAPE_SD_PER_M 0.0002

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

static inline double
lr_survey_tape_sd_m (double length_m)
{
  return LR_TAPE_SD_M + LR_TAPE_SD_PER_M * length_m;
}

/* survey_doubts.c: what is in doubt in the @solution, and in what is left without the worst */
void lr_survey_find_doubts (const LrSurveyWork *work, const LrNetSolution *solution, LrSurvey *survey);
