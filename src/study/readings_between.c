/* readings_between.c - what is computed between things: pairs of cameras, intrusions, clashes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "readings_private.h"

#include "intrusions.h"

static const char *const clash_words[] = {
  [LR_CLASH_OVERLAP] = "overlap", [LR_CLASH_OUTSIDE] = "outside", [LR_CLASH_DOOR] = "door",
  [LR_CLASH_CEILING] = "ceiling",
};

static const char *const part_words[LR_N_INTRUDER_PARTS] = {
  [LR_INTRUDER_STAND] = "stand", [LR_INTRUDER_HEAD] = "head", [LR_INTRUDER_ARM] = "arm", [LR_INTRUDER_CAPSULE] = "capsule",
  [LR_INTRUDER_SHEET] = "sheet", [LR_INTRUDER_PERSON] = "person", [LR_INTRUDER_FURNITURE] = "furniture",
  [LR_INTRUDER_WINDOW] = "window", [LR_INTRUDER_FIXTURE] = "fixture", [LR_INTRUDER_CEILING] = "ceiling", [LR_INTRUDER_FLOOR] = "floor",
};

static const char *const edge_words[LR_N_BORDERS] = {
  [LR_BORDER_LEFT] = "left", [LR_BORDER_RIGHT] = "right", [LR_BORDER_TOP] = "top", [LR_BORDER_BOTTOM] = "bottom",
};

/**
 * lr_readings_add_pairs:
 * @builder: a builder with an object open
 * @study: a study
 *
 * Adds the array of every two cameras on one person.
 */
void
lr_readings_add_pairs (JsonBuilder   *builder,
                       const LrStudy *study)
{
  json_builder_set_member_name (builder, "pairs");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, i);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "a", pair->a->item->id);
      lr_readings_add_text (builder, "b", pair->b->item->id);
      lr_readings_add_degrees (builder, "angle-deg", pair->angle_rad);
      lr_readings_add_count (builder, "shot-steps", pair->steps);
      lr_readings_add_number (builder, "size-ratio", pair->size_ratio);
      lr_readings_add_flag (builder, "is-same-side", pair->is_same_side);
      lr_readings_add_flag (builder, "is-same-look", pair->is_same_look);
      lr_readings_add_number (builder, "eyes-step-share", pair->eyes_step);
      lr_readings_add_degrees (builder, "gaze-step-deg", pair->gaze_step_rad);
      lr_readings_add_degrees (builder, "gaze-up-step-deg", pair->gaze_up_step_rad);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/**
 * lr_readings_add_reverses:
 * @builder: a builder with an object open
 * @study: a study
 *
 * Adds the array of every two cameras on the two who look at each other.
 */
void
lr_readings_add_reverses (JsonBuilder   *builder,
                          const LrStudy *study)
{
  json_builder_set_member_name (builder, "reverses");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->reverses->len; i++)
    {
      const LrReverseReading *reverse = &g_array_index (study->reverses, LrReverseReading, i);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "a", reverse->a->item->id);
      lr_readings_add_text (builder, "b", reverse->b->item->id);
      lr_readings_add_flag (builder, "is-opposed", reverse->is_opposed);
      lr_readings_add_degrees (builder, "gaze-step-deg", reverse->gaze_step_rad);
      lr_readings_add_degrees (builder, "gaze-up-step-deg", reverse->gaze_up_step_rad);
      lr_readings_add_number (builder, "size-ratio", reverse->size_ratio);
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

/**
 * lr_readings_add_intrusions:
 * @builder: a builder with an object open
 * @study: a study
 *
 * Adds the array of what stands in each camera's picture that should not.
 */
void
lr_readings_add_intrusions (JsonBuilder   *builder,
                            const LrStudy *study)
{
  json_builder_set_member_name (builder, "intrusions");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->intrusions->len; i++)
    {
      const LrIntrusion *intrusion = lr_study_intrusion (study, i);
      gboolean is_over = isfinite (intrusion->clearance);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "camera", intrusion->camera->item->id);
      lr_readings_add_text (builder, "item", lr_readings_id_of (intrusion->placed));
      lr_readings_add_text (builder, "part", part_words[intrusion->part]);
      lr_readings_add_text (builder, "edge", edge_words[intrusion->edge]);
      lr_readings_add_flag (builder, "is-cut", intrusion->is_cut);
      lr_readings_add_number (builder, "reach-share", is_over ? 0.0 : intrusion->reach[intrusion->edge]);
      lr_readings_add_number (builder, "move-m", is_over ? 0.0 : intrusion->move_m[intrusion->edge]);
      lr_readings_add_number (builder, "area-share", intrusion->share);
      lr_readings_add_number (builder, "face-share", intrusion->face_share);
      lr_readings_add_number (builder, "body-share", intrusion->body_share);
      lr_readings_add_flag (builder, "is-nearer", intrusion->is_nearer);
      lr_readings_add_flag (builder, "is-partly-hidden", intrusion->is_partly_hidden);
      lr_readings_add_number (builder, "clearance-share", intrusion->clearance);
      add_outlines (builder, study, intrusion);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/**
 * lr_readings_add_clashes:
 * @builder: a builder with an object open
 * @study: a study
 *
 * Adds the array of things in each other's place.
 */
void
lr_readings_add_clashes (JsonBuilder   *builder,
                         const LrStudy *study)
{
  json_builder_set_member_name (builder, "clashes");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "type", clash_words[clash->type]);
      lr_readings_add_text (builder, "a", lr_readings_id_of (clash->a));
      lr_readings_add_text (builder, "b", lr_readings_id_of (clash->b));
      lr_readings_add_number (builder, "depth-m", clash->depth_m);
      lr_readings_add_degrees (builder, "push-deg",
                               clash->type == LR_CLASH_CEILING ? (double) NAN : lr_vec2_angle_rad (clash->push));
      lr_readings_add_number (builder, "x-m", clash->at_m.x);
      lr_readings_add_number (builder, "y-m", clash->at_m.y);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}
