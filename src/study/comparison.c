/* comparison.c - candidate rooms side by side: the same figures of every set-up
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "comparison_parts.h"

#include "free_line.h"
#include "plan_edit.h"

#define LOOK_HEIGHT_M 1.2     /* seated eyes, nearly; common practice, no source */
#define BEHIND_CAMERA_M 0.5   /* half a tripod and who stands behind it; common practice, no source */
#define USUAL_CAMERA_M 2.0    /* common practice, no source */

static const LrCameraReading *
main_camera (const LrStudy *study)
{
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (camera->has_subject)
        return camera;
    }

  return NULL;
}

/* What must stay and is in the way of a look; (transfer full) */
static GArray *
find_blocks (const LrStudy *study)
{
  GArray *blocks = g_array_new (FALSE, FALSE, sizeof (LrOutline));

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_FURNITURE && placed->item->furniture.is_fixed && placed->has_footprint
          && placed->bottom_m < LOOK_HEIGHT_M && placed->top_m > LOOK_HEIGHT_M)
        g_array_append_val (blocks, placed->footprint);
    }

  return blocks;
}

static void
compare_size (LrRoomFigures *figures)
{
  const LrRoom *room = figures->setup->room;
  g_autoptr (GArray) blocks = find_blocks (figures->study);
  double longest_m, shortest_m;

  lr_compare_set (figures, LR_COMPARE_AREA, figures->study->room_area_m2);
  lr_compare_noted (figures, LR_COMPARE_CEILING, room->height_m, lr_prop_table_find (lr_room_table (), "height-mm"));
  if (lr_polygon_sides_m (room->corners_m, room->n_corners, &longest_m, &shortest_m))
    {
      lr_compare_set (figures, LR_COMPARE_LONGEST, longest_m);
      lr_compare_set (figures, LR_COMPARE_SHORTEST, shortest_m);
    }
  if (lr_free_line (room->corners_m, room->n_corners, (const LrOutline *) (gpointer) blocks->data, blocks->len, &figures->line_from_m,
                    &figures->line_to_m))
    figures->line_m = lr_vec2_distance (figures->line_from_m, figures->line_to_m);
}

static void
compare_background (LrRoomFigures *room,
                    double         camera_m)
{
  const LrCameraReading *camera = main_camera (room->study);

  if (isfinite (room->line_m))
    lr_compare_set (room, LR_COMPARE_BACKGROUND, fmax (room->line_m - BEHIND_CAMERA_M - camera_m, 0.0));
  room->figure[LR_COMPARE_BEHIND].known = LR_NOT_PLACED;
  if (camera == NULL || camera->behind == LR_BEHIND_NOTHING || !isfinite (camera->separation_m))
    return;
  lr_compare_set (room, LR_COMPARE_BEHIND, camera->separation_m);
  room->behind_wall = camera->behind == LR_BEHIND_WALL ? camera->behind_wall : -1;
  room->behind_item = camera->behind_item != NULL ? camera->behind_item->item : NULL;
}

static void
read_room (LrRoomFigures *room)
{
  gboolean has_room = room->setup->room->n_corners >= 3;

  for (int row = 0; row < LR_N_COMPARES; row++)
    room->figure[row] = (LrFigure) { has_room ? LR_NOT_NOTED : LR_NO_ROOM, NAN };
  room->behind_wall = -1;
  room->line_m = room->dark_share = room->hard_m2 = NAN;
  if (!has_room)
    return;

  compare_size (room);
  lr_compare_house (room);
  lr_compare_people (room);
  lr_compare_sun (room);
  lr_compare_sound (room);
}

static void
clear_room (gpointer data)
{
  lr_study_free (((LrRoomFigures *) data)->study);
}

static const LrSetup *
find_setup (const LrPlan *plan,
            const char   *id)
{
  for (guint i = 0; i < plan->setups->len; i++)
    if (g_str_equal (((const LrSetup *) plan->setups->pdata[i])->id, id))
      return plan->setups->pdata[i];

  return NULL;
}

/* Another one is as found of it; two that name each other both stay */
static gboolean
was_found (const LrPlan  *plan,
           const LrSetup *setup)
{
  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *other = plan->setups->pdata[i];

      if (g_str_equal (other->found_of, setup->id) && !g_str_equal (setup->found_of, other->id))
        return TRUE;
    }

  return FALSE;
}

