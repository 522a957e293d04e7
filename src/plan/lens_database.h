/* lens_database.h - lenses by name, from the open lens database if it is installed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its files are XML with a documented form. Nothing of them is needed to build or run: without them nothing is found.
 */

#pragma once

#include <glib.h>

typedef struct
{
  char  *name;
  double focal_min_m, focal_max_m;
  double f_number_min, f_number_max; /* at the shortest focal length; 0: the database does not tell */
} LrFoundLens;

typedef struct _LrLensDatabase LrLensDatabase;

/* (transfer full) (nullable): of all files in the folder and in the version folders below it; NULL: there are none with a lens */
LrLensDatabase *lr_lens_database_read (const char *folder);
void            lr_lens_database_free (LrLensDatabase *database);
/* (transfer container) (element-type LrFoundLens): whose names hold all words of @typed, at most @most, by name */
GPtrArray      *lr_lens_database_find (const LrLensDatabase *database, const char *typed, guint most);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLensDatabase, lr_lens_database_free)
