/* test-power-overlay.c - circuits on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "small_room.h"

#include "pen.h"
#include "remarks.h"

#include <string.h>

/* Around the socket at 2.50 m along the south wall, over what is written beside it [px] */
#define BOX_LEFT 335
#define BOX_RIGHT 380
#define BOX_TOP 470
#define BOX_FOOT 505

/* The small room with its socket on a circuit of 10 A at 230 V that bears so much already */
static LrPlan *
room_on_circuit (SmallRoom *room,
                 double     known_w)
{
  g_autofree char *circuit = NULL;
  LrPlan *plan = add (lr_plan_ref (room->plan), LR_ITEM_CIRCUIT, 0, lr_vec2 (0.5, 0.5), 0.0, &circuit);
  LrChange changes[] = { { circuit, "volts-v", 230.0 }, { circuit, "amps-a", 10.0 }, { circuit, "known-load-w", known_w } };
  GError *error = NULL;

  plan = next (plan, lr_plan_change (plan, changes, G_N_ELEMENTS (changes), &error), error);
  return set_text (plan, room->socket, "circuit", circuit);
}

static gboolean
is_near (guint32 pixel,
         LrColor color)
{
  return fabs ((pixel >> 16 & 0xff) / 255.0 - color.r) < 0.1 && fabs ((pixel >> 8 & 0xff) / 255.0 - color.g) < 0.1
         && fabs ((pixel & 0xff) / 255.0 - color.b) < 0.1;
}

/* How many pixels at the socket have the color of a Fix */
static int
count_fix (SmallRoom *room,
           double     known_w,
           guint      shown)
{
  g_autoptr (LrPlan) plan = room_on_circuit (room, known_w);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 800, 600);
  cairo_t *cr = cairo_create (surface);
  LrView view = small_room_view (LR_THEME_LIGHT);
  int n = 0;

  view.shown = shown;
  lr_floor_draw (cr, plan, study, remarks, &view);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = BOX_TOP; y < BOX_FOOT; y++)
    for (int x = BOX_LEFT; x < BOX_RIGHT; x++)
      {
        guint32 value;

        memcpy (&value, cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface) + 4 * x, sizeof value);
        n += is_near (value, view.theme->fix_fill);
      }
  cairo_surface_destroy (surface);
  return n;
}

/* A diamond of half-width 7 px has some 98 px², less its sign. 3000 W of 2300 W are over what a circuit bears for hours, 500 W are not */
static void
test_socket_mark (void)
{
  SmallRoom room = small_room_new ();

  g_assert_cmpint (count_fix (&room, 3000.0, LR_SHOW_POWER), >, 40);
  g_assert_cmpint (count_fix (&room, 500.0, LR_SHOW_POWER), ==, 0);
  g_assert_cmpint (count_fix (&room, 3000.0, 0), ==, 0);
  small_room_clear (&room);
}

/* Three circuits are told apart by their dashes alone */
static void
test_dashes (void)
{
  LrPlan *plan = lr_plan_new_empty ();
  char *ids[3] = { NULL };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    plan = add (plan, LR_ITEM_CIRCUIT, 0, lr_vec2 (0.0, 0.0), 0.0, &ids[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    for (gsize k = 0; k < i; k++)
      g_assert_cmpint (lr_symbol_lead_dash (lr_plan_get_setup (plan), ids[i]), !=, lr_symbol_lead_dash (lr_plan_get_setup (plan), ids[k]));
  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    g_free (ids[i]);
  lr_plan_unref (plan);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/power/socket-mark", test_socket_mark);
  g_test_add_func ("/power/dashes", test_dashes);
  return g_test_run ();
}