static void
add_room (LrComparison  *comparison,
          const LrSetup *setup)
{
  LrRoomFigures room = { .study = NULL };
  g_autoptr (LrPlan) shown = lr_plan_show_setup (comparison->plan, setup->id, NULL);

  room.study = lr_study_new (shown);
  room.setup = room.study->setup;
  room.planned = find_setup (comparison->plan, setup->found_of);
  read_room (&room);
  g_array_append_val (comparison->rooms, room);
}

static void
read_rooms (LrComparison *comparison)
{
  const GPtrArray *setups = comparison->plan->setups;

  for (guint i = 0; i < setups->len; i++)
    if (!was_found (comparison->plan, setups->pdata[i]))
      add_room (comparison, setups->pdata[i]);
  comparison->n_left_out = setups->len - comparison->rooms->len;
}

/* One distance for all rooms, or they could not be compared: that of the first camera on somebody, in the first set-up that has one */
static void
find_camera (LrComparison *comparison)
{
  comparison->camera_m = USUAL_CAMERA_M;
  for (guint i = 0; i < comparison->rooms->len; i++)
    {
      const LrCameraReading *camera = main_camera (lr_comparison_room (comparison, i)->study);

      if (camera == NULL)
        continue;
      comparison->camera_m = camera->distance_m;
      comparison->camera_setup = lr_comparison_room (comparison, i)->setup;
      return;
    }
}

/**
 * lr_comparison_new:
 * @plan: a plan
 *
 * Studies every set-up that no other is as found of. The farthest background is the longest straight line over the floor, from wall to wall past the furniture that
 * must stay and reaches the eyes, less half a metre behind the camera and the distance from camera to subject; which is the first
 * camera's in the first set-up that has one on somebody, else 2 m, and the same for all.
 *
 * Ways out are awaited, see lr_comparison_take_levels(), and so are the remarks, which the judge counts.
 *
 * Returns: (transfer full): the figures of every candidate room
 */
LrComparison *
lr_comparison_new (const LrPlan *plan)
{
  LrComparison *comparison = g_new0 (LrComparison, 1);

  comparison->plan = lr_plan_ref (plan);
  comparison->rooms = g_array_new (FALSE, TRUE, sizeof (LrRoomFigures));
  g_array_set_clear_func (comparison->rooms, clear_room);
  read_rooms (comparison);
  find_camera (comparison);
  for (guint i = 0; i < comparison->rooms->len; i++)
    {
      LrRoomFigures *room = &g_array_index (comparison->rooms, LrRoomFigures, i);

      if (room->setup->room->n_corners >= 3)
        compare_background (room, comparison->camera_m);
    }

  return comparison;
}

/**
 * lr_comparison_is_awaited:
 * @comparison: a comparison
 * @index: of one of its rooms
 *
 * Returns: whether some of its figures wait for lr_comparison_take_levels(), or for the judge
 */
gboolean
lr_comparison_is_awaited (const LrComparison *comparison,
                          guint               index)
{
  for (int row = 0; row < LR_N_COMPARES; row++)
    if (lr_comparison_room (comparison, index)->figure[row].known == LR_AWAITED)
      return TRUE;

  return FALSE;
}

/**
 * lr_comparison_take_levels:
 * @comparison: a comparison
 * @index: of one of its rooms
 * @levels: (nullable): of the room's plan; %NULL: they could not be had
 *
 * Fills what takes too long for lr_comparison_new() and comes with the levels of light.
 */
void
lr_comparison_take_levels (LrComparison        *comparison,
                           guint                index,
                           const LrLightLevels *levels)
{
  lr_compare_ways_out (&g_array_index (comparison->rooms, LrRoomFigures, index), levels != NULL ? lr_light_levels_ways (levels) : NULL);
}

/**
 * lr_comparison_free:
 * @comparison: (transfer full) (nullable): a comparison
 */
void
lr_comparison_free (LrComparison *comparison)
{
  if (comparison == NULL)
    return;

  g_array_unref (comparison->rooms);
  lr_plan_unref (comparison->plan);
  g_free (comparison);
}
