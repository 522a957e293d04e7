/* plan_diff.h - what is different between a set-up as planned and as found
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values, no words. What a tape cannot tell, less than a centimetre or a degree, is no difference; nor is what went along
 * with its wall, or with the set when that moved as one.
 */

#pragma once

#include "plan.h"

#define LR_DIFF_LENGTH_M 0.01
#define LR_DIFF_ANGLE_RAD (1.0 * LR_DEG)

typedef enum
{
  LR_DIFF_WALLS,   /* another number of walls: from, to */
  LR_DIFF_WALL,    /* length of a wall: from, to [m] */
  LR_DIFF_CORNER,  /* how the walls meet at the start of a wall: from, to [rad], inside the room */
  LR_DIFF_SET,     /* the whole set moved from_m to to_m, where its subject is, and turned */
  LR_DIFF_ADDED, LR_DIFF_GONE,
  LR_DIFF_MOVED,   /* from_m, to_m; from_m is where it would be if it had gone along with the set */
  LR_DIFF_TURNED,  /* turn_rad */
  LR_DIFF_TIP,     /* the capsule of a boom: from_m, to_m */
  LR_DIFF_WAY,     /* a lead lies another way: from, to [m] along it */
  LR_DIFF_CONTACTS, /* other people to call at the place */
  LR_DIFF_CHANGED, /* a property: prop, from, to; of a text in was_owner, now_owner */
} LrDiffType;

typedef enum { LR_DIFF_OF_ROOM, LR_DIFF_OF_PEOPLE, LR_DIFF_OF_CAMERAS, LR_DIFF_OF_LIGHTS, LR_DIFF_OF_SOUND, LR_DIFF_OF_REST } LrDiffGroup;

/* Whose property it is when it is of no item */
typedef enum { LR_DIFF_OWNER_ITEM, LR_DIFF_OWNER_SETUP, LR_DIFF_OWNER_LOCATION, LR_DIFF_OWNER_ROOM, LR_DIFF_OWNER_WALLS, LR_DIFF_OWNER_FLOOR, LR_DIFF_OWNER_CEILING } LrDiffOwner;

typedef struct
{
  LrDiffType    type;
  LrDiffGroup   group;
  const LrItem *was, *now;    /* NULL: of the room or the set, or not there */
  int           wall;
  const LrProp *prop;
  LrDiffOwner   owner;
  gconstpointer was_owner, now_owner;
  double        from, to;     /* inside units */
  LrVec2        from_m, to_m;
  double        turn_rad;     /* anticlockwise */
  double        nearer_m;     /* to the subject than planned; NAN: there is none, or it is the subject itself */
} LrDiff;

typedef struct
{
  LrPlan        *was_plan, *now_plan; /* held */
  const LrSetup *was, *now;
  GArray        *all;         /* LrDiff: room, people, cameras, lights, sound, rest; steady order within */
} LrPlanDiff;

/* The shown set-ups of the two, which may be of one plan or of two */
LrPlanDiff *lr_plan_diff_new  (const LrPlan *planned, const LrPlan *found);
void        lr_plan_diff_free (LrPlanDiff *diff);
/* From where an item was planned to be, had it gone along with the set, to where it is; (nullable) */
const LrDiff *lr_plan_diff_find (const LrPlanDiff *diff, LrDiffType type, const char *id);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrPlanDiff, lr_plan_diff_free)
