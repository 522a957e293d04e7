/* judge_leads.c - leads: to each lamp, long enough, at both their ends, in nobody's way, thick enough, unwound
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"
#include "lead_laying.h"
#include "power.h"

#include <glib/gi18n-lib.h>

#define ROUNDING_M 0.001
#define MAX_UNFED 24          /* lamps for which a lead is looked for at once: the others' turn comes when those have theirs */
#define CORE_STEP_MM2 0.25   /* sizes of leads lie no nearer */
#define THICKEST_MM2 4.0
#define REEL_AT_MOST_A 16.0  /* IEC 61242 covers reels up to here, from memory, whatever breaker they hang on */

/**
 * lr_say_lead:
 * @judge: a judge
 * @lead: a lead
 *
 * Returns: (transfer none): what it feeds, "L1", else its own title
 */
const char *
lr_say_lead (LrJudge      *judge,
             const LrItem *lead)
{
  const LrPlaced *load = lr_study_find_placed (judge->study, lead->lead.feeds);

  return load != NULL ? lr_say_name (judge, load) : lr_say_title (judge, lr_study_find_placed (judge->study, lead->id));
}

/**
 * lr_say_socket:
 * @judge: a judge
 * @socket: a socket
 *
 * Returns: (transfer none): its tag: "S3", else its title
 */
const char *
lr_say_socket (LrJudge        *judge,
               const LrPlaced *socket)
{
  g_autofree char *tag = g_markup_escape_text (socket->item->tag, -1);

  return tag[0] != '\0' ? g_string_chunk_insert (judge->words, tag) : lr_say_title (judge, socket);
}

static void
mark_path (LrRemark     *remark,
           const LrItem *lead,
           const char   *figure)
{
  for (gsize i = 0; i + 1 < lead->n_path; i++)
    lr_remark_mark_line (remark, lead->path_m[i], lead->path_m[i + 1], i == 0 ? figure : NULL);
}

static const LrPlaced *
placed_of (const LrJudge     *judge,
           const LrLeadPower *lead)
{
  return lr_study_find_placed (judge->study, lead->item->id);
}

/* Along the walls from where it is plugged in, with a longer lead of the van if need be; FALSE: there is no such way */
static gboolean
offer_way (LrJudge           *judge,
           LrRemark          *remark,
           const LrLeadPower *lead)
{
  LrLeadLaying laying = { NULL };
  const LrKitEntry *entry = NULL;
  LrRemedy *remedy;
  LrLeadWay way;

  if (!lr_judge_may_offer (judge, remark) || !lr_lead_find_way (judge->study, lead->item, &way))
    return FALSE;
  if (way.needed_m > lead->item->lead.length_m
      && (entry = lr_lead_find_in_kit (judge->study->plan, way.needed_m, lead->item->lead.core_mm2)) == NULL)
    return FALSE;

  laying = (LrLeadLaying) { .kit = entry != NULL ? entry->item->id : NULL, .path_m = way.path_m, .n_path = way.n_path };
  remedy = lr_remedy_new ();
  lr_remedy_lay (remedy, lead->item, &laying);
  if (entry != NULL)
    lr_remedy_say (remedy, lr_say_length (judge, way.needed_m), _("Lay one of <b>%s</b> as is drawn: it takes <b>%s</b>."),
                   lr_say_length (judge, entry->item->lead.length_m), lr_say_length (judge, way.needed_m));
  else
    lr_remedy_say (remedy, lr_say_length (judge, way.needed_m), _("Lay it as is drawn: it takes <b>%s</b>."),
                   lr_say_length (judge, way.needed_m));
  lr_judge_offer (judge, remark, remedy);
  return TRUE;
}

/* The same path with a longer lead */
static void
offer_longer (LrJudge           *judge,
              LrRemark          *remark,
              const LrLeadPower *lead)
{
  const LrKitEntry *entry = lr_lead_find_in_kit (judge->study->plan, lead->needed_m, lead->item->lead.core_mm2);
  LrRemedy *remedy;

  if (entry == NULL)
    return;

  remedy = lr_remedy_new ();
  lr_remedy_lay (remedy, lead->item, &(LrLeadLaying) { .kit = entry->item->id });
  lr_remedy_say (remedy, lr_say_length (judge, entry->item->lead.length_m), _("Take a lead of <b>%s</b>."),
                 lr_say_length (judge, entry->item->lead.length_m));
  lr_judge_offer (judge, remark, remedy);
}

