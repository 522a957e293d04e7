/* test-order.c - what hides what: painted pictures against rays
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "paint.h"

#define WIDTH 320
#define HEIGHT 180
#define N_PICTURES 60
#define MOST_BOXES 40

typedef struct
{
  LrVec2 at_m;
  double length_m, width_m, angle_rad, z0, z1;
} Box;

static LrScene *
new_scene (LrVec3 eye_m)
{
  LrScene *scene = g_new0 (LrScene, 1);

  scene->eye_m = eye_m;
  scene->points = g_array_new (FALSE, FALSE, sizeof (LrVec3));
  scene->faces = g_array_new (FALSE, FALSE, sizeof (LrFace));
  scene->solids = g_array_new (FALSE, FALSE, sizeof (LrSolid));
  return scene;
}

/* The box of an index in a tone of its own, so that a pixel tells whose it is */
static LrColor
color_of (guint index)
{
  return (LrColor) { (double) (10 + 6 * (index % 40)) / 255.0, 0.5, 0.25 };
}

static void
add_box (LrScene   *scene,
         const Box *box,
         guint      index)
{
  LrAxes axes = lr_axes_standing (box->at_m, 0.0, box->angle_rad);
  LrBox sides = { -0.5 * box->length_m, 0.5 * box->length_m, -0.5 * box->width_m, 0.5 * box->width_m, box->z0,
                  box->z1 };
  guint first = scene->faces->len;

  lr_scene_box (scene, NULL, &axes, sides, LR_EQUIPMENT);
  for (guint i = first; i < scene->faces->len; i++)
    g_array_index (scene->faces, LrFace, i).color = color_of (index);
}

/* Slabs of the box's own frame; source: Kay and Kajiya 1986, from memory */
static gboolean
ray_meets (const Box *box,
           LrVec3     from_m,
           LrVec3     way,
           double    *distance)
{
  LrVec2 from = lr_vec2_rotate (lr_vec2_sub (lr_vec3_flat (from_m), box->at_m), -box->angle_rad);
  LrVec2 flat = lr_vec2_rotate (lr_vec3_flat (way), -box->angle_rad);
  double start[3] = { from.x, from.y, from_m.z }, step[3] = { flat.x, flat.y, way.z };
  double low[3] = { -0.5 * box->length_m, -0.5 * box->width_m, box->z0 }, high[3] = { 0.5 * box->length_m,
                                                                                      0.5 * box->width_m, box->z1 };
  double enter = LR_NEAR_M, leave = HUGE_VAL;

  for (int i = 0; i < 3; i++)
    {
      double a = (low[i] - start[i]) / step[i], b = (high[i] - start[i]) / step[i];

      enter = fmax (enter, fmin (a, b));
      leave = fmin (leave, fmax (a, b));
    }

  *distance = enter;
  return enter < leave;
}

static gboolean
is_clear (const Box *boxes,
          guint      n,
          const Box *box,
          LrVec3     eye_m)
{
  LrOutline base = lr_outline_box (box->at_m, box->length_m, box->width_m, box->angle_rad);

  if (lr_vec2_distance (lr_vec3_flat (eye_m), box->at_m) < 0.4 + 0.5 * hypot (box->length_m, box->width_m))
    return FALSE;

  for (guint i = 0; i < n; i++)
    {
      LrOutline other = lr_outline_box (boxes[i].at_m, boxes[i].length_m, boxes[i].width_m, boxes[i].angle_rad);

      if (box->z0 < boxes[i].z1 && boxes[i].z0 < box->z1 && lr_outline_overlap_m (&base, &other, NULL) > 0.0)
        return FALSE;
    }

  return TRUE;
}

/* Things as in a room: on the floor, on each other's level, thin ones, ones turned any way; none through another */
static guint
make_boxes (GRand *rand,
            LrVec3 eye_m,
            Box   *boxes)
{
  guint n = 0;

  for (int tries = 0; tries < 200 && n < MOST_BOXES; tries++)
    {
      Box box = {
        .at_m = { g_rand_double_range (rand, 0.0, 6.0), g_rand_double_range (rand, -2.5, 2.5) },
        .length_m = g_rand_double_range (rand, 0.03, 1.2),
        .width_m = g_rand_double_range (rand, 0.03, 1.2),
        .angle_rad = g_rand_double_range (rand, 0.0, LR_PI),
        .z0 = g_rand_boolean (rand) ? 0.0 : g_rand_double_range (rand, 0.0, 2.0),
      };

      box.z1 = box.z0 + g_rand_double_range (rand, 0.05, 1.2);
      if (is_clear (boxes, n, &box, eye_m))
        boxes[n++] = box;
    }

  return n;
}

/* Which box a ray through a place in the picture meets first: its index, -1 for none */
static int
nearest_box (const Box          *boxes,
             guint               n,
             const LrProjection *projection,
             double              x,
             double              y)
{
  LrVec3 ray = lr_projection_ray (projection, x / WIDTH, y / HEIGHT);
  double nearest = HUGE_VAL;
  int index = -1;

  for (guint i = 0; i < n; i++)
    {
      double distance;

      if (ray_meets (&boxes[i], projection->eye_m, ray, &distance) && distance < nearest)
        {
          nearest = distance;
          index = (int) i;
        }
    }

  return index;
}

