/* lens_database.c - lenses by name, from the open lens database if it is installed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A file is <lensdatabase> with <lens> elements, each with <maker> and <model> (several in other languages, which have "lang"), and often
 * <focal min= max=> or <focal value=> and <aperture min= max=>. Where those are missing the model's name tells them as it is printed on
 * lenses: "24-70mm f/2.8", "18-55mm f/3.5-5.6". What tells no focal length is left out.
 */

#include "lens_database.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#define LARGEST_FILE (16 * 1024 * 1024)
#define FOCAL_LEAST_MM 1.0
#define FOCAL_MOST_MM 2000.0
#define STOP_LEAST 0.7
#define STOP_MOST 64.0

struct _LrLensDatabase
{
  GPtrArray *lenses; /* of LrFoundLens, by name */
};

static void
lens_free (gpointer data)
{
  LrFoundLens *lens = data;

  g_free (lens->name);
  g_free (lens);
}

/* --- A name as it is printed on a lens ------------------------------------------------------------------------ */

static double
number_in (const GMatchInfo *match,
           int               group)
{
  g_autofree char *text = g_match_info_fetch (match, group);

  if (text == NULL || *text == '\0')
    return NAN;
  return g_ascii_strtod (text, NULL);
}

static void
read_focal (LrFoundLens *lens)
{
  g_autoptr (GRegex) regex = g_regex_new ("(\\d+(?:\\.\\d+)?)(?:\\s*-\\s*(\\d+(?:\\.\\d+)?))?\\s*mm", G_REGEX_CASELESS, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  double longest;

  if (lens->focal_min_m > 0.0 || !g_regex_match (regex, lens->name, 0, &match))
    return;
  lens->focal_min_m = number_in (match, 1) / 1000.0;
  longest = number_in (match, 2) / 1000.0;
  lens->focal_max_m = longest >= lens->focal_min_m ? longest : lens->focal_min_m;
}

static void
read_stop (LrFoundLens *lens)
{
  g_autoptr (GRegex) regex = g_regex_new ("(?:f\\s*/?\\s*|1:)(\\d+(?:\\.\\d+)?)", G_REGEX_CASELESS, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;

  if (!(lens->f_number_min > 0.0) && g_regex_match (regex, lens->name, 0, &match))
    lens->f_number_min = number_in (match, 1);
}

/* --- A file --------------------------------------------------------------------------------------------------- */

typedef struct
{
  GPtrArray   *lenses;
  LrFoundLens *lens;   /* being read */
  GString     *text;   /* of the element being read; NULL: not wanted */
  char        *maker, *model;
} Reader;

static double
attribute (const char **names,
           const char **values,
           const char  *wanted)
{
  for (; *names != NULL; names++, values++)
    if (g_str_equal (*names, wanted))
      return g_ascii_strtod (*values, NULL);

  return 0.0;
}

static gboolean
is_in (double value,
       double least,
       double most)
{
  return isfinite (value) && value >= least && value <= most;
}

static void
take_focal (LrFoundLens *lens,
            const char **names,
            const char **values)
{
  double one_mm = attribute (names, values, "value"), min_mm = attribute (names, values, "min"), max_mm = attribute (names, values, "max");

  lens->focal_min_m = (one_mm > 0.0 ? one_mm : min_mm) / 1000.0;
  lens->focal_max_m = (one_mm > 0.0 ? one_mm : max_mm > 0.0 ? max_mm : min_mm) / 1000.0;
}

static void
start_cb (GMarkupParseContext  *context G_GNUC_UNUSED,
          const char           *element,
          const char          **names,
          const char          **values,
          gpointer              data,
          GError              **error G_GNUC_UNUSED)
{
  Reader *reader = data;
  gboolean is_translated = FALSE;

  for (const char **name = names; *name != NULL; name++)
    is_translated |= g_str_equal (*name, "lang");
  if (g_str_equal (element, "lens"))
    {
      g_clear_pointer (&reader->lens, lens_free);
      reader->lens = g_new0 (LrFoundLens, 1);
    }
  if (reader->lens == NULL)
    return;
  if (g_str_equal (element, "focal"))
    take_focal (reader->lens, names, values);
  else if (g_str_equal (element, "aperture"))
    {
      reader->lens->f_number_min = attribute (names, values, "min");
      reader->lens->f_number_max = attribute (names, values, "max");
    }
  else if (!is_translated && reader->text == NULL && (g_str_equal (element, "maker") || g_str_equal (element, "model")))
    reader->text = g_string_new (NULL);
}

static void
text_cb (GMarkupParseContext  *context G_GNUC_UNUSED,
         const char           *text,
         gsize                 length,
         gpointer              data,
         GError              **error G_GNUC_UNUSED)
{
  Reader *reader = data;

  if (reader->text != NULL)
    g_string_append_len (reader->text, text, (gssize) length);
}

/* The maker goes before a model that does not begin with it */
static char *
dup_name (const Reader *reader)
{
  if (reader->maker == NULL || g_str_has_prefix (reader->model, reader->maker))
    return g_strdup (reader->model);

  return g_strdup_printf ("%s %s", reader->maker, reader->model);
}

static void
finish_lens (Reader *reader)
{
  LrFoundLens *lens = g_steal_pointer (&reader->lens);

  if (reader->model != NULL && *reader->model != '\0')
    {
      lens->name = dup_name (reader);
      read_focal (lens);
      read_stop (lens);
    }
  if (!is_in (lens->f_number_min, STOP_LEAST, STOP_MOST))
    lens->f_number_min = 0.0;
  if (!is_in (lens->f_number_max, fmax (STOP_LEAST, lens->f_number_min), STOP_MOST))
    lens->f_number_max = 0.0;
  if (lens->name != NULL && is_in (1000.0 * lens->focal_min_m, FOCAL_LEAST_MM, FOCAL_MOST_MM)
      && is_in (1000.0 * lens->focal_max_m, 1000.0 * lens->focal_min_m, FOCAL_MOST_MM))
    g_ptr_array_add (reader->lenses, g_steal_pointer (&lens));
  g_clear_pointer (&lens, lens_free);
  g_clear_pointer (&reader->maker, g_free);
  g_clear_pointer (&reader->model, g_free);
}

static void
end_cb (GMarkupParseContext  *context G_GNUC_UNUSED,
        const char           *element,
        gpointer              data,
        GError              **error G_GNUC_UNUSED)
{
  Reader *reader = data;

  if (reader->text != NULL && (g_str_equal (element, "maker") || g_str_equal (element, "model")))
    {
      char **place = g_str_equal (element, "maker") ? &reader->maker : &reader->model;

      g_free (*place);
      *place = g_strstrip (g_string_free (g_steal_pointer (&reader->text), FALSE));
    }
  else if (reader->lens != NULL && g_str_equal (element, "lens"))
    finish_lens (reader);
}

/* What is whole in a file that breaks off counts */
static void
read_file (GPtrArray  *lenses,
           const char *path)
{
  static const GMarkupParser parser = { start_cb, end_cb, text_cb, NULL, NULL };
  g_autoptr (GMarkupParseContext) context = NULL;
  g_autofree char *data = NULL;
  Reader reader = { .lenses = lenses };
  gsize length;

  if (!g_file_get_contents (path, &data, &length, NULL) || length > LARGEST_FILE)
    return;

  context = g_markup_parse_context_new (&parser, 0, &reader, NULL);
  if (g_markup_parse_context_parse (context, data, (gssize) length, NULL))
    g_markup_parse_context_end_parse (context, NULL);
  g_clear_pointer (&reader.lens, lens_free);
  g_clear_pointer (&reader.maker, g_free);
  g_clear_pointer (&reader.model, g_free);
  if (reader.text != NULL)
    g_string_free (reader.text, TRUE);
}

/* --- All of them ---------------------------------------------------------------------------------------------- */

static void
read_folder (GPtrArray  *lenses,
             const char *folder,
             gboolean    goes_down)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_str_has_suffix (name, ".xml"))
        read_file (lenses, path);
      else if (goes_down && g_str_has_prefix (name, "version_") && g_file_test (path, G_FILE_TEST_IS_DIR))
        read_folder (lenses, path, FALSE);
    }
}

