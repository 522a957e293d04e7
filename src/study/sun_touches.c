/* sun_touches.c - what the sun touches over the shoot, and when
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the sun is is worked out every ten minutes and taken evenly between: within a hundredth of a degree. A head, a trunk and a lens
 * are balls, looked at each minute: the sun reaches one if any of it lies in the beam of a window and some of a few points of it is not
 * shaded by furniture and panels: people and lamps may move. Patches on walls and tables are looked at every few minutes, and their first
 * and last minute sought between; one that comes and goes within that time is missed. What stands before them is not looked at: the sun may
 * be on a part of the wall that a person hides. Gaps of a few minutes are passed over.
 */

#include "sun_touches.h"

#include "light_shade.h"
#include "silhouette.h"
#include "sun_patches.h"

#define KNOT_MIN 10
#define STEP_MIN 4
#define GAP_MIN 4            /* as long is taken as one span */
#define LENS_RADIUS_M 0.03
#define INTO_LENS_RAD (60.0 * LR_DEG) /* off the axis, from which it veils a picture (common practice, no source) */
#define LEAST_AREA 0.004     /* of the frame */
#define NEAR_M 0.05          /* before a lens */

typedef struct
{
  const LrStudy *study;
  LrLightShade  *shade;    /* made when it is needed */
  GArray        *patches;  /* for use again and again */
  int            from, to;
  LrVec3        *way;      /* for each minute; z <= 0: it is down */
} Day;

typedef struct
{
  LrSunThing      thing;
  const LrPlaced *placed, *window;
  const LrCameraReading *camera; /* of a background, a lens */
  LrSunOpening    opening;
  LrVec3          middle_m;      /* of a ball */
  double          radius_m;
} Query;

/* As high as the air lifts it, also under the horizon */
static gboolean
knot_way (const LrStudy *study,
          int            minute,
          LrVec3        *way)
{
  LrSunPlace sun;

  if (!lr_study_sun_at (study, minute, &sun))
    return FALSE;

  *way = lr_sun_way (sun.altitude_rad + lr_sun_refraction_rad (sun.altitude_rad), sun.azimuth_rad, study->setup->room->north_rad);
  return TRUE;
}

static gboolean
find_ways (Day *day)
{
  LrVec3 here, next;

  if (!knot_way (day->study, day->from, &here))
    return FALSE;

  for (int knot = day->from; knot <= day->to; knot += KNOT_MIN)
    {
      if (!knot_way (day->study, knot + KNOT_MIN, &next))
        return FALSE;
      for (int k = 0; k < KNOT_MIN && knot + k <= day->to; k++)
        {
          LrVec3 way = lr_vec3_along (here, lr_vec3_sub (next, here), (double) k / KNOT_MIN);

          day->way[knot + k - day->from] = lr_vec3_scale (way, 1.0 / lr_vec3_length (way));
        }
      here = next;
    }
  return TRUE;
}

/* Where the way from a point meets the plane of the window's wall; TRUE: within what is open of it */
static gboolean
find_entry (const LrSunOpening *opening,
            LrVec3              point_m,
            LrVec3              way,
            LrVec3             *entry_m)
{
  double off_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (point_m), opening->at_m), opening->inward);

  *entry_m = lr_vec3_along (point_m, way, off_m / -lr_vec2_dot (lr_vec3_flat (way), opening->inward));
  return lr_sun_opening_holds (opening, point_m, 0.0, way);
}

/* What is open that is nearest to a place on the wall */
static LrVec3
into_opening (const LrSunOpening *opening,
              LrVec3              at_m)
{
  double along_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (at_m), opening->at_m), opening->along);

  return lr_vec2_raise (lr_vec2_along (opening->at_m, opening->along, CLAMP (along_m, 0.0, opening->width_m)),
                        CLAMP (at_m.z, opening->sill_m, opening->head_m));
}

static gboolean
is_clear (Day         *day,
          const Query *query,
          LrVec3       point_m,
          LrVec3       entry_m)
{
  if (day->shade == NULL)
    day->shade = lr_light_shade_new_fixed (day->study);
  return lr_light_shade_is_clear (day->shade, point_m, entry_m, query->placed);
}

