/* diff_words.c - differences between a set-up as planned and as found, in the user's words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stands in the set is told by what matters there: how much nearer the subject it is, or farther away.
 */

#include "config.h"

#include "diff_words.h"

#include "prop_text.h"
#include "remarks.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NO_BREAK_SPACE "\u00a0"
#define MOSTLY 0.9       /* of a move, that goes to the subject or away: no more need be said */
#define LONGEST_TEXT 32  /* that is quoted */

static char *
title_of (const LrDiff *found)
{
  g_autofree char *title = NULL;
  const LrItem *item = found->now != NULL ? found->now : found->was;

  if (item == NULL)
    return g_strdup ("");
  title = lr_item_title (item);

  return g_markup_escape_text (title, -1);
}

/* "30 cm", from a metre on "1.20 m"; or feet and inches */
static char *
small (double  length_m,
       LrUnits units)
{
  g_autofree char *number = NULL;

  if (units != LR_UNITS_METRIC || fabs (length_m) >= 0.995)
    return lr_length_format (length_m, units);

  number = lr_number_format (100.0 * length_m, 0);
  return g_strconcat (number, NO_BREAK_SPACE "cm", NULL);
}

/* The walls, each with its number and where it is */
static char *
wall_title (const LrPlanDiff *diff,
            int               wall)
{
  /* Translators: a wall's number, and where it is: "Wall 2 (east wall)" */
  return g_strdup_printf (_("Wall %d (%s)"), lr_room_wall_number (diff->now->room, wall), lr_wall_title (diff->now->room, wall));
}

static gboolean
has_things_on (const LrSetup *setup,
               int            wall)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];

      if (lr_item_kind_info (item->kind)->place == LR_PLACE_WALL && item->wall == wall)
        return TRUE;
    }

  return FALSE;
}

static char *
say_wall (const LrPlanDiff *diff,
          const LrDiff     *found,
          LrUnits           units)
{
  g_autofree char *title = wall_title (diff, found->wall), *by = small (fabs (found->to - found->from), units);
  g_autofree char *to = lr_length_format (found->to, units), *from = lr_length_format (found->from, units);

  if (found->to < found->from)
    return g_strdup_printf (_("%s is <b>%s</b> shorter: <b>%s</b> instead of %s"), title, by, to, from);

  return g_strdup_printf (_("%s is <b>%s</b> longer: <b>%s</b> instead of %s"), title, by, to, from);
}

static char *
say_corner (const LrPlanDiff *diff,
            const LrDiff     *found)
{
  g_autofree char *to = lr_number_format (found->to / LR_DEG, 1), *from = lr_number_format (found->from / LR_DEG, 1);
  int n = (int) diff->now->room->n_corners;

  /* Translators: numbers of two walls that meet there, and two angles */
  return g_strdup_printf (_("Between wall %d and wall %d there are <b>%s°</b> instead of %s°"), lr_room_wall_number (diff->now->room, (found->wall + n - 1) % n),
                          lr_room_wall_number (diff->now->room, found->wall), to, from);
}

/* To a tenth of a degree, and no tenth where it is whole: half a degree is 4 cm of a set 5 m long */
static char *
angle_text (double angle_rad)
{
  double tenths = round (10.0 * angle_rad / LR_DEG);
  g_autofree char *number = lr_number_format (tenths / 10.0, fmod (tenths, 10.0) == 0.0 ? 0 : 1);

  return g_strconcat (number, "°", NULL);
}

static char *
say_turn (double turn_rad)
{
  g_autofree char *angle = angle_text (fabs (turn_rad));

  return g_strdup_printf (turn_rad > 0.0 ? _("<b>%s</b> anticlockwise") : _("<b>%s</b> clockwise"), angle);
}

/**
 * lr_say_set_move:
 * @room: where it moves
 * @by_m: how it moves [m]
 * @turn_rad: how it turns [rad], anticlockwise
 * @is_done: whether it was done
 * @units: how lengths are written
 *
 * Returns: (transfer full): "Moved the set 0.40 m towards the west wall and turned it 5° clockwise", figures in <b>
 */
