/* lists_kit.c - the job's kit: what there is of each thing, and what goes along
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Titles and notes are typed where they stand, numbers are typed or stepped. Things of the kit are known by their ids, what
 * goes along by its place in the list and its form.
 */

#include "config.h"

#include "lists_dialog.h"

#include "badge.h"
#include "kit_figures.h"
#include "kit_menu.h"
#include "lens_names.h"
#include "list_page.h"
#include "my_kit.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#define LIST "kit"
#define SAID "lr-said"    /* of the page: what was done with the user's own kit */
#define ICON_PX 30.0
#define KIT_KEY "kit:"
#define SUPPLY_KEY "supply:"

static LrListPage *
page_of (GtkWidget *widget)
{
  return LR_LIST_PAGE (gtk_widget_get_ancestor (widget, LR_TYPE_LIST_PAGE));
}

static const LrPlan *
get_plan (LrListPage *page)
{
  return lr_document_get_committed (lr_list_page_get_document (page));
}

/* What a line is of: one of both, or neither if it is gone */
typedef struct
{
  const LrKitEntry *entry;
  const LrSupply   *supply;
  guint             index; /* of the supply */
} Owner;

static Owner
owner_of (LrListPage *page,
          GtkWidget  *line)
{
  const char *key = lr_list_line_get_key (line);
  Owner owner = { NULL, NULL, 0 };

  if (g_str_has_prefix (key, KIT_KEY))
    owner.entry = lr_plan_find_kit (get_plan (page), key + strlen (KIT_KEY));
  else if (sscanf (key, SUPPLY_KEY "%u", &owner.index) == 1 && owner.index < get_plan (page)->supplies->len)
    owner.supply = get_plan (page)->supplies->pdata[owner.index];

  return owner;
}

/* --- Typing --------------------------------------------------------------------------------------------------- */

static void
take (GtkWidget *entry)
{
  GtkWidget *line = lr_list_line_of (entry);
  LrListPage *page = line != NULL ? page_of (line) : NULL;
  gboolean is_note = line != NULL && entry == lr_list_line_get (line, "note");
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry)), *key = is_note ? "note" : "title", *before;
  g_autoptr (GError) error = NULL;
  LrPlan *next;
  Owner owner;

  if (page == NULL)
    return;
  owner = owner_of (page, line);
  if (owner.entry == NULL && owner.supply == NULL)
    return;
  if (owner.entry != NULL)
    before = is_note ? owner.entry->note : owner.entry->title;
  else
    before = is_note ? owner.supply->note : owner.supply->title;
  if (g_str_equal (before, text))
    return;

  next = owner.entry != NULL ? lr_plan_set_kit_text (get_plan (page), owner.entry->item->id, key, text, &error)
                             : lr_plan_set_supply_text (get_plan (page), owner.index, key, text, &error);
  lr_list_page_commit (page, next, is_note ? _("Note") : _("Title"), &error);
}

static void
leave_cb (GtkEventController *focus)
{
  take (gtk_event_controller_get_widget (focus));
}

/* Steps of one number in a row are one step of the history */
static void
take_number (GtkSpinButton *spin,
             const char    *key,
             const char    *what)
{
  GtkWidget *line = lr_list_line_of (GTK_WIDGET (spin));
  LrListPage *page = line != NULL ? page_of (line) : NULL;
  double value = gtk_spin_button_get_value (spin), before;
  g_autofree char *merge_key = NULL;
  g_autoptr (GError) error = NULL;
  LrPlan *next;
  Owner owner;

  if (page == NULL)
    return;
  owner = owner_of (page, line);
  if (owner.entry == NULL && owner.supply == NULL)
    return;
  before = owner.entry != NULL ? owner.entry->count : g_str_equal (key, "size") ? owner.supply->size : owner.supply->count;
  if (before == value)
    return;

  next = owner.entry != NULL ? lr_plan_set_kit_number (get_plan (page), owner.entry->item->id, key, value, &error)
                             : lr_plan_set_supply_number (get_plan (page), owner.index, key, value, &error);
  if (next == NULL)
    {
      lr_list_page_commit (page, NULL, what, &error);
      return;
    }
  merge_key = g_strconcat (lr_list_line_get_key (line), "/", key, NULL);
  lr_document_commit_merge (lr_list_page_get_document (page), next, what, merge_key);
}

