/* figure.h - a person in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "paint.h"

/* A person is put in order among the other solids in these pieces */
typedef enum
{
  LR_FIGURE_UPPER, /* trunk, head, arms */
  LR_FIGURE_LAP,   /* thighs; forearms and hands that rest on them */
  LR_FIGURE_LEGS
} LrFigurePart;

/* Adds a person, and the chair under a seated one */
void lr_scene_add_person (LrScene *scene, const LrPlaced *placed);
void lr_paint_person     (const LrPainter *painter, const LrScene *scene, const LrSolid *solid);
