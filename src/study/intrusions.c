/* intrusions.c - what stands in a camera's picture that should not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Balls round things are tested first, so that most cost a few products. What is left is seen as the hull of each of its
 * parts, cut by the frame. Where people, furniture, panels or walls may hide it, rays through a net of points over each part tell;
 * else its figures are those of the corners of what is seen, without a net.
 */

#include "intrusions_private.h"

#include <string.h>

#define EDGE_SHARE 1e-9
#define LEAST_COVER 0.01

/**
 * lr_look_note_place:
 * @look: a thing that is looked at
 * @p: the camera
 * @at: a place in the frame where it is seen
 * @depth_m: how far it is there, along the axis [m]
 *
 * Source: similar triangles.
 */
void
lr_look_note_place (LrLook             *look,
                    const LrProjection *p,
                    LrVec2              at,
                    double              depth_m)
{
  double *move_m = look->intrusion.move_m;
  double wide_m = 2.0 * p->half_width * depth_m, high_m = 2.0 * p->half_height * depth_m;

  look->bounds.x0 = MIN (look->bounds.x0, at.x);
  look->bounds.x1 = MAX (look->bounds.x1, at.x);
  look->bounds.y0 = MIN (look->bounds.y0, at.y);
  look->bounds.y1 = MAX (look->bounds.y1, at.y);
  look->nearest_m = MIN (look->nearest_m, depth_m);

  move_m[LR_BORDER_LEFT] = fmax (move_m[LR_BORDER_LEFT], at.x * wide_m);
  move_m[LR_BORDER_RIGHT] = fmax (move_m[LR_BORDER_RIGHT], (1.0 - at.x) * wide_m);
  /* upright, while the frame may be tilted: the depth changes on the way */
  move_m[LR_BORDER_TOP] = fmax (move_m[LR_BORDER_TOP], at.y * high_m / fmax (p->up.z - p->half_height * p->forward.z, 0.05));
  move_m[LR_BORDER_BOTTOM] = fmax (move_m[LR_BORDER_BOTTOM],
                                 (1.0 - at.y) * high_m / fmax (p->up.z + p->half_height * p->forward.z, 0.05));
}

/**
 * lr_look_keep_outline:
 * @look: a thing that is looked at
 * @study: the study that keeps it
 * @seen: what a part of the thing covers of the frame
 */
void
lr_look_keep_outline (LrLook             *look,
                      LrStudy            *study,
                      const LrSilhouette *seen)
{
  LrFrameOutline outline = { study->outline_points->len, (guint) seen->n };

  g_array_append_vals (study->outline_points, seen->corner, (guint) seen->n);
  g_array_append_val (study->outlines, outline);
  look->intrusion.n_outlines++;
}

/**
 * lr_look_choose_edge:
 * @look: a thing of which something is seen
 * @p: the camera
 *
 * How far it reaches in from each edge, and the edge by which it gets out soonest.
 */
void
lr_look_choose_edge (LrLook             *look,
                     const LrProjection *p)
{
  LrIntrusion *intrusion = &look->intrusion;
  const LrFrameBox *b = &look->bounds;
  const gboolean is_cut[LR_N_BORDERS] = {
    [LR_BORDER_LEFT] = b->x0 <= EDGE_SHARE, [LR_BORDER_RIGHT] = b->x1 >= 1.0 - EDGE_SHARE,
    [LR_BORDER_TOP] = b->y0 <= EDGE_SHARE, [LR_BORDER_BOTTOM] = b->y1 >= 1.0 - EDGE_SHARE,
  };
  double best = HUGE_VAL;

  intrusion->reach[LR_BORDER_LEFT] = b->x1;
  intrusion->reach[LR_BORDER_RIGHT] = 1.0 - b->x0;
  intrusion->reach[LR_BORDER_TOP] = b->y1;
  intrusion->reach[LR_BORDER_BOTTOM] = 1.0 - b->y0;
  for (LrFrameBorder edge = 0; edge < LR_N_BORDERS; edge++)
    {
      double reach = intrusion->reach[edge] * (edge < LR_BORDER_TOP ? p->half_width : p->half_height);

      if (reach < best)
        {
          best = reach;
          intrusion->edge = edge;
          intrusion->is_cut = is_cut[edge];
        }
    }
}

