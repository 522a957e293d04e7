/* strip_words.c - what is said about a cut: its figures, and the remark that judges it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "strip.h"

#include <glib/gi18n-lib.h>

#define LENS_ACROSS 0.035 /* a look within two degrees of the lens goes to neither side */
#define NBSP "\302\240"

/**
 * lr_camera_look:
 * @camera: a camera
 *
 * Returns: where its subject looks in the picture
 */
LrLook
lr_camera_look (const LrCameraReading *camera)
{
  if (!camera->is_looking || !isfinite (camera->look_across))
    return LR_LOOK_UNKNOWN;
  if (fabs (camera->look_across) < LENS_ACROSS)
    return LR_LOOK_LENS;

  return camera->look_across > 0.0 ? LR_LOOK_RIGHT : LR_LOOK_LEFT;
}

static void
append_part (GString *line,
             char    *part)
{
  if (line->len > 0)
    g_string_append (line, "   ");
  g_string_append (line, part);
  g_free (part);
}

static const char *
side_name (const LrStrip *strip,
           int            side)
{
  const LrItem *item = strip->camera[side]->item;

  return item->tag[0] != '\0' ? item->tag : item->id;
}

static void
append_sizes (GString       *line,
              const LrStrip *strip,
              gboolean       has_titles)
{
  LrShot a = strip->camera[0]->framing.shot, b = strip->camera[1]->framing.shot;
  guint steps;

  if (a == LR_N_SHOTS || b == LR_N_SHOTS)
    return;

  steps = (guint) lr_shot_steps (a, b);

  if (has_titles)
    append_part (line, steps == 0 ? g_strdup (_("same size"))
                                  : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u size apart", "%u sizes apart", steps), steps));
  else if (steps == 0)
    /* Translators: the size of two shots */
    append_part (line, g_strdup_printf (_("both %s"), lr_shot_title (a)));
  else
    /* Translators: the sizes of two shots, and how many steps lie between them */
    append_part (line, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s → %s, %u size apart", "%s → %s, %u sizes apart", steps),
                                        lr_shot_title (a), lr_shot_title (b), steps));
}

static char *
share_text (double share)
{
  g_autofree char *number = lr_number_format (100.0 * share, 0);

  return g_strconcat (number, NBSP "%", NULL);
}

static gboolean
has_eyes (const LrCameraReading *camera)
{
  return camera->eyes_down >= 0.0 && camera->eyes_down <= 1.0 && camera->eyes_across >= 0.0 && camera->eyes_across <= 1.0;
}

static void
append_eyes (GString       *line,
             const LrStrip *strip)
{
  g_autofree char *a = share_text (strip->camera[0]->eyes_down), *b = share_text (strip->camera[1]->eyes_down);
  gboolean has_a = has_eyes (strip->camera[0]), has_b = has_eyes (strip->camera[1]);

  if (!has_a && !has_b)
    append_part (line, g_strdup (_("eyes outside both frames")));
  else if (!has_a || !has_b)
    /* Translators: a camera's tag */
    append_part (line, g_strdup_printf (_("eyes outside the frame of %s"), side_name (strip, has_a ? 1 : 0)));
  else if (g_str_equal (a, b))
    append_part (line, g_strdup_printf (_("eyes %s down in both"), a));
  else
    append_part (line, g_strdup_printf (_("eyes %s and %s down"), a, b));
}

static void
append_looks (GString       *line,
              const LrStrip *strip)
{
  LrLook a = lr_camera_look (strip->camera[0]), b = lr_camera_look (strip->camera[1]);
  const char *name_a = side_name (strip, 0), *name_b = side_name (strip, 1);

  if (a == LR_LOOK_UNKNOWN || b == LR_LOOK_UNKNOWN)
    return;

  if (a == b)
    append_part (line, g_strdup (a == LR_LOOK_LEFT ? _("both look left") : a == LR_LOOK_RIGHT ? _("both look right")
                                                                                           : _("both look into the lens")));
  else if (a == LR_LOOK_LENS || b == LR_LOOK_LENS)
    /* Translators: a camera's tag */
    append_part (line, g_strdup_printf (_("a look into the lens in %s alone"), a == LR_LOOK_LENS ? name_a : name_b));
  else if (a == LR_LOOK_LEFT)
    /* Translators: tags of two cameras */
    append_part (line, g_strdup_printf (_("%s looks left, %s right"), name_a, name_b));
  else
    append_part (line, g_strdup_printf (_("%s looks right, %s left"), name_a, name_b));
}

