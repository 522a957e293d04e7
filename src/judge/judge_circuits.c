/* judge_circuits.c - loads of circuits, and sockets that are full
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is over the limit as dimmed is a Fix; what only would be with every lamp at full is a Mind, for dimmers are turned up. None of
 * it says that a circuit bears it: the plan knows neither what else hangs there nor the state of the wiring.
 */

#include "config.h"

#include "judge_parts.h"
#include "lead_laying.h"
#include "power.h"

#include <glib/gi18n-lib.h>

#define MAX_SEARCHED 16 /* leads for which another socket is looked for */

static const LrItem *
item_at (const LrJudge *judge,
         guint          index)
{
  return g_ptr_array_index (judge->study->setup->items, index);
}

/* Leads on the circuit, those of the greatest loads first */
static GPtrArray *
leads_on (const LrJudge *judge,
          const LrItem  *circuit)
{
  GPtrArray *leads = g_ptr_array_new ();

  for (guint i = 0; i < judge->study->setup->items->len; i++)
    {
      LrLeadPower reading;
      guint at;

      if (!lr_study_lead (judge->study, item_at (judge, i), &reading) || reading.circuit != circuit || !(reading.power_w > 0.0))
        continue;
      for (at = 0; at < leads->len; at++)
        {
          LrLeadPower other;

          if (lr_study_lead (judge->study, g_ptr_array_index (leads, at), &other) && reading.power_w > other.power_w)
            break;
        }
      g_ptr_array_insert (leads, (int) at, (gpointer) item_at (judge, i));
    }

  return leads;
}

/* How many of the kit's entry the remedy takes already */
static int
n_taken (const LrRemedy   *remedy,
         const LrKitEntry *entry)
{
  int n = 0;

  for (guint i = 0; remedy->layings != NULL && i < remedy->layings->len; i++)
    n += g_strcmp0 (((const LrLaying *) g_ptr_array_index (remedy->layings, i))->kit, entry->item->id) == 0;
  return n;
}

/* Lays a lead from another socket, with a longer one of the van if its own is too short; FALSE: none is left that is long enough */
static gboolean
lay_from (LrJudge         *judge,
          LrRemedy        *remedy,
          const LrItem    *lead,
          const LrLeadWay *way)
{
  LrLeadLaying laying = { .socket = way->socket->item->id, .path_m = way->path_m, .n_path = way->n_path };

  if (way->needed_m > lead->lead.length_m)
    {
      const LrKitEntry *entry = lr_lead_find_in_kit (judge->study->plan, way->needed_m, lead->lead.core_mm2);

      if (entry == NULL || n_taken (remedy, entry) >= lr_plan_kit_left (judge->study->plan, entry))
        return FALSE;
      laying.kit = entry->item->id;
    }

  lr_remedy_lay (remedy, lead, &laying);
  return TRUE;
}

static void
say_replug (LrJudge           *judge,
            LrRemedy          *remedy,
            const LrItem      *lead,
            const LrLeadWay   *way,
            GString           *sentence)
{
  if (sentence->len > 0)
    g_string_append (sentence, "; ");
  /* Translators: what is plugged in, the socket, the length of lead it takes: "L1 into S3, with 7.3 m of lead" */
  g_string_append_printf (sentence, _("<b>%s</b> into <b>%s</b>, with <b>%s</b> of lead"), lr_say_lead (judge, lead),
                          lr_say_socket (judge, way->socket), lr_say_length (judge, way->needed_m));
  if (remedy->layings != NULL && ((LrLaying *) g_ptr_array_index (remedy->layings, remedy->layings->len - 1))->kit != NULL)
    g_string_append (sentence, _(", a longer one"));
}

