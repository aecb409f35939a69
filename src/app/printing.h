/* SPDX-License-Identifier: GPL-3.0-or-later */
/* printing.h - pages to a printer, to scale */
#pragma once

#include "footpace/drawing.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef void (*FpPrintAnswer) (const GError *error, gpointer data); /* NULL: printed, or given up */

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

G_END_DECLS
