/* lead_ways.c - where leads may lie
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A lead keeps to the walls: a metre in the open counts twice, one before a door, at people's feet or under another stand four
 * times. It goes round people and round what stands on the floor. All three figures: common practice, no source.
 */

#include "ground.h"
#include "power_readings.h"

#define LEAD_CLEAR_M 0.05
#define LEAD_WALL_M 0.06
#define WALL_BAND_M 0.30
#define OPEN_TIMES 2.0
#define ZONE_TIMES 4.0
#define ALONG_EDGE_M 0.01   /* no deeper in, a lead runs along a thing's edge */
#define FEET_M 0.30         /* round people a lead is a zone farther off as well */
#define OVER_FLOOR_M 0.10   /* what hangs no lower lets a lead through under it */

/* Leads */

static gboolean
stops_leads (const LrPlaced *placed)
{
  const LrItem *item = placed->item;

  if (!placed->has_footprint)
    return FALSE;
  if (item->kind == LR_ITEM_FURNITURE)
    return placed->bottom_m < OVER_FLOOR_M || item->furniture.form == LR_FURNITURE_RADIATOR;

  return item->kind == LR_ITEM_PERSON || (item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_BACKDROP);
}

static void
add_for_lead (LrGround       *ground,
              const LrStudy  *study,
              const LrPlaced *placed,
              const LrPlaced *load)
{
  LrOutline floor;

  if (placed == load)
    return;
  if (placed->item->kind == LR_ITEM_DOOR && lr_study_door_floor (study, placed, &floor))
    g_array_append_val (ground->zones, floor);
  else if (stops_leads (placed))
    {
      LrOutline feet = lr_outline_disc (placed->footprint.centre_m, placed->footprint.radius_m + FEET_M);

      lr_ground_add (ground, &placed->footprint, placed);
      if (placed->item->kind == LR_ITEM_PERSON)
        g_array_append_val (ground->zones, feet);
    }
  else if (placed->has_footprint && placed->bottom_m < OVER_FLOOR_M)
    g_array_append_val (ground->zones, placed->footprint);
}

struct _LrLeadFloor
{
  const LrStudy  *study;
  const LrPlaced *load;
  LrGround        ground;
};

/**
 * lr_lead_floor_new:
 * @study: a study, which outlives the floor
 * @load: what a lead would feed
 *
 * Returns: (transfer full): the floor as leads to it see it
 */
LrLeadFloor *
lr_lead_floor_new (const LrStudy  *study,
                   const LrPlaced *load)
{
  LrLeadFloor *self = g_new0 (LrLeadFloor, 1);

  self->study = study;
  self->load = load;
  lr_ground_begin (&self->ground, study);
  for (guint i = 0; i < study->placed->len; i++)
    add_for_lead (&self->ground, study, &g_array_index (study->placed, LrPlaced, i), load);
  lr_ground_end (&self->ground);
  self->ground.floor.clear_m = LEAD_CLEAR_M;
  self->ground.floor.wall_m = LEAD_WALL_M;
  self->ground.floor.band_m = WALL_BAND_M;
  self->ground.floor.open_times = OPEN_TIMES;
  self->ground.floor.zone_times = ZONE_TIMES;
  return self;
}

/**
 * lr_lead_floor_free:
 * @floor: (transfer full): a floor
 */
void
lr_lead_floor_free (LrLeadFloor *floor)
{
  lr_ground_clear (&floor->ground);
  g_free (floor);
}

/* Where a plug sticks out of the wall */
static LrVec2
plug_of (const LrPlaced *socket)
{
  return lr_vec2_along (socket->at_m, lr_vec2_polar (socket->facing_rad, 1.0), LEAD_WALL_M);
}

/**
 * lr_lead_floor_way:
 * @floor: a floor
 * @socket: where it is plugged in
 * @path_m: (out): its points from the plug to the load [m]
 * @n: (out): how many
 *
 * Returns: %FALSE, with the outputs untouched, if there is no way
 */
