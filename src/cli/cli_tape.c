/* cli_tape.c - the table to set out by
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cli_private.h"
#include "csv.h"
#include "readings.h"
#include "tape_marks.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

#define N_COLUMNS 9
#define GAP 2 /* blanks between columns */

/* --- Text ----------------------------------------------------------------------------------------------------- */

static char *
say_length (double  length_m,
            LrUnits units)
{
  return isfinite (length_m) ? lr_length_format_tape (length_m, units) : g_strdup ("–");
}

static char *
say_fix (const LrTapeFix *fix,
         gsize            which,
         LrUnits          units)
{
  g_autofree char *length = NULL;

  if (fix->way == LR_FIX_NONE)
    return g_strdup ("–");

  length = say_length (fix->length_m[which], units);
  return g_strdup_printf ("%d: %s%s", fix->number[which], length, fix->way == LR_FIX_OVER ? "*" : "");
}

static char *
say_crossing (const LrTapeFix *fix)
{
  g_autofree char *angle = NULL;

  if (fix->way == LR_FIX_NONE)
    return g_strdup ("–");

  angle = lr_angle_format (fix->crossing_rad);
  return fix->is_poor ? g_strdup_printf ("(%s)", angle) : g_steal_pointer (&angle);
}

static char *
say_height (const LrTapeMark *mark,
            LrUnits           units)
{
  g_autofree char *height = NULL;

  if (mark->height_of == LR_HEIGHT_NONE)
    return g_strdup ("–");

  height = say_length (mark->height_m, units);
  return g_strdup_printf ("%s %s", lr_tape_height_word (mark->height_of), height);
}

static GStrv
make_row (const LrTapeMark *mark,
          LrUnits           units)
{
  g_autofree char *spot = lr_tape_mark_spot (mark);
  const char *tag = mark->placed->item->tag;
  GStrv row = g_new0 (char *, N_COLUMNS + 1);

  row[0] = tag[0] != '\0' ? g_strdup_printf ("%s %s", tag, spot) : g_steal_pointer (&spot);
  for (gsize i = 0; i < 2; i++)
    {
      row[1 + i] = say_fix (&mark->walls, i, units);
      row[3 + i] = say_fix (&mark->corners, i, units);
    }
  row[5] = say_crossing (&mark->corners);
  row[6] = mark->corners.way != LR_FIX_NONE
           ? g_strdup_printf (_("±%.0f mm"), mark->corners.error.major_m * 1000.0) : g_strdup ("–");
  row[7] = say_height (mark, units);
  row[8] = lr_tape_mark_aim (mark, units);
  return row;
}

static GStrv
make_heads (void)
{
  const char *const heads[N_COLUMNS + 1] = {
    _("centre of"), _("wall"), _("wall"), _("corner"), _("corner"), _("crossing"), _("error"), _("height"), _("turned"), NULL
  };

  return g_strdupv ((char **) heads);
}

static void
print_rows (const GPtrArray *rows)
{
  glong width[N_COLUMNS] = { 0 };

  for (guint i = 0; i < rows->len; i++)
    for (gsize j = 0; j < N_COLUMNS; j++)
      width[j] = MAX (width[j], g_utf8_strlen (((GStrv) g_ptr_array_index (rows, i))[j], -1));

  for (guint i = 0; i < rows->len; i++)
    {
      GStrv row = g_ptr_array_index (rows, i);

      for (gsize j = 0; j < N_COLUMNS; j++)
        g_print ("%s%*s", row[j], j + 1 < N_COLUMNS ? (int) (width[j] - g_utf8_strlen (row[j], -1) + GAP) : 0, "");
      g_print ("\n");
    }
}

static void
print_text (const LrCliPlan *plan,
            const GArray    *marks)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_autofree char *longest = say_length (plan->plan->limits.value[LR_LIMIT_TAPE_LENGTH], plan->units);
  LrTapeGrid grid;

  lr_cli_print_setup (plan->study);
  if (marks->len == 0 || !lr_tape_grid (plan->study->setup->room, &grid))
    {
      g_print ("%s\n", _("Nothing is marked on the floor: there is no room, or nothing stands in it."));
      return;
    }

  g_ptr_array_add (rows, make_heads ());
  for (guint i = 0; i < marks->len; i++)
    g_ptr_array_add (rows, make_row (&g_array_index (marks, LrTapeMark, i), plan->units));
  print_rows (rows);

  g_print ("\n%s\n", plan->units == LR_UNITS_IMPERIAL ? _("Feet and inches, to a quarter of an inch.") : _("Metres."));
  g_print (_("Wall 1 goes from corner 1 to corner 2; the longest wall is %u. No tape is longer than %s.\n"), (guint) grid.wall_number, longest);
  g_print ("%s\n", _("*: held level over furniture. (In brackets): the tapes cross too flat."));
  g_print ("%s\n", _("Error: one standard deviation of the worse direction, with tapes good to 4 mm and 0.2 mm per metre."));
}

/* --- Tables for programs -------------------------------------------------------------------------------------- */

