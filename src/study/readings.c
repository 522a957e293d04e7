/* readings.c - every computed number by item id, as JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The stable interface for tests and other programs. Keys end in their unit: -m metres, -m2 square metres, -deg degrees,
 * -mm millimetres (on the sensor alone), -w watts, -stops halvings of light, -share a fraction of the frame; a bare number
 * is a ratio or a count. A number that cannot be computed is null, and so is a far limit at infinity (then
 * "sharp-to-infinity" is true). Keys are added by later versions, never renamed.
 *
 *   format, version                     "lookroom-readings", 1
 *   setup                               id of the set-up that is shown
 *   room                                area-m2, height-m, n-corners, tape-p, tape-q (corners, from 0; null without)
 *   line                                null, or from-x-m .. to-y-m, subject, interviewer (ids), eyes-level-m
 *   items { id: {                       in the set-up's order
 *     kind, x-m, y-m, facing-deg, bottom-m, top-m, has-footprint
 *     eyes-x-m, eyes-y-m, eyes-height-m, crown-m                                      people
 *     length-m                                                                        leads
 *     load-w                                                                          sockets with a lead in them
 *     mouth-m                                                                         microphones that aim at a person
 *     tape: west-m, south-m, from-p-m, from-q-m, crossing-deg                         what is marked on the floor
 *     subject, is-main, pan-deg, tilt-deg, angle-of-view-h-deg, angle-of-view-v-deg,  cameras
 *     converter, focal-mm, f-number (effective: as marked, times the converter),
 *     recorded-width-mm, recorded-height-mm, area-width-mm, area-height-mm (delivered), aspect, width-kept-share, coc-mm, lens-x-m .. lens-z-m, focus-m, magnification, close-focus-stops (lost),
 *     sharp-near-m, sharp-far-m, sharp-to-infinity, hyperfocal-m, sharp-depth-m, sharp-front-m (before the eyes), sharp-front-share
 *     (before the plane of focus), f-number-for-depth (as marked, for the depth that is comfortable),
 *     distance-m, field-width-m, field-height-m, recorded-field-width-m, recorded-field-height-m, shot, frame-top-m, frame-bottom-m, headroom-share,
 *     eyes-across-share, eyes-down-share, gaze-deg, gaze-up-deg, lens-up-deg, lens-above-m,
 *     side ("left", "right", "on-line", null), line-margin-deg, line-distance-m, face-ratio,
 *     joint ("neck", "elbow", "knee", null: nearest to the lower edge), joint-above-m, eyes-rule-share,
 *     looks-to ("left", "right" of the frame, null), look-room-share,
 *     behind ("nothing", "wall", "item", "floor", "ceiling"), behind-item, behind-wall, behind-x-m .. behind-z-m,
 *     behind-m, separation-m, behind-field-width-m, behind-field-height-m, size-ratio, blur-mm, blur-share
 *   } }
 *   pairs [ { a, b, angle-deg, shot-steps, size-ratio, is-same-side, is-same-look, eyes-step-share, gaze-step-deg,
 *     gaze-up-step-deg } ]               two cameras on one person; steps are b less a
 *   reverses [ { a, b, is-opposed, gaze-step-deg, gaze-up-step-deg, size-ratio } ]   two on the two who look at each other
 *   intrusions [ { camera, item (null: ceiling, floor), part ("stand", "head", "arm", "capsule", "sheet", "person", "furniture",
 *     "window", "fixture", "ceiling", "floor"), edge ("left", "right", "top", "bottom": the nearest to get out by), is-cut (by it),
 *     reach-share, move-m (out by that edge), area-share (null where its parts cover each other), face-share, body-share (of
 *     the subject, hidden by it), is-nearer, is-partly-hidden, clearance-share (a boom over the frame, else null),
 *     outlines [ [ [ across, down ], ... ], ... ] (0..1 from the frame's upper left) } ]
 *   clashes [ { type ("overlap", "outside", "door", "ceiling"), a, b, depth-m, push-deg, x-m, y-m } ]
 */

#include "readings.h"

#include "intrusions.h"

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

