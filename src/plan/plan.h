/* plan.h - the plan: a value
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariants of an LrPlan that anyone holds:
 *  1. It never changes. Edits (plan_edit.h) return the next plan and share with it what did not change.
 *  2. It has at least one set-up; shown is the index of one.
 *  3. Ids are unique within a set-up and within the kit; they are not "".
 *  4. Every number lies in its property's range and is what the file can hold (whole millimetres, ...).
 *  5. A reference names an existing id or is "".
 *  6. A room has no corners (not drawn yet) or at least three, anticlockwise, and does not cross itself.
 *  7. An item on a wall names an existing wall and starts on it. (along_m lies between its corners.)
 *  8. found_of of a set-up is "" or the id of another set-up.
 */

#pragma once

#include "item.h"
#include "picture_file.h"
#include "plan_limits.h"
#include "similarity.h"
#include "sky.h"
#include "supply.h"

#define LR_PLAN_FORMAT "lookroom-plan"
#define LR_KIT_FORMAT "lookroom-kit"
#define LR_PLAN_VERSION 2
#define LR_KIT_VERSION 1
#define LR_MAX_CORNERS 64
#define LR_MAX_PATH_POINTS 64
#define LR_N_BANDS 6 /* octaves 125 Hz to 4 kHz */

typedef struct
{
  char  *material;
  double reflectance;
  double absorption[LR_N_BANDS];
  JsonObject *unknown;
} LrSurface;

typedef struct
{
  int    from, to;   /* corners */
  double length_m;
  JsonObject *unknown;
} LrTapeNote;

/* How a corner turns, as it was seen or measured: to the left along the walls is > 0 */
typedef struct
{
  int    corner;
  double turn_rad;
  JsonObject *unknown;
} LrTurnNote;

typedef struct
{
  LrVec2     *corners_m;
  gsize       n_corners;
  double      height_m;
  double      north_rad;    /* clockwise from up the sheet */
  char       *floor_note;
  double      background_db;   /* dB(A) with every noise of the plan off, as measured; 0: not */
  double      reverberation_s; /* at middle frequencies, as measured by a clap; 0: not */
  char       *full_load_rule; /* the local rule that lets a circuit be loaded to its full rating; "": none is named */
  LrSurface   walls, floor, ceiling;
  gboolean    counts_clockwise; /* walls and corners are numbered as they were taped: with the room on the right */
  LrTapeNote *tape;
  gsize       n_tape;
  LrTurnNote *turns;
  gsize       n_turns;
  LrPictureFile *underlay;     /* a picture of a floor plan, shared; may be NULL */
  char       *underlay_file;   /* what it is called */
  int         underlay_page;   /* of a PDF, from 1; 0: its first */
  double      underlay_scale;  /* metres per picture pixel, of a PDF per point; 0: not known yet */
  double      underlay_x_m, underlay_y_m; /* where its lower left corner lies */
  double      underlay_turn_deg; /* anticlockwise about that corner */
  double      underlay_dim;    /* 0: in full strength, 1: not to be seen */
  gboolean    underlay_is_hidden;
  gboolean    underlay_is_guessed; /* its scale is not from a length that someone knows */
  JsonObject *unknown;
} LrRoom;

typedef struct
{
  char *role, *name, *phone;
  JsonObject *unknown;
} LrContact;

/* Where a room is: another house has another. A copy of a set-up shares it until one of them is changed */
typedef struct
{
  char *name, *address;
  char *access, *permission;                   /* how one gets in, who allows it */
  double latitude_deg, longitude_deg;          /* NAN: not noted */
  double mains_hz;                             /* 0: not told, taken from the volts of its circuits */
  LrContact *contacts;
  gsize      n_contacts;
  JsonObject *unknown;
} LrLocation;

/* Something to ask, with what is to be thought of while it is answered */
typedef struct
{
  char *id;                  /* by which it is ticked */
  char *text, *note;
  JsonObject *unknown;
} LrQuestion;