static void
count_cb (GtkSpinButton *spin)
{
  take_number (spin, "count", _("Number in the kit"));
}

static void
size_cb (GtkSpinButton *spin)
{
  take_number (spin, "size", _("Size"));
}

static void
figure_cb (GtkWidget *grid,
           LrField   *field,
           double     value)
{
  GtkWidget *line = lr_list_line_of (grid);
  LrListPage *page = page_of (grid);
  const LrProp *prop = lr_field_get_prop (field);
  Owner owner = owner_of (page, line);
  g_autoptr (GError) error = NULL;

  if (owner.entry != NULL)
    lr_list_page_commit (page, lr_plan_set_kit_number (get_plan (page), owner.entry->item->id, prop->key, value, &error), _(prop->label),
                         &error);
}

static void
remove_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  Owner owner = owner_of (page, lr_list_line_of (button));
  g_autoptr (GError) error = NULL;

  if (owner.entry != NULL)
    lr_list_page_commit (page, lr_plan_remove_kit_entry (get_plan (page), owner.entry->item->id, &error), _("Take out of the kit"), &error);
  else if (owner.supply != NULL)
    lr_list_page_commit (page, lr_plan_remove_supply (get_plan (page), owner.index, &error), _("Take out of the kit"), &error);
}

/* --- A lens by name ------------------------------------------------------------------------------------------- */

/* *plan becomes the next one, or NULL after a refusal */
static void
go_on (LrPlan **plan,
       LrPlan  *next)
{
  g_clear_pointer (plan, lr_plan_unref);
  *plan = next;
}

static LrPlan *
make_lens (const LrPlan       *plan,
           const char         *id,
           const LrFoundLens  *lens,
           GError            **error)
{
  /* the shortest first: it takes the longest along where it must */
  const struct { const char *key; double value; } numbers[] = {
    { "focal-min-mm", lens->focal_min_m }, { "focal-max-mm", lens->focal_max_m },
    { "f-number-min", lens->f_number_min }, { "f-number-max", lens->f_number_max },
  };
  g_autofree char *widest = lr_f_number_format (lens->f_number_min), *smallest = lr_f_number_format (lens->f_number_max);
  /* Translators: a lens's widest and smallest stop */
  g_autofree char *note = lens->f_number_max > 0.0 ? g_strdup_printf (_("%s to %s"), widest, smallest) : g_strdup (widest);
  LrPlan *next = lr_plan_set_kit_text (plan, id, "title", lens->name, error);

  for (guint i = 0; next != NULL && i < G_N_ELEMENTS (numbers); i++)
    if (numbers[i].value > 0.0)
      go_on (&next, lr_plan_set_kit_number (next, id, numbers[i].key, numbers[i].value, error));
  if (next != NULL && lens->f_number_min > 0.0)
    go_on (&next, lr_plan_set_kit_text (next, id, "note", note, error));

  return next;
}

static void
lens_cb (GtkWidget         *entry,
         const LrFoundLens *lens)
{
  LrListPage *page = page_of (entry);
  Owner owner = owner_of (page, lr_list_line_of (entry));
  g_autoptr (GError) error = NULL;

  if (owner.entry == NULL)
    return;
  gtk_editable_set_text (GTK_EDITABLE (entry), lens->name);
  lr_list_page_commit (page, make_lens (get_plan (page), owner.entry->item->id, lens, &error), _("Lens by name"), &error);
}

/* --- The user's own kit --------------------------------------------------------------------------------------- */

static void
say (LrListPage *page,
     const char *sentence)
{
  g_object_set_data_full (G_OBJECT (page), SAID, g_markup_escape_text (sentence, -1), g_free);
  lr_list_page_refill (page);
}

static void
keep_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  g_autofree char *path = lr_my_kit_dup_path ();
  g_autoptr (GError) error = NULL;

  if (lr_own_kit_write (get_plan (page), path, &error))
    say (page, _("Kept. New plans begin with this kit."));
  else
    {
      g_autofree char *sentence = g_strdup_printf (_("Not kept. %s."), error->message);

      say (page, sentence);
    }
}

