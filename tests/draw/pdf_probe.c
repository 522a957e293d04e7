/* pdf_probe.c - what a PDF holds, by the tools of poppler and by its own bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pdf_probe.h"

#include <gio/gio.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

gboolean
probe_has_tools (void)
{
  static const char *const tools[] = { "pdfinfo", "pdffonts", "pdfimages", "pdftotext", "pdftoppm" };

  for (gsize i = 0; i < G_N_ELEMENTS (tools); i++)
    {
      g_autofree char *path = g_find_program_in_path (tools[i]);

      if (path == NULL)
        {
          g_test_skip ("poppler-utils is not installed");
          return FALSE;
        }
    }

  return TRUE;
}

static GBytes *
run_bytes (const char *const *args)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process = g_subprocess_newv (args, G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_SILENCE, &error);
  GBytes *output = NULL;

  g_assert_no_error (error);
  g_subprocess_communicate (process, NULL, NULL, &output, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_successful (process));
  return output;
}

char *
probe_run (const char *const *args)
{
  g_autoptr (GBytes) output = run_bytes (args);

  return g_strndup (g_bytes_get_data (output, NULL), g_bytes_get_size (output));
}

static void
word_clear (gpointer data)
{
  g_free (((ProbeWord *) data)->text);
}

GArray *
probe_words (const char *path)
{
  const char *const args[] = { "pdftotext", "-bbox", path, "-", NULL };
  g_autofree char *html = probe_run (args);
  g_autoptr (GRegex) regex = g_regex_new ("<word xMin=\"([^\"]*)\" yMin=\"([^\"]*)\" xMax=\"([^\"]*)\" yMax=\"([^\"]*)\">([^<]*)</word>",
                                          0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  GArray *words = g_array_new (FALSE, FALSE, sizeof (ProbeWord));

  g_array_set_clear_func (words, word_clear);
  for (g_regex_match (regex, html, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      ProbeWord word = { .text = g_match_info_fetch (match, 5) };
      double *sides[] = { &word.x0, &word.y0, &word.x1, &word.y1 };

      for (int i = 0; i < 4; i++)
        {
          g_autofree char *number = g_match_info_fetch (match, i + 1);

          *sides[i] = g_ascii_strtod (number, NULL);
        }
      g_array_append_val (words, word);
    }

  return words;
}

const ProbeWord *
probe_find_word (const GArray *words,
                 const char   *text)
{
  for (guint i = 0; i < words->len; i++)
    if (g_str_equal (g_array_index (words, ProbeWord, i).text, text))
      return &g_array_index (words, ProbeWord, i);

  return NULL;
}

/* --- Pixels --------------------------------------------------------------------------------------------------- */

ProbeRaster *
probe_raster (const char *path,
              double      dpi,
              double      x_pt,
              double      y_pt,
              double      width_pt,
              double      height_pt)
{
  int x = (int) floor (x_pt * dpi / 72.0), y = (int) floor (y_pt * dpi / 72.0);
  int width = (int) ceil (width_pt * dpi / 72.0), height = (int) ceil (height_pt * dpi / 72.0), maximum, used;
  g_autofree char *r = g_strdup_printf ("%.0f", dpi), *xs = g_strdup_printf ("%d", x), *ys = g_strdup_printf ("%d", y);
  g_autofree char *ws = g_strdup_printf ("%d", width), *hs = g_strdup_printf ("%d", height);
  const char *const args[] = { "pdftoppm", "-gray", "-r", r, "-x", xs, "-y", ys, "-W", ws, "-H", hs, path, NULL };
  g_autoptr (GBytes) output = run_bytes (args);
  const char *data = g_bytes_get_data (output, NULL);
  ProbeRaster *raster = g_new0 (ProbeRaster, 1);

  g_assert_cmpint (sscanf (data, "P5 %d %d %d%n", &raster->width, &raster->height, &maximum, &used), ==, 3);
  g_assert_cmpint (maximum, ==, 255);
  g_assert_cmpuint (g_bytes_get_size (output), >=, (gsize) (used + 1 + raster->width * raster->height));
  raster->pixels = g_memdup2 (data + used + 1, (gsize) raster->width * (gsize) raster->height);
  raster->dpi = dpi;
  raster->x_pt = x * 72.0 / dpi;
  raster->y_pt = y * 72.0 / dpi;
  return raster;
}

void
probe_raster_free (ProbeRaster *raster)
{
  g_free (raster->pixels);
  g_free (raster);
}

