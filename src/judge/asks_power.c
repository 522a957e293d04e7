/* asks_power.c - what the place is asked to do for power and ways out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "asks.h"

#include "power_readings.h"

#include <glib/gi18n-lib.h>

/* "S1, S2 and S3" of the circuit that have a lead */
static char *
join_sockets (const LrStudy *study,
              const LrItem  *circuit,
              guint         *n)
{
  g_autoptr (GPtrArray) tags = g_ptr_array_new ();
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < study->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (study->setup->items, i);

      if (item->kind == LR_ITEM_SOCKET && g_strcmp0 (item->socket.circuit, circuit->id) == 0
          && lr_study_leads_in (study, item->id, NULL) > 0)
        g_ptr_array_add (tags, item->tag[0] != '\0' ? item->tag : item->id);
    }
  for (guint i = 0; i < tags->len; i++)
    g_string_append_printf (text, "%s%s", i == 0 ? "" : i + 1 < tags->len ? ", " : _(" and "), (const char *) g_ptr_array_index (tags, i));
  *n = tags->len;

  return g_string_free (text, FALSE);
}

static void
ask_for_circuit (GPtrArray     *asks,
                 const LrStudy *study,
                 const LrItem  *circuit)
{
  g_autofree char *sockets = NULL, *text = NULL, *reason = NULL;
  LrCircuitReading reading;
  guint n = 0;

  if (!lr_study_circuit (study, circuit, &reading))
    return;
  sockets = join_sockets (study, circuit, &n);
  if (n == 0)
    return;

  /* Translators: sockets, their circuit */
  text = g_strdup_printf (ngettext ("Socket %s, and the rest of circuit %s, for us alone",
                                    "Sockets %s, and the rest of circuit %s, for us alone", n), sockets, circuit->tag);
  reason = g_strdup_printf (_("our lamps take up to %.0f W of its %.0f W; more may trip the breaker"), reading.full_w - reading.known_w,
                            reading.rated_w);
  lr_asks_add (asks, circuit, text, reason, study->plan->job->time_in, study->plan->job->time_wrap);
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
  g_autofree char *name = person->item->name[0] != '\0' ? g_strdup (person->item->name) : lr_item_title (person->item), *text = NULL, *reason = NULL;

  text = g_strdup_printf (_("A way %s wide, without steps, from the entrance to the room"), width);
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
  ask_for_breaker (asks, study);
  ask_for_exits (asks, study);
}
