/* test-materials.c - the table of sound absorption against worked rooms and second printings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "materials.h"
#include "formats.h"
#include "reverberation.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *id;
  double      area_m2;
} Part;

typedef struct
{
  const char *name;
  Part        parts[6];
  double      volume_m3;
  double      absorption_m2[LR_N_BANDS], time_s[LR_N_BANDS]; /* expected; time 0: not told */
  double      tolerance_m2, tolerance_s;
  const char *source;
} RoomCase;

#define FT2 (0.3048 * 0.3048)
#define FT3 (FT2 * 0.3048)

static const RoomCase room_cases[] = {
  /* 373 ft² of concrete floor have 0.01 0.01 0.015 0.02 0.02 0.02 there: 0.01 more a band than the bare concrete of the table at most */
  { "everest", { { "gypsum-board", 1159 * FT2 }, { "acoustic-tile", 340 * FT2 }, { "concrete-bare", 373 * FT2 } }, 23.3 * 16 * 10 * FT3,
    { 370.4 * FT2, 214.8 * FT2, 328.8 * FT2, 339.5 * FT2, 336.8 * FT2, 329.4 * FT2 }, { 0.49, 0.85, 0.56, 0.54, 0.54, 0.55 }, 0.36, 0.012,
    "Everest, Master Handbook of Acoustics, 4th ed., p. 163" },
  { "bare", { { "parquet", 20 }, { "plaster-on-lath", 20 }, { "gypsum-board", 40 }, { "window-glass", 3 }, { "door-wood", 2 } }, 50,
    { 0, 0, 5.24, 0, 0, 5.80 }, { 0, 0, 1.536, 0, 0, 1.388 }, 0.005, 0.005, "5.0 x 4.0 x 2.5 m: 0.161 V / A by hand" },
  { "furnished", { { "parquet", 8 }, { "carpet-on-underlay", 12 }, { "plaster-on-lath", 20 }, { "gypsum-board", 34 }, { "curtain-folds", 9 },
                   { "door-wood", 2 } }, 50,
    { 14.59, 10.09, 13.55, 14.60, 16.76, 17.56 }, { 0.552, 0.798, 0.594, 0.551, 0.480, 0.458 }, 0.006, 0.003, "the same, by hand" },
};

static void
test_room (gconstpointer data)
{
  const RoomCase *c = data;

  g_test_message ("%s", c->source);
  for (guint band = 0; band < LR_N_BANDS; band++)
    {
      double absorption_m2 = 0.0, time_s = NAN;

      for (guint i = 0; i < G_N_ELEMENTS (c->parts) && c->parts[i].id != NULL; i++)
        absorption_m2 += c->parts[i].area_m2 * lr_material_find (c->parts[i].id)->absorption[band];
      if (c->absorption_m2[band] > 0.0)
        g_assert_cmpfloat_with_epsilon (absorption_m2, c->absorption_m2[band], c->tolerance_m2);
      g_assert_true (lr_reverberation_sabine_s (c->volume_m3, absorption_m2, 0.0, &time_s));
      if (c->time_s[band] > 0.0)
        g_assert_cmpfloat_with_epsilon (time_s, c->time_s[band], c->tolerance_s);
    }
}

typedef struct
{
  const char *id;
  double      absorption[LR_N_BANDS];
  double      tolerance;
  const char *source;
} RowCase;

static const RowCase row_cases[] = {
  { "brick-bare", { .03, .03, .03, .04, .05, .07 }, 1e-9, "Barron 2003 and Audio Engineering: Know It All, table 3.4, alike" },
  { "block-bare", { .36, .44, .31, .29, .39, .25 }, 1e-9, "the same two" },
  { "carpet-on-underlay", { .08, .24, .57, .69, .71, .73 }, 1e-9, "Audio Engineering: Know It All and Cox and D'Antonio, alike" },
  { "drape-heavy-folds", { .14, .35, .55, .77, .70, .60 }, 0.06, "Cox and D'Antonio print 0.77 0.70 0.60 where others have 0.72 0.70 0.65" },
  { "plaster-on-brick", { .013, .015, .02, .03, .04, .05 }, 0.0051, "Barron 2003, to two decimals" },
};

