/* canvas_grips.c - the next plan while something is held
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each starts from the committed plan, never from the preview before it, so that a drag does not pile up roundings.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

/* Reaches of the pulls, on the screen */
#define ALIGN_PX 5.0
#define FINE_STEP_M 0.01
#define FINE_REACH_M 0.05 /* a pier of 10 cm must not be pulled into its wall, corners' reach included */
#define WALL_PX 9.0
#define CORNER_PX 8.0

#define TURN_STEP_RAD (15.0 * LR_DEG)
#define TURN_REACH_RAD (2.0 * LR_DEG)

/* The least that a size knob leaves */
#define SIZE_MIN_M 0.05
#define OPENING_MIN_M 0.20

typedef struct
{
  LrPlan     *(*next) (LrCanvas *self, LrVec2 at_m, GdkModifierType state, GError **error);
  const char *title; /* of the step: one %s for the item's name */
} Grip;

static LrPlan *
committed (LrCanvas *self)
{
  return lr_document_get_committed (self->document);
}

/* Knobs anticlockwise from the corner at +x +y: which way each pulls */
static const LrVec2 knob_ways[] = {
  { 1, 1 }, { 0, 1 }, { -1, 1 }, { -1, 0 }, { -1, -1 }, { 0, -1 }, { 1, -1 }, { 1, 0 },
};

/* Where the edge is that a size knob moves; the knob itself stands a little outside */
static gboolean
find_sized_point (LrCanvas     *self,
                  const LrItem *item,
                  LrVec2       *at_m)
{
  LrVec2 way = knob_ways[self->drag.index % (int) G_N_ELEMENTS (knob_ways)], from_m, along;
  double width_m = item->kind == LR_ITEM_DOOR ? item->door.width_m : item->kind == LR_ITEM_WINDOW ? item->window.width_m : 0.0;

  if (item->kind == LR_ITEM_FURNITURE)
    {
      LrVec2 half_m = lr_vec2 (way.x * item->furniture.length_m / 2.0, way.y * item->furniture.width_m / 2.0);

      *at_m = lr_vec2_add (item->at_m, lr_vec2_rotate (half_m, item->facing_rad));
      return TRUE;
    }
  if (!lr_room_wall (lr_canvas_get_room (self), item->wall, &from_m, &along, NULL))
    return FALSE;
  *at_m = lr_vec2_along (from_m, along, item->along_m + (self->drag.index == 0 ? 0.0 : width_m));
  return TRUE;
}

/**
 * lr_canvas_grip_point_m:
 * @self: a canvas
 * @at: a place on it [px]
 *
 * Returns: the place in the room to which what is held goes [m], with the offset of the press
 */
LrVec2
lr_canvas_grip_point_m (LrCanvas *self,
                        LrVec2    at)
{
  const LrCanvasDrag *drag = &self->drag;
  const LrRoom *room = lr_canvas_get_room (self);
  const LrItem *item = drag->id != NULL ? lr_plan_find (lr_document_get_plan (self->document), drag->id) : NULL;
  const LrPlaced *placed = item != NULL ? lr_study_find_placed (lr_document_get_study (self->document), drag->id) : NULL;
  LrVec2 point_m = lr_canvas_to_room (self, at);

  if (drag->grip == LR_GRIP_ITEM && placed != NULL)
    return placed->at_m;
  if (drag->grip == LR_GRIP_SIZE && item != NULL)
    find_sized_point (self, item, &point_m);
  else if (drag->grip == LR_GRIP_POINT && item != NULL && (gsize) drag->index < item->n_path)
    point_m = item->path_m[drag->index];
  else if (drag->grip == LR_GRIP_CORNER && (gsize) drag->index < room->n_corners)
    point_m = room->corners_m[drag->index];
  return point_m;
}

/**
 * lr_canvas_pull:
 * @self: a canvas
 * @state: modifier keys
 *
 * A wall is traced to the centimetre, however small its picture lies on the sheet; so is what Shift is held for.
 *
 * Returns: what pulls at this zoom; Control frees from every pull
 */
