/* viewfinders.c - what two cameras see, because they will be cut against each other: one above the other, or side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "viewfinders.h"

#include "cut_strip.h"
#include "finder.h"

#include <glib/gi18n-lib.h>

#define N_FINDERS 2

struct _LrViewfinders
{
  GtkWidget   parent_instance;

  LrDocument *document;
  GtkWidget  *head;       /* which of the two ways, and which two cameras */
  GtkWidget  *pairs;      /* a menu of the cuts, where there are several */
  GtkWidget  *finders[N_FINDERS];
  GtkWidget  *strip;      /* instead of the finders */
  gboolean    has_cut;    /* the user wants the strip */
  char       *pairs_text; /* what the menu was made from */
  int         turn;       /* whose picture is painted next while something moves */
  guint       tick;       /* paints what is due when nothing moves any more */
  int         n_waited;   /* frames */
};

G_DEFINE_FINAL_TYPE (LrViewfinders, lr_viewfinders, GTK_TYPE_WIDGET)

static gboolean
is_shown_by_other (LrViewfinders *self,
                   int            index,
                   const char    *id)
{
  for (int i = 0; i < N_FINDERS; i++)
    if (i != index && g_strcmp0 (lr_finder_get_camera (LR_FINDER (self->finders[i])), id) == 0)
      return TRUE;
  return FALSE;
}

/* A finder whose camera is gone, or that never had one, takes the first that no other one shows */
static const char *
choose_camera (LrViewfinders *self,
               int            index)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const char *id = lr_finder_get_camera (LR_FINDER (self->finders[index]));

  if (id != NULL && lr_study_find_camera (study, id) != NULL)
    return id;

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const char *candidate = g_array_index (study->cameras, LrCameraReading, i).item->id;

      if (!is_shown_by_other (self, index, candidate))
        return candidate;
    }
  return NULL;
}

static guint
count_cameras (LrViewfinders *self)
{
  return lr_document_get_study (self->document)->cameras->len;
}

/* One camera is not cut */
static gboolean
shows_strip (LrViewfinders *self)
{
  return self->has_cut && count_cameras (self) >= N_FINDERS;
}

static void
update_picture (LrViewfinders *self,
                int            index)
{
  if (shows_strip (self))
    lr_cut_strip_update_picture (LR_CUT_STRIP (self->strip), index);
  else
    lr_finder_update_picture (LR_FINDER (self->finders[index]));
}

static void
update_pictures (LrViewfinders *self)
{
  for (int i = 0; i < N_FINDERS; i++)
    update_picture (self, i);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  LrViewfinders *self = LR_VIEWFINDERS (widget);

  if (self->n_waited++ == 0)
    return G_SOURCE_CONTINUE;

  self->tick = 0;
  update_pictures (self);
  return G_SOURCE_REMOVE;
}

/* While something moves, each frame paints one picture at the most: two cost more than a frame has time for */
static void
update_one_picture (LrViewfinders *self)
{
  update_picture (self, self->turn);
  self->turn = (self->turn + 1) % N_FINDERS;
  self->n_waited = 0;
  if (self->tick == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

static void
update_finders (LrViewfinders *self)
{
  for (int i = 0; i < N_FINDERS; i++)
    {
      LrFinder *finder = LR_FINDER (self->finders[i]);
      const char *id = choose_camera (self, i);

      /* one invitation to place a camera at a time */
      gtk_widget_set_visible (self->finders[i], !shows_strip (self) && (guint) i <= count_cameras (self));

      if (g_strcmp0 (id, lr_finder_get_camera (finder)) != 0)
        lr_finder_set_camera (finder, id);
      else if (!shows_strip (self))
        lr_finder_update (finder);
    }
}

static char *
pair_title (const LrCameraReading *a,
            const LrCameraReading *b)
{
  return g_strdup_printf ("%s–%s", a->item->tag, b->item->tag);
}

/* Every two cameras, each line with the ids that its choice stands for */
static void
update_pairs (LrViewfinders *self)
{
  const GArray *cameras = lr_document_get_study (self->document)->cameras;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GMenu) menu = g_menu_new ();

  for (guint i = 0; i < cameras->len; i++)
    for (guint j = i + 1; j < cameras->len; j++)
      {
        const LrCameraReading *a = &g_array_index (cameras, LrCameraReading, i), *b = &g_array_index (cameras, LrCameraReading, j);
        g_autofree char *title = pair_title (a, b);
        g_autoptr (GMenuItem) item = g_menu_item_new (title, NULL);

        g_menu_item_set_action_and_target (item, "viewfinders.cut", "(ss)", a->item->id, b->item->id);
        g_menu_append_item (menu, item);
        g_string_append_printf (text, "%s %s %s\n", title, a->item->id, b->item->id);
      }

  if (g_strcmp0 (self->pairs_text, text->str) == 0)
    return;

  g_free (self->pairs_text);
  self->pairs_text = g_strdup (text->str);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->pairs), G_MENU_MODEL (menu));
}

