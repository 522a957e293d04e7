/* test-floor.c - the sheet as a whole
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "small_room.h"

#include "light_shade.h"
#include "remarks.h"
#include "sun_readings.h"

#include <string.h>

typedef struct
{
  SmallRoom  room;
  LrStudy   *study;
  LrRemarks *remarks;
} Fixture;

static void
set_up (Fixture      *f,
        gconstpointer data G_GNUC_UNUSED)
{
  f->room = small_room_new ();
  f->study = lr_study_new (f->room.plan);
  f->remarks = lr_remarks_new (f->study, LR_UNITS_METRIC);
}

static void
tear_down (Fixture      *f,
           gconstpointer data G_GNUC_UNUSED)
{
  lr_remarks_free (f->remarks);
  lr_study_free (f->study);
  small_room_clear (&f->room);
}

static cairo_surface_t *
new_surface (void)
{
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, 800, 600);
}

static void
draw_on (cairo_surface_t *surface,
         const Fixture   *f,
         const LrView    *view)
{
  cairo_t *cr = cairo_create (surface);

  lr_floor_draw (cr, f->room.plan, f->study, f->remarks, view);
  if (view->skip != NULL)
    lr_floor_draw_still_fixes (cr, f->study, f->remarks, view);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
}

static guint32
pixel (cairo_surface_t *surface,
       int              x,
       int              y)
{
  const unsigned char *row = cairo_image_surface_get_data (surface) + (gsize) y * (gsize) cairo_image_surface_get_stride (surface);
  guint32 value;

  memcpy (&value, row + 4 * x, sizeof value);

  return value & 0xffffff;
}

typedef struct
{
  int n, x0, y0, x1, y1;
} Difference;

static Difference
compare (cairo_surface_t *a,
         cairo_surface_t *b)
{
  Difference d = { 0, 800, 600, -1, -1 };

  for (int y = 0; y < 600; y++)
    for (int x = 0; x < 800; x++)
      if (pixel (a, x, y) != pixel (b, x, y))
        {
          d.n++;
          d.x0 = MIN (d.x0, x);
          d.y0 = MIN (d.y0, y);
          d.x1 = MAX (d.x1, x);
          d.y1 = MAX (d.y1, y);
        }

  return d;
}

static LrView
full_view (const Fixture *f,
           LrThemeId      id)
{
  LrView view = small_room_view (id);

  view.shown = SHOW_ALL;
  view.in_hand = f->room.camera;
  view.is_page = id == LR_THEME_PAGE;

  return view;
}

static void
test_steady (Fixture      *f,
             gconstpointer data G_GNUC_UNUSED)
{
  for (int id = 0; id < LR_N_THEMES; id++)
    {
      cairo_surface_t *a = new_surface (), *b = new_surface ();
      LrView view = full_view (f, id);

      draw_on (a, f, &view);
      draw_on (b, f, &view);
      g_assert_cmpint (compare (a, b).n, ==, 0);
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
    }
}

/* What the fixed half of a drag leaves out lies within the extents that are promised */
static void
test_extents (Fixture      *f,
              gconstpointer data G_GNUC_UNUSED)
{
  const char *ids[] = { f->room.subject, f->room.camera, f->room.light, f->room.boom,   f->room.lavalier, f->room.flag,  f->room.lead,
                        f->room.table,   f->room.door,   f->room.window, f->room.socket, f->room.noise,   f->room.chair, f->room.house_light };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      cairo_surface_t *whole = new_surface (), *without = new_surface ();
      LrView view = full_view (f, LR_THEME_LIGHT);
      cairo_rectangle_t extents;
      Difference d;

      view.in_hand = ids[i];
      draw_on (whole, f, &view);
      lr_floor_item_extents (f->study, &view, ids[i], &extents);
      view.skip = ids[i];
      draw_on (without, f, &view);
      d = compare (whole, without);
      g_test_message ("%s: %d pixels in %d..%d, %d..%d; extents %g %g %g %g", ids[i], d.n, d.x0, d.x1, d.y0, d.y1, extents.x,
                      extents.y, extents.width, extents.height);
      g_assert_cmpint (d.n, >, 0);
      g_assert_cmpfloat (d.x0, >=, extents.x);
      g_assert_cmpfloat (d.y0, >=, extents.y);
      g_assert_cmpfloat (d.x1, <=, extents.x + extents.width);
      g_assert_cmpfloat (d.y1, <=, extents.y + extents.height);
      cairo_surface_destroy (whole);
      cairo_surface_destroy (without);
    }
}

