/* judge_room.c - things in each other's place, outside the room, in the way of doors or through the ceiling
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stand counts as the disc of its spread legs, but there are gaps between its three legs: turned well, half the
 * disc's radius may lie in another thing. That much is a Mind, more is a Fix. Before a door nothing is let pass.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_M 0.01
#define CEILING_SPARE_M 0.10 /* a lamp's top under the ceiling: common practice, no source */
#define ROUNDING_M 0.001

/* The room's only door has no need of its name */
static const char *
say_door (LrJudge        *judge,
          const LrPlaced *door)
{
  const GPtrArray *items = judge->study->setup->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_DOOR && item != door->item)
        return lr_say_title (judge, door);
    }

  return _("the door");
}

/**
 * lr_clash_grade:
 * @clash: a clash
 * @limit_m: the plan's limit of an overlap [m]
 *
 * Legs of stands may stand in each other's gaps: that is a Mind.
 *
 * Returns: how bad it is
 */
LrGrade
lr_clash_grade (const LrClash *clash,
                double         limit_m)
{
  double gap_m = clash->a->leg_gap_m + (clash->b != NULL ? clash->b->leg_gap_m : 0.0);

  if (clash->depth_m <= limit_m)
    return LR_GRADE_FINE;
  if (clash->type == LR_CLASH_DOOR)
    return LR_GRADE_FIX;

  return clash->depth_m <= gap_m ? LR_GRADE_MIND : LR_GRADE_FIX;
}

/* The less hangs on a thing, the sooner it moves; < 0: it stays */
static int
willingness (const LrJudge  *judge,
             const LrPlaced *placed)
{
  const LrItem *item = placed->item;

  if (item->kind == LR_ITEM_FURNITURE)
    return item->furniture.is_fixed ? -1 : 3;
  if (placed == judge->study->subject)
    return 0;
  if (item->kind == LR_ITEM_PERSON)
    return placed == judge->study->interviewer ? 1 : 3;
  if (item->kind == LR_ITEM_CAMERA)
    return 2;

  return item->kind == LR_ITEM_LIGHT ? 4 : 5;
}

static void
offer_place (LrJudge        *judge,
             LrRemark       *remark,
             const LrPlaced *mover,
             LrVec2          push,
             double          depth_m)
{
  LrVec2 first_m = lr_vec2_along (mover->at_m, push, depth_m + SPARE_M), to_m;
  /* a place is rounded to whole millimetres: half of one each way must not bring the remark back */
  double strict_m = fmax (judge->limits[LR_LIMIT_OVERLAP] - ROUNDING_M, 0.0);

  if (judge->is_moving)
    return;
  if (lr_study_find_clear (judge->study, mover, first_m, strict_m, &to_m)
      || lr_study_find_clear (judge->study, mover, first_m, fmax (strict_m, mover->leg_gap_m), &to_m))
    lr_judge_offer_move (judge, remark, mover, to_m, NULL, NULL);
}

static LrRemark *
add_clash (LrJudge       *judge,
           LrCheck        check,
           const LrClash *clash)
{
  LrRemark *remark = lr_judge_add (judge, check, lr_clash_grade (clash, judge->limits[LR_LIMIT_OVERLAP]), clash->a, clash->b);

  if (remark == NULL)
    return NULL;

  remark->value = clash->depth_m;
  remark->limit = judge->limits[LR_LIMIT_OVERLAP];
  lr_remark_mark_outline (remark, &clash->a->footprint, NULL);
  return remark;
}

static void
judge_overlap (LrJudge       *judge,
               const LrClash *clash)
{
  LrRemark *remark = add_clash (judge, LR_CHECK_OVERLAP, clash);
  gboolean is_a = willingness (judge, clash->a) >= willingness (judge, clash->b);
  const LrPlaced *mover = is_a ? clash->a : clash->b;
  const LrPlaced *stand = clash->a->leg_gap_m > 0.0 ? clash->a : clash->b;
  const char *depth;

  if (remark == NULL)
    return;

  depth = lr_say_small (judge, clash->depth_m);
  lr_remark_mark_first (remark, mover);
  lr_remark_mark_outline (remark, &clash->b->footprint, NULL);
  lr_remark_mark_point (remark, clash->at_m, depth);
  if (remark->grade == LR_GRADE_MIND)
    {
      lr_remark_say (remark,
                     _("The legs of %s reach <b>%s</b> into the place of %s; turn a gap between two legs that way."),
                     lr_say_title (judge, stand), depth,
                     lr_say_title (judge, stand == clash->a ? clash->b : clash->a));
      return;
    }

  lr_remark_say (remark, _("%s and %s stand in the same place, by <b>%s</b>."), lr_say_title (judge, clash->a),
                 lr_say_title (judge, clash->b), depth);
  if (willingness (judge, mover) >= 0)
    offer_place (judge, remark, mover, lr_vec2_scale (clash->push, is_a ? 1.0 : -1.0), clash->depth_m);
}

