/* test-light_table.c - what light a lamp gives by the intensities of its file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tables are written for these tests. Expected values: closed forms worked out beside the check, and the exact panel and lobe of
 * test-light.c, which stand on textbooks.
 */

#include "light.h"

#include "check.h"

#define N_V 181
#define MOST_H 8
#define SIDES { .axis = { 1.0, 0.0, 0.0 }, .right = { 0.0, -1.0, 0.0 }, .up = { 0.0, 0.0, 1.0 } }

typedef struct
{
  LrPhotometry photometry;
  double v_deg[N_V], h_deg[MOST_H], candela[MOST_H * N_V];
} Table;

/* 1000 cd cos^lobe; @lobe < 0: 1000 cd all round */
static void
fill_lobe (Table *table,
           double lobe)
{
  *table = (Table) {
    .photometry = { .n_v = lobe < 0.0 ? N_V : 91, .n_h = 1, .v_deg = table->v_deg, .h_deg = table->h_deg, .candela = table->candela },
  };
  for (size_t i = 0; i < table->photometry.n_v; i++)
    {
      table->v_deg[i] = (double) i;
      table->candela[i] = lobe < 0.0 ? 1000.0 : i == 90 ? 0.0 : 1000.0 * pow (cos ((double) i * LR_DEG), lobe);
    }
}

/* The same all the way down in each plane: 100, 200, 300, 400 cd at 0, 90, 180, 270 */
static void
fill_quarters (Table *table)
{
  *table = (Table) {
    .photometry = { .n_v = 2, .n_h = 4, .v_deg = table->v_deg, .h_deg = table->h_deg, .candela = table->candela },
    .v_deg = { 0.0, 90.0 }, .h_deg = { 0.0, 90.0, 180.0, 270.0 }, .candela = { 100.0, 100.0, 200.0, 200.0, 300.0, 300.0, 400.0, 400.0 },
  };
}

static double
lux_at (const LrEmitter *lamp,
        LrVec3           at_m,
        LrVec3           normal)
{
  double lux = NAN;

  g_assert_true (lr_emitter_lx (lamp, at_m, normal, &lux));
  return lux;
}

typedef struct
{
  const char *name;
  double      lobe, width_m, height_m;
  LrVec3      at_m, normal;
  double      share;   /* of difference */
} LobeCase;

#define TURNED { -1.0, 0.0, 0.0 }
#define UPWARD { 0.0, 0.0, 1.0 }

/* 1 degree between the angles is true to 0.004 % at once the cosine; a narrow lobe is less even between them. Right before a face its
 * finest parts show */
static const LobeCase lobe_cases[] = {
  { "point", 1.0, 0.0, 0.0, { 2.0, 0.0, 0.0 }, TURNED, 1e-4 },
  { "point-aside", 1.0, 0.0, 0.0, { 2.0, 1.5, -1.0 }, TURNED, 1e-4 },
  { "narrow-point", 20.0, 0.0, 0.0, { 2.0, 0.4, 0.2 }, TURNED, 2e-3 },
  { "panel-far", 1.0, 1.0, 0.6, { 40.0, 3.0, 1.0 }, TURNED, 4e-4 },
  { "panel", 1.0, 1.0, 0.6, { 2.0, 0.0, 0.0 }, TURNED, 4e-4 },
  { "panel-aside", 1.0, 1.0, 0.6, { 1.5, 1.2, 0.8 }, TURNED, 4e-4 },
  { "panel-on-the-floor", 1.0, 1.0, 0.6, { 1.0, 0.3, -1.5 }, UPWARD, 4e-4 },
  { "panel-near", 1.0, 1.0, 0.6, { 0.3, 0.1, 0.1 }, TURNED, 4e-3 },
  { "panel-nearer", 1.0, 1.0, 0.6, { 0.12, 0.1, 0.1 }, TURNED, 1e-2 },
  { "long", 1.0, 1.5, 0.05, { 0.6, 0.5, 0.0 }, TURNED, 4e-3 },
  { "long-by-its-end", 1.0, 1.5, 0.05, { 0.2, 0.75, 0.05 }, TURNED, 1e-2 },
};