/* What the user has made of a step of the day: of one that the plan has anyway, or one of their own */
typedef struct
{
  char    *key;              /* of the step; those of the user's own begin with LR_RUN_OWN */
  char    *title;            /* "": as it is called anyway */
  char    *after;            /* own ones: key of the step that it follows; "": the first */
  int      minutes;          /* 0: as estimated; of own ones no time at all */
  gboolean is_left_out;
  JsonObject *unknown;
} LrRunEntry;

#define LR_RUN_OWN "own-"

typedef struct
{
  char *title, *subtitle, *client, *owner, *notes;
  char *date;                                  /* ISO 8601: 2026-02-19 */
  char *time_in, *time_roll, *time_wrap, *time_out; /* 10:00 */
  char *time_zone;                             /* IANA name or UTC */
  int    sky;                                  /* LrSky: what is reckoned with */
  char *created_by, *approved_by, *identification, *revision, *issued;
  char     **requests;                         /* what the place is asked to arrange; NULL-terminated */
  LrQuestion *questions;                       /* in the order in which they are asked */
  gsize       n_questions;
  LrRunEntry *run;                             /* what differs from the run sheet that the plan gives */
  gsize       n_run;
  char     **ticks;                            /* "list/line": what is ticked, in order, each once; NULL-terminated */
  JsonObject *unknown;
} LrJob;

/* Something in the van: how many, and the item that placing one makes */
typedef struct
{
  char   *title, *note; /* "Wide emitter", "90 × 90 cm, 200 W" */
  int     count;
  LrItem *item;         /* its id is the entry's id */
} LrKitEntry;

/* How the walls behind are wanted in a set-up */
typedef enum { LR_WALLS_AT_LEVEL, LR_WALLS_DARK } LrWalls;

typedef struct
{
  char      *id, *name;
  char      *found_of;   /* id of the set-up as planned, of which this one is as found; "" for none */
  double     face_level; /* where the lit side of a face is wanted, share of full signal; 0: where the limits have it */
  int        walls;      /* LrWalls: how the walls behind are wanted */
  double     wall_level; /* where, share of full signal */
  LrLocation *location; /* shared, immutable */
  LrRoom    *room;      /* shared, immutable */
  GPtrArray *items;     /* of LrItem, shared, in the order of drawing and of the file's lists */
  JsonObject *unknown;
} LrSetup;

typedef struct
{
  LrJob     *job;       /* shared, immutable */
  LrLimits   limits;
  GPtrArray *kit;       /* of LrKitEntry, shared as a whole */
  GPtrArray *supplies;  /* of LrSupply, shared as a whole */
  GPtrArray *setups;    /* of LrSetup, each shared */
  guint      shown;
  gboolean   is_read_only; /* of a newer version */
  int        version;      /* of the file's format */
  JsonObject *unknown, *unknown_limits;
} LrPlan;

LrPlan *lr_plan_new_empty (void);           /* one set-up without corners, the generic kit */
LrPlan *lr_plan_ref       (const LrPlan *plan);
void    lr_plan_unref     (LrPlan *plan);
gboolean lr_plan_equal    (const LrPlan *a, const LrPlan *b);
gboolean lr_plan_says_the_same (const LrPlan *a, const LrPlan *b); /* whichever set-up they show */

const LrSetup    *lr_plan_get_setup (const LrPlan *plan);                 /* (transfer none): the shown one */
const LrItem     *lr_plan_find      (const LrPlan *plan, const char *id); /* in the shown set-up; (nullable) */
const LrKitEntry *lr_plan_find_kit  (const LrPlan *plan, const char *id); /* (nullable) */
int               lr_plan_kit_left  (const LrPlan *plan, const LrKitEntry *entry); /* may be < 0 */
const LrItem     *lr_setup_find_role (const LrSetup *setup, LrRole role); /* first person of that role; (nullable) */
const LrItem     *lr_setup_find      (const LrSetup *setup, const char *id); /* (nullable) */
const LrSetup    *lr_plan_planned    (const LrPlan *plan); /* (nullable): of which the shown one is as found */

