/* preroll.c - what is looked at before rolling, with the plan's own numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "preroll_parts.h"

#include "cautions.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static void
check_free (gpointer data)
{
  LrPrerollCheck *check = data;

  g_free (check->key);
  g_free (check->tick);
  g_free (check->markup);
  g_free (check->item);
  g_free (check);
}

/**
 * lr_preroll_add:
 * @preroll: what is made
 * @group: where it belongs
 * @word: of the check; with the item's id it is the key
 * @item: (nullable): what it is about
 * @markup: (transfer full): the line
 */
void
lr_preroll_add (LrPreroll      *preroll,
                LrPrerollGroup  group,
                const char     *word,
                const LrItem   *item,
                char           *markup)
{
  LrPrerollCheck *check = g_new0 (LrPrerollCheck, 1);

  check->group = group;
  check->key = item != NULL ? g_strdup_printf ("%s:%s", word, item->id) : g_strdup (word);
  check->item = g_strdup (item != NULL ? item->id : "");
  check->markup = markup;
  g_ptr_array_add (preroll->checks, check);
}

/**
 * lr_preroll_title:
 * @item: a thing
 *
 * Returns: (transfer full): "Camera A", as a sentence begins, escaped for markup
 */
char *
lr_preroll_title (const LrItem *item)
{
  g_autofree char *title = lr_item_title_first (item);

  return g_markup_escape_text (title, -1);
}

/**
 * lr_preroll_item:
 * @preroll: what is made
 * @index: of an item of the set-up
 *
 * Returns: (transfer none): the item
 */
const LrItem *
lr_preroll_item (const LrPreroll *preroll,
                 guint            index)
{
  return g_ptr_array_index (preroll->study->setup->items, index);
}

/* Figures of a line, that stand in bold: digits alone, which no language changes */
static char *
digits_of (const char *markup)
{
  g_autoptr (GString) digits = g_string_new (NULL);

  for (const char *bold = strstr (markup, "<b>"); bold != NULL; bold = strstr (bold + 1, "<b>"))
    for (const char *p = bold + strlen ("<b>"); *p != '\0' && *p != '<'; p++)
      if (g_ascii_isdigit (*p))
        g_string_append_c (digits, *p);

  return g_strdup (digits->str);
}

/* --- What is open --------------------------------------------------------------------------------------------- */

/* Of the remarks those that will go wrong; what to mind is for the screen */
static void
add_open (LrPreroll *preroll)
{
  if (preroll->remarks == NULL)
    return;
  for (guint i = 0; i < preroll->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (preroll->remarks->all, i);
      g_autofree char *key = g_strconcat ("remark:", remark->key, NULL);
      const LrPlaced *placed = remark->ids[0] != NULL ? lr_study_find_placed (preroll->study, remark->ids[0]) : NULL;
      char figure[G_ASCII_DTOSTR_BUF_SIZE];
      LrPrerollCheck *check;

      if (remark->grade != LR_GRADE_FIX)
        continue;
      lr_preroll_add (preroll, LR_PREROLL_OPEN, key, placed != NULL ? placed->item : NULL, g_strdup (remark->markup));
      check = g_ptr_array_index (preroll->checks, preroll->checks->len - 1);
      g_free (check->key); /* the remark's names its things */
      check->key = g_steal_pointer (&key);
      check->tick = lr_tick_key (check->key, g_ascii_formatd (figure, sizeof figure, "%.3g", remark->value));
    }
}

/* --- Safety --------------------------------------------------------------------------------------------------- */

static void
add_bags (LrPreroll *preroll)
{
  for (guint i = 0; i < preroll->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (preroll->study->placed, LrPlaced, i);
      LrStandReading stand;
      double bag_kg;
      g_autofree char *title = NULL, *mass = NULL;

      if (!lr_study_stand (preroll->study, placed, &stand))
        continue;
      bag_kg = fmax (stand.bag_kg, stand.wanted_bag_kg > 0.0 ? lr_stand_whole_bag_kg (stand.wanted_bag_kg) : 0.0);
      if (!(bag_kg > 0.0))
        continue;
      title = lr_preroll_title (placed->item);
      mass = lr_number_format (bag_kg, fabs (bag_kg - round (bag_kg)) < 0.05 ? 0 : 1);
      lr_preroll_add (preroll, LR_PREROLL_SAFETY, "bag", placed->item,
                      g_strdup_printf (_("%s: bag of <b>%s kg</b> hangs at the post, clear of the floor by a finger; the knobs are tight."), title,
                                       mass));
    }
}