static void
offer_other_socket (LrJudge           *judge,
                    LrRemark          *remark,
                    const LrLeadPower *lead)
{
  LrRemedy *remedy;
  LrLeadWay way;

  if (lead->load == NULL || !lr_judge_may_offer (judge, remark)
      || !lr_lead_find_socket (judge->study, lead->load, lead->item, NULL, NULL, &way)
      || way.needed_m > lead->item->lead.length_m)
    return;

  remedy = lr_remedy_new ();
  lr_remedy_lay (remedy, lead->item, &(LrLeadLaying) { .socket = way.socket->item->id, .path_m = way.path_m, .n_path = way.n_path });
  lr_remedy_say (remedy, lr_say_length (judge, way.needed_m), _("Plug it into <b>%s</b>: it takes <b>%s</b>."),
                 lr_say_socket (judge, way.socket), lr_say_length (judge, way.needed_m));
  lr_judge_offer (judge, remark, remedy);
}

static gboolean
judge_length (LrJudge           *judge,
              const LrLeadPower *lead)
{
  double missing_m = lead->needed_m - lead->item->lead.length_m;
  double slack_m = judge->limits[LR_LIMIT_LEAD_SLACK];
  LrRemark *remark;

  if (lead->item->n_path < 2 || missing_m <= ROUNDING_M)
    return FALSE;
  remark = lr_judge_add (judge, LR_CHECK_LEAD_LENGTH, missing_m > slack_m ? LR_GRADE_FIX : LR_GRADE_MIND, placed_of (judge, lead), NULL);
  if (remark == NULL)
    return TRUE;

  remark->value = lead->needed_m;
  remark->limit = lead->item->lead.length_m;
  mark_path (remark, lead->item, lr_say_length (judge, lead->needed_m));
  lr_remark_say (remark, missing_m > slack_m ? _("The lead to %s takes <b>%s</b>, and is <b>%s</b> long.")
                                             : _("The lead to %s takes <b>%s</b> with a loop at the stand, and is <b>%s</b> long."),
                 lr_say_lead (judge, lead->item), lr_say_length (judge, lead->needed_m), lr_say_length (judge, lead->item->lead.length_m));
  offer_way (judge, remark, lead);
  offer_other_socket (judge, remark, lead);
  offer_longer (judge, remark, lead);
  return TRUE;
}

static void
judge_ends (LrJudge           *judge,
            const LrLeadPower *lead)
{
  double limit_m = judge->limits[LR_LIMIT_LEAD_OFF];
  gboolean is_plug = lead->plug_off_m > limit_m, is_load = lead->load_off_m > limit_m;
  const LrPlaced *off = is_load ? lead->load : lead->socket;
  double off_m = is_load ? lead->load_off_m : lead->plug_off_m;
  LrRemark *remark;

  if (!is_plug && !is_load)
    return;
  remark = lr_judge_add (judge, LR_CHECK_LEAD_ENDS, LR_GRADE_MIND, placed_of (judge, lead), NULL);
  if (remark == NULL)
    return;

  remark->value = off_m;
  remark->limit = limit_m;
  lr_remark_mark_distance (remark, lead->item->path_m[is_load ? lead->item->n_path - 1 : 0], off->at_m, lr_say_length (judge, off_m));
  lr_remark_say (remark, is_load ? _("The lead to %s ends <b>%s</b> from %s; <b>%s</b> is the limit.")
                                 : _("The lead to %s begins <b>%s</b> from %s; <b>%s</b> is the limit."),
                 lr_say_lead (judge, lead->item), lr_say_length (judge, off_m), lr_say_title (judge, off), lr_say_length (judge, limit_m));
  offer_way (judge, remark, lead);
}