LrSnapPull
lr_canvas_pull (LrCanvas        *self,
                GdkModifierType  state)
{
  gboolean is_fine = (state & GDK_SHIFT_MASK) || lr_canvas_get_room (self)->underlay != NULL;

  if (state & GDK_CONTROL_MASK)
    return (LrSnapPull) { .step_m = 0.001 };
  return (LrSnapPull) {
    .step_m = is_fine ? FINE_STEP_M : lr_snap_step_m (self->view.scale),
    .reach_m = is_fine ? fmin (ALIGN_PX / self->view.scale, FINE_REACH_M) : ALIGN_PX / self->view.scale,
    .reach_rad = 4.0 * LR_DEG,
  };
}

static gboolean
stands_at_walls (const LrItem *item)
{
  return item->kind == LR_ITEM_FURNITURE || (item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_BACKDROP);
}

/**
 * lr_canvas_snap_item:
 * @self: a canvas
 * @placed: the thing
 * @to_m: where the pointer takes it [m]
 * @state: modifier keys
 * @snap: (out): what it snapped to
 *
 * Furniture comes flush with the walls; everything else level with other things on the floor, then the grid.
 *
 * Returns: where the thing goes [m]
 */
LrVec2
lr_canvas_snap_item (LrCanvas        *self,
                     const LrPlaced  *placed,
                     LrVec2           to_m,
                     GdkModifierType  state,
                     LrSnap          *snap)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const LrRoom *room = lr_canvas_get_room (self);
  LrSnapPull pull = lr_canvas_pull (self, state);
  g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (LrVec2));
  LrOutline outline = placed->footprint;
  LrVec2 move_m, by_m = lr_vec2_sub (to_m, placed->at_m);

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *other = &g_array_index (study->placed, LrPlaced, i);

      if (other->has_footprint && strcmp (other->item->id, placed->item->id) != 0
          && lr_item_kind_info (other->item->kind)->place == LR_PLACE_FLOOR)
        g_array_append_val (others, other->at_m);
    }
  *snap = lr_snap_place (to_m, &g_array_index (others, LrVec2, 0), others->len, &pull);
  if (!stands_at_walls (placed->item) || !placed->has_footprint || pull.reach_m <= 0.0)
    return snap->at_m;

  outline.centre_m = lr_vec2_add (outline.centre_m, by_m);
  for (gsize i = 0; i < outline.n; i++)
    outline.corner_m[i] = lr_vec2_add (outline.corner_m[i], by_m);
  move_m = lr_snap_to_walls (&outline, room->corners_m, room->n_corners, WALL_PX / self->view.scale);
  if (lr_vec2_length (move_m) <= 0.0)
    return snap->at_m;

  /* flush across the wall, on the grid along it */
  if (fabs (move_m.x) <= 1e-9)
    to_m.x = snap->at_m.x;
  else if (fabs (move_m.y) <= 1e-9)
    to_m.y = snap->at_m.y;
  snap->why = 0;
  return lr_vec2_add (to_m, move_m);
}

/* A thing on a wall has its edge at a round length from the corner */
static LrPlan *
round_along (LrPlan      *next,
             const char  *id,
             double       step_m,
             GError     **error)
{
  g_autoptr (LrPlan) moved = next;
  const LrItem *item = moved != NULL ? lr_plan_find (moved, id) : NULL;
  LrChange change = { .id = id, .key = "along-mm" };
  LrPlan *rounded;

  if (item == NULL || lr_item_kind_info (item->kind)->place != LR_PLACE_WALL)
    return g_steal_pointer (&moved);

  change.value = fmax (lr_snap_value (item->along_m, step_m), 0.0);
  rounded = lr_plan_change (moved, &change, 1, NULL);
  return rounded != NULL ? rounded : g_steal_pointer (&moved);
}

