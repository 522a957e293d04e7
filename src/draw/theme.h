/* theme.h - the palette, line weights and type of a drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct { double r, g, b; } LrColor;

typedef enum { LR_FAMILY_SIGHT, LR_FAMILY_LIGHT, LR_FAMILY_SOUND, LR_FAMILY_SUN, LR_FAMILY_POWER, LR_N_FAMILIES } LrFamily;
typedef enum { LR_LINE_WALL, LR_LINE_THICK, LR_LINE_OUTLINE, LR_LINE_THIN, LR_LINE_HAIR, LR_N_LINES } LrLineWeight;
typedef enum
{
  LR_DASH_SOLID, LR_DASH_B, LR_DASH_C, LR_DASH_D, LR_DASH_SHORT, LR_DASH_FINE, LR_DASH_AXIS, LR_DASH_LINE_OF_ACTION,
  LR_DASH_GHOST, LR_DASH_LEAD, LR_DASH_LEAD_2, LR_DASH_LEAD_3, /* by circuit: one, two and three dots */
  LR_N_DASHES
} LrDash;
/* Sizes of type on the sheet */
typedef enum
{
  LR_TYPE_TAG, LR_TYPE_CAMERA_TAG, LR_TYPE_NAME, LR_TYPE_JOB, LR_TYPE_DISTANCE, LR_TYPE_FIGURE, LR_TYPE_NOTE, LR_TYPE_STOP,
  LR_TYPE_DB, LR_N_TYPES
} LrType;
typedef enum { LR_THEME_LIGHT, LR_THEME_DARK, LR_THEME_PAGE, LR_N_THEMES } LrThemeId;

/* A value: copy one to change a member of it, the font family of the desktop for one */
typedef struct
{
  LrColor ink, ink2, ink3;
  LrColor family_line[LR_N_FAMILIES], family_fill[LR_N_FAMILIES];
  double  family_wash[LR_N_FAMILIES];           /* alpha */
  LrColor fix_line, fix_fill, in_hand, in_hand_halo;
  LrColor furniture_edge, furniture_fill;
  LrColor ground, room, grid, wall, equipment, clothes, glass, blind;
  double  line_width[LR_N_LINES];               /* in px or pt */
  double  type_size[LR_N_TYPES];                /* in px or pt */
  double  halo_width;                           /* stroke under text */
  double  band_width;                           /* how much wider than a line the band under it is, where it passes over another */
  double  unit_px;                              /* one pixel of the screen's figures in this theme's unit: 1 or the page's share */
  const char *font_family;
} LrTheme;

const LrTheme *lr_theme_get (LrThemeId id);

void lr_theme_set_color (cairo_t *cr, LrColor color, double alpha);
/* Width and dash of a stroke; dashes are in line widths of at least .55 px */
void lr_theme_set_line  (cairo_t *cr, const LrTheme *theme, LrLineWeight weight, LrDash dash);
/* The same while the user space of @cr is @scale device units to the unit: 110 px to the metre */
void lr_theme_set_line_at (cairo_t *cr, const LrTheme *theme, LrLineWeight weight, LrDash dash, double scale);
