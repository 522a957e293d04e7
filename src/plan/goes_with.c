/* goes_with.c - what a thing goes with when the room is found otherwise than planned
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * People and gear are the set, which moves as one. What hangs on a wall or stands at it stays with that wall. A seat or a
 * table that a person of the set sits on or at is of the set; other furniture stays where it is (common practice, no source).
 */

#include "config.h"

#include "plan_private.h"

#include "polygon.h"

#include <math.h>
#include <string.h>

#define TOUCH_M 0.1   /* off a wall: what is pushed against it, but for a skirting board */
#define AT_HAND_M 0.6 /* from a person's middle: what they sit on, and the table at their knees */

/* The room that it takes, as far as that matters at a wall; %FALSE: none to speak of */
static gboolean
outline_of (const LrItem *item,
            LrOutline    *outline)
{
  if (item->kind == LR_ITEM_FURNITURE)
    {
      const LrFurniture *furniture = &item->furniture;

      *outline = furniture->form == LR_FURNITURE_CYLINDER
                   ? lr_outline_disc (item->at_m, 0.5 * fmax (furniture->length_m, furniture->width_m))
                   : lr_outline_box (item->at_m, furniture->length_m, furniture->width_m, item->facing_rad);
      return TRUE;
    }
  if (item->kind == LR_ITEM_NOISE && item->noise.length_m > 0.0 && item->noise.width_m > 0.0)
    {
      *outline = lr_outline_box (item->at_m, item->noise.length_m, item->noise.width_m, item->facing_rad);
      return TRUE;
    }

  return FALSE;
}

static double
from_wall_m (const LrRoom    *room,
             int              wall,
             const LrOutline *outline)
{
  LrVec2 from_m, along, to_m;
  double length_m, least_m = HUGE_VAL;

  lr_room_wall (room, wall, &from_m, &along, &length_m);
  to_m = lr_vec2_along (from_m, along, length_m);
  if (outline->n == 0)
    return lr_segment_distance_m (from_m, to_m, outline->centre_m, NULL) - outline->radius_m;
  for (gsize i = 0; i < outline->n; i++)
    least_m = fmin (least_m, lr_segment_distance_m (from_m, to_m, outline->corner_m[i], NULL));

  return least_m;
}

/* The wall that it is nearest to; -1: the room has none */
static int
nearest_wall (const LrRoom    *room,
              const LrOutline *outline,
              double          *distance_m)
{
  int nearest = -1;

  *distance_m = HUGE_VAL;
  for (int wall = 0; wall < (int) room->n_corners; wall++)
    {
      double here_m = from_wall_m (room, wall, outline);

      if (here_m >= *distance_m - 1e-9)
        continue;
      *distance_m = here_m;
      nearest = wall;
    }

  return nearest;
}

/* Somebody who goes with the set sits on it or at it */
static gboolean
is_at_hand (const LrSetup   *setup,
            const LrOutline *outline)
{
  LrOutline reach;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *person = setup->items->pdata[i];

      if (person->kind != LR_ITEM_PERSON || person->goes_with > LR_GOES_SET)
        continue;
      reach = lr_outline_disc (person->at_m, AT_HAND_M);
      if (lr_outline_overlap_m (outline, &reach, NULL) > 0.0)
        return TRUE;
    }

  return FALSE;
}

static LrGoes
usually (const LrSetup   *setup,
         const LrItem    *item,
         const LrOutline *outline,
         double           distance_m)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
      return LR_GOES_SET;
    case LR_ITEM_FURNITURE:
    case LR_ITEM_NOISE:
      if (outline == NULL)
        return LR_GOES_ROOM;
      if (distance_m <= TOUCH_M)
        return LR_GOES_WALL;
      return item->kind == LR_ITEM_FURNITURE && !item->furniture.is_fixed && is_at_hand (setup, outline) ? LR_GOES_SET : LR_GOES_ROOM;
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LEAD:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return LR_GOES_ROOM;
    }
}