char *
lr_say_set_move (const LrRoom *room,
                 LrVec2        by_m,
                 double        turn_rad,
                 gboolean      is_done,
                 LrUnits       units)
{
  g_autofree char *length = lr_length_format (lr_vec2_length (by_m), units), *turn = say_turn (turn_rad);
  gboolean has_move = lr_vec2_length (by_m) >= 0.005, has_turn = fabs (turn_rad) >= 0.05 * LR_DEG;

  if (has_move && has_turn)
    /* Translators: "0.40 m", "towards the west wall", "5° clockwise" */
    return g_strdup_printf (is_done ? _("Moved the set <b>%s</b> %s and turned it %s") : _("Move the set <b>%s</b> %s and turn it %s"),
                            length, lr_wall_towards (room, by_m), turn);
  if (has_turn)
    return g_strdup_printf (is_done ? _("Turned the set %s") : _("Turn the set %s"), turn);

  return g_strdup_printf (is_done ? _("Moved the set <b>%s</b> %s") : _("Move the set <b>%s</b> %s"), length, lr_wall_towards (room, by_m));
}

static char *
say_set (const LrPlanDiff *diff,
         const LrDiff     *found,
         LrUnits           units)
{
  LrVec2 by_m = lr_vec2_sub (found->to_m, found->from_m);
  g_autofree char *length = lr_length_format (lr_vec2_length (by_m), units), *turn = say_turn (found->turn_rad);
  gboolean has_move = lr_vec2_length (by_m) >= LR_DIFF_LENGTH_M, has_turn = fabs (found->turn_rad) >= 0.5 * LR_DIFF_ANGLE_RAD;
  const char *towards = lr_wall_towards (diff->now->room, by_m);

  if (has_move && has_turn)
    return g_strdup_printf (_("The whole set moved <b>%s</b> %s and turned %s"), length, towards, turn);
  if (has_turn)
    return g_strdup_printf (_("The whole set turned %s"), turn);

  return g_strdup_printf (_("The whole set moved <b>%s</b> %s"), length, towards);
}

static char *
say_move (const LrPlanDiff *diff,
          const LrDiff     *found,
          const char       *title,
          LrUnits           units)
{
  LrVec2 by_m = lr_vec2_sub (found->to_m, found->from_m);
  double length_m = lr_vec2_length (by_m), nearer_m = fabs (found->nearer_m);
  g_autofree char *length = lr_length_format (length_m, units);
  g_autofree char *nearer = isnan (nearer_m) ? NULL : lr_length_format (nearer_m, units);
  const char *towards = lr_wall_towards (diff->now->room, by_m);

  if (isnan (nearer_m))
    return g_strdup_printf (_("%s moved <b>%s</b> %s"), title, length, towards);
  if (nearer_m < LR_DIFF_LENGTH_M)
    return g_strdup_printf (_("%s moved <b>%s</b> %s, as far from the subject"), title, length, towards);
  if (nearer_m >= MOSTLY * length_m)
    return g_strdup_printf (found->nearer_m > 0.0 ? _("%s moved <b>%s</b> nearer the subject") : _("%s moved <b>%s</b> farther from the subject"),
                            title, nearer);

  return g_strdup_printf (found->nearer_m > 0.0 ? _("%s moved <b>%s</b> %s, <b>%s</b> nearer the subject")
                                                : _("%s moved <b>%s</b> %s, <b>%s</b> farther from the subject"),
                          title, length, towards, nearer);
}

static char *
say_way (const LrPlanDiff *diff,
         const LrDiff     *found,
         const char       *title,
         LrUnits           units)
{
  g_autofree char *by = small (fabs (found->to - found->from), units), *to = lr_length_format (found->to, units);
  const LrItem *load = lr_setup_find (diff->now, found->now->lead.feeds);
  g_autofree char *plain = load != NULL ? lr_item_title (load) : NULL;
  g_autofree char *fed = plain != NULL ? g_markup_escape_text (plain, -1) : NULL;
  g_autofree char *lead = fed != NULL ? g_strdup_printf (_("Lead of %s"), fed) : g_strdup (title);

  return g_strdup_printf (found->to > found->from ? _("%s lies <b>%s</b> longer: %s") : _("%s lies <b>%s</b> shorter: %s"), lead, by, to);
}

