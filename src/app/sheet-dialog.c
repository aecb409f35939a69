/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-dialog.h"

#include "compat-4-8.h"
#include "drawing-view.h"
#include "file-names.h"
#include "latest.h"
#include "printing.h"
#include "sheet-form.h"
#include "sheets.h"

#include <string.h>

#define GRACE_MS 300
#define PREVIEW_PX 640
/* Of pages to be joined, of which there are many. */
#define TILE_PX 380

struct _FpSheetDialog
{
  GtkWindow     parent_instance;
  FpDocument   *document;
  FpLatest     *latest;
  FpSheets     *sheets;     /* of the order as it stands; NULL while they are made */
  FpSheetOrder *order;
  FpPageSetup   begun;      /* what the form said as it opened, or as it was printed */
  gboolean      ready, written;

  GtkWidget    *form, *format, *tile_button;
  GtkWidget    *pages, *message, *spinner, *export_button, *print_button;
};

G_DEFINE_FINAL_TYPE (FpSheetDialog, fp_sheet_dialog, GTK_TYPE_WINDOW)

static guint written_signal;

/* That of the last export: whoever writes several sheets wants them alike. */
static guint chosen_format;

/* In the order of the choices in sheet-dialog.ui. */
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
show_page (FpSheetDialog *self, guint i, guint n)
{
  FpDrawing *page = g_ptr_array_index (self->sheets->pages, i);
  g_autofree char *label = g_strdup_printf ("Page %u of %u", i + 1, n);
  GtkWidget *view = fp_drawing_view_new (label), *under = gtk_label_new (label);
  const double w = fp_drawing_width (page), h = fp_drawing_height (page);
  const double s = (self->order->page.tiled ? TILE_PX : PREVIEW_PX) / MAX (w, h);

  fp_drawing_view_set (FP_DRAWING_VIEW (view), page, TRUE);
  fp_drawing_view_set_size (FP_DRAWING_VIEW (view), (int) (w * s), (int) (h * s));
  gtk_widget_set_halign (view, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (view, "sheet");
  gtk_box_append (GTK_BOX (self->pages), view);
  gtk_widget_add_css_class (under, "caption");
  if (n > 1)
    gtk_box_append (GTK_BOX (self->pages), under);
  else
    g_object_ref_sink (under), g_object_unref (under);
}

static void
show_pages (FpSheetDialog *self)
{
  const guint n = self->sheets != NULL && self->sheets->pages != NULL ? self->sheets->pages->len : 0;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->pages)) != NULL)
    gtk_box_remove (GTK_BOX (self->pages), child);
  for (guint i = 0; i < n; i++)
    show_page (self, i, n);
}

/* "Drawn to 1:75, which is no scale of ISO 5455, on 6 pages to be joined"; the caller's. */
static char *
state_text (FpSheetDialog *self)
{
  const FpSheets *sheets = self->sheets;
  g_autofree char *pages = NULL;

  if (sheets == NULL)
    return g_strdup ("Being drawn …");
  if (sheets->error != NULL)
    return g_strdup (sheets->error->message);
  if (!(sheets->scale > 0.0))
    return g_strdup ("");
  pages = self->order->page.tiled && sheets->pages->len > 1
            ? g_strdup_printf (", on %u pages to be joined", sheets->pages->len) : g_strdup ("");
  return g_strdup_printf ("Drawn to 1:%g%s%s.\nPrint at 100 %%, not fitted to the page.", sheets->scale,
                          fp_scale_is_standard (sheets->scale) ? "" : ", which is no scale of ISO 5455", pages);
}

/* What does not fit the paper at a scale that was asked for may go on several pages. */
static gboolean
may_be_tiled (FpSheetDialog *self)
{
  return self->sheets != NULL && self->sheets->error != NULL && self->order->page.scale > 0 && !self->order->page.tiled;
}

