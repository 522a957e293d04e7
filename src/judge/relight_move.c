/* relight_move.c - another place for a lamp, so that faces and walls come out where they are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the lamp gives straight is worked out anew for each place; what the room gives back of it is taken to stay, for the lamp sends as
 * much light into it. Near places are looked at first.
 */

#include "relight.h"

#include "light_alone.h"

#define STEP_M 0.10
#define MOST_M 1.6
#define NEAREST_M 0.6           /* to the person: a stand and a hand's breadth */
#define STEP_RAD (5.0 * LR_DEG)
#define MOST_RAD (75.0 * LR_DEG)
#define MARGIN_STOPS 0.15       /* inside the tolerance: bounces are not worked out anew */

/* Where the lamp shines from in a study, and what is in its way */
typedef struct
{
  const LrStudy *study;
  LrLightShade  *shade;
  LrEmitter      emitter;
} Shine;

typedef struct
{
  const LrRelight *self;
  const LrJudge   *judge;
  guint            view, lamp;
  LrRelightAim     aim;
  GArray          *probes;   /* LrLightProbe */
  double          *now_lx;   /* on each of them, straight from the lamp at full as it stands */
} Mover;

/* The lamp that gives most straight to the face, dimmed as it is; n_lamps: none */
static guint
find_key (const LrRelight *self,
          const LrJudge   *judge,
          guint            view)
{
  const LrFaceLight *face = lr_light_levels_face (judge->levels, self->view[view].camera->subject->item->id);
  guint i = 0;

  if (face == NULL || face->key == NULL)
    return self->n_lamps;
  while (i < self->n_lamps && !g_str_equal (self->lamp[i].placed->item->id, face->key->item->id))
    i++;
  return i < self->n_lamps && !self->lamp[i].is_switch ? i : self->n_lamps;
}

/* What the lamp at full would give straight to a probe; @dim: how its emitter is dimmed */
static double
straight_lx (const Shine        *shine,
             const LrLightProbe *probe,
             double              dim)
{
  const LrPlaced *of = probe->of != NULL ? lr_study_find_placed (shine->study, probe->of->item->id) : NULL;

  return lr_light_source_lx (&shine->emitter, shine->shade, probe->at_m, probe->normal, of, NULL) / dim;
}

/* FALSE: it gives no light */
static gboolean
shine_init (Shine         *shine,
            const LrStudy *study,
            const LrPlaced *lamp)
{
  const LrPlaced *at = lr_study_find_placed (study, lamp->item->id);

  *shine = (Shine) { .study = study };
  if (at == NULL || !lr_light_emitter (study, at, &shine->emitter))
    return FALSE;

  shine->shade = lr_light_shade_new (study);
  return TRUE;
}

static gboolean
is_cheek_of (const LrLightProbe  *probe,
             const LrRelightView *view)
{
  return probe->type == LR_PROBE_FACE && probe->point <= LR_FACE_RIGHT && probe->placed == view->camera->subject;
}

/* How much more the lamp at full gives straight there */
static double
more_lx (const Mover *mover,
         const Shine *there,
         guint        probe)
{
  return straight_lx (there, &g_array_index (mover->probes, LrLightProbe, probe), mover->self->lamp[mover->lamp].dim) - mover->now_lx[probe];
}

static void
put_on_cheeks (const Mover *mover,
               const Shine *there,
               LrRelight   *then)
{
  for (guint i = 0; i < then->n_views; i++)
    for (guint k = 0; k < mover->probes->len; k++)
      {
        const LrLightProbe *probe = &g_array_index (mover->probes, LrLightProbe, k);
        LrRelightLevel *cheek = probe->point == LR_FACE_LEFT ? &then->view[i].left : &then->view[i].right;

        if (is_cheek_of (probe, &then->view[i]))
          cheek->full_lx[mover->lamp] = fmax (0.0, cheek->full_lx[mover->lamp] + more_lx (mover, there, k));
      }
}