static void
test_lobe (gconstpointer data)
{
  const LobeCase *c = data;
  LrEmitter lobe = SIDES, lamp;
  Table table;

  fill_lobe (&table, c->lobe);
  lobe.shape = c->width_m > 0.0 ? LR_EMITTER_RECTANGLE : LR_EMITTER_POINT;
  lobe.width_m = c->width_m;
  lobe.height_m = c->height_m;
  lobe.candela = 1000.0;
  lobe.lobe.power = c->lobe;
  lamp = lobe;
  lamp.lobe.power = 0.0;
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  g_assert_cmpint (lamp.shape, ==, lobe.shape);
  g_test_message ("%.6g, %.6g", lux_at (&lamp, c->at_m, c->normal), lux_at (&lobe, c->at_m, c->normal));
  assert_within (lux_at (&lamp, c->at_m, c->normal), lux_at (&lobe, c->at_m, c->normal), c->share);

  /* dimming multiplies */
  lr_emitter_take_table (&lamp, &table.photometry, 0.25);
  assert_within (lux_at (&lamp, c->at_m, c->normal), 0.25 * lux_at (&lobe, c->at_m, c->normal), c->share);
  assert_near (lamp.candela, 250.0, 1e-9);
}

/* A round matte face of radius R gives pi L R^2 / (R^2 + z^2) on its axis, with I = L pi R^2: I / (R^2 + z^2). As a square of its area it is
 * off by 2 (pi / 24 - 1 / 8) of the square of diameter by distance at most */
static void
test_round (void)
{
  LrEmitter lamp = SIDES;
  Table table;

  fill_lobe (&table, 1.0);
  table.photometry.width_m = -0.8;
  lamp.width_m = lamp.height_m = 0.1;
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  g_assert_cmpint (lamp.shape, ==, LR_EMITTER_RECTANGLE);
  for (double z_m = 0.8; z_m < 5.0; z_m *= 1.5)
    assert_within (lux_at (&lamp, lr_vec3 (z_m, 0.0, 0.0), (LrVec3) TURNED), 1000.0 / (0.16 + z_m * z_m), 2e-4 + 0.012 * 0.64 / (z_m * z_m));
}

/* A line that shines alike all round gives I / (d sqrt (d^2 + l^2 / 4)) beside its middle, on a face turned to it; behind it as well */
static void
test_line (void)
{
  LrEmitter lamp = SIDES;
  Table table;

  fill_lobe (&table, -1.0);
  table.photometry.length_m = 1.2;
  lamp.width_m = lamp.height_m = 0.1;
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  for (double d_m = 0.2; d_m < 5.0; d_m *= 2.0)
    {
      double lux = 1000.0 / (d_m * sqrt (d_m * d_m + 0.36));

      assert_within (lux_at (&lamp, lr_vec3 (d_m, 0.0, 0.0), (LrVec3) TURNED), lux, 2e-3);
      assert_within (lux_at (&lamp, lr_vec3 (-d_m, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0)), lux, 2e-3);
    }
}

typedef struct
{
  const char *name;
  bool        is_across;
  double      length_m, width_m;          /* of the file */
  double      drawn_width_m, drawn_height_m;
  double      right, up, left, down;      /* expected [cd] */
} TurnCase;

/* Horizontal angles go anticlockwise from above, that is from behind a lamp that points ahead: right, up, left, down. LM-63 begins along the
 * length, EULUMDAT across it, so that its 90 degrees are along the length */
static const TurnCase turn_cases[] = {
  { "square", false, 0.0, 0.0, 0.6, 0.6, 100.0, 200.0, 300.0, 400.0 },
  { "level", false, 0.0, 0.0, 1.2, 0.3, 100.0, 200.0, 300.0, 400.0 },
  { "upright", false, 0.0, 0.0, 0.3, 1.2, 400.0, 100.0, 200.0, 300.0 },
  { "level-by-file", false, 1.0, 0.2, 1.2, 0.3, 100.0, 200.0, 300.0, 400.0 },
  { "wide-by-file", false, 0.2, 1.0, 1.2, 0.3, 400.0, 100.0, 200.0, 300.0 },
  { "ldt-level", true, 0.0, 0.0, 1.2, 0.3, 400.0, 100.0, 200.0, 300.0 },
  { "ldt-upright", true, 1.0, 0.2, 0.3, 1.2, 300.0, 400.0, 100.0, 200.0 },
};

