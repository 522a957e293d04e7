/* comparison_rows.c - how each figure of a room is told and held against others
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is too little to tell: lengths within 5 cm, for walls bow and skirtings stand out as much, and areas by that in 5 m each way;
 * backgrounds within 0.25 m, for nobody sets a camera in the very corner; windows within a tenth of a square metre; reflectance as the
 * eye judges it within 10 points; the sun within 20 minutes, which is 5 degrees of a phone's compass; all common practice, no source.
 * Sound within 3 dB and reverberation within a fifth: what predictions in small rooms are good to (see sound.h). Power within a tenth:
 * the mains may be off by as much (EN 50160).
 */

#include "config.h"

#include "comparison_words.h"

#include <glib/gi18n-lib.h>

#define NO_BREAK "\u00a0"
#define SQ_FT_PER_M2 (1.0 / (0.3048 * 0.3048))

static char *
with_unit (double      value,
           int         decimals,
           const char *unit)
{
  g_autofree char *number = lr_number_format (value, decimals);

  return g_strdup_printf ("%s" NO_BREAK "%s", number, unit);
}

static char *
format_area (double  value,
             LrUnits units)
{
  return units == LR_UNITS_IMPERIAL ? with_unit (value * SQ_FT_PER_M2, 0, _("sq ft")) : with_unit (value, 1, "m²");
}

static char *
format_length (double  value,
               LrUnits units)
{
  return lr_length_format (value, units);
}

static char *
format_share (double  value,
              LrUnits units G_GNUC_UNUSED)
{
  return with_unit (100.0 * value, 0, "%");
}

/* 20 % less might be a fifth of it */
static char *
format_points (double  value,
               LrUnits units G_GNUC_UNUSED)
{
  return with_unit (100.0 * value, 0, _("points"));
}

static char *
format_minutes (double  value,
                LrUnits units G_GNUC_UNUSED)
{
  return with_unit (value, 0, _("min"));
}

static char *
format_db (double  value,
           LrUnits units G_GNUC_UNUSED)
{
  return with_unit (value, 0, "dB");
}

static char *
format_seconds (double  value,
                LrUnits units G_GNUC_UNUSED)
{
  return with_unit (value, 2, "s");
}

static char *
format_power (double  value,
              LrUnits units G_GNUC_UNUSED)
{
  return with_unit (value, 0, "W");
}

static char *
format_count (double  value,
              LrUnits units G_GNUC_UNUSED)
{
  return lr_number_format (value, 0);
}

#define LENGTH .tie = 0.05, .within = N_("%s, as rooms can be taped"), .format = format_length
#define COUNT .tie = 0.5, .within = N_("none"), .base = 1.0, .format = format_count
#define SUN .tie = 20.0, .within = N_("20 minutes, as a compass can tell"), .base = 30.0, .is_less_better = TRUE, .format = format_minutes
#define LEVEL .tie = 3.0, .within = N_("3 dB, as sound can be foretold"), .db_twice = 10.0, .is_less_better = TRUE, .format = format_db
/* Translators: a difference and the name of a set-up: "12.4 m² more than Office" */
#define MORE N_("%s more than %s")

