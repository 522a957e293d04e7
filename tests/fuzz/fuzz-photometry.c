/* fuzz-photometry.c - any bytes give intensities or a reason, by both readers of photometric files
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Build with -Dfuzz=true and clang, run in a folder of its own with photometric files as seeds:
 *   fuzz-photometry corpus -max_len=4096
 * The first byte chooses the reader.
 */

#include "photometry.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t length);

static void
insist (bool is_so)
{
  if (!is_so)
    abort ();
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

  is_read = data[0] & 1 ? lr_photometry_read_ies (text, length - 1, &photometry, &error)
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
  lr_photometry_clear (&photometry);
  return 0;
}
