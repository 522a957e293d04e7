/* page_dialog.c - the plan on one page: look at it, save it as PDF, print it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "page_dialog.h"

#include "app.h"
#include "ask.h"
#include "page.h"
#include "page_zoom.h"

#include <glib/gi18n-lib.h>

#define AROUND_PX 48  /* of the window behind that stays in sight */
#define BARS_PX 116   /* header bar, and the lines under the sheet */

#define LR_TYPE_PAGE_DIALOG (lr_page_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrPageDialog, lr_page_dialog, LR, PAGE_DIALOG, GtkWindow)

struct _LrPageDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *paper, *scroller, *sheet, *scale, *along, *previous, *next, *number, *zoom_label;
  LrPageZoom  zoom;
  GArray     *sheets;  /* LrPageSheet: of the document as it is now */
  guint       shown;   /* which of them */
};

G_DEFINE_FINAL_TYPE (LrPageDialog, lr_page_dialog, GTK_TYPE_WINDOW)

/* The paper of the locale: A4 nearly everywhere */
static LrPaper
locale_paper (void)
{
  return g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? LR_PAPER_LETTER : LR_PAPER_A4;
}

static LrPageOptions
make_options (LrDocument *document,
              LrPaper     paper,
              guint       sheets)
{
  const LrLightLevels *levels = lr_document_has_current_levels (document) ? lr_document_get_levels (document) : NULL;

  return (LrPageOptions) { paper, lr_document_get_units (document), g_get_real_time () / G_USEC_PER_SEC, levels, sheets };
}

static LrPaper
chosen_paper (LrPageDialog *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper)) == 1 ? LR_PAPER_LETTER : LR_PAPER_A4;
}

/* LrSheets: the lists that are to go along */
static guint
chosen_sheets (LrPageDialog *self)
{
  guint sheets = 0;

  for (GtkWidget *check = gtk_widget_get_first_child (self->along); check != NULL; check = gtk_widget_get_next_sibling (check))
    if (GTK_IS_CHECK_BUTTON (check) && gtk_check_button_get_active (GTK_CHECK_BUTTON (check)))
      sheets |= GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (check), "lr-flag"));
  return sheets;
}

static LrPageOptions
chosen_options (LrPageDialog *self)
{
  return make_options (self->document, chosen_paper (self), chosen_sheets (self));
}

static void
draw_sheet_cb (GtkDrawingArea *area,
               cairo_t        *cr,
               int             width_px,
               int             height_px,
               gpointer        data)
{
  LrPageDialog *self = data;
  LrPageOptions options = chosen_options (self);
  const LrPageSheet *sheet = &g_array_index (self->sheets, LrPageSheet, self->shown);
  double width_pt = sheet->width_pt, height_pt = sheet->height_pt, scale;

  scale = lr_page_zoom_scale (&self->zoom, width_px, height_px);
  if (scale <= 0.0)
    return;

  cairo_translate (cr, 0.5 * (width_px - scale * width_pt), 0.5 * (height_px - scale * height_pt));
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0.0, 0.0, width_pt, height_pt);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_fill (cr);
  cairo_rectangle (cr, 0.0, 0.0, width_pt, height_pt);
  cairo_clip (cr);
  lr_page_draw_sheet (cr, lr_document_get_study (self->document), lr_document_get_remarks (self->document), &options, self->shown);
}

static void
show_zoom (LrPageDialog *self)
{
  g_autofree char *text = lr_page_zoom_text (&self->zoom);

  gtk_button_set_label (GTK_BUTTON (self->zoom_label), text);
}

