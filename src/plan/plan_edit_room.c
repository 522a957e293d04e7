/* plan_edit_room.c - drawing the room and changing what it is made of
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_check.h"
#include "polygon.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define PARALLEL 0.01 /* sine of the angle between walls that count as parallel: about half a degree, corners are rounded */

static LrRoom *
fresh_room (LrSetup *setup)
{
  LrRoom *room = lr_room_copy (setup->room);

  lr_room_unref (setup->room);
  setup->room = room;

  return room;
}

static gboolean
check_corners (const LrRoom  *room,
               GError       **error)
{
  static const char *const sentences[] = {
    [LR_CORNERS_TOO_FEW]   = N_("A room needs at least three corners."),
    [LR_CORNERS_TOO_MANY]  = N_("A room can have at most 64 corners."),
    [LR_CORNERS_CROSS]     = N_("The walls would cross or touch each other."),
    [LR_CORNERS_CLOCKWISE] = N_("The room would turn inside out."),
  };
  LrCornersFault fault = lr_corners_check (room->corners_m, room->n_corners);

  for (gsize i = 0; i < room->n_corners; i++)
    if (!lr_edit_check_point (room->corners_m[i], error))
      return FALSE;
  if (fault == LR_CORNERS_FINE)
    return TRUE;

  g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _(sentences[fault]));

  return FALSE;
}

/* The same walls in other places: what hangs on them stays on its wall, in its place in the room if it can */
static void
slide_all (LrSetup       *setup,
           const LrSetup *before)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];
      g_autoptr (LrItem) trial = NULL;

      if (lr_item_kind_info (item->kind)->place != LR_PLACE_WALL)
        continue;
      trial = lr_item_copy (item);
      trial->along_m = lr_prop_quantise (lr_item_find_prop (item->kind, "along-mm"), lr_found_along_m (setup, before, item));
      lr_edit_clamp_to_wall (setup, trial);
      if (!lr_item_equal (trial, item))
        lr_edit_item_at (setup, i)->along_m = trial->along_m;
    }
}

/* The same walls in other places; as found, what stands at them goes along, and what was taped of them elsewhere is forgotten */
static gboolean
follow_all (LrSetup        *setup,
            const LrSetup  *before,
            int             taped_wall,
            double          taped_m,
            GError        **error)
{
  slide_all (setup, before);
  if (*setup->found_of == '\0')
    return TRUE;
  lr_edit_retape (setup->room, before->room, taped_wall, taped_m);

  return lr_edit_follow_walls (setup, before, error);
}

/* Other walls: what hung on @before's hangs on the nearest one */
static gboolean
hang_all (LrSetup        *setup,
          const LrSetup  *before,
          GError        **error)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];
      LrVec2 at_m;
      double facing_rad;

      if (lr_item_kind_info (item->kind)->place != LR_PLACE_WALL)
        continue;
      if (setup->room->n_corners == 0)
        return lr_edit_refuse (item, _("still hangs on a wall of this room."), error);
      if (lr_setup_place (before, item, &at_m, &facing_rad))
        lr_edit_hang (setup, lr_edit_item_at (setup, i), at_m);
    }

  return TRUE;
}

/* Corners as the file holds them, anticlockwise */
static void
put_corners (LrRoom       *room,
             const LrVec2 *corners_m,
             gsize         n)
{
  gboolean is_clockwise = lr_polygon_area_m2 (corners_m, n) < 0.0;

  g_free (room->corners_m);
  room->corners_m = g_new (LrVec2, n);
  room->n_corners = n;
  for (gsize i = 0; i < n; i++)
    room->corners_m[i] = lr_edit_quantise (corners_m[is_clockwise ? n - 1 - i : i]);
}

/* @is_redrawn: notes, which name corners, are of another room; @is_same_order: of as many corners each is still the one of its number */
static LrPlan *
put_room (const LrPlan  *plan,
          const LrVec2  *corners_m,
          gsize          n,
          gboolean       is_redrawn,
          gboolean       is_same_order,
          LrSetup      **setup,
          GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, setup, error);
  const LrSetup *before = lr_plan_get_setup (plan);
  gboolean has_same_walls = *before->found_of != '\0' && n == before->room->n_corners && is_same_order;
  LrRoom *room;

  if (next == NULL)
    return NULL;

  room = fresh_room (*setup);
  put_corners (room, corners_m, n);
  if (is_redrawn)
    lr_room_drop_notes (room);
  if (!check_corners (room, error)
      || !(has_same_walls ? follow_all (*setup, before, -1, 0.0, error) : hang_all (*setup, before, error)))
    return NULL;

  return g_steal_pointer (&next);
}

