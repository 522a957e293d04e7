/* wall_shadows.c - shadows that people and equipment throw on the walls that cameras see
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a net over the part of a wall that cameras see it is looked from each point at each lamp: what people and equipment cover of it is the
 * light that is missing there. So a shadow is as deep as the lamp is strong at that place, and as soft as it is large. What such things
 * keep of the room's own light is not told anew. A lamp does not stand in its own light.
 *
 * A shadow is told as deep as it is over a five-hundredth of the picture, which is the least that is looked at (common practice, no source).
 */

#include "wall_shadows.h"

#include "cast.h"
#include "shadow_casters.h"

#define BORDER 9             /* places looked at along a frame's edges, to find what of a wall it holds */
#define ROUND_FRAME 0.2      /* so much round the frame is looked at, in shares of it: what is recorded and not delivered */
#define LEAST_STEP_M 0.04
#define OFF_M 0.004
#define MOST_LEFT_OUT 0.98   /* of the light */
#define LEAST_SHARE 0.002
#define LEAST_STOPS 0.1
#define MOST_STOPS 6.0
#define DEPTH_STEP 0.1
#define N_DEPTHS 60
#define LEAST_LOSS 0.02      /* of the light there: less is not looked at */

/* Of a shadow in a picture: its share of it by depth, and the deepest place of each depth */
typedef struct
{
  double depth_stops;
  int    wall;
  LrVec3 at_m, past_m;
  LrVec3  sum_m;    /* of its places on that wall by their share of the picture, and that share */
  double  sum_share;
} Place;

typedef struct
{
  double share[N_DEPTHS];
  Place  place[N_DEPTHS];
} Found;

/* A net over part of a wall: n by m points, the first and the last on the part's edges */
typedef struct
{
  int    wall;
  LrVec2 from_m, along, inward;
  double length_m, height_m;
  double s0, s1, z0, z1;     /* [m] along and up */
  guint  n, m;
} Net;

typedef struct
{
  int    wall;
  double along_m, z_m;
} WallHit;

typedef struct
{
  const LrShadowTask *task;
  LrShadowCasters *casters;
  Found   **found;           /* (nullable), by source, thing and camera */
  double   *lx;              /* what each source gives a place past what is fixed; < 0: not known */
  GArray   *hits;            /* WallHit */
  guint     n_cameras;
} Search;

static LrVec3
point_on (const Net *net,
          double     s_m,
          double     z_m)
{
  return lr_vec2_raise (lr_vec2_along (lr_vec2_along (net->from_m, net->along, s_m), net->inward, OFF_M), z_m);
}

/* Grows the net by where a ray through the frame meets its wall */
static void
grow_by_hit (Net           *net,
             const WallHit *hit)
{
  if (hit->wall != net->wall)
    return;

  net->s0 = fmin (net->s0, hit->along_m);
  net->s1 = fmax (net->s1, hit->along_m);
  net->z0 = fmin (net->z0, hit->z_m);
  net->z1 = fmax (net->z1, hit->z_m);
}

/* Where rays all over the frames and round them meet walls */
static void
find_hits (Search *search)
{
  const LrStudy *study = search->task->study;
  const LrRoom *room = study->setup->room;

  search->hits = g_array_new (FALSE, FALSE, sizeof (WallHit));
  for (guint i = 0; i < search->n_cameras; i++)
    {
      const LrProjection *p = &g_array_index (study->cameras, LrCameraReading, i).projection;

      if (!lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (p->eye_m)))
        continue;
      for (int k = 0; k < BORDER * BORDER; k++)
        {
          LrVec3 ray = lr_projection_ray (p, -ROUND_FRAME + (1.0 + 2.0 * ROUND_FRAME) * (k % BORDER) / (BORDER - 1),
                                          -ROUND_FRAME + (1.0 + 2.0 * ROUND_FRAME) * (k / BORDER) / (BORDER - 1));
          LrVec2 flat = lr_vec3_flat (ray);
          double length = lr_vec2_length (flat);
          LrRayHit hit;

          if (length > 1e-6 && lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (p->eye_m), flat, &hit))
            g_array_append_val (search->hits, ((WallHit) { (int) hit.edge, hit.along_m,
                                                           CLAMP (p->eye_m.z + ray.z * hit.distance_m / length, 0.0, room->height_m) }));
        }
    }
}