/* Takes leads off the circuit until it bears the rest */
static void
offer_replug (LrJudge                *judge,
              LrRemark               *remark,
              const LrCircuitReading *reading)
{
  g_autoptr (GPtrArray) leads = leads_on (judge, reading->circuit);
  g_autoptr (GString) sentence = g_string_new (NULL);
  LrRemedy *remedy = lr_remedy_new ();
  LrReplugged replugged = { .n = 0 };
  double left_a = reading->full_a, needed_m = 0.0;

  for (guint i = 0; i < MIN (leads->len, MAX_SEARCHED) && left_a > reading->allowed_share * reading->rated_a
                    && replugged.n < G_N_ELEMENTS (replugged.socket); i++)
    {
      const LrItem *lead = g_ptr_array_index (leads, i);
      LrLeadPower power;
      LrLeadWay way;

      if (!lr_study_lead (judge->study, lead, &power)
          || !lr_lead_find_socket (judge->study, power.load, lead, reading->circuit, &replugged, &way)
          || !lay_from (judge, remedy, lead, &way))
        continue;
      say_replug (judge, remedy, lead, &way, sentence);
      replugged.socket[replugged.n] = way.socket->item->id;
      replugged.current_a[replugged.n++] = power.current_a;
      left_a -= power.current_a;
      needed_m = fmax (needed_m, way.needed_m);
    }

  if (left_a > reading->allowed_share * reading->rated_a || remedy->layings == NULL)
    {
      lr_remedy_free (remedy);
      return;
    }
  /* Translators: what goes into which socket */
  lr_remedy_say (remedy, lr_say_length (judge, needed_m), _("Plug %s."), sentence->str);
  lr_judge_offer (judge, remark, remedy);
}

static void
mark_sockets (const LrJudge *judge,
              LrRemark      *remark,
              const LrItem  *circuit)
{
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_SOCKET && g_strcmp0 (placed->item->socket.circuit, circuit->id) == 0 && lr_vec2_is_finite (placed->at_m))
        lr_remark_mark_point (remark, placed->at_m, NULL);
    }
}

/* What no circuit is told for is counted on none */
static void
judge_untold (LrJudge *judge)
{
  g_autoptr (GPtrArray) sockets = g_ptr_array_new ();
  g_autoptr (GString) names = g_string_new (NULL);
  double full_w;
  LrRemark *remark;

  if (!lr_study_untold_w (judge->study, sockets, &full_w))
    return;
  remark = lr_judge_add (judge, LR_CHECK_UNTOLD, LR_GRADE_MIND, NULL, NULL);
  if (remark == NULL)
    return;

  remark->value = full_w;
  for (guint i = 0; i < sockets->len; i++)
    {
      const LrPlaced *socket = g_ptr_array_index (sockets, i);

      lr_remark_about (remark, socket);
      lr_remark_mark_point (remark, socket->at_m, NULL);
      g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", lr_say_socket (judge, socket));
    }
  /* Translators: watts, sockets */
  lr_remark_say (remark, _("<b>%s</b> is plugged in where no circuit is told (%s): its load cannot be added up. Until it is known, take it as one "
                           "breaker with all the rest."),
                 lr_say_power (judge, full_w), names->str);
}