static void
take_own_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  g_autofree char *path = lr_my_kit_dup_path (), *sentence = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (LrOwnKit) kit = lr_own_kit_read (path, &error);

  if (error != NULL)
    {
      sentence = g_strdup_printf (_("Your own kit could not be read. %s."), error->message);
      say (page, sentence);
    }
  else if (kit == NULL)
    say (page, _("No kit of yours is kept yet. “Keep this kit for the next jobs” keeps what is listed here."));
  else
    {
      g_autoptr (GError) refusal = NULL;

      say (page, _("Taken. What both kits have is as in yours; the rest of this one stayed."));
      lr_list_page_commit (page, lr_plan_take_kit (get_plan (page), kit->entries, kit->supplies, &refusal), _("Take from my kit"), &refusal);
    }
}

/* --- Lines ---------------------------------------------------------------------------------------------------- */

static GtkWidget *
make_entry (const char *placeholder,
            int         width_chars)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width_chars);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, placeholder, -1);
  g_signal_connect (entry, "activate", G_CALLBACK (take), NULL);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), NULL);
  gtk_widget_add_controller (entry, focus);

  return entry;
}

static GtkWidget *
make_spin (double      max,
           guint       digits,
           const char *title,
           GCallback   changed)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (0.0, max, 1.0);

  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), digits);
  gtk_spin_button_set_numeric (GTK_SPIN_BUTTON (spin), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), digits > 0 ? 6 : 3);
  gtk_widget_set_valign (spin, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (spin, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  g_signal_connect (spin, "value-changed", changed, NULL);

  return spin;
}

static GtkWidget *
make_remove_button (void)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("user-trash-symbolic");
  const char *title = _("Take out of the kit");

  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), NULL);

  return button;
}

/* @unit: (nullable): of a size, that such things have */
static void
fill_new_line (GtkWidget  *line,
               gboolean    has_badge,
               const char *unit)
{
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *title = make_entry (_("Title"), 16), *note = make_entry (_("Note"), 16);
  GtkWidget *badge = lr_badge_new ();

  gtk_widget_set_size_request (badge, (int) ICON_PX, (int) ICON_PX);
  gtk_widget_set_valign (badge, GTK_ALIGN_CENTER);
  gtk_widget_set_visible (badge, has_badge);
  gtk_box_append (GTK_BOX (texts), badge);
  gtk_box_append (GTK_BOX (texts), title);
  gtk_box_append (GTK_BOX (texts), note);
  gtk_box_set_homogeneous (GTK_BOX (texts), FALSE);
  lr_list_line_add (line, "texts", texts, TRUE);
  g_object_set_data (G_OBJECT (line), "badge", badge);
  g_object_set_data (G_OBJECT (line), "title", title);
  g_object_set_data (G_OBJECT (line), "note", note);
  if (unit != NULL)
    {
      lr_list_line_add (line, "size", make_spin (100000.0, 1, _("Size of one; 0: not told"), G_CALLBACK (size_cb)), FALSE);
      lr_list_line_add (line, "unit", gtk_label_new (unit), FALSE);
    }
  lr_list_line_add (line, "count", make_spin (1000.0, 0, _("How many there are"), G_CALLBACK (count_cb)), FALSE);
  lr_list_line_add (line, "remove", make_remove_button (), FALSE);
}

/* What is being typed stays */
static void
set_entry (GtkWidget  *entry,
           const char *text)
{
  GtkWidget *focus = gtk_widget_get_root (entry) != NULL ? gtk_root_get_focus (gtk_widget_get_root (entry)) : NULL;

  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text) && (focus == NULL || !gtk_widget_is_ancestor (focus, entry)))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  lr_list_entry_update_hint (entry);
}

static void
set_spin (GtkWidget *spin,
          double     value)
{
  if (spin != NULL && gtk_spin_button_get_value (GTK_SPIN_BUTTON (spin)) != value)
    gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), value);
}

static void
fill_new_entry (GtkWidget    *line,
                const LrItem *item,
                LrUnits       units)
{
  GtkWidget *figures = lr_kit_figures_new (item->kind, units);

  if (figures != NULL)
    {
      lr_list_line_add (line, "figures", figures, TRUE);
      g_signal_connect (lr_kit_figures_get_grid (figures), "number", G_CALLBACK (figure_cb), NULL);
    }
  fill_new_line (line, TRUE, NULL);
  if (item->kind == LR_ITEM_LENS)
    lr_lens_names_attach (lr_list_line_get (line, "title"), lens_cb);
}

