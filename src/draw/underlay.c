/* underlay.c - what a picture of a floor plan looks like, for drawing it often
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * White becomes clear, so that it is the paper that it lies on, and all else ink: a pixel is as opaque as its darkest channel is
 * dark, which gives the picture itself on white paper. On dark paper the ink has the opposite lightness, by HSL, and its own hue. Ink is
 * kept with its dimming in it, for plain OVER without a mask is what cairo paints several times as fast as its other operators.
 */

#include "underlay.h"

#define MAX_LEVELS 12
#define LEAST_PX 64 /* no level is smaller */
#define FULL 256    /* opacity */

typedef struct
{
  cairo_surface_t *surface; /* NULL: none */
  int              level;
  gboolean         is_light;
  guint            opacity; /* of FULL */
} Ink;

struct _LrUnderlay
{
  grefcount        refs;
  cairo_surface_t *levels[MAX_LEVELS]; /* each half as fine as the one before; NULL: not made yet */
  Ink              inks[2];            /* as it was painted last dimmed, and in full strength: a sheet and the glass over it */
  double           width_px, height_px;
  int              n_pages;
};

/**
 * lr_underlay_new:
 * @surface: (transfer full): an opaque image (RGB24) of the whole picture
 * @width_px: of the picture, in its own pixels or points, > 0
 * @height_px: the same
 * @n_pages: how many pages its file has
 *
 * Returns: (transfer full): the picture
 */
LrUnderlay *
lr_underlay_new (cairo_surface_t *surface,
                 double           width_px,
                 double           height_px,
                 int              n_pages)
{
  LrUnderlay *self = g_new0 (LrUnderlay, 1);

  g_ref_count_init (&self->refs);
  self->levels[0] = surface;
  self->width_px = width_px;
  self->height_px = height_px;
  self->n_pages = n_pages;
  return self;
}

/**
 * lr_underlay_ref:
 * @underlay: a picture
 *
 * Returns: (transfer full): @underlay
 */
LrUnderlay *
lr_underlay_ref (LrUnderlay *underlay)
{
  g_ref_count_inc (&underlay->refs);
  return underlay;
}

/**
 * lr_underlay_unref:
 * @underlay: (transfer full): a picture
 */
void
lr_underlay_unref (LrUnderlay *underlay)
{
  if (!g_ref_count_dec (&underlay->refs))
    return;

  for (int i = 0; i < MAX_LEVELS; i++)
    g_clear_pointer (&underlay->levels[i], cairo_surface_destroy);
  for (gsize i = 0; i < G_N_ELEMENTS (underlay->inks); i++)
    g_clear_pointer (&underlay->inks[i].surface, cairo_surface_destroy);
  g_free (underlay);
}

/**
 * lr_underlay_get_size:
 * @underlay: a picture
 * @width_px: (out): in its own pixels or points
 * @height_px: (out): the same
 */
void
lr_underlay_get_size (const LrUnderlay *underlay,
                      double           *width_px,
                      double           *height_px)
{
  *width_px = underlay->width_px;
  *height_px = underlay->height_px;
}

/**
 * lr_underlay_get_n_pages:
 * @underlay: a picture
 *
 * Returns: how many pages its file has
 */
int
lr_underlay_get_n_pages (const LrUnderlay *underlay)
{
  return underlay->n_pages;
}

/**
 * lr_underlay_corners:
 * @underlay: a picture
 * @lies: how it lies on the floor
 * @corners_m: (out): its corners [m], anticlockwise from the lower left one
 */
void
lr_underlay_corners (const LrUnderlay   *underlay,
                     const LrSimilarity *lies,
                     LrVec2              corners_m[4])
{
  const LrVec2 corners[] = {
    { 0.0, 0.0 }, { underlay->width_px, 0.0 }, { underlay->width_px, underlay->height_px }, { 0.0, underlay->height_px },
  };

  for (int i = 0; i < 4; i++)
    corners_m[i] = lr_similarity_apply (lies, corners[i]);
}

/* The mean of four pixels, two channels at a time */
static guint32
mean (guint32 a,
      guint32 b,
      guint32 c,
      guint32 d)
{
  const guint32 odd = 0x00ff00ff;
  guint32 low = (a & odd) + (b & odd) + (c & odd) + (d & odd) + 0x00020002;
  guint32 high = ((a >> 8) & odd) + ((b >> 8) & odd) + ((c >> 8) & odd) + ((d >> 8) & odd) + 0x00020002;

  return ((low >> 2) & odd) | (((high >> 2) & odd) << 8);
}

/* A last odd row or column is taken twice */
static cairo_surface_t *
make_half (cairo_surface_t *whole)
{
  int width = cairo_image_surface_get_width (whole), height = cairo_image_surface_get_height (whole);
  int half_width = (width + 1) / 2, half_height = (height + 1) / 2;
  cairo_surface_t *half = cairo_image_surface_create (CAIRO_FORMAT_RGB24, half_width, half_height);
  const guchar *from = cairo_image_surface_get_data (whole);
  guchar *to = cairo_image_surface_get_data (half);
  int from_stride = cairo_image_surface_get_stride (whole), to_stride = cairo_image_surface_get_stride (half);

  cairo_surface_flush (half);
  for (int y = 0; to != NULL && from != NULL && y < half_height; y++)
    {
      const guint32 *upper = (const guint32 *) (gconstpointer) (from + (gsize) from_stride * (gsize) (2 * y));
      const guint32 *lower = (const guint32 *) (gconstpointer) (from + (gsize) from_stride * (gsize) MIN (2 * y + 1, height - 1));
      guint32 *out = (guint32 *) (gpointer) (to + (gsize) to_stride * (gsize) y);

      for (int x = 0; x < half_width; x++)
        {
          int right = MIN (2 * x + 1, width - 1);

          out[x] = mean (upper[2 * x], upper[right], lower[2 * x], lower[right]);
        }
    }
  cairo_surface_mark_dirty (half);
  return half;
}

