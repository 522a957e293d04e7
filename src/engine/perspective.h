/* perspective.h - what distance does to sizes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

bool lr_background_extent_m (double subject_field_m, double subject_m, double behind_m, double *extent_m);
bool lr_background_size_ratio (double subject_m, double behind_m, double *ratio);
bool lr_distance_for_background_m (double subject_field_m, double background_field_m, double behind_m, double *subject_m);
bool lr_face_depth_ratio (double subject_m, double half_head_depth_m, double *ratio);
