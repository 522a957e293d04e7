/* comparison_rows.c - how each figure of a room is told and held against others
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is too little to tell: lengths within 5 cm, for walls bow and skirtings stand out as much, and areas by that in 5 m each way;
 * backgrounds within 0.25 m, for nobody sets a camera in the very corner; windows within a tenth of a square metre; reflectance as the
 * eye judges it within 10 points; house lights by a third, which is half a stop, as well as lumens are known; the sun within 20 minutes, which is 5 degrees of a phone's compass; all common practice, no source.
 * Sound within 3 dB and reverberation within a fifth: what predictions in small rooms are good to (see sound.h). Power within a tenth:
 * the mains may be off by as much (EN 50160).
 */

#include "config.h"

#include "comparison_words.h"

#include <glib/gi18n-lib.h>

#define NO_BREAK "\u00a0"
#define MOST_NAMES 3
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
format_lumens (double  value,
               LrUnits units G_GNUC_UNUSED)
{
  return with_unit (value, 0, "lm");
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
    "windows-without-blinds-m2", N_("Darkness"), N_("Windows that stay bare"),
    N_("Glass that no blind covers, of the windows that are named. Less is easier to make dark."),
    N_("bare windows"), N_("%s less bare glass than %s"), .is_less_better = TRUE, .tie = 0.1, .within = N_("%s"),
    .base = 0.5, .format = format_area },
  [LR_COMPARE_HOUSE_LIGHTS] = {
    "house-lights-that-stay-lm", NULL, N_("House lights that stay on"), N_("Of those that are on, what nobody can switch off."),
    N_("house lights"), N_("%s less than %s"), .is_less_better = TRUE, .tie_share = 1.0 / 3.0, .within = N_("a third, as lumens are known"),
    .base = 100.0, .format = format_lumens },
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
  [LR_COMPARE_WAY_OUT] = {
    "narrowest-way-out-m", NULL, N_("Narrowest way out"),
    N_("Of everybody who sits there, way or door, as far as the plan’s limit asks; the local fire code decides what is enough."),
    N_("narrowest way out"), N_("%s wider than %s"), .tie = 0.05, .within = N_("%s, as rooms can be taped"), .base = 0.1,
    .format = format_length },
  [LR_COMPARE_FIX] = {
    "to-fix", N_("The set as it stands"), N_("To fix"), N_("What the checks say will go wrong with the set in this room, as it is placed now."),
    N_("things to fix"), N_("%s fewer than %s"), .is_less_better = TRUE, COUNT },
  [LR_COMPARE_MIND] = {
    "to-mind", NULL, N_("To mind"), N_("What the checks say to know of."), N_("things to mind"), N_("%s fewer than %s"),
    .is_less_better = TRUE, COUNT },
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
say_not_drawn (LrCompare row)
{
  switch ((int) row)
    {
    case LR_COMPARE_OUTLETS:
      return _("no socket drawn");
    case LR_COMPARE_DOOR:
    case LR_COMPARE_EXITS:
      return _("no door drawn");
    case LR_COMPARE_WAY_OUT:
      return _("no door marked as way out");
    case LR_COMPARE_HOUSE_LIGHTS:
      return _("no house light drawn");
    default:
      return _("no window drawn");
    }
}

static const char *
say_not_placed (LrCompare row)
{
  switch ((int) row)
    {
    case LR_COMPARE_BEHIND:
      return _("no camera on anybody");
    case LR_COMPARE_FIX:
    case LR_COMPARE_MIND:
      return _("nobody, or no camera, placed");
    default:
      return _("nobody placed");
    }
}

