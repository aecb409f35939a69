/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-dialog.h"

#include "compat-4-8.h"
#include "drawing-view.h"
#include "file-names.h"
#include "latest.h"
#include "printing.h"
#include "sheets.h"

#define GRACE_MS 300
#define PREVIEW_PX 640

struct _FpSheetDialog
{
  GtkWindow     parent_instance;
  FpDocument   *document;
  FpLatest     *latest;
  FpSheets     *sheets;     /* of the order as it stands; NULL while they are made */
  FpSheetOrder *order;
  gboolean      ready;

  GtkWidget    *sheet, *paper, *orientation, *scale, *whole, *findings, *number, *format;
  GtkWidget    *pages, *message, *spinner, *export_button, *print_button;
};

G_DEFINE_FINAL_TYPE (FpSheetDialog, fp_sheet_dialog, GTK_TYPE_WINDOW)

static guint written_signal;

/* In the order of the choices in sheet-dialog.ui; scales of ISO 5455. */
static const guint sheet_choices[] = { FP_SHEET_ELEVATION, FP_SHEET_PLAN, FP_SHEET_SECTION, FP_SHEET_BOARD,
                                       FP_SHEET_COMPARE };
static const double scales[] = { 0.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0 };
static const char *const formats[] = { "pdf", "svg", "png" };
static const char *const format_names[] = { "PDF documents", "SVG drawings", "PNG pictures" };

static guint
selected (GtkWidget *choices)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (choices));
}

/* --- making the pages ----------------------------------------------------- */

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  FpSheets *sheets = fp_sheets_new (request, fp_latest_job_cancellable (job));

  (void) data;
  if (sheets != NULL)
    fp_latest_job_post (job, sheets);
}

static void
show_pages (FpSheetDialog *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->pages)) != NULL)
    gtk_box_remove (GTK_BOX (self->pages), child);
  for (guint i = 0; self->sheets != NULL && self->sheets->pages != NULL && i < self->sheets->pages->len; i++)
    {
      FpDrawing *page = g_ptr_array_index (self->sheets->pages, i);
      g_autofree char *label = g_strdup_printf ("Page %u of %u", i + 1, self->sheets->pages->len);
      GtkWidget *view = fp_drawing_view_new (label);
      double w = fp_drawing_width (page), h = fp_drawing_height (page), s = PREVIEW_PX / MAX (w, h);

      fp_drawing_view_set (FP_DRAWING_VIEW (view), page, TRUE);
      fp_drawing_view_set_size (FP_DRAWING_VIEW (view), (int) (w * s), (int) (h * s));
      gtk_widget_set_halign (view, GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (view, "sheet");
      gtk_box_append (GTK_BOX (self->pages), view);
    }
}

static void
show_state (FpSheetDialog *self)
{
  gboolean made = self->sheets != NULL && self->sheets->pages != NULL;
  g_autofree char *text = NULL;

  if (made && self->sheets->scale > 0.0)
    text = g_strdup_printf ("Drawn to 1:%g", self->sheets->scale);
  gtk_label_set_text (GTK_LABEL (self->message), self->sheets == NULL ? "Being drawn …"
                      : self->sheets->error != NULL ? self->sheets->error->message : text != NULL ? text : "");
  if (self->sheets != NULL && self->sheets->error != NULL)
    gtk_widget_add_css_class (self->message, "error");
  else
    gtk_widget_remove_css_class (self->message, "error");
  gtk_spinner_set_spinning (GTK_SPINNER (self->spinner), self->sheets == NULL);
  gtk_widget_set_sensitive (self->export_button, made);
  gtk_widget_set_sensitive (self->print_button, made);
}

/* The result is borrowed by its receiver, so the pages are shared, not taken. */
static FpSheets *
sheets_share (const FpSheets *sheets)
{
  FpSheets *copy = g_new0 (FpSheets, 1);

  copy->pages = sheets->pages != NULL ? g_ptr_array_ref (sheets->pages) : NULL;
  copy->scene = fp_scene_ref (sheets->scene);
  copy->scale = sheets->scale;
  copy->error = sheets->error != NULL ? g_error_copy (sheets->error) : NULL;
  return copy;
}

static void
receive (gpointer result, gpointer data)
{
  FpSheetDialog *self = data;

  g_clear_pointer (&self->sheets, fp_sheets_free);
  self->sheets = sheets_share (result);
  show_pages (self);
  show_state (self);
}

static const FpLatestWork drawing = {
  run, receive, (GDestroyNotify) fp_sheet_order_free, (GDestroyNotify) fp_sheets_free, GRACE_MS
};

static FpSheetOrder
order_of (FpSheetDialog *self)
{
  gboolean compare = sheet_choices[selected (self->sheet)] == FP_SHEET_COMPARE;

  return (FpSheetOrder) {
    .project = fp_document_project (self->document), .alternative = fp_document_alternative (self->document),
    .sheet = sheet_choices[selected (self->sheet)], .paper = (FpPaper) selected (self->paper),
    .landscape = selected (self->orientation) == 0, .scale = scales[selected (self->scale)],
    .whole = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->whole)),
    .with_findings = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->findings)) && !compare,
    .number = (char *) gtk_editable_get_text (GTK_EDITABLE (self->number)),
  };
}

