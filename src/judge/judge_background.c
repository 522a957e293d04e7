/* judge_background.c - what stands behind the subject: how much of it, how far, how soft
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The softer background comes from the distance behind the subject rather than from the lens alone (common practice); the
 * figures are similar triangles and the thin lens.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_M 0.05
#define CLEARLY_LONGER 1.2

static void
mark_behind (LrRemark              *remark,
             const LrCameraReading *camera,
             const char            *figure)
{
  lr_remark_mark_distance (remark, lr_vec3_flat (camera->subject->eyes_m), lr_vec3_flat (camera->behind_at_m), figure);
}

/* Whether the camera could stand at that distance, straight back */
static gboolean
is_in_room (const LrJudge         *judge,
            const LrCameraReading *camera,
            double                 distance_m)
{
  const LrRoom *room = judge->study->setup->room;
  LrVec2 at_m = lr_vec2_along (camera->placed->at_m, lr_vec2_polar (camera->pan_rad, 1.0), camera->distance_m - distance_m);

  return room->n_corners < 3
         || lr_polygon_distance_m (room->corners_m, room->n_corners, at_m, NULL) >= camera->item->camera.stand_radius_m;
}

/* The next longer lens at hand from which the same shot still fits into the room. Past things the axis may come to meet the wall */
static void
say_longer_lens (LrJudge               *judge,
                 LrRemark              *remark,
                 const LrCameraReading *camera)
{
  const GPtrArray *kit = judge->study->plan->kit;
  double best_m = HUGE_VAL, field_m = 0.0, distance_m = 0.0;

  if (camera->behind != LR_BEHIND_WALL)
    return;

  for (guint i = 0; i < kit->len; i++)
    {
      const LrKitEntry *entry = kit->pdata[i];
      const LrItem *item = entry->item;
      double focal_m = item->kind == LR_ITEM_LENS ? item->lens.focal_max_m * item->lens.converter : HUGE_VAL;
      double its_field_m, its_distance_m;

      if (focal_m >= best_m || lr_plan_kit_left (judge->study->plan, entry) < 1 || focal_m < CLEARLY_LONGER * camera->focal_m
          || !lr_camera_behind_with_focal (camera, focal_m, &its_field_m, &its_distance_m)
          || !is_in_room (judge, camera, its_distance_m))
        continue;

      best_m = focal_m;
      field_m = its_field_m;
      distance_m = its_distance_m;
    }

  if (best_m < HUGE_VAL)
    lr_remark_say (remark,
                   _("The same shot with <b>%s</b> from <b>%s</b> would show <b>%s</b> of it."),
                   lr_say_focal (judge, best_m), lr_say_length (judge, distance_m),
                   lr_say_length (judge, field_m));
}

/* Share of the frame in which one sees past the edge of the backdrop; 0 if it fills the frame */
static double
past_backdrop (const LrCameraReading *camera)
{
  const LrPlaced *panel = camera->behind_item;
  const LrPanel *p = &panel->item->panel;
  LrVec2 along = lr_vec2_polar (panel->facing_rad + 0.5 * LR_PI, 0.5 * p->width_m);
  double least[2] = { HUGE_VAL, HUGE_VAL }, most[2] = { -HUGE_VAL, -HUGE_VAL }; /* across: per side; the inner ends */
  double highest = -HUGE_VAL, lowest = HUGE_VAL;

  for (int i = 0; i < 4; i++)
    {
      LrVec2 end_m = lr_vec2_add (panel->at_m, lr_vec2_scale (along, i % 2 ? 1.0 : -1.0));
      LrFramePoint place;

      if (!lr_projection_point (&camera->projection,
                                lr_vec2_raise (end_m, i < 2 ? p->bottom_m : p->bottom_m + p->height_m), &place))
        return 0.0;

      least[i % 2] = fmin (least[i % 2], place.across);
      most[i % 2] = fmax (most[i % 2], place.across);
      if (i < 2)
        lowest = fmin (lowest, place.down);
      else
        highest = fmax (highest, place.down);
    }

  return fmax (fmax (fmax (fmin (most[0], most[1]), 1.0 - fmax (least[0], least[1])), fmax (highest, 1.0 - lowest)), 0.0);
}

