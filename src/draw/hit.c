/* hit.c - what a pointer meets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "floor_layers.h"

#define LEAST_REACH_PX 12.0 /* half of the least thing that a pointer finds */
#define LINE_REACH_PX 6.0
#define LABEL_REACH_PX 190.0 /* of a tag and its word on a leader */
#define HAND_REACH_PX 44.0
#define OVERLAY_PAST_PX 24.0

/* Inside the outline, or near enough to a small one */
static gboolean
meets_outline (const LrView    *view,
               const LrOutline *outline,
               LrVec2           at)
{
  LrVec2 at_m = lr_view_to_room (view, at);
  double least_m = LEAST_REACH_PX / view->scale;

  if (outline->n == 0)
    return lr_vec2_distance (outline->centre_m, at_m) <= MAX (outline->radius_m, least_m);

  return lr_outline_contains (outline, at_m) || lr_vec2_distance (outline->centre_m, at_m) <= least_m;
}

static gboolean
meets_path (const LrView *view,
            const LrItem *item,
            LrVec2        at)
{
  for (gsize i = 0; i + 1 < item->n_path; i++)
    if (lr_segment_distance_m (lr_view_to_device (view, item->path_m[i]), lr_view_to_device (view, item->path_m[i + 1]), at, NULL)
        <= LINE_REACH_PX)
      return TRUE;

  return FALSE;
}

/* Stand, arm, or capsule: not the empty floor between them */
static gboolean
meets_boom (const LrView   *view,
            const LrPlaced *placed,
            LrVec2          at)
{
  LrVec2 tip_m = lr_vec2 (placed->item->microphone.tip_x_m, placed->item->microphone.tip_y_m);
  LrVec2 base = lr_view_to_device (view, placed->at_m), tip = lr_view_to_device (view, tip_m);

  return meets_outline (view, &placed->footprint, at) || lr_segment_distance_m (base, tip, at, NULL) <= LINE_REACH_PX
         || lr_vec2_distance (tip, at) <= LEAST_REACH_PX;
}

static gboolean
meets (const LrStudy  *study,
       const LrView   *view,
       const LrPlaced *placed,
       LrVec2          at)
{
  LrOutline outline;

  if (!lr_floor_outline (study, view, placed, &outline))
    return FALSE;
  if (placed->item->kind == LR_ITEM_LEAD)
    return meets_path (view, placed->item, at);
  if (placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM)
    return meets_boom (view, placed, at);

  return meets_outline (view, &outline, at);
}

static gboolean
find_knob (const LrStudy *study,
           const LrView  *view,
           LrVec2         at,
           LrHit         *hit)
{
  g_autoptr (GArray) knobs = lr_floor_knobs (study, view);
  double nearest = LR_KNOB_REACH_PX * view->theme->unit_px;

  for (guint i = 0; i < knobs->len; i++)
    {
      const LrKnob *knob = &g_array_index (knobs, LrKnob, i);
      double distance = lr_vec2_distance (knob->at, at);

      if (distance > nearest)
        continue;
      nearest = distance;
      *hit = (LrHit) { .type = knob->type, .index = knob->index, .id = knob->type == LR_HIT_CORNER ? NULL : view->in_hand };
    }
  if (hit->type != LR_HIT_NOTHING && hit->id != NULL)
    hit->id = lr_study_find_placed (study, view->in_hand)->item->id;

  return hit->type != LR_HIT_NOTHING;
}

/* What is drawn smaller than a finger's reach lies on or in what is larger: a socket beside a lead's end or within a stand's ring. Of
 * several, the nearest; the upper one of those that are as near */
static gboolean
find_small (const LrStudy *study,
            const LrView  *view,
            LrVec2         at,
            LrHit         *hit)
{
  double nearest = LEAST_REACH_PX;

  for (guint i = study->placed->len; i-- > 0;)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrOutline outline;
      double distance;

      if (placed->item->kind == LR_ITEM_LEAD || !lr_floor_outline (study, view, placed, &outline)
          || outline.radius_m * view->scale > LEAST_REACH_PX)
        continue;
      distance = lr_vec2_distance (lr_view_to_device (view, outline.centre_m), at);
      if (distance >= nearest)
        continue;
      nearest = distance;
      *hit = (LrHit) { .type = LR_HIT_ITEM, .id = placed->item->id };
    }
  return hit->type != LR_HIT_NOTHING;
}