/* What a reference names, in its own set-up or kit */
static char *
named (const LrPlan  *plan,
       const LrSetup *setup,
       const char    *id)
{
  const LrItem *item = lr_setup_find (setup, id);
  const LrKitEntry *entry = item == NULL ? lr_plan_find_kit (plan, id) : NULL;

  if (item != NULL)
    return lr_item_title (item);
  if (entry != NULL)
    return g_strdup (entry->title);

  return g_strdup (_("nothing"));
}

static char *
value_text (const LrPlanDiff *diff,
            const LrDiff     *found,
            gboolean          is_now,
            LrUnits           units)
{
  const LrProp *prop = found->prop;
  gconstpointer owner = is_now ? found->now_owner : found->was_owner;
  double value = is_now ? found->to : found->from;
  const char *text;

  if (prop->type == LR_PROP_REF)
    return named (is_now ? diff->now_plan : diff->was_plan, is_now ? diff->now : diff->was, lr_prop_get_text (prop, owner));
  if (prop->type == LR_PROP_FLAG)
    return g_strdup (value != 0.0 ? _("yes") : _("no"));
  if (prop->type == LR_PROP_CHOICE)
    return g_strdup (_(prop->choices[(int) value].label));
  if (prop->type == LR_PROP_TEXT)
    {
      text = lr_prop_get_text (prop, owner);
      return *text == '\0' ? g_strdup (_("nothing")) : g_strdup_printf (_("“%s”"), text);
    }
  if (!lr_prop_is_given (prop, value))
    return g_strdup (_("not given"));

  /* a picture of a floor plan is turned by what it takes to lie right, to a ten-thousandth */
  if (prop->decimals > 1 && g_strcmp0 (prop->unit, "°") == 0 && found->owner == LR_DIFF_OWNER_ROOM)
    return angle_text (value * LR_DEG);

  return lr_prop_text_format (prop, value, units);
}

static const char *
owner_title (LrDiffOwner owner)
{
  static const char *const titles[] = {
    [LR_DIFF_OWNER_ITEM] = "", [LR_DIFF_OWNER_SETUP] = N_("Wanted"), [LR_DIFF_OWNER_LOCATION] = N_("Place"),
    [LR_DIFF_OWNER_ROOM] = N_("Room"), [LR_DIFF_OWNER_WALLS] = N_("Walls"),
    [LR_DIFF_OWNER_FLOOR] = N_("Floor"), [LR_DIFF_OWNER_CEILING] = N_("Ceiling"),
  };

  return owner == LR_DIFF_OWNER_ITEM ? "" : _(titles[owner]);
}

/* A focal length, a stop and a shutter speak for themselves */
static gboolean
needs_no_label (const LrProp *prop)
{
  static const char *const keys[] = { "focal-mm", "f-number", "shutter-s", NULL };

  return g_strv_contains (keys, prop->key);
}

static char *
say_change (const LrPlanDiff *diff,
            const LrDiff     *found,
            const char       *title,
            LrUnits           units)
{
  g_autofree char *plain_to = value_text (diff, found, TRUE, units), *plain_from = value_text (diff, found, FALSE, units);
  g_autofree char *to = g_markup_escape_text (plain_to, -1), *from = g_markup_escape_text (plain_from, -1);
  const char *whose = found->now != NULL ? title : owner_title (found->owner);

  if (found->prop->type == LR_PROP_TEXT && (g_utf8_strlen (plain_to, -1) > LONGEST_TEXT || g_utf8_strlen (plain_from, -1) > LONGEST_TEXT))
    /* Translators: a thing, and what of it was written anew: "Camera B: Note is another" */
    return g_strdup_printf (_("%s: %s is another"), whose, _(found->prop->label));
  if (needs_no_label (found->prop))
    /* Translators: "Camera B has 50 mm instead of 35 mm" */
    return g_strdup_printf (_("%s has <b>%s</b> instead of %s"), whose, to, from);

  /* Translators: a thing, one of its properties, its value now and before: "Camera B: Lens height 1.30 m instead of 1.20 m" */
  return g_strdup_printf (_("%s: %s <b>%s</b> instead of %s"), whose, _(found->prop->label), to, from);
}

