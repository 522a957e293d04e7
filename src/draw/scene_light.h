/* scene_light.h - how the set's lights fall in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "scene.h"

#define LR_WALLS_SHARE 0.53 /* walls are about a stop under the face (common practice, no source) */

/* Modelling of people, and how bright the rest comes out */
void     lr_scene_light (LrScene *scene, const LrCameraReading *camera, const LrLightLevels *levels);
/* For one of them; without levels untouched */
void     lr_scene_model_person (const LrScene *scene, const LrPlaced *person, LrModelling *modelling);
/* What is added from here on is this piece of furniture, in the light of its own place */
void     lr_scene_enter        (LrScene *scene, const LrPlaced *furniture);
/* What a white surface of it comes out as, 1 the picture's white */
double   lr_scene_light_here   (const LrScene *scene, LrVec3 normal);
/* How much of the key's light a surface takes: soft, it reaches a little round the edge */
double   lr_modelling_key (const LrModelling *modelling, LrVec3 normal);
/* Where a light stands with its lamp, and its axis */
LrVec3   lr_light_lamp  (const LrPlaced *light);
void     lr_light_aim   (const LrStudy *study, const LrPlaced *light, double *facing_rad, double *tilt_rad);