static const char *
say_unknown (LrKnown   known,
             LrCompare row)
{
  switch ((int) known)
    {
    case LR_NOT_DRAWN:
      return say_not_drawn (row);
    case LR_NOT_PLACED:
      return say_not_placed (row);
    case LR_NO_DAY:
      return _("hours, day or place not noted");
    case LR_NO_ROOM:
      return _("room not drawn");
    case LR_AWAITED:
      /* Translators: a figure that is still worked out */
      return _("working it out…");
    default:
      return row == LR_COMPARE_WAY_OUT ? _("not found out") : _("not noted");
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
  if (figure->known == LR_TAKEN)
    {
      g_autofree char *text = infos[row].format (figure->value, units);

      /* Translators: a figure that nobody noted, for which a usual one is taken */
      return g_strdup_printf (_("not noted (%s taken)"), text);
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

static gboolean
is_bare_window (const LrItem *item)
{
  return item->kind == LR_ITEM_WINDOW && item->window.blind == LR_BLIND_NONE;
}

static gboolean
is_light_that_stays (const LrItem *item)
{
  return item->kind == LR_ITEM_HOUSE_LIGHT && item->house_light.is_on && !item->house_light.can_switch_off;
}

/* "window 1, window 3 and 2 more"; (transfer full) */
static char *
name_items (const LrRoomFigures *room,
            gboolean           (*match) (const LrItem *item))
{
  g_autoptr (GString) names = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < room->setup->items->len; i++)
    {
      const LrItem *item = room->setup->items->pdata[i];
      g_autofree char *title = NULL;

      if (!match (item) || ++n > MOST_NAMES)
        continue;
      title = lr_item_title (item);
      g_string_append_printf (names, "%s%s", n > 1 ? _(", ") : "", title);
    }
  if (n > MOST_NAMES)
    /* Translators: behind names of things: how many are not named */
    g_string_append_printf (names, ngettext (" and %u more", " and %u more", n - MOST_NAMES), n - MOST_NAMES);

  return g_strdup (names->str);
}

/* Why a room can be made dark, or not */
static char *
windows_detail (const LrRoomFigures *room,
                LrUnits              units)
{
  g_autofree char *all = format_area (room->windows_m2, units), *bare = name_items (room, is_bare_window);

  if (!isfinite (room->dark_share))
    return g_strdup ("");
  if (bare[0] == '\0')
    /* Translators: an area */
    return g_strdup_printf (_("all %s of glass have blinds"), all);
  /* Translators: an area of glass, names of windows */
  return g_strdup_printf (_("of %s; no blind: %s"), all, bare);
}

static char *
house_lights_detail (const LrRoomFigures *room)
{
  return room->figure[LR_COMPARE_HOUSE_LIGHTS].value > 0.0 ? name_items (room, is_light_that_stays) : g_strdup (_("all can be off"));
}

static char *
way_out_detail (const LrRoomFigures *room)
{
  g_autofree char *title = room->narrow_item != NULL ? lr_item_title (room->narrow_item) : NULL;

  if (room->is_way_full)
    return g_strdup (_("or more: the limit asks for no more"));
  /* Translators: what makes a way narrow */
  return title != NULL ? g_strdup_printf (_("narrowed by %s"), title) : g_strdup ("");
}

static char *
noise_detail (const LrRoomFigures *room,
              gboolean             has_loudest)
{
  g_autofree char *loudest = has_loudest && room->loudest != NULL ? lr_item_title (room->loudest) : NULL;

  if (!room->is_background_measured && loudest != NULL)
    /* Translators: a noise */
    return g_strdup_printf (_("loudest: %s; the room itself not measured"), loudest);
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
  if (!lr_figure_is_told (&room->figure[row]))
    return g_strdup ("");

  switch ((int) row)
    {
    case LR_COMPARE_BACKGROUND:
      return background_detail (comparison, room, units);
    case LR_COMPARE_BEHIND:
      return behind_detail (room);
    case LR_COMPARE_BARE_WINDOWS:
      return windows_detail (room, units);
    case LR_COMPARE_HOUSE_LIGHTS:
      return house_lights_detail (room);
    case LR_COMPARE_WAY_OUT:
      return way_out_detail (room);
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