/* FALSE: no camera sees the wall */
static gboolean
lay_net (const Search *search,
         int           wall,
         Net          *net)
{
  const LrStudy *study = search->task->study;
  const LrRoom *room = study->setup->room;
  double pad_m, step_m;

  *net = (Net) { .wall = wall, .height_m = room->height_m, .s0 = HUGE_VAL, .s1 = -HUGE_VAL, .z0 = HUGE_VAL, .z1 = -HUGE_VAL };
  if (!lr_room_wall (room, wall, &net->from_m, &net->along, &net->length_m))
    return FALSE;

  net->inward = lr_vec2_left (net->along);
  for (guint i = 0; i < search->hits->len; i++)
    grow_by_hit (net, &g_array_index (search->hits, WallHit, i));
  if (!(net->s1 >= net->s0))
    return FALSE;

  /* between two rays one side of a corner may lie */
  pad_m = fmax (0.1, (net->s1 - net->s0) / (BORDER - 1));
  net->s0 = fmax (0.0, net->s0 - pad_m);
  net->s1 = fmin (net->length_m, net->s1 + pad_m);
  net->z0 = fmax (0.0, net->z0 - 0.1);
  net->z1 = fmin (net->height_m, net->z1 + 0.1);
  step_m = fmax (LEAST_STEP_M, sqrt ((net->s1 - net->s0) * (net->z1 - net->z0) / search->task->most_points));
  net->n = 2 + (guint) ((net->s1 - net->s0) / step_m);
  net->m = 2 + (guint) ((net->z1 - net->z0) / step_m);
  return net->s1 > net->s0 && net->z1 > net->z0;
}

/* FALSE: the camera does not see the place; else how much of its picture a square metre there fills */
static gboolean
is_in_picture (const Search          *search,
               const LrCameraReading *camera,
               LrVec3                 at_m,
               LrVec3                 normal,
               double                *per_m2)
{
  const LrProjection *p = &camera->projection;
  LrFramePoint place;

  if (!lr_projection_point (p, at_m, &place) || place.across < 0.0 || place.across > 1.0 || place.down < 0.0 || place.down > 1.0
      || !lr_light_shade_is_clear (search->task->shade, p->eye_m, at_m, NULL))
    return FALSE;

  *per_m2 = fabs (lr_vec3_dot (normal, lr_vec3_sub (at_m, p->eye_m))) / (4.0 * p->half_width * p->half_height * pow (place.depth_m, 3.0));
  return TRUE;
}

/* What one lamp's light lacks at a place; what each thing keeps away is added to the losses */
static double
lose_of (Search       *search,
         guint         index,
         LrVec3        at_m,
         LrVec3        normal,
         double        light_lx,
         LrShadowLoss *losses,
         guint        *n_losses)
{
  const LrShadowTask *task = search->task;
  const LrLightSource *source = &g_array_index (task->sources, LrLightSource, index);
  guint first = *n_losses;
  double covered = 0.0, lx;

  if (!source->is_sun) /* its shadows are in the walls' light already */
    covered = lr_shadow_covered (search->casters, source, index, task->about, at_m, normal, losses, n_losses);

  /* the light is asked for last, for it takes longest */
  if (!(covered > 0.0) || !lr_emitter_lx (&source->emitter, at_m, normal, &lx) || lx * covered < LEAST_LOSS * light_lx)
    {
      *n_losses = first;
      return 0.0;
    }

  lx = search->lx[index] = lr_light_source_lx (&source->emitter, task->fixed, at_m, normal, NULL, NULL);
  for (guint i = first; i < *n_losses; i++)
    losses[i].lx *= lx;
  return lx * covered;
}

static Found *
find_found (Search             *search,
            const LrShadowLoss *loss,
            guint               camera)
{
  Found **found = &search->found[(loss->source * lr_shadow_casters_n (search->casters) + loss->thing) * search->n_cameras + camera];

  if (*found == NULL)
    *found = g_new0 (Found, 1);
  return *found;
}

