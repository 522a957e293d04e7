/* readings.c - every computed number by item id, as JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The stable interface for tests and other programs. Keys end in their unit: -m metres, -m2 square metres, -deg degrees,
 * -mm millimetres (on the sensor alone), -w watts, -a amperes, -v volts, -n newtons, -kg kilograms, -hz, -ms, -lm lumens,
 * -cd candela, -stops halvings of light, -share a fraction of the frame; a bare number is a ratio or a count. A number
 * that cannot be computed is null, and so is a far limit at infinity (then "sharp-to-infinity" is true). Keys are added by later versions, never renamed.
 *
 *   format, version                     "lookroom-readings", 1
 *   setup                               id of the set-up that is shown
 *   room                                area-m2, height-m, n-corners, tape-p, tape-q (corners, from 0, if all is taped from
 *                                       the same two; else null)
 *   line                                null, or from-x-m .. to-y-m, subject, interviewer (ids), eyes-level-m
 *   items { id: {                       in the set-up's order
 *     kind, x-m, y-m, facing-deg, bottom-m, top-m, has-footprint
 *     eyes-x-m, eyes-y-m, eyes-height-m, crown-m                                      people
 *     length-m, path-m (along the floor), needed-m (with the way down and a loop), plug-off-m, load-off-m (its ends   leads
 *     from socket and load), circuit (null: not known), load-w (at full), current-a, bears-a (a core like its own, for
 *     hours, lying free; null: core not told), drop-v, drop-share (as bought, warm)
 *     rated-w, rated-a, known-load-w (what else is told to hang on it; null: nothing is told), full-w, dimmed-w, full-a,  circuits
 *     dimmed-a (known, and what leads feed: at full, as dimmed), load-share (full-a of rated-a), allowed-share,
 *     sockets-n, leads-n
 *     stand { gap-ratio, leg-ratio (what holds over what tips it, the arm over a gap between legs and over a leg; null:  what stands on three legs
 *     nothing tips it), push-n (level, at its head), bag-kg, wanted-bag-kg (for the plan's limits), taken-as-kg (the
 *     stand's mass, not told; null: it is), balance-kg (at a boom's short end; null without) }
 *     aim-direct-lx (on a face turned to it at its aim, straight from the lamp by its output), aim-seen-share (of
 *     what emits, past what stands between)                                            lights that aim at something
 *     file-lm, file-axis-cd (straight ahead), file-beam-deg (in the level plane)          lights with a photometric file
 *     load-w                                                                          sockets with a lead in them
 *     mouth-m                                                                         microphones that aim at a person
 *     tape: west-m, south-m (x and y from the leftmost and lowest corner), from-p-m,  what is marked on the floor
 *     from-q-m, crossing-deg (as in corners), walls and corners (null, or a, b: from 0, wall i from corner i; from-a-m,
 *     from-b-m, crossing-deg, error-m: longer half axis of the standard error ellipse, is-poor, way: "clear",
 *     "over-furniture"), grid-x-m, grid-y-m (along the longest wall from its first corner), height-m (of lens, lamp,
 *     capsule, seat or lower edge), bearing-deg (clockwise from north), tilt-deg, reach-m (of a boom), aims-at,
 *     aim-wall (that it faces), aim-along-m (from that wall's first corner)
 *     subject, is-main, pan-deg, tilt-deg, angle-of-view-h-deg, angle-of-view-v-deg,  cameras
 *     shutter-deg (360: open for the whole time of a picture), iso-over-native-stops (null: no native ISO is known),
 *     converter, focal-mm, f-number (effective: as marked, times the converter),
 *     recorded-width-mm, recorded-height-mm, area-width-mm, area-height-mm (delivered), aspect, width-kept-share,
 *     coc-mm, lens-x-m .. lens-z-m, focus-m, magnification, close-focus-stops (lost), sharp-near-m, sharp-far-m,
 *     sharp-to-infinity, hyperfocal-m, sharp-depth-m, sharp-front-m (before the eyes), sharp-front-share (before the
 *     plane of focus), f-number-for-depth (as marked, for the depth that is comfortable), distance-m (by tape),
 *     eyes-depth-m (along the axis), field-width-m,
 *     field-height-m, recorded-field-width-m, recorded-field-height-m, shot, frame-top-m, frame-bottom-m,
 *     headroom-share, eyes-across-share, eyes-down-share, gaze-deg, gaze-up-deg, lens-up-deg, lens-above-m,
 *     side ("left", "right", "on-line", null), line-margin-deg, line-distance-m, face-ratio,
 *     joint ("neck", "elbow", "knee", null: nearest to the lower edge), joint-above-m, eyes-rule-share,
 *     looks-to ("left", "right" of the frame, null), look-room-share,
 *     behind ("nothing", "wall", "item", "floor", "ceiling"), behind-item, behind-wall, behind-x-m .. behind-z-m,
 *     behind-m, separation-m, behind-field-width-m, behind-field-height-m, size-ratio, blur-mm, blur-share
 *   } }
 *   mains { frequency-hz, is-guessed }
 *   sun { in-height-deg, in-bearing-deg, out-height-deg, out-bearing-deg (when the crew comes and goes; without the air),
 *     face-from, face-to ("09:09": first and last minute of the day on the subject's eyes), face-window, sky ("overcast",
 *     "clear"), touches [ { thing ("face", "clothes", "background" of a camera, "lens", "table"), item, window, spans [ { from, to } ] } ]
 *     (from rolling to wrap) }
 *   pairs [ { a, b, angle-deg (at the middle of the head), shot-steps, size-ratio, is-same-side, is-same-look, eyes-step-share, gaze-step-deg,
 *     gaze-up-step-deg } ]               two cameras on one person; steps are b less a
 *   reverses [ { a, b, is-opposed, gaze-step-deg, gaze-up-step-deg, size-ratio } ]   two on the two who look at each other
 *   intrusions [ { camera, item (null: ceiling, floor), part ("stand", "head", "arm", "capsule", "sheet", "person",
 *     "furniture", "window", "fixture", "ceiling", "floor"), edge ("left", "right", "top", "bottom": the nearest to get
 *     out by), is-cut (by it),
 *     reach-share, move-m (out by that edge), area-share (null where its parts cover each other), face-share, body-share (of
 *     the subject, hidden by it), is-nearer, is-partly-hidden, clearance-share (a boom over the frame, else null),
 *     outlines [ [ [ across, down ], ... ], ... ] (0..1 from the frame's upper left) } ]
 *   clashes [ { type ("overlap", "outside", "door", "ceiling"), a, b, depth-m, push-deg, x-m, y-m } ]
 *   sound { volume-m3, surface-m2, sabine-s, eyring-s (octaves 125 Hz to 4 kHz), is-eyring, is-measured, reverberation-s (at middle
 *     frequencies, as used), absorption-m2, critical-m, schroeder-hz, background-db, modes-hz (first ones along x, along y and up, of the
 *     box that holds the room), crowded-hz (two sides boom together there; null: nowhere in a voice), flutter-wall (the first of two bare
 *     walls that face each other; null: none), flutter-period-ms, flutter-ring-s, microphones [ { microphone, talker, distance-m, off-axis-deg,
 *     off-mouth-deg, lean-off-axis-deg, lean-2-khz-db, voice-db, reverberant-db, over-room-db, noise-db, over-noise-db,
 *     over-noise-all-off-db, notch-hz, reflection-share, noises [ { noise (null: the room itself), level-db, win-db (null: nothing else
 *     is heard) } ] } ] }                levels are A-weighted; a microphone is there if somebody speaks into it
 *   light { n-sources (lights, house lights that are on, windows by day), has-bounces (what the room gives back is known),
 *     faces [ { person, left-cheek, right-cheek, forehead, top, back, chest (each { direct-lx, bounced-lx }), lit (the brighter
 *       cheek), key (id of what gives it most), key-is-sun (through that window), key-lx (there, straight), fill-lx (on the other
 *       cheek, all but the key's straight light), ratio-stops (the two cheeks, all light counted), key-side-deg (off the look; > 0 to the
 *       person's left), key-up-deg,
 *       back-lx (straight, on the back of the head), mixed-k (of the straight light on the lit cheek) } ],
 *     pictures [ { camera, walls { direct-lx, bounced-lx } (mean of what it sees of walls), walls-n (places looked at), walls-least-lx,
 *       walls-most-lx, face-signal, shadow-signal, clothes-signal, walls-signal (0..1, ITU-R BT.709, 1 clips),
 *       face-over-white-stops (> 0: burnt out), clothes-over-walls-stops } ] }
 *   asks [ { ... } ]                    what the place is asked to do, with reasons: added by the command line, as "check --json" has it
 */

