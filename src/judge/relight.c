/* relight.c - how lamps are to be dimmed, so that faces and walls come out where they are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "relight.h"

#include <string.h>

#define LEAST_SHARE 1e-6     /* of the white: under it it is dark */
#define MARGIN_STOPS 0.05    /* inside the tolerance: what is mended does not lie on its limit */
#define SAME_STOPS 1e-6
#define BURNT_STOPS 20.0     /* a face that is burnt out is worse than any that is dark */
#define SET_STOPS 0.2        /* a camera's thirds of stops are no finer: within it it stays as it is, and so far inside what is mended comes */

static double
level_lx (const LrRelight      *self,
          const LrRelightLevel *level,
          const double         *dims)
{
  double lux = level->fixed_lx;

  for (guint i = 0; i < self->n_lamps; i++)
    lux += dims[i] * level->full_lx[i];
  return lux;
}

/* What a view makes of a dimming; shares of the white */
typedef struct
{
  double lit, shadow, walls;
} Made;

static Made
make (const LrRelight *self,
      const double    *dims,
      guint            view)
{
  const LrRelightView *v = &self->view[view];
  double left_lx = level_lx (self, &v->left, dims), right_lx = level_lx (self, &v->right, dims);
  double face = v->share_per_lx * v->skin;

  return (Made) { face * fmax (left_lx, right_lx), face * fmin (left_lx, right_lx),
                  v->has_walls ? v->share_per_lx * level_lx (self, &v->walls, dims) : (double) NAN };
}

/* Both the level that is wanted and what the face asks for */
static double
miss_walls (const LrRelight *self,
            const Made      *made)
{
  double miss = self->wall_under_stops - log2 (made->lit / made->walls);

  if (made->walls < LEAST_SHARE)
    return isnan (self->wall_share) ? -HUGE_VAL : HUGE_VAL;
  if (isnan (self->wall_share))
    return miss;
  return fmax (miss, fabs (log2 (made->walls / self->wall_share)) - self->wall_off_stops);
}

/**
 * lr_relight_miss:
 * @self: what may be dimmed
 * @dims: (array): of every lamp
 * @view: number of a view
 * @aim: what is wanted
 *
 * Returns: by how much it is missed [stops]; <= 0: it is not; HUGE_VAL: it is in the dark
 */
double
lr_relight_miss (const LrRelight *self,
                 const double    *dims,
                 guint            view,
                 LrRelightAim     aim)
{
  Made made = make (self, dims, view);

  if (aim == LR_RELIGHT_WALLS && !self->view[view].has_walls)
    return -HUGE_VAL;
  if (aim == LR_RELIGHT_RATIO && !self->view[view].has_ratio)
    return -HUGE_VAL;
  if (made.lit < LEAST_SHARE)
    return HUGE_VAL;

  switch (aim)
    {
    case LR_RELIGHT_FACE:
      return made.lit >= 1.0 ? BURNT_STOPS + log2 (made.lit) : fabs (log2 (made.lit / self->face_share)) - self->face_off_stops;
    case LR_RELIGHT_WALLS:
      return miss_walls (self, &made);
    case LR_RELIGHT_RATIO:
      if (made.shadow < LEAST_SHARE)
        return HUGE_VAL;
      return fmax (self->ratio_min_stops - log2 (made.lit / made.shadow), log2 (made.lit / made.shadow) - self->ratio_max_stops);
    case LR_N_RELIGHT_AIMS:
    default:
      return -HUGE_VAL;
    }
}

/**
 * lr_relight_off:
 * @self: what may be dimmed
 * @dims: (array): of every lamp
 *
 * Returns: how far faces and walls are off where they are wanted, the sum of the squares [stops^2]
 */
double
lr_relight_off (const LrRelight *self,
                const double    *dims)
{
  double sum = 0.0;

  for (guint i = 0; i < self->n_views; i++)
    {
      Made made = make (self, dims, i);
      double face = log2 (fmax (made.lit, LEAST_SHARE) / self->face_share);

      sum += face * face;
      if (self->view[i].has_walls && !isnan (self->wall_share))
        {
          double walls = log2 (fmax (made.walls, LEAST_SHARE) / self->wall_share);

          sum += walls * walls;
        }
    }
  return sum;
}

/**
 * lr_relight_get:
 * @self: what may be dimmed
 * @dims: (out caller-allocates) (array): as they are
 */
void
lr_relight_get (const LrRelight *self,
                double          *dims)
{
  for (guint i = 0; i < self->n_lamps; i++)
    dims[i] = self->lamp[i].dim;
}

