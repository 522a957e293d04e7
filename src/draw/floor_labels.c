/* floor_labels.c - what is written beside things
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor_layers.h"

#include <glib/gi18n-lib.h>

#define LEAST_SCALE_FOR_WORDS 45.0 /* px to the metre */
#define ARM_CLEAR_PX 6.0           /* a tag that touches a boom's arm would be read as the boom's */
#define PANEL_HALF_M 0.06          /* its bar, with the strokes on its back */
#define LONG_FURNITURE 1.3         /* longer than wide by this: its name runs along it */

/* What labels keep clear of */

static void
block_outline (const LrFloor   *floor,
               const LrOutline *outline,
               gboolean         is_furniture)
{
  LrOutline device = lr_floor_device_outline (floor->view, outline);
  LrVec2 box[4];

  if (device.n > 0)
    {
      if (is_furniture)
        lr_labels_block_furniture (floor->labels, device.corner_m, device.n);
      else
        lr_labels_block_polygon (floor->labels, device.corner_m, device.n);
      return;
    }
  if (!is_furniture)
    {
      lr_labels_block_disc (floor->labels, device.centre_m, device.radius_m);
      return;
    }

  for (int i = 0; i < 4; i++)
    box[i] = lr_vec2_add (device.centre_m, lr_vec2_polar (i * 0.5 * LR_PI, device.radius_m));
  lr_labels_block_furniture (floor->labels, box, 4);
}

static void
block_boom (const LrFloor  *floor,
            const LrPlaced *placed)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  LrVec2 tip_m = lr_vec2 (microphone->tip_x_m, microphone->tip_y_m);
  LrVec2 along = lr_vec2_polar (lr_vec2_angle_rad (lr_vec2_sub (tip_m, placed->at_m)), 1.0);
  LrVec2 weight_m = lr_vec2_along (placed->at_m, along, 0.08 - microphone->short_end_m);

  LrVec2 weight = lr_floor_device (floor, weight_m), tip = lr_floor_device (floor, tip_m);
  LrVec2 beside = lr_vec2_polar (lr_vec2_angle_rad (lr_vec2_sub (tip, weight)) + 0.5 * LR_PI, ARM_CLEAR_PX * floor->px);
  LrVec2 arm[4] = {
    lr_vec2_add (weight, beside), lr_vec2_add (tip, beside), lr_vec2_sub (tip, beside), lr_vec2_sub (weight, beside),
  };

  block_outline (floor, &placed->footprint, FALSE);
  lr_labels_block_polygon (floor->labels, arm, G_N_ELEMENTS (arm));
  lr_labels_block_disc (floor->labels, lr_floor_device (floor, weight_m), 0.10 * floor->view->scale);
  lr_labels_block_disc (floor->labels, lr_floor_device (floor, tip_m), 0.11 * floor->view->scale);
}

/* What is seen of a panel is its bar: its tag stands beside that, clear of the stand */
static LrOutline
panel_bar (const LrPlaced *placed)
{
  return lr_outline_box (placed->at_m, 2.0 * PANEL_HALF_M, placed->item->panel.width_m, placed->facing_rad);
}

static gboolean
is_on_stand (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_PANEL && placed->item->panel.form != LR_PANEL_BACKDROP;
}

static void
block_panel (const LrFloor  *floor,
             const LrPlaced *placed)
{
  LrOutline bar = panel_bar (placed);

  block_outline (floor, &bar, FALSE);
  lr_labels_block_disc (floor->labels, lr_floor_device (floor, placed->at_m), placed->item->panel.stand_radius_m * floor->view->scale);
}

static void
block_walls (const LrFloor *floor)
{
  const LrRoom *room = floor->room;
  g_autofree LrVec2 *outer_m = NULL;

  if (room->n_corners < 3)
    return;

  outer_m = lr_room_outer_corners (room, LR_WALL_M);
  for (gsize i = 0; i < room->n_corners; i++)
    {
      gsize next = (i + 1) % room->n_corners;
      LrVec2 band[4] = {
        lr_floor_device (floor, room->corners_m[i]), lr_floor_device (floor, room->corners_m[next]),
        lr_floor_device (floor, outer_m[next]), lr_floor_device (floor, outer_m[i]),
      };

      lr_labels_block_polygon (floor->labels, band, 4);
    }
}

