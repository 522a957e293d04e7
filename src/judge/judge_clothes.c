/* judge_clothes.c - whether clothes stand out from the walls behind them, and keep their drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of the same light and the same exposure as the levels that are shown. The walls are those that the camera sees, in the mean.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define BURNT_SHARE 1.0
#define DARK_WALL 0.4 /* signal: under it the wall counts as dark; common practice, no source */

typedef enum { CLOTHES_FINE, CLOTHES_BURNT, CLOTHES_DARK, CLOTHES_LOST } Clothes;

static Clothes
read_clothes (const LrJudge  *judge,
              const LrShares *shares)
{
  double step_stops = log2 (shares->clothes / shares->background);

  if (shares->clothes >= BURNT_SHARE)
    return CLOTHES_BURNT;
  if (lr_signal_of_share (shares->clothes) < judge->limits[LR_LIMIT_CLOTHES_DARK])
    return CLOTHES_DARK;
  return fabs (step_stops) < judge->limits[LR_LIMIT_CLOTHES_STEP] ? CLOTHES_LOST : CLOTHES_FINE; /* no wall is seen: NAN */
}

static void
say_fine (LrJudge        *judge,
          LrRemark       *remark,
          const char     *subject,
          const char     *name,
          const char     *level,
          const LrShares *shares)
{
  double step_stops = log2 (shares->clothes / shares->background);
  const char *stops;

  if (!isfinite (step_stops))
    {
      lr_remark_say (remark, _("%s’s clothes come out at about <b>%s</b> in %s."), subject, level, name);
      return;
    }

  stops = lr_say_number (judge, fabs (step_stops), 1);
  lr_remark_say (remark, step_stops < 0.0 ? _("%s’s clothes come out at about <b>%s</b> in %s, <b>%s</b> stops darker than the walls behind.")
                                          : _("%s’s clothes come out at about <b>%s</b> in %s, <b>%s</b> stops brighter than the walls behind."),
                 subject, level, name, stops);
}

/* Clothes part from a dark wall upwards and from a bright one downwards; light on the wall goes the way that it is off already */
static const char *
say_help (gboolean is_dark_wall,
          gboolean is_over_wall)
{
  if (is_over_wall)
    return is_dark_wall ? _("Ask for lighter clothes, or take light off the walls.") : _("Ask for darker clothes, or take light off the walls.");

  return is_dark_wall ? _("Ask for lighter clothes, or put more light on the walls.") : _("Ask for darker clothes.");
}

static void
say_lost (LrJudge        *judge,
          LrRemark       *remark,
          const char     *subject,
          const char     *name,
          const char     *level,
          const LrShares *shares)
{
  double wall = lr_signal_of_share (shares->background);
  const char *stops = lr_say_number (judge, remark->value, 1), *limit = lr_say_number (judge, remark->limit, 1);

  if (remark->limit - remark->value < 0.1) /* it would read as the limit */
    stops = lr_say_number (judge, remark->value, 2);
  lr_remark_say (remark, _("%s’s clothes come out at <b>%s</b> in %s, the walls behind at <b>%s</b>: <b>%s</b> stops apart; under <b>%s</b> they do "
                           "not stand out."),
                 subject, level, name, lr_say_share (judge, wall), stops, limit);
  lr_remark_say (remark, "%s", say_help (wall < DARK_WALL, shares->clothes > shares->background));
}

/* Whether the face is off too, and they would be neither burnt nor too dark with the face where it is wanted */
static gboolean
is_of_exposure (const LrJudge  *judge,
                const LrShares *shares)
{
  double times = shares->face / lr_share_of_signal (judge->limits[LR_LIMIT_FACE_LEVEL]), there = shares->clothes / times;

  return fabs (log2 (times)) > judge->limits[LR_LIMIT_FACE_LEVEL_OFF] && there < BURNT_SHARE
         && lr_signal_of_share (there) >= judge->limits[LR_LIMIT_CLOTHES_DARK];
}

static void
say_clothes (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera,
             Clothes                clothes,
             const LrShares        *shares)
{
  const char *name = lr_say_name (judge, camera->placed), *subject = lr_say_name (judge, camera->subject);
  const char *level = lr_say_share (judge, lr_signal_of_share (shares->clothes));

  switch (clothes)
    {
    case CLOTHES_BURNT:
      lr_remark_say (remark, _("%s’s clothes are burnt out in %s, <b>%s</b> stops over white."), subject, name,
                     lr_say_number (judge, remark->value, 1));
      lr_remark_say (remark, "%s", is_of_exposure (judge, shares) ? _("Set the level of the face first: then they come out.")
                                                                  : _("Ask for darker clothes, or flag the light off them."));
      break;
    case CLOTHES_DARK:
      lr_remark_say (remark, _("%s’s clothes come out at only <b>%s</b> in %s; under <b>%s</b> they have no drawing."),
                     subject, lr_say_share_off (judge, lr_signal_of_share (shares->clothes), judge->limits[LR_LIMIT_CLOTHES_DARK]), name,
                     lr_say_share (judge, judge->limits[LR_LIMIT_CLOTHES_DARK]));
      lr_remark_say (remark, "%s", is_of_exposure (judge, shares) ? _("Set the level of the face first: then they come out.")
                                                                  : _("Ask for lighter clothes."));
      break;
    case CLOTHES_LOST:
      say_lost (judge, remark, subject, name, level, shares);
      break;
    case CLOTHES_FINE:
    default:
      say_fine (judge, remark, subject, name, level, shares);
    }
}

static void
judge_clothes (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrShares        *shares)
{
  Clothes clothes = read_clothes (judge, shares);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_CLOTHES, clothes == CLOTHES_FINE ? LR_GRADE_FINE : LR_GRADE_MIND, camera->placed, NULL);

  if (remark == NULL)
    return;

  remark->value = fabs (log2 (shares->clothes / shares->background));
  remark->limit = judge->limits[LR_LIMIT_CLOTHES_STEP];
  if (clothes == CLOTHES_BURNT || clothes == CLOTHES_DARK) /* stops over what they may be */
    {
      remark->value = log2 (shares->clothes / (clothes == CLOTHES_BURNT ? BURNT_SHARE : lr_share_of_signal (judge->limits[LR_LIMIT_CLOTHES_DARK])));
      remark->limit = 0.0;
    }
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, lr_vec3_flat (camera->subject->eyes_m), lr_vec3_flat (camera->behind_at_m), NULL);
  say_clothes (judge, remark, camera, clothes, shares);
}

/* In closer shots there are none in the frame */
static gboolean
has_clothes (const LrCameraReading *camera)
{
  return camera->framing.shot > LR_SHOT_BIG_CLOSE_UP;
}

/**
 * lr_judge_clothes:
 * @judge: a judge
 *
 * Levels of the clothes against the walls that each camera sees. Nothing where nothing gives light.
 */
void
lr_judge_clothes (LrJudge *judge)
{
  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels) || lr_light_levels_n_sources (judge->levels) == 0)
    return;

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      LrShares shares;

      if (!camera->has_subject || lr_judge_is_cutaway (judge, camera) || !has_clothes (camera)
          || !lr_light_levels_shares (judge->levels, camera->item->id, &shares))
        continue;
      if (shares.clothes > 0.0)
        judge_clothes (judge, camera, &shares);
    }
}