static void
test_turn (gconstpointer data)
{
  static const LrVec3 ways[] = { { 0.0, -1.0, 0.0 }, { 0.0, 0.0, 1.0 }, { 0.0, 1.0, 0.0 }, { 0.0, 0.0, -1.0 } };
  const TurnCase *c = data;
  const double expected[] = { c->right, c->up, c->left, c->down };
  LrEmitter lamp = SIDES;
  Table table;

  fill_quarters (&table);
  table.photometry.is_across = c->is_across;
  table.photometry.length_m = c->length_m;
  table.photometry.width_m = c->width_m;
  lamp.width_m = c->drawn_width_m;
  lamp.height_m = c->drawn_height_m;
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  if (c->length_m > 0.0)
    {
      g_assert_cmpint (lamp.width_m > lamp.height_m, ==, c->drawn_width_m > c->drawn_height_m);
      assert_near (fmax (lamp.width_m, lamp.height_m), 1.0, 1e-9);
    }

  /* from afar at 45 degrees off the axis: E d^2 = I */
  for (int i = 0; i < 4; i++)
    {
      LrVec3 way = lr_vec3_scale (lr_vec3_add (lamp.axis, ways[i]), sqrt (0.5));

      assert_within (lux_at (&lamp, lr_vec3_scale (way, 100.0), lr_vec3_scale (way, -1.0)) * 1e4, expected[i], 1e-3);
    }
}

/* What falls on a ball about a lamp is all of its light, whatever its size and shape: the flux of the file */
static void
test_flux (void)
{
  const int n = 120;
  LrEmitter lamp = SIDES;
  double sum = 0.0;
  Table table;

  fill_quarters (&table);
  table.photometry.length_m = 0.8;
  table.photometry.width_m = 0.3;
  lamp.width_m = lamp.height_m = 0.5;
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  for (int i = 0; i < n; i++)
    for (int j = 0; j < 2 * n; j++)
      {
        double z = (i + 0.5) / n * 2.0 - 1.0, r = sqrt (1.0 - z * z), turn = LR_PI * j / n;
        LrVec3 way = lr_vec3 (z, r * cos (turn), r * sin (turn));

        sum += lux_at (&lamp, lr_vec3_scale (way, 1.5), lr_vec3_scale (way, -1.0)) * 4.0 * LR_PI * 1.5 * 1.5 / (2.0 * n * n);
      }
  /* 250 cd in the mean over a half ball */
  assert_within (lr_photometry_flux_lm (&table.photometry), 2.0 * LR_PI * 250.0, 1e-9);
  assert_within (sum, 2.0 * LR_PI * 250.0, 0.005);
}

/* The axis of a lobe, and one with nothing in its middle */
static void
test_distance (void)
{
  LrEmitter lamp = SIDES;
  double distance_m = UNTOUCHED;
  Table table;

  fill_lobe (&table, 1.0);
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  g_assert_true (lr_emitter_distance_m (&lamp, 250.0, &distance_m));
  assert_near (distance_m, 2.0, 1e-6); /* sqrt (1000 cd / 250 lx) */

  table.candela[0] = 0.0;
  distance_m = UNTOUCHED;
  g_assert_false (lr_emitter_distance_m (&lamp, 250.0, &distance_m));
  g_assert_cmpfloat (distance_m, ==, UNTOUCHED);
}

static void
test_domain (void)
{
  static const double wrong[] = { -1.0, NAN, HUGE_VAL };
  LrEmitter lamp = SIDES;
  double lux = UNTOUCHED;
  Table table;

  fill_lobe (&table, 1.0);
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      lr_emitter_take_table (&lamp, &table.photometry, wrong[i]);
      g_assert_false (lr_emitter_lx (&lamp, lr_vec3 (1.0, 0.0, 0.0), (LrVec3) TURNED, &lux));
    }
  lr_emitter_take_table (&lamp, &table.photometry, 1.0);
  g_assert_false (lr_emitter_lx (&lamp, lamp.at_m, (LrVec3) TURNED, &lux));
  g_assert_cmpfloat (lux, ==, UNTOUCHED);
  /* a face that is turned away gets nothing */
  g_assert_cmpfloat (lux_at (&lamp, lr_vec3 (1.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0)), ==, 0.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/light-table/lobe", lobe_cases, test_lobe);
  add_rows ("/light-table/turn", turn_cases, test_turn);
  g_test_add_func ("/light-table/round", test_round);
  g_test_add_func ("/light-table/line", test_line);
  g_test_add_func ("/light-table/flux", test_flux);
  g_test_add_func ("/light-table/distance", test_distance);
  g_test_add_func ("/light-table/domain", test_domain);
  return g_test_run ();
}
