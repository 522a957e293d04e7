/* symbols-picture.c - every symbol in three states on three grounds, for looking at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * symbols-picture FOLDER writes symbols-light.png, symbols-dark.png and symbols-page.png.
 */

#include "plan.h"
#include "symbols.h"
#include "text.h"

#define WIDTH 1200
#define ROW_HEIGHT 150
#define ROWS 9

typedef struct
{
  const char *title;
  LrItemKind  kind;
  int         form;
} Sample;

static const Sample samples[] = {
  { "Subject", LR_ITEM_PERSON, LR_ROLE_SUBJECT },
  { "Interviewer", LR_ITEM_PERSON, LR_ROLE_INTERVIEWER },
  { "Other, standing", LR_ITEM_PERSON, LR_ROLE_OTHER },
  { "Camera", LR_ITEM_CAMERA, 0 },
  { "Wide emitter", LR_ITEM_LIGHT, LR_LIGHT_WIDE },
  { "Small panel", LR_ITEM_LIGHT, LR_LIGHT_PANEL },
  { "Point source", LR_ITEM_LIGHT, LR_LIGHT_POINT },
  { "Boom", LR_ITEM_MICROPHONE, LR_MIC_BOOM },
  { "Stand microphone", LR_ITEM_MICROPHONE, LR_MIC_STAND },
  { "Lavalier", LR_ITEM_MICROPHONE, LR_MIC_LAVALIER },
  { "Reflector", LR_ITEM_PANEL, LR_PANEL_REFLECTOR },
  { "Flag", LR_ITEM_PANEL, LR_PANEL_FLAG },
  { "Backdrop", LR_ITEM_PANEL, LR_PANEL_BACKDROP },
  { "Table", LR_ITEM_FURNITURE, LR_FURNITURE_TABLE },
  { "Chair", LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR },
  { "Sofa", LR_ITEM_FURNITURE, LR_FURNITURE_SOFA },
  { "Cabinet", LR_ITEM_FURNITURE, LR_FURNITURE_CABINET },
  { "Chest", LR_ITEM_FURNITURE, LR_FURNITURE_CHEST },
  { "Radiator", LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR },
  { "Box", LR_ITEM_FURNITURE, LR_FURNITURE_BOX },
  { "Cylinder", LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER },
  { "Door", LR_ITEM_DOOR, 0 },
  { "Window, blind up", LR_ITEM_WINDOW, LR_BLIND_UP },
  { "Window, half", LR_ITEM_WINDOW, LR_BLIND_HALF },
  { "Window, down", LR_ITEM_WINDOW, LR_BLIND_DOWN },
  { "Socket", LR_ITEM_SOCKET, 0 },
  { "Circuit", LR_ITEM_CIRCUIT, 0 },
  { "House light, off", LR_ITEM_HOUSE_LIGHT, 0 },
  { "House light, on", LR_ITEM_HOUSE_LIGHT, 1 },
  { "Noise", LR_ITEM_NOISE, 0 },
  { "Lead", LR_ITEM_LEAD, 0 },
  { "Lens", LR_ITEM_LENS, 0 },
};

static LrItem *
make_item (const Sample *sample)
{
  LrItem *item = lr_item_new (sample->kind, "sample");

  switch (sample->kind)
    {
    case LR_ITEM_PERSON:
      item->person.role = sample->form;
      item->person.posture = sample->form == LR_ROLE_OTHER ? LR_POSTURE_STANDING : LR_POSTURE_SEATED;
      break;
    case LR_ITEM_LIGHT:
      item->light.form = sample->form;
      item->light.width_m = sample->form == LR_LIGHT_WIDE ? 0.9 : 0.3;
      item->light.beam_rad = 44.0 * LR_DEG;
      item->light.stand_radius_m = sample->form == LR_LIGHT_WIDE ? 0.5 : 0.42;
      break;
    case LR_ITEM_MICROPHONE:
      item->microphone.form = sample->form;
      break;
    case LR_ITEM_PANEL:
      item->panel.form = sample->form;
      item->panel.width_m = 1.0;
      item->panel.stand_radius_m = 0.3;
      break;
    case LR_ITEM_FURNITURE:
      item->furniture.form = sample->form;
      item->furniture.length_m = sample->form == LR_FURNITURE_CHAIR ? 0.51 : 1.1;
      item->furniture.width_m = sample->form == LR_FURNITURE_CHAIR ? 0.46 : sample->form == LR_FURNITURE_RADIATOR ? 0.1 : 0.6;
      break;
    case LR_ITEM_WINDOW:
      item->window.width_m = 0.9;
      item->window.blind = sample->form;
      break;
    case LR_ITEM_HOUSE_LIGHT:
      item->house_light.is_on = sample->form;
      break;
    case LR_ITEM_NOISE:
      item->noise.length_m = item->noise.width_m = 0.6;
      break;
    case LR_ITEM_LEAD:
      item->path_m = g_new0 (LrVec2, 4);
      item->n_path = 4;
      item->path_m[1] = lr_vec2 (0.0, 0.55);
      item->path_m[2] = lr_vec2 (0.7, 0.55);
      item->path_m[3] = lr_vec2 (1.0, 0.75);
      break;
    case LR_ITEM_DOOR:
      item->door.width_m = 0.8;
      break;
    case LR_ITEM_CAMERA:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }

  return item;
}

