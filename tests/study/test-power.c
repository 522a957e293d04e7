/* test-power.c - what the leads draw from the sockets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  const char *name;   /* of the row: the socket's tag */
  const char *socket; /* in: id in the example of the loft */
  gboolean    has_lead;
  double      load_w; /* expected */
} LoadCase;

/* Source: the powers in the kit of the example, added by hand: 200 W + 80 W on S2, one of 60 W on S3 */
static const LoadCase load_cases[] = {
  { "S1", "socket-1", FALSE, -1.0 },
  { "S2", "socket-2", TRUE, 280.0 },
  { "S3", "socket-3", TRUE, 60.0 },
};

static void
test_load (gconstpointer data)
{
  const LoadCase *c = data;
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  double load_w = -1.0;

  g_assert_cmpint (lr_study_socket_load_w (study, lr_study_find_placed (study, c->socket)->item, &load_w), ==, c->has_lead);
  assert_near (load_w, c->load_w, 1e-9);
}

/* A lead that feeds nothing yet takes the socket but draws nothing; dimming does not count */
static void
test_full (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  double load_w = -1.0;

  fixture_text (&plan, "lead-1", "feeds", "");
  fixture_set (&plan, "light-3", "dim-pct", 0.0);
  study = lr_study_new (plan);
  g_assert_true (lr_study_socket_load_w (study, lr_study_find_placed (study, "socket-2")->item, &load_w));
  assert_near (load_w, 80.0, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/power/socket", load_cases, test_load);
  g_test_add_func ("/power/full", test_full);

  return g_test_run ();
}
