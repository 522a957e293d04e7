/* page_frames.c - the two pictures as they will be cut, and the figures of every cut
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sentence that judges a cut stands in the list of what is still open; its mark alone stands here.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"
#include "strip.h"
#include "symbols.h"
#include "viewfinder.h"

#define TITLE_PT      11.7 /* height of the line over a picture */
#define TITLE_UP_PT    4.7 /* of its baseline over the picture */
#define UNIT_PT        0.42 /* of what is drawn over the pictures: thinner than the page's own lines */
#define FIGURES_PT     8.8 /* from the pictures' foot to the first line's baseline */
#define LINE_PT        8.6
#define LINES_FOOT_PT  1.0
#define LEAST_SHARE    0.95/* of the pictures' height, where the tables need room */
#define MARK_PT        3.1 /* half the width of a grade's mark */
#define MARK_SPACE_PT 10.0
#define MOST_LINES     4   /* of cuts */
#define N_FRAMES LR_STRIP_SIDES

static void
draw_title (const LrSheet         *sheet,
            const LrCameraReading *camera,
            double                 x,
            double                 y,
            double                 width)
{
  g_autofree char *lens = lr_camera_lens_title (camera);
  double tag_width, tag_height, shot = 0.0;

  lr_tag_measure (sheet->cr, sheet->theme, LR_ITEM_CAMERA, camera->item->tag, 7.4, &tag_width, &tag_height);
  lr_page_tag_begin (sheet, "Caption");
  lr_tag_draw (sheet->cr, sheet->theme, LR_ITEM_CAMERA, camera->item->tag, 7.4, x + tag_width / 2.0, y - 2.7);
  if (camera->has_subject)
    shot = lr_page_put (sheet, 7.6, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, sheet->theme->ink, x + tag_width + 4.0, y,
                        lr_shot_title (camera->framing.shot));
  /* the lens stands in the table, too: it goes where both have no room */
  if (shot + tag_width + 8.0 + lr_page_text_width (sheet, sheet->body_size, PANGO_WEIGHT_NORMAL, lens) < width)
    lr_page_put (sheet, sheet->body_size, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, sheet->theme->ink2, x + width, y, lens);
  lr_page_tag_end (sheet, "Caption");
}

static void
draw_edge (const LrSheet *sheet,
           double         x,
           double         y,
           double         width,
           double         height)
{
  cairo_save (sheet->cr);
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (sheet->cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_rectangle (sheet->cr, x, y, width, height);
  cairo_stroke (sheet->cr);
  cairo_restore (sheet->cr);
}

/* One picture, as wide as one of two and at most as high as a 16:9 one; returns its foot */
static double
draw_one (const LrSheet         *sheet,
          const LrCameraReading *camera,
          const LrBox           *box,
          double                 most_height,
          double                 y)
{
  double width = box->width / N_FRAMES;
  LrViewfinderStyle style = { .width = width, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE, .unit = UNIT_PT,
                              .levels = sheet->options->levels };
  double height = lr_viewfinder_height (camera, width);

  if (height > most_height)
    {
      style.width *= most_height / height;
      height = lr_viewfinder_height (camera, style.width);
    }

  draw_title (sheet, camera, box->x, y - TITLE_UP_PT, width);
  lr_page_tag_begin (sheet, "Figure");
  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, box->x, y);
  lr_viewfinder_draw (sheet->cr, sheet->study, camera, &style);
  cairo_restore (sheet->cr);
  draw_edge (sheet, box->x, y, style.width, height);
  lr_page_tag_end (sheet, "Figure");
  return y + height;
}

static LrStripStyle
strip_style (const LrBox *box,
             double       most_height)
{
  return (LrStripStyle) { .width = box->width, .most_height = most_height, .unit = UNIT_PT };
}

static double
strip_foot (const LrStrip *strip,
            const LrBox   *box,
            double         most_height,
            double         y)
{
  const LrStripStyle style = strip_style (box, most_height);
  LrStripPlace place;

  lr_strip_place (strip, &style, &place);
  return y + place.height;
}

static void
draw_strip (const LrSheet *sheet,
            const LrStrip *strip,
            const LrBox   *box,
            double         most_height,
            double         y)
{
  const LrStripStyle style = strip_style (box, most_height);
  LrStripPlace place;

  lr_strip_place (strip, &style, &place);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    draw_title (sheet, strip->camera[side], box->x + place.x[side], y - TITLE_UP_PT, place.width[side]);

  lr_page_tag_begin (sheet, "Figure");
  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, box->x, y);
  lr_strip_draw_pictures (sheet->cr, sheet->theme, strip, &style);
  for (int side = 0; side < LR_STRIP_SIDES; side++)
    draw_edge (sheet, place.x[side], 0.0, place.width[side], place.height);
  cairo_restore (sheet->cr);
  lr_page_tag_end (sheet, "Figure");
}

/* --- The figures of the cuts ---------------------------------------------------------------------------------- */

typedef struct
{
  char     *markup;
  gboolean  has_grade;
  LrGrade   grade;
} Line;

static void
clear_line (gpointer data)
{
  g_free (((Line *) data)->markup);
}

static void
add_cut (GArray        *lines,
         const LrStrip *strip)
{
  const LrRemark *remark = lr_strip_remark (strip);
  g_autofree char *spaced = lr_strip_short_figures (strip), *figures = NULL;
  g_auto (GStrv) parts = g_strsplit (spaced, "   ", -1);
  Line line = { NULL, remark != NULL, remark != NULL ? remark->grade : LR_GRADE_FINE };

  /* commas take less room than the wide spaces of the screen */
  figures = g_strjoinv (", ", parts);
  /* Translators: a cut from one camera to another; what it is like follows */
  line.markup = g_markup_printf_escaped (_("<b>Cut %s–%s</b>  %s"), strip->camera[0]->item->tag, strip->camera[1]->item->tag, figures);
  g_array_append_val (lines, line);
}

