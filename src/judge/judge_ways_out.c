/* judge_ways_out.c - the way from each seat to a way out, and a wheelchair's way to its place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The narrowest place on the widest way counts. Ways are looked for when the plan rests, with the levels of light: they are those of this
 * plan or of one just before it.
 */

#include "config.h"

#include "judge_parts.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>

#define MIN_WIDTH_M 0.3

/* The same way, of things of this study; FALSE: one of them is gone */
static gboolean
bring_here (const LrJudge  *judge,
            const LrWayOut *from,
            LrWayOut       *way)
{
  *way = *from;
  way->person = lr_study_find_placed (judge->study, from->person->item->id);
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
    lr_remark_say (remark, _("There is no way from %s to %s; <b>%s</b> is the limit."), person, door, lr_say_length (judge, way->wanted_m));
  else if (way->blocker != NULL)
    lr_remark_say (remark, _("The way from %s to %s is <b>%s</b> wide beside %s; <b>%s</b> is the limit."), person, door,
                   lr_say_length_off (judge, way->width_m, way->wanted_m), lr_say_title (judge, way->blocker), lr_say_length (judge, way->wanted_m));
  else
    lr_remark_say (remark, _("The way from %s to %s is <b>%s</b> wide; <b>%s</b> is the limit."), person, door,
                   lr_say_length_off (judge, way->width_m, way->wanted_m), lr_say_length (judge, way->wanted_m));
  lr_remark_say (remark, "%s", rule);
  if (way->has_clearing)
    lr_judge_offer_move (judge, remark, way->blocker, way->clearing_m, NULL, NULL);
}

static void
judge_exit (LrJudge        *judge,
            const LrWayOut *way)
{
  LrGrade grade = LR_GRADE_FINE;
  LrRemark *remark;

  if (way->width_m < way->wanted_m)
    grade = way->width_m < judge->limits[LR_LIMIT_EXIT_LEAST] ? LR_GRADE_FIX : LR_GRADE_MIND;
  remark = lr_judge_add (judge, LR_CHECK_WAY_OUT, grade, NULL, NULL);
  if (remark == NULL)
    return;

  remark->value = way->width_m;
  remark->limit = way->wanted_m;
  lr_remark_about (remark, way->blocker != NULL ? way->blocker : way->person);
  lr_remark_about (remark, way->person);
  lr_remark_about (remark, way->door);
  if (grade != LR_GRADE_FINE)
    {
      say_narrow (judge, remark, way, _("The local fire code decides."));
      return;
    }
  mark_way (remark, way, NULL);
  lr_remark_say (remark, _("<b>%s</b> or more is clear all the way from each seat to a way out; the local fire code decides what must be."),
                 lr_say_length (judge, way->width_m));
}

static void
judge_wheelchair (LrJudge        *judge,
                  const LrWayOut *way)
{
  gboolean is_narrow = way->width_m < way->wanted_m, is_narrow_door = way->door->item->door.width_m < LR_WHEELCHAIR_DOOR_M;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WHEELCHAIR, is_narrow || is_narrow_door ? LR_GRADE_FIX : LR_GRADE_FINE, way->person, NULL);

  if (remark == NULL)
    return;

  lr_remark_about (remark, way->door);
  remark->value = is_narrow ? way->width_m : is_narrow_door ? way->door->item->door.width_m : way->width_m;
  remark->limit = is_narrow ? way->wanted_m : is_narrow_door ? LR_WHEELCHAIR_DOOR_M : way->wanted_m;
  if (is_narrow)
    {
      say_narrow (judge, remark, way, _("It is a wheelchair’s way."));
      return;
    }
  mark_way (remark, way, NULL);
  if (is_narrow_door)
    lr_remark_say (remark, _("%s is <b>%s</b> wide; a wheelchair usually wants <b>%s</b> between leaf and frame."), lr_say_title (judge, way->door),
                   lr_say_length (judge, way->door->item->door.width_m), lr_say_length (judge, LR_WHEELCHAIR_DOOR_M));
  else
    lr_remark_say (remark, _("A wheelchair has <b>%s</b> or more all the way from %s to the place of %s."), lr_say_length (judge, way->width_m),
                   lr_say_title (judge, way->door), lr_say_name (judge, way->person));
}

/**
 * lr_judge_ways_out:
 * @judge: a judge
 *
 * The way from every seat to a way out, told once for the narrowest; and wheelchairs'. Nothing while they are not known, as in a trial: the
 * moves that are offered here were looked at with them.
 */
void
lr_judge_ways_out (LrJudge *judge)
{
  const GArray *ways = judge->levels != NULL ? lr_light_levels_ways (judge->levels) : NULL;

  for (guint i = 0; ways != NULL && i < ways->len; i++)
    {
      LrWayOut way;

      if (!bring_here (judge, &g_array_index (ways, LrWayOut, i), &way))
        continue;
      if (way.is_wheelchair)
        judge_wheelchair (judge, &way);
      else
        judge_exit (judge, &way);
    }
}
