/* prop_rows.h - shorthand for the rows of a property table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For the files that define tables. ROW_OWNER is the struct that the fields belong to; a file may redefine it between
 * tables. Lengths in metres, shares as fractions, angles in degrees.
 */

#pragma once

#include "prop.h"
#include "vec.h"

#define ROW(key_, label_, type_, field_, ...) \
  { .key = key_, .label = label_, .type = type_, .offset = G_STRUCT_OFFSET (ROW_OWNER, field_), __VA_ARGS__ }
#define LENGTH(key_, label_, field_, min_, max_, fallback_) \
  ROW (key_, label_, LR_PROP_LENGTH, field_, .min = min_, .max = max_, .fallback = fallback_)
#define LENGTH_OR_NONE(key_, label_, field_, min_, max_) \
  ROW (key_, label_, LR_PROP_LENGTH, field_, .min = min_, .max = max_, .is_optional = TRUE)
#define FINE(key_, label_, field_, min_, max_, fallback_) \
  ROW (key_, label_, LR_PROP_FINE_LENGTH, field_, .min = min_, .max = max_, .fallback = fallback_)
#define ANGLE(key_, label_, field_, min_deg_, max_deg_, fallback_deg_) \
  ROW (key_, label_, LR_PROP_ANGLE, field_, .min = (min_deg_) * LR_DEG, .max = (max_deg_) * LR_DEG, \
       .fallback = (fallback_deg_) * LR_DEG)
#define SHARE(key_, label_, field_, min_, max_, fallback_) \
  ROW (key_, label_, LR_PROP_SHARE, field_, .min = min_, .max = max_, .fallback = fallback_)
#define NUMBER(key_, label_, field_, min_, max_, fallback_, decimals_, unit_) \
  ROW (key_, label_, LR_PROP_NUMBER, field_, .min = min_, .max = max_, .fallback = fallback_, \
       .decimals = decimals_, .unit = unit_)
#define NUMBER_OR_NONE(key_, label_, field_, min_, max_, decimals_, unit_) \
  ROW (key_, label_, LR_PROP_NUMBER, field_, .min = min_, .max = max_, .decimals = decimals_, .unit = unit_, .is_optional = TRUE)
#define FLAG_IF_SET(key_, label_, field_) ROW (key_, label_, LR_PROP_FLAG, field_, .max = 1.0, .is_optional = TRUE)
#define COUNT(key_, label_, field_, min_, max_, fallback_) \
  ROW (key_, label_, LR_PROP_COUNT, field_, .min = min_, .max = max_, .fallback = fallback_)
#define FLAG(key_, label_, field_, fallback_) \
  ROW (key_, label_, LR_PROP_FLAG, field_, .max = 1.0, .fallback = fallback_)
#define CHOICE(key_, label_, field_, choices_, fallback_) \
  ROW (key_, label_, LR_PROP_CHOICE, field_, .max = G_N_ELEMENTS (choices_) - 2, .fallback = fallback_, \
       .choices = choices_)
#define TEXT(key_, label_, field_) ROW (key_, label_, LR_PROP_TEXT, field_, .is_optional = FALSE)
#define TEXT_OR_NONE(key_, label_, field_) ROW (key_, label_, LR_PROP_TEXT, field_, .is_optional = TRUE)
#define REF(key_, label_, field_, target_) ROW (key_, label_, LR_PROP_REF, field_, .target = target_)
#define TABLE(rows_) { rows_, G_N_ELEMENTS (rows_) }
