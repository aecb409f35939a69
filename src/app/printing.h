/* SPDX-License-Identifier: GPL-3.0-or-later */
/* printing.h - pages to a printer, to scale */
#pragma once

#include "footpace/drawing.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef void (*FpPrintAnswer) (gboolean printed, const GError *error, gpointer data); /* neither: it was given up */

/**
 * fp_print:
 * @pages: (element-type FpDrawing): a reference is kept until it is done
 *
 * Opens the system's print dialog.  Pages are never scaled: what does not fit
 * the paper in the printer is cut, since a drawing to scale is measured.
 */
void fp_print (GtkWindow *parent, GPtrArray *pages, const char *name, FpPrintAnswer answer, gpointer data);

/* The same operation before it is run: for tests, which export it to a file. */
GtkPrintOperation *fp_print_operation_new (GPtrArray *pages, const char *name);

/* --- what prints of other things share ----------------------------------- */

/* An operation for a page of that size (mm), drawn on in millimetres to its very edges. */
GtkPrintOperation *fp_print_operation_for (double width, double height, const char *name);
/* Opens the dialog; the operation keeps itself alive until it is done. */
void fp_print_run (GtkWindow *parent, GtkPrintOperation *operation, FpPrintAnswer answer, gpointer data);

G_END_DECLS
