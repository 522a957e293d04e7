/* test-kinds.c - what holds for every kind of item: its table, and that it can be made, moved, copied, changed, saved, read
 * and removed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan-test.h"

#include <math.h>

/* Tables */

static gboolean
is_double (const LrProp *prop)
{
  return prop->type <= LR_PROP_NUMBER;
}

static gsize
field_size (const LrProp *prop)
{
  if (lr_prop_is_text (prop))
    return sizeof (char *);

  return is_double (prop) ? sizeof (double) : sizeof (int);
}

static void
check_row (const LrProp *prop)
{
  g_test_message ("%s", prop->key);
  for (const char *p = prop->key; *p != '\0'; p++)
    g_assert_true (g_ascii_islower (*p) || g_ascii_isdigit (*p) || *p == '-');

  /* A number's key ends in the unit of the file */
  if (prop->type == LR_PROP_LENGTH || prop->type == LR_PROP_FINE_LENGTH)
    g_assert_true (g_str_has_suffix (prop->key, "-mm"));
  else if (prop->type == LR_PROP_ANGLE)
    g_assert_true (g_str_has_suffix (prop->key, "-deg"));
  else if (prop->type == LR_PROP_SHARE)
    g_assert_true (g_str_has_suffix (prop->key, "-pct"));
  g_assert_true ((prop->type == LR_PROP_REF) == (prop->target != NULL));
  g_assert_true ((prop->type == LR_PROP_CHOICE) == (prop->choices != NULL));
  if (lr_prop_is_text (prop))
    return;

  /* The range and the fallback are what the file can hold */
  g_assert_cmpfloat (prop->min, <, prop->max);
  g_assert_cmpfloat (lr_prop_quantise (prop, prop->min), ==, prop->min);
  g_assert_cmpfloat (lr_prop_quantise (prop, prop->max), ==, prop->max);
  if (isnan (prop->fallback))
    g_assert_true (prop->is_optional); /* it stands for "not given" where 0 is a value */
  else
    g_assert_cmpfloat (lr_prop_quantise (prop, prop->fallback), ==, prop->fallback);
  g_assert_true (lr_prop_accepts (prop, prop->min));
  g_assert_true (lr_prop_accepts (prop, prop->max));
  g_assert_true (lr_prop_accepts (prop, prop->fallback));
  g_assert_false (lr_prop_accepts (prop, prop->max * 2.0 + 1.0));
  g_assert_false (lr_prop_accepts (prop, prop->min - fabs (prop->min) - 1.0));
  g_assert_true (lr_prop_accepts (prop, NAN) == !!isnan (prop->fallback));
  g_assert_false (lr_prop_accepts (prop, HUGE_VAL));
  g_assert_true (lr_prop_accepts (prop, 0.0) || !prop->is_optional);
}

static void
check_table (const LrPropTable *table)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      check_row (&table->props[i]);
      g_assert_true (lr_prop_table_find (table, table->props[i].key) == &table->props[i]);
    }
}

static void
test_tables (void)
{
  check_table (lr_job_table ());
  check_table (lr_room_table ());
  check_table (lr_surface_table ());
  check_table (lr_location_table ());
  check_table (lr_contact_table ());
  check_table (lr_question_table ());
  check_table (lr_run_table ());
  check_table (lr_tape_table ());
  check_table (lr_turn_table ());
  check_table (lr_kit_entry_table ());
  check_table (lr_supply_table ());
  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      check_row (&lr_limit_info (i)->prop);
      g_assert_cmpstr (lr_limit_info (i)->source, !=, NULL);
      g_assert_cmpstr (lr_limit_info (i)->prop.label, !=, NULL);
    }
}

/* The part of a union that belongs to a kind */
static const struct { LrItemKind kind; gsize offset, size; } parts[] = {
#define PART(kind_, field_) { kind_, G_STRUCT_OFFSET (LrItem, field_), sizeof ((LrItem *) NULL)->field_ }
  PART (LR_ITEM_PERSON, person), PART (LR_ITEM_CAMERA, camera), PART (LR_ITEM_LIGHT, light),
  PART (LR_ITEM_MICROPHONE, microphone), PART (LR_ITEM_PANEL, panel), PART (LR_ITEM_LEAD, lead),
  PART (LR_ITEM_FURNITURE, furniture), PART (LR_ITEM_DOOR, door), PART (LR_ITEM_WINDOW, window),
  PART (LR_ITEM_SOCKET, socket), PART (LR_ITEM_CIRCUIT, circuit), PART (LR_ITEM_NOISE, noise),
  PART (LR_ITEM_HOUSE_LIGHT, house_light), PART (LR_ITEM_LENS, lens),
};

