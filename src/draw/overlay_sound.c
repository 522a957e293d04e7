/* overlay_sound.c - where each microphone hears well, and what disturbs it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The contours say how the microphone favours a place, not how loud it is there: reverberation is left out of them. A tube counts as its
 * capsule, as at 500 Hz.
 */

#include "config.h"

#include "floor_layers.h"

#include "pickup.h"
#include "sound.h"
#include "washes.h"

#include <glib/gi18n-lib.h>

#define N_RAYS 72
#define N_RING 120
#define REACH_M 6.0
#define N_CONTOURS 2
#define ARROW_PX 8.0
#define BESIDE_PX 4.0           /* from a line to what is written beside it */
#define START_M 0.12            /* an arrow begins so far from its noise, and ends so far before the capsule */
#define END_M 0.15
#define FAINT_DB 45.0           /* under the voice: what is fainter is not drawn; common practice, no source */
#define LEAST_SCALE_FOR_DB 60.0 /* px to the metre */
#define QUIET_DB 30.0           /* common practice, no source: rings of what is quieter at 1 m would say nothing */

static const double contours_db[N_CONTOURS] = { -6.0, -12.0 };

typedef struct
{
  LrVec2 at_m[N_RAYS]; /* anticlockwise, the first along +x */
} Contour;

/* The microphone and the mouth that it is there for */
static gboolean
get_pickup (const LrFloor  *floor,
            const LrPlaced *placed,
            LrPickup       *pickup,
            LrVec3         *mouth_m)
{
  const LrMicrophone *microphone = &placed->item->microphone;
  const LrMicrophoneSound *heard = lr_sound_find (lr_study_sound (floor->study), placed->item->id);
  const LrPlaced *person = floor->study->subject;

  if (microphone->form == LR_MIC_LAVALIER)
    return FALSE;
  if (heard != NULL)
    {
      *pickup = (LrPickup) { heard->capsule_m, heard->axis, microphone->omni_share };
      *mouth_m = heard->mouth_m;
      return TRUE;
    }
  if (person == NULL || microphone->form == LR_MIC_CAMERA || *microphone->aims_at != '\0')
    return FALSE;

  /* aimed at nobody: straight down */
  *mouth_m = lr_vec3 (person->eyes_m.x, person->eyes_m.y, person->body.mouth_m);
  *pickup = (LrPickup) { placed->point_m, lr_vec3 (0.0, 0.0, -1.0), microphone->omni_share };
  return TRUE;
}

static gboolean
find_contour (const LrPickup *pickup,
              LrVec3          mouth_m,
              double          level_db,
              Contour        *contour)
{
  for (int i = 0; i < N_RAYS; i++)
    {
      LrVec2 direction = lr_vec2_polar (2.0 * LR_PI * i / N_RAYS, 1.0);
      double distance_m;

      if (!lr_pickup_contour_m (pickup, mouth_m, direction, level_db, REACH_M, &distance_m))
        return FALSE;
      contour->at_m[i] = lr_vec2_along (lr_vec3_flat (mouth_m), direction, distance_m);
    }

  return TRUE;
}

static void
label_line (const LrFloor *floor,
            const char    *text,
            const LrVec2  *places,
            gsize          n)
{
  LrLabel label = {
    .rank = LR_LABEL_SCALE,
    .parts_line = TRUE,
    .stands_on_lines = TRUE,
    .text = text,
    .style = { .size = floor->theme->type_size[LR_TYPE_DB] },
    .color = floor->theme->family_line[LR_FAMILY_SOUND],
    .halo = floor->theme->room,
    .has_halo = TRUE,
  };

  if (floor->view->scale >= LEAST_SCALE_FOR_DB && n > 0)
    lr_labels_add_at (floor->labels, &label, places, n);
}

/* A narrow no-break space, which the halo closes over the contour that the label breaks */
static void
label_db (const LrFloor *floor,
          double         level_db,
          const LrVec2  *places,
          gsize          n)
{
  g_autofree char *text = g_strdup_printf ("%s%.0f\u202fdB", level_db < 0.0 ? "\u2212" : "", fabs (level_db));

  label_line (floor, text, places, n);
}

static gboolean
is_inside (const LrFloor *floor,
           LrVec2         at_m)
{
  return floor->room->n_corners < 3
         || (lr_polygon_contains (floor->room->corners_m, floor->room->n_corners, at_m)
             && lr_polygon_distance_m (floor->room->corners_m, floor->room->n_corners, at_m, NULL) > 0.12);
}