static char *
make_figures (const LrStrip *strip,
              gboolean       has_titles)
{
  GString *line = g_string_new (NULL);

  if (!lr_strip_is_compared (strip))
    {
      append_part (line, g_strdup (_("nothing in both to match")));
      return g_string_free (line, FALSE);
    }

  append_sizes (line, strip, has_titles);
  if (strip->pair != NULL && isfinite (strip->pair->angle_rad))
    {
      g_autofree char *angle = lr_angle_format (strip->pair->angle_rad);

      append_part (line, g_strdup_printf (_("%s round"), angle));
    }
  append_eyes (line, strip);
  append_looks (line, strip);
  return g_string_free (line, FALSE);
}

/**
 * lr_strip_figures:
 * @strip: two cameras
 *
 * Returns: (transfer full): "medium → medium close-up, 1 size apart   22° round   eyes 31 % and 34 % down   both look left";
 *   what is not known is left out
 */
char *
lr_strip_figures (const LrStrip *strip)
{
  return make_figures (strip, FALSE);
}

/**
 * lr_strip_short_figures:
 * @strip: two cameras, whose titles tell the sizes of their shots
 *
 * Returns: (transfer full): "1 size apart   22° round   eyes 31 % and 34 % down   both look left"
 */
char *
lr_strip_short_figures (const LrStrip *strip)
{
  return make_figures (strip, TRUE);
}

static gboolean
names (const LrRemark *remark,
       const LrStrip  *strip,
       int             side)
{
  return g_strv_contains ((const char *const *) remark->ids, strip->camera[side]->item->id);
}

/* Cameras on the two ends of a line may stand where they like along it, on one side of it; those on one end too */
static gboolean
is_across_line (const LrStrip *strip)
{
  return (int) strip->camera[0]->side * (int) strip->camera[1]->side < 0;
}

/**
 * lr_strip_is_about:
 * @strip: two cameras
 * @remark: any
 *
 * Returns: whether it concerns the cut between them: one that names both, or that one of them stands over the line
 *   of action while the other does not
 */
gboolean
lr_strip_is_about (const LrStrip  *strip,
                   const LrRemark *remark)
{
  if (!lr_strip_is_compared (strip))
    return FALSE;

  switch ((int) remark->check)
    {
    case LR_CHECK_CUT:
    case LR_CHECK_CUT_EYELINE:
    case LR_CHECK_REVERSE:
      return names (remark, strip, 0) && names (remark, strip, 1);
    case LR_CHECK_LINE_SIDE:
      return remark->grade != LR_GRADE_FINE && is_across_line (strip) && (names (remark, strip, 0) || names (remark, strip, 1));
    default:
      return FALSE;
    }
}

/**
 * lr_strip_remark:
 * @strip: two cameras
 *
 * Returns: (transfer none) (nullable): the worst of the remarks that concern the cut
 */
const LrRemark *
lr_strip_remark (const LrStrip *strip)
{
  if (strip->remarks == NULL)
    return NULL;

  /* the worst stand first */
  for (guint i = 0; i < strip->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (strip->remarks->all, i);

      if (lr_strip_is_about (strip, remark))
        return remark;
    }
  return NULL;
}

/**
 * lr_strip_sentence:
 * @strip: two cameras
 *
 * Returns: (transfer full) (nullable): markup of the worst remark that concerns the cut, and how many more do that are not fine
 */
char *
lr_strip_sentence (const LrStrip *strip)
{
  const LrRemark *worst = lr_strip_remark (strip);
  guint n_more = 0;

  if (worst == NULL)
    return NULL;

  for (guint i = 0; i < strip->remarks->all->len; i++)
    {
      const LrRemark *remark = g_ptr_array_index (strip->remarks->all, i);

      n_more += remark != worst && remark->grade != LR_GRADE_FINE && lr_strip_is_about (strip, remark);
    }
  if (n_more == 0)
    return g_strdup (worst->markup);

  /* Translators: after a sentence on a cut; how many other remarks concern it */
  return g_strdup_printf (ngettext ("%s And <b>%u</b> more.", "%s And <b>%u</b> more.", n_more), worst->markup, n_more);
}
