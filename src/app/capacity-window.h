/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacity-window.h - for how many there is room on the board, how long Communion takes, and by which ways the people leave
 *
 * What it is reckoned by is typed here, each an edit of the document.  It follows the project.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_CAPACITY_WINDOW (fp_capacity_window_get_type ())
G_DECLARE_FINAL_TYPE (FpCapacityWindow, fp_capacity_window, FP, CAPACITY_WINDOW, GtkWindow)

GtkWidget *fp_capacity_window_new (GtkWindow *parent, FpDocument *document);

G_END_DECLS
