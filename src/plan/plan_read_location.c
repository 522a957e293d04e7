/* plan_read_location.c - a location from its JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

/**
 * lr_read_location:
 * @setup_place: the set-up that is there
 * @node: a value
 * @location: a fresh location
 * @error: return location
 *
 * Returns: %FALSE if a member is not as it should be
 */
gboolean
lr_read_location (const LrJsonPlace  *setup_place,
                  JsonNode           *node,
                  LrLocation         *location,
                  GError            **error)
{
  static const char *const known[] = { "contacts", NULL };
  LrJsonPlace place = { .up = setup_place, .name = "location" };
  const LrJsonRows rows = { lr_location_table (), location };
  JsonObject *object = lr_json_get_object (&place, node, error);

  return object != NULL && lr_json_get_rows (&place, object, &rows, 1, known, &location->unknown, error)
         && lr_read_list (&place, object, LR_LIST_CONTACTS, location, error);
}
