/* survey_words.c - what is said of a room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walls and corners count from 1, as in the sketch: wall 1 goes from corner 1 to corner 2.
 */

#include "config.h"

#include "survey_words.h"

#include "polygon.h"

#include <glib/gi18n-lib.h>

#define SAID_M 0.005     /* a misclosure of less is no news */
#define ERROR_SDS 2.0    /* "good to": nineteen corners of twenty */
#define SQ_FT_PER_M2 (1.0 / (0.3048 * 0.3048))

/* "6 cm", from a metre on "1.20 m"; below a centimetre "4 mm" */
static char *
say_small (double  length_m,
           LrUnits units)
{
  g_autofree char *number = NULL;

  length_m = fabs (length_m);
  if (units != LR_UNITS_METRIC || length_m >= 0.995)
    return lr_length_format (length_m, units);

  number = lr_number_format (length_m * (length_m < 0.0095 ? 1000.0 : 100.0), 0);
  /* Translators: a small length: "6 cm", "4 mm" */
  return g_strdup_printf (length_m < 0.0095 ? _("%s\u00a0mm") : _("%s\u00a0cm"), number);
}

static char *
say_turn (double turn_rad)
{
  double angle_rad = fabs (turn_rad);
  g_autofree char *number = lr_number_format (angle_rad / LR_DEG, fabs (remainder (angle_rad, LR_DEG)) < 0.05 * LR_DEG ? 0 : 1);

  return g_strdup_printf ("%s°", number);
}

/* "2", "2 and 5", "1, 3 and 5"; (transfer full) */
static char *
join (GPtrArray *words)
{
  GString *all = g_string_new (words->len > 0 ? words->pdata[0] : "");

  for (guint i = 1; i < words->len; i++)
    {
      /* Translators: between the last two of a list, and between the others */
      g_string_append (all, i + 1 == words->len ? _(" and ") : _(", "));
      g_string_append (all, words->pdata[i]);
    }
  return g_string_free (all, FALSE);
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  return (int) *(const guint *) a - (int) *(const guint *) b;
}

/* The walls or corners among the suspects, in the order walked: "1, 3 and 5"; (transfer full), "" for none */
static char *
say_numbers (const LrSurveyDoubt *doubt,
             LrDoubtKind          kind,
             guint               *n)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < doubt->n; i++)
    if (doubt->of[i].kind == kind)
      g_array_append_val (numbers, doubt->of[i].index);
  g_array_sort (numbers, compare_numbers);
  for (guint i = 0; i < numbers->len; i++)
    g_ptr_array_add (words, g_strdup_printf ("%u", g_array_index (numbers, guint, i) + 1));
  *n = numbers->len;
  return join (words);
}

/* "walls 2 and 5"; (transfer full) (nullable) */
static char *
say_walls (const LrSurveyDoubt *doubt)
{
  guint n;
  g_autofree char *numbers = say_numbers (doubt, LR_DOUBT_WALL, &n);

  /* Translators: "walls 2 and 5", in a list of what was measured */
  return n > 0 ? g_strdup_printf (ngettext ("wall %s", "walls %s", n), numbers) : NULL;
}

static char *
say_corners (const LrSurveyDoubt *doubt)
{
  guint n;
  g_autofree char *numbers = say_numbers (doubt, LR_DOUBT_CORNER, &n);

  /* Translators: "corners 2 and 5", in a list of what was measured */
  return n > 0 ? g_strdup_printf (ngettext ("corner %s", "corners %s", n), numbers) : NULL;
}

/* All suspects, when there are not only walls among them; (transfer full) */
static char *
say_suspects (const LrSurveyDoubt *doubt)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  char *walls = say_walls (doubt), *corners = say_corners (doubt);

  if (walls != NULL)
    g_ptr_array_add (words, walls);
  for (guint i = 0; i < doubt->n; i++)
    {
      const LrSurveySuspect *suspect = &doubt->of[i];

      if (suspect->kind == LR_DOUBT_DIAGONAL)
        g_ptr_array_add (words, g_strdup_printf (_("the diagonal from corner %u to %u"), suspect->from + 1, suspect->to + 1));
    }
  if (corners != NULL)
    g_ptr_array_add (words, corners);
  return join (words);
}

/* One alone that is hardly off */
static char *
say_near_miss (const LrSurveySuspect *odd,
               const char            *taken,
               const char            *others)
{
  if (odd->kind == LR_DOUBT_WALL)
    return g_strdup_printf (_("Wall <b>%u</b> was taped at <b>%s</b>; all else makes it <b>%s</b>, which is near enough."),
                            odd->index + 1, taken, others);
  return g_strdup_printf (_("The diagonal from corner <b>%u</b> to <b>%u</b> was taped at <b>%s</b>; all else makes it <b>%s</b>, "
                            "which is near enough."), odd->from + 1, odd->to + 1, taken, others);
}