static void
judge_way (LrJudge           *judge,
           const LrLeadPower *lead)
{
  LrVec2 at_m;
  const LrPlaced *across = lr_study_lead_across (judge->study, lead->item, &at_m);
  LrRemark *remark;
  gboolean is_exit;

  if (across == NULL)
    return;
  is_exit = across->item->kind == LR_ITEM_DOOR && across->item->door.is_exit;
  remark = lr_judge_add (judge, LR_CHECK_LEAD_WAY, is_exit ? LR_GRADE_FIX : LR_GRADE_MIND, placed_of (judge, lead), across);
  if (remark == NULL)
    return;

  remark->value = lead->path_m;
  mark_path (remark, lead->item, NULL);
  lr_remark_mark_point (remark, at_m, NULL);
  if (across->item->kind == LR_ITEM_PERSON)
    lr_remark_say (remark, _("The lead to %s, <b>%s</b> on the floor, lies where %s sits or stands."), lr_say_lead (judge, lead->item),
                   lr_say_length (judge, lead->path_m), lr_say_name (judge, across));
  else
    lr_remark_say (remark, is_exit ? _("The lead to %s, <b>%s</b> on the floor, crosses a way out (%s): keep it clear, as the local fire code says.")
                                   : _("The lead to %s, <b>%s</b> on the floor, lies before %s: tape or mat it down over the full width."),
                   lr_say_lead (judge, lead->item), lr_say_length (judge, lead->path_m), lr_say_title (judge, across));
  offer_way (judge, remark, lead);
  offer_other_socket (judge, remark, lead);
}

/* What a lead would lose of the volts in the place of another */
static double
drop_with (const LrLeadPower *lead,
           const LrLead      *other)
{
  double ohm_km = NAN, drop_v = NAN;

  if (!lr_power_resistance_ohm_km (other->core_mm2, &ohm_km)
      || !lr_power_drop_v (other->length_m, lead->current_a, ohm_km, LR_POWER_WARM_C, &drop_v))
    return HUGE_VAL;

  return drop_v / lead->circuit->circuit.volts_v;
}

/* The shortest in the van that reaches, is as thick, and loses no more than the limit */
static const LrKitEntry *
find_less_drop (const LrPlan      *plan,
                const LrLeadPower *lead,
                double             limit)
{
  const LrLead *now = &lead->item->lead;
  const LrKitEntry *best = NULL;

  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = plan->kit->pdata[i];
      const LrLead *other = &entry->item->lead;

      if (entry->item->kind != LR_ITEM_LEAD || other->length_m < lead->needed_m || other->core_mm2 < now->core_mm2
          || drop_with (lead, other) > limit || lr_plan_kit_left (plan, entry) <= 0)
        continue;
      if (best == NULL || other->length_m < best->item->lead.length_m)
        best = entry;
    }

  return best;
}

static void
judge_drop (LrJudge           *judge,
            const LrLeadPower *lead)
{
  double limit = judge->limits[LR_LIMIT_VOLTAGE_DROP];
  const LrKitEntry *entry;
  LrRemark *remark;

  if (!(lead->drop_share > limit))
    return;
  remark = lr_judge_add (judge, LR_CHECK_VOLTAGE_DROP, LR_GRADE_MIND, placed_of (judge, lead), NULL);
  if (remark == NULL)
    return;

  remark->value = lead->drop_share;
  remark->limit = limit;
  mark_path (remark, lead->item, NULL);
  lr_remark_say (remark, _("The lead to %s loses up to <b>%s\u00a0V</b>, <b>%s</b>; advice is <b>%s</b>."), lr_say_lead (judge, lead->item),
                 lr_say_number (judge, lead->drop_v, 1), lr_say_share_off (judge, lead->drop_share, limit), lr_say_share (judge, limit));
  entry = find_less_drop (judge->study->plan, lead, limit);
  if (entry != NULL)
    {
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_lay (remedy, lead->item, &(LrLeadLaying) { .kit = entry->item->id });
      lr_remedy_say (remedy, lr_say_length (judge, entry->item->lead.length_m), _("Take the lead of <b>%s</b> and <b>%s\u00a0mm²</b>."),
                     lr_say_length (judge, entry->item->lead.length_m), lr_say_number (judge, entry->item->lead.core_mm2, 1));
      lr_judge_offer (judge, remark, remedy);
    }
}