#include "readings_private.h"

#include "light_readings.h"
#include "sun_touches.h"

static const char *const shot_words[LR_N_SHOTS + 1] = {
  [LR_SHOT_EXTREME_CLOSE_UP] = "extreme-close-up",
  [LR_SHOT_BIG_CLOSE_UP] = "big-close-up",
  [LR_SHOT_CLOSE_UP] = "close-up",
  [LR_SHOT_MEDIUM_CLOSE_UP] = "medium-close-up",
  [LR_SHOT_MEDIUM] = "medium",
  [LR_SHOT_MEDIUM_LONG] = "medium-long",
  [LR_SHOT_THREE_QUARTER] = "three-quarter",
  [LR_SHOT_FULL] = "full",
  [LR_SHOT_LONG] = "long",
  [LR_N_SHOTS] = "none",
};

static const char *const behind_words[] = {
  [LR_BEHIND_NOTHING] = "nothing", [LR_BEHIND_WALL] = "wall", [LR_BEHIND_ITEM] = "item", [LR_BEHIND_FLOOR] = "floor",
  [LR_BEHIND_CEILING] = "ceiling",
};

static const char *const joint_words[LR_N_JOINTS + 1] = {
  [LR_JOINT_NECK] = "neck", [LR_JOINT_ELBOW] = "elbow", [LR_JOINT_KNEE] = "knee", [LR_N_JOINTS] = NULL,
};

