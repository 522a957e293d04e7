/* photometry_ldt.c - EULUMDAT
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One value to a line. Intensities are candela for each 1000 lm of the lamps; of a symmetric lamp only some of the planes stand in the file,
 * though all of their angles do.
 *
 * Source: Stockmar, EULUMDAT, ein Leuchtendatenformat fuer den europaeischen Beleuchtungsplaner, Licht 1990, 641-644, by way of
 * tables of its lines.
 */

#include "photometry_private.h"

#include "domain.h"

#include <float.h>

#define MOST_SETS 20
#define N_RATIOS 10

typedef struct
{
  size_t symmetry, n_planes, n_angles, n_sets;
  double length_mm, width_mm, height_mm; /* of what emits */
  double conversion, lumen, watts;
  size_t planes_line;                    /* of the first of their angles */
} Head;

static bool
fail_at (LrPhotometryScan  *scan,
         LrPhotometryReason reason,
         size_t             line)
{
  *scan->error = (LrPhotometryError) { reason, line };
  return false;
}

static bool
read_count_line (LrPhotometryScan *scan,
                 size_t            least,
                 size_t            most,
                 size_t           *count)
{
  size_t line = scan->line;
  double value;

  if (!lr_scan_number_line (scan, &value))
    return false;
  if (lr_scan_count (scan, value, least, most, count))
    return true;

  scan->error->line = line;
  return false;
}

/* Lines 1 to 15 of the format, up to the sizes of what emits */
static bool
read_shape (LrPhotometryScan *scan,
            Head             *head)
{
  double step, height;

  return lr_scan_skip_lines (scan, 2) && read_count_line (scan, 0, 4, &head->symmetry)
         && read_count_line (scan, 1, LR_PHOTOMETRY_MOST_ANGLES, &head->n_planes) && lr_scan_number_line (scan, &step)
         && read_count_line (scan, 2, LR_PHOTOMETRY_MOST_ANGLES, &head->n_angles) && lr_scan_number_line (scan, &step)
         && lr_scan_skip_lines (scan, 5 + 3) && lr_scan_number_line (scan, &head->length_mm) && lr_scan_number_line (scan, &head->width_mm)
         && lr_scan_number_line (scan, &head->height_mm) && lr_scan_number_line (scan, &height) && lr_scan_number_line (scan, &height)
         && lr_scan_number_line (scan, &height);
}

/* A number that makes no sense at or under @over */
static bool
read_over_line (LrPhotometryScan *scan,
                double            over,
                double           *value)
{
  size_t line = scan->line;

  return lr_scan_number_line (scan, value) && (*value > over || fail_at (scan, LR_PHOTOMETRY_VALUE, line));
}

/* Flux fractions, factor, tilt, the sets of lamps and the utilisation table */
static bool
read_lamps (LrPhotometryScan *scan,
            Head             *head)
{
  if (!lr_scan_skip_lines (scan, 2) || !read_over_line (scan, 0.0, &head->conversion) || !lr_scan_skip_lines (scan, 1)
      || !read_count_line (scan, 1, MOST_SETS, &head->n_sets))
    return false;

  for (size_t i = 0; i < head->n_sets; i++)
    {
      double ignored, least = i == 0 ? 0.0 : -HUGE_VAL;

      if (!lr_scan_skip_lines (scan, 2) || !read_over_line (scan, least, i == 0 ? &head->lumen : &ignored) || !lr_scan_skip_lines (scan, 2)
          || !read_over_line (scan, i == 0 ? -DBL_MIN : least, i == 0 ? &head->watts : &ignored))
        return false;
    }

  return lr_scan_skip_lines (scan, N_RATIOS);
}

/* How many planes stand in the file, and the first of them */
static bool
find_planes (LrPhotometryScan *scan,
             const Head       *head,
             size_t           *n,
             size_t           *first)
{
  size_t all = head->n_planes;

  *first = head->symmetry == 3 ? 3 * all / 4 : 0;
  *n = head->symmetry == 0 ? all : head->symmetry == 1 ? 1 : head->symmetry == 4 ? all / 4 + 1 : all / 2 + 1;
  /* the planes at 0, 90, 180, 270 are there */
  if ((head->symmetry == 2 && all % 2 != 0) || (head->symmetry >= 3 && all % 4 != 0))
    return lr_scan_fail (scan, LR_PHOTOMETRY_COUNT);
  return true;
}

