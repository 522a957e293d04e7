/* sun_readings.c - where the sun is over the day of the shoot, and when it reaches a place in the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A place is in the sun if the way from it to the sun goes through what a blind leaves of a window. The middle of the disc counts: its
 * edge comes a minute sooner and goes a minute later.
 */

#include "sun_readings.h"

#include <stdio.h>

/* The day in universal time at which the clocks of the place show the minute, of the job's day or a later one */
static gboolean
find_day (const LrJob *job,
          int          minute,
          double      *julian_day)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_identifier (job->time_zone[0] != '\0' ? job->time_zone : "UTC");
  g_autoptr (GDateTime) midnight = NULL, then = NULL, local = NULL, utc = NULL;
  int year, month, day, end = 0;

  if (zone == NULL || sscanf (job->date, "%4d-%2d-%2d%n", &year, &month, &day, &end) != 3 || job->date[end] != '\0')
    return FALSE;

  midnight = g_date_time_new_utc (year, month, day, 0, 0, 0.0);
  then = midnight != NULL ? g_date_time_add_minutes (midnight, minute) : NULL;
  local = then != NULL ? g_date_time_new (zone, g_date_time_get_year (then), g_date_time_get_month (then), g_date_time_get_day_of_month (then),
                                          g_date_time_get_hour (then), g_date_time_get_minute (then), 0.0)
                       : NULL;
  utc = local != NULL ? g_date_time_to_utc (local) : NULL;
  if (utc == NULL)
    return FALSE;

  return lr_julian_day (g_date_time_get_year (utc), g_date_time_get_month (utc), g_date_time_get_day_of_month (utc),
                        g_date_time_get_hour (utc) + g_date_time_get_minute (utc) / 60.0, julian_day);
}

/**
 * lr_study_sun_at:
 * @study: a study
 * @minute: since midnight of the job's day, by the clocks of the place; may pass 24 h
 * @place: (out): where the sun is
 *
 * Returns: %FALSE, with @place untouched, if date, time zone or the place on the earth are not given
 */
gboolean
lr_study_sun_at (const LrStudy *study,
                 int            minute,
                 LrSunPlace    *place)
{
  const LrLocation *location = study->setup->location;
  double day;

  return lr_location_is_on_map (location) && minute >= 0 && find_day (study->plan->job, minute, &day)
         && lr_sun_place (day, location->latitude_deg * LR_DEG, location->longitude_deg * LR_DEG, place);
}

/**
 * lr_sun_opening:
 * @study: a study
 * @window: a thing of it
 * @opening: (out): what the blind leaves open
 *
 * Returns: %FALSE, with @opening untouched, if that is nothing, or it is no window
 */
gboolean
lr_sun_opening (const LrStudy  *study,
                const LrPlaced *window,
                LrSunOpening   *opening)
{
  const LrItem *item = window->item;
  LrVec2 from_m, along;
  double length_m, head_m;

  if (item->kind != LR_ITEM_WINDOW || item->window.blind == LR_BLIND_DOWN || !(item->window.width_m > 0.0)
      || !(item->window.head_m > item->window.sill_m) || !lr_room_wall (study->setup->room, item->wall, &from_m, &along, &length_m))
    return FALSE;

  head_m = item->window.blind == LR_BLIND_HALF ? 0.5 * (item->window.sill_m + item->window.head_m) : item->window.head_m;
  *opening = (LrSunOpening) { lr_vec2_along (from_m, along, item->along_m), along, lr_vec2_left (along), item->window.width_m,
                              item->window.sill_m, head_m };
  return TRUE;
}

/**
 * lr_sun_opening_holds:
 * @opening: of a window
 * @point_m: middle of a ball in the room [m]
 * @radius_m: of the ball [m], >= 0
 * @way: to the sun, of length 1
 *
 * Returns: whether the way from any of the ball passes through it
 */
gboolean
lr_sun_opening_holds (const LrSunOpening *opening,
                      LrVec3              point_m,
                      double              radius_m,
                      LrVec3              way)
{
  double off_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (point_m), opening->at_m), opening->inward);
  double out = -lr_vec2_dot (lr_vec3_flat (way), opening->inward), t = off_m / out, along_m, beside_m, over_m, flat;
  LrVec3 at_m;

  if (!(off_m > 0.0) || !(t > 0.0) || !isfinite (t))
    return FALSE;

  at_m = lr_vec3_along (point_m, way, t);
  along_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (at_m), opening->at_m), opening->along);
  /* ways past the sides of the ball, and over and under it, meet the wall so far off */
  flat = lr_vec2_length (lr_vec3_flat (way));
  beside_m = radius_m * flat / out;
  over_m = radius_m / flat;
  return along_m >= -beside_m && along_m <= opening->width_m + beside_m && at_m.z >= opening->sill_m - over_m
         && at_m.z <= opening->head_m + over_m;
}