static const char *
side_word (const LrCameraReading *camera)
{
  if (!camera->is_looking)
    return NULL;

  return camera->side == LR_SIDE_LEFT ? "left" : camera->side == LR_SIDE_RIGHT ? "right" : "on-line";
}

static void
add_lens (JsonBuilder           *builder,
          const LrCameraReading *camera)
{
  lr_readings_add_degrees (builder, "pan-deg", camera->pan_rad);
  lr_readings_add_degrees (builder, "tilt-deg", camera->tilt_rad);
  lr_readings_add_degrees (builder, "angle-of-view-h-deg", camera->angle_h_rad);
  lr_readings_add_degrees (builder, "angle-of-view-v-deg", camera->angle_v_rad);
  lr_readings_add_number (builder, "converter", camera->converter);
  lr_readings_add_number (builder, "focal-mm", 1000.0 * camera->focal_m);
  lr_readings_add_number (builder, "f-number", camera->f_number);
  lr_readings_add_number (builder, "recorded-width-mm", 1000.0 * camera->recorded.width_m);
  lr_readings_add_number (builder, "recorded-height-mm", 1000.0 * camera->recorded.height_m);
  lr_readings_add_number (builder, "area-width-mm", 1000.0 * camera->area.width_m);
  lr_readings_add_number (builder, "area-height-mm", 1000.0 * camera->area.height_m);
  lr_readings_add_number (builder, "aspect", camera->image_aspect);
  lr_readings_add_number (builder, "width-kept-share", camera->width_share);
  lr_readings_add_number (builder, "coc-mm", 1000.0 * camera->coc_m);
  lr_readings_add_number (builder, "lens-x-m", camera->projection.eye_m.x);
  lr_readings_add_number (builder, "lens-y-m", camera->projection.eye_m.y);
  lr_readings_add_number (builder, "lens-z-m", camera->projection.eye_m.z);
  lr_readings_add_number (builder, "focus-m", camera->focus_m);
  lr_readings_add_number (builder, "magnification", camera->magnification);
  lr_readings_add_number (builder, "close-focus-stops", camera->close_stops);
  lr_readings_add_number (builder, "sharp-near-m", camera->sharp_near_m);
  lr_readings_add_number (builder, "sharp-far-m", camera->sharp_far_m);
  lr_readings_add_flag (builder, "sharp-to-infinity", isinf (camera->sharp_far_m));
  lr_readings_add_number (builder, "hyperfocal-m", camera->hyperfocal_m);
  lr_readings_add_number (builder, "sharp-depth-m", camera->sharp_depth_m);
  lr_readings_add_number (builder, "sharp-front-m", camera->sharp_front_m);
  lr_readings_add_number (builder, "sharp-front-share", camera->sharp_front_share);
  lr_readings_add_number (builder, "f-number-for-depth", camera->f_number_for_depth);
}