static LrPlan *
move_item (LrCanvas         *self,
           LrVec2            at_m,
           GdkModifierType   state,
           GError          **error)
{
  LrCanvasDrag *drag = &self->drag;
  const LrPlaced *placed = lr_study_find_placed (lr_document_get_study (self->document), drag->id);
  LrVec2 to_m = lr_vec2_add (at_m, drag->offset_m);

  if (placed == NULL)
    return NULL;

  if (lr_item_kind_info (placed->item->kind)->place == LR_PLACE_WALL)
    return round_along (lr_plan_move (committed (self), drag->id, to_m, error), drag->id,
                        lr_canvas_pull (self, state).step_m, error);
  return lr_canvas_hold_framing (self, lr_plan_move (committed (self), drag->id,
                                                     lr_canvas_snap_item (self, placed, to_m, state, &drag->snap), error), drag->id);
}

/* Up or down, as it points now at what it aims at */
static double
tilt_rad (LrCanvas     *self,
          const LrItem *item)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const LrCameraReading *camera = lr_study_find_camera (study, item->id);
  const LrPlaced *placed = lr_study_find_placed (study, item->id), *target;
  double height_m;

  if (camera != NULL)
    return camera->tilt_rad;

  target = lr_study_find_placed (study, item->light.aims_at);
  if (placed == NULL || target == NULL)
    return item->light.tilt_rad;
  height_m = item->light.aim_height_m > 0.0 ? item->light.aim_height_m : target->point_m.z;
  return atan2 (height_m - item->light.lamp_height_m, lr_vec2_distance (placed->at_m, target->at_m));
}

/* (transfer full): @plan with @item aiming at nothing, pointing as high as it did */
static LrPlan *
let_go_of_aim (LrCanvas      *self,
               LrPlan        *plan,
               const LrItem  *item,
               GError       **error)
{
  gboolean is_person = item->kind == LR_ITEM_PERSON;
  const char *target = is_person ? item->person.looks_at
                       : item->kind == LR_ITEM_CAMERA ? item->camera.aims_at
                       : item->kind == LR_ITEM_LIGHT ? item->light.aims_at : "";
  g_autoptr (LrPlan) loose = NULL;
  LrChange tilt = { item->id, "tilt-deg", 0.0 };

  if (*target == '\0')
    return lr_plan_ref (plan);

  loose = lr_plan_change_text (plan, item->id, is_person ? "looks-at" : "aims-at", "", error);
  if (loose == NULL || is_person)
    return g_steal_pointer (&loose);
  tilt.value = tilt_rad (self, item);
  return lr_plan_change (loose, &tilt, 1, error);
}

/**
 * lr_canvas_turned:
 * @self: a canvas
 * @id: of a thing
 * @facing_rad: its new facing [rad]
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with the thing turned; what it aimed or looked at is let go
 */
LrPlan *
lr_canvas_turned (LrCanvas    *self,
                  const char  *id,
                  double       facing_rad,
                  GError     **error)
{
  const LrItem *item = lr_plan_find (committed (self), id);
  g_autoptr (LrPlan) loose = item != NULL ? let_go_of_aim (self, committed (self), item, error) : NULL;

  return loose != NULL ? lr_plan_turn (loose, id, lr_angle_wrap_rad (facing_rad), error) : NULL;
}

static LrPlan *
turn_item (LrCanvas         *self,
           LrVec2            at_m,
           GdkModifierType   state,
           GError          **error)
{
  const LrPlaced *placed = lr_study_find_placed (lr_document_get_study (self->document), self->drag.id);
  double angle_rad;

  if (placed == NULL || lr_vec2_distance (at_m, placed->at_m) <= 0.0)
    return NULL;

  angle_rad = lr_vec2_angle_rad (lr_vec2_sub (at_m, placed->at_m));
  if (!(state & GDK_CONTROL_MASK))
    angle_rad = lr_snap_value (lr_snap_angle_rad (angle_rad, TURN_STEP_RAD, TURN_REACH_RAD), 1.0 * LR_DEG);
  return lr_canvas_turned (self, self->drag.id, angle_rad, error);
}

