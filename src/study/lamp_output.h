/* lamp_output.h - what leaves a lamp, from whichever figure of its output is given, through what sits in front of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "item.h"
#include "light.h"

/* Shape, size, beam and intensity of what emits, undimmed; where it is and which way it points are left as they are. The intensity is 0
 * if the lamp gives none. A photometric file is lent */
void     lr_lamp_emit   (const LrItem *light, LrEmitter *emitter);
/* Whether it has an output at all, by whichever figure, were it not dimmed */
gboolean lr_lamp_shines (const LrItem *light);