/* How far over the frame the arm and the capsule pass */
static void
look_above (const LrLensView *view,
            LrLook           *look)
{
  static const LrFrameBox above = { 0.0, 1.0, -LR_INTRUSION_ABOVE, 0.0 };
  double lowest = -HUGE_VAL;

  for (guint i = 0; i < look->intruder.n; i++)
    {
      LrSilhouette over;

      if (look->intruder.part[i] != LR_INTRUDER_ARM && look->intruder.part[i] != LR_INTRUDER_CAPSULE)
        continue;
      if (!lr_silhouette (view->projection, &look->intruder.shape[i], &over) || !lr_silhouette_clip (&over, &above))
        continue;

      lowest = fmax (lowest, lr_silhouette_bounds (&over).y1);
      look->intrusion.part = look->intruder.part[i];
    }

  if (lowest > -HUGE_VAL)
    look->intrusion.clearance = fmax (0.0, -lowest);
}

/* What is a fault wherever it is seen */
static gboolean
is_equipment (const LrItem *item)
{
  return item->kind == LR_ITEM_CAMERA || item->kind == LR_ITEM_LIGHT || item->kind == LR_ITEM_MICROPHONE
         || item->kind == LR_ITEM_PANEL;
}

/**
 * lr_look_begin:
 * @view: a view
 * @placed: (nullable): what is looked at
 * @look: (out caller-allocates): what is known of it: nothing
 */
void
lr_look_begin (const LrLensView *view,
               const LrPlaced   *placed,
               LrLook           *look)
{
  look->bounds = (LrFrameBox) { HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL };
  look->nearest_m = HUGE_VAL;
  look->area = look->largest = 0.0;
  look->n_seen = 0;
  look->is_any_enough = view->study->is_trial && placed != NULL && is_equipment (placed->item);
  look->intrusion = (LrIntrusion) {
    .camera = view->camera, .placed = placed, .share = NAN, .clearance = NAN, .first_outline = view->study->outlines->len,
  };
}

/* FALSE: no part of it is in the frame */
static gboolean
see_parts (const LrLensView *view,
           LrLook           *look)
{
  gboolean is_seen = FALSE;

  lr_intruder_shapes (view->study, look->intrusion.placed, &look->intruder);
  for (guint i = 0; i < look->intruder.n; i++)
    {
      const LrVolume *shape = &look->intruder.shape[i];
      LrSilhouette *seen = &look->seen[i];

      if (!lr_frame_may_hold (view->projection, shape->centre_m, shape->reach_m, 0.0)
          || !lr_silhouette (view->projection, shape, seen) || !lr_silhouette_clip (seen, &LR_WHOLE_FRAME))
        seen->n = 0;
      is_seen |= seen->n > 0;
    }

  return is_seen;
}

/* What is before the subject counts by what it hides; a second person whom the picture is about does not count behind */
static gboolean
is_deliberate (const LrLensView *view,
               const LrLook     *look)
{
  const LrItem *item = look->intrusion.placed->item;

  if (item->kind == LR_ITEM_FURNITURE)
    return look->intrusion.face_share < LEAST_COVER && look->intrusion.body_share < LEAST_COVER;

  return item->kind == LR_ITEM_PERSON && item->person.role == LR_ROLE_SUBJECT && !look->intrusion.is_nearer
         && isfinite (view->subject_m);
}