static void
update (LrPageDialog *self)
{
  LrPageOptions options = chosen_options (self);
  g_autofree char *text = g_strdup_printf (_("The plan stands at 1 : %d on this paper."),
                                           lr_page_scale (lr_document_get_study (self->document), &options));
  g_autofree char *number = NULL;

  g_clear_pointer (&self->sheets, g_array_unref);
  self->sheets = lr_page_sheets_new (lr_document_get_study (self->document), lr_document_get_remarks (self->document), &options);
  self->shown = MIN (self->shown, self->sheets->len - 1);
  /* Translators: which sheet of how many, and what is on it */
  number = g_strdup_printf (_("Sheet %u of %u: %s"), self->shown + 1, self->sheets->len,
                            g_array_index (self->sheets, LrPageSheet, self->shown).title);
  gtk_label_set_markup (GTK_LABEL (self->number), number);
  gtk_widget_set_sensitive (self->previous, self->shown > 0);
  gtk_widget_set_sensitive (self->next, self->shown + 1 < self->sheets->len);
  gtk_label_set_label (GTK_LABEL (self->scale), text);
  lr_page_zoom_set_size (&self->zoom, g_array_index (self->sheets, LrPageSheet, self->shown).width_pt,
                         g_array_index (self->sheets, LrPageSheet, self->shown).height_pt);
  show_zoom (self);
}

static void
zoom_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  LrPageDialog *self = LR_PAGE_DIALOG (widget);

  if (g_str_equal (action, "page.zoom-to"))
    lr_page_zoom_to (&self->zoom, g_variant_get_double (parameter));
  else if (g_str_equal (action, "page.zoom-toggle"))
    lr_page_zoom_to (&self->zoom, self->zoom.zoom > 0.0 ? 0.0 : 1.0);
  else if (!g_str_equal (action, "page.zoomed"))
    lr_page_zoom_step (&self->zoom, g_str_equal (action, "page.zoom-in") ? 1 : -1);
  show_zoom (self);
}

static void
turn_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  LrPageDialog *self = LR_PAGE_DIALOG (widget);

  if (g_str_equal (action, "page.next"))
    self->shown++;
  else if (self->shown > 0)
    self->shown--;
  update (self);
}

/* What was put along is looked at */
static void
along_cb (LrPageDialog   *self,
          GtkCheckButton *check)
{
  guint before = self->sheets->len;

  update (self);
  if (gtk_check_button_get_active (check) && self->sheets->len > before)
    {
      const char *title = gtk_check_button_get_label (check);

      for (guint i = 1; i < self->sheets->len; i++)
        if (g_array_index (self->sheets, LrPageSheet, i).begins && g_str_equal (g_array_index (self->sheets, LrPageSheet, i).title, title))
          self->shown = i;
      update (self);
    }
}

/* What a print operation prints: the paper and the lists that go along */
static LrPageOptions
print_options (GtkPrintOperation *operation,
               LrDocument        *document)
{
  LrPaper paper = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (operation), "lr-paper"));

  return make_options (document, paper, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (operation), "lr-sheets")));
}

static GArray *
print_sheets (GtkPrintOperation *operation,
              LrDocument        *document)
{
  LrPageOptions options = print_options (operation, document);

  return lr_page_sheets_new (lr_document_get_study (document), lr_document_get_remarks (document), &options);
}

/* Lists stand upright, the plan lies */
static void
page_setup_cb (GtkPrintOperation *operation,
               GtkPrintContext   *context,
               int                page,
               GtkPageSetup      *setup,
               LrDocument        *document)
{
  g_autoptr (GArray) sheets = print_sheets (operation, document);

  if (page < (int) sheets->len)
    {
      const LrPageSheet *sheet = &g_array_index (sheets, LrPageSheet, page);

      gtk_page_setup_set_orientation (setup, sheet->width_pt > sheet->height_pt ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
    }
}

static void
draw_page_cb (GtkPrintOperation *operation,
              GtkPrintContext   *context,
              int                page,
              LrDocument        *document)
{
  LrPageOptions options = print_options (operation, document);
  g_autoptr (GArray) sheets = print_sheets (operation, document);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  const LrPageSheet *sheet;

  if (page >= (int) sheets->len)
    return;
  sheet = &g_array_index (sheets, LrPageSheet, page);
  cairo_scale (cr, gtk_print_context_get_width (context) / sheet->width_pt, gtk_print_context_get_height (context) / sheet->height_pt);
  lr_page_draw_sheet (cr, lr_document_get_study (document), lr_document_get_remarks (document), &options, (guint) page);
}

static void
print_done_cb (GtkPrintOperation       *operation,
               GtkPrintOperationResult  result,
               GtkWindow               *window)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      gtk_print_operation_get_error (operation, &error);
      lr_tell (window, _("The page was not printed"), error != NULL ? error->message : NULL);
    }
}