static void
show_state (FpSheetDialog *self)
{
  const gboolean made = self->sheets != NULL && self->sheets->pages != NULL;
  const gboolean can_export = made && fp_sheets_can_be (self->order, formats[selected (self->format)]);
  g_autofree char *text = state_text (self);

  gtk_label_set_text (GTK_LABEL (self->message), text);
  if (self->sheets != NULL && self->sheets->error != NULL)
    gtk_widget_add_css_class (self->message, "error");
  else
    gtk_widget_remove_css_class (self->message, "error");
  gtk_spinner_set_spinning (GTK_SPINNER (self->spinner), self->sheets == NULL);
  gtk_widget_set_visible (self->tile_button, may_be_tiled (self));
  gtk_widget_set_sensitive (self->export_button, can_export);
  gtk_widget_set_tooltip_text (self->export_button,
                               made && !can_export ? "An SVG is written of the whole sheet: choose PDF or PNG" : NULL);
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
  run, receive, (GDestroyNotify) fp_sheet_order_free, (GDestroyNotify) fp_sheets_free, GRACE_MS, 0
};

static void
on_change (FpSheetDialog *self)
{
  FpSheetForm *form = FP_SHEET_FORM (self->form);
  FpSheetOrder order;

  if (!self->ready)
    return;
  order = (FpSheetOrder) {
    .project = fp_document_project (self->document), .alternative = fp_document_alternative (self->document),
    .celebration = fp_document_celebration (self->document),
    .page = fp_sheet_form_get (form), .looks = fp_sheet_form_looks (form), .number = (char *) fp_sheet_form_number (form),
  };
  g_clear_pointer (&self->order, fp_sheet_order_free);
  self->order = fp_sheet_order_copy (&order);
  g_clear_pointer (&self->sheets, fp_sheets_free);
  show_state (self);
  fp_latest_ask (self->latest, fp_sheet_order_copy (&order));
}

static void
on_format (FpSheetDialog *self)
{
  if (self->ready)
    show_state (self);
}

static void
on_tile (FpSheetDialog *self)
{
  fp_sheet_form_tile (FP_SHEET_FORM (self->form));
}

/* --- what is done with them ----------------------------------------------- */

static void
fail (FpSheetDialog *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->message), text);
  gtk_widget_add_css_class (self->message, "error");
}

/* What is left unprinted comes back as it was as long as the document is open; the project keeps only what was
 * printed, so that whoever just looks at a sheet changes nothing. */
typedef struct
{
  FpPageSetup page;
  char       *number;
} Left;

static void
left_free (gpointer data)
{
  Left *left = data;

  g_free (left->number);
  g_free (left);
}

static void
set_left (FpDocument *document, const FpPageSetup *page, const char *number)
{
  Left *left = g_new (Left, 1);

  *left = (Left) { *page, g_strdup (number) };
  g_object_set_data_full (G_OBJECT (document), "sheet-left", left, left_free);
}

static const Left *
get_left (FpDocument *document)
{
  return g_object_get_data (G_OBJECT (document), "sheet-left");
}

/* The next person prints alike: the set-up is kept with the project. */
static void
keep_setup (FpSheetDialog *self)
{
  const FpPageSetup *page = &self->order->page;
  g_autoptr (GError) error = NULL;

  self->begun = *page;
  g_object_set_data (G_OBJECT (self->document), "sheet-left", NULL);
  if (!fp_page_setup_equal (fp_project_page (fp_document_project (self->document)), page)
      && !fp_document_set_page (self->document, page, &error))
    fail (self, error->message);
}

/* No project keeps them: as long as the document is open they are as they were. */
static void
keep_looks (FpSheetDialog *self)
{
  const FpSheetLooks looks = fp_sheet_form_looks (FP_SHEET_FORM (self->form));

  g_object_set_data_full (G_OBJECT (self->document), "sheet-looks", g_memdup2 (&looks, sizeof looks), g_free);
}

