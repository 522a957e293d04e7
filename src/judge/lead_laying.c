/* lead_laying.c - which socket suits a lamp, and laying a lead from there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lead_laying.h"

#include "power.h"

#include <glib/gi18n-lib.h>

#define SAME_VOLTS 0.1 /* IEC 60038: mains keep within 10 % */
#define MAX_TRIED 32 /* sockets from which there is no way: the load is shut in */

/**
 * lr_lead_find_way:
 * @study: a study
 * @lead: a lead of its set-up
 * @way: (out): the way from its socket to what it feeds
 *
 * Returns: %FALSE if it lacks a socket or a load, or there is no way
 */
gboolean
lr_lead_find_way (const LrStudy *study,
                  const LrItem  *lead,
                  LrLeadWay     *way)
{
  const LrPlaced *load = lr_study_find_placed (study, lead->lead.feeds);

  way->socket = lr_study_find_placed (study, lead->lead.socket);
  if (load == NULL || way->socket == NULL || !lr_study_lead_way (study, way->socket, load, way->path_m, &way->n_path))
    return FALSE;

  way->needed_m = lr_study_needed_m (study, way->socket, way->path_m, way->n_path);
  return TRUE;
}

static double
current_of (const LrPlaced *load,
            const LrItem   *circuit)
{
  double current_a = 0.0;

  lr_power_current_a (lr_study_power_w (load->item, FALSE), circuit->circuit.volts_v, lr_study_power_factor (load->item), &current_a);
  return current_a;
}

/* A lamp that runs at one voltage is not plugged in at another */
static gboolean
has_its_volts (const LrStudy *study,
               const LrItem  *lead,
               const LrItem  *circuit)
{
  LrLeadPower reading;

  return !lr_study_lead (study, lead, &reading) || reading.circuit == NULL
         || fabs (circuit->circuit.volts_v - reading.circuit->circuit.volts_v) <= SAME_VOLTS * reading.circuit->circuit.volts_v;
}

/* Room for one more lead, and on its circuit for what that feeds */
static gboolean
suits (const LrStudy     *study,
       const LrPlaced    *socket,
       const LrPlaced    *load,
       const LrItem      *but,
       const LrReplugged *replugged)
{
  const LrPlaced *circuit = lr_study_find_placed (study, socket->item->socket.circuit);
  guint n_taken = lr_study_leads_in (study, socket->item->id, but);
  LrCircuitReading reading;
  double more_a;

  for (guint i = 0; replugged != NULL && i < replugged->n; i++)
    n_taken += g_str_equal (replugged->socket[i], socket->item->id);
  if (n_taken >= (guint) socket->item->socket.outlets)
    return FALSE;
  if (circuit == NULL || !lr_study_circuit (study, circuit->item, &reading))
    return TRUE;
  if (but != NULL && !has_its_volts (study, but, circuit->item))
    return FALSE;

  more_a = current_of (load, circuit->item);
  if (but != NULL)
    {
      const LrPlaced *now = lr_study_find_placed (study, but->lead.socket);

      if (now != NULL && g_strcmp0 (now->item->socket.circuit, circuit->item->id) == 0)
        more_a = 0.0;
    }
  for (guint i = 0; replugged != NULL && i < replugged->n; i++)
    {
      const LrPlaced *other = lr_study_find_placed (study, replugged->socket[i]);

      if (other != NULL && g_strcmp0 (other->item->socket.circuit, circuit->item->id) == 0)
        more_a += replugged->current_a[i];
    }
  return reading.full_a + more_a <= reading.allowed_share * reading.rated_a;
}

/* A socket, and the least length of lead from there */
typedef struct
{
  const LrPlaced *socket;
  double          least_m;
} Candidate;

static int
compare_candidates (gconstpointer a,
                    gconstpointer b)
{
  double a_m = ((const Candidate *) a)->least_m, b_m = ((const Candidate *) b)->least_m;

  return (a_m > b_m) - (a_m < b_m);
}

/* (transfer full): sockets, those that may take the shortest lead first */
static GArray *
list_sockets (const LrStudy     *study,
              const LrLeadFloor *floor,
              const LrItem      *not_on)
{
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (guint i = 0; i < study->placed->len; i++)
    {
      Candidate candidate = { .socket = &g_array_index (study->placed, LrPlaced, i) };

      if (candidate.socket->item->kind != LR_ITEM_SOCKET
          || (not_on != NULL && g_strcmp0 (candidate.socket->item->socket.circuit, not_on->id) == 0))
        continue;
      candidate.least_m = lr_lead_floor_least_m (floor, candidate.socket);
      if (isfinite (candidate.least_m))
        g_array_append_val (candidates, candidate);
    }

  g_array_sort (candidates, compare_candidates);
  return candidates;
}

/**
 * lr_lead_find_socket:
 * @study: a study
 * @load: what is to be fed
 * @but: (nullable): the lead that would feed it, as it lies now
 * @not_on: (nullable): a circuit to be left
 * @replugged: (nullable): what goes to other sockets besides
 * @way: (out): from the socket that takes the shortest lead
 *
 * Looks from the nearest on until even a straight lead would be longer than the best that was found, or from so many there was no way.
 *
 * Returns: whether there is one
 */