/* Every field of a kind's part has a row and no two rows share a byte: what no row covers is padding, less than a double */
static void
test_fields (void)
{
  g_assert_cmpuint (G_N_ELEMENTS (parts), ==, LR_N_ITEM_KINDS);

  for (guint k = 0; k < G_N_ELEMENTS (parts); k++)
    {
      const LrPropTable *table = &lr_item_kind_info (parts[k].kind)->table;
      g_autofree char *covered = g_new0 (char, parts[k].size);
      gsize gap = 0;

      g_test_message ("%s", lr_item_kind_info (parts[k].kind)->word);
      for (gsize i = 0; i < table->n_props; i++)
        {
          gsize from = table->props[i].offset - parts[k].offset;

          g_assert_cmpuint (from + field_size (&table->props[i]), <=, parts[k].size);
          for (gsize b = from; b < from + field_size (&table->props[i]); b++)
            {
              g_assert_false (covered[b]);
              covered[b] = TRUE;
            }
        }
      for (gsize b = 0; b < parts[k].size; b++)
        {
          gap = covered[b] ? 0 : gap + 1;
          g_assert_cmpuint (gap, <, 5);
        }
    }
}

/* Items */

/* Another value that the row takes, as far from the present one as the range allows */
static double
other_value (const LrProp *prop,
             double        value)
{
  if (prop->type == LR_PROP_CHOICE || prop->type == LR_PROP_FLAG || prop->type == LR_PROP_COUNT)
    return value == prop->min ? prop->min + 1.0 : prop->min;

  return lr_prop_quantise (prop, value < (prop->min + prop->max) / 2.0 ? prop->min + (prop->max - prop->min) * 0.61803
                                                                       : prop->min + (prop->max - prop->min) * 0.38197);
}

/* The room's kinds and "person-1" are there; what a reference of that kind can name */
static const char *
target_for (const LrPlan *plan,
            const LrItem *item,
            const LrProp *prop)
{
  const LrSetup *setup = lr_plan_get_setup (plan);

  if (strcmp (prop->target, LR_TARGET_KIT) == 0 || strcmp (prop->target, "lens") == 0)
    {
      LrItemKind wanted = strcmp (prop->target, "lens") == 0 ? LR_ITEM_LENS : item->kind;

      for (guint i = 0; i < plan->kit->len; i++)
        if (((const LrKitEntry *) plan->kit->pdata[i])->item->kind == wanted)
          return ((const LrKitEntry *) plan->kit->pdata[i])->item->id;
      return NULL;
    }
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *other = setup->items->pdata[i];

      if (other != item && (strcmp (prop->target, LR_TARGET_ITEM) == 0
                            || strcmp (prop->target, lr_item_kind_info (other->kind)->word) == 0))
        return other->id;
    }

  return NULL;
}

