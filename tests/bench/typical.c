/* typical.c - the plans that the benches measure with, made by the edits that a hand makes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "typical.h"

#include "plan_edit.h"
#include "plan_reader.h"

#include <stdlib.h>

typedef struct
{
  LrItemKind  kind;
  int         form;
  double      x_m, y_m, facing_deg;
  const char *aims_at; /* id, or NULL */
} Thing;

static const LrVec2 room_corners_m[] = {
  { 0.0, 0.0 }, { 7.2, 0.0 }, { 7.2, 5.4 }, { 4.6, 5.4 }, { 4.6, 5.0 }, { 2.9, 5.0 }, { 2.9, 5.4 }, { 0.0, 5.4 },
};

static const Thing openings[] = {
  { LR_ITEM_DOOR, 0, 7.2, 1.0, 0, NULL },
  { LR_ITEM_WINDOW, 0, 1.4, 5.4, 0, NULL },
  { LR_ITEM_WINDOW, 0, 0.0, 3.8, 0, NULL },
};

static const Thing interview[] = {
  { LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.6, 2.9, -20, NULL },
  { LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 4.3, 2.25, 160, NULL },
  { LR_ITEM_CAMERA, 0, 4.8, 2.95, 180, "person-1" },
  { LR_ITEM_CAMERA, 0, 4.5, 4.0, 210, "person-1" },
  { LR_ITEM_CAMERA, 0, 2.2, 1.3, 30, "person-2" },
  { LR_ITEM_LIGHT, LR_LIGHT_WIDE, 3.4, 4.3, 240, "person-1" },
  { LR_ITEM_LIGHT, LR_LIGHT_WIDE, 3.6, 0.9, 110, "person-1" },
  { LR_ITEM_LIGHT, LR_LIGHT_POINT, 0.8, 4.5, -40, "person-1" },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, 0.7, 1.0, 180, NULL },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, 5.9, 3.6, 210, "person-2" },
  { LR_ITEM_MICROPHONE, LR_MIC_BOOM, 1.6, 2.1, 45, "person-1" },
  { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 2.6, 2.9, 0, NULL },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, 4.9, 1.5, 140, "person-2" },
};

static const Thing furniture[] = {
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 2.6, 2.9, -20, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 4.3, 2.25, 160, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 1.3, 3.4, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, 6.6, 4.2, 180, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 0.25, 2.0, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 0.25, 2.9, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, 5.4, 4.9, -90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, 0.08, 4.2, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_RADIATOR, 1.4, 5.3, -90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 1.2, 0.3, 90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 1.8, 0.3, 90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, 3.75, 4.7, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, 2.6, 3.7, 0, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 5.5, 0.4, 90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 4.6, 0.45, 90, NULL },
};

/* What a hall is filled with, over and over: of ten things seven are furniture */
static const Thing filling[] = {
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 0.0, 0.0, 90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 0.0, 0.0, 90, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 0.0, 0.0, 0, NULL },
  { LR_ITEM_LIGHT, LR_LIGHT_PANEL, 0.0, 0.0, -135, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 0.0, 0.0, 180, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 0.0, 0.0, 90, NULL },
  { LR_ITEM_MICROPHONE, LR_MIC_STAND, 0.0, 0.0, 45, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 0.0, 0.0, 0, NULL },
  { LR_ITEM_PANEL, LR_PANEL_REFLECTOR, 0.0, 0.0, 45, NULL },
  { LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, 0.0, 0.0, 0, NULL },
};

