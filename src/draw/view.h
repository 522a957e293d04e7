/* view.h - how a drawing looks at the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"
#include "remarks.h"
#include "theme.h"
#include "underlay.h"

typedef enum
{
  LR_SHOW_SIGHT = 1 << LR_FAMILY_SIGHT,
  LR_SHOW_LIGHT = 1 << LR_FAMILY_LIGHT,
  LR_SHOW_SOUND = 1 << LR_FAMILY_SOUND,
  LR_SHOW_SUN   = 1 << LR_FAMILY_SUN,
  LR_SHOW_POWER = 1 << LR_FAMILY_POWER,
} LrShow;

typedef struct
{
  double         scale;        /* device units (px, pt) per metre */
  LrVec2         origin;       /* device place of the room's 0, 0; y runs down on the device */
  double         width, height;/* of the drawing, device units */
  const LrTheme *theme;
  LrUnits        units;
  guint          shown;        /* LrShow */
  int            sun_minute;   /* of the day, whose patches are filled while LR_SHOW_SUN is on; 0: the middle of the shoot */
  const char    *in_hand;      /* id of the selected item, NULL for none */
  const char    *pointed;      /* id of the item under the pointer */
  const LrLightLevels *levels; /* of light, while LR_SHOW_LIGHT is on; may be NULL */
  LrUnderlay    *underlay;     /* the picture of the room's floor plan, as it looks; NULL: none, or not known yet */
  const LrRemark *remark;      /* in hand: its geometry is drawn; may be NULL */
  const LrPlan  *ghost;        /* a remedy's plan, drawn where it differs; may be NULL */
  const LrPlan  *planned;      /* shows the set-up as planned, drawn where things are elsewhere now; may be NULL */
  const char    *only;         /* draw this item alone (a drag's moving layer); NULL: all */
  const char    *skip;         /* leave out this item and what hangs on it (a drag's fixed layer); NULL: none */
  gboolean       is_dragging;  /* distances ride along */
  gboolean       is_read_only; /* no knobs */
  gboolean       has_dimensions; /* wall dimensions: the page draws its own chains */
  gboolean       is_ghost;     /* symbols as what is not there yet: outlines alone, long dash and two dots */
  gboolean       is_page;      /* long-lived marks only: no knobs, no halo */
} LrView;

static inline LrVec2
lr_view_to_device (const LrView *view, LrVec2 at_m)
{
  return lr_vec2 (view->origin.x + at_m.x * view->scale, view->origin.y - at_m.y * view->scale);
}

static inline LrVec2
lr_view_to_room (const LrView *view, LrVec2 at)
{
  return lr_vec2 ((at.x - view->origin.x) / view->scale, (view->origin.y - at.y) / view->scale);
}

/* Scale and origin that show the whole room, with @margin device units around its walls, and what stands outside; @foot is left free below */
void lr_view_fit (LrView *view, const LrStudy *study, double margin, double foot);
