/* overlay_sound.c - where each microphone hears well, and what disturbs it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reverberation is left out: the contours say how the microphone favours a place, not how loud it is there.
 */

#include "floor_layers.h"
#include "pickup.h"
#include "washes.h"

#define N_RAYS 72
#define N_RING 120
#define REACH_M 6.0
#define N_CONTOURS 2
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
  const LrPlaced *person = lr_study_find_placed (floor->study, microphone->aims_at);
  LrVec3 way;

  if (microphone->form == LR_MIC_LAVALIER)
    return FALSE;
  if (person == NULL || person->item->kind != LR_ITEM_PERSON)
    person = floor->study->subject;
  if (person == NULL)
    return FALSE;

  pickup->omni_share = microphone->omni_share;
  pickup->capsule_m = lr_vec3 (microphone->tip_x_m, microphone->tip_y_m, microphone->tip_height_m);
  *mouth_m = lr_vec2_raise (lr_vec2_along (person->at_m, lr_vec2_polar (person->facing_rad, 1.0), LR_EYES_AHEAD_M),
                            person->body.mouth_m);
  way = *microphone->aims_at == '\0' ? lr_vec3 (0.0, 0.0, -1.0) : lr_vec3_sub (*mouth_m, pickup->capsule_m);
  if (!(lr_vec3_length (way) > 0.01))
    return FALSE;
  pickup->axis = lr_vec3_scale (way, 1.0 / lr_vec3_length (way));

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

/* A narrow no-break space, which the halo closes over the contour that the label breaks */
static void
label_db (const LrFloor *floor,
          double         level_db,
          const LrVec2  *places,
          gsize          n)
{
  g_autofree char *text = g_strdup_printf ("%s%.0f\u202fdB", level_db < 0.0 ? "\u2212" : "", fabs (level_db));
  LrLabel label = {
    .rank = LR_LABEL_SCALE,
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

static void
draw_noise_rings (const LrFloor  *floor,
                  const LrPlaced *placed)
{
  static const double turns[] = { -1.25, 1.25, -0.9, 0.9, -0.5, 0.5, 0.0, 2.0, -2.0, 2.8, -2.8 }; /* rad off its facing */
  const LrNoise *noise = &placed->item->noise;

  for (int metres = 1; metres <= 2; metres++)
    {
      LrVec2 places[G_N_ELEMENTS (turns)], ring_m[N_RING];
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
      label_db (floor, noise->level_db - 20.0 * log10 (metres), places, n);
    }
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SOUND], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SHORT);
  cairo_stroke (floor->cr);
}

/**
 * lr_overlay_sound:
 * @floor: a drawing
 *
 * Where a microphone hears a voice 6 and 12 dB less than the mouth it aims at; the level of noises at 1 m and 2 m.
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
  cairo_restore (floor->cr);
}
