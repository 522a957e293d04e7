/* run_sheet.c - what is done on the day, how long it takes and when
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Minutes are those of one person who knows the gear: common practice, no source. For a usual set of two cameras, three
 * lamps, a boom and a lavalier they come to about what people allow: 20 to come in, 15 to set out, 25 for cameras, 30 for
 * light, 15 for sound, 10 to try, 10 for whoever sits down, and 45 to strike and leave.
 */

#include "config.h"

#include "run_sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define RESERVE_SHARE 0.2    /* of what is done before rolling: for what nobody thought of */
#define INTERVIEW_MIN 45     /* while no times are told */
#define INTERVIEW_LEAST_MIN 10
#define LATER_MIN 1          /* of a step whose time follows from the others: until that is known */

/* What the estimates count */
typedef struct
{
  int cameras, lights, booms, lavaliers, camera_mics, panels, leads, windows, switches, people, seats, standing;
} Counts;

static gboolean
is_dimmed (const LrItem *window)
{
  return window->window.blind == LR_BLIND_HALF || window->window.blind == LR_BLIND_DOWN;
}

static void
count_microphone (Counts       *counts,
                  const LrItem *item)
{
  if (lr_microphone_stands (&item->microphone))
    counts->booms++;
  else if (item->microphone.form == LR_MIC_LAVALIER)
    counts->lavaliers++;
  else
    counts->camera_mics++;
}

static void
count_item (Counts       *counts,
            const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
      counts->cameras++;
      break;
    case LR_ITEM_LIGHT:
      counts->lights++;
      break;
    case LR_ITEM_MICROPHONE:
      count_microphone (counts, item);
      break;
    case LR_ITEM_PANEL:
      counts->panels++;
      break;
    case LR_ITEM_LEAD:
      counts->leads++;
      break;
    case LR_ITEM_WINDOW:
      counts->windows += is_dimmed (item);
      break;
    case LR_ITEM_NOISE:
      counts->switches += item->noise.can_switch_off;
      break;
    case LR_ITEM_HOUSE_LIGHT:
      counts->switches += item->house_light.can_switch_off && !item->house_light.is_on;
      break;
    case LR_ITEM_PERSON:
      counts->people += item->person.role != LR_ROLE_INTERVIEWER;
      counts->seats++;
      break;
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      break;
    }
}

static Counts
count (const LrStudy *study)
{
  Counts counts = { 0 };

  for (guint i = 0; i < study->setup->items->len; i++)
    count_item (&counts, g_ptr_array_index (study->setup->items, i));
  counts.standing = counts.cameras + counts.lights + counts.booms + counts.panels;
  return counts;
}

/* --- Steps ---------------------------------------------------------------------------------------------------- */

static void
step_free (gpointer data)
{
  LrRunStep *step = data;

  g_free (step->key);
  g_free (step->title);
  g_free (step->usual_title);
  g_free (step->reason);
  g_free (step);
}

/* @reason: (transfer full) (nullable) */
static void
add (LrRunSheet *sheet,
     LrRunPart   part,
     const char *key,
     const char *title,
     int         minutes,
     char       *reason)
{
  LrRunStep *step;

  if (minutes <= 0)
    {
      g_free (reason);
      return;
    }
  step = g_new0 (LrRunStep, 1);
  step->key = g_strdup (key);
  step->title = g_strdup (title);
  step->usual_title = g_strdup (title);
  step->reason = reason != NULL ? reason : g_strdup ("");
  step->part = part;
  step->estimated_min = minutes;
  step->minutes = minutes;
  step->from = step->to = -1;
  g_ptr_array_add (sheet->steps, step);
}

/* @words: (transfer full) */
static void
append_part (GString *text,
             int      n,
             char    *words)
{
  if (n > 0)
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", words);
  g_free (words);
}