/* The two halves of a drag together are the whole, for a thing that nothing lies over and whose label has its own place */
static void
test_halves (Fixture      *f,
             gconstpointer data G_GNUC_UNUSED)
{
  const char *ids[] = { f->room.chair, f->room.flag, f->room.house_light };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      cairo_surface_t *whole = new_surface (), *halves = new_surface ();
      LrView view = full_view (f, LR_THEME_LIGHT);

      view.shown = 0;
      view.in_hand = NULL;
      draw_on (whole, f, &view);
      view.skip = ids[i];
      draw_on (halves, f, &view);
      view.skip = NULL;
      view.only = ids[i];
      draw_on (halves, f, &view);
      g_test_message ("%s: %d", ids[i], compare (whole, halves).n);
      g_assert_cmpint (compare (whole, halves).n, <, 30); /* joins of the halves */
      cairo_surface_destroy (whole);
      cairo_surface_destroy (halves);
    }
}

/* Who moves the subject moves all that aims at it: none of it may be in the fixed half */
static void
test_moving_half (Fixture      *f,
                  gconstpointer data G_GNUC_UNUSED)
{
  cairo_surface_t *a = new_surface (), *b = new_surface ();
  LrView view = full_view (f, LR_THEME_LIGHT);
  Fixture moved = { .room = f->room };
  GError *error = NULL;

  moved.room.plan = lr_plan_move (f->room.plan, f->room.subject, lr_vec2 (2.3, 2.2), &error);
  g_assert_no_error (error);
  moved.study = lr_study_new (moved.room.plan);

  view.in_hand = NULL;
  view.skip = f->room.subject;
  draw_on (a, f, &view);
  moved.remarks = lr_remarks_new (moved.study, LR_UNITS_METRIC);
  /* marks belong to what is wrong, which a move may change: compare without them */
  lr_remarks_free (f->remarks);
  f->remarks = NULL;
  draw_on (a, f, &view);
  lr_remarks_free (moved.remarks);
  moved.remarks = NULL;
  draw_on (b, &moved, &view);
  g_assert_cmpint (compare (a, b).n, ==, 0);
  f->remarks = lr_remarks_new (f->study, LR_UNITS_METRIC);

  lr_study_free (moved.study);
  lr_plan_unref (moved.room.plan);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
}

static guint32
packed (LrColor color)
{
  return (guint32) lround (color.r * 255.0) << 16 | (guint32) lround (color.g * 255.0) << 8 | (guint32) lround (color.b * 255.0);
}

/* Ground outside, room inside, and on an empty plan ground and grid alone */
static void
test_grounds (Fixture      *f,
              gconstpointer data G_GNUC_UNUSED)
{
  cairo_surface_t *surface = new_surface ();
  LrView view = full_view (f, LR_THEME_DARK);

  view.shown = 0;
  view.in_hand = NULL;
  draw_on (surface, f, &view);
  g_assert_cmphex (pixel (surface, 60, 60), ==, packed (view.theme->ground));
  g_assert_cmphex (pixel (surface, 650, 130), ==, packed (view.theme->room));
  g_assert_cmphex (pixel (surface, 650, 93), ==, packed (view.theme->wall));
  cairo_surface_destroy (surface);
}

static void
test_empty (void)
{
  Fixture empty = { .room = { .plan = lr_plan_new_empty () } };
  cairo_surface_t *surface = new_surface ();
  LrView view = small_room_view (LR_THEME_LIGHT);
  int n_other = 0;

  empty.study = lr_study_new (empty.room.plan);
  view.shown = SHOW_ALL;
  draw_on (surface, &empty, &view);
  for (int y = 0; y < 600; y++)
    for (int x = 0; x < 800; x++)
      n_other += pixel (surface, x, y) != packed (view.theme->ground);
  /* 8 upright and 6 level lines, each at most 2 px wide with its soft edge */
  g_assert_cmpint (n_other, >, 800);
  g_assert_cmpint (n_other, <=, 2 * (9 * 600 + 7 * 800));

  lr_view_fit (&view, empty.study, 40.0, 0.0);
  g_assert_cmpfloat (view.scale, >, 10.0);

  lr_study_free (empty.study);
  lr_plan_unref (empty.room.plan);
  cairo_surface_destroy (surface);
}

