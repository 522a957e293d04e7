/* sun_readings.c - where the sun is over the day of the shoot, and when it reaches a place in the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A place is in the sun if the way from it to the sun goes through what a blind leaves of a window. The middle of the disc counts: its
 * edge comes a minute sooner and goes a minute later.
 */

#include "sun_readings.h"

#include <stdio.h>

/**
 * lr_minute_parse:
 * @text: "09:30"
 * @minute: (out): since midnight
 *
 * Returns: %FALSE, with @minute untouched, if it is no time of the day
 */
gboolean
lr_minute_parse (const char *text,
                 int        *minute)
{
  int hours, minutes, end = 0;

  if (sscanf (text, "%2d:%2d%n", &hours, &minutes, &end) != 2 || text[end] != '\0' || hours < 0 || hours > 24 || minutes < 0 || minutes > 59
      || hours * 60 + minutes > LR_DAY_MIN)
    return FALSE;

  *minute = hours * 60 + minutes;
  return TRUE;
}

/* Latitude and longitude 0, 0 mean that they are not given */
static gboolean
is_placed (const LrJob *job)
{
  return job->latitude_deg != 0.0 || job->longitude_deg != 0.0;
}

/* The day in universal time at which the clocks of the place show the minute */
static gboolean
find_day (const LrJob *job,
          int          minute,
          double      *julian_day)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_identifier (job->time_zone[0] != '\0' ? job->time_zone : "UTC");
  g_autoptr (GDateTime) local = NULL, utc = NULL;
  int year, month, day, end = 0;

  if (zone == NULL || sscanf (job->date, "%4d-%2d-%2d%n", &year, &month, &day, &end) != 3 || job->date[end] != '\0')
    return FALSE;

  local = g_date_time_new (zone, year, month, day, MIN (minute, LR_DAY_MIN - 1) / 60, minute % 60, 0.0);
  utc = local != NULL ? g_date_time_to_utc (local) : NULL;
  if (utc == NULL)
    return FALSE;

  return lr_julian_day (g_date_time_get_year (utc), g_date_time_get_month (utc), g_date_time_get_day_of_month (utc),
                        g_date_time_get_hour (utc) + g_date_time_get_minute (utc) / 60.0, julian_day);
}

/**
 * lr_study_sun_at:
 * @study: a study
 * @minute: since midnight, by the clocks of the place
 * @place: (out): where the sun is
 *
 * Returns: %FALSE, with @place untouched, if date, time zone or the place on the earth are not given
 */
gboolean
lr_study_sun_at (const LrStudy *study,
                 int            minute,
                 LrSunPlace    *place)
{
  const LrJob *job = study->plan->job;
  double day;

  return is_placed (job) && minute >= 0 && minute < LR_DAY_MIN && find_day (job, minute, &day)
         && lr_sun_place (day, job->latitude_deg * LR_DEG, job->longitude_deg * LR_DEG, place);
}

/* Whether the way from a place passes through what the blind leaves of the window */
static gboolean
passes_window (const LrRoom *room,
               const LrItem *item,
               LrVec3        point_m,
               double        radius_m,
               LrVec3        way)
{
  double sill_m = item->window.sill_m, head_m = item->window.head_m, length_m, off_m, t, along_m, beside_m, over_m;
  LrVec2 from_m, along, inward;
  LrVec3 at_m;

  if (item->window.blind == LR_BLIND_DOWN || !lr_room_wall (room, item->wall, &from_m, &along, &length_m))
    return FALSE;
  if (item->window.blind == LR_BLIND_HALF)
    head_m = 0.5 * (sill_m + head_m);

  inward = lr_vec2_left (along);
  off_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (point_m), from_m), inward);
  t = -off_m / lr_vec2_dot (lr_vec3_flat (way), inward);
  if (!(off_m > 0.0) || !(t > 0.0) || !isfinite (t))
    return FALSE;

  at_m = lr_vec3_along (point_m, way, t);
  along_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (at_m), from_m), along);
  /* ways past the sides of the ball, and over and under it, meet the wall so far off */
  beside_m = radius_m * lr_vec2_length (lr_vec3_flat (way)) / lr_vec2_dot (lr_vec3_flat (way), lr_vec2_scale (inward, -1.0));
  over_m = radius_m / lr_vec2_length (lr_vec3_flat (way));
  return along_m >= item->along_m - beside_m && along_m <= item->along_m + item->window.width_m + beside_m
         && at_m.z >= sill_m - over_m && at_m.z <= head_m + over_m;
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

      if (placed->item->kind == LR_ITEM_WINDOW && passes_window (study->setup->room, placed->item, point_m, radius_m, way))
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
  const LrItem *item = window->item;
  double head_m = item->window.blind == LR_BLIND_HALF ? 0.5 * (item->window.sill_m + item->window.head_m) : item->window.head_m, length_m;
  LrVec2 from_m, along, a_m, b_m;
  LrVec3 way;

  if (item->kind != LR_ITEM_WINDOW || item->window.blind == LR_BLIND_DOWN || !lr_room_wall (study->setup->room, item->wall, &from_m, &along, &length_m)
      || !lr_study_sun_way (study, minute, &way))
    return FALSE;

  a_m = lr_vec2_along (from_m, along, item->along_m);
  b_m = lr_vec2_along (a_m, along, item->window.width_m);
  {
    LrVec3 corner_m[4] = { lr_vec2_raise (a_m, item->window.sill_m), lr_vec2_raise (b_m, item->window.sill_m), lr_vec2_raise (b_m, head_m),
                           lr_vec2_raise (a_m, head_m) };

    return lr_sun_patch (corner_m, 4, lr_vec2_raise (lr_vec2_scale (lr_vec2_left (along), -1.0), 0.0), way, 0.0, patch_m);
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
