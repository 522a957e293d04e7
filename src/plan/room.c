/* room.c - a room: its corners, surfaces and what was measured
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reflectance defaults: ceiling 0.8, walls 0.5, floor 0.2, inside the useful ranges of EN 12464-1:2011. Absorption
 * defaults: painted plaster and a hard floor, from memory, unconfirmed; a room's sound is judged by what the user enters.
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>

#define REACH_M 500.0

#define ROW_OWNER LrRoom

static const LrProp room_rows[] = {
  LENGTH ("height-mm", N_("Ceiling height"), height_m, 1.0, 100.0, 2.5),
  ANGLE ("north-deg", N_("North, clockwise from up the sheet"), north_rad, -360, 360, 0),
  FLAG_IF_SET ("counts-clockwise", NULL, counts_clockwise),
  TEXT ("floor-note", N_("Floor"), floor_note),
  ROW ("background-db", N_("Level with all noises off"), LR_PROP_NUMBER, background_db, .min = 5.0, .max = 100.0, .decimals = 1, .unit = "dB",
       .is_optional = TRUE),
  ROW ("reverberation-s", N_("Reverberation, measured"), LR_PROP_NUMBER, reverberation_s, .min = 0.05, .max = 20.0, .decimals = 2,
       .unit = "s", .is_optional = TRUE),
  TEXT_OR_NONE ("full-load-rule", N_("Rule that allows full load"), full_load_rule),
  TEXT_OR_NONE ("underlay-file", N_("Picture of a floor plan"), underlay_file),
  ROW ("underlay-page", N_("Page"), LR_PROP_COUNT, underlay_page, .min = 1, .max = 999, .is_optional = TRUE),
  /* nine decimals: 30 m of a picture of 0.3 mm to the pixel go wrong by less than 0.1 mm */
  ROW ("underlay-scale-m-per-px", NULL, LR_PROP_NUMBER, underlay_scale, .min = 1e-5, .max = 10.0, .decimals = 9,
       .unit = "m/px", .is_optional = TRUE),
  ROW ("underlay-x-mm", N_("Left"), LR_PROP_LENGTH, underlay_x_m, .min = -REACH_M, .max = REACH_M, .is_optional = TRUE),
  ROW ("underlay-y-mm", N_("Up"), LR_PROP_LENGTH, underlay_y_m, .min = -REACH_M, .max = REACH_M, .is_optional = TRUE),
  /* a tenth of a degree, as angles have it, is 17 mm in 10 m */
  ROW ("underlay-turn-deg", N_("Turned"), LR_PROP_NUMBER, underlay_turn_deg, .min = -180.0, .max = 180.0, .decimals = 4, .unit = "°",
       .is_optional = TRUE),
  ROW ("underlay-dim-pct", N_("Dimmed by"), LR_PROP_SHARE, underlay_dim, .min = 0.0, .max = 1.0, .is_optional = TRUE),
  FLAG_IF_SET ("underlay-is-hidden", N_("Hidden"), underlay_is_hidden),
  FLAG_IF_SET ("underlay-is-guessed", NULL, underlay_is_guessed),
};

#undef ROW_OWNER
#define ROW_OWNER LrSurface

#define ABSORPTION(key_, label_, band_, fallback_) NUMBER (key_, label_, absorption[band_], 0.0, 1.5, fallback_, 2, NULL)

static const LrProp surface_rows[] = {
  TEXT ("material", N_("Material"), material),
  SHARE ("reflectance-pct", N_("Reflectance"), reflectance, 0.0, 1.0, 0.5),
  ABSORPTION ("absorption-125-hz", N_("Absorption at 125 Hz"), 0, 0.02),
  ABSORPTION ("absorption-250-hz", N_("Absorption at 250 Hz"), 1, 0.02),
  ABSORPTION ("absorption-500-hz", N_("Absorption at 500 Hz"), 2, 0.03),
  ABSORPTION ("absorption-1000-hz", N_("Absorption at 1 kHz"), 3, 0.03),
  ABSORPTION ("absorption-2000-hz", N_("Absorption at 2 kHz"), 4, 0.04),
  ABSORPTION ("absorption-4000-hz", N_("Absorption at 4 kHz"), 5, 0.05),
};

#undef ROW_OWNER
#define ROW_OWNER LrTapeNote

static const LrProp tape_rows[] = {
  COUNT ("from", N_("From corner"), from, 0, LR_MAX_CORNERS - 1, 0),
  COUNT ("to", N_("To corner"), to, 0, LR_MAX_CORNERS - 1, 0),
  LENGTH ("length-mm", N_("Length"), length_m, 0.001, 500.0, 1.0),
};