static gint
compare (gconstpointer a,
         gconstpointer b)
{
  const LrFoundLens *const *first = a, *const *second = b;

  return g_utf8_collate ((*first)->name, (*second)->name);
}

/**
 * lr_lens_database_read:
 * @folder: where the database is
 *
 * Returns: (transfer full) (nullable): its lenses; %NULL if there are none
 */
LrLensDatabase *
lr_lens_database_read (const char *folder)
{
  g_autoptr (LrLensDatabase) database = g_new0 (LrLensDatabase, 1);

  database->lenses = g_ptr_array_new_with_free_func (lens_free);
  read_folder (database->lenses, folder, TRUE);
  g_ptr_array_sort (database->lenses, compare);

  return database->lenses->len > 0 ? g_steal_pointer (&database) : NULL;
}

/**
 * lr_lens_database_free:
 * @database: (transfer full): a database
 */
void
lr_lens_database_free (LrLensDatabase *database)
{
  g_ptr_array_unref (database->lenses);
  g_free (database);
}

static gboolean
holds_all (const char *name,
           char      **words)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (; *words != NULL; words++)
    if (strstr (folded, *words) == NULL)
      return FALSE;

  return TRUE;
}

/**
 * lr_lens_database_find:
 * @database: a database
 * @typed: words or parts of them, in any order
 * @most: how many are wanted
 *
 * Returns: (transfer container) (element-type LrFoundLens): lenses whose names hold all of them; none if nothing is typed
 */
GPtrArray *
lr_lens_database_find (const LrLensDatabase *database,
                       const char           *typed,
                       guint                 most)
{
  GPtrArray *found = g_ptr_array_new ();
  g_autofree char *folded = g_utf8_casefold (typed, -1);
  g_auto (GStrv) words = g_strsplit_set (g_strstrip (folded), " \t", -1);
  const LrFoundLens *before = NULL;

  for (guint i = 0; words[0] != NULL && *words[0] != '\0' && i < database->lenses->len && found->len < most; i++)
    {
      LrFoundLens *lens = database->lenses->pdata[i];
      gboolean is_again = before != NULL && g_str_equal (before->name, lens->name); /* as for another mount */

      if (is_again || !holds_all (lens->name, words))
        continue;
      g_ptr_array_add (found, lens);
      before = lens;
    }

  return found;
}
