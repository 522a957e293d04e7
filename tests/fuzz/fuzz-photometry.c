/* fuzz-photometry.c - any bytes give intensities or a reason, by both readers of photometric files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Build with -Dfuzz=true and clang, run in a folder of its own with photometric files as seeds:
 *   fuzz-photometry corpus -max_len=4096
 * The first byte chooses the reader, unless FUZZ_READER=ies or ldt in the environment does.
 */

#include "light.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t length);

static void
insist (bool is_so)
{
  if (!is_so)
    abort ();
}

static bool
wants_ies (uint8_t first)
{
  const char *reader = getenv ("FUZZ_READER");

  return reader != NULL ? strcmp (reader, "ies") == 0 : (first & 1) != 0;
}

/* A lamp of it: whatever its size and shape, its light is finite */
static void
shine (const LrPhotometry *photometry)
{
  LrEmitter lamp = {
    .shape = LR_EMITTER_RECTANGLE, .axis = { 1.0, 0.0, 0.0 }, .right = { 0.0, -1.0, 0.0 }, .up = { 0.0, 0.0, 1.0 }, .width_m = 0.3, .height_m = 0.6,
  };
  const LrVec3 at_m[] = { { 2.0, 0.5, 0.1 }, { -1.0, 0.0, 0.2 }, { 0.01, 0.1, 0.0 }, { 0.0, 0.0, 1e-9 } };
  double spread_rad = 0.0, lux = 0.0;

  insist (!lr_photometry_spread_rad (photometry, 0.5, 30.0, &spread_rad) || (spread_rad >= 0.0 && spread_rad <= 2.0 * LR_PI + 1e-9));
  lr_emitter_take_table (&lamp, photometry, 0.5);
  for (size_t i = 0; i < sizeof at_m / sizeof *at_m; i++)
    insist (lr_emitter_lx (&lamp, at_m[i], (LrVec3) { -1.0, 0.0, 0.0 }, &lux) && isfinite (lux) && lux >= 0.0);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         length)
{
  LrPhotometryError error = { 0, 0 };
  LrPhotometry photometry = { .warnings = 77 };
  const char *text = (const char *) data + 1;
  bool is_read;

  if (length < 1)
    return 0;

  is_read = wants_ies (data[0]) ? lr_photometry_read_ies (text, length - 1, &photometry, &error)
                        : lr_photometry_read_ldt (text, length - 1, &photometry, &error);
  if (!is_read)
    {
      insist (error.line >= 1 && photometry.warnings == 77 && photometry.candela == NULL);
      return 0;
    }

  insist (photometry.n_v > 0 && photometry.n_h > 0);
  insist (isfinite (lr_photometry_flux_lm (&photometry)));
  for (double v = 0.0; v <= 180.0; v += 22.5)
    for (double h = -90.0; h <= 450.0; h += 45.0)
      insist (lr_photometry_candela (&photometry, v, h) >= 0.0);
  shine (&photometry);
  lr_photometry_clear (&photometry);
  return 0;
}