/* Some of a few of its points, or the one that is next to the edge of the beam, is in the sun */
static gboolean
reaches_ball (Day         *day,
              const Query *query,
              LrVec3       way)
{
  static const struct { double aside, up; } points[] = { { 0.0, 0.0 }, { 0.8, 0.0 }, { -0.8, 0.0 }, { 0.0, 0.8 }, { 0.0, -0.8 } };
  LrVec2 flat = lr_vec3_flat (way);
  LrVec3 aside = lr_vec2_raise (lr_vec2_scale (lr_vec2_left (flat), 1.0 / lr_vec2_length (flat)), 0.0), up = lr_vec3_cross (way, aside);
  LrVec3 entry_m;

  if (!lr_sun_opening_holds (&query->opening, query->middle_m, query->radius_m, way))
    return FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (points); i++)
    {
      LrVec3 at_m = lr_vec3_along (lr_vec3_along (query->middle_m, aside, points[i].aside * query->radius_m), up, points[i].up * query->radius_m);

      if (find_entry (&query->opening, at_m, way, &entry_m) && is_clear (day, query, at_m, entry_m))
        return TRUE;
    }
  if (find_entry (&query->opening, query->middle_m, way, &entry_m))
    return FALSE;

  entry_m = into_opening (&query->opening, entry_m);
  return is_clear (day, query, lr_vec3_along (entry_m, way, lr_vec3_dot (lr_vec3_sub (query->middle_m, entry_m), way)), entry_m);
}

/* What of a patch is in the frame, as a share of it; @middle: of that part */
static double
share_of_frame (const LrCameraReading *camera,
                const LrSunPatch      *patch,
                LrVec2                *middle)
{
  static const LrFrameBox frame = { 0.0, 1.0, 0.0, 1.0 };
  const LrProjection *p = &camera->projection;
  LrVec2 seen[2 * LR_BEAM_CORNERS], kept[LR_SILHOUETTE_MAX];
  gsize n = 0, n_kept;

  for (gsize i = 0; i < patch->n; i++)
    {
      LrVec3 ends_m[2] = { patch->corner_m[i], patch->corner_m[(i + 1) % patch->n] };
      double a = lr_vec3_dot (lr_vec3_sub (ends_m[0], p->eye_m), p->forward) - NEAR_M;
      double b = lr_vec3_dot (lr_vec3_sub (ends_m[1], p->eye_m), p->forward) - NEAR_M;
      LrFramePoint place;

      if (a >= 0.0 && lr_projection_point (p, ends_m[0], &place))
        seen[n++] = lr_vec2 (place.across, place.down);
      if ((a >= 0.0) != (b >= 0.0) && lr_projection_point (p, lr_vec3_along (ends_m[0], lr_vec3_sub (ends_m[1], ends_m[0]), a / (a - b)), &place))
        seen[n++] = lr_vec2 (place.across, place.down);
    }
  n_kept = n >= 3 ? lr_frame_clip (seen, n, &frame, kept, LR_SILHOUETTE_MAX) : 0;
  if (n_kept < 3)
    return 0.0;

  *middle = lr_polygon_centroid_m (kept, n_kept);
  return fabs (lr_polygon_area_m2 (kept, n_kept));
}

/* Whether the wall that is seen there is that one */
static gboolean
sees_wall (const LrRoom          *room,
           const LrCameraReading *camera,
           LrVec2                 at,
           int                    wall)
{
  LrVec2 ray = lr_vec3_flat (lr_projection_ray (&camera->projection, at.x, at.y));
  LrRayHit hit;

  return lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (camera->projection.eye_m), ray, &hit) && (int) hit.edge == wall;
}

static gboolean
shows (const Day        *day,
       const Query      *query,
       const LrSunPatch *patch)
{
  for (guint i = 0; i < day->study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (day->study->cameras, LrCameraReading, i);
      LrVec2 middle;

      if (query->camera != NULL && query->camera != camera)
        continue;
      if (share_of_frame (camera, patch, &middle) > LEAST_AREA
          && (patch->ground != LR_SUN_ON_WALL || sees_wall (day->study->setup->room, camera, middle, patch->wall)))
        return TRUE;
    }
  return FALSE;
}

