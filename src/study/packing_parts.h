/* packing_parts.h - what the files that fill a packing list share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "packing.h"

/* (transfer none): the line of that key, a fresh one behind the others if it is not there yet */
LrPackLine *lr_pack_line  (LrPacking *packing, LrPackGroup group, LrPackWhat what, const char *name);
void        lr_pack_use   (LrPackLine *line, const LrItem *item, int count, double figure);
void        lr_pack_spare (LrPackLine *line, int count); /* that many more */
/* What is placed of a kit entry, or the thing alone where it is of none */
LrPackLine *lr_pack_thing (LrPacking *packing, const LrStudy *study, LrPackGroup group, const char *kit_id, const LrItem *item);

/* packing_support.c: tripods, stands, clamps, bags */
void lr_pack_supports (LrPacking *packing, const LrStudy *study);
/* packing_power.c: leads, multiway sockets, batteries */
void lr_pack_leads     (LrPacking *packing, const LrStudy *study);
void lr_pack_batteries (LrPacking *packing, const LrStudy *study);
/* packing_sundries.c: cards, what sound takes, tape */
void lr_pack_media     (LrPacking *packing, const LrStudy *study);
void lr_pack_sound     (LrPacking *packing, const LrStudy *study);
void lr_pack_tape      (LrPacking *packing, const LrStudy *study);