/* "2 cameras, 3 lights": what there is none of is not told */
static char *
list_counts (const Counts *c)
{
  GString *text = g_string_new (NULL);
  int microphones = c->booms + c->lavaliers + c->camera_mics;

  append_part (text, c->cameras, g_strdup_printf (ngettext ("%d camera", "%d cameras", (gulong) c->cameras), c->cameras));
  append_part (text, c->lights, g_strdup_printf (ngettext ("%d light", "%d lights", (gulong) c->lights), c->lights));
  append_part (text, microphones, g_strdup_printf (ngettext ("%d microphone", "%d microphones", (gulong) microphones), microphones));
  append_part (text, c->panels, g_strdup_printf (ngettext ("%d panel", "%d panels", (gulong) c->panels), c->panels));
  return g_string_free (text, FALSE);
}

static void
add_cameras (LrRunSheet    *sheet,
             const LrStudy *study)
{
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrItem *item = g_array_index (study->cameras, LrCameraReading, i).item;
      g_autofree char *key = g_strconcat ("camera-", item->id, NULL), *name = lr_item_title (item);
      /* Translators: "Camera A: stand and frame" */
      g_autofree char *title = g_strdup_printf (_("%s: stand and frame"), name);

      /* the first by itself; of the others the cut with it as well */
      add (sheet, LR_RUN_RIG, key, title, i == 0 ? 10 : 15, i == 0 ? NULL : g_strdup (_("with the cut")));
    }
}

static void
add_rig (LrRunSheet    *sheet,
         const LrStudy *study,
         const Counts  *c)
{
  add (sheet, LR_RUN_RIG, "load-in", _("Come in, unload"), 10 + 2 * c->cameras + c->lights + c->booms + c->panels, list_counts (c));
  add (sheet, LR_RUN_RIG, "set-out", _("Clear the floor, set out by tape"), 5 + c->seats + c->standing,
       g_strdup_printf (ngettext ("%d place", "%d places", (gulong) (c->seats + c->standing)), c->seats + c->standing));
  add (sheet, LR_RUN_RIG, "windows", _("Windows: blinds, blackening"), 3 * c->windows,
       g_strdup_printf (ngettext ("%d window", "%d windows", (gulong) c->windows), c->windows));
  add (sheet, LR_RUN_RIG, "switch-off", _("Switch off: house lights, noises"), c->switches,
       g_strdup_printf (ngettext ("%d thing", "%d things", (gulong) c->switches), c->switches));
  add_cameras (sheet, study);
  add (sheet, LR_RUN_RIG, "lights", _("Lights: stands, bags, lamps"), 6 * c->lights + 3 * c->panels, NULL);
  add (sheet, LR_RUN_RIG, "leads", _("Leads: lay and tape down"), 2 * c->leads,
       g_strdup_printf (ngettext ("%d lead", "%d leads", (gulong) c->leads), c->leads));
  add (sheet, LR_RUN_RIG, "levels", _("Levels of light, exposure, white balance"), c->lights > 0 || c->cameras > 0 ? 3 + 2 * c->cameras : 0, NULL);
  add (sheet, LR_RUN_RIG, "sound", _("Sound: stands, levels, listen"), 8 * c->booms + 5 * c->lavaliers + 2 * c->camera_mics, NULL);
  add (sheet, LR_RUN_RIG, "try", _("Record a piece and play it back"), 10, NULL);
  add (sheet, LR_RUN_RIG, "seat", _("People sit down, microphones on, last look"), 10 * MAX (c->people, 1),
       g_strdup_printf (ngettext ("%d person", "%d people", (gulong) MAX (c->people, 1)), MAX (c->people, 1)));
  /* Translators: time that is kept for what nobody thought of */
  add (sheet, LR_RUN_RIG, "reserve", _("Reserve"), LATER_MIN, g_strdup_printf (_("%.0f %% of the above"), 100.0 * RESERVE_SHARE));
}