/* One side of a box: from the far edge, which stays, to the pointer. Returns the new size and shifts the middle. */
static double
pull_side (double  size_m,
           double  way,
           double  pointer_m,
           double  step_m,
           double *middle_m)
{
  double new_m;

  *middle_m = 0.0;
  if (way == 0.0)
    return size_m;

  new_m = fmax (lr_snap_value (way * pointer_m + size_m / 2.0, step_m), SIZE_MIN_M);
  *middle_m = way * (new_m - size_m) / 2.0;
  return new_m;
}

static LrPlan *
size_furniture (LrCanvas         *self,
                const LrItem     *item,
                LrVec2            at_m,
                double            step_m,
                GError          **error)
{
  LrVec2 way = knob_ways[self->drag.index % (int) G_N_ELEMENTS (knob_ways)];
  LrVec2 pointer_m = lr_vec2_rotate (lr_vec2_sub (at_m, item->at_m), -item->facing_rad), middle_m;
  double length_m = pull_side (item->furniture.length_m, way.x, pointer_m.x, step_m, &middle_m.x);
  double width_m = pull_side (item->furniture.width_m, way.y, pointer_m.y, step_m, &middle_m.y);
  LrVec2 place_m = lr_vec2_add (item->at_m, lr_vec2_rotate (middle_m, item->facing_rad));
  LrChange changes[] = {
    { item->id, "length-mm", length_m },
    { item->id, "width-mm", width_m },
    { item->id, "x-mm", place_m.x },
    { item->id, "y-mm", place_m.y },
  };

  return lr_plan_change (committed (self), changes, G_N_ELEMENTS (changes), error);
}

/* A door or a window: the end that is held follows the pointer along the wall, the other stays */
static LrPlan *
size_opening (LrCanvas         *self,
              const LrItem     *item,
              LrVec2            at_m,
              double            step_m,
              GError          **error)
{
  double width_m = item->kind == LR_ITEM_DOOR ? item->door.width_m : item->window.width_m;
  double start_m = item->along_m, end_m = item->along_m + width_m, wall_m, pointer_m;
  LrVec2 from_m, along;
  LrChange changes[] = { { item->id, "along-mm", 0.0 }, { item->id, "width-mm", 0.0 } };

  if (!lr_room_wall (lr_plan_get_setup (committed (self))->room, item->wall, &from_m, &along, &wall_m))
    return NULL;

  pointer_m = lr_snap_value (lr_vec2_dot (lr_vec2_sub (at_m, from_m), along), step_m);
  if (self->drag.index == 0)
    start_m = CLAMP (pointer_m, 0.0, end_m - OPENING_MIN_M);
  else
    end_m = fmin (fmax (pointer_m, start_m + OPENING_MIN_M), wall_m);

  changes[0].value = start_m;
  changes[1].value = end_m - start_m;
  return lr_plan_change (committed (self), changes, G_N_ELEMENTS (changes), error);
}

static LrPlan *
size_item (LrCanvas         *self,
           LrVec2            at_m,
           GdkModifierType   state,
           GError          **error)
{
  const LrItem *item = lr_plan_find (committed (self), self->drag.id);
  double step_m = lr_canvas_pull (self, state).step_m;

  if (item == NULL)
    return NULL;
  at_m = lr_vec2_add (at_m, self->drag.offset_m);
  if (item->kind == LR_ITEM_FURNITURE)
    return size_furniture (self, item, at_m, step_m, error);
  if (item->kind == LR_ITEM_DOOR || item->kind == LR_ITEM_WINDOW)
    return size_opening (self, item, at_m, step_m, error);
  return NULL;
}