static void
update_strip (LrViewfinders *self)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const char *a, *b;

  gtk_widget_set_visible (self->strip, shows_strip (self));
  gtk_widget_set_visible (self->pairs, shows_strip (self) && study->cameras->len > N_FINDERS);
  if (!shows_strip (self))
    return;

  lr_cut_strip_update (LR_CUT_STRIP (self->strip));
  if (study->cameras->len > N_FINDERS && lr_cut_strip_get_shown (LR_CUT_STRIP (self->strip), &a, &b))
    {
      g_autofree char *title = pair_title (lr_study_find_camera (study, a), lr_study_find_camera (study, b));

      update_pairs (self);
      if (g_strcmp0 (gtk_menu_button_get_label (GTK_MENU_BUTTON (self->pairs)), title) != 0)
        gtk_menu_button_set_label (GTK_MENU_BUTTON (self->pairs), title);
    }
}

static void
changed_cb (LrViewfinders *self)
{
  gtk_widget_set_visible (self->head, count_cameras (self) >= N_FINDERS);
  update_finders (self);
  update_strip (self);
  if (lr_document_has_preview (self->document))
    update_one_picture (self);
  else
    update_pictures (self);
}

/* Remarks are others, and the pictures are lit by the plan shown */
static void
lit_cb (LrViewfinders *self)
{
  update_finders (self);
  update_strip (self);
  if (self->tick == 0)
    update_pictures (self);
}

/* A remark in hand shows in the strip, and what it speaks of is outlined in the pictures */
static void
hand_cb (LrViewfinders *self)
{
  update_strip (self);
  if (self->tick == 0)
    update_pictures (self);
}

static void
choose_cut_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  LrViewfinders *self = LR_VIEWFINDERS (widget);
  const char *a, *b;

  g_variant_get (parameter, "(&s&s)", &a, &b);
  lr_cut_strip_choose (LR_CUT_STRIP (self->strip), a, b);
  update_strip (self);
}

static void
lr_viewfinders_dispose (GObject *object)
{
  LrViewfinders *self = LR_VIEWFINDERS (object);

  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
  self->tick = 0;
  g_clear_pointer (&self->head, gtk_widget_unparent);
  for (int i = 0; i < N_FINDERS; i++)
    g_clear_pointer (&self->finders[i], gtk_widget_unparent);
  g_clear_pointer (&self->strip, gtk_widget_unparent);
  g_clear_pointer (&self->pairs_text, g_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_viewfinders_parent_class)->dispose (object);
}

static void
lr_viewfinders_class_init (LrViewfindersClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_viewfinders_dispose;
  gtk_widget_class_install_action (widget_class, "viewfinders.cut", "(ss)", choose_cut_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "viewfinders");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lr_viewfinders_init (LrViewfinders *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Viewfinders"), -1);
}

static GtkWidget *
make_way (const char *title,
          const char *way,
          const char *hint)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (title);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.pictures");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", way);
  gtk_widget_set_tooltip_text (button, hint);
  return button;
}