static const char *const clash_words[] = {
  [LR_CLASH_OVERLAP] = "overlap", [LR_CLASH_OUTSIDE] = "outside", [LR_CLASH_DOOR] = "door",
  [LR_CLASH_CEILING] = "ceiling",
};

static const char *const part_words[LR_N_INTRUDER_PARTS] = {
  [LR_INTRUDER_STAND] = "stand", [LR_INTRUDER_HEAD] = "head", [LR_INTRUDER_ARM] = "arm", [LR_INTRUDER_CAPSULE] = "capsule",
  [LR_INTRUDER_SHEET] = "sheet", [LR_INTRUDER_PERSON] = "person", [LR_INTRUDER_FURNITURE] = "furniture", [LR_INTRUDER_WINDOW] = "window",
  [LR_INTRUDER_FIXTURE] = "fixture", [LR_INTRUDER_CEILING] = "ceiling", [LR_INTRUDER_FLOOR] = "floor",
};

static const char *const edge_words[LR_N_BORDERS] = {
  [LR_BORDER_LEFT] = "left", [LR_BORDER_RIGHT] = "right", [LR_BORDER_TOP] = "top", [LR_BORDER_BOTTOM] = "bottom",
};

static void
add_number (JsonBuilder *builder,
            const char  *key,
            double       value)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (value))
    json_builder_add_double_value (builder, value);
  else
    json_builder_add_null_value (builder);
}

static void
add_degrees (JsonBuilder *builder,
             const char  *key,
             double       value_rad)
{
  add_number (builder, key, value_rad / LR_DEG);
}

static void
add_text (JsonBuilder *builder,
          const char  *key,
          const char  *text)
{
  json_builder_set_member_name (builder, key);
  if (text != NULL)
    json_builder_add_string_value (builder, text);
  else
    json_builder_add_null_value (builder);
}

static void
add_flag (JsonBuilder *builder,
          const char  *key,
          gboolean     value)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_boolean_value (builder, value);
}

static void
add_count (JsonBuilder *builder,
           const char  *key,
           gint64       value)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_int_value (builder, value);
}

static const char *
id_of (const LrPlaced *placed)
{
  return placed != NULL ? placed->item->id : NULL;
}

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
  add_degrees (builder, "pan-deg", camera->pan_rad);
  add_degrees (builder, "tilt-deg", camera->tilt_rad);
  add_degrees (builder, "angle-of-view-h-deg", camera->angle_h_rad);
  add_degrees (builder, "angle-of-view-v-deg", camera->angle_v_rad);
  add_number (builder, "converter", camera->converter);
  add_number (builder, "focal-mm", 1000.0 * camera->focal_m);
  add_number (builder, "f-number", camera->f_number);
  add_number (builder, "recorded-width-mm", 1000.0 * camera->recorded.width_m);
  add_number (builder, "recorded-height-mm", 1000.0 * camera->recorded.height_m);
  add_number (builder, "area-width-mm", 1000.0 * camera->area.width_m);
  add_number (builder, "area-height-mm", 1000.0 * camera->area.height_m);
  add_number (builder, "aspect", camera->image_aspect);
  add_number (builder, "width-kept-share", camera->width_share);
  add_number (builder, "coc-mm", 1000.0 * camera->coc_m);
  add_number (builder, "lens-x-m", camera->projection.eye_m.x);
  add_number (builder, "lens-y-m", camera->projection.eye_m.y);
  add_number (builder, "lens-z-m", camera->projection.eye_m.z);
  add_number (builder, "focus-m", camera->focus_m);
  add_number (builder, "magnification", camera->magnification);
  add_number (builder, "close-focus-stops", camera->close_stops);
  add_number (builder, "sharp-near-m", camera->sharp_near_m);
  add_number (builder, "sharp-far-m", camera->sharp_far_m);
  add_flag (builder, "sharp-to-infinity", isinf (camera->sharp_far_m));
  add_number (builder, "hyperfocal-m", camera->hyperfocal_m);
  add_number (builder, "sharp-depth-m", camera->sharp_depth_m);
  add_number (builder, "sharp-front-m", camera->sharp_front_m);
  add_number (builder, "sharp-front-share", camera->sharp_front_share);
  add_number (builder, "f-number-for-depth", camera->f_number_for_depth);
}

