/* prop.c - reading and writing a member through its row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "prop.h"

#include "vec.h"

#include <math.h>
#include <string.h>

/* How many file units make one inside unit, and how many steps the file has per file unit */
typedef struct
{
  double per_inside;
  int    decimals;
} FileUnit;

static const FileUnit file_units[] = {
  [LR_PROP_LENGTH]      = { 1000.0, 0 },
  [LR_PROP_FINE_LENGTH] = { 1000.0, 4 },
  [LR_PROP_ANGLE]       = { 1.0 / LR_DEG, 1 },
  [LR_PROP_SHARE]       = { 100.0, 1 },
  [LR_PROP_NUMBER]      = { 1.0, 0 },
  [LR_PROP_COUNT]       = { 1.0, 0 },
  [LR_PROP_FLAG]        = { 1.0, 0 },
  [LR_PROP_CHOICE]      = { 1.0, 0 },
  [LR_PROP_TEXT]        = { 1.0, 0 },
  [LR_PROP_REF]         = { 1.0, 0 },
};

static const double powers_of_ten[] = { 1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9 };

static gpointer
field (const LrProp *prop,
       gpointer      owner)
{
  return (char *) owner + prop->offset;
}

static gconstpointer
const_field (const LrProp  *prop,
             gconstpointer  owner)
{
  return (const char *) owner + prop->offset;
}

static gboolean
is_double (const LrProp *prop)
{
  return prop->type <= LR_PROP_NUMBER;
}

/**
 * lr_prop_table_find:
 * @table: a table
 * @key: the member's name in the file
 *
 * Returns: (transfer none) (nullable): the row of that member
 */
const LrProp *
lr_prop_table_find (const LrPropTable *table,
                    const char        *key)
{
  for (gsize i = 0; i < table->n_props; i++)
    if (strcmp (table->props[i].key, key) == 0)
      return &table->props[i];

  return NULL;
}

/**
 * lr_prop_is_text:
 * @prop: a row
 *
 * Returns: whether the member is a text or a reference, and not a number
 */
gboolean
lr_prop_is_text (const LrProp *prop)
{
  return prop->type == LR_PROP_TEXT || prop->type == LR_PROP_REF;
}

/**
 * lr_prop_decimals:
 * @prop: a row that is no text
 *
 * Returns: how many decimals the file can hold, in the file's unit
 */
int
lr_prop_decimals (const LrProp *prop)
{
  return prop->type == LR_PROP_NUMBER ? prop->decimals : file_units[prop->type].decimals;
}

/* Adding 0 turns -0 into 0, which the file cannot tell apart */
static double
round_decimals (double value,
                int    decimals)
{
  double power = powers_of_ten[decimals];

  return round (value * power) / power + 0.0;
}

/**
 * lr_prop_to_file:
 * @prop: a row that is no text
 * @value: in inside units
 *
 * Returns: @value as the file holds it: whole millimetres, degrees with one decimal, per cent
 */
double
lr_prop_to_file (const LrProp *prop,
                 double        value)
{
  return round_decimals (value * file_units[prop->type].per_inside, lr_prop_decimals (prop));
}

/**
 * lr_prop_from_file:
 * @prop: a row that is no text
 * @file_value: in the file's unit, finite
 *
 * Returns: the inside value, rounded to what the file can hold
 */
double
lr_prop_from_file (const LrProp *prop,
                   double        file_value)
{
  double power = powers_of_ten[lr_prop_decimals (prop)];
  double steps = round (file_value * power) + 0.0;

  /* One division of two whole numbers gives the double next to the decimal: 1200 mm is 1.2 to the last bit */
  return prop->type == LR_PROP_ANGLE ? steps / power * LR_DEG : steps / (power * file_units[prop->type].per_inside);
}

/**
 * lr_prop_quantise:
 * @prop: a row that is no text
 * @value: in inside units
 *
 * Returns: the nearest value that the file can hold; what is not finite stays as it is
 */
double
lr_prop_quantise (const LrProp *prop,
                  double        value)
{
  return isfinite (value) ? lr_prop_from_file (prop, lr_prop_to_file (prop, value)) : value;
}

/**
 * lr_prop_none:
 * @prop: a row that is no text
 *
 * Returns: what an optional number is when it is not given: 0, or NAN where 0 is a value like any other, as on the equator
 */
double
lr_prop_none (const LrProp *prop)
{
  return isnan (prop->fallback) ? (double) NAN : 0.0;
}

/**
 * lr_prop_is_given:
 * @prop: a row that is no text
 * @value: in inside units
 *
 * Returns: %FALSE if @prop is optional and @value stands for "not given"
 */
gboolean
lr_prop_is_given (const LrProp *prop,
                  double        value)
{
  if (!prop->is_optional)
    return TRUE;

  return isnan (prop->fallback) ? !isnan (value) : value != 0.0;
}

/* Of a rounded value; what is not finite is in no range */
static gboolean
is_in_range (const LrProp *prop,
             double        rounded)
{
  return (rounded >= prop->min && rounded <= prop->max) || !lr_prop_is_given (prop, rounded);
}

