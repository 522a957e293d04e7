/* lamp_output.h - what leaves a lamp, from whichever figure of its output is given, through what sits in front of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "item.h"
#include "light.h"

/* Shape, size and beam of what emits; where it is and which way it points are left as they are */
void   lr_lamp_take_face (const LrLight *light, LrEmitter *emitter);
/* On the axis of that face, undimmed [cd]; 0: it gives none */
double lr_lamp_candela   (const LrLight *light);
