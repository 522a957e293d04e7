/* cut_strip.c - two cameras side by side, as they will be cut: titles, pictures, figures, and what is to be said of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "cut_strip.h"

#include "badge.h"
#include "cut_pictures.h"
#include "line.h"

#include <glib/gi18n-lib.h>

#define GAP_PX 12 /* between the titles, as between the pictures */

struct _LrCutStrip
{
  GtkWidget   parent_instance;

  LrDocument *document;
  char       *chosen[LR_STRIP_SIDES], *shown[LR_STRIP_SIDES]; /* ids; NULL: none */

  GtkWidget  *box, *tags[LR_STRIP_SIDES], *titles[LR_STRIP_SIDES], *pictures, *grade, *figures, *sentence;
};

G_DEFINE_FINAL_TYPE (LrCutStrip, lr_cut_strip, GTK_TYPE_WIDGET)

/* --- Which two ------------------------------------------------------------------------------------------------ */

static gboolean
get_chosen (LrCutStrip *self,
            LrStrip    *strip)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const LrRemarks *remarks = lr_document_get_remarks (self->document);

  if (self->chosen[0] != NULL && lr_strip_init (strip, study, remarks, self->chosen[0], self->chosen[1]))
    return TRUE;
  return lr_strip_init_main (strip, study, remarks);
}

/* The first two that the remark is about */
static gboolean
find_strip (LrCutStrip     *self,
            const LrRemark *remark,
            LrStrip        *strip)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const LrCameraReading *cameras = (const LrCameraReading *) (gpointer) study->cameras->data;

  for (guint i = 0; i < study->cameras->len; i++)
    for (guint j = i + 1; j < study->cameras->len; j++)
      {
        LrStrip other;

        if (lr_strip_init (&other, study, lr_document_get_remarks (self->document), cameras[i].item->id, cameras[j].item->id)
            && lr_strip_is_about (&other, remark))
          {
            *strip = other;
            return TRUE;
          }
      }
  return FALSE;
}

/* Those that the remark in hand is about: the chosen ones if it can be */
static gboolean
get_strip (LrCutStrip *self,
           LrStrip    *strip)
{
  const LrRemark *remark = lr_document_get_remark (self->document);

  if (!get_chosen (self, strip))
    return FALSE;
  if (remark != NULL && !lr_strip_is_about (strip, remark))
    find_strip (self, remark, strip);
  return TRUE;
}

static void
remember (char          **ids,
          const LrStrip  *strip)
{
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      char *id = strip != NULL ? g_strdup (strip->camera[i]->item->id) : NULL;

      g_free (ids[i]);
      ids[i] = id;
    }
}

/* --- What is said --------------------------------------------------------------------------------------------- */

/* The size of the shot; without anybody in it, the camera's name */
static void
show_title (LrCutStrip            *self,
            int                    side,
            const LrCameraReading *camera)
{
  g_autofree char *title = camera->has_subject ? lr_shot_heading (camera->framing.shot) : lr_item_title (camera->item);

  lr_badge_show_tag (LR_BADGE (self->tags[side]), LR_ITEM_CAMERA, camera->item->tag);
  lr_line_set_text (LR_LINE (self->titles[side]), title);
}

/* "1 size … Mind: … And 2 more." */
static char *
speak (const char *figures,
       const char *grade,
       const char *markup)
{
  g_autofree char *plain = NULL;

  pango_parse_markup (markup, -1, 0, NULL, &plain, NULL, NULL);
  return g_strdup_printf ("%s. %s: %s", figures, grade, plain != NULL ? plain : "");
}

static void
show_words (LrCutStrip    *self,
            const LrStrip *strip)
{
  const LrRemark *remark = lr_strip_remark (strip);
  g_autofree char *figures = lr_strip_short_figures (strip), *full = lr_strip_figures (strip), *spoken = NULL;
  g_autofree char *sentence = lr_strip_sentence (strip);
  g_autofree char *name_a = lr_item_title (strip->camera[0]->item), *name_b = lr_item_title (strip->camera[1]->item);
  /* Translators: names of two cameras */
  g_autofree char *name = g_strdup_printf (_("Cut between %s and %s"), name_a, name_b);

  for (int i = 0; i < LR_STRIP_SIDES; i++)
    show_title (self, i, strip->camera[i]);
  lr_line_set_text (LR_LINE (self->figures), figures);
  lr_line_set_markup (LR_LINE (self->sentence), sentence != NULL ? sentence : "");
  if (remark != NULL)
    lr_badge_show_grade (LR_BADGE (self->grade), remark->grade);
  else
    lr_badge_show_nothing (LR_BADGE (self->grade));

  spoken = remark != NULL ? speak (full, lr_grade_title (remark->grade), sentence) : g_strdup (full);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, spoken, -1);
}

/* --- The widget ----------------------------------------------------------------------------------------------- */

