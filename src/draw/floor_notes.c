/* floor_notes.c - what is written about what is in and behind the walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor_layers.h"

#include "power_readings.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define WALL_NOTE_PX 13.0      /* from the band to the near edge of the text */
#define WALL_NOTE_ROOM_PX 39.5 /* from the note to the dimension line: wider ones beside an upright wall are turned */
#define PAGE_NOTE_ROOM_PX 22.0 /* the page has its dimensions there */
#define ON_WALL_M 0.15

static void
add_outside (const LrFloor  *floor,
             const LrPlaced *placed,
             LrLabel        *label)
{
  LrVec2 inward = lr_vec2_polar (placed->facing_rad, 1.0);
  LrVec2 out = lr_vec2 (-inward.x, inward.y), along = lr_vec2_left (out);
  LrVec2 face = lr_vec2_along (lr_floor_device (floor, placed->at_m), out, LR_WALL_M * floor->view->scale);
  double width, height = label->style.size, off;
  LrVec2 places[6];

  label->color = floor->theme->ink2;
  label->halo = floor->theme->ground;
  lr_text_measure (floor->cr, floor->theme, &label->style, label->text, &width, NULL);
  if (fabs (out.x) > 0.7 && width > (floor->view->is_page ? PAGE_NOTE_ROOM_PX : WALL_NOTE_ROOM_PX) * floor->px
      && strchr (label->text, '\n') == NULL)
    {
      label->angle_rad = -0.5 * LR_PI;
      off = 0.5 * height;
    }
  else
    {
      off = fabs (out.x) * 0.5 * width + fabs (out.y) * 0.5 * height;
      label->style.align = out.x < -0.7 ? LR_ALIGN_RIGHT : LR_ALIGN_LEFT; /* lines end at the wall */
    }
  off += (fabs (out.x) > 0.7 ? 0.5 : 0.65) * WALL_NOTE_PX * floor->px;

  for (int i = 0; i < 6; i++)
    {
      static const double slides[] = { 0.0, 0.0, 1.0, -1.0, 1.0, -1.0 };
      double further = i == 1 || i > 3 ? 1.3 * height : 0.0;
      double slide = slides[i] * (fabs (along.x) > 0.7 ? 0.6 * width : 1.4 * height);

      places[i] = lr_vec2_along (lr_vec2_along (face, out, off + further), along, slide);
    }
  lr_labels_add_at (floor->labels, label, places, G_N_ELEMENTS (places));
}

/**
 * lr_floor_note_window:
 * @floor: a drawing
 * @placed: a window
 *
 * Writes its name and how its blind is.
 */
void
lr_floor_note_window (const LrFloor  *floor,
                      const LrPlaced *placed)
{
  static const char *const formats[] = {
    [LR_BLIND_NONE] = "%s", [LR_BLIND_UP] = N_("%s, blind up"), [LR_BLIND_HALF] = N_("%s, blind half down"),
    [LR_BLIND_DOWN] = N_("%s, blind down"),
  };
  g_autofree char *text = NULL;
  LrLabel label;

  if (*placed->item->name == '\0')
    return;

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  text = g_strdup_printf (placed->item->window.blind == LR_BLIND_NONE ? "%s" : _(formats[placed->item->window.blind]),
                          placed->item->name);
#pragma GCC diagnostic pop
  label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, text);
  add_outside (floor, placed, &label);
}

/* "280 W" or "free", then its circuit and what of that is taken, on all its sockets: "C1 8 %" */
static void
add_loads (const LrFloor *floor,
           const LrItem  *socket,
           const LrItem  *circuit,
           gboolean       is_upright,
           GString       *text)
{
  g_autofree char *on = circuit != NULL ? g_markup_escape_text (circuit->tag, -1) : NULL;
  LrCircuitReading reading;
  double load_w;

  if (lr_study_socket_load_w (floor->study, socket, &load_w))
    g_string_append_printf (text, " %.0f\u00a0W", load_w);
  else
    g_string_append_printf (text, " %s", _("free"));
  if (!lr_study_circuit (floor->study, circuit, &reading))
    return;

  g_string_append (text, is_upright ? "\n" : " · ");
  /* Translators: a circuit, and the share of its rating that is taken at full */
  g_string_append_printf (text, _("%s %.0f\u00a0%%"), on, 100.0 * reading.load_share);
}