/**
 * lr_relight_mends:
 * @self: what may be dimmed, as it would be
 * @dims: (array): of every lamp then
 * @now: the same as it is
 * @view: number of a view
 * @aim: what it misses
 * @margin_stops: how far inside its tolerance it is to come
 *
 * Returns: whether @dims bring it there, and miss nothing then, or nearly, that is not missed now; what is missed now may be missed by a
 *   little more, twice the margin
 */
gboolean
lr_relight_mends (const LrRelight *self,
                  const double    *dims,
                  const LrRelight *now,
                  guint            view,
                  LrRelightAim     aim,
                  double           margin_stops)
{
  double before[LR_RELIGHT_LAMPS];

  if (lr_relight_miss (self, dims, view, aim) > -margin_stops)
    return FALSE;

  lr_relight_get (now, before);
  for (guint i = 0; i < self->n_views; i++)
    for (LrRelightAim other = 0; other < LR_N_RELIGHT_AIMS; other++)
      {
        double then = lr_relight_miss (self, dims, i, other), missed = lr_relight_miss (now, before, i, other);

        if (then > -0.5 * margin_stops && then > missed + (missed > 0.0 ? 2.0 * margin_stops : SAME_STOPS))
          return FALSE;
      }
  return TRUE;
}

/* The same with cameras set otherwise */
static LrRelight
expose (const LrRelight *self,
        const double    *more_stops)
{
  LrRelight then = *self;

  for (guint i = 0; i < self->n_views; i++)
    then.view[i].share_per_lx *= exp2 (more_stops[i]);
  return then;
}

/* How far the first camera and another one come out apart [stops] */
static double
apart_stops (const LrRelight *self,
             guint            view)
{
  return fabs (log2 (self->view[view].share_per_lx / self->view[0].share_per_lx));
}

static gboolean
is_noisy (const LrRelight *self,
          guint            view,
          double           more_stops)
{
  const LrCamera *camera = self->view[view].camera != NULL ? &self->view[view].camera->item->camera : NULL;

  return camera != NULL && more_stops > 0.0 && camera->iso * exp2 (more_stops - camera->nd_stops) > self->most_iso * exp2 (1.0 / 6.0);
}

/**
 * lr_relight_harms:
 * @self: what may be dimmed
 * @answer: what is to be set
 *
 * Returns: whether cameras that are set so come out apart from each other, or push their walls off, where they did not, or less; or take a
 *   noisy ISO
 */
gboolean
lr_relight_harms (const LrRelight       *self,
                  const LrRelightAnswer *answer)
{
  LrRelight then = expose (self, answer->more_stops);
  double now[LR_RELIGHT_LAMPS];

  lr_relight_get (self, now);
  for (guint i = 0; i < self->n_views; i++)
    {
      double walls = lr_relight_miss (&then, answer->dims, i, LR_RELIGHT_WALLS), match = apart_stops (&then, i);

      if (walls > 0.0 && walls > lr_relight_miss (self, now, i, LR_RELIGHT_WALLS) + SAME_STOPS)
        return TRUE;
      if (match > self->match_stops && match > apart_stops (self, i) + SAME_STOPS)
        return TRUE;
      if (is_noisy (self, i, answer->more_stops[i]))
        return TRUE;
    }
  return FALSE;
}

/* What is looked at before what */
typedef struct
{
  guint    n_lamps;
  guint    least_switches; /* so many of them house lights or blinds */
  gboolean may_go_out;     /* lamps, too */
} Stage;

static const Stage stages[] = {
  { 1, 1, FALSE }, { 1, 0, FALSE }, { 1, 0, TRUE }, { 2, 1, FALSE }, { 2, 0, FALSE }, { 2, 0, TRUE },
};

typedef struct
{
  const LrRelight *self;
  guint        view;
  LrRelightAim aim;
  gboolean     may_expose;
  const Stage *stage;
  LrRelightAnswer look;                 /* what is looked at */
  LrRelightAnswer best;
  double       best_off;                /* HUGE_VAL: none yet */
} Search;

/* Each camera so that its face comes out where it is wanted */
static gboolean
set_cameras (Search *search)
{
  for (guint i = 0; i < search->self->n_views; i++)
    {
      double more_stops = log2 (search->self->face_share / fmax (make (search->self, search->look.dims, i).lit, LEAST_SHARE));

      search->look.more_stops[i] = fabs (more_stops) > SET_STOPS ? more_stops : 0.0;
    }
  return !lr_relight_harms (search->self, &search->look);
}