static gboolean
fp_sheet_dialog_close_request (GtkWindow *window)
{
  FpSheetDialog *self = FP_SHEET_DIALOG (window);
  const FpPageSetup page = fp_sheet_form_get (FP_SHEET_FORM (self->form));
  const char *number = fp_sheet_form_number (FP_SHEET_FORM (self->form));
  const Left *before = get_left (self->document);

  keep_looks (self);
  if (!self->written
      && (!fp_page_setup_equal (&page, &self->begun) || strcmp (number, before != NULL ? before->number : "") != 0))
    set_left (self->document, &page, number);
  return GTK_WINDOW_CLASS (fp_sheet_dialog_parent_class)->close_request (window);
}

/* With the chooser two windows go at once: a window manager that looks to the second of them for whom to give the focus
 * would give it to nobody. */
static void
close_for_good (FpSheetDialog *self)
{
  GtkWindow *over = gtk_window_get_transient_for (GTK_WINDOW (self));

  gtk_window_close (GTK_WINDOW (self));
  if (over != NULL)
    gtk_window_present (over);
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
  keep_setup (self);
  self->written = TRUE;
  chosen_format = selected (self->format);
  g_signal_emit (self, written_signal, 0, path, fp_sheets_files (self->sheets, format));
  close_for_good (self);
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
on_printed (gboolean printed, const GError *error, gpointer data)
{
  g_autoptr (FpSheetDialog) self = data;

  if (error != NULL)
    fail (self, error->message);
  else if (printed)
    {
      keep_setup (self);
      gtk_label_set_text (GTK_LABEL (self->message), "Sent to the printer.");
    }
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

  g_type_ensure (FP_TYPE_SHEET_FORM);
  G_OBJECT_CLASS (klass)->dispose = fp_sheet_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = fp_sheet_dialog_close_request;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sheet-dialog.ui");
  BIND (form);
  BIND (format);
  BIND (tile_button);
  BIND (pages);
  BIND (message);
  BIND (spinner);
  BIND (export_button);
  BIND (print_button);
  gtk_widget_class_bind_template_callback (widget_class, on_change);
  gtk_widget_class_bind_template_callback (widget_class, on_format);
  gtk_widget_class_bind_template_callback (widget_class, on_tile);
  gtk_widget_class_bind_template_callback (widget_class, on_export);
  gtk_widget_class_bind_template_callback (widget_class, on_print);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  written_signal = g_signal_new ("written", FP_TYPE_SHEET_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                              G_TYPE_STRING, G_TYPE_UINT);
}

#undef BIND

static void
fp_sheet_dialog_init (FpSheetDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_name_buttons (GTK_WIDGET (self));
}

/* As the dialog was left, or the project was printed last, or else what is usual. */
static FpPageSetup
last_setup (FpDocument *document, guint sheet)
{
  const FpProject *project = fp_document_project (document);
  const gboolean imperial = fp_project_brief (project)->units == FP_UNITS_IMPERIAL;

  if (get_left (document) != NULL)
    return get_left (document)->page;
  if (fp_project_page (project) != NULL)
    return *fp_project_page (project);
  return (FpPageSetup) {
    .sheet = sheet < FP_N_SHEETS ? sheet : FP_SHEET_ELEVATION,
    .paper = imperial ? FP_PAPER_TABLOID : FP_PAPER_A3, .landscape = TRUE, .findings = TRUE,
    .tile = imperial ? FP_PAPER_LETTER : FP_PAPER_A4,
  };
}

static gboolean
is_cut_alike (const FpCut *a, const FpCut *b)
{
  return !a->placed == !b->placed && (!a->placed || (a->at == b->at && !a->turned == !b->turned));
}

/* Who looks at less on the board, or cuts it elsewhere, wants that on paper; but what was chosen for the last sheet is not
 * overruled by a board that has been left alone since. */
static void
take_over (FpPageSetup *page, FpDocument *document, const FpSheetSeen *seen)
{
  static const FpSheetSeen at_first = { 0 };
  const FpSheetSeen *last = g_object_get_data (G_OBJECT (document), "sheet-seen");
  FpSheetSeen now = *seen;

  now.sight = NULL; /* they are the board's, which may go */
  now.sun = NULL;

  last = last != NULL ? last : &at_first;
  if (seen->hidden != last->hidden)
    page->hidden = seen->hidden;
  if (seen->ink != last->ink)
    page->ink = seen->ink;
  if (!is_cut_alike (&seen->along, &last->along))
    page->along = seen->along;
  if (!is_cut_alike (&seen->across, &last->across))
    {
      page->across = seen->across;
      /* The section across has the place of the elevation. */
      if (page->sheet == (seen->across.placed ? FP_SHEET_ELEVATION : FP_SHEET_CROSS))
        page->sheet = seen->across.placed ? FP_SHEET_CROSS : FP_SHEET_ELEVATION;
    }
  g_object_set_data_full (G_OBJECT (document), "sheet-seen", g_memdup2 (&now, sizeof now), g_free);
}

static FpPageSetup
first_setup (FpDocument *document, guint sheet, const FpSheetSeen *seen)
{
  const FpPageSetup last = last_setup (document, sheet);
  FpPageSetup page = last;

  if (seen != NULL)
    take_over (&page, document, seen);
  /* It is offered until something else is: also the next time that the dialog opens. */
  if (!fp_page_setup_equal (&page, &last))
    {
      g_autofree char *number = g_strdup (get_left (document) != NULL ? get_left (document)->number : "");

      set_left (document, &page, number);
    }
  if (sheet >= FP_N_SHEETS)
    page.sheet = sheet;
  return page;
}

/* What the board shows; else as the dialog was left, or what is usual. */
static FpSheetLooks
first_looks (FpSheetDialog *self, const FpSheetSeen *seen)
{
  const FpSheetLooks *left = g_object_get_data (G_OBJECT (self->document), "sheet-looks");
  FpSheetLooks looks = fp_sheet_form_looks (FP_SHEET_FORM (self->form));

  looks.sight = (FpSightLook) { fp_moment_of_focus (FP_FOCUS_HOST), FP_FOCUS_HOST, -1 };
  looks.card = FP_CARD_LOOK_USUAL;
  if (left != NULL)
    looks = *left;
  if (seen != NULL && seen->sight != NULL)
    looks.sight = *seen->sight;
  if (seen != NULL && seen->sun != NULL)
    looks.sun = *seen->sun;
  if (seen != NULL && fp_document_celebration (self->document) != 0)
    looks.card.celebrations = fp_document_celebration (self->document);
  return looks;
}

GtkWidget *
fp_sheet_dialog_new (GtkWindow *parent, FpDocument *document, guint sheet, const FpSheetSeen *seen)
{
  FpSheetDialog *self = g_object_new (FP_TYPE_SHEET_DIALOG, "transient-for", parent, NULL);
  const FpPageSetup page = first_setup (document, sheet, seen);
  const FpBrief *brief = fp_project_brief (fp_document_project (document));
  FpSheetLooks looks;

  self->document = g_object_ref (document);
  looks = first_looks (self, seen);
  fp_sheet_form_set_looks (FP_SHEET_FORM (self->form), brief, &looks);
  self->latest = fp_latest_new ("sheets", &drawing, self);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->format), chosen_format);
  fp_sheet_form_set (FP_SHEET_FORM (self->form), &page, brief->units);
  if (get_left (document) != NULL)
    fp_sheet_form_set_number (FP_SHEET_FORM (self->form), get_left (document)->number);
  self->begun = fp_sheet_form_get (FP_SHEET_FORM (self->form));
  self->ready = TRUE;
  on_change (self);
  return GTK_WIDGET (self);
}