static void
print_page (GtkWindow  *window,
            LrDocument *document,
            LrPaper     paper,
            guint       sheets)
{
  LrPageOptions options = make_options (document, paper, sheets);
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (paper == LR_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_LANDSCAPE);
  gtk_paper_size_free (size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_n_pages (operation, (int) lr_page_count (lr_document_get_study (document), lr_document_get_remarks (document), &options));
  gtk_print_operation_set_job_name (operation, lr_document_get_plan (document)->job->title);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_object_set_data (G_OBJECT (operation), "lr-paper", GINT_TO_POINTER (paper));
  g_object_set_data (G_OBJECT (operation), "lr-sheets", GUINT_TO_POINTER (sheets));
  g_signal_connect_object (operation, "request-page-setup", G_CALLBACK (page_setup_cb), document, 0);
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (draw_page_cb), document, 0);
  g_signal_connect_object (operation, "done", G_CALLBACK (print_done_cb), window, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, window, NULL);
}

static void
save_response_cb (GtkNativeDialog *dialog,
                  int              response,
                  LrPageDialog    *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  LrPageOptions options = chosen_options (self);
  g_autoptr (GError) error = NULL;

  if (response == GTK_RESPONSE_ACCEPT && file != NULL && g_file_peek_path (file) != NULL)
    {
      const char *path = g_file_peek_path (file);

      if (lr_page_write_pdf (lr_document_get_study (self->document), lr_document_get_remarks (self->document), &options, path,
                             &error))
        {
          g_autofree char *name = g_filename_display_name (path);
          /* Translators: name of a file with its folder */
          g_autofree char *sentence = g_strdup_printf (_("The page is saved as “%s”."), name);

          lr_document_say (self->document, sentence);
          gtk_window_close (GTK_WINDOW (self));
        }
      else
        lr_tell (GTK_WINDOW (self), _("The page was not saved"), error->message);
    }
  g_object_unref (dialog);
}

static void
save_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  LrPageDialog *self = LR_PAGE_DIALOG (widget);
  GtkFileChooserNative *dialog =
    gtk_file_chooser_native_new (_("Save the page as PDF"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _("_Save"), _("_Cancel"));
  const LrJob *job = lr_document_get_plan (self->document)->job;
  g_autofree char *title = g_strdelimit (g_strdup (job->title[0] != '\0' ? job->title : _("Plan")), "/\\:*?\"<>|", '-');
  g_autofree char *name = g_strconcat (title, ".pdf", NULL);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  g_signal_connect (dialog, "response", G_CALLBACK (save_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
print_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  LrPageDialog *self = LR_PAGE_DIALOG (widget);

  print_page (GTK_WINDOW (self), self->document, chosen_paper (self), chosen_sheets (self));
}

static void
lr_page_dialog_dispose (GObject *object)
{
  LrPageDialog *self = LR_PAGE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_PAGE_DIALOG);
  g_clear_pointer (&self->sheets, g_array_unref);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_page_dialog_parent_class)->dispose (object);
}

/* The sheet's own keys; 1 and 2 are hundreds of per cent */
static const struct { guint key; const char *action, *format; double ratio; } zoom_keys[] = {
  { GDK_KEY_plus, "page.zoom-in", NULL, 0.0 }, { GDK_KEY_equal, "page.zoom-in", NULL, 0.0 }, { GDK_KEY_KP_Add, "page.zoom-in", NULL, 0.0 },
  { GDK_KEY_minus, "page.zoom-out", NULL, 0.0 }, { GDK_KEY_KP_Subtract, "page.zoom-out", NULL, 0.0 },
  { GDK_KEY_0, "page.zoom-to", "d", 0.0 }, { GDK_KEY_KP_0, "page.zoom-to", "d", 0.0 },
  { GDK_KEY_1, "page.zoom-to", "d", 1.0 }, { GDK_KEY_2, "page.zoom-to", "d", 2.0 },
};

