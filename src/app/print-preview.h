/* SPDX-License-Identifier: GPL-3.0-or-later */
/* print-preview.h - the pages as they will be printed
 *
 * Drawn by the very operation that prints, on the paper that the dialog has
 * chosen: what will be cut off there is cut off here.  No other program is
 * needed for it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* From now on the operation shows its preview in a window of ours. */
void     fp_print_preview_connect (GtkPrintOperation *operation);
/* Whether it was only looked at: the operation itself says that it was carried out. */
gboolean fp_print_was_previewed (GtkPrintOperation *operation);

G_END_DECLS