static gboolean
find_item (const LrStudy *study,
           const LrView  *view,
           LrVec2         at,
           LrHit         *hit)
{
  /* from the top, as they are drawn; a lavalier lies on its wearer */
  static const LrItemKind order[] = {
    LR_ITEM_CAMERA, LR_ITEM_MICROPHONE, LR_ITEM_LIGHT, LR_ITEM_PERSON, LR_ITEM_PANEL, LR_ITEM_NOISE, LR_ITEM_HOUSE_LIGHT,
    LR_ITEM_SOCKET, LR_ITEM_CIRCUIT, LR_ITEM_LEAD, LR_ITEM_WINDOW, LR_ITEM_FURNITURE, LR_ITEM_DOOR,
  };
  const LrPlaced *placed = (const LrPlaced *) (gpointer) study->placed->data;

  for (gsize k = 0; k < G_N_ELEMENTS (order); k++)
    for (guint i = study->placed->len; i-- > 0;)
      if (placed[i].item->kind == order[k] && meets (study, view, &placed[i], at))
        {
          *hit = (LrHit) { .type = LR_HIT_ITEM, .id = placed[i].item->id };
          return TRUE;
        }

  return FALSE;
}

static void
find_wall (const LrStudy *study,
           const LrView  *view,
           LrVec2         at,
           LrHit         *hit)
{
  const LrRoom *room = study->setup->room;
  double nearest = MAX (0.5 * LR_WALL_M * view->scale, LINE_REACH_PX) + 1.0;

  for (gsize i = 0; i < room->n_corners; i++)
    if (lr_vec2_distance (lr_view_to_device (view, room->corners_m[i]), at) <= LEAST_REACH_PX)
      {
        *hit = (LrHit) { .type = LR_HIT_CORNER, .index = (int) i };
        return;
      }

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 from_m, along, out, a, b;
      double length_m, distance;

      if (!lr_room_wall (room, (int) i, &from_m, &along, &length_m))
        continue;
      /* along the middle of the band */
      out = lr_vec2_scale (lr_vec2_left (along), -0.5 * LR_WALL_M);
      a = lr_view_to_device (view, lr_vec2_add (from_m, out));
      b = lr_view_to_device (view, lr_vec2_add (lr_vec2_along (from_m, along, length_m), out));
      distance = lr_segment_distance_m (a, b, at, NULL);
      if (distance >= nearest)
        continue;
      nearest = distance;
      *hit = (LrHit) { .type = LR_HIT_WALL, .index = (int) i };
    }
}

/**
 * lr_floor_hit:
 * @study: a study
 * @view: how the drawing looks at the room, and what is in hand
 * @at: device place
 *
 * What a pointer meets there: knobs of the item in hand first, then small things, then items from the top, then corners, then walls.
 *
 * Returns: a hit; its id belongs to the plan
 */
LrHit
lr_floor_hit (const LrStudy *study,
              const LrView  *view,
              LrVec2         at)
{
  LrHit hit = { .type = LR_HIT_NOTHING };

  if (!find_knob (study, view, at, &hit) && !find_small (study, view, at, &hit) && !find_item (study, view, at, &hit))
    find_wall (study, view, at, &hit);

  return hit;
}

/* Extents */

static void
extend (LrVec2 *low,
        LrVec2 *high,
        LrVec2  at,
        double  around)
{
  low->x = MIN (low->x, at.x - around);
  low->y = MIN (low->y, at.y - around);
  high->x = MAX (high->x, at.x + around);
  high->y = MAX (high->y, at.y + around);
}

/* How far overlays reach around the item [m], as far as the walls let them */
static double
overlay_reach_m (const LrView *view,
                 const LrItem *item)
{
  if (item->kind == LR_ITEM_LIGHT && (view->shown & LR_SHOW_LIGHT) != 0)
    return HUGE_VAL;
  if (item->kind == LR_ITEM_MICROPHONE && (view->shown & LR_SHOW_SOUND) != 0)
    return HUGE_VAL;
  if (item->kind == LR_ITEM_NOISE && (view->shown & LR_SHOW_SOUND) != 0)
    return 2.2;
  if (item->kind == LR_ITEM_PERSON && (view->shown & LR_SHOW_SIGHT) != 0)
    return 1.8; /* the ends of the line of action */

  return 0.0;
}

