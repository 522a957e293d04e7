/* packing.h - what has to come along, reckoned from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is placed in the shown set-up, what holds it up and down, what it runs from and records on, each with what it is for. How many
 * the kit has is set beside it, where the kit counts such things. Quantities are estimates by rules of thumb, each told in packing.c and
 * its neighbours; sentences are the judge's (packing_words.h).
 */

#pragma once

#include "study.h"

typedef enum
{
  LR_PACK_CAMERA,
  LR_PACK_LENS,
  LR_PACK_SUPPORT,
  LR_PACK_LIGHT,
  LR_PACK_SOUND,
  LR_PACK_POWER,
  LR_PACK_GRIP,
  LR_PACK_SUNDRIES,
  LR_N_PACK_GROUPS
} LrPackGroup;

typedef enum
{
  LR_PACK_THING,          /* placed, or the lens of a camera */
  LR_PACK_FILTER,         /* size in stops */
  LR_PACK_MODIFIER,
  LR_PACK_TRIPOD,
  LR_PACK_STAND,
  LR_PACK_BOOM_STAND,
  LR_PACK_CLAMP,
  LR_PACK_SANDBAG,        /* size in kilograms */
  LR_PACK_COUNTERWEIGHT,  /* size in kilograms */
  LR_PACK_LEAD_TO_FIND,   /* a lead that must reach farther than any of the kit, or is not laid yet; size in metres */
  LR_PACK_MULTIWAY,
  LR_PACK_CAMERA_BATTERY, /* size in watt-hours */
  LR_PACK_LIGHT_BATTERY,  /* size in watt-hours */
  LR_PACK_CARD,           /* size in 10^9 bytes */
  LR_PACK_CELLS,
  LR_PACK_SOUND_LEAD,     /* size in metres */
  LR_PACK_HEADPHONES,
  LR_PACK_FLOOR_TAPE,     /* size in metres: of a roll */
  LR_PACK_MARK_TAPE,      /* size in metres: of a roll */
  LR_PACK_SPARE_LAMP,
  LR_N_PACK_WHATS
} LrPackWhat;

/* Some of a line, for one thing */
typedef struct
{
  const LrItem *item;
  int           count;
  double        figure;   /* metres that a lead must reach, watts that are run, 10^9 bytes that are recorded; NAN */
  gboolean      is_mains; /* it runs from a socket: the battery is in case that fails */
  gboolean      is_usual; /* the figure is a usual one: the plan does not tell it */
} LrPackUse;

typedef struct
{
  LrPackGroup group;
  LrPackWhat  what;
  char       *key;        /* the same from day to day: ticks go by it */
  char       *title;      /* as the kit or the plan calls it; "": by what it is */
  const LrKitEntry *entry; /* whose things these are; (nullable) */
  GArray     *uses;       /* LrPackUse; quantity is their counts and the spare */
  int         quantity, spare;
  int         owned;      /* in the kit; -1: the kit does not count such things */
  int         missing;    /* of what is needed; a spare that is missing does not count */
  double      size;       /* of one, or at least; 0: none */
  gboolean    is_usual_size; /* the plan does not tell it */
  double      total;      /* metres of tape; 10^9 bytes; watt-hours; NAN */
} LrPackLine;

typedef struct
{
  GPtrArray *lines;       /* LrPackLine, in the order of the groups */
  double     hours;       /* from rolling to wrap */
  gboolean   is_usual_hours; /* the job does not tell them */
  int        n_missing;   /* lines of which something is */
} LrPacking;

/* Rules of thumb that sentences tell */
#define LR_PACK_MORE_TIME 0.25    /* of the running time, in reserve for batteries */
#define LR_PACK_USABLE 0.8        /* of a battery's energy */
#define LR_PACK_MORE_MEDIA 0.5    /* of what is recorded, in reserve for cards */
#define LR_PACK_FILL 0.9          /* of a card */

/* What packing reckons with for a number of a thing where neither it nor its kit entry tells it; 0: there is nothing usual */
double     lr_pack_usual   (LrItemKind kind, const char *key);
/* The number @key of what is placed, else of the kit entry that it was taken from; 0: neither tells it */
double     lr_pack_told    (const LrStudy *study, const LrItem *item, const char *key);

LrPacking *lr_packing_new  (const LrStudy *study);
void       lr_packing_free (LrPacking *packing);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrPacking, lr_packing_free)