/* The deepest place counts, and the middle of all that are about as deep, on the wall of the first */
static void
note_place (Place *place,
            double depth_stops,
            int    wall,
            LrVec3 at_m,
            LrVec3 past_m,
            double share)
{
  if (place->sum_share > 0.0 && wall != place->wall)
    return;

  place->wall = wall;
  place->sum_m = lr_vec3_along (place->sum_m, at_m, share);
  place->sum_share += share;
  if (depth_stops <= place->depth_stops)
    return;

  place->depth_stops = depth_stops;
  place->at_m = at_m;
  place->past_m = past_m;
}

/* Notes each shadow at a place that cameras see */
static void
note_losses (Search             *search,
             const Net          *net,
             LrVec3              at_m,
             double              area_m2,
             double              light_lx,
             const LrShadowLoss *losses,
             guint               n_losses)
{
  LrVec3 normal = lr_vec2_raise (net->inward, 0.0);

  for (guint c = 0; c < search->n_cameras; c++)
    {
      const LrCameraReading *camera = &g_array_index (search->task->study->cameras, LrCameraReading, c);
      double per_m2 = 0.0;
      int is_seen = -1;

      for (guint i = 0; i < n_losses && is_seen != FALSE; i++)
        {
          double depth = log2 ((light_lx + losses[i].lx) / light_lx);
          guint step = (guint) (fmin (depth, MOST_STOPS - DEPTH_STEP) / DEPTH_STEP);
          Found *found;

          if (depth < LEAST_STOPS)
            continue;
          if (is_seen < 0)
            is_seen = is_in_picture (search, camera, at_m, normal, &per_m2);
          if (!is_seen)
            continue;
          found = find_found (search, &losses[i], c);
          found->share[step] += per_m2 * area_m2;
          note_place (&found->place[step], depth, net->wall, at_m, losses[i].past_m, per_m2 * area_m2);
        }
    }
}

/* Without the shadows: what the room gives back, and what comes straight past what is fixed */
static double
unshaded_lx (const Search *search,
             const Net    *net,
             LrVec3        at_m,
             double        s,
             double        t)
{
  const LrShadowTask *task = search->task;
  double lx = lr_wall_light_back_lx (&g_array_index (task->walls, LrWallLight, net->wall), s, t);

  for (guint i = 0; i < task->sources->len; i++)
    {
      if (search->lx[i] < 0.0)
        search->lx[i] = lr_light_source_lx (&g_array_index (task->sources, LrLightSource, i).emitter, task->fixed, at_m,
                                            lr_vec2_raise (net->inward, 0.0), NULL, NULL);
      lx += search->lx[i];
    }
  return lx;
}

/* What the shadows leave of the light at a point of the net, 0 to 1 */
static double
look_at (Search    *search,
         const Net *net,
         guint      i)
{
  double s_m = net->s0 + (net->s1 - net->s0) * (i % net->n) / (net->n - 1.0), z_m = net->z0 + (net->z1 - net->z0) * (i / net->n) / (net->m - 1.0);
  double s = s_m / net->length_m, t = z_m / net->height_m;
  double area_m2 = (net->s1 - net->s0) / (net->n - 1.0) * (net->z1 - net->z0) / (net->m - 1.0);
  double about_lx = lr_wall_light_unshaded_lx (&g_array_index (search->task->walls, LrWallLight, net->wall), s, t);
  LrVec3 at_m = point_on (net, s_m, z_m);
  double lost_lx = 0.0, light_lx;
  LrShadowLoss losses[LR_MOST_LOSSES];
  guint n_losses = 0;

  for (guint j = 0; j < search->task->sources->len; j++)
    {
      search->lx[j] = -1.0;
      lost_lx += lose_of (search, j, at_m, lr_vec2_raise (net->inward, 0.0), about_lx, losses, &n_losses);
    }
  if (n_losses == 0)
    return 1.0;

  light_lx = unshaded_lx (search, net, at_m, s, t);
  if (!(light_lx > 0.0))
    return 1.0;

  lost_lx = fmin (lost_lx, MOST_LEFT_OUT * light_lx);
  note_losses (search, net, at_m, area_m2, light_lx - lost_lx, losses, n_losses);
  return 1.0 - lost_lx / light_lx;
}