/* In metres, or as a tape in feet and inches reads */
static void
add_length (GString *csv,
            double   length_m,
            LrUnits  units)
{
  g_autofree char *text = NULL;

  if (units == LR_UNITS_METRIC || !isfinite (length_m))
    {
      lr_csv_add_number (csv, length_m, 3);
      return;
    }

  text = lr_length_format_tape (length_m, units);
  lr_csv_add (csv, text);
}

static void
add_fix (GString         *csv,
         const LrTapeFix *fix,
         LrUnits          units)
{
  gboolean is_known = fix->way != LR_FIX_NONE;

  for (gsize i = 0; i < 2; i++)
    {
      lr_csv_add_number (csv, is_known ? (double) fix->number[i] : (double) NAN, 0);
      add_length (csv, is_known ? fix->length_m[i] : (double) NAN, units);
    }
  lr_csv_add_number (csv, is_known ? fix->crossing_rad / LR_DEG : (double) NAN, 1);
  lr_csv_add_number (csv, is_known ? fix->error.major_m * 1000.0 : (double) NAN, 1);
  lr_csv_add (csv, lr_fix_way_word (fix->way));
}

static void
add_heads (GString *csv,
           LrUnits  units)
{
  /* lengths end in their unit */
  static const char *const heads[] = {
    "item", "tag", "mark", "wall-a", "from-wall-a-", "wall-b", "from-wall-b-", "walls-crossing-deg", "walls-error-mm", "walls-way",
    "corner-a", "from-corner-a-", "corner-b", "from-corner-b-", "corners-crossing-deg", "corners-error-mm", "corners-way",
    "grid-x-", "grid-y-", "height-of", "height-", "aims-at", "bearing-deg", "tilt-deg", "aim-wall", "aim-along-", "reach-"
  };

  for (gsize i = 0; i < G_N_ELEMENTS (heads); i++)
    {
      g_autofree char *head = g_strconcat (heads[i], g_str_has_suffix (heads[i], "-") ? units == LR_UNITS_METRIC ? "m" : "ft-in" : NULL, NULL);

      lr_csv_add (csv, head);
    }
  lr_csv_end_row (csv);
}

static void
add_mark (GString          *csv,
          const LrTapeMark *mark,
          LrUnits           units)
{
  const LrItem *item = mark->placed->item;
  g_autofree char *spot = lr_tape_mark_spot (mark);

  lr_csv_add (csv, item->id);
  lr_csv_add (csv, item->tag);
  lr_csv_add (csv, spot);
  add_fix (csv, &mark->walls, units);
  add_fix (csv, &mark->corners, units);
  add_length (csv, mark->grid_m.x, units);
  add_length (csv, mark->grid_m.y, units);
  lr_csv_add (csv, lr_tape_height_word (mark->height_of));
  add_length (csv, mark->height_m, units);
  lr_csv_add (csv, mark->aims_at != NULL ? mark->aims_at->item->id : NULL);
  lr_csv_add_number (csv, mark->bearing_rad / LR_DEG, 0);
  lr_csv_add_number (csv, mark->tilt_rad / LR_DEG, 0);
  lr_csv_add_number (csv, mark->aim_wall >= 0 ? (double) mark->aim_number : (double) NAN, 0);
  add_length (csv, mark->aim_along_m, units);
  add_length (csv, mark->reach_m, units);
  lr_csv_end_row (csv);
}

static void
print_csv (const GArray *marks,
           LrUnits       units)
{
  g_autoptr (GString) csv = g_string_new (NULL);

  add_heads (csv, units);
  for (guint i = 0; i < marks->len; i++)
    add_mark (csv, &g_array_index (marks, LrTapeMark, i), units);
  fputs (csv->str, stdout);
}

/**
 * lr_cli_tape:
 * @argc: from the command's word on
 * @argv: from the command's word on
 *
 * Prints where everything on the floor is by tape.
 *
 * Returns: an exit code
 */
int
lr_cli_tape (int    argc,
             char **argv)
{
  gboolean is_csv = FALSE, is_json = FALSE;
  const GOptionEntry own[] = {
    { "csv", 0, 0, G_OPTION_ARG_NONE, &is_csv, N_("Print a table for a spreadsheet, by RFC 4180"), NULL },
    { "json", 0, 0, G_OPTION_ARG_NONE, &is_json, N_("Print JSON"), NULL },
    { NULL }
  };
  LrCliOptions options;
  g_autoptr (LrCliPlan) plan = NULL;
  g_autoptr (GArray) marks = NULL;
  gboolean is_good = lr_cli_parse (argc, argv, _("FILE"), _("Prints where everything on the floor is by tape."), own, &options);

  if (is_good && is_csv && is_json)
    {
      lr_cli_complain ("tape", _("takes --csv or --json, not both"));
      is_good = FALSE;
    }
  if (is_good)
    plan = lr_cli_plan_study (&options);
  lr_cli_options_clear (&options);
  if (plan == NULL)
    return LR_EXIT_FAILED;
  if (is_json)
    return (int) lr_cli_print_json (lr_tape_to_json (plan->study));

  marks = lr_tape_marks_new (plan->study);
  if (is_csv)
    print_csv (marks, plan->units);
  else
    print_text (plan, marks);

  return lr_cli_flush () ? (int) LR_EXIT_OK : (int) LR_EXIT_FAILED;
}