static void
add_look (JsonBuilder           *builder,
          const LrCameraReading *camera)
{
  add_number (builder, "distance-m", camera->distance_m);
  add_number (builder, "field-width-m", camera->field_w_m);
  add_number (builder, "field-height-m", camera->field_h_m);
  add_number (builder, "recorded-field-width-m", camera->recorded_field_w_m);
  add_number (builder, "recorded-field-height-m", camera->recorded_field_h_m);
  add_text (builder, "shot", shot_words[camera->framing.shot]);
  add_number (builder, "frame-top-m", camera->framing.top_m);
  add_number (builder, "frame-bottom-m", camera->framing.bottom_m);
  add_number (builder, "headroom-share", camera->framing.headroom);
  add_number (builder, "eyes-across-share", camera->eyes_across);
  add_number (builder, "eyes-down-share", camera->eyes_down);
  add_degrees (builder, "gaze-deg", camera->gaze_rad);
  add_degrees (builder, "gaze-up-deg", camera->gaze_up_rad);
  add_degrees (builder, "lens-up-deg", camera->lens_up_rad);
  add_number (builder, "lens-above-m", camera->lens_above_m);
  add_text (builder, "side", side_word (camera));
  add_degrees (builder, "line-margin-deg", camera->line_margin_rad);
  add_number (builder, "line-distance-m", camera->line_distance_m);
  add_number (builder, "face-ratio", camera->face_ratio);
}

static void
add_framing (JsonBuilder           *builder,
             const LrCameraReading *camera)
{
  gboolean is_looking = isfinite (camera->look_across) && camera->look_across != 0.0;

  add_text (builder, "joint", joint_words[camera->joint.joint]);
  add_number (builder, "joint-above-m", camera->joint.above_m);
  add_number (builder, "eyes-rule-share", camera->eyes_rule);
  add_text (builder, "looks-to", !is_looking ? NULL : camera->look_across > 0.0 ? "right" : "left");
  add_number (builder, "look-room-share", camera->look_room);
}

static void
add_behind (JsonBuilder           *builder,
            const LrCameraReading *camera)
{
  add_text (builder, "behind", behind_words[camera->behind]);
  add_text (builder, "behind-item", id_of (camera->behind_item));
  if (camera->behind_wall >= 0)
    add_count (builder, "behind-wall", camera->behind_wall);
  else
    add_text (builder, "behind-wall", NULL);
  add_number (builder, "behind-x-m", camera->behind_at_m.x);
  add_number (builder, "behind-y-m", camera->behind_at_m.y);
  add_number (builder, "behind-z-m", camera->behind_at_m.z);
  add_number (builder, "behind-m", camera->behind_m);
  add_number (builder, "separation-m", camera->separation_m);
  add_number (builder, "behind-field-width-m", camera->behind_field_w_m);
  add_number (builder, "behind-field-height-m", camera->behind_field_h_m);
  add_number (builder, "size-ratio", camera->size_ratio);
  add_number (builder, "blur-mm", 1000.0 * camera->blur_m);
  add_number (builder, "blur-share", camera->blur_share);
}

static void
add_camera (JsonBuilder           *builder,
            const LrCameraReading *camera)
{
  add_text (builder, "subject", id_of (camera->subject));
  add_flag (builder, "is-main", camera->is_main);
  add_lens (builder, camera);
  add_look (builder, camera);
  add_framing (builder, camera);
  add_behind (builder, camera);
}

static void
add_tape (JsonBuilder         *builder,
          const LrTapeReading *tape)
{
  json_builder_set_member_name (builder, "tape");
  json_builder_begin_object (builder);
  add_number (builder, "west-m", tape->west_m);
  add_number (builder, "south-m", tape->south_m);
  add_number (builder, "from-p-m", tape->tapes.from_p_m);
  add_number (builder, "from-q-m", tape->tapes.from_q_m);
  add_degrees (builder, "crossing-deg", tape->tapes.crossing_rad);
  json_builder_end_object (builder);
}

/* Cameras, leads and tapes stand in the same order as the items: each list is walked once */
typedef struct
{
  guint camera, lead, tape;
} Next;