/* The whole room with the margin around it, in the middle */
static void
test_fit (Fixture      *f,
          gconstpointer data G_GNUC_UNUSED)
{
  LrView view = small_room_view (LR_THEME_LIGHT);
  g_autoptr (LrPlan) plan = lr_plan_remove (f->room.plan, f->room.noise, NULL); /* which is behind a wall */
  g_autoptr (LrStudy) study = lr_study_new (plan);
  LrVec2 low, high;

  lr_view_fit (&view, study, 50.0, 0.0);
  low = lr_view_to_device (&view, lr_vec2 (0.0, 0.0));
  high = lr_view_to_device (&view, lr_vec2 (6.0, 4.0));
  g_assert_cmpfloat_with_epsilon (low.x, 50.0, 1e-9); /* 700 px for 6 m, 500 for 4: the width decides */
  g_assert_cmpfloat_with_epsilon (high.x, 750.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (low.y + high.y, 600.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (view.scale, 700.0 / 6.0, 1e-9);
}

/* What stands 0.75 m behind the walls is whole on the sheet, with room for its name, and the foot is left free. Closed form: 1.25 m past the
 * upper wall (its middle 1 m, half of 0.5 m) and 4 m of room between 14 px above and 50 px below in 560 px */
static void
test_fit_outside (Fixture      *f,
                  gconstpointer data G_GNUC_UNUSED)
{
  LrView view = small_room_view (LR_THEME_LIGHT);
  LrItem *item = lr_item_new_usual (LR_ITEM_NOISE, 0, "noise");
  g_autofree char *id = NULL;
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrStudy) study = NULL;
  LrVec2 top, low;

  item->noise.length_m = item->noise.width_m = 0.5;
  plan = lr_plan_add (f->room.plan, item, lr_vec2 (3.0, 5.0), -0.5 * LR_PI, &id, NULL);
  lr_item_unref (item);
  g_assert_nonnull (plan);
  study = lr_study_new (plan);
  view.height = 400.0;
  lr_view_fit (&view, study, 50.0, 40.0);
  top = lr_view_to_device (&view, lr_vec2 (3.0, 5.25));
  low = lr_view_to_device (&view, lr_vec2 (0.0, 0.0));
  g_assert_cmpfloat_with_epsilon (top.y, 14.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (low.y, 400.0 - 40.0 - 50.0, 1e-6);
}

/* Washes, rings and axes end at the walls: by geometry in a convex room, by a clip in one with a notch. The ground outside must
 * be as without them */
static void
test_walls_hold (Fixture      *f,
                 gconstpointer data G_GNUC_UNUSED)
{
  static const LrVec2 notched_m[] = { { 0, 0 }, { 6, 0 }, { 6, 4 }, { 3.2, 4 }, { 3.2, 2.9 }, { 1.6, 2.9 }, { 1.6, 4 }, { 0, 4 } };
  static const LrVec2 outside_m[] = { { 2.4, 3.5 }, { 3.0, 3.3 }, { -0.5, 0.5 }, { 6.5, 0.4 }, { 4.4, 4.3 }, { 0.9, 4.3 } };

  for (int has_notch = 0; has_notch < 2; has_notch++)
    {
      GError *error = NULL;
      Fixture room = { .room = f->room };
      cairo_surface_t *bare = new_surface (), *full = new_surface ();
      LrView view = small_room_view (LR_THEME_LIGHT);

      room.room.plan = has_notch ? lr_plan_set_corners (f->room.plan, notched_m, G_N_ELEMENTS (notched_m), &error)
                                 : lr_plan_ref (f->room.plan);
      g_assert_no_error (error);
      room.study = lr_study_new (room.room.plan);
      draw_on (bare, &room, &view);
      view.shown = LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND;
      draw_on (full, &room, &view);
      g_assert_cmpint (compare (bare, full).n, >, 10000);
      for (gsize i = has_notch ? 0 : 2; i < G_N_ELEMENTS (outside_m); i++)
        {
          LrVec2 at = lr_view_to_device (&view, outside_m[i]);

          g_assert_cmphex (pixel (full, (int) at.x, (int) at.y), ==, pixel (bare, (int) at.x, (int) at.y));
        }
      lr_study_free (room.study);
      lr_plan_unref (room.room.plan);
      cairo_surface_destroy (bare);
      cairo_surface_destroy (full);
    }
}

/* Nothing that only a hand needs is printed */
static void
test_paper (Fixture      *f,
            gconstpointer data G_GNUC_UNUSED)
{
  cairo_surface_t *a = new_surface (), *b = new_surface ();
  LrView view = full_view (f, LR_THEME_PAGE);

  draw_on (a, f, &view);
  view.in_hand = NULL;
  view.pointed = f->room.table;
  draw_on (b, f, &view);
  g_assert_cmpint (compare (a, b).n, ==, 0);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
}

/* Every remark's geometry and remedy can be drawn */
static void
test_remarks (Fixture      *f,
              gconstpointer data G_GNUC_UNUSED)
{
  cairo_surface_t *surface = new_surface ();
  LrView view = full_view (f, LR_THEME_LIGHT);

  for (guint i = 0; i < f->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (f->remarks->all, i);
      g_autoptr (LrPlan) ghost = remark->remedy != NULL ? lr_remedy_apply (remark->remedy, f->room.plan, NULL) : NULL;

      view.remark = remark;
      view.ghost = ghost;
      draw_on (surface, f, &view);
    }
  cairo_surface_destroy (surface);
}

/* Where the points around are within a stop any curve between them agrees with the straight one; right before a lamp it cannot */
static gboolean
is_even (const LrLevelMap *map,
         LrVec2            at_m)
{
  guint x = (guint) ((at_m.x - map->from_m.x) / map->step_m), y = (guint) ((at_m.y - map->from_m.y) / map->step_m);
  double least_lx = HUGE_VAL, most_lx = 0.0;

  for (guint i = 0; i < 4; i++)
    {
      double lx = map->lx[(y + i / 2) * map->n + x + i % 2];

      least_lx = fmin (least_lx, lx);
      most_lx = fmax (most_lx, lx);
    }
  return most_lx < 2.0 * least_lx;
}

/* What the lines of equal light add to the sheet lies where the map has whole stops from the face: by the definition of a contour. So
 * far out no labels are drawn */
static void
test_levels (Fixture      *f,
             gconstpointer data G_GNUC_UNUSED)
{
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (f->room.plan, TRUE, NULL);
  const LrLevelMap *map = lr_light_levels_map (levels);
  const LrFaceLight *face = lr_light_levels_main_face (levels);
  LrView view = small_room_view (LR_THEME_LIGHT);
  cairo_surface_t *without = new_surface (), *with = new_surface ();
  int n = 0, n_on_line = 0;

  g_assert_nonnull (face);
  g_assert_cmpstr (face->person->item->id, ==, f->room.subject);
  view.scale = 44.0;
  view.shown = LR_SHOW_LIGHT;
  draw_on (without, f, &view);
  view.levels = levels;
  draw_on (with, f, &view);
  for (int y = 0; y < 600; y++)
    for (int x = 0; x < 800; x++)
      if (pixel (with, x, y) != pixel (without, x, y))
        {
          LrVec2 at_m = lr_view_to_room (&view, lr_vec2 (x + 0.5, y + 0.5));
          double stops = log2 (lr_level_map_lx (map, at_m) / lr_lux_all (face->at[face->lit]));

          if (isnan (stops) || !is_even (map, at_m)) /* beside a wall, or a lamp */
            continue;
          n++;
          n_on_line += fabs (stops - round (stops)) < 0.2;
        }
  g_test_message ("%d of %d pixels on whole stops", n_on_line, n);
  g_assert_cmpint (n, >, 200);
  g_assert_cmpint (10 * n_on_line, >, 9 * n);
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
}

/* An empty room with a window in the south and a box before it, at noon on 21 December at 50 degrees north: the sun is 16.6 degrees high */
static LrPlan *
sunny_room (char **window)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 6, 0 }, { 6, 4 }, { 0, 4 } };
  static const char *const texts[][2] = { { "date", "2026-12-21" }, { "time-zone", "UTC" } };
  g_autofree char *box = NULL;
  LrPlan *plan = lr_plan_new_empty ();
  GError *error = NULL;

  plan = next (plan, lr_plan_set_corners (plan, corners_m, 4, &error), error);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    plan = next (plan, lr_plan_set_job (plan, texts[i][0], texts[i][1], &error), error);
  plan = next (plan, lr_plan_set_location (plan, "latitude-deg", 50.0, &error), error);
  plan = next (plan, lr_plan_set_location (plan, "longitude-deg", 0.0, &error), error);
  plan = add (plan, LR_ITEM_WINDOW, LR_BLIND_UP, lr_vec2 (3.0, 0.0), 0.0, window);
  plan = add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, lr_vec2 (3.3, 1.0), 0.0, &box);
  {
    LrChange changes[] = { { *window, "width-mm", 2.0 }, { *window, "sill-mm", 0.1 }, { *window, "head-mm", 1.0 }, { box, "height-mm", 0.3 },
                           { box, "length-mm", 0.5 }, { box, "width-mm", 0.5 } };

    plan = next (plan, lr_plan_change (plan, changes, G_N_ELEMENTS (changes), &error), error);
  }
  return plan;
}

