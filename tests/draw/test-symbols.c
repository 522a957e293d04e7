/* test-symbols.c - every symbol at its true size, on every ground
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected sizes are the properties of the item itself; of people, the drawn breadths; of what hangs on a wall, its width.
 */

#include "small_room.h"
#include "symbols.h"

#define SCALE 1000.0 /* px to the metre: a line of 2 px is 2 mm */

typedef struct
{
  const char *name;
  LrItemKind  kind;
  int         form;
  const char *key;   /* a property and its value, or NULL */
  double      value;
  double      x0_m, x1_m, y0_m, y1_m; /* expected ink in the item's own frame */
  double      tolerance_m;
} ExtentCase;

static const ExtentCase extent_cases[] = {
  { "person-seated", LR_ITEM_PERSON, LR_ROLE_SUBJECT, NULL, 0, -0.29, 0.673, -0.267, 0.267, 0.004 },
  { "person-standing", LR_ITEM_PERSON, LR_ROLE_OTHER, "posture", LR_POSTURE_STANDING, -0.125, 0.177, -0.268, 0.268, 0.004 },
  /* feet 22 mm round stand on the ring */
  { "camera", LR_ITEM_CAMERA, 0, "stand-radius-mm", 0.48, -0.48, 0.502, -0.48, 0.48, 0.004 },
  { "camera-wide-legs", LR_ITEM_CAMERA, 0, "stand-radius-mm", 0.7, -0.70, 0.722, -0.70, 0.70, 0.004 },
  { "wide-emitter", LR_ITEM_LIGHT, LR_LIGHT_WIDE, "width-mm", 1.2, -0.522, 0.50, -0.60, 0.60, 0.004 },
  { "small-panel", LR_ITEM_LIGHT, LR_LIGHT_PANEL, "width-mm", 0.3, -0.522, 0.50, -0.50, 0.50, 0.004 },
  { "point", LR_ITEM_LIGHT, LR_LIGHT_POINT, "stand-radius-mm", 0.35, -0.372, 0.35, -0.35, 0.35, 0.004 },
  { "flag", LR_ITEM_PANEL, LR_PANEL_FLAG, "width-mm", 1.0, -0.322, 0.30, -0.50, 0.50, 0.004 },
  /* the hatch runs out of the lower end of the bar by 45 mm */
  { "reflector", LR_ITEM_PANEL, LR_PANEL_REFLECTOR, "width-mm", 1.0, -0.322, 0.30, -0.545, 0.50, 0.004 },
  { "backdrop", LR_ITEM_PANEL, LR_PANEL_BACKDROP, "width-mm", 2.7, -0.35, 0.35, -1.40, 1.40, 0.004 },
  { "table", LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, "length-mm", 0.9, -0.45, 0.45, -0.70, 0.70, 0.004 },
  { "chair", LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, "width-mm", 0.46, -0.35, 0.35, -0.23, 0.23, 0.004 },
  { "sofa", LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, "width-mm", 1.8, -0.35, 0.35, -0.90, 0.90, 0.004 },
  { "cabinet", LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, "length-mm", 0.5, -0.25, 0.25, -0.70, 0.70, 0.004 },
  { "chest", LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, "length-mm", 0.85, -0.425, 0.425, -0.70, 0.70, 0.004 },
  { "radiator", LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, "length-mm", 0.1, -0.05, 0.05, -0.70, 0.70, 0.004 },
  { "box", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, "length-mm", 1.3, -0.65, 0.65, -0.70, 0.70, 0.004 },
  { "cylinder", LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, "width-mm", 0.7, -0.35, 0.35, -0.35, 0.35, 0.004 },
  /* band .14 m outside the inner face, leaf and swing as wide as the opening */
  { "door-in", LR_ITEM_DOOR, 0, "width-mm", 0.8, -0.14, 0.80, -0.40, 0.40, 0.004 },
  { "door-out", LR_ITEM_DOOR, 0, "swing", LR_SWING_OUT, -0.99, 0.0, -0.425, 0.425, 0.004 },
  { "window", LR_ITEM_WINDOW, LR_BLIND_DOWN, "width-mm", 1.2, -0.14, 0.085, -0.60, 0.60, 0.004 },
  { "circuit", LR_ITEM_CIRCUIT, 0, NULL, 0, 0.0, 0.10, -0.17, 0.17, 0.004 },
  { "socket", LR_ITEM_SOCKET, 0, NULL, 0, 0.0, 0.13875, -0.075, 0.075, 0.004 },
  { "house-light", LR_ITEM_HOUSE_LIGHT, 0, NULL, 0, -0.16, 0.16, -0.16, 0.16, 0.004 },
  { "noise-box", LR_ITEM_NOISE, 0, "length-mm", 0.6, -0.05, 0.21, -0.143, 0.143, 0.004 },
};

static LrItem *
make_item (LrItemKind kind,
           int        form)
{
  LrItem *item = lr_item_new (kind, "sample");
  const LrProp *prop = lr_item_find_prop (kind, kind == LR_ITEM_PERSON ? "role" : kind == LR_ITEM_WINDOW ? "blind" : "form");

  if (prop != NULL)
    lr_prop_put_number (prop, item, form);
  if (kind == LR_ITEM_LEAD)
    {
      item->path_m = g_new0 (LrVec2, 3);
      item->n_path = 3;
      item->path_m[1] = lr_vec2 (0.5, 0.0);
      item->path_m[2] = lr_vec2 (0.5, 0.4);
    }

  return item;
}

