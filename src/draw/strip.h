/* strip.h - two cameras side by side, as they will be cut against each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"
#include "remarks.h"
#include "theme.h"

#define LR_STRIP_SIDES 2 /* before and after the splice */

typedef struct
{
  const LrStudy         *study;
  const LrRemarks       *remarks; /* may be NULL: no verdict */
  const LrLightLevels   *levels;  /* of light, for the pictures; may be NULL */
  const LrCameraReading *camera[LR_STRIP_SIDES];
  const LrPairReading   *pair;    /* the same person; may be NULL */
  const LrReverseReading *reverse; /* two people who look at each other; may be NULL. With neither nothing is compared */
} LrStrip;

typedef struct
{
  double width;       /* of both pictures and the splice, device units */
  double most_height; /* of the pictures; 0: what the width gives */
  double unit;        /* a pixel of the screen's figures, for what is drawn over and between the pictures */
  gboolean is_in_hand; /* a remark about the cut is in hand, of the grade below */
  LrGrade  grade;
} LrStripStyle;

/* Where the pictures stand, device units from the strip's upper left corner */
typedef struct
{
  double x[LR_STRIP_SIDES], width[LR_STRIP_SIDES];
  double height;
} LrStripPlace;

typedef enum { LR_LOOK_UNKNOWN, LR_LOOK_LEFT, LR_LOOK_LENS, LR_LOOK_RIGHT } LrLook;

/* FALSE, with the strip untouched, if one of them is no camera of the study */
gboolean lr_strip_init  (LrStrip *strip, const LrStudy *study, const LrRemarks *remarks, const char *id_a, const char *id_b);
/* The cut that is made most: the main camera and the next one on the same person, else on whom that one looks at. FALSE: there are no two cameras */
gboolean lr_strip_init_main (LrStrip *strip, const LrStudy *study, const LrRemarks *remarks);
/* Whether the two show one person, or two who look at each other */
gboolean lr_strip_is_compared (const LrStrip *strip);

void     lr_strip_place (const LrStrip *strip, const LrStripStyle *style, LrStripPlace *place);
/* The pictures, the splice between them and the level of the eyes, with its upper left corner at 0, 0 */
void     lr_strip_draw_pictures (cairo_t *cr, const LrTheme *theme, const LrStrip *strip, const LrStripStyle *style);
/* The same without the pictures: over others of that size */
void     lr_strip_draw_guides   (cairo_t *cr, const LrTheme *theme, const LrStrip *strip, const LrStripStyle *style);

/* strip_whole.c: with titles above, figures and the verdict's sentence below */
void     lr_strip_draw   (cairo_t *cr, const LrTheme *theme, const LrStrip *strip, const LrStripStyle *style);
double   lr_strip_height (cairo_t *cr, const LrTheme *theme, const LrStrip *strip, const LrStripStyle *style);

/* strip_words.c */
/* "medium → medium close-up, 1 size apart   22° round   eyes 31 % and 34 % down   both look left"; (transfer full) */
char    *lr_strip_figures (const LrStrip *strip);
/* The same where titles tell the sizes: "1 size apart   22° round ..."; (transfer full) */
char    *lr_strip_short_figures (const LrStrip *strip);
/* What is worst about the cut; NULL if nothing is known about it */
const LrRemark *lr_strip_remark (const LrStrip *strip);
char  *lr_strip_sentence (const LrStrip *strip); /* its markup, and how many more there are; (transfer full) (nullable) */
/* Whether the remark concerns the cut */
gboolean lr_strip_is_about (const LrStrip *strip, const LrRemark *remark);
/* Where the person looks in the picture */
LrLook   lr_camera_look (const LrCameraReading *camera);