/* What the sun's patch adds to the sheet lies where a ray from the floor goes out through the window past the box, and nowhere else; beside
 * outlines and what is written */
static void
test_sun (void)
{
  g_autofree char *window = NULL;
  g_autoptr (LrPlan) plan = sunny_room (&window);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  g_autoptr (LrLightShade) shade = lr_light_shade_new (study);
  const Fixture f = { .room.plan = plan, .study = study, .remarks = remarks };
  LrView view = small_room_view (LR_THEME_LIGHT);
  cairo_surface_t *without = new_surface (), *with = new_surface ();
  int n_lit = 0, n_dark = 0, n_lit_changed = 0, n_dark_changed = 0;
  LrSunOpening opening;
  LrVec3 way;

  g_assert_true (lr_sun_opening (study, lr_study_find_placed (study, window), &opening));
  g_assert_true (lr_study_sun_way (study, 12 * 60, &way));
  draw_on (without, &f, &view);
  view.shown = LR_SHOW_SUN;
  view.sun_minute = 12 * 60;
  draw_on (with, &f, &view);
  for (int y = 120; y < 480; y++)
    for (int x = 120; x < 680; x++)
      {
        LrVec2 at_m = lr_view_to_room (&view, lr_vec2 (x + 0.5, y + 0.5));
        LrVec3 floor_m = lr_vec2_raise (at_m, 1e-6);
        gboolean is_changed = pixel (with, x, y) != pixel (without, x, y);
        gboolean is_lit = lr_sun_opening_holds (&opening, floor_m, 0.0, way)
                          && lr_light_shade_is_clear (shade, floor_m, lr_vec3_along (floor_m, way, at_m.y / -way.y), NULL);

        if (fabs (at_m.x - 3.3) < 0.26 && fabs (at_m.y - 1.0) < 0.26) /* the box */
          continue;
        n_lit += is_lit;
        n_dark += !is_lit;
        n_lit_changed += is_lit && is_changed;
        n_dark_changed += !is_lit && is_changed;
      }
  g_test_message ("%d of %d lit, %d of %d dark pixels changed", n_lit_changed, n_lit, n_dark_changed, n_dark);
  g_assert_cmpint (n_lit, >, 10000);
  g_assert_cmpint (100 * n_lit_changed, >, 97 * n_lit);
  g_assert_cmpint (100 * n_dark_changed, <, 3 * n_dark);
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name, func) g_test_add ("/floor/" name, Fixture, NULL, set_up, func, tear_down)
  ADD ("steady", test_steady);
  ADD ("extents", test_extents);
  ADD ("halves", test_halves);
  ADD ("moving-half", test_moving_half);
  ADD ("grounds", test_grounds);
  ADD ("fit", test_fit);
  ADD ("fit-outside", test_fit_outside);
  ADD ("walls-hold", test_walls_hold);
  ADD ("levels", test_levels);
  ADD ("paper", test_paper);
  ADD ("remarks", test_remarks);
  g_test_add_func ("/floor/empty", test_empty);
  g_test_add_func ("/floor/sun", test_sun);

  return g_test_run ();
}