static gboolean
is_backdrop (const LrCameraReading *camera)
{
  return camera->behind == LR_BEHIND_ITEM && camera->behind_item->item->kind == LR_ITEM_PANEL
         && camera->behind_item->item->panel.form == LR_PANEL_BACKDROP;
}

static void
judge_seen (LrJudge               *judge,
            const LrCameraReading *camera)
{
  double past = is_backdrop (camera) ? past_backdrop (camera) : 0.0;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_BACKGROUND_SEEN, past > 0.0 ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *behind, *width;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  behind = lr_say_behind (judge, camera);
  width = lr_say_plain (judge, camera->behind_field_w_m);
  remark->value = camera->behind_field_w_m;
  lr_remark_about (remark, camera->subject);
  mark_behind (remark, camera, lr_say_length (judge, camera->behind_field_w_m));

  if (past > 0.0)
    {
      remark->limit = camera->behind_item->item->panel.width_m;
      lr_remark_say (remark,
                     _("%s sees past the edge of %s, by <b>%s</b> of the frame; there it sees <b>%s × %s</b>."),
                     name, behind, lr_say_share (judge, past), width,
                     lr_say_length (judge, camera->behind_field_h_m));
    }
  else
    lr_remark_say (remark,
                   _("Behind %s (%s) %s sees <b>%s × %s</b>; things there look <b>%s</b> of their size beside %s."),
                   lr_say_name (judge, camera->subject), behind, name, width,
                   lr_say_length (judge, camera->behind_field_h_m), lr_say_share (judge, camera->size_ratio),
                   lr_say_name (judge, camera->subject));
  say_longer_lens (judge, remark, camera);
}

/* A thing that may move goes back by what is missing, along the axis */
static void
offer_thing_back (LrJudge               *judge,
                  LrRemark              *remark,
                  const LrCameraReading *camera)
{
  const LrPlaced *thing = camera->behind_item;
  double missing_m = judge->limits[LR_LIMIT_BACKGROUND_DISTANCE] + SPARE_M - camera->separation_m;

  if (camera->behind != LR_BEHIND_ITEM || thing->item->kind == LR_ITEM_WINDOW
      || (thing->item->kind == LR_ITEM_FURNITURE && thing->item->furniture.is_fixed))
    return;

  lr_judge_offer_move (judge, remark, thing,
                       lr_vec2_along (thing->at_m, lr_vec2_polar (camera->pan_rad, 1.0), missing_m), NULL, NULL);
}

static gboolean
belongs_to_set (const LrItem *item)
{
  return lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR && !lr_item_kind_info (item->kind)->is_of_room;
}

/* People, cameras, lights and microphones come forward as one block, which keeps everything else as it is. Leads would stay
 * behind, so there must be none. */