/* One alone is the odd one: it is left out, unless what makes it odd is in doubt as well */
static char *
say_odd_one (const LrSurveyDoubt *doubt,
             LrUnits              units)
{
  const LrSurveySuspect *odd = &doubt->of[0];
  gboolean is_out = doubt->is_left_out;
  g_autofree char *taken = NULL, *others = NULL;

  if (odd->kind == LR_DOUBT_CORNER)
    {
      taken = say_turn (doubt->taken);
      others = say_turn (doubt->taken - doubt->error);
      return g_strdup_printf (is_out ? _("Corner <b>%u</b> is said to turn by <b>%s</b>, but all else makes it <b>%s</b>: that is "
                                         "taken; look again.")
                                     : _("Corner <b>%u</b> is said to turn by <b>%s</b>, but all else makes it <b>%s</b>: look again."),
                              odd->from + 1, taken, others);
    }

  taken = lr_length_format (doubt->taken, units);
  others = lr_length_format (doubt->taken - doubt->error, units);
  if (doubt->is_within)
    return say_near_miss (odd, taken, others);
  if (odd->kind == LR_DOUBT_WALL)
    return g_strdup_printf (is_out ? _("Wall <b>%u</b> was taped at <b>%s</b>, but all else makes it <b>%s</b>: that is taken; "
                                       "tape it again.")
                                   : _("Wall <b>%u</b> was taped at <b>%s</b>, but all else makes it <b>%s</b>: tape it again."),
                            odd->index + 1, taken, others);
  return g_strdup_printf (is_out ? _("The diagonal from corner <b>%u</b> to <b>%u</b> was taped at <b>%s</b>, but all else makes it "
                                     "<b>%s</b>: that is taken; tape it again.")
                                 : _("The diagonal from corner <b>%u</b> to <b>%u</b> was taped at <b>%s</b>, but all else makes it "
                                     "<b>%s</b>: tape it again."), odd->from + 1, odd->to + 1, taken, others);
}

/* "Walls 2 and 5 disagree by 6 cm" */
static char *
say_disagreement (const LrSurveyDoubt *doubt,
                  LrUnits              units)
{
  g_autofree char *error = doubt->of[0].kind == LR_DOUBT_CORNER ? say_turn (doubt->error) : say_small (doubt->error, units);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  gboolean all_walls = TRUE;
  g_autofree char *list = NULL;

  for (guint i = 0; i < doubt->n; i++)
    all_walls = all_walls && doubt->of[i].kind == LR_DOUBT_WALL;
  if (!all_walls)
    {
      list = say_suspects (doubt);
      /* Translators: a length or an angle, then a list of walls, diagonals and corners */
      return g_strdup_printf (_("By <b>%s</b> these disagree: <b>%s</b>"), error, list);
    }

  list = say_walls (doubt);
  list[0] = g_ascii_toupper (list[0]);
  /* Translators: "Walls 2 and 5", then a length */
  return g_strdup_printf (_("<b>%s</b> disagree by <b>%s</b>"), list, error);
}

/**
 * lr_survey_say_doubt:
 * @doubt: of a survey
 * @units: how lengths are written
 *
 * Returns: (transfer full): which measures contradict each other, by how much, and what would settle it
 */
char *
lr_survey_say_doubt (const LrSurveyDoubt *doubt,
                     LrUnits              units)
{
  g_autofree char *disagreement = NULL;

  if (doubt->n == 1)
    return say_odd_one (doubt, units);

  disagreement = say_disagreement (doubt, units);
  if (doubt->is_within)
    /* Translators: after "Walls 2 and 5 disagree by 3 cm" */
    return g_strdup_printf (_("%s, no more than tapes and corners do: it is shared out."), disagreement);
  if (doubt->may_be_corners)
    /* Translators: after "Walls 2 and 5 disagree by 6 cm" */
    return g_strdup_printf (_("%s: a tape was misread, or corners are not square; a diagonal from corner <b>%u</b> to <b>%u</b> would "
                              "settle it."), disagreement, doubt->from + 1, doubt->to + 1);
  if (doubt->has_settling)
    /* Translators: after "Walls 2 and 5 disagree by 6 cm" */
    return g_strdup_printf (_("%s; a diagonal from corner <b>%u</b> to <b>%u</b> would settle it."), disagreement, doubt->from + 1,
                            doubt->to + 1);
  return g_strdup_printf (doubt->of[0].kind == LR_DOUBT_CORNER ? _("%s; look again.") : _("%s; tape them again."), disagreement);
}

static void
add_line (GString *text,
          char    *line)
{
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, line);
  g_free (line);
}

/* What keeps a room from coming out; NULL if nothing does */
static char *
say_fault (const LrSurvey *survey)
{
  switch (survey->state)
    {
    case LR_SURVEY_TOO_SHORT:
      return g_strdup (_("Type the first two walls."));
    case LR_SURVEY_NO_LENGTH:
      return g_strdup_printf (_("Wall <b>%u</b> does not come out of the others: tape it."), survey->fault + 1);
    case LR_SURVEY_NO_DIAGONAL:
      return g_strdup_printf (_("Diagonal <b>%u</b>: name two corners of the sketch, and a length."), survey->fault + 1);
    case LR_SURVEY_UNSOLVED:
      return g_strdup (_("No room comes of these lengths: they contradict each other."));
    case LR_SURVEY_OPEN:
    case LR_SURVEY_ROUND:
    default:
      return NULL;
    }
}