static void
label_contour (const LrFloor *floor,
               const Contour *contour,
               double         level_db)
{
  /* from below the mouth outwards to both sides, in twelfths of a turn */
  static const int twelfths[] = { 9, 8, 10, 7, 11, 6, 0, 5, 1, 4, 2, 3 };
  LrVec2 places[G_N_ELEMENTS (twelfths)];
  gsize n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (twelfths); i++)
    {
      LrVec2 at_m = contour->at_m[twelfths[i] * N_RAYS / 12];

      if (is_inside (floor, at_m))
        places[n++] = lr_floor_device (floor, at_m);
    }
  label_db (floor, level_db, places, n);
}

static void
draw_pickup (const LrFloor  *floor,
             const LrPickup *pickup,
             LrVec3          mouth_m)
{
  double wash = lr_floor_wash (floor, LR_FAMILY_SOUND);
  cairo_t *cr = floor->cr;

  for (int i = 0; i < N_CONTOURS; i++)
    {
      Contour contour;

      if (!find_contour (pickup, mouth_m, contours_db[i], &contour))
        return;
      if (i == 0)
        lr_wash_fill_within (floor, floor->room->corners_m, floor->room->n_corners, contour.at_m, N_RAYS, contour.at_m[0],
                             contour.at_m[N_RAYS / 2], floor->theme->family_fill[LR_FAMILY_SOUND], wash, wash);
      lr_wash_trace_inside (floor, contour.at_m, N_RAYS);
      lr_theme_set_color (cr, floor->theme->family_line[LR_FAMILY_SOUND], 1.0);
      lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, i == 0 ? LR_DASH_SOLID : LR_DASH_SHORT);
      cairo_stroke (cr);
      label_contour (floor, &contour, contours_db[i]);
    }
}

/* "45 dB at 1 m" */
static char *
describe_ring (const LrFloor *floor,
               const LrNoise *noise,
               int            metres)
{
  g_autofree char *away = floor->view->units == LR_UNITS_METRIC ? g_strdup_printf ("%d\u00a0m", metres)
                                                                : lr_length_format (metres, floor->view->units);

  /* Translators: what a meter reads so far from a noise */
  return g_strdup_printf (_("%.0f\u00a0dB at %s"), lr_sound_level_at_db (lr_study_sound (floor->study), noise, metres), away);
}

static void
draw_noise_rings (const LrFloor  *floor,
                  const LrPlaced *placed)
{
  static const double turns[] = { -1.25, 1.25, -0.9, 0.9, -0.5, 0.5, 0.0, 2.0, -2.0, 2.8, -2.8 }; /* rad off its facing */
  const LrNoise *noise = &placed->item->noise;

  for (int metres = 1; metres <= 2; metres++)
    {
      LrVec2 places[G_N_ELEMENTS (turns)], ring_m[N_RING];
      g_autofree char *text = NULL;
      gsize n = 0;

      for (int i = 0; i < N_RING; i++)
        ring_m[i] = lr_vec2_add (placed->at_m, lr_vec2_polar (placed->facing_rad + LR_PI * (1.0 + 2.0 * i / N_RING), metres));
      lr_wash_trace_inside (floor, ring_m, N_RING);
      for (gsize i = 0; i < G_N_ELEMENTS (turns); i++)
        {
          LrVec2 at_m = lr_vec2_add (placed->at_m, lr_vec2_polar (placed->facing_rad + turns[i], metres));

          if (is_inside (floor, at_m))
            places[n++] = lr_floor_device (floor, at_m);
        }
      text = describe_ring (floor, noise, metres);
      label_line (floor, text, places, n);
    }
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SOUND], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SHORT);
  cairo_stroke (floor->cr);
}

/* "34 dB at M1, 24 under the voice" */
static char *
describe_arrow (const LrMicrophoneSound *microphone,
                const LrNoiseLevel      *level)
{
  const LrItem *item = microphone->placed->item;
  double under_db = round (microphone->voice_db - level->level_db);

  return g_strdup_printf (under_db >= 0.0
                            /* Translators: what a microphone hears of a noise; how far that is under the voice, in dB */
                            ? _("%.0f\u00a0dB at %s, %.0f under the voice")
                            : _("%.0f\u00a0dB at %s, %.0f over the voice"),
                          level->level_db, *item->tag != '\0' ? item->tag : item->name, fabs (under_db));
}