static const char *
nearest_wall_title (const LrJudge *judge,
                    LrVec2         at_m)
{
  const LrRoom *room = judge->study->setup->room;
  LrRayHit wall = { 0 };

  lr_polygon_distance_m (room->corners_m, room->n_corners, at_m, &wall);
  return lr_wall_title (room, (int) wall.edge);
}

static void
judge_outside (LrJudge       *judge,
               const LrClash *clash)
{
  LrRemark *remark = add_clash (judge, LR_CHECK_OUTSIDE, clash);
  const char *title, *depth, *wall;

  if (remark == NULL)
    return;

  title = lr_say_title (judge, clash->a);
  depth = lr_say_small (judge, clash->depth_m);
  wall = nearest_wall_title (judge, clash->at_m);
  lr_remark_mark_point (remark, clash->at_m, depth);
  if (remark->grade == LR_GRADE_MIND)
    {
      lr_remark_say (remark,
                     _("The legs of %s reach <b>%s</b> into the %s; turn a gap between two legs that way."),
                     title, depth, wall);
      return;
    }

  lr_remark_say (remark, _("%s reaches <b>%s</b> out of the room, through the %s."), title, depth, wall);
  if (willingness (judge, clash->a) >= 0)
    offer_place (judge, remark, clash->a, clash->push, clash->depth_m);
}

static void
judge_door (LrJudge       *judge,
            const LrClash *clash)
{
  LrRemark *remark = add_clash (judge, LR_CHECK_DOOR_SWING, clash);
  const LrDoor *door = &clash->b->item->door;
  const char *title, *depth, *door_title;
  LrOutline floor;

  if (remark == NULL)
    return;

  title = lr_say_title (judge, clash->a);
  door_title = say_door (judge, clash->b);
  depth = lr_say_small (judge, clash->depth_m);
  if (lr_study_door_floor (judge->study, clash->b, &floor))
    lr_remark_mark_outline (remark, &floor, depth);

  if (door->swing == LR_SWING_IN)
    lr_remark_say (remark,
                   _("%s stands <b>%s</b> in the swing of %s, which is <b>%s</b> wide."),
                   title, depth, door_title, lr_say_length (judge, door->width_m));
  else
    lr_remark_say (remark,
                   _("%s stands <b>%s</b> in the way to %s, which is <b>%s</b> wide."),
                   title, depth, door_title, lr_say_length (judge, door->width_m));
  if (door->is_exit)
    lr_remark_say (remark, _("It is a way out: keep it clear, as the local fire code says."));
  if (willingness (judge, clash->a) >= 0)
    offer_place (judge, remark, clash->a, clash->push, clash->depth_m);
}

/* The height that may be changed, and by how much the thing's top lies over it */
static const char *
height_key (const LrItem *item,
            double       *height_m)
{
  switch (item->kind)
    {
    case LR_ITEM_LIGHT:
      *height_m = item->light.lamp_height_m;
      return "lamp-height-mm";
    case LR_ITEM_CAMERA:
      *height_m = item->camera.lens_height_m;
      return "lens-height-mm";
    case LR_ITEM_MICROPHONE:
      *height_m = item->microphone.tip_height_m;
      return "tip-height-mm";
    case LR_ITEM_PANEL:
      *height_m = item->panel.bottom_m;
      return "bottom-mm";
    case LR_ITEM_PERSON:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return NULL;
    }
}

static void
judge_ceiling (LrJudge       *judge,
               const LrClash *clash)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_CEILING, LR_GRADE_FIX, clash->a, NULL);
  double room_m = judge->study->setup->room->height_m;
  const char *key, *title, *lower;
  double height_m = 0.0;
  LrRemedy *remedy;

  if (remark == NULL)
    return;

  title = lr_say_title (judge, clash->a);
  remark->value = clash->a->top_m;
  remark->limit = room_m;
  lr_remark_mark_outline (remark, &clash->a->footprint, lr_say_length (judge, clash->a->top_m));
  lr_remark_say (remark, _("%s reaches up to <b>%s</b>, but the ceiling is at <b>%s</b>."), title,
                 lr_say_length (judge, clash->a->top_m), lr_say_length (judge, room_m));

  key = height_key (clash->a->item, &height_m);
  height_m -= clash->depth_m + CEILING_SPARE_M;
  if (key == NULL || height_m <= 0.0)
    return;

  lower = lr_say_length (judge, height_m);
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, clash->a->item, key, height_m);
  lr_remedy_say (remedy, lower, _("Lower %s to <b>%s</b>."), lr_say_name (judge, clash->a), lower);
  lr_judge_offer (judge, remark, remedy);
}