/* The breaker protects the house's wiring, not a thin lead */
static void
judge_current (LrJudge           *judge,
               const LrLeadPower *lead)
{
  double bears_a = NAN, thicker_a, least_mm2 = lead->item->lead.core_mm2;
  const LrKitEntry *entry = NULL;
  LrRemark *remark;
  LrRemedy *remedy;

  if (!isfinite (lead->current_a) || !lr_power_bears_a (lead->item->lead.core_mm2, &bears_a) || lead->current_a <= bears_a)
    return;
  remark = lr_judge_add (judge, LR_CHECK_LEAD_CURRENT, LR_GRADE_FIX, placed_of (judge, lead), NULL);
  if (remark == NULL)
    return;

  remark->value = lead->current_a;
  remark->limit = bears_a;
  mark_path (remark, lead->item, NULL);
  lr_remark_say (remark, _("The lead to %s carries <b>%s</b>; one of <b>%s\u00a0mm²</b> bears <b>%s</b>: it may overheat before any breaker trips."),
                 lr_say_lead (judge, lead->item), lr_say_current (judge, lead->current_a), lr_say_number (judge, lead->item->lead.core_mm2, 2),
                 lr_say_current (judge, bears_a));
  for (thicker_a = bears_a; thicker_a < lead->current_a && least_mm2 < THICKEST_MM2; least_mm2 += CORE_STEP_MM2)
    lr_power_bears_a (least_mm2 + CORE_STEP_MM2, &thicker_a);
  if (thicker_a >= lead->current_a)
    entry = lr_lead_find_in_kit (judge->study->plan, lead->needed_m, least_mm2);
  if (entry == NULL)
    return;
  remedy = lr_remedy_new ();
  lr_remedy_lay (remedy, lead->item, &(LrLeadLaying) { .kit = entry->item->id });
  lr_remedy_say (remedy, lr_say_length (judge, entry->item->lead.length_m), _("Take the lead of <b>%s</b> and <b>%s\u00a0mm²</b>."),
                 lr_say_length (judge, entry->item->lead.length_m), lr_say_number (judge, entry->item->lead.core_mm2, 1));
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_reel (LrJudge           *judge,
            const LrLeadPower *lead)
{
  double limit_w = lead->item->lead.wound_limit_w;
  LrRemedy *remedy;
  LrRemark *remark;

  if (!lead->item->lead.is_wound || lead->load == NULL)
    return;
  if (limit_w <= 0.0 && lead->circuit != NULL)
    limit_w = judge->limits[LR_LIMIT_WOUND_SHARE] * lead->circuit->circuit.volts_v * fmin (lead->circuit->circuit.amps_a, REEL_AT_MOST_A);
  remark = lr_judge_add (judge, LR_CHECK_REEL, limit_w > 0.0 && lead->power_w > limit_w ? LR_GRADE_FIX : LR_GRADE_MIND,
                         placed_of (judge, lead), NULL);
  if (remark == NULL)
    return;

  remark->value = lead->power_w;
  mark_path (remark, lead->item, NULL);
  if (limit_w > 0.0)
    {
      remark->limit = limit_w;
      lr_remark_say (remark, _("The reel to %s carries <b>%s</b>, still wound up, and gets hot; the limit wound up is <b>%s</b>."),
                     lr_say_lead (judge, lead->item), lr_say_power (judge, lead->power_w), lr_say_power (judge, limit_w));
    }
  else
    lr_remark_say (remark, _("The reel to %s carries <b>%s</b>, still wound up, and gets hot."), lr_say_lead (judge, lead->item),
                   lr_say_power (judge, lead->power_w));
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, lead->item, "is-wound", 0.0);
  lr_remedy_say (remedy, lr_say_length (judge, lead->item->lead.length_m), _("Unwind all its <b>%s</b>."),
                 lr_say_length (judge, lead->item->lead.length_m));
  lr_judge_keep (judge, remark, remedy);
}