/* The next plan instead of this one; what a bench is built of is never refused */
static void
advance (LrPlan **plan,
         LrPlan  *next,
         GError  *error)
{
  g_assert_no_error (error);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
draw_room (LrPlan       **plan,
           const LrVec2  *corners_m,
           gsize          n_corners)
{
  GError *error = NULL;

  advance (plan, lr_plan_set_corners (*plan, corners_m, n_corners, &error), error);
}

static void
add (LrPlan      **plan,
     const Thing  *thing,
     LrVec2        at_m)
{
  g_autoptr (LrItem) item = lr_item_new_usual (thing->kind, thing->form, "thing");
  GError *error = NULL;
  g_autofree char *id = NULL;

  advance (plan, lr_plan_add (*plan, item, at_m, thing->facing_deg * LR_DEG, &id, &error), error);
  if (thing->aims_at != NULL)
    advance (plan, lr_plan_change_text (*plan, id, "aims-at", thing->aims_at, &error), error);
}

static void
add_all (LrPlan      **plan,
         const Thing  *things,
         gsize         n)
{
  for (gsize i = 0; i < n; i++)
    add (plan, &things[i], lr_vec2 (things[i].x_m, things[i].y_m));
}

/* Who talks to whom, and lenses for a pair of frames that cut */
static void
direct (LrPlan **plan)
{
  const LrChange changes[] = {
    { "camera-1", "focal-mm", 0.085 },
    { "camera-2", "focal-mm", 0.05 },
    { "camera-3", "focal-mm", 0.035 },
    { "light-2", "job", LR_JOB_FILL },
    { "light-3", "job", LR_JOB_BACK },
    { "light-4", "job", LR_JOB_WALL },
    { "light-5", "job", LR_JOB_OTHER },
    { "microphone-1", "tip-x-mm", 2.7 },
    { "microphone-1", "tip-y-mm", 2.8 },
  };
  GError *error = NULL;

  advance (plan, lr_plan_change_text (*plan, "person-1", "looks-at", "person-2", &error), error);
  advance (plan, lr_plan_change_text (*plan, "person-2", "looks-at", "person-1", &error), error);
  advance (plan, lr_plan_change_text (*plan, "microphone-2", "worn-by", "person-1", &error), error);
  advance (plan, lr_plan_change (*plan, changes, G_N_ELEMENTS (changes), &error), error);
}

/**
 * lr_typical_plan_new:
 *
 * Returns: (transfer full): an interview of usual size
 */
LrPlan *
lr_typical_plan_new (void)
{
  LrPlan *plan = lr_plan_new_empty ();

  draw_room (&plan, room_corners_m, G_N_ELEMENTS (room_corners_m));
  add_all (&plan, openings, G_N_ELEMENTS (openings));
  add_all (&plan, interview, G_N_ELEMENTS (interview));
  add_all (&plan, furniture, G_N_ELEMENTS (furniture));
  direct (&plan);

  return plan;
}

/**
 * lr_large_plan_new:
 * @n_items: how many items, more than the typical plan has
 *
 * The hall grows with the items, so that they stand as close in a small plan as in a large one: 1.5 m from each other,
 * left of the interview.
 *
 * Returns: (transfer full): a plan of that many items
 */
LrPlan *
lr_large_plan_new (guint n_items)
{
  LrPlan *plan = lr_typical_plan_new ();
  guint n_filled = n_items - lr_plan_get_setup (plan)->items->len;
  guint columns = (guint) ceil (sqrt (n_filled));
  double side_m = 1.5 * columns + 1.0;
  const LrVec2 hall_m[] = { { -side_m, 0.0 }, { 7.2, 0.0 }, { 7.2, fmax (side_m, 5.4) }, { -side_m, fmax (side_m, 5.4) } };

  draw_room (&plan, hall_m, G_N_ELEMENTS (hall_m));
  for (guint i = 0; i < n_filled; i++)
    add (&plan, &filling[i % G_N_ELEMENTS (filling)],
         lr_vec2 (-1.0 - 1.5 * (i % columns), 1.0 + 1.5 * (i / columns)));

  return plan;
}

/**
 * lr_bench_plan_open:
 * @argc: of main()
 * @argv: of main()
 *
 * Returns: (transfer full): the plan file that the first argument names, or the typical plan without one
 */
LrPlan *
lr_bench_plan_open (int    argc,
                    char **argv)
{
  g_autoptr (GError) error = NULL;
  LrPlan *plan = argc > 1 ? lr_plan_read (argv[1], &error) : lr_typical_plan_new ();

  if (plan == NULL)
    {
      g_printerr ("%s: %s\n", argv[0], error->message);
      exit (2);
    }

  return plan;
}
