/* plan_limits.c - the defaults of every threshold, and where they come from
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_limits.h"

#include "vec.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ANGLE(key_, label_, max_deg_, fallback_deg_) \
  { .key = key_, .label = label_, .type = LR_PROP_ANGLE, .max = (max_deg_) * LR_DEG, .fallback = (fallback_deg_) * LR_DEG }
#define LENGTH(key_, label_, max_, fallback_) \
  { .key = key_, .label = label_, .type = LR_PROP_LENGTH, .max = max_, .fallback = fallback_ }
#define SHARE(key_, label_, max_, fallback_) \
  { .key = key_, .label = label_, .type = LR_PROP_SHARE, .max = max_, .fallback = fallback_ }
#define NUMBER(key_, label_, max_, fallback_, unit_) \
  { .key = key_, .label = label_, .type = LR_PROP_NUMBER, .max = max_, .fallback = fallback_, .decimals = 1, .unit = unit_ }
#define COMMON_PRACTICE N_("common practice, no source")

static const LrLimitInfo limits_info[LR_N_LIMITS] = {
  [LR_LIMIT_LINE_MARGIN] = {
    N_("common practice, no source: within about 3° of the lens a look reads as into it"),
    ANGLE ("line-margin-deg", N_("Least angle from the line of action"), 90, 3) },
  [LR_LIMIT_GAZE_MIN] = {
    N_("common practice, no source: from 3° to 8° a look seems to just miss the lens"),
    ANGLE ("gaze-min-deg", N_("Least gaze angle"), 90, 8) },
  [LR_LIMIT_GAZE_MAX] = {
    N_("common practice, no source: 8° to 20° is usual for an interview, beyond it feels detached"),
    ANGLE ("gaze-max-deg", N_("Largest gaze angle, main camera"), 180, 20) },
  [LR_LIMIT_GAZE_MAX_SECOND] = {
    N_("common practice, no source: 35° to 60° is usual for a second camera, beyond 75° it is a profile"),
    ANGLE ("gaze-max-second-deg", N_("Largest gaze angle, other cameras"), 180, 60) },
  [LR_LIMIT_LENS_ELEVATION] = {
    N_("common practice, no source: within 5° the lens counts as level with the eyes"),
    ANGLE ("lens-elevation-deg", N_("Lens above or below the subject’s eyes"), 90, 5) },
  [LR_LIMIT_EYELINE_ELEVATION] = {
    N_("common practice, no source: within 5° the look seems level"),
    ANGLE ("eyeline-elevation-deg", N_("Look above or below the lens"), 90, 5) },
  [LR_LIMIT_EYES_LEVEL] = {
    N_("common practice, no source: both pairs of eyes and the lens level with each other"),
    LENGTH ("eyes-level-mm", N_("Interviewer’s eyes against the subject’s"), 3.0, 0.1) },
  [LR_LIMIT_NATURAL_DISTANCE] = {
    N_("common practice, no source: at 1.5 m the nose is drawn 14 % larger than the ears"),
    LENGTH ("natural-distance-mm", N_("Least distance of a lens to the face"), 20.0, 1.5) },
  [LR_LIMIT_BACKGROUND_DISTANCE] = {
    N_("common practice, no source: as far as the room allows"),
    LENGTH ("background-distance-mm", N_("Least distance behind the subject"), 50.0, 1.5) },
  [LR_LIMIT_BACKGROUND_BLUR] = {
    COMMON_PRACTICE,
    SHARE ("background-blur-pct", N_("Least blur of the background, of the frame’s width"), 1.0, 0.005) },
  [LR_LIMIT_DEPTH_COMFORT] = {
    N_("common practice, no source: nose to ear 0.12 m and a seated speaker’s sway"),
    LENGTH ("depth-comfort-mm", N_("Comfortable depth of field"), 50.0, 0.25) },
  [LR_LIMIT_DEPTH_LEAST] = {
    N_("common practice, no source: with less, only while the focus follows the eyes"),
    LENGTH ("depth-least-mm", N_("Least depth of field"), 50.0, 0.1) },
  [LR_LIMIT_DEPTH_FRONT] = {
    N_("common practice, no source: a speaker leans in by that much"),
    LENGTH ("depth-front-mm", N_("Least depth of field in front of the eyes"), 50.0, 0.1) },
  [LR_LIMIT_CUT_ANGLE] = {
    N_("the 30-degree rule; Corrigan and White, The Film Experience"),
    ANGLE ("cut-angle-deg", N_("Least angle between two cameras"), 180, 30) },
  [LR_LIMIT_CUT_STEPS] = {
    N_("common practice, no source: a clear change of size lets an axial cut pass"),
    { .key = "cut-steps", .label = N_("Shot sizes between two cameras"), .type = LR_PROP_COUNT, .max = 9, .fallback = 2 } },
  [LR_LIMIT_CUT_EYES] = {
    N_("common practice, no source: what the rules for a close-up and a medium long shot put between their eyes"),
    SHARE ("cut-eyes-pct", N_("Eyes higher or lower after a cut, of the frame’s height"), 1.0, 0.15) },
  [LR_LIMIT_HEADROOM_MIN] = {
    N_("common practice, no source: 5 % to 12 % in medium shots"),
    SHARE ("headroom-min-pct", N_("Least headroom, of the frame’s height"), 1.0, 0.05) },
  [LR_LIMIT_HEADROOM_MAX_CLOSE] = {
    N_("common practice, no source: less as the shot tightens"),
    SHARE ("headroom-max-close-pct", N_("Largest headroom of a close-up, of the frame’s height"), 1.0, 0.08) },
  [LR_LIMIT_HEADROOM_MAX] = {
    N_("common practice, no source: 5 % to 12 % in medium shots"),
    SHARE ("headroom-max-pct", N_("Largest headroom, of the frame’s height"), 1.0, 0.12) },
  [LR_LIMIT_HEADROOM_MAX_WIDE] = {
    N_("common practice, no source: eyes on the upper third leave up to 20 % in wider shots"),
    SHARE ("headroom-max-wide-pct", N_("Largest headroom of a medium long shot, of the frame’s height"), 1.0, 0.2) },
  [LR_LIMIT_EYES_THIRD] = {
    N_("common practice, no source: eyes on the upper third; wider than a medium close-up little headroom puts them higher"),
    SHARE ("eyes-third-pct", N_("Eyes off their place in the frame, of its height"), 1.0, 0.06) },
  [LR_LIMIT_LOOK_ROOM_MIN] = {
    N_("common practice, no source: with more of the frame behind the head than ahead of it a shot is short-sided"),
    SHARE ("look-room-min-pct", N_("Least room ahead of the face, of the frame’s width"), 1.0, 0.5) },
  [LR_LIMIT_LOOK_ROOM_USUAL] = {
    N_("common practice, no source: a face at a third of the width has twice as much ahead as behind; up to 0.38 it looks so"),
    SHARE ("look-room-usual-pct", N_("Usual room ahead of the face, of the frame’s width"), 1.0, 0.62) },
  [LR_LIMIT_JOINT] = {
    N_("common practice, no source: an edge at a joint seems to end the limb; average bodies are true to a few centimetres"),
    LENGTH ("joint-mm", N_("Least distance of the lower edge from a joint"), 1.0, 0.02) },
  [LR_LIMIT_BOOM_MARGIN] = {
    N_("common practice, no source: a twentieth of the picture, so that a sagging arm stays out"),
    SHARE ("boom-margin-pct", N_("Boom over the frame, of its height"), 0.2, 0.05) },
  [LR_LIMIT_FACE_LEVEL] = {
    N_("common practice, no source: fair skin at 60 % to 70 %, darker skin lower"),
    SHARE ("face-level-pct", N_("Lit side of a face, of full signal"), 1.0, 0.6) },
  [LR_LIMIT_FACE_LEVEL_OFF] = {
    N_("common practice, no source: what is easily graded; predictions are right to half a stop"),
    NUMBER ("face-level-off-stops", N_("It may be off by"), 5.0, 0.8, N_("stops")) },
  [LR_LIMIT_RATIO_MIN] = {
    N_("common practice, no source: under half a stop a face looks flat"),
    NUMBER ("ratio-min-stops", N_("Key side over shadow side, at least"), 10.0, 0.5, N_("stops")) },
  [LR_LIMIT_RATIO_MAX] = {
    N_("common practice, no source: over three stops the shadow side has no drawing"),
    NUMBER ("ratio-max-stops", N_("Key side over shadow side, at most"), 10.0, 3.0, N_("stops")) },
  [LR_LIMIT_WALL_UNDER_FACE] = {
    N_("common practice, no source: a wall as bright as the face draws the eye"),
    NUMBER ("wall-under-face-stops", N_("Wall behind darker than the face by"), 10.0, 0.5, N_("stops")) },
  [LR_LIMIT_CLOTHES_STEP] = {
    N_("common practice, no source: dark on dark and light on light disappear within half a stop to a stop"),
    NUMBER ("clothes-step-stops", N_("Clothes apart from the walls behind by"), 10.0, 0.5, N_("stops")) },
  [LR_LIMIT_CLOTHES_DARK] = {
    N_("common practice, no source: black cloth that shows its folds lies at 5 % or more"),
    SHARE ("clothes-dark-pct", N_("Clothes, of full signal, at least"), 1.0, 0.05) },
  [LR_LIMIT_WALL_LEVEL_OFF] = {
    N_("common practice, no source: twice as bright or half, which changes the mood; predictions are right to half a stop"),
    NUMBER ("wall-level-off-stops", N_("Wall behind off where it is wanted by"), 5.0, 1.0, N_("stops")) },
  [LR_LIMIT_SHADOW_DEPTH] = {
    N_("common practice, no source: a third of a stop shows on a plain wall"),
    NUMBER ("shadow-depth-stops", N_("Shadow on a wall in a picture, deeper than"), 10.0, 0.3, N_("stops")) },
  [LR_LIMIT_EXPOSURE_MATCH] = {
    N_("common practice, no source: half a stop shows in a cut"),
    NUMBER ("exposure-match-stops", N_("Cameras exposed alike within"), 5.0, 0.5, N_("stops")) },
  [LR_LIMIT_NATIVE_ISO] = {
    N_("common practice, no source: a stop off costs little, more shows as noise or burnt highlights"),
    NUMBER ("native-iso-stops", N_("ISO off the camera’s native value by"), 10.0, 1.0, N_("stops")) },
  [LR_LIMIT_SHUTTER_MIN] = {
    N_("common practice, no source: under about 90° movement looks choppy; shutters that suit the mains are a little shorter"),
    ANGLE ("shutter-min-deg", N_("Least opening of the shutter"), 360, 85) },
  [LR_LIMIT_SHUTTER_MAX] = {
    N_("common practice, no source: over about 270° movement smears"),
    ANGLE ("shutter-max-deg", N_("Largest opening of the shutter"), 360, 275) },
  [LR_LIMIT_WHITE_OFF] = {
    N_("common practice, no source: 5 per megakelvin can be seen (Judd, 1933), 10 count as close"),
    NUMBER ("white-off-mired", N_("White balance off the light on the face by"), 100.0, 15.0, N_("MK⁻¹")) },
  [LR_LIMIT_MIXED_WHITES] = {
    N_("common practice, no source: a face lit in two whites cannot be balanced; warm rims up to this are usual"),
    NUMBER ("mixed-whites-mired", N_("Whites on one face apart by"), 300.0, 40.0, N_("MK⁻¹")) },
  [LR_LIMIT_VOICE] = {
    N_("common practice, no source: seated answers, 50 to 63 dB(A); ISO 9921 has 60 for a normal voice"),
    NUMBER ("voice-db", N_("Level of a voice at 1 m, A-weighted"), 100.0, 57.0, "dB") },
  [LR_LIMIT_BACKGROUND] = {
    N_("common practice, no source: a quiet room with all services off has 20 to 28 dB(A)"),
    NUMBER ("background-db", N_("Level of a room with its noises off, if not measured"), 80.0, 25.0, "dB") },
  [LR_LIMIT_OVER_NOISE] = {
    N_("common practice, no source: over 30 dB a voice is clean, from 25 it takes some cleaning up"),
    NUMBER ("over-noise-db", N_("Voice over noise"), 80.0, 30.0, "dB") },
  [LR_LIMIT_OVER_NOISE_LEAST] = {
    N_("common practice, no source: under 20 dB the noise is plain under every word"),
    NUMBER ("over-noise-least-db", N_("Voice over noise, at least"), 80.0, 20.0, "dB") },
  [LR_LIMIT_REVERBERATION] = {
    N_("common practice, no source: 0.3 to 0.5 s is good for speech, over 0.7 treat the room or move"),
    NUMBER ("reverberation-s", N_("Longest reverberation"), 20.0, 0.7, "s") },
  [LR_LIMIT_OVER_ROOM] = {
    N_("common practice, no source: a voice that is no more than that over its room sounds far away"),
    NUMBER ("over-room-db", N_("Voice over its reverberation"), 40.0, 3.0, "dB") },
  [LR_LIMIT_OFF_AXIS] = {
    N_("common practice, no source: half the power, which is plainly duller"),
    NUMBER ("off-axis-db", N_("Loss at 2 kHz as the talker leans"), 40.0, 3.0, "dB") },
  [LR_LIMIT_COMB] = {
    N_("common practice, no source: a reflection 10 dB down is not heard as color"),
    SHARE ("comb-pct", N_("Reflection from a hard face, of the voice"), 1.0, 0.3) },
  [LR_LIMIT_BOOM_FAR] = {
    N_("common practice, no source: 0.4 m to 0.7 m from the mouth"),
    LENGTH ("boom-far-mm", N_("Boom from the mouth"), 5.0, 0.7) },
  [LR_LIMIT_OVERLAP] = {
    N_("common practice, no source: what a tape measure can tell"),
    LENGTH ("overlap-mm", N_("Footprints may overlap by"), 5.0, 0.01) },
  [LR_LIMIT_TAPE_LENGTH] = {
    N_("common practice, no source: what two people read without the tape sagging"),
    LENGTH ("tape-length-mm", N_("Longest tape to set out with"), 100.0, 8.0) },
  [LR_LIMIT_WAY_OUT] = {
    N_("common practice, no source; the local fire code decides"),
    LENGTH ("way-out-mm", N_("Clear width on the way to the door"), 10.0, 0.8) },
  [LR_LIMIT_CIRCUIT_SHARE] = {
    N_("NEC 210.19(A)(1), 210.20(A): a load of three hours or more takes 1 / 1.25 of the breaker; local rules decide"),
    SHARE ("circuit-share-pct", N_("Of a circuit’s rating, for hours"), 1.0, 0.8) },
  [LR_LIMIT_VOLTAGE_DROP] = {
    N_("BS 7671 appendix 4, lighting: 3 %; NEC note on branch circuits: 3 %; advice, not rules"),
    SHARE ("voltage-drop-pct", N_("Lost in a lead, of the volts"), 1.0, 0.03) },
  [LR_LIMIT_LEAD_SLACK] = {
    N_("common practice, no source: so that a foot that catches the lead does not pull the stand"),
    LENGTH ("lead-slack-mm", N_("Loop of a lead at the stand"), 20.0, 0.5) },
  [LR_LIMIT_LEAD_OFF] = {
    N_("common practice, no source: a lamp’s own lead reaches as far"),
    LENGTH ("lead-off-mm", N_("End of a lead off its socket or lamp"), 20.0, 0.6) },
  [LR_LIMIT_WOUND_SHARE] = {
    N_("common practice, no source: a third, where nothing is marked; always unwind it all"),
    SHARE ("wound-share-pct", N_("A wound reel’s load, of the circuit’s rating"), 1.0, 0.333) },
  [LR_LIMIT_STAND_FACTOR] = {
    N_("common practice, no source: twice, with the arm over a gap between two legs"),
    NUMBER ("stand-factor", N_("What holds a stand over what tips it"), 20.0, 2.0, "×") },
  [LR_LIMIT_STAND_PUSH] = {
    N_("common practice, no source: a light nudge"),
    NUMBER ("stand-push-n", N_("Push at a stand’s head that it bears"), 1000.0, 10.0, "N") },
  [LR_LIMIT_HEAD_CLEAR] = {
    N_("common practice, no source"),
    LENGTH ("head-clear-mm", N_("A boom over a head"), 5.0, 0.15) },
  [LR_LIMIT_LAMP_CLOTH] = {
    N_("common practice, no source; the distance marked on the lamp goes before it (IEC 60598-1)"),
    LENGTH ("lamp-cloth-mm", N_("A lamp off curtains and cloth"), 10.0, 0.5) },
  [LR_LIMIT_LAMP_CEILING] = {
    N_("common practice, no source; the distance marked on the lamp goes before it (IEC 60598-1)"),
    LENGTH ("lamp-ceiling-mm", N_("A lamp under the ceiling"), 10.0, 0.3) },
  [LR_LIMIT_EXIT_WIDTH] = {
    N_("covers 711 mm (OSHA 1910.36(g)), 750 mm (Approved Document B) and 914 mm (NFPA 101); the local fire code decides"),
    LENGTH ("exit-width-mm", N_("Clear width from a seat to a way out"), 10.0, 0.92) },
  [LR_LIMIT_EXIT_LEAST] = {
    N_("Approved Document B, volume 2: 750 mm for up to 60 people; OSHA 1910.36(g): 711 mm; the local fire code decides"),
    LENGTH ("exit-least-mm", N_("Least clear width to a way out"), 10.0, 0.75) },
  [LR_LIMIT_WHEELCHAIR] = {
    N_("guides for fire risk assessment, England: 900 mm with wheelchair users; local rules decide"),
    LENGTH ("wheelchair-mm", N_("Clear width for a wheelchair"), 10.0, 0.9) },
};

/**
 * lr_limit_info:
 * @limit: a limit
 *
 * Returns: (transfer none): its row: key, label, range, default, and where the default comes from
 */
const LrLimitInfo *
lr_limit_info (LrLimit limit)
{
  g_return_val_if_fail (limit < LR_N_LIMITS, NULL);

  return &limits_info[limit];
}

/**
 * lr_limits_init:
 * @limits: (out caller-allocates): limits
 *
 * Gives every limit its default, in inside units.
 */
void
lr_limits_init (LrLimits *limits)
{
  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      limits->value[i] = limits_info[i].prop.fallback;
      limits->is_set[i] = FALSE;
    }
}