static void
on_change (FpSheetDialog *self)
{
  FpSheetOrder order;

  if (!self->ready)
    return;
  order = order_of (self);
  gtk_widget_set_sensitive (self->findings, order.sheet != FP_SHEET_COMPARE);
  gtk_widget_set_sensitive (self->whole, order.sheet != FP_SHEET_COMPARE);
  g_clear_pointer (&self->order, fp_sheet_order_free);
  self->order = fp_sheet_order_copy (&order);
  g_clear_pointer (&self->sheets, fp_sheets_free);
  show_state (self);
  fp_latest_ask (self->latest, fp_sheet_order_copy (&order));
}

/* --- what is done with them ----------------------------------------------- */

static void
fail (FpSheetDialog *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->message), text);
  gtk_widget_add_css_class (self->message, "error");
}

static void
on_file (GFile *file, gpointer data)
{
  g_autoptr (FpSheetDialog) self = data;
  g_autofree char *chosen = file != NULL ? g_file_get_path (file) : NULL, *path = NULL;
  g_autoptr (GError) error = NULL;
  const char *format = formats[selected (self->format)];

  if (file == NULL || self->sheets == NULL || self->sheets->pages == NULL)
    return;
  if (chosen == NULL)
    {
      fail (self, "Sheets can only be written to files on this computer.");
      return;
    }
  path = fp_file_with_suffix (chosen, format, &error);
  if (path == NULL || !fp_sheets_write (self->sheets, format, path, &error))
    {
      fail (self, error->message);
      return;
    }
  g_signal_emit (self, written_signal, 0, path);
  gtk_window_close (GTK_WINDOW (self));
}

static void
on_export (FpSheetDialog *self)
{
  guint format = selected (self->format);
  g_autofree char *name = fp_sheets_file_name (self->order, formats[format]);
  const char *path = fp_document_path (self->document);
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  FpFileQuestion question = {
    .title = "Export Sheet", .accept = "_Export", .save = TRUE, .name = name, .folder = folder,
    .filter_name = format_names[format], .filter_suffix = formats[format],
  };

  fp_ask_file (GTK_WINDOW (self), &question, on_file, g_object_ref (self));
}

static void
on_printed (const GError *error, gpointer data)
{
  g_autoptr (FpSheetDialog) self = data;

  if (error != NULL)
    fail (self, error->message);
}

static void
on_print (FpSheetDialog *self)
{
  g_autofree char *name = fp_document_name (self->document);

  fp_print (GTK_WINDOW (self), self->sheets->pages, name, on_printed, g_object_ref (self));
}

/* --- the dialog ----------------------------------------------------------- */

static void
fp_sheet_dialog_dispose (GObject *object)
{
  FpSheetDialog *self = FP_SHEET_DIALOG (object);

  self->ready = FALSE;
  g_clear_pointer (&self->latest, fp_latest_free);
  g_clear_pointer (&self->sheets, fp_sheets_free);
  g_clear_pointer (&self->order, fp_sheet_order_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (fp_sheet_dialog_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpSheetDialog, name)

static void
fp_sheet_dialog_class_init (FpSheetDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_sheet_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sheet-dialog.ui");
  BIND (sheet);
  BIND (paper);
  BIND (orientation);
  BIND (scale);
  BIND (whole);
  BIND (findings);
  BIND (number);
  BIND (format);
  BIND (pages);
  BIND (message);
  BIND (spinner);
  BIND (export_button);
  BIND (print_button);
  gtk_widget_class_bind_template_callback (widget_class, on_change);
  gtk_widget_class_bind_template_callback (widget_class, on_export);
  gtk_widget_class_bind_template_callback (widget_class, on_print);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  written_signal = g_signal_new ("written", FP_TYPE_SHEET_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_STRING);
}

#undef BIND

static void
fp_sheet_dialog_init (FpSheetDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_name_buttons (GTK_WIDGET (self));
}

GtkWidget *
fp_sheet_dialog_new (GtkWindow *parent, FpDocument *document, guint sheet)
{
  FpSheetDialog *self = g_object_new (FP_TYPE_SHEET_DIALOG, "transient-for", parent, NULL);
  gboolean imperial = fp_project_brief (fp_document_project (document))->units == FP_UNITS_IMPERIAL;

  self->document = g_object_ref (document);
  self->latest = fp_latest_new ("sheets", &drawing, self);
  for (guint i = 0; i < G_N_ELEMENTS (sheet_choices); i++)
    if (sheet_choices[i] == sheet)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sheet), i);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->paper), imperial ? FP_PAPER_TABLOID : FP_PAPER_A3);
  self->ready = TRUE;
  on_change (self);
  return GTK_WIDGET (self);
}
