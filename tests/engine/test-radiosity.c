/* test-radiosity.c - light that matte surfaces give back to each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: factors of equal and of joined rectangles in closed form (Howell, A Catalog of Radiation Configuration Factors,
 * C-11 and C-14; those of the cube are printed in Incropera and DeWitt too); rooms with one patch a face solved by another program
 * from those factors; the sphere by theory (Sumpner).
 */

#include "radiosity.h"

#include "check.h"

#define MOST 1600

typedef enum { FLOOR, CEILING, SOUTH, NORTH, WEST, EAST, N_FACES } Face;

typedef struct
{
  LrPatch patch[MOST];
  Face    face[MOST];
  double  direct_lx[MOST], lux[MOST], scale[MOST];
  size_t  n;
  float  *exchange;
} Room;

static void
add_face (Room   *room,
          Face    face,
          LrVec3  corner_m,
          LrVec3  across_m,
          LrVec3  up_m,
          size_t  parts,
          double  reflectance)
{
  for (size_t i = 0; i < parts * parts; i++)
    {
      double u = (double) (i % parts) / (double) parts, v = (double) (i / parts) / (double) parts, step = 1.0 / (double) parts;
      LrVec3 a = lr_vec3_along (lr_vec3_along (corner_m, across_m, u), up_m, v);
      LrVec3 b = lr_vec3_along (a, across_m, step);
      LrVec3 corners_m[4] = { a, b, lr_vec3_along (b, up_m, step), lr_vec3_along (a, up_m, step) };

      g_assert_cmpuint (room->n, <, MOST);
      g_assert_true (lr_patch_init (&room->patch[room->n], corners_m, 4, reflectance));
      room->face[room->n++] = face;
    }
}

/* x by y by z, each face of parts by parts patches */
static Room *
make_box (double       x_m,
          double       y_m,
          double       z_m,
          size_t       parts,
          const double reflectance[N_FACES])
{
  Room *room = g_new0 (Room, 1);
  LrVec3 o = { 0.0, 0.0, 0.0 }, x = { x_m, 0.0, 0.0 }, y = { 0.0, y_m, 0.0 }, z = { 0.0, 0.0, z_m };

  add_face (room, FLOOR, o, x, y, parts, reflectance[FLOOR]);
  add_face (room, CEILING, z, y, x, parts, reflectance[CEILING]);
  add_face (room, SOUTH, o, z, x, parts, reflectance[SOUTH]);
  add_face (room, NORTH, y, x, z, parts, reflectance[NORTH]);
  add_face (room, WEST, o, y, z, parts, reflectance[WEST]);
  add_face (room, EAST, x, z, y, parts, reflectance[EAST]);
  room->exchange = g_new0 (float, room->n * room->n);
  lr_exchange_rows (room->patch, room->n, 0, 2, NULL, NULL, room->exchange);
  lr_exchange_rows (room->patch, room->n, 1, 2, NULL, NULL, room->exchange);
  return room;
}

static void
room_free (Room *room)
{
  g_free (room->exchange);
  g_free (room);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Room, room_free)

static double
factor_of (const Room *room,
           Face        from,
           Face        to)
{
  double m2 = 0.0, area_m2 = 0.0;

  for (size_t i = 0; i < room->n; i++)
    {
      if (room->face[i] != from)
        continue;
      area_m2 += room->patch[i].area_m2;
      for (size_t j = 0; j < room->n; j++)
        if (room->face[j] == to)
          m2 += (double) room->exchange[MIN (i, j) * room->n + MAX (i, j)];
    }
  return m2 / area_m2;
}

static double
mean_of (const Room *room,
         Face        face)
{
  double sum = 0.0, area_m2 = 0.0;

  for (size_t i = 0; i < room->n; i++)
    if (room->face[i] == face)
      {
        sum += room->patch[i].area_m2 * room->lux[i];
        area_m2 += room->patch[i].area_m2;
      }
  return sum / area_m2;
}

static const double grey[N_FACES] = { 0.5, 0.5, 0.5, 0.5, 0.5, 0.5 };
static const double light_grey[N_FACES] = { 0.8, 0.8, 0.8, 0.8, 0.8, 0.8 };
static const double usual[N_FACES] = { 0.2, 0.7, 0.5, 0.5, 0.5, 0.5 };

typedef struct
{
  const char *name;
  double      x_m, y_m, z_m; /* in */
  Face        from, to;
  double      factor;        /* expected */
  const char *source;
} FactorCase;

