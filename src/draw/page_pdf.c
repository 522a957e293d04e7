/* page_pdf.c - the page as a file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The document is made in memory and written in one go, so that a full disk leaves the file before it as it was. Dates
 * are the caller's: two runs on the same plan give the same bytes.
 */

#include "config.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "page_private.h"
#include "save.h"

static cairo_status_t
append_cb (void                *closure,
           const unsigned char *data,
           unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
set_metadata (cairo_surface_t     *surface,
              const LrStudy       *study,
              const LrPageOptions *options)
{
  const LrJob *job = study->plan->job;
  g_autofree char *title = g_strdup_printf (_("%s: set plan"), job->title[0] != '\0' ? job->title : study->setup->name);
  g_autoptr (GDateTime) created = g_date_time_new_from_unix_utc (options->created_unix_s);
  g_autofree char *date = created != NULL ? g_date_time_format (created, "%Y-%m-%dT%H:%M:%SZ") : g_strdup ("1970-01-01T00:00:00Z");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, job->created_by);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, job->subtitle);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Lookroom " LR_VERSION);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

static void
add_outline (cairo_surface_t *surface,
             const LrStudy   *study,
             GArray          *sheets)
{
  const struct { const char *name, *title; gboolean is_there; } entries[] = {
    { "frames", _("Frames"), study->cameras->len > 0 },
    { "cameras", _("Cameras"), study->cameras->len > 0 },
    { "plan", _("Floor plan"), study->setup->room->n_corners >= 3 }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    if (entries[i].is_there)
      {
        g_autofree char *link = g_strdup_printf ("dest='%s'", entries[i].name);

        cairo_pdf_surface_add_outline (surface, CAIRO_PDF_OUTLINE_ROOT, entries[i].title, link, 0);
      }
  for (guint i = 1; i < sheets->len; i++)
    if (g_array_index (sheets, LrPageSheet, i).begins)
      {
        /* as lr_flow_draw() names them */
        g_autofree char *link = g_strdup_printf ("dest='sheet-%u'", i - 1);

        cairo_pdf_surface_add_outline (surface, CAIRO_PDF_OUTLINE_ROOT, g_array_index (sheets, LrPageSheet, i).title, link, 0);
      }
}

/* (transfer full): the whole document, or NULL with an error */
static GByteArray *
make_pdf (const LrStudy       *study,
          const LrRemarks     *remarks,
          const LrPageOptions *options,
          GError             **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GArray) sheets = lr_page_sheets_new (study, remarks, options);
  double width, height;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  lr_paper_size_pt (options->paper, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (append_cb, bytes, width, height);
  cairo_pdf_surface_restrict_to_version (surface, CAIRO_PDF_VERSION_1_5);
  set_metadata (surface, study, options);
  add_outline (surface, study, sheets);

  cr = cairo_create (surface);
  for (guint i = 0; i < sheets->len; i++)
    {
      const LrPageSheet *sheet = &g_array_index (sheets, LrPageSheet, i);

      cairo_pdf_surface_set_size (surface, sheet->width_pt, sheet->height_pt);
      lr_page_draw_sheet (cr, study, remarks, options, i);
      cairo_show_page (cr);
    }
  status = cairo_status (cr);
  cairo_destroy (cr);

  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _("the page cannot be drawn: %s"), cairo_status_to_string (status));
      return NULL;
    }

  return g_steal_pointer (&bytes);
}

/**
 * lr_page_write_pdf:
 * @study: of the plan
 * @remarks: on it
 * @options: paper, units, date
 * @path: where to
 * @error: return location for an error
 *
 * Writes the page as a PDF, with the lists that go along: vectors, text with its fonts, title, author and dates.
 *
 * Returns: %FALSE with the file as it was before, and @error set, if it cannot be written
 */
gboolean
lr_page_write_pdf (const LrStudy       *study,
                   const LrRemarks     *remarks,
                   const LrPageOptions *options,
                   const char          *path,
                   GError             **error)
{
  g_autoptr (GByteArray) bytes = make_pdf (study, remarks, options, error);

  if (bytes == NULL)
    return FALSE;

  return lr_save_bytes (path, (const char *) bytes->data, bytes->len, error);
}
