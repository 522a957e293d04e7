/* lead_laying.h - which socket suits a lamp, and laying a lead from there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_edit.h"
#include "power_readings.h"

typedef struct
{
  const LrPlaced *socket;
  LrVec2 path_m[LR_LEAD_POINTS];
  gsize  n_path;
  double needed_m;
} LrLeadWay;

/* What is moved to other sockets beside what the study has; both arrays of the same length */
typedef struct
{
  const char *socket[8];
  double      current_a[8];
  guint       n;
} LrReplugged;

/* The way from its socket to what it feeds; FALSE: it lacks one of them, or there is none */
gboolean lr_lead_find_way    (const LrStudy *study, const LrItem *lead, LrLeadWay *way);
/* The socket with a free outlet, on a circuit that bears the load, that takes the shortest lead. @but (nullable): the lead that it would
 * be; @not_on (nullable): a circuit to be left */
gboolean lr_lead_find_socket (const LrStudy *study, const LrPlaced *load, const LrItem *but, const LrItem *not_on,
                              const LrReplugged *replugged, LrLeadWay *way);
/* The shortest lead in the van that is long enough and as thick as @core_mm2; (nullable) */
const LrKitEntry *lr_lead_find_in_kit (const LrPlan *plan, double needed_m, double core_mm2);
/* (transfer full): the lead goes from its socket to what it feeds along the walls */
LrPlan  *lr_lead_route       (const LrStudy *study, const char *id, GError **error);
/* (transfer full): the lead's "socket" or what it "feeds" is another, and it goes there along the walls if there is a way */
LrPlan  *lr_lead_join        (const LrPlan *plan, const char *id, const char *key, const char *other, GError **error);
/* (transfer full): a lead that was just added feeds a lamp that lacks one, the nearest to @at_m or the hungriest, from the socket that suits;
 * @plan as it is when there is none */
LrPlan  *lr_lead_lay_new     (const LrStudy *study, LrPlan *plan, const char *id, const LrVec2 *at_m, GError **error);
