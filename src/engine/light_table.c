/* light_table.c - what light a wide lamp gives by the measured intensities of its file, or by a lobe that is not matte
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Intensities are told from afar, as of a point. Near a wide face they are shared out: each part of it gives an equal share of the
 * intensity in the direction from that part. Parts stand at the points of Gauss's rule of two in each cell of a grid (Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 25.4.29), whose cells get smaller the nearer the point is. That is exact for a face that is the same
 * all over, and an approximation for others: what is behind a lens or a grid nobody measures.
 */

#include "light_private.h"

#include "domain.h"

#define POINT_LIKE 0.03 /* a side against the distance, from which on the whole face is a point: true to 0.03 % */
#define CELLS_A_SIDE 3.0 /* for a side as long as the distance */
#define MOST_CELLS 16
#define MATTE_HALF_RAD (60.0 * LR_DEG) /* half of a matte face's beam; for a narrower one there are more cells, up to so many times */
#define MOST_FINER 4.0

/**
 * lr_emitter_take_table:
 * @emitter: a lamp with its place, directions and size
 * @table: (unowned): what its file holds
 * @share: of the file's intensities, >= 0: 1 undimmed
 *
 * The file's intensities count as they stand, of absolute and relative photometry alike: a file's lumens never scale them again. Its size
 * counts before the emitter's, which is kept where the file tells none.
 */
void
lr_emitter_take_table (LrEmitter          *emitter,
                       const LrPhotometry *table,
                       double              share)
{
  bool is_upright = emitter->height_m > emitter->width_m, is_level = lr_photometry_is_level (table, is_upright);
  double length_m, width_m;

  emitter->table = table;
  emitter->share = share;
  emitter->turn_deg = lr_photometry_turn_deg (table, is_upright);
  emitter->candela = share * lr_photometry_candela (table, 0.0, 0.0);
  if (!lr_photometry_size_m (table, &length_m, &width_m))
    return;

  emitter->shape = LR_EMITTER_RECTANGLE;
  emitter->width_m = is_level ? length_m : width_m;
  emitter->height_m = is_level ? width_m : length_m;
}

/**
 * lr_table_is_known:
 * @emitter: a lamp with a table
 *
 * Returns: whether its numbers are in their domains
 */
bool
lr_table_is_known (const LrEmitter *emitter)
{
  return lr_is_at_least_zero (emitter->share) && emitter->shape != LR_EMITTER_DISC
         && (emitter->shape == LR_EMITTER_POINT || (lr_is_at_least_zero (emitter->width_m) && lr_is_at_least_zero (emitter->height_m)));
}

static double
candela_along (const LrEmitter *emitter,
               LrVec3           way)
{
  double v_deg, h_deg;

  if (emitter->table == NULL)
    return emitter->candela * lr_lobe_relative (&emitter->lobe, lr_vec3_dot (way, emitter->axis));

  v_deg = acos (fmin (fmax (lr_vec3_dot (way, emitter->axis), -1.0), 1.0)) / LR_DEG;
  h_deg = emitter->turn_deg + atan2 (lr_vec3_dot (way, emitter->up), lr_vec3_dot (way, emitter->right)) / LR_DEG;

  return emitter->share * lr_photometry_candela (emitter->table, v_deg, h_deg);
}

/* @least_m2: nearer than its root a part is no point any more */
static double
lx_from (const LrEmitter *emitter,
         LrVec3           from_m,
         LrVec3           point_m,
         LrVec3           normal,
         double           least_m2)
{
  LrVec3 way_m = lr_vec3_sub (point_m, from_m);
  double square_m2 = lr_vec3_dot (way_m, way_m), distance_m = sqrt (square_m2), facing = -lr_vec3_dot (way_m, normal);

  if (!(facing > 0.0))
    return 0.0;

  return candela_along (emitter, lr_vec3_scale (way_m, 1.0 / distance_m)) * (facing / distance_m) / fmax (square_m2, least_m2);
}

