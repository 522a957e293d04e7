/* summary_power.c - what follows from the settings of leads, sockets and stands, in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "summary_power.h"

#include "power_readings.h"

#include <glib/gi18n-lib.h>

/**
 * lr_summary_lead:
 * @study: a study
 * @lead: a lead
 * @units: how lengths are written
 *
 * Returns: (transfer full): what it needs of its length, and what it loses
 */
char *
lr_summary_lead (const LrStudy *study,
                 const LrItem  *lead,
                 LrUnits        units)
{
  g_autofree char *needed = NULL, *bought = NULL, *path = NULL;
  LrLeadPower reading;
  GString *text;

  if (!lr_study_lead (study, lead, &reading))
    return g_strdup ("");

  text = g_string_new (NULL);
  needed = lr_length_format (reading.needed_m, units);
  bought = lr_length_format (lead->lead.length_m, units);
  path = lr_length_format (reading.path_m, units);
  g_string_append_printf (text, _("It takes %s of its %s: %s along the floor, then down from the socket and a loop at the stand."),
                          needed, bought, path);
  if (isfinite (reading.drop_share))
    {
      g_string_append_c (text, '\n');
      /* Translators: watts, amperes, volts, per cent of the volts */
      g_string_append_printf (text, _("It carries %.0f W, %.1f A, and loses up to %.1f V, %.1f %%."), reading.power_w,
                              reading.current_a, reading.drop_v, 100.0 * reading.drop_share);
    }

  return g_string_free (text, FALSE);
}

/**
 * lr_summary_feed:
 * @study: a study
 * @load: a thing that may take power
 *
 * Returns: (transfer full): where it is plugged in, and what runs there; "" if nothing feeds it
 */
char *
lr_summary_feed (const LrStudy *study,
                 const LrItem  *load)
{
  const LrItem *lead = lr_study_lead_of (study, load->id);
  LrLeadPower reading;

  if (lead == NULL || !lr_study_lead (study, lead, &reading) || reading.socket == NULL)
    return g_strdup ("");
  if (reading.circuit == NULL)
    /* Translators: a socket's tag */
    return g_strdup_printf (_("Plugged into %s, whose circuit is not told."), reading.socket->item->tag);
  if (!isfinite (reading.current_a))
    /* Translators: tags of a socket and of its circuit */
    return g_strdup_printf (_("Plugged into %s, on %s."), reading.socket->item->tag, reading.circuit->tag);
  /* Translators: tags of a socket and of its circuit, amperes at full */
  return g_strdup_printf (_("Plugged into %s, on %s: up to %.1f A."), reading.socket->item->tag, reading.circuit->tag, reading.current_a);
}

/**
 * lr_summary_socket:
 * @study: a study
 * @socket: a socket
 *
 * Returns: (transfer full): what hangs on it and on its circuit
 */
char *
lr_summary_socket (const LrStudy *study,
                   const LrItem  *socket)
{
  guint n_leads = lr_study_leads_in (study, socket->id, NULL);
  const LrPlaced *circuit = lr_study_find_placed (study, socket->socket.circuit);
  GString *text = g_string_new (NULL);
  LrCircuitReading reading;
  double load_w = 0.0;

  lr_study_socket_load_w (study, socket, &load_w);
  g_string_append_printf (text, ngettext ("%u of %d outlet taken, %.0f W at full.", "%u of %d outlets taken, %.0f W at full.",
                                          (gulong) socket->socket.outlets),
                          n_leads, socket->socket.outlets, load_w);
  if (circuit != NULL && lr_study_circuit (study, circuit->item, &reading))
    {
      g_string_append_c (text, '\n');
      /* Translators: a circuit's tag, watts, amperes, per cent, rated amperes, per cent */
      g_string_append_printf (text, _("%s: %.0f W, as dimmed %.0f W; %.1f A, %.0f %% of %.0f A; the limit for hours is %.0f %%."), circuit->item->tag,
                              reading.full_w, reading.dimmed_w, reading.full_a, 100.0 * reading.full_a / reading.rated_a, reading.rated_a,
                              100.0 * reading.allowed_share);
    }

  return g_string_free (text, FALSE);
}

/**
 * lr_summary_stand:
 * @study: a study
 * @placed: something on a stand
 *
 * Returns: (transfer full): what tips it, and the bag that settles it; "" for what has no stand
 */
char *
lr_summary_stand (const LrStudy  *study,
                  const LrPlaced *placed)
{
  GString *text = g_string_new (NULL);
  LrStandReading stand;

  if (!lr_study_stand (study, placed, &stand))
    return g_string_free (text, FALSE);

  if (!stand.is_boom)
    g_string_append_printf (text, _("A nudge of %.0f N at its head tips its stand."), floor (stand.push_n));
  else if (isfinite (stand.gap.factor))
    g_string_append_printf (text, _("What holds its stand is %.1f times what tips it, the arm over a gap between two legs."), stand.gap.factor);
  if (stand.wanted_bag_kg > stand.bag_kg)
    g_string_append_printf (text, _(" A sandbag of %.0f kg brings it over the limit."), lr_stand_whole_bag_kg (stand.wanted_bag_kg));
  if (stand.usual_kg > 0.0)
    g_string_append_printf (text, _(" The stand is taken as %.0f kg: weigh yours."), stand.usual_kg);

  return g_string_free (text, FALSE);
}
