/* test-survey-words.c - what is said of a room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figures are simple arithmetic on the lengths that are told; how good corners are is held against the survey.
 */

#include "survey_words.h"

#include <math.h>

#define LEFT (90.0 * LR_DEG)
#define RIGHT (-90.0 * LR_DEG)
#define NB "\302\240"

typedef struct
{
  const char      *name;
  LrSurveyWall     walls[8];
  guint            n;
  LrSurveyDiagonal diagonals[2];
  guint            n_diagonals;
  LrUnits          units;
  const char      *says; /* one of the lines */
} Case;

static const Case cases[] = {
  { "nothing", { { 0.0, 0.0 } }, 0, { { 0 } }, 0, LR_UNITS_METRIC, "Type the first two walls." },
  { "fits", { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC, "It closes." },
  { "last-comes-out", { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT } }, 3, { { 0 } }, 0, LR_UNITS_METRIC,
    "The last wall comes out at <b>4.00" NB "m</b>." },
  { "two-walls", { { 5.0, LEFT }, { 4.0, LEFT } }, 2, { { 0 } }, 0, LR_UNITS_METRIC,
    "The last wall comes out at <b>6.40" NB "m</b>." },
  { "a-hair", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.99, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "At the end the walls miss each other by <b>1" NB "cm</b>; that is shared out among them." },
  { "a-little", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.97, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "<b>Walls 1 and 3</b> disagree by <b>3" NB "cm</b>, no more than tapes and corners do: it is shared out." },
  { "two-disagree", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.94, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "<b>Walls 1 and 3</b> disagree by <b>6" NB "cm</b>; a diagonal from corner <b>1</b> to <b>3</b> would settle it." },
  { "does-not-close", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.94, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "The room does not close by <b>6" NB "cm</b>." },
  { "last-turn-untold", { { 5.0, RIGHT }, { 3.0, RIGHT }, { 2.0, LEFT }, { 1.0, RIGHT }, { 3.06, RIGHT }, { 4.0, LEFT } }, 6, { { 0 } }, 0,
    LR_UNITS_METRIC, "The room does not close by <b>6" NB "cm</b>." },
  { "last-turn-taken", { { 5.0, RIGHT }, { 3.0, RIGHT }, { 2.0, LEFT }, { 1.0, RIGHT }, { 3.06, RIGHT }, { 4.0, LEFT } }, 6, { { 0 } }, 0,
    LR_UNITS_METRIC, "The last wall ends at the first, so that its corner turns <b>right</b> by <b>90°</b>." },
  { "short-wall", { { 5.0, LEFT }, { 3.0, LEFT }, { 2.0, RIGHT }, { 0.15, LEFT }, { 3.0, LEFT }, { 3.15, LEFT } }, 6, { { 0 } }, 0,
    LR_UNITS_METRIC, "Wall <b>4</b> is but <b>15" NB "cm</b> long: is it a wall, or what the tapes miss?" },
  /* the diagonals are those of a rectangle, of an equal-sided trapezium (the square root of 12 * 11.94 + 81) and of 4.2 by 6.5;
   * six tapes err by 12 mm together (4 mm and 0.2 mm per metre each), corners by more */
  { "six-centimetres", { { 4.2, LEFT }, { 4.0, LEFT }, { 4.14, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "<b>Walls 1 and 3</b> disagree by <b>6" NB "cm</b>; a diagonal from corner <b>1</b> to <b>3</b> would settle it." },
  { "six-in-an-ell", { { 4.2, LEFT }, { 6.5, LEFT }, { 1.9, LEFT }, { 2.5, RIGHT }, { 2.36, LEFT }, { 4.0, LEFT } }, 6, { { 0 } }, 0,
    LR_UNITS_METRIC, "<b>Walls 1, 3 and 5</b> disagree by <b>6" NB "cm</b>: a tape was misread, or corners are not square; a diagonal "
    "from corner <b>1</b> to <b>3</b> would settle it." },
  { "six-in-a-hall", { { 12.0, LEFT }, { 9.0, LEFT }, { 11.94, LEFT }, { 9.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "<b>Walls 1 and 3</b> disagree by <b>6" NB "cm</b>: a tape was misread, or corners are not square; a diagonal from corner <b>1</b> to "
    "<b>3</b> would settle it." },
  { "hall-settled", { { 12.0, LEFT }, { 9.0, LEFT }, { 11.94, LEFT }, { 9.0, LEFT } }, 4, { { 0, 2, 15.0 } }, 1, LR_UNITS_METRIC,
    "Wall <b>3</b> was taped at <b>11.94" NB "m</b>, but all else makes it <b>12.00" NB "m</b>: that is taken; tape it again." },
  { "hall-crooked", { { 12.0, LEFT }, { 9.0, LEFT }, { 11.94, LEFT }, { 9.0, LEFT } }, 4, { { 0, 2, 14.976 }, { 1, 3, 14.976 } }, 2, LR_UNITS_METRIC,
    "At the end the walls miss each other by <b>6" NB "cm</b>; that is shared out among them." },
  { "ell-settled", { { 4.2, LEFT }, { 6.5, LEFT }, { 1.9, LEFT }, { 2.5, RIGHT }, { 2.36, LEFT }, { 4.0, LEFT } }, 6, { { 0, 2, 7.739 } }, 1,
    LR_UNITS_METRIC, "<b>Walls 3 and 5</b> disagree by <b>6" NB "cm</b>; a diagonal from corner <b>3</b> to <b>5</b> would settle it." },
  { "imperial", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.9238, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_IMPERIAL,
    "<b>Walls 1 and 3</b> disagree by <b>3\342\200\263</b>; a diagonal from corner <b>1</b> to <b>3</b> would settle it." },
  { "three-disagree", { { 5.0, LEFT }, { 3.0, LEFT }, { 2.0, RIGHT }, { 1.0, LEFT }, { 3.06, LEFT }, { 4.0, LEFT } }, 6, { { 0 } }, 0,
    LR_UNITS_METRIC, "<b>Walls 1, 3 and 5</b> disagree by <b>6" NB "cm</b>; a diagonal from corner <b>2</b> to <b>6</b> would settle it." },
  { "odd-one", { { 5.0, LEFT }, { 4.0, LEFT }, { 4.94, LEFT }, { 4.0, LEFT } }, 4, { { 0, 2, 6.403 } }, 1, LR_UNITS_METRIC,
    "Wall <b>3</b> was taped at <b>4.94" NB "m</b>, but all else makes it <b>5.00" NB "m</b>: that is taken; tape it again." },
  { "odd-diagonal", { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT }, { 4.0, LEFT } }, 4, { { 0, 2, 6.203 } }, 1, LR_UNITS_METRIC,
    "The diagonal from corner <b>1</b> to <b>3</b> was taped at <b>6.20" NB "m</b>, but all else makes it <b>6.40" NB "m</b>: "
    "that is taken; tape it again." },
  { "wrong-corners", { { 3.0, LEFT }, { 4.0, 126.8699 * LR_DEG }, { 5.0, 143.1301 * LR_DEG } }, 3, { { 0 } }, 0, LR_UNITS_METRIC,
    "Corner <b>1</b> is said to turn by <b>143.1°</b>, but all else makes it <b>126.9°</b>: that is taken; look again." },
  { "cross", { { 4.0, LEFT }, { 2.0, LEFT }, { 2.0, LEFT }, { 4.0, LEFT } }, 4, { { 0 } }, 0, LR_UNITS_METRIC,
    "These walls cross each other." },
  { "untold", { { 5.0, LEFT }, { 4.0, LEFT }, { NAN, LEFT }, { 4.0, LEFT }, { NAN, LEFT } }, 5, { { 0 } }, 0, LR_UNITS_METRIC,
    "Wall <b>3</b> does not come out of the others: tape it." },
  { "no-such-corner", { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT }, { 4.0, LEFT } }, 4, { { 0, 4, 6.4 } }, 1, LR_UNITS_METRIC,
    "Diagonal <b>1</b>: name two corners of the sketch, and a length." },
};

static void
test_says (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (LrSurvey) survey = lr_survey_new (c->walls, c->n, c->diagonals, c->n_diagonals, lr_vec2 (0.0, 0.0), 0.0);
  g_autofree char *text = lr_survey_say (survey, c->units);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  g_test_message ("%s", text);
  g_assert_true (g_strv_contains ((const char *const *) lines, c->says));
}

/* The area, and how good corners are: two of the standard errors that the survey tells */
static void
test_size (void)
{
  const LrSurveyWall walls[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT }, { 4.0, LEFT } };
  g_autoptr (LrSurvey) survey = lr_survey_new (walls, 4, NULL, 0, lr_vec2 (0.0, 0.0), 0.0);
  g_autofree char *text = lr_survey_say (survey, LR_UNITS_METRIC);
  g_autofree char *error = g_strdup_printf ("about <b>%.0f" NB "cm</b>", 200.0 * survey->corner_sd_m);

  g_assert_nonnull (strstr (text, "<b>20.0" NB "m²</b>"));
  g_assert_nonnull (strstr (text, error));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/survey-words/", cases[i].name, NULL);

      g_test_add_data_func (path, &cases[i], test_says);
    }
  g_test_add_func ("/survey-words/size", test_size);

  return g_test_run ();
}