/**
 * lr_table_lx_from:
 * @emitter: a lamp with a table
 * @from_m: a place of its face [m]
 * @point_m: where it shines [m]
 * @normal: of the face there, of length 1
 *
 * Source: photometric distance law.
 *
 * Returns: what it would give if all of it shone from @from_m [lx]
 */
double
lr_table_lx_from (const LrEmitter *emitter,
                  LrVec3           from_m,
                  LrVec3           point_m,
                  LrVec3           normal)
{
  return lx_from (emitter, from_m, point_m, normal, 0.0);
}

static bool
is_of_disc (const LrEmitter *emitter,
            double           x_m,
            double           y_m)
{
  return emitter->shape != LR_EMITTER_DISC || x_m * x_m + y_m * y_m <= 0.25 * emitter->width_m * emitter->width_m;
}

/* From the nearest place of its face */
static double
nearest_m (const LrEmitter *emitter,
           LrVec3           point_m)
{
  LrVec3 way_m = lr_vec3_sub (point_m, emitter->at_m);
  double x = fmax (0.0, fabs (lr_vec3_dot (way_m, emitter->right)) - 0.5 * emitter->width_m);
  double y = fmax (0.0, fabs (lr_vec3_dot (way_m, emitter->up)) - 0.5 * emitter->height_m), z = lr_vec3_dot (way_m, emitter->axis);

  return sqrt (x * x + y * y + z * z);
}

/* Where the parts of a side stand, from its middle; returns how many */
static int
cut_side (double  side_m,
          double  distance_m,
          double  finer,
          double *place_m)
{
  int n;

  if (!(side_m > POINT_LIKE * distance_m))
    {
      place_m[0] = 0.0;
      return 1;
    }

  n = (int) fmax (1.0, ceil (fmin (finer * CELLS_A_SIDE * side_m / distance_m, MOST_CELLS)));
  for (int i = 0; i < 2 * n; i++)
    place_m[i] = side_m * ((i / 2 + 0.5 + (i % 2 == 0 ? -0.5 : 0.5) / sqrt (3.0)) / n - 0.5);
  return 2 * n;
}

/**
 * lr_parts_lx:
 * @emitter: a lamp with a table or a lobe, known
 * @point_m: where it shines [m], not in it
 * @normal: of the face there, of length 1
 *
 * Source: photometric distance law, summed over the parts of the face.
 *
 * Returns: illuminance [lx], nothing in between
 */
double
lr_parts_lx (const LrEmitter *emitter,
             LrVec3           point_m,
             LrVec3           normal)
{
  double x_m[2 * MOST_CELLS], y_m[2 * MOST_CELLS], distance_m, finer, least_m2, sum = 0.0;
  int n, m, n_parts = 0;

  if (emitter->shape == LR_EMITTER_POINT)
    return lx_from (emitter, emitter->at_m, point_m, normal, 0.0);

  distance_m = nearest_m (emitter, point_m);
  finer = emitter->table != NULL ? 1.0 : fmin (fmax (1.0, 2.0 * MATTE_HALF_RAD / lr_lobe_beam_rad (&emitter->lobe)), MOST_FINER);
  n = cut_side (emitter->width_m, distance_m, finer, x_m);
  m = cut_side (emitter->height_m, distance_m, finer, y_m);
  /* right at a matte part its law ends at pi times its luminance */
  least_m2 = emitter->width_m * emitter->height_m / (n * m) / LR_PI;
  for (int i = 0; i < n; i++)
    for (int j = 0; j < m; j++)
      if (is_of_disc (emitter, x_m[i], y_m[j]))
        {
          sum += lx_from (emitter, lr_vec3_along (lr_vec3_along (emitter->at_m, emitter->right, x_m[i]), emitter->up, y_m[j]), point_m, normal,
                          least_m2);
          n_parts++;
        }
  return sum / n_parts;
}