static void
paint_in_order (const LrPainter *painter,
                const LrScene   *scene)
{
  g_autoptr (GArray) order = lr_paint_order (painter, scene);

  for (guint i = 0; i < order->len; i++)
    lr_paint_solid (painter, scene, &g_array_index (scene->solids, LrSolid, g_array_index (order, guint, i)));
}

/* Pixels that are whole inside a box's image: their corners' rays meet the same box */
static void
check_picture (cairo_surface_t *surface,
               const Box       *boxes,
               guint            n,
               const LrCameraReading *camera,
               guint           *n_checked,
               guint           *n_wrong)
{
  const guint8 *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);

  for (int y = 2; y < HEIGHT - 2; y += 5)
    for (int x = 2; x < WIDTH - 2; x += 5)
      {
        int index = nearest_box (boxes, n, &camera->projection, x + 0.5, y + 0.5), red;

        if (index < 0 || nearest_box (boxes, n, &camera->projection, x - 0.5, y - 0.5) != index
            || nearest_box (boxes, n, &camera->projection, x + 1.5, y + 1.5) != index
            || nearest_box (boxes, n, &camera->projection, x - 0.5, y + 1.5) != index
            || nearest_box (boxes, n, &camera->projection, x + 1.5, y - 0.5) != index)
          continue;

        red = data[y * stride + 4 * x + 2];
        (*n_checked)++;
        if (abs (red - (int) lround (255.0 * color_of ((guint) index).r)) > 2)
          (*n_wrong)++;
      }
}

static void
test_boxes_against_rays (void)
{
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  GRand *rand = g_rand_new_with_seed (11);
  guint n_checked = 0, n_wrong = 0;

  for (int i = 0; i < N_PICTURES; i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
      cairo_t *cr = cairo_create (surface);
      LrVec3 eye_m = { -1.5, g_rand_double_range (rand, -1.0, 1.0), g_rand_double_range (rand, 0.2, 2.6) };
      LrCameraReading camera;
      Box boxes[MOST_BOXES];
      LrPainter painter;
      LrScene *scene = new_scene (eye_m);
      guint n;

      memset (&camera, 0, sizeof camera);
      camera.item = item;
      lr_projection_look (eye_m, g_rand_double_range (rand, -0.2, 0.2), 0.3 * (1.2 - eye_m.z), 0.8, 0.45,
                          &camera.projection);
      lr_painter_init (&painter, cr, &camera, WIDTH);

      n = make_boxes (rand, eye_m, boxes);
      for (guint j = 0; j < n; j++)
        add_box (scene, &boxes[j], j);
      paint_in_order (&painter, scene);
      cairo_surface_flush (surface);
      check_picture (surface, boxes, n, &camera, &n_checked, &n_wrong);

      lr_scene_free (scene);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }

  g_rand_free (rand);
  g_test_message ("%u of %u pixels show another box than the ray meets", n_wrong, n_checked);
  g_assert_cmpuint (n_checked, >, 20000);
  /* Boxes that hide each other in turn have no order; that is rare */
  g_assert_cmpuint (1000 * n_wrong, <=, n_checked);
}

/* A slab over four legs, and one of them in front of another: whatever the side it is seen from */
static void
test_table (void)
{
  static const Box table[] = {
    { { 2.0, 0.0 }, 0.8, 1.6, 0.0, 0.70, 0.74 }, { { 1.7, -0.7 }, 0.06, 0.06, 0.0, 0.0, 0.70 }, { { 2.3, -0.7 },
    0.06, 0.06, 0.0, 0.0, 0.70 },
    { { 1.7, 0.7 }, 0.06, 0.06, 0.0, 0.0, 0.70 }, { { 2.3, 0.7 }, 0.06, 0.06, 0.0, 0.0, 0.70 },
  };
  static const double eye_heights_m[] = { 0.2, 0.72, 1.5, 2.5 };
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  guint n_checked = 0, n_wrong = 0;

  for (guint i = 0; i < G_N_ELEMENTS (eye_heights_m); i++)
    for (double around = 0.0; around < 2.0 * LR_PI; around += 0.7)
      {
        cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
        cairo_t *cr = cairo_create (surface);
        LrVec3 eye_m = { 2.0 + 2.2 * cos (around), 2.2 * sin (around), eye_heights_m[i] };
        LrScene *scene = new_scene (eye_m);
        LrCameraReading camera;
        LrPainter painter;

        memset (&camera, 0, sizeof camera);
        camera.item = item;
        lr_projection_look (eye_m, around + LR_PI, atan2 (0.5 - eye_m.z, 2.2), 0.7, 0.7 * 9.0 / 16.0,
                            &camera.projection);
        lr_painter_init (&painter, cr, &camera, WIDTH);
        for (guint j = 0; j < G_N_ELEMENTS (table); j++)
          add_box (scene, &table[j], j);
        paint_in_order (&painter, scene);
        cairo_surface_flush (surface);
        check_picture (surface, table, G_N_ELEMENTS (table), &camera, &n_checked, &n_wrong);

        lr_scene_free (scene);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }

  g_assert_cmpuint (n_checked, >, 1000);
  g_assert_cmpuint (n_wrong, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/order/boxes-against-rays", test_boxes_against_rays);
  g_test_add_func ("/order/table", test_table);

  return g_test_run ();
}
