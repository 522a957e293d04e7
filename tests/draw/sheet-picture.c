/* sheet-picture.c - the sheet of a plan on three grounds and each overlay alone, for looking at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * sheet-picture PLAN FOLDER writes sheet-light.png, sheet-dark.png, sheet-page.png and sheet-overlays.png.
 */

#include <string.h>

#include "floor.h"
#include "plan_reader.h"
#include "text.h"

#define WIDTH 904
#define HEIGHT 755
#define SHOWN (LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND)

typedef struct
{
  LrPlan    *plan;
  LrStudy   *study;
  LrRemarks *remarks;
} Drawn;

static cairo_t *
new_context (double width,
             double height,
             double zoom)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (width * zoom), (int) (height * zoom));
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, zoom, zoom);
  cairo_surface_destroy (surface);

  return cr;
}

static void
write_and_free (cairo_t    *cr,
                const char *folder,
                const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_surface_write_to_png (cairo_get_target (cr), path), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
}

/* The first Fix that has a remedy, or none */
static const LrRemark *
find_remark (const LrRemarks *remarks)
{
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (remarks->all, i);

      if (remark->grade != LR_GRADE_FINE && remark->remedy != NULL)
        return remark;
    }

  return NULL;
}

static void
write_sheet (const Drawn *drawn,
             const char  *folder,
             LrThemeId    id,
             const char  *name,
             double       zoom)
{
  cairo_t *cr = new_context (WIDTH, HEIGHT, zoom);
  const LrRemark *remark = find_remark (drawn->remarks);
  g_autoptr (LrPlan) ghost = remark != NULL ? lr_remedy_apply (remark->remedy, drawn->plan, NULL) : NULL;
  LrView view = {
    .width = WIDTH, .height = HEIGHT, .theme = lr_theme_get (id), .shown = SHOWN, .has_dimensions = TRUE,
    .remark = remark, .ghost = ghost, .in_hand = remark != NULL ? remark->ids[0] : NULL,
  };

  lr_view_fit (&view, drawn->study, 90.0, 0.0);
  view.scale = 103.0;
  view.origin = lr_vec2 (94.0, 672.0);
  lr_floor_draw (cr, drawn->plan, drawn->study, drawn->remarks, &view);
  write_and_free (cr, folder, name);
}

static void
write_page (const Drawn *drawn,
            const char  *folder)
{
  double scale = 72.0 / 25.4 * 1000.0 / 50.0;
  cairo_t *cr = new_context (500.0, 420.0, 2.5);
  LrView view = {
    .width = 500.0, .height = 420.0, .theme = lr_theme_get (LR_THEME_PAGE), .shown = LR_SHOW_SIGHT, .is_page = TRUE,
    .scale = scale, .origin = { 40.0, 380.0 },
  };

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  lr_floor_draw (cr, drawn->plan, drawn->study, drawn->remarks, &view);
  write_and_free (cr, folder, "sheet-page.png");
}

static void
write_overlays (const Drawn *drawn,
                const char  *folder)
{
  static const struct { const char *title; guint shown; } panels[] = {
    { "Sight", LR_SHOW_SIGHT }, { "Light", LR_SHOW_LIGHT }, { "Sound", LR_SHOW_SOUND },
    { "Sun", LR_SHOW_SUN },     { "Power", LR_SHOW_POWER }, { "None", 0 },
  };
  cairo_t *cr = new_context (1860.0, 1180.0, 1.0);
  LrTextStyle style = { .size = 16.0, .weight = PANGO_WEIGHT_BOLD };

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  for (gsize i = 0; i < G_N_ELEMENTS (panels); i++)
    {
      LrView view = {
        .width = 600.0, .height = 570.0, .theme = lr_theme_get (LR_THEME_LIGHT), .shown = panels[i].shown,
        .scale = 64.0, .origin = { 70.0, 500.0 },
      };

      cairo_save (cr);
      cairo_translate (cr, 10.0 + 620.0 * (double) (i % 3), 10.0 + 590.0 * (double) (i / 3));
      cairo_rectangle (cr, 0.0, 0.0, 600.0, 570.0);
      cairo_clip (cr);
      lr_floor_draw (cr, drawn->plan, drawn->study, NULL, &view);
      lr_theme_set_color (cr, view.theme->ink, 1.0);
      lr_text_draw (cr, view.theme, &style, 190.0, 30.0, panels[i].title);
      cairo_restore (cr);
    }
  write_and_free (cr, folder, "sheet-overlays.png");
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;
  Drawn drawn;

  if (argc < 3)
    {
      g_printerr ("sheet-picture PLAN FOLDER\n");
      return 2;
    }

  drawn.plan = lr_plan_read (argv[1], &error);
  if (drawn.plan == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }
  drawn.study = lr_study_new (drawn.plan);
  drawn.remarks = lr_remarks_new (drawn.study, LR_UNITS_METRIC);

  g_mkdir_with_parents (argv[2], 0777);
  write_sheet (&drawn, argv[2], LR_THEME_LIGHT, "sheet-light.png", 1.0);
  write_sheet (&drawn, argv[2], LR_THEME_DARK, "sheet-dark.png", 1.0);
  write_sheet (&drawn, argv[2], LR_THEME_LIGHT, "sheet-light-2x.png", 2.0);
  write_page (&drawn, argv[2]);
  write_overlays (&drawn, argv[2]);

  lr_remarks_free (drawn.remarks);
  lr_study_free (drawn.study);
  lr_plan_unref (drawn.plan);

  return 0;
}
