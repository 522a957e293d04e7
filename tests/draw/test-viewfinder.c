/* test-viewfinder.c - whole pictures: what is where, what hides what, and that every plan can be drawn
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <cairo-pdf.h>
#include <string.h>

#include "picture.h"

#define NBSP "\302\240"

/* First row, from the top, in which two pictures differ */
static int
first_difference (const Picture *a,
                  const Picture *b)
{
  for (int y = 0; y < a->height; y++)
    for (int x = 0; x < a->width; x++)
      {
        double across = (x + 0.5) / a->width, down = (y + 0.5) / a->height;

        if (abs (luma (pixel (a, across, down)) - luma (pixel (b, across, down))) > 24)
          return y;
      }

  return -1;
}

/* The crown is where the reading of the same camera says, but for the hair; the eyes of the figure lie under it */
static void
test_crown (void)
{
  static const double heights_m[] = { 1.05, 1.2, 1.35 };

  for (guint i = 0; i < G_N_ELEMENTS (heights_m); i++)
    {
      g_autoptr (LrPlan) with = new_portrait ();
      g_autoptr (LrPlan) without = NULL;
      g_autoptr (GError) error = NULL;
      g_autoptr (LrStudy) study = NULL;
      Picture a, b;
      int top;

      fixture_set (&with, WENNA, "eye-height-mm", heights_m[i]);
      study = lr_study_new (with);
      a = draw (with, CAMERA_A);

      /* The same camera, with her moved out of its sight */
      without = lr_plan_ref (with);
      fixture_text (&without, CAMERA_A, "aims-at", "");
      fixture_set (&without, CAMERA_A, "facing-deg", fixture_camera (study, CAMERA_A)->pan_rad);
      fixture_set (&without, CAMERA_A, "tilt-deg", fixture_camera (study, CAMERA_A)->tilt_rad);
      fixture_set (&without, CAMERA_A, "focus-mm", fixture_camera (study, CAMERA_A)->focus_m);
      fixture_move (&without, WENNA, 7.5, 4.5);
      b = draw (without, CAMERA_A);

      top = first_difference (&a, &b);
      g_assert_cmpfloat_with_epsilon ((double) top / a.height, fixture_camera (study, CAMERA_A)->framing.headroom,
                                      0.05);
      free_picture (&a);
      free_picture (&b);
    }
}

/* Behind a wall there is a wall; through its window one sees in */
static void
test_outside (void)
{
  g_autoptr (LrPlan) plan = new_portrait ();
  g_autoptr (LrPlan) open = NULL;
  const char *window;
  Picture a, b;
  guint32 wall;

  fixture_text (&plan, CAMERA_A, "aims-at", "");
  fixture_move (&plan, CAMERA_A, 3.0, -2.0);
  fixture_set (&plan, CAMERA_A, "facing-deg", 0.5 * LR_PI);
  fixture_set (&plan, CAMERA_A, "tilt-deg", 0.0);
  open = lr_plan_ref (plan);
  window = fixture_add (&open, LR_ITEM_WINDOW, 0, 3.0, 0.0);
  fixture_set (&open, window, "along-mm", 2.4);

  a = draw (plan, CAMERA_A);
  b = draw (open, CAMERA_A);
  wall = pixel (&a, 0.5, 0.45);
  for (double across = 0.1; across < 1.0; across += 0.2)
    g_assert_cmphex (pixel (&a, across, 0.5), ==, wall);
  g_assert_cmphex (pixel (&b, 0.05, 0.5), ==, wall);
  g_assert_cmphex (pixel (&b, 0.5, 0.45), !=, wall);
  free_picture (&a);
  free_picture (&b);
}

/* The reflectance of clothes and skin shows, and their order is kept */
static void
test_tones (void)
{
  static const double reflectances[] = { 0.05, 0.15, 0.35, 0.60 };
  int last_chest = -1, last_cheek = -1;

  for (guint i = 0; i < G_N_ELEMENTS (reflectances); i++)
    {
      g_autoptr (LrPlan) plan = new_portrait ();
      g_autoptr (LrStudy) study = lr_study_new (plan);
      LrVec3 eyes_m = study->subject->eyes_m;
      LrFramePoint chest = place (plan, CAMERA_A, lr_vec3 (3.08, 3.07, study->subject->body.chest_m - 0.08));
      LrFramePoint brow = place (plan, CAMERA_A, lr_vec3 (eyes_m.x + 0.02, eyes_m.y, eyes_m.z + 0.035));
      Picture picture;

      fixture_set (&plan, WENNA, "clothing-reflectance-pct", reflectances[i]);
      fixture_set (&plan, WENNA, "skin-reflectance-pct", reflectances[i]);
      picture = draw (plan, CAMERA_A);
      g_assert_cmpint (luma (pixel (&picture, chest.across, chest.down)), >, last_chest);
      g_assert_cmpint (luma (pixel (&picture, brow.across, brow.down)), >, last_cheek);
      last_chest = luma (pixel (&picture, chest.across, chest.down));
      last_cheek = luma (pixel (&picture, brow.across, brow.down));
      free_picture (&picture);
    }
}