static const FactorCase factor_cases[] = {
  { "cube-facing", 1.0, 1.0, 1.0, FLOOR, CEILING, 0.199825, "C-11, printed 0.1998" },
  { "cube-joined", 1.0, 1.0, 1.0, FLOOR, NORTH, 0.200044, "C-14, printed 0.2" },
  { "flat-facing", 0.1, 0.1, 0.05, FLOOR, CEILING, 0.415253, "C-11, printed 0.4153" },
  { "very-flat-facing", 10.0, 10.0, 1.0, FLOOR, CEILING, 0.826995, "C-11, printed 0.827" },
  { "long-facing", 1.0, 2.0, 1.0, FLOOR, CEILING, 0.285875, "C-11" },
  { "high-joined", 1.0, 1.0, 2.0, FLOOR, NORTH, 0.232853, "C-14, W 1 H 2" },
  { "low-joined", 1.0, 2.0, 1.0, FLOOR, NORTH, 0.116426, "C-14, W 2 H 1" },
  { "room-floor-ceiling", 5.0, 4.0, 2.7, FLOOR, CEILING, 0.350569, "C-11" },
  { "room-floor-long-wall", 5.0, 4.0, 2.7, FLOOR, NORTH, 0.181590, "C-14" },
  { "room-long-wall-short-wall", 5.0, 4.0, 2.7, SOUTH, EAST, 0.145190, "C-14" },
  { "room-short-wall-opposite", 5.0, 4.0, 2.7, WEST, EAST, 0.106929, "C-11" },
};

/* Before any scaling: 8 by 8 patches a face within 0.5 %, one patch a face within 5 % */
static void
test_factor (gconstpointer data)
{
  const FactorCase *c = data;
  g_autoptr (Room) fine = make_box (c->x_m, c->y_m, c->z_m, 8, grey), coarse = make_box (c->x_m, c->y_m, c->z_m, 1, grey);

  g_test_message ("%s: %f and %f", c->source, factor_of (fine, c->from, c->to), factor_of (coarse, c->from, c->to));
  assert_within (factor_of (fine, c->from, c->to), c->factor, 0.005);
  assert_within (factor_of (coarse, c->from, c->to), c->factor, 0.05);
}

static void
solve (Room *room)
{
  lr_exchange_close (room->patch, room->n, room->exchange, room->scale);
  g_assert_cmpuint (lr_radiosity_solve (room->patch, room->n, room->exchange, room->direct_lx, room->lux), >, 0);
}

static void
light_face (Room   *room,
            Face    face,
            double  lux)
{
  for (size_t i = 0; i < room->n; i++)
    if (room->face[i] == face)
      room->direct_lx[i] = lux;
}

static double
absorbed_lm (const Room *room)
{
  double sum = 0.0;

  for (size_t i = 0; i < room->n; i++)
    sum += room->patch[i].area_m2 * (1.0 - room->patch[i].reflectance) * room->lux[i];
  return sum;
}

typedef struct
{
  const char   *name;
  double        x_m, y_m, z_m;             /* in */
  const double *reflectance;
  Face          lit;
  double        lux;
  double        floor, ceiling, long_wall, short_wall; /* expected, one patch a face */
} SolvedCase;

/* Solved from the factors in closed form by another program, one patch a face */
static const SolvedCase solved_cases[] = {
  { "cube-grey", 1.0, 1.0, 1.0, grey, FLOOR, 100.0, 109.0909, 18.17458, 18.18363, 18.18363 },
  { "cube-light", 1.0, 1.0, 1.0, light_grey, FLOOR, 100.0, 155.1724, 68.9551, 68.9681, 68.9681 },
  { "room-lit-below", 5.0, 4.0, 2.7, usual, FLOOR, 100.0, 105.855, 10.661, 10.004, 9.936 },
  { "room-lit-above", 5.0, 4.0, 2.7, usual, CEILING, 100.0, 37.312, 112.356, 30.085, 29.881 },
};

static void
test_solved (gconstpointer data)
{
  const SolvedCase *c = data;
  g_autoptr (Room) room = make_box (c->x_m, c->y_m, c->z_m, 1, c->reflectance);

  light_face (room, c->lit, c->lux);
  solve (room);
  assert_within (mean_of (room, FLOOR), c->floor, 0.005);
  assert_within (mean_of (room, CEILING), c->ceiling, 0.005);
  assert_within (mean_of (room, SOUTH), c->long_wall, 0.005);
  assert_within (mean_of (room, EAST), c->short_wall, 0.005);
  /* what enters is absorbed, but for what single precision holds */
  assert_within (absorbed_lm (room), c->lux * c->x_m * c->y_m, 2e-5);
}