static void
lr_page_dialog_class_init (LrPageDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_page_dialog_dispose;
  gtk_widget_class_install_action (widget_class, "page.save", NULL, save_cb);
  gtk_widget_class_install_action (widget_class, "page.print", NULL, print_cb);
  gtk_widget_class_install_action (widget_class, "page.previous", NULL, turn_cb);
  gtk_widget_class_install_action (widget_class, "page.next", NULL, turn_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Up, 0, "page.previous", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Down, 0, "page.next", NULL);
  gtk_widget_class_install_action (widget_class, "page.zoom-in", NULL, zoom_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-out", NULL, zoom_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-to", "d", zoom_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-toggle", NULL, zoom_cb);
  gtk_widget_class_install_action (widget_class, "page.zoomed", NULL, zoom_cb);
  for (gsize i = 0; i < G_N_ELEMENTS (zoom_keys); i++)
    gtk_widget_class_add_binding_action (widget_class, zoom_keys[i].key, GDK_CONTROL_MASK, zoom_keys[i].action, zoom_keys[i].format,
                                         zoom_keys[i].ratio);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "page.save", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "page.print", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/page-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, paper);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, scroller);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, sheet);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, zoom_label);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, scale);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, along);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, previous);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, next);
  gtk_widget_class_bind_template_child (widget_class, LrPageDialog, number);
}

static void
lr_page_dialog_init (LrPageDialog *self)
{
  const char *papers[] = { _("A4"), _("US Letter"), NULL };
  g_autoptr (GtkStringList) model = gtk_string_list_new (papers);

  gtk_widget_init_template (GTK_WIDGET (self));
  lr_page_zoom_init (&self->zoom, self->scroller, self->sheet);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->paper), G_LIST_MODEL (model));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->paper), locale_paper () == LR_PAPER_LETTER ? 1 : 0);
}

/* As large as the window behind it allows: the least type of the page is to be read */
static void
fit_to_window (LrPageDialog *self,
               GtkWidget    *window)
{
  int width_px = gtk_widget_get_width (window) - AROUND_PX, height_px = gtk_widget_get_height (window) - AROUND_PX;
  double sheet_px = height_px - BARS_PX - 2.0 * LR_PAGE_MARGIN_PX;

  if (width_px > 0 && sheet_px > 0.0)
    gtk_window_set_default_size (GTK_WINDOW (self), MIN (width_px, (int) (sheet_px * G_SQRT2 + 2.0 * LR_PAGE_MARGIN_PX)), height_px);
}

static void
page_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  LrPageDialog *self = g_object_new (LR_TYPE_PAGE_DIALOG, "transient-for", data, NULL);
  const char *title;
  guint flag;

  self->document = g_object_ref (lr_main_window_get_document (data));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->sheet), draw_sheet_cb, self, NULL);
  g_signal_connect_swapped (self->paper, "notify::selected", G_CALLBACK (update), self);
  for (guint i = 0; (flag = lr_sheet_info (i, NULL, &title)) != 0; i++)
    {
      GtkWidget *check = gtk_check_button_new_with_label (title);

      g_object_set_data (G_OBJECT (check), "lr-flag", GUINT_TO_POINTER (flag));
      g_signal_connect_swapped (check, "toggled", G_CALLBACK (along_cb), self);
      gtk_box_append (GTK_BOX (self->along), check);
    }
  update (self);
  fit_to_window (self, GTK_WIDGET (data));
  gtk_window_present (GTK_WINDOW (self));
}

static void
print_at_once_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       data)
{
  print_page (data, lr_main_window_get_document (data), locale_paper (), 0);
}

static const GActionEntry entries[] = {
  { "page", page_cb, NULL, NULL, NULL, { 0 } },
  { "print", print_at_once_cb, NULL, NULL, NULL, { 0 } },
};

/**
 * lr_main_window_add_page_actions:
 *
 * Adds the actions that show and print the page.
 */
void
lr_main_window_add_page_actions (LrMainWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