/* Along the line, on it and to both its sides, its middle first */
static void
label_arrow (const LrFloor *floor,
             const char    *text,
             LrVec2         from_m,
             LrVec2         to_m)
{
  static const double shares[] = { 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9 };
  const LrTextStyle style = { .size = floor->theme->type_size[LR_TYPE_DB] };
  LrVec2 from = lr_floor_device (floor, from_m), way = lr_vec2_sub (lr_floor_device (floor, to_m), from), places[3 * G_N_ELEMENTS (shares)];
  LrVec2 across = lr_vec2_left (lr_vec2_scale (way, 1.0 / lr_vec2_length (way)));
  double width, off;

  lr_text_measure (floor->cr, floor->theme, &style, text, &width, NULL);
  off = 0.5 * (fabs (across.x) * width + fabs (across.y) * style.size) + BESIDE_PX * floor->px;
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    places[i] = lr_vec2_along (lr_vec2_along (from, way, shares[i % G_N_ELEMENTS (shares)]), across,
                               i < G_N_ELEMENTS (shares)       ? 0.0
                               : i < 2 * G_N_ELEMENTS (shares) ? off
                                                               : -off);
  label_line (floor, text, places, G_N_ELEMENTS (places));
}

/* From a noise to the subject's first microphone, with its level there against the voice */
static void
draw_noise_arrow (const LrFloor           *floor,
                  const LrMicrophoneSound *microphone,
                  const LrNoiseLevel      *level)
{
  LrVec2 from_m = level->noise->at_m, to_m = lr_vec3_flat (microphone->capsule_m), way = lr_vec2_sub (to_m, from_m);
  double long_m = lr_vec2_length (way), head_m = ARROW_PX * floor->px / floor->view->scale;
  g_autofree char *text = NULL;
  LrVec2 along, tip;
  LrVec2 direction;

  if (long_m < START_M + END_M + head_m)
    return;

  along = lr_vec2_scale (way, 1.0 / long_m);
  from_m = lr_vec2_along (from_m, along, START_M);
  to_m = lr_vec2_along (to_m, along, -END_M);
  tip = lr_floor_device (floor, to_m);
  direction = lr_vec2 (along.x, -along.y);
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SOUND], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  lr_floor_move_to (floor, from_m);
  lr_floor_line_to (floor, lr_vec2_along (to_m, along, -head_m));
  cairo_stroke (floor->cr);
  lr_floor_arrowhead (floor->cr, tip, direction, ARROW_PX * floor->px);
  text = describe_arrow (microphone, level);
  label_arrow (floor, text, from_m, to_m);
}

/* In a drag an arrow is drawn with what moves, if one of its ends does */
static gboolean
is_of_layer (const LrFloor  *floor,
             const LrPlaced *a,
             const LrPlaced *b)
{
  const LrPlaced *first = (const LrPlaced *) (gpointer) floor->study->placed->data;
  gboolean has_a = floor->is_drawn[a - first], has_b = floor->is_drawn[b - first];

  return floor->has_base ? has_a && has_b : has_a || has_b;
}

/* The first one of the subject's: not the best, which may become another one in a drag */
static const LrMicrophoneSound *
find_main (const LrFloor *floor)
{
  const LrSound *sound = lr_study_sound (floor->study);

  for (guint i = 0; i < sound->microphones->len; i++)
    if (lr_sound_microphone (sound, i)->talker == floor->study->subject)
      return lr_sound_microphone (sound, i);
  return NULL;
}

static void
draw_noise_arrows (const LrFloor *floor)
{
  const LrMicrophoneSound *heard = find_main (floor);

  for (guint i = 0; heard != NULL && i < heard->noises->len; i++)
    if (lr_sound_noise (heard, i)->noise != NULL && heard->voice_db - lr_sound_noise (heard, i)->level_db < FAINT_DB
        && is_of_layer (floor, heard->placed, lr_sound_noise (heard, i)->noise))
      draw_noise_arrow (floor, heard, lr_sound_noise (heard, i));
}

/**
 * lr_overlay_sound:
 * @floor: a drawing
 *
 * Where a microphone hears a voice 6 and 12 dB less than the mouth it aims at; the level of noises at 1 m and 2 m, and at
 * what level and how far under the voice each is heard at the subject's first microphone.
 */
void
lr_overlay_sound (const LrFloor *floor)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  if (!(floor->view->shown & LR_SHOW_SOUND) || floor->view->is_page)
    return;

  cairo_save (floor->cr);
  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      LrPickup pickup;
      LrVec3 mouth_m;

      if (!floor->is_drawn[i])
        continue;
      if (placed[i].item->kind == LR_ITEM_NOISE && !placed[i].item->noise.is_off && placed[i].item->noise.level_db >= QUIET_DB)
        draw_noise_rings (floor, &placed[i]);
      if (placed[i].item->kind == LR_ITEM_MICROPHONE && get_pickup (floor, &placed[i], &pickup, &mouth_m))
        draw_pickup (floor, &pickup, mouth_m);
    }
  draw_noise_arrows (floor);
  cairo_restore (floor->cr);
}
