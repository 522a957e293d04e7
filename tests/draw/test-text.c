/* test-text.c - text is as wide on every surface and at every zoom
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "text.h"

#include <cairo-pdf.h>
#include <string.h>

static const char sentence[] = "Wenna, 2.14 m from camera A at f/2.8: sharp from 2.00 to 2.30 m";

static cairo_status_t
swallow (void                *closure,
         const unsigned char *data G_GNUC_UNUSED,
         unsigned int         length)
{
  *(gsize *) closure += length;

  return CAIRO_STATUS_SUCCESS;
}

static cairo_t *
new_image_context (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 600, 80);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);

  return cr;
}

static double
width_on (cairo_t    *cr,
          double      size,
          const char *text)
{
  LrTextStyle style = { .size = size };
  double width;

  lr_text_measure (cr, lr_theme_get (LR_THEME_LIGHT), &style, text, &width, NULL);

  return width;
}

static void
test_surfaces (void)
{
  gsize length = 0;
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (swallow, &length, 595.0, 842.0);
  cairo_t *on_pdf = cairo_create (pdf);
  cairo_t *on_image = new_image_context ();

  for (double size = 6.5; size < 17.0; size += 1.5)
    g_assert_cmpfloat_with_epsilon (width_on (on_image, size, sentence), width_on (on_pdf, size, sentence), 0.01);

  cairo_destroy (on_image);
  cairo_destroy (on_pdf);
  cairo_surface_destroy (pdf);
}

static void
test_zoom (void)
{
  cairo_t *cr = new_image_context ();
  double at_one = width_on (cr, 12.0, sentence);

  for (double zoom = 0.25; zoom <= 4.0; zoom *= 2.0)
    {
      cairo_save (cr);
      cairo_scale (cr, zoom, zoom);
      g_assert_cmpfloat_with_epsilon (width_on (cr, 12.0, sentence), at_one, 0.01 * at_one);
      cairo_restore (cr);
    }
  g_assert_cmpfloat_with_epsilon (width_on (cr, 24.0, sentence), 2.0 * at_one, 0.01 * at_one);

  cairo_destroy (cr);
}

/* A number that runs keeps its place */
static void
test_tabular_figures (void)
{
  cairo_t *cr = new_image_context ();

  g_assert_cmpfloat_with_epsilon (width_on (cr, 13.0, "1.11"), width_on (cr, 13.0, "8.08"), 0.01);

  cairo_destroy (cr);
}

static void
ink_extents (LrAlign align,
             double *x0,
             double *x1,
             double *y1)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  LrTextStyle style = { .size = 20.0, .align = align };
  double y0, width, height;

  lr_text_draw (cr, lr_theme_get (LR_THEME_LIGHT), &style, 100.0, 50.0, "HHH");
  cairo_recording_surface_ink_extents (surface, x0, &y0, &width, &height);
  *x1 = *x0 + width;
  *y1 = y0 + height;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_alignment (void)
{
  double x0, x1, y1;

  ink_extents (LR_ALIGN_LEFT, &x0, &x1, &y1);
  g_assert_cmpfloat_with_epsilon (x0, 100.0, 3.0);
  g_assert_cmpfloat_with_epsilon (y1, 50.0, 1.5); /* an H stands on the baseline */
  ink_extents (LR_ALIGN_CENTRE, &x0, &x1, &y1);
  g_assert_cmpfloat_with_epsilon (0.5 * (x0 + x1), 100.0, 1.0);
  ink_extents (LR_ALIGN_RIGHT, &x0, &x1, &y1);
  g_assert_cmpfloat_with_epsilon (x1, 100.0, 3.0);
}

static void
test_wrapping (void)
{
  cairo_t *cr = new_image_context ();
  const LrTheme *theme = lr_theme_get (LR_THEME_PAGE);
  LrTextStyle style = { .size = 10.0, .width = 90.0 };
  double width, height, line;

  lr_text_measure (cr, theme, &style, sentence, &width, &line);
  g_assert_cmpfloat (width, <=, 90.0);
  style.wraps = TRUE;
  lr_text_measure (cr, theme, &style, sentence, &width, &height);
  g_assert_cmpfloat (width, <=, 90.0);
  g_assert_cmpfloat (height, >=, 2.9 * line);

  cairo_destroy (cr);
}

static void
test_markup (void)
{
  cairo_t *cr = new_image_context ();
  const LrTheme *theme = lr_theme_get (LR_THEME_PAGE);
  LrTextStyle plain = { .size = 10.0 }, marked = { .size = 10.0, .has_markup = TRUE };
  double plain_width, marked_width;

  lr_text_measure (cr, theme, &plain, "only 22° round", &plain_width, NULL);
  lr_text_measure (cr, theme, &marked, "only <b>22°</b> round", &marked_width, NULL);
  g_assert_cmpfloat (marked_width, >, plain_width);
  g_assert_cmpfloat (marked_width, <, 1.2 * plain_width);

  cairo_destroy (cr);
}

/* A text is laid out once for a style, on whatever context; nothing that changes how it looks is taken for the same */
static void
test_kept (void)
{
  static const LrTextStyle others[] = {
    { .size = 11.5 }, { .size = 11.0, .weight = PANGO_WEIGHT_BOLD }, { .size = 11.0, .align = LR_ALIGN_RIGHT },
    { .size = 11.0, .width = 100.0 }, { .size = 11.0, .width = 100.0, .wraps = TRUE }, { .size = 11.0, .has_markup = TRUE },
  };
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);
  LrTextStyle style = { .size = 11.0 };
  cairo_t *cr = new_image_context (), *again = new_image_context ();
  g_autoptr (PangoLayout) first = lr_text_layout (cr, theme, &style, sentence);
  g_autoptr (PangoLayout) second = lr_text_layout (again, theme, &style, sentence);
  PangoLayout *seen[G_N_ELEMENTS (others)];

  g_assert_true (first == second);
  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    {
      seen[i] = lr_text_layout (cr, theme, &others[i], sentence);
      g_assert_true (seen[i] != first);
      for (gsize j = 0; j < i; j++)
        g_assert_true (seen[i] != seen[j]);
    }

  cairo_scale (again, 2.0, 2.0);
  g_assert_cmpfloat_with_epsilon (width_on (again, 11.0, sentence), width_on (cr, 11.0, sentence), 0.01);

  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    g_object_unref (seen[i]);
  cairo_destroy (again);
  cairo_destroy (cr);
}

/* Figures that run make ever new texts: they are not kept without end */
static void
test_forgotten (void)
{
  LrTextStyle style = { .size = 11.0 };
  cairo_t *cr = new_image_context ();
  PangoLayout *first = lr_text_layout (cr, lr_theme_get (LR_THEME_LIGHT), &style, "first");
  gpointer watched = first;

  g_object_add_weak_pointer (G_OBJECT (first), &watched);
  g_object_unref (first);
  g_assert_nonnull (watched);
  for (guint i = 0; i < 2000; i++)
    {
      g_autofree char *text = g_strdup_printf ("%u m", i);

      width_on (cr, 11.0, text);
    }
  g_assert_null (watched);

  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/text/surfaces", test_surfaces);
  g_test_add_func ("/text/zoom", test_zoom);
  g_test_add_func ("/text/tabular-figures", test_tabular_figures);
  g_test_add_func ("/text/alignment", test_alignment);
  g_test_add_func ("/text/wrapping", test_wrapping);
  g_test_add_func ("/text/markup", test_markup);
  g_test_add_func ("/text/kept", test_kept);
  g_test_add_func ("/text/forgotten", test_forgotten);

  return g_test_run ();
}