static void
add_leads (LrPreroll *preroll)
{
  guint n = 0, n_wound = 0;

  for (guint i = 0; i < preroll->study->setup->items->len; i++)
    {
      const LrItem *item = lr_preroll_item (preroll, i);

      n += item->kind == LR_ITEM_LEAD;
      n_wound += item->kind == LR_ITEM_LEAD && item->lead.is_wound;
    }
  if (n > 0)
    lr_preroll_add (preroll, LR_PREROLL_SAFETY, "leads", NULL,
                    g_strdup_printf (ngettext ("<b>%u</b> lead lies flat, is taped where people walk, and pulls on nothing.",
                                               "<b>%u</b> leads lie flat, are taped where people walk, and pull on nothing.", n), n));
  if (n_wound > 0)
    lr_preroll_add (preroll, LR_PREROLL_SAFETY, "reels", NULL, g_strdup (_("Reels: unwind all that is loaded; feel whether they get warm.")));
}

/* The page's own cautions, which hold for every plan that has such a thing in it */
static void
add_safety (LrPreroll *preroll)
{
  g_autoptr (GPtrArray) cautions = lr_cautions_new (preroll->study, preroll->units), metric = lr_cautions_new (preroll->study, LR_UNITS_METRIC);

  add_bags (preroll);
  add_leads (preroll);
  for (guint i = 0; i < cautions->len; i++)
    {
      /* one that says something else, and not only in other units, is to be looked at anew */
      g_autofree char *key = g_strdup_printf ("caution-%08x", g_str_hash (g_ptr_array_index (metric, i)));

      lr_preroll_add (preroll, LR_PREROLL_SAFETY, key, NULL, g_strdup (g_ptr_array_index (cautions, i)));
    }
  lr_preroll_add (preroll, LR_PREROLL_SAFETY, "exits", NULL, g_strdup (_("People know the way out and where they meet; a sign is at the door.")));
}

/* --- Switched off --------------------------------------------------------------------------------------------- */

static void
add_off (LrPreroll *preroll)
{
  for (guint i = 0; i < preroll->study->setup->items->len; i++)
    {
      const LrItem *item = lr_preroll_item (preroll, i);
      g_autofree char *title = lr_preroll_title (item);

      if (item->kind == LR_ITEM_NOISE && item->noise.can_switch_off)
        /* Translators: a noise: "Fridge" */
        lr_preroll_add (preroll, LR_PREROLL_OFF, "off", item,
                        g_strdup_printf (_("%s is off; your keys lie with it, so that it is on again when you go."), title));
      else if (item->kind == LR_ITEM_HOUSE_LIGHT && !item->house_light.is_on)
        lr_preroll_add (preroll, LR_PREROLL_OFF, "off", item, g_strdup_printf (_("%s is off, as planned."), title));
      else if (item->kind == LR_ITEM_HOUSE_LIGHT)
        lr_preroll_add (preroll, LR_PREROLL_OFF, "on", item, g_strdup_printf (_("%s is on, as planned."), title));
      else if (item->kind == LR_ITEM_WINDOW && item->window.blind == LR_BLIND_DOWN)
        lr_preroll_add (preroll, LR_PREROLL_OFF, "blind", item, g_strdup_printf (_("%s: the blind is down."), title));
      else if (item->kind == LR_ITEM_WINDOW && item->window.blind == LR_BLIND_HALF)
        lr_preroll_add (preroll, LR_PREROLL_OFF, "blind", item, g_strdup_printf (_("%s: the blind is half down."), title));
    }
  lr_preroll_add (preroll, LR_PREROLL_OFF, "phones", NULL, g_strdup (_("Telephones are off, yours too; a sign is at the door.")));
}

/* --- The set and the people ----------------------------------------------------------------------------------- */

static void
add_person (LrPreroll    *preroll,
            const LrItem *item)
{
  g_autofree char *title = lr_preroll_title (item), *clothing = g_markup_escape_text (item->person.clothing, -1);

  if (item->person.has_glasses)
    lr_preroll_add (preroll, LR_PREROLL_SET, "glasses", item,
                    g_strdup_printf (_("%s’s glasses are clean and show no lamp, window or camera, with the head turned and nodding too."), title));
  if (clothing[0] != '\0')
    lr_preroll_add (preroll, LR_PREROLL_SET, "clothes", item,
                    g_strdup_printf (_("%s wears %s: collar straight, no fine stripes, no badge that is not meant."), title, clothing));
  else
    lr_preroll_add (preroll, LR_PREROLL_SET, "clothes", item, g_strdup_printf (_("%s: collar, hair, no fine stripes."), title));
}