/**
 * lr_prop_accepts:
 * @prop: a row
 * @value: in inside units
 *
 * Returns: whether @value, rounded to what the file can hold, lies in the range, or stands for "not given"
 */
gboolean
lr_prop_accepts (const LrProp *prop,
                 double        value)
{
  return !lr_prop_is_text (prop) && is_in_range (prop, lr_prop_quantise (prop, value));
}

/**
 * lr_prop_find_choice:
 * @prop: a row of choices
 * @word: the word in the file
 *
 * Returns: the enum's value, or -1 if there is no such word
 */
int
lr_prop_find_choice (const LrProp *prop,
                     const char   *word)
{
  g_return_val_if_fail (prop->type == LR_PROP_CHOICE, -1);

  for (int i = 0; prop->choices[i].word != NULL; i++)
    if (strcmp (prop->choices[i].word, word) == 0)
      return i;

  return -1;
}

/**
 * lr_prop_get_number:
 * @prop: a row that is no text
 * @owner: the struct that its offset counts from
 *
 * Returns: the member in inside units; a choice's enum value, a flag's 0 or 1
 */
double
lr_prop_get_number (const LrProp  *prop,
                    gconstpointer  owner)
{
  g_return_val_if_fail (!lr_prop_is_text (prop), 0.0);

  return is_double (prop) ? *(const double *) const_field (prop, owner) : *(const int *) const_field (prop, owner);
}

/**
 * lr_prop_get_text:
 * @prop: a row of a text, a reference or choices
 * @owner: the struct that its offset counts from
 *
 * Returns: (transfer none): the member's text, a choice's word in the file
 */
const char *
lr_prop_get_text (const LrProp  *prop,
                  gconstpointer  owner)
{
  g_return_val_if_fail (lr_prop_is_text (prop) || prop->type == LR_PROP_CHOICE, "");

  if (prop->type == LR_PROP_CHOICE)
    return prop->choices[*(const int *) const_field (prop, owner)].word;

  return *(char *const *) const_field (prop, owner);
}

/**
 * lr_prop_put_number:
 * @prop: a row that is no text
 * @owner: a fresh struct
 * @value: in inside units, accepted by @prop
 *
 * Writes @value, rounded to what the file can hold.
 */
void
lr_prop_put_number (const LrProp *prop,
                    gpointer      owner,
                    double        value)
{
  double rounded = lr_prop_quantise (prop, value);

  g_return_if_fail (!lr_prop_is_text (prop) && is_in_range (prop, rounded));

  if (is_double (prop))
    *(double *) field (prop, owner) = rounded;
  else
    *(int *) field (prop, owner) = (int) rounded;
}

/**
 * lr_prop_put_text:
 * @prop: a row of a text or a reference
 * @owner: a fresh struct
 * @text: (nullable): what to write; %NULL is ""
 */
void
lr_prop_put_text (const LrProp *prop,
                  gpointer      owner,
                  const char   *text)
{
  char **place = field (prop, owner);
  char *copy = g_strdup (text != NULL ? text : "");

  g_return_if_fail (lr_prop_is_text (prop));

  g_free (*place);
  *place = copy;
}

/**
 * lr_prop_table_init:
 * @table: a table
 * @owner: a struct whose members are zero
 *
 * Gives every member its fallback.
 */
void
lr_prop_table_init (const LrPropTable *table,
                    gpointer           owner)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];

      if (lr_prop_is_text (prop))
        lr_prop_put_text (prop, owner, "");
      else
        lr_prop_put_number (prop, owner, prop->fallback);
    }
}

/**
 * lr_prop_table_copy:
 * @table: a table
 * @to: a struct copied from @from byte by byte
 * @from: the struct it was copied from
 *
 * Gives @to texts of its own.
 */
void
lr_prop_table_copy (const LrPropTable *table,
                    gpointer           to,
                    gconstpointer      from)
{
  for (gsize i = 0; i < table->n_props; i++)
    if (lr_prop_is_text (&table->props[i]))
      *(char **) field (&table->props[i], to) = g_strdup (lr_prop_get_text (&table->props[i], from));
}

/**
 * lr_prop_table_clear:
 * @table: a table
 * @owner: a struct about to be freed
 *
 * Frees the texts.
 */
void
lr_prop_table_clear (const LrPropTable *table,
                     gpointer           owner)
{
  for (gsize i = 0; i < table->n_props; i++)
    if (lr_prop_is_text (&table->props[i]))
      g_clear_pointer ((char **) field (&table->props[i], owner), g_free);
}

/* NAN, where it stands for "not given", is the same as itself */
static gboolean
is_same_number (double a,
                double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/**
 * lr_prop_table_equal:
 * @table: a table
 * @a: a struct
 * @b: another
 *
 * Returns: whether every member of the table is the same in both
 */
gboolean
lr_prop_table_equal (const LrPropTable *table,
                     gconstpointer      a,
                     gconstpointer      b)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];

      if (lr_prop_is_text (prop) ? strcmp (lr_prop_get_text (prop, a), lr_prop_get_text (prop, b)) != 0
                                 : !is_same_number (lr_prop_get_number (prop, a), lr_prop_get_number (prop, b)))
        return FALSE;
    }

  return TRUE;
}
