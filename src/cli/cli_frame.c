/* cli_frame.c - what one camera sees, or two that are cut against each other, as a picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "save.h"
#include "strip.h"
#include "viewfinder.h"

#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define DEFAULT_WIDTH_PX 1280
#define MAX_WIDTH_PX 8192
#define STRIP_USUAL_PX 900.0 /* width at which its type has the screen's size */
#define STRIP_MARGIN_PX 12.0

/* One camera's picture or, with two, their strip */
typedef struct
{
  const LrStudy         *study;
  const LrLightLevels   *levels;
  const LrCameraReading *camera; /* NULL: the strip */
  LrStrip                strip;
  int                    width_px;
  gboolean               shows_recorded;
} Picture;

static cairo_status_t
append_cb (void                *closure,
           const unsigned char *data,
           unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static const LrCameraReading *
find_camera (const LrStudy *study,
             const char    *word)
{
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (word == NULL || g_str_equal (camera->item->tag, word) || g_str_equal (camera->item->id, word))
        return camera;
    }

  return NULL;
}

static LrStripStyle
strip_style (const Picture *picture)
{
  double unit = picture->width_px / STRIP_USUAL_PX;

  return (LrStripStyle) { .width = picture->width_px - 2.0 * STRIP_MARGIN_PX * unit, .unit = unit };
}

static LrViewfinderStyle
viewfinder_style (const Picture *picture)
{
  return (LrViewfinderStyle) {
    .width = picture->width_px,
    .has_thirds = TRUE,
    .has_safe_area = TRUE,
    .has_eye_pointers = TRUE,
    .shows_recorded = picture->shows_recorded,
    .levels = picture->levels,
  };
}

static int
picture_height_px (const Picture *picture)
{
  const LrViewfinderStyle own = viewfinder_style (picture);
  const LrStripStyle style = strip_style (picture);
  cairo_surface_t *surface;
  cairo_t *cr;
  double height;

  if (picture->camera != NULL)
    {
      LrPictureBox whole, delivered;

      lr_viewfinder_place (picture->camera, &own, &whole, &delivered);
      return (int) ceil (whole.height - 1e-6);
    }

  surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cr = cairo_create (surface);
  height = lr_strip_height (cr, lr_theme_get (LR_THEME_LIGHT), &picture->strip, &style) + 2.0 * STRIP_MARGIN_PX * style.unit;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return (int) ceil (height);
}

static void
draw_picture (cairo_t       *cr,
              const Picture *picture)
{
  const LrViewfinderStyle own = viewfinder_style (picture);
  const LrStripStyle style = strip_style (picture);
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);

  if (picture->camera != NULL)
    {
      lr_viewfinder_draw (cr, picture->study, picture->camera, &own);
      return;
    }

  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_paint (cr);
  cairo_translate (cr, STRIP_MARGIN_PX * style.unit, STRIP_MARGIN_PX * style.unit);
  lr_strip_draw (cr, theme, &picture->strip, &style);
}

static cairo_status_t
draw (const Picture *picture,
      gboolean       is_svg,
      GByteArray    *bytes)
{
  int width_px = picture->width_px, height_px = picture_height_px (picture);
  cairo_surface_t *surface = is_svg ? cairo_svg_surface_create_for_stream (append_cb, bytes, width_px, height_px)
                                    : cairo_image_surface_create (CAIRO_FORMAT_RGB24, width_px, height_px);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  draw_picture (cr, picture);
  status = cairo_status (cr);
  cairo_destroy (cr);

  if (status == CAIRO_STATUS_SUCCESS && !is_svg)
    status = cairo_surface_write_to_png_stream (surface, append_cb, bytes);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

static void
complain_of_camera (const LrCliPlan *plan,
                    const char      *word)
{
  if (word != NULL)
    lr_cli_complain (plan->path, _("there is no camera “%s” in “%s”"), word, plan->study->setup->name);
  else
    lr_cli_complain (plan->path, _("there is no camera in “%s”"), plan->study->setup->name);
}

/* The two cameras that @cut names: "A,B" */
static gboolean
find_strip (const LrCliPlan *plan,
            const char      *cut,
            LrStrip         *strip)
{
  g_auto (GStrv) words = g_strsplit (cut, ",", -1);
  const LrCameraReading *cameras[LR_STRIP_SIDES];

  if (g_strv_length (words) != LR_STRIP_SIDES)
    {
      lr_cli_complain ("frame", _("--cut is “%s”, not two cameras: A,B"), cut);
      return FALSE;
    }

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      cameras[i] = find_camera (plan->study, g_strstrip (words[i]));
      if (cameras[i] == NULL)
        {
          complain_of_camera (plan, words[i]);
          return FALSE;
        }
    }

  if (lr_strip_init (strip, plan->study, plan->remarks, cameras[0]->item->id, cameras[1]->item->id))
    {
      strip->levels = plan->levels;
      return TRUE;
    }
  lr_cli_complain ("frame", _("--cut is “%s”: a camera is not cut against itself"), cut);
  return FALSE;
}

