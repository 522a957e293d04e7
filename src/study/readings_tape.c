/* readings_tape.c - readings of what is marked on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Among all readings, and alone:
 *
 *   format, version     "lookroom-tape", 1
 *   setup               id of the set-up that is shown
 *   tape-length-m       of the longest tape
 *   grid                null, or wall, corner (from 0): along the longest wall, from its first corner
 *   marks [ {           in the order of setting out
 *     item, tag, mark   id; what of it stands over the mark
 *     height-of         "lens", "lamp", "capsule", "seat", "lower edge", translated; "" for none
 *     tape              as among the readings
 *   } ]
 */

#include "readings_private.h"

static void
add_fix (JsonBuilder     *builder,
         const char      *key,
         const LrTapeFix *fix)
{
  json_builder_set_member_name (builder, key);
  if (fix->way == LR_FIX_NONE)
    {
      json_builder_add_null_value (builder);
      return;
    }

  json_builder_begin_object (builder);
  lr_readings_add_count (builder, "a", (gint64) fix->from[0]);
  lr_readings_add_count (builder, "b", (gint64) fix->from[1]);
  lr_readings_add_number (builder, "from-a-m", fix->length_m[0]);
  lr_readings_add_number (builder, "from-b-m", fix->length_m[1]);
  lr_readings_add_degrees (builder, "crossing-deg", fix->crossing_rad);
  lr_readings_add_number (builder, "error-m", fix->error.major_m);
  lr_readings_add_flag (builder, "is-poor", fix->is_poor);
  lr_readings_add_text (builder, "way", lr_fix_way_word (fix->way));
  json_builder_end_object (builder);
}

static void
add_tape (JsonBuilder      *builder,
          const LrRoom     *room,
          const LrTapeMark *mark)
{
  gboolean has_tapes = mark->corners.way != LR_FIX_NONE;
  LrVec2 low_m, high_m;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
  json_builder_set_member_name (builder, "tape");
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "west-m", mark->mark_m.x - low_m.x);
  lr_readings_add_number (builder, "south-m", mark->mark_m.y - low_m.y);
  lr_readings_add_number (builder, "from-p-m", has_tapes ? mark->corners.length_m[0] : (double) NAN);
  lr_readings_add_number (builder, "from-q-m", has_tapes ? mark->corners.length_m[1] : (double) NAN);
  lr_readings_add_degrees (builder, "crossing-deg", has_tapes ? mark->corners.crossing_rad : (double) NAN);
  add_fix (builder, "walls", &mark->walls);
  add_fix (builder, "corners", &mark->corners);
  lr_readings_add_number (builder, "grid-x-m", mark->grid_m.x);
  lr_readings_add_number (builder, "grid-y-m", mark->grid_m.y);
  lr_readings_add_number (builder, "height-m", mark->height_m);
  lr_readings_add_degrees (builder, "bearing-deg", mark->bearing_rad);
  lr_readings_add_degrees (builder, "tilt-deg", mark->tilt_rad);
  lr_readings_add_number (builder, "reach-m", mark->reach_m);
  lr_readings_add_text (builder, "aims-at", lr_readings_id_of (mark->aims_at));
  if (mark->aim_wall >= 0)
    lr_readings_add_count (builder, "aim-wall", mark->aim_wall);
  else
    lr_readings_add_text (builder, "aim-wall", NULL);
  lr_readings_add_number (builder, "aim-along-m", mark->aim_along_m);
  json_builder_end_object (builder);
}

/**
 * lr_readings_add_tape:
 * @builder: in an item's object
 * @room: the room
 * @marks: (element-type LrTapeMark): all marks
 * @placed: the item
 *
 * Adds where the item's mark is, if it has one.
 */
void
lr_readings_add_tape (JsonBuilder    *builder,
                      const LrRoom   *room,
                      const GArray   *marks,
                      const LrPlaced *placed)
{
  for (guint i = 0; i < marks->len; i++)
    if (g_array_index (marks, LrTapeMark, i).placed == placed)
      add_tape (builder, room, &g_array_index (marks, LrTapeMark, i));
}

/* Two corners that everything is taped from */
static gboolean
find_common_corners (const GArray *marks,
                     gsize        *p,
                     gsize        *q)
{
  const LrTapeFix *first = marks->len > 0 ? &g_array_index (marks, LrTapeMark, 0).corners : NULL;

  for (guint i = 0; i < marks->len; i++)
    {
      const LrTapeFix *fix = &g_array_index (marks, LrTapeMark, i).corners;

      if (fix->way == LR_FIX_NONE || fix->from[0] != first->from[0] || fix->from[1] != first->from[1])
        return FALSE;
    }
  if (first == NULL)
    return FALSE;

  *p = first->from[0];
  *q = first->from[1];
  return TRUE;
}

/**
 * lr_readings_add_common_corners:
 * @builder: in the room's object
 * @marks: (element-type LrTapeMark): all marks
 *
 * Adds the two corners that everything is taped from, null if there are no such two.
 */
void
lr_readings_add_common_corners (JsonBuilder  *builder,
                                const GArray *marks)
{
  gsize p, q;

  if (find_common_corners (marks, &p, &q))
    {
      lr_readings_add_count (builder, "tape-p", (gint64) p);
      lr_readings_add_count (builder, "tape-q", (gint64) q);
      return;
    }

  lr_readings_add_text (builder, "tape-p", NULL);
  lr_readings_add_text (builder, "tape-q", NULL);
}

static void
add_mark (JsonBuilder      *builder,
          const LrRoom     *room,
          const LrTapeMark *mark)
{
  g_autofree char *spot = lr_tape_mark_spot (mark);

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "item", mark->placed->item->id);
  lr_readings_add_text (builder, "tag", mark->placed->item->tag);
  lr_readings_add_text (builder, "mark", spot);
  lr_readings_add_text (builder, "height-of", lr_tape_height_word (mark->height_of));
  add_tape (builder, room, mark);
  json_builder_end_object (builder);
}

/**
 * lr_tape_to_json:
 * @study: a study
 *
 * What is marked on the floor; see the head of this file for the members.
 *
 * Returns: (transfer full): an object node
 */
JsonNode *
lr_tape_to_json (const LrStudy *study)
{
  const LrRoom *room = study->setup->room;
  g_autoptr (JsonBuilder) builder = json_builder_new_immutable ();
  g_autoptr (GArray) marks = lr_tape_marks_new (study);
  LrTapeGrid grid;

  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "format", "lookroom-tape");
  lr_readings_add_count (builder, "version", 1);
  lr_readings_add_text (builder, "setup", study->setup->id);
  lr_readings_add_number (builder, "tape-length-m", study->plan->limits.value[LR_LIMIT_TAPE_LENGTH]);
  json_builder_set_member_name (builder, "grid");
  if (lr_tape_grid (room, &grid))
    {
      json_builder_begin_object (builder);
      lr_readings_add_count (builder, "wall", (gint64) grid.wall);
      lr_readings_add_count (builder, "corner", (gint64) grid.wall);
      json_builder_end_object (builder);
    }
  else
    json_builder_add_null_value (builder);
  json_builder_set_member_name (builder, "marks");
  json_builder_begin_array (builder);
  for (guint i = 0; i < marks->len; i++)
    add_mark (builder, room, &g_array_index (marks, LrTapeMark, i));
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  return json_builder_get_root (builder);
}
