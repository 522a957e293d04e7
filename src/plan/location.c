/* location.c - where a room is, how one gets in and whom to call there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Latitude and longitude may well be 0: what is not noted is NAN.
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ROW_OWNER LrLocation

static const LrProp location_rows[] = {
  TEXT_OR_NONE ("name", N_("Place"), name),
  TEXT_OR_NONE ("address", N_("Address"), address),
  TEXT_OR_NONE ("access", N_("Access"), access),
  TEXT_OR_NONE ("permission", N_("Permission"), permission),
  ROW ("latitude-deg", N_("Latitude"), LR_PROP_NUMBER, latitude_deg, .min = -90.0, .max = 90.0, .fallback = NAN, .decimals = 5, .unit = "°",
       .is_optional = TRUE),
  ROW ("longitude-deg", N_("Longitude"), LR_PROP_NUMBER, longitude_deg, .min = -180.0, .max = 180.0, .fallback = NAN, .decimals = 5,
       .unit = "°", .is_optional = TRUE),
  NUMBER_OR_NONE ("mains-hz", N_("Mains frequency"), mains_hz, 16.0, 400.0, 0, "Hz"),
};

static const LrPropTable location_table = TABLE (location_rows);

/**
 * lr_location_table:
 *
 * Returns: (transfer none): the members of a location but the people to call
 */
const LrPropTable *
lr_location_table (void)
{
  return &location_table;
}

/**
 * lr_location_new:
 *
 * Returns: (transfer full): a location of which nothing is noted
 */
LrLocation *
lr_location_new (void)
{
  LrLocation *location = g_atomic_rc_box_new0 (LrLocation);

  lr_prop_table_init (&location_table, location);

  return location;
}

/**
 * lr_location_copy:
 * @location: a location
 *
 * Returns: (transfer full): a fresh one that may be written
 */
LrLocation *
lr_location_copy (const LrLocation *location)
{
  LrLocation *copy = g_atomic_rc_box_dup (sizeof *location, (gpointer) location);

  lr_prop_table_copy (&location_table, copy, location);
  lr_lists_copy (LR_LISTS_OF_LOCATION, copy, location);
  copy->unknown = lr_json_dup_object (location->unknown);

  return copy;
}

/**
 * lr_location_ref:
 * @location: a location
 *
 * Returns: (transfer full): @location
 */
LrLocation *
lr_location_ref (const LrLocation *location)
{
  return g_atomic_rc_box_acquire ((gpointer) location);
}

static void
clear (gpointer data)
{
  LrLocation *location = data;

  lr_prop_table_clear (&location_table, location);
  lr_lists_clear (LR_LISTS_OF_LOCATION, location);
  g_clear_pointer (&location->unknown, json_object_unref);
}

/**
 * lr_location_unref:
 * @location: (transfer full): a location
 */
void
lr_location_unref (LrLocation *location)
{
  g_atomic_rc_box_release_full (location, clear);
}

/**
 * lr_location_equal:
 * @a: a location
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_location_equal (const LrLocation *a,
                   const LrLocation *b)
{
  return a == b || (lr_prop_table_equal (&location_table, a, b) && lr_lists_equal (LR_LISTS_OF_LOCATION, a, b)
                    && lr_json_objects_equal (a->unknown, b->unknown));
}

/**
 * lr_location_dup_where:
 * @location: a location
 *
 * Returns: (transfer full): its name and address in one line; "" if neither is noted
 */
char *
lr_location_dup_where (const LrLocation *location)
{
  return g_strconcat (location->name, location->name[0] != '\0' && location->address[0] != '\0' ? ", " : "", location->address, NULL);
}

/**
 * lr_location_is_on_map:
 * @location: a location
 *
 * Returns: whether both latitude and longitude are noted
 */
gboolean
lr_location_is_on_map (const LrLocation *location)
{
  return !isnan (location->latitude_deg) && !isnan (location->longitude_deg);
}