static void
measure_ink_m (const LrItem *item,
               LrThemeId     theme,
               double       *x0_m,
               double       *x1_m,
               double       *y0_m,
               double       *y1_m)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  LrView view = { .scale = SCALE, .theme = lr_theme_get (theme), .shown = LR_SHOW_SOUND };
  LrPlaced placed = { .item = item };
  double x, y, width, height;

  cairo_scale (cr, SCALE, -SCALE);
  lr_symbol_draw (cr, &view, &placed, NULL);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  *x0_m = x / SCALE;
  *x1_m = (x + width) / SCALE;
  *y0_m = -(y + height) / SCALE;
  *y1_m = -y / SCALE;

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_extents (gconstpointer data)
{
  const ExtentCase *c = data;
  g_autoptr (LrItem) item = make_item (c->kind, c->form);
  double x0_m, x1_m, y0_m, y1_m;

  if (c->key != NULL)
    lr_prop_put_number (lr_item_find_prop (c->kind, c->key), item, c->value);
  measure_ink_m (item, LR_THEME_LIGHT, &x0_m, &x1_m, &y0_m, &y1_m);
  g_assert_cmpfloat_with_epsilon (x0_m, c->x0_m, c->tolerance_m);
  g_assert_cmpfloat_with_epsilon (x1_m, c->x1_m, c->tolerance_m);
  g_assert_cmpfloat_with_epsilon (y0_m, c->y0_m, c->tolerance_m);
  g_assert_cmpfloat_with_epsilon (y1_m, c->y1_m, c->tolerance_m);
}

/* Every kind draws something, on every ground, and the same size on all */
static void
test_all_kinds (void)
{
  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      g_autoptr (LrItem) item = make_item (kind, 0);
      double x0_m, x1_m, y0_m, y1_m, width_m = 0.0;

      for (int theme = 0; theme < LR_N_THEMES; theme++)
        {
          measure_ink_m (item, theme, &x0_m, &x1_m, &y0_m, &y1_m);
          g_assert_cmpfloat (x1_m - x0_m, >, 0.0);
          g_assert_cmpfloat (y1_m - y0_m, >, 0.0);
          if (theme > 0)
            g_assert_cmpfloat_with_epsilon (x1_m - x0_m, width_m, 0.03);
          width_m = x1_m - x0_m;
        }
    }
}

/* A picture for the Tray keeps to its square */
static void
test_icons (void)
{
  const double size = 34.0;

  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      g_autoptr (LrItem) item = make_item (kind, 0);
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);
      double x, y, width, height;

      lr_symbol_draw_icon (cr, lr_theme_get (LR_THEME_DARK), item, size);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
      g_test_message ("%s: %g %g %g %g", lr_item_kind_info (kind)->word, x, y, width, height);
      g_assert_cmpfloat (width * height, >, 0.0);
      g_assert_cmpfloat (x, >=, -1.5);
      g_assert_cmpfloat (y, >=, -1.5);
      g_assert_cmpfloat (x + width, <=, size + 1.5);
      g_assert_cmpfloat (y + height, <=, size + 1.5);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

/* Weights do not change with zoom: at twice the scale a box is twice as large and its edge as wide */
static void
test_weights (void)
{
  g_autoptr (LrItem) item = make_item (LR_ITEM_FURNITURE, LR_FURNITURE_BOX);
  LrPlaced placed = { .item = item };
  double widths[2];

  for (int i = 0; i < 2; i++)
    {
      double scale = 100.0 * (i + 1), y, height, x;
      LrView view = { .scale = scale, .theme = lr_theme_get (LR_THEME_LIGHT) };
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);

      cairo_scale (cr, scale, -scale);
      lr_symbol_draw (cr, &view, &placed, NULL);
      cairo_recording_surface_ink_extents (surface, &x, &y, &widths[i], &height);
      widths[i] -= item->furniture.length_m * scale;
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
  g_assert_cmpfloat_with_epsilon (widths[0], widths[1], 1.01); /* extents are whole pixels */
}

typedef struct
{
  const char *name;
  LrItemKind  kind;
  double      least_ratio; /* of width to height */
} TagCase;

/* Each family's tag by its shape: a camera's is 1.45 times as wide as high */
static void
test_tags (void)
{
  static const TagCase tags[] = {
    { "A", LR_ITEM_CAMERA, 1.449 }, { "L1", LR_ITEM_LIGHT, 1.0 }, { "M1", LR_ITEM_MICROPHONE, 1.0 }, { "R1", LR_ITEM_PANEL, 0.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (tags); i++)
    {
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);
      const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);
      double width, height, x, y, ink_width, ink_height;

      lr_tag_measure (cr, theme, tags[i].kind, tags[i].name, 12.0, &width, &height);
      g_assert_cmpfloat_with_epsilon (height, 1.42 * 12.0, 1e-9);
      g_assert_cmpfloat (width / height, >=, tags[i].least_ratio);
      lr_tag_draw (cr, theme, tags[i].kind, tags[i].name, 12.0, 50.0, 50.0);
      cairo_recording_surface_ink_extents (surface, &x, &y, &ink_width, &ink_height);
      g_assert_cmpfloat_with_epsilon (x + 0.5 * ink_width, 50.0, 1.5);
      g_assert_cmpfloat (ink_width, <=, width + 5.0);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (extent_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/symbols/extents/", extent_cases[i].name, NULL);

      g_test_add_data_func (path, &extent_cases[i], test_extents);
    }
  g_test_add_func ("/symbols/all-kinds", test_all_kinds);
  g_test_add_func ("/symbols/icons", test_icons);
  g_test_add_func ("/symbols/weights", test_weights);
  g_test_add_func ("/symbols/tags", test_tags);

  return g_test_run ();
}