static void
put_on_walls (const Mover *mover,
              const Shine *there,
              LrRelight   *then)
{
  for (guint i = 0; i < then->n_views; i++)
    {
      double *full_lx = &then->view[i].walls.full_lx[mover->lamp], sum_lx = 0.0;
      guint n = 0;

      for (guint k = 0; k < mover->probes->len; k++)
        {
          const LrLightProbe *probe = &g_array_index (mover->probes, LrLightProbe, k);

          if (probe->type != LR_PROBE_BACKGROUND || probe->placed != then->view[i].camera->placed)
            continue;
          sum_lx += probe->reflectance * more_lx (mover, there, k);
          n++;
        }
      if (n > 0)
        *full_lx = fmax (0.0, *full_lx + sum_lx / n);
    }
}

/* As it is dimmed, else dimmed otherwise: the nearest to all that is wanted. FALSE: none mends */
static gboolean
find_dim (const Mover     *mover,
          const LrRelight *then,
          double          *dim)
{
  double dims[LR_RELIGHT_LAMPS], best_off = HUGE_VAL;

  lr_relight_get (mover->self, dims);
  *dim = dims[mover->lamp];
  if (lr_relight_mends (then, dims, mover->self, mover->view, mover->aim, MARGIN_STOPS))
    return TRUE;

  for (int step = (int) lround (LR_RELIGHT_LEAST / LR_RELIGHT_STEP); step <= (int) lround (1.0 / LR_RELIGHT_STEP); step++)
    {
      dims[mover->lamp] = step * LR_RELIGHT_STEP;
      if (!lr_relight_mends (then, dims, mover->self, mover->view, mover->aim, MARGIN_STOPS) || lr_relight_off (then, dims) >= best_off)
        continue;
      best_off = lr_relight_off (then, dims);
      *dim = dims[mover->lamp];
    }
  return best_off < HUGE_VAL;
}

/* Whether walls apart it mends at all: they take the longest to work out */
static gboolean
may_mend (const Mover     *mover,
          const LrRelight *then)
{
  LrRelight faces = *then;
  double dim;

  for (guint i = 0; i < faces.n_views; i++)
    faces.view[i].has_walls = FALSE;
  return mover->aim == LR_RELIGHT_WALLS || find_dim (mover, &faces, &dim);
}

/* The plan with the lamp there; (nullable) */
static LrPlan *
move_lamp (const Mover *mover,
           LrVec2       to_m)
{
  const LrPlaced *placed = mover->self->lamp[mover->lamp].placed;
  LrRemedy *remedy = lr_remedy_new ();
  LrPlan *plan;

  lr_remedy_move (remedy, placed, to_m, &mover->self->view[mover->view].camera->subject->at_m);
  plan = lr_remedy_apply (remedy, mover->judge->study->plan, NULL);
  lr_remedy_free (remedy);
  return plan;
}

static gboolean
try_place (const Mover   *mover,
           LrVec2         to_m,
           LrRelightMove *move)
{
  const LrPlaced *placed = mover->self->lamp[mover->lamp].placed, *person = mover->self->view[mover->view].camera->subject;
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrStudy) study = NULL;
  LrRelight then = *mover->self;
  Shine there;
  double dim;
  gboolean mends;

  if (!lr_study_is_clear (mover->judge->study, placed, to_m, mover->judge->limits[LR_LIMIT_OVERLAP]))
    return FALSE;

  plan = move_lamp (mover, to_m);
  study = plan != NULL ? lr_study_new_trial (plan) : NULL;
  if (study == NULL || !shine_init (&there, study, placed))
    return FALSE;

  put_on_cheeks (mover, &there, &then);
  mends = may_mend (mover, &then);
  if (mends)
    {
      put_on_walls (mover, &there, &then);
      mends = find_dim (mover, &then, &dim);
    }
  lr_light_shade_free (there.shade);
  if (mends)
    *move = (LrRelightMove) { mover->lamp, to_m, lr_vec2_distance (to_m, person->at_m), 0.0, dim, then.view[mover->view].left.full_lx[mover->lamp],
                              then.view[mover->view].right.full_lx[mover->lamp] };
  return mends;
}

/* Rounded as lengths are told */
static LrVec2
place_at (const Mover *mover,
          double       away_m,
          double       turn_rad)
{
  LrVec2 from_m = mover->self->view[mover->view].camera->subject->at_m;
  LrVec2 way = lr_vec2_sub (mover->self->lamp[mover->lamp].placed->at_m, from_m);
  LrVec2 to_m = lr_vec2_add (from_m, lr_vec2_polar (lr_vec2_angle_rad (way) + turn_rad, away_m));

  return lr_vec2 (0.001 * round (1000.0 * to_m.x), 0.001 * round (1000.0 * to_m.y));
}