static const LrCompareInfo infos[LR_N_COMPARES] = {
  [LR_COMPARE_AREA] = {
    "area-m2", N_("Size"), N_("Floor area"), N_("Between the walls, with what stands there."), N_("floor area"), MORE,
    .tie_share = 0.02, .within = N_("2 %, as rooms can be taped"), .format = format_area },
  [LR_COMPARE_LONGEST] = {
    "longest-side-m", NULL, N_("Longest side"), N_("Of the smallest rectangle along a wall that holds the room."), N_("longest side"),
    N_("%s longer than %s"), LENGTH },
  [LR_COMPARE_SHORTEST] = {
    "shortest-side-m", NULL, N_("Shortest side"), N_("Of the same rectangle: camera, subject and background often stand across it."),
    N_("shortest side"), N_("%s wider than %s"), LENGTH },
  [LR_COMPARE_CEILING] = {
    "ceiling-m", NULL, N_("Ceiling"), N_("Over the floor: room for a boom and lamps over the frame."), N_("ceiling"), N_("%s higher than %s"),
    LENGTH },
  [LR_COMPARE_BACKGROUND] = {
    "background-m", N_("Background"), N_("Farthest background"),
    N_("Subject to wall along the longest free line, with the same distance from camera to subject in all rooms, and half a metre behind the "
       "camera. Furniture that must stay and is as high as the eyes stops the line."),
    N_("farthest background"), N_("%s deeper than %s"), .tie = 0.25, .within = N_("%s"), .base = 0.5, .format = format_length },
  [LR_COMPARE_BEHIND] = {
    "background-as-placed-m", NULL, N_("As placed"), N_("Subject to what is behind, for the first camera as it stands."),
    N_("background as placed"), N_("%s deeper than %s"), .tie = 0.05, .within = N_("%s, as rooms can be taped"), .base = 0.5,
    .format = format_length },
  [LR_COMPARE_BARE_WINDOWS] = {
    "windows-without-blinds-m2", N_("Darkness"), N_("Windows that stay bare"), N_("Glass that no blind covers. Less is easier to make dark."),
    N_("bare windows"), N_("%s less bare glass than %s"), .is_less_better = TRUE, .tie = 0.1, .within = N_("%s"),
    .base = 0.5, .format = format_area },
  [LR_COMPARE_WALLS] = {
    "walls-reflectance-share", NULL, N_("Walls reflect"), N_("Darker walls throw less light back, and hold contrast."), N_("walls"),
    N_("%s less than %s"), .is_less_better = TRUE, .tie = 0.1, .within = N_("%s, as the eye can judge"), .format = format_share,
    .format_difference = format_points },
  [LR_COMPARE_SUN] = {
    "sun-minutes", N_("Sun"), N_("Sun comes in"), N_("Over the shoot, past the blinds as they are set, under a clear sky."), N_("sun"),
    N_("%s less than %s"), SUN },
  [LR_COMPARE_SUN_ON_FACE] = {
    "sun-on-face-minutes", NULL, N_("On the face"), N_("Of it, how long it is on the subject’s head."), N_("sun on the face"),
    N_("%s less than %s"), SUN },
  [LR_COMPARE_NOISE] = {
    "noise-db", N_("Sound"), N_("Noise"), N_("dB(A) at the subject’s head, else in the middle: the room itself and every noise that is on."),
    N_("noise"), N_("%s quieter than %s"), LEVEL },
  [LR_COMPARE_QUIET] = {
    "noise-switched-off-db", NULL, N_("With all off that can be"), N_("The same without what can be switched off."),
    N_("noise that cannot be switched off"), N_("%s quieter than %s"), LEVEL },
  [LR_COMPARE_REVERBERATION] = {
    "reverberation-s", NULL, N_("Reverberation"), N_("At 500 Hz and 1 kHz. Speech wants 0.3 to 0.5 s (common practice, no source)."),
    N_("reverberation"), N_("%s shorter than %s"), .is_less_better = TRUE, .tie_share = 1.0 / 6.0, .within = N_("a fifth, as it can be foretold"),
    .format = format_seconds },
  [LR_COMPARE_CIRCUITS] = {
    "circuits", N_("Power"), N_("Circuits"), N_("Breakers that feed the room, as noted."), N_("circuits"), MORE, COUNT },
  [LR_COMPARE_POWER] = {
    "power-w", NULL, N_("For our lamps"),
    N_("What circuits with a socket here bear for hours, less what is told to hang on them. Local rules decide."), N_("power"), MORE,
    .tie_share = 0.1, .within = N_("a tenth, as the mains may be off"), .base = 100.0, .format = format_power },
  [LR_COMPARE_OUTLETS] = {
    "outlets", NULL, N_("Outlets"), N_("Places to plug in, of all sockets that are drawn."), N_("outlets"), MORE, COUNT },
  [LR_COMPARE_DOOR] = {
    "widest-door-m", N_("Access"), N_("Widest door"), N_("What has to come in: cases, carts, a wheelchair."), N_("widest door"),
    N_("%s wider than %s"), .tie = 0.02, .within = N_("%s"), .format = format_length },
  [LR_COMPARE_EXITS] = {
    "ways-out", NULL, N_("Ways out"), N_("Doors that are marked as ways out; the local fire code decides what is asked for."), N_("ways out"),
    MORE, COUNT },
};

/**
 * lr_compare_info:
 * @row: a row
 *
 * Returns: (transfer none): how it is compared
 */
const LrCompareInfo *
lr_compare_info (LrCompare row)
{
  g_return_val_if_fail (row < LR_N_COMPARES, NULL);

  return &infos[row];
}

/**
 * lr_compare_group:
 * @row: a row
 *
 * Returns: (transfer none) (nullable): title of the family of rows that begins with it
 */
const char *
lr_compare_group (LrCompare row)
{
  return infos[row].group != NULL ? _(infos[row].group) : NULL;
}