gboolean
lr_lead_find_socket (const LrStudy     *study,
                     const LrPlaced    *load,
                     const LrItem      *but,
                     const LrItem      *not_on,
                     const LrReplugged *replugged,
                     LrLeadWay         *way)
{
  g_autoptr (LrLeadFloor) floor = lr_lead_floor_new (study, load);
  g_autoptr (GArray) candidates = list_sockets (study, floor, not_on);
  gboolean is_found = FALSE;
  guint n_tried = 0;

  for (guint i = 0; i < candidates->len; i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);
      LrLeadWay try = { .socket = candidate->socket };

      if (is_found ? candidate->least_m >= way->needed_m : n_tried >= MAX_TRIED)
        break;
      if (!suits (study, try.socket, load, but, replugged))
        continue;
      n_tried++;
      if (!lr_lead_floor_way (floor, try.socket, try.path_m, &try.n_path))
        continue;
      try.needed_m = lr_study_needed_m (study, try.socket, try.path_m, try.n_path);
      if (!is_found || try.needed_m < way->needed_m)
        *way = try;
      is_found = TRUE;
    }

  return is_found;
}

/**
 * lr_lead_find_in_kit:
 * @plan: a plan
 * @needed_m: length that is needed [m]
 * @core_mm2: least cross-section [mm²]
 *
 * Returns: (transfer none) (nullable): the shortest that is left in the van
 */
const LrKitEntry *
lr_lead_find_in_kit (const LrPlan *plan,
                     double        needed_m,
                     double        core_mm2)
{
  const LrKitEntry *best = NULL;

  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = plan->kit->pdata[i];

      if (entry->item->kind == LR_ITEM_LEAD && entry->item->lead.length_m >= needed_m && entry->item->lead.core_mm2 >= core_mm2
          && lr_plan_kit_left (plan, entry) > 0 && (best == NULL || entry->item->lead.length_m < best->item->lead.length_m))
        best = entry;
    }

  return best;
}

/**
 * lr_lead_route:
 * @study: a study
 * @id: of a lead
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, in which the lead goes along the walls from its socket to what it feeds
 */
LrPlan *
lr_lead_route (const LrStudy  *study,
               const char     *id,
               GError        **error)
{
  const LrItem *lead = lr_plan_find (study->plan, id);
  LrLeadWay way;
  LrLeadLaying laying = { NULL };

  if (lead == NULL || lead->kind != LR_ITEM_LEAD || !lr_lead_find_way (study, lead, &way))
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED,
                           _("There is no way for it: it needs a socket, something that it feeds, and a gap that leads there."));
      return NULL;
    }

  laying.path_m = way.path_m;
  laying.n_path = way.n_path;
  return lr_plan_lay_lead (study->plan, id, &laying, error);
}

/**
 * lr_lead_join:
 * @plan: a plan
 * @id: of a lead
 * @key: "socket" or "feeds"
 * @other: id of what it is joined to, or ""
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, in which it is joined to that, and laid anew where there is a way
 */
LrPlan *
lr_lead_join (const LrPlan *plan,
              const char   *id,
              const char   *key,
              const char   *other,
              GError      **error)
{
  g_autoptr (LrPlan) joined = lr_plan_change_text (plan, id, key, other, error);
  g_autoptr (LrStudy) study = joined != NULL ? lr_study_new_trial (joined) : NULL;
  LrLeadWay way;

  if (joined == NULL || !lr_lead_find_way (study, lr_plan_find (joined, id), &way))
    return g_steal_pointer (&joined);

  return lr_lead_route (study, id, error);
}

/* What lacks a lead: the nearest to where one was dropped, be it a camera that nobody told the power of; else what takes most */
static const LrPlaced *
find_hungry (const LrStudy *study,
             const LrVec2  *at_m)
{
  const LrPlaced *best = NULL;
  double best_score = -HUGE_VAL;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      double power_w = lr_study_power_w (placed->item, FALSE);
      double score = at_m != NULL ? -lr_vec2_distance (placed->at_m, *at_m) : power_w;

      if ((power_w <= 0.0 && (at_m == NULL || placed->item->kind != LR_ITEM_CAMERA)) || lr_study_lead_of (study, placed->item->id) != NULL || !(score > best_score))
        continue;
      best = placed;
      best_score = score;
    }

  return best;
}

/**
 * lr_lead_lay_new:
 * @study: of the plan before the lead was added
 * @plan: (transfer full): with the lead
 * @id: of the lead
 * @at_m: (nullable): where it was dropped [m]
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with the lead laid, or @plan where nothing lacks one
 */
LrPlan *
lr_lead_lay_new (const LrStudy  *study,
                 LrPlan         *plan,
                 const char     *id,
                 const LrVec2   *at_m,
                 GError        **error)
{
  const LrPlaced *load = find_hungry (study, at_m);
  LrLeadWay way;
  LrLeadLaying laying = { NULL };
  LrPlan *next;

  if (load == NULL || !lr_lead_find_socket (study, load, NULL, NULL, NULL, &way))
    return plan;

  laying.socket = way.socket->item->id;
  laying.feeds = load->item->id;
  laying.path_m = way.path_m;
  laying.n_path = way.n_path;
  next = lr_plan_lay_lead (plan, id, &laying, error);
  lr_plan_unref (plan);
  return next;
}
