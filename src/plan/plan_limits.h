/* plan_limits.h - every threshold that a remark uses, with its default and where that comes from
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Not named limits.h: this folder is on the include path, and <limits.h> would find it.
 */

#pragma once

#include "prop.h"

typedef enum
{
  LR_LIMIT_LINE_MARGIN,        /* rad: nearer to the line of action than this is a Mind */
  LR_LIMIT_GAZE_MIN,           /* rad: under it the look seems to miss the lens */
  LR_LIMIT_GAZE_MAX,           /* rad: main camera */
  LR_LIMIT_GAZE_MAX_SECOND,    /* rad: other cameras */
  LR_LIMIT_LENS_ELEVATION,     /* rad: lens against the subject's eyes */
  LR_LIMIT_EYELINE_ELEVATION,  /* rad: interviewer's eyes against the lens, seen by the subject */
  LR_LIMIT_EYES_LEVEL,         /* m: interviewer's eyes against the subject's */
  LR_LIMIT_NATURAL_DISTANCE,   /* m: nearer to the face its perspective looks unnatural */
  LR_LIMIT_BACKGROUND_DISTANCE,/* m: subject to what stands behind */
  LR_LIMIT_BACKGROUND_BLUR,    /* share of frame width */
  LR_LIMIT_DEPTH_COMFORT,      /* m: total depth of field */
  LR_LIMIT_DEPTH_LEAST,        /* m */
  LR_LIMIT_DEPTH_FRONT,        /* m: in front of the eyes */
  LR_LIMIT_CUT_ANGLE,          /* rad: least angle between cameras, the 30° rule */
  LR_LIMIT_CUT_STEPS,          /* shot sizes: or this many sizes apart */
  LR_LIMIT_CUT_EYES,           /* share of frame height: the eyes jump by no more in a cut */
  LR_LIMIT_HEADROOM_MIN,       /* share of frame height: medium close-up and wider */
  LR_LIMIT_HEADROOM_MAX_CLOSE, /* close-up */
  LR_LIMIT_HEADROOM_MAX,       /* medium close-up and medium shot */
  LR_LIMIT_HEADROOM_MAX_WIDE,  /* medium long shot */
  LR_LIMIT_EYES_THIRD,         /* share of frame height: eyes off the upper third, or off where the rule has them */
  LR_LIMIT_LOOK_ROOM_MIN,      /* share of frame width ahead of the face: under it the frame is short-sided */
  LR_LIMIT_LOOK_ROOM_USUAL,
  LR_LIMIT_JOINT,              /* m: the lower edge keeps as far from neck, elbow and knee */
  LR_LIMIT_BOOM_MARGIN,        /* share of frame height: least way of a boom over the frame */
  LR_LIMIT_FACE_LEVEL,         /* share of full signal: where the lit side of a face is wanted */
  LR_LIMIT_FACE_LEVEL_OFF,     /* stops: it may be off by */
  LR_LIMIT_RATIO_MIN,          /* stops: key side over shadow side */
  LR_LIMIT_RATIO_MAX,
  LR_LIMIT_WALL_UNDER_FACE,    /* stops: the wall behind is darker than the face by */
  LR_LIMIT_CLOTHES_STEP,       /* stops: clothes from the walls behind */
  LR_LIMIT_CLOTHES_DARK,       /* share of full signal: clothes darker than this have no drawing */
  LR_LIMIT_WALL_LEVEL_OFF,     /* stops: the wall behind may be off where the set-up wants it by */
  LR_LIMIT_SHADOW_DEPTH,       /* stops: from here on a shadow on a wall behind shows */
  LR_LIMIT_EXPOSURE_MATCH,     /* stops: between two cameras */
  LR_LIMIT_NATIVE_ISO,         /* stops: ISO off the nearest native value */
  LR_LIMIT_SHUTTER_MIN,        /* rad: opening of the shutter */
  LR_LIMIT_SHUTTER_MAX,
  LR_LIMIT_WHITE_OFF,          /* MK^-1: white balance off what reaches the face */
  LR_LIMIT_MIXED_WHITES,       /* MK^-1: between sources on one face */
  LR_LIMIT_VOICE,              /* dB(A): of a voice 1 m before the mouth */
  LR_LIMIT_BACKGROUND,         /* dB(A): of a room with its noises off, while none was measured */
  LR_LIMIT_OVER_NOISE,         /* dB: voice over noise */
  LR_LIMIT_OVER_NOISE_LEAST,   /* dB */
  LR_LIMIT_REVERBERATION,      /* s: at middle frequencies */
  LR_LIMIT_OVER_ROOM,          /* dB: voice over what the room gives back of it */
  LR_LIMIT_OFF_AXIS,           /* dB: a voice at 2 kHz loses by being off the axis */
  LR_LIMIT_COMB,               /* share: of a reflection, as pressure, of the voice */
  LR_LIMIT_BOOM_FAR,           /* m: capsule of a boom from the mouth */
  LR_LIMIT_OVERLAP,            /* m: footprints may overlap by this much */
  LR_LIMIT_TAPE_LENGTH,        /* m: of the tape that things are set out with */
  LR_LIMIT_WAY_OUT,            /* m: clear width on the way to the door */
  LR_LIMIT_CIRCUIT_SHARE,       /* share of a circuit's rating that lamps may take for hours; all of it under a local rule that is named */
  LR_LIMIT_VOLTAGE_DROP,        /* share of the volts lost in a lead */
  LR_LIMIT_LEAD_SLACK,          /* m: a loop of each lead at the foot of the stand */
  LR_LIMIT_LEAD_OFF,            /* m: an end of a lead lies by its socket or its lamp */
  LR_LIMIT_WOUND_SHARE,         /* share of its full rating that a reel bears wound up */
  LR_LIMIT_STAND_FACTOR,        /* what holds a stand over what tips it */
  LR_LIMIT_STAND_PUSH,          /* N: a stand bears such a push at its head */
  LR_LIMIT_HEAD_CLEAR,          /* m: a boom over a head */
  LR_LIMIT_LAMP_CLOTH,          /* m: a lamp from cloth */
  LR_LIMIT_LAMP_CEILING,        /* m: a lamp under the ceiling */
  LR_LIMIT_EXIT_WIDTH,          /* m: clear width all the way from a seat to a way out */
  LR_LIMIT_EXIT_LEAST,          /* m: less is a Fix */
  LR_LIMIT_WHEELCHAIR,          /* m: clear width for a wheelchair */
  LR_N_LIMITS
} LrLimit;

typedef struct
{
  const char *source;  /* for people, to be translated: where the default comes from */
  LrProp      prop;    /* key, label, type, range, default; offset unused */
} LrLimitInfo;

typedef struct
{
  double   value[LR_N_LIMITS];   /* inside units */
  gboolean is_set[LR_N_LIMITS];  /* changed by the user: only these are in the file */
} LrLimits;

const LrLimitInfo *lr_limit_info   (LrLimit limit);
void               lr_limits_init  (LrLimits *limits);