static void
look (Search *search)
{
  LrRelight then;
  double off;

  if (search->may_expose && !set_cameras (search))
    return;

  then = search->may_expose ? expose (search->self, search->look.more_stops) : *search->self;
  if (!lr_relight_mends (&then, search->look.dims, search->self, search->view, search->aim, search->may_expose ? SET_STOPS : MARGIN_STOPS))
    return;

  off = lr_relight_off (&then, search->look.dims);
  if (off < search->best_off)
    {
      search->best_off = off;
      search->best = search->look;
    }
}

static guint
n_steps (const LrRelightLamp *lamp)
{
  return lamp->is_switch ? 1 : (guint) lround (1.0 / LR_RELIGHT_STEP);
}

/* The @step-th of its dimmings; FALSE: it is not to be dimmed so far now, or it is so */
static gboolean
get_step (const Search        *search,
          const LrRelightLamp *lamp,
          guint                step,
          double              *dim)
{
  *dim = lamp->is_switch ? 0.0 : (double) step * LR_RELIGHT_STEP;
  if (lamp->is_held || fabs (*dim - lamp->dim) < 1e-9)
    return FALSE;
  if (lamp->is_switch || *dim > LR_RELIGHT_LEAST - 1e-9)
    return TRUE;

  return step == 0 && search->stage->may_go_out && !lamp->stays_on;
}

static guint
count_switches (const Search *search)
{
  guint n = 0;

  for (guint i = 0; i < search->self->n_lamps; i++)
    n += search->self->lamp[i].is_switch && search->look.dims[i] < search->self->lamp[i].dim;
  return n;
}

/* Every step of the lamp, and for each of them of another after it */
static void
look_at_lamps (Search *search,
               guint   first,
               guint   n_lamps)
{
  for (guint i = first; i < search->self->n_lamps; i++)
    {
      const LrRelightLamp *lamp = &search->self->lamp[i];

      for (guint step = 0; step <= n_steps (lamp); step++)
        if (get_step (search, lamp, step, &search->look.dims[i]))
          {
            if (n_lamps > 1)
              look_at_lamps (search, i + 1, n_lamps - 1);
            else if (count_switches (search) >= search->stage->least_switches)
              look (search);
          }
      search->look.dims[i] = lamp->dim;
    }
}

/* All that can be dimmed by one factor, each to its nearest step: faces keep their two sides, walls their distance from faces */
static void
look_at_all (Search *search)
{
  for (int stop = -60; stop <= 60; stop++)
    {
      gboolean fits = stop != 0;

      for (guint i = 0; i < search->self->n_lamps; i++)
        {
          const LrRelightLamp *lamp = &search->self->lamp[i];

          search->look.dims[i] = lamp->is_switch ? lamp->dim : LR_RELIGHT_STEP * round (lamp->dim * exp2 (0.1 * stop) / LR_RELIGHT_STEP);
          fits = fits && search->look.dims[i] <= 1.0 + 1e-9
                 && (lamp->is_switch || !(lamp->dim > 0.0) || search->look.dims[i] > LR_RELIGHT_LEAST - 1e-9);
        }
      if (fits)
        look (search);
    }
  lr_relight_get (search->self, search->look.dims);
}

/**
 * lr_relight_solve:
 * @self: what may be dimmed
 * @view: number of a view
 * @aim: what it misses
 * @may_expose: whether each camera may be set after its face
 * @answer: (out): what is to be set
 *
 * Looks at every dimming of one lamp in steps of %LR_RELIGHT_STEP; if none mends, of two; then of all alike. Of those what can be switched
 * off or closed comes before lamps that are dimmed, and these before lamps that go out.
 *
 * Returns: %FALSE, with @answer untouched, if none mends without making anything worse
 */
gboolean
lr_relight_solve (const LrRelight *self,
                  guint            view,
                  LrRelightAim     aim,
                  gboolean         may_expose,
                  LrRelightAnswer *answer)
{
  Search search = { .self = self, .view = view, .aim = aim, .may_expose = may_expose, .best_off = HUGE_VAL };

  lr_relight_get (self, search.look.dims);
  for (guint i = 0; i < G_N_ELEMENTS (stages) && search.best_off == HUGE_VAL; i++)
    {
      search.stage = &stages[i];
      look_at_lamps (&search, 0, stages[i].n_lamps);
    }
  if (search.best_off == HUGE_VAL && self->n_lamps > 2)
    look_at_all (&search);
  if (search.best_off == HUGE_VAL)
    return FALSE;

  *answer = search.best;
  return TRUE;
}
