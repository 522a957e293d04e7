/* theme.c - the palette, line weights and type of a drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hues from the set of Okabe and Ito, "Color Universal Design" (2008), which people with deuteranopia and protanopia tell apart.
 * A fill is the set's own colour and always has an ink edge; a line is the same hue at a legible lightness. Line widths and
 * dashes after ISO 128-2: dashes are counted in line widths.
 */

#include "theme.h"

#define RGB(hex) { (((hex) >> 16) & 0xff) / 255.0, (((hex) >> 8) & 0xff) / 255.0, ((hex) & 0xff) / 255.0 }

/* Finest unit that a dash is counted in: under it dots would vanish */
#define LEAST_DASH_UNIT 0.55

#define OKABE_ITO_FILLS { RGB (0x56B4E9), RGB (0xE69F00), RGB (0xCC79A7), RGB (0xF0E442), RGB (0x009E73) }

static const LrTheme themes[LR_N_THEMES] = {
  [LR_THEME_LIGHT] = {
    .ink = RGB (0x1F2328), .ink2 = RGB (0x565B61), .ink3 = RGB (0x84888C),
    .family_line = { RGB (0x005F99), RGB (0x9A6700), RGB (0x9A4A76), RGB (0x7A6E00), RGB (0x00694D) },
    .family_fill = OKABE_ITO_FILLS,
    .family_wash = { 0.19, 0.24, 0.13, 0.38, 0.19 },
    .fix_line = RGB (0x932F00), .fix_fill = RGB (0xD55E00),
    .in_hand = RGB (0x0072B2), .in_hand_halo = RGB (0x56B4E9),
    .furniture_edge = RGB (0x706D67), .furniture_fill = RGB (0xF3F0E9),
    .ground = RGB (0xEEEBE4), .room = RGB (0xFDFCF9), .grid = RGB (0xE4E0D8), .wall = RGB (0xC3BEB4),
    .equipment = RGB (0x2B3036), .clothes = RGB (0xFFFFFF), .glass = RGB (0xDCE9F0), .blind = RGB (0x8A857B),
    .line_width = { 2.6, 1.9, 1.3, 0.9, 0.7 },
    .type_size = { 12.0, 13.0, 13.5, 12.5, 13.0, 15.5, 11.0, 10.5, 9.5 },
    .halo_width = 3.2, .band_width = 2.1, .unit_px = 1.0,
    .font_family = "Inter, Cantarell, Sans",
  },
  [LR_THEME_DARK] = {
    .ink = RGB (0xEDEAE3), .ink2 = RGB (0xB7B4AD), .ink3 = RGB (0x85837E),
    .family_line = { RGB (0x7CC3EE), RGB (0xF0AE2E), RGB (0xDE9BC2), RGB (0xF0E442), RGB (0x3CC79C) },
    .family_fill = OKABE_ITO_FILLS,
    .family_wash = { 0.16, 0.16, 0.14, 0.22, 0.16 },
    .fix_line = RGB (0xFF8A4C), .fix_fill = RGB (0xFF8A4C),
    .in_hand = RGB (0x7CC8F5), .in_hand_halo = RGB (0x56B4E9),
    .furniture_edge = RGB (0xA9A69F), .furniture_fill = RGB (0x35383C),
    .ground = RGB (0x191A1C), .room = RGB (0x26282B), .grid = RGB (0x2E3033), .wall = RGB (0x4E4E4C),
    .equipment = RGB (0xE4E1DA), .clothes = RGB (0x3A3D41), .glass = RGB (0x3A4A54), .blind = RGB (0x8F8B83),
    .line_width = { 2.6, 1.9, 1.3, 0.9, 0.7 },
    .type_size = { 12.0, 13.0, 13.5, 12.5, 13.0, 15.5, 11.0, 10.5, 9.5 },
    .halo_width = 3.2, .band_width = 2.1, .unit_px = 1.0,
    .font_family = "Inter, Cantarell, Sans",
  },
  [LR_THEME_PAGE] = {
    .ink = RGB (0x111417), .ink2 = RGB (0x4A4E53), .ink3 = RGB (0x7B7F83),
    .family_line = { RGB (0x00517F), RGB (0x7A5100), RGB (0x85396A), RGB (0x7A6E00), RGB (0x005A42) },
    .family_fill = OKABE_ITO_FILLS,
    .family_wash = { 0.16, 0.24, 0.13, 0.38, 0.16 },
    .fix_line = RGB (0x8A2A00), .fix_fill = RGB (0x8A2A00),
    /* nothing is in hand on paper */
    .in_hand = RGB (0x00517F), .in_hand_halo = RGB (0x56B4E9),
    .furniture_edge = RGB (0x706D67), .furniture_fill = RGB (0xF4F3F0),
    .ground = RGB (0xFFFFFF), .room = RGB (0xFFFFFF), .grid = RGB (0xEDEBE7), .wall = RGB (0xBDBAB4),
    .equipment = RGB (0x2B3036), .clothes = RGB (0xFFFFFF), .glass = RGB (0xE6EEF2), .blind = RGB (0x8A857B),
    .line_width = { 1.42, 1.0, 0.71, 0.45, 0.35 },
    .type_size = { 7.6, 8.6, 8.0, 7.2, 7.2, 8.6, 6.8, 6.6, 6.5 },
    .halo_width = 2.0, .band_width = 2.69, .unit_px = 0.64,
    .font_family = "Inter, DejaVu Sans, Sans",
  },
};