/* More light on the face, against what it gets or against the walls */
static gboolean
wants_more (const Mover *mover)
{
  LrRelight brighter = *mover->self;
  LrRelightView *view = &brighter.view[mover->view];
  double dims[LR_RELIGHT_LAMPS];

  lr_relight_get (mover->self, dims);
  view->left.full_lx[mover->lamp] *= 1.01;
  view->right.full_lx[mover->lamp] *= 1.01;
  if (mover->aim == LR_RELIGHT_WALLS)
    view->walls.full_lx[mover->lamp] /= 1.01;
  return lr_relight_miss (&brighter, dims, mover->view, mover->aim) < lr_relight_miss (mover->self, dims, mover->view, mover->aim);
}

static gboolean
find_distance (const Mover   *mover,
               LrRelightMove *move)
{
  double now_m = lr_vec2_distance (mover->self->lamp[mover->lamp].placed->at_m, mover->self->view[mover->view].camera->subject->at_m);
  double way = wants_more (mover) ? -1.0 : 1.0;

  for (double by_m = STEP_M; by_m <= MOST_M + 1e-9; by_m += STEP_M)
    if (now_m + way * by_m >= NEAREST_M && try_place (mover, place_at (mover, now_m + way * by_m, 0.0), move))
      return TRUE;
  return FALSE;
}

static gboolean
find_turn (const Mover   *mover,
           int            side,
           LrRelightMove *move)
{
  double away_m = lr_vec2_distance (mover->self->lamp[mover->lamp].placed->at_m, mover->self->view[mover->view].camera->subject->at_m);

  for (double by_rad = STEP_RAD; by_rad <= MOST_RAD + 1e-9; by_rad += STEP_RAD)
    if (try_place (mover, place_at (mover, away_m, side * by_rad), move))
      {
        move->turned_rad = side * by_rad;
        return TRUE;
      }
  return FALSE;
}

/* Either way round, the shorter first: at the nearest place it may stand in a picture */
static guint
find_turns (const Mover   *mover,
            LrRelightMove *moves)
{
  guint n = 0;

  for (int side = -1; side <= 1; side += 2)
    n += find_turn (mover, side, &moves[n]);
  if (n == 2 && fabs (moves[1].turned_rad) < fabs (moves[0].turned_rad))
    {
      LrRelightMove first = moves[1];

      moves[1] = moves[0];
      moves[0] = first;
    }
  return n;
}

/**
 * lr_relight_find_moves:
 * @self: what may be dimmed
 * @judge: whose it is
 * @view: number of a view
 * @aim: what it misses
 * @moves: (out): where its key is to go, the best first
 *
 * The two sides of a face change as the key goes round the person, levels as it comes nearer or goes farther away.
 *
 * Returns: how many places were found
 */
guint
lr_relight_find_moves (const LrRelight *self,
                       const LrJudge   *judge,
                       guint            view,
                       LrRelightAim     aim,
                       LrRelightMove    moves[LR_RELIGHT_MOVES])
{
  Mover mover = { .self = self, .judge = judge, .view = view, .lamp = find_key (self, judge, view), .aim = aim };
  Shine here;
  guint n;

  if (mover.lamp == self->n_lamps || !shine_init (&here, judge->study, self->lamp[mover.lamp].placed))
    return 0;

  mover.probes = lr_light_probes (judge->study, here.shade);
  mover.now_lx = g_new (double, mover.probes->len + 1);
  for (guint i = 0; i < mover.probes->len; i++)
    mover.now_lx[i] = straight_lx (&here, &g_array_index (mover.probes, LrLightProbe, i), self->lamp[mover.lamp].dim);
  n = aim == LR_RELIGHT_RATIO ? find_turns (&mover, moves) : find_distance (&mover, &moves[0]) ? 1 : 0;
  g_free (mover.now_lx);
  g_array_unref (mover.probes);
  lr_light_shade_free (here.shade);
  return n;
}
