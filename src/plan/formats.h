/* formats.h - sensors, lenses and factors by name, from the tables in data
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tables are part of the program. Titles are for people, not yet translated: give them to gettext. Sources say where a
 * row comes from.
 */

#pragma once

#include "item.h"

typedef struct
{
  const char *id, *title, *source;
  double      width_m, height_m;
} LrSensorFormat;

typedef struct
{
  const char *id, *title, *note, *source; /* note: of its stops */
  const LrItem *item;                     /* a lens */
} LrLensType;

typedef struct
{
  double      value;
  const char *title, *source;
} LrFactor;

const LrSensorFormat *lr_sensor_formats     (gsize *n);
const LrSensorFormat *lr_sensor_format_find (double width_m, double height_m); /* (nullable) */
const LrLensType     *lr_lens_types         (gsize *n);
const LrLensType     *lr_lens_type_find     (const char *id);                  /* (nullable) */
/* What a property of this key usually is: "sensor-crop", "squeeze", "converter", "omni-share-pct", "tube-mm"; (nullable), with @n 0,
 * for others */
const LrFactor       *lr_format_factors     (const char *key, gsize *n);
