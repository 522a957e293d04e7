/* paint_wall.c - a wall, and the light on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The light is known at the middles of even cells. On pixels it is computed from place to place. On a page it is a mesh of patches with
 * a color at each corner; where a drawing knows no such mesh, as SVG, it is a cloth of small even pieces.
 */

#include "paint.h"

#define TONE_STEP 8     /* between tones that are computed: the rest is mixed of them */
#define PIECES 4        /* of a cell, each way */
#define PIECES_IN_SUN 2 /* of the smaller cells of a wall that the sun reaches */
#define LAP 0.06        /* how far a piece lies under the next, of its side: no light shines through between them */

/* What falls on a wall from the least, 0, to the most, 1, in steps that look about alike: of its square root */
typedef struct
{
  guint   n, m;
  double *step;
  double  least, most; /* square roots over that of the mean */
  guint   pieces;
  const LrWallShade *shade;
} Steps;

/* 0 to 1 */
static double
step_of (const Steps *steps,
         double       over_mean)
{
  return fmin (1.0, (sqrt (over_mean) - steps->least) / fmax (1e-9, steps->most - steps->least));
}

static Steps
take_steps (const LrWallLight *light,
            LrColor            mean)
{
  /* in the sun it is white long before the brightest place: the steps are for what can be told apart */
  Steps steps = { light->n, light->m, g_new (double, light->n * light->m), sqrt (light->least_lx / light->mean_lx),
                  sqrt (fmin (light->most_lx / light->mean_lx, lr_tone_most_gain (mean))),
                  light->sun_lx != NULL ? PIECES_IN_SUN : PIECES, &light->shade };

  for (guint i = 0; i < light->n * light->m; i++)
    {
      double share = light->sun_lx != NULL ? light->sun_lx[i] / light->full_sun_lx : 0.0;

      steps.step[i] = step_of (&steps, light->lx[i] / light->mean_lx);
      /* on the sun's edge as much of the cell is white as lies in it: it is so bright that a tenth of it would be white too */
      if (share > 0.0 && share < 1.0)
        steps.step[i] = (1.0 - share) * step_of (&steps, (light->lx[i] - light->sun_lx[i]) / light->mean_lx)
                        + share * step_of (&steps, (light->lx[i] - light->sun_lx[i] + light->full_sun_lx) / light->mean_lx);
    }
  return steps;
}

/* x along the wall and y up it in cells, 0 at the middle of the first */
static double
step_at (const Steps *steps,
         double       x,
         double       y)
{
  double across = CLAMP (x, 0.0, steps->n - 1.0), up = CLAMP (y, 0.0, steps->m - 1.0);
  guint i = (guint) across, j = (guint) up, right = i + 1 < steps->n ? 1 : 0, above = j + 1 < steps->m ? steps->n : 0;
  const double *at = &steps->step[j * steps->n + i];
  double s = across - i, low = at[0] + s * (at[right] - at[0]), high = at[above] + s * (at[above + right] - at[above]);

  return low + (up - j) * (high - low);
}

/* The same past the shadows of people and equipment */
static double
shaded_step_at (const Steps *steps,
                double       x,
                double       y)
{
  double step = step_at (steps, x, y), range = steps->most - steps->least, left;

  if (steps->shade->n == 0 || range < 1e-9)
    return step;

  left = lr_wall_shade_left (steps->shade, (x + 0.5) / steps->n, (y + 0.5) / steps->m);
  return left < 1.0 ? fmax (0.0, ((steps->least + step * range) * sqrt (left) - steps->least) / range) : step;
}

/* The face's own color is that of the mean */
static LrColor
tone_of (const LrFace *face,
         const Steps  *steps,
         double        step)
{
  double root = steps->least + step * (steps->most - steps->least);

  return lr_tone_light (face->color, root * root);
}

/* The corner that the wall's frame begins at, which is its second one, and the way to its first */
typedef struct
{
  LrVec3 corner_m, along;
  double length_m, height_m;
} Wall;

static Wall
find_wall (const LrScene *scene,
           const LrFace  *face)
{
  const LrVec3 *corner_m = &g_array_index (scene->points, LrVec3, face->first);
  LrVec3 along = lr_vec3_sub (corner_m[1], corner_m[0]);
  double length_m = lr_vec3_length (along);

  return (Wall) { corner_m[0], lr_vec3_scale (along, 1.0 / length_m), length_m, corner_m[2].z - corner_m[0].z };
}