static void
look_at (LrLensView     *view,
         LrLook         *look,
         const LrPlaced *placed,
         double          reach_m)
{
  gboolean is_seen;

  lr_look_begin (view, placed, look);
  is_seen = see_parts (view, look);
  look->has_walls = is_seen && lr_view_has_walls_between (view, placed, reach_m);
  for (guint i = 0; is_seen && i < look->intruder.n && !(look->is_any_enough && look->n_seen > 0); i++)
    if (look->seen[i].n > 0)
      lr_view_look_at_part (view, look, i);

  if (look->n_seen == 0)
    {
      if (lr_intruder_is_boom (placed) && !is_seen)
        look_above (view, look);
      if (isfinite (look->intrusion.clearance))
        g_array_append_val (view->study->intrusions, look->intrusion);
      return;
    }

  if (look->is_any_enough)
    {
      g_array_append_val (view->study->intrusions, look->intrusion);
      return;
    }

  look->intrusion.is_nearer = look->nearest_m < view->subject_m;
  if (look->intrusion.is_nearer)
    {
      look->intrusion.face_share = lr_view_covered_share (view, look, &view->head, &view->head_seen);
      look->intrusion.body_share = lr_view_covered_share (view, look, &view->trunk, &view->trunk_seen);
    }
  if (is_deliberate (view, look))
    return;

  if (look->intruder.n == 1)
    look->intrusion.share = look->area;
  lr_look_choose_edge (look, view->projection);
  for (guint i = 0; i < look->intruder.n; i++)
    if (look->seen[i].n > 0)
      lr_look_keep_outline (look, view->study, &look->seen[i]);
  g_array_append_val (view->study->intrusions, look->intrusion);
}

/* Furniture behind the subject is the picture, and the chair that they sit on is theirs */
static gboolean
is_candidate (const LrLensView *view,
              const LrPlaced   *placed,
              LrVec3            centre_m,
              double            reach_m)
{
  const LrPlaced *subject = view->camera->subject;
  double depth_m;

  if (placed == view->camera->placed || placed == subject)
    return FALSE;
  if (placed->item->kind != LR_ITEM_FURNITURE)
    return placed->item->kind != LR_ITEM_PERSON || placed->body.stature_m > 0.0;

  depth_m = lr_vec3_dot (lr_vec3_sub (centre_m, view->projection->eye_m), view->projection->forward);
  return subject != NULL && depth_m - reach_m < view->subject_m
         && (view->head_seen.n > 0 || view->trunk_seen.n > 0)
         && !lr_outline_contains (&placed->footprint, subject->at_m);
}

static gboolean
is_convex (const LrRoom *room)
{
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 a = room->corners_m[i], b = room->corners_m[(i + 1) % room->n_corners];
      LrVec2 c = room->corners_m[(i + 2) % room->n_corners];

      if (lr_vec2_cross (lr_vec2_sub (b, a), lr_vec2_sub (c, b)) < 0.0)
        return FALSE;
    }

  return TRUE;
}

static void
see_subject (LrLensView *view)
{
  const LrPlaced *subject = view->camera->subject;

  view->subject_m = HUGE_VAL;
  view->head_seen.n = view->trunk_seen.n = 0;
  if (subject == NULL || !(subject->body.stature_m > 0.0))
    return;

  view->subject_m = lr_vec3_dot (lr_vec3_sub (subject->eyes_m, view->projection->eye_m), view->projection->forward);
  lr_person_head (subject, &view->head);
  lr_person_trunk (subject, &view->trunk);
  if (!lr_silhouette (view->projection, &view->head, &view->head_seen) || !lr_silhouette_clip (&view->head_seen, &LR_WHOLE_FRAME))
    view->head_seen.n = 0;
  if (!lr_silhouette (view->projection, &view->trunk, &view->trunk_seen) || !lr_silhouette_clip (&view->trunk_seen, &LR_WHOLE_FRAME))
    view->trunk_seen.n = 0;
}

/* What is looked at, if it is in the frame or just over it */
static void
look_for (LrLensView     *view,
          LrLook         *look,
          const LrPlaced *placed)
{
  LrVec3 centre_m;
  double reach_m;

  if (lr_intruder_ball (view->study, placed, &centre_m, &reach_m)
      && lr_frame_may_hold (view->projection, centre_m, reach_m, lr_intruder_is_boom (placed) ? LR_INTRUSION_ABOVE : 0.0)
      && is_candidate (view, placed, centre_m, reach_m))
    look_at (view, look, placed, reach_m);
}