static void
offer_set_forward (LrJudge               *judge,
                   LrRemark              *remark,
                   const LrCameraReading *camera)
{
  double missing_m = judge->limits[LR_LIMIT_BACKGROUND_DISTANCE] + SPARE_M - camera->separation_m;
  LrVec2 by = lr_vec2_polar (camera->pan_rad + LR_PI, missing_m);
  const char *length = lr_say_length (judge, missing_m);
  LrRemedy *remedy;

  if (judge->study->leads->len > 0 || camera->behind_item != NULL)
    return;

  remedy = lr_remedy_new ();
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (!belongs_to_set (placed->item))
        continue;

      lr_remedy_move (remedy, placed, lr_vec2_add (placed->item->at_m, by), NULL);
      if (placed->item->kind == LR_ITEM_MICROPHONE)
        {
          lr_remedy_change (remedy, placed->item, "tip-x-mm", placed->item->microphone.tip_x_m + by.x);
          lr_remedy_change (remedy, placed->item, "tip-y-mm", placed->item->microphone.tip_y_m + by.y);
        }
    }
  lr_remedy_say (remedy, length, _("Move the whole set <b>%s</b> %s."), length, lr_say_towards (judge, by));
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_distance (LrJudge               *judge,
                const LrCameraReading *camera)
{
  double limit_m = judge->limits[LR_LIMIT_BACKGROUND_DISTANCE];
  gboolean is_near = camera->separation_m < limit_m;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_BACKGROUND_DISTANCE, is_near ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *subject, *behind, *distance, *limit;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  behind = lr_say_behind (judge, camera);
  distance = is_near ? lr_say_length_off (judge, camera->separation_m, limit_m)
                     : lr_say_length (judge, camera->separation_m);
  limit = lr_say_length (judge, limit_m);
  remark->value = camera->separation_m;
  remark->limit = limit_m;
  lr_remark_about (remark, camera->subject);
  mark_behind (remark, camera, distance);

  if (!is_near)
    {
      lr_remark_say (remark,
                     _("Behind %s in %s: %s, <b>%s</b> away; <b>%s</b> is the least."),
                     subject, name, behind, distance, limit);
      return;
    }

  lr_remark_say (remark,
                 _("Behind %s in %s: %s, only <b>%s</b> away; from <b>%s</b> on it goes soft and loses the shadow."),
                 subject, name, behind, distance, limit);
  offer_thing_back (judge, remark, camera);
  offer_set_forward (judge, remark, camera);
}

static void
offer_open_stop (LrJudge               *judge,
                 LrRemark              *remark,
                 const LrCameraReading *camera)
{
  const LrLens *lens = lr_judge_mounted_lens (judge, camera);
  double wanted = camera->item->camera.f_number * camera->blur_share / judge->limits[LR_LIMIT_BACKGROUND_BLUR];
  double f_number = lr_nominal_stop (wanted, TRUE);
  const char *stop = lr_say_stop (judge, f_number);
  LrRemedy *remedy;

  if (f_number > wanted || (lens != NULL && f_number < lens->f_number_min))
    return;

  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "f-number", f_number);
  lr_remedy_say (remedy, stop, _("Open %s to <b>%s</b>, and set it to %s for the light."), lr_say_name (judge, camera->placed), stop,
                 lr_judge_compensate (judge, remedy, camera, 2.0 * log2 (f_number / camera->item->camera.f_number)));
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_blur (LrJudge               *judge,
            const LrCameraReading *camera)
{
  double limit = judge->limits[LR_LIMIT_BACKGROUND_BLUR];
  gboolean is_sharp = camera->blur_share < limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_BACKGROUND_BLUR, is_sharp ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *subject, *behind, *blur, *least;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  behind = lr_say_behind (judge, camera);
  blur = is_sharp ? lr_say_share_off (judge, camera->blur_share, limit) : lr_say_share (judge, camera->blur_share);
  least = lr_say_share (judge, limit);
  remark->value = camera->blur_share;
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  mark_behind (remark, camera, blur);

  if (!is_sharp)
    {
      lr_remark_say (remark,
                     _("What is behind %s in %s (%s) is blurred by <b>%s</b> of the width; <b>%s</b> is the least."),
                     subject, name, behind, blur, least);
      return;
    }

  lr_remark_say (remark,
                 _("What is behind %s in %s (%s) is blurred by only <b>%s</b> of the width; under <b>%s</b> it "
                   "is drawn sharp."),
                 subject, name, behind, blur, least);
  offer_open_stop (judge, remark, camera);
}

/**
 * lr_judge_background:
 * @judge: a judge
 *
 * What each camera sees behind its subject, how far and how soft.
 */
void
lr_judge_background (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->behind == LR_BEHIND_NOTHING || lr_judge_is_cutaway (judge, camera))
        continue;

      judge_seen (judge, camera);
      judge_distance (judge, camera);
      if (isfinite (camera->blur_share))
        judge_blur (judge, camera);
    }
}
