/* SPDX-License-Identifier: GPL-3.0-or-later */
/* printing-text.h - a report of plain text to a printer */
#pragma once

#include "printing.h"

G_BEGIN_DECLS

/**
 * fp_print_text:
 * @text: lines set in columns, 100 wide at most; a line above a rule of '=' or '-' is a heading
 * @name: of the job, printed with the number of the page at the foot of each
 *
 * Opens the system's print dialog. A heading is never left alone at the foot of a page.
 */
void fp_print_text (GtkWindow *parent, const char *text, const char *name, FpPaper paper, FpPrintAnswer answer,
                    gpointer data);

/* The same operation before it is run: for tests, which export it to a file. */
GtkPrintOperation *fp_print_text_operation_new (const char *text, const char *name, FpPaper paper);

G_END_DECLS