/* Where a ray from inside the box leaves it */
static Face
leave_box (const double size_m[3],
           double       at_m[3],
           const double way[3])
{
  double nearest_m = HUGE_VAL;
  int axis = 0;

  for (int k = 0; k < 3; k++)
    {
      double to_m = way[k] > 0.0 ? (size_m[k] - at_m[k]) / way[k] : way[k] < 0.0 ? -at_m[k] / way[k] : HUGE_VAL;

      if (to_m < nearest_m)
        {
          nearest_m = to_m;
          axis = k;
        }
    }
  for (int k = 0; k < 3; k++)
    at_m[k] = CLAMP (at_m[k] + nearest_m * way[k], 0.0, size_m[k]);
  at_m[axis] = way[axis] > 0.0 ? size_m[axis] : 0.0;
  return (Face[3][2]) { { WEST, EAST }, { SOUTH, NORTH }, { FLOOR, CEILING } }[axis][way[axis] > 0.0];
}

/* Off a matte face: by the cosine from its normal */
static void
scatter (GRand *rand,
         Face   face,
         double way[3])
{
  static const int axes[N_FACES] = { 2, 2, 1, 1, 0, 0 };
  double r = sqrt (g_rand_double (rand)), turn = 2.0 * LR_PI * g_rand_double (rand);
  int axis = axes[face];
  gboolean is_low = face == FLOOR || face == SOUTH || face == WEST;

  way[axis] = (is_low ? 1.0 : -1.0) * sqrt (1.0 - r * r);
  way[(axis + 1) % 3] = r * cos (turn);
  way[(axis + 2) % 3] = r * sin (turn);
}

/* Light followed grain by grain through the box, which knows nothing of patches: means of the faces within 1.5 % */
static void
test_followed (gconstpointer data)
{
  enum { N_GRAINS = 400000 };
  const SolvedCase *c = data;
  const double size_m[3] = { c->x_m, c->y_m, c->z_m }, areas_m2[3] = { c->x_m * c->y_m, c->x_m * c->z_m, c->y_m * c->z_m };
  g_autoptr (Room) room = make_box (c->x_m, c->y_m, c->z_m, 10, c->reflectance);
  g_autoptr (GRand) rand = g_rand_new_with_seed (1951);
  double hits[N_FACES] = { 0.0 };

  for (int i = 0; i < N_GRAINS; i++)
    {
      double at_m[3] = { c->x_m * g_rand_double (rand), c->y_m * g_rand_double (rand), c->lit == FLOOR ? 0.0 : c->z_m }, way[3];
      Face face = c->lit;

      hits[face]++;
      while (g_rand_double (rand) < c->reflectance[face])
        {
          scatter (rand, face, way);
          face = leave_box (size_m, at_m, way);
          hits[face]++;
        }
    }

  light_face (room, c->lit, c->lux);
  solve (room);
  for (Face face = FLOOR; face < N_FACES; face++)
    {
      double followed_lx = hits[face] / N_GRAINS * c->lux * areas_m2[0] / areas_m2[face / 2];

      g_test_message ("%d: %f, followed %f", face, mean_of (room, face), followed_lx);
      assert_within (mean_of (room, face), followed_lx, 0.015);
    }
}

/* Uniform light in a closed room of one reflectance: E0 / (1 - rho), 225.734 lx of 10000 lm on 88.6 m^2 */
static void
test_even (void)
{
  g_autoptr (Room) room = make_box (5.0, 4.0, 2.7, 6, grey);

  for (size_t i = 0; i < room->n; i++)
    room->direct_lx[i] = 10000.0 / 88.6;
  solve (room);
  for (size_t i = 0; i < room->n; i++)
    assert_within (room->lux[i], 225.734, 2e-5);
}

