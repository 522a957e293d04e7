/* plan_check.c - the invariants of a plan, as the reader and the edits ask for them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_check.h"

#include "polygon.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static const LrOrderedPair ordered_pairs[] = {
  { LR_ITEM_WINDOW, "sill-mm", "head-mm", FALSE },
  { LR_ITEM_FURNITURE, "bottom-mm", "height-mm", FALSE },
  { LR_ITEM_LENS, "focal-min-mm", "focal-max-mm", TRUE },
  { LR_ITEM_LENS, "f-number-min", "f-number-max", TRUE },
};

/**
 * lr_item_check_order:
 * @item: an item
 *
 * Returns: (transfer none) (nullable): the first pair of members that is out of order, as a sill above its head
 */
const LrOrderedPair *
lr_item_check_order (const LrItem *item)
{
  for (guint i = 0; i < G_N_ELEMENTS (ordered_pairs); i++)
    {
      const LrOrderedPair *pair = &ordered_pairs[i];
      double low, high;

      if (pair->kind != item->kind)
        continue;
      low = lr_prop_get_number (lr_item_find_prop (item->kind, pair->low), item);
      high = lr_prop_get_number (lr_item_find_prop (item->kind, pair->high), item);
      if (low > high || (low == high && !pair->may_be_equal))
        return pair;
    }

  return NULL;
}

/**
 * lr_corners_check:
 * @corners_m: (array length=n): corners of a room [m]
 * @n: how many
 *
 * Returns: what is wrong with them; none is fine, the room is not drawn yet
 */
LrCornersFault
lr_corners_check (const LrVec2 *corners_m,
                  gsize         n)
{
  if (n == 0)
    return LR_CORNERS_FINE;
  if (n < 3)
    return LR_CORNERS_TOO_FEW;
  if (n > LR_MAX_CORNERS)
    return LR_CORNERS_TOO_MANY;
  if (!lr_polygon_is_simple (corners_m, n))
    return LR_CORNERS_CROSS;

  return lr_polygon_area_m2 (corners_m, n) > 0.0 ? LR_CORNERS_FINE : LR_CORNERS_CLOCKWISE;
}

static gboolean
is_number (const char *text,
           guint       n_digits,
           int         min,
           int         max,
           int        *number)
{
  *number = 0;
  for (guint i = 0; i < n_digits; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return FALSE;
      *number = *number * 10 + g_ascii_digit_value (text[i]);
    }

  return *number >= min && *number <= max;
}

static gboolean
is_date (const char *text)
{
  int year, month, day;

  return strlen (text) == 10 && text[4] == '-' && text[7] == '-' && is_number (text, 4, 1, 9999, &year)
         && is_number (text + 5, 2, 1, 12, &month) && is_number (text + 8, 2, 1, 31, &day)
         && g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year);
}

static gboolean
is_time (const char *text)
{
  int hour, minute;

  return strlen (text) == 5 && text[2] == ':' && is_number (text, 2, 0, 23, &hour)
         && is_number (text + 3, 2, 0, 59, &minute);
}

/**
 * lr_job_accepts_text:
 * @key: a text of the job
 * @text: what it should become
 *
 * Returns: %FALSE for a date that is not of the form 2026-02-19 or does not exist, and for a time that is not of the form
 *   10:00; "" is always good
 */
gboolean
lr_job_accepts_text (const char *key,
                     const char *text)
{
  const LrProp *prop = lr_prop_table_find (lr_job_table (), key);

  if (*text == '\0' || prop == NULL)
    return TRUE;

  return prop->form == LR_TEXT_DATE ? is_date (text) : prop->form == LR_TEXT_TIME ? is_time (text) : TRUE;
}

/**
 * lr_ref_is_to_kit:
 * @prop: a reference
 *
 * Returns: whether it names a kit entry, not an item of the set-up
 */
gboolean
lr_ref_is_to_kit (const LrProp *prop)
{
  return strcmp (prop->target, LR_TARGET_KIT) == 0
         || strcmp (prop->target, lr_item_kind_info (LR_ITEM_LENS)->word) == 0;
}

