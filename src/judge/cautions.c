/* cautions.c - what can hurt someone, said from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each sentence rests on what stands in the plan. None says that a thing is safe: the plan knows neither the state of
 * the gear nor the law of the place. Heights and distances: common practice, no source.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "cautions.h"

#include "power_readings.h"
#include "remarks.h"

#define OVERHEAD_M    0.60 /* a boom's tip this near to a head, seen from above, hangs over the person */
#define TALL_M        1.50 /* stands whose head is higher want weight on a leg */
#define NEAR_CEILING_M 1.00 /* lamps nearer to it: heat, detectors, sprinklers */

typedef struct
{
  const LrStudy *study;
  LrUnits        units;
  GPtrArray     *sentences;
} Cautions;

static void
add (Cautions *cautions,
     char     *markup)
{
  g_ptr_array_add (cautions->sentences, markup);
}

/* "L1, L2 and L3", escaped for markup */
static char *
join_tags (const GPtrArray *tags)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < tags->len; i++)
    {
      if (i > 0)
        g_string_append (text, i + 1 < tags->len ? ", " : _(" and "));
      g_string_append (text, g_ptr_array_index (tags, i));
    }

  return g_markup_escape_text (text->str, -1);
}

/* Booms */

static const LrPlaced *
person_under (const LrStudy *study,
              LrVec2         at_m)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_PERSON && lr_vec2_distance (placed->at_m, at_m) < OVERHEAD_M)
        return placed;
    }

  return NULL;
}

static void
add_booms (Cautions *cautions)
{
  for (guint i = 0; i < cautions->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (cautions->study->placed, LrPlaced, i);
      const LrMicrophone *mic = &placed->item->microphone;
      g_autofree char *reach = NULL;
      g_autofree char *tag = NULL;
      const LrPlaced *person;
      LrVec2 tip;

      if (placed->item->kind != LR_ITEM_MICROPHONE || mic->form != LR_MIC_BOOM)
        continue;

      tip = lr_vec2 (mic->tip_x_m, mic->tip_y_m);
      person = person_under (cautions->study, tip);
      reach = lr_length_format (lr_vec2_distance (placed->at_m, tip), cautions->units);
      tag = g_markup_escape_text (placed->item->tag, -1);
      if (person != NULL)
        {
          g_autofree char *title = person->item->name[0] != '\0' ? g_strdup (person->item->name) : lr_item_title (person->item);
          g_autofree char *name = g_markup_escape_text (title, -1);

          add (cautions, g_strdup_printf (_("Boom %s reaches <b>%s</b> over %s: weigh its short end, bag its post."),
                                       tag, reach, name));
        }
      else
        add (cautions, g_strdup_printf (_("Boom %s reaches <b>%s</b>: weigh its short end, bag its post."), tag, reach));
    }
}

/* Lights */

static void
add_lights (Cautions *cautions)
{
  g_autoptr (GPtrArray) tall = g_ptr_array_new ();
  g_autoptr (GPtrArray) high = g_ptr_array_new ();
  double ceiling_m = cautions->study->setup->room->height_m;

  for (guint i = 0; i < cautions->study->placed->len; i++)
    {
      const LrItem *item = g_array_index (cautions->study->placed, LrPlaced, i).item;

      if (item->kind != LR_ITEM_LIGHT)
        continue;

      if (item->light.lamp_height_m > TALL_M)
        g_ptr_array_add (tall, item->tag);
      if (ceiling_m > 0.0 && ceiling_m - item->light.lamp_height_m < NEAR_CEILING_M)
        g_ptr_array_add (high, item->tag);
    }

  if (tall->len > 0)
    {
      g_autofree char *tags = join_tags (tall);
      g_autofree char *limit = lr_length_format (TALL_M, cautions->units);

      add (cautions, g_strdup_printf (ngettext ("%s stands higher than %s: hang a bag at its post.",
                                             "%s stand higher than %s: hang a bag at each post.", tall->len), tags, limit));
    }
  if (high->len > 0)
    {
      g_autofree char *tags = join_tags (high);
      g_autofree char *limit = lr_length_format (NEAR_CEILING_M, cautions->units);

      add (cautions, g_strdup_printf (_("Keep %s, when hot, %s from detectors and sprinklers."), tags, limit));
    }
}

/* Doors and leads */

/* The floor that a way out needs: as deep as the door is wide, in front of the opening */
static gboolean
door_zone (const LrSetup *setup,
           const LrItem  *door,
           LrOutline     *zone)
{
  LrVec2 from, along;
  double length;

  if (!lr_room_wall (setup->room, door->wall, &from, &along, &length))
    return FALSE;

  *zone = lr_outline_box (lr_vec2_along (lr_vec2_along (from, along, door->along_m + door->door.width_m / 2.0),
                                         lr_vec2_left (along), door->door.width_m / 2.0),
                          door->door.width_m, door->door.width_m, lr_vec2_angle_rad (along));
  return TRUE;
}

static gboolean
path_meets (const LrItem    *lead,
            const LrOutline *zone)
{
  for (gsize i = 0; i + 1 < lead->n_path; i++)
    {
      LrVec2 step = lr_vec2_sub (lead->path_m[i + 1], lead->path_m[i]);
      double length = lr_vec2_length (step), enter, leave;

      if (lr_outline_contains (zone, lead->path_m[i]) || lr_outline_contains (zone, lead->path_m[i + 1]))
        return TRUE;
      if (length > 0.0
          && lr_outline_ray (zone, lead->path_m[i], lr_vec2_scale (step, 1.0 / length), &enter, &leave)
          && enter < length)
        return TRUE;
    }

  return FALSE;
}