#undef ROW_OWNER
#define ROW_OWNER LrTurnNote

static const LrProp turn_rows[] = {
  COUNT ("corner", N_("At corner"), corner, 0, LR_MAX_CORNERS - 1, 0),
  ANGLE ("turn-deg", N_("Turn to the left"), turn_rad, -180, 180, 90),
};

static const LrPropTable room_table = TABLE (room_rows);
static const LrPropTable surface_table = TABLE (surface_rows);
static const LrPropTable tape_table = TABLE (tape_rows);
static const LrPropTable turn_table = TABLE (turn_rows);

static const gsize surface_offsets[] = {
  G_STRUCT_OFFSET (LrRoom, walls), G_STRUCT_OFFSET (LrRoom, floor), G_STRUCT_OFFSET (LrRoom, ceiling),
};

static LrSurface *
surface (const LrRoom *room,
         guint         index)
{
  return (LrSurface *) ((char *) room + surface_offsets[index]);
}

/**
 * lr_room_table:
 *
 * Returns: (transfer none): the members of a room but its lists and surfaces
 */
const LrPropTable *
lr_room_table (void)
{
  return &room_table;
}

/**
 * lr_surface_table:
 *
 * Returns: (transfer none): the members of a surface
 */
const LrPropTable *
lr_surface_table (void)
{
  return &surface_table;
}

/**
 * lr_tape_table:
 *
 * Returns: (transfer none): the members of a tape note
 */
const LrPropTable *
lr_tape_table (void)
{
  return &tape_table;
}

/**
 * lr_turn_table:
 *
 * Returns: (transfer none): the members of a turn note
 */
const LrPropTable *
lr_turn_table (void)
{
  return &turn_table;
}

/**
 * lr_room_new:
 *
 * Returns: (transfer full): a room that is not drawn yet
 */
LrRoom *
lr_room_new (void)
{
  LrRoom *room = g_atomic_rc_box_new0 (LrRoom);

  lr_prop_table_init (&room_table, room);
  for (guint i = 0; i < G_N_ELEMENTS (surface_offsets); i++)
    lr_prop_table_init (&surface_table, surface (room, i));
  room->floor.reflectance = 0.2;
  room->ceiling.reflectance = 0.8;

  return room;
}

/**
 * lr_room_copy:
 * @room: a room
 *
 * Returns: (transfer full): a fresh one that may be written
 */
LrRoom *
lr_room_copy (const LrRoom *room)
{
  LrRoom *copy = g_atomic_rc_box_dup (sizeof *room, (gpointer) room);

  lr_prop_table_copy (&room_table, copy, room);
  for (guint i = 0; i < G_N_ELEMENTS (surface_offsets); i++)
    {
      lr_prop_table_copy (&surface_table, surface (copy, i), surface (room, i));
      surface (copy, i)->unknown = lr_json_dup_object (surface (room, i)->unknown);
    }
  copy->corners_m = g_memdup2 (room->corners_m, room->n_corners * sizeof *room->corners_m);
  copy->tape = g_memdup2 (room->tape, room->n_tape * sizeof *room->tape);
  for (gsize i = 0; i < room->n_tape; i++)
    copy->tape[i].unknown = lr_json_dup_object (room->tape[i].unknown);
  copy->turns = g_memdup2 (room->turns, room->n_turns * sizeof *room->turns);
  for (gsize i = 0; i < room->n_turns; i++)
    copy->turns[i].unknown = lr_json_dup_object (room->turns[i].unknown);
  copy->underlay = room->underlay != NULL ? lr_picture_file_ref (room->underlay) : NULL;
  copy->unknown = lr_json_dup_object (room->unknown);

  return copy;
}

/**
 * lr_room_ref:
 * @room: a room
 *
 * Returns: (transfer full): @room
 */
LrRoom *
lr_room_ref (const LrRoom *room)
{
  return g_atomic_rc_box_acquire ((gpointer) room);
}

/**
 * lr_room_drop_notes:
 * @room: a room that may be written
 *
 * Forgets what was taped.
 */
void
lr_room_drop_notes (LrRoom *room)
{
  for (gsize i = 0; i < room->n_tape; i++)
    g_clear_pointer (&room->tape[i].unknown, json_object_unref);
  for (gsize i = 0; i < room->n_turns; i++)
    g_clear_pointer (&room->turns[i].unknown, json_object_unref);
  g_clear_pointer (&room->tape, g_free);
  g_clear_pointer (&room->turns, g_free);
  room->n_tape = room->n_turns = 0;
  room->counts_clockwise = FALSE;
}

