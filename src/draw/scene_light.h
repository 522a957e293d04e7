/* scene_light.h - how the set's lights fall in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "scene.h"

/* Modelling of people and the pool on the wall */
void     lr_scene_light (LrScene *scene, const LrCameraReading *camera);
/* Where a light stands with its lamp, and its axis */
LrVec3   lr_light_lamp  (const LrPlaced *light);
void     lr_light_aim   (const LrStudy *study, const LrPlaced *light, double *facing_rad, double *tilt_rad);
