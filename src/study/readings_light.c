/* readings_light.c - the levels of light in the readings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "readings_private.h"

#include "source_rows.h"

static const char *const point_words[LR_N_FACE_POINTS] = {
  [LR_FACE_LEFT] = "left-cheek", [LR_FACE_RIGHT] = "right-cheek", [LR_FACE_FOREHEAD] = "forehead",
  [LR_FACE_TOP] = "top",         [LR_FACE_BACK] = "back",         [LR_FACE_CHEST] = "chest",
};

static void
add_lux (JsonBuilder *builder,
         const char  *name,
         LrLux        lux)
{
  json_builder_set_member_name (builder, name);
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "direct-lx", lux.direct_lx);
  lr_readings_add_number (builder, "bounced-lx", lux.bounced_lx);
  json_builder_end_object (builder);
}

static void
add_face (JsonBuilder       *builder,
          const LrFaceLight *face)
{
  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "person", face->person->item->id);
  for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
    add_lux (builder, point_words[point], face->at[point]);
  lr_readings_add_text (builder, "lit", point_words[face->lit]);
  lr_readings_add_text (builder, "key", lr_readings_id_of (face->key));
  json_builder_set_member_name (builder, "key-is-sun");
  json_builder_add_boolean_value (builder, face->key_is_sun);
  lr_readings_add_number (builder, "key-lx", face->key_lx);
  lr_readings_add_number (builder, "fill-lx", face->fill_lx);
  lr_readings_add_number (builder, "ratio-stops", face->ratio_stops);
  lr_readings_add_degrees (builder, "key-side-deg", face->key_side_rad);
  lr_readings_add_degrees (builder, "key-up-deg", face->key_up_rad);
  lr_readings_add_degrees (builder, "nose-shadow-under-deg", face->nose_under_rad);
  lr_readings_add_number (builder, "back-lx", face->back_lx);
  lr_readings_add_text (builder, "back", lr_readings_id_of (face->back));
  lr_readings_add_degrees (builder, "back-side-deg", face->back_side_rad);
  lr_readings_add_degrees (builder, "back-up-deg", face->back_up_rad);
  lr_readings_add_number (builder, "mixed-k", face->mixed_k);
  json_builder_end_object (builder);
}

/* What each source gives alone to the lit cheek of the main face and to the walls behind */
static void
add_alone (JsonBuilder         *builder,
           const LrLightLevels *levels)
{
  g_autoptr (LrSourceRows) rows = lr_source_rows_new (levels, NULL);

  json_builder_set_member_name (builder, "alone");
  json_builder_begin_array (builder);
  for (guint i = 0; rows != NULL && i + 1 < rows->rows->len; i++)
    {
      const LrSourceRow *row = &g_array_index (rows->rows, LrSourceRow, i);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "source", lr_light_alone_get (levels, i).placed->item->id);
      lr_readings_add_flag (builder, "is-out", row->is_out);
      lr_readings_add_number (builder, "face-lx", row->face_lx);
      lr_readings_add_number (builder, "face-stops", row->face_stops);
      lr_readings_add_number (builder, "walls-lx", row->walls_lx);
      lr_readings_add_number (builder, "walls-stops", row->walls_stops);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static double
signal_of (double share)
{
  return isnan (share) ? share : lr_signal_of_share (share);
}

static void
add_picture (JsonBuilder         *builder,
             const LrLightLevels *levels,
             const LrBackLight   *back)
{
  const char *id = back->camera->item->id;
  LrShares shares;

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "camera", id);
  add_lux (builder, "walls", back->mean);
  lr_readings_add_count (builder, "walls-n", back->n);
  lr_readings_add_number (builder, "walls-least-lx", back->least_lx);
  lr_readings_add_number (builder, "walls-most-lx", back->most_lx);
  if (lr_light_levels_shares (levels, id, &shares))
    {
      lr_readings_add_number (builder, "face-signal", signal_of (shares.face));
      lr_readings_add_number (builder, "shadow-signal", signal_of (shares.shadow));
      lr_readings_add_number (builder, "clothes-signal", signal_of (shares.clothes));
      lr_readings_add_number (builder, "walls-signal", signal_of (shares.background));
      lr_readings_add_number (builder, "face-over-white-stops", log2 (shares.face));
      lr_readings_add_number (builder, "clothes-over-walls-stops", log2 (shares.clothes / shares.background));
    }
  json_builder_end_object (builder);
}

/**
 * lr_readings_add_light:
 * @builder: in the object of readings
 * @study: a study
 * @levels: of light in its plan
 */
void
lr_readings_add_light (JsonBuilder         *builder,
                       const LrStudy       *study,
                       const LrLightLevels *levels)
{
  json_builder_set_member_name (builder, "light");
  json_builder_begin_object (builder);
  lr_readings_add_count (builder, "n-sources", lr_light_levels_n_sources (levels));
  lr_readings_add_flag (builder, "has-bounces", lr_light_levels_is_whole (levels));
  json_builder_set_member_name (builder, "faces");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrFaceLight *face = lr_light_levels_face (levels, g_array_index (study->placed, LrPlaced, i).item->id);

      if (face != NULL)
        add_face (builder, face);
    }
  json_builder_end_array (builder);
  json_builder_set_member_name (builder, "pictures");
  json_builder_begin_array (builder);
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrBackLight *back = lr_light_levels_background (levels, g_array_index (study->cameras, LrCameraReading, i).item->id);

      if (back != NULL)
        add_picture (builder, levels, back);
    }
  json_builder_end_array (builder);
  add_alone (builder, levels);
  json_builder_end_object (builder);
}