static void
look_through (LrLensView *view,
              LrLook     *look)
{
  const LrRoom *room = view->study->setup->room;

  for (guint i = 0; i < view->study->placed->len; i++)
    look_for (view, look, lr_study_placed_at (view->study, i));

  if (!view->is_in_room)
    return;
  if (view->projection->eye_m.z < room->height_m)
    lr_view_look_at_level (view, look, LR_INTRUDER_CEILING, room->height_m);
  if (!view->study->is_trial) /* it is no fault, and only drawn */
    lr_view_look_at_level (view, look, LR_INTRUDER_FLOOR, 0.0);
}

static gboolean
is_screen (const LrItem *item)
{
  return item->kind == LR_ITEM_PERSON || item->kind == LR_ITEM_FURNITURE || item->kind == LR_ITEM_PANEL;
}

/* Whether the two are the same set-up but for things that hide nothing */
static gboolean
may_take_over (const LrStudy *study,
               const LrStudy *before)
{
  if (before == NULL || study->setup->room != before->setup->room || study->placed->len != before->placed->len)
    return FALSE;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *now = lr_study_placed_at (study, i)->item, *then = lr_study_placed_at (before, i)->item;

      if (now != then && (now->kind != then->kind || is_screen (now)))
        return FALSE;
    }

  return TRUE;
}

/* The camera sees as before: only what has changed is looked at anew */
static void
take_over (LrLensView    *view,
           LrLook        *look,
           const LrStudy *before,
           guint          camera)
{
  const LrPlaced *first = lr_study_placed_at (before, 0);

  for (guint i = 0; i < before->intrusions->len; i++)
    {
      LrIntrusion intrusion = *lr_study_intrusion (before, i);
      const LrPlaced *now = NULL;

      if (intrusion.camera != &g_array_index (before->cameras, LrCameraReading, camera))
        continue;
      if (intrusion.placed != NULL)
        {
          now = lr_study_placed_at (view->study, (guint) (intrusion.placed - first));
          if (now->item != intrusion.placed->item)
            continue;
        }

      intrusion.camera = view->camera;
      intrusion.placed = now;
      intrusion.n_outlines = 0;
      g_array_append_val (view->study->intrusions, intrusion);
    }

  for (guint i = 0; i < view->study->placed->len; i++)
    if (lr_study_placed_at (view->study, i)->item != lr_study_placed_at (before, i)->item)
      look_for (view, look, lr_study_placed_at (view->study, i));
}

/* Neither the lens nor whom it looks at has moved */
static gboolean
sees_as_before (const LrCameraReading *now,
                const LrCameraReading *then)
{
  return memcmp (&now->projection, &then->projection, sizeof (LrProjection)) == 0
         && (now->subject == NULL) == (then->subject == NULL)
         && (now->subject == NULL || now->subject->item == then->subject->item);
}

/**
 * lr_study_find_intrusions:
 * @study: a study whose cameras are read
 * @before: (nullable): the study of the plan from which a trial departs
 *
 * Fills what stands in each camera's picture that should not, in the order of cameras and items. A trial study leaves
 * it out until it is asked to, since most trials fail before, and takes what has not changed from @before, without outlines.
 */
void
lr_study_find_intrusions (LrStudy       *study,
                          const LrStudy *before)
{
  const LrRoom *room = study->setup->room;
  LrLensView view = { .study = study, .is_room_simple = is_convex (room) };
  gboolean is_like_before = may_take_over (study, before);
  LrLook look;

  view.screens = g_array_new (FALSE, FALSE, sizeof (LrScreen));
  for (guint i = 0; i < study->cameras->len; i++)
    {
      view.camera = &g_array_index (study->cameras, LrCameraReading, i);
      view.projection = &view.camera->projection;
      view.is_in_room = room->n_corners >= 3
                        && lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (view.projection->eye_m));
      view.has_screens = FALSE;
      g_array_set_size (view.screens, 0);
      if (!lr_projection_is_known (view.projection))
        continue;

      see_subject (&view);
      if (is_like_before && sees_as_before (view.camera, &g_array_index (before->cameras, LrCameraReading, i)))
        take_over (&view, &look, before, i);
      else
        look_through (&view, &look);
    }

  g_array_unref (view.screens);
}