/* Overlays end at the walls; without walls, at the edge of the drawing. Their strokes and figures pass that by a little */
static void
extend_by_overlay (const LrStudy *study,
                   const LrView  *view,
                   LrVec2         at,
                   double         reach,
                   LrVec2        *low,
                   LrVec2        *high)
{
  const LrRoom *room = study->setup->room;
  LrVec2 least = lr_vec2 (0.0, 0.0), most = lr_vec2 (view->width, view->height);

  if (reach <= 0.0)
    return;
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 corner = lr_view_to_device (view, room->corners_m[i]);

      least = i == 0 ? corner : lr_vec2 (MIN (least.x, corner.x), MIN (least.y, corner.y));
      most = i == 0 ? corner : lr_vec2 (MAX (most.x, corner.x), MAX (most.y, corner.y));
    }
  extend (low, high, lr_vec2 (MAX (least.x, at.x - reach), MAX (least.y, at.y - reach)), OVERLAY_PAST_PX);
  extend (low, high, lr_vec2 (MIN (most.x, at.x + reach), MIN (most.y, at.y + reach)), OVERLAY_PAST_PX);
}

/* Arrows run between noises and a microphone */
static void
extend_by_arrows (const LrStudy *study,
                  const LrView  *view,
                  LrItemKind     kind,
                  LrVec2        *low,
                  LrVec2        *high)
{
  if ((view->shown & LR_SHOW_SOUND) == 0 || view->is_page || (kind != LR_ITEM_MICROPHONE && kind != LR_ITEM_NOISE))
    return;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *other = &g_array_index (study->placed, LrPlaced, i);

      if (other->item->kind == (kind == LR_ITEM_NOISE ? LR_ITEM_MICROPHONE : LR_ITEM_NOISE))
        extend (low, high, lr_view_to_device (view, lr_vec3_flat (other->point_m)), OVERLAY_PAST_PX);
    }
}

static void
extend_by_item (const LrStudy  *study,
                const LrView   *view,
                const LrPlaced *placed,
                LrVec2         *low,
                LrVec2         *high)
{
  const LrCameraReading *camera = lr_study_find_camera (study, placed->item->id);
  LrVec2 at = lr_view_to_device (view, placed->at_m);
  LrOutline outline;

  if (!lr_floor_outline (study, view, placed, &outline))
    return;

  extend (low, high, lr_view_to_device (view, outline.centre_m),
          outline.radius_m * view->scale + (LABEL_REACH_PX + HAND_REACH_PX) * view->theme->unit_px);
  extend_by_overlay (study, view, at, overlay_reach_m (view, placed->item) * view->scale, low, high);
  extend_by_arrows (study, view, placed->item->kind, low, high);
  if (camera != NULL && (view->shown & LR_SHOW_SIGHT) != 0)
    for (gsize i = 0; i < camera->n_wedge; i++)
      extend (low, high, lr_view_to_device (view, camera->wedge_m[i]), 4.0);
  if (placed->item->kind == LR_ITEM_LEAD)
    for (gsize i = 0; i < placed->item->n_path; i++)
      extend (low, high, lr_view_to_device (view, placed->item->path_m[i]), LABEL_REACH_PX);
}

/* Distances run to the walls and to a partner, wherever those are */
static void
extend_by_room (const LrStudy *study,
                const LrView  *view,
                LrVec2        *low,
                LrVec2        *high)
{
  const LrRoom *room = study->setup->room;

  for (gsize i = 0; i < room->n_corners; i++)
    extend (low, high, lr_view_to_device (view, room->corners_m[i]), 10.0);
}

/**
 * lr_floor_item_extents:
 * @study: a study
 * @view: how the drawing looks at the room, and what is shown
 * @id: of an item
 * @extents: (out): device rectangle that the item, what turns with it, and their marks, labels and overlays may touch; empty
 *   if the item is not on the sheet
 */
void
lr_floor_item_extents (const LrStudy     *study,
                       const LrView      *view,
                       const char        *id,
                       cairo_rectangle_t *extents)
{
  g_autofree gboolean *moves = lr_floor_moving (study, id);
  LrVec2 low = lr_vec2 (HUGE_VAL, HUGE_VAL), high = lr_vec2 (-HUGE_VAL, -HUGE_VAL);

  for (guint i = 0; i < study->placed->len; i++)
    if (moves[i])
      extend_by_item (study, view, &g_array_index (study->placed, LrPlaced, i), &low, &high);

  if (!(low.x <= high.x))
    {
      *extents = (cairo_rectangle_t) { 0.0, 0.0, 0.0, 0.0 };
      return;
    }
  if (g_strcmp0 (view->in_hand, id) == 0 && !view->is_page)
    extend_by_room (study, view, &low, &high);

  *extents = (cairo_rectangle_t) { floor (low.x), floor (low.y), ceil (high.x) - floor (low.x), ceil (high.y) - floor (low.y) };
}
