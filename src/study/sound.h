/* sound.h - how the room answers, and what each microphone hears of voice, room and noises
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Levels are A-weighted [dB], and sums of energy. The voice counts as straight sound alone; what the room gives back of it is the
 * reverberation. A pattern is taken at 500 Hz, where an interference tube is little more than its capsule: hum and reverberation lie
 * there, and a tube that is praised for its high notes does not take them away. Predictions in small rooms are right to some 3 dB.
 */

#pragma once

#include "pattern.h"
#include "room_modes.h"
#include "study.h"

#define LR_SOUND_PATTERN_HZ 500.0
#define LR_SOUND_DULL_HZ 2000.0 /* where a voice that is off the axis is judged */
#define LR_MAX_SOUND_MICROPHONES 16

typedef enum
{
  LR_SOUND_WALLS, LR_SOUND_FLOOR, LR_SOUND_CEILING, LR_SOUND_OPENINGS, LR_SOUND_PEOPLE, LR_SOUND_FURNITURE, LR_N_SOUND_PARTS
} LrSoundPart;

typedef struct
{
  double   volume_m3, surface_m2;
  double   part_m2[LR_N_SOUND_PARTS]; /* what each takes up at middle frequencies: the mean of 500 Hz and 1 kHz */
  double   mean_absorption;           /* of the surfaces, at middle frequencies */
  double   sabine_s[LR_N_BANDS], eyring_s[LR_N_BANDS];
  gboolean is_eyring;                 /* it is used, for Sabine's is too long in a room so soft */
  gboolean is_measured;               /* the time at middle frequencies is what was measured, not what was computed */
  double   mid_s;                     /* at middle frequencies, as used */
  double   absorption_m2;             /* that makes it ring so long */
  double   background_db;             /* with every noise off */
  gboolean is_background_measured;
  double   voice_db;                  /* of a voice at 1 m */
  double   critical_m;                /* of a voice, for a microphone that hears all round */
  double   schroeder_hz;              /* under it single modes are heard */
  double   modes_hz[3];               /* the first along the room, across and up; of the box that holds it */
  double   crowded_hz;                /* where two sides boom together, within 5 %, in a voice's reach; NAN: nowhere */
  int      flutter_wall;              /* the first of two bare walls that face each other; -1: none */
  LrFlutter flutter;
} LrRoomSound;

/* What a microphone hears of one noise */
typedef struct
{
  const LrPlaced *noise;  /* NULL: the room with all noises off */
  double level_db;        /* after the pattern, straight and from the room */
  double win_db;          /* how much farther the voice is over the rest without it */
} LrNoiseLevel;

typedef struct
{
  LrComb comb;
  LrVec3 at_m;            /* where the voice is thrown back */
  int    wall;            /* -1: not a wall */
  const LrPlaced *item;   /* a table; NULL: a wall, or floor and ceiling, by the height */
} LrCombReading;

typedef struct
{
  const LrPlaced *placed, *talker;
  LrPattern pattern;
  LrVec3    capsule_m, axis, mouth_m;
  double    distance_m;    /* mouth to capsule */
  double    off_axis_rad;  /* of the mouth */
  double    off_mouth_rad; /* of the capsule, off the way that the mouth points */
  double    lean_off_axis_rad; /* the most, as the talker leans */
  double    dull_db;       /* what the voice then loses at 2 kHz against one on the axis, <= 0 */
  double    voice_db;      /* straight */
  double    reverberant_db;
  double    direct_db;     /* voice over reverberation */
  double    noise_db;      /* all of them */
  double    over_db;       /* voice over noise */
  double    quiet_over_db; /* the same with everything off that can be switched off */
  GArray   *noises;        /* LrNoiseLevel: the loudest first */
  gboolean  has_comb;
  LrCombReading comb;      /* the strongest */
} LrMicrophoneSound;

typedef struct LrSound
{
  gboolean    has_room;    /* a room is drawn; else nothing else is known */
  LrRoomSound room;
  GArray     *microphones; /* LrMicrophoneSound: those that somebody speaks into */
} LrSound;

/* Computed when first asked for; lives as long as the study */
const LrSound *lr_study_sound (const LrStudy *study);
const LrMicrophoneSound *lr_sound_find (const LrSound *sound, const char *microphone); /* (nullable) */
/* Of all that somebody speaks into, the one whose voice is farthest over the noise, or over the room; (nullable) */
const LrMicrophoneSound *lr_sound_best (const LrSound *sound, const LrPlaced *talker, gboolean over_noise);
/* What a meter reads so far from a noise [dB]; > 0 [m] */
double lr_sound_level_at_db (const LrSound *sound, const LrNoise *noise, double away_m);
/* How far the voice is over the noise with some of them off, by index in @microphone->noises */
double lr_sound_over_without (const LrMicrophoneSound *microphone, const gboolean *is_off);

static inline const LrMicrophoneSound *
lr_sound_microphone (const LrSound *sound,
                     guint          index)
{
  return &g_array_index (sound->microphones, LrMicrophoneSound, index);
}

static inline const LrNoiseLevel *
lr_sound_noise (const LrMicrophoneSound *microphone,
                guint                    index)
{
  return &g_array_index (microphone->noises, LrNoiseLevel, index);
}
