/* packing_words.h - the packing list in words, with what the asks say to bring
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "packing.h"
#include "units.h"

typedef struct
{
  LrPackGroup group;
  char *key;       /* the same from day to day: "power/kit:lead-10" */
  char *tick;      /* by which it is ticked: so many of it */
  char *title;     /* "Lead, 10 m" */
  int   quantity, spare;
  int   owned;     /* -1: the kit does not count such things */
  int   missing;   /* of what is needed */
  char *why;       /* "to L1 key 6.20 m, to L2 fill 4.10 m; 1 in reserve" */
  char *lack;      /* "the kit has 1 of 2"; "" when nothing is missing */
} LrPackRow;

/* (transfer full) (element-type LrPackRow): in the order of the groups */
GPtrArray  *lr_pack_rows_new    (const LrStudy *study, LrUnits units);
const char *lr_pack_group_title (LrPackGroup group); /* translated: "Cameras" */
const char *lr_pack_lack_title  (void);              /* translated, of what is missing: "Not in the kit" */
const char *lr_pack_empty_text  (void);              /* translated, for a list without rows */
/* How many rows lack something */
guint       lr_pack_rows_lacking (const GPtrArray *rows);
/* { format, hours, rows: [...] }; (transfer full) */
JsonNode   *lr_pack_rows_to_json (const GPtrArray *rows);
/* RFC 4180, with a line of titles; (transfer full) */
char       *lr_pack_rows_to_csv  (const GPtrArray *rows);
