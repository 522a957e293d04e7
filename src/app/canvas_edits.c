/* canvas_edits.c - what is done to the thing in hand without dragging it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys, the menu and the window's buttons all come here, by the actions.
 */

#include "config.h"

#include "canvas_private.h"

#include "lead_laying.h"

#include <glib/gi18n-lib.h>

/* A copy stands beside the thing, right and below on the sheet */
static const LrVec2 copy_by_m = { 0.30, -0.30 };

static const LrItem *
item_in_hand (LrCanvas *self)
{
  const char *id = self->document != NULL ? lr_document_get_selected (self->document) : NULL;

  return id != NULL ? lr_plan_find (lr_document_get_committed (self->document), id) : NULL;
}

/* Edits start from the committed plan: what a drag has not yet let go is let go first */
static const LrItem *
editable_in_hand (LrCanvas *self)
{
  lr_canvas_drag_cancel (self);
  return item_in_hand (self) != NULL && lr_canvas_may_edit (self) ? item_in_hand (self) : NULL;
}

static LrPlan *
committed (LrCanvas *self)
{
  return lr_document_get_committed (self->document);
}

/**
 * lr_canvas_nudge:
 * @self: a canvas
 * @by_m: [m]
 *
 * Moves what is in hand; several in a row are one step.
 */
void
lr_canvas_nudge (LrCanvas *self,
                 LrVec2    by_m)
{
  const LrItem *item = editable_in_hand (self);
  GError *error = NULL;
  g_autofree char *what = NULL, *key = NULL;
  LrVec2 at_m;
  double facing_rad;
  LrPlan *next;

  if (item == NULL || !lr_setup_place (lr_plan_get_setup (committed (self)), item, &at_m, &facing_rad))
    return;

  what = lr_canvas_title_of (self, _("Move %s"), item->id);
  key = g_strconcat ("nudge:", item->id, NULL);
  next = lr_canvas_hold_framing (self, lr_plan_move (committed (self), item->id, lr_vec2_add (at_m, by_m), &error), item->id);
  lr_canvas_commit (self, next, error, what, key);
  lr_canvas_hold_end (self);
}

static void
turn_to (LrCanvas     *self,
         const LrItem *item,
         double        facing_rad)
{
  g_autofree char *what = lr_canvas_title_of (self, _("Turn %s"), item->id);
  g_autofree char *key = g_strconcat ("turn:", item->id, NULL);
  GError *error = NULL;
  LrPlan *next = lr_canvas_turned (self, item->id, facing_rad, &error);

  lr_canvas_commit (self, next, error, what, key);
}

/**
 * lr_canvas_turn_by:
 * @self: a canvas
 * @by_rad: [rad]
 *
 * Turns what is in hand; several in a row are one step.
 */
void
lr_canvas_turn_by (LrCanvas *self,
                   double    by_rad)
{
  const LrItem *item = editable_in_hand (self);
  const LrPlaced *placed = item != NULL ? lr_study_find_placed (lr_document_get_study (self->document), item->id) : NULL;

  if (placed != NULL)
    turn_to (self, item, placed->facing_rad + by_rad);
}

/**
 * lr_canvas_delete:
 * @self: a canvas
 *
 * Removes what is in hand.
 */
void
lr_canvas_delete (LrCanvas *self)
{
  const LrItem *item = editable_in_hand (self);
  g_autofree char *what = NULL;
  GError *error = NULL;
  LrPlan *next;

  if (item == NULL)
    return;

  what = lr_canvas_title_of (self, _("Remove %s"), item->id);
  next = lr_plan_remove (committed (self), item->id, &error);
  lr_canvas_commit (self, next, error, what, NULL);
}

/**
 * lr_canvas_duplicate:
 * @self: a canvas
 *
 * Adds another of what is in hand and takes that in hand.
 */
void
lr_canvas_duplicate (LrCanvas *self)
{
  const LrItem *item = editable_in_hand (self);
  g_autofree char *what = NULL, *new_id = NULL;
  GError *error = NULL;
  LrPlan *next;

  if (item == NULL)
    return;

  what = lr_canvas_title_of (self, _("Duplicate %s"), item->id);
  next = lr_plan_duplicate (committed (self), item->id, copy_by_m, &new_id, &error);
  if (lr_canvas_commit (self, next, error, what, NULL))
    lr_document_select (self->document, new_id);
}

/* How far the outline must go to be flush with the wall through @from_m */
static double
gap_m (const LrOutline *outline,
       LrVec2           from_m,
       LrVec2           along)
{
  double least_m = HUGE_VAL;

  if (outline->n == 0)
    return lr_vec2_cross (along, lr_vec2_sub (outline->centre_m, from_m)) - outline->radius_m;
  for (gsize i = 0; i < outline->n; i++)
    least_m = fmin (least_m, lr_vec2_cross (along, lr_vec2_sub (outline->corner_m[i], from_m)));
  return least_m;
}