/* "Pictures | Cut", and which cut */
static void
make_head (LrViewfinders *self)
{
  GtkWidget *ways = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_add_css_class (ways, "linked");
  gtk_box_append (GTK_BOX (ways), make_way (_("Pictures"), "stacked", _("What the cameras see, one above the other")));
  gtk_box_append (GTK_BOX (ways), make_way (_("Cut"), "cut", _("Two cameras side by side, as they will be cut (Alt+6)")));

  self->pairs = gtk_menu_button_new ();
  gtk_widget_set_halign (self->pairs, GTK_ALIGN_END);
  gtk_widget_set_hexpand (self->pairs, TRUE);
  gtk_widget_set_tooltip_text (self->pairs, _("Which two cameras"));

  self->head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_add_css_class (self->head, "viewfinders-head");
  gtk_box_append (GTK_BOX (self->head), ways);
  gtk_box_append (GTK_BOX (self->head), self->pairs);
  gtk_widget_set_parent (self->head, GTK_WIDGET (self));
}

/**
 * lr_viewfinders_set_document:
 * @document: whose cameras are shown; once
 */
void
lr_viewfinders_set_document (LrViewfinders *self,
                             LrDocument    *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  make_head (self);
  for (int i = 0; i < N_FINDERS; i++)
    {
      self->finders[i] = lr_finder_new (document);
      gtk_widget_set_parent (self->finders[i], GTK_WIDGET (self));
    }
  self->strip = lr_cut_strip_new (document);
  gtk_widget_set_parent (self->strip, GTK_WIDGET (self));
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "lit", G_CALLBACK (lit_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "hand", G_CALLBACK (hand_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}

/**
 * lr_viewfinders_set_cut:
 * @has_cut: two cameras side by side, as they will be cut, if there are two; else one above the other
 */
void
lr_viewfinders_set_cut (LrViewfinders *self,
                        gboolean       has_cut)
{
  if (self->has_cut == has_cut)
    return;

  self->has_cut = has_cut;
  changed_cb (self);
}

/**
 * lr_viewfinders_get_cut:
 *
 * Returns: whether two cameras are side by side now
 */
gboolean
lr_viewfinders_get_cut (LrViewfinders *self)
{
  return shows_strip (self);
}

/**
 * lr_viewfinders_set_max_height:
 * @max_height_px: no picture is higher than that [px]
 */
void
lr_viewfinders_set_max_height (LrViewfinders *self,
                               int            max_height_px)
{
  for (int i = 0; i < N_FINDERS; i++)
    if (self->finders[i] != NULL)
      lr_finder_set_max_height (LR_FINDER (self->finders[i]), max_height_px);
  if (self->strip != NULL)
    lr_cut_strip_set_max_height (LR_CUT_STRIP (self->strip), max_height_px);
}

/* The one that shows the camera in hand, which takes the last place if none does; else the first */
static LrFinder *
finder_in_hand (LrViewfinders *self)
{
  const char *id = lr_document_get_selected (self->document);

  if (id == NULL || lr_study_find_camera (lr_document_get_study (self->document), id) == NULL)
    return LR_FINDER (self->finders[0]);

  for (int i = 0; i < N_FINDERS; i++)
    if (g_strcmp0 (lr_finder_get_camera (LR_FINDER (self->finders[i])), id) == 0)
      return LR_FINDER (self->finders[i]);

  lr_finder_set_camera (LR_FINDER (self->finders[N_FINDERS - 1]), id);
  return LR_FINDER (self->finders[N_FINDERS - 1]);
}

/**
 * lr_viewfinders_open_frame:
 *
 * Opens what works from the picture back, of the camera in hand or the first.
 */
void
lr_viewfinders_open_frame (LrViewfinders *self)
{
  if (self->has_cut)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.pictures", "s", "stacked");
  lr_finder_open_frame (finder_in_hand (self));
}