/* Widest step of luma from pixel to pixel along a row between two places */
static int
steepest (const Picture *picture,
          double         from,
          double         to,
          double         down)
{
  int most = 0, last = luma (pixel (picture, from, down));

  for (double across = from; across <= to; across += 1.0 / picture->width)
    {
      int here = luma (pixel (picture, across, down));

      most = MAX (most, abs (here - last));
      last = here;
    }

  return most;
}

/* The same edge far behind her is soft at f/1.4 and sharp at f/22 */
static void
test_depth (void)
{
  g_autoptr (LrPlan) plan = new_portrait ();
  const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 0.5, 4.3);
  LrFramePoint edge;
  Picture sharp, soft;

  fixture_set (&plan, box, "length-mm", 0.7);
  fixture_set (&plan, box, "width-mm", 1.2);
  fixture_set (&plan, box, "height-mm", 2.6);
  fixture_set (&plan, box, "reflectance-pct", 0.05);
  edge = place (plan, CAMERA_A, lr_vec3 (0.85, 3.7, 1.3));
  sharp = draw (plan, CAMERA_A);
  fixture_set (&plan, CAMERA_A, "f-number", 1.4);
  soft = draw (plan, CAMERA_A);

  g_assert_cmpint (steepest (&sharp, edge.across - 0.03, edge.across + 0.03, edge.down), >, 30);
  g_assert_cmpint (2 * steepest (&soft, edge.across - 0.03, edge.across + 0.03, edge.down), <,
                   steepest (&sharp, edge.across - 0.03, edge.across + 0.03, edge.down));
  free_picture (&sharp);
  free_picture (&soft);
}

typedef struct
{
  const char *name;
  double      eyes_across, eyes_down, headroom, gaze_deg, near_m, far_m;
  LrUnits     units;
  const char *expected;
} FiguresCase;

/* The first is the example in our drawing rules; figures as a person would round them */
static const FiguresCase figures_cases[] = {
  { "usual", 0.61, 0.31, 0.19, -18.0, 2.00, 2.30, LR_UNITS_METRIC,
    "eyes 31" NBSP "% down   headroom 19" NBSP "%   gaze 18° off the lens   sharp 2.00 to 2.30" NBSP "m" },
  { "far", 0.5, 0.334, 0.001, 40.4, 2.47, HUGE_VAL, LR_UNITS_METRIC,
    "eyes 33" NBSP "% down   headroom 0" NBSP "%   gaze 40° off the lens   sharp from 2.47" NBSP "m on" },
  { "cut", 0.5, 0.25, -0.27, 8.0, 1.0, 1.2, LR_UNITS_METRIC,
    "eyes 25" NBSP "% down   crown cut by 27" NBSP "%   gaze 8° off the lens   sharp 1.00 to 1.20" NBSP "m" },
  { "outside", 1.2, 0.25, 0.1, NAN, 1.0, 1.2, LR_UNITS_METRIC,
    "eyes outside the frame   headroom 10" NBSP "%   sharp 1.00 to 1.20" NBSP "m" },
  { "unknown", 0.5, 0.3, 0.1, NAN, NAN, NAN, LR_UNITS_METRIC, "eyes 30" NBSP "% down   headroom 10" NBSP "%" },
};

static void
test_figures (gconstpointer data)
{
  const FiguresCase *c = data;
  LrCameraReading camera = {
    .has_subject = TRUE,
    .eyes_across = c->eyes_across,
    .eyes_down = c->eyes_down,
    .framing = { .headroom = c->headroom },
    .gaze_rad = c->gaze_deg * LR_DEG,
    .sharp_near_m = c->near_m,
    .sharp_far_m = c->far_m,
  };
  g_autofree char *line = lr_viewfinder_figures (&camera, c->units);

  g_assert_cmpstr (line, ==, c->expected);
}

static void
test_figures_of_nobody (void)
{
  LrCameraReading camera = { .has_subject = FALSE, .eyes_down = NAN, .gaze_rad = NAN };
  g_autofree char *line = lr_viewfinder_figures (&camera, LR_UNITS_IMPERIAL);

  g_assert_cmpstr (line, !=, "");
  g_assert_null (strstr (line, "nan"));
}