static LrVec3
place_on (const Wall  *wall,
          const Steps *steps,
          double       x,
          double       y)
{
  double along_m = wall->length_m * (1.0 - CLAMP (x / steps->n, 0.0, 1.0)), up_m = wall->height_m * CLAMP (y / steps->m, 0.0, 1.0);

  return lr_vec3_add (lr_vec3_along (wall->corner_m, wall->along, along_m), lr_vec3 (0.0, 0.0, up_m));
}

/* Whether any of it is in the picture, its soft edges too */
static gboolean
is_in_view (const LrPainter *painter,
            const LrPatch   *patch)
{
  LrVec2 low = { HUGE_VAL, HUGE_VAL }, high = { -HUGE_VAL, -HUGE_VAL };

  for (guint i = 0; i < patch->n; i++)
    {
      double reach = patch->radius[i] + painter->unit;

      low = lr_vec2 (fmin (low.x, patch->at[i].x - reach), fmin (low.y, patch->at[i].y - reach));
      high = lr_vec2 (fmax (high.x, patch->at[i].x + reach), fmax (high.y, patch->at[i].y + reach));
    }
  return high.x > 0.0 && low.x < painter->width && high.y > 0.0 && low.y < painter->height;
}

/* A field of the shadows' net, in cells of the wall */
static void
shade_field (const Steps *steps,
             guint        i,
             LrVec2      *low,
             LrVec2      *high)
{
  const LrWallShade *shade = steps->shade;
  double dx = (shade->along1 - shade->along0) / (shade->n - 1.0) * steps->n, dy = (shade->up1 - shade->up0) / (shade->m - 1.0) * steps->m;

  *low = lr_vec2 (shade->along0 * steps->n + i % (shade->n - 1) * dx, shade->up0 * steps->m + i / (shade->n - 1) * dy);
  *high = lr_vec2 (low->x + dx, low->y + dy);
}

static guint
n_shade_fields (const Steps *steps)
{
  return steps->shade->n > 1 && steps->shade->m > 1 ? (steps->shade->n - 1) * (steps->shade->m - 1) : 0;
}

static gboolean
is_field_shaded (const Steps *steps,
                 guint        i)
{
  const LrWallShade *shade = steps->shade;
  const double *at = &shade->left[i / (shade->n - 1) * shade->n + i % (shade->n - 1)];

  return fmin (fmin (at[0], at[1]), fmin (at[shade->n], at[shade->n + 1])) < 1.0;
}

static void
paint_piece (const LrPainter *painter,
             const Wall      *wall,
             const LrFace    *face,
             const Steps     *steps,
             LrVec2           low,
             LrVec2           high)
{
  double x_lap = LAP * (high.x - low.x), y_lap = LAP * (high.y - low.y);
  LrVec3 corners_m[4] = { place_on (wall, steps, low.x, low.y), place_on (wall, steps, high.x + x_lap, low.y),
                          place_on (wall, steps, high.x + x_lap, high.y + y_lap), place_on (wall, steps, low.x, high.y + y_lap) };
  LrColor tone;
  LrPatch patch;

  if (!lr_painter_project (painter, corners_m, 4, &patch) || !is_in_view (painter, &patch))
    return;

  tone = tone_of (face, steps, shaded_step_at (steps, 0.5 * (low.x + high.x) - 0.5, 0.5 * (low.y + high.y) - 0.5));
  cairo_set_source_rgb (painter->cr, tone.r, tone.g, tone.b);
  for (guint k = 0; k < patch.n; k++)
    cairo_line_to (painter->cr, patch.at[k].x, patch.at[k].y);
  cairo_close_path (painter->cr);
  cairo_fill (painter->cr);
}

/* Over the wall's own tone, which its soft edges have; smaller ones where a shadow falls */
static void
paint_pieces (const LrPainter *painter,
              const LrScene   *scene,
              const LrFace    *face,
              const Steps     *steps)
{
  const Wall wall = find_wall (scene, face);
  const double side = 1.0 / steps->pieces;
  LrVec2 low, high;

  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_NONE);
  for (guint i = 0; i < steps->pieces * steps->n * steps->pieces * steps->m; i++)
    {
      low = lr_vec2 (side * (i % (steps->pieces * steps->n)), side * (i / (steps->pieces * steps->n)));
      paint_piece (painter, &wall, face, steps, low, lr_vec2 (low.x + side, low.y + side));
    }
  for (guint i = 0; i < n_shade_fields (steps); i++)
    if (is_field_shaded (steps, i))
      {
        shade_field (steps, i, &low, &high);
        paint_piece (painter, &wall, face, steps, low, high);
      }
  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_FAST);
}

