/* power_readings.h - circuits, leads and stands, computed when they are asked for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * None of it is kept in a study: most frames do not need it. All are estimates from what is drawn; what else hangs on a
 * circuit, and in what state gear is, a plan does not know.
 */

#pragma once

#include "routing.h"
#include "stability.h"
#include "study.h"

#define LR_LEAD_POINTS 32 /* most of a way that is found */
#define LR_WAY_POINTS 128 /* most of a person's way, which goes round corners in steps */

typedef struct
{
  const LrItem *circuit;
  double   rated_w, rated_a;
  double   allowed_share;      /* of the rating: the limit, or all of it under the room's local rule */
  gboolean is_full;            /* a local rule is named */
  double   known_w;            /* what else is told to hang on it */
  double   full_w, dimmed_w;   /* known, and what leads feed: at full, and as dimmed in the plan */
  double   full_a, dimmed_a;   /* the same with power factors */
  double   load_share;         /* of the rating, at full */
  guint    n_sockets, n_leads;
} LrCircuitReading;

typedef struct
{
  const LrItem   *item, *circuit;  /* circuit may be NULL */
  const LrPlaced *load, *socket;   /* may be NULL */
  double path_m;                   /* along the floor */
  double needed_m;                 /* with the drop from the socket and a loop at the stand */
  double plug_off_m, load_off_m;   /* of its ends from the socket and from the load's footprint; NAN without */
  double power_w, current_a;       /* of the load at full; NAN without a circuit */
  double drop_v, drop_share;       /* in the whole lead as bought, warm; NAN without a circuit */
} LrLeadPower;

typedef struct
{
  const LrPlaced *placed;
  gboolean    is_boom;
  LrStandMass masses[6];
  gsize       n_masses;
  double      edge_m, radius_m;   /* from the post to the line between two feet; to a foot */
  double      reach_m;            /* of the arm; 0 without */
  double      head_m;             /* where it would be pushed */
  LrStability gap, leg;           /* the arm over a gap between two legs, and over a leg */
  double      push_n;             /* level push at the head that tips it over a gap */
  double      bag_kg;             /* that hangs there */
  double      wanted_bag_kg;      /* that would have to, to keep the plan's limits */
  double      usual_kg;           /* that its stand is taken to weigh; 0: it was told */
  double      usual_arm_kg, usual_capsule_kg; /* the same of what it holds up */
  double      balance_kg;         /* at the short end, would hold the arm level; NAN without a short end */
} LrStandReading;

typedef struct
{
  const LrPlaced *person, *door;
  double   limit_m;               /* wanted of way and door */
  double   wanted_m, width_m;     /* asked for of the way alone; what gets through, no more than asked for */
  LrVec2   path_m[LR_WAY_POINTS];
  gsize    n_path;                /* 0: nothing of a person's width gets through */
  const LrPlaced *blocker;        /* without which it would be wide enough; may be NULL */
  gboolean has_clearing;          /* the blocker may go there: the smallest move found that makes the way wide enough */
  LrVec2   clearing_m;
  gboolean is_wheelchair;         /* of a wheelchair to its place */
  gboolean is_unknown;            /* person and limit_m alone count: what there is was not found out */
} LrWayOut;

#define LR_WHEELCHAIR_DOOR_M 0.815 /* in the clear: ADA standards 404.2.3, 32 in, from memory */

/* The narrowest of all: of the way or of its door */
static inline double
lr_way_out_clear_m (const LrWayOut *way)
{
  return way->width_m < way->door->item->door.width_m ? way->width_m : way->door->item->door.width_m;
}

/* Takes at full or as dimmed; 0 for what needs no mains */
double   lr_study_power_w     (const LrItem *item, gboolean is_dimmed);
double   lr_study_power_factor (const LrItem *item);
gboolean lr_study_circuit     (const LrStudy *study, const LrItem *circuit, LrCircuitReading *reading);
gboolean lr_study_lead        (const LrStudy *study, const LrItem *lead, LrLeadPower *reading);
/* What leads feed from sockets whose circuit nobody has told, at full [W]; FALSE, untouched: nothing. @sockets (nullable) (element-type LrPlaced):
 * those sockets are added */
gboolean lr_study_untold_w    (const LrStudy *study, GPtrArray *sockets, double *full_w);
/* How many leads are in a socket, but for @but (nullable) */
guint    lr_study_leads_in    (const LrStudy *study, const char *socket, const LrItem *but);
/* The lead that feeds an item; (nullable) */
const LrItem *lr_study_lead_of (const LrStudy *study, const char *id);
gboolean lr_study_stand       (const LrStudy *study, const LrPlaced *placed, LrStandReading *reading);
double   lr_stand_whole_bag_kg (double wanted_kg); /* the sandbag that is brought for it */

/* The floor round a load, for the ways to it from several sockets; of a study, which outlives it */
typedef struct _LrLeadFloor LrLeadFloor;
LrLeadFloor *lr_lead_floor_new (const LrStudy *study, const LrPlaced *load);
void         lr_lead_floor_free (LrLeadFloor *floor);
gboolean     lr_lead_floor_way (const LrLeadFloor *floor, const LrPlaced *socket, LrVec2 path_m[LR_LEAD_POINTS], gsize *n);
/* No lead of any way from there is shorter, in the sense of lr_study_needed_m () */
double       lr_lead_floor_least_m (const LrLeadFloor *floor, const LrPlaced *socket);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLeadFloor, lr_lead_floor_free)

/* A way for a lead along walls, round people, furniture and doors; FALSE: there is none */
gboolean lr_study_lead_way    (const LrStudy *study, const LrPlaced *socket, const LrPlaced *load,
                               LrVec2 path_m[LR_LEAD_POINTS], gsize *n);
/* Path and what is added to it, as in LrLeadPower */
double   lr_study_needed_m    (const LrStudy *study, const LrPlaced *socket, const LrVec2 *path_m, gsize n);
/* What a lead lies across that it should not: a person, the floor of a door; NULL: nothing. @at_m: where */
const LrPlaced *lr_study_lead_across (const LrStudy *study, const LrItem *lead, LrVec2 *at_m);

/* Adds LrWayOut: of all people to the ways out the narrowest, those that are not known, then wheelchairs' ways. Takes milliseconds where a
 * way is narrow */
void     lr_study_ways_out    (const LrStudy *study, GArray *ways);
/* The widest way from a person to a door, up to @wanted_m; FALSE: not known. @moved (nullable): stands elsewhere */
gboolean lr_study_way_out     (const LrStudy *study, const LrPlaced *person, const LrPlaced *door, double wanted_m, LrWayOut *way);
gboolean lr_study_gets_out    (const LrStudy *study, const LrPlaced *person, const LrPlaced *door, double width_m,
                               const LrPlaced *moved, LrVec2 at_m);
