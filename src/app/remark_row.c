/* remark_row.c - a remark as the list of remarks holds it: the same object for the same key, whatever is edited
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "remark_row.h"

#include <glib/gi18n-lib.h>

struct _LrRemarkRow
{
  GObject parent_instance;

  char   *key, *markup, *text, *remedy;
  LrGrade grade;
  LrCheck check;
  gboolean is_waiting; /* for its remedy */
};

G_DEFINE_FINAL_TYPE (LrRemarkRow, lr_remark_row, G_TYPE_OBJECT)

static guint changed_signal;

static void
lr_remark_row_finalize (GObject *object)
{
  LrRemarkRow *self = LR_REMARK_ROW (object);

  g_free (self->key);
  g_free (self->markup);
  g_free (self->text);
  g_free (self->remedy);
  G_OBJECT_CLASS (lr_remark_row_parent_class)->finalize (object);
}

static void
lr_remark_row_class_init (LrRemarkRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lr_remark_row_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lr_remark_row_init (LrRemarkRow *self)
{
}

/**
 * lr_remark_row_new:
 * @remark: copied
 *
 * Returns: (transfer full): a row for it
 */
LrRemarkRow *
lr_remark_row_new (const LrRemark *remark)
{
  LrRemarkRow *self = g_object_new (LR_TYPE_REMARK_ROW, NULL);

  self->key = g_strdup (remark->key);
  lr_remark_row_set (self, remark, FALSE);
  return self;
}

static gboolean
take (char       **field,
      const char  *value)
{
  if (g_strcmp0 (*field, value) == 0)
    return FALSE;

  g_free (*field);
  *field = g_strdup (value);
  return TRUE;
}

/**
 * lr_remark_row_set:
 * @remark: of the same key
 * @is_moving: the plan moves, and the remark is without its remedy for now
 *
 * Takes over its words, and says "changed" if they are others. While the plan moves a remedy stays as it was, but waits.
 */
void
lr_remark_row_set (LrRemarkRow    *self,
                   const LrRemark *remark,
                   gboolean        is_moving)
{
  gboolean has_changed = self->grade != remark->grade || self->is_waiting != is_moving;

  self->grade = remark->grade;
  self->check = remark->check;
  self->is_waiting = is_moving;
  has_changed |= take (&self->markup, remark->markup);
  has_changed |= take (&self->text, remark->text);
  if (!is_moving || remark->grade == LR_GRADE_FINE)
    has_changed |= take (&self->remedy, remark->remedy != NULL ? remark->remedy->sentence : NULL);
  if (has_changed)
    g_signal_emit (self, changed_signal, 0);
}

/**
 * lr_remark_row_get_key:
 *
 * Returns: (transfer none): the remark's key, the same as long as the row lives
 */
const char *
lr_remark_row_get_key (LrRemarkRow *self)
{
  return self->key;
}

/**
 * lr_remark_row_get_markup:
 *
 * Returns: (transfer none): its line, figures bold
 */
const char *
lr_remark_row_get_markup (LrRemarkRow *self)
{
  return self->markup;
}

/**
 * lr_remark_row_get_text:
 *
 * Returns: (transfer none): its line without markup
 */
const char *
lr_remark_row_get_text (LrRemarkRow *self)
{
  return self->text;
}

/**
 * lr_remark_row_get_remedy:
 *
 * Returns: (transfer none) (nullable): what Mend would do, in a sentence
 */
const char *
lr_remark_row_get_remedy (LrRemarkRow *self)
{
  return self->remedy;
}

/**
 * lr_remark_row_is_waiting:
 *
 * Returns: whether its remedy is that of a plan before, which cannot be applied
 */
gboolean
lr_remark_row_is_waiting (LrRemarkRow *self)
{
  return self->is_waiting;
}

/**
 * lr_remark_row_get_grade:
 *
 * Returns: Fix, Mind or Fine
 */
LrGrade
lr_remark_row_get_grade (LrRemarkRow *self)
{
  return self->grade;
}

/**
 * lr_remark_row_get_source:
 *
 * Returns: (transfer none): where its limit comes from, translated; "" if it has none
 */
const char *
lr_remark_row_get_source (LrRemarkRow *self)
{
  const char *source = lr_check_info (self->check)->source;

  return source != NULL && source[0] != '\0' ? _(source) : "";
}