/* What a lead is called by: the thing that it feeds */
static const char *
lead_tag (const LrStudy *study,
          const LrItem  *lead)
{
  const LrPlaced *load = lead->lead.feeds[0] != '\0' ? lr_study_find_placed (study, lead->lead.feeds) : NULL;

  return load != NULL && load->item->tag[0] != '\0' ? load->item->tag : _("a lead");
}

static GPtrArray *
leads_across (const LrStudy   *study,
              const LrOutline *zone)
{
  GPtrArray *tags = g_ptr_array_new ();

  for (guint i = 0; i < study->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (study->setup->items, i);

      if (item->kind == LR_ITEM_LEAD && path_meets (item, zone))
        g_ptr_array_add (tags, (gpointer) lead_tag (study, item));
    }

  return tags;
}

static void
add_doors (Cautions *cautions)
{
  const GPtrArray *items = cautions->study->setup->items;
  guint n_exits = 0;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      n_exits += item->kind == LR_ITEM_DOOR && item->door.is_exit;
    }

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);
      g_autoptr (GPtrArray) across = NULL;
      g_autofree char *width = NULL;
      LrOutline zone;

      if (item->kind != LR_ITEM_DOOR || !item->door.is_exit || !door_zone (cautions->study->setup, item, &zone))
        continue;

      across = leads_across (cautions->study, &zone);
      width = lr_length_format (item->door.width_m, cautions->units);
      if (across->len > 0)
        {
          g_autofree char *tags = join_tags (across);

          add (cautions, g_strdup_printf (_("The lead of <b>%s</b> crosses a way out: lay it another way."), tags));
        }
      add (cautions, g_strdup_printf (n_exits == 1 ? _("Keep the door and <b>%s</b> before it free: it is the only way out.")
                                   : _("Keep the door and <b>%s</b> before it free: it is a way out."), width));
    }
}

/* "Up to 280 W on C1, 60 W on C2": what the house is to be told */
static void
add_circuits (Cautions *cautions)
{
  g_autoptr (GString) text = g_string_new (NULL);
  double untold_w;

  for (guint i = 0; i < cautions->study->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (cautions->study->setup->items, i);
      g_autofree char *tag = g_markup_escape_text (item->tag, -1);
      LrCircuitReading reading;

      if (!lr_study_circuit (cautions->study, item, &reading) || reading.n_leads == 0)
        continue;
      /* Translators: a comma or nothing, watts, a circuit's tag, the share of its rating; they stand in a list behind "Lamps at full:" */
      g_string_append_printf (text, reading.known_w > 0.0 ? _("%s <b>%.0f\u00a0W</b> on %s (%.0f\u00a0%% with what is on it)")
                                                          : _("%s <b>%.0f\u00a0W</b> on %s (%.0f\u00a0%%)"),
                              text->len > 0 ? "," : "", reading.full_w - reading.known_w, tag, 100.0 * reading.full_a / reading.rated_a);
    }
  if (lr_study_untold_w (cautions->study, NULL, &untold_w))
    /* Translators: a comma or nothing, watts; in the same list */
    g_string_append_printf (text, _("%s <b>%.0f\u00a0W</b> on circuits not told"), text->len > 0 ? "," : "", untold_w);

  if (text->len > 0)
    /* Translators: a list of watts and circuits, which begins with a space */
    add (cautions, g_strdup_printf (_("Lamps at full:%s; others may share that."), text->str));
}

static void
add_mains (Cautions *cautions)
{
  gboolean has_leads = FALSE;

  for (guint i = 0; i < cautions->study->setup->items->len; i++)
    has_leads |= ((const LrItem *) g_ptr_array_index (cautions->study->setup->items, i))->kind == LR_ITEM_LEAD;

  if (has_leads)
    add_circuits (cautions);
  if (has_leads)
    add (cautions, g_strdup (_("Tape leads down on walkways. Mains work: local rules, licensed hands.")));
}

/**
 * lr_cautions_new:
 * @study: a study
 * @units: how lengths are written
 *
 * Returns: (transfer full) (element-type utf8): sentences with Pango markup, the gravest first; none when the plan gives no cause
 */
GPtrArray *
lr_cautions_new (const LrStudy *study,
                 LrUnits        units)
{
  Cautions cautions = { study, units, g_ptr_array_new_with_free_func (g_free) };

  add_doors (&cautions);
  add_booms (&cautions);
  add_lights (&cautions);
  add_mains (&cautions);
  return cautions.sentences;
}

/**
 * lr_cautions_to_json:
 * @cautions: (element-type utf8): cautions
 *
 * Returns: (transfer full): an array of the sentences without markup
 */
JsonNode *
lr_cautions_to_json (const GPtrArray *cautions)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (guint i = 0; i < cautions->len; i++)
    {
      g_autofree char *text = lr_markup_to_text (g_ptr_array_index (cautions, i));

      json_builder_add_string_value (builder, text);
    }
  json_builder_end_array (builder);
  return json_builder_get_root (builder);
}