static void
add_roll (LrRunSheet *sheet)
{
  add (sheet, LR_RUN_ROLL, "interview", _("Interview"), LATER_MIN,
       sheet->span[LR_RUN_ROLL].planned_min < 0 ? NULL : g_strdup (_("what is left until wrap")));
  add (sheet, LR_RUN_ROLL, "inserts", _("Inserts: hands, listening, the place"), 15, NULL);
  add (sheet, LR_RUN_ROLL, "tone", _("Room tone, all silent; stills of the set"), 3, NULL);
}

static void
add_strike (LrRunSheet   *sheet,
            const Counts *c)
{
  add (sheet, LR_RUN_STRIKE, "media", _("Copy the media twice, play pieces of both"), 10, NULL);
  add (sheet, LR_RUN_STRIKE, "strike", _("Strike: mains off, lamps cool, leads, sound, lights, cameras"),
       3 * c->lights + 3 * c->cameras + 2 * (c->booms + c->lavaliers + c->camera_mics) + c->panels + c->leads, list_counts (c));
  add (sheet, LR_RUN_STRIKE, "restore", _("Leave the room as it was found"), 10, NULL);
  add (sheet, LR_RUN_STRIKE, "load-out", _("Load, go out"), 5 + c->cameras + c->lights + c->booms + c->panels, NULL);
}

/* --- What the user made of them ------------------------------------------------------------------------------- */

static int
find_step (const LrRunSheet *sheet,
           const char       *key)
{
  for (guint i = 0; i < sheet->steps->len; i++)
    if (strcmp (((const LrRunStep *) g_ptr_array_index (sheet->steps, i))->key, key) == 0)
      return (int) i;

  return -1;
}

static void
change (LrRunStep        *step,
        const LrRunEntry *entry)
{
  if (entry->title[0] != '\0')
    {
      g_free (step->title);
      step->title = g_strdup (entry->title);
    }
  step->is_left_out = entry->is_left_out;
  if (entry->minutes > 0 || step->is_own)
    {
      step->minutes = entry->minutes;
      step->has_own_minutes = TRUE;
    }
}

/* Behind the step that it follows and those of the user's that are there already; one that follows nothing known comes first */
static void
insert_own (LrRunSheet       *sheet,
            const LrRunEntry *entry)
{
  LrRunStep *step = g_new0 (LrRunStep, 1);
  int after = entry->after[0] != '\0' ? find_step (sheet, entry->after) : -1;
  guint at = (guint) (after + 1);

  while (at < sheet->steps->len && ((const LrRunStep *) g_ptr_array_index (sheet->steps, at))->is_own)
    at++;
  step->key = g_strdup (entry->key);
  step->title = g_strdup (entry->title);
  step->usual_title = g_strdup ("");
  step->reason = g_strdup ("");
  step->part = after >= 0 ? ((const LrRunStep *) g_ptr_array_index (sheet->steps, after))->part : LR_RUN_RIG;
  step->is_own = TRUE;
  step->from = step->to = -1;
  change (step, entry);
  g_ptr_array_insert (sheet->steps, (int) at, step);
}

static void
take_entries (LrRunSheet  *sheet,
              const LrJob *job)
{
  for (gsize i = 0; i < job->n_run; i++)
    {
      const LrRunEntry *entry = &job->run[i];
      int index = find_step (sheet, entry->key);

      if (index >= 0)
        change (g_ptr_array_index (sheet->steps, index), entry);
      else if (g_str_has_prefix (entry->key, LR_RUN_OWN))
        insert_own (sheet, entry);
    }
}

static int
minutes_of (const LrRunStep *step)
{
  return step->is_left_out ? 0 : step->minutes;
}

static void
estimate (LrRunStep *step,
          int        minutes)
{
  step->estimated_min = minutes;
  if (!step->has_own_minutes)
    step->minutes = minutes;
}

/* Of all that is done before it, however long it takes */
static void
estimate_reserve (LrRunSheet *sheet)
{
  int index = find_step (sheet, "reserve"), sum = 0;

  for (int i = 0; i < index; i++)
    sum += minutes_of (g_ptr_array_index (sheet->steps, i));
  estimate (g_ptr_array_index (sheet->steps, index), (int) lround (RESERVE_SHARE * sum));
}