static void
test_row (gconstpointer data)
{
  const RowCase *c = data;

  g_test_message ("%s", c->source);
  for (guint band = 0; band < LR_N_BANDS; band++)
    g_assert_cmpfloat_with_epsilon (lr_material_find (c->id)->absorption[band], c->absorption[band], c->tolerance);
}

static void
check_listed (const char *source,
              const char *title)
{
  g_autofree char *mark = g_strdup_printf ("N_(\"%s\")", title);

  if (strstr (source, mark) == NULL)
    g_error ("src/plan/materials.c does not list %s", mark);
}

/* Each row has a source, is what a plan can hold, is found again by its figures, and is listed for translators */
static void
test_whole (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "src", "plan", "materials.c", NULL), *source = NULL;
  gsize n;
  const LrMaterial *materials = lr_materials (&n);

  g_assert_true (g_file_get_contents (path, &source, NULL, NULL));
  g_assert_cmpuint (n, >, 20);
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup (materials[i].title);
      LrSurface surface = { .material = name };

      memcpy (surface.absorption, materials[i].absorption, sizeof surface.absorption);
      g_assert_cmpstr (materials[i].source, !=, "");
      g_assert_true (lr_material_find (materials[i].id) == &materials[i]);
      g_assert_true (lr_material_of (&surface) == &materials[i]);
      check_listed (source, materials[i].title);
      g_assert_true (materials[i].is_of_walls || materials[i].is_of_floors || materials[i].is_of_ceilings); /* offered somewhere */
      for (guint band = 0; band < LR_N_BANDS; band++)
        {
          g_assert_cmpfloat (materials[i].absorption[band], >, 0.0);
          g_assert_cmpfloat (materials[i].absorption[band], <, 1.0);
        }
    }
  for (LrSoundThing thing = 0; thing < LR_N_THINGS; thing++)
    {
      g_assert_nonnull (lr_material_of_thing (thing));
      g_assert_cmpstr (lr_material_of_thing (thing)->source, !=, "");
      check_listed (source, lr_material_of_thing (thing)->title);
    }
  g_assert_null (lr_material_find ("nothing"));
  g_assert_true (lr_material_suits (lr_material_find ("parquet"), "floor"));
  g_assert_false (lr_material_suits (lr_material_find ("parquet"), "walls"));
  g_assert_true (lr_material_suits (lr_material_find ("acoustic-tile"), "ceiling"));
  g_assert_false (lr_material_suits (lr_material_find ("acoustic-tile"), "floor"));
}

/* A surface takes its name and all of its absorption, and keeps how it throws light back */
static void
test_set (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty (), next = NULL;
  const LrMaterial *material = lr_material_find ("carpet-on-underlay");
  const LrRoom *room;

  next = lr_plan_set_material (plan, "floor", material, NULL);
  g_assert_nonnull (next);
  room = lr_plan_get_setup (next)->room;
  g_assert_true (lr_material_of (&room->floor) == material);
  g_assert_cmpstr (room->floor.material, ==, material->title);
  g_assert_cmpfloat (room->floor.reflectance, ==, lr_plan_get_setup (plan)->room->floor.reflectance);
  g_assert_true (lr_material_of (&room->walls) != material);
}

/* Patterns and tubes are such as the properties take */
static void
test_factors (void)
{
  static const char *const keys[] = { "omni-share-pct", "tube-mm" };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      gsize n;
      const LrFactor *factors = lr_format_factors (keys[i], &n);

      g_assert_cmpuint (n, >=, 3);
      for (gsize k = 0; k < n; k++)
        {
          g_assert_true (lr_prop_accepts (lr_item_find_prop (LR_ITEM_MICROPHONE, keys[i]), factors[k].value));
          g_assert_cmpstr (factors[k].source, !=, "");
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (room_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/materials/room/", room_cases[i].name, NULL);

      g_test_add_data_func (path, &room_cases[i], test_room);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (row_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/materials/row/", row_cases[i].id, NULL);

      g_test_add_data_func (path, &row_cases[i], test_row);
    }
  g_test_add_func ("/materials/whole", test_whole);
  g_test_add_func ("/materials/factors", test_factors);
  g_test_add_func ("/materials/set", test_set);

  return g_test_run ();
}