static void
add_look (JsonBuilder           *builder,
          const LrCameraReading *camera)
{
  lr_readings_add_number (builder, "distance-m", camera->distance_m);
  lr_readings_add_number (builder, "eyes-depth-m", camera->eyes_depth_m);
  lr_readings_add_number (builder, "field-width-m", camera->field_w_m);
  lr_readings_add_number (builder, "field-height-m", camera->field_h_m);
  lr_readings_add_number (builder, "recorded-field-width-m", camera->recorded_field_w_m);
  lr_readings_add_number (builder, "recorded-field-height-m", camera->recorded_field_h_m);
  lr_readings_add_text (builder, "shot", shot_words[camera->framing.shot]);
  lr_readings_add_number (builder, "frame-top-m", camera->framing.top_m);
  lr_readings_add_number (builder, "frame-bottom-m", camera->framing.bottom_m);
  lr_readings_add_number (builder, "headroom-share", camera->framing.headroom);
  lr_readings_add_number (builder, "eyes-across-share", camera->eyes_across);
  lr_readings_add_number (builder, "eyes-down-share", camera->eyes_down);
  lr_readings_add_degrees (builder, "gaze-deg", camera->gaze_rad);
  lr_readings_add_degrees (builder, "gaze-up-deg", camera->gaze_up_rad);
  lr_readings_add_degrees (builder, "lens-up-deg", camera->lens_up_rad);
  lr_readings_add_number (builder, "lens-above-m", camera->lens_above_m);
  lr_readings_add_text (builder, "side", side_word (camera));
  lr_readings_add_degrees (builder, "line-margin-deg", camera->line_margin_rad);
  lr_readings_add_number (builder, "line-distance-m", camera->line_distance_m);
  lr_readings_add_number (builder, "face-ratio", camera->face_ratio);
}

static void
add_framing (JsonBuilder           *builder,
             const LrCameraReading *camera)
{
  gboolean is_looking = isfinite (camera->look_across) && camera->look_across != 0.0;

  lr_readings_add_text (builder, "joint", joint_words[camera->joint.joint]);
  lr_readings_add_number (builder, "joint-above-m", camera->joint.above_m);
  lr_readings_add_number (builder, "eyes-rule-share", camera->eyes_rule);
  lr_readings_add_text (builder, "looks-to", !is_looking ? NULL : camera->look_across > 0.0 ? "right" : "left");
  lr_readings_add_number (builder, "look-room-share", camera->look_room);
}

static void
add_behind (JsonBuilder           *builder,
            const LrCameraReading *camera)
{
  lr_readings_add_text (builder, "behind", behind_words[camera->behind]);
  lr_readings_add_text (builder, "behind-item", lr_readings_id_of (camera->behind_item));
  if (camera->behind_wall >= 0)
    lr_readings_add_count (builder, "behind-wall", camera->behind_wall);
  else
    lr_readings_add_text (builder, "behind-wall", NULL);
  lr_readings_add_number (builder, "behind-x-m", camera->behind_at_m.x);
  lr_readings_add_number (builder, "behind-y-m", camera->behind_at_m.y);
  lr_readings_add_number (builder, "behind-z-m", camera->behind_at_m.z);
  lr_readings_add_number (builder, "behind-m", camera->behind_m);
  lr_readings_add_number (builder, "separation-m", camera->separation_m);
  lr_readings_add_number (builder, "behind-field-width-m", camera->behind_field_w_m);
  lr_readings_add_number (builder, "behind-field-height-m", camera->behind_field_h_m);
  lr_readings_add_number (builder, "size-ratio", camera->size_ratio);
  lr_readings_add_number (builder, "blur-mm", 1000.0 * camera->blur_m);
  lr_readings_add_number (builder, "blur-share", camera->blur_share);
}

static void
add_camera (JsonBuilder           *builder,
            const LrCameraReading *camera)
{
  lr_readings_add_text (builder, "subject", lr_readings_id_of (camera->subject));
  lr_readings_add_flag (builder, "is-main", camera->is_main);
  lr_readings_add_degrees (builder, "shutter-deg", lr_camera_shutter_rad (&camera->item->camera));
  lr_readings_add_number (builder, "iso-over-native-stops", lr_camera_over_native_stops (&camera->item->camera));
  add_lens (builder, camera);
  add_look (builder, camera);
  add_framing (builder, camera);
  add_behind (builder, camera);
}

/* Cameras and leads stand in the same order as the items: each list is walked once */
typedef struct
{
  guint camera, lead;
} Next;

static void
add_lamp_file (JsonBuilder  *builder,
               const LrItem *light)
{
  lr_readings_add_number (builder, "file-lm", light->lamp_file->flux_lm);
  lr_readings_add_number (builder, "file-axis-cd", lr_photometry_candela (&light->lamp_file->photometry, 0.0, 0.0));
  lr_readings_add_degrees (builder, "file-beam-deg", lr_item_beam_rad (light));
}

