/* test-labels.c - labels find a place, or yield
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "labels_private.h"

typedef struct
{
  cairo_surface_t *surface;
  cairo_t         *cr;
  LrView           view;
  LrLabels        *labels;
} Fixture;

static void
set_up (Fixture      *f,
        gconstpointer data G_GNUC_UNUSED)
{
  f->surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  f->cr = cairo_create (f->surface);
  f->view = (LrView) { .theme = lr_theme_get (LR_THEME_LIGHT), .scale = 100.0, .width = 400.0, .height = 400.0 };
  f->labels = lr_labels_new (f->cr, &f->view);
}

static void
tear_down (Fixture      *f,
           gconstpointer data G_GNUC_UNUSED)
{
  lr_labels_free (f->labels);
  cairo_destroy (f->cr);
  cairo_surface_destroy (f->surface);
}

static const LrLabelEntry *
entry (Fixture *f,
       guint    i)
{
  return g_ptr_array_index (f->labels->entries, i);
}

/* A disc of 20 px at 200, 200 that is also in the way */
static LrOutline
add_thing (Fixture *f)
{
  LrOutline thing = { .centre_m = { 200.0, 200.0 }, .radius_m = 20.0 };

  lr_labels_block_disc (f->labels, thing.centre_m, thing.radius_m);

  return thing;
}

static LrLabel
make_label (LrLabelRank rank,
            const char *tag,
            const char *text)
{
  return (LrLabel) {
    .rank = rank, .tag = tag, .tag_kind = LR_ITEM_LIGHT, .tag_size = 12.0, .text = text, .style = { .size = 12.0 },
    .text_may_yield = tag != NULL,
  };
}

/* East first, 8 px off */
static void
test_east (Fixture      *f,
           gconstpointer data G_GNUC_UNUSED)
{
  LrOutline thing = add_thing (f);
  LrLabel label = make_label (LR_LABEL_NAME, NULL, "Ines");

  lr_labels_add_beside (f->labels, &label, &thing);
  lr_labels_draw (f->labels);
  g_assert_true (entry (f, 0)->is_placed);
  g_assert_cmpfloat_with_epsilon (entry (f, 0)->at.y, 200.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (entry (f, 0)->at.x - 0.5 * entry (f, 0)->text_width, 228.0, 1e-9);
}

/* A long thing that stands askew: its label stands at its end, though another thing is nearer to its middle */
static void
test_long (Fixture      *f,
           gconstpointer data G_GNUC_UNUSED)
{
  LrOutline bar = lr_outline_box (lr_vec2 (200.0, 200.0), 4.0, 100.0, 80.0 * LR_DEG);
  LrOutline other = { .centre_m = { 200.0, 160.0 }, .radius_m = 20.0 };
  LrLabel label = make_label (LR_LABEL_TAG, "R1", NULL);
  double nearest = HUGE_VAL;
  LrShape box;

  label.first = 3; /* SW */
  lr_labels_block_disc (f->labels, other.centre_m, other.radius_m);
  lr_labels_block_polygon (f->labels, bar.corner_m, bar.n);
  lr_labels_add_beside (f->labels, &label, &bar);
  lr_labels_add_beside (f->labels, &label, &other);
  lr_labels_draw (f->labels);

  box = lr_shape_box (entry (f, 0)->at, entry (f, 0)->tag_width, entry (f, 0)->tag_height, 0.0);
  for (gsize i = 0; i < bar.n; i++)
    nearest = MIN (nearest, lr_vec2_distance (bar.corner_m[i], lr_vec2 (box.high.x, box.low.y)));
  g_assert_false (entry (f, 0)->has_leader);
  g_assert_cmpfloat_with_epsilon (nearest, 8.0, 1e-6);
}

/* Then south-east, and so on clockwise; each of eight labels of one thing gets a side */
static void
test_round (Fixture      *f,
            gconstpointer data G_GNUC_UNUSED)
{
  LrOutline thing = add_thing (f);
  LrLabel label = make_label (LR_LABEL_NAME, NULL, "I");

  for (int i = 0; i < 8; i++)
    lr_labels_add_beside (f->labels, &label, &thing);
  lr_labels_draw (f->labels);
  for (guint i = 0; i < 8; i++)
    {
      LrVec2 off = lr_vec2_sub (entry (f, i)->at, thing.centre_m);

      g_assert_true (entry (f, i)->is_placed);
      g_assert_cmpfloat_with_epsilon (lr_angle_wrap_rad (lr_vec2_angle_rad (off) - i * LR_PI / 4.0), 0.0, 0.12);
    }
}

/* No two labels and no thing overlap, however many there are */
static void
test_apart (Fixture      *f,
            gconstpointer data G_GNUC_UNUSED)
{
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (LrShape));

  for (int i = 0; i < 40; i++)
    {
      LrOutline thing = { .centre_m = { g_test_rand_double_range (0, 400), g_test_rand_double_range (0, 400) }, .radius_m = 12.0 };
      LrLabel label = make_label (LR_LABEL_NAME, NULL, "Wenna");

      lr_labels_block_disc (f->labels, thing.centre_m, thing.radius_m);
      lr_labels_add_beside (f->labels, &label, &thing);
    }
  lr_labels_draw (f->labels);
  for (guint i = 0; i < f->labels->entries->len; i++)
    {
      LrShape box = lr_shape_box (entry (f, i)->at, entry (f, i)->text_width, entry (f, i)->text_height, 0.0);

      if (!entry (f, i)->is_placed)
        continue;
      for (guint k = 0; k < boxes->len; k++)
        g_assert_false (lr_shape_meets (&box, &g_array_index (boxes, LrShape, k)));
      g_array_append_val (boxes, box);
    }
  g_assert_cmpuint (boxes->len, >, 20);
  g_array_unref (boxes);
}