static gboolean
touches (Day         *day,
         const Query *query,
         int          minute)
{
  LrVec3 way = day->way[minute - day->from];

  if (!(way.z > 0.0) || !(lr_vec2_dot (lr_vec3_flat (way), query->opening.inward) < 0.0))
    return FALSE;
  if (query->radius_m > 0.0)
    return (query->thing != LR_SUN_LENS || lr_vec3_dot (way, query->camera->projection.forward) > cos (INTO_LENS_RAD))
           && reaches_ball (day, query, way);

  g_array_set_size (day->patches, 0);
  lr_sun_patches_add (day->patches, day->study, query->window, &query->opening, way,
                      1u << (query->thing == LR_SUN_TABLE ? LR_SUN_ON_TOP : LR_SUN_ON_WALL), query->placed);
  for (guint i = 0; i < day->patches->len; i++)
    if (shows (day, query, &g_array_index (day->patches, LrSunPatch, i)))
      return TRUE;
  return FALSE;
}

/* The minute next to @in, towards @out, at which it still touches */
static int
find_edge (Day         *day,
           const Query *query,
           int          in,
           int          out)
{
  while (ABS (in - out) > 1)
    {
      int middle = (in + out) / 2;

      if (touches (day, query, middle))
        in = middle;
      else
        out = middle;
    }
  return in;
}

static void
add_span (LrSunTouch *touch,
          int         first,
          int         last)
{
  if (touch->n > 0 && (first - touch->span[touch->n - 1].last <= GAP_MIN || touch->n == LR_SUN_SPANS))
    {
      touch->span[touch->n - 1].last = last;
      return;
    }
  touch->span[touch->n].first = first;
  touch->span[touch->n++].last = last;
}

/* Of the first patch that shows; the patches are of a minute in which one does */
static LrVec2
place_of_patch (const Day   *day,
                const Query *query)
{
  for (guint i = 0; i < day->patches->len; i++)
    {
      const LrSunPatch *patch = &g_array_index (day->patches, LrSunPatch, i);
      LrVec2 sum = { 0.0, 0.0 };

      for (gsize k = 0; k < patch->n; k++)
        sum = lr_vec2_add (sum, lr_vec3_flat (patch->corner_m[k]));
      if (shows (day, query, patch))
        return lr_vec2_scale (sum, 1.0 / (double) patch->n);
    }
  return query->placed->at_m;
}

static void
read_place (Day         *day,
            const Query *query,
            LrSunTouch  *touch)
{
  int middle = (touch->span[0].first + touch->span[0].last) / 2;
  LrVec3 way = day->way[middle - day->from];

  touch->at_m = lr_vec3_flat (query->middle_m);
  if (!(query->radius_m > 0.0))
    {
      if (!touches (day, query, middle))
        touches (day, query, touch->span[0].first);
      touch->at_m = place_of_patch (day, query);
    }
  else if (query->thing == LR_SUN_LENS)
    touch->side_rad = acos (CLAMP (lr_vec3_dot (way, query->camera->projection.forward), -1.0, 1.0));
  else
    touch->side_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (lr_vec3_flat (way)) - query->placed->facing_rad);
}

static gboolean
spares_by_half (Day              *day,
                const Query      *query,
                const LrSunTouch *touch,
                int               step)
{
  Query half = *query;

  if (query->window->item->window.blind != LR_BLIND_UP)
    return FALSE;

  half.opening.head_m = 0.5 * (half.opening.sill_m + half.opening.head_m);
  for (guint i = 0; i < touch->n; i++)
    {
      for (int minute = touch->span[i].first; minute < touch->span[i].last; minute += step)
        if (touches (day, &half, minute))
          return FALSE;
      if (touches (day, &half, touch->span[i].last))
        return FALSE;
    }
  return TRUE;
}

static void
ask (Day         *day,
     const Query *query,
     GArray      *found)
{
  LrSunTouch touch = { .thing = query->thing, .placed = query->placed, .window = query->window };
  int step = query->radius_m > 0.0 ? 1 : STEP_MIN, first = -1, before = day->from;

  for (int minute = day->from;; minute = MIN (minute + step, day->to))
    {
      gboolean is_touched = touches (day, query, minute);

      if (is_touched && first < 0)
        first = minute == day->from ? minute : find_edge (day, query, minute, before);
      if (!is_touched && first >= 0)
        {
          add_span (&touch, first, find_edge (day, query, before, minute));
          first = -1;
        }
      before = minute;
      if (minute == day->to)
        break;
    }
  if (first >= 0)
    add_span (&touch, first, day->to);
  if (touch.n == 0)
    return;

  read_place (day, query, &touch);
  touch.is_spared_by_half = spares_by_half (day, query, &touch, step);
  g_array_append_val (found, touch);
}