/* Whether the line @line of @list is ticked: "packing", "stand-1" */
gboolean          lr_plan_is_ticked (const LrPlan *plan, const char *list, const char *line);
#define LR_TICK_FIGURES "=" /* in a tick, before what the line said */
/* (transfer full): key of a line with what it says: ticked for that, it is open again when it says something else */
char             *lr_tick_key       (const char *line, const char *figures);

/* Where the lit side of a face and the walls behind are wanted in the shown set-up, shares of full signal. NAN: as dark as they come */
double            lr_plan_face_level (const LrPlan *plan);
double            lr_plan_wall_level (const LrPlan *plan);

const LrPropTable *lr_job_table  (void);
const LrPropTable *lr_setup_table (void); /* the levels wanted */
const LrPropTable *lr_room_table (void);
const LrPropTable *lr_surface_table (void);
const LrPropTable *lr_location_table (void);
const LrPropTable *lr_contact_table (void);
const LrPropTable *lr_question_table (void);
const LrPropTable *lr_run_table     (void);
const LrPropTable *lr_tape_table    (void);
const LrPropTable *lr_turn_table    (void);
const LrPropTable *lr_kit_entry_table (void); /* title, note, count */

char    *lr_location_dup_where (const LrLocation *location); /* "The mill, 3 Weir Lane" */
gboolean lr_location_is_on_map (const LrLocation *location); /* latitude and longitude are noted */
/* Where an item stands, of whatever kind: on the floor, on its wall, at its wearer, at its first path point */
gboolean lr_setup_place (const LrSetup *setup, const LrItem *item, LrVec2 *at_m, double *facing_rad);
/* How the picture under a room lies, from its pixels (x right, y up from its lower left corner) to the floor; FALSE: there is none */
gboolean lr_room_underlay (const LrRoom *room, LrSimilarity *lies);
/* What an item goes with, never usual; of the wall it is told which (-1: none) */
LrGoes lr_setup_goes_with (const LrSetup *setup, const LrItem *item, int *wall);
/* Where what hangs on a wall of @before begins on it now */
double   lr_found_along_m (const LrSetup *setup, const LrSetup *before, const LrItem *item);
/* Where an item of @before stands now if it went along with the wall that it stays with; FALSE: it stays with none */
gboolean lr_found_place (const LrSetup *setup, const LrSetup *before, const LrItem *item, LrVec2 *to_m, double *turn_rad);
/* What people call a corner or a wall, from 1; wall 1 goes from corner 1 to corner 2 */
int      lr_room_corner_number (const LrRoom *room, int corner);
int      lr_room_wall_number   (const LrRoom *room, int wall);
/* Wall @wall of a room: whether it was taped; its first corner, the direction along it, its length; the room lies to the left */
gboolean lr_room_is_taped (const LrRoom *room, int wall);
gboolean lr_room_wall   (const LrRoom *room, int wall, LrVec2 *from_m, LrVec2 *along, double *length_m);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrPlan, lr_plan_unref)

/* Errors of the layer: one code per cause that a caller can act on */
#define LR_PLAN_ERROR lr_plan_error_quark ()
GQuark lr_plan_error_quark (void);

typedef enum
{
  LR_PLAN_ERROR_IO,        /* cannot be opened, read or written */
  LR_PLAN_ERROR_SYNTAX,    /* not JSON */
  LR_PLAN_ERROR_FORMAT,    /* JSON, but not a plan */
  LR_PLAN_ERROR_VALUE,     /* a member has a wrong type or lies outside its range */
  LR_PLAN_ERROR_REFERENCE, /* names something that is not there, or an id twice */
  LR_PLAN_ERROR_VERSION,   /* of a newer version that cannot be saved over */
  LR_PLAN_ERROR_TOO_LARGE,
  LR_PLAN_ERROR_NOT_FOUND, /* no such item, property or set-up */
  LR_PLAN_ERROR_REFUSED,   /* an edit that the invariants forbid */
} LrPlanError;
