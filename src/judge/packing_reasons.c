/* packing_reasons.c - what each line of a packing list is called, and what it is for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every figure that the plan does not tell is said to be a usual one.
 */

#include "config.h"

#include "packing_words_private.h"

#include <glib/gi18n-lib.h>

/* "10 m" of what is sold so long */
static char *
stock_text (double  length_m,
            LrUnits units)
{
  g_autofree char *number = NULL;

  if (units == LR_UNITS_IMPERIAL)
    return lr_length_format (length_m, units);
  number = lr_number_format (length_m, 0);

  return g_strdup_printf ("%s\u00a0m", number);
}

static char *
with_size (const char *title,
           double      size,
           int         decimals,
           const char *unit)
{
  g_autofree char *number = lr_number_format (size, decimals);

  /* Translators: what it is, its size and the unit of that: "Sandbag, 5 kg" */
  return g_strdup_printf (_("%s, %s\u00a0%s"), title, number, unit);
}

/* Whole numbers without a decimal, others with one */
static int
decimals_of (double value)
{
  return fabs (value - round (value)) < 0.05 ? 0 : 1;
}

/* A kind of thing at the head of a line */
static char *
with_capital (const char *title)
{
  const char *rest = *title != '\0' ? g_utf8_next_char (title) : title;
  g_autofree char *first = g_utf8_strup (title, rest - title);

  return g_strconcat (first, rest, NULL);
}

/**
 * lr_pack_dup_title:
 * @line: a line
 * @units: how lengths are written
 *
 * Returns: (transfer full): what it is called
 */
char *
lr_pack_dup_title (const LrPackLine *line,
                   LrUnits           units)
{
  g_autofree char *length = stock_text (line->size, units);

  switch (line->what)
    {
    case LR_PACK_FILTER:
      return with_size (_("ND"), line->size, decimals_of (line->size),
                        decimals_of (line->size) == 0 ? ngettext ("stop", "stops", (gulong) lround (line->size)) : _("stops"));
    case LR_PACK_TRIPOD:
      return g_strdup (_("Tripod"));
    case LR_PACK_STAND:
      return g_strdup (_("Stand"));
    case LR_PACK_BOOM_STAND:
      return g_strdup (_("Boom stand"));
    case LR_PACK_CLAMP:
      return g_strdup (_("Clamp"));
    case LR_PACK_SANDBAG:
      return with_size (_("Sandbag"), line->size, decimals_of (line->size), "kg");
    case LR_PACK_COUNTERWEIGHT:
      return with_size (_("Counterweight"), line->size, decimals_of (line->size), "kg");
    case LR_PACK_LEAD_TO_FIND:
      return line->size > 0.0 ? g_strdup_printf (_("Lead, %s or longer"), length) : g_strdup (_("Lead"));
    case LR_PACK_MULTIWAY:
      return g_strdup (_("Multiway socket"));
    case LR_PACK_CAMERA_BATTERY:
      return with_size (_("Camera battery"), line->size, decimals_of (line->size), "Wh");
    case LR_PACK_LIGHT_BATTERY:
      return with_size (_("Battery for a light"), line->size, decimals_of (line->size), "Wh");
    case LR_PACK_CARD:
      return with_size (_("Card to record on"), line->size, 0, "GB");
    case LR_PACK_CELLS:
      return g_strdup (_("Set of cells"));
    case LR_PACK_SOUND_LEAD:
      return g_strdup_printf (_("Microphone lead, %s"), length);
    case LR_PACK_HEADPHONES:
      return g_strdup (_("Headphones"));
    case LR_PACK_FLOOR_TAPE:
      return g_strdup_printf (_("Floor tape, roll of %s"), length);
    case LR_PACK_MARK_TAPE:
      return g_strdup_printf (_("Marking tape, roll of %s"), length);
    case LR_PACK_SPARE_LAMP:
      return g_strdup (_("Light in reserve"));
    case LR_PACK_THING:
    case LR_PACK_MODIFIER:
    case LR_N_PACK_WHATS:
    default:
      return with_capital (line->title);
    }
}