/* Whether something is in doubt that pulls the corners */
static gboolean
is_open (const LrSurvey *survey)
{
  for (guint i = 0; i < survey->doubts->len; i++)
    {
      const LrSurveyDoubt *doubt = &g_array_index (survey->doubts, LrSurveyDoubt, i);

      if (!doubt->is_within && !doubt->is_left_out)
        return TRUE;
    }
  return FALSE;
}

static char *
say_closing (const LrSurvey *survey,
             LrUnits         units)
{
  g_autofree char *length = NULL;

  if (survey->has_closing_wall && !(survey->closing_m < LR_SURVEY_SHORT_M))
    {
      length = lr_length_format (survey->closing_m, units);
      return g_strdup_printf (_("The last wall comes out at <b>%s</b>."), length);
    }
  if (survey->has_closing_wall || is_open (survey))
    {
      length = say_small (survey->has_closing_wall ? survey->closing_m : survey->gap_m, units);
      return g_strdup_printf (_("The room does not close by <b>%s</b>."), length);
    }
  if (survey->doubts->len > 0)
    return NULL;
  if (!(survey->gap_m > SAID_M))
    return g_strdup (_("It closes."));

  length = say_small (survey->gap_m, units);
  return g_strdup_printf (_("At the end the walls miss each other by <b>%s</b>; that is shared out among them."), length);
}

/* A wall that was told, and may be none */
static char *
say_short_wall (const LrSurvey *survey,
                LrUnits         units)
{
  const LrVec2 *corners_m = &g_array_index (survey->corners_m, LrVec2, 0);
  guint wall = (guint) survey->short_wall;
  g_autofree char *length = say_small (lr_vec2_distance (corners_m[wall], corners_m[(wall + 1) % survey->corners_m->len]), units);

  return g_strdup_printf (_("Wall <b>%u</b> is but <b>%s</b> long: is it a wall, or what the tapes miss?"), wall + 1, length);
}

/* The last turn as the others leave it, when it was told otherwise */
static char *
say_last_turn (const LrSurvey *survey)
{
  g_autofree char *turn = say_turn (survey->last_turn_rad);

  return g_strdup_printf (survey->last_turn_rad < 0.0 ? _("The last wall ends at the first, so that its corner turns <b>right</b> by <b>%s</b>.")
                                                      : _("The last wall ends at the first, so that its corner turns <b>left</b> by <b>%s</b>."),
                          turn);
}

/**
 * lr_survey_say_size:
 * @survey: a survey that came to a room
 * @units: how it is written
 *
 * Returns: (transfer full): its area, and how good its corners are
 */
char *
lr_survey_say_size (const LrSurvey *survey,
                    LrUnits         units)
{
  const LrVec2 *corners_m = &g_array_index (survey->corners_m, LrVec2, 0);
  double area_m2 = fabs (lr_polygon_area_m2 (corners_m, survey->corners_m->len));
  g_autofree char *area = units == LR_UNITS_IMPERIAL ? g_strdup_printf (_("%.0f\u00a0sq\u00a0ft"), area_m2 * SQ_FT_PER_M2)
                                                     : g_strdup_printf (_("%.1f\u00a0m²"), area_m2);
  g_autofree char *error = NULL;

  if (survey->n_checks == 0)
    return g_strdup_printf ("<b>%s</b>.", area);

  error = say_small (ERROR_SDS * survey->corner_sd_m, units);
  if (is_open (survey))
    /* Translators: an area, then a length; the walls contradict each other */
    return g_strdup_printf (_("<b>%s</b>. Once that is settled, corners are good to about <b>%s</b>."), area, error);
  /* Translators: an area, then a length */
  return g_strdup_printf (_("<b>%s</b>. Corners are good to about <b>%s</b>."), area, error);
}

/**
 * lr_survey_say:
 * @survey: a survey
 * @units: how lengths are written
 *
 * Returns: (transfer full): what is in doubt, how well it closes, and how large the room is; or what is wrong
 */
char *
lr_survey_say (const LrSurvey *survey,
               LrUnits         units)
{
  GString *text = g_string_new (NULL);
  char *fault = say_fault (survey), *closing;

  if (fault != NULL)
    {
      add_line (text, fault);
      return g_string_free (text, FALSE);
    }
  if (!lr_polygon_is_simple (&g_array_index (survey->corners_m, LrVec2, 0), survey->corners_m->len))
    {
      add_line (text, g_strdup (_("These walls cross each other.")));
      return g_string_free (text, FALSE);
    }

  for (guint i = 0; i < survey->doubts->len; i++)
    add_line (text, lr_survey_say_doubt (&g_array_index (survey->doubts, LrSurveyDoubt, i), units));
  closing = say_closing (survey, units);
  if (closing != NULL)
    add_line (text, closing);
  if (survey->short_wall >= 0)
    add_line (text, say_short_wall (survey, units));
  if (survey->has_other_turn)
    add_line (text, say_last_turn (survey));
  add_line (text, lr_survey_say_size (survey, units));
  return g_string_free (text, FALSE);
}
