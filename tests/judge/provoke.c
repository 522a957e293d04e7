/* provoke.c - for every check a plan that goes wrong in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "provoke.h"

#define CABINET "furniture-1"
/* A socket, a lamp of 60 W 1.1 m away, and a lead that runs a metre past it */
#define POWERED { TRUE, LR_ITEM_SOCKET, 0, 2.0, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.5, 1.0 }, { TRUE, LR_ITEM_LEAD, 0, 2.0, 0.06 }
#define FED { "lead-1", "socket", 0, "socket-1" }, { "lead-1", "feeds", 0, "light-1" }

const Provocation provocations[] = {
  { "over-the-line", LR_CHECK_LINE_SIDE, LR_GRADE_FIX, "line-side:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "x-mm", 5.0, NULL }, { CAMERA_B, "y-mm", 1.2, NULL } } },
  { "just-over-the-line", LR_CHECK_LINE_SIDE, LR_GRADE_FIX, "line-side:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "x-mm", 6.5, NULL }, { CAMERA_B, "y-mm", 1.75, NULL } } },
  { "reverse-over-the-line", LR_CHECK_LINE_SIDE, LR_GRADE_FIX, "line-side:camera-3", TRUE,
    { { TRUE, LR_ITEM_CAMERA, 0, 3.2, 1.0 } },
    { { "camera-3", "aims-at", 0, INES }, { "camera-3", "lens-height-mm", 1.2, NULL } } },
  { "on-the-line", LR_CHECK_LINE_MARGIN, LR_GRADE_MIND, "line-margin:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "x-mm", 0.6, NULL }, { CAMERA_B, "y-mm", 3.6, NULL } } },
  { "into-the-lens", LR_CHECK_GAZE, LR_GRADE_MIND, "gaze:camera-1", TRUE, { { 0 } },
    { { INES, "x-mm", 4.4, NULL }, { INES, "y-mm", 2.65, NULL },
      { CAMERA_A, "x-mm", 5.67, NULL }, { CAMERA_A, "y-mm", 2.58, NULL } } },
  { "past-the-lens", LR_CHECK_GAZE, LR_GRADE_MIND, "gaze:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "x-mm", 5.56, NULL }, { CAMERA_A, "y-mm", 3.45, NULL } } },
  { "profile", LR_CHECK_GAZE, LR_GRADE_MIND, "gaze:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "x-mm", 4.5, NULL }, { CAMERA_B, "y-mm", 5.2, NULL } } },
  { "lens-too-high", LR_CHECK_LENS_HEIGHT, LR_GRADE_MIND, "lens-height:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "lens-height-mm", 1.55, NULL } } },
  { "lens-too-low", LR_CHECK_LENS_HEIGHT, LR_GRADE_MIND, "lens-height:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "lens-height-mm", 0.8, NULL } } },
  { "look-over-the-lens", LR_CHECK_EYELINE, LR_GRADE_MIND, "eyeline:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "lens-height-mm", 1.04, NULL }, { INES, "eye-height-mm", 1.29, NULL } } },
  { "interviewer-too-low", LR_CHECK_EYES_LEVEL, LR_GRADE_MIND, "eyes-level:person-2", TRUE, { { 0 } },
    { { INES, "eye-height-mm", 1.08, NULL } } },
  { "interviewer-stands", LR_CHECK_EYES_LEVEL, LR_GRADE_MIND, "eyes-level:person-2", TRUE, { { 0 } },
    { { INES, "eye-height-mm", 0.0, NULL }, { INES, "stature-mm", 1.65, NULL },
      { INES, "posture", LR_POSTURE_STANDING, NULL } } },
  { "too-near-the-face", LR_CHECK_FACE_DISTANCE, LR_GRADE_MIND, "face-distance:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "x-mm", 4.2, NULL }, { CAMERA_A, "y-mm", 3.05, NULL },
      { INES, "x-mm", 6.0, NULL }, { INES, "y-mm", 2.25, NULL } } },
  { "past-the-backdrop", LR_CHECK_BACKGROUND_SEEN, LR_GRADE_MIND, "background-seen:camera-1", FALSE,
    { { TRUE, LR_ITEM_PANEL, LR_PANEL_BACKDROP, 1.0, 2.8 } }, { { "panel-1", "width-mm", 1.0, NULL } } },
  { "too-near-the-cabinet", LR_CHECK_BACKGROUND_DISTANCE, LR_GRADE_MIND, "background-distance:camera-1", TRUE,
    { { TRUE, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 2.0, 2.9 } }, { { CABINET, "height-mm", 2.0, NULL } } },
  { "too-near-the-wall", LR_CHECK_BACKGROUND_DISTANCE, LR_GRADE_MIND, "background-distance:camera-1", TRUE, { { 0 } },
    { { WENNA, "x-mm", 1.0, NULL }, { INES, "x-mm", 3.4, NULL }, { CAMERA_A, "x-mm", 3.6, NULL },
      { CAMERA_B, "x-mm", 3.05, NULL } } },
  { "background-sharp", LR_CHECK_BACKGROUND_BLUR, LR_GRADE_MIND, "background-blur:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "f-number", 5.6, NULL } } },
  { "not-its-focal-length", LR_CHECK_LENS_RANGE, LR_GRADE_FIX, "lens-range:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "lens", 0, "lens-50" }, { CAMERA_A, "focal-mm", 0.07, NULL } } },
  { "not-its-stop", LR_CHECK_LENS_RANGE, LR_GRADE_FIX, "lens-range:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "lens", 0, "lens-50" }, { CAMERA_A, "f-number", 1.2, NULL } } },
  { "nearer-than-it-focuses", LR_CHECK_LENS_RANGE, LR_GRADE_FIX, "lens-range:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "lens", 0, "lens-50" }, { CAMERA_A, "focus-mm", 0.3, NULL } } },
  { "subject-nearer-than-it-focuses", LR_CHECK_LENS_RANGE, LR_GRADE_FIX, "lens-range:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "lens", 0, "lens-85" }, { CAMERA_B, "x-mm", 3.45, NULL }, { CAMERA_B, "y-mm", 3.55, NULL } } },
  { "nearer-than-any-lens-focuses", LR_CHECK_LENS_RANGE, LR_GRADE_FIX, "lens-range:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "focal-mm", 0.9, NULL } } }, /* thin lens: s + s f / (s - f) is 4 f at the least, at s = 2 f */
  { "focus-behind-the-eyes", LR_CHECK_DEPTH_OF_FIELD, LR_GRADE_FIX, "depth-of-field:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "focus-mm", 3.5, NULL } } },
  { "shallow", LR_CHECK_DEPTH_OF_FIELD, LR_GRADE_MIND, "depth-of-field:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "f-number", 2.8, NULL } } },
  { "very-shallow", LR_CHECK_DEPTH_OF_FIELD, LR_GRADE_MIND, "depth-of-field:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "f-number", 1.4, NULL } } },
  { "eyes-out-of-frame", LR_CHECK_SHOT_SIZE, LR_GRADE_FIX, "shot-size:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "aims-at", 0, "" }, { CAMERA_B, "facing-deg", 90.0 * LR_DEG, NULL } } },
  { "head-cut", LR_CHECK_HEADROOM, LR_GRADE_MIND, "headroom:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "down-pct", 0.15, NULL } } },
  { "much-air", LR_CHECK_HEADROOM, LR_GRADE_MIND, "headroom:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "down-pct", 0.45, NULL } } },
  { "eyes-low-in-a-wide-shot", LR_CHECK_EYES_PLACE, LR_GRADE_MIND, "eyes-place:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "focal-mm", 0.028, NULL }, { CAMERA_A, "down-pct", 0.45, NULL } } },
  { "short-sided", LR_CHECK_LOOK_ROOM, LR_GRADE_MIND, "look-room:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "across-pct", 0.35, NULL } } },
  { "short-sided-without-aim", LR_CHECK_LOOK_ROOM, LR_GRADE_MIND, "look-room:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "aims-at", 0, "" }, { CAMERA_A, "facing-deg", 180.0 * LR_DEG, NULL },
      { CAMERA_A, "tilt-deg", -4.5 * LR_DEG, NULL } } },
  { "at-the-elbows", LR_CHECK_JOINT, LR_GRADE_MIND, "joint:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "focal-mm", 0.07, NULL }, { CAMERA_A, "down-pct", 0.265, NULL } } },
  { "eyes-jump", LR_CHECK_CUT_EYELINE, LR_GRADE_MIND, "cut-eyeline:camera-1:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "down-pct", 0.5, NULL } } },
  { "looks-past-each-other", LR_CHECK_REVERSE, LR_GRADE_MIND, "reverse:camera-1:camera-3", TRUE,
    { { TRUE, LR_ITEM_CAMERA, 0, 2.6, 4.2 } },
    { { "camera-3", "aims-at", 0, INES }, { "camera-3", "lens-height-mm", 1.75, NULL } } },
  { "cut-jumps", LR_CHECK_CUT, LR_GRADE_FIX, "cut:camera-1:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "x-mm", 5.3, NULL }, { CAMERA_B, "y-mm", 4.2, NULL }, { CAMERA_B, "focal-mm", 0.05, NULL } } },
  { "one-lens-on-two", LR_CHECK_LENS_COUNT, LR_GRADE_FIX, "lens-count:camera-1:camera-2", FALSE, { { 0 } },
    { { CAMERA_A, "lens", 0, "lens-50" }, { CAMERA_B, "lens", 0, "lens-50" }, { CAMERA_B, "focal-mm", 0.05, NULL } } },
  { "boom-in-frame", LR_CHECK_IN_FRAME, LR_GRADE_FIX, "in-frame:microphone-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 } },
    { { "microphone-1", "tip-x-mm", 3.3, NULL }, { "microphone-1", "tip-y-mm", 2.95, NULL },
      { "microphone-1", "tip-height-mm", 1.45, NULL } } },
  { "stand-in-frame", LR_CHECK_IN_FRAME, LR_GRADE_FIX, "in-frame:light-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.4, 4.0 } }, { { 0 } } },
  { "lamp-at-the-side", LR_CHECK_IN_FRAME, LR_GRADE_FIX, "in-frame:light-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 3.8, 2.1 } },
    { { "light-1", "width-mm", 0.9, NULL }, { "light-1", "lamp-height-mm", 1.5, NULL } } },
  { "camera-in-frame", LR_CHECK_IN_FRAME, LR_GRADE_FIX, "in-frame:camera-3:camera-1", TRUE,
    { { TRUE, LR_ITEM_CAMERA, 0, 1.6, 4.1 } },
    { { "camera-3", "aims-at", 0, INES }, { "camera-3", "lens-height-mm", 1.2, NULL } } },
  { "box-before-the-face", LR_CHECK_IN_FRONT, LR_GRADE_FIX, "in-front:furniture-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 4.3, 3.15 } }, { { CABINET, "height-mm", 1.3, NULL } } },
  { "shoulder-in-frame", LR_CHECK_IN_FRONT, LR_GRADE_MIND, "in-front:person-2:camera-1", FALSE, { { 0 } },
    { { INES, "x-mm", 4.55, NULL }, { INES, "y-mm", 2.75, NULL } } },
  { "boom-just-over-the-frame", LR_CHECK_BOOM_MARGIN, LR_GRADE_MIND, "boom-margin:microphone-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 } },
    { { "microphone-1", "tip-x-mm", 3.3, NULL }, { "microphone-1", "tip-y-mm", 2.95, NULL },
      { "microphone-1", "tip-height-mm", 1.59, NULL } } },
  { "window-in-frame", LR_CHECK_ROOM_SEEN, LR_GRADE_MIND, "room-seen:window-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 0.0, 3.6 } }, { { "window-1", "blind", LR_BLIND_UP, NULL } } },
  { "light-on-camera", LR_CHECK_OVERLAP, LR_GRADE_FIX, "overlap:camera-1:light-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 5.8, 3.4 } }, { { 0 } } },
  { "legs-touch", LR_CHECK_OVERLAP, LR_GRADE_MIND, "overlap:camera-1:light-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 6.4, 3.4 } }, { { 0 } } },
  { "through-the-wall", LR_CHECK_OUTSIDE, LR_GRADE_FIX, "outside:light-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.9, 3.4 } }, { { 0 } } },
  { "legs-at-the-wall", LR_CHECK_OUTSIDE, LR_GRADE_MIND, "outside:light-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.7, 3.4 } }, { { 0 } } },
  { "in-the-door", LR_CHECK_DOOR_SWING, LR_GRADE_FIX, "door-swing:light-1:door-1", TRUE,
    { { TRUE, LR_ITEM_DOOR, 0, 1.5, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.5, 0.6 } }, { { 0 } } },
  { "through-the-ceiling", LR_CHECK_CEILING, LR_GRADE_FIX, "ceiling:light-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 1.0 } }, { { "light-1", "lamp-height-mm", 2.65, NULL } } },
  { "boom-through-the-ceiling", LR_CHECK_CEILING, LR_GRADE_FIX, "ceiling:microphone-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 7.0, 1.0 } },
    { { "microphone-1", "tip-x-mm", 6.0, NULL }, { "microphone-1", "tip-y-mm", 1.0, NULL },
      { "microphone-1", "tip-height-mm", 2.55, NULL } } },
  { "face-burnt-out", LR_CHECK_FACE_LEVEL, LR_GRADE_FIX, "face-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 30000.0, NULL } } },
  { "face-in-the-dark", LR_CHECK_FACE_LEVEL, LR_GRADE_MIND, "face-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 800.0, NULL } } },
  { "weak-key", LR_CHECK_FACE_LEVEL, LR_GRADE_MIND, "face-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 2200.0, NULL } } },
  { "one-camera-in-the-dark", LR_CHECK_FACE_LEVEL, LR_GRADE_MIND, "face-level:camera-2", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 4500.0, NULL }, { CAMERA_B, "iso", 400.0, NULL } } },
  { "lamp-out", LR_CHECK_UNLIT, LR_GRADE_MIND, "unlit:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "dim-pct", 0.0, NULL } } },
  { "two-lamps-out", LR_CHECK_UNLIT, LR_GRADE_MIND, "unlit:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.4, 4.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "dim-pct", 0.0, NULL }, { "light-2", "aims-at", 0, WENNA },
      { "light-2", "job", LR_JOB_FILL, NULL }, { "light-2", "dim-pct", 0.0, NULL } } },
  { "contrasty-face", LR_CHECK_KEY_RATIO, LR_GRADE_MIND, "key-ratio:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 3.6, 1.2 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.6, 4.6 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 4500.0, NULL }, { "light-2", "aims-at", 0, WENNA },
      { "light-2", "job", LR_JOB_FILL, NULL }, { "light-2", "dim-pct", 0.0, NULL } } },
  { "contrasty-key-alone", LR_CHECK_KEY_RATIO, LR_GRADE_MIND, "key-ratio:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 3.3, 1.2 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 4500.0, NULL }, { "light-1", "beam-deg", 60.0 * LR_DEG, NULL } } },
  { "flat-face", LR_CHECK_KEY_RATIO, LR_GRADE_MIND, "key-ratio:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 6.2, 2.2 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 2.3, NULL } } },
  { "bright-wall", LR_CHECK_WALL_LEVEL, LR_GRADE_MIND, "wall-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_POINT, 1.6, 5.0 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 3000.0, NULL }, { "light-2", "facing-deg", LR_PI, NULL },
      { "light-2", "output-lm", 20000.0, NULL }, { "light-2", "beam-deg", 100.0 * LR_DEG, NULL } } },
  { "shirt-like-the-wall", LR_CHECK_CLOTHES, LR_GRADE_MIND, "clothes:camera-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { WENNA, "clothing-reflectance-pct", 0.1, NULL } } },
  { "shirt-burnt-out", LR_CHECK_CLOTHES, LR_GRADE_MIND, "clothes:camera-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { WENNA, "clothing-reflectance-pct", 0.9, NULL } } },
  { "black-clothes", LR_CHECK_CLOTHES, LR_GRADE_MIND, "clothes:camera-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 800.0, NULL }, { WENNA, "clothing-reflectance-pct", 0.01, NULL } } },
  { "key-from-afar-on-the-walls", LR_CHECK_WALL_LEVEL, LR_GRADE_MIND, "wall-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 6.0, 0.6 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 1.9, NULL }, { "light-1", "output-lm", 20000.0, NULL } } },
  { "dark-wall", LR_CHECK_WALL_LEVEL, LR_GRADE_MIND, "wall-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 1.2, 5.0 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 1200.0, NULL }, { "light-1", "beam-deg", 40.0 * LR_DEG, NULL },
      { "light-2", "facing-deg", -0.7 * LR_PI, NULL },
      { "light-2", "job", LR_JOB_WALL, NULL }, { "light-2", "dim-pct", 0.0, NULL } } },
  { "house-light-on-the-walls", LR_CHECK_WALL_LEVEL, LR_GRADE_MIND, "wall-level:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_HOUSE_LIGHT, 0, 0.8, 2.8 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "output-lm", 4500.0, NULL }, { "house-light-1", "is-on", 1.0, NULL },
      { "house-light-1", "can-switch-off", 1.0, NULL }, { "house-light-1", "output-lm", 6000.0, NULL } } },
  { "one-camera-darker", LR_CHECK_EXPOSURE_MATCH, LR_GRADE_MIND, "exposure-match:camera-2:camera-1", TRUE, { { 0 } },
    { { CAMERA_B, "iso", 400.0, NULL } } },
  { "one-camera-brighter", LR_CHECK_EXPOSURE_MATCH, LR_GRADE_MIND, "exposure-match:camera-2:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "iso", 100.0, NULL } } },
  { "tungsten-key", LR_CHECK_WHITE_BALANCE, LR_GRADE_MIND, "white-balance:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "color-temperature-k", 3200.0, NULL } } },
  { "two-whites", LR_CHECK_MIXED_WHITES, LR_GRADE_MIND, "mixed-whites:person-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.4, 4.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-2", "aims-at", 0, WENNA }, { "light-1", "color-temperature-k", 3200.0, NULL } } },
  { "two-whites-one-can-be-set", LR_CHECK_MIXED_WHITES, LR_GRADE_MIND, "mixed-whites:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.4, 4.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-2", "aims-at", 0, WENNA }, { "light-1", "color-temperature-k", 3200.0, NULL },
      { "light-2", "color-temperature-min-k", 2700.0, NULL }, { "light-2", "color-temperature-max-k", 6500.0, NULL } } },
  { "two-whites-one-can-nearly", LR_CHECK_MIXED_WHITES, LR_GRADE_MIND, "mixed-whites:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, 1.4 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.4, 4.4 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-2", "aims-at", 0, WENNA }, { "light-1", "color-temperature-k", 3200.0, NULL },
      { "light-1", "color-temperature-min-k", 3000.0, NULL }, { "light-1", "color-temperature-max-k", 5000.0, NULL } } },
  { "banding-lamp", LR_CHECK_FLICKER, LR_GRADE_MIND, "flicker:camera-1:house-light-1", TRUE,
    { { TRUE, LR_ITEM_HOUSE_LIGHT, 0, 4.0, 3.0 } },
    { { "house-light-1", "is-on", 1.0, NULL }, { "house-light-1", "may-flicker", 1.0, NULL }, { CAMERA_A, "shutter-s", 1.0 / 60.0, NULL } } },
  { "beating-lamp", LR_CHECK_FLICKER, LR_GRADE_FIX, "flicker:camera-1:house-light-1", TRUE,
    { { TRUE, LR_ITEM_HOUSE_LIGHT, 0, 4.0, 3.0 } },
    { { "house-light-1", "is-on", 1.0, NULL }, { "house-light-1", "may-flicker", 1.0, NULL },
      { CAMERA_A, "shutter-s", 1.0 / 60.0, NULL }, { CAMERA_A, "frame-rate-fps", 30.0, NULL } } },
  { "noisy", LR_CHECK_NATIVE_ISO, LR_GRADE_MIND, "native-iso:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "native-iso", 800.0, NULL }, { CAMERA_A, "iso", 3200.0, NULL }, { CAMERA_A, "nd-stops", 3.0, NULL } } },
  { "noisy-and-dark", LR_CHECK_NATIVE_ISO, LR_GRADE_MIND, "native-iso:camera-1", FALSE, { { 0 } },
    { { CAMERA_A, "native-iso", 100.0, NULL } } },
  { "under-the-native-value", LR_CHECK_NATIVE_ISO, LR_GRADE_MIND, "native-iso:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "native-iso", 12800.0, NULL }, { CAMERA_B, "second-native-iso", 6400.0, NULL } } },
  { "choppy", LR_CHECK_SHUTTER, LR_GRADE_MIND, "shutter:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "shutter-s", 1.0 / 200.0, NULL }, { CAMERA_A, "iso", 1600.0, NULL } } },
  { "smeared", LR_CHECK_SHUTTER, LR_GRADE_MIND, "shutter:camera-1", TRUE, { { 0 } },
    { { CAMERA_A, "shutter-s", 0.04, NULL } } },
  { "longer-than-a-picture", LR_CHECK_SHUTTER, LR_GRADE_FIX, "shutter:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "frame-rate-fps", 100.0, NULL } } },
  { "faster-than-the-mains", LR_CHECK_SHUTTER, LR_GRADE_FIX, "shutter:camera-2", TRUE, { { 0 } },
    { { CAMERA_B, "frame-rate-fps", 150.0, NULL } } },
  { "lamp-in-slow-motion", LR_CHECK_FLICKER, LR_GRADE_FIX, "flicker:camera-1:house-light-1", TRUE,
    { { TRUE, LR_ITEM_HOUSE_LIGHT, 0, 4.0, 3.0 } },
    { { "house-light-1", "is-on", 1.0, NULL }, { "house-light-1", "may-flicker", 1.0, NULL }, { CAMERA_A, "shutter-s", 1.0 / 240.0, NULL },
      { CAMERA_A, "frame-rate-fps", 120.0, NULL } } },
  { "winter-sun", LR_CHECK_SUN, LR_GRADE_MIND, "sun:person-1:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 3.0, 0.0 } }, { { "window-1", "blind", LR_BLIND_UP, NULL }, { "window-1", "head-mm", 2.4, NULL } } },
  { "winter-sun-on-the-wall", LR_CHECK_SUN_BACKGROUND, LR_GRADE_MIND, "sun-background:camera-1:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 0.7, 0.0 } }, { { "window-1", "blind", LR_BLIND_UP, NULL }, { "window-1", "head-mm", 2.4, NULL } } },
  { "winter-sun-in-the-lens", LR_CHECK_SUN_LENS, LR_GRADE_MIND, "sun-lens:camera-2:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 5.05, 0.0 } }, { { "window-1", "blind", LR_BLIND_UP, NULL }, { "window-1", "head-mm", 2.69, NULL } } },
  { "winter-sun-on-a-table", LR_CHECK_SUN_TABLE, LR_GRADE_MIND, "sun-table:furniture-1:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 1.5, 0.0 }, { TRUE, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 1.5, 4.0 } },
    { { "window-1", "blind", LR_BLIND_UP, NULL }, { "window-1", "head-mm", 2.4, NULL } } },
  { "key-in-glasses", LR_CHECK_GLARE, LR_GRADE_MIND, "glare:light-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 5.4, 1.2 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 1.5, NULL }, { WENNA, "has-glasses", 1.0, NULL } } },
  { "key-in-glasses-under-the-ceiling", LR_CHECK_GLARE, LR_GRADE_MIND, "glare:light-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 5.6, 1.0 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 1.5, NULL }, { "light-1", "width-mm", 1.6, NULL },
      { "light-1", "height-mm", 1.6, NULL }, { WENNA, "has-glasses", 1.0, NULL } } },
  { "back-light-in-lens", LR_CHECK_FLARE, LR_GRADE_MIND, "flare:light-1:camera-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.0, 0.7 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 2.3, NULL } } },
  { "dull-eyes", LR_CHECK_CATCH_LIGHT, LR_GRADE_MIND, "catch-light:person-1:camera-1", FALSE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.0, 4.5 } }, { { "light-1", "aims-at", 0, WENNA } } },
  { "dull-eyes-under-a-high-key", LR_CHECK_CATCH_LIGHT, LR_GRADE_MIND, "catch-light:person-1:camera-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 3.15, 2.7 } }, { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 2.5, NULL }, { "light-1", "output-lm", 500.0, NULL } } },
  { "shadow-on-the-wall", LR_CHECK_SHADOW, LR_GRADE_MIND, "shadow-in-frame:light-1:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_POINT, 4.7, 3.7 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 1.5, NULL }, { "light-1", "output-lm", 2000.0, NULL } } },
  { "soft-shadow-on-the-wall", LR_CHECK_SHADOW, LR_GRADE_MIND, "shadow-in-frame:light-1:person-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 4.7, 3.7 } },
    { { "light-1", "aims-at", 0, WENNA }, { "light-1", "lamp-height-mm", 1.5, NULL }, { "light-1", "output-lm", 4000.0, NULL } } },
  { "shadow-of-a-boom", LR_CHECK_SHADOW, LR_GRADE_MIND, "shadow-in-frame:light-1:microphone-1", TRUE,
    { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_POINT, 2.6, 4.6 }, { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 1.2, 5.2 } },
    { { "light-1", "facing-deg", -135.0 * LR_DEG, NULL }, { "light-1", "width-mm", 0.03, NULL }, { "light-1", "lamp-height-mm", 2.0, NULL },
      { "light-1", "output-lm", 4000.0, NULL }, { "microphone-1", "tip-x-mm", 1.1, NULL }, { "microphone-1", "tip-y-mm", 3.4, NULL },
      { "microphone-1", "tip-height-mm", 1.9, NULL } } },
  { "fridge-hums", LR_CHECK_NOISE, LR_GRADE_MIND, "noise:person-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0 }, { TRUE, LR_ITEM_NOISE, 0, 6.0, 5.5 } },
    { { "microphone-1", "worn-by", 0, WENNA }, { "noise-1", "level-db", 44.0, NULL }, { "noise-1", "can-switch-off", 1.0, NULL } } },
  { "fan-roars", LR_CHECK_NOISE, LR_GRADE_FIX, "noise:person-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0 }, { TRUE, LR_ITEM_NOISE, 0, 6.0, 5.5 } },
    { { "microphone-1", "worn-by", 0, WENNA }, { "noise-1", "level-db", 60.0, NULL } } },
  { "ringing-room", LR_CHECK_REVERBERATION, LR_GRADE_MIND, "reverberation:person-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0 } }, { { "microphone-1", "worn-by", 0, WENNA } } },
  { "too-far-for-the-room", LR_CHECK_REVERBERATION, LR_GRADE_MIND, "reverberation:person-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_STAND, 5.0, 3.9 } }, { { "microphone-1", "aims-at", 0, WENNA } } },
  { "one-microphone", LR_CHECK_SECOND_MICROPHONE, LR_GRADE_MIND, "second-microphone:person-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0 } }, { { "microphone-1", "worn-by", 0, WENNA } } },
  { "tube-too-near", LR_CHECK_OFF_AXIS, LR_GRADE_MIND, "off-axis:microphone-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 } },
    { { "microphone-1", "aims-at", 0, WENNA }, { "microphone-1", "tube-mm", 0.4, NULL }, { "microphone-1", "tip-x-mm", 3.3, NULL },
      { "microphone-1", "tip-y-mm", 2.93, NULL }, { "microphone-1", "tip-height-mm", 1.2, NULL } } },
  { "over-a-bare-table", LR_CHECK_COMB, LR_GRADE_MIND, "comb:microphone-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_STAND, 3.7, 2.8 }, { TRUE, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 3.5, 2.9 } },
    { { "microphone-1", "aims-at", 0, WENNA }, { "microphone-1", "omni-share-pct", 1.0, NULL }, { "microphone-1", "tip-x-mm", 3.6, NULL },
      { "microphone-1", "tip-y-mm", 2.85, NULL }, { "microphone-1", "tip-height-mm", 1.1, NULL } } },
  { "boom-far", LR_CHECK_BOOM_PLACE, LR_GRADE_MIND, "boom-place:microphone-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 } },
    { { "microphone-1", "aims-at", 0, WENNA }, { "microphone-1", "tip-x-mm", 3.6, NULL }, { "microphone-1", "tip-y-mm", 2.9, NULL },
      { "microphone-1", "tip-height-mm", 2.2, NULL } } },
  { "boom-behind", LR_CHECK_BOOM_PLACE, LR_GRADE_MIND, "boom-place:microphone-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 } },
    { { "microphone-1", "aims-at", 0, WENNA }, { "microphone-1", "tip-x-mm", 2.8, NULL }, { "microphone-1", "tip-y-mm", 3.1, NULL },
      { "microphone-1", "tip-height-mm", 1.7, NULL } } },
  { "boom-before-the-key", LR_CHECK_BOOM_SHADOW, LR_GRADE_MIND, "boom-shadow:microphone-1:light-1", FALSE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 4.2, 1.4 } },
    { { "microphone-1", "aims-at", 0, WENNA }, { "light-1", "aims-at", 0, WENNA }, { "microphone-1", "tip-x-mm", 3.36, NULL },
      { "microphone-1", "tip-y-mm", 2.58, NULL }, { "microphone-1", "tip-height-mm", 1.45, NULL } } },
  { "circuit-overloaded", LR_CHECK_CIRCUIT, LR_GRADE_FIX, "circuit:circuit-1", FALSE, { POWERED, { TRUE, LR_ITEM_CIRCUIT, 0, 0.0, 0.0 } },
    { FED, { "socket-1", "circuit", 0, "circuit-1" }, { "light-1", "power-w", 4000.0, NULL } } },
  { "circuit-overloaded-at-full", LR_CHECK_CIRCUIT, LR_GRADE_MIND, "circuit:circuit-1", FALSE,
    { POWERED, { TRUE, LR_ITEM_CIRCUIT, 0, 0.0, 0.0 } },
    { FED, { "socket-1", "circuit", 0, "circuit-1" }, { "light-1", "power-w", 4000.0, NULL }, { "light-1", "dim-pct", 0.5, NULL } } },
  { "circuit-untold", LR_CHECK_UNTOLD, LR_GRADE_MIND, "untold-circuit", FALSE, { POWERED }, { FED, { "light-1", "power-w", 2600.0, NULL } } },
  { "lamp-without-a-lead", LR_CHECK_UNFED, LR_GRADE_MIND, "unfed:light-1", TRUE,
    { { TRUE, LR_ITEM_SOCKET, 0, 0.6, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 0.7, 1.2 } }, { { "light-1", "power-w", 60.0, NULL } } },
  { "two-leads-one-outlet", LR_CHECK_OUTLETS, LR_GRADE_FIX, "outlets:socket-1", FALSE,
    { POWERED, { TRUE, LR_ITEM_LEAD, 0, 2.0, 0.06 } }, { FED, { "lead-2", "socket", 0, "socket-1" }, { "socket-1", "outlets", 1.0, NULL } } },
  { "lead-too-short", LR_CHECK_LEAD_LENGTH, LR_GRADE_FIX, "lead-length:lead-1", TRUE, { POWERED }, { FED, { "lead-1", "length-mm", 0.5, NULL } } },
  { "lead-without-a-loop", LR_CHECK_LEAD_LENGTH, LR_GRADE_MIND, "lead-length:lead-1", TRUE, { POWERED },
    { FED, { "lead-1", "length-mm", 1.5, NULL } } },
  { "lead-off-its-lamp", LR_CHECK_LEAD_ENDS, LR_GRADE_MIND, "lead-ends:lead-1", TRUE, { POWERED }, { FED } },
  { "lead-under-a-person", LR_CHECK_LEAD_WAY, LR_GRADE_MIND, "lead-way:lead-1:person-1", TRUE,
    { { TRUE, LR_ITEM_SOCKET, 0, 0.0, 3.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 4.5, 0.8 }, { TRUE, LR_ITEM_LEAD, 0, 2.5, 3.0 } }, { FED } },
  { "lead-across-the-way-out", LR_CHECK_LEAD_WAY, LR_GRADE_FIX, "lead-way:lead-1:door-1", TRUE,
    { { TRUE, LR_ITEM_SOCKET, 0, 0.6, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 0.7, 1.2 }, { TRUE, LR_ITEM_LEAD, 0, 1.4, 0.2 },
      { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 } }, { FED } },
  { "long-thin-lead", LR_CHECK_VOLTAGE_DROP, LR_GRADE_MIND, "voltage-drop:lead-1", TRUE, { POWERED, { TRUE, LR_ITEM_CIRCUIT, 0, 0.0, 0.0 } },
    { FED, { "socket-1", "circuit", 0, "circuit-1" }, { "light-1", "power-w", 1000.0, NULL }, { "lead-1", "length-mm", 100.0, NULL },
      { "lead-1", "core-mm2", 0.75, NULL } } },
  { "lead-overheats", LR_CHECK_LEAD_CURRENT, LR_GRADE_FIX, "lead-current:lead-1", TRUE, { POWERED, { TRUE, LR_ITEM_CIRCUIT, 0, 0.0, 0.0 } },
    { FED, { "socket-1", "circuit", 0, "circuit-1" }, { "light-1", "power-w", 2300.0, NULL }, { "lead-1", "core-mm2", 0.75, NULL } } },
  { "wound-reel", LR_CHECK_REEL, LR_GRADE_MIND, "reel:lead-1", TRUE, { POWERED }, { FED, { "lead-1", "is-wound", 1.0, NULL } } },
  { "hot-reel", LR_CHECK_REEL, LR_GRADE_FIX, "reel:lead-1", TRUE, { POWERED },
    { FED, { "lead-1", "is-wound", 1.0, NULL }, { "lead-1", "wound-limit-w", 500.0, NULL }, { "light-1", "power-w", 650.0, NULL } } },
  { "stand-tips-at-a-nudge", LR_CHECK_STAND, LR_GRADE_MIND, "stand", TRUE, { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 1.0 } }, { { 0 } } },
  { "boom-falls", LR_CHECK_STAND, LR_GRADE_FIX, "stand:microphone-1", TRUE, { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 7.0, 1.0 } },
    { { "microphone-1", "tip-x-mm", 4.0, NULL }, { "microphone-1", "tip-y-mm", 1.0, NULL } } },
  { "boom-of-no-told-weight", LR_CHECK_STAND, LR_GRADE_MIND, "stand:microphone-1", TRUE, { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 7.0, 1.0 } },
    { { "microphone-1", "tip-x-mm", 5.21, NULL }, { "microphone-1", "tip-y-mm", 1.0, NULL }, { "microphone-1", "arm-mass-kg", 0.0, NULL },
      { "microphone-1", "capsule-mass-kg", 0.0, NULL } } },
  { "boom-tips-at-a-nudge", LR_CHECK_STAND, LR_GRADE_MIND, "stand:microphone-1", TRUE, { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 7.0, 1.0 } },
    { { "microphone-1", "tip-x-mm", 6.1, NULL }, { "microphone-1", "tip-y-mm", 1.0, NULL } } },
  { "microphone-stand-tips-at-a-nudge", LR_CHECK_STAND, LR_GRADE_MIND, "stand", TRUE, { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_STAND, 7.0, 1.0 } },
    { { 0 } } },
  { "boom-leans", LR_CHECK_STAND, LR_GRADE_MIND, "stand:microphone-1", TRUE, { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 7.0, 1.0 } },
    { { "microphone-1", "tip-x-mm", 5.2, NULL }, { "microphone-1", "tip-y-mm", 1.0, NULL } } },
  { "boom-at-a-head", LR_CHECK_HEAD_CLEAR, LR_GRADE_MIND, "head-clear:microphone-1:person-1", TRUE,
    { { TRUE, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 1.4, 4.0 } },
    { { "microphone-1", "tip-x-mm", 3.0, NULL }, { "microphone-1", "tip-y-mm", 3.0, NULL }, { "microphone-1", "tip-height-mm", 1.4, NULL } } },
  { "lamp-under-the-ceiling", LR_CHECK_LAMP_CLEAR, LR_GRADE_MIND, "lamp-clear:light-1", TRUE, { { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 1.0 } },
    { { "light-1", "lamp-height-mm", 2.45, NULL } } },
  { "lamp-by-a-blind", LR_CHECK_LAMP_CLEAR, LR_GRADE_MIND, "lamp-clear:light-1:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 7.0, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 0.45 } },
    { { "window-1", "blind", LR_BLIND_DOWN, NULL }, { "light-1", "lamp-height-mm", 1.5, NULL } } },
  { "big-lamp-by-a-blind", LR_CHECK_LAMP_CLEAR, LR_GRADE_MIND, "lamp-clear:light-1:window-1", TRUE,
    { { TRUE, LR_ITEM_WINDOW, 0, 7.0, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 0.85 } },
    { { "window-1", "blind", LR_BLIND_DOWN, NULL }, { "light-1", "lamp-height-mm", 1.5, NULL }, { "light-1", "power-w", 1000.0, NULL } } },
  { "stand-before-the-way-out", LR_CHECK_WAY_OUT, LR_GRADE_FIX, "way-out", TRUE,
    { { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 2.0, 0.9 } },
    { { "door-1", "swing", LR_SWING_OUT, NULL }, { "door-1", "width-mm", 0.95, NULL } } },
  { "way-out-by-a-narrow-door", LR_CHECK_WAY_OUT, LR_GRADE_MIND, "way-out", FALSE, { { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 } },
    { { "door-1", "width-mm", 0.8, NULL } } },
  { "way-out-by-a-hatch", LR_CHECK_WAY_OUT, LR_GRADE_FIX, "way-out", FALSE, { { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 } },
    { { "door-1", "width-mm", 0.4, NULL } } },
  { "wheelchair-by-a-cupboard-door", LR_CHECK_WHEELCHAIR, LR_GRADE_FIX, "wheelchair:person-1", FALSE, { { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 } },
    { { "door-1", "is-exit", 0.0, NULL }, { "door-1", "width-mm", 0.6, NULL }, { WENNA, "uses-wheelchair", 1.0, NULL } } },
  { "stand-in-a-wheelchairs-way", LR_CHECK_WHEELCHAIR, LR_GRADE_FIX, "wheelchair:person-1", TRUE,
    { { TRUE, LR_ITEM_DOOR, 0, 2.0, 0.0 }, { TRUE, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 2.0, 0.9 } },
    { { "door-1", "is-exit", 0.0, NULL }, { "door-1", "width-mm", 0.95, NULL }, { WENNA, "uses-wheelchair", 1.0, NULL } } },
  { "walls-disagree", LR_CHECK_TAPE, LR_GRADE_MIND, "tape:doubt-1", FALSE, { { 0 } }, { { 0 } } },
  { "drawn-otherwise", LR_CHECK_TAPE, LR_GRADE_MIND, "tape:drawn", FALSE, { { 0 } }, { { 0 } } },
  { "nobody-asks", LR_CHECK_MISSING, LR_GRADE_MIND, "missing:interviewer", FALSE, { { 0 } },
    { { INES, "role", LR_ROLE_OTHER, NULL }, { WENNA, "looks-at", 0, "" } } },
};

const gsize n_provocations = G_N_ELEMENTS (provocations);

/* From 11:30 to 12:30 at 50 degrees north, 0 east, in the last days of December the sun stands 16 degrees high in the south */
static void
set_winter (LrPlan **plan)
{
  static const char *const texts[][2] = { { "date", "2026-12-21" }, { "time-roll", "11:30" }, { "time-wrap", "12:30" }, { "time-zone", "UTC" } };
  GError *error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      LrPlan *next = lr_plan_set_job (*plan, texts[i][0], texts[i][1], &error);

      g_assert_no_error (error);
      lr_plan_unref (*plan);
      *plan = next;
    }
  for (gsize i = 0; i < 2; i++)
    {
      LrPlan *next = lr_plan_set_location (*plan, i == 0 ? "latitude-deg" : "longitude-deg", i == 0 ? 50.0 : 0.0, &error);

      g_assert_no_error (error);
      lr_plan_unref (*plan);
      *plan = next;
    }
}

LrLightLevels *
provoked_levels (const Provocation *provocation,
                 const LrStudy     *study)
{
  gboolean is_lit = (provocation->check >= LR_CHECK_UNLIT && provocation->check <= LR_CHECK_MIXED_WHITES)
                    || provocation->check == LR_CHECK_CATCH_LIGHT || provocation->check == LR_CHECK_SHADOW
                    || provocation->check == LR_CHECK_WAY_OUT || provocation->check == LR_CHECK_WHEELCHAIR;

  return is_lit ? lr_light_levels_new (study->plan, TRUE, NULL) : NULL;
}

LrRemarks *
provoked_remarks (const Provocation *provocation,
                  const LrStudy     *study,
                  LrUnits            units)
{
  g_autoptr (LrLightLevels) levels = provoked_levels (provocation, study);

  return lr_remarks_new_lit (study, levels, units);
}

/* Walls 1 and 3 of 8 m, one misread as 7.90 m; or all as they are, and then one drawn 7.80 m */
static void
tape_room (LrPlan     **plan,
           const char  *remark)
{
  const LrVec2 corners_m[] = { { 0.0, 0.0 }, { 8.0, 0.0 }, { 8.0, 6.0 }, { 0.0, 6.0 } };
  gboolean is_misread = g_str_equal (remark, "tape:doubt-1");
  const LrTapeNote tape[] = { { 0, 1, 8.0, NULL }, { 1, 2, 6.0, NULL }, { 2, 3, is_misread ? 7.9 : 8.0, NULL }, { 3, 0, 6.0, NULL } };
  const LrTaped taped = { corners_m, 4, tape, 4, NULL, 0 };
  GError *error = NULL;
  LrPlan *next = lr_plan_set_taped (*plan, &taped, &error), *moved;

  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = next;
  if (is_misread)
    return;
  moved = lr_plan_set_wall_length (*plan, 0, 7.8, &error);
  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = moved;
}

LrPlan *
provoke (const Provocation *provocation)
{
  LrPlan *plan = fixture_interview ();

  if (provocation->check >= LR_CHECK_SUN && provocation->check <= LR_CHECK_SUN_TABLE)
    set_winter (&plan);
  if (provocation->check == LR_CHECK_TAPE)
    tape_room (&plan, provocation->remark);
  for (guint i = 0; i < G_N_ELEMENTS (provocation->extra) && provocation->extra[i].is_there; i++)
    fixture_add (&plan, provocation->extra[i].kind, provocation->extra[i].form, provocation->extra[i].x_m,
                 provocation->extra[i].y_m);
  for (guint i = 0; i < G_N_ELEMENTS (provocation->edits) && provocation->edits[i].id != NULL; i++)
    {
      const Edit *edit = &provocation->edits[i];

      if (edit->text != NULL)
        fixture_text (&plan, edit->id, edit->key, edit->text);
      else
        fixture_set (&plan, edit->id, edit->key, edit->value);
    }
  return plan;
}