/* What a lead goes to, else what it is called */
static char *
load_title (const LrStudy *study,
            const LrItem  *item)
{
  const LrPlaced *load = item->kind == LR_ITEM_LEAD ? lr_study_find_placed (study, item->lead.feeds) : NULL;

  return lr_item_title (load != NULL ? load->item : item);
}

static gboolean
is_lead_line (const LrPackLine *line)
{
  return line->what == LR_PACK_LEAD_TO_FIND
         || (line->what == LR_PACK_THING && line->group == LR_PACK_POWER);
}

/* "L1 key 6.20 m", "Camera A 2", "Wenna" */
static char *
use_text (const LrPackLine *line,
          const LrPackUse  *use,
          const LrStudy    *study,
          LrUnits           units)
{
  g_autofree char *title = load_title (study, use->item), *figure = NULL;

  if (is_lead_line (line) || line->what == LR_PACK_SOUND_LEAD)
    {
      if (isnan (use->figure))
        return g_steal_pointer (&title);
      figure = lr_length_format (use->figure, units);
      if (use->item->kind == LR_ITEM_LEAD && use->item->lead.is_wound)
        /* Translators: what a lead goes to and how far */
        return g_strdup_printf (_("%s %s, wound off its reel"), title, figure);
      if (is_lead_line (line) && use->item->kind != LR_ITEM_LEAD)
        return g_strdup_printf (_("%s %s, not laid in the plan yet"), title, figure);
      return g_strdup_printf ("%s %s", title, figure);
    }
  if (line->what == LR_PACK_CARD)
    {
      figure = lr_number_format (use->figure, 1);
      return g_strdup_printf ("%s %s\u00a0GB", title, figure);
    }
  if (use->count != 1 && line->uses->len > 1)
    return g_strdup_printf ("%s %d", title, use->count);

  return g_steal_pointer (&title);
}

static char *
join_uses (const LrPackLine *line,
           const LrStudy    *study,
           LrUnits           units,
           gboolean          on_mains)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < line->uses->len; i++)
    {
      const LrPackUse *use = &g_array_index (line->uses, LrPackUse, i);
      g_autofree char *one = use->item != NULL && use->is_mains == on_mains ? use_text (line, use, study, units) : NULL;

      if (one != NULL)
        g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", one);
    }

  return g_string_free (text, FALSE);
}

static gboolean
has_usual_figure (const LrPackLine *line)
{
  for (guint i = 0; i < line->uses->len; i++)
    if (g_array_index (line->uses, LrPackUse, i).is_usual)
      return TRUE;

  return FALSE;
}

static char *
hours_text (const LrPacking *packing)
{
  g_autofree char *hours = lr_number_format (packing->hours, decimals_of (packing->hours) == 0 ? 0 : 1);

  if (packing->is_usual_hours)
    /* Translators: from rolling to wrap */
    return g_strdup_printf (_("%s\u00a0h, a usual time, as the job tells none"), hours);

  return g_strdup_printf (_("%s\u00a0h from rolling to wrap"), hours);
}

static char *
battery_why (const LrPacking  *packing,
             const LrPackLine *line,
             const LrStudy    *study,
             LrUnits           units)
{
  g_autofree char *running = join_uses (line, study, units, FALSE), *on_mains = join_uses (line, study, units, TRUE);
  g_autofree char *hours = hours_text (packing);
  GString *text = g_string_new (NULL);

  if (*running != '\0')
    /* Translators: what runs from batteries, and for how long */
    g_string_append_printf (text, _("%s: %s and a quarter more, on 80\u00a0%% of what is marked"), running, hours);
  if (*on_mains != '\0')
    g_string_append_printf (text, _("%s%s by lead: in case the mains fail"), text->len > 0 ? "; " : "", on_mains);
  if (*running != '\0' && (line->is_usual_size || has_usual_figure (line)))
    g_string_append (text, _("; what it takes and what a battery holds are usual figures where the plan tells none"));

  return g_string_free (text, FALSE);
}

static char *
card_why (const LrPacking  *packing,
          const LrPackLine *line,
          const LrStudy    *study,
          LrUnits           units)
{
  g_autofree char *uses = join_uses (line, study, units, FALSE), *hours = hours_text (packing);
  const char *usual = line->is_usual_size || has_usual_figure (line)
                        ? _("; rate and card are usual figures where the plan tells none") : "";

  /* Translators: cameras with what they record, for how long, and what is not told */
  return g_strdup_printf (_("%s in %s; half as much again, cards filled to 90\u00a0%%%s"), uses, hours, usual);
}