/* "sill-mm" can only rise as far as "head-mm": the other of a pair is moved out of the way */
static gboolean
find_partner (const char *id,
              LrItemKind  kind,
              const char *key,
              LrChange   *change)
{
  static const struct { LrItemKind kind; const char *low, *high; } pairs[] = {
    { LR_ITEM_WINDOW, "sill-mm", "head-mm" }, { LR_ITEM_FURNITURE, "bottom-mm", "height-mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      if (pairs[i].kind != kind)
        continue;
      if (strcmp (key, pairs[i].low) == 0)
        *change = (LrChange) { id, pairs[i].high, lr_item_find_prop (kind, pairs[i].high)->max };
      else if (strcmp (key, pairs[i].high) == 0)
        *change = (LrChange) { id, pairs[i].low, lr_item_find_prop (kind, pairs[i].low)->min };
      else
        continue;
      return TRUE;
    }

  return FALSE;
}

static void
check_number (LrPlan       **plan,
              const char    *id,
              const LrProp  *prop)
{
  g_autoptr (GError) error = NULL;
  const LrItem *before = lr_plan_find (*plan, id);
  const LrItem *after;
  double value = other_value (prop, lr_prop_get_number (prop, before));
  LrChange changes[2] = { { id, prop->key, value } };
  gsize n = find_partner (id, before->kind, prop->key, &changes[1]) ? 2 : 1;

  /* A wall takes an along of its own length at most */
  if (strcmp (prop->key, "along-mm") == 0)
    changes[0].value = value = 0.5;
  take_next (plan, lr_plan_change (*plan, changes, n, &error), &error);
  after = lr_plan_find (*plan, id);
  g_assert_cmpfloat (lr_prop_get_number (prop, after), ==, value);

  changes[0].value = prop->max * 2.0 + 1.0;
  if (strcmp (prop->key, "facing-deg") != 0)
    {
      g_assert_null (lr_plan_change (*plan, changes, 1, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
      g_clear_error (&error);
    }
  changes[0].value = NAN;
  g_assert_null (lr_plan_change (*plan, changes, 1, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

static void
check_text (LrPlan       **plan,
            const char    *id,
            const LrProp  *prop)
{
  g_autoptr (GError) error = NULL;
  const char *text = "a “new”\ttext \\ with\nall that \"JSON\" escapes \x01 and ½";
  const char *value = prop->type == LR_PROP_REF ? target_for (*plan, lr_plan_find (*plan, id), prop) : text;

  if (strcmp (prop->key, "id") == 0)
    {
      g_assert_null (lr_plan_change_text (*plan, id, "id", "other", &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
      return;
    }
  if (value != NULL)
    {
      take_next (plan, lr_plan_change_text (*plan, id, prop->key, value, &error), &error);
      g_assert_cmpstr (lr_prop_get_text (prop, lr_plan_find (*plan, id)), ==, value);
    }
  if (prop->type == LR_PROP_REF)
    {
      g_assert_null (lr_plan_change_text (*plan, id, prop->key, "nobody", &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFERENCE);
      g_clear_error (&error);
      g_assert_null (lr_plan_change_text (*plan, id, prop->key, id, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFERENCE);
    }
  else
    {
      g_assert_null (lr_plan_change_text (*plan, id, prop->key, "\xff", &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
    }
}

static void
check_every_property (LrPlan            **plan,
                      const char         *id,
                      const LrPropTable  *table)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      g_test_message ("%s", table->props[i].key);
      if (lr_prop_is_text (&table->props[i]))
        check_text (plan, id, &table->props[i]);
      else
        check_number (plan, id, &table->props[i]);
      assert_round_trip (*plan);
    }
}

/* Moving and turning do what they say or refuse, and change nothing but this item */
static void
check_motion (LrPlan     **plan,
              const char  *id)
{
  LrPlaceType place = lr_item_kind_info (lr_plan_find (*plan, id)->kind)->place;
  const LrItem *person = lr_plan_find (*plan, "person-1");
  g_autoptr (GError) error = NULL;
  LrVec2 at_m;
  double facing_rad;

  if (place == LR_PLACE_NONE)
    {
      g_assert_null (lr_plan_move (*plan, id, lr_vec2 (1.0, 1.0), &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
      g_clear_error (&error);
      g_assert_false (lr_setup_place (lr_plan_get_setup (*plan), lr_plan_find (*plan, id), &at_m, &facing_rad));
    }
  else
    {
      take_next (plan, lr_plan_move (*plan, id, lr_vec2 (3.9, 1.2345), &error), &error);
      g_assert_true (lr_setup_place (lr_plan_get_setup (*plan), lr_plan_find (*plan, id), &at_m, &facing_rad));
      g_assert_cmpfloat_with_epsilon (at_m.x, place == LR_PLACE_WALL ? 4.0 : 3.9, 1e-9);
      g_assert_cmpfloat_with_epsilon (at_m.y, 1.2345, 0.0011);
    }

  if (place == LR_PLACE_FLOOR)
    {
      take_next (plan, lr_plan_turn (*plan, id, 3.5 * G_PI, &error), &error);
      g_assert_cmpfloat_with_epsilon (lr_plan_find (*plan, id)->facing_rad, -0.5 * G_PI, 1e-12);
    }
  else
    {
      g_assert_null (lr_plan_turn (*plan, id, 1.0, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
      g_clear_error (&error);
    }
  g_assert_null (lr_plan_move (*plan, id, lr_vec2 (1e9, 0.0), &error));
  g_assert_nonnull (error);
  g_assert_true (lr_plan_find (*plan, "person-1") == person || strcmp (id, "person-1") == 0);
}

/* What a light has beside its properties: it goes along with every edit */
static const LrLampFile *
give_lamp_file (LrPlan     **plan,
                const char  *id)
{
  static const char text[] = "TILT=NONE\n1 -1 1 2 1 1 2 0 0 0 1 1 1 0 90 0 10 10\n";
  g_autoptr (GError) error = NULL;

  if (lr_plan_find (*plan, id)->kind != LR_ITEM_LIGHT)
    {
      g_assert_null (lr_plan_set_lamp_file (*plan, id, "lamp.ies", text, strlen (text), &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
      return NULL;
    }

  take_next (plan, lr_plan_set_lamp_file (*plan, id, "lamp.ies", text, strlen (text), &error), &error);
  return lr_plan_find (*plan, id)->lamp_file;
}

static void
test_kind (gconstpointer data)
{
  LrItemKind kind = GPOINTER_TO_INT (data);
  const LrItemKindInfo *info = lr_item_kind_info (kind);
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (LrPlan) before = NULL;
  g_autoptr (LrItem) prototype = lr_item_new (kind, "");
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL, *second_id = NULL;
  guint n_before = lr_plan_get_setup (plan)->items->len;
  const LrLampFile *lamp_file;

  check_table (&info->table);
  check_table (lr_item_common_table (info->place));
  if (kind == LR_ITEM_LENS)
    {
      g_assert_null (lr_plan_add (plan, prototype, lr_vec2 (1.0, 1.0), 0.0, &id, &error));
      g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
      g_assert_null (id);
      return;
    }

  take_next (&plan, lr_plan_add (plan, prototype, lr_vec2 (1.0, 1.0), 0.3, &id, &error), &error);
  g_assert_true (g_str_has_prefix (id, info->word));
  g_assert_true (*lr_plan_find (plan, id)->name != '\0' || *lr_plan_find (plan, id)->tag != '\0');
  assert_round_trip (plan);

  lamp_file = give_lamp_file (&plan, id);
  g_assert_true ((lamp_file != NULL) == (kind == LR_ITEM_LIGHT));
  check_motion (&plan, id);
  take_next (&plan, lr_plan_duplicate (plan, id, lr_vec2 (0.2, 0.0), &second_id, &error), &error);
  g_assert_cmpstr (second_id, !=, id);
  g_assert_true (*lr_plan_find (plan, id)->tag == '\0'
                 || strcmp (lr_plan_find (plan, id)->tag, lr_plan_find (plan, second_id)->tag) != 0);
  g_assert_true (*lr_plan_find (plan, id)->name == '\0'
                 || strcmp (lr_plan_find (plan, id)->name, lr_plan_find (plan, second_id)->name) != 0);

  before = lr_plan_ref (plan);
  check_every_property (&plan, id, lr_item_common_table (info->place));
  check_every_property (&plan, id, &info->table);
  g_assert_false (lr_plan_equal (plan, before));
  g_assert_true (lr_plan_find (plan, id)->lamp_file == lamp_file && lr_plan_find (plan, second_id)->lamp_file == lamp_file);

  take_next (&plan, lr_plan_remove (plan, id, &error), &error);
  take_next (&plan, lr_plan_remove (plan, second_id, &error), &error);
  g_assert_null (lr_plan_find (plan, id));
  g_assert_cmpuint (lr_plan_get_setup (plan)->items->len, ==, n_before);
  g_assert_null (lr_plan_remove (plan, id, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

/* A copy is equal, is not the same, and owns its texts */
static void
test_copy (void)
{
  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      g_autoptr (LrItem) item = lr_item_new (kind, "a");
      g_autoptr (LrItem) copy = lr_item_copy (item);

      g_assert_true (lr_item_equal (item, copy));
      g_assert_true (item->name != copy->name);
      lr_prop_put_text (lr_item_find_prop (kind, "note"), copy, "other");
      g_assert_false (lr_item_equal (item, copy));
      g_assert_cmpstr (item->note, ==, "");
    }
}

/* Every form is a kind's usual thing: in range, with a label */
static void
test_forms (void)
{
  static const LrItemKind kinds[] = { LR_ITEM_PERSON, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_PANEL, LR_ITEM_FURNITURE };

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      const LrProp *form = lr_item_find_prop (kinds[k], kinds[k] == LR_ITEM_PERSON ? "role" : "form");

      for (int i = 0; form->choices[i].word != NULL; i++)
        {
          g_autoptr (LrItem) item = lr_item_new_usual (kinds[k], i, "");
          g_autoptr (LrPlan) room = new_room ();
          g_autoptr (GError) error = NULL;
          g_autoptr (LrPlan) plan = lr_plan_add (room, item, lr_vec2 (1.0, 1.0), 0.0, NULL, &error);

          g_assert_no_error (error);
          g_assert_cmpstr (lr_item_form_label (item), ==, form->choices[i].label);
          assert_round_trip (plan);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/kinds/tables", test_tables);
  g_test_add_func ("/kinds/fields", test_fields);
  g_test_add_func ("/kinds/copy", test_copy);
  g_test_add_func ("/kinds/forms", test_forms);
  for (int kind = 0; kind < LR_N_ITEM_KINDS; kind++)
    {
      g_autofree char *path = g_strconcat ("/kinds/contract/", lr_item_kind_info (kind)->word, NULL);

      g_test_add_data_func (path, GINT_TO_POINTER (kind), test_kind);
    }

  return g_test_run ();
}
