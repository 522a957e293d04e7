/* source_rows.h - what each source alone gives a face and the walls behind it, to be listed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_alone.h"

typedef struct
{
  char    *title;                   /* "L1 key, at 60 %" */
  gboolean is_out;                  /* what it would give at full; not in the sum */
  gboolean is_sum;                  /* all that shine; the last row */
  double   face_lx, face_stops;     /* on the lit cheek, bounces too; against all that it gets. NAN: nothing */
  double   walls_lx, walls_stops;   /* on the walls behind, in the mean, against the face. NAN: nothing, or no wall is seen */
} LrSourceRow;

typedef struct
{
  const LrPlaced *person, *camera;  /* in the levels; (nullable) camera: none frames the person */
  GArray *rows;                     /* LrSourceRow: in the set-up's order; empty: nothing gives light */
} LrSourceRows;

/* (transfer full) (nullable): @person (nullable): id, else whom the first camera frames. NULL: the levels are not whole, or nobody is there */
LrSourceRows *lr_source_rows_new  (const LrLightLevels *levels, const char *person);
void          lr_source_rows_free (LrSourceRows *rows);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrSourceRows, lr_source_rows_free)
