/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tip.h - tooltips of what is shown anew again and again */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Sets the tooltip of @widget where it is not @text already.  For each one that is set the toolkit asks the display
 * where the pointer is, and waits for the answer: in a list of findings, that is the greater part of showing it. */
void fp_tip_set (GtkWidget *widget, const char *text);

G_END_DECLS
