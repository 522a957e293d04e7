/* survey_words.h - what is said of a room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "survey.h"
#include "units.h"

/* All (transfer full), sentences with their figures in <b> */
char *lr_survey_say       (const LrSurvey *survey, LrUnits units); /* all that there is to say, one sentence a line */
char *lr_survey_say_size  (const LrSurvey *survey, LrUnits units); /* of one that came to a room */
char *lr_survey_say_doubt (const LrSurveyDoubt *doubt, LrUnits units);