static char *
tape_why (const LrPackLine *line,
          LrUnits           units)
{
  g_autofree char *length = stock_text (ceil (line->total), units);

  return line->what == LR_PACK_FLOOR_TAPE ? g_strdup_printf (_("some %s over the leads"), length)
                                          : g_strdup_printf (_("some %s for the places of chairs and feet"), length);
}

static char *
spare_lamp_why (const LrPackLine *line)
{
  if (line->owned > 0)
    return g_strdup_printf (ngettext ("one that fails ends the interview; the kit has %d that is not placed",
                                      "one that fails ends the interview; the kit has %d that are not placed", line->owned),
                            line->owned);

  return g_strdup (_("one that fails ends the interview; else bring lamps for those that burn out"));
}

static char *
plain_why (const LrPackLine *line,
           const LrStudy    *study,
           LrUnits           units)
{
  g_autofree char *uses = join_uses (line, study, units, FALSE);

  switch (line->what)
    {
    case LR_PACK_FILTER:
      return g_strdup_printf (_("%s, unless it is built in"), uses);
    case LR_PACK_LEAD_TO_FIND:
      return g_strdup_printf (line->size > 0.0 ? _("%s; none left in the kit is so long") : _("%s takes power, and no way to a socket is found"),
                              uses);
    case LR_PACK_MULTIWAY:
      return g_strdup_printf (_("%s has more leads than outlets; not one behind another"), uses);
    case LR_PACK_CELLS:
      return g_strdup_printf (_("%s: fresh ones for transmitter and receiver"), uses);
    case LR_PACK_SOUND_LEAD:
      return g_strdup_printf (_("%s to the main camera, over the arm and round things"), uses);
    case LR_PACK_HEADPHONES:
      return g_strdup (_("to hear what is recorded"));
    case LR_PACK_THING:
    case LR_PACK_MODIFIER:
    case LR_PACK_TRIPOD:
    case LR_PACK_STAND:
    case LR_PACK_BOOM_STAND:
    case LR_PACK_CLAMP:
    case LR_PACK_SANDBAG:
    case LR_PACK_COUNTERWEIGHT:
    case LR_PACK_CAMERA_BATTERY:
    case LR_PACK_LIGHT_BATTERY:
    case LR_PACK_CARD:
    case LR_PACK_FLOOR_TAPE:
    case LR_PACK_MARK_TAPE:
    case LR_PACK_SPARE_LAMP:
    case LR_N_PACK_WHATS:
    default:
      return g_steal_pointer (&uses);
    }
}

static char *
dup_reason (const LrPacking  *packing,
            const LrPackLine *line,
            const LrStudy    *study,
            LrUnits           units)
{
  if (line->what == LR_PACK_CAMERA_BATTERY || line->what == LR_PACK_LIGHT_BATTERY)
    return battery_why (packing, line, study, units);
  if (line->what == LR_PACK_CARD)
    return card_why (packing, line, study, units);
  if (line->what == LR_PACK_FLOOR_TAPE || line->what == LR_PACK_MARK_TAPE)
    return tape_why (line, units);
  if (line->what == LR_PACK_SPARE_LAMP)
    return spare_lamp_why (line);

  return plain_why (line, study, units);
}

/**
 * lr_pack_dup_why:
 * @packing: a packing list
 * @line: one of its lines
 * @study: what it was made of
 * @units: how lengths are written
 *
 * Returns: (transfer full): what it is for, and how many of it are in reserve
 */
char *
lr_pack_dup_why (const LrPacking  *packing,
                 const LrPackLine *line,
                 const LrStudy    *study,
                 LrUnits           units)
{
  g_autofree char *reason = dup_reason (packing, line, study, units);

  if (line->spare == 0 || line->what == LR_PACK_SPARE_LAMP)
    return g_steal_pointer (&reason);

  /* Translators: what a thing is for, and how many more come along */
  return g_strdup_printf (_("%s; %d in reserve"), reason, line->spare);
}