/* FALSE after saying why */
static gboolean
find_picture (const LrCliPlan *plan,
              const char      *camera_word,
              const char      *cut,
              Picture         *picture)
{
  picture->study = plan->study;
  picture->levels = plan->levels;
  if (cut != NULL)
    return find_strip (plan, cut, &picture->strip);

  picture->camera = find_camera (plan->study, camera_word);
  if (picture->camera == NULL)
    complain_of_camera (plan, camera_word);
  return picture->camera != NULL;
}

static LrExit
write_picture (const Picture *picture,
               const char    *output)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) error = NULL;
  cairo_status_t status = draw (picture, g_str_has_suffix (output, ".svg"), bytes);

  if (status != CAIRO_STATUS_SUCCESS)
    {
      lr_cli_complain (output, _("the picture cannot be drawn: %s"), cairo_status_to_string (status));
      return LR_EXIT_FAILED;
    }
  if (!lr_save_bytes (output, (const char *) bytes->data, bytes->len, &error))
    {
      lr_cli_complain (output, "%s", error->message);
      return LR_EXIT_FAILED;
    }

  return LR_EXIT_OK;
}

static gboolean
options_are_good (const char *output,
                  int         width_px,
                  gboolean    has_both)
{
  if (output == NULL)
    lr_cli_complain ("frame", _("needs -o and the name of the picture to write"));
  else if (!g_str_has_suffix (output, ".png") && !g_str_has_suffix (output, ".svg"))
    lr_cli_complain (output, _("the name of a picture ends in .png or .svg"));
  else if (width_px < 16 || width_px > MAX_WIDTH_PX)
    lr_cli_complain ("frame", _("--width is %d, outside 16 to %d"), width_px, MAX_WIDTH_PX);
  else if (has_both)
    lr_cli_complain ("frame", _("takes --camera or --cut, not both"));
  else
    return TRUE;

  return FALSE;
}

/**
 * lr_cli_frame:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Draws what one camera sees, or the strip of two that are cut against each other, without a display.
 *
 * Returns: an exit code
 */
int
lr_cli_frame (int    argc,
              char **argv)
{
  g_autofree char *output = NULL;
  g_autofree char *camera = NULL;
  g_autofree char *cut = NULL;
  Picture picture = { .width_px = DEFAULT_WIDTH_PX };
  const GOptionEntry own[] = {
    { "camera", 'c', 0, G_OPTION_ARG_STRING, &camera, N_("Its tag or id; else the main camera"), N_("CAMERA") },
    { "cut", 0, 0, G_OPTION_ARG_STRING, &cut, N_("Two cameras side by side, as they will be cut"), N_("A,B") },
    { "recorded", 0, 0, G_OPTION_ARG_NONE, &picture.shows_recorded, N_("With what is recorded around the delivered frame"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_("The picture to write, .png or .svg"), N_("OUT") },
    { "width", 0, 0, G_OPTION_ARG_INT, &picture.width_px, N_("Its width in pixels"), N_("PIXELS") },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Draws what one camera sees, or two side by side."), own, &options)
      && options_are_good (output, picture.width_px, camera != NULL && cut != NULL))
    plan = lr_cli_plan_open (&options);
  lr_cli_options_clear (&options);

  if (plan == NULL || !find_picture (plan, camera, cut, &picture))
    return LR_EXIT_FAILED;
  return (int) write_picture (&picture, output);
}