static void
avoid_lead (const LrFloor *floor,
            const LrItem  *item)
{
  for (gsize i = 0; i + 1 < item->n_path; i++)
    lr_labels_avoid_segment (floor->labels, lr_floor_device (floor, item->path_m[i]), lr_floor_device (floor, item->path_m[i + 1]));
}

/**
 * lr_floor_block_symbols:
 * @floor: a drawing
 *
 * Walls and everything that stands: in a drag's moving half what does not move, too.
 */
void
lr_floor_block_symbols (const LrFloor *floor)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  block_walls (floor);
  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      LrItemKind kind = placed[i].item->kind;
      LrOutline outline;

      if (kind == LR_ITEM_LEAD)
        avoid_lead (floor, placed[i].item);
      if ((floor->has_base && !floor->is_drawn[i]) || kind == LR_ITEM_LEAD || kind == LR_ITEM_WINDOW
          || !lr_floor_outline (floor->study, floor->view, &placed[i], &outline))
        continue;
      if (kind == LR_ITEM_MICROPHONE && placed[i].item->microphone.form == LR_MIC_BOOM)
        block_boom (floor, &placed[i]);
      else if (is_on_stand (&placed[i]))
        block_panel (floor, &placed[i]);
      else
        block_outline (floor, &outline, kind == LR_ITEM_FURNITURE);
    }
}

/* Labels of things in the room */

/**
 * lr_floor_new_label:
 * @floor: a drawing
 * @rank: how early it finds a place
 * @type: its size
 * @text: (nullable): what it says; must live until it is added
 *
 * Returns: a label in ink on the floor of the room
 */
LrLabel
lr_floor_new_label (const LrFloor *floor,
                    LrLabelRank    rank,
                    LrType         type,
                    const char    *text)
{
  return (LrLabel) {
    .rank = rank,
    .text = text,
    .style = { .size = floor->theme->type_size[type] },
    .color = floor->theme->ink,
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };
}

static void
set_tag (const LrFloor *floor,
         LrLabel       *label,
         const LrItem  *item)
{
  label->tag = item->tag;
  label->tag_kind = item->kind;
  label->tag_size = floor->theme->type_size[item->kind == LR_ITEM_CAMERA ? LR_TYPE_CAMERA_TAG : LR_TYPE_TAG];
}

/**
 * lr_floor_add_beside:
 * @floor: a drawing
 * @placed: an item
 * @label: what to write beside it
 */
void
lr_floor_add_beside (const LrFloor  *floor,
                     const LrPlaced *placed,
                     const LrLabel  *label)
{
  LrOutline outline, device;

  if (!lr_floor_outline (floor->study, floor->view, placed, &outline))
    return;
  /* a boom is labelled at its stand, which is what one looks for on the floor */
  if (placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM)
    outline = placed->footprint;
  if (is_on_stand (placed))
    outline = panel_bar (placed);
  device = lr_floor_device_outline (floor->view, &outline);
  lr_labels_add_beside (floor->labels, label, &device);
}

static const char *
job_word (const LrFloor *floor,
          const LrItem  *item)
{
  static const char *const jobs[] = {
    [LR_JOB_KEY] = N_("Key"), [LR_JOB_FILL] = N_("Fill"), [LR_JOB_BACK] = N_("Back"), [LR_JOB_WALL] = N_("Wall"),
    [LR_JOB_OTHER] = "",
  };

  if (floor->view->scale < LEAST_SCALE_FOR_WORDS)
    return "";
  if (item->kind == LR_ITEM_LIGHT)
    return *jobs[item->light.job] != '\0' ? _(jobs[item->light.job]) : item->name;
  if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_BOOM)
    return _("Boom");

  return "";
}

static void
label_equipment (const LrFloor  *floor,
                 const LrPlaced *placed)
{
  const LrItem *item = placed->item;
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_TAG, LR_TYPE_JOB, job_word (floor, item));

  set_tag (floor, &label, item);
  label.text_may_yield = TRUE;
  lr_floor_add_beside (floor, placed, &label);
}

/* The first microphone that a person wears, whose tag stands under the name */
static const LrItem *
find_worn (const LrFloor  *floor,
           const LrPlaced *person)
{
  for (guint i = 0; i < floor->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (floor->setup->items, i);

      if (item->kind == LR_ITEM_MICROPHONE && g_strcmp0 (item->microphone.worn_by, person->item->id) == 0)
        return item;
    }

  return NULL;
}