/* Lines of the mesh: the edge, the middles of the cells, the other edge */
static double
mesh_line (guint i,
           guint n)
{
  return i == 0 ? 0.0 : i > n ? n : i - 0.5;
}

/* One between two corners in cells; nothing of what is out of the picture or reaches behind the lens */
static void
add_mesh_patch (const LrPainter *painter,
                cairo_pattern_t *mesh,
                const Wall      *wall,
                const LrFace    *face,
                const Steps     *steps,
                LrVec2           low,
                LrVec2           high)
{
  const double x[4] = { low.x, high.x, high.x, low.x }, y[4] = { low.y, low.y, high.y, high.y };
  LrVec3 corners_m[4];
  LrPatch patch;

  for (guint k = 0; k < 4; k++)
    corners_m[k] = place_on (wall, steps, x[k], y[k]);
  if (!lr_painter_project (painter, corners_m, 4, &patch) || patch.n != 4 || !is_in_view (painter, &patch))
    return;

  cairo_mesh_pattern_begin_patch (mesh);
  for (guint k = 0; k < 4; k++)
    if (k == 0)
      cairo_mesh_pattern_move_to (mesh, patch.at[k].x, patch.at[k].y);
    else
      cairo_mesh_pattern_line_to (mesh, patch.at[k].x, patch.at[k].y);
  for (guint k = 0; k < 4; k++)
    {
      LrColor tone = tone_of (face, steps, shaded_step_at (steps, x[k] - 0.5, y[k] - 0.5));

      cairo_mesh_pattern_set_corner_color_rgb (mesh, k, tone.r, tone.g, tone.b);
    }
  cairo_mesh_pattern_end_patch (mesh);
}

/* Over the wall's own tone, finer where a shadow falls; what reaches behind the lens keeps that */
static void
paint_mesh (const LrPainter *painter,
            const LrScene   *scene,
            const LrFace    *face,
            const LrPatch   *seen,
            const Steps     *steps)
{
  const Wall wall = find_wall (scene, face);
  cairo_pattern_t *mesh = cairo_pattern_create_mesh ();

  for (guint i = 0; i < (steps->n + 1) * (steps->m + 1); i++)
    {
      guint column = i % (steps->n + 1), row = i / (steps->n + 1);

      add_mesh_patch (painter, mesh, &wall, face, steps, lr_vec2 (mesh_line (column, steps->n), mesh_line (row, steps->m)),
                      lr_vec2 (mesh_line (column + 1, steps->n), mesh_line (row + 1, steps->m)));
    }
  for (guint i = 0; i < n_shade_fields (steps); i++) /* over those */
    if (is_field_shaded (steps, i))
      {
        LrVec2 low, high;

        shade_field (steps, i, &low, &high);
        add_mesh_patch (painter, mesh, &wall, face, steps, low, high);
      }
  cairo_set_source (painter->cr, mesh);
  for (guint k = 0; k < seen->n; k++)
    cairo_line_to (painter->cr, seen->at[k].x, seen->at[k].y);
  cairo_close_path (painter->cr);
  cairo_fill (painter->cr);
  cairo_pattern_destroy (mesh);
}

static gboolean
has_mesh (cairo_t *cr)
{
  switch ((int) cairo_surface_get_type (cairo_get_group_target (cr)))
    {
    case CAIRO_SURFACE_TYPE_PDF:
    case CAIRO_SURFACE_TYPE_RECORDING:
    case CAIRO_SURFACE_TYPE_IMAGE:
      return TRUE;
    default:
      return FALSE;
    }
}

/* A number that goes evenly over the picture: x * at.x + y * at.y + c */
typedef struct
{
  double x, y, c;
} Plane;

/* From the picture to the wall: x / w and y / w are cells along and up it */
typedef struct
{
  Plane  x, y, w;
  const Steps *steps;
} Ground;

static Plane
plane_dot (const LrPainter *painter,
           LrVec3           axis)
{
  const LrProjection *p = painter->projection;
  double right = p->half_width * lr_vec3_dot (axis, p->right), up = p->half_height * lr_vec3_dot (axis, p->up);

  return (Plane) { 2.0 * right / painter->width, -2.0 * up / painter->height, lr_vec3_dot (axis, p->forward) - right + up };
}

static Plane
plane_sum (Plane  a,
           double ka,
           Plane  b,
           double kb)
{
  return (Plane) { ka * a.x + kb * b.x, ka * a.y + kb * b.y, ka * a.c + kb * b.c };
}

static double
plane_at (Plane  plane,
          LrVec2 at)
{
  return plane.x * at.x + plane.y * at.y + plane.c;
}

