/* SPDX-License-Identifier: GPL-3.0-or-later */
/* scroll-to.h - bringing a widget into view */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Scrolls what holds @widget until it can be seen, as soon as it has been given its place: what was only just
 * made, or has only just grown, has not got it yet.  Of what is larger than the view, its beginning. */
void fp_scroll_to (GtkWidget *widget);

G_END_DECLS