/* (transfer full): @id with its back to the wall, as @turned has it, and flush with it */
static LrPlan *
move_flush (const LrPlan  *turned,
            const char    *id,
            LrVec2         from_m,
            LrVec2         along,
            GError       **error)
{
  g_autoptr (LrStudy) study = lr_study_new (turned);
  const LrPlaced *placed = lr_study_find_placed (study, id);
  double by_m = placed != NULL && placed->has_footprint ? gap_m (&placed->footprint, from_m, along) : 0.0;

  if (placed == NULL)
    return NULL;
  return lr_plan_move (turned, id, lr_vec2_along (placed->at_m, lr_vec2_left (along), -by_m), error);
}

/* Furniture and backdrops turn their back to the nearest wall; everything moves up to it */
static void
bring_to_wall (LrCanvas *self)
{
  const LrItem *item = editable_in_hand (self);
  const LrRoom *room = lr_canvas_get_room (self);
  g_autoptr (LrPlan) turned = NULL;
  LrPlan *flush;
  g_autofree char *what = NULL;
  GError *error = NULL;
  LrVec2 at_m, from_m, along;
  double length_m, facing_rad;
  LrRayHit nearest;

  if (item == NULL || room->n_corners == 0 || lr_item_kind_info (item->kind)->place != LR_PLACE_FLOOR
      || !lr_setup_place (lr_plan_get_setup (committed (self)), item, &at_m, &facing_rad))
    return;

  lr_polygon_distance_m (room->corners_m, room->n_corners, at_m, &nearest);
  lr_room_wall (room, (int) nearest.edge, &from_m, &along, &length_m);
  turned = lr_plan_ref (committed (self));
  if (item->kind == LR_ITEM_FURNITURE || item->kind == LR_ITEM_PANEL)
    {
      LrPlan *next = lr_plan_turn (turned, item->id, lr_vec2_angle_rad (lr_vec2_left (along)), &error);

      if (next == NULL)
        {
          lr_canvas_commit (self, NULL, error, NULL, NULL);
          return;
        }
      lr_plan_unref (turned);
      turned = next;
    }

  what = lr_canvas_title_of (self, _("Bring %s to the wall"), item->id);
  flush = move_flush (turned, item->id, from_m, along, &error);
  lr_canvas_commit (self, flush, error, what, NULL);
}

/* @target: an id, or "" for nothing */
static void
aim_at (LrCanvas   *self,
        const char *target)
{
  const LrItem *item = editable_in_hand (self);
  const char *key;
  g_autofree char *what = NULL;
  GError *error = NULL;
  LrPlan *next;

  if (item == NULL)
    return;

  key = lr_item_find_prop (item->kind, "aims-at") != NULL ? "aims-at" : "looks-at";
  what = lr_canvas_title_of (self, _("Aim %s"), item->id);
  next = lr_plan_change_text (committed (self), item->id, key, target, &error);
  lr_canvas_commit (self, next, error, what, NULL);
}

static void
duplicate_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  lr_canvas_duplicate (LR_CANVAS (widget));
}

static void
delete_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  lr_canvas_delete (LR_CANVAS (widget));
}

static void
turn_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  lr_canvas_turn_by (LR_CANVAS (widget), g_variant_get_double (parameter) * LR_DEG);
}

/* From its socket along the walls to what it feeds */
static void
route_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  const LrItem *item = editable_in_hand (self);
  GError *error = NULL;
  LrPlan *next;

  if (item == NULL || item->kind != LR_ITEM_LEAD)
    return;

  next = lr_lead_route (lr_document_get_study (self->document), item->id, &error);
  lr_canvas_commit (self, next, error, _("Lay lead"), NULL);
}

static void
bring_to_wall_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  bring_to_wall (LR_CANVAS (widget));
}

static void
aim_at_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  aim_at (LR_CANVAS (widget), g_variant_get_string (parameter, NULL));
}

static void
step_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  lr_canvas_step (LR_CANVAS (widget), g_variant_get_int32 (parameter));
}

static void
let_go_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  lr_canvas_let_go (LR_CANVAS (widget));
}

/**
 * lr_canvas_edits_install:
 * @klass: the class
 *
 * Installs the actions that change what is in hand.
 */
void
lr_canvas_edits_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "canvas.duplicate", NULL, duplicate_action);
  gtk_widget_class_install_action (klass, "canvas.delete", NULL, delete_action);
  gtk_widget_class_install_action (klass, "canvas.turn", "d", turn_action);
  gtk_widget_class_install_action (klass, "canvas.bring-to-wall", NULL, bring_to_wall_action);
  gtk_widget_class_install_action (klass, "canvas.route", NULL, route_action);
  gtk_widget_class_install_action (klass, "canvas.aim-at", "s", aim_at_action);
  gtk_widget_class_install_action (klass, "canvas.step", "i", step_action);
  gtk_widget_class_install_action (klass, "canvas.let-go", NULL, let_go_action);
}