static GtkWidget *
make_titles (LrCutStrip *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP_PX);

  gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
  gtk_widget_add_css_class (row, "finder-head");
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    {
      GtkWidget *half = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 5);

      self->tags[i] = lr_badge_new ();
      self->titles[i] = lr_line_new ();
      g_object_set (self->titles[i], "width-chars", 8, NULL);
      gtk_widget_add_css_class (self->titles[i], "panel-title");
      gtk_widget_set_hexpand (self->titles[i], TRUE);
      gtk_box_append (GTK_BOX (half), self->tags[i]);
      gtk_box_append (GTK_BOX (half), self->titles[i]);
      gtk_box_append (GTK_BOX (row), half);
    }
  return row;
}

static GtkWidget *
make_words (LrCutStrip *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->grade = lr_badge_new ();
  self->figures = lr_line_new ();
  self->sentence = lr_line_new ();
  g_object_set (self->figures, "width-chars", 20, "full-chars", 58, NULL);
  g_object_set (self->sentence, "width-chars", 20, "lines", 3, "full-chars", 50, NULL);
  gtk_widget_add_css_class (self->figures, "note");
  gtk_widget_set_valign (self->grade, GTK_ALIGN_START);
  gtk_widget_set_hexpand (lines, TRUE);
  gtk_box_append (GTK_BOX (lines), self->figures);
  gtk_box_append (GTK_BOX (lines), self->sentence);
  gtk_box_append (GTK_BOX (row), self->grade);
  gtk_box_append (GTK_BOX (row), lines);
  return row;
}

static void
lr_cut_strip_dispose (GObject *object)
{
  LrCutStrip *self = LR_CUT_STRIP (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  remember (self->chosen, NULL);
  remember (self->shown, NULL);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_cut_strip_parent_class)->dispose (object);
}

static void
lr_cut_strip_class_init (LrCutStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_cut_strip_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lr_cut_strip_init (LrCutStrip *self)
{
}

/**
 * lr_cut_strip_new:
 * @document: whose cameras are shown; lr_cut_strip_update() tells of its changes
 *
 * Returns: (transfer full): a strip of the two that are cut most
 */
GtkWidget *
lr_cut_strip_new (LrDocument *document)
{
  LrCutStrip *self = g_object_new (LR_TYPE_CUT_STRIP, NULL);

  self->document = g_object_ref (document);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  self->pictures = lr_cut_pictures_new (document);
  gtk_box_append (GTK_BOX (self->box), make_titles (self));
  gtk_box_append (GTK_BOX (self->box), self->pictures);
  gtk_box_append (GTK_BOX (self->box), make_words (self));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}

/**
 * lr_cut_strip_set_max_height:
 * @max_height_px: its pictures are not higher than that [px]
 */
void
lr_cut_strip_set_max_height (LrCutStrip *self,
                             int         max_height_px)
{
  lr_cut_pictures_set_max_height (LR_CUT_PICTURES (self->pictures), max_height_px);
}

/**
 * lr_cut_strip_choose:
 * @id_a: of the camera before the splice
 * @id_b: of the one after it
 */
void
lr_cut_strip_choose (LrCutStrip *self,
                     const char *id_a,
                     const char *id_b)
{
  LrStrip strip;

  if (!lr_strip_init (&strip, lr_document_get_study (self->document), NULL, id_a, id_b))
    return;

  remember (self->chosen, &strip);
  lr_cut_strip_update (self);
  for (int i = 0; i < LR_STRIP_SIDES; i++)
    lr_cut_strip_update_picture (self, i);
}

/**
 * lr_cut_strip_get_shown:
 * @id_a: (out) (transfer none): of the camera before the splice
 * @id_b: (out) (transfer none): of the one after it
 *
 * Returns: %FALSE, with both untouched, if there are no two cameras
 */
gboolean
lr_cut_strip_get_shown (LrCutStrip  *self,
                        const char **id_a,
                        const char **id_b)
{
  if (self->shown[0] == NULL)
    return FALSE;

  *id_a = self->shown[0];
  *id_b = self->shown[1];
  return TRUE;
}

/**
 * lr_cut_strip_update:
 *
 * Titles, figures and lines tell of the plan and the remark that the document has now; other cameras' pictures are due.
 */
void
lr_cut_strip_update (LrCutStrip *self)
{
  LrStrip strip;
  gboolean has_strip = get_strip (self, &strip);
  gboolean is_other = has_strip && (g_strcmp0 (self->shown[0], strip.camera[0]->item->id) != 0
                                    || g_strcmp0 (self->shown[1], strip.camera[1]->item->id) != 0);

  remember (self->shown, has_strip ? &strip : NULL);
  lr_cut_pictures_show (LR_CUT_PICTURES (self->pictures), has_strip ? &strip : NULL);
  if (has_strip)
    show_words (self, &strip);
  for (int i = 0; i < LR_STRIP_SIDES && (is_other || !has_strip); i++)
    lr_cut_strip_update_picture (self, i);
}

/**
 * lr_cut_strip_update_picture:
 * @side: which of the two
 *
 * Paints the picture at the next frame if what the camera sees is another.
 */
void
lr_cut_strip_update_picture (LrCutStrip *self,
                             int         side)
{
  lr_cut_pictures_update_picture (LR_CUT_PICTURES (self->pictures), side);
}
