/* test-lamp-output.c - what leaves a lamp, by each figure of its output, through a modifier
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: the photometric distance law, fluxes of cosine-power beams (2 pi / (n + 1)), and the exact level before a square
 * panel, 2060.26 lx at 1.5 m from 0.9 by 1.2 m of 5000 cd/m2 (Lambert's formula, by numerical integration).
 */

#include <glib.h>

#include "lamp_output.h"

typedef struct
{
  const char *name;
  LrLight     light;
  double      candela;  /* expected */
} OutputCase;

#define POINT(...) { .form = LR_LIGHT_POINT, .width_m = 0.1, .height_m = 0.1, __VA_ARGS__ }
#define PANEL(...) { .form = LR_LIGHT_PANEL, .width_m = 0.9, .height_m = 1.2, .beam_rad = 120.0 * LR_DEG, __VA_ARGS__ }

static const OutputCase output_cases[] = {
  { "lumen", POINT (.output_lm = 3000.0, .beam_rad = 60.0 * LR_DEG), 2778.29 },
  { "lumen-gauss", POINT (.output_lm = 305.574, .beam_rad = 30.0 * LR_DEG, .field_rad = 54.678 * LR_DEG), 1000.0 },
  { "lumen-of-panel", PANEL (.output_lm = 1000.0 * LR_PI), 1000.0 },
  { "candela-before-lumen", POINT (.output_lm = 3000.0, .output_cd = 5000.0, .beam_rad = 60.0 * LR_DEG), 5000.0 },
  { "level-before-candela", POINT (.output_cd = 5000.0, .output_lx = 1250.0, .output_at_m = 3.0), 11250.0 },
  { "level-without-its-distance", POINT (.output_cd = 5000.0, .output_lx = 1250.0), 5000.0 },
  { "level-near-a-panel", PANEL (.output_lx = 2060.26, .output_at_m = 1.5), 5000.0 * 0.9 * 1.2 },
  { "nothing", PANEL (.output_lm = 0.0), 0.0 },
  { "half-passes", PANEL (.output_cd = 1000.0, .modifier_pass = 0.5), 500.0 },
  /* 2.094395 sr of a beam of 90 degrees over pi of one of 120 */
  { "spread", POINT (.output_cd = 3000.0, .beam_rad = 90.0 * LR_DEG, .modifier_pass = 0.5, .modifier_beam_rad = 120.0 * LR_DEG), 1000.0 },
  { "cut", PANEL (.output_cd = 1000.0, .modifier_pass = 0.5, .modifier_beam_rad = 40.0 * LR_DEG), 500.0 },
};

static LrEmitter
emit (const LrLight *light)
{
  LrItem item = { .kind = LR_ITEM_LIGHT, .light = *light };
  LrEmitter face = { 0 };

  lr_lamp_emit (&item, &face);
  return face;
}

static void
test_output (gconstpointer data)
{
  const OutputCase *c = data;

  g_assert_cmpfloat_with_epsilon (emit (&c->light).candela, c->candela, 2e-5 * c->candela + 1e-9);
}

/* A cut beam holds less flux than the lamp's; a spread one holds what passes: what a grid and a sheet of diffusion do */
static void
test_flux (void)
{
  LrLight light = POINT (.output_lm = 1000.0, .beam_rad = 60.0 * LR_DEG, .modifier_pass = 0.7);

  for (int deg = 10; deg <= 170; deg += 5)
    {
      LrEmitter face;
      double flux_lm;

      light.modifier_beam_rad = deg * LR_DEG;
      face = emit (&light);
      flux_lm = face.candela * lr_lobe_sr (&face.lobe);
      if (deg >= 60)
        g_assert_cmpfloat_with_epsilon (flux_lm, 700.0, 1e-6);
      else
        g_assert_cmpfloat (flux_lm, <, 700.0);
    }
}

static void
test_face (void)
{
  static const struct { int form, shape; double width_m; LrEmitterShape expected; } cases[] = {
    { LR_LIGHT_WIDE, LR_SHAPE_RECTANGLE, 0.9, LR_EMITTER_RECTANGLE }, { LR_LIGHT_WIDE, LR_SHAPE_ROUND, 0.9, LR_EMITTER_DISC },
    { LR_LIGHT_POINT, LR_SHAPE_ROUND, 0.9, LR_EMITTER_POINT }, { LR_LIGHT_PANEL, LR_SHAPE_RECTANGLE, 0.0, LR_EMITTER_POINT },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LrLight light = { .form = cases[i].form, .shape = cases[i].shape, .width_m = cases[i].width_m, .height_m = 1.2 };
      LrEmitter face = emit (&light);

      g_assert_cmpint (face.shape, ==, cases[i].expected);
      g_assert_cmpfloat (face.height_m, ==, cases[i].shape == LR_SHAPE_ROUND ? cases[i].width_m : 1.2);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (output_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/lamp-output/", output_cases[i].name, NULL);

      g_test_add_data_func (path, &output_cases[i], test_output);
    }
  g_test_add_func ("/lamp-output/flux", test_flux);
  g_test_add_func ("/lamp-output/face", test_face);

  return g_test_run ();
}
