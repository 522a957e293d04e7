/* finder_hand.h - the hand on a viewfinder's picture: drag to pan and tilt, wheel to zoom, arrow keys
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"
#include "finder_picture.h"

/* The picture keeps it; @document outlives the picture */
void lr_finder_hand_add (LrFinderPicture *picture, LrDocument *document);