static void
add_supply (JsonBuilder   *builder,
            const LrStudy *study,
            const LrItem  *item)
{
  double number;

  if (item->kind == LR_ITEM_SOCKET && lr_study_socket_load_w (study, item, &number))
    add_number (builder, "load-w", number);
  if (item->kind == LR_ITEM_MICROPHONE && lr_study_mouth_distance_m (study, item, &number) != NULL)
    add_number (builder, "mouth-m", number);
}

static void
add_item (JsonBuilder    *builder,
          const LrStudy  *study,
          const LrPlaced *placed,
          Next           *next)
{
  json_builder_set_member_name (builder, placed->item->id);
  json_builder_begin_object (builder);
  add_text (builder, "kind", lr_item_kind_info (placed->item->kind)->word);
  add_number (builder, "x-m", placed->at_m.x);
  add_number (builder, "y-m", placed->at_m.y);
  add_degrees (builder, "facing-deg", placed->facing_rad);
  add_number (builder, "bottom-m", placed->bottom_m);
  add_number (builder, "top-m", placed->top_m);
  add_flag (builder, "has-footprint", placed->has_footprint);

  if (placed->item->kind == LR_ITEM_PERSON)
    {
      add_number (builder, "eyes-x-m", placed->eyes_m.x);
      add_number (builder, "eyes-y-m", placed->eyes_m.y);
      add_number (builder, "eyes-height-m", placed->eyes_m.z);
      add_number (builder, "crown-m", placed->body.crown_m);
    }
  if (placed->item->kind == LR_ITEM_CAMERA)
    add_camera (builder, &g_array_index (study->cameras, LrCameraReading, next->camera++));
  if (placed->item->kind == LR_ITEM_LEAD)
    add_number (builder, "length-m", g_array_index (study->leads, LrLeadReading, next->lead++).length_m);
  add_supply (builder, study, placed->item);
  if (next->tape < study->tapes->len && g_array_index (study->tapes, LrTapeReading, next->tape).placed == placed)
    add_tape (builder, &g_array_index (study->tapes, LrTapeReading, next->tape++));
  json_builder_end_object (builder);
}

static void
add_room (JsonBuilder   *builder,
          const LrStudy *study)
{
  const LrRoom *room = study->setup->room;

  json_builder_set_member_name (builder, "room");
  json_builder_begin_object (builder);
  add_number (builder, "area-m2", study->room_area_m2);
  add_number (builder, "height-m", room->height_m);
  add_count (builder, "n-corners", (gint64) room->n_corners);
  if (study->has_tapes)
    {
      add_count (builder, "tape-p", (gint64) study->tape_p);
      add_count (builder, "tape-q", (gint64) study->tape_q);
    }
  else
    {
      add_text (builder, "tape-p", NULL);
      add_text (builder, "tape-q", NULL);
    }
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
  add_text (builder, "subject", id_of (study->subject));
  add_text (builder, "interviewer", id_of (study->interviewer));
  add_number (builder, "from-x-m", study->line_from_m.x);
  add_number (builder, "from-y-m", study->line_from_m.y);
  add_number (builder, "to-x-m", study->line_to_m.x);
  add_number (builder, "to-y-m", study->line_to_m.y);
  add_number (builder, "eyes-level-m", study->eyes_level_m);
  json_builder_end_object (builder);
}