/* (transfer full): of LrStrip: every cut that can be compared, but for the one that is shown */
static GArray *
other_cuts_new (const LrSheet *sheet,
                const LrStrip *shown)
{
  const GArray *cameras = sheet->study->cameras;
  GArray *cuts = g_array_new (FALSE, FALSE, sizeof (LrStrip));

  for (guint i = 0; i < cameras->len; i++)
    for (guint j = i + 1; j < cameras->len; j++)
      {
        const LrCameraReading *a = &g_array_index (cameras, LrCameraReading, i), *b = &g_array_index (cameras, LrCameraReading, j);
        LrStrip strip;

        if ((a != shown->camera[0] || b != shown->camera[1])
            && lr_strip_init (&strip, sheet->study, sheet->remarks, a->item->id, b->item->id) && lr_strip_is_compared (&strip))
          g_array_append_val (cuts, strip);
      }
  return cuts;
}

/* (transfer full): of Line: that of the pictures first, then the other cuts, with a count of what was left out */
static GArray *
lines_new (const LrSheet *sheet,
           const LrStrip *shown,
           guint          most)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));
  g_autoptr (GArray) others = other_cuts_new (sheet, shown);
  guint n_shown = 0;

  g_array_set_clear_func (lines, clear_line);
  if (lr_strip_is_compared (shown))
    add_cut (lines, shown);
  for (; n_shown < others->len && lines->len < most; n_shown++)
    add_cut (lines, &g_array_index (others, LrStrip, n_shown));

  if (n_shown < others->len)
    {
      guint n = others->len - n_shown;
      Line more = { g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "and %u more cut", "and %u more cuts", n), n), FALSE, LR_GRADE_FINE };

      g_array_append_val (lines, more);
    }
  return lines;
}

static void
draw_lines (const LrSheet *sheet,
            const GArray  *lines,
            const LrBox   *box,
            double         y)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const Line *line = &g_array_index (lines, Line, i);
      double x = line->has_grade ? box->x + MARK_SPACE_PT : box->x;

      y += i == 0 ? FIGURES_PT : LINE_PT;
      if (line->has_grade)
        lr_grade_mark_draw (sheet->cr, sheet->theme, line->grade, MARK_PT, box->x + MARK_PT, y - 2.4);
      lr_page_tag_begin (sheet, "P");
      lr_page_put_line (sheet, sheet->theme->ink, sheet->body_size, x, y, box->x + box->width - x, line->markup);
      lr_page_tag_end (sheet, "P");
    }
}

static double
lines_height (const GArray *lines)
{
  return lines->len > 0 ? FIGURES_PT + (lines->len - 1) * LINE_PT + LINES_FOOT_PT : 0.0;
}

/* --- All of it ------------------------------------------------------------------------------------------------ */

/**
 * lr_page_frames_draw:
 * @sheet: the page
 * @box: the column
 * @y: foot of what stands above [pt]
 * @missing_pt: height that the tables below lack while the pictures have their full size; not above 0: none
 *
 * Draws the main camera's picture and that of the camera that it is cut against most, with the cut between them; one
 * camera's alone. Where height is missing the pictures give way by little, if that is enough;
 * else the other cuts are only counted.
 *
 * Returns: foot of what was drawn [pt]
 */
double
lr_page_frames_draw (const LrSheet *sheet,
                     const LrBox   *box,
                     double         y,
                     double         missing_pt)
{
  const GArray *cameras = sheet->study->cameras;
  double full = box->width / N_FRAMES * 9.0 / 16.0, most = full;
  g_autoptr (GArray) lines = NULL;
  LrStrip strip;

  if (cameras->len == 0)
    return y;

  y += TITLE_PT;
  lr_page_anchor (sheet, "frames");
  if (!lr_strip_init_main (&strip, sheet->study, sheet->remarks))
    return draw_one (sheet, &g_array_index (cameras, LrCameraReading, 0), box, most, y);

  strip.levels = sheet->options->levels;
  full = strip_foot (&strip, box, most, y) - y;
  most = missing_pt > 0.0 && missing_pt <= (1.0 - LEAST_SHARE) * full ? full - missing_pt : full;
  draw_strip (sheet, &strip, box, most, y);
  y = strip_foot (&strip, box, most, y);
  lines = lines_new (sheet, &strip, missing_pt > (1.0 - LEAST_SHARE) * full ? 1 : MOST_LINES);
  draw_lines (sheet, lines, box, y);
  return y + lines_height (lines);
}

/**
 * lr_page_frames_foot:
 * @sheet: the page
 * @box: the column
 * @y: foot of what stands above [pt]
 *
 * Returns: what lr_page_frames_draw() returns when nothing is missing
 */
double
lr_page_frames_foot (const LrSheet *sheet,
                     const LrBox   *box,
                     double         y)
{
  const GArray *cameras = sheet->study->cameras;
  double most = box->width / N_FRAMES * 9.0 / 16.0;
  g_autoptr (GArray) lines = NULL;
  LrStrip strip;

  if (cameras->len == 0)
    return y;

  y += TITLE_PT;
  if (!lr_strip_init_main (&strip, sheet->study, sheet->remarks))
    return y + fmin (most, lr_viewfinder_height (&g_array_index (cameras, LrCameraReading, 0), box->width / N_FRAMES));

  lines = lines_new (sheet, &strip, MOST_LINES);
  return strip_foot (&strip, box, most, y) + lines_height (lines);
}
