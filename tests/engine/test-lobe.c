/* test-lobe.c - how a lamp's intensity falls off from its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: closed forms, worked out with another program.
 */

#include "lobe.h"

#include "check.h"

typedef struct
{
  const char *name;
  double      beam_deg;
  double      lobe, field_deg, sr; /* expected; flux for each candela */
} LobeCase;

/* n = ln 0.5 / ln cos (b / 2), field 2 acos (0.1^(1/n)), 2 pi / (n + 1) */
static const LobeCase lobe_cases[] = {
  { "10", 10.0, 181.806, 18.199, 0.034371 },
  { "30", 30.0, 19.9937, 53.946, 0.299289 },
  { "60", 60.0, 4.81884, 103.349, 1.079800 },
  { "90", 90.0, 2.0, 143.130, 2.094395 },
  { "120", 120.0, 1.0, 168.522, 3.141593 },
};

static void
test_lobe (gconstpointer data)
{
  const LobeCase *c = data;
  LrLobe lobe;

  g_assert_true (lr_lobe_init (&lobe, c->beam_deg * LR_DEG, 0.0));
  assert_within (lobe.power, c->lobe, 1e-4);
  assert_within (lr_lobe_field_rad (&lobe) / LR_DEG, c->field_deg, 1e-4);
  assert_within (lr_lobe_sr (&lobe), c->sr, 1e-4);
  assert_near (lr_lobe_relative (&lobe, cos (0.5 * c->beam_deg * LR_DEG)), 0.5, 1e-12);
}

/* sqrt (ln 10 / ln 2) = 1.82262 between the angles makes it exp (-4 ln 2 (a / b)^2), whose flux by quadrature is this */
static const struct { double beam_deg, sr; } gauss_cases[] = {
  { 10.0, 0.034453 }, { 30.0, 0.305574 }, { 60.0, 1.162385 },
};

static void
test_gauss (void)
{
  LrLobe lobe;

  for (gsize i = 0; i < G_N_ELEMENTS (gauss_cases); i++)
    {
      double beam_rad = gauss_cases[i].beam_deg * LR_DEG;

      g_assert_true (lr_lobe_init (&lobe, beam_rad, beam_rad * sqrt (log (10.0) / log (2.0))));
      assert_within (lobe.sharpness, 2.0, 1e-9);
      assert_within (lr_lobe_sr (&lobe), gauss_cases[i].sr, 1e-5);
    }
  assert_near (lr_lobe_relative (&lobe, cos (20.0 * LR_DEG)), 0.73487, 1e-5);
}

/* By definition half at the edge of the beam and a tenth at that of the field. As the edge sharpens the flux nears that of an even
 * cone, 2 pi (1 - cos (beam / 2)) (closed form) */
static void
test_edges (void)
{
  static const double ratios[] = { 1.05, 1.2, 1.5, 2.0 };
  LrLobe lobe;

  for (gsize i = 0; i < G_N_ELEMENTS (ratios); i++)
    {
      double beam_rad = 40.0 * LR_DEG, field_rad = ratios[i] * beam_rad;

      g_assert_true (lr_lobe_init (&lobe, beam_rad, field_rad));
      assert_near (lr_lobe_relative (&lobe, 1.0), 1.0, 1e-12);
      assert_near (lr_lobe_relative (&lobe, cos (0.5 * beam_rad)), 0.5, 1e-9);
      assert_near (lr_lobe_relative (&lobe, cos (0.5 * field_rad)), 0.1, 1e-9);
      g_assert_cmpfloat (lr_lobe_relative (&lobe, -0.1), ==, 0.0);
      assert_within (lr_lobe_field_rad (&lobe), field_rad, 1e-9);
    }
  g_assert_true (lr_lobe_init (&lobe, 40.0 * LR_DEG, 1.02 * 40.0 * LR_DEG));
  assert_within (lr_lobe_sr (&lobe), 2.0 * LR_PI * (1.0 - cos (20.0 * LR_DEG)), 1e-2);
}

static void
test_domain (void)
{
  LrLobe lobe = { .power = UNTOUCHED };

  for (gsize i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_lobe_init (&lobe, not_positive[i], 0.0));
      if (not_positive[i] != 0.0)
        g_assert_false (lr_lobe_init (&lobe, 1.0, not_positive[i]));
    }
  g_assert_false (lr_lobe_init (&lobe, LR_PI, 0.0));
  g_assert_false (lr_lobe_init (&lobe, 1.0, 1.0)); /* the field is no wider than the beam */
  g_assert_cmpfloat (lobe.power, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/lobe/lobe", lobe_cases, test_lobe);
  g_test_add_func ("/lobe/gauss", test_gauss);
  g_test_add_func ("/lobe/edges", test_edges);
  g_test_add_func ("/lobe/domain", test_domain);

  return g_test_run ();
}
