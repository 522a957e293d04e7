/* test-lens-database.c - lenses by name out of files of the open lens database's form
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The files are invented; their form is that of the database's own documentation. Focal lengths and stops are those written in them.
 */

#include "lens_database.h"

#include <glib/gstdio.h>
#include <math.h>

static const char whole[] =
  "<?xml version=\"1.0\"?><!DOCTYPE lensdatabase SYSTEM \"lensfun-database.dtd\">\n"
  "<lensdatabase version=\"1\">\n"
  "<mount><name>Alder</name></mount>\n"
  "<camera><maker>Merrow</maker><model>One</model><mount>Alder</mount><cropfactor>1.0</cropfactor></camera>\n"
  "<lens><maker>Merrow</maker><model>Merrow 50mm f/1.8</model><model lang=\"en\">Fifty</model><mount>Alder</mount>"
  "<focal value=\"51.6\"/><aperture min=\"1.8\" max=\"22\"/><cropfactor>1</cropfactor>"
  "<calibration><distortion model=\"ptlens\" focal=\"50\" a=\"0\" b=\"0\" c=\"0\"/></calibration></lens>\n"
  "<lens><maker>Merrow</maker><model>Long 70-200mm f/2.8</model><mount>Alder</mount><cropfactor>1</cropfactor></lens>\n"
  "<lens><maker>Quay</maker><model>Wide &amp; near 16-35 mm 1:4</model><mount>Alder</mount><focal min=\"16\" max=\"35\"/></lens>\n"
  "<lens><maker>Quay</maker><model>Wide &amp; near 16-35 mm 1:4</model><mount>Birch</mount><focal min=\"16\" max=\"35\"/></lens>\n"
  "<lens><maker>Quay</maker><model>Fixed lens camera</model><mount>Own</mount></lens>\n"
  "<lens><maker>Quay</maker><model>Mad</model><focal value=\"1e9\"/></lens>\n"
  "</lensdatabase>\n";

static const char broken[] =
  "<lensdatabase><lens><maker>Sedge</maker><model>Sedge 85mm F1.4</model></lens><lens><maker>Sedge</maker><model>half";

static char *folder;

static void
put (const char *name,
     const char *text)
{
  g_autofree char *path = g_build_filename (folder, name, NULL), *parent = g_path_get_dirname (path);

  g_assert_cmpint (g_mkdir_with_parents (parent, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

typedef struct
{
  const char *name, *typed, *found; /* NULL: nothing */
  double      min_mm, max_mm, widest, smallest;
} FindCase;

static const FindCase find_cases[] = {
  { "by-elements", "merrow 50", "Merrow 50mm f/1.8", 51.6, 51.6, 1.8, 22.0 },
  { "by-name", "70-200", "Merrow Long 70-200mm f/2.8", 70.0, 200.0, 2.8, 0.0 },
  { "escaped", "NEAR wide", "Quay Wide & near 16-35 mm 1:4", 16.0, 35.0, 4.0, 0.0 },
  { "broken-file", "sedge", "Sedge 85mm F1.4", 85.0, 85.0, 1.4, 0.0 },
  { "without-focal", "fixed", NULL, 0, 0, 0, 0 },
  { "out-of-range", "mad", NULL, 0, 0, 0, 0 },
  { "other-word", "merrow heron", NULL, 0, 0, 0, 0 },
  { "nothing-typed", "  ", NULL, 0, 0, 0, 0 },
};

static void
test_find (gconstpointer data)
{
  const FindCase *c = data;
  g_autoptr (LrLensDatabase) database = lr_lens_database_read (folder);
  g_autoptr (GPtrArray) found = lr_lens_database_find (database, c->typed, 10);
  const LrFoundLens *lens;

  g_assert_cmpuint (found->len, ==, c->found != NULL ? 1 : 0);
  if (c->found == NULL)
    return;
  lens = found->pdata[0];
  g_assert_cmpstr (lens->name, ==, c->found);
  g_assert_cmpfloat_with_epsilon (1000.0 * lens->focal_min_m, c->min_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (1000.0 * lens->focal_max_m, c->max_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (lens->f_number_min, c->widest, 1e-9);
  g_assert_cmpfloat_with_epsilon (lens->f_number_max, c->smallest, 1e-9);
}

static void
test_most (void)
{
  g_autoptr (LrLensDatabase) database = lr_lens_database_read (folder);
  g_autoptr (GPtrArray) all = lr_lens_database_find (database, "e", 10), one = lr_lens_database_find (database, "e", 1);

  g_assert_cmpuint (all->len, ==, 4);
  g_assert_cmpuint (one->len, ==, 1);
}

static void
test_not_installed (void)
{
  g_autofree char *nowhere = g_build_filename (folder, "nowhere", NULL);

  g_assert_null (lr_lens_database_read (nowhere));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("lookroom-lenses-XXXXXX", NULL);
  put ("whole.xml", whole);
  put ("version_1/broken.xml", broken);
  put ("version_1/notes.txt", whole);

  for (guint i = 0; i < G_N_ELEMENTS (find_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/lens-database/", find_cases[i].name, NULL);

      g_test_add_data_func (path, &find_cases[i], test_find);
    }
  g_test_add_func ("/lens-database/most", test_most);
  g_test_add_func ("/lens-database/not-installed", test_not_installed);

  return g_test_run ();
}
