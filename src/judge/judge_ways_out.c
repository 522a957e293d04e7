/* judge_ways_out.c - the way from each seat to a way out, and a wheelchair's way to its place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The narrowest place on the widest way counts, be it the door itself. While somebody's way is not known nothing is fine. Ways are looked
 * for when the plan rests, with the levels of light: they are those of this plan or of one just before it.
 */

#include "config.h"

#include "judge_parts.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>

#define USUAL_DOOR_M 0.81 /* in the clear: IBC 1010.1.1, 32 in, from memory */

#define MIN_WIDTH_M 0.3

/* The same way, of things of this study; FALSE: one of them is gone */
static gboolean
bring_here (const LrJudge  *judge,
            const LrWayOut *from,
            LrWayOut       *way)
{
  *way = *from;
  way->person = lr_study_find_placed (judge->study, from->person->item->id);
  if (way->is_unknown)
    return way->person != NULL;
  way->door = lr_study_find_placed (judge->study, from->door->item->id);
  if (from->blocker != NULL)
    way->blocker = lr_study_find_placed (judge->study, from->blocker->item->id);
  /* a move that was found for where it stood is no move from where it is now */
  if (way->blocker == NULL || lr_vec2_distance (way->blocker->at_m, from->blocker->at_m) > 1e-6)
    way->has_clearing = FALSE;

  return way->person != NULL && way->door != NULL;
}

static void
mark_way (LrRemark       *remark,
          const LrWayOut *way,
          const char     *figure)
{
  for (gsize i = 0; i + 1 < way->n_path; i++)
    lr_remark_mark_line (remark, way->path_m[i], way->path_m[i + 1], i == 0 ? figure : NULL);
  if (way->n_path < 2)
    lr_remark_mark_line (remark, way->person->at_m, way->door->at_m, figure);
  if (way->blocker != NULL)
    lr_remark_mark_outline (remark, &way->blocker->footprint, NULL);
}

static void
say_narrow (LrJudge        *judge,
            LrRemark       *remark,
            const LrWayOut *way,
            const char     *rule)
{
  const char *person = lr_say_name (judge, way->person), *door = lr_say_title (judge, way->door);

  mark_way (remark, way, way->width_m > 0.0 ? lr_say_length (judge, way->width_m) : NULL);
  if (!(way->width_m > MIN_WIDTH_M))
    lr_remark_say (remark, _("There is no way from %s to %s; <b>%s</b> is the limit."), person, door, lr_say_length (judge, way->limit_m));
  else if (way->blocker != NULL)
    lr_remark_say (remark, _("The way from %s to %s is <b>%s</b> wide beside %s; <b>%s</b> is the limit."), person, door,
                   lr_say_length_off (judge, way->width_m, way->limit_m), lr_say_title (judge, way->blocker), lr_say_length (judge, way->limit_m));
  else
    lr_remark_say (remark, _("The way from %s to %s is <b>%s</b> wide; <b>%s</b> is the limit."), person, door,
                   lr_say_length_off (judge, way->width_m, way->limit_m), lr_say_length (judge, way->limit_m));
  if (way->wanted_m < way->limit_m)
    lr_remark_say (remark, _("The door itself is <b>%s</b> wide."), lr_say_length (judge, way->door->item->door.width_m));
  lr_remark_say (remark, "%s", rule);
  if (way->has_clearing)
    lr_judge_offer_move (judge, remark, way->blocker, way->clearing_m, NULL, NULL);
}

/* The house's: nothing in the room can be moved for it */
static void
say_narrow_door (LrJudge        *judge,
                 LrRemark       *remark,
                 const LrWayOut *way,
                 double          limit_m,
                 const char     *rule)
{
  double door_m = way->door->item->door.width_m;

  mark_way (remark, way, lr_say_length (judge, door_m));
  lr_remark_say (remark, _("At the door itself (%s) the way from %s is narrowest: <b>%s</b>; <b>%s</b> is the limit."),
                 lr_say_title (judge, way->door), lr_say_name (judge, way->person), lr_say_length_off (judge, door_m, limit_m),
                 lr_say_length (judge, limit_m));
  lr_remark_say (remark, "%s", rule);
}

static void
judge_exit (LrJudge        *judge,
            const LrWayOut *way,
            gboolean        are_all_known)
{
  double clear_m = lr_way_out_clear_m (way), door_m = way->door->item->door.width_m;
  /* the room's own door is as it is; nobody moves it */
  gboolean is_usual_door = way->width_m >= way->wanted_m && door_m < way->limit_m && door_m >= USUAL_DOOR_M;
  LrGrade grade = LR_GRADE_FINE;
  LrRemark *remark;

  if (clear_m < way->limit_m && !is_usual_door)
    grade = clear_m < judge->limits[LR_LIMIT_EXIT_LEAST] ? LR_GRADE_FIX : LR_GRADE_MIND;
  else if (!are_all_known)
    return;
  remark = lr_judge_add (judge, LR_CHECK_WAY_OUT, grade, NULL, NULL);
  if (remark == NULL)
    return;

  remark->value = clear_m;
  remark->limit = way->limit_m;
  lr_remark_about (remark, way->blocker != NULL ? way->blocker : way->person);
  lr_remark_about (remark, way->person);
  lr_remark_about (remark, way->door);
  if (grade == LR_GRADE_FINE)
    {
      mark_way (remark, way, NULL);
      lr_remark_say (remark, is_usual_door
                               ? _("<b>%s</b> or more is clear all the way from each seat to a way out, whose door is no wider; the local fire code "
                                   "decides what must be.")
                               : _("<b>%s</b> or more is clear all the way from each seat to a way out; the local fire code decides what must be."),
                     lr_say_length (judge, is_usual_door ? clear_m : way->limit_m));
    }
  else if (way->width_m < way->wanted_m)
    say_narrow (judge, remark, way, _("The local fire code decides."));
  else
    say_narrow_door (judge, remark, way, way->limit_m, _("The local fire code decides."));
}

