/* levels.h - how face, clothes and walls come out in a camera, on a scale of the signal
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"
#include "theme.h"

typedef struct
{
  LrShares shares;
  double   wanted;        /* of the face, share of full signal */
  double   wanted_walls;  /* of the walls behind; NAN: as dark as they come */
  double   walls_off_stops; /* they may be off by */
  double   off_stops;     /* the face may be off by */
  gboolean is_whole;      /* what the room gives back is in it */
  gboolean is_settled;    /* and was computed for the plan shown */
} LrLevels;

/* FALSE: the camera has no levels */
gboolean lr_levels_read   (LrLevels *levels, const LrLightLevels *light, const LrPlan *plan, const char *camera);
double   lr_levels_height (const LrTheme *theme);
/* With its upper left corner at 0, 0 */
void     lr_levels_draw   (cairo_t *cr, const LrTheme *theme, const LrLevels *levels, double width);
/* "Face 64 %, shadow side 31 %, clothes 40 %, walls 47 %."; (transfer full) */
char    *lr_levels_words  (const LrLevels *levels);