/* What the job leaves for it between rolling and wrap */
static void
estimate_interview (LrRunSheet *sheet)
{
  LrRunStep *interview = g_ptr_array_index (sheet->steps, find_step (sheet, "interview"));
  int planned = sheet->span[LR_RUN_ROLL].planned_min, others = 0;

  for (guint i = 0; i < sheet->steps->len; i++)
    {
      const LrRunStep *step = g_ptr_array_index (sheet->steps, i);

      others += step != interview && step->part == LR_RUN_ROLL ? minutes_of (step) : 0;
    }
  estimate (interview, planned < 0 ? INTERVIEW_MIN : MAX (planned - others, INTERVIEW_LEAST_MIN));
}

/* --- Times ---------------------------------------------------------------------------------------------------- */

static void
read_times (LrRunSheet  *sheet,
            const LrJob *job)
{
  int times[LR_N_RUN_PARTS + 1];

  lr_job_minutes (job, &times[0], &times[1], &times[2], &times[3]);
  for (int part = 0; part < LR_N_RUN_PARTS; part++)
    {
      LrRunSpan *span = &sheet->span[part];

      span->from = times[part];
      span->to = times[part + 1];
      span->planned_min = span->from >= 0 && span->to >= 0 ? span->to - span->from : -1;
    }
}

/* Each part from its own time; without one from the end of the part before, or back from the time that it must be done at */
static void
place_steps (LrRunSheet *sheet)
{
  int at = -1;

  for (int part = 0; part < LR_N_RUN_PARTS; part++)
    {
      LrRunSpan *span = &sheet->span[part];

      span->needed_min = 0;
      for (guint i = 0; i < sheet->steps->len; i++)
        if (((const LrRunStep *) g_ptr_array_index (sheet->steps, i))->part == (LrRunPart) part)
          span->needed_min += minutes_of (g_ptr_array_index (sheet->steps, i));

      if (span->from >= 0)
        at = span->from;
      else if (at < 0 && span->to >= span->needed_min)
        at = span->to - span->needed_min;
      for (guint i = 0; i < sheet->steps->len; i++)
        {
          LrRunStep *step = g_ptr_array_index (sheet->steps, i);

          if (step->part != (LrRunPart) part || at < 0 || step->is_left_out)
            continue;
          step->from = at;
          at += step->minutes;
          step->to = at;
        }
    }
}

/**
 * lr_run_sheet_new:
 * @study: a study
 *
 * Returns: (transfer full): the steps of the day
 */
LrRunSheet *
lr_run_sheet_new (const LrStudy *study)
{
  LrRunSheet *sheet = g_new0 (LrRunSheet, 1);
  Counts counts = count (study);

  sheet->steps = g_ptr_array_new_with_free_func (step_free);
  read_times (sheet, study->plan->job);
  add_rig (sheet, study, &counts);
  add_roll (sheet);
  add_strike (sheet, &counts);
  take_entries (sheet, study->plan->job);
  estimate_reserve (sheet);
  estimate_interview (sheet);
  place_steps (sheet);
  return sheet;
}

/**
 * lr_run_sheet_free:
 * @sheet: (transfer full): a run sheet
 */
void
lr_run_sheet_free (LrRunSheet *sheet)
{
  g_ptr_array_unref (sheet->steps);
  g_free (sheet);
}

/**
 * lr_run_part_title:
 * @part: of the day
 *
 * Returns: (transfer none): its title, translated
 */
const char *
lr_run_part_title (LrRunPart part)
{
  static const char *const titles[] = {
    [LR_RUN_RIG] = N_("Before rolling"), [LR_RUN_ROLL] = N_("Rolling"), [LR_RUN_STRIKE] = N_("After wrap"),
  };

  return _(titles[part]);
}