static bool
read_angles (LrPhotometryScan *scan,
             const Head       *head,
             size_t            first,
             LrPhotometry     *photometry)
{
  for (size_t i = 0; i < head->n_planes; i++)
    {
      size_t place = (i + head->n_planes - first) % head->n_planes;
      double angle_deg;

      if (!lr_scan_number_line (scan, &angle_deg))
        return false;
      if (place < photometry->n_h)
        photometry->h_deg[place] = angle_deg;
    }
  for (size_t i = 0; i < head->n_angles; i++)
    {
      size_t line = scan->line;

      if (!lr_scan_number_line (scan, &photometry->v_deg[i]))
        return false;
      if (!lr_photometry_is_angle (photometry->v_deg, i, 180.0))
        return fail_at (scan, LR_PHOTOMETRY_ANGLES, line);
    }

  return true;
}

/* C270 over C0 to C90 is the same as H 270 down to 90, seen from the other side: H = 180 - C */
static void
turn_planes (LrPhotometry *photometry)
{
  for (size_t i = 0; i < photometry->n_h; i++)
    photometry->h_deg[i] = 180.0 - (photometry->h_deg[i] > 180.0 ? photometry->h_deg[i] - 360.0 : photometry->h_deg[i]);

  for (size_t i = 0, j = photometry->n_h - 1; i < j; i++, j--)
    {
      double angle = photometry->h_deg[i];

      photometry->h_deg[i] = photometry->h_deg[j];
      photometry->h_deg[j] = angle;
      for (size_t k = 0; k < photometry->n_v; k++)
        {
          double *a = &photometry->candela[i * photometry->n_v + k], *b = &photometry->candela[j * photometry->n_v + k], value = *a;

          *a = *b;
          *b = value;
        }
    }
}

static bool
read_planes (LrPhotometryScan *scan,
             Head             *head,
             LrPhotometry     *photometry)
{
  double per_klm = 0.001 * head->conversion * head->lumen;
  size_t n, first;

  head->planes_line = scan->line;
  if (!find_planes (scan, head, &n, &first) || !lr_photometry_alloc (scan, head->n_angles, n, photometry)
      || !read_angles (scan, head, first, photometry))
    return false;
  photometry->watts = head->watts;

  for (size_t i = 0; i < n * head->n_angles; i++)
    {
      size_t line = scan->line;

      if (!lr_scan_number_line (scan, &photometry->candela[i]))
        return false;
      photometry->candela[i] *= per_klm;
      if (!lr_photometry_is_candela (photometry->candela[i]))
        return fail_at (scan, LR_PHOTOMETRY_VALUE, line);
    }
  if (head->symmetry == 3)
    turn_planes (photometry);
  return true;
}

/* The planes that stand for the others are those of the symmetry */
static bool
has_planes (LrPhotometryScan   *scan,
            const Head         *head,
            const LrPhotometry *photometry)
{
  static const double first_deg[] = { 0.0, 0.0, 0.0, 90.0, 0.0 }, last_deg[] = { 0.0, 0.0, 180.0, 270.0, 90.0 };
  double first = photometry->h_deg[0], last = photometry->h_deg[photometry->n_h - 1];

  if (head->symmetry < 2 || (first == first_deg[head->symmetry] && last == last_deg[head->symmetry]))
    return true;

  return fail_at (scan, LR_PHOTOMETRY_PLANES, head->planes_line);
}

/* All but the angles of the planes was checked where it stands */
static bool
check (LrPhotometryScan *scan,
       const Head       *head,
       LrPhotometry     *photometry)
{
  return lr_photometry_check (scan, photometry) || fail_at (scan, scan->error->reason, head->planes_line);
}

/**
 * lr_photometry_read_ldt:
 * @text: a file of EULUMDAT
 * @length: its bytes
 * @photometry: (out): what it holds; lr_photometry_clear() frees it
 * @error: (out): why it cannot be read, and where
 *
 * Of several sets of lamps, which are alternatives, the first counts.
 *
 * Returns: %FALSE, with @photometry untouched, if it cannot be read
 */
bool
lr_photometry_read_ldt (const char        *text,
                        size_t             length,
                        LrPhotometry      *photometry,
                        LrPhotometryError *error)
{
  LrPhotometryScan scan = { text, text + length, 1, error };
  LrPhotometry read = { 0 };
  Head head = { 0 };

  if (!read_shape (&scan, &head) || !read_lamps (&scan, &head) || !read_planes (&scan, &head, &read) || !check (&scan, &head, &read)
      || !has_planes (&scan, &head, &read))
    {
      lr_photometry_clear (&read);
      return false;
    }

  read.lamp_lm = head.lumen;
  read.is_across = true;
  read.length_m = 0.001 * head.length_mm;
  read.width_m = head.width_mm == 0.0 ? -read.length_m : 0.001 * head.width_mm; /* 0: round */
  read.height_m = 0.001 * head.height_mm;
  read.warnings |= head.n_sets > 1 ? LR_PHOTOMETRY_SETS_IGNORED : 0;
  read.warnings |= lr_scan_is_done (&scan) ? 0 : LR_PHOTOMETRY_TEXT_AFTER;
  *photometry = read;
  return true;
}