/* A lead of the van along the walls, from the socket that suits */
static void
offer_lead (LrJudge        *judge,
            LrRemark       *remark,
            const LrPlaced *lamp)
{
  const LrKitEntry *entry;
  LrRemedy *remedy;
  LrLeadWay way;

  if (lr_lead_find_in_kit (judge->study->plan, 0.0, 0.0) == NULL || !lr_lead_find_socket (judge->study, lamp, NULL, NULL, NULL, &way)
      || (entry = lr_lead_find_in_kit (judge->study->plan, way.needed_m, 0.0)) == NULL)
    return;

  remedy = lr_remedy_new ();
  lr_remedy_lay (remedy, NULL, &(LrLeadLaying) { .socket = way.socket->item->id, .feeds = lamp->item->id, .kit = entry->item->id,
                                                 .path_m = way.path_m, .n_path = way.n_path });
  lr_remedy_say (remedy, lr_say_length (judge, way.needed_m), _("Lay one of <b>%s</b> from %s: it takes <b>%s</b>."),
                 lr_say_length (judge, entry->item->lead.length_m), lr_say_socket (judge, way.socket), lr_say_length (judge, way.needed_m));
  /* without a trial: that its socket's circuit is not known is no reason to leave it dark */
  lr_judge_keep (judge, remark, remedy);
}

/* Lamps that nothing feeds, once the room has a socket. The plan does not know of batteries, so it is no Fix */
static void
judge_unfed (LrJudge *judge)
{
  const GArray *placed = judge->study->placed;
  gboolean has_socket = FALSE;
  guint n_offered = 0;

  for (guint i = 0; i < placed->len && !has_socket; i++)
    has_socket = g_array_index (placed, LrPlaced, i).item->kind == LR_ITEM_SOCKET;

  for (guint i = 0; i < placed->len && has_socket; i++)
    {
      const LrPlaced *lamp = &g_array_index (placed, LrPlaced, i);
      LrRemark *remark;

      if (lamp->item->kind != LR_ITEM_LIGHT || !(lamp->item->light.power_w > 0.0)
          || lr_study_lead_of (judge->study, lamp->item->id) != NULL)
        continue;
      remark = lr_judge_add (judge, LR_CHECK_UNFED, LR_GRADE_MIND, lamp, NULL);
      if (remark == NULL)
        continue;

      remark->value = lamp->item->light.power_w;
      lr_remark_mark_point (remark, lamp->at_m, lr_say_power (judge, remark->value));
      lr_remark_say (remark, _("%s takes <b>%s</b>, and no lead goes to it: unless it runs from a battery, it needs one."),
                     lr_say_name (judge, lamp), lr_say_power (judge, remark->value));
      if (n_offered++ < MAX_UNFED)
        offer_lead (judge, remark, lamp);
    }
}

/**
 * lr_judge_leads:
 * @judge: a judge
 *
 * What has none, and each lead; that all reach is said once.
 */
void
lr_judge_leads (LrJudge *judge)
{
  const GPtrArray *items = judge->study->setup->items;
  guint n_leads = 0, n_short = 0, n_off = 0;
  LrLeadPower lead, tightest = { .item = NULL };
  LrRemark *remark;

  judge_unfed (judge);
  for (guint i = 0; i < items->len; i++)
    {
      if (!lr_study_lead (judge->study, g_ptr_array_index (items, i), &lead))
        continue;
      n_leads++;
      n_short += judge_length (judge, &lead);
      judge_ends (judge, &lead);
      judge_way (judge, &lead);
      judge_drop (judge, &lead);
      judge_current (judge, &lead);
      judge_reel (judge, &lead);
      n_off += lead.plug_off_m > judge->limits[LR_LIMIT_LEAD_OFF] || lead.load_off_m > judge->limits[LR_LIMIT_LEAD_OFF];
      if (lead.item->n_path > 1
          && (tightest.item == NULL || lead.item->lead.length_m - lead.needed_m < tightest.item->lead.length_m - tightest.needed_m))
        tightest = lead;
    }

  /* one that ends elsewhere is not known to reach */
  if (tightest.item == NULL || n_short > 0 || n_off > 0)
    return;
  remark = lr_judge_add (judge, LR_CHECK_LEAD_LENGTH, LR_GRADE_FINE, NULL, NULL);
  if (remark == NULL)
    return;
  lr_remark_about (remark, placed_of (judge, &tightest));
  mark_path (remark, tightest.item, NULL);
  lr_remark_say (remark, ngettext ("The lead, to %s, takes <b>%s</b> of its <b>%s</b>.",
                                   "All leads reach; the one to %s has least to spare: it takes <b>%s</b> of its <b>%s</b>.", n_leads),
                 lr_say_lead (judge, tightest.item), lr_say_length (judge, tightest.needed_m),
                 lr_say_length (judge, tightest.item->lead.length_m));
}