static void
add_supply (JsonBuilder   *builder,
            const LrStudy *study,
            const LrItem  *item)
{
  LrLightAt at;
  double number;

  if (item->kind == LR_ITEM_LIGHT)
    {
      gboolean is_known = lr_light_at_aim (study, lr_study_find_placed (study, item->id), &at);

      lr_readings_add_number (builder, "aim-direct-lx", is_known ? at.lux : (double) NAN);
      lr_readings_add_number (builder, "aim-seen-share", is_known ? at.seen_share : (double) NAN);
      if (item->lamp_file != NULL)
        add_lamp_file (builder, item);
    }
  if (item->kind == LR_ITEM_SOCKET && lr_study_socket_load_w (study, item, &number))
    lr_readings_add_number (builder, "load-w", number);
  if (item->kind == LR_ITEM_MICROPHONE && lr_study_mouth_distance_m (study, item, &number) != NULL)
    lr_readings_add_number (builder, "mouth-m", number);
}

static void
add_item (JsonBuilder    *builder,
          const LrStudy  *study,
          const GArray   *marks,
          const LrPlaced *placed,
          Next           *next)
{
  json_builder_set_member_name (builder, placed->item->id);
  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "kind", lr_item_kind_info (placed->item->kind)->word);
  lr_readings_add_number (builder, "x-m", placed->at_m.x);
  lr_readings_add_number (builder, "y-m", placed->at_m.y);
  lr_readings_add_degrees (builder, "facing-deg", placed->facing_rad);
  lr_readings_add_number (builder, "bottom-m", placed->bottom_m);
  lr_readings_add_number (builder, "top-m", placed->top_m);
  lr_readings_add_flag (builder, "has-footprint", placed->has_footprint);

  if (placed->item->kind == LR_ITEM_PERSON)
    {
      lr_readings_add_number (builder, "eyes-x-m", placed->eyes_m.x);
      lr_readings_add_number (builder, "eyes-y-m", placed->eyes_m.y);
      lr_readings_add_number (builder, "eyes-height-m", placed->eyes_m.z);
      lr_readings_add_number (builder, "crown-m", placed->body.crown_m);
    }
  if (placed->item->kind == LR_ITEM_CAMERA)
    add_camera (builder, &g_array_index (study->cameras, LrCameraReading, next->camera++));
  if (placed->item->kind == LR_ITEM_LEAD)
    lr_readings_add_number (builder, "length-m", g_array_index (study->leads, LrLeadReading, next->lead++).length_m);
  add_supply (builder, study, placed->item);
  lr_readings_add_power (builder, study, placed);
  lr_readings_add_tape (builder, study->setup->room, marks, placed);
  json_builder_end_object (builder);
}

static void
add_room (JsonBuilder   *builder,
          const LrStudy *study,
          const GArray  *marks)
{
  const LrRoom *room = study->setup->room;

  json_builder_set_member_name (builder, "room");
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "area-m2", study->room_area_m2);
  lr_readings_add_number (builder, "height-m", room->height_m);
  lr_readings_add_count (builder, "n-corners", (gint64) room->n_corners);
  lr_readings_add_common_corners (builder, marks);
  json_builder_end_object (builder);
}

static void
add_mains (JsonBuilder   *builder,
           const LrStudy *study)
{
  LrMains mains = lr_study_mains (study);

  json_builder_set_member_name (builder, "mains");
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "frequency-hz", mains.hz);
  lr_readings_add_flag (builder, "is-guessed", mains.from != LR_MAINS_TOLD);
  json_builder_end_object (builder);
}

static void
add_line (JsonBuilder   *builder,
          const LrStudy *study)
{
  json_builder_set_member_name (builder, "line");
  if (!study->has_line)
    {
      json_builder_add_null_value (builder);
      return;
    }

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "subject", lr_readings_id_of (study->subject));
  lr_readings_add_text (builder, "interviewer", lr_readings_id_of (study->interviewer));
  lr_readings_add_number (builder, "from-x-m", study->line_from_m.x);
  lr_readings_add_number (builder, "from-y-m", study->line_from_m.y);
  lr_readings_add_number (builder, "to-x-m", study->line_to_m.x);
  lr_readings_add_number (builder, "to-y-m", study->line_to_m.y);
  lr_readings_add_number (builder, "eyes-level-m", study->eyes_level_m);
  json_builder_end_object (builder);
}

