/* plan_edit_location.c - what is noted of the place where the shown set-up is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>

/**
 * lr_edit_begin_location:
 * @plan: a plan
 * @location: (out) (transfer none): the location of the next plan's shown set-up, which may be written
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_edit_begin_location (const LrPlan  *plan,
                        LrLocation   **location,
                        GError       **error)
{
  LrSetup *setup;
  LrPlan *next = lr_edit_begin (plan, &setup, error);

  if (next == NULL)
    return NULL;
  lr_location_unref (setup->location);
  *location = setup->location = lr_location_copy (lr_plan_get_setup (plan)->location);

  return next;
}

/**
 * lr_plan_set_location_text:
 * @plan: a plan
 * @key: a text of the location: "address"
 * @text: what it becomes
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_location_text (const LrPlan  *plan,
                           const char    *key,
                           const char    *text,
                           GError       **error)
{
  LrLocation *location;
  g_autoptr (LrPlan) next = lr_edit_begin_location (plan, &location, error);
  const LrProp *prop = lr_prop_table_find (lr_location_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL || !lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A place has no text “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_text (_(prop->label), text, error))
    return NULL;
  lr_prop_put_text (prop, location, text);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_location:
 * @plan: a plan
 * @key: a number of the location: "latitude-deg", "longitude-deg" or "mains-hz"
 * @value: in inside units, here degrees and hertz; lr_prop_none() for what is not noted
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_location (const LrPlan  *plan,
                      const char    *key,
                      double         value,
                      GError       **error)
{
  LrLocation *location;
  g_autoptr (LrPlan) next = lr_edit_begin_location (plan, &location, error);
  const LrProp *prop = lr_prop_table_find (lr_location_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL || lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A place has no number “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_number (prop, value, error))
    return NULL;
  lr_prop_put_number (prop, location, value);

  return g_steal_pointer (&next);
}
