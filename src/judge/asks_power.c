/* asks_power.c - what the place is asked to do for power and ways out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"

#include "power.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>

/* "S1 and S2" */
static char *
join_tags (const GPtrArray *placed)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < placed->len; i++)
    {
      const LrItem *item = ((const LrPlaced *) g_ptr_array_index (placed, i))->item;

      g_string_append_printf (text, "%s%s", i == 0 ? "" : i + 1 < placed->len ? ", " : _(" and "), item->tag[0] != '\0' ? item->tag : item->id);
    }
  return g_string_free (text, FALSE);
}

/* (transfer container) (element-type LrPlaced): those of the circuit that have a lead */
static GPtrArray *
find_sockets (const LrStudy *study,
              const LrItem  *circuit)
{
  GPtrArray *sockets = g_ptr_array_new ();

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_SOCKET && g_strcmp0 (placed->item->socket.circuit, circuit->id) == 0
          && lr_study_leads_in (study, placed->item->id, NULL) > 0)
        g_ptr_array_add (sockets, (gpointer) placed);
    }

  return sockets;
}

static void
ask_for_circuit (GPtrArray     *asks,
                 const LrStudy *study,
                 const LrItem  *circuit)
{
  g_autofree char *tags = NULL, *text = NULL, *reason = NULL, *name = NULL;
  g_autoptr (GPtrArray) sockets = find_sockets (study, circuit);
  const LrItem *about = circuit;
  double known_a = 0.0;
  LrCircuitReading reading;

  if (!lr_study_circuit (study, circuit, &reading))
    return;
  /* one that is over its limit is to be mended, not asked for */
  if (reading.full_a > reading.allowed_share * reading.rated_a)
    return;
  if (sockets->len == 0)
    return;
  tags = join_tags (sockets);

  name = circuit->name[0] != '\0' ? g_strdup_printf ("%s (%s)", circuit->tag, circuit->name) : g_strdup (circuit->tag);
  /* Translators: sockets, their circuit */
  text = g_strdup_printf (ngettext ("Socket %s, and the rest of circuit %s, for us alone",
                                    "Sockets %s, and the rest of circuit %s, for us alone", sockets->len), tags, name);
  lr_power_current_a (reading.known_w, circuit->circuit.volts_v, 1.0, &known_a);
  /* Translators: amperes */
  reason = reading.known_w > 0.0
             ? g_strdup_printf (_("we take up to %.1f\u00a0A beside %.1f\u00a0A of its %.0f\u00a0A"), reading.full_a - known_a,
                                known_a, reading.rated_a)
             : g_strdup_printf (_("we take up to %.1f\u00a0A of its %.0f\u00a0A"), reading.full_a, reading.rated_a);
  for (guint i = 0; i < sockets->len && !lr_asks_has_own (asks, about); i++)
    about = ((const LrPlaced *) g_ptr_array_index (sockets, i))->item;
  lr_asks_add (asks, lr_asks_has_own (asks, about) ? about : circuit, text, reason, study->plan->job->time_in, study->plan->job->time_wrap);
}

static void
ask_for_untold (GPtrArray     *asks,
                const LrStudy *study)
{
  g_autoptr (GPtrArray) sockets = g_ptr_array_new ();
  g_autofree char *names = NULL, *text = NULL, *reason = NULL;
  double full_w;

  if (!lr_study_untold_w (study, sockets, &full_w))
    return;
  names = join_tags (sockets);
  /* Translators: sockets */
  text = g_strdup_printf (ngettext ("Tell us which circuit socket %s is on, and how many amperes its breaker bears",
                                    "Tell us which circuits sockets %s are on, and how many amperes their breakers bear", sockets->len), names);
  reason = g_strdup_printf (_("we plug in up to %.0f W"), full_w);
  lr_asks_add (asks, NULL, text, reason, "", "");
}

static void
ask_for_breaker (GPtrArray     *asks,
                 const LrStudy *study)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (study->setup->items, i);

      if (item->kind != LR_ITEM_LEAD)
        continue;
      lr_asks_add (asks, NULL, _("Tell us where the breakers are and who may reset them"), _("a breaker that trips ends the interview"), "", "");
      return;
    }
}

static void
ask_for_wheelchair (GPtrArray      *asks,
                    const LrStudy  *study,
                    const LrPlaced *person,
                    LrUnits         units)
{
  g_autofree char *width = lr_length_format (study->plan->limits.value[LR_LIMIT_WHEELCHAIR], units);
  g_autofree char *door = lr_length_format (LR_WHEELCHAIR_DOOR_M, units);
  g_autofree char *name = person->item->name[0] != '\0' ? g_strdup (person->item->name) : lr_item_title (person->item), *text = NULL, *reason = NULL;

  text = g_strdup_printf (_("From the entrance to the room a way %s wide, doors %s in the clear, no steps"), width, door);
  /* Translators: a person's name */
  reason = g_strdup_printf (_("%s comes in a wheelchair"), name);
  lr_asks_add (asks, NULL, text, reason, "", "");
}

static void
ask_for_exits (GPtrArray     *asks,
               const LrStudy *study)
{
  for (guint i = 0; i < study->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (study->setup->items, i);

      if (item->kind != LR_ITEM_DOOR || !item->door.is_exit)
        continue;
      lr_asks_add (asks, NULL, _("Ways out unlocked and clear on both sides while we are there"),
                   _("cases and stands fill the room; the local fire code decides what must stay clear"), "", "");
      return;
    }
}

/**
 * lr_asks_add_power:
 * @asks: requests
 * @study: a study
 * @units: how lengths are written
 *
 * Adds what the place is asked to do for power and ways out.
 */
void
lr_asks_add_power (GPtrArray     *asks,
                   const LrStudy *study,
                   LrUnits        units)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_CIRCUIT)
        ask_for_circuit (asks, study, placed->item);
      else if (placed->item->kind == LR_ITEM_PERSON && placed->item->person.uses_wheelchair)
        ask_for_wheelchair (asks, study, placed, units);
    }
  ask_for_untold (asks, study);
  ask_for_breaker (asks, study);
  ask_for_exits (asks, study);
}
