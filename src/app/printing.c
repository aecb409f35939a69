/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "printing.h"

#include "print-preview.h"

#include <glib/gstdio.h>

static void
on_begin (GtkPrintOperation *operation, GtkPrintContext *context, GPtrArray *pages)
{
  (void) context;
  gtk_print_operation_set_n_pages (operation, (int) pages->len);
}

static GtkPageSetup *
setup_for (double w, double h)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new_custom ("sheet", "Sheet", MIN (w, h), MAX (w, h), GTK_UNIT_MM);

  /* Printers know papers by name: A3 and Letter are found again by their size. */
  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, w > h ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_page_setup_set_top_margin (setup, 0.0, GTK_UNIT_MM);
  gtk_page_setup_set_bottom_margin (setup, 0.0, GTK_UNIT_MM);
  gtk_page_setup_set_left_margin (setup, 0.0, GTK_UNIT_MM);
  gtk_page_setup_set_right_margin (setup, 0.0, GTK_UNIT_MM);
  gtk_paper_size_free (size);
  return setup;
}

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, GPtrArray *pages)
{
  (void) operation;
  fp_drawing_paint (g_ptr_array_index (pages, page), gtk_print_context_get_cairo_context (context),
                    FP_SURFACE_PAPER, FALSE);
}

/* --- what the printer was told last ------------------------------------------ */

static char *
settings_path (void)
{
  return g_build_filename (g_get_user_config_dir (), "footpace", "printing.ini", NULL);
}

/* Printer, quality and the like.  Paper and scale are those of the sheet, copies and pages are asked each time. */
static GtkPrintSettings *
load_settings (void)
{
  static const char *const own[] = {
    GTK_PRINT_SETTINGS_SCALE, GTK_PRINT_SETTINGS_PAPER_FORMAT, GTK_PRINT_SETTINGS_PAPER_WIDTH,
    GTK_PRINT_SETTINGS_PAPER_HEIGHT, GTK_PRINT_SETTINGS_ORIENTATION, GTK_PRINT_SETTINGS_N_COPIES,
    GTK_PRINT_SETTINGS_PAGE_RANGES, GTK_PRINT_SETTINGS_PRINT_PAGES, GTK_PRINT_SETTINGS_PAGE_SET,
    GTK_PRINT_SETTINGS_NUMBER_UP, GTK_PRINT_SETTINGS_OUTPUT_URI,
  };
  g_autofree char *path = settings_path ();
  GtkPrintSettings *settings = gtk_print_settings_new ();

  gtk_print_settings_load_file (settings, path, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (own); i++)
    gtk_print_settings_unset (settings, own[i]);
  gtk_print_settings_set_scale (settings, 100.0);
  return settings;
}

/* Losing it loses nothing but comfort, so no error is told. */
static void
save_settings (GtkPrintOperation *operation)
{
  GtkPrintSettings *settings = gtk_print_operation_get_print_settings (operation);
  g_autofree char *path = settings_path (), *folder = g_path_get_dirname (path);

  if (settings != NULL && g_mkdir_with_parents (folder, 0700) == 0)
    gtk_print_settings_to_file (settings, path, NULL);
}

GtkPrintOperation *
fp_print_operation_for (double width, double height, const char *name)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = setup_for (width, height);
  g_autoptr (GtkPrintSettings) settings = load_settings ();

  gtk_print_operation_set_print_settings (operation, settings);
  fp_print_preview_connect (operation);
  gtk_print_operation_set_unit (operation, GTK_UNIT_MM);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_job_name (operation, name);
  return operation;
}

/* Pages to be joined lie one way for one sheet and another way for the next. */
static void
on_request_setup (GtkPrintOperation *operation, GtkPrintContext *context, int page, GtkPageSetup *setup, GPtrArray *pages)
{
  FpDrawing *first = g_ptr_array_index (pages, 0), *this = g_ptr_array_index (pages, page);
  const gboolean lies = fp_drawing_width (this) > fp_drawing_height (this);

  (void) operation, (void) context;
  if (lies != (fp_drawing_width (first) > fp_drawing_height (first)))
    gtk_page_setup_set_orientation (setup, lies ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
}

GtkPrintOperation *
fp_print_operation_new (GPtrArray *pages, const char *name)
{
  FpDrawing *first = g_ptr_array_index (pages, 0);
  GtkPrintOperation *operation = fp_print_operation_for (fp_drawing_width (first), fp_drawing_height (first), name);

  g_signal_connect_data (operation, "begin-print", G_CALLBACK (on_begin), g_ptr_array_ref (pages),
                         (GClosureNotify) (void (*) (void)) g_ptr_array_unref, 0);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), pages);
  g_signal_connect (operation, "request-page-setup", G_CALLBACK (on_request_setup), pages);
  return operation;
}

typedef struct
{
  FpPrintAnswer answer;
  gpointer      data;
} Print;

static void
on_done (GtkPrintOperation *operation, GtkPrintOperationResult result, Print *print)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    gtk_print_operation_get_error (operation, &error);
  const gboolean printed = result == GTK_PRINT_OPERATION_RESULT_APPLY && !fp_print_was_previewed (operation);

  if (printed)
    save_settings (operation);
  print->answer (printed, error, print->data);
  g_free (print);
}

void
fp_print_run (GtkWindow *parent, GtkPrintOperation *operation, FpPrintAnswer answer, gpointer data)
{
  Print *print = g_new (Print, 1);

  *print = (Print) { answer, data };
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "done", G_CALLBACK (on_done), print);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, NULL);
}

void
fp_print (GtkWindow *parent, GPtrArray *pages, const char *name, FpPrintAnswer answer, gpointer data)
{
  g_autoptr (GtkPrintOperation) operation = fp_print_operation_new (pages, name);

  fp_print_run (parent, operation, answer, data);
}
