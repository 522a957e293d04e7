/* wall_surface.h - what a wall is made of from place to place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"

/* How much light a place of a wall gives back: wall, glass or blind. @along_m from its first corner */
double lr_wall_reflectance (const LrStudy *study, int wall, double along_m, double z_m);
