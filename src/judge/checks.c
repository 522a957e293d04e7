/* checks.c - the one table of checks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The values of the limits, with their own sources, are in plan_limits.c; the source here is the rule's.
 */

#include "config.h"

#include "remarks.h"

#include <glib/gi18n-lib.h>

#define COMMON_PRACTICE N_("common practice, no source")
#define SUN N_("geometry; the sun’s place after Meeus, Astronomical Algorithms")
#define GEOMETRY N_("geometry: what stands in the same place cannot be set up")

static const LrCheckInfo checks[LR_N_CHECKS] = {
  [LR_CHECK_LINE_SIDE] = { "line-side", N_("Side of the line of action"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("the 180-degree rule; Katz, Film Directing Shot by Shot") },
  [LR_CHECK_LINE_MARGIN] = { "line-margin", N_("Distance from the line of action"), LR_LIMIT_LINE_MARGIN, LR_PROP_ANGLE,
    COMMON_PRACTICE },
  [LR_CHECK_GAZE] = { "gaze", N_("Look past the lens"), LR_LIMIT_GAZE_MAX, LR_PROP_ANGLE,
    N_("common practice, no source; a look within about 3° reads as into the lens: Horstmann and Linke, Perception 2021") },
  [LR_CHECK_LENS_HEIGHT] = { "lens-height", N_("Lens height"), LR_LIMIT_LENS_ELEVATION, LR_PROP_ANGLE, COMMON_PRACTICE },
  [LR_CHECK_EYELINE] = { "eyeline", N_("Look above or below the lens"), LR_LIMIT_EYELINE_ELEVATION, LR_PROP_ANGLE,
    COMMON_PRACTICE },
  [LR_CHECK_EYES_LEVEL] = { "eyes-level", N_("Eyes level with each other"), LR_LIMIT_EYES_LEVEL, LR_PROP_LENGTH,
    COMMON_PRACTICE },
  [LR_CHECK_FACE_DISTANCE] = { "face-distance", N_("Perspective of the face"), LR_LIMIT_NATURAL_DISTANCE, LR_PROP_LENGTH,
    N_("common practice, no source; the figure is similar triangles") },
  [LR_CHECK_BACKGROUND_SEEN] = { "background-seen", N_("Background seen"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("similar triangles") },
  [LR_CHECK_BACKGROUND_DISTANCE] = { "background-distance", N_("Distance of the background"),
    LR_LIMIT_BACKGROUND_DISTANCE, LR_PROP_LENGTH, COMMON_PRACTICE },
  [LR_CHECK_BACKGROUND_BLUR] = { "background-blur", N_("Softness of the background"), LR_LIMIT_BACKGROUND_BLUR,
    LR_PROP_SHARE, N_("common practice, no source; the figure is the thin lens: Ray, Applied Photographic Optics") },
  [LR_CHECK_LENS_RANGE] = { "lens-range", N_("What the lens can do"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("the lens as it stands in the kit") },
  [LR_CHECK_LENS_COUNT] = { "lens-count", N_("Lenses in the kit"), LR_N_LIMITS, LR_PROP_NUMBER, N_("the kit of this job") },
  [LR_CHECK_DEPTH_OF_FIELD] = { "depth-of-field", N_("Focus and depth of field"), LR_LIMIT_DEPTH_COMFORT, LR_PROP_LENGTH,
    N_("common practice, no source; the figure: Greenleaf, Photographic Optics (1950)") },
  [LR_CHECK_SHOT_SIZE] = { "shot-size", N_("Shot size"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("common practice: where the frame cuts the body; Thompson and Bowen, Grammar of the Shot") },
  [LR_CHECK_HEADROOM] = { "headroom", N_("Headroom"), LR_LIMIT_HEADROOM_MAX, LR_PROP_SHARE, COMMON_PRACTICE },
  [LR_CHECK_EYES_PLACE] = { "eyes-place", N_("Eyes in the frame"), LR_LIMIT_EYES_THIRD, LR_PROP_SHARE, COMMON_PRACTICE },
  [LR_CHECK_LOOK_ROOM] = { "look-room", N_("Room for the look"), LR_LIMIT_LOOK_ROOM_MIN, LR_PROP_SHARE, COMMON_PRACTICE },
  [LR_CHECK_JOINT] = { "joint", N_("Joint at the frame’s edge"), LR_LIMIT_JOINT, LR_PROP_LENGTH,
    N_("common practice, no source; the joint’s height: Drillis and Contini, in Winter, Biomechanics of Human Movement") },
  [LR_CHECK_CUT] = { "cut", N_("Cut between two cameras"), LR_LIMIT_CUT_ANGLE, LR_PROP_ANGLE,
    N_("the 30-degree rule; Corrigan and White, The Film Experience") },
  [LR_CHECK_CUT_EYELINE] = { "cut-eyeline", N_("Eyes across a cut"), LR_LIMIT_CUT_EYES, LR_PROP_SHARE, COMMON_PRACTICE },
  [LR_CHECK_REVERSE] = { "reverse", N_("Cut between question and answer"), LR_LIMIT_EYELINE_ELEVATION, LR_PROP_ANGLE,
    N_("common practice, no source; looks that oppose: the 180-degree rule") },
  [LR_CHECK_IN_FRAME] = { "in-frame", N_("Equipment in the picture"), LR_N_LIMITS, LR_PROP_SHARE,
    N_("geometry: similar triangles") },
  [LR_CHECK_IN_FRONT] = { "in-front", N_("In front of the subject, or beside"), LR_N_LIMITS, LR_PROP_SHARE,
    N_("common practice, no source; the figure is similar triangles") },
  [LR_CHECK_BOOM_MARGIN] = { "boom-margin", N_("Boom over the frame"), LR_LIMIT_BOOM_MARGIN, LR_PROP_SHARE, COMMON_PRACTICE },
  [LR_CHECK_ROOM_SEEN] = { "room-seen", N_("Windows, lamps and ceiling in the picture"), LR_N_LIMITS, LR_PROP_SHARE,
    N_("common practice, no source; the figure is similar triangles") },
  [LR_CHECK_UNLIT] = { "unlit", N_("Light on the face"), LR_N_LIMITS, LR_PROP_NUMBER, COMMON_PRACTICE },
  [LR_CHECK_FACE_LEVEL] = { "face-level", N_("Level of the face"), LR_LIMIT_FACE_LEVEL_OFF, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: ISO 2720, ITU-R BT.709, right to half a stop") },
  [LR_CHECK_KEY_RATIO] = { "key-ratio", N_("Key side to shadow side"), LR_LIMIT_RATIO_MAX, LR_PROP_NUMBER,
    N_("common practice, no source; the figure counts all light on either cheek, (K + F) : F") },
  [LR_CHECK_WALL_LEVEL] = { "wall-level", N_("Level of the wall behind"), LR_LIMIT_WALL_LEVEL_OFF, LR_PROP_NUMBER,
    N_("what the set-up wants; the tolerance is common practice, no source") },
  [LR_CHECK_CLOTHES] = { "clothes", N_("Clothes against the walls"), LR_LIMIT_CLOTHES_STEP, LR_PROP_NUMBER,
    N_("common practice, no source; the figure is of reflectance times light, a matte surface: Lambert") },
  [LR_CHECK_EXPOSURE_MATCH] = { "exposure-match", N_("Exposure of two cameras"), LR_LIMIT_EXPOSURE_MATCH, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: f-number, shutter, ISO and filter, ISO 2720") },
  [LR_CHECK_WHITE_BALANCE] = { "white-balance", N_("White balance"), LR_LIMIT_WHITE_OFF, LR_PROP_NUMBER,
    N_("common practice, no source; steps in reciprocal megakelvin: Judd, JOSA 23 (1933)") },
  [LR_CHECK_MIXED_WHITES] = { "mixed-whites", N_("Whites on the face"), LR_LIMIT_MIXED_WHITES, LR_PROP_NUMBER, COMMON_PRACTICE },
  [LR_CHECK_NATIVE_ISO] = { "native-iso", N_("ISO against the native value"), LR_LIMIT_NATIVE_ISO, LR_PROP_NUMBER, COMMON_PRACTICE },
  [LR_CHECK_SHUTTER] = { "shutter", N_("Shutter and frame rate"), LR_LIMIT_SHUTTER_MIN, LR_PROP_ANGLE,
    N_("common practice, no source: the 180-degree shutter; the figure is its definition, 360° × frame rate × time") },
  [LR_CHECK_FLICKER] = { "flicker", N_("Flicker of house lights"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("closed form: whole pulses of light in an exposure") },
  [LR_CHECK_SUN] = { "sun", N_("Sun on the subject"), LR_N_LIMITS, LR_PROP_NUMBER, SUN },
  [LR_CHECK_SUN_BACKGROUND] = { "sun-background", N_("Sun on the wall behind"), LR_N_LIMITS, LR_PROP_NUMBER, SUN },
  [LR_CHECK_SUN_LENS] = { "sun-lens", N_("Sun into a lens"), LR_N_LIMITS, LR_PROP_NUMBER, SUN },
  [LR_CHECK_SUN_TABLE] = { "sun-table", N_("Sun on a table"), LR_N_LIMITS, LR_PROP_NUMBER, SUN },
  [LR_CHECK_GLARE] = { "glare", N_("Lamps in glasses"), LR_N_LIMITS, LR_PROP_ANGLE,
    N_("law of reflection, from a lens of base 6 that is tipped by 10°; common practice, no source") },
  [LR_CHECK_FLARE] = { "flare", N_("Lamps beside the picture"), LR_N_LIMITS, LR_PROP_ANGLE, COMMON_PRACTICE },
  [LR_CHECK_CATCH_LIGHT] = { "catch-light", N_("Lights in the eyes"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("law of reflection; sizes of the eye from memory, and common practice, no source") },
  [LR_CHECK_SHADOW] = { "shadow-in-frame", N_("Shadows on the wall behind"), LR_LIMIT_SHADOW_DEPTH, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: what is covered of the lamp, similar triangles, right to half a stop") },
  [LR_CHECK_NOISE] = { "noise", N_("Voice over noise"), LR_LIMIT_OVER_NOISE, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: Kuttruff, Room Acoustics, and the pattern of the microphone, right to some 3 dB") },
  [LR_CHECK_REVERBERATION] = { "reverberation", N_("Voice over the room"), LR_LIMIT_REVERBERATION, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: Sabine or Eyring, in Kuttruff, Room Acoustics, right to a fifth") },
  [LR_CHECK_SECOND_MICROPHONE] = { "second-microphone", N_("A second microphone"), LR_N_LIMITS, LR_PROP_NUMBER, COMMON_PRACTICE },
  [LR_CHECK_OFF_AXIS] = { "off-axis", N_("Mouth off the axis of a microphone"), LR_LIMIT_OFF_AXIS, LR_PROP_NUMBER,
    N_("common practice, no source; the figure: Eargle and Rayburn, The Microphone Book") },
  [LR_CHECK_COMB] = { "comb", N_("Reflections into a microphone"), LR_LIMIT_COMB, LR_PROP_SHARE,
    N_("common practice, no source; the figure is a mirror image: Everest, Master Handbook of Acoustics") },
  [LR_CHECK_BOOM_PLACE] = { "boom-place", N_("Where a boom hangs"), LR_LIMIT_BOOM_FAR, LR_PROP_LENGTH, COMMON_PRACTICE },
  [LR_CHECK_BOOM_SHADOW] = { "boom-shadow", N_("Shadow of a boom on the face"), LR_N_LIMITS, LR_PROP_SHARE,
    N_("common practice, no source; the figure is similar triangles") },
  [LR_CHECK_OVERLAP] = { "overlap", N_("Things in each other’s place"), LR_LIMIT_OVERLAP, LR_PROP_LENGTH, GEOMETRY },
  [LR_CHECK_OUTSIDE] = { "outside", N_("Things outside the room"), LR_LIMIT_OVERLAP, LR_PROP_LENGTH, GEOMETRY },
  [LR_CHECK_DOOR_SWING] = { "door-swing", N_("Doors"), LR_LIMIT_OVERLAP, LR_PROP_LENGTH,
    N_("geometry; the local fire code decides what must stay clear") },
  [LR_CHECK_CEILING] = { "ceiling", N_("Ceiling"), LR_N_LIMITS, LR_PROP_LENGTH, GEOMETRY },
  [LR_CHECK_CIRCUIT] = { "circuit", N_("Load of a circuit"), LR_LIMIT_CIRCUIT_SHARE, LR_PROP_SHARE,
    N_("NEC 210.19(A)(1), 210.20(A); an estimate: what else hangs on it the house knows, local rules and licensed people decide") },
  [LR_CHECK_UNTOLD] = { "untold-circuit", N_("Sockets whose circuit is not known"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("an estimate needs to know what shares a breaker; local rules and licensed people decide") },
  [LR_CHECK_UNFED] = { "unfed", N_("Lamps without a lead"), LR_N_LIMITS, LR_PROP_NUMBER, COMMON_PRACTICE },
  [LR_CHECK_OUTLETS] = { "outlets", N_("Outlets of a socket"), LR_N_LIMITS, LR_PROP_NUMBER, N_("each lead needs one") },
  [LR_CHECK_LEAD_LENGTH] = { "lead-length", N_("Length of a lead"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("its path, the way down from the socket, and a loop at the stand: common practice, no source") },
  [LR_CHECK_LEAD_ENDS] = { "lead-ends", N_("Ends of a lead"), LR_LIMIT_LEAD_OFF, LR_PROP_LENGTH, COMMON_PRACTICE },
  [LR_CHECK_LEAD_WAY] = { "lead-way", N_("What a lead lies across"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("OSHA 1910.305(g)(1): no cords through doorways unless protected, for a time; the local fire code decides") },
  [LR_CHECK_VOLTAGE_DROP] = { "voltage-drop", N_("Volts lost in a lead"), LR_LIMIT_VOLTAGE_DROP, LR_PROP_SHARE,
    N_("IEC 60228, class 5, conductors at 70 °C; the wiring of the house comes on top") },
  [LR_CHECK_LEAD_CURRENT] = { "lead-current", N_("Current through a lead"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("BS 7671, table 4F3A, from memory; what is marked on lead and plug goes before it, and local rules decide") },
  [LR_CHECK_REEL] = { "reel", N_("Lead still wound up"), LR_LIMIT_WOUND_SHARE, LR_PROP_NUMBER,
    N_("unwind reels fully before load: Electrical Safety First, RoSPA; what is marked on the reel goes before it") },
  [LR_CHECK_STAND] = { "stand", N_("What keeps a stand upright"), LR_LIMIT_STAND_FACTOR, LR_PROP_NUMBER,
    N_("statics of three legs on a level floor; masses that were not told are usual ones") },
  [LR_CHECK_HEAD_CLEAR] = { "head-clear", N_("Booms over heads"), LR_LIMIT_HEAD_CLEAR, LR_PROP_LENGTH, COMMON_PRACTICE },
  [LR_CHECK_LAMP_CLEAR] = { "lamp-clear", N_("Lamps by ceilings, curtains and cloth"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("common practice, no source; the distance marked on the lamp goes before it") },
  [LR_CHECK_WAY_OUT] = { "way-out", N_("The way out"), LR_LIMIT_EXIT_WIDTH, LR_PROP_LENGTH,
    N_("geometry; the local fire code decides what must stay clear") },
  [LR_CHECK_WHEELCHAIR] = { "wheelchair", N_("A wheelchair’s way"), LR_LIMIT_WHEELCHAIR, LR_PROP_LENGTH,
    N_("geometry; local rules decide") },
  [LR_CHECK_TAPE] = { "tape", N_("The room as taped"), LR_N_LIMITS, LR_PROP_LENGTH,
    N_("least squares; Baarda, A Testing Procedure for Use in Geodetic Networks (1968)") },
  [LR_CHECK_MISSING] = { "missing", N_("Still missing"), LR_N_LIMITS, LR_PROP_NUMBER,
    N_("what the other checks need") },
};

/**
 * lr_check_info:
 * @check: a check
 *
 * Returns: (transfer none): its row
 */
const LrCheckInfo *
lr_check_info (LrCheck check)
{
  g_return_val_if_fail (check < LR_N_CHECKS, NULL);

  return &checks[check];
}

/**
 * lr_grade_title:
 * @grade: a grade
 *
 * Returns: (transfer none): "Fix", "Mind" or "Fine", translated
 */
const char *
lr_grade_title (LrGrade grade)
{
  static const char *const titles[LR_N_GRADES] = {
    [LR_GRADE_FIX] = NC_("grade of a remark", "Fix"),
    [LR_GRADE_MIND] = NC_("grade of a remark", "Mind"),
    [LR_GRADE_FINE] = NC_("grade of a remark", "Fine"),
  };

  g_return_val_if_fail (grade < LR_N_GRADES, "");

  return g_dpgettext2 (GETTEXT_PACKAGE, "grade of a remark", titles[grade]);
}

/**
 * lr_grade_word:
 * @grade: a grade
 *
 * Returns: (transfer none): "fix", "mind" or "fine", for other programs
 */
const char *
lr_grade_word (LrGrade grade)
{
  static const char *const words[LR_N_GRADES] = {
    [LR_GRADE_FIX] = "fix", [LR_GRADE_MIND] = "mind", [LR_GRADE_FINE] = "fine",
  };

  g_return_val_if_fail (grade < LR_N_GRADES, "");

  return words[grade];
}