/* "S2 · C1", its tag bold on paper; while Power is shown with loads */
static char *
describe_socket (const LrFloor *floor,
                 const LrItem  *socket,
                 gboolean       is_upright)
{
  const LrItem *circuit = lr_plan_find (floor->plan, socket->socket.circuit);
  gboolean has_power = (floor->view->shown & LR_SHOW_POWER) != 0, is_bold = has_power || floor->view->is_page;
  g_autofree char *tag = g_markup_escape_text (socket->tag, -1);
  g_autofree char *on = circuit != NULL ? g_markup_escape_text (circuit->tag, -1) : g_strdup ("");
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, is_bold ? "<b>%s</b>" : "%s", tag);
  if (has_power)
    add_loads (floor, socket, circuit, is_upright, text);
  else if (*on != '\0')
    g_string_append_printf (text, "%s%s", !is_bold ? "\u00a0· " : is_upright ? "\n" : " ", on);

  return g_string_free (text, FALSE);
}

/**
 * lr_floor_note_socket:
 * @floor: a drawing
 * @placed: a socket
 *
 * Writes its tag, its circuit and, while Power is shown, its load and its circuit's.
 */
void
lr_floor_note_socket (const LrFloor  *floor,
                      const LrPlaced *placed)
{
  g_autofree char *text = describe_socket (floor, placed->item, fabs (cos (placed->facing_rad)) > 0.7);
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, text);

  label.style.has_markup = TRUE;
  if (*placed->item->tag != '\0')
    add_outside (floor, placed, &label);
}

/**
 * lr_floor_note_noise:
 * @floor: a drawing
 * @placed: a noise
 *
 * Writes its name and, while Sound is shown, its level.
 */
void
lr_floor_note_noise (const LrFloor  *floor,
                     const LrPlaced *placed)
{
  const LrRoom *room = floor->room;
  double inside_m = room->n_corners >= 3 ? lr_polygon_distance_m (room->corners_m, room->n_corners, placed->at_m, NULL) : 1.0;
  gboolean has_level = (floor->view->shown & LR_SHOW_SOUND) != 0 || floor->view->is_page;
  g_autofree char *level = g_strdup_printf (_("%.0f\u00a0dB at 1\u00a0m"), placed->item->noise.level_db);
  g_autofree char *text = has_level && inside_m < -ON_WALL_M ? g_strdup_printf ("%s\n%s", placed->item->name, level)
                                                             : g_strdup (placed->item->name);
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, text);

  if (*placed->item->name == '\0')
    return;

  label.color = floor->theme->ink2;
  if (fabs (inside_m) <= ON_WALL_M)
    {
      add_outside (floor, placed, &label);
      return;
    }
  if (inside_m < 0.0)
    label.halo = floor->theme->ground;
  lr_floor_add_beside (floor, placed, &label);
}

/**
 * lr_floor_note_door:
 * @floor: a drawing
 * @placed: a door
 *
 * Writes on paper that it leads out, before its swing: for whoever might put something there.
 */
void
lr_floor_note_door (const LrFloor  *floor,
                    const LrPlaced *placed)
{
  const LrDoor *door = &placed->item->door;
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, _("way out"));
  LrVec2 in = lr_vec2 (cos (placed->facing_rad), -sin (placed->facing_rad)), along = lr_vec2_left (in), at, places[3];
  double width, off;

  if (!door->is_exit || !floor->view->is_page)
    return;

  label.color = floor->theme->ink2;
  lr_text_measure (floor->cr, floor->theme, &label.style, label.text, &width, NULL);
  off = (door->swing == LR_SWING_IN ? door->width_m : 0.0) * floor->view->scale + 8.0 * floor->px
        + 0.5 * (fabs (in.x) * width + fabs (in.y) * label.style.size);
  at = lr_vec2_along (lr_floor_device (floor, placed->at_m), in, off);
  for (int i = 0; i < 3; i++)
    places[i] = lr_vec2_along (at, along, (i == 1 ? 1.0 : i == 2 ? -1.0 : 0.0) * 0.3 * door->width_m * floor->view->scale);
  lr_labels_add_at (floor->labels, &label, places, 3);
}