/* Without a full stop */
static char *
say (const LrPlanDiff *diff,
     const LrDiff     *found,
     LrUnits           units)
{
  g_autofree char *title = title_of (found), *turn = NULL, *capsule = NULL;

  switch (found->type)
    {
    case LR_DIFF_WALLS:
      return g_strdup_printf (_("The room has <b>%d</b> walls instead of %d"), (int) found->to, (int) found->from);
    case LR_DIFF_WALL:
      return say_wall (diff, found, units);
    case LR_DIFF_CORNER:
      return say_corner (diff, found);
    case LR_DIFF_SET:
      return say_set (diff, found, units);
    case LR_DIFF_CONTACTS:
      return g_strdup (_("Other people to call at the place"));
    case LR_DIFF_ADDED:
      return g_strdup_printf (_("%s is new"), title);
    case LR_DIFF_GONE:
      return g_strdup_printf (_("%s is gone"), title);
    case LR_DIFF_MOVED:
      return say_move (diff, found, title, units);
    case LR_DIFF_TIP:
      /* Translators: a microphone, whose capsule was moved: "M1 boom: capsule moved 0.12 m nearer the subject" */
      capsule = g_strdup_printf (_("%s: capsule"), title);
      return say_move (diff, found, capsule, units);
    case LR_DIFF_TURNED:
      turn = say_turn (found->turn_rad);
      return g_strdup_printf (_("%s turned %s"), title, turn);
    case LR_DIFF_WAY:
      return say_way (diff, found, title, units);
    case LR_DIFF_CHANGED:
    default:
      return say_change (diff, found, title, units);
    }
}

/**
 * lr_diff_markup:
 * @diff: differences
 * @found: one of them
 * @units: how lengths are written
 *
 * Returns: (transfer full): what is different, as found against as planned, figures in <b>
 */
char *
lr_diff_markup (const LrPlanDiff *diff,
                const LrDiff     *found,
                LrUnits           units)
{
  g_autofree char *said = say (diff, found, units);

  /* Translators: a sentence, and its end */
  return g_strdup_printf (_("%s."), said);
}

/**
 * lr_diff_advice:
 * @diff: differences
 * @found: one of them
 *
 * Returns: (transfer none): what is to be taped still where a wall is another: it, or what is on it, was only taken so; "" for nothing
 */
const char *
lr_diff_advice (const LrPlanDiff *diff,
                const LrDiff     *found)
{
  gboolean is_taped, has_things;

  if (found->type != LR_DIFF_WALL)
    return "";

  is_taped = lr_room_is_taped (diff->now->room, found->wall);
  has_things = has_things_on (diff->now, found->wall);
  if (is_taped)
    /* Translators: follows what is different about a wall: doors, windows and sockets on it were left where they were */
    return has_things ? _("What is on it is taken to be where it was: tape it.") : "";

  /* Translators: follows what is different about a wall, and where doors, windows and sockets are on it */
  return has_things ? _("It is not taped: tape it, and what is on it.") : _("It is not taped: tape it.");
}

/**
 * lr_diff_text:
 * @diff: differences
 * @found: one of them
 * @units: how lengths are written
 *
 * Returns: (transfer full): as lr_diff_markup(), as plain text, with what lr_diff_advice() says
 */
char *
lr_diff_text (const LrPlanDiff *diff,
              const LrDiff     *found,
              LrUnits           units)
{
  g_autofree char *markup = lr_diff_markup (diff, found, units), *text = lr_markup_to_text (markup);
  const char *advice = lr_diff_advice (diff, found);

  return g_strjoin (*advice != '\0' ? " " : "", text, advice, NULL);
}

/**
 * lr_diff_group_title:
 * @group: a group
 *
 * Returns: (transfer none): its heading, translated
 */
const char *
lr_diff_group_title (LrDiffGroup group)
{
  static const char *const titles[] = {
    [LR_DIFF_OF_ROOM] = N_("Room"), [LR_DIFF_OF_PEOPLE] = N_("People and the set"), [LR_DIFF_OF_CAMERAS] = N_("Cameras"),
    [LR_DIFF_OF_LIGHTS] = N_("Lights"), [LR_DIFF_OF_SOUND] = N_("Sound"), [LR_DIFF_OF_REST] = N_("The rest"),
  };

  return _(titles[group]);
}