static void
judge_unknown (LrJudge         *judge,
               LrCheck          check,
               const GPtrArray *unknown)
{
  const LrWayOut *first = unknown->len > 0 ? g_ptr_array_index (unknown, 0) : NULL;
  LrRemark *remark = first != NULL ? lr_judge_add (judge, check, LR_GRADE_MIND, first->person, NULL) : NULL;

  if (remark == NULL)
    return;

  remark->limit = first->limit_m;
  for (guint i = 0; i < unknown->len; i++)
    {
      const LrPlaced *person = ((const LrWayOut *) g_ptr_array_index (unknown, i))->person;

      lr_remark_mark_outline (remark, &person->footprint, NULL);
      if (i > 0)
        lr_remark_about (remark, person);
    }
  if (unknown->len == 1)
    lr_remark_say (remark, check == LR_CHECK_WHEELCHAIR
                             ? _("Whether the wheelchair’s way of %s is <b>%s</b> wide is not known: too much stands there; try it.")
                             : _("The way of %s is not known to be <b>%s</b> wide: too much stands there; walk it."),
                   lr_say_name (judge, first->person), lr_say_length (judge, first->limit_m));
  else
    lr_remark_say (remark, ngettext ("The ways of %s and <b>%u</b> other are not known to be <b>%s</b> wide: too much stands there; walk them.",
                                     "The ways of %s and <b>%u</b> others are not known to be <b>%s</b> wide: too much stands there, or too many "
                                     "people are there; walk them.", unknown->len - 1),
                   lr_say_name (judge, first->person), unknown->len - 1, lr_say_length (judge, first->limit_m));
}

/* A door may be narrower than the way to it */
static void
say_wheelchair (LrJudge        *judge,
                LrRemark       *remark,
                const LrWayOut *way)
{
  double door_m = way->door->item->door.width_m;

  mark_way (remark, way, NULL);
  if (door_m < way->limit_m)
    lr_remark_say (remark, _("At the door itself (%s) the wheelchair’s way to the place of %s is narrowest: <b>%s</b>, where a door may be "
                             "<b>%s</b>. The rest has <b>%s</b> or more."),
                   lr_say_title (judge, way->door), lr_say_name (judge, way->person), lr_say_length (judge, door_m),
                   lr_say_length (judge, LR_WHEELCHAIR_DOOR_M), lr_say_length (judge, way->limit_m));
  else
    lr_remark_say (remark, _("A wheelchair has <b>%s</b> or more all the way from %s to the place of %s."), lr_say_length (judge, way->limit_m),
                   lr_say_title (judge, way->door), lr_say_name (judge, way->person));
}

static void
judge_wheelchair (LrJudge        *judge,
                  const LrWayOut *way)
{
  double door_m = way->door->item->door.width_m;
  gboolean is_narrow = way->width_m < way->wanted_m, is_narrow_door = door_m < LR_WHEELCHAIR_DOOR_M && (!is_narrow || door_m < way->width_m);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WHEELCHAIR, is_narrow || is_narrow_door ? LR_GRADE_FIX : LR_GRADE_FINE, way->person, NULL);

  if (remark == NULL)
    return;

  lr_remark_about (remark, way->door);
  remark->value = is_narrow_door ? door_m : way->width_m;
  remark->limit = is_narrow_door ? LR_WHEELCHAIR_DOOR_M : way->limit_m;
  if (is_narrow_door)
    say_narrow_door (judge, remark, way, LR_WHEELCHAIR_DOOR_M, _("It is a wheelchair’s way, measured between leaf and frame."));
  else if (is_narrow)
    say_narrow (judge, remark, way, _("It is a wheelchair’s way."));
  else
    say_wheelchair (judge, remark, way);
}

/**
 * lr_judge_ways_out:
 * @judge: a judge
 *
 * The way from every seat to a way out, told once for the narrowest; and wheelchairs'. Nothing while they are not looked for, as in a trial:
 * the moves that are offered here were looked at with them.
 */
void
lr_judge_ways_out (LrJudge *judge)
{
  const GArray *ways = judge->levels != NULL ? lr_light_levels_ways (judge->levels) : NULL;
  g_autoptr (GPtrArray) unknown = g_ptr_array_new (), wheelchairs = g_ptr_array_new ();
  g_autofree LrWayOut *here = ways != NULL ? g_new (LrWayOut, ways->len + 1) : NULL;

  for (guint i = 0; ways != NULL && i < ways->len; i++)
    {
      if (!bring_here (judge, &g_array_index (ways, LrWayOut, i), &here[i]))
        continue;
      if (here[i].is_unknown)
        g_ptr_array_add (here[i].is_wheelchair ? wheelchairs : unknown, &here[i]);
      else if (here[i].is_wheelchair)
        judge_wheelchair (judge, &here[i]);
      else
        judge_exit (judge, &here[i], unknown->len == 0);
    }
  judge_unknown (judge, LR_CHECK_WAY_OUT, unknown);
  judge_unknown (judge, LR_CHECK_WHEELCHAIR, wheelchairs);
}