static void
add_sun_at (JsonBuilder   *builder,
            const LrStudy *study,
            const char    *when,
            int            minute)
{
  g_autofree char *height_key = g_strconcat (when, "-height-deg", NULL), *bearing_key = g_strconcat (when, "-bearing-deg", NULL);
  LrSunPlace sun = { (double) NAN, (double) NAN, 0.0, 0.0 };

  if (minute >= 0)
    lr_study_sun_at (study, minute, &sun);
  lr_readings_add_degrees (builder, height_key, sun.altitude_rad);
  lr_readings_add_degrees (builder, bearing_key, sun.azimuth_rad);
}

static void
add_minute (JsonBuilder *builder,
            const char  *key,
            int          minute)
{
  g_autofree char *text = minute >= 0 ? g_strdup_printf ("%02d:%02d", minute / 60 % 24, minute % 60) : NULL;

  lr_readings_add_text (builder, key, text);
}

static void
add_touch (JsonBuilder      *builder,
           const LrSunTouch *touch)
{
  static const char *const things[LR_N_SUN_THINGS] = { "face", "clothes", "background", "lens", "table" };

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "thing", things[touch->thing]);
  lr_readings_add_text (builder, "item", lr_readings_id_of (touch->placed));
  lr_readings_add_text (builder, "window", lr_readings_id_of (touch->window));
  json_builder_set_member_name (builder, "spans");
  json_builder_begin_array (builder);
  for (guint i = 0; i < touch->n; i++)
    {
      json_builder_begin_object (builder);
      add_minute (builder, "from", touch->span[i].first);
      add_minute (builder, "to", touch->span[i].last);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

static void
add_touches (JsonBuilder   *builder,
             const LrStudy *study)
{
  int roll, wrap;

  json_builder_set_member_name (builder, "touches");
  json_builder_begin_array (builder);
  if (lr_job_shoot (study->plan->job, &roll, &wrap) && study->setup->room->n_corners >= 3)
    {
      g_autoptr (GArray) touches = lr_sun_touches (study, roll, wrap);

      for (guint i = 0; i < touches->len; i++)
        add_touch (builder, &g_array_index (touches, LrSunTouch, i));
    }
  json_builder_end_array (builder);
}

static void
add_sun (JsonBuilder   *builder,
         const LrStudy *study)
{
  const LrJob *job = study->plan->job;
  const LrPlaced *window = NULL;
  int first = -1, last = -1, in, roll, wrap, out;

  lr_job_minutes (job, &in, &roll, &wrap, &out);
  json_builder_set_member_name (builder, "sun");
  json_builder_begin_object (builder);
  add_sun_at (builder, study, "in", in);
  add_sun_at (builder, study, "out", out);
  if (study->subject != NULL)
    lr_study_sun_reach (study, study->subject->eyes_m, 0.5 * study->subject->body.head_width_m, 0, LR_DAY_MIN - 1, &first, &last, &window);
  add_minute (builder, "face-from", first);
  add_minute (builder, "face-to", last);
  lr_readings_add_text (builder, "face-window", window != NULL ? lr_readings_id_of (window) : NULL);
  lr_readings_add_text (builder, "sky", job->sky == LR_SKY_CLEAR ? "clear" : "overcast");
  add_touches (builder, study);
  json_builder_end_object (builder);
}

/**
 * lr_readings_to_json:
 * @study: a study
 * @levels: (nullable): of light in the same plan
 *
 * Every number of it by item id; see the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_readings_to_json (const LrStudy       *study,
                     const LrLightLevels *levels)
{
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();
  g_autoptr (GArray) marks = lr_tape_marks_new (study);
  Next next = { 0 };

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "format", "lookroom-readings");
  lr_readings_add_count (builder, "version", 1);
  lr_readings_add_text (builder, "setup", study->setup->id);
  add_room (builder, study, marks);
  add_line (builder, study);
  add_mains (builder, study);
  add_sun (builder, study);
  json_builder_set_member_name (builder, "items");
  json_builder_begin_object (builder);
  for (guint i = 0; i < study->placed->len; i++)
    add_item (builder, study, marks, &g_array_index (study->placed, LrPlaced, i), &next);
  json_builder_end_object (builder);
  lr_readings_add_pairs (builder, study);
  lr_readings_add_reverses (builder, study);
  lr_readings_add_intrusions (builder, study);
  lr_readings_add_clashes (builder, study);
  lr_readings_add_sound (builder, study);
  if (levels != NULL)
    lr_readings_add_light (builder, study, levels);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