/* The part of the net where light is missing, and a point more round it; FALSE: nowhere */
static gboolean
find_shaded (const Net    *net,
             const double *left,
             guint        *i0,
             guint        *i1,
             guint        *j0,
             guint        *j1)
{
  *i0 = net->n;
  *j0 = net->m;
  *i1 = *j1 = 0;
  for (guint k = 0; k < net->n * net->m; k++)
    if (left[k] < 0.985)
      {
        *i0 = MIN (*i0, k % net->n);
        *i1 = MAX (*i1, k % net->n);
        *j0 = MIN (*j0, k / net->n);
        *j1 = MAX (*j1, k / net->n);
      }
  if (*i0 > *i1)
    return FALSE;

  *i0 = *i0 > 0 ? *i0 - 1 : 0;
  *j0 = *j0 > 0 ? *j0 - 1 : 0;
  *i1 = MIN (*i1 + 1, net->n - 1);
  *j1 = MIN (*j1 + 1, net->m - 1);
  return TRUE;
}

static void
keep_shaded (const Search *search,
             const Net    *net,
             const double *left)
{
  LrWallLight *light = &g_array_index (search->task->walls, LrWallLight, net->wall);
  double ds = (net->s1 - net->s0) / (net->n - 1.0), dz = (net->z1 - net->z0) / (net->m - 1.0);
  guint i0, i1, j0, j1;

  if (!find_shaded (net, left, &i0, &i1, &j0, &j1))
    return;

  light->shade = (LrWallShade) {
    .n = i1 - i0 + 1, .m = j1 - j0 + 1,
    .along0 = (net->s0 + i0 * ds) / net->length_m, .along1 = (net->s0 + i1 * ds) / net->length_m,
    .up0 = (net->z0 + j0 * dz) / net->height_m, .up1 = (net->z0 + j1 * dz) / net->height_m,
  };
  light->shade.left = g_new (double, light->shade.n * light->shade.m);
  for (guint k = 0; k < light->shade.n * light->shade.m; k++)
    light->shade.left[k] = left[(j0 + k / light->shade.n) * net->n + i0 + k % light->shade.n];
  lr_wall_light_take_shade (light);
}

/* How far on the wall, to the right as the camera sees it, from where it sees the middle of its subject's head */
static double
aside_m (const LrStudy  *study,
         const LrShadow *shadow)
{
  const LrCameraReading *camera = lr_study_find_camera (study, shadow->camera->item->id);
  LrVec2 from_m, along;
  double length_m, aside;
  LrVec3 head_m, at_m;

  if (!camera->has_subject || !lr_room_wall (study->setup->room, shadow->wall, &from_m, &along, &length_m))
    return NAN;

  head_m = lr_vec2_raise (camera->subject->at_m, camera->subject->body.crown_m - 0.5 * camera->subject->body.head_height_m);
  if (!lr_cast_point (camera->projection.eye_m, head_m, lr_vec2_raise (from_m, 0.0), lr_vec2_raise (lr_vec2_left (along), 0.0), &at_m))
    return NAN;

  aside = lr_vec2_dot (lr_vec3_flat (lr_vec3_sub (shadow->at_m, at_m)), along);
  return lr_vec2_dot (along, lr_vec3_flat (camera->projection.right)) > 0.0 ? aside : -aside;
}

