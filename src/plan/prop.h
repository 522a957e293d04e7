/* prop.h - a property: one row describes a member of the model to the reader, the writer, edits and panels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

typedef enum
{
  LR_PROP_LENGTH,      /* double [m]; in the file whole millimetres, key ends in -mm */
  LR_PROP_FINE_LENGTH, /* double [m]; in the file millimetres with up to 4 decimals, key ends in -mm: sensors, lenses */
  LR_PROP_ANGLE,       /* double [rad]; in the file degrees with one decimal, key ends in -deg */
  LR_PROP_SHARE,       /* double 0..1 and beyond; in the file per cent with up to one decimal, key ends in -pct */
  LR_PROP_NUMBER,      /* double; in the file the same number with up to @decimals decimals */
  LR_PROP_COUNT,       /* int */
  LR_PROP_FLAG,        /* gboolean */
  LR_PROP_CHOICE,      /* int, a value of an enum; in the file its word */
  LR_PROP_TEXT,        /* char *, owned, never NULL once an object is made: "" when empty */
  LR_PROP_REF,         /* char *, owned: the id of another item or kit entry, "" for none */
} LrPropType;

/* What a text must be */
typedef enum
{
  LR_TEXT_ANY,
  LR_TEXT_DATE, /* 2026-02-19 */
  LR_TEXT_TIME, /* 10:00 */
} LrTextForm;

typedef struct
{
  const char *word;  /* in the file */
  const char *label; /* for people, to be translated */
} LrChoice;

typedef struct
{
  const char     *key;      /* in the file, with its unit */
  const char     *label;    /* for people, to be translated; NULL: not shown in Details */
  LrPropType      type;
  gsize           offset;   /* of the field in its owner */
  double          min, max; /* inside units; for COUNT and numbers */
  double          fallback; /* what a missing member means, inside units; choices: the enum's value */
  int             decimals; /* NUMBER: most decimals in the file */
  const char     *unit;     /* NUMBER: what to print behind it, "K", "W", "fps" */
  const LrChoice *choices;  /* CHOICE: ends in { NULL } */
  gboolean        is_optional; /* left out of the file when it is not given: 0 (may lie outside the range; NAN if that is the fallback), ""; of a choice its first */
  LrTextForm      form;     /* TEXT */
  const char     *target;   /* REF: the word of the kind it must name, or LR_TARGET_ITEM, LR_TARGET_KIT */
} LrProp;

#define LR_TARGET_ITEM "item" /* any item of the set-up but itself */
#define LR_TARGET_KIT "kit"   /* the kit entry of the item's own kind */

typedef struct
{
  const LrProp *props;
  gsize         n_props;
} LrPropTable;

const LrProp *lr_prop_table_find  (const LrPropTable *table, const char *key);

double        lr_prop_get_number  (const LrProp *prop, gconstpointer owner); /* any type but TEXT and REF */
const char   *lr_prop_get_text    (const LrProp *prop, gconstpointer owner); /* TEXT, REF, CHOICE (its word) */
/* Rounds to what the file can hold: whole millimetres, tenths of a degree, ... */
double        lr_prop_quantise    (const LrProp *prop, double value);
gboolean      lr_prop_accepts     (const LrProp *prop, double value);
/* What stands for "not given" in an optional number, and whether @value is anything else */
double        lr_prop_none        (const LrProp *prop);
gboolean      lr_prop_is_given    (const LrProp *prop, double value);
/* Between inside units and the file's: millimetres, degrees, per cent */
double        lr_prop_to_file     (const LrProp *prop, double value);
double        lr_prop_from_file   (const LrProp *prop, double file_value);
int           lr_prop_decimals    (const LrProp *prop);    /* most decimals in the file */
gboolean      lr_prop_is_text     (const LrProp *prop);    /* TEXT and REF */
/* The value of the choice with this word in the file, or -1 */
int           lr_prop_find_choice (const LrProp *prop, const char *word);
/* Only for makers of fresh objects: reader, plan_edit, item_new */
void          lr_prop_put_number  (const LrProp *prop, gpointer owner, double value);
void          lr_prop_put_text    (const LrProp *prop, gpointer owner, const char *text);

void          lr_prop_table_init  (const LrPropTable *table, gpointer owner); /* fallbacks, "" */
void          lr_prop_table_copy  (const LrPropTable *table, gpointer to, gconstpointer from); /* dups texts of a memcpy'd owner */
void          lr_prop_table_clear (const LrPropTable *table, gpointer owner);
gboolean      lr_prop_table_equal (const LrPropTable *table, gconstpointer a, gconstpointer b);