/**
 * lr_ref_accepts:
 * @prop: one of the references of @item
 * @item: an item
 * @target: (nullable): what it should name: an item, or that of a kit entry
 *
 * Returns: whether @target is of the kind that @prop wants, and not @item itself
 */
gboolean
lr_ref_accepts (const LrProp *prop,
                const LrItem *item,
                const LrItem *target)
{
  if (target == NULL || target == item)
    return FALSE;
  if (strcmp (prop->target, LR_TARGET_KIT) == 0)
    return target->kind == item->kind;

  return strcmp (prop->target, LR_TARGET_ITEM) == 0
         || strcmp (prop->target, lr_item_kind_info (target->kind)->word) == 0;
}

/**
 * lr_ref_is_valid:
 * @plan: a plan
 * @setup: the set-up of @item
 * @item: an item, or a copy of one
 * @prop: one of its references
 * @id: what it should name
 *
 * Returns: whether @id is "" or names something of the kind that @prop wants, but not @item itself
 */
gboolean
lr_ref_is_valid (const LrPlan  *plan,
                 const LrSetup *setup,
                 const LrItem  *item,
                 const LrProp  *prop,
                 const char    *id)
{
  const LrKitEntry *entry = lr_ref_is_to_kit (prop) ? lr_plan_find_kit (plan, id) : NULL;
  const LrItem *target = lr_ref_is_to_kit (prop) ? (entry != NULL ? entry->item : NULL) : lr_setup_find (setup, id);

  return *id == '\0' || (lr_ref_accepts (prop, item, target) && (lr_ref_is_to_kit (prop) || strcmp (id, item->id) != 0));
}

/* People read metres, per cent and the rest as the file holds it */
static double
for_people (const LrProp *prop,
            double        value)
{
  return prop->type == LR_PROP_LENGTH ? lr_prop_quantise (prop, value) : lr_prop_to_file (prop, value);
}

static const char *
unit_for_people (const LrProp *prop)
{
  switch (prop->type)
    {
    case LR_PROP_LENGTH:
      return "\u00a0m";
    case LR_PROP_FINE_LENGTH:
      return "\u00a0mm";
    case LR_PROP_ANGLE:
      return "°";
    case LR_PROP_SHARE:
      return "\u00a0%";
    case LR_PROP_NUMBER:
    case LR_PROP_COUNT:
    case LR_PROP_FLAG:
    case LR_PROP_CHOICE:
    case LR_PROP_TEXT:
    case LR_PROP_REF:
    default:
      return "";
    }
}

static char *
dup_with_unit (const LrProp *prop,
               const char   *number)
{
  if (prop->type == LR_PROP_NUMBER && prop->unit != NULL)
    return g_strdup_printf ("%s\u00a0%s", number, _(prop->unit));

  return g_strconcat (number, unit_for_people (prop), NULL);
}

/* %.10g in the C locale: every value that the file can hold, without a tail of nines */
static char *
dup_number (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.10g", value));
}

/**
 * lr_prop_dup_value:
 * @prop: a row that is no text
 * @value: in inside units
 *
 * Returns: (transfer full): the value for people, with its unit, unrounded: "1.234 m", "22.5°"
 */
char *
lr_prop_dup_value (const LrProp *prop,
                   double        value)
{
  g_autofree char *number = dup_number (isfinite (value) ? for_people (prop, value) : value);

  return dup_with_unit (prop, number);
}

/**
 * lr_prop_dup_range:
 * @prop: a row that is no text
 *
 * Returns: (transfer full): the range for people: "0.01 to 20 m"
 */
char *
lr_prop_dup_range (const LrProp *prop)
{
  g_autofree char *min = dup_number (for_people (prop, prop->min));
  g_autofree char *max = dup_number (for_people (prop, prop->max));
  g_autofree char *max_with_unit = dup_with_unit (prop, max);

  /* Translators: a range: the least value, the largest with its unit */
  return g_strdup_printf (_("%s to %s"), min, max_with_unit);
}