static void
add_set (LrPreroll *preroll)
{
  for (guint i = 0; i < preroll->study->setup->items->len; i++)
    {
      const LrItem *item = lr_preroll_item (preroll, i);

      if (item->kind == LR_ITEM_PERSON && item->person.role != LR_ROLE_INTERVIEWER)
        add_person (preroll, item);
    }
  lr_preroll_add (preroll, LR_PREROLL_SET, "background", NULL,
                  g_strdup (_("Edges and background of every frame: nothing grows out of a head, nothing names what may not be named.")));
  lr_preroll_add (preroll, LR_PREROLL_SET, "water", NULL, g_strdup (_("Water is poured and out of frame; the chair does not creak or turn.")));
  lr_preroll_add (preroll, LR_PREROLL_SET, "release", NULL, g_strdup (_("The release is signed; how to stop is agreed.")));
}

/* --- Rolling -------------------------------------------------------------------------------------------------- */

static void
add_roll (LrPreroll *preroll)
{
  lr_preroll_add (preroll, LR_PREROLL_ROLL, "name", NULL,
                  g_strdup (_("All cameras and the recorder roll: name, spelling and title are said, then a clap.")));
  lr_preroll_add (preroll, LR_PREROLL_ROLL, "warm", NULL,
                  g_strdup (_("A warm-up question sets the level; look at focus and headroom while it is answered.")));
  lr_preroll_add (preroll, LR_PREROLL_ROLL, "tone", NULL,
                  g_strdup (_("Before anybody moves at the end: <b>30 s</b> of room tone, all silent, lamps and machines as they were.")));
}

static GPtrArray *
make_checks (const LrStudy       *study,
             const LrLightLevels *levels,
             const LrRemarks     *remarks,
             LrUnits              units)
{
  LrPreroll preroll = { study, levels, remarks, units, g_ptr_array_new_with_free_func (check_free) };

  add_open (&preroll);
  add_safety (&preroll);
  add_off (&preroll);
  add_set (&preroll);
  lr_preroll_add_cameras (&preroll);
  lr_preroll_add_light (&preroll);
  lr_preroll_add_sound (&preroll);
  add_roll (&preroll);
  return preroll.checks;
}

/* By the plan's own figures in metric units: neither other units nor levels, that are not known at once, open what was ticked */
static void
add_ticks (GPtrArray     *checks,
           const LrStudy *study)
{
  g_autoptr (GPtrArray) plain = make_checks (study, NULL, NULL, LR_UNITS_METRIC);
  g_autoptr (GHashTable) lines = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plain->len; i++)
    g_hash_table_insert (lines, ((const LrPrerollCheck *) plain->pdata[i])->key, ((const LrPrerollCheck *) plain->pdata[i])->markup);
  for (guint i = 0; i < checks->len; i++)
    {
      LrPrerollCheck *check = checks->pdata[i];
      const char *markup = g_hash_table_lookup (lines, check->key);
      g_autofree char *digits = digits_of (markup != NULL ? markup : "");

      if (check->tick == NULL)
        check->tick = lr_tick_key (check->key, digits);
    }
}

/**
 * lr_preroll_new:
 * @study: a study
 * @levels: (nullable): of light
 * @remarks: (nullable): on it
 * @units: how lengths are written
 *
 * Returns: (transfer full) (element-type LrPrerollCheck): by groups, in the order in which they are done
 */
GPtrArray *
lr_preroll_new (const LrStudy       *study,
                const LrLightLevels *levels,
                const LrRemarks     *remarks,
                LrUnits              units)
{
  GPtrArray *checks = make_checks (study, levels, remarks, units);

  add_ticks (checks, study);
  return checks;
}

/**
 * lr_preroll_group_title:
 * @group: of checks
 *
 * Returns: (transfer none): its title, translated
 */
const char *
lr_preroll_group_title (LrPrerollGroup group)
{
  static const char *const titles[] = {
    [LR_PREROLL_OPEN] = N_("Still to fix"),
    [LR_PREROLL_SAFETY] = N_("Stands, leads, ways out"),
    [LR_PREROLL_OFF] = N_("Switches and blinds"),
    [LR_PREROLL_SET] = N_("Set and people"),
    [LR_PREROLL_CAMERAS] = N_("Cameras"),
    [LR_PREROLL_LIGHT] = N_("Light"),
    [LR_PREROLL_SOUND] = N_("Sound"),
    [LR_PREROLL_ROLL] = N_("Rolling"),
  };

  return _(titles[group]);
}