/* @opacity: of FULL */
static guint32
ink_of (guint32  pixel,
        gboolean is_light,
        guint    opacity)
{
  guint r = pixel >> 16 & 0xff, g = pixel >> 8 & 0xff, b = pixel & 0xff;
  guint least = MIN (MIN (r, g), b), most = MAX (MAX (r, g), b);
  guint more = is_light ? 255 - most : 0; /* light: 255 - most - least + channel */

  return (255 - least) * opacity / FULL << 24 | (r - least + more) * opacity / FULL << 16 | (g - least + more) * opacity / FULL << 8
         | (b - least + more) * opacity / FULL;
}

static cairo_surface_t *
make_ink (cairo_surface_t *paper,
          gboolean         is_light,
          guint            opacity)
{
  int width = cairo_image_surface_get_width (paper), height = cairo_image_surface_get_height (paper);
  cairo_surface_t *ink = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  const guchar *from = cairo_image_surface_get_data (paper);
  guchar *to = cairo_image_surface_get_data (ink);

  cairo_surface_flush (ink);
  for (int y = 0; to != NULL && from != NULL && y < height; y++)
    {
      const guint32 *in = (const guint32 *) (gconstpointer) (from + (gsize) cairo_image_surface_get_stride (paper) * (gsize) y);
      guint32 *out = (guint32 *) (gpointer) (to + (gsize) cairo_image_surface_get_stride (ink) * (gsize) y);

      for (int x = 0; x < width; x++)
        out[x] = ink_of (in[x], is_light, opacity);
    }
  cairo_surface_mark_dirty (ink);
  return ink;
}

/* The coarsest that still has a pixel for each of the device's; @fineness: pixels of the finest to one of the device's */
static int
choose_level (LrUnderlay *self,
              double      fineness)
{
  int level = 0;

  while (level + 1 < MAX_LEVELS && fineness >= 2.0
         && MIN (cairo_image_surface_get_width (self->levels[level]), cairo_image_surface_get_height (self->levels[level])) >= 2 * LEAST_PX)
    {
      if (self->levels[level + 1] == NULL)
        self->levels[level + 1] = make_half (self->levels[level]);
      level++;
      fineness /= 2.0;
    }
  return level;
}

static cairo_surface_t *
choose_ink (LrUnderlay *self,
            int         level,
            gboolean    is_light,
            guint       opacity)
{
  Ink *ink = &self->inks[opacity == FULL];

  if (ink->surface == NULL || ink->level != level || ink->is_light != is_light || ink->opacity != opacity)
    {
      g_clear_pointer (&ink->surface, cairo_surface_destroy);
      *ink = (Ink) { make_ink (self->levels[level], is_light, opacity), level, is_light, opacity };
    }
  return ink->surface;
}

/**
 * lr_underlay_paint:
 * @underlay: a picture
 * @cr: where to paint, over the paper
 * @lies: how it lies on the floor
 * @scale: device units per metre
 * @origin: device place of the room's 0, 0; y runs down on the device
 * @dim: 0: in full strength, 1: not to be seen
 * @is_dark: whether the paper is
 */
void
lr_underlay_paint (LrUnderlay         *underlay,
                   cairo_t            *cr,
                   const LrSimilarity *lies,
                   double              scale,
                   LrVec2              origin,
                   double              dim,
                   gboolean            is_dark)
{
  double width = cairo_image_surface_get_width (underlay->levels[0]), by = lies->scale * scale;
  guint opacity = (guint) lround (FULL * CLAMP (1.0 - dim, 0.0, 1.0));
  cairo_surface_t *surface = choose_ink (underlay, choose_level (underlay, width / (underlay->width_px * by)), is_dark, opacity);
  LrVec2 right = lr_vec2_polar (lies->turn_rad, by), up = lr_vec2_left (right);
  double to_x = underlay->width_px / cairo_image_surface_get_width (surface);
  double to_y = underlay->height_px / cairo_image_surface_get_height (surface);
  cairo_matrix_t matrix;

  if (opacity == 0 || cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    return;

  /* its pixels run down, its own y and the room's up, the device's down again */
  cairo_matrix_init (&matrix, right.x * to_x, -right.y * to_x, -up.x * to_y, up.y * to_y,
                     origin.x + lies->origin_m.x * scale + up.x * underlay->height_px,
                     origin.y - lies->origin_m.y * scale - up.y * underlay->height_px);
  cairo_save (cr);
  cairo_transform (cr, &matrix);
  cairo_set_source_surface (cr, surface, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BILINEAR);
  cairo_paint (cr);
  cairo_restore (cr);
}