static void
add_pairs (JsonBuilder   *builder,
           const LrStudy *study)
{
  json_builder_set_member_name (builder, "pairs");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, i);

      json_builder_begin_object (builder);
      add_text (builder, "a", pair->a->item->id);
      add_text (builder, "b", pair->b->item->id);
      add_degrees (builder, "angle-deg", pair->angle_rad);
      add_count (builder, "shot-steps", pair->steps);
      add_number (builder, "size-ratio", pair->size_ratio);
      add_flag (builder, "is-same-side", pair->is_same_side);
      add_flag (builder, "is-same-look", pair->is_same_look);
      add_number (builder, "eyes-step-share", pair->eyes_step);
      add_degrees (builder, "gaze-step-deg", pair->gaze_step_rad);
      add_degrees (builder, "gaze-up-step-deg", pair->gaze_up_step_rad);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_reverses (JsonBuilder   *builder,
              const LrStudy *study)
{
  json_builder_set_member_name (builder, "reverses");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->reverses->len; i++)
    {
      const LrReverseReading *reverse = &g_array_index (study->reverses, LrReverseReading, i);

      json_builder_begin_object (builder);
      add_text (builder, "a", reverse->a->item->id);
      add_text (builder, "b", reverse->b->item->id);
      add_flag (builder, "is-opposed", reverse->is_opposed);
      add_degrees (builder, "gaze-step-deg", reverse->gaze_step_rad);
      add_degrees (builder, "gaze-up-step-deg", reverse->gaze_up_step_rad);
      add_number (builder, "size-ratio", reverse->size_ratio);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_outlines (JsonBuilder       *builder,
              const LrStudy     *study,
              const LrIntrusion *intrusion)
{
  json_builder_set_member_name (builder, "outlines");
  json_builder_begin_array (builder);
  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      json_builder_begin_array (builder);
      for (guint j = 0; j < n; j++)
        {
          json_builder_begin_array (builder);
          json_builder_add_double_value (builder, corner[j].x);
          json_builder_add_double_value (builder, corner[j].y);
          json_builder_end_array (builder);
        }
      json_builder_end_array (builder);
    }
  json_builder_end_array (builder);
}

static void
add_intrusions (JsonBuilder   *builder,
                const LrStudy *study)
{
  json_builder_set_member_name (builder, "intrusions");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->intrusions->len; i++)
    {
      const LrIntrusion *intrusion = lr_study_intrusion (study, i);
      gboolean is_over = isfinite (intrusion->clearance);

      json_builder_begin_object (builder);
      add_text (builder, "camera", intrusion->camera->item->id);
      add_text (builder, "item", id_of (intrusion->placed));
      add_text (builder, "part", part_words[intrusion->part]);
      add_text (builder, "edge", edge_words[intrusion->edge]);
      add_flag (builder, "is-cut", intrusion->is_cut);
      add_number (builder, "reach-share", is_over ? 0.0 : intrusion->reach[intrusion->edge]);
      add_number (builder, "move-m", is_over ? 0.0 : intrusion->move_m[intrusion->edge]);
      add_number (builder, "area-share", intrusion->share);
      add_number (builder, "face-share", intrusion->face_share);
      add_number (builder, "body-share", intrusion->body_share);
      add_flag (builder, "is-nearer", intrusion->is_nearer);
      add_flag (builder, "is-partly-hidden", intrusion->is_partly_hidden);
      add_number (builder, "clearance-share", intrusion->clearance);
      add_outlines (builder, study, intrusion);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_clashes (JsonBuilder   *builder,
             const LrStudy *study)
{
  json_builder_set_member_name (builder, "clashes");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      json_builder_begin_object (builder);
      add_text (builder, "type", clash_words[clash->type]);
      add_text (builder, "a", id_of (clash->a));
      add_text (builder, "b", id_of (clash->b));
      add_number (builder, "depth-m", clash->depth_m);
      add_degrees (builder, "push-deg", clash->type == LR_CLASH_CEILING ? (double) NAN : lr_vec2_angle_rad (clash->push));
      add_number (builder, "x-m", clash->at_m.x);
      add_number (builder, "y-m", clash->at_m.y);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/**
 * lr_readings_to_json:
 * @study: a study
 *
 * Every number of it by item id; see the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_readings_to_json (const LrStudy *study)
{
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();
  Next next = { 0 };

  json_builder_begin_object (builder);
  add_text (builder, "format", "lookroom-readings");
  add_count (builder, "version", 1);
  add_text (builder, "setup", study->setup->id);
  add_room (builder, study);
  add_line (builder, study);
  json_builder_set_member_name (builder, "items");
  json_builder_begin_object (builder);
  for (guint i = 0; i < study->placed->len; i++)
    add_item (builder, study, &g_array_index (study->placed, LrPlaced, i), &next);
  json_builder_end_object (builder);
  add_pairs (builder, study);
  add_reverses (builder, study);
  add_intrusions (builder, study);
  add_clashes (builder, study);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