gboolean
lr_lead_floor_way (const LrLeadFloor *floor,
                   const LrPlaced    *socket,
                   LrVec2             path_m[LR_LEAD_POINTS],
                   gsize             *n)
{
  return lr_route_find (&floor->ground.floor, plug_of (socket), floor->load->at_m, path_m, LR_LEAD_POINTS, n);
}

/**
 * lr_lead_floor_least_m:
 * @floor: a floor
 * @socket: where it is plugged in
 *
 * Returns: how long a lead must be that lies straight, whatever is in its way [m]
 */
double
lr_lead_floor_least_m (const LrLeadFloor *floor,
                       const LrPlaced    *socket)
{
  const LrVec2 straight_m[] = { plug_of (socket), floor->load->at_m };

  return lr_study_needed_m (floor->study, socket, straight_m, G_N_ELEMENTS (straight_m));
}

/**
 * lr_study_lead_way:
 * @study: a study
 * @socket: where it is plugged in
 * @load: what it feeds
 * @path_m: (out): its points from the plug to the load [m]
 * @n: (out): how many
 *
 * Returns: %FALSE, with the outputs untouched, if there is no way
 */
gboolean
lr_study_lead_way (const LrStudy  *study,
                   const LrPlaced *socket,
                   const LrPlaced *load,
                   LrVec2          path_m[LR_LEAD_POINTS],
                   gsize          *n)
{
  g_autoptr (LrLeadFloor) floor = lr_lead_floor_new (study, load);

  return lr_lead_floor_way (floor, socket, path_m, n);
}

/* From a point within to the nearest edge */
static double
depth_m (const LrOutline *outline,
         LrVec2           at_m)
{
  double depth = outline->n == 0 ? outline->radius_m - lr_vec2_distance (outline->centre_m, at_m) : HUGE_VAL;

  for (gsize i = 0; i < outline->n; i++)
    depth = fmin (depth, lr_segment_distance_m (outline->corner_m[i], outline->corner_m[(i + 1) % outline->n], at_m, NULL));

  return depth;
}

/* Middle of the part of the path that lies in the outline; FALSE: none */
static gboolean
path_in (const LrItem    *lead,
         const LrOutline *outline,
         LrVec2          *at_m)
{
  for (gsize i = 0; i + 1 < lead->n_path; i++)
    {
      LrVec2 step = lr_vec2_sub (lead->path_m[i + 1], lead->path_m[i]);
      double length_m = lr_vec2_length (step), enter_m, leave_m;
      LrVec2 middle_m;

      if (!(length_m > 0.0) || !lr_outline_ray (outline, lead->path_m[i], step, &enter_m, &leave_m) || enter_m >= length_m)
        continue;
      leave_m = fmin (leave_m, length_m);
      middle_m = lr_vec2_along (lead->path_m[i], step, 0.5 * (enter_m + leave_m) / length_m);
      if (depth_m (outline, middle_m) < ALONG_EDGE_M)
        continue;
      *at_m = middle_m;
      return TRUE;
    }

  return FALSE;
}

/**
 * lr_study_lead_across:
 * @study: a study
 * @lead: a lead of its set-up
 * @at_m: (out): where it lies there [m]
 *
 * Returns: (transfer none) (nullable): the way out, else the person, else the other door, that it lies across; what it feeds does not count
 */
const LrPlaced *
lr_study_lead_across (const LrStudy *study,
                      const LrItem  *lead,
                      LrVec2        *at_m)
{
  const LrPlaced *found = NULL;
  int best = 0;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrOutline floor = placed->footprint;
      LrVec2 there_m;
      int rank = placed->item->kind == LR_ITEM_PERSON ? 2 : placed->item->kind != LR_ITEM_DOOR ? 0 : placed->item->door.is_exit ? 3 : 1;

      if (rank <= best || g_strcmp0 (placed->item->id, lead->lead.feeds) == 0
          || (placed->item->kind == LR_ITEM_DOOR && !lr_study_door_floor (study, placed, &floor)) || !path_in (lead, &floor, &there_m))
        continue;
      found = placed;
      best = rank;
      *at_m = there_m;
    }

  return found;
}