/* An octahedron whose faces are split and blown up to a ball: triangles that look inwards */
static void
add_ball (Room   *room,
          LrVec3  a,
          LrVec3  b,
          LrVec3  c,
          int     splits,
          double  reflectance)
{
  if (splits == 0)
    {
      LrVec3 corners_m[3] = { a, c, b };

      g_assert_cmpuint (room->n, <, MOST);
      g_assert_true (lr_patch_init (&room->patch[room->n++], corners_m, 3, reflectance));
    }
  else
    {
      LrVec3 middles[3] = { lr_vec3_along (a, b, 1.0), lr_vec3_along (b, c, 1.0), lr_vec3_along (c, a, 1.0) };

      for (int i = 0; i < 3; i++)
        middles[i] = lr_vec3_scale (middles[i], 1.0 / lr_vec3_length (middles[i]));
      add_ball (room, a, middles[0], middles[2], splits - 1, reflectance);
      add_ball (room, middles[0], b, middles[1], splits - 1, reflectance);
      add_ball (room, middles[2], middles[1], c, splits - 1, reflectance);
      add_ball (room, middles[0], middles[1], middles[2], splits - 1, reflectance);
    }
}

/* Wherever light enters a white ball, the rest is lit alike: flux rho / (A (1 - rho)), A of the patches. Its faces are flat, so
 * those beside the lit one hardly see it: they count in the mean only */
static void
test_ball (void)
{
  static const double signs[2] = { 1.0, -1.0 };
  g_autoptr (Room) room = g_new0 (Room, 1);
  double area_m2 = 0.0, mean_lx = 0.0, flux_lm, expected_lx;

  for (int i = 0; i < 8; i++)
    {
      LrVec3 x = { signs[i & 1], 0.0, 0.0 }, y = { 0.0, signs[(i >> 1) & 1], 0.0 }, z = { 0.0, 0.0, signs[(i >> 2) & 1] };
      gboolean is_mirrored = x.x * y.y * z.z < 0.0;

      add_ball (room, x, is_mirrored ? z : y, is_mirrored ? y : z, 3, 0.8);
    }
  for (size_t i = 0; i < room->n; i++)
    area_m2 += room->patch[i].area_m2;
  room->exchange = g_new0 (float, room->n * room->n);
  lr_exchange_rows (room->patch, room->n, 0, 1, NULL, NULL, room->exchange);
  room->direct_lx[0] = 1000.0;
  flux_lm = 1000.0 * room->patch[0].area_m2;
  expected_lx = flux_lm * 0.8 / (area_m2 * 0.2);
  solve (room);
  for (size_t i = 1; i < room->n; i++)
    {
      mean_lx += room->patch[i].area_m2 * room->lux[i] / (area_m2 - room->patch[0].area_m2);
      if (lr_vec3_length (lr_vec3_sub (room->patch[i].middle_m, room->patch[0].middle_m)) > 1.0)
        assert_within (room->lux[i], expected_lx, 0.02);
    }
  assert_within (mean_lx, expected_lx, 0.01);
  assert_within (absorbed_lm (room), flux_lm, 2e-5);
}

/* A screen across a box keeps its halves apart */
static bool
is_clear_of_middle (LrVec3      from_m,
                    LrVec3      to_m,
                    const void *data)
{
  const double *at_m = data;

  return (from_m.x < *at_m) == (to_m.x < *at_m);
}

static void
test_screen (void)
{
  static const double middle_m = 2.5;
  g_autoptr (Room) room = make_box (5.0, 4.0, 2.7, 4, grey);

  lr_exchange_rows (room->patch, room->n, 0, 1, is_clear_of_middle, &middle_m, room->exchange);
  room->direct_lx[0] = 100.0; /* on the floor, in the western half */
  solve (room);
  for (size_t i = 0; i < room->n; i++)
    if (room->patch[i].middle_m.x > middle_m)
      g_assert_cmpfloat (room->lux[i], ==, 0.0);
    else
      g_assert_cmpfloat (room->lux[i], >, 0.0);
}

/* In an even room a small face is lit by the walls as they are: rho E, whichever way it turns */
static void
test_point (void)
{
  g_autoptr (Room) room = make_box (5.0, 4.0, 2.7, 4, grey);
  LrVec3 at_m = { 1.3, 2.9, 1.2 };

  for (size_t i = 0; i < room->n; i++)
    room->lux[i] = 300.0;
  for (int k = 0; k < 12; k++)
    {
      LrVec2 turn = lr_vec2_polar (30.0 * k * LR_DEG, cos (0.4));

      assert_within (lr_patches_lx (room->patch, room->n, room->lux, at_m, lr_vec2_raise (turn, sin (0.4)), NULL, NULL), 150.0, 1e-9);
    }
}