static const LrPlaced *
find_window (const LrStudy *study,
             LrVec3         point_m,
             double         radius_m,
             LrVec3         way)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrSunOpening opening;

      if (lr_sun_opening (study, placed, &opening) && lr_sun_opening_holds (&opening, point_m, radius_m, way))
        return placed;
    }

  return NULL;
}

/**
 * lr_study_sun_way:
 * @study: a study
 * @minute: since midnight, by the clocks of the place
 * @way: (out): to the sun, of length 1, in the room's axes
 *
 * Returns: %FALSE, with @way untouched, if it is under the horizon, or not known
 */
gboolean
lr_study_sun_way (const LrStudy *study,
                  int            minute,
                  LrVec3        *way)
{
  LrSunPlace sun;
  double altitude_rad;

  if (!lr_study_sun_at (study, minute, &sun))
    return FALSE;

  altitude_rad = sun.altitude_rad + lr_sun_refraction_rad (sun.altitude_rad);
  if (altitude_rad <= 0.0)
    return FALSE;

  *way = lr_sun_way (altitude_rad, sun.azimuth_rad, study->setup->room->north_rad);
  return TRUE;
}

/**
 * lr_study_light_minute:
 * @study: a study
 *
 * Returns: the minute half-way through the shoot, for which levels of light are told, since midnight of its day; -1: its hours are not given
 */
int
lr_study_light_minute (const LrStudy *study)
{
  return lr_job_middle (study->plan->job);
}

/**
 * lr_study_sun_up:
 * @study: a study
 * @first: (out): first minute in which it is up
 * @last: (out): last one
 *
 * Returns: %FALSE, with both untouched, if it is never up on that day, or not known
 */
gboolean
lr_study_sun_up (const LrStudy *study,
                 int           *first,
                 int           *last)
{
  int from = -1, to = -1;
  LrVec3 way;

  for (int minute = 0; minute < LR_DAY_MIN; minute++)
    if (lr_study_sun_way (study, minute, &way))
      {
        from = from < 0 ? minute : from;
        to = minute;
      }
  if (from < 0)
    return FALSE;

  *first = from;
  *last = to;
  return TRUE;
}

/**
 * lr_study_sun_patch:
 * @study: a study
 * @window: a window of it
 * @minute: since midnight, by the clocks of the place
 * @patch_m: (out): where the corners of what the blind leaves open fall on the floor: sill, sill, head, head [m]
 *
 * Walls, furniture and people do not cut it.
 *
 * Returns: %FALSE, with @patch_m untouched, if the sun does not come through, or is not known
 */
gboolean
lr_study_sun_patch (const LrStudy  *study,
                    const LrPlaced *window,
                    int             minute,
                    LrVec2          patch_m[4])
{
  LrSunOpening opening;
  LrVec3 way;

  if (!lr_sun_opening (study, window, &opening) || !lr_study_sun_way (study, minute, &way))
    return FALSE;

  {
    LrVec2 b_m = lr_vec2_along (opening.at_m, opening.along, opening.width_m);
    LrVec3 corner_m[4] = { lr_vec2_raise (opening.at_m, opening.sill_m), lr_vec2_raise (b_m, opening.sill_m),
                           lr_vec2_raise (b_m, opening.head_m), lr_vec2_raise (opening.at_m, opening.head_m) };

    return lr_sun_patch (corner_m, 4, lr_vec2_raise (lr_vec2_scale (opening.inward, -1.0), 0.0), way, 0.0, patch_m);
  }
}

/**
 * lr_study_sun_reach:
 * @study: a study
 * @middle_m: of a ball in the room [m]
 * @radius_m: of the ball, of a head half its width [m], >= 0
 * @from: first minute that is looked at
 * @to: last one
 * @first: (out): first minute in the sun
 * @last: (out): last minute in the sun; it may be gone for a while in between
 * @window: (out): through which it comes first
 *
 * The sun stands as high as the air lifts it.
 *
 * Returns: %FALSE, with all untouched, if it never shines there in that time, or is not known
 */
gboolean
lr_study_sun_reach (const LrStudy   *study,
                    LrVec3           middle_m,
                    double           radius_m,
                    int              from,
                    int              to,
                    int             *first,
                    int             *last,
                    const LrPlaced **window)
{
  const LrPlaced *first_window = NULL;
  int first_minute = -1, last_minute = -1;

  for (int minute = MAX (from, 0); minute <= MIN (to, LR_DAY_MIN - 1); minute++)
    {
      const LrPlaced *here;
      LrVec3 way;

      here = lr_study_sun_way (study, minute, &way) ? find_window (study, middle_m, radius_m, way) : NULL;
      if (here == NULL)
        continue;
      first_window = first_window != NULL ? first_window : here;
      first_minute = first_minute < 0 ? minute : first_minute;
      last_minute = minute;
    }

  if (first_window == NULL)
    return FALSE;

  *first = first_minute;
  *last = last_minute;
  *window = first_window;
  return TRUE;
}