static void
be_head (Query          *query,
         const LrPlaced *person)
{
  query->thing = LR_SUN_HEAD;
  query->placed = person;
  query->middle_m = person->eyes_m;
  query->radius_m = 0.5 * person->body.head_width_m;
}

static void
be_trunk (Query          *query,
          const LrPlaced *person)
{
  query->thing = LR_SUN_TRUNK;
  query->placed = person;
  query->middle_m = lr_vec2_raise (person->at_m, 0.5 * (person->body.hip_m + person->body.shoulder_m));
  query->radius_m = 0.5 * person->body.shoulder_width_m;
}

static void
ask_subject (Day    *day,
             Query  *query,
             GArray *found)
{
  if (day->study->subject == NULL)
    return;

  be_head (query, day->study->subject);
  ask (day, query, found);
  be_trunk (query, day->study->subject);
  ask (day, query, found);
}

static void
ask_cameras (Day    *day,
             Query  *query,
             GArray *found)
{
  for (guint i = 0; i < day->study->cameras->len; i++)
    {
      query->camera = &g_array_index (day->study->cameras, LrCameraReading, i);
      query->placed = query->camera->placed;
      query->thing = LR_SUN_BACKGROUND;
      query->radius_m = 0.0;
      ask (day, query, found);
      query->thing = LR_SUN_LENS;
      query->middle_m = query->camera->projection.eye_m;
      query->radius_m = LENS_RADIUS_M;
      ask (day, query, found);
    }
  query->camera = NULL;
}

static void
ask_tables (Day    *day,
            Query  *query,
            GArray *found)
{
  query->thing = LR_SUN_TABLE;
  query->radius_m = 0.0;
  for (guint i = 0; i < day->study->placed->len; i++)
    {
      query->placed = &g_array_index (day->study->placed, LrPlaced, i);
      if (query->placed->item->kind == LR_ITEM_FURNITURE && query->placed->item->furniture.form == LR_FURNITURE_TABLE)
        ask (day, query, found);
    }
}

/**
 * lr_sun_touches:
 * @study: a study
 * @from: first minute that is looked at, since midnight of the job's day, by the clocks of the place; may pass 24 h
 * @to: last one
 *
 * Returns: (transfer full) (element-type LrSunTouch): window by window what it touches; empty if that is nothing, or date, time zone and the
 *   place on the earth are not given
 */
GArray *
lr_sun_touches (const LrStudy *study,
                int            from,
                int            to)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (LrSunTouch));
  Day day = { .study = study, .from = MAX (from, 0), .to = to };
  gboolean is_known = FALSE;

  if (day.to < day.from)
    return found;

  for (guint i = 0; i < study->placed->len; i++)
    {
      Query query = { .window = &g_array_index (study->placed, LrPlaced, i) };

      if (!lr_sun_opening (study, query.window, &query.opening))
        continue;
      if (!is_known)
        {
          day.way = g_new (LrVec3, day.to - day.from + 1);
          if (!find_ways (&day))
            break;
          day.patches = g_array_new (FALSE, FALSE, sizeof (LrSunPatch));
          is_known = TRUE;
        }
      ask_subject (&day, &query, found);
      ask_cameras (&day, &query, found);
      ask_tables (&day, &query, found);
    }
  lr_light_shade_free (day.shade);
  g_clear_pointer (&day.patches, g_array_unref);
  g_free (day.way);
  return found;
}

/**
 * lr_sun_is_on:
 * @study: a study
 * @person: one of it
 * @part: %LR_SUN_HEAD or %LR_SUN_TRUNK
 * @way: to the sun, of length 1
 *
 * Returns: whether it is on that part of them through any window
 */
gboolean
lr_sun_is_on (const LrStudy  *study,
              const LrPlaced *person,
              LrSunThing      part,
              LrVec3          way)
{
  Day day = { .study = study };
  gboolean is_on = FALSE;

  for (guint i = 0; i < study->placed->len && !is_on; i++)
    {
      Query query = { .window = &g_array_index (study->placed, LrPlaced, i) };

      if (!lr_sun_opening (study, query.window, &query.opening))
        continue;
      if (part == LR_SUN_HEAD)
        be_head (&query, person);
      else
        be_trunk (&query, person);
      is_on = reaches_ball (&day, &query, way);
    }
  lr_light_shade_free (day.shade);
  return is_on;
}