static LrPlan *
move_point (LrCanvas         *self,
            LrVec2            at_m,
            GdkModifierType   state,
            GError          **error)
{
  LrSnapPull pull = lr_canvas_pull (self, state);
  const LrItem *item = lr_plan_find (committed (self), self->drag.id);

  if (item == NULL)
    return NULL;

  /* its own other points pull it: leads are laid square */
  self->drag.snap = lr_snap_place (lr_vec2_add (at_m, self->drag.offset_m), item->path_m, item->n_path, &pull);
  return lr_plan_move_path_point (committed (self), self->drag.id, (gsize) self->drag.index, self->drag.snap.at_m, error);
}

static LrPlan *
move_corner (LrCanvas         *self,
             LrVec2            at_m,
             GdkModifierType   state,
             GError          **error)
{
  const LrRoom *room = lr_plan_get_setup (committed (self))->room;
  LrSnapPull pull = lr_canvas_pull (self, state);
  g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (LrVec2));

  pull.reach_m *= CORNER_PX / ALIGN_PX;
  for (gsize i = 0; i < room->n_corners; i++)
    if (i != (gsize) self->drag.index)
      g_array_append_val (others, room->corners_m[i]);

  self->drag.snap = lr_snap_place (lr_vec2_add (at_m, self->drag.offset_m), &g_array_index (others, LrVec2, 0),
                                   others->len, &pull);
  return lr_plan_move_corner (committed (self), (gsize) self->drag.index, self->drag.snap.at_m, error);
}

static LrPlan *
move_wall (LrCanvas         *self,
           LrVec2            at_m,
           GdkModifierType   state,
           GError          **error)
{
  const LrRoom *room = lr_plan_get_setup (committed (self))->room;
  g_autofree LrVec2 *corners_m = g_new (LrVec2, room->n_corners);
  LrVec2 from_m, along, moved_m = lr_vec2_sub (at_m, lr_canvas_to_room (self, self->drag.press));
  double length_m, by_m;

  if (!lr_room_wall (room, self->drag.index, &from_m, &along, &length_m))
    return NULL;

  by_m = lr_snap_value (lr_vec2_cross (along, moved_m), lr_canvas_pull (self, state).step_m);
  if (!lr_shift_wall (room->corners_m, room->n_corners, (gsize) self->drag.index, by_m, corners_m))
    return NULL;
  return lr_plan_shift_corners (committed (self), corners_m, room->n_corners, error);
}

static const Grip grips[LR_N_GRIPS] = {
  [LR_GRIP_ITEM]   = { move_item, N_("Move %s") },
  [LR_GRIP_TURN]   = { turn_item, N_("Turn %s") },
  [LR_GRIP_SIZE]   = { size_item, N_("Resize %s") },
  [LR_GRIP_POINT]  = { move_point, N_("Lay %s") },
  [LR_GRIP_CORNER] = { move_corner, N_("Move a corner") },
  [LR_GRIP_WALL]   = { move_wall, N_("Move a wall") },
};

/**
 * lr_canvas_grip_next:
 * @self: a canvas
 * @at: a place on it [px]
 * @state: modifier keys
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with what is held there
 */
LrPlan *
lr_canvas_grip_next (LrCanvas         *self,
                     LrVec2            at,
                     GdkModifierType   state,
                     GError          **error)
{
  const Grip *grip = &grips[self->drag.grip];

  self->drag.snap.why = 0;
  return grip->next != NULL ? grip->next (self, lr_canvas_to_room (self, at), state, error) : NULL;
}

/**
 * lr_canvas_grip_title:
 * @self: a canvas
 *
 * Returns: (transfer full): title of the step that letting go makes
 */
char *
lr_canvas_grip_title (LrCanvas *self)
{
  const Grip *grip = &grips[self->drag.grip];

  if (grip->title == NULL)
    return g_strdup ("");
  if (self->drag.id == NULL)
    return g_strdup (_(grip->title));
  return lr_canvas_title_of (self, _(grip->title), self->drag.id);
}
