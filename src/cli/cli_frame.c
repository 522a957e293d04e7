/* cli_frame.c - what one camera sees, as a picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "save.h"
#include "viewfinder.h"

#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define DEFAULT_WIDTH_PX 1280
#define MAX_WIDTH_PX 8192

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

static cairo_status_t
draw (const LrStudy         *study,
      const LrCameraReading *camera,
      int                    width_px,
      gboolean               is_svg,
      GByteArray            *bytes)
{
  const LrViewfinderStyle style = { .width = width_px, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE };
  int height_px = (int) ceil (lr_viewfinder_height (camera, width_px));
  cairo_surface_t *surface = is_svg ? cairo_svg_surface_create_for_stream (append_cb, bytes, width_px, height_px)
                                    : cairo_image_surface_create (CAIRO_FORMAT_RGB24, width_px, height_px);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  lr_viewfinder_draw (cr, study, camera, &style);
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

static LrExit
write_frame (const LrCliPlan *plan,
             const char      *camera_word,
             int              width_px,
             const char      *output)
{
  const LrCameraReading *camera = find_camera (plan->study, camera_word);
  gboolean is_svg = g_str_has_suffix (output, ".svg");
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) error = NULL;
  cairo_status_t status;

  if (camera == NULL)
    {
      if (camera_word != NULL)
        lr_cli_complain (plan->path, _("there is no camera “%s” in “%s”"), camera_word, plan->study->setup->name);
      else
        lr_cli_complain (plan->path, _("there is no camera in “%s”"), plan->study->setup->name);
      return LR_EXIT_FAILED;
    }

  status = draw (plan->study, camera, width_px, is_svg, bytes);
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
                  int         width_px)
{
  if (output == NULL)
    lr_cli_complain ("frame", _("needs -o and the name of the picture to write"));
  else if (!g_str_has_suffix (output, ".png") && !g_str_has_suffix (output, ".svg"))
    lr_cli_complain (output, _("the name of a picture ends in .png or .svg"));
  else if (width_px < 16 || width_px > MAX_WIDTH_PX)
    lr_cli_complain ("frame", _("--width is %d, outside 16 to %d"), width_px, MAX_WIDTH_PX);
  else
    return TRUE;

  return FALSE;
}

/**
 * lr_cli_frame:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Draws what one camera sees, without a display.
 *
 * Returns: an exit code
 */
int
lr_cli_frame (int    argc,
              char **argv)
{
  g_autofree char *output = NULL;
  g_autofree char *camera = NULL;
  int width_px = DEFAULT_WIDTH_PX;
  const GOptionEntry own[] = {
    { "camera", 'c', 0, G_OPTION_ARG_STRING, &camera, N_("Its tag or id; else the main camera"), N_("CAMERA") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_("The picture to write, .png or .svg"), N_("OUT") },
    { "width", 0, 0, G_OPTION_ARG_INT, &width_px, N_("Its width in pixels"), N_("PIXELS") },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;

  if (lr_cli_parse (argc, argv, _("FILE"), _("Draws what one camera sees."), own, &options)
      && options_are_good (output, width_px))
    plan = lr_cli_plan_open (&options);
  lr_cli_options_clear (&options);

  return plan != NULL ? (int) write_frame (plan, camera, width_px, output) : (int) LR_EXIT_FAILED;
}
