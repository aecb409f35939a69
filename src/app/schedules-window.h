/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules-window.h - what is to be built, bought and cut for the alternative on the board, what it weighs and costs
 *
 * Rates and what schedules are reckoned by are typed here, each an edit of the document.  It follows the project.
 */
#pragma once

#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_SCHEDULES_WINDOW (fp_schedules_window_get_type ())
G_DECLARE_FINAL_TYPE (FpSchedulesWindow, fp_schedules_window, FP, SCHEDULES_WINDOW, GtkWindow)

GtkWidget *fp_schedules_window_new (GtkWindow *parent, FpDocument *document);

G_END_DECLS