/* What a lead feeds, and so goes with; (nullable) */
static const LrItem *
load_of (const LrSetup *setup,
         const LrItem  *lead)
{
  const LrItem *load = lead->kind == LR_ITEM_LEAD ? lr_setup_find (setup, lead->lead.feeds) : NULL;

  return load != NULL && load->kind != LR_ITEM_LEAD ? load : NULL;
}

/**
 * lr_setup_goes_with:
 * @setup: a set-up
 * @item: one of its items
 * @wall: (out) (optional): the wall that it stays with; -1 if it stays with none
 *
 * Returns: what the item goes with, as it was chosen or as things of its kind mostly do; never %LR_GOES_USUAL
 */
LrGoes
lr_setup_goes_with (const LrSetup *setup,
                    const LrItem  *item,
                    int           *wall)
{
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);
  LrOutline outline = lr_outline_disc (item->at_m, 0.0);
  gboolean has_outline = outline_of (item, &outline);
  double distance_m = HUGE_VAL;
  LrGoes goes;
  int nearest;

  if (wall != NULL)
    *wall = -1;
  if (info->place == LR_PLACE_WALL && wall != NULL)
    *wall = item->wall;
  if (info->place == LR_PLACE_PATH)
    return load_of (setup, item) == NULL ? LR_GOES_SET : lr_setup_goes_with (setup, load_of (setup, item), NULL);
  if (info->place != LR_PLACE_FLOOR)
    return info->place == LR_PLACE_WALL ? LR_GOES_WALL : LR_GOES_ROOM;

  nearest = nearest_wall (setup->room, &outline, &distance_m);
  goes = item->goes_with != LR_GOES_USUAL ? (LrGoes) item->goes_with : usually (setup, item, has_outline ? &outline : NULL, distance_m);
  if (goes == LR_GOES_WALL && nearest < 0)
    goes = LR_GOES_ROOM;
  if (wall != NULL && goes == LR_GOES_WALL)
    *wall = nearest;

  return goes;
}

/**
 * lr_setup_wall_corner:
 * @setup: a set-up
 * @item: one that stays with @wall and stands on the floor
 * @wall: that wall
 *
 * Returns: in which of the wall's corners it stands, and so goes with that: -1 the one at its first end, 1 that at its second; 0: in
 *   none, or in both
 */
int
lr_setup_wall_corner (const LrSetup *setup,
                      const LrItem  *item,
                      int            wall)
{
  int n = (int) setup->room->n_corners;
  LrOutline outline = lr_outline_disc (item->at_m, 0.0);

  outline_of (item, &outline);

  return (from_wall_m (setup->room, (wall + 1) % n, &outline) <= TOUCH_M) - (from_wall_m (setup->room, (wall + n - 1) % n, &outline) <= TOUCH_M);
}

/**
 * lr_item_extent_m:
 * @item: one that stands on the floor
 * @from_m: where the axis begins [m]
 * @along: its direction, unit
 * @low_m: (out): where the item begins along it [m]
 * @high_m: (out): where it ends [m]
 */
void
lr_item_extent_m (const LrItem *item,
                  LrVec2        from_m,
                  LrVec2        along,
                  double       *low_m,
                  double       *high_m)
{
  LrOutline outline = lr_outline_disc (item->at_m, 0.0);
  double middle_m;

  outline_of (item, &outline);
  middle_m = lr_vec2_dot (lr_vec2_sub (outline.centre_m, from_m), along);
  *low_m = *high_m = middle_m;
  if (outline.n == 0)
    {
      *low_m -= outline.radius_m;
      *high_m += outline.radius_m;
    }
  for (gsize i = 0; i < outline.n; i++)
    {
      double here_m = lr_vec2_dot (lr_vec2_sub (outline.corner_m[i], from_m), along);

      *low_m = fmin (*low_m, here_m);
      *high_m = fmax (*high_m, here_m);
    }
}