static gboolean
put_note (const LrPropTable  *table,
          gpointer            note,
          const char         *key,
          double              value,
          GError            **error)
{
  const LrProp *prop = lr_prop_table_find (table, key);

  if (!lr_edit_check_number (prop, value, error))
    return FALSE;
  lr_prop_put_number (prop, note, value);

  return TRUE;
}

/* The corner of a room that was walked with the room on the right is counted the other way round */
static int
corner_of (gboolean is_reversed,
           gsize    n,
           int      corner)
{
  return is_reversed ? (int) n - 1 - corner : corner;
}

static gboolean
put_tape (LrRoom         *room,
          const LrTaped  *taped,
          gboolean        is_reversed,
          GError        **error)
{
  room->tape = g_new0 (LrTapeNote, taped->n_tape);
  for (gsize i = 0; i < taped->n_tape; i++)
    {
      LrTapeNote *note = &room->tape[room->n_tape++];
      int from = corner_of (is_reversed, room->n_corners, taped->tape[i].from);
      int to = corner_of (is_reversed, room->n_corners, taped->tape[i].to);

      lr_prop_table_init (lr_tape_table (), note);
      /* a wall keeps its direction: from a corner to the next */
      if (!put_note (lr_tape_table (), note, "from", is_reversed ? to : from, error)
          || !put_note (lr_tape_table (), note, "to", is_reversed ? from : to, error)
          || !put_note (lr_tape_table (), note, "length-mm", taped->tape[i].length_m, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
put_turns (LrRoom         *room,
           const LrTaped  *taped,
           gboolean        is_reversed,
           GError        **error)
{
  room->turns = g_new0 (LrTurnNote, taped->n_turns);
  for (gsize i = 0; i < taped->n_turns; i++)
    {
      LrTurnNote *note = &room->turns[room->n_turns++];
      double turn_rad = taped->turns[i].turn_rad;

      lr_prop_table_init (lr_turn_table (), note);
      if (!put_note (lr_turn_table (), note, "corner", corner_of (is_reversed, room->n_corners, taped->turns[i].corner), error)
          || !put_note (lr_turn_table (), note, "turn-deg", is_reversed ? -turn_rad : turn_rad, error))
        return FALSE;
    }

  return TRUE;
}

/**
 * lr_plan_set_corners:
 * @plan: a plan
 * @corners_m: (array length=n): corners [m], in either direction
 * @n: how many: none, or 3 to %LR_MAX_CORNERS
 * @error: return location
 *
 * Draws the room anew. What hung on the old walls hangs on the nearest of the new ones; tape notes, which name corners,
 * are dropped.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_corners (const LrPlan  *plan,
                     const LrVec2  *corners_m,
                     gsize          n,
                     GError       **error)
{
  LrSetup *setup;

  return put_room (plan, corners_m, n, TRUE, lr_polygon_area_m2 (corners_m, n) > 0.0, &setup, error);
}

/**
 * lr_plan_shift_corners:
 * @plan: a plan
 * @corners_m: (array length=n): where the corners should be [m], anticlockwise
 * @n: how many: as many as the room has
 * @error: return location
 *
 * As lr_plan_set_corners(), for the same walls in other places: what was taped stays noted.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_shift_corners (const LrPlan  *plan,
                       const LrVec2  *corners_m,
                       gsize          n,
                       GError       **error)
{
  gboolean is_same = n == lr_plan_get_setup (plan)->room->n_corners && lr_polygon_area_m2 (corners_m, n) > 0.0;
  LrSetup *setup;

  return put_room (plan, corners_m, n, !is_same, is_same, &setup, error);
}

/**
 * lr_plan_set_taped:
 * @plan: a plan
 * @taped: corners [m] in either direction, and the notes that they come from
 * @error: return location
 *
 * As lr_plan_set_corners(), with notes. Where the corners run clockwise they are turned, and the notes with them; their numbers
 * for people stay.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_taped (const LrPlan   *plan,
                   const LrTaped  *taped,
                   GError        **error)
{
  gboolean is_reversed = lr_polygon_area_m2 (taped->corners_m, taped->n_corners) < 0.0;
  gboolean is_same_order = is_reversed == lr_plan_get_setup (plan)->room->counts_clockwise;
  LrSetup *setup;
  g_autoptr (LrPlan) next = put_room (plan, taped->corners_m, taped->n_corners, TRUE, is_same_order, &setup, error);

  if (next != NULL)
    setup->room->counts_clockwise = is_reversed;
  if (next == NULL || !put_tape (setup->room, taped, is_reversed, error) || !put_turns (setup->room, taped, is_reversed, error))
    return NULL;

  return g_steal_pointer (&next);
}

/**
 * lr_plan_move_corner:
 * @plan: a plan
 * @corner: index of a corner
 * @to_m: where it should be [m]
 * @error: return location
 *
 * What hangs on the walls stays in its place in the room, as lr_found_along_m() says, as far as there is still wall.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_move_corner (const LrPlan  *plan,
                     gsize          corner,
                     LrVec2         to_m,
                     GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrRoom *room;

  if (next == NULL)
    return NULL;
  if (corner >= setup->room->n_corners)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("The room has no such corner."));
      return NULL;
    }

  room = fresh_room (setup);
  room->corners_m[corner] = lr_edit_quantise (to_m);
  if (!check_corners (room, error) || !follow_all (setup, lr_plan_get_setup (plan), -1, 0.0, error))
    return NULL;

  return g_steal_pointer (&next);
}

/* How many corners behind @wall move along with its end: up to the next wall that runs parallel to it, unless that was taped as found */
static gsize
n_corners_that_follow (const LrPlan *plan,
                       int           wall,
                       LrVec2        along)
{
  const LrRoom *room = lr_plan_get_setup (plan)->room;
  LrVec2 other;

  for (gsize k = 1; k + 1 < room->n_corners; k++)
    {
      int next = (int) (((gsize) wall + k) % room->n_corners);

      if (lr_room_wall (room, next, NULL, &other, NULL) && ABS (lr_vec2_cross (along, other)) < PARALLEL)
        return lr_edit_is_taped_anew (plan, next) ? 1 : k;
    }

  return 1;
}

/**
 * lr_plan_set_wall_length:
 * @plan: a plan
 * @wall: index of a wall
 * @length_m: how long it should be [m], > 0
 * @error: return location
 *
 * The wall keeps its direction and first corner. The corners behind it move along by the difference, up to the wall that
 * runs parallel to it: a rectangle stays one. Without such a wall only the wall's end moves; nor does a parallel wall give way that was
 * itself taped as found. Of a room as found the length counts as taped, and what was taped of other walls that went along is forgotten.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_wall_length (const LrPlan  *plan,
                         int            wall,
                         double         length_m,
                         GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrVec2 along;
  double before_m;
  gsize n_follow;
  LrRoom *room;

  if (next == NULL)
    return NULL;
  if (!lr_room_wall (setup->room, wall, NULL, &along, &before_m))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("The room has no wall %d."), wall);
      return NULL;
    }
  if (!(length_m >= 0.001))
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("A wall cannot be shorter than a millimetre."));
      return NULL;
    }

  room = fresh_room (setup);
  n_follow = n_corners_that_follow (plan, wall, along);
  for (gsize k = 1; k <= n_follow; k++)
    {
      LrVec2 *corner_m = &room->corners_m[((gsize) wall + k) % room->n_corners];

      *corner_m = lr_edit_quantise (lr_vec2_along (*corner_m, along, length_m - before_m));
    }
  if (!check_corners (room, error) || !follow_all (setup, lr_plan_get_setup (plan), wall, length_m, error))
    return NULL;

  return g_steal_pointer (&next);
}

/* The row of "height-mm" in the room, of "walls.material" in one of its surfaces */
static const LrProp *
find_prop (LrRoom      *room,
           const char  *key,
           gpointer    *owner)
{
  const struct { const char *name; LrSurface *surface; } surfaces[] = {
    { "walls.", &room->walls }, { "floor.", &room->floor }, { "ceiling.", &room->ceiling },
  };

  for (guint i = 0; i < G_N_ELEMENTS (surfaces); i++)
    if (g_str_has_prefix (key, surfaces[i].name))
      {
        *owner = surfaces[i].surface;
        return lr_prop_table_find (lr_surface_table (), key + strlen (surfaces[i].name));
      }
  *owner = room;

  return lr_prop_table_find (lr_room_table (), key);
}

/**
 * lr_plan_set_room:
 * @plan: a plan
 * @key: a number of the room, or of a surface behind its name: "height-mm", "walls.reflectance-pct"
 * @value: in inside units
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_room (const LrPlan  *plan,
                  const char    *key,
                  double         value,
                  GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  const LrProp *prop;
  gpointer owner;

  if (next == NULL)
    return NULL;

  prop = find_prop (fresh_room (setup), key, &owner);
  if (prop == NULL || lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A room has no number “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_number (prop, value, error))
    return NULL;
  lr_prop_put_number (prop, owner, value);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_room_text:
 * @plan: a plan
 * @key: a text of the room, or of a surface behind its name: "floor-note", "walls.material"
 * @text: what it becomes
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_room_text (const LrPlan  *plan,
                       const char    *key,
                       const char    *text,
                       GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  const LrProp *prop;
  gpointer owner;

  if (next == NULL)
    return NULL;

  prop = find_prop (fresh_room (setup), key, &owner);
  if (prop == NULL || !lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A room has no text “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_text (key, text, error))
    return NULL;
  lr_prop_put_text (prop, owner, text);

  return g_steal_pointer (&next);
}
