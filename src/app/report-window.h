/* SPDX-License-Identifier: GPL-3.0-or-later */
/* report-window.h - the whole report of the alternative on the board, to read, search, copy, save and print
 *
 * Every rule that was held is in it: what was found short, what lies within,
 * what was not checked and why, and the books.  It follows the project.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_REPORT_WINDOW (fp_report_window_get_type ())
G_DECLARE_FINAL_TYPE (FpReportWindow, fp_report_window, FP, REPORT_WINDOW, GtkWindow)

GtkWidget *fp_report_window_new (GtkWindow *parent, FpDocument *document);

G_END_DECLS