static const char *
say_unknown (LrKnown   known,
             LrCompare row)
{
  switch (known)
    {
    case LR_NOT_DRAWN:
      return row == LR_COMPARE_OUTLETS ? _("no socket drawn") : row == LR_COMPARE_DOOR || row == LR_COMPARE_EXITS ? _("no door drawn")
                                                                                                               : _("no window drawn");
    case LR_NOT_PLACED:
      return row == LR_COMPARE_BEHIND ? _("no camera on anybody") : _("nobody placed");
    case LR_NO_DAY:
      return _("day or place not noted");
    case LR_NO_ROOM:
      return _("room not drawn");
    case LR_KNOWN:
    case LR_KNOWN_PARTLY:
    case LR_NOT_NOTED:
    default:
      return _("not noted");
    }
}

/**
 * lr_compare_text:
 * @room: figures of a room
 * @row: which
 * @units: how lengths are written
 *
 * Returns: (transfer full): the figure in words, or why there is none
 */
char *
lr_compare_text (const LrRoomFigures *room,
                 LrCompare            row,
                 LrUnits              units)
{
  const LrFigure *figure = &room->figure[row];

  if (figure->known == LR_KNOWN)
    return infos[row].format (figure->value, units);
  if (figure->known == LR_KNOWN_PARTLY)
    {
      g_autofree char *text = infos[row].format (figure->value, units);

      /* Translators: a figure that is known in part */
      return g_strdup_printf (_("about %s"), text);
    }

  return g_strdup (say_unknown (figure->known, row));
}

static char *
background_detail (const LrComparison  *comparison,
                   const LrRoomFigures *room,
                   LrUnits              units)
{
  g_autofree char *line = lr_length_format (room->line_m, units), *camera = lr_length_format (comparison->camera_m, units);

  /* Translators: lengths */
  return g_strdup_printf (_("of a line of %s, camera at %s"), line, camera);
}

static char *
behind_detail (const LrRoomFigures *room)
{
  if (room->behind_item != NULL)
    return lr_item_title (room->behind_item);
  return g_strdup (room->behind_wall >= 0 ? lr_wall_title (room->setup->room, room->behind_wall) : "");
}

static char *
windows_detail (const LrRoomFigures *room,
                LrUnits              units)
{
  g_autofree char *all = format_area (room->windows_m2, units);

  if (!isfinite (room->dark_share))
    return g_strdup ("");
  /* Translators: an area, a per cent number */
  return g_strdup_printf (_("of %s; blinds cover %.0f" NO_BREAK "%%"), all, 100.0 * room->dark_share);
}

static char *
noise_detail (const LrRoomFigures *room,
              gboolean             has_loudest)
{
  g_autofree char *loudest = has_loudest && room->loudest != NULL ? lr_item_title (room->loudest) : NULL;

  if (!room->is_background_measured)
    return g_strdup (_("the room itself not measured"));
  if (loudest == NULL)
    return g_strdup ("");
  /* Translators: a noise */
  return g_strdup_printf (_("loudest: %s"), loudest);
}

static char *
reverberation_detail (const LrRoomFigures *room)
{
  static const char *const parts[] = {
    [LR_SOUND_WALLS] = N_("hard walls"), [LR_SOUND_FLOOR] = N_("hard floor"), [LR_SOUND_CEILING] = N_("hard ceiling"),
    [LR_SOUND_OPENINGS] = N_("glass and doors"),
  };

  if (room->figure[LR_COMPARE_REVERBERATION].known == LR_KNOWN_PARTLY)
    return g_strdup (_("not all surfaces noted"));
  if (room->is_reverberation_measured)
    /* Translators: what makes a room ring most */
    return g_strdup_printf (_("measured; most from %s"), _(parts[room->hard_part]));
  return g_strdup_printf (_("most from %s"), _(parts[room->hard_part]));
}

/**
 * lr_compare_detail:
 * @comparison: a comparison
 * @room: figures of one of its rooms
 * @row: which
 * @units: how lengths are written
 *
 * Returns: (transfer full): what stands beside the figure; "" for nothing, and without a figure
 */
char *
lr_compare_detail (const LrComparison  *comparison,
                   const LrRoomFigures *room,
                   LrCompare            row,
                   LrUnits              units)
{
  if (!isfinite (room->figure[row].value))
    return g_strdup ("");

  switch ((int) row)
    {
    case LR_COMPARE_BACKGROUND:
      return background_detail (comparison, room, units);
    case LR_COMPARE_BEHIND:
      return behind_detail (room);
    case LR_COMPARE_BARE_WINDOWS:
      return windows_detail (room, units);
    case LR_COMPARE_NOISE:
    case LR_COMPARE_QUIET:
      return noise_detail (room, row == LR_COMPARE_NOISE);
    case LR_COMPARE_REVERBERATION:
      return reverberation_detail (room);
    case LR_COMPARE_POWER:
      return room->is_full_load ? g_strdup (_("to the full, by a local rule")) : g_strdup ("");
    default:
      return g_strdup ("");
    }
}