static void
judge_circuit (LrJudge        *judge,
               const LrPlaced *circuit)
{
  LrCircuitReading reading;
  LrGrade grade = LR_GRADE_FINE;
  LrRemark *remark;
  double allowed_a, usual_a, share;

  if (!lr_study_circuit (judge->study, circuit->item, &reading) || (reading.n_leads == 0 && !(reading.known_w > 0.0)))
    return;

  /* over the usual share it is told, whatever rule lifts it */
  allowed_a = reading.allowed_share * reading.rated_a;
  usual_a = fmin (allowed_a, judge->limits[LR_LIMIT_CIRCUIT_SHARE] * reading.rated_a);
  if (reading.full_a > usual_a)
    grade = reading.dimmed_a > allowed_a ? LR_GRADE_FIX : LR_GRADE_MIND;
  remark = lr_judge_add (judge, LR_CHECK_CIRCUIT, grade, circuit, NULL);
  if (remark == NULL)
    return;

  share = reading.full_a / reading.rated_a;
  remark->value = share;
  remark->limit = reading.allowed_share;
  mark_sockets (judge, remark, circuit->item);
  if (grade == LR_GRADE_FINE)
    lr_remark_say (remark, _("%s has <b>%s</b> on it at full, <b>%s</b>: <b>%s</b> of its <b>%s</b>; what else hangs there the house knows."),
                   lr_say_title (judge, circuit), lr_say_power (judge, reading.full_w), lr_say_current (judge, reading.full_a),
                   lr_say_share (judge, share), lr_say_current (judge, reading.rated_a));
  else
    lr_remark_say (remark, grade == LR_GRADE_FIX
                             ? _("%s has <b>%s</b> on it, <b>%s</b>: <b>%s</b> of its <b>%s</b>.")
                           : reading.dimmed_a > usual_a
                             ? _("%s has <b>%s</b> on it, <b>%s</b>: <b>%s</b> of its <b>%s</b>.")
                             : _("%s has up to <b>%s</b> on it when dimmers are turned up, <b>%s</b>: <b>%s</b> of its <b>%s</b>."),
                   lr_say_title (judge, circuit), lr_say_power (judge, reading.full_w), lr_say_current (judge, reading.full_a),
                   lr_say_share_off (judge, share, reading.allowed_share), lr_say_current (judge, reading.rated_a));
  if (reading.is_full)
    {
      g_autofree char *rule = g_markup_escape_text (judge->study->setup->room->full_load_rule, -1);

      /* Translators: a share, the name of a local rule as it was typed */
      lr_remark_say (remark, _("Up to <b>%s</b> by the rule that was named (“%s”): have whoever answers for the wiring confirm it."),
                     lr_say_share (judge, reading.allowed_share), rule);
    }
  else
    lr_remark_say (remark, _("For hours, no more than <b>%s</b>."), lr_say_share (judge, reading.allowed_share));
  if (grade == LR_GRADE_FINE)
    return;

  if (lr_judge_may_offer (judge, remark))
    offer_replug (judge, remark, &reading);
  if (remark->grade == LR_GRADE_FIX)
    lr_remark_say (remark, _("Dim, take a smaller lamp, or another circuit; local rules decide."));
}

static void
judge_outlets (LrJudge        *judge,
               const LrPlaced *socket)
{
  guint n_leads = lr_study_leads_in (judge->study, socket->item->id, NULL);
  int outlets = socket->item->socket.outlets;
  LrRemark *remark;

  if (n_leads <= (guint) outlets)
    return;
  remark = lr_judge_add (judge, LR_CHECK_OUTLETS, LR_GRADE_FIX, socket, NULL);
  if (remark == NULL)
    return;

  remark->value = n_leads;
  remark->limit = outlets;
  lr_remark_mark_point (remark, socket->at_m, lr_say_number (judge, n_leads, 0));
  lr_remark_say (remark, ngettext ("<b>%s</b> leads are in %s, which has <b>%s</b> outlet.",
                                   "<b>%s</b> leads are in %s, which has <b>%s</b> outlets.", (gulong) outlets),
                 lr_say_number (judge, n_leads, 0), lr_say_title (judge, socket), lr_say_number (judge, outlets, 0));
  for (guint i = 0, n = 0; i < judge->study->setup->items->len && n < MAX_SEARCHED && lr_judge_may_offer (judge, remark); i++)
    {
      const LrItem *lead = item_at (judge, i);
      g_autoptr (GString) sentence = g_string_new (NULL);
      const LrPlaced *load;
      LrRemedy *remedy;
      LrLeadWay way;

      if (lead->kind != LR_ITEM_LEAD || g_strcmp0 (lead->lead.socket, socket->item->id) != 0)
        continue;
      load = lr_study_find_placed (judge->study, lead->lead.feeds);
      if (load == NULL)
        continue;
      n++;
      if (!lr_lead_find_socket (judge->study, load, lead, NULL, NULL, &way) || way.socket == socket)
        continue;
      remedy = lr_remedy_new ();
      if (!lay_from (judge, remedy, lead, &way))
        {
          lr_remedy_free (remedy);
          continue;
        }
      say_replug (judge, remedy, lead, &way, sentence);
      lr_remedy_say (remedy, lr_say_length (judge, way.needed_m), _("Plug %s."), sentence->str);
      lr_judge_offer (judge, remark, remedy);
    }
}

/**
 * lr_judge_circuits:
 * @judge: a judge
 *
 * What hangs on each circuit, against its rating; how many leads are in each socket.
 */
void
lr_judge_circuits (LrJudge *judge)
{
  judge_untold (judge);
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_CIRCUIT)
        judge_circuit (judge, placed);
      else if (placed->item->kind == LR_ITEM_SOCKET)
        judge_outlets (judge, placed);
    }
}
