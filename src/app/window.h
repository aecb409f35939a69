/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window.h - one window, one project or none yet */
#pragma once

#include "ahead.h"
#include "document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FP_TYPE_WINDOW (fp_window_get_type ())
G_DECLARE_FINAL_TYPE (FpWindow, fp_window, FP, WINDOW, GtkApplicationWindow)

GtkWidget  *fp_window_new (GtkApplication *application);
FpDocument *fp_window_document (FpWindow *self); /* NULL: none is open */
/* Takes its own reference. */
void        fp_window_set_document (FpWindow *self, FpDocument *document);
/* Says what went wrong, or what was done, over the page; what was done goes away by itself. */
void        fp_window_notice (FpWindow *self, const char *text, gboolean wrong);
/* Says that a file was written, and offers its folder. */
void        fp_window_notice_file (FpWindow *self, const char *text, const char *path);
/* Shows the window with what was read while the toolkit started, and ends that; what its first frame can do without comes
 * after it, and what fp_window_offer_left() offers. */
void        fp_window_begin (FpWindow *self, FpAhead *ahead);
/* Opens it here when no project is open, else in a window of its own. */
void        fp_window_open (FpWindow *self, const char *path);

/* Offers, one after another, what programs that ended before their time have left. */
void fp_window_offer_left (FpWindow *self);

G_END_DECLS