/* Two squares that see all of each other, and a third in a gap that sees next to nothing: its row cannot be made to add up, and must not
 * carry the others away. Between the two alone, lit with 1 on one: E1 = 1 + rho E2, E2 = rho E1, so E1 = 1 / (1 - rho^2); by hand */
static void
test_gap (void)
{
  enum { N = 3 };
  const LrVec3 square_m[] = { { 0, 0, 0 }, { 1, 0, 0 }, { 1, 1, 0 }, { 0, 1, 0 } };
  const double direct_lx[N] = { 1.0, 0.0, 0.0 };
  float exchange[N * N] = { 0, 1.0F, 1e-12F, 0, 0, 1e-30F, 0, 0, 0 };
  double scale[N], lux[N];
  LrPatch patch[N];

  for (int i = 0; i < N; i++)
    g_assert_true (lr_patch_init (&patch[i], square_m, 4, 0.5));
  lr_exchange_close (patch, N, exchange, scale);
  g_assert_cmpuint (lr_radiosity_solve (patch, N, exchange, direct_lx, lux), >, 0);
  assert_near (lux[0], 1.0 / (1.0 - 0.25), 1e-3);
  assert_near (lux[1], 0.5 / (1.0 - 0.25), 1e-3);
  g_assert_cmpfloat (lux[2], <, 1e-6);
}

/* Two squares that see all of each other, one lamp on either: by hand E = 1 / (1 - rho1 rho2) on the lit one and rho of that one times as
 * much on the other. Side by side the lamps come out as each does alone */
static void
test_each (void)
{
  enum { N = 2, LAMPS = 2 };
  const LrVec3 square_m[] = { { 0, 0, 0 }, { 1, 0, 0 }, { 1, 1, 0 }, { 0, 1, 0 } };
  const double reflectance[N] = { 0.5, 0.8 }, direct_lx[N * LAMPS] = { 1.0, 0.0, 0.0, 300.0 }, back = 1.0 / (1.0 - 0.5 * 0.8);
  const float exchange[N * N] = { 0, 1, 1, 0 };
  double sum[LAMPS], lux[N * LAMPS];
  LrPatch patch[N];

  for (int i = 0; i < N; i++)
    g_assert_true (lr_patch_init (&patch[i], square_m, 4, reflectance[i]));
  g_assert_cmpuint (lr_radiosity_solve_each (patch, N, exchange, LAMPS, direct_lx, sum, lux), >, 0);
  assert_within (lux[0], back, 1e-4);
  assert_within (lux[LAMPS], 0.5 * back, 1e-4);
  assert_within (lux[LAMPS + 1], 300.0 * back, 1e-6);
  assert_within (lux[1], 0.8 * 300.0 * back, 1e-6);
}

static void
test_refused (void)
{
  LrVec3 line_m[3] = { { 0.0, 0.0, 0.0 }, { 1.0, 0.0, 0.0 }, { 2.0, 0.0, 0.0 } };
  LrVec3 corner_m[3] = { { 0.0, 0.0, 0.0 }, { 1.0, 0.0, 0.0 }, { 0.0, 1.0, 0.0 } };
  LrPatch patch = { .area_m2 = UNTOUCHED };

  g_assert_false (lr_patch_init (&patch, line_m, 3, 0.5));
  g_assert_false (lr_patch_init (&patch, corner_m, 2, 0.5));
  g_assert_false (lr_patch_init (&patch, corner_m, 3, 1.1));
  g_assert_false (lr_patch_init (&patch, corner_m, 3, NAN));
  g_assert_cmpfloat (patch.area_m2, ==, UNTOUCHED);
  g_assert_true (lr_patch_init (&patch, corner_m, 3, 0.5));
  assert_near (patch.area_m2, 0.5, 1e-12);
  assert_near (patch.middle_m.x, 1.0 / 3.0, 1e-12);
  assert_near (patch.normal.z, 1.0, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/radiosity/factor", factor_cases, test_factor);
  add_rows ("/radiosity/solved", solved_cases, test_solved);
  add_rows ("/radiosity/followed", solved_cases, test_followed);
  g_test_add_func ("/radiosity/even", test_even);
  g_test_add_func ("/radiosity/ball", test_ball);
  g_test_add_func ("/radiosity/screen", test_screen);
  g_test_add_func ("/radiosity/point", test_point);
  g_test_add_func ("/radiosity/gap", test_gap);
  g_test_add_func ("/radiosity/each", test_each);
  g_test_add_func ("/radiosity/refused", test_refused);

  return g_test_run ();
}