static void
test_height (void)
{
  g_autoptr (LrPlan) plan = new_portrait ();
  g_autoptr (LrStudy) study = NULL;

  fixture_set (&plan, CAMERA_A, "aspect", LR_ASPECT_9_16);
  study = lr_study_new (plan);
  g_assert_cmpfloat_with_epsilon (lr_viewfinder_height (fixture_camera (study, CAMERA_A), 90.0), 160.0, 1e-6);
}

static int
n_forms (int kind)
{
  switch (kind)
    {
    case LR_ITEM_LENS:
      return 0;
    case LR_ITEM_FURNITURE:
      return 8;
    case LR_ITEM_LIGHT:
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
      return 3;
    default:
      return 1;
    }
}

/* Every kind and form, seen by lenses from 12 to 200 mm */
static void
test_every_kind (void)
{
  static const double focals_m[] = { 0.012, 0.05, 0.2 };

  for (guint i = 0; i < G_N_ELEMENTS (focals_m); i++)
    {
      g_autoptr (LrPlan) plan = fixture_interview ();
      Picture picture;

      for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
        for (int form = 0; form < n_forms (kind); form++)
          fixture_add (&plan, (LrItemKind) kind, form, 0.7 + 0.6 * form, 0.7 + 0.35 * kind);

      fixture_set (&plan, CAMERA_A, "focal-mm", focals_m[i]);
      fixture_set (&plan, WENNA, "posture", i % 2 == 0 ? LR_POSTURE_STANDING : LR_POSTURE_SEATED);
      picture = draw (plan, CAMERA_A);
      free_picture (&picture);
    }
}

/* A lens in a head, in a wall, in a box, straight up, straight down, nobody, no room */
static void
test_odd_places (void)
{
  static const double places_m[][2] = { { 3.0, 3.0 }, { 0.0, 3.0 }, { 8.0, 6.0 }, { 4.5, 4.5 }, { -40.0, 90.0 } };
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *box = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 4.5, 4.5);
  Picture picture;

  fixture_set (&plan, box, "height-mm", 2.0);
  for (guint i = 0; i < G_N_ELEMENTS (places_m); i++)
    for (int tilt = -90; tilt <= 90; tilt += 45)
      {
        fixture_move (&plan, CAMERA_A, places_m[i][0], places_m[i][1]);
        fixture_text (&plan, CAMERA_A, "aims-at", "");
        fixture_set (&plan, CAMERA_A, "tilt-deg", tilt * LR_DEG);
        picture = draw (plan, CAMERA_A);
        free_picture (&picture);
      }
}

static void
test_nothing_there (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 1.0, 1.0);
  Picture picture = draw (plan, id);

  /* A calm ground under a horizon, the same from left to right */
  g_assert_cmphex (pixel (&picture, 0.1, 0.2), ==, pixel (&picture, 0.9, 0.2));
  g_assert_cmphex (pixel (&picture, 0.1, 0.9), ==, pixel (&picture, 0.9, 0.9));
  g_assert_cmphex (pixel (&picture, 0.5, 0.2), !=, pixel (&picture, 0.5, 0.9));
  free_picture (&picture);
}

static cairo_status_t
append (void         *closure,
        const guint8 *data,
        unsigned int  length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* On paper it stays a drawing: no pictures of pixels */
static void
test_vector (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, 300.0, 200.0);
  LrViewfinderStyle style = { .width = 280.0, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE };
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < study->cameras->len; i++)
    {
      lr_viewfinder_draw (cr, study, &g_array_index (study->cameras, LrCameraReading, i), &style);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);

  g_assert_cmpuint (bytes->len, >, 2000);
  g_assert_null (g_strstr_len ((const char *) bytes->data, bytes->len, "/Subtype /Image"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/viewfinder/crown", test_crown);
  g_test_add_func ("/viewfinder/outside", test_outside);
  g_test_add_func ("/viewfinder/tones", test_tones);
  g_test_add_func ("/viewfinder/depth", test_depth);
  add_rows ("/viewfinder/figures", figures_cases, test_figures);
  g_test_add_func ("/viewfinder/figures/nobody", test_figures_of_nobody);
  g_test_add_func ("/viewfinder/height", test_height);
  g_test_add_func ("/viewfinder/every-kind", test_every_kind);
  g_test_add_func ("/viewfinder/odd-places", test_odd_places);
  g_test_add_func ("/viewfinder/nothing-there", test_nothing_there);
  g_test_add_func ("/viewfinder/vector", test_vector);

  return g_test_run ();
}