static void
fill_entry (LrListPage       *page,
            const LrPlan     *plan,
            const LrKitEntry *entry)
{
  int left = lr_plan_kit_left (plan, entry);
  g_autofree char *key = g_strconcat (KIT_KEY, entry->item->id, NULL), *note = NULL;
  gboolean is_new;
  GtkWidget *widget;
  LrListLine line = { .key = key };

  if (left < 0)
    note = g_strdup_printf (ngettext ("<b>%d more is placed than there is</b>", "<b>%d more are placed than there are</b>", (gulong) -left), -left);
  line.note = note;
  widget = lr_list_page_line (page, &line, &is_new);
  if (is_new)
    fill_new_entry (widget, entry->item, lr_document_get_units (lr_list_page_get_document (page)));
  if (lr_list_line_get (widget, "figures") != NULL)
    lr_kit_figures_set (lr_list_line_get (widget, "figures"), entry->item);
  lr_badge_show_item (LR_BADGE (lr_list_line_get (widget, "badge")), entry->item, ICON_PX);
  set_entry (lr_list_line_get (widget, "title"), entry->title);
  set_entry (lr_list_line_get (widget, "note"), entry->note);
  set_spin (lr_list_line_get (widget, "count"), entry->count);
}

static void
fill_supply (LrListPage     *page,
             const LrSupply *supply,
             guint           index)
{
  g_autofree char *key = g_strdup_printf (SUPPLY_KEY "%u:%d", index, supply->form);
  const LrListLine line = { .key = key };
  gboolean is_new;
  GtkWidget *widget = lr_list_page_line (page, &line, &is_new);

  if (is_new)
    fill_new_line (widget, FALSE, lr_supply_unit (supply->form));
  set_entry (lr_list_line_get (widget, "title"), supply->title);
  set_entry (lr_list_line_get (widget, "note"), supply->note);
  set_spin (lr_list_line_get (widget, "count"), supply->count);
  set_spin (lr_list_line_get (widget, "size"), supply->size);
}

static void
fill (LrListPage *page,
      LrDocument *document)
{
  const LrPlan *plan = lr_document_get_plan (document);
  const char *said = g_object_get_data (G_OBJECT (page), SAID);

  if (said != NULL)
    lr_list_page_say (page, "said", said);
  lr_list_page_group (page, _("To be placed"));
  for (guint i = 0; i < plan->kit->len; i++)
    fill_entry (page, plan, plan->kit->pdata[i]);
  lr_list_page_group (page, _("Goes along"));
  if (plan->supplies->len == 0)
    lr_list_page_say (page, "none", _("Tripods, stands, sandbags, batteries, cards: what is listed here is counted against what the plan needs."));
  for (guint i = 0; i < plan->supplies->len; i++)
    fill_supply (page, plan->supplies->pdata[i], i);
}

static void
add_button (LrListPage *page,
            const char *label,
            const char *hint,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_widget_set_tooltip_text (button, hint);
  gtk_box_append (GTK_BOX (lr_list_page_get_bar (page)), button);
  g_signal_connect (button, "clicked", clicked, NULL);
}

/**
 * lr_lists_kit_new:
 * @document: whose kit
 *
 * Returns: (transfer floating): the page
 */
GtkWidget *
lr_lists_kit_new (LrDocument *document)
{
  GtkWidget *page = lr_list_page_new (document, LIST, fill);

  gtk_box_append (GTK_BOX (lr_list_page_get_bar (LR_LIST_PAGE (page))), lr_kit_menu_new (LR_LIST_PAGE (page)));
  add_button (LR_LIST_PAGE (page), _("_Take from my kit"), _("What both kits have becomes as in yours; what this one lacks is added"),
              G_CALLBACK (take_own_cb));
  add_button (LR_LIST_PAGE (page), _("_Keep this kit for the next jobs"), _("New plans begin with it"), G_CALLBACK (keep_cb));

  return page;
}
