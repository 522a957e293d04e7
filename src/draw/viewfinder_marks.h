/* viewfinder_marks.h - what stands in a picture that should not, outlined in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "viewfinder.h"

/* Over the delivered frame. Fix always; Mind with has_minds, or when the style's remark speaks of it */
void lr_viewfinder_marks (cairo_t *cr, const LrStudy *study, const LrCameraReading *camera, const LrViewfinderStyle *style,
                          const LrPictureBox *delivered);
