/* viewfinder_private.h - what the files of the viewfinder share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "viewfinder.h"

void lr_viewfinder_draw_guides (cairo_t *cr, const LrCameraReading *camera, const LrViewfinderStyle *style,
                                const LrPictureBox *picture, const LrPictureBox *box); /* viewfinder_guides.c */
