/* ground.h - a floor to find ways over, with what each block on it is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "routing.h"
#include "study.h"

typedef struct
{
  LrRouteFloor floor;
  GArray      *blocks, *zones; /* LrOutline */
  GPtrArray   *of;             /* LrPlaced of each block; NULL: a wall */
} LrGround;

/* An empty floor, as large as the room; blocks and zones are added, then it ends */
static inline void
lr_ground_begin (LrGround      *ground,
                 const LrStudy *study)
{
  ground->blocks = g_array_sized_new (FALSE, FALSE, sizeof (LrOutline), study->placed->len + 8);
  ground->zones = g_array_new (FALSE, FALSE, sizeof (LrOutline));
  ground->of = g_ptr_array_sized_new (study->placed->len + 8);
  ground->floor = (LrRouteFloor) {
    .room_m = study->setup->room->corners_m, .n_room = study->setup->room->n_corners, .open_times = 1.0, .zone_times = 1.0,
  };
}

static inline void
lr_ground_add (LrGround        *ground,
               const LrOutline *outline,
               const LrPlaced  *placed)
{
  g_array_append_vals (ground->blocks, outline, 1);
  g_ptr_array_add (ground->of, (gpointer) placed);
}

static inline void
lr_ground_end (LrGround *ground)
{
  ground->floor.blocks = (const LrOutline *) (gpointer) ground->blocks->data;
  ground->floor.n_blocks = ground->blocks->len;
  ground->floor.zones = (const LrOutline *) (gpointer) ground->zones->data;
  ground->floor.n_zones = ground->zones->len;
}

static inline void
lr_ground_clear (LrGround *ground)
{
  g_array_unref (ground->blocks);
  g_array_unref (ground->zones);
  g_ptr_array_unref (ground->of);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LrGround, lr_ground_clear)
