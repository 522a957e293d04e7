/* small_room.h - a room with one of every kind, for drawing tests
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "floor.h"
#include "plan_edit.h"

/* Edits that must succeed; each takes @plan (transfer full) */
static inline LrPlan *
next (LrPlan *plan,
      LrPlan *edited,
      GError *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (edited);
  lr_plan_unref (plan);

  return edited;
}

static inline LrPlan *
add (LrPlan     *plan,
     LrItemKind  kind,
     int         form,
     LrVec2      at_m,
     double      facing_rad,
     char      **id)
{
  g_autoptr (LrItem) item = lr_item_new (kind, "prototype");
  const LrProp *prop = lr_item_find_prop (kind, kind == LR_ITEM_PERSON ? "role" : kind == LR_ITEM_WINDOW ? "blind" : "form");
  g_autofree char *unused = NULL;
  GError *error = NULL;

  if (prop != NULL)
    lr_prop_put_number (prop, item, form);

  return next (plan, lr_plan_add (plan, item, at_m, facing_rad, id != NULL ? id : &unused, &error), error);
}

static inline LrPlan *
set_text (LrPlan     *plan,
          const char *id,
          const char *key,
          const char *text)
{
  GError *error = NULL;

  return next (plan, lr_plan_change_text (plan, id, key, text, &error), error);
}

static inline LrPlan *
set_size (LrPlan     *plan,
          const char *id,
          double      length_m,
          double      width_m)
{
  LrChange changes[] = { { id, "length-mm", length_m }, { id, "width-mm", width_m } };
  GError *error = NULL;

  return next (plan, lr_plan_change (plan, changes, G_N_ELEMENTS (changes), &error), error);
}

typedef struct
{
  LrPlan *plan;
  char *subject, *interviewer, *camera, *light, *boom, *lavalier, *flag, *lead, *table, *chair, *door, *window, *socket, *noise,
      *house_light;
} SmallRoom;

/* 6 by 4 m, walls 0 south, 1 east, 2 north, 3 west */
static inline SmallRoom
small_room_new (void)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 6, 0 }, { 6, 4 }, { 0, 4 } };
  static const LrVec2 path_m[] = { { 2.5, 0.2 }, { 2.5, 0.6 }, { 3.2, 0.6 } };
  SmallRoom room = { .plan = lr_plan_new_empty () };
  GError *error = NULL;

  room.plan = next (room.plan, lr_plan_set_corners (room.plan, corners_m, 4, &error), error);
  room.plan = add (room.plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, lr_vec2 (2.0, 2.0), 0.0, &room.subject);
  room.plan = add (room.plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, lr_vec2 (3.9, 1.6), LR_PI, &room.interviewer);
  room.plan = set_text (room.plan, room.subject, "looks-at", room.interviewer);
  room.plan = set_text (room.plan, room.interviewer, "looks-at", room.subject);
  room.plan = add (room.plan, LR_ITEM_CAMERA, 0, lr_vec2 (4.8, 2.6), LR_PI, &room.camera);
  room.plan = set_text (room.plan, room.camera, "aims-at", room.subject);
  room.plan = add (room.plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, lr_vec2 (3.4, 0.8), 0.0, &room.light);
  room.plan = set_text (room.plan, room.light, "aims-at", room.subject);
  room.plan = add (room.plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, lr_vec2 (2.6, 3.4), 0.0, &room.boom);
  room.plan = set_text (room.plan, room.boom, "aims-at", room.subject);
  room.plan = add (room.plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, lr_vec2 (2.0, 2.0), 0.0, &room.lavalier);
  room.plan = set_text (room.plan, room.lavalier, "worn-by", room.subject);
  room.plan = add (room.plan, LR_ITEM_PANEL, LR_PANEL_FLAG, lr_vec2 (5.2, 0.7), 0.5 * LR_PI, &room.flag);
  room.plan = add (room.plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, lr_vec2 (0.6, 2.0), 0.0, &room.table);
  room.plan = add (room.plan, LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, lr_vec2 (0.6, 3.5), 0.0, &room.chair);
  room.plan = set_size (room.plan, room.chair, 0.51, 0.46);
  room.plan = add (room.plan, LR_ITEM_DOOR, 0, lr_vec2 (6.0, 1.6), 0.0, &room.door);
  room.plan = add (room.plan, LR_ITEM_WINDOW, LR_BLIND_DOWN, lr_vec2 (1.2, 0.0), 0.0, &room.window);
  room.plan = add (room.plan, LR_ITEM_SOCKET, 0, lr_vec2 (2.5, 0.0), 0.0, &room.socket);
  room.plan = add (room.plan, LR_ITEM_NOISE, 0, lr_vec2 (3.0, 4.6), -0.5 * LR_PI, &room.noise);
  room.plan = add (room.plan, LR_ITEM_HOUSE_LIGHT, 0, lr_vec2 (4.4, 3.6), 0.0, &room.house_light);
  room.plan = add (room.plan, LR_ITEM_LEAD, 0, lr_vec2 (2.5, 0.2), 0.0, &room.lead);
  room.plan = next (room.plan, lr_plan_set_path (room.plan, room.lead, path_m, G_N_ELEMENTS (path_m), &error), error);

  return room;
}

static inline void
small_room_clear (SmallRoom *room)
{
  char *ids[] = { room->subject, room->interviewer, room->camera, room->light,  room->boom,   room->lavalier, room->flag,       room->lead,
                  room->table,   room->chair,       room->door,   room->window, room->socket, room->noise,    room->house_light };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    g_free (ids[i]);
  lr_plan_unref (room->plan);
}

/* 100 px to the metre; the room's corner at 100, 500 */
static inline LrView
small_room_view (LrThemeId id)
{
  return (LrView) {
    .scale = 100.0,
    .origin = { 100.0, 500.0 },
    .width = 800.0,
    .height = 600.0,
    .theme = lr_theme_get (id),
    .has_dimensions = TRUE,
  };
}

#define SHOW_ALL (LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_SUN | LR_SHOW_POWER)