static void
label_person (const LrFloor  *floor,
              const LrPlaced *placed)
{
  const LrItem *worn = find_worn (floor, placed);
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_NAME, LR_TYPE_NAME, placed->item->name);

  label.style.weight = PANGO_WEIGHT_SEMIBOLD;
  if (worn != NULL && *worn->tag != '\0')
    {
      set_tag (floor, &label, worn);
      label.rank = LR_LABEL_TAG;
      label.tag_size *= 0.92;
      label.is_tag_under = TRUE;
    }
  lr_floor_add_beside (floor, placed, &label);
}

static void
label_worn (const LrFloor  *floor,
            const LrPlaced *placed)
{
  const LrPlaced *wearer = lr_study_find_placed (floor->study, placed->item->microphone.worn_by);

  if (wearer == NULL || find_worn (floor, wearer) != placed->item)
    label_equipment (floor, placed);
}

static void
label_furniture (const LrFloor  *floor,
                 const LrPlaced *placed)
{
  const LrFurniture *furniture = &placed->item->furniture;
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_FURNITURE, LR_TYPE_NOTE, placed->item->name);
  gboolean is_wide = furniture->width_m > furniture->length_m;
  double long_m = MAX (furniture->length_m, furniture->width_m), short_m = MIN (furniture->length_m, furniture->width_m);
  double along_rad = placed->facing_rad + (is_wide ? 0.5 * LR_PI : 0.0);
  LrVec2 ahead = lr_vec2_polar (along_rad, long_m * floor->view->scale);
  LrVec2 along = lr_vec2 (ahead.x, -ahead.y);
  LrVec2 centre = lr_floor_device (floor, placed->at_m);
  LrVec2 places[3] = { centre, lr_vec2_along (centre, along, 0.22), lr_vec2_along (centre, along, -0.22) };
  double width, scale = floor->view->scale;

  if (*placed->item->name == '\0' || scale < LEAST_SCALE_FOR_WORDS)
    return;

  label.color = floor->theme->ink2;
  lr_text_measure (floor->cr, floor->theme, &label.style, placed->item->name, &width, NULL);
  if (width + 6.0 * floor->px > long_m * scale || 1.4 * label.style.size > short_m * scale)
    {
      label.first = (int) lround (-placed->facing_rad / (0.25 * LR_PI)); /* in front of it */
      label.has_first = TRUE;
      lr_floor_add_beside (floor, placed, &label);
      return;
    }

  label.halo = floor->theme->furniture_fill;
  label.stands_on_lines = TRUE;
  if (long_m > LONG_FURNITURE * short_m || width > 0.8 * short_m * scale)
    label.angle_rad = lr_floor_reading_angle_rad (lr_vec2 (0.0, 0.0), along);
  lr_labels_add_at (floor->labels, &label, places, 3);
}

static void
label_item (const LrFloor  *floor,
            const LrPlaced *placed)
{
  switch (placed->item->kind)
    {
    case LR_ITEM_PERSON:
      label_person (floor, placed);
      break;
    case LR_ITEM_MICROPHONE:
      if (placed->item->microphone.form == LR_MIC_LAVALIER)
        label_worn (floor, placed);
      else
        label_equipment (floor, placed);
      break;
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_PANEL:
      label_equipment (floor, placed);
      break;
    case LR_ITEM_FURNITURE:
      label_furniture (floor, placed);
      break;
    case LR_ITEM_WINDOW:
      lr_floor_note_window (floor, placed);
      break;
    case LR_ITEM_SOCKET:
      lr_floor_note_socket (floor, placed);
      break;
    case LR_ITEM_NOISE:
      lr_floor_note_noise (floor, placed);
      break;
    case LR_ITEM_DOOR:
      lr_floor_note_door (floor, placed);
      break;
    case LR_ITEM_LEAD:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}

/**
 * lr_floor_label_items:
 * @floor: a drawing
 *
 * Tags, names, jobs and notes of the items that it holds.
 */
void
lr_floor_label_items (const LrFloor *floor)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  for (guint i = 0; i < floor->study->placed->len; i++)
    if (floor->is_drawn[i])
      label_item (floor, &placed[i]);
}