/* The ray d through a place meets the wall, whose point is c and normal n, at e + d (n · (c - e)) / (n · d) */
static Ground
find_ground (const LrPainter *painter,
             const Wall      *wall,
             LrVec3           normal,
             const Steps     *steps)
{
  LrVec3 from_corner = lr_vec3_sub (painter->projection->eye_m, wall->corner_m);
  double off_m = -lr_vec3_dot (normal, from_corner), per_m = steps->n / wall->length_m, up_per_m = steps->m / wall->height_m;
  Plane w = plane_dot (painter, normal);
  Plane u = plane_sum (w, lr_vec3_dot (wall->along, from_corner), plane_dot (painter, wall->along), off_m);
  Plane v = plane_sum (w, from_corner.z, plane_dot (painter, lr_vec3 (0.0, 0.0, 1.0)), off_m);

  return (Ground) { plane_sum (w, steps->n - 0.5, u, -per_m), plane_sum (v, up_per_m, w, -0.5), w, steps };
}

static double
level_at (gconstpointer data,
          LrVec2        at)
{
  const Ground *ground = data;
  double w = plane_at (ground->w, at), per_w = 1.0 / w;

  if (fabs (w) < 1e-9) /* the ray runs along the wall */
    return 0.0;
  return shaded_step_at (ground->steps, plane_at (ground->x, at) * per_w, plane_at (ground->y, at) * per_w);
}

/* Where in the picture the level changes from pixel to pixel: a box round the shadows' net */
static void
find_fine (const LrPainter *painter,
           const Wall      *wall,
           const Steps     *steps,
           LrPixelTones    *tones)
{
  const LrWallShade *shade = steps->shade;

  tones->fine_low = lr_vec2 (HUGE_VAL, HUGE_VAL);
  tones->fine_high = lr_vec2 (-HUGE_VAL, -HUGE_VAL);
  for (guint k = 0; n_shade_fields (steps) > 0 && k < 4; k++)
    {
      LrVec3 corner_m = place_on (wall, steps, (k & 1 ? shade->along1 : shade->along0) * steps->n, (k & 2 ? shade->up1 : shade->up0) * steps->m);
      LrVec2 at;

      if (!lr_painter_place (painter, corner_m, &at))
        {
          tones->fine_low = lr_vec2 (-HUGE_VAL, -HUGE_VAL);
          tones->fine_high = lr_vec2 (HUGE_VAL, HUGE_VAL);
          return;
        }
      tones->fine_low = lr_vec2 (fmin (tones->fine_low.x, at.x), fmin (tones->fine_low.y, at.y));
      tones->fine_high = lr_vec2 (fmax (tones->fine_high.x, at.x), fmax (tones->fine_high.y, at.y));
    }
}

static void
paint_pixels (const LrPainter *painter,
              const LrScene   *scene,
              const LrFace    *face,
              const LrPatch   *patch,
              const Steps     *steps)
{
  const Wall wall = find_wall (scene, face);
  const Ground ground = find_ground (painter, &wall, face->normal, steps);
  LrPixelTones tones = { .level = level_at, .data = &ground };
  LrColor here, next = tone_of (face, steps, 0.0);

  find_fine (painter, &wall, steps, &tones);
  for (guint i = 0; i < LR_N_TONES; i++)
    {
      if (i % TONE_STEP == 0)
        {
          here = next;
          next = tone_of (face, steps, (i + TONE_STEP) / (LR_N_TONES - 1.0));
        }
      tones.tone[i] = lr_pixel_of (lr_tone_mix (here, next, (double) (i % TONE_STEP) / TONE_STEP));
    }
  lr_paint_patch_in_tones (painter, patch, &tones);
}

/**
 * lr_paint_wall:
 * @painter: a painter
 * @scene: what it paints
 * @face: the inner face of a wall
 * @patch: what is seen of it
 */
void
lr_paint_wall (const LrPainter *painter,
               const LrScene   *scene,
               const LrFace    *face,
               const LrPatch   *patch)
{
  Steps steps;

  if (!is_in_view (painter, patch))
    return;
  if (face->light == NULL || !(face->light->mean_lx > 0.0))
    {
      lr_paint_patch (painter, patch, face->color, face->alpha);
      return;
    }

  steps = take_steps (face->light, face->color);
  if (painter->pixels.surface != NULL)
    paint_pixels (painter, scene, face, patch, &steps);
  else
    {
      lr_paint_patch (painter, patch, face->color, face->alpha);
      if (has_mesh (painter->cr))
        paint_mesh (painter, scene, face, patch, &steps);
      else
        paint_pieces (painter, scene, face, &steps);
    }
  g_free (steps.step);
}