static const guint8 *
row_at (const ProbeRaster *raster,
        double             y_pt)
{
  int y = (int) floor ((y_pt - raster->y_pt) * raster->dpi / 72.0);

  g_assert_true (y >= 0 && y < raster->height);
  return raster->pixels + (gsize) y * (gsize) raster->width;
}

static gboolean
dark_ends (const ProbeRaster *raster,
           double             y_pt,
           int               *first,
           int               *last)
{
  const guint8 *row = row_at (raster, y_pt);

  for (*first = 0; *first < raster->width && row[*first] > 160; (*first)++)
    ;
  for (*last = raster->width - 1; *last >= 0 && row[*last] > 160; (*last)--)
    ;
  return *first <= *last;
}

gboolean
probe_dark_middles (const ProbeRaster *raster,
                    double             y_pt,
                    double            *first_pt,
                    double            *last_pt)
{
  const guint8 *row = row_at (raster, y_pt);
  int first, last, first_end, last_start;

  if (!dark_ends (raster, y_pt, &first, &last))
    return FALSE;

  for (first_end = first; first_end < raster->width && row[first_end] <= 160; first_end++)
    ;
  for (last_start = last; last_start >= 0 && row[last_start] <= 160; last_start--)
    ;
  *first_pt = raster->x_pt + (first + first_end) / 2.0 * 72.0 / raster->dpi;
  *last_pt = raster->x_pt + (last_start + last + 2) / 2.0 * 72.0 / raster->dpi;
  return TRUE;
}

double
probe_longest_run (const ProbeRaster *raster)
{
  int longest = 0;

  for (int y = 0; y < raster->height; y++)
    for (int x = 0, run = 0; x < raster->width; x++)
      {
        run = raster->pixels[(gsize) y * (gsize) raster->width + (gsize) x] <= 160 ? run + 1 : 0;
        longest = MAX (longest, run);
      }

  return longest * 72.0 / raster->dpi;
}

/* --- Type ----------------------------------------------------------------------------------------------------- */

static GBytes *
inflate (const char *data,
         gsize       length)
{
  g_autoptr (GConverter) inflater = G_CONVERTER (g_zlib_decompressor_new (G_ZLIB_COMPRESSOR_FORMAT_ZLIB));
  g_autoptr (GInputStream) packed = g_memory_input_stream_new_from_data (data, (gssize) length, NULL);
  g_autoptr (GInputStream) stream = g_converter_input_stream_new (packed, inflater);
  g_autoptr (GOutputStream) plain = g_memory_output_stream_new_resizable ();

  if (g_output_stream_splice (plain, stream, G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET, NULL, NULL) < 0)
    return NULL;

  return g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (plain));
}

/* "a b c d e f Tm", then "/font n Tf": the type stands n hypot (c, d) high */
static double
least_in_stream (const char *text)
{
  g_autoptr (GRegex) regex = g_regex_new ("([-0-9.]+) ([-0-9.]+) [-0-9.]+ [-0-9.]+ Tm\\s+/\\S+ ([0-9.]+) Tf", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  double least = HUGE_VAL;

  for (g_regex_match_full (regex, text, -1, 0, G_REGEX_MATCH_NEWLINE_ANY, &match, NULL); g_match_info_matches (match);
       g_match_info_next (match, NULL))
    {
      g_autofree char *c = g_match_info_fetch (match, 1), *d = g_match_info_fetch (match, 2), *n = g_match_info_fetch (match, 3);

      least = MIN (least, g_ascii_strtod (n, NULL) * hypot (g_ascii_strtod (c, NULL), g_ascii_strtod (d, NULL)));
    }

  return least;
}

double
probe_least_type_pt (const char *path)
{
  g_autofree char *data = NULL;
  gsize length;
  double least = HUGE_VAL;

  g_assert_true (g_file_get_contents (path, &data, &length, NULL));
  for (const char *at = data; (at = memmem (at, length - (gsize) (at - data), "stream\n", 7)) != NULL; )
    {
      const char *end;
      g_autoptr (GBytes) plain = NULL;

      at += 7;
      end = memmem (at, length - (gsize) (at - data), "endstream", 9);
      if (end == NULL)
        break;

      plain = inflate (at, (gsize) (end - at));
      if (plain != NULL)
        {
          g_autofree char *text = g_strndup (g_bytes_get_data (plain, NULL), g_bytes_get_size (plain));

          if (g_utf8_validate (text, -1, NULL))
            least = MIN (least, least_in_stream (text));
        }
      at = end + 9;
    }

  return least;
}