typedef struct
{
  int    n;
  double length[8]; /* in line widths, on and off in turn */
} DashPattern;

static const DashPattern dashes[LR_N_DASHES] = {
  [LR_DASH_SOLID]          = { 0, { 0 } },
  [LR_DASH_B]              = { 2, { 12, 3 } },
  [LR_DASH_C]              = { 4, { 12, 3, 0.5, 3 } },
  [LR_DASH_D]              = { 6, { 12, 3, 0.5, 3, 0.5, 3 } },
  [LR_DASH_SHORT]          = { 2, { 6, 3 } },
  [LR_DASH_FINE]           = { 2, { 3, 3 } },
  [LR_DASH_AXIS]           = { 4, { 24, 3, 0.5, 3 } },
  [LR_DASH_LINE_OF_ACTION] = { 4, { 24, 4, 1, 4 } },
  [LR_DASH_GHOST]          = { 6, { 24, 3, 0.5, 3, 0.5, 3 } },
  [LR_DASH_LEAD]           = { 4, { 7, 2.2, 1.2, 2.2 } },
  [LR_DASH_LEAD_2]         = { 6, { 7, 2.2, 1.2, 2.2, 1.2, 2.2 } },
  [LR_DASH_LEAD_3]         = { 8, { 7, 2.2, 1.2, 2.2, 1.2, 2.2, 1.2, 2.2 } },
};

/**
 * lr_theme_get:
 * @id: which
 *
 * Returns: (transfer none): a palette; it is constant, a caller that needs another font copies it
 */
const LrTheme *
lr_theme_get (LrThemeId id)
{
  g_return_val_if_fail (id >= 0 && id < LR_N_THEMES, &themes[LR_THEME_LIGHT]);

  return &themes[id];
}

/**
 * lr_theme_set_color:
 * @cr: a cairo context
 * @color: a colour of a theme
 * @alpha: 0 clear to 1 solid
 *
 * Makes the colour the source of what is painted next.
 */
void
lr_theme_set_color (cairo_t *cr,
                    LrColor  color,
                    double   alpha)
{
  cairo_set_source_rgba (cr, color.r, color.g, color.b, alpha);
}

/**
 * lr_theme_set_line:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @weight: which of the widths
 * @dash: which of the patterns
 *
 * Width, dash and ends of the strokes that follow. Joins are round, dashes have butt ends.
 */
void
lr_theme_set_line (cairo_t       *cr,
                   const LrTheme *theme,
                   LrLineWeight   weight,
                   LrDash         dash)
{
  lr_theme_set_line_at (cr, theme, weight, dash, 1.0);
}

/**
 * lr_theme_set_line_at:
 * @cr: a cairo context
 * @theme: a palette
 * @weight: which of the widths
 * @dash: which of the patterns
 * @scale: device units in one unit of @cr, > 0
 *
 * As lr_theme_set_line(), for paths whose coordinates are not device units: a stroke keeps its weight at every zoom.
 */
void
lr_theme_set_line_at (cairo_t       *cr,
                      const LrTheme *theme,
                      LrLineWeight   weight,
                      LrDash         dash,
                      double         scale)
{
  const DashPattern *pattern = &dashes[dash];
  double width = theme->line_width[weight];
  double unit = MAX (width, LEAST_DASH_UNIT) / scale;
  double lengths[G_N_ELEMENTS (pattern->length)];

  for (int i = 0; i < pattern->n; i++)
    lengths[i] = pattern->length[i] * unit;

  cairo_set_line_width (cr, width / scale);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, dash == LR_DASH_SOLID ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, lengths, pattern->n, 0.0);
}