typedef struct
{
  guint n_things;                     /* with a footprint */
  const LrPlaced *tallest;            /* of what was brought along */
  guint n_bad[LR_CLASH_CEILING + 1];  /* that are not fine, by LrClashType */
} Summary;

static Summary
summarise (const LrJudge *judge)
{
  const LrStudy *study = judge->study;
  Summary summary = { 0 };

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      summary.n_things += placed->has_footprint ? 1 : 0;
      if (!lr_item_kind_info (placed->item->kind)->is_of_room
          && (summary.tallest == NULL || placed->top_m > summary.tallest->top_m))
        summary.tallest = placed;
    }
  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      summary.n_bad[clash->type] += clash->type == LR_CLASH_CEILING || lr_clash_grade (clash, judge->limits[LR_LIMIT_OVERLAP]) != LR_GRADE_FINE ? 1 : 0;
    }
  return summary;
}

static void
say_all_clear (LrJudge       *judge,
               const Summary *summary)
{
  const LrRoom *room = judge->study->setup->room;
  LrRemark *remark;

  if (summary->n_things > 1 && summary->n_bad[LR_CLASH_OVERLAP] == 0
      && (remark = lr_judge_add (judge, LR_CHECK_OVERLAP, LR_GRADE_FINE, NULL, NULL)) != NULL)
    lr_remark_say (remark, _("None of the <b>%s</b> things on the floor stands in another."),
                   lr_say_number (judge, summary->n_things, 0));

  if (room->n_corners < 3)
    return;

  if (summary->n_things > 0 && summary->n_bad[LR_CLASH_OUTSIDE] == 0
      && (remark = lr_judge_add (judge, LR_CHECK_OUTSIDE, LR_GRADE_FINE, NULL, NULL)) != NULL)
    lr_remark_say (remark, _("All <b>%s</b> things on the floor stand inside the room."),
                   lr_say_number (judge, summary->n_things, 0));

  if (summary->tallest != NULL && summary->n_bad[LR_CLASH_CEILING] == 0
      && (remark = lr_judge_add (judge, LR_CHECK_CEILING, LR_GRADE_FINE, NULL, NULL)) != NULL)
    {
      lr_remark_about (remark, summary->tallest);
      lr_remark_say (remark, _("The tallest thing is %s, at <b>%s</b>; the ceiling is at <b>%s</b>."),
                     lr_say_title (judge, summary->tallest), lr_say_length (judge, summary->tallest->top_m),
                     lr_say_length (judge, room->height_m));
    }
}

static gboolean
is_blocked (const LrJudge  *judge,
            const LrPlaced *door)
{
  for (guint i = 0; i < judge->study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (judge->study->clashes, LrClash, i);

      if (clash->type == LR_CLASH_DOOR && clash->b == door && lr_clash_grade (clash, judge->limits[LR_LIMIT_OVERLAP]) != LR_GRADE_FINE)
        return TRUE;
    }

  return FALSE;
}

static void
say_free_doors (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *door = &g_array_index (judge->study->placed, LrPlaced, i);
      LrRemark *remark;
      LrOutline floor;

      if (door->item->kind != LR_ITEM_DOOR || is_blocked (judge, door)
          || !lr_study_door_floor (judge->study, door, &floor)
          || (remark = lr_judge_add (judge, LR_CHECK_DOOR_SWING, LR_GRADE_FINE, door, NULL)) == NULL)
        continue;

      lr_remark_mark_outline (remark, &floor, NULL);
      lr_remark_say (remark, _("Nothing stands in the way of %s, <b>%s</b> wide."), say_door (judge, door),
                     lr_say_length (judge, door->item->door.width_m));
    }
}

/**
 * lr_judge_room:
 * @judge: a judge
 *
 * Overlaps, things outside, doors and the ceiling; what is clear is said once for all.
 */
void
lr_judge_room (LrJudge *judge)
{
  Summary summary = summarise (judge);

  for (guint i = 0; i < judge->study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (judge->study->clashes, LrClash, i);

      if (clash->type == LR_CLASH_CEILING)
        judge_ceiling (judge, clash);
      else if (lr_clash_grade (clash, judge->limits[LR_LIMIT_OVERLAP]) == LR_GRADE_FINE)
        continue;
      else if (clash->type == LR_CLASH_OVERLAP)
        judge_overlap (judge, clash);
      else if (clash->type == LR_CLASH_OUTSIDE)
        judge_outside (judge, clash);
      else
        judge_door (judge, clash);
    }

  say_all_clear (judge, &summary);
  say_free_doors (judge);
}