static void
draw_at (cairo_t       *cr,
         const LrTheme *theme,
         const LrItem  *item,
         double         scale,
         double         x,
         double         y)
{
  LrView view = { .theme = theme, .scale = scale, .shown = LR_SHOW_SOUND };
  LrPlaced placed = { .item = item };

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, scale, -scale);
  lr_symbol_draw (cr, &view, &placed, NULL);
  cairo_restore (cr);
}

static void
draw_sample (cairo_t       *cr,
             const LrTheme *theme,
             const Sample  *sample,
             double         x,
             double         y)
{
  LrItem *item = make_item (sample);
  LrTextStyle style = { .size = 12.0, .weight = PANGO_WEIGHT_SEMIBOLD };

  lr_theme_set_color (cr, theme->ink, 1.0);
  lr_text_draw (cr, theme, &style, x + 6.0, y + 14.0, sample->title);
  draw_at (cr, theme, item, 142.0 * (sample->kind == LR_ITEM_MICROPHONE ? 0.6 : 0.8), x + 80.0, y + 84.0);
  draw_at (cr, theme, item, 57.0, x + 205.0, y + 84.0);
  cairo_save (cr);
  cairo_translate (cr, x + 245.0, y + 20.0);
  lr_symbol_draw_icon (cr, theme, item, 34.0);
  cairo_restore (cr);
  lr_item_unref (item);
}

static void
draw_tags (cairo_t       *cr,
           const LrTheme *theme,
           double         x,
           double         y)
{
  double size = theme->type_size[LR_TYPE_TAG];

  lr_tag_draw (cr, theme, LR_ITEM_CAMERA, "A", theme->type_size[LR_TYPE_CAMERA_TAG], x, y);
  lr_tag_draw (cr, theme, LR_ITEM_LIGHT, "L1", size, x + 40.0, y);
  lr_tag_draw (cr, theme, LR_ITEM_MICROPHONE, "M1", size, x + 80.0, y);
  lr_tag_draw (cr, theme, LR_ITEM_PANEL, "R1", size, x + 120.0, y);
  for (int grade = 0; grade < LR_N_GRADES; grade++)
    lr_grade_mark_draw (cr, theme, grade, 7.0 * theme->unit_px, x + 160.0 + 40.0 * grade, y);
  for (int grade = 0; grade < LR_N_GRADES; grade++)
    lr_grade_mark_draw (cr, theme, grade, 14.0 * theme->unit_px, x + 300.0 + 60.0 * grade, y);
}

static void
write_sheet (const char *folder,
             LrThemeId   id,
             const char *word)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, ROWS * ROW_HEIGHT);
  cairo_t *cr = cairo_create (surface);
  const LrTheme *theme = lr_theme_get (id);
  g_autofree char *path = g_strdup_printf ("%s/symbols-%s.png", folder, word);

  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_paint (cr);
  for (gsize i = 0; i < G_N_ELEMENTS (samples); i++)
    draw_sample (cr, theme, &samples[i], (double) (i % 4) * WIDTH / 4.0, (double) (i / 4) * ROW_HEIGHT);
  draw_tags (cr, theme, 40.0, (ROWS - 1) * ROW_HEIGHT + 40.0);

  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int    argc,
      char **argv)
{
  const char *folder = argc > 1 ? argv[1] : ".";

  g_mkdir_with_parents (folder, 0777);
  write_sheet (folder, LR_THEME_LIGHT, "light");
  write_sheet (folder, LR_THEME_DARK, "dark");
  write_sheet (folder, LR_THEME_PAGE, "page");

  return 0;
}