static void
clear (gpointer data)
{
  LrRoom *room = data;

  lr_prop_table_clear (&room_table, room);
  for (guint i = 0; i < G_N_ELEMENTS (surface_offsets); i++)
    {
      lr_prop_table_clear (&surface_table, surface (room, i));
      g_clear_pointer (&surface (room, i)->unknown, json_object_unref);
    }
  lr_room_drop_notes (room);
  g_free (room->corners_m);
  g_clear_pointer (&room->underlay, lr_picture_file_unref);
  g_clear_pointer (&room->unknown, json_object_unref);
}

/**
 * lr_room_unref:
 * @room: (transfer full): a room
 */
void
lr_room_unref (LrRoom *room)
{
  g_atomic_rc_box_release_full (room, clear);
}

/**
 * lr_room_equal:
 * @a: a room
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_room_equal (const LrRoom *a,
               const LrRoom *b)
{
  if (a == b)
    return TRUE;
  if (a->n_corners != b->n_corners || a->n_tape != b->n_tape || a->n_turns != b->n_turns)
    return FALSE;
  for (gsize i = 0; i < a->n_corners; i++)
    if (a->corners_m[i].x != b->corners_m[i].x || a->corners_m[i].y != b->corners_m[i].y)
      return FALSE;
  for (gsize i = 0; i < a->n_tape; i++)
    if (!lr_prop_table_equal (&tape_table, &a->tape[i], &b->tape[i])
        || !lr_json_objects_equal (a->tape[i].unknown, b->tape[i].unknown))
      return FALSE;
  for (gsize i = 0; i < a->n_turns; i++)
    if (!lr_prop_table_equal (&turn_table, &a->turns[i], &b->turns[i])
        || !lr_json_objects_equal (a->turns[i].unknown, b->turns[i].unknown))
      return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (surface_offsets); i++)
    if (!lr_prop_table_equal (&surface_table, surface (a, i), surface (b, i))
        || !lr_json_objects_equal (surface (a, i)->unknown, surface (b, i)->unknown))
      return FALSE;

  return lr_prop_table_equal (&room_table, a, b) && lr_picture_file_equal (a->underlay, b->underlay) && lr_json_objects_equal (a->unknown, b->unknown);
}

/**
 * lr_room_underlay:
 * @room: a room
 * @lies: (out): from the pixels of its picture, x right and y up from its lower left corner, to the floor
 *
 * Returns: %FALSE, with nothing written, if there is no picture under it or its scale is not known
 */
gboolean
lr_room_underlay (const LrRoom *room,
                  LrSimilarity *lies)
{
  if (room->underlay == NULL || !(room->underlay_scale > 0.0))
    return FALSE;

  lies->scale = room->underlay_scale;
  lies->turn_rad = room->underlay_turn_deg * LR_DEG;
  lies->origin_m = lr_vec2 (room->underlay_x_m, room->underlay_y_m);
  return TRUE;
}

/**
 * lr_room_corner_number:
 * @room: a room
 * @corner: index of a corner
 *
 * Returns: its number for people, from 1: as it was taped
 */
int
lr_room_corner_number (const LrRoom *room,
                       int           corner)
{
  return room->counts_clockwise ? (int) room->n_corners - corner : corner + 1;
}

/**
 * lr_room_wall_number:
 * @room: a room
 * @wall: index of a wall
 *
 * Returns: its number for people, from 1: that of the corner where it was begun
 */
int
lr_room_wall_number (const LrRoom *room,
                     int           wall)
{
  return lr_room_corner_number (room, room->counts_clockwise ? (wall + 1) % (int) room->n_corners : wall);
}

/**
 * lr_room_wall:
 * @room: a room
 * @wall: index of a wall: from corner @wall to the next
 * @from_m: (out) (optional): its first corner [m]
 * @along: (out) (optional): the direction along it; the room lies to its left
 * @length_m: (out) (optional): its length [m]
 *
 * Returns: %FALSE, with nothing written, if there is no such wall
 */
gboolean
lr_room_wall (const LrRoom *room,
              int           wall,
              LrVec2       *from_m,
              LrVec2       *along,
              double       *length_m)
{
  LrVec2 from, span;
  double length;

  if (wall < 0 || (gsize) wall >= room->n_corners)
    return FALSE;

  from = room->corners_m[wall];
  span = lr_vec2_sub (room->corners_m[((gsize) wall + 1) % room->n_corners], from);
  length = lr_vec2_length (span);

  if (from_m != NULL)
    *from_m = from;
  if (along != NULL)
    *along = lr_vec2_scale (span, 1.0 / length);
  if (length_m != NULL)
    *length_m = length;

  return TRUE;
}