/* As deep as it is over the least share of the picture that counts; FALSE: it is never so large */
static gboolean
read_found (const Search *search,
            guint         index,
            LrShadow     *shadow)
{
  const LrStudy *study = search->task->study;
  const Found *found = search->found[index];
  double limit = study->plan->limits.value[LR_LIMIT_SHADOW_DEPTH], share = 0.0;
  guint pair = index / search->n_cameras, step = N_DEPTHS;
  const LrLightSource *source = &g_array_index (search->task->sources, LrLightSource, pair / lr_shadow_casters_n (search->casters));
  LrVec2 from_m, along;
  double length_m;

  *shadow = (LrShadow) { .source = source->placed, .thing = lr_shadow_caster (search->casters, pair % lr_shadow_casters_n (search->casters)),
                         .camera = g_array_index (study->cameras, LrCameraReading, index % search->n_cameras).placed };
  while (step > 0 && share < LEAST_SHARE)
    share += found->share[--step];
  if (share < LEAST_SHARE || !lr_room_wall (study->setup->room, found->place[step].wall, &from_m, &along, &length_m))
    return FALSE;

  for (guint i = 0; i < N_DEPTHS; i++)
    if (found->place[i].depth_stops > limit)
      shadow->share += found->share[i];
  shadow->wall = found->place[step].wall;
  shadow->at_m = lr_vec3_scale (found->place[step].sum_m, 1.0 / found->place[step].sum_share);
  shadow->depth_stops = found->place[step].depth_stops;
  lr_half_shadow_m (&source->emitter, lr_light_source_size_m (source), found->place[step].past_m, found->place[step].at_m,
                    lr_vec2_raise (lr_vec2_left (along), 0.0), &shadow->edge_m);
  shadow->aside_m = aside_m (study, shadow);
  return TRUE;
}

static GArray *
collect (const Search *search)
{
  GArray *shadows = g_array_new (FALSE, FALSE, sizeof (LrShadow));
  LrShadow shadow;

  for (guint i = 0; i < search->task->sources->len * lr_shadow_casters_n (search->casters) * search->n_cameras; i++)
    if (search->found[i] != NULL && read_found (search, i, &shadow))
      g_array_append_val (shadows, shadow);
  return shadows;
}

/* FALSE: cancelled */
static gboolean
search_wall (Search       *search,
             int           wall,
             GCancellable *cancellable)
{
  g_autofree double *left = NULL;
  Net net;

  if (g_array_index (search->task->walls, LrWallLight, wall).n == 0 || !lay_net (search, wall, &net))
    return TRUE;

  left = g_new (double, net.n * net.m);
  for (guint i = 0; i < net.n * net.m; i++)
    {
      if (i % net.n == 0 && g_cancellable_is_cancelled (cancellable))
        return FALSE;
      left[i] = look_at (search, &net, i);
    }
  if (search->task->about == NULL)
    keep_shaded (search, &net, left);
  return TRUE;
}

/**
 * lr_wall_shadows:
 * @task: what to look for
 * @cancellable: (nullable): ends it early
 *
 * Returns: (transfer full) (element-type LrShadow) (nullable): what cameras see of shadows, the faint ones too; %NULL when cancelled
 */
GArray *
lr_wall_shadows (const LrShadowTask *task,
                 GCancellable       *cancellable)
{
  Search search = {
    .task = task,
    .casters = lr_shadow_casters_new (task->study),
    .n_cameras = task->study->cameras->len,
  };
  gboolean is_done = TRUE;
  GArray *shadows = NULL;
  guint n;

  n = task->sources->len * lr_shadow_casters_n (search.casters) * search.n_cameras;
  search.found = g_new0 (Found *, n + 1);
  find_hits (&search);
  search.lx = g_new (double, task->sources->len + 1);
  for (guint i = 0; is_done && i < task->walls->len; i++)
    is_done = search_wall (&search, (int) i, cancellable);
  if (is_done)
    shadows = collect (&search);
  for (guint i = 0; i < n; i++)
    g_free (search.found[i]);
  g_free (search.found);
  g_free (search.lx);
  g_array_unref (search.hits);
  lr_shadow_casters_free (search.casters);
  return shadows;
}

/**
 * lr_shadow_is_seen:
 * @shadow: a shadow
 * @limit_stops: from how deep on one is told
 *
 * Returns: whether it is deep enough
 */
gboolean
lr_shadow_is_seen (const LrShadow *shadow,
                   double          limit_stops)
{
  return shadow->depth_stops > limit_stops;
}