static void
block_all (Fixture *f,
           double   reach)
{
  lr_labels_block_disc (f->labels, lr_vec2 (200.0, 200.0), reach);
}

/* What is crowded out: a note goes, a tag gets a leader, a figure stands in any case */
static void
test_crowded (Fixture      *f,
              gconstpointer data G_GNUC_UNUSED)
{
  LrOutline thing = add_thing (f);
  LrLabel note = make_label (LR_LABEL_NOTE, NULL, "window 1"), tag = make_label (LR_LABEL_TAG, "L1", "Key");
  LrLabel figure = make_label (LR_LABEL_FIGURE, NULL, "22°");

  block_all (f, 20.0 + 42.0);
  lr_labels_add_beside (f->labels, &note, &thing);
  lr_labels_add_beside (f->labels, &tag, &thing);
  lr_labels_add_beside (f->labels, &figure, &thing);
  lr_labels_draw (f->labels);
  g_assert_false (entry (f, 0)->is_placed);
  g_assert_true (entry (f, 1)->is_placed);
  g_assert_true (entry (f, 1)->has_leader);
  g_assert_cmpfloat (lr_vec2_distance (entry (f, 1)->leader_from, entry (f, 1)->leader_to), <=, 60.0 + 1e-6);
  g_assert_true (entry (f, 2)->is_placed);
}

/* The job word goes before the person's name does: the first takes the only free side, then gives it up */
static void
test_word_yields (Fixture      *f,
                  gconstpointer data G_GNUC_UNUSED)
{
  LrOutline light = { .centre_m = { 200.0, 200.0 }, .radius_m = 10.0 };
  LrOutline person = { .centre_m = { 330.0, 200.0 }, .radius_m = 10.0 };
  LrLabel tag = make_label (LR_LABEL_TAG, "L1", "for the key"), name = make_label (LR_LABEL_NAME, NULL, "Wenna");

  lr_labels_block_box (f->labels, 0.0, 0.0, 400.0, 190.0);
  lr_labels_block_box (f->labels, 0.0, 210.0, 400.0, 190.0);
  lr_labels_block_box (f->labels, 332.0, 190.0, 68.0, 20.0);
  lr_labels_block_disc (f->labels, light.centre_m, 10.0);
  lr_labels_add_beside (f->labels, &tag, &light);
  lr_labels_add_beside (f->labels, &name, &person);
  lr_labels_draw (f->labels);
  g_assert_true (entry (f, 0)->is_placed);
  g_assert_false (entry (f, 0)->has_text);
  g_assert_true (entry (f, 1)->is_placed);
}

/* A thin line is crossed only when nothing else near is free */
static void
test_lines (Fixture      *f,
            gconstpointer data G_GNUC_UNUSED)
{
  LrOutline thing = add_thing (f);
  LrLabel label = make_label (LR_LABEL_NAME, NULL, "Ines");

  lr_labels_avoid_segment (f->labels, lr_vec2 (240.0, 0.0), lr_vec2 (240.0, 400.0));
  lr_labels_add_beside (f->labels, &label, &thing);
  lr_labels_draw (f->labels);
  g_assert_true (entry (f, 0)->is_placed);
  g_assert_cmpfloat (entry (f, 0)->at.x + 0.5 * entry (f, 0)->text_width, <=, 240.0);
}


/* A box of 20 by 10 against a disc, a line and a turned box: by drawing it on squared paper */
static void
test_shapes (void)
{
  LrShape box = lr_shape_box (lr_vec2 (0.0, 0.0), 20.0, 10.0, 0.0);
  LrShape shapes[] = {
    lr_shape_disc (lr_vec2 (14.0, 0.0), 3.9),                  lr_shape_disc (lr_vec2 (14.0, 0.0), 4.1),
    lr_shape_disc (lr_vec2 (13.0, 9.0), 4.9),                  lr_shape_disc (lr_vec2 (13.0, 9.0), 5.1),
    lr_shape_polygon ((LrVec2[]) { { -20, 6 }, { 20, 6 } }, 2), lr_shape_polygon ((LrVec2[]) { { -20, -20 }, { 20, 20 } }, 2),
    lr_shape_box (lr_vec2 (17.2, 0.0), 10.0, 10.0, LR_PI / 4), lr_shape_box (lr_vec2 (16.9, 0.0), 10.0, 10.0, LR_PI / 4),
    lr_shape_disc (lr_vec2 (0.0, 0.0), 1.0),
  };
  gboolean meets[] = { FALSE, TRUE, FALSE, TRUE, FALSE, TRUE, FALSE, TRUE, TRUE };

  for (gsize i = 0; i < G_N_ELEMENTS (shapes); i++)
    g_assert_cmpint (lr_shape_meets (&box, &shapes[i]), ==, meets[i]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, func) g_test_add ("/labels/" name, Fixture, NULL, set_up, func, tear_down)
  ADD ("east", test_east);
  ADD ("long", test_long);
  ADD ("round", test_round);
  ADD ("apart", test_apart);
  ADD ("crowded", test_crowded);
  ADD ("word-yields", test_word_yields);
  ADD ("lines", test_lines);
  g_test_add_func ("/labels/shapes", test_shapes);

  return g_test_run ();
}
